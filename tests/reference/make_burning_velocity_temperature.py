"""Write burnercalc/data/burning_velocity_temperature.csv: how burning velocity grows with mixture temperature.

Run by hand (takes a quarter of an hour): python tests/reference/make_burning_velocity_temperature.py
"""

from math import log
from pathlib import Path

import cantera as ct

OUT = Path(__file__).parents[2] / "burnercalc" / "data" / "burning_velocity_temperature.csv"
TEMPS_K = (298.15, 350.0, 400.0, 500.0, 600.0, 700.0)
PHIS = (0.6, 0.8, 1.0, 1.2, 1.4)

HEAD = f"""# quantity: exponent n in S_L(T)/S_L(298.15 K) = (T/298.15)^n, unburnt mixture of fuel and air at 1 atm [-]
# source: Cantera {ct.__version__} FreeFlame, gri30.yaml (GRI-Mech 3.0), mixture-averaged, air O2 + 3.76 N2
# reference: made by tests/reference/make_burning_velocity_temperature.py; ratios only, propane's level is 20 % too high
# trust: published (computed)
fuel,phi,temp_K,exponent
"""


def burning_velocity(species, phi, temp_K):
    gas = ct.Solution("gri30.yaml")
    gas.TP = temp_K, ct.one_atm
    gas.set_equivalence_ratio(phi, species, "O2:1,N2:3.76")
    flame = ct.FreeFlame(gas, width=0.03)
    flame.transport_model = "mixture-averaged"
    flame.set_refine_criteria(ratio=3, slope=0.06, curve=0.10)
    flame.solve(loglevel=0, auto=True)
    return flame.velocity[0]


def main():
    lines = []
    for fuel, species in (("methane", "CH4"), ("propane", "C3H8")):
        for phi in PHIS:
            cold = burning_velocity(species, phi, TEMPS_K[0])
            for temp_K in TEMPS_K[1:]:
                speed = burning_velocity(species, phi, temp_K)
                lines.append(f"{fuel},{phi},{temp_K:g},{log(speed / cold) / log(temp_K / TEMPS_K[0]):.4f}")
                print(fuel, phi, temp_K, round(cold, 4), round(speed, 4), lines[-1], flush=True)
    OUT.write_text(HEAD + "\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
