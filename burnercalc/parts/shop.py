"""The shop: the air that the blower takes in."""

from dataclasses import dataclass

from ..constants import STANDARD_PRESSURE_PA, STANDARD_TEMP_K
from ..physics import atmosphere


@dataclass(frozen=True)
class Shop:
    """Air of the shop. `swell`: volume there over volume at 15 degC and 101 325 Pa."""

    temp_K: float
    pressure_Pa: float
    air_density_kg_m3: float
    swell: float


def shop(ambient_temperature: float, altitude: float) -> Shop:
    pressure_Pa = atmosphere.pressure_at_altitude_Pa(altitude)
    return Shop(
        temp_K=ambient_temperature,
        pressure_Pa=pressure_Pa,
        air_density_kg_m3=atmosphere.air_density_kg_m3(ambient_temperature, pressure_Pa),
        swell=STANDARD_PRESSURE_PA / pressure_Pa * ambient_temperature / STANDARD_TEMP_K,
    )
