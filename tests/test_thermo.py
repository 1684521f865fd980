"""NASA polynomials against Cantera and against tables that do not use them."""

import pytest
from rows import rows

from burnercalc.constants import GAS_CONSTANT_J_MOLK
from burnercalc.errors import InputError
from burnercalc.physics import thermo
from burnercalc.physics.equilibrium import PRODUCTS, _properties


def entropy_J_molK(name, temp_K):
    """Of a product, from what the equilibrium works with: s = (h - g) / T."""
    _, h, g = _properties(temp_K)
    at = PRODUCTS.index(name)
    return GAS_CONSTANT_J_MOLK * (h[at] - g[at])


@pytest.mark.parametrize("row", rows("thermo.csv"), ids=lambda row: f"{row['species']}-{row['temp_K']:g}K")
def test_agrees_with_cantera(row):
    name, temp_K = row["species"], row["temp_K"]
    cp, h, s = row["cp_J_molK"], row["h_J_mol"], row["s_J_molK"]
    assert thermo.heat_capacity_J_molK(name, temp_K) == pytest.approx(cp, rel=1e-7)
    assert thermo.enthalpy_J_mol(name, temp_K) == pytest.approx(h, rel=1e-7, abs=1e-3)
    if name in PRODUCTS:
        assert entropy_J_molK(name, temp_K) == pytest.approx(s, rel=1e-7)


# CODATA key values for thermodynamics (1989), formation enthalpy at 298.15 K in kJ/mol and entropy at 1 bar in J/mol/K
# (from memory, not read again). That the entropies agree at 1 bar is the disagreement told in thermo.py.
@pytest.mark.parametrize(
    "name, formation_kJ_mol, codata_J_molK",
    [
        ("CO2", -393.51, 213.785),
        ("H2O", -241.826, 188.835),
        ("CO", -110.53, 197.660),
        ("H2", 0, 130.680),
        ("O2", 0, 205.152),
        ("N2", 0, 191.609),
        ("H", 217.998, 114.717),
        ("O", 249.18, 161.059),
    ],
)
def test_agrees_with_codata(name, formation_kJ_mol, codata_J_molK):
    assert thermo.enthalpy_J_mol(name, 298.15) / 1000 == pytest.approx(formation_kJ_mol, abs=0.1)
    assert entropy_J_molK(name, 298.15) == pytest.approx(codata_J_molK, abs=0.01)


@pytest.mark.parametrize("name", thermo.SPECIES)
def test_is_continuous_where_the_ranges_meet_and_cp_is_the_slope_of_h_and_of_s(name):
    below, above = 999.999999, 1000.000001
    assert thermo.enthalpy_J_mol(name, below) == pytest.approx(thermo.enthalpy_J_mol(name, above), rel=1e-4, abs=3)
    slope = (thermo.enthalpy_J_mol(name, 1501) - thermo.enthalpy_J_mol(name, 1499)) / 2
    assert thermo.heat_capacity_J_molK(name, 1500) == pytest.approx(slope, rel=1e-6)
    if name in PRODUCTS:
        slope = (entropy_J_molK(name, 1501) - entropy_J_molK(name, 1499)) / 2
        assert thermo.heat_capacity_J_molK(name, 1500) / 1500 == pytest.approx(slope, rel=1e-6)


@pytest.mark.parametrize("temp_K", [199, 6001, float("nan")])
def test_refuses_a_temperature_outside_the_polynomial(temp_K):
    for function in (thermo.heat_capacity_J_molK, thermo.enthalpy_J_mol):
        with pytest.raises(InputError, match="200 to 6000") as caught:
            function("N2", temp_K)
        assert caught.value.field == "temp_K"


def test_refuses_an_unknown_species_with_the_list():
    with pytest.raises(InputError, match="CO2, H2O"):
        thermo.enthalpy_J_mol("C8H18", 300)


def test_table_bounds():
    """Atoms give the molar mass (standard atomic weights, abridged), and every heat capacity is that of a gas."""
    for name, species in thermo.SPECIES.items():
        weight = sum(n * w for n, w in zip(species.atoms, (12.011, 1.008, 15.999, 14.007)))
        assert species.molar_mass_kg_mol * 1000 == pytest.approx(weight, abs=2e-3)
        for temp_K in (200, 298.15, 1000, 3000):
            degrees = thermo.heat_capacity_J_molK(name, temp_K) / 8.314462618
            assert 2.49 < degrees < 2.5 + 3 * sum(species.atoms), (name, temp_K)


def test_mixture_sums():
    mixture = (("CO2", 1.0), ("N2", 3.0))
    assert thermo.mixture_atoms_mol(mixture) == (1, 0, 2, 6)
    assert thermo.mixture_mass_kg(mixture) == pytest.approx(0.044009 + 3 * 0.028014, rel=1e-9)
    assert thermo.mixture_enthalpy_J(mixture, 298.15) == pytest.approx(-393510, abs=30)
    assert thermo.fractions(mixture) == (("CO2", 0.25), ("N2", 0.75))
