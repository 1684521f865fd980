"""A figure with the range in which the truth is thought to lie."""

from typing import NamedTuple


class Band(NamedTuple):
    """low <= value <= high, all in the unit that the name of the function gives."""

    low: float
    value: float
    high: float


def about(figures: list[float]) -> Band:
    """A Band of all the figures, the first of them its value."""
    return Band(min(figures), figures[0], max(figures))


def in_order(low: float, value: float, high: float) -> Band:
    """A Band of three results that the last digits of a search may have put out of order."""
    return Band(min(low, value, high), value, max(low, value, high))
