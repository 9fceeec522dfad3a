"""Bottles, head space, vessels, gas, warming, and doses by volume."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from molmass import Formula

from journalbot.winemaking import alcohol, ethanol, gravity, sugar, volumes
from journalbot.winemaking.ranges import OutOfRange
from journalbot.winemaking.units import convert

# id, volume, unit, volume over 0.75 L. Computed.
BOTTLES = [
    ("10.01", 1, "gal", 5.05),
    ("10.02", 3, "gal", 15.14),
    ("10.03", 5, "gal", 25.24),
    ("10.04", 6, "gal", 30.28),
    ("10.05", 23, "L", 30.67),
    ("10.06", 54, "L", 72),
    ("10.07", 225, "L", 300),
]


@pytest.mark.parametrize(("row", "volume", "unit", "quotient"), BOTTLES)
def test_bottles(row: str, volume: float, unit: str, quotient: float) -> None:
    count, over = volumes.bottles(convert(volume, unit, "L"))
    assert count == math.floor(quotient)
    assert count + over / 0.75 == pytest.approx(quotient, abs=0.006)


@given(st.floats(0.05, 5000), st.sampled_from([0.375, 0.5, 0.75, 1.5]))
def test_bottles_hold_the_wine(litres: float, size: float) -> None:
    count, over = volumes.bottles(litres, size)
    assert count * size + over == pytest.approx(litres, abs=1e-5)
    assert 0 <= over < size + 1e-6


# id, cm across, ml in a centimetre (and cm² of surface). Computed.
@pytest.mark.parametrize(
    ("row", "across", "ml"),
    [("10.08", 3.0, 7.07), ("10.09", 1.85, 2.69), ("10.10", 26, 530.9), ("10.11", 28, 615.8), ("10.12", 32, 804.2)],
)
def test_height(row: str, across: float, ml: float) -> None:
    assert volumes.ml_per_cm(across) == pytest.approx(ml, abs=0.06 if ml > 100 else 0.006)


def test_height_in_an_inch_of_neck() -> None:
    """10.08: 18.0 ml in an inch."""
    assert volumes.ml_per_cm(3.0) * 2.54 == pytest.approx(18.0, abs=0.05)


# id, litres of 12 % wine, from and to °C, ml of swelling, cm across the neck, cm of rise. Computed, OIML R 22.
WARMING = [
    ("10.13", 19, 15, 25, 50, 3.0, 7.0),
    ("10.14", 19, 15, 30, 82, 3.0, 11.6),
    ("10.15", 0.75, 12, 25, 2.4, 1.85, 0.9),
]


@pytest.mark.parametrize(("row", "litres", "start", "end", "ml", "neck", "cm"), WARMING)
def test_warming(row: str, litres: float, start: float, end: float, ml: float, neck: float, cm: float) -> None:
    swelling = volumes.warming_expansion(litres, 12, start, end) * 1000
    assert swelling == pytest.approx(ml, rel=0.05)
    assert swelling / volumes.ml_per_cm(neck) == pytest.approx(cm, rel=0.06)
    assert volumes.warming_expansion(litres, 12, end, start) < 0


def test_gas_of_a_gram_of_sugar() -> None:
    """10.16, 10.17: 0.489 g, 0.267 L (20 °C) for a gram of hexose; 4.12 L, 7.54 g per litre and % vol; molmass."""
    per_gram = 2 * Formula("CO2").mass / Formula("C6H12O6").mass
    molar_volume = 8.314462618 * 293.15 / 101.325
    assert per_gram == pytest.approx(0.489, abs=0.001)
    assert per_gram / Formula("CO2").mass * molar_volume == pytest.approx(0.267, abs=0.001)
    moles = ethanol.ethanol_grams(1) / Formula("C2H6O").mass
    assert volumes.co2_grams(1, 1).value == pytest.approx(moles * Formula("CO2").mass, rel=0.01)
    assert volumes.co2_litres(1, 1).value == pytest.approx(moles * molar_volume, rel=0.01)


@pytest.mark.parametrize(
    ("row", "litres", "strength", "gas"),
    [("10.17", 1, 12, 49.5), ("10.18", 1, 200 / 16.83, 49.0), ("10.18", 19, 12, 940)],
)
def test_gas(row: str, litres: float, strength: float, gas: float) -> None:
    """Computed; printed figures run from 45 (weak) to 55 L for a litre of dry wine."""
    result = volumes.co2_litres(litres, strength)
    assert result.value == pytest.approx(gas, rel=0.05)
    assert result.low / litres >= 44
    assert result.high / litres <= 55


def test_gas_in_a_bottle_of_sparkling_wine() -> None:
    """G. Liger-Belair (2017): 24 g/L gives 11.5 g/L of CO2."""
    assert volumes.co2_grams(1, 24 / 16.83).value == pytest.approx(11.5, rel=0.07)


def test_heat() -> None:
    """10.19: Grainger & Tattersall: 100 g in a litre could warm it by 13 °C; formation enthalpies (memory) give 9.6."""
    band = volumes.heat_rise(100)
    assert (band.low, band.high) == (9, 14)
    assert band.low <= 9.6
    assert band.high >= 13
    assert band.decimals() == 0


# Primary: litres of must, colour, litres of vessel. A quarter to a third left empty: common practice, no source.
@pytest.mark.parametrize(
    ("litres", "colour", "low", "high"), [(20, "red", 30, 30), (20, "white", 26.7, 30), (23, "mead", 34.5, 34.5)]
)
def test_primary(litres: float, colour: str, low: float, high: float) -> None:
    result = volumes.primary_capacity(litres, colour)
    assert (result.low, result.value, result.high) == pytest.approx((low, high, high), abs=0.05)


@pytest.mark.parametrize(
    ("litres", "capacity", "colour", "room"),
    [
        (20, 30, "red", "enough"),
        (23, 30, "white", "tight"),
        (22.5, 30, "white", "enough"),
        (22.5, 30, "red", "tight"),
        (28, 30, "red", "too full"),
        (30, 30, "white", "too full"),
    ],
)
def test_foam(litres: float, capacity: float, colour: str, room: str) -> None:
    assert volumes.foam_room(litres, capacity, colour) == room


def test_more_must_than_vessel() -> None:
    with pytest.raises(OutOfRange, match="capacity 20 L is outside 23 to"):
        volumes.head_space(23, 20)


def test_top_up() -> None:
    assert volumes.top_up(18, 19) == 1
    assert volumes.top_up(19, 19) == 0


def test_racking_loss() -> None:
    """From memory; common practice, no source."""
    fine, gross = volumes.racking_loss(20), volumes.racking_loss(20, "gross lees")
    assert (fine.low, fine.high) == pytest.approx((0.2, 0.8))
    assert gross.low >= fine.high


VESSELS = {"carboy 1": 19.0, "carboy 2": 11.4, "jug A": 3.8, "jug B": 3.8, "carboy 3": 23.0}


@pytest.mark.parametrize(
    ("litres", "best", "spare"),
    [
        (23.0, ("carboy 3",), 0),
        (18.5, ("carboy 1",), 0.5),
        (22.7, ("carboy 1", "jug A"), 0.1),
        (15.3, ("carboy 2", "jug A"), -0.1),
        (3.0, ("jug A",), 0.8),
    ],
)
def test_fits(litres: float, best: tuple[str, ...], spare: float) -> None:
    first = volumes.fits(litres, VESSELS)[0]
    assert first.vessels == best
    assert first.spare == pytest.approx(spare, abs=1e-9)


def test_no_vessel_fits_nothing() -> None:
    assert volumes.fits(20, {}) == []


@given(st.floats(0.5, 60), st.dictionaries(st.text("abc", min_size=1, max_size=3), st.floats(1, 60), max_size=6))
def test_every_vessel_of_a_fit_is_needed(litres: float, vessels: dict[str, float]) -> None:
    for fit in volumes.fits(litres, vessels):
        held = [vessels[name] for name in fit.vessels]
        assert fit.spare == pytest.approx(sum(held) - litres)
        assert fit.spare < min(held)


def test_bentonite() -> None:
    """11.05: 0.15 to 0.5 g/L, to 1 g/L, by trial; common practice, no source."""
    dose = volumes.fining_dose("bentonite", 20)
    assert (dose.unit, dose.low, dose.high, dose.most) == ("g", 3, 10, 20)


def test_oak() -> None:
    """From memory; common practice, no source."""
    dose = volumes.oak_dose("cubes", 20)
    assert (dose.unit, dose.low, dose.high) == ("g", 40, 80)


@pytest.mark.parametrize("call", [volumes.fining_dose, volumes.oak_dose])
def test_no_rate_without_a_row(call: object) -> None:
    assert callable(call)
    with pytest.raises(ValueError, match="packet comes first"):
        call("stardust", 20)


def test_must_of_home_strength_is_worth_its_gas() -> None:
    """One batch, two ways: 12 % vol by gravity, gas by alcohol, sugar by gas, all within the tables' 5 %."""
    drop = 12 / gravity.LINEAR
    grams = alcohol.sugar_fermented(drop)
    assert volumes.co2_grams(1, 12).value == pytest.approx(grams * 0.469, rel=0.05)
    assert sugar.sugar_for_alcohol(1, 8).value == pytest.approx(8 / 12 * grams, rel=0.05)
