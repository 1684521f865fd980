"""The page's search knows the words that people in the trade use, and takes them where they want to go."""

import re
import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "site" / "make"))
from search import entries

ENTRIES = entries()
# What somebody types, and what must be among the best: words of the trade, some spelt as in America.
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
steam: answer-first_fire_time; spall: check-web; cracks: check-web; step bit: answer-inlet_hole
hole saw: answer-inlet_hole; plasma: answer-window_cut_length; template: set-print_scale_x
winter: set-ambient_temperature; noise: check-port_velocity; mountain: set-altitude; galvanized: set-mix_pipe
power cut: answer-air_switch_pressure; orifice: set-jet_drill; mold: set-mould_board
"""
PAIRS = [pair.split(": ") for line in WORDS.strip().splitlines() for pair in line.split("; ")]


def words(text):
    return re.findall(r"[^\W_]+", text.lower())


def rank(entry, wanted):
    """As search.mjs ranks: of the name more than of other names, and of those more than of the sentence."""
    places = [words(text) for text in entry[3:6]]
    total = 0.0
    for word in wanted:
        at = next((n for n, place in enumerate(places) if any(each.startswith(word) for each in place)), None)
        if at is None:
            return 0.0
        total += (9, 4, 1)[at] + (3 if at < 2 and word in places[at] else 0)
    return total + 1 / (1 + len(places[0]))


def test_there_are_sixty_words_at_least():
    assert len({typed for typed, _ in PAIRS}) >= 60


@pytest.mark.parametrize(("typed", "wanted"), PAIRS)
def test_a_word_of_the_trade_leads_there(typed, wanted):
    found = sorted(ENTRIES, key=lambda entry: -rank(entry, words(typed)))
    assert wanted in [entry[0] for entry in found[:6] if rank(entry, words(typed))]


def test_what_nobody_says_finds_nothing():
    assert not any(rank(entry, ["xyzzy"]) for entry in ENTRIES)
