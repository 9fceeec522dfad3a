"""Numbers with what follows them: amounts, rates, money, scores, times and bottles, as notes have them."""

import datetime

import pytest

from journalbot.language.names import Names
from journalbot.language.text import understand
from journalbot.model import Settings

NAMES = Names()
US, METRIC = Settings(), Settings(units="metric", day_first=True, currency="EUR")

# What is written, the kind of mention, and the figures and unit read (the format's rules for numbers and units).
AMOUNTS: list[tuple[str, float, str]] = [
    ("5 g of DAP", 5, "g"),
    ("5g", 5, "g"),
    ("1/4 tsp", 0.25, "tsp"),  # format
    ("half a tsp", 0.5, "tsp"),  # format
    ("two cups", 2, "cup"),  # format
    ("a dozen bottles", 12, "bottle"),  # format
    ("1 1/2 tsp", 1.5, "tsp"),  # format
    ("1/4 tsp per 5 gal", 0.05, "tsp/gal"),  # format
    ("½ tsp", 0.5, "tsp"),
    ("1½ cups", 1.5, "cup"),
    ("2.5 kg", 2.5, "kg"),
    ("2,5 kg", 2.5, "kg"),
    (".5 oz", 0.5, "oz"),
    ("a teaspoon", 1, "tsp"),
    ("a teaspoon and a half", 1.5, "tsp"),
    ("two and a half cups", 2.5, "cup"),
    ("5-gallon", 5, "gal"),
    ("3 lb 8 oz", 3.5, "lb"),
    ("30 ppm", 30, "mg/L"),
    ("30 mg/l", 30, "mg/L"),
    ("0.5 g/L", 0.5, "g/L"),
    ("1 g per litre", 1, "g/L"),
    ("20 g/hl", 0.2, "g/L"),
    ("1 tsp/gallon", 1, "tsp/gal"),
    ("three quarters of a cup", 0.75, "cup"),
    ("half of a cup", 0.5, "cup"),
    ("1,200 g", 1200, "g"),
    ("a couple of tablets", 2, "tablet"),
    ("6 fl oz", 6, "fl oz"),
    ("one packet", 1, "packet"),
    ("fifty grams", 50, "g"),
]


@pytest.mark.parametrize(("text", "value", "unit"), AMOUNTS)
def test_amounts(text: str, value: float, unit: str) -> None:
    found = understand(text, NAMES, datetime.date(2025, 10, 4), US).of("amount")
    assert [(m.value.value, m.value.unit, m.value.approx) for m in found] == [(pytest.approx(value), unit, False)]


ABOUT = [
    "about 5 gal", "~5 gal", "approx 5 gal", "roughly 5 gal", "around 5 gal", "circa 5 gal",
    "5 gal or so", "5 or so gal", "5 gal or thereabouts",
]  # fmt: skip


@pytest.mark.parametrize("about", ABOUT)
def test_approximations(about: str) -> None:
    found = understand(about, NAMES, datetime.date(2025, 10, 4), US).of("amount")
    assert [(m.value.value, m.value.unit, m.value.approx) for m in found] == [(5, "gal", True)]


# What each kind of mention holds.
PARTS = {
    "money": ("value", "unit"),
    "score": ("score", "out_of"),
    "bottles": ("count", "size", "unit"),
    "times": ("value", "unit"),
    "percent": ("value", "unit"),
}

# What is written, the settings, the kind of mention and what it holds.
OTHERS: list[tuple[str, Settings, str, tuple[object, ...]]] = [
    ("$12", US, "money", (12, "USD")),
    ("$12.50", US, "money", (12.5, "USD")),
    ("12 dollars", US, "money", (12, "USD")),
    ("12 €", METRIC, "money", (12, "EUR")),
    ("€12,50", METRIC, "money", (12.5, "EUR")),
    ("£8", US, "money", (8, "GBP")),
    ("20 euros", US, "money", (20, "EUR")),
    ("7/10", US, "score", (7, 10)),
    ("8 out of 10", US, "score", (8, 10)),
    ("15/20", METRIC, "score", (15, 20)),
    ("7.5/10", US, "score", (7.5, 10)),
    ("28 x 750 ml", US, "bottles", (28, 750, "ml")),
    ("24 x 0.75", METRIC, "bottles", (24, 0.75, "L")),
    ("12 x 375", US, "bottles", (12, 375, "ml")),
    ("25 x 75 cl", METRIC, "bottles", (25, 75, "cl")),
    ("20 bottles of 75 cl", METRIC, "bottles", (20, 75, "cl")),
    ("4 halves of 37.5 cl", METRIC, "bottles", (4, 37.5, "cl")),
    ("twice", US, "times", (2, "times")),
    ("3x", US, "times", (3, "times")),
    ("x2", US, "times", (2, "times")),
    ("three times", US, "times", (3, "times")),
    ("12%", US, "percent", (12, "%")),
    ("12 percent", US, "percent", (12, "%")),
]


@pytest.mark.parametrize(("text", "settings", "kind", "holds"), OTHERS)
def test_others(text: str, settings: Settings, kind: str, holds: tuple[object, ...]) -> None:
    found = understand(text, NAMES, datetime.date(2025, 10, 4), settings).of(kind)
    assert [tuple(getattr(m.value, name) for name in PARTS[kind]) for m in found] == [holds]


# No amount of anything.
@pytest.mark.parametrize("text", ["batch 3", "carboy 2", "Oct 4", "7:30", "SG 1.010", "2024", "the 4th", "K-17"])
def test_no_amount(text: str) -> None:
    assert understand(text, NAMES, datetime.date(2025, 10, 4), US).of("amount", "money", "bottles", "times") == []
