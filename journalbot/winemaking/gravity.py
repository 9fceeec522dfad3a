"""Gravity and sugar: SG 20/20, Brix, density, grams per litre, potential alcohol.

One physical model carries all of them: the density of a sucrose solution by strength and temperature. Brix here is
grams of sucrose in 100 g of a pure solution of the same density; a must's Brix counts its acids and other solids too.
Below SG 1.000 the same curve is run on: the figure is then apparent, what a Brix hydrometer reads, not sugar.
"""


from typing import NamedTuple

from journalbot.winemaking.numeric import polynomial, root
from journalbot.winemaking.ranges import Estimate, OutOfRange, check

SG_LOW, SG_HIGH = 0.980, 1.180
BRIX_LOW, BRIX_HIGH = -5.3, 40.3
GRAPE_SG = (1.044, 1.110)  # where the printed must tables were compared
OTHER_SG = (1.040, 1.120)
SUGAR_PER_ALCOHOL = 17.0  # g/L of sugar for 1 % vol: French and Austrian practice
LINEAR = 131.25  # % vol for each 1.000 of SG fermented: common practice, no source
OTHER_FINAL_SG = 0.996  # where a must of other fruit, or honey, is taken to end: common practice, no source
# Sugar of a grape must, g/L: so much for each 1.000 of SG, less its acids and other solids. The old French must rule,
# from memory.
MUST_SLOPE, MUST_SOLIDS = 2660.0, 30.0
READING_SG = 0.001  # what a hydrometer reading at home is good for: common practice, no source

_WATER = (999.83952, 16.952577, -7.9905127e-3, -46.241757e-6, 105.84601e-9, -281.03006e-12)
# _SUCROSE[i][j] multiplies ((t - 20) / 100)**i * w**(j + 1)
_SUCROSE = (
    (385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.2890),
    (-46.2720, -7.1720, 1.1597, 5.1126, 17.5254),
    (59.7712, 7.2491, 12.3630, -35.4791),
    (-47.2207, -21.6977, 27.6301),
    (18.3184, 12.3081),
)


def water_density(temperature: float = 20.0) -> float:
    """Density of pure water, kg/m³, 0 to 100 °C. Kell's formula as given by Bubnik et al. 1995."""
    t = check("temperature", temperature, 0, 100, "C")
    return polynomial(t, _WATER) / (1 + 16.887236e-3 * t)


def sucrose_density(brix: float, temperature: float = 20.0) -> float:
    """Density of a sucrose solution, kg/m³; -10 to 85 °Brix (below 0: the curve run on), 0 to 100 °C.

    Bubnik, Kadlec, Urban, Bruhns, Sugar Technologists Manual, 1995.
    """
    w, x = check("Brix", brix, -10, 85) / 100, (temperature - 20) / 100
    return water_density(temperature) + w * polynomial(x, [polynomial(w, row) for row in _SUCROSE])


WATER_20 = water_density(20.0)


def density(sg: float) -> float:
    """Density at 20 °C in kg/m³ from SG 20/20 (0.980 to 1.180)."""
    return check("SG", sg, SG_LOW, SG_HIGH) * WATER_20


def sg_from_brix(brix: float) -> float:
    """SG 20/20 of a sucrose solution; -5.3 to 40.3 °Brix. Bubnik et al. 1995, within 0.0002."""
    return sucrose_density(check("Brix", brix, BRIX_LOW, BRIX_HIGH)) / WATER_20


def brix_from_sg(sg: float) -> float:
    """°Brix of the sucrose solution of this SG 20/20 (0.980 to 1.180). Bubnik et al. 1995, within 0.05."""
    target = density(sg)
    return root(lambda brix: sucrose_density(brix) - target, -6, 41, 1e-9)


def extract(sg: float) -> float:
    """Grams per litre on the sucrose scale for an SG 20/20 (0.980 to 1.180); negative below 1.000, then apparent.

    10 x Brix x density, within 0.3 % of the German wine extract table (Imperial Gauging Commission) and OIV-MA-AS2-03B.
    """
    return brix_from_sg(sg) * density(sg) / 100


def sg_from_extract(grams_per_litre: float) -> float:
    """SG 20/20 of a solution with so many grams of sucrose per litre of it; -45 to 470 g/L. Inverse of extract()."""
    wanted = check("sugar", grams_per_litre, -45, 470, "g/L")
    brix = root(lambda b: b * sucrose_density(b) / 100 - wanted, -6, 41, 1e-8)
    return sucrose_density(brix) / WATER_20


def grape_sugar(sg: float) -> float:
    """Sugar of a grape must, g/L, SG 1.044 to 1.110: the old French must rule, 2.66 g/L per 0.001 less 30 for acids
    and other solids (rule from memory; it gives the printed must tables to 0.05 % vol when divided by 17)."""
    return MUST_SLOPE * (check("SG", sg, *GRAPE_SG) - 1) - MUST_SOLIDS


def potential_alcohol(sg: float, grape: bool = True) -> Estimate:
    """Alcohol, % vol, if all sugar ferments. Grape must: SG 1.044 to 1.110, the French must rule over 17 g/L, ±0.25.
    Other musts: SG 1.040 to 1.120, 131.25 (SG - 0.996), ±0.6 (common practice, no source)."""
    if grape:
        return Estimate.within(grape_sugar(sg) / SUGAR_PER_ALCOHOL, 0.25)
    return Estimate.within(LINEAR * (check("SG", sg, *OTHER_SG) - OTHER_FINAL_SG), 0.6)


def sg_for_alcohol(alcohol: float, grape: bool = True) -> float:
    """SG 20/20 whose potential alcohol is so many % vol: 5.2 to 15.4 for grape must, 5.8 to 16.2 for others.

    potential_alcohol() turned round, with its sources.
    """
    if grape:
        return 1 + (check("alcohol", alcohol, 5.2, 15.4, "% vol") * SUGAR_PER_ALCOHOL + MUST_SOLIDS) / MUST_SLOPE
    return check("alcohol", alcohol, 5.8, 16.2, "% vol") / LINEAR + OTHER_FINAL_SG


class Scales(NamedTuple):
    """One reading on every scale. density kg/m³ at 20 °C; extract g/L; potential_alcohol None where no rule holds."""

    sg: float
    brix: float
    density: float
    extract: float
    potential_alcohol: Estimate | None


def scales(sg: float, grape: bool = True) -> Scales:
    """The reading SG 20/20 (0.980 to 1.180) as Brix, density, g/L and, inside its range, potential alcohol."""
    try:
        potential = potential_alcohol(sg, grape)
    except OutOfRange:
        potential = None
    return Scales(sg, brix_from_sg(sg), density(sg), extract(sg), potential)
