"""Carbon monoxide while the burner is lit and waits, rich, for the walls to glow, and the fresh air against it."""

from dataclasses import dataclass

from ..physics import ventilation
from ..physics.band import Band, about
from .fired_heat_up import FiredHeatUp
from .flame import flue_gas, hottest_flue
from .gas import Gas
from .hand import MIXTURE_SLIP
from .jet import Jet
from .lighting import DOORS_M3_S, HOOD_M3_S, STEADY_S, WAITS, Lighting, fresh_m3_s, waits
from .lighting_slide import LightingSlide
from .pilot import Pilot
from .shop import Shop


@dataclass(frozen=True)
class LightingAir:
    """All None where it is not lit. `wait_s`: until the walls glow; None: they never do. `limit_fraction`: what nobody
    may breathe for so long; `silent_fraction`: at which an alarm stays silent so long.

    `co_dry`: share of the dry gas, from the leaner that hand and gauge come to, cooled slowly, to the richest of the
    first day, before jet and blower are proven, chilled as hot as the flame; `fresh_air_m3_s`: the same as air that the
    room needs if all of it stays there, of the most gas that the jet may pass.
    """

    wait_s: Band | None
    limit_fraction: float | None
    silent_fraction: float | None
    co_dry: Band | None
    fresh_air_m3_s: Band | None

    @property
    def quiet_m3_s(self) -> float | None:
        if self.fresh_air_m3_s is None or self.limit_fraction is None or self.silent_fraction is None:
            return None
        return self.fresh_air_m3_s.high * max(1.0, self.limit_fraction / self.silent_fraction)

    @property
    def kept_fraction(self) -> float | None:
        """Below which that air keeps the room: what may be breathed, and what no alarm sounds at."""
        limits = [one for one in (self.limit_fraction, self.silent_fraction) if one is not None]
        return min(limits, default=None)

    @property
    def where(self) -> str:
        """Where it may be lit besides outdoors: doors (wide open ones do), hood, or open (nowhere else). An alarm that
        sounds ends it, so doors must keep it silent; and nobody counts on wind for longer than STEADY_S."""
        fresh = self.fresh_air_m3_s.high if self.fresh_air_m3_s else 0.0
        if fresh > HOOD_M3_S:
            return "open"
        waits_long = self.wait_s is not None and self.wait_s.high > STEADY_S
        return "hood" if (self.quiet_m3_s or 0.0) > DOORS_M3_S or waits_long else "doors"


def lighting_air(
    burner_count: int,
    gas: Gas,
    shop: Shop,
    lighting: Lighting,
    lighting_slide: LightingSlide,
    pilot: Pilot,
    jet: Jet,
    fired_heat_up: FiredHeatUp,
) -> LightingAir:
    ratio, lit = lighting.waits_ratio, lighting.waits_W is not None
    if not lit and lighting.way not in WAITS:  # the wait is told where it is lit, and where it is what forbids it
        return LightingAir(None, None, None, None, None)
    wait_s, limit = waits(lighting, fired_heat_up)
    silent = ventilation.co_silent_fraction(
        wait_s.high if wait_s else ventilation.SHIFT_S if lighting.glows else STEADY_S
    )
    if ratio is None or not lit:
        return LightingAir(wait_s, None, None, None, None)
    by_hand, first_day = lighting_slide.ratio, lighting_slide.unproven
    least = by_hand.low if by_hand else ratio - MIXTURE_SLIP
    most_gas = jet.coefficients[0] / jet.coefficient
    most = first_day.high if first_day else ratio * most_gas + MIXTURE_SLIP
    flues = [flue_gas(gas, shop, one, shop.temp_K) for one in (ratio, least)]
    flues.append(hottest_flue(gas, shop, most))
    if flues[0] is None:
        return LightingAir(wait_s, limit, silent, None, None)
    found = [flue for flue in flues if flue is not None]
    fresh = [fresh_m3_s(gas, shop, burner_count, lighting, pilot, flue, limit) for flue in found]
    fresh.append(most_gas * max(fresh))
    return LightingAir(wait_s, limit, silent, about([flue.co_dry for flue in found]), about(fresh))
