import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from rows import rows

from burnercalc.errors import InputError
from burnercalc.physics.port_drop import (
    developing_friction,
    port_drop_Pa,
    port_K,
)


def discharge_coefficient_lichtarowicz(reynolds, length_ratio):
    """C_d of long sharp-edged orifices, 1/C_d = 1/(0.827 - 0.0085 L/d) + (20/Re)(1 + 2.25 L/d).

    Re 10 to 20000 with the ideal velocity sqrt(2 dp/rho), L/d 2 to 10. Lichtarowicz, Duggins and Markland, J. Mech.
    Eng. Sci. 7 (1965) 210 (memory).
    """
    return 1 / (1 / (0.827 - 0.0085 * length_ratio) + 20 / reynolds * (1 + 2.25 * length_ratio))


@pytest.mark.parametrize("row", rows("port_drop.csv"), ids=lambda row: f"L/d {row['length_ratio']:g}")
def test_long_orifice_form_and_its_agreement_with_the_loss_form(row):
    measured = discharge_coefficient_lichtarowicz(3038, row["length_ratio"])
    assert measured == pytest.approx(row["discharge_coefficient"], abs=0.00006)
    d, velocity, rho = 6.35e-3, 6.637, 1.2438
    viscosity = rho * velocity * d / 3038
    assert port_drop_Pa(velocity, d, row["length_ratio"] * d, rho, viscosity, roughness_m=0.02 * d) == pytest.approx(
        row["drop_Pa"], rel=0.13
    )


@pytest.mark.parametrize("ideal_reynolds", [200, 500, 1000, 2000, 3000, 4000, 8000, 20000])
@pytest.mark.parametrize("length_ratio", [2, 4, 6, 8, 10])
def test_loss_form_lies_a_little_above_the_measured_form(ideal_reynolds, length_ratio):
    measured = discharge_coefficient_lichtarowicz(ideal_reynolds, length_ratio)
    K = port_K(measured * ideal_reynolds, length_ratio, relative_roughness=0.005)
    # Two independent models; the docstring promises this range.
    assert 0.96 < K * measured**2 < 1.26


def test_turbulent_port_of_the_printed_example():
    # fluids.friction_factor(Re=1e5, eD=0.02) = 0.0491 (Colebrook), L/d 4: K = 1.5 + 0.196.
    from fluids import friction_factor

    friction = friction_factor(Re=1e5, eD=0.02)
    assert port_K(1e5, 4, relative_roughness=0.02) == pytest.approx(1.5 + 4 * friction, rel=0.002)


@pytest.mark.parametrize("x_plus", [1e-6, 1e-5])
def test_young_flow_follows_the_boundary_layer(x_plus):
    assert developing_friction(x_plus) == pytest.approx(3.44 / x_plus**0.5, rel=0.02)


@pytest.mark.parametrize("x_plus", [1, 10, 1e4])
def test_far_flow_is_developed_with_the_known_excess(x_plus):
    # Hagen-Poiseuille 16 plus the incremental pressure drop number 1.25 (Shah and London).
    assert developing_friction(x_plus) == pytest.approx(16 + 0.3125 / x_plus, rel=0.01)


@settings(max_examples=200, deadline=None)
@given(
    velocity=st.floats(0.01, 60),
    d=st.floats(0.002, 0.02),
    ratio=st.floats(0.76, 30),
    more=st.floats(1.001, 2),
    entry=st.floats(0, 1),
)
def test_more_velocity_or_depth_takes_more_pressure(velocity, d, ratio, more, entry):
    base = port_drop_Pa(velocity, d, ratio * d, 1.2, 1.75e-5, entry, roughness_m=1e-4)
    assert 0 < base < port_drop_Pa(velocity * more, d, ratio * d, 1.2, 1.75e-5, entry, roughness_m=1e-4) < 1e6
    assert base < port_drop_Pa(velocity, d, ratio * more * d, 1.2, 1.75e-5, entry, roughness_m=1e-4)


@pytest.mark.parametrize(
    "call,field",
    [
        (lambda: port_K(1000, 0.5), "length_ratio"),
        (lambda: port_K(float("nan"), 5), "reynolds"),
        (lambda: port_K(1000, 5, entry_K=2), "entry_K"),
        (lambda: port_drop_Pa(-1, 0.006, 0.05, 1.2, 2e-5), "velocity_m_s"),
    ],
)
def test_refusals_name_the_argument(call, field):
    with pytest.raises(InputError) as caught:
        call()
    assert caught.value.field == field


class Plain:
    """A mixture of one viscosity, ideal gas of 1.2 kg/m3 at 300 K."""

    def at(self, temp_K):
        return 1.2 * 300 / temp_K, 2e-5, 0.03, 1050.0


def test_hot_port_drop_of_a_port_that_warms_nothing_is_the_cold_one():
    from burnercalc.physics.port_drop import hot_port_drop_Pa

    for velocity in (0.0, 1.0, 6.0, 25.0):
        found = hot_port_drop_Pa(velocity, 0.00635, 0.0635, Plain(), 300.0, 300.0, 300.0)
        assert found == pytest.approx(port_drop_Pa(velocity, 0.00635, 0.0635, 1.2, 2e-5))


def test_hot_port_drop_is_the_momentum_of_the_stream_marched():
    """Entry head at T1, then dp = d(rho V^2) + f/d rho V^2/2 dx step by step while it warms in a straight line."""
    from burnercalc.physics.port_drop import hot_port_drop_Pa

    velocity, diameter, length, cold, enters, leaves = 4.0, 0.005, 0.05, 300.0, 320.0, 500.0
    flux = 1.2 * velocity
    friction = port_K(flux * diameter / 2e-5, length / diameter, 0.5, 1e-5) - 1.5
    steps, drop = 20000, 1.5 * flux**2 / (2 * 1.2 * cold / enters)
    for i in range(steps):
        here = enters + (leaves - enters) * (i + 0.5) / steps
        density = 1.2 * cold / here
        drop += flux**2 * (leaves - enters) / steps / (1.2 * cold)  # d(flux^2/rho)
        drop += friction / steps * flux**2 / (2 * density)
    found = hot_port_drop_Pa(velocity, diameter, length, Plain(), cold, enters, leaves, roughness_m=1e-5 * diameter)
    assert found == pytest.approx(drop, rel=1e-6)
