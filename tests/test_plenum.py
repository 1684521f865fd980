from itertools import pairwise
from math import cos, isfinite, pi, sqrt

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from rows import rows

from burnercalc.errors import InputError
from burnercalc.physics.plenum import (
    impingement_flow_ratio,
    plenum_distribution,
    wanted_ratio,
)

ROWS = rows("plenum.csv")
THIN = 1e-12  # viscosity so small that a smooth wall takes no pressure


def closed_form_first_over_last(area_ratio, discharge_coefficient):
    """Many equal ports, no friction, full recovery: q = C_d A sqrt(2p/rho), p = p_end - rho V^2/2 give cos(C_d a)."""
    return cos(discharge_coefficient * area_ratio)


def evenly(
    count,
    area_ratio,
    discharge=0.8,
    inlet="end",
    friction=False,
    flow=0.01,
    recovery=1.0,
    plenum_area=0.004,
    length=0.3,
):
    """Equal ports spread over a plenum of 4000 mm2."""
    positions = [length * (i + 0.5) / count for i in range(count)]
    return plenum_distribution(
        port_areas_m2=[area_ratio * plenum_area / count] * count,
        positions_m=positions,
        inlets_m=(0.0 if inlet == "end" else length / 2,),
        length_m=length,
        plenum_area_m2=plenum_area,
        # An enormous hydraulic diameter is a plenum without wall friction.
        hydraulic_diameter_m=0.06 if friction else 1e12,
        flow_m3_s=flow,
        discharge_coefficient=discharge,
        density_kg_m3=1.2,
        viscosity_Pas=1.8e-5 if friction else THIN,
        recovery=recovery,
    )


def test_twenty_and_ten_holes_of_the_worked_march():
    assert evenly(20, 0.5).first_over_last == pytest.approx(0.92839, abs=1e-5)
    assert evenly(10, 0.5).first_over_last == pytest.approx(0.9354, abs=0.00005)


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"C_d a {row['discharge_area_ratio']:g}")
def test_many_ports_tend_to_the_closed_form(row):
    a = row["discharge_area_ratio"] / 0.8
    assert closed_form_first_over_last(a, 0.8) == pytest.approx(row["first_over_last"], abs=0.00005)
    got = evenly(4000, a)
    assert got.first_over_last == pytest.approx(row["first_over_last"], abs=0.0004)
    assert got.kinetic_ratio == pytest.approx(row["kinetic_ratio"], rel=1e-3)


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"C_d a {row['discharge_area_ratio']:g}")
def test_wanted_ratio_undoes_the_table_of_the_closed_form(row):
    # The table's shares have four digits: near 1 they fix the ratio to half a percent.
    spread = 1 - row["first_over_last"]
    assert wanted_ratio(spread, 1) == pytest.approx(0.75 / row["discharge_area_ratio"], rel=0.005)


@pytest.mark.parametrize("inlet", ["end", "centre"])
@pytest.mark.parametrize("spread", [0.05, 0.15])
def test_wanted_ratio_leaves_that_unevenness_in_the_march(inlet, spread):
    got = evenly(4000, 1 / wanted_ratio(spread, 1 if inlet == "end" else 2), 0.75, inlet)
    assert 1 - got.first_over_last == pytest.approx(spread, rel=0.005)


def test_wanted_ratio_refuses_no_unevenness():
    with pytest.raises(InputError):
        wanted_ratio(0.0, 1)


@pytest.mark.parametrize("recovery", [0.5, 1.0, 1.8])
def test_the_error_of_the_march_shrinks_as_ports_grow_in_number(recovery):
    expected = cos(sqrt(recovery) * 0.4)
    errors = [abs(evenly(n, 0.5, recovery=recovery).first_over_last - expected) for n in (10, 20, 40, 80, 160)]
    for coarse, fine in pairwise(errors):
        assert fine == pytest.approx(coarse / 2, rel=0.15)  # first order


def test_worked_example_of_37_ports_on_three_by_two_inches():
    # Propane 100 000 Btu/h: mixture 988.7 ft3/h, 1.2438 kg/m3; 37 ports of 1/4 in, C_d 0.75, 6 in2 plenum.
    flow, rho = 988.7 * 0.3048**3 / 3600, 1.2438
    area = pi / 4 * 0.00635**2
    got = plenum_distribution(
        [area] * 37,
        [0.25 * (i + 0.5) / 37 for i in range(37)],
        (0.0,),
        0.25,
        6 * 0.0254**2,
        1e12,
        flow,
        0.75,
        rho,
        THIN,
    )
    assert got.mean_drop_Pa == pytest.approx(48.7, abs=0.05)
    assert got.inlet_head_Pa == pytest.approx(2.51, abs=0.005)
    assert got.kinetic_ratio == pytest.approx(0.0515, abs=0.00005)
    assert 1 - closed_form_first_over_last(37 * area / (6 * 0.0254**2), 0.75) == pytest.approx(0.0257, abs=0.00005)
    # 37 ports are not endless many: the march ends one port before the inlet, 1 - cos(0.2270 x 36/37).
    assert 1 - got.first_over_last == pytest.approx(1 - cos(0.2270 * 36 / 37), abs=0.0001)


def test_a_centre_inlet_halves_the_stream():
    # Each side is an end-fed plenum with half the ports.
    assert evenly(40, 0.5, inlet="centre").first_over_last == pytest.approx(evenly(20, 0.25).first_over_last, rel=1e-9)
    got = evenly(40, 0.5, inlet="centre")
    assert got.shares == pytest.approx(got.shares[::-1], rel=1e-9)


@pytest.mark.parametrize("friction", [False, True])
@pytest.mark.parametrize("inlets, each", [(2, 20), (3, 13), (4, 9)])
def test_several_inlets_are_as_many_short_plenums_side_by_side(inlets, each, friction):
    def fed(count, length, places, flow):
        return plenum_distribution(
            [5e-5] * count,
            [length * (i + 0.5) / count for i in range(count)],
            places,
            length,
            0.001,
            0.03 if friction else 1e12,
            flow,
            0.8,
            1.2,
            1.8e-5 if friction else THIN,
        )

    short = fed(each, 0.3, (0.15,), 0.004)
    whole = fed(inlets * each, inlets * 0.3, [0.3 * (i + 0.5) for i in range(inlets)], inlets * 0.004)
    assert whole.shares == pytest.approx(short.shares * inlets, rel=1e-9)
    assert whole.plenum_pressure_Pa == pytest.approx(short.plenum_pressure_Pa, rel=1e-9)
    assert whole.kinetic_ratio == pytest.approx(short.kinetic_ratio, rel=1e-9)
    assert fed(inlets * each, inlets * 0.3, (inlets * 0.15,), inlets * 0.004).spread > 2 * whole.spread


def test_a_column_halfway_between_two_inlets_is_fed_half_from_each():
    # By the mirror: cut through the middle column, each half is an end of its own with half a column.
    places = [0.05 + 0.1 * i for i in range(9)]
    whole = plenum_distribution([5e-5] * 9, places, (0.2, 0.7), 0.9, 0.001, 1e12, 0.009, 0.8, 1.2, THIN)
    half = plenum_distribution([5e-5] * 4 + [2.5e-5], places[:5], (0.2,), 0.45, 0.001, 1e12, 0.0045, 0.8, 1.2, THIN)
    assert whole.flows_m3_s[:4] == pytest.approx(half.flows_m3_s[:4], rel=1e-9)
    assert whole.flows_m3_s[4] == pytest.approx(2 * half.flows_m3_s[4], rel=1e-9)
    assert sum(whole.flows_m3_s) == pytest.approx(0.009, rel=1e-12)


def test_an_odd_column_sits_right_under_the_inlet_and_sees_the_pressure_at_rest():
    got = evenly(5, 0.5, inlet="centre")
    assert got.drops_Pa[2] == pytest.approx(got.plenum_pressure_Pa, rel=1e-12)
    assert got.shares == pytest.approx(got.shares[::-1], rel=1e-9)


def test_an_inlet_off_centre_feeds_the_longer_branch_less_evenly():
    got = plenum_distribution(
        [5e-5] * 12, [0.02 * i + 0.01 for i in range(12)], (0.08,), 0.24, 0.001, 1e12, 0.005, 0.8, 1.2, THIN
    )
    # Without friction both dead ends stand at the pressure under the inlet, so their ports pass the same.
    assert got.shares[0] == pytest.approx(got.shares[-1], rel=1e-9)
    # 4 and 8 columns: the sums beyond the first column are 3 and 7 of them.
    assert got.shares[4] < got.shares[3] < got.shares[0]


def test_friction_beyond_reason_leaves_the_dead_end_nothing_and_says_so():
    got = plenum_distribution(
        [1e-3] * 30, [100.0 * (i + 1) for i in range(30)], (0.0,), 3000.0, 1e-6, 1e-3, 1e-6, 0.8, 1.2, 1.8e-5
    )
    assert got.starved_columns > 0 and got.shares[-1] == 0 and got.first_over_last is None
    assert sum(got.flows_m3_s) == pytest.approx(1e-6, rel=1e-9)


def test_staggered_columns_share_by_area():
    areas = [4e-5 if i % 2 == 0 else 3e-5 for i in range(12)]
    got = plenum_distribution(
        areas, [0.02 * i + 0.01 for i in range(12)], (0.12,), 0.24, 0.02, 1e12, 0.005, 0.8, 1.2, THIN
    )
    assert sum(got.flows_m3_s) == pytest.approx(0.005, rel=1e-9)
    for flow, share, area in zip(got.flows_m3_s, got.shares, areas):
        assert flow == pytest.approx(share * 0.005 * area / sum(areas), rel=1e-9)
    assert got.spread < 0.01


def test_vanishing_ports_are_fed_alike():
    assert evenly(20, 0.001).shares == pytest.approx([1] * 20, abs=1e-6)


def test_long_thin_plenum_is_ruled_by_friction():
    # 6 m of 20 mm bore: the pressure falls along the flow and the dead end gets least.
    bore_area = pi / 4 * 0.02**2
    got = plenum_distribution(
        [0.3 * bore_area / 60] * 60,
        [0.1 * (i + 0.5) for i in range(60)],
        (0.0,),
        6.0,
        bore_area,
        0.02,
        0.002,
        0.8,
        1.2,
        1.8e-5,
    )
    assert got.first_over_last > 1
    assert got.friction_ratio > 0.1
    assert got.shares[0] == max(got.shares)


def test_friction_of_one_column_at_the_dead_end_is_that_of_a_pipe():
    from fluids import friction_factor

    got = plenum_distribution([1e-4], [2.0], (0.0,), 2.0, pi / 4 * 0.05**2, 0.05, 0.01, 0.8, 1.2, 1.8e-5)
    velocity = 0.01 / (pi / 4 * 0.05**2)
    f = friction_factor(Re=1.2 * velocity * 0.05 / 1.8e-5, eD=45e-6 / 0.05)
    expected = f * 2 / 0.05 * 1.2 * velocity**2 / 2
    assert got.friction_ratio * got.mean_drop_Pa == pytest.approx(expected, rel=0.02)
    assert got.plenum_pressure_Pa == pytest.approx(got.mean_drop_Pa + expected, rel=0.001)


def test_a_plenum_no_wider_than_its_ports_starves_the_first_ports_and_says_so():
    got = evenly(20, 3.0)
    assert got.starved_columns > 0
    assert got.shares[0] == 0
    assert got.first_over_last == 0


@example(count=39, a=8.5625, discharge=0.5, recovery=1.1970197964103078, flow=0.75, inlet="end", friction=True)
@settings(max_examples=150, deadline=None)
@given(
    count=st.integers(1, 40),
    a=st.floats(0.01, 20),
    discharge=st.floats(0.3, 1),
    recovery=st.floats(0, 2),
    flow=st.floats(1e-5, 1),
    inlet=st.sampled_from(["end", "centre"]),
    friction=st.booleans(),
)
def test_any_design_gets_finite_figures_and_all_the_flow(count, a, discharge, recovery, flow, inlet, friction):
    got = evenly(count, a, discharge, inlet, friction, flow, recovery)
    assert sum(got.flows_m3_s) == pytest.approx(flow, rel=1e-6)
    for value in (
        *got.shares,
        *got.drops_Pa,
        got.spread,
        got.kinetic_ratio,
        got.friction_ratio,
        got.plenum_pressure_Pa,
    ):
        assert isfinite(value) and value >= 0
    if not friction:
        assert 0 <= got.first_over_last <= 1 + 1e-9  # pressure only rises away from the inlet


@settings(max_examples=60, deadline=None)
@given(count=st.integers(2, 40), a=st.floats(0.01, 1.2), inlet=st.sampled_from(["end", "centre"]))
def test_a_wider_plenum_never_shares_worse(count, a, inlet):
    assert evenly(count, a, inlet=inlet).spread >= evenly(count, a * 0.9, inlet=inlet).spread - 1e-9


def test_impinging_jet():
    # 20 m/s at 1.2 kg/m3 is 240 Pa; on a port drop of 80 Pa the port passes twice its share.
    assert impingement_flow_ratio(20, 1.2, 80) == pytest.approx(2.0, rel=1e-12)


@pytest.mark.parametrize(
    "change,field",
    [
        ({"flow_m3_s": float("nan")}, "flow_m3_s"),
        ({"plenum_area_m2": 0}, "plenum_area_m2"),
        ({"discharge_coefficient": 1.2}, "discharge_coefficient"),
        ({"recovery": 3}, "recovery"),
        ({"inlets_m": (2,)}, "inlets_m"),
        ({"inlets_m": (0.2, 0.1)}, "inlets_m"),
        ({"inlets_m": ()}, "inlets_m"),
        ({"positions_m": [0.2, 0.1]}, "positions_m"),
        ({"positions_m": [0.1]}, "positions_m"),
        ({"port_areas_m2": [1e-4, -1e-4]}, "port_areas_m2"),
        ({"port_areas_m2": [], "positions_m": []}, "port_areas_m2"),
    ],
)
def test_refusals_name_the_argument(change, field):
    arguments = dict(
        port_areas_m2=[1e-4, 1e-4],
        positions_m=[0.1, 0.2],
        inlets_m=(0.0,),
        length_m=0.3,
        plenum_area_m2=0.004,
        hydraulic_diameter_m=0.06,
        flow_m3_s=0.01,
        discharge_coefficient=0.8,
        density_kg_m3=1.2,
        viscosity_Pas=1.8e-5,
    )
    with pytest.raises(InputError) as caught:
        plenum_distribution(**{**arguments, **change})
    assert caught.value.field == field
