"""Drawings against geometry worked out by hand, in inches: the body 9 x 4 x 4 in of 3/16 in steel.

Setback 5/8, grip 3/4 of a 2 1/2 in block, 43 ports of 1/4 in (rows of 9 and 8, 7/8 and 1/2 in apart), a 2 in inlet
(2 3/8 in outside, 2.067 in bore) and a baffle of 40 holes of 3/8 in bent 60 degrees.
"""

from math import cos, hypot, radians, tan

import pytest

from burnercalc import Design, solve
from burnercalc.drawing.flat import flat_columns
from burnercalc.drawing.shapes import Arc, Circle, Line, Polyline, Text, shape_box

IN_MM = 25.4
WALL, GRIP, OUT, DEPTH, BORE, OD = 3 / 16, 3 / 4, 1.75, 4.0, 2.067 / 2, 2.375 / 2
PORTS = [((-3.5 if row % 2 == 0 else -3.0625) + 0.875 * i, -1 + 0.5 * row)
         for row in range(5) for i in range(9 if row % 2 == 0 else 8)]  # fmt: skip


def drawn(name, **texts):
    return solve(Design.from_texts(texts)).drawings[name]


def inches(values):
    return tuple(value / IN_MM for value in values)


def boxes(drawing, layer):
    return [inches(shape_box(s)) for s in drawing.shapes if isinstance(s, Polyline) and s.layer == layer]


def lines(drawing, layer):
    return [inches((s.x1, s.y1, s.x2, s.y2)) for s in drawing.shapes if isinstance(s, Line) and s.layer == layer]


def circles(drawing, layer):
    return [inches((s.x, s.y, s.r)) for s in drawing.shapes if isinstance(s, Circle) and s.layer == layer]


def texts_of(drawing):
    return [s.text for s in drawing.shapes if isinstance(s, Text)]


def near(rows):
    return [pytest.approx(row, abs=2e-5) for row in rows]


def marked(cross, at, reach):
    """Whether a cross of two lines of that reach stands at a place."""
    x, y = at
    return all(any(line == pytest.approx(one, abs=2e-5) for line in cross)
               for one in ((x - reach, y, x + reach, y), (x, y - reach, x, y + reach)))  # fmt: skip


# The face


def test_face():
    face = drawn("face")
    assert boxes(face, "body") == near([(-4.5, -2, 4.5, 2)])
    assert boxes(face, "setback") == boxes(face, "window") == near([(-3.875, -1.375, 3.875, 1.375)])
    assert boxes(face, "hidden") == near([(-4.5 + WALL, -2 + WALL, 4.5 - WALL, 2 - WALL)])
    ((arc,),) = ([s for s in face.shapes if isinstance(s, Arc) and s.layer == "hidden"],)
    assert inches((arc.x, arc.y, arc.r)) == pytest.approx((0, 0, BORE)) and arc.sweep_deg == 360
    assert circles(face, "port") == near([(x, y, 0.125) for x, y in PORTS])
    assert texts_of(face) == ['9"', '7 3/4"', '4"', '2 3/4"', '5/8"', '7/8"', '1/2"']


def test_face_keeps_its_texts_when_it_is_drawn_larger():
    small, large = drawn("face"), solve(Design.from_texts({})).drawing("face", text_mm=12.0)
    assert circles(small, "port") == circles(large, "port") and texts_of(small) == texts_of(large)
    assert {s.height for s in large.shapes if isinstance(s, Text)} == {12.0}
    # One thirty-fourth of the larger of length and 1.6 widths.
    assert {s.height for s in small.shapes if isinstance(s, Text)} == {9 * IN_MM / 34}


def test_numbers_stand_in_the_ends_of_each_row():
    face = solve(Design.from_texts({})).drawing("face", numbers=True)
    numbers = {s.text: inches((s.x, s.y + s.height / 2)) for s in face.shapes
               if isinstance(s, Text) and s.layer == "number"}  # fmt: skip
    assert set(numbers) == {"1", "9", "10", "17", "18", "26", "27", "34", "35", "43"}
    assert all(place == pytest.approx(PORTS[int(number) - 1], abs=2e-5) for number, place in numbers.items())


def test_dimension_lines_of_the_face_span_what_they_name():
    """Outside, window and pitch, each as long as its text says."""
    spans = {round(abs(x2 - x1), 4) for x1, y1, x2, y2 in lines(drawn("face"), "dimension") if abs(y1 - y2) < 1e-6}
    spans |= {round(abs(y2 - y1), 4) for x1, y1, x2, y2 in lines(drawn("face"), "dimension") if abs(x1 - x2) < 1e-6}
    assert {9.0, 7.75, 4.0, 2.75, 0.875} <= spans


def test_round_face_of_rings():
    face = drawn("face", body_kind="pipe", body_length="6 in", body_width="6 in", pattern="rings", rows="3",
                 ports_per_row="18")  # fmt: skip
    assert circles(face, "body") == near([(0, 0, 3)]) and circles(face, "window") == near([(0, 0, 2.375)])
    (inside, inlet) = [inches((s.x, s.y, s.r)) for s in face.shapes if isinstance(s, Arc)]
    assert inside == pytest.approx((0, 0, 3 - WALL)) and inlet == pytest.approx((0, 0, BORE))
    # The outer ring reaches to the edge margin: 2 3/8 less 1/4 and half a port.
    assert max(hypot(x, y) for x, y, _ in circles(face, "port")) == pytest.approx(2.375 - 0.25 - 0.125)
    assert 'disc 6" across' in face.description and "rings, the middle one counted" in face.description


# The sections


def test_section_along():
    section = drawn("section")
    edges = [-4.5, *(edge for i in range(9) for edge in (-3.625 + 0.875 * i, -3.375 + 0.875 * i)), 4.5]
    assert boxes(section, "refractory") == near([(a, -OUT, b, GRIP) for a, b in zip(edges[::2], edges[1::2])])
    assert lines(section, "port") == near([(x, -OUT, x, GRIP) for x in edges[1:-1]])
    steel = boxes(section, "steel")
    lip, side, back = 4.5 - 3.875, 4.5 - WALL, DEPTH - WALL
    assert steel[:4] == near([(-4.5, 0, -4.5 + lip, WALL), (3.875, 0, 4.5, WALL), (-4.5, WALL, -side, back),
                              (side, WALL, 4.5, back)])  # fmt: skip
    # The back with its hole, and a stub of the inlet pipe, 0.35 of the depth high at most.
    assert steel[4:8] == near([(-4.5, back, -OD, 4), (OD, back, 4.5, 4), (-OD, back, -BORE, 4 + 0.35 * 4),
                               (BORE, back, OD, 4 + 0.35 * 4)])  # fmt: skip
    # The block behind the lip reaches the inside of the wall, and no further.
    (piece,) = [s for s in section.shapes if isinstance(s, Polyline) and s.layer == "refractory"][:1]
    assert {tuple(round(v / IN_MM, 4) for v in point) for point in piece.points} == {
        (-3.625, -1.75), (-3.625, 0.75), (-4.3125, 0.75), (-4.3125, 0.1875), (-3.875, 0.1875), (-3.875, 0), (-4.5, 0),
        (-4.5, -1.75)}  # fmt: skip
    texts = texts_of(section)
    assert {'1 3/4"', '3 1/16"', '4"', '2 1/2"', '9"', "baffle", "plenum", "fire"} <= set(texts)
    assert 'inlet 2 in pipe, 3" long' in texts


def bent_height():
    """A strip t thick bent by 60 degrees round an inside radius r, 3 1/2 in between its upper ends (inside 3 5/8 less
    1/16 each side). Up the leg's upper side to the ridge: 1 3/4 tan 30; less what the round takes off:
    (r + t)(1 / cos 30 - 1); and below the upper end of the foot its lower edge: t cos 30."""
    t = r = 1 / 16
    tilt = radians(30)
    return 1.75 * tan(tilt) - (r + t) * (1 / cos(tilt) - 1) + t * cos(tilt)


def test_the_baffle_stands_in_the_middle_of_the_plenum():
    section, across = drawn("section"), drawn("section_across")
    *_, (x1, low, x2, high) = boxes(section, "steel")
    assert (x1, x2) == pytest.approx((-4.25, 4.25)) and high - low == pytest.approx(1 / 16)
    (foot,) = lines(section, "hidden")
    below, above = foot[1] - GRIP, (DEPTH - WALL) - high
    assert below == pytest.approx(above, abs=1e-5)
    assert high - foot[1] == pytest.approx(bent_height(), abs=2e-5)
    *_, profile = [s for s in across.shapes if isinstance(s, Polyline) and s.layer == "steel"]
    points = [inches(point) for point in profile.points]
    assert max(y for _, y in points) == pytest.approx(high) and min(y for _, y in points) == pytest.approx(foot[1])
    assert max(x for x, _ in points) == pytest.approx(3.625 / 2 - 1.6 / IN_MM)
    assert sorted(y for x, y in points if x == 0) == pytest.approx([high - 1 / 16, high])
    # Its height above the inside of the face is dimensioned.
    assert '1 9/16"' in texts_of(across) and foot[1] - WALL == pytest.approx(1 + 9 / 16, abs=1 / 64)


def test_section_across():
    across = drawn("section_across")
    edges = [-2.0, -1.125, -0.875, -0.125, 0.125, 0.875, 1.125, 2.0]  # through the rows of nine
    assert boxes(across, "refractory") == near([(a, -OUT, b, GRIP) for a, b in zip(edges[::2], edges[1::2])])
    back = DEPTH - WALL
    assert boxes(across, "steel")[:6] == near([
        (-2, 0, -1.375, WALL), (1.375, 0, 2, WALL), (-2, WALL, -2 + WALL, back), (2 - WALL, WALL, 2, back),
        (-2, back, -OD, 4), (OD, back, 2, 4)])  # fmt: skip
    assert ['4"', '3/4"', '3 5/8"', '3/16"'] == texts_of(across)[1:]


def test_an_inlet_at_the_end_stands_on_the_middle_of_the_plenum():
    texts = {"inlet_position": "end", "inlet": "1-1/2", "baffle_holes": "0"}
    section, across = drawn("section", **texts), drawn("section_across", **texts)
    middle, od, bore = GRIP + (DEPTH - WALL - GRIP) / 2, 1.9 / 2, 1.61 / 2
    pipe = boxes(section, "steel")[5:7]
    reach = 0.35 * DEPTH
    assert pipe == near([(-4.5 - reach, middle - od, -4.5 + WALL, middle - bore),
                         (-4.5 - reach, middle + bore, -4.5 + WALL, middle + od)])  # fmt: skip
    assert boxes(section, "steel")[4] == pytest.approx((-4.5, DEPTH - WALL, 4.5, DEPTH))
    assert circles(across, "hidden") == near([(0, middle, od)])
    assert 'inlet 1-1/2 in pipe, 3" long, into this end' in texts_of(section)
    ((_, y, _, y2),) = lines(section, "centre")
    assert y == y2 == pytest.approx(middle)
    short = boxes(drawn("section", **texts, inlet_length="1 in"), "steel")[5]
    assert short[0] == pytest.approx(-5.5)


# The templates


def test_drilling_template():
    template = drawn("template")
    mirrored = [(-x, y) for x, y in PORTS]  # the base from above
    assert circles(template, "port") == near([(x, y, 0.125) for x, y in mirrored])
    cross = lines(template, "mark")  # solid, for the punch
    assert all(marked(cross, port, 0.125 + 1.5 / IN_MM) for port in mirrored) and len(cross) == 2 * len(PORTS)
    # Mould 1/8 in larger than the body; its centre lines reach 4 mm past it, to lie on those of the base.
    assert boxes(template, "mould") == near([(-4.5625, -2.0625, 4.5625, 2.0625)])
    assert lines(template, "centre") == near([(-4.5625 - 4 / IN_MM, 0, -3.875, 0), (4.5625 + 4 / IN_MM, 0, 3.875, 0),
                                              (0, -2.0625 - 4 / IN_MM, 0, -1.375), (0, 2.0625 + 4 / IN_MM, 0, 1.375)]
                                             )  # fmt: skip
    legend = [s for s in template.shapes if isinstance(s, Text) and s.layer != "number"]
    assert legend[0].text == "Pins stand up from here: glue this side up." and legend[0].layer == "heading"
    assert [s.text for s in legend[2:6]] == ['Outer line: mould inside, 9 1/8" by 4 1/8"', 'Thick line: body, 9" by 4"',
                                             'Inner line: window, 7 3/4" by 2 3/4"',
                                             'Circles: 43 holes of 1/4", 1/2" deep, then 1/8" right through'
                                             ]  # fmt: skip
    lowest = min(shape_box(s)[1] for s in template.shapes if s.layer == "centre")
    assert all(shape_box(s)[3] < lowest for s in legend)  # across no outline
    numbers = [s for s in template.shapes if isinstance(s, Text) and s.layer == "number"]
    assert {s.height for s in numbers} == {2.4}
    assert [s.text for s in numbers] == [str(n) for n in range(1, 44)]
    beside = 0.75 * 0.125
    for s, (x, y) in zip(numbers, mirrored):
        assert inches((s.x, s.y)) == pytest.approx((x + beside + 0.5 / IN_MM, y + beside + 0.3 / IN_MM))


def test_window_plan():
    window = drawn("window")
    assert boxes(window, "body") == near([(-4.5 + 0, -2, 4.5, 2)])  # caps set in: the tube is the whole length
    assert boxes(window, "window") == near([(-3.875, -1.375, 3.875, 1.375)])
    drills = [(x, y) for x in (-3.6875, 3.6875) for y in (-1.1875, 1.1875)]
    assert sorted(circles(window, "port")) == near([(x, y, 0.1875) for x, y in drills])
    assert all(marked(lines(window, "centre"), at, 0.1875 + 2 / IN_MM) for at in drills)
    assert (-4.5 - 4 / IN_MM, 0, 4.5 + 4 / IN_MM, 0) == pytest.approx(lines(window, "centre")[0])
    # From a relief hole's centre to the outside: 5/8 + 3/16.
    assert texts_of(window) == [
        '7 3/4"', '2 3/4"', '13/16"', '13/16"', '1. drill four holes of 3/8"', "2. cut from hole to hole",
        'Thick line: the side that becomes the face, 9" by 4"',
        'Thin line: window, 7 3/4" by 2 3/4"; the lip is 5/8" all round',
        'Broken lines: the tube\'s corners end here, radius 3/8" outside, 3/16" inside',
        "Leave a bridge of 1/2 in in the middle of both cuts along the body, between the marks, until the caps are on: "
        "the body springs."]  # fmt: skip
    spans = {round(abs(x2 - x1) + abs(y2 - y1), 4) for x1, y1, x2, y2 in lines(window, "dimension")}
    assert 0.8125 in spans


def test_window_of_a_body_with_caps_laid_on():
    """The tube is two walls shorter."""
    assert boxes(drawn("window", caps="on"), "body") == near([(-4.5 + WALL, -2, 4.5 - WALL, 2)])


def test_inlet_plan():
    inlet = drawn("inlet")
    saw = 2.4375 / 2
    assert circles(inlet, "window") == near([(0, 0, saw)])
    assert marked(lines(inlet, "centre"), (0, 0), saw + 4 / IN_MM)
    assert texts_of(inlet) == ['4 1/2"', '2"', 'saw 2 7/16"', "for 2 in pipe",
                               'Thick line: the back of the body, 9" by 4"',
                               'Middle of the hole: 4 1/2" from the left end, 2" from the lower edge']  # fmt: skip
    at_end = drawn("inlet", inlet_position="end", inlet="1-1/2", baffle_holes="0")
    ((x, y, _),) = circles(at_end, "window")
    assert (x, y) == pytest.approx((0, (GRIP - WALL) / 2)) and "face side" in texts_of(at_end)
    half = (DEPTH - 2 * WALL) / 2 - 1 / 64
    assert boxes(at_end, "body") == near([(-half, -half, half, half)])


def test_cap_plan():
    half = (4 - 2 * WALL) / 2 - 1 / 64
    cap = drawn("cap")
    assert boxes(cap, "body") == near([(-half, -half, half, half)])
    assert texts_of(cap) == ['3 19/32"', '3 19/32"', 'radius 3/16"', '3/16" thick']
    (outline,) = [s for s in cap.shapes if isinstance(s, Polyline) and s.layer == "body"]
    corner = {tuple(round(v / IN_MM, 5) for v in point) for point in outline.points}
    assert (round(half - WALL, 5), round(half, 5)) in corner and (round(half, 5), round(half - WALL, 5)) in corner
    assert "radius" not in " ".join(texts_of(drawn("cap", body_kind="plates")))


def test_baffle_blank():
    """As long as the inside less 1/16 in each side; 40 holes in 4 rows of 10, evenly, none on the bend."""
    baffle = drawn("baffle")
    (box,) = boxes(baffle, "body")
    assert (box[0], box[2]) == pytest.approx((-4.25, 4.25)) and box[1] == pytest.approx(-box[3])
    # Flat, it is the two legs: between the feet over cos 30 degrees, less what the bend saves.
    assert 2 * box[3] == pytest.approx(3.5 / cos(radians(30)), rel=0.03)
    holes = circles(baffle, "port")
    assert len(holes) == 40 and {round(r, 6) for *_, r in holes} == {0.1875}
    assert sorted({round(x, 4) for x, _, _ in holes}) == pytest.approx([-3.825 + 0.85 * i for i in range(10)])
    assert sorted({round(y, 3) for _, y, _ in holes}) == sorted({-round(y, 3) for _, y, _ in holes})
    reach = min(2.0, 0.8 * 0.1875 * IN_MM) / IN_MM
    assert all(marked(lines(baffle, "centre"), (x, y), reach) for x, y, _ in holes)
    assert lines(baffle, "bend") == near([(-4.25 - 4 / IN_MM, 0, 4.25 + 4 / IN_MM, 0)])
    assert texts_of(baffle)[-1] == '40 holes of 3/8", sheet 1/16", bend 60° from flat along the middle'
    flat = drawn("baffle", baffle_bend_angle="0 deg")
    assert texts_of(flat)[-1] == '40 holes of 3/8", sheet 1/16"' and not lines(flat, "bend")


def test_mould_plan():
    """Inside 1/8 in over the body; frame of 23/32 in ply; the base 1 in wider all round; ports mirrored."""
    mould = drawn("mould")
    ply, in_x, in_y = 23 / 32, 9.125 / 2, 4.125 / 2
    assert boxes(mould, "mould") == near([
        (-in_x - ply - 1, -in_y - ply - 1, in_x + ply + 1, in_y + ply + 1),
        (-in_x - ply, -in_y - ply, in_x + ply, -in_y), (-in_x - ply, in_y, in_x + ply, in_y + ply),
        (-in_x - ply, -in_y, -in_x, in_y), (in_x, -in_y, in_x + ply, in_y)])  # fmt: skip
    assert boxes(mould, "body") == near([(-4.5, -2, 4.5, 2)])
    assert circles(mould, "port") == near([(-x, y, 0.125) for x, y in PORTS])
    assert all(marked(lines(mould, "centre"), (-x, y), 0.125 + 1 / IN_MM) for x, y in PORTS)
    assert texts_of(mould) == ['inside 9 1/8"', 'inside 4 1/8"', 'base 12 9/16"', 'From outside in: base board, '
                               '7 9/16" wide; frame; thick', 'line, body, 9" by 4"; pins']  # fmt: skip


# What the page gets


def test_flat_columns_hold_the_same_circles_lines_and_texts():
    face = drawn("face")
    columns = flat_columns(face)
    ports = [row for row in zip(*(columns["circles"][key] for key in ("x", "y", "r", "layer", "number")))
             if row[3] == "port"]  # fmt: skip
    assert [inches(row[:3]) for row in ports] == near([(x, y, 0.125) for x, y in PORTS])
    assert [row[4] for row in ports] == list(range(1, 44))
    outlines = {(layer, *(round(v / IN_MM, 3) for v in (min(xs), min(ys), max(xs), max(ys))))
                for xs, ys, layer in zip(*(columns["lines"][key] for key in ("xs", "ys", "layer")))}  # fmt: skip
    assert ("body", -4.5, -2.0, 4.5, 2.0) in outlines and ("window", -3.875, -1.375, 3.875, 1.375) in outlines
    dashes = dict(zip(columns["lines"]["layer"], columns["lines"]["dash"]))
    assert dashes["body"] == "solid" and dashes["hidden"] == "dashed"
    assert columns["texts"]["text"] == texts_of(face)
    areas = flat_columns(drawn("section"))["areas"]
    assert set(areas["layer"]) == {"flame", "refractory", "steel"}
    assert len(areas["xs"]) == len(areas["layer"]) == 9 + 10 + 9
