"""Alcohol from gravities, attenuation, dryness, sugar left."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journalbot.winemaking import alcohol, ethanol, gravity
from journalbot.winemaking.ranges import Estimate, OutOfRange

# Beers, means of five published sets: id, OG, FG, published % vol, Balling's balance as % vol, real extract published.
# Cutaia, Reid, Speers, J. Inst. Brew. 2009;115:318, Table III.
BEERS = [
    ("3.14", 1.0571, 1.0121, 6.04, 5.90, 5.28),
    ("3.15", 1.0591, 1.0098, 6.56, 6.46, 4.88),
    ("3.16", 1.0726, 1.0095, 8.38, 8.34, 5.38),
    ("3.17", 1.0456, 1.0078, 4.87, 4.92, 3.80),
    ("3.18", 1.0515, 1.0109, 5.38, 5.31, 4.74),
]


@pytest.mark.parametrize(("row", "og", "fg", "published", "computed", "real_extract"), BEERS)
def test_published_beers(
    row: str, og: float, fg: float, published: float, computed: float, real_extract: float
) -> None:
    balling = alcohol.alcohol_by_balling(og, fg)
    assert balling == pytest.approx(published, abs=0.25)
    assert balling == pytest.approx(computed, abs=0.02)
    by_mass = ethanol.dry_extract(fg, balling) / (fg * 9.982)
    assert by_mass == pytest.approx(real_extract, abs=0.06)


# id, OG, FG, low balance, 131.25 times the drop, high balance, extract g/L at the middle one. Computed: OIV-MA-AS2-03B
# with the EU yield; Balling. No published set of wines with OG, FG and measured alcohol was found.
WINES = [
    ("3.19", 1.060, 0.998, 7.90, 8.14, 8.16, 23.9),
    ("3.20", 1.070, 0.995, 9.60, 9.84, 9.93, 21.6),
    ("3.21", 1.075, 0.994, 10.38, 10.63, 10.75, 21.4),
    ("3.22", 1.080, 0.994, 11.04, 11.29, 11.44, 23.4),
    ("3.23", 1.085, 0.993, 11.83, 12.07, 12.28, 23.2),
    ("3.24", 1.085, 1.000, 10.92, 11.16, 11.33, 38.6),
    ("3.25", 1.090, 0.992, 12.63, 12.86, 13.11, 23.0),
    ("3.26", 1.090, 1.000, 11.58, 11.81, 12.02, 40.6),
    ("3.27", 1.095, 0.993, 13.16, 13.39, 13.68, 27.1),
    ("3.28", 1.100, 0.992, 13.96, 14.18, 14.52, 26.8),
    ("3.29", 1.100, 1.010, 11.60, 11.81, 12.06, 66.5),
    ("3.30", 1.110, 0.994, 15.04, 15.23, 15.67, 35.0),
    ("3.31", 1.120, 1.020, 12.96, 13.13, 13.51, 96.5),
]


@pytest.mark.parametrize(("row", "og", "fg", "low", "linear", "high", "grams"), WINES)
def test_alcohol(row: str, og: float, fg: float, low: float, linear: float, high: float, grams: float) -> None:
    result = alcohol.alcohol(og, fg)
    assert result.value == pytest.approx(linear, abs=0.01)
    assert low - 0.1 <= result.value <= high + 0.1
    assert result.low <= low + 0.01
    assert high - 0.01 <= result.high
    assert alcohol.alcohol_bounds(og, fg) == pytest.approx((low, high), abs=0.02)
    assert ethanol.dry_extract(fg, result.value) == pytest.approx(grams, abs=0.1)
    assert result.decimals() == 1


# Printed potential alcohol of grape must, as in the must tables: SG, % vol.
@pytest.mark.parametrize(
    ("og", "printed"), [(1.050, 6.0), (1.060, 7.6), (1.070, 9.2), (1.080, 10.6), (1.088, 12.0), (1.100, 13.8)]
)
def test_alcohol_at_the_end(og: float, printed: float) -> None:
    result = alcohol.alcohol_at_end(og)
    assert result.low <= printed <= result.high
    final = ethanol.expected_sg(result.value, 21)
    assert alcohol.alcohol(og, final).value == pytest.approx(result.value, abs=1e-6)


def test_very_sweet_must_has_bounds_only() -> None:
    with pytest.raises(OutOfRange, match=r"original SG 1\.13 is outside 1\.04 to 1\.12"):
        alcohol.alcohol(1.130, 1.000)
    low, high = alcohol.alcohol_bounds(1.130, 1.000)
    assert 16 < low < high < 18


@given(st.floats(1.040, 1.120), st.floats(0, 1))
def test_more_drop_is_more_alcohol(og: float, share: float) -> None:
    fg = 0.990 + share * (og - 0.990)
    made = alcohol.alcohol(og, fg)
    assert 0 <= made.low <= made.value <= made.high
    if fg < og - 0.002:
        assert alcohol.alcohol(og, fg + 0.002).value < made.value
        assert alcohol.alcohol_bounds(og, fg) > alcohol.alcohol_bounds(og, fg + 0.002)


@given(st.floats(1.035, 1.165))
def test_nothing_fermented_is_no_alcohol(og: float) -> None:
    assert alcohol.alcohol_bounds(og, og) == pytest.approx((0, 0), abs=1e-4)


@pytest.mark.parametrize(
    ("og", "litres", "sugar", "water", "equivalent"),
    [
        (1.075, 20.0, 0, 0, 1.075),
        # 1 lb in 1 US gal of finished must is 46 points (7.06): three quarters of a gallon of water and that pound.
        (1.000, 3.785411784 - 0.45359237 * 0.618, 453.59237, 0.45359237 * 0.618, 1.0461),
        # 20 °Brix with its own volume of water: half the grams per litre (216.2, row 1.17).
        (1.08292, 10.0, 0, 10.0, 1.04163),
    ],
)
def test_additions_count_as_if_there_from_the_start(
    og: float, litres: float, sugar: float, water: float, equivalent: float
) -> None:
    assert alcohol.og_with_additions(og, litres, sugar, water) == pytest.approx(equivalent, abs=0.0002)


def test_chaptalised_while_fermenting() -> None:
    """7.20: 17 g/L for each % vol: 510 g in 20 L make 30 litre-per-cents, spread over the raised volume. The wine ends
    lighter by the alcohol it gained."""
    og = alcohol.og_with_additions(1.075, 20, 510, 0.510 * 0.618)
    plain = alcohol.alcohol(1.075, 0.994).value
    expected = (20 * plain + 30) / (20 + 0.510 * 0.618)
    lighter = 0.994 - (ethanol.ethanol_sg(plain) - ethanol.ethanol_sg(expected))
    assert alcohol.alcohol(og, lighter).value == pytest.approx(expected, abs=0.15)


def test_blend() -> None:
    strong, weak = Estimate.within(14, 0.5), Estimate.within(11, 0.5)
    assert alcohol.alcohol_of_blend([(10, strong), (20, weak)]) == Estimate(12.0, 11.5, 12.5)
    assert alcohol.alcohol_of_blend([(5, strong)]) == strong
    with pytest.raises(OutOfRange):
        alcohol.alcohol_of_blend([])


def test_attenuation() -> None:
    """From table rows 1.21 and 1.38: 24 °Brix to -1.04 is 104.3 %."""
    result = alcohol.attenuation(1.10098, 0.996)
    assert result.value == pytest.approx(104.3, abs=0.1)
    assert result.low < 103.5
    assert result.high > 105
    assert result.decimals() == 0


@given(st.floats(1.020, 1.170), st.floats(0, 1))
def test_attenuation_holds_its_value(og: float, share: float) -> None:
    sg = 0.980 + share * (og - 0.980)
    result = alcohol.attenuation(og, sg)
    assert result.low <= result.value <= result.high
    assert (result.value > 100) == (gravity.brix_from_sg(sg) < 0)


@pytest.mark.parametrize(
    ("sg", "strength", "least", "most"),
    [
        (0.9907, 12.0, 0, 4),  # table row 3.43: light white, no sugar
        (0.996, 12.0, 5, 12),  # much extract, or some 5 to 10 g/L of sugar
        (1.010, 11.0, 30, 55),
    ],
)
def test_residual_sugar(sg: float, strength: float, least: float, most: float) -> None:
    result = alcohol.residual_sugar(sg, Estimate.within(strength, 0.5))
    assert least <= result.value <= most
    assert result.high >= max(4, result.value + 3)  # SG alone cannot tell it better
    assert result.decimals() <= 0


@pytest.mark.parametrize(
    ("sg", "strength", "state"),
    [
        (0.990, 12.0, "dry"),
        (0.992, 12.9, "dry"),
        (0.996, 12.0, "unclear"),
        (1.000, 12.0, "sugar left"),
        (1.000, 8.0, "unclear"),
        (1.020, 10.0, "sugar left"),
    ],
)
def test_dryness(sg: float, strength: float, state: str) -> None:
    """Against table 3e (rows 3.39 to 3.47), for readings good to 0.001."""
    result = alcohol.dryness(sg, Estimate.within(strength, 0.5))
    assert result.state == state
    assert result.dry_sg[0] < result.dry_sg[1]


# 11.13: OIV labelling standard 3.1.6.
@pytest.mark.parametrize(
    ("sugar", "ta", "name"),
    [
        (0, None, "dry"),
        (4, None, "dry"),
        (4.1, None, "medium dry"),
        (9, 7, "dry"),
        (9, 6.9, "medium dry"),
        (9.1, 8, "medium dry"),
        (12, None, "medium dry"),
        (12.1, None, "semi-sweet"),
        (18, 8, "medium dry"),
        (18, 7.9, "semi-sweet"),
        (44.9, 9, "semi-sweet"),
        (45, 9, "sweet"),
        (200, None, "sweet"),
    ],
)
def test_sweetness(sugar: float, ta: float | None, name: str) -> None:
    assert alcohol.sweetness(sugar, ta) == name


def test_microbially_dry() -> None:
    """11.14: common practice, no source; well inside what the law calls dry, and what 11.15 did (10 g/L)."""
    assert alcohol.MICROBIALLY_DRY == 2.0
    assert alcohol.sweetness(alcohol.MICROBIALLY_DRY) == "dry"


def test_sugar_behind_a_fall_in_the_bottle() -> None:
    """10.27: a fall of 0.002 means about 4.4 g/L fermented, 0.26 % vol; sugar worth 0.002 is about 5 g/L. Computed."""
    assert alcohol.sugar_fermented(0.002) == pytest.approx(4.4, rel=0.05)
    assert pytest.approx(0.26, abs=0.005) == 0.002 * gravity.LINEAR
    assert gravity.extract(1.002) == pytest.approx(5, rel=0.05)
