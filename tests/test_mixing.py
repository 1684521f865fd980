import pytest
from hypothesis import given
from hypothesis import strategies as st

from burnercalc.errors import InputError
from burnercalc.physics.mixing import mixing_diameters, turbulent_burning_velocity_m_s


def test_mixing_length_counts_diameters_and_elbows():
    # 16.1 in of NPS 1-1/2 (bore 1.610 in) is ten diameters.
    assert mixing_diameters(16.1 * 0.0254, 1.610 * 0.0254) == pytest.approx(10, rel=1e-12)
    assert mixing_diameters(16.1 * 0.0254, 1.610 * 0.0254, elbows=2) == pytest.approx(20, rel=1e-12)


def test_damkoehler_in_its_own_form_and_at_rest():
    # C = 1: S_T = S_L + u'.
    assert turbulent_burning_velocity_m_s(0.4, 6, intensity=0.1, wrinkling=1) == pytest.approx(1.0, rel=1e-12)
    assert turbulent_burning_velocity_m_s(0.4, 0) == 0.4


@pytest.mark.parametrize("velocity", [4, 8, 16, 30])
def test_lies_within_a_factor_of_two_of_the_form_of_klimov(velocity):
    # S_T/S_L = 3.5 (u'/S_L)^0.7 for u' well above S_L: Turns, An Introduction to Combustion, chapter 12 (memory).
    klimov = 0.4 * 3.5 * (0.1 * velocity / 0.4) ** 0.7
    assert 0.5 < turbulent_burning_velocity_m_s(0.4, velocity) / klimov < 2


@given(laminar=st.floats(0.05, 5), velocity=st.floats(0, 100), more=st.floats(1.01, 3))
def test_a_faster_pipe_is_safer_and_a_faster_flame_is_not(laminar, velocity, more):
    def ratio(laminar_m_s, velocity_m_s):
        return velocity_m_s / turbulent_burning_velocity_m_s(laminar_m_s, velocity_m_s)

    assert ratio(laminar, velocity * more) >= ratio(laminar, velocity) >= ratio(laminar * more, velocity)


@pytest.mark.parametrize(
    "call,field",
    [
        (lambda: mixing_diameters(float("nan"), 0.04), "mix_pipe_length"),
        (lambda: mixing_diameters(1, 0), "bore_m"),
        (lambda: turbulent_burning_velocity_m_s(0, 5), "laminar_m_s"),
    ],
)
def test_refusals_name_the_argument(call, field):
    with pytest.raises(InputError) as caught:
        call()
    assert caught.value.field == field
