"""Two inlets for a long body, through solve(), each figure by hand; with one all is as before (answers kept)."""

from math import pi

import pytest
from designs import solved
from fluids import friction_factor

from burnercalc import Design
from burnercalc.drawing.shapes import Circle
from burnercalc.settings import SETTINGS

# 900 mm of 80 x 80 x 4 tube, 892 mm inside; pipe of 42.16 mm, wall 3.56, bore 35.05; a mix pipe of bore 40.89.
# What is not told here is as the default has it in inches, though the shop is metric.
LONG = {**{setting.key: Design().text(setting.key) for setting in SETTINGS}, "units": "mm", "sizes": "mm",
        "body_length": "900 mm", "body_width": "80 mm", "body_depth": "80 mm", "wall": "4 mm",
        "ports_per_row": "60", "inlet": "1-1/4", "baffle_holes": "0"}  # fmt: skip
STEEL_KG_M3, IN = 7850, 0.0254


@pytest.fixture(scope="module")
def one():
    return solved(**LONG)


@pytest.fixture(scope="module")
def two():
    return solved(**{**LONG, "inlets": "2"})


def test_the_holes_stand_over_the_middle_of_each_half(two):
    assert two["inlet_spacing"] == pytest.approx(0.892 / 2)
    assert two.part("plenum").inlets_m == pytest.approx((0.223, 0.669))
    holes = [shape for shape in two.drawing("inlet").shapes if isinstance(shape, Circle)]
    assert [(hole.x, hole.y, hole.r) for hole in holes] == [(-223, 0, 21.5), (223, 0, 21.5)]
    assert {"227", "446"} <= {getattr(shape, "text", "") for shape in two.drawing("inlet").shapes}


def test_a_second_pipe_is_cut_welded_weighed_and_bought(one, two):
    # A pipe of DN 32: 42.4 x 3.2 mm, EN 10255, from memory.
    assert two["weld_length"] - one["weld_length"] == pytest.approx(pi * 0.0424, rel=1e-6)
    hole_kg = pi / 4 * 0.043**2 * 0.004 * STEEL_KG_M3
    assert one["body_mass"] - two["body_mass"] == pytest.approx(hole_kg, rel=1e-6)
    pipe_kg = pi * (0.0424 - 0.0032) * 0.0032 * (0.0762 + 0.004) * STEEL_KG_M3
    assert two["burner_steel_mass"] - one["burner_steel_mass"] == pytest.approx(pipe_kg - hole_kg, rel=0.005)
    assert [row[2] for row in two.tables["cut_list"].rows if "inlet" in row[1]] == [2]
    assert (one["inlet_nipple"][:2], two["inlet_nipple"][:2]) == ("1 ", "2 ")
    assert "as high as each other" in two.tables["welding"].rows[0][2]


def test_the_train_splits_after_the_mixer_into_legs_alike(one, two):
    added = [row for row in two.tables["gas_train"].rows if row[2] not in {r[2] for r in one.tables["gas_train"].rows}]
    # A reducer more at 9, tee 14, legs 16, unions 18, elbows 10 each.
    names = ["tee", "2 x bell reducer", "2 x leg", "2 x union of a leg", "2 x elbow of a leg"]
    # 4 of one inlet beside the long one of the air tap, two more at the tee, behind the reducers of both legs two of
    # their size
    names += ["6 x close nipple, air and mixture", "2 x close nipple, air and mixture"]
    assert [row[2] for row in added] == names and "223 mm" in added[2][3]
    # The legs lie an elbow of 1.75 in less a thread of 0.69 in above the union on inlet pipes of 3 in.
    over = next(part for part in two.part("train").parts if part.key == "leg").slots["over"]
    assert over == pytest.approx((3 - 0.69 + 2.6 + 0.25 + 1.75) * IN) and "over the back" in added[2][3]
    assert (
        "one inlet" in two.drawings["section_across"].title and "one inlet" not in one.drawings["section_across"].title
    )
    assert two["train_needed_cost"] - one["train_needed_cost"] == 9 + 14 + 2 * (16 + 18 + 10) + 4 * 5


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


def test_a_leg_is_as_long_as_its_fittings_and_its_nipple(two):
    """Tee of 1-1/2: 1.94; reducer 2.31; elbow of 1-1/4: 1.75; close nipples leave 1.75 - 1.38 and 1.63 - 1.38 in: 6.62.

    223 mm are 8.78 in: a union of 2.6 in on a close nipple does not go in with it, so it stands upright.
    """
    legs = two.part("legs")
    assert legs.least_m == pytest.approx(6.62 * IN) and legs.union_upright
    assert legs.nipple_m == pytest.approx((1.63 + 0.223 / IN - 6.62) * IN)
    assert legs.over_m == pytest.approx((3 - 0.69 + 1.75 + 2.6 + 0.25) * IN)
    # 972 / 4 = 243 mm, 9.567 in: a union goes in
    long = solved(**{**LONG, "body_length": "980 mm", "inlets": "2"})
    assert not long.part("legs").union_upright
    assert long.part("legs").nipple_m == pytest.approx((1.63 + 0.243 / IN - 6.62 - 2.85) * IN)
    # 96.3 mm: sold are 80 and 100 mm, and 4 x 3.75 mm of body more take one of 100
    assert "last nipple 96.3 mm, threaded to that length" in train_of(two)["leg"]
    assert two.checks["two_inlets"].verdict == "note" and "A body of 915 mm takes one of 100 mm" in told(two)
    sold = solved(**{**LONG, "body_length": "915 mm", "inlets": "2"})
    assert sold.checks["two_inlets"].verdict == "good" and "last nipple 100 mm, close ones" in train_of(sold)["leg"]
    assert "upright" in train_of(two)["leg_union"] and "upright" not in train_of(long)["leg_union"]


def told(result):
    return result.checks["two_inlets"].text


def train_of(result):
    return {part.key: row[3] for part, row in zip(result.part("train").parts, result.tables["gas_train"].rows)}


def test_legs_too_short_to_be_screwed_together_stop_it(one):
    """4 x 6.62 in and two caps of 4 mm are 680.6 mm: 685 mm is asked for, and does."""
    short = {**LONG, "ports_per_row": "40", "inlets": "2"}
    check = solved(**{**short, "body_length": "680 mm"})
    told = check.checks["two_inlets"]
    assert told.verdict == "stop" and "Take a body of 685 mm or longer" in told.text
    assert solved(**{**short, "body_length": "685 mm"}).checks["two_inlets"].verdict == "good"
    assert "no nipple goes between" in train_of(check)["leg"] and "two_inlets" not in one.checks


def test_an_inlet_at_the_end_goes_through_the_cap():
    """It was cut as long as through the wall: 1/8 in less stood out than is drawn."""
    end = {"inlet_position": "end", "inlet": "1-1/4", "body_depth": "5 in", "wall": "1/4 in", "cap_thickness": "3/8 in"}
    through_cap, through_back = solved(**end), solved(**{**end, "inlet_position": "centre"})
    lengths = [
        each.part("steel").inlet_piece.length_m - each.design.inlet_length for each in (through_cap, through_back)
    ]
    assert lengths == pytest.approx([0.375 * IN, 0.25 * IN])
