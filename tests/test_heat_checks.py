"""The verdicts of the room Heat: each just inside and just outside its limit, its sentence word by word, its cures."""

from dataclasses import replace
from math import inf, nextafter

import pytest
from test_heat import BTU_H, solved

from burnercalc import catalogue
from burnercalc.catalogue import said
from burnercalc.catalogue.sentences import written
from burnercalc.checks import CHECKS
from burnercalc.parts.flame import Flame
from burnercalc.parts.need import Need

NO_FLAME, NO_NEED = Flame(*[None] * 8), Need(*[None] * 7)
KBTU_H = 1000 * BTU_H


def judged(key, r=None, **given):
    """(verdict, value, limit, text, cures) of a design, some of its parts and settings given."""
    r = r or solved()
    found = r.parts.call(CHECKS[key], **given)
    declared = catalogue.CHECKS[key]
    text = " ".join(written(declared.cases[case], found.slots, r.design.units) for case in found.cases)
    return found.verdict, found.value, found.limit, text, declared.cures if found.cures is None else found.cures


def part(name, **fields):
    return replace(solved().part(name), **fields)


COOLER, RAISE, LOWER = (
    ("chamber_temperature", "lower"),
    ("equivalence_ratio", "raise"),
    ("equivalence_ratio", "lower"),
)


@pytest.mark.parametrize(
    "available, hold_W, verdict, text",
    [
        (0.1, 1.0, "good", "At 2250 °F 10 % of the gross heat stays in the chamber."),
        (
            0.099,
            1.0,
            "caution",
            "At 2250 °F 9.9 % of the gross heat stays in the chamber; with so little a small slip of the mixture loses "
            "it. Lower the chamber temperature, or bring the equivalence ratio nearer to 1.",
        ),
        (
            0.005,
            None,
            "stop",
            "The flame cannot hold 2250 °F: at 3140 °F it would leave nothing in the chamber. Lower the chamber "
            "temperature, or bring the equivalence ratio nearer to 1.",
        ),
        (
            None,
            None,
            "stop",
            "No flame was found for this mixture of gas and air: move the equivalence ratio towards 1.",
        ),
    ],
)
def test_flame_holds(available, hold_W, verdict, text):
    flame = NO_FLAME if available is None else part("flame", available=available, temp_K=2000.0)
    for ratio, cure in ((0.99, RAISE), (1.0, LOWER)):
        assert judged("flame_holds", flame=flame, need=part("need", hold_W=hold_W), equivalence_ratio=ratio) == (
            verdict,
            available,
            0.1,
            text,
            (COOLER, cure),
        )


@pytest.mark.parametrize(
    "texts, verdict",
    [
        ({}, "good"),
        ({"equivalence_ratio": "0.6", "chamber_temperature": "2400 degF"}, "caution"),
        ({"equivalence_ratio": "0.5", "chamber_temperature": "2300 degF"}, "stop"),
    ],
)
def test_flame_holds_of_designs(texts, verdict):
    check = solved(**texts).checks["flame_holds"]
    assert (check.verdict, check.changes[0].setting) == (verdict, "chamber_temperature")


LITTLE_LEAN = "A little lean: it scales the work somewhat and makes little carbon monoxide. Ventilate all the same."
NEUTRAL = (
    "Neutral mixture, next to nothing left over. It still makes some carbon monoxide; if all of it stayed in the room, "
    "212 cfm of fresh air would be needed: ventilate, and hang an alarm."
)
OUTDOORS = (
    "Draw it outdoors under a hood, hang a carbon monoxide alarm, never run this in a closed room. A lower equivalence "
    "ratio makes far less."
)


@pytest.mark.parametrize(
    "ratio, verdict, limit, cure, text",
    [
        (
            "0.89",
            "caution",
            0.9,
            RAISE,
            "Lean: 12.4 % more air than burns. It scales the work and carries heat out of the door: raise the "
            "equivalence ratio to 0.9 or more.",
        ),
        ("0.9", "good", 0.9, RAISE, LITTLE_LEAN),
        ("0.979", "good", 0.9, RAISE, LITTLE_LEAN),
        ("0.98", "good", 0.9, RAISE, NEUTRAL),
        ("1", "good", 1.02, LOWER, NEUTRAL),
        ("1.02", "good", 1.02, LOWER, NEUTRAL),
        (
            "1.021",
            "caution",
            1.02,
            LOWER,
            "Rich: the gas that leaves holds 1 % carbon monoxide, a deadly poison without smell; if all of it stayed "
            "in the room, 212 cfm of fresh air would be needed. " + OUTDOORS,
        ),
    ],
)
def test_mixture(ratio, verdict, limit, cure, text):
    given = {"firing": part("firing", fresh_air_m3_s=0.1), "flame": part("flame", co_dry=0.01)}
    assert judged("mixture", solved(equivalence_ratio=ratio), **given) == (
        verdict,
        float(ratio),
        limit,
        text,
        (cure,),
    )


def test_mixture_without_a_flame():
    given = {"flame": NO_FLAME, "firing": part("firing", fresh_air_m3_s=None)}
    assert judged("mixture", **given)[3] == (
        "Neutral mixture, next to nothing left over. It still makes some carbon monoxide: ventilate, and hang an alarm."
    )
    assert judged("mixture", solved(equivalence_ratio="1.3"), **given)[3] == (
        "Rich: the gas that leaves holds carbon monoxide, a deadly poison without smell. " + OUTDOORS
    )


@pytest.mark.parametrize(
    "temps, verdict, value, limit, text",
    [
        (
            (1450.0, 1449.0, 400.0),
            "good",
            1449.0,
            1450.15,
            "Every layer stays below its service limit; nearest is layer 2 (ceramic fibre blanket 8 lb/ft3): 2149 °F "
            "of 2151 °F.",
        ),
        ((1450.0, 1450.15, 400.0), "good", 1450.15, 1450.15, None),
        (
            (1500.0, 1451.0, 400.0),
            "stop",
            1451.0,
            1450.15,
            "Layer 2 (ceramic fibre blanket 8 lb/ft3) gets 2152 °F on its hot side, above its limit of 2151 °F: it "
            "shrinks, cracks or melts. Put more or a better insulating layer before it, choose a material with a "
            "higher limit, or run cooler.",
        ),
        ((1923.0, 1400.0, 1500.0), "stop", 1923.0, 1922.15, None),
    ],
)
def test_lining_limit(temps, verdict, value, limit, text):
    """1649 and 1177 degC: class data of dense castable and of fibre blanket."""
    found = judged("lining_limit", chamber=part("chamber", layer_temps_K=temps))
    assert found[:2] == (verdict, value) and found[2] == pytest.approx(limit)
    assert text in (None, found[3]) and found[4] == (("lining", "choose"), COOLER)


def test_shell_touch():
    """EN ISO 13732-1: bare metal touched for one second burns from 65 degC."""
    assert judged("shell_touch", chamber=part("chamber", shell_temp_K=338.15)) == (
        "good",
        338.15,
        338.15,
        "The shell gets 149 °F, below the 149 °F that burn skin at a touch.",
        (("lining", "choose"),),
    )
    assert judged("shell_touch", chamber=part("chamber", shell_temp_K=339.0))[::3] == (
        "caution",
        "The shell gets 151 °F; above 149 °F bare metal burns skin at a touch. Guard it, keep hose, cable and anything "
        "that burns away from it, or line it thicker.",
    )
    assert judged("shell_touch", chamber=part("chamber", shell_temp_K=900.0))[0] == "caution"


MORE = (("firing_rate", "raise"), ("burner_count", "raise"))
SLOWER, LESS_WORK = (("heat_up_time", "raise"), COOLER), (("work_rate", "lower"), COOLER)
HEATING, WORKING = ("heat-up", SLOWER), ("working", LESS_WORK)
TOO_LITTLE = "Raise the firing rate or use more burners, or "


def rate_for_need(installed_kBtu_h, decided, burners, taken_from="setting"):
    """Needed 100, to work 80, to hold 40 kBtu/h, within half an hour at 2250 degF."""
    return judged(
        "rate_for_need",
        firing=part("firing", installed_W=installed_kBtu_h * KBTU_H, taken_from=said(taken_from)),
        need=part("need", needed_W=100 * KBTU_H, working_W=80 * KBTU_H, hold_W=40 * KBTU_H, decided_by=decided),
        burner_count=burners,
    )


@pytest.mark.parametrize(
    "installed, decided, burners, verdict, text",
    [
        (100, HEATING, 1, "good", "100 kBtu/h is enough: heating up in 30 min takes 100 kBtu/h."),
        (
            100 * (1 - 0.9e-9),
            HEATING,
            4,
            "good",
            "100 kBtu/h is enough: heating up in 30 min takes 100 kBtu/h, 25 kBtu/h for each of 4 burners.",
        ),
        (200, WORKING, 1, "good", "200 kBtu/h is enough: working takes 100 kBtu/h."),
        (
            201,
            WORKING,
            1,
            "good",
            "201 kBtu/h is enough: working takes 100 kBtu/h. It is far more than that; auto would take the rate from "
            "the chamber.",
        ),
        (
            150,
            WORKING,
            2,
            "good",
            "150 kBtu/h is enough: working takes 100 kBtu/h, 50 kBtu/h for each of 2 burners.",
        ),
        (
            100 * (1 - 1.1e-9),
            HEATING,
            1,
            "caution",
            f"100 kBtu/h is too little: heating up in 30 min takes 100 kBtu/h. {TOO_LITTLE}allow more time.",
        ),
        (
            90,
            HEATING,
            2,
            "caution",
            "90 kBtu/h is too little: heating up in 30 min takes 100 kBtu/h, 50 kBtu/h for each of 2 burners. "
            f"{TOO_LITTLE}allow more time.",
        ),
        (
            90,
            WORKING,
            1,
            "caution",
            f"90 kBtu/h is too little: working takes 100 kBtu/h. {TOO_LITTLE}put less work through.",
        ),
        (
            40,
            WORKING,
            2,
            "caution",
            "40 kBtu/h is too little: working takes 100 kBtu/h, 50 kBtu/h for each of 2 burners. "
            f"{TOO_LITTLE}put less work through.",
        ),
    ],
)
def test_rate_for_need(installed, decided, burners, verdict, text):
    found = rate_for_need(installed, decided[0], burners)
    assert found == (verdict, installed * KBTU_H, 100 * KBTU_H, text, MORE + decided[1])


def test_rate_that_cannot_even_hold():
    for decided in ("heat-up", "working"):
        assert rate_for_need(39.9, decided, 1) == (
            "stop",
            39.9 * KBTU_H,
            100 * KBTU_H,
            "39.9 kBtu/h cannot even hold the empty chamber at 2250 °F, which takes 40 kBtu/h: raise the firing rate "
            "or use more burners, lower the chamber temperature, close the opening or line it thicker.",
            (*MORE, COOLER, ("opening_area", "lower"), ("lining", "choose")),
        )


@pytest.mark.parametrize(
    "decided, burners, text",
    [
        ("heat-up", 1, "heating up in 30 min takes 100 kBtu/h. Working takes 80 kBtu/h."),
        (
            "heat-up",
            2,
            "heating up in 30 min takes 100 kBtu/h, 50 kBtu/h for each of 2 burners. Working takes 80 kBtu/h.",
        ),
        ("working", 1, "working takes 100 kBtu/h."),
        ("working", 2, "working takes 100 kBtu/h, 50 kBtu/h for each of 2 burners."),
    ],
)
def test_rate_taken_from_the_chamber(decided, burners, text):
    found = rate_for_need(300, decided, burners, taken_from="chamber")
    assert found[0] == "good" and found[3] == "The firing rate is taken from the chamber: " + text


def test_no_rate_where_the_flame_leaves_nothing():
    text = "No firing rate brings the chamber to 2250 °F: the flame leaves nothing in it."
    cures = (COOLER, ("equivalence_ratio", "choose"))
    assert judged("rate_for_need", need=NO_NEED, firing=part("firing", installed_W=5.0)) == (
        "stop",
        None,
        5.0,
        text,
        cures,
    )
    assert judged("heat_up_reach", need=NO_NEED) == ("stop", None, 8e6, text, cures)


@pytest.mark.parametrize(
    "texts, verdict",
    [
        ({}, "good"),
        ({"firing_rate": "60 kBtu/h"}, "caution"),
        ({"firing_rate": "15 kBtu/h"}, "stop"),
        ({"firing_rate": "50 kBtu/h", "burner_count": "2"}, "good"),
        ({"firing_rate": "auto"}, "good"),
        ({"equivalence_ratio": "0.5", "chamber_temperature": "2350 degF"}, "stop"),
    ],
)
def test_rate_for_need_of_designs(texts, verdict):
    r = solved(**texts)
    check = r.checks["rate_for_need"]
    assert (check.verdict, check.limit) == (verdict, r["firing_rate_needed"] or 1e5 * BTU_H)


@pytest.mark.parametrize(
    "rate_W, minutes, verdict, text",
    [
        (8e6, 5, "good", "Heating up in 5 min is within what so large a chamber can burn."),
        (1.0, 4.99, "caution", "Heating up in 4.99 min cracks dense lining; 5 min or more is usual."),
        (
            nextafter(8e6, inf),
            4.99,
            "stop",
            "Heating up in 4.99 min is out of reach: it asks for 773 kBtu/h/ft³ of chamber, and no more than 770 "
            "kBtu/h/ft³ burns well in one. Allow more time, or use a lighter lining.",
        ),
        (1.6e7, 60, "stop", None),
    ],
)
def test_heat_up_reach(rate_W, minutes, verdict, text):
    """More than 8 MW/m3 burns out of the door, faster than 5 minutes cracks dense lining (common practice)."""
    given = {"need": part("need", heat_up_W=2 * rate_W), "chamber": part("chamber", volume_m3=2.0)}
    found = judged("heat_up_reach", heat_up_time=60.0 * minutes, **given)
    assert found[:3] == (verdict, rate_W, 8e6) and text in (None, found[3])
    assert found[4] == (("heat_up_time", "raise"), ("lining", "choose"))


USUAL = " of chamber; 97 kBtu/h/ft³ to 770 kBtu/h/ft³ is usual in small forges and furnaces."
LITTLE = " So little fire from the {} may not reach a forging heat: {} or make the chamber smaller."
MUCH = " So much fire from the {} burns out of the door: {} or make the chamber larger."
BY_RATE = "setting", ("raise the firing rate", MORE), ("lower the firing rate", (("firing_rate", "lower"),))
BY_CHAMBER = (
    "chamber",
    ("ask for a shorter heat-up", (("heat_up_time", "lower"),)),
    ("allow more time to heat up, use a lighter lining", (("heat_up_time", "raise"), ("lining", "choose"))),
)


def firing_per_volume(per_volume_W_m3, temp_K, taken_from="setting", burners=1):
    fire = part("firing", per_volume_W_m3=per_volume_W_m3, taken_from=said(taken_from))
    return judged("firing_per_volume", firing=fire, chamber_temperature=temp_K, burner_count=burners)


def test_fire_for_the_size_of_the_chamber():
    """1 to 8 MW/m3 of small forges; less will do below 1900 degF, 1311 K (common practice)."""
    assert firing_per_volume(1e6, 1400.0) == ("good", 1e6, 8e6, "96.6 kBtu/h/ft³" + USUAL, ())
    assert firing_per_volume(8e6, 1400.0) == ("good", 8e6, 8e6, "773 kBtu/h/ft³" + USUAL, ())
    cool = "87.0 kBtu/h/ft³" + USUAL + " Less is right below a forging heat of 1900 °F."
    assert firing_per_volume(0.9e6, 1310.9) == ("good", 0.9e6, 1e6, cool, ())


@pytest.mark.parametrize("taken_from, more, less", [BY_RATE, BY_CHAMBER], ids=["rate", "chamber"])
@pytest.mark.parametrize("burners, named", [(1, "burner"), (3, "3 burners")])
def test_too_little_or_too_much_fire_for_the_chamber(taken_from, more, less, burners, named):
    text = "87.0 kBtu/h/ft³" + USUAL + LITTLE.format(named, more[0])
    assert firing_per_volume(0.9e6, 1311.0, taken_from, burners) == ("caution", 0.9e6, 1e6, text, more[1])
    text, cures = "783 kBtu/h/ft³" + USUAL + MUCH.format(named, less[0]), (*less[1], ("chamber_length", "raise"))
    for temp_K in (1300.0, 1400.0):
        assert firing_per_volume(8.1e6, temp_K, taken_from, burners) == ("caution", 8.1e6, 8e6, text, cures)


@pytest.mark.parametrize("key, verdict", [("lining_limit", "stop"), ("shell_touch", "caution")])
def test_walls_of_a_thin_lining(key, verdict):
    assert solved(lining="blanket_8lb 3 in").checks[key].verdict == verdict


def test_a_design_that_is_far_off_is_told_so():
    much = solved(firing_rate="300 kBtu/h").checks["firing_per_volume"]
    assert (much.verdict, much.value) == ("caution", pytest.approx(3e5 * BTU_H / (396 * 0.0254**3)))
    slow = solved(heat_up_time="4 min", lining="blanket_8lb 2 in").checks["heat_up_reach"]
    assert slow.verdict == "caution"
    heavy = solved(heat_up_time="5 min", lining="dense_castable 3 in").checks["heat_up_reach"]
    assert heavy.verdict == "stop"
