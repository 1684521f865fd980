"""The verdicts of the room Fire: one function a check, named <key>_check."""

from datetime import date
from math import inf
from typing import Any

from ..making.days import COLD_TEMP_K, FREEZE_TEMP_K
from ..making.train import gauge_Pa
from ..parts.back_pressure import BackPressure
from ..parts.blend import Blend
from ..parts.blend_light import LIT, NONE, BlendLight
from ..parts.burnt_gas import BurntGas
from ..parts.carbon_monoxide import EU_DAY_FRACTION, EU_SHORT_FRACTION
from ..parts.cylinders import Cylinders
from ..parts.fired_heat_up import FiredHeatUp
from ..parts.firing import Firing
from ..parts.first_fire import FirstFire
from ..parts.gas_line import GasLine
from ..parts.gauges import GAUGE_OFF, LOW_SHOWN, Gauges
from ..parts.hand import NEXT_GAP_M
from ..parts.holding import Holding
from ..parts.jet import Jet
from ..parts.lighting import (
    CEILING_FRACTION,
    DOORS_M3_S,
    HAND_HOLDS_S,
    SHIFT_FRACTION,
    STAND_HOLDS_S,
    WAITS,
    Lighting,
    waits,
)
from ..parts.lighting_air import LightingAir
from ..parts.lighting_card import HAND_S, LET_IN, LightingCard, timer_s
from ..parts.lighting_day import REACH_K, LightingDay
from ..parts.lighting_meter import LightingMeter
from ..parts.lighting_pipe import LightingPipe
from ..parts.lighting_slide import LightingSlide
from ..parts.lighting_try import LIP_GLOWS_S, RATIOS, RELIGHTS_K, RELIGHTS_OFF_K, LightingTry
from ..parts.lighting_width import LightingWidth
from ..parts.need import Need
from ..parts.plenum import Plenum
from ..parts.resistance import Resistance
from ..parts.shop import Shop
from ..parts.tries import CLOSE, EASY_LINE_PA, Tries
from ..parts.turning import Turning
from .judge import FAULTS, VERDICTS, Judged, judge, ladder, verdict

RUN_UP_BORES = 40.0  # of mix pipe, in which a flame gathers speed; common practice
# So little air that the blower's free flow is no matter.
LESS_AIR = (("mix_pipe", "lower"), ("blower_shutoff_pressure", "lower"))
MORE_PORTS = (("ports_per_row", "raise"), ("rows", "raise"))
BETTER_PORTS = (*MORE_PORTS, ("port_diameter", "lower"), ("body_depth", "raise"))
STRONGER = (("port_diameter", "raise"), ("ports_per_row", "raise"), ("rows", "raise"))
FASTER = (("ports_per_row", "lower"), ("port_diameter", "lower"))  # what runs back at low fire does not through these
# Ports of the next sizes run back at up to so many times the rate: low fire nearer to it is set higher with them.
NEXT_SIZE = 1.4
# Lift over flashback at a lip that glows, from which a thicker block leaves room: of 40 designs below it none is mended
# by one, above it nearly all; room is 1.08.
THICKER_DOES = 1.045
# Of the gas pressure, that it leaves to light in on a line: where 0.074 is missed it mends, where 0.11 is it does not.
THICKER_LEAVES = 0.09
FEW_STEPS = 4  # from fire to fire, that a hand goes without learning them first; common practice
LONGEST_WAIT_S = 3600.0  # that anybody listens to a rich flame; common practice
# Of the chamber, that may be let in before the gas is shut. What it does not hold stands before its opening: beyond the
# first more than it holds, beyond the second three times that. Codes limit the time of a trial, not what it lets in:
# 3 s at least (EN 746-2, memory) and a second for the hand are 1.7 of the default's chamber; up to twice it is a note.
# Common practice; a guard has seen the pilot at the ports before.
LET_IN_MOST = (2.0, 4.0)
LET_IN_LESS = (("ports_per_row", "lower"), ("rows", "lower"))
BOX, PIPE = ("body_depth", "lower"), ("mix_pipe_length", "lower")
PIPE_LESS, BOX_LESS = 1 / 3, 1 / 2  # of pipe and box, that may well be left out; common practice
# How long it may wait for the walls to glow, good and the worst beyond: with a guard, rich for longer than anybody
# would watch it, more carbon monoxide than a note.
WAITS_S = {
    "hand": (HAND_HOLDS_S, HAND_HOLDS_S),
    "stand": (LONGEST_WAIT_S, STAND_HOLDS_S),
    "guard": (LONGEST_WAIT_S, STAND_HOLDS_S),
}
WAITS_BEYOND = {"hand": ("stop", "stop"), "stand": ("caution", "stop"), "guard": ("note", "caution")}
# Where that never comes: at the rate to light at, by which it never gets to its heat, guard or not; or because the
# chamber is worked below it. A guard or one able to act at once: EN 746-2:2010, 5.2.6.3; a guard: NFPA 86 (memory).
NEVER_GLOWS = {
    "never": {"hand": "stop", "stand": "stop", "guard": "stop"},
    "cool": {"hand": "stop", "stand": "stop", "guard": "good"},
}
# In a chamber full of burnt gas: the verdict and its sentence, by what keeps the flame alight and what it is lit by.
KEPT = {
    "itself": dict.fromkeys(("hand", "stand", "guard"), ("good", "itself")),
    "torch": {"hand": ("caution", "torch_hand"), "stand": ("note", "torch_stand"), "guard": ("good", "torch_guard")},
    # What nobody has measured decides, guard or not: it may go out as often as it is lit.
    "maybe": {"hand": ("caution", "maybe"), "stand": ("caution", "maybe"), "guard": ("caution", "maybe_guard")},
}
GUARD = ("lit_by", "choose")
SOONER = ("lining", "choose")  # a lighter one
FEWER = (("burner_count", "lower"), ("ports_per_row", "lower"), ("rows", "lower"))
LIGHTING_CURES = {
    "caution": STRONGER,
    "caution_low": STRONGER,
    "caution_large": FASTER,
    "torch": BETTER_PORTS,
    "gas": STRONGER,
    "damper": LESS_AIR,
    "gas_and_damper": (("ports_per_row", "raise"), *LESS_AIR),
    "gas_line": STRONGER,
    "gas_and_damper_line": (*STRONGER, *LESS_AIR),
    "no_room": BETTER_PORTS,
    "closed": (("opening_area", "raise"),),
    "torch_weak": BETTER_PORTS,
    "no_flame": (("equivalence_ratio", "choose"),),
    "hole": (("slide_hole", "choose"),),
    "pressure": (("jet_drill", "choose"), ("gas_pressure", "raise")),
    "no_way": (),  # which way ports and low fire are moved the turning says
    "air": FEWER,
    "dim": (GUARD,),
    "long": (GUARD, SOONER),
    "long_stand": (GUARD, SOONER),
    "cool": (GUARD,),
    "too_slow": (("ports_per_row", "lower"), ("port_diameter", "lower"), ("firing_rate", "raise")),
}

SETTINGS_OF_LIGHTING = frozenset({"lit_by", "jet_drill", "gas_pressure"}).union(
    *({key for key, _ in cures} for cures in LIGHTING_CURES.values())
)


def blend_light_check(
    blend_light: BlendLight, blend: Blend, lighting_width: LightingWidth, lit_by: str
) -> Judged | None:
    """Whether one mark and pressure hold for all gases of a blend as well as for their mean; None of a gas that stays
    what it is, where not even that is lit, and where it is told with the hand that none sets it. What only a hand that
    misses loses is a note where a guard shuts the gas."""
    light = blend_light
    if light.holds is None or light.alone is None or light.alone == NONE:
        return None
    slots: dict[str, Any] = {"left": blend.left_share, "first": light.first, "last": light.last, "enough": light.enough}
    if light.holds >= light.alone:
        if lighting_width.lacks:
            return None
        return verdict("good", light.last, None, **slots)
    guard = lit_by == "guard"
    words = {NONE: ("stop", "none"), LIT: ("caution", "lip_guard") if guard else ("stop", "lip")}
    word, case = words.get(light.holds, ("note" if guard else "caution", "missed"))
    sooner = (("cylinder_left", "raise"),) if light.enough else ()
    return verdict(
        word,
        light.last,
        None,
        case=(case, *(("enough",) if light.enough else ()), "wider"),
        cures=() if word == "note" else (*sooner, *STRONGER, ("fuel_blend", "choose")),
        **slots,
    )


def lighting_check(
    lighting: Lighting,
    lighting_slide: LightingSlide,
    gas_line: GasLine,
    burnt_gas: BurntGas,
    lighting_width: LightingWidth,
    firing: Firing,
    fired_heat_up: FiredHeatUp,
    holding: Holding,
    tries: Tries,
    jet_drill: str | None,
    lit_by: str,
) -> Judged:
    """In fresh air first, then in the burnt gas that fills the chamber, where it hangs on what it is lit by. A rate
    that may run back at a lip that glows is kept no longer than that takes, unless a guard shuts the gas."""
    slots: dict[str, Any] = dict(lighting.advice.slots)
    if lighting.waits_W is not None:
        kept = KEPT[burnt_gas.keeps][lit_by]
        alone = burnt_gas.alone_W
        slots |= {
            "full": burnt_gas.full_s,
            "alone_least": alone and alone.low,
            "torch": burnt_gas.torch_W,
        }
    slide = lighting_slide
    if lighting_width.lacks and lit_by != "guard":
        return verdict("stop", None, lighting.lift_W, case="unset", cures=())  # its cures with the hand's check
    if lighting.rate_W is not None and slide.rate_W is not None and slide.gas_Pa is not None:
        stays = slide.stays or slide.fails[0] == "back"  # as set; what a hand misses by is judged apart
        word = "caution" if not stays else "note" if lighting.close else "good"
        fault = kept[0] in FAULTS
        lifts = slots["lifts"] = _lifts_W(slide)
        low_line = gas_line.there and slide.gas_Pa.value < EASY_LINE_PA * (1 - 1e-9)
        case = word
        if word == "caution" and _full(tries, firing):
            case = "caution_large"
        elif word == "caution" and _low_runs_back(holding, firing):
            case = "caution_low"
        # It leaves little: on a line less than a sloping gauge and a hand miss both ways.
        missed = gas_line.there and 2 * lighting_width.off_Pa > THICKER_LEAVES * slide.gas_Pa.value
        thicker = case in ("caution", "caution_low") and not missed and _thicker_does(tries)
        mends = (*LIGHTING_CURES.get(case, ()), *((("block_thickness", "raise"),) if thicker else ()))
        told = (case, *(("thicker",) if thicker else ()))
        wait = waits(lighting, fired_heat_up)[0] if word == "caution" and lit_by != "guard" else None
        if wait is not None and wait.high > LIP_GLOWS_S:
            slots |= {"rate": slide.rate_W.value, "wait": wait.high}
            told, cures = ("back", f"back_{case}", *told[1:]), (*mends, GUARD)
            return verdict("stop", None, lighting.lift_W, case=told, cures=cures, **slots)
        slots |= {"rate": slide.rate_W.value, "least": slide.rate_W.low, "most": slide.rate_W.high}
        slots |= {
            "easy": EASY_LINE_PA,
            "gas": slide.gas_Pa.value,
            "gas_least": slide.gas_Pa.low,
            "gas_most": slide.gas_Pa.high,
        }
        return verdict(
            max(word, kept[0], "caution" if low_line else "good", key=VERDICTS.index),
            slide.rate_W.value,
            lighting.lift_W,
            case=(*told, *(("low_line",) if low_line else ()), *(("lifts",) if lifts else ()), kept[1]),
            cures=(
                *mends,
                *(STRONGER if low_line and case not in LIGHTING_CURES else ()),
                *(() if not fault else BETTER_PORTS if burnt_gas.keeps == "maybe" else (GUARD,)),
            ),
            **slots,
        )
    # A line's pressure is given, so a smaller jet that wants more of it is no way out.
    weak_line = gas_line.there and lighting.way in ("gas", "gas_and_damper")
    case = f"{lighting.way}_line" if weak_line else lighting.way
    less_gas = () if gas_line.there or case not in ("gas", "gas_and_damper") else (_smaller_jet(jet_drill),)
    guard_first = _too_cool(lighting, lit_by) and lighting.way != "cool"
    does = lighting_width.hole
    tried: tuple[str, ...] = () if lighting.way != "hole" else ("hole_does",) if does else ("hole_none",)
    return verdict(
        "caution" if lighting.way == "torch" else "stop",
        None,
        lighting.lift_W,
        case=("pilot" if lit_by == "guard" else "torch", kept[1])
        if lighting.way == "torch"
        else (*(("guard_first",) if guard_first else ()), case, *tried),
        cures=(*((GUARD,) if guard_first else ()), *LIGHTING_CURES.get(case, ()), *less_gas),
        **slots,
        drill=does and does.name,
    )


def _smaller_jet(jet_drill: str | None) -> tuple[str, str]:
    """Which takes more pressure for the same gas; one that is not chosen follows the gas pressure."""
    return ("jet_drill", "choose") if jet_drill else ("gas_pressure", "raise")


def _too_cool(lighting: LightingTry, lit_by: str) -> bool:
    """Whether it wants a guard, whatever else is mended: no wall lights its gas again."""
    return not lighting.glows and lit_by != "guard"


def _full(tries: Tries, firing: Firing) -> bool:
    """Whether a flame runs back into a lip that glows up to high fire, where it does not lift yet with the mixture
    rich: larger ports take more fire than there is."""
    return any((tries.at(ratio).lift_W or 0.0) > firing.rate_W for ratio in RATIOS)


def _thicker_does(tries: Tries) -> bool:
    """Whether so little room is missing, with a mixture that can be set, that a cooler block leaves it."""
    able = (one for one in map(tries.at, RATIOS) if one.settable_W is not None)
    return any((one.lift_W or 0.0) >= THICKER_DOES * one.glowing_W for one in able)


def _low_runs_back(holding: Holding, firing: Firing) -> bool:
    """Whether it runs back at low fire through ports of the next sizes."""
    return holding.hot_W is not None and firing.low_W < NEXT_SIZE * holding.hot_W.value


def _lifts_W(slide: LightingSlide) -> float | None:
    """Where the flame lifts in fresh air at the mixture of the mark, if that is within the window; else None."""
    if slide.rate_W is None or slide.lifts_W is None or slide.lifts_W >= slide.rate_W.high:
        return None
    return slide.lifts_W


# Faults of a hand that more room cures.
MORE_ROOM = ("lost", "back", "hand", "unset_scale", "unset_room", "unset_band", "unset_blend")
# Settings of what is sold that leaves room, by what is told of it.
WAYS_OUT = {"gauge": ("small_gauge", "choose"), "drill": ("slide_hole", "choose"), "sooner": ("cylinder_left", "raise")}


def _ways_out(width: LightingWidth, blend_light: BlendLight) -> tuple[str, ...]:
    """What was tried and does, in words."""
    tried = {
        "gauge": width.gauge_Pa is not None,
        "drill": width.hole is not None,
        "sooner": blend_light.enough is not None,
        "proven": width.proven,
    }
    return tuple(way for way, does in tried.items() if does)


def lighting_by_hand_check(
    lighting_slide: LightingSlide,
    lighting_meter: LightingMeter,
    lighting_width: LightingWidth,
    gas_line: GasLine,
    blend_light: BlendLight,
    gauges: Gauges,
    jet: Jet,
    jet_drill: str | None,
    lit_by: str,
) -> Judged | None:
    """Whether a hand hits the mixture to light with; None where there is none. What a torch may lose in burnt gas only,
    all careful ends together, is a note where guard or somebody with free hands shuts the gas; what may run back at a
    lip that glows is one where a guard does, for it sees no flame in the box. A window narrower than jets differ by is
    one too where the meter of a line shows what flows before the lip glows, or where a jet that passes little does not
    run back: one that passes much only lifts, which shows at once. Elsewhere it is a caution without a guard until the
    jet is proved. A window that gauge, weighed gas and hand miss is none, and what would leave one was tried. What
    blower and slide are off by besides is told only: no design holds over all of that, so it is lit the first time by
    its flame."""
    slide = lighting_slide
    if slide.ratio is None or slide.unproven is None:
        return None
    failing = [(why, ratio) for why, ratio in zip(slide.fails, (slide.ratio.low, slide.ratio.high)) if why]
    why, bad = min(failing, key=lambda one: ("lost", "back", "burnt").index(one[0]), default=("good", None))
    case = lit_by if why == "burnt" else "back_guard" if why == "back" and lit_by == "guard" else why
    word = {"good": "good", "guard": "note", "stand": "note", "back_guard": "note"}.get(case, "caution")
    ways_out: tuple[str, ...] = ()
    if lighting_width.lacks:
        word, case = "caution" if lit_by == "guard" else "stop", f"unset_{lighting_width.lacks}"
        ways_out = _ways_out(lighting_width, blend_light)
    jets, watched_s = slide.jet_gas_Pa, lighting_meter.watched_s
    proves = (
        "any_jet"
        if slide.any_jet
        else "meter"
        if lighting_meter.in_time
        else "proves_jet"
        if slide.poor_jet
        else "poor_jet"
    )
    narrow = ("meter_narrow",) if proves == "meter" and not lighting_meter.proves else ()
    if proves == "poor_jet" or narrow:
        word = max(word, "note" if lit_by == "guard" else "caution", key=VERDICTS.index)
    told = (case, *ways_out, "finer_line" if gas_line.there else "finer") if case in MORE_ROOM else (case,)
    faults = told if slide.any_jet or case != "good" else ()
    words = (*faults, *(() if slide.any_jet else ("no_pressure",)), proves, *narrow)
    if lighting_width.lacks:
        words = told if lit_by == "guard" else ("unset", *told)
    return verdict(
        max(word, "good" if slide.any_jet else "note", key=VERDICTS.index),
        slide.ratio.value,
        None,
        case=words,
        cures=()
        if word in ("good", "note")
        else (
            *(WAYS_OUT[way] for way in ways_out if way in WAYS_OUT),
            *STRONGER,
            *(() if gas_line.there else (_smaller_jet(jet_drill),)),
        ),
        least=slide.ratio.low,
        most=slide.ratio.high,
        first_least=slide.unproven.low,
        first_most=slide.unproven.high,
        bad=bad,
        jet_low=jet.coefficients[-1],
        jet_high=jet.coefficients[0],
        jet_least=jets and jets.low,
        jet_most=jets and jets.high,
        gas=slide.gas_Pa and slide.gas_Pa.value,
        sure=slide.sure_Pa,
        gas_least=slide.gas_Pa and slide.gas_Pa.low,
        gas_most=slide.gas_Pa and slide.gas_Pa.high,
        off=lighting_width.off_Pa,
        scale=gauges.lit_by_Pa,
        asked=slide.asks_Pa,
        gauge=lighting_width.gauge_Pa,
        drill=lighting_width.hole and lighting_width.hole.name,
        enough=blend_light.enough,
        volume=lighting_meter.volume_m3,
        each=lighting_meter.each_Pa,
        glows=LIP_GLOWS_S,
        fast=watched_s and watched_s[0],
        slow=watched_s and watched_s[1],
        read_off=lighting_meter.off,
    )


def gauges_check(
    gauges: Gauges, jet: Jet, sizes: str, jet_gauge: float | str, small_gauge: float | str
) -> Judged | None:
    """Whether those that stand read high and low fire; what lights it is judged with the hand. None where all are
    chosen for what they read."""
    if jet_gauge == small_gauge == "auto" or jet.high_Pa is None:
        return None
    low_Pa, scale_Pa = gauges.low_fire_Pa, gauges.lit_by_Pa if gauges.reads_low else gauges.jet_Pa
    word = (
        "good"
        if gauges.small and gauges.reads_low
        else ladder(low_Pa / scale_Pa, good=LOW_SHOWN, stop=-inf, slack=1e-9)
    )
    word = "stop" if jet.high_Pa > gauges.jet_Pa else word
    return verdict(
        word,
        low_Pa / scale_Pa,
        LOW_SHOWN,
        cures={"stop": (("jet_gauge", "choose"),), "caution": (("small_gauge", "choose"),)}.get(word, ()),
        high=jet.high_Pa,
        high_scale=gauges.jet_Pa,
        low=low_Pa,
        scale=scale_Pa,
        off=GAUGE_OFF * scale_Pa / low_Pa,
        does=gauge_Pa(pressure_Pa=jet.high_Pa, unit=sizes, from_cylinder=jet.from_cylinder),
    )


def lighting_day_check(lighting_day: LightingDay, lit_by: str) -> Judged | None:
    """Whether the card's own mark and pressure hold on a colder and a warmer day too; None where there are none. What
    only a hand that misses loses then is a note, and so is what a guard shuts the gas on; no stop, for another card may
    be printed for that air."""
    air_K, cold, warm = lighting_day.air_K, lighting_day.cold, lighting_day.warm
    if air_K is None:
        return None
    least_off_K, most_off_K = air_K.value - air_K.low, air_K.high - air_K.value
    nearer_cold = least_off_K < most_off_K
    ended = tuple(sorted({cold, warm} - {""}))
    word = "good" if not ended else "note" if lighting_day.as_set or lit_by == "guard" else "caution"
    return verdict(
        word,
        air_K.low if nearer_cold else air_K.high,
        air_K.value + (-REACH_K if nearer_cold else REACH_K),
        case=("good",) if not ended else ("card", *ended, "missed" if lighting_day.as_set else "as_set"),
        cures=STRONGER if word == "caution" else (),
        air=air_K.value,
        least=air_K.low,
        most=air_K.high,
    )


def _shuts_sooner(card: LightingCard, most: float, less_m3: float) -> bool:
    """Whether with so much less pipe or box a shorter timer does, and that is enough."""
    trial_s = timer_s(card.arrives_s * (1 - less_m3 / card.standing_m3), card.fills_s)
    return trial_s < card.trial_s and trial_s / card.fills_s <= most


def lighting_trial_check(
    lighting_card: LightingCard,
    lighting: Lighting,
    resistance: Resistance,
    plenum: Plenum,
    mix_pipe_length: float,
    lit_by: str,
) -> Judged | None:
    """What is let in till the timer has shut the gas, if it does not take; None where it is not lit. A stop where none
    that is sold waits long enough. They are sold in steps, so a shorter pipe or a shallower box lets in less only where
    it saves one."""
    if lighting.waits_W is None:
        return None
    card = lighting_card
    caution, stop = LET_IN_MOST
    guard = lit_by == "guard"
    slots = {"let_in": card.let_in, "hiss": card.hiss_s, "hand": HAND_S, "trial": card.trial_s}
    if card.late:
        cures = (PIPE, ("mix_pipe", "lower"), BOX)
        return verdict("stop", None, LET_IN, case="late", cures=cures, arrives=card.arrives_s, **slots)
    word = ladder(card.let_in, good=LET_IN, note=stop if guard else caution, stop=inf if guard else stop)
    most = stop if guard or word == "stop" else caution
    pipe = _shuts_sooner(card, most, PIPE_LESS * resistance.mix_pipe.area_m2 * mix_pipe_length)
    box = _shuts_sooner(card, most, BOX_LESS * plenum.length_m * plenum.width_m * plenum.height_m)
    less = (*LET_IN_LESS, *((BOX,) if box else ()), *((PIPE,) if pipe else ()))
    case = (f"{word}_over" if word == "note" and card.let_in > 1 else word) + (
        "_guard" if guard and word != "good" else ""
    )
    fault = word in FAULTS
    sooner = (*(("box",) if box else ()), *(("pipe",) if pipe else ()))
    return verdict(
        word,
        card.let_in,
        LET_IN,
        case=(case, *sooner) if fault else case,
        cures=(*(() if guard else (GUARD,)), *less) if fault else (),
        **slots,
    )


def lighting_wait_check(
    lit_by: str,
    chamber_temperature: float,
    lighting: Lighting,
    lighting_air: LightingAir,
    back_pressure: BackPressure,
) -> Judged | None:
    """Who or what keeps the flame alight until the walls do; None where it is not lit for another reason, unless
    it wants a guard as well: that is told first."""
    unlit = lighting.waits_W is None and lighting.way not in WAITS
    if (unlit and not _too_cool(lighting, lit_by)) or back_pressure.opening_Pa is None:
        return None
    wait, co = lighting_air.wait_s, lighting_air.co_dry
    slots: dict[str, Any] = {"glows": RELIGHTS_K, "hand": HAND_HOLDS_S, "most": LONGEST_WAIT_S}
    slots |= {"stand": STAND_HOLDS_S, "chamber": chamber_temperature, "co": co and co.high}
    if wait is None:
        never = "never" if lighting.glows else "cool"
        word = NEVER_GLOWS[never][lit_by]
        case = f"{never}_{'guard' if lit_by == 'guard' else 'attended'}"
        ways_out = () if word == "good" else (*STRONGER, SOONER) if lighting.glows else (GUARD,)
        return verdict(word, None, LONGEST_WAIT_S, case=case, cures=ways_out, **slots)
    good, most = WAITS_S[lit_by]
    longer, longest = WAITS_BEYOND[lit_by]
    word = "good" if wait.high <= good else longer if wait.high <= most else longest
    how = {"good": "", "note": "long_", "caution": "rich_" if lit_by == "guard" else "long_", "stop": "stop_"}[word]
    cases: tuple[str, ...] = (f"{how}{lit_by}" if how else "good",)
    if lit_by != "guard" and chamber_temperature <= RELIGHTS_K + RELIGHTS_OFF_K:
        # Its colder corners may not light it again.
        word, cases = max(word, "caution", key=VERDICTS.index), ("hardly", *cases)
    cures = () if word in ("good", "note") else (SOONER, *STRONGER) if lit_by == "guard" else (GUARD, SOONER)
    return verdict(word, wait.high, good, case=cases, cures=cures, wait=wait.high, likely=wait.value, **slots)


def lighting_spoils(
    lighting_try: LightingTry,
    lighting: Lighting,
    burnt_gas: BurntGas,
    lit_by: str,
    holding: Holding,
    firing: Firing,
    tries: Tries,
) -> set[str]:
    """Larger or more ports where low fire then runs back, unless it is set higher with them; the lining as below; and
    each by itself where it takes a guard and something else."""
    larger = lighting_try.waits_W is not None and not lighting_try.stays and not _full(tries, firing)
    more = larger or burnt_gas.keeps == "maybe"
    ports = {key for key, _ in STRONGER} if more and _low_runs_back(holding, firing) else set()
    if _too_cool(lighting, lit_by) and lighting.way != "cool":
        return {*SETTINGS_OF_LIGHTING}
    return ports | _lining_spoils(lighting_try, lit_by)


def lighting_wait_spoils(lighting_try: LightingTry, lighting_air: LightingAir, lit_by: str) -> set[str]:
    """The lining as below; and where the walls never glow, which by another alone they do in half of 24 such ovens."""
    return {"lining"} if lighting_air.wait_s is None else _lining_spoils(lighting_try, lit_by)


def _lining_spoils(lighting_try: LightingTry, lit_by: str) -> set[str]:
    """A lining that heats up sooner, where the rate may run back at a lip that glows: without a guard a stop, as hardly
    any walls glow as soon as the lip. Of linings that glow within a hand's few minutes one in three, in 37 plausible
    designs, stands no such heat or takes so little fire that it runs back: stand or guard it is told to take."""
    return {"lining"} if lit_by == "hand" or (lit_by == "stand" and not lighting_try.stays) else set()


def turning_check(
    turning: Turning, lighting_try: LightingTry, lighting: Lighting, firing: Firing, need: Need, lit_by: str
) -> Judged | None:
    """Whether an order of the valves leads to low fire and on to high fire; None where it is not lit, but for that.
    Where it leads to low fire only, that must hold the chamber, or it is a stop; only a guard lights one so cool."""
    to_low, to_high = turning.to_low, turning.to_high
    if to_low is None or to_high is None or (turning.goes_on and lighting.waits_W is None):
        return None
    # Without a way to low fire or on from there it goes straight up to high fire. Without that: from lighting it is not
    # lit at all, from low fire it never gets to the rate that the chamber is judged with.
    worst = next((turn for turn in (to_low, to_high) if not turn.first), None)
    turn = worst or min((to_low, to_high), key=lambda turn: turn.margin)
    case = "good" if worst is None else "low" if not worst.steps else "down" if worst is to_low else "up"
    # Of low fire, to what it is turned down from or up to.
    above = case == "down" and firing.low_W > (lighting_try.waits_W or 0.0)
    full = firing.low_W >= firing.rate_W
    nearer = (("low_fire", "lower"),) if above else () if full else (("low_fire", "raise"),)
    held_W, ended_W = turning.held_W, firing.low_W if worst is to_low else firing.rate_W
    if worst is not None and held_W is not None and ended_W > held_W:
        burners = firing.installed_W / firing.rate_W
        all_W, held_all_W, holds_W, works_W = firing.low_W * burners, held_W * burners, need.hold_W, need.working_W
        no_further = worst is to_high
        cold = no_further and holds_W is not None and all_W < holds_W
        idle = no_further and not cold and works_W is not None and all_W < works_W
        asked_W = works_W if idle else holds_W
        short = ("no_hold",) if cold else ("no_work",) if idle else ()
        if asked_W is not None and asked_W > held_all_W:  # neither less fire nor another low fire comes to that
            what = "cool_more" if no_further else "cool_more_to_hold"
            alike = (
                not no_further and firing.taken_from.case == "setting"
            )  # each of more burners has as high a low fire
            cures = (*MORE_PORTS, *(() if alike else (("burner_count", "raise"),)))
        elif cold:  # less fire is less low fire
            what, cures = "cool_higher", (("low_fire", "raise"), *MORE_PORTS)
        else:
            low = (("low_fire", "raise" if idle else "lower"),) if idle or not no_further else ()
            what, cures = "cool_less" if no_further else "cool_lower", (*low, ("firing_rate", "lower"), *MORE_PORTS)
        return verdict(
            "caution" if no_further and not cold else "stop",
            held_W / ended_W,
            1.0,
            case=("cool" if no_further else "cool_low_guard" if lit_by == "guard" else "cool_low", *short, what),
            cures=cures,
            low=firing.low_W,
            high=firing.rate_W,
            held=held_W,
            held_all=held_all_W,
            asked=asked_W,
            all=all_W,
            holds=holds_W,
            works=works_W,
        )
    stuck = worst is to_high and turning.straight is None
    straight = worst is not None and turning.straight is not None and turning.goes_on
    up = ("unreached",) if stuck else ("straight",) if straight else ()
    as_lit = worst is None and turn.margin < 1  # only where the lighting rate is too near, which is judged there
    steps = max(one.steps for one in (to_low, to_high))
    many = ("many",) if worst is None and steps > FEW_STEPS else ()
    return verdict(
        "note"
        if as_lit or many
        else "good"
        if worst is None
        else "caution"
        if turning.goes_on and not stuck
        else "stop",
        turn.margin,
        1.0,
        case=("as_lit" if as_lit else case, *up, *many),
        cures=() if worst is None else (*nearer, *(FASTER if case == "low" else FASTER[:1])),
        apart=NEXT_GAP_M,
        margin=turn.margin,
        close=CLOSE,
        least=min(one.least_ratio for one in (to_low, to_high)) if worst is None else turn.least_ratio,
        most=max(one.most_ratio for one in (to_low, to_high)) if worst is None else turn.most_ratio,
        low=firing.low_W,
        steps=steps,
    )


def lighting_air_check(lighting_air: LightingAir) -> Judged | None:
    """Whether open doors clear the carbon monoxide of lighting; None where it is not lit, as where nothing does."""
    air = lighting_air
    limit, silent, quiet = air.limit_fraction, air.silent_fraction, air.quiet_m3_s
    if air.co_dry is None or air.fresh_air_m3_s is None or limit is None or silent is None or quiet is None:
        return None
    fresh = air.fresh_air_m3_s.high
    word = "caution" if air.where == "open" else "note" if air.where == "hood" else "good"
    louder = silent < limit
    return verdict(
        word,
        fresh if word == "caution" else quiet,
        DOORS_M3_S,
        case=(
            "note_long" if word == "note" and quiet <= DOORS_M3_S else word,
            "ceiling" if limit >= CEILING_FRACTION else "mean",
            *(("alarm",) if louder and word == "caution" else ("quiet",) if louder else ()),
        ),
        wait=air.wait_s and air.wait_s.high,
        silent=silent,
        quiet=quiet,
        least=air.co_dry.low,
        co=air.co_dry.high,
        fresh=fresh,
        doors=DOORS_M3_S,
        ppm=limit,
        kept=air.kept_fraction,
        day=SHIFT_FRACTION,
        eu_day=EU_DAY_FRACTION,
        eu_short=EU_SHORT_FRACTION,
    )


def lighting_pipe_check(lighting_pipe: LightingPipe) -> Judged | None:
    """By the same limits as the mix pipe at low fire; None where it is not lit."""
    rate_W, runs = lighting_pipe.rate_W, lighting_pipe.velocity_m_s
    flame, own = lighting_pipe.flame_m_s, lighting_pipe.own_m_s
    if runs is None or flame is None or own is None:
        return None
    return judge(runs, good=flame.high, note=own, stop=own, rate=rate_W, runs=runs, likely=flame.value, most=flame.high)


def run_up_check(lighting_card: LightingCard) -> Judged:
    bores = lighting_card.pipe_bores
    return judge(bores, good=RUN_UP_BORES, stop=inf, bores=bores, most=RUN_UP_BORES, volume=lighting_card.standing_m3)


def first_fire_gas_check(first_fire: FirstFire, cylinders: Cylinders) -> Judged | None:
    """Of cylinders that the gas runs out of; None where the burner makes none, or the cold ends them before."""
    takes, holds = first_fire.fuel_kg, cylinders.holds_kg
    if not takes or holds is None or cylinders.ended_by not in ("empty", "changed"):
        return None
    return verdict("note" if holds < takes else "good", takes, holds, takes=takes, holds=holds)


def holidays_check(start_date: date | None, days_off: tuple[tuple[date, date], ...] | None) -> Judged | None:
    """Without a first day of work nobody knows when they fall."""
    if not days_off:
        return None
    days = sum((last - first).days + 1 for first, last in days_off)
    return verdict("good" if start_date else "caution", days, None, days=days)


def curing_air_check(shop: Shop, damp_air: str, slide_hole: str | None) -> Judged | None:
    """None for a burner that stands, whose slide is drilled: it is cast no more, and lit on cold days too."""
    if slide_hole:
        return None
    damp = damp_air == "yes"
    word = ladder(shop.temp_K, good=COLD_TEMP_K, stop=FREEZE_TEMP_K)
    case = {"good": "damp" if damp else "good", "caution": "cold", "stop": "frost"}[word]
    cures = () if word == "good" else (("ambient_temperature", "raise"),)
    return verdict(
        "caution" if case == "damp" else word,
        shop.temp_K,
        COLD_TEMP_K,
        case=case,
        cures=cures + ((("damp_air", "choose"),) if damp else ()),
        air=shop.temp_K,
        frost=FREEZE_TEMP_K,
    )
