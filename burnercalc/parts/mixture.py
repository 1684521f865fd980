"""Gas and air mixed as set: how much air, what atmosphere it makes, its properties and burning velocity in the shop."""

from dataclasses import dataclass

from ..catalogue.sentences import Said, said
from ..physics import combustion
from ..physics.band import Band
from ..physics.burning_velocity import burning_velocity_m_s
from ..physics.mixture import Mixture as Properties
from ..physics.mixture import mixture_properties
from .gas import Gas
from .shop import Shop


@dataclass(frozen=True)
class Mixture:
    """`cold`: properties of the mixture as it comes from the shop."""

    equivalence_ratio: float
    air_to_gas_volume: float
    air_to_gas_mass: float
    excess_air: float
    atmosphere: Said  # oxidising, neutral or reducing
    cold: Properties
    burning_velocity_m_s: Band


def mixture(gas: Gas, shop: Shop, equivalence_ratio: float) -> Mixture:
    reactants = combustion.reactants_mol(gas.composition, equivalence_ratio)
    return Mixture(
        equivalence_ratio=equivalence_ratio,
        air_to_gas_volume=combustion.air_fuel_ratio_volume(gas.composition, equivalence_ratio),
        air_to_gas_mass=combustion.air_fuel_ratio_mass(gas.composition, equivalence_ratio),
        excess_air=combustion.excess_air_fraction(equivalence_ratio),
        atmosphere=said(combustion.atmosphere(equivalence_ratio)),
        cold=mixture_properties(reactants, shop.temp_K, shop.pressure_Pa),
        burning_velocity_m_s=burning_velocity_m_s(gas.composition, equivalence_ratio, shop.temp_K, shop.pressure_Pa),
    )
