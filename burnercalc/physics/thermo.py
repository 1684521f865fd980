"""Ideal-gas heat capacity and enthalpy of the species of a flame, from NASA polynomials.

A composition is a tuple of (species, amount) pairs, amounts in mol; it is hashable, so results can be cached.
"""

from dataclasses import dataclass

from ..constants import ATM_PA, GAS_CONSTANT_J_MOLK
from ..errors import InputError
from ..tables import read_table

ELEMENTS = ("C", "H", "O", "N")

# Pressure at which the entropies hold. Sources disagree: the numbers equal the CODATA entropies at 1 bar, while Cantera
# and the CHEMKIN format read the same coefficients as 1 atm. 1 atm is used, so that results can be compared with them.
# Reading them as 1 bar would lower the CO of a stoichiometric flame by 0.3 % of its value and raise the flame by 0.3 K.
REFERENCE_PRESSURE_PA = ATM_PA


@dataclass(frozen=True)
class Species:
    """One row of data/species.csv: atoms in the order of ELEMENTS, seven coefficients below and above mid_temp_K."""

    name: str
    atoms: tuple
    molar_mass_kg_mol: float
    min_temp_K: float
    mid_temp_K: float
    max_temp_K: float
    low: tuple
    high: tuple


def _species(row):
    return Species(
        name=row["species"],
        atoms=tuple(row[element] for element in ELEMENTS),
        molar_mass_kg_mol=row["molar_mass_g_mol"] / 1000,
        min_temp_K=row["min_temp_K"],
        mid_temp_K=row["mid_temp_K"],
        max_temp_K=row["max_temp_K"],
        low=tuple(row[f"low_a{i}"] for i in range(1, 8)),
        high=tuple(row[f"high_a{i}"] for i in range(1, 8)),
    )


SPECIES = {row["species"]: _species(row) for row in read_table("species")}


def species_of(name):
    """The Species called `name`; InputError lists the known ones otherwise."""
    if name not in SPECIES:
        raise InputError("species", name, "is not in the table; known: " + ", ".join(SPECIES))
    return SPECIES[name]


def require_range(field, value, low, high):
    """Raise InputError unless low <= value <= high, with the nearer end as what works; none is offered for NaN."""
    if not low <= value <= high:
        nearest = f"{min(max(value, low), high):g}" if value == value else ""
        raise InputError(field, value, f"must be within {low:g} to {high:g}", nearest)


def _coefficients(name, temp_K):
    species = species_of(name)
    require_range("temp_K", temp_K, species.min_temp_K, species.max_temp_K)
    return species.low if temp_K < species.mid_temp_K else species.high


def heat_capacity_J_molK(name, temp_K):
    """Heat capacity of a gas at constant pressure.

        cp/R = a1 + a2 T + a3 T**2 + a4 T**3 + a5 T**4

    Arguments:
        name      species, see SPECIES     [-]
        temp_K    temperature              [K]       200 to 6000
    Returns:
        float     heat capacity            [J/mol/K]
    Raises:
        InputError  unknown species, or temperature outside the polynomial
    Source:
        McBride, Gordon and Reno, NASA TM-4513 (1993) (published)
    Checked by:
        tests/reference/thermo.csv
    """
    a1, a2, a3, a4, a5, _, _ = _coefficients(name, temp_K)
    return GAS_CONSTANT_J_MOLK * (a1 + temp_K * (a2 + temp_K * (a3 + temp_K * (a4 + temp_K * a5))))


def enthalpy_J_mol(name, temp_K):
    """Enthalpy of a gas, formation from the elements at 298.15 K included.

        h/(R T) = a1 + a2 T/2 + a3 T**2/3 + a4 T**3/4 + a5 T**4/5 + a6/T

    Arguments:
        name      species, see SPECIES     [-]
        temp_K    temperature              [K]       200 to 6000
    Returns:
        float     enthalpy                 [J/mol]
    Raises:
        InputError  unknown species, or temperature outside the polynomial
    Source:
        McBride, Gordon and Reno, NASA TM-4513 (1993) (published)
    Checked by:
        tests/reference/thermo.csv
    """
    a1, a2, a3, a4, a5, a6, _ = _coefficients(name, temp_K)
    t = temp_K
    return GAS_CONSTANT_J_MOLK * (a6 + t * (a1 + t * (a2 / 2 + t * (a3 / 3 + t * (a4 / 4 + t * a5 / 5)))))


def mixture_enthalpy_J(composition, temp_K):
    """Enthalpy of all the moles of a composition at one temperature [J]; no heat of mixing (ideal gases)."""
    return sum(amount * enthalpy_J_mol(name, temp_K) for name, amount in composition)


def mixture_mass_kg(composition):
    """Mass of all the moles of a composition [kg]; for mole fractions this is the molar mass [kg/mol]."""
    return sum(amount * species_of(name).molar_mass_kg_mol for name, amount in composition)


def gas_density_kg_m3(molar_mass_kg_mol, temp_K, pressure_Pa):
    """Density of an ideal gas, p M / (R T) [kg/m3]."""
    return pressure_Pa * molar_mass_kg_mol / (GAS_CONSTANT_J_MOLK * temp_K)


def mixture_atoms_mol(composition):
    """Moles of atoms in a composition, as a tuple in the order of ELEMENTS."""
    totals = [0.0] * len(ELEMENTS)
    for name, amount in composition:
        for i, atoms in enumerate(species_of(name).atoms):
            totals[i] += amount * atoms
    return tuple(totals)


def fractions(composition):
    """The same composition scaled to one mole."""
    total = sum(amount for _, amount in composition)
    return tuple((name, amount / total) for name, amount in composition)
