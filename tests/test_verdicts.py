"""Verdicts mean something: for many plausible designs, builds known to be good, and designs that must not pass."""

import dataclasses
import itertools
import re
import typing
from collections import Counter, defaultdict
from string import Formatter

import plausible
import pytest
from designs import ABSURD, FAR_APART, KNOWN_GOOD, solved

from burnercalc import catalogue, checks, on_page
from burnercalc.checks.judge import FAULTS
from burnercalc.parts import PARTS
from burnercalc.physics.band import Band
from burnercalc.result import solve

SAMPLE = 100  # of the generator's 250, which the command prints
# A check that finds fault with more than this share of plausible designs says what is so on every forge: a note.
MOST_SPEAKING = 0.6


@pytest.fixture(scope="module")
def results():
    return [solve(design) for design in plausible.designs(SAMPLE)]


def test_plausible_designs_are_told_apart(results):
    """Some are good, most want a word, some must not be built; and no check cries at nearly all of them."""
    print("\n".join(plausible.report(results)))
    worst = Counter(result.worst for result in results)
    assert len(results) == SAMPLE and all(worst[word] > 0 for word in ("good", *FAULTS))
    said = plausible.spoken(results)
    loud = {key: share for key in catalogue.CHECKS
            if (share := sum(said[key, word] for word in FAULTS) / len(results)) > MOST_SPEAKING}  # fmt: skip
    assert not loud


def test_no_sentence_compares_a_number_with_itself(results):
    """Read back from the sentences as said: two numbers that differ by a thousandth are not told alike."""
    compared = 0
    for check, slots in _said(results):
        for (one, kind, number, said_one), (other, kind2, number2, said_other) in itertools.combinations(slots, 2):
            if kind == kind2 and all(isinstance(each, float) for each in (number, number2)):
                compared += 1
                near = abs(number - number2) < 1e-3 * max(abs(number), abs(number2))
                assert near or said_one != said_other, (one, other, check.text)
    assert compared > 1000


def test_a_check_and_an_answer_tell_one_number_with_the_same_figures(results):
    """43.6 here and 44 there is one number for whoever knows it, and two for whoever does not.

    A sentence may need more digits to keep two numbers apart, but then in some designs only.
    """
    apart, seen = Counter(), Counter()
    answers = {id(result): _known(result) for result in results}
    for check, slots, result in _said(results, True):
        for _, kind, number, said in slots:
            if not isinstance(number, float) or not number:
                continue
            for key, dimension, value, text in answers[id(result)]:
                if kind == dimension and abs(value - number) <= 1e-9 * abs(number):
                    seen[check.key, key] += 1
                    apart[check.key, key] += not text.startswith(said)
    assert len(seen) > 60
    assert {pair: apart[pair] for pair in seen if 2 * apart[pair] > seen[pair]} == {}


def _known(result):
    """(key, dimension, value, text) of each number of the answers, the ends of the bands among them."""
    found = []
    for key, answer in result.answers.items():
        for value in (answer.value, *answer.band):
            if isinstance(value, float):
                found.append((key, answer.declared.dimension, value, answer.shown(value)))
    return found


def _said(results, whole=False):
    """Of each check its slots as they stand in its sentence: (name, type, value, text)."""
    for result in results:
        for key, check in result.checks.items():
            judged, rest = result.parts.call(checks.CHECKS[key]), check.text
            for case in judged.cases:
                sentence = re.sub(r"\[([^|\[\]]*)\|[^|\[\]]*\]", r"\1", catalogue.CHECKS[key].cases[case])
                pieces = list(Formatter().parse(sentence))
                pattern = "".join(re.escape(text) + ("(.+?)" if name else "") for text, name, *_ in pieces)
                found = re.match(f"{pattern}(?: |$)", rest)
                assert found, (pattern, rest)
                rest = rest[found.end() :]
                named = [(name, spec.split(" ")[0]) for _, name, spec, _ in pieces if name]
                slots = [(name, kind, judged.slots[name], text) for (name, kind), text in zip(named, found.groups())]
                yield (check, slots, result) if whole else (check, slots)


def test_a_heat_up_that_no_fire_does_is_never_called_done():
    """The firing rate and the heat-up speak of one thing."""
    fast = ("1 min", "2 min", "3 min")
    hurried = [solved(heat_up_time=time, lining=lining, firing_rate=rate)
               for time, lining, rate in itertools.product(fast, ("dense_castable 2 in, blanket_8lb 2 in",),
                                                           ("auto", "400 kBtu/h"))]  # fmt: skip
    never = [result for result in hurried if result.part("need").heat_up_W is None]
    assert never
    for result in never:
        assert result.checks["heat_up_reach"].verdict == "stop"
        assert "the time at the rate to light at not counted" not in result.checks["rate_for_need"].text


OFFERED = {
    # a design, the check that finds fault, the setting offered, what it is moved to
    "a flame that hardly holds, by its opening": (
        {"chamber_temperature": "2550 degF", "work_temperature": "2300 degF", "work_rate": "1 lb/h",
         "opening_area": "40 in2", "firing_rate": "800 kBtu/h"},
        "flame_holds", "opening_area", "12 in2"),
    "a flame that hardly holds, by its walls": (
        {"chamber_temperature": "2600 degF", "work_temperature": "2300 degF", "work_rate": "1 lb/h",
         "opening_area": "4 in2", "lining": "dense_castable 3 in", "firing_rate": "800 kBtu/h"},
        "flame_holds", "lining", "dense_castable 3 in, blanket_8lb 3 in"),
    "too much to heat up, by its opening": (
        {"heat_up_time": "40 min", "opening_area": "33 in2", "chamber_length": "8 in"}, "heat_up_reach",
        "opening_area", "12 in2"),
    "too much to heat up, by its lining": (
        {"heat_up_time": "20 min", "lining": "dense_castable 2 in, blanket_8lb 2 in"}, "heat_up_reach", "lining",
        "dense_castable 1/2 in, blanket_8lb 2 in"),
}  # fmt: skip


@pytest.mark.parametrize("texts, key, setting, better", OFFERED.values(), ids=OFFERED)
def test_what_is_offered_mends_the_fault(texts, key, setting, better):
    before = solved(**texts).checks[key]
    assert before.fault and setting in [change.setting for change in before.changes], before.text
    after = solved(**{**texts, setting: better}).checks[key]
    assert not after.fault, after.text


def test_the_same_seed_makes_the_same_designs():
    assert plausible.designs(3) == plausible.designs(3) != plausible.designs(3, seed=1)


# Which end of a band a check judges: the one that harms. "value" beside it: a stop is what is likely, no mere maybe.
ENDS = {
    ("carbon_monoxide", "carbon_monoxide.dry"): {"high"},
    ("carbon_monoxide", "flame.co_dry_band"): {"high"},  # gas that cools slowly
    ("low_fire_drift", "reached.low_empty_K"): {"high"},
    ("refractory_limit", "reached.low_empty_K"): {"value"},
    ("refractory_limit", "reached.high_empty_K"): {"high"},
    ("chamber_pressure", "back_pressure.opening_Pa"): {"high"},
    ("mixture", "hot_run.mixture_high"): {"high"},
    ("mixture", "hot_run.mixture_low"): {"high"},
    ("hot_drift", "hot_run.mixture_high"): {"value"},  # leaner than set; a slip of the hand comes on top either way
    ("hot_drift", "hot_run.mixture_low"): {"value"},
    ("throughput", "throughput.metal_kg_s"): {"low", "high"},  # its stop: more than can be at best
    ("heat_up_reach", "need.heat_up_band"): {"low", "high"},  # a stop only where the best film is too slow
    ("rate_for_need", "need.working_band"): {"high"},
    ("flashback_cold", "holding.cold_W"): {"value", "high"},
    ("flashback_hot", "holding.hot_W"): {"value", "high"},
    ("box_steel", "hot_block.box_K"): {"high"},
    ("box_steel", "hot_block.lip_K"): {"value", "high"},
    ("box_mixture", "hot_block.mixture_K"): {"value", "high"},
    ("grip_heat", "hot_block.lip_K"): {"value", "high"},
    ("lift", "holding.lift_W"): {"low"},
    ("cross_light", "crossing.cross_light_m"): {"value", "high"},  # value is its low end
    ("mix_pipe_velocity", "mixing.flame_m_s"): {"high"},
    ("lighting_pipe", "lighting_pipe.flame_m_s"): {"high"},
    ("gas_pressure", "jet.diameter_m"): {"high"},
    ("supply", "supply.outlet_Pa"): {"low", "high"},  # a stop only where the least loss is too much
    ("web_as_cast", "as_cast.web_m"): {"low"},
    ("lighting_air", "lighting_air.fresh_air_m3_s"): {"high"},
    ("lighting", "lighting_slide.gas_Pa"): {
        "value"
    },  # what the needle is set to; the room for it is a field of its own
    ("lit_length", "lit_length.side"): {"value"},  # too little of it harms the work, nobody
    ("lighting_wait", "lighting_air.wait_s"): {"high"},
}
# Bands that a check sees and does not judge by.
ONLY_SAID = {
    ("lighting", "holding.hot_W"),  # whether larger ports want low fire set higher too; flashback_hot judges by it
    ("lighting_by_hand", "lighting_meter.passes_s"),  # the window, by a watch
    ("carbon_monoxide", "carbon_monoxide.fresh_air_m3_s"),
    ("throughput", "throughput.fire_kg_s"),  # as metal_kg_s, the less of bars and fire
    ("throughput", "bars.taken_kg_s"),
    ("rate_for_need", "bars.taken_kg_s"),  # only which words its caution has; the throughput judges by it
    ("quenching", "crossing.quenching_m"),  # its two sentences are both good
    ("lighting", "burnt_gas.alone_W"),  # judged by what keeps the flame alight, of its careful end
    ("lighting_by_hand", "lighting_slide.jet_gas_Pa"),  # judged by whether what is told holds with any jet
    ("lighting_by_hand", "lighting_slide.gas_Pa"),  # told; the room for it is judged, which is a field of its own
    ("lighting_by_hand", "lighting_slide.unproven"),  # told only: no design holds over all of it
    ("lighting_by_hand", "lighting_slide.ratio"),  # judged by what the flame does at both its ends
    ("lighting_day", "lighting_day.air_K"),  # no band of a figure: from and to, judged at the nearer end
    ("lighting_air", "lighting_air.co_dry"),  # by the air against it
    ("lighting_air", "lighting_air.wait_s"),  # told; its careful end is judged by `where`, which is no field
    ("lighting_wait", "lighting_air.co_dry"),  # by the time
    ("lighting", "lighting_slide.rate_W"),  # the window of the mark as made, found from the careful ends of its mixture
    ("lighting", "lighting_slide.rate_W"),  # the same as the mark is made; judged by whether it stays over it
    ("cylinder", "cylinders.last_draw_W"),
    ("cylinder", "cylinders.draw_W"),  # 10 % either way; the run is judged by a quarter and a half of a charge
}
STEPS = [10.0**power for power in range(-6, 7, 3)]


def bands(check):
    """(part, field) of every Band in the parts that a check is handed."""
    hints = typing.get_type_hints(checks.CHECKS[check])
    for part in (name for name in hints if name in PARTS):
        for field, kind in typing.get_type_hints(hints[part]).items():
            if Band in (kind, *typing.get_args(kind)):
                yield part, field


def judged_of(result, check, part, field):
    """{(low, value, high) as powers of ten of the band's value: what is judged}, over all that a band could be."""
    record = result.part(part)
    was = getattr(record, field)
    if was is None:
        return {}
    found = {}
    for steps in itertools.combinations_with_replacement(STEPS, 3):
        moved = dataclasses.replace(record, **{field: Band(*(was.value * step for step in steps))})
        found[steps] = result.parts.call(checks.CHECKS[check], **{part: moved})
    return found


def ends_that_move(found, what):
    """The ends whose moving alone moves what is asked of the judgements."""
    names = ("low", "value", "high")
    groups = {name: defaultdict(set) for name in names}
    for steps, judged in found.items():
        for i, name in enumerate(names):
            groups[name][steps[:i] + steps[i + 1 :]].add(judged and what(judged))
    return {name for name in names if any(len(words) > 1 for words in groups[name].values())}


def test_a_check_judges_by_the_end_of_a_band_that_harms():
    """Every check that is handed a band is named here with the end that it judges by."""
    results = [solved(**texts) for texts in FAR_APART.values()]
    by, said = defaultdict(set), defaultdict(set)
    for check in checks.CHECKS:
        for part, field in bands(check):
            for result in results:
                found = judged_of(result, check, part, field)
                by[check, f"{part}.{field}"] |= ends_that_move(found, lambda judged: judged.verdict)
                said[check, f"{part}.{field}"] |= ends_that_move(found, repr)
    assert {pair: ends for pair, ends in by.items() if ends} == ENDS
    assert {pair for pair, ends in said.items() if ends and not by[pair]} == ONLY_SAID


# The cautions that a known-good build may get: house gas lights over a shorter gap than propane. Its lift lies
# nearer to flashback, so that a dozen ports of 9/32 leave no rate to wait at; of 19/64 they do, but a house meter that
# takes over 2 min to be read proves no jet before a lip may glow, and the shortest timer that is sold lets in 2.01 of a
# chamber of 6 x 4 x 3 1/2 in.
TOLD = {
    "hand-sized box, 12 ports of 19/64, house gas": ["lighting_by_hand", "lighting_trial"],
    "small square tube, 20 ports of 5/16, house gas": ["cross_light"],
}


@pytest.mark.parametrize("name", KNOWN_GOOD)
def test_builds_known_to_be_good_are_not_cried_at(name):
    result = solved(**KNOWN_GOOD[name])
    faults = {check.key: check.verdict for check in result.checks.values() if check.fault}
    assert faults == dict.fromkeys(TOLD.get(name, ()), "caution")


def test_known_good_builds_are_as_they_are_known():
    """20, 10 (12 on house gas) and about 80 ports; the first at 45 to 60 kBtu/h a square inch of port (common
    practice)."""
    found = [solved(**texts) for texts in KNOWN_GOOD.values()]
    assert [result["port_count"] for result in found] == [20, 10, 81, 20, 12, 81]
    assert 45 <= found[0].part("stream").loading_W_m2 * 0.0254**2 / 293.07107 <= 60


@pytest.mark.parametrize("texts, key, word", [row[1:] for row in ABSURD], ids=[row[0] for row in ABSURD])
def test_absurd_designs_do_not_pass(texts, key, word):
    check = solved(**texts).checks[key]
    assert check.verdict == word, check.text


def test_the_baffle_is_judged_by_the_least_that_the_ports_take():
    """The passage works its band out when asked, so no field of it is a band."""
    for texts in FAR_APART.values():
        result = solved(**texts)
        check, passage = result.checks.get("baffle_pressure"), result.part("passage")
        assert check is None or check.value == pytest.approx(passage.baffle_Pa / passage.port_Pa.low)
        assert passage.port_Pa.low < passage.port_Pa.value


# Common builds laid out by another hand: what stops them is the layout, and goes with what the check names.
HAND_SIZED = {
    "firing_rate": "27 kBtu/h", "rows": "2", "ports_per_row": "5", "pattern": "straight", "port_diameter": "1/4 in",
    "body_length": "4 in", "body_width": "3 in", "body_depth": "3 in", "setback": "3/8 in", "chamber_length": "8 in",
    "chamber_width": "4 in", "chamber_height": "4 in", "opening_area": "6 in2", "work_rate": "4 lb/h", "mix_pipe": "1",
    "baffle_holes": "0", "inlet": "1-1/4", "blower_free_flow": "30 cfm", "low_fire": "60 %",
}  # fmt: skip
EIGHTY_PORTS = {
    "firing_rate": "300 kBtu/h", "rows": "6", "ports_per_row": "14", "port_diameter": "5/16 in", "inlet": "3",
    "body_length": "12 in", "body_width": "5 in", "body_depth": "5 in", "chamber_length": "24 in", "mix_pipe": "2",
    "chamber_width": "12 in", "chamber_height": "10 in", "opening_area": "40 in2", "work_rate": "30 lb/h",
    "blower_free_flow": "150 cfm", "blower_shutoff_pressure": "6 inH2O", "heat_up_time": "40 min",
}  # fmt: skip


@pytest.mark.parametrize(
    "texts, stops, mended, worst",
    [
        # A lip of 3/8 in, half of it wall of 3/16 in, lies within the tube's corner; two rows 1 1/4 in apart.
        (
            HAND_SIZED,
            {"lip_width", "cross_light"},
            {"wall": "1/8 in", "setback": "1/2 in", "edge_margin": "1/2 in"},
            "caution",
        ),
        # Forty holes of 1/4 in before 81 ports of 5/16 in: under a third of their area.
        (EIGHTY_PORTS, {"baffle_pressure"}, {"baffle_holes": "90"}, "good"),
    ],
    ids=["hand-sized", "eighty ports"],
)
def test_what_stops_a_common_build_goes_with_its_layout(texts, stops, mended, worst):
    before, after = solved(**texts), solved(**{**texts, **mended})
    assert {check.key for check in before.checks.values() if check.verdict == "stop"} == stops
    assert after.worst == worst
    cures = {change.setting for key in stops for change in before.checks[key].changes}
    assert cures & {*mended}


def test_what_is_good_of_a_number_is_what_its_check_judges_by():
    """Beside the number on the page; with the inlet at the end twice the room is wanted."""
    told = {
        place: {key: one["aim"] for key, one in on_page.whole(result, ())["answers"].items() if "aim" in one}
        for place in ("centre", "end")
        for result in [solved(inlet_position=place)]
    }
    assert (
        told["centre"]["plenum_to_port_ratio"] == "1.2 or more is even"
        and told["end"]["plenum_to_port_ratio"] == "2.4 or more is even"
    )
    checks = solved().checks
    assert told["centre"]["blower_times"] == f"{1 + checks['blower'].limit:g} or more is enough"
    for key, check in (("flow_spread", "flow_spread"), ("mixture_velocity_in_port", "port_velocity")):
        assert re.search(r"[\d.]+ \S+", told["centre"][key])[0] in checks[check].text
