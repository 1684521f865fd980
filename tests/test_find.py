"""Give me a burner: the best of small shops against brute force, the shops of daily life, and what cannot be."""

import itertools
import json
import re
from collections import Counter
from dataclasses import replace
from functools import cache
from math import inf
from random import Random

import pytest
from designs import DIM

from burnercalc import Design, InputErrors, from_link, shopping, solve, worker
from burnercalc.cli import main
from burnercalc.find import find, hardy, make_good, purchase, read_have, report, sample, tornado
from burnercalc.find import space as space_module
from burnercalc.find.answer import _limited_by as limited_by
from burnercalc.find.answer import number
from burnercalc.find.bill import bill, first_fire_gas
from burnercalc.find.cannot import question
from burnercalc.find.choices import AXES
from burnercalc.find.have import KINDS, Have, gathered
from burnercalc.find.on_screen import in_question
from burnercalc.find.purchase import longer_tubes
from burnercalc.find.score import BY_TERM, MARGINS, TERMS, thinness, weights_of
from burnercalc.find.search import Found, dive, first_of, followed, others, rank, refine, search
from burnercalc.find.shops import HOLDS, built, card_of, moved
from burnercalc.find.space import Space
from burnercalc.link import accepted
from burnercalc.making.stock import board
from burnercalc.parts import PARTS
from burnercalc.settings import BY_KEY
from burnercalc.units import parse_quantity

# Small shops: what is not at hand is mine, so that every design can be solved whole.
KEPT = {
    "burner_count": "1",
    "firing_rate": "120 kBtu/h",
    "low_fire": "25 %",
    "setback": "9/16 in",
    "body_length": "8 in",
    "pattern": "staggered",
    "block_thickness": "2 in",
    "inlet": "2",
    "baffle_holes": "40",
    "mix_pipe": "1-1/2",
    "mix_pipe_length": "18 in",
    "gas_pressure": "10 psi",
    "jet_drill": "",
    "cylinder": "100",
    "cylinder_count": "2",
}
SMALL = {
    "three pins": ("tube: 4 x 4 x 3/16 in\npins: 1/4 in; 9/32 in; 5/16 in", {"rows": "4"}, ()),
    "one pin": ("tube: 3 1/2 x 3 1/2 x 3/16 in\npins: 9/32 in", {}, ()),
    "two tubes": ("tube: 4 x 4 x 3/16 in; 3 x 3 x 3/16 in\npins: 1/4 in", {}, ()),
    "a tube to turn": ("tube: 4 x 3 x 3/16 in\npins: 1/4 in", {}, ()),
    "a short piece": ("tube: 4 x 4 x 3/16 in, 7 in\npins: 1/4 in", {"rows": "4"}, ("body_length",)),
    "blocks": ("tube: 4 x 4 x 3/16 in\npins: 1/4 in", {"rows": "5"}, ("block_thickness",)),
    "low fires": ("tube: 4 x 4 x 3/16 in\npins: 1/4 in", {"rows": "5"}, ("low_fire",)),
    "inlets": ("tube: 4 x 4 x 3/16 in\npins: 1/4 in\npipe: 1-1/2; 2; 2-1/2", {"rows": "5"}, ("inlet", "baffle_holes")),
    "mix pipes": (
        "tube: 4 x 4 x 3/16 in\npins: 1/4 in\npipe: 1; 1-1/2; 2",
        {"rows": "5"},
        ("mix_pipe", "mix_pipe_length"),
    ),
    "blowers": ("tube: 4 x 4 x 3/16 in\npins: 1/4 in\nblower: 1 inH2O 20 cfm; 3 inH2O 80 cfm; 8 inH2O 150 cfm", {}, ()),
    "a curve": ("tube: 4 x 4 x 3/16 in\npins: 1/4 in\nblower: 0 cfm 5 inH2O, 60 cfm 2 inH2O; 2 inH2O 30 cfm", {}, ()),
    "jets": ("tube: 4 x 4 x 3/16 in\npins: 1/4 in\ndrill: #54; #50; #60", {"rows": "5"}, ("gas_pressure", "jet_drill")),
    "cylinders": (
        "tube: 4 x 4 x 3/16 in\npins: 1/4 in\ncylinder: 20 lb x 2; 100 lb x 2",
        {"rows": "5"},
        ("cylinder", "cylinder_count"),
    ),
    "metric": (
        "tube: 100 x 100 x 4 mm; 120 x 80 x 4 mm\npins: 6 mm; 8 mm",
        {
            "units": "mm",
            "rows": "4",
            "setback": "14 mm",
            "body_length": "200 mm",
            "block_thickness": "50 mm",
            "firing_rate": "35 kW",
        },
        (),
    ),
    "a line": (
        "tube: 4 x 4 x 3/16 in\npins: 1/4 in; 5/16 in\nline: 7 inH2O",
        {"fuel": "natural_gas", "gas_pressure": "7 inH2O"},
        ("cylinder", "cylinder_count"),
    ),
    "a weak blower": ("tube: 4 x 4 x 3/16 in\npins: 3/16 in; 1/4 in\nblower: 1/2 inH2O 20 cfm", {}, ()),
    "small pins": ("tube: 4 x 4 x 3/16 in\npins: 1/8 in; 5/32 in", {}, ()),
    "large pins": ("tube: 4 x 4 x 3/16 in\npins: 3/8 in; 7/16 in", {}, ()),
    "a round body": (
        "round: 6 x 3/16 in, 24 in\npins: 1/4 in",
        {"body_length": "6 in", "body_width": "6 in", "body_kind": "pipe", "pattern": "hexagonal"},
        ("body_length", "pattern", "body_width", "body_kind"),
    ),
    "plates": ("plate: 3/16 in, 24 x 24 in\npins: 1/4 in", {}, ()),
    "bags": ("tube: 4 x 4 x 3/16 in\npins: 1/4 in\nbag: dense_castable x 1; insulating_castable x 2", {}, ()),
    "lips": ("tube: 4 x 4 x 3/16 in\npins: 1/4 in", {"rows": "5"}, ("setback",)),
    "lips of a hot box": (
        "tube: 3 x 3 x 3/16 in\npins: 1/4 in",
        {"low_fire": "15 %", "firing_rate": "90 kBtu/h", "rows": "3", "ports_per_row": "10"},
        ("setback", "block_thickness"),
    ),
    "lips of plates": (
        "plate: 3/16 in, 24 x 24 in\npins: 5/16 in",
        {"rows": "4", "ports_per_row": "9", "low_fire": "50 %"},
        ("setback",),
    ),
    "fires": ("tube: 4 x 4 x 3/16 in\npins: 1/4 in", {"rows": "5", "ports_per_row": "11"}, ("firing_rate",)),
}


def small(name):
    """(start, have) of a small shop."""
    text, texts, free = SMALL[name]
    kept = {key: value for key, value in {**KEPT, **texts}.items() if key not in free and key != "units"}
    if "cylinder" in text or "line" in text:
        kept.pop("cylinder", None), kept.pop("cylinder_count", None)
    own = {"blower_shutoff_pressure": "4 inH2O", "blower_free_flow": "60 cfm"} if "blower" not in text else {}
    kept = {key: value for key, value in {**kept, **own}.items() if key not in ("fuel", "body_width", "body_kind")}
    start = Design.from_texts({key: text for key, text in texts.items() if key in ("units", "fuel")})
    mine = "; ".join(f"{key}={value}" for key, value in kept.items())
    buy = ", ".join(kind for kind in ("cylinder", "pipe", "blower") if f"{kind}:" not in text)
    return start, read_have(f"{text}\nbuy: {buy}\nmine: {mine}", start.units)


def leaves(space):
    """Every whole node, none left out by a bound; what is costly is not asked of it."""
    stack = [space.root]
    while stack:
        node = stack.pop()
        if node.level == len(AXES) - 1:
            yield node
        else:
            stack += [kid for one in space.menu(node) if (kid := space.child(node, one)) is not None]


NOUGHT = {"jet_impingement": 1, "blower": -1}  # a share of 1 is none too many; nothing to spare is just enough


def over(check):
    """How far over its limit, as a share, from what is none of it: see NOUGHT."""
    least = NOUGHT.get(check.key, 0)
    value, limit = check.value - least, check.limit - least
    return min(1, abs(value - limit) / max(abs(limit), abs(value), 1e-12))


def lit(result):
    """Share of the chamber's longer side under ports and half its height beside them, of burners in a row."""
    d, ports = result.design, result.part("face").ports
    box = d.chamber_shape == "box"
    side = max(d.chamber_length, d.chamber_width) if box else d.chamber_length
    high = d.chamber_height if box else d.chamber_diameter
    field = max(x for x, _ in ports) - min(x for x, _ in ports) + d.port_diameter
    if d.body_kind != "pipe":  # ports from edge to edge of the window
        assert field == pytest.approx(result["window_length"] - 2 * d.edge_margin)
    return min(1, d.burner_count * (field + high / 2) / side)


def whole(space, node, before):
    """(result, (stops, cautions, points)) of a design by itself: solved whole, scored by the README's words."""
    result = solve(Design.from_texts(node.texts), before)
    bad = [check for check in result.checks.values() if check.verdict in ("caution", "stop")]
    wrong = 0.0
    for check in bad:
        if check.value is None or check.limit is None:
            wrong += 1
        else:
            wrong += over(check)
    thin = 0.0
    for check in result.checks.values():
        if check.key in MARGINS and check.verdict == "good" and check.value is not None and check.limit:
            reach = check.limit - NOUGHT.get(check.key, 0)
            check_thin = max(0.0, 1 - abs(check.value - check.limit) / abs(reach) / 0.1)
        else:
            check_thin = 0.0
        spoilt = hardy.spoilt(check.key, check.verdict, result.parts)
        thin += check_thin if spoilt is None else 2 + spoilt
    lacking = space.bill(node).lacking
    # A mould each at the most, wax or not; a share of the pins that they take is missing.
    wrong += lacking.get("pins", 0) / (result["port_count"] * min(result.design.batch_size, result.design.moulds))
    work = result.part("cost").work_each_s + 180 * result["port_count"] + 60 * result.design.baffle_holes
    turndown = result["turndown"]
    points = (
        space.bill(node).to_spend / 100
        + (1 - lit(result)) / 0.05
        + result["flow_spread"] / 0.05
        + max(result.design.low_fire, min(1, 1 / turndown) if turndown else 1) * 10
        + result.design.batch_size * work / (4 * 3600)
        + result["batch_days"] / 7
        + thin / 0.5
        + 10 * wrong
    )
    stops = sum(check.verdict == "stop" for check in bad)
    return result, (stops + len(lacking), len(bad) - stops, points)


def test_days_are_those_of_all_that_are_made():
    """They were those of one burner: of six ten days were told where the calendar has 32."""
    for texts in ({"batch_size": "6"}, {"burner_count": "2", "batch_size": "2"}):
        found = find(Design.from_texts(texts), read_have("buy: all\nmine: burner_count"), budget=400)
        for offer in found.offers:
            assert offer.terms["days"] == offer.result["batch_days"] > offer.result["days_in_all"]
            assert f"{offer.result['batch_days']} days to the last burner" in report.says(offer)


@pytest.mark.parametrize(
    ("shop", "high"),
    [
        ("regulator: 0 to 3 psi\ncylinder: 100 lb x 1\nbuy: all", 3 * 6894.757),
        ("regulator: 5 psi\nbuy: tube, pins, pipe, blower, cylinder", 5 * 6894.757),
        ("regulator: 10 psi\nbuy: all", 10 * 6894.757),
    ],
)
def test_a_regulator_at_hand_counts_where_it_reaches_what_the_train_asks(shop, high):
    """One to 3 psi was counted where the train asks 3.27 out of it."""
    found = find(Design.from_texts({}), read_have(shop))
    for offer in found.offers:
        asked = next(part.slots["outlet"] for part in offer.result.part("train").parts if part.key == "regulator")
        counted = offer.bill.own["regulator"]
        assert asked <= 1.01 * high or not counted  # the losses of hose and valves are known to a hundredth of it
        if not counted:
            assert "regulator" in offer.bill.lacking or any("regulator" in line for line in report.train_parts(offer))
    assert found.offers[0].own_verdict == "good" and found.offers[0].bill.own["regulator"] == 1


def test_a_regulator_of_a_cylinder_is_none_of_a_line():
    """It was counted as the burner's own on a line of 11 in of water, which its list names all the same."""
    shop = "line: 11 inH2O\nregulator: {}\nbuy: tube, pins, pipe, blower, regulator"
    on_line = {"fuel": "propane", "gas_from": "line", "line_pressure": "11 inH2O", "gas_pressure": "6 inH2O"}
    for kind, there in (("0 to 30 psi", 0), ("3 inH2O to 10 inH2O", 1)):
        space = Space(Design.from_texts(on_line), read_have(shop.format(kind)))
        burner = solve(Design.from_texts(on_line)).parts
        assert any(part.key == "line_regulator" for part in burner.part("train").parts)
        made = bill(burner, {}, space.have, {})
        assert made.own["line_regulator"] == there


def test_of_what_lies_there_and_may_not_be_bought_none_is_bought():
    """Two blowers and two regulators more were bought for three chambers, of bags alone a stop told that."""
    shop = "blower: 4 inH2O 60 cfm{}\nregulator: 0 to 30 psi{}\nbuy: tube, pins, pipe, drill, bag, board, cylinder"
    three = Design.from_texts({"batch_size": "3"})
    found = find(three, read_have(shop.format("", "")), budget=600)
    for offer in found.offers:
        assert offer.own_verdict == "stop" and offer.bill.lacking.keys() >= {"blower", "regulator"}
        texts = [fault.text for fault in offer.faults]
        assert "There are 2 blowers too few, and none may be bought." in texts
    enough = shop.format("; 4 inH2O 60 cfm" * 2, "; 0 to 30 psi" * 2)
    assert not find(three, read_have(enough), budget=600).offers[0].bill.lacking


@pytest.mark.parametrize("name", SMALL)
def test_the_best_of_a_small_shop_is_that_of_brute_force(name):
    start, have = small(name)
    space = Space(start, have)
    weights = weights_of({})
    found = search(space, weights, budget=2000)
    assert found.complete and found.pool
    best = found.best(weights)
    scores, before = {}, None
    # Walked in the tree of the search, whose parts are made by now; each is scored as a design by itself.
    for node in leaves(space):
        before, scores[tuple(sorted(node.texts.items()))] = whole(space, node, before)
    assert len(scores) > 1
    least = min(scores.values())
    ours = scores[tuple(sorted(best.texts.items()))]
    assert ours[:2] == least[:2] and ours[2] <= 1.01 * least[2], (len(scores), ours, least)
    # What the tree says of a design is what the whole design says.
    assert best.rank(weights)[:2] == ours[:2] and best.rank(weights)[2] == pytest.approx(ours[2], rel=1e-9)


def test_a_bound_is_never_above_what_is_below_it():
    """Stops, cautions and points of a node only grow with depth: else the search would leave good designs out."""
    start, have = small("inlets")
    space, weights = Space(start, have), weights_of({})
    for leaf in leaves(space):
        node, way = space.root, [space.root]
        for one in leaf.chosen:
            node = space.child(node, one)
            way.append(node)
        # Before it is settled, and then.
        assert space.settle(leaf)
        ranks = [*(one.rank(weights) for one in way[:-1]), leaf.rank(weights, by_looks=True), leaf.rank(weights)]
        assert ranks == sorted(ranks) and node is leaf and leaf.settled
        assert all(later[part] >= first[part] for first, later in itertools.pairwise(ranks) for part in range(2))


@pytest.mark.parametrize("name", ["lips", "lips of plates"])
def test_a_wider_lip_is_taken_where_it_mends(name):
    """Only the narrowest was looked at: of each of these as many cautions or one more, further over their limits."""
    start, have = small(name)
    least = {"lips": "9/16 in", "lips of plates": "3/8 in"}[name]
    narrow = replace(have, mine={**have.mine, "setback": least})
    wide, kept = (search(Space(start, one), weights_of({})).best(weights_of({})) for one in (have, narrow))
    assert kept.texts["setback"] == least and wide.values["setback"] > kept.values["setback"]
    assert kept.words and wide.rank(weights_of({})) < kept.rank(weights_of({}))


BOUNDED = {  # shops whose money is made up in other ways
    "all is bought": ("", {}),
    "much is there": (
        "tube: 4 x 4 x 3/16 in, 8 ft\npins: 1/4 in\npipe: 1-1/2; 2; 3\nblower: 4 inH2O 60 cfm\nbag: dense_castable x 1"
        "\nregulator: 0 to 30 psi\nboard: ply 3/4\ncylinder: 20 lb\nbuy: bag, cylinder\n"
        "mine: burner_count=3; batch_size=6",
        {},
    ),
    "a blower each": ("mine: burner_count=3", {"blowers": "each"}),
    "a train at its own price": ("", {"price_train": "300", "batch_size": "5", "moulds": "2"}),
    "two inlets": ("buy: all", {"inlets": "2"}),
    "a large fire": ("mine: firing_rate=700 kBtu/h", {"chamber_length": "40 in"}),
    "a guard lights it": ("", {"lit_by": "guard"}),
    "house gas": ("line: 7 inH2O", {"fuel": "natural_gas"}),
    "propane of a line": ("line: 11 inH2O", {}),
    "a line and cylinders": ("line: 11 inH2O\ncylinder: 100 lb x 2", {}),
}


@pytest.mark.parametrize("name", BOUNDED)
def test_money_and_hours_known_early_are_never_more_than_they_come_to(name):
    text, texts = BOUNDED[name]
    start = Design.from_texts(texts)
    space, dice, seen = Space(start, read_have(text)), Random(7), 0
    while seen < 6:
        node, way = space.root, [space.root]
        while node is not None and node.level < len(AXES) - 1:
            menu = space.menu(node)
            node = space.child(node, dice.choice(menu)) if menu else None
            way += [node] if node else []
        if node is None:
            continue
        seen += 1
        space.settle(node)
        # Where nobody turns to low fire its gas is spared, but that is a fault, which counts before any money.
        spared = 0.0 if node.burner.part("first_fire").fuel_kg else first_fire_gas(node.burner)
        assert not spared or {"turning", "lighting", "lighting_wait"} & node.words.keys()
        for key in ("money", "work"):
            known = [one.terms[key] for one in way[:-1] if key in one.terms] + [node.looked[key], node.terms[key]]
            known[-2:] = [round(one + (spared if key == "money" else 0.0), 2) for one in known[-2:]]
            assert known == sorted(known) and len(set(known)) > 1
        assert node.terms["money"] == pytest.approx(space.bill(node).to_spend)
        # Most of it is known before the box is chosen, so that dear fires are left early.
        assert next(one.terms["money"] for one in way if "money" in one.terms) > 0.3 * node.terms["money"]


def test_parts_screen_before_anything_is_solved_whole():
    start, have = small("three pins")
    space = Space(start, have)
    dear = {"as_cast", "fired_heat_up", "cost", "schedule"}
    assert {*space_module.LATE, *dear} <= PARTS.keys()
    early = [axis.name for axis in AXES].index("face")
    for one in space.menu(space.root):
        node = space.child(space.root, one)
        while node.level < early - 1:
            node = space.child(node, space.menu(node)[0])
        assert not node.burner.made() & dear


# The shops of daily life

SHOPS = {
    "a tube, pins and a blower": ("tube: 3 1/2 x 3 1/2 x 3/16 in, 8 ft\npins: 9/32 in\nblower: 3 inH2O 80 cfm", {}),
    "metric": ("tube: 100 x 50 x 3 mm, 2 m\npins: 8 mm", {"units": "mm"}),
    "only plate": ("plate: 3/16 in, 48 x 24 in", {}),
    "a cold day, one cylinder": ("cylinder: 20 lb", {"ambient_temperature": "5 degF"}),
    "house gas": ("line: 7 inH2O\nbuy: all", {"fuel": "natural_gas"}),  # plates and rounds too led to none that is lit
    "twelve from one stick": ("tube: 4 x 4 x 3/16 in, 20 ft\nmine: batch_size=12", {}),
}


STEPS = {"metric": 1400}  # of which another way is among the answers


LEAST_WRONG = ("a cold day, one cylinder",)  # of which the menus hold no good design
# Where little on the menus is lit at once, the first good design comes later.
LATE = {"twelve from one stick": 250}
MAY_STAND = {"a cold day, one cylinder": {"cylinder"}}


@pytest.fixture(scope="module")
def answers():
    found = {}
    for name, (text, texts) in SHOPS.items():
        start = Design.from_texts(texts)
        have = read_have(text, start.units)
        found[name] = start, have, find(start, have, budget=STEPS.get(name, 700))
    return found


@pytest.mark.parametrize("name", SHOPS)
def test_a_shop_gets_designs_that_differ_and_that_no_check_refuses(answers, name):
    start, _, answer = answers[name]
    assert 1 <= len(answer.offers) <= 5
    assert len({tuple(sorted(offer.design.texts.items())) for offer in answer.offers}) == len(answer.offers)
    given = {fault.key for fault in answer.given}
    for offer in answer.offers:
        design, refused = from_link(offer.link("https://example.org/"))
        assert not refused and design == offer.design
        again = solve(design)
        stops = {check.key for check in again.checks.values() if check.verdict == "stop"} - given
        # None but where the shop cannot, and then it is said: too little cylinder.
        assert stops <= (MAY_STAND[name] if name in MAY_STAND else set())
        assert (offer.own_verdict == "stop") == bool(stops) and offer.verdict == again.worst
        assert {fault.key for fault in offer.faults} == {
            check.key for check in again.checks.values() if check.verdict in ("caution", "stop")
        } - given
        # Chamber, work and fuel are the question and stay.
        for key in ("chamber_length", "chamber_temperature", "work_rate", "fuel", "ambient_temperature", "lining"):
            assert design.value(key) == start.value(key)
    kinds = [kind for offer in answer.offers for kind in offer.kinds]
    assert kinds[0] == ("least wrong" if answer.in_the_way else "best of all") and len(
        set(kinds) - {"another way"}
    ) == len([k for k in kinds if k != "another way"])


def test_what_lies_there_is_mine_in_what_is_found(answers):
    """A tube, pins and a blower; the pipe and the cylinder are bought."""
    _, _, answer = answers["a tube, pins and a blower"]
    tube = {"body_kind", "body_width", "body_depth", "wall"}
    blower = {"blower_shutoff_pressure", "blower_free_flow", "blower_curve"}
    for offer in answer.offers:
        assert set(offer.mine) == tube | blower | {"port_diameter"}


def test_a_body_as_long_as_its_piece_stays_as_it_is():
    """*Make it good* took a box of plate longer than the sheet that it is cut from; of a larger one it may be moved."""
    sizes = {"body_length", "body_width", "body_depth"}
    for sheet, stays in (("12 x 12 in", sizes), ("48 x 48 in", set())):
        offers = find(Design(), read_have(f"plate: 3/16 in, {sheet}\npins: 1/4 in"), budget=150).offers
        assert offers and all(sizes & set(offer.mine) == stays for offer in offers)


def test_a_tube_that_lies_there_is_no_fault_though_no_rack_holds_it():
    """Find told a shop with a tube of 3 1/2 x 2 1/2 in that nothing of it is good, as no such tube is commonly sold."""
    have = read_have("tube: 3 1/2 x 2 1/2 x 1/8 in, 14 in\npins: 5/16 in\nblower: 3 inH2O 40 cfm")
    best = find(Design(), have, budget=100).offers[0]
    assert best.result.checks["tube_on_rack"].verdict == "note" and best.own_verdict == "good"


def test_pipe_and_drill_that_lie_there_are_mine_in_what_is_found():
    """*Make it good* mended the least wrong by another drill than the only one there, where find had said that none of
    the shop is good; what it takes is told as what to buy."""
    have = read_have("tube: 4 x 4 x 3/16 in\npins: 1/4 in\npipe: 1-1/2\ndrill: #70\nbuy: blower, cylinder")
    answer = find(Design(), have, budget=300)
    assert answer.in_the_way and {"inlet", "mix_pipe", "jet_drill"} <= set(answer.offers[0].mine)
    assert "jet_drill" not in {
        change.key for change in make_good(answer.offers[0].design, answer.offers[0].mine).changes
    }


def words_of(offer):
    """Stops and cautions, which are ranked by before any number."""
    return sorted(fault.verdict for fault in offer.faults)


@pytest.mark.parametrize("name", SHOPS)
def test_the_best_in_a_kind_is_the_best_of_those_shown(answers, name):
    _, _, answer = answers[name]
    for offer in answer.offers:
        for term in TERMS:
            if term.kind in offer.kinds:
                alike = [other for other in answer.offers if words_of(other) == words_of(offer)]
                least = min(other.terms[term.key] for other in alike)
                # Two that read alike are alike, such as turndowns of 2.39 and 2.42, both 2.4 to 1 on the card.
                value = offer.terms[term.key]
                assert value <= least + term.grain or number(term, value) == number(term, least)


def test_the_fire_covers_the_chamber_as_a_builder_would_have_it(answers):
    """One body of 4 in was the best for a foot of chamber, and one of 6 in for four, while nothing asked for more."""
    start = Design.from_texts({"chamber_length": "48 in", "work_rate": "30 lb/h"})
    long, short = find(start, read_have(""), budget=500), answers["a tube, pins and a blower"][2]
    for answer, least in ((long, 0.3), (short, 0.75)):
        best = answer.offers[0]
        assert best.own_verdict == "good" and lit(best.result) >= least
    # It stands on every card; where it is little, with what heats the rest.
    for offer in (offer for answer in (long, short) for offer in answer.offers):
        assert offer.result["chamber_lit"] == pytest.approx(lit(offer.result))
        assert f"fire on {100 * lit(offer.result):.0f} % of the chamber's length" in report.says(offer)
        told = [words for words in offer.gives_up if words.endswith("the rest heated by gas and glowing walls alone")]
        assert bool(told) == (lit(offer.result) < 0.6)


def test_the_order_in_which_a_shop_is_typed_is_no_part_of_the_question():
    """Two plates the other way round were another burner, five points worse."""
    start = Design.from_texts({"chamber_length": "18 in", "work_rate": "15 lb/h"})
    plates, pins = ["3/16 in, 24 x 24 in", "5 mm, 600 x 400 mm"], ["1/4 in, 36 in", "3/16 in"]
    lines = [f"plate: {'; '.join(plates)}", f"pins: {'; '.join(pins)}", "drill: 1.2 mm; #48"]
    turned = ["drill: #48; 1.2 mm", f"pins: {'; '.join(pins[::-1])}", f"plate: {'; '.join(plates[::-1])}"]
    as_typed, other = (read_have("\n".join(each)) for each in (lines, turned))
    assert as_typed.in_order() == other.in_order() and as_typed != other
    found = [[offer.link() for offer in find(start, each, budget=150).offers] for each in (as_typed, other)]
    assert found[0] == found[1]


def test_what_is_mine_needs_nothing_that_the_search_may_choose():
    """A round body could not be asked for: its length and pattern, that nobody had typed, were refused."""
    have = read_have("round: 6 x 3/16 in\nmine: body_kind=pipe; pattern=rings")
    best = find(Design(), have, budget=150).offers[0].design
    assert (best.body_kind, best.pattern, best.text("body_width")) == ("pipe", "rings", "6 in")
    with pytest.raises(InputErrors) as refused:
        find(Design(), read_have("mine: body_kind=pipe; pattern=straight"))
    assert {error.field for error in refused.value.errors} == {"pattern"}


def test_more_stock_at_hand_leads_to_the_tube_that_is_best_of_it():
    """It ended with a box of plates at 24.6 points, where the tube of 50 x 100 alone gave 16.3; 17.4 since the
    guard costs 110 more."""
    rest = "pins: 8 mm; 6 mm; 5 mm\nblower: 750 Pa 140 m3/h\ncylinder: 100 lb x 1"
    tubes = "tube: 100 x 50 x 3 mm, 3 m; 80 x 80 x 4 mm, 2 m; 120 x 80 x 4 mm, 2 m"
    have = read_have(f"{tubes}\nround: 150 x 4 mm, 1 m\nplate: 4 mm, 600 x 600 mm\n{rest}", "mm")
    best = find(Design.from_texts({"units": "mm", "sizes": "mm"}), have).offers[0]
    assert best.verdict == "good" and best.points < 17.4 * 1.05
    assert [best.design.text(key) for key in ("body_kind", "body_width", "body_depth")] == ["tube", "50 mm", "100 mm"]


MORE = {  # a shop, its day, and what lies there besides
    "thirteen bodies": (
        {"chamber_temperature": "2000 degF", "work_temperature": "1850 degF"},
        "tube: 4 x 3 x 3/16 in, 36 in; 4 x 4 x 1/4 in, 36 in",
        "6 x 3 x 3/16 in, 36 in; 80 x 80 x 4 mm, 48 in; 2 1/2 x 2 1/2 x 3/16 in, 48 in; 100 x 50 x 3 mm, 24 in; "
        "5 x 5 x 3/16 in, 48 in; 120 x 80 x 4 mm, 24 in; 3 1/2 x 3 1/2 x 3/16 in, 36 in\nplate: 5 mm, 600 x 400 mm\n"
        "round: 6 x 3/16 in, 24 in; 150 x 4 mm, 1 m",
        "pins: 6 mm{; 7/32 in}\npipe: 1-1/2{; 1; 1-1/4; 2-1/2}\nblower: 0.5 inH2O 30 cfm{; 8 inH2O 150 cfm; "
        "10 inH2O 60 cfm; 2 inH2O 60 cfm; 1 inH2O 40 cfm; 12 inH2O 250 cfm; 6 inH2O 80 cfm; 1 inH2O 150 cfm; "
        "2 inH2O 200 cfm}\nline: 11 inH2O\nbuy: bag, cylinder",
    ),
    "seven pins": (
        {"chamber_length": "18 in", "work_rate": "15 lb/h"},
        "tube: 6 x 6 x 1/4 in, 48 in; 100 x 50 x 3 mm, 8 ft",
        "3 1/2 x 3 1/2 x 3/16 in, 24 in; 4 x 4 x 3/16 in, 8 ft; 120 x 80 x 4 mm, 8 ft; 4 x 4 x 1/4 in, 8 ft\n"
        "round: 5 x 3/16 in, 24 in",
        "pins: 7/16 in; 3/16 in{; 6 mm; 5/32 in; 9/32 in; 1/8 in; 4 mm}\nblower: 0.5 inH2O 30 cfm\nline: 11 inH2O\n"
        "buy: bag, drill, pipe",
    ),
}


@pytest.mark.parametrize("name", MORE)
def test_more_at_hand_is_good_too(name):
    """Lighting was a caution where a part of the shop is good: the steps were spread over all that lies there."""
    texts, body, more, rest = MORE[name]
    shop = f"{body}; {more}\n{rest.replace('{', '').replace('}', '')}"
    answer = find(Design.from_texts({"fuel": "natural_gas", **texts}), read_have(shop))
    assert answer.offers[0].own_verdict == "good" and not answer.in_the_way


def test_a_design_has_a_card_of_its_own_only_where_it_is_clearly_better_in_a_kind(answers):
    clear = {"money": 5, "dark": 0.02, "low": 0.01, "work": 1800, "days": 1}
    for _, _, answer in answers.values():
        first, *others = answer.offers
        for offer in others:
            by = {key: first.terms[key] - offer.terms[key] for key in clear}
            better = [k for k in clear if by[k] >= clear[k] and (k == "days" or by[k] >= 0.0499 * first.terms[k])]
            assert offer.kinds[0] == "another way" or better
        every = len(first.kinds) == 6
        named = (
            ", and of these best in every kind"
            if every
            else "; of these also " * (len(first.kinds) > 1) + ", ".join(first.kinds[1:])
        )
        assert report.title(first) == first.kinds[0] + named


def test_what_most_of_the_price_is_stands_in_one_line(answers):
    _, _, answer = answers["twelve from one stick"]
    for offer in answer.offers:
        line, dear = report.dearest(offer), sorted((one.price for one in offer.buys), reverse=True)
        named = line.removeprefix("More than half of it: ").removesuffix(".").split("; ")
        prices = [float(words.rpartition(" ")[2].replace(",", "")) for words in named]
        assert prices == pytest.approx(dear[: len(prices)], abs=0.01)
        assert sum(prices[:-1]) <= sum(dear) / 2 < sum(prices) and "gas and air train" in named[0]
        assert line[1:] in report.as_text(answer)


def test_the_train_of_a_card_is_told_part_by_part(answers):
    """Three sums of money were all that a card told of it, and none of them can be bought."""
    _, _, answer = answers["twelve from one stick"]
    for offer in answer.offers:
        sums = sum(one.price for one in offer.buys if one.words.startswith("gas and air train"))
        parts = report.train_parts(offer)
        assert sums == pytest.approx(sum(float(part.rpartition(" ")[2].replace(",", "")) for part in parts), abs=0.006)
        assert any("regulator" in part for part in parts) and len(parts) > 10


def test_a_batch_buys_the_moulds_of_the_test_fire_that_it_takes():
    """Twelve burners, six moulds, one oven place and two stands: with a test fire of 60 min three moulds are made, with
    one of 80 two. Ranked is what the solved design spends."""
    texts = {"batch_size": "12", "moulds": "6", "test_stands": "2", "day_hours": "4 h", "hours_cast": "1.5 h"}
    space, dice, seen = Space(Design.from_texts(texts), read_have("")), Random(3), set()
    for _ in range(12):
        node = space.root
        while node is not None and node.level < len(AXES) - 1:
            menu = space.menu(node)
            node = space.child(node, dice.choice(menu)) if menu else None
        if node is None:
            continue
        space.settle(node)
        solved = solve(space.design(node))
        assert node.terms["money"] == pytest.approx(space.bill(node, solved.parts).to_spend)
        seen.add(solved.part("calendar").moulds != node.burner.part("calendar").moulds)
    assert True in seen


def test_what_lies_there_is_used_and_costs_nothing(answers):
    _, _, answer = answers["a tube, pins and a blower"]
    for offer in answer.offers:
        d = offer.design
        assert (d.body_width, d.body_depth) == pytest.approx((0.0889, 0.0889))
        assert d.port_diameter == pytest.approx(9 / 32 * 0.0254) and d.text("blower_free_flow") == "80 cfm"
        bought = {one.key for one in offer.buys}
        assert not bought & {"steel_0", "pins"} and "bag" in bought
        assert ("blower" in bought) == (d.burner_count > 1 and d.blowers == "each")  # one is there
        assert offer.bill.to_spend == pytest.approx(sum(one.price for one in offer.buys))


OWN = (
    "tube: 4 x 4 x 3/16 in, 8 ft\npins: 1/4 in\npipe: 1-1/2; 2\nblower: 4 inH2O 60 cfm\nbag: dense_castable x 1\n"
    "regulator: 0 to 30 psi\nboard: ply 3/4\ncylinder: 20 lb\nbuy: bag, cylinder\nmine: burner_count=3; batch_size=6"
)


TOLD_OF = "tube: 3 1/2 x 3 1/2 x 3/16 in, 8 ft\npins: 9/32 in, 36 in\npipe: 1-1/2\n"
WITHOUT = f"{TOLD_OF}blower: 3 inH2O 80 cfm\ncylinder: 20 lb x 2\n"


@pytest.mark.parametrize(
    ("said", "told"),
    [
        # Prices of train_parts.csv, and the default ones of a bag and a mould.
        ("buy: none", {"regulator": 45.0, "drill": 8.0, "bag": 95.0, "board": 20.0}),
        ("buy: bag, drill", {"regulator": 45.0, "board": 20.0}),
        ("regulator: 0 to 30 psi\nboard: ply 3/4\nbuy: none", {"drill": 8.0, "bag": 95.0}),
        ("buy: all", {}),
        ("", {}),
    ],
)
def test_what_is_needed_and_may_not_be_bought_is_named_with_its_price(said, told, tmp_path, capsys):
    """Under `buy: none` a regulator, a jet, refractory and a board were bought without a word."""
    answer = find(Design(), read_have(WITHOUT + said), budget=300)
    for offer in answer.offers:
        assert {one.key: one.price for one in offer.untold} == told
        assert sum(told.values()) <= offer.bill.to_spend
    shop = tmp_path / "shop.txt"
    shop.write_text(WITHOUT + said)
    assert main(["find", "--have", str(shop), "--budget", "300"]) == 0
    lines = [line for line in capsys.readouterr().out.splitlines() if "may not be bought" in line]
    assert len(lines) == (len(answer.offers) if told else 0)
    for kind, price in told.items():
        assert all(re.search(rf"{kind}: .*? {price:.2f}", line) for line in lines)


COUNTED_PINS = (
    "tube: 4 x 4 x 3/16 in, 4 ft\npins: 1/4 in x 12; 5/16 in x 10\nblower: 4 inH2O 60 cfm\n"
    "buy: pipe, drill, bag, board, regulator, cylinder"
)


def test_too_few_pins_that_may_not_be_bought_are_told_with_their_price():
    """Four sticks of pins for 6.00 stood in the sum without a word, as the list had some."""
    kept = {"ports_per_row": "9", "rows": "5"}
    have = read_have(f"{COUNTED_PINS}\nmine: {'; '.join(f'{key}={text}' for key, text in kept.items())}")
    answer = find(Design.from_texts(kept), have, budget=200)
    assert answer.offers
    for offer in answer.offers:
        (told,) = offer.untold
        (bought,) = (one for one in offer.buys if one.key == "pins")
        # A stick costs 1.50; of 43 ports 12 have pins at hand, and pins of 3 in, or a little more, come 11 to a stick.
        assert told.key == "pins" and told.price == bought.price == 1.50 * told.count
        few = offer.bill.lacking["pins"]
        assert few in (43 - 12, 43 - 10)
        if len(offer.faults) == 1:  # how many are missing counts among designs with as many faults
            assert offer.terms["missed"] == pytest.approx(few / 43)
        assert f"pins: {told.count} x pin stock" in report.untold(offer) and f"{told.price:.2f}" in report.untold(offer)


def test_a_face_of_as_many_ports_as_there_are_pins_is_found():
    """Three designs were found, 4 to 31 pins too few for each; one of 12 ports is good at 37.79 points."""
    answer = find(Design(), read_have(COUNTED_PINS))
    best = answer.offers[0]
    assert not answer.in_the_way and best.points < 37.79
    for offer in answer.offers:
        there = {"1/4 in": 12, "5/16 in": 10}[offer.design.text("port_diameter") or "1/4 in"]
        assert offer.own_verdict == "good" and offer.result["port_count"] <= there
        assert not {one.key for one in offer.buys} & {"pins"} and not offer.untold


COLD = {"fuel": "butane", "ambient_temperature": "0 degC"}


def test_a_design_that_gets_no_gas_is_limited_by_that_and_tells_no_lighting():
    """It was "limited by" a flame in hot ports, and four checks of lighting were good that no sheet of it shows."""
    reply = json.loads(worker.handle(json.dumps({"kind": "find", "settings": COLD, "have": "", "weights": {}})))
    best = reply["designs"][0]
    assert best["own_verdict"] == "good" and best["limited_by"].startswith("No gas comes: at 32 °F")
    assert best["verdicts"]["cylinder"] == "stop"
    assert not [key for key in best["verdicts"] if "lighting" in key and best["verdicts"][key] == "good"]
    shown = {check.key for check in solve(Design.from_texts(best["settings"])).ranked()}
    assert best["verdicts"].keys() == shown


def test_the_card_asks_what_the_shopping_list_leaves_to_buy():
    """One bill: the list of the design, what is at hand ticked off it, and beside it only what no list holds."""
    asked = {"kind": "find", "settings": {"chamber_length": "24 in", "blowers": "each"}, "have": OWN, "weights": {}}
    reply = json.loads(worker.handle(json.dumps(asked)))
    kinds_of = ("tube", "nipple", "pin stock", "mix pipe", "mould", "refractory")
    for found in reply["designs"]:
        result = solve(Design.from_texts(found["settings"]))
        names = {shopping.name_of(row): row for row in result.tables["shopping"].rows}
        ticked = {name for name in found["got"] if name in names}
        part = {name for name in found["got"] if name not in names}
        # All of the tube, pins, nipple, mix pipe and mould; one of six blowers and regulators; one bag of several.
        kinds = {next(kind for kind in kinds_of if kind in name) for name in ticked}
        assert kinds - {"refractory"} == {"tube", "nipple", "pin stock", "mix pipe", "mould"}
        assert {name.partition(",")[0] for name in part} <= {
            "1 of blower",
            "1 of adjustable regulator",
            "1 of refractory",
        }
        assert any("blower" in name for name in part) and any("regulator" in name for name in part)
        spared = sum(names[name][3] for name in ticked)
        spared += sum(names[name[5:]][3] / names[name[5:]][2] for name in part)
        assert found["on_the_list"] == pytest.approx(result["cost_batch"] - spared, abs=0.006)
        left = json.loads(
            worker.handle(json.dumps({"kind": "left", "settings": found["settings"], "got": found["got"]}))
        )
        assert f"Left to buy: {found['on_the_list']:.0f} of {result['cost_batch']:.0f}" in left["words"]
        besides = [one for one in found["buy"] if "cylinder" in one["what"] and "connector" not in one["what"]]
        assert found["to_spend"] == pytest.approx(
            found["on_the_list"] + sum(one["price"] for one in besides), abs=0.011
        )
        assert sum(one["price"] for one in found["buy"]) == pytest.approx(found["to_spend"], abs=1e-6)
        # Money and hours are of the same six.
        hours = 6 * (result["hours_per_burner"] / 3600 + result["port_count"] / 20 + result.design.baffle_holes / 60)
        assert found["terms"]["work"] == pytest.approx(3600 * hours)
        assert all("for all 6 made at once" in words for words in (found["says"][0], found["says"][4]))
    compared = json.loads(
        worker.handle(
            json.dumps(
                {
                    "kind": "compare",
                    "settings": {},
                    "got": [],
                    "other": found["settings"],
                    "other_got": found["got"],
                }
            )
        )
    )
    first = compared["answers"][0]
    assert first["label"].startswith("Left to buy") and first["other"] == f"{found['on_the_list']:.0f}"
    assert first["mine"] == solve(Design()).answers["cost_batch"].brief == "1278"  # one number, whole as there


def test_a_metric_shop_buys_by_metric_measures():
    answer = find(Design.from_texts({"units": "mm"}), read_have("pins: 6 mm", "mm"), budget=150)
    said = report.as_text(answer)
    assert "mbar shut" in said and "m³/h free" in said and "DN " in said
    assert not re.search(r"cfm|inH2O|in H₂O|psi|degF|°F|\d lb\b|\d in\b(?! a long row)", said)


def test_things_go_by_the_names_that_a_shop_has_for_them():
    things = "cylinder: {}; tank\nbag: {}; dense castable 60 % alumina\npipe: {}\nmine: {}=4; {}=1/4 in\nbuy: all"
    link = read_have(things.format("20 x 2", "dense_castable x 2", "1-1/2", "rows", "port_diameter"))
    inches = read_have(things.format("20 lb x 2", "castable 60 % x 2", "1 1/2 in", "Rows", "Port diameter"))
    metric = read_have(things.format("9 kg x 2", "Castable 60 % x 2", "DN 40", "rows", "port diameter"), "mm")

    def meant(have):
        return [(piece.texts, piece.figures) for piece in have.of("cylinder", "bag", "pipe")], have.mine

    assert meant(link) == meant(inches) == meant(metric)
    for pipe in ("1-1/2 inch", '1 1/2"', "1-1/2 in. pipe", "1-1/2 sch 40"):
        have = read_have(things.format("20 x 2", "castable 60 % x 2", pipe, "rows", "port diameter"))
        assert meant(have) == meant(link)


@pytest.mark.parametrize("system, entry, offered", [("mm", "11 kg", "9 kg"), ("in", "25 lb", "20 lb")])
def test_a_size_that_is_not_known_is_refused_by_the_reader_s_names(system, entry, offered):
    with pytest.raises(InputErrors) as refused:
        read_have(f"cylinder: {entry}\nbag: clay\npipe: 9\nmine: port diametr\nbuy: all", system)
    told = {error.field: (error.nearest, error.rule) for error in refused.value.errors}
    assert told["cylinder"][0] == offered and told["mine"][0] == "port diameter"
    said = str(told)
    assert "dense_castable" not in said and not re.search(r"\d (lb|in)\b" if system == "mm" else r"\d kg|DN", said)
    assert told["bag"][0] == ""  # no castable is near to clay
    for kind in ("cylinder", "pipe"):
        read_have(f"{kind}: {told[kind][0]}\nbuy: all", system)


def test_one_blower_at_hand_serves_one_burner():
    text = "tube: 4 x 4 x 3/16 in\npins: 1/4 in\nblower: 4 inH2O 60 cfm\nmine: burner_count=3"
    answer = find(Design.from_texts({"blowers": "each"}), read_have(text), budget=200)
    assert not any(one.key == "blower" for offer in find(Design.from_texts({}), read_have(text), budget=200).offers
                   for one in offer.buys)  # fmt: skip
    for offer in answer.offers:
        (blowers,) = [one for one in offer.buys if one.key == "blower"]
        assert blowers.price == pytest.approx(2 * 120) and blowers.words.startswith("2 more, of 3: blower")


def test_no_cheaper_cylinders_would_do():
    """A thin tube in a long chamber: four of 20 lb cost little more than one of 100, fewer are too cold one day."""
    start = Design.from_texts({"chamber_length": "30 in"})
    answer = find(start, read_have("tube: 2 x 2 x 1/8 in, 8 ft\npins: 1/4 in"), budget=500)
    prices = {"20": 60, "30": 90, "40": 110, "100": 220}
    seen = set()
    for offer in answer.offers:
        d = offer.design
        seen.add((d.cylinder, d.cylinder_count))
        spent, before = prices[d.cylinder] * d.cylinder_count, offer.result
        assert before.checks["cylinder"].verdict == "good"
        for size, price in prices.items():
            for count in range(1, (spent - 1) // price + 1):
                before = solve(d.changed({"cylinder": size, "cylinder_count": str(count)}), before)
                check = before.checks["cylinder"]
                # One that is good but passed over hardly is: it spares less than its thin margin costs.
                colder = solve(moved(built(before), {hardy.DAY: hardy.DAY.low})).checks["cylinder"].verdict
                thin = 2 if colder != "good" else max(0, 1 - abs(check.value - check.limit) / check.limit / 0.1)
                assert check.verdict != "good" or thin / 0.5 > (spent - price * count) / 100
    assert seen & {("20", 2), ("20", 3), ("30", 2), ("20", 4), ("30", 3), ("40", 2)}  # more than the smallest


def test_only_plate_gives_a_welded_box(answers):
    _, _, answer = answers["only plate"]
    assert all(offer.design.body_kind == "plates" for offer in answer.offers)


def test_twelve_burners_come_out_of_one_stick(answers):
    _, _, answer = answers["twelve from one stick"]
    for offer in answer.offers:
        d = offer.design
        assert d.batch_size == 12 and 12 * (d.body_length + d.kerf) <= 20 * 0.3048 + d.kerf + 1e-9


def test_one_cylinder_on_a_cold_day_needs_more(answers):
    _, _, answer = answers["a cold day, one cylinder"]
    assert answer.in_the_way[0].key == "cylinder" and answer.in_the_way[0].verdict == "stop"
    assert not answer.complete and "None of the designs looked at passes every check" in report.as_text(answer)
    assert {fault.key for fault in answer.given} >= {"curing_air"}
    assert answer.opening is not None and "cylinder" in answer.opening.words
    # What is a caution even then is no cure.
    still = {fault.key for fault in answer.opening.left}
    assert ("cylinder" in still) == (answer.opening.helps == ("Cylinder (from a stop to a caution)",))
    assert ("cylinder" in still) != ("Cylinder" in answer.opening.cures)
    opened = solve(answer.opening.design)
    assert opened.checks["cylinder"].verdict != "stop"
    given = {fault.key for fault in answer.given}
    bad = {key for key, check in opened.checks.items() if check.verdict in ("caution", "stop")}
    assert {fault.key for fault in answer.opening.left} == bad - given


def test_a_stop_of_the_day_hides_no_purchase():
    """Frost is no fault of a burner: while it stood, no purchase that cured a caution was told."""
    shop = "tube: 3 x 2 1/2 x 1/4 in, 48 in\npins: 9/32 in\nblower: 3 inH2O 40 cfm\ncylinder: 20 lb x 2"
    day = {"ambient_temperature": "10 degF", "chamber_shape": "cylinder", "chamber_diameter": "8 in"}
    answer = find(Design.from_texts(day), read_have(shop), budget=700)
    assert [fault.verdict for fault in answer.given] == ["stop"]
    assert [(fault.key, fault.verdict) for fault in answer.in_the_way] == [("cylinder", "caution")]
    assert answer.opening is not None and not answer.opening.left
    assert answer.opening.words == "1 more cylinder of 20 lb" and answer.opening.design.cylinder_count == 3


def test_fewer_cylinders_are_tried_with_the_fire_that_is_needed():
    """At the 59 kBtu/h found two more were told; at the 53.5 that are needed one more is enough."""
    shop = "tube: 4 x 4 x 3/16 in, 8 ft\npins: 1/4 in\npipe: 1-1/2; 2\nblower: 4 inH2O 60 cfm\ncylinder: 20 lb x 1"
    have = read_have(f"{shop}\nregulator: 0 to 30 psi\nbuy: none")
    answer = find(Design.from_texts({"ambient_temperature": "10 degF"}), have, budget=1400)
    assert answer.opening is not None
    clean = answer.opening.whole or answer.opening
    assert not clean.left and clean.words == "1 more cylinder of 20 lb"
    result = solve(clean.design)
    assert result.checks["cylinder"].verdict in ("good", "note")
    assert [check.key for check in result.checks.values() if check.verdict == "stop"] == ["curing_air"]
    assert result.part("firing").rate_W >= result.part("need").needed_W * (1 - 1e-9)
    assert "leaves no fault of the burner: 1 more cylinder of 20 lb" in report.as_text(answer)  # frost is a stop still


def test_a_fault_that_another_pipe_cures_is_none_that_no_burner_changes():
    """Lit by hand: of one design the lip was too hot for it, of the best the damper was open too little to set."""
    shop = (
        "tube: 3 1/4 x 3 1/4 x 3/25 in, 2 ft\npins: 1/4 in; 5/32 in\npipe: 1; 1-1/2; 2-1/2\nblower: 4 inH2O 60 cfm\n"
        "cylinder: 40 lb x 3\nregulator: 0 to 15 psi\nmine: lit_by"
    )
    asked = {"chamber_width": "8 in", "chamber_temperature": "2150 degF", "lit_by": "hand"}
    answer = find(Design.from_texts(asked), read_have(shop), budget=300)
    chosen = {BY_KEY[key].label for axis in AXES for key in axis.keys}
    assert not [fault for fault in answer.given if chosen & dict(fault.cures).keys()]


def test_bags_that_are_bought_are_told_to_cure_what_was_too_few():
    """They are no check, and nothing stood under what the purchase cures."""
    shop = "tube: 4 x 4 x 3/16 in, 8 ft\npins: 1/4 in\npipe: 1-1/2; 2\nblower: 4 inH2O 60 cfm\n"
    shop += "bag: dense_castable x 1\nregulator: 0 to 30 psi\nboard: ply 3/4\ncylinder: 20 lb\n"
    shop += (
        "buy: blower, regulator, board, tube, cylinder\nmine: batch_size=12; body_length=10 in; block_thickness=3 in"
    )
    answer = find(Design(), read_have(shop, "in"))
    assert [one.key for one in answer.in_the_way] == ["bag"]
    assert answer.opening.words.endswith("more bags") and answer.opening.cures == ("Bags",)


def test_bags_of_what_cannot_be_taken_are_not_bought_once_more():
    """Of a rammed plastic "1 more bag" was told to cure that it is one; the price was of a castable."""
    shop = "tube: 3 x 3 x 3/16 in\npins: 1/4 in\npipe: 1\nblower: 4 inH2O 60 cfm\ncylinder: 40 lb\nbag: rammed plastic"
    opening = find(Design(), read_have(shop), budget=300).opening
    assert opening.words == "1 bag of castable 60 %" and opening.design.refractory == "dense_castable"
    assert solve(opening.design).checks["placing"].verdict == "good"


def test_what_no_purchase_cures_is_told_with_what_is_in_the_way(answers):
    """A believer bought cylinders, and still could not cast: frost stood in another list."""
    _, have, answer = answers["a cold day, one cylinder"]
    told = report.as_data(answer, have)
    for faults, design in (
        (told["in_the_way"], answer.offers[0].design),
        (told["opens"]["left"], answer.opening.design),
    ):
        bad = {key: check for key, check in solve(design).checks.items() if check.verdict in ("caution", "stop")}
        assert {one["check"]: one["verdict"] for one in faults} == {key: check.verdict for key, check in bad.items()}
        words = [one["verdict"] for one in faults]
        assert words == sorted(words, reverse=True)  # stops first
        (frost,) = (one for one in faults if one["check"] == "curing_air")
        assert frost is faults[0] and frost["given"] and [one["move"] for one in frost["change"]] == ["raise"]
        assert (
            "indoors" in frost["text"]
            and "No purchase cures this; a setting does: Shop temperature, more." in frost["text"]
        )
        assert not any(one["given"] for one in faults if one["check"] == "cylinder")


@cache
def a_fan_that_moves_nothing(budget):
    """(answer, what was told of the steps); pins too near the edge besides: another blower cures but the one."""
    text = "tube: 4 x 4 x 3/16 in\npins: 1/4 in\nblower: 0.1 inH2O 5 cfm\nmine: edge_margin=1/16 in; low_fire=50 %"
    told = []
    return find(Design(), read_have(text), budget=budget, progress=lambda *steps: told.append(steps)), told


def test_a_purchase_says_what_is_left_even_then():
    answer, _ = a_fan_that_moves_nothing(700)  # steps in all, those for a purchase too
    said = report.as_text(answer)
    assert answer.offers[0].kinds[0] == "least wrong" and "LEAST WRONG" in said
    assert answer.opening.kinds == ("blower",) and "blower" not in {fault.key for fault in answer.opening.left}
    _, told, left = said.partition("Left in the design that was tried with it")
    assert answer.opening.left and told and all(fault.text in left for fault in answer.opening.left)


def test_where_no_purchase_helps_it_is_told_what_was_tried():
    answer, _ = a_fan_that_moves_nothing(700)
    said = report.as_text(replace(answer, opening=None))
    assert "No purchase was found that helps, of one thing or of up to three together. Tried: " in said
    (tried,) = re.findall(r"Tried: (.*), of each only", said)
    assert {"tube", "pins", "blower"} <= set(tried.split(", ")) and "pipe" not in tried  # pipe is bought anyway


def test_a_bought_blower_is_no_worse_than_one_at_hand():
    """A burner is looked for as if no fan lay there, not only the one that was best for it: that left a caution."""
    answer = find(Design(), read_have("blower: 0.1 inH2O 1 cfm\nbuy: tube, pins, pipe, drill, cylinder"), budget=700)
    assert answer.opening.kinds == ("blower",) and not answer.opening.left


@pytest.mark.parametrize("system, blower, steps", [("in", "0.3 inH2O 15 cfm", 1000), ("mm", "1 mbar 30 m3/h", 700)])
def test_a_weak_blower_gets_a_burner_that_it_carries(system, blower, steps):
    """More and slower ports, a wider pipe and a higher low fire, before another blower; what is offered is bought."""
    start = Design.from_texts({"units": system} if system == "mm" else {})
    answer = find(start, read_have(f"blower: {blower}", system), budget=steps)
    assert answer.offers[0].own_verdict in ("good", "caution")
    checks = answer.offers[0].result.checks
    assert checks["blower"].verdict in ("good", "caution")
    if answer.opening is not None:
        assert answer.opening.price > 0 and answer.opening.words.startswith("a blower of")


def test_a_good_burner_in_a_chamber_with_a_stop_is_not_called_good():
    """A chamber without an opening: no burner changes that, and each design has it."""
    answer = find(
        Design.from_texts({"opening_area": "0 in2"}), read_have("tube: 4 x 4 x 3/16 in\npins: 1/4 in"), budget=150
    )
    assert "chamber_pressure" in {fault.key for fault in answer.given}
    for offer in answer.offers:
        assert offer.verdict == "stop" == offer.result.worst
    told = report.as_text(answer).split("\n")[2]
    assert "; no burner changes Way out for the burnt gas, " in told and ": stop, " in told


def test_no_two_halves_of_a_sentence_are_equal(answers):
    for _, _, answer in answers.values():
        for offer in answer.offers:
            for words in offer.gives_up:
                if " instead of " not in words:  # so little of the chamber is lit that it is told by itself
                    assert offer.terms["dark"] > 0.4 and words.endswith(" glowing walls alone")
                    continue
                ours, theirs = words.split(" instead of ")
                assert not ours.removeprefix("low fire set for ").startswith(theirs), words


def test_a_card_tells_one_turndown_and_what_low_fire_is_set_for(answers):
    """1.85 stood one line above "a turndown of 1.7 to 1"."""
    for _, _, answer in answers.values():
        for offer in answer.offers:
            card = report.says(offer)
            assert f"low fire set for {1 / offer.design.low_fire:.1f} to 1" in card and "turndown" not in card


def test_a_card_tells_a_wait_longer_than_asked(answers):
    """A fire that is to be lit small until the walls glow: 57 min where 30 were asked looked as good as 30."""
    late = 0
    for _, _, answer in answers.values():
        for offer in answer.offers:
            times = offer.result["heat_up_takes"] / offer.design.heat_up_time
            told = [words for words in offer.gives_up if words.startswith("heating up in ")]
            assert len(told) == (1.1 < times < 4)
            if told:
                late += 1
                takes, rest = told[0].removeprefix("heating up in ").split(" instead of ")
                asked, waits = rest.removesuffix(" of it at the rate to light at").split(", ")
                over = parse_quantity(takes, "time", "") / parse_quantity(asked, "time", "")
                assert over == pytest.approx(times, rel=0.01)
                assert parse_quantity(waits, "time", "") == pytest.approx(offer.result["heat_up_waits"], rel=0.01)
    assert late


def test_a_fire_below_the_need_is_told_on_its_card():
    """The check only notes it, so the design was called good, and nothing told that the chamber heats up later."""
    said = []
    for rate in ("47 kBtu/h", "60 kBtu/h"):  # heating up in the time asked takes 50.6
        (offer, *_) = find(
            Design.from_texts({"work_rate": "0 lb/h"}), read_have(f"pins: 1/4 in\nmine: firing_rate={rate}"), budget=100
        ).offers
        assert offer.result.checks["rate_for_need"].verdict == ("note" if rate == "47 kBtu/h" else "good")
        said.append([words for words in offer.gives_up if words.startswith("a fire of 47")])
    assert len(said[0]) == 1 and "50.6 kBtu/h that are needed" in said[0][0] and not said[1]


def test_cards_differ_in_what_is_built_or_clearly_in_a_kind(answers):
    """Another number of burners, section, pins, blower or gas, or a body longer by a quarter; with no more faults, not
    worse in every number than another."""
    notice = {"money": 5, "dark": 0.02, "spread": 0.01, "low": 0.01, "work": 1800, "days": 1}
    seen = 0
    for _, _, answer in answers.values():
        best = answer.offers[0]
        for one, other in itertools.combinations(answer.offers, 2):
            if {one.kinds[0], other.kinds[0]} & {"another way"}:
                mine, theirs = one.design, other.design
                keys = ("burner_count", "body_kind", "port_diameter", "blower_free_flow", "gas_pressure")
                sections = [sorted((d.body_width, d.body_depth)) for d in (mine, theirs)]
                longer = max(mine.body_length, theirs.body_length) / min(mine.body_length, theirs.body_length)
                unlike = any(mine.value(key) != theirs.value(key) for key in keys)
                assert unlike or sections[0] != sections[1] or longer >= 1.25
        for offer in answer.offers[1:]:
            if offer.kinds[0] == "another way":
                seen += 1
                assert words_of(offer) == words_of(best)
                assert offer.differs and report.title(offer).startswith(f"another way: {offer.differs}")
                for other in answer.offers[: answer.offers.index(offer)]:
                    assert any(offer.terms[key] <= other.terms[key] - least for key, least in notice.items())
        assert best.differs == "" and answer.offers.count(best) == 1
    assert seen


def test_one_burner_heats_a_round_chamber_all_round():
    """Two of 1838 were best for a crucible's 300 mm while only what lies below the ports counted as lit."""
    text = "round: 100 x 5 mm, 500 mm\npins: 6 mm; 8 mm\nblower: 6 mbar 60 m3/h\nregulator: 0 to 2 bar"
    chamber = {"chamber_shape": "cylinder", "chamber_diameter": "250 mm", "chamber_length": "300 mm"}
    start = Design.from_texts({"units": "mm", "work_metal": "bronze", **chamber})
    answer = find(start, read_have(text, "mm"), budget=300)
    best = answer.offers[0]
    assert best.own_verdict == "good" and best.design.burner_count == 1 and best.terms["money"] < 1200
    for offer in answer.offers:
        assert lit(offer.result) < 0.7 and offer.terms["dark"] == 0
        assert "chamber's length" not in " ".join(report.says(offer)) and "most even heat" not in report.title(offer)


def test_what_is_built_another_way_is_said_by_what_it_is():
    text = "tube: 4 x 4 x 3/16 in, 20 ft; 3 x 3 x 3/16 in, 20 ft\npins: 1/4 in\nmine: burner_count=1"
    answer = find(Design(), read_have(text), budget=500)
    first, *others = answer.offers
    assert {offer.design.show("body_width") for offer in answer.offers} == {"3 in", "4 in"}
    for offer in others:
        width = offer.design.show("body_width")
        if width != first.design.show("body_width"):
            assert offer.differs == f"a body of tube, {width} x {width}"


def test_the_worst_harm_among_the_near_limits_is_named(answers):
    """Of the checks that are good by less than a tenth the most dangerous one, worked out from the checks anew."""
    order, seen = ("danger", "damage", "rework", "comfort"), 0
    for _, _, answer in answers.values():
        for offer in answer.offers:
            near = []
            for check in offer.result.checks.values():
                if check.key in MARGINS and check.verdict == "good" and check.value is not None and check.limit:
                    reach = check.limit - NOUGHT.get(check.key, 0)
                    if abs(check.value - check.limit) <= 0.1 * abs(reach):
                        near.append(check)
            spoils = [key for key, off in hardy.OFF.items() if offer.limited_by.startswith(off.words)]
            if near and not offer.faults and not spoils:
                named = next(check for check in offer.result.checks.values() if check.text == offer.limited_by)
                seen += 1
                assert order.index(named.declared.harm) <= min(order.index(check.declared.harm) for check in near)
    assert seen


def test_the_same_question_has_the_same_answer(answers):
    start, have, one = answers["a tube, pins and a blower"]
    other = find(start, have, budget=700)
    assert [offer.design.texts for offer in one.offers] == [offer.design.texts for offer in other.offers]
    assert (one.counts.nodes, one.counts.solves) == (other.counts.nodes, other.counts.solves)


@pytest.mark.parametrize("budget", [100, 300, 700])
def test_the_steps_that_are_given_are_all_that_are_taken(budget):
    """Also where nothing fits, and what is least wrong is mended and a purchase looked for."""
    answer, told = a_fan_that_moves_nothing(budget)
    assert answer.offers and answer.in_the_way and answer.counts.nodes <= budget
    assert told[-1][0] <= budget and {most for _, most, _ in told} == {budget}


def test_a_first_design_comes_early_and_few_are_solved_whole(answers):
    for name, (_, _, answer) in answers.items():
        assert answer.counts.solves - answer.counts.mending <= 12, name
        # Only the least wrong are mended, within a bound: 60 solves and the rounds that make the changes fewer.
        assert answer.counts.mending <= 110 and (not answer.counts.mending or name in LEAST_WRONG), name
        if name not in MAY_STAND:
            assert answer.first_at is not None and answer.first_at < LATE.get(name, 100), name


def test_what_is_mine_stays():
    mine = "mine: port_diameter=5/16 in; rows=4; firing_rate=150 kBtu/h; mix_pipe=2; setback=5/8 in; cylinder_count=3"
    answer = find(Design.from_texts({}), read_have(f"tube: 4 x 4 x 3/16 in\n{mine}"), budget=150)
    for offer in answer.offers:
        texts = [offer.design.text(key) for key in ("port_diameter", "rows", "firing_rate", "mix_pipe", "setback")]
        assert texts == ["5/16 in", "4", "150 kBtu/h", "2", "5/8 in"] and offer.design.cylinder_count == 3


def test_a_stick_that_is_too_short_for_the_batch_says_what_it_takes():
    """Twelve bodies of 2 in, the shortest that is taken, and eleven saw cuts of 1/16 in."""
    twelve = "mine: batch_size=12\nbuy: pins, pipe, blower, cylinder"
    with pytest.raises(InputErrors) as refused:
        find(Design(), read_have(f"tube: 4 x 4 x 3/16 in, 24 5/8 in\n{twelve}"))
    (error,) = refused.value.errors
    assert error.field == "tube" and "12 bodies of 2 in" in error.rule and "take 24 11/16 in" in error.rule
    assert "batch_size=12" in error.rule
    with pytest.raises(InputErrors) as longer:
        find(Design(), read_have(f"tube: 4 x 4 x 3/16 in, 24 11/16 in\n{twelve}"))
    assert "bodies" not in longer.value.errors[0].rule and "no rows of ports" in longer.value.errors[0].rule


@pytest.mark.parametrize("shop", ("tube: 3 1/2 x 3 1/2 x 3/16 in, 20 ft", "tube: 3 1/2 x 3 1/2 x 3/16 in", ""))
@pytest.mark.parametrize("count, each", ((8, "1 1/2 in"), (12, "1 in")))
def test_more_burners_than_the_chamber_has_room_for_are_told_by_its_length(shop, count, each):
    """Of twelve in 12 in each has 1 in: a tube of 20 ft was told to be too short for them. What is offered builds."""
    many, have = {"burner_count": str(count)}, read_have(f"{shop}\nmine: burner_count\nbuy: all")
    with pytest.raises(InputErrors) as refused:
        find(Design.from_texts(many), have, budget=200)
    fewer, longer = refused.value.errors
    assert (fewer.field, fewer.nearest, longer.field) == ("burner_count", "6", "chamber_length")
    assert f"each body has {each}" in longer.rule and "saw cuts" not in str(refused.value)
    for error in (fewer, longer):
        made = find(Design.from_texts({**many, error.field: error.nearest}), have, budget=200)
        assert made.offers[0].design.burner_count == (6 if error is fewer else count)


def test_bodies_as_short_as_any_are_no_refusal():
    """Twelve in 24 in were refused for what 24 in through 12 is off from 2 in in the last digit; that their holes leave
    too little lining between is for the check of the wall to say."""
    asked = Design.from_texts({"burner_count": "12", "chamber_length": "24 in"})
    best = find(asked, read_have("mine: burner_count\nbuy: all"), budget=1000).offers[0]
    assert best.design.burner_count == 12 and best.design.text("body_length") == "2 in"
    assert "chamber_fit" in {fault.key for fault in best.faults} and best.own_verdict == "caution"


def test_a_metric_chamber_too_short_for_its_burners_is_told_in_millimetres():
    start = Design.from_texts({"units": "mm", "burner_count": "12"})
    with pytest.raises(InputErrors) as refused:
        find(start, read_have("tube: 90 x 90 x 4 mm, 6 m\nmine: burner_count\nbuy: all", "mm"), budget=200)
    assert [error.said for error in refused.value.errors] == ["12", "300 mm"]
    assert "each body has 25 mm" in str(refused.value) and refused.value.errors[1].nearest.endswith(" mm")


def test_what_is_mine_and_leaves_nothing_is_named_itself():
    with pytest.raises(InputErrors) as refused:
        find(Design(), read_have("mine: rows=40; ports_per_row=100"), budget=100)
    (error,) = refused.value.errors
    assert error.field == "mine" and "rows=40" in error.value and "ports_per_row=100" in error.value


def test_too_few_steps_are_not_told_as_a_shop_that_is_too_poor():
    """Of thick pins "nothing fits for jet" was told at 150 steps, and at 300 it broke off."""
    have = read_have("pins: 7/8 in")
    assert find(Design(), have, budget=300).offers
    with pytest.raises(InputErrors) as refused:
        find(Design(), have, budget=12)
    assert [(error.field, error.value) for error in refused.value.errors] == [("budget", 12)]


def test_no_finer_fire_is_less_than_the_chamber_needs():
    """26.5 kW was taken of 26.54 that were needed, as no check speaks of so little."""
    start = Design.from_texts({"units": "mm"})
    space = Space(start, read_have("", "mm"))
    (node,) = dive(space, space.root, weights_of({}), 1)
    needed_W = node.burner.part("need").needed_W / node.values["burner_count"]
    least = min(parse_quantity(one["firing_rate"], "power", "") for one in (*space.fine(node, 0), node.texts))
    assert needed_W <= least < 1.1 * needed_W


def test_a_design_of_which_all_is_mine_is_the_only_one():
    """More settings than kinds have entries: what the search would choose stays as it is set, and is told as it is."""
    keys = [key for axis in AXES for key in axis.keys]
    have = read_have("buy: all\nmine: " + "; ".join(keys))
    answer = find(Design(), have, budget=200)
    (offer,) = answer.offers
    assert len(keys) > 24 and answer.complete and answer.opening is None
    assert all(offer.design.value(key) == Design().value(key) for key in keys)
    assert offer.verdict == solve(Design()).worst


@pytest.mark.parametrize(("pins", "system", "depth"), [("3/4 in", "in", "5/8 in"), ("20 mm", "mm", "16 mm")])
def test_thick_pins_stand_as_deep_as_they_are_not_to_lean(pins, system, depth):
    """They stood 1/2 in deep, as set, with a caution; what is mine stays, and never is the base drilled through."""
    start, text = Design.from_texts({"units": system}), f"pins: {pins}"
    found = find(start, read_have(text, system), budget=150).offers[0].result
    assert found.checks["pins_stand"].verdict == "good" and found.design.text("pin_depth") == depth
    assert found.checks["base_floor"].verdict == "good"
    if system == "in":
        kept = find(start, read_have(f"{text}\nmine: pin_depth"), budget=150).offers[0].result
        assert kept.checks["pins_stand"].verdict == "caution" and kept.design.text("pin_depth") == "1/2 in"


def test_pins_too_thick_for_the_base_get_a_thicker_one():
    """They stood too shallow in 3/4 ply, with a caution; what is mine stays."""
    found = find(Design(), read_have("pins: 1 in"), budget=150).offers[0].result
    assert [found.checks[key].verdict for key in ("pins_stand", "base_floor", "base_board")] == ["good"] * 3
    assert board(found.design.mould_base).thickness_m >= 0.8 * 0.0254 + 0.002
    kept = find(Design(), read_have("pins: 1 in\nmine: mould_base"), budget=150).offers[0].result
    assert kept.design.text("mould_base") == "ply 3/4" and kept.checks["base_floor"].verdict == "good"


def test_a_regulator_of_one_pressure_takes_none_from_one_of_a_range():
    """Beside 5 psi nothing else of 0 to 30 psi was looked at: with a drill that is too large for 5 psi, a stop more."""
    space = Space(Design(), read_have("regulator: 5 psi; 0 to 30 psi\ndrill: #48"))
    (node,) = dive(space, space.root, weights_of({}), 1)
    parent = space.root
    for one in node.chosen[: space.decided_at["gas_pressure"]]:
        parent = space.child(parent, one)
    pressures = {dict(one.texts)["gas_pressure"] for one in space.menu(parent)}
    assert {"5 psi", "4.3 psi"} < pressures and len(pressures) == 3  # 4.3: what is left of 5 before the jet
    assert all(0 < parse_quantity(text, "gas_pressure", "regulator") <= 30 * 6894.76 for text in pressures)


def test_one_drill_more_leads_to_as_good_a_body():
    """A face that reaches far is set to the low fire that suits it, not to that of the short face which is best so far:
    with #48 alone 25.0 points, and 36.4 with #54 beside it; 26.1 since the guard costs 110 more."""
    bodies = "tube: 100 x 50 x 3 mm, 2 m\nplate: 5 mm, 600 x 400 mm; 3/16 in, 24 x 24 in"
    shop = f"{bodies}\npipe: 1-1/4\nblower: 1 inH2O 150 cfm"
    start = Design.from_texts({"chamber_length": "18 in", "work_rate": "15 lb/h"})
    space = Space(start, read_have(f"{shop}\ncylinder: 100 lb x 2\ndrill: #48; #54").in_order())
    best = search(space, weights_of({})).best(weights_of({}))
    assert (best.stops, best.cautions) == (0, 0) and best.rank(weights_of({}))[2] < 1.1 * 26.1


@pytest.mark.parametrize(
    "pins, blower", [("9/32 in", "1 inH2O 40 cfm"), ("9/32 in", "4 inH2O 60 cfm"), ("3/16 in", "4 inH2O 60 cfm")]
)
def test_where_find_says_none_good_finds_none_of_the_same_shop(pins, blower):
    """Of these shops good mended three, by a drill and pressures that the shop has not and another way to light."""
    gas = "drill: #60\nregulator: 5 psi\ncylinder: 100 lb"
    text = f"tube: 4 x 4 x 3/16 in, 4 ft\npipe: 1-1/4\nblower: {blower}\npins: {pins}\n{gas}\nbuy: bag"
    answer = find(Design(), read_have(text), budget=400)
    least = answer.offers[0]
    assert bool(answer.in_the_way) == (least.own_verdict != "good")
    if answer.in_the_way:
        mended = make_good(least.design, least.mine, 60)
        assert {fault.key for fault in mended.left} - {fault.key for fault in answer.given}
        assert {"jet_drill", "gas_pressure"} <= set(least.mine)


@pytest.mark.parametrize(
    "regulator, least, most", [("0.5 to 4 bar", 0.5, 0.55), ("0.5 bar", 0.49, 0.55), ("0 to 4 bar", 0.3, 0.4)]
)
def test_a_jet_too_large_for_the_fire_that_is_needed_gets_a_larger_fire(regulator, least, most):
    """A regulator that goes no lower than 0.5 bar gives more than is needed through 1.2 mm: "nothing fits for jet"."""
    start = Design.from_texts({"units": "mm", "sizes": "mm"})
    space = Space(start, read_have(f"drill: 1.2 mm\nregulator: {regulator}\ncylinder: 18 kg", "mm"))
    fires = [dict(one.texts) for one in space.menu(space.root)]
    fire = [each for each in fires if each["burner_count"] == "1"][-1 if regulator == "0.5 bar" else 0]
    result = solve(start.changed({**fire, "jet_drill": "1.2 mm"}))
    assert result["firing_rate_gross"] >= result["firing_rate_needed"]
    assert least * 1e5 <= result["jet_gas_pressure"] <= most * 1e5


@pytest.mark.parametrize(
    ("system", "least", "most", "unit"),
    [("in", 0, 4, "psi"), ("in", 25, 60, "psi"), ("mm", 50, 150, "mbar"), ("in", 6, 9, "psi")],
)
def test_a_regulator_that_reaches_no_usual_pressure_is_taken_to_an_end_of_it(system, least, most, unit):
    """No burner came of it, though any drill may be bought and a line of 11 inH2O, 0.4 psi, gives a good one."""
    start = Design.from_texts({"units": system, "sizes": system})
    shop = f"regulator: {least} to {most} {unit}\ncylinder: 100 lb\n"
    best = find(start, read_have(shop, system), budget=700).offers[0]
    low_Pa, high_Pa = (parse_quantity(f"{end} {unit}", "gas_pressure", "regulator") for end in (least, most))
    assert low_Pa - 1 <= best.design.gas_pressure <= high_Pa + 1
    assert solve(from_link(best.link())[0]).worst == best.verdict != "stop"


@pytest.mark.parametrize(
    ("shop", "said"),
    [
        ("pipe: 3\nblower: 4 inH2O 60 cfm\n", r"nothing fits for mix pipe; (.*) would do"),
        ("pipe: 1/8\n", r"nothing fits for (?:inlet|mix pipe); (.*) would do"),
        (
            "drill: #70\nregulator: 0 to 1 psi\ncylinder: 100 lb\n",
            r"for jet; a jet drilled (.*) or an adjust.* would do",
        ),
    ],
)
def test_where_no_pipe_or_jet_fits_it_is_told_what_would_do(shop, said):
    """And a burner comes out of the shop with just that beside what lies there; with another regulator, too."""
    with pytest.raises(InputErrors, match=said) as refused:
        find(Design(), read_have(shop), budget=200)
    things = re.search(said, refused.value.errors[0].rule)[1]
    assert " and " not in things  # for pipe 3 a size each for inlet and mix pipe was told, and one does for both
    kind, _, entries = shop.partition("\n")[0].partition(": ")
    more = re.sub(" in pipe", "", things).replace(" and ", "; ")
    wider = shop.replace(f"{kind}: {entries}", f"{kind}: {entries}; {more}")
    assert find(Design(), read_have(wider), budget=400).offers
    if kind == "drill":
        best = find(Design(), read_have(f"{shop}buy: regulator, tube, pins, pipe, blower"), budget=400).offers[0]
        assert any("regulator" in one.words for one in best.buys)


def test_a_regulator_that_can_be_turned_is_a_purchase_too():
    """Pressures that a fixed regulator has not cured the jet, and nothing was said to open it."""
    text = (
        "tube: 4 x 4 x 3/16 in, 4 ft\npins: 9/32 in\ndrill: #60\nregulator: 5 psi\ncylinder: 100 lb\n"
        "buy: bag, pipe, blower"
    )
    opening = find(Design(), read_have(text), budget=700).opening
    assert opening.kinds in (("regulator",), ("drill",)) and not opening.left
    shop = read_have(f"{text}, regulator")
    best = find(Design(), shop, budget=700).offers[0]
    assert best.own_verdict == "good" and best.design.text("gas_pressure") != "5 psi"
    assert any("adjustable regulator" in one.words for one in best.buys) and "gas_pressure" not in best.mine


@pytest.mark.parametrize("regulator", ["20 mbar", "0 to 20 mbar"])
def test_another_regulator_is_the_purchase_where_a_house_s_is_too_weak_to_light_with(regulator):
    """No purchase was named: the fault is one that is asked last, so what is spare was not looked at; and a regulator
    that can be turned, but to no usual pressure, was never bought anew."""
    start = Design.from_texts({"units": "mm", "sizes": "mm"})
    shop = f"tube: 80 x 80 x 4 mm\npins: 6 mm\nregulator: {regulator}\ncylinder: 45 kg\nbuy: drill, pipe, blower"
    answer = find(start, read_have(shop, "mm"))
    opening = answer.opening
    # What hose and valves leave of one that cannot be turned is looked at too, and lights less badly.
    word = "caution" if regulator == "37 mbar" else "stop"
    assert {fault.key: fault.verdict for fault in answer.in_the_way}["lighting"] == word
    assert opening.words == "an adjustable regulator" and opening.price > 0 and not opening.left and opening.cures
    assert solve(opening.design).worst == "good"
    best = find(start, read_have(f"{shop}, regulator", "mm")).offers[0]
    assert best.verdict == "good" and any("regulator" in one.words for one in best.buys), best.buys


LOW_PRESSURE = (
    "tube: 4 x 4 x 3/16 in, 4 ft\npins: 1/4 in\nregulator: 11 inH2O",
    "tube: 3 1/2 x 3 1/2 x 3/16 in, 8 ft\npins: 5/16 in\nregulator: 1 psi",
    "tube: 4 x 4 x 3/16 in, 4 ft\nregulator: 0 to 0.5 psi",
    "tube: 4 x 4 x 3/16 in, 4 ft\nregulator: 11 inH2O\nmine: port_diameter=5/16 in",
)


@pytest.mark.parametrize("shop", LOW_PRESSURE)
def test_a_regulator_of_little_pressure_is_no_stop_where_a_face_holds_what_it_can_be_set_to(shop):
    """Each was a stop, with another regulator as the purchase: the face was too small for the least gas that can be
    set, low fire less than that, or the drill that is sold asked for more than the regulator gives."""
    answer = find(Design(), read_have(f"{shop}\nbuy: pins, pipe, blower, cylinder, bag, board, drill"), budget=900)
    best = answer.offers[0]
    assert best.own_verdict == "good" and answer.opening is None
    assert solve(from_link(best.link())[0]).worst == "good"
    assert not any("regulator" in one.words for one in best.buys)
    most_Pa = 6895 if "1 psi" in shop else 3450
    assert best.result.part("supply").outlet_Pa.low <= most_Pa


def test_house_gas_goes_past_a_regulator_that_is_set_to_more_than_the_line_holds():
    """One of 11 inH2O on a line of 7 was taken for 11: the line's check found fault with each burner."""
    shop = read_have("tube: 4 x 4 x 3/16 in, 8 ft\npins: 9/32 in\nblower: 3 inH2O 80 cfm\nregulator: 11 inH2O")
    best = find(Design.from_texts({"fuel": "natural_gas"}), shop, budget=300).offers[0]
    assert best.own_verdict == "good" and best.result.checks["supply"].verdict == "good"
    assert best.design.gas_pressure <= best.design.line_pressure * (1 + 1e-6)


@pytest.mark.parametrize(
    ("system", "set_to", "most_Pa", "cylinder"), [("in", "30 psi", 206_843.0, "100 lb"), ("mm", "2 bar", 2e5, "45 kg")]
)
def test_a_design_found_with_a_regulator_that_nobody_can_turn_can_be_asked_for_again(system, set_to, most_Pa, cylinder):
    """What hose and valves leave of it is its gas pressure, and mine: as such it was refused."""
    text = f"regulator: {set_to}\ncylinder: {cylinder} x 1"
    best = find(Design.from_texts({"units": system}), read_have(text, system), budget=700).offers[0]
    pressure = best.design.gas_pressure
    assert "gas_pressure" in best.mine and 0.8 * most_Pa < pressure < 0.95 * most_Pa

    def asked(design):
        return question(lambda: design, lambda: (design, []), lambda: best.mine, lambda: (read_have(text, system), []))

    again = find(*asked(best.design), budget=300)
    assert all(one.design.gas_pressure == pressure for one in again.offers)
    with pytest.raises(InputErrors) as refused:  # less comes of no such regulator
        asked(best.design.changed({"gas_pressure": f"{pressure * 0.8:.0f} Pa"}))
    assert {error.field for error in refused.value.errors} == {"gas_pressure"}


def test_fewer_burners_are_taken_where_they_are_good_too():
    """Two were offered for 700 more, while one was only not polished."""
    shop = f"{BOX_MM}pins: 6 mm\nline: 10 mbar"
    start, told = Design.from_texts({"fuel": "natural_gas", "units": "mm"}), []
    answer = find(start, read_have(shop, "mm"), progress=lambda *steps: told.append(steps))
    best = answer.offers[0]
    assert best.own_verdict == "good" and best.design.burner_count == 1
    # How the best stands is told from the first whole design on, good or not, and only gets better.
    said = [so_far for _, _, so_far in told]
    assert said[0] == "none whole yet" and said[-1] == "a good one found"
    turns = [one for one, before in zip(said, ["", *said]) if one != before]
    assert len(turns) == len(set(turns)) and turns[1].startswith("none good yet, best so far: ")
    at = next(nodes for nodes, _, so_far in told if so_far == "a good one found")  # some steps count several nodes
    assert at in (answer.first_at, answer.first_at + 1)


def test_a_good_one_that_only_mending_finds_is_told_too():
    """What is at fault in every design, such as frost, hid it: how long it took stayed empty."""
    shop = "plate: 5 mm, 600 x 600 mm\npins: 10 mm\nblower: 2 mbar 30 m3/h\ndrill: 2 mm"
    hot = {"work_temperature": "1900 degF", "chamber_temperature": "2100 degF", "ambient_temperature": "0 degC"}
    heard = []
    answer = find(Design.from_texts({"units": "mm", **hot}), read_have(shop, "mm"), first=heard.append)
    assert answer.offers[0].own_verdict == "good"
    assert answer.first_at and len(heard) == 1 and solve(heard[0]).design == heard[0]


def test_what_is_past_its_limit_is_a_row_of_the_score():
    """The points of a design with faults were more than its terms came to, and no word told why."""
    start, have = Design(), read_have("regulator: 5 inH2O\ncylinder: 100 lb x 1\nblower: 3 inH2O 60 cfm")
    for weights in ({}, {"missed": 0}):
        answer = find(start, have, weights, budget=300)
        told, card = report.as_data(answer, have), report.as_text(answer)
        for offer, data in zip(answer.offers, told["designs"]):
            assert offer.own_verdict != "good"
            by_term = {term.key: data["terms"][term.key] / term.point for term in TERMS}
            assert by_term["missed"] == pytest.approx(10 * _wrong(offer)) and by_term["missed"] > 0
            worth = by_term["missed"] * weights.get("missed", 1)
            rest = sum(value for key, value in by_term.items() if key != "missed")
            assert data["points"] == pytest.approx(rest + worth)
            said = f" points, {worth:.2f} of them for what is past its limit\n"
            assert (said in card) == bool(worth) and ("of them for" in card) == bool(worth)
        assert ("least past its limits" in told["score"]["words"]) == (not weights)
    good = find(start, read_have("buy: all"), budget=300)
    assert good.offers[0].own_verdict == "good" and good.offers[0].terms["missed"] == 0
    assert "of them for" not in report.as_text(good)


def test_weights_move_the_best():
    start, have = small("inlets")
    plain = find(start, have, budget=150).offers[0]
    light = {"money": 0, "dark": 0, "spread": 0, "days": 0, "low": 0, "thin": 0, "work": 10}
    quick = find(start, have, light, budget=150).offers[0]
    assert quick.terms["work"] < plain.terms["work"]
    assert quick.points == pytest.approx(10 * quick.terms["work"] / (4 * 3600) + 10 * _wrong(quick), rel=1e-6)


def _wrong(offer):
    found = 0.0
    for check in offer.result.checks.values():
        if check.verdict in ("caution", "stop"):
            if check.value is None:  # a fault without a number
                found += 1
                continue
            found += over(check)
    return found


# What cannot be


def refusals(text, system="in", **texts):
    with pytest.raises(InputErrors) as refused:
        find(Design.from_texts(texts), read_have(text, system))
    return {error.field: error for error in refused.value.errors}


def ask(texts, text, kept=()):
    """What is refused of a question, with the settings that are kept."""
    return question(lambda: Design.from_texts(texts), lambda: accepted(texts), lambda: kept, lambda: gathered(text))


@pytest.mark.parametrize(
    ("text", "fields"),
    [
        ("mine: rows=4; rows=5; body_kind=pipe; pattern=staggered", {"rows", "pattern"}),
        ("round: 6 x 3/16 in\nmine: body_kind=tube\nbuy: none", {"pins", "pipe", "blower", "cylinder", "body_kind"}),
        ("pins: 1,4 in 3\nmine: body_kind=pipe; pattern=staggered", {"pins", "pattern"}),
        ("bolts: 4\nmine: body_kind=pipe; pattern=staggered", {"have", "pattern"}),
        ('{"tube": 5, "mine": ["body_kind=pipe; pattern=staggered"]}', {"tube", "pattern"}),
        # A tube that is not read may be the one that is mine; one that is read is not.
        ("tube: 4 x 4 x 3/16 in; a long one\nmine: body_width=5 in", {"tube"}),
        ("tube: 4 x 4 x 3/16 in\npins: thick\nmine: body_width=5 in", {"pins", "body_width"}),
    ],
)
def test_what_cannot_be_read_and_what_contradicts_is_told_at_once(text, fields):
    with pytest.raises(InputErrors) as refused:
        ask({}, text)
    assert {error.field for error in refused.value.errors} == fields


def test_what_is_kept_twice_and_a_design_that_cannot_be_are_told_with_the_list():
    with pytest.raises(InputErrors) as refused:
        ask({}, "bolts: 4\nmine: block_thickness=3 in", ["block_thickness"])
    assert [error.field for error in refused.value.errors] == ["have", "block_thickness"]
    with pytest.raises(InputErrors) as refused:
        ask({"rows": "0"}, "bolts: 4")
    assert [error.field for error in refused.value.errors] == ["rows", "have"]


# {kind of fault: (texts that are set, lines of the list, the setting or kind that is named, a word of what is said)};
# no two of them touch each other.
AT_FAULT = {
    "a number": ({"rows": "99"}, (), "rows", "1 to 40"),
    "a word": ({"fuel": "peat"}, (), "fuel", "choice"),
    "no number": ({"work_rate": "much"}, (), "work_rate", "number"),
    "two that are set": ({"baffle_thickness": "3 in"}, (), "baffle_thickness", "must be"),
    "pins": ({}, ("pins: 9/32 in", "mine: port_diameter=1/4 in"), "port_diameter", "only 9/32 in"),
    "pipe that is set": ({"mix_pipe": "2"}, ("pipe: 1-1/2",), "mix_pipe", "only 1-1/2"),
    "a drill": ({}, ("drill: #54", "mine: jet_drill=#60"), "jet_drill", "only #54"),
    "nothing to burn with": ({}, ("buy: none",), "blower", "must be at hand"),
    "half a blower": ({}, ("blower: 80 cfm",), "blower", "needs its pressure"),
    "shorter than its lips": ({}, ("tube: 4 x 4 x 3/16 in, 3/4 in",), "tube", "two lips"),
    "shorter than lips that are mine": (
        {},
        ("tube: 4 x 4 x 3/16 in, 3-3/4 in", "mine: setback=1-3/4 in"),
        "tube",
        "no window",
    ),
    "narrower than lips that are mine": ({}, ("tube: 2 x 2 x 3/16 in", "mine: setback=1-1/4 in"), "tube", "no window"),
    "at odds": ({}, ("mine: body_kind=pipe; pattern=staggered",), "pattern", "round face"),
    "twice": ({}, ("mine: block_thickness=2 in; block_thickness=3 in",), "block_thickness", "twice"),
    "set and mine": ({"corner_radius": "0.1 in"}, ("mine: corner_radius=0.2 in",), "corner_radius", "twice"),
    "unknown": ({}, ("mine: baffel=3",), "mine", "not a setting"),
    "no kind": ({}, ("bolts: 4",), "have", "not a kind"),
}


def with_faults(names):
    """(texts, list) with these faults: of what the list does not hold all may be bought, but with nothing to burn with
    no blower."""
    texts, lines = {}, {}
    for name in names:
        texts |= AT_FAULT[name][0]
        for line in AT_FAULT[name][1]:
            kind, _, rest = line.partition(": ")
            lines.setdefault(kind, []).append(rest)
    bare = lines.pop("buy", [])
    buys = [kind for kind in ("tube", "pins", "pipe", "blower", "cylinder") if kind not in lines]
    lines["buy"] = [", ".join(kind for kind in buys if not (bare and kind == "blower")) or "none"]
    return texts, "".join(f"{kind}: {'; '.join(entries)}\n" for kind, entries in lines.items())


def some_faults(count):
    """Seeded handfuls of two to four faults, no two of the same setting or of the same kind of thing."""
    dice = Random(13)
    while count:
        names = dice.sample(sorted(AT_FAULT), dice.randint(2, 4))
        bodies = sum(AT_FAULT[name][2] in ("tube", "pattern") for name in names)
        if len({AT_FAULT[name][2] for name in names}) == len(names) and bodies < 2:
            count -= 1
            yield names


def test_faults_of_every_kind_are_named_at_once_and_each_once(tmp_path, capsys):
    """In Python, on the command line and on the page: what cannot be read hides no other fault."""
    for names in [*([name] for name in AT_FAULT), *some_faults(30)]:
        texts, text = with_faults(names)
        wanted = {AT_FAULT[name][2]: AT_FAULT[name][3] for name in names}
        with pytest.raises(InputErrors) as refused:
            ask(texts, text, list(texts))
        told = [(error.field, error.rule) for error in refused.value.errors]
        shop = tmp_path / "shop.txt"
        shop.write_text(text, encoding="utf-8")
        assert main(["find", "--have", str(shop), *(f"--set={key}={value}" for key, value in texts.items())]) == 2
        lines = [re.split(r" = |: ", line, maxsplit=1)[0] for line in capsys.readouterr().err.splitlines()]
        settings = {**texts, "mine": ",".join(texts)}
        reply = json.loads(worker.handle(json.dumps({"kind": "find", "settings": settings, "have": text})))
        assert Counter(wanted.keys()) == Counter(field for field, _ in told) == Counter(lines), names
        assert Counter(wanted.keys()) == Counter(one["setting"] for one in reply["errors"]), names
        assert all(wanted[field] in rule for field, rule in told), (names, told)


def test_an_empty_shop_is_named_kind_by_kind():
    found = refusals("buy: none")
    assert {"tube", "pins", "pipe", "blower", "cylinder"} <= set(found)


@pytest.mark.parametrize(
    "line, field, word",
    [
        ("tube: 4 x 4 x 3/16 in, 3/4 in", "tube", "lips"),
        ("tube: 4 x 4 in", "tube", "width x depth x wall"),
        ("tube: 2 x 2 x 5/8 in", "tube", "quarter"),
        ("tube: 4 x 4 x 3/16 furlongs", "tube", "unit"),
        ("tube:", "tube", "entry"),
        ("blower: 80 cfm", "blower", "pressure"),
        ("blower: 0 inH2O 80 cfm", "blower", "0.1 inH2O"),
        ("blower: 4 inH2O", "blower", "flow"),
        ("blower: 4 inH2O -80 cfm", "blower", "pressure and a flow"),
        ("blower: -4 inH2O 80 cfm", "blower", "pressure and a flow"),
        ("blower: 4 inH2O and 80 cfm", "blower", "pressure and a flow"),
        ("blower: 4 inH2O 80 cfm !", "blower", "pressure and a flow"),
        ("blower: 4 inH2O 80 cfm 90 cfm", "blower", "pressure and a flow"),
        ("blower: 80 cfm 90 cfm", "blower", "one"),
        ("blower: 4 4 inH2O 80 cfm", "blower", "pressure"),
        ("blower: 4 inH2O 80 80 cfm", "blower", "flow"),
        ("blower: " + "9" * 15_000, "blower", "1000 characters"),
        ("cylinder: 20 lb x " + "9" * 900, "cylinder", "1 to 20"),
        ("cylinder: 20 lb x " + "9" * 5000, "cylinder", "1000 characters"),
        ("blower: 0 cfm 8 inH2O, 100 cfm 9 inH2O, x", "blower", "must"),
        ("pins: 9", "pins", "must be"),
        ("pipe: 1-3/4", "pipe", "known"),
        ("drill: #0", "drill", "drill"),
        ("regulator: 30 to 10 psi", "regulator", "lower"),
        ("cylinder: 55 lb", "cylinder", "known"),
        ("cylinder: 20 lb x 0", "cylinder", "1 to 20"),
        ("bag: sand", "bag", "known"),
        ("nails: 3", "have", "kind"),
        ("a tube", "have", "colon"),
        ("buy: everything", "buy", "all, none"),
        ("mine: rowz=3", "mine", "setting"),
        ("mine: rows=99", "rows", "1 to 40"),
        ("mine: rows=4; rows=5", "rows", "twice"),
        ("pins: 9/32 in\nmine: port_diameter=1/4 in", "port_diameter", "mine"),
        ("tube: 4 x 4 x 3/16 in\nmine: body_width=5 in", "body_width", "mine"),
        ("mine: setback=1/16 in; wall=1/4 in", "setback", "wall"),
        ("cylinder: 100 lb\nregulator: 5 psi\nmine: gas_pressure=20 psi", "gas_pressure", "5 psi"),
        ("cylinder: 100 lb\nregulator: 0 to 10 psi\nmine: gas_pressure=20 psi", "gas_pressure", "0 to 10 psi"),
        ("line: 7 inH2O\nmine: fuel=natural_gas; gas_pressure=2 psi", "gas_pressure", "7 inH2O"),
        ("line: 7 inH2O\nmine: fuel=natural_gas; line_pressure=9 inH2O", "line_pressure", "only 7 inH2O"),
        ("line: 7 inH2O; 11 inH2O\nmine: line_pressure=9 inH2O", "line_pressure", "only 7 inH2O, 11 inH2O"),
        ("line: 7 inH2O\ncylinder: 20 lb\nbuy: all\nmine: line_pressure=9 inH2O", "line_pressure", "only 7 inH2O"),
        ("drill: #54\nmine: jet_drill=#60", "jet_drill", "#54"),
        ("pipe: 1-1/2\nmine: mix_pipe=2; inlet=2", "mix_pipe", "1-1/2"),
        ("pipe: 1-1/2\nmine: mix_pipe=2; inlet=2", "inlet", "1-1/2"),
        ("cylinder: 20 lb x 2\nmine: cylinder=20; cylinder_count=3", "cylinder_count", "only 2"),
        ("tube: 4 x 4 x 3/16 in, 1 ft\npins: 1/4 in\nmine: body_length=20 in", "tube", "shorter than the body"),
        ("tube: 4 x 4 x 3/16 in, 20 in\nmine: batch_size=50", "tube", "not enough"),
        (
            "tube: 4 x 4 x 3/16 in, 8 in\nmine: body_length=12 in; setback=3 in; edge_margin=2 in",
            "tube",
            "shorter than",
        ),
        ("tube: 4 x 4 x 3/16 in, 8 in\nmine: body_length=12 in; setback=3 in; edge_margin=2 in", "edge_margin", "room"),
        (
            "round: 6 x 3/16 in, 24 in\nmine: body_kind=pipe; body_width=8 in; body_length=8 in",
            "body_width",
            "only 6 in",
        ),
        ("round: 6 x 3/16 in, 12 in\nmine: inlet_position=end", "inlet_position", "centre for a round pipe"),
        ("round: 6 x 3/16 in, 12 in\nmine: pattern=straight", "pattern", "round face"),
        ("blower: 1 inH2O 20 cfm\nmine: blower_curve=0 cfm 4 inH2O, 60 cfm 0 inH2O", "blower_curve", "one without"),
        ("buy: all, none", "buy", "alone"),
        ("mine: rows; rows=", "rows", "twice"),
        ('{"tube": 3}', "tube", "list"),
        ('{"tube"', "have", "JSON"),
    ],
)
def test_what_cannot_be_is_named(line, field, word):
    found = refusals(line)
    assert field in found and word in found[field].rule, {key: error.rule for key, error in found.items()}
    if field == "gas_pressure":
        read_have(f"mine: gas_pressure={found[field].nearest}\nbuy: all")


@pytest.mark.parametrize(
    "shop",
    [
        "line: 7 inH2O; 9 inH2O\nmine: line_pressure=9 inH2O",
        "line: 7 inH2O\ncylinder: 100 lb\nmine: gas_from=cylinder; line_pressure=9 inH2O",  # no line is asked
    ],
)
def test_the_pressure_of_a_line_that_lies_there_may_be_mine(shop):
    assert find(Design(), read_have(shop), budget=300).offers


@pytest.mark.parametrize(
    ("system", "there", "pins", "tube"),
    [
        ("in", "1 1/2 x 1 1/2 x 1/8 in, 8 ft", "1/2 in", "2 x 2 x 1/8 in"),
        ("in", "1 1/2 x 1 1/2 x 1/8 in, 8 ft", "1/4 in", "2 x 2 x 1/8 in"),  # 1 3/4 in would do, and is not sold
        ("mm", "40 x 40 x 3 mm, 2 m", "12 mm", "50 x 50 x 3 mm"),
    ],
)
def test_pins_too_thick_for_the_tube_are_named_with_it_and_what_would_do(system, there, pins, tube):
    """No thinner pins, which pass too little on so narrow a face, but the smallest wider tube that is sold, and a
    burner comes out of that."""
    start, shop = Design.from_texts({"units": system}), "tube: {}\npins: " + pins
    with pytest.raises(InputErrors) as refused:
        find(start, read_have(shop.format(there), system), budget=100)
    (error,) = refused.value.errors
    assert error.field == "pins" and there in error.value and pins in error.value
    assert f"across for ports of {pins}; " in error.rule and f"a tube of {tube} would do" in error.rule
    assert find(start, read_have(shop.format(tube), system), budget=100).offers
    if thinner := re.search(r"; pins of (\S+ mm) or", error.rule):
        assert find(start, read_have(f"tube: {there}\npins: {thinner[1]}", system), budget=100).offers


@pytest.mark.parametrize(
    ("entry", "system", "offer", "word"),
    [
        ("80 cfm", "in", "2 inH2O 80 cfm", "1 to 3"),
        ("140 m3/h", "mm", "5 mbar 140 m3/h", "2.5 to 7.5"),
        ("2 inH2O", "in", "2 inH2O 60 cfm", "nothing on the outlet"),
    ],
)
def test_half_a_blower_is_asked_for_the_other_half_and_keeps_its_own(entry, system, offer, word):
    with pytest.raises(InputErrors) as refused:
        read_have(f"blower: {entry}\nbuy: tube, pins, pipe, cylinder", system)
    (error,) = refused.value.errors
    assert error.nearest == offer and word in error.rule


def test_all_faults_come_together_and_nothing_is_lost():
    text = "tube: 4 x 4 x 3/16 in, 1/2 in\nblower: 80 cfm\npins: x\nmine: rows=99; port_diameter=9 in\nnails: 3"
    assert {"tube", "blower", "pins", "rows", "port_diameter", "have"} <= set(refusals(text))


def test_what_i_have_is_read_back_from_its_own_text():
    text = (
        "tube: 4 x 4 x 3/16 in, 8 ft; 3 x 3 x 1/8 in\npins: 9/32 in, 36 in\nblower: 0 cfm 5 inH2O, 60 cfm 2 inH2O\n"
        "regulator: 0 to 30 psi\ncylinder: 20 lb x 2\nbuy: pipe, drill\nmine: rows=4; inlet"
    )
    have = read_have(text)
    assert read_have(have.text()) == have
    data = {kind: [piece.typed for piece in pieces] for kind, pieces in have.pieces.items()}
    as_json = json.dumps({**data, "buy": ["pipe, drill"], "mine": ["rows=4", "inlet"]})
    assert read_have(as_json) == have
    for kind, (_, example) in KINDS.items():
        assert read_have(f"{kind}: {example}").pieces[kind]


@pytest.mark.parametrize(
    "entry",
    [
        *("tube: 90 x 90 x 1/100 in", "tube: 3 x 3 in", "plate: 9 in, 2 x 2 in", "round: 6 x 4 in", "pins: 9 in"),
        *("pins: 1/4 in, 900 ft", "pipe: 1-1/3", "blower: 4000 inH2O 60 cfm", "drill: #400", "drill: ,"),
        *(
            "regulator: 900 psi",
            "regulator: 30 to 0 psi",
            "cylinder: 21 lb",
            "cylinder: 20 lb x 99",
            "line: 900 psi",
            "bag: mud",
        ),
        "board: ply 9",
    ],
)
def test_what_is_offered_for_an_entry_is_an_entry(entry):
    """Or, where nothing near it works, what it is written like, which is no offer."""
    kind = entry.partition(":")[0]
    with pytest.raises(InputErrors) as refused:
        read_have(f"{entry}\nbuy: all")
    for error in refused.value.errors:
        offered = error.nearest or error.rule.rpartition("it is written like ")[2]
        assert error.field == kind and read_have(f"{kind}: {offered}\nbuy: all").pieces[kind]


def test_an_entry_as_people_say_it():
    """A range with a dash; two pins with a comma; a blower by its kind, whose typical numbers are offered."""
    assert read_have("regulator: 0-30 psi\nbuy: all").of("regulator")[0].figures == (
        read_have("regulator: 0 to 30 psi\nbuy: all").of("regulator")[0].figures
    )
    assert read_have("blower: 60 cfm at 4 inH2O\nbuy: all").of("blower")[0].texts == (
        read_have("blower: 4 inH2O 60 cfm\nbuy: all").of("blower")[0].texts
    )
    for entry, offered in (
        ("pins: 1/4 in, 3/8 in", "1/4 in; 3/8 in"),
        ("pins: 5/16 in dowel", "5/16 in"),
        ("tube: 4x4 1/4", "4x4 x 1/4 in"),
        ("blower: Hair dryer", "1.5 inH2O 40 cfm"),
        ("blower: hair dryer, heat off", "1.5 inH2O 40 cfm"),
        ("blower: small 12 V radial fan", "1.2 inH2O 30 cfm"),
        ("blower: bouncy-castle blower", "6 inH2O 800 cfm"),
        ("blower: 100 cfm 2 in", "100 cfm 2 inH2O"),
        ("blower: 4 in 60 cfm", "4 inH2O 60 cfm"),
    ):
        with pytest.raises(InputErrors) as refused:
            read_have(f"{entry}\nbuy: all")
        assert [error.nearest for error in refused.value.errors] == [offered]
    with pytest.raises(InputErrors) as refused:
        read_have("blower: a big one\nbuy: all", "mm")
    assert refused.value.errors[0].nearest == "" and "written like 10 mbar 100 m3/h" in refused.value.errors[0].rule


@pytest.mark.parametrize(
    "system, entry, offered, said",
    [
        ("mm", "tube: 900 x 900 x 4 mm, 2 m", "600 mm x 600 mm x 4 mm, 2 m", "39 mm to 600 mm (face width)"),
        ("mm", "tube: 90 x 90 x 60 mm, 2 m", "90 x 90 x 19 mm, 2 m", "0.8 mm to 19 mm (steel wall)"),
        ("in", "pins: 9, 36 in", "1 in, 36 in", "1/16 in to 1 in (port diameter)"),
        ("mm", "pins: 6 mm, 900 m", "6 mm, 3000 mm", "26 mm to 3000 mm (pin stock length)"),
        ("mm", "regulator: 90 bar", "4.1 bar", "0.0025 bar to 4.1 bar (gas pressure)"),
        ("mm", "tube: 100 x 100 4", "100 x 100 x 4 mm", "width x depth x wall"),
        ("in", "pins: #2", "0.221 in", "a drill #2 is 0.221 in"),
        ("in", "regulator: 20 to 0 psi", "0 to 20 psi", "from the lower pressure to the higher"),
        ("mm", "regulator: 2 bar to 1 psi", "1 psi to 2 bar", "from the lower pressure to the higher"),
    ],
)
def test_an_entry_is_refused_in_the_reader_s_measures_and_mended_where_it_is_wrong(system, entry, offered, said):
    """By the names of the page, no keys; what is offered keeps the rest of what was typed."""
    with pytest.raises(InputErrors) as refused:
        read_have(f"{entry}\nbuy: all", system)
    (error,) = {error.nearest: error for error in refused.value.errors}.values()
    kind = entry.partition(":")[0]
    assert said in error.rule and error.nearest == offered and read_have(f"{kind}: {offered}\nbuy: all", system)


@pytest.mark.parametrize(
    "typed, meant",
    [
        ("blower: 3 INH2O 80 CFM", "blower: 3 inH2O 80 cfm"),
        ("blower: 0.5 PSI 20 CFM", "blower: 0.5 psi 20 cfm"),
        ("blower: 5 MBAR 100 M3/H", "blower: 5 mbar 100 m3/h"),
        ("blower: 0 CFM 5 INH2O, 60 CFM 2 INH2O", "blower: 0 cfm 5 inH2O, 60 cfm 2 inH2O"),
        ("regulator: 0 TO 50 PSI", "regulator: 0 to 50 psi"),
        ("TUBE: 4 X 4 X 3/16 IN, 8 FT", "tube: 4 x 4 x 3/16 in, 8 ft"),
        ("tube: 100 X 50 X 3 MM, 2 M", "tube: 100 x 50 x 3 mm, 2 m"),
        ("cylinder: 9 KG X 2", "cylinder: 9 kg x 2"),
        ("drill: #54; 1.4 MM", "drill: #54; 1.4 mm"),
        ("drill: 1.0 mm; 1.50mm; .9 mm; 10.0 mm", "drill: 1 mm; 1.5 mm; 0.9 mm; 10 mm"),
    ],
)
def test_units_in_capitals_and_sizes_as_stamped_are_read(typed, meant):
    typed, meant = (read_have(f"{text}\nbuy: all") for text in (typed, meant))
    assert all(
        [(one.texts, one.figures) for one in typed.of(kind)] == [(one.texts, one.figures) for one in meant.of(kind)]
        for kind in KINDS
    )


def test_a_unit_that_capitals_make_another_is_not_guessed():
    """MPa or mPa: nobody's blower has either, and nothing is taken for it."""
    with pytest.raises(InputErrors):
        read_have("blower: 1 MPA 80 cfm\nbuy: all")


def test_a_word_for_what_may_be_bought_that_is_none_hides_nothing_else_behind_it():
    with pytest.raises(InputErrors) as refused:
        read_have("buy: everything")
    (error,) = refused.value.errors
    assert (error.field, error.nearest) == ("buy", "all")


def test_what_is_mine_is_written_by_its_name():
    have = read_have("mine: rows=4; inlet; port_diameter=6 mm; aspirated_pressure\nbuy: all", "mm")
    assert "mine: rows=4; inlet pipe; port diameter=6 mm; aspirated_pressure\n" in have.text()
    assert read_have(have.text(), "mm") == have


@pytest.mark.parametrize("system, longest", [("in", 20 * 0.3048), ("mm", 6.0)])
def test_a_longer_tube_is_as_long_as_the_reader_s_shop_sells(system, longest):
    text = {"in": "tube: 4 x 4 x 3/16 in, 8 in", "mm": "tube: 100 x 100 x 4 mm, 200 mm"}[system]
    wider = longer_tubes(read_have(text, system), system)
    assert [piece.figures["length_m"] for piece in wider.of("tube")] == pytest.approx([longest])
    assert longer_tubes(wider, system) is None


def test_a_longer_tube_is_a_purchase_with_its_size():
    """Two bodies of 4 in and the saw cut of 1/8 in between them take 8 1/8 in; the piece at hand has 4 1/2 in. A piece
    0 mm longer was once the purchase, and no length was ever looked at that the piece at hand does not give."""
    kept = {key: text for key, text in KEPT.items() if key != "body_length"} | {"batch_size": "2"}
    shop = f"tube: 4 x 4 x 3/16 in, 4 1/2 in\npins: 1/4 in\nmine: {', '.join(kept)}"
    answer = find(Design.from_texts(kept), read_have(shop))
    opening = answer.opening
    assert opening.words == "a 3 5/8 in longer tube, 4 in x 4 in x 3/16 in, 8 1/8 in long or more"
    assert opening.design.show("body_length") == "4 in" and not opening.left and "Inlet on the body" in opening.cures
    assert solve(opening.design).worst == "good" and solve(answer.offers[0].design).checks["web"].verdict != "good"
    # It was told at no price; it costs what a list has that holds no tube.
    (tube,) = (row for row in solve(opening.design).tables["shopping"].rows if row[0].startswith("tube"))
    assert opening.price == tube[-1] > 0
    # And is found once it is on the list: the shorter piece of that section hid it.
    assert opening.adds == (("tube", "4 in x 4 in x 3/16 in, 8 1/8 in"),)
    longer = shop.replace("4 1/2 in", f"4 1/2 in; {opening.adds[0][1]}")
    assert not find(Design.from_texts(kept), read_have(longer)).in_the_way


PLENTY = "tube: 4 x 4 x 3/16 in\npipe: 1; 1-1/4; 1-1/2; 2\ncylinder: 100 lb x 8\n"


def test_all_that_is_too_few_is_one_purchase():
    """At most the kinds that were found together by chance were named, and each regulator at the price of all three."""
    shop = f"{PLENTY}pins: 1/4 in x 6\nblower: 4 inH2O 60 cfm\nregulator: 0 to 30 psi\nbag: dense_castable\nbuy: drill"
    answer = find(Design.from_texts({"batch_size": "3", "bag_mass": "5 lb"}), read_have(shop), budget=700)
    ports = solve(answer.offers[0].design)["port_count"]
    assert {fault.label for fault in answer.in_the_way} == {"Bags", "Blowers", "Regulators", "Pins"}
    opening = answer.opening
    made = solve(opening.design)
    bags = next(row[2] for row in made.tables["shopping"].rows if row[0] == "refractory") - 1
    assert made["port_count"] == ports and bags > 1  # the design itself, with more of what is too few
    assert opening.words == (
        f"2 more blowers like yours, {bags} more bags, 2 adjustable regulators and {ports - 6} more pins of 1/4 in"
    )
    # 120 a blower, 95 a bag, 45 a regulator, 1.50 a stick; not for what lies there.
    sticks = opening.price - 2 * (120 + 45) - 95 * bags
    assert sticks > 0 and sticks % 1.5 == 0 and not opening.left


def test_more_of_what_lies_there_comes_before_another_kind_of_it():
    """Three other blowers at 360 were told for three chambers, where two more of one's own do."""
    shop = f"{PLENTY}pins: 1/4 in\nblower: 4 inH2O 60 cfm\nregulator: 0 to 30 psi\nbuy: drill, bag, regulator"
    opening = find(Design.from_texts({"batch_size": "3"}), read_have(shop), budget=500).opening
    assert (opening.words, opening.price, opening.left) == ("2 more blowers like yours", 2 * 120.0, ())


@pytest.mark.parametrize(
    ("pins", "holds"),
    [
        ("1/4 in", True),
        ("1/4 in x 60", True),
        ("1/4 in x 5", False),
        ("1/4 in x 5; 1/4 in x 55", True),
        ("1/4 in, 36 in x 6", True),  # of pins of 3 to 5 in 42 or more
        ("1/4 in, 4 in x 3", False),
    ],
)
def test_too_few_pins_for_the_ports_are_told(pins, holds):
    """A mould holds all pins of a block at a time; the same make the next. How many there are could not be told."""
    shop = f"{PLENTY}pins: {pins}\nblower: 4 inH2O 60 cfm\nregulator: 0 to 30 psi\n"
    twelve = {"batch_size": "12", "blowers": "one"}
    for buy in ("drill, bag, blower, regulator", "drill, bag, blower, regulator, pins"):
        start = Design.from_texts(twelve)
        best = find(start, read_have(f"{shop}buy: {buy}"), budget=300).offers[0]
        there = 0 if holds else {"1/4 in x 5": 5}.get(pins)
        few = best.bill.lacking.get("pins")
        assert (few is None) == (holds or "pins" in buy)
        if few and there:
            assert few == solve(best.design)["port_count"] - there
            assert f"There are {few} pins too few of this size to fill the mould" in best.faults[0].text
        bought = [one for one in best.buys if one.key == "pins"]
        if holds:
            assert not bought


@pytest.mark.parametrize("entry", ["1/4 in x 0", "1/4 in x 1000", "1/4 x 30", "1/4 in x 3 x 4"])
def test_a_count_of_pins_that_cannot_be_is_refused(entry):
    with pytest.raises(InputErrors) as refused:
        read_have(f"pins: {entry}\nbuy: all")
    assert [error.field for error in refused.value.errors] == ["pins"]


def test_a_count_of_pins_is_read():
    for entry in ("1/4 in x 30", "30 x 1/4 in", "1/4 in X 30"):
        (piece,) = read_have(f"pins: {entry}\nbuy: all").of("pins")
        assert (piece.texts, piece.figures) == ({"port_diameter": "1/4 in"}, {"count": 30})
    (sticks,) = read_have("pins: 6 mm, 1000 mm x 4\nbuy: all", "mm").of("pins")
    assert sticks.texts["pin_stock_length"] == "1000 mm" and sticks.figures == {"count": 4}


def test_what_comes_out_of_the_piece_at_hand_is_no_longer_tube():
    start, have = Design(), read_have("tube: 4 x 4 x 3/16 in, 8 in\npins: 1/4 in\nmine: batch_size=1; burner_count=1")
    wider = Space(start, longer_tubes(have, "in"))
    lack = purchase.Lack(have, wider.root, {}, set())
    trial = purchase.Trial(lack, ("longer",), Found(wider))
    here = followed(wider, first_of(Space(start, have)))
    assert here.values["body_length"] <= 8 * 0.0254 + 1e-9 and not trial.buys(here)
    nodes = others(wider, trial.found, here, "length", 400, True)
    beyond = [node for node in nodes if node.values["body_length"] > 8 * 0.0254 + 1e-9]
    assert beyond and all(trial.buys(node) == (node in beyond) for node in nodes)


def test_what_never_gets_to_its_heat_ranks_below_what_does():
    """The knife maker's chamber on house gas stays at the rate to light at for good: no heat, a stop like others."""
    start = Design.from_texts(DIM)
    kept = {key: start.text(key) for axis in AXES for key in axis.keys}
    space = Space(start, Have({}, frozenset(), kept))
    node = first_of(space)
    space.settle(node)
    assert [key for key, word in node.words.items() if word == "stop"] == ["lighting_wait"]
    text = solve(space.design(node)).checks["lighting_wait"].text
    assert "never gets to the 1550 °F it is worked at" in text
    assert node.stops == 1 and not node.idle and rank(node, weights_of({})) > (0, 9, 0.0)


def test_what_never_does_its_work_ranks_as_if_it_were_stopped():
    """An oven led to low fire only, which does not do the work: a caution, and one fault less than others have."""
    oven = {"chamber_temperature": "1300 degF", "work_temperature": "1200 degF", "lit_by": "guard", "low_fire": "42 %"}
    start = Design.from_texts(
        {**oven, "port_diameter": "5/16 in", "equivalence_ratio": "0.96", "work_rate": "120 lb/h"}
    )
    kept = {key: start.text(key) for axis in AXES for key in axis.keys}
    space = Space(start, Have({}, frozenset(), kept))
    node = first_of(space)
    space.settle(node)
    assert node.words["turning"] == "caution" and "does not do the work" in solve(start).checks["turning"].text
    assert node.stops == 1 + sum(word == "stop" for word in node.words.values())


def test_a_design_on_screen_with_fewer_faults_is_told_before_what_is_found():
    start, have = Design(), read_have("tube: 4 x 4 x 3/16 in\npins: 1/8 in")
    answer = find(start, have, budget=150)
    assert solve(start).worst == "good" and answer.in_the_way
    told = report.on_screen(start, answer)
    assert told.startswith("The design on screen has fewer faults") and "Make it good" in told
    worst = start.changed({"blower_shutoff_pressure": "0.3 inH2O", "low_fire": "5 %"})
    assert report.on_screen(worst, answer) == ""


def test_nothing_is_found_that_is_worse_than_the_design_in_question():
    """What had been found was asked for again with the same list, and with a tube and pins more."""
    dice, seen, worse, weights = Random(11), 0, 0, weights_of({})
    while seen < 20:
        tubes = dice.sample(["4 x 4 x 3/16 in, 8 ft", "3 x 3 x 3/16 in, 3 ft", "5 x 3 x 3/16 in, 4 ft"], 2)
        pins = dice.sample(["1/4 in", "9/32 in", "5/16 in", "3/8 in"], 2)
        blower = dice.choice(["4 inH2O 60 cfm", "3 inH2O 80 cfm", "8 inH2O 150 cfm"])
        asked = Design.from_texts({"chamber_length": dice.choice(["12 in", "16 in", "20 in"])})
        poor = f"tube: {tubes[0]}\npins: {pins[0]}\nblower: {blower}"
        rich = f"tube: {'; '.join(tubes)}\npins: {'; '.join(pins)}\nblower: {blower}"
        on_screen = find(asked, read_have(poor), budget=dice.choice([120, 300])).offers[0].design
        for text in (poor, rich):
            have = read_have(text).in_order()
            space = Space(on_screen, have)
            start = in_question(space)
            assert start is not None and space.settle(start) and space.design(start) == on_screen
            best = find(on_screen, have, budget=120).offers[0]
            faults = [fault.verdict for fault in best.faults]
            ours = faults.count("stop"), faults.count("caution"), best.points
            theirs = start.rank(weights)
            assert ours[:2] < theirs[:2] or (ours[:2] == theirs[:2] and ours[2] <= theirs[2] + 1e-6)
            plain = find(asked, have, budget=120).offers[0]
            bad = [fault.verdict for fault in plain.faults]
            worse += (bad.count("stop"), bad.count("caution"), plain.points) > (*ours[:2], ours[2] + 1e-6)
            seen += 1
    assert worse  # begun from another design, some are


@pytest.mark.parametrize(
    "text, texts",
    [
        ("pins: 3/16 in", {}),  # the pins on screen do not lie there, and none may be bought
        ("tube: 4 x 4 x 3/16 in, 6 in", {}),  # nor does a body of 9 in come out of the piece
        ("drill: #54", {"jet_drill": "#50"}),
        ("regulator: 11 inH2O", {"gas_pressure": "5 psi"}),
        ("cylinder: 20 lb", {"cylinder": "100"}),
        ("blower: 1 inH2O 20 cfm", {}),
        ("pipe: 1", {}),
    ],
)
def test_what_does_not_lie_there_is_in_no_design_in_question(text, texts):
    there = in_question(Space(Design.from_texts(texts), read_have("")))
    assert there is not None and there.texts["body_length"] == "9 in"
    assert in_question(Space(Design.from_texts(texts), read_have(text))) is None


def test_a_fire_in_question_that_is_too_small_is_raised():
    """Such a fire is only noted, so it would be the cheapest of all."""
    asked = Design.from_texts({"firing_rate": "47 kBtu/h", "work_rate": "0 lb/h"})  # 50.6 are needed
    node = in_question(Space(asked, read_have("")))
    assert node is not None and node.values["firing_rate"] > 50.6 * 293.07
    kept = in_question(Space(asked, read_have("mine: firing_rate")))
    assert kept is not None and kept.texts["firing_rate"] == "47 kBtu/h"


BOUGHT = [  # a list, what is bought, and the same list with it
    (
        {"chamber_length": "6 in", "chamber_width": "4 in", "chamber_height": "4 in", "work_rate": "2 lb/h"},
        "tube: 2 x 2 x 1/8 in, 4 ft\npins: 3/16 in\nblower: 2 inH2O 40 cfm",
        "3 inH2O 40 cfm\ntube: 4 x 4 x 3/16 in, 8 ft\npins: 1/4 in",
    ),
    (
        {"chamber_length": "14 in", "chamber_width": "8 in", "chamber_height": "5 in"},
        "cylinder: 20 lb\ntube: 4 x 4 x 3/16 in, 4 ft\npins: 3/16 in\nblower: 1 inH2O 30 cfm",
        "1.5 inH2O 15 cfm",
    ),
]


@pytest.mark.parametrize("texts, shop, bought", BOUGHT)
def test_what_a_purchase_promises_comes_true_once_it_is_on_the_list(texts, shop, bought):
    """Begun from the design that it was tried with, as the page's button does: where that had less fire than is needed,
    which is only noted, more was set, with which it was at fault."""
    answer = find(Design.from_texts(texts), read_have(shop))
    opening = answer.opening
    shut, free = bought.split(" ", 2)[0], bought
    assert set(opening.kinds) == {"blower", *re.findall(r"^(\w+):", bought, re.M)}, free
    assert f"a blower of {shut}" in opening.words
    assert report.BOUGHT in report.as_text(answer)
    promised = [fault.verdict for fault in opening.left]
    best = find(opening.design, read_have(f"{shop}; {bought}"), budget=300).offers[0]
    found = [fault.verdict for fault in best.faults]
    assert (found.count("stop"), found.count("caution")) <= (promised.count("stop"), promised.count("caution"))


@pytest.mark.parametrize(
    "entry, batch, bought",
    [("4 x 4 x 3/16 in, 6 in", 1, True), ("4 x 4 x 3/16 in, 2 ft", 4, True), ("4 x 4 x 3/16 in, 2 ft", 1, False)],
)
def test_a_tube_that_is_too_short_hides_none_of_the_same_that_is_sold(entry, batch, bought):
    """What lay there took the same tube off the menu, however little of it there was."""
    asked = Design.from_texts({"batch_size": str(batch), "body_length": "8 in"})
    space = Space(asked, read_have(f"tube: {entry}\nmine: batch_size\nbuy: all"))
    node = space.child(space.root, space.menu(space.root)[0])
    node = space.child(node, space.menu(node)[0])
    same = [
        one for one in space.menu(node) if ("body_width", "4 in") in one.texts and ("body_depth", "4 in") in one.texts
    ]
    tubes = [one for one in same if ("body_kind", "tube") in one.texts]
    assert [bool(one.buy) for one in tubes] == [False, True][: 1 + bought]
    on_screen = in_question(space)
    assert on_screen is not None and on_screen.texts["body_length"] == "8 in"
    assert bool(on_screen.chosen[space.decided_at["body_kind"]].buy) == bought


def test_of_two_pieces_of_a_tube_the_longer_is_taken():
    """The shorter hid it, so one piece more gave a worse burner."""
    text = "tube: 4 x 4 x 3/16 in, 8 ft{}\npins: 1/4 in"
    one, two = (find(Design(), read_have(text.format(more)), budget=150) for more in ("", "; 4 x 4 x 3/16 in, 5 in"))
    assert [offer.design for offer in two.offers] == [offer.design for offer in one.offers]


def test_weights_out_of_range_are_refused():
    with pytest.raises(InputErrors) as refused:
        weights_of({"beauty": "1", "money": "-3", "days": "x", "work": str(inf), "low": "1e9", "thin": "1,5"})
    assert {one.field: one.nearest for one in refused.value.errors} == {
        "weight": "",
        "weight money": "0",
        "weight days": "1",
        "weight work": "100",
        "weight low": "100",
        "weight thin": "1.5",
    }


# What if


def test_the_sample_is_seeded_and_counts_what_happens():
    design = Design.from_texts({"low_fire": "45 %"})
    one, other = sample(design, shops=8), sample(design, shops=8)
    assert one == other and 0 <= one.good <= 8
    assert all(0 < worse.shops <= 8 - one.good for worse in one.worse)
    assert one.worse == () or one.good < 8
    words = [worse.verdict for worse in one.worse]
    assert words == sorted(words, key=("stop", "caution").index)


def test_a_design_on_an_edge_stays_good_in_few_shops():
    """The blower, 10 % weaker at worst, falls below its margin in more shops the less there is to spare."""
    ample = sample(Design.from_texts({"blower_shutoff_pressure": "8 inH2O"}), shops=10)
    spare, told = solve(Design.from_texts({})).part("blower").margin, []

    def heard(done, most):
        told.append((done, most))

    edge = sample(
        Design.from_texts({"blower_shutoff_pressure": f"{4 * 1.22 / (1 + spare):.4f} inH2O"}), shops=10, progress=heard
    )

    def count(found):
        return {worse.key: worse.shops for worse in found.worse}.get("blower", 0)

    assert count(ample) == 0 < count(edge)
    assert told == [(done, 10) for done in range(10)]


def test_the_tornado_names_what_moves_each_number():
    swings = tornado(Design.from_texts({}))
    for name in {swing.number for swing in swings}:
        reach = [swing.reach for swing in swings if swing.number == name]
        assert len(reach) == 8 and reach == sorted(reach, reverse=True)
    # The parabola of a blower a tenth weaker in pressure and in flow, over what the burner takes as before.
    blower = solve(Design.from_texts({})).part("blower")
    share = blower.high_m3_s / (60 * 0.3048**3 / 60)
    weak = next(one for one in swings if (one.number, one.tolerance) == ("blower against its need", "blower weaker"))
    expected = blower.times * 0.9 * (1 - (share / 0.9) ** 2) / (1 - share**2)
    assert weak.at_low == pytest.approx(expected, rel=1e-6) and weak.at_high == weak.as_set == blower.times
    # Rate through a jet goes with its coefficient: 0.80 to 0.90 of 0.85, whatever the gas.
    jet = next(
        one
        for one in swings
        if (one.number, one.tolerance) == ("fire at its gas pressure", "jet passes less or more gas")
    )
    assert jet.at_low / jet.as_set == pytest.approx(0.80 / 0.85, rel=1e-9)
    assert jet.at_high / jet.as_set == pytest.approx(0.90 / 0.85, rel=1e-9)
    # The fire that the first screen tells, not what the drill passes at the pressure as set (100 kBtu/h, was 101.6).
    assert jet.as_set == pytest.approx(solve(Design.from_texts({}))["firing_rate_gross"], rel=1e-9)
    pins = next(one for one in swings if (one.number, one.tolerance) == ("turndown", "pins thinner or thicker"))
    assert pins.at_low > pins.as_set > pins.at_high


# What may be off in a shop, and how far, written again: {label: (settings, unit, low, high, whether a share, values)}.
OFF = {
    "pins thinner or thicker": (("port_diameter",), "m", -0.0002, 0.0002, False, 0),
    "block thinner or thicker": (("block_thickness",), "m", -0.002, 0.002, False, 0),
    "jet passes less or more gas": (("jet_discharge_coefficient",), "", -0.05, 0.05, False, 0),
    "gas pressure": (("gas_pressure",), "Pa", -0.05, 0.05, True, 0),
    "blower weaker": (("blower_shutoff_pressure", "blower_free_flow"), "Pa m3/s", -0.1, 0.0, True, 0),
    "mixture": (("equivalence_ratio",), "", -0.02, 0.02, False, 3),
    "altitude": (("altitude",), "m", 0.0, 300.0, False, 2),
    "colder or warmer day": (("ambient_temperature",), "K", -15.0, 10.0, False, 3),
}
ON_AN_EDGE = {"low_fire": "38 %", "blower_shutoff_pressure": "2.1 inH2O", "chamber_length": "14 in"}
READ = {
    "fire at its gas pressure": "jet_firing_rate",
    "spread between ports": "flow_spread",
    "turndown": "turndown",
    "blower against its need": "blower_times",
}


@cache
def on_an_edge():
    return solve(Design.from_texts(ON_AN_EDGE))


def as_built(offs=(), before=None, told=False):
    """The result of a design on an edge, its fire and jet fixed, so far off: all from texts, by solve alone.

    `told`: at the gas pressure that it tells for high fire.
    """
    start = on_an_edge()
    texts = {
        **ON_AN_EDGE,
        "firing_rate": f"{start['firing_rate_gross']!r} W",
        "jet_drill": start.part("jet").drill_name,
        **({"gas_pressure": f"{start.part('jet').high_Pa!r} Pa"} if told else {}),
    }
    design = Design.from_texts(texts)
    for label, off in offs:
        keys, units, *_, share, _ = OFF[label]
        for key, unit in zip(keys, units.split() or [""]):
            value = design.value(key)
            value = value * (1 + off) if share else value + off
            texts[key] = f"{value!r} {unit}".strip()
    return solve(Design.from_texts(texts), before)


def test_the_tornado_is_that_of_designs_solved_one_by_one():
    swings = tornado(Design.from_texts(ON_AN_EDGE))
    as_set = as_built(told=True)
    assert as_set["jet_firing_rate"] == pytest.approx(on_an_edge()["firing_rate_gross"], rel=1e-9)
    ends = {label: [as_built([(label, off)], as_set, told=True) for off in how[2:4]] for label, how in OFF.items()}
    assert {(swing.number, swing.tolerance) for swing in swings} == set(itertools.product(READ, OFF))
    for swing in swings:
        low, high = (one[READ[swing.number]] for one in ends[swing.tolerance])
        expected = [low, as_set[READ[swing.number]], high]
        assert [swing.at_low, swing.as_set, swing.at_high] == pytest.approx(expected, rel=1e-9, abs=1e-12)


def test_the_sample_counts_what_designs_solved_one_by_one_do():
    """Each shop drawn from the same dice, built from texts, judged by all checks but those of the days of building."""
    dice, shops, rank_of = Random(1), 15, {"caution": 1, "stop": 2}
    as_set = as_built()
    good, count, worst = 0, Counter(), {}
    for _ in range(shops):
        offs = []
        for label, (*_, low, high, _, values) in OFF.items():
            at = dice.randrange(values) / (values - 1) if values else dice.random()
            offs.append((label, low + at * (high - low)))
        made = as_built(offs, as_set)
        bad = {}
        for key, check in made.checks.items():
            was = as_set.checks[key].verdict if key in as_set.checks else "good"
            if check.room != "fire" and rank_of.get(check.verdict, 0) > rank_of.get(was, 0):
                bad[key] = check.verdict
        good += not bad
        count.update(bad.keys())
        worst |= {key: word for key, word in bad.items() if rank_of[word] > rank_of.get(worst.get(key), 0)}
    found = sample(Design.from_texts(ON_AN_EDGE), shops=shops)
    assert 0 < found.good == good < shops
    assert {one.key: (one.shops, one.verdict) for one in found.worse} == {
        key: (count[key], worst[key]) for key in worst
    }
    assert found.sentence.startswith(f"Stays good in {good} of {shops} shops")


def test_a_design_that_is_no_good_stays_good_in_no_shop():
    """High and cold at far too much fire: what it says counts shops that are good, not shops that are no worse."""
    texts = {"firing_rate": "1000 kBtu/h", "altitude": "3500 m", "ambient_temperature": "-20 degC"}
    made = solve(Design.from_texts(texts))
    words = Counter(check.verdict for check in made.checks.values() if check.room != "fire")
    found = sample(made.design, shops=3)
    assert words["stop"] and (found.stops, found.cautions, found.good) == (words["stop"], words["caution"], 0)
    said = f"Is not good to begin with: {words['stop']} stop"
    assert found.head.startswith(said) and "Of 3 shops like yours 0 are good." in found.head
    data = report.shops_data(found)
    assert data["head"] == found.head and data["text"].startswith(said) and "Stays good" not in str(data)
    assert report.shops_text(found, ()).startswith(said)


def test_propane_comes_from_the_cylinder_or_the_line_whichever_is_better():
    shop = "tube: 4 x 4 x 3/16 in, 8 ft\npins: 9/32 in\nblower: 4 inH2O 60 cfm\n"
    text = f"{shop}line: 7 inH2O\ncylinder: 100 lb\n"
    both, bare = (find(Design(), read_have(each), budget=300) for each in (text, f"{shop}cylinder: 100 lb\n"))
    assert both.offers[0].own_verdict == bare.offers[0].own_verdict == "good"
    space = Space(Design(), read_have(text))
    menus = {key: set() for key in (True, False)}
    node = space.root
    while node.level < len(AXES) - 1:
        level = AXES[node.level + 1].name
        if level == "cylinder":
            break
        if level == "jet":
            for kid in filter(None, (space.child(node, one) for one in space.menu(node))):
                line = kid.texts["gas_pressure"] == "7 inH2O"
                menus[line] |= {dict(one.texts)["cylinder"] for one in space.menu(kid)}
        node = next(kid for one in space.menu(node) if (kid := space.child(node, one)) is not None)
    assert menus[False] == {"100"} and menus[True]


@pytest.mark.parametrize(
    "shop",
    [
        "tube: 3 x 3 x 3/16 in\npins: 1/4 in\npipe: 1\nblower: 1 inH2O 120 cfm\nline: 11 inH2O",
        "tube: 4 x 4 x 3/16 in\npins: 9/32 in\npipe: 1-1/2\nblower: 4 inH2O 60 cfm\nline: 2 psi\ndrill: #60; #54",
    ],
)
def test_propane_asks_for_no_more_than_its_line_holds(shop):
    """The nearest drill was taken, for which up to a fifth more was told than the line holds, and called good; what
    hose and valves take leaves 97 % of the fire, as is asked of house gas."""
    found = find(Design(), read_have(shop), budget=400)
    results = [offer.result for offer in found.offers]
    results += [solve(found.opening.design)] if found.opening else []
    for one in results:
        line_Pa, jet, mixture_Pa = one.design.line_pressure, one.part("jet"), one.part("resistance").total_Pa
        assert one.design.text("line_pressure") in shop and jet.high_Pa <= line_Pa * (1 + 1e-6)
        assert ((line_Pa - mixture_Pa) / (one.part("supply").outlet_Pa.value - mixture_Pa)) ** 0.5 >= 0.97


def test_a_jet_too_small_for_the_line_is_named():
    """It was told to turn the regulator of a line to 4 psi, of 11 in of water."""
    shop = "tube: 4 x 4 x 3/16 in\npins: 9/32 in\npipe: 1-1/2\nblower: 4 inH2O 60 cfm\nline: 11 inH2O\ndrill: #60"
    with pytest.raises(InputErrors, match=r"#60; 11 inH2O: .* the line holds too little for the jet"):
        find(Design(), read_have(shop), budget=100)


def test_house_gas_finds_a_burner_that_lights_well_with_the_pins_at_hand():
    """At 7 inH2O, where the window to light in is narrow: a larger fire behind a longer face. What lies there stays."""
    shop = "tube: 4 x 4 x 3/16 in, 8 ft\npins: 5/16 in\nblower: 4 inH2O 60 cfm\nline: 7 inH2O\n"
    start = Design.from_texts({"fuel": "natural_gas"})
    for pins in ("5/16 in", "1/4 in"):
        answer = find(start, read_have(shop.replace("5/16 in", pins)), budget=500)
        best = answer.offers[0]
        assert best.own_verdict == "good" and answer.opening is None and not answer.in_the_way
        again = solve(Design.from_texts(best.design.texts))
        assert all(check.verdict not in ("stop", "caution") for check in again.checks.values())
        assert best.design.show("port_diameter") == pins and best.design.text("line_pressure") == "7 inH2O"
        assert best.design.gas_pressure <= best.design.line_pressure  # what valves and a poor jet take is left of it
    bought = find(start, read_have(shop.replace("pins: 5/16 in\n", "")), budget=700)  # what is found last is mended too
    assert bought.offers[0].own_verdict == "good" and not bought.in_the_way
    mine = "mine: block_thickness=2 in; low_fire=50 %; firing_rate=100 kBtu/h\n"
    kept = find(start, read_have(shop + mine), budget=100)
    for offer in kept.offers:
        assert offer.design.text("block_thickness") == "2 in" and offer.design.low_fire == pytest.approx(0.5)


# The command line


def test_find_on_the_command_line(tmp_path, capsys):
    shop = tmp_path / "shop.txt"
    shop.write_text("tube: 4 x 4 x 3/16 in, 8 ft\npins: 1/4 in\nblower: 4 inH2O 60 cfm\n", encoding="utf-8")
    call = ["find", "--have", str(shop), "--budget", "150", "--set", "chamber_length=14in", "low_fire=30%"]
    assert main([*call, "--json", "--site", "https://example.org/"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert data["designs"] and data["score"]["words"].startswith("Ranked by")
    for design in data["designs"]:
        made, refused = from_link(design["link"])
        assert not refused and made.chamber_length == pytest.approx(14 * 0.0254)
        assert made.low_fire == pytest.approx(0.3) and made.port_diameter == pytest.approx(0.00635)
        assert len(design["numbers"]) == 4 and design["buy"] and set(design["terms"]) == set(BY_TERM)
    assert main(call) == 0
    said = capsys.readouterr().out
    assert "BEST OF ALL" in said and "buy:" in said and "#v=" in said


def test_wrong_use_of_find_names_everything(tmp_path, capsys):
    shop = tmp_path / "shop.txt"
    shop.write_text("blower: 80 cfm\nnails: 3\n", encoding="utf-8")
    assert main(["find", "--have", str(shop), "--set", "rows=99", "--weight", "beauty=1"]) == 2
    said = capsys.readouterr().err
    assert all(word in said for word in ("blower", "nails", "rows", "beauty"))
    assert main(["find", "--have", str(tmp_path / "none.txt")]) == 2
    assert main(["good", "--mine", "rowz", "--set", "rows=99"]) == 2
    said = capsys.readouterr().err
    assert "rowz" in said and "1 to 40" in said


def test_ranks_of_a_kind_put_its_number_first():
    start, have = small("three pins")
    space, weights = Space(start, have), weights_of({})
    pool = [node for node in search(space, weights, budget=500).pool if space.settle(node)]
    for kind in ("money", "dark", "low", "work", "days"):
        best = min(pool, key=lambda node: rank(node, weights, kind))
        alike = [node for node in pool if rank(node, weights)[:2] == rank(best, weights)[:2]]
        assert best.terms[kind] <= min(node.terms[kind] for node in alike) + BY_TERM[kind].grain


@pytest.mark.parametrize(
    "text",
    ["tube: 90 x 90 x 4 mm, 600", "plate: 5 mm, 600 x 400", "round: 150 x 5 mm, 600", "pins: 7 mm, 100"],
)
def test_an_entry_means_the_same_in_inches_and_in_millimetres(text):
    inches, metric = (read_have(f"{text}\nbuy: all", system) for system in ("in", "mm"))
    assert inches == metric


def test_a_list_as_json_is_read_as_its_lines_are():
    lines = read_have("tube: 4 x 4 x 3/16 in; 3 X 3 X 3/16 in\nbuy: all")
    assert read_have('{"Tube": "4 x 4 x 3/16 in; 3 X 3 X 3/16 in", "buy": "all"}') == lines


def test_a_list_from_a_phone_or_a_file_of_another_system_is_read():
    typed = read_have('tube: 4" x 4" x 3/16", 8\'\npins: 1/4"\nbuy: all')
    assert read_have("\ufefftube: 4\u201d x 4\u201d x 3/16\u201d, 8\u2019\r\npins: 1/4\u201d\r\nbuy: all") == typed
    primes = (
        "- tube: 4\u2033 x 4\u2033 x 3/16\u2033, 8\u2032\n\u2022 pins: 1/4\u2033\n* buy: all"  # as a message brings it
    )
    assert read_have(primes) == typed


def test_a_unit_may_touch_its_number():
    assert read_have("regulator: 0 to 30psi\nbuy: all") == replace_typed(read_have("regulator: 0 to 30 psi\nbuy: all"))


def replace_typed(have):
    (piece,) = have.pieces["regulator"]
    return replace(have, pieces={"regulator": (replace(piece, typed="0 to 30psi"),)})


def test_what_is_spoilt_in_a_shop_a_little_off_is_what_that_shop_solved_whole_says():
    seen = Counter()
    for texts in (
        {
            "rows": "6",
            "ports_per_row": "12",  # webs of 6.6 mm beside ports of 6.35
            "blower_free_flow": "23 cfm",
            "blower_shutoff_pressure": "1.5 inH2O",
        },
        {
            "port_diameter": "3/8 in",
            "rows": "4",
            "ports_per_row": "8",
            "edge_margin": "15/32 in",  # pitch 2.48
            "body_width": "5 in",
            "body_depth": "5 in",
            "fuel": "natural_gas",
            "gas_pressure": "7 inH2O",
        },
        {"cylinder": "20", "cylinder_count": "2", "firing_rate": "110 kBtu/h"},
        {"chamber_temperature": "2400 degF", "baffle_holes": "31"},  # ports that pass a seventh more for the same holes
        {"firing_rate": "52 kBtu/h"},  # of 49.3 needed
        {"fuel": "natural_gas", "gas_pressure": "6 inH2O"},
        {"fuel": "natural_gas", "block_thickness": "2 in"},  # all of the line's pressure, and a box that gets warm
        {},
    ):
        result = solve(built(solve(Design.from_texts(texts))))
        for key, off in hardy.OFF.items():
            verdict = result.checks[key].verdict if key in result.checks else "none"
            if verdict not in ("good", "note"):
                continue
            worse = solve(moved(result.design, {off.tolerance: off.by(result.parts)}), result).checks[key]
            spoilt = hardy.spoilt(key, verdict, result.parts)
            assert (spoilt is not None) == (worse.verdict in ("caution", "stop")), (texts, key)
            assert spoilt is None or spoilt == pytest.approx(over(worse), abs=0.02)
            seen[key, spoilt is not None] += 1
    assert not [(key, spoils) for key in hardy.OFF for spoils in (True, False) if not seen[key, spoils]]


def test_a_lighting_card_that_pins_a_little_off_spoil_is_what_that_shop_solved_whole_says():
    seen = Counter()
    fine = {"units": "mm", "port_diameter": "6 mm", "rows": "5", "ports_per_row": "9", "edge_margin": "6 mm"}
    for texts in (
        {**fine, "setback": "16 mm", "block_thickness": "65 mm"},
        {**fine, "setback": "16 mm", "block_thickness": "65 mm", "lit_by": "guard"},
        {"units": "mm"},
        {"port_diameter": "3/16 in", "rows": "6"},
        {},
    ):
        result = solve(built(solve(Design.from_texts(texts))))
        card, words = card_of(result), ""
        for off, end in ((hardy.PINS.low, "thinner"), (hardy.PINS.high, "thicker")) if card else ():
            if card(solve(moved(result.design, {hardy.PINS: off}), result)) != HOLDS:
                words = end
        seen[words] += 1
        told = f"Where pins come out {words} the lighting card, made once, does not hold: " if words else ""
        assert hardy.card_words(result).startswith(told) and bool(hardy.card_words(result)) == bool(words), texts
        assert result.worst != "good" or not words or limited_by(result, ()).startswith(told)
    assert seen["thicker"] and seen[""]


def test_what_is_past_its_limit_and_only_noted_has_no_margin():
    assert thinness("lining_limit", "note", 1810.0, 1700.0) == 0.0
    assert thinness("lining_limit", "good", 1615.0, 1700.0) == pytest.approx(0.5)
    # 0.26 to spare where 0.2 must be: 1.26 over 1.2 is 5 % off.
    assert thinness("blower", "good", 0.26, 0.2) == pytest.approx(0.5)


@pytest.mark.parametrize(
    ("texts", "mine", "batches"),
    [
        ({"batch_size": "12"}, "", {1: 12, 2: 24, 3: 36, 4: 48}),
        ({"batch_size": "12", "burner_count": "2"}, "", {1: 6, 2: 12, 3: 18, 4: 24}),
        ({"batch_size": "12"}, "mine: batch_size", {1: 12}),
        ({}, "", {1: 1, 2: 2, 3: 3, 4: 4}),
    ],
)
def test_as_many_chambers_are_fired_whatever_the_number_of_burners(texts, mine, batches):
    space = Space(Design.from_texts(texts), read_have(mine))
    menu = [dict(one.texts) for one in space.menu(space.root)]
    assert {int(one["burner_count"]): int(one["batch_size"]) for one in menu} == batches


def test_the_best_is_not_bettered_by_a_small_move_of_anything_that_takes_nothing_from_the_shop():
    space, weights = Space(Design(), read_have("tube: 4 x 4 x 3/16 in, 4 ft\npins: 1/4 in")), weights_of({})
    found = search(space, weights)
    before = found.best(weights)
    refine(space, found, weights, 400)
    best = found.best(weights)
    assert best.rank(weights) < before.rank(weights)
    _, ours = whole(space, best, None)
    tried = 0
    for at in range(len(AXES)):
        for texts in space.fine(best, at):
            other = space.altered(best, texts)
            if other is not None:
                _, theirs = whole(space, other, None)
                tried += 1
                assert theirs >= ours or theirs[2] == pytest.approx(ours[2], rel=1e-9), texts
    assert tried >= 8


def test_a_purchase_that_asks_for_a_whole_other_design_is_found_too():
    have = read_have("tube: 4 x 4 x 3/16 in, 4 ft\npins: 1/8 in\nbuy: pipe, blower, drill, cylinder")
    opening = find(Design(), have).opening
    assert opening.words == "1/4 in pins" and opening.price > 0 and not opening.left and opening.cures
    assert all(check.verdict in ("good", "note") for check in solve(opening.design).checks.values())


BOX_MM = "tube: 100 x 100 x 4 mm, 2 m\nblower: 10 mbar 100 m3/h\n"


@pytest.mark.parametrize(
    "shop, texts, words, bought",
    [
        (
            "tube: 4 x 4 x 3/16 in, 8 ft\npins: 5/32 in\nblower: 4 inH2O 60 cfm\nline: 7 inH2O",
            {"fuel": "natural_gas"},
            "5/16 in pins",
            {"pins: 5/32 in": "pins: 5/16 in"},
        ),
        (
            f"{BOX_MM}pins: 4 mm\nline: 20 mbar",
            {"fuel": "natural_gas", "units": "mm"},
            "8 mm pins",
            {"pins: 4 mm": "pins: 8 mm"},
        ),
        (
            f"{BOX_MM}pins: 6 mm\nregulator: 0 to 2 bar\ndrill: 0.8 mm",
            {"fuel": "butane", "units": "mm", "ambient_temperature": "15 degC"},
            "a jet drilled 1.1 mm",
            {"drill: 0.8 mm": "drill: 1.1 mm"},
        ),
        (
            "plate: 1/16 in, 24 x 24 in\npins: 1/8 in\nblower: 4 inH2O 60 cfm",
            {},
            "1/4 in pins",
            {"pins: 1/8 in": "pins: 1/4 in"},
        ),
        (
            f"{BOX_MM}pins: 6 mm\nregulator: 0 to 2 bar\ndrill: 0.8 mm\ncylinder: 9 kg\nbuy: pipe",
            {"fuel": "butane", "units": "mm", "ambient_temperature": "15 degC"},
            "6 cylinders of 45 kg and a jet drilled 1.1 mm",
            {"drill: 0.8 mm": "drill: 1.1 mm", "cylinder: 9 kg": "cylinder: 45 kg x 6"},
        ),
        (
            "tube: 3 x 3 x 3/16 in, 14 in\npins: 1/8 in\nblower: 8 inH2O 150 cfm\npipe: 1",
            {"fuel": "butane", "ambient_temperature": "70 degF", "chamber_length": "18 in"},
            "1/4 in pins",
            {"pins: 1/8 in": "pins: 1/4 in"},
        ),
    ],
    ids=["7 in of water", "20 mbar", "butane", "thin plate and pins", "butane and one cylinder", "a strong blower"],
)
def test_what_is_bought_cures_the_fault_that_no_purchase_was_named_for(shop, texts, words, bought):
    start = Design.from_texts(texts)
    answer = find(start, read_have(shop, start.units))
    opening, worst = answer.opening, answer.in_the_way[0]
    assert opening is not None and opening.words == words and opening.cures + opening.helps
    assert ("helps as much as these together: " in report.as_text(answer)) == (len(opening.kinds) > 1)
    after = solve(opening.design)
    assert opening.design.units == start.units and worst.verdict != after.checks[worst.key].verdict != "stop"
    left = {fault.key for fault in answer.given} | {fault.key for fault in opening.left}
    assert {key for key, check in after.checks.items() if check.verdict in ("caution", "stop")} <= left
    for line, instead in bought.items():
        assert line in shop
        shop = shop.replace(line, instead)
    again = find(start, read_have(shop, start.units))
    before = answer.offers[0].faults
    stops, fewer = ([fault.verdict for fault in each].count("stop") for each in (before, again.offers[0].faults))
    assert fewer < stops if stops else len(again.offers[0].faults) < len(before)


def test_what_lies_there_is_given_back_before_two_kinds_are_bought():
    """Beside another blower two sizes of pipe were bought too, though with those at hand it does alone."""
    text = "tube: 4 x 4 x 3/16 in, 4 ft\npins: 1/4 in\npipe: 1-1/2; 2\nblower: {}0.5 inH2O 30 cfm\n"
    text += "cylinder: 20 lb\nbuy: none"
    opening = find(Design(), read_have(text.format(""))).opening
    assert opening is not None and opening.kinds == ("blower",) and not opening.left
    assert {opening.design.text(key) for key in ("inlet", "mix_pipe")} <= {"1-1/2", "2"}
    blower = f"{opening.design.text('blower_shutoff_pressure')} {opening.design.text('blower_free_flow')}; "
    assert not find(Design(), read_have(text.format(blower))).in_the_way


@pytest.mark.parametrize("shop", ["tube: 3 1/2 x 3 1/2 x 3/16 in, 8 ft\npins: 9/32 in\nblower: 3 inH2O 80 cfm", ""])
def test_no_other_low_fire_makes_the_cheapest_cheaper(shop):
    """A dive takes one low fire for all; 35 % was cheaper by 3 than the cheapest at 40 %, and in an empty shop 25 % by
    10, where the design in question was the deepest turndown at 40 %, listed as it came, for 500 more than another."""
    have = read_have(shop)
    offers = find(Design(), have).offers
    cheapest = min(offers, key=lambda offer: offer.terms["money"])
    assert "cheapest" in cheapest.kinds
    tried = 0
    for low in ("25 %", "30 %", "35 %", "45 %", "50 %"):
        space = Space(cheapest.design.changed({"low_fire": low}), have)
        node = in_question(space)
        if node is None:
            continue
        space.settle(node)
        if not node.words:
            tried += 1
            assert node.terms["money"] >= cheapest.terms["money"] - 1
    assert tried


def test_what_lies_there_is_used_where_more_may_be_bought():
    text = "tube: 3 1/2 x 3 1/2 x 3/16 in, 8 ft\npins: 9/32 in\nblower: 3 inH2O 80 cfm\nbuy: "
    some, all_ = (
        find(Design(), read_have(text + buy), budget=700).offers[0].points for buy in ("pipe, drill, cylinder", "all")
    )
    assert all_ <= 1.01 * some


def test_a_wish_is_no_mend():
    design = Design.from_texts({"equivalence_ratio": "1.3"})
    assert all(change.setting != "reducing_wanted" for change in solve(design).checks["mixture"].changes)
    mended = make_good(design, ["equivalence_ratio"], 30)
    assert "reducing_wanted" not in {change.key for change in mended.changes} | {one.label for one in mended.tried}


@pytest.mark.parametrize(
    ("typed", "nearest"),
    [
        ("tube: 100x50x3", "100x50x3 mm"),  # a metric size without its unit
        ("pins: 8", "8 mm"),
        ("tube: 3 1/2 x 3 1/2 x 3/16 in 8 feet", "3 1/2 x 3 1/2 x 3/16 in, 8 feet"),  # a comma that is missing
        ('blower: 3" fc, 80 cfm', ""),  # no other blower is offered for it
        ("bag: 3000F castable x 2", ""),  # nor another castable
        ("board: plywood", ""),
        ("board: 18 mm ply", "ply 18 mm"),
    ],
)
def test_what_is_offered_for_an_entry_is_what_was_meant_or_nothing(typed, nearest):
    with pytest.raises(InputErrors) as refused:
        read_have(typed)
    assert [error.nearest for error in refused.value.errors] == [nearest]


@pytest.mark.parametrize(
    "entry, meant",
    [
        ("blower: 500 pa 80 m\u00b3/h", "blower: 500 Pa 80 m3/h"),  # "needs its pressure too" stood there
        ('blower: 3" wc, 80 cfm', "blower: 3 inH2O 80 cfm"),  # as every plate says it
        ("blower: 3 in. W.G. 80 cfm", "blower: 3 inH2O 80 cfm"),
        ('line: 7" WC', "line: 7 inH2O"),
        ("tube: 4,5 x 4,5 x 0,25 in", "tube: 4.5 x 4.5 x 0.25 in"),
        ("line: 7,5 inH2O", "line: 7.5 inH2O"),
    ],
)
def test_what_a_plate_or_a_decimal_comma_says_is_read(entry, meant):
    read, clean = (read_have(f"{one}\nbuy: all").pieces[one.partition(":")[0]][0] for one in (entry, meant))
    values = [
        {
            key: Design.from_texts({key: text}).value(key)
            for key, text in one.texts.items()
            if text and key != "body_kind"
        }
        for one in (read, clean)
    ]
    assert values[0] == values[1] and values[0]


def test_a_blower_with_a_comma_and_cylinders_counted_in_words_are_read():
    have = read_have("blower: 3 inH2O, 80 cfm\ncylinder: two 20 lb; 3 x 100 lb")
    assert have.of("blower")[0].texts["blower_free_flow"] == "80 cfm" and not have.of("blower")[0].texts["blower_curve"]
    assert [piece.figures["count"] for piece in have.of("cylinder")] == [2, 3]


def test_a_comma_between_two_settings_that_are_mine_is_named():
    def told(text):
        with pytest.raises(InputErrors) as refused:
            read_have(f"mine: {text}")
        return [(error.rule, error.nearest) for error in refused.value.errors]

    assert told("rows = 4, inlet = 2") == [("must have a semicolon before the next setting", "4; inlet = 2")]
    assert read_have("mine: rows = 4; inlet = 2").mine == {"rows": "4", "inlet": "2"}
    because = [("must end with its unit: because of the pins is too much", "1/4 in")]
    assert told("port_diameter = 1/4 in, because of the pins") == because
    assert told("rows = 4, because") == [("must be a number alone: because is too much", "4")]


def test_the_score_is_told_in_short_with_the_weights_that_were_set():
    said = report.score_words(weights_of({}))
    assert len(said.split()) < 50 and all(term.kind in said for term in TERMS) and "times" not in said
    said = report.score_words(weights_of({"money": "3", "days": "0"}))
    assert "cheapest (3 times)" in said and "shortest days" not in said
    assert "points" not in report.score_words(weights_of({term.key: "0" for term in TERMS}))


def test_a_cylinder_that_lies_there_is_looked_at_from_any_that_is_bought():
    """It stood too far on the menu from one of 14 kg, which was bought beside it: 1,186 where 1,096 do."""
    start = Design.from_texts({"units": "mm", "sizes": "mm", "chamber_width": "120 mm"})
    shop = "tube: 100 x 50 x 3 mm\npins: 8 mm\nbuy: cylinder, pipe, blower, drill, regulator, bag, board"
    without, beside = (find(start, read_have(text, "mm")) for text in (shop, f"{shop}\ncylinder: 9 kg"))
    least = [min(offer.terms["money"] for offer in one.offers) for one in (without, beside)]
    assert least[1] < least[0] < 1210
