"""The smallest purchase that cures what nothing at hand does, where no design of a shop is without a fault."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from itertools import islice
from math import ceil, inf
from typing import Any

from .. import checks
from ..catalogue import CHECKS
from ..checks.judge import VERDICTS
from ..constants import INCH_M
from ..design import Design
from ..result import Checked, solve
from ..units import parse_quantity, show
from .choices import ADJUSTABLE, another_helps
from .faults import LACKING, Fault, blamed, short_of
from .graph import touches
from .have import BODIES, GAS, NEEDED, Have, Piece, choice_name
from .on_screen import in_question
from .search import Found, cures_of, dive, followed, others, polish
from .sold import STICK
from .space import Node, Space

MOST_BOUGHT = 2  # designs of one kind of purchase that are polished
TRIED_AS = {
    "drill": "jet",
    "longer": "longer tube",
    "cylinder": "cylinders",
    "bag": "bags",
}  # {kind: what it is called}
TAPE_M = {"in": INCH_M / 8, "mm": 0.001}
MOST_TOGETHER = 3  # kinds of things that one purchase is of
FACE = ("pins", "tube")
AFRESH = (*FACE, "blower", "cylinder")  # kinds of which a purchase is looked for as if none lay there, too
LINE_OF = {"ports": "pins", "inlet": "nipple", "blower": "blower", "body": "steel_0"}  # {axis: line of the cost}
TRIED = 60  # nodes for each way of buying
# Nodes to make what is bought whole good, in slices, and to do without one thing of it.
GOOD, SLICE, BACK = 100, 20, 30
DEAREST = ("tube", "blower", "cylinder", "bag", "regulator", "pipe", "drill", "pins")
ASKED = 3  # times the nodes of a kind that no fault asks for


@dataclass(frozen=True)
class Opening:
    """The smallest purchase that cures what nothing at hand does, of one kind, or of the fewest that were found
    together. `cures`, `helps`: labels of the checks that are good then, and of those only milder, with both words;
    `left`: faults besides what no burner changes of the design that was tried with it, which need not be the best one
    then; `to_spend`: on that design in all; `whole`: where something is left, the smallest that leaves nothing; `adds`:
    (kind, entry) of what is no kind that may be bought, as it is put on the list."""

    kinds: tuple[str, ...]
    words: str
    price: float
    cures: tuple[str, ...]
    helps: tuple[str, ...]
    left: tuple[Fault, ...]
    design: Design
    to_spend: float
    whole: "Opening | None" = None
    adds: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True)
class Lack:
    """What a purchase is to mend: the best design of a shop, all but what is `given` of its faults."""

    have: Have
    best: Node
    weights: Mapping[str, float]
    given: set[str]

    def left(self, node: Node) -> int:
        """What a purchase is to lessen: stops where the best design has any of its own, else cautions."""
        ours, least = (self._words(one) for one in (node, self.best))
        return ours.count("stop") if "stop" in least else ours.count("stop") * 1000 + ours.count("caution")

    def faults(self, node: Node) -> tuple[int, int]:
        """Stops and cautions of its own."""
        words = self._words(node)
        return words.count("stop"), words.count("caution")

    def _words(self, node: Node) -> list[str]:
        return [word for key, word in node.words.items() if key not in self.given]

    def whole(self, node: Node) -> bool:
        """Whether nothing is left."""
        return not self._words(node)

    def asked_for(self, space: Space, kind: str) -> float:
        """The first place at which a fault of the best names as its cure what comes with a purchase of this kind."""
        keys = {key for axis in space.axes if kind in axis.kinds for key in axis.stock or axis.keys} - space.mine.keys()
        if short_of(kind) in self.best.words:
            return -1
        faults = self.best.words.keys() & CHECKS.keys() - self.given
        places = [at for key in faults for at, (setting, _) in enumerate(cures_of(self.best, key)) if setting in keys]
        return min(places, default=inf)


@dataclass
class Trial:
    """A purchase tried, of one kind or of several: a shop where these may be bought, and what is found there."""

    lack: Lack
    kinds: tuple[str, ...]
    found: Found

    @property
    def space(self) -> Space:
        return self.found.space

    def smallest(self, node: Node) -> Any:
        money, points = node.terms["money"], node.rank(self.lack.weights)[2]
        return self.lack.left(node), self._used(node), money, node.cautions, points

    def cleanest(self, node: Node) -> Any:
        return not self.lack.whole(node), self._used(node), node.terms["money"]

    def _used(self, node: Node) -> float:
        return float(node.values["body_length"]) if "longer" in self.kinds else 0.0

    def buys(self, node: Node) -> bool:
        """Whether a design of a wider shop needs what is wider in it; others would be found without a purchase."""
        bought = {kind for axis, one in zip(self.space.axes, node.chosen) if one.buy for kind in axis.kinds}
        if "longer" in self.kinds and longer_tube(self, node):
            bought.add("longer")
        left = {*self.kinds} - bought
        return not left or left <= self.space.bill(node).short.keys()


def smallest_purchase(
    start: Design, have: Have, space: Space, best: Node, weights: Mapping[str, float], given: set[str]
) -> Opening | None:
    """All kinds at once, of which is given back what is not needed, and one kind at a time; of those that leave the
    fewest stops (or cautions) the cheapest."""
    lack, counts = Lack(have, best, weights, given), space.counts
    found: list[tuple[tuple[int, float, bool, bool], Opening]] = []
    whole: list[tuple[float, str, Trial, Node]] = []
    beside = {key: text for key, text in best.texts.items() if key not in space.decided_at}
    start = start.changed({key: text for key, text in beside.items() if text != start.text(key)})

    def take(trial: Trial) -> None:
        node = next(trial.found.in_order(trial.smallest, trial.buys), None)
        if node is None or lack.left(node) >= lack.left(best):
            return
        clean = next(trial.found.in_order(trial.cleanest, trial.buys))
        words, price = _purchase(trial, node)
        if lack.whole(clean):
            bought = _purchase(trial, clean)
            if bought[0] == words:  # the same thing, with which nothing is left
                node, price = clean, bought[1]
            whole.append((bought[1], bought[0], trial, clean))
        order = lack.left(node), price, not lack.whole(node), "longer" not in trial.kinds
        found.append((order, _opening(trial, node, words, price)))

    # More of all that is too few, with the design as it is.
    few = tuple(kind for kind in DEAREST if short_of(kind) in best.words)
    if few:
        shop = replace(have, buy=have.buy | {*few})
        trial = Trial(lack, few, Found(Space(space.design(best), shop, counts=counts, like=space)))
        trial.found.keep(*filter(None, [in_question(trial.space) or followed(trial.space, best)]))
        take(trial)
    # First what the faults themselves ask for, and more of the nodes for that.
    places = {kind: (lack.asked_for(space, kind), shop) for kind, shop in _wider(have, best, str(start.sizes))}
    wider = sorted(places.items(), key=lambda one: one[1][0])
    kinds = [kind for kind, _ in wider if kind != "longer"]
    if counts.left >= 2 * GOOD and (trial := _given_back(lack, space, start, kinds)):
        take(trial)
    shares = [1 if place == inf else ASKED for _, (place, _) in wider]
    for done, (kind, (_, shop)) in enumerate(wider):
        trial = Trial(lack, (kind,), Found(Space(start, shop, counts=counts, like=space)))
        share = counts.left * shares[done] // sum(shares[done:])
        with counts.at_most(max(share, min(TRIED, counts.left // 2))):
            _bought(trial, kind)
        take(trial)
    if not found:
        return None
    opening = min(found, key=lambda one: one[0])[1]
    if not opening.left or not whole:
        return opening
    price, words, trial, clean = min(whole, key=lambda one: one[:2])
    return replace(opening, whole=_opening(trial, clean, words, price))


def _given_back(lack: Lack, space: Space, start: Design, kinds: list[str]) -> Trial | None:
    """A good burner of a shop where nothing lies of these kinds, and what of it needs not be bought given back: first
    all that no fault asks for, then one kind at a time, the dearest of these first. None where none is good, or where
    too much must be bought."""

    spaces: dict[frozenset[str], Space] = {}  # what was looked at of one is not paid again

    def shop(bought: set[str], lies: bool = False) -> Space:
        """Where this may be bought, and nothing of it lies there unless it `lies`."""
        if not lies and (known := spaces.get(frozenset(bought))):
            return known
        gone = {name for kind in bought for name in (BODIES if kind in BODIES else (kind,)) if not lies}
        there = {name: pieces for name, pieces in lack.have.pieces.items() if name not in gone}
        wider = replace(lack.have, pieces=there, buy=lack.have.buy | bought)
        made = Space(start, wider, counts=space.counts, like=space)
        return made if lies else spaces.setdefault(frozenset(bought), made)

    def polished(one: Space, node: Node, most: int, enough: tuple[int, int]) -> Node:
        """Until it is good enough."""
        found, before = Found(one), -1
        found.settle(node)
        with one.counts.at_most(most):
            while lack.faults(node) > enough and one.counts.nodes != before:
                before = one.counts.nodes
                node = polish(one, found, lack.weights, None, SLICE, node) or node
        return node

    wanted, node = set(kinds), None
    unasked = [kind for kind in kinds if lack.asked_for(space, kind) == inf]
    singly = [[kind] for kind in sorted(kinds, key=lambda kind: (-lack.asked_for(space, kind), DEAREST.index(kind)))]
    with space.counts.at_most(space.counts.left * 3 // 4):
        bare = shop(wanted)
        for first in _least_fire(bare, lack):
            node = polished(bare, first, GOOD, (0, 0))
        if node is None or lack.left(node):
            return None
        enough = lack.faults(node)
        for most, backs in ((BACK, [unasked, *singly]), (2 * BACK, singly)):
            for back in (back for back in backs if wanted & set(back) and len(wanted) > 1):
                fewer = shop(wanted - set(back))
                with space.counts.at_most(most):
                    like = followed(fewer, node)
                    if like and lack.faults(less := polished(fewer, like, most, enough)) <= enough and less.settled:
                        node, wanted = less, wanted - set(back)
    if node is None or not 0 < len(wanted) <= MOST_TOGETHER:
        return None
    trial = Trial(lack, tuple(kind for kind in DEAREST if kind in wanted), Found(shop(wanted, True)))
    with space.counts.at_most(BACK):
        trial.found.keep(*filter(None, [followed(trial.space, node)]))
    return trial


def _opening(trial: Trial, node: Node, words: str, price: float) -> Opening:
    lack, space, best = trial.lack, trial.space, trial.lack.best
    cured = {key for key, word in best.words.items() if _milder(node.words.get(key), word)}
    bought = {key for axis in space.axes for key in axis.keys if {"longer", *axis.kinds} & {*trial.kinds}}
    cured = {key for key in cured if key not in checks.CHECKS or touches(checks.CHECKS[key]) & bought}
    result = solve(space.design(node))
    space.counts.solves += 1
    milder = [check for check in result.checks.values() if check.key in cured]
    cures = tuple(check.label for check in milder if check.key not in node.words)
    cures += tuple(label for kind, (label, _) in LACKING.items() if short_of(kind) in cured - node.words.keys())
    helps = tuple(_helped(check, best, node) for check in milder if check.key in node.words)
    bill = space.bill(node)
    left = blamed(result, lack.given, bill.lacking)
    spent = bill.to_spend + (_tube_price(node) if "longer" in trial.kinds else 0.0)
    adds = (("tube", _longer_piece(trial, node)[0]),) if "longer" in trial.kinds else ()
    return Opening(trial.kinds, words, price, cures, helps, left, result.design, spent, adds=adds)


def tried(have: Have, best: Node, system: str) -> list[str]:
    """What was tried as a purchase, in words."""
    return [TRIED_AS.get(kind, kind) for kind, _ in _wider(have, best, system)]


def _wider(have: Have, best: Node, system: str) -> list[tuple[str, Have]]:
    """Each kind of which none may be bought, and the shop that may; "longer": pieces of the same tube."""
    closed = [group for group in (*NEEDED, ("bag",), ("drill",)) if have.of(*group) and not have.may_buy(*group)]
    liquid = best.burner.part("gas").liquid  # a cylinder is no help to gas that comes in none
    kinds = [group[0] for group in closed if group != GAS or liquid]
    helps = short_of("regulator") in best.words or (liquid and another_helps(have, system))
    if helps and not have.may_buy("regulator"):
        kinds.append("regulator")
    wider = [(kind, replace(have, buy=have.buy | {kind})) for kind in kinds]
    longer = longer_tubes(have, system)
    return [("longer", longer), *wider] if longer else wider


def _bought(trial: Trial, kind: str) -> None:
    """Into the pool: the best with one thing of a kind bought in its place, and the likeliest of these polished."""
    looks = [_near, _afresh] if kind in AFRESH else [_near]
    for look in reversed(looks) if kind in FACE else looks:  # another pin or tube asks for a whole other design
        look(trial, kind)
    for node in list(islice(trial.found.in_order(trial.smallest, trial.buys), MOST_BOUGHT)):
        polish(trial.space, trial.found, trial.lack.weights, None, TRIED, node)


def _near(trial: Trial, kind: str) -> None:
    """The best with another of that kind."""
    space = trial.space
    # As it was chosen it would still come out of the piece at hand.
    like = None if kind == "longer" else space.altered(trial.lack.best, {})
    like = like or followed(space, trial.lack.best)
    if like is None:
        return
    axes = [axis.name for axis in space.axes if kind in axis.kinds or (kind == "longer" and axis.name == "length")]
    space.settle(like)  # only one with faults is given what is spare, such as another regulator
    for axis in axes:
        made = others(space, trial.found, like, axis, 2 * TRIED if kind == "longer" else TRIED, True)
        if axis == "jet":  # at another pressure other cylinders may do, all that there are
            _cylinders(trial, [node for node in made if "cylinder" in node.words])
    if kind == "cylinder" and kind in like.words and (less := _fire_needed(space, like)):
        fewer = Found(space)
        others(space, fewer, less, kind, TRIED, True)
        cured = fewer.in_order(trial.cleanest, lambda node: trial.buys(node) and _cured(node, like))
        trial.found.keep(*islice(cured, 1))


def _cured(node: Node, like: Node) -> bool:
    """Whether the cylinders are enough, and nothing else is at fault that was not."""
    return node.words.keys() <= like.words.keys() - {"cylinder"}


def _fire_needed(space: Space, like: Node) -> Node | None:
    """It with no more fire than the chamber needs, for which fewer cylinders may do; None where it has no more."""
    needed_W, rate = like.burner.part("need").needed_W, like.values["firing_rate"]
    if "firing_rate" in space.mine or needed_W is None or rate == "auto":
        return None
    return space.altered(like, {"firing_rate": "auto"}) if needed_W < rate * like.values["burner_count"] else None


def _cylinders(trial: Trial, nodes: list[Node]) -> None:
    space = trial.space
    with space.counts.at_most(TRIED):
        for node in nodes:
            above: Node | None = space.root
            for one in node.chosen[: space.decided_at["cylinder"]]:
                above = space.child(above, one) if above else None
            trial.found.keep(*(dive(space, above, trial.lack.weights, 1, "long") if above else ()))


def _afresh(trial: Trial, kind: str) -> None:
    """What would be built if none of that kind lay there."""
    space, weights = trial.space, trial.lack.weights
    rest = {name: pieces for name, pieces in space.have.pieces.items() if name != kind}
    bare = Space(space.start, replace(space.have, pieces=rest), counts=space.counts, like=space)
    for start in _least_fire(bare, trial.lack):
        trial.found.keep(start)
        polish(bare, trial.found, weights, None, TRIED, start)


def _least_fire(space: Space, lack: Lack) -> list[Node]:
    """What a shop gives at a first look with the least fire, and turned as low as the best."""
    top = space.root
    for one in (*space.menu(top)[:1], lack.best.chosen[space.decided_at["low_fire"]]):
        top = space.child(top, one) or top
    return dive(space, top, lack.weights, 1)


def _milder(word: str | None, than: str) -> bool:
    return word is None or VERDICTS.index(word) < VERDICTS.index(than)


def _helped(check: Checked, best: Node, node: Node) -> str:
    """Its label, and what it is still."""
    return f"{check.label} (from a {best.words[check.key]} to a {node.words[check.key]})"


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


def longer_tube(trial: Trial, node: Node) -> tuple[Piece, float, float] | None:
    """The longest of such tubes at hand, how long a piece the batch takes, and by how much that is more, to the mark of
    the tape; None where what lies there is enough."""
    space, sides = trial.space, {node.texts["body_width"], node.texts["body_depth"]}
    there = [
        piece
        for piece in trial.lack.have.of("tube")
        if {piece.texts["body_width"], piece.texts["body_depth"]} == sides and piece.texts["wall"] == node.texts["wall"]
    ]
    if not there or node.chosen[space.decided_at["body_kind"]].buy:
        return None
    longest = max(there, key=lambda piece: piece.figures["length_m"])
    batch, kerf, mark_m = node.values["batch_size"], space.start.kerf, TAPE_M[space.start.units]
    needed_m = batch * (node.values["body_length"] + kerf) - kerf
    marks = ceil((needed_m - longest.figures["length_m"]) / mark_m - 1e-6)
    return (longest, ceil(needed_m / mark_m - 1e-6) * mark_m, marks * mark_m) if marks > 0 else None


def _purchase(trial: Trial, node: Node) -> tuple[str, float]:
    """What the purchase is, in words, and its price."""
    each = [_things(trial, node, kind) for kind in trial.kinds]
    *most, last = (words for things, _ in each for words in things)
    return " and ".join([", ".join(most), last] if most else [last]), sum(price for _, price in each)


def _longer_piece(trial: Trial, node: Node) -> tuple[str, str]:
    """The longer tube as an entry of the list, and by how much it is longer."""
    longer = longer_tube(trial, node)
    assert longer
    piece, needed, more = longer[0], *(show(length_m, "length", trial.space.start.units) for length_m in longer[1:])
    sizes = " x ".join(piece.texts[key] for key in ("body_width", "body_depth", "wall"))
    return f"{sizes}, {needed}", more


def _tube_price(node: Node) -> float:
    """What the tube of all bodies costs, as it stands on a list of somebody who has none."""
    burner = node.burner
    entries = burner.part("cost").entries(burner.part("train"), node.values["batch_size"])
    return sum(one.price for one in entries if one.key == "steel_0" and one.price)


MORE = {"blower": "blower{} like yours", "pins": "pin{} of {}"}


def _things(trial: Trial, node: Node, kind: str) -> tuple[list[str], float]:
    """The same of one kind: one thing, or two such as pipe of two sizes."""
    space, have = trial.space, trial.lack.have
    if kind == "longer":
        piece, more = _longer_piece(trial, node)
        return [f"a {more} longer tube, {piece} long or more"], _tube_price(node)
    # Of what stands on the shopping list the price is that of its line; one line may be of two things, such as pipe.
    buys = [(axis, one) for axis, one in zip(space.axes, node.chosen) if one.buy and kind in axis.kinds]
    words = dict.fromkeys(one.buy for _, one in buys)
    bill = space.bill(node)
    things = {thing.key: thing for thing in bill.things}
    price = sum(one.price for _, one in buys)
    price += sum(things[LINE_OF[axis.name]].price for axis, _ in buys if LINE_OF.get(axis.name) in things)
    count, cost = bill.short.get(kind, (0, 0.0))
    if kind == "regulator":
        words, price = {ADJUSTABLE if count < 2 else f"{count} adjustable regulators": None}, cost
    elif kind == "blower" and buys and (sets := things["blower"].count) > 1:
        words = {one.buy.replace("a blower", f"{sets} blowers", 1): None for _, one in buys}
    elif kind in MORE and count and not buys:  # more of what lies there
        words, price = (
            {f"{count} more {MORE[kind].format('s' if count > 1 else '', node.texts['port_diameter'])}": None},
            cost,
        )
    if kind == "bag" and "bag" in things:
        bag, stuff = things["bag"], node.texts["refractory"]
        again = any(piece.texts["refractory"] == stuff for piece in have.of("bag"))
        named = "" if again else f" of {choice_name('refractory', stuff, space.start.sizes)}"
        words = {f"{bag.count}{' more' if again else ''} bag{'s' if bag.count > 1 else ''}{named}": None}
        price = bag.price
    if kind == "drill":
        words = {f"a jet drilled {node.burner.part('jet').drill_name}": None}
    return list(words) or [kind], price
