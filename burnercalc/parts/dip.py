"""How the level of the mix inside the closed body is found, which stands in the mould with its inlet up."""

from dataclasses import dataclass

from ..catalogue.sentences import Said, said
from .baffle_sheet import BaffleSheet
from .body import Body
from .end_inlet import EndInlet
from .steel import Steel


@dataclass(frozen=True)
class Dip:
    """`how`: from an inlet's rim in the back, from the lowest line of an inlet at the end, or by weighing the mix."""

    how: Said


def dip(body: Body, steel: Steel, baffle_sheet: BaffleSheet, end_inlet: EndInlet, inlet_length: float) -> Dip:
    if end_inlet.axis_m is None:
        down_m = inlet_length + body.depth_m - body.grip_m
        return Dip(said("hole" if baffle_sheet.sheet else "down", length=down_m))
    if baffle_sheet.sheet:
        return Dip(said("weight"))
    leg_m = end_inlet.axis_m - steel.inlet_pipe.bore_m / 2 - body.grip_m
    return Dip(said("leg", length=leg_m))
