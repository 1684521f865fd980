"""Any chamber, fuel and fire within the ranges: told in numbers, and balanced."""

import json

from hypothesis import assume, example, given, settings
from hypothesis import strategies as st
from test_heat import solved

from burnercalc import catalogue
from burnercalc.errors import InputErrors
from burnercalc.physics.linings import material_keys


def quantity(low, high, unit):
    return st.floats(low, high).map(lambda number: f"{number:.6g} {unit}")


layer = st.tuples(st.sampled_from(material_keys()), st.floats(0.02, 12)).map(lambda pair: f"{pair[0]} {pair[1]:.4f} in")
blends = ["", "C3H8 0.93, C2H6 0.05, C4H10 0.02", "CH4 0.5, N2 0.5", "CH4 0.5, CO2 0.5", "C3H6 1", "iC4H10 1"]

# Each setting may be missing; texts that break a rule are dropped.
any_heat = st.fixed_dictionaries(
    {},
    optional={
        "units": st.sampled_from(["in", "mm"]),
        "chamber_shape": st.sampled_from(["box", "cylinder"]),
        "chamber_length": quantity(1, 240, "in"),
        "chamber_width": quantity(1, 120, "in"),
        "chamber_height": quantity(1, 120, "in"),
        "chamber_diameter": quantity(1, 120, "in"),
        "lining": st.lists(layer, min_size=1, max_size=4).map(", ".join),
        "opening_area": quantity(0, 60, "in2"),
        "opening_depth": quantity(0, 48, "in"),
        "chamber_temperature": quantity(400, 3200, "degF"),
        "work_temperature": quantity(200, 2000, "degF"),
        "work_metal": st.sampled_from(["steel", "iron", "aluminium", "copper", "brass", "bronze"]),
        "work_rate": quantity(0, 2000, "lb/h"),
        "heat_up_time": quantity(1 / 60, 100, "h"),
        "burner_count": st.integers(1, 24).map(str),
        "fuel": st.sampled_from(["propane", "natural_gas", "butane"]),
        "fuel_blend": st.sampled_from(blends),
        "firing_rate": st.one_of(st.just("auto"), quantity(1, 3000, "kBtu/h")),
        "equivalence_ratio": st.floats(0.5, 1.6).map(str),
        "ambient_temperature": quantity(-4, 130, "degF"),
        "altitude": quantity(-1000, 12000, "ft"),
        "aspirated_excess_air": quantity(0, 100, "%"),
        "aspirated_pressure": quantity(0.1, 60, "psi"),
        "aspirated_jet": quantity(0.3, 6, "mm"),
        "aspirated_throat": st.sampled_from(["1/8", "3/4", "2", "4"]),
        "aspirated_inlet_loss": st.floats(0, 5).map(str),
        "aspirated_outlet_loss": st.floats(0, 5).map(str),
    },
)


def of_the_room(declared):
    return [key for key, form in declared.items() if form.room == "heat"]


@settings(max_examples=40, deadline=None)
@given(any_heat)
@example({"chamber_length": "1 in", "work_temperature": "200 degF", "firing_rate": "auto"})  # perhaps no rate is enough
def test_any_chamber_is_told_in_numbers_and_balances(texts):
    try:
        r = solved(**texts)
    except InputErrors:
        assume(False)
    d = r.design
    # JSON refuses NaN and infinity.
    json.dumps([r[key] for key in of_the_room(catalogue.ANSWERS)], allow_nan=False)
    checks = {key: r.checks[key] for key in of_the_room(catalogue.CHECKS) if key in r.checks}
    json.dumps([(check.value, check.limit) for check in checks.values()], allow_nan=False)
    assert all(check.text.endswith(".") for check in checks.values())
    tables = {key: r.tables[key].rows for key in of_the_room(catalogue.TABLES)}
    json.dumps(tables, allow_nan=False)

    installed = r["firing_rate_gross"] * d.burner_count
    assert abs(sum(watt for _, watt, _ in tables["heat_balance"]) - installed) <= 1e-6 * installed
    assert all(abs(sum(row[n] or 0 for row in tables["flue_gas"]) - 1) < 2e-5 for n in (1, 2))
    assert d.ambient_temperature < r["shell_temperature"] <= d.chamber_temperature
    assert r["aspirated_equivalence_ratio"] > 0 and r["aspirated_rate"] > 0
    assert (r["atmosphere"] == "oxidising") <= (r["flue_o2_dry"] > r["flue_co_dry"])
    if d.firing_rate == "auto":
        assert abs(installed - r.part("need").needed_W) <= 1e-6 * installed
        # A rate without a band is one that the poorest film of gas cannot give; near the limit auto asks for less.
        poorest = r.answers["working_rate"].band
        assert (checks["rate_for_need"].verdict == "good") == bool(poorest and installed >= poorest[1] * (1 - 1e-9))
    if r["hold_rate"] is not None:
        # The gas leaves hotter than the walls, so it leaves less than the limit.
        assert r["heat_kept"] < r["available_heat"] + 1e-3
        assert r["reached_low_work"] <= r["reached_low_empty"] + 1e-6 <= r["reached_high_empty"] + 2e-6
        assert r["reached_high_empty"] < r["flame_temperature"] + 0.1
    for key in of_the_room(catalogue.CHARTS):
        chart = r.charts[key]
        plot = chart.plot
        assert [series.key for series in chart.declared.series] == list(plot.series)
        assert plot.x[0] < plot.x[1] and plot.y[0] < plot.y[1] and chart.sentence.endswith(".")
        json.dumps([plot.series, plot.x, plot.y, plot.mark], allow_nan=False)
