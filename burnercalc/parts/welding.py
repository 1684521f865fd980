"""The welding: bevels, tacks, what is ground flush, the plate for the leak test, and what the hot block grows."""

from dataclasses import dataclass
from math import pi

from ..making import welding as making
from .body import Body
from .mould import Mould
from .shop import Shop
from .steel import Steel


@dataclass(frozen=True)
class Welding:
    """`long_bevel_m`: of a seam of four plates. `cap_seam_m`: round one cap or disc; `flush_m`: from the face up, seams
    are ground; `wax_m`: at each end, 0 where a block so short needs no joint.
    """

    bevel_m: float
    long_bevel_m: float
    cap_seam_m: float
    cap_tacks: int
    long_tacks: int | None  # of one long seam; None where there is none
    inlet_seam_m: float
    flush_m: float
    side_m: float  # between body and mould
    growth_m: float
    wax_m: float


def welding(
    body: Body, steel: Steel, mould: Mould, shop: Shop, mould_clearance: float, chamber_temperature: float
) -> Welding:
    inlet_m = pi * steel.inlet_pipe.od_m
    long_m = 4 * steel.tube_length_m if body.kind == "plates" else 0.0
    cap_seam_m = (steel.weld_m - steel.inlet_piece.count * inlet_m - long_m) / 2
    growth_m = making.block_growth_m(
        length_m=steel.body.inside_length_m, rise_K=max(chamber_temperature - shop.temp_K, 0.0)
    )
    return Welding(
        bevel_m=making.bevel_m(body.cap_m),
        long_bevel_m=making.bevel_m(body.wall_m),
        cap_seam_m=cap_seam_m,
        cap_tacks=making.tacks(cap_seam_m, body.cap_m),
        long_tacks=making.tacks(steel.tube_length_m, body.wall_m) if long_m else None,
        inlet_seam_m=inlet_m,
        flush_m=min(mould.cross_bar_m, body.depth_m),  # as high as the frame
        side_m=mould_clearance / 2,
        growth_m=growth_m,
        wax_m=growth_m / 2 if growth_m > making.GROWTH_M else 0.0,
    )
