"""What is measured: names, units, what a figure may be, and how a bare one is known.

The possible range is what an instrument could show of any must or wine: a figure outside it is asked about. Common
practice, no source.
"""

from typing import NamedTuple


class Quantity(NamedTuple):
    """One row: a quantity that a reading can be of."""

    unit: str  # the unit stored where none is written
    units: tuple[str, ...]  # the units it can be stored in
    low: float  # the least possible, in `unit`
    high: float  # the most possible, in `unit`
    label: str  # as a person says it
    spellings: tuple[str, ...]


QUANTITIES: dict[str, Quantity] = {
    "sg": Quantity("SG", ("SG",), 0.97, 1.2, "gravity", (
        "sg", "s.g", "s.g.", "gravity", "specific gravity", "spec grav", "sp gr", "grav", "density", "og", "fg", "o.g",
        "f.g", "original gravity", "starting gravity", "final gravity", "hydrometer", "densities", "gravities", "s g",
        "hydro",
    )),
    "brix": Quantity("Brix", ("Brix",), -5, 45, "Brix", ("brix", "bricks", "bx", "degrees brix", "balling", "brx")),
    "potential_alcohol": Quantity("% vol", ("% vol",), 0, 25, "potential alcohol", (
        "potential alcohol", "pa", "pot alc", "potential abv", "probable alcohol", "potential")),
    "ph": Quantity("pH", ("pH",), 2.5, 4.8, "pH", ("ph", "p.h", "p.h.")),
    "ta": Quantity("g/L", ("g/L", "%"), 1, 25, "TA", (
        "ta", "t.a", "t.a.", "total acidity", "titratable acidity", "titratable", "acidity", "total acid",
        "titrable acidity", "acid",
    )),
    "temperature": Quantity("F", ("F", "C"), -15, 120, "temperature", (
        "temp", "temperature", "temps", "temperatures", "must temp", "wine temp", "tmp", "t")),
    "free_so2": Quantity("mg/L", ("mg/L",), 0, 200, "free SO2", (
        "free so2", "free sulfur", "free sulphur", "fso2", "free sulfite", "free sulphite", "free sulfur dioxide",
        "free sulphur dioxide", "so2 free", "free", "free s02")),
    "total_so2": Quantity("mg/L", ("mg/L",), 0, 500, "total SO2", (
        "total so2", "total sulfur", "total sulphur", "tso2", "total sulfite", "total sulphite", "total sulfur dioxide",
        "total sulphur dioxide", "so2 total", "total", "total s02")),
    "alcohol": Quantity("% vol", ("% vol",), 0, 25, "alcohol", (
        "alcohol", "abv", "alc", "alc by vol", "alcohol by volume", "a.b.v", "vol alcohol", "alcohol content", "alcool",
    )),
    "residual_sugar": Quantity("g/L", ("g/L",), 0, 400, "residual sugar", (
        "residual sugar", "rs", "r.s", "residual sugars", "sugar left", "res sugar")),
    "malic": Quantity("g/L", ("g/L",), 0, 12, "malic acid", ("malic", "malic acid", "l-malic")),
    "volatile_acidity": Quantity("g/L", ("g/L",), 0, 10, "volatile acidity", (
        "volatile acidity", "va", "v.a", "volatile acid", "volatiles", "acetic acid")),
    "yan": Quantity("mg/L", ("mg/L",), 0, 1000, "YAN", (
        "yan", "nitrogen", "yeast assimilable nitrogen", "assimilable nitrogen",
    )),
    "volume": Quantity("gal", ("gal", "L", "ml", "qt", "pt", "cup", "fl oz"), 0, 5000, "volume", ("volume", "vol")),
}

# The words that tell a figure on its own to be of no quantity here: it belongs to what they name.
SPLIT_SG = ("sg", "gravity")
