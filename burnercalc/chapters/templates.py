"""Plans at true size for what is cut and drilled besides the ports: window, inlet hole, baffle, cap, mould."""

from ..drawing.shapes import Circle, Drawing, Line, Text, centre_mark, dimension, rectangle, rounded_rectangle
from .plans import MM, outlines, short

GROUP = "make"
TEXT_MM = 3.0
AWAY_MM = 7.0


def solve(d, r):
    r.drawings["window"] = lambda: window_drawing(d, r)
    r.drawings["inlet"] = lambda: inlet_drawing(d, r)
    r.drawings["cap"] = lambda: cap_drawing(d, r)
    r.drawings["baffle"] = lambda: baffle_drawing(d, r)
    r.drawings["mould"] = lambda: mould_drawing(d, r)


def _side(d, r):
    """Outline of the piece that the window or the inlet hole is cut in, and its half sizes."""
    if r.round:
        radius = r.body.cap_length_m * MM / 2
        return Circle(0.0, 0.0, radius, "body"), radius, radius
    length, width = r.body.tube_length_m * MM, d.body_width * MM
    return rectangle(-length / 2, -width / 2, length, width, "body"), length / 2, width / 2


def _cross(half_x, half_y):
    """Centre lines a little longer than a piece."""
    return [Line(-half_x - 4, 0.0, half_x + 4, 0.0, "centre"), Line(0.0, -half_y - 4, 0.0, half_y + 4, "centre")]


def window_drawing(d, r):
    """The window with its relief holes: what is drilled first, and where the straight cuts run."""
    outline, body_x, body_y = _side(d, r)
    half_x, half_y = r["window_length"] * MM / 2, r["window_width"] * MM / 2
    shapes = [outline, *_cross(body_x, body_y)]
    if r.round:
        shapes += [
            Circle(0.0, 0.0, half_x, "window"),
            *dimension(-body_x, -body_y, body_x, -body_y, -AWAY_MM, short(d, r.body.cap_length_m), TEXT_MM),
            *dimension(-half_x, body_y, half_x, body_y, AWAY_MM, short(d, r["window_length"]), TEXT_MM),
            Text(3.0, 3.0, "window", TEXT_MM),
            Text(3.0, -6.0, "cut round the line", TEXT_MM),
        ]
        return Drawing("window", "Window in the face disc", shapes, "The face disc with its round window at true size.")
    cut = r.window_cut
    shapes.append(
        rounded_rectangle(-half_x, -half_y, 2 * half_x, 2 * half_y, min(cut.corner_m * MM, half_x, half_y), "window")
    )
    for x, y in cut.drills:
        shapes += [
            Circle(x * MM, y * MM, cut.drill_m * MM / 2, "port"),
            *centre_mark(x * MM, y * MM, cut.drill_m * MM / 2 + 2),
        ]
    inset = (d.setback + cut.corner_m) * MM
    x, y = cut.drills[2][0] * MM, cut.drills[2][1] * MM
    shapes += dimension(-half_x, body_y, half_x, body_y, AWAY_MM, short(d, r["window_length"]), TEXT_MM)
    shapes += dimension(-body_x, -half_y, -body_x, half_y, AWAY_MM, short(d, r["window_width"]), TEXT_MM)
    shapes += dimension(body_x, y, body_x, y + inset, -AWAY_MM, short(d, inset / MM), TEXT_MM)
    shapes += dimension(x, -body_y, body_x, -body_y, -AWAY_MM, short(d, (body_x - x) / MM), TEXT_MM)
    shapes += [
        Text(3.0, 3.0, f"1. drill four holes of {short(d, cut.drill_m)}", TEXT_MM),
        Text(3.0, -6.0, "2. cut from hole to hole", TEXT_MM),
    ]
    return Drawing(
        "window",
        "Window and relief holes",
        shapes,
        "The side of the body that becomes the face: window, four corner relief holes and the cuts between "
        "them, at true size.",
    )


def inlet_drawing(d, r):
    """The inlet hole in the back, or in one end cap."""
    radius = r.inlet_saw_m * MM / 2
    at_end = d.inlet_position == "end"
    if at_end:
        half_x, half_y = r.body.cap_width_m * MM / 2, r.body.cap_length_m * MM / 2
        outline = rounded_rectangle(-half_x, -half_y, 2 * half_x, 2 * half_y, r.body.cap_corner_m * MM, "body")
        y = (d.grip - d.wall) / 2 * MM
    else:
        outline, half_x, half_y = _side(d, r)
        y = 0.0
    shapes = [
        outline,
        Circle(0.0, y, radius, "window"),
        *centre_mark(0.0, y, radius + 4),
        *dimension(-half_x, -half_y, 0.0, -half_y, -AWAY_MM, short(d, half_x / MM), TEXT_MM),
        *dimension(-half_x, -half_y, -half_x, y, AWAY_MM, short(d, (half_y + y) / MM), TEXT_MM),
        Text(radius + 6, y + 3.0, f"saw {short(d, r.inlet_saw_m)}", TEXT_MM),
        Text(radius + 6, y - 6.0, f"for {d.inlet} in pipe", TEXT_MM),
    ]
    if at_end:
        shapes.append(Text(0.0, -half_y + 3.0, "face side", TEXT_MM, "middle"))
    where = "one end cap" if at_end else "the back disc" if r.round else "the back"
    return Drawing(
        "inlet",
        f"Inlet hole in {where}",
        shapes,
        f"The inlet hole with its centre and the outline of {where}, at true size.",
    )


def cap_drawing(d, r):
    """An end cap with its corners eased; of a round body, a disc."""
    half_x, half_y = r.body.cap_width_m * MM / 2, r.body.cap_length_m * MM / 2
    if r.round:
        shapes = [
            Circle(0.0, 0.0, half_x, "body"),
            *dimension(-half_x, half_y, half_x, half_y, AWAY_MM, short(d, r.body.cap_width_m), TEXT_MM),
        ]
        name = "Disc of the body, cut two"
    else:
        corner = r.body.cap_corner_m * MM
        shapes = [
            rounded_rectangle(-half_x, -half_y, 2 * half_x, 2 * half_y, corner, "body"),
            *dimension(-half_x, half_y, half_x, half_y, AWAY_MM, short(d, r.body.cap_width_m), TEXT_MM),
            *dimension(-half_x, -half_y, -half_x, half_y, AWAY_MM, short(d, r.body.cap_length_m), TEXT_MM),
        ]
        if corner:
            shapes.append(Text(3.0, -2 * TEXT_MM, f"radius {short(d, r.body.cap_corner_m)}", TEXT_MM))
        name = "End cap, cut two"
    shapes += [*_cross(half_x, half_y), Text(3.0, 3.0, f"{short(d, d.wall)} thick", TEXT_MM)]
    return Drawing("cap", name, shapes, f"{name}, at true size.")


def baffle_drawing(d, r):
    """The baffle's blank with its holes, edges and bend line."""
    if r.baffle is None:
        return Drawing(
            "baffle",
            "No baffle",
            (Text(0.0, 0.0, "This design has no baffle.", TEXT_MM),),
            "This design has no baffle.",
        )
    baffle = r.baffle
    half_x, half_y, radius = baffle.blank_length_m * MM / 2, baffle.blank_width_m * MM / 2, baffle.hole_m * MM / 2
    shapes = [
        Circle(0.0, 0.0, half_x, "body") if r.round else rectangle(-half_x, -half_y, 2 * half_x, 2 * half_y, "body"),
        *dimension(-half_x, half_y, half_x, half_y, AWAY_MM, short(d, baffle.blank_length_m), TEXT_MM),
    ]
    for x, y in baffle.holes:
        shapes += [Circle(x * MM, y * MM, radius, "port"), *centre_mark(x * MM, y * MM, min(2.0, 0.8 * radius))]
    if not r.round:
        shapes += dimension(-half_x, -half_y, -half_x, half_y, AWAY_MM, short(d, baffle.blank_width_m), TEXT_MM)
    words = f"{len(baffle.holes)} holes of {short(d, baffle.hole_m)}, sheet {short(d, d.baffle_thickness)}"
    for y, angle, _ in baffle.bend_lines:
        shapes += [Line(-half_x - 4, y * MM, half_x + 4, y * MM, "bend")]
        words += f", bend {angle:g}° along the middle"
    shapes.append(Text(-half_x, -half_y - 3.0 - TEXT_MM, words, TEXT_MM))
    return Drawing("baffle", "Baffle, flat", shapes, f"The baffle's blank at true size: {words}.")


def mould_drawing(d, r):
    """The mould from above: base board, frame, body and pins."""
    mould = r.mould
    base_x, base_y = mould.base_length_m * MM / 2, mould.base_width_m * MM / 2
    inside_x, inside_y = mould.inside_length_m * MM / 2, mould.inside_width_m * MM / 2
    frame = mould.pieces[0].thickness_m * MM
    shapes = [rectangle(-base_x, -base_y, 2 * base_x, 2 * base_y, "mould")]
    if r.round:
        side = mould.pieces[0].length_m * MM / 2
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
    shapes += [shape for shape in outlines(d, r) if shape.layer == "body"]
    # The pattern is seen from inside the body here, so left and right change places.
    for x, y in r.ports:
        shapes += [
            Circle(-x * MM, y * MM, d.port_diameter * MM / 2, "port"),
            *centre_mark(-x * MM, y * MM, d.port_diameter * MM / 2 + 1),
        ]
    shapes += dimension(
        -inside_x, base_y, inside_x, base_y, AWAY_MM, "inside " + short(d, mould.inside_length_m), TEXT_MM
    )
    shapes += dimension(
        -base_x, -inside_y, -base_x, inside_y, AWAY_MM, "inside " + short(d, mould.inside_width_m), TEXT_MM
    )
    shapes += dimension(-base_x, -base_y, base_x, -base_y, -AWAY_MM, "base " + short(d, mould.base_length_m), TEXT_MM)
    return Drawing(
        "mould",
        "Mould, from above",
        shapes,
        "The mould from above at true size: base board, frame, outline of the body and the pins.",
    )
