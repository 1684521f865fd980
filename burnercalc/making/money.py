"""What a burner costs, how many hours it takes, and whether making it pays against buying one."""

import math
from dataclasses import dataclass
from typing import NamedTuple

from ..errors import require

HUNDREDTHS = 2  # places of what a line costs, so that the lines of a list add up to its sum
EVEN = 0.1  # of a bought one's price, by which prices for the same thing differ anyway: common practice


class Item(NamedTuple):
    """Something bought: `need` of `unit` for one burner (`once` True: for the whole batch), sold in packs of `pack` at
    `price`.

    Money is in the user's own currency throughout.
    """

    key: str
    name: str
    need: float
    unit: str
    pack: float
    price: float
    once: bool = False


class CostLine(NamedTuple):
    """used_cost: the share of one burner by what it uses up; packs bought whole for the batch and their cost, in whole
    hundredths as it is paid."""

    key: str
    name: str
    need: float
    unit: str
    packs: int
    used_cost: float
    batch_cost: float


def cost_lines(*, items, batch_size):
    """One CostLine an item, stock bought whole for the batch.

        packs = ceil(need * batch / pack);  used cost = need / pack * price (an item for the whole batch: shared)

    Arguments:
        items        Item records
        batch_size   burners made together, whole number >= 1
    Raises: InputError for batch_size, price_<key>, pack_<key>, need_<key>
    Source: arithmetic
    Checked by: tests/test_making_money.py
    """
    _batch(batch_size)
    lines = []
    for item in items:
        require(0 <= item.price < math.inf, "price_" + item.key, item.price, "must be 0 or more", "0")
        require(0 < item.pack < math.inf, "pack_" + item.key, item.pack, "must be above 0", "1")
        require(0 <= item.need < math.inf, "need_" + item.key, item.need, "must be 0 or more", "0")
        total = item.need * (1 if item.once else batch_size)
        packs = math.ceil(total / item.pack - 1e-9)
        lines.append(
            CostLine(
                item.key,
                item.name,
                item.need,
                item.unit,
                packs,
                total / item.pack * item.price / batch_size,
                round(packs * item.price, HUNDREDTHS),
            )
        )
    return tuple(lines)


def bar_line(*, key, name, plan, price_per_m, batch_size):
    """CostLine of stock bought by the bar, from a CutPlan of the whole batch (whole bars, offcuts paid for).

    Arguments: plan a body.CutPlan of all burners of the batch; price_per_m of a metre [currency/m] >= 0
    Checked by: tests/test_making_money.py
    """
    _batch(batch_size)
    require(0 <= price_per_m < math.inf, "price_" + key, price_per_m, "must be 0 or more", "0")
    used = (plan.used_m + plan.kerf_m) / batch_size
    return CostLine(
        key, name, used, "m", len(plan.bars), used * price_per_m, round(plan.bought_m * price_per_m, HUNDREDTHS)
    )


@dataclass(frozen=True)
class StepHours:
    """Hours of one step: once for the batch (setting up, the mould) and for each burner."""

    key: str
    once_h: float
    each_h: float


def batch_hours(*, steps, batch_size):
    """({step: hours for the batch}, hours for one burner of the batch).

    Arguments: steps StepHours records; batch_size >= 1
    Raises: InputError for batch_size, hours_<key>
    Checked by: tests/test_making_money.py
    """
    _batch(batch_size)
    for step in steps:
        for value in (step.once_h, step.each_h):
            require(0 <= value < math.inf, "hours_" + step.key, f"{value:g} h", "must be 0 or more", "1")
    by_step = {step.key: step.once_h + step.each_h * batch_size for step in steps}
    return by_step, sum(by_step.values()) / batch_size


@dataclass(frozen=True)
class Verdict:
    """Make or buy for one burner of the batch; earned_per_hour is None when no hour is worked.

    `way`: make, buy, or even.
    """

    way: str
    batch_cost: float
    cost_each: float
    used_cost_each: float
    hours_each: float
    saved_each: float
    earned_per_hour: float | None
    cost_with_work_each: float


def way(cost_each, bought_price):
    """make or buy, whichever costs less; even where they differ by no more than EVEN of the bought one's price.

    Arguments: cost_each with the work paid, bought_price [currency]
    Source: common practice
    Checked by: tests/test_making_money.py
    """
    if abs(bought_price - cost_each) <= EVEN * bought_price:
        return "even"
    return "make" if cost_each < bought_price else "buy"


def make_or_buy(*, lines, hours_each, batch_size, bought_price, hour_value):
    """Is it cheaper to make or to buy, stock bought whole and work paid at hour_value.

        saved = bought price - batch cost / n;  earned an hour = saved / hours

    Arguments:
        lines          CostLine records, all of the batch
        hours_each     work for one burner of the batch [h] >= 0
        batch_size     n >= 1
        bought_price   of a bought burner that would do the same [currency] >= 0
        hour_value     what an hour of the maker's work is worth [currency/h] >= 0
    Returns: Verdict
    Raises: InputError for batch_size, hours, bought_price, hour_value
    Source: arithmetic
    Checked by: tests/test_making_money.py (worked example by hand)
    """
    _batch(batch_size)
    for field, value in (("hours", hours_each), ("bought_price", bought_price), ("hour_value", hour_value)):
        require(0 <= value < math.inf, field, value, "must be 0 or more", "0")
    total = sum(line.batch_cost for line in lines)
    each = total / batch_size
    used = sum(line.used_cost for line in lines)
    saved = bought_price - each
    earned = saved / hours_each if hours_each else None
    with_work = each + hours_each * hour_value
    return Verdict(way(with_work, bought_price), total, each, used, hours_each, saved, earned, with_work)


@dataclass(frozen=True)
class AllIn:
    """What a burner that passes costs, line by line [currency]: `failed` is its share of those that do not pass."""

    kept: float
    material: float
    work: float
    failed: float
    overhead: float
    cost: float


def selling_cost(*, material_each, hours_each, hour_value, overhead, scrap, kept_each=0.0):
    """What a burner that passes costs all in, its work paid, those that do not pass paid for by those that do.

        cost = (kept + (material + hours * hour value) / (1 - scrap)) * (1 + overhead)

    Arguments:
        material_each   lost with a burner that does not pass, gas of its fires with it [currency] >= 0
        kept_each       bought for one burner and good for the next when it does not pass [currency] >= 0
        hours_each      work for one burner [h] >= 0; hour_value [currency/h] >= 0
        overhead        on top of both [-] >= 0
        scrap           share of all begun that does not pass [-] 0 <= s < 1
    Returns: AllIn
    Raises: InputError for overhead, scrap_rate, hours, hour_value, material, kept
    Source: arithmetic
    Checked by: tests/test_making_money.py (worked example by hand)
    """
    for field, value in (
        ("material", material_each),
        ("kept", kept_each),
        ("hours", hours_each),
        ("hour_value", hour_value),
    ):
        require(0 <= value < math.inf, field, value, "must be 0 or more", "0")
    require(0 <= overhead < math.inf, "overhead", overhead, "must be 0 or more", "0.15")
    require(0 <= scrap < 1, "scrap_rate", scrap, "must be 0 and below 1", "0.05")
    work = hours_each * hour_value
    passed = (material_each + work) / (1 - scrap)
    return AllIn(
        kept=kept_each,
        material=material_each,
        work=work,
        failed=passed * scrap,
        overhead=(kept_each + passed) * overhead,
        cost=(kept_each + passed) * (1 + overhead),
    )


def _batch(batch_size):
    require(
        batch_size >= 1 and batch_size == int(batch_size),
        "batch_size",
        batch_size,
        "must be a whole number from 1 up",
        "1",
    )
