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
        wall              chamber_walls.Wall
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
    Checked by: tests/test_heatup.py (semi-infinite solid, slab to steady state, heat balance),
        tests/test_walls_3d.py (heat_up within 3 % of walls in three dimensions)
    """
    check_temperatures(hot_face_temp_K, ambient_temp_K)
    require(0 < time_s <= 1e6, "heat_up_time", f"{time_s:g} s", "must be above 0 and at most 1e6 s", "3600 s")
    march = WallMarch(wall, layers, ambient_temp_K, film_loss_W, time_s, cells_per_layer)
    for step_s in _steps(time_s, steps):
        march.prepare(step_s, hot_face_temp_K)
        march.advance(hot_face_temp_K)
    return HeatUp(march.absorbed_J, march.stored_J, march.lost_J, march.depths_m, march.profile_K(hot_face_temp_K))


class WallMarch:
    """A wall on its way from air temperature, one step at a time, whatever its hot face does.

    `prepare(step_s, hot_guess_K)` sets up a step; then `heat_W(hot_face_temp_K)`, a straight line, says what goes in at
    the hot face during it, and `advance(hot_face_temp_K)` takes the step. Cells are cut for `time_s`.
    """

    def __init__(self, wall, layers, ambient_temp_K, film_loss_W, time_s, cells_per_layer):
        depths, materials = checked_layers(wall, layers)
        cells = _cells(depths, materials, cells_per_layer, time_s)
        middles = [cell[2] for cell in cells]
        self.linings = [cell[0] for cell in cells]
        # Edges and corners hold less heat than their volume for they are colder: mean of it and of what heat flows by.
        self.masses = [
            lining.density_kg_m3 * (wall.solid_m3(high) - wall.solid_m3(low) + wall.area_m2(middle) * (high - low)) / 2
            for lining, low, middle, high in cells
        ]
        # Resistance shape from the cell's hot side to its middle and from there to its cold side.
        self.to_hot, self.to_cold = [], []
        for n, (_, low, middle, high) in enumerate(cells):
            if n % cells_per_layer == 0:
                resistance_1_m = wall.layer_resistance_1_m(low)
            self.to_hot.append(resistance_1_m(middle) - resistance_1_m(low))
            self.to_cold.append(resistance_1_m(high) - resistance_1_m(middle))
        self.faces, self.film_loss_W, self.ambient_K = wall.outside(depths[-1]), film_loss_W, ambient_temp_K
        self.depths_m = (0.0, *middles, depths[-1])
        self.temps = [ambient_temp_K] * len(cells)
        self.cold = [lining.enthalpy_J_kg(ambient_temp_K) for lining in self.linings]
        self.enthalpies = list(self.cold)
        self.conductivities, self.capacities = map(list, zip(*[lining.both(ambient_temp_K) for lining in self.linings]))
        self.shell_K = ambient_temp_K
        self.absorbed_J = self.lost_J = 0.0

    @property
    def stored_J(self):
        """Heat in the lining above its start [J]."""
        return sum(mass * (h - start) for mass, h, start in zip(self.masses, self.enthalpies, self.cold))

    def profile_K(self, hot_face_temp_K):
        """Temperatures at `depths_m`."""
        return (hot_face_temp_K, *self.temps, self.shell_K)

    def prepare(self, step_s, hot_guess_K):
        """Set up a step; `hot_guess_K` gives the mean conductivity of the hot half cell."""
        k = self.conductivities
        # The hot half cell spans the widest drop: its mean conductivity by the integral.
        self.link = _mean_conductivity(self.linings[0], hot_guess_K, self.temps[0]) / self.to_hot[0]
        # Film coefficient from the last shell temperature, from 1 K of rise when there is none yet.
        warm = max(self.shell_K, self.ambient_K + 1.0)
        self.film = self.film_loss_W(self.faces, warm) / (warm - self.ambient_K)
        self.out = 1 / (self.to_cold[-1] / k[-1] + 1 / self.film)
        self.step_s = step_s
        # From the air inwards: each new temperature as start + slope * that of its hotter neighbour.
        masses, capacities, temps = self.masses, self.capacities, self.temps
        to_hot, to_cold, lines = self.to_hot, self.to_cold, []
        towards, start, slope = self.out, self.ambient_K, 0.0
        for i in range(len(masses) - 1, -1, -1):
            inertia = masses[i] * capacities[i] / step_s
            link = 1 / (to_cold[i - 1] / k[i - 1] + to_hot[i] / k[i]) if i else self.link
            pivot = inertia + link + towards * (1 - slope)
            start, slope, towards = (inertia * temps[i] + towards * start) / pivot, link / pivot, link
            lines.append((start, slope))
        self.lines = lines[::-1]

    def heat_W(self, hot_face_temp_K):
        """Heat into the wall during the step that is prepared, with its hot face at this temperature at the end."""
        start, slope = self.lines[0]
        return self.link * (hot_face_temp_K * (1 - slope) - start)

    def advance(self, hot_face_temp_K):
        """Take the step that is prepared."""
        self.absorbed_J += self.step_s * self.heat_W(hot_face_temp_K)
        hotter, enthalpies, temps = hot_face_temp_K, self.enthalpies, self.temps
        k, c = self.conductivities, self.capacities
        for i, (lining, (start, slope)) in enumerate(zip(self.linings, self.lines)):
            hotter = start + slope * hotter
            enthalpies[i] += c[i] * (hotter - temps[i])
            temps[i], k[i], c[i] = lining.state(enthalpies[i])
        leaving = self.out * (hotter - self.ambient_K)
        self.lost_J += self.step_s * leaving
        self.shell_K = self.ambient_K + leaving / self.film


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
