"""What gauge and damper stand at after each step from lighting to low fire and from there to high fire."""

from dataclasses import dataclass, replace
from math import inf, sqrt

from ..catalogue.sentences import Said
from .damper_marks import DamperMarks, gap
from .firing import Firing
from .gas_line import GasLine
from .gauges import Gauges
from .holding import Holding
from .jet import Jet
from .lighting import Lighting
from .lighting_slide import LightingSlide
from .resistance import Resistance
from .stream import Stream
from .supply import Supply
from .tries import Tries
from .turning import Turn, Turning


@dataclass(frozen=True)
class Step:
    """Both valves set. `rate_W`: that comes of it; `gas_Pa`: gauge, before the jet, as it shows it; None without a jet.
    `small`: read by the gauge that it is lit by."""

    rate_W: float
    gas_Pa: float | None
    small: bool
    damper: Said


@dataclass(frozen=True)
class LightingSteps:
    """`to_low`, `to_high`: those on the way, without its ends; none where one step does it, no order holds,
    or it must not be lit."""

    to_low: tuple[Step, ...]
    to_high: tuple[Step, ...]
    low: Step
    high: Step

    @property
    def marks(self) -> tuple[Said, ...]:
        """Marks of the slide's own at which it stands on the way, each once, scratched by these numbers, from 1 on."""
        dampers = dict.fromkeys(one.damper for one in (*self.to_low, *self.to_high) if "size" in one.damper.slots)
        return tuple(one for one in dampers if one not in (self.low.damper, self.high.damper))

    @property
    def low_Pa(self) -> float | None:
        """What the gauge before the jet shows at low fire."""
        return self.low.gas_Pa


def lighting_steps(
    sizes: str,
    line_pressure: float,
    gas_line: GasLine,
    firing: Firing,
    resistance: Resistance,
    lighting: Lighting,
    lighting_slide: LightingSlide,
    gauges: Gauges,
    jet: Jet,
    damper_marks: DamperMarks,
    turning: Turning,
    tries: Tries,
    stream: Stream,
    holding: Holding,
    supply: Supply,
) -> LightingSteps:
    def step(rate_W, gas_Pa, pipe_Pa, damper, most_Pa=inf):
        """As the gauge shows it, no more than there is; the rate goes with the root of what drops over the jet."""
        if gas_Pa is None or gas_Pa <= pipe_Pa:
            return Step(rate_W, gas_Pa, True, damper)
        shown_Pa = gauges.shown_Pa(min(gas_Pa, most_Pa))
        rate_W *= sqrt(max(shown_Pa - pipe_Pa, 0.0) / (gas_Pa - pipe_Pa))
        return Step(rate_W, shown_Pa, shown_Pa <= gauges.read_to_Pa, damper)

    def between(turn: Turn | None) -> tuple[Step, ...]:
        if lighting.waits_W is None or turn is None or not turn.first:
            return ()
        found = []
        for rate_W, ratio in turn.stops[:-1]:
            tried = tries.at(ratio)
            damper = gap(tried.open_share(rate_W), sizes, resistance, lighting_slide)[1]
            found.append(step(rate_W, tried.gas_Pa(rate_W), tried.pipe_Pa(rate_W), damper))
        return tuple(found)

    def set_low():
        """A mark higher where the nearest leaves less than what may run back, and what is asked for does not."""
        pipe_Pa = resistance.pressure_Pa(stream.mixture_m3_s * firing.low_W / firing.rate_W)
        found = step(firing.low_W, jet.low_Pa, pipe_Pa, damper_marks.low)
        least_W = holding.hot_W.high if holding.hot_W else 0.0
        if not found.gas_Pa or not found.rate_W < least_W <= firing.low_W:
            return found
        mark_Pa = gauges.mark_Pa if gauges.reads_low else gauges.jet_mark_Pa
        above_Pa = found.gas_Pa + mark_Pa / 2
        return replace(
            found,
            gas_Pa=above_Pa,
            rate_W=firing.low_W * sqrt((above_Pa - pipe_Pa) / (jet.low_Pa - pipe_Pa)),
        )

    on_a_line = gas_line.there and jet.high_Pa is not None
    most_Pa = supply.left_Pa(line_pressure, jet.high_Pa, resistance.total_Pa) if on_a_line else inf
    return LightingSteps(
        to_low=() if turning.straight else between(turning.to_low),
        to_high=between(turning.straight or turning.to_high),
        low=replace(set_low(), small=gauges.reads_low),
        high=step(firing.rate_W, jet.high_Pa, resistance.total_Pa, damper_marks.high, most_Pa),
    )
