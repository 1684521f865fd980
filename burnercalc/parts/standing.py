"""Where the burners stand in the chamber's walls."""

from dataclasses import dataclass

from ..making import wall as making
from ..making.mounting import hole_m
from .body import Body
from .face import Face


@dataclass(frozen=True)
class Standing:
    """`at`: the first wall that takes them all, or where none does the best of them; `alone` and `looks_in`: of one of
    them, and of the field of its ports alone. Holes leave `keep_m` of lining round each."""

    at: making.Stand
    alone: making.Stand
    looks_in: making.Stand
    hole: making.Sides
    keep_m: float


def standing(
    body: Body,
    face: Face,
    mould_clearance: float,
    sizes: str,
    chamber_shape: str,
    chamber_length: float,
    chamber_width: float,
    chamber_height: float,
    chamber_diameter: float,
    lining: tuple[tuple[str, float], ...],
    burner_count: int,
) -> Standing:
    walls = making.walls_of(
        shape=chamber_shape,
        length_m=chamber_length,
        width_m=chamber_width,
        height_m=chamber_height,
        diameter_m=chamber_diameter,
        lining_m=sum(thickness_m for _, thickness_m in lining),
    )
    window, keep_m = (face.window_length_m, face.window_width_m), making.KEEP_M[sizes]
    hole = hole_m(body.length_m + mould_clearance, sizes), hole_m(body.width_m + mould_clearance, sizes)

    def stand(takes: making.Sides, burners: int, keep_m: float) -> making.Stand:
        return making.stand(walls=walls, window=window, hole=takes, is_round=body.round, burners=burners, keep_m=keep_m)

    alone = stand(hole, 1, keep_m)
    return Standing(
        at=alone if burner_count == 1 else stand(hole, burner_count, keep_m),
        alone=alone,
        looks_in=stand(window, 1, 0.0),
        hole=hole,
        keep_m=keep_m,
    )
