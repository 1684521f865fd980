"""Sheets of paper by plain numbers: sizes, tiles that cover the drawing, the fewest sheets; no file format involved."""

from itertools import pairwise

import pytest
from drawings import drawings
from hypothesis import given, settings
from hypothesis import strategies as st

from burnercalc.drawing.paper import (
    BESIDE_MM,
    EDGE_MM,
    MARGIN_MM,
    OVERLAP_MM,
    SCALE_LIMITS,
    cut_up,
    paper_size,
    template_sheets,
    tiles,
    window_of,
)
from burnercalc.drawing.shapes import Circle, Drawing, Line, Text, outline_points, placed, rectangle, shape_box
from burnercalc.errors import InputError


def test_paper_sizes():
    # ISO 216: A4 210 x 297 mm. ANSI/ASME Y14.1 size A: 8 1/2 x 11 in, 1 in = 25.4 mm exactly.
    assert paper_size("a4") == (210.0, 297.0)
    assert paper_size("letter") == pytest.approx((215.9, 279.4), abs=1e-12)
    with pytest.raises(InputError, match="letter, a4"):
        paper_size("a5")


@given(st.floats(1, 2000), st.floats(1, 2000), st.floats(60, 280), st.floats(60, 280))
def test_tiles_cover_the_drawing_and_overlap(length, width, window_width, window_height):
    cut = tiles((-3, 7, -3 + length, 7 + width), window_width, window_height)
    assert min(t.x for t in cut) <= -3 - EDGE_MM + 1e-6 and min(t.y for t in cut) <= 7 - EDGE_MM + 1e-6
    assert max(t.x for t in cut) + window_width >= -3 + length + EDGE_MM - 1e-6
    assert max(t.y for t in cut) + window_height >= 7 + width + EDGE_MM - 1e-6
    columns, rows = cut[0].columns, cut[0].rows
    assert len(cut) == columns * rows and [(t.row, t.column) for t in cut] == sorted((t.row, t.column) for t in cut)
    for a, b in pairwise(cut):
        if a.row == b.row:
            assert a.x + window_width - b.x == pytest.approx(OVERLAP_MM)
        else:
            assert b.y + window_height - a.y == pytest.approx(OVERLAP_MM)
    # One column fewer would not reach.
    if columns > 1:
        assert (columns - 1) * (window_width - OVERLAP_MM) + OVERLAP_MM < length + 2 * EDGE_MM


@settings(max_examples=60, deadline=None)
@given(drawings, st.sampled_from(["letter", "a4"]))
def test_every_shape_is_seen_whole_across_its_sheets(drawing, paper):
    sheets = template_sheets([drawing], paper)
    x1, y1, x2, y2 = sheets[0].window
    cut = cut_up(drawing, x2 - x1, y2 - y1)
    # Where each sheet shows which box, moved back to the drawing's place.
    shown = [
        (tile, [shape_box(placed(shape, tile.x - x1, tile.y - y1)) for shape in sheet.seen])
        for sheet, tile in zip(sheets, cut, strict=True)
    ]
    for shape in drawing.shapes:
        box = shape_box(shape)
        for x, y in ends(shape):
            assert any(
                tile.x <= x <= tile.x + x2 - x1 and tile.y <= y <= tile.y + y2 - y1 and is_among(box, boxes)
                for tile, boxes in shown
            )


def is_among(box, boxes):
    """To a hundred-thousandth of a millimetre; rounding would part two that lie either side of a half."""
    return any(all(abs(a - b) < 1e-5 for a, b in zip(box, other)) for other in boxes)


def ends(shape):
    """Points of a shape that some sheet must show: of straight lines the ends, of all else all round."""
    if isinstance(shape, Text):
        x1, y1, x2, y2 = shape_box(shape)
        return [(x, y) for x in (x1, (x1 + x2) / 2, x2) for y in (y1, (y1 + y2) / 2, y2)]
    return outline_points(shape)


def test_a_sheet_of_straight_lines_only_is_left_out():
    """A board of 900 x 100 mm: its two ends are printed, and how far apart they lie; a hole in it is printed too."""
    board = Drawing("b", "Board", (rectangle(0, 0, 900, 100, "body"),))
    plain = template_sheets([board], "letter")
    window, step = plain[0].window, plain[0].window[2] - plain[0].window[0] - OVERLAP_MM
    columns = tiles(board.bounds(), window[2] - window[0], window[3] - window[1])[0].columns
    assert len(plain) == 2 and columns > 3
    away = f"{(columns - 2) * step:.1f} mm"
    assert any(w.startswith(f"joins sheet 2, {away}") for w in words(plain[0]))
    assert any(w.startswith(f"joins sheet 1, {away}") for w in words(plain[1]))
    holed = Drawing("b", "Board", (rectangle(0, 0, 900, 100, "body"), Circle(450, 50, 4, "port")))
    assert len(template_sheets([holed], "letter")) == 3
    crossed = Drawing("b", "Board", (rectangle(0, 0, 900, 100, "body"), Line(450, -5, 450, 105, "centre")))
    assert len(template_sheets([crossed], "letter")) == 3


@pytest.mark.parametrize("length", [300, 420, 500, 700, 1219])
@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_no_seam_goes_through_a_sawn_hole(length, paper):
    """A 3 5/8 in hole in the middle of a long back; at two of the lengths the fewest sheets would cut it in half."""
    hole = Circle(length / 2, 50, 46, "window")
    back = Drawing("i", "Back", (rectangle(0, 0, length, 100, "body"), hole))
    shown = []
    for sheet in template_sheets([back], paper):
        seams = [s.x1 for s in sheet.shapes if isinstance(s, Line) and s.layer == "frame" and s.x1 == s.x2]
        for x1, _, x2, _ in (shape_box(s) for s in sheet.seen if isinstance(s, Circle)):
            assert not [x for x in seams if x1 < x < x2]
            shown.append(sheet.window[0] <= x1 and x2 <= sheet.window[2])
    assert any(shown)


def test_a_seam_goes_between_ports_where_it_can():
    """A field 10 in long, ports of 1/4 in an inch apart: centred, the seam would halve a column of them."""
    ports = [Circle(12.7 + 25.4 * column, 30 + 20 * row, 3.175, "port") for column in range(9) for row in range(3)]
    field = Drawing("t", "Field", (rectangle(-13, 0, 254, 100, "body"), *ports))
    halves = [
        1
        for sheet in template_sheets([field], "letter", 1.0, 1.01)
        for seam in (s.x1 for s in sheet.shapes if isinstance(s, Line) and s.layer == "frame" and s.x1 == s.x2)
        for x1, _, x2, _ in (shape_box(s) for s in sheet.seen if isinstance(s, Circle))
        if x1 < seam < x2
    ]
    assert halves == []


def test_the_paper_is_turned_when_that_saves_a_sheet():
    # 250 mm fits lying on A4 (277 mm between the margins), not standing (190 mm).
    wide = Drawing("w", "Wide", (rectangle(0, 0, 250, 60, "body"),))
    tall = Drawing("t", "Tall", (rectangle(0, 0, 60, 200, "body"),))
    assert [(s.width, s.height) for s in template_sheets([wide], "a4")] == [(297.0, 210.0)]
    assert [(s.width, s.height) for s in template_sheets([tall], "a4")] == [(210.0, 297.0)]


def test_what_is_corrected_never_lies():
    """The stretch was measured across and up an upright sheet."""
    wide = Drawing("w", "Wide", (rectangle(0, 0, 250, 60, "body"),))
    assert {(s.width, s.height) for s in template_sheets([wide], "a4", 0.99, 1.0)} == {(210.0, 297.0)}


@pytest.mark.parametrize("size", [(60, 150), (184, 230), (600, 500)])
def test_bars_across_and_up_stand_on_every_sheet_clear_of_the_drawing(size):
    for sheet in template_sheets(
        [Drawing("n", "N", (rectangle(0, 0, *size, "body"), Circle(30, 30, 9, "port")))], "a4"
    ):
        lines = [s for s in sheet.shapes if isinstance(s, Line) and s.layer == "mark"]
        (up,) = [s for s in lines if s.x1 == s.x2 and s.y2 - s.y1 > 90]
        (across,) = [s for s in lines if s.y1 == s.y2 and s.x2 - s.x1 == pytest.approx(100)]
        assert up.y2 - up.y1 == pytest.approx(100) and BESIDE_MM <= up.x1 < sheet.window[0]
        assert up.y1 > sheet.window[1] > across.y1


def test_a_stamp_stands_on_every_sheet():
    wide = Drawing("w", "Wide", (rectangle(0, 0, 500, 300, "body"),))
    sheets = template_sheets([wide], "a4", stamp="DO NOT BUILD")
    assert len(sheets) > 1 and all("DO NOT BUILD" in words(sheet) for sheet in sheets)


def words(sheet):
    return [shape.text for shape in sheet.shapes if isinstance(shape, Text)]


def test_sheets_are_numbered_through_and_name_their_neighbours():
    long = Drawing("l", "Mould base", (rectangle(0, 0, 600, 100, "body"), Line(0, 0, 600, 100, "mark")))
    cap = Drawing("c", "End cap", (Circle(0, 0, 40, "body"),))
    sheets = template_sheets([cap, long], "letter", code="v=1&rows=3")
    assert [next(w for w in words(s) if w.startswith("Sheet")) for s in sheets] == [
        f"Sheet {i + 1} of {len(sheets)}, true size" for i in range(len(sheets))
    ]
    assert len(sheets) > 3 and "End cap" in words(sheets[0]) and "joins sheet 3" in words(sheets[1])
    assert {"joins sheet 2", "joins sheet 4"} <= set(words(sheets[2]))
    for sheet in sheets:
        assert {"Print at 100 %, then measure this bar", "this way up", "100 mm", "4 in"} <= set(words(sheet))
        assert "Design: v=1&rows=3" in words(sheet)


def test_registration_marks_lie_on_the_same_spot_of_the_drawing():
    slanted = Line(0, 0, 600, 100, "body")  # so that no sheet is left out
    sheets = template_sheets([Drawing("l", "L", (rectangle(0, 0, 600, 100, "body"), slanted))], "letter")
    cut = tiles((0, 0, 600, 100), *(b - a for a, b in zip(sheets[0].window[:2], sheets[0].window[2:])))
    marks = []
    for sheet, tile in zip(sheets, cut):
        diamonds = [shape_box(s) for s in sheet.shapes if getattr(s, "layer", "") == "mark" and hasattr(s, "points")]
        marks.append(
            {
                (
                    round((b[0] + b[2]) / 2 - sheet.window[0] + tile.x, 6),
                    round((b[1] + b[3]) / 2 - sheet.window[1] + tile.y, 6),
                )
                for b in diamonds
            }
        )
    for a, b in pairwise(marks):
        assert len(a & b) == 2


@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize("scale", SCALE_LIMITS)
def test_a_corrected_sheet_stays_on_its_paper(paper, scale):
    sheets = template_sheets(
        [Drawing("l", "A long name of a part, longer than usual", (rectangle(0, 0, 250, 60, "body"),))],
        paper,
        scale,
        scale,
        "x" * 300,
    )
    for sheet in sheets:
        boxes = [shape_box(shape) for shape in sheet.shapes]
        for low, high, size, margin in (
            (min(b[0] for b in boxes), max(b[2] for b in boxes), sheet.width, BESIDE_MM),
            (min(b[1] for b in boxes), max(b[3] for b in boxes), sheet.height, MARGIN_MM),
        ):
            assert low >= margin - 0.2 and high <= size - margin + 0.2
            assert size / 2 + (low - size / 2) / scale >= 0 and size / 2 + (high - size / 2) / scale <= size


@pytest.mark.parametrize("scale", [0.9, 1.1, float("nan"), 99.4])
def test_refuses_a_printer_that_is_far_off(scale):
    drawing = Drawing("c", "C", (Circle(0, 0, 4, "port"),))
    with pytest.raises(InputError, match=r"0\.94 to 1\.06") as caught:
        template_sheets([drawing], scale_y=scale)
    assert caught.value.field == "print_scale_y"


def test_the_window_leaves_room_for_a_long_link():
    assert window_of(210, 297, "x" * 400)[1] > window_of(210, 297, "")[1]


@settings(max_examples=25)
@given(drawings)
def test_a_sheet_shows_what_the_drawing_moved_there_would(drawing):
    sheets = template_sheets([drawing])
    window = sheets[0].window
    for sheet, tile in zip(sheets, cut_up(drawing, window[2] - window[0], window[3] - window[1])):
        whole = drawing.moved(window[0] - tile.x, window[1] - tile.y).painted()
        assert set(sheet.seen) <= set(whole)
        for shape in set(whole) - set(sheet.seen):
            x1, y1, x2, y2 = shape_box(shape)
            apart = x1 > window[2] or x2 < window[0] or y1 > window[3] or y2 < window[1]
            # Of words that stand whole on another sheet no ends are shown.
            cut = isinstance(shape, Text) and (x1 < window[0] or x2 > window[2] or y1 < window[1] or y2 > window[3])
            elsewhere = [
                box
                for other in sheets
                for box in (shape_box(s) for s in other.seen if isinstance(s, Text) and s.text == shape.text)
                if window[0] <= box[0] and box[2] <= window[2] and window[1] <= box[1] and box[3] <= window[3]
            ] if cut else []  # fmt: skip
            assert apart or elsewhere
