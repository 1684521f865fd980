"""Drawings of the design in millimetres: face, sections along and across the body, and the 1:1 drilling template."""

from dataclasses import replace

from ..drawing.shapes import (
    Arc,
    Circle,
    Drawing,
    Line,
    Polyline,
    Text,
    centre_mark,
    dimension,
    rectangle,
    rounded_rectangle,
    shape_box,
)
from ..physics import pipes
from ..units import show

MM = 1000.0
# Text height over the largest side, so that figures of any size read alike.
TEXT_SHARE = 1 / 34
WIDE = 1.6  # a face is shown in a place so much wider than high
RANK = 2.2  # from one dimension line to the next one out, in text heights


def solve(d, r):
    # What is made smaller on a page is drawn anew with readable texts: name -> function of the text height in mm.
    r.views = {
        "face": lambda text: face_drawing(d, r, text, numbers=True),
        "section": lambda text: section_drawing(d, r, text),
        "section_across": lambda text: section_across_drawing(d, r, text),
    }
    r.drawings["face"] = lambda: face_drawing(d, r, max(d.body_length, WIDE * d.body_width) * MM * TEXT_SHARE)
    tall = d.body_depth + d.block_thickness
    r.drawings["section"] = lambda: section_drawing(d, r, max(d.body_length, tall) * MM * TEXT_SHARE)
    r.drawings["section_across"] = lambda: section_across_drawing(d, r, max(d.body_width, tall) * MM * TEXT_SHARE)
    r.drawings["template"] = lambda: template_drawing(d, r)
    r.places["template"] = "make"


def short(d, value_m):
    """A length for a dimension line: 2 3/8" or 60.3."""
    return show(value_m, "length", d.units).replace(" in", '"').replace(" mm", "")


def outlines(d, r):
    """Body, setback line and window, seen on the face."""
    length, width = d.body_length * MM, d.body_width * MM
    setback = d.setback * MM
    window_length, window_width = r["window_length"] * MM, r["window_width"] * MM
    radius = min(d.corner_radius * MM, window_length / 2, window_width / 2)
    if r.round:
        return Circle(0.0, 0.0, length / 2, "body"), Circle(0.0, 0.0, window_length / 2, "window")
    window = rounded_rectangle(-window_length / 2, -window_width / 2, window_length, window_width, radius, "window")
    return (
        rectangle(-length / 2, -width / 2, length, width, "body"),
        rectangle(-length / 2 + setback, -width / 2 + setback, window_length, window_width, "setback"),
        window,
    )


def face_drawing(d, r, text, numbers=False):
    """The face as seen from the fire: body, setback, window, ports, dimensions; numbers at the ends of each row."""
    body_x, body_y = d.body_length * MM / 2, d.body_width * MM / 2
    window_x, window_y = r["window_length"] * MM / 2, r["window_width"] * MM / 2
    away = 1.8 * text
    ports = [Circle(x * MM, y * MM, d.port_diameter * MM / 2, "port") for x, y in r.ports]
    shapes = [
        *outlines(d, r),
        *_hidden(d, r),
        *ports,
        *dimension(-body_x, body_y, body_x, body_y, 2.3 * away, short(d, d.body_length), text),
        *dimension(
            -window_x, window_y, window_x, window_y, away + body_y - window_y, short(d, r["window_length"]), text
        ),
    ]
    if r.round:
        shapes += [
            Line(-body_x - text, 0.0, body_x + text, 0.0, "centre"),
            Line(0.0, -body_y - text, 0.0, body_y + text, "centre"),
        ]
    else:
        shapes += [
            *dimension(-body_x, -body_y, -body_x, body_y, 2.3 * away, short(d, d.body_width), text),
            *dimension(
                -window_x, -window_y, -window_x, window_y, away + body_x - window_x, short(d, r["window_width"]), text
            ),
            *_setback(d, r, text, away, body_x, body_y),
        ]
    if d.pattern == "rings":
        if d.rows > 1:
            inner, outer = (r.ports[sum(r.row_counts[:ring])] for ring in (d.rows - 1, d.rows))
            shapes += dimension(
                inner[0] * MM,
                inner[1] * MM,
                outer[0] * MM,
                outer[1] * MM,
                -(away + body_x),
                short(d, r["row_pitch"]),
                text,
            )
    else:
        shapes += _pitches(d, r, text, away, body_x, body_y)
    if numbers:
        shapes += _row_ends(d, r)
    width = short(d, d.body_width)
    kind = f"a disc {width} across" if r.round else f"a box {short(d, d.body_length)} by {width}"
    rows = f"{len(r.row_counts)} {'rings, the middle one counted' if d.pattern == 'rings' else 'rows'}"
    return Drawing(
        "face",
        "Face, seen from the fire",
        shapes,
        f"The face: {kind} with a window inside the setback and {r['port_count']} ports in {rows}.",
    )


def _hidden(d, r):
    """What lies behind the face: the inside of the box, and the inlet where it comes through the back."""
    inside_x, inside_y = r.plenum_length_m * MM / 2, r.plenum_width_m * MM / 2
    if r.round:
        yield Arc(0.0, 0.0, d.body_length * MM / 2 - d.wall * MM, 0.0, 360.0, "hidden")
    else:
        yield rectangle(-inside_x, -inside_y, 2 * inside_x, 2 * inside_y, "hidden")
    if d.inlet_position == "centre":
        yield Arc(0.0, 0.0, pipes.pipe(d.inlet, "inlet").bore_m * MM / 2, 0.0, 360.0, "hidden")


def _setback(d, r, text, away, body_x, body_y):
    """The setback beside the window's length; where that has no room for its own text, at the right instead."""
    window_x, window_y = r["window_length"] * MM / 2, r["window_width"] * MM / 2
    if Text(0.0, 0.0, short(d, r["window_length"]), text).width < 2 * window_x - text:
        return dimension(window_x, body_y, body_x, body_y, away, short(d, d.setback), text)
    return dimension(body_x, body_y, body_x, window_y, away, short(d, d.setback), text)


def _row_ends(d, r):
    """Numbers in the first and last port of each row, or ring, as in the hole table."""
    height, last = 0.45 * d.port_diameter * MM, 0
    shapes = []
    for count in r.row_counts:
        for number in {last + 1, last + count}:
            x, y = r.ports[number - 1]
            shapes.append(Text(x * MM, y * MM - height / 2, str(number), height, "middle", 0.0, "number"))
        last += count
    return shapes


def _pitches(d, r, text, away, body_x, body_y):
    """Dimensions of port pitch (below) and row pitch (at the right)."""
    shapes, firsts = (), [sum(r.row_counts[:row]) for row in range(len(r.row_counts))]
    row = next((row for row, count in enumerate(r.row_counts) if count > 1), None)
    if row is not None:
        (x1, y1), (x2, _) = r.ports[firsts[row]], r.ports[firsts[row] + 1]
        shapes += dimension(
            x1 * MM, y1 * MM, x2 * MM, y1 * MM, -(away + body_y + y1 * MM), short(d, r["port_pitch"]), text
        )
    if len(r.row_counts) > 1:
        (x, y1), y2 = r.ports[firsts[1] - 1], r.ports[firsts[1]][1]
        words, ends, offset = short(d, y2 - y1), (x * MM, y1 * MM, x * MM, y2 * MM), -(away + body_x - x * MM)
        # A text longer than its line stands past the second end: above, where that leaves the setback's clear, else below.
        if y2 * MM + Text(0.0, 0.0, words, text).width + text > body_y + away:
            ends, offset = (*ends[2:], *ends[:2]), -offset
        shapes += dimension(*ends, offset, words, text)
    return shapes


def _section(d, r, half, window, ports):
    """Steel, block and ports cut along one line of the face; y up from the outside of the face, the fire below."""
    depth, wall, grip, outside = d.body_depth * MM, d.wall * MM, d.grip * MM, (d.block_thickness - d.grip) * MM
    radius = d.port_diameter * MM / 2
    holes = [(centre * MM, radius) for centre in ports]
    shapes = [
        _block_piece(left, right, half - wall, window, -outside, wall, grip)
        for left, right in _between(-half, half, holes)
    ]
    shapes += [
        rectangle(-half, 0.0, half - window, wall, "steel"),
        rectangle(window, 0.0, half - window, wall, "steel"),
        rectangle(-half, wall, wall, depth - 2 * wall, "steel"),
        rectangle(half - wall, wall, wall, depth - 2 * wall, "steel"),
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
    """One piece of the cut block: below the face as wide as the body, through the window, and behind the lip to `inner`."""

    def edge(x, side):  # from the fire side up, along one side of the piece
        if abs(x) <= window + 1e-6:
            return [(x, low), (x, grip)]
        behind = (
            [(side * min(abs(x), inner), wall), (side * min(abs(x), inner), grip)]
            if grip - wall > 1e-6
            else [(side * window, grip)]
        )
        return [
            (x, low),
            (x, 0.0),
            (side * window, 0.0),
            *([(side * window, wall)] if grip - wall > 1e-6 else []),
            *behind,
        ]

    return Polyline((*reversed(edge(left, -1)), *edge(right, 1)), True, "refractory")


def _inlet_above(d, r, half):
    """Back plate with a stub of the inlet pipe on it, and how high that reaches."""
    inlet = pipes.pipe(d.inlet, "inlet")
    od, bore = inlet.od_m * MM / 2, inlet.bore_m * MM / 2
    depth, wall = d.body_depth * MM, d.wall * MM
    top = depth + min(d.inlet_length * MM, 0.35 * depth)
    shapes = _strips(-half, half, depth - wall, depth, "steel", [(0.0, od)])
    shapes += [rectangle(left, depth - wall, od - bore, top - depth + wall, "steel") for left in (-od, bore)]
    return shapes, top


def _middle_row(r):
    """x of the ports that a cut along the middle of the face meets: those of the row nearest to it."""
    y0 = min((y for _, y in r.ports), key=abs)
    return sorted(x for x, y in r.ports if abs(y - y0) < 1e-9)


def section_drawing(d, r, text):
    """Lengthwise section through the middle row: steel, refractory, ports, baffle, plenum, inlet. Fire below."""
    half, depth, wall = d.body_length * MM / 2, d.body_depth * MM, d.wall * MM
    outside, window = (d.block_thickness - d.grip) * MM, r["window_length"] * MM / 2
    shapes, away = _section(d, r, half, window, _middle_row(r)), 2.6 * text
    if d.inlet_position == "end":
        back, top = [rectangle(-half, depth - wall, 2 * half, wall, "steel")], depth
        back += _inlet_at_end(d, r, half)
    else:
        back, top = _inlet_above(d, r, half)
        back.append(Line(0.0, -outside - 0.8 * text, 0.0, top + text, "centre"))
    shapes += back
    if r.baffle:
        ridge = (d.wall + r.baffle_stand_m + r.baffle.height_m) * MM
        sheet = d.baffle_thickness * MM
        reach = r.baffle.blank_length_m * MM / 2
        shapes.append(rectangle(-reach, ridge - sheet, 2 * reach, sheet, "steel"))
        foot = (d.wall + r.baffle_stand_m) * MM
        if r.baffle.bend_lines:
            shapes.append(Line(-reach, foot, reach, foot, "hidden"))
        if depth - wall - ridge > 1.6 * text:
            shapes += _word_inside("baffle", half - wall, ridge + 0.4 * text, text)
    # From the face down, so that a text too long for its line stands below, clear of the depth's.
    shapes += dimension(half, 0.0, half, -outside, away, short(d, d.block_thickness - d.grip), text)
    shapes += dimension(half, d.grip * MM, half, depth - wall, -away, short(d, r.plenum_height_m), text)
    shapes += dimension(half, 0.0, half, depth, -away - RANK * text, short(d, d.body_depth), text)
    shapes += dimension(-half, -outside, -half, d.grip * MM, away, short(d, d.block_thickness), text)
    shapes += dimension(-half, -outside, half, -outside, -away, short(d, d.body_length), text)
    inlet = Text(0.0, 0.0, f"inlet {d.inlet} in pipe, {short(d, d.inlet_length)} long", text, "middle")
    if d.inlet_position == "end":
        inlet = replace(inlet, x=-half, text=inlet.text + ", into this end", anchor="start")
    shapes.append(_above(inlet, top + text, shapes))
    low, high = d.grip * MM, (d.wall + r.baffle_stand_m) * MM if r.baffle else depth - wall
    if high - low > 2 * text:
        shapes += _word_inside("plenum", half - wall, (low + high - text) / 2, text)
    shapes.append(Text(0.0, -outside - away - 1.5 * text, "fire", text, "middle"))
    return Drawing(
        "section",
        "Section along the body",
        shapes,
        "Lengthwise section: inlet pipe, plenum, refractory block gripping the steel lip, ports down to the fire.",
    )


def _above(label, least, shapes):
    """The label at a height of at least `least`, and over every text that is in its way."""
    left, _, right, _ = shape_box(label)
    boxes = [shape_box(shape) for shape in shapes if isinstance(shape, Text)]
    return replace(
        label, y=0.4 * label.height + max([least, *(y2 for x1, _, x2, y2 in boxes if x1 < right and x2 > left)])
    )


def _word_inside(word, half, y, text):
    """A word at the left in the body, where it is wide enough for it."""
    label = Text(2 * text - half, y, word, text, "start")
    return [label] if label.x + label.width < half - text / 2 else []


def _inlet_od(d):
    """Outside diameter of the inlet pipe [mm]."""
    return pipes.pipe(d.inlet, "inlet").od_m * MM


def _inlet_at_end(d, r, half):
    """The inlet pipe on the left end of the body, on the middle of the plenum; the end plate is opened for it."""
    inlet = pipes.pipe(d.inlet, "inlet")
    od, bore, reach = inlet.od_m * MM / 2, inlet.bore_m * MM / 2, min(d.inlet_length, 0.35 * d.body_depth) * MM
    middle = (d.grip + r.plenum_height_m / 2) * MM
    return [
        rectangle(-half - reach, low, reach + d.wall * MM, od - bore, "steel") for low in (middle - od, middle + bore)
    ] + [Line(-half - reach - 4, middle, half, middle, "centre")]


def section_across_drawing(d, r, text):
    """Section across the body through the middle: lip, grip, plenum and the bent baffle. The fire is below."""
    half, depth, wall = d.body_width * MM / 2, d.body_depth * MM, d.wall * MM
    outside, window = (d.block_thickness - d.grip) * MM, r["window_width"] * MM / 2
    x0 = min((x for x, _ in r.ports), key=abs)
    shapes, away = _section(d, r, half, window, sorted(y for x, y in r.ports if abs(x - x0) < 1e-9)), 2.6 * text
    if d.inlet_position == "end":
        middle = (d.grip + r.plenum_height_m / 2) * MM
        shapes += [
            rectangle(-half, depth - wall, 2 * half, wall, "steel"),
            Circle(0.0, middle, _inlet_od(d) / 2, "hidden"),
        ]
        top = depth
    else:
        back, top = _inlet_above(d, r, half)
        shapes += [*back, Line(0.0, -outside - 0.8 * text, 0.0, top + text, "centre")]
    if r.baffle:
        shapes += _bent(d, r)
        foot = (d.wall + r.baffle_stand_m) * MM
        shapes += dimension(half, wall, half, foot, -away - RANK * text, short(d, r.baffle_stand_m), text)
    shapes += dimension(-half, -outside, half, -outside, -away, short(d, d.body_width), text)
    shapes += dimension(half, 0.0, half, d.grip * MM, -away, short(d, d.grip), text)
    shapes += dimension(-half, wall, -half, depth - wall, away, short(d, d.body_depth - 2 * d.wall), text)
    shapes += dimension(
        -half, depth - wall - 3 * text, -half + wall, depth - wall - 3 * text, 0.5, short(d, d.wall), text
    )
    return Drawing(
        "section_across",
        "Section across the body",
        shapes,
        "Section across: the steel lip with refractory on both sides of it, plenum, baffle and inlet.",
    )


def _bent(d, r):
    """The baffle's profile: two legs and the bend, its feet at the height where they are tacked."""
    foot, sheet = (d.wall + r.baffle_stand_m) * MM, d.baffle_thickness * MM
    ridge = foot + r.baffle.height_m * MM
    reach = r.baffle.blank_width_m * MM / 2 if not r.baffle.bend_lines else (r.body.inside_width_m * MM / 2 - 1.6)
    if not r.baffle.bend_lines:
        return [rectangle(-reach, foot, 2 * reach, sheet, "steel")]
    return [
        Polyline(
            (
                (-reach, foot),
                (0.0, ridge - sheet),
                (reach, foot),
                (reach, foot + sheet),
                (0.0, ridge),
                (-reach, foot + sheet),
            ),
            True,
            "steel",
        )
    ]


def template_drawing(d, r):
    """The drilling template, 1:1: body outline, setback, window, ports with circle, centre mark and number."""
    radius = d.port_diameter * MM / 2
    shapes = list(outlines(d, r))
    for number, (x, y) in enumerate(r.ports, 1):
        x, y = x * MM, y * MM
        shapes += [
            Circle(x, y, radius, "port"),
            *centre_mark(x, y, radius + 1.5),
            Text(x + radius * 0.75 + 0.5, y + radius * 0.75 + 0.3, str(number), 1.6, "start", 0.0, "number"),
        ]
    return Drawing(
        "template",
        "Drilling template for the mould base",
        shapes,
        "Body outline, setback line, window and every port at true size.",
    )
