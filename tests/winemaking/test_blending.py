"""Blends and the Pearson square: plain arithmetic, checked by hand and by its own inverse."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from journalbot.winemaking import blending, gravity
from journalbot.winemaking.blending import Lot
from journalbot.winemaking.ranges import OutOfRange

LINEAR = sorted({*blending.BY_VOLUME} - {"sg"})


@pytest.mark.parametrize(
    ("quantity", "lots", "result"),
    [
        ("alcohol", [Lot(10, 14), Lot(10, 11)], 12.5),
        ("ta", [Lot(15, 6.0), Lot(5, 9.0)], 6.75),
        ("sg", [Lot(3, 1.000), Lot(1, 0.992)], 0.998),
        ("residual_sugar", [Lot(10, 0), Lot(1, 110)], 10),
        ("total_so2", [Lot(1, 30), Lot(2, 60), Lot(3, 90)], 70),
        ("malic", [Lot(7, 2.5)], 2.5),
    ],
)
def test_blend(quantity: str, lots: list[Lot], result: float) -> None:
    assert blending.blend(quantity, lots) == pytest.approx(result)


def test_brix_blends_by_mass() -> None:
    """Equal volumes of 10 and 25 °Brix: densities 1.03812 and 1.10359 (rows 1.09, 1.22) weigh the mean up to 17.73; the
    sugar in both, 103.8 and 275.9 g/L, gives the same."""
    brix = blending.blend("brix", [Lot(1, 10), Lot(1, 25)])
    assert brix == pytest.approx(17.73, abs=0.01)
    assert gravity.extract(gravity.sg_from_brix(brix)) == pytest.approx((103.8 + 275.9) / 2, rel=0.003)


# Pearson square: quantity, first, second, target, shares.
@pytest.mark.parametrize(
    ("quantity", "first", "second", "target", "share"),
    [
        ("alcohol", 14, 10, 12, 0.5),
        ("alcohol", 14, 10, 13, 0.75),
        ("ta", 5, 9, 6, 0.75),
        ("ta", 5, 9, 5, 1.0),
        ("alcohol", 40, 12, 18, 6 / 28),
    ],
)
def test_square(quantity: str, first: float, second: float, target: float, share: float) -> None:
    assert blending.shares(quantity, first, second, target) == pytest.approx((share, 1 - share))


def test_litres_to_add() -> None:
    assert blending.litres_to_add("alcohol", Lot(18, 14), 10, 12) == pytest.approx(18)
    assert blending.litres_to_add("ta", Lot(15, 5), 9, 6) == pytest.approx(5)


@pytest.mark.parametrize("target", [9.9, 14.1])
def test_no_blend_reaches_beyond_its_parts(target: float) -> None:
    with pytest.raises(OutOfRange, match="is outside 10 to 14"):
        blending.shares("alcohol", 14, 10, target)


def test_two_alike_reach_nothing_else() -> None:
    with pytest.raises(OutOfRange):
        blending.shares("alcohol", 12, 12, 13)


def test_no_amount_reaches_the_others_own_figure() -> None:
    with pytest.raises(ValueError, match="only towards it"):
        blending.litres_to_add("alcohol", Lot(10, 14), 10, 10)


# 6: pH follows buffers, not sums (Iowa State University Extension; Mattick, Plane, Weirs 1980).
@pytest.mark.parametrize(("quantity", "reason"), [("ph", "logarithm"), ("free_so2", "binds"), ("score", "not known")])
def test_what_does_not_blend(quantity: str, reason: str) -> None:
    with pytest.raises(blending.NotLinear, match=reason):
        blending.blend(quantity, [Lot(10, 3.4), Lot(10, 3.6)])
    with pytest.raises(blending.NotLinear, match=reason):
        blending.shares(quantity, 3.4, 3.6, 3.5)


@given(st.sampled_from([*LINEAR, "brix"]), st.floats(1, 35), st.floats(1, 35), st.floats(0.01, 0.99), st.floats(1, 500))
def test_square_then_blend_gives_the_target(
    quantity: str, first: float, second: float, where: float, litres: float
) -> None:
    assume(abs(first - second) > 0.01)
    target = first + where * (second - first)
    other = blending.litres_to_add(quantity, Lot(litres, first), second, target)
    assume(0.05 <= other <= 5000)
    assert blending.blend(quantity, [Lot(litres, first), Lot(other, second)]) == pytest.approx(target, abs=1e-6)


@given(st.lists(st.tuples(st.floats(0.1, 500), st.floats(0, 30)), min_size=1, max_size=6))
def test_a_blend_lies_between_its_lots(lots: list[tuple[float, float]]) -> None:
    result = blending.blend("alcohol", [Lot(*lot) for lot in lots])
    values = [value for _, value in lots]
    assert min(values) - 1e-9 <= result <= max(values) + 1e-9
