"""A figure with the range in which the truth is thought to lie."""

from typing import NamedTuple


class Band(NamedTuple):
    """low <= value <= high, all in the unit that the name of the function gives."""

    low: float
    value: float
    high: float


def in_order(low: float, value: float, high: float) -> Band:
    """A Band of three results of a search, which may be out of order by its last digits; ArithmeticError for more."""
    slack = 1e-9 * abs(value)
    if not (low <= value + slack and value <= high + slack):
        raise ArithmeticError(f"{low}, {value}, {high} are no band")
    return Band(min(low, value), value, max(value, high))
