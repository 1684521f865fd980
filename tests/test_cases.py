"""Every sentence of every check is said of some design, and each of its slots is filled with what its type says."""

import typing
from dataclasses import replace
from functools import cache

import pytest
from designs import ABSURD, FAR_APART, KNOWN_GOOD, solved
from test_bad_designs import BAD
from test_heat_checks import COOL as TOO_COOL_TO_GLOW
from test_lighting import (
    CLOSE,
    COARSE,
    COARSE_GAUGE,
    COOL,
    DOWN,
    EIGHT,
    FOUNDRY,
    GIANT,
    HOUSE,
    KNIFE,
    LEAKY,
    MANY_SMALL,
    OVEN,
    SHORT,
    SLOW,
    SMITH,
    TORCH,
    TOY,
    TWO_LEAKY,
    UP,
    WAYS,
)

from burnercalc import catalogue, checks
from burnercalc.catalogue.sentences import slots_of
from burnercalc.design import Design
from burnercalc.parts import PARTS
from burnercalc.result import solve
from burnercalc.settings import BY_KEY
from burnercalc.units import DIMENSIONS

_TWO = {"burner_count": "2"}
_AUTO = {"firing_rate": "auto"}
_SLOW = {"heat_up_time": "5 h", "work_rate": "30 lb/h"}
_HARD_TO_HOLD = {"lining": "ifb_23 3/4 in, dense_castable_50 3 in", "opening_area": "52 in2"}
_CYLINDER = {"chamber_shape": "cylinder"}
_BARE_TUBE = {"edge_margin": "0 in", "mould_clearance": "0 in"}
_PLATES = {"body_kind": "plates", "wall": "3/16 in"}
_BLEND = {"fuel_blend": "C3H8 0.55, C4H10 0.45"}
_GENTLE_DRAW = {"ambient_temperature": "90 degF", "firing_rate": "20 kBtu/h", "regulator_inlet_pressure": "2 psi",
                "gas_pressure": "2 psi", "cylinder_fill": "100 %"}  # fmt: skip
_GIANT = {"firing_rate": "3000 kBtu/h", "mix_pipe": "4", "inlet": "4", "body_length": "24 in", "body_width": "8 in",
          "body_depth": "8 in", "port_diameter": "1/2 in", "rows": "8", "ports_per_row": "24"}  # fmt: skip

_PAST_ITS_CLASS = {"body_length": "18.5 in", "port_diameter": "3/16 in", "ports_per_row": "32",
          "block_thickness": "2 in", "chamber_length": "16 in", "chamber_width": "5 in", "chamber_height": "6 in",
          "lining": "dense_castable 3/4 in, blanket_8lb 3 in", "opening_area": "16 in2", "opening_depth": "2 in",
          "work_rate": "7 lb/h", "work_temperature": "2150 degF", "heat_up_time": "60 min",
          "firing_rate": "153 kBtu/h", "equivalence_ratio": "0.97", "blower_free_flow": "82 cfm",
          "mix_pipe_length": "23 in", "baffle_holes": "100", "gas_pressure": "3 psi", "cylinder_count": "2",
          "lit_by": "hand"}  # fmt: skip
_RICH_BY_HAND = {"altitude": "10000 ft", "lining": "blanket_8lb 2 in", "lit_by": "hand"}

# Designs for sentences that those of the other tests do not call for.
_WARM = {"chamber_temperature": "1410 degF", "work_temperature": "1300 degF"}
_SMALL = {"chamber_length": "4 in", "chamber_width": "4 in", "chamber_height": "4 in", "opening_area": "8 in2"}
FURTHER = (
    {**_SMALL, "firing_rate": "200 kBtu/h"},
    {**_SMALL, "firing_rate": "600 kBtu/h"},
    {"chamber_length": "24 in"},
    {"chamber_length": "40 in"},
    *({"chamber_length": side, "chamber_width": side} for side in ("12 in", "24 in")),
    {"bar_diameter": "4 in", "chamber_height": "3 in"},
    {"chamber_length": "8.2 in", "chamber_width": "2 in", "opening_area": "4 in2"},
    {"chamber_length": "2.5 in", "chamber_width": "4 in", "chamber_height": "9 in", "opening_area": "4 in2"},
    {"chamber_shape": "cylinder", "chamber_length": "3 in", "chamber_diameter": "9 in", "opening_area": "4 in2"},
    EIGHT,
    {**FOUNDRY, "rows": "5"},
    {"cylinder_fill": "5 %"},
    {"cylinder_left": "40 %"},
    {"fuel_blend": "N2 0.1, C3H8 0.9"},
    {"port_diameter": "3/8 in"},
    {**COOL, "fuel": "natural_gas", "firing_rate": "20 kBtu/h", "low_fire": "85 %"},
    {"fuel": "natural_gas", "firing_rate": "auto", "lit_by": "guard"},
    {"fuel": "butane", "ambient_temperature": "40 degF"},
    {"fuel": "butane", "regulator_inlet_pressure": "15 psi"},
    {"fuel": "butane", "gas_pressure": "9 psi"},
    {"chamber_length": "40 in", "chamber_width": "20 in", "chamber_height": "20 in", "opening_area": "60 in2"},
    {"bar_diameter": "3.7 in"},
    {"heat_up_time": "20 min", "firing_rate": "40 kBtu/h"},
    {"batch_size": "10", "moulds": "10"},
    {"days_off": "2027-03-04"},
    {"days_off": "2027-03-04", "start_date": "2027-03-01"},
    {"placing_rate": "5 lb/h"},
    {"work_metal": "bronze", "work_temperature": "1700 degF"},
    {"block_thickness": "1 1/2 in", "grip": "1/2 in"},
    {"equivalence_ratio": "1.3", "reducing_wanted": "yes"},
    {"equivalence_ratio": "0.55"},
    {"equivalence_ratio": "1.1", "low_fire": "100 %"},
    {"lining": "dense_castable 1 in, blanket_8lb 2 in", "low_fire": "25 %", "chamber_temperature": "2280 degF"},
    {"opening_area": "0 in2", "chamber_back_pressure": "1 inH2O"},
    {"opening_area": "0.1 in2", "chamber_back_pressure": "1 inH2O"},
    {**_HARD_TO_HOLD, "firing_rate": "425 kBtu/h", "work_rate": "1 lb/h", "chamber_temperature": "2340 degF",
     "work_temperature": "1900 degF"},
    {"work_rate": "60 lb/h", "firing_rate": "1000 kBtu/h", "chamber_height": "10 in"},
    {**_AUTO, "heat_up_time": "10 h"},
    {**_AUTO, "work_rate": "40 lb/h"},
    {**_AUTO, "chamber_length": "10 in", "chamber_width": "5 in", "chamber_height": "5 in", "opening_depth": "4 in",
     "lining": "dense_castable 1 in, ifb_26 2 1/2 in, blanket_8lb 1 in", "work_rate": "12 lb/h",
     "fuel": "natural_gas", "equivalence_ratio": "0.9"},
    *({"inlet": "3", "body_kind": "plates", "body_length": "3 3/4 in", "body_width": width}
      for width in ("3 3/4 in", "4 in")),
    {"work_temperature": "2249 degF", "work_rate": "44 lb/h"},
    {"blower_shutoff_pressure": "0.55 inH2O", "blower_free_flow": "100 cfm"},
    {"blower_shutoff_pressure": "0.1 inH2O"},
    _CYLINDER,
    {**_CYLINDER, "work_rate": "40 lb/h"},
    {**_CYLINDER, "work_rate": "60 lb/h"},
    {**_TWO, **_AUTO},
    {**_TWO, **_AUTO, **_SLOW},
    {**_TWO, **_SLOW},
    {**_TWO, "firing_rate": "20 kBtu/h"},
    {**_TWO, "blower_free_flow": "120 cfm"},
    {**_TWO, "firing_rate": "18 kBtu/h", **_SLOW},
    {**_TWO, "firing_rate": "8 kBtu/h"},
    {**_TWO, **_AUTO, "heat_up_time": "10 h", "work_rate": "0 lb/h", "chamber_length": "30 in",
     "chamber_width": "20 in", "chamber_height": "20 in", "opening_area": "5 in2"},
    {**_TWO, **_AUTO, "heat_up_time": "8 min", "lining": "dense_castable 3 in"},
    {**_AUTO, "chamber_height": "26 in"},
    {**_AUTO, "heat_up_time": "1 min", "lining": "dense_castable 1 in, blanket_8lb 2 in"},
    {**_TWO, "heat_up_time": "1 min", "lining": "dense_castable 1 in, blanket_8lb 2 in"},
    {**_TWO, **_AUTO, "heat_up_time": "1 min", "lining": "dense_castable 1 in, blanket_8lb 2 in"},
    {"work_rate": "30 lb/h", "heat_up_time": "1 min", "lining": "dense_castable 1 in, blanket_8lb 2 in"},
    {"heat_up_time": "4 min", "lining": "blanket_8lb 2 in"},
    {"chamber_temperature": "1300 degF", "work_temperature": "1200 degF"},
    {"chamber_temperature": "2950 degF", "work_temperature": "2500 degF"},
    {"chamber_temperature": "2900 degF", "work_temperature": "2300 degF", "equivalence_ratio": "0.9"},
    {"work_rate": "80 lb/h"},
    {"firing_rate": "20 kBtu/h"},
    {"work_metal": "bronze", "work_temperature": "2150 degF", "work_rate": "300 lb/h"},
    {**KNIFE, "heat_up_time": "10 min"},
    {"rows": "9", "ports_per_row": "16"},
    {"edge_margin": "1/8 in"},
    {**_BARE_TUBE, "corner_radius": "1 in"},
    {**_BARE_TUBE, "setback": "3/16 in"},
    {"body_depth": "1 1/2 in", "grip": "1 in"},
    {"body_depth": "1 21/32 in", "grip": "1 7/32 in", "inlet_position": "end", "port_diameter": "19/32 in",
     "ports_per_row": "3", "rows": "8"},
    {"inlet_position": "end", "port_diameter": "1/8 in"}, {"inlet_position": "end", "inlet": "1-1/2"},
    {"body_length": "20 in", "inlets": "2"},
    {"body_length": "36 in", "inlets": "2", "baffle_holes": "0", "ports_per_row": "60"},
    {"body_length": "6 in", "inlets": "2", "ports_per_row": "3"},
    {**FAR_APART["round"], "body_length": "6.625 in", "body_width": "6.625 in", "baffle_bend_angle": "30 deg"},
    {**FAR_APART["round"], "body_length": "6.625 in", "body_width": "6.625 in", "wall": "0.28 in"},
    {"wall": "5/32 in"},
    {"inlet": "3/8"},
    {"inlet": "3", "units": "mm"},
    {"inlet": "1", "baffle_holes": "200"},
    {"baffle_hole_diameter": "1 1/4 in", "baffle_holes": "22"},
    {"baffle_bend_angle": "0 deg", "wall": "1/4 in", "grip": "3 1/2 in", "block_thickness": "5 in"},
    {"baffle_thickness": "1/2 in", "body_width": "2 in", "setback": "1/4 in", "baffle_bend_angle": "120 deg",
     "baffle_holes": "1"},
    {"blower_curve": "0 cfm 4 inH2O, 5 cfm 0.05 inH2O, 20 cfm 3 inH2O, 60 cfm 0 inH2O"},
    {"firing_rate": "450 kBtu/h", "gas_pressure": "1 psi", "mix_pipe": "1", "port_diameter": "1/2 in"},
    {**_GIANT, "gas_pressure": "1 psi"},
    {**_GIANT, "gas_pressure": "5.3 inH2O", "baffle_holes": "0"},
    {"jet_drill": "#54"},
    *({"fuel_blend": "C3H8 0.7, C4H10 0.3", **more} for more in (
        {}, {"lit_by": "guard"}, {"rows": "4"}, {"ports_per_row": "14"}, {"cylinder_left": "40 %"},
        {"cylinder_left": "20 %", "small_gauge": "2 psi"}, {"cylinder_left": "40 %", "jet_proven": "yes"})),
    {"fuel": "natural_gas", "meter_capacity": "250 ft3/h"},
    {"fuel": "natural_gas", "meter_capacity": "150 ft3/h"},
    {"fuel": "natural_gas", "line_pressure": "6.3 inH2O"},
    *({"gas_from": "line", **each} for each in (
        {}, {"gas_pressure": "10 psi"}, {"gas_pressure": "1 inH2O", "firing_rate": "134 kBtu/h"}, _BLEND,
        {**_BLEND, "equivalence_ratio": "1"}, {"fuel": "butane", "ambient_temperature": "40 degF"})),
    {"mix_pipe_length": "8 ft"},
    {"fuel": "butane", "ambient_temperature": "40 degF", "gas_pressure": "15 psi"},
    _BLEND,
    {**_BLEND, **_GENTLE_DRAW, "equivalence_ratio": "1"},
    {"cap_gap": "0 in"},
    {"cap_gap": "1/8 in"},
    {"cap_thickness": "1/8 in"},
    {"cap_thickness": "7/16 in"},
    {"mould_clearance": "6 in"},
    {"wall": "3/64 in", "setback": "2.4 mm", "cap_thickness": "wall"},
    {**_PLATES, "setback": "1/4 in"},
    {**_PLATES, "setback": "3/16 in"},
    {"grip": "1/4 in"},
    {"grip": "3/8 in"},
    {"pin_stock_length": "4 in"},
    {"pin_stock_length": "2 7/8 in"},
    {"pin_stock_length": "2 in"},
    {"pin_depth": "11/16 in", "mould_board": "ply 3/8"},
    {"mould_base": "1x12"},
    {"mould_base": "2x12", "body_width": "8 in"},
    {"ambient_temperature": "45 degF"},
    {**KNOWN_GOOD["hand-sized box, 10 ports of 1/4, propane"], "fuel": "natural_gas", "gas_pressure": "7 inH2O"},
    COARSE,
    {"small_gauge": "1 psi"},
    {"small_gauge": "none"},
    {"jet_gauge": "3 psi"},
    {"jet_drill": "#56", "gas_pressure": "10 psi", "small_gauge": "1 psi"},
    {"ambient_temperature": "95 degF", "jet_drill": "#52", "slide_hole": "15/32 in"},
    {"ambient_temperature": "10 degF", "jet_drill": "#52", "slide_hole": "15/32 in", "small_gauge": "3 psi"},
    *({**HOUSE, "port_diameter": "9/32 in", "jet_drill": "#18", "slide_hole": "29/64 in",
       "ambient_temperature": "100 degF", "lit_by": way} for way in ("stand", "guard")),
    {"slide_hole": "1/8 in", "altitude": "3500 m", "low_fire": "66 %"},
    COARSE_GAUGE,
    {**COARSE_GAUGE, "lit_by": "guard"},
    *({"altitude": "3400 m", "lit_by": way} for way in ("stand", "guard")),
    {**KNOWN_GOOD["12 by 5, 81 ports of 5/16, house gas"], "lit_by": "guard"},
    {**KNOWN_GOOD["12 by 5, 81 ports of 5/16, house gas"], "lit_by": "hand", "lining": "blanket_8lb 3 in"},
    {**HOUSE, "port_diameter": "9/32 in", "low_fire": "100 %"},
    SHORT,
    UP,
    {"low_fire": "32.5 %"},
    DOWN,
    {"low_fire": "30 %"},
    {**TOO_COOL_TO_GLOW["high"], "heat_up_time": "10 min"},
    {**TOO_COOL_TO_GLOW["low"], "heat_up_time": "25 min"},
    COOL,
    *({**COOL, "lit_by": way} for way in ("hand", "guard")),
    *({**OVEN, **more} for more in ({"work_rate": "120 lb/h"}, LEAKY)),
    *({**OVEN, **TWO_LEAKY, "low_fire": low} for low in ("42 %", "90 %")),
    {**KNOWN_GOOD["hand-sized box, 10 ports of 1/4, propane"], **COOL},
    {**SMITH, "lit_by": "hand"},
    {**SMITH, "burner_count": "4"},
    {**SMITH, "burner_count": "8", "blowers": "each", "opening_area": "60 in2"},
    {**KNIFE, "lit_by": "hand"},
    _PAST_ITS_CLASS,
    _RICH_BY_HAND,
    MANY_SMALL,
    {**KNOWN_GOOD["hand-sized box, 10 ports of 1/4, propane"], **HOUSE, "ports_per_row": "4"},
    {**CLOSE, "lit_by": "stand"},
    TORCH,
    {**TORCH, "lit_by": "guard", "equivalence_ratio": "0.75"},
    {**KNIFE, "lit_by": "stand"},
    *({**SLOW, "lit_by": way} for way in ("stand", "guard")),
    *({**_WARM, "lit_by": way} for way in ("stand", "guard")),
    {"chamber_temperature": "1300 degF", "work_temperature": "1200 degF", "lit_by": "guard",
     "port_diameter": "5/16 in", "low_fire": "42 %", "equivalence_ratio": "0.96"},
    {**SMITH, "burner_count": "6", "blowers": "each", "chamber_length": "60 in", "opening_area": "120 in2"},
    GIANT,
    {**GIANT, "lit_by": "guard"},
    {**HOUSE, "jet_drill": "#19"},
    {"refractory": "insulating_castable", "opening_area": "4 in2"},
    {"gas_pressure": "30 psi", "blower_shutoff_pressure": "20 inH2O", "blower_free_flow": "300 cfm",
     "cylinder_count": "1", "equivalence_ratio": "1.0"},
    {"chamber_shape": "cylinder", "work_rate": "40 lb/h", "equivalence_ratio": "0.96"},
    {**_GIANT, "gas_pressure": "5.3 inH2O", "baffle_holes": "0", "equivalence_ratio": "0.96"},
    {**SMITH, "heat_up_time": "64 min"},
    {**SMITH, "heat_up_time": "64 min", "firing_rate": "77.5 kBtu/h", "burner_count": "2"},
    {"body_length": "39 in", "inlets": "2"},
    *({"cylinder": size, "cylinder_count": "1", "cylinder_fill": "50 %", "ambient_temperature": "100 degF",
       "firing_rate": "200 kBtu/h", "gas_pressure": gas} for size in ("20",) for gas in ("5 psi", "45 psi")),
    *({"port_wall_temperature": wall} for wall in ("200 degF", "700 degF", "1200 degF")),
    {**TOY, "lit_by": "guard"},
    {"firing_rate": "190 kBtu/h", "low_fire": "66 %"},
    *({"altitude": "3500 m", "low_fire": "66 %", "lit_by": way} for way in ("stand", "guard")),
    {**TOY, "ports_per_row": "6"},
    {**TOY, "body_depth": "3 in", "mix_pipe_length": "16 in"},
    {"chamber_length": "10 in", "lining": "blanket_8lb 3 in", "lit_by": "hand"},
    {**CLOSE, "lining": "blanket_8lb 3 in", "lit_by": "hand"},
    {"mould_base": "2x12", "body_width": "12 in"},
    *({**texts, "fuel": "natural_gas", "gas_pressure": "7 inH2O", "lit_by": "guard"} for texts in (
        {}, {**KNOWN_GOOD["hand-sized box, 10 ports of 1/4, propane"], "ports_per_row": "4"})),
)  # fmt: skip

# What no design calls for. Each guards a refusal of the physics within the range of the settings, and none is known.
GUARDS = {
    ("flame_holds", "no_flame"): "an equilibrium that is not found",
    ("carbon_monoxide", "unknown"): "an equilibrium that is not found",
    ("flashback_cold", "unknown"): "a port flame that has no limit",
    ("flashback_hot", "unknown"): "a port flame that has no limit",
    ("turning", "unreached"): "a way down to low fire and none up, where none leads straight up past it either",
    ("lighting", "torch_weak"): "ten times what a port alone holds in burnt gas; what lifts so soon has no room before",
}

OTHERS = [*FAR_APART.values(), *KNOWN_GOOD.values(), *(row[1] for row in ABSURD), *(row[1] for row in BAD)]


@cache
def judgements():
    """(check, what it is handed by name, its judgement) of every check over all designs."""
    found = []
    for texts in (*OTHERS, *WAYS.values(), *FURTHER):
        burner = solved(**texts).parts
        for key, check in checks.CHECKS.items():
            judged = burner.call(check)
            if judged is not None:
                handed = {name: burner.part(name) for name in typing.get_type_hints(check) if name != "return"}
                found.append((key, handed, judged))
    return tuple(found)


def test_every_sentence_of_a_check_is_said_of_some_design():
    said = {(key, case) for key, _, judged in judgements() for case in judged.cases}
    declared = {(key, case) for key, check in catalogue.CHECKS.items() for case in check.cases}
    assert declared - said == set(GUARDS)
    assert said <= declared


# Units at the end of a field's name, and the SI unit of a dimension that says it.
ENDS = {"_m": "m", "_m2": "m2", "_m3": "m3", "_m_s": "m/s", "_m3_s": "m3/s", "_kg": "kg", "_kg_s": "kg/s", "_s": "s",
        "_W": "W", "_W_m2": "W/m2", "_W_m3": "W/m3", "_J": "J", "_K": "K", "_Pa": "Pa"}  # fmt: skip
UNITS = {name: unit for name, (unit, *_) in DIMENSIONS.items()} | {"size": "m"}


def unit_of_slot(kind):
    """SI unit that a slot's type says: of `percent`, and of what Python's own format takes, none."""
    return UNITS.get(kind.partition(" ")[0], "1")


def unit_of_field(name):
    """SI unit that a field's name says; None where it says none, as of texts and counts."""
    ends = [end for end in ENDS if name.endswith(end)]
    return ENDS[max(ends, key=len)] if ends else None


def fields(handed):
    """(value, SI unit) of all figures that a check is handed, the ends of bands too."""
    for name, thing in handed.items():
        if name in PARTS:
            for field, value in vars(thing).items():
                unit = unit_of_field(field)
                if unit and not isinstance(value, str):
                    for one in value if isinstance(value, tuple) else (value,):
                        yield one, unit
        elif BY_KEY[name].dimension in DIMENSIONS:
            yield thing, DIMENSIONS[BY_KEY[name].dimension][0]


def test_a_slot_has_the_unit_of_the_figure_that_fills_it():
    """Told by the value: what equals a figure of a part or a setting to the last digit is that figure."""
    seen = set()
    for key, handed, judged in judgements():
        units = {}
        for value, unit in fields(handed):
            if isinstance(value, float) and value not in (0.0, 1.0):
                units.setdefault(value, set()).add(unit)
        for case in judged.cases:
            for slot, kind in slots_of(catalogue.CHECKS[key].cases[case]):
                value = judged.slots[slot]
                if isinstance(value, float) and value in units:
                    assert unit_of_slot(kind) in units[value], (key, case, slot, kind)
                    seen.add((key, slot))
    assert len(seen) > 80


def test_a_slot_means_one_thing_in_all_sentences_of_a_check():
    for key, check in catalogue.CHECKS.items():
        kinds = {}
        for sentence in check.cases.values():
            for slot, kind in slots_of(sentence):
                kinds.setdefault(slot, set()).add(unit_of_slot(kind))
        assert all(len(units) == 1 for units in kinds.values()), (key, kinds)


def test_no_sentence_shows_a_slot_that_is_empty():
    for key, _, judged in judgements():
        for case in judged.cases:
            slots = slots_of(catalogue.CHECKS[key].cases[case])
            assert all(judged.slots[slot] is not None for slot, _ in slots), (key, case)


@pytest.mark.parametrize("key, case", GUARDS)
def test_a_guard_is_said_where_its_figure_is_missing(key, case):
    burner = solve(Design()).parts
    none = {
        "flame_holds": {"flame": replace(burner.part("flame"), available=None),
                        "zone": replace(burner.part("zone"), hold=(None, None, None))},
        "carbon_monoxide": {"flame": replace(burner.part("flame"), co_dry_band=None)},
        "flashback_cold": {"holding": replace(burner.part("holding"), cold_W=None)},
        "flashback_hot": {"holding": replace(burner.part("holding"), hot_W=None)},
        "lighting": {"lighting": burner.call(PARTS["lighting"], burnt_gas=replace(burner.part("burnt_gas"), keeps=""))},
        "turning": {"turning": replace(burner.part("turning"), straight=None,
                                       to_high=replace(burner.part("turning").to_high, first=""))},
    }[key]  # fmt: skip
    judged = burner.call(checks.CHECKS[key], **none)
    assert case in judged.cases and judged.verdict in ("caution", "stop")
