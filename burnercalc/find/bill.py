"""What must be bought for a design in this shop, and what that costs: what lies there already costs nothing."""

from collections.abc import Mapping
from dataclasses import dataclass

from ..burner import Burner
from .choices import Option
from .have import Have

# Lines of the design's cost by the axis that has them at hand.
LINE_OF = {"pins": "ports", "nipple": "inlet", "blower": "blower"}


@dataclass(frozen=True)
class Bought:
    """One thing to buy: the line of the design's cost that it stands in, or "" beside them; words; its price."""

    key: str
    words: str
    price: float


@dataclass(frozen=True)
class Bill:
    """`lacking`: bags short where none may be bought."""

    things: tuple[Bought, ...]
    to_spend: float
    lacking: int


def bill(burner: Burner, chosen: Mapping[str, Option], have: Have, figures: Mapping[str, float]) -> Bill:
    """The lines of the cost that are not at hand, and what the chosen options say must be bought."""
    own = {line for line, axis in LINE_OF.items() if _at_hand(axis, chosen, have)}
    own.add("first_fire")  # gas is paid as it burns
    if _at_hand("body", chosen, have):
        own.add("steel_0")
        if dict(chosen["body"].texts)["body_kind"] == "plates":
            own |= {"steel_1", "steel_2", "steel_3"}
    things, lacking = [], 0
    for line in burner.part("cost").lines:
        words, price = line.key, line.batch_cost
        if line.key == "bag" and figures.get("bags"):
            short = max(0, line.packs - int(figures["bags"]))
            if short and not have.may_buy("bag"):
                lacking = short
            price = price / line.packs * short
            words = f"{short} more bag{'s' if short > 1 else ''}"
            if not short:
                continue
        if line.key == "blower" and "blower" in own and line.packs > 1:  # one lies there, and serves one burner
            things.append(
                Bought(line.key, f"{line.packs - 1} more of this blower", price * (line.packs - 1) / line.packs)
            )
        elif line.key not in own and price > 0:
            things.append(Bought(line.key, words, price))
    for axis, one in chosen.items():
        if one.buy:
            at = next((n for n, thing in enumerate(things) if LINE_OF.get(thing.key) == axis), None)
            at = next((n for n, thing in enumerate(things) if thing.key == "steel_0"), None) if axis == "body" else at
            if at is None:
                if one.price or all(thing.words != one.buy for thing in things):
                    things.append(Bought("", one.buy, one.price))
            else:
                things[at] = Bought(things[at].key, one.buy, things[at].price)
    return Bill(tuple(things), sum(thing.price for thing in things), lacking)


def _at_hand(axis: str, chosen: Mapping[str, Option], have: Have) -> bool:
    """Whether what an axis chose lies in the shop: it need not be bought, and something of its kind was named."""
    kinds = {"ports": ("pins",), "inlet": ("pipe",), "blower": ("blower",), "body": ("tube", "plate", "round")}[axis]
    return axis in chosen and not chosen[axis].buy and bool(have.of(*kinds))
