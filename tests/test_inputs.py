"""Inputs are true: what moves an answer is declared, and what is declared moves it. Every setting is moved in turn."""

from functools import cache
from math import inf

import pytest
from designs import FAR_APART
from test_lighting import STUCK, UP

from burnercalc import Design, InputErrors, catalogue, solve, units
from burnercalc.burner import needs
from burnercalc.parts import PARTS
from burnercalc.settings import BY_KEY, SETTINGS

# Moved in every setting.
FAR = ("default", "smith, metric", "crucible, inches", "round", "plates, a batch", "frost", "a tank in the hills",
       "no baffle, a blend")  # fmt: skip
DOZEN = ("batch_size", "moulds", "oven_places", "kiln", "test_stands", "hands", "day_hours", "work_week", "days_off",
         "start_date", "hours_weld", "hours_mould", "hours_cast", "hours_finish", "ambient_temperature",
         "watched_hours")  # fmt: skip
# Where an answer goes by steps, or rests on a setting only there: (texts, settings to move).
NEAR = {
    "square, so that pipe can stand for tube": (
        {"body_length": "6 in", "body_width": "6 in", "rows": "3", "ports_per_row": "3", "pattern": "hexagonal",
         "edge_margin": "1/2 in", "port_tilt_tolerance": "4 deg", "port_position_tolerance": "1/8 in",
         "mould_base": "ply 1/2", "pin_depth": "3/8 in", "cap_thickness": "1/4 in"}, ("body_kind",)),
    "pins so crooked that they reach into the lip": (
        {"edge_margin": "0 in", "port_tilt_tolerance": "6 deg", "port_position_tolerance": "1/4 in", "grip": "1 in"},
        ("edge_margin", "port_tilt_tolerance", "port_position_tolerance", "block_thickness", "grip", "wall",
         "corner_radius", "body_kind", "setback")),
    "lengths that just fit": (
        {"body_kind": "plates", "batch_size": "2", "pin_stock_length": "13 5/8 in", "inlet_length": "3 1/8 in",
         "nipple_stock": "6 11/16 in 9, 4 in 6", "stock_lengths": "6 in, 7 in, 8 in, 9 in, 10 in, 11 in, 12 in, 14 in, "
         "18 1/16 in, 20 in, 24 in, 30 in"}, ("kerf", "wall", "stock_lengths")),
    "pins short of room": (
        {"baffle_bend_angle": "0 deg", "grip": "3 in", "block_thickness": "5 in"}, ("grip", "wall", "body_depth")),
    "plates from a long rack": ({"body_kind": "plates", "cap_gap": "0 in", "stock_lengths": "36 in"}, ("body_width",)),
    "plates with one cut between": ({"body_kind": "plates", "stock_lengths": "39 27/32 in, 43 in"}, ("kerf",)),
    "rows that set the pitch": (
        {"pattern": "hexagonal", "rows": "6", "ports_per_row": "5"}, ("rows", "body_width", "port_diameter")),
    "square, four rows, in a chamber wider than long": (
        {"body_length": "6 in", "body_width": "6 in", "rows": "4", "ports_per_row": "4", "pattern": "hexagonal",
         "edge_margin": "1/2 in", "chamber_length": "8 in", "chamber_width": "14 in"}, ("body_kind", "chamber_width")),
    "a shop just warm enough": ({"ambient_temperature": "52 degF"}, ("ambient_temperature",)),
    "so hot that no gas freezes": (
        {"chamber_temperature": "2800 degF", "lining": "mullite_brick 4 1/2 in"}, ("chamber_temperature",)),
    "nearly molten": (
        {"chamber_temperature": "2400 degF", "lining": "mullite_brick 4 1/2 in", "work_metal": "copper",
         "work_temperature": "1980 degF"}, ("work_temperature",)),
    "a flame cooler than its gas freezes": (
        {"equivalence_ratio": "0.5", "chamber_temperature": "1500 degF", "work_temperature": "1400 degF"},
        ("ambient_temperature", "chamber_temperature")),
    "nearly choked": ({"gas_pressure": "11.6 psi"}, ("gas_pressure", "fuel_blend", "fuel")),
    "the same in the hills": (
        {"fuel": "natural_gas", "gas_pressure": "10 psi", "altitude": "9000 ft", "firing_rate": "60 kBtu/h"},
        ("altitude",)),
    "nearly empty when the cold ends it": (
        {"firing_rate": "39.85 kBtu/h", "gas_pressure": "6.6667 psi", "cylinder_count": "1"},
        ("burner_count", "cylinder_fill", "ambient_temperature", "altitude", "gas_pressure", "regulator_inlet_pressure",
         "cylinder")),
    "the same from a tank": (
        {"cylinder": "tank", "tank_diameter": "12 in", "tank_length": "24 in", "cylinder_fill": "30 %",
         "ambient_temperature": "40 degF", "altitude": "3000 ft", "firing_rate": "19.3 kBtu/h",
         "cylinder_count": "1"},
        ("tank_diameter", "tank_length", "altitude", "cylinder_fill")),
    "a regulator that stops it before the frost": ({"regulator_inlet_pressure": "54 psi", "cylinder_count": "1"},
                                                  ("regulator_inlet_pressure",)),
    "the same in thin air": (
        {"regulator_inlet_pressure": "58 psi", "altitude": "6000 ft", "cylinder_count": "1"}, ("altitude",)),
    "a damper that limits the lighting": ({"gas_pressure": "20 psi"}, ("blower_free_flow",)),
    "a jet that limits the lighting": (
        {"gas_pressure": "2.5 psi", "port_diameter": "7/32 in"}, ("altitude", "jet_discharge_coefficient")),
    "hardly room to light": (
        {"gas_pressure": "20 psi", "blower_free_flow": "20 cfm", "blower_shutoff_pressure": "1 inH2O",
         "firing_rate": "60 kBtu/h", "equivalence_ratio": "1.08", "altitude": "3000 ft",
         "low_fire": "60 %"},
        ("ambient_temperature", "equivalence_ratio")),
    "a blower that hardly lets it be lit": (
        {"blower_free_flow": "6.2 cfm", "blower_shutoff_pressure": "0.3 inH2O"}, ("blower_free_flow",)),
    "lit as set": ({"equivalence_ratio": "1.2", "low_fire": "45 %"}, ("equivalence_ratio",)),
    "burnt gas that a torch may not hold": (UP, ("lit_by",)),
    "a low fire that decides whether it is lit": (STUCK, ("low_fire",)),
    "an oven lit by hand": (
        {"chamber_temperature": "1405 degF", "work_temperature": "1200 degF", "lit_by": "hand"},
        ("chamber_temperature", "lit_by")),
    "hardly a way out": ({"chamber_back_pressure": "0.46 inH2O"}, ("chamber_back_pressure",)),
    "lit with a torch": (
        {"fuel_blend": "CH4 0.6, CO2 0.4", "baffle_holes": "0", "firing_rate": "20 kBtu/h", "low_fire": "60 %",
         "blower_free_flow": "15 cfm", "blower_shutoff_pressure": "1/4 inH2O"}, ("low_fire",)),
    "six at once, in a week of five days": (
        {"batch_size": "6", "moulds": "2", "oven_places": "2", "test_stands": "3", "work_week": "5",
         "start_date": "2026-03-02"}, DOZEN),
    "six at once, one oven": (
        {"batch_size": "6", "moulds": "3", "test_stands": "3", "hands": "2", "work_week": "6",
         "ambient_temperature": "52 degF"}, DOZEN),
    "six in short days, from a Wednesday": (
        {"batch_size": "6", "moulds": "2", "oven_places": "3", "work_week": "5", "day_hours": "6 h",
         "ambient_temperature": "52 degF", "start_date": "2026-03-04"}, DOZEN),
    "ten in ten moulds": (
        {"batch_size": "10", "moulds": "10", "refractory": "own", "working_time": "0.2 h", "placing_rate": "30 lb/h"},
        ("batch_size", "moulds", "refractory", "working_time", "placing_rate")),
    "a jet that stops it before the frost": ({"gas_pressure": "54 psi"}, ("gas_pressure",)),
    "a blend that the cold ends": (
        {"fuel_blend": "C3H8 0.55, C4H10 0.45", "ambient_temperature": "60 degF", "gas_pressure": "10 psi"},
        ("cylinder", "cylinder_count", "cylinder_fill", "ambient_temperature", "altitude", "gas_pressure", "fuel_blend",
         "gas_from",
         "regulator_inlet_pressure", "firing_rate", "burner_count", "equivalence_ratio")),
    "a blend changed early": (
        {"fuel_blend": "C3H8 0.7, C4H10 0.3", "cylinder_left": "30 %"},
        ("cylinder_left", "fuel_blend", "ambient_temperature", "gas_from", "equivalence_ratio")),
    "two inlets": (
        {"body_length": "20 in", "inlets": "2"},
        ("inlets", "inlet", "mix_pipe", "body_length", "wall", "cap_thickness", "fuel", "fuel_blend", "firing_rate",
         "equivalence_ratio", "ambient_temperature", "altitude")),
    "house gas, its rate set": ({"fuel": "natural_gas"}, ("burner_count", "line_pressure")),
    "propane by a line": (
        {"gas_from": "line"}, ("gas_from", "line_pressure", "other_appliances", "fuel", "jet_drill", "burner_count")),
    "an end inlet without a baffle": (
        {"inlet_position": "end", "inlet": "1-1/2", "baffle_holes": "0"}, ("inlet", "wall", "grip", "body_depth")),
    "a body too short for its bracket": (
        {"lining": "ifb_26 9 in, blanket_8lb 1 in", "body_length": "6 in", "body_width": "6 in", "rows": "3",
         "ports_per_row": "3", "pattern": "hexagonal", "cap_thickness": "1/4 in"},
        ("lining", "block_thickness", "grip", "mould_board", "body_depth", "body_kind")),
    "two on one blower": ({"burner_count": "2", "blower_free_flow": "12 cfm"}, ("blowers", "burner_count", "mix_pipe")),
    "two on one that carries them": ({"burner_count": "2"}, ("blowers",)),
    "a blend from a tank": (
        {"fuel_blend": "C3H8 0.55, C4H10 0.45", "ambient_temperature": "50 degF", "cylinder": "tank",
         "tank_diameter": "18 in", "tank_length": "36 in"}, ("tank_diameter", "tank_length")),
}  # fmt: skip
# Settings with words of their own: other texts to try.
TEXTS = {
    "money_sign": ("€", "kr"),
    "lining": ("ifb_26 3 in", "dense_castable 1/2 in, blanket_8lb 2 in"),
    "fuel_blend": ("CH4 0.9, N2 0.1", "C3H8 0.93, C2H6 0.05, C4H10 0.02"),
    "blower_curve": ("0 cfm 8 inH2O, 100 cfm 5 inH2O, 150 cfm 0 inH2O", ""),
    "jet_drill": ("#54", "2 mm", "#40", ""),
    "cylinder_left": ("0 %", "60 %"),
    "slide_hole": ("7/16 in", "1/2 in", "1/8 in", ""),
    "jet_gauge": ("15 psi", "30 psi", "0.6 bar", "auto"),
    "small_gauge": ("1 psi", "3 psi", "none", "0.1 bar", "auto"),
    "meter_capacity": ("250 ft3/h", "unknown"),
    "start_date": ("2026-03-02", "2026-03-06"),
    "days_off": ("2026-03-05", "2026-03-03 to 2026-03-27"),
    "stock_lengths": ("3 ft", "17 ft, 21 ft"),
    "nipple_stock": ("36 in 41", "3 in 5, 6 in 7.50, 72 in 60"),
    "price_train": ("200", "90", "listed"),
    "watched_hours": ("8 h", "10 h", "18 h", "through"),
    "cap_thickness": ("1/4 in", "1/8 in", "wall"),
    "inlets": ("1", "2"),
    "fuel_price": ("1.7/lb", "1.5/therm", "0.9/m3"),
    "price_steel": ("3.1/lb",),
    "firing_rate": ("auto", "130 kBtu/h", "60 kBtu/h"),
    "port_wall_temperature": ("auto", "1200 degF", "900 degF"),
}
# Direct inputs that move their answer in none of these designs, each with its reason.
IDLE = {
    ("hose_bore", "ambient_temperature"): "a size as sold; only where one just fits",
    ("hose_bore", "altitude"): "a size as sold; only where one just fits",
    ("steel_bought", "kerf"): "lengths as sold; only where one just fits",
    ("cap_length", "body_width"): "that of a round body, whose length and width move together",
    ("baffle_length", "body_width"): "that of a round body, whose length and width move together",
    ("baffle_length", "baffle_thickness"): "only to none, where no leg is left beside the bend",
    ("baffle_length", "baffle_bend_angle"): "only to none, where no leg is left beside the bend",
    ("lighting_ratio", "altitude"): "a mixture of a few; only where another one just has room",
    **dict.fromkeys(
        (
            (key, "blower_shutoff_pressure")
            for key in ("lighting_ratio", "lighting_lift_burnt", "lighting_filled", "heat_up_waits")
        ),
        "only where a stronger blower just leaves too small a hole to light with",
    ),
}


def other_texts(design, setting):
    """Texts that move a setting off where it stands: near it, and far from it."""
    if setting.key in TEXTS:
        return TEXTS[setting.key]
    if setting.choices:
        return tuple(value for value, _ in setting.choices if value != design.value(setting.key))
    value = design.value(setting.key)
    if setting.whole:
        numbers = (value + 1, value + 5, max(value - 2, 0), 2 * value)
    elif setting.dimension == "temperature":
        numbers = (value + 7, value - 4, value - 60, value + 90)
    else:
        numbers = (1.07 * value, 0.9 * value, 1.6 * value, 0.4 * value) if value else (0.1, 0.01, 1.0)
    return tuple(units.show(number, setting.dimension, "mm", exact=True) for number in numbers)


@cache
def closure(key):
    """Every setting and answer that an answer is declared to rest on, directly or through others."""
    found, ahead = set(), [key]
    while ahead:
        for one in catalogue.ANSWERS[ahead.pop()].inputs:
            if one not in found:
                found.add(one)
                if one in catalogue.ANSWERS:
                    ahead.append(one)
    return found


@cache
def rests_on(name):
    """Names of all settings and parts that a part may be worked out from, itself too; a setting's is its own."""
    return frozenset({name}).union(*(rests_on(one) for one in needs(PARTS[name]))) if name in PARTS else {name}


@cache
def declared(setting):
    """The answers that a setting goes into directly."""
    return [key for key, answer in catalogue.ANSWERS.items() if setting in answer.inputs]


@cache
def in_reach(setting):
    """The answers that a setting may move: of parts that it reaches by their signatures, and all that are texts.

    Left out are those declared to rest on it through other answers alone: they may move or not.
    """
    return [
        key
        for key, answer in catalogue.ANSWERS.items()
        if (answer.cases or setting in rests_on(answer.at.partition(".")[0]))
        and (setting in answer.inputs or setting not in closure(key))
    ]


def told(result, keys):
    """How to light it as its part has it: what else stops the design, a check of any room, forbids it."""
    parted = {key: catalogue.ANSWERS[key].at.split(".") for key in keys if catalogue.ANSWERS[key].to_light}
    answers = {key: result.answers[key] for key in keys if key not in parted}
    found = {key: (answer.value, answer.band) for key, answer in answers.items()}
    return found | {key: getattr(result.part(part), attribute) for key, (part, attribute) in parted.items()}


SHOWN = ("units", "sizes", "money_sign")  # how it is shown, and of which shop all is that nothing is told of


@cache
def movers():
    """{answer: settings that moved it in any of the designs}; what is known to move is not asked for again."""
    found = {key: set() for key in catalogue.ANSWERS}
    every = tuple(setting.key for setting in SETTINGS if setting.key not in SHOWN)
    for texts, moving in (*((FAR_APART[name], every) for name in FAR), *NEAR.values()):
        design = Design.from_texts(texts)
        result = solve(design)
        before = told(result, catalogue.ANSWERS)
        for setting in (BY_KEY[key] for key in moving):
            # For what is not declared all texts of the default are looked at, of the others the two farthest.
            looks = 2 if texts else inf
            for text in other_texts(design, setting)[::-1]:
                may_move = in_reach(setting.key) if looks > 0 else declared(setting.key)
                asked = [key for key in may_move if setting.key not in found[key]]
                if not asked:
                    break
                try:
                    own = {key: design.text(key) for key in ("gas_pressure", "line_pressure", "fuel_price")}
                    # the fuel, and where it comes from, brings its own
                    alone = {**own, setting.key: text}
                    after = told(solve(design.changed(alone), result), asked)
                except InputErrors:
                    continue
                for key in asked:
                    if after[key] != before[key]:
                        found[key].add(setting.key)
                looks -= 1
    return found


def test_nothing_moves_an_answer_that_is_not_declared():
    lies = {key: sorted(moved - closure(key)) for key, moved in movers().items() if moved - closure(key)}
    assert lies == {}


def test_what_is_declared_moves_its_answer():
    idle = {(key, one) for key, answer in catalogue.ANSWERS.items()
            for one in answer.inputs if one in BY_KEY and one not in movers()[key]}  # fmt: skip
    assert idle == set(IDLE) and all(IDLE.values())


def test_every_setting_moves_something():
    """An answer; or, of those named here, what is shown, dated, printed, compared in a table or checked."""
    moving = set().union(*movers().values())
    shown = {*SHOWN, "print_scale_x", "print_scale_y"}
    compared = {"multi_port_excess_air", "blown_excess_air", "aspirated_excess_air"}
    assert {setting.key for setting in SETTINGS} - moving == shown | compared | {
        "castable_service",
        "reducing_wanted",
        "meter_capacity",
    }


@pytest.mark.parametrize("key, wrong", [("port_area", "fuel"), ("gas_flow", "rows")])
def test_the_closure_is_no_catch_all(key, wrong):
    assert wrong not in closure(key)
