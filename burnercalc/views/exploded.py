"""The burner taken apart, seen from above and one side: steel at the left in its order, mould at the right.

The face looks down, as in the section and in the mould. No part hides another, so areas may be painted before lines.
"""

from math import cos, pi, radians, sin, tan

from ..drawing.shapes import Line, Polyline, Text, box_round, placed, shape_box
from ..parts.baffle_sheet import BaffleSheet
from ..parts.body import Body
from ..parts.face import Face
from ..parts.mould import Mould
from ..parts.pins import Pins
from ..parts.plenum import Plenum
from ..parts.steel import Steel
from .plans import MM, inlets_mm
from .view import Say, Shapes

TURN, LOOK = radians(20), radians(28)  # how far the length is turned to us, and how steeply we look down
AROUND = 24  # corners of a circle
AIR = 1.2  # between parts and the words under them, in text heights
TEXT_SHARE = 1 / 60


def seen(x, y, z):
    """A point in space, z up, as it stands on paper."""
    across, away = x * cos(TURN) + y * sin(TURN), y * cos(TURN) - x * sin(TURN)
    return across, away * sin(LOOK) + z * cos(LOOK)


def _area(points, layer):
    return Polyline(tuple(seen(*point) for point in points), True, layer)


def _top(half_x, half_y, z, layer):
    return _area([(x, y, z) for x, y in _corners(half_x, half_y)], layer)


def _corners(half_x, half_y):
    return (-half_x, -half_y), (half_x, -half_y), (half_x, half_y), (-half_x, half_y)


def _front(half_x, half_y, low, high, layer):
    """The two upright sides of a box that we see: the long one, and the right end."""
    return [
        _area(
            [(-half_x, -half_y, low), (half_x, -half_y, low), (half_x, -half_y, high), (-half_x, -half_y, high)], layer
        ),
        _area([(half_x, -half_y, low), (half_x, half_y, low), (half_x, half_y, high), (half_x, -half_y, high)], layer),
    ]


def _box(half_x, half_y, low, high, layer, at_x=0.0):
    shapes = [*_front(half_x, half_y, low, high, layer), _top(half_x, half_y, high, layer)]
    return [placed(shape, *seen(at_x, 0.0, 0.0)) for shape in shapes]


def _ring(x, y, z, r, layer):
    """A level circle."""
    return _area(
        [(x + r * cos(2 * pi * i / AROUND), y + r * sin(2 * pi * i / AROUND), z) for i in range(AROUND)], layer
    )


def _drum(r, low, high, layer):
    """A standing cylinder: its side, then its top."""
    half = [pi + pi * i / (AROUND // 2) for i in range(AROUND // 2 + 1)]
    (_, foot), (_, head), flat = seen(0.0, 0.0, low), seen(0.0, 0.0, high), sin(LOOK)
    side = [(r * cos(t), foot + r * flat * sin(t)) for t in half]
    side += [(r * cos(t), head + r * flat * sin(t)) for t in reversed(half)]
    return [Polyline(tuple(side), True, layer), _ring(0.0, 0.0, high, r, layer)]


def _lying_pipe(r, bore, length):
    """A pipe along the body, its right end open to us."""

    def end(x, radius):
        return [(x, radius * cos(2 * pi * i / AROUND), radius * sin(2 * pi * i / AROUND)) for i in range(AROUND)]

    outline = _hull([seen(*point) for x in (-length / 2, length / 2) for point in end(x, r)])
    return [
        Polyline(outline, True, "steel"),
        _area(end(length / 2, r), "steel"),
        _area(end(length / 2, bore), "hole"),
    ]


def _hull(points):
    """The corners of the smallest convex outline round points, counter-clockwise."""
    found = []
    for ordered in (sorted(points), sorted(points, reverse=True)):
        chain = []
        for x, y in ordered:
            while len(chain) > 1 and _turn(chain[-2], chain[-1], (x, y)) <= 0:
                chain.pop()
            chain.append((x, y))
        found += chain[:-1]
    return tuple(found)


def _turn(a, b, c):
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def exploded_drawing(
    body: Body,
    face: Face,
    plenum: Plenum,
    steel: Steel,
    baffle_sheet: BaffleSheet,
    baffle_thickness: float,
    mould: Mould,
    pins: Pins,
    inlet: str,
    inlet_length: float,
    inlet_position: str,
    say: Say,
    text_mm: float | None,
    wide: float | None,
) -> Shapes:
    """Every piece of the cut list, the block, and the mould with its pins, each with its name under it; `wide`: of its
    place, over the height, where the steel may stand in several columns."""
    text = text_mm or 2 * mould.wood.base_length_m * MM * TEXT_SHARE
    at_end = inlet_position == "end"
    hole = None if at_end else steel.inlet_saw_m * MM / 2
    pipe = say("inlet_end" if at_end else "inlet" if steel.inlet_spacing_m is None else "inlets", pipe=inlet)
    left = [(_inlet(plenum, inlet_length * MM, at_end), pipe), *_steel(body, face, plenum, steel, hole, say)]
    if baffle_sheet.sheet:
        left.insert(-1 if len(left) > 2 else 2, (_baffle(body, baffle_sheet, baffle_thickness), say("baffle")))
    left.append((_block(body, face), say("block", ports=face.port_count)))
    right = [(_frame(body, mould), say("frame")), (_base(face, mould, pins), say("base", pins=face.port_count))]
    split = _best_split(left, right, text, wide) if wide else [left]
    return Shapes(tuple(_side_by_side([*split, right], text)))


def _best_split(left, right, text, wide):
    """The way to part them that takes the least place, tried with a line across each part in its stead."""
    thin_left, thin_right = (
        [([Line(*_box_of(part), "body")], name) for part, name in parts] for parts in (left, right)
    )
    tried = [_side_by_side([*split, thin_right], text) for split in _splits(thin_left)]
    taken = [_place_taken(shapes, wide) for shapes in tried]
    return _splits(left)[taken.index(min(taken))]


def _splits(parts):
    """Every way to part them, in their order, into one, two or three columns."""
    n = len(parts)
    cuts = [(), *((i,) for i in range(1, n)), *((i, j) for i in range(1, n) for j in range(i + 1, n))]
    return [[parts[a:b] for a, b in zip((0, *cut), (*cut, n))] for cut in cuts]


def _side_by_side(columns, text):
    shapes, right = [], None
    for parts in columns:
        column = _column(parts, text)
        x1, _, x2, _ = _box_of(column)
        shift = 0.0 if right is None else right + 2 * text - x1
        shapes += [placed(shape, shift, 0.0) for shape in column]
        right = x2 + shift
    return shapes


def _place_taken(shapes, wide):
    """Height of the place, so many times as wide, that holds them all."""
    x1, y1, x2, y2 = _box_of(shapes)
    return max(y2 - y1, (x2 - x1) / wide)


def _box_of(shapes):
    return box_round(shape_box(shape) for shape in shapes)


def _column(parts, text):
    """Parts from the top down, each over its name."""
    shapes, y = [], 0.0
    for part, name in parts:
        _, low, _, high = _box_of(part)
        y -= high
        shapes += [placed(shape, 0.0, y) for shape in part]
        y += low - AIR * text - text
        shapes.append(Text(0.0, y, name, text, "middle"))
        y -= AIR * text
    return shapes


def _inlet(plenum, length, at_end):
    od, bore = plenum.inlet.od_m * MM / 2, plenum.inlet.bore_m * MM / 2
    if at_end:
        return _lying_pipe(od, bore, length)
    one = [*_drum(od, 0.0, length, "steel"), _ring(0.0, 0.0, length, bore, "hole")]
    return [placed(shape, *seen(x, 0.0, 0.0)) for x in inlets_mm(plenum) for shape in one]


def _steel(body, face, plenum, steel, hole, say):
    """(shapes, name) of the body's pieces from the inlet to the fire; `hole`: radius of each inlet's in the back."""
    pieces = {piece.name: piece for piece in steel.body.pieces}
    depth, wall, half_y = body.depth_m * MM, body.wall_m * MM, body.width_m * MM / 2
    window = face.window_length_m * MM / 2, face.window_width_m * MM / 2
    in_back = [] if hole is None else [_ring(x, 0.0, depth, hole, "hole") for x in inlets_mm(plenum)]
    if body.kind == "pipe":
        disc, cap = pieces["face disc"].width_m * MM / 2, body.cap_m * MM
        high = pieces["body pipe"].length_m * MM
        shift = [placed(shape, 0.0, seen(0.0, 0.0, cap - depth)[1]) for shape in in_back]
        return [
            ([*_drum(disc, 0.0, cap, "steel"), *shift], say("back_disc")),
            ([*_drum(half_y, 0.0, high, "steel"), _ring(0.0, 0.0, high, half_y - wall, "hole")], say("pipe")),
            ([*_drum(disc, 0.0, cap, "steel"), _ring(0.0, 0.0, cap, window[0], "hole")], say("face_disc")),
        ]
    cap = pieces["end cap"]
    if body.kind == "tube":
        half_x = steel.body.tube_length_m * MM / 2
        tube = [*_box(half_x, half_y, 0.0, depth, "steel"), *in_back]
        tube.append(_area([(half_x, y, z) for y, z in _inside(half_y - wall, wall, depth - wall)], "hole"))
        return [([*tube, *_caps(cap, half_x, half_y, depth)], say("tube"))]
    half_x = pieces["side plate"].length_m * MM / 2
    side = pieces["side plate"].width_m * MM
    shift = [placed(shape, 0.0, seen(0.0, 0.0, wall - depth)[1]) for shape in in_back]
    return [
        ([*_box(half_x, half_y, 0.0, wall, "steel"), *shift], say("back_plate")),
        ([*_box(half_x, wall / 2, 0.0, side, "steel"), *_caps(cap, half_x, half_y, side)], say("side_plates")),
        ([*_box(half_x, half_y, 0.0, wall, "steel"), _top(*window, wall, "hole")], say("face_plate")),
    ]


def _inside(half_y, low, high):
    return (-half_y, low), (half_y, low), (half_y, high), (-half_y, high)


def _caps(cap, half_x, half_y, depth):
    """Both end caps, pulled off so far that they stand clear of what they close."""
    thick, wide, high = cap.thickness_m * MM / 2, cap.width_m * MM / 2, cap.length_m * MM
    away = half_x + thick + 1.15 * (half_y + wide) * tan(TURN) + 2 * thick
    low, shapes = (depth - high) / 2, []
    for at in (-away, away):
        shapes += _box(thick, wide, low, low + high, "steel", at)
    return shapes


def _baffle(body, baffle_sheet, thickness):
    """The baffle bent as it stands, its ridge to the inlet; a flat or round one lies."""
    sheet, radius = baffle_sheet.sheet, baffle_sheet.sheet.hole_m * MM / 2
    if body.round:
        shapes = _drum(sheet.blank_width_m * MM / 2, 0.0, thickness * MM, "steel")
        return [*shapes, *(_ring(x * MM, y * MM, thickness * MM, radius, "hole") for x, y in sheet.holes)]
    half = sheet.blank_length_m * MM / 2
    if not sheet.bend_lines:
        shapes = _box(half, sheet.blank_width_m * MM / 2, 0.0, thickness * MM, "steel")
        return [*shapes, *(_ring(x * MM, y * MM, thickness * MM, radius, "hole") for x, y in sheet.holes)]
    bent = radians(sheet.bend_lines[0][1]) / 2
    reach, high = sheet.blank_width_m * MM / 2 * cos(bent), sheet.blank_width_m * MM / 2 * sin(bent)

    def leg(side):
        return [(-half, 0.0, high), (half, 0.0, high), (half, side * reach, 0.0), (-half, side * reach, 0.0)]

    shapes = []
    if sin(LOOK) * cos(bent) > cos(LOOK) * cos(TURN) * sin(bent) + 0.02:  # else the far leg is hidden by the near one
        shapes.append(_area(leg(1.0), "steel"))
    shapes.append(_area(leg(-1.0), "steel"))
    for x, y in sheet.holes:
        if y < 0:
            steps = [(2 * pi * i / 12) for i in range(12)]
            at = [(x * MM + radius * cos(t), y * MM + radius * sin(t)) for t in steps]
            shapes.append(_area([(u, v * cos(bent), high + v * sin(bent)) for u, v in at], "hole"))
    return shapes


def _block(body, face):
    """The cast block: under the lip as wide as the body, above it as wide as its inside; ports through it."""
    out, wall = (body.block_thickness_m - body.grip_m) * MM, body.wall_m * MM
    high = body.block_thickness_m * MM
    radius = face.port_diameter_m * MM / 2
    half_x, half_y = body.length_m * MM / 2, body.width_m * MM / 2
    if body.round:
        shapes = [*_drum(half_x, 0.0, out, "refractory"), *_drum(half_x - wall, out, high, "refractory")]
    else:
        inner_x, inner_y = half_x - body.cap_m * MM, half_y - wall
        shelf = [(-half_x, -half_y), (half_x, -half_y), (half_x, half_y)]
        shelf += [(inner_x, inner_y), (inner_x, -inner_y), (-inner_x, -inner_y)]
        shapes = [
            *_front(half_x, half_y, 0.0, out, "refractory"),
            _area([(x, y, out) for x, y in shelf], "refractory"),
            *_box(inner_x, inner_y, out, high, "refractory"),
        ]
    return [*shapes, *(_ring(-x * MM, y * MM, high, radius, "hole") for x, y in face.ports)]


def _frame(body, mould):
    wood, thick = mould.wood, mould.wood.pieces[0].thickness_m * MM
    inside_x, inside_y, high = wood.inside_length_m * MM / 2, wood.inside_width_m * MM / 2, wood.frame_height_m * MM
    if body.round:
        side = wood.pieces[0].length_m * MM / 2
        return [*_box(side, side, 0.0, high, "wood"), _ring(0.0, 0.0, high, inside_x, "hole")]
    return [*_box(inside_x + thick, inside_y + thick, 0.0, high, "wood"), _top(inside_x, inside_y, high, "hole")]


def _base(face, mould, pins):
    """The base board with its pins standing in it, the ones at the back first."""
    wood, thick = mould.wood, mould.wood.pieces[-1].thickness_m * MM
    shapes = _box(wood.base_length_m * MM / 2, wood.base_width_m * MM / 2, 0.0, thick, "wood")
    radius, stand = face.port_diameter_m * MM / 2, thick + pins.length_m * MM
    for x, y in sorted(face.ports, key=lambda port: (-port[1], port[0])):
        foot, head = seen(-x * MM, y * MM, thick), seen(-x * MM, y * MM, stand)
        corners = ((foot[0] - radius, foot[1]), (foot[0] + radius, foot[1]), (head[0] + radius, head[1]))
        shapes.append(Polyline((*corners, (head[0] - radius, head[1])), True, "steel"))
    return shapes
