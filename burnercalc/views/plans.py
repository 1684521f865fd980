"""Drawings of the burner in millimetres: the face, and sections along and across the body. The fire is below."""

from dataclasses import replace

from ..drawing.shapes import (
    Arc,
    Circle,
    Line,
    Polyline,
    Text,
    dimension,
    rectangle,
    rounded_rectangle,
    shape_box,
)
from ..parts.baffle_sheet import BaffleSheet
from ..parts.body import Body
from ..parts.end_inlet import EndInlet
from ..parts.face import Face
from ..parts.plenum import Plenum
from ..parts.steel import Steel
from .view import Say, Shapes

MM = 1000.0
# Text height over the largest side, so that figures of any size read alike.
TEXT_SHARE = 1 / 34
WIDE = 1.6  # a face is shown in a place so much wider than high
FLAME = 3.0  # length of a flame that is drawn, in port diameters
RANK = 2.2  # from one dimension line to the next one out, in text heights


def outlines(body: Body, face: Face) -> tuple:
    """Body, setback line and window, seen on the face."""
    length, width, setback = body.length_m * MM, body.width_m * MM, body.setback_m * MM
    window_length, window_width = face.window_length_m * MM, face.window_width_m * MM
    if body.round:
        return Circle(0.0, 0.0, length / 2, "body"), Circle(0.0, 0.0, window_length / 2, "window")
    radius = min(face.window_radius_m * MM, window_length / 2, window_width / 2)
    window = rounded_rectangle(-window_length / 2, -window_width / 2, window_length, window_width, radius, "window")
    return (
        rectangle(-length / 2, -width / 2, length, width, "body"),
        rectangle(-length / 2 + setback, -width / 2 + setback, window_length, window_width, "setback"),
        window,
    )


# The face


def face_drawing(
    body: Body,
    face: Face,
    plenum: Plenum,
    pattern: str,
    rows: int,
    inlet_position: str,
    say: Say,
    text_mm: float | None,
    numbers: bool,
    few: bool,
) -> Shapes:
    """The face as seen from the fire, with its dimensions; `numbers` writes them at the ends of each row. With `few`,
    for a small place, it has its outside sizes only."""
    text = text_mm or max(body.length_m, WIDE * body.width_m) * MM * TEXT_SHARE
    body_x, body_y = body.length_m * MM / 2, body.width_m * MM / 2
    away = 1.8 * text
    ports = [Circle(x * MM, y * MM, face.port_diameter_m * MM / 2, "port") for x, y in face.ports]
    shapes = [
        *outlines(body, face),
        *_hidden(body, plenum, inlet_position),
        *ports,
    ]
    if few:
        shapes += dimension(-body_x, body_y, body_x, body_y, away, say.length(body.length_m), text)
        if not body.round:
            shapes += dimension(-body_x, -body_y, -body_x, body_y, away, say.length(body.width_m), text)
    else:
        shapes += [*_sized(body, face, pattern, rows, say, text, away), _zero(-body_x, -body_y, 1.3 * text)]
    if numbers:
        shapes += _row_ends(face)
    return Shapes(
        tuple(shapes),
        ("round" if body.round else "box") + ("_rings" if pattern == "rings" else "_rows"),
        {
            "length": say.length(body.length_m),
            "width": say.length(body.width_m),
            "ports": face.port_count,
            "rows": len(face.row_counts),
        },
    )


def _zero(x, y, side):
    """The corner that the hole table counts from: its sign, which says so however the drawing lies."""
    return Polyline(((x, y), (x + side, y), (x, y + side)), True, "solid")


def _sized(body, face, pattern, rows, say, text, away):
    """All dimensions of the face."""
    body_x, body_y = body.length_m * MM / 2, body.width_m * MM / 2
    window_x, window_y = face.window_length_m * MM / 2, face.window_width_m * MM / 2
    shapes = [
        *dimension(-body_x, body_y, body_x, body_y, 2.3 * away, say.length(body.length_m), text),
        *dimension(
            -window_x, window_y, window_x, window_y, away + body_y - window_y, say.length(face.window_length_m), text
        ),
    ]
    if body.round:
        shapes += [
            Line(-body_x - text, 0.0, body_x + text, 0.0, "centre"),
            Line(0.0, -body_y - text, 0.0, body_y + text, "centre"),
        ]
    else:
        across = say.length(face.window_width_m)
        shapes += [
            *dimension(-body_x, -body_y, -body_x, body_y, 2.3 * away, say.length(body.width_m), text),
            *dimension(-window_x, -window_y, -window_x, window_y, away + body_x - window_x, across, text),
            *_setback(body, face, say, text, away),
        ]
    if pattern == "rings":
        if rows > 1:
            inner, outer = (face.ports[sum(face.row_counts[:ring])] for ring in (rows - 1, rows))
            shapes += dimension(
                inner[0] * MM,
                inner[1] * MM,
                outer[0] * MM,
                outer[1] * MM,
                -(away + body_x),
                say.length(face.row_pitch_m),
                text,
            )
    else:
        shapes += _pitches(face, say, text, away, body_x, body_y)
    return shapes


def inlets_mm(plenum):
    """Where each inlet enters along the body, from its middle."""
    return [(x - plenum.length_m / 2) * MM for x in plenum.inlets_m]


def _hidden(body, plenum, inlet_position):
    """What lies behind the face: the inside of the box, and the inlets where they come through the back."""
    inside_x, inside_y = plenum.length_m * MM / 2, plenum.width_m * MM / 2
    if body.round:
        yield Arc(0.0, 0.0, body.length_m * MM / 2 - body.wall_m * MM, 0.0, 360.0, "hidden")
    else:
        yield rectangle(-inside_x, -inside_y, 2 * inside_x, 2 * inside_y, "hidden")
    for x in inlets_mm(plenum) if inlet_position == "centre" else ():
        yield Arc(x, 0.0, plenum.inlet.bore_m * MM / 2, 0.0, 360.0, "hidden")


def _setback(body, face, say, text, away):
    """The setback beside the window's length; where that has no room for its own text, at the right instead, outside
    the pitch of the rows."""
    body_x, body_y = body.length_m * MM / 2, body.width_m * MM / 2
    window_x, window_y = face.window_length_m * MM / 2, face.window_width_m * MM / 2
    if Text(0.0, 0.0, say.length(face.window_length_m), text).width < 2 * window_x - text:
        return dimension(window_x, body_y, body_x, body_y, away, say.length(body.setback_m), text)
    return dimension(body_x, body_y, body_x, window_y, 2.3 * away, say.length(body.setback_m), text)


def _row_ends(face):
    """Numbers in the first and last port of each row, or ring, as in the hole table."""
    height, last = 0.45 * face.port_diameter_m * MM, 0
    shapes = []
    for count in face.row_counts:
        for number in {last + 1, last + count}:
            x, y = face.ports[number - 1]
            shapes.append(Text(x * MM, y * MM - height / 2, str(number), height, "middle", 0.0, "number"))
        last += count
    return shapes


def _pitches(face, say, text, away, body_x, body_y):
    """Dimensions of port pitch (below) and row pitch (at the right)."""
    shapes, firsts = (), [sum(face.row_counts[:row]) for row in range(len(face.row_counts))]
    row = next((row for row, count in enumerate(face.row_counts) if count > 1), None)
    if row is not None:
        (x1, y1), (x2, _) = face.ports[firsts[row]], face.ports[firsts[row] + 1]
        shapes += dimension(
            x1 * MM, y1 * MM, x2 * MM, y1 * MM, -(away + body_y + y1 * MM), say.length(face.port_pitch_m), text
        )
    if len(face.row_counts) > 1:
        (x, y1), y2 = face.ports[firsts[1] - 1], face.ports[firsts[1]][1]
        words, ends, offset = say.length(y2 - y1), (x * MM, y1 * MM, x * MM, y2 * MM), -(away + body_x - x * MM)
        # A text longer than its line stands past the second end: above, where the setback's is clear of it, else below.
        if y2 * MM + Text(0.0, 0.0, words, text).width + text > body_y + away:
            ends, offset = (*ends[2:], *ends[:2]), -offset
        shapes += dimension(*ends, offset, words, text)
    return shapes


# Sections


def section_drawing(
    body: Body,
    face: Face,
    plenum: Plenum,
    baffle_sheet: BaffleSheet,
    baffle_thickness: float,
    inlet: str,
    inlet_length: float,
    inlet_position: str,
    end_inlet: EndInlet,
    caps: str,
    burns: bool,
    say: Say,
    text_mm: float | None,
) -> Shapes:
    """Lengthwise section through the middle row: steel, refractory, ports, baffle, inlet; flames if it burns."""
    text = text_mm or max(body.length_m, body.depth_m + body.block_thickness_m) * MM * TEXT_SHARE
    half, depth, wall = body.length_m * MM / 2, body.depth_m * MM, body.face_m * MM
    outside, window = (body.block_thickness_m - body.grip_m) * MM, face.window_length_m * MM / 2
    sheet = baffle_sheet.sheet
    shapes, away = _section(body, face, half, window, _middle_row(face), *_ends(body, caps)), 2.6 * text
    fire = flames(body, face, burns)
    shapes += fire
    below = away + (FLAME * face.port_diameter_m * MM if fire else 0.0)
    if inlet_position == "end":
        plate = half - _ends(body, caps)[1] * MM
        back, top = [rectangle(-plate, depth - wall, 2 * plate, wall, "steel")], depth
        back += _inlet_at_end(body, plenum, end_inlet, inlet_length, half)
    else:
        at = inlets_mm(plenum)
        back, top = _inlet_above(body, plenum, inlet_length, half - _ends(body, caps)[1] * MM, at)
        back += [Line(x, -outside - 0.8 * text, x, top + text, "centre") for x in at]
        if len(at) > 1:
            back += dimension(at[0], top, at[1], top, text, say.length((at[1] - at[0]) / MM), text)
    shapes += back
    if sheet:
        ridge = (body.face_m + baffle_sheet.stand_m + sheet.height_m) * MM
        thick = baffle_thickness * MM
        reach = sheet.blank_length_m * MM / 2
        shapes.append(rectangle(-reach, ridge - thick, 2 * reach, thick, "steel"))
        foot = (body.face_m + baffle_sheet.stand_m) * MM
        if sheet.bend_lines:
            shapes.append(Line(-reach, foot, reach, foot, "hidden"))
        if depth - wall - ridge > 1.6 * text:
            shapes += _word_inside(say("baffle"), half - body.wall_m * MM, ridge + 0.4 * text, text)
    # From the face down, so that a text too long for its line stands below, clear of the depth's.
    shapes += dimension(half, 0.0, half, -outside, away, say.length(body.block_thickness_m - body.grip_m), text)
    shapes += dimension(half, body.grip_m * MM, half, depth - wall, -away, say.length(plenum.height_m), text)
    shapes += dimension(half, 0.0, half, depth, -away - RANK * text, say.length(body.depth_m), text)
    shapes += dimension(-half, -outside, -half, body.grip_m * MM, away, say.length(body.block_thickness_m), text)
    shapes += dimension(-half, -outside, half, -outside, -below, say.length(body.length_m), text)
    words = {"pipe": inlet, "length": say.length(inlet_length)}
    if inlet_position == "end":
        label = Text(-half, 0.0, say("inlet_at_end", **words), text, "start")
    else:
        label = Text(0.0, 0.0, say("inlet" if plenum.streams < 4 else "inlets", **words), text, "middle")
    shapes.append(_above(label, top + text, shapes))
    low, high = body.grip_m * MM, (body.face_m + baffle_sheet.stand_m) * MM if sheet else depth - wall
    if high - low > 2 * text:
        shapes += _word_inside(say("plenum"), half - body.wall_m * MM, (low + high - text) / 2, text)
    shapes.append(Text(0.0, -outside - below - 1.5 * text, say("fire"), text, "middle"))
    return Shapes(tuple(shapes))


def in_section(body, face, plenum, caps, inlet_position, inlet_length, across):
    """The burner cut along or across, without words: steel, block and ports, and an inlet in the back."""
    if across:
        half, window, ports = body.width_m * MM / 2, face.window_width_m * MM / 2, _middle_column(face)
        end_m, in_m = _ends(body, caps) if body.round else (body.wall_m, 0.0)
        inlets = [0.0]
    else:
        half, window, ports = body.length_m * MM / 2, face.window_length_m * MM / 2, _middle_row(face)
        (end_m, in_m), inlets = _ends(body, caps), inlets_mm(plenum)
    shapes, plate = _section(body, face, half, window, ports, end_m, in_m), half - in_m * MM
    if inlet_position == "end":
        depth, wall = body.depth_m * MM, body.face_m * MM
        return [*shapes, rectangle(-plate, depth - wall, 2 * plate, wall, "steel")]
    return [*shapes, *_inlet_above(body, plenum, inlet_length, plate, inlets)[0]]


def flames(body, face, burns, across=False):
    """A flame under each port of the cut, where the verdicts say that it holds. Its length is no number."""
    low, radius = -(body.block_thickness_m - body.grip_m) * MM, face.port_diameter_m * MM / 2
    tip = low - 2 * FLAME * radius
    ports = _middle_column(face) if across else _middle_row(face)
    return [
        Polyline(((x * MM - radius, low), (x * MM + radius, low), (x * MM, tip)), True, "flame")
        for x in (ports if burns else ())
    ]


def section_across_drawing(
    body: Body,
    face: Face,
    plenum: Plenum,
    steel: Steel,
    baffle_sheet: BaffleSheet,
    baffle_thickness: float,
    inlet_length: float,
    inlet_position: str,
    end_inlet: EndInlet,
    caps: str,
    say: Say,
    text_mm: float | None,
) -> Shapes:
    """Section across the body through the middle: lip, grip, plenum and the bent baffle."""
    text = text_mm or max(body.width_m, body.depth_m + body.block_thickness_m) * MM * TEXT_SHARE
    half, depth, wall = body.width_m * MM / 2, body.depth_m * MM, body.face_m * MM
    outside, window = (body.block_thickness_m - body.grip_m) * MM, face.window_width_m * MM / 2
    end_m, in_m = _ends(body, caps) if body.round else (body.wall_m, 0.0)
    shapes, away = _section(body, face, half, window, _middle_column(face), end_m, in_m), 2.6 * text
    if inlet_position == "end":
        middle = end_inlet.axis_m * MM
        shapes += [
            rectangle(-half, depth - wall, 2 * half, wall, "steel"),
            Circle(0.0, middle, plenum.inlet.od_m * MM / 2, "hidden"),
        ]
    else:
        back, top = _inlet_above(body, plenum, inlet_length, half - in_m * MM, [0.0])
        shapes += [*back, Line(0.0, -outside - 0.8 * text, 0.0, top + text, "centre")]
    if baffle_sheet.sheet:
        shapes += _bent(body, steel, baffle_sheet, baffle_thickness)
        foot = (body.face_m + baffle_sheet.stand_m) * MM
        beyond = half + away + 0.6 * text  # clear of the grip's text, which stands nearer
        stand = say.length(baffle_sheet.stand_m)
        shapes += [
            Line(half + 1.0, foot, beyond, foot, "dimension"),
            *dimension(beyond, wall, beyond, foot, (0.6 - RANK) * text, stand, text),
        ]
    shapes += dimension(-half, -outside, half, -outside, -away, say.length(body.width_m), text)
    shapes += dimension(half, 0.0, half, body.grip_m * MM, -away, say.length(body.grip_m), text)
    shapes += dimension(-half, wall, -half, depth - wall, away, say.length(body.depth_m - 2 * body.face_m), text)
    at = depth - wall - 3 * text
    shapes += dimension(-half, at, -half + body.wall_m * MM, at, 0.5, say.length(body.wall_m), text)
    case = "end" if inlet_position == "end" else "middle" if steel.inlet_spacing_m is None else "inlet"
    return Shapes(tuple(shapes), case)


def _ends(body, caps):
    """(thickness of what closes the ends of a lengthwise cut, how far in from the ends face and back stop) [m]."""
    return body.end_m, body.end_m if (caps == "in") == body.round else 0.0


def _section(body, face, half, window, ports, end_m, in_m):
    """Steel, block and ports cut along one line of the face; y up from the outside of the face. The ends are end_m
    thick; where face and back stop in_m short of them they are laid on, as high as the body."""
    end, short = end_m * MM, in_m * MM
    depth, wall, grip = body.depth_m * MM, body.face_m * MM, body.grip_m * MM
    outside, radius = (body.block_thickness_m - body.grip_m) * MM, face.port_diameter_m * MM / 2
    holes = [(centre * MM, radius) for centre in ports]
    shapes = [
        _block_piece(left, right, half - end, window, -outside, wall, grip)
        for left, right in _between(-half, half, holes)
    ]
    shapes += [
        rectangle(-half + short, 0.0, half - short - window, wall, "steel"),
        rectangle(window, 0.0, half - short - window, wall, "steel"),
        rectangle(-half, 0.0 if short else wall, end, depth if short else depth - 2 * wall, "steel"),
        rectangle(half - end, 0.0 if short else wall, end, depth if short else depth - 2 * wall, "steel"),
    ]
    for centre, _ in holes:
        shapes += [
            Line(centre - radius, -outside, centre - radius, grip, "port"),
            Line(centre + radius, -outside, centre + radius, grip, "port"),
        ]
    return shapes


def _between(left, right, holes):
    """(left, right) of what `holes` (centre, half width) leave of a line; holes that overlap are one."""
    spans, at = [], left
    for centre, r_hole in sorted(holes):
        if centre - r_hole - at > 1e-6:
            spans.append((at, min(centre - r_hole, right)))
        at = max(at, centre + r_hole)
    if right - at > 1e-6:
        spans.append((at, right))
    return spans


def _strips(left, right, low, high, layer, holes):
    """Rectangles between `holes` from left to right."""
    return [rectangle(a, low, b - a, high - low, layer) for a, b in _between(left, right, holes)]


def _block_piece(left, right, inner, window, low, wall, grip):
    """One piece of the cut block: below the face as wide as the body, through the window, behind the lip to `inner`."""

    def edge(x, side):  # from the fire side up, along one side of the piece
        if abs(x) <= window + 1e-6:
            return [(x, low), (x, grip)]
        if grip - wall > 1e-6:
            inside = side * min(abs(x), inner)
            behind = [(side * window, wall), (inside, wall), (inside, grip)]
        else:
            behind = [(side * window, grip)]
        return [(x, low), (x, 0.0), (side * window, 0.0), *behind]

    return Polyline((*reversed(edge(left, -1)), *edge(right, 1)), True, "refractory")


def _inlet_above(body, plenum, inlet_length, half, at):
    """Back plate with a stub of an inlet pipe on it at each place, and how high that reaches."""
    od, bore = plenum.inlet.od_m * MM / 2, plenum.inlet.bore_m * MM / 2
    depth, wall = body.depth_m * MM, body.face_m * MM
    top = depth + min(inlet_length * MM, 0.35 * depth)
    shapes = _strips(-half, half, depth - wall, depth, "steel", [(x, od) for x in at])
    shapes += [
        rectangle(x + left, depth - wall, od - bore, top - depth + wall, "steel") for x in at for left in (-od, bore)
    ]
    return shapes, top


def _inlet_at_end(body, plenum, end_inlet, inlet_length, half):
    """The inlet pipe on the left end of the body; the end plate is opened for it."""
    od, bore = plenum.inlet.od_m * MM / 2, plenum.inlet.bore_m * MM / 2
    reach = min(inlet_length, 0.35 * body.depth_m) * MM
    middle = end_inlet.axis_m * MM
    return [
        *(
            rectangle(-half - reach, low, reach + body.cap_m * MM, od - bore, "steel")
            for low in (middle - od, middle + bore)
        ),
        Line(-half - reach - 4, middle, half, middle, "centre"),
    ]


def _middle_row(face):
    """x of the ports that a cut along the middle of the face meets: those of the row nearest to it."""
    y0 = min((y for _, y in face.ports), key=abs)
    return sorted(x for x, y in face.ports if abs(y - y0) < 1e-9)


def _middle_column(face):
    """y of the ports that a cut across the middle of the face meets."""
    x0 = min((x for x, _ in face.ports), key=abs)
    return sorted(y for x, y in face.ports if abs(x - x0) < 1e-9)


def _above(label, least, shapes):
    """The label at a height of at least `least`, and over every text that is in its way."""
    left, _, right, _ = shape_box(label)
    boxes = [shape_box(shape) for shape in shapes if isinstance(shape, Text)]
    in_way = (y2 for x1, _, x2, y2 in boxes if x1 < right and x2 > left)
    return replace(label, y=0.4 * label.height + max([least, *(y2 + 0.4 * label.height for y2 in in_way)]))


def _word_inside(word, half, y, text):
    """A word at the left in the body, where it is wide enough for it."""
    label = Text(2 * text - half, y, word, text, "start")
    return [label] if label.x + label.width < half - text / 2 else []


def _bent(body, steel, baffle_sheet, baffle_thickness):
    """The baffle's profile: two legs and the bend, its feet at the height where they are tacked."""
    sheet = baffle_sheet.sheet
    foot, thick = (body.face_m + baffle_sheet.stand_m) * MM, baffle_thickness * MM
    ridge = foot + sheet.height_m * MM
    if not sheet.bend_lines:
        reach = sheet.blank_width_m * MM / 2
        return [rectangle(-reach, foot, 2 * reach, thick, "steel")]
    reach = steel.body.inside_width_m * MM / 2 - 1.6
    profile = (
        (-reach, foot),
        (0.0, ridge - thick),
        (reach, foot),
        (reach, foot + thick),
        (0.0, ridge),
        (-reach, foot + thick),
    )
    return [Polyline(profile, True, "steel")]
