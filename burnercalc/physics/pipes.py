"""Steel pipe sizes."""

from dataclasses import dataclass
from functools import cache
from math import pi

from ..constants import INCH_M
from ..errors import require
from ..tables import Row, by_key


@dataclass(frozen=True)
class Pipe:
    """One size of steel pipe."""

    od_m: float
    wall_m: float
    bore_m: float
    area_m2: float  # of the bore


@cache
def pipe(nps: str, field: str = "mix_pipe") -> Pipe:
    """Schedule 40 steel pipe of a nominal size.

    Arguments:
        nps     nominal size, text such as "1-1/2"   [in]   1/8 to 4
        field   name of the setting, for the refusal
    Returns:
        Pipe
    Raises:
        InputError   size not in the table; the rule lists the known ones
    Source:
        ASME B36.10M, data/pipe_sizes.csv (published)
    Checked by:
        tests/test_pipes.py against fluids.piping.nearest_pipe
    """
    sizes = _sizes()
    require(nps in sizes, field, nps, "is not in the table; known: " + ", ".join(sizes))
    row = sizes[nps]
    od_m, wall_m = row["od_in"] * INCH_M, row["wall_in"] * INCH_M
    bore_m = od_m - 2 * wall_m
    return Pipe(od_m, wall_m, bore_m, pi / 4 * bore_m**2)


@cache
def pipe_as_sold(nps: str, unit_system: str, field: str = "mix_pipe") -> Pipe:
    """Steel pipe of a nominal size as a shop has it: schedule 40 in inches, threaded of medium wall in millimetres.

    For holes, welds and masses. Flow is reckoned with schedule 40 in both, whose bore is up to 10 % narrower.

    Raises:
        InputError   as pipe()
    Source:
        ASME B36.10M (published); EN 10255 (memory), data/pipe_sizes.csv
    Checked by:
        tests/test_pipes.py against the outside diameters of EN 10220 in data/steel_pipes.csv
    """
    found = pipe(nps, field)
    if unit_system != "mm":
        return found
    row = _sizes()[nps]
    od_m, wall_m = row["metric_od_mm"] / 1000, row["metric_wall_mm"] / 1000
    return Pipe(od_m, wall_m, od_m - 2 * wall_m, pi / 4 * (od_m - 2 * wall_m) ** 2)


def pipe_names() -> tuple[str, ...]:
    """Nominal sizes in the table, smallest first, as text."""
    return tuple(_sizes())


def pipe_label(nps: str) -> str:
    """A nominal size as both shops call it: `2` as `2 in, DN 50`."""
    return f"{nps} in, DN {nominal_mm(nps)}"


def nominal_mm(nps: str) -> int:
    """The DN of a nominal size: 50 of `2`."""
    return round(_sizes()[nps]["dn"])


def _sizes() -> dict[str, Row]:
    return by_key("pipe_sizes", "nps")
