"""Drawings of the design in millimetres: the face, the section through the plenum, and the 1:1 drilling template."""
from ..drawing.shapes import (Circle, Drawing, Line, Text, centre_mark, dimension, rectangle,
                              rounded_rectangle)
from ..physics import pipes
from ..units import show

MM = 1000.0


def solve(d, r):
    r.drawings["face"] = lambda: face_drawing(d, r)
    r.drawings["section"] = lambda: section_drawing(d, r)
    r.drawings["template"] = lambda: template_drawing(d, r)


def _length(d, value_m):
    return show(value_m, "length", d.units).replace(" in", '"').replace(" mm", "")


def _outlines(d, r):
    """Body, setback line and window, seen on the face."""
    length, width = d.body_length * MM, d.body_width * MM
    setback, radius = d.setback * MM, d.corner_radius * MM
    window_length, window_width = r["window_length"] * MM, r["window_width"] * MM
    window = rounded_rectangle(-window_length / 2, -window_width / 2, window_length, window_width, radius, "window")
    return (rectangle(-length / 2, -width / 2, length, width, "body"),
            rectangle(-length / 2 + setback, -width / 2 + setback, window_length, window_width, "setback"), window)


def face_drawing(d, r):
    """The face as seen from the fire: body, setback, window, numbered ports, main dimensions."""
    size = max(d.body_length, d.body_width) * MM
    text = size / 34
    body_x, body_y = d.body_length * MM / 2, d.body_width * MM / 2
    window_x, window_y = r["window_length"] * MM / 2, r["window_width"] * MM / 2
    away = 1.8 * text
    ports = [Circle(x * MM, y * MM, d.port_diameter * MM / 2, "port") for x, y in r.ports]
    shapes = [*_outlines(d, r), *ports,
              *dimension(-body_x, body_y, body_x, body_y, 2.3 * away, _length(d, d.body_length), text),
              *dimension(-window_x, window_y, window_x, window_y, away + body_y - window_y, _length(d, r["window_length"]), text),
              *dimension(-body_x, -body_y, -body_x, body_y, 2.3 * away, _length(d, d.body_width), text),
              *dimension(-window_x, -window_y, -window_x, window_y, away + body_x - window_x, _length(d, r["window_width"]), text),
              *dimension(body_x, window_y, body_x, body_y, -away, _length(d, d.setback), text)]
    first_row = r.ports[:r.row_counts[0]]
    if r["port_pitch"] is not None:
        (x1, y1), (x2, y2) = first_row[0], first_row[1]
        shapes += dimension(x1 * MM, y1 * MM, x2 * MM, y2 * MM, -(away + body_y + y1 * MM), _length(d, r["port_pitch"]), text)
    if r["row_pitch"] is not None:
        x, y1 = r.ports[r.row_counts[0] - 1]
        y2 = y1 + r["row_pitch"]
        shapes += dimension(x * MM, y1 * MM, x * MM, y2 * MM, -(away + body_x - x * MM), _length(d, r["row_pitch"]), text)
    return Drawing("face", "Face, seen from the fire", shapes,
                   f"The face: a box {_length(d, d.body_length)} by {_length(d, d.body_width)} with a window inside the setback and "
                   f"{r['port_count']} ports in {d.rows} rows.")


def section_drawing(d, r):
    """Lengthwise section through the middle row: steel, refractory, ports, plenum and inlet. The fire is below."""
    half, depth, wall = d.body_length * MM / 2, d.body_depth * MM, d.wall * MM
    grip, outside = d.grip * MM, (d.block_thickness - d.grip) * MM
    window = r["window_length"] * MM / 2
    middle = r.row_counts[:(len(r.row_counts) - 1) // 2]
    start = sum(middle)
    row = [x * MM for x, _ in r.ports[start:start + r.row_counts[len(middle)]]]
    radius = d.port_diameter * MM / 2
    inlet = pipes.pipe(d.inlet, "inlet")
    od, bore = inlet.od_m * MM / 2, inlet.bore_m * MM / 2
    inlet_x = 0.0
    rise = max(0.5 * depth, 2 * od)

    def strips(left, right, low, high, layer, holes):
        """Rectangles between `holes` (centre, half width) from left to right."""
        edges = [left] + [edge for centre, r_hole in holes for edge in (centre - r_hole, centre + r_hole)] + [right]
        return [rectangle(a, low, b - a, high - low, layer) for a, b in zip(edges[::2], edges[1::2]) if b - a > 1e-6]

    ports = [(x, radius) for x in row]
    shapes = strips(-half, half, -outside, 0.0, "refractory", ports)
    shapes += strips(-window, window, 0.0, wall, "refractory", ports)
    if grip > wall:
        shapes += strips(-half + wall, half - wall, wall, grip, "refractory", ports)
    shapes += [rectangle(-half, wall, wall, depth - 2 * wall, "steel"), rectangle(half - wall, wall, wall, depth - 2 * wall, "steel")]
    shapes += strips(-half, half, 0.0, wall, "steel", [(0.0, window)])
    shapes += strips(-half, half, depth - wall, depth, "steel", [(inlet_x, od)])
    for side in (-1, 1):
        shapes.append(rectangle(inlet_x + (bore if side > 0 else -od), depth - wall, od - bore, rise + wall, "steel"))
    for x in row:
        shapes += [Line(x - radius, -outside, x - radius, grip, "port"), Line(x + radius, -outside, x + radius, grip, "port")]
    shapes.append(Line(inlet_x, -outside - 4, inlet_x, depth + rise + 4, "centre"))
    text = max(d.body_length, d.body_depth) * MM / 34
    away = 3 * text
    shapes += dimension(half, 0.0, half, depth, -away, _length(d, d.body_depth), text)
    shapes += dimension(-half, -outside, -half, grip, away, _length(d, d.block_thickness), text)
    shapes += dimension(half, -outside, half, 0.0, -away, _length(d, d.block_thickness - d.grip), text)
    shapes += dimension(-half + wall + 2 * text, grip, -half + wall + 2 * text, depth - wall, -0.5, _length(d, r.plenum_height_m), text)
    shapes.append(Text(0.5 * half, (grip + depth - wall - text) / 2, "plenum", text, "middle"))
    shapes.append(Text(inlet_x + od + text, depth + rise - text, f"inlet {d.inlet} in pipe", text, "start"))
    shapes.append(Text(-half, -outside - 2 * text, "fire side", text, "start"))
    return Drawing("section", "Section along the body", shapes,
                   "Lengthwise section: inlet pipe on top, plenum, refractory block gripping the steel lip, ports down to the fire.")


def template_drawing(d, r):
    """The drilling template, 1:1: body outline, setback, window, ports with circle, centre mark and number."""
    radius = d.port_diameter * MM / 2
    shapes = list(_outlines(d, r))
    for number, (x, y) in enumerate(r.ports, 1):
        x, y = x * MM, y * MM
        shapes += [Circle(x, y, radius, "port"), *centre_mark(x, y, radius + 1.5),
                   Text(x + radius * 0.75 + 0.5, y + radius * 0.75 + 0.3, str(number), 1.6, "start", 0.0, "number")]
    return Drawing("template", "Drilling template for the mould base", shapes,
                   "Body outline, setback line, window and every port at true size.")
