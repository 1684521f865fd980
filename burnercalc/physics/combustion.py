"""The mixture of gas and air, its flame, its flue gas, and the share of the heat that stays in the chamber.

A fuel is a composition (tuple of (species, mole fraction)) from fuels.fuel_composition. Firing rate is gross: gas flow
times gross heating value. Volume flows are of ideal gases at 15 degC and 101 325 Pa.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import sqrt

from ..constants import COMBUSTION_TEMP_K, STANDARD_PRESSURE_PA
from ..errors import require
from .equilibrium import equilibrium_at_enthalpy, equilibrium_at_temperature
from .fuels import (
    AIR,
    STANDARD_MOLAR_VOLUME_M3_MOL,
    WATER_LATENT_J_MOL,
    gross_heating_value_J_mol,
    molar_mass_kg_mol,
    stoichiometric_air_kg_kg,
    stoichiometric_air_mol_mol,
)
from .thermo import fractions, mixture_atoms_mol, mixture_enthalpy_J, require_range

# Below this temperature the water-gas reaction CO + H2O = CO2 + H2 and the burning of the last CO are too slow to
# follow the cooling gas, so the flue gas keeps the composition it had here (common practice: 1700 to 1800 K).
FREEZE_TEMP_K = 1700.0

# Equivalence ratios this close to 1 count as neutral: about 0.45 % O2 or 0.6 % CO in dry flue gas (common practice).
NEUTRAL_BAND = 0.02

# Range in which flame temperatures are checked against Cantera; outside it they are refused.
EQUIVALENCE_RATIO_RANGE = 0.3, 3.0
INLET_TEMP_RANGE_K = 250.0, 900.0
PRESSURE_RANGE_PA = 0.6e5, 1.3e5


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


def _require_mixture(equivalence_ratio, gas_temp_K, air_temp_K, pressure_Pa):
    require_range("equivalence_ratio", equivalence_ratio, *EQUIVALENCE_RATIO_RANGE)
    require_range("gas_temp_K", gas_temp_K, *INLET_TEMP_RANGE_K)
    require_range("air_temp_K", air_temp_K, *INLET_TEMP_RANGE_K)
    require_range("pressure_Pa", pressure_Pa, *PRESSURE_RANGE_PA)


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


def mixture_flow_m3_s(fuel, equivalence_ratio, firing_rate_W, air=AIR):
    """Flow of gas and air together for a gross firing rate [m3/s at 15 degC, 101 325 Pa]."""
    return gas_flow_m3_s(fuel, firing_rate_W) + air_flow_m3_s(fuel, equivalence_ratio, firing_rate_W, air)


def reactants_enthalpy_J(fuel, equivalence_ratio, gas_temp_K=COMBUSTION_TEMP_K, air_temp_K=COMBUSTION_TEMP_K, air=AIR):
    """Enthalpy of gas and air before they burn, each at its own temperature, per mole of fuel [J/mol]."""
    air_mol = air_fuel_ratio_volume(fuel, equivalence_ratio, air)
    return mixture_enthalpy_J(fuel, gas_temp_K) + air_mol * mixture_enthalpy_J(air, air_temp_K)


@lru_cache(maxsize=1024)
def flame(
    fuel,
    equivalence_ratio,
    gas_temp_K=COMBUSTION_TEMP_K,
    air_temp_K=COMBUSTION_TEMP_K,
    pressure_Pa=STANDARD_PRESSURE_PA,
    air=AIR,
):
    """Burned gas right behind an adiabatic flame, per mole of fuel.

        H(burned, T) = H(gas, T_gas) + H(air, T_air) at equilibrium

    Arguments:
        fuel                mole fractions of the fuel      [-]
        equivalence_ratio   phi, above 1 is rich            [-]   0.3 to 3
        gas_temp_K          gas before mixing               [K]   250 to 900
        air_temp_K          air before mixing               [K]   250 to 900
        pressure_Pa         absolute pressure               [Pa]  0.6e5 to 1.3e5
        air                 mole fractions of the air       [-]   default 20.95 % O2, the rest N2
    Returns:
        Equilibrium         temp_K and amounts_mol per mole of fuel
    Raises:
        InputError          a value outside its limit
        EquilibriumError    no convergence
    Assumes:
        no heat lost, ideal gas, dry air, no soot
    Source:
        Gordon and McBride, NASA RP-1311 part I (1994) (memory)
    Checked by:
        tests/reference/flames.csv, tests/reference/equilibrium.csv
    """
    _require_mixture(equivalence_ratio, gas_temp_K, air_temp_K, pressure_Pa)
    atoms = mixture_atoms_mol(reactants_mol(fuel, equivalence_ratio, air))
    enthalpy_J = reactants_enthalpy_J(fuel, equivalence_ratio, gas_temp_K, air_temp_K, air)
    return equilibrium_at_enthalpy(atoms, enthalpy_J, pressure_Pa)


def flame_temp_K(
    fuel,
    equivalence_ratio,
    gas_temp_K=COMBUSTION_TEMP_K,
    air_temp_K=COMBUSTION_TEMP_K,
    pressure_Pa=STANDARD_PRESSURE_PA,
    air=AIR,
):
    """Adiabatic flame temperature with dissociation [K]; arguments and limits as flame()."""
    return flame(fuel, equivalence_ratio, gas_temp_K, air_temp_K, pressure_Pa, air).temp_K


@dataclass(frozen=True)
class FlueGas:
    """Gas that leaves the chamber: moles per mole of fuel, mole fractions with and without its water."""

    composition_temp_K: float
    pressure_Pa: float
    amounts_mol: tuple
    wet: tuple
    dry: tuple
    co_dry: float
    o2_dry: float
    dew_point_K: float

    @property
    def dry_mol(self):
        """Moles without its water per mole of fuel."""
        return sum(amount for name, amount in self.amounts_mol if name != "H2O")


def dry_fractions(composition):
    """Mole fractions of a composition after its H2O is taken out."""
    return fractions(tuple((name, amount) for name, amount in composition if name != "H2O"))


@lru_cache(maxsize=1024)
def flue_gas(
    fuel,
    equivalence_ratio,
    chamber_temp_K,
    gas_temp_K=COMBUSTION_TEMP_K,
    air_temp_K=COMBUSTION_TEMP_K,
    pressure_Pa=STANDARD_PRESSURE_PA,
    air=AIR,
    freeze_temp_K=FREEZE_TEMP_K,
):
    """Flue gas of a chamber: equilibrium at the chamber temperature, frozen below freeze_temp_K.

        T_composition = max(T_chamber, min(T_freeze, T_flame))

    Arguments:
        fuel                mole fractions of the fuel      [-]
        equivalence_ratio   phi, above 1 is rich            [-]   0.3 to 3
        chamber_temp_K      gas as it leaves the chamber    [K]   250 to 3000
        gas_temp_K          gas before mixing               [K]   250 to 900
        air_temp_K          air before mixing               [K]   250 to 900
        pressure_Pa         absolute pressure               [Pa]  0.6e5 to 1.3e5
        air                 mole fractions of the air       [-]   default 20.95 % O2, the rest N2
        freeze_temp_K       composition stays below it      [K]   700 to 3000, default 1700 (common practice)
    Returns:
        FlueGas             wet and dry mole fractions, dry CO and O2, dew point
    Raises:
        InputError          a value outside its limit
        EquilibriumError    no convergence
    Assumes:
        the flame burns out in the chamber; no air leaks in; no soot
    Source:
        equilibrium as flame(); freezing is common practice
    Checked by:
        tests/reference/flue.csv
    """
    require_range("chamber_temp_K", chamber_temp_K, 250.0, 3000.0)
    require_range("freeze_temp_K", freeze_temp_K, 700.0, 3000.0)
    _require_mixture(equivalence_ratio, gas_temp_K, air_temp_K, pressure_Pa)
    atoms = mixture_atoms_mol(reactants_mol(fuel, equivalence_ratio, air))
    composition_temp_K = max(chamber_temp_K, freeze_temp_K)
    amounts = equilibrium_at_temperature(atoms, composition_temp_K, pressure_Pa).amounts_mol
    if freeze_temp_K > chamber_temp_K:
        inlet_J = reactants_enthalpy_J(fuel, equivalence_ratio, gas_temp_K, air_temp_K, air)
        if mixture_enthalpy_J(amounts, freeze_temp_K) > inlet_J:  # so hot is no flame
            flame_K = flame_temp_K(fuel, equivalence_ratio, gas_temp_K, air_temp_K, pressure_Pa, air)
            composition_temp_K = max(chamber_temp_K, flame_K)
            amounts = equilibrium_at_temperature(atoms, composition_temp_K, pressure_Pa).amounts_mol
    return _flue_gas(amounts, chamber_temp_K, composition_temp_K, pressure_Pa)


def hottest_flue_gas(
    fuel,
    equivalence_ratio,
    gas_temp_K=COMBUSTION_TEMP_K,
    air_temp_K=COMBUSTION_TEMP_K,
    pressure_Pa=STANDARD_PRESSURE_PA,
    air=AIR,
):
    """flue_gas of a chamber that takes no heat: as hot as its flame; arguments and limits as flame()."""
    burned = flame(fuel, equivalence_ratio, gas_temp_K, air_temp_K, pressure_Pa, air)
    return _flue_gas(burned.amounts_mol, burned.temp_K, burned.temp_K, pressure_Pa)


def _flue_gas(amounts, chamber_temp_K, composition_temp_K, pressure_Pa):
    wet, dry = fractions(amounts), dry_fractions(amounts)
    return FlueGas(
        composition_temp_K=composition_temp_K,
        pressure_Pa=pressure_Pa,
        amounts_mol=amounts,
        wet=wet,
        dry=dry,
        co_dry=dict(dry)["CO"],
        o2_dry=dict(dry)["O2"],
        dew_point_K=dew_point_K(dict(wet)["H2O"], pressure_Pa),
    )


def dew_point_K(water_fraction, pressure_Pa=STANDARD_PRESSURE_PA):
    """Temperature at which water starts to condense out of a gas.

        the quadratic of IAPWS-IF97 region 4 in b = (p_water / 1 MPa)**0.25, solved for T

    Arguments:
        water_fraction   mole fraction of H2O       [-]   x p of 611.213 to 22.064e6 Pa
        pressure_Pa      absolute pressure          [Pa]
    Returns:
        float            dew point                  [K]   273.15 to 647.096
    Raises:
        InputError       partial pressure outside the limits
    Assumes:
        no sulphur in the gas (acid would condense earlier)
    Source:
        IAPWS R7-97(2012), eq. 31, coefficients of table 34 (memory, read back by its table 36 and CoolProp)
    Checked by:
        tests/test_combustion.py
    """
    water_Pa = water_fraction * pressure_Pa
    require(
        611.213 <= water_Pa <= 22.064e6,
        "water_fraction",
        water_fraction,
        "must give a water pressure of 611.213 to 22.064e6 Pa",
    )
    b = (water_Pa / 1e6) ** 0.25
    e = b * b - 0.17073846940092e2 * b + 0.14915108613530e2
    f = 0.11670521452767e4 * b * b + 0.12020824702470e5 * b - 0.48232657361591e4
    g = -0.72421316703206e6 * b * b - 0.32325550322333e7 * b + 0.40511340542057e6
    d = 2 * g / (-f - sqrt(f * f - 4 * e * g))
    n9, n10 = -0.23855557567849, 0.65017534844798e3
    return (n10 + d - sqrt((n10 + d) ** 2 - 4 * (n9 + n10 * d))) / 2


def atmosphere(equivalence_ratio, band=NEUTRAL_BAND):
    """What the chamber gas does to hot metal: "oxidising", "neutral" or "reducing".

        neutral when |phi - 1| <= band

    The word tells whether O2 or CO and H2 are left over. Even a reducing flue scales hot steel a little, because it
    still holds CO2 and H2O; and what is reducing is poisonous: it holds percents of CO.

    Arguments:
        equivalence_ratio   phi             [-]   above 0
        band                half width      [-]   default 0.02
    Returns:
        str                 one of the three words
    Source:
        common practice
    Checked by:
        tests/test_combustion.py
    """
    _require_ratio(equivalence_ratio)
    # A millionth of slack, so that 0.98 and 1.02 count as inside the band of 0.02.
    if abs(equivalence_ratio - 1) <= band + 1e-6:
        return "neutral"
    return "oxidising" if equivalence_ratio < 1 else "reducing"


@dataclass(frozen=True)
class HeatSplit:
    """Where one unit of gross heat goes; available + latent + sensible + chemical = 1 + preheat."""

    preheat: float  # brought in by gas and air above 25 degC
    available: float  # left in the chamber
    latent: float  # in the water vapour, lost unless it condenses
    sensible: float  # in the hot flue gas, above 25 degC
    chemical: float  # in CO, H2 and other unburned gas, gross


def heat_split(
    fuel,
    equivalence_ratio,
    chamber_temp_K,
    gas_temp_K=COMBUSTION_TEMP_K,
    air_temp_K=COMBUSTION_TEMP_K,
    pressure_Pa=STANDARD_PRESSURE_PA,
    air=AIR,
    freeze_temp_K=FREEZE_TEMP_K,
):
    """Shares of the gross heat when the flue gas leaves at the chamber temperature.

        available = (H(gas, T_gas) + H(air, T_air) - H(flue gas, T_chamber)) / HHV

    Arguments (as in flue_gas):
        fuel                composition                     [-]
        equivalence_ratio   phi                             [-]
        chamber_temp_K      at which the flue gas leaves    [K]
        gas_temp_K          of the gas before mixing        [K]
        air_temp_K          of the air before mixing        [K]
        pressure_Pa         of the mixture                  [Pa]
        air                 composition                     [-]
        freeze_temp_K       composition stays below it      [K]
    Returns:
        HeatSplit           available is negative when the flame cannot hold the chamber temperature
    Raises:
        InputError          a value outside its limit
        EquilibriumError    no convergence
    Source:
        energy balance; enthalpies of NASA TM-4513 (published)
    Checked by:
        tests/reference/available_heat.csv, tests/reference/available_heat_rich.csv
    """
    flue = flue_gas(fuel, equivalence_ratio, chamber_temp_K, gas_temp_K, air_temp_K, pressure_Pa, air, freeze_temp_K)
    gross_J = gross_heating_value_J_mol(fuel)
    cold_J = reactants_enthalpy_J(fuel, equivalence_ratio, air=air)
    inlet_J = reactants_enthalpy_J(fuel, equivalence_ratio, gas_temp_K, air_temp_K, air)
    flue_cold_J = mixture_enthalpy_J(flue.amounts_mol, COMBUSTION_TEMP_K)
    flue_J = mixture_enthalpy_J(flue.amounts_mol, chamber_temp_K)
    latent_J = dict(flue.amounts_mol)["H2O"] * WATER_LATENT_J_MOL
    return HeatSplit(
        preheat=(inlet_J - cold_J) / gross_J,
        available=(inlet_J - flue_J) / gross_J,
        latent=latent_J / gross_J,
        sensible=(flue_J - flue_cold_J) / gross_J,
        chemical=(gross_J - latent_J - (cold_J - flue_cold_J)) / gross_J,
    )
