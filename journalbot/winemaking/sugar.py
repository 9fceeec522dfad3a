"""Sugar, honey, concentrate and water: reaching a gravity or an alcohol, sweetening, and sugar in the bottle."""

from math import exp
from typing import NamedTuple

from journalbot.winemaking.gravity import (
    BRIX_HIGH,
    SG_HIGH,
    SG_LOW,
    WATER_20,
    brix_from_sg,
    density,
    sucrose_density,
)
from journalbot.winemaking.numeric import interpolate_grid
from journalbot.winemaking.ranges import Estimate, check, check_litres

LITRES_PER_KILOGRAM = 0.618  # what dissolved sugar adds to a volume; 27 CFR 24.181 and 24.304, 13.5 lb to the US gallon
# °Brix of what is put in. Honey: US mean solids; samples run from 77 to 87 % (Crane 1980, White et al.).
DRY_SUGAR, HONEY, WATER = 100.0, 82.8, 0.0
HONEY_SUGARS = 0.796  # share that is sugar proper; Crane, A Book of Honey (1980), US mean

SORBIC_SHARE = 112.13 / 150.22  # sorbic acid in potassium sorbate, molar masses
SORBATE_LIMIT = 200 / SORBIC_SHARE  # mg/L of potassium sorbate for 200 mg/L of sorbic acid, OIV Code II.3.4.5
SORBATE_LIMIT_US = 300 / SORBIC_SHARE  # from memory
# mg/L of potassium sorbate; columns pH, rows % vol. T. Underhill, Making Better Wines.
_SORBATE_PH = (3.1, 3.3, 3.5)
_SORBATE_ALCOHOL = (10, 11, 12, 13, 14)
_SORBATE = ((165, 210, 270), (135, 180, 225), (96, 120, 150), (78, 96, 120), (60, 72, 90))


class Mixture(NamedTuple):
    """What to put in, kilograms, and what it becomes: litres, °Brix and SG 20/20 of the whole."""

    kilograms: float
    litres: float
    brix: float
    sg: float


def _mixture(kilograms: float, must_mass: float, brix: float) -> Mixture:
    mixed = sucrose_density(brix)
    return Mixture(kilograms, (must_mass + kilograms) / mixed * 1000, brix, mixed / WATER_20)


def _must_mass(litres: float, brix: float, source: float) -> float:
    check("Brix", brix, 0, BRIX_HIGH)
    check("Brix of what is added", source, 0, DRY_SUGAR)
    return check_litres(litres) * sucrose_density(brix) / 1000


def to_brix(litres: float, brix: float, target: float, source: float = DRY_SUGAR) -> Mixture:
    """What brings so many litres of must from brix to target (both 0 to 40 °Brix): sugar, honey, concentrate or water.

    source is the °Brix of what is put in (DRY_SUGAR, HONEY, WATER, or a concentrate's 41 to 85). Mass balance on
    Bubnik et al. 1995, within 1 %; volume rise included. Raises OutOfRange where the target does not lie between.
    """
    mass = _must_mass(litres, brix, source)
    reach = min(source, BRIX_HIGH)
    check("target Brix", target, min(brix, reach), max(brix, reach))
    if target == source:
        raise ValueError("a must cannot be brought to the strength of what is added, only towards it")
    return _mixture(mass * (target - brix) / (source - target), mass, target)


def to_sg(litres: float, sg: float, target: float, source: float = DRY_SUGAR) -> Mixture:
    """to_brix() by SG 20/20, both 1.000 to 1.178, for must before fermentation."""
    check("SG", sg, 1.000, 1.178)
    check("target SG", target, 1.000, 1.178)
    return to_brix(litres, max(0.0, brix_from_sg(sg)), max(0.0, brix_from_sg(target)), source)


def after_adding(litres: float, brix: float, kilograms: float, source: float = DRY_SUGAR) -> Mixture:
    """What so many litres at brix (0 to 40) become with kilograms (0 or more) of source in it: to_brix() reversed."""
    mass = _must_mass(litres, brix, source)
    check("what is added", kilograms, 0, 10000, "kg")
    mixed = (mass * brix + kilograms * source) / (mass + kilograms)
    return _mixture(kilograms, mass, check("Brix of the mixture", mixed, 0, BRIX_HIGH))


def liquid_litres(kilograms: float, brix: float) -> float:
    """Litres of a syrup, juice, honey or water of so many kilograms (0 or more); 0 to 85 °Brix. Bubnik et al. 1995."""
    check("Brix", brix, 0, 85)
    return check("mass", kilograms, 0, 1e6, "kg") / sucrose_density(brix) * 1000


def sugar_for_alcohol(litres: float, rise: float) -> Estimate:
    """Grams of sugar that raise the alcohol to come by 0 to 8 % vol: 17 g/L for each (Austrian and Burgundian
    practice), 16 (the EU yield, molar masses) to 18 (reds, from memory)."""
    total = check_litres(litres) * check("rise in alcohol", rise, 0, 8, "% vol")
    return Estimate(17, 16, 18).times(total)


def sugar_volume(kilograms: float) -> float:
    """Litres that dissolved sugar (0 or more kg) adds: 0.618 for each. 27 CFR 24.181; within 1.5 %."""
    return check("sugar", kilograms, 0, 10000, "kg") * LITRES_PER_KILOGRAM


def sweeten(litres: float, sugar: float) -> float:
    """Grams of sugar that give a wine 0 to 300 g/L more of it, reckoned on the raised volume (0.618 L/kg)."""
    concentration = check("sugar", sugar, 0, 300, "g/L")
    return check_litres(litres) * concentration / (1 - concentration / 1000 * LITRES_PER_KILOGRAM)


def sweeten_to_sg(litres: float, sg: float, target: float) -> float:
    """Grams of sugar that bring a wine from sg (0.980 to 1.100) up to target (sg to 1.100), both SG 20/20.

    Mass balance with 0.618 L for a kilogram of sugar; within 2 %. The wine wants stabilising, or the sugar ferments.
    """
    check("SG", sg, SG_LOW, 1.100)
    rise = density(check("target SG", target, sg, 1.100)) - density(sg)
    return check_litres(litres) * rise / (1 - density(target) * LITRES_PER_KILOGRAM / 1000)


def sg_after_sweetening(litres: float, sg: float, grams: float) -> float:
    """SG 20/20 of a wine (0.980 to 1.100) with grams (0 or more) of sugar stirred in: sweeten_to_sg() reversed."""
    check("SG", sg, SG_LOW, 1.100)
    mass = check_litres(litres) * density(sg) + check("sugar", grams, 0, 1e6, "g")
    return check("SG", mass / (litres + sugar_volume(grams / 1000)) / WATER_20, SG_LOW, SG_HIGH)


def sorbate_rate(alcohol: float, ph: float) -> float:
    """Potassium sorbate, mg/L, that keeps yeast from multiplying in clear, still wine with sulfite.

    alcohol 10 to 18 % vol, pH 2.8 to 3.5, by T. Underhill's table for 10 to 14 % vol and pH 3.1 to 3.5; stronger or
    more acid wine gets the table's edge, which is more than it needs. Never above the OIV ceiling of 268 mg/L.
    """
    check("alcohol", alcohol, 10, 18, "% vol")
    check("pH", ph, 2.8, 3.5)
    return min(SORBATE_LIMIT, interpolate_grid(ph, alcohol, _SORBATE_PH, _SORBATE_ALCOHOL, _SORBATE))


def sorbate_grams(litres: float, alcohol: float, ph: float) -> float:
    """Grams of potassium sorbate for a volume in litres; basis and range as sorbate_rate()."""
    return check_litres(litres) * sorbate_rate(alcohol, ph) / 1000


def co2_solubility(temperature: float) -> float:
    """CO2 dissolved in wine under 1 bar of it, g/L, 0 to 35 °C: 2.1 at 10 °C (ACS Omega 2021, 6, 9672), changed with
    temperature as in water (2400 K, from memory; with IAPWS within 3 % from 5 °C)."""
    kelvin = check("temperature", temperature, 0, 35, "C") + 273.15
    return 2.1 * exp(2400 * (1 / kelvin - 1 / 283.15))


def bottle_pressure(sugar: float, temperature: float, held: float = 0.0) -> Estimate:
    """Bar of CO2 over the wine if sugar (0 to 100 g/L) ferments in a closed bottle with 2 % head space, at 0 to 35 °C.

    held is what CO2 the wine had at bottling, 0 to 1.5 bar. Yield 0.469 g/g; ±15 %; air left out. Printed: 24 g/L for 5
    to 6 bar in a cellar (Oxford Companion to Wine). An ordinary wine bottle is not made for any.
    """
    made = check("sugar", sugar, 0, 100, "g/L") * 0.469 * 0.735
    check("CO2 held", held, 0, 1.5, "bar")
    # Grams of CO2 for each bar, in the 735 ml of wine and in the 15 ml above it.
    in_wine = co2_solubility(temperature) * 0.735
    above = 0.015 * 44.01e2 / (8.314462618 * (temperature + 273.15))
    return Estimate.share(made / (in_wine + above) + held, 0.15)
