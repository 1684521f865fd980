"""The batch: all burners on one calendar, what is in its way, and what one more of each thing saves."""

import datetime
from dataclasses import dataclass, replace

from ..catalogue.sentences import Said, said
from ..making import batch as making
from ..making.batch import Means, Plan, Work
from ..making.days import Step, moment, steps_of
from .calendar import Calendar
from .schedule import Schedule
from .shop import Shop


@dataclass(frozen=True)
class Batch:
    """`saves`: days that one more mould, place in the oven, test stand or pair of hands saves, each by itself.

    `steps` are those of burner 1 in the plan.
    """

    burners: int
    work: Work
    means: Means
    first: datetime.date
    plan: Plan
    steps: tuple[Step, ...]
    days: int
    first_days: int
    mould_saves: int
    oven_saves: int
    stand_saves: int
    hands_save: int
    bottleneck: Said

    def ends(self, burner: int) -> dict[str, tuple[int, datetime.datetime]]:
        """When the plan ends each step of a burner: number of the day, and moment."""
        mine = {job.step: job.end for job in self.plan.jobs if burner in job.burners and job.step != "mould"}
        return {step: (end // making.DAY_MIN + 1, moment(self.first, end)) for step, end in mine.items()}


def batch(calendar: Calendar, schedule: Schedule, shop: Shop, refractory: str) -> Batch:
    burners, work, means, found = calendar.burners, calendar.work, calendar.means, calendar.plan
    saves = {which: found.days - making.one_more(burners, work, means, which, 1).days for which in making.LACKS}
    if means.kiln:  # blocks that are fired on their stands leave it free for the next
        on_stand = replace(work, heats=schedule.stand_heats)
        saves["kiln"] = found.days - making.plan(burners, on_stand, replace(means, kiln=False)).days
    most = max(saves, key=lambda which: saves[which])  # of equals the first, which costs least
    return Batch(
        burners=burners,
        work=work,
        means=means,
        first=schedule.first,
        plan=found,
        steps=steps_of(
            1,
            found.jobs,
            start_date=schedule.first,
            work=work,
            castable=refractory,
            air_temp_K=shop.temp_K,
        ),
        days=found.days,
        first_days=found.first_days,
        mould_saves=saves["moulds"],
        oven_saves=saves["oven_places"],
        stand_saves=saves["test_stands"],
        hands_save=saves["hands"],
        bottleneck=said(most, days=saves[most]) if saves[most] > 0 else said("waits"),
    )
