"""Two inlets for a long body, through solve(), each figure by hand; with one all is as before (answers kept)."""

from math import pi

import pytest
from designs import solved
from fluids import friction_factor

from burnercalc.drawing.shapes import Circle

# 900 mm of 80 x 80 x 4 tube, 892 mm inside; pipe of 42.16 mm, wall 3.56, bore 35.05; a mix pipe of bore 40.89.
LONG = {"body_length": "900 mm", "body_width": "80 mm", "body_depth": "80 mm", "wall": "4 mm", "units": "mm",
        "ports_per_row": "60", "inlet": "1-1/4", "baffle_holes": "0"}  # fmt: skip
STEEL_KG_M3 = 7850


@pytest.fixture(scope="module")
def one():
    return solved(**LONG)


@pytest.fixture(scope="module")
def two():
    return solved(**LONG, inlets="2")


def test_the_holes_stand_over_the_middle_of_each_half(two):
    assert two["inlet_spacing"] == pytest.approx(0.892 / 2)
    assert two.part("plenum").inlets_m == pytest.approx((0.223, 0.669))
    holes = [shape for shape in two.drawing("inlet").shapes if isinstance(shape, Circle)]
    assert [(hole.x, hole.y, hole.r) for hole in holes] == [(-223, 0, 21.5), (223, 0, 21.5)]
    assert {"227", "446"} <= {getattr(shape, "text", "") for shape in two.drawing("inlet").shapes}


def test_a_second_pipe_is_cut_welded_weighed_and_bought(one, two):
    assert two["weld_length"] - one["weld_length"] == pytest.approx(pi * 0.04216, rel=1e-3)
    hole_kg = pi / 4 * 0.043**2 * 0.004 * STEEL_KG_M3
    assert one["body_mass"] - two["body_mass"] == pytest.approx(hole_kg, rel=1e-6)
    pipe_kg = pi * (0.04216 - 0.00356) * 0.00356 * (0.0762 + 0.004) * STEEL_KG_M3
    assert two["burner_steel_mass"] - one["burner_steel_mass"] == pytest.approx(pipe_kg - hole_kg, rel=0.005)
    assert [row[2] for row in two.tables["cut_list"].rows if "inlet" in row[1]] == [2]
    assert (one["inlet_nipple"][:2], two["inlet_nipple"][:2]) == ("1 ", "2 ")
    assert "as high as each other" in two.tables["welding"].rows[0][2]


def test_the_train_splits_after_the_mixer_into_legs_alike(one, two):
    added = [row for row in two.tables["gas_train"].rows if row[2] not in {r[2] for r in one.tables["gas_train"].rows}]
    # A reducer more at 9, tee 14, legs 16, unions 18, elbows 10 each.
    names = ["tee", "2 x bell reducer", "2 x leg", "2 x union in a leg", "2 x elbow of a leg"]
    assert [row[2] for row in added] == names and "223 mm" in added[2][3]
    # The legs lie an elbow above the ends of the inlet pipes: a pipe's width over them.
    over = next(part for part in two.part("train").parts if part.key == "leg").slots["over"]
    assert (
        over == pytest.approx(two.design.inlet_length + two.part("steel").inlet_pipe.od_m)
        and "over the back" in added[2][3]
    )
    assert (
        "one inlet" in two.drawings["section_across"].title and "one inlet" not in one.drawings["section_across"].title
    )
    assert two["train_needed_cost"] - one["train_needed_cost"] == 9 + 14 + 2 * (16 + 18 + 10)


def test_tee_and_legs_cost_pressure_and_each_inlet_carries_half(one, two):
    """Crane: a tee through its branch is 60 diameters of its pipe, an elbow 30."""
    mixture, flow = two.part("mixture").cold, two.part("stream").mixture_m3_s

    def head_and_friction(flow_m3_s, bore_m):
        speed = flow_m3_s / (pi / 4 * bore_m**2)
        reynolds = mixture.density_kg_m3 * speed * bore_m / mixture.viscosity_Pas
        return mixture.density_kg_m3 * speed**2 / 2, friction_factor(Re=reynolds, eD=45e-6 / bore_m)

    tee, tee_f = head_and_friction(flow, 0.04089)
    leg, leg_f = head_and_friction(flow / 2, 0.03505)
    expected = 60 * tee_f * tee + (0.223 / 0.03505 + 30) * leg_f * leg
    assert two["split_pressure_drop"] == pytest.approx(expected, rel=0.02) and one["split_pressure_drop"] is None
    assert two["inlet_pressure_drop"] == pytest.approx(one["inlet_pressure_drop"] / 4, rel=1e-6)
    assert two["inlet_to_port_ratio"] == pytest.approx(2 * one["inlet_to_port_ratio"])


def test_two_inlets_cure_a_long_body_that_one_feeds_unevenly(one, two):
    """Half the way and half the stream: a quarter of the unevenness."""
    assert one.checks["flow_spread"].verdict == "stop" and two.checks["flow_spread"].verdict == "good"
    assert one.checks["flow_spread"].changes[0].setting == "inlets"
    assert two["flow_spread"] == pytest.approx(one["flow_spread"] / 4, rel=0.05)


def test_the_steel_between_two_holes_is_judged():
    """6 in with caps of 3/16: half of 5 5/8 less a saw of 2 7/16 leaves 3/16 on each side of a hole."""
    text = solved(body_length="6 in", inlets="2", ports_per_row="3").checks["inlet_fits"].text
    assert text == "3/16 in of flat steel is left on each side of the inlet hole."
