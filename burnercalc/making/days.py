"""The days from the welder to the test fire: steps, what to watch, cautions, drying curve, calendar file."""

import datetime
import math
from dataclasses import dataclass, replace

from ..errors import require
from ..tables import read_table
from .batch import BY_HAND, FREE_MIN, STEPS, Means, Work, plan
from .stock import INCH_M, mm

# Below 50 degF cement hardens slowly and water leaves slowly; 50 degF published as the least for curing, the factor 1.5
# and the same factor for damp air common practice.
COLD_TEMP_K = (50 + 459.67) / 1.8
SLOW_FACTOR = 1.5
FIRED = ("fire", "service")  # stages after the oven
FREEZE_TEMP_K = 278.15  # do not cast below 5 degC: common practice
COOL_K_S = 100 / 1.8 / 3600  # at most 100 degF an hour on the way down (published, refractory dry-out practice)
AGAIN_K_S = 300 / 1.8 / 3600  # a block that is dry so far, on the first heats after that
AGAIN_SOURCE = "common practice"
LEAST_ON_S = 3600.0  # what a heat must get on, or it is not worth a day; at a hold, before it may end there
FIRST_SET_S = 3 * 3600.0  # from casting till a thumb leaves no print, the pins still turn: common practice
TEST_MIN = 60  # of a test fire of which no card is known; they take some 40 to 190, as long as gas is weighed
# Hours of work for one burner, examples to be replaced by the user's own.
WORK_HOURS = {"weld": 3.0, "mould": 1.5, "cast": 1.0, "strip": 0.5, "trim": 0.5, "clear": 0.5}


@dataclass(frozen=True)
class Stage:
    """One stage of drying: go up at ramp_K_s (0 = no ramp) to temp_K, hold for hold_s."""

    name: str
    ramp_K_s: float
    temp_K: float
    hold_s: float
    source: str


def slow_factor(*, air_temp_K, damp=False):
    """How much longer a wait is: 1.5 below 10 degC, 1.5 in damp air where it is to dry, both multiply.

    Source: 50 degF as the least curing temperature published; factors common practice
    Checked by: tests/test_making_days.py
    """
    require(
        233.15 <= air_temp_K <= 333.15, "ambient_temperature", f"{air_temp_K:g} K", "must be -40 to 60 degC", "20 degC"
    )
    return (SLOW_FACTOR if air_temp_K < COLD_TEMP_K else 1.0) * (SLOW_FACTOR if damp else 1.0)


def drying_stages(*, castable, block_thickness_m, air_temp_K=293.15, damp=False, working_temp_K=1500.0):
    """Stages cure, air, warm, oven, fire (one or more), service of a block.

        hold = max(least, hours an inch * thickness in inches);  cure (never for damp), air and warm times slow_factor

    Arguments:
        castable            class name in drying.csv; "own" dries as dense_castable
        block_thickness_m   thickest way the water must go [m] 0 < T <= 0.305
        air_temp_K          of the shop [K]; damp True when washing would not dry there
        working_temp_K      the fire's temperature at the end [K]; at least that of the last hold is reached
    Returns: tuple of Stage
    Raises: InputError for castable, block_thickness, ambient_temperature, chamber_temperature
    Source: drying.csv (published rules and common practice, tagged row by row)
    Checked by: tests/test_making_days.py
    """
    require(
        0 < block_thickness_m <= 0.305,
        "block_thickness",
        mm(block_thickness_m),
        "must be above 0 and up to 305 mm",
        "75 mm",
    )
    require(
        300 <= working_temp_K <= 2300, "chamber_temperature", f"{working_temp_K:g} K", "must be 300 to 2300 K", "1500 K"
    )
    name = "dense_castable" if castable in ("own", "dense_castable_50") else castable
    rows = [row for row in read_table("drying") if row["class"] == name]
    known = sorted({row["class"] for row in read_table("drying")} | {"own", "dense_castable_50"})
    require(bool(rows), "castable", castable, "has no drying rule; known: " + ", ".join(known), "dense_castable")
    slow = slow_factor(air_temp_K=air_temp_K)  # curing wants damp
    dries = slow_factor(air_temp_K=air_temp_K, damp=damp)
    stages, top = [], air_temp_K
    for row in rows:
        hours = max(row["hold_h_least"], row["hold_h_per_in"] * block_thickness_m / INCH_M)
        hours *= {"cure": slow, "air": dries, "warm": dries}.get(row["stage"], 1.0)
        ramp = (row["ramp_F_h"] or 0.0) / 1.8 / 3600
        if row["stage"] == "service":
            temp = max(top, working_temp_K)
        else:
            temp = max(top, (row["temp_F"] + 459.67) / 1.8) if row["temp_F"] is not None else air_temp_K
        top = temp
        stages.append(Stage(row["stage"], ramp, temp, hours * 3600, row["source"]))
    return tuple(stages)


@dataclass(frozen=True)
class Point:
    """One corner of the drying chart."""

    time_s: float
    temp_K: float
    stage: str


def drying_curve(*, stages, air_temp_K=293.15):
    """Corners of the temperature-time line from gentle warmth to the working fire, time from the start of the warmth.

    Between oven and first fire the block cools at 100 degF/h to the shop's temperature.
    Arguments: stages of drying_stages(); air_temp_K the shop [K]
    Returns: tuple of Point, straight lines between them
    Checked by: tests/test_making_days.py
    """
    now, temp = 0.0, air_temp_K
    points = [Point(now, temp, "warm")]

    def go(to, ramp, hold, name):
        nonlocal now, temp
        now, temp = now + abs(to - temp) / ramp, to
        points.append(Point(now, temp, name))
        if hold:
            now += hold
            points.append(Point(now, temp, name))

    for stage in stages:
        if stage.name in ("cure", "air"):
            continue
        go(stage.temp_K, stage.ramp_K_s, stage.hold_s, stage.name)
        if stage.name == "oven":
            go(air_temp_K, COOL_K_S, 0.0, "cool")
    return tuple(points)


def stage_seconds(*, stages, names, start_temp_K):
    """Time for the named stages, one after the other, ramps from start_temp_K [s]."""
    total, temp = 0.0, start_temp_K
    for stage in stages:
        if stage.name in names:
            total += stage.hold_s + ((stage.temp_K - temp) / stage.ramp_K_s if stage.ramp_K_s else 0.0)
            temp = stage.temp_K
    return total


def heats_of(*, stages, names, start_temp_K, watched_s):
    """The heats that the named stages are split into, none longer than somebody watches: of each its own stages.

    A heat ends at a hold: a way up is begun only where it is done, and an hour of its hold with it, before the watch
    ends. The next one begins cold, with a stage "again" at AGAIN_K_S to that hold, for so far the block is dry; then
    what is left of the hold, and on by the stages. Only a way up that no watch is long enough for ends on the way.
    Where the stage "again" alone would fill the watch, the heat before goes on to the end.

    Arguments:
        stages         of drying_stages(); names those that are meant
        start_temp_K   of the shop [K]
        watched_s      how long somebody stands by the fire on one day [s] > 0
    Returns: tuple of tuples of Stage
    Raises: InputError for watched_hours
    Source: at most 300 degF an hour on the first heats of a dried block (common practice)
    Checked by: tests/test_making_days.py
    """
    require(watched_s > 0, "watched_hours", f"{watched_s:g} s", "must be above 0 s", "12 h")
    heats, heat, used, temp = [], [], 0.0, start_temp_K

    def again(to):
        nonlocal heat, used
        if heat:
            heats.append(tuple(heat))
        up = to > start_temp_K
        heat = [Stage("again", AGAIN_K_S, to, 0.0, AGAIN_SOURCE)] if up else []
        used = again_s(to)

    def again_s(to):
        return max(to - start_temp_K, 0.0) / AGAIN_K_S

    def parts(stage, lasts, at):
        """(seconds, temperature at their end): what each heat does of a way up or of a hold."""
        left = lasts
        while left > watched_s - used + 1e-6:
            done = max(watched_s - used, 0.0)
            ends = at(left - done)
            if again_s(ends) + LEAST_ON_S > watched_s:
                break
            if done > 1e-6:
                yield done, ends
            left -= done
            again(ends)
        yield left, at(0.0)

    for stage in (stage for stage in stages if stage.name in names):
        climbs = stage.temp_K > temp and stage.ramp_K_s > 0
        if climbs:
            low, lasts = temp, (stage.temp_K - temp) / stage.ramp_K_s
            settles = lasts + min(stage.hold_s, LEAST_ON_S)
            if used + settles > watched_s + 1e-6 >= again_s(low) + settles:
                again(low)
            for _, ends in parts(stage, lasts, lambda left: stage.temp_K - stage.ramp_K_s * left):
                heat.append(replace(stage, temp_K=ends, hold_s=0.0))
                used += (ends - low) / stage.ramp_K_s
                low = ends
        for held, _ in parts(stage, stage.hold_s, lambda left: stage.temp_K) if stage.hold_s else ():
            heat[-1:] = (
                [replace(heat[-1], hold_s=heat[-1].hold_s + held)]
                if heat and heat[-1].temp_K == stage.temp_K
                else [*heat[-1:], replace(stage, hold_s=held)]
            )
            used += held
        temp = stage.temp_K
    return (*heats, tuple(heat))


def heats_s(*, start_temp_K, **split):
    """How long each of heats_of() lasts [s]; its arguments.

    Checked by: tests/test_making_days.py
    """
    return tuple(
        stage_seconds(stages=heat, names=[stage.name for stage in heat], start_temp_K=start_temp_K)
        for heat in heats_of(start_temp_K=start_temp_K, **split)
    )


@dataclass(frozen=True)
class Step:
    """One step of the work; `spells`: from and to of what it is done in, nights between them left out.

    `notes` say what is special about it: rammed (a plastic, no water), cold, frost.
    """

    key: str
    start: datetime.datetime
    end: datetime.datetime
    work_h: float
    spells: tuple[tuple[datetime.datetime, datetime.datetime], ...]
    notes: tuple[str, ...] = ()


def work_of_one(
    *,
    castable="dense_castable",
    block_thickness_m,
    air_temp_K=293.15,
    damp=False,
    working_temp_K=1500.0,
    hours=None,
    watched_s=math.inf,
    test_min=TEST_MIN,
):
    """What one burner takes by hand and in waits, as batch.Work, in whole minutes, never less than it takes.

    Arguments:
        hours        work hours of one burner (of one mould) by step key; what is missing is taken from WORK_HOURS
        watched_s    how long somebody stands by the fire on one day [s]
        test_min     of the test fire [min]
        the rest     as drying_stages()
    Raises: InputError for hours and as drying_stages()
    Source: drying.csv
    Checked by: tests/test_making_days.py
    """
    work = {**WORK_HOURS, **(hours or {})}
    for key, value in work.items():
        require(key in WORK_HOURS, "hours", key, "is not a step with work; known: " + ", ".join(WORK_HOURS), "weld")
        require(0 <= value <= 60000, "hours_" + key, f"{value:g} h", "must be 0 to 60000 h", f"{WORK_HOURS[key]:g}")
    stages = drying_stages(
        castable=castable,
        block_thickness_m=block_thickness_m,
        air_temp_K=air_temp_K,
        damp=damp,
        working_temp_K=working_temp_K,
    )

    def lasts_s(*names, stages=stages):
        return stage_seconds(stages=stages, names=names, start_temp_K=air_temp_K)

    def dries(stages):
        return tuple(_minutes(lasts_s(*names, stages=stages)) for names in (("air", "warm"), ("warm",)))

    wet = {"castable": castable, "block_thickness_m": block_thickness_m, "working_temp_K": working_temp_K}
    in_damp_air = (0, 0) if damp else dries(drying_stages(air_temp_K=air_temp_K, damp=True, **wet))
    air, warm = dries(stages)
    cools_s = (next(stage.temp_K for stage in stages if stage.name == "oven") - air_temp_K) / COOL_K_S
    first_set = 0 if castable == "phosphate_plastic" else FIRST_SET_S * slow_factor(air_temp_K=air_temp_K)
    return Work(
        **{key: _minutes(value * 3600) for key, value in work.items()},
        cure=_minutes(lasts_s("cure")),
        air=air,
        warm=warm,
        damp=in_damp_air,
        oven=_minutes(lasts_s("oven") + cools_s),
        weigh=_minutes(lasts_s("oven")),
        heats=tuple(
            _minutes(heat) for heat in heats_s(stages=stages, names=FIRED, start_temp_K=air_temp_K, watched_s=watched_s)
        ),
        free=_minutes(first_set),
        test=test_min,
    )


def _minutes(seconds):
    return math.ceil(seconds / 60 - 1e-6)


def moment(start_date, minutes):
    """datetime of so many minutes after the midnight that the first day begins with."""
    return datetime.datetime.combine(start_date, datetime.time()) + datetime.timedelta(minutes=minutes)


def calendar(*, start_date, castable="dense_castable", air_temp_K=293.15, means=None, **more):
    """The steps of one burner by itself, with dates.

    Work lies between 9 h and the end of the shop's day, as batch.plan() has it; waits run day and night. The first fire
    is attended all through, in heats a day each.

    Arguments:
        start_date   datetime.date of the first day
        means        of the shop, batch.Means; its weekday is that of start_date
        the rest     as work_of_one()
    Returns: tuple of Step
    Raises: InputError for start_date, hours and as drying_stages()
    Source: drying.csv; common practice order
    Checked by: tests/test_making_days.py
    """
    require(
        isinstance(start_date, datetime.date) and 1970 <= start_date.year <= 2999,
        "start_date",
        start_date,
        "must be a date from 1970 to 2999",
        "2026-01-05",
    )
    means = means or Means(weekday=start_date.weekday())
    work = work_of_one(castable=castable, air_temp_K=air_temp_K, **more)
    found = plan(1, work, means)
    return steps_of(1, found.jobs, start_date=start_date, work=work, castable=castable, air_temp_K=air_temp_K)


def steps_of(burner, jobs, *, start_date, work, castable="dense_castable", air_temp_K=293.15):
    """The steps of one burner among the jobs of a plan, in order of their start; the mould's is the first made.

    Arguments: burner its number; jobs batch.Job records; the rest as calendar()
    Returns: tuple of Step
    Checked by: tests/test_making_days.py
    """
    steps = []
    for key in (step for step in STEPS if step != "weigh"):  # a part of the oven's
        mine = [job for job in jobs if job.step == key and (1 if key == "mould" else burner) in job.burners]
        if not mine:
            continue
        by_hand = FREE_MIN / 60 if key == "free" else getattr(work, key) / 60 if key in (*BY_HAND, "test") else 0.0
        notes = ("rammed",) if key == "cast" and castable == "phosphate_plastic" else ()
        if key == "cast" and air_temp_K < FREEZE_TEMP_K:
            notes += ("frost",)
        elif key in ("cast", "strip") and air_temp_K < COLD_TEMP_K:
            notes += ("cold",)
        steps.append(
            Step(
                key,
                moment(start_date, mine[0].start),
                moment(start_date, mine[-1].end),
                by_hand,
                tuple((moment(start_date, job.start), moment(start_date, job.end)) for job in mine),
                notes,
            )
        )
    return tuple(sorted(steps, key=lambda step: step.start))


@dataclass(frozen=True)
class Event:
    """What a calendar shows of a step: local times, a title and a text."""

    key: str
    start: datetime.datetime
    end: datetime.datetime
    title: str
    text: str


def calendar_ics(*, events, stamp_utc, uid, name="Burner: from steel to first fire"):
    """Events as an iCalendar text, local times without zone; the same input gives the same text.

    Arguments:
        events      Event, one a step
        stamp_utc   DTSTAMP, "YYYYMMDDTHHMMSSZ"
        uid         what makes the events' ids unique, letters, digits, - and .; the id is <step>-<uid>@burnercalc
    Returns: str with CRLF line ends, lines of at most 75 octets
    Raises: InputError for stamp_utc, uid
    Source: RFC 5545, 3.1 folding, 3.3.11 text, 3.6.1 event, 3.8.7.2 DTSTAMP (published)
    Checked by: tests/test_making_days.py (read back with the library icalendar)
    """
    stamped = (
        len(stamp_utc) == 16
        and stamp_utc[8] == "T"
        and stamp_utc[15] == "Z"
        and (stamp_utc[:8] + stamp_utc[9:15]).isdigit()
    )
    require(stamped, "stamp_utc", stamp_utc, "must read YYYYMMDDTHHMMSSZ", "20260105T090000Z")
    require(
        uid and all(c.isascii() and (c.isalnum() or c in "-.") for c in uid),
        "uid",
        uid,
        "must be letters, digits, - and .",
        "design-1",
    )
    lines = [
        "BEGIN:VCALENDAR",
        "VERSION:2.0",
        "PRODID:-//burnercalc//days//EN",
        "CALSCALE:GREGORIAN",
        "X-WR-CALNAME:" + _escape(name),
    ]
    for event in events:
        lines += [
            "BEGIN:VEVENT",
            f"UID:{event.key}-{uid}@burnercalc",
            "DTSTAMP:" + stamp_utc,
            f"DTSTART:{event.start:%Y%m%dT%H%M%S}",
            f"DTEND:{event.end:%Y%m%dT%H%M%S}",
            "SUMMARY:" + _escape(event.title),
            "DESCRIPTION:" + _escape(event.text),
            "END:VEVENT",
        ]
    lines.append("END:VCALENDAR")
    return "".join(_fold(line) + "\r\n" for line in lines)


def _escape(text):
    for mark, safe in (("\\", "\\\\"), (";", "\\;"), (",", "\\,"), ("\n", "\\n")):
        text = text.replace(mark, safe)
    return text


def _fold(line):
    """Break after 75 octets, never inside a character; the next line starts with a space that counts."""
    out, size = [], 0
    for char in line:
        octets = len(char.encode("utf-8"))
        if size + octets > 75:
            out.append("\r\n ")
            size = 1
        out.append(char)
        size += octets
    return "".join(out)
