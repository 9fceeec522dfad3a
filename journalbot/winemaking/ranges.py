"""Ranges: what a function accepts, and what its result is worth."""

import math
from typing import NamedTuple


class OutOfRange(ValueError):
    """A number outside what a function is valid for. The message names the quantity, the number and the range."""

    def __init__(self, name: str, value: float, low: float, high: float, unit: str = "") -> None:
        tail = f" {unit}" if unit else ""
        super().__init__(f"{name} {value:g}{tail} is outside {low:g} to {high:g}{tail}")
        self.name, self.value, self.low, self.high, self.unit = name, value, low, high, unit


def check(name: str, value: float, low: float, high: float, unit: str = "") -> float:
    """The value itself if it lies in low..high (both allowed); otherwise, and for NaN, raises OutOfRange."""
    if not low <= value <= high:
        raise OutOfRange(name, value, low, high, unit)
    return value


def check_litres(litres: float, name: str = "volume") -> float:
    """A volume of wine or must that a home cellar can hold: 0.05 to 5000 L."""
    return check(name, litres, 0.05, 5000, "L")


class _Band(NamedTuple):
    value: float
    low: float
    high: float


class Estimate(_Band):
    """A result and the band it may lie in; all three alike where it is exact. Raises ValueError if not in order."""

    __slots__ = ()

    def __new__(cls, value: float, low: float, high: float) -> "Estimate":
        if not low <= value <= high:
            raise ValueError(f"an estimate needs low <= value <= high, not {low:g}, {value:g}, {high:g}")
        return super().__new__(cls, value, low, high)

    @classmethod
    def within(cls, value: float, plus_minus: float) -> "Estimate":
        """value plus or minus an absolute amount, never below zero: all these quantities are amounts."""
        return cls(value, min(value, max(0.0, value - plus_minus)), value + plus_minus)

    @classmethod
    def share(cls, value: float, fraction: float) -> "Estimate":
        """value plus or minus a fraction of itself; fraction 0 for an exact one."""
        return cls.within(value, abs(value) * fraction)

    def times(self, factor: float) -> "Estimate":
        """The same estimate scaled by a factor of 0 or more."""
        return Estimate(self.value * factor, self.low * factor, self.high * factor)

    def decimals(self, most: int = 3) -> int:
        """Decimals the value bears: its last digit stands where the first digit of the uncertainty does.

        0.5 gives 1, 3 gives 0, 40 gives -1 (round to tens, as round() takes it). An exact value bears `most`.
        """
        half_width = max(self.high - self.value, self.value - self.low)
        if half_width <= 0:
            return most
        # The small number keeps a width of 0.1 from counting as 0.0999...
        return min(most, -math.floor(math.log10(half_width) + 1e-9))

    def rounded(self, most: int = 3) -> "Estimate":
        """The estimate with no more digits than it bears."""
        digits = self.decimals(most)
        return Estimate(round(self.value, digits), round(self.low, digits), round(self.high, digits))
