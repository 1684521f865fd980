"""The burner taken apart: every piece of the cut list is named, parts stand clear of each other."""

from math import cos, radians, sin

import pytest
from designs import ROUND
from hypothesis import given, settings
from making_designs import shapes

from burnercalc import build_sheet
from burnercalc.design import Design
from burnercalc.drawing.shapes import Polyline, Text, shape_box
from burnercalc.drawing.text_pages import SIDE_MM, fits_at
from burnercalc.result import solve
from burnercalc.views import exploded
from burnercalc.views.exploded import seen

IN_MM = 25.4
LARGE = {"body_kind": "plates", "body_length": "36 in", "body_width": "12 in", "rows": "12", "ports_per_row": "33",
         "pattern": "straight"}  # fmt: skip
BODIES = {
    "tube": ({}, ["body tube and 2 end caps"]),
    "end": ({"inlet_position": "end", "inlet": "1-1/2"}, ["body tube and 2 end caps"]),
    "plates": ({"body_kind": "plates"}, ["back plate", "2 side plates, 2 end caps", "face plate"]),
    "round": (ROUND, ["back disc", "body pipe", "face disc"]),
    "no baffle": ({"baffle_holes": "0"}, ["body tube and 2 end caps"]),
}


def drawn(texts):
    return solve(Design.from_texts(texts)).drawings["exploded"]


def named(drawing):
    return [s.text for s in drawing.shapes if isinstance(s, Text)]


@pytest.mark.parametrize("body", BODIES)
def test_every_piece_of_the_cut_list_is_named_in_the_order_it_goes_together(body):
    texts, steel = BODIES[body]
    result = solve(Design.from_texts(texts))
    names = named(result.drawings["exploded"])
    assert [name for name in names if name in steel] == steel
    joined = " ".join(names)
    for row in result.tables["cut_list"].rows:
        piece = row[1].partition(",")[0]  # "inlet pipe, 2 in"
        if piece.startswith("bracket"):  # what holds the body in the wall has a drawing of its own
            continue
        first = piece.split()[0]
        assert first in joined or "pipe" in piece, (piece, names)
        if row[2] == 2:  # two of a kind
            assert f"2 {piece}s" in joined
    assert ("baffle" in names) == (body != "no baffle")
    assert names[-3:-2][0].startswith("block") and names[-2:] == [
        "mould frame",
        f"mould base, {result['port_count']} pins",
    ]


def test_a_large_field_is_measured_a_few_times_not_once_for_every_way_to_part_it(monkeypatch):
    """Sixteen ways to stand six parts in columns, each measured shape by shape, took half a minute with 396 ports."""
    result = solve(Design.from_texts(LARGE))
    counted = []
    monkeypatch.setattr(exploded, "shape_box", lambda shape: counted.append(shape) or shape_box(shape))
    shapes = result.drawing("exploded", text_mm=20.0, wide=1.5).shapes
    assert result["port_count"] == 396 and len(shapes) > 2 * 396
    assert len(shapes) < len(counted) < 6 * len(shapes)


@pytest.mark.parametrize("body", BODIES)
def test_it_is_large_on_the_build_sheet(body):
    """Parts in several columns: 1:10 or larger; in one column a round body came out at 1:30."""
    result = solve(Design.from_texts(BODIES[body][0]))
    width = 8.5 * 25.4 - 2 * SIDE_MM
    view = build_sheet._view(result, "exploded", width, build_sheet.APART_MM, "")
    assert fits_at(view.drawing, 10, width, build_sheet.APART_MM)
    assert named(view.drawing) == named(result.drawings["exploded"])


def test_a_point_in_space_stands_where_a_turn_and_a_look_down_put_it():
    """1 along, turned 20 degrees and seen 28 degrees from above: cos 20 to the right, sin 20 sin 28 down."""
    assert seen(1, 0, 0) == pytest.approx((cos(radians(20)), -sin(radians(20)) * sin(radians(28))))
    assert seen(0, 1, 0) == pytest.approx((sin(radians(20)), cos(radians(20)) * sin(radians(28))))
    assert seen(0, 0, 1) == pytest.approx((0, cos(radians(28))))


def test_edges_have_the_length_of_the_pieces():
    """The tube is 9 in long and 4 in deep, the base 12 9/16 in long; on paper an edge is as long as seen() says."""
    drawing = drawn({})
    long, deep = (9 * IN_MM * x for x in seen(1, 0, 0)), 4 * IN_MM * cos(radians(28))
    long = tuple(long)
    fronts = [s for s in drawing.shapes if isinstance(s, Polyline) and s.layer == "steel" and len(s.points) == 4]
    edges = [(s.points[1][0] - s.points[0][0], s.points[1][1] - s.points[0][1]) for s in fronts]
    assert any(edge == pytest.approx(long) for edge in edges)
    heights = [s.points[2][1] - s.points[1][1] for s in fronts]
    assert any(height == pytest.approx(deep) for height in heights)
    base = [s for s in drawing.shapes if isinstance(s, Polyline) and s.layer == "wood"][-1]
    length = solve(Design.from_texts({})).part("mould").wood.base_length_m * 1000
    assert max(x for x, _ in base.points) - min(x for x, _ in base.points) == pytest.approx(
        length * cos(radians(20)) + (length - (12 + 9 / 16 - 7 - 9 / 16) * IN_MM) * sin(radians(20))
    )


@settings(max_examples=40, deadline=None)
@given(shapes)
def test_parts_of_any_design_stand_over_their_names_and_clear_of_all_others(design):
    drawing = solve(design).drawings["exploded"]
    parts, part = [], []
    for shape in drawing.shapes:  # a part is what comes before its name
        if isinstance(shape, Text):
            boxes = [shape_box(one) for one in part]
            box = (*(min(b[i] for b in boxes) for i in (0, 1)), *(max(b[i] for b in boxes) for i in (2, 3)))
            assert shape_box(shape)[3] < box[1] + 1e-6
            parts.append(box)
            part = []
        else:
            part.append(shape)
    assert not part and len(parts) >= 5
    for i, (x1, y1, x2, y2) in enumerate(parts):
        assert all(x2 <= u1 or u2 <= x1 or y2 <= v1 or v2 <= y1 for u1, v1, u2, v2 in parts[:i])
