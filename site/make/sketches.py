"""Small sketches for settings whose words need a picture: one thing marked, no words, coloured by the page's theme.

The help beside each says the same, so a screen reader is spared them.
"""

import re
from math import cos, hypot, radians, sin

from burnercalc.drawing.shapes import Arc, Circle, Drawing, Line, Polyline, rectangle, rounded_rectangle
from burnercalc.drawing.svg import write_svg

HEAD = 6  # length of an arrow's head; every sketch is drawn within 120 by 70


def barbs(x, y, ux, uy):
    """An arrow's head at x, y that comes from the direction ux, uy."""
    ends = [
        (round(x + HEAD * (ux * cos(a) - uy * sin(a))), round(y + HEAD * (ux * sin(a) + uy * cos(a))))
        for a in (radians(30), radians(-30))
    ]
    return Polyline((ends[0], (x, y), ends[1]), False, "mark")


def arrow(x1, y1, x2, y2, both=True):
    """What is meant: an arrow from point 1 to point 2, with a head at each end or at point 2 only."""
    length = hypot(x2 - x1, y2 - y1)
    ux, uy = (x2 - x1) / length, (y2 - y1) / length
    return [Line(x1, y1, x2, y2, "mark"), barbs(x2, y2, -ux, -uy), *([barbs(x1, y1, ux, uy)] if both else [])]


def across():
    """The body cut across, open at the top: two lips of steel, the block that grips them, the fire below."""
    side = ((4, 70), (4, 22), (30, 22), (30, 29), (11, 29), (11, 70))
    block = (
        (4, 2),
        (116, 2),
        (116, 22),
        (90, 22),
        (90, 29),
        (109, 29),
        (109, 42),
        (11, 42),
        (11, 29),
        (30, 29),
        (30, 22),
        (4, 22),
    )
    return [
        Polyline(block, True, "refractory"),
        Polyline(side, True, "steel"),
        Polyline(tuple((120 - x, y) for x, y in side), True, "steel"),
    ]


def along(*more):
    """The body from the side: box, and the block under it."""
    return [rectangle(24, 22, 92, 30, "steel"), rectangle(24, 2, 92, 20, "refractory"), *more]


SKETCHES = {
    "setback": [*across(), *arrow(4, 12, 30, 12)],
    "grip": [*across(), Line(30, 22, 90, 22, "hidden"), *arrow(60, 22, 60, 42)],
    "block_thickness": [*across(), *arrow(60, 2, 60, 42)],
    "edge_margin": [
        rectangle(0, 0, 120, 70, "steel"),
        rounded_rectangle(18, 14, 84, 42, 6, "port"),
        *(Circle(x, y, 6, "port") for x, y in ((46, 35), (66, 35), (86, 35))),
        *arrow(18, 35, 40, 35),
    ],
    "corner_radius": [
        rectangle(0, 0, 120, 70, "steel"),
        rounded_rectangle(15, 10, 90, 50, 22, "port"),
        Circle(37, 38, 22, "hidden"),
        *arrow(37, 38, 21, 54, both=False),
    ],
    "opening_depth": [
        rectangle(0, 0, 50, 70, "tint"),
        rectangle(50, 0, 60, 22, "refractory"),
        rectangle(50, 48, 60, 22, "refractory"),
        *arrow(50, 35, 110, 35),
    ],
    "inlet_position": along(
        rectangle(62, 52, 16, 18, "hidden"),
        rectangle(4, 30, 20, 14, "hidden"),
        *arrow(70, 68, 70, 40, both=False),
        *arrow(4, 37, 40, 37, both=False),
    ),
    "baffle_holes": [
        rectangle(4, 14, 112, 44, "port"),
        rectangle(4, 0, 112, 14, "refractory"),
        rectangle(52, 58, 16, 12, "port"),
        *(Line(x, 34, x + 12, 34, "mark") for x in (8, 31, 54, 77, 100)),
        *arrow(60, 68, 60, 42, both=False),
    ],
    "baffle_bend_angle": [
        Polyline(((10, 8), (60, 35), (110, 8)), False, "body"),
        Line(60, 35, 110, 62, "hidden"),
        Arc(60, 35, 38, -28, 28, "mark"),
    ],
    "mould_clearance": [
        *(
            rectangle(*board, "refractory")
            for board in ((0, 0, 120, 8), (0, 62, 120, 8), (0, 8, 8, 54), (112, 8, 8, 54))
        ),
        rectangle(8, 8, 86, 54, "steel"),
        *arrow(94, 35, 112, 35),
    ],
    "pin_depth": [
        rectangle(6, 4, 108, 28, "mould"),
        *(rectangle(x, 14, 10, 54, "port") for x in (24, 55, 86)),
        Line(34, 14, 55, 14, "hidden"),
        *arrow(45, 14, 45, 32),
    ],
}


def svg(key, shapes):
    """A sketch as SVG without what the page's own styles and help text say."""
    text = write_svg(Drawing(key, key, shapes))
    body = "".join(line for line in text.splitlines() if line.startswith("<g"))
    groups = re.sub(r'<g class="(\w+)"[^>]*>', r'<g class="\1">', body)
    return f'<svg class="drawing" viewBox="-2 -72 124 74" aria-hidden="true">{groups}</svg>'


def sketches():
    """{key of a setting: SVG text}."""
    return {key: svg(key, shapes) for key, shapes in SKETCHES.items()}
