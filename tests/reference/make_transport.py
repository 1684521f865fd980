"""Write burnercalc/data/transport.csv (viscosity and conductivity of the pure gases) and tests/reference/mixture.csv
(properties of whole mixtures by Cantera, to check against). Run from the root, in an environment with cantera,
chemicals and CoolProp."""

import datetime
import warnings
from pathlib import Path

import cantera as ct
import chemicals
import CoolProp
import numpy as np
from chemicals.thermal_conductivity import k_data_Perrys_8E_2_314
from chemicals.viscosity import mu_data_Perrys_8E_2_312
from CoolProp.CoolProp import PropsSI

HERE = Path(__file__).parent
DATA = HERE.parents[1] / "burnercalc" / "data"
TEMPS_K = np.linspace(250, 1000, 76)
REFERENCE_K = 300.0
FROM_CANTERA = "CO2 H2O N2 O2 CO H2 CH4 C2H6 C3H8".split()
# gri30 has no butanes and no propylene. Their curves are those of Perry's 8th edition as stored by chemicals.
FROM_PERRY = {"C4H10": ("106-97-8", "n-Butane"), "iC4H10": ("75-28-5", "IsoButane"), "C3H6": ("115-07-1", "Propylene")}
GAS = ct.Solution("gri30.yaml")


def perry(table, cas, temp_K):
    """DIPPR form 102: C1 T^C2 / (1 + C3/T + C4/T^2)."""
    c1, c2, c3, c4 = (float(value) for value in list(table.loc[cas])[1:5])
    return c1 * temp_K**c2 / (1 + c3 / temp_K + c4 / temp_K**2)


def pure(species):
    """(viscosities, conductivities, source) at TEMPS_K."""
    if species in FROM_PERRY:
        cas, name = FROM_PERRY[species]
        viscosity = [perry(mu_data_Perrys_8E_2_312, cas, t) for t in TEMPS_K]
        conductivity = [perry(k_data_Perrys_8E_2_314, cas, t) for t in TEMPS_K]
        for t, mu, k in zip(TEMPS_K, viscosity, conductivity):
            if 280 <= t <= 550:
                # Second opinion; they part by up to 5 % for the conductivity of cold butane.
                assert abs(PropsSI("V", "T", t, "P", 1000, name) / mu - 1) < 0.03, (species, t)
                assert abs(PropsSI("L", "T", t, "P", 1000, name) / k - 1) < 0.06, (species, t)
        return viscosity, conductivity, "perry-8e"
    viscosity, conductivity = [], []
    for t in TEMPS_K:
        GAS.TPX = t, 101325, {species: 1}
        viscosity.append(GAS.viscosity)
        conductivity.append(GAS.thermal_conductivity)
    return viscosity, conductivity, "gri30"


def transport():
    lines = [
        f"""\
# quantity:  viscosity [Pa s] and thermal conductivity [W/m/K] of the pure gases at low pressure:
#            ln(value) = a0 + a1 x + a2 x^2 + a3 x^3 + a4 x^4,  x = ln(T / {REFERENCE_K:g} K)
# source:    gri30: mixture-averaged transport of gri30.yaml, cantera {ct.__version__}; perry-8e: Perry's Handbook, 8th
#            edition, tables 2-312 and 2-314, as stored in chemicals {chemicals.__version__}, second opinion CoolProp
#            {CoolProp.__version__} (full entries in SOURCES.md)
# reference: {TEMPS_K[0]:g} to {TEMPS_K[-1]:g} K; the fit strays from its source by at most 0.5 %
# trust:     published
# made:      by tests/reference/make_transport.py, {datetime.date.today()}""",
        "species," + ",".join(f"{q}_a{i}" for q in ("viscosity", "conductivity") for i in range(5)) + ",source",
    ]
    x = np.log(TEMPS_K / REFERENCE_K)
    for species in [*FROM_CANTERA, *FROM_PERRY]:
        viscosity, conductivity, source = pure(species)
        cells = []
        for values in (viscosity, conductivity):
            fit = np.polyfit(x, np.log(values), 4)
            assert np.max(np.abs(np.exp(np.polyval(fit, x)) / values - 1)) < 0.005, species
            cells += [f"{c:.7f}" for c in fit[::-1]]
        lines.append(",".join([species, *cells, source]))
    (DATA / "transport.csv").write_text("\n".join(lines) + "\n", encoding="utf-8")


def mixtures():
    """Fuel with air at several equivalence ratios, air alone, fuel alone and a burned gas."""
    lines = [
        f"""\
# quantity: properties of gas mixtures at 101325 Pa
# source:   cantera {ct.__version__}, gri30.yaml, mixture-averaged transport; air O2 + 3.76 N2
# made:     by make_transport.py, {datetime.date.today()}""",
        "case,temp_K,CH4,C2H6,C3H8,H2,CO,CO2,H2O,O2,N2,molar_mass_kg_mol,density_kg_m3,viscosity_Pas,"
        "conductivity_W_mK,heat_capacity_J_kgK",
    ]
    blends = {
        "CH4": {"CH4": 1},
        "C3H8": {"C3H8": 1},
        "NG": {"CH4": 0.95, "C2H6": 0.03, "C3H8": 0.01, "N2": 0.01},
        "C2H6": {"C2H6": 1},
    }
    cases = {}
    for name, fuel in blends.items():
        cases[f"{name} alone"] = fuel
        for phi in (0.7, 1.0, 1.3):
            GAS.set_equivalence_ratio(phi, fuel, "O2:1, N2:3.76")
            cases[f"{name} phi {phi}"] = GAS.mole_fraction_dict()
    cases["air"] = {"O2": 1, "N2": 3.76}
    cases["flue"] = {"CO2": 0.10, "H2O": 0.16, "N2": 0.72, "CO": 0.015, "H2": 0.005}
    columns = "CH4 C2H6 C3H8 H2 CO CO2 H2O O2 N2".split()
    for name, mix in cases.items():
        for temp_K in (280, 288.15, 350, 450, 600, 700):
            GAS.TPX = temp_K, 101325, mix
            cells = [f"{float(GAS.X[GAS.species_index(s)]):.9g}" for s in columns]
            cells += [
                f"{value:.6g}"
                for value in (
                    GAS.mean_molecular_weight / 1000,
                    GAS.density,
                    GAS.viscosity,
                    GAS.thermal_conductivity,
                    GAS.cp_mass,
                )
            ]
            lines.append(",".join([f"{name} {temp_K} K", f"{temp_K:g}", *cells]))
    (HERE / "mixture.csv").write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    warnings.simplefilter("ignore")
    transport()
    mixtures()
