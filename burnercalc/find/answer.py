"""What find answers: designs that differ in kind, what each costs, gives up and is limited by; what is in the way."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from itertools import islice
from math import inf
from typing import Any

from ..catalogue import CHECKS
from ..design import Design
from ..errors import InputErrors, together
from ..link import to_link
from ..result import Result, solve
from ..settings import BY_KEY, SETTINGS
from ..units import show, split_number
from .bill import COUNTED, TAKEN, Bill, Bought
from .cannot import can_be, nothing_fits
from .choices import AXES, sources
from .faults import Fault, blamed, faults_of, harm, worst_of
from .good import mending
from .hardy import CARD, card_words, off_words, spoilt
from .have import Have
from .on_screen import in_question
from .purchase import Opening, smallest_purchase, tried
from .score import BY_TERM, KINDS, THIN, TOLD, Term, margin, that_count, weights_of
from .search import (
    BUDGET,
    CLIMB,
    LEAST_BUDGET,
    POLISH,
    SEARCH,
    Found,
    cures_of,
    first_of,
    nearly,
    others,
    polish,
    rank,
    refine,
    search,
)
from .space import SOLVE, Counts, Node, Space, uncollected

NUMBERS = ("firing_rate_gross", "port_count", "plenum_to_port_ratio", "turndown")  # those that the page keeps in sight
PURCHASE = 380  # nodes that are left for one, where the best is at fault
REFINE = 240  # nodes, of the best between the sizes of the menus
LEAST_SHOWN, MOST_SHOWN = 3, 5
LIT = 0.6  # of the chamber's length: where fire falls on less, it is told what heats the rest; common practice
REST = ", the rest heated by gas and glowing walls alone"
CLEAR = 0.05  # by which share another design is to be less in a kind
ABOUT_AS_NEAR = 1.5  # times as far off as the nearest limit
Progress = Callable[[int, int, str], None]  # nodes judged, nodes in all, how the best stands so far
# Axes in which another way of building is looked for, and what is held then; nodes for each.
WAYS = {"body": ("body", "fire"), "length": ("length",), "blower": ("blower",), "jet": ("jet", "cylinder")}
WAY_POLISH, MOST_WAYS, LONGER = 60, 2, 1.25  # times as long is another way
ROOM_TO_GROW = 2.0  # times its length must come out of the piece, where a mend may move the size of the body
MENDED = (  # settings that take nothing from the shop, moved in the least wrong designs
    *("firing_rate", "low_fire", "pattern", "rows", "ports_per_row", "setback", "grip", "edge_margin"),
    *("block_thickness", "pin_depth", "corner_radius", "corner_drill", "cap_thickness", "mould_clearance"),
    *("baffle_holes", "baffle_hole_diameter", "baffle_bend_angle", "mix_pipe_length", "mix_pipe_elbows"),
    "lit_by",
)
# Sizes of what lies there, of axes whose settings say more than that.
SIZES = {"inlet": ("pipe", "inlet"), "mix pipe": ("pipe", "mix_pipe"), "jet": ("drill", "jet_drill")}
FACE_KEYS = (  # in one of which those that are mended differ
    *("body_kind", "body_width", "body_depth", "port_diameter", "burner_count"),
    *("body_length", "rows", "ports_per_row", "pattern"),
)
MOST_MENDED, MENDING, AGAIN = 4, 60, 12  # designs that are mended, solves of all of them, and of one found after that
BY_SIZE = ("body_width", "body_depth", "wall", "port_diameter")  # as a rack holds them
# What the best of all is called when it has a fault, and what is shown besides the best in a kind.
LEAST_WRONG, ANOTHER_WAY = "least wrong", "another way"


@dataclass(frozen=True)
class Offer:
    """A found design. `kinds`: what it is best in; `differs`: in what it is built another way than the best of all;
    `buys`: what must be bought; `mine`: settings that are sizes of what lies there, and those that were mine before;
    `faults`: what the burner can be blamed for; `untold`: of what is bought, things of kinds of which none or too few
    lie there and none may be bought; the rest in words."""

    kinds: tuple[str, ...]
    differs: str
    design: Design
    result: Result
    terms: Mapping[str, float]
    points: float
    bill: Bill
    buys: tuple[Bought, ...]
    mine: tuple[str, ...]
    faults: tuple[Fault, ...]
    gives_up: tuple[str, ...]
    limited_by: str
    untold: tuple[Bought, ...] = ()

    @property
    def verdict(self) -> str:
        """The worst word, of the chamber and the shop too: a good burner in a chamber with a stop is not to be lit."""
        return worst_of([*self.faults, *faults_of(self.result)])

    @property
    def own_verdict(self) -> str:
        """Of what the burner can be blamed for."""
        return worst_of(self.faults)

    def link(self, base: str = "") -> str:
        return to_link(self.design, base)


@dataclass(frozen=True)
class Answer:
    """`given`: faults of chamber and shop that no burner changes; `in_the_way`: of the best design besides
    these, the worst first; `tried`: what was tried as a purchase, in words.

    `complete`: every design that the shop allows was looked at or bounded.
    """

    offers: tuple[Offer, ...]
    given: tuple[Fault, ...]
    in_the_way: tuple[Fault, ...]
    opening: Opening | None
    tried: tuple[str, ...]
    weights: Mapping[str, float]
    complete: bool
    counts: Counts
    first_at: int | None


@uncollected()
def find(
    start: Design,
    have: Have,
    weights: Mapping[str, Any] | None = None,
    budget: int = BUDGET,
    progress: Progress | None = None,
    first: Callable[[Design], None] | None = None,
) -> Answer:
    """Designs for the chamber, work and fuel of `start` from what a shop has.

    Arguments:
        start      its settings are the question where the search moves none of them
        have       see have.read_have; its settings that are mine are never moved
        weights    {term of the score: weight}, 1 where none is given
        budget     steps in all, a node judged or a part of a solve; the same budget gives the same answer anywhere
        progress   called with the steps so far, the most that there will be, and how the best stands so far, in words
        first      called with the first good design, as soon as it is found
    Raises:
        InputErrors   what is mine and cannot be, and a shop from which nothing can be built
    """
    weighed, _ = together(lambda: weights_of(weights or {}), lambda: can_be(start, have))
    have = have.in_order()
    counts = Counts(most=budget)
    space = Space(start, have, counts=counts)
    found = Found(space, hear=first and (lambda node: first(space.design(node))))
    if progress:
        counts.tell = lambda nodes: progress(nodes, budget, so_far(found.least))
    asked = None
    with counts.at_most(max(budget - len(space.axes), LEAST_BUDGET)):
        search(space, weighed, max(budget * SEARCH // BUDGET, LEAST_BUDGET), found)
    with counts.at_most(2 * len(space.axes)):
        asked = in_question(space)
    if not found.pool:
        with counts.at_most(counts.left):  # one that stands, if no good one, before anything is refused
            found.keep(*filter(None, [asked or (None if found.complete else first_of(space))]))
        found.best(weighed)
    if not found.pool:
        raise InputErrors(nothing_fits(space))
    found.given = given_keys = _given(space, found)
    found.settle(_best(found, weighed))  # it may be good but for these
    if "stop" not in _own(_best(found, weighed), given_keys).values():
        _fewer_burners(space, found, weighed, CLIMB * budget // BUDGET)
    kinds = () if _own(_best(found, weighed), given_keys) else that_count(KINDS, start.chamber_shape)
    for kind in (*kinds, None):  # what one of a kind leads to may be bettered for itself
        polish(space, found, weighed, kind, min(POLISH if kind is None else POLISH // 2, budget // 10))
    given_keys = _given(space, found)
    if not _own(_best(found, weighed), given_keys):
        refine(space, found, weighed, REFINE * budget // BUDGET)
    if asked is not None and asked not in found.pool:
        _add(asked, space, found, weighed, given_keys, budget)
    given_keys = _given(space, found)
    if not _own(_best(found, weighed), given_keys):
        _turned_otherwise(space, found, weighed, kinds, min(POLISH, budget // 10))
    best, chosen = _best_in_each_kind(found, weighed, given_keys)
    if _own(best, given_keys) and _mended(space, found, chosen, weighed, given_keys):
        best, chosen = _best_in_each_kind(found, weighed, given_keys)
    if len(chosen) < LEAST_SHOWN:
        with counts.at_most(counts.left // 8 if _own(best, given_keys) else counts.left):  # the rest for a purchase
            _look_for_ways(space, found, best, weighed)
        before = best
        best, chosen = _best_in_each_kind(found, weighed, given_keys)  # what was added may be better in a kind
        if best is not before and _own(best, given_keys) and _mended(space, found, chosen, weighed, given_keys, AGAIN):
            best, chosen = _best_in_each_kind(found, weighed, given_keys)
    ways = _ways(space, found, [node for _, node in chosen], weighed, better=True)
    chosen += [([ANOTHER_WAY], node) for node in ways[len(chosen) :]]
    _name_by_kind(chosen, weighed)
    offers = _offers(space, [(kinds or [ANOTHER_WAY], node) for kinds, node in chosen], weighed, given_keys)
    given = faults_of(offers[0].result, set(offers[0].result.checks) - given_keys)
    way = offers[0].faults
    opening = smallest_purchase(start, have, space, best, weighed, given_keys) if way else None
    things = tuple(tried(have, best, str(start.sizes))) if way else ()
    return Answer(tuple(offers), given, way, opening, things, weighed, found.complete, space.counts, found.first_at)


def so_far(least: tuple[int, int] | None) -> str:
    """How the best stands while it is looked for."""
    if least is None:
        return "none whole yet"
    if not any(least):
        return "a good one found"
    many = [f"{count} {word}{'s' if count > 1 else ''}" for count, word in zip(least, ("stop", "caution")) if count]
    return f"none good yet, best so far: {', '.join(many)}"


# The list of designs


def _given(space: Space, found: Found) -> set[str]:
    """Checks at fault that no burner changes: judged before any choice, or of every design and in each of them, for it
    may be at fault in several ways, cured by no choice."""
    settled = [node for node in found.pool if node.settled]
    always = set.intersection(*(set(node.words) for node in settled)) & set(CHECKS)

    def chosen_by_none(key: str, node: Node) -> bool:
        cures = {setting for setting, _ in cures_of(node, key)}
        return bool(cures) and not cures & set(space.decided_at)

    return set(space.root.words) | {key for key in always if all(chosen_by_none(key, node) for node in settled)}


def _fewer_burners(space: Space, found: Found, weights: Mapping[str, float], budget: int) -> None:
    """Where the best is of several burners, the best of fewer polished, as a second burner often only hides what one
    was not turned to."""
    count = _best(found, weights).values["burner_count"]
    if count == 1:
        return
    ranked = found.in_order(lambda node: rank(node, weights), lambda node: node.values["burner_count"] < count)
    fewer = next(ranked, None)
    if fewer is not None:
        polish(space, found, weights, None, budget, fewer, ("fire",))


def _add(asked: Node, space: Space, found: Found, weights: Mapping[str, float], given: set[str], budget: int) -> None:
    """The design in question into the pool, so that nothing is offered that is worse; polished where it is near the
    best, and moved between the sizes of the menus where that leads to a better one."""
    before = _best(found, weights)
    limit = rank(before, weights)
    found.settle(asked)
    found.keep(asked)
    if rank(asked, weights) < nearly(limit) and rank(asked, weights) != limit:
        polish(space, found, weights, None, min(POLISH, budget // 10), asked)
        if (best := _best(found, weights)) is not before and not _own(best, given):
            refine(space, found, weights, REFINE * budget // BUDGET)


def _turned_otherwise(
    space: Space, found: Found, weights: Mapping[str, float], kinds: tuple[str, ...], most: int
) -> None:
    """The best of each kind, with another low fire as long as that betters it, of which a dive takes one for all."""
    held = tuple(axis.name for axis in space.axes if axis.name != "low fire")
    for kind in kinds:
        polish(space, found, weights, kind, most, None, held)


def _best(found: Found, weights: Mapping[str, float]) -> Node:
    best = found.best(weights)
    assert best is not None
    return best


def _best_in_each_kind(
    found: Found, weights: Mapping[str, float], given: set[str]
) -> tuple[Node, list[tuple[list[str], Node]]]:
    """The best of all, and the list of it and of those that are clearly better in their kind than any listed so far."""
    best = _best(found, weights)
    chosen: list[tuple[list[str], Node]] = [([LEAST_WRONG if _own(best, given) else "best of all"], best)]
    for kind in KINDS:
        node = found.best(weights, kind) or best
        least = min(one.terms[kind] for _, one in chosen)
        if clearly_less(kind, node.terms[kind], least) and len(chosen) < MOST_SHOWN:
            chosen.append(([], node))
    return best, chosen


def clearly_less(kind: str, value: float, than: float) -> bool:
    """Whether a term is less by a twentieth and by what anybody would notice; of days, by a whole one."""
    term = BY_TERM[kind]
    return than - value >= term.clear - 1e-9 and (kind == "days" or value <= (1 - CLEAR) * than)


def _name_by_kind(chosen: list[tuple[list[str], Node]], weights: Mapping[str, float]) -> None:
    """Each kind beside the one listed that has least of it, of those with the fewest faults."""
    for kind in that_count(KINDS, chosen[0][1].values["chamber_shape"]):
        term = BY_TERM[kind]
        of_kind = min(chosen, key=lambda one: (one[1].rank(weights)[:2], one[1].terms[kind]))
        of_kind[0].append(term.kind)


def _own(node: Node, given: set[str]) -> dict[str, str]:
    """The faults of a design that the burner can be blamed for."""
    return {key: word for key, word in node.words.items() if key not in given}


def _mended(
    space: Space,
    found: Found,
    chosen: list[tuple[list[str], Node]],
    weights: Mapping[str, float],
    given: set[str],
    solves: int = MENDING,
) -> bool:
    """Whether a few of the least wrong are better once mended, between what is sold and set in the menus.

    Only what takes nothing from the shop is moved. The designs that are better join those found; one that is good is
    polished.
    """
    tries: list[Node] = []

    def unlike(node: Node) -> bool:
        """Whether its face is none of those that are tried."""
        return all(any(node.texts.get(key) != one.texts.get(key) for key in FACE_KEYS) for one in tries)

    ranked = found.in_order(lambda node: rank(node, weights), unlike)
    for node in (*(node for _, node in chosen), *islice(ranked, MOST_MENDED)):
        if unlike(node) and len(tries) < MOST_MENDED:
            tries.append(node)
    better = False
    keys = [key for key in BY_KEY if key not in MENDED or key in space.mine]
    rest, done = max(space.counts.left // 2, PURCHASE * int(space.counts.most) // BUDGET), space.counts.mending
    for node in tries:
        most = min(solves - (space.counts.mending - done), (space.counts.left - rest) // SOLVE)
        if most <= 0:
            break
        changes, took = mending(space.design(node), keys, most)
        space.counts.solved(took)
        made = there = None
        with space.counts.at_most(len(AXES)):
            there = space.with_beside(changes) if changes else None
            on_axes = {key: text for key, text in changes.items() if key in space.decided_at}
            made = there.altered(node, on_axes) if there else None
        if made is not None and found.settle(made, lambda one: one.rank(weights)[:2] < node.rank(weights)[:2]):
            found.keep(made)
            better = True
            if there and not _own(made, given):
                polish(there, found, weights, None, POLISH, made)
                refine(there, found, weights, REFINE * solves // MENDING)
                break
    return better


def _look_for_ways(space: Space, found: Found, best: Node, weights: Mapping[str, float]) -> None:
    """Other bodies and lengths, and where both are there another blower and other gas, into the pool; the best of each
    is polished."""
    blowers = space.have.of("blower") and space.have.may_buy("blower")
    both = {"blower": blowers, "jet": len(sources(space.have, space.start)) > 1}
    for name, held in WAYS.items():
        if not both.get(name, True) or len(_ways(space, found, [best], weights)) >= LEAST_SHOWN:
            continue
        made = others(space, found, best, name, WAY_POLISH, name == "length")
        differs = [node for node in made if _differs(space, node, best)]
        for node in sorted(differs, key=lambda node: rank(node, weights))[:MOST_WAYS]:
            polish(space, found, weights, None, WAY_POLISH, node, held)
            if len(_ways(space, found, [best], weights)) >= LEAST_SHOWN:
                break


def _differs(space: Space, node: Node, other: Node) -> str:
    """In what a design is built another way than another, in words; "" where in nothing that anybody would notice."""
    said = []
    ours, theirs = (_way(space, one) for one in (node, other))
    words = _way_words(space.design(node), ours) if ours != theirs else {}
    said += [words[key] for key in ours if ours[key] != theirs[key]]
    lengths = sorted(one.values["body_length"] for one in (node, other))
    if not said and lengths[1] >= LONGER * lengths[0]:
        said.append(f"a body {space.design(node).show('body_length')} long")
    return ", ".join(said)


def _way(space: Space, node: Node) -> dict[str, Any]:
    """How many burners, of what body, with which air and gas."""
    chosen = {axis.name: one for axis, one in zip(space.axes, node.chosen)}
    sides = node.values["body_width"], node.values["body_depth"]
    return {
        "burners": node.values["burner_count"],
        "body": (node.values["body_kind"], min(sides), max(sides)),  # a tube that is turned is the same tube
        "pins": node.values["port_diameter"],
        "blower": bool(chosen["blower"].buy),
        "gas": node.values["gas_from"] == "line",
    }


def as_typed(design: Design, key: str) -> str:
    """As it is shown, but what is bought by size as it was typed: 100 mm to a reader of inches, never 3 15/16 in."""
    found = split_number(design.text(key)) if key in BY_SIZE else None
    return design.text(key) if found and found[1] in {"in", "mm"} - {design.units} else design.show(key)


def _way_words(design: Design, way: Mapping[str, Any]) -> dict[str, str]:
    def show(key: str) -> str:
        return as_typed(design, key)

    return {
        "burners": f"{way['burners']} burner{'s' if way['burners'] > 1 else ''}",
        "body": f"a body of {show('body_kind')}, {show('body_width')} x {show('body_depth')}",
        "pins": f"ports of {show('port_diameter')}",
        "blower": "a blower that is bought" if way["blower"] else "the blower at hand",
        "gas": "gas from the line" if way["gas"] else "gas from cylinders",
    }


def _ways(
    space: Space, found: Found, listed: list[Node], weights: Mapping[str, float], better: bool = False
) -> list[Node]:
    """Those listed and, until enough are shown, designs built another way than each of them, with no more faults;
    `better`: each in some number than any other."""
    ways = list(listed)
    least = min(node.rank(weights)[:2] for node in listed)

    def another(node: Node) -> bool:
        return (
            node.rank(weights)[:2] <= least
            and not (better and any(_no_better(node, one) for one in ways))
            and all(_differs(space, node, one) for one in ways)
            and _differs(space, node, ways[0]) not in {_differs(space, one, ways[0]) for one in ways}
        )

    for node in found.in_order(lambda node: rank(node, weights), another):
        if len(ways) >= LEAST_SHOWN:
            break
        ways.append(node)
    return ways


def _no_better(node: Node, than: Node) -> bool:
    """Whether no number of a card is less, by what anybody would notice, than on another."""
    return all(node.terms[key] > than.terms[key] - BY_TERM[key].clear for key in TOLD)


def _offers(
    space: Space, chosen: list[tuple[list[str], Node]], weights: Mapping[str, float], given: set[str]
) -> list[Offer]:
    offers: list[Offer] = []
    before: Result | None = None
    for kinds, node in chosen:
        design = space.design(node)
        space.counts.solves += 1
        result = before = solve(design, before)
        bill = space.bill(node, result.parts)
        bought = _named(bill.things, result)
        faults = blamed(result, given, bill.lacking)
        offers.append(
            Offer(
                tuple(kinds),
                _differs(space, node, chosen[0][1]),
                design,
                result,
                dict(node.terms),
                node.rank(weights)[2],
                bill,
                bought,
                _mine(space, node),
                faults,
                (),
                _limited_by(result, faults),
                _untold(space.have, bill, result),
            )
        )
    least = {key: min(offer.terms[key] for offer in offers) for key in TOLD}
    return [replace(offer, gives_up=_gives_up(offer, least)) for offer in offers]


def _named(things: tuple[Bought, ...], result: Result) -> tuple[Bought, ...]:
    """Each thing on the shopping list by that list's words, and how many of it."""
    burner = result.parts
    keys = [
        entry.key if entry.part is None else ""
        for entry in burner.part("cost").entries(burner.part("train"), result.design.batch_size)
    ]
    said = {key: row for key, row in zip(keys, result.tables["shopping"].rows) if key}
    lines = dict(zip((line.key for line in burner.part("cost").lines), result.tables["cost_lines"].rows))
    named = []
    for one in things:
        words = one.words
        if one.key in said:
            item, sold, *_ = said[one.key]
            words = f"{item}, {sold}" if sold else str(item)
            if one.count < one.of:
                words = f"{one.count} more, of {one.of}: {words}"
            elif one.count > 1 and one.used is None:  # bars say themselves how many
                words = f"{one.count} x {words}"
        elif one.key in lines:
            words = str(lines[one.key][0])
        named.append(replace(one, words=words))
    return tuple(named)


def _untold(have: Have, bill: Bill, result: Result) -> tuple[Bought, ...]:
    """What is bought though its kind may not be, and none or too few of it lie there: nobody was asked."""
    burner = result.parts
    entries = burner.part("cost").entries(burner.part("train"), result.design.batch_size)
    untold = []
    for one, (item, sold, *_) in zip(entries, result.tables["shopping"].rows):
        kind = TAKEN.get(one.key) or COUNTED.get(one.key, "")
        left = int(max(0, one.count - bill.own.get(one.key, 0)))
        if kind and left and (kind in bill.lacking or not (have.of(kind) or have.may_buy(kind))):
            words = f"{item}, {sold}" if sold else str(item)
            price = (one.price or 0.0) * left / one.count
            untold.append(Bought(kind, f"{left} x {words}" if left > 1 else words, price, left))
    return tuple(untold)


def _mine(space: Space, node: Node) -> tuple[str, ...]:
    keys = set(space.mine)
    for axis, one in zip(space.axes, node.chosen):
        if not one.buy and space.have.of(*axis.kinds):
            # A plate is cut to any width, and all to any length, as far as there is enough of it.
            ample = ROOM_TO_GROW * node.values["body_length"] <= space.longest_m(node)
            cut = dict(one.texts).get("body_kind") == "plates" and ample
            keys |= {key for key in axis.stock if not (cut and key in ("body_width", "body_depth"))}
            keys |= {"body_length"} if axis.name == "body" and not ample else set()
        kind, size = SIZES.get(axis.name, ("", ""))
        if size and not one.buy and space.have.of(kind):
            keys.add(size)
        if axis.name == "jet" and not one.buy and space.have.fixed_pressure:
            keys.add("gas_pressure")
    return tuple(setting.key for setting in SETTINGS if setting.key in keys)


def _limited_by(result: Result, faults: tuple[Fault, ...]) -> str:
    """The worst fault; else what forbids to light it, whatever the burner; else what a shop a little off spoils first,
    in its words, be it the one lighting card; else of the limits that are about as near as the nearest the one that
    hurts most."""
    if faults:
        return faults[0].text
    if result.forbids_light:
        return next(one.text for one in result.ranked() if one.verdict == "stop" and not one.declared.lit)
    spoils = [check for check in result.checks.values() if spoilt(check.key, check.verdict, result.parts) is not None]
    first = min(spoils, key=harm, default=None)
    if (card := card_words(result)) and (first is None or harm(result.checks[CARD]) <= harm(first)):
        return card
    if first:
        return off_words(first.key, result)
    good = [check for check in result.checks.values() if check.verdict == "good"]
    off = {check.key: margin(check.key, check.value, check.limit) for check in good}
    far = {key: share for key, share in off.items() if share is not None}
    if not far:
        return ""
    near = max(THIN, ABOUT_AS_NEAR * min(far.values()))
    return min((harm(check), far[check.key], check.text) for check in good if far.get(check.key, inf) <= near)[-1]


def _gives_up(offer: Offer, least: Mapping[str, float]) -> tuple[str, ...]:
    said = []
    for key in TOLD:
        term, value = BY_TERM[key], offer.terms[key]
        ours, theirs = number(term, value), number(term, least[key])
        more = value > least[key] + term.clear - 1e-9 and ours != theirs
        scant = key == "dark" and value > 1 - LIT
        if more or scant:
            said.append(f"{shown(term, value)}{f' instead of {theirs}' if more else ''}{REST if scant else ''}")
    late, design = offer.result.checks.get("heat_up_wait"), offer.design
    if late and late.verdict == "note" and offer.result["heat_up_waits"] is None:
        takes = show(offer.result["heat_up_takes"], "time", design.reader)
        said.append(f"heating up in {takes} instead of {show(design.heat_up_time, 'time', design.reader)}")
    elif late and late.verdict == "note":
        takes, asked, waits = (
            show(value, "time", design.reader)
            for value in (offer.result["heat_up_takes"], design.heat_up_time, offer.result["heat_up_waits"])
        )
        said.append(f"heating up in {takes} instead of {asked}, {waits} of it at the rate to light at")
    fire, needed_W = offer.result.part("firing").installed_W, offer.result.part("need").needed_W
    if needed_W is not None and offer.result.checks["rate_for_need"].verdict == "note" and fire < needed_W:
        given, needed = (show(value, "power", design.reader) for value in (fire, needed_W))
        said.append(f"a fire of {given} instead of {needed} that are needed, so it heats up later than asked")
    return tuple(said)


def number(term: Term, value: float) -> str:
    """A term's number as it is read."""
    match term.key:
        case "low":
            return f"{1 / value:.1f} to 1" if value > 0 else "none"
        case "dark":
            return f"{100 * (1 - value):.0f} %"
        case "spread":
            return f"{100 * value:.1f} %" if value >= 0.0005 else "less than 0.1 %"
        case "days":
            return f"{value:.0f}"
        case "work":
            return f"{value / 3600:.1f} h"
    return f"{value:.2f}"


SHOWN = {
    "low": "low fire set for {}",
    "dark": "fire on {} of the chamber's length",
    "spread": "{} from port to port",
    "days": "{} days to the last burner",
    "work": "{} of work",
    "money": "{} to spend",
}


def shown(term: Term, value: float) -> str:
    """A term's number in words."""
    return SHOWN.get(term.key, "{} " + term.measure).format(number(term, value))
