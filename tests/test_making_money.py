"""Cost, hours and verdict against a worked example by hand."""

import pytest

from burnercalc.errors import InputError
from burnercalc.making import money
from burnercalc.making.body import cut_plan

ITEMS = (
    money.Item("bag", "castable", 4.0, "kg", 25.0, 50.0),
    money.Item("pin", "pins", 20, "pieces", 24, 3.0),
    money.Item("ply", "mould", 1.0, "sheet", 1.0, 12.0, once=True),
)


def test_selling_cost_by_hand():
    """100 of material and 4 h at 20; half on top, one in five lost: (100 + 80) x 1.5 / 0.8 = 337.5."""
    whole = dict(material_each=100, hours_each=4, hour_value=20, overhead=0.5, scrap=0.2)
    assert money.selling_cost(**whole).cost == pytest.approx(337.5)
    # 40 of the 100 serves the next one: (40 + (60 + 80) / 0.8) x 1.5 = 322.5.
    assert money.selling_cost(**{**whole, "material_each": 60, "kept_each": 40}).cost == pytest.approx(322.5)
    lines = money.selling_cost(**whole)  # 100, 80, a quarter of both for the fifth that is lost, half of all on top
    assert (lines.material, lines.work, lines.failed, lines.overhead) == pytest.approx((100, 80, 45, 112.5))
    for change, field in (
        ({"scrap": 1.0}, "scrap_rate"), ({"overhead": -0.1}, "overhead"), ({"material_each": -1}, "material"),
        ({"kept_each": -1}, "kept"),
        ({"hours_each": -1}, "hours"), ({"hour_value": float("nan")}, "hour_value"),
    ):  # fmt: skip
        with pytest.raises(InputError) as caught:
            money.selling_cost(**{**whole, **change})
        assert caught.value.field == field


def test_whole_packs_for_the_batch_by_hand():
    """Three burners: 12 kg = 1 bag, 60 pins = 3 packs, one sheet: 50 + 9 + 12 = 71; used 8 + 2.5 + 4 = 14.5 each."""
    lines = money.cost_lines(items=ITEMS, batch_size=3)
    assert [line.packs for line in lines] == [1, 3, 1]
    assert sum(line.batch_cost for line in lines) == pytest.approx(71)
    assert sum(line.used_cost for line in lines) == pytest.approx(14.5)


def test_bars_are_paid_whole():
    plan = cut_plan(pieces=[("tube", 0.2, 3)], stock_lengths_m=[1.0], kerf_m=0.003)
    line = money.bar_line(key="tube", name="tube", plan=plan, price_per_m=30, batch_size=3)
    assert (line.packs, line.batch_cost) == (1, pytest.approx(30))
    assert line.used_cost == pytest.approx(0.203 * 30)


def test_hours_share_what_is_done_once():
    by_step, each = money.batch_hours(
        steps=(money.StepHours("weld", 1, 2), money.StepHours("mould", 1.5, 0)), batch_size=3
    )
    assert by_step == {"weld": 7, "mould": 1.5} and each == pytest.approx(8.5 / 3)


def verdict(**more):
    lines = (money.CostLine("all", "all", 1, "", 1, 80.0, 200.0),)
    return money.make_or_buy(
        **{**dict(lines=lines, hours_each=5, batch_size=2, bought_price=300, hour_value=25), **more}
    )


def test_make_by_hand():
    """200 for two is 100 each; 200 saved over 5 h earns 40 an hour; with work at 25 it costs 225, 75 under 300."""
    got = verdict()
    assert got.way == "make" and (got.cost_each, got.saved_each, got.earned_per_hour, got.cost_with_work_each) == (
        100,
        200,
        40,
        225,
    )


def test_buy_where_the_hours_or_the_material_are_worth_more():
    slow = verdict(hours_each=10)  # 20 an hour, 350 with the work paid
    assert slow.way == "buy" and (slow.earned_per_hour, slow.cost_with_work_each) == (20, 350)
    dear = verdict(bought_price=90)
    assert dear.way == "buy" and dear.saved_each == -10


def test_no_work_has_no_hourly_earning():
    got = verdict(hours_each=0)
    assert got.way == "make" and got.earned_per_hour is None


def test_within_a_tenth_of_the_bought_one_s_price_it_is_even():
    """Of 300: 270 to 330."""
    costs = (0, 269.9, 270.1, 300, 329.9, 330.1)
    assert [money.way(cost, 300) for cost in costs] == ["make", "make", "even", "even", "even", "buy"]


def test_names_the_field():
    for call, field in (
        (lambda: money.cost_lines(items=ITEMS, batch_size=0), "batch_size"),
        (lambda: money.cost_lines(items=ITEMS, batch_size=1.5), "batch_size"),
        (lambda: money.cost_lines(items=(money.Item("bag", "", 1, "kg", 0, 1),), batch_size=1), "pack_bag"),
        (lambda: money.cost_lines(items=(money.Item("bag", "", 1, "kg", 1, float("nan")),), batch_size=1), "price_bag"),
        (lambda: money.batch_hours(steps=(money.StepHours("weld", -1, 0),), batch_size=1), "hours_weld"),
        (lambda: verdict(bought_price=float("inf")), "bought_price"),
        (lambda: verdict(hour_value=-1), "hour_value"),
    ):
        with pytest.raises(InputError) as caught:
            call()
        assert caught.value.field == field
