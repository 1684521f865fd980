"""The steel body and the block in it: outside sizes as set, for those who draw it."""

from dataclasses import dataclass

from ..making.stock import cap_thickness_m


@dataclass(frozen=True)
class Body:
    """`kind`: tube, plates or pipe; a pipe is `round`, its length and width are its diameter.

    `cap_m`: thickness of the end caps, of a round body the discs; `face_m`: of face and back, which are a round
    body's discs; `end_m`: of what closes the ends of its length, which is a round body's wall.
    """

    kind: str
    round: bool
    length_m: float
    width_m: float
    depth_m: float
    wall_m: float
    cap_m: float
    face_m: float
    end_m: float
    setback_m: float
    grip_m: float
    block_thickness_m: float


def body(
    body_kind: str,
    body_length: float,
    body_width: float,
    body_depth: float,
    wall: float,
    setback: float,
    grip: float,
    block_thickness: float,
    cap_thickness: float | str,
    sizes: str,
) -> Body:
    is_round, cap_m = body_kind == "pipe", cap_thickness_m(wall_m=wall, unit=sizes, chosen=cap_thickness)
    return Body(
        kind=body_kind,
        round=is_round,
        length_m=body_length,
        width_m=body_width,
        depth_m=body_depth,
        wall_m=wall,
        cap_m=cap_m,
        face_m=cap_m if is_round else wall,
        end_m=wall if is_round else cap_m,
        setback_m=setback,
        grip_m=grip,
        block_thickness_m=block_thickness,
    )
