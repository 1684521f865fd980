"""How fast a flat flame eats into the mixture of fuel and air: the figure behind flashback, blow-off and quenching.

Published shapes over the equivalence ratio, scaled to later measurements of their peaks, so the result carries a band.
"""

from functools import lru_cache
from math import exp, sqrt

from ..constants import ATM_PA
from ..errors import require
from ..tables import by_key, interpolate, read_table
from .band import Band
from .combustion import flame_temp_K
from .thermo import fractions, require_range

REFERENCE_TEMP_K = 298.15

# The shapes were fitted to measurements within 0.6 to 1.4; they are evaluated, with the band of the nearer end doubled,
# out to PHI_RANGE (about the flammable range) and refused beyond.
PHI_RANGE = (0.5, 1.6)
TEMP_RANGE_K = (220.0, 2000.0)
BAND_PHIS = (0.5, 0.6, 0.8, 0.9, 1.2, 1.4, 1.6)

# Rich methane burns slower than its published shape, as measured and computed: factor from phi 1.2 on, held beyond 1.4;
# fitted to tests/reference/diluted_flames.csv.
RICH_METHANE = ((1.2, 1.3, 1.4), (1.0, 0.90, 0.77))

# Atoms of oxygen gas per mole: heat shares of a fuel are its shares of the oxygen, within 1 % for these species (calc).
OXYGEN_MOL_MOL = {"CH4": 2.0, "C2H6": 3.5, "C3H6": 4.5, "C3H8": 5.0, "C4H10": 6.5, "iC4H10": 6.5}

# Inert gas in the fuel slows the flame by cooling it. Half the activation temperature [K], and that of methane from phi
# 1.3 on, where the flame changes its kind; fitted to tests/reference/diluted_flames.csv. Carbon dioxide also takes part
# in the burning, so it slows more.
COOLING_K = {"N2": (11500.0, 16000.0), "CO2": (14500.0, 17000.0)}
COOLING_PHIS = (1.2, 1.3)
COOLING_BAND = 0.3  # of what the flame loses in speed: what the fit is off at most


@lru_cache(maxsize=512)
def _exponents(like, equivalence_ratio):
    """Temperatures and exponents there, at one equivalence ratio."""
    found = {(row["phi"], row["temp_K"]): row["exponent"]
             for row in read_table("burning_velocity_temperature") if row["fuel"] == like}  # fmt: skip
    phis, temps = (sorted(set(column)) for column in zip(*found))
    phi = min(max(equivalence_ratio, phis[0]), phis[-1])
    return temps, [interpolate(phi, phis, [found[phi, temp] for phi in phis]) for temp in temps]


def temperature_exponent(like, equivalence_ratio, temp_K):
    """Exponent n in S_L(T) = S_L(298.15 K) (T/298.15 K)^n, straight lines between computed points.

    Arguments:
        like                "methane" or "propane"
        equivalence_ratio   phi                        [-]   the end value holds outside 0.6 to 1.4
        temp_K              unburnt mixture            [K]   the end value holds outside 350 to 700 K
    Returns:
        float               n                          [-]
    Source:
        Cantera flames with GRI-Mech 3.0, data/burning_velocity_temperature.csv (published, computed)
    Checked by:
        tests/reference/burning_velocity_temperature.csv
    """
    temps, exponents = _exponents(like, equivalence_ratio)
    return interpolate(min(max(temp_K, temps[0]), temps[-1]), temps, exponents)


def _shape(row, phi):
    return row["factor"] * phi ** row["exponent"] * exp(-row["width"] * (phi - row["centre"]) ** 2)


def peak_equivalence_ratio(species):
    """Equivalence ratio of the fastest flame [-], where exponent/phi = 2 width (phi - centre)."""
    row = by_key("burning_velocity", "species")[species]
    centre = row["centre"]
    return (centre + sqrt(centre * centre + 2 * row["exponent"] / row["width"])) / 2


def species_burning_velocity_m_s(species, equivalence_ratio, temp_K=REFERENCE_TEMP_K, pressure_Pa=ATM_PA):
    """Laminar burning velocity of one fuel gas with air, with its band.

        S_L = S_peak f(phi)/f(phi_peak) (T/298.15)^n(phi, T) (p/101325)^b,   f = W phi^eta exp(-xi (phi - phi0)^2)

    Arguments:
        species             CH4, C2H6, C3H6, C3H8, C4H10 or iC4H10
        equivalence_ratio   phi                        [-]    0.5 to 1.6 (fitted 0.6 to 1.4)
        temp_K              unburnt mixture            [K]    220 to 2000 (computed 298 to 700)
        pressure_Pa         absolute                   [Pa]   above 0
    Returns:
        Band                S_L                        [m/s]
    Raises:
        InputError          a value outside its limit
    Assumes:
        dry air; no burnt gas mixed in
    Source:
        shapes of Gulder 1984 and Lieuwen 2003 scaled to later peak measurements, data/burning_velocity.csv (memory);
        rich methane by Cantera's flames (published, computed)
    Checked by:
        tests/reference/burning_velocity.csv
    """
    return _species_over_temp(species, equivalence_ratio, pressure_Pa)(temp_K)


def _species_over_temp(species, equivalence_ratio, pressure_Pa):
    """species_burning_velocity_m_s as a function of temp_K."""
    require_range("equivalence_ratio", equivalence_ratio, *PHI_RANGE)
    require(0 < pressure_Pa < 1e8, "pressure_Pa", pressure_Pa, "must be above 0 and below 1e8 Pa")
    row = by_key("burning_velocity", "species")[species]
    cold, spread = _at_reference(species, equivalence_ratio)
    like, by_pressure = row["temperature_like"], (pressure_Pa / ATM_PA) ** row["pressure_exponent"]

    def at(temp_K):
        require_range("temp_K", temp_K, *TEMP_RANGE_K)
        exponent = temperature_exponent(like, equivalence_ratio, temp_K)
        value = cold * (temp_K / REFERENCE_TEMP_K) ** exponent * by_pressure
        # As a factor both ways, so that a wide band stays above zero.
        return Band(value / (1 + spread), value, value * (1 + spread))

    return at


@lru_cache(maxsize=512)
def _at_reference(species, equivalence_ratio):
    """S_L at REFERENCE_TEMP_K and one atmosphere [m/s], and how far off it is at most, as a share."""
    row = by_key("burning_velocity", "species")[species]
    value = row["peak_m_s"] * _shape(row, equivalence_ratio) / _shape(row, peak_equivalence_ratio(species))
    if species == "CH4":
        phis, factors = RICH_METHANE
        value *= interpolate(min(max(equivalence_ratio, phis[0]), phis[-1]), phis, factors)
    bands = (
        2 * row["band_06"],
        row["band_06"],
        row["band_08"],
        row["band_09"],
        row["band_12"],
        row["band_14"],
        2 * row["band_14"],
    )
    return value, interpolate(equivalence_ratio, BAND_PHIS, bands)


@lru_cache(maxsize=512)
def heat_shares(composition):
    """Share of each burning species in the heat of a fuel, by its share of the oxygen; inerts are left out.

    Arguments:
        composition   ((species, mole fraction), ...)   [-]
    Returns:
        tuple of (species, share), shares sum to 1       [-]
    Checked by:
        tests/test_burning_velocity.py
    """
    parts = [(name, x * OXYGEN_MOL_MOL[name]) for name, x in composition if x > 0 and name in OXYGEN_MOL_MOL]
    total = sum(part for _, part in parts)
    require(total > 0, "fuel_blend", str(composition), "must hold a gas that burns")
    return tuple((name, part / total) for name, part in parts)


@lru_cache(maxsize=4096)
def dilution_factor(composition, equivalence_ratio):
    """Burning velocity of a fuel with inert gas in it over that of the same fuel without.

        f = exp(-Ta/2 (1/T_f - 1/T_f0)),   T_f and T_f0 flame temperatures with and without the inert gas

    Arguments:
        composition         ((species, mole fraction), ...) of the fuel, a tuple   [-]
        equivalence_ratio   phi                                                    [-]    0.5 to 1.6
    Returns:
        float               1 without inert gas                                    [-]
    Raises:
        InputError          a value outside its limit
    Assumes:
        mixture at 298.15 K; the factor is that of a warmer mixture too, which is a little low
    Source:
        speed by the temperature of the flame (Mallard and Le Chatelier, Zeldovich; published), fitted to Cantera's
        flames (published, computed)
    Checked by:
        tests/reference/diluted_flames.csv
    """
    inert = tuple(part for part in composition if part[0] in COOLING_K and part[1] > 0)
    if not inert:
        return 1.0
    pure = fractions(tuple(part for part in composition if part[0] not in COOLING_K))
    held_phi = min(max(equivalence_ratio, COOLING_PHIS[0]), COOLING_PHIS[1])
    rich = dict(heat_shares(pure)).get("CH4", 0.0) * interpolate(held_phi, COOLING_PHIS, (0.0, 1.0))
    cooling_K = sum(
        x * ((1 - rich) * usual_K + rich * rich_K)
        for x, (usual_K, rich_K) in ((x, COOLING_K[name]) for name, x in fractions(inert))
    )
    burned_K, pure_K = (flame_temp_K(gas, equivalence_ratio) for gas in (composition, pure))
    return exp(-cooling_K * (1 / burned_K - 1 / pure_K))


def burning_velocity_m_s(composition, equivalence_ratio, temp_K=REFERENCE_TEMP_K, pressure_Pa=ATM_PA):
    """Laminar burning velocity of a fuel gas with air, with its band.

        S_L = f sum(e_i S_L,i),   e_i share of species i in the heat of the fuel, f dilution_factor

    Arguments:
        composition         ((species, mole fraction), ...) of the fuel, a tuple   [-]
        equivalence_ratio   phi                                                    [-]    0.5 to 1.6
        temp_K              unburnt mixture                                        [K]    220 to 2000
        pressure_Pa         absolute                                               [Pa]
    Returns:
        Band                S_L                                                    [m/s]
    Raises:
        InputError          a value outside its limit
    Assumes:
        blending by heat share is common practice, good for paraffins that differ little
    Source:
        species_burning_velocity_m_s, dilution_factor
    Checked by:
        tests/reference/burning_velocity.csv, tests/reference/diluted_flames.csv
    """
    return burning_velocity_over_temp(composition, equivalence_ratio, pressure_Pa)(temp_K)


@lru_cache(maxsize=512)
def burning_velocity_over_temp(composition, equivalence_ratio, pressure_Pa=ATM_PA):
    """burning_velocity_m_s of one mixture as a function of temp_K, for many quick readings."""
    species = [
        (share, _species_over_temp(name, equivalence_ratio, pressure_Pa)) for name, share in heat_shares(composition)
    ]
    factor = dilution_factor(composition, equivalence_ratio)
    spread = 1 + COOLING_BAND * (1 - factor)

    def at(temp_K):
        low = value = high = 0.0
        for share, over_temp in species:
            band = over_temp(temp_K)
            low, value, high = low + share * band.low, value + share * band.value, high + share * band.high
        return Band(factor * low / spread, factor * value, factor * high * spread)

    return at
