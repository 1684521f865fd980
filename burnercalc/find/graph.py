"""What a check or a part rests on, down to the settings, so that it can be asked as soon as these are decided."""

from collections.abc import Callable, Iterable
from functools import cache
from types import SimpleNamespace
from typing import Any

from ..burner import needs
from ..making.days import TEST_MIN
from ..parts import PARTS

# Parts that a search does not work out: dear, and of what is ranked only a batch's moulds might hang on them.
GIVEN = {"fire_test": SimpleNamespace(minutes=TEST_MIN), "own_heat": SimpleNamespace(past_low=False)}


@cache
def touches(function: Callable[..., Any]) -> frozenset[str]:
    """Settings that a function of settings and parts rests on."""
    found: set[str] = set()
    for name in needs(function):
        if name not in GIVEN:
            found |= touches(PARTS[name]) if name in PARTS else {name}
    return frozenset(found)


@cache
def parts_of(function: Callable[..., Any]) -> frozenset[str]:
    """Parts that a function of settings and parts rests on."""
    found: set[str] = set()
    for name in needs(function):
        if name in PARTS and name not in GIVEN:
            found |= {name} | parts_of(PARTS[name])
    return frozenset(found)


@cache
def resting_on(keys: frozenset[str]) -> frozenset[str]:
    """Parts that rest on any of these settings, but for those that are given."""
    return frozenset(name for name in PARTS if name not in GIVEN and not keys.isdisjoint(touches(PARTS[name])))


def level_of(keys: Iterable[str], decided_at: dict[str, int]) -> int:
    """The first level at which all these settings are decided; what no level decides is known from the start (-1)."""
    return max((decided_at.get(key, -1) for key in keys), default=-1)
