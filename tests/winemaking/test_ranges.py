"""Every function refuses what it is not valid for; estimates never carry more digits than they bear."""

import inspect
import math
import types
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journalbot.winemaking import (
    acid,
    alcohol,
    blending,
    ethanol,
    gravity,
    hydrometer,
    nutrients,
    sugar,
    sulfite,
    units,
    volumes,
)
from journalbot.winemaking.blending import Lot
from journalbot.winemaking.ranges import Estimate, OutOfRange, check, check_litres

MODULES = (acid, alcohol, blending, ethanol, gravity, hydrometer, nutrients, sugar, sulfite, units, volumes)
TEN = Estimate.within(10, 0.5)

# A call with one bad number, and the range that its message must name.
REFUSED: list[tuple[Callable[..., object], tuple[object, ...], str]] = [
    (acid.ta_as, (41, "malic", "tartaric"), "0 to 40 g/L"),
    (acid.ta_from_percent, (6.5,), "0 to 4 %"),
    (acid.acid_grams, (7, 20), "0 to 6 g/L"),
    (acid.acid_grams, (1, 0), "0.05 to 5000 L"),
    (acid.ta_rise, (-1, 20), "0 to 50000 g"),
    (acid.ta_lost_to_bitartrate, (11,), "0 to 10 g/L"),
    (acid.deacidifier_grams, (6, 20, "calcium carbonate"), "0 to 5 g/L"),
    (acid.malolactic_change, (16,), "0 to 15 g/L"),
    (acid.diluted, (5, 20, -1), "0 to 5000 L"),
    (acid.acid_advice, ("red", 65, 3.4), "0 to 20 g/L"),
    (acid.acid_advice, ("red", 6.5, 34), "2.5 to 4.6"),
    (alcohol.alcohol, (1.030, 1.000), "1.04 to 1.12"),
    (alcohol.alcohol, (1.090, 1.100), "0.98 to 1.09"),
    (alcohol.alcohol_bounds, (1.180, 1.000), "1.03 to 1.17"),
    (alcohol.alcohol_by_volume_balance, (1.090, 0.970), "0.98 to 1.09"),
    (alcohol.alcohol_by_balling, (1.020, 1.000), "1.03 to 1.17"),
    (alcohol.og_with_additions, (1.090, 20, -1, 0), "0 to 1e+06 g"),
    (alcohol.alcohol_of_blend, ([],), "1 to 1000"),
    (alcohol.alcohol_at_end, (1.130,), "1.04 to 1.12"),
    (alcohol.attenuation, (1.010, 1.000), "1.02 to 1.17"),
    (alcohol.residual_sugar, (1.130, TEN), "0.98 to 1.12"),
    (alcohol.dryness, (996, TEN), "0.98 to 1.12"),
    (alcohol.sweetness, (-1,), "0 to 400 g/L"),
    (alcohol.sweetness, (5, 21), "0 to 20 g/L"),
    (alcohol.sugar_fermented, (0.2,), "0 to 0.12"),
    (blending.blend, ("alcohol", []), "1 to 1000"),
    (blending.shares, ("alcohol", 12, 14, 15), "12 to 14"),
    (blending.litres_to_add, ("alcohol", Lot(0, 12), 14, 13), "0.05 to 5000 L"),
    (ethanol.density_by_mass, (1.1,), "0 to 1"),
    (ethanol.mass_fraction, (101,), "0 to 100 % vol"),
    (ethanol.ethanol_density, (12, 41), "-20 to 40 C"),
    (ethanol.ethanol_sg, (-1,), "0 to 100 % vol"),
    (ethanol.ethanol_grams, (101,), "0 to 100 % vol"),
    (ethanol.alcohol_free_sg, (0.995, 31), "0 to 30 % vol"),
    (ethanol.dry_extract, (1.2, 12), "0.98 to 1.18"),
    (ethanol.expected_sg, (12, 301), "0 to 300 g/L"),
    (gravity.water_density, (-1,), "0 to 100 C"),
    (gravity.sucrose_density, (86,), "-10 to 85"),
    (gravity.density, (0.9,), "0.98 to 1.18"),
    (gravity.sg_from_brix, (41,), "-5.3 to 40.3"),
    (gravity.brix_from_sg, (1.2,), "0.98 to 1.18"),
    (gravity.extract, (1.2,), "0.98 to 1.18"),
    (gravity.sg_from_extract, (480,), "-45 to 470 g/L"),
    (gravity.grape_sugar, (1.040,), "1.044 to 1.11"),
    (gravity.potential_alcohol, (1.120,), "1.044 to 1.11"),
    (gravity.potential_alcohol, (1.130, False), "1.04 to 1.12"),
    (gravity.sg_for_alcohol, (16,), "5.2 to 15.4 % vol"),
    (gravity.scales, (1.2,), "0.98 to 1.18"),
    (hydrometer.liquid_density, (10, 26, 20), "0 to 25 % vol"),
    (hydrometer.correct_hydrometer, (1.090, 41), "0 to 40 C"),
    (hydrometer.correct_hydrometer, (1.090, 20, 30), "15 to 25 C"),
    (hydrometer.correct_refractometer, (22, 21), "5 to 20 C"),
    (nutrients.yan_need, (31,), "15 to 30"),
    (nutrients.nitrogen_grams, (301, 20), "0 to 300 mg/L"),
    (nutrients.nitrogen_rise, (5, 6000), "0.05 to 5000 L"),
    (nutrients.limits_passed, (-1, 20), "0 to 10000 g"),
    (sugar.to_brix, (20, 41, 22), "0 to 40.3"),
    (sugar.to_sg, (20, 0.990, 1.090), "1 to 1.178"),
    (sugar.after_adding, (20, 20, -1), "0 to 10000 kg"),
    (sugar.liquid_litres, (1, 86), "0 to 85"),
    (sugar.sugar_for_alcohol, (20, 9), "0 to 8 % vol"),
    (sugar.sugar_volume, (-1,), "0 to 10000 kg"),
    (sugar.sweeten, (20, 301), "0 to 300 g/L"),
    (sugar.sweeten_to_sg, (20, 1.01, 1.00), "1.01 to 1.1"),
    (sugar.sg_after_sweetening, (20, 1.0, -5), "0 to 1e+06 g"),
    (sugar.sorbate_rate, (9, 3.3), "10 to 18 % vol"),
    (sugar.sorbate_grams, (20, 12, 3.7), "2.8 to 3.5"),
    (sugar.co2_solubility, (36,), "0 to 35 C"),
    (sugar.bottle_pressure, (101, 20), "0 to 100 g/L"),
    (sulfite.pk, (12, 15), "20 to 40 C"),
    (sulfite.molecular_so2, (30, 34), "2.8 to 4.2"),
    (sulfite.free_so2_needed, (30, 3.4), "0 to 3 mg/L"),
    (sulfite.sulfite_grams, (30, 0), "0.05 to 5000 L"),
    (sulfite.so2_from_grams, (-1, 20), "0 to 10000 g"),
    (sulfite.so2_from_tablets, (-1, 20), "0 to 1000"),
    (sulfite.tablets, (301, 20), "0 to 300 mg/L"),
    (sulfite.free_so2_after, (-1, 20), "0 to 300 mg/L"),
    (units.celsius, (-500,), "-273.15 to"),
    (units.fahrenheit, (-300,), "-273.15 to"),
    (units.convert, (math.inf, "L", "gal"), "-1e+15 to 1e+15"),
    (units.convert_difference, (math.nan, "F", "C"), "-1000 to 1000 F"),
    (units.litres, (-1, "gal"), "0 to 1e+09 gal"),
    (units.grams, (-1, "tsp", "sugar"), "0 to 1e+09 tsp"),
    (units.teaspoons, (-1, "sugar"), "0 to 1e+06 g"),
    (volumes.primary_capacity, (0, "red"), "0.05 to 5000 L"),
    (volumes.head_space, (23, 20), "23 to 10000 L"),
    (volumes.foam_room, (23, 20, "red"), "23 to 10000 L"),
    (volumes.racking_loss, (-1,), "0.05 to 5000 L"),
    (volumes.top_up, (23, 20), "23 to 10000 L"),
    (volumes.fits, (20, {"thimble": 0.001}), "0.05 to 10000 L"),
    (volumes.bottles, (20, 750), "0.05 to 20 L"),
    (volumes.ml_per_cm, (0,), "0.5 to 200 cm"),
    (volumes.warming_expansion, (20, 12, 15, 45), "0 to 40 C"),
    (volumes.co2_litres, (20, 21), "0 to 20 % vol"),
    (volumes.co2_grams, (20, -1), "0 to 20 % vol"),
    (volumes.heat_rise, (351,), "0 to 350 g/L"),
    (volumes.fining_dose, ("bentonite", 0), "0.05 to 5000 L"),
    (volumes.oak_dose, ("chips", 0), "0.05 to 5000 L"),
]


@pytest.mark.parametrize(("function", "arguments", "range_named"), REFUSED)
def test_refuses(function: Callable[..., object], arguments: tuple[object, ...], range_named: str) -> None:
    with pytest.raises(OutOfRange) as refusal:
        function(*arguments)
    assert f"is outside {range_named}" in str(refusal.value)


def test_every_public_function_is_tried() -> None:
    public = {
        f"{module.__name__}.{name}"
        for module in MODULES
        for name, item in vars(module).items()
        if isinstance(item, types.FunctionType) and not name.startswith("_") and item.__module__ == module.__name__
    }
    tried = {f"{function.__module__}.{function.__name__}" for function, _, _ in REFUSED}
    assert public - tried == set()


def test_every_public_function_says_what_it_does() -> None:
    for function, _, _ in REFUSED:
        assert inspect.getdoc(function), function.__name__


@pytest.mark.parametrize(("function", "arguments", "range_named"), REFUSED)
def test_nothing_is_computed_from_no_number(
    function: Callable[..., object], arguments: tuple[object, ...], range_named: str
) -> None:
    """NaN in place of any number is refused, never passed through."""
    for place, argument in enumerate(arguments):
        if isinstance(argument, int | float) and not isinstance(argument, bool):
            with pytest.raises(ValueError):
                function(*arguments[:place], math.nan, *arguments[place + 1 :])


@given(st.floats(), st.floats(-1e6, 1e6), st.floats(0, 1e6))
def test_check(value: float, low: float, width: float) -> None:
    high = low + width
    if low <= value <= high:
        assert check("it", value, low, high) == value
    else:
        with pytest.raises(OutOfRange):
            check("it", value, low, high)


def test_message_and_parts() -> None:
    with pytest.raises(OutOfRange, match=r"^SG 9\.96 is outside 0\.98 to 1\.18$"):
        check("SG", 9.96, 0.98, 1.18)
    with pytest.raises(OutOfRange, match=r"^volume 0 L is outside 0\.05 to 5000 L$") as refusal:
        check_litres(0)
    error = refusal.value
    assert (error.name, error.value, error.low, error.high, error.unit) == ("volume", 0, 0.05, 5000, "L")


@pytest.mark.parametrize(
    ("estimate", "decimals", "rounded"),
    [
        (Estimate(12.8625, 12.3625, 13.3625), 1, (12.9, 12.4, 13.4)),
        (Estimate(10.7, 0, 18.8), -1, (10, 0, 20)),
        (Estimate(7.23, 4.1, 9.9), 0, (7, 4, 10)),
        (Estimate(0.985, 0.98, 0.99), 3, (0.985, 0.98, 0.99)),
        (Estimate(12.1, 12.0, 12.2), 1, (12.1, 12.0, 12.2)),
        (Estimate(200, 140, 350), -2, (200, 100, 400)),
        (Estimate(18.9271, 18.9271, 18.9271), 3, (18.927, 18.927, 18.927)),
    ],
)
def test_digits(estimate: Estimate, decimals: int, rounded: tuple[float, float, float]) -> None:
    assert estimate.decimals() == decimals
    assert estimate.rounded() == Estimate(*rounded)


@given(st.floats(0, 1e4), st.floats(0, 1), st.floats(0, 1e3))
def test_an_estimate_stays_in_order(value: float, fraction: float, factor: float) -> None:
    estimate = Estimate.share(value, fraction).times(factor)
    assert 0 <= estimate.low <= estimate.value <= estimate.high


@given(st.floats(0.1, 1e4), st.floats(0.001, 1))
def test_rounding_stays_within_the_uncertainty(value: float, fraction: float) -> None:
    estimate = Estimate.share(value, fraction)
    half_width = max(estimate.high - estimate.value, estimate.value - estimate.low)
    assert abs(estimate.rounded(9).value - estimate.value) <= half_width


@pytest.mark.parametrize("parts", [(1, 2, 3), (3, 1, 2), (math.nan, 0, 1)])
def test_an_estimate_out_of_order(parts: tuple[float, float, float]) -> None:
    with pytest.raises(ValueError, match="low <= value <= high"):
        Estimate(*parts)
