"""The damper's mark to light at as something a hand can set, and how near gas and air come to the mixture with it."""

from dataclasses import dataclass, replace
from functools import partial
from math import hypot

from ..catalogue.sentences import Said, said
from ..making import slide
from ..physics import drills
from ..physics.band import Band
from ..physics.drills import Drill
from .blower import Blower
from .gas import Gas
from .gauges import Gauges
from .jet import COEFFICIENT_BAND
from .lighting import Lighting
from .resistance import Resistance
from .tries import TORCH_LIFT, Tries
from .turning import LAW_ENDS

# All common practice.
HOLE_OFF = 0.02  # of a hole's area: a drill runs a hundredth wide or not
GAP_OFF_M = 0.13e-3  # of a gap set against a drill's shank, 5/1000 in
RULE_OFF_M = 0.5e-3  # of one set by a rule
GAUGE_OFF = 0.02  # of a gauge's scale
TUBE_OFF_PA = 5.0  # of water in a sloping gauge, 0.5 mm, by which low pressures of a line are read
BLOWER_OFF = 0.06  # of the air: 12 % of its pressure, nearly all of which the slide takes
LEAK, BLUNT = 0.09, 0.15  # more air past a slide that is not tight, and through a hole whose edge is not sharp
# Of the mixture: steps and reach of the search for the ends, and the leanest that is tried.
STEP, FAR, LEANEST = 0.005, 0.16, 0.6
# Of the gas that it was to be lit with, where no mark leaves a hand room with that; the nearest first.
GAS_MOVED = (1.01, 0.99, 1.02, 0.98, 1.03, 0.97, 1.04, 0.96)
NEAR = 3  # drills that are tried, the nearest first
FAMILIES = {"in": ("number", "letter", "fraction"), "mm": ("metric",)}


@dataclass(frozen=True)
class LightingSlide:
    """`kind`: hole, gap (against the shank of a drill) or rule; "" where it is not lit.

    `rate_W`, `gas_Pa`: from, the one to light at, and to, the slide left where it is, so that less gas is leaner too:
    between them the flame neither runs back nor lifts off behind a torch, in burnt gas either where it holds so at the
    rate to light at, nor, where it does not there, into a lip that glows; `stays`: nor does it where a hand misses.
    `ratio`: the mixture it comes to, with what a hand may miss; `fails`: what becomes of the flame at the lean end, and
    at the rich one: lost (it runs back, or no torch holds it), back (into a lip that glows, though not as set), burnt
    (no torch may hold it, in burnt gas), or "".
    `unproven`: the same before jet, blower and slide are proven: the jet's coefficient and the blower's curve off too,
    air past the slide and, lit through a hole, an edge that is blunt.
    `lifts_W`: above it the flame lifts in fresh air, at the worst of those mixtures. `advice`: as lighting's, of what
    is made.
    """

    kind: str
    drill: Drill | None
    size_m: float | None
    rate_W: Band | None
    gas_Pa: Band | None
    stays: bool
    ratio: Band | None
    fails: tuple[str, str]
    unproven: Band | None
    lifts_W: float | None
    mark: Said
    advice: Said


def lighting_slide(
    units: str, gas: Gas, gauges: Gauges, blower: Blower, resistance: Resistance, lighting: Lighting, tries: Tries
) -> LightingSlide:
    if lighting.rate_W is None:
        return LightingSlide(
            "", None, None, None, None, False, None, ("", ""), None, None, said("never"), lighting.advice
        )
    wanted, bore_m, lit_W = lighting.open_share, resistance.mix_pipe.bore_m, lighting.rate_W.value
    off_Pa = GAUGE_OFF * gauges.lit_by_Pa if gas.liquid else TUBE_OFF_PA
    gas_off = off_Pa / (2 * (lighting.gas_Pa.value - lighting.pipe_Pa))  # of the gas, half that of its pressure's drop

    def runs_back(ratio, rate_W):
        return tries.at(ratio, 0.0).glowing_W > rate_W

    def fails(ratio, rate_W):
        if not ratio > 0:
            return "lost"
        one = tries.at(ratio, 0.0)
        if not (one.limits and one.flashback_W <= rate_W <= TORCH_LIFT * one.lift_W):
            return "lost"
        return "" if one.torch_W and rate_W <= one.torch_W else "burnt"

    def waits(mark):
        return lighting.stays and not runs_back(mark.ratio.value, mark.rate_W.value)

    def window(made, set_W, waits):
        """(rates, gauge pressures) with this much air. Leaner it lifts off the torch or runs back, richer it lifts in
        burnt gas; between the ends and the mixture as made what holds at an end holds."""
        set_at = tries.at(made, 0.0)
        in_burnt_gas = bool(set_at.torch_W) and set_W <= set_at.torch_W

        def rate_W(ratio):
            return set_W * ratio / made

        def torch_holds(ratio):
            one = tries.at(ratio, 0.0)
            return one.limits and one.flashback_W <= rate_W(ratio) <= TORCH_LIFT * one.lift_W

        def stays_out(ratio):
            return not waits or not runs_back(ratio, rate_W(ratio))

        def holds_in_burnt_gas(ratio):
            return rate_W(ratio) <= (tries.at(ratio, 0.0).torch_W or 0.0)

        def furthest(holds, last):
            """Ratio between made and the last, in steps of STEP, up to which it holds."""
            if holds(last):
                return last
            reached, fails = 0, max(round(abs(last - made) / STEP), 1)
            sign = 1 if last > made else -1
            while fails - reached > 1:
                middle = (reached + fails) // 2
                reached, fails = (middle, fails) if holds(made + sign * middle * STEP) else (reached, middle)
            return made + sign * reached * STEP

        low = furthest(stays_out, furthest(torch_holds, max(made - FAR, LEANEST)))
        high = furthest(holds_in_burnt_gas, min(made + FAR, LAW_ENDS)) if in_burnt_gas else made
        ends = (min(low, made), made, max(high, made))
        rates = Band(*map(rate_W, ends))
        return rates, Band(*(tries.at(ratio, 0.0).gas_Pa(rate_W(ratio)) for ratio in ends))

    def lifts_W(band):
        found = [tries.at(ratio, 0.0).lift_W for ratio in band if ratio > 0]
        return min((one for one in found if one is not None), default=None)

    def made(kind, drill, size_m, open_share, off, more=1.0):
        """`more`: so many times the gas that it was to be lit with."""
        ratio, rate_W, gas_miss = (
            lighting.equivalence_ratio * wanted / open_share * more,
            lit_W * more,
            gas_off / more**2,
        )
        miss = hypot(off, gas_miss)
        low = ratio * max(1 - miss, 0.0)  # where gas is read no nearer than itself there may be none
        band = Band(low, ratio, ratio * (1 + miss))
        gas_part = min(gas_miss**2 / miss, 1.0)  # of the miss that leads there, what is gas
        new_off, most_air = hypot(miss, COEFFICIENT_BAND, BLOWER_OFF), (1 + LEAK) * (1 + BLUNT * (kind == "hole"))
        unproven = Band(ratio * max(1 - new_off, 0.0) / most_air, ratio, ratio * (1 + new_off))
        named = drill is not None and drill.family in ("number", "letter")
        mark = said(f"{kind}_named" if named else kind, drill=drill and drill.name, size=size_m)
        found = LightingSlide(
            kind,
            drill,
            size_m,
            Band(rate_W, rate_W, rate_W),
            None,
            False,
            band,
            ("", ""),
            unproven,
            None,
            mark,
            lighting.advice,
        )
        lean, rich = fails(band.low, rate_W * (1 - gas_part)), fails(band.high, rate_W * (1 + gas_part))
        if lean != "lost" and waits(found):
            # What a hand misses of the gas alone slows the stream most.
            missed = ((band.low, rate_W * (1 - gas_part)), (ratio * (1 - gas_miss), rate_W * (1 - gas_miss)))
            lean = "back" if any(runs_back(*one) for one in missed) else lean
        return replace(found, fails=(lean, rich), stays=waits(found) and lean not in ("lost", "back"))

    def hole(drill, more=1.0):
        return made("hole", drill, drill.diameter_m, (drill.diameter_m / bore_m) ** 2, HOLE_OFF, more)

    def gap(drill, size_m, step_m, more=1.0):
        open_share, next_share = (slide.gap_share(bore_m, min(size, bore_m)) for size in (size_m, size_m + step_m))
        return made("gap" if drill else "rule", drill, size_m, open_share, next_share / open_share - 1, more)

    gap_m = slide.gap_m(bore_m, wanted)
    # A hole is open always, so it must not pass more than low fire needs.
    if blower.open_low is not None and wanted <= blower.open_low:
        marks = [partial(hole, drill) for drill in near(slide.hole_m(bore_m, wanted), FAMILIES[units])]
    else:
        marks = [partial(gap, drill, drill.diameter_m, GAP_OFF_M) for drill in near(gap_m, FAMILIES[units])]
    marks = marks or [partial(gap, None, gap_m, RULE_OFF_M)]

    def tried():
        """Each mark with the gas as it was to be lit with, then with a little more or less."""
        yield from (mark() for mark in marks)
        if any(waits(one) and not fails(one.ratio.value, lit_W) for one in found):
            yield from (mark(more=more) for more in GAS_MOVED if given(more) for mark in marks)

    def given(more):
        """Whether a line gives as much."""
        return gas.liquid is not None or more**2 * lighting.gas_Pa.value <= tries.jet.gauge_Pa

    found = []
    for one in tried():
        found.append(one)
        if one.stays and not any(one.fails):
            break
    # Rather too rich for burnt gas when the hand misses than back into the lip, and that rather missed than as set.
    rank = (
        lambda one: one.stays and not any(one.fails),
        lambda one: one.stays and one.fails[1] == "burnt" and not fails(one.ratio.value, one.rate_W.value),
        lambda one: one.fails[0] == "back" and one.fails[1] != "lost",
        lambda one: not any(one.fails),
        lambda one: True,
    )
    chosen = next(one for wanted in rank for one in found if wanted(one))
    rate_W, gas_Pa = window(chosen.ratio.value, chosen.rate_W.value, chosen.stays or chosen.fails[0] == "back")
    how = lighting.way + ("_cool" if not lighting.glows else "_stays" if chosen.stays else "")
    advice = said(how, **{**lighting.advice.slots, "rate": rate_W.value, "gas": gas_Pa.value})
    return replace(chosen, rate_W=rate_W, gas_Pa=gas_Pa, lifts_W=lifts_W(chosen.ratio), advice=advice)


def near(size_m, families):
    """The drills next to a size, the nearest first; none beyond the largest that is sold."""
    found = [drills.nearest_drills(size_m, family) for family in families]
    if not any(above for _, above in found):
        return []
    known = {drill for pair in found for drill in pair if drill}
    return sorted(known, key=lambda drill: (abs(drill.diameter_m - size_m), drill.name))[:NEAR]
