"""How a figure is told: no more digits than it bears; and how the figures of a question are taken apart."""

import math
import re
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journalbot.language.names import Names
from journalbot.model import Settings
from journalbot.questions.figures import find_figures
from journalbot.questions.measures.working import between, said, spoons
from journalbot.questions.signs import read_text
from journalbot.questions.whom import references
from journalbot.winemaking.ranges import Estimate
from journalbot.winemaking.sulfite import POTASSIUM
from journalbot.winemaking.units import teaspoons

positive = st.floats(0.001, 5000)


def place(number: str) -> int:
    """The decimal place of the last digit that is told: 3 for 0.125, 0 for 12, -2 for 1200."""
    if "." in number:
        return len(number.partition(".")[2])
    return len(number.rstrip("0")) - len(number) if number.strip("0") else 0


@given(positive, st.floats(0.02, 0.9))
def test_a_value_ends_where_its_uncertainty_begins(value: float, share: float) -> None:
    found = Estimate.share(value, share)
    told = re.match(r"about ([\d.,]+)", said(found))
    assert told is not None
    number = told.group(1).replace(",", "")
    half = max(found.high - found.value, found.value - found.low)
    # At least one figure of it stays, however wide the band.
    least = -math.floor(math.log10(float(number))) if float(number) else 0
    assert place(number) <= max(-math.floor(math.log10(half) + 1e-9), least)
    assert abs(float(number) - value) <= max(half, 0.5 * 10.0 ** -place(number)) + 1e-9


@given(positive)
def test_plain_arithmetic_is_told_to_a_hundredth_part(value: float) -> None:
    number = float(said(Estimate.share(value, 0.01)).replace(",", ""))
    assert number == pytest.approx(value, rel=0.06, abs=0.0006)
    assert "about" not in said(Estimate.share(value, 0.01))


@given(positive, positive)
def test_a_span_of_practice_has_two_figures(low: float, high: float) -> None:
    told = between(min(low, high), max(low, high), "g")
    assert all(len(n.replace(".", "").strip("0")) <= 2 for n in re.findall(r"[\d.]+", told))


@given(st.floats(0.5, 100))
def test_spoons_are_nearer_than_a_spoon_is_good_for(grams: float) -> None:
    """A level spoon is good to about a quarter; thirds, quarters and eighths tell it finely enough."""
    told = re.search(
        r"about (\d+)?(?:(?: |^)?(\d)/(\d))? level tsp", spoons(grams, POTASSIUM).replace("about ", "about ")
    )
    level = teaspoons(grams, POTASSIUM).value
    if told is None:
        assert level < 1 / 16 or level >= 24
        return
    whole, over, under = told.groups()
    numbers = re.findall(r"\d+", told.group(0))
    value = (
        int(numbers[0]) / int(numbers[1])
        if len(numbers) == 2
        else sum([int(numbers[0]), int(numbers[1]) / int(numbers[2])] if len(numbers) == 3 else [int(numbers[0])])
    )
    assert value == pytest.approx(level, abs=0.13)
    assert (whole, over, under) != (None, None, None)


FIGURES: tuple[tuple[str, tuple[tuple[str, float, str], ...]], ...] = (  # text, (sort, value, role)
    ("from 18 to 22 brix", (("brix", 18, "from"), ("brix", 22, "to"))),
    ("from 6.1 to 7 g/L", (("g/L", 6.1, "from"), ("g/L", 7, "to"))),
    ("1.090 to 0.996", (("sg", 1.090, "from"), ("sg", 0.996, "to"))),
    ("og 1.085 fg .996", (("sg", 1.085, "from"), ("sg", 0.996, "to"))),
    ("a TA of 8 and a TA of 6 to get 6.5", (("ta", 8, ""), ("ta", 6, "and"), ("ta", 6.5, "to"))),
    ("pH 3.2 and 3.8 to get 3.5", (("ph", 3.2, ""), ("ph", 3.8, "and"), ("ph", 3.5, "to"))),
    ("30 ppm in 6 gallons", (("mg/L", 30, ""), ("volume", 6, "in"))),
    ("2 campden tablets per gallon", (("rate", 2, ""),)),
    ("1/4 tsp in 5 gal", (("spoon", 0.25, ""), ("volume", 5, "in"))),
    ("1.250", (("sg", 1.25, ""),)),
    ("-1.2 brix", (("brix", -1.2, ""),)),
    ("for -3 gallons", (("volume", -3, "for"),)),
    ("at 85F", (("temperature", 85, "at"),)),
    ("at 20 °C", (("temperature", 20, "at"),)),
    ("21 °Bx", (("brix", 21, ""),)),
    ("0.8 molecular at pH 3.4", (("molecular", 0.8, ""), ("ph", 3.4, "at"))),
    (
        "3 gal of 12% and 2 gal of 14%",
        (("volume", 3, ""), ("percent", 12, "of"), ("volume", 2, "and"), ("percent", 14, "of")),
    ),
    ("375 ml bottles", (("size", 375, ""),)),
    ("1,250 L", (("volume", 1250, ""),)),
    ("batch 1 to 30 ppm", (("mg/L", 30, "to"),)),
)


@pytest.mark.parametrize(("typed", "wanted"), FIGURES, ids=[row[0] for row in FIGURES])
def test_figures(typed: str, wanted: tuple[tuple[str, float, str], ...]) -> None:
    text = read_text(typed, Names(), date(2024, 11, 20), Settings())
    found = [(f.sort, f.value, f.role) for f in find_figures(text, references(text))]
    assert found == list(wanted)
