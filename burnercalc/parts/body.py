"""The steel body and the block in it: outside sizes as set, for those who draw it."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Body:
    """`kind`: tube, plates or pipe; a pipe is `round`, its length and width are its diameter.

    `cap_m`: thickness of the end caps, of a round body the discs.
    """

    kind: str
    round: bool
    length_m: float
    width_m: float
    depth_m: float
    wall_m: float
    cap_m: float
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
) -> Body:
    return Body(
        kind=body_kind,
        round=body_kind == "pipe",
        length_m=body_length,
        width_m=body_width,
        depth_m=body_depth,
        wall_m=wall,
        cap_m=wall if cap_thickness == "wall" or body_kind == "pipe" else float(cap_thickness),
        setback_m=setback,
        grip_m=grip,
        block_thickness_m=block_thickness,
    )
