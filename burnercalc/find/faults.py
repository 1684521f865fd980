"""What is wrong with a design: its checks that are not good, the worst first."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from ..catalogue import HARMS
from ..checks.judge import FAULTS
from ..result import Checked, Result
from ..settings import BY_KEY
from .score import how_wrong

# What is told of a thing of which too few lie there: its label, its name, and what of it counts.
LACKING = {
    "bag": ("Bags", ("bag", "")),
    "blower": ("Blowers", ("blower", "")),
    "regulator": ("Regulators", ("regulator", " that can give what this burner asks")),
    "pins": ("Pins", ("pin", " of this size to fill the mould")),
}


def short_of(kind: str) -> str:
    """Among the words of checks, that too few of a kind lie there; some checks have the name of a kind."""
    return f"too few: {kind}"


@dataclass(frozen=True)
class Fault:
    """A check that is not good, and the settings that cure it: {label: raise, lower or choose}."""

    key: str
    label: str
    verdict: str
    text: str
    cures: tuple[tuple[str, str], ...]


def fault(check: Checked) -> Fault:
    cures = tuple((BY_KEY[change.setting].label, change.move) for change in check.offered)
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


def blamed(result: Result, given: set[str], lacking: Mapping[str, int]) -> tuple[Fault, ...]:
    """What the burner can be blamed for, and what is short of which none may be bought."""
    short = []
    for kind, count in lacking.items():
        label, words = LACKING[kind]
        many = f"is {count} {words[0]}" if count == 1 else f"are {count} {words[0]}s"
        short.append(Fault(kind, label, "stop", f"There {many} too few{words[1]}, and none may be bought.", ()))
    return (*short, *faults_of(result, given))
