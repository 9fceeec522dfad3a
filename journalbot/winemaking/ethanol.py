"""Mixtures of ethanol and water, and what is left of a wine once its alcohol is taken out of the reckoning."""

from journalbot.winemaking.gravity import SG_HIGH, SG_LOW, extract, sg_from_extract
from journalbot.winemaking.numeric import polynomial, root
from journalbot.winemaking.ranges import check

# OIML R 22 (1975) and Council Directive 76/766/EEC, annex: A by powers of mass fraction; B by powers of (t - 20) from
# the first; C[i][k] by (t - 20)**(i + 1) * p**(k + 1). C read in three public programs that agree, and tested by
# printed tables.
_A = (
    9.982012300e2, -1.929769495e2, 3.891238958e2, -1.668103923e3, 1.352215441e4, -8.829278388e4,
    3.062874042e5, -6.138381234e5, 7.470172998e5, -5.478461354e5, 2.234460334e5, -3.903285426e4,
)  # fmt: skip
_B = (-2.0618513e-1, -5.2682542e-3, 3.6130013e-5, -3.8957702e-7, 7.1693540e-9, -9.9739231e-11)
_C: tuple[tuple[float, ...], ...] = (
    (1.693443461530087e-1, -1.046914743455169e1, 7.196353469546523e1, -7.047478054272792e2, 3.924090430035045e3,
     -1.210164659068747e4, 2.248646550400788e4, -2.605562982188164e4, 1.852373922069467e4, -7.420201433430137e3,
     1.285617841998974e3),
    (-1.193013005057010e-2, 2.517399633803461e-1, -2.170575700536993, 1.353034988843029e1, -5.029988758547014e1,
     1.096355666577570e2, -1.422753946421155e2, 1.080435942856230e2, -4.414153236817392e1, 7.442971530188783),
    (-6.802995733503803e-4, 1.876837790289664e-2, -2.002561813734156e-1, 1.022992966719220, -2.895696483903638,
     4.810060584300675, -4.672147440794683, 2.458043105903461, -5.411227621436812e-1),
    (4.075376675622027e-6, -8.763058573471110e-6, 6.515031360099368e-6, -1.515784836987210e-6),
    (-2.788074354782409e-8, 1.345612883493354e-8),
)  # fmt: skip
ETHANOL_20 = polynomial(1.0, _A)  # kg/m³ of pure ethanol at 20 °C: 789.24


def density_by_mass(mass_fraction: float, temperature: float = 20.0) -> float:
    """Density of ethanol and water, kg/m³; mass fraction 0 to 1, -20 to 40 °C while liquid. OIML R 22 (1975)."""
    p = check("mass fraction", mass_fraction, 0, 1)
    dt = check("temperature", temperature, -20, 40, "C") - 20
    at_20 = polynomial(p, _A)
    if dt == 0:
        return at_20
    return at_20 + dt * (polynomial(dt, _B) + p * polynomial(dt, [polynomial(p, row) for row in _C]))


def mass_fraction(alcohol: float) -> float:
    """Mass of ethanol over mass of the mixture, from % vol at 20 °C (0 to 100). OIML R 22 (1975)."""
    wanted = check("alcohol", alcohol, 0, 100, "% vol") / 100 * ETHANOL_20
    return root(lambda p: p * density_by_mass(p) - wanted, 0.0, 1.0, 1e-9)


def ethanol_density(alcohol: float, temperature: float = 20.0) -> float:
    """Density, kg/m³, of ethanol and water of so many % vol at 20 °C (0 to 100), at -20 to 40 °C. OIML R 22 (1975)."""
    return density_by_mass(mass_fraction(alcohol), temperature)


def ethanol_sg(alcohol: float) -> float:
    """SG 20/20 of ethanol and water of so many % vol (0 to 100). OIML R 22 (1975)."""
    return ethanol_density(alcohol) / _A[0]


def ethanol_grams(alcohol: float) -> float:
    """Grams of ethanol per litre at 20 °C from % vol (0 to 100): 7.892 g/L for each."""
    return check("alcohol", alcohol, 0, 100, "% vol") * ETHANOL_20 / 100


def alcohol_free_sg(sg: float, alcohol: float) -> float:
    """SG 20/20 of the wine freed of alcohol and made up to volume: Tabarié's relation, OIV-MA-AS2-03B.

    sg 0.980 to 1.180 (20/20), alcohol 0 to 30 % vol.
    """
    check("alcohol", alcohol, 0, 30, "% vol")
    return check("SG", sg, SG_LOW, SG_HIGH) - ethanol_sg(alcohol) + 1


def dry_extract(sg: float, alcohol: float) -> float:
    """Total dry extract (sugar, acids, glycerol, salts), g/L on the sucrose scale, of a wine. OIV-MA-AS2-03B.

    sg 0.980 to 1.180 (20/20), alcohol 0 to 30 % vol; negative where the two cannot belong together.
    """
    return extract(alcohol_free_sg(sg, alcohol))


def expected_sg(alcohol: float, dry_extract: float) -> float:
    """SG 20/20 of a wine of so many % vol (0 to 25) and g/L of total dry extract (0 to 300): Tabarié turned round."""
    check("alcohol", alcohol, 0, 25, "% vol")
    return ethanol_sg(alcohol) + sg_from_extract(check("dry extract", dry_extract, 0, 300, "g/L")) - 1
