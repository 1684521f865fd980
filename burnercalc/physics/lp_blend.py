"""Blends of LP gases in a cylinder: what boils off is lighter than the liquid, and what stays gets heavier.

A liquid is ((species, mole fraction), ...) of C3H8, C4H10, iC4H10 and C3H6; a pure gas is a blend of one.
"""

from ..errors import require
from .lp_liquid import (
    latent_heat_J_kg,
    liquid_density_kg_m3,
    liquid_heat_capacity_J_kgK,
    saturation_pressure_Pa,
    saturation_temp_K,
)
from .thermo import fractions, species_of

TABLE_K = (200.0, 340.0)  # that of data/lp_saturation.csv
ETHANE = (184.57, 101325.0), (305.32, 4.872e6)  # its boiling and its critical point [K, Pa], by CoolProp


def mass_shares(composition):
    """Share of each species in the mass of a blend, ((species, share), ...) [-]."""
    if len(composition) == 1:
        return ((composition[0][0], 1.0),)
    parts = tuple((name, x * species_of(name).molar_mass_kg_mol) for name, x in composition)
    total = sum(part for _, part in parts)
    return tuple((name, part / total) for name, part in parts)


def bubble_pressure_Pa(liquid, temp_K):
    """Absolute pressure over a boiling blend, by Raoult's law.

        p = sum(x_i p_i(T))

    Arguments:
        liquid       ((species, mole fraction), ...)   [-]
        temp_K       of the liquid                     [K]    200 to 340
    Returns:
        float        absolute                          [Pa]
    Raises:
        InputError   outside the saturation table
    Assumes:
        ideal liquid and vapour: 2 % high for propane and butane at 255 K, 4 % at 310 K, its vapour 0.01 to 0.05 richer
        in propane than real gas
    Source:
        Raoult's law; data/lp_saturation.csv (published)
    Checked by:
        tests/test_lp_blend.py: CoolProp's mixture
    """
    return sum(x * saturation_pressure_Pa(name, temp_K) for name, x in liquid)


def bubble_temp_K(liquid, pressure_Pa):
    """Temperature at which a blend begins to boil at an absolute pressure, the inverse of bubble_pressure_Pa [K]."""
    if len(liquid) == 1:
        return saturation_temp_K(liquid[0][0], pressure_Pa)
    low, high = (bubble_pressure_Pa(liquid, temp) for temp in TABLE_K)
    require(low <= pressure_Pa <= high, "pressure_Pa", pressure_Pa, f"must be within {low:g} to {high:g}")
    cold, warm = TABLE_K
    for _ in range(50):
        middle = (cold + warm) / 2
        cold, warm = (middle, warm) if bubble_pressure_Pa(liquid, middle) < pressure_Pa else (cold, middle)
    return (cold + warm) / 2


def vapour(liquid, temp_K):
    """Mole fractions of what boils off a blend, of ethane dissolved in it too.

        y_i = x_i p_i(T) / p;  ethane: ln p a straight line in 1/T through its boiling and its critical point

    Arguments:
        liquid    ((species, mole fraction), ...)              [-]
        temp_K    of the liquid                                [K]    200 to 340
    Returns:
        tuple     of (species, mole fraction), sum 1           [-]
    Raises:
        InputError   outside the saturation table
    Assumes:
        as bubble_pressure_Pa; of 2 to 6 % of ethane in propane it gives 0.02 to 0.07 more in the vapour than real gas,
        so that the first gas comes out leaner
    Source:
        Raoult's and Dalton's laws; boiling and critical point of ethane by CoolProp (published)
    Checked by:
        tests/test_lp_blend.py: CoolProp's mixture
    """
    if len(liquid) == 1:
        return ((liquid[0][0], 1.0),)

    def pressure_Pa(name):
        if name != "C2H6":
            return saturation_pressure_Pa(name, temp_K)
        (cold_K, low_Pa), (warm_K, high_Pa) = ETHANE
        return low_Pa * (high_Pa / low_Pa) ** ((1 / cold_K - 1 / temp_K) / (1 / cold_K - 1 / warm_K))

    return fractions(tuple((name, x * pressure_Pa(name)) for name, x in liquid))


def boiled_down(liquid, temp_K, left_share):
    """What a blend has become when only a share of its mass is left, vapour drawn off as it boils.

        m_i = m_i0 s^(a_i),  a_i = p_i/p_heaviest,  s such that sum(m_i) = left

    Arguments:
        liquid       ((species, mole fraction), ...)   [-]
        temp_K       at which it boils                 [K]   200 to 340
        left_share   by mass                           [-]   above 0, to 1
    Returns:
        tuple        of (species, mole fraction)       [-]
    Raises:
        InputError   a value outside its limit
    Assumes:
        one temperature; the vapour is always that of the liquid as it is
    Source:
        Rayleigh's law of simple distillation (published)
    Checked by:
        tests/test_lp_blend.py: small steps of vapour taken off
    """
    require(0 < left_share <= 1, "left_share", left_share, "must be above 0 and at most 1")
    if len(liquid) == 1 or left_share == 1:
        return liquid
    pressures = [saturation_pressure_Pa(name, temp_K) for name, _ in liquid]
    powers = [pressure / min(pressures) for pressure in pressures]
    masses = [share for _, share in mass_shares(liquid)]
    s = 1.0
    for _ in range(60):  # Newton's steps from the right on a curve that bends upwards never overshoot
        parts = [mass * s**power for mass, power in zip(masses, powers)]
        excess = sum(parts) - left_share
        if excess <= 1e-12 * left_share:
            break
        s -= excess * s / sum(part * power for part, power in zip(parts, powers))
    moles = tuple((name, x * s ** (power - 1)) for (name, x), power in zip(liquid, powers))
    return fractions(moles)


def blend_latent_heat_J_kg(liquid, temp_K):
    """Heat that takes one kg of vapour off a blend, by the mass shares of what boils off [J/kg]."""
    return sum(share * latent_heat_J_kg(name, temp_K) for name, share in mass_shares(vapour(liquid, temp_K)))


def blend_density_kg_m3(liquid, temp_K):
    """Density of a boiling blend, volumes of its parts added [kg/m3]."""
    return 1 / sum(share / liquid_density_kg_m3(name, temp_K) for name, share in mass_shares(liquid))


def blend_heat_capacity_J_kgK(liquid, temp_K):
    """Heat capacity of a boiling blend, by mass shares [J/kg/K]."""
    return sum(share * liquid_heat_capacity_J_kgK(name, temp_K) for name, share in mass_shares(liquid))
