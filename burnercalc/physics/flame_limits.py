"""Limits of the flame that geometry and mixture set: what burns at all, what gap stops it, what gap it jumps."""

from math import inf

from ..constants import AIR_OXYGEN_FRACTION
from ..errors import require
from ..tables import by_key, find
from .band import Band
from .fuels import stoichiometric_air_mol_mol

# Plate distance that stops a flame, in flame thicknesses alpha/S_L (Williams, Combustion Theory, 8.1; published).
QUENCH_THICKNESSES = 40.0
# A tube stops a flame at this many plate distances (memory: Lewis & von Elbe; Williams).
TUBE_OVER_PLATES = Band(1.5, 1.575, 1.65)
CROSS_LIGHT_PITCH_RATIO = 2.5  # pitch in port diameters up to which ports light each other (common practice)
COUNTS = 0.05  # share of what burns from which a gas sets the auto-ignition of a blend (common practice)
WETTED_SHARE = 0.8
ZERO_C_K = 273.15
FLAMMABILITY_LISTS = ("nfpa", "iec")
INERT_GASES = {"N2": "nitrogen", "CO2": "carbon_dioxide"}


def flammable_fraction(composition, limits="nfpa"):
    """Lower and upper flammable limit of a fuel gas in air, inert gas in it counted.

        x = (1 + r) L / (1 + r (L - L_n) / I_n),   r inert over burning gas,   L = 1 / sum(y_i / L_i) without inert gas,
        L_n = O / n,   I_n = 1 - L_n - O / 0.2095:   the nose, where the limits meet

    In the plane of inert and burning gas both limits run straight to the nose, the stoichiometric mixture with no more
    oxygen O than just burns; n is the oxygen that the gas needs.

    Arguments:
        composition   ((species, mole fraction), ...)              [-]
        limits        "nfpa" or "iec", the list                    [-]
    Returns:
        tuple         (lower, upper), fuel gas in the mixture, at most 1; lower above upper where no mixture burns   [-]
    Raises:
        InputError    unknown list or species, or nothing that burns
    Assumes:
        room temperature; oxygen limits blend by shares of the oxygen needed and of the inert gas
    Source:
        Le Chatelier's rule (memory); straight sides, nearly those in diagrams of Coward and Jones 1952 and Zabetakis
        1965 (memory); data/flammability.csv (published), data/limiting_oxygen.csv (memory)
    Checked by:
        tests/test_flame_limits.py
    """
    require(limits in FLAMMABILITY_LISTS, "limits", limits, "must be one of " + ", ".join(FLAMMABILITY_LISTS))
    table = by_key("flammability", "species")
    burning = [(name, x) for name, x in composition if name in table and x > 0]
    require(burning, "fuel_blend", str(composition), "must hold a gas that burns")
    burns = sum(x for _, x in burning)
    alone = [burns / sum(x * 100 / table[name][f"{limits}_{end}"] for name, x in burning) for end in ("lower", "upper")]
    inert = [(INERT_GASES[name], x) for name, x in composition if name in INERT_GASES and x > 0]
    ratio = sum(x for _, x in inert) / burns
    if not ratio:
        return tuple(alone)
    oxygen = by_key("limiting_oxygen", "species")
    pure = tuple((name, x / burns) for name, x in burning)
    needs = stoichiometric_air_mol_mol(pure) * AIR_OXYGEN_FRACTION
    least = sum(
        share
        * stoichiometric_air_mol_mol(((name, 1.0),))
        * AIR_OXYGEN_FRACTION
        / needs
        * x
        / (ratio * burns)
        * oxygen[name][gas]
        for name, share in pure
        for gas, x in inert
    )
    nose = least / 100 / needs
    nose_inert = 1 - nose - least / 100 / AIR_OXYGEN_FRACTION

    def diluted(limit):
        below = 1 + ratio * (limit - nose) / nose_inert
        return min((1 + ratio) * limit / below, 1.0) if below > 0 else 1.0

    return tuple(map(diluted, alone))


def flammable_equivalence_ratios(composition, limits="nfpa"):
    """Equivalence ratios at the flammable limits, phi = x/(1-x) L with L the air need per volume; (lean, rich) [-]."""
    air = stoichiometric_air_mol_mol(tuple(composition))
    return tuple(x / (1 - x) * air if x < 1 else inf for x in flammable_fraction(composition, limits))


def auto_ignition_temp_K(composition):
    """Temperature at which a fuel gas at rest in air lights of itself: that of its easiest gas.

        T = min T_i of the gases that make COUNTS of what burns, or more

    Arguments:
        composition   ((species, mole fraction), ...)   [-]
    Returns:
        float         T                                 [K]
    Raises:
        InputError    nothing that burns
    Assumes:
        the lower of two lists; minutes of contact with a hot wall
    Source:
        data/auto_ignition.csv (published); the rule for blends: common practice
    Checked by:
        tests/test_flame_limits.py
    """
    table = by_key("auto_ignition", "species")
    burning = [(x, table[name]) for name, x in composition if name in table and x > 0]
    require(burning, "fuel_blend", str(composition), "must hold a gas that burns")
    least = COUNTS * sum(x for x, _ in burning)
    return ZERO_C_K + min(min(row["nfpa_C"], row["iec_C"]) for x, row in burning if x >= least)


def wetted_limit_K(auto_ignition_K):
    """Hottest that mixture at rest may touch: 80 % of its auto-ignition temperature in degC (EN 1127-1; memory) [K]."""
    return ZERO_C_K + WETTED_SHARE * (auto_ignition_K - ZERO_C_K)


def quenching_plate_distance_m(burning_velocity, thermal_diffusivity_m2_s):
    """Distance of two cold plates that just stops a flame.

        d_q = 40 alpha/S_L

    Arguments:
        burning_velocity           S_L, a Band   [m/s]    above 0
        thermal_diffusivity_m2_s   alpha         [m2/s]   above 0
    Returns:
        Band                       d_q           [m]
    Assumes:
        cold walls; a hot wall stops nothing
    Source:
        Williams, Combustion Theory, 8.1 eqs (4)-(5) (published)
    Checked by:
        tests/test_flame_limits.py: data/quenching.csv (memory) within 10 % at phi 1
    """
    require(burning_velocity[0] > 0, "burning_velocity", str(tuple(burning_velocity)), "must be above 0 m/s")
    require(
        0 < thermal_diffusivity_m2_s < 1,
        "thermal_diffusivity_m2_s",
        thermal_diffusivity_m2_s,
        "must be above 0 m2/s",
    )
    return Band(*(QUENCH_THICKNESSES * thermal_diffusivity_m2_s / s for s in reversed(burning_velocity)))


def quenching_port_diameter_m(burning_velocity, thermal_diffusivity_m2_s):
    """Diameter of a cold port that just stops a flame: 1.5 to 1.65 plate distances; Band [m].

    A port wider than this does not hold a flame back; only the speed of the mixture does.
    """
    plates = quenching_plate_distance_m(burning_velocity, thermal_diffusivity_m2_s)
    return Band(*(ratio * plate for ratio, plate in zip(TUBE_OVER_PLATES, plates)))


def cross_light_gap_m(main_species):
    """Edge-to-edge gap of ports over which the flame spreads: (surely, at most) [m]; memory, weak.

    The gap of a natural gas is that of CH4; a pitch of CROSS_LIGHT_PITCH_RATIO diameters serves as well.
    """
    row = find("quenching", "species", main_species, "fuel")
    return row["cross_light_sure_mm"] / 1000, row["cross_light_limit_mm"] / 1000
