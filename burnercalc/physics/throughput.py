"""How fast work can take heat up: a bar in the chamber, what lies on its floor, and a charge that melts."""

from functools import lru_cache
from itertools import pairwise
from math import pi

from ..constants import STEFAN_BOLTZMANN_W_M2K4
from ..errors import require
from ..tables import find, interpolate
from .band import Band
from .gas_zone import FILM_W_M2K
from .metals import metal

# Share of its surface with which a bar sees hot walls: free in the middle 1; in a row one diameter apart on a floor
# that only sends back what it gets 0.55 (Hottel's row of tubes before a refractory wall, memory); a bar alone on the
# floor between them.
VIEW = Band(0.55, 0.75, 1.0)


_PARTS = 8  # of each row of the heat table, even, for Simpson


def surface_emissivity(metal_key):
    """Emissivity of a work metal out of the fire, data/metal_surface.csv [-]."""
    return find("metal_surface", "key", metal_key, "work_metal")["emissivity"]


def bar_flux_W_m2(*, temp_K, chamber_temp_K, emissivity, view, film_W_m2K):
    """Heat that a bar takes up per surface.

        q = e F sigma (Tc**4 - T**4) + h (Tc - T)

    Arguments:
        temp_K           T, of the bar                  [K]
        chamber_temp_K   Tc, of walls and gas           [K]
        emissivity       e                              [-]        0 to 1
        view             F, share that sees the walls   [-]        0 to 1
        film_W_m2K       h                              [W/m2/K]   0 or more
    Returns: float [W/m2]
    Assumes: the gas, which is hotter, counts as the walls, on the careful side
    Source: any heat-transfer text. Published.
    Checked by: tests/test_throughput.py (bar_flux_W_m2 by ht.radiation.q_rad)
    """
    radiated = emissivity * view * STEFAN_BOLTZMANN_W_M2K4 * (chamber_temp_K**4 - temp_K**4)
    return radiated + film_W_m2K * (chamber_temp_K - temp_K)


@lru_cache(maxsize=256)
def bar_heat_time_s(
    *,
    metal_key,
    diameter_m,
    start_temp_K,
    end_temp_K,
    chamber_temp_K,
    view=VIEW.value,
    film_W_m2K=FILM_W_M2K.value,
):
    """Time in which a round bar gets hot in a chamber that stays as hot as it is.

        t = integral of rho c D / 4 / q(T) dT = rho D / 4 integral of dh / q,   q of bar_flux_W_m2

    Arguments:
        metal_key        of data/metals.csv
        diameter_m       D; of a square bar its side          [m]        above 0, at most 1
        start_temp_K     cold                                 [K]        from 223.15
        end_temp_K       when it comes out, still solid       [K]        not below the start
        chamber_temp_K   [K]
        view             of bar_flux_W_m2                     [-]        above 0, at most 1
        film_W_m2K       of bar_flux_W_m2                     [W/m2/K]   0 or more
    Returns: float [s]; None when the chamber is not hotter than the bar must get
    Raises: InputError for bar_diameter, work_metal, ambient_temperature, work_temperature or another argument
    Assumes: even temperature across the bar, which holds to about an inch of steel (Biot number 0.1); a thicker one
        takes longer, its middle lags; ends do not count; the chamber does not cool
    Source: lumped body; heat content of data/metal_heat.csv. Published.
    Checked by: tests/test_throughput.py (bar_heat_time_s by the closed form for constant c),
        tests/reference/bar_times.csv
    """
    found = metal(metal_key)
    require(0 < diameter_m <= 1, "bar_diameter", f"{diameter_m:g} m", "must be above 0 and at most 1 m", "0.025 m")
    require(0 < view <= 1, "view", view, "must be above 0 and at most 1", "1")
    require(0 <= film_W_m2K < 1e9, "film_W_m2K", film_W_m2K, "must be 0 or more", "0")
    require(
        start_temp_K <= end_temp_K <= found.solidus_K,
        "work_temperature",
        f"{end_temp_K:g} K",
        f"must be above the surroundings and at most {found.solidus_K:g} K, where {found.name} starts to melt",
        f"{found.solidus_K:g} K",
    )
    if not end_temp_K < chamber_temp_K:
        return None
    emissivity = surface_emissivity(metal_key)

    def wait_m2_W(temp_K):
        return 1 / bar_flux_W_m2(
            temp_K=temp_K,
            chamber_temp_K=chamber_temp_K,
            emissivity=emissivity,
            view=view,
            film_W_m2K=film_W_m2K,
        )

    inner = [temp for temp in found.temps_K if start_temp_K < temp < end_temp_K]
    stops = [start_temp_K, *inner, end_temp_K]
    heats = [interpolate(stop, found.temps_K, found.heats_J_kg, "ambient_temperature") for stop in stops]
    total = 0.0
    for (low, high), (before, after) in zip(pairwise(stops), pairwise(heats)):
        waits = [wait_m2_W(low + (high - low) * n / _PARTS) for n in range(_PARTS + 1)]
        total += (
            (after - before) * (waits[0] + waits[-1] + 4 * sum(waits[1::2]) + 2 * sum(waits[2:-1:2])) / (3 * _PARTS)
        )
    return found.density_kg_m3 * diameter_m / 4 * total


def bars_on_floor(*, width_m, diameter_m):
    """Bars that lie side by side on a floor, one diameter apart and from the walls.

        n = floor((W / D - 1) / 2), and 1 where one fits at all

    Arguments:
        width_m      W, of the floor    [m]   above 0
        diameter_m   D                  [m]   above 0
    Returns: int, 0 when the bar is wider than the floor
    Raises: InputError for width_m or bar_diameter
    Checked by: tests/test_throughput.py (bars_on_floor by counting)
    """
    require(0 < width_m < 1000, "width_m", width_m, "must be above 0 and below 1000 m")
    require(0 < diameter_m < 1000, "bar_diameter", diameter_m, "must be above 0 and below 1000 m")
    if diameter_m > width_m:
        return 0
    # A hair of slack, so that exact multiples count.
    return max(1, int((width_m / diameter_m - 1) / 2 + 1e-9))


def bar_throughput_kg_s(
    *, metal_key, diameter_m, length_m, width_m, start_temp_K, end_temp_K, chamber_temp_K, film=FILM_W_M2K
):
    """Metal that a chamber of given floor can heat as round bars, however much fire there is.

        rate = n pi / 4 D**2 L rho / t,   n of bars_on_floor, t of bar_heat_time_s

    Arguments (as in bar_heat_time_s):
        metal_key        of data/metals.csv
        diameter_m       D                                   [m]
        length_m         L, of the chamber                   [m]   above 0
        width_m          of its floor                        [m]   above 0
        start_temp_K     [K]
        end_temp_K       [K]
        chamber_temp_K   [K]
        film             Band of h                           [W/m2/K]
    Returns: Band [kg/s]: low for bars on a floor, high for bars that hang free in the hottest stream; None when no
        bar fits or the chamber is not hotter than the bar must get
    Raises: InputError
    Assumes: the length of bar in the chamber counts; a new bar follows at once; the fire keeps the chamber hot
    Checked by: tests/test_throughput.py (bar_throughput_kg_s by its parts, and that it hardly depends on D)
    """
    require(0 < length_m < 1000, "length_m", length_m, "must be above 0 and below 1000 m")
    count = bars_on_floor(width_m=width_m, diameter_m=diameter_m)
    times = [
        bar_heat_time_s(
            metal_key=metal_key,
            diameter_m=diameter_m,
            start_temp_K=start_temp_K,
            end_temp_K=end_temp_K,
            chamber_temp_K=chamber_temp_K,
            view=view,
            film_W_m2K=h,
        )
        for view, h in zip(VIEW, film)
    ]
    if count == 0 or None in times or 0 in times:
        return None
    mass_kg = count * pi / 4 * diameter_m**2 * length_m * metal(metal_key).density_kg_m3
    return Band(*(mass_kg / time_s for time_s in times))


def charge_rate_kg_s(*, spare_heat_W, heat_J_kg):
    """Metal that the heat to spare can bring to its temperature, melting included.

        rate = heat / (heat per kg)

    Arguments:
        spare_heat_W   gas_zone.at_rate_and_wall(...).work_heat_W   [W]      negative counts as none
        heat_J_kg      metals.metal_heat_J_kg                       [J/kg]   above 0
    Returns: float [kg/s]
    Raises: InputError for heat_J_kg
    Assumes: all of it goes into the charge: a crucible with thick walls, or a lid left off, takes longer
    Source: energy balance. Published.
    Checked by: tests/test_throughput.py (charge_rate_kg_s for a pot of aluminium by hand)
    """
    require(0 < heat_J_kg < float("inf"), "heat_J_kg", heat_J_kg, "must be above 0")
    return max(spare_heat_W, 0.0) / heat_J_kg
