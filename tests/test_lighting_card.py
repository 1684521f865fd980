"""The lighting card as it is held in a shop: what a hand can set of it, over designs far apart, drawn by a seed."""

import random
from functools import cache
from itertools import pairwise
from math import acos, pi, sin

from plausible import texts as plausible_texts

from burnercalc import solve
from burnercalc.design import Design
from burnercalc.errors import InputErrors
from burnercalc.jobs import JOBS
from burnercalc.parts.hand import MIXTURE_SLIP

# An oven whose slide, under a blower far too strong for it, moves by thousandths of an inch.
OVEN = {
    "body_length": "5 in",
    "setback": "9/16 in",
    "port_diameter": "3/16 in",
    "ports_per_row": "7",
    "edge_margin": "1/4 in",
    "inlet": "1-1/4",
    "chamber_length": "18 in",
    "chamber_width": "8 in",
    "chamber_height": "8 in",
    "chamber_temperature": "1550 degF",
    "work_temperature": "1500 degF",
    "heat_up_time": "60 min",
    "firing_rate": "21 kBtu/h",
    "low_fire": "60 %",
    "blower_shutoff_pressure": "3 inH2O",
    "blower_free_flow": "40 cfm",
    "mix_pipe": "1",
    "mix_pipe_length": "11 in",
    "baffle_holes": "0",
    "gas_pressure": "20 psi",
    "cylinder": "20",
    "cylinder_count": "1",
    "pin_depth": "1/2 in",
    "lit_by": "guard",
}


def drawn(seed, count):
    """Settings: jobs and plausible designs by fuel, supply, burners, what it is lit by, altitude, heat and units."""
    rng = random.Random(seed)
    for _ in range(count):
        sizes, fuel = rng.choice(("in", "mm")), rng.choice(("propane", "propane", "natural_gas", "butane"))
        job = rng.choice(JOBS) if rng.random() < 0.6 else None
        texts = {**job.texts(sizes, fuel), "sizes": sizes} if job else plausible_texts(rng)
        texts |= {"units": sizes, "lit_by": rng.choice(("hand", "stand", "guard", "guard"))}
        texts |= {"altitude": rng.choice(("0 m", "0 m", "1500 m", "2500 m"))}
        texts |= {"burner_count": rng.choice(("1", "1", "2", "3")), "blowers": rng.choice(("one", "each"))}
        if job and fuel != "natural_gas" and rng.random() < 0.3:
            texts |= {"gas_from": "line"}
        if rng.random() < 0.3:
            texts |= {"chamber_temperature": rng.choice(("1300 degF", "1550 degF")), "work_temperature": "1200 degF"}
        if rng.random() < 0.3:
            texts |= {"low_fire": rng.choice(("40 %", "50 %", "60 %", "70 %"))}
        yield texts


@cache
def results():
    """Of the oven and what is drawn; what cannot be drawn is left out."""
    found = []
    for texts in (OVEN, *drawn(20261129, 60)):
        try:
            found.append(solve(Design.from_texts(texts)))
        except InputErrors:
            continue
    assert len(found) > 50
    return found


def gap_m(bore_m, share, hole_m):
    """Of a straight edge across a pipe, a hole in the plate beside it: by halving, from areas of circles."""

    def common(radius_m, other_m, apart_m):
        if apart_m <= radius_m - other_m:
            return pi * other_m**2
        if apart_m >= radius_m + other_m:
            return 0.0
        at = (apart_m**2 + radius_m**2 - other_m**2) / (2 * apart_m)
        return sum(
            r**2 * (acos(max(-1.0, min(1.0, x / r))) - sin(2 * acos(max(-1.0, min(1.0, x / r)))) / 2)
            for r, x in ((radius_m, at), (other_m, apart_m - at))
        )

    radius_m, low, high = bore_m / 2, 0.0, bore_m
    for _ in range(50):
        gap = (low + high) / 2
        angle = acos(1 - gap / radius_m)
        open_m2 = radius_m**2 * (angle - sin(2 * angle) / 2) + (common(radius_m, hole_m / 2, gap) if hole_m else 0.0)
        low, high = (gap, high) if open_m2 < share * pi * radius_m**2 else (low, gap)
    return low


def turned(result):
    """(start, turn, the steps on its way) of the turns that the card tells."""
    turning, steps, lit = result.part("turning"), result.part("lighting_steps"), result.part("lighting")
    if lit.waits_W is None:
        return
    light = lit.waits_W, lit.waits_ratio
    low = result.part("firing").low_W, result.design.equivalence_ratio
    for start, turn, way in (
        (light, None if turning.straight else turning.to_low, steps.to_low),
        (light if turning.straight else low, turning.straight or turning.to_high, steps.to_high),
    ):
        if turn is not None and turn.first:
            yield start, turn, way


def slide_m(result, states):
    """Gap of the slide at each of them, beside the hole that it is lit through; what the blower does not give left
    out."""
    bore_m, slide = result.part("resistance").mix_pipe.bore_m, result.part("lighting_slide")
    hole_m = slide.size_m if slide.kind == "hole" else 0.0
    shares = [result.part("tries").at(ratio).open_share(rate_W) for rate_W, ratio in states]
    return [gap_m(bore_m, share, hole_m) for share in shares if share is not None]


def test_a_hand_tells_each_stop_of_the_slide_from_the_one_before():
    """The oven's were 0.11 mm apart, what one drill is missed by; 0.26 for two of them, 0.5 by rule."""
    seen = 0
    for result in results():
        for start, turn, _ in turned(result):
            gaps = slide_m(result, (start, *turn.stops)) if turn.steps > 1 else []
            for before, after in pairwise(gaps):
                seen += 1
                # The hole is drilled a little beside what was asked for, and shifts both alike.
                assert abs(after - before) >= 0.95 * (0.5e-3 if max(before, after) > 13e-3 else 0.26e-3)
    assert seen > 100


def test_each_stop_as_it_is_made_keeps_the_mixture_that_its_limits_hold_for():
    """Drill and gauge shift it by less than the 3 % that a hand may miss, for which the limits are the careful ones."""
    seen = 0
    for result in results():
        bore_m, slide = result.part("resistance").mix_pipe.bore_m, result.part("lighting_slide")
        hole_m = slide.size_m if slide.kind == "hole" else 0.0
        for start, turn, way in turned(result):
            waits = start[0] / result.part("tries").at(round(start[1], 2)).glowing_W
            for (rate_W, ratio), step in zip(turn.stops, way):
                tried = result.part("tries").at(ratio)
                asked, made = tried.open_share(rate_W), step.damper.slots.get("size") or 0.0
                if step.damper.case == "full" or asked is None:
                    continue
                # How far the share is off goes with the gap's end, to first order.
                wide_m = gap_m(bore_m, asked, hole_m)
                more, less = (gap_m(bore_m, asked * one, hole_m) for one in (1.01, 0.99))
                off = 0.02 * (made - wide_m) / (more - less) if more > less else 0.0
                ratio_made = ratio * step.rate_W / rate_W / (1 + off)
                seen += 1
                assert abs(ratio_made / ratio - 1) < MIXTURE_SLIP
                assert rate_W >= min(0.99, 0.85 * waits) * tried.glowing_W
    assert seen > 50


def test_where_only_finer_stops_hold_more_low_fire_cures_it():
    """At 60 % of high fire it took ten of them; 65 % is turned to in one."""
    before, after = (solve(Design.from_texts({**OVEN, "low_fire": low})) for low in ("60 %", "65 %"))
    check = before.checks["turning"]
    assert check.verdict == "caution" and not before.part("turning").to_low.first
    assert "the slide moves less from stop to stop than a hand sets, some 0.01 in" in check.text
    assert ("low_fire", "raise") in {(one.setting, one.move) for one in check.changes}
    assert after.checks["turning"].verdict == "good" and after.part("turning").to_low.steps == 1
