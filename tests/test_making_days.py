"""Hold times by rule and by common practice, the calendar's order, and the .ics read back with icalendar."""

import dataclasses
import datetime
from itertools import pairwise, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from icalendar import Calendar

from burnercalc.errors import InputError
from burnercalc.making import days
from burnercalc.making.batch import Means, plan

IN, H = 0.0254, 3600
MONDAY = datetime.date(2026, 3, 2)


def f_to_k(f):
    return (f + 459.67) / 1.8


def stages(thick_in, castable="dense_castable", **more):
    found = days.drying_stages(castable=castable, block_thickness_m=thick_in * IN, **more)
    return {s.name: s for s in found}, found


@pytest.mark.parametrize("thick_in", [2.0, 2.25, 2.5])
def test_common_practice_warmth_and_oven(thick_in):
    """About 16 h of gentle warmth, then 300 degF for 2 to 2 1/2 h."""
    by, _ = stages(thick_in)
    assert by["warm"].hold_s == pytest.approx(16 * H)
    assert by["oven"].temp_K == pytest.approx(f_to_k(300)) and 2 * H <= by["oven"].hold_s <= 2.5 * H + 1


@pytest.mark.parametrize("air_C,damp", [(20, False), (5, False), (20, True)])
def test_common_practice_strip_after_two_to_three_days(air_C, damp):
    by, _ = stages(2.5, air_temp_K=273.15 + air_C, damp=damp)
    assert 48 * H <= by["cure"].hold_s <= 72 * H


def test_published_hold_of_one_hour_an_inch():
    """Conventional castable: 1 h an inch at 300 to 400 and at 1000 degF, at most 100 degF/h between (reference.md
    7.2)."""
    _, found = stages(3.0)
    holds = {round(s.temp_K * 1.8 - 459.67): s.hold_s / H for s in found if s.name in ("oven", "fire")}
    assert holds == pytest.approx({300: 3, 600: 3, 1000: 3})
    assert sum(holds.values()) == pytest.approx(9)  # reference.md: 3 in block, 9 h of holds
    assert all(0 < s.ramp_K_s * 1.8 * H <= 100 + 1e-9 for s in found if s.name in ("warm", "oven", "fire"))


def test_plastic_follows_its_published_schedule():
    """225 degF 24 h, 25 degF/h to 600 and 12 h, 50 degF/h to 1200 and 12 h (reference.md 7.2)."""
    _, found = stages(3.0, "phosphate_plastic")
    got = [
        (round(s.temp_K * 1.8 - 459.67), round(s.ramp_K_s * 1.8 * H), s.hold_s / H)
        for s in found
        if s.name in ("oven", "fire")
    ]
    assert got == [(225, 25, 24), (600, 25, 12), (1200, 50, 12)]


def test_cold_and_damp_slow_the_waits_not_the_oven():
    warm, _ = stages(2.5)
    cold, _ = stages(2.5, air_temp_K=278.15, damp=True)
    assert cold["cure"].hold_s == pytest.approx(1.5 * warm["cure"].hold_s)  # damp air cures as well
    for name in ("air", "warm"):
        assert cold[name].hold_s == pytest.approx(2.25 * warm[name].hold_s)
    assert cold["oven"].hold_s == warm["oven"].hold_s
    assert days.slow_factor(air_temp_K=283.16) == 1 and days.slow_factor(air_temp_K=283.1) == 1.5


@settings(max_examples=60, deadline=None)
@given(
    st.sampled_from(["dense_castable", "dense_castable_50", "insulating_castable", "phosphate_plastic", "own"]),
    st.floats(0.01, 0.3),
    st.floats(250, 330),
    st.booleans(),
    st.floats(300, 2300),
)
def test_curve_runs_forward_at_no_more_than_the_stated_ramps(castable, thick, air, damp, work):
    found = days.drying_stages(
        castable=castable, block_thickness_m=thick, air_temp_K=air, damp=damp, working_temp_K=work
    )
    points = days.drying_curve(stages=found, air_temp_K=air)
    steepest = max(max(s.ramp_K_s for s in found), days.COOL_K_S)
    assert points[0].time_s == 0 and points[0].temp_K == air
    for a, b in pairwise(points):
        assert b.time_s >= a.time_s
        assert abs(b.temp_K - a.temp_K) <= steepest * (b.time_s - a.time_s) * (1 + 1e-6) + 1e-6
    assert points[-1].temp_K == pytest.approx(max(work, found[-2].temp_K))


def test_thicker_blocks_never_dry_faster():
    lengths = [days.drying_curve(stages=stages(t)[1])[-1].time_s for t in (1, 2, 3, 4, 6)]
    assert lengths == sorted(lengths) and lengths[0] < lengths[-1]


def test_calendar_by_hand():
    """Monday: weld 9 to 12, mould to 13:30, cast to 14:30, pins freed 3 h later; strip and trim from Wednesday 14:30;
    24 + about 18 h to dry."""
    steps = {s.key: s for s in days.calendar(start_date=MONDAY, block_thickness_m=2.5 * IN)}
    assert list(steps) == ["weld", "mould", "cast", "free", "strip", "trim", "air", "clear", "oven", "fire", "test"]
    assert steps["cast"].end == datetime.datetime(2026, 3, 2, 14, 30)
    assert steps["free"].start == datetime.datetime(2026, 3, 2, 17, 30)
    assert steps["strip"].start == datetime.datetime(2026, 3, 4, 14, 30)
    # 24 h of air, 52 degF up at 25 degF/h from 68 degF = 2.08 h, 16 h of warmth, from 15:30.
    assert steps["air"].end == datetime.datetime(2026, 3, 6, 9, 35)
    assert steps["clear"].start == steps["air"].end
    assert steps["fire"].start.hour == 9
    # The fire in one go ends in the night or on the next day: the test is on the first morning after that.
    over = steps["fire"].end
    assert steps["test"].start.hour == 9 and 0 <= (steps["test"].start - over).total_seconds() < 86400
    assert (steps["test"].end - steps["test"].start).total_seconds() == 3600  # where no card is known


def test_the_steps_of_a_burner_are_its_own_jobs():
    """Of two burners the second has its own spells; the mould is the first made, and what is first comes first."""
    work = days.work_of_one(block_thickness_m=2.5 * IN)
    found = plan(2, work, Means())
    second = {s.key: s for s in days.steps_of(2, found.jobs, start_date=MONDAY, work=work)}
    for job in found.jobs:
        if 2 in job.burners and job.step not in ("mould", "weigh"):
            assert (days.moment(MONDAY, job.start), days.moment(MONDAY, job.end)) in second[job.step].spells
    first = days.steps_of(1, found.jobs, start_date=MONDAY, work=work)
    assert [s.start for s in first] == sorted(s.start for s in first)
    first = {s.key: s for s in first}
    assert second["mould"] == first["mould"] and second["cast"].start > first["free"].end


def test_calendar_never_overlaps_and_keeps_working_hours():
    for thick in (1, 2.5, 6):
        for hours in (None, {"weld": 30.0, "cast": 7.5}):
            steps = days.calendar(start_date=MONDAY, block_thickness_m=thick * IN, hours=hours)
            for a, b in pairwise(s for s in steps if s.key != "free"):
                assert b.start >= a.end + datetime.timedelta(hours=48 if b.key == "strip" else 0)
            for s in steps:
                assert s.key == "air" or (s.key == "free" and hours) or 9 <= s.start.hour < 18


def test_steps_are_noted_when_they_need_other_words():
    """Below 5 degC no casting, below 10 degC slow; a plastic is rammed, without water."""

    def notes(key, **more):
        found = days.calendar(start_date=MONDAY, block_thickness_m=0.06, **more)
        return next(step.notes for step in found if step.key == key)

    assert notes("cast", air_temp_K=274) == ("frost",) and notes("cast", air_temp_K=280) == ("cold",)
    assert notes("cast", air_temp_K=293) == notes("strip", air_temp_K=274)[1:] == ()
    assert notes("strip", air_temp_K=274) == notes("strip", air_temp_K=280) == ("cold",)
    assert notes("cast", castable="phosphate_plastic") == ("rammed",)
    assert notes("fire", air_temp_K=274) == ()


def test_ics_reads_back_equal_with_icalendar():
    steps = days.calendar(start_date=MONDAY, block_thickness_m=2.5 * IN)
    title = "Block; first, \u00e4\u00f6\u00fc \\ " + "\u00e4" * 60
    words = "Do; this,\nand that \\ " + "\u00e4" * 60
    events_in = [days.Event(step.key, step.start, step.end, title, words) for step in steps]
    make = dict(events=events_in, stamp_utc="20260301T120000Z", uid="design-1")
    text = days.calendar_ics(**make)
    assert text == days.calendar_ics(**make)
    assert all(len(line) <= 75 for line in text.encode().split(b"\r\n")) and "\n" not in text.replace("\r\n", "")
    read = Calendar.from_ical(text)
    events = read.walk("VEVENT")
    assert len(events) == len(steps) and len({str(e["UID"]) for e in events}) == len(steps)
    for event, step in zip(events, steps):
        assert event.decoded("DTSTART") == step.start and event.decoded("DTEND") == step.end
        assert event.decoded("DTSTAMP") == datetime.datetime(2026, 3, 1, 12, tzinfo=datetime.UTC)
        assert str(event["SUMMARY"]) == title and str(event["DESCRIPTION"]) == words and not event.errors


@pytest.mark.parametrize(
    "change,field",
    [
        (dict(block_thickness_m=0), "block_thickness"),
        (dict(block_thickness_m=float("nan")), "block_thickness"),
        (dict(castable="clay"), "castable"),
        (dict(air_temp_K=0), "ambient_temperature"),
        (dict(working_temp_K=9e9), "chamber_temperature"),
        (dict(hours={"paint": 1}), "hours"),
        (dict(hours={"weld": -1}), "hours_weld"),
        (dict(start_date="Monday"), "start_date"),
    ],
)
def test_names_the_field(change, field):
    with pytest.raises(InputError) as caught:
        days.calendar(**{"start_date": MONDAY, "block_thickness_m": 0.06, **change})
    assert caught.value.field == field


def test_ics_refuses_a_bad_stamp():
    for more, field in (
        (dict(stamp_utc="2026-03-01", uid="a"), "stamp_utc"),
        (dict(stamp_utc="20260301T120000Z", uid="a b"), "uid"),
    ):
        with pytest.raises(InputError) as caught:
            days.calendar_ics(events=(), **more)
        assert caught.value.field == field


def test_time_of_stages_by_hand():
    """100 K at 100 K/h, held 1 h, then 100 K at 50 K/h, held 2 h: 6 h. The second alone, from 20 degC: 4 + 2 h."""
    _, found = stages(2.5)
    one, two = (
        dataclasses.replace(found[0], name=name, ramp_K_s=ramp / H, temp_K=temp, hold_s=hold * H)
        for name, ramp, temp, hold in (("a", 100, 393.15, 1), ("b", 50, 493.15, 2))
    )
    assert days.stage_seconds(stages=[one, two], names=("a", "b"), start_temp_K=293.15) == pytest.approx(6 * H)
    assert days.stage_seconds(stages=[one, two], names=("b",), start_temp_K=293.15) == pytest.approx(6 * H)


def _legs(*legs):
    """Stages from 0 degC: (ramp K/h, to degC, hold h)."""
    _, found = stages(2.5)
    return [
        dataclasses.replace(found[0], name="fire", ramp_K_s=ramp / H, temp_K=273.15 + to, hold_s=hold * H)
        for ramp, to, hold in legs
    ]


def heats(watched_h, *legs):
    found = days.heats_s(stages=_legs(*legs), names=("fire",), start_temp_K=273.15, watched_s=watched_h * H)
    return [heat / H for heat in found]


def test_heats_end_with_the_watch_and_go_on_where_they_ended():
    """50 K/h to 500 and 2 h there: 12 h. Watched for 8 the way up is too long for any heat: 400 K; then up at 166.7 K/h
    in 2.4 h, 2 h to 500, 2 h."""
    assert heats(12, (50, 500, 2)) == pytest.approx([12]) and heats(99, (50, 500, 2)) == pytest.approx([12])
    assert heats(8, (50, 500, 2)) == pytest.approx([8, 2.4 + 2 + 2])
    # Cut in the hold: 10 h up, 1 h held; 3 h up again, 1 h held.
    assert heats(11, (50, 500, 2)) == pytest.approx([11, 3 + 1])
    # Half an hour is left after the hold, the next way up takes one: it is the next day's, behind 3 h up again.
    assert heats(12.5, (50, 500, 2), (100, 600, 0)) == pytest.approx([12, 3 + 1])
    # Three of four hours fit, but no hour of the hold behind it: not begun either; with an hour more it is.
    assert heats(16.4, (50, 500, 2), (25, 600, 5)) == pytest.approx([12, 3 + 4 + 5])
    assert heats(17, (50, 500, 2), (25, 600, 5)) == pytest.approx([12 + 4 + 1, 3.6 + 4])


def test_no_heat_ends_in_a_climb_that_a_day_is_long_enough_for():
    """Each heat begins with the way up again to where the last ended, and that is the temperature of a stage."""
    for thick, castable in product((1.5, 2.5, 4, 6), ("dense_castable", "insulating_castable", "phosphate_plastic")):
        found = days.drying_stages(castable=castable, block_thickness_m=thick * IN)
        split = {"stages": found, "names": days.FIRED, "start_temp_K": 293.15, "watched_s": 16 * H}
        parts, whole = days.heats_of(**split), [stage for stage in found if stage.name in days.FIRED]
        long = castable == "phosphate_plastic"  # 25 degF an hour from 225 to 600: on the way in any heat
        for before, heat in pairwise(parts):
            assert heat[0].name == "again" and heat[0].temp_K == before[-1].temp_K
            assert long or before[-1].temp_K in [stage.temp_K for stage in whole]
        for stage in whole:  # all of it is done
            mine = [part for heat in parts for part in heat if part.temp_K == stage.temp_K]
            assert sum(part.hold_s for part in mine) == pytest.approx(stage.hold_s)
        assert all(heat <= 16 * H + 1e-6 for heat in days.heats_s(**split))


def test_a_heat_that_would_not_get_on_goes_to_the_end():
    """1000 K up again takes 6 h: with 6.5 h watched a day would bring half an hour only, so that day is longer."""
    assert heats(6.5, (500, 1000, 8)) == pytest.approx([10])
    assert sum(heats(7.1, (500, 1000, 8))) > 10 and max(heats(7.1, (500, 1000, 8))) <= 7.1 + 1e-9


def test_the_calendar_gives_each_heat_its_day():
    take = dict(start_date=MONDAY, block_thickness_m=2.5 * IN)
    one = {s.key: s for s in days.calendar(**take)}["fire"]
    split = {s.key: s for s in days.calendar(**take, watched_s=12 * H)}["fire"]
    found = days.heats_s(
        stages=days.drying_stages(castable="dense_castable", block_thickness_m=2.5 * IN),
        names=days.FIRED, start_temp_K=293.15, watched_s=12 * H,
    )  # fmt: skip
    assert split.start == one.start and len(found) == 3
    assert (split.end - split.start).total_seconds() == pytest.approx(2 * 86400 + found[-1], abs=60)


def test_work_of_one_by_hand():
    """48 h to cure; 24 h of air, 20 to 48.9 degC at 25 degF/h: 2.08 h, 16 h of warmth; oven 232 degF at 75 an hour, 2
    1/2 h, and down at 100: 3.093 + 2.5 + 2.32 h; half an hour to strip."""
    found = days.work_of_one(block_thickness_m=2.5 * IN, hours={"weld": 0.99 / 60})
    assert (found.weld, found.strip, found.cure) == (1, 30, 2880)
    assert found.air == pytest.approx((24 + 52 / 25 + 16) * 60, abs=1)
    assert found.oven == pytest.approx((232 / 75 + 2.5 + 2.32) * 60, abs=1)
    assert len(found.heats) == 1 and days.moment(MONDAY, 1441).isoformat() == "2026-03-03T00:01:00"


def test_each_heat_says_its_own_rates():
    """As above, watched for 11: up and an hour of the hold; up again at 300 degF an hour, the other hour, and on."""
    found = days.heats_of(
        stages=_legs((50, 500, 2), (100, 600, 0)), names=("fire",), start_temp_K=273.15, watched_s=11 * H
    )
    told = [[(s.name, round(s.ramp_K_s * H, 1), s.temp_K - 273.15, s.hold_s / H) for s in heat] for heat in found]
    assert told == [[("fire", 50, 500, 1)], [("again", 166.7, 500, 1), ("fire", 100, 600, 0)]]
    assert days.heats_of(stages=_legs((50, 500, 2)), names=(), start_temp_K=273.15, watched_s=H) == ((),)


def test_an_oven_charge_is_weighed_at_the_end_of_its_hold():
    """From 68 to 300 degF at 75 an hour and 2 1/2 h: 5.59 h, then 232 degF down at 100 an hour. Twice the water, 232
    degF at 50 and 5 h: 9.64 h. A plastic, 157 degF at 25 and 24 h: 30.28 h."""
    for castable, hours in (
        ("dense_castable", 232 / 75 + 2.5),
        ("insulating_castable", 232 / 50 + 5),
        ("phosphate_plastic", 157 / 25 + 24),
    ):
        work = days.work_of_one(castable=castable, block_thickness_m=2.5 * IN)
        assert work.weigh == pytest.approx(60 * hours, abs=1)
    assert days.work_of_one(block_thickness_m=2.5 * IN).oven == pytest.approx(60 * (232 / 75 + 2.5 + 2.32), abs=1)


def test_nobody_watches_for_no_time():
    with pytest.raises(InputError) as caught:
        heats(0, (50, 500, 2))
    assert caught.value.field == "watched_hours"
