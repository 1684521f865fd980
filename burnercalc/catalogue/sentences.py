"""Sentences with typed slots: `{rate:power}` is shown as a power in the reader's units, `{share:percent 1}` as 3.4 %.

A slot is a name, a colon, a type and, after a blank, how many digits. Types: a dimension of units.DIMENSIONS (digits
are significant ones), `percent` (digits after the point), `supply` (a pressure of gas, said in the unit of the blower
where it is weak), `size` (a length before others in the same unit, which the last of them names), or what Python's own
format takes, such as `.1f` and `g`.
"""

from dataclasses import dataclass, field
from string import Formatter
from typing import Any

from .. import units
from ..constants import PSI_PA

WEAK_GAS_PA = PSI_PA  # below a pound, gas pressure is said in the unit of the blower; common practice


@dataclass(frozen=True)
class Said:
    """A text as a part leaves it: which of the declared cases, and what goes into its slots (SI, or words)."""

    case: str
    slots: dict[str, Any] = field(default_factory=dict)

    def __hash__(self) -> int:
        return hash((self.case, tuple(sorted(self.slots.items()))))


def said(case: str, /, **slots: Any) -> Said:
    return Said(case, slots)


class _Slots(Formatter):
    def __init__(self, unit_system: str) -> None:
        self.unit_system = unit_system

    def format_field(self, value: Any, spec: str) -> Any:
        kind, _, digits = spec.partition(" ")
        if value is None:
            return "none"
        if kind == "percent":
            return f"{100 * value:.{int(digits or 0)}f} %"
        if kind == "supply":
            kind = "gas_pressure" if value >= WEAK_GAS_PA else "pressure"
        if kind == "size":
            return units.show(value, "length", self.unit_system).removesuffix(" in").removesuffix(" mm")
        if kind in units.DIMENSIONS:
            return units.show(value, kind, self.unit_system, int(digits or 3))
        return super().format_field(value, spec)


def written(sentence: str, slots: dict[str, Any], unit_system: str) -> str:
    """The sentence with its slots filled; KeyError for a slot that nothing fills."""
    return _Slots(unit_system).vformat(sentence, (), slots)


def slots_of(sentence: str) -> frozenset[tuple[str, str]]:
    """(name, type) of every slot of a sentence."""
    return frozenset((name, spec or "") for _, name, spec, _ in Formatter().parse(sentence) if name)
