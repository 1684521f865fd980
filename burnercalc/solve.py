"""From a design to everything known about it: the chapters of the job, in order."""
from .chapters import face, fire, plans
from .result import Result

CHAPTERS = (fire, face, plans)


def solve(design):
    """The Result of a Design. Raises nothing for a design that could be made: what is wrong with it is in the checks."""
    result = Result(design)
    for chapter in CHAPTERS:
        chapter.solve(design, result)
    return result
