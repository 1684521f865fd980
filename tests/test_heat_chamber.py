"""The chamber: its losses against a heat-transfer library, tables and hand sums, and what it needs of the fire."""

from dataclasses import replace
from math import pi, sqrt

import designs
import ht
import pytest
from CoolProp.CoolProp import PropsSI
from rows import rows
from test_heat import BTU_H, solved

from burnercalc.parts.need import need
from burnercalc.physics.heatup import heat_up
from burnercalc.physics.linings import material
from burnercalc.physics.walls import steady_profile, still_air

SIGMA, INCH = 5.670374419e-8, 0.0254
BRICK = {"lining": "ifb_26 4 1/2 in", "opening_area": "0 in2"}
NO_FLAME_SO_HOT = {"equivalence_ratio": "0.5", "chamber_temperature": "2350 degF"}


def outside_film(shell_K, air_K, size_m, kind):
    """Convection and radiation of one face [W/m2] by ht and CoolProp."""
    film = (shell_K + air_K) / 2
    air = {
        name: PropsSI(letter, "T", film, "P", 101325, "Air")
        for name, letter in (("rho", "D"), ("mu", "V"), ("k", "L"), ("cp", "C"))
    }
    prandtl = air["cp"] * air["mu"] / air["k"]
    grashof = 9.80665 / film * (shell_K - air_K) * size_m**3 * air["rho"] ** 2 / air["mu"] ** 2
    if kind == "vertical":
        nusselt = ht.conv_free_immersed.Nu_vertical_plate_Churchill(prandtl, grashof)
    elif kind == "cylinder":
        nusselt = ht.conv_free_immersed.Nu_horizontal_cylinder_Churchill_Chu(prandtl, grashof)
    else:
        nusselt = ht.conv_free_immersed.Nu_horizontal_plate_McAdams(prandtl, grashof, buoyancy=kind == "up")
    return nusselt * air["k"] / size_m * (shell_K - air_K) + 0.9 * SIGMA * (shell_K**4 - air_K**4)


def test_volume_by_hand():
    size = {"chamber_length": "20 in", "chamber_diameter": "8 in"}
    assert solved(chamber_shape="cylinder", **size)["chamber_volume"] == pytest.approx(pi * 16 * 20 * INCH**3)
    box = {"chamber_length": "20 in", "chamber_width": "7 in", "chamber_height": "5 in"}
    assert solved(**box)["chamber_volume"] == pytest.approx(700 * INCH**3)


def test_shell_gives_off_what_the_walls_let_through_by_ht():
    r = solved(**BRICK)
    d, shell = r.design, r["shell_temperature"]
    length, width, height = (d.value(f"chamber_{side}") + 9 * INCH for side in ("length", "width", "height"))
    flat = length * width / (2 * (length + width))
    air_K = d.ambient_temperature
    sides = 2 * (length + width) * height * outside_film(shell, air_K, height, "vertical")
    flats = length * width * (outside_film(shell, air_K, flat, "up") + outside_film(shell, air_K, flat, "down"))
    # 3 %: air properties by polynomial against CoolProp, and the switch of the upper plate's law.
    assert r["wall_loss"] == pytest.approx(sides + flats, rel=0.03)


def test_shell_of_a_cylinder_by_ht():
    r = solved(**BRICK, chamber_shape="cylinder")
    d, shell = r.design, r["shell_temperature"]
    diameter, length = d.chamber_diameter + 9 * INCH, d.chamber_length + 9 * INCH
    round_W = pi * diameter * length * outside_film(shell, d.ambient_temperature, diameter, "cylinder")
    ends_W = pi / 2 * diameter**2 * outside_film(shell, d.ambient_temperature, diameter, "vertical")
    assert r["wall_loss"] == pytest.approx(round_W + ends_W, rel=0.03)


def test_one_layer_by_shape_factors():
    """By hand: faces A/L, 12 edges 0.54 each, 8 corners 0.15 L (Incropera, table 4.1); conductivity's mean."""
    r = solved(**BRICK)
    d, thick = r.design, 4.5 * INCH
    a, b, c = d.chamber_length, d.chamber_width, d.chamber_height
    shape = 2 * (a * b + a * c + b * c) / thick + 0.54 * 4 * (a + b + c) + 0.15 * 8 * thick
    # VDI rows of data/lining_properties.csv, straight between them, summed on a fine grid.
    brick, hot, cold = material("ifb_26"), d.chamber_temperature, r["shell_temperature"]
    steps = 2000
    mean = sum(brick.conductivity_W_mK(cold + (hot - cold) * (n + 0.5) / steps) for n in range(steps)) / steps
    assert r["wall_loss"] == pytest.approx(mean * shape * (hot - cold), rel=1e-5)


@pytest.mark.parametrize(
    "row",
    [row for row in rows("openings.csv") if row["depth_to_radius"] <= 10],
    ids=lambda row: f"{row['depth_to_radius']:g}",
)
def test_opening_by_clausing(row):
    r = solved(opening_area="12 in2", opening_depth=f"{row['depth_to_radius'] * sqrt(12 / pi):.9f} in")
    d = r.design
    black = d.opening_area * SIGMA * (d.chamber_temperature**4 - d.ambient_temperature**4)
    assert r["opening_loss"] == pytest.approx(row["factor"] * black, rel=1e-3)


@pytest.mark.parametrize(
    "metal, temperature, kJ_kg, tolerance",
    [
        # EN 1993-1-2 from 20 degC; NASA condensed species from 25 degC, carried to 20 degC by cp.
        ("steel", "1200 degC", 827.1, 0.002),
        ("aluminium", "750 degC", 1174.7 + 4.5, 0.002),
        ("copper", "1150 degC", 707.0 + 1.9, 0.002),
        ("iron", "1000 degC", 677.5 + 2.2, 0.005),
    ],
)
def test_work_heat(metal, temperature, kJ_kg, tolerance):
    r = solved(
        work_metal=metal,
        work_rate="36 kg/h",
        work_temperature=temperature,
        ambient_temperature="20 degC",
        chamber_temperature="1250 degC",
    )
    assert r["work_heat"] == pytest.approx(kJ_kg * 10, rel=tolerance)


@pytest.mark.parametrize(
    "metal, temperature, state",
    [
        # Handbooks: copper melts at 1084.6 degC, yellow brass between 905 and 930 degC, carbon steel from 1450 degC.
        ("steel", "1230 degC", "solid"),
        ("copper", "1080 degC", "solid"),
        ("copper", "1090 degC", "liquid"),
        ("brass", "900 degC", "solid"),
        ("brass", "915 degC", "melting"),
        ("brass", "935 degC", "liquid"),
    ],
)
def test_melting_is_told(metal, temperature, state):
    assert solved(work_metal=metal, work_temperature=temperature)["work_state"] == state


def test_melting_is_as_sure_as_its_least_sure_metal():
    """EN 1993-1-2 and handbooks: not every row is published, and the page says one thing for all."""
    for metal in ("copper", "steel"):
        assert solved(work_metal=metal).answers["work_state"].trust == "memory"


def test_what_is_needed_by_hand():
    """Each rate is the heat that it must give over the share that stays: the zone's, tests/test_heat_zone.py."""
    r = solved()
    losses = r["wall_loss"] + r["opening_loss"]
    zone = r.part("zone")
    for states, heat, rate in (
        (zone.hold, losses, r["hold_rate"]),
        (zone.working, losses + r["work_heat"], r["working_rate"]),
    ):
        assert rate == states[1].firing_rate_W
        for state in states:
            # Between the nodes of ChamberLosses: tests/test_gas_zone.py.
            assert state.firing_rate_W * state.available_fraction == pytest.approx(heat, rel=5e-4)
            assert state.available_fraction < r["available_heat"]
    assert r["firing_rate_needed"] == r["heat_up_rate"] > r["working_rate"]
    assert r.part("need").decided_by == "heat-up"
    slow = solved(heat_up_time="10 h")
    # Work that stays cold harms, a slow heat-up does not: the careful end of its band.
    assert (
        slow["firing_rate_needed"] == slow.answers["working_rate"].band[1] > slow["working_rate"] > slow["heat_up_rate"]
    )
    assert slow.part("need").decided_by == "working"
    assert r["thermal_efficiency"] == pytest.approx(r["work_heat"] / r["working_rate"], rel=1e-12)
    # Small gas forges bring 5 to 15 % of the gross heat into the stock (common practice).
    assert 0.05 < r["thermal_efficiency"] < 0.15
    # Propane: 50.343 MJ/kg gross (fuels.csv).
    assert r["fuel_per_hour"] == pytest.approx(r["working_rate"] / 50.343e6, rel=1e-3)
    assert r["metered_per_hour"] is None
    line = solved(fuel="natural_gas", fuel_blend="CH4 1")  # 37.7 MJ/m3 at 15 degC (ISO 6976)
    assert line["metered_per_hour"] == pytest.approx(line["working_rate"] / 37.7e6, rel=2e-3)


def test_a_long_heat_up_stores_what_the_steady_wall_holds():
    """Every layer at the mean of its enthalpies, by hand, within what edges and curvature do."""
    r = solved(
        heat_up_time="100 h",
        lining="ifb_26 1 in",
        chamber_length="60 in",
        chamber_width="60 in",
        chamber_height="60 in",
        opening_area="0 in2",
    )
    layer, (_, _, _, hot, cold, _) = material("ifb_26"), r.tables["lining_layers"].rows[0]
    steps, air_K = 100, r.design.ambient_temperature
    mean = sum(layer.enthalpy_J_kg(cold + (hot - cold) * (n + 0.5) / steps) for n in range(steps)) / steps
    brick_kg = layer.density_kg_m3 * INCH * 6 * (61 * INCH) ** 2
    assert r["stored_heat"] == pytest.approx(brick_kg * (mean - layer.enthalpy_J_kg(air_K)), rel=0.03)


def worst_gap_K(depths, temps, xs, ys):
    """Most that temps at depths differ from the line through (xs, ys)."""
    worst = 0.0
    for depth, temp in zip(depths, temps):
        n = next(n for n in range(1, len(xs)) if depth <= xs[n] + 1e-12)
        share = (depth - xs[n - 1]) / (xs[n] - xs[n - 1])
        worst = max(worst, abs(temp - ys[n - 1] - share * (ys[n] - ys[n - 1])))
    return worst


def test_profile_of_the_steady_wall_is_that_of_a_long_heat_up():
    """The transient code knows nothing of the steady one; finer cells bring both together."""
    r = solved()
    d, chamber = r.design, r.part("chamber")
    layers = tuple((material(key), thickness) for key, thickness in d.lining)
    soaked = heat_up(
        wall=chamber.walls,
        layers=layers,
        hot_face_temp_K=d.chamber_temperature,
        ambient_temp_K=d.ambient_temperature,
        film_loss_W=still_air(ambient_temp_K=d.ambient_temperature, emissivity=0.9, pressure_Pa=101325),
        time_s=360000.0,
        cells_per_layer=60,
    )
    steady = steady_profile(chamber.walls, layers, chamber.heat.wall, per_layer=200)
    assert worst_gap_K(soaked.depths_m, soaked.temps_K, *steady) < 1.0
    # What the chart shows: 18 cells and 32 chords a layer.
    shown = solved(heat_up_time="100 h").charts["wall_profile"].plot.series
    assert worst_gap_K(*shown["heat_up"], *shown["steady"]) < 6.0


def test_auto_takes_the_rate_from_the_chamber_and_says_so():
    one, three = solved(firing_rate="auto"), solved(firing_rate="auto", burner_count="3")
    assert one["firing_rate_gross"] == one["firing_rate_needed"] == pytest.approx(3 * three["firing_rate_gross"])
    assert one["gas_flow"] == pytest.approx(3 * three["gas_flow"]) and one["firing_rate_from"] == "chamber"
    assert solved()["firing_rate_from"] == "setting" and solved()["firing_rate_gross"] == pytest.approx(1e5 * BTU_H)
    # As set to what auto finds, the design is the same.
    as_set = solved(firing_rate=f"{one['firing_rate_gross']!r} W")
    assert as_set["mixture_flow"] == pytest.approx(one["mixture_flow"], rel=1e-12)


def test_auto_holds_a_chamber_that_no_fire_heats_up_in_time():
    """At 2800 degF it took 174 kBtu/h where 176 hold, and was told that it cannot even hold."""
    r = designs.solved(firing_rate="auto", chamber_temperature="2800 degF")
    assert r["heat_up_rate"] is None and r["firing_rate_gross"] >= r["hold_rate"]
    assert r["reached_high_empty"] >= r.design.chamber_temperature - 0.1
    assert r.checks["rate_for_need"].verdict == "caution"


def test_a_heat_up_beyond_what_burns_well_is_not_told_to_be_within_a_rate():
    """In a chamber this hot heating up takes more than 8 MW a cubic metre; a rate below it was told to be enough."""
    r = designs.solved(chamber_temperature="2650 degF", firing_rate="180 kBtu/h", work_rate="0 lb/h")
    assert r["heat_up_rate"] > 8e6 * r["chamber_volume"] and not r.part("need").in_reach
    told = r.checks["rate_for_need"].text
    assert (
        "takes more than burns well in it, as the heat-up says" in told
        and "the time at the rate to light at not counted" not in told
    )
    assert r.checks["heat_up_reach"].verdict in ("note", "stop")


def test_a_flame_too_cold_leaves_the_rates_open_and_the_losses_told():
    r = solved(**NO_FLAME_SO_HOT)
    rates = ("hold_rate", "working_rate", "heat_up_rate", "firing_rate_needed", "thermal_efficiency", "fuel_per_hour")
    assert [r[key] for key in rates] == [None] * 6
    assert r["wall_loss"] > 0 and r["shell_temperature"] > 300
    # The same walls under a flame that holds them lose the same.
    hot = solved(chamber_temperature="2350 degF")
    assert (r["wall_loss"], r["stored_heat"]) == (hot["wall_loss"], hot["stored_heat"])


def test_no_rate_where_one_film_or_all_have_none():
    r = solved()
    zone, rest = r.part("zone"), (r.part("chamber"), r.part("flame"), r.part("gas"))
    poorest = replace(zone, hold=(None, *zone.hold[1:]), working=(None, *zone.working[1:]))
    found = need(poorest, *rest)
    assert found.hold_told_W == found.hold_W == r["hold_rate"] and found.hold_band is None
    assert found.working_told_W == r["working_rate"] and found.heat_up_told_W == found.heat_up_band
    none = need(replace(zone, hold=(None, None, None)), *rest)
    assert none.hold_told_W is None and none.needed_W is None
    # Where no fire does it, what it would take if a tenth of the heat stayed, or to heat up what burns well in it: no
    # more than 8 MW a cubic metre, common practice.
    well_W = 8e6 * (12 * 6 * 5.5) * 0.0254**3
    found = need(replace(zone, working=(None,) * 3, heat_up_W=(None,) * 3), *rest)
    assert found.working_told_W is None and found.heat_up_told_W is None and found.gas_kg_s is found.efficiency is None
    works_W = 10 * (r["wall_loss"] + r["opening_loss"] + r["work_heat"])
    assert found.needed_W == pytest.approx(max(well_W, works_W), rel=0.005) and not found.in_reach
