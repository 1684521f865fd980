"""A figure with the range in which the truth is thought to lie."""

from typing import NamedTuple


class Band(NamedTuple):
    """low <= value <= high, all in the unit that the name of the function gives."""

    low: float
    value: float
    high: float
