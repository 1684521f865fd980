"""How the chamber heats up under the fire that it really has: temperature over time, and when it is hot."""

from dataclasses import dataclass
from math import exp, log

from ..errors import require
from .gas_zone import rate_to_hold, reached
from .heatup import WallMarch
from .linings import TEMP_MAX_K
from .walls import bracketed_root, check_temperatures

# Steps grow with the time that has gone by; cells are cut for the first quarter of an hour.
FIRST_STEP_S, STEP_GROWTH, CELL_TIME_S = 0.5, 0.12, 900.0

# Beyond every furnace: a fire that is not asked for.
MOST_W = 1e9

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


def fired_heat_up(zone, *, firing_rate_W, wall_temp_K, longest_s=4e5, cells_per_layer=12, step_growth=STEP_GROWTH):
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
    require(0 < firing_rate_W < MOST_W, "firing_rate", f"{firing_rate_W:g} W", "must be above 0 and below 1e9 W")
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
        # Near where the last rise points, as a rule; else anywhere.
        likely_K = face_K + 2 * (face_K - walls[-2]) + 5 if len(walls) > 1 else gas.flame_temp_K
        low_K = face_K if missing_W(face_K) < 0 else losses.ambient_temp_K
        high_K = likely_K if likely_K < gas.flame_temp_K and missing_W(likely_K) > 0 else gas.flame_temp_K
        face_K = bracketed_root(missing_W, low_K, high_K, 1e-8)
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


def rate_to_heat_up(
    zone, *, wall_temp_K, time_s, guess_W=None, within=1e-3, cells_per_layer=12, step_growth=STEP_GROWTH
):
    """Firing rate that heats the empty chamber from cold to a wall temperature in a given time.

        fired_heat_up(rate) = time, by false position on log(rate over that to hold - 1) and log(time)

    Arguments:
        zone          GasZone
        wall_temp_K   of the hot face that counts as hot   [K]   above the shop
        time_s        [s]   above 0, at most 1e6
        guess_W       where to look first; None for three times the rate that holds   [W]
        within        how near the time must come   [-]   1e-4 to 0.05
        cells_per_layer, step_growth   as in fired_heat_up
    Returns: float, gross [W], for a time shorter than asked by up to 2 `within`, or that of the least fire that gets
        there; None when the flame cannot: not hot enough, or the walls take its heat no faster at any rate
    Raises: InputError for chamber_temperature or heat_up_time
    Assumes: as fired_heat_up
    Checked by: tests/test_fired_heat_up.py (rate_to_heat_up and back)
    """
    require(0 < time_s <= 1e6, "heat_up_time", f"{time_s:g} s", "must be above 0 and at most 1e6 s", "3600 s")
    held = rate_to_hold(zone, wall_temp_K)
    if held is None:
        return None
    goal_s = time_s * (1 - within)

    def late(u):
        rate = held.firing_rate_W * (1 + exp(u))
        got = fired_heat_up(
            zone,
            firing_rate_W=rate,
            wall_temp_K=wall_temp_K,
            longest_s=4 * time_s,
            cells_per_layer=cells_per_layer,
            step_growth=step_growth,
        )
        return log((got.time_s or 4 * time_s) / goal_s)

    # Too slow a fire below, too quick a one above; straight in logarithms or nearly so.
    low, high, u, stride = None, None, log(2.0), 1.0
    if guess_W is not None and guess_W > 1.01 * held.firing_rate_W:
        u = log(guess_W / held.firing_rate_W - 1)
    while held.firing_rate_W * (1 + exp(u)) < MOST_W and abs(gap := late(u)) > within:
        if gap > 0:
            low = (u, gap)
        else:
            high = (u, gap)
        if high and (high[0] < -9 or (low and high[0] - low[0] < 1e-3)):
            # Any fire that gets there at all gets there sooner than asked.
            u = high[0]
            break
        if low is None:
            u -= stride * max(0.1, min(-1.5 * gap, 1.5))
            stride *= 2
        elif high is None:
            u += stride * max(0.1, 1.5 * gap)
            stride *= 2
        else:
            u = low[0] + (high[0] - low[0]) * min(max(low[1] / (low[1] - high[1]), 0.1), 0.9)
    rate_W = held.firing_rate_W * (1 + exp(u))
    return rate_W if rate_W < MOST_W else None
