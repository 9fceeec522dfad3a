"""Units, rates, spoons and tablets."""

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from journalbot.vocabulary.spoons import SPOONS
from journalbot.vocabulary.units import UNITS
from journalbot.winemaking import gravity, units
from journalbot.winemaking.ranges import OutOfRange

# id, unit, base unit, size. NIST Handbook 44, Appendix C (gallon, cup); NIST SP 430 (spoons); Weights and Measures Act
# 1985 (pound, ounce, imperial gallon); the rest computed from them.
SIZES = [
    ("9.01", "gal", "L", 3.785411784),
    ("9.02", "qt", "L", 0.946352946),
    ("9.02", "pt", "ml", 473.176473),
    ("9.03", "cup", "ml", 236.5882365),
    ("9.03", "cup", "fl oz", 8),
    ("9.04", "fl oz", "ml", 29.5735295625),
    ("9.05", "tbsp", "ml", 14.78676478125),
    ("9.05", "tsp", "ml", 4.92892159375),
    ("9.05", "tbsp", "tsp", 3),
    ("9.05", "fl oz", "tsp", 6),
    ("9.05", "cup", "tsp", 48),
    ("9.06", "metric tsp", "ml", 5),
    ("9.06", "metric tbsp", "ml", 15),
    ("9.07", "UK gal", "L", 4.54609),
    ("9.08", "UK pt", "ml", 568.26125),
    ("9.08", "UK fl oz", "ml", 28.4130625),
    ("9.08", "UK gal", "UK fl oz", 160),
    ("9.09", "lb", "kg", 0.45359237),
    ("9.10", "oz", "g", 28.349523125),
    ("9.10", "lb", "oz", 16),
    ("9.13", "lb/gal", "g/L", 119.826),
    ("9.13", "oz/gal", "g/L", 7.48915),
    ("9.14", "atm", "kPa", 101.325),
    ("9.14", "psi", "kPa", 6.894757),
    ("9.15", "ppm", "mg/L", 1),  # common practice: in wine the two are within 1 to 2 %
]


@pytest.mark.parametrize(("row", "unit", "to", "size"), SIZES)
def test_sizes(row: str, unit: str, to: str, size: float) -> None:
    assert units.convert(1, unit, to) == pytest.approx(size, rel=5e-6)


def test_a_pound_in_a_thousand_gallons() -> None:
    """9.13: 0.119826 g/L."""
    assert units.convert(1 / 1000, "lb/gal", "g/L") == pytest.approx(0.119826, rel=1e-5)


# 9.11: °F, °C, by definition.
@pytest.mark.parametrize(
    ("f", "c"), [(50, 10), (59, 15), (60, 15.5556), (68, 20), (70, 21.1111), (77, 25), (86, 30), (95, 35), (-40, -40)]
)
def test_temperatures(f: float, c: float) -> None:
    assert units.convert(f, "F", "C") == pytest.approx(c, abs=1e-4)
    assert units.convert(c, "C", "F") == pytest.approx(f, abs=1e-3)


def test_a_difference_of_temperature_has_no_32_in_it() -> None:
    """9.12."""
    assert units.convert_difference(10, "F", "C") == pytest.approx(5.5556, abs=1e-4)
    assert units.convert_difference(-5, "C", "F") == pytest.approx(-9)


# Independent reference: pint's own definitions.
PINT = {
    "L": "liter", "ml": "milliliter", "cl": "centiliter", "gal": "gallon", "qt": "quart", "pt": "pint", "cup": "cup",
    "fl oz": "fluid_ounce", "tbsp": "tablespoon", "tsp": "teaspoon", "g": "gram", "kg": "kilogram", "mg": "milligram",
    "oz": "ounce", "lb": "pound", "UK gal": "imperial_gallon", "UK pt": "imperial_pint",
    "UK fl oz": "imperial_fluid_ounce", "bar": "bar", "kPa": "kilopascal", "atm": "atmosphere", "psi": "psi",
}  # fmt: skip
BASES = {"volume": ("L", "liter"), "mass": ("g", "gram"), "pressure": ("bar", "bar")}


def test_against_pint() -> None:
    ureg: pint.UnitRegistry[float] = pint.UnitRegistry()
    for unit, theirs in PINT.items():
        dimension = (UNITS.get(unit) or units.FURTHER_UNITS[unit]).dimension
        base, their_base = BASES[dimension]
        expected = ureg.Quantity(1, theirs).to(their_base).magnitude
        assert units.convert(1, unit, base) == pytest.approx(expected, rel=1e-9), unit


PLAIN = [name for name, unit in UNITS.items() if unit.factor]


@given(st.sampled_from(PLAIN), st.sampled_from(PLAIN), st.floats(0, 1e6))
def test_there_and_back(unit: str, to: str, value: float) -> None:
    if UNITS[unit].dimension != UNITS[to].dimension:
        with pytest.raises(units.UnknownUnit):
            units.convert(value, unit, to)
    else:
        assert units.convert(units.convert(value, unit, to), to, unit) == pytest.approx(value, rel=1e-12)


@given(st.floats(-200, 1000))
def test_fahrenheit_there_and_back(degrees: float) -> None:
    assert units.fahrenheit(units.celsius(degrees)) == pytest.approx(degrees, abs=1e-9)


@pytest.mark.parametrize(
    ("unit", "to"),
    [
        ("gal", "lb"),
        ("g/L", "g"),
        ("furlong", "L"),
        ("L", "hogshead"),
        ("pinch", "g"),
        ("F", "L"),
        ("g/", "g/L"),
        ("", ""),
    ],
)
def test_units_that_do_not_convert(unit: str, to: str) -> None:
    with pytest.raises(units.UnknownUnit):
        units.convert(1, unit, to)


# What a spoon or a tablet holds: id, amount, unit, material, grams, source.
SPOONED = [
    ("5.31", 1, "cup", "potassium metabisulfite", 341),  # Purdue Wine Grape Team 2011; the high end
    ("5.35", 1, "cup", "potassium sorbate", 103),  # Purdue Wine Grape Team 2011
    ("5.36", 1, "cup", "sugar", 200),  # Purdue Wine Grape Team 2011
    ("5.32", 1, "tsp", "potassium metabisulfite", 6.6),  # from "1/4 tsp in 5 gal gives 50 mg/L"; common practice
    ("5.33", 1, "tsp", "potassium metabisulfite", 6.0),  # from memory; common practice
    ("5.37", 6, "tsp", "tartaric acid", 28.35),  # six to the ounce; common practice, no source
    ("5.37", 6, "tsp", "malic acid", 28.35),
    ("5.37", 6, "tsp", "citric acid", 28.35),
    ("5.37", 6, "tsp", "acid blend", 28.35),
    ("5.38", 1, "tsp", "calcium carbonate", 2.4),  # common practice, no source
    ("5.38", 1, "tsp", "tannin", 2.4),
    ("5.39", 1, "tsp", "yeast nutrient", 4.5),
    ("5.39", 1, "tsp", "yeast nutrient", 5.7),
    ("5.39", 1, "tsp", "yeast energizer", 3.1),
    ("5.40", 1, "tablet", "campden tablet", 0.44),  # common practice, no source
    ("5.40", 2, "tablet", "campden tablet", 1.10),
]


@pytest.mark.parametrize(("row", "amount", "unit", "material", "grams"), SPOONED)
def test_spoons_and_tablets(row: str, amount: float, unit: str, material: str, grams: float) -> None:
    result = units.grams(amount, unit, material)
    assert result.low * 0.995 <= grams <= result.high * 1.005
    assert result.value == pytest.approx(grams, rel=0.25)
    assert result.decimals() <= 1 or unit == "tablet"


def test_honey_by_the_spoon_weighs_what_its_density_says() -> None:
    """Honey of 82.8 % solids (Crane 1980) at the density of sucrose of that strength (Bubnik et al. 1995)."""
    assert SPOONS["honey"].grams == pytest.approx(gravity.sucrose_density(82.8) * 4.92892159375 / 1000, rel=0.01)


def test_weighed_is_exact() -> None:
    result = units.grams(2, "oz", "anything at all")
    assert result.low == result.value == result.high == pytest.approx(56.699, abs=0.001)


@given(st.sampled_from(sorted(SPOONS)), st.floats(0.01, 1000))
def test_grams_to_teaspoons_to_grams(material: str, mass: float) -> None:
    spoons = units.teaspoons(mass, material)
    assert units.grams(spoons.value, "tsp", material).value == pytest.approx(mass, rel=1e-9)
    assert spoons.low <= spoons.value <= spoons.high


@pytest.mark.parametrize(("unit", "material"), [("tsp", "moon dust"), ("packet", "sugar"), ("tablet", "sugar")])
def test_weights_that_are_not_known(unit: str, material: str) -> None:
    with pytest.raises(units.UnknownUnit, match="weigh it"):
        units.grams(1, unit, material)


def test_litres() -> None:
    assert units.litres(5, "gal") == pytest.approx(18.927, abs=0.001)
    with pytest.raises(OutOfRange):
        units.litres(-1, "gal")
