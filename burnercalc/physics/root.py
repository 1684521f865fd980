"""Roots of rising functions: of positive ones, as the pressures and flows of a network are, and between two ends."""

from collections.abc import Callable
from math import exp, inf, log

from ..errors import InputError, require

SMALLEST, LARGEST = 1e-150, 1e150  # of x over the guess


def rising_root(function: Callable[[float], float], target: float, guess: float) -> float | None:
    """x above 0 where function(x) = target, or None where there is none within 1e-150 to 1e150 times the guess.

    Works on the logarithms, in which power laws are straight: brackets by growing steps from the guess, then
    false_position.

    Arguments:
        function   continuous, 0 or more, rising with x above 0
        target     above 0
        guess      above 0
    Returns:
        x, function(x) within 1e-11 of the target, or x within 1e-15 of the place where it steps over it
    Checked by:
        tests/test_root.py
    """

    def gap(u: float) -> float:
        value = function(guess * exp(u))
        return log(value / target) if value > 0 else -700.0

    u, g = 0.0, gap(0.0)
    step = 0.5
    while True:  # until the sign turns
        if abs(g) < 1e-11:
            return guess * exp(u)
        before, g_before = u, g
        u += -step if g > 0 else step
        if not log(SMALLEST) < u < log(LARGEST):
            return None
        g = gap(u)
        if (g > 0) != (g_before > 0):
            break
        step *= 2
    low, high = sorted([(before, g_before), (u, g)])
    return guess * exp(false_position(gap, low, high, 1e-11))


def false_position(
    gap: Callable[[float], float], low: tuple[float, float], high: tuple[float, float], within: float
) -> float:
    """u between two places, each with its gap, where a rising gap(u) is within so much of 0, or steps over it.

    Source: false position, halved where it stalls (Illinois; Dowell and Jarratt, BIT 11 (1971) 168)
    Checked by: tests/test_root.py (false_position of a line, a power and a step)
    """
    (a, g_a), (b, g_b) = low, high
    side = 0
    for i in range(200):
        # A plain halving now and then bounds the work on a function with a kink.
        u = (a + b) / 2 if i % 8 == 7 else (a * g_b - b * g_a) / (g_b - g_a)
        g = gap(u)
        if abs(g) < within or b - a < 1e-15 * max(abs(a), abs(b), 1.0):
            break
        if g < 0:
            a, g_a = u, g
            g_b *= 0.5 if side == -1 else 1.0
            side = -1
        else:
            b, g_b = u, g
            g_a *= 0.5 if side == 1 else 1.0
            side = 1
    return u


def bracketed_root(
    f: Callable[[float], float],
    low: float,
    high: float,
    tolerance: float = 1e-12,
    most: int = 200,
    f_low: float | None = None,
    f_high: float | None = None,
) -> float:
    """Root of a rising function between `low` and `high`: inverse parabolas where they are safe, halving elsewhere.

    `f_low`, `f_high`: f at the ends, for a caller that knows them.

    Raises: InputError for `bracket` when f(low) <= 0 <= f(high) does not hold or `most` trials are not enough
    Source: Chandrupatla, Adv. Eng. Software 28 (1997) 145; the first trial is by false position
    """
    f_low = f(low) if f_low is None else f_low
    f_high = f(high) if f_high is None else f_high
    require(f_low <= 0 <= f_high, "bracket", f"{low:g} to {high:g}", "must hold a sign change")
    if f_low == 0 or f_high == 0:
        return low if f_low == 0 else high
    # x1 is the latest point, x2 the other end of the bracket, x3 the one given up last.
    x1, f1, x2, f2 = (low, f_low, high, f_high) if -f_low < f_high else (high, f_high, low, f_low)
    share = min(max(f1 / (f1 - f2), tolerance), 0.5)
    for _ in range(most):
        x = x1 + share * (x2 - x1)
        value = f(x)
        if value == 0:
            return x
        if (value > 0) == (f1 > 0):
            x3, f3 = x1, f1
        else:
            x3, f3, x2, f2 = x2, f2, x1, f1
        x1, f1 = x, value
        nearest = x1 if abs(f1) < abs(f2) else x2
        least = tolerance * abs(nearest) / abs(x2 - x1)
        if least > 0.5:
            return nearest
        xi, phi = (x1 - x2) / (x3 - x2), (f1 - f2) / (f3 - f2)
        if phi * phi < xi and (1 - phi) * (1 - phi) < 1 - xi:
            share = f1 / (f2 - f1) * f3 / (f2 - f3) + (x3 - x1) / (x2 - x1) * f1 / (f3 - f1) * f2 / (f3 - f2)
            share = min(max(share, least), 1 - least)
        else:
            share = 0.5
    raise InputError("bracket", f"{low:g} to {high:g}", f"is not narrow enough after {most} trials")


SECANTS = 30  # as many do for any smooth function


def near_root(
    f: Callable[[float], float],
    at: float,
    guess: float,
    low: float,
    high: float,
    within: float,
    most: int = 200,
    f_at: float | None = None,
) -> float:
    """Root of a rising function by secants from two places, halving where one leaves what `low` and `high` still hold.

    Of a smooth function a secant misses by about the product of the two steps to it over x, which ends it below
    `within` x. Where many secants have not ended it, of a function with kinks, every other trial halves. The caller
    knows that there is a root from `low` to `high`, and maybe `f_at`, f there.

    Raises: InputError for `bracket` where f is no number, or when `most` trials are not enough
    Checked by: tests/test_root.py
    """
    x0, x1, f0 = at, guess, f(at) if f_at is None else f_at
    for trial in range(most):
        f1 = f(x1)
        if f1 > 0:
            high = x1
        elif f1 <= 0:
            low = x1
        else:
            break
        x = x1 - f1 * (x1 - x0) / (f1 - f0) if f1 != f0 else inf
        if not low <= x <= high or (trial > SECANTS and trial % 2):
            x = 0.5 * (low + high)  # may come upon an old place, so the steps to it tell nothing
            if high - low <= within * x:
                return x
        elif abs((x - x1) * (x - x0)) <= within * x * x:
            return x
        x0, f0, x1 = x1, f1, x
    raise InputError("bracket", f"{low:g} to {high:g}", f"is not narrow enough after {most} trials")
