"""A gas zone as one gray gas, the plainest way to reckon one, for figures of others who took it so."""

from dataclasses import dataclass

from burnercalc.constants import STEFAN_BOLTZMANN_W_M2K4
from burnercalc.physics.gas_emissivity import exchange_cubic, mean_beam_length_m
from burnercalc.physics.gas_zone import WALL_EMISSIVITY, GasZone


def gas_emissivity(*, temp_K, **gas):
    """Emissivity of burned gas: what it exchanges with black walls, read at one temperature."""
    return sum(part * temp_K**n for n, part in enumerate(exchange_cubic(**gas)))


@dataclass(frozen=True)
class OneGray(GasZone):
    """A zone whose gas absorbs all colours alike, and so the radiation of walls no better than it emits."""

    path_m: float

    def exchange_W(self, gas_temp_K, wall_temp_K):
        e = gas_emissivity(
            water_fraction=self.gas.water_fraction,
            carbon_dioxide_fraction=self.gas.carbon_dioxide_fraction,
            temp_K=min(max(gas_temp_K, 600.0), 2400.0),
            path_m=self.path_m,
            pressure_Pa=self.gas.pressure_Pa,
        )
        radiated = STEFAN_BOLTZMANN_W_M2K4 * (gas_temp_K**4 - wall_temp_K**4) / (1 / e + 1 / WALL_EMISSIVITY - 1)
        return self.area_m2 * (radiated + self.film_W_m2K * (gas_temp_K - wall_temp_K))


def as_one_gray(zone, volume_m3):
    return OneGray(
        zone.gas, zone.losses, zone.area_m2, zone.cubic, zone.film_W_m2K, mean_beam_length_m(volume_m3, zone.area_m2)
    )
