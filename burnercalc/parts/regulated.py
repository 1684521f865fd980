"""How high the regulator of a cylinder may stand: as for high fire, for lighting where that takes more, or low where
nobody may go to high fire."""

from dataclasses import dataclass

from ..physics.band import Band
from .fires import Fires
from .firing import Firing
from .lighting_slide import LightingSlide
from .supply import Supply
from .tries import LEAST_REGULATOR_PA


@dataclass(frozen=True)
class Regulated:
    """`outlet_Pa`: gauge, behind the regulator, gas flowing; where no high fire may be gone to the most at which the
    needle wide open gives no more than what it is lit and turned to. `low`: whether it stands so; `at_least`: so low
    that no regulator holds it, and it stands at its least. `to_light`: it stands for the most that is lit with, which
    takes more than high fire; `holds_Pa`: the most that is asked of it, with what the losses are off by."""

    outlet_Pa: float
    low: bool
    at_least: bool
    to_light: bool
    holds_Pa: Band


def regulated(supply: Supply, firing: Firing, fires: Fires, lighting_slide: LightingSlide) -> Regulated:
    slide, outlet = lighting_slide, supply.outlet_Pa
    if fires.high is not None and slide.gas_Pa and slide.rate_W:
        lit = supply.behind_Pa(slide.gas_Pa.high, slide.rate_W.high / firing.rate_W)
        if lit.value > outlet.value:
            return Regulated(lit.value, False, False, True, Band(*map(max, lit, outlet)))
    if fires.light is None or fires.high is not None:
        return Regulated(outlet.value, False, False, False, outlet)
    led_to = [(fire.gas_Pa, fire.rate_W) for fire in (fires.light, fires.low) if fire]
    if slide.gas_Pa and slide.rate_W:
        led_to.append((slide.gas_Pa.high, slide.rate_W.high))
    behind = (supply.behind_Pa(gas_Pa, rate_W / firing.rate_W) for gas_Pa, rate_W in led_to if gas_Pa is not None)
    most_Pa = max(one.low for one in behind)
    return Regulated(max(most_Pa, LEAST_REGULATOR_PA), True, most_Pa < LEAST_REGULATOR_PA, False, outlet)
