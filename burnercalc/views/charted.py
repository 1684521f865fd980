"""A chart as a drawing in black and white, for notebooks and paper: axes, the design marked, series named below."""

from math import ceil, floor, log10

from ..catalogue.forms import Axis, Chart
from ..drawing.shapes import Circle, Drawing, Line, Polyline, Text, rectangle
from ..units import from_si, readable, shown_unit, si_unit_of
from .view import Plot

WIDTH_MM, HEIGHT_MM, TEXT_MM = 120.0, 70.0, 2.8
TICK_MM, MARK_MM, POINT_MM = 1.2, 1.4, 0.8
LINES = ("body", "hidden", "centre", "bend", "setback", "frame")  # layers that tell lines apart without colour


def round_steps(low: float, high: float, most: int = 6) -> list[float]:
    """Multiples of 1, 2 or 5 x 10^n from low to high, at most so many."""
    if not high > low:
        return [low]
    power = 10.0 ** floor(log10((high - low) / most))
    step = next(n * power for n in (1, 2, 5, 10, 20) if (high - low) / (n * power) <= most)
    return [step * i for i in range(ceil(low / step - 1e-9), floor(high / step + 1e-9) + 1)]


def chart_drawing(declared: Chart, plot: Plot, sentence: str, unit_system: str) -> Drawing:
    """The chart in the reader's units; `sentence` becomes its description."""

    def unit(axis: Axis) -> str:
        return shown_unit(axis.dimension, unit_system)

    def shown(axis, values):
        return [from_si(value, unit(axis), si_unit_of(axis.dimension)) for value in values]

    def label(axis):
        return f"{axis.label} [{readable(unit(axis))}]" if readable(unit(axis)) else axis.label

    (x_low, x_high), (y_low, y_high) = shown(declared.x, plot.x), shown(declared.y, plot.y)

    def place(x, y):
        return WIDTH_MM * (x - x_low) / (x_high - x_low), HEIGHT_MM * (y - y_low) / (y_high - y_low)

    shapes = [rectangle(0.0, 0.0, WIDTH_MM, HEIGHT_MM, "frame")]
    names = [(value, text) for value, text in declared.x.ticks] or [
        (value, f"{value:g}") for value in round_steps(x_low, x_high)
    ]
    for value, text in names:
        x, _ = place(value, y_low)
        shapes += [Line(x, 0.0, x, -TICK_MM, "frame"), Text(x, -TICK_MM - TEXT_MM - 0.6, text, TEXT_MM, "middle")]
    for value in round_steps(y_low, y_high):
        _, y = place(x_low, value)
        shapes += [
            Line(-TICK_MM, y, 0.0, y, "frame"),
            Text(-TICK_MM - 0.8, y - TEXT_MM / 2.8, f"{value:g}", TEXT_MM, "end"),
        ]
    shapes.append(Text(WIDTH_MM / 2, -TICK_MM - 3 * TEXT_MM, label(declared.x), TEXT_MM, "middle"))
    shapes.append(Text(0.0, HEIGHT_MM + 1.5, label(declared.y), TEXT_MM, "start"))
    below = -TICK_MM - 5 * TEXT_MM
    for number, series in enumerate(declared.series):
        xs, ys, *more = plot.series[series.key]
        points = [place(x, y) for x, y in zip(shown(declared.x, xs), shown(declared.y, ys))]
        upper = [place(x, y) for x, y in zip(shown(declared.x, xs), shown(declared.y, more[0] if more else ys))]
        layer = LINES[number % len(LINES)]
        if series.kind == "band" and points:
            shapes.append(Polyline((*points, *reversed(upper)), True, "tint"))
        elif series.kind == "bars":
            wide = 0.7 * WIDTH_MM / max(len(points), 1)
            _, zero = place(x_low, max(y_low, 0.0))
            shapes += [rectangle(x - wide / 2, min(y, zero), wide, abs(y - zero), "refractory") for x, y in points]
        elif series.kind == "points":
            shapes += [Circle(x, y, POINT_MM, "solid") for x, y in points]
        elif len(points) > 1:
            shapes.append(Polyline(tuple(points), False, layer))
        shapes += _named(series, layer, below - number * 1.6 * TEXT_MM)
    if plot.mark:
        x, y = place(*shown(declared.x, plot.mark[:1]), *shown(declared.y, plot.mark[1:]))
        shapes += [Circle(x, y, MARK_MM, "body"), Circle(x, y, MARK_MM / 2, "solid")]
    return Drawing(declared.key, declared.title, tuple(shapes), sentence)


def _named(series, layer, y):
    """A sample of a series and its name, in a line of their own."""
    middle = y + TEXT_MM / 3
    sample = {
        "band": [rectangle(0.0, y, 8.0, TEXT_MM, "tint")],
        "bars": [rectangle(2.0, y, 4.0, TEXT_MM, "refractory")],
        "points": [Circle(4.0, middle, POINT_MM, "solid")],
    }.get(series.kind, [Line(0.0, middle, 8.0, middle, layer)])
    return [*sample, Text(10.0, y, series.label, TEXT_MM)]
