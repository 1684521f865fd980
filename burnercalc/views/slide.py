"""The slide of the damper, shut: its hole, its straight edge, how far that goes back at each mark, and the pin that
stops it at the least of them."""

from ..drawing.shapes import Circle, Line, Text, dimension, rectangle
from ..making.slide import BESIDE_M, HOLE_THICKEST, TAIL_M, plate_m
from ..parts.damper_marks import DamperMarks
from ..parts.fires import Fires
from ..parts.lighting import Lighting
from ..parts.lighting_slide import LightingSlide
from ..parts.lighting_steps import LightingSteps
from ..parts.resistance import Resistance
from .plans import MM
from .templates import BELOW_MM, legend
from .view import Say, Shapes

TEXT_MM, SIDE_MM, TAIL_MM = 2.6, BESIDE_M * MM, TAIL_M * MM
GUIDE_MM = SIDE_MM / 2  # of the plate's margin that lies in the guide, and the guide beside it
PIN_MM = 3.0  # through the plate below the guide, where nothing else keeps it open for LIGHT or LOW; common practice


def slide_drawing(
    damper_marks: DamperMarks,
    fires: Fires,
    lighting_slide: LightingSlide,
    lighting_steps: LightingSteps,
    lighting: Lighting,
    resistance: Resistance,
    stopped: bool,
    say: Say,
    text_mm: float | None,
) -> Shapes:
    """The plate seen along the pipe, shut over its bore (broken line): its edge at the top touches the bore. Of what
    must not be lit it has no hole and no mark, as no table tells one."""
    text = text_mm or TEXT_MM
    radius, bore_m = resistance.mix_pipe.bore_m * MM / 2, resistance.mix_pipe.bore_m
    side = radius + SIDE_MM
    light, unlit = lighting_slide, stopped or lighting.waits_W is None
    hole_m = light.size_m if light.kind == "hole" and not unlit else None
    gaps = [] if unlit else _gaps(damper_marks, fires, light)
    scratched = () if unlit else lighting_steps.marks
    steps = [mark.slots["size"] for mark in scratched]
    shapes = [
        rectangle(-side, -radius - TAIL_MM, 2 * side, 2 * radius + TAIL_MM, "body"),
        Circle(0.0, 0.0, radius, "hidden"),
        *dimension(-radius, radius, radius, radius, 5 * text, say("bore", size=bore_m), text),
        *dimension(-side, -radius - TAIL_MM, side, -radius - TAIL_MM, -3 * text, say.length(2 * side / MM), text),
    ]
    # The guide holds the plate at both sides and stops it at the top: drawn, never cut.
    shapes += [Line(*line, "dimension") for line in _guide(side, radius)]
    marks = [(name, {"size": gap_m}, radius - gap_m * MM) for name, gap_m in gaps]
    shapes += [Line(-side, y, side, y, "dimension") for _, _, y in marks]
    shapes += [Line(0.0, radius - gap_m * MM, side, radius - gap_m * MM, "dimension") for gap_m in steps]
    if text_mm and steps:  # a view has no room for each
        many, least_m = "steps" if steps[1:] else "step", min(steps)
        marks.append((f"{many}.view", {"n": len(steps)}, radius - least_m * MM))
    else:
        marks += [
            (f"step.{one.case}", {"n": n, **one.slots}, radius - one.slots["size"] * MM)
            for n, one in enumerate(scratched, 1)
        ]
    if hole_m:
        hole = hole_m * MM / 2
        shapes += [Circle(0.0, 0.0, hole, "port"), *_cross(hole + 2.0)]
        shapes += dimension(-side, 0.0, -side, radius, 3 * text, say.length(radius / MM), text)
        marks.append(("hole", {"drill": light.drill.name}, 0.0))
    marks.append(("guide", {}, -radius))
    pin_y = (
        None
        if hole_m or not gaps
        else -radius - SIDE_MM + min((*(gap_m for _, gap_m in gaps), *steps)) * MM - PIN_MM / 2
    )
    if pin_y is not None:  # drawn back to that mark it touches the guide's end
        shapes.append(Circle(0.0, pin_y, PIN_MM / 2, "port"))
        marks.append(("pin", {"size": PIN_MM / MM}, pin_y))
    top = radius
    # Words beside the plate, one under the other, each with a line to its mark.
    for name, slots, y in sorted(marks, key=lambda mark: -mark[2]):
        top = min(top, y) - 0.5 * text
        words = Text(side + 4 * text, top, say(name, **slots), text)
        start = {"hole": hole if hole_m else side, "guide": side + GUIDE_MM, "pin": PIN_MM / 2}.get(name, side)
        shapes += [Line(start, y, side + 3.6 * text, top + text / 2, "dimension"), words]
        top -= 1.6 * text
    if not text_mm:  # paper says what its lines are
        width_m, length_m = plate_m(bore_m)
        slots = {"width": say.length(width_m), "length": say.length(length_m), "steps": say("steps") if steps else ""}
        if hole_m:
            slots["thick"] = hole_m * HOLE_THICKEST
        names = (
            "plate",
            *(("sharp",) if hole_m else ()),
            "broken",
            *(("level",) if gaps else ()),
            *(("stop",) if pin_y is not None else ()),
        )
        lines = [say(line, **slots) for line in names]
        shapes += legend(-side, min(-radius - TAIL_MM, top + text) - BELOW_MM, lines)
    return Shapes(tuple(shapes), "unlit" if unlit else "hole" if hole_m else "gap")


def _guide(side, radius):
    """Lines round the plate's sides and its top, over its margins."""
    out, inside, high, low = side + GUIDE_MM, side - GUIDE_MM, radius + GUIDE_MM, -radius - SIDE_MM
    for way in (-1.0, 1.0):
        yield way * out, low, way * out, high
        yield way * inside, low, way * inside, radius
        yield way * inside, low, way * out, low
    yield -out, high, out, high


def _cross(arm):
    return [Line(-arm, 0.0, arm, 0.0, "centre"), Line(0.0, -arm, 0.0, arm, "centre")]


def _gaps(damper_marks, fires, light):
    """(mark, gap) of each at which the edge stands back; not where it is shut, or open as far as it goes."""
    marks = [("light", light.size_m if light.kind in ("gap", "rule") else None)]
    marks += [("low", fires.low and fires.low.size_m), ("high", damper_marks.high_m)]
    return [(name, gap_m) for name, gap_m in marks if gap_m]
