"""Read the CSV tables of burnercalc/data and look values up in them.

A table file starts with `#` lines (quantity, source, reference state, trust), then one header line, then rows. Column
names carry the unit. A cell that reads as a number becomes a float (not in a column of NAMES), an empty one None, all
else text.
"""

import csv
from bisect import bisect_left
from collections.abc import Sequence
from functools import cache
from importlib import resources
from typing import Any

from .errors import InputError

NAMES = ("nps",)  # columns of names that may read as numbers: a pipe of nominal size 2

Row = dict[str, Any]  # column: float, text or None; which of them, the header of the file says


def _cell(column: str, text: str) -> float | str | None:
    text = text.strip()
    if text == "":
        return None
    if column in NAMES:
        return text
    try:
        return float(text)
    except ValueError:
        return text


@cache
def read_table(name: str) -> tuple[Row, ...]:
    """Rows of data/<name>.csv as a tuple of dicts, in file order. Raises FileNotFoundError for an unknown table."""
    text = resources.files(__package__).joinpath("data", name + ".csv").read_text(encoding="utf-8")
    lines = [line for line in text.splitlines() if line and not line.startswith("#")]
    return tuple({key: _cell(key, cell) for key, cell in row.items()} for row in csv.DictReader(lines))


@cache
def by_key(name: str, column: str) -> dict[Any, Row]:
    """Dict of a table's rows by the text in `column`."""
    return {row[column]: row for row in read_table(name)}


def find(name: str, column: str, key: object, field: str) -> Row:
    """The row of table `name` whose `column` is `key`; InputError for `field` lists the known keys otherwise."""
    rows = by_key(name, column)
    if key not in rows:
        raise InputError(field, key, "is not in the table; known: " + ", ".join(str(k) for k in rows))
    return rows[key]


def interpolate(x: float, xs: Sequence[float], ys: Sequence[float], field: str = "x") -> float:
    """Straight line between the points (xs ascending, ys alike); InputError outside the first and last x."""
    if not xs[0] <= x <= xs[-1]:
        raise InputError(
            field,
            x,
            f"must be within {xs[0]:g} to {xs[-1]:g}",
            f"{min(max(x, xs[0]), xs[-1]):g}" if x == x else "",
        )
    i = bisect_left(xs, x, 1)
    return ys[i - 1] + (ys[i] - ys[i - 1]) * (x - xs[i - 1]) / (xs[i] - xs[i - 1])
