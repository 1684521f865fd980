"""The mix pipe while the burner is lit: whether a flame that gets past the ports could walk back up it."""

from dataclasses import dataclass

from ..physics import combustion
from ..physics.band import Band
from .gas import Gas
from .lighting import Lighting
from .lighting_slide import LightingSlide
from .mixing import flame_in_pipe
from .mixture import mixture as mixture_of
from .resistance import Resistance
from .shop import Shop


@dataclass(frozen=True)
class LightingPipe:
    """As Mixing, of what the lighting card sets; `velocity_m_s`: in the pipe, so set. All None where it is not lit."""

    rate_W: float | None
    velocity_m_s: float | None
    own_m_s: float | None
    flame_m_s: Band | None


def lighting_pipe(
    gas: Gas, shop: Shop, resistance: Resistance, lighting: Lighting, lighting_slide: LightingSlide
) -> LightingPipe:
    rate_W, ratio = lighting.waits_W, lighting.waits_ratio
    if rate_W is None or ratio is None:
        return LightingPipe(None, None, None, None)
    if lighting_slide.rate_W and lighting_slide.ratio:
        rate_W, ratio = lighting_slide.rate_W.value, lighting_slide.ratio.value
    pipe = resistance.mix_pipe
    velocity = combustion.mixture_flow_m3_s(gas.composition, ratio, rate_W) * shop.swell / pipe.area_m2
    return LightingPipe(
        rate_W, velocity, *flame_in_pipe(gas, shop, ratio, pipe, velocity, mixture_of(gas, shop, ratio))
    )
