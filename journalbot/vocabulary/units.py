"""Units: their dimension, their size in the dimension's base unit, and how people write them.

Base units: litre, gram, piece. Volumes and masses are exact by definition (NIST Handbook 44, Appendix C: the US gallon
is 231 cubic inches; Weights and Measures Act 1985: the pound is 0.45359237 kg); a spoon is the US customary spoon.
"""

from typing import NamedTuple


class Unit(NamedTuple):
    """One unit as entries store it."""

    dimension: str
    factor: float  # base units in one of these; 0 where no fixed size exists
    spellings: tuple[str, ...]  # whole words, lower case; the canonical name is always one of them


GALLON = 3.785411784  # litres
POUND = 453.59237  # grams

UNITS: dict[str, Unit] = {
    "L": Unit("volume", 1.0, ("l", "liter", "liters", "litre", "litres", "ltr", "ltrs", "lt")),
    "ml": Unit("volume", 0.001, (
        "ml", "mls", "milliliter", "milliliters", "millilitre", "millilitres", "mil", "mils", "cc",
    )),
    "cl": Unit("volume", 0.01, ("cl", "centiliter", "centiliters", "centilitre", "centilitres")),
    "gal": Unit("volume", GALLON, ("gal", "gals", "gallon", "gallons", "galon", "galons", "gallos")),
    "qt": Unit("volume", GALLON / 4, ("qt", "qts", "quart", "quarts")),
    "pt": Unit("volume", GALLON / 8, ("pt", "pts", "pint", "pints")),
    "cup": Unit("volume", GALLON / 16, ("cup", "cups", "cupful", "cupfuls")),
    "fl oz": Unit("volume", GALLON / 128, (
        "fl oz", "fl. oz", "fl. oz.", "floz", "fluid ounce", "fluid ounces", "fl ounce", "fl ounces",
    )),
    "tbsp": Unit("volume", GALLON / 256, (
        "tbsp", "tbsps", "tbs", "tblsp", "tablespoon", "tablespoons", "tablespoonful", "tablespoonfuls",
    )),
    "tsp": Unit("volume", GALLON / 768, ("tsp", "tsps", "teaspoon", "teaspoons", "teaspoonful", "teaspoonfuls")),
    "g": Unit("mass", 1.0, ("g", "gr", "gm", "gms", "gram", "grams", "gramme", "grammes")),
    "kg": Unit("mass", 1000.0, ("kg", "kgs", "kilo", "kilos", "kilogram", "kilograms", "kilogramme", "kilogrammes")),
    "mg": Unit("mass", 0.001, ("mg", "mgs", "milligram", "milligrams", "milligramme", "milligrammes")),
    "oz": Unit("mass", POUND / 16, ("oz", "oz.", "ounce", "ounces", "ozs")),
    "lb": Unit("mass", POUND, ("lb", "lbs", "lb.", "lbs.", "pound", "pounds")),
    "tablet": Unit("count", 1.0, ("tablet", "tablets", "tab", "tabs")),
    "packet": Unit("count", 1.0, (
        "packet", "packets", "pack", "packs", "pkt", "pkts", "sachet", "sachets", "pkg", "package", "packages",
        "envelope", "envelopes",
    )),
    "bottle": Unit("count", 1.0, (
        "bottle", "bottles", "btl", "btls", "bot", "bots", "botles", "botle", "magnum", "magnums",
    )),
    "piece": Unit("count", 1.0, ("piece", "pieces", "pc", "pcs")),
    "pinch": Unit("count", 0.0, ("pinch", "pinches")),
}
