"""The lining as hot as the fire makes it when nobody watches: the empty chamber left at high or at low fire."""

from dataclasses import dataclass
from functools import lru_cache

from ..physics.fired_heat_up import time_left_on_s
from ..physics.gas_zone import GasZone
from ..physics.linings import TEMP_MAX_K
from ..physics.walls import steady_wall
from .fired_heat_up import FINE
from .firing import Firing
from .reached import Reached
from .zone import Zone


@dataclass(frozen=True)
class HotLining:
    """Hot side of each layer, hot all through, at the hot end of the band; empty without a flame.

    Beyond the tables (1800 degC) the hot face is as reached and what lies behind it as at their end.
    """

    high_K: tuple[float, ...]
    low_K: tuple[float, ...]
    zone: GasZone | None = None
    high_W: float = 0.0
    low_W: float = 0.0
    soaked_K: float = 0.0

    def after_s(self, fire: str, layer: int, limit_K: float) -> float | None:
        """How soon a layer, the first 0, is over a limit: hot all through at the set temperature, then left at high or
        low fire with the most film of gas. None where that takes longer than a day's work."""
        if self.zone is None:
            return None
        return _after_s(self.zone, self.high_W if fire == "high" else self.low_W, self.soaked_K, layer, limit_K)


@lru_cache(maxsize=64)
def _after_s(zone: GasZone, rate_W: float, soaked_K: float, layer: int, limit_K: float) -> float | None:
    return time_left_on_s(zone, firing_rate_W=rate_W, soaked_K=soaked_K, layer=layer, limit_K=limit_K, **FINE)


def hot_lining(
    zone: Zone, reached: Reached, firing: Firing, burner_count: int, chamber_temperature: float
) -> HotLining:
    if reached.high_empty_K is None or reached.low_empty_K is None:
        return HotLining((), ())
    losses = zone.zones[0].losses

    def hot_sides_K(face_K):
        behind = steady_wall(
            wall=losses.wall,
            layers=losses.layers,
            hot_face_temp_K=min(face_K, TEMP_MAX_K),
            ambient_temp_K=losses.ambient_temp_K,
            film_loss_W=losses.film_loss_W,
        ).temps_K[1:-1]
        return (face_K, *behind)

    return HotLining(
        hot_sides_K(reached.high_empty_K.high),
        hot_sides_K(reached.low_empty_K.high),
        zone.zones[-1],
        firing.installed_W,
        firing.low_W * burner_count,
        chamber_temperature,
    )
