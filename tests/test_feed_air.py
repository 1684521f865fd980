"""Air of the room Air and gas: the fan laws, the operating point solved another way, and what holds of every design."""

from dataclasses import replace
from math import isfinite, nextafter, pi

import pytest
from feed_designs import CFM, FT3, INCH, INH2O, judged, part, solved
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from burnercalc import InputErrors
from burnercalc.find.good import texts_of
from burnercalc.physics.plates import thin_plate_K
from burnercalc.settings import BY_KEY

STANDARD_AIR = 0.075 * 0.45359237 / FT3
SHOP_AIR = 0.07636 * 0.45359237 / FT3  # at 60 degF (CoolProp, reference figures)
AIR_M3_S = 15.82 * CFM  # of 100 kBtu/h at phi 1, 60 degF (tests/reference/flows.csv)


def shut_off_parabola_Pa(air_m3_s):
    """4 inH2O shut and 60 cfm free, in standard air; pressure follows the density."""
    return 4 * INH2O * (1 - (air_m3_s / (60 * CFM)) ** 2) * SHOP_AIR / STANDARD_AIR


def test_operating_point_by_another_solver():
    r = solved()
    mixture_over_air = r["mixture_flow"] / r["air_flow"]

    def gap(flow):
        return shut_off_parabola_Pa(flow) - r.part("resistance").pressure_Pa(flow * mixture_over_air)

    assert r["blower_flow"] == pytest.approx(brentq(gap, 1e-6, 60 * CFM), rel=1e-3)
    assert r["blower_pressure"] == pytest.approx(
        r.part("resistance").pressure_Pa(r["blower_flow"] * mixture_over_air), rel=1e-6
    )


def test_air_of_high_fire():
    """15.8 scfm for 100 kBtu/h at phi 1 (reference figures, 0.6 % between fuels): the margin is the parabola's."""
    r = solved()
    assert r["blower_times"] == pytest.approx(shut_off_parabola_Pa(AIR_M3_S) / r["mixture_pressure"], rel=2e-3)


def test_blower_gives_less_pressure_in_thin_air():
    """US Standard Atmosphere 1976: 0.8321 of sea-level pressure at 5000 ft; at one temperature the density too."""
    shut = [
        solved(altitude=height).charts["blower_and_burner"].plot.series["blower"][1][0]
        for height in ("0 ft", "5000 ft")
    ]
    assert shut[1] / shut[0] == pytest.approx(0.8321, abs=5e-5)


def test_points_stand_over_the_two_numbers():
    text = ", ".join(f"{60 * i / 12:g} cfm {4 * (1 - (i / 12) ** 2):.6f} inH2O" for i in range(13))
    two, points = solved(), solved(blower_curve=text, blower_shutoff_pressure="50 inH2O")
    assert points["blower_flow"] == pytest.approx(two["blower_flow"], rel=2e-3)
    assert points["blower_times"] == pytest.approx(two["blower_times"], rel=5e-3)


def test_damper_takes_what_is_to_spare():
    """At high fire in a pipe of 1.610 in; at low fire, 40 % of the air, against what the burner takes there."""
    r = solved()
    velocity = AIR_M3_S / (pi / 4 * (1.610 * INCH) ** 2)
    head = SHOP_AIR * velocity**2 / 2
    spare = (r["blower_times"] - 1) * r["mixture_pressure"]
    assert thin_plate_K(r["damper_open_high"]) * head == pytest.approx(spare, rel=3e-3)
    needed = r.part("resistance").pressure_Pa(0.4 * r.part("stream").mixture_m3_s)
    spare = shut_off_parabola_Pa(0.4 * AIR_M3_S) - needed
    assert thin_plate_K(r["damper_open_low"]) * head * 0.4**2 == pytest.approx(spare, rel=3e-3)
    assert r["damper_open_low"] < r["damper_open_high"] < 1


def test_too_weak_a_blower_has_no_damper():
    r = solved(blower_shutoff_pressure="0.3 inH2O")
    assert r["blower_times"] < 1 and r["damper_open_high"] is None and r["damper_open_low"] is not None
    assert "damper" not in solved(blower_shutoff_pressure="0.1 inH2O", chamber_back_pressure="1 inH2O").checks
    assert solved(blower_free_flow="10 cfm")["blower_times"] == 0


def test_air_of_a_hot_shop_in_the_hills():
    """100 degF against 15 degC, and 0.8321 of the pressure at 5000 ft: 559.67 / 518.67 / 0.8321 of the metered air."""
    blower = solved(ambient_temperature="100 degF", altitude="5000 ft").part("blower")
    metered = AIR_M3_S * 288.15 / 288.706  # 60 degF to 15 degC
    assert blower.high_m3_s == pytest.approx(metered * 559.67 / 518.67 / 0.8321, rel=2e-3)
    assert blower.low_m3_s == pytest.approx(0.4 * blower.high_m3_s)


# ---- chart


def test_chart_of_blower_and_burner():
    r = solved()
    chart, blower = r.charts["blower_and_burner"], r.part("blower")
    plot = chart.plot
    flows, pressures = plot.series["blower"]
    assert flows == pytest.approx([60 * CFM * i / 40 for i in range(41)])
    assert pressures == pytest.approx([shut_off_parabola_Pa(flow) for flow in flows], rel=1e-3, abs=1e-6)
    assert plot.x == (0, pytest.approx(1.05 * 60 * CFM)) and plot.y == (0, pytest.approx(1.2 * pressures[0]))
    asked, taken = plot.series["burner"]
    assert asked == pytest.approx([1.05 * 60 * CFM * i / 40 for i in range(len(asked))])
    assert taken[0] == 0 and taken[-1] <= plot.y[1] < blower.needed_Pa(1.05 * 60 * CFM * len(asked) / 40)
    assert taken[10] == (pytest.approx(r.part("resistance").pressure_Pa(asked[10] * 988.7 / (60 * 15.82)), rel=2e-3))
    (low, high), (low_Pa, high_Pa) = plot.series["fires"]
    assert (low, high) == (pytest.approx(0.4 * AIR_M3_S, rel=1e-3), pytest.approx(AIR_M3_S, rel=1e-3))
    assert high_Pa == r["mixture_pressure"]
    assert low_Pa == pytest.approx(r.part("resistance").pressure_Pa(0.4 * r.part("stream").mixture_m3_s))
    assert plot.mark == (r["blower_flow"], r["blower_pressure"])
    assert chart.sentence == "Blower and burner meet at 37.6 cfm and 2.5 in H₂O; high fire needs 15.8 cfm."


def test_chart_of_a_blower_that_is_too_small():
    """High fire lies beyond the curve and above its pressures: the axes reach to it."""
    plot = solved(blower_free_flow="10 cfm", blower_shutoff_pressure="0.1 inH2O").charts["blower_and_burner"].plot
    high, needed = plot.series["fires"][0][1], plot.series["fires"][1][1]
    assert plot.x[1] == pytest.approx(1.05 * high) and plot.y[1] == pytest.approx(1.2 * needed)


# ---- verdicts

OWN = (("blower_shutoff_pressure", "raise"), ("blower_free_flow", "raise"))
OTHER = (
    ("mix_pipe", "raise"),
    ("port_diameter", "raise"),
    ("firing_rate", "lower"),
)
ASKS = "High fire asks for 15.8 cfm of air at 0.47 in H₂O; the blower has 3.8 in H₂O there"


@pytest.mark.parametrize(
    "margin, verdict, text",
    [
        (1.0, "good", ", 2 times its need; 1.2 or more is enough."),
        (0.2, "good", ", 1.2 times its need; 1.2 or more is enough."),
        (
            0.19,
            "caution",  # in the measure of the number on the first screen
            ", only 1.19 times its need; 1.2 or more is enough. Use larger ports, a larger mix pipe or "
            "a stronger blower.",
        ),
        (
            0.0,
            "caution",
            ", only 1 times its need; 1.2 or more is enough. Use larger ports, a larger mix pipe or a stronger blower.",
        ),
        (
            nextafter(0.0, -1),
            "stop",
            ". It is too weak: with the damper open it brings 15.2 cfm. Use larger ports, a larger mix pipe, a "
            "stronger blower, or less fire.",
        ),
    ],
)
def test_blower_to_spare(margin, verdict, text):
    flow_m3_s = (0.96 if margin < 0 else 2.0) * solved().part("blower").high_m3_s
    point = replace(solved().part("blower").point, flow_m3_s=flow_m3_s)
    found = judged("blower", blower=part("blower", margin=margin, point=point))
    assert found == (verdict, margin, 0.2, ASKS + text, OWN + OTHER)
    by_points = judged(
        "blower", blower=part("blower", margin=margin, point=point), blower_curve=((0.0, 1.0), (1.0, 0.0))
    )
    assert by_points[-1] == (("blower_curve", "choose"), *OTHER)


def test_the_curve_may_end_before_high_fire():
    blower = solved().part("blower")
    blower = replace(blower, point=replace(blower.point, flow_m3_s=0.9 * blower.high_m3_s))
    for last, ends in ((blower.high_m3_s, False), (nextafter(blower.high_m3_s, 0), True)):
        curve = replace(blower.curve, free_m3_s=last)
        verdict, _, _, text, _ = judged("blower", blower=replace(blower, curve=curve, margin=-1.0))
        assert verdict == "stop" and ("the blower's curve ends at 15.8 cfm: take a larger" in text) == ends
    short = solved(blower_free_flow="10 cfm").checks["blower"]
    assert short.text == (
        "The burner asks for 15.8 cfm of air at 0.47 in H₂O; the blower's curve ends at 10 cfm: take a larger blower, "
        "or less fire."
    )
    # More pressure and larger ports were offered: the curve ends where it did.
    assert [change.setting for change in short.changes] == ["blower_free_flow", "firing_rate"]


@pytest.mark.parametrize("crossings, margin, verdict", [(1, 0.5, "good"), (3, 0.5, "caution"), (3, 0.1, "caution")])
def test_a_humped_curve_hunts(crossings, margin, verdict):
    blower = part("blower", margin=margin)
    found = judged("blower", blower=replace(blower, point=replace(blower.point, crossings=crossings)))
    hunts = " Its curve crosses that of the burner more than once: the flow may hunt."
    assert found[0] == verdict and found[3].endswith(hunts) == (crossings > 1 and margin > 0.2)


@pytest.mark.parametrize(
    "share, verdict, text",
    [
        (0.05, "good", "At low fire the damper stands 5 % open; from 5 % on it is set finely."),
        (
            0.04,
            "caution",
            "At low fire the damper stands 4 % open, hard to set finely: use a smaller or slower blower, or put the "
            "damper in a smaller pipe.",
        ),
        (
            0.0001,
            "caution",
            "At low fire the damper stands 0.01 % open, hard to set finely: use a smaller or slower blower, or put the "
            "damper in a smaller pipe.",
        ),
    ],
)
def test_damper_at_low_fire(share, verdict, text):
    cures = (("blower_shutoff_pressure", "lower"), ("low_fire", "raise"))
    assert judged("damper", blower=part("blower", open_low=share)) == (verdict, share, 0.05, text, cures)
    assert judged("damper", blower=part("blower", open_low=None)) is None


# ---- any design


@settings(max_examples=25, deadline=None)
@given(st.floats(0.2, 50), st.floats(1, 2), st.floats(5, 500), st.floats(1, 2))
def test_more_blower_never_lowers_the_margin(pressure, stronger, flow, larger):
    def margin(p, q):
        return solved(blower_shutoff_pressure=f"{p} inH2O", blower_free_flow=f"{q} cfm")["blower_times"]

    assert margin(min(pressure * stronger, 100), flow * larger) >= margin(pressure, flow) - 1e-12


curves = st.lists(st.tuples(st.floats(0.5, 50), st.floats(0, 20)), min_size=1, max_size=6).flatmap(
    lambda steps: st.floats(0.1, 30).map(lambda start: (start, steps))
)


def curve_text(curve):
    start, steps = curve
    flow, parts = 0.0, [f"0 cfm {start} inH2O"]
    for step, pressure in steps:
        flow += step
        parts.append(f"{flow!r} cfm {pressure!r} inH2O")
    return ", ".join(parts)


@settings(max_examples=30, deadline=None, suppress_health_check=[HealthCheck.filter_too_much])
@given(
    st.fixed_dictionaries(
        {},
        optional={
            "blower_curve": curves.map(curve_text),
            "blower_shutoff_pressure": st.floats(0.1, 100).map(lambda x: f"{x} inH2O"),
            "blower_free_flow": st.floats(1, 5000).map(lambda x: f"{x} cfm"),
            "firing_rate": st.floats(1, 3000).map(lambda x: f"{x} kBtu/h"),
            "altitude": st.floats(-1000, 12000).map(lambda x: f"{x} ft"),
            "ambient_temperature": st.floats(-4, 130).map(lambda x: f"{x} degF"),
            "chamber_back_pressure": st.floats(0, 20).map(lambda x: f"{x} inH2O"),
            "low_fire": st.floats(0.05, 1).map(repr),
            "mix_pipe": st.sampled_from(["1/8", "1", "4"]),
        },
    )
)
def test_no_design_breaks_the_air(texts):
    try:
        r = solved(**texts)
    except InputErrors:
        assume(False)
    for answer in r.answers.values():
        if answer.room == "feed":
            assert not isinstance(answer.value, float) or isfinite(answer.value), answer.key
    missing = 1 - r["blower_flow"] / r.part("blower").high_m3_s
    assert (r.checks["blower"].verdict == "stop") == (r["blower_times"] < 1 and missing > 0.03)
    assert (r["damper_open_high"] is None) == (r["blower_times"] < 1)
    for xs, ys in r.charts["blower_and_burner"].plot.series.values():
        assert all(isfinite(v) for v in (*xs, *ys))


def test_one_blower_for_several_carries_the_air_of_all():
    """Four at 100 kBtu/h: a blower of four times the flow does for all what one does for each, but for the branch."""
    alone = solved(burner_count="4", blowers="each")
    for_all = solved(burner_count="4", blower_free_flow="240 cfm")
    assert for_all.part("blower").burners == 4 and alone.part("blower").burners == 1
    shared, own = for_all.part("blower"), alone.part("blower")
    air = own.high_m3_s
    velocity = air / (pi / 4 * (1.610 * INCH) ** 2)
    assert shared.high_m3_s == air and shared.high_Pa == own.high_Pa
    lost = own.curve.pressure_Pa(air, own.air_density_kg_m3) - shared.curve.pressure_Pa(air, own.air_density_kg_m3)
    # Into the branch of a tee: 60 diameters (Crane TP-410) of friction, here 0.023 to 0.032 by Moody's chart.
    assert 1.38 < lost / (SHOP_AIR * velocity**2 / 2) < 1.92


def test_a_blower_that_feeds_one_may_be_too_weak_for_two():
    texts = {"blower_shutoff_pressure": "2 inH2O", "blower_free_flow": "25 cfm"}
    assert solved(**texts).checks["blower"].verdict == "good"
    weak = solved(burner_count="2", **texts).checks["blower"]
    assert weak.verdict == "stop" and weak.text.startswith("One blower feeds 2 burners, 31.6 cfm")
    assert "blowers" in [change.setting for change in weak.changes]
    assert solved(burner_count="2", blowers="each", **texts).checks["blower"].verdict == "good"
    assert (
        solved(burner_count="2", blower_shutoff_pressure="3 inH2O", blower_free_flow="60 cfm").checks["blower"].verdict
        == "good"
    )


def test_one_blower_for_two_is_bought_once_and_one_burner_pays_half():
    two = {"batch_size": "2", "burner_count": "2", "price_blower": "80"}
    lines = {n: solved(**two, blowers=n).part("cost").lines for n in ("one", "each")}
    line = {n: next(one for one in found if one.key == "blower") for n, found in lines.items()}
    assert (line["one"].packs, line["one"].batch_cost, line["one"].used_cost) == (1, 80, 40)
    assert (line["each"].packs, line["each"].batch_cost, line["each"].used_cost) == (2, 160, 80)


def test_the_tap_of_the_mix_pipe_shows_the_air():
    """By hand: burner and damper as at high fire, by the square of the flow; what the tap shows is all behind the mix
    pipe but the head of the stream. No opening to pass, for no flame swells it; air alone is lighter than mixture."""
    r = solved()
    air_m3_s, mixture_m3_s = r.part("blower").high_m3_s, r.part("stream").mixture_m3_s
    density = 101325 * 0.0289644 / (8.314463 * r.design.ambient_temperature)
    mixed = r.part("mixture").cold.density_kg_m3
    head_Pa = mixed / 2 * (mixture_m3_s / (pi / 4 * (1.61 * 0.0254) ** 2)) ** 2
    fire_Pa = r["mixture_pressure"] - r["mix_pipe_pressure_drop"] - head_Pa
    assert r.part("air_proof").fire_Pa == pytest.approx(fire_Pa, rel=1e-3)
    opening_Pa = r["chamber_pressure"]
    given_Pa = 4 * 249.08891 * (1 - (air_m3_s / (60 * CFM)) ** 2) * density / 1.204
    plate_Pa = given_Pa - r["mixture_pressure"]

    def over(flow):
        square = (flow / mixture_m3_s) ** 2 * density / mixed
        takes_Pa = (r["mixture_pressure"] - opening_Pa) * square + plate_Pa * (flow / air_m3_s) ** 2
        return takes_Pa - 4 * 249.08891 * (1 - (flow / (60 * CFM)) ** 2) * density / 1.204

    flow = brentq(over, 1e-6, 60 * CFM)
    tap_Pa = (fire_Pa - opening_Pa) * (flow / mixture_m3_s) ** 2 * density / mixed
    low, value, high = r.part("air_proof").alone_Pa
    # Friction in the ports goes with a power of less than 2: of 4 % less flow that makes 1 %.
    assert value == pytest.approx(tap_Pa, rel=0.02) and 1.0 < flow / air_m3_s < 1.02
    # Ports that take 0.8 to 1.05 of what is reckoned, the air 5 % off either way.
    ports_Pa = r["port_pressure_drop"] * (flow / mixture_m3_s) ** 2 * density / mixed
    assert low == pytest.approx(0.95**2 * (tap_Pa - 0.2 * ports_Pa), rel=0.02)
    assert high == pytest.approx(1.05**2 * (tap_Pa + 0.05 * ports_Pa), rel=0.02)


def test_a_tap_that_shows_too_little_is_read_with_ports_shut():
    """By hand: 21 of 43 ports shut, the 22 left take (43 / 22)^2 = 3.82 times the pressure at the same flow; the air
    falls a little, so by the flow's square."""
    r = solved(firing_rate="40 kBtu/h")
    proof, b = r.part("air_proof"), r.part("blower")
    assert proof.alone_Pa is None and proof.shut == 21 and r["port_count"] == 43
    air = 101325 * 0.0289644 / (8.314463 * r.design.ambient_temperature)
    mixed, flow = r.part("mixture").cold.density_kg_m3, r.part("stream").mixture_m3_s
    opening_Pa = r["chamber_pressure"]
    ports_Pa = ((43 / 22) ** 2 - 1) * r["port_pressure_drop"] * air / mixed
    plate_Pa = b.curve.pressure_Pa(b.high_m3_s) - r["mixture_pressure"]

    def over(at):
        square = (at / flow) ** 2
        takes_Pa = (r["mixture_pressure"] - opening_Pa) * air / mixed + ports_Pa
        return takes_Pa * square + plate_Pa * (at / b.high_m3_s) ** 2 - b.curve.pressure_Pa(at)

    at = brentq(over, 1e-6, 2 * b.high_m3_s)
    tap_Pa = ((proof.fire_Pa - opening_Pa) * air / mixed + ports_Pa) * (at / flow) ** 2
    assert proof.flow_Pa.value == pytest.approx(
        tap_Pa, rel=0.04
    )  # friction in the ports goes with less than the square
    default = solved().part("air_proof")
    assert default.shut == 0 and default.flow_Pa == default.alone_Pa
    weak = solved(blower_shutoff_pressure="0.3 inH2O").part("air_proof")
    assert weak.alone_Pa is None and weak.flow_Pa is None


WEAK = [
    ("0.4 inH2O", "60 cfm"),  # too little pressure: no freer flow is enough
    ("0.9 inH2O", "21 cfm"),
    ("3 inH2O", "12 cfm"),  # its curve ends before high fire
    ("0.1 inH2O", "60 cfm"),  # less than mix pipe or ports take alone
]


@pytest.mark.parametrize(("pressure", "flow"), WEAK)
def test_what_waits_for_the_blower_is_mended_by_what_mends_the_blower(pressure, flow):
    """More ports were offered for the poison in such a fire and mended none of six; each offer now mends the blower."""
    weak = {"blower_shutoff_pressure": pressure, "blower_free_flow": flow}
    r = solved(**weak)
    assert r.checks["blower"].verdict == "stop"
    offered = [(one.setting, one.move) for one in r.checks["blower"].changes]
    for key in ("mixture", "carbon_monoxide", "hot_drift"):
        assert [(one.setting, one.move) for one in r.checks[key].changes] == offered and offered
        assert "aits for" in r.checks[key].text
    for setting, move in offered:
        tried = texts_of(r.design, BY_KEY[setting], move, (1, 2, 4, 8, 16, 32))
        after = [r_of for text in tried if (r_of := taken({**weak, setting: text}))]
        assert any(one.checks["blower"].verdict != "stop" for one in after), setting
    assert (("blower_shutoff_pressure", "raise") in offered) == (flow != "12 cfm")
    wider = {("mix_pipe", "raise"), ("port_diameter", "raise")} & set(offered)
    assert ("larger ports" in r.checks["blower"].text) == bool(wider) == (pressure in ("0.4 inH2O", "0.9 inH2O"))
    assert (("blower_free_flow", "raise") in offered) == (pressure in ("0.9 inH2O", "3 inH2O"))


@pytest.mark.parametrize(
    ("pressure", "flow", "verdict", "freer"),
    [
        ("0.44 inH2O", "60 cfm", "stop", True),  # 0.46 are needed; as near as a hand sets it is no stop
        ("0.42 inH2O", "60 cfm", "stop", False),
        ("0.54 inH2O", "60 cfm", "caution", False),  # and a fifth more for none at all
        ("0.57 inH2O", "60 cfm", "caution", True),
    ],
)
def test_a_freer_flow_is_offered_where_the_pressure_is_enough_for_it(pressure, flow, verdict, freer):
    weak = {"blower_shutoff_pressure": pressure, "blower_free_flow": flow}
    check = solved(**weak).checks["blower"]
    assert check.verdict == verdict
    assert (("blower_free_flow", "raise") in {(one.setting, one.move) for one in check.changes}) == freer
    free = solved(**{**weak, "blower_free_flow": "1000 cfm"}).checks["blower"].verdict
    assert (free != verdict) == freer


def taken(texts):
    try:
        return solved(**texts)
    except InputErrors:
        return None
