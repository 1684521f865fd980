"""Bands from crooked ports: limits, geometry by hand, an independent count of covered area."""

import math
import random

import pytest

from burnercalc.errors import InputError
from burnercalc.making import tolerances as tol
from burnercalc.making.circles import shared_m2

GRID = [(0.014 * (i - 2.5), 0.014 * (j - 1)) for i in range(6) for j in range(3)]
BASE = dict(
    ports=GRID,
    port_diameter_m=0.008,
    block_thickness_m=0.07,
    grip_m=0.019,
    wall_m=0.006,
    window_length_m=0.12,
    window_width_m=0.08,
)


def test_perfect_ports_change_nothing():
    got = tol.port_tolerance(tilt_rad=0, position_m=0, **BASE)
    assert got.web_m.low == got.web_drawn_m == pytest.approx(0.006)
    for band in (got.area_ratio, got.flow_ratio):
        assert (band.low, band.value, band.high) == pytest.approx((1, 1, 1))


def test_worst_web_by_hand():
    """6 mm of web, half a millimetre out each, 70 tan(1 deg) = 1.22185 mm of drift each: 2.55629 mm left."""
    got = tol.port_tolerance(tilt_rad=math.radians(1), position_m=0.0005, **BASE)
    assert tol.pin_drift_m(block_thickness_m=0.07, tilt_rad=math.radians(1)) == pytest.approx(0.00122185, abs=1e-8)
    assert 0.00255629 < got.web_m.low <= got.web_m.value <= got.web_m.high < got.web_drawn_m
    assert got.area_ratio.value == pytest.approx(1)  # clear of the lip and of each other: no area is lost
    assert 0.99 < got.flow_ratio.low <= got.flow_ratio.high < 1


def test_the_same_seed_gives_the_same_band_and_another_seed_a_near_one():
    one, same, other = (tol.port_tolerance(tilt_rad=0.02, position_m=0.0005, seed=seed, **BASE) for seed in (1, 1, 7))
    assert one == same and one != other
    assert one.web_m.value == pytest.approx(other.web_m.value, abs=0.0003)


def test_pin_diameter_moves_the_area_both_ways():
    got = tol.port_tolerance(tilt_rad=0, position_m=0, diameter_m=0.0008, **BASE)
    assert got.area_ratio.low < 1 < got.area_ratio.high
    # The mean of (1 + u)**2 for u even in +-0.1 is 1 + 0.01/3.
    assert got.area_ratio.value == pytest.approx(1 + 0.01 / 3, abs=0.01)
    assert 0.006 - 0.0008 < got.web_m.low < got.web_m.high < 0.006


def test_ports_that_touch_lose_the_shared_area():
    tight = {**BASE, "ports": [(x * 0.6, y * 0.6) for x, y in GRID]}  # 8.4 mm apart, 0.4 mm of web
    got = tol.port_tolerance(tilt_rad=0.05, position_m=0.001, **tight)
    assert got.web_m.low < 0 and got.area_ratio.low < 1


def test_covered_area_agrees_with_counting_points():
    rng = random.Random(3)
    for x, y in ((0.02, 0.0), (0.0195, 0.0092), (0.0215, 0.001), (0.03, 0.0)):
        points = 40000
        inside = 0
        for _ in range(points):
            r, q = 0.004 * math.sqrt(rng.random()), 2 * math.pi * rng.random()
            inside += abs(x + r * math.cos(q)) <= 0.021 and abs(y + r * math.sin(q)) <= 0.014
        assert tol._uncovered(x, y, 0.008, 0.021, 0.014) / (math.pi * 0.004**2) == pytest.approx(
            inside / points, abs=0.01
        )


def test_shared_area_of_two_equal_circles_one_radius_apart():
    """Closed form: r**2 * (2*pi/3 - sqrt(3)/2) (any geometry handbook: vesica piscis)."""
    assert shared_m2(1.0, 1.0, 1.0) == pytest.approx(2 * math.pi / 3 - math.sqrt(3) / 2)
    assert shared_m2(1.0, 0.5, 0.1) == pytest.approx(math.pi / 4)


def test_square_entry_loses_half_a_velocity_head():
    """Sharp square entry 0.5, entry along the wall 1.0: Idelchik and Weisbach (memory)."""
    assert tol.inclined_entry_loss(0) == 0.5
    assert tol.inclined_entry_loss(math.pi / 2) == pytest.approx(1.0)


def test_one_port_has_no_neighbour():
    got = tol.port_tolerance(tilt_rad=0.01, position_m=0.0005, **{**BASE, "ports": [(0.0, 0.0)]})
    assert all(math.isfinite(v) for v in (got.web_drawn_m, *got.web_m, *got.area_ratio, *got.flow_ratio))


@pytest.mark.parametrize(
    "change,field",
    [
        (dict(tilt_rad=-0.1), "port_tilt_tolerance"),
        (dict(tilt_rad=float("nan")), "port_tilt_tolerance"),
        (dict(position_m=0.02), "port_position_tolerance"),
        (dict(diameter_m=0.005), "pin_diameter_tolerance"),
        (dict(ports=[]), "ports_per_row"),
    ],
)
def test_names_the_field(change, field):
    with pytest.raises(InputError) as caught:
        tol.port_tolerance(**{**BASE, "tilt_rad": 0.01, "position_m": 0.0005, **change})
    assert caught.value.field == field


def test_round_window_covers_what_leans_over_its_rim():
    free = dict(tilt_rad=0, position_m=0, **{**BASE, "ports": [(0.0, 0.0)], "window_width_m": 0.03})
    assert tol.port_tolerance(round_window=True, **free).area_ratio.low == pytest.approx(1)
    half = {**free, "ports": [(0.0, 0.0), (0.015, 0.0)]}  # the second stands with its centre on the rim
    assert tol.port_tolerance(round_window=True, **half).area_ratio.low == pytest.approx(0.73, abs=0.02)


def test_wild_tolerances_weigh_near_ports_only():
    """An inner port of a square grid has 20 others within 2.5 pitches (4 at 1, 4 at 1.41, 4 at 2, 8 at 2.24), so n
    ports at most 10 n pairs, however far they may stray."""
    grid = [(0.004 * i, 0.004 * j) for i in range(20) for j in range(20)]
    pairs, pitch = tol._neighbours(grid, 1.0)
    assert pitch == pytest.approx(0.004)
    assert 8 * len(grid) < len(pairs) <= 10 * len(grid)
