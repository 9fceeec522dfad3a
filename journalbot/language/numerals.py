"""Numbers as people write and say them: figures, fractions, words, dictated gravities, ranges and approximations."""

from collections.abc import Sequence
from typing import NamedTuple

from journalbot.language.tokens import Token
from journalbot.vocabulary.units import UNITS


class Number(NamedTuple):
    """A number in the text.

    `style` tells how it was written: `figure` (5), `decimal` (1.010; 22,5), `grouped` (1,012: thousands or a decimal
    comma), `fraction` (1/4, half), `score` (7/10), `words` (two), `dictated` (one point oh four two; ten ninety),
    `suffix` (the "and a half" of "a cup and a half", to be added to what stands before) or `range`. A range has the
    mean of its two ends as its value, is approximate, and keeps the ends in `parts`; a written fraction or score has
    its numerator and denominator in `figures`.
    """

    start: int  # character offsets in the text; an end may fall inside a token that runs into its unit ("½tsp")
    end: int
    first: int  # index of its first token
    last: int  # index after its last token
    value: float
    approx: bool
    style: str
    decimal_comma_value: float | None = None  # "1,012" read the other way: 1.012 beside a value of 1012
    figures: tuple[float, float] | None = None
    parts: tuple["Number", ...] = ()


def words(text: str) -> frozenset[str]:
    """The words of a table row."""
    return frozenset(text.split())


ONES: dict[str, int] = {
    "zero": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "eleven": 11,
    "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19,
}
TENS: dict[str, int] = {"twenty": 20, "thirty": 30, "forty": 40, "fourty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90}
SIMPLE: dict[str, int] = ONES | TENS | {f"{t}-{o}": TENS[t] + n for t in TENS for o, n in ONES.items() if 0 < n < 10}
MULTIPLES: dict[str, int] = {"dozen": 12, "doz": 12, "hundred": 100, "thousand": 1000}
PAIRS: dict[str, int] = {"couple": 2, "cople": 2, "coupla": 2, "pair": 2}
PARTS: dict[str, int] = {
    "half": 2, "third": 3, "thirds": 3, "quarter": 4, "quarters": 4, "fourth": 4, "fourths": 4, "fifth": 5, "fifths": 5, "sixth": 6,
    "sixths": 6, "eighth": 8, "eighths": 8, "tenth": 10, "tenths": 10, "sixteenth": 16, "sixteenths": 16,
}
VULGAR: dict[str, float] = {
    "½": 1 / 2, "¼": 1 / 4, "¾": 3 / 4, "⅓": 1 / 3, "⅔": 2 / 3, "⅕": 1 / 5, "⅛": 1 / 8, "⅜": 3 / 8, "⅝": 5 / 8, "⅞": 7 / 8, "⅙": 1 / 6,
}
DIGITS: dict[str, str] = {w: str(n) for w, n in ONES.items()} | {"oh": "0", "o": "0", "nought": "0", "naught": "0"}
POINT = frozenset({"point", "dot"})
ARTICLES = frozenset({"a", "an"})

KITCHEN_DENOMINATORS = frozenset({2, 3, 4, 5, 6, 8, 16, 32})
SCORE_DENOMINATORS = frozenset({10, 20, 100})
SPOKEN_GRAVITY = frozenset({"nine", "ten", "eleven"})  # "ten ninety" is 1090, "nine ninety eight" 998; no other pair is said so

# "the pink one", "this one", "one more time": a pronoun, and "at this point two of them": no decimal point.
NOT_ONE_AFTER = words(
    "this that the which each every any no another last other same first next new old red white pink rose rosé dark little big good bad only"
)
NOT_POINT_AFTER = frozenset({"this", "that", "the", "which", "some", "a", "one", "at", "any", "no", "to", "what", "my"})

APPROX_BEFORE = words(
    "~ ≈ about abt around roughly approx approximately approximatly aprox circa ca c almost nearly bout maybe probably somewhere estimated est"
)
APPROX_PHRASES: dict[str, frozenset[str]] = {  # last word: the words before it
    "over": frozenset({"just", "little", "bit", "slightly"}), "under": frozenset({"just", "little", "bit", "slightly"}),
    "below": frozenset({"just"}), "above": frozenset({"just"}), "to": frozenset({"close", "closer"}), "of": frozenset({"shy", "short"}),
}
APPROX_AFTER = frozenset({"ish", "ish."})
RANGE_GAPS = frozenset({"-", "–", "—", "to", "or"})
UNIT_WORDS = frozenset(s for unit in UNITS.values() for s in unit.spellings if " " not in s)
DEGREES = frozenset({"c", "f", "°", "º", "deg", "degrees", "degree", "celsius", "fahrenheit"})
MERIDIEM = frozenset({"am", "pm", "a.m", "p.m", "o'clock", "oclock"})
ORDINAL_ENDS = frozenset({"st", "nd", "rd", "th"})
STARTERS = frozenset(SIMPLE) | frozenset(MULTIPLES) | frozenset(PAIRS) | frozenset(PARTS) | ARTICLES | POINT | {"oh", "nought", "naught", "and"}
MOST_DIGITS = 15


def find_numbers(tokens: Sequence[Token], text: str) -> list[Number]:
    """The numbers in the text, in order and apart from each other. Never one: digits inside a word (b3, K-17), an
    ordinal, a ratio (1:10), a clock time, a date written in figures (10/3, 10-3-24), or "a" and "an" alone.
    """
    out: list[Number] = []
    n = len(tokens)
    i = 0
    while i < n:
        token = tokens[i]
        low = token.low
        found: Number | None = None
        if token.kind == "number" or (low[0].isdecimal() and low.isdecimal()):
            found, skip = _figure(tokens, i)
            if found is None:
                i = skip
                continue
        elif low in STARTERS:
            found = _words(tokens, i)
        elif low[0] in VULGAR or "-" in low:
            found = _glued(token, i)
        if found is None:
            i += 1
            continue
        found = _with_approximation(tokens, found)
        i = found.last
        if out and (joined := _range(out[-1], found, tokens, text)):
            out[-1] = joined
        else:
            out.append(found)
    return out


def read_count(tokens: Sequence[Token], i: int) -> tuple[float, int] | None:
    """A whole or half number at `i` as used to count days and weeks ("3", "two", "a couple of", "a"), and where it ends."""
    if i >= len(tokens):
        return None
    token = tokens[i]
    if token.kind == "number":
        return (float(token.low), i + 1) if token.low.isdecimal() and len(token.low) < 5 else None
    found = _words(tokens, i) if token.low in STARTERS else None
    if found is not None and found.style in ("words", "fraction"):
        return found.value, found.last
    return (1.0, i + 1) if token.low in ARTICLES else None


def _low(tokens: Sequence[Token], i: int) -> str:
    """The word at `i` in lower case, or "" outside of the text."""
    return tokens[i].low if 0 <= i < len(tokens) else ""


def _adjoins(tokens: Sequence[Token], i: int) -> bool:
    """Whether token `i` follows the one before it without a space."""
    return 0 < i < len(tokens) and tokens[i].start == tokens[i - 1].end


def _number(tokens: Sequence[Token], first: int, last: int, value: float, style: str, **more: object) -> Number:
    return Number(tokens[first].start, tokens[last - 1].end, first, last, value, False, style, **more)  # type: ignore[arg-type]


def _is_int(tokens: Sequence[Token], i: int) -> bool:
    return 0 <= i < len(tokens) and tokens[i].low.isdecimal() and len(tokens[i].low) <= MOST_DIGITS


# Figures


def _figure(tokens: Sequence[Token], i: int) -> tuple[Number | None, int]:
    """The number that starts with the figure at `i`; or none, and where to go on."""
    n = len(tokens)
    token = tokens[i]
    raw = token.low
    whole = raw.isdecimal()
    if len(raw) > MOST_DIGITS:
        return None, i + 1
    if i + 1 < n:
        after = tokens[i + 1]
        adjoins = after.start == token.end
        mark = after.low
        if adjoins and mark in "/:-." and after.kind == "mark":
            if mark == "/":
                return _slashed(tokens, i)
            if (skip := _date_or_ratio(tokens, i, mark)) > i:
                return None, skip
            if mark == "-" and whole and (mixed := _mixed(tokens, i, i + 2)):
                return mixed, mixed.last
        elif (mark in MERIDIEM and (adjoins or _plain(raw, 99) <= 12.59)) or (adjoins and whole and mark[:2] in ORDINAL_ENDS and mark[2:3] in ("", "-")):
            return None, i + 2
        elif whole and ((mixed := _mixed(tokens, i, i + 1)) or (mixed := _figure_and_words(tokens, i))):
            return mixed, mixed.last
    if "," not in raw:
        return _number(tokens, i, i + 1, float(raw), "figure" if whole else "decimal"), i + 1
    head, _, tail = raw.partition(",")
    comma_value = None if "," in tail or "." in tail else float(f"{head or 0}.{tail}")
    if comma_value is not None and (len(tail) != 3 or head in ("", "0")):
        return _number(tokens, i, i + 1, comma_value, "decimal"), i + 1
    return _number(tokens, i, i + 1, float(raw.replace(",", "")), "grouped", decimal_comma_value=comma_value), i + 1


def _plain(raw: str, default: float) -> float:
    """`raw` as a number where it is a plain one, else `default`."""
    return float(raw) if raw.replace(".", "", 1).isdecimal() else default


def _slashed(tokens: Sequence[Token], i: int) -> tuple[Number | None, int]:
    """1/4 and 7/10 are numbers; 10/3, 30/2 and anything with a second slash are dates, or nothing."""
    if not (i + 2 < len(tokens) and _adjoins(tokens, i + 2) and _is_int(tokens, i + 2)):
        return _number(tokens, i, i + 1, _plain(tokens[i].low, 0), "figure"), i + 1
    above, below = _plain(tokens[i].low, -1), float(tokens[i + 2].low)
    dated = _low(tokens, i + 3) == "/" and _adjoins(tokens, i + 3) and _is_int(tokens, i + 4) and _adjoins(tokens, i + 4)
    padded = tokens[i].low[0] == "0" or tokens[i + 2].low[0] == "0"
    if dated:
        return None, i + 5
    if not padded and 0 < above < below and below in KITCHEN_DENOMINATORS and above.is_integer():
        return _number(tokens, i, i + 3, above / below, "fraction", figures=(above, below)), i + 3
    if not padded and 0 <= above <= below and below in (SCORE_DENOMINATORS | {5}):
        return _number(tokens, i, i + 3, above / below, "score", figures=(above, below)), i + 3
    return None, i + 3


def _date_or_ratio(tokens: Sequence[Token], i: int, mark: str) -> int:
    """Where a clock time, a ratio or a date in figures that starts at `i` ends; `i` where there is none."""
    if not (_adjoins(tokens, i + 2) and _is_int(tokens, i + 2)):
        return i
    if mark == ":":
        seconds = _low(tokens, i + 3) == ":" and _is_int(tokens, i + 4) and _adjoins(tokens, i + 3) and _adjoins(tokens, i + 4)
        return i + 5 if seconds else i + 3
    if mark == "." and "." in tokens[i].low:  # 3.10.2024
        return i + 3
    chained = _low(tokens, i + 3) == mark and _adjoins(tokens, i + 3) and _is_int(tokens, i + 4) and _adjoins(tokens, i + 4)
    return i + 5 if chained and mark == "-" else i


def _mixed(tokens: Sequence[Token], i: int, j: int) -> Number | None:
    """1 1/2, 1-1/2, 1½, 1 ½."""
    whole = float(tokens[i].low)
    low = _low(tokens, j)
    if low and low[0] in VULGAR:
        part = _glued(tokens[j], j)
        if part is not None:
            return part._replace(start=tokens[i].start, first=i, value=whole + part.value, style="fraction")
    if _is_int(tokens, j) and _low(tokens, j + 1) == "/" and _adjoins(tokens, j + 1) and not _adjoins(tokens, j - 1 if j == i + 1 else 0):
        part, last = _slashed(tokens, j)
        if part is not None and part.style == "fraction":
            return _number(tokens, i, last, whole + part.value, "fraction")
    return None


def _figure_and_words(tokens: Sequence[Token], i: int) -> Number | None:
    """5 dozen, 2 hundred, 5 and a half, 1 point 0 4 2."""
    value = float(tokens[i].low)
    low = _low(tokens, i + 1)
    if low in MULTIPLES:
        return _number(tokens, i, i + 2, value * MULTIPLES[low], "words")
    if low == "and" and (half := _and_a_half(tokens, i + 1)):
        return _number(tokens, i, half[1], value + half[0], "words")
    if low in POINT and (digits := _digits(tokens, i + 2)):
        return _number(tokens, i, digits[1], float(f"{tokens[i].low}.{digits[0]}"), "dictated")
    return None


def _glued(token: Token, i: int) -> Number | None:
    """½, ½tsp, half-gallon, half-dozen, three-quarters: a fraction alone or run into its unit."""
    if token.low[0] in VULGAR:
        value, size, rest = VULGAR[token.low[0]], 1, token.low[1:].removeprefix("-")
        return Number(token.start, token.start + size, i, i + 1, value, False, "fraction") if not rest or rest in UNIT_WORDS else None
    word, _, rest = token.low.partition("-")
    if word in ("half", "quarter"):
        if rest in MULTIPLES:
            return Number(token.start, token.end, i, i + 1, MULTIPLES[rest] / PARTS[word], False, "words")
        return Number(token.start, token.start + len(word), i, i + 1, 1 / PARTS[word], False, "fraction") if rest in UNIT_WORDS else None
    if 0 < ONES.get(word, 0) < PARTS.get(rest, 0):
        return Number(token.start, token.end, i, i + 1, ONES[word] / PARTS[rest], False, "fraction")
    return None


# Words


def _words(tokens: Sequence[Token], i: int) -> Number | None:
    """The number that the words from `i` spell."""
    low = tokens[i].low
    if low == "and":
        half = _and_a_half(tokens, i)
        if half is None or i == 0 or _low(tokens, half[1]) in UNIT_WORDS:
            return None
        return _number(tokens, i, half[1], half[0], "suffix")
    if low in POINT:
        digits = None if _low(tokens, i - 1) in NOT_POINT_AFTER else _digits(tokens, i + 1)
        return _number(tokens, i, digits[1], float(f"0.{digits[0]}"), "dictated") if digits else None
    if (said := _dictated(tokens, i)) is not None or (said := _portion(tokens, i)) is not None:
        return said
    if low == "one" and (_low(tokens, i - 1) in NOT_ONE_AFTER or _low(tokens, i + 1) == "more"):
        return None
    counted = _cardinal(tokens, i)
    if counted is None:
        return None
    value, last = counted
    if _low(tokens, last) == "and" and (half := _and_a_half(tokens, last)):
        return _number(tokens, i, half[1], value + half[0], "words")
    return _number(tokens, i, last, value, "words")


def _and_a_half(tokens: Sequence[Token], i: int) -> tuple[float, int] | None:
    """The value and the end of "and a half", "and a quarter", "and three quarters" with its "and" at `i`."""
    if _low(tokens, i + 1) in ("a", "one") and _low(tokens, i + 2) in PARTS and _low(tokens, i + 3) not in ("a", "an", "of", "dozen"):
        return 1 / PARTS[tokens[i + 2].low], i + 3
    part = _portion(tokens, i + 1) if _low(tokens, i + 1) in SIMPLE else None
    return (part.value, part.last) if part else None


def _portion(tokens: Sequence[Token], i: int) -> Number | None:
    """half, half a dozen, a half, quarter, a third of, two thirds, three-quarters."""
    low = tokens[i].low
    if low == "half" and _low(tokens, i + 1) != "past":
        of_what = _low(tokens, i + 2) if _low(tokens, i + 1) in ARTICLES else ""
        if of_what in MULTIPLES:
            return _number(tokens, i, i + 3, MULTIPLES[of_what] / 2, "words")
        return _number(tokens, i, i + 2 if of_what else i + 1, 0.5, "fraction")
    count = 1 if low in ARTICLES else SIMPLE.get(low, 0)
    j = i + 1
    if low == "quarter":
        count, j = 1, i
    elif count == 0:
        return None
    elif _low(tokens, j) == "-":
        j += 1
    word = _low(tokens, j)
    if word not in PARTS or count >= PARTS[word]:
        return None
    after = _low(tokens, j + 1)
    if word == "half":
        return _number(tokens, i, j + 1, 0.5, "fraction") if count == 1 else None
    # "a third racking", "quarter past six": a part needs an "of" or a unit, but "two thirds" speaks for itself
    if count > 1 and word.endswith("s"):
        return _number(tokens, i, j + 1, count / PARTS[word], "fraction")
    if after == "of" or after in UNIT_WORDS or after in ARTICLES or (word == "quarter" and low in ARTICLES and after not in ("past", "to")):
        return _number(tokens, i, j + 2 if after in ARTICLES else j + 1, count / PARTS[word], "fraction")
    return None


def _cardinal(tokens: Sequence[Token], i: int) -> tuple[float, int] | None:
    """A whole number in words from `i`, and where it ends: two, a hundred and twenty, two dozen, a couple of."""
    low = _low(tokens, i)
    j = i
    if low in ARTICLES:
        j += 1
        follows = _low(tokens, j)
        if follows not in MULTIPLES and follows not in PAIRS:
            return None
    elif low == "pair":
        return None  # "the pair of them" counts nothing; "a pair" does
    value: float = 1
    if (word := _low(tokens, j)) in PAIRS:
        value, j = PAIRS[word], j + 1
        if _low(tokens, j) == "of":
            j += 1
    elif (small := _below_hundred(tokens, j)) is not None:
        value, j = small
    elif word not in MULTIPLES:
        return None
    while (word := _low(tokens, j)) in MULTIPLES:
        value *= MULTIPLES[word]
        j += 1
        if word in ("dozen", "doz"):
            return value, j
        k = j + 1 if _low(tokens, j) == "and" else j
        if (rest := _below_hundred(tokens, k)) is not None and rest[0] < MULTIPLES[word] and _low(tokens, k) != "zero":
            follows = _low(tokens, rest[1])
            if follows == "hundred" and word == "thousand":
                hundreds = rest[0] * 100
                value, j = value + hundreds, rest[1] + 1
                if (units := _below_hundred(tokens, j + 1 if _low(tokens, j) == "and" else j)) is not None:
                    value, j = value + units[0], units[1]
            else:
                value, j = value + rest[0], rest[1]
    return (value, j) if j > i else None


def _below_hundred(tokens: Sequence[Token], i: int) -> tuple[int, int] | None:
    """A number below a hundred in words ("twenty one", "twenty-one", "seven"), and where it ends."""
    low = _low(tokens, i)
    if low not in SIMPLE:
        return None
    if low in TENS and 0 < (one := ONES.get(_low(tokens, i + 1), 0)) < 10:
        return TENS[low] + one, i + 2
    return SIMPLE[low], i + 1


def _dictated(tokens: Sequence[Token], i: int) -> Number | None:
    """one point oh four two, three point four five, ten ninety, nine nine eight, ten oh four."""
    low = tokens[i].low
    whole = 0 if low in DIGITS and DIGITS[low] == "0" else SIMPLE.get(low)
    if whole is None:
        return None
    ahead = _low(tokens, i + 1)
    j = i + 1
    if low in TENS and 0 < (one := ONES.get(ahead, 0)) < 10:
        whole, j = whole + one, i + 2
    if _low(tokens, j) in POINT and (digits := _digits(tokens, j + 1)):
        return _number(tokens, i, digits[1], float(f"{whole}.{digits[0]}"), "dictated")
    if low in SPOKEN_GRAVITY and ahead in DIGITS | TENS | SIMPLE:
        digits = _digits(tokens, i + 1)
        if digits and len(digits[0]) == 2:
            return _number(tokens, i, digits[1], float(f"{whole}{digits[0]}"), "dictated")
    if low == "one" and ahead in ("oh", "zero", "o") and (digits := _digits(tokens, i + 1)) and len(digits[0]) == 3:
        return _number(tokens, i, digits[1], float(f"1{digits[0]}"), "dictated")
    return None


def _digits(tokens: Sequence[Token], i: int) -> tuple[str, int] | None:
    """Dictated digits from `i` as a string of figures, and where they end: oh four two, ninety eight, 0 4 2."""
    out = ""
    while i < len(tokens) and len(out) < 5:
        low = tokens[i].low
        if low in TENS:
            small = _below_hundred(tokens, i)
            if small is None:
                break
            out, i = out + str(small[0]), small[1]
        elif low in DIGITS:
            out, i = out + DIGITS[low], i + 1
        elif low in SIMPLE:
            out, i = out + str(SIMPLE[low]), i + 1
        elif low.isdecimal() and len(low) < 5 and (len(low) == 1 or not out):
            out, i = out + low, i + 1
        else:
            break
    return (out, i) if out else None


# What stands around a number


def _with_approximation(tokens: Sequence[Token], number: Number) -> Number:
    """The number with a minus sign, "about", "just under", "ish" or "or so" taken in."""
    first, last = number.first, number.last
    before = _low(tokens, first - 1)
    if before in ("minus", "-") and _negative(tokens, first, last):
        number = number._replace(start=tokens[first - 1].start, first=first - 1, value=-number.value)
        first -= 1
        before = _low(tokens, first - 1)
    k = first - 1
    if before == "." and _low(tokens, first - 2) in ("ca", "c", "approx", "abt", "est"):
        k, before = first - 2, tokens[first - 2].low
    unit_c = before == "c" and (k == first - 1 or (k > 0 and (tokens[k - 1].kind == "number" or tokens[k - 1].low in ("°", "º"))))
    if before in APPROX_BEFORE and not unit_c:
        number = number._replace(start=tokens[k].start, first=k, approx=True)
    elif before in APPROX_PHRASES and _low(tokens, first - 2) in APPROX_PHRASES[before]:
        number = number._replace(start=tokens[first - 2].start, first=first - 2, approx=True)
    after = _low(tokens, last)
    if after in APPROX_AFTER:
        return number._replace(end=tokens[last].end, last=last + 1, approx=True)
    if after == "-" and _low(tokens, last + 1) in APPROX_AFTER and _adjoins(tokens, last):
        return number._replace(end=tokens[last + 1].end, last=last + 2, approx=True)
    if after == "or" and _low(tokens, last + 1) in ("so", "thereabouts"):
        return number._replace(end=tokens[last + 1].end, last=last + 2, approx=True)
    return number


def _negative(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether the minus before `first` is a sign: "minus" always but for "plus or minus"; a hyphen only in a temperature."""
    if tokens[first - 1].low == "minus":
        return _low(tokens, first - 2) != "or"
    spaced = first < 2 or (not _adjoins(tokens, first - 1) or tokens[first - 2].low == "(")
    return spaced and _adjoins(tokens, first) and _low(tokens, last) in DEGREES


def _range(low: Number, high: Number, tokens: Sequence[Token], text: str) -> Number | None:
    """68-70, 2 to 3, 1 or 2 as one approximate number; not "from 3.2 to 3.5", which tells a change."""
    gap = text[low.end : high.start]
    word = gap.strip()
    if word not in RANGE_GAPS or low.value >= high.value or low.style in ("range", "suffix") or high.style in ("score", "suffix"):
        return None
    if (gap == word) != (len(word) == 1) or _low(tokens, low.first - 1) == "from" or (word == "or" and high.value != low.value + 1):
        return None
    return Number(low.start, high.end, low.first, high.last, (low.value + high.value) / 2, True, "range", parts=(low, high))
