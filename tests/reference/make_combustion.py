"""Write tests/reference/equilibrium.csv: adiabatic flames by Cantera with our species list and data.

The data are those of nasa_gas.yaml, which burnercalc/data/species.csv also holds.
"""

import datetime
from pathlib import Path

import cantera as ct
from make_species import SPECIES

PRODUCTS = ("CO2", "H2O", "N2", "O2", "CO", "H2", "OH", "H", "O", "NO", "CH4")
FUELS = {
    "propane": "C3H8 1",
    "natural_gas": "CH4 0.949, C2H6 0.025, C3H8 0.002, N2 0.016, CO2 0.008",
    "butane": "C4H10 1",
    "blend": "C3H8 0.60, C3H6 0.25, iC4H10 0.10, C2H6 0.05",
}
RATIOS = (0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.99, 1.0, 1.01, 1.05, 1.1, 1.2, 1.4, 1.7, 2.0, 2.5, 3.0)
# (gas temperature, air temperature) in K
INLETS = ((250, 250), (298.15, 298.15), (298.15, 600), (900, 900))
PRESSURES_Pa = (0.6e5, 101325.0, 1.3e5)
OUT = Path(__file__).with_name("equilibrium.csv")
# Smallest mole fraction that is written, a tenth of what the test compares.
LEAST = 1e-5


def phases():
    """Cantera phases (with fuels and air; of the products alone), names as in species.csv."""
    source = {species.name: species for species in ct.Species.list_from_file("nasa_gas.yaml")}
    renamed = {}
    for symbol, name in SPECIES.items():
        species = ct.Species(symbol, source[name].composition)
        species.thermo = source[name].thermo
        renamed[symbol] = species
    everything = ct.Solution(thermo="ideal-gas", species=list(renamed.values()))
    products = ct.Solution(thermo="ideal-gas", species=[renamed[name] for name in PRODUCTS])
    return everything, products


def flame(everything, products, fuel, ratio, gas_K, air_K, pressure_Pa):
    """Temperature and mole fractions of the adiabatic flame."""
    burning = {part.split()[0]: float(part.split()[1]) for part in fuel.split(",")}
    mixture = dict.fromkeys(everything.species_names, 0.0)
    oxygen = 0.0
    for name, x in burning.items():
        atoms = everything.species(name).composition
        oxygen += x * (atoms.get("C", 0) + atoms.get("H", 0) / 4 - atoms.get("O", 0) / 2)
    air = oxygen / 0.2095 / ratio
    enthalpy = 0.0
    for part, temp_K in ((burning, gas_K), ({"O2": 0.2095 * air, "N2": 0.7905 * air}, air_K)):
        everything.TPX = temp_K, pressure_Pa, part
        enthalpy += everything.enthalpy_mole * sum(part.values())
        for name, x in part.items():
            mixture[name] += x
    everything.TPX = gas_K, pressure_Pa, mixture
    mass = everything.mean_molecular_weight * sum(mixture.values())
    # The products phase starts from any gas with the same atoms: CO2, H2O, N2 and O2, or CO and H2 when O is short.
    atoms = {element: sum(x * everything.n_atoms(name, element) for name, x in mixture.items()) for element in "CHON"}
    start = {"N2": atoms["N"] / 2, "CO": atoms["C"], "H2": atoms["H"] / 2, "O2": (atoms["O"] - atoms["C"]) / 2}
    products.TPX = 1500, pressure_Pa, start
    products.HP = enthalpy / mass, pressure_Pa
    products.equilibrate("HP", solver="gibbs", rtol=1e-11, max_steps=20000)
    return products.T, dict(zip(products.species_names, products.X))


def main():
    everything, products = phases()
    lines = [
        "# quantity:  adiabatic flame temperature and mole fractions, air 0.2095 O2 + 0.7905 N2",
        f"# source:    cantera {ct.__version__}, nasa_gas.yaml, equilibrate('HP') over the species of the header only",
        f"# made:      by tests/reference/make_combustion.py, {datetime.date.today()}; blank is below 10 ppm",
        "case,blend,equivalence_ratio,gas_temp_K,air_temp_K,pressure_Pa,temp_K," + ",".join(PRODUCTS),
    ]
    for case, fuel in FUELS.items():
        for ratio in RATIOS:
            for gas_K, air_K in INLETS:
                for pressure_Pa in PRESSURES_Pa:
                    temp_K, x = flame(everything, products, fuel, ratio, gas_K, air_K, pressure_Pa)
                    cells = [case, f'"{fuel}"', ratio, gas_K, air_K, f"{pressure_Pa:g}", f"{temp_K:.3f}"]
                    cells += [f"{x[name]:.5e}" if x[name] > LEAST else "" for name in PRODUCTS]
                    lines.append(",".join(str(cell) for cell in cells))
    OUT.write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
