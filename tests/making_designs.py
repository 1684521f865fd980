"""Random designs for the tests of what the bench needs: every kind of body, stock, mould, refractory and price."""

import datetime

from hypothesis import assume
from hypothesis import strategies as st

from burnercalc.design import Design
from burnercalc.errors import InputErrors
from burnercalc.settings import BY_KEY


def inches(low, high, part=16):
    return st.integers(int(low * part), int(high * part)).map(lambda n: f"{n}/{part} in")


def choices(key):
    return st.sampled_from([value for value, _ in BY_KEY[key].choices])


SHAPES = {
    "body_kind": st.sampled_from(["tube", "tube", "plates", "pipe"]),
    "body_length": inches(2, 60, 4),
    "body_width": inches(2, 12, 4),
    "body_depth": inches(2, 12, 4),
    "wall": inches(1 / 8, 3 / 8),
    "setback": inches(3 / 16, 1),
    "corner_radius": inches(0, 3 / 8),
    "port_diameter": inches(1 / 16, 1),
    "rows": st.integers(1, 8).map(str),
    "ports_per_row": st.integers(2, 40).map(str),
    "pattern": choices("pattern"),
    "edge_margin": inches(0, 1),
    "block_thickness": inches(1 / 2, 12, 4),
    "grip": inches(3 / 16, 3 / 2),
    "inlet": choices("inlet"),
    "inlet_position": choices("inlet_position"),
    "baffle_holes": st.integers(0, 300).map(str),
    "baffle_hole_diameter": inches(1 / 16, 1),
    "baffle_thickness": inches(1 / 64, 1 / 2, 64),
    "baffle_bend_angle": st.integers(0, 120).map(lambda n: f"{n} deg"),
    "corner_drill": inches(1 / 16, 1),
    "caps": choices("caps"),
    "cap_gap": inches(0, 1 / 8, 64),
}
BENCH = {
    "kerf": inches(0, 1 / 4),
    "stock_lengths": st.sampled_from(["20 ft", "1 ft, 2 ft, 6 ft", "6 m, 3 m"]),
    "inlet_length": inches(1, 35, 2),
    "nipple_stock": st.sampled_from(["36 in 40", "3 in 5, 6 in 7.50, 72 in 60"]),
    "mould_clearance": inches(0, 6),
    "mould_board": choices("mould_board"),
    "mould_base": choices("mould_base"),
    "pin_depth": inches(1 / 8, 1),
    "pin_stock_length": inches(1, 120, 1),
    "pin_kind": choices("pin_kind"),
    "pin_spares": st.integers(0, 200).map(str),
    "refractory": choices("refractory"),
    "castable_density": st.integers(20, 240).map(lambda n: f"{n} lb/ft3"),
    "castable_water_high": st.integers(9, 60).map(lambda n: f"{n} %"),
    "working_time": st.integers(1, 480).map(lambda n: f"{n / 20} h"),
    "bag_mass": st.integers(1, 4000).map(lambda n: f"{n} lb"),
    "waste_allowance": st.integers(0, 100).map(lambda n: f"{n} %"),
    "placing_rate": st.integers(5, 5000).map(lambda n: f"{n} lb/h"),
    "port_tilt_tolerance": st.integers(0, 30).map(lambda n: f"{n / 2} deg"),
    "port_position_tolerance": inches(0, 1 / 4),
    "start_date": st.dates(min_value=datetime.date(1970, 1, 1)).map(str),
    "damp_air": choices("damp_air"),
    "batch_size": st.integers(1, 100).map(str),
    "price_steel": st.sampled_from(["0/lb", "4.5/kg"]),
    "price_bag": st.integers(0, 10000).map(str),
    "bought_price": st.integers(0, 1000000).map(str),
    "hour_value": st.integers(0, 10000).map(str),
    "units": choices("units"),
    "hours_weld": st.integers(0, 500).map(lambda n: f"{n} h"),
    "hours_cast": st.integers(0, 500).map(lambda n: f"{n} h"),
    "hours_finish": st.integers(0, 500).map(lambda n: f"{n} h"),
    "hours_mould": st.integers(0, 500).map(lambda n: f"{n} h"),
    "chamber_temperature": st.integers(400, 3200).map(lambda n: f"{n} degF"),
    "ambient_temperature": st.integers(-4, 130).map(lambda n: f"{n} degF"),
}


def cured(texts, tries=8):
    """The design nearest to these texts: refused settings take what their refusals offer."""
    if texts.get("body_kind") == "pipe":
        texts = {**texts, "body_length": texts["body_width"]}
    for _ in range(tries):
        try:
            return Design.from_texts(texts)
        except InputErrors as refused:
            texts = {**texts, **{error.field: error.nearest for error in refused.errors if error.nearest}}
    assume(False)


# The same, small enough that 200 of them are printed in a few seconds.
small = st.fixed_dictionaries(
    {
        **SHAPES,
        "body_length": inches(2, 16, 4),
        "body_width": inches(2, 8, 4),
        "rows": st.integers(1, 6).map(str),
        "ports_per_row": st.integers(2, 16).map(str),
    }
).map(cured)
shapes = st.fixed_dictionaries(SHAPES).map(cured)
bench = st.fixed_dictionaries({}, optional={**SHAPES, **BENCH}).map(
    lambda texts: cured(
        {**texts, "body_width": texts.get("body_width", "4 in")} if texts.get("body_kind") == "pipe" else texts
    )
)
