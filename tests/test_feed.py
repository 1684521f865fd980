"""Flow through solve(): worked plenum and pipe cases, and what must hold of every design."""

from math import cos, isfinite, pi

import pytest
from fluids.friction import friction_factor
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from burnercalc import Design, InputErrors, solve

INCH, INH2O = 0.0254, 249.08891
# A plenum fed at one end, worked: 37 ports of 1/4 in, 3 x 2 in inside, propane, phi 1, 60 degF, 100 kBtu/h.
# The body around it: width 3 + 2 x 1/8, depth 2 + 1/8 + 3/4.
WORKED = {
    "body_length": "12 in",
    "body_width": "3 1/4 in",
    "body_depth": "2 7/8 in",
    "wall": "1/8 in",
    "setback": "1/2 in",
    "rows": "1",
    "ports_per_row": "37",
    "pattern": "straight",
    "edge_margin": "1/8 in",
    "inlet_position": "end",
    "baffle_holes": "0",
}


def solved(**texts):
    return solve(Design.from_texts(texts))


def test_worked_plenum():
    """Reference: V 6.637 m/s in the ports, 2.009 m/s and a head of 2.51 Pa in the plenum (with cantera's density)."""
    r = solved(**WORKED)
    assert r["plenum_area"] == pytest.approx(6 * INCH**2, rel=1e-9)
    assert r["kinetic_energy_ratio"] * (r["port_pressure_drop"] + r["baffle_pressure_drop"]) == pytest.approx(
        2.51, rel=0.01
    )


def test_worked_plenum_tends_to_the_closed_form():
    """first/last = cos(C_d a) for many ports without friction; 37 with a little friction stay within 0.4 points."""
    r = solved(**WORKED)
    head = 1.2438 * 6.637**2 / 2
    coefficient = (head / r["port_pressure_drop"]) ** 0.5
    first, last = r.part("shares").ports[0], r.part("shares").ports[-1]
    assert first / last == pytest.approx(cos(coefficient * 1.8162 / 6), abs=0.004)
    assert r["flow_spread"] == pytest.approx(last - first, rel=1e-9)


def test_port_drop_against_the_long_orifice():
    """Lichtarowicz 1965 (memory), L/d 10, by hand: 1/C_d = 1/0.742 + 20/4455 x 23.5 = 1.453: 57.85 Pa at 6.637 m/s."""
    drop = solved(**WORKED)["port_pressure_drop"]
    assert 0.96 * 57.85 <= drop <= 1.26 * 57.85  # how far the two are known to part
    low, high = solved(**WORKED).answers["port_pressure_drop"].band
    assert low <= 57.85 <= high


def test_mix_pipe_against_fluids():
    """A 2 in pipe of 48 in with two elbows: Colebrook (fluids), 30 diameters of that friction an elbow, entry 0.5."""
    r = solved(mix_pipe="2", mix_pipe_length="48 in", mix_pipe_elbows="2", firing_rate="300 kBtu/h")
    bore = 2.067 * INCH
    flow_m3_s = 3 * 988.7 * 0.3048**3 / 3600  # the mixture of 100 kBtu/h is 988.7 ft3/h at 60 degF (reference table)
    velocity, density, viscosity = flow_m3_s / (pi / 4 * bore**2), 1.2438, 17.25e-6
    reynolds = density * velocity * bore / viscosity
    friction = friction_factor(Re=reynolds, eD=45e-6 / bore)
    expected = (friction * (48 * INCH / bore + 60) + 0.5) * density * velocity**2 / 2
    assert r["mix_pipe_pressure_drop"] == pytest.approx(expected, rel=0.03)


def test_pressures_add_up_when_the_ports_share_evenly():
    r = solved()
    parts = sum(r[f"{part}_pressure_drop"] for part in ("port", "baffle", "inlet", "mix_pipe"))
    assert r["mixture_pressure"] == pytest.approx(parts, rel=0.005)
    assert solved(chamber_back_pressure="1 inH2O")["mixture_pressure"] - r["mixture_pressure"] == pytest.approx(
        INH2O, rel=1e-6
    )


def test_baffle_of_no_holes_is_no_baffle():
    r = solved(baffle_holes="0")
    assert r["baffle_open_fraction"] is None and r["baffle_unevenness_left"] is None and r["baffle_pressure_drop"] == 0


def test_baffle_open_share_by_hand():
    """40 holes of 3/8 in over 8 5/8 x 3 5/8 in / cos 30 deg: 4.418 / 36.10 = 12.24 %."""
    assert solved()["baffle_open_fraction"] == pytest.approx(0.12237, abs=5e-5)


def test_jet_is_stagnation_pressure_without_a_baffle():
    """q/q_mean = sqrt(1 + head / dp) with V = 988.7 ft3/h through a 2 in pipe."""
    r = solved(baffle_holes="0")
    velocity = 988.7 * 0.3048**3 / 3600 / (pi / 4 * (2.067 * INCH) ** 2)
    assert r["jet_impingement"] == pytest.approx(
        (1 + 1.2438 * velocity**2 / 2 / r["port_pressure_drop"]) ** 0.5, rel=2e-3
    )
    assert solved(baffle_holes="0", inlet_position="end")["jet_impingement"] == 1
    assert 1 <= solved()["jet_impingement"] < r["jet_impingement"]


def test_mixing_length_in_diameters():
    """By hand: 18 in / 1.610 in bore + 5 for the elbow."""
    assert solved()["mixing_length_diameters"] == pytest.approx(18 / 1.610 + 5, rel=1e-6)


def test_shares_are_those_of_the_ports_and_average_to_one():
    r = solved(inlet_position="end", body_depth="2 in")
    assert len(r.part("shares").ports) == r["port_count"]
    assert sum(r.part("shares").ports) / r["port_count"] == pytest.approx(1, rel=1e-6)
    assert sum(row[4] for row in r.tables["port_flows"].rows) == pytest.approx(r.part("stream").mixture_m3_s, rel=1e-6)


def test_a_fed_middle_is_more_even_than_a_fed_end():
    for depth in ("1 3/4 in", "2 in", "3 in"):
        assert solved(body_depth=depth)["flow_spread"] < solved(body_depth=depth, inlet_position="end")["flow_spread"]


def test_a_deeper_plenum_is_never_less_even():
    spreads = [solved(body_depth=f"{n} in", inlet_position="end")["flow_spread"] for n in (2, 2.5, 3, 4, 6)]
    assert spreads == sorted(spreads, reverse=True)


settings_of_flow = st.fixed_dictionaries(
    {},
    optional={
        "body_depth": st.integers(7, 96).map(lambda n: f"{n / 4} in"),
        "ports_per_row": st.integers(1, 30).map(str),
        "rows": st.integers(1, 9).map(str),
        "port_diameter": st.integers(2, 32).map(lambda n: f"{n}/32 in"),
        "block_thickness": st.integers(8, 96).map(lambda n: f"{n / 8} in"),
        "pattern": st.sampled_from(["straight", "staggered", "hexagonal"]),
        "inlet": st.sampled_from(["1/8", "1/2", "1", "2", "4"]),
        "mix_pipe": st.sampled_from(["1/8", "3/4", "1-1/2", "4"]),
        "mix_pipe_length": st.integers(0, 240).map(lambda n: f"{n} in"),
        "mix_pipe_elbows": st.integers(0, 12).map(str),
        "inlet_position": st.sampled_from(["centre", "end"]),
        "baffle_holes": st.sampled_from(["0", "1", "20", "100"]),
        "baffle_hole_diameter": st.sampled_from(["1/16 in", "1/4 in", "1/2 in"]),
        "baffle_thickness": st.sampled_from(["1/64 in", "1/8 in", "1/2 in"]),
        "baffle_bend_angle": st.integers(0, 120).map(lambda n: f"{n} deg"),
        "chamber_back_pressure": st.floats(0, 20).map(lambda x: f"{x} inH2O"),
        "firing_rate": st.floats(1, 3000).map(lambda x: f"{x} kBtu/h"),
        "fuel": st.sampled_from(["propane", "natural_gas", "butane"]),
        "altitude": st.floats(-1000, 12000).map(lambda x: f"{x} ft"),
        "ambient_temperature": st.floats(-4, 130).map(lambda x: f"{x} degF"),
        "low_fire": st.floats(0.05, 1).map(repr),
        "equivalence_ratio": st.floats(0.5, 1.6).map(repr),
    },
)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.filter_too_much])
@given(settings_of_flow)
def test_no_design_breaks_the_flow(texts):
    try:
        r = solved(**texts)
    except InputErrors:
        assume(False)
    for key, answer in r.answers.items():
        assert not isinstance(answer.value, float) or isfinite(answer.value), key
    assert min(r.part("shares").ports) >= 0 and r["flow_spread"] >= 0
    assert r["mixture_pressure"] >= r.design.chamber_back_pressure
    xs, shares = r.charts["flow_by_column"].plot.series["shares"]
    assert list(xs) == list(range(1, len(shares) + 1)) and max(shares) == max(r.part("shares").ports)
    least = r.checks["flow_spread"].verdict
    assert (least == "stop") >= (min(r.part("shares").ports) == 0)
