"""How soon the fire heats the empty chamber up: lit as flame and valves allow, then all that is set."""

from dataclasses import dataclass

from ..physics import fired_heat_up as physics
from ..physics.band import Band
from .back_pressure import BackPressure
from .chamber import Chamber
from .firing import Firing
from .gas import Gas
from .lighting_try import RELIGHTS_K, LightingTry
from .need import band
from .shop import Shop
from .zone import Zone, gas_zones

# Fibre glows within seconds, so cells and steps are finer than where minutes count: 8 % off at most. The half cell at
# the face holds no heat: too thick a one is hot at once.
FINE = {"cells_per_layer": 12, "cell_time_s": 20.0, "step_growth": 0.2, "early_step_s": 1.0}


@dataclass(frozen=True)
class FiredHeatUp:
    """`time_s`: from cold to the set temperature, at the lighting rate until the walls glow, then all burners at high
    fire; None when it never gets there, no band when it gets there but with the poorest film of gas. `waits_s`: of
    that, at the lighting rate. Where there is none, at low fire. None in a chamber as good as closed."""

    time_s: Band | float | None
    waits_s: Band | float | None


def fired_heat_up(
    zone: Zone,
    chamber: Chamber,
    gas: Gas,
    shop: Shop,
    firing: Firing,
    lighting_try: LightingTry,
    back_pressure: BackPressure,
    lining: tuple[tuple[str, float], ...],
    opening_area: float,
    opening_depth: float,
    burner_count: int,
    chamber_temperature: float,
) -> FiredHeatUp:
    if not zone.zones or back_pressure.opening_Pa is None:
        return FiredHeatUp(None, None)
    lit, lit_W = zone.zones, firing.low_W
    if lighting_try.waits_W is not None:
        lit = gas_zones(chamber, gas, shop, lining, opening_area, opening_depth, lighting_try.waits_ratio)
        lit_W = lighting_try.waits_W
    marches = [
        physics.fired_heat_up(
            high,
            firing_rate_W=firing.installed_W,
            wall_temp_K=chamber_temperature,
            lit=physics.Lit(low, lit_W * burner_count, RELIGHTS_K),
            **FINE,
        )
        for high, low in zip(zone.zones, lit)
    ]
    return FiredHeatUp(*(_told(tuple(figures)) for figures in zip(*((one.time_s, one.turned_up_s) for one in marches))))


def _told(times):
    return band(times) or times[1]
