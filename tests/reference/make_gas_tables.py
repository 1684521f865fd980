"""Write burnercalc/data/gas_heat_capacity_ratio.csv and lp_saturation.csv from CoolProp.

Run by hand: python tests/reference/make_gas_tables.py
"""

from importlib.metadata import version
from pathlib import Path

from CoolProp.CoolProp import PropsSI

DATA = Path(__file__).parents[2] / "burnercalc" / "data"
FLUIDS = {
    "CH4": "Methane",
    "C2H6": "Ethane",
    "C3H6": "Propylene",
    "C3H8": "Propane",
    "C4H10": "n-Butane",
    "iC4H10": "IsoButane",
    "CO2": "CarbonDioxide",
    "N2": "Nitrogen",
}
SOURCE = f"CoolProp {version('CoolProp')}, made by tests/reference/make_gas_tables.py"


def main():
    lines = []
    for name, fluid in FLUIDS.items():
        ideal = "T", 288.706, "D", 1e-6, fluid
        lines.append(f"{name},{PropsSI('CPMASS', *ideal) / PropsSI('CVMASS', *ideal):.4f}")
    (DATA / "gas_heat_capacity_ratio.csv").write_text(
        "# quantity: cp/cv of the gas at 60 degF, ideal-gas limit [-]\n"
        f"# source: {SOURCE}\n# trust: published\nspecies,ratio\n" + "\n".join(lines) + "\n",
        encoding="utf-8",
    )
    lines = []
    for name in ("C3H8", "C4H10", "iC4H10", "C3H6"):
        for temp_K in range(200, 345, 5):

            def prop(key, q):
                return PropsSI(key, "T", temp_K, "Q", q, FLUIDS[name])

            latent = prop("HMASS", 1) - prop("HMASS", 0)
            lines.append(f"{name},{temp_K},{prop('P', 0):.6g},{prop('D', 0):.5g},{latent:.5g},{prop('CPMASS', 0):.5g}")
    (DATA / "lp_saturation.csv").write_text(
        "# quantity: boiling liquid of the LP gases: pressure, density, heat of vaporisation, liquid heat capacity\n"
        f"# source: {SOURCE}\n# reference: pure fluids; commercial propane stands up to 15 % higher in pressure\n"
        "# trust: published\nspecies,temp_K,pressure_Pa,liquid_density_kg_m3,latent_J_kg,liquid_heat_capacity_J_kgK\n"
        + "\n".join(lines)
        + "\n",
        encoding="utf-8",
    )


if __name__ == "__main__":
    main()
