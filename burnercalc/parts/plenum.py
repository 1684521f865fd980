"""The plenum: the room behind the block that the mixture spreads in, and the inlets that feed it."""

from dataclasses import dataclass
from math import pi, sqrt

from ..physics import pipes
from ..physics.pipes import Pipe
from .body import Body
from .face import Face


@dataclass(frozen=True)
class Plenum:
    """Clear sizes inside the body; a round one counts as the square of the same area, fed in the middle."""

    length_m: float
    width_m: float
    height_m: float
    area_m2: float  # of the cross-section that the mixture flows through along the body
    to_port_ratio: float
    inlet: Pipe
    inlets_m: tuple[float, ...]  # from the left end to where each inlet feeds it
    streams: int  # along it, that part the flow: 1 from an inlet at an end, 2 from each in the back
    inlet_area_m2: float  # of all inlets
    inlet_to_port_ratio: float


def plenum(
    face: Face,
    body: Body,
    inlet: str,
    inlet_position: str,
    inlets: int,
) -> Plenum:
    share = sqrt(pi) / 2 if face.round else 1.0
    width, height = share * (body.width_m - 2 * body.wall_m), body.depth_m - body.face_m - body.grip_m
    length = share * (body.length_m - 2 * body.end_m)
    pipe, at_end = pipes.pipe(inlet, "inlet"), inlet_position == "end"
    return Plenum(
        length_m=length,
        width_m=width,
        height_m=height,
        area_m2=width * height,
        to_port_ratio=width * height / face.port_area_m2,
        inlet=pipe,
        inlets_m=(0.0,) if at_end else tuple((i + 0.5) * length / inlets for i in range(inlets)),
        streams=1 if at_end else 2 * inlets,
        inlet_area_m2=inlets * pipe.area_m2,
        inlet_to_port_ratio=inlets * pipe.area_m2 / face.port_area_m2,
    )
