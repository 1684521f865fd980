"""What a burner costs that is sold: overhead, scrap and the gas of its test, and what more at once saves."""

from dataclasses import dataclass

from ..catalogue.sentences import Said, said
from ..making import money
from .bench_hours import BenchHours
from .cost import Cost
from .fire_test import FireTest
from .gas_price import GasPrice
from .purchases import Purchases

BREAKS = (1, 3, 6, 12)
# What a burner that does not pass leaves good.
KEPT = ("mould", "train", "train_safety", "train_needed", "train_comfort", "blower")


@dataclass(frozen=True)
class Break:
    """So many at once, each of them: what is bought for it, its gas of first and test fire with it, work, cost, price.

    `kept`: of what is bought, what serves the next burner where one does not pass, as the work in the mould does.
    `way`: make, buy, or even, for oneself.
    """

    burners: int
    material: float
    hours: float
    kept: float
    mould_hours: float
    all_in: money.AllIn
    price: float
    way: str

    @property
    def cost(self) -> float:
        return self.all_in.cost


@dataclass(frozen=True)
class Selling:
    """`breaks` in order of size, the batch among them; the rest is of the batch."""

    breaks: tuple[Break, ...]
    mine: Break
    test_gas: float
    worth: Said
    before: Said

    @property
    def cost(self) -> float:
        return self.mine.cost

    @property
    def price(self) -> float:
        return self.mine.price


def selling(
    cost: Cost,
    purchases: Purchases,
    bench_hours: BenchHours,
    fire_test: FireTest,
    gas_price: GasPrice,
    batch_size: int,
    bought_price: float,
    hour_value: float,
    overhead: float,
    scrap_rate: float,
    profit: float,
) -> Selling:
    test_gas = fire_test.gas_kg * gas_price.per_kg

    def of(size: int) -> Break:
        lines = purchases.of(size)
        material = sum(line.batch_cost for line in lines) / size + test_gas
        kept = sum(line.batch_cost for line in lines if line.key in KEPT) / size
        steps, hours = bench_hours.of(size)
        mould_hours = steps["mould"] / size  # a mould serves the next burner too
        all_in = money.selling_cost(
            material_each=material - kept,
            kept_each=kept + mould_hours * hour_value,
            hours_each=hours - mould_hours,
            hour_value=hour_value,
            overhead=overhead,
            scrap=scrap_rate,
        )
        return Break(
            burners=size,
            material=material,
            hours=hours,
            kept=kept,
            mould_hours=mould_hours,
            all_in=all_in,
            price=all_in.cost * (1 + profit),
            way=money.way(material + hours * hour_value, bought_price),
        )

    breaks = {size: of(size) for size in sorted({*BREAKS, batch_size})}
    mine = breaks[batch_size]
    return Selling(
        breaks=tuple(breaks.values()),
        mine=mine,
        test_gas=test_gas,
        worth=_worth(cost.with_work_each, mine.price, bought_price),
        before=said("certified", price=mine.price),
    )


def _worth(with_work: float, price: float, bought: float) -> Said:
    """Kept, and sold. The price to ask is never below what one's own costs, so what sells is made too."""
    return said(
        "make_sell" if price <= bought else f"{money.way(with_work, bought)}_keep",
        own=abs(bought - with_work),
        price=price,
        bought=bought,
        gap=abs(price - bought),
    )
