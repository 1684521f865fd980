"""The baffle as a piece of sheet: its blank, and where it stands between block and inlet."""

from dataclasses import dataclass
from functools import lru_cache

from ..constants import INCH_M
from ..errors import InputError
from ..making import body as making
from ..making.body import Baffle
from ..making.stock import tube_inside_radius_m
from .body import Body
from .steel import Steel

# Common practice.
GAP_M = INCH_M / 16  # beside a baffle, so that it goes in
BEND_K_FACTOR = 0.4  # neutral line from the inside face, over the thickness


@dataclass(frozen=True)
class BaffleSheet:
    """`trouble`: there should be one, but its sheet cannot be made so. All else is None where there is none."""

    sheet: Baffle | None
    trouble: bool
    blank_length_m: float | None
    blank_width_m: float | None
    leg_m: float | None
    height_m: float | None
    stand_m: float | None  # inside of the face to its feet
    gap_m: float | None  # to block or inlet, the smaller
    side_gap_m: float | None  # to the sides and corners that it slides along on its way in


NONE = BaffleSheet(None, False, None, None, None, None, None, None, None)
TROUBLE = BaffleSheet(None, True, None, None, None, None, None, None, None)


def baffle_sheet(
    body: Body,
    steel: Steel,
    baffle_holes: int,
    baffle_hole_diameter: float,
    baffle_thickness: float,
    baffle_bend_angle: float,
    inlet_position: str,
) -> BaffleSheet:
    if not baffle_holes:
        return NONE
    inside = steel.body
    try:
        sheet = _cut(
            body.round,
            inside.inside_length_m - 2 * GAP_M,
            inside.inside_width_m - 2 * GAP_M,
            baffle_thickness,
            baffle_bend_angle,
            baffle_hole_diameter,
            baffle_holes,
        )
    except InputError:
        return TROUBLE
    block_m = body.grip_m - body.face_m
    room_m = inside.inside_depth_m - block_m - sheet.height_m
    # In the middle of what block and inlet leave; a pipe at the end comes in beside it, as far off as from the back.
    if inlet_position == "end":
        gap_m = (room_m - steel.inlet_saw_m) / 3
    else:
        gap_m = room_m / 2
    stand_m = block_m + gap_m
    corner_m = tube_inside_radius_m(body.wall_m) if body.kind == "tube" else 0.0
    above_m = inside.inside_depth_m - stand_m - baffle_thickness  # from the edges of its feet to the back
    return BaffleSheet(
        sheet=sheet,
        trouble=False,
        blank_length_m=sheet.blank_length_m,
        blank_width_m=sheet.blank_width_m,
        leg_m=sheet.leg_m,
        height_m=sheet.height_m,
        stand_m=stand_m,
        gap_m=gap_m,
        side_gap_m=making.baffle_side_gap_m(
            side_gap_m=GAP_M, corner_radius_m=corner_m, from_flat_m=min(stand_m, above_m)
        ),
    )


@lru_cache(maxsize=64)
def _cut(is_round, length, span, thickness, bend, hole, holes):
    if is_round:
        return making.round_baffle(diameter_m=span, thickness_m=thickness, hole_m=hole, holes=holes)
    return making.baffle(
        length_m=length,
        span_m=span,
        thickness_m=thickness,
        angle_deg=bend,
        inside_radius_m=thickness,
        k_factor=BEND_K_FACTOR,
        hole_m=hole,
        holes=holes,
    )
