"""The days of the room Fire: waits, first day, and what cold or damp air does to them, through solve()."""

from datetime import date

import pytest

from burnercalc.design import Design
from burnercalc.results import solve


def solved(**texts):
    return solve(Design.from_texts(texts))


def test_common_practice_days():
    # Strip after two to three days, about 16 h of gentle warmth, then 300 degF for 2 to 2 1/2 h, 1 h an inch.
    r = solved(block_thickness="2 3/4 in", grip="3/4 in", chamber_temperature="2300 degF")
    assert 48 <= r["strip_after"] / 3600 <= 72
    assert r["warm"] / 3600 == pytest.approx(17.6)  # 6.4 h an inch, 16 h at 2 1/2 in
    assert r["oven_hold"] / 3600 == pytest.approx(2.75)
    assert r["oven_temperature"] == pytest.approx((300 + 459.67) / 1.8)


def test_dates_follow_the_first_day():
    r = solved(start_date="2026-03-02")
    steps = r.part("schedule").steps
    assert steps[0].start.date() == date(2026, 3, 2)
    assert r["days_in_all"] == (steps[-1].end.date() - date(2026, 3, 2)).days + 1


def test_cold_or_damp_air_takes_half_as_long_again():
    plain, cold, damp = solved(), solved(ambient_temperature="45 degF"), solved(damp_air="yes")
    assert cold["strip_after"] == pytest.approx(1.5 * plain["strip_after"]) == pytest.approx(damp["strip_after"])
    assert [r.checks["curing_air"].verdict for r in (plain, cold, damp)] == ["good", "caution", "caution"]
    assert solved(ambient_temperature="30 degF").checks["curing_air"].verdict == "stop"
