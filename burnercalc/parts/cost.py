"""What a burner costs with stock bought whole, the hours in it, and whether to make or to buy."""

from dataclasses import dataclass, replace

from ..catalogue.sentences import Said, said
from ..making import body as making
from ..making import money
from ..making.money import CostLine, Item, StepHours
from ..making.stock import plate_mass_kg
from .baffle_sheet import BaffleSheet
from .block import Block
from .blower import Blower
from .body import Body
from .pins import Pins
from .schedule import Schedule
from .steel import Steel
from .stock import bars
from .train import Part, Train


@dataclass(frozen=True)
class Cost:
    """Money in the currency of the prices; `lines` and `hours` are of the batch, {step: h}; the rest of one burner.

    `items` are what is bought besides bars and nipples, whatever the size of the batch; the gas of the first fire too,
    which a bought burner does not need.
    """

    items: tuple[Item, ...]
    lines: tuple[CostLine, ...]
    hours: dict[str, float]
    batch: float
    each: float
    used_each: float
    work_each_s: float
    earned_per_hour: float | None
    with_work_each: float
    make_or_buy: Said


def cost(
    body: Body,
    steel: Steel,
    baffle_sheet: BaffleSheet,
    block: Block,
    pins: Pins,
    train: Train,
    blower: Blower,
    schedule: Schedule,
    inlet: str,
    baffle_thickness: float,
    stock_lengths: tuple[float, ...],
    nipple_stock: tuple[tuple[float, float], ...],
    kerf: float,
    bag_mass: float,
    batch_size: int,
    moulds: int,
    price_steel: float,
    price_bag: float,
    price_pins: float,
    price_mould: float,
    price_train: float | str,
    price_blower: float,
    price_sundries: float,
    hours_weld: float,
    hours_mould: float,
    hours_cast: float,
    hours_finish: float,
    bought_price: float,
    hour_value: float,
    units: str,
) -> Cost:
    items = (
        Item("bag", said("bag"), block.dry_kg.value, "kg", bag_mass, price_bag),
        Item("pins", said("pins"), pins.wanted, "pins", max(1, pins.per_stick), price_pins),
        Item("mould", said("mould"), 1, "batch", 1, price_mould, once=True),
        *_train(train, price_train),
        Item("blower", said("blower"), 1, "set", blower.burners, price_blower),
        Item("sundries", said("sundries"), 1, "set", 1, price_sundries),
        Item("first_fire", said("first_fire"), schedule.fuel_kg, "kg", schedule.fuel_kg, schedule.fuel_cost),
    )
    if baffle_sheet.sheet:
        blank_m2 = baffle_sheet.blank_length_m * baffle_sheet.blank_width_m
        blank_kg = plate_mass_kg(area_m2=blank_m2, thickness_m=baffle_thickness)
        items = (Item("baffle", said("baffle"), 1, "blank", 1, blank_kg * price_steel), *items)
    lines = cost_lines(
        batch_size, moulds, items, body, steel, inlet, stock_lengths, nipple_stock, kerf, price_steel, units
    )
    by_step, hours_each = batch_hours(batch_size, moulds, hours_weld, hours_mould, hours_cast, hours_finish)
    found = money.make_or_buy(
        lines=lines, hours_each=hours_each, batch_size=batch_size, bought_price=bought_price, hour_value=hour_value
    )
    return Cost(
        items=items,
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


@dataclass(frozen=True)
class Entry:
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


def entries(cost: Cost, train: Train, batch_size: int) -> tuple[Entry, ...]:
    """The shopping list: every line of the cost, the train's part by part."""
    found = []
    for line in cost.lines:
        own = line.key == "train"
        if line.key.startswith("train"):
            found += [
                Entry(line, part, part.count * batch_size, None if own else part.price * batch_size)
                for part in train.parts
                if own or line.key == f"train_{part.purpose}"
            ]
        if own or not line.key.startswith("train"):
            found.append(Entry(line, None, line.packs, line.batch_cost))
    return tuple(found)


def _train(train, price_train):
    """The train at a sum of one's own, or its list: safety, what the burner needs, comfort."""
    if price_train != "listed":
        return (Item("train", said("train"), 1, "set", 1, price_train),)
    return tuple(
        Item(key, said(key), 1, "set", 1, price)
        for key, price in (
            ("train_safety", train.safety_cost),
            ("train_needed", train.needed_cost),
            ("train_comfort", train.comfort_cost),
        )
    )


def _said(found, bought_price, hour_value):
    if found.saved_each < 0:
        return said("material", each=found.cost_each, more=-found.saved_each)
    if found.earned_per_hour is None:
        return said("no_work", saved=found.saved_each)
    return said(
        "make" if found.make else "buy",
        each=found.cost_each,
        saved=found.saved_each,
        bought=bought_price,
        hours=found.hours_each,
        earned=found.earned_per_hour,
        worth=hour_value,
        gap=abs(bought_price - found.cost_with_work_each),
    )


def cost_lines(
    batch_size: int,
    moulds: int,
    items: tuple[Item, ...],
    body: Body,
    steel: Steel,
    inlet: str,
    stock_lengths: tuple[float, ...],
    nipple_stock: tuple[tuple[float, float], ...],
    kerf: float,
    price_steel: float,
    units: str,
) -> tuple[CostLine, ...]:
    """Everything bought for a batch of so many: bars, nipples, and the items; no more moulds than burners."""
    items = tuple(replace(item, need=min(moulds, batch_size)) if item.key == "mould" else item for item in items)
    steel_lines = [
        money.bar_line(
            key=f"steel_{number}",
            name=one.bought_as,
            plan=one.plan,
            price_per_m=price_steel * one.kg_m,
            batch_size=batch_size,
        )
        for number, one in enumerate(bars(batch_size, body, steel, stock_lengths, kerf, units))
    ]
    nipple = making.nipple_choice(
        needed_m=steel.inlet_piece.length_m,
        offers=nipple_stock,
        kerf_m=kerf,
        inlets=batch_size * steel.inlet_piece.count,
    )
    nipple_line = CostLine(
        key="nipple",
        name=said("nipple", pipe=inlet),
        need=steel.inlet_piece.count / nipple.pieces_each,
        unit="nipple",
        packs=nipple.count,
        used_cost=nipple.cost / nipple.count / nipple.pieces_each * steel.inlet_piece.count,
        batch_cost=nipple.cost,
    )
    return (*steel_lines, nipple_line, *money.cost_lines(items=items, batch_size=batch_size))


def batch_hours(
    batch_size: int, moulds: int, hours_weld: float, hours_mould: float, hours_cast: float, hours_finish: float
) -> tuple[dict[str, float], float]:
    """({step: hours for the batch}, hours for one burner of it); the arguments are in s."""
    steps = (
        StepHours("weld", 0.0, hours_weld / 3600),
        StepHours("mould", min(moulds, batch_size) * hours_mould / 3600, 0.0),
        StepHours("cast", 0.0, hours_cast / 3600),
        StepHours("finish", 0.0, hours_finish / 3600),
    )
    return money.batch_hours(steps=steps, batch_size=batch_size)
