"""Volumes and vessels: head space, what a racking leaves, which vessels fit, bottles, gas, warming, doses by volume."""

import math
from collections.abc import Mapping
from itertools import combinations
from typing import NamedTuple

from journalbot.vocabulary.finings import FININGS, OAK, Rate
from journalbot.winemaking.ethanol import ethanol_density
from journalbot.winemaking.ranges import Estimate, check, check_litres

BOTTLE = 0.75  # litres

# Share of the primary to leave empty: usual low and high. Common practice, no source.
FOAM_SPACE: dict[str, tuple[float, float]] = {
    "white": (0.25, 1 / 3),
    "rosé": (0.25, 1 / 3),
    "red": (1 / 3, 1 / 3),
    "fruit": (1 / 3, 1 / 3),
    "mead": (1 / 3, 1 / 3),
    "cider": (0.25, 1 / 3),
    "other": (0.25, 1 / 3),
}
# Share of the volume that a racking leaves behind: value, low, high. Common practice, no source, from memory.
RACKING_LOSS: dict[str, tuple[float, float, float]] = {
    "gross lees": (0.08, 0.04, 0.15),
    "fine lees": (0.02, 0.01, 0.04),
}
CO2_LITRES, CO2_GRAMS = 4.12, 7.54  # for a litre of wine and each % vol, at 20 °C; molar masses, one CO2 per ethanol
HEAT = (9.0, 14.0)  # °C for 100 g/L of sugar, without losses; Grainger & Tattersall give 13, formation enthalpies 9.6


def primary_capacity(litres: float, colour: str) -> Estimate:
    """Litres that a primary should hold for so much must: room for foam and cap. Common practice, no source.

    colour as a start entry has it. The value is the roomier end.
    """
    low, high = _foam_space(colour)
    must = check_litres(litres)
    return Estimate(must / (1 - high), must / (1 - low), must / (1 - high))


def _foam_space(colour: str) -> tuple[float, float]:
    if colour not in FOAM_SPACE:
        raise ValueError(f"no head space known for {colour!r}: only for {', '.join(FOAM_SPACE)}")
    return FOAM_SPACE[colour]


def head_space(litres: float, capacity: float) -> float:
    """Empty share of a vessel, 0 to 1, by its capacity in litres, which must be no less than the volume."""
    return 1 - check_litres(litres) / check("capacity", capacity, litres, 10000, "L")


def foam_room(litres: float, capacity: float, colour: str) -> str:
    """Room for foam in a primary: "enough", "tight" (under the usual share) or "too full" (under half of it).

    Common practice, no source; the half is a choice of this program.
    """
    usual, _ = _foam_space(colour)
    space = head_space(litres, capacity)
    return "enough" if space >= usual - 0.005 else "tight" if space >= usual / 2 else "too full"


def racking_loss(litres: float, lees: str = "fine lees") -> Estimate:
    """Litres left behind on "gross lees" or "fine lees"; own records come first. Common practice, from memory."""
    if lees not in RACKING_LOSS:
        raise ValueError(f"no loss known for {lees!r}: only for {', '.join(RACKING_LOSS)}")
    return Estimate(*RACKING_LOSS[lees]).times(check_litres(litres))


def top_up(litres: float, capacity: float) -> float:
    """Litres that fill a vessel (capacity in litres, no less than the volume) to its brim; the last centimetres of a
    neck are some 7 ml each."""
    return check("capacity", capacity, litres, 10000, "L") - check_litres(litres)


class Fit(NamedTuple):
    """Vessels used together, and what does not match: spare litres to top up (above 0) or wine left over (below 0)."""

    vessels: tuple[str, ...]
    spare: float


def fits(litres: float, vessels: Mapping[str, float], at_most: int = 3) -> list[Fit]:
    """Ways to keep a volume in one to at_most of the free vessels (name: capacity in litres), closest match first.

    A way to keep it needs every vessel: one that could be left empty is not counted. Up to 40 vessels.
    """
    check_litres(litres)
    check("number of vessels", len(vessels), 0, 40)
    for name, capacity in vessels.items():
        check(f"capacity of {name}", capacity, 0.05, 10000, "L")
    found = [
        Fit(names, sum(vessels[n] for n in names) - litres)
        for count in range(1, min(at_most, len(vessels)) + 1)
        for names in combinations(vessels, count)
    ]
    needed = [fit for fit in found if fit.spare < min(vessels[n] for n in fit.vessels)]
    return sorted(needed, key=lambda fit: (abs(fit.spare), len(fit.vessels)))


def bottles(litres: float, size: float = BOTTLE) -> tuple[int, float]:
    """Full bottles of a size in litres (0.05 to 20), as many corks, and the litres over. Losses on lees not counted."""
    check("bottle", size, 0.05, 20, "L")
    # A hair is allowed, so that 54 L gives 72 bottles and not 71.
    count = math.floor(check_litres(litres) / size + 1e-9)
    return count, max(0.0, litres - count * size)


def ml_per_cm(diameter: float) -> float:
    """Millilitres in each centimetre of height, and cm² of surface, of a round neck or vessel 0.5 to 200 cm across."""
    return math.pi / 4 * check("diameter", diameter, 0.5, 200, "cm") ** 2


def warming_expansion(litres: float, alcohol: float, start: float, end: float) -> float:
    """Litres by which wine (0 to 25 % vol) swells, or shrinks if below 0, from start to end (0 to 40 °C each).

    Densities of OIML R 22 (1975); glass and sugar ignored; within 5 %.
    """
    check("alcohol", alcohol, 0, 25, "% vol")
    check("temperature", start, 0, 40, "C")
    check("temperature", end, 0, 40, "C")
    return check_litres(litres) * (ethanol_density(alcohol, start) / ethanol_density(alcohol, end) - 1)


def co2_litres(litres: float, alcohol: float) -> Estimate:
    """Litres of CO2 gas at 20 °C given off in making so many % vol (0 to 20) in a volume; ±10 %. Molar masses."""
    return Estimate.share(CO2_LITRES * check_litres(litres) * check("alcohol", alcohol, 0, 20, "% vol"), 0.10)


def co2_grams(litres: float, alcohol: float) -> Estimate:
    """Grams of CO2 given off in making so many % vol (0 to 20) in a volume in litres; ±10 %. Molar masses."""
    return Estimate.share(CO2_GRAMS * check_litres(litres) * check("alcohol", alcohol, 0, 20, "% vol"), 0.10)


def heat_rise(sugar: float) -> Estimate:
    """°C by which so much sugar (0 to 350 g/L) would warm a must that lost no heat: 9 to 14 for 100 g/L.

    Grainger & Tattersall; formation enthalpies from memory.
    """
    low, high = HEAT
    return Estimate((low + high) / 2, low, high).times(check("sugar", sugar, 0, 350, "g/L") / 100)


def _dose(table: dict[str, Rate], name: str, litres: float) -> Rate:
    if name not in table:
        raise ValueError(f"no usual rate of {name!r} is known, its packet comes first; known: {', '.join(table)}")
    unit, *rates = table[name]
    low, high, most = (rate * check_litres(litres) for rate in rates)
    return Rate(unit, low, high, most)


def fining_dose(material: str, litres: float) -> Rate:
    """Usual low, high and most of a fining (of FININGS) for a volume in litres. Common practice, no source."""
    return _dose(FININGS, material, litres)


def oak_dose(form: str, litres: float) -> Rate:
    """Usual low, high and most of oak in a form (of OAK) for a volume in litres. Common practice, no source."""
    return _dose(OAK, form, litres)
