"""Nitrogen: supply by molar masses, limits, and the band of need."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from molmass import Formula

from journalbot.winemaking import nutrients
from journalbot.winemaking.units import convert

DAP = "diammonium phosphate"


@pytest.mark.parametrize(
    ("row", "salt", "formula", "value"),
    [("8.01", DAP, "(NH4)2HPO4", 212.1), ("8.03", "ammonium sulfate", "(NH4)2SO4", 212.0)],
)
def test_nitrogen_in_a_gram(row: str, salt: str, formula: str, value: float) -> None:
    """Molar masses by molmass."""
    assert nutrients.NITROGEN[salt] == pytest.approx(value, rel=0.001)
    assert nutrients.NITROGEN[salt] == pytest.approx(2 * Formula("N").mass / Formula(formula).mass * 1000, rel=0.01)


# id, g/L of DAP, mg/L of nitrogen. Computed.
@pytest.mark.parametrize(("row", "rate", "nitrogen"), [("8.02", 0.1, 21.2), ("8.02", 0.1198, 25.4)])
def test_supply(row: str, rate: float, nitrogen: float) -> None:
    assert nutrients.nitrogen_rise(rate * 100, 100) == pytest.approx(nitrogen, rel=0.01)


@pytest.mark.parametrize(
    ("row", "rise", "litres", "grams"), [("8.12", 80, 23, 8.67), ("8.13", 50, convert(5, "gal", "L"), 4.46)]
)
def test_doses(row: str, rise: float, litres: float, grams: float) -> None:
    """Computed."""
    assert nutrients.nitrogen_grams(rise, litres) == pytest.approx(grams, rel=0.01)


def test_limits() -> None:
    """8.04: Oxford Companion to Wine, OIV OENO 7/95; 8.05: 8 lb in 1000 US gal, the limit from memory."""
    limits = {where: limit for where, (limit, _) in nutrients.DAP_LIMITS.items()}
    assert (limits["EU"], nutrients.DAP_SECOND_FERMENTATION) == (1.0, 0.3)
    assert limits["US"] == pytest.approx(convert(8 / 1000, "lb/gal", "g/L"), abs=0.001)


@pytest.mark.parametrize(
    ("rate", "passed"),
    [
        (0.2, ()),
        (0.95, ()),
        (0.98, ("US",)),
        (1.2, ("EU", "US")),
    ],
)
def test_limits_passed(rate: float, passed: tuple[str, ...]) -> None:
    assert nutrients.limits_passed(rate * 20, 20) == passed


def test_usual_addition() -> None:
    """8.11: 100 to 300 mg/L where YAN was not measured; common practice, no source."""
    assert nutrients.USUAL_DAP == (0.1, 0.3)
    assert all(not nutrients.limits_passed(rate * 20, 20) for rate in nutrients.USUAL_DAP)


# 8.09: °Brix, YAN in mg/L: Californian practice, from memory. 8.08: low end 140.
@pytest.mark.parametrize(("brix", "yan"), [(21, 200), (22, 225), (23, 250), (25, 300), (27, 350), (18, 200), (29, 350)])
def test_need(brix: float, yan: float) -> None:
    need = nutrients.yan_need(brix)
    assert (need.value, need.low, need.high) == (yan, 140, 350)
    assert need.decimals() < 0  # never a fact to the milligram


@given(st.floats(0, 300), st.floats(0.5, 1000), st.sampled_from(list(nutrients.NITROGEN)))
def test_dose_to_rise_to_dose(rise: float, litres: float, salt: str) -> None:
    grams = nutrients.nitrogen_grams(rise, litres, salt)
    assert nutrients.nitrogen_rise(grams, litres, salt) == pytest.approx(rise, rel=1e-9)


def test_unknown_salt() -> None:
    with pytest.raises(ValueError, match="not known"):
        nutrients.nitrogen_grams(50, 20, "fish meal")
