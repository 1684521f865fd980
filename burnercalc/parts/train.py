"""The gas and air train, part by part in the order of flow, sized for this burner at high fire."""

from collections import Counter
from dataclasses import dataclass
from functools import partial
from math import ceil
from typing import Any, NamedTuple

from ..making import slide
from ..making import train as making
from ..physics import flame_limits, pipes
from .blower import Blower
from .cylinders import Cylinders
from .firing import Firing
from .gas import Gas
from .gas_line import GasLine
from .gauges import Gauges
from .hand import MIXTURE_SLIP
from .house import House
from .jet import Jet
from .legs import Legs
from .lighting_card import PILOT_S, LightingCard
from .lighting_slide import LightingSlide
from .regulated import Regulated
from .steel import Steel
from .supply import Supply

# What each is there for: it shuts off or keeps what shuts off working; without it a burner runs as well; all else it
# needs, or cannot be set without.
SAFETY = (
    "isolating_cock",
    "cock",
    "filter",
    "trap",
    "low_gas_switch",
    "solenoid",
    "reset",
    "flame_guard",
    "check_valve",
)
SAFETY += ("pilot_valve", "filter_guard", "air_switch", "air_flap")
LINE_HALF = 0.5  # of what the regulator holds, at which a low-gas switch opens at the least; common practice
COMFORT = ("flexible_joint", "union")
# What gas or air does not flow through: it stands on a branch, or before the mouth of it all.
BRANCHES = (
    "gauge",
    "low_gas_switch",
    "pilot_cock",
    "pilot_regulator",
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
ON_BRANCH = ("low_gauge", "pilot_regulator", "pilot_valve", "pilot")  # on that of the part before it
LOOSE = ("gas_nipples", "gauge_tee", "pipe_nipples", "hose_adapter", "barbs")  # between the others, several of them
TEES = ("gauge", "jet_gauge", "gauge_cock", "low_gas_switch", "pilot_cock")  # each on a tee of its own
FEMALE_BRANCHES = (
    "low_gas_switch",
    "pilot_cock",
    "pilot_regulator",
    "pilot_valve",
)  # a nipple goes into each of them from its branch
# Bodies with threads inside, which a nipple joins to a body before them; all but the first cock, which a hose's or
# pipe's own thread goes into.
GAS_BODIES = (
    "isolating_cock",
    "cock",
    "filter",
    "trap",
    "line_regulator",
    "solenoid",
    "needle",
    "check_valve",
    "jet_holder",
)
PIPE_BODIES = ("damper", "air_flap", "mixer", "elbow", "union", "tee", "reducer", "leg_elbow")


class Part(NamedTuple):
    """`key`: its name in the catalogue; `stretch`: gas, air or mixture; `slots`: what its sentence is filled with.

    Its case is `two` for a guard that sees the pilot too and its relay, `behind` for a cock behind the main valve,
    `metered` for a pilot's regulator on the gas company's line, `weak` for a switch that senses too little, `light` for
    a gauge that shows what it is lit at, `nipple` for a leg with room for one that is sold, `threaded` for one that is
    not, `upright` for a union that stands over its inlet.
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
    gas_line: GasLine,
    firing: Firing,
    jet: Jet,
    cylinders: Cylinders,
    blower: Blower,
    lighting_slide: LightingSlide,
    lighting_card: LightingCard,
    gauges: Gauges,
    supply: Supply,
    regulated: Regulated,
    house: House,
    steel: Steel,
    legs: Legs,
    equivalence_ratio: float,
    mix_pipe: str,
    mix_pipe_length: float,
    mix_pipe_elbows: int,
    stock_lengths: tuple[float, ...],
    inlet: str,
    inlets: int,
    lit_by: str,
    cylinder_count: int,
    burner_count: int,
    sizes: str,
) -> Train:
    size, guarded = supply.pipe, lit_by == "guard"
    outlet_Pa = max(supply.outlet_Pa.value, regulated.holds_Pa.value)
    hose = {"bore": supply.hose_m, "length": making.HOSE_LENGTH_M, "drop": supply.hose_drop_Pa}
    from_cylinder = not gas_line.there
    rated_Pa = making.rated_Pa(pressure_Pa=outlet_Pa, unit=sizes, from_cylinder=from_cylinder)
    holds = {"capacity": making.REGULATOR_ROOM * firing.rate_W, "outlet": outlet_Pa}
    if from_cylinder:
        holds["inlet"] = max(cylinders.least_Pa, outlet_Pa)
        parts = [*_from_cylinder(firing, cylinder_count, burner_count, size, holds, hose, rated_Pa, sizes)]
        parts += [_part("gas", size, "isolating_cock" if guarded else "cock", rated=rated_Pa)]
        parts += [_part("gas", size, "filter")]
    else:
        low_Pa = outlet_Pa * _line_share(equivalence_ratio, gas)
        parts = [*_from_line(house, gas_line, size, supply, holds, hose, rated_Pa, low_Pa)]
    if guarded:
        parts += _pilot(rated_Pa, outlet_Pa, supply, gas_line)
    behind = gas_line.isolated(lit_by)
    parts += _to_jet(
        supply, jet, blower, lighting_slide, lighting_card, gauges, rated_Pa, not from_cylinder, guarded, behind
    )
    parts += [*_gas_fittings(parts, size, mix_pipe, from_cylinder)]
    parts += _air(blower, lighting_card, lighting_slide, mix_pipe)
    parts += _to_inlets(lighting_card, mix_pipe, mix_pipe_length, mix_pipe_elbows, stock_lengths)
    parts += _inlets(steel, legs, mix_pipe, inlet, inlets)
    parts += [*_pipe_nipples(parts, steel, mix_pipe, inlet, inlets)]

    def cost(purpose: str) -> float:
        return sum(part.price for part in parts if part.purpose == purpose)

    return Train(
        from_cylinder=from_cylinder,
        parts=tuple(parts),
        switch_Pa=lighting_card.switch_Pa,
        safety_cost=cost("safety"),
        needed_cost=cost("needed"),
        comfort_cost=cost("comfort"),
    )


def _part(stretch, pipe, key, count=1, **slots):
    price = count * making.price(key, pipe)
    return Part(key, stretch, count, _purpose(key), price, {"pipe": pipe, **slots}, _case(slots))


def _from_cylinder(firing, cylinder_count, burner_count, size, regulated, hose, rated_Pa, sizes):
    part = partial(_part, "gas", size)
    connectors = part("connector", ceil(cylinder_count / burner_count), rate=firing.installed_W)
    if burner_count == cylinder_count == 1:
        yield connectors
    else:
        yield connectors._replace(case="pigtail")
        yield part("manifold", cylinders=cylinder_count, burners=burner_count)
    yield part("regulator", **regulated)
    yield part("gauge", scale=making.gauge_Pa(pressure_Pa=regulated["outlet"], unit=sizes, from_cylinder=True))
    yield part("hose", **hose)
    if making.LEFT in making.HOSE_ENDS[sizes]:
        yield part("hose_adapter", 2)


def _line_share(equivalence_ratio, gas):
    """Of what the regulator holds, at which the low-gas switch opens: gas goes with the root of its pressure through
    all that stands between regulator and chamber, so the mixture of any setting leans out alike; before it is too lean
    to burn where that comes sooner than at half."""
    lean, _ = flame_limits.flammable_equivalence_ratios(gas.composition)
    return max(LINE_HALF, ((lean + MIXTURE_SLIP) / equivalence_ratio) ** 2)


def _from_line(house, gas_line, size, supply, regulated, hose, rated_Pa, low_Pa):
    part = partial(_part, "gas", size)
    fixed = supply.outlet_Pa.value > making.CONNECTOR_MOST_PA
    lp = "" if gas_line.metered else "lp"
    if fixed or not house.pipes:
        yield part("house_pipe", flow=house.all_m3_s, case=f"{lp}_fitter".lstrip("_"))
    else:
        yield part("house_pipe", flow=house.all_m3_s, drop=house.pipe_Pa, runs=house.pipes, case=lp)
    yield part("isolating_cock", rated=rated_Pa)
    yield part("trap")
    if supply.regulated:
        yield part("line_regulator", **regulated)
    if fixed:
        yield part("rigid_pipe", bore=hose["bore"], drop=hose["drop"])
    else:
        yield part("line_connector", **hose)
    yield part("low_gas_switch", outlet=low_Pa)


def _pilot(rated_Pa, outlet_Pa, supply, gas_line):
    """Its gas comes from before the main valve, and does not pass the firing cock."""
    part = partial(_part, "gas", making.BRANCH)
    yield part("pilot_cock")
    if supply.pilot_regulated:
        regulator = part("pilot_regulator", inlet=outlet_Pa)
        yield regulator._replace(case="metered") if gas_line.metered else regulator
    yield part("pilot_valve", rated=rated_Pa)
    yield part("pilot")


def _to_jet(supply, jet, blower, lighting_slide, lighting_card, gauges, rated_Pa, sloping, guarded, behind):
    part = partial(_part, "gas", supply.pipe)

    def watching(key, more, **slots):
        """Where it watches a pilot too, with what that takes more."""
        one = part(key, **slots)
        return one._replace(price=one.price + making.price(more, supply.pipe), case="two") if guarded else one

    yield part("solenoid", supply.valves, rated=rated_Pa)
    yield watching("reset", "pilot_button", trial=lighting_card.trial_s, pilot=PILOT_S)
    yield watching("flame_guard", "pilot_sensor")
    if behind:
        yield part("cock", rated=rated_Pa)._replace(case="behind")
    yield part("needle")
    yield part("check_valve", gas=gauges.shown_Pa(jet.supply_Pa), air=blower.whole.pressure_Pa(0.0))
    low_Pa, high_Pa = map(gauges.shown_Pa, (gauges.low_fire_Pa, jet.supply_Pa))  # as the cards have them
    yield part("jet_gauge", scale=gauges.jet_Pa, low=low_Pa, high=high_Pa)
    if gauges.small:
        lit = {} if lighting_slide.gas_Pa is None else {"light": lighting_slide.gas_Pa.value}
        yield _part("gas", "1/4", "gauge_cock")
        low = {"low": low_Pa, **lit} if gauges.reads_low or not lit else {"alone": lit["light"]}
        case = next((case for case in CASES if case in low), "")
        if sloping:
            tube = part("low_gauge", scale=gauges.low_Pa, **low, case=f"tube_{case}".rstrip("_"))
            yield tube._replace(price=making.price("tube_gauge", supply.pipe))
        else:
            yield part("low_gauge", scale=gauges.low_Pa, **low)
    yield part("jet_holder", drill=jet.drill_name or "-")


def _gas_fittings(parts, size, mix_pipe, from_cylinder):
    """What joins the parts before the jet to each other and to the mix pipe."""
    part = partial(_part, "gas", size)
    steps = making.reducers(size, mix_pipe) if _wider(size, mix_pipe) else ()
    if steps:
        yield _part("gas", size, "jet_reducer", len(steps), sizes=(size, *(to for _, to in steps)))
    elif size != mix_pipe:
        bushed = making.bushings(mix_pipe, size)
        yield _part("gas", mix_pipe, "bushing", len(bushed), sizes=(mix_pipe, *(to for _, to in bushed)))
    tees = sum(one.key in TEES for one in parts)
    yield part("gauge_tee", tees)
    bodies = sum(one.count for one in parts if one.key in GAS_BODIES) - 1
    branches = Counter({making.BRANCH: sum(one.key in FEMALE_BRANCHES for one in parts)})
    branches += Counter(to for _, to in steps)  # out of each reducer
    # A connector ends in a thread outside.
    for pipe, count in (Counter({size: bodies + tees - (not from_cylinder)}) + branches).items():
        yield _part("gas", pipe, "gas_nipples", count)


def _wider(pipe, other):
    return pipes.pipe(pipe).od_m > pipes.pipe(other).od_m


def _air_switch(stretch, lighting_card, mix_pipe):
    weak = {"weak": lighting_card.pipe_switch_Pa} if lighting_card.switch_before else {}
    return _part(stretch, mix_pipe, "air_switch", pressure=lighting_card.switch_Pa, **weak)


def _air(blower, lighting_card, lighting_slide, mix_pipe):
    part = partial(_part, "air", mix_pipe)
    yield part("filter_guard")
    if blower.burners > 1:
        bore_m = making.header_bore_m(branch_bore_m=pipes.pipe(mix_pipe).bore_m, branches=blower.burners)
        yield part("flexible_joint", bore=bore_m, case="shared")
        yield part("header", burners=blower.burners, bore=bore_m)
    else:
        yield part("blower_plate")
        yield part("flexible_joint", instead=making.price("coupling", mix_pipe))
    yield part("tap_nipple")
    yield _part("air", "1/8", "tap")
    if lighting_card.switch_before:
        yield _air_switch("air", lighting_card, mix_pipe)
    width_m, length_m = slide.plate_m(pipes.pipe(mix_pipe).bore_m)
    hole_m = lighting_slide.size_m if lighting_slide.kind == "hole" else None
    thick = {"thick": slide.HOLE_THICKEST * hole_m, "case": "hole"} if hole_m else {}
    yield part("damper", width=width_m, length=length_m, **thick)
    yield part("air_flap")


def _to_inlets(lighting_card, mix_pipe, mix_pipe_length, mix_pipe_elbows, stock_lengths):
    part = partial(_part, "mixture", mix_pipe)
    yield part("mixer")
    pieces, sold_m = making.pipe_bought(length_m=mix_pipe_length, stock_lengths_m=stock_lengths)
    joined = {"pieces": pieces, "case": "joined"} if pieces > 1 else {}
    price = making.pipe_price(part="mix_pipe", pipe=mix_pipe, pieces=pieces, sold_m=sold_m)
    yield part("mix_pipe", length=mix_pipe_length, sold=sold_m, **joined)._replace(price=price)
    yield _part("mixture", "1/8", "mix_tap")
    yield _part("mixture", "1/8", "barbs", 2)
    if not lighting_card.switch_before:
        yield _air_switch("mixture", lighting_card, mix_pipe)
    if mix_pipe_elbows:
        yield part("elbow", mix_pipe_elbows)
    yield part("union")


def _inlets(steel, legs, mix_pipe, inlet, inlets):
    """From the mix pipe into the body, by legs where it has several inlets."""
    if steel.inlet_spacing_m is not None:
        yield _part("mixture", mix_pipe, "tee")
    steps = making.reducers(mix_pipe, inlet)
    if steps:
        widest = inlet if _wider(inlet, mix_pipe) else mix_pipe
        sizes = (mix_pipe, *(far for _, far in steps))
        yield _part("mixture", widest, "reducer", inlets * len(steps), sizes=sizes)
    if steel.inlet_spacing_m is not None:
        part, nipple = partial(_part, "mixture", inlet, count=inlets), {}
        if legs.nipple_m is not None:
            nipple = {"threaded": legs.nipple_m} if legs.threaded else {"nipple": legs.sold_m}
        yield part("leg", length=legs.leg_m, over=legs.over_m, **nipple)
        yield part("leg_union", **({"upright": True} if legs.union_upright else {}))
        yield part("leg_elbow")


def _pipe_nipples(parts, steel, mix_pipe, inlet, inlets):
    """Between the parts of air and mixture.

    Two less, for the mix pipe has threads outside and a long one carries the tap; behind a reducer they have its size,
    but the last one of a single inlet stands on the inlet's own.
    """
    steps = making.reducers(mix_pipe, inlet)
    behind = Counter({far: inlets for _, far in (steps if steel.inlet_spacing_m is not None else steps[:-1])})
    bodies = sum(one.count for one in parts if one.key in PIPE_BODIES)
    for pipe, count in {mix_pipe: bodies - 2 - behind.total(), **behind}.items():
        yield _part("mixture", pipe, "pipe_nipples", count)


def _purpose(key):
    return "safety" if key in SAFETY else "comfort" if key in COMFORT else "needed"


def _case(slots):
    """Which of a part's sentences fits."""
    return slots.get("case") or next((case for case in CASES if case in slots), "")
