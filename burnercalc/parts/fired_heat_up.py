"""How soon the fire heats the empty chamber up: lit as flame and valves allow, then all that is set."""

from dataclasses import dataclass
from functools import cached_property, lru_cache

from ..physics import fired_heat_up as physics
from ..physics.band import Band
from ..physics.fired_heat_up import NEVER_WITHIN_K
from ..physics.gas_zone import GasZone, gets_hotter
from .back_pressure import BackPressure
from .chamber import Chamber
from .firing import Firing
from .gas import Gas
from .lighting_try import RELIGHTS_K, LightingTry
from .need import band
from .shop import Shop
from .turning import Turning
from .zone import Zone, gas_zones

# Fibre glows within seconds, so cells and steps are finer than where minutes count: within 5 % of walls in three
# dimensions. The half cell at the face holds no heat: too thick a one is hot at once.
FINE = {"cells_per_layer": 18, "cell_time_s": 10.0, "step_growth": 0.1, "early_step_s": 0.5}

MIDDLE = 1  # of three films of gas


@dataclass(frozen=True)
class FiredHeatUp:
    """`time_s`: from cold to the set temperature, at the lighting rate until the walls glow, then all burners at high
    fire; None when it never gets there, no band when it gets there but with the poorest film of gas. `waits_s`: of
    that, at the lighting rate. Where there is none, at low fire. None in a chamber as good as closed, and in one worked
    too cool to glow, which is turned up as soon as it burns steadily, to low fire only where none leads on: `led_W`.
    Each is worked out when it is first asked for."""

    zones: tuple[GasZone, ...]
    lit_zones: tuple[GasZone, ...]
    installed_W: float
    lit_W: float
    wall_K: float
    led_W: float

    @property
    def glows(self) -> bool:
        return self.wall_K > RELIGHTS_K

    @property
    def turns_up(self) -> bool:
        """Whether there is a `waits_s`, without working it out."""
        return bool(self.lit_zones) and gets_hotter(self.lit_zones[1], self.lit_W, RELIGHTS_K + NEVER_WITHIN_K)

    @cached_property
    def waits_s(self) -> Band | float | None:
        return _told(map(self._waits_s, range(len(self.lit_zones)))) if self.glows else None

    @cached_property
    def time_s(self) -> Band | float | None:
        films = range(len(self.zones))
        return _told(self.middle_s if film == MIDDLE else self._time_s(film) for film in films)

    @cached_property
    def middle_s(self) -> float | None:
        """The middle of `time_s`, a third of its work."""
        return self._time_s(MIDDLE) if self.zones else None

    @property
    def middle_waits_s(self) -> float | None:
        """The same of `waits_s`."""
        return self._waits_s(MIDDLE) if self.glows and self.lit_zones else None

    def _waits_s(self, film):
        heating = self._lit(film)
        return heating and heating.times_s[-1]

    def _lit(self, film):
        return _lit(self.lit_zones[film], self.lit_W, RELIGHTS_K)

    def _time_s(self, film):
        if not self.glows:
            return _heated(self.zones[film], self.led_W, self.wall_K)
        heating = self._lit(film)
        return heating and _heating(self.zones[film], self.installed_W, self.wall_K, heating).time_s


# Burners alike in what they are lit with in the same chamber come to a glow alike.
@lru_cache(maxsize=64)
def _lit(zone: GasZone, rate_W: float, until_K: float) -> physics.Heating | None:
    return physics.lit(zone, firing_rate_W=rate_W, until_K=until_K, **FINE)


def _heated(zone, rate_W, wall_K):
    """Of a cold chamber, at one rate; None where it never gets there."""
    return _heating(zone, rate_W, wall_K).time_s if gets_hotter(zone, rate_W, wall_K + NEVER_WITHIN_K) else None


def _heating(zone, rate_W, wall_K, after=None):
    return physics.fired_heat_up(zone, firing_rate_W=rate_W, wall_temp_K=wall_K, after=after, **FINE)


def fired_heat_up(
    zone: Zone,
    chamber: Chamber,
    gas: Gas,
    shop: Shop,
    firing: Firing,
    lighting_try: LightingTry,
    turning: Turning,
    back_pressure: BackPressure,
    lining: tuple[tuple[str, float], ...],
    opening_area: float,
    opening_depth: float,
    burner_count: int,
    chamber_temperature: float,
) -> FiredHeatUp:
    zones = zone.zones if back_pressure.opening_Pa is not None else ()
    lit, lit_W = zones, firing.low_W
    if zones and lighting_try.waits_W is not None:
        lit = gas_zones(chamber, gas, shop, lining, opening_area, opening_depth, lighting_try.waits_ratio)
        lit_W = lighting_try.waits_W
    up = turning.straight or turning.to_high
    led_up = turning.held_W is None and (up is None or bool(up.first))
    led_W = firing.installed_W if led_up else firing.low_W * burner_count
    return FiredHeatUp(zones, lit, firing.installed_W, lit_W * burner_count, chamber_temperature, led_W)


def _told(times):
    found = tuple(times)
    return (band(found) or found[1]) if found else None
