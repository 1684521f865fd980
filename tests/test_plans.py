"""Plans and views: what is drawn is what the answers say, for every kind of body."""

import re
from collections import Counter
from math import hypot

import pytest
from designs import KNOWN, KNOWN_GOOD, ROUND, solved
from hypothesis import given, settings
from making_designs import shapes

from burnercalc.design import Design
from burnercalc.drawing.paper import template_sheets
from burnercalc.drawing.shapes import Circle, Line, Polyline, Text, meets, shape_box
from burnercalc.files import PLANS, VIEWS
from burnercalc.result import solve

IN_MM = 25.4
LONG = {"body_length": "48 in", "rows": "5", "ports_per_row": "60", "inlet": "3"}
SMALL = {"body_length": "3 in", "body_width": "2 in", "body_depth": "2 in", "wall": "1/8 in", "setback": "3/8 in",
         "rows": "2", "ports_per_row": "4", "inlet": "3/4", "mix_pipe": "3/4", "firing_rate": "10 kBtu/h",
         "baffle_holes": "12", "baffle_hole_diameter": "1/4 in"}  # fmt: skip


def circles(drawing, layer):
    return [(s.x, s.y, 2 * s.r) for s in drawing.shapes if isinstance(s, Circle) and s.layer == layer]


def boxes(drawing, layer):
    return [shape_box(s) for s in drawing.shapes if s.layer == layer and isinstance(s, Polyline)]


@pytest.fixture(scope="module")
def known():
    return solved(**{**KNOWN, "corner_drill": "3/8 in"})


def test_window_plan_of_the_common_practice_body(known):
    """Face 6 1/2 x 3 in, window 5 1/2 x 2 in, 3/8 in relief holes whose centres stand 3/16 in inside its edges."""
    window = known.drawings["window"]
    assert boxes(window, "body") == [pytest.approx((-82.55, -38.1, 82.55, 38.1))]
    assert boxes(window, "window") == [pytest.approx((-69.85, -25.4, 69.85, 25.4))]
    assert sorted(circles(window, "port")) == [
        pytest.approx((x, y, 9.525)) for x in (-65.0875, 65.0875) for y in (-20.6375, 20.6375)
    ]


def test_inlet_cap_and_mould_of_the_common_practice_body(known):
    assert circles(known.drawings["inlet"], "window") == [pytest.approx((0, 0, 2.4375 * IN_MM))]
    # Caps 2 1/2 in less 1/64 in each side; the mould 1/8 in larger than the body, in 23/32 in plywood.
    half = (2.5 / 2 - 1 / 64) * IN_MM
    assert boxes(known.drawings["cap"], "body") == [pytest.approx((-half, -half, half, half))]
    frame = boxes(known.drawings["mould"], "mould")
    inner = max(box[0] for box in frame if box[2] < 0), max(box[1] for box in frame if box[3] < 0)
    assert len(frame) == 5
    outer = frame[0]
    assert (outer[2] - outer[0], outer[3] - outer[1]) == pytest.approx(
        ((6.625 + 2 * 0.71875 + 2) * IN_MM, (3.125 + 2 * 0.71875 + 2) * IN_MM)
    )
    assert inner == pytest.approx((-(6.625 / 2 + 0.71875) * IN_MM, -(3.125 / 2 + 0.71875) * IN_MM))


def test_inlet_at_the_end_opens_into_the_plenum():
    result = solved(inlet_position="end", inlet="1-1/2", baffle_holes="0")
    ((x, y, hole),) = circles(result.drawings["inlet"], "window")
    d = result.design
    # From the inside of the face: half the bore's depth and the offset; the plenum ends at the back wall.
    up = (d.body_depth / 2 - d.wall) * 1000 + y
    assert x == 0 and up - hole / 2 >= (d.grip - d.wall) * 1000 and up + hole / 2 <= (d.body_depth - 2 * d.wall) * 1000
    assert up == pytest.approx((d.grip - d.wall + result.part("plenum").height_m / 2) * 1000)


def test_inlet_at_the_end_stands_beside_the_baffle():
    """Inside 3 5/8 in: block 9/16, baffle 1.045, hole 1 15/16 in leave 0.0798 in for three gaps, one to the back."""
    drawing = solved(inlet_position="end", inlet="1-1/2").drawings["inlet"]
    ((_, y, _),) = circles(drawing, "window")
    assert y / IN_MM + 3.625 / 2 == pytest.approx(3.625 - 0.079848 / 3 - 1.9375 / 2, abs=1e-5)


@pytest.mark.parametrize(
    "texts, end",
    [
        # caps set in stand between face and back, laid on they are as high as the body; a round body the other way
        ({"caps": "in", "cap_thickness": "1/4 in"}, (4.25, 0.1875, 4.5, 4 - 0.1875)),
        ({"caps": "on", "cap_thickness": "1/4 in"}, (4.25, 0, 4.5, 4)),
        ({**ROUND, "caps": "in"}, (3 - 0.1875, 0, 3, 4)),
        ({**ROUND, "caps": "on"}, (3 - 0.1875, 0.1875, 3, 4 - 0.1875)),
    ],
)
def test_caps_are_drawn_where_they_are(texts, end):
    section = solved(**texts).drawings["section"]
    assert any(box == pytest.approx(tuple(x * IN_MM for x in end)) for box in boxes(section, "steel"))


def test_the_window_plan_shows_where_the_tube_s_corners_end(known):
    """Wall 1/4 in: 1/4 in inside, 1/2 in outside; the face is 3 in wide, so flat is between 1 in up and 1 in down."""
    window = known.drawings["window"]
    lines = sorted(s.y1 for s in window.shapes if isinstance(s, Line) and s.layer == "bend")
    assert lines == pytest.approx([-IN_MM, IN_MM])
    words = next(s.text for s in window.shapes if isinstance(s, Text) and s.text.startswith("Broken"))
    assert words == 'Broken lines: the tube\'s corners end here, radius 1/2" outside, 1/4" inside'
    plates = solved(body_kind="plates").drawings["window"]
    assert not [s for s in plates.shapes if s.layer == "bend"]


def test_round_body_is_drawn_with_circles():
    result = solve(
        Design.from_texts(
            {
                "body_kind": "pipe",
                "body_length": "6 in",
                "body_width": "6 in",
                "pattern": "rings",
                "ports_per_row": "18",
                "rows": "3",
            }
        )
    )
    assert circles(result.drawings["face"], "window") == [pytest.approx((0, 0, 4.75 * IN_MM))]
    assert circles(result.drawings["window"], "window") == [pytest.approx((0, 0, 4.75 * IN_MM))]
    assert circles(result.drawings["template"], "body") == [pytest.approx((0, 0, 6 * IN_MM))]
    assert circles(result.drawings["mould"], "mould") == [pytest.approx((0, 0, 6.125 * IN_MM))]
    assert len(circles(result.drawings["cap"], "body")) == 1


def test_a_design_without_a_baffle_says_so():
    drawing = solved(baffle_holes="0").drawings["baffle"]
    assert [s.text for s in drawing.shapes if isinstance(s, Text)] == ["This design has no baffle."]


def test_section_shows_the_heights_that_the_settings_name():
    """4 in deep, grip 3/4 in of a 2 1/2 in block: the block stands 1 3/4 in out, the plenum is 3 1/16 in high."""
    texts = {s.text for s in solved().drawings["section"].shapes if isinstance(s, Text)}
    assert {'4"', '2 1/2"', '1 3/4"', '3 1/16"', '9"', "plenum", "fire"} <= texts


@settings(max_examples=25, deadline=None)
@given(shapes)
def test_every_plan_of_any_design_agrees_with_its_answers(design):
    result = solve(design)
    drawn = {name: result.drawings[name] for name in (*VIEWS, *PLANS)}
    ports = [(x * 1000, y * 1000) for x, y in result.part("face").ports]
    assert [(x, y) for x, y, _ in circles(drawn["face"], "port")] == ports
    # The base board is seen from the other side: left and right change places.
    for name in ("template", "mould"):
        assert [(-x, y) for x, y, _ in circles(drawn[name], "port")] == ports
    table = {
        (
            row[1] * 1000 - result.part("mould").wood.base_length_m * 500,
            row[2] * 1000 - result.part("mould").wood.base_width_m * 500,
        )
        for row in result.tables["base_drilling"].rows
    }
    assert all(min(hypot(x - u, y - v) for u, v in table) < 1e-6 for x, y, _ in circles(drawn["mould"], "port"))
    assert {round(size, 6) for *_, size in circles(drawn["template"], "port")} == {
        round(design.port_diameter * 1000, 6)
    }
    if result.part("baffle_sheet").sheet:
        assert len(circles(drawn["baffle"], "port")) == design.baffle_holes
    ((_, _, hole),) = circles(drawn["inlet"], "window")
    assert hole == pytest.approx(result["inlet_hole"] * 1000)
    for drawing in drawn.values():
        assert drawing.title and drawing.description.endswith(".")


def overlaps(a, b):
    return min(a[2], b[2]) - max(a[0], b[0]) > 0.01 and min(a[3], b[3]) - max(a[1], b[1]) > 0.01


NARROW = {
    "body_length": "2 in",
    "body_width": "5 1/2 in",
    "body_depth": "2 in",
    "wall": "1/8 in",
    "setback": "11/16 in",
    "corner_radius": "0 in",
    "port_diameter": "1/16 in",
    "rows": "4",
    "ports_per_row": "2",
    "pattern": "straight",
    "edge_margin": "0 in",
    "block_thickness": "1/2 in",
    "grip": "3/16 in",
    "inlet": "1/8",
    "baffle_holes": "0",
    "corner_drill": "1/16 in",
}


def test_the_setback_beside_a_narrow_window_stands_clear_of_the_pitch():
    texts = [s for s in solved(**NARROW).drawings["face"].shapes if isinstance(s, Text)]
    boxes = [shape_box(s) for s in texts]
    assert not [1 for i, box in enumerate(boxes) for other in boxes[:i] if overlaps(box, other)]


@settings(max_examples=25, deadline=None)
@given(shapes)
def test_texts_of_the_views_stand_clear_of_each_other(design):
    result = solve(design)
    for name in VIEWS:
        texts = [s for s in result.drawings[name].shapes if isinstance(s, Text)]
        boxes_of = [shape_box(s) for s in texts]
        for i, box in enumerate(boxes_of):
            for j in range(i):
                assert not overlaps(box, boxes_of[j]), (name, texts[i].text, texts[j].text)


@pytest.mark.parametrize("texts", [{}, *KNOWN_GOOD.values(), ROUND, LONG, {"units": "mm", "wall": "3 mm"},
                                   SMALL, {**SMALL, "port_diameter": "6 mm", "inlet_position": "end",
                                           "units": "mm"}])  # fmt: skip
def test_no_text_of_a_plan_lies_across_a_line(texts):
    result = solved(**texts)
    for name in PLANS:
        shapes = result.drawings[name].shapes
        for text in (s for s in shapes if isinstance(s, Text)):
            x1, y1, x2, y2 = shape_box(text)
            box = (x1 + 0.2, y1 + 0.2, x2 - 0.2, y2 - 0.2)
            assert not [s for s in shapes if s is not text and meets(s, box)], (name, text.text)


@pytest.mark.parametrize("texts", [{"rows": "3", "ports_per_row": "20"}, {"rows": "6", "ports_per_row": "18"},
                                   {"rows": "4", "ports_per_row": "22", "port_diameter": "3/16 in"},
                                   {"rows": "7", "ports_per_row": "19", "port_diameter": "1/8 in"}])  # fmt: skip
def test_numbers_of_a_dense_field_are_readable_and_clear(texts):
    shapes = solved(**texts).drawings["template"].shapes
    for text in (s for s in shapes if isinstance(s, Text) and s.layer == "number"):
        x1, y1, x2, y2 = shape_box(text)
        near = [s for s in shapes if s is not text and meets(s, (x1 + 0.2, y1 + 0.2, x2 - 0.2, y2 - 0.2))]
        assert not near and text.height >= 2.0, text.text


@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize("texts", [{}, SMALL])
def test_no_words_take_a_second_sheet(paper, texts):
    """A corrected sheet stands upright; on the second one of a slide 2 3/32 in wide stood the ends of its words."""
    drawings = solved(**texts).drawings
    for name in ("slide", *(("window", "inlet", "cap", "baffle") if texts else ())):
        assert len(template_sheets([drawings[name]], paper, 0.98, 1.01)) == 1, name


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_sheets_of_long_bodies(paper):
    """18 x 5 in: two sheets would cut the inlet in half, so it has three. 48 in: of the window's sheets three hold more
    than straight lines, both ends and the middle; of the inlet's plan likewise."""
    wide = {"body_kind": "plates", "body_length": "18 in", "body_width": "5 in", "inlet": "3"}
    back = solved(**wide).drawings["inlet"]
    (hole,) = [shape_box(s) for s in back.shapes if isinstance(s, Circle)]
    whole = [
        sheet
        for sheet in template_sheets([back], paper)
        for s in sheet.seen
        if isinstance(s, Circle) and sheet.window[0] <= s.x - s.r and s.x + s.r <= sheet.window[2]
    ]
    assert len(whole) == 1 and hole[2] - hole[0] == pytest.approx(3.625 * IN_MM)
    long = solved(**LONG)
    for name in ("window", "inlet"):
        assert len(template_sheets([long.drawings[name]], paper)) == 3


def test_a_number_on_the_template_is_the_same_hole_in_the_base_s_table():
    """Base 12 9/16 x 7 9/16 in: hole 1 is at the right, 6 9/32 + 3 1/2 in from the left edge."""
    result = solved()
    shapes = result.drawings["template"].shapes
    circle = next(s for s in shapes if isinstance(s, Circle) and s.layer == "port")
    number = next(s for s in shapes if isinstance(s, Text) and s.text == "1")
    assert (circle.x / IN_MM, circle.y / IN_MM) == pytest.approx((3.5, -1.0)) and 0 < number.x - circle.x < 5
    one, x, y, *_ = result.tables["base_drilling"].rows[0]
    assert (one, x / 0.0254, y / 0.0254) == pytest.approx((1, 6 + 9 / 32 + 3.5, 3 + 25 / 32 - 1))


def test_an_inlet_on_the_edge_of_its_cap_is_drawn():
    """A pipe too large for the body, a stop, whose axis falls just on the lower edge: no length to dimension."""
    texts = {"body_depth": "1 11/16 in", "body_width": "2 in", "inlet": "2-1/2", "inlet_position": "end"}
    r = solved(**{**texts, "caps": "on", "rows": "1", "edge_margin": "0 in"})
    half_m, axis_m = r.part("steel").body.cap_length_m / 2, r.part("end_inlet").axis_m - r.part("body").depth_m / 2
    assert half_m + axis_m == 0 and r.worst == "stop"
    assert any(isinstance(shape, Circle) for shape in r.drawings["inlet"].shapes)


def bodies():
    """Thirty bodies from one sheet to many: lengths and widths between, ports of all sizes, round, two inlets."""
    ports = ("1/8 in", "1/4 in", "5/16 in", "1/2 in")
    for n in range(26):
        length, width = 5 + 1.25 * n, 2.5 + 0.35 * n
        pitch = {"port_diameter": ports[n % 4], "rows": str(2 + n // 4), "ports_per_row": str(4 + n)}
        kind = {"units": ("in", "mm")[n % 2], "body_kind": ("tube", "plates")[n // 2 % 2]}
        yield {"body_length": f"{length} in", "body_width": f"{width:.2f} in", "body_depth": "5 in", **pitch, **kind}
    for across in ("6 in", "9 in"):
        yield {**ROUND, "body_length": across, "body_width": across}
    for length in ("36 in", "40 in"):
        yield {"body_length": length, "inlets": "2", "ports_per_row": "50"}


def test_a_seam_parts_no_port_and_no_figure():
    """What a seam crosses is whole on both sheets, so that either may be cut along it: ports, numbers, words."""
    crossed = sheets = 0
    for texts in bodies():
        result = solved(**texts)
        for plan in PLANS:
            for sheet in template_sheets([result.drawings[plan]], "letter", code="https://example.org/burner/#v=2"):
                x1, y1, x2, y2 = sheet.window
                lines = [s for s in sheet.shapes if isinstance(s, Line) and s.layer == "frame"]
                upright = [s.x1 for s in lines if s.x1 == s.x2 and x1 < s.x1 < x2]
                level = [s.y1 for s in lines if s.y1 == s.y2 and y1 < s.y1 < y2]
                sheets += bool(upright or level)
                for shape in sheet.seen if upright or level else ():
                    if isinstance(shape, Text) or (isinstance(shape, Circle) and shape.layer == "port"):
                        left, foot, right, top = shape_box(shape)
                        if any(left < x < right for x in upright):
                            crossed += 1
                            assert x1 <= left and right <= x2, (texts, plan, shape)
                        if any(foot < y < top for y in level):
                            crossed += 1
                            assert y1 <= foot and top <= y2, (texts, plan, shape)
    assert sheets > 200 and crossed > 20


def test_no_seam_parts_the_words_of_two_inlets_nor_a_saw_that_a_sheet_holds():
    """20 in with two inlets of 3 in had words that stood whole on neither sheet, 38 in with 4 in a hole cut beside a
    seam that could stand between them."""
    for length, inlet in (("20 in", "3"), ("33 in", "3"), ("38 in", "4")):
        box = {"body_length": length, "body_width": "6 in", "body_depth": "6 in", "inlets": "2", "inlet": inlet}
        drawing = solved(**box).drawings["inlet"]
        for paper in ("letter", "a4"):
            for sheet in template_sheets([drawing], paper, code="x" * 48):
                x1, _, x2, _ = sheet.window
                seams = [s.x1 for s in sheet.shapes if isinstance(s, Line) and s.layer == "frame" and s.x1 == s.x2]
                for shape in sheet.seen:
                    left, _, right, _ = shape_box(shape)
                    for seam in seams:
                        if x1 < seam < x2 and left < seam < right:
                            assert not isinstance(shape, Circle), (length, paper)
                            assert not isinstance(shape, Text) or (x1 <= left and right <= x2), (length, shape.text)


def test_no_end_of_a_word_stands_alone_beyond_a_seam():
    """The last letters of words on one sheet stood on the next as marks that are none."""
    for length in ("14 in", "20 in"):
        for plan in ("window", "template", "inlet"):
            sheets = template_sheets([solved(body_length=length).drawings[plan]], "letter", code="x" * 250)
            texts = {}
            for sheet in sheets:
                x1, y1, x2, y2 = sheet.window
                for shape in sheet.seen:
                    if isinstance(shape, Text):
                        left, foot, right, top = shape_box(shape)
                        whole = x1 <= left and right <= x2 and y1 <= foot and top <= y2
                        texts.setdefault(shape.text, set()).add(whole)
            assert len(sheets) > 1 and all(len(found) == 1 for found in texts.values()), (length, plan)


def test_a_round_template_that_fits_on_a_sheet_lies_on_one():
    """7 in: 177.8 mm, 3.2 of clearance and 4 of centre line each way are 189 of the 191 mm beside the margins of A4."""
    for paper in ("letter", "a4"):
        for across in ("6 in", "7 in"):
            drawing = solved(**{**ROUND, "body_length": across, "body_width": across}).drawings["template"]
            assert len(template_sheets([drawing], paper, code="https://example.org/burner/#v=2")) == 1, (paper, across)


def test_a_long_face_whose_words_are_low_lies_on_one_sheet():
    """A mould 233 mm long inside lies across A4: 272 x 147 mm are left beside strip and code. 103 mm and its centre
    lines take 115; seven words one under the other took 41 more and a second sheet, four take 29."""
    made = solved(units="mm", body_length="230 mm", body_width="100 mm", wall="5 mm", setback="16 mm")
    drawing = made.drawings["template"]
    low, high = drawing.bounds()[1::2]
    assert high - low < 147 - 2 and len(template_sheets([drawing], "a4", code="x" * 330)) == 1
    words = [s for s in drawing.shapes if isinstance(s, Text) and s.layer != "number"]
    boxes = [shape_box(s) for s in words]
    assert len(words) == 7 and not any(
        a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3] for i, a in enumerate(boxes) for b in boxes[:i]
    )


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_a_long_body_takes_as_few_sheets_as_its_lines_do(paper):
    """A mould of 14 1/8 in, 359 mm with its words in two columns, lies on two sheets of 250 mm and more; it took three,
    the last with a strip of board."""
    drawings = solved(body_length="14 in", ports_per_row="14").drawings
    for plan in ("template", "window"):
        assert len(template_sheets([drawings[plan]], paper, code="x" * 150)) == 2, plan


@pytest.mark.parametrize(
    "texts",
    [
        {},
        {"batch_size": "12", "moulds": "4", "units": "mm", "sizes": "mm"},
        {"mould_board": "2x4"},
        {"body_kind": "pipe", "body_length": "6 in", "body_width": "6 in", "pattern": "hexagonal", "rows": "6",
         "ports_per_row": "6", "port_diameter": "5/16 in"},
    ],
)  # fmt: skip
def test_boards_are_drawn_as_they_are_cut(texts):
    """Each board once, its pieces on it with their numbers of the mould's list, apart by a cut of a saw for wood."""
    r = solved(**texts)
    kerf = 3.0 if "units" in texts else 25.4 / 8
    shapes, boards = r.drawings["nest"].shapes, list(dict.fromkeys(r.part("boards").bought))
    outlines = [shape_box(shape) for shape in shapes if getattr(shape, "layer", "") == "body"]
    assert [(round(x2 - x1, 3), round(y2 - y1, 3)) for x1, y1, x2, y2 in outlines] == [
        (round(one.length_m * 1e3, 3), round(one.width_m * 1e3, 3)) for one in boards
    ]
    pieces = [shape_box(shape) for shape in shapes if getattr(shape, "layer", "") == "wood"]
    assert len(pieces) == sum(len(one.cuts) for one in boards)
    for box in pieces:
        assert sum(o[0] - 1e-6 <= box[0] and box[2] <= o[2] + 1e-6 and o[1] - 1e-6 <= box[1] and box[3] <= o[3] + 1e-6
                   for o in outlines) == 1  # fmt: skip
    for i, a in enumerate(pieces):
        for b in pieces[:i]:
            assert max(a[0] - b[2], b[0] - a[2], a[1] - b[3], b[1] - a[3]) > kerf - 1e-6
    numbers = Counter(re.match(r"(\d+)(: |$)", shape.text)[1] for shape in shapes
                      if isinstance(shape, Text) and " of " not in shape.text)  # fmt: skip
    listed = {str(row[0]): row[3] for row in r.tables["mould"].rows[:-1]}  # the last one is the cross-bar's
    halves = 2 if any(cut.name == "half layer" for one in boards for cut in one.cuts) else 1
    if len(boards) == len(r.part("boards").bought):
        assert numbers == {number: count * r.part("boards").moulds * (halves if number == "1" else 1)
                           for number, count in listed.items()}  # fmt: skip


def test_wood_too_large_for_what_is_sold_is_said_where_boards_are_drawn():
    large = {"body_width": "12 in", "body_depth": "12 in", "mould_clearance": "6 in", "mould_base": "2x12"}
    (words,) = solved(body_length="60 in", **large).drawings["nest"].shapes
    assert words.text.startswith("wood of your own")
