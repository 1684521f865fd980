"""Heat that the lining takes in while the chamber heats up: transient conduction through the layers."""

from dataclasses import dataclass

from ..errors import require
from .walls import check_temperatures, checked_layers

SOAK_S, SOAK_STEPS = 1e9, 8  # conductivities are those of the step before, so a few


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
    march = WallMarch(cut(wall, layers, time_s, cells_per_layer), ambient_temp_K, film_loss_W)
    for step_s in _steps(time_s, steps):
        march.prepare(step_s, hot_face_temp_K)
        march.advance(hot_face_temp_K)
    return HeatUp(march.absorbed_J, march.stored_J, march.lost_J, march.cut.depths_m, march.profile_K(hot_face_temp_K))


@dataclass(frozen=True)
class Cut:
    """A wall in cells from the hot face out.

    `layers`: (Material, slice of its cells); `to_hot_1_m`, `to_cold_1_m`: resistance from the middle of a cell to its
    hot and its cold side, without conductivity; `depths_m`: hot face, the middle of every cell, shell; `faces`:
    outside, see Wall.
    """

    layers: tuple
    masses_kg: tuple
    to_hot_1_m: tuple
    to_cold_1_m: tuple
    depths_m: tuple
    faces: tuple


def cut(wall, layers, time_s, cells_per_layer):
    """A Cut of a wall, its cells thin at the hot side of each layer, for what happens in `time_s`."""
    depths, materials = checked_layers(wall, layers)
    cells = _cells(depths, materials, cells_per_layer, time_s)
    to_hot, to_cold = [], []
    for n, (_, low, middle, high) in enumerate(cells):
        if n % cells_per_layer == 0:
            resistance_1_m = wall.layer_resistance_1_m(low)
        to_hot.append(resistance_1_m(middle) - resistance_1_m(low))
        to_cold.append(resistance_1_m(high) - resistance_1_m(middle))
    return Cut(
        layers=tuple(
            (lining, slice(n * cells_per_layer, (n + 1) * cells_per_layer)) for n, lining in enumerate(materials)
        ),
        # Edges and corners hold less heat than their volume for they are colder: mean of it and of what heat flows by.
        masses_kg=tuple(
            lining.density_kg_m3 * (wall.solid_m3(high) - wall.solid_m3(low) + wall.area_m2(middle) * (high - low)) / 2
            for lining, low, middle, high in cells
        ),
        to_hot_1_m=tuple(to_hot),
        to_cold_1_m=tuple(to_cold),
        depths_m=(0.0, *(middle for *_, middle, _ in cells), depths[-1]),
        faces=wall.outside(depths[-1]),
    )


class WallMarch:
    """A wall on its way from air temperature, one step at a time, whatever its hot face does.

    `prepare(step_s, hot_guess_K)` sets up a step; then `heat_W(hot_face_temp_K)`, a straight line, says what goes in at
    the hot face during it, and `advance(hot_face_temp_K)` takes the step.
    """

    def __init__(self, cut, ambient_temp_K, film_loss_W):
        self.cut, self.film_loss_W, self.ambient_K = cut, film_loss_W, ambient_temp_K
        self.temps = [ambient_temp_K] * len(cut.masses_kg)
        self.cold = self.enthalpies = [
            lining.enthalpy_J_kg(ambient_temp_K) for lining, cells in cut.layers for _ in self.temps[cells]
        ]
        _, self.conductivities, self.capacities = self._states(self.cold)
        self.shell_K, self.film_at_K = ambient_temp_K, None
        self.absorbed_J = self.lost_J = 0.0

    @property
    def stored_J(self):
        """Heat in the lining above its start [J]."""
        return sum(mass * (h - start) for mass, h, start in zip(self.cut.masses_kg, self.enthalpies, self.cold))

    def profile_K(self, hot_face_temp_K):
        """Temperatures at the depths of its cut."""
        return (hot_face_temp_K, *self.temps, self.shell_K)

    def soak(self, hot_face_temp_K):
        """Bring it where it ends with its hot face at this temperature: steps so long that nothing is stored."""
        for _ in range(SOAK_STEPS):
            self.prepare(SOAK_S, hot_face_temp_K)
            self.advance(hot_face_temp_K)

    def hot_side_K(self, layer, hot_face_temp_K):
        """Temperature of the hot side of a layer, counted from 0: there both cells beside it pass the same heat."""
        if layer == 0:
            return hot_face_temp_K
        cut, at = self.cut, self.cut.layers[layer][1].start
        before, behind = (
            self.conductivities[at - 1] / cut.to_cold_1_m[at - 1],
            self.conductivities[at] / cut.to_hot_1_m[at],
        )
        return (before * self.temps[at - 1] + behind * self.temps[at]) / (before + behind)

    def prepare(self, step_s, hot_guess_K):
        """Set up a step; `hot_guess_K` gives the mean conductivity of the hot half cell."""
        cut, k, to_hot, to_cold = self.cut, self.conductivities, self.cut.to_hot_1_m, self.cut.to_cold_1_m
        # The hot half cell spans the widest drop: its mean conductivity by the integral.
        link = _mean_conductivity(cut.layers[0][0], hot_guess_K, self.temps[0]) / to_hot[0]
        # Film coefficient from the last shell temperature, from 1 K of rise when there is none yet.
        warm = max(self.shell_K, self.ambient_K + 1.0)
        if warm != self.film_at_K:
            self.film, self.film_at_K = self.film_loss_W(cut.faces, warm) / (warm - self.ambient_K), warm
        self.out = 1 / (to_cold[-1] / k[-1] + 1 / self.film)
        self.step_s = step_s
        # From the air inwards: each new temperature as start + slope * that of its hotter neighbour.
        links = [1 / (cold / k0 + hot / k1) for cold, k0, hot, k1 in zip(to_cold, k, to_hot[1:], k[1:])]
        towards, start, slope, lines = self.out, self.ambient_K, 0.0, []
        from_shell = map(reversed, (cut.masses_kg, self.capacities, self.temps, (link, *links)))
        for mass, capacity, temp, link in zip(*from_shell):
            inertia = mass * capacity / step_s
            pivot = inertia + link + towards * (1 - slope)
            start, slope, towards = (inertia * temp + towards * start) / pivot, link / pivot, link
            lines.append((start, slope))
        self.lines = lines[::-1]
        self.heat_at_0_W, self.heat_W_K = -link * start, link * (1 - slope)

    def heat_W(self, hot_face_temp_K):
        """Heat into the wall during the step that is prepared, with its hot face at this temperature at the end."""
        return self.heat_at_0_W + self.heat_W_K * hot_face_temp_K

    def advance(self, hot_face_temp_K):
        """Take the step that is prepared."""
        self.absorbed_J += self.step_s * self.heat_W(hot_face_temp_K)
        hotter, enthalpies = hot_face_temp_K, []
        for (start, slope), enthalpy, temp, capacity in zip(self.lines, self.enthalpies, self.temps, self.capacities):
            hotter = start + slope * hotter
            enthalpies.append(enthalpy + capacity * (hotter - temp))
        self.enthalpies = enthalpies
        self.temps, self.conductivities, self.capacities = self._states(enthalpies)
        leaving = self.out * (hotter - self.ambient_K)
        self.lost_J += self.step_s * leaving
        self.shell_K = self.ambient_K + leaving / self.film

    def _states(self, enthalpies):
        """Material.states of all cells."""
        found = [], [], []
        for lining, cells in self.cut.layers:
            for all_, of_layer in zip(found, lining.states(enthalpies[cells])):
                all_ += of_layer
        return found


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
