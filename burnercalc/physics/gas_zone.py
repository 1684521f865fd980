"""Fire, gas, walls and work as one: how hot the gas leaves, what it leaves in the chamber, and how hot that gets.

The gas in the chamber is one well-stirred zone at the temperature at which it leaves. It is hotter than the walls, for
it must heat them; so less of its heat stays than if it left at their temperature. What is missing is decided by how
well gas and walls exchange heat: by radiation, poor in a small chamber, and by convection, known within a band only.
"""

from bisect import bisect_right
from dataclasses import dataclass
from functools import cached_property, lru_cache
from itertools import pairwise
from math import cos, pi

from ..constants import COMBUSTION_TEMP_K, STANDARD_PRESSURE_PA, STEFAN_BOLTZMANN_W_M2K4
from ..errors import require
from .band import Band
from .combustion import flame, flue_gas, heat_split, reactants_enthalpy_J
from .fuels import AIR, gross_heating_value_J_mol
from .gas_emissivity import TEMP_RANGE_K, exchange_cubic, mean_beam_length_m
from .heatup import cut
from .linings import TEMP_MAX_K
from .openings import opening_loss_W
from .root import near_root
from .thermo import mixture_enthalpy_J
from .walls import check_temperatures, steady_wall

# Convection from burned gas to the walls of a small chamber that jets of many ports stir. Common practice. So wide that
# it covers the radiation too, which other published gases move by up to 15 %, and walls of 0.4 or 0.8 by 20 %.
FILM_W_M2K = Band(20.0, 40.0, 80.0)

# Hot refractory, middle of 0.4 to 0.8 (memory).
WALL_EMISSIVITY = 0.6

COLDEST_GAS_K = 300.0

# Where to look first: walls on their way from the shop to the flame, gas from the walls to the flame.
WALL_RISES, GAS_RISES = (0.6, 0.7), (0.3, 0.5)
WITHIN = 1e-13  # of the temperatures found
_WALL_STEPS = 18  # of about 100 K, from the shop to the end of the lining tables
_COLD_STEP_K, _HOT_STEP_K, _FLUE_NODES = 100.0, 25.0, 5


@dataclass(frozen=True)
class BurnedGas:
    """One burned mixture over the temperature at which it leaves.

    Attributes:
        flame_temp_K              nothing of its heat is left in the chamber here     [K]
        water_fraction            mole fraction of H2O below 1700 K, for radiation    [-]
        carbon_dioxide_fraction   of CO2, alike                                       [-]
        pressure_Pa               [Pa]
        temps_K, available        table: share of the gross heat left, straight lines between, down to COLDEST_GAS_K
    """

    flame_temp_K: float
    water_fraction: float
    carbon_dioxide_fraction: float
    pressure_Pa: float
    temps_K: tuple
    available: tuple

    @cached_property
    def _by_taken(self):
        """The shares with their sign turned, rising, to look up by; and of each row its temperature, its share and the
        kelvins for each share to the next."""
        rows = [
            (t0, a0, (t1 - t0) / (a1 - a0))
            for (t0, t1), (a0, a1) in zip(pairwise(self.temps_K), pairwise(self.available))
        ]
        return tuple(-share for share in self.available), rows

    def available_fraction(self, temp_K):
        """Share of the gross heat left when the gas leaves at `temp_K`, COLDEST_GAS_K to flame_temp_K [-]."""
        i = bisect_right(self.temps_K, temp_K, 1, len(self.temps_K) - 1)
        t0, t1, a0, a1 = self.temps_K[i - 1], self.temps_K[i], self.available[i - 1], self.available[i]
        return a0 + (a1 - a0) * (temp_K - t0) / (t1 - t0)

    def temp_K(self, available_fraction):
        """Temperature at which the gas leaves when this share of its heat is taken; at least COLDEST_GAS_K [K]."""
        if available_fraction >= self.available[0]:
            return self.temps_K[0]
        taken, rows = self._by_taken
        t0, a0, rises = rows[bisect_right(taken, -available_fraction, 1, len(rows)) - 1]
        return t0 + rises * (available_fraction - a0)


@lru_cache(maxsize=64)
def burned_gas(
    fuel,
    equivalence_ratio,
    gas_temp_K=COMBUSTION_TEMP_K,
    air_temp_K=COMBUSTION_TEMP_K,
    pressure_Pa=STANDARD_PRESSURE_PA,
    air=AIR,
):
    """Available heat of a mixture as a table over the temperature at which it leaves, for many quick readings.

        as combustion.heat_split at each temperature; at equilibrium by a polynomial through a few temperatures

    Arguments (as in combustion.flue_gas):
        fuel                composition                     [-]
        equivalence_ratio   phi                             [-]
        gas_temp_K          of the gas before mixing        [K]
        air_temp_K          of the air before mixing        [K]
        pressure_Pa         of the mixture                  [Pa]
        air                 composition                     [-]
    Returns: BurnedGas
    Raises:
        InputError          a value outside its limit
        EquilibriumError    no convergence
    Checked by: tests/test_gas_zone.py (combustion.heat_split within 0.0003 of the gross heat)
    """
    mixture = (gas_temp_K, air_temp_K, pressure_Pa, air)
    flame_K = flame(fuel, equivalence_ratio, *mixture).temp_K
    # Below the temperature at which the composition freezes no equilibrium is needed.
    flue = flue_gas(fuel, equivalence_ratio, COLDEST_GAS_K, *mixture)
    wet, frozen_K = dict(flue.wet), flue.composition_temp_K
    gross_J = gross_heating_value_J_mol(fuel)
    inlet_J = reactants_enthalpy_J(fuel, equivalence_ratio, gas_temp_K, air_temp_K, air)
    temps = [COLDEST_GAS_K + _COLD_STEP_K * n for n in range(int((frozen_K - COLDEST_GAS_K) / _COLD_STEP_K) + 1)]
    temps = [temp for temp in temps if temp < frozen_K - 1] + [frozen_K]
    shares = [(inlet_J - mixture_enthalpy_J(flue.amounts_mol, temp)) / gross_J for temp in temps]
    if flame_K > frozen_K + 1:
        # Nodes of Chebyshev with both ends; at the flame the share is 0 by definition.
        ends = [0.5 - 0.5 * cos(pi * n / _FLUE_NODES) for n in range(_FLUE_NODES + 1)]
        nodes = [frozen_K + (flame_K - frozen_K) * end for end in ends]
        inner = [heat_split(fuel, equivalence_ratio, node, *mixture).available for node in nodes[1:-1]]
        values = [shares[-1], *inner, 0.0]
        count = max(2, round((flame_K - frozen_K) / _HOT_STEP_K))
        more = [frozen_K + (flame_K - frozen_K) * n / count for n in range(1, count + 1)]
        temps += more
        shares += [_through(nodes, values, temp) for temp in more]
    shares[-1] = 0.0
    return BurnedGas(temps[-1], wet["H2O"], wet["CO2"], pressure_Pa, tuple(temps), tuple(shares))


def _through(xs, ys, x):
    """Polynomial through all the points, at x (Lagrange)."""
    total = 0.0
    for i, (xi, yi) in enumerate(zip(xs, ys)):
        for j, xj in enumerate(xs):
            if j != i:
                yi *= (x - xj) / (xi - xj)
        total += yi
    return total


class ChamberLosses:
    """Heat that a chamber loses over the temperature of its walls; each wall is worked out once, and cut once.

    Beyond the tables of the linings (1800 degC) the loss of the walls goes on by a straight line, so that a flame that
    would melt the lining still gets a temperature, which any limit of a lining then refuses.
    """

    def __init__(self, *, wall, layers, opening_area_m2, opening_depth_m, ambient_temp_K, film_loss_W):
        check_temperatures(ambient_temp_K + 1, ambient_temp_K)
        self.wall, self.layers, self.film_loss_W = wall, layers, film_loss_W
        self.ambient_temp_K = ambient_temp_K
        at_1000 = opening_loss_W(
            area_m2=opening_area_m2,
            depth_m=opening_depth_m,
            chamber_temp_K=1000.0,
            ambient_temp_K=ambient_temp_K,
        )
        self.opening_W_K4 = at_1000 / (1000.0**4 - ambient_temp_K**4)
        self.step_K = (TEMP_MAX_K - ambient_temp_K) / _WALL_STEPS
        self._known, self._parabolas, self._cuts = {0: 0.0}, {}, {}

    def _node_W(self, n):
        if n not in self._known:
            self._known[n] = steady_wall(
                wall=self.wall,
                layers=self.layers,
                hot_face_temp_K=min(self.ambient_temp_K + n * self.step_K, TEMP_MAX_K),
                ambient_temp_K=self.ambient_temp_K,
                film_loss_W=self.film_loss_W,
            ).loss_W
        return self._known[n]

    def wall_W(self, wall_temp_K):
        """Heat through the walls, hot all through: parabolas through points some 100 K apart [W]."""
        steps = (wall_temp_K - self.ambient_temp_K) / self.step_K
        last = _WALL_STEPS
        if steps > last:
            low, high = self._node_W(last - 1), self._node_W(last)
            return high + (high - low) * (steps - last)
        n = min(max(int(steps), 1), last - 1)
        if n not in self._parabolas:
            before, here, after = self._node_W(n - 1), self._node_W(n), self._node_W(n + 1)
            self._parabolas[n] = here, (after - before) / 2, (after - 2 * here + before) / 2
        here, slope, bend = self._parabolas[n]
        s = steps - n
        return here + s * (slope + s * bend)

    def cut(self, time_s, cells_per_layer):
        """heatup.cut of its wall."""
        asked = time_s, cells_per_layer
        if asked not in self._cuts:
            self._cuts[asked] = cut(self.wall, self.layers, *asked)
        return self._cuts[asked]

    def opening_W(self, wall_temp_K):
        """Radiation out of the opening, openings.opening_loss_W [W]."""
        return self.opening_W_K4 * (wall_temp_K**4 - self.ambient_temp_K**4)


@dataclass(frozen=True)
class GasZone:
    """A burned gas in a chamber; made by gas_zone().

    Attributes:
        gas             BurnedGas
        losses          ChamberLosses
        area_m2         of the inside walls                                          [m2]
        cubic           of the exchange by radiation over temperature, see gas_emissivity.exchange_cubic
        film_W_m2K      convection, gas to wall                                      [W/m2/K]
    """

    gas: BurnedGas
    losses: ChamberLosses
    area_m2: float
    cubic: tuple
    film_W_m2K: float

    def radiated_W_m2(self, temp_K):
        """What gas or walls of this temperature send to the other: sigma f(T) T**4, f below 600 K and above 2400 K that
        of those temperatures [W/m2]."""
        low, high = TEMP_RANGE_K
        t = low if temp_K < low else high if temp_K > high else temp_K
        c0, c1, c2, c3 = self.cubic
        return STEFAN_BOLTZMANN_W_M2K4 * temp_K**4 * (c0 + t * (c1 + t * (c2 + t * c3)))

    def exchange_W(self, gas_temp_K, wall_temp_K):
        """Heat from the gas to the walls; the equation of gas_zone() [W]."""
        radiated = self.radiated_W_m2(gas_temp_K) - self.radiated_W_m2(wall_temp_K)
        return self.area_m2 * (radiated + self.film_W_m2K * (gas_temp_K - wall_temp_K))


@dataclass(frozen=True)
class ZoneState:
    """A chamber in balance: firing_rate_W * available_fraction = wall + opening + work.

    Attributes:
        firing_rate_W        gross, all burners                      [W]
        gas_temp_K           of the gas in the chamber and leaving   [K]
        wall_temp_K          of the hot face                         [K]
        available_fraction   share of the gross heat that stays      [-]
        wall_loss_W, opening_loss_W, work_heat_W   where it goes     [W]
    """

    firing_rate_W: float
    gas_temp_K: float
    wall_temp_K: float
    available_fraction: float
    wall_loss_W: float
    opening_loss_W: float
    work_heat_W: float


def gas_zone(*, gas, losses, volume_m3, area_m2, film_W_m2K=FILM_W_M2K.value):
    """One well-stirred zone of burned gas between its walls.

        rate available(Tg) = A [sigma (f(Tg) Tg**4 - f(Tw) Tw**4) + h (Tg - Tw)]
                           = wall loss(Tw) + opening loss(Tw) + work,   f as gas_emissivity.exchange_cubic

    Arguments:
        gas          BurnedGas
        losses       ChamberLosses
        volume_m3    inside                              [m3]     above 0
        area_m2      A, of the inside walls              [m2]     above 0
        film_W_m2K   h, see FILM_W_M2K for its band      [W/m2/K] 0 or more
    Returns: GasZone
    Raises: InputError
    Assumes: one gas temperature, one wall temperature; the flame burns out in the chamber; no air drawn in; the
        opening is lit by the walls
    Source: Hottel and Sarofim, Radiative Transfer, 1967: the simplest zone model. Published, recalled.
    Checked by: tests/test_gas_zone.py (gas_zone by its limits: at huge h the gas leaves at wall temperature, as the
        balance of losses and available heat; chambers with Leckner's gas, cantera and scipy within 12 %)
    """
    require(0 <= film_W_m2K < 1e9, "film_W_m2K", film_W_m2K, "must be 0 or more")
    cubic = exchange_cubic(
        water_fraction=gas.water_fraction,
        carbon_dioxide_fraction=gas.carbon_dioxide_fraction,
        path_m=mean_beam_length_m(volume_m3, area_m2),
        wall_emissivity=WALL_EMISSIVITY,
        pressure_Pa=gas.pressure_Pa,
    )
    return GasZone(gas, losses, area_m2, cubic, film_W_m2K)


def _gas_temp_K(zone, heat_W, wall_temp_K):
    """Gas temperature that gives the walls `heat_W`; None when even the flame is not hot enough."""
    flame_K = zone.gas.flame_temp_K
    if not wall_temp_K < flame_K or zone.exchange_W(flame_K, wall_temp_K) <= heat_W:
        return None
    guesses = (wall_temp_K + share * (flame_K - wall_temp_K) for share in GAS_RISES)
    return near_root(lambda tg: zone.exchange_W(tg, wall_temp_K) - heat_W, *guesses, wall_temp_K, flame_K, WITHIN)


def rate_to_hold(zone, wall_temp_K, work_heat_W=0.0):
    """Firing rate that keeps the walls at a temperature.

        rate = (wall loss + opening loss + work) / available(Tg),   Tg from the heat that the walls must get

    Arguments:
        zone          GasZone
        wall_temp_K   of the hot face      [K]   above the shop
        work_heat_W   into the work        [W]   0 for the empty chamber
    Returns: ZoneState, or None when no rate can: the flame is not hot enough to give so much heat
    Raises: InputError for chamber_temperature
    Assumes: as gas_zone
    Checked by: tests/test_gas_zone.py (rate_to_hold 23 to 25.5 kBtu/h for a forge by an independent calculation)
    """
    check_temperatures(wall_temp_K, zone.losses.ambient_temp_K)
    through, out = zone.losses.wall_W(wall_temp_K), zone.losses.opening_W(wall_temp_K)
    heat_W = through + out + work_heat_W
    gas_K = _gas_temp_K(zone, heat_W, wall_temp_K)
    share = zone.gas.available_fraction(gas_K) if gas_K else 0.0
    if not share > 0:
        return None
    return ZoneState(heat_W / share, gas_K, wall_temp_K, share, through, out, work_heat_W)


def reached(zone, firing_rate_W, work_W=None):
    """Temperature that a firing rate brings walls and gas to when it burns on and on.

        the balance of gas_zone, solved for Tw and Tg

    Arguments:
        zone            GasZone
        firing_rate_W   gross, all burners                                    [W]   above 0
        work_W          function of the wall temperature -> heat into the work [W], not falling; None for no work
    Returns: ZoneState; a wall beyond the tables of the linings (1800 degC) is carried on, see ChamberLosses
    Raises: InputError for firing_rate
    Assumes: as gas_zone
    Checked by: tests/test_gas_zone.py (reached is rate_to_hold backwards; figures of an independent calculation)
    """
    require(0 < firing_rate_W < 1e9, "firing_rate", f"{firing_rate_W:g} W", "must be above 0 and below 1e9 W")
    losses, gas = zone.losses, zone.gas

    def asked_W(wall_K):
        work = work_W(wall_K) if work_W else 0.0
        return losses.wall_W(wall_K), losses.opening_W(wall_K), work

    def missing_W(wall_K):
        heat = sum(asked_W(wall_K))
        return heat - zone.exchange_W(gas.temp_K(heat / firing_rate_W), wall_K)

    cold_K, flame_K = losses.ambient_temp_K, gas.flame_temp_K
    guesses = (cold_K + share * (flame_K - cold_K) for share in WALL_RISES)
    wall_K = near_root(missing_W, *guesses, cold_K, flame_K, WITHIN)
    through, out, work = asked_W(wall_K)
    gas_K = gas.temp_K((through + out + work) / firing_rate_W)
    return ZoneState(firing_rate_W, gas_K, wall_K, gas.available_fraction(gas_K), through, out, work)


def gets_hotter(zone, firing_rate_W, wall_temp_K):
    """Whether a firing rate that burns on and on brings the walls beyond a temperature, as reached() would say."""
    require(0 < firing_rate_W < 1e9, "firing_rate", f"{firing_rate_W:g} W", "must be above 0 and below 1e9 W")
    heat = zone.losses.wall_W(wall_temp_K) + zone.losses.opening_W(wall_temp_K)
    return heat < zone.exchange_W(zone.gas.temp_K(heat / firing_rate_W), wall_temp_K)


def at_rate_and_wall(zone, firing_rate_W, wall_temp_K):
    """What the gas gives a wall of this temperature at this firing rate, in balance or not.

        rate available(Tg) = exchange(Tg, Tw),   work = what walls and opening do not take

    Arguments:
        zone            GasZone
        firing_rate_W   gross, all burners      [W]   above 0
        wall_temp_K     of the hot face         [K]   above the shop, below the flame
    Returns: ZoneState whose work_heat_W is what is to spare for work or heating up, negative when the walls cool;
        None when the flame is not hotter than the wall
    Raises: InputError for firing_rate or chamber_temperature
    Assumes: as gas_zone
    Checked by: tests/test_gas_zone.py (at_rate_and_wall agrees with rate_to_hold)
    """
    require(0 < firing_rate_W < 1e9, "firing_rate", f"{firing_rate_W:g} W", "must be above 0 and below 1e9 W")
    check_temperatures(wall_temp_K, zone.losses.ambient_temp_K)
    gas = zone.gas
    if not wall_temp_K < gas.flame_temp_K:
        return None
    guesses = (wall_temp_K + share * (gas.flame_temp_K - wall_temp_K) for share in GAS_RISES)
    gas_K = near_root(
        lambda tg: zone.exchange_W(tg, wall_temp_K) - firing_rate_W * gas.available_fraction(tg),
        *guesses,
        wall_temp_K,
        gas.flame_temp_K,
        WITHIN,
    )
    share = gas.available_fraction(gas_K)
    through, out = zone.losses.wall_W(wall_temp_K), zone.losses.opening_W(wall_temp_K)
    return ZoneState(firing_rate_W, gas_K, wall_temp_K, share, through, out, firing_rate_W * share - through - out)
