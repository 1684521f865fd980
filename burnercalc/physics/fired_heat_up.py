"""How the chamber heats up under the fire that it really has: temperature over time, and when it is hot."""

from copy import copy
from math import exp, inf, log

from ..errors import require
from .gas_zone import at_rate_and_wall, gets_hotter, rate_to_hold, reached
from .heatup import WallMarch
from .linings import TEMP_MAX_K
from .root import near_root
from .walls import check_temperatures

# Steps grow with the time that has gone by; cells are cut for the first quarter of an hour, unless told.
FIRST_STEP_S, STEP_GROWTH, CELL_TIME_S = 0.5, 0.1, 900.0

# Beyond every furnace: a fire that is not asked for.
MOST_W = 1e9

# Of the temperature that a step ends at: a tenth of a thousandth of a kelvin.
STEP_WITHIN = 1e-7
FIRST_GUESS = 0.1  # of the way to the flame

# Of the heat that a face hot from the first moment takes in a fired one takes some three quarters: where to look first.
FACE_SHARE = 0.74
# Two films that give the same heat at this share of the rise take about the same time.
ALMOST = 0.94
# Slope of log(rate over that to hold - 1) over log(time): 0.7 to 3 in forges. So straight that it carries 4 `within`.
LEAST_SLOPE, STEEP, MOST_SLOPE, STRAIGHT = 0.2, 5.0, 10.0, 4.0
WIDE = 3.0  # twenty times the fire: no straight line in logarithms any more

# The first step after the fire is turned up, of the time gone by.
AFTER_TURN_UP = 0.05

# Closer than this to where the fire must end, the chamber never arrives for any purpose.
NEVER_WITHIN_K = 1.0


LONG_S = 8 * 3600.0  # a day's work, longer than a fire is left


class Heating:
    """An empty chamber on its way from cold, under one fire after the other.

    Attributes:
        times_s       [s]
        walls_K       hot face at these times                                                           [K]
        march         heatup.WallMarch: heat absorbed and stored so far
        turned_up_s   when the last fire began                                                          [s]
        time_s        until the hot face has the temperature asked for; None when it never gets there   [s]
    """

    def __init__(self, losses, cells_per_layer, step_growth, early_step_s, cell_time_s):
        require(0.01 <= step_growth <= 0.5, "step_growth", step_growth, "must be within 0.01 to 0.5")
        require(
            early_step_s >= FIRST_STEP_S, "early_step", f"{early_step_s:g} s", f"must be {FIRST_STEP_S:g} s or more"
        )
        require(cell_time_s > 0, "cell_time", f"{cell_time_s:g} s", "must be above 0")
        self.losses, self.growth, self.early_s = losses, step_growth, early_step_s
        self.march = WallMarch(losses.cut(cell_time_s, cells_per_layer), losses.ambient_temp_K, losses.film_loss_W)
        self.took_s, self.turned_up_s, self.time_s = 0.0, 0.0, None
        self.times_s, self.walls_K = [0.0], [losses.ambient_temp_K]

    def turned_up(self):
        """The same chamber, ready for another fire; this one stays as it is."""
        made = copy(self)
        made.march, made.turned_up_s = copy(self.march), self.times_s[-1]
        made.times_s, made.walls_K = self.times_s[:], self.walls_K[:]
        return made

    def go_on(self, zone, firing_rate_W, goal_K, longest_s, to_be_turned_up=False):
        """With a fire until the hot face has a temperature, hardly past it where the fire is `to_be_turned_up`."""
        while self.walls_K[-1] < goal_K and self.times_s[-1] < longest_s:
            self.step(zone, firing_rate_W, goal_K if to_be_turned_up else None)

    def step(self, zone, firing_rate_W, hardly_past_K=None):
        """One step on with a fire."""
        march, losses, gas = self.march, self.losses, zone.gas
        times, walls, flame_K = self.times_s, self.walls_K, zone.gas.flame_temp_K

        def missing_W(face_K):
            heat = march.heat_W(face_K) + losses.opening_W(face_K)
            return heat - zone.exchange_W(gas.temp_K(heat / firing_rate_W), face_K)

        step_s, face_K = self._step_s(hardly_past_K), walls[-1]
        # Conductivity of the hot half cell from the face at the start of the step: its heat is a straight line.
        march.prepare(step_s, min(face_K, TEMP_MAX_K))
        guess_K = 2 * face_K - walls[-2] if len(walls) > 1 else face_K + FIRST_GUESS * (flame_K - face_K)
        guess_K = min(guess_K, 0.5 * (face_K + flame_K))
        face_K = near_root(missing_W, face_K, guess_K, losses.ambient_temp_K, flame_K, STEP_WITHIN)
        march.advance(face_K)
        self.took_s = step_s
        times.append(times[-1] + step_s)
        walls.append(face_K)

    def _step_s(self, hardly_past_K):
        now, took = self.times_s[-1], self.took_s
        if not took:
            return FIRST_STEP_S
        longer = max(min(2 * took, self.early_s), self.growth * now)
        if hardly_past_K is not None:
            before_K, face_K = self.walls_K[-2:]
            return min(longer, max(took * (hardly_past_K + 1 - face_K) / max(face_K - before_K, 1e-3), self.early_s))
        if now == self.turned_up_s:
            return min(AFTER_TURN_UP * now, longer)
        return longer if now > (1 + self.growth) * self.turned_up_s else min(2 * took, longer)


def lit(
    zone,
    *,
    firing_rate_W,
    until_K,
    cells_per_layer=12,
    step_growth=STEP_GROWTH,
    early_step_s=FIRST_STEP_S,
    cell_time_s=CELL_TIME_S,
):
    """A cold chamber lit with a fire, until its hot face is so hot that the fire is turned up.

        as fired_heat_up

    Arguments:
        zone              GasZone of the mixture that it is lit with
        firing_rate_W     gross, all burners         [W]   above 0
        until_K           hot face                   [K]   above the shop
        cells_per_layer, step_growth   as in fired_heat_up
        early_step_s, cell_time_s   as in fired_heat_up   [s]
    Returns: Heating, its last time that of turning up; None when that never comes
    Raises: InputError as fired_heat_up
    Assumes: as fired_heat_up
    Checked by: tests/test_fired_heat_up.py (lit a lump against its integrals, turned up to the same fire, too weak)
    """
    if not gets_hotter(zone, firing_rate_W, until_K + NEVER_WITHIN_K):
        return None
    heating = Heating(zone.losses, cells_per_layer, step_growth, early_step_s, cell_time_s)
    heating.go_on(zone, firing_rate_W, until_K, inf, to_be_turned_up=True)
    return heating


def fired_heat_up(
    zone,
    *,
    firing_rate_W,
    wall_temp_K,
    longest_s=4e5,
    cells_per_layer=12,
    step_growth=STEP_GROWTH,
    early_step_s=FIRST_STEP_S,
    cell_time_s=CELL_TIME_S,
    after=None,
):
    """Heat-up of the empty chamber from cold to a wall temperature: at a steady firing rate, or lit with another first.

        rate available(Tg) = exchange(Tg, Tw) = heat into the lining + opening loss(Tw)   in every step,
        lining by implicit finite volumes as heatup.heat_up

    Arguments:
        zone              GasZone
        firing_rate_W     gross, all burners                                    [W]   above 0
        wall_temp_K       of the hot face that counts as hot                    [K]   above the shop
        longest_s         where the march is given up                           [s]   above 0
        cells_per_layer   cells in each layer                                   [-]   4 or more
        step_growth       length of a step over the time gone by                [-]   0.01 to 0.5
        early_step_s      that the first steps double up to                     [s]   FIRST_STEP_S or more
        cell_time_s       that the cells at the hot face are cut for            [s]   above 0
        after             Heating of lit(), whose cells and steps hold then; None: cold
    Returns: Heating
    Raises: InputError for firing_rate, chamber_temperature, heat_up_time, step_growth, early_step or cell_time
    Assumes: as gas_zone.gas_zone; no work inside; dry lining; the gas itself stores nothing
    Source: the zone of Hottel and Sarofim, published, recalled; Patankar, Numerical Heat Transfer and Fluid Flow, 1980,
        chapter 4, published
    Checked by: tests/test_fired_heat_up.py (fired_heat_up of a lump against its integral, of a half space, 27 to 40
        min for a forge by an independent calculation)
    """
    require(0 < firing_rate_W < MOST_W, "firing_rate", f"{firing_rate_W:g} W", "must be above 0 and below 1e9 W")
    require(longest_s > 0, "heat_up_time", f"{longest_s:g} s", "must be above 0")
    check_temperatures(wall_temp_K, zone.losses.ambient_temp_K)
    heating = (
        after.turned_up() if after else Heating(zone.losses, cells_per_layer, step_growth, early_step_s, cell_time_s)
    )
    # Towards an end that lies below, only to where nothing more happens.
    goal_K, arrives = wall_temp_K, gets_hotter(zone, firing_rate_W, wall_temp_K + NEVER_WITHIN_K)
    if not arrives:
        goal_K = reached(zone, firing_rate_W).wall_temp_K - NEVER_WITHIN_K
    heating.go_on(zone, firing_rate_W, goal_K, longest_s)
    times, walls = heating.times_s, heating.walls_K
    if arrives and walls[-1] >= wall_temp_K:
        share = (wall_temp_K - walls[-2]) / (walls[-1] - walls[-2])
        heating.time_s = times[-2] + share * (times[-1] - times[-2])
    return heating


def time_left_on_s(
    zone,
    *,
    firing_rate_W,
    soaked_K,
    layer,
    limit_K,
    longest_s=LONG_S,
    cells_per_layer=12,
    step_growth=STEP_GROWTH,
    early_step_s=FIRST_STEP_S,
    cell_time_s=CELL_TIME_S,
):
    """Time until a layer has a temperature in an empty chamber that is hot all through and left at a fire.

        as fired_heat_up, from the steady wall at `soaked_K`

    Arguments:
        zone            GasZone
        firing_rate_W   gross, all burners           [W]   above 0
        soaked_K        hot face at the start        [K]   above the shop
        layer           whose hot side it is, the first 0   [-]
        limit_K         [K]
        longest_s       where the march is given up  [s]   above 0
        cells_per_layer, step_growth   as in fired_heat_up
        early_step_s, cell_time_s   as in fired_heat_up   [s]
    Returns: float [s]; None when it does not get there by then
    Raises: InputError as fired_heat_up
    Assumes: as fired_heat_up
    Checked by: tests/test_fired_heat_up.py (time_left_on_s of a lump against its integral, of a layer behind against
        the steady wall)
    """
    require(0 < firing_rate_W < MOST_W, "firing_rate", f"{firing_rate_W:g} W", "must be above 0 and below 1e9 W")
    check_temperatures(soaked_K, zone.losses.ambient_temp_K)
    heating = Heating(zone.losses, cells_per_layer, step_growth, early_step_s, cell_time_s)
    heating.march.soak(soaked_K)
    heating.walls_K = [soaked_K]
    now_s, now_K = 0.0, heating.march.hot_side_K(layer, soaked_K)
    while now_K < limit_K:
        if now_s >= longest_s or heating.walls_K[-1] >= TEMP_MAX_K:
            return None
        before_s, before_K = now_s, now_K
        heating.step(zone, firing_rate_W)
        now_s, now_K = heating.times_s[-1], heating.march.hot_side_K(layer, heating.walls_K[-1])
        if now_K < limit_K:
            continue
        return before_s + (now_s - before_s) * (limit_K - before_K) / (now_K - before_K)
    return 0.0


def rate_to_heat_up(
    zone,
    *,
    wall_temp_K,
    time_s,
    guess_W=None,
    within=1e-3,
    cells_per_layer=12,
    step_growth=STEP_GROWTH,
    early_step_s=FIRST_STEP_S,
):
    """Firing rate that heats the empty chamber from cold to a wall temperature in a given time.

        fired_heat_up(rate) = time, by secants on log(rate over that to hold - 1) against log(time)

    Arguments:
        zone          GasZone
        wall_temp_K   of the hot face that counts as hot   [K]   above the shop
        time_s        [s]   above 0, at most 1e6
        guess_W       where to look first; None for three times the rate that holds   [W]
        within        how near the time must come   [-]   1e-4 to 0.05
        cells_per_layer, step_growth   as in fired_heat_up
        early_step_s   as in fired_heat_up   [s]
    Returns: float, gross [W], for a time shorter than asked by up to 2 `within`, or that of the least fire that gets
        there; None when the flame cannot: not hot enough, or the walls take its heat no faster at any rate
    Raises: InputError for chamber_temperature or heat_up_time
    Assumes: as fired_heat_up
    Checked by: tests/test_fired_heat_up.py (rate_to_heat_up and back)
    """
    march = {"cells_per_layer": cells_per_layer, "step_growth": step_growth, "early_step_s": early_step_s}
    return _rate_and_slope(zone, wall_temp_K, time_s, guess_W, None, within, march)[0]


def rates_to_heat_up(
    zones,
    *,
    wall_temp_K,
    time_s,
    held_face_W,
    within=1e-3,
    cells_per_layer=12,
    step_growth=STEP_GROWTH,
    early_step_s=FIRST_STEP_S,
):
    """rate_to_heat_up of one gas in one chamber with the least, the middle and the most film, each near the next.

        near = rate at which the other film gives the walls, almost hot, as much heat as the found one does

    Arguments:
        zones         three GasZone
        wall_temp_K   as in rate_to_heat_up   [K]
        time_s        as in rate_to_heat_up   [s]
        held_face_W   mean heat into walls and opening in that time with the face hot from the first moment   [W]
        within        as in rate_to_heat_up   [-]
        cells_per_layer, step_growth   as in fired_heat_up
        early_step_s   as in fired_heat_up   [s]
    Returns: tuple of three floats or None, as rate_to_heat_up; no fire of the least film is looked for when the middle
        has none
    Raises: InputError for chamber_temperature or heat_up_time
    Assumes: as fired_heat_up
    Checked by: tests/test_fired_heat_up.py (rates_to_heat_up as one by one, in few marches)
    """
    march = {"cells_per_layer": cells_per_layer, "step_growth": step_growth, "early_step_s": early_step_s}
    low, middle, high = zones
    guess = rate_to_hold(middle, wall_temp_K, FACE_SHARE * held_face_W - _lost_W(middle, wall_temp_K))
    rate_W, slope = _rate_and_slope(
        middle, wall_temp_K, time_s, guess.firing_rate_W if guess else None, None, within, march
    )
    if rate_W is None:
        return None, None, rate_to_heat_up(high, wall_temp_K=wall_temp_K, time_s=time_s, within=within, **march)
    cold_K = middle.losses.ambient_temp_K
    almost_K = cold_K + ALMOST * (wall_temp_K - cold_K)
    to_spare_W = at_rate_and_wall(middle, rate_W, almost_K).work_heat_W

    def beside(zone):
        near = rate_to_hold(zone, almost_K, to_spare_W)
        return _rate_and_slope(zone, wall_temp_K, time_s, near and near.firing_rate_W, slope, within, march)[0]

    return beside(low), rate_W, beside(high)


def _lost_W(zone, wall_temp_K):
    return zone.losses.wall_W(wall_temp_K) + zone.losses.opening_W(wall_temp_K)


def _rate_and_slope(zone, wall_temp_K, time_s, guess_W, slope, within, march):
    """rate_to_heat_up, and how its logarithm rises over the log of how late a fire is; of two marches, or as given."""
    require(0 < time_s <= 1e6, "heat_up_time", f"{time_s:g} s", "must be above 0 and at most 1e6 s", "3600 s")
    held = rate_to_hold(zone, wall_temp_K)
    if held is None:
        return None, None
    goal_s, longest_s = time_s * (1 - within), 4 * time_s

    def rate(u):
        return held.firing_rate_W * (1 + exp(u))

    def late(u):
        """Log of the time over that asked for, and whether the wall got there at all."""
        got = fired_heat_up(zone, firing_rate_W=rate(u), wall_temp_K=wall_temp_K, longest_s=longest_s, **march)
        return log((got.time_s or longest_s) / goal_s), got.time_s is not None

    # Too slow a fire below, too quick a one above; straight in logarithms or nearly so.
    low, high, last, u, stride = None, None, None, log(2.0), 1.0
    if guess_W is not None and guess_W > 1.01 * held.firing_rate_W:
        u = log(guess_W / held.firing_rate_W - 1)
    while rate(u) < MOST_W:
        gap, arrived = late(u)
        if abs(gap) <= within:
            break
        if gap > 0:
            low = (u, gap)
        else:
            high = (u, gap)
        if high and (high[0] < -9 or (low and high[0] - low[0] < 1e-3)):
            # Any fire that gets there at all gets there sooner than asked.
            u = high[0]
            break
        if last and arrived and last[1] != gap:
            steep = (u - last[0]) / (last[1] - gap)
            slope = min(max(steep, LEAST_SLOPE), MOST_SLOPE) if steep > 0 else MOST_SLOPE
        last = (u, gap) if arrived else None
        step = (slope or 1.0) * gap
        between = not (low and u + step <= low[0]) and not (high and u + step >= high[0])
        if slope and arrived and between and abs(gap) <= STRAIGHT * within:
            # So near that the straight line needs no march to confirm it.
            u += step
            break
        if low and high:
            if high[0] - low[0] > WIDE or not 0.1 < (u + step - low[0]) / (high[0] - low[0]) < 0.9:
                # Of much fire the time falls as one over its rate: far apart that is straighter.
                share = min(max(low[1] / (low[1] - high[1]), 0.1), 0.9)
                step = -log((1 - share) * exp(-low[0]) + share * exp(-high[0])) - u
        elif low and (slope and slope > STEEP if arrived else stride >= 4) and rate(u) < MOST_W / 10:
            # Hardly any sooner for much more fire: whether any will do.
            step = log(0.99 * MOST_W / held.firing_rate_W - 1) - u
        else:
            step = min(max(step, -1.5 * stride), 1.5 * stride)
            stride *= 2
        u += step
    return (rate(u), slope) if rate(u) < MOST_W else (None, None)
