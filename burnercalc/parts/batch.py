"""The batch: all burners on one calendar, what is in its way, and what one more of each thing saves."""

from dataclasses import dataclass, replace

from ..catalogue.sentences import Said, said
from ..making import batch as making
from ..making.batch import Means, Plan
from .schedule import Schedule


@dataclass(frozen=True)
class Batch:
    """`saves`: days that one more mould, place in the oven, test stand or pair of hands saves, each by itself."""

    burners: int
    means: Means
    plan: Plan
    days: int
    first_days: int
    mould_saves: int
    oven_saves: int
    stand_saves: int
    hands_save: int
    bottleneck: Said


def batch(schedule: Schedule, batch_size: int, moulds: int, oven_places: int, test_stands: int) -> Batch:
    means = replace(schedule.means, moulds=moulds, oven_places=oven_places, test_stands=test_stands)
    found = making.plan(batch_size, schedule.work, means)
    saves = {
        which: found.days - making.one_more(batch_size, schedule.work, means, which).days for which in making.LACKS
    }
    most = max(making.LACKS, key=lambda which: saves[which])  # of equals the first, which costs least
    return Batch(
        burners=batch_size,
        means=means,
        plan=found,
        days=found.days,
        first_days=found.first_days,
        mould_saves=saves["moulds"],
        oven_saves=saves["oven_places"],
        stand_saves=saves["test_stands"],
        hands_save=saves["hands"],
        bottleneck=said(most, days=saves[most]) if saves[most] else said("waits"),
    )
