"""How sure an answer is: no surer than the least sure of all that goes into it, by whatever way."""

from functools import cache

from ..sources import TRUST
from . import ANSWERS

# Settings that, left to the tool, let other answers go into one.
AUTOS = frozenset(setting for answer in ANSWERS.values() for setting in answer.if_auto.values())


@cache
def weakest(key: str, autos: frozenset[str]) -> str:
    """Key of the answer whose source is the least sure of all that go into one; itself, where none is less sure.

    `autos`: keys of the settings that are auto; what goes in only then is left out otherwise.
    """
    answer, found = ANSWERS[key], key
    for name in answer.inputs:
        if name in ANSWERS and answer.if_auto.get(name, name) in (name, *autos):
            below = weakest(name, autos)
            if _doubt(below) > _doubt(found):
                found = below
    return found


def _doubt(key):
    return TRUST.index(ANSWERS[key].source.trust)
