"""Write burnercalc/data/metal_heat.csv: heat content of the work metals over temperature.

Run by hand with cantera installed: python tests/reference/make_metal_heat.py. Pure metals come from the NASA condensed
species of cantera, carbon steel from the EN 1993-1-2 heat capacity, alloys by adding up their parts (Kopp).
"""

from math import log
from pathlib import Path

import cantera as ct

SPECIES = {s.name: s for s in ct.Species.list_from_file("nasa_condensed.yaml")}
MASS = {"Fe": 55.845, "Al": 26.9815385, "Cu": 63.546, "Zn": 65.38}
START_C = 25.0


def nasa(name, element, temp_C):
    """Enthalpy of a species [kJ/kg], absolute."""
    return SPECIES[name].thermo.h(temp_C + 273.15) / 1e3 / MASS[element]


def pure(element, phases, melt_C, temps_C):
    """Rows (temp_C, kJ/kg above 25 degC); phases = ((name, up to temp_C), ...), the last is the liquid."""
    zero = nasa(phases[0][0], element, START_C)
    solids, liquid = phases[:-1], phases[-1][0]
    rows = []
    for temp in sorted({t for t in temps_C if t < melt_C} | {melt_C}):
        name = next((n for n, top in solids if temp <= top), solids[-1][0])
        rows.append((temp, nasa(name, element, temp) - zero))
    for temp in [melt_C] + [t for t in temps_C if t > melt_C]:
        rows.append((temp, nasa(liquid, element, temp) - zero))
    return rows


def steel_solid(temp_C):
    """Integral of the EN 1993-1-2 heat capacity from 25 degC [kJ/kg]; 425 J/kgK below 20 degC, 650 above 900 degC."""

    def to(t):
        total = 425 * min(t, 20) - 425 * 20 if t < 20 else 0.0
        t0 = 20.0
        if t > t0:
            u = min(t, 600.0)
            total += (
                425 * (u - t0)
                + 0.773 / 2 * (u**2 - t0**2)
                - 1.69e-3 / 3 * (u**3 - t0**3)
                + 2.22e-6 / 4 * (u**4 - t0**4)
            )
        if t > 600:
            u = min(t, 735.0)
            total += 666 * (u - 600) + 13002 * log((738 - 600) / (738 - u))
        if t > 735:
            u = min(t, 900.0)
            total += 545 * (u - 735) + 17820 * log((u - 731) / (735 - 731))
        if t > 900:
            total += 650 * (t - 900)
        return total / 1e3

    return to(temp_C) - to(START_C)


GRID = [-50, 0, 25] + list(range(50, 1801, 50))
IRON = (("Fe(a)", 910.85), ("Fe(c)", 1391.85), ("Fe(d)", 1535.85), ("Fe(L)", 9999))
IRON_PEAK = [740, 760, 770, 780, 910.85, 911]  # Curie peak and change of lattice


def iron_solid(temp_C):
    name = next(n for n, top in IRON if temp_C <= top)
    return nasa(name, "Fe", temp_C) - nasa("Fe(a)", "Fe", START_C)


def zinc_solid(temp_C):
    """Zinc in solid solution: crystal to its melting point, then on with its last heat capacity."""
    top = 419.5
    zero = nasa("Zn(cr)", "Zn", START_C)
    if temp_C <= top:
        return nasa("Zn(cr)", "Zn", temp_C) - zero
    slope = nasa("Zn(cr)", "Zn", top) - nasa("Zn(cr)", "Zn", top - 1)
    return nasa("Zn(cr)", "Zn", top) - zero + slope * (temp_C - top)


def copper_solid(temp_C):
    return nasa("Cu(cr)", "Cu", temp_C) - nasa("Cu(cr)", "Cu", START_C)


def tin_solid(temp_C):
    return 0.23 * (temp_C - START_C)  # kJ/kgK, memory


def alloy(solid, solidus_C, liquidus_C, latent_kJ_kg, liquid_kJ_kgK, top_C=1800, extra=()):
    """Rows of an alloy: solid to the solidus, straight through melting, then liquid of constant heat capacity."""
    temps = sorted(t for t in set(GRID) | set(extra) if t <= top_C)
    rows = [(t, solid(t)) for t in temps if t < solidus_C] + [(solidus_C, solid(solidus_C))]
    slope = solid(solidus_C) - solid(solidus_C - 1)
    melted = rows[-1][1] + latent_kJ_kg + 0.5 * (slope + liquid_kJ_kgK) * (liquidus_C - solidus_C)
    liquid = [liquidus_C] + [t for t in temps if t > liquidus_C]
    return rows + [(t, melted + liquid_kJ_kgK * (t - liquidus_C)) for t in liquid]


def cu_latent():
    return nasa("Cu(L)", "Cu", 1084.62) - nasa("Cu(cr)", "Cu", 1084.62)


def main():
    zn_latent = nasa("Zn(L)", "Zn", 419.5) - nasa("Zn(cr)", "Zn", 419.5)
    tables = {
        "steel": alloy(
            steel_solid,
            1450,
            1510,
            247,
            0.824,
            extra=[620, 640, 660, 680, 690, 710, 720, 725, 730, 735, 740, 745, 760, 770, 780],
        ),
        "iron": alloy(iron_solid, 1150, 1250, 230, 0.85, extra=IRON_PEAK),
        "aluminium": pure("Al", (("AL(cr)", 660.46), ("AL(L)", 9999)), 660.3, [t for t in GRID if t <= 1200]),
        "copper": pure("Cu", (("Cu(cr)", 1084.85), ("Cu(L)", 9999)), 1084.6, [t for t in GRID if t <= 1500]),
        "brass": alloy(
            lambda t: 0.65 * copper_solid(t) + 0.35 * zinc_solid(t),
            905,
            930,
            0.65 * cu_latent() + 0.35 * zn_latent,
            0.65 * 0.516 + 0.35 * 0.480,
            top_C=1100,
        ),
        "bronze": alloy(
            lambda t: 0.9 * copper_solid(t) + 0.1 * tin_solid(t),
            850,
            1000,
            0.9 * cu_latent() + 0.1 * 60.2,
            0.9 * 0.516 + 0.1 * 0.25,
            top_C=1400,
        ),
    }
    lines = [
        "# quantity:  heat content of the work metals above 25 degC, straight lines between the rows",
        "# reference: 25 degC, per kg; pure metals melt at one temperature, alloys from solidus to liquidus",
        "# source:    nasa-condensed (iron solid, aluminium, copper, zinc), en-1993-1-2 (steel to 1200 degC), memory",
        "# source 2:  (latent heat and liquid of steel and cast iron, tin); brass, bronze by their parts (Kopp)",
        f"# written:   by tests/reference/make_metal_heat.py with cantera {ct.__version__}",
        "# trust:     published for aluminium, copper and solid iron; steel polynomial memory; alloys +-8 %",
        "key,temp_C,heat_kJ_kg",
    ]
    for key, rows in tables.items():
        lines += [f"{key},{temp:g},{heat:.1f}" for temp, heat in rows]
    target = Path(__file__).parents[2] / "burnercalc" / "data" / "metal_heat.csv"
    target.write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
