"""Chemical equilibrium of flame gases at constant pressure: at a given temperature, or at a given enthalpy.

The Gibbs energy is minimised with the iteration of Gordon and McBride: the unknowns are four element potentials, the
total moles and (at given enthalpy) the temperature, whatever the number of species. Gas only: no soot. At equilibrium
that is right for the named fuels up to phi 3 (carbon activity below 1); a real rich flame makes soot on its way there.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import exp, log

from ..constants import GAS_CONSTANT_J_MOLK
from ..errors import require
from .thermo import ELEMENTS, REFERENCE_PRESSURE_PA, SPECIES, require_range

# CH4 lets a very rich flame keep hydrocarbon; larger molecules stay below 100 ppm in the range of this module.
PRODUCTS = ("CO2", "H2O", "N2", "O2", "CO", "H2", "OH", "H", "O", "NO", "CH4")

MIN_TEMP_K, MAX_TEMP_K = 700.0, 4000.0
MAX_ITERATIONS = 60
# Largest change of ln(moles) and ln(T) in the last step; Newton doubles the digits each step, so 1e-7 ends at 1e-14.
# A species below the trace fraction may change by more, in proportion: at 800 K and exactly stoichiometric the oxygen
# potential hangs on such traces alone, and rounding moves them.
TOLERANCE = 1e-7
TRACE_FRACTION = 1e-8

_ATOMS = tuple(SPECIES[name].atoms for name in PRODUCTS)
_INDEX = {name: j for j, name in enumerate(PRODUCTS)}
# For each species the (element, atoms) pairs that are not zero.
_BONDS = tuple(tuple((i, n) for i, n in enumerate(atoms) if n) for atoms in _ATOMS)
_N_ELEMENTS = len(ELEMENTS)


class EquilibriumError(ArithmeticError):
    """The iteration did not reach equilibrium; the message says for which gas."""


@dataclass(frozen=True)
class Equilibrium:
    """Gas at equilibrium: temperature, pressure, moles of every species of PRODUCTS for the atoms that were given."""

    temp_K: float
    pressure_Pa: float
    amounts_mol: tuple


def _scaled(a):
    """Coefficients of h/RT and of g/RT beside those of cp/R, so that no division is left for the loop."""
    return (
        a[0],
        a[1],
        a[2],
        a[3],
        a[4],
        a[1] / 2,
        a[2] / 3,
        a[3] / 4,
        a[4] / 5,
        a[5],
        a[2] / 6,
        a[3] / 12,
        a[4] / 20,
        a[6],
    )


_LOW = tuple(_scaled(SPECIES[name].low) for name in PRODUCTS)
_HIGH = tuple(_scaled(SPECIES[name].high) for name in PRODUCTS)
_MID_TEMP_K = 1000.0


def _properties(temp_K):
    """cp/R, h/RT and g/RT of PRODUCTS, three lists."""
    t = temp_K
    t2 = t * t
    t3, t4, inverse, free = t2 * t, t2 * t2, 1 / t, 1 - log(t)
    cp, h, g = [], [], []
    for a1, a2, a3, a4, a5, h2, h3, h4, h5, a6, g3, g4, g5, a7 in _LOW if t < _MID_TEMP_K else _HIGH:
        cp.append(a1 + a2 * t + a3 * t2 + a4 * t3 + a5 * t4)
        h.append(a1 + h2 * t + h3 * t2 + h4 * t3 + h5 * t4 + a6 * inverse)
        g.append(a1 * free - h2 * t - g3 * t2 - g4 * t3 - g5 * t4 + a6 * inverse - a7)
    return cp, h, g


def solve_linear(matrix):
    """Solution of n linear equations, given as n rows of n coefficients and the right side; rows are overwritten.

    Gaussian elimination with row pivoting. Raises EquilibriumError when the rows are not independent.
    """
    n = len(matrix)
    for k in range(n):
        pivot = max(range(k, n), key=lambda i: abs(matrix[i][k]))
        top = matrix[pivot]
        if not abs(top[k]) > 0:
            raise EquilibriumError("the equations are not independent")
        matrix[pivot], matrix[k] = matrix[k], top
        for i in range(k + 1, n):
            row = matrix[i]
            factor = row[k] / top[k]
            if factor:
                for j in range(k + 1, n + 1):
                    row[j] -= factor * top[j]
    x = [0.0] * n
    for k in range(n - 1, -1, -1):
        row, rest = matrix[k], matrix[k][n]
        for j in range(k + 1, n):
            rest -= row[j] * x[j]
        x[k] = rest / row[k]
    return x


def _major_products(atoms_mol, temp_K):
    """Moles of CO2, H2O, N2, O2, CO, H2 by complete combustion, or by the water-gas balance when oxygen is short."""
    carbon, hydrogen, oxygen, nitrogen = atoms_mol
    water = hydrogen / 2
    missing = 2 * carbon + water - oxygen
    if missing <= 0:
        return {"CO2": carbon, "H2O": water, "N2": nitrogen / 2, "O2": -missing / 2, "CO": 0.0, "H2": 0.0}
    _, _, g = _properties(temp_K)
    k = exp(g[_INDEX["CO2"]] + g[_INDEX["H2"]] - g[_INDEX["CO"]] - g[_INDEX["H2O"]])
    # k (C - x)(m - x) = x (W - m + x) for x moles of CO; bisection, because only a first guess is wanted.
    low, high = max(0.0, missing - water), min(carbon, missing)
    for _ in range(20):
        x = (low + high) / 2
        if k * (carbon - x) * (missing - x) > x * (water - missing + x):
            low = x
        else:
            high = x
    return {"CO2": carbon - x, "H2O": water - missing + x, "N2": nitrogen / 2, "O2": 0.0, "CO": x, "H2": missing - x}


def _first_guess(atoms_mol, temp_K, pressure_ln, least):
    """ln of the moles of PRODUCTS and of their sum: major products, and the traces that balance them.

    least: mole fraction below which a major product is not begun.
    """
    majors = _major_products(atoms_mol, temp_K)
    total = sum(majors.values())
    ln_total = log(total)
    floor = least * total
    _, _, g = _properties(temp_K)

    def potential(name):
        return g[_INDEX[name]] + log(max(majors[name], floor)) - ln_total + pressure_ln

    if majors["O2"] > 0:
        oxygen = potential("O2") / 2
        carbon, hydrogen = potential("CO2") - 2 * oxygen, (potential("H2O") - oxygen) / 2
    else:
        oxygen = potential("CO2") - potential("CO")
        carbon, hydrogen = potential("CO") - oxygen, potential("H2") / 2
    potentials = carbon, hydrogen, oxygen, potential("N2") / 2
    guess = []
    for name, bonds, g_j in zip(PRODUCTS, _BONDS, g):
        trace = sum(n * potentials[i] for i, n in bonds) - g_j - pressure_ln + ln_total
        trace = min(max(trace, ln_total - 60), log(floor * 30))
        guess.append(log(max(majors[name], floor)) if majors.get(name) else trace)
    return guess, ln_total


def _equilibrium(atoms_mol, pressure_Pa, temp_K, enthalpy_J):
    """Iterate from temp_K; the temperature stays there when enthalpy_J is None."""
    # Within 1e-9 of stoichiometric and cold, the first guess is too far from what little CO or O2 there is.
    for least in (1e-3, 1e-6, 1e-9):
        found = _iterated(atoms_mol, pressure_Pa, temp_K, enthalpy_J, least)
        if found is not None:
            return found
    raise EquilibriumError(
        f"no equilibrium found for C, H, O, N = {atoms_mol} mol at {pressure_Pa:g} Pa, "
        + (f"{temp_K:g} K" if enthalpy_J is None else f"enthalpy {enthalpy_J:g} J")
    )


def _iterated(atoms_mol, pressure_Pa, temp_K, enthalpy_J, least):
    """The Equilibrium reached from one first guess, or None."""
    pressure_ln = log(pressure_Pa / REFERENCE_PRESSURE_PA)
    ln_n, ln_total = _first_guess(atoms_mol, temp_K, pressure_ln, least)
    at_enthalpy = enthalpy_J is not None
    m = _N_ELEMENTS
    size = m + 2 if at_enthalpy else m + 1
    cp, h, g = _properties(temp_K)
    for _ in range(MAX_ITERATIONS):
        n = [exp(value) for value in ln_n]
        total = exp(ln_total)
        shift = pressure_ln - ln_total
        mu = [g_j + value + shift for g_j, value in zip(g, ln_n)]
        rows = [[0.0] * (size + 1) for _ in range(size)]
        sum_row = rows[m]
        for n_j, mu_j, h_j, bonds in zip(n, mu, h, _BONDS):
            for i, a in bonds:
                an = a * n_j
                row = rows[i]
                for k, b in bonds:
                    row[k] += an * b
                row[m] += an
                row[size] += an * mu_j
                if at_enthalpy:
                    row[m + 1] += an * h_j
        for i in range(m):
            sum_row[i] = rows[i][m]
            rows[i][size] += atoms_mol[i] - rows[i][m]
        n_sum = sum(n)
        nmu = [n_j * mu_j for n_j, mu_j in zip(n, mu)]
        sum_row[m] = n_sum - total
        sum_row[size] = total - n_sum + sum(nmu)
        if at_enthalpy:
            energy_row = rows[m + 1]
            for i in range(m):
                energy_row[i] = rows[i][m + 1]
            nh = [n_j * h_j for n_j, h_j in zip(n, h)]
            energy = sum(nh)
            energy_row[m] = sum_row[m + 1] = energy
            energy_row[m + 1] = sum(n_j * (cp_j + h_j * h_j) for n_j, cp_j, h_j in zip(n, cp, h))
            energy_row[size] = enthalpy_J / (GAS_CONSTANT_J_MOLK * temp_K) - energy + sum(a * b for a, b in zip(nmu, h))
        try:
            x = solve_linear(rows)
        except EquilibriumError:
            break
        step_total, step_temp = x[m], x[m + 1] if at_enthalpy else 0.0
        steps = []
        for mu_j, h_j, bonds in zip(mu, h, _BONDS):
            step = step_total + h_j * step_temp - mu_j
            for i, a in bonds:
                step += a * x[i]
            steps.append(step)
        # Gordon and McBride, eqs 3.1 to 3.3: at most a factor e**0.4 in T and total moles, e**2 in a major species, and
        # no trace beyond a mole fraction of 1e-4 in one step.
        largest = max(5 * abs(step_temp), 5 * abs(step_total))
        damping = 1.0
        for step, value in zip(steps, ln_n):
            if value - ln_total > -18.420681:
                largest = max(largest, step)
            elif step > 0:
                damping = min(damping, abs((ln_total - value - 9.2103404) / (step - step_total or 1e-300)))
        if largest > 2:
            damping = min(damping, 2 / largest)
        ln_n = [value + damping * step for value, step in zip(ln_n, steps)]
        ln_total += damping * step_total
        if at_enthalpy:
            temp_K *= exp(damping * step_temp)
            if not 200 < temp_K < 6000:
                break
            cp, h, g = _properties(temp_K)
        change = max(abs(step) * min(1.0, n_j / (TRACE_FRACTION * total)) for step, n_j in zip(steps, n))
        if damping == 1 and max(change, abs(step_total), abs(step_temp)) < TOLERANCE:
            return Equilibrium(temp_K, pressure_Pa, tuple((name, exp(value)) for name, value in zip(PRODUCTS, ln_n)))
    return None


def _require_gas(atoms_mol, pressure_Pa):
    carbon, _, oxygen, _ = atoms_mol
    require(
        all(0 < value < float("inf") for value in atoms_mol),
        "atoms_mol",
        atoms_mol,
        "must hold C, H, O and N, each above 0 mol",
    )
    # 1 % of slack, because propylene at phi 3 holds exactly as much O as C.
    require(oxygen >= 0.99 * carbon, "atoms_mol", atoms_mol, "must hold at least as much O as C: no soot is modelled")
    require_range("pressure_Pa", pressure_Pa, 1e4, 1e6)


@lru_cache(maxsize=1024)
def equilibrium_at_temperature(atoms_mol, temp_K, pressure_Pa):
    """Gas of least Gibbs energy at a given temperature and pressure.

        minimise sum n_j (g_j(T) + R T ln(x_j p/p0))  with the atoms of C, H, O, N kept

    Arguments:
        atoms_mol     C, H, O, N in the gas     [mol]   each above 0
        temp_K        temperature               [K]     700 to 4000
        pressure_Pa   absolute pressure         [Pa]    1e4 to 1e6
    Returns:
        Equilibrium   moles of each species of PRODUCTS
    Raises:
        InputError          a value outside its limit
        EquilibriumError    the iteration did not converge
    Assumes:
        ideal gas, no soot
    Source:
        Gordon and McBride, NASA RP-1311 part I (1994), chapters 2 and 3 (memory)
    Checked by:
        tests/reference/equilibrium.csv, tests/reference/flue.csv
    """
    require_range("temp_K", temp_K, MIN_TEMP_K, MAX_TEMP_K)
    _require_gas(atoms_mol, pressure_Pa)
    return _equilibrium(atoms_mol, pressure_Pa, temp_K, None)


@lru_cache(maxsize=1024)
def equilibrium_at_enthalpy(atoms_mol, enthalpy_J, pressure_Pa):
    """Gas of equilibrium that holds a given enthalpy: an adiabatic flame when it is that of the unburned mixture.

        as equilibrium_at_temperature, with sum n_j h_j(T) = H

    Arguments:
        atoms_mol     C, H, O, N in the gas     [mol]   each above 0
        enthalpy_J    H, formation included     [J]
        pressure_Pa   absolute pressure         [Pa]    1e4 to 1e6
    Returns:
        Equilibrium   temperature, and moles of each species of PRODUCTS
    Raises:
        InputError          a value outside its limit
        EquilibriumError    the iteration did not converge, or ended outside 700 to 4000 K
    Assumes:
        ideal gas, no soot
    Source:
        Gordon and McBride, NASA RP-1311 part I (1994), chapters 2 and 3 (memory)
    Checked by:
        tests/reference/equilibrium.csv, tests/reference/flames.csv
    """
    require(abs(enthalpy_J) < float("inf"), "enthalpy_J", enthalpy_J, "must be a finite number")
    _require_gas(atoms_mol, pressure_Pa)
    found = _equilibrium(atoms_mol, pressure_Pa, _first_temp_K(atoms_mol, enthalpy_J), enthalpy_J)
    if not MIN_TEMP_K <= found.temp_K <= MAX_TEMP_K:
        raise EquilibriumError(
            f"the gas with {enthalpy_J:g} J ends at {found.temp_K:.0f} K, outside {MIN_TEMP_K:g} to {MAX_TEMP_K:g} K"
        )
    return found


def _first_temp_K(atoms_mol, enthalpy_J):
    """Temperature of the major products with this enthalpy, from their heat capacity at 1800 K."""
    start_K = 1800.0
    cp, h, _ = _properties(start_K)
    majors = _major_products(atoms_mol, start_K)
    energy = sum(amount * h[_INDEX[name]] for name, amount in majors.items())
    capacity = sum(amount * cp[_INDEX[name]] for name, amount in majors.items())
    temp_K = start_K * (1 + (enthalpy_J / (GAS_CONSTANT_J_MOLK * start_K) - energy) / capacity)
    return min(max(temp_K, MIN_TEMP_K), 2600.0)
