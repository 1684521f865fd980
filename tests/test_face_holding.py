"""Whether the flame holds: remembered flashback figures, the worked port, every limit of the checks, and any design."""

from dataclasses import replace
from math import isfinite

import pytest
from designs import worked as solved
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from burnercalc.catalogue import CHECKS as DECLARED
from burnercalc.catalogue.sentences import written
from burnercalc.checks import CHECKS
from burnercalc.checks.judge import VERDICTS
from burnercalc.design import Design
from burnercalc.errors import InputErrors
from burnercalc.parts.holding import holding
from burnercalc.physics.band import Band
from burnercalc.result import solve

MM, KBTU_H = 0.001, 1055.05585262 / 3.6
# A long thin port at 25 degC, so that its stream is smooth and developed: 1/8 in, 12 in long.
LONG = {
    "port_diameter": "1/8 in",
    "block_thickness": "12 in",
    "ambient_temperature": "25 degC",
    "port_wall_temperature": "1200 degF",
}


@pytest.fixture(scope="module")
def default():
    return solved()


def limit_m_s(r, key):
    """A limit of firing rate as the velocity of the mean port."""
    return r[key] / r.part("firing").rate_W * r["mixture_velocity_in_port"]


# --- answers ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "fuel, expected, tolerance",
    [
        # V_min = g_F d / 8 with g_F 400 1/s (natural gas) and 600 1/s (propane) of Lewis and von Elbe, RI 5225
        # (memory): +- 30 %. The constant is fixed to the first with a burning velocity of 0.377 m/s, whose square
        # counts: with the velocity that is worked out it must come out close. Propane is the check.
        ("natural_gas", 0.159, 0.05),
        ("propane", 0.238, 0.30),
    ],
)
def test_flashback_of_a_cold_developed_port(fuel, expected, tolerance):
    r = solved(**LONG, fuel=fuel)
    slower = (r["burning_velocity"] / 0.377) ** 2 if fuel == "natural_gas" else 1.0
    assert limit_m_s(r, "flashback_firing_rate_cold") == pytest.approx(slower * expected, rel=tolerance)
    assert r["flashback_gradient"] == pytest.approx(slower * {"natural_gas": 400, "propane": 600}[fuel], rel=tolerance)


def test_lift_gradient():
    """Methane at phi 1: 1466 1/s, worked from burning velocity and diffusivity of cantera (critical_gradients.csv).

    The gradient goes with the square of the burning velocity, in which natural gas is 3.4 % below Cantera's methane.
    """
    r = solved(ambient_temperature="25 degC", fuel="natural_gas")
    assert r["lift_gradient"] * (0.377 / r["burning_velocity"]) ** 2 == pytest.approx(1466, rel=0.01)
    low, high = r.answers["lift_gradient"].band
    assert low < 1466 < high


def test_lean_flame_lifts_far_sooner_in_open_air():
    """Methane at 0.8, from the same: 759 in burnt gas over 208 at flashback; open air takes 0.8^6.4 = 0.2397 of it."""
    r = solved(fuel="natural_gas", equivalence_ratio="0.8")
    assert r["lift_gradient"] / r["flashback_gradient"] == pytest.approx(0.2397 * 759 / 208, rel=0.005)


def test_lift_of_a_cold_developed_port():
    """Lift at 8V/d = 1466 1/s, methane: 0.582 m/s in a port of 1/8 in, Re 118, the last fifth of it still young."""
    r = solved(**LONG, fuel="natural_gas")
    assert limit_m_s(r, "lift_firing_rate") == pytest.approx(1466 * 0.003175 / 8, rel=0.10)


@pytest.mark.parametrize(
    "texts, expected",
    [
        ({"fuel_blend": "CH4 1"}, 0.375),
        # Cantera's natural gas is 0.996 of its methane (0.3771 and 0.3786 m/s at phi 1).
        ({"fuel": "natural_gas"}, 0.375 * 0.996),
        ({"fuel": "propane"}, 0.42),
    ],
)
def test_burning_velocity_at_room_temperature(texts, expected):
    """Peaks of the reference figures, 0.37 to 0.38 m/s (methane) and 0.42 m/s (propane), +- 8 %, with ours at its peak:
    the published shape of methane is 3 % lower at phi 1 than Cantera's for one peak."""
    found = [
        solved(ambient_temperature="25 degC", equivalence_ratio=f"{phi / 100}", **texts).answers["burning_velocity"]
        for phi in range(101, 116, 2)
    ]
    peak = max(found, key=lambda answer: answer.value)
    assert peak.value == pytest.approx(expected, rel=0.03)
    assert peak.band[0] < expected < peak.band[1]


def test_wall_gradient_of_the_worked_port():
    """37 ports of 1/4 in at 6.637 m/s, Re 3038: between smooth 8V/d = 8361 1/s and rough 16 917 1/s (Blasius)."""
    r = solved(body_length="11 in", rows="1", ports_per_row="37", pattern="straight", edge_margin="1/8 in")
    assert 8361 < r["port_wall_gradient"] < 16917


def test_wall_gradient_of_a_slow_long_port():
    """8V/d, the profile of a developed smooth stream."""
    r = solved(**LONG, firing_rate="10 kBtu/h")
    assert r["port_wall_gradient"] == pytest.approx(8 * r["mixture_velocity_in_port"] / 0.003175, rel=0.05)


def test_quenching_diameter():
    """Propane at 25 degC: 1.5 to 1.65 times 2.0 mm between plates (NACA 1300, memory), 2.9 to 3.3 mm; 10 %."""
    r = solved(ambient_temperature="25 degC")
    assert 0.9 * 0.0029 <= r["quenching_diameter"] <= 1.1 * 0.0033


@pytest.mark.parametrize(
    "texts, sure_mm, most_mm",
    [
        # Figures of methane, propane and butane (data/quenching.csv); other gases are lit like the nearest of these.
        ({"fuel": "natural_gas"}, 6, 8),
        ({"fuel": "propane"}, 8, 10),
        ({"fuel": "butane"}, 8, 10),
        ({"fuel_blend": "C2H6 0.6, CH4 0.4"}, 8, 10),
        ({"fuel_blend": "C3H6 0.6, CH4 0.4"}, 8, 10),
        ({"fuel_blend": "iC4H10 0.6, CH4 0.4"}, 8, 10),
        ({"fuel_blend": "C3H8 0.6, CH4 0.4"}, 8, 10),
        ({"fuel_blend": "C4H10 0.6, CH4 0.4"}, 8, 10),
        ({"fuel_blend": "CH4 0.6, C3H8 0.4"}, 6, 8),
        ({"fuel_blend": "N2 0.45, CH4 0.35, C3H8 0.2"}, 6, 8),  # what does not burn is not counted
    ],
)
def test_cross_lighting_gap(texts, sure_mm, most_mm):
    answer = solved(**texts).answers["cross_light_gap"]
    assert (answer.value, *answer.band) == pytest.approx((sure_mm * MM, sure_mm * MM, most_mm * MM))


def test_hot_ports_flash_back_sooner_and_hotter_ones_more(default):
    rates = [solved(port_wall_temperature=f"{t} degF")["flashback_firing_rate_hot"] for t in (300, 700, 1200, 1700)]
    assert rates == sorted(rates)
    cold, hot = default["flashback_firing_rate_cold"], default["flashback_firing_rate_hot"]
    assert cold < hot == default["flashback_firing_rate"]
    assert default.answers["flashback_firing_rate"].band == default.answers["flashback_firing_rate_hot"].band


def test_hot_limit_is_within_common_practice(default):
    """Lowest fire of a refractory-faced port: 5 to 10 times the velocity of cold flashback (common practice). Careful
    end of the hot limit with a port wall of 1200 degF, worked out by others for 2 to 4 times the gradient: 27 to 38
    kBtu/h."""
    r = solved(port_wall_temperature="1200 degF")
    _, careful = r.answers["flashback_firing_rate_hot"].band
    assert 5 <= careful / r["flashback_firing_rate_cold"] <= 10
    assert 27 <= careful / KBTU_H <= 38 * 1.05


def test_limits_do_not_depend_on_how_hard_the_burner_is_fired():
    """Of one chamber, whatever it drifts to."""
    low, high = solved(firing_rate="50 kBtu/h"), solved(firing_rate="150 kBtu/h")
    assert low["flashback_firing_rate"] == pytest.approx(high["flashback_firing_rate"], rel=1e-3)
    hot = low.part("hot_block")
    assert hot.left_K < high.part("hot_block").left_K
    left_alike = replace(high.part("hot_block"), left_port=hot.left_port)
    left = high.parts.call(holding, hot_block=left_alike).turndown
    assert left.value / low["turndown"] == pytest.approx(3, rel=1e-3)


def test_turndown_is_high_fire_over_the_careful_end_of_the_flashback_rate(default):
    least = default.answers["flashback_firing_rate"]
    rate_W = 100 * KBTU_H
    assert default["turndown"] == pytest.approx(rate_W / least.band[1])
    assert default.answers["turndown"].band == pytest.approx((rate_W / least.band[1], rate_W / least.band[0]))


def test_the_worst_fed_port_sets_the_flashback_rate_and_the_best_fed_the_lift():
    r, even = solved(body_depth="1 3/4 in", inlet_position="end"), solved(body_depth="8 in")
    shares = r.part("shares").ports
    assert min(shares) < 0.97 and max(shares) > 1.01
    for key, share in (("flashback_firing_rate_cold", min(shares)), ("lift_firing_rate", max(shares))):
        assert r[key] * share == pytest.approx(even[key], rel=5e-3)


def test_larger_ports_need_more_fire_to_hold_the_flame_out():
    rates = [solved(port_diameter=f"{n}/32 in")["flashback_firing_rate"] for n in (4, 6, 8, 12)]
    assert rates == sorted(rates)


def by_hand(r, parts):
    """Parts with figures set by hand, and settings."""
    return {name: replace(r.part(name), **value) if isinstance(value, dict) else value for name, value in parts.items()}


def remade(r, **parts):
    """The part `holding` with figures of other parts set by hand."""
    return r.parts.call(holding, **by_hand(r, parts))


def test_ports_without_mixture_have_no_flashback_limit(default):
    made = remade(default, shares={"least": 0.0})
    assert made.cold_W is made.hot_W is made.flashback_W is made.turndown is None and made.lift_W is not None


@pytest.mark.parametrize("missing", ["cold", "hot"])
def test_one_limit_that_is_not_found_leaves_no_flashback_rate(default, monkeypatch, missing):
    def limits_m_s(gas, shop, phi, diameter_m, length_m, wall_temp_K=None, left=None):
        state = "cold" if wall_temp_K is None else "hot"
        return (None if state == missing else band(0.5)), band(2.0)

    monkeypatch.setattr("burnercalc.parts.holding.limits_m_s", limits_m_s)
    made = remade(default)
    assert [made.cold_W is None, made.hot_W is None] == [missing == "cold", missing == "hot"]
    assert made.flashback_W is None and made.turndown is None


def test_the_worse_of_cold_and_hot_is_the_flashback_rate(default, monkeypatch):
    """Each end of the band by itself."""
    limits = {"cold": Band(0.2, 0.5, 0.6), "hot": Band(0.3, 0.4, 0.7)}
    monkeypatch.setattr(
        "burnercalc.parts.holding.limits_m_s",
        lambda *port: (limits["cold" if len(port) == 5 else "hot"], band(2.0)),
    )
    made = remade(default)
    assert made.flashback_W == (made.hot_W.low, made.cold_W.value, made.hot_W.high)


# --- checks: just inside and just outside each limit, and every sentence ----------------------------------------------


def judged(r, key, **parts):
    """(verdict, value, limit, text, changes) of a check, with figures of some parts set by hand."""
    found = r.parts.call(CHECKS[key], **by_hand(r, parts))
    text = " ".join(written(DECLARED[key].cases[case], found.slots, "in") for case in found.cases)
    cures = DECLARED[key].cures if found.cures is None else found.cures
    return found.verdict, found.value, found.limit, text, cures


def band(value):
    return Band(0.8 * value, value, 1.3 * value)


HOLD_OUT = (("low_fire", "raise"), ("port_diameter", "lower"), ("ports_per_row", "lower"), ("firing_rate", "raise"))


KEEP = "Keep low fire higher, or use smaller or fewer ports."
MAY = (
    "At low fire the flame {} enter {} ports: low fire is 40 kBtu/h; most likely it runs back below {} kBtu/h, at "
    "worst below {} kBtu/h. "
)


@pytest.mark.parametrize("state", ["cold", "hot"])
@pytest.mark.parametrize(
    "likely, careful, verdict, text",
    [
        (
            10,
            20,
            "good",
            "The flame stays out of {state} ports: low fire is 40 kBtu/h, 2 times the 20 kBtu/h below which "
            "it may run back.",
        ),
        (
            30,
            32,  # "1.0 times" told no margin
            "good",
            "The flame stays out of {state} ports: low fire is 40 kBtu/h, 25 % above the 32 kBtu/h below which it may "
            "run back.",
        ),
        (30, 39.99, "good", None),
        (30, 40.01, "caution", None),
        (20, 50, "caution", MAY.format("may", "{state}", 20, 50) + KEEP),
        (39.99, 50, "caution", None),
        (40.01, 50, "stop", None),
        (50, 80, "stop", MAY.format("can", "{state}", 50, 80) + KEEP),
    ],
)
def test_flashback(default, state, likely, careful, verdict, text):
    """Good from the careful end of the band on, a stop below its middle. Low fire is 40 kBtu/h."""
    limit = Band(5 * KBTU_H, likely * KBTU_H, careful * KBTU_H)
    parts = {"holding": {f"{state}_W": limit}, "firing": {"low_W": 40 * KBTU_H}}
    found = judged(default, f"flashback_{state}", **parts)
    assert found[:3] == (verdict, pytest.approx(40 / careful), 1.0) and found[4] == HOLD_OUT
    near = " That is at the mixture set: nearer to 1.15 a flame runs back sooner."
    only_just = state == "hot" and verdict == "good" and 40 / careful < 2
    assert text is None or found[3] == text.format(state=state) + (near if only_just else "")


def test_low_fire_is_no_cure_where_high_fire_too_may_run_back(default):
    """High fire is 100 kBtu/h: it was told to keep low fire higher at a limit of 123."""

    def found(careful):
        parts = {"holding": {"hot_W": Band(5 * KBTU_H, 70 * KBTU_H, careful * KBTU_H)}}
        return judged(default, "flashback_hot", firing={"low_W": 40 * KBTU_H}, **parts)

    assert found(99)[4] == HOLD_OUT and found(99)[3].startswith("At low fire")
    assert found(123)[0] == "stop" and found(123)[3:] == (
        "Even at high fire, 100 kBtu/h, the flame may enter hot ports: most likely it runs back below 70 kBtu/h, at "
        "worst below 123 kBtu/h. Use smaller or fewer ports, or more fire.",
        HOLD_OUT[1:],
    )


def test_what_cannot_be_made_is_told_before_what_burns_badly():
    """40 ports in a row run into one another: the line on top spoke of low fire."""
    result = solve(Design.from_texts({"ports_per_row": "40"}))
    assert [check.key for check in result.ranked()[:2]] == ["web", "flashback_hot"]
    assert {check.verdict for check in result.ranked()[:2]} == {"stop"}


@pytest.mark.parametrize("state", ["cold", "hot"])
def test_no_flashback_limit_is_a_stop(default, state):
    def found(least):
        return judged(default, f"flashback_{state}", holding={f"{state}_W": None}, shares={"least": least})

    assert found(0.0) == (
        "stop",
        None,
        None,
        "Some ports get no mixture: the flame can enter them at any firing rate. Make the way along the plenum wider.",
        (("body_depth", "raise"), ("grip", "lower")),
    )
    assert found(0.9)[3:] == (
        f"For this mixture no flashback limit of {state} ports is known. Choose another mixture.",
        (("equivalence_ratio", "choose"),),
    )


HOT = (
    " Once the chamber walls are above 1400 °F they light it again, and lifting is no fault. While they are "
    "cooler a flame that lifts is going out: gas off."
)


@pytest.mark.parametrize(
    "over_low, verdict, text",
    [
        (
            1.0,
            "good",
            "A cold flame holds up to 40 kBtu/h at least, low fire is 40 kBtu/h; more lifts it until the face glows.",
        ),
        (
            0.99,
            "note",
            "A cold flame may lift above 39.6 kBtu/h, less than low fire (40 kBtu/h): light it by the lighting card.",
        ),
        (
            0.0201,
            "note",
            "A cold flame may lift above 0.804 kBtu/h, less than low fire (40 kBtu/h): light it by ",
        ),
    ],
)
def test_lift(default, over_low, verdict, text):
    low_W = default.part("firing").low_W
    lift_W = None if over_low is None else over_low * low_W
    found = judged(default, "lift", holding={"lift_W": lift_W and Band(lift_W, 2 * lift_W, 3 * lift_W)})
    assert found[:3] == (verdict, lift_W, low_W) and found[4] == (("low_fire", "lower"), ("port_diameter", "raise"))
    assert found[3].startswith(text) and found[3].endswith(HOT)


@pytest.mark.parametrize("over_low", [0.0199, None])
def test_what_hot_walls_alone_keep_alight_is_a_caution(default, over_low):
    low_W = default.part("firing").low_W
    lift_W = None if over_low is None else over_low * low_W
    found = judged(default, "lift", holding={"lift_W": lift_W and Band(lift_W, 2 * lift_W, 3 * lift_W)})
    assert found[0] == "caution" and found[3].startswith("Next to no cold flame holds on these ports at this mixture.")
    assert "alone keep low fire (40 kBtu/h) alight" in found[3] and ("equivalence_ratio", "raise") in found[4]


@pytest.mark.parametrize("phi, lift, burns", [(0.55, "caution", "caution"), (0.6, "caution", "caution"),
                                              (0.7, "caution", "good"), (0.8, "note", "good")])  # fmt: skip
def test_a_lean_mixture_that_only_hot_walls_keep_alight_is_told(phi, lift, burns):
    """Propane's lean limit is 0.51; at 0.70 a cold flame of 1/4 in ports lifts by the law from 1 % of low fire on."""
    checks = solved(equivalence_ratio=f"{phi}", firing_rate="100 kBtu/h").checks
    assert (checks["lift"].verdict, checks["flammable"].verdict) == (lift, burns)


def test_a_cold_flame_that_lifts_is_a_note_at_most():
    """At practical loadings the wall gradient is far over Reed's limit; such burners hold by the hot face (reference
    2.5)."""
    for texts in ({}, {"equivalence_ratio": "0.8"}, {"firing_rate": "200 kBtu/h"}, {"low_fire": "100 %"}):
        check = solved(**texts).checks["lift"]
        assert not check.fault and "no fault" in check.text


def test_lifting_is_no_fault_only_where_the_walls_light_the_gas_again():
    """1400 degF (760 degC): NFPA 86, and 750 degC in EN 746-2 (memory); 50 degF either way of it it is neither."""
    assert solved(chamber_temperature="1349 degF", work_temperature="1250 degF").checks["lift"].verdict == "stop"
    check = solved(chamber_temperature="1399 degF", work_temperature="1300 degF").checks["lift"]
    assert check.verdict == "caution"
    assert check.text.endswith(
        "This chamber works at 1399 °F, below the 1400 °F at which its walls would light it again: a flame that lifts "
        "here is going out. Turn the fire down, or shut the gas."
    )
    near = solved(chamber_temperature="1401 degF", work_temperature="1300 degF").checks["lift"]
    assert near.verdict == "caution" and near.text.endswith("Run it some 50 °F hotter, or with less fire.")
    far = solved(chamber_temperature="1451 degF", work_temperature="1300 degF").checks["lift"]
    assert far.verdict == "note" and "no fault" in far.text


BURNS = "The mixture burns from 0.60 (lean) to 2.00 (rich); set is {:.2f}, and a hand slips by 0.03{}"


@pytest.mark.parametrize(
    "phi, verdict, limit, text, move",
    [
        (0.629, "stop", 0.6, ": it does not burn cold.", "raise"),
        (0.631, "caution", 0.6, ", close to where it goes out: make it richer.", "raise"),
        (0.719, "caution", 0.6, ", close to where it goes out: make it richer.", "raise"),
        (0.721, "good", 0.6, ".", "raise"),  # 1.15 x 0.60 = 0.69
        (0.999, "good", 0.6, ".", "raise"),
        (1.0, "good", 0.6, ".", "raise"),
        (1.969, "good", 2.0, ".", "lower"),
        (1.971, "stop", 2.0, ": it does not burn cold.", "lower"),
    ],
)
def test_flammable(default, phi, verdict, limit, text, move):
    found = judged(default, "flammable", holding={"lean": 0.6, "rich": 2.0}, equivalence_ratio=phi)
    assert found == (verdict, phi, limit, BURNS.format(phi, text), (("equivalence_ratio", move),))


@pytest.mark.parametrize("phi, move", [(0.95, "lower"), (0.5, "raise")])
def test_a_gas_that_burns_only_lean_is_cured_towards_where_it_burns(default, phi, move):
    found = judged(default, "flammable", holding={"lean": 0.6, "rich": 0.9}, equivalence_ratio=phi)
    assert found[0] == "stop" and found[4] == (("equivalence_ratio", move),)


def test_flammable_limits_of_propane(default):
    """2.1 and 9.5 % of gas (NFPA 497) at 23.87 of air to one of gas: 0.512 and 2.505."""
    made = default.part("holding")
    assert (made.lean, made.rich) == pytest.approx((0.021 / 0.979 * 23.866, 0.095 / 0.905 * 23.866), rel=1e-3)


JUMP = "The flame must jump {} from port to port; "


@pytest.mark.parametrize(
    "step_mm, diameter_mm, verdict, text",
    [
        (10.0, 4.0, "good", JUMP.format("1/4 in") + "it does."),  # 6 mm over a pitch of 2.5 diameters
        (8.999, 3.0, "good", None),  # 6 mm is sure
        (
            10.01,
            4.0,
            "note",
            "The flame must jump 1/4 in from port to port, as in many good faces; up to 1/4 in or a pitch of 2.5 "
            "diameters is sure. Light slowly and see that every port burns.",
        ),
        (14.99, 3.0, "note", None),  # 12 mm, half as much again as the most
        (
            15.01,
            3.0,
            "caution",
            JUMP.format("15/32 in") + "up to 1/4 in or a pitch of 2.5 diameters is sure. Set them closer, light slowly "
            "and see that every port burns.",
        ),
        (20.0, 10.0, "good", None),  # 10 mm, but two diameters only
        (19.0, 3.0, "caution", None),  # 16 mm, twice the most
        (
            19.1,
            3.0,
            "stop",
            JUMP.format("5/8 in") + "5/16 in is about the most. Ports that do not light let gas into the chamber: set "
            "them closer.",
        ),
    ],
)
def test_cross_light(default, step_mm, diameter_mm, verdict, text):
    gaps = {"step_m": step_mm * MM, "cross_light_m": Band(0.006, 0.006, 0.008)}
    found = judged(default, "cross_light", crossing=gaps, face={"port_diameter_m": diameter_mm * MM})
    assert found[:3] == (verdict, pytest.approx((step_mm - diameter_mm) * MM), 0.006)
    assert text in (None, found[3]) and found[4] == (("ports_per_row", "raise"), ("rows", "raise"))


def test_a_second_row_is_no_cure_for_a_single_one():
    one, two = (solve(Design.from_texts({"rows": rows, "ports_per_row": "8"})).checks["cross_light"] for rows in "12")
    assert [change.setting for change in one.changes] == ["ports_per_row"] and two.value > one.value


def test_cross_light_of_the_default_face(default):
    """Over half the port pitch and the row pitch, by hand: hypot(7/16, 1/2) - 1/4 in."""
    gap_m = ((7 / 16) ** 2 + 0.25) ** 0.5 * 0.0254 - 0.00635
    assert default.checks["cross_light"].value == pytest.approx(gap_m)


@pytest.mark.parametrize(
    "diameter_mm, text",
    [
        (
            2.9,
            "Ports of 7/64 in do not stop a flame (cold ones of 1/8 in would): only the speed of the mixture keeps it "
            "out.",
        ),
        (
            2.8,
            "Ports this small stop a flame while they are cold, not once they are hot: then only the speed of the "
            "mixture keeps it out.",
        ),
    ],
)
def test_quenching_is_no_cure(default, diameter_mm, text):
    sizes = {"crossing": {"quenching_m": Band(0.0028, 0.0032, 0.0036)}, "face": {"port_diameter_m": diameter_mm * MM}}
    assert judged(default, "quenching", **sizes) == ("good", diameter_mm * MM, 0.0032, text, ())


# --- the map ----------------------------------------------------------------------------------------------------------


def test_stability_map_holds_the_operating_line():
    r = solved(low_fire="25 %")
    chart = r.charts["stability_map"]
    plot = chart.plot
    velocity = r["mixture_velocity_in_port"]
    assert plot.series["operating"] == ((1.0, 1.0), (velocity / 4, velocity)) and plot.mark == (1.0, velocity)
    assert plot.x == (0.5, 1.6) and (chart.declared.x.dimension, chart.declared.y.dimension) == ("mixture", "speed")
    # 5.713 m/s is 18.7 ft/s, a quarter of it 4.69.
    assert chart.sentence.endswith("a hot face holds it. The line is low to high fire, 4.69 ft/s to 18.7 ft/s.")
    assert set(plot.series) == {series.key for series in chart.declared.series}
    for key in ("flashback_cold", "flashback_hot", "lift"):
        ratios, lows, highs = plot.series[f"{key}_band"]
        _, values = plot.series[key]
        assert len(ratios) == 17 and (ratios[0], ratios[16]) == (0.5, 1.6)
        assert all(low <= value <= high for low, value, high in zip(lows, values, highs, strict=True))
        # the curve passes through the design's own limit
        at = values[min(range(17), key=lambda i: abs(ratios[i] - 1.0))]
        answer = {"lift": "lift_firing_rate"}.get(key, f"flashback_firing_rate_{key.rpartition('_')[2]}")
        assert at == pytest.approx(limit_m_s(r, answer), rel=0.15)


@pytest.mark.parametrize("firing_rate, higher", [("100 kBtu/h", "operating"), ("1 kBtu/h", "flashback_hot_band")])
def test_stability_map_leaves_air_above_its_lines(firing_rate, higher):
    plot = solved(firing_rate=firing_rate).charts["stability_map"].plot
    top = max(plot.series[higher][-1])
    assert plot.y == (0, pytest.approx({"operating": 1.3, "flashback_hot_band": 1.5}[higher] * top))


# --- any design -------------------------------------------------------------------------------------------------------

settings_of_flame = st.fixed_dictionaries(
    {},
    optional={
        "fuel": st.sampled_from(["propane", "natural_gas", "butane"]),
        "fuel_blend": st.sampled_from(["", "C3H6 0.5, iC4H10 0.5", "C2H6 0.6, CO2 0.4"]),
        "equivalence_ratio": st.floats(0.5, 1.6).map(repr),
        "firing_rate": st.floats(1, 3000).map(lambda x: f"{x} kBtu/h"),
        "low_fire": st.floats(0.05, 1).map(repr),
        "port_wall_temperature": st.floats(200, 2400).map(lambda x: f"{x} degF"),
        "ambient_temperature": st.floats(-4, 130).map(lambda x: f"{x} degF"),
        "altitude": st.floats(-1000, 12000).map(lambda x: f"{x} ft"),
        "port_diameter": st.integers(2, 32).map(lambda n: f"{n}/32 in"),
        "block_thickness": st.integers(8, 96).map(lambda n: f"{n / 8} in"),
        "ports_per_row": st.integers(2, 20).map(str),
        "rows": st.integers(1, 7).map(str),
        "body_depth": st.integers(6, 30).map(lambda n: f"{n / 4} in"),
        "inlet_position": st.sampled_from(["centre", "end"]),
    },
)


@settings(max_examples=30, deadline=None, suppress_health_check=[HealthCheck.filter_too_much])
@given(settings_of_flame)
def test_no_design_breaks_the_flame(texts):
    try:
        r = solved(**texts)
    except InputErrors:
        assume(False)
    for key, answer in r.answers.items():
        if answer.room != "face":
            continue
        assert not isinstance(answer.value, float) or isfinite(answer.value), key
        if answer.band and answer.value is not None:
            low, high = answer.band
            assert low <= answer.value * (1 + 1e-9) and answer.value <= high * (1 + 1e-9), key
    least = r["flashback_firing_rate"]
    low_fire = r.part("firing").rate_W * r.design.low_fire
    worst = max((r.checks[f"flashback_{state}"].verdict for state in ("cold", "hot")), key=VERDICTS.index)
    assert (worst == "stop") == (least is None or least > low_fire)
    if worst == "good":
        assert low_fire >= r.answers["flashback_firing_rate"].band[1]


@pytest.mark.parametrize("fuel", ["propane", "natural_gas"])
def test_a_mixture_nearer_to_the_one_that_is_named_runs_back_sooner(fuel):
    """What the check says of the mixture where it only just passes."""

    def worst_W(mixture):
        return solve(Design.from_texts({"fuel": fuel, "equivalence_ratio": mixture})).part("holding").hot_W.high

    rates = [worst_W(mixture) for mixture in ("0.85", "0.95", "1.05", "1.15")]
    assert rates == sorted(rates) and rates[-1] > worst_W("1.2")
    said = solve(Design.from_texts({"fuel": fuel})).checks["flashback_hot"].text
    assert "nearer to 1.15" in said
