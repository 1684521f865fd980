"""What gauges and damper stand at after each step from lighting to low fire and from there to high fire."""

from dataclasses import dataclass

from ..catalogue.sentences import Said
from .damper_marks import DamperMarks, gap
from .firing import Firing
from .jet import Jet
from .lighting import Lighting
from .lighting_card import LightingCard
from .lighting_slide import LightingSlide
from .resistance import Resistance
from .train import Train
from .tries import Tries
from .turning import Turn, Turning


@dataclass(frozen=True)
class Step:
    """Both valves set. `gas_Pa`: gauge, before the jet; None without a jet. `shown`: by the gauge there, whose scale it
    is within; else by that of the regulator, at `regulator_Pa` with the needle valve open."""

    gas_Pa: float | None
    regulator_Pa: float | None
    shown: bool
    damper: Said


@dataclass(frozen=True)
class LightingSteps:
    """`to_low`, `to_high`: those on the way, without its ends; none where one step does it, or no order holds."""

    to_low: tuple[Step, ...]
    to_high: tuple[Step, ...]
    high: Step


def lighting_steps(
    equivalence_ratio: float,
    units: str,
    firing: Firing,
    resistance: Resistance,
    lighting: Lighting,
    lighting_slide: LightingSlide,
    lighting_card: LightingCard,
    train: Train,
    jet: Jet,
    damper_marks: DamperMarks,
    turning: Turning,
    tries: Tries,
) -> LightingSteps:
    def step(rate_W, gas_Pa, damper):
        # What the hose takes goes with the square of the flow.
        more_Pa = train.hose_drop_Pa * (rate_W / firing.rate_W) ** 2
        shown = gas_Pa is None or gas_Pa <= lighting_card.gauge_Pa
        return Step(gas_Pa, None if gas_Pa is None else gas_Pa + more_Pa, shown, damper)

    def between(turn: Turn | None, start, end) -> tuple[Step, ...]:
        if turn is None or not turn.first:
            return ()
        found = []
        for n in range(1, turn.steps):
            rate_W, ratio = (a * (b / a) ** (n / turn.steps) for a, b in zip(start, end))
            tried = tries.at(ratio)
            damper = gap(tried.open_share(rate_W), units, resistance, lighting_slide)[1]
            found.append(step(rate_W, tried.gas_Pa(rate_W), damper))
        return tuple(found)

    light, low = (lighting.waits_W, lighting.waits_ratio), (firing.low_W, equivalence_ratio)
    return LightingSteps(
        to_low=between(turning.to_low, light, low),
        to_high=between(turning.to_high, low, (firing.rate_W, equivalence_ratio)),
        high=step(firing.rate_W, jet.high_Pa, damper_marks.high),
    )
