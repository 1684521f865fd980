from math import isfinite, pi

import pytest
from fluids.atmosphere import ATMOSPHERE_1976
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.interpolate import PchipInterpolator

from burnercalc.errors import InputError
from burnercalc.physics.blower import (
    CURVE_DENSITY_KG_M3,
    Parabola,
    Points,
    blower_margin,
    damper,
    operating_point,
    parse_blower_curve,
    plate_open_fraction,
    share_of_one,
)
from burnercalc.physics.plates import thin_plate_K
from burnercalc.units import parse_quantity

CFM = 0.3048**3 / 60
INH2O = 249.08891  # 4 degC


def quadratic_system(a, b=0.0, c=0.0):
    """A burner that needs p = a Q^2 + b Q + c."""
    return lambda flow_m3_s: a * flow_m3_s**2 + b * flow_m3_s + c


BLOWER = Parabola(8 * INH2O, 150 * CFM)
SYSTEM = quadratic_system(4 * INH2O / (100 * CFM) ** 2)
HUMP = Points((0.0, 0.02, 0.04, 0.06, 0.09), (1000.0, 900.0, 1100.0, 800.0, 0.0))
FALLING = Points(tuple(q * CFM for q in (0, 40, 70, 100, 140)), tuple(p * INH2O for p in (8, 7.7, 6.8, 5, 0)))


def simple(text, dimension, field):
    number, unit = text.split()
    return float(number) * {"air_flow": {"cfm": CFM}, "pressure": {"inH2O": INH2O}}[dimension][unit]


def test_worked_example_of_fan_and_system():
    got = operating_point(BLOWER, SYSTEM)
    assert got.flow_m3_s / CFM == pytest.approx(102.90, abs=0.005)
    assert got.pressure_Pa / INH2O == pytest.approx(4.235, abs=0.0005)
    assert (got.beyond_curve, got.stalled, got.crossings) == (False, False, 1)


def test_points_of_the_worked_example_meet_at_the_same_place():
    flows = tuple(150 * CFM * i / 15 for i in range(16))
    curve = Points(flows, tuple(BLOWER.pressure_Pa(q) for q in flows))
    got = operating_point(curve, SYSTEM)
    assert got.flow_m3_s / CFM == pytest.approx(102.90, abs=0.05)
    assert got.pressure_Pa / INH2O == pytest.approx(4.235, abs=0.005)


def test_system_with_laminar_part_solves_the_quadratic():
    # 1000 - 1000 (Q/0.1)^2 = 5e4 Q^2 + 2000 Q: 150000 Q^2 + 2000 Q - 1000 = 0.
    got = operating_point(Parabola(1000, 0.1), quadratic_system(5e4, 2000))
    assert got.flow_m3_s == pytest.approx((-2000 + (2000**2 + 4 * 150000 * 1000) ** 0.5) / 300000, rel=1e-9)


@pytest.mark.parametrize("curve", [HUMP, FALLING, Points((0.0, 1.0), (10.0, 4.0))], ids=["hump", "falling", "two"])
def test_points_agree_with_the_monotone_cubic_of_scipy(curve):
    expected = PchipInterpolator(curve.flows_m3_s, curve.pressures_Pa)
    for i in range(101):
        flow = curve.last_m3_s * i / 100
        assert curve.pressure_Pa(flow) == pytest.approx(float(expected(flow)), rel=1e-9, abs=1e-9)


@settings(max_examples=100, deadline=None)
@given(
    steps=st.lists(st.tuples(st.floats(0.001, 1), st.floats(0, 500)), min_size=1, max_size=8), start=st.floats(1, 2000)
)
def test_between_points_the_curve_stays_between_their_pressures(steps, start):
    flows, pressures = [0.0], [start]
    for step, pressure in steps:
        flows.append(flows[-1] + step)
        pressures.append(pressure)
    curve = Points(tuple(flows), tuple(pressures))
    for q0, q1, p0, p1 in zip(flows, flows[1:], pressures, pressures[1:]):
        values = [curve.pressure_Pa(q0 + (q1 - q0) * i / 20) for i in range(20)] + [curve.pressure_Pa(q1)]
        assert all(min(p0, p1) - 1e-6 <= value <= max(p0, p1) + 1e-6 for value in values)
        ordered = sorted(values, reverse=p1 < p0)
        assert values == pytest.approx(ordered, abs=1e-6)


def test_thin_air_gives_less_pressure_at_the_same_flow():
    ratio = ATMOSPHERE_1976(1524).rho / ATMOSPHERE_1976(0).rho  # 5000 ft: 0.8617
    thin = operating_point(BLOWER, lambda q: SYSTEM(q) * ratio, CURVE_DENSITY_KG_M3 * ratio)
    # Burner and blower both go with the density: the same volume, 0.8617 of the pressure (fan laws).
    assert thin.flow_m3_s / CFM == pytest.approx(102.90, abs=0.005)
    assert thin.pressure_Pa / INH2O == pytest.approx(4.235 * 0.8617, abs=0.001)


def test_curve_density_is_that_of_standard_fan_air():
    assert CURVE_DENSITY_KG_M3 == pytest.approx(1.2014, abs=0.00005)  # 0.075 lb/ft3


def test_weak_and_strong_blowers_are_told_apart():
    assert operating_point(BLOWER, quadratic_system(1, c=9 * INH2O)).stalled
    far = operating_point(Points((0.0, 0.01), (2000.0, 1500.0)), quadratic_system(1))
    assert far.beyond_curve and far.flow_m3_s == 0.01 and far.pressure_Pa == 1500
    assert operating_point(HUMP, lambda q: 960.0).crossings == 3


def test_margin():
    assert blower_margin(BLOWER, 75 * CFM, 3 * INH2O) == pytest.approx(1.0, rel=1e-12)  # 8 (1 - 1/4) = 6 inH2O for 3
    assert blower_margin(BLOWER, 75 * CFM, 8 * INH2O) == pytest.approx(-0.25, rel=1e-12)
    assert blower_margin(BLOWER, 151 * CFM, INH2O) == -1


def test_damper_takes_what_is_left_over():
    area = pi / 4 * 0.05**2
    got = damper(BLOWER, 75 * CFM, 2 * INH2O, area, 1.2014)
    assert got.drop_Pa == pytest.approx(4 * INH2O, rel=1e-4)
    assert got.share == pytest.approx(2 / 3, rel=1e-4)
    assert thin_plate_K(got.open_fraction) == pytest.approx(got.K, rel=1e-9)
    assert got.K * 1.2014 * (75 * CFM / area) ** 2 / 2 == pytest.approx(got.drop_Pa, rel=1e-9)
    assert damper(BLOWER, 75 * CFM, 7 * INH2O, area) is None
    assert damper(BLOWER, 160 * CFM, INH2O, area) is None


@given(f=st.floats(0.005, 1))
def test_open_fraction_is_the_inverse_of_the_plate(f):
    assert plate_open_fraction(thin_plate_K(f)) == pytest.approx(f, rel=1e-6)


@settings(max_examples=100, deadline=None)
@given(
    shutoff=st.floats(50, 5000),
    free=st.floats(0.005, 0.5),
    a=st.floats(0, 1e8),
    b=st.floats(0, 1e5),
    density=st.floats(0.7, 1.5),
    more=st.floats(1.01, 3),
)
def test_more_blower_never_gives_less(shutoff, free, a, b, density, more):
    system = quadratic_system(a, b)
    base = operating_point(Parabola(shutoff, free), system, density)
    assert isfinite(base.flow_m3_s) and 0 <= base.flow_m3_s <= free
    assert operating_point(Parabola(shutoff * more, free), system, density).flow_m3_s >= base.flow_m3_s * (1 - 1e-9)
    assert operating_point(Parabola(shutoff, free * more), system, density).flow_m3_s >= base.flow_m3_s * (1 - 1e-9)
    heavier = operating_point(Parabola(shutoff, free), quadratic_system(a * more, b), density)
    assert heavier.flow_m3_s <= base.flow_m3_s * (1 + 1e-9)
    flow = 0.5 * free
    assert blower_margin(Parabola(shutoff * more, free), flow, 100, density) > blower_margin(
        Parabola(shutoff, free), flow, 100, density
    )


@pytest.mark.parametrize("text", ["0 cfm 8 inH2O, 100 cfm 5 inH2O", "0 cfm  8 inH2O; 100 cfm 5 inH2O,"])
def test_reads_a_curve_from_text(text):
    got = parse_blower_curve(text, simple)
    assert got.flows_m3_s == pytest.approx((0, 0.0471947), rel=1e-5)  # 100 cfm
    assert got.pressures_Pa == pytest.approx((1992.71, 1245.44), rel=1e-5)


def test_reads_it_with_the_units_of_the_package():
    got = parse_blower_curve("0 cfm 8 inH2O, 100 cfm 5 inH2O", parse_quantity)
    assert got.flows_m3_s[1] == pytest.approx(0.0471947, rel=1e-5)
    metric = parse_blower_curve("0 m3/h 20 mbar, 170 m3/h 1.2 kPa", parse_quantity)
    assert metric.flows_m3_s[1] == pytest.approx(170 / 3600, rel=1e-9)
    assert metric.pressures_Pa == pytest.approx((2000, 1200), rel=1e-9)


@pytest.mark.parametrize(
    "text,rule",
    [
        ("", "two points"),
        ("0 cfm 8 inH2O", "two points"),
        ("0 cfm 8 inH2O, 100 cfm", "one flow and one pressure"),
        ("0 cfm 8 inH2O, 100 cfm 5 inH2O, 80 cfm 6 inH2O", "rising"),
        ("0 cfm 8 inH2O, 0 cfm 5 inH2O", "rising"),
        ("20 cfm 8 inH2O, 100 cfm 5 inH2O", "no flow"),
        ("0 cfm 8 inH2O, 100 cfm -1 inH2O", "0 or more"),
        ("0 cfm 0 inH2O, 100 cfm 0 inH2O", "above 0"),
        ("0 cfm nan inH2O, 9 cfm 2 inH2O", "one flow and one pressure"),
        ("0 cfm 2 inH2O, 100 cfm 8 inH2O", "the more a blower moves, the less it pushes"),
        ("0 cfm 4 inH2O, 50 cfm 16 inH2O, 100 cfm 0 inH2O", "nowhere push more than 1.5 times"),
    ],
)
def test_refuses_what_is_no_curve(text, rule):
    with pytest.raises(InputError, match=rule) as caught:
        parse_blower_curve(text, simple)
    assert caught.value.field == "blower_curve"


@pytest.mark.parametrize(
    "call,field",
    [
        (lambda: Parabola(0, 1), "blower_shutoff_pressure"),
        (lambda: Parabola(100, float("nan")), "blower_free_flow"),
        (lambda: BLOWER.pressure_Pa(1), "blower_free_flow"),
        (lambda: FALLING.pressure_Pa(1), "blower_curve"),
        (lambda: operating_point(BLOWER, SYSTEM, 0), "density_kg_m3"),
        (lambda: damper(BLOWER, 0, 1, 0.001), "flow_m3_s"),
        (lambda: plate_open_fraction(float("nan")), "K"),
    ],
)
def test_refusals_name_the_argument(call, field):
    with pytest.raises(InputError) as caught:
        call()
    assert caught.value.field == field


def test_a_blower_for_several_by_hand():
    """8 inH2O and 150 cfm for three: at 30 cfm each it makes what 90 cfm leave, less 0.5 inH2O in a branch."""
    branch = 0.5 * INH2O / (30 * CFM) ** 2
    one = share_of_one(BLOWER, 3, branch)
    assert one.pressure_Pa(30 * CFM) / INH2O == pytest.approx(8 * (1 - 0.6**2) - 0.5)
    assert one.pressure_Pa(0.0) == BLOWER.pressure_Pa(0.0)
    assert share_of_one(BLOWER, 1, 0.0) == BLOWER


def test_burners_on_one_blower_pass_what_the_sum_of_them_would():
    """Two alike on one blower: the flow of both together by the blower's own curve, branch and burner in a row."""
    branch = 300.0 / 0.02**2
    one = operating_point(share_of_one(BLOWER, 2, branch), SYSTEM)
    both = operating_point(BLOWER, lambda flow: SYSTEM(flow / 2) + branch * (flow / 2) ** 2)
    assert 2 * one.flow_m3_s == pytest.approx(both.flow_m3_s, rel=1e-6)


def test_points_for_several_end_where_a_branch_has_used_them_up():
    branch = 4 * INH2O / (50 * CFM) ** 2
    shared = share_of_one(FALLING, 2, branch)
    for flow in (0, 20, 35):
        assert shared.pressure_Pa(flow * CFM) == pytest.approx(
            FALLING.pressure_Pa(2 * flow * CFM) - branch * (flow * CFM) ** 2
        )
    # 5 - 4 inH2O at 50 cfm, 0 - 7.84 at 70: nothing left after 1 / 8.84 of the way.
    assert shared.last_m3_s / CFM == pytest.approx(50 + 20 / 8.84) and shared.pressures_Pa[-1] == 0.0
    spent = share_of_one(FALLING, 2, 5 * INH2O / (50 * CFM) ** 2)
    assert spent.last_m3_s == pytest.approx(50 * CFM) and spent.pressures_Pa[-1] == pytest.approx(0.0, abs=1e-9)
