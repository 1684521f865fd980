from math import nan

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from burnercalc.errors import InputError
from burnercalc.physics.root import false_position, near_root, rising_root


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


@settings(max_examples=200, deadline=None)
@given(power=st.floats(0.3, 4), root=st.floats(1e-3, 1e3), at=st.floats(0, 1), guess=st.floats(0, 1))
def test_secants_find_a_root_from_anywhere_in_the_bracket(power, root, at, guess):
    low, high = root / 10, root * 20
    places = [low + share * (high - low) for share in (at, guess)]
    found = near_root(lambda x: x**power - root**power, *places, low, high, 1e-14)
    assert found == pytest.approx(root, rel=1e-9)


def test_secants_stop_as_near_as_asked_and_say_when_they_do_not():
    tried = []

    def f(x):
        tried.append(x)
        return x**4 - 1

    assert near_root(f, 0.96, 1.01, 0.1, 3, 1e-6) == pytest.approx(1, rel=1e-6)
    assert len(tried) == 4
    kinked = near_root(lambda x: x - 1 if x < 1 else 50 * (x - 1), 0.5, 2, 0, 9, 1e-14)
    assert kinked == pytest.approx(1, rel=1e-9)
    with pytest.raises(InputError):
        near_root(lambda x: nan, 0.5, 2, 0, 9, 1e-14)


def test_a_halving_that_comes_upon_an_old_place_ends_nothing():
    """Flat where it is looked first: half of the bracket is the first place once more."""
    assert near_root(lambda x: min(x - 0.2, 0.1), 0.5, 1.0, 0.0, 9.0, 1e-13) == pytest.approx(0.2, rel=1e-12)


def test_false_position_of_a_line_a_power_and_a_step():
    for gap, low, high, root in (
        (lambda u: 3 * u - 1, 0.0, 5.0, 1 / 3),
        (lambda u: u**3 - 8, 0.0, 9.0, 2.0),
        (lambda u: 1.0 if u > 0.7 else -1.0, 0.0, 1.0, 0.7),
    ):
        assert false_position(gap, (low, gap(low)), (high, gap(high)), 1e-12) == pytest.approx(root, rel=1e-9)
