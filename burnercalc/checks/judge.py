"""The one ladder from a number to a verdict, and what a check hands over."""

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from typing import Any

Cures = Iterable[tuple[str, str]]  # (setting, move)
# From best to worst. A note is what is simply so on every hot forge and has to be known; it is no fault of the design.
VERDICTS = ("good", "note", "caution", "stop")
FAULTS = ("caution", "stop")


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


def ladder(value: float, *, good: float, stop: float, note: float | None = None, slack: float = 0.0) -> str:
    """The verdict on a value: good from `good` on, a note as far as `note`, stop beyond `stop`, caution between.

    Which way is better follows from the limits: more when stop <= good, less when stop > good; stop = -inf or inf is
    never a stop. A value within `slack` of a limit counts as at it.
    """
    for word, limit in (("good", good), ("note", note), ("caution", stop)):
        if limit is not None and (value >= limit - slack if stop <= good else value <= limit + slack):
            return word
    return "stop"


def judge(
    value: float,
    *,
    good: float,
    stop: float,
    note: float | None = None,
    slack: float = 0.0,
    case: str | Iterable[str] | None = None,
    cures: Cures | None = None,
    **slots: Any,
) -> Judged:
    """A value on the ladder as a Judged; the sentence is named like the verdict, unless `case` names another."""
    word = ladder(value, good=good, stop=stop, note=note, slack=slack)
    return verdict(word, value, good, case=case, cures=cures, **slots)


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


WAITS = "waits"  # the sentence of a check that a stop of another leaves without its premise


def waiting(judged: Judged, known: object, cures: Cures) -> Judged:
    """A check whose premise is not `known`, as another check stops it: no better than a caution, its words say that it
    waits, and what mends the other cures it."""
    if known is not None:
        return judged
    word = max(judged.verdict, "caution", key=VERDICTS.index)
    return replace(judged, verdict=word, cases=(*judged.cases, WAITS), cures=tuple(cures))
