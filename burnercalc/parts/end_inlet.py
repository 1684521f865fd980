"""An inlet at one end of the body: where its pipe stands, and whether it clears the mould's top edge."""

from dataclasses import dataclass

from ..making import body as making
from .baffle_sheet import BaffleSheet
from .body import Body
from .mould import Mould
from .plenum import Plenum
from .steel import Steel


@dataclass(frozen=True)
class EndInlet:
    """All None for an inlet in the middle of the back.

    `axis_m`: from the outside of the face to the pipe's axis; `over_mould_m`: from the top edge of the mould up to the
    pipe, the body at its mark, negative where the pipe would sit on the edge.
    """

    axis_m: float | None
    over_mould_m: float | None


def end_inlet(
    body: Body, plenum: Plenum, steel: Steel, baffle_sheet: BaffleSheet, mould: Mould, inlet_position: str
) -> EndInlet:
    if inlet_position != "end":
        return EndInlet(None, None)
    axis_m = body.grip_m + plenum.height_m / 2
    if baffle_sheet.sheet:  # between the baffle's ridge and the back
        axis_m = body.depth_m - body.wall_m - max(baffle_sheet.gap_m, 0.0) - steel.inlet_saw_m / 2
    return EndInlet(
        axis_m,
        making.pipe_over_mould_m(
            block_thickness_m=body.block_thickness_m,
            grip_m=body.grip_m,
            axis_m=axis_m,
            pipe_outside_m=steel.inlet_pipe.od_m,
            mould_height_m=mould.height_m,
        ),
    )
