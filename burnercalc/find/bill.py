"""What must be bought for a design in this shop, and what that costs: what lies there already costs nothing.

It is the shopping list without what is at hand, and what no list of a burner holds: cylinders, and a drill for the jet.
How a burner is lit decides little of it and is dear to work out, so the least that a list comes to is known before.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from math import ceil, inf
from types import SimpleNamespace
from typing import Any

from ..burner import Burner
from ..design import parsed
from ..making.stock import NOISE_M
from ..parts import PARTS
from ..parts.cost import Cost
from ..parts.first_fire import of_low_fire
from ..parts.house import House
from ..parts.supply import Supply
from ..parts.train import Part, Train
from ..physics.band import Band
from .choices import Option, blocks_at_once, is_of
from .have import Have, Piece

PLATES = ("steel_0", "steel_1", "steel_2", "steel_3")  # lines of the four walls of a welded box


@dataclass(frozen=True)
class Bought:
    """One thing to buy. `key`: the line of the design's cost that it stands in, or "" beside them; `count`: of how
    many that line holds; `used`: what is used up of it, where it is cut from bars."""

    key: str
    words: str
    price: float
    count: int = 1
    of: int = 1
    used: float | None = None


@dataclass(frozen=True)
class Bill:
    """`own`: {entry of the shopping list: how many of it are at hand}; `short`: {kind of which some lie there: how many
    are too few, and what they cost}; `lacking`: of these the kinds of which none may be bought.

    `listed`: of the whole sum what stands on the shopping list.
    """

    things: tuple[Bought, ...]
    own: Mapping[str, float]
    to_spend: float
    listed: float
    short: Mapping[str, tuple[int, float]]
    lacking: Mapping[str, int]


def bill(
    burner: Burner,
    chosen: Mapping[str, Option],
    have: Have,
    figures: Mapping[str, float],
    parts: tuple[Cost, Train] | None = None,
    fed: bool = True,
) -> Bill:
    """The entries of the shopping list that are not at hand, and what the chosen options say must be bought besides.

    `parts`: cost and train in place of those that are worked out; `fed`: whether its gas is chosen, without which every
    regulator at hand may do.
    """
    own = _own(chosen, have, figures) | (_regulators(burner, have, parts is None) if fed else {})
    batch = burner.part("batch_size")
    things: dict[str, Bought | None] = {}  # None: the parts of the train together, each sum in `sums`
    sums: dict[str, float] = {}
    short: dict[str, tuple[int, float]] = {}
    missing = pins_missing(burner, have) if own.get("pins") else 0
    cost, train = parts or (burner.part("cost"), burner.part("train"))
    for entry in cost.entries(train, batch):
        if entry.key == "pins" and missing:
            own["pins"] = max(0, entry.count - ceil(missing / max(1, burner.part("pins").per_stick)))
        left = int(max(0, entry.count - own.get(entry.key, 0)))
        kind = COUNTED.get(entry.key)
        if left and kind and have.of(kind):
            count, price = short.get(kind, (0, 0.0))
            of_it = missing if kind == "pins" and missing else left
            short[kind] = count + of_it, price + (entry.price or 0.0) * left / entry.count
        if left and entry.price:
            line, price = entry.line, entry.price * left / entry.count
            if entry.part is None:
                used = line.used_cost * batch if line.key.startswith(("steel", "angle")) else None
                things[line.key] = Bought(line.key, line.key, price, left, entry.count, used)
            else:
                things[line.key] = None
                sums[line.key] = sums.get(line.key, 0.0) + price
    listed = tuple(one or Bought(key, key, sums[key]) for key, one in things.items())
    one_of = " for one chamber" if batch > burner.part("burner_count") else ""  # trains are bought for all of them
    besides = tuple(
        Bought("", f"{one.buy}{one_of if axis == 'cylinder' else ''}", one.price)
        for axis, one in chosen.items()
        if one.buy and axis in ("cylinder", "jet")
    )
    on_the_list = sum(thing.price for thing in listed)
    lacking = {kind: count for kind, (count, _) in short.items() if not have.may_buy(kind)}
    to_spend = on_the_list + sum(thing.price for thing in besides)
    return Bill((*listed, *besides), own, to_spend, on_the_list, short, lacking)


# Of a burner of which is not known how it is lit: one gauge, and nothing that changes the list but by what is written.
NOT_LIT = {
    "lighting_slide": SimpleNamespace(gas_Pa=None, kind="gap"),
    "regulated": SimpleNamespace(holds_Pa=Band(0.0, 0.0, 0.0)),
    "lighting_card": SimpleNamespace(switch_Pa=0.0, switch_before=False, pipe_switch_Pa=0.0, trial_s=0.0),
    "gauges": SimpleNamespace(jet_Pa=0.0, low_Pa=None, low_fire_Pa=0.0, small=False, shown_Pa=float),
}
THIN_JET = SimpleNamespace(supply_Pa=1e6, drill_name=None)
# Of one of which the gas is not chosen: the thinnest hose.
NOT_FED = {
    **NOT_LIT,
    "house": House(0.0, 0.0),  # by what the line gives, which goes with the jet; its pipe is the fitter's, at no price
    "jet": THIN_JET,
    "cylinders": SimpleNamespace(least_Pa=1e6),
    "cylinder_count": 1,
}
# Of one of which only the fire is chosen: thin pipes that ask for no reducer, and one straight inlet.
NOT_BUILT: dict[str, Any] = {
    **NOT_FED,
    "steel": SimpleNamespace(inlet_spacing_m=None),
    "legs": None,
    "mix_pipe": "1/4",
    "inlet": "1/4",
    "mix_pipe_length": 0.1,
    "mix_pipe_elbows": 0,
}
NEEDLE = 1.5  # times what is asked, which a needle valve takes the rest of without a hair's turn; common practice
# Entries of the list of which as many must be at hand as it has, and what they are of.
COUNTED = {"pins": "pins", "bag": "bag", "blower": "blower", "regulator": "regulator", "line_regulator": "regulator"}
# Entries of what every burner takes, and what they are of: where nothing of it lies there it is taken as sold.
TAKEN = {"bag": "bag", "regulator": "regulator", "line_regulator": "regulator", "jet_holder": "drill", "mould": "board"}
OF_ITS_OWN = {"regulator": ("regulator", "line_regulator"), "pipe": ("mix_pipe",)}  # parts of the train, by their kind


def thin_train(burner: Burner) -> Train:
    """The cheapest train of a fire, of which nothing else is chosen."""
    found: Train = burner.call(PARTS["train"], **NOT_BUILT, blower=_some_blower(burner), supply=_thin(burner))
    return found


def least_of_a_fire(burner: Burner, have: Have, train: Train) -> float:
    """What is to be spent at least on burners of which only the fire is chosen: above all their trains."""
    batch = burner.part("batch_size")
    found = batch * burner.part("price_sundries")
    if burner.part("price_train") != "listed":
        found += batch * burner.part("price_train")
    else:
        there = {part for kind, parts in OF_ITS_OWN.items() if have.of(kind) for part in parts}
        found += batch * sum(part.price for part in train.parts if part.key not in there)
    found += 0.0 if have.of("board") else burner.part("price_mould")
    found += 0.0 if have.of("bag") else burner.part("price_bag")
    return float(found if have.of("blower") else found + burner.part("price_blower"))


def least_of_a_box(
    burner: Burner, chosen: Mapping[str, Option], have: Have, figures: Mapping[str, float], train: Train | None = None
) -> float:
    """What is to be spent at least on a design of which all is chosen but air and gas, or but its `train`.

    Bushings are left out: to the thin hose that is taken here there may be more of them.
    """
    blower = _some_blower(burner)
    if train is None:
        found: Train = burner.call(PARTS["train"], **NOT_FED, blower=blower, supply=_thin(burner))
        parts = tuple(part for part in found.parts if part.key != "bushing")
        safety, needed, comfort = (_of(parts, why) for why in ("safety", "needed", "comfort"))
        train = replace(found, parts=parts, safety_cost=safety, needed_cost=needed, comfort_cost=comfort)
    bought = {"train": train, "blower": blower, "first_fire": burner.call(of_low_fire)}
    cost = burner.call(PARTS["cost"], purchases=burner.call(PARTS["purchases"], **bought))
    at_hand = dict.fromkeys(("mix pipe", "blower", "jet"), Option(()))  # where there is one, until another is chosen
    return bill(burner, {**at_hand, **chosen}, have, figures, (cost, train), fed=False).to_spend


def _some_blower(burner: Burner) -> SimpleNamespace:
    """One that feeds as many burners as any does."""
    burners = burner.part("burner_count") if burner.part("blowers") == "one" else 1
    return SimpleNamespace(burners=burners, whole=SimpleNamespace(pressure_Pa=lambda flow_m3_s: 0.0))


def _thin(burner: Burner) -> Any:
    """The thinnest hose, and parts to go with it; for a pilot and on a line no regulator, which may be none to buy."""
    return replace(thin_supply(burner), regulated=not burner.part("gas_line").there, pilot_regulated=False)


def thin_supply(burner: Burner) -> Supply:
    """To a jet that asks for so much that the thinnest hose does."""
    found: Supply = burner.part_with("supply", jet=THIN_JET, line_pressure=inf)
    return found


def _of(parts: tuple[Part, ...], purpose: str) -> float:
    return sum(part.price for part in parts if part.purpose == purpose)


def least_bill(burner: Burner, chosen: Mapping[str, Option], have: Have, figures: Mapping[str, float]) -> Bill:
    """What must be bought at least for a design of which all is chosen, before it is known how it is lit, if nothing
    keeps it from low fire; else it is a fault, and what `first_fire_gas` comes to may be spent less."""
    train = burner.call(PARTS["train"], **NOT_LIT)
    bought = {"train": train, "first_fire": burner.call(of_low_fire)}
    cost = burner.call(PARTS["cost"], purchases=burner.call(PARTS["purchases"], **bought))
    return bill(burner, chosen, have, figures, (cost, train))


def first_fire_gas(burner: Burner) -> float:
    """What the gas of all first fires costs."""
    cost: float = burner.call(of_low_fire).fuel_cost
    return burner.part("batch_size") * cost


def _own(chosen: Mapping[str, Option], have: Have, figures: Mapping[str, float]) -> dict[str, float]:
    """{entry of the shopping list: how many are at hand}; of a size that is named there is as much as it takes, of
    blowers, regulators and bags as many as are named."""
    own: dict[str, float] = {}
    there = {axis for axis, one in chosen.items() if not one.buy}

    def at_hand(axis: str, *kinds: str) -> bool:
        return axis in there and bool(have.of(*kinds))

    if at_hand("body", "tube", "plate", "round"):
        plates = dict(chosen["body"].texts)["body_kind"] == "plates"
        own |= dict.fromkeys(PLATES if plates else PLATES[:1], inf)
    for axis, kind, key in (
        ("ports", "pins", "pins"),
        ("inlet", "pipe", "nipple"),
        ("mix pipe", "pipe", "mix_pipe"),
        ("mould", "board", "mould"),
    ):
        if at_hand(axis, kind):
            own[key] = inf
    if at_hand("blower", "blower"):
        taken = chosen["blower"].texts
        own["blower"] = max(1, sum(set(one.texts.items()) <= set(taken) for one in have.of("blower")))
    own |= dict.fromkeys(("regulator", "line_regulator"), float(len(have.of("regulator"))))
    if figures.get("bags"):
        own["bag"] = figures["bags"]
    return own


def pins_missing(burner: Burner, have: Have) -> int:
    """How many pins of the ports' size are too few to fill the moulds, each with one block's at a time; pins of wax go
    with every block. 0 where of one piece of that size nobody has told how many there are."""
    there, kerf_m = 0.0, burner.part("kerf")
    for piece in have.of("pins"):
        if not is_of(piece, burner.part("port_diameter")):
            continue
        each = 1
        if "pin_stock_length" in piece.texts:
            length_m = burner.part("pins").length_m
            each = int((_size_m(piece, "pin_stock_length") + kerf_m + NOISE_M) / (length_m + kerf_m))
        there += each * piece.figures["count"] if piece.figures else inf
    return int(max(0, burner.part("face").port_count * blocks_at_once(burner) - there))


def _size_m(piece: Piece, key: str) -> float:
    return float(parsed(key, piece.texts[key]))


def _regulators(burner: Burner, have: Have, lit: bool) -> dict[str, float]:
    """How many regulators at hand do in the place that the train has for one; where it is lit with more than high fire
    takes, of `lit` burners, that too."""
    asked, on_line = burner.part("supply").outlet_Pa, burner.part("gas_line").there
    if lit and not on_line:
        asked = asked._replace(low=burner.part("regulated").holds_Pa.low)
    line_Pa = burner.part("line_pressure") if on_line else inf
    count = sum(_does(one, asked, line_Pa) for one in have.of("regulator"))
    return {"regulator": 0.0 if on_line else count, "line_regulator": count if on_line else 0.0}


def _does(piece: Piece, asked: Band, line_Pa: float) -> bool:
    """Whether a regulator reaches what the train asks of it, as far as that is known; one that cannot be turned gives
    as much or more, as far as the needle valve takes it. On a line one that gives more than the line holds is none for
    it, but for a cylinder."""
    least_Pa, most_Pa = piece.figures.get("low_Pa", 0.0), piece.figures.get("high_Pa", 0.0)
    if piece.texts:
        most_Pa = float(parsed("gas_pressure", piece.texts["gas_pressure"]))
        least_Pa = most_Pa / NEEDLE
    return least_Pa - 1 <= asked.high and asked.low <= most_Pa + 1 and most_Pa <= line_Pa * (1 + 1e-6)
