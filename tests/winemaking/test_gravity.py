"""SG, Brix, density, grams per litre and potential alcohol, against printed tables and independent formulas."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from iapws import IAPWS95  # type: ignore[import-untyped]

from journalbot.winemaking import gravity
from journalbot.winemaking.ranges import OutOfRange

# Sucrose solutions: id, °Brix, density at 20 °C in kg/m³ and SG 20/20 (Bubnik et al. 1995), SG by a cubic fitted to NBS
# Circular 440, sucrose in g/L. Computed.
SUCROSE = [
    ("1.01", 0, 998.20, 1.00000, 1.00002, 0.0),
    ("1.02", 1, 1002.07, 1.00387, 1.00390, 10.0),
    ("1.03", 2, 1005.96, 1.00777, 1.00780, 20.1),
    ("1.04", 3, 1009.88, 1.01170, 1.01173, 30.3),
    ("1.05", 4, 1013.83, 1.01565, 1.01569, 40.6),
    ("1.06", 5, 1017.81, 1.01964, 1.01967, 50.9),
    ("1.07", 6, 1021.81, 1.02365, 1.02369, 61.3),
    ("1.08", 8, 1029.90, 1.03176, 1.03180, 82.4),
    ("1.09", 10, 1038.12, 1.03998, 1.04003, 103.8),
    ("1.10", 12, 1046.44, 1.04833, 1.04837, 125.6),
    ("1.11", 14, 1054.89, 1.05679, 1.05684, 147.7),
    ("1.12", 15, 1059.16, 1.06107, 1.06111, 158.9),
    ("1.13", 16, 1063.46, 1.06538, 1.06542, 170.2),
    ("1.14", 17, 1067.79, 1.06972, 1.06976, 181.5),
    ("1.15", 18, 1072.16, 1.07409, 1.07413, 193.0),
    ("1.16", 19, 1076.55, 1.07849, 1.07854, 204.5),
    ("1.17", 20, 1080.98, 1.08292, 1.08297, 216.2),
    ("1.18", 21, 1085.44, 1.08739, 1.08744, 227.9),
    ("1.19", 22, 1089.93, 1.09189, 1.09194, 239.8),
    ("1.20", 23, 1094.45, 1.09642, 1.09647, 251.7),
    ("1.21", 24, 1099.00, 1.10098, 1.10103, 263.8),
    ("1.22", 25, 1103.59, 1.10558, 1.10563, 275.9),
    ("1.23", 26, 1108.21, 1.11021, 1.11026, 288.1),
    ("1.24", 28, 1117.55, 1.11957, 1.11963, 312.9),
    ("1.25", 30, 1127.03, 1.12906, 1.12913, 338.1),
    ("1.26", 32, 1136.65, 1.13869, 1.13877, 363.7),
    ("1.27", 35, 1151.33, 1.15340, 1.15350, 403.0),
    ("1.28", 38, 1166.34, 1.16844, 1.16853, 443.2),
    ("1.29", 40, 1176.52, 1.17864, 1.17874, 470.6),
]


@pytest.mark.parametrize(("row", "brix", "kg_m3", "sg", "sg_cubic", "grams"), SUCROSE)
def test_sucrose_solutions(row: str, brix: float, kg_m3: float, sg: float, sg_cubic: float, grams: float) -> None:
    assert gravity.sg_from_brix(brix) == pytest.approx(sg, abs=0.0002)
    assert gravity.sg_from_brix(brix) == pytest.approx(sg_cubic, abs=0.0002)
    assert gravity.brix_from_sg(sg_cubic) == pytest.approx(brix, abs=0.05)
    assert gravity.sucrose_density(brix) == pytest.approx(kg_m3, abs=0.01)
    assert gravity.extract(sg) == pytest.approx(grams, rel=0.003, abs=0.05)


# SG 20/20 of sucrose by °Brix as remembered from NBS Circular 440: from memory.
NBS = [(5, 1.01965), (10, 1.03998), (15, 1.06104), (20, 1.08287), (25, 1.10551), (30, 1.12898)]


@pytest.mark.parametrize(("brix", "sg"), NBS)
def test_nbs_from_memory(brix: float, sg: float) -> None:
    assert gravity.sg_from_brix(brix) == pytest.approx(sg, abs=0.0002)


# id, °Brix, pounds in a US gallon weighed in air at 20 °C: C. S. Chen, University of Florida tables (1992), from NBS
# Circular 440. Their ratio to water's 8.322 is the SG.
POUNDS_PER_GALLON = [
    ("1.30", 0.0, 8.322),
    ("1.31", 1.0, 8.354),
    ("1.32", 2.0, 8.387),
    ("1.33", 3.0, 8.419),
    ("1.34", 4.0, 8.452),
    ("1.35", 5.0, 8.486),
]


@pytest.mark.parametrize(("row", "brix", "pounds"), POUNDS_PER_GALLON)
def test_pounds_per_gallon(row: str, brix: float, pounds: float) -> None:
    assert gravity.sg_from_brix(brix) == pytest.approx(pounds / 8.322, abs=0.0002)


# Below 1.000: id, SG, °Brix by the cubic and by Bubnik et al. run below zero. Computed; no printed table was found.
BELOW_WATER = [
    ("1.36", 1.0000, -0.00, 0.00),
    ("1.37", 0.9980, -0.52, -0.52),
    ("1.38", 0.9960, -1.04, -1.04),
    ("1.39", 0.9950, -1.30, -1.30),
    ("1.40", 0.9940, -1.57, -1.56),
    ("1.41", 0.9920, -2.09, -2.09),
    ("1.42", 0.9900, -2.62, -2.62),
    ("1.43", 0.9880, -3.14, -3.14),
]


@pytest.mark.parametrize(("row", "sg", "cubic", "brix"), BELOW_WATER)
def test_brix_below_water(row: str, sg: float, cubic: float, brix: float) -> None:
    assert gravity.brix_from_sg(sg) == pytest.approx(brix, abs=0.01)
    assert gravity.brix_from_sg(sg) == pytest.approx(cubic, abs=0.05)


# id, SG, extract in g/L: German Imperial wine extract table; GOST 14251-75 (the last); those marked are
# of the OIV table, from memory.
EXTRACT = [
    ("1.44", 1.0050, 12.9),
    ("1.45", 1.0100, 25.8),
    ("1.46", 1.0120, 31.0),
    ("1.47", 1.0150, 38.7),
    ("1.48", 1.0180, 46.6),
    ("1.49", 1.0200, 51.7),  # from memory
    ("1.50", 1.0300, 77.7),  # from memory
    ("1.51", 1.0500, 129.8),  # from memory
    ("1.52", 1.0700, 182.1),  # from memory
    ("1.53", 1.0800, 208.4),  # from memory
    ("1.54", 1.0900, 234.7),  # from memory
    ("1.55", 1.1000, 261.0),  # from memory
    ("1.56", 1.1040, 271.5),
]


@pytest.mark.parametrize(("row", "sg", "grams"), EXTRACT)
def test_extract(row: str, sg: float, grams: float) -> None:
    assert gravity.extract(sg) == pytest.approx(grams, abs=0.5)


# Water: id, °C, kg/m³ by IAPWS-95 at one atmosphere. Computed with iapws 1.5.5.
WATER = [
    ("2.01", 0.01, 999.844),
    ("2.02", 4, 999.975),
    ("2.03", 5, 999.967),
    ("2.04", 8, 999.851),
    ("2.05", 10, 999.702),
    ("2.06", 12, 999.500),
    ("2.07", 15, 999.103),
    ("2.08", 15.56, 999.017),
    ("2.09", 17.5, 998.690),
    ("2.10", 18, 998.599),
    ("2.11", 20, 998.207),
    ("2.12", 22, 997.773),
    ("2.13", 25, 997.048),
    ("2.14", 28, 996.236),
    ("2.15", 30, 995.649),
    ("2.16", 32, 995.028),
    ("2.17", 35, 994.033),
    ("2.18", 38, 992.966),
    ("2.19", 40, 992.216),
]


@pytest.mark.parametrize(("row", "celsius", "kg_m3"), WATER)
def test_water(row: str, celsius: float, kg_m3: float) -> None:
    assert gravity.water_density(celsius) == pytest.approx(kg_m3, abs=0.01)


@pytest.mark.parametrize("celsius", [1, 7, 13, 21, 27, 33, 39])
def test_water_against_iapws(celsius: float) -> None:
    assert gravity.water_density(celsius) == pytest.approx(IAPWS95(T=celsius + 273.15, P=0.101325).rho, abs=0.01)


# Grams of sucrose in a litre of finished solution: id, g/L, SG 20/20. Computed, Bubnik et al. 1995.
GRAMS_IN_A_LITRE = [
    ("7.01", 10, 1.00386),
    ("7.02", 17, 1.00657),
    ("7.03", 20, 1.00773),
    ("7.04", 50, 1.01929),
    ("7.05", 100, 1.03852),
    ("7.06", 119.83, 1.04613),
    ("7.07", 150, 1.05768),
    ("7.08", 200, 1.07676),
    ("7.09", 250, 1.09576),
]


@pytest.mark.parametrize(("row", "grams", "sg"), GRAMS_IN_A_LITRE)
def test_grams_in_a_litre(row: str, grams: float, sg: float) -> None:
    assert gravity.sg_from_extract(grams) == pytest.approx(sg, abs=0.0002)


# 2.60: the same juice of 20 °Brix on a 20/20 and on a 60/60 °F instrument, each at its own temperature. Computed.
@pytest.mark.parametrize(("celsius", "sg"), [(20, 1.0829), (15.5556, 1.0833)])
def test_two_scales(celsius: float, sg: float) -> None:
    ratio = gravity.sucrose_density(20, celsius) / gravity.water_density(celsius)
    assert ratio == pytest.approx(sg, abs=0.0001)


# Potential alcohol of grape must: id, SG, printed % vol. Printed by a Spanish copy of the old French must table, an
# English grower, two German lexicons: weak sources, in agreement; rule M's g/L and its 17th part computed.
POTENTIAL = [
    ("3.01", 1.044, (5.0,), 87.0, 5.12),
    ("3.02", 1.050, (6.0,), 103.0, 6.06),
    ("3.03", 1.055, (6.8,), 116.3, 6.84),
    ("3.04", 1.060, (7.6, 7.7), 129.6, 7.62),
    ("3.05", 1.065, (8.4,), 142.9, 8.41),
    ("3.06", 1.070, (9.2,), 156.2, 9.19),
    ("3.07", 1.075, (10.0,), 169.5, 9.97),
    ("3.08", 1.076, (10.0,), 172.2, 10.13),
    ("3.09", 1.080, (10.8, 10.6), 182.8, 10.75),
    ("3.10", 1.084, (11.4,), 193.4, 11.38),
    ("3.11", 1.085, (11.5,), 196.1, 11.54),
    ("3.12", 1.088, (12.0,), 204.1, 12.00),
    ("3.13", 1.100, (13.8,), 236.0, 13.88),
]


@pytest.mark.parametrize(("row", "sg", "printed", "grams", "computed"), POTENTIAL)
def test_potential_alcohol(row: str, sg: float, printed: tuple[float, ...], grams: float, computed: float) -> None:
    result = gravity.potential_alcohol(sg)
    assert all(result.value == pytest.approx(value, abs=0.25) for value in printed)
    assert all(result.low <= value <= result.high for value in printed)
    assert result.value == pytest.approx(computed, abs=0.006)
    assert gravity.grape_sugar(sg) == pytest.approx(grams, abs=0.06)


# % vol for each °Brix, computed from the must rule: Brix, quotient.
@pytest.mark.parametrize(("brix", "quotient"), [(16, 0.53), (20, 0.56), (22.5, 0.575), (25, 0.59)])
def test_alcohol_for_each_brix(brix: float, quotient: float) -> None:
    result = gravity.potential_alcohol(gravity.sg_from_brix(brix)).value
    assert result / brix == pytest.approx(quotient, abs=0.005)


def test_other_musts_hold_back_what_does_not_ferment() -> None:
    """131.25 (SG - 0.996): common practice, no source."""
    result = gravity.potential_alcohol(1.090, grape=False)
    assert (round(result.value, 2), round(result.low, 2), round(result.high, 2)) == (12.34, 11.74, 12.94)


@given(st.floats(5.2, 15.4), st.booleans())
def test_alcohol_to_gravity_to_alcohol(alcohol: float, grape: bool) -> None:
    strength = max(alcohol, 5.8)
    sg = gravity.sg_for_alcohol(strength, grape)
    assert gravity.potential_alcohol(sg, grape).value == pytest.approx(strength, abs=1e-9)


def test_the_three_scales_of_one_reading() -> None:
    """Figures of rows 1.18 and 3.12, read between the rows."""
    found = gravity.scales(1.088)
    assert found.potential_alcohol is not None
    assert (round(found.brix, 1), round(found.density), round(found.extract)) == (21.1, 1086, 230)
    assert round(found.potential_alcohol.value, 1) == 12.0


@pytest.mark.parametrize(("sg", "grape"), [(0.996, True), (1.020, True), (1.130, True), (1.010, False)])
def test_no_potential_alcohol_where_no_rule_holds(sg: float, grape: bool) -> None:
    assert gravity.scales(sg, grape).potential_alcohol is None


@given(st.floats(0.980, 1.178))
def test_sg_to_brix_to_sg(sg: float) -> None:
    assert gravity.sg_from_brix(gravity.brix_from_sg(sg)) == pytest.approx(sg, abs=1e-6)


@given(st.floats(0.983, 1.175))
def test_sg_to_extract_to_sg(sg: float) -> None:
    assert gravity.sg_from_extract(gravity.extract(sg)) == pytest.approx(sg, abs=1e-6)


@given(st.floats(0.985, 1.178))
def test_brix_agrees_with_the_cubic_of_nbs(sg: float) -> None:
    """The cubic fitted to NBS Circular 440, as an encyclopedia gives it; r.m.s. 0.0009 °Brix."""
    cubic = 182.4601 * sg**3 - 775.6821 * sg**2 + 1262.7794 * sg - 669.5622
    assert gravity.brix_from_sg(sg) == pytest.approx(cubic, abs=0.05)


@given(st.floats(0.980, 1.179), st.floats(1e-4, 0.02))
def test_more_gravity_is_more_brix(sg: float, step: float) -> None:
    higher = min(1.180, sg + step)
    assert gravity.brix_from_sg(higher) > gravity.brix_from_sg(sg)
    assert gravity.extract(higher) > gravity.extract(sg)


@pytest.mark.parametrize("sg", [9.96, 996, 0.979, 1.181, float("nan"), float("inf")])
def test_impossible_gravity(sg: float) -> None:
    with pytest.raises(OutOfRange, match=r"SG .* is outside 0\.98 to 1\.18"):
        gravity.brix_from_sg(sg)
