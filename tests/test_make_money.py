"""Money and hours of the room Make, through solve(), worked out by hand beside each."""

import json
import math
from collections import Counter

import pytest
from designs import FAR_APART, KNOWN_GOOD, ROUND, solved
from pdf_reader import pages

from burnercalc import Design, shopping, solve, units, worker

IN, LB, FT = 0.0254, 0.45359237, 0.3048
STEEL = 7850.0  # kg/m3, EN 1993-1-1
PER_LB = IN**3 * STEEL / LB  # lb of a cubic inch of steel
FREE = {
    "price_steel": "0/lb",
    "price_bag": "0",
    "price_pins": "0",
    "price_train": "0",
    "price_blower": "0",
    "price_sundries": "0",
    "price_mould": "0",
    "nipple_stock": "4 in 0",
    "fuel_price": "0/lb",
}


@pytest.fixture(scope="module")
def default():
    return solved()


# 4 x 4 x 3/16 in tube with corners of 3/16 in inside, and the caps' flat of 4 - 2 x 3/16 - 2 x 1/64 in: lb a foot
TUBE = 12 * (16 - 3.625**2 - (4 - math.pi) * (0.375**2 - 0.1875**2)) * PER_LB
FLAT = 12 * 4 * 0.1875 * PER_LB
ANGLE = 12 * 0.125 * (2 * 1.25 - 0.125) * PER_LB
BLANK = 8.5 * 3.988744 / 16 * PER_LB  # lb of the baffle's blank; its width by hand in test_make.py


def test_the_shopping_of_one_burner(default):
    rows = default.tables["cost_lines"].rows
    assert [row[:3] for row in rows] == [
        ("tube 4 x 4 x 3/16 in", "0.755 ft", 1),  # 9 in and a cut of 1/16
        ("flat 4 x 3/16 in", "0.609 ft", 1),  # two caps, two cuts
        ("angle 1 1/4 x 1 1/4 x 1/8 in", "1.51 ft", 1),  # two of 9 in, two cuts
        ("nipple 2 in", "1 nipple", 1),
        ("baffle sheet", "1 blank", 1),
        ("refractory", "7.70 lb", 1),
        ("pin stock", "46 pins", 5),
        ("mould", "1 for the batch", 1),
        ("gas and air train, safety", "1 set", 1),
        ("gas and air train, to run it", "1 set", 1),
        ("gas and air train, comfort", "1 set", 1),
        ("blower", "1 set", 1),
        ("sundries", "1 set", 1),
        ("gas of the first fire", "56.9 lb", 1),
    ]
    # 25.9 h and two times up again, at 40 kBtu/h of propane at 21.6 kBtu/lb and 0.90 a pound
    gas = rows[-1][4]
    assert gas == round(default["first_fire_cost"], 2)  # as it is paid
    assert gas == pytest.approx(0.90 * 40 * (25.87 + 1.8 + 3.13) / 21.6, rel=0.01)
    # each bar is a foot, at 2.00 a pound; 7.698 lb of a bag of 55 lb at 95; 46 pins, ten from a stick at 1.50
    # the train as added up in test_train.py
    batch = [2 * TUBE, 2 * FLAT, 4 * ANGLE, 9, 2 * BLANK, 95, 5 * 1.5, 20, 516, 373, 32, 120, 25, gas]
    assert [row[4] for row in rows] == [round(one, 2) for one in batch]  # whole hundredths
    used = [
        2 * TUBE * 9.0625 / 12,
        2 * FLAT * (2 * 3.59375 + 0.125) / 12,
        2 * ANGLE * 18.125 / 12,
        9,
        2 * BLANK,
        95 * 7.698277 / 55,
        1.5 * 46 / 10,
        20,
        516,
        373,
        32,
        120,
        25,
        default["first_fire_cost"],
    ]
    assert [row[3] for row in rows] == pytest.approx(used, rel=1e-6)
    assert default["cost_batch"] == default["cost_per_burner"] == pytest.approx(sum(row[4] for row in rows), rel=1e-12)
    assert default["used_cost_per_burner"] == pytest.approx(sum(used), rel=1e-6)


def test_a_batch_shares_mould_and_what_is_left_of_packs():
    # Two burners: 2 ft of tube, 2 ft of flat, 4 ft of angle, half nipples of a 36 in one at 15 when two cost
    # more, one bag, 92 pins.
    r = solved(batch_size="2", nipple_stock="4 in 9.00, 36 in 15.00", price_train="140")
    rows = {row[0]: row for row in r.tables["cost_lines"].rows}
    assert rows["nipple 2 in"][1:] == ("0.5 nipple", 1, 7.5, 15.0)
    assert rows["mould"][2:] == (1, 10.0, 20.0)
    assert rows["gas train"][2:] == (2, 140.0, 280.0)
    assert rows["pin stock"][2:] == (10, pytest.approx(1.5 * 46 / 10), 15.0)
    assert rows["refractory"][2:] == (1, pytest.approx(95 * 7.698277 / 55, rel=1e-6), 95.0)
    assert rows["tube 4 x 4 x 3/16 in"][4] == round(4 * TUBE, 2)
    weighed = (4 * TUBE, 4 * FLAT, 8 * ANGLE, 4 * BLANK, 2 * r["first_fire_cost"])
    batch = sum(round(one, 2) for one in weighed) + 15 + 95 + 15.0 + 20 + 280 + 240 + 50
    assert r["cost_batch"] == pytest.approx(batch, rel=1e-6)
    assert r["cost_per_burner"] == pytest.approx(batch / 2, rel=1e-6)


@pytest.mark.parametrize("texts", [{}, {"units": "mm", "batch_size": "3", "price_train": "140", "refractory": "own"}])
def test_the_shopping_list_costs_what_the_batch_costs(texts):
    r = solved(**texts)
    rows = r.tables["shopping"].rows
    assert math.fsum(row[3] or 0 for row in rows) == pytest.approx(r["cost_batch"], rel=1e-12)
    # Everything of the train is on it, priced or not, once for each burner of the batch.
    for part, row in zip(r.part("train").parts, r.tables["gas_train"].rows):
        own = f"{part.count} x "
        found = [line for line in rows if line[:2] == (row[2].removeprefix(own), row[3])]
        assert [line[2] for line in found] == [part.count * r.design.batch_size]
        assert found[0][3] == (None if texts else part.price)


@pytest.mark.parametrize("name", [*FAR_APART, *KNOWN_GOOD])
def test_all_that_is_cut_or_built_in_is_bought_once_and_nothing_else(name):
    """Cut list, mould and train against shopping list and tools; an air pipe was sold that stood in no train."""
    r = solved(**{**FAR_APART, **KNOWN_GOOD}[name])
    bought = [(row[0], row[1]) for row in (*r.tables["shopping"].rows, *r.tables["tools"].rows)]
    assert len(set(bought)) == len(bought)  # none twice
    items, batch = {item for item, _ in bought}, r.design.batch_size
    stock, used = r.part("stock"), set()
    cut = Counter(piece for bars in stock.bars for bar in bars.plan.bars for piece, _ in bar.cuts)
    for _, piece, count, *_ in r.tables["cut_list"].rows:
        if piece.startswith("inlet pipe"):
            used |= {item for item in items if item == piece.replace("inlet pipe", "nipple")}
        elif piece == "baffle":
            used |= {"baffle sheet"}
        else:
            assert cut.pop(piece.replace("bracket angle", "bracket")) == count * batch, piece
    assert not cut and {"baffle sheet"} & items == {"baffle sheet"} & used
    used |= {r.tables["cost_lines"].rows[number][0] for number in range(len(stock.bars))}
    moulds = r.part("boards").moulds
    wood = Counter(cut.name for board in r.part("boards").bought for cut in board.cuts)
    for _, piece, _, count, *_ in r.tables["mould"].rows:
        if piece == "cross-bar":
            assert [row[2] for row in r.tables["tools"].rows if row[0] == piece] == [count * moulds]
        else:
            assert wood.pop(piece, 0) + wood.pop("half layer", 0) / 2 == count * moulds, piece
    assert not wood
    train = zip(r.part("train").parts, r.tables["gas_train"].rows)
    used |= {row[2].removeprefix(f"{part.count} x ") for part, row in train}
    used |= {row[0] for row in r.tables["tools"].rows} | {"mould", "pin stock", "refractory"}
    fired = {"gas of the first fire"} if r["first_fire_fuel"] else set()
    assert items - used == {"blower", "sundries", *fired}
    assert used - items <= {"pipe from the meter, by a fitter"}
    assert not any("air pipe" in text for one in bought for text in one)


def test_what_is_at_hand_is_left_out_of_the_shopping_list(default):
    names = [shopping.name_of(row) for row in default.tables["shopping"].rows]
    got = [names[0], "blower, 4 in H₂O shut, 60 cfm free; its pipe and joint stand in the train"]
    assert got[1] in names
    left = shopping.left_to_buy(default, got)
    spared = round(2 * TUBE, 2) + 120
    assert len(left) == len(names) - 2
    assert sum(row[3] for row in left) == pytest.approx(default["cost_batch"] - spared, rel=1e-6)
    asked = json.dumps({"kind": "left", "settings": {}, "got": got})
    words = json.loads(worker.handle(asked))["words"]
    assert f"{default['cost_batch'] - spared:.0f} of {default['cost_batch']:.0f}" in words
    assert f"Tools and safety gear: {default['tools_cost']:.0f} of {default['tools_cost']:.0f}" in words
    text = " ".join(" ".join(page.text for page in pages(shopping.pdf(default, "#v=2", "a4", got))).split())
    assert "2 lines are left out" in text and f"{spared:.2f}" in text and "60 cfm free" not in text


def test_tools_and_safety_gear_are_a_sum_of_their_own(default):
    """By hand from the example prices: alarm, flue-gas meter, extinguisher, RCD, torch, stand, mask, two cylinders,
    gauge, tube, two thermocouples, an old oven, scale, gas scale, saw, grinder, drills, punch, vacuum, mirror, plate
    and cap, 14 screws at 0.15, two clamps, two cross-bars, sealer. The burner costs as much as without them."""
    by_hand = 45 + 250 + 50 + 25 + 40 + 20 + 35 + 2 * 60 + 45 + 10 + 2 * 35 + 60 + 30 + 90 + 25 + 35 + 40
    by_hand += 60 + 15 + 90 + 10 + 14 * 0.15 + 2 * 8 + 2 * 5 + 20
    assert default["tools_cost"] == pytest.approx(by_hand)
    assert math.fsum(row[3] for row in default.tables["tools"].rows) == pytest.approx(by_hand)
    assert default["cost_batch"] == pytest.approx(math.fsum(row[3] for row in default.tables["shopping"].rows))
    sold = {row[0]: row[1:3] for row in default.tables["tools"].rows}
    assert sold["hole saw"][0].startswith("2 7/16 in") and sold["plate for the leak test"][0].startswith(
        "flat, 9 in x 4"
    )
    first, jet, damper = sold["drills"][0].rsplit("; ", 2)
    assert (
        first
        == "3/8 in for the window; 1/4 in for ports; 1/8 in for knock-out; 17/64 in as gauge; 3/8 in for the baffle"
    )
    assert jet == f"{default['jet']} for the jet" and damper.endswith(" for the damper, its hole and its gaps")
    sizes = damper.partition(" for")[0].split(", ")
    for mark in ("lighting_mark", "damper_mark_low", "damper_mark_high"):  # a gap is set by a drill that is at hand
        assert any(f"drilled {one}" in default[mark] or f"of drill {one}" in default[mark] for one in sizes)
    (round_window,) = [row[1] for row in solved(**ROUND).tables["tools"].rows if row[0] == "drills"]
    assert "for the window" not in round_window and "for ports" in round_window  # sawn in one cut: no relief holes
    text = " ".join(" ".join(page.text for page in pages(shopping.pdf(default, "#v=2", "a4"))).split())
    assert f"tools and safety gear, {by_hand:.2f}" in text and "carbon monoxide alarm" in text and "dust mask" in text
    got = [shopping.name_of(row) for row in default.tables["tools"].rows if row[0] == "scale"]
    less = " ".join(" ".join(page.text for page in pages(shopping.pdf(default, "#v=2", "a4", got))).split())
    assert f"tools and safety gear, {by_hand - 30:.2f}" in less and f"{default['cost_batch']:.2f} to spend" in less


@pytest.mark.parametrize("lit_by, torches, stands", [("hand", 2, 0), ("stand", 2, 2), ("guard", 1, 0)])
def test_each_burner_is_lit_by_a_torch_of_its_own(lit_by, torches, stands):
    """A pilot stays alight by itself, so one torch lights them all."""
    listed = {tool.key: tool.count for tool in solved(burner_count="2", lit_by=lit_by).part("tools").tools}
    assert (listed["torch"], listed.get("torch_stand", 0)) == (torches, stands)


@pytest.mark.parametrize("texts", [{"baffle_hole_diameter": "5/16 in"}, {"units": "mm"}, ROUND])
def test_the_drill_of_the_baffle_is_bought(texts):
    r = solved(**texts)
    (drills,) = [row[1] for row in r.tables["tools"].rows if row[0] == "drills"]
    assert f"; {r.design.show('baffle_hole_diameter')} for the baffle" in drills
    (none,) = [row[1] for row in solved(**texts, baffle_holes="0").tables["tools"].rows if row[0] == "drills"]
    assert "baffle" not in none


def test_a_gap_that_no_drill_is_as_wide_as_asks_for_none():
    r = solved(body_length="35 in", wall="1/8 in", setback="3/16 in", inlet="1/4")
    assert r["damper_mark_low"] and "None" not in r["damper_mark_low"]
    (drills,) = [row[1] for row in r.tables["tools"].rows if row[0] == "drills"]
    assert "for ports" in drills and "None" not in drills


@pytest.mark.parametrize(
    "texts, caps", [({}, "a screwed cap"), ({"inlets": "2", "body_length": "18 in"}, "two screwed caps")]
)
def test_an_inlet_is_capped_for_the_leak_test_and_the_air_has_a_way_in(texts, caps):
    """The inlet's thread is outside: nothing screws into it. The tools bring what the step asks for."""
    r = solved(**texts)
    (plate,) = [row[1] for row in r.tables["tools"].rows if row[0] == "plate for the leak test"]
    assert f"{caps} of 2 in" in plate
    (step,) = [row[-1] for row in r.tables["welding"].rows if "leak test" in row]
    for part in ("cap", "bought tapped", "tee", "cock"):
        assert part in plate and part in step, part
    assert "lets the air in" in step and "water tube" in step and "plug" not in plate + step


def test_the_gas_that_a_batch_burns_is_one_line_to_buy(default):
    """Its size is that of all burners, so it is bought once: size times pieces is what they burn."""
    one, dozen = (
        next(row for row in r.tables["shopping"].rows if row[0].startswith("gas of the first fire"))
        for r in (default, solved(batch_size="12"))
    )
    assert one[2] == 1 and dozen[2] == 1 and dozen[3] == pytest.approx(12 * one[3], abs=12 * 0.005)
    assert float(dozen[1].split()[0]) == pytest.approx(12 * float(one[1].split()[0]), rel=0.01)


def test_a_line_needs_no_cylinder_but_water_in_a_tube_and_a_tank_is_one():
    house = solved(fuel="natural_gas", gas_pressure="7 inH2O", lit_by="guard")
    line = [row[0] for row in house.tables["tools"].rows]
    (fire,) = [row for row in house.tables["shopping"].rows
               if row[0].startswith("gas of the first fire")]  # fmt: skip
    # 30.8 h at 40 % of 100 kBtu/h, natural gas near 1010 Btu a cubic foot gross: a meter counts feet, not pounds
    assert fire[1].endswith(" ft³ at most, all of it by the burner")
    assert float(fire[1].split()[0]) == pytest.approx(30.8 * 40e3 / 1010, rel=0.05)
    assert "gas cylinder" not in line and "clear tube for water" in line
    three = {row[0]: row for row in solved(cylinder_count="3", cylinder="20", units="mm").tables["tools"].rows}
    assert three["gas cylinder"][1:] == ("full charge 9.07 kg, own or for a deposit", 3, 180.0)
    assert "gas tank" in [row[0] for row in solved(cylinder="tank").tables["tools"].rows]
    many = solved(batch_size="5", moulds="3", oven_places="5", test_stands="5", hands="3")
    screws = next(row for row in many.tables["tools"].rows if row[0] == "wood screws")
    # one mould's for each mould that is made, tools once
    assert screws[2] == many["moulds_made"] * many["mould_screws"] > many["mould_screws"]


def test_without_a_baffle_no_sheet_is_bought():
    names = [row[0] for row in solved(baffle_holes="0").tables["cost_lines"].rows]
    assert "baffle sheet" not in names and names[:5] == [
        "tube 4 x 4 x 3/16 in",
        "flat 4 x 3/16 in",
        "angle 1 1/4 x 1 1/4 x 1/8 in",
        "nipple 2 in",
        "refractory",
    ]


def test_a_stick_too_short_is_bought_for_each_pin():
    rows = {row[0]: row for row in solved(pin_stock_length="2 in").tables["cost_lines"].rows}
    assert rows["pin stock"][2:] == (46, 69.0, 69.0)


def test_needs_are_said_in_the_readers_units():
    rows = solve(Design().read_in("mm")).tables["cost_lines"].rows
    assert rows[0][0] == "tube 4 x 4 x 3/16 in" and rows[0][1] == "0.230 m" and rows[5][1] == "3.49 kg"


METRIC_SHOP = {"sizes": "mm", "body_length": "250 mm", "body_width": "100 mm", "body_depth": "50 mm", "wall": "3 mm"}


def test_what_is_sold_is_named_as_the_shop_does():
    """A reader of inches beside a metric shop was to ask for tube 3 15/16 x 1 31/32 x 1/8 in, in bars of 19 11/16."""
    own, other = (solve(Design.from_texts({**METRIC_SHOP, "units": system})) for system in ("mm", "in"))
    for table, keys in (("stock", ("stock", "length")), ("boards", ("stock", "length", "width"))):
        for key in keys:
            assert list(shown(other, table, key)) == list(shown(own, table, key)), (table, key)
    assert shown(other, "shopping", "item") == shown(own, "shopping", "item")
    bought = dict(zip(shown(other, "shopping", "item"), shown(other, "shopping", "sold")))
    assert bought["tube 100 x 50 x 3 mm"] == "1 of 500 mm" and bought["pin stock"].startswith("8 mm across, 1000 mm")
    assert bought["hex bushing"] == "DN 40 to DN 8" and bought["refractory"].endswith("25 kg a bag")
    assert bought["gauge after the regulator"] == "0 to 8.70 psi (600 mbar)"
    assert shown(solve(Design.from_texts({"units": "mm", "sizes": "in", "wall": "4.2 mm"})), "stock", "stock")[0] == (
        "tube 101.6 x 101.6 x 4.2 mm"  # a wall that no inch tape shows
    )


def shown(result, table, key):
    table = result.tables[table]
    at = [column.key for column in table.columns].index(key)
    return [units.show(row[at], table.columns[at].dimension, result.design.reader) for row in table.rows]


def test_hours_of_the_batch_share_the_mould():
    r = solved(batch_size="3")
    # 3 + 1 + 1 1/2 h each, 1 1/2 h of mould once
    assert r["hours_per_burner"] == pytest.approx((5.5 + 0.5) * 3600)
    assert r.tables["hours"].rows == (
        ("steel", 9 * 3600),
        ("mould", 1.5 * 3600),
        ("casting", 3 * 3600),
        ("finishing", 4.5 * 3600),
    )


@pytest.mark.parametrize(
    "texts, text, earned, with_work",
    [
        # 100 of material; 3 + 1 1/2 + 1 + 1 1/2 = 7 h
        (
            {"bought_price": "310", "hour_value": "20"},
            "Make, for yourself: material 100 a burner against 310 bought; each of the 7.0 h of work saves 30, and "
            "with it paid at 20 making is 70 cheaper.",
            30,
            240,
        ),
        (
            {"bought_price": "310", "hour_value": "40"},
            "Buy: one you make costs 210 less and takes 7.0 h of work. That saves 30 an hour; you set an hour at 40. "
            "With the work paid, buying is 70 cheaper.",
            30,
            380,
        ),
        (
            {"bought_price": "250", "hour_value": "20"},  # 10 of 250
            "About even, by prices that are examples until you set yours: one you make comes to 240, work paid, a "
            "bought one to 250.",
            150 / 7,
            240,
        ),
        (
            {"bought_price": "100", "hour_value": "20"},  # material of 100
            "Buy: the material alone costs as much as a bought one, and 7.0 h of work come on top.",
            0,
            240,
        ),
        (
            {"bought_price": "86", "hour_value": "20"},
            "Buy: the material alone costs 100 a burner, 14 more than a bought one.",
            -2,
            240,
        ),
        (
            {"bought_price": "100", "hour_value": "0"},  # nothing saved, nothing lost
            "About even, by prices that are examples until you set yours: one you make comes to 100, work paid, a "
            "bought one to 100.",
            0,
            100,
        ),
        (
            {
                "bought_price": "120",
                "hours_weld": "0 h",
                "hours_mould": "0 h",
                "hours_cast": "0 h",
                "hours_finish": "0 h",
            },
            "Make, for yourself: it saves 20 a burner.",
            None,
            100,
        ),
    ],
)
def test_make_or_buy(texts, text, earned, with_work):
    r = solved(**FREE | {"price_mould": "100"}, **texts)
    assert r["cost_batch"] == r["cost_per_burner"] == r["used_cost_per_burner"] == pytest.approx(100)
    assert r["make_or_buy"] == text
    assert r["earned_per_hour"] == (None if earned is None else pytest.approx(earned, abs=1e-9))
    assert r["cost_with_work"] == pytest.approx(with_work)


def test_cost_by_batch_falls_by_what_is_shared():
    # Only the mould costs, 60 once; steel takes an hour each at 10, the mould three once: 10 + (60 + 30) / n.
    texts = {"price_mould": "60", "hour_value": "10", "hours_weld": "1 h", "hours_mould": "3 h"}
    texts |= {"hours_cast": "0 h", "hours_finish": "0 h"}
    chart = solved(**FREE | texts, bought_price="40", batch_size="2").charts["cost_by_batch"]
    plot = chart.plot
    sizes, costs = plot.series["cost"]
    assert sizes == tuple(range(1, 11)) and costs == pytest.approx([60 / n for n in sizes])
    assert plot.series["paid"] == (sizes, pytest.approx(tuple(10 + 90 / n for n in sizes)))
    assert plot.series["bought"] == ((1, 10), (40, 40))
    assert plot.mark == (2, pytest.approx(55))
    assert plot.x == (1, 10) and plot.y == (0, pytest.approx(110))
    # 10 + 90/3 = 40: as cheap from three on
    assert chart.sentence == "With the work paid, making is cheaper from 3 at once."
    dear = solved(**FREE | texts, bought_price="0", batch_size="12").charts["cost_by_batch"]
    assert dear.sentence == "With the work paid, buying is cheaper up to 12 at once." and dear.plot.x == (1, 12)
    assert solved(**FREE | texts, bought_price="400").charts["cost_by_batch"].plot.y == (0, pytest.approx(440))


def test_above_a_dozen_the_chart_leaves_sizes_out_and_misses_none():
    """10 + (60 + 30) / n again: each to a dozen, then every fifth to 50; 12 is reached at 45, 11.95 at 47, where the
    chart has none."""
    texts = {"price_mould": "60", "hour_value": "10", "hours_weld": "1 h", "hours_mould": "3 h", "batch_size": "50"}
    texts |= {"hours_cast": "0 h", "hours_finish": "0 h"}
    for bought, least in (("12", 45), ("11.95", 47)):
        chart = solved(**FREE | texts, bought_price=bought).charts["cost_by_batch"]
        sizes, paid = chart.plot.series["paid"]
        assert sizes == (*range(1, 13), *range(15, 51, 5)) and paid == pytest.approx([10 + 90 / n for n in sizes])
        assert chart.sentence == f"With the work paid, making is cheaper from {least} at once."


def test_an_axis_of_nothing_but_zeros_is_one_high():
    chart = solved(**FREE, hour_value="0", bought_price="0").charts["cost_by_batch"]
    assert chart.plot.y == (0, pytest.approx(1.1)) and chart.sentence.endswith("cheaper from 1 at once.")


def test_the_mark_lies_on_the_line():
    r = solved(batch_size="4")
    plot = r.charts["cost_by_batch"].plot
    assert plot.mark[1] == pytest.approx(plot.series["paid"][1][3])
    assert plot.series["cost"][1][3] == pytest.approx(r["cost_per_burner"])


def test_every_step_has_its_tool():
    """Vacuum, window cutter, pin punch and mirror stood in steps and in no list; each only where the build takes it."""
    round_body = {"body_kind": "pipe", "body_length": "6 in", "body_width": "6 in", "pattern": "hexagonal", "rows": "6"}
    disc = {**round_body, "ports_per_row": "6", "port_diameter": "5/16 in"}
    box = "discs for the window"
    for texts, punch, cuts in (({}, True, box), ({"pin_kind": "wax"}, False, box), (disc, True, "jigsaw")):
        result = solved(**texts)
        told = {row[0]: row[1] for row in result.tables["tools"].rows}
        assert {"vacuum cleaner", "mirror and lamp"} <= told.keys() and cuts in told["angle grinder"]
        assert ("pin punch, hammer" in told) is punch
        assert not punch or result["knock_out_drill"] in told["pin punch, hammer"]
    (clamps,) = [row for row in result.tables["tools"].rows if row[0] == "clamps"]
    assert clamps[1].split(": ")[1].startswith("two to a mould") and clamps[2] == 2 * result["moulds_made"]
