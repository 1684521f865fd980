"""An aspirated burner for the same chamber, which is compared with the blown ones."""

from dataclasses import dataclass

from ..physics import aspirated as physics
from ..physics import fuels, gas_jet, pipes
from .gas import Gas
from .shop import Shop


@dataclass(frozen=True)
class Aspirated:
    """What its jet makes with the air that it pulls in."""

    equivalence_ratio: float
    rate_W: float


def aspirated(
    aspirated_pressure: float,
    aspirated_jet: float,
    aspirated_throat: str,
    aspirated_inlet_loss: float,
    aspirated_outlet_loss: float,
    jet_discharge_coefficient: float,
    gas: Gas,
    shop: Shop,
) -> Aspirated:
    mix = physics.aspirated_mix(
        gas_gauge_Pa=aspirated_pressure,
        jet_diameter_m=aspirated_jet,
        discharge_coefficient=jet_discharge_coefficient,
        throat_diameter_m=pipes.pipe(aspirated_throat, "aspirated_throat").bore_m,
        stoichiometric_ratio_volume=fuels.stoichiometric_air_mol_mol(gas.composition),
        molar_mass_kg_mol=fuels.molar_mass_kg_mol(gas.composition),
        heat_capacity_ratio=gas_jet.heat_capacity_ratio(gas.composition),
        gas_temp_K=shop.temp_K,
        air_temp_K=shop.temp_K,
        ambient_Pa=shop.pressure_Pa,
        inlet_loss=aspirated_inlet_loss,
        outlet_loss=aspirated_outlet_loss,
    )
    return Aspirated(mix.equivalence_ratio, mix.gas_flow_kg_s * gas.gross_J_kg)
