"""The chamber: where its heat goes at the set temperature, whatever burns in it."""

from dataclasses import dataclass
from functools import lru_cache

from ..catalogue.sentences import Said, said
from ..physics import chamber as physics
from ..physics import chamber_walls, linings
from ..physics.chamber import ChamberHeat
from ..physics.metals import melt_state, metal_heat_J_kg
from .shop import Shop


@dataclass(frozen=True)
class Chamber:
    """`heat`: all that the chamber asks for, with its wall and heat-up; the rest are its figures."""

    heat: ChamberHeat
    walls: chamber_walls.Wall
    volume_m3: float
    wall_loss_W: float
    opening_loss_W: float
    work_heat_W: float
    heat_J_kg: float  # of the work, from the shop's temperature to its own
    work_state: Said  # solid, melting or liquid
    stored_heat_J: float
    shell_temp_K: float
    layer_temps_K: tuple[float, ...]  # hot face, between the layers, shell
    layer_limits_K: tuple[float, ...]  # in continuous use
    layer_classes_K: tuple[float, ...]


@lru_cache(maxsize=64)
def walls(
    chamber_shape: str,
    chamber_length: float,
    chamber_width: float,
    chamber_height: float,
    chamber_diameter: float,
    opening_area: float,
) -> chamber_walls.Wall:
    """The walls alone. Raises InputError for an opening that does not fit."""
    if chamber_shape == "box":
        return chamber_walls.box_chamber(
            length_m=chamber_length, width_m=chamber_width, height_m=chamber_height, opening_area_m2=opening_area
        )
    return chamber_walls.cylinder_chamber(
        diameter_m=chamber_diameter, length_m=chamber_length, opening_area_m2=opening_area
    )


def chamber(
    chamber_shape: str,
    chamber_length: float,
    chamber_width: float,
    chamber_height: float,
    chamber_diameter: float,
    lining: tuple[tuple[str, float], ...],
    opening_area: float,
    opening_depth: float,
    chamber_temperature: float,
    work_metal: str,
    work_rate: float,
    work_temperature: float,
    heat_up_time: float,
    shop: Shop,
) -> Chamber:
    """Raises InputErrors for what the rules refuse."""
    box = chamber_shape == "box"
    heat = physics.chamber_heat(
        shape=chamber_shape,
        length_m=chamber_length,
        width_m=chamber_width if box else None,
        height_m=chamber_height if box else None,
        diameter_m=None if box else chamber_diameter,
        lining=lining,
        opening_area_m2=opening_area,
        opening_depth_m=opening_depth,
        chamber_temp_K=chamber_temperature,
        work_metal=work_metal,
        work_rate_kg_s=work_rate,
        work_temp_K=work_temperature,
        heat_up_time_s=heat_up_time,
        ambient_temp_K=shop.temp_K,
        ambient_pressure_Pa=shop.pressure_Pa,
    )
    return Chamber(
        heat=heat,
        walls=walls(chamber_shape, chamber_length, chamber_width, chamber_height, chamber_diameter, opening_area),
        volume_m3=heat.volume_m3,
        wall_loss_W=heat.wall_loss_W,
        opening_loss_W=heat.opening_loss_W,
        work_heat_W=heat.work_heat_W,
        heat_J_kg=metal_heat_J_kg(work_metal, shop.temp_K, work_temperature),
        work_state=said(melt_state(work_metal, work_temperature)),
        stored_heat_J=heat.stored_heat_J,
        shell_temp_K=heat.wall.shell_temp_K,
        layer_temps_K=tuple(heat.wall.temps_K),
        layer_limits_K=tuple(linings.material(key).limit_K for key, _ in lining),
        layer_classes_K=tuple(linings.material(key).class_K for key, _ in lining),
    )
