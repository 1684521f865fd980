"""The mixture of gas and air, its flame, its flue gas, and the share of the heat that stays in the chamber.

A fuel is a composition (tuple of (species, mole fraction)) from fuels.fuel_composition. Firing rate is gross: gas flow
times gross heating value. Volume flows are of ideal gases at 15 degC and 101 325 Pa.
"""
from functools import lru_cache

from ..errors import require
from .fuels import (AIR, STANDARD_MOLAR_VOLUME_M3_MOL, gross_heating_value_J_mol, molar_mass_kg_mol,
                    stoichiometric_air_kg_kg, stoichiometric_air_mol_mol)
from .thermo import mixture_mass_kg


def _require_ratio(equivalence_ratio):
    require(0 < equivalence_ratio < float("inf"), "equivalence_ratio", equivalence_ratio, "must be above 0", "1")


def air_fuel_ratio_volume(fuel, equivalence_ratio, air=AIR):
    """Air per fuel by volume (or mole).

        AFR = L / phi,   L = stoichiometric air

    Arguments:
        fuel                mole fractions of the fuel      [-]
        equivalence_ratio   phi, above 1 is rich            [-]   above 0
        air                 mole fractions of the air       [-]   default 20.95 % O2, the rest N2
    Returns:
        float               air per fuel                    [m3/m3]
    Source:
        definition of the equivalence ratio
    Checked by:
        tests/reference/fuels.csv
    """
    _require_ratio(equivalence_ratio)
    return stoichiometric_air_mol_mol(fuel, air) / equivalence_ratio


def air_fuel_ratio_mass(fuel, equivalence_ratio, air=AIR):
    """Air per fuel by mass, the volume ratio times M(air)/M(fuel) [kg/kg]; arguments as air_fuel_ratio_volume."""
    _require_ratio(equivalence_ratio)
    return stoichiometric_air_kg_kg(fuel, air) / equivalence_ratio


def excess_air_fraction(equivalence_ratio):
    """Air beyond the stoichiometric need, 1/phi - 1 [-]; negative when rich."""
    _require_ratio(equivalence_ratio)
    return 1 / equivalence_ratio - 1


def _merged(*compositions):
    """Sum of compositions, each species once, in order of first appearance."""
    totals = {}
    for composition in compositions:
        for name, amount in composition:
            totals[name] = totals.get(name, 0.0) + amount
    return tuple(totals.items())


@lru_cache(maxsize=1024)
def reactants_mol(fuel, equivalence_ratio, air=AIR):
    """Gas and air together, per mole of fuel: tuple of (species, mol)."""
    air_mol = air_fuel_ratio_volume(fuel, equivalence_ratio, air)
    return _merged(fuel, tuple((name, x * air_mol) for name, x in air))


def mixture_molar_mass_kg_mol(fuel, equivalence_ratio, air=AIR):
    """Molar mass of the unburned mixture of gas and air [kg/mol]."""
    reactants = reactants_mol(fuel, equivalence_ratio, air)
    return mixture_mass_kg(reactants) / sum(amount for _, amount in reactants)


def gas_flow_mol_s(fuel, firing_rate_W):
    """Gas flow for a gross firing rate, Q / HHV [mol/s]."""
    require(0 < firing_rate_W < float("inf"), "firing_rate", firing_rate_W, "must be above 0 W")
    return firing_rate_W / gross_heating_value_J_mol(fuel)


def gas_flow_m3_s(fuel, firing_rate_W):
    """Gas flow for a gross firing rate, Q / HHV * Vm [m3/s at 15 degC, 101 325 Pa]."""
    return gas_flow_mol_s(fuel, firing_rate_W) * STANDARD_MOLAR_VOLUME_M3_MOL


def gas_flow_kg_s(fuel, firing_rate_W):
    """Gas flow for a gross firing rate, Q / HHV * M [kg/s]."""
    return gas_flow_mol_s(fuel, firing_rate_W) * molar_mass_kg_mol(fuel)


def air_flow_m3_s(fuel, equivalence_ratio, firing_rate_W, air=AIR):
    """Air flow for a gross firing rate, gas flow * AFR [m3/s at 15 degC, 101 325 Pa]."""
    return gas_flow_m3_s(fuel, firing_rate_W) * air_fuel_ratio_volume(fuel, equivalence_ratio, air)


def air_flow_kg_s(fuel, equivalence_ratio, firing_rate_W, air=AIR):
    """Air flow for a gross firing rate, gas flow * AFR by mass [kg/s]."""
    return gas_flow_kg_s(fuel, firing_rate_W) * air_fuel_ratio_mass(fuel, equivalence_ratio, air)


def mixture_flow_m3_s(fuel, equivalence_ratio, firing_rate_W, air=AIR):
    """Flow of gas and air together for a gross firing rate [m3/s at 15 degC, 101 325 Pa]."""
    return gas_flow_m3_s(fuel, firing_rate_W) + air_flow_m3_s(fuel, equivalence_ratio, firing_rate_W, air)


def mixture_flow_kg_s(fuel, equivalence_ratio, firing_rate_W, air=AIR):
    """Flow of gas and air together for a gross firing rate [kg/s]."""
    return gas_flow_kg_s(fuel, firing_rate_W) + air_flow_kg_s(fuel, equivalence_ratio, firing_rate_W, air)
