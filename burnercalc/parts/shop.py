"""The shop: the air that the blower takes in."""

from dataclasses import dataclass

from ..constants import STANDARD_PRESSURE_PA, STANDARD_TEMP_K
from ..physics import atmosphere

CORRECTS_OFF = 0.01  # from which a gas meter that corrects for heat by itself is told apart; common practice


@dataclass(frozen=True)
class Shop:
    """Air of the shop. `swell`: volume there over volume at 15 degC and 101 325 Pa."""

    temp_K: float
    pressure_Pa: float
    air_density_kg_m3: float
    swell: float

    @property
    def warmer(self) -> float:
        """Volume of gas as warm as the shop over what a meter shows that corrects for heat by itself."""
        return self.temp_K / STANDARD_TEMP_K

    @property
    def corrects(self) -> bool:
        """Whether such a meter shows something else."""
        return abs(self.warmer - 1) >= CORRECTS_OFF


def shop(ambient_temperature: float, altitude: float) -> Shop:
    pressure_Pa = atmosphere.pressure_at_altitude_Pa(altitude)
    return Shop(
        temp_K=ambient_temperature,
        pressure_Pa=pressure_Pa,
        air_density_kg_m3=atmosphere.air_density_kg_m3(ambient_temperature, pressure_Pa),
        swell=STANDARD_PRESSURE_PA / pressure_Pa * ambient_temperature / STANDARD_TEMP_K,
    )
