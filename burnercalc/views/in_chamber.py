"""The burner in its chamber, to scale: cut along the chamber, the burner in the roof with its face flush."""

from math import sqrt

from ..drawing.shapes import Line, Polyline, Text, dimension, placed, rectangle
from ..parts.body import Body
from ..parts.face import Face
from ..parts.plenum import Plenum
from ..parts.standing import Standing
from .plans import MM, flames, in_section
from .view import Say, Shapes

TEXT_SHARE = 1 / 40
OUT = 0.25  # of the chamber's length that a bar stands out of the opening


def in_chamber_drawing(
    body: Body,
    face: Face,
    plenum: Plenum,
    standing: Standing,
    caps: str,
    inlet_position: str,
    inlet_length: float,
    burner_count: int,
    chamber_shape: str,
    chamber_length: float,
    chamber_width: float,
    chamber_height: float,
    chamber_diameter: float,
    lining: tuple[tuple[str, float], ...],
    opening_area: float,
    work_rate: float,
    bar_diameter: float,
    burns: bool,
    say: Say,
    text_mm: float | None,
) -> Shapes:
    """The lining's layers all round, the opening at one end, the work, and as many burners as stand side by side: cut
    upright, seen from above where they stand in a side wall."""
    at, box = standing.at, chamber_shape == "box"
    above, shown = at.wall.name == "side" and at.fits, at.wall.name not in ("end", "lid") or not at.fits
    length, layers = chamber_length * MM, [thickness * MM for _, thickness in lining]
    upright_m, width_m = (chamber_height, chamber_width) if box else (chamber_diameter, chamber_diameter)
    door_m = min(sqrt(opening_area), upright_m)
    door_m = min(max(door_m, opening_area / width_m), upright_m)
    height_m, low_m = upright_m, 0.0
    if above:
        height_m, door_m = width_m, opening_area / door_m if door_m else 0.0
        low_m = (width_m - door_m) / 2
    height, low, door = height_m * MM, low_m * MM, door_m * MM
    total = sum(layers)
    text = text_mm or (length + 2 * total) * TEXT_SHARE
    turned = at.turned and at.fits
    half = (body.width_m if turned else body.length_m) * MM / 2
    fit = at.row if at.fits else max(1, min(burner_count, int(length / (2 * half))))
    pitch = at.pitch_m * MM if at.fits else length / fit
    middles = [length / 2 + (i - (fit - 1) / 2) * pitch for i in range(fit)] if shown else []
    shapes = _lining(length, height, layers, low, low + door, [(middle - half, middle + half) for middle in middles])
    burner = in_section(body, face, plenum, caps, inlet_position, inlet_length, turned)
    burner += flames(body, face, burns, turned)
    up = height + (body.block_thickness_m - body.grip_m) * MM
    for middle in middles:
        shapes += [placed(shape, middle, up) for shape in burner]
    top = up + body.depth_m * MM + (0.0 if inlet_position == "end" else min(inlet_length, 0.35 * body.depth_m) * MM)
    if work_rate > 0:
        bar = min(bar_diameter * MM, door)
        foot = (height - bar) / 2 if above else 0.0
        shapes.append(rectangle(0.15 * length, foot, (0.85 + OUT) * length + total, bar, "steel"))
        shapes.append(Text(0.15 * length, foot + bar + 0.5 * text, say("work"), text))
    name = "burners" if burner_count > 1 else "burner" if shown else "in_end"
    thick = " + ".join(say.length(thickness) for _, thickness in lining)
    shapes += [
        *dimension(0.0, 0.0, length, 0.0, -total - 2.2 * text, say.length(chamber_length), text),
        *dimension(0.0, 0.0, 0.0, height, total + 2.2 * text, say.length(height_m), text),
        Text(length / 2, -total - 5.4 * text, say("lining", thick=thick), text, "middle"),
        Text(length + total + 0.6 * text, low + door + 0.8 * text, say("opening"), text),
        Text(length / 2, top + text, say(name, count=burner_count), text, "middle"),
    ]
    case = ("works" if work_rate > 0 else "empty") + ("_above" if above else "")
    return Shapes(tuple(shapes), case, {"length": say.length(chamber_length)})


def _lining(length, height, layers, low, high, holes):
    """Each layer as what is left of its ring by the opening at the right, from `low` to `high`, and by the burners in
    the roof, which lies over the walls where their holes run so far."""
    shapes, inner = [], 0.0
    for thickness in layers:
        outer, at = inner + thickness, -inner - thickness
        for left, right in (*holes, (length + outer, length + outer)):
            if min(left, length + outer) > at:
                shapes.append(rectangle(at, height + inner, min(left, length + outer) - at, thickness, "refractory"))
            at = max(at, right)
        first, last = min((left for left, _ in holes), default=0.0), max((right for _, right in holes), default=length)
        far = length + inner
        shapes += [
            rectangle(-outer, -outer, length + 2 * outer, thickness, "refractory"),
            *_beside(-outer, thickness, -inner, height, inner, -outer, first),
            *([rectangle(far, -inner, thickness, inner + low, "refractory")] if inner + low > 0 else []),
            *_beside(far, thickness, high, height, inner, last, far + thickness),
        ]
        inner = outer
    shapes.append(Line(length, low, length, high, "hidden"))
    right, top = length + inner, height + inner
    shapes.append(Polyline(((right, high), (right, top)), False, "body"))
    shapes.append(Polyline(((-inner, top), (-inner, -inner), (right, -inner), (right, low)), False, "body"))
    at = -inner
    for left, end in (*holes, (right, right)):  # the roof between the burners
        if min(left, right) > at:
            shapes.append(Line(at, top, min(left, right), top, "body"))
        at = max(at, end)
    return shapes


def _beside(x, thickness, foot, height, inner, left, right):
    """A layer of an end wall from its foot to the same layer of the roof; beside the roof's inner layers only from
    `left` to `right`, as far as no burner's hole runs there."""
    kept_left, kept_right = max(x, left), min(x + thickness, right)
    if kept_right - kept_left >= thickness - 1e-9:
        return [rectangle(x, foot, thickness, height + inner - foot, "refractory")]
    shapes = [rectangle(x, foot, thickness, height - foot, "refractory")]
    if inner and kept_right > kept_left:
        shapes.append(rectangle(kept_left, height, kept_right - kept_left, inner, "refractory"))
    return shapes
