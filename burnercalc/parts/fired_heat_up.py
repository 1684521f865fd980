"""How soon the fire that is set heats the empty chamber up."""

from dataclasses import dataclass

from ..physics import fired_heat_up as physics
from ..physics.band import Band
from .firing import Firing
from .need import band
from .zone import MARCH, Zone


@dataclass(frozen=True)
class FiredHeatUp:
    """`time_s`: from cold to the set temperature, all burners at high fire; None when it never gets there, no band when
    it gets there but with the poorest film of gas."""

    time_s: Band | float | None


def fired_heat_up(zone: Zone, firing: Firing, chamber_temperature: float) -> FiredHeatUp:
    if not zone.zones:
        return FiredHeatUp(None)
    times = tuple(
        physics.fired_heat_up(one, firing_rate_W=firing.installed_W, wall_temp_K=chamber_temperature, **MARCH).time_s
        for one in zone.zones
    )
    return FiredHeatUp(band(times) or times[1])
