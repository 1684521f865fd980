"""One-dimensional root of a positive rising function, as the pressures and flows of a network are."""

from collections.abc import Callable
from math import exp, log

SMALLEST, LARGEST = 1e-150, 1e150  # of x over the guess


def rising_root(function: Callable[[float], float], target: float, guess: float) -> float | None:
    """x above 0 where function(x) = target, or None where there is none within 1e-150 to 1e150 times the guess.

    Works on the logarithms, in which power laws are straight: brackets by growing steps from the guess, then false
    position, halved where it stalls (Illinois; Dowell and Jarratt, BIT 11 (1971) 168).

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
    (low, g_low), (high, g_high) = sorted([(before, g_before), (u, g)])
    side = 0
    for i in range(200):
        # A plain halving now and then bounds the work on a function with a kink.
        u = (low + high) / 2 if i % 8 == 7 else (low * g_high - high * g_low) / (g_high - g_low)
        g = gap(u)
        if abs(g) < 1e-11 or high - low < 1e-15 * max(abs(low), abs(high), 1.0):
            break
        if g < 0:
            low, g_low = u, g
            g_high *= 0.5 if side == -1 else 1.0
            side = -1
        else:
            high, g_high = u, g
            g_low *= 0.5 if side == 1 else 1.0
            side = 1
    return guess * exp(u)
