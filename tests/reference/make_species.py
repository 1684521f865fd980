"""Write burnercalc/data/species.csv from the NASA polynomials that Cantera carries (nasa_gas.yaml)."""

import datetime
from pathlib import Path

import cantera as ct

# Our symbol -> name in the source file. The last six are what may burn.
SPECIES = {
    "CO2": "CO2",
    "H2O": "H2O",
    "N2": "N2",
    "O2": "O2",
    "CO": "CO",
    "H2": "H2",
    "OH": "OH",
    "H": "H",
    "O": "O",
    "NO": "NO",
    "CH4": "CH4",
    "C2H6": "C2H6",
    "C3H8": "C3H8",
    "C4H10": "C4H10,n-butane",
    "iC4H10": "C4H10,isobutane",
    "C3H6": "C3H6,propylene",
}
OUT = Path(__file__).parents[2] / "burnercalc" / "data" / "species.csv"

HEADER = f"""\
# quantity:  NASA seven-coefficient polynomials of ideal gases: cp/R = a1 + a2 T + a3 T^2 + a4 T^3 + a5 T^4,
#            h/RT = a1 + a2 T/2 + ... + a6/T, s/R = a1 ln T + a2 T + ... + a7; low range up to mid_temp_K, high above
# source:    nasa-tm-4513, as carried in nasa_gas.yaml of cantera {ct.__version__} (full entry in SOURCES.md)
# reference: elements at 298.15 K have zero enthalpy; entropy at 101325 Pa as Cantera reads it (see physics/thermo.py)
# trust:     published
# made:      by tests/reference/make_species.py, {datetime.date.today()}
"""


def main():
    source = {species.name: species for species in ct.Species.list_from_file("nasa_gas.yaml")}
    columns = ["species", "source_name", "C", "H", "O", "N", "molar_mass_g_mol"]
    columns += ["min_temp_K", "mid_temp_K", "max_temp_K"]
    columns += [f"{part}_a{i}" for part in ("low", "high") for i in range(1, 8)]
    lines = [",".join(columns)]
    for symbol, name in SPECIES.items():
        species = source[name]
        thermo = species.thermo
        assert abs(thermo.reference_pressure - 101325) < 1e-6, f"{name}: reference pressure {thermo.reference_pressure}"
        middle, *coefficients = thermo.coeffs
        high, low = coefficients[:7], coefficients[7:]
        cells = [
            symbol,
            f'"{name}"',
            *(f"{species.composition.get(e, 0):.0f}" for e in "CHON"),
            f"{species.molecular_weight:.6g}",
            f"{thermo.min_temp:g}",
            f"{middle:g}",
            f"{thermo.max_temp:g}",
        ]
        lines.append(",".join(cells + [repr(float(value)) for value in (*low, *high)]))
    OUT.write_text(HEADER + "\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
