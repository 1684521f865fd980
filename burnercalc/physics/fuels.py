"""What the fuel gas is, and what follows from its composition alone: mass, heating values, air need, Wobbe index.

Volumes are of an ideal gas at 15 degC and 101 325 Pa. "Gross" counts the heat of the condensed water, "net" does not.
"""

from functools import lru_cache
from math import inf, sqrt

from ..constants import (
    AIR_MOLAR_MASS_KG_MOL,
    AIR_OXYGEN_FRACTION,
    COMBUSTION_TEMP_K,
    GAS_CONSTANT_J_MOLK,
    STANDARD_PRESSURE_PA,
    STANDARD_TEMP_K,
)
from ..errors import InputError, require
from ..tables import read_table
from .thermo import enthalpy_J_mol, mixture_atoms_mol, mixture_enthalpy_J, mixture_mass_kg

COMBUSTIBLES = ("CH4", "C2H6", "C3H6", "C3H8", "C4H10", "iC4H10")
INERTS = ("CO2", "N2")
BLEND_SPECIES = COMBUSTIBLES + INERTS

# How far the mole fractions of a blend may miss 1: the rounding of a printed analysis.
BLEND_SUM_TOLERANCE = 0.002

AIR = (("O2", AIR_OXYGEN_FRACTION), ("N2", 1 - AIR_OXYGEN_FRACTION))

# Heat of vaporisation of water at 25 degC: -241.826 + 285.830 kJ/mol, CODATA key values 1989 (published).
WATER_LATENT_J_MOL = 44004.0

STANDARD_MOLAR_VOLUME_M3_MOL = GAS_CONSTANT_J_MOLK * STANDARD_TEMP_K / STANDARD_PRESSURE_PA


def _named_fuels():
    found = {}
    for row in read_table("fuels"):
        found.setdefault(row["fuel"], []).append((row["species"], row["mole_fraction"]))
    return {name: tuple(pairs) for name, pairs in found.items()}


FUELS = _named_fuels()


def fuel_composition(fuel, fuel_blend=""):
    """Mole fractions of the fuel gas: those of `fuel_blend` when it is given, else those of the name `fuel`.

    Returns a tuple of (species, mole fraction). InputError for an unknown name lists the known ones.
    """
    if fuel_blend.strip():
        return parse_blend(fuel_blend)
    if fuel not in FUELS:
        raise InputError("fuel", fuel, "is not a known fuel; known: " + ", ".join(FUELS) + "; or give fuel_blend")
    return FUELS[fuel]


def parse_blend(text):
    """Read a fuel analysis such as `C3H8 0.93, C2H6 0.05, C4H10 0.02` (mole fractions).

    Fractions must sum to 1 within BLEND_SUM_TOLERANCE (what a printed analysis loses by rounding) and are then scaled
    to exactly 1. At least half must be combustible: with more inerts no burner here would hold its flame (memory).
    Raises InputError with field "fuel_blend" for an unknown or repeated species, a number that is not one or is
    negative, a wrong sum, or too little that burns.
    """
    field, known, found = "fuel_blend", "known: " + ", ".join(BLEND_SPECIES), {}

    def must(holds, rule):
        require(holds, field, text, rule, "" if holds else _blend_near(text))

    for part in text.split(","):
        words = part.split()
        must(len(words) == 2, f"needs pairs of species and mole fraction between commas; {known}")
        name, number = words
        must(name in BLEND_SPECIES, f"is not readable: no species {name}; {known}")
        must(name not in found, f"must name each species once; {name} stands twice")
        fraction = _number(number)
        must(fraction is not None, f"needs a number after {name}, not {number}")
        must(0 <= fraction <= 1, f"must have mole fractions of 0 to 1; {name} has {number}")
        found[name] = fraction
    total = sum(found.values())
    must(abs(total - 1) <= BLEND_SUM_TOLERANCE, f"must have mole fractions that sum to 1, not {total:.6g}")
    burning = sum(fraction for name, fraction in found.items() if name in COMBUSTIBLES)
    must(burning >= 0.5 * total, "must be at least half combustible: " + ", ".join(COMBUSTIBLES))
    return tuple((name, fraction / total) for name, fraction in found.items() if fraction > 0)


def _number(text):
    try:
        return float(text)
    except ValueError:
        return None


def _blend_near(text):
    """The analysis that a text comes nearest to, of the species that are known in it: shares summed, scaled to 1, and
    inerts to no more than half. Empty where nothing in it burns."""
    names = {name.lower(): name for name in BLEND_SPECIES}
    names |= {fuel: pairs[0][0] for fuel, pairs in FUELS.items() if len(pairs) == 1}  # propane is C3H8
    found: dict[str, float] = {}
    last = None
    for word in text.replace(",", " ").replace(":", " ").replace("=", " ").split():
        share = _number(word.rstrip("%"))
        if share is None:
            last = names.get(word.lower())
        elif last:
            found[last] = found.get(last, 0.0) + (share if 0 < share < inf else 0.0)
            last = None
    if last and not found:
        found[last] = 1.0
    burns, inert = (sum(found.get(name, 0.0) for name in kind) for kind in (COMBUSTIBLES, INERTS))
    if not burns:
        return ""
    thinner = min(burns / inert, 1.0) if inert else 1.0
    total = burns + thinner * inert
    return blend_text((name, (thinner if name in INERTS else 1.0) * share / total) for name, share in found.items())


def blend_text(composition):
    """An analysis as parse_blend reads it, but for traces."""
    return ", ".join(f"{name} {share:.4g}" for name, share in composition if share >= 5e-5)


def molar_mass_kg_mol(composition):
    """Molar mass of a fuel gas, M = sum(x_i M_i) [kg/mol]."""
    return mixture_mass_kg(composition)


def oxygen_demand_mol_mol(composition):
    """Oxygen to burn one mole of fuel to CO2 and H2O.

        nu = C + H/4 - O/2   (atoms per mole of fuel; the O of CO2 in the fuel cancels its C)

    Arguments:
        composition   mole fractions of the fuel   [-]
    Returns:
        float         moles of O2 per mole fuel    [mol/mol]
    Source:
        atom balance (calc)
    Checked by:
        tests/reference/fuels.csv
    """
    carbon, hydrogen, oxygen, _ = mixture_atoms_mol(composition)
    return carbon + hydrogen / 4 - oxygen / 2


@lru_cache(maxsize=256)
def net_heating_value_J_mol(composition):
    """Heat of complete combustion at 25 degC with the water as vapour.

        LHV = H(fuel) + nu H(O2) - C h(CO2) - H/2 h(H2O) - N/2 h(N2)

    Arguments:
        composition   mole fractions of the fuel   [-]
    Returns:
        float         net heating value            [J/mol]
    Source:
        formation enthalpies of data/species.csv, NASA TM-4513 (published)
    Checked by:
        tests/reference/fuels.csv
    """
    carbon, hydrogen, _, nitrogen = mixture_atoms_mol(composition)
    burned = (("CO2", carbon), ("H2O", hydrogen / 2), ("N2", nitrogen / 2))
    t = COMBUSTION_TEMP_K
    return (
        mixture_enthalpy_J(composition, t)
        + oxygen_demand_mol_mol(composition) * enthalpy_J_mol("O2", t)
        - mixture_enthalpy_J(burned, t)
    )


@lru_cache(maxsize=256)
def gross_heating_value_J_mol(composition):
    """Heat of complete combustion at 25 degC with the water condensed.

        HHV = LHV + H/2 * latent heat of water

    Arguments:
        composition   mole fractions of the fuel   [-]
    Returns:
        float         gross heating value          [J/mol]
    Source:
        formation enthalpies of data/species.csv, NASA TM-4513; latent heat of CODATA key values (published)
    Checked by:
        tests/reference/fuels.csv
    """
    _, hydrogen, _, _ = mixture_atoms_mol(composition)
    return net_heating_value_J_mol(composition) + hydrogen / 2 * WATER_LATENT_J_MOL


def gross_heating_value_J_kg(composition):
    """Gross heating value per mass, HHV/M [J/kg]."""
    return gross_heating_value_J_mol(composition) / molar_mass_kg_mol(composition)


def net_heating_value_J_kg(composition):
    """Net heating value per mass, LHV/M [J/kg]."""
    return net_heating_value_J_mol(composition) / molar_mass_kg_mol(composition)


def gross_heating_value_J_m3(composition):
    """Gross heating value per volume of ideal gas at 15 degC and 101 325 Pa, HHV/Vm [J/m3].

    A real gas is denser: propane holds 1.8 % more per cubic metre than this.
    """
    return gross_heating_value_J_mol(composition) / STANDARD_MOLAR_VOLUME_M3_MOL


def net_heating_value_J_m3(composition):
    """Net heating value per volume of ideal gas at 15 degC and 101 325 Pa, LHV/Vm [J/m3]."""
    return net_heating_value_J_mol(composition) / STANDARD_MOLAR_VOLUME_M3_MOL


def density_kg_m3(composition):
    """Density of the fuel as ideal gas at 15 degC and 101 325 Pa, M/Vm [kg/m3]."""
    return molar_mass_kg_mol(composition) / STANDARD_MOLAR_VOLUME_M3_MOL


def relative_density(composition):
    """Density over that of real dry air, as ideal gases: M / M_air [-] (often called specific gravity)."""
    return molar_mass_kg_mol(composition) / AIR_MOLAR_MASS_KG_MOL


def wobbe_index_J_m3(composition):
    """Gross Wobbe index at 15 degC and 101 325 Pa.

        W = HHV / sqrt(d)

    Arguments:
        composition   mole fractions of the fuel   [-]
    Returns:
        float         gross Wobbe index            [J/m3]
    Source:
        ISO 6976:2016 (memory), for ideal gases
    Checked by:
        tests/reference/fuels.csv
    """
    return gross_heating_value_J_m3(composition) / sqrt(relative_density(composition))


@lru_cache(maxsize=256)
def stoichiometric_air_mol_mol(composition, air=AIR):
    """Air to burn one mole of fuel completely, also volume per volume.

        L = nu / x_O2

    Arguments:
        composition   mole fractions of the fuel   [-]
        air           mole fractions of the air    [-]   default 20.95 % O2, the rest N2
    Returns:
        float         moles of air per mole fuel   [mol/mol]
    Source:
        atom balance (calc)
    Checked by:
        tests/reference/fuels.csv
    """
    return oxygen_demand_mol_mol(composition) / dict(air)["O2"]


def stoichiometric_air_kg_kg(composition, air=AIR):
    """Air to burn one kilogram of fuel completely, L * M(air as its species) / M(fuel) [kg/kg]."""
    return stoichiometric_air_mol_mol(composition, air) * mixture_mass_kg(air) / molar_mass_kg_mol(composition)
