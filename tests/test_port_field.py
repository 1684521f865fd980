"""Where the ports sit: closed forms of windows, edges and the step from port to port."""

from math import hypot, pi

import pytest

from burnercalc.physics import port_field


def test_rounded_corner_can_be_nearer_than_the_sides():
    # A port that touches both sides of a square corner with margin m: to a corner of radius R its edge is
    # R - hypot(R - m - d/2, R - m - d/2) - d/2; by hand for m = 0, d = 10 mm, R = 20 mm: 20 - 15 sqrt(2) - 5.
    edge = port_field.least_edge_m([(0.045, 0.045)], 0.010, 0.1, 0.1, 0.020)
    assert edge == pytest.approx((20 - 15 * 2**0.5 - 5) / 1000, abs=1e-12)


def test_window_area_is_that_of_a_circle_when_the_corners_meet():
    assert port_field.rounded_rectangle_area_m2(0.1, 0.1, 0.05) == pytest.approx(pi * 0.05**2)


def test_rings_are_regular_polygons_round_the_middle_port():
    """A window of 100 mm, ports of 10, margin 5: rings of radius 20 and 40, 6 and 12 ports, the first on top and on
    clockwise; neighbours stand the side of the polygon apart, 2 r sin(pi/n)."""
    middle, *rings = port_field.port_rows("rings", 0.1, 0.1, 0.005, 0.01, 2, 12, round_window=True)
    assert middle == [(0.0, 0.0)] and [len(ring) for ring in rings] == [6, 12]
    for ring, radius, side in zip(rings, (0.02, 0.04), (0.02, 0.0207055)):
        assert ring[0] == pytest.approx((0.0, radius)) and ring[1][0] > 0
        assert [hypot(x, y) for x, y in ring] == pytest.approx([radius] * len(ring))
        steps = [hypot(x2 - x1, y2 - y1) for (x1, y1), (x2, y2) in zip(ring, [*ring[1:], ring[0]])]
        assert steps == pytest.approx([side] * len(ring), rel=1e-5)
    assert port_field.pitches_m("rings", 0.1, 0.1, 0.005, 0.01, 2, 12) == pytest.approx((0.0207055, 0.02), rel=1e-5)


@pytest.mark.parametrize(
    "pattern, along, across, step",
    [
        ("straight", 0.03, 0.02, 0.03),  # along a row first, then from row to row
        ("straight", 0.02, 0.03, 0.03),
        ("rings", 0.03, 0.02, 0.03),
        ("staggered", 0.06, 0.04, 0.05),  # a triangle of 3, 4 and 5: over half a pitch
        ("hexagonal", 0.06, 0.04, 0.05),
        ("staggered", 0.03, None, 0.03),
        ("straight", None, 0.02, 0.02),
        ("straight", None, None, None),
    ],
)
def test_chain_pitch_is_the_longest_step_that_a_flame_must_take(pattern, along, across, step):
    found = port_field.chain_pitch_m(pattern, along, across)
    assert found == (None if step is None else pytest.approx(step, abs=1e-12))


def chained(ports, step):
    """Whether all ports are reached from the first by steps no longer than that."""
    reached, left = {ports[0]}, set(ports[1:])
    while near := {port for port in left if any(hypot(port[0] - x, port[1] - y) <= step for x, y in reached)}:
        reached |= near
        left -= near
    return not left


@pytest.mark.parametrize("pattern", ["straight", "staggered", "hexagonal"])
def test_chain_pitch_reaches_every_port_of_a_field_and_less_does_not(pattern):
    field = (pattern, 0.2, 0.07, 0.006, 0.006, 3, 6)
    ports = [port for row in port_field.port_rows(*field) for port in row]
    step = port_field.chain_pitch_m(pattern, *port_field.pitches_m(*field))
    assert chained(ports, step * 1.0001) and not chained(ports, step * 0.9999)
