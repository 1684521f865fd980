"""The block as it comes out of the mould: what crooked and misplaced pins leave of webs, port area and flow."""

from dataclasses import dataclass
from functools import lru_cache
from math import pi

from ..making import tolerances
from ..physics.band import Band
from .body import Body
from .face import Face


@dataclass(frozen=True)
class AsCast:
    """Bands of the blocks sampled. None where ports overlap as drawn; no web where there is but one port."""

    drift_m: float  # of a pin, over the block
    web_m: Band | None
    web_drawn_m: float | None
    area_ratio: Band | None
    flow_ratio: Band | None


def as_cast(body: Body, face: Face, port_tilt_tolerance: float, port_position_tolerance: float) -> AsCast:
    tilt_rad = port_tilt_tolerance * pi / 180
    drift_m = tolerances.pin_drift_m(block_thickness_m=body.block_thickness_m, tilt_rad=tilt_rad)
    many = len(face.ports) > 1
    # Ports that overlap as drawn are no block to be off from; their own check stops them.
    if many and not face.min_web_m > 0:
        return AsCast(drift_m, None, None, None, None)
    found = _sampled(
        face.ports,
        face.port_diameter_m,
        body.block_thickness_m,
        body.grip_m,
        body.face_m,
        face.window_length_m,
        face.window_width_m,
        tilt_rad,
        port_position_tolerance,
        face.round,
    )
    return AsCast(
        drift_m=drift_m,
        web_m=found.web_m if many else None,
        web_drawn_m=found.web_drawn_m if many else None,
        area_ratio=found.area_ratio,
        flow_ratio=found.flow_ratio,
    )


@lru_cache(maxsize=32)
def _sampled(ports, diameter, thickness, grip, wall, length, width, tilt, position, is_round):
    return tolerances.port_tolerance(
        ports=ports,
        port_diameter_m=diameter,
        block_thickness_m=thickness,
        grip_m=grip,
        wall_m=wall,
        window_length_m=length,
        window_width_m=width,
        tilt_rad=tilt,
        position_m=position,
        round_window=is_round,
    )
