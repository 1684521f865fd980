"""In which air the card's own mark and pressure hold: against the design worked out anew in that air, its slide and its
gauge left as they are."""

import dataclasses
import re

import pytest
from designs import solved
from test_lighting import MANY_SMALL
from test_lighting_card import rows

from burnercalc import solve
from burnercalc.checks.fire import STRONGER, lighting_day_check
from burnercalc.drawing.shapes import Text
from burnercalc.find import shops
from burnercalc.parts.lighting_day import LightingDay
from burnercalc.parts.tries import SIDE_BY_SIDE, TORCH_LIFT
from burnercalc.physics.band import Band

HOUSE = {"fuel": "natural_gas", "port_diameter": "9/32 in", "firing_rate": "65 kBtu/h", "low_fire": "70 %"}
NARROW = {"fuel": "natural_gas", "port_diameter": "3/8 in", "ports_per_row": "6", "firing_rate": "110 kBtu/h"}


def on_a_day(result, air_K):
    """(mixture, rate, tries) of the design in other air, worked out whole: the zone, the block and the blower are anew,
    the fire, the jet's drill, the slide's open share and the gauge's pressure stay. Both are found by trial."""
    slide, jet = result.part("lighting_slide"), result.part("jet")
    settings = {"ambient_temperature": air_K, "jet_drill": jet.drill_name}
    other = result.parts.off(settings, {"firing": result.part("firing")})
    tries = other.part("tries")
    ratio, rate_W = slide.ratio.value, slide.rate_W.value
    own = result.part("tries").at(ratio, 0.0)
    open_share = own.open_share(rate_W)  # as it is worked out for the card's own day
    for _ in range(30):
        one = tries.at(round(ratio, 6), 0.0)
        rate_W *= (slide.gas_Pa.value - one.pipe_Pa(rate_W)) ** 0.5 / (one.gas_Pa(rate_W) - one.pipe_Pa(rate_W)) ** 0.5
        ratio *= one.open_share(rate_W) / open_share
    return ratio, rate_W, tries


def inside(result, air_K):
    """How far the flame as set is inside the rates at which it runs back, lifts off a torch, and does in burnt gas."""
    ratio, rate_W, tries = on_a_day(result, air_K)
    one = tries.at(round(ratio, 4), 0.0)
    back = rate_W / one.glowing_W - 1
    torch = TORCH_LIFT * one.lift_W / rate_W - 1
    burnt = TORCH_LIFT * SIDE_BY_SIDE[0] * one.burnt_lift_W.low / rate_W - 1
    return min(back, torch, burnt)


@pytest.mark.parametrize("texts", [{}, HOUSE], ids=["propane", "house gas"])
def test_cold_air_is_more_of_it_and_the_mixture_leaner(texts):
    """A fan moves the same volume, so air goes with 1 / T; gas through a jet, and with it the rate, with its root; so
    the mixture goes with the root of T: at 41 degF 1.8 % leaner than at 59, the rate 1.8 % more."""
    r = solved(**texts, ambient_temperature="59 degF")
    own, cold = (on_a_day(r, air_K) for air_K in (288.15, 278.15))
    assert cold[0] / own[0] == pytest.approx((278.15 / 288.15) ** 0.5, abs=2e-3)
    assert cold[1] / own[1] == pytest.approx((288.15 / 278.15) ** 0.5, abs=2e-3)


@pytest.mark.parametrize("texts", [{}, HOUSE, NARROW, MANY_SMALL], ids=["propane", "house gas", "narrow", "many small"])
def test_it_holds_where_the_design_worked_out_anew_does(texts):
    """What ends it is told by the flame's limits as rates, found by their roots, in that air."""
    r = solved(**texts)
    day = r.part("lighting_day")
    assert day.air_K.value == r.part("shop").temp_K
    for end_K in (day.air_K.low, day.air_K.high):
        assert inside(r, end_K) > -2e-3
    far = [inside(r, day.air_K.value + off_K) for off_K in (-10.0, 10.0)]
    assert day.as_set is (min(far) >= 0)


def test_what_it_is_lit_at_may_run_back_in_warmer_air():
    """10 degF warmer is the end of it where a hand misses: 3 K beyond, its leanest runs back at a lip that glows, 3 K
    before it does not. Slide and gauge miss by what the card's own day has them miss by."""
    r = solved(**NARROW)
    day, slide, gauges = r.part("lighting_day"), r.part("lighting_slide"), r.part("gauges")
    assert (day.cold, day.warm, day.as_set) == ("", "back", True)
    assert day.air_K.high - day.air_K.value < 9
    by_gas = gauges.off_Pa / 2 / (slide.gas_Pa.value - slide.pipe_Pa)
    found = []
    for off_K in (-3.0, 3.0):
        ratio, rate_W, tries = on_a_day(r, day.air_K.high + off_K)
        lean = tries.at(round(ratio * slide.ratio.low / slide.ratio.value, 4), 0.0)
        gas = tries.at(round(ratio * (1 - by_gas), 4), 0.0)
        found.append(min(rate_W * (1 - by_gas) / one.glowing_W for one in (lean, gas)))
    assert found[0] > 1 - 4e-3 and found[1] < 1


def test_card_operating_card_and_check_tell_the_air():
    r = solved()
    words = "Only with jet #52, slide's hole 15/32 in, small gauge to 3 psi, in air of 42 °F to 78 °F"
    assert rows(r)["Set"].startswith(f"{words} at the blower (worked out for 60 °F): beyond, gas off.")
    drawn = " ".join(shape.text for shape in r.drawings["operating_card"].shapes if isinstance(shape, Text))
    assert (
        "LIGHT: jet #52, hole 15/32 in, small gauge to 3 psi, air of 42 °F to 78 °F = 6 °C to 26 °C only"
        in " ".join(drawn.split())
    )
    check = r.checks["lighting_day"]
    assert check.verdict == "good" and "air of 60 °F" in check.text and "from 42 °F to 78 °F" in check.text
    metric = solved(units="mm", ambient_temperature="16 degC")
    told = rows(metric)["Set"].split("hole ")[1]
    assert told.startswith(
        "12.2 mm, small gauge to 100 mbar, in air of 6 °C to 26 °C at the blower (worked out for 16 °C)"
    )
    assert not re.search("°F", metric.checks["lighting_day"].text)


def judged(lit_by, low_K, high_K, cold, warm, as_set):
    day = LightingDay(Band(low_K, 290.0, high_K), cold, warm, as_set)
    return lighting_day_check(day, lit_by)


@pytest.mark.parametrize(
    "lit_by, day, word, cases",
    [
        ("stand", (280.0, 300.0, "", "", True), "good", ("good",)),
        ("stand", (280.0, 296.0, "", "back", True), "note", ("card", "back", "missed")),
        ("hand", (285.0, 296.0, "lost", "back", False), "caution", ("card", "back", "lost", "as_set")),
        ("guard", (285.0, 300.0, "lost", "", False), "note", ("card", "lost", "as_set")),
    ],
)
def test_only_what_no_hand_holds_is_a_caution_and_none_behind_a_guard(lit_by, day, word, cases):
    found = judged(lit_by, *day)
    assert (found.verdict, found.cases) == (word, cases)
    assert bool(found.cures) is (word == "caution")


def test_larger_or_more_ports_hold_in_more_air():
    """The first cure that is offered clears it; so it does where it is but a note."""
    few = solved(**MANY_SMALL)
    assert few.checks["lighting_day"].verdict == "caution"
    assert [(one.setting, one.move) for one in few.checks["lighting_day"].changes] == list(STRONGER)
    assert "print its own card" in few.checks["lighting_day"].text
    for texts in (MANY_SMALL | {"port_diameter": "9/64 in"}, NARROW | {"port_diameter": "7/16 in"}):
        assert solved(**texts).checks["lighting_day"].verdict == "good"


def test_what_must_not_be_lit_has_no_air():
    r = solved(port_diameter="1/2 in", firing_rate="20 kBtu/h")
    assert r.part("lighting").rate_W is None and r.part("lighting_day").air_K is None
    assert "lighting_day" not in r.checks


def test_it_is_told_as_far_as_gases_are_known():
    r = solved(ambient_temperature="0 degF")
    assert r.part("lighting_day").air_K.low == 250.0  # the fits of data/transport.csv begin there


def test_a_card_made_once_is_judged_in_each_shop():
    """By the limits of the flame in that shop, found by their roots: pins, height and day are that shop's, slide and
    gauge are those of the card, the jet is proved. A new card for each hid what another day does to the one."""
    base = solve(shops.built(solved(**HOUSE)))
    slide, own, count, held = base.part("lighting_slide"), base.part("tries"), 16, 0
    for offs in shops.drawn(count):
        there = solve(shops.moved(base.design, offs)).part("tries")
        there = dataclasses.replace(there, jet=dataclasses.replace(there.jet, coefficient=own.jet.coefficient))
        air = slide.rate_W.value / slide.ratio.value * there.shop.air_density_kg_m3 / own.shop.air_density_kg_m3
        ratio = slide.ratio.value
        for _ in range(20):
            ratio *= (slide.gas_Pa.value / there.at(round(ratio, 6), 0.0).gas_Pa(air * ratio)) ** 0.5
        one, rate_W = there.at(round(ratio, 4), 0.0), air * ratio
        lifts_W = min(TORCH_LIFT * one.lift_W, TORCH_LIFT * SIDE_BY_SIDE[0] * one.burnt_lift_W.low)
        held += one.glowing_W <= rate_W <= lifts_W
    found = shops.sample(base.design, count)
    assert 0 < held < count and dict(found.cards)[shops.HOLDS] == held
    assert f"Its lighting card, made once, holds in {held} of {count}; in the others " in found.head


def test_what_must_not_be_lit_is_said_not_to_be_whatever_stays_good():
    found = shops.sample(solved(fuel="natural_gas", firing_rate="auto").design, 1)
    assert found.unlit and "must not be lit" in found.head and "lighting card" not in found.head
    guarded = shops.sample(solved(lit_by="guard").design, 1)  # it shuts the gas
    assert not guarded.unlit and "lighting card" not in guarded.head
    assert "holds in 2 of 2." in shops.sample(solved().design, 2).head
