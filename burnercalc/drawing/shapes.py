"""Drawings as data: lines, circles, arcs and texts in millimetres, x to the right, y up, each on a layer by purpose.

Writers and the page replay these shapes; nobody but the caller knows what they mean.
"""

from dataclasses import dataclass, replace
from itertools import pairwise
from math import atan2, ceil, cos, degrees, floor, hypot, pi, radians, sin, tan

from ..errors import InputError, require
from .helvetica import CAP_HEIGHT_RATIO, text_width


@dataclass(frozen=True)
class Style:
    """How a layer is drawn: stroke and dashes in mm (0: none), grey 0 black .. 1 white, grey filling closed shapes."""

    stroke_mm: float
    dash_mm: tuple = ()
    grey: float = 0.0
    fill: float | None = None
    bold: bool = False


# In the order they are painted: areas first, texts last. Line widths are steps of the ISO 128-2 series (memory).
LAYERS = {
    "stamp": Style(0.0, grey=0.82, bold=True),
    "tint": Style(0.0, fill=0.92),
    "flame": Style(0.0, fill=0.80),
    "refractory": Style(0.18, fill=0.90),
    "wood": Style(0.25, fill=0.84),
    "steel": Style(0.25, fill=0.62),
    "hole": Style(0.18, fill=1.0),
    "mould": Style(0.35, grey=0.25),
    "body": Style(0.50),
    "window": Style(0.35),
    "setback": Style(0.25, (3.0, 1.5)),
    "bend": Style(0.25, (8.0, 1.5, 1.0, 1.5)),
    "hidden": Style(0.18, (2.0, 1.0)),
    "centre": Style(0.13, (6.0, 1.2, 1.0, 1.2), grey=0.25),
    "port": Style(0.35),
    "cut": Style(0.25),
    "pocket": Style(0.25, grey=0.25),
    "engrave": Style(0.13, (6.0, 1.2, 1.0, 1.2)),
    "dimension": Style(0.13, grey=0.15),
    "mark": Style(0.18),
    "solid": Style(0.0, fill=0.0),
    "frame": Style(0.18, grey=0.35),
    "number": Style(0.13),
    "text": Style(0.13),
    "heading": Style(0.13, bold=True),
}

ANCHORS = ("start", "middle", "end")


@dataclass(frozen=True)
class Line:
    x1: float
    y1: float
    x2: float
    y2: float
    layer: str


@dataclass(frozen=True)
class Circle:
    x: float
    y: float
    r: float
    layer: str


@dataclass(frozen=True)
class Arc:
    """Counter-clockwise from start_deg to end_deg; 0 deg points to +x."""

    x: float
    y: float
    r: float
    start_deg: float
    end_deg: float
    layer: str

    @property
    def sweep_deg(self):
        """Angle turned, above 0 and at most 360."""
        return (self.end_deg - self.start_deg) % 360 or 360.0


@dataclass(frozen=True)
class Polyline:
    """Corner to corner; bulges[i] = tan(a/4) makes the stretch after corner i an arc of a rad, positive to the left."""

    points: tuple
    closed: bool
    layer: str
    bulges: tuple = ()

    def stretches(self):
        """Tuples (x1, y1, x2, y2, bulge), the closing one included."""
        n = len(self.points)
        bulges = self.bulges or (0.0,) * n
        return [(*self.points[i], *self.points[(i + 1) % n], bulges[i]) for i in range(n if self.closed else n - 1)]


@dataclass(frozen=True)
class Text:
    """One line; x, y is its anchor on the base line, height that of its capitals, angle counter-clockwise."""

    x: float
    y: float
    text: str
    height: float
    anchor: str = "start"
    angle: float = 0.0
    layer: str = "text"

    @property
    def bold(self):
        return LAYERS[self.layer].bold

    @property
    def font_size(self):
        return self.height / CAP_HEIGHT_RATIO

    @property
    def width(self):
        return text_width(self.text, self.font_size, self.bold)


def bulge_arc(x1, y1, x2, y2, bulge):
    """The stretch of a polyline with a bulge as (x, y, r, start_deg, sweep_deg); sweep is negative for a right turn.

    a = 4*atan(bulge);  r = chord/2 / sin(a/2);  centre on the chord's bisector
    """
    chord = hypot(x2 - x1, y2 - y1)
    r = chord * (1 + bulge * bulge) / (4 * abs(bulge))
    # Distance of the centre to the left of the chord.
    left = chord * (1 - bulge * bulge) / (4 * bulge)
    x = (x1 + x2) / 2 - left * (y2 - y1) / chord
    y = (y1 + y2) / 2 + left * (x2 - x1) / chord
    sweep = 4 * degrees(atan2(bulge, 1.0))
    return x, y, r, degrees(atan2(y1 - y, x1 - x)), sweep


def arc_box(x, y, r, start_deg, sweep_deg):
    """(x_min, y_min, x_max, y_max) of an arc: its ends and the quarter points that it passes."""
    low, high = sorted((start_deg, start_deg + sweep_deg))
    angles = [low, high] + [90.0 * i for i in range(ceil(low / 90), floor(high / 90) + 1)]
    xs, ys = zip(*(_on_circle(x, y, r, angle) for angle in angles))
    return min(xs), min(ys), max(xs), max(ys)


def _on_circle(x, y, r, angle_deg):
    return x + r * cos(radians(angle_deg)), y + r * sin(radians(angle_deg))


# Descenders of Helvetica reach 0.207 of the font size below the base line, 0.29 of the capitals' height.
DESCENT_RATIO = 0.29


def shape_box(shape):
    """(x_min, y_min, x_max, y_max) of a shape, its line taken as having no width; texts by Helvetica's widths."""
    if isinstance(shape, Circle):
        return shape.x - shape.r, shape.y - shape.r, shape.x + shape.r, shape.y + shape.r
    if isinstance(shape, Line):
        boxes = [(shape.x1, shape.y1, shape.x1, shape.y1), (shape.x2, shape.y2, shape.x2, shape.y2)]
    elif isinstance(shape, Arc):
        boxes = [arc_box(shape.x, shape.y, shape.r, shape.start_deg, shape.sweep_deg)]
    elif isinstance(shape, Polyline):
        boxes = [(x, y, x, y) for x, y in shape.points]
        boxes += [arc_box(*bulge_arc(*stretch)) for stretch in shape.stretches() if stretch[4]]
    else:
        left = -shape.width * ANCHORS.index(shape.anchor) / 2
        c, s = cos(radians(shape.angle)), sin(radians(shape.angle))
        corners = [(u, v) for u in (left, left + shape.width) for v in (-DESCENT_RATIO * shape.height, shape.height)]
        boxes = [(shape.x + u * c - v * s, shape.y + u * s + v * c) * 2 for u, v in corners]
    return box_round(boxes)


def box_round(boxes):
    """(x_min, y_min, x_max, y_max) of the least box round some, one at least."""
    left, low, right, high = zip(*boxes)
    return min(left), min(low), max(right), max(high)


def stretches(shape):
    """The stretches of a polyline as lines and arcs; any other shape as it is."""
    if not isinstance(shape, Polyline):
        return [shape]
    return [
        Polyline((stretch[:2], stretch[2:4]), False, shape.layer, (stretch[4], 0.0))
        if stretch[4]
        else Line(*stretch[:4], shape.layer)
        for stretch in shape.stretches()
    ]


def meets(shape, box):
    """Does a line of the shape run into the box, or a text of it overlap with it?"""
    own = shape_box(shape)
    if isinstance(shape, Text):
        return own[0] < box[2] and own[2] > box[0] and own[1] < box[3] and own[3] > box[1]
    if own[0] > box[2] or own[2] < box[0] or own[1] > box[3] or own[3] < box[1]:
        return False
    points = outline_points(shape)
    if getattr(shape, "closed", False):
        points.append(points[0])
    return any(_crosses(a, b, box) for a, b in pairwise(points))


def _crosses(a, b, box):
    """Does the straight way from a to b pass through the box? The part of it that is inside each pair of sides."""
    enters, leaves = 0.0, 1.0
    for axis in (0, 1):
        way, low, high = b[axis] - a[axis], box[axis] - a[axis], box[axis + 2] - a[axis]
        if abs(way) < 1e-12:
            if low > 0 or high < 0:
                return False
            continue
        enters, leaves = max(enters, min(low / way, high / way)), min(leaves, max(low / way, high / way))
    return enters <= leaves


def placed(shape, dx, dy, scale=1.0):
    """The shape scaled about the origin, then moved; line widths belong to the layer and stay."""

    def at(x, y):
        return scale * x + dx, scale * y + dy

    if isinstance(shape, Line):
        return Line(*at(shape.x1, shape.y1), *at(shape.x2, shape.y2), shape.layer)
    if isinstance(shape, Polyline):
        return Polyline(tuple(at(*point) for point in shape.points), shape.closed, shape.layer, shape.bulges)
    x, y = at(shape.x, shape.y)
    if isinstance(shape, Text):
        return Text(x, y, shape.text, scale * shape.height, shape.anchor, shape.angle, shape.layer)
    if isinstance(shape, Circle):
        return Circle(x, y, scale * shape.r, shape.layer)
    return Arc(x, y, scale * shape.r, shape.start_deg, shape.end_deg, shape.layer)


def turned(shape):
    """The shape turned a quarter to the left about the origin."""
    if isinstance(shape, Line):
        return Line(-shape.y1, shape.x1, -shape.y2, shape.x2, shape.layer)
    if isinstance(shape, Polyline):
        return replace(shape, points=tuple((-y, x) for x, y in shape.points))
    more = {}
    if isinstance(shape, Text):
        if shape.angle + 90.0 > 90.0:  # it would stand on its head: the same place, read from the other end
            end = {"start": "end", "end": "start"}.get(shape.anchor, shape.anchor)
            up = radians(shape.angle)
            foot = replace(shape, x=shape.x - shape.height * sin(up), y=shape.y + shape.height * cos(up), anchor=end)
            shape = replace(foot, angle=shape.angle - 180.0)
        more = {"angle": shape.angle + 90.0}
    elif isinstance(shape, Arc):
        more = {"start_deg": shape.start_deg + 90.0, "end_deg": shape.end_deg + 90.0}
    return replace(shape, x=-shape.y, y=shape.x, **more)


@dataclass(frozen=True)
class Drawing:
    """Shapes under a short name (for files), a title (for people) and a description (for those who cannot see it)."""

    name: str
    title: str
    shapes: tuple
    description: str = ""

    def __post_init__(self):
        object.__setattr__(self, "shapes", tuple(self.shapes))
        for shape in self.shapes:
            if shape.layer not in LAYERS:
                raise InputError("layer", shape.layer, "is not a layer; known: " + ", ".join(LAYERS))
            values = [v for v in vars(shape).values() if isinstance(v, (int, float))]
            values += [v for point in getattr(shape, "points", ()) for v in point]
            require(all(abs(v) < 1e6 for v in values), "shape", shape, "must have finite numbers, within 1 km")

    def bounds(self):
        """(x_min, y_min, x_max, y_max) of all shapes [mm]; InputError for a drawing without any."""
        require(len(self.shapes) > 0, "shapes", self.name, "needs at least one shape")
        return box_round(shape_box(shape) for shape in self.shapes)

    def _repr_svg_(self):
        """What a notebook shows."""
        from .svg import write_svg  # svg stands on this module

        return write_svg(self)

    def moved(self, dx, dy):
        """The drawing dx to the right and dy up [mm]."""
        return replace(self, shapes=tuple(placed(shape, dx, dy) for shape in self.shapes))

    def turned(self):
        """The drawing turned a quarter to the left about the origin."""
        return replace(self, shapes=tuple(turned(shape) for shape in self.shapes))

    def painted(self):
        """Shapes in the order of LAYERS, areas under lines under texts."""
        order = {layer: i for i, layer in enumerate(LAYERS)}
        return sorted(self.shapes, key=lambda shape: order[shape.layer])


def outline_points(shape, step_deg=6.0):
    """A shape but a text as a list of (x, y) for a chart of straight lines; arcs in steps of at most step_deg."""
    if isinstance(shape, Line):
        return [(shape.x1, shape.y1), (shape.x2, shape.y2)]
    if isinstance(shape, Circle):
        return _arc_points(shape.x, shape.y, shape.r, 0.0, 360.0, step_deg)
    if isinstance(shape, Arc):
        return _arc_points(shape.x, shape.y, shape.r, shape.start_deg, shape.sweep_deg, step_deg)
    points = [shape.points[0]]
    for stretch in shape.stretches():
        points += _arc_points(*bulge_arc(*stretch), step_deg)[1:-1] if stretch[4] else []
        points.append(stretch[2:4])
    return points


def _arc_points(x, y, r, start_deg, sweep_deg, step_deg):
    n = max(1, ceil(abs(sweep_deg) / step_deg))
    return [_on_circle(x, y, r, start_deg + sweep_deg * i / n) for i in range(n + 1)]


def rectangle(x, y, length, width, layer):
    """Closed outline with its lower left corner at x, y."""
    return Polyline(((x, y), (x + length, y), (x + length, y + width), (x, y + width)), True, layer)


def rounded_rectangle(x, y, length, width, radius, layer):
    """Closed outline with its lower left corner at x, y; corners are quarter circles of `radius`, 0 for square ones."""
    if radius == 0:
        return rectangle(x, y, length, width, layer)
    require(
        0 < 2 * radius <= min(length, width),
        "radius",
        radius,
        "must be at most half the shorter side",
        f"{min(length, width) / 2:g}",
    )
    r, right, top = radius, x + length, y + width
    points = (
        (x + r, y),
        (right - r, y),
        (right, y + r),
        (right, top - r),
        (right - r, top),
        (x + r, top),
        (x, top - r),
        (x, y + r),
    )
    quarter = tan(pi / 8)
    # A side that the two radii use up would be a stretch of no length; it is left out.
    kept = [
        (p, b)
        for i, (p, b) in enumerate(zip(points, (0.0, quarter) * 4))
        if b or hypot(points[(i + 1) % 8][0] - p[0], points[(i + 1) % 8][1] - p[1]) > 1e-9
    ]
    return Polyline(tuple(p for p, _ in kept), True, layer, tuple(b for _, b in kept))


def centre_mark(x, y, arm, layer="centre"):
    """Two crossing lines, `arm` long from the centre each way; where the punch goes."""
    return (Line(x - arm, y, x + arm, y, layer), Line(x, y - arm, x, y + arm, layer))


def dimension(x1, y1, x2, y2, offset, text, height=2.5):
    """Shapes that dimension the distance between two points: extension lines, dimension line, ticks, text.

    The dimension line stands `offset` to the left of the way from point 1 to point 2 (negative: to the right). Its text
    reads from below or from the right; where it is longer than the line it stands past point 2.
    """
    span = hypot(x2 - x1, y2 - y1)
    require(span > 0, "span", span, "needs two points apart")
    ux, uy = (x2 - x1) / span, (y2 - y1) / span
    side = 1.0 if offset >= 0 else -1.0
    # Normal that points from the measured edge to the dimension line.
    nx, ny = -uy * side, ux * side
    away = abs(offset)
    shapes = []
    for x, y in ((x1, y1), (x2, y2)):
        if away > 1.0:
            shapes.append(Line(x + nx, y + ny, x + nx * (away + 1.5), y + ny * (away + 1.5), "dimension"))
    ax, ay, bx, by = x1 + nx * away, y1 + ny * away, x2 + nx * away, y2 + ny * away
    angle = degrees(atan2(uy, ux))
    angle = (angle + 90) % 180 - 90
    if angle == -90:
        angle = 90.0
    c, s = cos(radians(angle)), sin(radians(angle))
    tick = height * 0.4
    for x, y in ((ax, ay), (bx, by)):
        shapes.append(Line(x - tick * (c - s), y - tick * (s + c), x + tick * (c - s), y + tick * (s + c), "dimension"))
    label = Text(0.0, 0.0, text, height, "middle", angle, "dimension")
    tx, ty = (ax + bx) / 2, (ay + by) / 2
    if label.width > span - 2 * tick:
        past = span / 2 + label.width / 2 + 2 * tick
        tx, ty = tx + ux * past, ty + uy * past
        bx, by = bx + ux * (label.width + 3 * tick), by + uy * (label.width + 3 * tick)
    shapes.append(Line(ax, ay, bx, by, "dimension"))
    gap = height * 0.35
    shapes.append(replace(label, x=tx - s * gap, y=ty + c * gap))
    return tuple(shapes)
