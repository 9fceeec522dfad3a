"""Blends: the figure of several lots put together, and how much of one brings another to a target.

Quantities that are so much in a litre blend by volume; Brix, so much in 100 grams, by mass. Some do not blend at all.
"""

from collections.abc import Sequence
from typing import NamedTuple

from journalbot.winemaking.gravity import sucrose_density
from journalbot.winemaking.ranges import OutOfRange, check, check_litres

BY_VOLUME = ("sg", "alcohol", "ta", "residual_sugar", "malic", "volatile_acidity", "total_so2", "yan")
BY_MASS = ("brix",)
# Why a quantity cannot be blended by sums.
NOT_LINEAR: dict[str, str] = {
    "ph": "pH is a logarithm and follows the buffers of both wines: blend a sample and measure it",
    "free_so2": "free SO2 binds anew in a blend: measure it afterwards",
}


class NotLinear(ValueError):
    """A quantity whose blend cannot be computed; the message says why and what to do."""


class Lot(NamedTuple):
    """A volume in litres and its figure for the quantity blended."""

    litres: float
    value: float


def _weight(quantity: str, value: float) -> float:
    """What a litre counts for in the blend: 1, or its mass. Raises NotLinear for what does not blend, or is unknown."""
    check(quantity, value, -1e6, 1e6)
    if quantity in BY_VOLUME:
        return 1.0
    if quantity in BY_MASS:
        return sucrose_density(value)
    raise NotLinear(NOT_LINEAR.get(quantity, f"whether {quantity} blends in proportion is not known"))


def blend(quantity: str, lots: Sequence[Lot]) -> float:
    """The quantity in a blend of lots (one or more). Mass balance; alcohol's shrinkage (under 0.1 % vol) left out.

    Quantities of BY_VOLUME and BY_MASS, as entries name them; raises NotLinear for others, pH first among them.
    """
    check("number of lots", len(lots), 1, 1000)
    weights = [check_litres(lot.litres) * _weight(quantity, lot.value) for lot in lots]
    return sum(w * lot.value for w, lot in zip(weights, lots, strict=True)) / sum(weights)


def shares(quantity: str, first: float, second: float, target: float) -> tuple[float, float]:
    """Shares by volume of two lots that make the target: the Pearson square, (target - second) to (first - target).

    Raises OutOfRange where the target does not lie between the two, NotLinear as blend() does.
    """
    weights = _weight(quantity, first), _weight(quantity, second)
    if first == second:
        raise OutOfRange(f"target {quantity}", target, first, second)
    check(f"target {quantity}", target, min(first, second), max(first, second))
    parts = abs(target - second) / weights[0], abs(first - target) / weights[1]
    return parts[0] / sum(parts), parts[1] / sum(parts)


def litres_to_add(quantity: str, lot: Lot, other: float, target: float) -> float:
    """Litres of another wine (its figure: other) that bring a whole lot to the target. Pearson square, as shares().

    Raises ValueError where the target is the other's own figure: no amount gets there.
    """
    kept, added = shares(quantity, lot.value, other, target)
    if kept == 0:
        raise ValueError(f"no amount brings {lot.value:g} all the way to {other:g}: only towards it")
    return check_litres(lot.litres) * added / kept
