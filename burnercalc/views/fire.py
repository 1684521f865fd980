"""What is shown in the room Fire: one function a table or chart, named <key>_table or <key>_chart."""

from ..catalogue.sentences import written
from ..making.days import FIRED
from ..parts.batch import Batch
from ..parts.blower import Blower
from ..parts.burnt_gas import BurntGas
from ..parts.damper_marks import DamperMarks
from ..parts.firing import Firing
from ..parts.gas import Gas
from ..parts.gauges import Gauges
from ..parts.jet import Jet
from ..parts.lighting import Lighting
from ..parts.lighting_air import LightingAir
from ..parts.lighting_card import COOL_K, HAND_S, LET_IN, LightingCard
from ..parts.lighting_slide import LightingSlide
from ..parts.lighting_steps import LightingSteps
from ..parts.lighting_try import RELIGHTS_K
from ..parts.schedule import Schedule
from ..parts.turning import Turning
from .view import Plot, Rows, Say

# Cases of a step that need words of their own, for each of its texts.
INSTEAD, BESIDES = {"do": ("rammed",)}, {"go_on": ("frost", "cold")}


# Steps of the lighting card, in order.
CARD = (
    *("look", "purge", "torch", "set", "trial", "out", "lit", "air", "then", "high", "several", "attend"),
    *("pop", "stop", "fails", "smell"),
)
# Those of a burner that is lit.
LIT = ("purge", "torch", "trial", "lit", "air", "then", "high", "several", "attend")


POPS_FROM = 1.05  # mixture from which what stands in the ports is slow enough when it passes 1; common practice


def lighting_card_table(
    burner_count: int,
    equivalence_ratio: float,
    gas: Gas,
    lighting: Lighting,
    lighting_slide: LightingSlide,
    lighting_card: LightingCard,
    gauges: Gauges,
    lighting_air: LightingAir,
    burnt_gas: BurntGas,
    turning: Turning,
    lighting_steps: LightingSteps,
    lit_by: str,
    damper_marks: DamperMarks,
    jet: Jet,
    firing: Firing,
    blower: Blower,
    stopped: bool,
    say: Say,
) -> tuple:
    """`stopped`: by any check of the design; then nothing tells how to light it, as where it must not be lit."""
    card, air, lit = lighting_card, lighting_air, lighting.rate_W is not None
    torch = lighting.way == "torch"
    way = ("stays" if lighting_slide.stays else "") if lit else "torch" if torch else "never"
    stopped = stopped and way != "never"
    way = "never" if stopped else way
    guard = lit_by == "guard"
    dim = way != "never" and lighting.glows and air.wait_s is None

    # Gas shut at once leans the mixture out through what runs back soonest, near 1, if it was richer.
    pops = (
        "rich"
        if equivalence_ratio > POPS_FROM
        else "light"
        if lighting.glows and (lighting.waits_ratio or 0.0) > POPS_FROM
        else ""
    )

    def mark(told):
        return say(f"mark.{told.case}", **told.slots)

    def step_mark(told):
        return say(f"step.{told.case}", **told.slots)

    def cock(step, *before):
        """Shut before the first step that the small gauge does not show."""
        shut = not step.small and all(one.small for one in before)
        return say("cock", scale=gauges.lit_by_Pa) if shut else ""

    told = lighting_slide.advice.slots
    slots = {
        "rate": told.get("rate") if lit else firing.low_W,
        **{key: told.get(key) for key in ("gas", "gas_least", "gas_most", "open", "pipe", "ratio")},
        "jets": say("jets.sure") if lighting_slide.any_jet else "",
        "burnt": say(f"burnt.{burnt_gas.keeps}", full=burnt_gas.full_s)
        if burnt_gas.full_s and burnt_gas.keeps in ("torch", "maybe")
        else "",
        "mark": mark(lighting_slide.mark) if lit else None,
        "cock_open": say("cock_open") if gauges.small else "",
        "fire": say("fire.guard" if guard else "fire"),
        "read": say("read.gauge" if gas.liquid else "read.tube"),
        "purge": card.purge_s,
        "five": card.five_volumes_s,
        "hiss": card.hiss_s,
        "arrives": card.arrives_s,
        "let_in": card.let_in,
        "hand": HAND_S,
        "by_hand": card.by_hand_s,
        "times": card.slips,
        "run_on": card.run_on_s,
        "pops": say(f"pops.{pops}") if pops and way != "never" else "",
        "relights": RELIGHTS_K,
        "cool": COOL_K,
        "switch": card.switch_Pa,
        "low_gas": jet.low_Pa,
        "low": firing.low_W,
        "likely": air.wait_s and air.wait_s.value,
        "wait": air.wait_s and air.wait_s.high,
        "least": air.co_dry and air.co_dry.low,
        "co": air.co_dry and air.co_dry.high,
        "fresh": air.fresh_air_m3_s and air.fresh_air_m3_s.high,
        "low_mark": mark(damper_marks.low),
        "high_gas": lighting_steps.high.gas_Pa,
        "high_mark": mark(damper_marks.high),
        "high_rate": firing.rate_W,
    }

    straight = turning.straight
    turns = (
        {} if way == "never" else {"then": None if straight else turning.to_low, "high": straight or turning.to_high}
    )
    to_low, to_high = (*lighting_steps.to_low, lighting_steps.low), lighting_steps.to_high
    slots["low_cock"] = cock(lighting_steps.low, *lighting_steps.to_low)
    slots["cock"] = cock(lighting_steps.high, *(() if straight else to_low), *to_high)
    ways_there = {"then": lighting_steps.to_low, "high": lighting_steps.to_high}
    before = {"then": (), "high": () if straight else to_low}
    unlit = lighting.way if f"set.do.{lighting.way}" in say.words else "never"
    late = "" if card.let_in <= LET_IN else "late_guard" if guard else "late"
    cool = "" if lighting.glows else "cool_guard"
    ways = {
        "look": air.where,
        "air": air.where,
        "torch": "" if lit_by == "stand" else lit_by,
        "set": "stopped" if stopped else unlit if way == "never" else way,
        "trial": late,
        "lit": way if way == "never" else cool or ("dim" if dim else way),
        **{step: ("none" if turn.first == "" else turn.first) if turn else way for step, turn in turns.items()},
        **({"then": "straight"} if straight else {}),
        **({"high": "cool"} if turning.held_W is not None else {}),
        "several": "one" if blower.burners > 1 else "",
        "fails": ("before_several" if burner_count > 1 else "before") if card.switch_before else "",
    }
    left_out = {
        "several": burner_count == 1,
        "air": air.co_dry is None,
        "then": dim,
        "high": dim or turning.to_high is None,
        **(dict.fromkeys(LIT, True) if way == "never" else {}),
    }
    steps = [step for step in CARD if not left_out.get(step)]

    def by_way(step):
        there, gone = ways_there.get(step, ()), before.get(step, ())
        told = [
            say(
                "step",
                cock=cock(one, *gone, *there[:n]),
                gas=one.gas_Pa,
                damper=step_mark(one.damper),
            )
            for n, one in enumerate(there)
        ]
        return "".join(told)

    def do(step):
        words, turn = f"{step}.do.{ways.get(step, '')}", turns.get(step)
        many = "in_steps.one" if turn and turn.steps == 1 else "in_steps.more"
        steps = turn and say(f"high.{many}" if step == "high" else many, steps=turn.steps)
        return say(words if words in say.words else f"{step}.do", in_steps=steps, by_way=by_way(step), **slots)

    def when(step):
        return say(f"{step}.when.cool" if cool and step == "then" else f"{step}.when", **slots)

    return tuple((when(step), do(step), say(f"{step}.source")) for step in steps)


def _text(say, step, what):
    """A text of a step: what its notes say instead, if anything, and what they add."""
    instead = [note for note in step.notes if note in INSTEAD.get(what, ())]
    words = [f"{step.key}.{what}.{instead[0]}" if instead else f"{step.key}.{what}"]
    words += [f"{what}.{note}" for note in step.notes if note in BESIDES.get(what, ())]
    return " ".join(say(key) for key in words)


def _start(schedule, say, moment):
    """When something starts: a date with its day of the week, or the number of the day."""
    if schedule.dated:
        return f"{moment:%a %Y-%m-%d, %H:%M}"
    return say("day", number=(moment.date() - schedule.first).days + 1, time=f"{moment:%H:%M}")


def _lasts_s(start, end):
    return (end - start).total_seconds()


def _title(schedule, say, step):
    """The step; a first fire of several heats with the start of each, and how long somebody stands by it."""
    if step.key != "fire" or len(step.spells) == 1:
        return _text(say, step, "title")
    heats = [say("heat", start=_start(schedule, say, start), lasts=_lasts_s(start, end)) for start, end in step.spells]
    return say("heats", title=_text(say, step, "title"), heats="; ".join(heats))


def days_table(schedule: Schedule, batch: Batch, say: Say) -> Rows:
    rows = tuple(
        (
            number,
            _title(schedule, say, step),
            _start(schedule, say, step.start),
            sum(_lasts_s(*spell) for spell in step.spells),
            step.work_h * 3600,
            _text(say, step, "watch"),
            _text(say, step, "go_on"),
        )
        for number, step in enumerate(batch.steps, 1)
    )
    return Rows(rows, "one" if batch.burners == 1 else "first", {"count": batch.burners})


def care_table(batch: Batch, lighting: Lighting, pin_kind: str, stopped: bool, say: Say) -> tuple:
    def text(step, what):
        if step.key == "fire" and what == "do" and (stopped or lighting.waits_W is None):
            return say("fire.do.unlit")
        wax = pin_kind == "wax" and what == "do"
        if wax and step.key == "clear":
            return say("clear.do.wax")
        return _text(say, step, what) + (" " + say("oven.do.wax") if wax and step.key == "oven" else "")

    return tuple(tuple(text(step, what) for what in ("title", "do", "caution", "source")) for step in batch.steps)


def drying_table(schedule: Schedule, units: str, say: Say) -> tuple:
    def ramp(stage):
        if not stage.ramp_K_s:
            return ""
        K_h = stage.ramp_K_s * 3600
        return say("ramp_F", rate=K_h * 1.8) if units == "in" else say("ramp_K", rate=K_h)

    told = [(stage, "") for stage in schedule.stages if stage.name not in FIRED]
    for number, heat in enumerate(schedule.in_heats, 1):
        told += [(stage, say("heat", number=number, heats=schedule.first_fire_heats)) for stage in heat]
    return tuple(
        (stage.name, ramp(stage), stage.temp_K, stage.hold_s, heat, written(stage.source, {}, units))
        for stage, heat in told
    )


def drying_chart(schedule: Schedule) -> Plot:
    times = tuple(point.time_s for point in schedule.curve)
    temps = tuple(point.temp_K for point in schedule.curve)
    return Plot(
        x=(0, times[-1]),
        y=(min(temps) - 10, max(temps) + 50),
        series={"temperature": (times, temps)},
        case="split" if schedule.first_fire_heats > 1 else "shows",
        slots={
            "heats": schedule.first_fire_heats,
            "oven": schedule.oven_temp_K,
            "hold": schedule.oven_hold_s,
            "first_fire": schedule.first_fire_s,
            "watched": schedule.watched_s,
        },
    )
