"""Carbon monoxide while the burner is lit and waits, rich, for the walls to glow, and the fresh air against it."""

from dataclasses import dataclass

from ..physics import combustion, ventilation
from ..physics.band import Band, about
from .fired_heat_up import FiredHeatUp
from .flame import MIXTURE_SLIP, flue_gas, hottest_flue
from .gas import Gas
from .lighting import WAITS, Lighting
from .lighting_slide import LightingSlide
from .shop import Shop

SHIFT_FRACTION, CEILING_FRACTION = (
    1e-6 * next(row["limit_ppm"] for row in ventilation.co_limits() if row["name"] == name)
    for name in ("NIOSH REL", "NIOSH ceiling")
)


@dataclass(frozen=True)
class LightingAir:
    """All None where it is not lit. `wait_s`: until the walls glow; None: they never do. `limit_fraction`: what nobody
    may breathe for so long.

    `co_dry`: share of the dry gas, from the leaner that hand and gauge come to, cooled slowly, to the richer, chilled
    as hot as the flame; `fresh_air_m3_s`: the same as air that the room needs if all of it stays there.
    """

    wait_s: Band | None
    limit_fraction: float | None
    co_dry: Band | None
    fresh_air_m3_s: Band | None


def lighting_air(
    burner_count: int,
    gas: Gas,
    shop: Shop,
    lighting: Lighting,
    lighting_slide: LightingSlide,
    fired_heat_up: FiredHeatUp,
) -> LightingAir:
    ratio, lit = lighting.waits_ratio, lighting.waits_W is not None
    # The wait is told where it is lit, and where it is what forbids it.
    waits = fired_heat_up.waits_s if lighting.glows and (lit or lighting.way in WAITS) else None
    wait_s = waits if isinstance(waits, tuple) or waits is None else Band(waits, waits, waits)
    if ratio is None or not lit:
        return LightingAir(wait_s, None, None, None)
    breathed_s = wait_s.high if wait_s else ventilation.SHIFT_S if lighting.glows else 0.0
    limit = ventilation.co_limit_for(breathed_s, SHIFT_FRACTION, CEILING_FRACTION)
    by_hand = lighting_slide.ratio or Band(ratio - MIXTURE_SLIP, ratio, ratio + MIXTURE_SLIP)
    flues = [flue_gas(gas, shop, one, shop.temp_K) for one in (ratio, by_hand.low)]
    flues.append(hottest_flue(gas, shop, by_hand.high))
    if flues[0] is None:
        return LightingAir(wait_s, limit, None, None)
    found = [flue for flue in flues if flue is not None]
    gas_m3_s = combustion.gas_flow_m3_s(gas.composition, lighting.waits_W * burner_count)
    fresh = [ventilation.co_dilution_flow_m3_s(gas_m3_s * flue.dry_mol, flue.co_dry, limit) for flue in found]
    return LightingAir(wait_s, limit, about([flue.co_dry for flue in found]), about(fresh))
