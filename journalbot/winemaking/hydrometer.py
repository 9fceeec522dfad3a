"""Readings corrected for temperature: the hydrometer by physics, the refractometer by its table."""

from journalbot.winemaking.ethanol import ethanol_density
from journalbot.winemaking.gravity import SG_HIGH, SG_LOW, sucrose_density, water_density
from journalbot.winemaking.numeric import interpolate_grid, root
from journalbot.winemaking.ranges import check

CALIBRATION_20C = 20.0
CALIBRATION_60F = (60 - 32) / 1.8
GLASS = 25e-6  # cubic expansion of hydrometer glass per °C, conventional value of ISO 1768:1975

# OIV-MA-AS2-02, Table I: to be added to the reading, % sucrose; rows 5, 10, 15, 17 °C; columns 10 to 30 %.
_STRENGTHS = (10, 15, 20, 25, 30)
_TEMPERATURES = (5, 10, 15, 17, 20)
_REFRACTOMETER = (
    (-0.82, -0.87, -0.92, -0.95, -0.99),
    (-0.59, -0.62, -0.65, -0.67, -0.69),
    (-0.32, -0.33, -0.34, -0.35, -0.36),
    (-0.20, -0.20, -0.21, -0.21, -0.22),
    (0.0, 0.0, 0.0, 0.0, 0.0),
)


def liquid_density(brix: float, alcohol: float, temperature: float) -> float:
    """Density, kg/m³, of must or wine as sugar solution plus the dent that its alcohol makes: Tabarié's sum, taken at
    the temperature. Exact for sugar alone (Bubnik et al. 1995) and for alcohol alone (OIML R 22); °Brix of the
    alcohol-free liquid, alcohol 0 to 25 % vol, 0 to 40 °C."""
    check("alcohol", alcohol, 0, 25, "% vol")
    dent = ethanol_density(alcohol, temperature) - ethanol_density(0.0, temperature)
    return sucrose_density(brix, temperature) + dent


def correct_hydrometer(
    reading: float, temperature: float, calibration: float = CALIBRATION_20C, alcohol: float = 0.0
) -> float:
    """SG at the instrument's own temperature from a reading taken warm or cold.

    reading 0.970 to 1.180; temperature of the liquid 0 to 40 °C; calibration 15 to 25 °C (20, or 15.56 for 60 °F);
    alcohol so far 0 to 25 % vol (0 for must). Within 0.0003 for must and for dry wine; between the two no table exists.
    Glass: ISO 1768:1975; liquids: Bubnik et al. 1995, OIML R 22. Agrees with Bigelow & Stevenson's table to 0.0003.
    """
    check("SG", reading, 0.970, SG_HIGH)
    check("temperature", temperature, 0, 40, "C")
    check("calibration temperature", calibration, 15, 25, "C")
    shown = reading * water_density(calibration) / (1 + GLASS * (temperature - calibration))
    brix = root(lambda b: liquid_density(b, alcohol, temperature) - shown, -10, 60, 1e-9)
    corrected = liquid_density(brix, alcohol, calibration) / water_density(calibration)
    return check("corrected SG", corrected, SG_LOW, SG_HIGH)


def correct_refractometer(brix: float, temperature: float) -> float:
    """°Brix at 20 °C from a reading of a refractometer set at 20 °C that does not compensate by itself.

    10 to 30 °Brix, 5 to 20 °C (warmer rows of the table were not seen). OIV-MA-AS2-02, Table I. Only before
    fermentation: with alcohol present a refractometer gives no Brix, and no formula from a standard was found.
    """
    check("temperature", temperature, 5, 20, "C")
    check("Brix", brix, 10, 30)
    return brix + interpolate_grid(brix, temperature, _STRENGTHS, _TEMPERATURES, _REFRACTOMETER)
