"""What is shown in the room Fire: one function a table or chart, named <key>_table or <key>_chart."""

from ..catalogue.sentences import written
from ..catalogue.trouble import SIGNS
from ..making.days import FIRED
from ..parts.batch import Batch
from ..parts.face import Face
from ..parts.fire_test import FireTest
from ..parts.fires import Fires
from ..parts.lighting import Lighting
from ..parts.proof import Proof
from ..parts.schedule import Schedule
from ..parts.welding import Welding
from .view import Plot, Rows, Say

# Cases of a step that need words of their own, for each of its texts.
INSTEAD, BESIDES = {"do": ("rammed",)}, {"go_on": ("frost", "cold")}


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


FIRES = ("fire", "test")  # none of what must not be lit


def days_table(schedule: Schedule, batch: Batch, lighting: Lighting, kiln: str, stopped: bool, say: Say) -> Rows:
    def unlit(step):
        return step.key in FIRES and (stopped or lighting.waits_W is None)

    def go_on(step):
        return say("fire.go_on.kiln") if step.key == "fire" and kiln == "yes" else _text(say, step, "go_on")

    rows = tuple(
        (
            (number, _text(say, step, "title"), say("unlit"), 0.0, 0.0, say("watch.unlit"), say("go_on.unlit"))
            if unlit(step)
            else (
                number,
                _title(schedule, say, step),
                _start(schedule, say, step.start),
                sum(_lasts_s(*spell) for spell in step.spells),
                step.work_h * 3600,
                _text(say, step, "watch"),
                go_on(step),
            )
        )
        for number, step in enumerate(batch.steps, 1)
    )
    return Rows(rows, "one" if batch.burners == 1 else "first", {"count": batch.burners})


def trouble_table(say: Say) -> tuple:
    """Of every burner alike: nothing of it is worked out."""
    return tuple(tuple(say(f"{sign}.{what}") for what in ("sign", "do", "cause", "move")) for sign in SIGNS)


def care_table(
    schedule: Schedule,
    batch: Batch,
    lighting: Lighting,
    fires: Fires,
    fire_test: FireTest,
    proof: Proof,
    burner_count: int,
    face: Face,
    welding: Welding,
    pin_kind: str,
    kiln: str,
    stopped: bool,
    say: Say,
) -> tuple:
    unlit = stopped or lighting.waits_W is None
    dry_K = schedule.dry_K

    def text(step, what):
        if unlit and what == "do" and step.key in FIRES:
            return say(f"{step.key}.do.unlit")
        if step.key == "strip" and what == "do" and face.round:
            return say("strip.do.round")
        if step.key == "fire" and what == "do":
            return say("fire.do" + (".kiln" if kiln == "yes" else ".no_low" if fires.low is None else ""), dry=dry_K)
        if step.key == "test" and what == "do":
            both = fire_test.stays == "low" and fire_test.read == "high"
            cool = "" if lighting.glows else "_cool"
            burns = (fire_test.high_s or fire_test.low_s) / 60
            counted = f".{proof.by}" if proof.each else ".several" if burner_count > 1 else ""
            lights = say(f"lights{counted}")
            cold = say(f"cold.{fire_test.cold}") if fire_test.cold else ""
            how = f"test.do.{'low_high' if both else fire_test.stays}{cool}"
            return say(how, low=fire_test.low_s / 60, burns=burns, lights=lights, cold=cold)
        if step.key == "cast" and what == "do" and welding.wax_m:
            return say("cast.do.joint", wax=welding.wax_m) + " " + _text(say, step, what)
        wax = pin_kind == "wax" and what == "do"
        if pin_kind in ("wax", "plastic") and step.key == "clear" and what == "do":
            return say(f"clear.do.{pin_kind}")
        if step.key == "oven" and what == "do":
            cool = say("oven.do", cool=60 * (batch.work.oven - batch.work.weigh), dry=dry_K)
            return cool + (" " + say("oven.do.wax") if wax else "")
        return _text(say, step, what)

    return tuple(tuple(text(step, what) for what in ("title", "do", "caution", "source")) for step in batch.steps)


def drying_table(schedule: Schedule, lighting: Lighting, units: str, stopped: bool, say: Say) -> tuple:
    """Stage by stage; of what must not be lit none after the oven."""
    unlit = stopped or lighting.waits_W is None

    def ramp(stage):
        if not stage.ramp_K_s:
            return ""
        K_h = stage.ramp_K_s * 3600
        return say("ramp_F", rate=K_h * 1.8) if units == "in" else say("ramp_K", rate=K_h)

    told = [(stage, "") for stage in schedule.stages if stage.name not in FIRED]
    for number, heat in enumerate(() if unlit else schedule.in_heats, 1):
        told += [(stage, say("heat", number=number, heats=schedule.first_fire_heats)) for stage in heat]
    return tuple(
        (say(stage.name), ramp(stage), stage.temp_K, stage.hold_s, heat, written(stage.source, {}, units))
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
