"""Drills as sold: number, letter, fraction and metric, and those nearest to a wanted hole."""

from bisect import bisect_left, bisect_right
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from math import isfinite

from ..constants import INCH_M
from ..errors import InputError, require
from ..tables import read_table

FAMILIES = ("number", "letter", "fraction", "metric")

# What is sold by the piece (common practice): sixty-fourths to 1 in; metric by 0.05 mm from 0.3 to 3 mm, by 0.1 mm to
# 13 mm, by 0.5 mm to 25 mm.
FRACTION_LAST_64THS = 64
METRIC_HUNDREDTHS_MM = (*range(30, 300, 5), *range(300, 1300, 10), *range(1300, 2501, 50))


@dataclass(frozen=True)
class Drill:
    """One drill: family (see FAMILIES), name as stamped (`#54`, `F`, `1/4 in`, `6.5 mm`) and diameter."""

    family: str
    name: str
    diameter_m: float


@cache
def drills(family: str) -> tuple[Drill, ...]:
    """All drills of a family as a tuple, smallest first; InputError for an unknown family."""
    if family in ("number", "letter"):
        found = [
            Drill(family, row["name"], row["diameter_in"] * INCH_M)
            for row in read_table("drills")
            if row["family"] == family
        ]
    elif family == "fraction":
        found = [Drill(family, f"{Fraction(n, 64)} in", n / 64 * INCH_M) for n in range(1, FRACTION_LAST_64THS + 1)]
    elif family == "metric":
        found = [Drill(family, f"{n / 100:g} mm", n / 1e5) for n in METRIC_HUNDREDTHS_MM]
    else:
        raise InputError("family", family, "is not a family of drills; known: " + ", ".join(FAMILIES))
    return tuple(sorted(found, key=lambda drill: drill.diameter_m))


def nearest_drills(diameter_m: float, family: str) -> tuple[Drill | None, Drill | None]:
    """The largest drill of a family that is not above a diameter and the smallest that is not below it.

    Returns (below, above); None where the family has none. A drill of exactly that diameter (to a nanometre) is both.
    """
    require(isfinite(diameter_m) and diameter_m > 0, "diameter_m", diameter_m, "must be above 0")
    known = drills(family)
    sizes = [drill.diameter_m for drill in known]
    below, above = bisect_right(sizes, diameter_m + 1e-9), bisect_left(sizes, diameter_m - 1e-9)
    return (known[below - 1] if below else None), (known[above] if above < len(known) else None)


def drill_named(name: str) -> Drill:
    """The drill with a stamped name, in any family; InputError lists a few names otherwise."""
    for family in FAMILIES:
        for drill in drills(family):
            if drill.name.lower() == name.strip().lower():
                return drill
    raise InputError("drill", name, "is not a drill; write it as #54, F, 1/4 in or 6.5 mm")
