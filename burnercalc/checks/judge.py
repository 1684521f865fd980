"""The one ladder from a number to a verdict, and what a check hands over."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Any

Cures = Iterable[tuple[str, str]]  # (setting, move)
VERDICTS = ("good", "caution", "stop")


@dataclass(frozen=True)
class Judged:
    """A verdict with the number it judged, its limit, the declared sentences that say it, and what fills their slots.

    Attributes:
        cases      names of one or more declared sentences, in order
        cures      (setting, move) pairs where they depend on the design; None: those declared
    """

    verdict: str
    value: float | None
    limit: float | None
    cases: tuple[str, ...]
    slots: dict[str, Any] = field(default_factory=dict)
    cures: tuple[tuple[str, str], ...] | None = None


def ladder(value: float, *, good: float, stop: float, slack: float = 0.0) -> str:
    """The verdict on a value: good from `good` on, stop beyond `stop`, caution between.

    Which way is better follows from the limits: more when stop <= good, less when stop > good; stop = -inf or inf is
    never a stop. A value within `slack` of a limit counts as at it.
    """
    if stop <= good:
        return "good" if value >= good - slack else "caution" if value >= stop - slack else "stop"
    return "good" if value <= good + slack else "caution" if value <= stop + slack else "stop"


def judge(
    value: float,
    *,
    good: float,
    stop: float,
    slack: float = 0.0,
    case: str | Iterable[str] | None = None,
    cures: Cures | None = None,
    **slots: Any,
) -> Judged:
    """A value on the ladder as a Judged; the sentence is named like the verdict, unless `case` names another."""
    return verdict(ladder(value, good=good, stop=stop, slack=slack), value, good, case=case, cures=cures, **slots)


def verdict(
    word: str,
    value: float | None,
    limit: float | None,
    *,
    case: str | Iterable[str] | None = None,
    cures: Cures | None = None,
    **slots: Any,
) -> Judged:
    """A Judged whose verdict was found otherwise; `case`: a name or several, else the verdict's own."""
    case = case or word
    return Judged(
        word,
        value,
        limit,
        (case,) if isinstance(case, str) else tuple(case),
        slots,
        cures if cures is None else tuple(cures),
    )
