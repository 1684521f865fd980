"""Designs far apart from each other, for tests that should hold for any."""

from functools import cache, lru_cache

from burnercalc.design import Design
from burnercalc.examples import EXAMPLES
from burnercalc.result import solve

# The mixture and the lining for which the figures by hand and from outside were worked out, whatever the default is.
WORKED = {"equivalence_ratio": "1", "lining": "dense_castable 1 in, blanket_8lb 2 in"}

# The knife maker's oven on house gas through small ports: at the rate to light at its walls never come to a glow.
DIM = {
    **{key: text for key, text in EXAMPLES[0].inches.items() if key not in ("gas_pressure", "jet_drill")},
    "fuel": "natural_gas",
    "rows": "4",
}

# A small box of square tube, for figures by hand. Common practice, no source; so are those of its block and mould: pins
# of 5/16 in half an inch into the base, corner relief 3/8 in, sticks of 3 5/8 in.
KNOWN = {
    "body_length": "6.5 in",
    "body_width": "3 in",
    "body_depth": "3 in",
    "wall": "1/4 in",
    "setback": "1/2 in",
    "grip": "3/4 in",
    "inlet": "2",
    "port_diameter": "5/16 in",
    "rows": "3",
    "ports_per_row": "6",
    "pattern": "staggered",
}
KNOWN_BLOCK = {
    **KNOWN,
    "corner_drill": "3/8 in",
    "block_thickness": "2 3/4 in",
    "mould_clearance": "0 in",
    "pin_depth": "1/2 in",
    "pin_stock_length": "3 5/8 in",
    "cap_gap": "0 in",
    "chamber_temperature": "2300 degF",
}
# A round body of 6 in pipe with ports in rings, and one of which depth, wall and setback are set too.
ROUND = {
    "body_kind": "pipe",
    "body_length": "6 in",
    "body_width": "6 in",
    "pattern": "rings",
    "rows": "3",
    "ports_per_row": "18",
}
ROUND_DEEP = {**ROUND, "body_depth": "5 in", "wall": "1/4 in", "setback": "3/4 in", "ports_per_row": "12"}


def solved(**texts):
    """The result of a design, by its texts: of the same texts the same one, and what rests on nothing of them shared.

    So it is to be looked at only; a test that changes how it is worked out solves a design of its own.
    """
    return _solved(tuple(sorted(texts.items()))) if texts else _default()


def worked(**texts):
    """solved(), of the mixture and the lining that figures were worked out for."""
    return solved(**{**WORKED, **texts})


@cache
def _default():
    return solve(Design.from_texts({}))


@lru_cache(maxsize=300)
def _solved(texts):
    return solve(Design.from_texts(dict(texts)), _default())


FAR_APART = {
    "default": {},
    **{f"{example.key}, {units}": texts for example in EXAMPLES
       for units, texts in (("inches", example.inches), ("metric", example.metric))},
    "round": {"body_kind": "pipe", "body_length": "6 in", "body_width": "6 in", "pattern": "rings", "rows": "4",
              "ports_per_row": "12", "body_depth": "4 in", "baffle_holes": "30"},
    "fed at the end, starved": {"body_depth": "1 1/2 in", "grip": "1 1/8 in", "inlet_position": "end",
                                "port_diameter": "3/8 in"},
    "no flame": {"fuel": "butane", "equivalence_ratio": "0.5"},
    "house gas, metric": {"units": "mm", "fuel": "natural_gas", "gas_pressure": "20 mbar", "jet_drill": "4 mm",
                          "port_diameter": "6 mm", "rows": "5", "ports_per_row": "9", "setback": "16 mm",
                          "edge_margin": "6 mm", "block_thickness": "65 mm"},
    "plates, a batch": {"body_kind": "plates", "caps": "on", "units": "mm", "batch_size": "7", "refractory": "own",
                        "damp_air": "yes", "start_date": "2026-03-02"},
    "frost": {"fuel": "butane", "ambient_temperature": "25 degF", "cylinder": "20", "refractory": "phosphate_plastic"},
    "a tank in the hills": {"cylinder": "tank", "firing_rate": "300 kBtu/h", "burner_count": "4",
                            "altitude": "6000 ft",
                            "blower_curve": "0 cfm 8 inH2O, 100 cfm 5 inH2O, 150 cfm 0 inH2O"},
    "ports that overlap": {"port_diameter": "1/2 in", "rows": "8", "ports_per_row": "20"},
    "one port": {"rows": "1", "ports_per_row": "1", "baffle_holes": "0"},
    "no baffle, a blend": {"baffle_holes": "0", "fuel_blend": "CH4 0.6, CO2 0.4", "firing_rate": "auto",
                            "gas_pressure": "5 psi"},
}  # fmt: skip

# Builds of kinds that are known to work (common practice), each in a chamber of its size, on propane and on house gas.
_CHAMBER = {"chamber_temperature": "2200 degF", "work_temperature": "2050 degF"}
_BRICK = {**_CHAMBER, "lining": "ifb_26 2 1/2 in, blanket_8lb 1 in", "low_fire": "40 %"}
_BUILDS = {
    "small square tube, 20 ports of 5/16": {
        **_BRICK, "body_length": "7 1/2 in", "body_width": "3 1/2 in", "body_depth": "3 1/2 in", "wall": "3/16 in",
        "setback": "9/16 in", "block_thickness": "3 in", "edge_margin": "3/8 in", "port_diameter": "5/16 in",
        "rows": "3", "ports_per_row": "7",
        "firing_rate": "75 kBtu/h", "chamber_length": "10 in", "chamber_width": "5 in", "chamber_height": "5 in",
        "work_rate": "8 lb/h", "heat_up_time": "50 min", "opening_area": "10 in2", "inlet": "1-1/2",
        "mix_pipe": "1-1/4",
    },
    "hand-sized box, 10 ports of 1/4": {
        **_BRICK, "equivalence_ratio": "0.95", "low_fire": "45 %", "body_kind": "plates",
        "body_length": "5 in", "body_width": "2 1/2 in",
        "body_depth": "2 1/2 in", "wall": "1/8 in", "setback": "3/8 in", "grip": "1/2 in",
        "block_thickness": "3 in", "edge_margin": "3/8 in", "port_diameter": "1/4 in", "pattern": "straight",
        "rows": "2", "ports_per_row": "5", "firing_rate": "25 kBtu/h", "chamber_length": "6 in",
        "chamber_width": "4 in", "chamber_height": "3 1/2 in",
        "work_rate": "3 lb/h", "heat_up_time": "75 min", "opening_area": "4 in2", "inlet": "3/4", "mix_pipe": "3/4",
        "mix_pipe_length": "12 in", "baffle_holes": "10", "blower_shutoff_pressure": "2 inH2O",
        "blower_free_flow": "20 cfm", "gas_pressure": "5 psi", "cylinder": "30",
    },
    "12 by 5, 81 ports of 5/16": {
        **_CHAMBER, "lining": "dense_castable 1 in, ifb_26 2 1/2 in, blanket_8lb 1 in", "low_fire": "45 %",
        "body_kind": "plates", "body_length": "12 in", "body_width": "5 in", "port_diameter": "5/16 in",
        "rows": "7", "ports_per_row": "12", "firing_rate": "250 kBtu/h", "chamber_length": "18 in",
        "chamber_width": "8 in", "chamber_height": "7 in", "work_rate": "20 lb/h", "heat_up_time": "60 min",
        "opening_area": "28 in2", "inlet": "3", "mix_pipe": "2-1/2", "mix_pipe_length": "30 in", "baffle_holes": "100",
        "blower_free_flow": "120 cfm", "gas_pressure": "8 psi", "cylinder_count": "3",
    },
}  # fmt: skip
_LINE = {"fuel": "natural_gas", "gas_pressure": "7 inH2O"}
# On house gas a small burner needs a little more port to be lit at what the line gives.
_ON_A_LINE = {
    "hand-sized box, 10 ports of 1/4": (
        "hand-sized box, 12 ports of 19/64",
        {"port_diameter": "19/64 in", "ports_per_row": "6", "baffle_holes": "15", "low_fire": "52 %"},
    ),
}
KNOWN_GOOD = {f"{name}, propane": texts for name, texts in _BUILDS.items()}
for _name, _texts in _BUILDS.items():
    _on_a_line, _more = _ON_A_LINE.get(_name, (_name, {}))
    KNOWN_GOOD[f"{_on_a_line}, house gas"] = {**_texts, **_LINE, **_more}

# What must not pass: name, settings, the check that must speak, its verdict.
ABSURD = (
    ("no opening", {"opening_area": "0 in2"}, "chamber_pressure", "stop"),
    ("a keyhole for an opening", {"opening_area": "1/4 in2"}, "chamber_pressure", "stop"),
    ("an opening as large as the chamber's side", {"opening_area": "60 in2"}, "rate_for_need", "stop"),
    ("a little rich, at 1.02", {"equivalence_ratio": "1.02"}, "carbon_monoxide", "caution"),
    ("far too rich", {"equivalence_ratio": "1.3"}, "mixture", "stop"),
    ("too lean to burn", {"equivalence_ratio": "0.5", "fuel": "butane"}, "flammable", "stop"),
    ("100 lb/h in a chamber for 10", {"work_rate": "100 lb/h"}, "throughput", "stop"),
    ("low fire of 27 %", {"low_fire": "27 %"}, "flashback_hot", "caution"),
    ("low fire of 5 %", {"low_fire": "5 %"}, "flashback_cold", "stop"),
    ("a blower for a doll's house", {"blower_shutoff_pressure": "0.2 inH2O", "blower_free_flow": "5 cfm"}, "blower",
     "stop"),
    ("400 ports the size of pins", {"port_diameter": "1/16 in", "rows": "10", "ports_per_row": "40"}, "port_length",
     "stop"),
    ("ports that overlap", {"port_diameter": "1/2 in", "rows": "8", "ports_per_row": "20"}, "web", "stop"),
    ("ports an inch wide", {"port_diameter": "1 in", "rows": "2", "ports_per_row": "4"}, "flashback_hot", "stop"),
    ("one port for all of it", {"rows": "1", "ports_per_row": "1"}, "port_velocity", "stop"),
    ("a propane jet on house gas", {**_LINE, "jet_drill": "#55"}, "jet", "stop"),
    ("a house-gas jet on propane", {"jet_drill": "#8"}, "jet", "stop"),
    ("a giant chamber", {"chamber_length": "60 in", "chamber_width": "30 in", "chamber_height": "30 in"},
     "rate_for_need", "stop"),
    ("a toy chamber", {"chamber_length": "3 in", "chamber_width": "2 in", "chamber_height": "2 in",
                       "opening_area": "1 in2", "firing_rate": "300 kBtu/h"}, "chamber_pressure", "stop"),
    ("a chamber lined with half an inch of blanket", {"lining": "blanket_8lb 1/2 in"}, "lining_limit", "stop"),
    ("a chamber hotter than its lining", {"chamber_temperature": "3000 degF"}, "lining_limit", "stop"),
    ("heated up in a minute", {"heat_up_time": "1 min"}, "heat_up_reach", "stop"),
    ("a small cylinder in the frost", {"cylinder": "20", "ambient_temperature": "10 degF"}, "cylinder", "stop"),
    ("cast in the frost", {"ambient_temperature": "20 degF"}, "curing_air", "stop"),
    ("no way to mix", {"mix_pipe_length": "0 in", "mix_pipe_elbows": "0"}, "mixing_length", "stop"),
    ("a mix pipe like a drain", {"mix_pipe": "4", "low_fire": "20 %"}, "mix_pipe_velocity", "stop"),
    ("an inlet like a straw", {"inlet": "1/2"}, "inlet_ratio", "stop"),
    ("a chamber under pressure", {"chamber_back_pressure": "1 inH2O"}, "chamber_pressure", "stop"),
    ("a chamber that blows", {"chamber_back_pressure": "0.2 inH2O"}, "chamber_pressure", "caution"),
    ("smoke for a door twice as large", {"opening_area": "2 in2", "bar_diameter": "1/2 in"}, "chamber_pressure",
     "stop"),
    ("a face longer and wider than its chamber", {"chamber_length": "6 in", "chamber_width": "5 in",
                                                  "chamber_height": "3 1/2 in"}, "chamber_fit", "stop"),
    ("a body as wide as its round chamber", {"chamber_shape": "cylinder", "chamber_diameter": "4 in",
                                             "lining": "blanket_8lb 1 in", "chamber_length": "30 in"}, "chamber_fit",
     "caution"),
    ("butane on a warm day, the blower stopped", {"fuel": "butane", "ambient_temperature": "80 degF"}, "shut_down",
     "caution"),
    ("a bar thicker than its opening", {"opening_area": "2 in2", "bar_diameter": "2 in"}, "bar_goes_in", "stop"),
    ("aluminium at a forging heat", {"work_metal": "aluminium", "work_temperature": "2000 degF"}, "melting", "caution"),
    ("5 psi from a house line", {"fuel": "natural_gas", "gas_pressure": "5 psi"}, "gas_pressure", "caution"),
)  # fmt: skip
