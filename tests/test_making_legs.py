"""Lengths of fittings on the legs to two inlets: by hand from the table, and laws that hold for every size."""

import pytest

from burnercalc.errors import InputError
from burnercalc.making import legs, train
from burnercalc.physics.pipes import pipe, pipe_names
from burnercalc.tables import read_table

IN = 0.0254


def test_sizes_restated():
    """1-1/4: elbow 1 3/4 in to its middle, close nipple 1 5/8 in; 2: elbow 2 1/4 in, thread 3/4 in."""
    assert legs.middle_to_end_m("1-1/4") == pytest.approx(1.75 * IN)
    assert legs.middle_to_end_m("2") == pytest.approx(2.25 * IN)
    assert legs.close_nipple_m("1-1/4") == pytest.approx(1.63 * IN) and legs.thread_m("2") == pytest.approx(0.75 * IN)


def test_the_table_has_the_pipes_in_their_order():
    assert [row["nps"] for row in read_table("fitting_lengths")] == [row["nps"] for row in read_table("pipe_sizes")]


@pytest.mark.parametrize("nps", pipe_names())
def test_laws_of_every_size(nps):
    """Fittings do not overlap on a close nipple, and an elbow reaches past its own pipe and thread."""
    assert legs.gap_m(nps) > 0 and legs.close_nipple_m(nps) > 2 * legs.thread_m(nps)
    assert legs.middle_to_end_m(nps) > pipe(nps).od_m / 2 and legs.union_m(nps) > 2 * legs.thread_m(nps)


def test_the_shortest_leg_by_hand():
    """2 in all through: 2.25 + (2 - 1.5) + 2.25. From 1-1/2: 1.94 + 0.37 + 2.81 + 0.5 + 2.25."""
    assert legs.least_leg_m(mix_pipe="2", inlet="2") == pytest.approx(5.0 * IN)
    assert legs.least_leg_m(mix_pipe="1-1/2", inlet="2") == pytest.approx(7.87 * IN)
    assert legs.least_leg_m(mix_pipe="2", inlet="1-1/2") == pytest.approx((2.25 + 0.5 + 2.81 + 0.37 + 1.94) * IN)
    # two sizes apart take two reducers
    assert len(train.reducers("1-1/4", "2")) == 2
    assert legs.least_leg_m(mix_pipe="1-1/4", inlet="2") == pytest.approx(
        (1.75 + 0.25 + 2.31 + 0.37 + 2.81 + 0.5 + 2.25) * IN
    )


def test_the_nearest_nipple_that_is_sold():
    """Of 1-1/4 the close one is 1 5/8 in, so no 1 1/2; 3.2 in lies nearer to 3, in millimetres 81.3 to 80."""
    for length, unit, sold in ((3.2, "in", 3), (3.3, "in", 3.5), (1.5, "in", 1.63), (6.6, "in", 7), (40, "in", 12)):
        assert legs.sold_nipple_m("1-1/4", length * IN, unit) == pytest.approx(sold * IN)
    assert legs.sold_nipple_m("1-1/4", 3.2 * IN, "mm") == pytest.approx(0.08)


def test_an_unknown_size_is_refused():
    for call in (legs.middle_to_end_m, legs.close_nipple_m, legs.thread_m, legs.union_m):
        with pytest.raises(InputError):
            call("7")
