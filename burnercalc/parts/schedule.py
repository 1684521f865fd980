"""The days of one burner from the welder to the first fire, and the stages of drying."""

import datetime
from dataclasses import dataclass, replace
from math import inf

from ..making import days
from ..making.batch import Means, Work
from ..making.days import Stage, Step
from .own_heat import OwnHeat
from .shop import Shop

# Than the last hold of drying: no way up to work in a kiln, where the steel box scales and softens, nor where the
# lighting card does not lead to low fire.
NO_HOTTER_K = 300.0
# Day 1 where no date is given; what matters is only the time between the steps.
DAY_ONE = datetime.date(2001, 1, 1)


@dataclass(frozen=True)
class Schedule:
    """`dated`: whether the first day is one of the calendar. Times in s, temperatures in K.

    `steps` and `work` are of one burner by itself; `means` has the shop's hands and hours, and one of all else.
    """

    dated: bool
    first: datetime.date
    work: Work
    stand_heats: tuple[int, ...]  # minutes of each heat of a first fire that is made on the stand
    means: Means
    steps: tuple[Step, ...]
    stages: tuple[Stage, ...]
    curve: tuple
    days_in_all: int
    strip_after_s: float
    air_dry_s: float
    warm_s: float
    oven_hold_s: float
    oven_temp_K: float
    first_fire_s: float
    heats: tuple[float, ...]
    in_heats: tuple[tuple[Stage, ...], ...]  # the stages of each heat

    @property
    def first_fire_heats(self) -> int:
        return len(self.heats)

    @property
    def dry_K(self) -> float:
        """Last hold of drying, which a kiln goes up to."""
        return max(stage.temp_K for stage in self.stages if stage.name == "fire")

    @property
    def watched_s(self) -> float:
        """Of the first fire, all heats together."""
        return sum(self.heats)


def schedule(
    start_date: datetime.date | None,
    hours_weld: float,
    hours_mould: float,
    hours_cast: float,
    hours_finish: float,
    hands: int,
    kiln: str,
    day_hours: float,
    work_week: str,
    days_off: tuple[tuple[datetime.date, datetime.date], ...] | None,
    refractory: str,
    block_thickness: float,
    damp_air: str,
    chamber_temperature: float,
    watched_hours: float | str,
    shop: Shop,
    own_heat: OwnHeat,
) -> Schedule:
    first = start_date or DAY_ONE
    working_K = NO_HOTTER_K if own_heat.past_low else chamber_temperature
    hours = {
        "weld": hours_weld,
        "mould": hours_mould,
        "cast": hours_cast,
        **dict.fromkeys(("strip", "trim", "clear"), hours_finish / 3),
    }
    drying = {
        "castable": refractory,
        "block_thickness_m": block_thickness,
        "air_temp_K": shop.temp_K,
        "damp": damp_air == "yes",
        "working_temp_K": NO_HOTTER_K if kiln == "yes" else working_K,
    }
    watched_s = inf if watched_hours == "through" else watched_hours
    means = Means(hands=hands, day_min=round(day_hours / 60), week=int(work_week), weekday=first.weekday())
    off = ((one - first).days + n for one, last in days_off or () for n in range((last - one).days + 1))
    means = replace(means, kiln=kiln == "yes", off=frozenset(day for day in off if day > 0))
    takes = {"hours": {step: seconds / 3600 for step, seconds in hours.items()}, "watched_s": watched_s, **drying}
    steps = days.calendar(start_date=first, means=means, **takes)
    stages = days.drying_stages(**drying)
    if kiln == "yes" or own_heat.past_low:
        stages = tuple(stage for stage in stages if stage.name != "service")
    split = {"stages": stages, "names": days.FIRED, "start_temp_K": shop.temp_K, "watched_s": watched_s}
    heats = days.heats_s(**split)
    hold_s = {stage.name: stage.hold_s for stage in stages}
    return Schedule(
        dated=start_date is not None,
        first=first,
        work=days.work_of_one(**takes),
        stand_heats=days.work_of_one(**takes | {"working_temp_K": working_K}).heats,
        means=means,
        steps=steps,
        stages=stages,
        curve=tuple(days.drying_curve(stages=stages, air_temp_K=shop.temp_K)),
        days_in_all=(steps[-1].end.date() - first).days + 1,
        strip_after_s=hold_s["cure"],
        air_dry_s=hold_s["air"],
        warm_s=hold_s["warm"],
        oven_hold_s=hold_s["oven"],
        oven_temp_K=next(stage.temp_K for stage in stages if stage.name == "oven"),
        first_fire_s=days.stage_seconds(stages=stages, names=days.FIRED, start_temp_K=shop.temp_K),
        heats=heats,
        in_heats=days.heats_of(**split),
    )
