"""Blends as they boil off: first and last gas against published vapour pressures, and how they are lit and burned."""

from dataclasses import replace
from math import sqrt

import pytest
from designs import solved

from burnercalc.design import Design
from burnercalc.parts.blend_light import LIT, MISSED
from burnercalc.parts.holding import limits_m_s
from burnercalc.parts.tries import TORCH_LIFT, burnt_lift_m_s, careful_flashback_m_s, careful_lift_m_s
from burnercalc.physics import combustion, fuels, gas_jet
from burnercalc.result import solve

PSI = 6894.757293168  # NIST SP 811
# Vapour pressures at 100 degF, psia, by GPA 2145 (memory), molar masses, and volumes of air of 20.95 % oxygen.
PRESSURE = {"C3H8": 188.6, "C4H10": 51.7, "iC4H10": 72.6}
MOLAR_G = {"C3H8": 44.10, "C4H10": 58.12, "iC4H10": 58.12}
AIR = {"C3H8": 5 / 0.2095, "C4H10": 6.5 / 0.2095, "iC4H10": 6.5 / 0.2095}
HOT_DAY = {"ambient_temperature": "100 degF"}
NARROW, WIDE = "C3H8 0.95, C4H10 0.05", "C3H8 0.7, C4H10 0.3"


def through_jet(shares):
    """Air that a jet's gas needs at one pressure, up to a factor."""
    return sum(x * AIR[name] for name, x in shares.items()) / sqrt(sum(x * MOLAR_G[name] for name, x in shares.items()))


def normed(parts):
    return {name: part / sum(parts.values()) for name, part in parts.items()}


@pytest.mark.parametrize(
    "mean", [{"C3H8": 0.7, "C4H10": 0.3}, {"C3H8": 0.5, "C4H10": 0.5}, {"C3H8": 0.6, "C4H10": 0.2, "iC4H10": 0.2}]
)
def test_first_and_last_gas_by_hand(mean):
    """Raoult's law from printed vapour pressures; vapour taken off in small steps until 5 % of the mass is left."""
    text = ", ".join(f"{name} {x}" for name, x in mean.items())
    blend = solved(fuel_blend=text, **HOT_DAY).part("blend")
    vapour = normed({name: x * PRESSURE[name] for name, x in mean.items()})
    left = dict(mean)
    mass = sum(x * MOLAR_G[name] for name, x in left.items())
    step = sum(left.values()) / 20000
    while sum(x * MOLAR_G[name] for name, x in left.items()) > 0.05 * mass:
        off = normed({name: x * PRESSURE[name] for name, x in left.items()})
        left = {name: max(x - step * off[name], 0.0) for name, x in left.items()}
    last = normed({name: x * PRESSURE[name] for name, x in left.items()})
    assert dict(blend.first.gas.composition) == pytest.approx(vapour, abs=0.003)
    assert dict(blend.last.gas.composition) == pytest.approx(last, abs=0.01)
    for one, shares in ((blend.first, vapour), (blend.last, last)):
        assert one.ratio_times == pytest.approx(through_jet(shares) / through_jet(mean), rel=2e-3)
    assert blend.first.ratio_times < 1 < blend.last.ratio_times


def test_a_gas_that_stays_what_it_is_has_no_ends():
    for texts in ({}, {"fuel": "natural_gas"}, {"fuel_blend": "CH4 0.6, CO2 0.4"}, {"fuel_blend": "C4H10 1"}):
        r = solved(**texts)
        assert r.part("blend").ends == () and "blend_light" not in r.checks
        assert r.part("blend").span(0.95) == (0.95, 0.95)


def test_ethane_leaves_with_the_first_gas():
    """Of 0.05 in propane a fifth of the first gas, by its 34 bar at 60 degF over propane's 7.4 (memory); then none."""
    blend = solved(fuel_blend="C3H8 0.95, C2H6 0.05").part("blend")
    first = dict(blend.first.gas.composition)
    assert first["C2H6"] == pytest.approx(0.05 * 34 / (0.05 * 34 + 0.95 * 7.4), abs=0.01)
    assert blend.last.gas.composition == (("C3H8", 1.0),)
    assert blend.first.ratio_times < 0.98 < 1 < blend.last.ratio_times < 1.01


def test_a_narrow_blend_is_lit_by_one_mark_from_the_first_gas_to_the_last():
    r = solved(fuel_blend=NARROW)
    light, check = r.part("blend_light"), r.checks["blend_light"]
    assert check.verdict == "good" and light.holds == light.alone == MISSED
    assert "with 5 % of a charge left" in check.text
    card = {when: do for when, do, _ in r.tables["lighting_card"].rows}
    assert "until 5 % of their charge is left. That is 5.0 lb in each over its stamped empty weight" in card["Before"]
    assert f"({light.first:.2f} full, {light.last:.2f} at the last)" in card["Alight"]
    assert "full," not in {when: do for when, do, _ in solved().tables["lighting_card"].rows}["Alight"]


def test_a_wide_blend_is_a_stop_that_tells_how_far_it_may_be_emptied():
    """Before, it was lit by a card of its mean, which ran back with the first gas or lifted with the last."""
    r = solved(fuel_blend=WIDE)
    light, check = r.part("blend_light"), r.checks["blend_light"]
    assert (light.holds, light.alone, light.enough) == (LIT, MISSED, 0.2) and check.verdict == "stop"
    assert "Changed with 20 % left, by weight, one setting does" in check.text
    assert check.changes[0].setting == "cylinder_left" and check.changes[0].move == "raise"
    assert "DO NOT LIGHT" in r.tables["lighting_card"].rows[0][1]


def test_the_share_that_is_told_is_where_it_begins_to_hold():
    for left, word in (("10 %", "stop"), ("20 %", "good"), ("30 %", "good")):
        r = solved(fuel_blend=WIDE, cylinder_left=left)
        assert r.checks["blend_light"].verdict == word
        assert ("stop" in {check.verdict for check in r.checks.values()}) == (word == "stop")


@pytest.mark.parametrize(
    "way", [{"port_diameter": "5/16 in"}, {"ports_per_row": "14"}, {"fuel_blend": NARROW}, {"cylinder_left": "20 %"}]
)
def test_each_way_out_is_one(way):
    r = solved(**{"fuel_blend": WIDE, **way})
    assert r.checks["blend_light"].verdict in ("good", "caution") and r.checks["lighting"].verdict != "stop"


def test_behind_a_guard_it_is_no_stop_and_a_tank_of_a_line_is_not_changed():
    assert solved(fuel_blend=WIDE, lit_by="guard").checks["blend_light"].verdict == "caution"
    line = solved(fuel_blend=WIDE, gas_from="line")
    assert line.checks["blend_light"].verdict == "stop" and line.part("blend_light").enough is None
    assert "cylinder_left" not in {change.setting for change in line.checks["blend_light"].offered}


@pytest.mark.parametrize("texts", [{"fuel_blend": NARROW}, {"fuel_blend": WIDE, "cylinder_left": "20 %"}])
def test_what_the_card_tells_holds_with_each_gas(texts):
    """From the jet's flow of that very gas at the pressures told and the air of the mark, by the port's limits."""
    r = solved(**texts)
    slide, tries, blend = (r.part(name) for name in ("lighting_slide", "tries", "blend"))
    air = combustion.air_flow_m3_s(tries.gas.composition, 1.0, slide.rate_W.value / slide.ratio.value)
    pipe_Pa = tries.shop.pressure_Pa + slide.pipe_Pa
    for one in blend.ends:
        composition = one.gas.composition
        jet = replace(
            tries.jet,
            molar_mass_kg_mol=fuels.molar_mass_kg_mol(composition),
            heat_capacity_ratio=gas_jet.heat_capacity_ratio(composition),
            gross_J_kg=one.gas.gross_J_kg,
        )
        for gas_Pa in slide.gas_Pa:
            rate_W = jet.rate_through_W(jet.drill.diameter_m, gas_Pa, pipe_Pa)
            ratio = combustion.air_flow_m3_s(composition, 1.0, rate_W) / air
            port = one.gas, tries.shop, ratio, tries.face.port_diameter_m, tries.block_thickness
            mixture_m3_s = combustion.mixture_flow_m3_s(composition, ratio, rate_W) * tries.shop.swell
            speed = mixture_m3_s / tries.face.port_area_m2
            least, largest = speed * tries.shares.least, speed * tries.shares.largest
            # As near as limits are worked out, at fiftieths of the mixture.
            assert least >= 0.995 * careful_flashback_m_s(*port, tries.hot_block.waiting_port, True, 0.0)
            assert largest <= 1.005 * TORCH_LIFT * careful_lift_m_s(*port, 0.0)
            assert largest <= 1.005 * TORCH_LIFT * 2 * burnt_lift_m_s(*port, 0.0).low


def test_flashback_hot_is_judged_with_the_gas_that_is_worst():
    r, mean = solved(fuel_blend=WIDE), solved(fuel_blend=WIDE, cylinder_left="40 %")
    holding, blend, block, face = (r.part(name) for name in ("holding", "blend", "hot_block", "face"))
    port = face.port_diameter_m, r.part("body").block_thickness_m
    found = [
        limits_m_s(one.gas, r.part("shop"), 0.93 * one.ratio_times, *port, block.port, block.left_port)[0].high
        for one in blend.ends
    ]
    speed = r.part("stream").velocity_m_s * r.part("shares").least
    rates_W = [limit / speed * r.part("firing").rate_W for limit in found]
    assert r.design.value("equivalence_ratio") == 0.93
    assert holding.hot_W.high == pytest.approx(max(rates_W), rel=3e-3)  # a gas is 4 % of its mixture
    assert holding.hot_W.high > mean.part("holding").hot_W.high


def test_carbon_monoxide_is_of_the_richest_gas():
    r = solved(fuel_blend=WIDE)
    blend, hot = r.part("blend"), r.part("hot_run")
    assert r.part("carbon_monoxide").richest == pytest.approx(hot.richest * blend.last.ratio_times)
    check = r.checks["carbon_monoxide"]
    assert (
        f"its gases come to {0.93 * blend.first.ratio_times:.2f} and {0.93 * blend.last.ratio_times:.2f}" in check.text
    )
    assert solved(fuel_blend=WIDE, cylinder_left="40 %").checks["carbon_monoxide"].value < check.value


def test_cylinders_that_are_changed_early_last_less():
    """80 lb a hundred less what is left, at 21 644 Btu/lb of propane; two of 100 lb at 50 kBtu/h."""
    r = solved(cylinder_left="40 %", firing_rate="50 kBtu/h")
    assert r["run_ended_by"] == "changed"
    assert r["run_time"] == pytest.approx(2 * (80 - 40) * 21644 / 50e3 * 3600, rel=5e-3)
    assert "until they are changed with 40 % of a full charge left" in r.checks["cylinder"].text
    assert solved(cylinder_left="1 %")["run_time"] == solved()["run_time"]  # the cold ends it before


def test_the_day_is_judged_with_each_gas():
    """In air that ends it for one of them the card of the mean's gas alone held on."""
    r = solved(fuel_blend=WIDE, cylinder_left="20 %")
    day, own = r.part("lighting_day").air_K, solve(Design.from_texts({"fuel_blend": NARROW})).part("lighting_day").air_K
    assert day.high - day.low < own.high - own.low
