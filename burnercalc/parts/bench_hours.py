"""The hours of work in a batch of any size, step by step."""

from dataclasses import dataclass

from ..making import money
from ..making.money import StepHours
from .calendar import Calendar


@dataclass(frozen=True)
class BenchHours:
    """`steps`: once for each mould that the calendar makes, and for each burner."""

    steps: tuple[StepHours, ...]
    mould_h: float
    calendar: Calendar

    def of(self, burners: int) -> tuple[dict[str, float], float]:
        """({step: hours for so many}, hours for one of them)."""
        mould = StepHours("mould", self.calendar.moulds_for(burners) * self.mould_h, 0.0)
        first, *rest = self.steps
        return money.batch_hours(steps=(first, mould, *rest), batch_size=burners)


def bench_hours(
    calendar: Calendar, hours_weld: float, hours_mould: float, hours_cast: float, hours_finish: float
) -> BenchHours:
    each = (("weld", hours_weld), ("cast", hours_cast), ("finish", hours_finish))
    return BenchHours(tuple(StepHours(key, 0.0, time_s / 3600) for key, time_s in each), hours_mould / 3600, calendar)
