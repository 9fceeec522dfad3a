"""Alcohol from gravities, how far a fermentation has gone, and what sugar is left."""

from collections.abc import Sequence
from typing import NamedTuple

from journalbot.winemaking.ethanol import ETHANOL_20, dry_extract, expected_sg
from journalbot.winemaking.gravity import (
    LINEAR,
    READING_SG,
    SG_HIGH,
    SG_LOW,
    brix_from_sg,
    density,
    extract,
    sg_from_extract,
)
from journalbot.winemaking.numeric import root
from journalbot.winemaking.ranges import Estimate, check, check_litres

USUAL_ERROR = 0.5  # % vol; it covers the two bounds for OG 1.06 to 1.12
SUGAR_PER_ALCOHOL_EU = 16.83  # g/L of sugar for 1 % vol, the yield used by the EU
# Extract of a wine with no sugar in it, g/L: middle, light white, full red. Common practice, no source.
NON_SUGAR = Estimate(21, 17, 30)
MICROBIALLY_DRY = 2.0  # g/L: below it yeast has nothing left to live on; common practice, no source

# OIV labelling standard 3.1.6, glucose plus fructose in g/L: limit, limit where the acid balances it, and how far sugar
# may then exceed titratable acidity as tartaric.
SWEETNESS: tuple[tuple[str, float, float, float], ...] = (
    ("dry", 4, 9, 2),
    ("medium dry", 12, 18, 10),
)
SWEET_FROM = 45.0
DRY_SUGAR = SWEETNESS[0][1]


def _check_gravities(og: float, sg: float, og_low: float, og_high: float) -> None:
    check("original SG", og, og_low, og_high)
    check("SG", sg, SG_LOW, og)


def _most_alcohol(og: float, sg: float) -> float:
    """More alcohol than any balance can give for the drop, yet low enough to keep the extract inside its range."""
    return min(30.0, 160 * (og - sg) + 0.5)


def alcohol_by_volume_balance(og: float, sg: float) -> float:
    """Alcohol, % vol: sugar gone (Tabarié extract, OIV-MA-AS2-03B) at 16.83 g/L for each % vol; a low bound.

    Sucrose-scale grams count as hexose, which makes it 1 to 2 % low. OG 1.030 to 1.170, sg from 0.980 to OG.
    """
    _check_gravities(og, sg, 1.030, 1.170)
    start = extract(og)
    return root(lambda a: a - (start - dry_extract(sg, a)) / SUGAR_PER_ALCOHOL_EU, 0, _most_alcohol(og, sg), 1e-7)


def alcohol_by_balling(og: float, sg: float) -> float:
    """Alcohol, % vol, from Balling's balance by mass, P = 100 (2.0665 A + n) / (100 + 1.0665 A); a high bound for wine.

    As given by Speers; tested on beers (Cutaia, Reid, Speers 2009). OG 1.030 to 1.170, sg from 0.980 to OG.
    """
    _check_gravities(og, sg, 1.030, 1.170)
    original = brix_from_sg(og)
    wine = density(sg)

    def surplus(alcohol: float) -> float:
        by_mass = alcohol * ETHANOL_20 / wine
        real = dry_extract(sg, alcohol) * 100 / wine
        return 100 * (2.0665 * by_mass + real) / (100 + 1.0665 * by_mass) - original

    return root(surplus, 0, _most_alcohol(og, sg), 1e-7)


def alcohol_bounds(og: float, sg: float) -> tuple[float, float]:
    """Lower and upper alcohol, % vol, by the two balances: all there is to show above OG 1.120. OG 1.030 to 1.170."""
    return alcohol_by_volume_balance(og, sg), alcohol_by_balling(og, sg)


def alcohol(og: float, sg: float) -> Estimate:
    """Alcohol, % vol, made on the way from OG (1.040 to 1.120) to sg (0.980 to OG): 131.25 (OG - SG), ±0.5 or wider.

    131.25 is common practice, no source; it lies between the two balances, which widen the band where they pass it.
    """
    _check_gravities(og, sg, 1.040, 1.120)
    value = LINEAR * (og - sg)
    low, high = alcohol_bounds(og, sg)
    return Estimate(value, max(0.0, min(low, value - USUAL_ERROR)), max(high, value + USUAL_ERROR))


def alcohol_at_end(og: float) -> Estimate:
    """Alcohol, % vol, if a must of OG 1.040 to 1.120 ferments out: alcohol() at the SG that a dry wine of that strength
    and of 21 g/L extract (17 to 30) would read. Tabarié, OIV-MA-AS2-03B; extracts are common practice, no source.
    """
    check("original SG", og, 1.040, 1.120)

    def fermented_out(extract: float) -> float:
        return root(lambda a: a - LINEAR * (og - expected_sg(a, extract)), 0, 25, 1e-7)

    value, low, high = (fermented_out(grams) for grams in (NON_SUGAR.value, NON_SUGAR.high, NON_SUGAR.low))
    return Estimate(value, low - USUAL_ERROR, high + USUAL_ERROR)


def og_with_additions(og: float, litres: float, added_grams: float, added_litres: float) -> float:
    """The original gravity that a must would have had with what was added later in it from the start.

    og 1.000 to 1.170 of so many litres; grams of sugar (or honey solids) put in during fermentation, 0 or more; litres
    by which additions raised the volume, 0 or more (0.618 L for a kilogram of sugar; water is litres without grams).
    Mass balance on the sucrose scale.
    """
    check("original SG", og, 1.000, 1.170)
    total = check_litres(litres) + check("added volume", added_litres, 0, 5000, "L")
    grams = extract(og) * litres + check("sugar", added_grams, 0, 1e6, "g")
    return check("original SG", sg_from_extract(check("sugar", grams / total, -1, 470, "g/L")), 0.999, SG_HIGH)


def alcohol_of_blend(lots: Sequence[tuple[float, Estimate]]) -> Estimate:
    """% vol of lots (litres, alcohol) put together, each bound blended as the value is. At least one lot; shrinkage on
    mixing (under 0.1 % at wine strength) left out."""
    check("number of lots", len(lots), 1, 1000)
    total = sum(check_litres(litres) for litres, _ in lots)
    parts = [alcohol.times(litres / total) for litres, alcohol in lots]
    return Estimate(sum(p.value for p in parts), sum(p.low for p in parts), sum(p.high for p in parts))


def attenuation(og: float, sg: float) -> Estimate:
    """Apparent attenuation, %: fall in Brix over Brix at the start, for readings good to 0.001; a dry wine passes 100.

    OG 1.020 to 1.170, sg 0.980 to OG. Definition; alcohol makes it read higher than the share of sugar gone.
    """
    _check_gravities(og, sg, 1.020, 1.170)

    def share(start: float, now: float) -> float:
        return 100 * (1 - brix_from_sg(now) / brix_from_sg(start))

    # Below water Brix is negative, and there a higher OG lowers the figure: so all four corners are tried.
    corners = [
        share(start, now)
        for start in (og - READING_SG, og + READING_SG)
        for now in (max(SG_LOW, sg - READING_SG), sg + READING_SG)
    ]
    return Estimate(share(og, sg), min(corners), max(corners))


def residual_sugar(sg: float, alcohol: Estimate) -> Estimate:
    """Sugar left, g/L, an estimate only: dry extract (OIV-MA-AS2-03B) less the 17 to 30 of a wine without sugar.

    sg 0.980 to 1.120 (20/20, good to 0.001); alcohol 0 to 25 % vol. SG alone cannot tell a dry wine of much body from a
    thin one with a few grams of sugar: the band says so.
    """
    check("SG", sg, SG_LOW, 1.120)
    low = dry_extract(max(SG_LOW, sg - READING_SG), alcohol.low) - NON_SUGAR.high
    high = dry_extract(sg + READING_SG, alcohol.high) - NON_SUGAR.low
    value = dry_extract(sg, alcohol.value) - NON_SUGAR.value
    return Estimate(max(0.0, value), max(0.0, low), max(0.0, high))


class Dryness(NamedTuple):
    """state: "dry", "unclear" or "sugar left"; the SG band of a fermented-out wine of that strength; sugar in g/L."""

    state: str
    dry_sg: tuple[float, float]
    residual_sugar: Estimate


def dryness(sg: float, alcohol: Estimate) -> Dryness:
    """Whether an SG (0.980 to 1.120) reads as a fermented-out wine of that alcohol (0 to 25 % vol).

    Dry up to the SG of the usual 21 g/L extract and the 4 g/L of sugar that "dry" allows; sugar left where even a full
    red's 30 g/L would read lower by more than a reading is good for; unclear between. "Dry" says how it reads: the last
    grams no hydrometer can see. Tabarié's relation, OIV-MA-AS2-03B; extracts are common practice, no source.
    """
    extracts = NON_SUGAR.low, NON_SUGAR.value + DRY_SUGAR, NON_SUGAR.high
    light, dry, full = (expected_sg(alcohol.value, grams) for grams in extracts)
    state = "dry" if sg <= dry else "unclear" if sg <= full + READING_SG else "sugar left"
    return Dryness(state, (light, full), residual_sugar(sg, alcohol))


def sweetness(residual_sugar: float, ta: float | None = None) -> str:
    """Class of a wine by glucose plus fructose (0 to 400 g/L) and TA as tartaric (0 to 20 g/L, or None).

    OIV labelling standard 3.1.6: "dry", "medium dry", "semi-sweet", "sweet".
    """
    sugar = check("residual sugar", residual_sugar, 0, 400, "g/L")
    acid = None if ta is None else check("TA", ta, 0, 20, "g/L")
    for name, limit, balanced, excess in SWEETNESS:
        if sugar <= limit or (acid is not None and sugar <= balanced and sugar - acid <= excess):
            return name
    return "semi-sweet" if sugar < SWEET_FROM else "sweet"


def sugar_fermented(sg_drop: float) -> float:
    """Sugar fermented, g/L, by a fall in SG (0 to 0.120): 131.25 % vol each 1.000, at 16.83 g/L (EU yield)."""
    return check("fall in SG", sg_drop, 0, 0.120) * LINEAR * SUGAR_PER_ALCOHOL_EU
