"""Numbers in words: two, half a dozen, a hundred and twenty, two thirds, one point oh four two, ten ninety."""

from collections.abc import Sequence
from typing import NamedTuple

from journalbot.language.number_words import (
    ARTICLES,
    DIGITS,
    MOST_DIGITS,
    MULTIPLES,
    NOT_ONE_AFTER,
    NOT_POINT_AFTER,
    ONES,
    PAIRS,
    PARTS,
    POINT,
    SIMPLE,
    SPOKEN_GRAVITY,
    TENS,
    UNIT_WORDS,
)
from journalbot.language.tokens import Token


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


def low_at(tokens: Sequence[Token], i: int) -> str:
    """The word at `i` in lower case, or "" outside of the text."""
    return tokens[i].low if 0 <= i < len(tokens) else ""


def adjoins(tokens: Sequence[Token], i: int) -> bool:
    """Whether token `i` follows the one before it without a space."""
    return 0 < i < len(tokens) and tokens[i].start == tokens[i - 1].end


def number_of(
    tokens: Sequence[Token],
    first: int,
    last: int,
    value: float,
    style: str,
    decimal_comma_value: float | None = None,
    figures: tuple[float, float] | None = None,
) -> Number:
    """The number that the tokens from `first` up to `last` write."""
    start, end = tokens[first].start, tokens[last - 1].end
    return Number(start, end, first, last, value, False, style, decimal_comma_value, figures)


def is_int(tokens: Sequence[Token], i: int) -> bool:
    return 0 <= i < len(tokens) and tokens[i].low.isdecimal() and len(tokens[i].low) <= MOST_DIGITS


def read_words(tokens: Sequence[Token], i: int) -> Number | None:
    """The number that the words from `i` spell."""
    low = tokens[i].low
    if low == "and":
        half = and_a_half(tokens, i)
        if half is None or i == 0 or low_at(tokens, half[1]) in UNIT_WORDS:
            return None
        return number_of(tokens, i, half[1], half[0], "suffix")
    if low in POINT:
        digits = None if low_at(tokens, i - 1) in NOT_POINT_AFTER else read_digits(tokens, i + 1)
        return number_of(tokens, i, digits[1], float(f"0.{digits[0]}"), "dictated") if digits else None
    if (said := _dictated(tokens, i)) is not None or (said := _portion(tokens, i)) is not None:
        return said
    if low == "one" and (low_at(tokens, i - 1) in NOT_ONE_AFTER or low_at(tokens, i + 1) == "more"):
        return None
    counted = _cardinal(tokens, i)
    if counted is None:
        return None
    value, last = counted
    if low_at(tokens, last) == "and" and (half := and_a_half(tokens, last)):
        return number_of(tokens, i, half[1], value + half[0], "words")
    return number_of(tokens, i, last, value, "words")


def and_a_half(tokens: Sequence[Token], i: int) -> tuple[float, int] | None:
    """The value and the end of "and a half", "and a quarter", "and three quarters" with its "and" at `i`."""
    if (
        low_at(tokens, i + 1) in ("a", "one")
        and low_at(tokens, i + 2) in PARTS
        and low_at(tokens, i + 3) not in ("a", "an", "of", "dozen")
    ):
        return 1 / PARTS[tokens[i + 2].low], i + 3
    part = _portion(tokens, i + 1) if low_at(tokens, i + 1) in SIMPLE else None
    return (part.value, part.last) if part else None


def _portion(tokens: Sequence[Token], i: int) -> Number | None:
    """half, half a dozen, a half, quarter, a third of, two thirds, three-quarters."""
    low = tokens[i].low
    if low == "half" and low_at(tokens, i + 1) != "past":
        of_what = low_at(tokens, i + 2) if low_at(tokens, i + 1) in ARTICLES else ""
        if of_what in MULTIPLES:
            return number_of(tokens, i, i + 3, MULTIPLES[of_what] / 2, "words")
        return number_of(tokens, i, i + 2 if of_what else i + 1, 0.5, "fraction")
    count = 1 if low in ARTICLES else SIMPLE.get(low, 0)
    j = i + 1
    if low == "quarter":
        count, j = 1, i
    elif count == 0:
        return None
    elif low_at(tokens, j) == "-":
        j += 1
    word = low_at(tokens, j)
    if word not in PARTS or count >= PARTS[word]:
        return None
    after = low_at(tokens, j + 1)
    if word == "half":
        return number_of(tokens, i, j + 1, 0.5, "fraction") if count == 1 else None
    # "a third racking", "quarter past six": a part needs an "of" or a unit, but "two thirds" speaks for itself
    if count > 1 and word.endswith("s"):
        return number_of(tokens, i, j + 1, count / PARTS[word], "fraction")
    if (
        after == "of"
        or after in UNIT_WORDS
        or after in ARTICLES
        or (word == "quarter" and low in ARTICLES and after not in ("past", "to"))
    ):
        return number_of(tokens, i, j + 2 if after in ARTICLES else j + 1, count / PARTS[word], "fraction")
    return None


def _cardinal(tokens: Sequence[Token], i: int) -> tuple[float, int] | None:
    """A whole number in words from `i`, and where it ends: two, a hundred and twenty, two dozen, a couple of."""
    low = low_at(tokens, i)
    j = i
    if low in ARTICLES:
        j += 1
        follows = low_at(tokens, j)
        if follows not in MULTIPLES and follows not in PAIRS:
            return None
    elif low == "pair":
        return None  # "the pair of them" counts nothing; "a pair" does
    value: float = 1
    if (word := low_at(tokens, j)) in PAIRS:
        value, j = PAIRS[word], j + 1
        if low_at(tokens, j) == "of":
            j += 1
    elif (small := _below_hundred(tokens, j)) is not None:
        value, j = small
    elif word not in MULTIPLES:
        return None
    while (word := low_at(tokens, j)) in MULTIPLES:
        value *= MULTIPLES[word]
        j += 1
        if word in ("dozen", "doz"):
            return value, j
        k = j + 1 if low_at(tokens, j) == "and" else j
        if (
            (rest := _below_hundred(tokens, k)) is not None
            and rest[0] < MULTIPLES[word]
            and low_at(tokens, k) != "zero"
        ):
            follows = low_at(tokens, rest[1])
            if follows == "hundred" and word == "thousand":
                hundreds = rest[0] * 100
                value, j = value + hundreds, rest[1] + 1
                if (units := _below_hundred(tokens, j + 1 if low_at(tokens, j) == "and" else j)) is not None:
                    value, j = value + units[0], units[1]
            else:
                value, j = value + rest[0], rest[1]
    return (value, j) if j > i else None


def _below_hundred(tokens: Sequence[Token], i: int) -> tuple[int, int] | None:
    """A number below a hundred in words ("twenty one", "twenty-one", "seven"), and where it ends."""
    low = low_at(tokens, i)
    if low not in SIMPLE:
        return None
    if low in TENS and 0 < (one := ONES.get(low_at(tokens, i + 1), 0)) < 10:
        return TENS[low] + one, i + 2
    return SIMPLE[low], i + 1


def _dictated(tokens: Sequence[Token], i: int) -> Number | None:
    """one point oh four two, three point four five, ten ninety, nine nine eight, ten oh four."""
    low = tokens[i].low
    whole = 0 if low in DIGITS and DIGITS[low] == "0" else SIMPLE.get(low)
    if whole is None:
        return None
    ahead = low_at(tokens, i + 1)
    j = i + 1
    if low in TENS and 0 < (one := ONES.get(ahead, 0)) < 10:
        whole, j = whole + one, i + 2
    if low_at(tokens, j) in POINT and (digits := read_digits(tokens, j + 1)):
        return number_of(tokens, i, digits[1], float(f"{whole}.{digits[0]}"), "dictated")
    if low in SPOKEN_GRAVITY and ahead in DIGITS | TENS | SIMPLE:
        digits = read_digits(tokens, i + 1)
        if digits and len(digits[0]) == 2:
            return number_of(tokens, i, digits[1], float(f"{whole}{digits[0]}"), "dictated")
    if low == "one" and ahead in ("oh", "zero", "o") and (digits := read_digits(tokens, i + 1)) and len(digits[0]) == 3:
        return number_of(tokens, i, digits[1], float(f"1{digits[0]}"), "dictated")
    return None


def read_digits(tokens: Sequence[Token], i: int) -> tuple[str, int] | None:
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
