"""The search: dives to first designs, the best of each polished, then the tree best first, bounded by what was found.

It is deterministic: no dice, and equals keep the order of the menus. When the tree is exhausted within the budget, the
best design is proven (`complete`); else it is the best of what was looked at, and no design is ever better than judged.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from heapq import heappop, heappush
from typing import Any

from .choices import MOST_LENGTHS, Option
from .score import BY_TERM, points
from .space import Bound, Hopeful, Node, Space

# Nodes kept at each level of a dive: of the first, and of one that looks once more where that fails.
WIDTH, WIDER = 2, 4
# Nodes: of the search for the best of all, of polishing its first design, those of another number of burners, one kind.
BUDGET, CLIMB, ANOTHER_COUNT, POLISH = 500, 260, 100, 60
NEAR = 2  # options either side that a polish tries of an axis, and that stand in for one that is gone

Rank = tuple[Any, ...]


@dataclass
class Found:
    """Whole nodes in the order found; `first_at`: nodes judged until the first that has no fault but what is `given`,
    of which `hear` is told."""

    pool: list[Node] = field(default_factory=list)
    complete: bool = False
    first_at: int | None = None
    hear: Callable[[Node], None] | None = None
    given: frozenset[str] = frozenset()

    def good(self, node: Node) -> bool:
        return node.words.keys() <= self.given

    def best(self, weights: Mapping[str, float], kind: str | None = None) -> Node | None:
        return min(self.pool, key=lambda node: rank(node, weights, kind), default=None)

    def rank(self, weights: Mapping[str, float]) -> Bound:
        """Of the best."""
        return min(node.rank(weights) for node in self.pool)


def rank(node: Node, weights: Mapping[str, float], kind: str | None = None) -> Rank:
    """What is compared: stops, cautions, then the term of a kind to its grain if one is asked, then points."""
    stops, cautions, sum_ = node.rank(weights)
    if kind is None:
        return stops, cautions, sum_
    term = BY_TERM[kind]
    return stops, cautions, round(node.terms.get(kind, 0.0) / term.grain), sum_


def search(
    space: Space, weights: Mapping[str, float], budget: int = BUDGET, first: Callable[[Node], None] | None = None
) -> Found:
    """Whole nodes of a space, the best among them; `first` hears the first good one when it is found."""
    found = Found(hear=first, given=frozenset(space.root.words))
    begun = space.counts.nodes

    def spent() -> int:
        return space.counts.nodes - begun

    def look(node: Node, width: int, most: int, by_thumb: bool = True) -> bool:
        """A dive from a node, and the best of it polished; whether the best of all is good by now."""
        nodes = dive(space, node, weights, width, by_thumb)
        for one in nodes:
            _keep(found, one, spent())
        if nodes:
            polish(space, found, weights, None, most, min(nodes, key=lambda node: rank(node, weights)))
        best = found.best(weights)
        return best is not None and found.good(best)

    climb = min(CLIMB, budget // 2)
    if not look(space.root, WIDTH, climb) and not look(space.root, WIDER, climb, False):
        for node in _other_bodies(space, found.best(weights)):
            if spent() >= budget or look(node, 1, POLISH):
                break
    if not found.pool and (one := _any(space, weights, budget)) is not None:
        _keep(found, one, spent())
        polish(space, found, weights)
    for node in _other_counts(space, found, weights):
        if spent() < budget:
            look(node, WIDTH, ANOTHER_COUNT)
    _best_first(space, weights, budget, found, spent)
    return found


def _other_counts(space: Space, found: Found, weights: Mapping[str, float]) -> Iterator[Node]:
    """The first fire of each other number of burners that may be better than what is found."""
    best = found.best(weights)
    seen = {best.values["burner_count"]} if best else set()
    for one in space.menu(space.root) if best else ():
        node = space.child(space.root, one)
        if node is None or node.values["burner_count"] in seen:
            continue
        seen.add(node.values["burner_count"])
        if any(kid.rank(weights) < found.rank(weights) for kid in _kids(space, node)):
            yield node


def _other_bodies(space: Space, best: Node | None) -> Iterator[Node]:
    """Of the fire of the best, with each other body."""
    node: Node | None = space.root
    at = space.decided_at["body_kind"]
    for one in best.chosen[:at] if best else ():
        node = space.child(node, one) if node else None
    if node is None or best is None:
        return
    for one in space.menu(node):
        kid = space.child(node, one) if one.texts != best.chosen[at].texts else None
        if kid is not None:
            yield kid


def _keep(found: Found, node: Node, at: int) -> None:
    if all(node is not one for one in found.pool):
        found.pool.append(node)
        if found.first_at is None and found.good(node):
            found.first_at = at
            if found.hear:
                found.hear(node)


def dive(space: Space, node: Node, weights: Mapping[str, float], width: int, by_thumb: bool = True) -> list[Node]:
    """Down from a node, keeping the best few at each level; empty when all of them lead nowhere."""
    last = len(space.axes) - 1
    beam = [node]
    while beam and beam[0].level < last:
        best: list[tuple[Bound, float, Node]] = []

        def hopeful(part: Node, best: list[tuple[Bound, float, Node]] = best) -> bool:
            return len(best) < width or part.rank(weights) <= best[-1][0]

        for one in beam:
            likely = space.likely(one, by_thumb) if space.menu(one) else 0.0
            for at, choice in enumerate(space.menu(one)):
                kid = space.child(one, choice, hopeful)
                if kid is not None and (kid.level == last or space.menu(kid)):
                    best.append((kid.rank(weights), abs(at - likely), kid))
                    # Equals keep the order of the menus.
                    best.sort(key=lambda found: found[:2])
                    del best[width:]
        beam = [kid for _, _, kid in best]
    return beam


def _any(space: Space, weights: Mapping[str, float], budget: int) -> Node | None:
    """The first whole node, depth first with the best child first; None when there is none, or none in the budget."""
    begun, stack = space.counts.nodes, [space.root]
    while stack and space.counts.nodes - begun < budget:
        node = stack.pop()
        if node.level == len(space.axes) - 1:
            return node
        stack.extend(sorted(_kids(space, node), key=lambda kid: kid.rank(weights), reverse=True))
    return None


def _kids(space: Space, node: Node, hopeful: Hopeful = lambda node: True) -> Iterator[Node]:
    for one in space.menu(node):
        kid = space.child(node, one, hopeful)
        if kid is not None:
            yield kid


def _best_first(
    space: Space, weights: Mapping[str, float], budget: int, found: Found, spent: Callable[[], int]
) -> None:
    """Best first with the best so far as the bound; deeper first among equals."""
    last = len(space.axes) - 1
    best = found.best(weights)
    bound = best.rank(weights) if best else None
    heap: list[tuple[int, int, int, float, int, Node]] = []
    serial = 0

    def hopeful(node: Node) -> bool:
        return bound is None or node.rank(weights) < bound

    def push(node: Node) -> None:
        nonlocal serial
        stops, cautions, sum_ = node.rank(weights)
        serial += 1
        heappush(heap, (stops, cautions, -node.level, sum_, serial, node))

    push(space.root)
    while heap:
        if spent() >= budget:
            return
        *_, node = heappop(heap)
        if not hopeful(node):
            continue
        for kid in _kids(space, node, hopeful):
            if kid.level == last:
                _keep(found, kid, spent())
                if bound is None or kid.rank(weights) < bound:
                    bound = kid.rank(weights)
            else:
                push(kid)
    found.complete = True


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

    Axes that are `held` are not moved.
    """
    start = start or found.best(weights, kind)
    if start is None:
        return None
    best: Node = start
    most, tried = space.counts.nodes + budget, 0  # tried: axes since the last that bettered it
    # What is chosen last is moved first, as it costs least; but a stop is most often undone by another low fire.
    free = [at for at, axis in enumerate(space.axes) if axis.name not in held]
    order = sorted(free, key=lambda at: (not best.stops or space.axes[at].name != "low fire", -at))
    while tried < len(order) and space.counts.nodes < most:
        better = _better(space, found, weights, kind, best, order[0], most)
        if better is None:
            order, tried = [*order[1:], order[0]], tried + 1
        else:
            best, tried = better, 0
    return best


def _better(
    space: Space, found: Found, weights: Mapping[str, float], kind: str | None, best: Node, at: int, most: int
) -> Node | None:
    """The first that differs in an axis and is better; None when there is none, or none before so many nodes."""
    limit = rank(best, weights, kind)
    for node in _neighbours(space, best, at, _below(limit, weights, kind)):
        _keep(found, node, space.counts.nodes)
        if rank(node, weights, kind) < limit:
            return node
        if space.counts.nodes >= most:
            break
    return None


def _below(limit: Rank, weights: Mapping[str, float], kind: str | None) -> Hopeful:
    return lambda part: rank(part, weights, kind) < limit


def others(space: Space, found: Found, node: Node, axis: str, far: bool = False) -> list[Node]:
    """Designs that differ from a whole node in an axis, into the pool; `far`: not only by what stands near."""
    at = [one.name for one in space.axes].index(axis)
    made = list(_neighbours(space, node, at, most=MOST_LENGTHS + 1 if far else 2 * NEAR))
    for other in made:
        _keep(found, other, space.counts.nodes)
    return made


def _neighbours(
    space: Space, node: Node, at: int, hopeful: Hopeful = lambda node: True, most: int = 2 * NEAR
) -> Iterator[Node]:
    """Whole nodes that differ in one axis, and in later ones only where what was chosen is gone; the nearest first.

    Ranks only grow with depth, so what is not `hopeful` on the way is left.
    """
    parent = space.root
    for one in node.chosen[:at]:
        kid = space.child(parent, one)
        if kid is None:
            return
        parent = kid
    menu = space.menu(parent)
    here = menu.index(node.chosen[at]) if node.chosen[at] in menu else 0
    for one in sorted(menu, key=lambda other: abs(menu.index(other) - here))[1 : most + 1]:
        kid = space.child(parent, one, hopeful)
        if kid is not None:
            yield from _followed(space, kid, node, hopeful)


def _followed(space: Space, node: Node, model: Node, hopeful: Hopeful) -> Iterator[Node]:
    """Down along what a model chose; where that is gone, the best of what stands near its place."""
    while node.level < len(space.axes) - 1:
        menu = space.menu(node)
        wanted = model.chosen[node.level + 1]
        near: list[Option] = [one for one in menu if one.texts == wanted.texts]
        if not near:
            near = sorted(menu, key=lambda one: _unlike(one, wanted))[: NEAR + 1]
        kids = [kid for one in near if (kid := space.child(node, one, hopeful)) is not None]
        if not kids:
            return
        node = min(kids, key=lambda kid: (kid.stops, kid.cautions, points(kid.terms, {}.fromkeys(BY_TERM, 1.0))))
    yield node


def _unlike(one: Option, other: Option) -> int:
    """In how many texts two options differ."""
    return sum(mine != theirs for mine, theirs in zip(one.texts, other.texts))
