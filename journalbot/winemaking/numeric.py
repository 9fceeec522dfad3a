"""The numerical tools that the formulas need: polynomials, a root finder, straight-line interpolation in tables."""

from collections.abc import Callable, Sequence


def polynomial(x: float, coefficients: Sequence[float]) -> float:
    """Sum of coefficients[k] * x**k."""
    total = 0.0
    for coefficient in reversed(coefficients):
        total = total * x + coefficient
    return total


def root(function: Callable[[float], float], low: float, high: float, tolerance: float = 1e-10) -> float:
    """Where a continuous function is zero between low and high, by false position with the Illinois change.

    Raises ArithmeticError where the ends do not straddle zero; callers check their ranges so that they do.
    """
    at_low, at_high = function(low), function(high)
    # An end that is as good as a zero counts, whichever side of it rounding has put it.
    if abs(at_low) < tolerance:
        return low
    if abs(at_high) < tolerance:
        return high
    if at_low * at_high > 0:
        raise ArithmeticError(f"no zero between {low:g} and {high:g}")
    guess, side = low, 0
    for _ in range(200):
        guess = (low * at_high - high * at_low) / (at_high - at_low)
        at_guess = function(guess)
        if at_guess * at_high > 0:
            high, at_high = guess, at_guess
            # Halving the stale end is what keeps false position from creeping in from one side.
            at_low, side = (at_low / 2 if side == -1 else at_low), -1
        elif at_guess * at_low > 0:
            low, at_low = guess, at_guess
            at_high, side = (at_high / 2 if side == 1 else at_high), 1
        else:
            return guess
        if abs(at_guess) < tolerance or abs(high - low) < tolerance:
            return guess
    return guess


def interpolate(x: float, xs: Sequence[float], ys: Sequence[float]) -> float:
    """y at x on the straight lines through the points (xs rising); beyond the ends, the end value."""
    if x <= xs[0]:
        return ys[0]
    for i in range(1, len(xs)):
        if x <= xs[i]:
            return ys[i - 1] + (ys[i] - ys[i - 1]) * (x - xs[i - 1]) / (xs[i] - xs[i - 1])
    return ys[-1]


def interpolate_grid(
    x: float, y: float, xs: Sequence[float], ys: Sequence[float], rows: Sequence[Sequence[float]]
) -> float:
    """Value at (x, y) in a table whose rows go with ys and columns with xs; beyond the edges, the edge value."""
    return interpolate(y, ys, [interpolate(x, xs, row) for row in rows])
