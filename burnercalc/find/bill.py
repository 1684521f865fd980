"""What must be bought for a design in this shop, and what that costs: what lies there already costs nothing.

It is the shopping list without what is at hand, and what no list of a burner holds: cylinders, and a drill for the jet.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import inf

from ..burner import Burner
from ..parts.cost import Entry
from .choices import Option
from .have import Have

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
    """`own`: {entry of the shopping list: how many of it are at hand}; `lacking`: bags short where none may be bought.

    `listed`: of the whole sum what stands on the shopping list.
    """

    things: tuple[Bought, ...]
    own: Mapping[str, float]
    to_spend: float
    listed: float
    lacking: int


def bill(burner: Burner, chosen: Mapping[str, Option], have: Have, figures: Mapping[str, float]) -> Bill:
    """The entries of the shopping list that are not at hand, and what the chosen options say must be bought besides."""
    own = _own(chosen, have, figures)
    batch = burner.part("batch_size")
    things: dict[str, Bought] = {}
    lacking = 0
    for entry in burner.part("cost").entries(burner.part("train"), batch):
        left = int(max(0, entry.count - own.get(entry.key, 0)))
        if entry.key == "bag" and left and own.get("bag") and not have.may_buy("bag"):
            lacking = left
        if left and entry.price:
            _add(things, entry, left, batch)
    listed = tuple(things.values())
    besides = tuple(
        Bought("", one.buy, one.price) for axis, one in chosen.items() if one.buy and axis in ("cylinder", "jet")
    )
    on_the_list = sum(thing.price for thing in listed)
    return Bill((*listed, *besides), own, on_the_list + sum(thing.price for thing in besides), on_the_list, lacking)


def _add(things: dict[str, Bought], entry: Entry, left: int, batch: int) -> None:
    """One entry, the parts of the train together in their line."""
    line = entry.line
    price = (entry.price or 0.0) * left / entry.count
    if entry.part is not None:
        price += things[line.key].price if line.key in things else 0.0
        things[line.key] = Bought(line.key, line.key, price)
    else:
        used = line.used_cost * batch if line.key.startswith("steel") else None
        things[line.key] = Bought(line.key, line.key, price, left, entry.count, used)


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
        own["blower"] = 1
    if at_hand("jet", "regulator"):
        own["regulator"] = own["line_regulator"] = len(have.of("regulator"))
    if figures.get("bags"):
        own["bag"] = figures["bags"]
    return own
