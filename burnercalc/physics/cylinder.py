"""How much gas a cylinder gives: air warms the wetted wall, that heat boils liquid, too much draw chills it.

The regulator stops being fed when the liquid is so cold that its pressure falls below what the inlet needs.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import acos, exp, pi, sqrt

from ..constants import INCH_M, POUND_KG
from ..errors import require
from ..tables import find
from .lp_blend import (
    blend_density_kg_m3,
    blend_heat_capacity_J_kgK,
    blend_latent_heat_J_kg,
    boiled_down,
    bubble_pressure_Pa,
    bubble_temp_K,
)
from .lp_liquid import liquid_density_kg_m3

# Heat from still air through the wall to the boiling liquid, and the strip of dry wall above the liquid that works as a
# fin. Both fitted to the 50 cells of tests/reference/cylinder_100lb.csv (published table): root mean square error
# 1.7 %, largest 7 %.
WALL_COEFFICIENT_W_M2K = 11.6
DRY_STRIP_M = 0.032

STEEL_HEAT_CAPACITY_J_KGK = 480.0  # EN 1993-1-2 at room temperature, 440 to 490 (memory)
STEEL_DENSITY_KG_M3 = 7850.0  # EN 1993-1-2 (published)
FILL_LIMIT = 0.80  # share of the volume that a propane container may hold as liquid (common practice)
FROST_TEMP_K = 273.15


@dataclass(frozen=True)
class Vessel:
    """A container of liquid gas.

    Attributes:
        diameter_m       outside
        length_m         overall length of a lying tank with round ends; None for an upright cylinder
        capacity_kg      propane when full
        steel_mass_kg    empty weight
    """

    diameter_m: float
    length_m: float | None
    capacity_kg: float
    steel_mass_kg: float


def upright_cylinder(name):
    """The upright cylinder of a row of data/cylinders.csv: `20 lb`, `30 lb`, `40 lb` or `100 lb`."""
    row = find("cylinders", "name", name, "cylinder")
    return Vessel(row["diameter_in"] * INCH_M, None, row["propane_lb"] * POUND_KG, row["empty_weight_lb"] * POUND_KG)


def lying_tank(diameter_m, length_m):
    """A lying tank with half-ball ends, 80 % full when full; its wall is that of 250 psig at 17 500 psi (memory)."""
    require(0 < diameter_m < 10, "tank_diameter", f"{diameter_m:g} m", "must be above 0 and below 10 m")
    require(
        diameter_m <= length_m < 100,
        "tank_length",
        f"{length_m:g} m",
        "must be at least the diameter and below 100 m",
        f"{diameter_m:g} m",
    )
    volume = pi / 4 * diameter_m**2 * (length_m - diameter_m / 3)
    wall_m = diameter_m * 250 / (2 * 17500)
    # 15.6 degC: the density at which containers are filled by volume.
    return Vessel(
        diameter_m,
        length_m,
        FILL_LIMIT * volume * liquid_density_kg_m3("C3H8", 288.71),
        pi * diameter_m * length_m * wall_m * STEEL_DENSITY_KG_M3,
    )


def _tank_depth_m(vessel, volume_m3):
    """Depth of liquid in a lying tank, by halving."""
    r, straight = vessel.diameter_m / 2, vessel.length_m - vessel.diameter_m

    def volume(depth):
        segment = r * r * acos(1 - depth / r) - (r - depth) * sqrt(max(depth * (2 * r - depth), 0.0))
        return segment * straight + pi * depth * depth * (3 * r - depth) / 3

    require(volume_m3 <= volume(2 * r), "liquid_kg", f"{volume_m3:g} m3", f"must fit the tank of {volume(2 * r):g} m3")
    low, high = 0.0, 2 * r
    for _ in range(50):
        middle = (low + high) / 2
        low, high = (middle, high) if volume(middle) < volume_m3 else (low, middle)
    return (low + high) / 2


def heated_area_m2(vessel, liquid_kg, density_kg_m3):
    """Wall that feeds heat to the liquid: the wetted wall with the bottom, and DRY_STRIP_M of wall above it.

        upright:  A = pi d^2/4 + pi d (V/(pi d^2/4) + s)
        lying:    A = d acos(1 - 2 h/d) (L - d) + pi d h + 2 s (L - d) + pi d s (no more than all the wall)

    Arguments:
        vessel          Vessel
        liquid_kg       liquid in it                  [kg]      0 or more
        density_kg_m3   of the liquid                 [kg/m3]
    Returns:
        float           0 when empty                  [m2]
    Source:
        geometry (calc); strip: fitted, see DRY_STRIP_M
    Checked by:
        tests/reference/cylinder_100lb.csv
    """
    require(0 <= liquid_kg < float("inf"), "liquid_kg", liquid_kg, "must be 0 or more")
    if liquid_kg == 0:
        return 0.0
    volume, d = liquid_kg / density_kg_m3, vessel.diameter_m
    if vessel.length_m is None:
        return pi * d * d / 4 + pi * d * (volume / (pi * d * d / 4) + DRY_STRIP_M)
    depth, straight = _tank_depth_m(vessel, volume), vessel.length_m - d
    wetted = d * acos(1 - 2 * depth / d) * straight + pi * d * depth
    return min(wetted + DRY_STRIP_M * (2 * straight + pi * d), pi * d * vessel.length_m)


def wall_conductance_W_K(vessel, liquid_kg, density_kg_m3):
    """Heat through the wall per kelvin between air and liquid, U A [W/K]."""
    return WALL_COEFFICIENT_W_M2K * heated_area_m2(vessel, liquid_kg, density_kg_m3)


def draw_limit_W(vessel, liquid_kg, liquid, air_temp_K, inlet_pressure_Pa, heating_value_J_kg):
    """Largest steady draw of one container, as heat of its gas.

        P = U A (T_air - T_liquid) HHV/h_fg,   T_liquid = temperature of boiling at the regulator's inlet pressure

    Arguments:
        vessel               Vessel
        liquid_kg            liquid in it                                [kg]      0 or more
        liquid               ((species, mole fraction), ...) as it is    [-]
        air_temp_K           T_air                                       [K]
        inlet_pressure_Pa    least the regulator needs, absolute         [Pa]
        heating_value_J_kg   HHV (or LHV) of the gas                     [J/kg]
    Returns:
        float                0 when the air is no warmer than T_liquid   [W]
    Raises:
        InputError           outside the saturation table
    Assumes:
        still air, no sun, no frost coat; steady. A short run draws more from the warmth of the liquid: see run_down
    Source:
        heat balance (calc); U fitted to a published table of 100 lb cylinders
    Checked by:
        tests/reference/cylinder_100lb.csv
    """
    liquid_K = bubble_temp_K(liquid, inlet_pressure_Pa)
    if not air_temp_K > liquid_K:
        require(air_temp_K == air_temp_K, "air_temp_K", "nan", "must be a number")
        return 0.0
    conductance = wall_conductance_W_K(vessel, liquid_kg, blend_density_kg_m3(liquid, liquid_K))
    return conductance * (air_temp_K - liquid_K) * heating_value_J_kg / blend_latent_heat_J_kg(liquid, liquid_K)


@dataclass(frozen=True)
class RunDown:
    """How one container fares under a steady draw.

    Attributes:
        run_time_s     until it no longer feeds the regulator
        ended_by       "empty", "cold" (pressure too low) or "cold at the start"
        frost_time_s   until its wall is at the freezing point, None if it never is; 0 when it starts below
        left_kg        liquid left at the end
        points         ((time_s, liquid_temp_K, liquid_kg, pressure_Pa absolute), ...)
    """

    run_time_s: float
    ended_by: str
    frost_time_s: float | None
    left_kg: float
    points: tuple


def run_down(vessel, liquid_kg, liquid, air_temp_K, inlet_pressure_Pa, draw_W, heating_value_J_kg, steps=200):
    """Follow the liquid's temperature and mass under a steady draw until empty or too cold.

        (M c + M_s c_s) dT/dt = U A(M) (T_air - T) - m h_fg,   dM/dt = -m,   m = draw/HHV;   a blend as boiled_down

    Arguments:
        vessel               Vessel
        liquid_kg            liquid at the start                    [kg]     above 0
        liquid               ((species, mole fraction), ...) at the start  [-]
        air_temp_K           air, and liquid at the start           [K]
        inlet_pressure_Pa    least the regulator needs, absolute    [Pa]
        draw_W               heat of the gas drawn                  [W]      above 0
        heating_value_J_kg   HHV (or LHV), as draw_W counts         [J/kg]
        steps                equal steps to empty                   [-]
    Returns:
        RunDown
    Raises:
        InputError           a value outside its limit
    Assumes:
        liquid and steel at one temperature; each step is exact for its own mean mass, so no step size is unstable
    Source:
        heat balance (calc)
    Checked by:
        tests/test_cylinder.py: energy balance, and the limits without and with much heat from outside
    """
    for name, value in (("liquid_kg", liquid_kg), ("draw_W", draw_W), ("heating_value_J_kg", heating_value_J_kg)):
        require(0 < value < float("inf"), name, value, "must be above 0")
    pressure = bubble_pressure_Pa(liquid, air_temp_K)
    least_K = bubble_temp_K(liquid, inlet_pressure_Pa)
    if air_temp_K <= least_K:
        return RunDown(
            0.0,
            "cold at the start",
            0.0 if air_temp_K <= FROST_TEMP_K else None,
            liquid_kg,
            ((0.0, air_temp_K, liquid_kg, pressure),),
        )
    flow = draw_W / heating_value_J_kg
    drawn = _drawn(vessel, liquid_kg, liquid, air_temp_K, flow, steps)
    step, frost = drawn.step_s, 0.0 if air_temp_K <= FROST_TEMP_K else None
    temp, mass, points = air_temp_K, liquid_kg, [(0.0, air_temp_K, liquid_kg, pressure)]
    for i in range(steps):
        new, left, heavier = drawn.after(i + 1)
        if frost is None and new <= FROST_TEMP_K:
            frost = (i + (temp - FROST_TEMP_K) / (temp - new)) * step
        if new <= least_K or (pressure := bubble_pressure_Pa(heavier, new)) <= inlet_pressure_Pa:
            over, under = (
                temp - bubble_temp_K(liquid, inlet_pressure_Pa),
                new - bubble_temp_K(heavier, inlet_pressure_Pa),
            )
            share = over / (over - under)
            end_s, end_K = (i + share) * step, temp + share * (new - temp)
            mass -= share * flow * step
            points.append((end_s, end_K, mass, inlet_pressure_Pa))
            return RunDown(end_s, "cold", frost if frost is None or frost <= end_s else None, mass, tuple(points))
        temp, mass, liquid = new, left, heavier
        points.append(((i + 1) * step, temp, mass, pressure))
    return RunDown(steps * step, "empty", frost, 0.0, tuple(points))


class _Drawn:
    """The liquid of run_down step by step, whatever its regulator needs; a step is taken when it is first asked for."""

    def __init__(self, vessel, liquid_kg, liquid, air_temp_K, flow_kg_s, steps):
        self.vessel, self.air_temp_K, self.flow_kg_s = vessel, air_temp_K, flow_kg_s
        self.step_s = liquid_kg / flow_kg_s / steps
        self.states = [(air_temp_K, liquid_kg, liquid)]

    def after(self, steps):
        """(temperature [K], mass [kg], what it is made of) after so many steps."""
        while len(self.states) <= steps:
            self._step()
        return self.states[steps]

    def _step(self):
        vessel, flow, step, (temp, mass, liquid) = self.vessel, self.flow_kg_s, self.step_s, self.states[-1]
        middle = mass - flow * step / 2
        conductance = wall_conductance_W_K(vessel, middle, blend_density_kg_m3(liquid, temp))
        store = middle * blend_heat_capacity_J_kgK(liquid, temp) + vessel.steel_mass_kg * STEEL_HEAT_CAPACITY_J_KGK
        settled = self.air_temp_K - flow * blend_latent_heat_J_kg(liquid, temp) / conductance
        new = settled + (temp - settled) * exp(-conductance * step / store)
        left = max(self.states[0][1] - flow * step * len(self.states), 0.0)
        heavier = boiled_down(liquid, temp, left / mass) if left > 0 else liquid
        self.states.append((new, left, heavier))


# Runs of which only the regulators differ share their steps.
_drawn = lru_cache(maxsize=128)(_Drawn)
