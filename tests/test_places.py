"""Drawings for a place on the screen: words that can be read there and stand clear of lines, upright or lying down."""

import json
from itertools import pairwise
from math import cos, radians, sin

import pytest
from designs import ROUND, solved

from burnercalc.design import Design
from burnercalc.drawing.helvetica import CAP_HEIGHT_RATIO
from burnercalc.drawing.shapes import LAYERS, Text, outline_points, shape_box, turned
from burnercalc.errors import InputErrors
from burnercalc.on_page import AIR, fitted
from burnercalc.settings import BY_KEY
from burnercalc.worker import MOST_APART, handle

DESIGNS = {
    "default": {},
    "metric": {"units": "mm"},
    "end": {"inlet_position": "end", "inlet": "1-1/2"},
    "round": ROUND,
    "long": {"body_length": "18 in", "ports_per_row": "18"},
}
PHONE = {"face": (320, 154), "section": (300, 0), "section_across": (300, 0), "mould": (300, 0)}


@pytest.fixture(scope="module", params=DESIGNS)
def result(request):
    return solved(**DESIGNS[request.param])


def px_per_mm(drawing, width, height):
    x1, y1, x2, y2 = drawing.bounds()
    air = 2 * AIR * max(x2 - x1, y2 - y1)
    return min(width / (x2 - x1 + air), height / (y2 - y1 + air) if height else 1e9)


def crosses(points, box):
    """Whether a line from corner to corner goes through a box, looked at in steps of a tenth of the box."""
    (x1, y1, x2, y2), step = box, min(box[2] - box[0], box[3] - box[1]) / 10
    for (ax, ay), (bx, by) in pairwise(points):
        n = max(1, int(max(abs(bx - ax), abs(by - ay)) / step))
        for i in range(n + 1):
            if x1 < ax + (bx - ax) * i / n < x2 and y1 < ay + (by - ay) * i / n < y2:
                return True
    return False


@pytest.mark.parametrize("name", PHONE)
def test_words_can_be_read_on_a_phone_and_no_line_goes_through_them(result, name):
    drawing, _ = fitted(result, name, *PHONE[name])
    texts = [s for s in drawing.shapes if isinstance(s, Text)]
    heights = {text.height / CAP_HEIGHT_RATIO * px_per_mm(drawing, *PHONE[name]) for text in texts}
    assert min(heights) == pytest.approx(11, abs=0.5) and max(heights) == pytest.approx(11, abs=0.5)
    # The line that is measured is drawn light and dashed where it is only an axis; all others must leave words alone.
    lines = [s for s in drawing.shapes if not isinstance(s, Text) and LAYERS[s.layer].stroke_mm and s.layer != "centre"]
    struck = [text.text for text in texts for s in lines if crosses(outline_points(s), _core(shape_box(text)))]
    assert not struck


def _core(box):
    """The middle of a text's box: the line that it stands on, its ticks and descenders do not strike it."""
    (x1, y1, x2, y2) = box
    dx, dy = 0.12 * (x2 - x1), 0.3 * (y2 - y1)
    if y2 - y1 > x2 - x1:
        dx, dy = 0.3 * (x2 - x1), 0.12 * (y2 - y1)
    return x1 + dx, y1 + dy, x2 - dx, y2 - dy


def test_a_low_place_has_the_outside_sizes_only_and_a_high_one_all():
    result = solved()
    low, high = (
        [s.text for s in fitted(result, "face", 320, height)[0].shapes if isinstance(s, Text)] for height in (150, 300)
    )
    assert low == ['9"', '4"'] and set(high) > {'9"', '4"', '7 3/4"', '5/8"'}


def test_what_is_wider_than_a_high_place_lies_down_and_is_larger_for_it():
    result = solved()
    (standing, upright), (lying, lies) = (fitted(result, "face", 390, 700, turn) for turn in (False, True))
    assert lies and not upright
    assert px_per_mm(lying, 390, 700) > 1.6 * px_per_mm(standing, 390, 700)
    x1, y1, x2, y2 = lying.bounds()
    assert y2 - y1 > x2 - x1
    assert [turned(s) for s in result.drawing("face", text_mm=_height(lying)).shapes] == list(lying.shapes)
    # A section that is higher than wide stands as it is.
    across = fitted(result, "section_across", 390, 700, True)[0].bounds()
    assert across[3] - across[1] > across[2] - across[0]
    assert fitted(result, "face", 700, 390, True)[1] is False


def middle(text):
    """Of its capitals."""
    along, up = text.width * (0.5 - ("start", "middle", "end").index(text.anchor) / 2), text.height / 2
    c, s = cos(radians(text.angle)), sin(radians(text.angle))
    return text.x + along * c - up * s, text.y + along * s + up * c


def test_no_word_stands_on_its_head_and_each_keeps_its_place_when_a_drawing_lies_down():
    drawing = solved().drawing("face")
    texts = [shape for shape in drawing.shapes if isinstance(shape, Text)]
    assert {text.angle for text in texts} == {0.0, 90.0}
    for text in texts:
        lying = turned(text)
        assert -90 < lying.angle <= 90
        x, y = middle(text)
        assert middle(lying) == pytest.approx((-y, x))


def _height(drawing):
    return max(s.height for s in drawing.shapes if isinstance(s, Text))


def test_draw_answers_with_the_drawings_for_their_places_and_nothing_else():
    reply = json.loads(handle(json.dumps({"kind": "draw", "settings": {}, "figures": {"face": [320, 150, False]}})))
    assert set(reply) == {"ok", "drawings"} and set(reply["drawings"]) == {"face"}
    assert reply["drawings"]["face"]["texts"]["text"] == ['9"', '4"']


def dragged(key, axis, at_in, **settings):
    request = {"kind": "drag", "settings": settings, "key": key, "axis": axis, "at": at_in * 25.4}
    reply = json.loads(handle(json.dumps(request)))
    return reply["text"] if reply["ok"] else reply["errors"]


def test_a_line_that_is_dragged_sets_what_it_stands_for_on_a_step():
    """Half of 9 in is 4 1/2 in, the lip 5/8 in from it; the outer row 1 in out has 1/4 in to the window."""
    assert dragged("body_length", "x", 5.01) == "10 in" and dragged("body_width", "y", -2.25) == "4 1/2 in"
    assert dragged("setback", "x", 3.99) == "1/2 in" and dragged("setback", "y", 1.25) == "3/4 in"
    assert dragged("edge_margin", "y", 0.9) == "3/8 in"
    assert dragged("body_length", "x", 127 / 25.4, units="mm") == "255 mm"
    assert dragged("body_length", "x", 1e6) == "60 in"  # the end of its range


@pytest.mark.parametrize(
    ("key", "axis", "at_in", "settings"),
    [
        ("setback", "y", 0.2, {}),  # a lip past the middle of the face
        ("setback", "x", 1.0, {"units": "mm"}),
        ("edge_margin", "y", 0.0, {}),
        ("body_length", "x", 0.3, {"rows": "3"}),
        ("body_width", "y", 0.3, {}),
    ],
)
def test_a_line_that_is_dragged_too_far_stays_at_the_last_step_that_goes(key, axis, at_in, settings):
    request = {"kind": "drag", "settings": settings, "key": key, "axis": axis, "at": at_in * 25.4}
    reply = json.loads(handle(json.dumps(request)))
    design, text = Design.from_texts({**settings, key: reply["text"]}), reply["text"]
    assert ": no further" in reply["words"] and reply["words"].startswith(f"{BY_KEY[key].label} {text}")
    by = 1 if design.value(key) > Design.from_texts(settings).value(key) else -1
    step = {"kind": "step", "settings": {**settings, key: text}, "key": key, "by": by}
    further = json.loads(handle(json.dumps(step)))
    with pytest.raises(InputErrors):
        Design.from_texts({**settings, key: further["text"]})


def grips_of(place, **settings):
    reply = json.loads(handle(json.dumps({"kind": "draw", "settings": settings, "figures": {"face": place}})))
    return {grip["key"]: grip for grip in reply["drawings"]["face"]["grips"]}


def test_handles_stand_on_their_lines_and_turn_with_them():
    """9 x 4 in outside, the lip 5/8 in, the outer row 1 in out: its handle is half way over the lip, 4 3/16 in out.
    That of the edge stands a third of the 4 in below the middle: beside rows that lie close it lay under theirs."""
    at = {"body_length": (-4.5, -4 / 3), "body_width": (0, 2), "setback": (3.875, 0), "edge_margin": (-4.1875, 1)}
    standing, lying = grips_of([320, 150, False]), grips_of([390, 700, True])
    assert standing.keys() == lying.keys() == at.keys()
    for key, (x, y) in at.items():
        assert (standing[key]["x"] / 25.4, standing[key]["y"] / 25.4) == (pytest.approx(x), pytest.approx(y))
        assert (lying[key]["x"] / 25.4, lying[key]["y"] / 25.4) == (pytest.approx(-y), pytest.approx(x))
        assert standing[key]["screen"] == standing[key]["axis"] != lying[key]["screen"]
    close = grips_of([320, 150, False], setback="1 5/16 in", edge_margin="1/4 in")
    assert close["edge_margin"]["y"] - close["body_length"]["y"] > 1.5 * 25.4
    assert grips_of([320, 150, False], **{**ROUND, "ports_per_row": "18"}).keys() == {"setback", "edge_margin"}


def test_marks_go_with_the_places_of_the_ports_and_nothing_else():
    def holes(place=(320, 150, False), **settings):
        reply = json.loads(handle(json.dumps({"kind": "draw", "settings": settings, "figures": {"face": place}})))
        return reply["drawings"]["face"]["holes"]

    assert holes() == holes((390, 700, True)) == holes(firing_rate="20 kBtu/h") == holes(**Design().read_in("mm").texts)
    assert holes() != holes(rows="4") and holes() != holes(body_length="10 in")


def compared(**other):
    request = {"kind": "compare", "settings": {}, "other": other}
    return json.loads(handle(json.dumps(request))), *(solved(**texts) for texts in ({}, other))


def test_a_comparison_draws_both_faces_and_says_which_check_is_judged_better():
    reply, mine, other = compared(firing_rate="20 kBtu/h", rows="4")
    assert [face.count("<circle") for face in reply["faces"]] == [mine["port_count"], other["port_count"]]
    ranks = {"does not apply": 0, "good": 0, "note": 1, "caution": 2, "stop": 3}
    assert reply["checks"] and all(
        (ranks[one["other"]] < ranks[one["mine"]]) == (one["better"] < 0) and one["better"] != 0
        for one in reply["checks"]
    )
    both = [one for one in reply["checks"] if "does not apply" not in (one["mine"], one["other"])]
    assert {one["label"] for one in both} == {
        check.label
        for key, check in mine.checks.items()
        if key in other.checks and check.verdict != other.checks[key].verdict
    }


def test_a_check_that_one_of_two_designs_does_not_have_is_no_fault_of_it():
    for texts in ({"baffle_holes": "0"}, {"inlet_position": "end", "inlet": "1-1/2"}, {"fuel": "natural_gas"}):
        reply, mine, other = compared(**texts)
        alone = dict(mine.checks.items()).keys() ^ dict(other.checks.items()).keys()
        assert reply["ok"] and alone
        told = [one for one in reply["checks"] if "does not apply" in (one["mine"], one["other"])]
        for one in told:
            assert (one["other"] == "does not apply") == (one["better"] < 0)


def test_numbers_of_ports_that_stand_close_are_left_out_where_they_would_stand_in_one_another():
    """Letters of 10 px: one number in 10 px across the column."""
    design = {"body_length": "30 in", "ports_per_row": "40", "rows": "6", "port_diameter": "3/16 in"}
    circles = json.loads(
        handle(json.dumps({"kind": "draw", "settings": design, "figures": {"face": [340, 530, True]}}))
    )["drawings"]["face"]["circles"]
    places = sorted(
        (x, y) for x, y, n in zip(*(circles[f"number{each}"] for each in ("_x", "_y", "")), strict=True) if n
    )
    mm_per_px = 30 * 25.4 / 530  # at least: the body lies down in that height
    close = [
        (a, b)
        for a in places
        for b in places
        if a < b and abs(a[0] - b[0]) < 6 * mm_per_px and abs(a[1] - b[1]) < 10 * mm_per_px
    ]
    assert 40 < len(places) < 237 and not close


def test_a_comparison_tells_first_what_differs_most():
    """Of far apart designs ninety numbers differ: the few that matter come first, the rest is there too."""
    other = {
        "fuel": "natural_gas",
        "gas_pressure": "7 inH2O",
        "rows": "3",
        "firing_rate": "60 kBtu/h",
    }
    reply, mine, _ = compared(**other)
    first = [row["label"] for row in reply["answers"] if not row["label"].startswith("Left to buy")]
    rest = [row["label"] for row in reply["others"]]
    near = {answer.label for answer in mine.answers.values() if answer.near == "first"}
    assert len(first) == MOST_APART and set(first) <= near and not set(first) & set(rest)
    assert len(rest) > 60 and near & set(rest)
    # Half the ports is further apart than the flame's few degrees, which stay with the rest.
    assert "Ports" in first and "Flame temperature" in rest
    bad = [one["mine"] == "stop" or one["other"] == "stop" for one in reply["checks"]]
    assert bad == sorted(bad, reverse=True)
