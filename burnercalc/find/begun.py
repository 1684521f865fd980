"""The design that a search begins from: the one in question with what is mine, the rest brought into line with that."""

from collections.abc import Iterable, Iterator, Mapping

from ..design import Design
from ..errors import InputError, InputErrors
from ..settings import BY_KEY
from .choices import AXES

MOVES = frozenset(key for axis in AXES for key in axis.keys)  # what the search chooses itself
ROUNDS = 6  # in which one setting follows from another


def begun(start: Design, mine: Mapping[str, str | None]) -> Design:
    """What the search chooses itself gives way to what is mine, as a rule offers it: a round pipe has no length of a
    tube, and rings lie in no rectangle.

    Raises:
        InputErrors   what is mine and at odds with itself, or with what the search does not move
    """
    texts = {key: text for key, text in mine.items() if text is not None}
    try:
        return start.changed(texts)
    except InputErrors as refused:
        found = _eased(start, texts, MOVES - mine.keys(), refused.errors, ROUNDS)
        if found is None:
            raise InputErrors(_hard(start, texts, MOVES - mine.keys(), refused.errors)) from None
        return found


def _hard(start: Design, texts: Mapping[str, str], free: frozenset[str], errors: list[InputError]) -> list[InputError]:
    """What is left at odds when what is free has given way as far as the rules offer."""
    for _ in range(ROUNDS):
        texts = {**texts, **{error.field: error.nearest for error in errors if error.field in free and error.nearest}}
        try:
            start.changed(texts)
        except InputErrors as refused:
            errors = refused.errors
    return errors


def _eased(
    start: Design, texts: Mapping[str, str], free: frozenset[str], errors: Iterable[InputError], rounds: int
) -> Design | None:
    for moved in _ways(errors, free) if rounds else ():
        made = {**texts, **moved}
        try:
            return start.changed(made)
        except InputErrors as refused:
            found = _eased(start, made, free - moved.keys(), refused.errors, rounds - 1)
        if found is not None:
            return found
    return None


def _ways(errors: Iterable[InputError], free: frozenset[str]) -> Iterator[dict[str, str]]:
    """Texts for what is free: what a rule offers for it, all at once, or another choice of what it is at odds with."""
    errors = list(errors)
    if offered := {error.field: error.nearest for error in errors if error.field in free and error.nearest}:
        yield offered
    for error in errors:
        for key in error.others if error.field not in free else ():
            if key in free:
                yield from ({key: value} for value, _ in BY_KEY[key].choices)
