"""The days from the welder to the first fire: steps with dates or day numbers, and the temperatures of drying."""

import datetime

from ..making import days
from ..result import Axis, Chart, Column, Series, Table
from ..units import show

GROUP = "fire"

DRYING = "refractory dry-out practice, data/drying.csv: at most 100 °F an hour and 1 h an inch; waits common practice"
# Day 1 where no date is given; what matters is only the time between the steps.
DAY_ONE = datetime.date(2001, 1, 1)


def solve(d, r):
    first = d.start_date or DAY_ONE
    each = d.batch_size
    hours = {
        "weld": d.hours_weld * each,
        "mould": d.hours_mould,
        "cast": d.hours_cast * each,
        **dict.fromkeys(("strip", "trim", "clear"), d.hours_finish * each / 3),
    }
    drying = dict(
        castable=d.refractory,
        block_thickness_m=d.block_thickness,
        air_temp_K=d.ambient_temperature,
        damp=d.damp_air == "yes",
        working_temp_K=d.chamber_temperature,
    )
    r.steps = days.calendar(start_date=first, hours={step: seconds / 3600 for step, seconds in hours.items()}, **drying)
    r.stages = days.drying_stages(**drying)
    curve = days.drying_curve(stages=r.stages, air_temp_K=d.ambient_temperature)
    inputs = ("refractory", "block_thickness", "ambient_temperature", "damp_air", "batch_size")
    r.answer(
        "days_in_all",
        (r.steps[-1].end.date() - first).days + 1,
        "count",
        "Days to first fire",
        "Calendar days from the first cut to the end of the first fire, waiting included.",
        "steps one after the other, work between 9 and 18 h, waits night and day",
        inputs,
        DRYING,
        "common practice",
    )
    wait = {stage.name: stage.hold_s for stage in r.stages}
    r.answer(
        "strip_after",
        wait["cure"],
        "time",
        "Strip after",
        "Time from casting until the mould may come off.",
        "hold of the class, half as long again below 10 °C or in damp air",
        inputs,
        DRYING,
        "common practice",
    )
    r.answer(
        "air_dry",
        wait["air"],
        "time",
        "Air-dry",
        "Standing open at shop temperature.",
        "the larger of the least hold and hours an inch",
        inputs,
        DRYING,
        "common practice",
    )
    r.answer(
        "warm",
        wait["warm"],
        "time",
        "Gentle warmth",
        "Kept at about 50 °C, before any oven.",
        "the larger of the least hold and hours an inch",
        inputs,
        DRYING,
        "common practice",
    )
    r.answer(
        "oven_hold",
        wait["oven"],
        "time",
        "Oven, hold",
        "Hold at the oven's temperature.",
        "the larger of the least hold and 1 h an inch",
        inputs,
        DRYING,
        "common practice",
    )
    r.answer(
        "oven_temperature",
        next(stage.temp_K for stage in r.stages if stage.name == "oven"),
        "temperature",
        "Oven, temperature",
        "Temperature of the oven stage.",
        "rule of the class",
        ("refractory",),
        DRYING,
        "published",
    )
    r.answer(
        "first_fire_time",
        days.stage_seconds(stages=r.stages, names=("fire", "service"), start_temp_K=d.ambient_temperature),
        "time",
        "First fire, lasts",
        "From lighting to working heat on the first fire, holds included; attended throughout.",
        "rise / ramp + holds of each stage",
        (*inputs, "chamber_temperature"),
        DRYING,
        "common practice",
    )
    _check(d, r)
    r.add_table(_days_table(d, r, first))
    r.add_table(_care_table(r))
    r.add_table(_stage_table(d, r))
    r.charts["drying"] = lambda: _chart(d, r, curve)


def day_text(d, moment):
    """When something starts: a date with its day of the week, or the number of the day."""
    if d.start_date is None:
        return f"day {(moment.date() - DAY_ONE).days + 1}, {moment:%H:%M}"
    return f"{moment:%a %Y-%m-%d, %H:%M}"


def _days_table(d, r, first):
    rows = tuple(
        (
            number,
            step.title,
            day_text(d, step.start),
            (step.end - step.start).total_seconds(),
            step.work_h * 3600,
            step.watch,
            step.go_on,
        )
        for number, step in enumerate(r.steps, 1)
    )
    return Table(
        "days",
        "The days",
        (
            Column("number", "No.", "count"),
            Column("step", "Step", "word"),
            Column("start", "Starts", "word"),
            Column("takes", "Takes", "time"),
            Column("work", "Work in it", "time"),
            Column("watch", "Watch", "word"),
            Column("go_on", "Go on when", "word"),
        ),
        rows,
        DRYING,
    )


def _care_table(r):
    return Table(
        "care",
        "What to do at each step, and what to beware of",
        (
            Column("step", "Step", "word"),
            Column("do", "Do", "word"),
            Column("caution", "Caution", "word"),
            Column("source", "Source", "word"),
        ),
        tuple((step.title, step.do, step.caution, step.source) for step in r.steps),
    )


def _stage_table(d, r):
    rows = tuple(
        (
            stage.name,
            show(stage.ramp_K_s * 3600 * (1.8 if d.units == "in" else 1.0), "ratio", d.units)
            + (" °F/h" if d.units == "in" else " K/h")
            if stage.ramp_K_s
            else "",
            stage.temp_K,
            stage.hold_s,
            stage.source,
        )
        for stage in r.stages
    )
    return Table(
        "drying",
        "Drying and first heat, stage by stage",
        (
            Column("stage", "Stage", "word"),
            Column("ramp", "Up at most", "word"),
            Column("temperature", "To", "temperature"),
            Column("hold", "Hold", "time"),
            Column("source", "Source", "word"),
        ),
        rows,
        DRYING,
    )


def _check(d, r):
    air = show(d.ambient_temperature, "temperature", d.units)
    frost, cold = d.ambient_temperature < days.FREEZE_TEMP_K, d.ambient_temperature < days.COLD_TEMP_K
    damp = d.damp_air == "yes"
    verdict = "stop" if frost else "caution" if cold or damp else "good"
    r.check(
        "curing_air",
        verdict,
        d.ambient_temperature,
        days.COLD_TEMP_K,
        "temperature",
        "Air for curing",
        f"At {air} do not cast: below {show(days.FREEZE_TEMP_K, 'temperature', d.units)} it does not set well, and "
        "frost ruins it while it is green. Bring block and mix indoors."
        if frost
        else f"At {air} it hardens slowly; the waits are stretched."
        if cold
        else "Damp air dries slowly; the waits are stretched."
        if damp
        else f"{air} is warm enough to cure in.",
        DRYING,
        "common practice",
        ((("ambient_temperature", "raise"),) if cold else ()) + ((("damp_air", "choose"),) if damp else ()),
    )


def _chart(d, r, curve):
    times, temps = tuple(point.time_s for point in curve), tuple(point.temp_K for point in curve)
    return Chart(
        "drying",
        "Drying and first fire, temperature over time",
        Axis("time since the start of gentle warmth", "time", 0, times[-1]),
        Axis("temperature", "temperature", min(temps) - 10, max(temps) + 50),
        (Series("temperature", "temperature of the block", times, temps),),
        (),
        f"Gentle warmth, then the oven at {show(r['oven_temperature'], 'temperature', d.units)} for "
        f"{show(r['oven_hold'], 'time', d.units)}, then the first fire in "
        f"{show(r['first_fire_time'], 'time', d.units)}.",
    )
