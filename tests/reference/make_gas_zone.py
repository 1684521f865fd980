"""Write gas_zone.csv and gas_zone_others.csv: a chamber of plain wall heated by a stirred gas, by Cantera and scipy.

Wall: conductivity 1 W/mK, thickness of the row, 10 W/m2K outside; opening of no depth, black. Gas emissivity: gray
gases of Smith, Shen and Friedman (1982) written once more. Composition at equilibrium, below 1700 K that of 1700 K.
Gas and gray walls exchange heat gray gas by gray gas, with weights at the temperature of what radiates. The second
table has what others take: Leckner's gas with every reflection; Hottel's absorptivity and (1 + e_wall) / 2; gray gases
with all weights at the temperature of the gas; one gray gas of the same emissivity.

    .venv/bin/python tests/reference/make_gas_zone.py
"""

import sys
from math import exp
from pathlib import Path

import cantera as ct
import numpy as np
from make_combustion import FUELS, phases
from scipy.optimize import brentq

sys.path.insert(0, str(Path(__file__).parents[1]))
from leckner import leckner_exchange

SIGMA, AIR_K, PRESSURE_Pa, WALL_E = 5.670374419e-8, 294.15, 101325.0, 0.6
WATER_LATENT_J_mol = 44.004e3  # at 25 degC, IAPWS
GRAY = {
    1: (
        (0.4303, 7.055, 178.1),
        (
            (0.5150, -2.303e-4, 0.9779e-7, -1.494e-11),
            (0.07749, 3.399e-4, -2.297e-7, 3.770e-11),
            (0.1907, -1.824e-4, 0.5608e-7, -0.5122e-11),
        ),
    ),
    2: (
        (0.4201, 6.516, 131.9),
        (
            (0.6508, -5.551e-4, 3.029e-7, -5.353e-11),
            (-0.02504, 6.112e-4, -3.882e-7, 6.528e-11),
            (0.2718, -3.118e-4, 1.221e-7, -1.612e-11),
        ),
    ),
}
CASES = (
    # fuel, phi, volume m3, area m2, thickness m, opening m2, film, wall K, firing W
    ("propane", 1.0, 0.0065, 0.22, 0.08, 0.008, 20.0, 1505.0, 29300.0),
    ("propane", 1.0, 0.0065, 0.22, 0.08, 0.008, 80.0, 1505.0, 12000.0),
    ("propane", 0.9, 0.05, 0.85, 0.15, 0.02, 40.0, 1573.15, 150000.0),
    ("natural_gas", 0.95, 0.0065, 0.22, 0.08, 0.004, 40.0, 1505.0, 29300.0),
    ("natural_gas", 1.15, 0.02, 0.46, 0.20, 0.0, 40.0, 1650.0, 60000.0),
    ("butane", 1.05, 0.003, 0.13, 0.06, 0.002, 60.0, 1300.0, 9000.0),
    ("natural_gas", 0.5, 0.02, 0.46, 0.10, 0.002, 40.0, 1200.0, 50000.0),
    ("butane", 0.96, 0.0065, 0.22, 0.08, 0.008, 40.0, 1588.706, 29300.0),
)
OTHERS = (
    # fuel, phi, volume m3, area m2, thickness m, opening m2, wall K, firing W; the second is butane at 2400 degF
    ("propane", 0.96, 0.0065, 0.22, 0.09, 0.0077, 1505.37, 29300.0),
    ("butane", 0.96, 0.0065, 0.22, 0.09, 0.0077, 1588.706, 29300.0),
    ("propane", 0.96, 0.0065, 0.22, 0.09, 0.0077, 1144.26, 20000.0),
    ("natural_gas", 0.96, 0.14, 1.62, 0.20, 0.039, 1505.37, 117000.0),
    ("propane", 0.96, 0.00138, 0.076, 0.09, 0.0026, 1505.37, 7300.0),
    ("propane", 1.10, 0.0065, 0.22, 0.09, 0.0077, 1505.37, 29300.0),
    ("natural_gas", 0.85, 0.0065, 0.22, 0.09, 0.0077, 1450.0, 29300.0),
)


class Gas:
    def __init__(self, fuel, phi):
        everything, self.products = phases()
        burning = {part.split()[0]: float(part.split()[1]) for part in FUELS[fuel].split(",")}
        atoms = {e: sum(x * everything.species(n).composition.get(e, 0) for n, x in burning.items()) for e in "CHON"}
        air = (atoms["C"] + atoms["H"] / 4 - atoms["O"] / 2) / 0.2095 / phi
        full = {"CO2": atoms["C"], "H2O": atoms["H"] / 2}

        def enthalpy(phase, part, temp_K):
            phase.TPX = temp_K, PRESSURE_Pa, part
            return phase.enthalpy_mole / 1000 * sum(part.values())

        # Gross heating value from enthalpies: fuel and oxygen against CO2, liquid water and nitrogen at 25 degC.
        oxygen = {"O2": atoms["C"] + atoms["H"] / 4 - atoms["O"] / 2}
        self.gross = (
            enthalpy(everything, burning, 298.15)
            + enthalpy(everything, oxygen, 298.15)
            - enthalpy(everything, {**full, "N2": atoms["N"] / 2}, 298.15)
            + full["H2O"] * WATER_LATENT_J_mol
        )
        mixed = dict(burning)
        for name, x in (("O2", 0.2095 * air), ("N2", 0.7905 * air)):
            mixed[name] = mixed.get(name, 0) + x
        self.inlet = enthalpy(everything, mixed, AIR_K)
        everything.TPX = 300, PRESSURE_Pa, mixed
        self.mass = everything.mean_molecular_weight * sum(mixed.values()) / 1000  # kg per mole of fuel
        self.atoms = {e: sum(x * everything.n_atoms(n, e) for n, x in mixed.items()) for e in "CHON"}
        self.at(1700.0)
        self.frozen = self.products.X.copy()
        self.flame_K = brentq(lambda t: self.available(t), 1000.0, 3000.0, xtol=1e-6)
        if self.flame_K < 1700:
            for _ in range(40):
                self.at(self.flame_K)
                self.frozen = self.products.X.copy()
                self.flame_K = brentq(lambda t: self.available(t), 1000.0, 3000.0, xtol=1e-6)
        self.products.X = self.frozen
        names = dict(zip(self.products.species_names, self.products.X))
        self.water, self.carbon_dioxide = names["H2O"], names["CO2"]

    def at(self, temp_K):
        a = self.atoms
        self.products.TPX = (
            temp_K,
            PRESSURE_Pa,
            {"N2": a["N"] / 2, "CO": a["C"], "H2": a["H"] / 2, "O2": (a["O"] - a["C"]) / 2},
        )
        self.products.equilibrate("TP", solver="gibbs", rtol=1e-11, max_steps=20000)

    def available(self, temp_K):
        if temp_K < 1700:
            self.products.TPX = temp_K, PRESSURE_Pa, self.frozen
        else:
            self.at(temp_K)
        return (self.inlet - self.products.enthalpy_mass * self.mass) / self.gross

    def grays(self, temp_K, path_m):
        """[(weight at this temperature, emissivity of the gray gas)]."""
        path = (self.water + self.carbon_dioxide) * path_m
        share = min(max(self.water / self.carbon_dioxide, 1), 2) - 1
        return [
            (part * np.polyval(b[::-1], temp_K), 1 - exp(-k * path))
            for ratio, part in ((1, 1 - share), (2, share))
            for k, b in zip(*GRAY[ratio])
        ]

    def emissivity(self, temp_K, path_m):
        return sum(weight * e for weight, e in self.grays(temp_K, path_m))

    def factor(self, temp_K, path_m):
        return sum(weight / (1 / e + 1 / WALL_E - 1) for weight, e in self.grays(temp_K, path_m))


def gray_by_gray(gas, path, tg, tw):
    return SIGMA * (gas.factor(tg, path) * tg**4 - gas.factor(tw, path) * tw**4)


def leckner(gas, path, tg, tw):
    return leckner_exchange(gas.water, gas.carbon_dioxide, path, tg, tw, WALL_E)


def hottel(gas, path, tg, tw):
    absorbed = gas.emissivity(tw, path * tw / tg) * (tg / tw) ** 0.5
    return SIGMA * (1 + WALL_E) / 2 * (gas.emissivity(tg, path) * tg**4 - absorbed * tw**4)


def at_gas(gas, path, tg, tw):
    return SIGMA * gas.factor(tg, path) * (tg**4 - tw**4)


def one_gray(gas, path, tg, tw):
    return SIGMA * (tg**4 - tw**4) / (1 / gas.emissivity(tg, path) + 1 / WALL_E - 1)


def solve(gas, radiated, volume, area, thickness, opening, film, wall_K, rate):
    path = 3.6 * volume / area

    def exchange(tg, tw):
        return area * (radiated(gas, path, tg, tw) + film * (tg - tw))

    def losses(tw):
        return area * (tw - AIR_K) / (thickness / 1.0 + 1 / 10.0) + opening * SIGMA * (tw**4 - AIR_K**4)

    hold_gas = brentq(lambda tg: exchange(tg, wall_K) - losses(wall_K), wall_K, gas.flame_K)
    hold = losses(wall_K) / gas.available(hold_gas)

    def gas_at(tw):
        return brentq(lambda tg: exchange(tg, tw) - rate * gas.available(tg), tw, gas.flame_K)

    fixed_gas = gas_at(wall_K)
    reached = brentq(lambda tw: rate * gas.available(gas_at(tw)) - losses(tw), 600.0, gas.flame_K - 1)
    return hold_gas, hold, fixed_gas, gas.available(fixed_gas), reached, gas_at(reached)


def main():
    lines = []
    for fuel, phi, *chamber in CASES:
        gas = Gas(fuel, phi)
        hold_gas, hold, fixed_gas, available, reached, reached_gas = solve(gas, gray_by_gray, *chamber)
        lines.append(
            f"{fuel},{phi},{','.join(map(str, chamber))},{gas.flame_K:.2f},"
            f"{hold_gas:.2f},{hold:.2f},{fixed_gas:.2f},{available:.5f},{reached:.2f},{reached_gas:.2f}"
        )
        print(lines[-1], flush=True)
    head = (
        "# reference: gas, air, shop 294.15 K, 101325 Pa; wall flat, 1 W/mK, 10 W/m2K outside; opening black\n"
        f"# source:    cantera {ct.__version__} (nasa_gas.yaml) and scipy, by make_gas_zone.py\n"
    )
    Path(__file__).with_name("gas_zone.csv").write_text(
        "# quantity:  one stirred zone of burned gas in a chamber of plain wall: to hold a wall temperature;\n"
        "#            at a firing rate with the wall at it; what that rate brings the empty chamber to\n"
        + head
        + "fuel,phi,volume_m3,area_m2,thickness_m,opening_m2,film_W_m2K,wall_K,rate_W,flame_K,"
        "hold_gas_K,hold_W,fixed_gas_K,fixed_available,reached_wall_K,reached_gas_K\n" + "\n".join(lines) + "\n",
        encoding="utf-8",
    )
    lines = []
    for fuel, phi, *walls, wall_K, rate in OTHERS:
        gas = Gas(fuel, phi)
        for radiated in (leckner, hottel, at_gas, one_gray):
            _, hold, _, available, reached, _ = solve(gas, radiated, *walls, 40.0, wall_K, rate)
            lines.append(
                f"{radiated.__name__},{fuel},{phi},{','.join(map(str, walls))},{wall_K},{rate},"
                f"{hold:.1f},{available:.4f},{reached:.1f}"
            )
            print(lines[-1], flush=True)
    Path(__file__).with_name("gas_zone_others.csv").write_text(
        "# quantity:  as gas_zone.csv, film 40 W/m2K, for other ways to reckon the radiation of the gas\n"
        + head
        + "radiation,fuel,phi,volume_m3,area_m2,thickness_m,opening_m2,wall_K,rate_W,hold_W,fixed_available,"
        "reached_wall_K\n" + "\n".join(lines) + "\n",
        encoding="utf-8",
    )


if __name__ == "__main__":
    main()
