"""From a design to everything known about it: the chapters of the job, in order."""

from .chapters import air, cast, days, face, fire, flame, flow, gas, heat, kinds, make, money, plans, templates
from .result import Result

CHAPTERS = (fire, heat, kinds, face, flow, flame, air, gas, plans, make, cast, templates, days, money)
# What the face drawing and its numbers need; the page asks for these first, so that it redraws at once.
FACE_FIRST = (fire, face, flow, plans)


def solve(design, chapters=CHAPTERS):
    """The Result of a Design. Raises nothing for a design that could be made: what is wrong is in the checks."""
    result = Result(design)
    for chapter in chapters:
        result.group = getattr(chapter, "GROUP", "face")
        chapter.solve(design, result)
        for key in (*result.tables, *result.charts, *result.drawings):
            result.places.setdefault(key, result.group)
    return result
