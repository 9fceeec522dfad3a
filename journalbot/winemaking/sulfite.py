"""Sulfur dioxide: the molecular part of the free, what a target needs, and the dose that gives it."""

from journalbot.vocabulary.spoons import TABLETS
from journalbot.winemaking.numeric import interpolate, interpolate_grid
from journalbot.winemaking.ranges import Estimate, check, check_litres

USUAL_PK = 1.81  # English-language practice; the University of California Enology Briefs (1982) tabulate it
POTASSIUM, SODIUM = "potassium metabisulfite", "sodium metabisulfite"
# Share of SO2 by mass, from molar masses; old powder gives less.
SO2_SHARE = {POTASSIUM: 0.5763, SODIUM: 0.6740}
STAYS_FREE = (0.35, 0.75)  # share of an addition that stays free; common practice, no source

# OIV-MA-AS323-04C, Table 1: thermodynamic pK by % vol (columns) and °C (rows).
_ALCOHOLS = (0, 5, 10, 15)
_CELSIUS = (20, 25, 30, 35, 40)
_PK = (
    (1.798, 1.897, 1.997, 2.099),
    (2.000, 2.098, 2.198, 2.301),
    (2.219, 2.299, 2.394, 2.503),
    (2.334, 2.397, 2.488, 2.607),
    (2.493, 2.527, 2.606, 2.728),
)
# What the usual ionic strength of 0.038 takes off it: OIV Table 2 at 20 °C, from memory.
_IONIC = (0.075, 0.078, 0.081, 0.085)

# Molecular SO2 to aim at, mg/L, by colour and moment: low, high, source.
TARGETS: dict[tuple[str, str], tuple[float, float, str]] = {
    ("white", "storage"): (0.5, 0.8, "common practice, no source"),
    ("white", "bottling"): (0.8, 0.8, "common practice, no source"),
    ("red", "bottling"): (0.4, 0.6, "hand-out after University of California Enology Briefs I(1), 1982"),
    ("any", "storage"): (0.6, 0.8, "Understanding Wine Chemistry, chapter 17"),
}
# Molecular SO2 to aim at in store where nothing else is asked, mg/L: the ends of TARGETS.
AIMS: dict[str, float] = {"red": 0.5}
OTHER_AIM = 0.8
SMELT_FROM = 2.0  # mg/L molecular; Understanding Wine Chemistry, chapter 17


def pk(alcohol: float, temperature: float) -> float:
    """pK of sulfurous acid in wine, alcohol 0 to 15 % vol, 20 to 40 °C: OIV-MA-AS323-04C Table 1 less the ionic term.

    The table ends at 20 °C. Below that use USUAL_PK: it is the usual one, not a safe one, since pK falls some 0.04 for
    each degree colder and a cold wine then needs more free SO2 than it says.
    """
    check("alcohol", alcohol, 0, 15, "% vol")
    check("temperature", temperature, 20, 40, "C")
    return interpolate_grid(alcohol, temperature, _ALCOHOLS, _CELSIUS, _PK) - interpolate(alcohol, _ALCOHOLS, _IONIC)


def _free_per_molecular(ph: float, pk: float) -> float:
    check("pK", pk, 1.5, 2.8)
    return float(1 + 10 ** (check("pH", ph, 2.8, 4.2) - pk))


def molecular_so2(free: float, ph: float, pk: float = USUAL_PK) -> float:
    """Molecular SO2, mg/L, from free SO2 (0 to 300 mg/L) and pH (2.8 to 4.2): free / (1 + 10^(pH - pK)).

    OIV-MA-AS323-04C; within 3 % for a given pK. A pH out by 0.05 moves it 12 %.
    """
    return check("free SO2", free, 0, 300, "mg/L") / _free_per_molecular(ph, pk)


def free_so2_needed(molecular: float, ph: float, pk: float = USUAL_PK) -> float:
    """Free SO2, mg/L, for a molecular target (0 to 3 mg/L) at a pH (2.8 to 4.2). OIV-MA-AS323-04C."""
    return check("molecular SO2", molecular, 0, 3, "mg/L") * _free_per_molecular(ph, pk)


def _share(salt: str) -> float:
    if salt not in SO2_SHARE:
        raise ValueError(f"{salt!r} is not a sulfite salt known here: {', '.join(SO2_SHARE)}")
    return SO2_SHARE[salt]


def sulfite_grams(rise: float, litres: float, salt: str = POTASSIUM) -> float:
    """Grams of a metabisulfite that add so much SO2 (0 to 300 mg/L) to a volume in litres; part of it will bind.

    Share of SO2 from molar masses: 57.6 % potassium, 67.4 % sodium salt; within 1 %.
    """
    return check("SO2 to add", rise, 0, 300, "mg/L") * check_litres(litres) / 1000 / _share(salt)


def so2_from_grams(grams: float, litres: float, salt: str = POTASSIUM) -> float:
    """SO2 added, mg/L, by grams (0 to 10 kg) of a metabisulfite in a volume in litres. Molar masses; part will bind."""
    return check("sulfite", grams, 0, 10000, "g") * _share(salt) * 1000 / check_litres(litres)


def so2_from_tablets(count: float, litres: float) -> Estimate:
    """SO2 added, mg/L, by so many Campden tablets (0 to 1000): value for 0.44 g of the potassium salt, the band for
    0.44 to 0.55 g of either salt. Tablet weights are common practice, no source: the packet comes first."""
    tablet, least, most = TABLETS["campden tablet"], min(SO2_SHARE.values()), max(SO2_SHARE.values())
    each = Estimate(tablet.grams * SO2_SHARE[POTASSIUM], tablet.low * least, tablet.high * most)
    return each.times(check("tablets", count, 0, 1000) * 1000 / check_litres(litres))


def tablets(rise: float, litres: float) -> Estimate:
    """Campden tablets that add so much SO2 (0 to 300 mg/L) to a volume in litres; basis as so2_from_tablets()."""
    one = so2_from_tablets(1, litres)
    wanted = check("SO2 to add", rise, 0, 300, "mg/L")
    return Estimate(wanted / one.value, wanted / one.high, wanted / one.low)


def free_so2_after(free: float, added: float) -> Estimate:
    """Free SO2, mg/L, to be expected after an addition (both 0 to 300 mg/L) to a wine last read at `free`.

    An estimate: 35 to 75 % of an addition stays free (common practice, no source). What air and time took since the
    reading is not in it.
    """
    check("free SO2", free, 0, 300, "mg/L")
    check("SO2 added", added, 0, 300, "mg/L")
    low, high = STAYS_FREE
    return Estimate(free + added * (low + high) / 2, free + added * low, free + added * high)
