"""The calendar of the batch, and the moulds that it makes for one of any size."""

from dataclasses import dataclass, replace

from ..making import batch as making
from ..making.batch import Means, Plan, Work
from .fire_test import FireTest
from .schedule import Schedule


@dataclass(frozen=True)
class Calendar:
    burners: int
    work: Work
    means: Means

    @property
    def plan(self) -> Plan:
        return making.plan(self.burners, self.work, self.means)

    @property
    def moulds(self) -> int:
        """Those that are made: fewer than there may be where one more saves no day."""
        return self.moulds_for(self.burners)

    def moulds_for(self, burners: int) -> int:
        """Those that a batch of so many makes, as its calendar has it; of one that nobody asked for, those of the batch
        that is, of a larger one about as many as it takes."""
        if min(burners, self.means.moulds) == 1:
            return 1
        mine = self.plan.moulds
        if burners <= self.burners:
            return min(burners, mine)
        return max(mine, making.moulds_for(burners, self.work, self.means))


def calendar(
    schedule: Schedule, fire_test: FireTest, batch_size: int, moulds: int, oven_places: int, test_stands: int
) -> Calendar:
    means = replace(schedule.means, moulds=moulds, oven_places=oven_places, test_stands=test_stands)
    return Calendar(batch_size, replace(schedule.work, test=fire_test.minutes), means)
