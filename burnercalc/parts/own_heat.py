"""Whether a first fire goes on to working heat by the burner itself."""

from dataclasses import dataclass

from .fires import to_low
from .lighting import Lighting
from .lighting_air import LightingAir
from .turning import Turning


@dataclass(frozen=True)
class OwnHeat:
    """`past_low`: it is lit, and its card does not lead to low fire: no stage of drying goes on to work."""

    past_low: bool


EITHER = {past_low: OwnHeat(past_low) for past_low in (False, True)}  # the same again: no day is planned anew


def own_heat(lighting: Lighting, lighting_air: LightingAir, turning: Turning) -> OwnHeat:
    return EITHER[lighting.waits_W is not None and not to_low(lighting, lighting_air, turning)]
