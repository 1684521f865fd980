"""The burner in its chamber and the flames: to scale, flush with the roof, no flame where a verdict says it fails."""

import pytest
from designs import solved

from burnercalc.drawing.shapes import Polyline, Text, shape_box
from burnercalc.result import FLAME_CHECKS

IN_MM = 25.4


def boxes(drawing, layer):
    return [
        tuple(x / IN_MM for x in shape_box(s)) for s in drawing.shapes if s.layer == layer and isinstance(s, Polyline)
    ]


@pytest.fixture(scope="module")
def default():
    return solved()


def test_the_chamber_is_drawn_to_scale_and_the_block_flush_with_its_roof(default):
    """Inside 12 by 5 1/2 in, lining 2 1/2 and 1 in, block of 2 1/2 in and 9 in long in the middle of the roof."""
    drawing = default.drawings["in_chamber"]
    found = boxes(drawing, "refractory")
    assert pytest.approx((-2.5, -2.5, 14.5, 0)) in found and pytest.approx((-3.5, -3.5, 15.5, -2.5)) in found
    blocks = [box for box in found if box[1] == pytest.approx(5.5) and box[3] == pytest.approx(8) and box[0] > 1.4]
    assert len(blocks) == 11  # ten pieces of the block between and beside nine ports, and the lining at the right
    assert min(box[0] for box in boxes(drawing, "flame")) == pytest.approx(6 - 3.5 - 1 / 8)
    texts = [s.text for s in drawing.shapes if isinstance(s, Text)]
    assert {'12"', '5 1/2"', 'lining 2 1/2" + 1"', "work", "opening", "burner"} == set(texts)


def test_the_opening_has_its_area_and_stands_on_the_floor(default):
    """12 in2, as high as wide: 3.46 in; the wall above it reaches to the roof."""
    walls = [box for box in boxes(default.drawings["in_chamber"], "refractory") if box[0] == pytest.approx(12)]
    assert min(box[1] for box in walls if box[1] >= 0) == pytest.approx(12**0.5)


def test_burners_stand_side_by_side_as_far_as_there_is_room():
    two = solved(burner_count="2", chamber_length="24 in").drawings["in_chamber"]
    assert "2 burners" in [s.text for s in two.shapes if isinstance(s, Text)]
    lefts = sorted({round(box[0], 3) for box in boxes(two, "flame")})
    assert len(lefts) == 18 and lefts[0] == pytest.approx(6 - 3.5 - 1 / 8, abs=1e-3)
    empty = solved(work_rate="0 kg/h").drawings["in_chamber"]
    assert "work" not in [s.text for s in empty.shapes if isinstance(s, Text)] and "work," not in empty.description


def test_flames_are_drawn_only_where_every_verdict_says_that_they_hold(default):
    held = default.drawings["section"]
    flames, ports = boxes(held, "flame"), [x for x, y in default.part("face").ports if abs(y) < 1e-9]
    assert [(box[0] + box[2]) / 2 * 0.0254 for box in flames] == pytest.approx(sorted(ports))
    assert all(box[3] == pytest.approx(-1.75) and box[1] == pytest.approx(-1.75 - 0.75) for box in flames)
    assert all(default.checks[key].verdict in ("good", "note") for key in FLAME_CHECKS)
    back = solved(firing_rate="20 kBtu/h")
    assert any(back.checks[key].fault for key in FLAME_CHECKS)
    assert not boxes(back.drawings["section"], "flame") and not boxes(back.drawings["in_chamber"], "flame")


def test_one_port_is_drawn_with_its_fire():
    """It has no neighbour to light, so that check is none of its; the flame is drawn all the same."""
    r = solved(rows="1", ports_per_row="1", port_diameter="3/4 in", firing_rate="35 kBtu/h", low_fire="60 %")
    assert "cross_light" not in r.checks
    assert len(boxes(r.drawings["section"], "flame")) == 1
