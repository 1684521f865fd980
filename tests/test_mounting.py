"""The burner in the chamber's wall, by hand."""

import pytest
from designs import solved

from burnercalc.making import mounting

IN = 0.0254


def words(result):
    return " ".join(" ".join(row) for row in result.tables["mounting"].rows)


def test_the_hole_and_the_depth_by_hand():
    """Block 9 1/8 x 4 1/8 in, 3/16 in of fibre at each side: 9 1/2 x 4 1/2 in. Lining of 3 1/2 in, block 1 3/4 in out
    of the body: that stands 1 3/4 in deep. The cross-bar, 1 1/4 in from the face and 3/4 in high, puts the bracket at
    2 in, 1/16 in off a gasket of 3/16 in. 9 1/8 in x 6e-6 x (2250 - 60) / 1.8 K = 0.0666 in."""
    r = solved()
    m = r.part("mounting")
    assert (m.hole_length_m, m.hole_width_m) == pytest.approx((9.5 * IN, 4.5 * IN))
    assert (m.deep_m, m.bracket_m, m.spacer_m) == pytest.approx((1.75 * IN, 2 * IN, IN / 16))
    assert m.growth_m == pytest.approx(9.125 * IN * 6e-6 * 2190 / 1.8, rel=1e-3)
    told = words(r)
    for said in ("9 1/2 in by 4 1/2 in", "stands 1 3/4 in deep", "2 in from its face", "spacers of 1/16 in"):
        assert said in told, said


def test_a_block_longer_than_its_wall_and_a_round_one():
    thin = solved(lining="blanket_8lb 1 in")
    assert thin.part("mounting").deep_m == pytest.approx(-0.75 * IN)
    assert "ends 3/4 in outside it" in words(thin)
    thick = solved(lining="ifb_26 4 1/2 in, blanket_8lb 1 in")  # 3 3/4 in deep: beyond any cross-bar
    assert thick.part("mounting").spacer_m == 0 and "spacers" not in words(thick)
    assert thick.part("mounting").bracket_m == pytest.approx((3.75 + 0.1875) * IN)
    metric = solved(units="mm", body_kind="pipe", body_length="168 mm", body_width="168 mm", pattern="rings",
                    ports_per_row="15", mould_clearance="4 mm")  # fmt: skip
    assert "182 mm across: 5 mm at each side" in words(metric)  # 168 + 4 + 2 x 5


@pytest.mark.parametrize("deep_in, clear_in, at, off", [(3, 2, 3.1875, 0), (1, 2, 2, 0.8125), (-1, 2, 2, 2.8125)])
def test_the_bracket_stands_clear_of_mould_and_shell(deep_in, clear_in, at, off):
    found = mounting.bracket_m(deep_in * IN, clear_in * IN, "in")
    assert found == pytest.approx((at * IN, off * IN))
    assert mounting.hole_m(0.1, "mm") == pytest.approx(0.11) and mounting.hot_growth_m(0.25, 1000) == pytest.approx(
        0.0015
    )
