"""The smallest purchase that cures what nothing at hand does, where no design of a shop is without a fault."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import partial
from itertools import islice
from math import inf
from typing import Any

from .. import checks
from ..catalogue import CHECKS
from ..checks.judge import VERDICTS
from ..design import Design
from ..result import Checked, solve
from ..units import parse_quantity, show
from .bill import OF_ITS_OWN
from .faults import Fault, blamed
from .graph import touches
from .have import GAS, NEEDED, Have, choice_name
from .search import Found, dive, followed, others, polish
from .sold import STICK
from .space import Node, Space

MOST_BOUGHT = 2  # designs of one kind of purchase that are polished
FACE = ("pins", "tube")
AFRESH = (*FACE, "blower", "cylinder")  # kinds of which a purchase is looked for as if none lay there, too
LINE_OF = {"ports": "pins", "inlet": "nipple", "blower": "blower", "body": "steel_0"}  # {axis: line of the cost}
TRIED = 60  # nodes for each way of buying


@dataclass(frozen=True)
class Opening:
    """The smallest purchase that cures what nothing at hand does. `cures`: labels of the checks; `left`: faults besides
    what no burner changes of the design that was tried with it, which need not be the best one then; `to_spend`: on
    that design in all; `whole`: where something is left, the smallest purchase found that leaves nothing, its price."""

    kind: str
    words: str
    price: float
    cures: tuple[str, ...]
    left: tuple[Fault, ...]
    design: Design
    to_spend: float
    whole: tuple[str, float] | None = None


def smallest_purchase(
    start: Design, have: Have, space: Space, best: Node, weights: Mapping[str, float], given: set[str]
) -> Opening | None:
    """One kind of purchase at a time; of those that leave the fewest stops (or cautions) the cheapest."""
    found: list[tuple[tuple[int, float], Opening]] = []
    whole: list[tuple[float, str]] = []
    beside = {key: text for key, text in best.texts.items() if key not in space.decided_at}
    start = start.changed({key: text for key, text in beside.items() if text != start.text(key)})
    # First what the faults themselves ask for.
    wider = sorted(_wider(have, best, start.sizes), key=lambda one: _asked_for(space, one[0], best, given))
    counts = space.counts
    for done, (kind, shop) in enumerate(wider):
        space = Space(start, shop, counts=counts, like=space)
        made = Found(space)
        with counts.at_most(max(counts.left // (len(wider) - done), min(TRIED, counts.left // 2))):
            _bought(space, made, kind, best, weights, given)
        buys = partial(_buys, space, kind=kind)
        node = next(made.in_order(lambda node: _smallest(node, kind, best, weights, given), buys), None)
        if node is None or _left(node, best, given) >= _left(best, best, given):
            continue
        clean = next(made.in_order(lambda node: _cleanest(node, kind, given), buys))
        if not clean.words.keys() - given:
            words, price = _purchase(space, clean, kind, have)
            whole.append((price, words))
        words, price = _purchase(space, node, kind, have)
        cured = {key for key, word in best.words.items() if _milder(node.words.get(key), word)}
        bought = {key for axis in space.axes if kind in axis.kinds or kind == "longer" for key in axis.keys}
        cured = {key for key in cured if key not in checks.CHECKS or touches(checks.CHECKS[key]) & bought}
        result = solve(space.design(node))
        counts.solves += 1
        labels = tuple(_cured(check, best, node) for check in result.checks.values() if check.key in cured)
        bill = space.bill(node)
        left = blamed(result, given, bill.lacking)
        if kind == "drill":
            words = f"a jet drilled {result.part('jet').drill_name}"
        opening = Opening(kind, words, price, labels, left, result.design, bill.to_spend)
        found.append(((_left(node, best, given), price), opening))
    if not found:
        return None
    opening = min(found, key=lambda one: one[0])[1]
    if not opening.left or not whole:
        return opening
    price, words = min(whole)
    return replace(opening, whole=(words, price))


def _asked_for(space: Space, kind: str, best: Node, given: set[str]) -> float:
    """The first place at which a fault of the best names as its cure what comes with a purchase of this kind."""
    keys = {key for axis in space.axes if kind in axis.kinds for key in axis.stock or axis.keys} - space.mine.keys()
    faults = best.words.keys() & CHECKS.keys() - given
    places = [at for key in faults for at, (setting, _) in enumerate(cures_of(best, key)) if setting in keys]
    return min(places, default=inf)


def cures_of(node: Node, key: str) -> Iterable[tuple[str, str]]:
    """(setting, move) of what cures a check, as it says of this design."""
    judged = node.burner.call(checks.CHECKS[key])
    return CHECKS[key].cures if judged.cures is None else judged.cures


def _wider(have: Have, best: Node, system: str) -> list[tuple[str, Have]]:
    """Each kind of which none may be bought, and the shop that may; "longer": pieces of the same tube."""
    closed = [group for group in (*NEEDED, ("bag",), ("drill",)) if have.of(*group) and not have.may_buy(*group)]
    liquid = best.burner.part("gas").liquid  # a cylinder is no help to gas that comes in none
    kinds = [group[0] for group in closed if group != GAS or liquid]
    if liquid and have.fixed_pressure and not have.may_buy("regulator"):
        kinds.append("regulator")
    wider = [(kind, replace(have, buy=have.buy | {kind})) for kind in kinds]
    longer = longer_tubes(have, system)
    return [("longer", longer), *wider] if longer else wider


def _bought(space: Space, found: Found, kind: str, best: Node, weights: Mapping[str, float], given: set[str]) -> None:
    """Into the pool: the best with one thing of a kind bought in its place, and the likeliest of these polished."""
    looks = [_near, _afresh] if kind in AFRESH else [_near]
    for look in reversed(looks) if kind in FACE else looks:  # another pin or tube asks for a whole other design
        look(space, found, kind, best, weights)
    for node in list(islice(found.in_order(lambda node: _smallest(node, kind, best, weights, given)), MOST_BOUGHT)):
        polish(space, found, weights, None, TRIED, node)


def _near(space: Space, found: Found, kind: str, best: Node, weights: Mapping[str, float]) -> None:
    """The best with another of that kind."""
    like = space.altered(best, {}) or followed(space, best)
    axes = [axis.name for axis in space.axes if kind in axis.kinds or (kind == "longer" and axis.name == "length")]
    for axis in axes if like else ():
        others(space, found, like, axis, TRIED, True)


def _afresh(space: Space, found: Found, kind: str, best: Node, weights: Mapping[str, float]) -> None:
    """What would be built if none of that kind lay there."""
    rest = {name: pieces for name, pieces in space.have.pieces.items() if name != kind}
    bare = Space(space.start, replace(space.have, pieces=rest), counts=space.counts, like=space)
    for start in dive(bare, bare.root, weights, 1):
        found.keep(start)
        polish(bare, found, weights, None, TRIED, start)


def _milder(word: str | None, than: str) -> bool:
    return word is None or VERDICTS.index(word) < VERDICTS.index(than)


def _cured(check: Checked, best: Node, node: Node) -> str:
    """Its label, and what it is still."""
    word = node.words.get(check.key)
    return f"{check.label} (from a {best.words[check.key]} to a {word})" if word else check.label


def _buys(space: Space, node: Node, kind: str) -> bool:
    """Whether a design of a wider shop needs what is wider in it; others would be found without a purchase."""
    if kind in ("longer", "bag"):
        return True
    return any(one.buy and kind in axis.kinds for axis, one in zip(space.axes, node.chosen))


def _left(node: Node, best: Node, given: set[str]) -> int:
    """What a purchase is to lessen: stops where the best design has any of its own, else cautions."""
    ours, least = ([word for key, word in one.words.items() if key not in given] for one in (node, best))
    stops = ours.count("stop")
    return stops if "stop" in least else stops * 1000 + ours.count("caution")


def _smallest(node: Node, kind: str, best: Node, weights: Mapping[str, float], given: set[str]) -> Any:
    used = node.values["body_length"] if kind == "longer" else 0.0
    return _left(node, best, given), used, node.terms["money"], node.cautions, node.rank(weights)[2]


def _cleanest(node: Node, kind: str, given: set[str]) -> Any:
    used = node.values["body_length"] if kind == "longer" else 0.0
    return bool(node.words.keys() - given), used, node.terms["money"]


def longer_tubes(have: Have, system: str) -> Have | None:
    """The shop with longer pieces of the same tube, as long as is sold."""
    sold_m = parse_quantity(STICK[system], "long_length", "tube")
    tubes = have.of("tube")
    if not tubes or all(piece.figures["length_m"] >= sold_m for piece in tubes):
        return None
    longer = tuple(
        replace(piece, figures={**piece.figures, "length_m": max(sold_m, piece.figures["length_m"])}) for piece in tubes
    )
    return replace(have, pieces={**have.pieces, "tube": longer})


def _purchase(space: Space, node: Node, kind: str, have: Have) -> tuple[str, float]:
    """What the purchase is, in words, and its price."""
    if kind == "longer":
        sides = {node.texts["body_width"], node.texts["body_depth"]}
        there = [piece for piece in have.of("tube") if {piece.texts["body_width"], piece.texts["body_depth"]} == sides]
        batch, kerf = node.values["batch_size"], space.start.kerf
        needed_m = batch * (node.values["body_length"] + kerf) - kerf
        lacking_m = needed_m - max(piece.figures["length_m"] for piece in there)
        more = show(max(lacking_m, 0.0), "length", space.start.units)
        return f"a {more} longer tube", 0.0
    # Of what stands on the shopping list the price is that of its line; one line may be of two things, such as pipe.
    buys = [(axis, one) for axis, one in zip(space.axes, node.chosen) if one.buy and kind in axis.kinds]
    words = dict.fromkeys(one.buy for _, one in buys)
    things = {thing.key: thing for thing in space.bill(node).things}
    price = sum(one.price for _, one in buys)
    price += sum(things[LINE_OF[axis.name]].price for axis, _ in buys if LINE_OF.get(axis.name) in things)
    if kind == "regulator":
        parts = [part for part in node.burner.part("train").parts if part.key in OF_ITS_OWN["regulator"]]
        price += node.values["batch_size"] * sum(part.price for part in parts)
    if kind == "bag" and "bag" in things:
        bag, stuff = things["bag"], node.texts["refractory"]
        again = any(piece.texts["refractory"] == stuff for piece in have.of("bag"))
        named = "" if again else f" of {choice_name('refractory', stuff, space.start.sizes)}"
        words = {f"{bag.count}{' more' if again else ''} bag{'s' if bag.count > 1 else ''}{named}": None}
        price = bag.price
    return " and ".join(words) or kind, price
