"""The damper's mark to light at as something a hand can set, and how near gas and air come to the mixture with it."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import cache, cached_property
from itertools import chain
from math import hypot, inf

from ..catalogue.sentences import Said, said
from ..making import slide
from ..physics import drills
from ..physics.band import Band
from ..physics.drills import Drill
from .blower import Blower
from .gas_line import GasLine
from .gauges import Gauges
from .hand import GAP_OFF_M, NEEDLE_OFF, RULE_OFF_M
from .lighting import Lighting
from .lighting_try import RATIOS
from .resistance import Resistance
from .tries import TORCH_LIFT, Tries
from .turning import LAW_ENDS

# All common practice.
HOLE_OFF = 0.02  # of a hole's area: a drill runs a hundredth wide or not
BLOWER_OFF = 0.06  # of the air: 12 % of its pressure, nearly all of which the slide takes
LEAK, BLUNT = 0.09, 0.15  # more air past a slide that is not tight, and through a hole whose edge is not sharp
GRID = 50  # mixtures a unit at which limits are worked out; the same one is asked for again and again
# In these steps: how far the ends are looked for, and the leanest and richest that are tried.
STEPS, LEANEST, RICHEST = 8, 30, round(GRID * LAW_ENDS)
MOVED = 0.9, 1.05  # of the mixture aimed at: as far as a hole that is there may move it; common practice
NEAR = 5  # drills that are tried, the nearest first
FAMILIES = {"in": ("number", "letter", "fraction"), "mm": ("metric",)}


@dataclass(frozen=True)
class LightingSlide:
    """`kind`: hole, gap (against the shank of a drill) or rule; "" where it is not lit. `open_share`: of the pipe, as
    the mark has it.

    `rate_W`, `gas_Pa`: from, the one to light at, and to, the slide left where it is, so that less gas is leaner too:
    between them the flame neither runs back nor lifts off behind a torch, in burnt gas either where it can hold so, nor
    runs back into a lip that glows where it can wait there. All as the gauge shows them; the one to light at as it was
    asked for, but no nearer to the ends than jet, gauge and mark are off; else so far from the lean end alone, or in
    the middle. `any_jet`: whether it is between them whatever the jet's coefficient is; `poor_jet`: whether the jet of
    the least does not lead beyond the lean one. `sure_Pa`: from which on none does; the one to light at where even that
    is too little. `room_Pa`: between the ends before the gauge's marks narrow them, so that no verdict goes by where a
    mark happens to lie; `sure_room_Pa`: of that what no jet of the least runs back in, too. `asks_Pa`: the one to light
    at, whatever the gauge's scale. `jet_gas_Pa`: what passes the gas to light with through a jet of the most, as set,
    and of the least.
    `stays`: it does not run back at a lip that glows, nor does it where a hand misses. `pipe_Pa`: in the mix pipe,
    `tap_Pa`: at its tap.
    `ratio`: the mixture it comes to, with what a hand may miss, and of a blend from the first gas to the last; `miss`:
    what the hand misses alone, as a share; `fails`: what becomes of the flame at the lean end, and
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
    open_share: float | None
    rate_W: Band | None
    gas_Pa: Band | None
    any_jet: bool
    poor_jet: bool
    sure_Pa: float | None
    room_Pa: float
    sure_room_Pa: float
    asks_Pa: float
    jet_gas_Pa: Band | None
    pipe_Pa: float | None
    tap_Pa: float | None
    stays: bool
    ratio: Band | None
    miss: float
    fails: tuple[str, str]
    unproven: Band | None
    lifts_W: float | None
    mark: Said
    advice: Said


UNLIT = LightingSlide(
    "",
    None,
    None,
    None,
    None,
    None,
    False,
    False,
    None,
    0.0,
    0.0,
    0.0,
    None,
    None,
    None,
    False,
    None,
    0.0,
    ("", ""),
    None,
    None,
    said("never"),
    said("never"),
)


@dataclass(frozen=True)
class Mark:
    """A hole or gap that leaves `open_share` of the pipe, `off` by so much of it either way; `drilled`: it is
    there, and gas is sought for it."""

    kind: str
    drill: Drill | None
    size_m: float
    open_share: float
    off: float
    drilled: bool = False

    @property
    def told(self) -> Said:
        named = self.drill is not None and self.drill.family in ("number", "letter")
        kind = f"{self.kind}_named" if named else self.kind
        return said(kind, drill=self.drill and self.drill.name, size=self.size_m)


def lighting_slide(
    sizes: str,
    lit_by: str,
    slide_hole: str | None,
    gas_line: GasLine,
    gauges: Gauges,
    blower: Blower,
    resistance: Resistance,
    lighting: Lighting,
    tries: Tries,
) -> LightingSlide:
    """The nearest drill that holds all that a hand misses; else, of the best of them, the one with the most room."""
    by = "_guard" if lit_by == "guard" and lighting.glows else ""
    if lighting.rate_W is None:
        advice = lighting.advice
        return replace(UNLIT, advice=said(f"torch{by}", **advice.slots) if lighting.way == "torch" else advice)
    flame, found, rank = Flame(tries), [], RANK if gas_line.metered else (*POOR_JET, *RANK)
    # No more than there is of it, and than its gauge shows.
    most_Pa = min(tries.jet.gauge_Pa if gas_line.there else inf, gauges.lit_by_Pa)
    bore_m = resistance.mix_pipe.bore_m
    marks = (
        [_hole(drills.drill_named(slide_hole), bore_m, drilled=True)]
        if slide_hole
        else _marks(lighting.open_share, blower.open_low, bore_m, FAMILIES[sizes])
    )
    for one in chain.from_iterable(_settings(mark, gauges, most_Pa, lighting, flame) for mark in marks):
        found.append(one)
        if rank[0](one) and not _too_rich(one):
            break
    found = [one for one in found if not _too_rich(one)] or found
    best = next(kept for wanted in rank if (kept := [one for one in found if wanted(one)]))
    return _told(max(best, key=_room), lighting, flame, by)


def _too_rich(one: LightingSlide) -> bool:
    """Richer than any that is aimed at: more carbon monoxide, and a hand that misses is beyond the end of the law of
    lift."""
    return one.ratio is not None and one.ratio.value > RATIOS[-1]


def _room(one: LightingSlide) -> tuple[bool, float]:
    """Not at an end of what is told rather than at one, for a hand overshoots; then the wider."""
    return one.gas_Pa.low < one.gas_Pa.value < one.gas_Pa.high, one.rate_W.high / one.rate_W.low


# Rather too rich for burnt gas when the hand misses than back into the lip, and that rather missed than as set.
RANK: tuple[Callable[[LightingSlide], bool], ...] = (
    lambda one: one.stays and not any(one.fails),
    lambda one: one.stays and one.fails == ("", "burnt"),
    lambda one: one.fails[0] == "back" and one.fails[1] != "lost",
    lambda one: not any(one.fails),
    lambda one: True,
)
# Where no meter shows what a jet passes, first of all no jet of the least may lead back into the lip.
POOR_JET = tuple(lambda one, wanted=wanted: one.poor_jet and wanted(one) for wanted in RANK[:2])


class Flame:
    """Limits of the flame as firing rates over the mixture: worked out at some, straight between them."""

    def __init__(self, tries: Tries):
        self.tries = tries
        self._at = cache(self._worked_out)

    def lift_W(self, ratio: float) -> float:
        return self._between("lift_W", ratio)

    def flashback_W(self, ratio: float) -> float:
        return self._between("flashback_W", ratio)

    def glowing_W(self, ratio: float) -> float:
        return self._between("glowing_W", ratio)

    def torch_W(self, ratio: float) -> float:
        return self._between("torch_W", ratio)

    def _worked_out(self, limit: str, nth: int) -> float:
        """Where there is none the flame does not hold: it runs back at any rate, and lifts at any."""
        found = getattr(self.tries.at(nth / GRID, 0.0), limit) if nth > 0 else None
        return (inf if limit in ("flashback_W", "glowing_W") else 0.0) if found is None else found

    def _between(self, limit: str, ratio: float) -> float:
        low, share = divmod(round(GRID * ratio, 9), 1)
        below = self._at(limit, int(low))
        if not share or below == inf:
            return below
        return below + share * (self._at(limit, int(low) + 1) - below)

    # How far a rate is inside a limit; below 0 it is beyond.
    def held_by_torch(self, ratio: float, rate_W: float) -> float:
        return min(rate_W - self.flashback_W(ratio), TORCH_LIFT * self.lift_W(ratio) - rate_W)

    def stays_out(self, ratio: float, rate_W: float) -> float:
        return rate_W - self.glowing_W(ratio)

    def held_in_burnt_gas(self, ratio: float, rate_W: float) -> float:
        return self.torch_W(ratio) - rate_W

    def fails(self, ratio: float, rate_W: float) -> str:
        if not ratio > 0 or self.held_by_torch(ratio, rate_W) < 0:
            return "lost"
        return "" if self.held_in_burnt_gas(ratio, rate_W) >= 0 else "burnt"


class Along:
    """Gas turned up and down, the slide left where it is: the rate goes with the mixture."""

    def __init__(self, flame: Flame, asked: float, asked_W: float):
        self.flame, self.asked, self.W_per_ratio = flame, asked, asked_W / asked

    def rate_W(self, ratio: float) -> float:
        return self.W_per_ratio * ratio

    def gas_Pa(self, ratio: float) -> float:
        return self.flame.tries.at(ratio, 0.0).gas_Pa(self.rate_W(ratio))

    def pipe_Pa(self, ratio: float) -> float:
        return self.flame.tries.at(ratio, 0.0).pipe_Pa(self.rate_W(ratio))

    def tap_Pa(self, ratio: float) -> float:
        return self.flame.tries.at(ratio, 0.0).tap_Pa(self.rate_W(ratio))

    def gas_off(self, ratio: float, off_Pa: float) -> float:
        """Share of the gas that a gauge misses, half that of its pressure's drop, and the hand at the needle."""
        return hypot(off_Pa / (2 * (self.gas_Pa(ratio) - self.pipe_Pa(ratio))), NEEDLE_OFF)

    def jets_Pa(self, ratio: float) -> Band:
        """Pressures that pass the same gas through a jet of the most, as set, and of the least."""
        jet, rate_W, down_Pa = self.flame.tries.jet, self.rate_W(ratio), self.pipe_Pa(ratio)
        return Band(
            *(
                replace(jet, coefficient=one).needed_Pa(rate_W, jet.drill.diameter_m, jet.ambient_Pa + down_Pa)
                for one in jet.coefficients
            )
        )

    @cached_property
    def ratio_at(self) -> Callable[[float, float], float]:
        """Mixture with a pressure, from one near it: pressures go nearly with the square of the rate. Windows beside
        each other have their ends in common."""

        @cache
        def found(gas_Pa: float, near: float) -> float:
            for _ in range(4):
                near *= (gas_Pa / self.gas_Pa(near)) ** 0.5
            return near

        return found

    def leanest(self, inside: Callable[[float, float], float]) -> float | None:
        """Mixture from which on a limit holds, None where it never does; as far as it is looked for."""
        return self._edge(inside, -1)

    def richest(self, inside: Callable[[float, float], float]) -> float | None:
        return self._edge(inside, 1)

    def from_on(self, ratio: float, inside: Callable[[float, float], float]) -> float | None:
        """The mixture, if a limit holds there; else as leanest."""
        return ratio if inside(ratio, self.rate_W(ratio)) >= 0 else self.leanest(inside)

    def _edge(self, inside, outward):
        """Where a limit first turns, outward from the mixture asked for where it holds there, else inward; no step is
        left out, for between two mixtures at which a flame stays off there may be one at which it runs back."""

        def at(n):
            return inside(n / GRID, self.rate_W(n / GRID))

        start = min(max(round(GRID * self.asked), LEANEST), RICHEST)
        here, found = start, at(start)
        held = found >= 0
        way = outward if held else -outward
        for there in range(start + way, start + way * (STEPS + 1), way):
            if not LEANEST <= there <= RICHEST:
                break
            before, found = found, at(there)
            if (found >= 0) != held:
                (holds, room), (fails, past) = sorted(((here, before), (there, found)), key=lambda one: one[1] < 0)
                return (holds + (fails - holds) * (room / (room - past) if past > -inf else 0.0)) / GRID
            here = there
        return here / GRID if held else None


def _marks(wanted: float, open_low: float | None, bore_m: float, families: tuple[str, ...]) -> list[Mark]:
    """The nearest drills for an open share, the nearest first. A hole is open always, so it must not pass more than low
    fire needs; else a gap. By rule where no drill is so large."""

    def gap(drill, size_m, off_m):
        share, next_share = (slide.gap_share(bore_m, min(size, bore_m)) for size in (size_m, size_m + off_m))
        return Mark("gap" if drill else "rule", drill, size_m, share, next_share / share - 1)

    gap_m = slide.gap_m(bore_m, wanted)
    if open_low is not None and wanted <= open_low:
        found = [
            _hole(drill, bore_m)
            for drill in near(slide.hole_m(bore_m, wanted), families)
            if drill.diameter_m <= slide.hole_m(bore_m, open_low)
        ]
    else:
        found = [gap(drill, drill.diameter_m, GAP_OFF_M) for drill in near(gap_m, families)]
    return found or [gap(None, gap_m, RULE_OFF_M)]


def _hole(drill: Drill, bore_m: float, drilled: bool = False) -> Mark:
    return Mark("hole", drill, drill.diameter_m, (drill.diameter_m / bore_m) ** 2, HOLE_OFF, drilled)


def _settings(mark: Mark, gauges: Gauges, most_Pa: float, lighting: Lighting, flame: Flame) -> Iterator[LightingSlide]:
    """What a hand comes to with this mark and the gas as its gauge shows it, best first: where it holds with any jet,
    where it holds with this, where it was asked for; of all the ends of what is told last, for a hand overshoots.
    `most_Pa`: that there is of it, and on the gauge."""
    ratio = comes_to = lighting.equivalence_ratio * lighting.open_share / mark.open_share
    if mark.drilled:
        ratio = min(max(comes_to, MOVED[0] * lighting.equivalence_ratio), MOVED[1] * lighting.equivalence_ratio)
    along = Along(flame, ratio, lighting.rate_W.value * ratio / comes_to)
    low, high, waits = _window(along, lighting.stays)
    jet = flame.tries.jet
    missed = hypot(mark.off, along.gas_off(along.asked, gauges.off_Pa))
    off, poor = hypot(jet.coefficient_off / jet.coefficient, missed), jet.coefficient / jet.coefficients[-1]
    ends = _set(along.asked, low, high, off, missed, poor)
    any_jet = _any_jet(along, ends)
    sure = any_jet if any_jet[0] <= any_jet[1] else (any_jet[0], ends[2])
    low_Pa, set_Pa, high_Pa, *sure_Pa = (min(along.gas_Pa(one), most_Pa) for one in (*ends, *sure))
    sure_marks = gauges.marks(set_Pa, *sure_Pa)
    if not sure_marks and any_jet[0] <= any_jet[1]:  # between two marks, so that no verdict goes by where a mark lies
        sure_marks = [sum(sure_Pa) / 2]
    shown = (*sure_marks, *gauges.marks(set_Pa, low_Pa, high_Pa))
    windows = [gauges.inward(low_Pa, one_Pa, high_Pa) for one_Pa in dict.fromkeys(shown or (set_Pa,))]
    for gas_Pa in sorted(windows, key=lambda window: window.value in (window.low, window.high)):
        ratios = Band(*map(along.ratio_at, gas_Pa, ends))
        made = _made(mark, along, ratios, gas_Pa, gauges.off_Pa, waits)
        yield replace(
            made,
            any_jet=any_jet[0] <= ratios.value <= any_jet[1],
            poor_jet=any_jet[0] <= ratios.value,
            sure_Pa=gauges.inward(sure_Pa[0], gas_Pa.value, gas_Pa.high).low,
            room_Pa=high_Pa - low_Pa,
            sure_room_Pa=high_Pa - max(low_Pa, sure_Pa[0]),
            asks_Pa=along.gas_Pa(ends[1]),
            advice=lighting.advice,
        )


def where_missed(along: Along, ratio: float, miss: float, gas_miss: float) -> tuple[tuple[float, float], ...]:
    """(mixture, rate) where a hand misses: the leanest, that of its gas alone, which slows the stream most, and the
    richest; read no nearer than itself the leanest may be none."""
    rate_W, gas_part = along.rate_W(ratio), min(gas_miss**2 / miss, 1.0)  # of the miss that leads there, what is gas
    return (
        (ratio * max(1 - miss, 0.0), rate_W * (1 - gas_part)),
        (ratio * (1 - gas_miss), rate_W * (1 - gas_miss)),
        (ratio * (1 + miss), rate_W * (1 + gas_part)),
    )


def _made(mark: Mark, along: Along, ratios: Band, gas_Pa: Band, off_Pa: float, waits: bool) -> LightingSlide:
    """The flame, at the mixture set and where a hand misses."""
    flame, ratio = along.flame, ratios.value
    gas_miss = along.gas_off(ratio, off_Pa)
    miss = hypot(mark.off, gas_miss)
    leaner, by_gas, richer = where_missed(along, ratio, miss, gas_miss)
    blend = flame.tries.blend
    band = Band(blend.span(leaner[0])[0], ratio, blend.span(richer[0])[1])
    lean, rich = flame.fails(*leaner), flame.fails(*richer)
    if lean != "lost" and waits:
        lean = "back" if any(flame.stays_out(*one) < 0 for one in (leaner, by_gas)) else lean
    jet_off = flame.tries.jet.coefficient_off / flame.tries.jet.coefficient
    new_off, most_air = hypot(miss, jet_off, BLOWER_OFF), (1 + LEAK) * (1 + BLUNT * (mark.kind == "hole"))
    return LightingSlide(
        kind=mark.kind,
        drill=mark.drill,
        size_m=mark.size_m,
        open_share=mark.open_share,
        rate_W=Band(*map(along.rate_W, ratios)),
        gas_Pa=gas_Pa,
        any_jet=False,
        poor_jet=False,
        sure_Pa=None,
        room_Pa=0.0,
        sure_room_Pa=0.0,
        asks_Pa=0.0,
        jet_gas_Pa=None,
        pipe_Pa=None,
        tap_Pa=None,
        stays=waits and lean not in ("lost", "back"),
        ratio=band,
        miss=miss,
        fails=(lean, rich),
        unproven=Band(
            blend.span(ratio * max(1 - new_off, 0.0) / most_air)[0], ratio, blend.span(ratio * (1 + new_off))[1]
        ),
        lifts_W=None,
        mark=mark.told,
        advice=UNLIT.advice,
    )


def _window(along: Along, stays: bool) -> tuple[float | None, float | None, bool]:
    """(leanest, richest, whether it may wait): leaner it runs back or lifts off a torch, richer it lifts in burnt gas.
    What does not go together is let go: what may happen in burnt gas first. None: no such end."""
    flame = along.flame
    back = along.leanest(flame.stays_out) if stays else None
    low = along.leanest(flame.held_by_torch) if back is None else along.from_on(back, flame.held_by_torch)
    if low is None:
        return None, None, False
    burnt = along.richest(flame.held_in_burnt_gas)
    return low, burnt if burnt is not None and burnt > low else None, back is not None


def _set(
    asked: float, low: float | None, high: float | None, off: float, missed: float, poor: float
) -> tuple[float, float, float]:
    """(leanest, the one set, richest): as asked, but so far from both ends as may be `off`, jet and all. Where there is
    no room for that, so far from the lean end, where the flame runs back minutes later, if that leaves the rich one,
    where it goes out while they look, what hand and gauge have `missed`; or in the middle. `poor`: the gas of the jet
    as set over that of the least, so far from the lean end at least."""
    if low is None:
        return asked, asked, asked
    if high is None:
        ratio = max(asked, low * (1 + off))
        return low, ratio, ratio
    least, most = low * (1 + off), high / (1 + off)
    if least <= most:
        return low, min(max(asked, least), most), high
    rich = min(least, high / (1 + missed))
    return low, rich if rich >= low * poor else (least + most) / 2, high


def _any_jet(along: Along, ends: tuple[float, float, float]) -> tuple[float, float]:
    """(leanest, richest) as told for the jet as set, at which those of the least and of the most hold too; they cross
    where there are none."""
    most, as_set, least = along.flame.tries.jet.coefficients
    return ends[0] * as_set / least, ends[2] * as_set / most


def _told(chosen: LightingSlide, lighting: Lighting, flame: Flame, by: str) -> LightingSlide:
    """With what is said of it: all figures as they are made."""
    ratio, along = chosen.ratio.value, Along(flame, chosen.ratio.value, chosen.rate_W.value)
    lifts, tap_Pa = [lift for lift in map(flame.lift_W, chosen.ratio) if lift > 0], along.tap_Pa(ratio)
    how = lighting.way + ("_cool" if not lighting.glows else "_stays" if chosen.stays else "") + by
    made = {
        "rate": chosen.rate_W.value,
        "least": chosen.rate_W.low,
        "most": chosen.rate_W.high,
        "gas": chosen.gas_Pa.value,
        "gas_least": chosen.gas_Pa.low,
        "gas_most": chosen.gas_Pa.high,
        "open": chosen.open_share,
        "ratio": chosen.ratio.value,
        "pipe": tap_Pa,
    }
    return replace(
        chosen,
        jet_gas_Pa=along.jets_Pa(ratio),
        pipe_Pa=along.pipe_Pa(ratio),
        tap_Pa=tap_Pa,
        lifts_W=min(lifts, default=None),
        advice=said(how, **{**lighting.advice.slots, **made}),
    )


def near(size_m: float, families: tuple[str, ...]) -> list[Drill]:
    """The drills nearest to a size, the nearest first; none beyond the largest that is sold."""
    known = [drill for family in families for drill in drills.drills(family)]
    if size_m > max(drill.diameter_m for drill in known):
        return []
    return sorted(known, key=lambda drill: (abs(drill.diameter_m - size_m), drill.name))[:NEAR]
