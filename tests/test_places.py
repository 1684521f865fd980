"""Drawings for a place on the screen: words that can be read there and stand clear of lines, upright or lying down."""

import json
from itertools import pairwise

import pytest
from designs import ROUND

from burnercalc.design import Design
from burnercalc.drawing.helvetica import CAP_HEIGHT_RATIO
from burnercalc.drawing.shapes import LAYERS, Text, outline_points, shape_box, turned
from burnercalc.result import solve
from burnercalc.worker import AIR, fitted, handle

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
    return solve(Design.from_texts(DESIGNS[request.param]))


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
    drawing = fitted(result, name, *PHONE[name])
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
    result = solve(Design.from_texts({}))
    low, high = (
        [s.text for s in fitted(result, "face", 320, height).shapes if isinstance(s, Text)] for height in (150, 300)
    )
    assert low == ['9"', '4"'] and set(high) > {'9"', '4"', '7 3/4"', '5/8"'}


def test_what_is_wider_than_a_high_place_lies_down_and_is_larger_for_it():
    result = solve(Design.from_texts({}))
    standing, lying = (fitted(result, "face", 390, 700, turn) for turn in (False, True))
    assert px_per_mm(lying, 390, 700) > 1.6 * px_per_mm(standing, 390, 700)
    x1, y1, x2, y2 = lying.bounds()
    assert y2 - y1 > x2 - x1
    assert [turned(s) for s in result.drawing("face", text_mm=_height(lying)).shapes] == list(lying.shapes)
    # A section that is higher than wide stands as it is.
    across = fitted(result, "section_across", 390, 700, True).bounds()
    assert across[3] - across[1] > across[2] - across[0]
    wide = fitted(result, "face", 700, 390, True).bounds()
    assert wide[2] - wide[0] > wide[3] - wide[1]


def _height(drawing):
    return max(s.height for s in drawing.shapes if isinstance(s, Text))


def test_draw_answers_with_the_drawings_for_their_places_and_nothing_else():
    reply = json.loads(handle(json.dumps({"kind": "draw", "settings": {}, "figures": {"face": [320, 150, False]}})))
    assert set(reply) == {"ok", "drawings"} and set(reply["drawings"]) == {"face"}
    assert reply["drawings"]["face"]["texts"]["text"] == ['9"', '4"']


def compared(**other):
    request = {"kind": "compare", "settings": {}, "other": other}
    return json.loads(handle(json.dumps(request))), *(solve(Design.from_texts(texts)) for texts in ({}, other))


def test_a_comparison_draws_both_faces_and_says_which_check_is_judged_better():
    reply, mine, other = compared(firing_rate="20 kBtu/h", rows="4")
    assert [face.count("<circle") for face in reply["faces"]] == [mine["port_count"], other["port_count"]]
    ranks = ("good", "note", "caution", "stop")
    assert reply["checks"] and all(
        (ranks.index(one["other"]) < ranks.index(one["mine"])) == (one["better"] < 0) and one["better"] != 0
        for one in reply["checks"]
    )
    assert {one["label"] for one in reply["checks"]} == {
        check.label for key, check in mine.checks.items() if check.verdict != other.checks[key].verdict
    }


def test_a_check_that_one_of_two_designs_does_not_have_is_no_fault_of_it():
    for texts in ({"baffle_holes": "0"}, {"inlet_position": "end", "inlet": "1-1/2"}, {"fuel": "natural_gas"}):
        reply, mine, other = compared(**texts)
        alone = dict(mine.checks.items()).keys() ^ dict(other.checks.items()).keys()
        assert reply["ok"] and alone
        told = [one for one in reply["checks"] if "does not apply" in (one["mine"], one["other"])]
        for one in told:
            assert (one["other"] == "does not apply") == (one["better"] < 0)
