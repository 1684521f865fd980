"""Materials of constant or straight-line conductivity and simple walls, for the closed forms of the wall tests."""

from math import pi

from burnercalc.physics.chamber_walls import Wall, flat_wall  # noqa: F401, for the tests that take it from here
from burnercalc.physics.linings import TEMP_MAX_K, TEMP_MIN_K, Material


def plain_material(*, k_W_mK, k_end_W_mK=None, density_kg_m3=2000.0, heat_capacity_J_kgK=1000.0):
    """Conductivity from k_W_mK at the cold to k_end_W_mK at the hot end of the table, by a straight line."""
    end, span = k_W_mK if k_end_W_mK is None else k_end_W_mK, TEMP_MAX_K - TEMP_MIN_K
    return Material(
        "plain",
        "plain",
        "cast",
        density_kg_m3,
        TEMP_MAX_K,
        TEMP_MAX_K,
        "",
        "",
        (TEMP_MIN_K, TEMP_MAX_K),
        (k_W_mK, end),
        (heat_capacity_J_kgK,) * 2,
        (0.0, 0.5 * (k_W_mK + end) * span),
        (0.0, heat_capacity_J_kgK * span),
    )


def cylinder_wall(*, radius_m, length_m):
    """The side of a horizontal cylinder with no ends; radius_m is that of the hot face [m]."""
    return Wall(
        0.0,
        0.0,
        0,
        radius_m,
        length_m,
        lambda thickness_m: (("cylinder", 2 * (radius_m + thickness_m), 2 * pi * (radius_m + thickness_m) * length_m),),
        lambda depth_m: cylinder_wall(radius_m=radius_m + depth_m, length_m=length_m),
    )
