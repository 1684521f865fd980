"""Each rule of the bench has a design that breaks it, and one that keeps it: no check of the room Make can sleep."""

import pytest
from designs import ROUND_DEEP, solved

from burnercalc import catalogue
from burnercalc.design import Design

ROUND = {key: text for key, text in ROUND_DEEP.items() if key != "wall"}
LONG = {**Design().read_in("mm").texts, "body_length": "680 mm", "body_width": "80 mm", "body_depth": "80 mm",
        "wall": "4 mm", "ports_per_row": "40", "inlet": "1-1/4", "baffle_holes": "0", "inlets": "2"}  # fmt: skip
KEEPS: dict[str, str] = {}  # the example keeps every rule that it has
# {rule: (what it guards, a design that breaks it, one that keeps it where the example has none of it)}
BROKEN = {
    "tube_on_rack": ("a tube that is on a rack", {"body_width": "4 1/4 in"}, KEEPS),
    "inlet_hole": ("a hole that clears the pipe", {"inlet": "4", "body_width": "6 in", "body_depth": "6 in"}, KEEPS),
    "inlet_fits": ("a hole clear of corners and caps", {"inlet": "3"}, KEEPS),
    "lip_width": ("a flat ledge inside the corner", {"setback": "3/8 in"}, KEEPS),
    "lip_cover": ("refractory over the lip", {"grip": "1/2 in"}, KEEPS),
    "corner_drill": ("a drill of the window's corner", {"corner_drill": "1/2 in"}, KEEPS),
    "cap_fit": ("a gap that the caps go into", {"cap_gap": "0 in"}, KEEPS),
    "cap_flat": ("caps of flat that is sold", {"cap_thickness": "7/32 in"}, KEEPS),
    "cap_thickness": ("caps about as thick as the body", {"cap_thickness": "1/8 in"}, KEEPS),
    "round_body": ("nothing set that a round body has no use for", {**ROUND, "baffle_bend_angle": "30 deg"}, None),
    "baffle_clear": ("a baffle clear of an end inlet", {"inlet_position": "end"}, KEEPS),
    "baffle_goes_in": (
        "a baffle that slides past the corners",
        {"baffle_bend_angle": "0 deg", "wall": "1/4 in", "grip": "3 5/8 in", "block_thickness": "5 in"},
        KEEPS,
    ),
    "baffle_holes_fit": ("holes that are all in the sheet", {"baffle_holes": "245"}, KEEPS),
    "baffle_bends": (
        "a sheet that takes its bend",
        {
            "baffle_thickness": "1/2 in",
            "body_width": "2 in",
            "setback": "1/4 in",
            "baffle_bend_angle": "120 deg",
            "baffle_holes": "1",
        },
        None,
    ),
    "inlet_over_mould": (
        "an end inlet over the mould",
        {"inlet_position": "end", "inlet": "1-1/2", "baffle_holes": "0", "mould_board": "2x4"},
        {"inlet_position": "end", "inlet": "1-1/2", "baffle_holes": "0"},
    ),
    "two_inlets": ("legs that can be screwed together", LONG, {**LONG, "body_length": "685 mm"}),
    "pins_clear": (
        "pins clear of the mould's wall",
        {"setback": "1/8 in", "wall": "1/16 in", "edge_margin": "0 in"},
        KEEPS,
    ),
    "pins_stand": ("pins that stand in their holes", {"pin_depth": "1/8 in"}, KEEPS),
    "pins_proud": ("pins proud of the mix", {"grip": "3 1/4 in", "block_thickness": "5 in"}, KEEPS),
    "pin_stock": ("sticks longer than a pin", {"pin_stock_length": "3 in"}, KEEPS),
    "cross_bar": ("a bar that stops the body on the frame", {"mould_board": "2x12"}, KEEPS),
    "base_board": ("a base no wider than its board", {"mould_base": "2x8"}, {"mould_base": "2x10"}),
    "base_floor": ("wood under the pins", {"pin_depth": "16.3 mm"}, KEEPS),
    "frame_screws": ("a frame that takes screws in its edges", {"mould_board": "ply 3/8"}, KEEPS),
    "mould_fit": ("a mould neither tight nor wide", {"mould_clearance": "0 in"}, KEEPS),
    "block_growth": ("a joint at the lip of a long block", {"body_length": "24 in", "ports_per_row": "24"}, KEEPS),
    "placing": ("a refractory that a body can be pushed into", {"refractory": "phosphate_plastic"}, KEEPS),
    "mixes": (
        "a mix placed before it is stiff",
        {"batch_size": "12", "refractory": "own", "working_time": "5 min"},
        KEEPS,
    ),
    "refractory_limit": ("a refractory that stands the heat", {"chamber_temperature": "2821 degF"}, KEEPS),
    "web_as_cast": ("a web that pins off their marks leave", {"port_position_tolerance": "1/8 in"}, KEEPS),
}


def test_no_rule_of_the_bench_is_without_one():
    assert BROKEN.keys() == {check.key for check in catalogue.CHECKS.values() if check.room == "make"}


@pytest.mark.parametrize("rule", BROKEN)
def test_a_design_breaks_it_and_another_keeps_it(rule):
    """None where no design has it to keep: it is said only of what breaks it."""
    _, breaks, keeps = BROKEN[rule]
    broken = solved(**breaks).checks[rule]
    assert broken.verdict != "good" and broken.text
    if keeps is None:
        assert rule not in solved().checks or solved().checks[rule].verdict == "good"
    else:
        assert solved(**keeps).checks[rule].verdict == "good"
