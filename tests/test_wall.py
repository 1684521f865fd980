"""Where burners stand in a chamber's walls, by hand."""

from math import sqrt

import pytest
from designs import solved

from burnercalc.checks import CHECKS
from burnercalc.drawing.shapes import Text
from burnercalc.making import wall
from burnercalc.making.wall import Wall, stand, walls_of

IN = 0.0254
BOX = {"shape": "box", "length_m": 0.3, "width_m": 0.1, "height_m": 0.2, "diameter_m": 0.0, "lining_m": 0.06}


def test_the_walls_of_a_box_and_of_a_cylinder():
    """300 by 100 by 200 mm in 60 mm of lining; a circle of 200 mm in 60: the square in it has 141.4 mm, whose sides
    stand 70.7 mm off the middle and reach the shell at sqrt(160^2 - 70.7^2) = 143.5."""
    assert [one.name for one in walls_of(**BOX)] == ["roof", "side", "end"]
    roof, side, end = walls_of(**BOX)
    assert (roof.inside, side.inside, end.inside) == ((0.3, 0.1), (0.3, 0.2), (0.1, 0.2))
    assert roof.outside == pytest.approx((0.42, 0.22))
    curved, lid = walls_of(**{**BOX, "shape": "cylinder", "diameter_m": 0.2})
    assert curved.inside == pytest.approx((0.3, 0.2 / sqrt(2))) and lid.inside == (0.2, 0.2)
    assert curved.outside == pytest.approx((0.42, 2 * 0.1435), rel=1e-3) and lid.outside == pytest.approx((0.32, 0.32))


ROOF = Wall("roof", (0.3, 0.1), (0.42, 0.22))


@pytest.mark.parametrize(
    "window, hole, burners, share, row, behind",
    [
        # 25 mm round a hole of 250 by 110: 300 of 420 and 160 of 220; the ports take 200 of 300 and 68 of 100.
        ((0.2, 0.068), (0.25, 0.11), 1, 160 / 220, 1, 0.005),
        # The ports are the scarcer: 95 of 100.
        ((0.2, 0.095), (0.25, 0.11), 1, 0.95, 1, 0.005),
        # A hole of 180 mm needs 230 of 220: the ports that look in do not help.
        ((0.2, 0.068), (0.25, 0.18), 1, 230 / 220, 1, 0.04),
        # Two of 120 mm: 2 x 170 of 420; the outer ports 170 + 60 of 300 apart.
        ((0.06, 0.06), (0.12, 0.11), 2, 340 / 420, 2, 0.01 / 2),
    ],
)
def test_a_wall_takes_ports_by_its_inside_and_holes_by_its_shell(window, hole, burners, share, row, behind):
    found = stand(walls=[ROOF], window=window, hole=hole, is_round=False, burners=burners, keep_m=0.025)
    assert (found.share, found.row) == (pytest.approx(share), row) and found.fits == (share <= 1)
    assert not found.fits or found.behind_m == pytest.approx(max(behind, (hole[1] - 0.1) / 2))


def test_burners_stand_in_lines_or_across_where_one_row_is_too_long():
    wide = Wall("roof", (0.3, 0.3), (0.42, 0.42))
    given = {"walls": [wide], "is_round": False, "keep_m": 0.025}
    two = stand(window=(0.2, 0.06), hole=(0.25, 0.11), burners=2, **given)  # 600 mm in a row, 320 side by side
    assert two.fits and (two.row, two.turned) == (1, False)
    four = stand(window=(0.1, 0.06), hole=(0.15, 0.11), burners=4, **given)  # two lines of two, 400 by 320
    assert four.fits and four.row == 2 and four.pitch_m == pytest.approx(0.2)
    narrow = stand(
        walls=[Wall("roof", (0.1, 0.3), (0.22, 0.42))], window=(0.2, 0.06), hole=(0.25, 0.11), is_round=False,
        burners=1, keep_m=0.025,
    )  # fmt: skip
    assert narrow.fits and narrow.turned


def test_an_end_of_a_cylinder_takes_one_by_its_diagonal():
    lid = walls_of(**{**BOX, "shape": "cylinder", "diameter_m": 0.25})[1]
    given = {"walls": [lid], "window": (0.16, 0.12), "hole": (0.24, 0.18), "keep_m": 0.025}
    found = stand(is_round=False, burners=1, **given)  # diagonals of 200 and 300 mm: 350 of 370
    assert found.share == pytest.approx(350 / 370) and found.behind_m == pytest.approx(0.025)


METRIC = {"units": "mm", "sizes": "mm", "chamber_length": "300 mm", "chamber_height": "140 mm"}


def test_the_hole_that_the_sheet_tells_to_cut_is_judged():
    """113 mm in a roof 100 mm wide stood good and was told of no wall. Two of 313 mm stood in 300."""
    r = solved(**METRIC, chamber_width="100 mm")
    fit, (hole,) = r.checks["chamber_fit"], [row[1] for row in r.tables["mounting"].rows if row[0].startswith("Hole")]
    assert fit.verdict == "good" and "243 by 113 mm" in fit.text and "243 mm by 113 mm" in hole
    for told in (fit.text, hole):
        assert "runs 6.5 mm behind the lining of the walls beside it: this wall lies over them" in told
    long = {"body_length": "300 mm", "burner_count": "2", "batch_size": "2"}
    two = solved(**METRIC, chamber_width="100 mm", **long)
    assert two.checks["chamber_fit"].verdict == "caution" and "2 bodies:" in two.checks["chamber_fit"].text
    # 113 and 25 mm at each side are 163; of 30 mm of lining a roof 100 mm wide has 160, a side wall of 140 has 200.
    thin = {**METRIC, "chamber_width": "100 mm", "lining": "blanket_8lb 30 mm"}
    assert "stands in a side wall" in solved(**thin).checks["chamber_fit"].text
    low = solved(**{**thin, "chamber_height": "100 mm"}).checks["chamber_fit"]
    assert low.verdict == "caution" and "160 mm" in low.text and "25 mm of lining stays" in low.text


def test_the_drawing_shows_the_wall_that_the_check_tells():
    """Turned over where it stands across, from above where it stands in a side wall, and none in an end."""
    side = solved(**METRIC, chamber_width="60 mm")
    assert "a side wall" in side.checks["chamber_fit"].text
    drawing = side.drawings["in_chamber"]
    assert drawing.description.startswith("Seen from above")
    assert "60" in [one.text for one in drawing.shapes if isinstance(one, Text)]  # its width, and no height
    assert solved(**METRIC, chamber_width="100 mm").drawings["in_chamber"].description.startswith("Cut along")
    across = solved(chamber_length="5 in", chamber_width="12 in", opening_area="8 in2")
    assert across.part("standing").at.turned
    flames = {
        shape.points[0][0] for shape in across.drawings["in_chamber"].shapes if getattr(shape, "layer", "") == "flame"
    }
    assert len(flames) < across.part("face").row_counts[0]
    end = solved(chamber_length="2.5 in", chamber_width="4 in", chamber_height="9 in", opening_area="4 in2")
    assert "an end wall" in end.checks["chamber_fit"].text
    written = [one.text for one in end.drawings["in_chamber"].shapes if isinstance(one, Text)]
    assert "burner in an end, not drawn" in written


def test_the_lining_round_a_hole_is_what_the_bracket_is_bolted_to():
    """Angle of 1 1/4 in on the body, 1/4 in of which lies over clearance and fibre: an inch. 30 - 6.5 mm."""
    for texts in ({}, {"units": "mm", "sizes": "mm"}):
        r = solved(**texts)
        m, standing = r.part("mounting"), r.part("standing")
        assert standing.hole == pytest.approx((m.hole_length_m, m.hole_width_m))
        assert standing.keep_m >= m.angle.leg_m - (m.hole_width_m - r.part("body").width_m) / 2 - 1e-9
    assert wall.KEEP_M["in"] == pytest.approx(IN) and CHECKS["chamber_fit"]
