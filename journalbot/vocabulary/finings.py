"""Finings and oak by volume: how much is usual in a litre. The packet comes first, and a trial on a small sample.

All rates are common practice, no source; all but bentonite's from memory too. Liquid finings and enzymes differ from
maker to maker and are left out: only their packet knows.
"""

from typing import NamedTuple


class Rate(NamedTuple):
    """Amount of `unit` for a litre: the low end, the high end, and where to stop even after a trial."""

    unit: str
    low: float
    high: float
    most: float


FININGS: dict[str, Rate] = {
    "bentonite": Rate("g", 0.15, 0.5, 1.0),
    "gelatin": Rate("g", 0.05, 0.15, 0.3),
    "egg white": Rate("piece", 0.022, 0.036, 0.036),
    "tannin": Rate("g", 0.05, 0.2, 0.3),
}

OAK: dict[str, Rate] = {
    "powder": Rate("g", 1.0, 3.0, 4.0),
    "chips": Rate("g", 1.0, 4.0, 6.0),
    "cubes": Rate("g", 2.0, 4.0, 6.0),
}
