"""The tree of choices: each node has decided a few axes more, and is judged by every check that these decide.

A check is asked at the first node where all that it rests on is decided, what rests on few parts first, so most of
what fails is seen before the costly parts are made; what rests on the costliest is asked only when a whole design is
settled, which those are that would be the best by all else. A part that another node has made of the very same things
is taken from there. What is found at a node only grows, with depth and with each check, so (stops, cautions, points) of
a node is a bound for all designs below it, and no more is asked of one that is out of the running.
"""

import gc
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from functools import cache
from math import inf, prod
from typing import Any

from .. import checks
from ..burner import Burner
from ..design import Design, parsed, supplied_so
from ..errors import InputError, InputErrors
from ..parts import PARTS
from ..parts.own_heat import EITHER, OwnHeat
from ..parts.schedule import Schedule
from ..parts.train import Train
from ..rules import RULES
from ..settings import SETTINGS
from .begun import begun
from .bill import (
    bill,
    first_fire_gas,
    least_bill,
    least_of_a_box,
    least_of_a_fire,
    pins_missing,
    thin_supply,
    thin_train,
)
from .choices import AXES, Asked, Axis, Option, blocks_at_once, from_stick_m, middle, ports_of_pins, sources
from .faults import short_of
from .graph import GIVEN, level_of, parts_of, resting_on, touches
from .hardy import spoilt
from .have import Have
from .score import IDLE, SPOILT, TERMS, days_of_one_term, days_term, how_wrong, points, thinness
from .thumb import too_weak_to_light

BOXED = 12  # what is to be spent is asked before what rests on more parts than so many
SOLVE = 5  # nodes that a solve counts for, of a design that is mended
# Costly to make, and seldom at fault: what rests on one of them is asked when a whole design is settled.
LATE = ("hot_run", "soaking", "tries", "as_cast")
# What counts for a line alone, or for cylinders alone.
OF_SUPPLY = {one.key: one.when for one in SETTINGS if one.when[:1] in (("fuel",), ("gas_from",))}
GAS_FROM = frozenset(("gas_from",))
Bound = tuple[int, int, float]
Hopeful = Callable[["Node"], bool]


class Spent(Exception):
    """As many nodes are judged as may be."""


@contextmanager
def uncollected() -> Iterator[None]:
    """What a search makes it keeps to its end, so that to look for garbage in it takes a twentieth of the time and
    finds hardly any."""
    collects = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if collects:
            gc.enable()


@dataclass
class Counts:
    """What a search has done: nodes judged, and whole designs solved, of them `mending` to mend the least wrong.

    `most`: nodes that may be judged. `tell` hears the nodes as they grow.
    """

    nodes: int = 0
    solves: int = 0
    mending: int = 0
    most: float = inf
    tell: Callable[[int], None] | None = None

    def another(self) -> None:
        """One node more; Spent where none is left."""
        if self.nodes >= self.most:
            raise Spent
        self.nodes += 1
        if self.tell:
            self.tell(self.nodes)

    @property
    def left(self) -> int:
        """Nodes that may still be judged."""
        return int(self.most - self.nodes)

    def solved(self, solves: int) -> None:
        """So many designs solved whole to mend one."""
        self.nodes += SOLVE * solves
        self.solves += solves
        self.mending += solves

    @contextmanager
    def at_most(self, nodes: int) -> Iterator[None]:
        """What is done inside ends when so many nodes more are judged, or all that may be."""
        before, self.most = self.most, min(self.most, self.nodes + nodes)
        try:
            yield
        except Spent:
            pass
        finally:
            self.most = before


@dataclass(frozen=True)
class Asking:
    """One thing that is asked of a node: a check, or a term of the score; None asks what is to be spent at least, or
    whether the pins at hand do."""

    key: str
    is_check: bool
    function: Callable[..., Any] | None


@dataclass(eq=False)
class Node:
    """Some axes decided. `words`: {check: verdict} where not good; `terms`: of the score, as far as known; `judging`,
    `settling`: ask one thing more of it at each step, the latter what is costly; `settled`: when nothing is left;
    `tested`: its burner then, with the test fire that it takes; `looked`: the terms before it was settled; `weak`: by
    thumb, see thumb.py; `idle`: cautions by which it never does its work, which rank as stops do."""

    level: int
    values: dict[str, Any]
    texts: dict[str, str]
    chosen: tuple[Option, ...]
    figures: dict[str, float]
    burner: Burner
    words: dict[str, str]
    terms: dict[str, float]
    kids: dict[Option, "Node | None"] = field(default_factory=dict)
    menu: list[Option] | None = None
    judging: Iterator[None] = field(default_factory=lambda: iter(()))
    settling: Iterator[None] = field(default_factory=lambda: iter(()))
    settled: bool = False
    looked: dict[str, float] | None = None
    weak: float | None = None
    idle: int = 0
    tested: Burner | None = None

    @property
    def stops(self) -> int:
        return sum(word == "stop" for word in self.words.values()) + self.idle

    @property
    def cautions(self) -> int:
        return sum(word == "caution" for word in self.words.values())

    def rank(self, weights: Mapping[str, float], by_looks: bool = False) -> Bound:
        """(stops, cautions, points); `by_looks`: by the terms before it was settled, but with the faults of now."""
        terms = {**self.looked, "missed": self.terms["missed"]} if by_looks and self.looked is not None else self.terms
        return self.stops, self.cautions, round(points(terms, weights), 9)


class Space:
    """All designs that a shop allows: the axes that are open, and what is decided at each."""

    def __init__(
        self,
        start: Design,
        have: Have,
        axes: tuple[Axis, ...] = AXES,
        counts: Counts | None = None,
        like: "Space | None" = None,
    ) -> None:
        """`like`: another, of which the parts are shared."""
        self.have, self.axes = have, axes
        self.counts = counts or Counts()
        self.mine = self._mine(start, have)
        self.start = begun(start, self.mine) if self.mine else start
        self.last = len(axes) - 1
        self.decided_at = {key: at for at, axis in enumerate(axes) for key in axis.keys}
        self.asked_at, self.asked_late = self._by_level()
        self.late = frozenset((short_of("bag"), *(one.key for one in self.asked_late if one.is_check)))
        self.rules_at: dict[int, list[Any]] = {}
        for rule, weighed in RULES:
            self.rules_at.setdefault(level_of(weighed, self.decided_at), []).append((rule, weighed))
        # What an option leaves open stays as the question has it.
        self.as_asked = [{key: self.start.text(key) for key in axis.keys} for axis in axes]
        self.parts: dict[Any, Any] = like.parts if like else {}  # of all nodes
        # The cheapest, by the id of the supply that it has, which `parts` keeps.
        self.trains: dict[int, Train] = like.trains if like else {}
        self.root = self._root()

    def _mine(self, start: Design, have: Have) -> dict[str, str]:
        return {key: start.text(key) if text is None else text for key, text in have.mine.items()}

    def _by_level(self) -> tuple[dict[int, list["Asking"]], list["Asking"]]:
        """What is asked at each level: all that it decides, of few parts first; and what is late."""
        asked = [(function, Asking(term.key, False, function)) for term in TERMS for function in term.least]
        asked += [(term.function, Asking(term.key, False, term.function)) for term in TERMS if term.function]
        asked += [(function, Asking(key, True, function)) for key, function in checks.CHECKS.items()]
        found: dict[int, list[tuple[int, Asking]]] = {
            self.decided_at["low_fire"]: [(0, Asking("money", False, None))],
            self.decided_at["rows"]: [(0, Asking("pins", False, None))],
            self.decided_at["inlet"]: [(BOXED, Asking("money", False, None))],
            self.decided_at["mix_pipe"]: [(BOXED, Asking("money", False, None))],
            self.last: [(BOXED, Asking("money", False, None))],
        }
        late: list[tuple[tuple[int, int], Asking]] = []
        for function, one in asked:
            parts = len(parts_of(function))
            if place := _late(function):
                late.append(((place, parts), one))
            else:
                found.setdefault(level_of(touches(function), self.decided_at), []).append((parts, one))
        by_level = {level: [one for _, one in sorted(each, key=lambda each: each[0])] for level, each in found.items()}
        return by_level, [one for _, one in sorted(late, key=lambda each: each[0])]

    def _root(self) -> Node:
        values = self.start.values()
        values.update(dict.fromkeys(self.decided_at))
        # What the search writes itself is not a text of the question any more.
        texts = {key: text for key, text in self.start.texts.items() if key not in self.decided_at}
        node = Node(-1, values, texts, (), {}, self._burner(values), {}, {"missed": 0.0})
        for _ in self._judging(node, self.asked_at.get(-1, ())):
            pass
        return node

    def _burner(self, values: dict[str, Any]) -> Burner:
        return Burner(values.__getitem__, store=self.parts, given=GIVEN)

    # Children

    def menu(self, node: Node) -> list[Option]:
        """Options of the next axis, each once, what is mine kept."""
        if node.menu is None:
            axis, asked, as_asked = self.axes[node.level + 1], self.asking(node), self.as_asked[node.level + 1]
            found = [one.over(as_asked) for one in axis.options(asked)]
            things = [key for key in axis.stock if key in self.mine]
            if things:
                fitting = [one for one in found if self.keeps(one, things)]
                found = fitting or ([] if found and self.have.of(*axis.kinds) else [self._as_set(axis)])
            if kept := {key: self.start.text(key) for key in axis.keys if key in self.mine and key not in things}:
                fitting = [one for one in found if self.keeps(one, list(kept))]
                found = fitting or [replace(one, texts=_over(one.texts, kept), buy="", price=0.0) for one in found]
                found = found or [self._as_set(axis)]
            node.menu = _each_once(found)
            if all(one.spare for one in node.menu):  # the lip that is mine
                node.menu = [replace(one, spare=False) for one in node.menu]
        return node.menu

    def asking(self, node: Node) -> Asked:
        return Asked(self.have, self.start, node.values, node.burner, node.figures)

    def likely(self, node: Node, by: str = "thumb") -> float:
        """The place on the menu of the likeliest option: by a rule of `thumb`, in the `middle` where sizes rise, or for
        a face that is `long`."""
        axis, menu = self.axes[node.level + 1], self.menu(node)
        find = axis.long if by == "long" and axis.long else axis.likely
        if find is None:
            return 0.0
        return (middle if by == "middle" else find)(self.asking(node), menu)

    def weak(self, node: Node) -> float:
        """By thumb, how much too weak the flame of a node is to be lit."""
        if node.weak is None:
            node.weak = too_weak_to_light(self.asking(node))
        return node.weak

    def keeps(self, one: Option, keys: Iterable[str]) -> bool:
        """Whether an option has what the question has of these settings."""
        texts = dict(one.texts)
        return all(_same(parsed(key, texts[key]), self.start.value(key)) for key in keys)

    def _as_set(self, axis: Axis) -> Option:
        texts = tuple((key, self.start.text(key)) for key in axis.keys)
        return Option(texts, "", 0.0, (("length_m", 30.0), ("width_m", 30.0)) if axis.name == "body" else ())

    def child(self, node: Node, one: Option, hopeful: Hopeful = lambda node: True) -> Node | None:
        """The node with one more axis decided; None where a rule refuses it, or as soon as it is not `hopeful`."""
        if one not in node.kids:
            node.kids[one] = self._child(node, one)
        made = node.kids[one]
        if made is None or not hopeful(made):
            return None
        for _ in made.judging:
            if not hopeful(made):
                return None
        return made

    def _child(self, node: Node, one: Option) -> Node | None:
        level = node.level + 1
        if one.spare or not any(
            other.spare for other in node.menu or ()
        ):  # what only stands beside the spare is no choice
            self.counts.another()
        try:
            values = {**node.values, **{key: parsed(key, text) for key, text in one.texts}}
        except (InputError, InputErrors):
            return None
        for rule, weighed in self.rules_at.get(level, ()):
            if all(values[key] is not None for key in weighed) and rule(values) is not None:
                return None
        moved = resting_on(frozenset(key for key, _ in one.texts))
        burner, figures = node.burner.further(values.__getitem__, moved), {**node.figures, **dict(one.figures)}
        made = Node(
            level,
            values,
            {**node.texts, **dict(one.texts)},
            (*node.chosen, one),
            figures,
            burner,
            dict(node.words),
            dict(node.terms),
            idle=node.idle,
        )
        made.judging = self._judging(made, self.asked_at.get(level, ()))
        if level == self.last:
            made.settling = self._settling(made)
        return made

    def settle(self, node: Node, hopeful: Hopeful = lambda node: True) -> bool:
        """Asks of a whole node what is left; whether all of it is asked and it is still `hopeful`."""
        for steps in (node.judging, node.settling):
            for _ in steps:
                if not hopeful(node):
                    return False
        return hopeful(node)

    def _judging(self, node: Node, asked: Iterable[Asking]) -> Iterator[None]:
        """Asks some things of a node; a step ends with the first, and with each that moves its rank."""
        for at, one in enumerate(asked):
            if one.key == "pins":
                if ports_of_pins(node.burner, self.have) < node.burner.part("face").port_count:
                    self._lacks(node, {"pins": pins_missing(node.burner, self.have)})
            elif one.function is None:
                node.terms[one.key] = self._least_to_spend(node)
            elif not one.is_check:
                node.terms[one.key] = node.burner.call(one.function)
            elif (judged := node.burner.call(one.function)) is not None:
                thin = thinness(one.key, judged.verdict, judged.value, judged.limit)
                if (over := spoilt(one.key, judged.verdict, node.burner)) is not None:
                    thin = SPOILT + over
                node.terms["thin"] = node.terms.get("thin", 0.0) + thin
                if judged.verdict in ("caution", "stop"):
                    node.words[one.key] = judged.verdict
                    node.idle += judged.verdict == "caution" and not IDLE.isdisjoint(judged.cases)
                    node.terms["missed"] += how_wrong(one.key, judged.value, judged.limit)
                elif at and not thin:
                    continue
            elif at:
                continue
            yield

    def _settling(self, node: Node) -> Iterator[None]:
        """Asks of a whole node what is costly, and what is to be spent exactly."""
        node.looked = dict(node.terms)
        node.terms["money"] -= first_fire_gas(node.burner)
        node.terms["days"] = days_of_one_term(_schedule(node.burner, past_low=True))
        yield from self._judging(node, self.asked_late)
        past_low = node.burner.part_with("own_heat").past_low
        schedule = node.burner.part_with("schedule", own_heat=EITHER[past_low])
        # Moulds hang on how long the test fire takes.
        node.tested = node.burner.off({}, {"fire_test": node.burner.part_with("fire_test"), "schedule": schedule})
        made = self.bill(node)
        node.terms["money"] = made.to_spend
        node.terms["days"] = days_term(node.tested.part("calendar"))
        for kind in ("money", "days"):  # less where nobody turns to low fire
            node.looked[kind] = min(node.looked[kind], node.terms[kind])
        self._lacks(node, made.lacking)
        node.settled = True

    def _lacks(self, node: Node, lacking: Mapping[str, int]) -> None:
        """A stop for each kind of which too few lie there; of pins it counts too what share of them is missing."""
        if "pins" in lacking and short_of("pins") not in node.words:
            needed = node.burner.part("face").port_count * blocks_at_once(node.burner)
            node.terms["missed"] += lacking["pins"] / needed
        node.words |= dict.fromkeys(map(short_of, lacking), "stop")

    def _least_to_spend(self, node: Node) -> float:
        burner = node.burner
        known = self._chosen(node), self.have, node.figures
        if node.level == self.last:
            made = least_bill(burner, *known)
            self._lacks(node, made.lacking)
            return made.to_spend

        def least(source: str) -> float:
            of_it = burner.further({**node.values, "gas_from": source}.__getitem__, resting_on(GAS_FROM))
            key = id(thin_supply(of_it))
            train = self.trains.get(key) or self.trains.setdefault(key, thin_train(of_it))
            if node.level == self.decided_at["low_fire"]:
                return least_of_a_fire(of_it, self.have, train)
            return least_of_a_box(of_it, *known, train if node.level < self.decided_at["mix_pipe"] else None)

        return min(least(source) for source in sources(self.have, self.start))

    def _chosen(self, node: Node) -> dict[str, Option]:
        return {axis.name: one for axis, one in zip(self.axes, node.chosen)}

    def bill(self, node: Node, burner: Burner | None = None) -> Any:
        """What a whole node must buy; of its solved `burner`, where it is known."""
        return bill(burner or node.tested or node.burner, self._chosen(node), self.have, node.figures)

    def design(self, node: Node) -> Design:
        """The design of a whole node, its texts read and its rules asked as anybody's. What the search wrote of the
        line is no text of one with cylinders, nor the other way round."""
        written = node.texts.keys() & self.decided_at.keys() - self.mine.keys()
        idle = {key for key, when in OF_SUPPLY.items() if key in written and not supplied_so(when, node.values)}
        return Design.from_texts({key: text for key, text in node.texts.items() if key not in idle})

    def longest_m(self, node: Node) -> float:
        """The longest body that comes out of the piece which a node takes, the whole batch of it; inf of a round."""
        return inf if node.values["body_kind"] == "pipe" else from_stick_m(self.asking(node))

    def with_beside(self, texts: Mapping[str, str]) -> "Space | None":
        """The space with those of other texts that no axis decides; None where a rule refuses them."""
        beside = {key: text for key, text in texts.items() if key not in self.decided_at}
        if not beside:
            return self
        try:
            start = self.start.changed(beside)
        except InputErrors:
            return None
        return Space(start, self.have, self.axes, self.counts, self)

    def altered(self, node: Node, texts: Mapping[str, str], hopeful: Hopeful = lambda node: True) -> Node | None:
        """The whole node with other texts, on the menu or not, of what is on no axis too; None where a rule refuses it
        or it is not `hopeful`."""
        if (space := self.with_beside(texts)) is not self:
            on_axes = {key: text for key, text in texts.items() if key in self.decided_at}
            return space.altered(node, on_axes, hopeful) if space else None
        made: Node | None = self.root
        for axis, one in zip(self.axes, node.chosen):
            if made is not None:
                if other := {key: texts[key] for key in axis.keys if key in texts}:
                    one = replace(one, texts=_over(one.texts, other))
                made = self.child(made, one, hopeful)
        return made

    def fine(self, node: Node, at: int) -> list[Mapping[str, str]]:
        """Texts a little off what a whole node chose of an axis, beside the menu's; what is mine stays."""
        find = self.axes[at].fine
        parent: Node | None = self.root
        for one in node.chosen[:at]:
            parent = self.child(parent, one) if parent else None
        if find is None or parent is None:
            return []
        return [
            texts
            for texts in find(self.asking(parent), node.texts)
            if not texts.keys() & self.mine.keys() and any(node.texts[key] != text for key, text in texts.items())
        ]


def _schedule(burner: Burner, past_low: bool) -> Schedule:
    found: Schedule = burner.call(PARTS["schedule"], own_heat=OwnHeat(past_low))
    return found


@cache
def _late(function: Callable[..., Any]) -> int:
    """The place of the latest part that is asked late and that a function rests on, 1 for the first; 0 for none."""
    return max((at for at, part in enumerate(LATE, 1) if part in parts_of(function)), default=0)


def _each_once(found: list[Option]) -> list[Option]:
    """Of the same texts the first, which is at hand where any is, and of such pieces the largest, in the last place;
    beside it stays a larger one that is bought."""
    own: dict[tuple[tuple[str, str], ...], float] = {}
    for one in found:
        if not one.buy:
            own[one.texts] = max(_size(one), own.get(one.texts, 0.0))
    once: dict[tuple[Any, bool], Option] = {}
    for one in reversed(found):
        key = one.texts, bool(one.buy) and _size(one) > own.get(one.texts, inf)
        other = once.setdefault(key, one)
        if other.buy or _size(one) >= _size(other):
            once[key] = one
    return list(once.values())[::-1]


def _size(one: Option) -> float:
    return prod(size or 1.0 for _, size in one.figures)


def _over(texts: tuple[tuple[str, str], ...], kept: Mapping[str, str]) -> tuple[tuple[str, str], ...]:
    return tuple({**dict(texts), **kept}.items())


def _same(one: Any, other: Any) -> bool:
    if isinstance(one, float) and isinstance(other, float):
        return abs(one - other) <= 1e-9 * max(abs(one), abs(other))
    return bool(one == other)
