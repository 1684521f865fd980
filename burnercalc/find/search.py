"""The search: dives to first designs, the best of each polished, then the tree best first, bounded by what was found.

It is deterministic: no dice, and equals keep the order of the menus. When the tree is exhausted within the budget, the
best design is proven (`complete`); else it is the best of what was looked at, and no design is ever better than judged.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from heapq import heapify, heappop, heappush
from typing import Any

from .. import checks
from ..catalogue import CHECKS
from ..design import parsed
from .choices import MOST_LENGTHS, Option
from .score import BY_TERM, EVEN, points
from .space import Bound, Hopeful, Node, Space

# Nodes kept at each level of a dive: of the first, and of one that looks once more where that fails.
WIDTH, WIDER = 2, 4
# Nodes: in all, of the search for the best, of polishing its first design, of another number of burners, of the other
# bodies at hand, of one kind; and how many of those bodies are looked at.
BUDGET, SEARCH, CLIMB, ANOTHER_COUNT, AT_HAND, POLISH = 1400, 600, 260, 100, 560, 60
AT_HAND_AT_FAULT = 300  # where the best is at fault, as what cures it is most often bought
MOST_AT_HAND = 6
MOST_TRIED = 5  # things of a kind at hand that a dive tries, spread over as many as there are; of a long face all
NEARLY = 1.05  # times the points of the best, which was climbed: a face as it is found may still come below them
LEAST_BUDGET = 100  # for the first design, whatever the rest is
MOST_FAR = MOST_LENGTHS + 1  # options of an axis that are all looked at
NEAR = 2  # options either side that a polish tries of an axis, and that stand in for one that is gone

Rank = tuple[Any, ...]


@dataclass
class Found:
    """Whole nodes in the order found, settled as far as somebody had to know; `first_at`: nodes judged until the first
    that has no fault but what is `given`, of which `hear` is told; `least`: stops and cautions of the best so far."""

    space: Space
    pool: list[Node] = field(default_factory=list)
    complete: bool = False
    first_at: int | None = None
    hear: Callable[[Node], None] | None = None
    given: set[str] = field(default_factory=set)
    least: tuple[int, int] | None = None

    def good(self, node: Node) -> bool:
        return node.words.keys() <= self.space.root.words.keys() | self.given

    def own(self, node: Node) -> tuple[int, int]:
        """Stops and cautions that are not given."""
        words = [word for key, word in node.words.items() if key not in self.given | self.space.root.words.keys()]
        return words.count("stop"), words.count("caution")

    def keep(self, *nodes: Node) -> None:
        self.pool += [node for node in nodes if all(node is not one for one in self.pool)]

    def in_order(
        self, key: Callable[[Node], Any], wanted: Callable[[Node], bool] = lambda node: True
    ) -> Iterator[Node]:
        """Those that are `wanted`, settled, by a key that only grows when a node is settled."""
        heap = [(key(node), at, node) for at, node in enumerate(self.pool)]
        heapify(heap)
        while heap:
            _, at, node = heappop(heap)
            if node.settled and wanted(node):
                yield node
            elif wanted(node):
                self.settle(node)
                heappush(heap, (key(node), at, node))

    def settle(self, node: Node, hopeful: Hopeful = lambda node: True) -> bool:
        """Whether a node is still `hopeful` when all is asked of it."""
        hoped = self.space.settle(node, hopeful)
        if node.settled:
            own = self.own(node)
            self.least = min(own, self.least or own)
        if self.first_at is None and node.settled and self.good(node):
            self.first_at = self.space.counts.nodes
            if self.hear:
                self.hear(node)
        return hoped

    def best(self, weights: Mapping[str, float], kind: str | None = None) -> Node | None:
        return next(self.in_order(lambda node: rank(node, weights, kind)), None)


def rank(node: Node, weights: Mapping[str, float], kind: str | None = None, by_looks: bool = False) -> Rank:
    """What is compared: stops, cautions, then the term of a kind to its grain if one is asked, then points."""
    stops, cautions, sum_ = node.rank(weights, by_looks)
    if kind is None:
        return stops, cautions, sum_
    term = BY_TERM[kind]
    terms = node.looked if by_looks and node.looked is not None else node.terms
    return stops, cautions, round(terms.get(kind, 0.0) / term.grain), sum_


def search(space: Space, weights: Mapping[str, float], budget: int = SEARCH, found: Found | None = None) -> Found:
    """Whole nodes of a space, into what is `found` so far, the best among them."""
    found = found or Found(space)

    def look(node: Node, width: int, most: int, by: str = "thumb") -> bool:
        """A dive from a node, and the best of it polished; whether the best of all is good by now."""
        nodes = dive(space, node, weights, width, by)
        found.keep(*nodes)
        start = next(found.in_order(lambda one: rank(one, weights), nodes.__contains__), None)
        if start is not None:
            polish(space, found, weights, None, most, start)
        best = found.best(weights)
        return best is not None and found.good(best)

    climb, before = min(CLIMB, budget // 2), space.counts.nodes
    with space.counts.at_most(budget):
        # One straight down, to have one soon.
        found.keep(*dive(space, space.root, weights, 1))
        best = found.best(weights)
        if best is None or not found.good(best):
            good = look(space.root, WIDTH, POLISH)
            if not good and (further := polish(space, found, weights, None, climb - POLISH)):
                good = found.good(further)
            if not good and not look(space.root, WIDER, climb, "middle"):
                for node in _other_bodies(space, found.best(weights)):
                    if look(node, 1, POLISH):
                        break
        look(space.root, 1, climb, "long")
        if not found.pool and (one := first_of(space)) is not None:
            found.keep(one)
            polish(space, found, weights)
        for node in _other_counts(space, found, weights):
            look(node, WIDTH, ANOTHER_COUNT)
    left = before + budget - space.counts.nodes
    best = found.best(weights)
    at_hand = AT_HAND if best is not None and found.good(best) else AT_HAND_AT_FAULT
    with space.counts.at_most(at_hand * budget // SEARCH):
        _bodies_at_hand(space, found, weights)
    with space.counts.at_most(left):
        _best_first(space, weights, found)
        found.complete = True
    return found


def nearly(limit: Rank) -> Rank:
    """Below which one that is not polished may come below the best, which is."""
    return *limit[:2], NEARLY * limit[2]


def _other_counts(space: Space, found: Found, weights: Mapping[str, float]) -> Iterator[Node]:
    """The first fire of each other number of burners that may be better than what is found."""
    best = found.best(weights)
    if best is None:
        return
    seen = {best.values["burner_count"]}
    for one in space.menu(space.root):
        node = space.child(space.root, one)
        if node is None or node.values["burner_count"] in seen:
            continue
        seen.add(node.values["burner_count"])
        best = found.best(weights) or best
        limit = best.rank(weights)
        if any(kid.rank(weights) < limit for kid in _kids(space, node)):
            yield node


def _bodies_at_hand(space: Space, found: Found, weights: Mapping[str, float]) -> None:
    """Of the fire of the best, a long face on each other body that lies there; the two best by looks are polished."""
    best = found.best(weights)
    if best is None:
        return
    limit = rank(best, weights)
    others = _other_bodies(space, best, "long" if space.start.chamber_shape == "box" else "")
    there = [node for node in others if not node.chosen[-1].buy and node.rank(weights) < limit]
    made = [one for node in there[:MOST_AT_HAND] for one in dive(space, node, weights, 1, "long")]
    found.keep(*made)
    for one in sorted(made, key=lambda one: rank(one, weights))[:2]:
        if rank(one, weights) < nearly(limit):
            polish(space, found, weights, None, CLIMB, one)


def _other_bodies(space: Space, best: Node | None, by: str = "") -> Iterator[Node]:
    """Of the fire of the best, with each other body; `by`: with the low fire that is likeliest by it."""
    node: Node | None = space.root
    at = space.decided_at["body_kind"]
    for level, one in enumerate(best.chosen[:at]) if best else ():
        if by and node and space.axes[level].name == "low fire":
            menu = space.menu(node)
            one = menu[round(space.likely(node, by))] if menu else one
        node = space.child(node, one) if node else None
    if node is None or best is None:
        return
    for one in space.menu(node):
        kid = space.child(node, one) if one.texts != best.chosen[at].texts else None
        if kid is not None:
            yield kid


def dive(space: Space, node: Node, weights: Mapping[str, float], width: int, by: str = "thumb") -> list[Node]:
    """Down from a node, keeping the best few at each level; empty when all of them lead nowhere.

    Of many things of a kind at hand it tries a few, so that more of them takes no steps from what is polished.
    """
    last = space.last
    beam = [node]
    while beam and beam[0].level < last:
        best: list[tuple[tuple[float, Bound], float, Node]] = []

        def hopeful(part: Node, best: list[tuple[tuple[float, Bound], float, Node]] = best) -> bool:
            return len(best) < width or (0.0, part.rank(weights)) <= best[-1][0]

        for one in beam:
            likely = space.likely(one, by) if space.menu(one) else 0.0
            for at, choice in enumerate(space.menu(one)) if by == "long" else _few(space, one, likely):
                kid = None if choice.spare else space.child(one, choice, hopeful)
                if kid is not None and (kid.level == last or space.menu(kid)):
                    # What can hardly be lit comes after all that can.
                    best.append(((space.weak(kid), kid.rank(weights)), abs(at - likely), kid))
                    # Equals keep the order of the menus.
                    best.sort(key=lambda found: found[:2])
                    del best[width:]
        beam = [kid for _, _, kid in best]
    return beam


def _few(space: Space, node: Node, likely: float) -> list[tuple[int, Option]]:
    """Of a menu the places and options; of many things that lie there the likeliest, and others spread over them."""
    menu, axis = list(enumerate(space.menu(node))), space.axes[node.level + 1]
    there = [at for at, one in menu if not one.buy]
    if len(there) <= MOST_TRIED or not space.have.of(*axis.kinds) or axis.name == "length":
        return menu
    step = (len(there) - 1) / (MOST_TRIED - 1)
    kept = {round(likely), *(there[round(step * nth)] for nth in range(MOST_TRIED))}
    return [(at, one) for at, one in menu if one.buy or at in kept]


def first_of(space: Space) -> Node | None:
    """The first whole node, depth first with the fewest faults first; None when there is none."""
    stack = [space.root]
    while stack:
        node = stack.pop()
        if node.level == space.last:
            return node
        stack.extend(sorted(_kids(space, node), key=lambda kid: (kid.stops, kid.cautions), reverse=True))
    return None


def _kids(space: Space, node: Node, hopeful: Hopeful = lambda node: True) -> Iterator[Node]:
    for one in space.menu(node):
        kid = space.child(node, one, hopeful)
        if kid is not None:
            yield kid


def _best_first(space: Space, weights: Mapping[str, float], found: Found) -> None:
    """Best first with the best so far as the bound.

    What is spare comes when all else is looked at. While the best has a fault, deeper first among equals; then what the
    levels below add is taken to be what they add to the best.
    """
    best = found.best(weights)
    bound = best.rank(weights) if best else None
    heap: list[tuple[bool, int, int, float, float, int, Node]] = []
    serial = 0
    adds = _adds(space, best, weights) if best and found.good(best) else None

    def hopeful(node: Node) -> bool:
        return bound is None or node.rank(weights) < bound

    def push(node: Node) -> None:
        nonlocal serial
        stops, cautions, sum_ = node.rank(weights)
        serial += 1
        likely = (sum_ + adds[node.level + 1], -node.level) if adds else (-node.level, sum_)
        spare = any(one.spare for one in node.chosen)
        heappush(heap, (spare, stops, cautions, *likely, serial, node))

    push(space.root)
    while heap:
        *_, node = heappop(heap)
        if not hopeful(node):
            continue
        for kid in _kids(space, node, hopeful):
            if kid.level < space.last:
                push(kid)
            elif found.settle(kid, hopeful):
                found.keep(kid)
                bound = kid.rank(weights)


def _adds(space: Space, node: Node, weights: Mapping[str, float]) -> list[float]:
    """The points that a whole node gets below each level, from the root down."""
    way = [space.root]
    for one in node.chosen[:-1]:
        kid = space.child(way[-1], one)
        assert kid is not None
        way.append(kid)
    whole = node.rank(weights, by_looks=True)[2]
    return [whole - one.rank(weights)[2] for one in way]


def polish(
    space: Space,
    found: Found,
    weights: Mapping[str, float],
    kind: str | None = None,
    budget: int = POLISH,
    start: Node | None = None,
    held: tuple[str, ...] = (),
) -> Node | None:
    """The best of a kind, or `start`, moved one axis at a time while that betters it; what is seen joins the pool.

    Axes that are `held` are not moved. Where nothing late is at fault it goes on by looks, and only where it ends is
    settled; where that is not as good as it looked, each is settled from there on.
    """
    best = start or found.best(weights, kind)
    if best is None:
        return None
    found.settle(best)
    misled = ended = False

    def late(node: Node) -> bool:
        return not node.words.keys().isdisjoint(space.late)

    with space.counts.at_most(budget):
        while not ended:
            by_looks = not misled and not late(best)
            way = [best]
            try:
                for node in _climb(space, found, weights, kind, best, held, by_looks):
                    way.append(node)
                    if not misled and (found.good(node) and found.first_at is None if by_looks else not late(node)):
                        break
                else:
                    ended = True
            finally:
                hopeful = _below(rank(best, weights, kind), weights, kind)
                best = next((node for node in way[:0:-1] if found.settle(node, hopeful)), best)
            if by_looks and best is not way[-1]:
                misled, ended = True, False
    return best


def _climb(
    space: Space,
    found: Found,
    weights: Mapping[str, float],
    kind: str | None,
    best: Node,
    held: tuple[str, ...],
    by_looks: bool,
) -> Iterator[Node]:
    """Each that is better than the one before: by looks, or settled."""
    tried = 0  # axes since the last that bettered it
    # What its faults name as their cure is moved first, and then what is chosen last, as it costs least; but a stop is
    # most often undone by another low fire, and hardly anything by another lip.
    free = [at for at, axis in enumerate(space.axes) if axis.name not in held]
    cures = _cures(space, best)
    order = sorted(
        free,
        key=lambda at: (
            at not in cures,
            not best.stops or space.axes[at].name != "low fire",
            space.axes[at].name == "lip",
            -at,
        ),
    )
    while tried < len(order):
        hopeful = _below(rank(best, weights, kind, by_looks), weights, kind)
        for node in _neighbours(space, best, order[0], hopeful):
            if by_looks or found.settle(node, hopeful):
                found.keep(node)
                best, tried = node, 0
                yield node
                break
        else:
            order, tried = [*order[1:], order[0]], tried + 1


def _cures(space: Space, node: Node) -> set[int]:
    """Axes of what the faults of a node name as their cure."""
    keys = node.words.keys() & CHECKS.keys() - space.root.words.keys()
    settings = {setting for key in keys for setting, _ in cures_of(node, key)}
    return {space.decided_at[setting] for setting in settings if setting in space.decided_at}


def cures_of(node: Node, key: str) -> Iterable[tuple[str, str]]:
    """(setting, move) of what cures a check, as it says of this design."""
    judged = node.burner.call(checks.CHECKS[key])
    return CHECKS[key].cures if judged.cures is None else judged.cures


def refine(space: Space, found: Found, weights: Mapping[str, float], budget: int) -> None:
    """The best of all moved by less than from size to size on the menus, as long as that betters it; then polished."""
    best = found.best(weights)
    with space.counts.at_most(budget):
        while best is not None and (finer := _finer(space, found, weights, best)) is not best:
            best = polish(space, found, weights, None, POLISH, finer)


def _finer(space: Space, found: Found, weights: Mapping[str, float], best: Node) -> Node:
    order, tried = [at for at, axis in enumerate(space.axes) if axis.fine], 0
    while tried < len(order):
        hopeful = _below(rank(best, weights, None), weights, None)
        for texts in space.fine(best, order[0]):
            made = space.altered(best, texts, hopeful)
            if made is not None and found.settle(made, hopeful):
                found.keep(made)
                best, tried = made, 0
                break
        else:
            order, tried = [*order[1:], order[0]], tried + 1
    return best


def _below(limit: Rank, weights: Mapping[str, float], kind: str | None) -> Hopeful:
    return lambda part: rank(part, weights, kind) < limit


def others(space: Space, found: Found, node: Node, axis: str, most: int, far: bool = False) -> list[Node]:
    """Designs that differ from a whole node in an axis, into the pool; `far`: not only by what stands near."""
    at = [one.name for one in space.axes].index(axis)
    made = []
    with space.counts.at_most(most):
        for other in _neighbours(space, node, at, most=MOST_FAR if far else 2 * NEAR):
            found.keep(other)
            made.append(other)
    return made


def followed(space: Space, model: Node) -> Node | None:
    """The whole node that is most like one of another space."""
    return next(_followed(space, space.root, model, lambda node: True), None)


def _neighbours(
    space: Space, node: Node, at: int, hopeful: Hopeful = lambda node: True, most: int = 2 * NEAR
) -> Iterator[Node]:
    """Whole nodes that differ in one axis, and in later ones only where what was chosen is gone; the nearest first, and
    for one that is bought all that lies there; what is spare only for one with faults of its own.

    Ranks only grow with depth, so what is not `hopeful` on the way is left.
    """
    parent = space.root
    for one in node.chosen[:at]:
        kid = space.child(parent, one)
        if kid is None:
            return
        parent = kid
    faulty = not node.words.keys() <= space.root.words.keys()
    menu = [one for one in space.menu(parent) if faulty or not one.spare or one == node.chosen[at]]
    chosen = node.chosen[at]
    if chosen in menu:
        here = menu.index(chosen)
        near = sorted(menu, key=lambda other: abs(menu.index(other) - here))[1:]
    else:
        near = sorted(menu, key=lambda other: _far(other, chosen))
    lies_there = [one for one in near[most:] if not one.buy] if chosen.buy else []  # however far on the menu
    for one in (*near[:most], *lies_there):
        kid = space.child(parent, one, hopeful)
        if kid is not None:
            yield from _followed(space, kid, node, hopeful)


def _followed(space: Space, node: Node, model: Node, hopeful: Hopeful) -> Iterator[Node]:
    """Down along what a model chose; where that is gone, the best of what stands near its place."""
    while node.level < space.last:
        menu = space.menu(node)
        wanted = model.chosen[node.level + 1]
        near: list[Option] = [one for one in menu if one.texts == wanted.texts]
        if not near:
            near = sorted(menu, key=lambda one: _unlike(one, wanted))[: NEAR + 1]
        kids = [kid for one in near if (kid := space.child(node, one, hopeful)) is not None]
        if not kids:
            return
        node = min(kids, key=lambda kid: (kid.stops, kid.cautions, points(kid.terms, EVEN)))
    yield node


def _far(one: Option, other: Option) -> float:
    """How far two options are apart: numbers by a share of the larger, words by 1."""
    far = 0.0
    for (key, mine), (_, theirs) in zip(one.texts, other.texts):
        if mine != theirs:
            values = [parsed(key, text) for text in (mine, theirs)]
            most = max(abs(value) if isinstance(value, (int, float)) else 0.0 for value in values)
            both = most and all(isinstance(value, (int, float)) for value in values)
            far += abs(values[0] - values[1]) / most if both else 1.0
    return far


def _unlike(one: Option, other: Option) -> int:
    """In how many texts two options differ."""
    return sum(mine != theirs for mine, theirs in zip(one.texts, other.texts))
