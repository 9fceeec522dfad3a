"""Temperature corrections, against a printed table, the OIV's and physics."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from journalbot.winemaking import ethanol, gravity, hydrometer
from journalbot.winemaking.numeric import root
from journalbot.winemaking.ranges import OutOfRange

# To be added to the reading at: id, °C, then readings 1.000, 1.030, 1.060, 1.090, 1.110, and a dry wine of 12 % vol.
# Computed: sucrose by Bubnik et al. 1995, wine by OIML R 22, glass by ISO 1768:1975.
READINGS = (1.000, 1.030, 1.060, 1.090, 1.110)
SET_AT_20C = [
    ("2.36", 5, -0.0014, -0.0020, -0.0026, -0.0032, -0.0036, -0.0022),
    ("2.37", 10, -0.0012, -0.0016, -0.0020, -0.0024, -0.0026, -0.0018),
    ("2.38", 15, -0.0008, -0.0010, -0.0011, -0.0013, -0.0014, -0.0010),
    ("2.39", 15.6, -0.0007, -0.0009, -0.0010, -0.0012, -0.0013, -0.0009),
    ("2.40", 18, -0.0003, -0.0004, -0.0005, -0.0005, -0.0006, -0.0004),
    ("2.41", 20, 0.0000, 0.0000, 0.0000, 0.0000, 0.0000, 0.0000),
    ("2.42", 22, 0.0004, 0.0005, 0.0005, 0.0006, 0.0006, 0.0005),
    ("2.43", 25, 0.0010, 0.0012, 0.0014, 0.0015, 0.0016, 0.0013),
    ("2.44", 28, 0.0018, 0.0020, 0.0023, 0.0025, 0.0027, 0.0022),
    ("2.45", 30, 0.0023, 0.0026, 0.0029, 0.0032, 0.0034, 0.0028),
    ("2.46", 35, 0.0039, 0.0043, 0.0047, 0.0051, 0.0054, 0.0046),
    ("2.47", 40, 0.0056, 0.0062, 0.0067, 0.0072, 0.0075, 0.0065),
]
SET_AT_60F = [
    ("2.48", 5, -0.0007, -0.0011, -0.0016, -0.0020, -0.0023, -0.0013),
    ("2.49", 10, -0.0005, -0.0008, -0.0010, -0.0012, -0.0014, -0.0009),
    ("2.50", 15.6, 0.0000, 0.0000, 0.0000, 0.0000, 0.0000, 0.0000),
    ("2.51", 18, 0.0004, 0.0005, 0.0005, 0.0006, 0.0007, 0.0005),
    ("2.52", 20, 0.0007, 0.0009, 0.0010, 0.0012, 0.0013, 0.0009),
    ("2.53", 22, 0.0011, 0.0013, 0.0015, 0.0018, 0.0019, 0.0014),
    ("2.54", 25, 0.0018, 0.0021, 0.0024, 0.0027, 0.0029, 0.0022),
    ("2.55", 28, 0.0025, 0.0029, 0.0033, 0.0037, 0.0040, 0.0031),
    ("2.56", 30, 0.0031, 0.0035, 0.0040, 0.0044, 0.0047, 0.0038),
    ("2.57", 35, 0.0046, 0.0052, 0.0058, 0.0063, 0.0067, 0.0055),
    ("2.58", 40, 0.0064, 0.0071, 0.0077, 0.0084, 0.0088, 0.0075),
]
BOTH = [(20.0, *row) for row in SET_AT_20C] + [(hydrometer.CALIBRATION_60F, *row) for row in SET_AT_60F]


@pytest.mark.parametrize(("set_at", "row", "celsius", "a", "b", "c", "d", "e", "wine"), BOTH)
def test_correction(
    set_at: float, row: str, celsius: float, a: float, b: float, c: float, d: float, e: float, wine: float
) -> None:
    for reading, addition in zip(READINGS, (a, b, c, d, e), strict=True):
        corrected = hydrometer.correct_hydrometer(reading, celsius, set_at)
        assert corrected - reading == pytest.approx(addition, abs=0.0001), reading
    # The table's wine is bare alcohol and water; a real one at 0.993 holds extract too, which swells a little more.
    bare = ethanol.ethanol_sg(12) - wine
    for reading, tolerance in ((bare, 0.0001), (0.993, 0.0004 if celsius > 30 else 0.0003)):
        corrected = hydrometer.correct_hydrometer(reading, celsius, set_at, alcohol=12)
        assert corrected - reading == pytest.approx(wine, abs=tolerance)


# id, °C, to be added to SG and to Brix for thin juice of about 1.02 to 1.045, instrument set at 20 °C: Bigelow &
# Stevenson, National Canners Association, Table 8.
JUICE = [
    ("2.20", 10.0, -0.0017, -0.38),
    ("2.21", 11.1, -0.0016, -0.35),
    ("2.22", 12.8, -0.0014, -0.30),
    ("2.23", 13.9, -0.0012, -0.26),
    ("2.24", 15.0, -0.0010, -0.22),
    ("2.25", 15.6, -0.0009, -0.20),
    ("2.26", 17.8, -0.0006, -0.11),
    ("2.27", 21.1, 0.0003, 0.05),
    ("2.28", 22.2, 0.0006, 0.11),
    ("2.29", 23.9, 0.0011, 0.21),
    ("2.30", 25.0, 0.0013, 0.28),
    ("2.31", 26.7, 0.0018, 0.39),
    ("2.32", 28.3, 0.0023, 0.49),
    ("2.33", 29.4, 0.0026, 0.58),
    ("2.34", 30.0, 0.0027, 0.62),
    ("2.35", 31.1, 0.0031, 0.70),
]


@pytest.mark.parametrize(("row", "celsius", "to_sg", "to_brix"), JUICE)
def test_printed_juice_table(row: str, celsius: float, to_sg: float, to_brix: float) -> None:
    derived = [hydrometer.correct_hydrometer(reading, celsius) - reading for reading in (1.020, 1.040)]
    assert min(derived) - 0.0003 <= to_sg <= max(derived) + 0.0003
    reading = gravity.sg_from_brix(8)
    in_brix = gravity.brix_from_sg(hydrometer.correct_hydrometer(reading, celsius)) - 8
    assert in_brix == pytest.approx(to_brix, abs=0.055)  # printed to 0.01, itself good to 0.05


def test_dry_wine_of_the_regulation() -> None:
    """2.59: Regulation (EEC) 2676/90: 11 % vol, 0.99788 g/mL at 17.80 °C; correction 0.54, SG 20/20 0.99913."""
    brix = root(lambda b: hydrometer.liquid_density(b, 11, 17.80) - 997.88, -10, 60)
    at_20 = hydrometer.liquid_density(brix, 11, 20)
    assert 997.88 - at_20 == pytest.approx(0.54, abs=0.05)
    assert at_20 / gravity.water_density(20) == pytest.approx(0.99913, abs=0.00005)
    bare = ethanol.ethanol_density(11, 17.8) - ethanol.ethanol_density(11, 20)
    assert bare == pytest.approx(0.52, abs=0.005)  # computed, OIML R 22


# Slip of a 60 °F instrument: °F, thousandths to add. Common practice, no source; its own steps are half a thousandth.
@pytest.mark.parametrize(("fahrenheit", "add"), [(50, -0.5), (70, 1), (77, 2), (84, 3), (95, 5)])
def test_usual_slip(fahrenheit: float, add: float) -> None:
    for reading in (1.000, 1.060):
        corrected = hydrometer.correct_hydrometer(reading, (fahrenheit - 32) / 1.8, hydrometer.CALIBRATION_60F)
        assert corrected - reading == pytest.approx(add / 1000, abs=0.0015)


# Refractometer set at 20 °C: id, °C, to be added at 10, 15, 20, 25, 30 %: OIV-MA-AS2-02, Table I.
REFRACTOMETER = [
    ("2.61", 5, (-0.82, -0.87, -0.92, -0.95, -0.99)),
    ("2.62", 10, (-0.59, -0.62, -0.65, -0.67, -0.69)),
    ("2.63", 15, (-0.32, -0.33, -0.34, -0.35, -0.36)),
    ("2.64", 17, (-0.20, -0.20, -0.21, -0.21, -0.22)),
]


@pytest.mark.parametrize(("row", "celsius", "additions"), REFRACTOMETER)
def test_refractometer(row: str, celsius: float, additions: tuple[float, ...]) -> None:
    for brix, addition in zip((10, 15, 20, 25, 30), additions, strict=True):
        assert hydrometer.correct_refractometer(brix, celsius) - brix == pytest.approx(addition, abs=0.001)


def test_refractometer_between_rows() -> None:
    assert hydrometer.correct_refractometer(22, 20) == 22
    assert -0.35 < hydrometer.correct_refractometer(22, 15.5) - 22 < -0.21


@given(st.floats(0.985, 1.120), st.sampled_from([20.0, hydrometer.CALIBRATION_60F]), st.floats(0, 16))
def test_at_its_own_temperature_nothing_is_corrected(reading: float, set_at: float, alcohol: float) -> None:
    assert hydrometer.correct_hydrometer(reading, set_at, set_at, alcohol) == pytest.approx(reading, abs=1e-7)


@given(st.floats(0.985, 1.120), st.floats(8, 40), st.floats(8, 40), st.floats(0, 15))
def test_the_warmer_the_more_is_added(reading: float, one: float, other: float, alcohol: float) -> None:
    """From 8 °C: near 4 °C water itself is at its densest."""
    assume(abs(one - other) > 0.5)
    cold, warm = sorted((one, other))
    at = hydrometer.correct_hydrometer
    assert at(reading, cold, 20, alcohol) < at(reading, warm, 20, alcohol)


@pytest.mark.parametrize(("brix", "celsius"), [(22, 25), (22, 4), (9, 15), (31, 15)])
def test_refractometer_beyond_its_table(brix: float, celsius: float) -> None:
    with pytest.raises(OutOfRange):
        hydrometer.correct_refractometer(brix, celsius)
