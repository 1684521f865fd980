"""What gauge and damper stand at after each step from lighting to low fire and from there to high fire."""

from dataclasses import dataclass

from ..catalogue.sentences import Said
from .damper_marks import DamperMarks, gap
from .firing import Firing
from .gauges import Gauges
from .jet import Jet
from .lighting import Lighting
from .lighting_slide import LightingSlide
from .resistance import Resistance
from .tries import Tries
from .turning import Turn, Turning


@dataclass(frozen=True)
class Step:
    """Both valves set. `gas_Pa`: gauge, before the jet; None without a jet. `small`: within the scale of the gauge that
    it is lit by."""

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


def lighting_steps(
    equivalence_ratio: float,
    sizes: str,
    firing: Firing,
    resistance: Resistance,
    lighting: Lighting,
    lighting_slide: LightingSlide,
    gauges: Gauges,
    jet: Jet,
    damper_marks: DamperMarks,
    turning: Turning,
    tries: Tries,
) -> LightingSteps:
    def step(gas_Pa, damper):
        return Step(gas_Pa, gas_Pa is None or gas_Pa <= gauges.lit_by_Pa, damper)

    def between(turn: Turn | None, start, end) -> tuple[Step, ...]:
        if lighting.waits_W is None or turn is None or not turn.first:
            return ()
        found = []
        for n in range(1, turn.steps):
            rate_W, ratio = (a * (b / a) ** (n / turn.steps) for a, b in zip(start, end))
            tried = tries.at(ratio)
            damper = gap(tried.open_share(rate_W), sizes, resistance, lighting_slide)[1]
            found.append(step(tried.gas_Pa(rate_W), damper))
        return tuple(found)

    made, low = lighting_slide, (firing.low_W, equivalence_ratio)
    # As the mark has it.
    light = (made.rate_W.value, made.ratio.value) if made.rate_W else (lighting.waits_W, lighting.waits_ratio)
    high = firing.rate_W, equivalence_ratio
    return LightingSteps(
        to_low=between(turning.to_low, light, low),
        to_high=between(turning.straight, light, high) if turning.straight else between(turning.to_high, low, high),
        low=Step(jet.low_Pa, gauges.reads_low, damper_marks.low),
        high=step(jet.high_Pa, damper_marks.high),
    )
