"""What a burner costs with stock bought whole, the hours in it, and whether to make or to buy."""

from dataclasses import dataclass
from typing import NamedTuple

from ..catalogue.sentences import Said, said
from ..making import money
from ..making.money import CostLine
from .bench_hours import BenchHours
from .purchases import Purchases
from .train import Part, Train

SAME = 0.01  # of the price of a bought one: a smaller saving is none to tell


class Entry(NamedTuple):
    """One line of the shopping list: a line of the cost, or a part of the train that such a line pays for.

    `price` is of the batch; None where a part is paid for by a sum of one's own.
    """

    line: CostLine
    part: Part | None
    count: int
    price: float | None

    @property
    def key(self) -> str:
        return self.part.key if self.part else self.line.key


@dataclass(frozen=True)
class Cost:
    """Money in the currency of the prices; `lines` and `hours` are of the batch, {step: h}; the rest of one burner."""

    lines: tuple[CostLine, ...]
    hours: dict[str, float]
    batch: float
    each: float
    used_each: float
    work_each_s: float
    earned_per_hour: float | None
    with_work_each: float
    make_or_buy: Said

    def entries(self, train: Train, batch_size: int) -> tuple[Entry, ...]:
        """The shopping list: every line of the cost, the train's part by part."""
        found = []
        for line in self.lines:
            own = line.key == "train"
            if line.key.startswith("train"):
                found += [
                    Entry(line, part, part.count * batch_size, None if own else part.price * batch_size)
                    for part in train.parts
                    # What a fitter lays is on no list.
                    if part.price and (own or line.key == f"train_{part.purpose}")
                ]
            if own or not line.key.startswith("train"):
                # Gas is not sold by the burner: what the batch burns is one thing to buy.
                found.append(Entry(line, None, 1 if line.key == "first_fire" else line.packs, line.batch_cost))
        return tuple(found)


def cost(
    purchases: Purchases, bench_hours: BenchHours, batch_size: int, bought_price: float, hour_value: float
) -> Cost:
    lines = purchases.of(batch_size)
    by_step, hours_each = bench_hours.of(batch_size)
    found = money.make_or_buy(
        lines=lines, hours_each=hours_each, batch_size=batch_size, bought_price=bought_price, hour_value=hour_value
    )
    return Cost(
        lines=lines,
        hours=by_step,
        batch=found.batch_cost,
        each=found.cost_each,
        used_each=found.used_cost_each,
        work_each_s=hours_each * 3600,
        earned_per_hour=found.earned_per_hour,
        with_work_each=found.cost_with_work_each,
        make_or_buy=_said(found, bought_price, hour_value),
    )


def _said(found, bought_price, hour_value):
    if found.way == "even":
        return said("even", with_work=found.cost_with_work_each, bought=bought_price)
    if abs(found.saved_each) < SAME * bought_price and found.way == "buy":
        return said("same", hours=found.hours_each)
    if found.saved_each < 0:
        return said("material", each=found.cost_each, more=-found.saved_each)
    if found.earned_per_hour is None:
        return said("no_work", saved=found.saved_each)
    return said(
        found.way,
        each=found.cost_each,
        saved=found.saved_each,
        bought=bought_price,
        hours=found.hours_each,
        earned=found.earned_per_hour,
        worth=hour_value,
        gap=abs(bought_price - found.cost_with_work_each),
    )
