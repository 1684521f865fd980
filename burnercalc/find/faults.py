"""What is wrong with a design: its checks that are not good, the worst first."""

from collections.abc import Iterable
from dataclasses import dataclass

from ..catalogue import HARMS
from ..checks.judge import FAULTS
from ..result import Checked, Result
from ..settings import BY_KEY
from .score import how_wrong


@dataclass(frozen=True)
class Fault:
    """A check that is not good, and the settings that cure it: {label: raise, lower or choose}."""

    key: str
    label: str
    verdict: str
    text: str
    cures: tuple[tuple[str, str], ...]


def fault(check: Checked) -> Fault:
    cures = tuple((BY_KEY[change.setting].label, change.move) for change in check.changes)
    return Fault(check.key, check.label, check.verdict, check.text, cures)


def worst_of(faults: Iterable[Fault]) -> str:
    words = {fault.verdict for fault in faults}
    return "stop" if "stop" in words else "caution" if words else "good"


def faults_of(result: Result, but: set[str] | frozenset[str] = frozenset()) -> tuple[Fault, ...]:
    """Checks that are not good: stops first, then what hurts most, then the furthest beyond its limit."""
    bad = [check for check in result.checks.values() if check.verdict in FAULTS and check.key not in but]
    bad.sort(key=lambda check: (check.verdict != "stop", harm(check), -how_wrong(check.key, check.value, check.limit)))
    return tuple(fault(check) for check in bad)


def harm(check: Checked) -> int:
    return HARMS.index(check.declared.harm)


def blamed(result: Result, given: set[str], bags_lacking: int) -> tuple[Fault, ...]:
    """What the burner can be blamed for, and bags that are short where none may be bought."""
    faults = faults_of(result, given)
    if not bags_lacking:
        return faults
    words = f"There are {bags_lacking} bags too few, and none may be bought."
    return (Fault("bag", "Bags", "stop", words, ()), *faults)
