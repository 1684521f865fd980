"""Heat that leaves a warm outside surface to still air and to its surroundings."""

from ..constants import AIR_MOLAR_MASS_KG_MOL, ATM_PA, GRAVITY_M_S2, STEFAN_BOLTZMANN_W_M2K4
from ..errors import require
from .thermo import gas_density_kg_m3


def air_viscosity_Pa_s(temp_K):
    """Dynamic viscosity of air.

        mu = 1.458e-6 * T**1.5 / (T + 110.4)

    Arguments: temp_K [K], 200 to 1500
    Source: US Standard Atmosphere 1976, equation 51 (Sutherland). Published.
    Checked by: tests/test_outside.py (CoolProp: 2 % to 600 K, 5.5 % low at 1200 K)
    """
    return 1.458e-6 * temp_K**1.5 / (temp_K + 110.4)


def air_conductivity_W_mK(temp_K):
    """Conductivity of air.

        k = 2.64638e-3 * T**1.5 / (T + 245.4 * 10**(-12/T))

    Arguments: temp_K [K], 200 to 1500
    Source: US Standard Atmosphere 1976, equation 53. Published.
    Checked by: tests/test_outside.py (CoolProp, 2 % to 1200 K)
    """
    return 2.64638e-3 * temp_K**1.5 / (temp_K + 245.4 * 10 ** (-12 / temp_K))


def air_heat_capacity_J_kgK(temp_K):
    """Heat capacity of air at constant pressure.

        cp = 1034.1 - 0.28489 T + 7.8168e-4 T**2 - 4.9708e-7 T**3 + 1.0770e-10 T**4

    Arguments: temp_K [K], 250 to 1500
    Source: polynomial recalled from heat-transfer texts (attributed to Irvine and Liley 1984). Memory.
    Checked by: tests/test_outside.py (CoolProp, 1 % to 1200 K)
    """
    return 1034.09 + temp_K * (-0.284887 + temp_K * (7.816818e-4 + temp_K * (-4.970786e-7 + temp_K * 1.077024e-10)))


def _film(surface_temp_K, ambient_temp_K, pressure_Pa):
    """Rayleigh number on 1 m, Prandtl number and conductivity [W/m/K] of air at the film temperature."""
    film = 0.5 * (surface_temp_K + ambient_temp_K)
    mu, k, cp = air_viscosity_Pa_s(film), air_conductivity_W_mK(film), air_heat_capacity_J_kgK(film)
    rho = gas_density_kg_m3(AIR_MOLAR_MASS_KG_MOL, film, pressure_Pa)
    rise = abs(surface_temp_K - ambient_temp_K)
    return GRAVITY_M_S2 * rise / film * rho * rho * cp / (mu * k), cp * mu / k, k


def nusselt_vertical_plate(rayleigh, prandtl):
    """Natural convection from a vertical plate, on its height.

        Nu = (0.825 + 0.387 Ra**(1/6) / (1 + (0.492/Pr)**(9/16))**(8/27))**2

    Source: Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975) 1323, all Ra. Published.
    Checked by: tests/test_outside.py (ht.conv_free_immersed.Nu_vertical_plate_Churchill)
    """
    return (0.825 + 0.387 * rayleigh ** (1 / 6) / (1 + (0.492 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 2


def nusselt_horizontal_cylinder(rayleigh, prandtl):
    """Natural convection from a horizontal cylinder, on its diameter.

        Nu = (0.60 + 0.387 Ra**(1/6) / (1 + (0.559/Pr)**(9/16))**(8/27))**2

    Source: Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975) 1049, Ra up to 1e12. Published.
    Checked by: tests/test_outside.py (ht.conv_free_immersed.Nu_horizontal_cylinder_Churchill_Chu)
    """
    return (0.60 + 0.387 * rayleigh ** (1 / 6) / (1 + (0.559 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 2


def nusselt_plate_up(rayleigh):
    """Natural convection from a hot plate that faces up, on area over perimeter.

        Nu = larger of 0.54 Ra**(1/4) and 0.15 Ra**(1/3)

    Assumes: the larger of the two laws, so that there is no step; the source changes over at Ra = 1e7, where they
        differ by 6 %
    Source: McAdams, Heat Transmission, 3rd ed., 1954, with the length of Goldstein, Sparrow and Jones 1973. Published.
    Checked by: tests/test_outside.py (ht.conv_free_immersed.Nu_horizontal_plate_McAdams)
    """
    return max(0.54 * rayleigh**0.25, 0.15 * rayleigh ** (1 / 3))


def nusselt_plate_down(rayleigh):
    """Natural convection from a hot plate that faces down, on area over perimeter.

        Nu = 0.27 Ra**(1/4)

    Source: McAdams, Heat Transmission, 3rd ed., 1954. Published.
    Checked by: tests/test_outside.py (ht.conv_free_immersed.Nu_horizontal_plate_McAdams)
    """
    return 0.27 * rayleigh**0.25


def _coefficient(facing, size_m, film):
    require(size_m > 0, "size_m", size_m, "must be above 0")
    rayleigh, prandtl, k = film
    rayleigh *= size_m**3
    if facing == "vertical":
        nusselt = nusselt_vertical_plate(rayleigh, prandtl)
    elif facing == "cylinder":
        nusselt = nusselt_horizontal_cylinder(rayleigh, prandtl)
    elif facing == "up":
        nusselt = nusselt_plate_up(rayleigh)
    else:
        require(facing == "down", "facing", facing, "must be vertical, up, down or cylinder", "vertical")
        nusselt = nusselt_plate_down(rayleigh)
    return nusselt * k / size_m


def radiation_W_m2(*, emissivity, hot_temp_K, cold_temp_K):
    """Heat that a small surface radiates to wide surroundings.

        q = e sigma (T1**4 - T2**4)

    Arguments:
        emissivity    e               [-]   0 to 1
        hot_temp_K    T1              [K]
        cold_temp_K   T2              [K]
    Returns: float [W/m2]
    Checked by: tests/test_outside.py (ht.radiation.q_rad(0.9, 1500, 300) = 257 943 W/m2)
    """
    return emissivity * STEFAN_BOLTZMANN_W_M2K4 * (hot_temp_K**4 - cold_temp_K**4)


def faces_loss_W(faces, *, emissivity, surface_temp_K, ambient_temp_K, pressure_Pa=ATM_PA):
    """Convection and radiation of outside faces of one temperature together, each (facing, size_m, area_m2) [W]."""
    film = _film(surface_temp_K, ambient_temp_K, pressure_Pa)
    rise = surface_temp_K - ambient_temp_K
    radiated = radiation_W_m2(emissivity=emissivity, hot_temp_K=surface_temp_K, cold_temp_K=ambient_temp_K)
    return sum(area * (_coefficient(facing, size, film) * rise + radiated) for facing, size, area in faces)


# Bare metal, smooth: temperature at which a touch of the given time burns skin. Lower bound where the standard gives
# a band. EN ISO 13732-1:2008 (recalled, 1 s: 65 to 70 degC; 10 s: 55 degC; 1 min: 51 degC). Memory.
BURN_THRESHOLD_BARE_METAL_K = {1.0: 338.15, 10.0: 328.15, 60.0: 324.15}
