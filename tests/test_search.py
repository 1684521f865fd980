"""The page's search takes people where they want to go, by their own words; asked as the page asks it, in Node."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from burnercalc.catalogue.glossary import GLOSSARY
from burnercalc.design import Design
from burnercalc.on_page import _field
from burnercalc.settings import BY_KEY

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT / "site" / "make"))
from runtime import node_path  # noqa: E402
from search import entries  # noqa: E402

# What somebody types, and what must stand among the first three; "or" where one of several will do. Words of the trade,
# whole questions, plurals and other endings, small words, slips of a finger, some spelt as in America.
TYPED = """
how much gas: answer-fuel_per_hour; gas per hour: answer-fuel_per_hour; how much gas does it use: answer-fuel_per_hour
propane per hour: answer-fuel_per_hour; cost to run: answer-fuel_cost_per_hour
how much does it cost to run: answer-fuel_cost_per_hour; price of propane: set-fuel_price
stoichiometric: set-equivalence_ratio; stoichiometric mixture: set-equivalence_ratio
pops back: check-flashback_hot; it pops back in my pipe: check-flashback_hot or check-mix_pipe_velocity
popping: check-flashback_hot; backfires: check-flashback_hot; flame inside the burner: check-flashback_hot
drilling template: paper-template; drill template: paper-template; template: paper-template or paper-templates
where do i drill the holes: table-holes or table-base_drilling; needle valve: part-needle; check valve: part-check_valve
solenoid valve: part-solenoid; regulator: part-regulator or set-regulator_inlet_pressure; damper: part-damper
too much noise: check-port_velocity; noisy: check-port_velocity; why is it so loud: check-port_velocity
goes out: check-lift or check-flammable; the flame goes out: check-lift or check-flammable
won't light: check-lighting or table-lighting_card; wont light: check-lighting or table-lighting_card
how do i light it: table-lighting_card or paper-lighting-card
lighting the burner: table-lighting_card or answer-lighting_rate
blower size: set-blower_free_flow or check-blower or answer-blower_times
what size blower do i need: answer-blower_times
fan: set-blower_free_flow or check-blower; bloer: set-blower_free_flow or check-blower or answer-blower_times
yellow flame: answer-atmosphere or check-mixture; pipe size: set-mix_pipe or set-inlet; what size pipe: set-mix_pipe
how hot: answer-reached_high_empty or set-chamber_temperature; how hot does it get: answer-reached_high_empty
mould: table-mould or set-mould_board or figure-mould; mold: table-mould or set-mould_board or figure-mould
print: paper-sheet; printing: paper-sheet or set-print_scale_x; build sheet: paper-sheet; shopping list: paper-shopping
cut list: table-cut_list or paper-cut-list; bill of materials: table-shopping or paper-shopping
how many bricks: set-lining; insulation: set-lining; insulaton: set-lining; how many bags: answer-bags
how much castable: answer-bags or answer-dry_mass; hole size: set-port_diameter; how many holes: answer-port_count
hole spacing: answer-port_pitch or answer-row_pitch; orifice: answer-jet or set-jet_drill or answer-orifice_diameter
mig tip: answer-jet or set-jet_drill; what pressure: set-gas_pressure or answer-jet_gas_pressure or table-regulator_card
psi: set-gas_pressure; what psi should i run: set-gas_pressure or answer-jet_gas_pressure
not hot enough: check-rate_for_need; tank freezes up: check-cylinder or answer-frost_time
how long will my tank last: answer-run_time; bottle: set-cylinder; carbon monoxide: check-carbon_monoxide
back fire: check-flashback_hot; back-fire: check-flashback_hot; fire bricks: set-lining
co: check-carbon_monoxide; co ppm: check-carbon_monoxide or answer-flue_co_dry
is it safe indoors: check-carbon_monoxide or answer-lighting_fresh_air; ventilation: answer-lighting_fresh_air
drying time: table-drying or figure-drying or answer-air_dry; how long to dry: answer-days_in_all or table-drying
curing: check-curing_air or table-drying or table-days; how long does it take: answer-days_in_all or table-hours
inches or mm: set-units; metric: set-units; altitude: set-altitude
welding steps: table-welding; how to weld: table-welding
pins: table-pins or answer-pin_count; pulling the pins: table-pins; gas train: table-gas_train or paper-train
howl: sign-howl; howls: sign-howl; burner howls: sign-howl; hum: sign-hum; trouble: table-trouble; roar: sign-inside
whistle: sign-inside; pop: sign-down; pops: sign-down; bang: sign-shut; flutter: sign-lifts; headache: sign-sick
gas hose: answer-hose_bore or part-hose; hose size: answer-hose_bore; ribbon burner: set-pattern
venturi: answer-aspirated_rate or table-burner_kinds; turn down: answer-turndown; idle: answer-turndown or set-low_fire
cracks: check-web; uneven flame: check-flow_spread; shut down: check-shut_down or table-lighting_card
name plate: paper-plates or figure-plate; dxf: paper-face; is it worth it: answer-make_or_buy
what should i charge: answer-selling_price; cheaper to buy: answer-make_or_buy; cost to build: answer-cost_per_burner
temprature: set-chamber_temperature or set-work_temperature; presure: set-gas_pressure; galvanized: set-mix_pipe
flashbak: check-flashback_hot or check-flashback_cold; chimney: check-chamber_pressure or set-chamber_back_pressure
door: set-opening_area; plaster: table-mould or set-refractory; burn back: check-flashback_hot or check-flashback_cold
crucible: job-melt_bronze; foundry: job-melt_bronze; heat treat: job-heat_treat
btu: set-firing_rate or answer-firing_rate_gross or answer-firing_rate_needed; efficiency: answer-thermal_efficiency
"""
# A word of the trade, and what must stand among the first six.
WORDS = """
drill bits: set-jet_drill; bottle: set-cylinder; refill: set-cylinder; solenoid valve: answer-train_safety_cost
check valve: answer-train_safety_cost; flame arrestor: answer-train_safety_cost
manometer: answer-train_needed_cost; teflon: answer-train_needed_cost; union: answer-train_needed_cost
leak: answer-hose_bore; soapy water: answer-hose_bore; gate valve: answer-damper_open_high
dimmer: answer-damper_open_high; squirrel cage: set-blower_free_flow; shop vac: set-blower_free_flow
leaf blower: set-blower_free_flow; popping: check-flashback_hot; huff: check-flashback_cold
backfire: check-flashback_hot; dragon breath: check-mixture; yellow flame: answer-atmosphere
scale: answer-atmosphere; carburizing: answer-atmosphere; soot: check-carbon_monoxide
detector: check-carbon_monoxide; venturi: answer-aspirated_rate; ribbon burner: set-pattern; crayons: set-pin_kind
skewers: set-pin_kind; wax: set-pin_kind; dowel: set-pin_kind; grease: set-pin_kind; anchors: set-grip
mig: answer-weld_length; tack: answer-weld_length; bell reducer: set-inlet; vibrate: set-refractory
silica: set-refractory; respirator: set-refractory; rigidizer: set-lining; wool: set-lining; firebrick: set-lining
mortar: set-lining; doors: set-opening_area; igniter: check-lighting; pilot: check-lighting
thermocouple: set-chamber_temperature; pyrometer: set-chamber_temperature; damascus: set-chamber_temperature
flux: set-chamber_temperature; anneal: set-chamber_temperature; billet: answer-throughput
propane bill: set-fuel_price; therm: set-fuel_price; profit: answer-make_or_buy; weekend: answer-days_in_all
steam: answer-first_fire_watched; spall: check-web; cracks: check-web; step bit: answer-inlet_hole
hole saw: answer-inlet_hole; plasma: answer-window_cut_length; printer: set-print_scale_x
winter: set-ambient_temperature; noise: check-port_velocity; mountain: set-altitude; galvanized: set-mix_pipe
backfire: table-lighting_card; back fire: table-lighting_card; co: answer-fresh_air; co: answer-lighting_fresh_air
back fire: check-flashback_hot; back fire: check-flashback_cold
power cut: answer-air_switch_pressure; orifice: set-jet_drill; mold: set-mould_board
"""


def asked_for(text):
    return [pair.split(": ") for line in text.strip().splitlines() for pair in line.split("; ")]


QUESTIONS, PAIRS = asked_for(TYPED), asked_for(WORDS)
ASK = """
const { ready, search } = await import(process.argv[1]);
const { entries, typed } = JSON.parse(await new Response(process.stdin).text());
const index = ready(entries);
console.log(JSON.stringify(Object.fromEntries(typed.map((each) => [each, search(each, index).map(([id]) => id)]))));
"""


WORDS_TOO = [
    [f"word-{word.lower()}", "word", "", word, ",".join([word, *forms]), meaning]
    for word, (forms, meaning) in GLOSSARY.items()
]  # as glossary.mjs hands them over


def answered(more=()):
    """{what is typed: [id, ...]}, all asked of one Node."""
    nothing = ["coc", "firebricks", "xyzzy", "the of and", "", "  ", "\u00e9\u4e2d", "x" * 5000]
    asked = {"entries": [*entries(), *more], "typed": [*dict(QUESTIONS + PAIRS), *nothing]}
    done = subprocess.run(
        [node_path(), "--input-type=module", "-e", ASK, (ROOT / "site" / "browser" / "rank.mjs").as_uri()],
        input=json.dumps(asked),
        capture_output=True,
        text=True,
        check=True,
        timeout=120,
    )
    return json.loads(done.stdout)


@pytest.fixture(scope="module")
def found():
    return answered()


@pytest.fixture(scope="module")
def with_words():
    """As on the page, which knows the words of the glossary too."""
    return answered(WORDS_TOO)


def test_there_are_enough_of_them():
    assert len(dict(QUESTIONS)) >= 60 and len(dict(PAIRS)) >= 60


@pytest.mark.parametrize(("typed", "wanted"), QUESTIONS)
def test_what_people_ask_is_among_the_first_three(found, typed, wanted):
    assert set(wanted.split(" or ")) & set(found[typed][:3]), found[typed][:8]


@pytest.mark.parametrize(("typed", "wanted"), PAIRS)
def test_a_word_of_the_trade_leads_there(found, typed, wanted):
    assert wanted in found[typed][:6], found[typed][:8]


def test_its_short_name_finds_the_poison_first(found):
    assert found["co"][0] == "check-carbon_monoxide", found["co"][:4]


def test_a_short_word_begins_no_other_and_one_that_is_none_does(with_words):
    """Of what has CO as a word all is told, and no cock, cost or corner."""
    co = with_words["co"]
    assert co[0] == "check-carbon_monoxide" and {"answer-fresh_air", "answer-lighting_fresh_air"} <= {*co[:6]}
    assert len(co) < 12 and not {"word-cock", "word-concentric", "table-cost_lines"} & {*co}
    assert "word-cock" in with_words["coc"]


def test_two_words_that_are_one_find_what_the_one_finds(with_words):
    assert with_words["back fire"] == with_words["backfire"] and with_words["fire bricks"] == with_words["firebricks"]
    first = with_words["back fire"][:5]
    assert {"word-flashback", "check-flashback_hot", "check-flashback_cold", "table-lighting_card"} <= {*first}, first


def test_what_nobody_says_finds_nothing(found):
    assert not found["xyzzy"] and not found[""] and not found["  "] and not found["x" * 5000]


def test_a_setting_among_what_is_found_reads_in_words():
    """A list's own words, not the key behind them; no unit after a word; something where nothing is typed."""
    design = Design()
    keys = ["refractory", "lining", "cap_thickness", "fuel_blend", "port_wall_temperature", "firing_rate"]
    said = """globalThis.document = { documentElement: {} };
const { worded } = await import(process.argv[1]);
console.log(JSON.stringify(JSON.parse(process.argv[2]).map(worded)));"""
    page = (ROOT / "site" / "browser" / "page.mjs").as_uri()
    fields = json.dumps([_field(BY_KEY[key], design) for key in keys])
    words = [node_path(), "--input-type=module", "-e", said, page, fields]
    done = json.loads(subprocess.run(words, capture_output=True, text=True, check=True, timeout=60).stdout)
    lining = "2 1/2 in soft brick 26, 1 in blanket 8 lb"
    assert done == ["castable 60 %", lining, "auto", "none", "auto", "100 kBtu/h"]
