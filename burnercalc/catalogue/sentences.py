"""Sentences with typed slots: `{rate:power}` is shown as a power in the reader's units, `{share:percent 1}` as 3.4 %.

A slot is a name, a colon, a type and, after a blank, how many digits. Types: a dimension of units.DIMENSIONS (digits
are significant ones; `gas_pressure` is shown in the measure that goes with the gas), `percent` and `money` (digits
after the point), `tap` (a pressure, suction below none), `size` (a length before others in the same unit, which the
last of them names), `pipe` (a nominal size), or what Python's own format takes, such as `.1f` and `g`. Of
`[250 °F|140 °C]` the reader of inches gets the first, of millimetres the second; of `[[1/4 in NPT|R 1/4]]` whose shop
sells by them. What is sold is named as the shop does: `sold_size` and `sold_length`, all of a sentence alike,
`sold_long`, `sold_mass` and `sold_bore`; a `gas_pressure` in both measures where the gauge, which is the shop's, has
not the reader's.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cache
from itertools import combinations
from math import isclose
from string import Formatter
from typing import Any

from .. import units
from ..tables import by_key

MOST_FINER = 3  # digits more, where two numbers of a sentence read alike
SOLD = {
    "sold_size": "size",
    "sold_length": "length",
    "sold_bore": "bore",
    "sold_mass": "mass",
    "sold_long": "long_length",
}
SAME = 1e-6  # relative; nearer numbers are the same to anybody
_FIXED = re.compile(r"\.(\d)f")


@dataclass(frozen=True)
class Said:
    """A text as a part leaves it: which of the declared cases, and what goes into its slots (SI, or words)."""

    case: str
    slots: dict[str, Any] = field(default_factory=dict)

    def __hash__(self) -> int:
        return hash((self.case, tuple(sorted(self.slots.items()))))


def said(case: str, /, **slots: Any) -> Said:
    return Said(case, slots)


class _Slots:
    def __init__(self, unit_system: str, on_a_line: Callable[[], bool]) -> None:
        self.unit_system, self.on_a_line = unit_system, on_a_line
        self.finer: dict[str, int] = {}  # digits more than usual, by type
        self.seller = unit_system  # whose measures what is sold is named in

    def shown(self, value: Any, spec: str) -> str:
        kind, _, digits = spec.partition(" ")
        finer = self.finer.get(kind, 0)
        known = int(digits or 0)
        if value is None:
            return "none"
        if kind in SOLD:
            return _Slots(self.seller, self.on_a_line).shown(value, f"{SOLD[kind]} {digits}".strip())
        if kind == "percent" and value > units.MOST_TIMES:
            return f"more than {100 * units.MOST_TIMES:.0f} %"
        if kind == "percent":
            return f"{100 * value:.{int(digits or 0) + finer}f} %"
        if kind == "tap":
            return units.tapped(value, self.unit_system, known, finer)
        if kind == "money":
            return units.priced(f"{value:.{int(digits or 0) + finer}f}", self.unit_system)
        kind = measured(kind, self.on_a_line)
        if kind == "pipe":
            return pipe_size(value, self.unit_system)
        if kind == "size":
            return units.show(value, "length", self.unit_system).removesuffix(" in").removesuffix(" mm")
        if kind == "length" and finer == 2 and self.unit_system == "in":  # a sentence speaks as a tape does
            return units.near_a_mark(value)
        if kind in units.DIMENSIONS:
            text = units.show(value, kind, self.unit_system, known, finer=finer)
            shop = units.shop_of(self.unit_system)
            if spec.startswith("gas_pressure") and shop != self.unit_system:  # the gauge is the shop's
                return f"{text} ({units.show(value, kind, shop, known, finer=finer)})"
            return text
        if fixed := _FIXED.fullmatch(spec):
            return f"{value:.{int(fixed[1]) + finer}f}"
        return format(value, spec)

    def kept_apart(self, sentence: str, slots: dict[str, Any]) -> dict[tuple[str, str], str]:
        """Texts by name and type, with more digits for the types of which two different numbers would read alike."""
        found: dict[tuple[str, str], str] = {}
        for kind, alike in _alike(sentence):
            named = {name: spec for name, spec in alike if isinstance(slots[name], float)}
            for self.finer[kind] in range(MOST_FINER + 1):
                texts = {name: self.shown(slots[name], spec) for name, spec in named.items()}
                if not any(_mistaken(slots, texts, *two) for two in combinations(named, 2)):
                    break
            found.update({(name, named[name]): text for name, text in texts.items()})
        return found


def _mistaken(slots: dict[str, Any], texts: dict[str, str], one: str, other: str) -> bool:
    """Whether two numbers read alike and differ, by more than what arithmetic leaves."""
    return texts[one] == texts[other] and not isclose(slots[one], slots[other], rel_tol=SAME)


def pipe_size(name: str, unit_system: str) -> str:
    """A nominal pipe size as the reader's shop calls it: `1-1/2` is 1-1/2 in or DN 40."""
    return f"{name} in" if units.shop_of(unit_system) == "in" else f"DN {by_key('pipe_sizes', 'nps')[name]['dn']:.0f}"


def from_cylinder() -> bool:
    """No gas of a house line."""
    return False


def measured(dimension: str, on_a_line: Callable[[], bool]) -> str:
    """The dimension that gas pressures are shown in: of a line as the blower's, of a cylinder as its regulator's.

    `on_a_line` is asked of gas pressures only.
    """
    return "line_pressure" if dimension == "gas_pressure" and on_a_line() else dimension


def written(
    sentence: str,
    slots: dict[str, Any],
    unit_system: str,
    on_a_line: Callable[[], bool] = from_cylinder,
    apart: bool = False,
) -> str:
    """The sentence with its slots filled; KeyError for a slot that nothing fills.

    `apart`: it compares its numbers, so two that differ are given as many digits as it takes to see it.
    """
    sentence = units.in_measures(sentence, unit_system)
    if "{" not in sentence:
        return sentence
    filled = _Slots(unit_system, on_a_line)
    if sold := [(slots[name], "length" if SOLD[spec] == "size" else SOLD[spec]) for name, spec in _sold(sentence)]:
        filled.seller = units.seller_of(unit_system, *sold)
    apart_texts = filled.kept_apart(sentence, slots) if apart else {}
    return "".join(
        [
            text if name is None else text + (apart_texts.get((name, spec)) or filled.shown(slots[name], spec))
            for text, name, spec in _parsed(sentence)
        ]
    )


@cache
def _parsed(sentence: str) -> tuple[tuple[str, str | None, str], ...]:
    """(text before a slot, its name, its type), the name None where no slot follows."""
    return tuple((text, name, spec or "") for text, name, spec, _ in Formatter().parse(sentence))


@cache
def _sold(sentence: str) -> tuple[tuple[str, str], ...]:
    return tuple((name, spec) for name, spec in slots_of(sentence) if spec in SOLD)


@cache
def _alike(sentence: str) -> tuple[tuple[str, tuple[tuple[str, str], ...]], ...]:
    """(type, its slots) of every type that a sentence has more than one slot of."""
    by_kind: dict[str, list[tuple[str, str]]] = {}
    for name, spec in slots_of(sentence):
        by_kind.setdefault(spec.partition(" ")[0], []).append((name, spec))
    return tuple((kind, tuple(named)) for kind, named in by_kind.items() if len(named) > 1)


@cache
def slots_of(sentence: str) -> frozenset[tuple[str, str]]:
    """(name, type) of every slot of a sentence."""
    return frozenset((name, spec) for _, name, spec in _parsed(sentence) if name)
