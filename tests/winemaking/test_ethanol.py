"""Ethanol and water against printed tables, and Tabarié's relation."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journalbot.winemaking import ethanol, gravity

# id, % vol at 20 °C, % mass, kg/m³, d 20/20, g/L. Computed, OIML R 22 (1975).
MIXTURES = [
    ("4.01", 0, 0.0000, 998.20, 1.00000, 0.00),
    ("4.02", 1, 0.7919, 996.70, 0.99849, 7.89),
    ("4.03", 2, 1.5860, 995.23, 0.99703, 15.78),
    ("4.04", 5, 3.9818, 991.06, 0.99284, 39.46),
    ("4.05", 8, 6.3960, 987.16, 0.98894, 63.14),
    ("4.06", 10, 8.0149, 984.71, 0.98648, 78.92),
    ("4.07", 11, 8.8271, 983.52, 0.98529, 86.82),
    ("4.08", 12, 9.6410, 982.35, 0.98413, 94.71),
    ("4.09", 12.5, 10.0486, 981.78, 0.98355, 98.65),
    ("4.10", 13, 10.4566, 981.21, 0.98298, 102.60),
    ("4.11", 14, 11.2739, 980.08, 0.98185, 110.49),
    ("4.12", 15, 12.0929, 978.97, 0.98073, 118.39),
    ("4.13", 16, 12.9136, 977.87, 0.97964, 126.28),
    ("4.14", 18, 14.5600, 975.71, 0.97746, 142.06),
    ("4.15", 20, 16.2135, 973.56, 0.97531, 157.85),
    ("4.16", 25, 20.3812, 968.10, 0.96984, 197.31),
    ("4.17", 40, 33.2996, 948.05, 0.94975, 315.70),
    ("4.18", 50, 42.4257, 930.14, 0.93182, 394.62),
    ("4.19", 100, 100.0000, 789.24, 0.79066, 789.24),
]


@pytest.mark.parametrize(("row", "alcohol", "by_mass", "kg_m3", "sg", "grams"), MIXTURES)
def test_mixtures(row: str, alcohol: float, by_mass: float, kg_m3: float, sg: float, grams: float) -> None:
    assert 100 * ethanol.mass_fraction(alcohol) == pytest.approx(by_mass, abs=0.0001)
    assert ethanol.ethanol_density(alcohol) == pytest.approx(kg_m3, abs=0.01)
    assert ethanol.ethanol_sg(alcohol) == pytest.approx(sg, abs=0.00001)
    assert ethanol.ethanol_grams(alcohol) == pytest.approx(grams, abs=0.01)


# id, % mass, g/mL at 20 °C: Perry's Chemical Engineers' Handbook, 7th edition.
PERRY = [
    ("4.20", 1, 0.99636),
    ("4.21", 2, 0.99453),
    ("4.22", 5, 0.98938),
    ("4.23", 8, 0.98478),
    ("4.24", 10, 0.98187),
    ("4.25", 11, 0.98047),
    ("4.26", 12, 0.97910),
]


@pytest.mark.parametrize(("row", "percent", "density"), PERRY)
def test_handbook(row: str, percent: float, density: float) -> None:
    assert ethanol.density_by_mass(percent / 100) / 1000 == pytest.approx(density, abs=0.0001)


# id, % vol and % mass at 15.56 °C, SG 15.56/15.56 weighed in air: USP 29, alcoholometric table (from NBS Bulletin 9).
# They check the terms of the formula that hold the temperature.
USP = [
    ("4.27", 5, 4.00, 0.9928),
    ("4.28", 8, 6.42, 0.9890),
    ("4.29", 10, 8.05, 0.9866),
    ("4.30", 12, 9.68, 0.9843),
    ("4.31", 14, 11.32, 0.9821),
    ("4.32", 15, 12.14, 0.9810),
    ("4.33", 20, 16.27, 0.9759),
]


@pytest.mark.parametrize(("row", "by_volume", "by_mass", "sg_in_air"), USP)
def test_pharmacopoeia(row: str, by_volume: float, by_mass: float, sg_in_air: float) -> None:
    air, at = 1.2, 140 / 9
    in_air = (ethanol.density_by_mass(by_mass / 100, at) - air) / (ethanol.density_by_mass(0, at) - air)
    assert in_air == pytest.approx(sg_in_air, abs=0.0001)


# Density of 12 % vol (at 20 °C) at other temperatures: °C, kg/m³. Computed, OIML R 22 with its C terms.
AT_12_PERCENT = [(5, 984.95), (10, 984.39), (15, 983.52), (20, 982.35), (25, 980.93), (30, 979.28)]


@pytest.mark.parametrize(("celsius", "kg_m3"), AT_12_PERCENT)
def test_temperature(celsius: float, kg_m3: float) -> None:
    assert ethanol.ethanol_density(12, celsius) == pytest.approx(kg_m3, abs=0.01)


@pytest.mark.parametrize("celsius", [1, 5, 10, 15, 25, 30, 40])
def test_no_alcohol_is_water(celsius: float) -> None:
    """Two formulas of different origin (OIML's B terms and Kell's) for the same water."""
    assert ethanol.ethanol_density(0, celsius) == pytest.approx(gravity.water_density(celsius), abs=0.01)


# Tabarié, OIV-MA-AS2-03B: id, wine's SG, % vol, SG of the water and alcohol in it, SG without alcohol, extract in g/L.
# The first wine is the worked example of Regulation (EEC) 2676/90; the rest invented. Computed.
TABARIE = [
    ("3.32", 0.99913, 11.0, 0.98529, 1.01384, 35.8),
    ("3.33", 0.99300, 12.0, 0.98413, 1.00887, 23.0),
    ("3.34", 0.99200, 13.0, 0.98298, 1.00902, 23.4),
    ("3.35", 0.99500, 11.5, 0.98471, 1.01029, 26.7),
    ("3.36", 1.00000, 12.0, 0.98413, 1.01587, 41.1),
    ("3.37", 1.01000, 10.0, 0.98648, 1.02352, 61.0),
    ("3.38", 0.99050, 14.0, 0.98185, 1.00865, 22.4),
]


@pytest.mark.parametrize(("row", "sg", "alcohol", "mixture", "without", "grams"), TABARIE)
def test_tabarie(row: str, sg: float, alcohol: float, mixture: float, without: float, grams: float) -> None:
    assert ethanol.ethanol_sg(alcohol) == pytest.approx(mixture, abs=0.00005)
    assert ethanol.alcohol_free_sg(sg, alcohol) == pytest.approx(without, abs=0.00005)
    assert ethanol.dry_extract(sg, alcohol) == pytest.approx(grams, abs=0.5)


# SG of a fermented-out wine: id, % vol, SG for 17, 21, 25, 30 g/L of total extract. Computed.
FERMENTED_OUT = [
    ("3.39", 8, 0.9955, 0.9971, 0.9986, 1.0005),
    ("3.40", 9, 0.9943, 0.9958, 0.9974, 0.9993),
    ("3.41", 10, 0.9931, 0.9946, 0.9961, 0.9981),
    ("3.42", 11, 0.9919, 0.9934, 0.9949, 0.9969),
    ("3.43", 12, 0.9907, 0.9922, 0.9938, 0.9957),
    ("3.44", 12.5, 0.9901, 0.9917, 0.9932, 0.9951),
    ("3.45", 13, 0.9895, 0.9911, 0.9926, 0.9946),
    ("3.46", 14, 0.9884, 0.9900, 0.9915, 0.9934),
    ("3.47", 15, 0.9873, 0.9888, 0.9904, 0.9923),
]


@pytest.mark.parametrize(("row", "alcohol", "a", "b", "c", "d"), FERMENTED_OUT)
def test_fermented_out(row: str, alcohol: float, a: float, b: float, c: float, d: float) -> None:
    for grams, sg in zip((17, 21, 25, 30), (a, b, c, d), strict=True):
        assert ethanol.expected_sg(alcohol, grams) == pytest.approx(sg, abs=0.0001)
        assert 0.987 <= sg <= 1.001  # 11.16: where a dry wine lies


@given(st.floats(0, 100))
def test_volume_to_mass_to_volume(alcohol: float) -> None:
    p = ethanol.mass_fraction(alcohol)
    assert 100 * p * ethanol.density_by_mass(p) / ethanol.ETHANOL_20 == pytest.approx(alcohol, abs=1e-6)


@given(st.floats(0, 16), st.floats(5, 100))
def test_extract_to_sg_to_extract(alcohol: float, grams: float) -> None:
    assert ethanol.dry_extract(ethanol.expected_sg(alcohol, grams), alcohol) == pytest.approx(grams, abs=0.001)
