"""Make it good: what is changed mends, nothing that is mine moves, and no change is there in vain."""

import json
import re
from types import SimpleNamespace

import pytest
from plausible import designs

from burnercalc import Design, from_link, solve
from burnercalc.cli import main
from burnercalc.design import parse_setting
from burnercalc.examples import EXAMPLES
from burnercalc.find import make_good, report, sample, shops
from burnercalc.find.faults import faults_of
from burnercalc.find.good import CHAMBER, STAYS, Held, Kept, Mended, Moved, texts_of
from burnercalc.find.sold import BLOWERS
from burnercalc.jobs import JOBS
from burnercalc.physics.linings import material, material_keys
from burnercalc.settings import BY_KEY, SETTINGS

BLOWER_SIZES = [*enumerate(("blower_shutoff_pressure", "blower_free_flow"))]
BAD = {
    "too little fire": {"firing_rate": "60 kBtu/h", "lining": "dense_castable 2 in, ifb_26 2 1/2 in"},
    "a weak blower": {"blower_shutoff_pressure": "1/2 inH2O"},
    "too hot at low fire": {"low_fire": "80 %"},
    "overlapping ports": {"port_diameter": "1/2 in", "rows": "8", "ports_per_row": "20"},
    "a thin lip": {"setback": "3/16 in", "grip": "1/4 in"},
    "a long line": {"fuel": "natural_gas"},
    "a small cylinder": {"cylinder": "20", "cylinder_count": "1"},
    **{example.key: example.metric for example in EXAMPLES},
}


def bad(result):
    return {check.key: check.verdict for check in result.checks.values() if check.verdict in ("caution", "stop")}


def weight(words):
    return sum(word == "stop" for word in words.values()), len(words)


@pytest.fixture(scope="module")
def mended():
    return {name: make_good(Design.from_texts(texts)) for name, texts in BAD.items()}


@pytest.mark.parametrize("name", BAD)
def test_a_mended_design_is_better_and_spoils_nothing(mended, name):
    one = mended[name]
    before, after = (bad(solve(design)) for design in (one.before.design, one.after.design))
    assert set(after) <= set(before) and all(before[key] in (word, "stop") for key, word in after.items())
    assert weight(after) <= weight(before) and (weight(after) < weight(before)) == bool(one.changes)
    assert {fault.key for fault in one.left} == set(after)
    assert {fault.key for fault in one.mended} == set(before) - set(after)


@pytest.mark.parametrize("name", BAD)
def test_the_changes_are_the_difference_and_each_is_needed(mended, name):
    one = mended[name]
    first, last = one.before.design, one.after.design
    assert {change.key for change in one.changes} == {k for k in first.values() if first.value(k) != last.value(k)}
    for change in one.changes:
        less = {**last.texts, change.key: first.text(change.key)}
        again = bad(solve(Design.from_texts(less)))
        now = bad(one.after)
        if change.less is not None:  # only for shops a little off
            continue
        assert again.keys() - now.keys() or any(again[key] == "stop" != now[key] for key in again), change
        # What it mends, and what is to spare then, from the numbers themselves.
        worse = {key for key in again if now.get(key) not in (again[key], "stop")}
        assert {kept.key for kept in change.mends} == worse & one.after.checks.keys()
        if last.value(change.key) == "auto":
            assert change.after.startswith("auto, ") and change.after.endswith((" kBtu/h", " kW")), change
        for kept in change.mends:
            check = one.after.checks[kept.key]
            assert kept.verdict == check.verdict
            if kept.spare is not None:
                from_nought = check.limit - {"jet_impingement": 1, "blower": -1}.get(kept.key, 0)
                assert kept.spare == pytest.approx(abs(check.value - check.limit) / abs(from_nought))
    design, refused = from_link(one.link())
    assert not refused and design == last


def good_and_lit(design, count):
    """In how many shops no check but those of the days of building is at fault, and the one lighting card holds."""
    base = solve(shops.built(solve(design)))
    card, found = shops.card_of(base), 0
    for offs in shops.drawn(count):
        there = shops.moved(base.design, offs)
        result = there and solve(there, base)
        at_fault = result is None or any(c.fault for c in result.checks.values() if c.room != shops.BUILDING)
        found += not at_fault and (card is None or card(result) == shops.HOLDS)
    return found


@pytest.mark.parametrize(
    "texts, changed",
    [
        ({"small_gauge": "none"}, {"small_gauge": "auto"}),
        ({"slide_hole": "5/8 in"}, {"slide_hole": "none"}),
        ({"slide_hole": "15/32 in", "jet_drill": "#52", "small_gauge": "3 psi", "jet_gauge": "10 psi"}, {}),
    ],
)
def test_hole_jet_and_gauges_of_a_burner_that_stands_stay_unless_one_is_the_fault(texts, changed):
    found = make_good(Design.from_texts(texts), (), 60)
    assert {one.key: one.after for one in found.changes} == changed and not found.left


def test_where_the_one_lighting_card_holds_in_few_shops_more_ports_are_taken():
    """Six rows of small ports were good in 9 of 10 shops; but the flame could run back by the card in 19 of 40."""
    one = make_good(Design.from_texts({"port_diameter": "3/16 in", "rows": "3"}))
    assert not one.left and one.held.good == good_and_lit(one.after.design, one.held.shops) >= 8
    after = sample(one.after.design, 40)
    assert after.good >= 32 and dict(after.cards)["holds"] >= 32
    (rows,) = one.changes
    fewer = sample(one.after.design.changed({rows.key: rows.less[0]}), 40)
    assert fewer.good >= 32 and dict(fewer.cards)["holds"] < 24


@pytest.mark.parametrize("name", BAD)
def test_what_is_moved_for_shops_a_little_off_brings_two_of_ten_or_more(mended, name):
    """As a sample of ten shops has it, which is made by itself; and as all is set it would do without."""
    one = mended[name]
    held = [change for change in one.changes if change.less is not None]
    if one.held is None:
        assert not held and (one.left or not one.changes)
        return
    assert good_and_lit(one.after.design, one.held.shops) == one.held.good
    for change in held:
        rather, good = change.less
        less = one.after.design.changed({change.key: rather or one.before.design.text(change.key)})
        assert good_and_lit(less, one.held.shops) == good <= one.held.good - 2
    assert bad(solve(as_set(one))).keys() <= bad(one.after).keys()


def test_what_only_just_passes_is_moved_on():
    """All faults went, and 2 of 10 shops like its own were good."""
    one = make_good(designs(5, seed=11)[4])
    assert not one.left and any(change.less for change in one.changes)
    before, after = (sample(design, 30) for design in (as_set(one), one.after.design))
    assert before.begins_good and before.good < 15 < after.good
    lines = report.mended_text(one).splitlines()
    assert any("for shops a little off: " in line for line in lines)
    assert [line for line in lines if line.startswith("Built in 10 shops") and f"good in {one.held.good}." in line]


def test_what_is_mine_is_not_moved_for_shops_a_little_off_either():
    design = Design.from_texts({"firing_rate": "60 kBtu/h"})
    held = [change.key for change in make_good(design).changes if change.less and not change.less[0]]
    assert held
    assert not {*held} & {change.key for change in make_good(design, held).changes}


@pytest.mark.parametrize("sizes", ["in", "mm"])
def test_no_blower_is_bought_that_nobody_sells(sizes):
    """Through a pipe of 1/2 in a blower of 21 inH2O was bought."""
    one = make_good(Design.from_texts({"mix_pipe": "1/2", "inlet": "1/2", "sizes": sizes}))
    strongest = {key: max(parse_setting(BY_KEY[key], each[n]) for each in BLOWERS[sizes]) for n, key in BLOWER_SIZES}
    assert not one.left and {change.key for change in one.changes} >= {"inlet", "mix_pipe"}
    assert all(one.after.design.value(key) <= most for key, most in strongest.items())


def as_set(one):
    """What it is mended to without what is moved only for shops a little off."""
    rather = {change.key: change.less[0] or one.before.design.text(change.key) for change in one.changes if change.less}
    return one.after.design.changed(rather)


@pytest.mark.parametrize("name", BAD)
def test_each_check_is_said_once_and_what_gets_worse_too(mended, name):
    one = mended[name]
    data, faults = report.mended_data(one), {fault.key for fault in one.mended}
    assert [each["check"] for each in data["mended"]] == [fault.key for fault in one.mended]
    said = " ".join(words for change in data["changes"] for words in change["says"])
    assert not [fault.label for fault in one.mended if fault.label in said]
    for change, moved in zip(data["changes"], one.changes):
        others = {kept.label for kept in moved.mends if kept.key not in faults}
        assert all(label in " ".join(change["says"]) for label in others)
        assert ("other blower" in " ".join(change["says"])) == change["setting"].startswith("blower_")
    after, order = one.after.checks, ("good", "note", "caution", "stop")
    for each in data["mended"]:
        verdict, share = (after[each["check"]].verdict if each["check"] in after else "gone"), each["then"]
        assert share.startswith(verdict)
        if each["check"] == "blower" and verdict == "good":  # as on the first screen
            assert float(re.search(r"([\d.]+) times its need", share)[1]) == pytest.approx(
                one.after["blower_times"], rel=6e-3
            )
        elif inside := re.search(r"(\d+) %", share):
            assert int(inside[1]) <= 100
    worse = {
        key
        for key, was in one.before.checks.items()
        if key in after and order.index(after[key].verdict) > order.index(was.verdict)
    }
    assert {each["check"] for each in data["worse"]} == worse


def test_of_what_stays_each_cure_is_said_and_why_it_is_no_way(mended):
    assert not mended["overlapping ports"].left
    one = make_good(Design.from_texts(BAD["overlapping ports"]), ("port_diameter", "rows", "ports_per_row"))
    assert one.left and {"mine", "short"} <= {each.why for each in one.tried}
    for fault in one.left:
        tried = [each for each in one.tried if each.fault == fault.label]
        assert [each.label for each in tried] == [label for label, _ in fault.cures]
        assert all(bool(each.spoils) == (each.why == "spoils") for each in tried)
    lines = report.mended_text(one).splitlines()
    assert len([line for line in lines if line.startswith("   ")]) == len(one.tried)


@pytest.mark.parametrize(
    ("job", "texts", "moved"),
    [
        ("melt_bronze", {"chamber_diameter": "9 in", "chamber_length": "12 in"}, "opening_area"),
        (
            "melt_iron",
            {"chamber_diameter": "12 in", "chamber_length": "16 in", "work_rate": "20 lb/h"},
            "opening_depth",
        ),
    ],
)
def test_a_melt_is_mended_by_another_burner_or_opening(job, texts, moved):
    start = {one.key: one for one in JOBS}[job].inches
    one = make_good(Design.from_texts({**start, **texts}), most=100)
    assert bad(one.before) and moved in {change.key for change in one.changes}
    assert not bad(solve(from_link(one.link())[0])) and one.after.design.work_rate > 0


def test_many_ports_too_many_are_mended_by_rows_and_ports_at_once():
    """No single step is any better: each row or port less leaves all faults."""
    one = make_good(Design.from_texts({"rows": "12", "ports_per_row": "30"}))
    assert len(bad(one.before)) >= 8 and not one.left and not bad(solve(from_link(one.link())[0]))
    assert {change.key for change in one.changes} == {"rows", "ports_per_row"}


def test_what_two_changes_mend_takes_no_more():
    """It took four: rows, low fire, firing rate and a thicker block."""
    one = make_good(Design.from_texts({"low_fire": "15 %", "rows": "3"}), most=100)
    assert len(bad(one.before)) >= 5 and not one.left and not bad(solve(from_link(one.link())[0]))
    assert {change.key for change in one.changes} == {"low_fire", "rows"}


def test_no_blower_is_bought_where_as_few_changes_of_pipe_do():
    """Two sizes of pipe mend it as well as one size and a blower for 120 did."""
    after = Design.from_texts({"mix_pipe": "1", "inlet": "1-1/4"})
    assert not faults_of(solve(after))
    mended = make_good(Design.from_texts({"mix_pipe": "3/4", "inlet": "1"}))
    assert {change.key for change in mended.changes} == {"inlet", "mix_pipe"} and not mended.left
    assert all(change.price is None for change in mended.changes)


def test_single_faults_are_mended_by_a_single_change(mended):
    """Each of these is one step from good, as its check says."""
    base = set(bad(solve(Design.from_texts({}))))
    for name, key in {"a weak blower": "blower", "a small cylinder": "cylinder"}.items():
        one = mended[name]
        assert key in {fault.key for fault in one.mended} and key not in base
    for texts in ({"setback": "3/8 in"}, {"grip": "7/16 in"}):
        good = {"lining_limit", "low_fire_drift", "rate_for_need", "cross_light"}
        one = make_good(Design.from_texts({**texts, "firing_rate": "145 kBtu/h"}))
        assert {fault.key for fault in one.left} <= good


def test_what_is_mine_is_not_moved(mended):
    start = Design.from_texts({"blower_shutoff_pressure": "1/2 inH2O"})
    mine = ("blower_shutoff_pressure", "blower_free_flow", "firing_rate", "burner_count")
    one = make_good(start, mine, most=60)
    assert all(one.after.design.value(key) == start.value(key) for key in mine)
    assert {each.why for each in one.tried if each.label == BY_KEY["blower_shutoff_pressure"].label} <= {"mine"}
    free = mended["a weak blower"]
    assert {change.key for change in free.changes} & set(mine)


def test_what_is_mine_and_keeps_a_fault_is_named():
    """Marked as mine is what alone mends it; with that let go it is mended."""
    design = Design.from_texts(BAD["a weak blower"])
    keys = {"blower_shutoff_pressure", "blower_free_flow", "firing_rate", "burner_count"}
    one = make_good(design, keys, most=60)
    assert one.left and one.could and {*one.in_way} <= keys
    said = report.in_way_said(one)
    assert said in report.mended_text(one) and report.mended_data(one)["in_way_said"] == said
    assert all(BY_KEY[key].label.lower() in said for key in one.in_way)
    again = make_good(design, keys - {*one.in_way}, most=60)
    assert not {fault.key for fault in one.could} & {fault.key for fault in again.left}


def test_a_good_design_is_left_alone():
    texts = {"chamber_temperature": "1900 degF", "work_temperature": "1800 degF", "lining": "ifb_26 9 in"}
    found = make_good(Design.from_texts(texts))
    again = make_good(found.after.design) if found.changes else found
    assert again.changes == () or len(again.left) < len(found.left)


def test_a_chamber_that_no_fire_holds_is_answered():
    """Its own fire was asked for all the same, and that ended in a traceback."""
    for texts in (
        {"chamber_temperature": "3000 degF"},
        {"chamber_temperature": "2700 degF", "opening_area": "60 in2", "lining": "fireclay_brick 9 in"},
    ):
        start = Design.from_texts(texts)
        assert solve(start).part("need").needed_W is None
        found = make_good(start, most=60)
        assert "rate_for_need" in {fault.key for fault in found.left} | {fault.key for fault in found.mended}


def test_the_same_design_is_mended_the_same_way(mended):
    assert make_good(Design.from_texts(BAD["a thin lip"])).changes == mended["a thin lip"].changes


def test_good_on_the_command_line(capsys):
    assert main(["good", "--set", "blower_shutoff_pressure=0.5inH2O", "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert data["before"]["blower"] == "stop" and data["after"]["blower"] in ("good", "note")
    assert data["changes"] and {"setting", "label", "before", "after", "mends", "price", "says"} == set(
        data["changes"][0]
    )
    # A blower is bought, and says so; where notes stay not all is said to be good.
    blower = next(one for one in data["changes"] if one["setting"].startswith("blower"))
    assert blower["price"] == 120 and "another blower to buy, costs 120.00" in blower["says"]
    assert "note" in data["after"].values() and data["head"] == "All faults go; notes stay."
    assert main(["good", "--set", "blower_shutoff_pressure=0.5inH2O"]) == 0
    assert "->" in capsys.readouterr().out


def test_a_stop_that_becomes_a_caution_is_told_as_that():
    """It was left as *caution now, then caution*, and the head said that it stays."""
    cold = {"ambient_temperature": "10 degF", "firing_rate": "90 kBtu/h", "cylinder": "20"}
    before, after = (solve(Design.from_texts({**cold, "cylinder_count": count})) for count in ("1", "3"))
    assert (before.checks["cylinder"].verdict, after.checks["cylinder"].verdict) == ("stop", "caution")
    left = tuple(fault for fault in faults_of(after) if fault.key in ("cylinder", "curing_air"))
    mended = Mended(before, after, (Moved("cylinder_count", "Cylinders", "1", "3", ()),), left[:0], left, (), 0)
    assert report.mended_data(mended)["head"] == "0 of 2 faults go, 1 stop becomes a caution; the others stay."
    lines = report.mended_text(mended).splitlines()
    assert any(line.startswith("left, stop before: CAUTION At 90 kBtu/h") for line in lines)
    assert any(line.startswith("left: STOP At 10 °F") for line in lines)


def test_a_cap_that_is_too_thick_for_its_lip_may_be_made_thinner():
    design = Design.from_texts({"cap_thickness": "1/2 in", "setback": "5/8 in"})
    check = solve(design).checks["lip_width"]
    assert check.verdict == "caution" and ("cap_thickness", "lower") in {(c.setting, c.move) for c in check.changes}
    tried = [{**design.texts, "cap_thickness": text} for text in texts_of(design, BY_KEY["cap_thickness"], "lower")]
    assert "good" in {solve(Design.from_texts(texts)).checks["lip_width"].verdict for texts in tried}
    # As a tape has it: 0.4375in stood in the link.
    assert [texts["cap_thickness"] for texts in tried][:4] == ["auto", "7/16 in", "3/8 in", "1/4 in"]


def test_a_house_line_gives_what_it_gives():
    """No cure and no mending turns up the gas of a house; a pressure that no house has may come down to one."""
    texts = {"fuel": "natural_gas", "gas_pressure": "7 inH2O", "port_diameter": "9/32 in", "firing_rate": "auto"}
    design = Design.from_texts({**texts, "chamber_length": "14 in", "chamber_width": "7 in", "chamber_height": "6 in"})
    checks = solve(design).checks
    named = [key for key in checks for change in checks[key].changes if change.setting == "gas_pressure"]
    assert set(named) <= {"gas_pressure"}
    mended = make_good(design, most=60)
    assert mended.after.design.gas_pressure == design.gas_pressure and mended.changes
    assert (
        make_good(Design.from_texts({"fuel": "natural_gas", "gas_pressure": "138 inH2O"}), most=60)
        .after.checks["gas_pressure"]
        .verdict
        == "good"
    )


def test_a_closed_chamber_is_opened_before_the_changes_run_out():
    """Eight changes went to the burner, and two stops that only an opening cures were left."""
    bad_one = {
        "ports_per_row": "14",
        "rows": "5",
        "low_fire": "20 %",
        "opening_area": "0 in2",
        "block_thickness": "1 in",
    }
    design = Design.from_texts({**bad_one, "equivalence_ratio": "1.3"})
    assert {bad(solve(design)).get(key) for key in ("chamber_pressure", "lighting")} == {"stop"}
    found = make_good(design, most=60)
    assert "opening_area" in {change.key for change in found.changes}
    assert not {fault.key for fault in found.left} & {"chamber_pressure", "lighting"}


@pytest.mark.parametrize(
    "texts, lining",
    [
        ({"lining": "blanket_8lb 1 in"}, "2 1/2 in soft brick 26"),
        ({"lining": "ifb_23 2 1/2 in"}, "2 1/2 in soft brick 26, 2 1/2 in soft brick 23"),
        (
            {"lining": "insulating_castable 2 in", "chamber_temperature": "2350 degF", "work_temperature": "2200 degF"},
            "2 1/2 in soft brick 26",
        ),
    ],
)
def test_a_lining_over_its_limit_becomes_one_that_stands_it(texts, lining):
    """Thicker alone left the stop; a brick is as thick as it is sold. What is a caution only is mended by no brick that
    alone loses 1.7 times the heat."""
    one = make_good(Design.from_texts(texts))
    needed = [(change.key, change.after) for change in one.changes if change.less is None]
    assert needed == [("lining", lining)]
    assert not one.left and one.solves < 200


def test_the_chamber_stays_as_large_as_it_is():
    """It stands there; with all of the burner mine there is nothing to change, and no other chamber is proposed."""
    design = Design.from_texts({"chamber_length": "7 in", "chamber_width": "4 in", "chamber_height": "4 in"})
    found = make_good(design, [s.key for s in SETTINGS if s.key not in CHAMBER])
    assert not found.changes and "chamber_fit" in {fault.key for fault in found.left}
    assert not {one.label for one in found.tried} & {BY_KEY[key].label for key in CHAMBER}


def test_work_wanted_day_and_place_are_no_mend():
    """1,000 lb/h became 23, and a cold day 50 degF, for which seven cylinders were bought too many."""
    work = make_good(Design.from_texts({"work_rate": "1000 lb/h"}), most=30)
    assert not work.changes and {"rate_for_need", "throughput"} <= {fault.key for fault in work.left}
    assert {one.why for one in work.tried if one.label == BY_KEY["work_rate"].label} == {"asked"}
    day = make_good(Design.from_texts({"cylinder": "20", "ambient_temperature": "0 degF"}), most=60)
    moved = {change.key: change for change in day.changes}
    assert moved and not moved.keys() & STAYS and {fault.key for fault in day.left} == {"curing_air"}
    assert [one.why for one in day.tried] == ["place"]
    # The cheapest cylinders that do it, at most six side by side: what they cost, and one less is too few.
    count, size = day.after.design.cylinder_count, day.after.design.cylinder
    price = moved.get("cylinder", moved.get("cylinder_count")).price
    there = 2 if size == "20" else 0
    assert price == {"20": 60, "30": 90, "40": 110, "100": 220}[size] * (count - there) and count <= 6
    less = solve(as_set(day).changed({"cylinder_count": str(count - 1)}))
    assert bad(less).get("cylinder") and "cylinder" not in bad(day.after)
    for other, each, most in (("30", 90, 6), ("40", 110, 6), ("100", 220, 6)):
        for n in range(1, most + 1):
            if n * each < price:
                texts = {"cylinder": other, "cylinder_count": str(n)}
                assert bad(solve(as_set(day).changed(texts))).get("cylinder"), (other, n)


@pytest.mark.parametrize(
    ("lining", "time"),
    [
        ("dense_castable 1 in, ifb_26 2 1/2 in, blanket_8lb 1 in", "30 min"),
        ("dense_castable 1 1/2 in, blanket_8lb 2 in", "35 min"),
    ],
)
def test_a_lining_that_heats_up_too_late_becomes_a_lighter_one(lining, time):
    """Only thicker and hotter ones were tried: of 12 plausible designs none mended a heat-up out of reach."""
    one = make_good(Design.from_texts({"lining": lining, "heat_up_time": time}), ["heat_up_time", "lit_by"])
    assert "heat_up_reach" in {fault.key for fault in one.mended} and not one.left
    assert [change.key for change in one.changes if change.less is None] == ["lining"]
    density = {name: material(name).density_kg_m3 for name in material_keys()}
    weight = [sum(density[name] * thick_m for name, thick_m in each.design.lining) for each in (one.before, one.after)]
    assert weight[1] < weight[0] and one.solves < 200


def test_walls_that_glow_too_late_are_offered_a_lining_that_glows_sooner():
    """Each of these is behind a torch on its stand; of 14 such plausible designs no lining tried mended one."""
    for lining in ("dense_castable 1 1/2 in, blanket_8lb 2 in", "dense_castable 2 in, blanket_8lb 2 in"):
        design = Design.from_texts({"lining": lining, "lit_by": "stand"})
        assert bad(solve(design)).get("lighting_wait")
        tried = (design.changed({"lining": text}) for text in texts_of(design, BY_KEY["lining"], "choose"))
        faults = set(bad(solve(design)))
        assert any({*bad(solve(each))} <= faults - {"lighting_wait"} for each in tried)


def test_a_fire_taken_from_the_chamber_is_given_a_number_where_that_mends():
    """It was moved only for shops a little off: three changes in 567 solves, one of them a low fire of 85 %."""
    one = make_good(Design.from_texts({"firing_rate": "auto", "burner_count": "2"}))
    assert len(bad(one.before)) > 5 and not one.left
    assert [change.key for change in one.changes if change.less is None] == ["burner_count", "firing_rate"]
    assert one.changes[1].before.startswith("auto, ") and one.solves < 300


def test_what_holds_in_a_shop_a_little_off_may_take_two_moves_at_once():
    """Leaner fires leave less carbon monoxide, but take more air than its blower has: alone none did, in 0 of 10."""
    one = make_good(designs(5, 77)[4])
    assert not one.left and one.held.good >= 3
    moved = {change.key: change for change in one.changes}
    assert {"equivalence_ratio", "blower_shutoff_pressure"} <= moved.keys()
    assert all(moved[key].less is not None for key in ("equivalence_ratio", "blower_shutoff_pressure"))


def test_another_lining_keeps_the_layers_that_it_does_not_name():
    """Each of three is made thicker, or of something else, with the other two as they are."""
    layers = ("dense_castable", "ifb_26", "calcium_silicate_board")
    design = Design.from_texts({"lining": "dense_castable 1 in, ifb_26 2 1/2 in, calcium_silicate_board 1 in"})
    found = [[layer.split()[0] for layer in text.split(", ")] for text in texts_of(design, BY_KEY["lining"], "choose")]
    for at, own in enumerate(layers):
        other = [one for one in found if len(one) == 3 and one[at] != own and one[:at] == [*layers[:at]]]
        assert other and all(one[at + 1 :] == [*layers[at + 1 :]] for one in other), own
    assert [*layers[1:]] in found and ["blanket_8lb"] in found


OVEN = {  # of soft brick, its burner too large
    "chamber_length": "18 in", "chamber_width": "10 in", "chamber_height": "8 in", "opening_area": "6 in2",
    "lining": "ifb_23 4 1/2 in, blanket_8lb 1 in", "opening_depth": "5 in", "work_rate": "12 lb/h",
    "chamber_temperature": "1500 degF", "work_temperature": "1475 degF", "firing_rate": "30 kBtu/h",
    "rows": "3", "ports_per_row": "6", "low_fire": "50 %", "body_length": "6 in", "body_width": "3 in",
    "body_depth": "3 in", "setback": "5/8 in", "gas_pressure": "2 psi", "mix_pipe": "1", "inlet": "1-1/4",
    "blower_shutoff_pressure": "2 inH2O", "blower_free_flow": "30 cfm", "baffle_holes": "30",
    "baffle_hole_diameter": "1/4 in", "lit_by": "guard",
}  # fmt: skip


def test_no_lining_that_wastes_heat_mends_a_fault_of_too_much_fire():
    """An inch of blanket for the brick mended both, and took half as much gas again to hold it."""
    design = Design.from_texts(OVEN)
    assert {"low_fire_drift", "lining_limit"} <= bad(solve(design)).keys()
    one = make_good(design, ["low_fire", "firing_rate"])
    assert one.after["hold_rate"] <= one.before["hold_rate"] * (1 + 1e-9)
    assert {"low_fire_drift", "lining_limit"} <= {fault.key for fault in one.left}
    said = {(tried.fault, tried.label): report.tried_text(tried) for tried in one.tried}
    label = one.after.checks["lining_limit"].label
    assert said[label, "Lining"] == "Lining, another: mends it only by losing more heat, which burns more gas."


def test_a_stop_that_stays_is_not_made_worse():
    """Blanket for soft brick 26 heats up in time, and stands 450 degF less of the 3200 degF that melt either."""
    one = make_good(Design.from_texts({"chamber_temperature": "3200 degF", "firing_rate": "300 kBtu/h"}))
    was, now = (each.checks["lining_limit"] for each in (one.before, one.after))
    assert was.verdict == now.verdict == "stop"
    assert now.value - now.limit <= was.value - was.limit


def test_what_shops_a_little_off_spoil_is_not_told_as_well_inside_its_limit():
    """A cylinder of butane, good by more than its limit as it is set, failed in 7 of 10 shops."""
    after = solve(Design())
    kept = SimpleNamespace(mends=(Kept("cylinder", "Cylinder", "good", 4.0),))
    for spoilt, said in (
        ((("cylinder", 7),), "good, but at fault in 7 of 10 shops a little off"),
        ((("damper", 7),), "good, well inside its limit"),
    ):
        mended = SimpleNamespace(after=after, changes=(kept,), held=Held(10, 3, spoilt))
        assert report.then("cylinder", mended) == said


def test_burners_that_are_added_are_made_and_paid_for():
    """From 1 to 2 left one to make at once: list and cost were of half of what the chamber gets."""
    design, mine = Design.from_texts({"chamber_length": "40 in"}), ["body_length"]
    found = make_good(design, mine)
    moved = {change.key: change for change in found.changes}
    assert (moved["burner_count"].after, moved["batch_size"].after) == ("2", "2") and moved["batch_size"].price is None
    one = solve(found.after.design.changed({"burner_count": "1", "batch_size": "1"}))
    more = found.after["cost_batch"] - one["cost_batch"]
    assert more > 500 and moved["burner_count"].price == pytest.approx(more)
    assert f"costs {more:.2f} more" in report.change_said(moved["burner_count"], found)
    assert found.after.tables["shopping"].title == "Shopping list for the batch"
    held = make_good(design, [*mine, "batch_size"]).after
    assert (held.design.burner_count, held.design.batch_size) == (2, 1)
    assert held.tables["shopping"].title == "Shopping list for 1 of the 2 burners of the chamber"


@pytest.mark.parametrize("system, lining", [
    ("mm", "dense_castable 25 mm, ifb_26 64 mm, blanket_8lb 25 mm"),
    ("in", "dense_castable 1 in, ifb_26 2 1/2 in, blanket_8lb 1 in"),
])  # fmt: skip
def test_a_lining_is_offered_as_thick_as_it_is_cast_or_sold(system, lining):
    """Castable of 18.8 mm was offered, and brick of 95."""
    design = Design.from_texts({"units": system, "sizes": system, "lining": lining})
    cast, sheet = (1, 12.5) if system == "mm" else (1 / 8, 1 / 2)
    seen = set()
    for text in texts_of(design, BY_KEY["lining"], "choose"):
        for name, thick_m in parse_setting(BY_KEY["lining"], text):
            own, size = thick_m / (0.001 if system == "mm" else 0.0254), thick_m / 0.0254
            seen.add((name, round(own, 2)))
            if name == "ifb_26":
                assert any(abs(size - one) < 0.02 for one in (2.5, 3, 4.5, 5, 6, 7.5, 9)), text
            elif name == "dense_castable":
                assert abs(own / cast - round(own / cast)) < 1e-6, text
            elif name == "blanket_8lb":
                assert abs(own / sheet - round(own / sheet)) <= 0.0401, text  # 38 mm is sold for 37.5
    assert len(seen) > 6
