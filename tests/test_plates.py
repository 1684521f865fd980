from math import pi

import fluids
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from burnercalc.errors import InputError
from burnercalc.physics.plates import (
    bent_plate_ratio,
    open_fraction,
    plate_K,
    thick_plate_K,
    thin_plate_K,
    unevenness_left,
)


@pytest.mark.parametrize(
    "f,expected", [(0.2, 51.29), (0.3, 18.53), (0.4, 8.23), (0.5, 4.00), (0.55, 2.82), (0.6, 1.99), (0.7, 0.964)]
)
def test_thin_plate_of_the_printed_table(f, expected):
    assert thin_plate_K(f) == pytest.approx(expected, rel=0.003)  # printed to three digits


@pytest.mark.parametrize("f", [0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6])
def test_thin_plate_agrees_with_the_measured_screens_of_blevins(f):
    assert thin_plate_K(f) == pytest.approx(fluids.square_edge_screen(f), rel=0.11)  # 10.5 % at 0.35


def test_hardly_open_plates_tend_to_the_orifice_and_to_the_short_tube():
    f = 1e-4
    # A sharp orifice passes 0.59 to 0.62 of the ideal flow, a short tube 0.8165 (hydraulics handbooks).
    assert 0.58 < 1 / (thin_plate_K(f) * f**2) ** 0.5 < 0.62
    assert 1 / (thick_plate_K(f, 2.4, friction_darcy=0) * f**2) ** 0.5 == pytest.approx(0.8165, abs=0.001)


def test_thick_plate_is_entry_loss_and_sudden_expansion():
    # Half open, long holes, no friction: (0.5 (1-f) + (1-f)^2) / f^2 = 2.0 in the plainer form of Blevins.
    assert thick_plate_K(0.5, 2.4, friction_darcy=0) == pytest.approx(2.0, rel=0.10)


@settings(max_examples=200, deadline=None)
@given(f=st.floats(0.02, 0.97), t=st.floats(0, 5))
def test_a_more_open_plate_takes_less_and_nothing_jumps(f, t):
    assert 0 < plate_K(f + 0.02, t) < plate_K(f, t) < 1e5
    assert plate_K(f, t) == pytest.approx(plate_K(f, t + 1e-6), rel=1e-4)


@settings(max_examples=100, deadline=None)
@given(f=st.floats(0.05, 0.9))
def test_thickness_between_orifice_and_short_tube_takes_less(f):
    assert plate_K(f, 0.3) > plate_K(f, 0.6) > plate_K(f, 1.0)


@pytest.mark.parametrize("K,left", [(1, 0.36), (2, 0.10), (2.8, 0.00), (4, -0.09)])
def test_unevenness_left_of_the_printed_table(K, left):
    assert unevenness_left(K) == pytest.approx(left, abs=0.0051)


def test_open_fraction_and_bend():
    assert open_fraction(100, 0.005, 0.005) == pytest.approx(pi / 8, rel=1e-12)  # 100 x 19.635 mm2 over 5000 mm2
    assert bent_plate_ratio(0) == 1
    assert bent_plate_ratio(120) == pytest.approx(2, rel=1e-12)  # two leaves at 60 deg: an equilateral roof


@pytest.mark.parametrize(
    "call,field",
    [
        (lambda: open_fraction(1000, 0.01, 0.005), "baffle_holes"),
        (lambda: open_fraction(0, 0.01, 0.005), "baffle_holes"),
        (lambda: open_fraction(10, float("nan"), 0.005), "baffle_holes"),
        (lambda: thin_plate_K(0), "open_fraction"),
        (lambda: plate_K(0.5, float("nan")), "thickness_ratio"),
        (lambda: unevenness_left(float("nan")), "K"),
        (lambda: bent_plate_ratio(180), "baffle_bend_angle"),
    ],
)
def test_refusals_name_the_argument(call, field):
    with pytest.raises(InputError) as caught:
        call()
    assert caught.value.field == field
