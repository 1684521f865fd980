"""Air through solve(): the fan laws, the operating point solved another way, and what must hold of every design."""

from math import isfinite

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from burnercalc import Design, InputErrors, solve
from burnercalc.physics.plates import thin_plate_K

CFM, INH2O = 0.3048**3 / 60, 249.08891
STANDARD_AIR = 0.075 * 0.45359237 / 0.3048**3


def solved(**texts):
    return solve(Design.from_texts(texts))


def test_operating_point_by_another_solver():
    r = solved()
    density = 0.07636 * 0.45359237 / 0.3048**3  # air at 60 degF (CoolProp, reference figures)
    mixture_over_air = r["mixture_flow"] / r["air_flow"]

    def gap(flow):
        return 4 * INH2O * (1 - (flow / (60 * CFM)) ** 2) * density / STANDARD_AIR - r.part("resistance").pressure_Pa(
            flow * mixture_over_air
        )

    assert r["blower_flow"] == pytest.approx(brentq(gap, 1e-6, 60 * CFM), rel=1e-3)
    assert r["blower_pressure"] == pytest.approx(
        r.part("resistance").pressure_Pa(r["blower_flow"] * mixture_over_air), rel=1e-6
    )


def test_air_of_high_fire():
    """15.8 scfm for 100 kBtu/h at phi 1 (reference figures, 0.6 % between fuels): the margin is the parabola's."""
    r = solved()
    has = 4 * INH2O * (1 - (15.82 / 60) ** 2) * 0.07636 / 0.075
    assert r["blower_margin"] == pytest.approx(has / r["mixture_pressure"] - 1, rel=2e-3)


def test_blower_gives_less_pressure_in_thin_air():
    """US Standard Atmosphere 1976: 0.8321 of sea-level pressure at 5000 ft; at one temperature the density too."""
    shut = [
        solved(altitude=height).charts["blower_and_burner"].plot.series["blower"][1][0]
        for height in ("0 ft", "5000 ft")
    ]
    assert shut[1] / shut[0] == pytest.approx(0.8321, abs=5e-5)


def test_points_stand_over_the_two_numbers():
    text = ", ".join(f"{60 * i / 12:g} cfm {4 * (1 - (i / 12) ** 2):.6f} inH2O" for i in range(13))
    two, points = solved(), solved(blower_curve=text, blower_shutoff_pressure="50 inH2O")
    assert points["blower_flow"] == pytest.approx(two["blower_flow"], rel=2e-3)
    assert points["blower_margin"] == pytest.approx(two["blower_margin"], rel=5e-3)


def test_damper_takes_what_is_to_spare():
    r = solved()
    head = (
        STANDARD_AIR
        * 0.07636
        / 0.075
        * (r["air_flow"] * 288.706 / 288.15 / (3.14159265 / 4 * (1.61 * 0.0254) ** 2)) ** 2
        / 2
    )
    spare = r["blower_margin"] * r["mixture_pressure"]
    assert thin_plate_K(r["damper_open_high"]) * head == pytest.approx(spare, rel=3e-3)
    assert r["damper_open_low"] < r["damper_open_high"] < 1


def test_too_weak_a_blower_has_no_damper():
    r = solved(blower_shutoff_pressure="0.3 inH2O")
    assert r["blower_margin"] < 0 and r["damper_open_high"] is None and "damper" in r.checks
    r = solved(blower_free_flow="10 cfm")
    assert r["blower_margin"] == -1 and "ends at 10 cfm" in r.checks["blower"].text


@settings(max_examples=25, deadline=None)
@given(st.floats(0.2, 50), st.floats(1, 2), st.floats(5, 500), st.floats(1, 2))
def test_more_blower_never_lowers_the_margin(pressure, stronger, flow, larger):
    def margin(p, q):
        return solved(blower_shutoff_pressure=f"{p} inH2O", blower_free_flow=f"{q} cfm")["blower_margin"]

    assert margin(min(pressure * stronger, 100), flow * larger) >= margin(pressure, flow) - 1e-12


curves = st.lists(st.tuples(st.floats(0.5, 50), st.floats(0, 20)), min_size=1, max_size=6).flatmap(
    lambda steps: st.floats(0.1, 30).map(lambda start: (start, steps))
)


def curve_text(curve):
    start, steps = curve
    flow, parts = 0.0, [f"0 cfm {start} inH2O"]
    for step, pressure in steps:
        flow += step
        parts.append(f"{flow!r} cfm {pressure!r} inH2O")
    return ", ".join(parts)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.filter_too_much])
@given(
    st.fixed_dictionaries(
        {},
        optional={
            "blower_curve": curves.map(curve_text),
            "blower_shutoff_pressure": st.floats(0.1, 100).map(lambda x: f"{x} inH2O"),
            "blower_free_flow": st.floats(1, 5000).map(lambda x: f"{x} cfm"),
            "firing_rate": st.floats(1, 3000).map(lambda x: f"{x} kBtu/h"),
            "altitude": st.floats(-1000, 12000).map(lambda x: f"{x} ft"),
            "ambient_temperature": st.floats(-4, 130).map(lambda x: f"{x} degF"),
            "chamber_back_pressure": st.floats(0, 20).map(lambda x: f"{x} inH2O"),
            "low_fire": st.floats(0.05, 1).map(repr),
            "mix_pipe": st.sampled_from(["1/8", "1", "4"]),
        },
    )
)
def test_no_design_breaks_the_air(texts):
    try:
        r = solved(**texts)
    except InputErrors:
        assume(False)
    for key, answer in r.answers.items():
        assert not isinstance(answer.value, float) or isfinite(answer.value), key
    assert (r.checks["blower"].verdict == "stop") == (r["blower_margin"] < 0)
    assert (r["damper_open_high"] is None) == (r["blower_margin"] < 0)
    for xs, ys in r.charts["blower_and_burner"].plot.series.values():
        assert all(isfinite(v) for v in (*xs, *ys))
