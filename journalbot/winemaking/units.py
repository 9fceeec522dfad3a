"""Conversions: mass, volume, temperature, pressure, counts, and rates such as "g/L" or "tsp/gal"."""

from journalbot.vocabulary.spoons import SPOONS, TABLETS, Spoon
from journalbot.vocabulary.units import UNITS, Unit
from journalbot.winemaking.ranges import Estimate, check

UK_GALLON = 4.54609  # litres; Weights and Measures Act 1985

# Sizes that answers need but entries never hold, so no spelling of theirs is read in a note. Base of pressure: bar.
FURTHER_UNITS: dict[str, Unit] = {
    "UK gal": Unit("volume", UK_GALLON, ()),
    "UK pt": Unit("volume", UK_GALLON / 8, ()),
    "UK fl oz": Unit("volume", UK_GALLON / 160, ()),
    "metric tbsp": Unit("volume", 0.015, ()),  # NIST SP 430: label use
    "metric tsp": Unit("volume", 0.005, ()),
    "bar": Unit("pressure", 1.0, ()),
    "kPa": Unit("pressure", 0.01, ()),
    "atm": Unit("pressure", 1.01325, ()),
    "psi": Unit("pressure", 0.06894757293168361, ()),
}
# The trade's "ppm" is mg per litre; by mass it would be some 9 % less in a must of SG 1.09.
ALIASES = {"ppm": "mg/L"}
ABSOLUTE_ZERO = -273.15


class UnknownUnit(ValueError):
    """A unit that is not known, has no fixed size, or cannot become the unit asked for."""


def _simple(unit: str) -> Unit:
    found = UNITS.get(unit) or FURTHER_UNITS.get(unit)
    if found is None:
        raise UnknownUnit(f"the unit {unit!r} is not known")
    if found.factor == 0:
        raise UnknownUnit(f"a {unit} has no fixed size: weigh it or measure it")
    return found


def _measure(unit: str) -> tuple[str, float]:
    """Dimension and size in base units of a unit or of a rate of two."""
    top, slash, bottom = ALIASES.get(unit, unit).partition("/")
    over = _simple(top)
    if not slash:
        return over.dimension, over.factor
    under = _simple(bottom)
    return f"{over.dimension}/{under.dimension}", over.factor / under.factor


def celsius(fahrenheit: float) -> float:
    """°C from °F, above absolute zero. C = (F - 32) / 1.8, exact."""
    return check("temperature", (fahrenheit - 32) / 1.8, ABSOLUTE_ZERO, 1e6, "C")


def fahrenheit(celsius: float) -> float:
    """°F from °C, above absolute zero. F = 1.8 C + 32, exact."""
    return check("temperature", celsius, ABSOLUTE_ZERO, 1e6, "C") * 1.8 + 32


def convert_difference(degrees: float, unit: str, to: str) -> float:
    """A difference of temperature (a rise, a fall, a drift) in other degrees: 10 °F is 5.56 °C, no 32 in it."""
    size = {"C": 1.0, "F": 1 / 1.8}
    if unit not in size or to not in size:
        raise UnknownUnit(f"a temperature difference is in C or F, not {unit!r} to {to!r}")
    return check("temperature difference", degrees, -1000, 1000, unit) * size[unit] / size[to]


def convert(value: float, unit: str, to: str) -> float:
    """A value in another unit of the same kind: "gal" to "L", "F" to "C", "oz/gal" to "g/L", "ppm" to "mg/L".

    Valid for any finite value. Raises UnknownUnit for units not known or not of one kind. Sizes exact by definition
    (NIST Handbook 44, Appendix C; Weights and Measures Act 1985).
    """
    check("value", value, -1e15, 1e15)
    if unit in ("F", "C") and to in ("F", "C"):
        in_celsius = celsius(value) if unit == "F" else check("temperature", value, ABSOLUTE_ZERO, 1e6, "C")
        return fahrenheit(in_celsius) if to == "F" else in_celsius
    if unit == to:
        _measure(unit)
        return value
    dimension, size = _measure(unit)
    to_dimension, to_size = _measure(to)
    if dimension != to_dimension:
        raise UnknownUnit(f"{unit} ({dimension}) cannot become {to} ({to_dimension})")
    return value * size / to_size


def litres(value: float, unit: str) -> float:
    """A volume in litres; 0 or more."""
    return convert(check("volume", value, 0, 1e9, unit), unit, "L")


def _spooned(material: str) -> Spoon:
    if material not in SPOONS:
        raise UnknownUnit(f"how much a spoon of {material} weighs is not known: weigh it")
    return SPOONS[material]


def grams(amount: float, unit: str, material: str) -> Estimate:
    """Grams of a material in an amount by weight (exact), by spoon, cup or millilitre, or in tablets (each a band).

    Weights of spoons and tablets: SPOONS and TABLETS, with their sources. Amount 0 or more. Raises UnknownUnit where
    the material's weight by volume or piece is not known.
    """
    check("amount", amount, 0, 1e9, unit)
    dimension, size = _measure(unit)
    if dimension == "mass":
        return Estimate.share(amount * size, 0)
    if dimension == "volume":
        spoon, pieces = _spooned(material), amount * size / UNITS["tsp"].factor
    elif unit == "tablet" and material in TABLETS:
        spoon, pieces = TABLETS[material], amount
    else:
        raise UnknownUnit(f"how much a {unit} of {material} weighs is not known: weigh it")
    return Estimate(spoon.grams, spoon.low, spoon.high).times(pieces)


def teaspoons(grams: float, material: str) -> Estimate:
    """Level US teaspoons that hold so many grams (0 or more) of a powder, rough; sources in SPOONS."""
    spoon = _spooned(material)
    mass = check("mass", grams, 0, 1e6, "g")
    return Estimate(mass / spoon.grams, mass / spoon.high, mass / spoon.low)
