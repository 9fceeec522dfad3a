"""Measurements: how each quantity is written, what a bare figure is taken for, and what no must or wine can show."""

import datetime

import pytest

from journalbot.language.names import Names
from journalbot.language.readings import Reading
from journalbot.language.text import understand
from journalbot.model import Settings
from journalbot.vocabulary.quantities import QUANTITIES

NAMES = Names()
US, METRIC = Settings(), Settings(units="metric", day_first=True, currency="EUR")


def readings(text: str, settings: Settings = US) -> list[Reading]:
    """Every reading in a text."""
    found = understand(text, NAMES, datetime.date(2025, 10, 4), settings).of("reading")
    return [m.value for m in found]


# What is written; quantity, value and unit. The first of each quantity are the format's.
ONE: list[tuple[str, str, float, str]] = [
    ("SG 0.996", "sg", 0.996, "SG"),
    ("gravity .996", "sg", 0.996, "SG"),
    ("1.088", "sg", 1.088, "SG"),
    ("OG 1090", "sg", 1.09, "SG"),
    ("sg: 1,012", "sg", 1.012, "SG"),
    ("sg 1,012 today", "sg", 1.012, "SG"),
    ("SG 998", "sg", 0.998, "SG"),
    ("SG was 1.05", "sg", 1.05, "SG"),
    ("specific gravity of 1.042", "sg", 1.042, "SG"),
    ("hydrometer reads 1.015", "sg", 1.015, "SG"),
    ("one point oh one oh", "sg", 1.01, "SG"),
    ("ten ninety", "sg", 1.09, "SG"),
    (".994", "sg", 0.994, "SG"),
    ("23.5 Brix", "brix", 23.5, "Brix"),
    ("Brix 23.5", "brix", 23.5, "Brix"),
    ("23.5 °Bx", "brix", 23.5, "Brix"),
    ("23.5 bricks", "brix", 23.5, "Brix"),
    ("-1.5 Brix", "brix", -1.5, "Brix"),
    ("potential alcohol 12%", "potential_alcohol", 12, "% vol"),
    ("PA 12", "potential_alcohol", 12, "% vol"),
    ("pH 3.45", "ph", 3.45, "pH"),
    ("ph=3,45", "ph", 3.45, "pH"),
    ("a pH of 3.4", "ph", 3.4, "pH"),
    ("TA 6.5 g/L", "ta", 6.5, "g/L"),
    ("TA 0.65%", "ta", 0.65, "%"),
    ("0.65% acid", "ta", 0.65, "%"),
    ("TA .65", "ta", 0.65, "%"),
    ("TA 6.5", "ta", 6.5, "g/L"),
    ("temp 68", "temperature", 68, "F"),
    ("68F", "temperature", 68, "F"),
    ("20 C", "temperature", 20, "C"),
    ("68 °F", "temperature", 68, "F"),
    ("20°C", "temperature", 20, "C"),
    ("70 degrees", "temperature", 70, "F"),
    ("22 deg C", "temperature", 22, "C"),
    ("68 Fahrenheit", "temperature", 68, "F"),
    ("free SO2 28 ppm", "free_so2", 28, "mg/L"),
    ("28 mg/l free", "free_so2", 28, "mg/L"),
    ("total SO2 90", "total_so2", 90, "mg/L"),
    ("13.1% ABV", "alcohol", 13.1, "% vol"),
    ("alcohol 13.1%", "alcohol", 13.1, "% vol"),
    ("residual sugar 4 g/L", "residual_sugar", 4, "g/L"),
    ("RS 4 g/l", "residual_sugar", 4, "g/L"),
    ("malic 0.3 g/L", "malic", 0.3, "g/L"),
    ("VA 0.5 g/L", "volatile_acidity", 0.5, "g/L"),
    ("YAN 140", "yan", 140, "mg/L"),
]


@pytest.mark.parametrize(("text", "quantity", "value", "unit"), ONE)
def test_one(text: str, quantity: str, value: float, unit: str) -> None:
    found = [(r.quantity, r.value, r.unit, r.possible) for r in readings(text)]
    assert found == [(quantity, value, unit, True)]


# Several in one text, in order.
SEVERAL: list[tuple[str, list[tuple[str, float]]]] = [
    ("SG 1.042 @ 71", [("sg", 1.042), ("temperature", 71)]),
    ("1.064 at 60", [("sg", 1.064), ("temperature", 60)]),
    ("pH 3.6, TA 7 g/l, 24 Brix", [("ph", 3.6), ("ta", 7), ("brix", 24)]),
    ("1.030 yesterday, 1.022 today", [("sg", 1.03), ("sg", 1.022)]),
    ("free SO2 25, total 90", [("free_so2", 25), ("total_so2", 90)]),
    ("Brix 22.4 pH 3.5", [("brix", 22.4), ("ph", 3.5)]),
]


@pytest.mark.parametrize(("text", "wanted"), SEVERAL)
def test_several(text: str, wanted: list[tuple[str, float]]) -> None:
    assert [(r.quantity, r.value) for r in readings(text)] == wanted


def test_the_unit_of_a_bare_temperature_is_the_journal_s() -> None:
    assert [r.unit for r in readings("temp 22", METRIC)] == ["C"]
    assert [r.unit for r in readings("22 degrees", METRIC)] == ["C"]
    assert [r.unit for r in readings("1.064 @ 22", METRIC)] == ["SG", "C"]


# Figures that are no reading at all.
@pytest.mark.parametrize(
    "text",
    ["batch 3", "28 bottles", "5 g", "$12", "carboy 2", "2024", "Oct 4", "7:30", "3x", "K-17", "1/4 tsp", "page 12"],
)
def test_no_reading(text: str) -> None:
    assert readings(text) == []


IMPOSSIBLE = ["SG 9.96", "pH 34", "SG 2.010", "TA 65 g/L", "Brix 99", "abv 95%", "pH 0.3", "gravity 0.5", "pH 13.1"]


@pytest.mark.parametrize("text", IMPOSSIBLE)
def test_impossible(text: str) -> None:
    assert [r.possible for r in readings(text)] == [False]


@pytest.mark.parametrize("quantity", sorted(QUANTITIES.keys() - {"sg", "temperature", "volume"}))
def test_every_name_of_a_quantity_is_read(quantity: str) -> None:
    """Each spelling before a figure in the middle of its range, with its unit."""
    row = QUANTITIES[quantity]
    middle = {"ph": 3.4}.get(quantity, 6)
    for spelling in row.spellings:
        if spelling.endswith("."):
            continue  # the point is a token of its own
        found = readings(f"{spelling} {middle} {'' if quantity == 'ph' else row.unit.removesuffix(' vol')}")
        assert [(r.quantity, r.value, r.unit) for r in found] == [(quantity, middle, row.unit)], spelling
