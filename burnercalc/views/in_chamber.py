"""The burner in its chamber, to scale: cut along the chamber, the burner in the roof with its face flush."""

from math import sqrt

from ..drawing.shapes import Line, Polyline, Text, dimension, placed, rectangle
from ..parts.body import Body
from ..parts.face import Face
from ..parts.plenum import Plenum
from .plans import MM, along, flames
from .view import Say, Shapes

TEXT_SHARE = 1 / 40
OUT = 0.25  # of the chamber's length that a bar stands out of the opening


def in_chamber_drawing(
    body: Body,
    face: Face,
    plenum: Plenum,
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
    """The lining's layers all round, the opening at one end, the work, and as many burners as stand side by side."""
    box = chamber_shape == "box"
    length, height_m = chamber_length * MM, chamber_height if box else chamber_diameter
    height, layers = height_m * MM, [thickness * MM for _, thickness in lining]
    total, width_m = sum(layers), chamber_width if box else chamber_diameter
    door_m = min(sqrt(opening_area), height_m)
    door = min(max(door_m, opening_area / width_m), height_m) * MM
    text = text_mm or (length + 2 * total) * TEXT_SHARE
    half = body.length_m * MM / 2
    fit = max(1, min(burner_count, int(length / (2 * half))))
    middles = [length * (i + 0.5) / fit for i in range(fit)]
    shapes = _lining(length, height, layers, door, [(middle - half, middle + half) for middle in middles])
    burner = along(body, face, plenum, caps, inlet_position, inlet_length)
    burner += flames(body, face, burns)
    up = height + (body.block_thickness_m - body.grip_m) * MM
    for middle in middles:
        shapes += [placed(shape, middle, up) for shape in burner]
    top = up + body.depth_m * MM + (0.0 if inlet_position == "end" else min(inlet_length, 0.35 * body.depth_m) * MM)
    if work_rate > 0:
        bar = min(bar_diameter * MM, door)
        shapes.append(rectangle(0.15 * length, 0.0, (0.85 + OUT) * length + total, bar, "steel"))
        shapes.append(Text(0.15 * length, bar + 0.5 * text, say("work"), text))
    thick = " + ".join(say.length(thickness) for _, thickness in lining)
    shapes += [
        *dimension(0.0, 0.0, length, 0.0, -total - 2.2 * text, say.length(chamber_length), text),
        *dimension(0.0, 0.0, 0.0, height, total + 2.2 * text, say.length(height_m), text),
        Text(length / 2, -total - 5.4 * text, say("lining", thick=thick), text, "middle"),
        Text(length + total + 0.6 * text, door + 0.8 * text, say("opening"), text),
        Text(
            length / 2, top + text, say("burners" if burner_count > 1 else "burner", count=burner_count), text, "middle"
        ),
    ]
    return Shapes(tuple(shapes), "works" if work_rate > 0 else "empty", {"length": say.length(chamber_length)})


def _lining(length, height, layers, door, holes):
    """Each layer as what is left of its ring by the opening, low at the right, and by the burners in the roof."""
    shapes, inner = [], 0.0
    for thickness in layers:
        outer, at = inner + thickness, -inner - thickness
        for left, right in (*holes, (length + outer, length + outer)):
            if min(left, length + outer) > at:
                shapes.append(rectangle(at, height + inner, min(left, length + outer) - at, thickness, "refractory"))
            at = max(at, right)
        shapes += [
            rectangle(-outer, -outer, length + 2 * outer, thickness, "refractory"),
            rectangle(-outer, -inner, thickness, height + 2 * inner, "refractory"),
            rectangle(length + inner, door, thickness, height + inner - door, "refractory"),
            *([rectangle(length + inner, -inner, thickness, inner, "refractory")] if inner else []),
        ]
        inner = outer
    shapes.append(Line(length, 0.0, length, door, "hidden"))
    right, top = length + inner, height + inner
    shapes.append(Polyline(((right, door), (right, top)), False, "body"))
    shapes.append(Polyline(((-inner, top), (-inner, -inner), (right, -inner), (right, 0.0)), False, "body"))
    at = -inner
    for left, end in (*holes, (right, right)):  # the roof between the burners
        if min(left, right) > at:
            shapes.append(Line(at, top, min(left, right), top, "body"))
        at = max(at, end)
    return shapes
