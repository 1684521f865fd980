"""Heat that the lining takes in while the chamber heats up: transient conduction through the layers."""

from dataclasses import dataclass

from ..errors import require
from .walls import check_temperatures, checked_layers


@dataclass(frozen=True)
class HeatUp:
    """State of a wall after the heat-up time.

    Attributes:
        absorbed_J   heat that went in at the hot face                          [J]
        stored_J     of that, still in the lining                               [J]
        lost_J       of that, gone from the shell                               [J]
        depths_m     hot face, then the middle of every cell, then the shell    [m]
        temps_K      temperature there at the end                               [K]
    """

    absorbed_J: float
    stored_J: float
    lost_J: float
    depths_m: tuple
    temps_K: tuple


def heat_up(*, wall, layers, hot_face_temp_K, ambient_temp_K, film_loss_W, time_s, cells_per_layer=18, steps=50):
    """Heat taken in by a wall at air temperature whose hot face is held at `hot_face_temp_K` from the first moment.

        rho cp A(x) dT/dt = d/dx (k A(x) dT/dx),   outside face as in walls.steady_wall

    Implicit finite volumes: cells thin at the hot side of each layer, steps short at the start, properties and outside
    film taken at the start of a step, one tridiagonal solution a step. The heat of each step goes into the enthalpy of
    the cell, so heat is kept to rounding although the heat capacity changes.

    Arguments:
        wall              shapes.Wall
        layers            as in walls.steady_wall
        hot_face_temp_K   hot face              [K]
        ambient_temp_K    shop, and the lining at the start   [K]
        film_loss_W       function (faces, surface_temp_K) -> [W]
        time_s            heat-up time          [s]   above 0, at most 1e6
        cells_per_layer   cells in each layer   [-]   4 or more
        steps             time steps            [-]   8 or more
    Returns: HeatUp
    Raises: InputError for heat_up_time, chamber_temperature, ambient_temperature or lining
    Assumes: hot face at chamber temperature at once, so it errs on the high side; dry lining (no water to drive off)
    Source: Patankar, Numerical Heat Transfer and Fluid Flow, 1980, chapter 4. Published.
    Checked by: tests/test_heatup.py (semi-infinite solid, slab to steady state, heat balance)
    """
    depths, materials = checked_layers(wall, layers)
    check_temperatures(hot_face_temp_K, ambient_temp_K)
    require(0 < time_s <= 1e6, "heat_up_time", f"{time_s:g} s", "must be above 0 and at most 1e6 s", "3600 s")
    cells = _cells(depths, materials, cells_per_layer, time_s)
    linings = [cell[0] for cell in cells]
    middles = [cell[2] for cell in cells]
    masses = [lining.density_kg_m3 * wall.area_m2(middle) * (high - low) for lining, low, middle, high in cells]
    # Resistance shape from the cell's hot side to its middle and from there to its cold side.
    to_hot = [wall.resistance_1_m(middle) - wall.resistance_1_m(low) for _, low, middle, _ in cells]
    to_cold = [wall.resistance_1_m(high) - wall.resistance_1_m(middle) for _, _, middle, high in cells]
    faces, last = wall.outside(depths[-1]), len(cells) - 1
    temps = [ambient_temp_K] * len(cells)
    cold = [lining.enthalpy_J_kg(ambient_temp_K) for lining in linings]
    enthalpies = list(cold)
    shell = ambient_temp_K
    absorbed = lost = 0.0
    for step_s in _steps(time_s, steps):
        k = [lining.conductivity_W_mK(temp) for lining, temp in zip(linings, temps)]
        # The hot half cell spans the widest drop: its mean conductivity by the integral.
        k_hot = _mean_conductivity(linings[0], hot_face_temp_K, temps[0])
        links = [k_hot / to_hot[0]]
        links += [1 / (to_cold[i] / k[i] + to_hot[i + 1] / k[i + 1]) for i in range(last)]
        # Film coefficient from the last shell temperature, from 1 K of rise when there is none yet.
        warm = max(shell, ambient_temp_K + 1.0)
        film = film_loss_W(faces, warm) / (warm - ambient_temp_K)
        out = 1 / (to_cold[last] / k[last] + 1 / film)
        heat_capacities = [lining.heat_capacity_J_kgK(temp) for lining, temp in zip(linings, temps)]
        inertia = [mass * cp / step_s for mass, cp in zip(masses, heat_capacities)]
        new = _tridiagonal(links, out, inertia, temps, hot_face_temp_K, ambient_temp_K)
        absorbed += step_s * links[0] * (hot_face_temp_K - new[0])
        leaving = out * (new[last] - ambient_temp_K)
        lost += step_s * leaving
        shell = ambient_temp_K + leaving / film
        enthalpies = [
            h + cp * (after - before) for h, cp, after, before in zip(enthalpies, heat_capacities, new, temps)
        ]
        temps = [lining.temp_at_enthalpy_K(h) for lining, h in zip(linings, enthalpies)]
    stored = sum(mass * (h - start) for mass, h, start in zip(masses, enthalpies, cold))
    return HeatUp(absorbed, stored, lost, (0.0, *middles, depths[-1]), (hot_face_temp_K, *temps, shell))


def _mean_conductivity(lining, hot_K, cold_K):
    if hot_K - cold_K < 1e-3:
        return lining.conductivity_W_mK(hot_K)
    return (lining.conductivity_integral_W_m(hot_K) - lining.conductivity_integral_W_m(cold_K)) / (hot_K - cold_K)


def _cells(depths, materials, count, time_s):
    """Cells as (Material, low_m, middle_m, high_m), growing from the hot side of each layer.

    The first cell is a tenth of the depth that heat reaches in `time_s`, unless even cells are thinner than that.
    """
    cells = []
    for i, lining in enumerate(materials):
        low, thickness = depths[i], depths[i + 1] - depths[i]
        diffusivity = lining.conductivities_W_mK[-1] / (lining.density_kg_m3 * lining.heat_capacities_J_kgK[-1])
        ratio = _growth(thickness / (0.1 * (diffusivity * time_s) ** 0.5), count)
        size = thickness * (ratio - 1) / (ratio**count - 1) if ratio > 1 else thickness / count
        for n in range(count):
            high = depths[i + 1] if n == count - 1 else low + size
            cells.append((lining, low, 0.5 * (low + high), high))
            low, size = high, size * ratio
    return cells


def _growth(total, count):
    """Ratio of a geometric row of `count` terms that starts at 1 and sums to `total`; 1 when `total` <= count."""
    low, high = 1.0, 4.0
    for _ in range(30):
        ratio = 0.5 * (low + high)
        if (ratio**count - 1) / (ratio - 1) < total:
            low = ratio
        else:
            high = ratio
    return high if total > count else 1.0


def _steps(time_s, count):
    """Step lengths that grow by the same ratio, 300-fold in all, and sum to `time_s`."""
    ratio = 300 ** (1 / count)
    first = time_s * (ratio - 1) / (ratio**count - 1)
    return [first * ratio**n for n in range(count)]


def _tridiagonal(links, out, inertia, old, hot_K, cold_K):
    """New cell temperatures; links[i] joins cell i to its hotter neighbour (links[0] to the hot face) [W/K]."""
    last, upper, right = len(old) - 1, [], []
    before, value = 0.0, hot_K
    for i in range(last + 1):
        towards = links[i + 1] if i < last else out
        pivot = inertia[i] + links[i] * (1 - before) + towards
        source = inertia[i] * old[i] + links[i] * value + (out * cold_K if i == last else 0.0)
        before, value = towards / pivot, source / pivot
        upper.append(before)
        right.append(value)
    new = [0.0] * (last + 1)
    new[last] = right[last]
    for i in range(last - 1, -1, -1):
        new[i] = right[i] + upper[i] * new[i + 1]
    return new
