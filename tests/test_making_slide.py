"""A slide's hole and gap, against a table of circular segments and against areas counted square by square."""

from math import pi

import pytest

from burnercalc.errors import InputError
from burnercalc.making.slide import gap_m, gap_share, hole_m, open_share, plate_m

# Area of a segment over the square of the diameter, of handbooks: height over diameter, area.
SEGMENTS = ((0.05, 0.01468), (0.10, 0.04088), (0.25, 0.15355), (0.50, 0.39270), (0.75, 0.63186), (1.0, 0.78540))


@pytest.mark.parametrize("height, area", SEGMENTS)
def test_a_gap_is_a_segment(height, area):
    share = area / (pi / 4)
    assert gap_share(0.04, height * 0.04) == pytest.approx(share, abs=2e-5)
    assert gap_m(0.04, min(share, 1.0)) == pytest.approx(height * 0.04, rel=1e-3)


def test_a_hole_of_a_quarter_of_the_area_is_half_as_wide():
    assert hole_m(0.0409, 0.25) == pytest.approx(0.02045) and hole_m(0.0409, 1) == 0.0409


@pytest.mark.parametrize(
    "gap, hole", [(0.0, 0.4), (0.1, 0.4), (0.25, 0.4), (0.4, 0.5), (0.75, 0.4), (0.2, 0.0), (0.6, 0.6)]
)
def test_a_slide_with_a_hole_counted_square_by_square(gap, hole):
    """A pipe 1 across: open where the slide's edge has left it, or where its hole, gone along with it, lies over it."""
    n = 400
    middles = [(i + 0.5) / n - 0.5 for i in range(n)]
    inside = [(x, y) for x in middles for y in middles if x * x + y * y < 0.25]
    clear = sum(x < gap - 0.5 or (x - gap) ** 2 + y * y < hole * hole / 4 for x, y in inside)
    assert open_share(1.0, gap, hole) == pytest.approx(clear / len(inside), abs=2e-3)
    share = open_share(1.0, gap, hole)
    assert open_share(1.0, gap_m(1.0, share, hole), hole) == pytest.approx(share, rel=1e-6)


def test_a_hole_that_is_enough_needs_no_gap():
    assert gap_m(0.04, 0.05, 0.01) == 0.0 and gap_m(0.04, 0.07, 0.01) > 0


@pytest.mark.parametrize("call", [lambda: hole_m(0, 0.5), lambda: hole_m(1, 1.1), lambda: gap_m(0.04, 0),
                                  lambda: open_share(0.04, 0.01, 0.05),
                                  lambda: gap_share(0.04, 0.05), lambda: gap_share(0, 0),
                                  lambda: plate_m(0)])  # fmt: skip
def test_what_is_no_slide_is_refused(call):
    with pytest.raises(InputError):
        call()


def test_the_plate_covers_the_bore_and_can_be_pulled():
    """2 in of pipe, a bore of 52.5 mm: 6 mm at each side, 16 mm behind."""
    assert plate_m(0.0525) == pytest.approx((0.0645, 0.0685))
