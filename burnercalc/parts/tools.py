"""Tools, safety gear and small things that are bought beside the burner: once for the shop, no part of its cost."""

from dataclasses import dataclass
from typing import Any

from ..constants import POUND_KG
from ..tables import by_key
from .body import Body
from .calendar import Calendar
from .gas import Gas
from .mould import Mould
from .pins import Pins
from .steel import Steel

THERMOCOUPLES = 2  # one in the block, one in the chamber


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
    gas: Gas,
    body: Body,
    steel: Steel,
    mould: Mould,
    pins: Pins,
    calendar: Calendar,
    inlet: str,
    corner_drill: float,
    cylinder: str,
    cylinder_count: int,
    burner_count: int,
    lit_by: str,
) -> Tools:
    prices = by_key("tools", "tool")
    listed: list[Tool] = []

    def add(key: str, count: int = 1, **slots: Any) -> None:
        listed.append(Tool(key, count, count * prices[key]["price"], slots))

    add("co_alarm")
    add("extinguisher")
    add("torch", 1 if lit_by == "guard" else burner_count)  # a pilot is lit with it, and then stays alight itself
    if lit_by == "stand":
        add("torch_stand", burner_count)
    add("mask")
    if gas.liquid is not None and cylinder == "tank":
        add("tank")
    elif gas.liquid is not None:
        add("cylinder", cylinder_count, size=float(cylinder) * POUND_KG)
    add("manometer")
    if gas.liquid is None:
        add("water_tube")
    add("thermocouple", THERMOCOUPLES)
    add("scale")
    add("hole_saw", size=steel.inlet_saw_m)
    add(
        "drills",
        relief=corner_drill,
        port=pins.cleaning_drill,
        through=pins.knock_out_drill,
        no_go=pins.no_go_drill,
    )
    add("test_plate", length=body.length_m, width=body.width_m, plugs=steel.inlet_piece.count, pipe=inlet)
    add("screws", mould.screws * calendar.moulds, length=mould.screw_m)
    add("sealer")
    return Tools(tuple(listed), sum(tool.price for tool in listed))
