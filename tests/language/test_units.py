"""The units that notes are written in: their sizes against pint and published tables, and every spelling read."""

import datetime
from typing import Any

import pint
import pytest

from journalbot.language.names import Names
from journalbot.language.text import understand
from journalbot.model import Settings
from journalbot.vocabulary.units import UNITS

UREG: Any = pint.UnitRegistry()
NAMES = Names()

# Unit, its name in pint's registry of units, its size in base units (litre, gram): NIST Handbook 44, Appendix C
# (volumes and the avoirdupois pound and ounce, exact); SI prefixes for the metric ones.
SIZES: list[tuple[str, str, float]] = [
    ("L", "liter", 1.0),
    ("ml", "milliliter", 0.001),
    ("cl", "centiliter", 0.01),
    ("gal", "gallon", 3.785411784),
    ("qt", "quart", 0.946352946),
    ("pt", "pint", 0.473176473),
    ("cup", "cup", 0.2365882365),
    ("fl oz", "fluid_ounce", 0.0295735295625),
    ("tbsp", "tablespoon", 0.01478676478125),
    ("tsp", "teaspoon", 0.00492892159375),
    ("g", "gram", 1.0),
    ("kg", "kilogram", 1000.0),
    ("mg", "milligram", 0.001),
    ("oz", "ounce", 28.349523125),
    ("lb", "pound", 453.59237),
]
COUNTED = {"tablet", "packet", "bottle", "piece", "pinch"}  # of no size, or of one that differs from maker to maker


@pytest.mark.parametrize(("unit", "name", "size"), SIZES)
def test_sizes(unit: str, name: str, size: float) -> None:
    row = UNITS[unit]
    base = {"volume": "liter", "mass": "gram"}[row.dimension]
    assert row.factor == pytest.approx(size, rel=1e-12)
    assert row.factor == pytest.approx(float(UREG.Quantity(1, name).to(base).magnitude), rel=1e-12)


def test_every_unit_is_checked_or_counted() -> None:
    assert {unit for unit, _, _ in SIZES} | COUNTED == set(UNITS)


SPELLINGS = [(spelling, unit) for unit, row in UNITS.items() for spelling in row.spellings]


@pytest.mark.parametrize(("spelling", "unit"), SPELLINGS)
def test_every_spelling_is_read(spelling: str, unit: str) -> None:
    text = understand(f"3.5 {spelling} of it", NAMES, datetime.date(2025, 10, 4), Settings())
    (amount,) = text.of("amount")
    assert (amount.value.value, amount.value.unit) == (3.5, unit)


@pytest.mark.parametrize(("one", "other"), [(a, b) for a in ("tsp", "g", "ml", "oz") for b in ("gal", "L", "qt")])
def test_a_rate_keeps_both_units(one: str, other: str) -> None:
    for joint in ("/", " per ", " / "):
        text = understand(f"0.5 {one}{joint}{other}", NAMES, datetime.date(2025, 10, 4), Settings())
        (amount,) = text.of("amount")
        assert (amount.value.value, amount.value.unit) == (0.5, f"{one}/{other}")
