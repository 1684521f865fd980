"""Radiation through a thick opening against Clausing's table and a solution by rings."""

from math import pi, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from rows import rows

from burnercalc.errors import InputError
from burnercalc.physics.openings import opening_factor, opening_loss_W


def view_factor_equal_discs(depth_to_radius):
    """F = (z - sqrt(z**2 - 4))/2, z = 2 + L**2: C-41 of Howell's catalog; Incropera, table 13.2 (published, recalled).

    Written as 2/(z + sqrt(z**2 - 4)), which does not cancel for a long hole.
    """
    squared = depth_to_radius**2
    return 2 / (2 + squared + depth_to_radius * sqrt(squared + 4))


def ring_factor(deep, count):
    """The same share from radiosities of `count` rings, by repeated sweeps; uses view factors of discs alone."""
    step, area = deep / count, 2 * deep / count  # ring area as a multiple of the disc area
    disc = [view_factor_equal_discs(i * step) for i in range(count + 1)]
    ring = [1 - 2 * (1 - disc[1]) / area] + [(disc[k + 1] - 2 * disc[k] + disc[k - 1]) / area for k in range(1, count)]
    to_mouth = [(disc[i] - disc[i + 1]) / area for i in range(count)]
    glow = [1 - (i + 0.5) / count for i in range(count)]
    for _ in range(4000):
        change = 0.0
        for i in range(count):
            new = (to_mouth[i] + sum(ring[abs(i - j)] * glow[j] for j in range(count) if j != i)) / (1 - ring[0])
            change, glow[i] = max(change, abs(new - glow[i])), new
        if change < 1e-9:
            break
    return disc[count] + sum(area * to_mouth[count - 1 - i] * glow[i] for i in range(count))


@pytest.mark.parametrize("row", rows("openings.csv"), ids=lambda row: f"L={row['depth_to_radius']:g}")
def test_agrees_with_clausing(row):
    assert opening_factor(row["depth_to_radius"]) == pytest.approx(row["factor"], abs=6e-5)


@pytest.mark.parametrize("deep", [0.3, 1.0, 3.0])
def test_agrees_with_rings(deep):
    # The error of rings falls with the square of their size, so two counts give the limit.
    limit = (4 * ring_factor(deep, 40) - ring_factor(deep, 20)) / 3
    assert opening_factor(deep) == pytest.approx(limit, abs=2e-5)


def test_disc_to_disc():
    # Closed form with square roots: L = 1 -> (3 - sqrt 5)/2, L = 2 -> 3 - sqrt 8; Incropera figure 13.5 reads 0.17.
    assert view_factor_equal_discs(1) == pytest.approx(0.381966, abs=1e-6)
    assert view_factor_equal_discs(2) == pytest.approx(0.171573, abs=1e-6)
    assert view_factor_equal_discs(1000) == pytest.approx(1e-6, rel=1e-5)  # small far disc: r**2 / distance**2


def test_thin_wall_lets_all_through():
    assert opening_factor(0) == 1
    assert opening_factor(0.01 - 1e-12) == pytest.approx(opening_factor(0.01), abs=1e-6)


@settings(max_examples=100, deadline=None)
@given(deep=st.floats(0, 49), more=st.floats(1e-3, 1))
def test_lies_between_direct_and_one_zone_and_falls_with_depth(deep, more):
    direct, got = view_factor_equal_discs(deep), opening_factor(deep)
    assert direct - 1e-9 <= got <= (1 + direct) / 2 + 2e-4 and got > opening_factor(deep + more)


def test_loss_of_a_hole_as_deep_as_wide():
    # By hand: 0.5142 x 5.670374e-8 x (1573.15**4 - 294.15**4) x pi/4 x 0.1**2 = 1401 W
    got = opening_loss_W(area_m2=pi / 4 * 0.1**2, depth_m=0.1, chamber_temp_K=1573.15, ambient_temp_K=294.15)
    assert got == pytest.approx(1401, rel=1e-3)
    assert opening_loss_W(area_m2=0, depth_m=0.1, chamber_temp_K=1573.15, ambient_temp_K=294.15) == 0


@pytest.mark.parametrize(
    "field, area, depth", [("opening_area", -1, 0), ("opening_area", float("nan"), 0), ("opening_depth", 0.01, -0.1)]
)
def test_names_the_field(field, area, depth):
    with pytest.raises(InputError) as caught:
        opening_loss_W(area_m2=area, depth_m=depth, chamber_temp_K=1500, ambient_temp_K=293)
    assert caught.value.field == field
