"""How hot the fire makes the chamber: gas and walls at high and low fire, empty and with work."""

from collections.abc import Callable
from dataclasses import dataclass

from ..physics import gas_zone as physics
from ..physics.band import Band, in_order
from ..physics.metals import metal_heat_J_kg
from .firing import Firing
from .need import band
from .shop import Shop
from .zone import Zone


@dataclass(frozen=True)
class Reached:
    """Of all burners together; None without a flame, the first three also where the flame is no hotter than the wall.

    `gas_K`, `kept`, `spare_W`: at high fire with walls at the set temperature; what is to spare goes into work.
    """

    gas_K: Band | None
    kept: Band | None
    spare_W: Band | None
    high_empty_K: Band | None
    high_work_K: Band | None
    low_empty_K: Band | None
    low_work_K: Band | None


def reached(
    zone: Zone,
    firing: Firing,
    shop: Shop,
    burner_count: int,
    chamber_temperature: float,
    work_metal: str,
    work_rate: float,
    work_temperature: float,
) -> Reached:
    if not zone.zones:
        return Reached(None, None, None, None, None, None, None)
    high_W, low_W = firing.installed_W, firing.low_W * burner_count
    work_W = into_work_W(work_metal, work_rate, work_temperature, shop)
    now = [physics.at_rate_and_wall(one, high_W, chamber_temperature) for one in zone.zones]
    states = () if None in now else now
    return Reached(
        gas_K=band(tuple(state.gas_temp_K for state in states)),
        kept=band(tuple(state.available_fraction for state in states)),
        spare_W=band(tuple(state.work_heat_W for state in states)),
        high_empty_K=walls_K(zone, high_W),
        high_work_K=walls_K(zone, high_W, work_W),
        low_empty_K=walls_K(zone, low_W),
        low_work_K=walls_K(zone, low_W, work_W),
    )


def walls_K(zone: Zone, rate_W: float, work_W: Callable[[float], float] | None = None) -> Band:
    """Temperature that a firing rate of all burners brings the walls to."""
    return in_order(*(physics.reached(one, rate_W, work_W).wall_temp_K for one in zone.zones))


def into_work_W(metal: str, rate_kg_s: float, work_temp_K: float, shop: Shop) -> Callable[[float], float]:
    """Heat that the work takes up over the temperature of the walls: to its own, or theirs where they are colder."""

    def work_W(wall_K: float) -> float:
        return rate_kg_s * metal_heat_J_kg(metal, shop.temp_K, max(min(work_temp_K, wall_K), shop.temp_K))

    return work_W
