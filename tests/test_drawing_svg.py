"""SVG read back by an XML parser: places, sizes, arcs, styles."""

import re
import xml.etree.ElementTree as ET
from math import hypot

import pytest
from drawings import drawings
from hypothesis import given, settings

from burnercalc.drawing.shapes import Arc, Circle, Drawing, Polyline, Text, rounded_rectangle
from burnercalc.drawing.svg import write_svg

SVG = "{http://www.w3.org/2000/svg}"
# A hundredth of what the print needs (0.02 mm): six decimals are written.
NEAR = 2e-4


def all_in(root, tag):
    return list(root.iter(SVG + tag))


@settings(max_examples=200, deadline=None)
@given(drawings)
def test_circles_lines_and_texts_come_back(drawing):
    text = write_svg(drawing)
    assert text == write_svg(drawing)
    root = ET.fromstring(text)
    found = [(float(c.get("cx")), -float(c.get("cy")), float(c.get("r"))) for c in all_in(root, "circle")]
    assert [v for c in found for v in c] == pytest.approx(
        [v for c in ((s.x, s.y, s.r) for s in drawing.shapes if isinstance(s, Circle)) for v in c], abs=NEAR
    )
    x1, y1, x2, y2 = drawing.bounds()
    box = [float(v) for v in root.get("viewBox").split()]
    assert box == pytest.approx([x1 - 3, -y2 - 3, x2 - x1 + 6, y2 - y1 + 6], abs=NEAR)
    assert root.get("width") == root.get("viewBox").split()[2] + "mm"
    assert sorted(t.text for t in all_in(root, "text")) == sorted(s.text for s in drawing.shapes if isinstance(s, Text))
    assert all_in(root, "title")[0].text == "Plate <1> & more"


def arcs_of(path):
    """End points and radius of each arc of a path, with its start and its sweep flag."""
    here, arcs = None, []
    for command, numbers in re.findall(r"([MLAZ])([^MLAZ]*)", path):
        values = [float(v) for v in numbers.split()]
        if command == "A":
            arcs.append((here, values[0], values[4], (values[5], values[6])))
        if values:
            here = tuple(values[-2:])
    return arcs


def test_arcs_lie_on_their_circle_and_turn_the_right_way():
    # Counter-clockwise over the top from (10, 0) to (-10, 0), y up; with SVG's y down it is sweep 0 by way of y = -10.
    root = ET.fromstring(write_svg(Drawing("a", "a", (Arc(0, 0, 10, 0, 180, "bend"),))))
    first, second = arcs_of(all_in(root, "path")[0].get("d"))
    assert first == (pytest.approx((10, 0)), 10, 0, pytest.approx((0, -10)))
    assert second == (pytest.approx((0, -10)), 10, 0, pytest.approx((-10, 0), abs=1e-6))


def test_rounded_corners_are_true_arcs():
    shape = rounded_rectangle(0, 0, 60, 40, 5, "window")
    root = ET.fromstring(write_svg(Drawing("a", "a", (shape,))))
    arcs = arcs_of(all_in(root, "path")[0].get("d"))
    assert len(arcs) == 8
    centres = [(55, 5), (55, 35), (5, 35), (5, 5)]
    for i, (start, r, flag, end) in enumerate(arcs):
        cx, cy = centres[i // 2]
        assert (r, flag) == (5, 0)
        assert hypot(start[0] - cx, -start[1] - cy) == pytest.approx(5, abs=NEAR)
        assert hypot(end[0] - cx, -end[1] - cy) == pytest.approx(5, abs=NEAR)


def test_layers_are_classes_and_open_lines_are_not_filled():
    root = ET.fromstring(
        write_svg(
            Drawing(
                "a",
                "a",
                (
                    Polyline(((0, 0), (5, 0), (5, 5)), False, "steel"),
                    Circle(0, 0, 1, "steel"),
                    Text(0, 0, "x", 2, layer="heading"),
                ),
            )
        )
    )
    groups = {g.get("class"): g for g in all_in(root, "g")}
    assert set(groups) == {"steel", "heading label"}
    assert groups["steel"].get("fill") == "#9e9e9e" and groups["steel"].find(SVG + "path").get("fill") == "none"
    assert groups["heading label"].get("font-weight") == "bold"
