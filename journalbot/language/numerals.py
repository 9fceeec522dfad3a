"""Numbers as people write and say them: figures, fractions, words, dictated gravities, ranges and approximations."""

from collections.abc import Sequence

from journalbot.language.number_words import (
    APPROX_AFTER,
    APPROX_BEFORE,
    APPROX_PHRASES,
    ARTICLES,
    DEGREES,
    KITCHEN_DENOMINATORS,
    MERIDIEM,
    MOST_DIGITS,
    MULTIPLES,
    ONES,
    ORDINAL_ENDS,
    PARTS,
    POINT,
    RANGE_GAPS,
    SCORE_DENOMINATORS,
    STARTERS,
    SUGAR_SCALES,
    UNIT_WORDS,
    VULGAR,
)
from journalbot.language.spelled_numbers import (
    Number,
    adjoins,
    and_a_half,
    is_int,
    low_at,
    number_of,
    read_digits,
    read_words,
)
from journalbot.language.tokens import Token

__all__ = ["Number", "find_numbers", "read_count"]


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
            found = read_words(tokens, i)
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
    """A number at `i` as used to count days and weeks (3, two, a couple of, a), and where it ends."""
    if i >= len(tokens):
        return None
    token = tokens[i]
    if token.kind == "number":
        return (float(token.low), i + 1) if token.low.isdecimal() and len(token.low) < 5 else None
    found = read_words(tokens, i) if token.low in STARTERS else None
    if found is not None and found.style in ("words", "fraction"):
        return found.value, found.last
    return (1.0, i + 1) if token.low in ARTICLES else None


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
        joined = after.start == token.end
        mark = after.low
        if joined and mark in "/:-." and after.kind == "mark":
            if mark == "/":
                return _slashed(tokens, i)
            if (skip := _date_or_ratio(tokens, i, mark)) > i:
                return None, skip
            if mark == "-" and whole and (mixed := _mixed(tokens, i, i + 2)):
                return mixed, mixed.last
        elif (mark in MERIDIEM and (joined or _plain(raw, 99) <= 12.59)) or (
            joined and whole and mark[:2] in ORDINAL_ENDS and mark[2:3] in ("", "-")
        ):
            return None, i + 2
        elif whole and ((mixed := _mixed(tokens, i, i + 1)) or (mixed := _figure_and_words(tokens, i))):
            return mixed, mixed.last
    if "," not in raw:
        return number_of(tokens, i, i + 1, float(raw), "figure" if whole else "decimal"), i + 1
    head, _, tail = raw.partition(",")
    comma_value = None if "," in tail or "." in tail else float(f"{head or 0}.{tail}")
    if comma_value is not None and (len(tail) != 3 or head in ("", "0")):
        return number_of(tokens, i, i + 1, comma_value, "decimal"), i + 1
    return number_of(tokens, i, i + 1, float(raw.replace(",", "")), "grouped", decimal_comma_value=comma_value), i + 1


def _plain(raw: str, default: float) -> float:
    """`raw` as a number where it is a plain one, else `default`."""
    return float(raw) if raw.replace(".", "", 1).isdecimal() else default


def _slashed(tokens: Sequence[Token], i: int) -> tuple[Number | None, int]:
    """1/4 and 7/10 are numbers; 10/3, 30/2 and anything with a second slash are dates, or nothing."""
    if not (i + 2 < len(tokens) and adjoins(tokens, i + 2) and is_int(tokens, i + 2)):
        return number_of(tokens, i, i + 1, _plain(tokens[i].low, 0), "figure"), i + 1
    above, below = _plain(tokens[i].low, -1), float(tokens[i + 2].low)
    dated = low_at(tokens, i + 3) == "/" and adjoins(tokens, i + 3) and is_int(tokens, i + 4) and adjoins(tokens, i + 4)
    padded = tokens[i].low[0] == "0" or tokens[i + 2].low[0] == "0"
    if dated:
        return None, i + 5
    if not padded and 0 < above < below and below in KITCHEN_DENOMINATORS and above.is_integer():
        return number_of(tokens, i, i + 3, above / below, "fraction", figures=(above, below)), i + 3
    if not padded and 0 <= above <= below and below in (SCORE_DENOMINATORS | {5}):
        return number_of(tokens, i, i + 3, above / below, "score", figures=(above, below)), i + 3
    if "." in tokens[i].low:  # a figure of a table: 23.4/3.58/5.4/112
        return number_of(tokens, i, i + 1, above, "decimal"), i + 1
    return None, i + 3


def _date_or_ratio(tokens: Sequence[Token], i: int, mark: str) -> int:
    """Where a clock time, a ratio or a date in figures that starts at `i` ends; `i` where there is none."""
    if not (adjoins(tokens, i + 2) and is_int(tokens, i + 2)):
        return i
    if mark == ":":
        seconds = (
            low_at(tokens, i + 3) == ":" and is_int(tokens, i + 4) and adjoins(tokens, i + 3) and adjoins(tokens, i + 4)
        )
        return i + 5 if seconds else i + 3
    if mark == "." and "." in tokens[i].low:  # 3.10.2024
        return i + 3
    chained = (
        low_at(tokens, i + 3) == mark and adjoins(tokens, i + 3) and is_int(tokens, i + 4) and adjoins(tokens, i + 4)
    )
    return i + 5 if chained and mark == "-" else i


def _mixed(tokens: Sequence[Token], i: int, j: int) -> Number | None:
    """1 1/2, 1-1/2, 1½, 1 ½."""
    whole = float(tokens[i].low)
    low = low_at(tokens, j)
    if low and low[0] in VULGAR:
        part = _glued(tokens[j], j)
        if part is not None:
            return part._replace(start=tokens[i].start, first=i, value=whole + part.value, style="fraction")
    if (
        is_int(tokens, j)
        and low_at(tokens, j + 1) == "/"
        and adjoins(tokens, j + 1)
        and not adjoins(tokens, j - 1 if j == i + 1 else 0)
    ):
        part, last = _slashed(tokens, j)
        if part is not None and part.style == "fraction":
            return number_of(tokens, i, last, whole + part.value, "fraction")
    return None


def _figure_and_words(tokens: Sequence[Token], i: int) -> Number | None:
    """5 dozen, 2 hundred, 5 and a half, 1 point 0 4 2."""
    value = float(tokens[i].low)
    low = low_at(tokens, i + 1)
    if low in MULTIPLES:
        return number_of(tokens, i, i + 2, value * MULTIPLES[low], "words")
    if low == "and" and (half := and_a_half(tokens, i + 1)):
        return number_of(tokens, i, half[1], value + half[0], "words")
    if low in POINT and (digits := read_digits(tokens, i + 2)):
        return number_of(tokens, i, digits[1], float(f"{tokens[i].low}.{digits[0]}"), "dictated")
    return None


def _glued(token: Token, i: int) -> Number | None:
    """½, ½tsp, half-gallon, half-dozen, three-quarters: a fraction alone or run into its unit."""
    if token.low[0] in VULGAR:
        value, size, rest = VULGAR[token.low[0]], 1, token.low[1:].removeprefix("-")
        return (
            Number(token.start, token.start + size, i, i + 1, value, False, "fraction")
            if not rest or rest in UNIT_WORDS
            else None
        )
    word, _, rest = token.low.partition("-")
    if word in ("half", "quarter"):
        if rest in MULTIPLES:
            return Number(token.start, token.end, i, i + 1, MULTIPLES[rest] / PARTS[word], False, "words")
        return (
            Number(token.start, token.start + len(word), i, i + 1, 1 / PARTS[word], False, "fraction")
            if rest in UNIT_WORDS
            else None
        )
    if 0 < ONES.get(word, 0) < PARTS.get(rest, 0):
        return Number(token.start, token.end, i, i + 1, ONES[word] / PARTS[rest], False, "fraction")
    return None


# What stands around a number


def _with_approximation(tokens: Sequence[Token], number: Number) -> Number:
    """The number with a minus sign, "about", "just under", "ish" or "or so" taken in."""
    first, last = number.first, number.last
    before = low_at(tokens, first - 1)
    if before in ("minus", "-") and _negative(tokens, first, last):
        number = number._replace(start=tokens[first - 1].start, first=first - 1, value=-number.value)
        first -= 1
        before = low_at(tokens, first - 1)
    k = first - 1
    if before == "." and low_at(tokens, first - 2) in ("ca", "c", "approx", "abt", "est"):
        k, before = first - 2, tokens[first - 2].low
    unit_c = before == "c" and (
        k == first - 1 or (k > 0 and (tokens[k - 1].kind == "number" or tokens[k - 1].low in ("°", "º")))
    )
    if before in APPROX_BEFORE and not unit_c:
        number = number._replace(start=tokens[k].start, first=k, approx=True)
    elif before in APPROX_PHRASES and low_at(tokens, first - 2) in APPROX_PHRASES[before]:
        number = number._replace(start=tokens[first - 2].start, first=first - 2, approx=True)
    after = low_at(tokens, last)
    if after in APPROX_AFTER:
        return number._replace(end=tokens[last].end, last=last + 1, approx=True)
    if after == "-" and low_at(tokens, last + 1) in APPROX_AFTER and adjoins(tokens, last):
        return number._replace(end=tokens[last + 1].end, last=last + 2, approx=True)
    if after == "or" and low_at(tokens, last + 1) in ("so", "thereabouts"):
        return number._replace(end=tokens[last + 1].end, last=last + 2, approx=True)
    return number


def _negative(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether the minus before `first` is a sign: not in "plus or minus"; a hyphen only in a temperature or Brix."""
    if tokens[first - 1].low == "minus":
        return low_at(tokens, first - 2) != "or"
    spaced = first < 2 or (not adjoins(tokens, first - 1) or tokens[first - 2].low == "(")
    scaled = low_at(tokens, last) in DEGREES | SUGAR_SCALES or low_at(tokens, first - 2) in SUGAR_SCALES
    return spaced and adjoins(tokens, first) and scaled


def _range(low: Number, high: Number, tokens: Sequence[Token], text: str) -> Number | None:
    """68-70, 2 to 3, 1 or 2 as one approximate number; not "from 3.2 to 3.5", which tells a change."""
    gap = text[low.end : high.start].lower()
    word = gap.strip()
    if (
        word not in RANGE_GAPS
        or low.value >= high.value
        or low.style in ("range", "suffix")
        or high.style in ("score", "suffix")
    ):
        return None
    if (
        (gap == word) != (len(word) == 1)
        or low_at(tokens, low.first - 1) == "from"
        or (word == "or" and high.value != low.value + 1)
    ):
        return None
    return Number(
        low.start, high.end, low.first, high.last, (low.value + high.value) / 2, True, "range", parts=(low, high)
    )
