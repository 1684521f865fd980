"""Air entrainment against the closed form of the momentum balance, Prigg's relation and gas dynamics."""

from math import pi, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from burnercalc.errors import InputError
from burnercalc.physics.aspirated import aspirated_mix, jet_thrust_N
from burnercalc.tables import read_table

PROPANE = {"molar_mass_kg_mol": 0.0440956, "heat_capacity_ratio": 1.13, "stoichiometric_ratio_volume": 23.87}
# Own scenario: drill of 0.9 mm in a 3/4 in pipe (20.9 mm), 10 psi.
PIPE = {"gas_gauge_Pa": 68948.0, "jet_diameter_m": 0.9e-3, "discharge_coefficient": 0.85, "throat_diameter_m": 20.9e-3}
SIGMA = 0.0440956 / 0.0289644


def test_thrust_of_a_choked_jet():
    # Converging nozzle, k = 1.4, into vacuum: F/(p0 A) = 1.2679 (Sutton; = 2.4 x 0.52828).
    got = jet_thrust_N(
        diameter_m=0.002,
        discharge_coefficient=1.0,
        upstream_Pa=5e5,
        downstream_Pa=0.0,
        temp_K=300.0,
        molar_mass_kg_mol=0.029,
        heat_capacity_ratio=1.4,
    )
    assert got / (5e5 * pi / 4 * 0.002**2) == pytest.approx(1.2679, abs=2e-4)


def test_thrust_of_a_weak_jet_is_twice_the_pressure():
    # Bernoulli: rho u**2 A = 2 dp A.
    got = jet_thrust_N(
        diameter_m=0.002,
        discharge_coefficient=0.8,
        upstream_Pa=101325 + 500,
        downstream_Pa=101325,
        temp_K=288.15,
        molar_mass_kg_mol=0.0441,
        heat_capacity_ratio=1.13,
    )
    assert got == pytest.approx(0.8 * pi / 4 * 0.002**2 * 2 * 500, rel=0.005)


def closed_form(sigma, area_ratio):
    """Root of (1 + r)(s + r) = s A/Aj."""
    b = 1 + sigma
    return (-b + sqrt(b * b - 4 * sigma * (1 - area_ratio))) / 2


@pytest.mark.parametrize("throat_m", [6e-3, 12e-3, 25e-3])
def test_weak_jet_agrees_with_the_closed_form_and_with_prigg(throat_m):
    # Cd = 1, so that the jet is as wide as its hole; 1 kPa, so that the gas does not expand.
    got = aspirated_mix(
        **{**PIPE, "gas_gauge_Pa": 1000.0, "discharge_coefficient": 1.0, "throat_diameter_m": throat_m}, **PROPANE
    )
    area_ratio = (throat_m / PIPE["jet_diameter_m"]) ** 2
    assert got.air_gas_ratio_volume == pytest.approx(closed_form(SIGMA, area_ratio), rel=0.01)
    # Prigg, r = sqrt(s) (D/d - 1), in texts on domestic and biogas burners (memory): the same up to (s + 1)/2 against
    # sqrt(s), for propane 1.26 against 1.23.
    prigg = sqrt(SIGMA) * (throat_m / PIPE["jet_diameter_m"] - 1)
    assert got.air_gas_ratio_volume == pytest.approx(prigg, rel=0.02)


def test_common_forge_burner_runs_near_stoichiometric():
    # Common practice: 0.9 mm (number 65 drill) in 3/4 in pipe at 10 psi runs near stoichiometric.
    assert 0.75 < aspirated_mix(**PIPE, **PROPANE).equivalence_ratio < 1.2


def test_ratio_holds_with_weak_gas_pressure_and_falls_once_choked():
    # Incompressible momentum theory: the ratio does not depend on the pressure; expansion of the gas costs air.
    ratios = [
        aspirated_mix(**{**PIPE, "gas_gauge_Pa": gauge}, **PROPANE).air_gas_ratio_volume
        for gauge in (500.0, 5e3, 70e3, 200e3)
    ]
    assert ratios[1] == pytest.approx(ratios[0], rel=0.005)
    assert ratios == sorted(ratios, reverse=True)


@settings(max_examples=150, deadline=None)
@given(
    gauge=st.floats(500, 4e5),
    jet=st.floats(0.3e-3, 3e-3),
    wide=st.floats(4, 60),
    ki=st.floats(0, 3),
    ko=st.floats(0, 3),
    back=st.floats(0, 3),
)
def test_momentum_balances_and_losses_cost_air(gauge, jet, wide, ki, ko, back):
    case = {
        **PIPE,
        **PROPANE,
        "gas_gauge_Pa": gauge,
        "jet_diameter_m": jet,
        "throat_diameter_m": wide * jet,
        "inlet_loss": ki,
        "outlet_loss": ko,
        "chamber_gauge_Pa": back,
    }
    try:
        got = aspirated_mix(**case)
    except InputError as error:
        assert error.field in ("chamber_pressure", "throat_diameter")
        return
    assert got.air_gas_ratio_volume > 0 and got.equivalence_ratio > 0 and got.throat_velocity_m_s > 0
    # Put together again from the printed flows: pressures and momentum at both ends of the throat.
    area = pi / 4 * (wide * jet) ** 2
    rho_air = 101325 * 0.0289644 / (8.314462618 * 288.15)
    air_speed = got.air_flow_kg_s / (rho_air * area)
    head_air = 0.5 * rho_air * air_speed**2
    mix = got.gas_flow_kg_s + got.air_flow_kg_s
    head_mix = 0.5 * mix / area * got.throat_velocity_m_s
    entry = -(1 + ki) * head_air  # gauge pressure where jet and air meet
    end = back + (ko - 1) * head_mix  # gauge pressure at the end of the throat
    assert got.thrust_N + entry * area + got.air_flow_kg_s * air_speed == pytest.approx(
        end * area + mix * got.throat_velocity_m_s, rel=1e-6, abs=1e-9
    )
    worse = aspirated_mix(**{**case, "outlet_loss": ko + 0.5, "chamber_gauge_Pa": 0.0})
    assert worse.air_flow_kg_s < aspirated_mix(**{**case, "chamber_gauge_Pa": 0.0}).air_flow_kg_s


@pytest.mark.parametrize(
    "field, change",
    [
        ("gas_pressure", {"gas_gauge_Pa": 0.0}),
        ("gas_pressure", {"gas_gauge_Pa": float("nan")}),
        ("throat_diameter", {"throat_diameter_m": 2e-3}),
        ("outlet_loss", {"outlet_loss": -1.0}),
        ("inlet_loss", {"inlet_loss": float("nan")}),
        ("chamber_pressure", {"chamber_gauge_Pa": 5000.0}),
    ],
)
def test_names_the_field(field, change):
    with pytest.raises(InputError) as caught:
        aspirated_mix(**{**PIPE, **PROPANE, **change})
    assert caught.value.field == field


def test_kinds_of_burner():
    assert [row["key"] for row in read_table("burner_kinds")] == ["aspirated", "blown_single", "blown_multi_port"]
    assert read_table("burner_kinds")[0]["mains_power_W"] == 0
    assert all(row["turndown"] > 1 and row["gas_low_kPa"] < row["gas_high_kPa"] for row in read_table("burner_kinds"))
