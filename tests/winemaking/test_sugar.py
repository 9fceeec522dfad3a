"""Sugar, honey, water and concentrate; sorbate; pressure in the bottle."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from iapws._iapws import _Henry  # type: ignore[import-untyped]
from molmass import Formula

from journalbot.winemaking import alcohol, gravity, sugar
from journalbot.winemaking.ranges import OutOfRange
from journalbot.winemaking.units import convert

# id, volume, unit, from and to °Brix, kg of sucrose, final litres. Computed: m = mass (B2 - B1) / (100 - B2).
RAISING = [
    ("7.10", 1, "gal", 18, 22, 0.208, 3.91),
    ("7.11", 5, "gal", 19, 22, 0.784, 19.41),
    ("7.12", 20, "L", 18, 21, 0.814, 20.51),
    ("7.13", 6, "gal", 10, 22, 3.627, 24.96),
    ("7.14", 100, "L", 17, 20, 4.004, 102.48),
]


@pytest.mark.parametrize(("row", "volume", "unit", "start", "target", "kilograms", "final"), RAISING)
def test_raising(
    row: str, volume: float, unit: str, start: float, target: float, kilograms: float, final: float
) -> None:
    litres = convert(volume, unit, "L")
    result = sugar.to_brix(litres, start, target)
    assert result.kilograms == pytest.approx(kilograms, rel=0.01)
    assert result.litres == pytest.approx(final, abs=0.006)
    assert result.sg == pytest.approx(gravity.sg_from_brix(target))
    # The trade's 0.125 lb per US gal and °Brix (common practice, no source) runs 9 to 13 % high.
    rule = convert(0.125 * convert(litres, "L", "gal") * (target - start), "lb", "kg")
    assert 1.08 <= rule / result.kilograms <= 1.14


def test_a_pound_in_a_gallon_of_finished_must() -> None:
    """7.06: +0.046 SG for 119.8 g/L; an ounce +0.0029; a pound in a UK gallon +0.0384. Computed."""
    for amount, points in (("lb/gal", 0.046), ("oz/gal", 0.0029), ("lb/UK gal", 0.0384)):
        assert gravity.sg_from_extract(convert(1, amount, "g/L")) - 1 == pytest.approx(points, abs=0.0002)


def test_a_pound_stirred_into_a_gallon_of_water() -> None:
    """1.0430 and 4.065 L. Computed, Bubnik et al. 1995."""
    result = sugar.after_adding(convert(1, "gal", "L"), 0, convert(1, "lb", "kg"))
    assert (result.sg, result.litres) == pytest.approx((1.0430, 4.065), abs=0.0005)


def test_sugar_for_alcohol() -> None:
    """7.20: 17 g/L for 1 % vol (Austria, Burgundy), 16 at the EU yield: 20 L by 1.5 % vol takes 510 g."""
    result = sugar.sugar_for_alcohol(20, 1.5)
    assert (result.low, result.value, result.high) == (480, 510, 540)
    inverted = 16.83 * Formula("C12H22O11").mass / (2 * Formula("C6H12O6").mass)
    assert inverted * 20 * 1.5 == pytest.approx(result.low, rel=0.005)
    assert sugar.sugar_for_alcohol(100, 2).value == 3400  # Austria: 3.4 kg in 100 L for 2 % vol


@pytest.mark.parametrize("brix", [10, 20, 30])
def test_volume_of_dissolved_sugar(brix: float) -> None:
    """7.21: 27 CFR 24.181: 13.5 lb make a US gallon; the density of sucrose solutions says the same, within 1.5 %."""
    assert sugar.sugar_volume(1) == pytest.approx(convert(1, "gal", "L") / convert(13.5, "lb", "kg"), rel=0.001)
    by_density = (100 / brix) / gravity.sucrose_density(brix) - (100 / brix - 1) / gravity.sucrose_density(0)
    assert sugar.sugar_volume(1) == pytest.approx(by_density * 1000, rel=0.015)


def test_honey_composition() -> None:
    """7.16: E. Crane, A Book of Honey (1980): water 17.2 %; sugars 38.2 + 31.3 + 1.3 + 7.3 + 1.5 %."""
    assert pytest.approx(100 - 17.2) == sugar.HONEY
    assert pytest.approx((38.2 + 31.3 + 1.3 + 7.3 + 1.5) / 100) == sugar.HONEY_SUGARS


# Honey in so many litres of finished must: id, kg, litres, SG. Computed; honey's water differs: ±0.002.
@pytest.mark.parametrize(
    ("row", "kilograms", "litres", "sg"), [("7.17", 0.45359237, 3.785411784, 1.038), ("7.18", 1, 5, 1.0636)]
)
def test_honey(row: str, kilograms: float, litres: float, sg: float) -> None:
    assert gravity.sg_from_extract(1000 * kilograms * sugar.HONEY / 100 / litres) == pytest.approx(sg, abs=0.0005)
    water = (litres * sg * gravity.WATER_20 / 1000 - kilograms) / gravity.WATER_20 * 1000
    result = sugar.after_adding(water, 0, kilograms, sugar.HONEY)
    assert (result.sg, result.litres) == pytest.approx((sg, litres), rel=0.0005)


def test_honey_sugars() -> None:
    """7.18: 1 kg in 5 L: 159 g/L of sugars."""
    assert pytest.approx(159, abs=0.5) == 1000 * sugar.HONEY_SUGARS / 5


def test_honey_for_sugar() -> None:
    """7.19: 1.25 kg for 1 kg of sugar, a weak source: the balance asks about as much."""
    with_sugar, with_honey = (sugar.to_brix(20, 10, 22, source) for source in (sugar.DRY_SUGAR, sugar.HONEY))
    assert with_honey.kilograms / with_sugar.kilograms == pytest.approx(1.25, abs=0.06)


def test_water_brings_down() -> None:
    """Half mass of water halves the Brix; no mass is lost."""
    result = sugar.to_brix(10, 24, 12, sugar.WATER)
    assert result.kilograms == pytest.approx(10 * gravity.sucrose_density(24) / 1000)
    assert result.litres == pytest.approx(2 * result.kilograms / gravity.sucrose_density(12) * 1000)


def test_concentrate() -> None:
    """Density of 60 °Brix, 1.2865 g/mL, is the ICUMSA table's from memory."""
    assert sugar.liquid_litres(1.2865, 60) == pytest.approx(1, abs=0.001)
    result = sugar.to_brix(20, 18, 22, 60)
    assert result.kilograms == pytest.approx(20 * 1.07216 * 4 / 38, rel=0.001)


@given(st.floats(1, 500), st.floats(0, 30), st.floats(0.1, 10), st.sampled_from([100.0, 82.8, 60.0]))
def test_raise_to_brix_and_back(litres: float, brix: float, rise: float, source: float) -> None:
    target = brix + rise
    added = sugar.to_brix(litres, brix, target, source)
    assert sugar.after_adding(litres, brix, added.kilograms, source).brix == pytest.approx(target, abs=1e-6)
    assert added.litres > litres


@given(st.floats(1, 500), st.floats(10, 30), st.floats(0.1, 8))
def test_dilute_and_back(litres: float, brix: float, fall: float) -> None:
    watered = sugar.to_brix(litres, brix, brix - fall, sugar.WATER)
    assert sugar.after_adding(litres, brix, watered.kilograms, sugar.WATER).brix == pytest.approx(brix - fall, abs=1e-6)


@given(st.floats(1, 500), st.floats(1.0, 1.1), st.floats(0.001, 0.05))
def test_to_sg_reaches_it(litres: float, sg: float, rise: float) -> None:
    assert sugar.to_sg(litres, sg, sg + rise).sg == pytest.approx(sg + rise, abs=1e-6)


@pytest.mark.parametrize(("target", "source"), [(18, 100.0), (26, 24.0), (24, 0.0), (50, 100.0)])
def test_targets_out_of_reach(target: float, source: float) -> None:
    with pytest.raises(OutOfRange, match="target Brix"):
        sugar.to_brix(20, 20, target, source)


def test_towards_but_never_to_the_source() -> None:
    with pytest.raises(ValueError, match="only towards it"):
        sugar.to_brix(20, 20, 0, sugar.WATER)


def test_sweetening() -> None:
    """20 g/L in 19 L: a little over 380 g, for the volume grows too (0.618 L/kg, 27 CFR 24.181)."""
    assert sugar.sweeten(19, 20) == pytest.approx(384.8, abs=0.1)
    # 10 g/L lifts SG by 0.00386 (table row 7.01)
    raised = sugar.sg_after_sweetening(10, 0.994, sugar.sweeten(10, 10))
    assert raised - 0.994 == pytest.approx(0.00386, rel=0.02)


@given(st.floats(1, 500), st.floats(0.985, 1.05), st.floats(0, 0.04))
def test_sweeten_to_sg_and_back(litres: float, sg: float, rise: float) -> None:
    grams = sugar.sweeten_to_sg(litres, sg, sg + rise)
    assert sugar.sg_after_sweetening(litres, sg, grams) == pytest.approx(sg + rise, abs=1e-9)


@given(st.floats(1.0, 1.07), st.floats(0.002, 0.025))
def test_two_ways_to_the_same_sugar(sg: float, rise: float) -> None:
    """For bare sugar and water the volume rule must agree with the mass balance within 2 %."""
    by_mass = sugar.to_sg(20, sg, sg + rise).kilograms * 1000
    assert sugar.sweeten_to_sg(20, sg, sg + rise) == pytest.approx(by_mass, rel=0.02)


# 11.04: T. Underhill, Making Better Wines: % vol, then mg/L of potassium sorbate at pH 3.1, 3.3, 3.5.
SORBATE = [(10, 165, 210, 270), (11, 135, 180, 225), (12, 96, 120, 150), (13, 78, 96, 120), (14, 60, 72, 90)]


@pytest.mark.parametrize(("strength", "a", "b", "c"), SORBATE)
def test_sorbate(strength: float, a: float, b: float, c: float) -> None:
    for ph, rate in zip((3.1, 3.3, 3.5), (a, b, c), strict=True):
        assert sugar.sorbate_rate(strength, ph) == pytest.approx(min(rate, sugar.SORBATE_LIMIT))
        assert sugar.sorbate_grams(20, strength, ph) == pytest.approx(min(rate, sugar.SORBATE_LIMIT) / 50)


def test_sorbate_ceilings() -> None:
    """11.01: OIV 200 mg/L of sorbic acid, 268 of the salt, by molmass; 11.02: US 300 mg/L, from memory."""
    factor = Formula("C6H7KO2").mass / Formula("C6H8O2").mass
    assert sugar.SORBATE_LIMIT == pytest.approx(200 * factor, rel=0.001) == pytest.approx(268, abs=0.5)
    assert pytest.approx(300 * factor, rel=0.001) == sugar.SORBATE_LIMIT_US


def test_worked_example_sorbate() -> None:
    """11.03: Purdue Wine Grape Team 2011: the salt is 74 % acid; 200 mg/L takes about 1 g in a US gallon."""
    assert pytest.approx(0.74, abs=0.01) == sugar.SORBIC_SHARE
    assert sugar.SORBATE_LIMIT * convert(1, "gal", "L") / 1000 == pytest.approx(1, abs=0.03)


@given(st.floats(10, 18), st.floats(2.8, 3.5))
def test_sorbate_stays_under_the_ceiling(strength: float, ph: float) -> None:
    rate = sugar.sorbate_rate(strength, ph)
    assert 60 <= rate <= sugar.SORBATE_LIMIT
    if ph <= 3.45:
        assert sugar.sorbate_rate(strength, ph + 0.05) >= rate  # less acid, more sorbate


# id, °C, CO2 held by wine in g/L per bar, and bar from 2, 4, 8, 12, 24 g/L of sugar. Computed: solubility at 10 °C from
# ACS Omega 2021;6:9672, with water's temperature course by iapws. Tolerance 15 %.
PRESSURE = [
    ("10.20", 5, 2.48, 0.4, 0.7, 1.5, 2.2, 4.5),
    ("10.21", 10, 2.10, 0.4, 0.9, 1.8, 2.6, 5.3),
    ("10.22", 12, 1.97, 0.5, 0.9, 1.9, 2.8, 5.6),
    ("10.23", 15, 1.80, 0.5, 1.0, 2.0, 3.1, 6.1),
    ("10.24", 20, 1.56, 0.6, 1.2, 2.4, 3.5, 7.1),
    ("10.25", 25, 1.36, 0.7, 1.3, 2.7, 4.0, 8.1),
    ("10.26", 30, 1.20, 0.8, 1.5, 3.0, 4.5, 9.1),
]


@pytest.mark.parametrize(("row", "celsius", "solubility", "p2", "p4", "p8", "p12", "p24"), PRESSURE)
def test_pressure(
    row: str, celsius: float, solubility: float, p2: float, p4: float, p8: float, p12: float, p24: float
) -> None:
    assert sugar.co2_solubility(celsius) == pytest.approx(solubility, rel=0.02)
    for grams, bar in zip((2, 4, 8, 12, 24), (p2, p4, p8, p12, p24), strict=True):
        result = sugar.bottle_pressure(grams, celsius)
        assert result.value == pytest.approx(bar, rel=0.02, abs=0.08)  # printed to 0.1
        assert result.low <= bar <= result.high


@pytest.mark.parametrize("celsius", [5, 8, 17, 23, 29, 35])
def test_solubility_follows_water(celsius: float) -> None:
    """Henry's constant of CO2 in water by iapws, independent of the exponent used."""
    scaled = 2.1 * _Henry(283.15, "CO2") / _Henry(celsius + 273.15, "CO2")
    assert sugar.co2_solubility(celsius) == pytest.approx(scaled, rel=0.03)


def test_sparkling_wine() -> None:
    """Oxford Companion to Wine: about 24 g/L gives 5 to 6 atm at cellar temperature, about 12 °C."""
    bar = sugar.bottle_pressure(24, 12).value
    assert 5 <= convert(bar, "bar", "atm") <= 6


def test_a_little_sugar_in_the_bottle() -> None:
    """10.27: sugar worth 0.002 SG is some 5 g/L: 1.5 bar at 20 °C; a fall of 0.002 means 1.3 bar. Computed."""
    assert sugar.bottle_pressure(gravity.extract(1.002), 20).value == pytest.approx(1.5, rel=0.15)
    assert sugar.bottle_pressure(alcohol.sugar_fermented(0.002), 20).value == pytest.approx(1.3, rel=0.15)


def test_gas_already_there_adds_to_it() -> None:
    alone, with_gas = sugar.bottle_pressure(5, 20), sugar.bottle_pressure(5, 20, held=1)
    assert with_gas.value - alone.value == pytest.approx(1)
    assert with_gas.decimals() == 1


def test_tax_line_of_still_wine() -> None:
    """0.392 g of CO2 in 100 mL, the US line for still wine (second-hand), is 2.5 bar at 20 °C. Computed."""
    assert 3.92 / sugar.co2_solubility(20) == pytest.approx(2.5, rel=0.05)
