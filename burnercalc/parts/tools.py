"""Tools, safety gear and small things that are bought beside the burner: once for the shop, no part of its cost."""

from dataclasses import dataclass
from typing import Any

from ..constants import POUND_KG
from ..making.mould import CROSS_BAR_M, CROSS_BARS
from ..tables import by_key
from .baffle_sheet import BaffleSheet
from .blend import Blend
from .body import Body
from .calendar import Calendar
from .cylinders import Cylinders
from .damper_marks import DamperMarks
from .fires import Fires
from .gas_line import GasLine
from .jet import Jet
from .lighting_slide import LightingSlide
from .lighting_steps import LightingSteps
from .mould import Mould
from .pins import Pins
from .proof import FULL_OVER_CHARGE, SCALES_KG, Proof
from .schedule import Schedule
from .steel import Steel

THERMOCOUPLES = 2  # both in the block, at two depths
CLAMPS = 2  # of a mould: one at each end, across both of its cross-bars and the body between them


@dataclass(frozen=True)
class Tool:
    """`price`: of all of them. `slots`: what its size is filled with."""

    key: str
    count: int
    price: float
    slots: dict[str, Any]


@dataclass(frozen=True)
class Tools:
    tools: tuple[Tool, ...]
    cost: float


def tools(
    gas_line: GasLine,
    blend: Blend,
    cylinders: Cylinders,
    body: Body,
    steel: Steel,
    baffle_sheet: BaffleSheet,
    mould: Mould,
    pins: Pins,
    calendar: Calendar,
    schedule: Schedule,
    jet: Jet,
    damper_marks: DamperMarks,
    fires: Fires,
    proof: Proof,
    lighting_slide: LightingSlide,
    lighting_steps: LightingSteps,
    inlet: str,
    corner_drill: float,
    baffle_hole_diameter: float,
    cylinder: str,
    cylinder_count: int,
    burner_count: int,
    lit_by: str,
    pin_kind: str,
    kiln: str,
    oven_places: int,
    inlet_length: float,
    sizes: str,
) -> Tools:
    prices = by_key("tools", "tool")
    listed: list[Tool] = []

    def add(key: str, count: int = 1, **slots: Any) -> None:
        listed.append(Tool(key, count, count * prices[key]["price"], slots))

    add("co_alarm")
    add("flue_meter")
    add("extinguisher")
    add("rcd")
    add("torch", 1 if lit_by == "guard" else burner_count)  # a pilot is lit with it, and then stays alight itself
    if lit_by == "stand":
        add("torch_stand", burner_count)
    add("mask")
    if not gas_line.there and cylinder == "tank":
        add("tank")
    elif not gas_line.there:
        add("cylinder", cylinder_count + proof.spare, size=float(cylinder) * POUND_KG)
    add("manometer")
    add("water_tube")
    add("thermocouple", THERMOCOUPLES)
    add(
        "kiln" if kiln == "yes" else "oven",
        places=oven_places,
        temp=schedule.dry_K if kiln == "yes" else schedule.oven_temp_K,
        length=body.length_m + (2 * steel.angle.width_m if body.round else 0.0),  # the bracket is on it already
        width=body.width_m + 2 * steel.angle.width_m,
        height=body.block_thickness_m - body.grip_m + body.depth_m + inlet_length,
    )
    add("scale")
    if proof.scale_kg and proof.time_s:
        carries_kg, shows_kg = proof.scale_kg
        add("gas_scale", carries=carries_kg, full=proof.full_kg, shows=shows_kg)
    elif blend.ends and cylinders.full_kg is not None and cylinder != "tank":  # which the card has changed by weight
        full_kg = (FULL_OVER_CHARGE - 1) * float(cylinder) * POUND_KG + cylinders.full_kg
        add("charge_scale", carries=next(most for most, _ in SCALES_KG[sizes] if most >= full_kg), full=full_kg)
    add("hole_saw", size=steel.inlet_saw_m)
    add("cutter")
    add(
        "drills",
        relief=corner_drill,
        port=pins.cleaning_drill,
        through=pins.knock_out_drill,
        no_go=pins.no_go_drill,
        baffle=baffle_hole_diameter if baffle_sheet.sheet else None,
        jet=jet.drill_name,
        damper=_damper(damper_marks, fires, lighting_slide, lighting_steps),
    )
    if pin_kind != "wax":  # wax is cut flush and drilled out
        add("punch", through=pins.knock_out_drill)
    add("vacuum")
    add("mirror")
    add("test_plate", length=body.length_m, width=body.width_m, caps=steel.inlet_piece.count, pipe=inlet)
    wood = mould.wood
    lengths = {"length": wood.screw_m, "most": 2 * wood.pieces[0].thickness_m, "base": wood.base_screw_m}
    add("screws", mould.screws * calendar.moulds, across=wood.screw, **lengths)
    add("clamps", CLAMPS * calendar.moulds, open=body.width_m + 2 * CROSS_BAR_M[sizes])
    add("cross_bar", CROSS_BARS * calendar.moulds, side=CROSS_BAR_M[sizes], length=wood.pieces[0].length_m)
    add("sealer")
    return Tools(tuple(listed), sum(tool.price for tool in listed))


def _damper(marks: DamperMarks, fires: Fires, slide: LightingSlide, steps: LightingSteps) -> list[str]:
    """The drills that its hole is made with and its gaps are set by, smallest first, each once."""
    told = [step.damper for step in (*steps.to_low, *steps.to_high)] + [slide.mark, fires.low_mark, marks.high]
    sizes = {one.slots["drill"]: one.slots["size"] for one in told if one.slots.get("drill")}
    return sorted(sizes, key=lambda name: sizes[name])
