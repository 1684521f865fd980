"""Write diluted_flames.csv: flat flames of fuels with inert gas in them, and of blends, by their chemistry.

Run by hand (takes some minutes): python tests/reference/make_diluted_flames.py
"""

from pathlib import Path

import cantera as ct

OUT = Path(__file__).with_name("diluted_flames.csv")
PHIS = (0.6, 0.7, 0.8, 0.9, 1.0, 1.1, 1.2, 1.3, 1.4)
FEW = (0.7, 1.0, 1.3)
FUELS = (
    ("CH4:1", PHIS),
    ("CH4:0.6,CO2:0.4", PHIS),
    ("CH4:0.5,N2:0.5", PHIS),
    ("CH4:0.5,CO2:0.5", FEW),
    ("CH4:0.8,CO2:0.2", FEW),
    ("CH4:0.7,CO2:0.2,N2:0.1", FEW),
    ("C3H8:1", FEW),
    ("C3H8:0.5,CO2:0.5", FEW),
    ("C3H8:0.5,N2:0.5", FEW),
    ("CH4:0.5,C3H8:0.5", FEW),
)

HEAD = f"""# quantity: burning velocity of fuel and air at 298.15 K and 1 atm [cm/s], temperature behind the flame [K]
# source: Cantera {ct.__version__} FreeFlame, gri30.yaml (GRI-Mech 3.0), mixture-averaged, air O2 + 3.76 N2
# reference: made by tests/reference/make_diluted_flames.py; propane's level is 20 % too high, ratios are used
# trust: published (computed)
fuel,phi,speed_cm_s,burned_K
"""


def burned_K(gas, fuel, phi):
    gas.TP = 298.15, ct.one_atm
    gas.set_equivalence_ratio(phi, fuel, "O2:1,N2:3.76")
    gas.equilibrate("HP")
    return gas.T


def speeds(fuel, phis):
    """Yield (phi, speed in m/s); each flame starts from its neighbour nearer to 1."""
    for side in (sorted(phi for phi in phis if phi >= 1), sorted((phi for phi in phis if phi < 1), reverse=True)):
        gas = ct.Solution("gri30.yaml")
        flame = None
        for phi in side:
            gas.TP = 298.15, ct.one_atm
            gas.set_equivalence_ratio(phi, fuel, "O2:1,N2:3.76")
            if flame is None:
                flame = ct.FreeFlame(gas, width=0.03)
                flame.transport_model = "mixture-averaged"
                flame.set_refine_criteria(ratio=4, slope=0.08, curve=0.14)
            else:
                flame.inlet.X = gas.X
            flame.solve(loglevel=0, auto=flame.flame.n_points < 20)
            yield phi, flame.velocity[0]


def main():
    lines = []
    for fuel, phis in FUELS:
        for phi, speed in speeds(fuel, phis):
            burned = burned_K(ct.Solution("gri30.yaml"), fuel, phi)
            lines.append(f"{fuel.replace(',', ' ')},{phi},{100 * speed:.2f},{burned:.0f}")
            print(lines[-1], flush=True)
    OUT.write_text(HEAD + "\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
