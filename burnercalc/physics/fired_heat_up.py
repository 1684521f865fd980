"""How the chamber heats up under the fire that it really has: temperature over time, and when it is hot."""

from dataclasses import dataclass

from ..errors import require
from .gas_zone import reached
from .heatup import WallMarch
from .linings import TEMP_MAX_K
from .walls import bracketed_root, check_temperatures

# Steps grow with the time that has gone by; cells are cut for the first quarter of an hour.
FIRST_STEP_S, STEP_GROWTH, CELL_TIME_S = 0.5, 0.12, 900.0

# Closer than this to where the fire must end, the chamber never arrives for any purpose.
NEVER_WITHIN_K = 1.0


@dataclass(frozen=True)
class FiredHeatUp:
    """A chamber heating up from cold.

    Attributes:
        time_s         until the hot face has the temperature asked for; None when it never gets there   [s]
        end_temp_K     that this fire would bring the empty chamber to in the end                        [K]
        times_s        [s]
        wall_temps_K   hot face at these times                                                           [K]
        gas_temps_K    gas that leaves                                                                   [K]
        kept_J         heat that stayed in the chamber so far: lining, shell and opening                 [J]
        stored_J       of that, in the lining                                                            [J]
    """

    time_s: float | None
    end_temp_K: float
    times_s: tuple
    wall_temps_K: tuple
    gas_temps_K: tuple
    kept_J: float
    stored_J: float


def fired_heat_up(zone, *, firing_rate_W, wall_temp_K, longest_s=4e5, cells_per_layer=14, step_growth=STEP_GROWTH):
    """Heat-up of the empty chamber at a steady firing rate, from cold to a wall temperature.

        rate available(Tg) = exchange(Tg, Tw) = heat into the lining + opening loss(Tw)   in every step,
        lining by implicit finite volumes as heatup.heat_up

    Arguments:
        zone              GasZone
        firing_rate_W     gross, all burners                                    [W]   above 0
        wall_temp_K       of the hot face that counts as hot                    [K]   above the shop
        longest_s         where the march is given up                           [s]   above 0
        cells_per_layer   cells in each layer                                   [-]   4 or more
        step_growth       length of a step over the time gone by                [-]   0.01 to 0.5
    Returns: FiredHeatUp
    Raises: InputError for firing_rate, chamber_temperature, heat_up_time or step_growth
    Assumes: as gas_zone.gas_zone; no work inside; dry lining; the gas itself stores nothing
    Source: the zone of Hottel and Sarofim, published, recalled; Patankar, Numerical Heat Transfer and Fluid Flow, 1980,
        chapter 4, published
    Checked by: tests/test_fired_heat_up.py (fired_heat_up of a lump against its integral, of a half space, 27 to 40
        min for a forge by an independent calculation)
    """
    require(0 < firing_rate_W < 1e9, "firing_rate", f"{firing_rate_W:g} W", "must be above 0 and below 1e9 W")
    require(longest_s > 0, "heat_up_time", f"{longest_s:g} s", "must be above 0")
    require(0.01 <= step_growth <= 0.5, "step_growth", f"{step_growth:g}", "must be within 0.01 to 0.5")
    losses, gas = zone.losses, zone.gas
    check_temperatures(wall_temp_K, losses.ambient_temp_K)
    end_K = reached(zone, firing_rate_W).wall_temp_K
    march = WallMarch(
        losses.wall, losses.layers, losses.ambient_temp_K, losses.film_loss_W, CELL_TIME_S, cells_per_layer
    )

    def asked_W(face_K):
        return march.heat_W(face_K) + losses.opening_W(face_K)

    def missing_W(face_K):
        heat = asked_W(face_K)
        return heat - zone.exchange_W(gas.temp_K(heat / firing_rate_W), face_K)

    now, step, face_K, kept = 0.0, FIRST_STEP_S, losses.ambient_temp_K, 0.0
    times, walls, gases = [0.0], [face_K], [gas.flame_temp_K]
    # Towards an end that lies below, only to where nothing more happens.
    goal_K = wall_temp_K if wall_temp_K < end_K - NEVER_WITHIN_K else end_K - NEVER_WITHIN_K
    while face_K < goal_K and now < longest_s:
        # Conductivity of the hot half cell from the face at the start of the step, so that its heat is a straight line.
        march.prepare(step, min(face_K, TEMP_MAX_K))
        face_K = bracketed_root(missing_W, losses.ambient_temp_K, gas.flame_temp_K, 1e-8)
        heat = asked_W(face_K)
        march.advance(face_K)
        kept += step * heat
        now += step
        times.append(now)
        walls.append(face_K)
        gases.append(gas.temp_K(heat / firing_rate_W))
        step = max(FIRST_STEP_S, step_growth * now)
    hot = goal_K == wall_temp_K and face_K >= wall_temp_K
    share = (wall_temp_K - walls[-2]) / (walls[-1] - walls[-2]) if hot else 0.0
    return FiredHeatUp(
        times[-2] + share * (times[-1] - times[-2]) if hot else None,
        end_K,
        tuple(times),
        tuple(walls),
        tuple(gases),
        kept,
        march.stored_J,
    )
