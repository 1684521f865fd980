"""Pressure, temperature and density of the ambient air, at an altitude or as measured."""

from ..constants import AIR_MOLAR_MASS_KG_MOL, ATM_PA, GRAVITY_M_S2
from ..errors import require
from .thermo import gas_density_kg_m3

# US Standard Atmosphere 1976, layer 0 (up to 11 km geopotential).
SEA_LEVEL_TEMP_K = 288.15
LAPSE_RATE_K_M = 0.0065
EARTH_RADIUS_M = 6356766.0
# The standard keeps its own gas constant of 1962; with the SI value the pressure at 3 km would move by 2 parts in 1e5.
STANDARD_GAS_CONSTANT_J_MOLK = 8.31432
ALTITUDE_MIN_M, ALTITUDE_MAX_M = -500.0, 11000.0


def standard_temp_K(altitude_m: float) -> float:
    """Air temperature of the standard atmosphere at a height above sea level.

        T = 288.15 - 0.0065 H,   H = r z / (r + z)

    Arguments:
        altitude_m   z, geometric height above sea level   [m]   -500 to 11000
    Returns:
        T   [K]
    Source:
        US Standard Atmosphere 1976, NOAA-S/T 76-1562 (published)
    Checked by:
        tests/test_atmosphere.py against fluids.atmosphere.ATMOSPHERE_1976
    """
    require(
        ALTITUDE_MIN_M <= altitude_m <= ALTITUDE_MAX_M,
        "altitude",
        f"{altitude_m:g} m",
        "must be within -500 to 11000 m",
        f"{min(max(altitude_m, ALTITUDE_MIN_M), ALTITUDE_MAX_M):g} m",
    )
    geopotential_m = EARTH_RADIUS_M * altitude_m / (EARTH_RADIUS_M + altitude_m)
    return SEA_LEVEL_TEMP_K - LAPSE_RATE_K_M * geopotential_m


def pressure_at_altitude_Pa(altitude_m: float) -> float:
    """Air pressure of the standard atmosphere at a height above sea level.

        p = 101325 (T / 288.15)^(g M / (R 0.0065))

    Arguments:
        altitude_m   geometric height above sea level   [m]   -500 to 11000
    Returns:
        p, absolute   [Pa]
    Source:
        US Standard Atmosphere 1976, NOAA-S/T 76-1562 (published)
    Checked by:
        tests/test_atmosphere.py against fluids.atmosphere.ATMOSPHERE_1976
    """
    exponent = GRAVITY_M_S2 * AIR_MOLAR_MASS_KG_MOL / (STANDARD_GAS_CONSTANT_J_MOLK * LAPSE_RATE_K_M)
    return ATM_PA * (standard_temp_K(altitude_m) / SEA_LEVEL_TEMP_K) ** exponent


def air_density_kg_m3(temp_K: float, pressure_Pa: float) -> float:
    """Density of dry air.

        rho = p M / (R T)

    Arguments:
        temp_K        T             [K]    above 0
        pressure_Pa   p, absolute   [Pa]   above 0
    Returns:
        rho   [kg/m3]
    Assumes:
        ideal gas, dry (moist air at 30 degC is up to 2 % lighter)
    Source:
        ideal gas law; molar mass of US Standard Atmosphere 1976 (published)
    Checked by:
        tests/test_atmosphere.py against fluids.atmosphere.ATMOSPHERE_1976
    """
    require(temp_K > 0, "temp_K", f"{temp_K:g} K", "must be above 0 K")
    require(pressure_Pa > 0, "pressure_Pa", f"{pressure_Pa:g} Pa", "must be above 0 Pa")
    return gas_density_kg_m3(AIR_MOLAR_MASS_KG_MOL, temp_K, pressure_Pa)
