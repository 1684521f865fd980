"""The gas and air train, part by part in the order of flow, sized for this burner at high fire."""

from collections import Counter
from dataclasses import dataclass
from math import ceil
from typing import Any

from ..making import train as making
from ..physics import pipes
from .blower import Blower
from .cylinders import Cylinders
from .firing import Firing
from .gas import Gas
from .gauges import Gauges
from .jet import Jet
from .legs import Legs
from .lighting_card import LightingCard
from .lighting_slide import LightingSlide
from .steel import Steel
from .supply import Supply

# What each is there for: it shuts off or keeps what shuts off working; without it a burner runs as well; all else it
# needs, or cannot be set without.
SAFETY = ("cock", "filter", "trap", "low_gas_switch", "solenoid", "reset", "flame_guard", "check_valve")
SAFETY += ("pilot_valve", "filter_guard", "air_switch", "air_flap")
COMFORT = ("gauge", "flexible_joint", "union")
# What gas or air does not flow through: it stands on a branch, or before the mouth of it all.
BRANCHES = (
    "gauge",
    "low_gas_switch",
    "pilot_cock",
    "pilot_valve",
    "pilot",
    "reset",
    "flame_guard",
    "jet_gauge",
    "gauge_cock",
    "low_gauge",
    "air_switch",
    "tap",
    "mix_tap",
)
CASES = ("weak", "light", "alone", "nipple", "threaded", "upright")  # sentences for where such a slot is filled
ON_BRANCH = ("low_gauge", "pilot_valve", "pilot")  # on that of the part before it
LOOSE = ("gas_nipples", "gauge_tee", "pipe_nipples", "hose_adapter")  # between the others, several of them
TEES = ("gauge", "jet_gauge", "gauge_cock", "low_gas_switch", "pilot_cock")  # each on a tee of its own
FEMALE_BRANCHES = ("low_gas_switch", "pilot_cock", "pilot_valve")  # a nipple goes into each of them from its branch
# Bodies with threads inside, which a nipple joins to a body before them.
GAS_BODIES = ("filter", "trap", "line_regulator", "solenoid", "needle", "check_valve", "jet_holder")
PIPE_BODIES = ("damper", "air_flap", "mixer", "elbow", "union", "tee", "reducer", "leg_elbow")


@dataclass(frozen=True)
class Part:
    """`key`: its name in the catalogue; `stretch`: gas, air or mixture; `slots`: what its sentence is filled with.

    Its case is `weak` for a switch that senses too little, `light` for a gauge that shows what it is lit at, `nipple`
    for a leg with room for one that is sold, `threaded` for one that is not, `upright` for a union that stands over its
    inlet.
    """

    key: str
    stretch: str
    count: int
    purpose: str  # safety, needed or comfort
    price: float  # of all of them
    slots: dict[str, Any]
    case: str = ""  # of its sentence, where it has several


@dataclass(frozen=True)
class Train:
    """`parts`: in the order of flow, gas, then air, then mixture. Prices are examples."""

    from_cylinder: bool
    parts: tuple[Part, ...]
    switch_Pa: float  # at which the air switch shuts the gas
    safety_cost: float
    needed_cost: float
    comfort_cost: float


def train(
    gas: Gas,
    firing: Firing,
    jet: Jet,
    cylinders: Cylinders,
    blower: Blower,
    lighting_slide: LightingSlide,
    lighting_card: LightingCard,
    gauges: Gauges,
    supply: Supply,
    steel: Steel,
    legs: Legs,
    mix_pipe: str,
    mix_pipe_length: float,
    mix_pipe_elbows: int,
    inlet: str,
    inlets: int,
    lit_by: str,
    cylinder_count: int,
    burner_count: int,
    sizes: str,
) -> Train:
    high_Pa = jet.supply_Pa
    hose_m, drop_Pa, size, valves, outlet_Pa = (
        supply.hose_m,
        supply.hose_drop_Pa,
        supply.pipe,
        supply.valves,
        supply.outlet_Pa,
    )
    capacity = making.REGULATOR_ROOM * firing.rate_W
    from_cylinder = gas.liquid is not None
    rated = {"rated": making.rated_Pa(pressure_Pa=outlet_Pa, unit=sizes, from_cylinder=from_cylinder)}
    shared = burner_count > 1
    switch = {"pressure": lighting_card.switch_Pa}
    if lighting_card.switch_before:
        switch["weak"] = lighting_card.pipe_switch_Pa

    def gauge_Pa(pressure_Pa: float) -> float:
        return making.gauge_Pa(pressure_Pa=pressure_Pa, unit=sizes, from_cylinder=from_cylinder)

    listed: list[tuple[str, str, int, str, dict[str, Any]]] = []

    def add(stretch: str, key: str, pipe: str = size, count: int = 1, **slots: Any) -> None:
        listed.append((stretch, key, count, pipe, {"pipe": pipe, **slots}))

    if from_cylinder:
        add("gas", "connector", count=ceil(cylinder_count / burner_count), rate=firing.installed_W)
        if shared or cylinder_count > 1:
            add("gas", "manifold", cylinders=cylinder_count, burners=burner_count)
        add("gas", "regulator", capacity=capacity, outlet=outlet_Pa, inlet=max(cylinders.least_Pa, outlet_Pa))
        add("gas", "gauge", scale=gauge_Pa(outlet_Pa))
        add("gas", "hose", bore=hose_m, length=making.HOSE_LENGTH_M, drop=drop_Pa)
        if making.LEFT in making.HOSE_ENDS[sizes]:
            add("gas", "hose_adapter", count=2)
        add("gas", "cock", **rated)
        add("gas", "filter")
    else:
        add("gas", "cock", **rated)
        add("gas", "trap")
        by = "fixed" if outlet_Pa > making.CONNECTOR_MOST_PA else "house"
        add("gas", "line_regulator", capacity=capacity, outlet=outlet_Pa, case=by)
        if by == "fixed":
            add("gas", "rigid_pipe", bore=hose_m, drop=drop_Pa)
        else:
            add("gas", "line_connector", bore=hose_m, length=making.HOSE_LENGTH_M, drop=drop_Pa)
        add("gas", "low_gas_switch", outlet=0.5 * gauges.low_fire_Pa)
    if lit_by == "guard":  # its gas comes from before the main valve
        add("gas", "pilot_cock", making.BRANCH)
        add("gas", "pilot_valve", making.BRANCH, **rated)
        add("gas", "pilot", making.BRANCH)
    add("gas", "solenoid", count=valves, **rated)
    add("gas", "reset")
    add("gas", "flame_guard")
    add("gas", "needle")
    add("gas", "check_valve", gas=high_Pa, air=blower.whole.pressure_Pa(0.0))
    lit = {} if lighting_slide.gas_Pa is None else {"light": lighting_slide.gas_Pa.value}
    add("gas", "jet_gauge", scale=gauges.jet_Pa, low=gauges.low_fire_Pa, high=high_Pa)
    if gauges.small:
        add("gas", "gauge_cock", "1/4")
        low = {"low": gauges.low_fire_Pa, **lit}
        reads = low if gauges.reads_low or not lit else {"alone": lit["light"]}
        add("gas", "low_gauge", scale=gauges.low_Pa, **reads)
    add("gas", "jet_holder", drill=jet.drill_name or "-")
    steps = making.bushings(mix_pipe, size)
    if steps:
        add("gas", "bushing", mix_pipe, count=len(steps), sizes=(mix_pipe, *(to for _, to in steps)))
    tees = sum(key in TEES for _, key, *_ in listed)
    add("gas", "gauge_tee", count=tees)
    bodies = sum(count for _, key, count, *_ in listed if key in GAS_BODIES)
    branches = Counter({making.BRANCH: sum(key in FEMALE_BRANCHES for _, key, *_ in listed)})
    # A connector ends in a thread outside.
    for pipe, count in (Counter({size: bodies + tees - (not from_cylinder)}) + branches).items():
        add("gas", "gas_nipples", pipe, count=count)
    add("air", "filter_guard", mix_pipe)
    if blower.burners > 1:
        bore_m = making.header_bore_m(branch_bore_m=pipes.pipe(mix_pipe).bore_m, branches=blower.burners)
        add("air", "flexible_joint", mix_pipe, bore=bore_m, case="shared")
        add("air", "header", mix_pipe, burners=blower.burners, bore=bore_m)
    else:
        add("air", "blower_plate", mix_pipe)
        add("air", "flexible_joint", mix_pipe)
    add("air", "tap", "1/8")
    if lighting_card.switch_before:
        add("air", "air_switch", mix_pipe, **switch)
    add("air", "damper", mix_pipe)
    add("air", "air_flap", mix_pipe)
    add("mixture", "mixer", mix_pipe)
    add("mixture", "mix_pipe", mix_pipe, length=mix_pipe_length)
    add("mixture", "mix_tap", "1/8")
    if not lighting_card.switch_before:
        add("mixture", "air_switch", mix_pipe, **switch)
    if mix_pipe_elbows:
        add("mixture", "elbow", mix_pipe, count=mix_pipe_elbows)
    add("mixture", "union", mix_pipe)
    if steel.inlet_spacing_m is not None:
        add("mixture", "tee", mix_pipe)
    steps = making.reducers(mix_pipe, inlet)
    if steps:
        widest = max(mix_pipe, inlet, key=making.pipe_names().index)
        add("mixture", "reducer", widest, count=inlets * len(steps), sizes=(mix_pipe, *(far for _, far in steps)))
    if steel.inlet_spacing_m is not None:
        nipple = (
            {} if legs.nipple_m is None else {"threaded": legs.nipple_m} if legs.threaded else {"nipple": legs.sold_m}
        )
        add("mixture", "leg", inlet, count=inlets, length=legs.leg_m, over=legs.over_m, **nipple)
        add("mixture", "leg_union", inlet, count=inlets, **({"upright": True} if legs.union_upright else {}))
        add("mixture", "leg_elbow", inlet, count=inlets)
    bodies = sum(count for _, key, count, *_ in listed if key in PIPE_BODIES)
    # One less, for the mix pipe has threads outside; behind a reducer they have its size, but the last one of a single
    # inlet stands on the inlet's own.
    behind = Counter({far: inlets for _, far in (steps if steel.inlet_spacing_m is not None else steps[:-1])})
    for pipe, count in {mix_pipe: bodies - 1 - behind.total(), **behind}.items():
        add("mixture", "pipe_nipples", pipe, count=count)
    parts = tuple(
        Part(key, stretch, count, _purpose(key), count * making.price(key, pipe), slots, _case(slots))
        for stretch, key, count, pipe, slots in listed
    )

    def cost(purpose: str) -> float:
        return sum(part.price for part in parts if part.purpose == purpose)

    return Train(
        from_cylinder=from_cylinder,
        parts=parts,
        switch_Pa=lighting_card.pipe_switch_Pa,
        safety_cost=cost("safety"),
        needed_cost=cost("needed"),
        comfort_cost=cost("comfort"),
    )


def _purpose(key):
    return "safety" if key in SAFETY else "comfort" if key in COMFORT else "needed"


def _case(slots):
    """Which of a part's sentences fits."""
    return slots.get("case") or next((case for case in CASES if case in slots), "")
