"""Titratable acidity against molar masses, a handbook and published ranges."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from molmass import Formula

from journalbot.winemaking import acid
from journalbot.winemaking.units import convert

# id, given as, wanted as, factor. Computed from molar masses.
CONVERSIONS = [
    ("6.01", "tartaric", "sulfuric", 0.6535),
    ("6.02", "sulfuric", "tartaric", 1.5303),
    ("6.03", "tartaric", "malic", 0.8934),
    ("6.04", "malic", "tartaric", 1.1193),
    ("6.05", "tartaric", "citric", 0.8534),
    ("6.06", "citric", "tartaric", 1.1718),
    ("6.07", "tartaric", "lactic", 1.2003),
    ("6.08", "lactic", "tartaric", 0.8331),
    ("6.09", "tartaric", "acetic", 0.8002),
]


@pytest.mark.parametrize(("row", "given_as", "wanted_as", "factor"), CONVERSIONS)
def test_conversions(row: str, given_as: str, wanted_as: str, factor: float) -> None:
    assert acid.ta_as(1, given_as, wanted_as) == pytest.approx(factor, rel=0.003)


# Acid, formula, hydrogens that titrate: independent molar masses by molmass.
FORMULAS = [
    ("tartaric", "C4H6O6", 2),
    ("malic", "C4H6O5", 2),
    ("lactic", "C3H6O3", 1),
    ("citric", "C6H8O7", 3),
    ("sulfuric", "H2SO4", 2),
    ("acetic", "C2H4O2", 1),
    ("succinic", "C4H6O4", 2),
]


@pytest.mark.parametrize(("name", "formula", "hydrogens"), FORMULAS)
def test_equivalents(name: str, formula: str, hydrogens: int) -> None:
    assert acid.EQUIVALENTS[name] == pytest.approx(Formula(formula).mass / hydrogens, rel=0.0005)


def test_percent() -> None:
    """6.10: 0.65 % is 6.5 g/L."""
    assert acid.ta_from_percent(0.65) == pytest.approx(6.5)


# 6.11: rise of TA, as tartaric, for 1 g/L of an acid. Computed.
@pytest.mark.parametrize(
    ("name", "rise"), [("tartaric acid", 1.0), ("malic acid", 1.12), ("citric acid", 1.17), ("lactic acid", 0.83)]
)
def test_strength_of_acids(name: str, rise: float) -> None:
    assert acid.ta_rise(10, 10, name).value == pytest.approx(rise, abs=0.005)


@pytest.mark.parametrize(
    ("row", "rise", "litres", "grams"), [("6.12", 1.0, convert(5, "gal", "L"), 18.9), ("6.13", 1.5, 23, 34.5)]
)
def test_tartaric_doses(row: str, rise: float, litres: float, grams: float) -> None:
    """Computed: grams per litre times litres."""
    result = acid.acid_grams(rise, litres)
    assert result.low == result.value == result.high == pytest.approx(grams, abs=0.05)


def test_a_blend_is_a_band() -> None:
    result = acid.acid_grams(1, 20, "acid blend")
    assert result.low == pytest.approx(20 / 1.1718, rel=0.001)
    assert result.high == 20
    assert result.decimals() == 0


def test_bitartrate() -> None:
    """6.14: 0.40 g/L of TA for each g/L of potassium bitartrate; molmass for KC4H5O6."""
    assert acid.ta_lost_to_bitartrate(1) == pytest.approx(
        Formula("C4H6O6").mass / 2 / Formula("KC4H5O6").mass, rel=0.001
    )


# Grams for 1 g/L less TA: id, material, which bound, g/L, and the same by molmass (base, its hydrogens, extra share).
LOWERING = [
    ("6.15", "calcium carbonate", "value", 0.667, "CaCO3", 2, 1),
    ("6.16", "potassium bicarbonate", "high", 1.334, "KHCO3", 1, 1),
    ("6.17", "potassium bicarbonate", "low", 0.667, "KHCO3", 1, 2),
    ("6.19", "potassium carbonate", "high", 0.921, "K2CO3", 2, 1),
    ("6.19", "potassium carbonate", "low", 0.460, "K2CO3", 2, 2),
]


@pytest.mark.parametrize(("row", "material", "bound", "rate", "formula", "hydrogens", "share"), LOWERING)
def test_lowering(row: str, material: str, bound: str, rate: float, formula: str, hydrogens: int, share: int) -> None:
    found = getattr(acid.deacidifier_grams(1, 1, material), bound)
    assert found == pytest.approx(rate, rel=0.001)
    tartaric = Formula("C4H6O6").mass / 2
    assert found == pytest.approx(Formula(formula).mass / hydrogens / tartaric / share, rel=0.01)


@pytest.mark.parametrize(
    ("row", "material", "sulfuric"), [("6.15", "calcium carbonate", 0.98), ("6.16", "potassium bicarbonate", 0.49)]
)
def test_handbook_of_enology(row: str, material: str, sulfuric: float) -> None:
    """Handbook of Enology, vol. 2: 1 g/L neutralises so much TA as sulfuric acid."""
    fall = 1 / acid.deacidifier_grams(1, 1, material).high
    assert acid.ta_as(fall, "tartaric", "sulfuric") == pytest.approx(sulfuric, rel=0.01)


# Doses used in practice, g/L: from memory.
@pytest.mark.parametrize(
    ("row", "material", "low", "high"),
    [("6.18", "potassium bicarbonate", 0.9, 1.0), ("6.19", "potassium carbonate", 0.62, 0.62)],
)
def test_practice_from_memory(row: str, material: str, low: float, high: float) -> None:
    assert low <= acid.deacidifier_grams(1, 1, material).value <= high


def test_chalk_for_a_carboy() -> None:
    """6.20: 23 L, 1.5 g/L less, calcium carbonate: 23.0 g. Computed."""
    assert acid.deacidifier_grams(1.5, 23, "calcium carbonate").value == pytest.approx(23.0, rel=0.01)


def test_when_carbonate_is_the_wrong_tool() -> None:
    """6.21: Mattick, Plane, Weirs 1980: with malic much over 4 g/L malolactic may be better."""
    assert acid.MALOLACTIC_RATHER == 4.0


# id, malic g/L, what, value. Computed from molar masses.
MALOLACTIC = [
    ("6.22", 1, "lactic", 0.672),
    ("6.23", 1, "ta_fall", 0.560),
    ("6.24", 1, "co2_grams", 0.328),
    ("6.24", 1, "co2_litres", 0.18),
    ("6.25", 4, "ta_fall", 2.24),
]


@pytest.mark.parametrize(("row", "malic", "what", "value"), MALOLACTIC)
def test_malolactic(row: str, malic: float, what: str, value: float) -> None:
    assert getattr(acid.malolactic_change(malic), what) == pytest.approx(value, rel=0.02)


def test_malolactic_against_molar_masses() -> None:
    change, moles = acid.malolactic_change(10), 10 / Formula("C4H6O5").mass
    assert change.lactic == pytest.approx(moles * Formula("C3H6O3").mass, rel=0.001)
    assert change.lactic + change.co2_grams == pytest.approx(10, rel=0.001)  # mass is kept
    assert change.co2_litres == pytest.approx(moles * 8.314462618 * 293.15 / 101.325, rel=0.001)


def test_malolactic_done() -> None:
    """11.19: under 0.2 to 0.3 g/L; common practice, no source."""
    assert 0.2 <= acid.MALOLACTIC_DONE <= 0.3


def test_water() -> None:
    """6.26: 27 CFR 24.178: 20 gal to 1000 gal takes 0.1 g/L off a fixed acid near 5 g/L."""
    assert 5 - acid.diluted(5, 1000, 20) == pytest.approx(0.1, abs=0.005)


# 11.09: University of California home winemaking guide, Table 1: white TA 8 to 10 and pH 3.2 to 3.4;
# red 6 to 8 and 3.3 to 3.5.
ADVICE = [
    ("red", 5.2, 3.75, "add"),
    ("red", 5.2, 3.4, "consider adding"),
    ("red", 7.0, 3.7, "consider adding"),
    ("red", 7.0, 3.4, "leave"),
    ("red", 7.0, 3.2, "leave"),
    ("red", 5.2, 3.1, "unclear"),
    ("red", 9.5, 3.7, "unclear"),
    ("red", 9.5, 3.2, "lower"),
    ("red", 9.5, 3.4, "consider lowering"),
    ("red", 8.0, 3.5, "leave"),
    ("white", 8.0, 3.2, "leave"),
    ("white", 7.0, 3.5, "add"),
    ("white", None, 3.3, "measure"),
    ("white", 7.0, None, "measure"),
    ("white", None, None, "measure"),
]


@pytest.mark.parametrize(("style", "ta", "ph", "action"), ADVICE)
def test_advice(style: str, ta: float | None, ph: float | None, action: str) -> None:
    assert acid.acid_advice(style, ta, ph).action == action


@pytest.mark.parametrize(("style", "ta", "ph"), [("white", (8, 10), (3.2, 3.4)), ("red", (6, 8), (3.3, 3.5))])
def test_advice_names_its_ranges(style: str, ta: tuple[float, float], ph: tuple[float, float]) -> None:
    found = acid.acid_advice(style, 7, 3.3)
    assert (found.ta_range, found.ph_range) == (ta, ph)


@pytest.mark.parametrize("style", ["mead", "fruit", "rosé"])
def test_no_advice_without_a_published_range(style: str) -> None:
    with pytest.raises(ValueError, match="no published range"):
        acid.acid_advice(style, 6, 3.4)


@given(st.floats(0, 6), st.floats(0.1, 1000), st.sampled_from(list(acid.ACIDS)))
def test_dose_to_rise_to_dose(rise: float, litres: float, name: str) -> None:
    grams = acid.acid_grams(rise, litres, name)
    assert acid.ta_rise(grams.value, litres, name).value == pytest.approx(rise, rel=1e-9)


@given(st.floats(0, 40), st.sampled_from(list(acid.EQUIVALENTS)), st.sampled_from(list(acid.EQUIVALENTS)))
def test_ta_there_and_back(ta: float, one: str, other: str) -> None:
    there = acid.ta_as(ta, one, other)
    if there <= 40:
        assert acid.ta_as(there, other, one) == pytest.approx(ta, rel=1e-9)


def test_unknown_names() -> None:
    for call in (lambda: acid.ta_as(1, "oxalic", "malic"), lambda: acid.acid_grams(1, 20, "vinegar"),
                 lambda: acid.deacidifier_grams(1, 20, "baking powder")):  # fmt: skip
        with pytest.raises(ValueError, match="known here"):
            call()
