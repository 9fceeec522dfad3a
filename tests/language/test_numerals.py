"""Numbers as people write and say them, checked by a table, the standard library and properties."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journalbot.language.numerals import Number, find_numbers
from journalbot.language.tokens import tokenize

# What is written, its value and its style.
VALUES: list[tuple[str, float, str]] = [
    ("5", 5, "figure"),
    ("1.010", 1.010, "decimal"),
    (".998", 0.998, "decimal"),
    ("22,5", 22.5, "decimal"),
    ("0,998", 0.998, "decimal"),
    ("1,012", 1012, "grouped"),
    ("12,500.5", 12500.5, "grouped"),
    ("1/4", 0.25, "fraction"),
    ("3/8 tsp", 0.375, "fraction"),
    ("1 1/2 tsp", 1.5, "fraction"),
    ("1-1/2 cups", 1.5, "fraction"),
    ("2 1/2", 2.5, "fraction"),
    ("½", 0.5, "fraction"),
    ("1½", 1.5, "fraction"),
    ("1 ½ tsp", 1.5, "fraction"),
    ("¼tsp", 0.25, "fraction"),
    ("2¼tsp", 2.25, "fraction"),
    ("half a tsp", 0.5, "fraction"),
    ("half an ounce", 0.5, "fraction"),
    ("a half cup", 0.5, "fraction"),
    ("half-gallon", 0.5, "fraction"),
    ("quarter tsp", 0.25, "fraction"),
    ("a quarter of it", 0.25, "fraction"),
    ("three quarters", 0.75, "fraction"),
    ("three-quarters", 0.75, "fraction"),
    ("two thirds", 2 / 3, "fraction"),
    ("a third of a cup", 1 / 3, "fraction"),
    ("an eighth of a tsp", 0.125, "fraction"),
    ("7/10", 0.7, "score"),
    ("8.5/10", 0.85, "score"),
    ("13/20", 0.65, "score"),
    ("two", 2, "words"),
    ("twenty-one", 21, "words"),
    ("twenty one", 21, "words"),
    ("a hundred", 100, "words"),
    ("one hundred twenty", 120, "words"),
    ("a hundred and twenty", 120, "words"),
    ("twelve hundred", 1200, "words"),
    ("two thousand three hundred and five", 2305, "words"),
    ("a dozen", 12, "words"),
    ("half a dozen", 6, "words"),
    ("half-dozen", 6, "words"),
    ("two dozen", 24, "words"),
    ("5 dozen", 60, "words"),
    ("a couple of", 2, "words"),
    ("a couple dozen", 24, "words"),
    ("a pair", 2, "words"),
    ("one and a half", 1.5, "words"),
    ("5 and a half", 5.5, "words"),
    ("one and three quarters", 1.75, "words"),
    ("a cup and a half", 0.5, "suffix"),
    ("bottles and a half", 0.5, "suffix"),
    ("one point oh four two", 1.042, "dictated"),
    ("one point oh forty two", 1.042, "dictated"),
    ("point nine nine eight", 0.998, "dictated"),
    ("zero point nine nine eight", 0.998, "dictated"),
    ("oh point nine ninety eight", 0.998, "dictated"),
    ("three point four five", 3.45, "dictated"),
    ("1 point 0 4 2", 1.042, "dictated"),
    ("ten ninety", 1090, "dictated"),
    ("ten forty two", 1042, "dictated"),
    ("ten oh four", 1004, "dictated"),
    ("nine ninety eight", 998, "dictated"),
    ("nine nine eight", 998, "dictated"),
    ("one oh four two", 1042, "dictated"),
    ("minus five", -5, "words"),
    ("-2 C", -2, "figure"),
    ("temp -2°C", -2, "figure"),
    ("SG -1.010", 1.010, "decimal"),
    ("plus or minus 2", 2, "figure"),
    ("one went home", 1, "words"),
    ("28x", 28, "figure"),
    ("#9", 9, "figure"),
]

APPROXIMATE: list[tuple[str, float, str]] = [
    ("~68F", 68, "~68"),
    ("about 5 gal", 5, "about 5"),
    ("abt 8", 8, "abt 8"),
    ("roughly 45 litres", 45, "roughly 45"),
    ("around half a cup", 0.5, "around half a"),
    ("approx. 5", 5, "approx. 5"),
    ("ca. 5", 5, "ca. 5"),
    ("c. 5", 5, "c. 5"),
    ("almost two gallons", 2, "almost two"),
    ("nearly 5", 5, "nearly 5"),
    ("just under 5", 5, "just under 5"),
    ("just over half a gal", 0.5, "just over half a"),
    ("5ish", 5, "5ish"),
    ("70-ish", 70, "70-ish"),
    ("5 or so", 5, "5 or so"),
    ("68-70", 69, "68-70"),
    ("68–70F", 69, "68–70"),
    ("2 to 3 cups", 2.5, "2 to 3"),
    ("1 or 2", 1.5, "1 or 2"),
    ("2 TO 3", 2.5, "2 TO 3"),
    ("1.5-2", 1.75, "1.5-2"),
    ("1/4 to 1/2 tsp", 0.375, "1/4 to 1/2"),
    ("two and a half to three", 2.75, "two and a half to three"),
]

SEVERAL: list[tuple[str, list[float]]] = [
    ("one point oh four two at seventy", [1.042, 70]),
    ("from 3.2 to 3.5", [3.2, 3.5]),
    ("18 C. 5 g", [18, 5]),
    ("5 g and a half tsp", [5, 0.5]),
    ("carboy 2, 1.010", [2, 1.010]),
    ("batch 3:1.010", [3, 1.010]),
    ("3 x 750ml", [3, 750]),
    ("5 gal and half a tsp", [5, 0.5]),
    ("2 packets at 8pm, 74 degrees", [2, 74]),
    ("on 10/3 1/2 tsp", [0.5]),
]

NO_NUMBERS: list[str] = [
    *(
        "b3",
        "K-17",
        "QB1120",
        "the 4th",
        "first",
        "21st",
        "a second racking",
        "a",
        "an",
        "a few",
        "half past",
        "a third racking",
    ),
    *(
        "10/3",
        "10/3/24",
        "30/2",
        "24/7",
        "2024-10-03",
        "10-3-24",
        "3.10.2024",
        "9:30",
        "21:30:15",
        "8pm",
        "8 p.m.",
        "9.30pm",
        "1:10",
    ),
    *("the pink one", "this one", "one more", "half-full", "at this point", "and"),
]


def numbers(text: str) -> list[Number]:
    return find_numbers(tokenize(text), text)


def only(text: str) -> Number:
    found = numbers(text)
    assert len(found) == 1, found
    return found[0]


@pytest.mark.parametrize(("text", "value", "style"), VALUES)
def test_values(text: str, value: float, style: str) -> None:
    number = only(text)
    assert number.value == pytest.approx(value, abs=1e-12)
    assert (number.style, number.approx) == (style, False)


@pytest.mark.parametrize(("text", "value", "written"), APPROXIMATE)
def test_approximations_and_ranges(text: str, value: float, written: str) -> None:
    """A range reads as the mean of its ends."""
    number = only(text)
    assert (number.value, number.approx, text[number.start : number.end]) == (value, True, written)


@pytest.mark.parametrize(("text", "values"), SEVERAL)
def test_several_numbers(text: str, values: list[float]) -> None:
    assert [n.value for n in numbers(text)] == values


@pytest.mark.parametrize("text", NO_NUMBERS)
def test_what_is_no_number(text: str) -> None:
    assert numbers(text) == []


def test_a_comma_may_be_either() -> None:
    assert (only("1,012").value, only("1,012").decimal_comma_value) == (1012, 1.012)
    assert only("12,500.5").decimal_comma_value is None
    assert only("1,012,500").decimal_comma_value is None


def test_a_range_keeps_its_ends_and_a_score_its_figures() -> None:
    assert [part.value for part in only("2-3").parts] == [2, 3]
    assert only("7/10").figures == (7, 10)
    assert only("3/4").figures == (3, 4)


def test_a_fraction_run_into_its_unit_ends_before_it() -> None:
    number = only("½tsp")
    assert (number.start, number.end) == (0, 1)


@given(st.integers(0, 99_999), st.integers(0, 4))
def test_figures_read_as_python_reads_them(number: int, places: int) -> None:
    """Outside check: Python's own float."""
    text = f"{number / 10**places:.{places}f}"
    assert only(text).value == float(text)


@given(st.integers(1, 9), st.sampled_from([2, 3, 4, 8, 16]), st.integers(1, 15))
def test_fractions_read_as_python_reads_them(whole: int, below: int, above: int) -> None:
    """Outside check: fractions.Fraction."""
    above = above % below or 1
    assert only(f"{above}/{below} tsp").value == float(Fraction(above, below))
    assert only(f"{whole} {above}/{below} tsp").value == pytest.approx(float(whole + Fraction(above, below)))


SMALL = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"]
SMALL += [f"{head}teen" for head in ("thir", "four", "fif", "six", "seven", "eigh", "nine")]
TENS = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"]


def spelt(n: int) -> str:
    """A whole number below ten thousand in English words."""
    if n < 20:
        return SMALL[n]
    if n < 100:
        return TENS[n // 10 - 2] + (f"-{SMALL[n % 10]}" if n % 10 else "")
    size, name = (1000, "thousand") if n >= 1000 else (100, "hundred")
    rest = f" {'and ' if n % size < 100 else ''}{spelt(n % size)}" if n % size else ""
    return f"{spelt(n // size)} {name}{rest}"


@given(st.integers(0, 9_999))
def test_a_number_in_words_reads_as_itself(n: int) -> None:
    assert only(spelt(n)).value == n
    assert only(spelt(n).replace("-", " ")).value == n


PIECES = st.sampled_from(
    [
        *(
            "5",
            "1.010",
            ".5",
            "1,012",
            "1",
            "/",
            "2",
            "-",
            "68-70",
            "½",
            "½tsp",
            "half",
            "a",
            "an",
            "and",
            "quarter",
            "third",
            "dozen",
        ),
        *(
            "hundred",
            "thousand",
            "two",
            "twenty",
            "ten",
            "oh",
            "point",
            "one",
            "couple",
            "of",
            "pair",
            "about",
            "~",
            "c",
            ".",
            "ca",
        ),
        *(
            "to",
            "or",
            "so",
            "ish",
            "minus",
            "from",
            "-2",
            "C",
            "4th",
            ":",
            "30",
            "pm",
            "tsp",
            "zero",
            "nine",
            "750ml",
            "\n",
        ),
    ]
)
TEXTS = st.one_of(st.text(), st.lists(PIECES, max_size=12).map(" ".join), st.lists(PIECES, max_size=8).map("".join))


@given(TEXTS)
def test_no_text_raises_and_numbers_lie_in_it(text: str) -> None:
    tokens = tokenize(text)
    floor = 0
    for n in find_numbers(tokens, text):
        assert n.start == tokens[n.first].start
        assert tokens[n.last - 1].start < n.end <= tokens[n.last - 1].end
        assert n.first >= floor
        floor = n.last
        assert abs(n.value) < 1e18


@given(TEXTS)
def test_letter_case_and_trailing_space_change_nothing(text: str) -> None:
    if text.isascii() and "x" not in text.lower():  # "28x750" is cut at a small x only
        values = [n.value for n in numbers(text)]
        assert [n.value for n in numbers(text.upper())] == [n.value for n in numbers(text.lower())] == values
        assert [n.value for n in numbers(text + " ")] == values
