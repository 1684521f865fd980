from math import pi

import fluids
import pytest
from fluids import fittings
from hypothesis import given, settings
from hypothesis import strategies as st
from rows import rows

from burnercalc.errors import InputError
from burnercalc.physics.losses import (
    ROUGHNESS_STEEL_M,
    contraction_K,
    expansion_K,
    fitting_K,
    friction_darcy,
    pipe_drop_Pa,
    turbulent_friction_darcy,
)
from burnercalc.physics.pipes import pipe


@pytest.mark.parametrize("row", rows("friction.csv"), ids=lambda row: f"Re {row['reynolds']:g}")
def test_friction_agrees_with_the_printed_table(row):
    got = friction_darcy(row["reynolds"], row["relative_roughness"])
    assert got == pytest.approx(row["haaland"], abs=5.1e-7)  # printed to six decimals
    assert got == pytest.approx(row["colebrook"], rel=0.02)  # what Haaland claims
    assert got == pytest.approx(fluids.friction.Haaland(row["reynolds"], row["relative_roughness"]), rel=1e-6)


@pytest.mark.parametrize("reynolds,expected", [(500, 0.128), (2000, 0.032)])
def test_laminar_friction(reynolds, expected):
    assert friction_darcy(reynolds, 0.001) == pytest.approx(expected, rel=1e-12)


@pytest.mark.parametrize("edge", [2300, 4000])
def test_friction_has_no_step_at_the_ends_of_the_transition(edge):
    assert friction_darcy(edge * (1 - 1e-9), 0.01) == pytest.approx(friction_darcy(edge * (1 + 1e-9), 0.01), rel=1e-6)


@settings(max_examples=200, deadline=None)
@given(reynolds=st.floats(1e-3, 1e7), rough=st.floats(0, 0.1), more=st.floats(1.001, 3))
def test_more_flow_always_takes_more_pressure(reynolds, rough, more):
    assert friction_darcy(reynolds * more, rough) * more**2 > friction_darcy(reynolds, rough) > 0


def test_expansion_agrees_with_fluids():
    assert expansion_K(0.25) == pytest.approx(0.5625, rel=1e-12)
    assert expansion_K((0.03 / 0.07) ** 2) == pytest.approx(fittings.diffuser_sharp(0.03, 0.07), rel=1e-9)
    assert expansion_K(0) == fittings.exit_normal() == 1


def test_contraction_agrees_with_fluids():
    assert contraction_K((0.03 / 0.07) ** 2) == pytest.approx(
        fittings.contraction_sharp(0.07, 0.03, method="Crane"), rel=1e-9
    )
    # A fit to measurements, Rennels; the docstring promises this range.
    for small in (0.1, 0.3, 0.54, 0.7, 0.9, 0.95):
        assert -0.02 < fittings.contraction_sharp(1, small) - contraction_K(small**2) < 0.13


VALVES = {
    "gate_valve": lambda d: fittings.K_gate_valve_Crane(D1=d, D2=d, angle=0),
    "ball_valve": lambda d: fittings.K_ball_valve_Crane(D1=d, D2=d, angle=0),
    "globe_valve": lambda d: fittings.K_globe_valve_Crane(D1=d, D2=d),
    "butterfly_valve": lambda d: fittings.K_butterfly_valve_Crane(D=d),
}
# n f_T of the source at NPS 1, 1-1/2 and 3, printed in the project's reference tables.
CRANE = [
    ("elbow_90", 0.668, 0.600, 0.516),
    ("elbow_45", 0.356, 0.320, 0.275),
    ("tee_run", 0.445, 0.400, 0.344),
    ("tee_branch", 1.335, 1.200, 1.033),
    ("bend_90", 0.312, 0.280, 0.241),
]


@pytest.mark.parametrize("name", VALVES)
def test_valves_agree_with_fluids(name):
    bore = pipe("2").bore_m
    assert fitting_K(name, 1e8, ROUGHNESS_STEEL_M / bore) == pytest.approx(VALVES[name](bore), rel=0.02)


@pytest.mark.parametrize("name,one,one_half,three", CRANE)
def test_elbows_and_tees_of_the_printed_table(name, one, one_half, three):
    for nps, expected in (("1", one), ("1-1/2", one_half), ("3", three)):
        # The source rounds its own f_T to 0.001, which is 5 %.
        assert fitting_K(name, 1e8, ROUGHNESS_STEEL_M / pipe(nps).bore_m) == pytest.approx(expected, rel=0.02)


def test_elbow_of_two_inch_pipe_and_its_friction():
    rough = ROUGHNESS_STEEL_M / pipe("2").bore_m
    assert turbulent_friction_darcy(1e9, rough) == pytest.approx(0.0189, abs=0.0005)
    assert fitting_K("elbow_90", 1e9, rough) == pytest.approx(0.57, abs=0.02)


def test_a_slow_pipe_makes_a_fitting_lose_more():
    turbulent = fitting_K("elbow_90", 1e8, 0.001)
    assert 1.2 < fitting_K("elbow_90", 5e4, 0.001) / turbulent < fitting_K("elbow_90", 1e4, 0.001) / turbulent < 1.7


def test_pipe_run_agrees_with_fluids():
    bore, length, flow, rho, mu = 0.0409, 1.2, 0.02, 1.2, 1.8e-5
    velocity = flow / (pi / 4 * bore**2)
    re = fluids.Reynolds(V=velocity, D=bore, rho=rho, mu=mu)
    f = fluids.friction_factor(Re=re, eD=ROUGHNESS_STEEL_M / bore)
    expected = fluids.dP_from_K(K=fluids.K_from_f(fd=f, L=length, D=bore) + 30 * f + 1.5, rho=rho, V=velocity)
    got = pipe_drop_Pa(flow, bore, length, rho, mu, fittings=("elbow_90",), other_K=1.5)
    assert got == pytest.approx(expected, rel=0.01)
    assert pipe_drop_Pa(0, bore, length, rho, mu) == 0


@pytest.mark.parametrize(
    "call,field",
    [
        (lambda: friction_darcy(float("nan"), 0), "reynolds"),
        (lambda: friction_darcy(5000, 0.2), "relative_roughness"),
        (lambda: expansion_K(1.1), "area_ratio"),
        (lambda: contraction_K(1.1), "area_ratio"),
        (lambda: fitting_K("elbow_91", 1e4, 0), "fitting"),
        (lambda: pipe_drop_Pa(-1, 0.1, 1, 1.2, 2e-5), "flow_m3_s"),
        (lambda: pipe_drop_Pa(0.1, 0.1, float("nan"), 1.2, 2e-5), "length_m"),
    ],
)
def test_refusals_name_the_argument(call, field):
    with pytest.raises(InputError) as caught:
        call()
    assert caught.value.field == field
