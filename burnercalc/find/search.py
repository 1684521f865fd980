"""The search: dives to first designs, the best of each polished, then the tree best first, bounded by what was found.

It is deterministic: no dice, and equals keep the order of the menus. When the tree is exhausted within the budget, the
best design is proven (`complete`); else it is the best of what was looked at, and no design is ever better than judged.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from heapq import heappop, heappush
from typing import Any

from .choices import Option
from .score import BY_TERM, points
from .space import Bound, Hopeful, Node, Space

# Nodes kept at each level of a dive; whether it begins with the likeliest length, or in the middle.
DIVES = ((2, True), (4, False))
BUDGET, POLISH = 700, 100  # nodes: of the search for the best of all, and of polishing one kind
NEAR = 2  # options either side that a polish tries of an axis, and that stand in for one that is gone

Rank = tuple[Any, ...]


@dataclass
class Found:
    """Whole nodes in the order found; `first_at`: nodes judged until the first without a fault that can be cured."""

    pool: list[Node] = field(default_factory=list)
    complete: bool = False
    first_at: int | None = None
    hear: Callable[[Node], None] | None = None

    def best(self, weights: Mapping[str, float], kind: str | None = None) -> Node | None:
        return min(self.pool, key=lambda node: rank(node, weights, kind), default=None)


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
    found = Found(hear=first)
    begun = space.counts.nodes

    def spent() -> int:
        return space.counts.nodes - begun

    for width, by_thumb in DIVES:
        nodes = dive(space, space.root, weights, width, by_thumb)
        for node in nodes:
            _keep(found, node, spent())
        polish(space, found, weights, start=min(nodes, key=lambda node: rank(node, weights), default=None))
    if not found.pool and (one := _any(space, weights, budget)) is not None:
        _keep(found, one, spent())
        polish(space, found, weights)
    _best_first(space, weights, budget, found, spent)
    return found


def _keep(found: Found, node: Node, at: int) -> None:
    if all(node is not one for one in found.pool):
        found.pool.append(node)
        if found.first_at is None and not node.stops:
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
        # Whole ones are kept in any case: one may be the best of a kind.
        return node.level == last or bound is None or node.rank(weights) < bound

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
) -> Node | None:
    """The best of a kind, or `start`, moved one axis at a time while that betters it; what is seen joins the pool."""
    start = start or found.best(weights, kind)
    if start is None:
        return None
    best: Node = start
    begun, moved = space.counts.nodes, True
    while moved:
        moved = False
        # A stop is most often undone by another low fire; else what is chosen last is moved first, as it costs least.
        order = sorted(
            range(len(space.axes)), key=lambda at: (not best.stops or space.axes[at].name != "low fire", -at)
        )
        for at in order:
            for node in _neighbours(space, best, at, _below(rank(best, weights, kind), weights, kind)):
                _keep(found, node, space.counts.nodes)
                if rank(node, weights, kind) < rank(best, weights, kind):
                    best, moved = node, True
                    break
            if space.counts.nodes - begun >= budget:
                return best
    return best


def _below(limit: Rank, weights: Mapping[str, float], kind: str | None) -> Hopeful:
    return lambda part: rank(part, weights, kind) < limit


def others(space: Space, found: Found, node: Node, at: int) -> None:
    """Designs that differ from a whole node in an axis, into the pool."""
    for other in _neighbours(space, node, at):
        _keep(found, other, space.counts.nodes)


def _neighbours(space: Space, node: Node, at: int, hopeful: Hopeful = lambda node: True) -> Iterator[Node]:
    """Whole nodes that differ in one axis, and in later ones only where what was chosen is gone.

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
    for one in sorted(menu, key=lambda other: abs(menu.index(other) - here))[1 : 2 * NEAR + 1]:
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
