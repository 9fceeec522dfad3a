"""What a level spoon of a powder weighs, and a tablet: rough figures, where no scale is at hand.

Grams for one level US teaspoon (4.93 ml). By the spoon a dose is good to about a quarter: where a source gives one
figure only, the range is that figure plus or minus 25 %.
"""

from typing import NamedTuple


class Spoon(NamedTuple):
    """Grams in one level US teaspoon (or one tablet): the figure to use, and the range met."""

    grams: float
    low: float
    high: float
    source: str


PURDUE = "Purdue Wine Grape Team, Winemaking Calculations (2011): weight of a US cup, divided by 48"
HABIT = "common practice, no source"

SPOONS: dict[str, Spoon] = {
    "potassium metabisulfite": Spoon(6.0, 5.0, 7.1, f"{PURDUE} gives the high end; 5 to 6 from memory"),
    "sodium metabisulfite": Spoon(6.0, 5.0, 7.1, "taken as the potassium salt, from memory"),
    "potassium sorbate": Spoon(2.1, 2.1, 3.5, f"{PURDUE} for powder; prills to 3.5 {HABIT}"),
    "sugar": Spoon(4.2, 3.2, 5.3, f"{PURDUE}; granulated"),
    "honey": Spoon(7.0, 6.8, 7.2, "computed: density of sugar as strong as honey is (83 %, Crane 1980)"),
    "tartaric acid": Spoon(4.7, 3.5, 5.9, HABIT),
    "malic acid": Spoon(4.7, 3.5, 5.9, HABIT),
    "citric acid": Spoon(4.7, 3.5, 5.9, HABIT),
    "acid blend": Spoon(4.7, 3.5, 5.9, HABIT),
    "calcium carbonate": Spoon(2.4, 1.8, 3.0, HABIT),
    "tannin": Spoon(2.4, 1.8, 3.0, HABIT),
    "yeast nutrient": Spoon(5.0, 4.5, 5.7, HABIT),
    "yeast energizer": Spoon(3.1, 2.3, 3.9, HABIT),
}

TABLETS: dict[str, Spoon] = {
    "campden tablet": Spoon(0.44, 0.44, 0.55, f"{HABIT}; potassium or sodium metabisulfite, by the packet"),
}
