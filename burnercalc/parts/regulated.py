"""How high the regulator of a cylinder may stand: as for high fire, or low where nobody may go there."""

from dataclasses import dataclass

from .fires import Fires
from .firing import Firing
from .lighting_slide import LightingSlide
from .supply import Supply
from .tries import LEAST_REGULATOR_PA


@dataclass(frozen=True)
class Regulated:
    """`outlet_Pa`: gauge, behind the regulator, gas flowing; where no high fire may be gone to the most at which the
    needle wide open gives no more than what it is lit and turned to. `low`: whether it stands so; `at_least`: so low
    that no regulator holds it, and it stands at its least."""

    outlet_Pa: float
    low: bool
    at_least: bool


def regulated(supply: Supply, firing: Firing, fires: Fires, lighting_slide: LightingSlide) -> Regulated:
    if fires.light is None or fires.high is not None:
        return Regulated(supply.outlet_Pa.value, False, False)
    slide = lighting_slide
    led_to = [(fire.gas_Pa, fire.rate_W) for fire in (fires.light, fires.low) if fire]
    if slide.gas_Pa and slide.rate_W:
        led_to.append((slide.gas_Pa.high, slide.rate_W.high))
    most_Pa = max(supply.behind_Pa(gas_Pa, rate_W / firing.rate_W) for gas_Pa, rate_W in led_to if gas_Pa is not None)
    return Regulated(max(most_Pa, LEAST_REGULATOR_PA), True, most_Pa < LEAST_REGULATOR_PA)
