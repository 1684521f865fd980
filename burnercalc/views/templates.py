"""Plans at true size for what is cut and drilled: ports, window, inlet hole, cap, baffle, mould; in millimetres."""

from ..drawing.helvetica import CAP_HEIGHT_RATIO, wrapped
from ..drawing.shapes import (
    Circle,
    Line,
    Text,
    centre_mark,
    dimension,
    meets,
    rectangle,
    rounded_rectangle,
    shape_box,
)
from ..making.mould import GUIDE_EDGE_M, GUIDE_HOLE_M
from ..making.stock import tube_inside_radius_m
from ..parts.baffle_sheet import BaffleSheet
from ..parts.body import Body
from ..parts.end_inlet import EndInlet
from ..parts.face import Face
from ..parts.mould import Mould
from ..parts.pins import Pins
from ..parts.steel import Steel
from .plans import MM, outlines
from .view import Say, Shapes

TEXT_MM = 3.0
AWAY_MM = 7.0
COLUMN_MM, SIDE_BY_SIDE_MM = 75.0, 205.0  # of the words of the drilling template, and of both columns
BELOW_MM = 15.0  # from a plan down to the words under it, clear of a dimension there
SHEET_MM, SHORT_MM, LONG_MM = 245.0, 85.0, 1000.0  # of a plan; of a line under one longer, and under one that is not
NARROW_MM = 165.0  # of a plan no wider than an upright sheet, and of a line under it, which shall need no second one
HALF_MM = 105.0  # the same where two columns stand beside each other
NUMBER_MM = (2.0, 2.4)  # height of a port's number: at least, at most


def template_drawing(body: Body, face: Face, mould: Mould, pins: Pins, pin_depth: float, say: Say) -> tuple:
    """The drilling template: the base from above with mould, body, window and every port, which has a circle, a centre
    mark and a number; under it what each line is and which side goes up. Long centre lines register it on the base.

    From above it is the face seen from inside the body: left and right change places against the view from the fire.
    """
    radius = face.port_diameter_m * MM / 2
    inside_x, inside_y = mould.inside_length_m * MM / 2, mould.inside_width_m * MM / 2
    shapes = [
        Circle(0.0, 0.0, inside_x, "mould")
        if body.round
        else rectangle(-inside_x, -inside_y, 2 * inside_x, 2 * inside_y, "mould"),
        *(shape for shape in outlines(body, face) if shape.layer != "setback"),
        *_arms(inside_x + 4.0, inside_y + 4.0, face.window_length_m * MM / 2, face.window_width_m * MM / 2),
    ]
    # Numbers as large as the web between the ports leaves room for.
    web_m = NUMBER_MM[1] if face.min_web_m is None else face.min_web_m
    height = min(NUMBER_MM[1], max(NUMBER_MM[0], 0.3 * web_m * MM))
    slots = {
        "mould": say.length(mould.inside_length_m),
        "mould_across": say.length(mould.inside_width_m),
        "body": say.length(body.length_m),
        "body_across": say.length(body.width_m),
        "window": say.length(face.window_length_m),
        "window_across": say.length(face.window_width_m),
        "holes": face.port_count,
        "hole": say.bore(face.port_diameter_m),
        "deep": say.length(pin_depth),
        "through": pins.knock_out_drill.replace(" in", '"').replace(" mm", ""),
    }
    lines = [say(line, **slots) for line in ("up", "side", "mould", "body", "window", "holes", "numbers")]
    # Where two columns of it stand below the mould, it lies on one sheet more often.
    split = 4 if SIDE_BY_SIDE_MM <= 2 * inside_x else len(lines)
    shapes += legend(-inside_x, -inside_y - 9.0, lines[:split], headings=2)
    shapes += legend(-inside_x, -inside_y - 9.0, lines[split:], beside=COLUMN_MM)
    for number, (x, y) in enumerate(face.ports, 1):
        x, y = -x * MM, y * MM
        beside = radius * 0.75
        shapes += [Circle(x, y, radius, "port"), *centre_mark(x, y, radius + 1.5, "mark")]
        if web_m > 0:
            shapes.append(Text(x + beside + 0.5, y + beside + 0.3, str(number), height, "start", 0.0, "number"))
    return tuple(shapes)


def legend(left, top, lines, headings=0, beside=0.0, room=SHORT_MM):
    """Lines of text under a plan, from its left end or so far beside it and from `top` down: what its lines are. Under
    one too long for a sheet they are short, so that a seam goes past them; under one that an upright sheet holds they
    end on it."""
    room = room if -2 * left > SHEET_MM else NARROW_MM if -2 * left <= NARROW_MM else LONG_MM
    rows = [
        (part, "heading" if number < headings else "text")
        for number, line in enumerate(lines)
        for part in wrapped(line, 2.4 / CAP_HEIGHT_RATIO, room)
    ]
    return [
        Text(left + beside, top - 4.2 * row, line, 2.4, "start", 0.0, layer) for row, (line, layer) in enumerate(rows)
    ]


def _clear(texts, shapes):
    """(texts, lines): what is written in a plan; where one would lie across a line, all as lines to go under it."""
    if any(meets(shape, shape_box(text)) for text in texts for shape in shapes):
        return [], [text.text for text in texts]
    return texts, []


def _side(body, steel):
    """Outline of the piece that the window or the inlet hole is cut in, and its half sizes."""
    if body.round:
        radius = steel.body.cap_length_m * MM / 2
        return Circle(0.0, 0.0, radius, "body"), radius, radius
    length, width = steel.body.tube_length_m * MM, body.width_m * MM
    return rectangle(-length / 2, -width / 2, length, width, "body"), length / 2, width / 2


def _cross(half_x, half_y):
    """Centre lines a little longer than a piece."""
    return [
        Line(-half_x - 4, 0.0, half_x + 4, 0.0, "centre"),
        Line(0.0, -half_y - 4, 0.0, half_y + 4, "centre"),
    ]


def _arms(outer_x, outer_y, inner_x, inner_y):
    """Centre lines from outside the mould to the window, so that none runs through the ports and their numbers."""
    return [
        *(Line(way * outer_x, 0.0, way * inner_x, 0.0, "centre") for way in (-1, 1)),
        *(Line(0.0, way * outer_y, 0.0, way * inner_y, "centre") for way in (-1, 1)),
    ]


def _above(half_x, y, words):
    """A dimension of the whole length, above a piece."""
    return dimension(-half_x, y, half_x, y, AWAY_MM, words, TEXT_MM)


def _beside(x, half_y, words):
    """A dimension of the whole width, at the left of a piece."""
    return dimension(x, -half_y, x, half_y, AWAY_MM, words, TEXT_MM)


def window_drawing(body: Body, face: Face, steel: Steel, say: Say) -> Shapes:
    """The window with its relief holes: what is drilled first, and where the straight cuts run."""
    outline, body_x, body_y = _side(body, steel)
    half_x, half_y = face.window_length_m * MM / 2, face.window_width_m * MM / 2
    shapes = [outline, *_cross(body_x, body_y)]
    if body.round:
        across = say.length(steel.body.cap_length_m)
        shapes += [
            Circle(0.0, 0.0, half_x, "window"),
            *dimension(-body_x, -body_y, body_x, -body_y, -AWAY_MM - 2.0, across, TEXT_MM),
            *_above(half_x, body_y, say.length(face.window_length_m)),
        ]
        words = [Text(3.0, 3.0, say("window"), TEXT_MM), Text(3.0, -6.0, say("cut_round"), TEXT_MM)]
        within, under = _clear(words, shapes)
        shapes += [*within, *legend(-body_x, -body_y - BELOW_MM, [say("disc", length=across), *under])]
        return Shapes(tuple(shapes), "round")
    cut = steel.window_cut
    corner = min(cut.corner_m * MM, half_x, half_y)
    shapes.append(rounded_rectangle(-half_x, -half_y, 2 * half_x, 2 * half_y, corner, "window"))
    for x, y in cut.drills:
        shapes += [
            Circle(x * MM, y * MM, cut.drill_m * MM / 2, "port"),
            *centre_mark(x * MM, y * MM, cut.drill_m * MM / 2 + 2),
        ]
    lengths = {"length": say.length(2 * body_x / MM), "width": say.length(body.width_m)}
    window = {"window": say.length(face.window_length_m), "window_across": say.length(face.window_width_m)}
    lip = {"setback": say.length(body.setback_m), "end": say.length((body_x - half_x) / MM)}
    even = lip["end"] == lip["setback"]
    lines = [say("side", **lengths), say("lip" if even else "lip.ends", **window, **lip)]
    if body.kind == "tube":  # where the corners of the tube end, along both long edges
        inside = tube_inside_radius_m(body.wall_m)
        flat = body_y - (inside + body.wall_m) * MM
        for y in (-flat, flat):
            shapes.append(Line(-body_x, y, body_x, y, "bend"))
        lines.append(say("corner", outside=say.length(inside + body.wall_m), inside=say.length(inside)))
    lines.append(say("bridge", bridge=steel.bridge_m))
    bridge = min(steel.bridge_m * MM, half_x) / 2
    ends = [(x, way * half_y) for x in (-bridge, bridge) for way in (-1, 1)]
    shapes += [Line(x, y - 2.0, x, y + 2.0, "mark") for x, y in ends]
    inset = (body.setback_m + cut.corner_m) * MM
    x, y = cut.drills[2][0] * MM, cut.drills[2][1] * MM
    shapes += _above(half_x, body_y, say.length(face.window_length_m))
    shapes += _beside(-body_x, half_y, say.length(face.window_width_m))
    shapes += dimension(body_x, y, body_x, y + inset, -AWAY_MM, say.length(inset / MM), TEXT_MM)
    shapes += dimension(x, -body_y, body_x, -body_y, -AWAY_MM, say.length((body_x - x) / MM), TEXT_MM)
    words = [
        Text(3.0, 3.0, say("drill", drill=say.bore(cut.drill_m)), TEXT_MM),
        Text(3.0, -6.0, say("cut"), TEXT_MM),
    ]
    within, under = _clear(words, shapes)
    shapes += within
    lines += under
    # Two columns are lower: fewer sheets, till those in the middle of a half are left out.
    split = (len(lines) + 1) // 2 if SHEET_MM < 2 * body_x < 3 * SHEET_MM else len(lines)
    shapes += legend(-body_x, -body_y - BELOW_MM, lines[:split], room=HALF_MM if lines[split:] else SHORT_MM)
    shapes += legend(-body_x, -body_y - BELOW_MM, lines[split:], room=HALF_MM, beside=HALF_MM + 5.0)
    return Shapes(tuple(shapes), "box")


def inlet_drawing(body: Body, steel: Steel, end_inlet: EndInlet, inlet: str, inlet_position: str, say: Say) -> Shapes:
    """The inlet hole in the back, or two of them, or one in an end cap."""
    radius = steel.inlet_saw_m * MM / 2
    at_end = inlet_position == "end"
    if at_end:
        half_x, half_y = steel.body.cap_width_m * MM / 2, steel.body.cap_length_m * MM / 2
        corner = steel.body.cap_corner_m * MM
        outline = rounded_rectangle(-half_x, -half_y, 2 * half_x, 2 * half_y, corner, "body")
        y = (end_inlet.axis_m - body.depth_m / 2) * MM
    else:
        outline, half_x, half_y = _side(body, steel)
        y = 0.0
    apart = (steel.inlet_spacing_m or 0.0) * MM
    first, last = (-apart / 2, apart / 2) if apart else (0.0, 0.0)
    shapes = [
        outline,
        *(
            shape
            for x in dict.fromkeys((first, last))
            for shape in (Circle(x, y, radius, "window"), *centre_mark(x, y, radius + 4))
        ),
        *dimension(-half_x, -half_y, first, -half_y, -AWAY_MM, say.length((half_x + first) / MM), TEXT_MM),
        *(dimension(first, -half_y, last, -half_y, -AWAY_MM, say.length(apart / MM), TEXT_MM) if apart else ()),
        *(
            dimension(-half_x, -half_y, -half_x, y, AWAY_MM, say.length((half_y + y) / MM), TEXT_MM)
            if half_y + y
            else ()
        ),
    ]
    words = [
        Text(first + radius + 6, y + 3.0, say("saw", saw=say.length(steel.inlet_saw_m)), TEXT_MM),
        Text(first + radius + 6, y - 6.0, say("pipe", pipe=inlet), TEXT_MM),
    ]
    within, under = _clear(words, shapes)
    if at_end:
        side = Text(3.0, -half_y + 3.0, say("face_side"), TEXT_MM)
        clear, crossed = _clear([side], [*shapes, *within])
        within += clear
        under += [say("face_below")] if crossed else []
    shapes += within
    case = "end" if at_end else "round" if body.round else "two" if apart else "back"
    lengths = {"length": say.length(2 * half_x / MM), "width": say.length(2 * half_y / MM)}
    middle = {"x": say.length((half_x + first) / MM), "y": say.length((half_y + y) / MM)}
    one = say("middle_disc") if case == "round" else say("middle", **middle)
    middles = say("middles", **middle, apart=say.length(apart / MM)) if apart else one
    shapes += legend(-half_x, -half_y - BELOW_MM, [say("back" if apart else case, **lengths), middles, *under])
    return Shapes(tuple(shapes), case)


def cap_drawing(body: Body, steel: Steel, say: Say) -> Shapes:
    """An end cap with its corners eased; of a round body, a disc."""
    half_x, half_y = steel.body.cap_width_m * MM / 2, steel.body.cap_length_m * MM / 2
    across = _above(half_x, half_y, say.length(steel.body.cap_width_m))
    texts = [Text(3.0, 3.0, say("thick", wall=say.length(body.cap_m)), TEXT_MM)]
    if body.round:
        shapes = [Circle(0.0, 0.0, half_x, "body"), *across]
    else:
        corner = steel.body.cap_corner_m * MM
        shapes = [
            rounded_rectangle(-half_x, -half_y, 2 * half_x, 2 * half_y, corner, "body"),
            *across,
            *_beside(-half_x, half_y, say.length(steel.body.cap_length_m)),
        ]
        if corner:
            words = say("radius", radius=say.length(steel.body.cap_corner_m))
            texts.insert(0, Text(3.0, -2 * TEXT_MM, words, TEXT_MM))
    within, under = _clear(texts, shapes)
    shapes += [*_cross(half_x, half_y), *within, *legend(-half_x, -half_y - 2 * TEXT_MM, under)]
    return Shapes(tuple(shapes), "round" if body.round else "box")


def baffle_drawing(body: Body, baffle_sheet: BaffleSheet, baffle_thickness: float, say: Say) -> Shapes:
    """The baffle's blank with its holes, edges and bend line."""
    sheet = baffle_sheet.sheet
    if sheet is None:
        return Shapes((Text(0.0, 0.0, say("none"), TEXT_MM),), "none")
    half_x, half_y = sheet.blank_length_m * MM / 2, sheet.blank_width_m * MM / 2
    radius = sheet.hole_m * MM / 2
    outline = (
        Circle(0.0, 0.0, half_x, "body") if body.round else rectangle(-half_x, -half_y, 2 * half_x, 2 * half_y, "body")
    )
    shapes = [outline, *_above(half_x, half_y, say.length(sheet.blank_length_m))]
    for x, y in sheet.holes:
        mark = min(2.0, 0.8 * radius)
        shapes += [Circle(x * MM, y * MM, radius, "port"), *centre_mark(x * MM, y * MM, mark)]
    if not body.round:
        shapes += _beside(-half_x, half_y, say.length(sheet.blank_width_m))
    case, slots = "flat", {}
    for y, angle, _ in sheet.bend_lines:
        shapes += [Line(-half_x - 4, y * MM, half_x + 4, y * MM, "bend")]
        case, slots = "bent", {"angle": angle}
    slots |= {
        "holes": len(sheet.holes),
        "hole": say.bore(sheet.hole_m),
        "thickness": say.length(baffle_thickness),
    }
    shapes.append(Text(-half_x, -half_y - 3.0 - TEXT_MM, say(case, **slots), TEXT_MM))
    return Shapes(tuple(shapes), case, slots)


def pin_guide_drawing(body: Body, face: Face, mould: Mould, say: Say) -> Shapes:
    """A plate for the laser or router: it lies between the boards on the base as a drilling jig, then over the pins.
    Its lower left corner is the origin, as it lies on the base."""
    length, width = mould.inside_length_m - GUIDE_EDGE_M, mould.inside_width_m - GUIDE_EDGE_M
    x, y, hole = length * MM / 2, width * MM / 2, face.port_diameter_m + GUIDE_HOLE_M
    outline = Circle(x, y, x, "cut") if body.round else rectangle(0.0, 0.0, 2 * x, 2 * y, "cut")
    shapes = [outline, Line(0.0, y, 2 * x, y, "engrave"), Line(x, 0.0, x, 2 * y, "engrave")]
    shapes += [Circle(x - px * MM, y + py * MM, hole * MM / 2, "cut") for px, py in face.ports]
    lengths = {"length": say.length(length), "width": say.length(width)}
    slots = {"holes": face.port_count, "room": GUIDE_HOLE_M, "pin": say.bore(face.port_diameter_m)}
    lines = [say("round" if body.round else "box", **lengths, **slots), say("engrave"), say("use"), say("unit")]
    return Shapes((*shapes, *legend(0.0, -8.0, lines)))


def drilled_base_drawing(body: Body, face: Face, mould: Mould, pins: Pins, pin_depth: float, say: Say) -> Shapes:
    """The base for the router, from above: pins' holes to their depth, knock-out holes right through, the mould's
    inside, the body and the centre lines engraved. Its lower left corner is the origin, as in the base's hole table."""
    wood = mould.wood
    x, y, inside_x = wood.base_length_m * MM / 2, wood.base_width_m * MM / 2, mould.inside_length_m * MM / 2
    inside_y, half_x, half_y = mould.inside_width_m * MM / 2, body.length_m * MM / 2, body.width_m * MM / 2
    shapes = [
        rectangle(0.0, 0.0, 2 * x, 2 * y, "cut"),
        Line(0.0, y, 2 * x, y, "engrave"),
        Line(x, 0.0, x, 2 * y, "engrave"),
    ]
    if body.round:
        shapes += [Circle(x, y, inside_x, "engrave"), Circle(x, y, half_x, "engrave")]
    else:
        shapes += [
            rectangle(x - half, y - across, 2 * half, 2 * across, "engrave")
            for half, across in ((inside_x, inside_y), (half_x, half_y))
        ]
    for px, py in face.ports:
        at = x - px * MM, y + py * MM
        shapes += [
            Circle(*at, face.port_diameter_m * MM / 2, "pocket"),
            Circle(*at, pins.knock_out_m * MM / 2, "cut"),
        ]
    slots = {
        "length": say.length(wood.base_length_m),
        "width": say.length(wood.base_width_m),
        "through": say.bore(pins.knock_out_m),
        "holes": face.port_count,
        "hole": say.bore(face.port_diameter_m),
        "deep": say.length(pin_depth),
    }
    lines = [say(line, **slots) for line in ("cut", "pocket", "engrave", "up", "unit")]
    return Shapes((*shapes, *legend(0.0, -8.0, lines)))


def mould_drawing(body: Body, face: Face, mould: Mould, say: Say, text_mm: float | None) -> tuple:
    """The mould from above: base board, frame, body and pins; what the lines are is written on paper only."""
    wood, text = mould.wood, text_mm or TEXT_MM
    away = AWAY_MM * text / TEXT_MM
    base_x, base_y = wood.base_length_m * MM / 2, wood.base_width_m * MM / 2
    inside_x, inside_y = wood.inside_length_m * MM / 2, wood.inside_width_m * MM / 2
    frame = wood.pieces[0].thickness_m * MM
    shapes = [rectangle(-base_x, -base_y, 2 * base_x, 2 * base_y, "mould")]
    if body.round:
        side = wood.pieces[0].length_m * MM / 2
        shapes += [
            rectangle(-side, -side, 2 * side, 2 * side, "mould"),
            Circle(0.0, 0.0, inside_x, "mould"),
            Line(-side, 0.0, -inside_x, 0.0, "hidden"),
            Line(inside_x, 0.0, side, 0.0, "hidden"),
        ]
    else:
        for low in (-inside_y - frame, inside_y):
            shapes.append(rectangle(-inside_x - frame, low, 2 * (inside_x + frame), frame, "mould"))
        for left in (-inside_x - frame, inside_x):
            shapes.append(rectangle(left, -inside_y, frame, 2 * inside_y, "mould"))
    shapes += [shape for shape in outlines(body, face) if shape.layer == "body"]
    # The pattern is seen from inside the body here, so left and right change places.
    radius = face.port_diameter_m * MM / 2
    for x, y in face.ports:
        shapes += [Circle(-x * MM, y * MM, radius, "port"), *centre_mark(-x * MM, y * MM, radius + 1)]
    inside = say("inside", length=say.length(wood.inside_length_m))
    across = say("inside", length=say.length(wood.inside_width_m))
    base_width = say.length(wood.base_width_m)
    base = say("base", length=say.length(wood.base_length_m))
    shapes += dimension(-inside_x, base_y, inside_x, base_y, away, inside, text)
    shapes += dimension(-base_x, -inside_y, -base_x, inside_y, away, across, text)
    shapes += dimension(-base_x, -base_y, base_x, -base_y, -away, base, text)
    if text_mm:
        return tuple(shapes)
    slots = {"base": base_width, "body": say.length(body.length_m), "body_across": say.length(body.width_m)}
    shapes += legend(-base_x, -base_y - BELOW_MM, [say("round" if body.round else "box", **slots)])
    return tuple(shapes)
