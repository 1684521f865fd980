"""Write tests/reference/thermo.csv: cp, h, s of every species by Cantera from the same NASA polynomials."""

import datetime
from pathlib import Path

import cantera as ct
from make_species import SPECIES

OUT = Path(__file__).with_name("thermo.csv")


def main():
    source = {species.name: species.thermo for species in ct.Species.list_from_file("nasa_gas.yaml")}
    lines = [
        "# quantity:  heat capacity, enthalpy and entropy at 101325 Pa of ideal gases",
        f"# source:    cantera {ct.__version__}, nasa_gas.yaml (NASA TM-4513), Species.thermo.cp, h, s",
        f"# made:      by tests/reference/make_thermo.py, {datetime.date.today()}",
        "species,temp_K,cp_J_molK,h_J_mol,s_J_molK",
    ]
    for symbol, name in SPECIES.items():
        thermo = source[name]
        for temp_K in (200, 298.15, 700, 999.9, 1000.1, 1700, 2500, 4000):
            lines.append(
                f"{symbol},{temp_K},{thermo.cp(temp_K) / 1000:.9g},{thermo.h(temp_K) / 1000:.9g},"
                f"{thermo.s(temp_K) / 1000:.9g}"
            )
    OUT.write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
