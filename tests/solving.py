"""What the tests of heat, fire and kinds share: solving from texts, and any chamber within the ranges."""

import json

from hypothesis import assume
from hypothesis import strategies as st

from burnercalc.chapters import fire, heat, kinds
from burnercalc.design import Design
from burnercalc.errors import InputErrors
from burnercalc.physics.linings import material_keys
from burnercalc.solve import solve

CHAPTERS = (fire, heat, kinds)
BTU_H = 1055.05585262 / 3600


def solved(**texts):
    return solve(Design.from_texts(texts), CHAPTERS)


def solved_or_dropped(texts):
    try:
        design = Design.from_texts(texts)
    except InputErrors:
        assume(False)
    return solve(design, CHAPTERS)


def plain(result):
    """Every number of a result as JSON text; refuses NaN and infinity."""
    return json.dumps(
        [
            [a.value for a in result.answers.values()],
            [(c.value, c.limit) for c in result.checks.values()],
            [t.rows for t in result.tables.values()],
        ],
        allow_nan=False,
    )


def _quantity(low, high, unit):
    return st.floats(low, high).map(lambda number: f"{number:.6g} {unit}")


_layer = st.tuples(st.sampled_from(material_keys()), st.floats(0.02, 12)).map(
    lambda pair: f"{pair[0]} {pair[1]:.4f} in"
)

# Texts of any chamber, fuel and fire; each may be missing, and those that break a rule are dropped by solved_or_dropped.
any_heat = st.fixed_dictionaries(
    {},
    optional={
        "units": st.sampled_from(["in", "mm"]),
        "chamber_shape": st.sampled_from(["box", "cylinder"]),
        "chamber_length": _quantity(1, 240, "in"),
        "chamber_width": _quantity(1, 120, "in"),
        "chamber_height": _quantity(1, 120, "in"),
        "chamber_diameter": _quantity(1, 120, "in"),
        "lining": st.lists(_layer, min_size=1, max_size=4).map(", ".join),
        "opening_area": _quantity(0, 60, "in2"),
        "opening_depth": _quantity(0, 48, "in"),
        "chamber_temperature": _quantity(400, 3200, "degF"),
        "work_temperature": _quantity(200, 2000, "degF"),
        "work_metal": st.sampled_from(["steel", "iron", "aluminium", "copper", "brass", "bronze"]),
        "work_rate": _quantity(0, 2000, "lb/h"),
        "heat_up_time": _quantity(1 / 60, 100, "h"),
        "burner_count": st.integers(1, 24).map(str),
        "fuel": st.sampled_from(["propane", "natural_gas", "butane"]),
        "fuel_blend": st.sampled_from(
            ["", "C3H8 0.93, C2H6 0.05, C4H10 0.02", "CH4 0.5, N2 0.5", "CH4 0.5, CO2 0.5", "C3H6 1", "iC4H10 1"]
        ),
        "firing_rate": st.one_of(st.just("auto"), _quantity(1, 3000, "kBtu/h")),
        "equivalence_ratio": st.floats(0.5, 1.6).map(str),
        "ambient_temperature": _quantity(-4, 130, "degF"),
        "altitude": _quantity(-1000, 12000, "ft"),
        "aspirated_excess_air": _quantity(0, 100, "%"),
        "aspirated_pressure": _quantity(0.1, 60, "psi"),
        "aspirated_jet": _quantity(0.3, 6, "mm"),
        "aspirated_throat": st.sampled_from(["1/8", "3/4", "2", "4"]),
        "aspirated_inlet_loss": st.floats(0, 5).map(str),
        "aspirated_outlet_loss": st.floats(0, 5).map(str),
    },
)
