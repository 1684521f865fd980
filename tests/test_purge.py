"""Air through a cold chamber: figures of a small forge worked out by hand, and the rules' least times."""

import pytest

from burnercalc.errors import InputError
from burnercalc.physics.purge import purge_time_s, stirred_time_s, volumes_time_s

FT3 = 0.3048**3
CFM = FT3 / 60


@pytest.mark.parametrize(
    "volumes, cfm, seconds",
    [(4, 15.8, 3.5), (5, 6.3, 10.9), (1, 16.5, 0.83)],
)
def test_volumes_by_hand(volumes, cfm, seconds):
    """0.229 ft3: 12 by 6 by 5 1/2 in."""
    assert volumes_time_s(0.229 * FT3, cfm * CFM, volumes) == pytest.approx(seconds, abs=0.05)


def test_a_purge_lasts_a_least_time_and_longer_in_proportion():
    """30 s at full air is the rule for what is purged in less; 60 ft3 at 10 cfm, 5 volumes: 30 min."""
    assert purge_time_s(0.229 * FT3, 15.8 * CFM, 5, 30) == 30
    assert purge_time_s(60 * FT3, 10 * CFM, 5, 30) == pytest.approx(1800)
    assert purge_time_s(1.0, 1.0, 5, 5) == 5 and purge_time_s(1.0, 1.0, 5, 0) == 5


@pytest.mark.parametrize("volume, flow, volumes", [(0, 1, 1), (1, 0, 1), (1, 1, 0), (-1, 1, 1), (float("nan"), 1, 1)])
def test_what_cannot_be_is_refused(volume, flow, volumes):
    with pytest.raises(InputError):
        volumes_time_s(volume, flow, volumes)
    with pytest.raises(InputError):
        purge_time_s(1, 1, 5, -1)


@pytest.mark.parametrize("hourly, left, minutes", [(2, 0.01, 138), (6, 0.01, 46), (6, 0.001, 69), (12, 0.001, 35)])
def test_what_is_stirred_clears_as_rooms_are_said_to(hourly, left, minutes):
    """Times to clear a room by air changes an hour: hospital guidelines for infection control of 2003, table B.1
    (memory)."""
    assert stirred_time_s(50.0, 50.0 * hourly / 3600, left) / 60 == pytest.approx(minutes, abs=0.6)


@pytest.mark.parametrize("left", [0, 1, -0.1, float("nan")])
def test_nothing_and_all_that_is_left_are_refused(left):
    with pytest.raises(InputError):
        stirred_time_s(1, 1, left)
