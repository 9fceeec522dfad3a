"""The root finder and the interpolation, against functions whose answers are known."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journalbot.winemaking.numeric import interpolate, interpolate_grid, polynomial, root


@given(st.floats(-5, 5), st.floats(0.01, 4), st.floats(0.01, 4))
def test_root_of_a_cubic(zero: float, below: float, above: float) -> None:
    assert root(lambda x: (x - zero) * (1 + (x - zero) ** 2), zero - below, zero + above) == pytest.approx(
        zero, abs=1e-6
    )


def test_root_of_a_bent_function() -> None:
    assert root(lambda x: math.exp(x) - 1e4, 0, 20) == pytest.approx(math.log(1e4), abs=1e-9)


def test_root_at_an_end() -> None:
    assert root(lambda x: x - 1, 1, 5) == pytest.approx(1)
    assert root(lambda x: x - 5, 1, 5) == pytest.approx(5)


def test_no_root() -> None:
    with pytest.raises(ArithmeticError):
        root(lambda x: x * x + 1, -1, 1)


def test_interpolation_keeps_to_the_points_and_the_ends() -> None:
    xs, ys = (0, 10, 20), (1, 3, 2)
    assert [interpolate(x, xs, ys) for x in (-5, 0, 5, 10, 15, 20, 99)] == [1, 1, 2, 3, 2.5, 2, 2]
    assert interpolate_grid(5, 5, (0, 10), (0, 10), ((0, 10), (10, 20))) == 10


def test_polynomial() -> None:
    assert polynomial(2, (1, 2, 3)) == 17
