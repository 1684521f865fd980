"""Shapes: bounds by plain geometry, round trip through JSON, helpers; no writer involved."""

from itertools import pairwise
from math import hypot, pi, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from burnercalc.drawing.shapes import (
    LAYERS,
    Arc,
    Circle,
    Drawing,
    Line,
    Polyline,
    Text,
    arc_box,
    bulge_arc,
    centre_mark,
    dimension,
    outline_points,
    placed,
    rounded_rectangle,
    shape_box,
)
from burnercalc.errors import InputError

length = st.floats(1, 500)
place = st.floats(-300, 300)


def test_half_circle_by_bulge_one():
    x, y, r, start, sweep = bulge_arc(0, 0, 10, 0, 1.0)
    assert (x, y, r, start, sweep) == pytest.approx((5, 0, 5, 180, 180))


@given(place, place, length, length, st.floats(0.05, 1))
def test_rounded_rectangle_has_the_area_and_rim_of_one(x, y, a, b, share):
    r = share * min(a, b) / 2
    shape = rounded_rectangle(x, y, a, b, r, "window")
    assert shape_box(shape) == pytest.approx((x, y, x + a, y + b), abs=1e-9)
    points = outline_points(shape, step_deg=0.5)
    rim = sum(hypot(q[0] - p[0], q[1] - p[1]) for p, q in pairwise(points))
    assert rim == pytest.approx(2 * (a + b) - 8 * r + 2 * pi * r, rel=1e-4)
    area = sum(p[0] * q[1] - q[0] * p[1] for p, q in pairwise(points)) / 2
    assert area == pytest.approx(a * b - (4 - pi) * r * r, rel=1e-4, abs=1e-4)


def test_square_corners_and_too_big_a_radius():
    assert len(rounded_rectangle(0, 0, 10, 5, 0, "body").points) == 4
    with pytest.raises(InputError, match=r"2\.5") as caught:
        rounded_rectangle(0, 0, 10, 5, 3, "body")
    assert caught.value.field == "radius"
    with pytest.raises(InputError):
        rounded_rectangle(0, 0, 10, 5, float("nan"), "body")


def test_arc_box_passes_the_quarter_points():
    assert arc_box(0, 0, 2, -45, 90) == pytest.approx((sqrt(2), -sqrt(2), 2, sqrt(2)))
    assert shape_box(Arc(0, 0, 2, 350, 10, "body"))[2] == 2
    assert shape_box(Circle(1, 2, 3, "port")) == (-2, -1, 4, 5)


def test_turned_text_is_bounded_by_its_width():
    # Helvetica digits are 0.556 of the font size wide, capitals 0.718 high (Adobe core-14 metrics).
    box = shape_box(Text(0, 0, "00", 7.18, "start", 90.0))
    assert box == pytest.approx((-7.18, 0, 0.29 * 7.18, 2 * 5.56))


def sample():
    return Drawing(
        "sample",
        "A sample",
        (
            rounded_rectangle(0, 0, 100, 50, 10, "window"),
            Arc(5, 5, 4, 30, 200, "bend"),
            Line(0, 0, 1, 2, "body"),
            Text(3, 4, "5/16", 2.5, "end", 90.0),
            *centre_mark(5, 5, 3),
            *dimension(0, 0, 100, 0, -8, "100"),
        ),
    )


def test_moved_and_scaled_bounds():
    x1, y1, x2, y2 = sample().bounds()
    assert sample().moved(3, -4).bounds() == pytest.approx((x1 + 3, y1 - 4, x2 + 3, y2 - 4))
    half = Drawing("half", "Half", [placed(shape, 0.0, 0.0, 0.5) for shape in sample().shapes])
    assert half.bounds() == pytest.approx((x1 / 2, y1 / 2, x2 / 2, y2 / 2))


@given(place, place, place, place, st.floats(2, 40), st.booleans())
def test_dimension_line_is_as_long_as_what_it_measures(x1, y1, x2, y2, offset, right):
    span = hypot(x2 - x1, y2 - y1)
    if span < 20:
        return
    shapes = dimension(x1, y1, x2, y2, -offset if right else offset, "8")
    lines = [s for s in shapes if isinstance(s, Line)]
    # Two extension lines, two ticks, then the dimension line.
    assert len(lines) == 5 and hypot(lines[4].x2 - lines[4].x1, lines[4].y2 - lines[4].y1) == pytest.approx(span)
    assert hypot(lines[4].x1 - x1, lines[4].y1 - y1) == pytest.approx(offset)
    cross = (x2 - x1) * (lines[4].y1 - y1) - (y2 - y1) * (lines[4].x1 - x1)
    assert (cross < 0) == right
    text = shapes[-1]
    assert -90 < text.angle <= 90


def test_refuses_an_unknown_layer_and_what_is_not_a_number():
    with pytest.raises(InputError, match="port"):
        Drawing("x", "x", (Circle(0, 0, 1, "ports"),))
    for bad in (float("nan"), float("inf")):
        with pytest.raises(InputError, match="finite"):
            Drawing("x", "x", (Circle(0, bad, 1, "port"),))
        with pytest.raises(InputError, match="finite"):
            Drawing("x", "x", (Polyline(((0, 0), (1, bad)), False, "port"),))
    with pytest.raises(InputError):
        Drawing("x", "x", ()).bounds()


def test_areas_are_painted_before_lines_and_lines_before_texts():
    order = list(LAYERS)
    assert order.index("steel") < order.index("body") < order.index("port") < order.index("text")
    painted = Drawing("x", "x", (Text(0, 0, "a", 2), Circle(0, 0, 1, "steel"))).painted()
    assert [shape.layer for shape in painted] == ["steel", "text"]
