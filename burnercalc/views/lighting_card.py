"""The lighting card: which of its steps this burner has, and in which words and figures each of them is said."""

from itertools import pairwise

from ..catalogue import gases
from ..parts.air_proof import AirProof
from ..parts.blend import Blend
from ..parts.blower import Blower
from ..parts.burnt_gas import BurntGas
from ..parts.cylinders import Cylinders
from ..parts.damper_marks import DamperMarks
from ..parts.fires import Fires
from ..parts.firing import Firing
from ..parts.gas_line import GasLine
from ..parts.gauges import TUBE_OFF_PA, Gauges
from ..parts.jet import Jet
from ..parts.lighting import DOORS_M3_S, HAND_HOLDS_S, STEADY_S, Lighting
from ..parts.lighting_air import LightingAir
from ..parts.lighting_card import COOL_K, HAND_S, PILOT_S, LightingCard
from ..parts.lighting_day import LightingDay
from ..parts.lighting_meter import LightingMeter
from ..parts.lighting_slide import LightingSlide
from ..parts.lighting_steps import LightingSteps
from ..parts.lighting_try import LIP_GLOWS_S, RELIGHTS_K
from ..parts.lighting_width import LightingWidth
from ..parts.pilot import Pilot
from ..parts.regulated import Regulated
from ..parts.shop import Shop
from ..parts.turning import Turning
from .view import Say

STEPS = (
    *("look", "purge", "torch", "set", "trial", "out", "gas", "several", "lit", "air", "then", "high", "attend"),
    *("pop", "stop", "fails", "smell"),
)
OF_NO_FLAME = ("set", "stop", "smell")  # what is told where it must not be lit
AIR_KG_MOL = 0.02896  # dry air
AS_AIR = 0.9, 1.1  # times its weight: such a gas neither sinks nor rises for sure. Common practice
SMOKES_FROM = 1.3  # mixture, richer than which a flame is yellow and may smoke; common practice
TAP_SHOWN_PA = TUBE_OFF_PA  # at the tap, less than which no sloping gauge tells from nothing; common practice
BETWEEN = 0.01  # that the mixture between the valves is beyond both ends of a turn, at the least to be told
POPS_FROM = 1.05  # mixture from which what stands in the ports is slow enough when it passes 1; common practice


def lighting_card_table(
    burner_count: int,
    equivalence_ratio: float,
    gas_line: GasLine,
    cylinder: str,
    cylinder_count: int,
    lighting: Lighting,
    lighting_slide: LightingSlide,
    lighting_card: LightingCard,
    lighting_day: LightingDay,
    lighting_meter: LightingMeter,
    pilot: Pilot,
    lighting_width: LightingWidth,
    gauges: Gauges,
    lighting_air: LightingAir,
    burnt_gas: BurntGas,
    turning: Turning,
    lighting_steps: LightingSteps,
    lit_by: str,
    damper_marks: DamperMarks,
    fires: Fires,
    jet: Jet,
    firing: Firing,
    regulated: Regulated,
    blower: Blower,
    air_proof: AirProof,
    shop: Shop,
    fuel_blend: tuple[tuple[str, float], ...] | None,
    blend: Blend,
    cylinders: Cylinders,
    slide_hole: str | None,
    stopped: bool,
    say: Say,
) -> tuple:
    """When, what to do and source of each step. `stopped`: by any check of the design; then nothing tells how to
    light it, as where it must not be lit."""
    card, air, steps = lighting_card, lighting_air, lighting_steps
    way = _way(lighting, lighting_slide, stopped)
    unlit = way in ("never", "stopped")
    to_low = unlit or fires.low is not None
    turns = {} if unlit else {"then": turning.to_low, "high": turning.straight or turning.to_high}
    low_way = (*steps.to_low, steps.low)  # steps of the valves from lighting to low fire
    before_high = () if turning.straight else low_way

    def cock(step, before):
        """Shut before the first step that the small gauge does not show."""
        first = not step.small and all(one.small for one in before)
        return say("cock", scale=gauges.lit_by_Pa) if first else ""

    def by_way(those, before):
        said = (
            say("step", cock=cock(one, (*before, *those[:n])), gas=one.gas_Pa, damper=scratched(one.damper))
            for n, one in enumerate(those)
        )
        return "".join(said)

    def scratched(damper):
        """By the number of its mark on the slide, where there is one; its size is on the slide's plan, for the air that
        it was built for."""
        for mark, end in (("step.to_low", steps.low), ("step.to_high", steps.high)):
            if damper == end.damper and "size" in damper.slots:
                return say(mark)
        n = next((n for n, one in enumerate(steps.marks, 1) if one == damper), None)
        by_number = n and not (slide_hole and lighting_slide.kind == "hole")
        return say("step.mark" if by_number else f"step.{damper.case}", n=n, **damper.slots)

    weighs = jet.molar_mass_kg_mol / AIR_KG_MOL
    where = "high" if weighs < AS_AIR[0] else "low" if weighs > AS_AIR[1] else "both"
    reopens = gauges.small and steps.low.small and not steps.high.small
    cock_shut = say("cock_shut") if gauges.small else ""
    flame = say("flame.pilot" if lit_by == "guard" else "flame.torch")
    source = gas_line.source(cylinder, cylinder_count)
    of_it = f"{source}.guard" if lit_by == "guard" else source
    left_kg = None if cylinders.full_kg is None else blend.left_share * cylinders.full_kg
    each_kg_s = (firing.gas_kg_s + pilot.gas_kg_s) * burner_count / cylinder_count
    hourly_kg = 3600 * each_kg_s * blend.heaviest_times
    drawn = say(f"drawn.{source}", left=blend.left_share, mass=left_kg, hourly=hourly_kg) if blend.ends else ""
    ends = [lighting_slide.ratio and lighting_slide.ratio.value * one.ratio_times for one in blend.ends] or [None]
    several = burner_count > 1
    alone = say("alone.several") if several else ""
    every = say("blower.several" if several and blower.burners == 1 else "blower")
    opened, keeper = say(f"opened.{of_it}"), "pilot" if lit_by == "guard" else "torch"
    slots = {
        **_figures_of_lighting(lighting, lighting_slide, firing, say),
        "cleared": say("cleared.wide" if card.wide else "cleared.high"),
        "blend": say("blend", shares=gases.shares(fuel_blend), drawn=drawn) if fuel_blend else "",
        "drifts": "" if None in ends else say("drifts", first=ends[0], last=ends[1]),
        "jets": _doubts(lighting_slide, lighting_meter, say),
        "on_to": say("on_to.meter" if _by_meter(lighting_slide, lighting_meter) else "on_to"),
        "air": air_told(lighting_day, shop, _built(jet, lighting_slide, gauges, slide_hole, say), say),
        "band": _band(lighting_width, say),
        "meter": _metered(lighting_meter, lighting_slide, alone + say(f"alone.{keeper}", pilot_rate=pilot.rate_W), say),
        "counted_first": say("counted_first") if lighting_meter.pilot_s and not unlit else "",
        "new": say("new"),
        "long": _long(lighting_air, burnt_gas, flame, say),
        "tap": say("tap", low=by_air.low, high=by_air.high) if (by_air := air_proof.alone_Pa) else say("tap.none"),
        "to_light": say("to_light.several" if several else "to_light"),
        "tap_lit": _tap_lit(lighting_slide, say),
        "ready": say("ready", opened=opened, holds="" if gas_line.there else _holds(fires, regulated, say)),
        "holds_again": "" if gas_line.there or not fires.high else say("holds_again", outlet=regulated.outlet_Pa),
        "further": _further(lighting_slide, lighting_meter, gauges, card, say),
        "lip": say("lip", glows=LIP_GLOWS_S) if fires.lip_back else "",
        "glows": LIP_GLOWS_S,
        **_figures_of_card(card),
        **_figures_of_air(air),
        "flame": flame,
        "not_before": say("not_before") if lighting.glows else "",
        "over": say("over") if card.let_in > 1 else "",
        "burnt": _burnt(burnt_gas, flame, say) + (say("away") if lit_by != "guard" else ""),
        "cock_shut": cock_shut,
        "cock_first": say("cock_shut" if gauges.by_line else "cock_first") if gauges.small else "",
        "cock_open": say("cock_open", scale=gauges.lit_by_Pa) if gauges.small and gauges.by_line else "",
        "blind": say("blind", trial=card.trial_s),
        "again": say("again.several" if several else "again", purge=card.purge_s),
        "firing": say("firing.several" if several else "firing"),
        "put_out": say(f"put_out.{keeper}"),
        "neighbours": say("neighbours"),
        "whose": say("whose.several" if several else "whose"),
        "first": say("torch.when.guard" if lit_by == "guard" else "torch.when"),
        "blower": every,
        "damper": say("damper.several" if several else "damper"),
        "in_turn": say("in_turn"),
        "reset": say("reset", trial=card.trial_s),
        "read": say("read.tube" if gauges.kind == "tube" else "read.gauge"),
        "aside": say("aside"),
        "source": say(f"source.{source}"),
        "behind": say(f"behind.{of_it}", follows=say("follows")),
        "cut": _cut(of_it, keeper, burner_count, every, say),
        "alarm": say("alarm", flame=flame),
        "hot": say("hot" if lighting.glows else "hot.cool"),
        "counted": say("counted") if several else "",
        "back": say("back.torch" if way == "torch" else "back.light", cock_shut=cock_shut),
        "sniff": say(f"sniff.{where}"),
        "lies": say(f"lies.{where}"),
        "pops": "" if unlit else _pops(equivalence_ratio, lighting, say),
        "from_low": say("from_low") if to_low else "",
        "down": _down(turning, fires, say("reopens", scale=gauges.lit_by_Pa) if reopens else "", say),
        "relights": RELIGHTS_K,
        "arm": HAND_HOLDS_S,
        "steady": STEADY_S,
        "low_gas": steps.low.gas_Pa,
        "low": firing.low_W,
        "low_mark": _told(say, "mark", damper_marks.low),
        "low_cock": cock(steps.low, steps.to_low),
        "high_gas": steps.high.gas_Pa,
        "high_mark": _told(say, "mark", damper_marks.high),
        "high_rate": steps.high.rate_W,
        "cock": cock(steps.high, (*before_high, *steps.to_high)),
    }
    starts = {"then": lighting.waits_ratio, "high": lighting.waits_ratio if turning.straight else equivalence_ratio}
    starts_W = {"then": lighting.waits_W, "high": lighting.waits_W if turning.straight else firing.low_W}
    lit_Pa = lighting_slide.gas_Pa and lighting_slide.gas_Pa.value
    marks_Pa = {"then": (lit_Pa, steps.low.gas_Pa)}
    marks_Pa["high"] = lit_Pa if turning.straight else steps.low.gas_Pa, steps.high.gas_Pa
    whys = {step: _why(turn, (starts[step], equivalence_ratio), marks_Pa[step], say) for step, turn in turns.items()}
    near_back = say("near_back", back=fires.back_W, at=say(f"near_back.{hot}")) if (hot := fires.hot_back) else ""
    by_the_way = {"then": by_way(steps.to_low, ()), "high": by_way(steps.to_high, before_high)}
    cool = "" if lighting.glows else "cool_guard"
    cases = {  # words of their own, where a step has them
        "look": air.where,
        "purge": "wide" if card.wide else "",
        "air": air.where,
        "torch": "" if lit_by == "stand" else lit_by,
        "set": (lighting.way if f"set.do.{lighting.way}" in say.words else "never") if way == "never" else way,
        "gas": way,
        "trial": "guard" if lit_by == "guard" else "",
        "out": "several" if several else "",
        "lit": cool or way,
        **{step: (turn.first or "none") if turn else way for step, turn in turns.items()},
        **({"then": "gas_alone"} if fires.gas_alone else {}),
        **({"then": "straight" if lighting.glows else "straight_cool"} if turning.straight else {}),
        "attend": lit_by,
        **({"high": "cool"} if turning.held_W is not None else {}),
        **({"high": "same"} if firing.low_W >= firing.rate_W and to_low else {}),
        "several": "one" if blower.burners > 1 else "",
        "stop": "unlit" if unlit else "",
        "fails": "several" if several and card.switch_before else "",
    }
    left_out = {
        "several": not several,
        "air": air.co_dry is None,
        "high": turning.to_high is None,
        **({step: True for step in STEPS if step not in OF_NO_FLAME} if unlit else {}),
    }

    def near(step):
        """Told once: where it stays at low fire, else where it is turned to it."""
        return near_back if step == ("high" if turning.held_W is not None or turning.straight else "then") else ""

    def do(step):
        words, turn = f"{step}.do.{cases.get(step, '')}", turns.get(step)
        many = "in_steps.one" if turn and turn.steps == 1 else "in_steps.more"
        count = turn and say(f"high.{many}" if step == "high" else many, steps=turn.steps)
        found = words if words in say.words else f"{step}.do"
        return say(
            found,
            in_steps=count,
            ups=f" {ups}" if (ups := _ups(turn, starts_W.get(step))) > 1 else "",
            by_way=by_the_way.get(step, ""),
            why=whys.get(step, ""),
            near_back=near(step),
            **slots,
        )

    def when(step):
        words = f"{step}.when.{'cool' if cool and step == 'then' else cases.get(step, '')}"
        return say(words if words in say.words else f"{step}.when", **slots)

    return tuple((when(step), do(step), say(f"{step}.source")) for step in STEPS if not left_out.get(step))


def _down(turning, fires, reopens, say):
    """Back through the same states: each step with the other valve first than on the way up."""
    if fires.straight:
        return say("down.straight")
    turn = turning.to_high
    return say(f"down.{turn.first}", reopens=reopens) if turn and turn.first else ""


def _long(air, burnt_gas, flame, say):
    """Told first of all: that it is lit rich for longer than one would think."""
    if air.wait_s is None or air.co_dry is None or air.wait_s.high <= STEADY_S:
        return ""
    maybe = say("long.maybe", flame=flame) if burnt_gas.keeps == "maybe" else ""
    return say("long", wait=air.wait_s.high, co=air.co_dry.high, maybe=maybe)


def _cut(of_it, keeper, burner_count, blower, say):
    """What hands shut where air or power fails: nobody knows of a valve that it has shut."""
    then_off = say(f"then_off.{keeper}", behind=say(f"behind.{of_it}", follows=""))
    words = "cut.several" if burner_count > 1 else "cut"
    return say(words, then_off=then_off, no_blower=say("no_blower", blower=blower))


def _way(lighting, lighting_slide, stopped):
    """How it is lit, or never, or stopped where it could be."""
    lit = lighting.rate_W is not None
    if not lit and lighting.way != "torch":
        return "never"
    if stopped:
        return "stopped"
    return "torch" if not lit else "stays" if lighting_slide.stays else ""


def _ups(turn, from_W):
    """In how many of its steps the rate goes up, the first of them."""
    rates_W = (from_W or 0.0, *(rate_W for rate_W, _ in turn.stops)) if turn else ()
    return sum(after > before for before, after in pairwise(rates_W))


def _why(turn, ends, marks_Pa, say):
    """Why not the other order, and what the mixture is between the two valves, where it is beyond both ends: never
    richer where gas goes first and its gauge goes down."""
    if turn is None or not turn.first:
        return ""
    between = ""
    falls = turn.first == "gas" and all(marks_Pa) and marks_Pa[1] <= marks_Pa[0]
    if turn.most_ratio > max(ends) + BETWEEN and not falls:
        between = say(f"between.{'smokes' if turn.most_ratio > SMOKES_FROM else 'rich'}", ratio=turn.most_ratio)
    elif turn.least_ratio < min(ends) - BETWEEN:
        between = say("between.lean", ratio=turn.least_ratio)
    other = say(f"other.{turn.first}")
    return say(f"why.{turn.other or 'none'}", other=other, between=between) if turn.other or between else ""


def _holds(fires, regulated, say):
    """Where the regulator stands; low where no fire above those that it is lit and turned to may be gone to."""
    high = "holds.light" if regulated.to_light else "holds"
    words = high if fires.high else "holds.least" if regulated.at_least else "holds.low"
    return say(words, outlet=regulated.outlet_Pa)


def _further(slide, meter, gauges, card, say):
    """How far the needle may go on where not all of it lights: to the most before the jet; by the meter to what one
    that passes little takes."""
    if slide.gas_Pa is None:
        return ""
    if gauges.kind == "tube":  # whose cock is shut till all burn, and the other shows no less
        return say("further.tube", hiss=card.hiss_s, beyond=gauges.lit_by_Pa)
    by_meter = _by_meter(slide, meter) and slide.jet_gas_Pa
    beyond_Pa = max(slide.gas_Pa.high, slide.jet_gas_Pa.high) if by_meter else slide.gas_Pa.high
    return say("further", hiss=card.hiss_s, beyond=beyond_Pa)


def _told(say, kind, of):
    return say(f"{kind}.{of.case}", **of.slots)


def _pops(equivalence_ratio, lighting, say):
    """Gas shut at once leans the mixture out through what runs back soonest, near 1, if it was richer."""
    if equivalence_ratio > POPS_FROM:
        return say("pops.rich")
    return say("pops.light") if lighting.glows and (lighting.waits_ratio or 0.0) > POPS_FROM else ""


def _burnt(burnt_gas, flame, say):
    told = burnt_gas.full_s and burnt_gas.keeps in ("torch", "maybe")
    return say(f"burnt.{burnt_gas.keeps}", full=burnt_gas.full_s, flame=flame) if told else ""


def air_told(day: LightingDay, shop: Shop, built: str, say: Say) -> str:
    """In which air mark and pressure hold, or for which they are worked out."""
    air_K = day.air_K
    if air_K is None:
        return say("air_own", built=built, own=shop.temp_K)
    return say("air_span", built=built, least=air_K.low, most=air_K.high, own=air_K.value)


def _built(jet, slide, gauges, slide_hole, say):
    """With which jet, hole and gauge alone they hold: in other air `auto` takes others."""
    gauge = say(f"gauge.{gauges.kind}", scale=gauges.lit_by_Pa)
    if slide.kind == "hole":
        words = "built.anew" if slide_hole else "built.hole"
        return say(words, jet=jet.drill_name, hole=slide.drill.name, gauge=gauge)
    return say("built", jet=jet.drill_name or "-", gauge=gauge)


def _band(width, say):
    """None that its marks leave nothing of is told as if a hand could hit it."""
    if width.band_Pa is None:
        return ""
    least_Pa, most_Pa = width.band_Pa
    return say("band" if least_Pa < most_Pa else "band.one", least=least_Pa, most=most_Pa)


def _metered(meter, slide, alone, say):
    watched_s, own_s = meter.watched_s, meter.corrected_s
    if not watched_s or not meter.told:
        return ""
    own = say("meter.own", fast=own_s[0], slow=own_s[1]) if own_s else ""
    late = "" if slide.any_jet else say("meter.late", glows=LIP_GLOWS_S)
    told = {"alone": alone, "volume": meter.volume_m3, "own": own, "each": meter.each_Pa}
    return say("meter", fast=watched_s[0], slow=watched_s[1], **told) + late


def _by_meter(slide, meter):
    """Whether the meter proves what the jet passes before a lip may glow, as no pressure does."""
    return not slide.any_jet and meter.in_time


def _doubts(slide, meter, say):
    """What the pressure leaves open: a cold flame may burn on less than a lip that glows needs."""
    if slide.any_jet or meter.in_time:
        return ""
    return say("jets.least" if slide.poor_jet else "jets.poor", sure=slide.sure_Pa)


def _tap_lit(slide, say):
    """Beside what is set; none of what no sloping gauge shows."""
    pipe_Pa = slide.advice.slots.get("pipe")
    return say("tap_lit", pipe=pipe_Pa) if pipe_Pa is not None and abs(pipe_Pa) >= TAP_SHOWN_PA else ""


def _figures_of_lighting(lighting, lighting_slide, firing, say):
    told, lit = lighting_slide.advice.slots, lighting.rate_W is not None
    return {
        "rate": told.get("rate") if lit else firing.low_W,
        **{key: told.get(key) for key in ("gas", "gas_least", "gas_most", "open", "pipe", "ratio")},
        "mark": _told(say, "mark", lighting_slide.mark) if lit else None,
    }


def _figures_of_card(card):
    return {
        "purge": card.purge_s,
        "five": card.five_volumes_s,
        "hiss": card.hiss_s,
        "trial": card.trial_s,
        "pilot": PILOT_S,
        "arrives": card.arrives_s,
        "let_in": card.let_in,
        "hand": HAND_S,
        "by_hand": card.by_hand_s,
        "seen": card.by_hand_s - HAND_S,
        "times": card.slips,
        "run_on": card.run_on_min * 60,
        "cool": COOL_K,
        "switch": card.switch_Pa,
    }


def _figures_of_air(air):
    wait, carbon_monoxide = air.wait_s, air.co_dry
    return {
        "likely": wait and wait.value,
        "wait": wait and wait.high,
        "doors": DOORS_M3_S,
        "kept": air.kept_fraction,
        "least": carbon_monoxide and carbon_monoxide.low,
        "co": carbon_monoxide and carbon_monoxide.high,
        "fresh": air.quiet_m3_s,
    }
