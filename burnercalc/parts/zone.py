"""The gas in the chamber as one zone, for each film of its band, and the fire that the chamber needs then."""

from dataclasses import dataclass
from functools import lru_cache
from math import inf

from ..physics import gas_zone as physics
from ..physics.chamber import FIRING_PER_VOLUME_HIGH_W_M3
from ..physics.equilibrium import EquilibriumError
from ..physics.fired_heat_up import rates_to_heat_up
from ..physics.gas_zone import FILM_W_M2K, GasZone, ZoneState
from ..physics.linings import material
from ..physics.walls import still_air
from .chamber import Chamber
from .gas import Gas
from .shop import Shop

# A march so coarse is off by 6 % at most, where the band of the film moves the time by 20 % and more.
MARCH = {"cells_per_layer": 6, "step_growth": 0.25, "early_step_s": 2.0}
WITHIN = 0.005
NO_FIRE = 3.0  # times what burns well in a chamber: more is no fire of it, and heats nothing up. Common practice

SHELL_EMISSIVITY = 0.9  # as physics.chamber.chamber_heat


@dataclass(frozen=True)
class Zone:
    """From the least film to the most. `zones` is empty without a flame; None where no rate will do, see gas_zone.

    `most_W`: more is no fire of this chamber.

    `heat_up_W` goes on with the fire that burns while the chamber heats up; the others are in balance. It grows without
    end where the opening takes nearly all, so where its middle would be NO_FIRE there is none.
    """

    zones: tuple[GasZone, ...]
    hold: tuple[ZoneState | None, ...]
    working: tuple[ZoneState | None, ...]
    heat_up_W: tuple[float | None, ...]
    most_W: float = inf


NONE = (None, None, None)


def zone(
    chamber: Chamber,
    gas: Gas,
    shop: Shop,
    lining: tuple[tuple[str, float], ...],
    opening_area: float,
    opening_depth: float,
    equivalence_ratio: float,
    chamber_temperature: float,
) -> Zone:
    zones = gas_zones(chamber, gas, shop, lining, opening_area, opening_depth, equivalence_ratio)
    if not zones:
        return Zone((), NONE, NONE, NONE)
    most_W = NO_FIRE * FIRING_PER_VOLUME_HIGH_W_M3 * chamber.volume_m3
    heat_up_W = _heat_up_W(zones, chamber_temperature, chamber.heat.heat_up_time_s, chamber.heat.heat_up_W)
    return Zone(
        zones,
        tuple(physics.rate_to_hold(one, chamber_temperature) for one in zones),
        tuple(physics.rate_to_hold(one, chamber_temperature, chamber.work_heat_W) for one in zones),
        NONE if heat_up_W[1] is None or heat_up_W[1] > most_W else heat_up_W,
        most_W,
    )


def gas_zones(
    chamber: Chamber,
    gas: Gas,
    shop: Shop,
    lining: tuple[tuple[str, float], ...],
    opening_area: float,
    opening_depth: float,
    equivalence_ratio: float,
) -> tuple[GasZone, ...]:
    """The zone of any mixture in this chamber, at the least, the middle and the most film; empty without a flame."""
    return _zones(
        (chamber.walls, lining, opening_area, opening_depth, shop.temp_K, shop.pressure_Pa),
        (gas.composition, equivalence_ratio, shop.temp_K, shop.temp_K, shop.pressure_Pa),
        chamber.volume_m3,
        chamber.heat.inside_area_m2,
    )


@lru_cache(maxsize=64)
def _losses(wall, lining, opening_area_m2, opening_depth_m, ambient_temp_K, pressure_Pa):
    return physics.ChamberLosses(
        wall=wall,
        layers=tuple((material(key), thickness_m) for key, thickness_m in lining),
        opening_area_m2=opening_area_m2,
        opening_depth_m=opening_depth_m,
        ambient_temp_K=ambient_temp_K,
        film_loss_W=still_air(ambient_temp_K=ambient_temp_K, emissivity=SHELL_EMISSIVITY, pressure_Pa=pressure_Pa),
    )


@lru_cache(maxsize=64)
def _zones(losses, mixture, volume_m3, area_m2):
    try:
        burned = physics.burned_gas(*mixture)
    except EquilibriumError:
        return ()
    lost = _losses(*losses)
    return tuple(
        physics.gas_zone(gas=burned, losses=lost, volume_m3=volume_m3, area_m2=area_m2, film_W_m2K=film)
        for film in FILM_W_M2K
    )


@lru_cache(maxsize=64)
def _heat_up_W(zones, wall_temp_K, time_s, held_face_W):
    return rates_to_heat_up(
        zones, wall_temp_K=wall_temp_K, time_s=time_s, held_face_W=held_face_W, within=WITHIN, **MARCH
    )
