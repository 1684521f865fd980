"""Heat that the chamber asks for: walls, opening, work, and the lining that must be heated first."""

from dataclasses import dataclass
from functools import lru_cache
from math import pi

from ..constants import ATM_PA
from ..errors import InputError, InputErrors, require
from .chamber_walls import box_area_m2, box_chamber, cylinder_area_m2, cylinder_chamber
from .heatup import HeatUp, heat_up
from .linings import material
from .metals import metal_heat_J_kg
from .openings import opening_loss_W
from .walls import SteadyWall, steady_wall, still_air

# Gross firing rate per chamber volume of small blown forges and crucible furnaces. Common practice: hobby burners of
# 12 to 25 kW heat 4 to 6 litre, and larger industrial furnaces run at a tenth of that.
FIRING_PER_VOLUME_LOW_W_M3 = 1.0e6
FIRING_PER_VOLUME_HIGH_W_M3 = 8.0e6

# Heat-up faster than this cracks dense lining and is not met by small burners. Common practice.
SHORTEST_HEAT_UP_S = 300.0

# A flame that leaves no more than this share of its gross heat in the chamber cannot be asked to hold it.
LEAST_AVAILABLE = 0.01


@dataclass(frozen=True)
class ChamberHeat:
    """What a chamber needs, all at the walls and the work, before any flue loss.

    Attributes:
        volume_m3        inside                                                       [m3]
        inside_area_m2   all inside walls, opening not taken off                      [m2]
        wall             SteadyWall: loss, shell and interface temperatures
        heat_up          HeatUp over the heat-up time: stored, lost, profile
        heat_up_time_s   [s]
        wall_loss_W      steady, at the hot face                                      [W]
        opening_loss_W   radiation through the opening                                [W]
        work_heat_W      into the work                                                [W]
        heat_up_W        mean over the heat-up time, lining and opening together      [W]
    """

    volume_m3: float
    inside_area_m2: float
    wall: SteadyWall
    heat_up: HeatUp
    heat_up_time_s: float
    wall_loss_W: float
    opening_loss_W: float
    work_heat_W: float
    heat_up_W: float

    @property
    def hold_W(self):
        """Heat that keeps the empty chamber hot [W]."""
        return self.wall_loss_W + self.opening_loss_W

    @property
    def working_W(self):
        """Heat that keeps it hot while work goes through [W]."""
        return self.hold_W + self.work_heat_W

    @property
    def stored_heat_J(self):
        """Heat in the lining at the end of the heat-up [J]."""
        return self.heat_up.stored_J


@lru_cache(maxsize=128)
def chamber_heat(
    *,
    shape,
    length_m,
    width_m=None,
    height_m=None,
    diameter_m=None,
    lining,
    opening_area_m2=0.0,
    opening_depth_m=0.0,
    chamber_temp_K,
    work_metal,
    work_rate_kg_s,
    work_temp_K,
    heat_up_time_s,
    ambient_temp_K,
    shell_emissivity=0.9,
    ambient_pressure_Pa=ATM_PA,
):
    """All the heat that a lined chamber asks for.

    Arguments:
        shape                box (length, width, height) | cylinder (length, diameter), lying; inside sizes
        length_m, width_m, height_m, diameter_m   [m]; those of the other shape are not read
        lining               tuple of (material key, thickness_m) from the hot face out
        opening_area_m2      one opening                          [m2]   0 for none
        opening_depth_m      wall thickness there                 [m]
        chamber_temp_K       hot face and radiation               [K]
        work_metal           key of data/metals.csv
        work_rate_kg_s       metal heated                         [kg/s]  0 or more
        work_temp_K          not above the chamber                [K]
        heat_up_time_s       from cold                            [s]
        ambient_temp_K       air, cold work and cold lining       [K]
        shell_emissivity     0.9 paint or rust, 0.3 bright metal  [-]     0 to 1
        ambient_pressure_Pa  [Pa]
    Returns: ChamberHeat
    Raises: InputErrors with every refusal at once
    Assumes: hot face at chamber temperature; the flame reaches all of it; door closed but for the opening
    Checked by: tests/test_chamber.py (sum of the parts, balance, limits)
    """
    errors = []

    def attempt(f, *args, **kwargs):
        try:
            return f(*args, **kwargs)
        except InputErrors as several:
            errors.extend(several.errors)
        except InputError as error:
            errors.append(error)

    geometry = attempt(_geometry, shape, length_m, width_m, height_m, diameter_m, opening_area_m2)
    layers = attempt(lambda: tuple((material(key), thickness_m) for key, thickness_m in lining))
    attempt(require, 0 <= shell_emissivity <= 1, "shell_emissivity", shell_emissivity, "must be within 0 to 1", "0.9")
    attempt(
        require,
        0 <= work_rate_kg_s < 100,
        "work_rate",
        f"{work_rate_kg_s:g} kg/s",
        "must be 0 or more and below 100 kg/s",
        "0 kg/s",
    )
    attempt(
        require,
        work_temp_K <= chamber_temp_K,
        "work_temperature",
        f"{work_temp_K:g} K",
        "must not be above the chamber temperature",
        f"{chamber_temp_K:g} K",
    )
    per_kg = attempt(metal_heat_J_kg, work_metal, ambient_temp_K, work_temp_K)
    opening = attempt(
        opening_loss_W,
        area_m2=opening_area_m2,
        depth_m=opening_depth_m,
        chamber_temp_K=chamber_temp_K,
        ambient_temp_K=ambient_temp_K,
    )
    if geometry is not None and layers is not None:
        shell = {
            "wall": geometry[0],
            "layers": layers,
            "hot_face_temp_K": chamber_temp_K,
            "ambient_temp_K": ambient_temp_K,
            "film_loss_W": still_air(
                ambient_temp_K=ambient_temp_K, emissivity=shell_emissivity, pressure_Pa=ambient_pressure_Pa
            ),
        }
        steady = attempt(steady_wall, **shell)
        # A refused wall would only be refused once more.
        warm_up = (
            attempt(heat_up, time_s=heat_up_time_s, **shell)
            if steady
            else attempt(
                require,
                0 < heat_up_time_s <= 1e6,
                "heat_up_time",
                f"{heat_up_time_s:g} s",
                "must be above 0 and at most 1e6 s",
                "3600 s",
            )
        )
    if errors:
        raise InputErrors(errors)
    _, volume, area = geometry
    return ChamberHeat(
        volume,
        area,
        steady,
        warm_up,
        heat_up_time_s,
        steady.loss_W,
        opening,
        work_rate_kg_s * per_kg,
        warm_up.absorbed_J / heat_up_time_s + opening,
    )


def _geometry(shape, length_m, width_m, height_m, diameter_m, opening_area_m2):
    """Wall, volume [m3] and inside area [m2] of the chamber."""
    if shape == "box":
        return (
            box_chamber(length_m=length_m, width_m=width_m, height_m=height_m, opening_area_m2=opening_area_m2),
            length_m * width_m * height_m,
            box_area_m2(length_m, width_m, height_m),
        )
    require(shape == "cylinder", "chamber_shape", shape, "must be box or cylinder", "box")
    return (
        cylinder_chamber(diameter_m=diameter_m, length_m=length_m, opening_area_m2=opening_area_m2),
        pi / 4 * diameter_m**2 * length_m,
        cylinder_area_m2(diameter_m, length_m),
    )


def heat_balance(heat, firing_rate_W, available_fraction):
    """Where each watt of `firing_rate_W` goes while the chamber works, as (name, watt) pairs that sum to it.

        flue = firing (1 - available),   spare = firing available - wall - opening - work

    `spare` is heat left over (the burner is larger than needed, or the chamber gets hotter); negative when it falls
    short.
    """
    require(0 <= firing_rate_W < 1e9, "firing_rate", firing_rate_W, "must be 0 or more and below 1e9 W")
    flue = firing_rate_W * (1 - available_fraction)
    spare = firing_rate_W * available_fraction - heat.working_W
    return (
        ("flue", flue),
        ("wall", heat.wall_loss_W),
        ("opening", heat.opening_loss_W),
        ("work", heat.work_heat_W),
        ("spare", spare),
    )
