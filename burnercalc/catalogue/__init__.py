"""What is said: each answer, check, table, chart and drawing, declared once. A second language: a second catalogue."""

from dataclasses import replace

from ..rooms import ROOMS
from . import drawings, face, feed, fire, heat, make
from .forms import HARMS, NEAR, Answer, Axis, Chart, Check, Column, Drawing, Series, Table
from .sentences import Said, said

MODULES = {"heat": heat, "face": face, "feed": feed, "make": make, "fire": fire}


def _collected(kind, rooms=tuple(ROOMS)):
    """{key: declaration} of one kind, room by room, each knowing its room."""
    found = {}
    for room in rooms:
        for declared in getattr(MODULES[room], kind):
            assert declared.key not in found, declared.key
            found[declared.key] = replace(declared, room=room)
    return found


ANSWERS: dict[str, Answer] = _collected("ANSWERS")
CHECKS: dict[str, Check] = _collected("CHECKS")
TABLES: dict[str, Table] = _collected("TABLES")
CHARTS: dict[str, Chart] = _collected("CHARTS")
DRAWINGS: dict[str, Drawing] = {declared.key: declared for declared in drawings.DRAWINGS}

__all__ = [
    "ANSWERS", "CHARTS", "CHECKS", "DRAWINGS", "HARMS", "NEAR", "ROOMS", "TABLES",
    "Answer", "Axis", "Chart", "Check", "Column", "Drawing", "Said", "Series", "Table", "said",
]  # fmt: skip
