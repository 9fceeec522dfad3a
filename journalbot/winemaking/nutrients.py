"""Yeast assimilable nitrogen (YAN): how much a must may need, and what ammonium salts supply."""

from journalbot.winemaking.numeric import interpolate
from journalbot.winemaking.ranges import Estimate, check, check_litres

# mg of nitrogen in a gram, from molar masses.
NITROGEN: dict[str, float] = {"diammonium phosphate": 212.1, "ammonium sulfate": 212.0}
# Most diammonium phosphate, g/L, by law: where, how much, source.
DAP_LIMITS: dict[str, tuple[float, str]] = {
    "EU": (1.0, "Oxford Companion to Wine, diammonium phosphate"),
    "US": (0.959, "8 lb in 1000 US gallons, from memory"),
}
DAP_SECOND_FERMENTATION = 0.3  # g/L, for sparkling wine in the EU; OIV resolution OENO 7/95
USUAL_DAP = (0.1, 0.3)  # g/L where YAN was not measured; common practice, no source
YAN_BAND = (140.0, 350.0)  # mg/L; low end common practice, no source, high end from memory
# mg/L of YAN by °Brix: Californian practice, from memory.
_BRIX = (21, 23, 25, 27)
_YAN = (200, 250, 300, 350)


def yan_need(brix: float) -> Estimate:
    """YAN, mg/L, that a must of 15 to 30 °Brix may need: a band of 140 to 350, with California's figure in it.

    From memory; never a fact: in one study of Pinot noir (Schreiner, Osborne, Skinkis 2018) 100 mg/L went dry.
    """
    return Estimate(interpolate(check("Brix", brix, 15, 30), _BRIX, _YAN), *YAN_BAND)


def _nitrogen(salt: str) -> float:
    if salt not in NITROGEN:
        raise ValueError(f"the nitrogen in {salt!r} is not known: only in {', '.join(NITROGEN)}")
    return NITROGEN[salt]


def nitrogen_grams(rise: float, litres: float, salt: str = "diammonium phosphate") -> float:
    """Grams of an ammonium salt that raise YAN by 0 to 300 mg/L in a volume in litres. Molar masses, within 1 %."""
    return check("rise in YAN", rise, 0, 300, "mg/L") * check_litres(litres) / _nitrogen(salt)


def nitrogen_rise(grams: float, litres: float, salt: str = "diammonium phosphate") -> float:
    """Rise of YAN, mg/L, from grams (0 to 10 kg) of an ammonium salt in a volume in litres. Molar masses; 1 %."""
    return check("salt", grams, 0, 10000, "g") * _nitrogen(salt) / check_litres(litres)


def limits_passed(grams: float, litres: float) -> tuple[str, ...]:
    """Which of DAP_LIMITS so many grams (0 to 10 kg) of diammonium phosphate in a volume in litres go beyond."""
    rate = check("diammonium phosphate", grams, 0, 10000, "g") / check_litres(litres)
    return tuple(where for where, (limit, _) in DAP_LIMITS.items() if rate > limit)
