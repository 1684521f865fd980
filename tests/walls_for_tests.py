"""Materials of constant or straight-line conductivity, for the closed forms of the wall tests."""

from burnercalc.physics.linings import TEMP_MAX_K, TEMP_MIN_K, Material


def plain_material(*, k_W_mK, k_end_W_mK=None, density_kg_m3=2000.0, heat_capacity_J_kgK=1000.0):
    """Conductivity from k_W_mK at the cold to k_end_W_mK at the hot end of the table, by a straight line."""
    end, span = k_W_mK if k_end_W_mK is None else k_end_W_mK, TEMP_MAX_K - TEMP_MIN_K
    return Material(
        "plain",
        "plain",
        density_kg_m3,
        TEMP_MAX_K,
        "",
        "",
        "",
        (TEMP_MIN_K, TEMP_MAX_K),
        (k_W_mK, end),
        (heat_capacity_J_kgK,) * 2,
        (0.0, 0.5 * (k_W_mK + end) * span),
        (0.0, heat_capacity_J_kgK * span),
    )
