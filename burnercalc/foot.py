"""What stands at the foot of every page of paper: which design it is of, and that it must not be built."""

import hashlib

from .drawing.helvetica import text_width
from .drawing.paper import paper_size
from .drawing.text_pages import SIDE_MM, TABLE_MM

STOP = "DO NOT BUILD THIS.  "
NO_FIRE = "DO NOT LIGHT THIS.  "
BUILD, LIGHT = "DO NOT BUILD", "DO NOT LIGHT"
LAW = "This sheet is arithmetic, not approval."
PAGE_MM = 30.0  # of the line, for the number of the page


def number(link):
    """A short name of a design, the same on all its papers: eight figures of its link's fingerprint."""
    figures = hashlib.sha256(link.partition("#")[2].encode()).hexdigest()[:8].upper()
    return f"{figures[:4]}-{figures[4:]}"


def stamp(result, words=BUILD):
    """What stands across every page of a design that must not be built, or not be lit; "" for one that may."""
    return words if _stops(result, words == LIGHT) else ""


def _stops(result, lighting):
    return result.forbids_light if lighting else result.worst == "stop"


def fits(link, paper, stop=""):
    """Whether the whole link stands on one line."""
    return text_width(stop + link, TABLE_MM) <= paper_size(paper)[0] - 2 * SIDE_MM - PAGE_MM


def line(result, link, paper, stop=STOP):
    """The design's link, never cut; where it is too long, the design's number, by which its papers belong together."""
    stop = stop if _stops(result, stop == NO_FIRE) else ""  # on every page
    if fits(link, paper, stop):
        return stop + link
    return f"{stop}Design {number(link)}; its link stands whole on the build sheet's first page"
