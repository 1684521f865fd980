"""Where burners stand in a chamber: their ports look in, their holes stay within the shell. Common practice."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import ceil, hypot, sqrt

from ..constants import INCH_M

KEEP_M = {"in": INCH_M, "mm": 0.025}  # lining left round a hole, under the bracket's bolts; twice that to the next hole
SLACK = 1e-9

Sides = tuple[float, float]


@dataclass(frozen=True)
class Wall:
    """`inside`: its sides in the chamber; `outside`: over the linings beside it, to the shell; `ends`: whether other
    walls stand at the ends of each side, which a hole may run behind."""

    name: str  # roof, side and end of a box; round and lid of a cylinder
    inside: Sides
    outside: Sides
    ends: tuple[bool, bool] = (True, True)


@dataclass(frozen=True)
class Stand:
    """`share`: what it takes of the wall on the side that is scarcest, 1 where it just fits; `turned`: bodies lie along
    the wall's second side; `row`: burners along the first; `behind_m`: that holes run behind the linings beside it."""

    wall: Wall
    share: float
    turned: bool
    row: int
    pitch_m: float  # from burner to burner along the first side
    behind_m: float

    @property
    def fits(self) -> bool:
        return self.share <= 1 + SLACK


def walls_of(
    *,
    shape: str,
    length_m: float,
    width_m: float,
    height_m: float,
    diameter_m: float,
    lining_m: float,
) -> tuple[Wall, ...]:
    """The walls of a chamber, in the order in which burners are put there: roof, sides, ends.

    A round wall is taken as wide as the square in its circle: a flatter chord would stand in the middle of the chamber.

    Source: geometry
    Checked by: tests/test_wall.py
    """
    if shape != "box":
        chord_m = diameter_m / sqrt(2)
        out_m = 2 * sqrt((diameter_m / 2 + lining_m) ** 2 - (chord_m / 2) ** 2)
        over_m = diameter_m + 2 * lining_m
        sides = (length_m, chord_m), (length_m + 2 * lining_m, out_m)
        return Wall("round", *sides, (True, False)), Wall("lid", (diameter_m, diameter_m), (over_m, over_m))
    named = ("roof", length_m, width_m), ("side", length_m, height_m), ("end", width_m, height_m)
    return tuple(Wall(name, (a, b), (a + 2 * lining_m, b + 2 * lining_m)) for name, a, b in named)


def stand(*, walls: Iterable[Wall], window: Sides, hole: Sides, is_round: bool, burners: int, keep_m: float) -> Stand:
    """The first wall that takes so many burners, and how they lie in it; where none does, the best.

    Arguments: window and hole: of one burner, along it and across
    Source: geometry; the lining left round a hole is common practice
    Checked by: tests/test_wall.py
    """
    best: Stand | None = None
    for wall in walls:
        for found in _ways(wall, window, hole, is_round, burners, keep_m):
            if found.fits:
                return found
            best = found if best is None or found.share < best.share else best
    assert best is not None
    return best


def _ways(wall: Wall, window: Sides, hole: Sides, is_round: bool, burners: int, keep_m: float) -> Iterable[Stand]:
    """Of so many in lines, lengthways and turned."""
    if wall.name == "lid":  # takes one; of a body that is not round the diagonals count
        if burners > 1:
            return
        across_m, hole_m = (sides[0] if is_round else hypot(*sides) for sides in (window, hole))
        share = max(across_m / wall.inside[0], (hole_m + 2 * keep_m) / wall.outside[0])
        yield Stand(wall, share, False, 1, hole_m + 2 * keep_m, (hole_m - wall.inside[0]) / 2)
        return
    for turned in (False, True):
        looks, takes = (window[::-1], hole[::-1]) if turned else (window, hole)
        for lines in range(1, burners + 1):
            counts = ceil(burners / lines), lines
            share, pitches, behind_m = 0.0, [], 0.0
            for n, look_m, hole_m, in_m, out_m, ends in zip(counts, looks, takes, wall.inside, wall.outside, wall.ends):
                cell_m = hole_m + 2 * keep_m
                share = max(share, ((n - 1) * cell_m + look_m) / in_m, n * cell_m / out_m)
                pitches.append(max(cell_m, in_m / n))
                if ends:
                    behind_m = max(behind_m, ((n - 1) * pitches[-1] + hole_m - in_m) / 2)
            yield Stand(wall, share, turned, counts[0], pitches[0], behind_m)
