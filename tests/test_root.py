import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from burnercalc.physics.root import rising_root


@settings(max_examples=200, deadline=None)
@given(power=st.floats(0.2, 3), scale=st.floats(1e-6, 1e6), target=st.floats(1e-6, 1e6), guess=st.floats(1e-3, 1e3))
def test_power_laws(power, scale, target, guess):
    assert rising_root(lambda x: scale * x**power, target, guess) == pytest.approx(
        (target / scale) ** (1 / power), rel=1e-9
    )


def test_a_kink_and_a_flat_start():
    assert rising_root(lambda x: max(x - 1, 0) + 100 * max(x - 2, 0), 51, 0.1) == pytest.approx(2 + 50 / 101, rel=1e-9)


def test_says_when_there_is_none():
    assert rising_root(lambda x: x / (1 + x), 2, 1.0) is None
    assert rising_root(lambda x: 1 + x, 0.5, 1.0) is None
