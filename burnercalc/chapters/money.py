"""Money and time: what a burner costs with stock bought whole, the hours in it, and whether to make or to buy."""

from ..making import body as steel
from ..making import money
from ..making import refractory as mix
from ..making.stock import STEEL_DENSITY_KG_M3
from ..result import Axis, Chart, Column, Series, Table
from ..units import show
from .make import bar_plans

GROUP = "money"

ARITHMETIC = "arithmetic on your own prices; the defaults are examples"


def solve(d, r):
    lines = cost_lines(d, r, d.batch_size)
    by_step, hours = batch_hours(d, d.batch_size)
    verdict = money.make_or_buy(
        lines=lines, hours_each=hours, batch_size=d.batch_size, bought_price=d.bought_price, hour_value=d.hour_value
    )
    stock = (
        "price_steel",
        "nipple_stock",
        "price_bag",
        "price_pins",
        "price_mould",
        "price_train",
        "price_blower",
        "price_sundries",
        "stock_lengths",
        "batch_size",
    )
    r.answer(
        "cost_batch",
        verdict.batch_cost,
        "money",
        "Cost of the batch",
        "What the shopping for the whole batch costs, stock bought whole.",
        "sum of the cost lines",
        stock,
        ARITHMETIC,
    )
    r.answer(
        "cost_per_burner",
        verdict.cost_each,
        "money",
        "Cost a burner",
        "Shopping for the batch, shared by its burners.",
        "cost of the batch / burners",
        stock,
        ARITHMETIC,
    )
    r.answer(
        "used_cost_per_burner",
        verdict.used_cost_each,
        "money",
        "Used up in a burner",
        "The same for what is used up, offcuts and rests left out.",
        "need / pack x price",
        stock,
        ARITHMETIC,
    )
    r.answer(
        "hours_per_burner",
        hours * 3600,
        "time",
        "Hours a burner",
        "Work in one burner of the batch, the mould shared.",
        "hours of each burner + hours of the mould / burners",
        ("hours_weld", "hours_mould", "hours_cast", "hours_finish", "batch_size"),
        ARITHMETIC,
    )
    r.answer(
        "earned_per_hour",
        verdict.earned_per_hour,
        "money",
        "An hour earns",
        "What an hour of the work saves against a bought burner.",
        "(bought price - cost a burner) / hours a burner",
        ("bought_price", "cost_per_burner", "hours_per_burner"),
        ARITHMETIC,
    )
    r.answer(
        "cost_with_work",
        verdict.cost_with_work_each,
        "money",
        "Cost, work paid",
        "Cost of a burner with its hours paid at their worth.",
        "cost a burner + hours x worth of an hour",
        ("cost_per_burner", "hours_per_burner", "hour_value"),
        ARITHMETIC,
    )
    r.answer(
        "make_or_buy",
        verdict.text,
        "word",
        "Make or buy",
        "Whether it is cheaper to make or to buy, with the work paid.",
        "make when the saving is at least the worth of the hours",
        ("cost_per_burner", "hours_per_burner", "bought_price", "hour_value"),
        ARITHMETIC,
    )
    r.add_table(
        Table(
            "cost_lines",
            "Cost lines",
            (
                Column("item", "Item", "word"),
                Column("need", "For one burner", "word"),
                Column("packs", "Buy", "count"),
                Column("used", "Used up, each", "money"),
                Column("batch", "Batch, bought whole", "money"),
            ),
            tuple((line.name, _need(d, line), line.packs, line.used_cost, line.batch_cost) for line in lines),
            ARITHMETIC,
        )
    )
    r.add_table(
        Table(
            "hours",
            "Hours for the batch",
            (Column("step", "Step", "word"), Column("hours", "Hours", "time")),
            tuple((NAMES[step], value * 3600) for step, value in by_step.items()),
            ARITHMETIC,
        )
    )
    r.charts["cost_by_batch"] = lambda: _chart(d, r)


def _need(d, line):
    """What one burner needs of a line, in the design's units."""
    if line.unit in ("kg", "m"):
        return show(line.need, "mass" if line.unit == "kg" else "long_length", d.units)
    return f"{line.need:g} {line.unit}"


NAMES = {"weld": "steel", "mould": "mould", "cast": "casting", "finish": "finishing"}


def batch_hours(d, batch_size):
    """({step: hours for the batch}, hours for one burner)."""
    steps = [
        money.StepHours("weld", 0.0, d.hours_weld / 3600),
        money.StepHours("mould", d.hours_mould / 3600, 0.0),
        money.StepHours("cast", 0.0, d.hours_cast / 3600),
        money.StepHours("finish", 0.0, d.hours_finish / 3600),
    ]
    return money.batch_hours(steps=steps, batch_size=batch_size)


def cost_lines(d, r, batch_size):
    """CostLines of everything bought for a batch of so many."""
    lines = [
        money.bar_line(key=f"steel_{i}", name=name, plan=plan, price_per_m=d.price_steel * kg_m, batch_size=batch_size)
        for i, (name, kg_m, plan) in enumerate(bar_plans(d, r, batch_size))
    ]
    nipple = steel.nipple_choice(
        needed_m=r.inlet_piece.length_m, offers=d.nipple_stock, kerf_m=d.kerf, burners=batch_size
    )
    price = nipple.cost / nipple.count
    lines.append(
        money.CostLine(
            "nipple",
            f"nipple {d.inlet} in",
            1 / nipple.pieces_each,
            "nipple",
            nipple.count,
            price / nipple.pieces_each,
            nipple.cost,
        )
    )
    dry = mix.batch(
        volume_m3=r["block_volume"], material=r.material, waste=d.waste_allowance, bag_mass_kg=d.bag_mass
    ).dry_kg
    items = [
        money.Item("bag", "refractory", dry, "kg", d.bag_mass, d.price_bag),
        money.Item("pins", "pin stock", r.pins.count, "pins", max(1, r.pins.pieces_per_stock), d.price_pins),
        money.Item("mould", "mould", 1, "for the batch", 1, d.price_mould, once=True),
        money.Item("train", "gas train", 1, "set", 1, d.price_train),
        money.Item("blower", "blower and air pipe", 1, "set", 1, d.price_blower),
        money.Item("sundries", "sundries", 1, "set", 1, d.price_sundries),
    ]
    if r.baffle:
        blank = r.baffle.blank_length_m * r.baffle.blank_width_m * d.baffle_thickness * STEEL_DENSITY_KG_M3
        items.insert(0, money.Item("baffle", "baffle sheet", 1, "blank", 1, blank * d.price_steel))
    return lines + list(money.cost_lines(items=items, batch_size=batch_size))


def _chart(d, r):
    most = max(10, d.batch_size)
    sizes = tuple(range(1, most + 1))
    costs = tuple(sum(line.batch_cost for line in cost_lines(d, r, n)) / n for n in sizes)
    paid = tuple(cost + batch_hours(d, n)[1] * d.hour_value for n, cost in zip(sizes, costs))
    cheaper = next((n for n, cost in zip(sizes, paid) if cost <= d.bought_price), None)
    return Chart(
        "cost_by_batch",
        "Cost of a burner by batch size",
        Axis("burners at once", "count", 1, most),
        Axis("cost of one", "money", 0, 1.1 * max(*paid, d.bought_price, 1.0)),
        (
            Series("cost", "stock and parts", sizes, costs),
            Series("paid", "with the work paid", sizes, paid),
            Series("bought", "a bought burner", (1, most), (d.bought_price, d.bought_price)),
        ),
        (d.batch_size, r["cost_with_work"]),
        f"With the work paid, making is cheaper from {cheaper} at once."
        if cheaper
        else f"With the work paid, buying is cheaper up to {most} at once.",
    )
