"""Titratable acidity (TA): its units, raising and lowering it, malolactic change, and whether a must asks for acid.

No function here gives a pH. pH follows the ratio of acids to their salts, buffers differ from wine to wine, and part of
what is added may crystallise, so no direct relation of TA to pH holds (Iowa State University Extension; Mattick, Plane
and Weirs 1980). Dose by TA, then measure pH on a trial.
"""


from typing import NamedTuple

from journalbot.winemaking.ranges import Estimate, check, check_litres

# Grams per mole of hydrogen that can be titrated, from molar masses.
EQUIVALENTS: dict[str, float] = {
    "tartaric": 75.04,
    "malic": 67.04,
    "lactic": 90.08,
    "citric": 64.04,
    "sulfuric": 49.04,
    "acetic": 60.05,
    "succinic": 59.04,
}
# TA rise, g/L as tartaric, for 1 g/L of what is put in: value, low, high. A blend's make-up is its maker's secret, so
# it is taken as equal parts (common practice, no source) and bounded by its weakest and strongest acid.
ACIDS: dict[str, tuple[float, float, float]] = {
    "tartaric acid": (1.0, 1.0, 1.0),
    "malic acid": (75.04 / 67.04, 75.04 / 67.04, 75.04 / 67.04),
    "citric acid": (75.04 / 64.04, 75.04 / 64.04, 75.04 / 64.04),
    "lactic acid": (75.04 / 90.08, 75.04 / 90.08, 75.04 / 90.08),
    "acid blend": (1.097, 1.0, 75.04 / 64.04),
}
# Grams for each gram of TA (as tartaric) taken away: the dose to use, the least, the most. Most is neutralising alone,
# by molar masses; least is where all the potassium falls out as bitartrate and takes as much acid again (reaction:
# Australian Wine Research Institute). The doses between are from memory.
DEACIDIFIERS: dict[str, tuple[float, float, float]] = {
    "calcium carbonate": (0.667, 0.667, 0.667),
    "potassium bicarbonate": (0.9, 0.667, 1.334),
    "potassium carbonate": (0.62, 0.460, 0.921),
}
BITARTRATE_TA = 75.04 / 188.18  # g of TA (as tartaric) in a gram of potassium bitartrate
MALOLACTIC_DONE = 0.3  # g/L malic and under; common practice, no source (0.2 to 0.3)
MALOLACTIC_RATHER = 4.0  # g/L malic from which malolactic may serve better than a carbonate: Mattick et al. 1980

# Harvest aims by style: TA in g/L as tartaric, pH. University of California home winemaking guide, Table 1.
HARVEST: dict[str, tuple[tuple[float, float], tuple[float, float]]] = {
    "white": ((8.0, 10.0), (3.2, 3.4)),
    "red": ((6.0, 8.0), (3.3, 3.5)),
}


def _known(name: str, table: dict[str, float] | dict[str, tuple[float, float, float]], what: str) -> None:
    if name not in table:
        raise ValueError(f"{name!r} is not {what} known here: {', '.join(table)}")


def ta_as(value: float, given_as: str, wanted_as: str) -> float:
    """TA (0 to 40 g/L) given as one acid, wanted as another; acids of EQUIVALENTS. Molar masses, within 0.3 %."""
    for name in (given_as, wanted_as):
        _known(name, EQUIVALENTS, "an acid")
    return check("TA", value, 0, 40, "g/L") * EQUIVALENTS[wanted_as] / EQUIVALENTS[given_as]


def ta_from_percent(percent: float) -> float:
    """TA in g/L from per cent (grams in 100 mL, 0 to 4): ten times, by definition."""
    return check("TA", percent, 0, 4, "%") * 10


def acid_grams(rise: float, litres: float, acid: str = "tartaric acid") -> Estimate:
    """Grams of an acid (of ACIDS) that raise TA, as tartaric, by 0 to 6 g/L in a volume in litres.

    Equivalents by molar masses, exact for a pure acid, a band for a blend. Should bitartrate crystallise, each g/L of
    it takes 0.40 g/L of TA away again.
    """
    _known(acid, ACIDS, "an acid")
    value, low, high = ACIDS[acid]
    total = check("rise in TA", rise, 0, 6, "g/L") * check_litres(litres)
    return Estimate(total / value, total / high, total / low)


def ta_rise(grams: float, litres: float, acid: str = "tartaric acid") -> Estimate:
    """Rise of TA, g/L as tartaric, from grams (0 to 50 kg) of an acid in a volume in litres; as acid_grams()."""
    _known(acid, ACIDS, "an acid")
    return Estimate(*ACIDS[acid]).times(check("acid", grams, 0, 50000, "g") / check_litres(litres))


def ta_lost_to_bitartrate(bitartrate: float) -> float:
    """Fall of TA, g/L as tartaric, when so much potassium bitartrate (0 to 10 g/L) crystallises. Molar masses."""
    return check("bitartrate", bitartrate, 0, 10, "g/L") * BITARTRATE_TA


def deacidifier_grams(fall: float, litres: float, material: str) -> Estimate:
    """Grams of a deacidifier (of DEACIDIFIERS) that lower TA, as tartaric, by 0 to 5 g/L in a volume in litres.

    Bounds by molar masses, within 1 %; agrees with the Handbook of Enology, vol. 2. A potassium salt's effect depends
    on how much bitartrate falls out when the wine is chilled after it.
    """
    _known(material, DEACIDIFIERS, "a deacidifier")
    total = check("fall in TA", fall, 0, 5, "g/L") * check_litres(litres)
    return Estimate(*DEACIDIFIERS[material]).times(total)


class MalolacticChange(NamedTuple):
    """lactic g/L made; ta_fall g/L as tartaric; co2_grams and co2_litres of gas (20 °C) for each litre of wine."""

    lactic: float
    ta_fall: float
    co2_grams: float
    co2_litres: float


def malolactic_change(malic: float) -> MalolacticChange:
    """What becomes of malic acid (0 to 15 g/L) wholly used: two equivalents to one of lactic, and CO2; within 2 %.

    Molar masses. TA may fall further if bitartrate drops; pH rises, by how much cannot be computed.
    """
    moles = check("malic acid", malic, 0, 15, "g/L") / 134.09
    return MalolacticChange(moles * 90.08, moles * 75.04, moles * 44.01, moles * 24.06)


def diluted(value: float, litres: float, water: float) -> float:
    """A concentration (TA, sugar, total SO2; 0 or more) after water (litres, 0 or more) is added to a volume in litres.

    Mass balance; agrees with 27 CFR 24.178 (20 parts in 1000 take 0.1 g/L off 5 g/L).
    """
    check("value", value, 0, 1e6)
    return value * check_litres(litres) / (litres + check("water", water, 0, 5000, "L"))


class AcidAdvice(NamedTuple):
    """action: "add", "consider adding", "leave", "consider lowering", "lower", "unclear", or "measure" where a reading
    is missing; where ta and ph lie: "low", "within", "high" or None; the ranges compared with."""

    action: str
    ta: str | None
    ph: str | None
    ta_range: tuple[float, float]
    ph_range: tuple[float, float]


# (where TA lies, where pH lies) to action. Low pH with low TA, or high with high, pull opposite ways: acid or carbonate
# would mend one and worsen the other.
_ACTIONS: dict[tuple[str | None, str | None], str] = {
    ("low", "high"): "add",
    ("low", "within"): "consider adding",
    ("within", "high"): "consider adding",
    ("low", "low"): "unclear",
    ("within", "within"): "leave",
    ("within", "low"): "leave",
    ("high", "low"): "lower",
    ("high", "within"): "consider lowering",
    ("high", "high"): "unclear",
}


def _place(value: float | None, low: float, high: float) -> str | None:
    if value is None:
        return None
    return "low" if value < low else "high" if value > high else "within"


def acid_advice(style: str, ta: float | None, ph: float | None) -> AcidAdvice:
    """Where a must stands against the harvest aims of its style, "white" or "red", and what that suggests.

    ta as tartaric, 0 to 20 g/L, and pH 2.5 to 4.6, or None where not measured: both are needed for advice. Ranges of
    the University of California home winemaking guide, Table 1; no published range was found for fruit wine or mead, so
    other styles raise ValueError.
    """
    if style not in HARVEST:
        raise ValueError(f"no published range for {style!r} wine: only for {', '.join(HARVEST)}")
    ta_range, ph_range = HARVEST[style]
    at_ta = _place(None if ta is None else check("TA", ta, 0, 20, "g/L"), *ta_range)
    at_ph = _place(None if ph is None else check("pH", ph, 2.5, 4.6), *ph_range)
    return AcidAdvice(_ACTIONS.get((at_ta, at_ph), "measure"), at_ta, at_ph, ta_range, ph_range)
