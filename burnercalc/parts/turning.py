"""From the setting that it is lit with to low fire and on to high fire, or straight there: valve by valve, in steps."""

from collections.abc import Callable
from dataclasses import dataclass
from math import ceil

from ..making import slide
from .firing import Firing
from .hand import apart
from .lighting_try import LightingTry
from .tries import CLOSE, Tries, drilled

State = tuple[float, float]  # rate in W, equivalence ratio

OTHER = {"gas": "air", "air": "gas"}
# Common practice.
LAW_ENDS = 1.36  # mixture up to which the law of lift is known
STEPS = (1, 2, 3, 4)  # equal ones that a hand goes in, the fewest that hold; else each as long as it may be:
LONG = (1.0, 0.85, 0.7, 0.6, 0.5, 0.4, 0.33, 0.27, 0.22, 0.18, 0.15, 0.12, 0.1, 0.08)  # of the way that is left
MOST_STEPS = 12
NEAR_HIGH = 0.95  # of high fire, from which it may as well be that
OVER = (1.05, 1.1, 1.2, 1.3)  # of the rate that it is lit at, up to high fire: to there in equal steps, then to the end
STEPS_OVER = (1, 2, 4)  # to there
FINE = 0.05  # of the mixture, from one that is looked at to the next
HARDLY_NEARER = 0.9  # of the margin that it waits with, if that is less than CLOSE; else to the limit: it takes seconds
NO_LOOSER = 0.6  # lift over the rate on the way, of the same at its worse end: hot walls keep that alight


@dataclass(frozen=True)
class Turn:
    """`first`: gas or air, in each step; "" where no order holds, with no steps where the end itself does not.
    `stops`: (rate, ratio) after each step, the end included. On the way, between both valves:
    `other`: what the flame is nearer to in the other order: back (running back), rich (too rich for its law) or lifts;
    "" where that is no nearer, none holds, or all steps have an order of their own.
    `margin`: the least rate over flashback at a lip that glows; `least_ratio`, `most_ratio`: of the mixture."""

    first: str
    stops: tuple[tuple[float, float], ...]
    other: str
    margin: float
    least_ratio: float
    most_ratio: float

    @property
    def steps(self) -> int:
        return len(self.stops)


@dataclass(frozen=True)
class Turning:
    """All None where it is not lit. `straight`: from lighting to high fire, only where no order leads to low fire, or
    none on from there and this one does.
    `held_W`: in a chamber that never glows, the most that a pilot or torch holds for sure; low or high fire above it
    nothing leads to. None where that does not apply."""

    to_low: Turn | None
    to_high: Turn | None
    straight: Turn | None
    held_W: float | None

    @property
    def goes_on(self) -> bool:
        """Whether an order leads anywhere from the lighting rate."""
        return any(turn is not None and bool(turn.first) for turn in (self.to_low, self.straight))


def turning(equivalence_ratio: float, firing: Firing, lighting_try: LightingTry, tries: Tries) -> Turning:
    if lighting_try.waits_W is None or lighting_try.waits_ratio is None:
        return Turning(None, None, None, None)
    light, low = (lighting_try.waits_W, lighting_try.waits_ratio), (firing.low_W, equivalence_ratio)
    high = firing.rate_W, equivalence_ratio
    glows, open_share = lighting_try.glows, lighting_try.open_share
    hole_m = 0.0  # as it would be drilled; the nearest drill is near enough
    if open_share is not None and drilled(tries.blower, open_share):
        hole_m = slide.hole_m(tries.resistance.mix_pipe.bore_m, open_share)
    to_low = _turn(light, low, tries, glows, hole_m)
    to_high = _turn(low, high, tries, glows, hole_m)
    straight = None if to_low.first else _turn(light, high, tries, glows, hole_m)
    # No hot walls light again what lifts.
    held_W = None if glows else _at(equivalence_ratio, tries).torch_W or 0.0
    if held_W is not None and firing.rate_W > held_W:
        return Turning(to_low, to_high, straight, held_W)
    if to_low.first and not to_high.first:
        past_low = _turn(light, high, tries, glows, hole_m)
        straight = past_low if past_low.first else None
    return Turning(to_low, to_high, straight, None)


def _turn(start, end, tries, glows, hole_m):
    """The fewest steps in which an order holds, of both the one further from flashback; gas first where they tie."""
    margins = [_margin([state], tries) for state in (start, end)]
    # The lighting rate itself is judged elsewhere.
    least = 1.0 if margins[0] >= CLOSE else HARDLY_NEARER * margins[0]
    if glows:
        lift, loosest = _lift, min(1.0, *(NO_LOOSER * _lift(*state, tries) for state in (start, end)))
    else:
        lift, loosest = _held, min(1.0, _held(*start, tries))  # what it is lit at is judged elsewhere
    richest = max(LAW_ENDS, start[1], end[1])

    def holds(between, off):
        return (
            between[1] <= richest
            and lift(*between, tries) >= loosest
            and between[0] >= max(least, off) * _at(between[1], tries).glowing_W
        )

    if margins[1] < min(CLOSE, margins[0]) or (not glows and _held(*end, tries) < 1):
        return Turn("", (), "", margins[1], *sorted((start[1], end[1])))
    hold, stops = _way(start, end, (tries.firing.rate_W, end[1]), Leads(holds, tries, hole_m))
    both = {one: tuple(_passed(one, start, stops)) for one in (("over",) if hold == ["over"] else OTHER)}
    found = {first: _margin(both[first], tries) for first in hold or both}
    first = max(found, key=lambda one: found[one])
    ratios = [ratio for _, ratio in (start, *both[first])]
    other = (
        "" if not hold or first == "over" else _nearer(*(both[one] for one in (first, OTHER[first])), richest, tries)
    )
    if len(hold) > 1 and other != "back":
        other = ""
    return Turn(first if hold else "", stops, other, found[first], min(ratios), max(ratios))


def _nearer(this, other, richest, tries):
    """What it is nearer to in the other order."""
    if _margin(other, tries) < _margin(this, tries):
        return "back"
    return "rich" if max(ratio for _, ratio in other) > richest else "lifts"


def _way(start, end, high, leads):
    """(orders that hold, stops, end included): straight there in equal steps, or each as long as it may be; or up over
    both and down to the end, as far off flashback as it waits if that can be. The finest steps where none holds."""
    for steps in STEPS:
        stops = _equal(steps, start, end)
        hold = [first for first in OTHER if leads.through(first, (start, *stops))]
        if hold and (steps == 1 or leads.apart(start, *stops)):
            return hold, stops
    ways = [([first], stops) for first in OTHER if (stops := leads.longest(first, start, end))]
    if not ways:
        for off in (CLOSE, 0.0):
            ways = ways or [(["over"], stops) for stops in _over(start, end, high, leads, off)]
    return min(ways, key=lambda way: len(way[1]), default=([], _equal(MOST_STEPS, start, end)))


def _over(start, end, high, leads, off):
    """Where high fire is near, up to that."""
    rates_W = [start[0] * share for share in OVER if start[0] * share < NEAR_HIGH * high[0]]
    tops = [(rate_W, end[1]) for rate_W in rates_W if rate_W > end[0]]
    for top in (*tops, *((high,) if max(start[0], end[0]) < high[0] <= OVER[-1] * start[0] else ())):
        for steps in STEPS_OVER:
            up = _equal(steps, start, top)
            if leads.through("gas", (start, *up), off) and leads.apart(start, *up):
                if down := leads.longest("air", top, end, off):
                    yield (*up, *down)
                break


@dataclass(frozen=True)
class Leads:
    """What may be gone through: `holds(between, off)`, as the flame does, so far off flashback at the least; and stops
    that a hand tells apart beside a hole of `hole_m`."""

    holds: Callable[[State, float], bool]
    tries: Tries
    hole_m: float

    def through(self, first: str, way: tuple[State, ...], off: float = 0.0) -> bool:
        return all(self.holds(one, off) for one in _passed(first, way[0], way[1:]))

    def apart(self, *states: State) -> bool:
        """One whose air the blower does not give is judged elsewhere."""
        gaps_m = [self.tries.at(ratio).gap_m(rate_W, self.hole_m) for rate_W, ratio in states]
        return apart([gap_m for gap_m in gaps_m if gap_m is not None])

    def longest(self, first: str, start: State, end: State, off: float = 0.0) -> tuple[State, ...] | None:
        """Stops to the end, each as far on as it may be; None where they do not come there."""
        at, stops = start, []
        while at != end and len(stops) < MOST_STEPS:
            tried = (end if share == 1 else _between(at, end, share) for share in LONG)
            on = next((one for one in tried if self._leads(first, at, one, end, off)), None)
            if on is None:
                return None
            stops.append(at := on)
        return tuple(stops) if at == end else None

    def _leads(self, first, at, one, end, off):
        """A stop, that a hand tells apart from the end too."""
        return (one == end or self.apart(one, end)) and self.apart(at, one) and self.through(first, (at, one), off)


def _equal(steps, start, end):
    return tuple(_between(start, end, n / steps) for n in range(1, steps)) + (end,)


def _between(start, end, share):
    return tuple(a * (b / a) ** share for a, b in zip(start, end))


def _passed(first, start, stops):
    """(rate, ratio) that a flame passes, from stop to stop one valve after the other."""
    at = start
    for stop in stops:
        gas = first == "gas" or (first == "over" and stop[0] > at[0])
        corner = (stop[0], at[1] * stop[0] / at[0]) if gas else (at[0], stop[1] * at[0] / stop[0])
        for end in (corner, stop):
            pieces = max(1, ceil(abs(end[1] - at[1]) / FINE - 1e-9))
            yield from _equal(pieces, at, end)
            at = end


def _margin(states, tries):
    return min(rate_W / _at(ratio, tries).glowing_W for rate_W, ratio in states)


def _lift(rate_W, ratio, tries):
    """Rate at which a cold flame lifts over the rate; 0 where no limit is found."""
    return (_at(ratio, tries).lift_W or 0.0) / rate_W


def _held(rate_W, ratio, tries):
    """Rate that a pilot or torch holds for sure, in burnt gas among walls that never glow, over the rate."""
    return (_at(ratio, tries).torch_W or 0.0) / rate_W


def _at(ratio, tries):
    """As near as it matters, so that steps share what they rest on: to a hundredth."""
    return tries.at(max(round(ratio, 2), 0.01))  # next to no gas: no flame either way
