"""Density, viscosity, conductivity and heat capacity of a gas mixture from its composition, temperature and pressure.

A composition is (species, amount) pairs or a dict of them; amounts in mol, only their proportions count.
"""

from dataclasses import dataclass
from functools import cache, lru_cache
from math import exp, inf, log, sqrt

from ..constants import GAS_CONSTANT_J_MOLK
from ..errors import InputError, require
from ..tables import read_table
from .thermo import gas_density_kg_m3, heat_capacity_J_molK, require_range, species_of

TEMP_MIN_K, TEMP_MAX_K = 250.0, 1000.0  # of the fits in data/transport.csv
FIT_REFERENCE_K = 300.0


@dataclass(frozen=True)
class Mixture:
    """Properties of a gas mixture at one temperature and pressure."""

    temp_K: float
    pressure_Pa: float
    molar_mass_kg_mol: float
    density_kg_m3: float
    viscosity_Pas: float
    conductivity_W_mK: float
    heat_capacity_J_kgK: float

    @property
    def kinematic_viscosity_m2_s(self):
        return self.viscosity_Pas / self.density_kg_m3

    @property
    def thermal_diffusivity_m2_s(self):
        return self.conductivity_W_mK / (self.density_kg_m3 * self.heat_capacity_J_kgK)

    @property
    def heat_capacity_ratio(self):
        molar_J_molK = self.heat_capacity_J_kgK * self.molar_mass_kg_mol
        return molar_J_molK / (molar_J_molK - GAS_CONSTANT_J_MOLK)


@cache
def _fits():
    return {
        row["species"]: tuple(
            tuple(row[f"{quantity}_a{i}"] for i in range(5)) for quantity in ("viscosity", "conductivity")
        )
        for row in read_table("transport")
    }


@lru_cache(maxsize=256)
def _pure(species, temp_K):
    """(molar mass [kg/mol], viscosity [Pa s], conductivity [W/m/K], heat capacity [J/mol/K]) of one gas: those of
    data/transport.csv are exp of a polynomial of ln(T / 300 K)."""
    x = log(temp_K / FIT_REFERENCE_K)
    fits = (exp(a0 + x * (a1 + x * (a2 + x * (a3 + x * a4)))) for a0, a1, a2, a3, a4 in _fits()[species])
    return species_of(species).molar_mass_kg_mol, *fits, heat_capacity_J_molK(species, temp_K)


@lru_cache(maxsize=1024)
def _slows(species, other, temp_K):
    """phi_ij of Wilke: how much another gas counts in the viscosity of one."""
    (m_i, mu_i, *_), (m_j, mu_j, *_) = _pure(species, temp_K), _pure(other, temp_K)
    return (1 + sqrt(mu_i / mu_j * sqrt(m_j / m_i))) ** 2 / sqrt(8 * (1 + m_i / m_j))


def mixture_properties(composition, temp_K, pressure_Pa):
    """Properties of a gas mixture.

        rho = p M / (R T)
        mu  = sum_i x_i mu_i / sum_j x_j phi_ij,
              phi_ij = (1 + sqrt(mu_i/mu_j) (M_j/M_i)^(1/4))^2 / sqrt(8 (1 + M_i/M_j))
        k   = (sum_i x_i k_i + 1 / sum_i (x_i / k_i)) / 2
        cp  = sum_i x_i cp_i / M

    Arguments:
        composition   (species, amount) pairs or dict, amounts 0 or more   [mol]
        temp_K        T                                                    [K]    250 to 1000
        pressure_Pa   p, absolute                                          [Pa]   above 0
    Returns:
        Mixture
    Raises:
        InputError    unknown species, negative amount, nothing there, or T or p outside the limits
    Assumes:
        ideal gas, low pressure (viscosity and conductivity do not depend on p)
    Source:
        viscosity: Wilke, J. Chem. Phys. 18 (1950) 517; conductivity: Mathur, Tondon and Saxena, Mol. Phys. 12 (1967)
        569 (published); pure gases: data/transport.csv; heat capacity: thermo.heat_capacity_J_molK
    Checked by:
        tests/reference/mixture.csv (Cantera) and CoolProp for air, within 2 % from 280 to 700 K
    """
    parts = _fractions(composition)
    require_range("temp_K", temp_K, TEMP_MIN_K, TEMP_MAX_K)
    require(0 < pressure_Pa < inf, "pressure_Pa", pressure_Pa, "must be above 0 Pa")

    molar_mass = viscosity = conductivity = resistivity = heat_capacity = 0.0
    for name, x in parts:
        m, mu, k, cp = _pure(name, temp_K)
        molar_mass += x * m
        viscosity += x * mu / sum([x_j * _slows(name, other, temp_K) for other, x_j in parts])
        conductivity += x * k
        resistivity += x / k
        heat_capacity += x * cp
    conductivity = (conductivity + 1 / resistivity) / 2
    heat_capacity /= molar_mass
    density = gas_density_kg_m3(molar_mass, temp_K, pressure_Pa)
    return Mixture(temp_K, pressure_Pa, molar_mass, density, viscosity, conductivity, heat_capacity)


def _fractions(composition):
    """(species, mole fraction) pairs of what is there, absent gases left out."""
    amounts = dict(composition)
    for name, amount in amounts.items():
        if name not in _fits():
            raise InputError("composition", name, "is not in the table; known: " + ", ".join(_fits()))
        if not 0 <= amount < inf:
            raise InputError("composition", f"{amount:g} {name}", "must be 0 or more", "0")
    total = sum(amounts.values())
    require(total > 0, "composition", "nothing", "must hold at least one gas")
    return [(name, amount / total) for name, amount in amounts.items() if amount > 0]
