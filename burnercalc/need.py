"""What the chamber of a design asks of its fire, from the settings alone: shared by the rules and by the chapters.

`get` is a function key -> SI value of a setting: `design.value`, or `values.__getitem__` of a plain dict.
"""

from .physics import atmosphere, chamber, combustion, fuels, shapes
from .physics.equilibrium import EquilibriumError

# A flame that leaves less than this share of its gross heat in the chamber cannot be asked to hold it (chamber.firing).
LEAST_AVAILABLE = 0.01


def fuel(get):
    """Composition of the fuel: the blend when there is one, else what stands behind the name."""
    return get("fuel_blend") or fuels.fuel_composition(get("fuel"))


def ambient_pressure_Pa(get):
    return atmosphere.pressure_at_altitude_Pa(get("altitude"))


def heat_split(get, equivalence_ratio=None, chamber_temp_K=None):
    """HeatSplit at the chamber temperature, gas and air from the shop; None when the flame has no solution."""
    shop_K = get("ambient_temperature")
    try:
        return combustion.heat_split(
            fuel(get),
            equivalence_ratio or get("equivalence_ratio"),
            chamber_temp_K or get("chamber_temperature"),
            shop_K,
            shop_K,
            ambient_pressure_Pa(get),
        )
    except EquilibriumError:
        return None


def wall(get):
    """shapes.Wall of the chamber. Raises InputError for an opening that does not fit."""
    if get("chamber_shape") == "box":
        return shapes.box_chamber(
            length_m=get("chamber_length"),
            width_m=get("chamber_width"),
            height_m=get("chamber_height"),
            opening_area_m2=get("opening_area"),
        )
    return shapes.cylinder_chamber(
        diameter_m=get("chamber_diameter"), length_m=get("chamber_length"), opening_area_m2=get("opening_area")
    )


def chamber_heat(get):
    """ChamberHeat of the chamber as set. Raises InputErrors for what the rules refuse."""
    box = get("chamber_shape") == "box"
    return chamber.chamber_heat(
        shape=get("chamber_shape"),
        length_m=get("chamber_length"),
        width_m=get("chamber_width") if box else None,
        height_m=get("chamber_height") if box else None,
        diameter_m=None if box else get("chamber_diameter"),
        lining=get("lining"),
        opening_area_m2=get("opening_area"),
        opening_depth_m=get("opening_depth"),
        chamber_temp_K=get("chamber_temperature"),
        work_metal=get("work_metal"),
        work_rate_kg_s=get("work_rate"),
        work_temp_K=get("work_temperature"),
        heat_up_time_s=get("heat_up_time"),
        ambient_temp_K=get("ambient_temperature"),
        ambient_pressure_Pa=ambient_pressure_Pa(get),
    )


def firing(get, equivalence_ratio=None):
    """Firing of the chamber as set; None when the flame leaves (nearly) nothing at the chamber temperature."""
    split = heat_split(get, equivalence_ratio)
    if split is None or not LEAST_AVAILABLE < split.available:
        return None
    return chamber.firing(chamber_heat(get), split.available)


def rate_W(get):
    """Gross firing rate of one burner: as set, or its share of what the chamber needs; None when that cannot be."""
    if get("firing_rate") != "auto":
        return get("firing_rate")
    found = firing(get)
    return found and found.firing_rate_needed_W / get("burner_count")
