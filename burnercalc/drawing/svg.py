"""A drawing as SVG text, 1 mm = 1 unit: a file for a cutter, or inline in a page with its layers as CSS classes."""

from math import cos, radians, sin
from xml.sax.saxutils import escape, quoteattr

from .shapes import LAYERS, Arc, Circle, Line, Polyline, bulge_arc


def _n(value):
    """A number to a millionth of a millimetre."""
    text = f"{value:.6f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _point(x, y):
    return f"{_n(x)} {_n(-y)}"


def _arc_to(x, y, r, start_deg, sweep_deg):
    """Path commands of an arc from its start, in two halves so that a full circle is one too."""
    commands = []
    for part in (0.5, 1.0):
        angle = radians(start_deg + sweep_deg * part)
        end = _point(x + r * cos(angle), y + r * sin(angle))
        commands.append(f"A{_n(r)} {_n(r)} 0 0 {0 if sweep_deg > 0 else 1} {end}")
    return "".join(commands)


def _element(shape):
    if isinstance(shape, Line):
        return f'<line x1="{_n(shape.x1)}" y1="{_n(-shape.y1)}" x2="{_n(shape.x2)}" y2="{_n(-shape.y2)}"/>'
    if isinstance(shape, Circle):
        return f'<circle cx="{_n(shape.x)}" cy="{_n(-shape.y)}" r="{_n(shape.r)}"/>'
    if isinstance(shape, Arc):
        angle = radians(shape.start_deg)
        start = _point(shape.x + shape.r * cos(angle), shape.y + shape.r * sin(angle))
        # The arc is not closed, so the fill of its layer is not for it.
        return f'<path fill="none" d="M{start}{_arc_to(shape.x, shape.y, shape.r, shape.start_deg, shape.sweep_deg)}"/>'
    if isinstance(shape, Polyline):
        path = "M" + _point(*shape.points[0])
        for stretch in shape.stretches():
            path += _arc_to(*bulge_arc(*stretch)) if stretch[4] else "L" + _point(*stretch[2:4])
        return f'<path d="{path}Z"/>' if shape.closed else f'<path fill="none" d="{path}"/>'
    turn = f' transform="rotate({_n(-shape.angle)} {_point(shape.x, shape.y)})"' if shape.angle else ""
    return (
        f'<text x="{_n(shape.x)}" y="{_n(-shape.y)}" font-size="{_n(shape.font_size)}" '
        f'text-anchor="{shape.anchor}"{turn}>{escape(shape.text)}</text>'
    )


def _group(layer, shapes):
    """The shapes of one layer; style as attributes, which any CSS rule for the class overrides."""
    style = LAYERS[layer]
    ink = "#" + f"{round(255 * style.grey):02x}" * 3
    fill = "none" if style.fill is None else "#" + f"{round(255 * style.fill):02x}" * 3
    stroke = f'stroke="{ink}" stroke-width="{_n(style.stroke_mm)}"' if style.stroke_mm else 'stroke="none"'
    dash = f' stroke-dasharray="{" ".join(_n(d) for d in style.dash_mm)}"' if style.dash_mm else ""
    lines = [_element(shape) for shape in shapes if not hasattr(shape, "text")]
    texts = [_element(shape) for shape in shapes if hasattr(shape, "text")]
    parts = []
    if lines:
        parts.append(f'<g class="{layer}" fill="{fill}" {stroke}{dash}>' + "".join(lines) + "</g>")
    if texts:
        weight = ' font-weight="bold"' if style.bold else ""
        parts.append(f'<g class="{layer} label" fill="{ink}" stroke="none"{weight}>' + "".join(texts) + "</g>")
    return parts


def write_svg(drawing, margin=3.0):
    """The drawing as one <svg> element with sizes in mm and `margin` mm of air around it; the same text every time."""
    x1, y1, x2, y2 = drawing.bounds()
    left, top, width, height = x1 - margin, -y2 - margin, x2 - x1 + 2 * margin, y2 - y1 + 2 * margin
    by_layer = {layer: [shape for shape in drawing.shapes if shape.layer == layer] for layer in LAYERS}
    groups = [part for layer, shapes in by_layer.items() if shapes for part in _group(layer, shapes)]
    return "\n".join(
        [
            f'<svg xmlns="http://www.w3.org/2000/svg" class="drawing" width="{_n(width)}mm" height="{_n(height)}mm" '
            f'viewBox="{_n(left)} {_n(top)} {_n(width)} {_n(height)}" role="img" '
            f'aria-label={quoteattr(drawing.title)} font-family="Helvetica, Arial, sans-serif">',
            f"<title>{escape(drawing.title)}</title>",
            f"<desc>{escape(drawing.description or drawing.title)}</desc>",
            *groups,
            "</svg>",
            "",
        ]
    )
