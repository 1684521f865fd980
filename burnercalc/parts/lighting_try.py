"""What a cold flame and the valves leave to light with: a rate at which it neither runs back nor lifts, or none."""

from dataclasses import dataclass
from itertools import chain
from math import inf

from ..catalogue.sentences import Said, said
from ..physics.band import Band
from .firing import Firing
from .jet import Jet
from .tries import KEEP_OFF, WELL_OFF, WIDE, Tries

# Common practice.
# Tried after the mixture as set, leanest first; the law of lift ends at 1.36.
RATIOS = (1.0, 1.1, 1.15, 1.2, 1.25, 1.3)
TORCH_RATIOS = (1.2, 1.3)
RELIGHTS_OFF_K = 28.0  # either way of it, 50 degF: what a chamber is uneven by, and a thermocouple; common practice
LIP_GLOWS_S = 120.0  # till a lip in front of which it burns may glow: its skin is hot in 25 s; common practice
RELIGHTS_K = 1033.15  # walls above it light gas again: 1400 degF by NFPA 86 (EN 746-2: 750 degC), memory


@dataclass(frozen=True)
class LightingTry:
    """The setting, all None where there is none. Limits are the careful ends, ports cold or warm, lip not yet glowing.

    `rate_W`: from, the one to light at, and to; `gas_Pa`: the same as gauge pressures before the jet. `stays`: the
    flame neither runs back into a lip that glows nor lifts in fresh air; `close`: with less than a tenth off those two.
    What holds it in burnt gas: see burnt_gas. `way`: how, or why not; a case of the check.

    `waits_W`, `waits_ratio`: what it burns at after, alone or with a torch in front, until the walls glow; None where
    it is not lit. `glows`: whether the chamber is meant to come to a glow at all.
    """

    way: str
    equivalence_ratio: float | None
    rate_W: Band | None
    gas_Pa: Band | None
    open_share: float | None
    mixture_m3_s: float | None
    flashback_W: float | None
    lift_W: float | None
    stays: bool
    close: bool
    waits_W: float | None
    waits_ratio: float | None
    glows: bool
    advice: Said


def lighting_try(
    equivalence_ratio: float, chamber_temperature: float, firing: Firing, jet: Jet, tries: Tries
) -> LightingTry:
    glows = chamber_temperature > RELIGHTS_K
    for fine in (False, True) if tries.gas_line.there else (False,):
        set_so = tries.at(equivalence_ratio, fine=fine)
        rest = [tries.at(ratio, fine=fine) for ratio in RATIOS if ratio != equivalence_ratio]
        if lit := _lit([set_so, *rest] if equivalence_ratio <= RATIOS[-1] else rest):
            break
    if lit:
        way = "as_set" if lit is set_so else "rich" if lit.ratio > max(1.0, equivalence_ratio) else "other"
        return _at(lit, way, glows)
    return _no_way(set_so, rest, firing, jet, glows)


def _lit(tries):
    """The leanest that may wait and is not too near to a limit, for it makes the least carbon monoxide; else the
    leanest that may wait at all; of both rather one that a torch holds for sure in burnt gas; else the leanest that can
    be set; None where there is none."""
    waits = [one for one in tries if one.waiting_W is not None]
    sure = [one for one in waits if one.waiting_W.value <= (one.torch_W or 0.0)]
    lit = (one for one in tries if one.settable_W is not None)
    return next(chain(_well_off(sure), sure, _well_off(waits), waits, lit), None)


def _well_off(tries):
    return (one for one in tries if one.waiting_off >= WELL_OFF)


def _at(one, way, glows):
    stays = one.waiting_W is not None
    band = one.waiting_W or one.settable_W._replace(value=one.settable_W.high)
    rate = band.value
    close = stays and one.waiting_off < KEEP_OFF
    gas_Pa = Band(*map(one.gas_Pa, (band.low, rate, band.high)))
    slots = {
        "rate": rate,
        "least": band.low,
        "most": band.high,
        "gas": gas_Pa.value,
        "gas_least": gas_Pa.low,
        "gas_most": gas_Pa.high,
        "open": one.open_share(rate),
        "ratio": one.ratio,
        "pipe": one.tap_Pa(rate),
    }
    return LightingTry(
        way=way,
        equivalence_ratio=one.ratio,
        rate_W=band,
        gas_Pa=gas_Pa,
        open_share=slots["open"],
        mixture_m3_s=one.mixture_m3_s(rate),
        flashback_W=one.flashback_W,
        lift_W=one.lift_W,
        stays=stays,
        close=close,
        waits_W=rate,
        waits_ratio=one.ratio,
        glows=glows,
        advice=said(way + ("_cool" if not glows else "_stays" if stays else ""), **slots),
    )


def _no_way(set_so, rest, firing, jet, glows):
    """Why there is no setting, of the richer mixtures, which have the most room; or a torch that makes do."""
    torch = [one for one in rest if one.ratio in TORCH_RATIOS]
    room = next((one for one in (*torch, set_so, *rest) if one.has_room), None)
    if room is not None:
        one, carried = room, jet.drill is not None and room.open_share(room.top_W) is not None
        gas, damper = room.can_set(room.top_W / WIDE)
        way = "not_carried" if not carried else "gas" if damper else "damper" if gas else "gas_and_damper"
    else:
        near = next((one for one in torch if one.held_by_torch(firing.low_W)), None)
        one = near or next((one for one in torch if one.limits), None)
        way = "no_limit" if one is None else "torch" if near else "no_room"
        if way == "no_room" and one.flashback_W == inf:
            way = "too_slow"
    found = one is not None
    at_W = firing.low_W if way == "torch" else one.top_W / WIDE if found else None  # as the valves are tried
    slots = {
        "low": firing.low_W,
        "flash": one.flashback_W if found else None,
        "lift": one.lift_W if found else None,
        "ratio": one.ratio if found else None,
        "most": one.top_W if found else None,
        "gas": one.gas_Pa(at_W) if found else None,
        "open": one.open_share(at_W) if found else None,
        "pipe": one.tap_Pa(at_W) if found else None,
        "least_gas": one.least_gas_Pa(at_W) if found else None,
        "least_open": one.least_open(one.open_share(at_W)) if found else None,
    }
    return LightingTry(
        way=way,
        equivalence_ratio=None,
        rate_W=None,
        gas_Pa=None,
        open_share=None,
        mixture_m3_s=None,
        flashback_W=slots["flash"],
        lift_W=slots["lift"],
        stays=False,
        close=False,
        waits_W=firing.low_W if way == "torch" else None,
        waits_ratio=slots["ratio"] if way == "torch" else None,
        glows=glows,
        advice=said(way, **slots),
    )
