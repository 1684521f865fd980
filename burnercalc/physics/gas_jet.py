"""Gas through the jet: mass flow of a drilled orifice, choked or not, and the hole or pressure for a wanted flow.

Pressures are absolute. The gas is ideal; rate, drill and pressure answers all come from the one equation here.
"""

from math import pi, sqrt

from ..constants import GAS_CONSTANT_J_MOLK
from ..errors import require
from ..tables import by_key


def heat_capacity_ratio(composition):
    """cp/cv of a fuel gas at 60 degF and 101 325 Pa.

        k = cp/(cp - R),   cp = R sum(x_i k_i/(k_i - 1))

    Arguments:
        composition   ((species, mole fraction), ...)   [-]
    Returns:
        float         k                                 [-]
    Raises:
        InputError    unknown species
    Source:
        data/gas_heat_capacity_ratio.csv, from CoolProp (published)
    Checked by:
        tests/test_gas_jet.py
    """
    table = by_key("gas_heat_capacity_ratio", "species")
    for name, _ in composition:
        require(name in table, "fuel_blend", name, "is not in the table; known: " + ", ".join(table))
    heat = sum(x * table[name]["ratio"] / (table[name]["ratio"] - 1) for name, x in composition)
    total = sum(x for _, x in composition)
    return heat / (heat - total)


def critical_pressure_ratio(heat_capacity_ratio):
    """Downstream over upstream pressure below which the jet chokes.

        r* = (2/(k+1))^(k/(k-1))

    Arguments:
        heat_capacity_ratio   k     [-]   above 1
    Returns:
        float                 r*    [-]
    Source:
        gas dynamics (published)
    Checked by:
        tests/reference/choked_flow.csv, and the library fluids
    """
    k = heat_capacity_ratio
    require(1 < k < 3, "heat_capacity_ratio", k, "must be above 1 and below 3")
    return (2 / (k + 1)) ** (k / (k - 1))


def is_choked(upstream_Pa, downstream_Pa, heat_capacity_ratio):
    """True when the flow is set by the upstream pressure alone."""
    return downstream_Pa <= critical_pressure_ratio(heat_capacity_ratio) * upstream_Pa


def jet_mass_flux_kg_m2s(upstream_Pa, downstream_Pa, temp_K, molar_mass_kg_mol, heat_capacity_ratio):
    """Mass flow of an ideal nozzle per area.

        G = p0 sqrt(2k/(k-1) M/(R T0) [r^(2/k) - r^((k+1)/k)]),   r = p/p0, not below r*

    Arguments:
        upstream_Pa           p0, absolute                   [Pa]
        downstream_Pa         p, absolute                    [Pa]       0 to p0
        temp_K                T0, gas at rest                [K]        above 0
        molar_mass_kg_mol     M                              [kg/mol]
        heat_capacity_ratio   k                              [-]
    Returns:
        float                 G, 0 at equal pressures        [kg/m2/s]
    Raises:
        InputError            a value outside its limit
    Assumes:
        ideal gas; propane at 30 psig is 5 % denser, which would give 2 to 3 % more flow
    Source:
        gas dynamics (published)
    Checked by:
        tests/reference/choked_flow.csv, and the library fluids
    """
    k = heat_capacity_ratio
    require(0 < upstream_Pa < float("inf"), "upstream_Pa", upstream_Pa, "must be above 0 Pa")
    require(
        0 <= downstream_Pa <= upstream_Pa,
        "downstream_Pa",
        downstream_Pa,
        f"must be within 0 and the upstream {upstream_Pa:g} Pa",
    )
    require(temp_K > 0, "temp_K", temp_K, "must be above 0 K")
    require(molar_mass_kg_mol > 0, "molar_mass_kg_mol", molar_mass_kg_mol, "must be above 0")
    r = max(downstream_Pa / upstream_Pa, critical_pressure_ratio(k))
    return upstream_Pa * sqrt(
        2 * k / (k - 1) * molar_mass_kg_mol / (GAS_CONSTANT_J_MOLK * temp_K) * (r ** (2 / k) - r ** ((k + 1) / k))
    )


def jet_flow_kg_s(
    diameter_m, discharge_coefficient, upstream_Pa, downstream_Pa, temp_K, molar_mass_kg_mol, heat_capacity_ratio
):
    """Mass flow of a gas jet, m = C_d pi/4 d^2 G [kg/s]; G is jet_mass_flux_kg_m2s, C_d above 0 up to 1."""
    require(0 <= diameter_m < float("inf"), "diameter_m", diameter_m, "must be 0 or more")
    require(
        0 < discharge_coefficient <= 1,
        "discharge_coefficient",
        discharge_coefficient,
        "must be above 0 and at most 1",
        "0.85",
    )
    return (
        discharge_coefficient
        * pi
        / 4
        * diameter_m**2
        * jet_mass_flux_kg_m2s(upstream_Pa, downstream_Pa, temp_K, molar_mass_kg_mol, heat_capacity_ratio)
    )


def jet_diameter_m(
    flow_kg_s, discharge_coefficient, upstream_Pa, downstream_Pa, temp_K, molar_mass_kg_mol, heat_capacity_ratio
):
    """Hole for a wanted mass flow, d = sqrt(4 m/(pi C_d G)) [m]; the upstream pressure must be the higher."""
    require(0 <= flow_kg_s < float("inf"), "flow_kg_s", flow_kg_s, "must be 0 or more")
    unit = jet_flow_kg_s(
        1.0, discharge_coefficient, upstream_Pa, downstream_Pa, temp_K, molar_mass_kg_mol, heat_capacity_ratio
    )
    require(unit > 0, "upstream_Pa", upstream_Pa, f"must be above the downstream {downstream_Pa:g} Pa")
    return sqrt(flow_kg_s / unit)


def jet_pressure_Pa(
    flow_kg_s, diameter_m, discharge_coefficient, downstream_Pa, temp_K, molar_mass_kg_mol, heat_capacity_ratio
):
    """Absolute upstream pressure at which a jet passes a wanted mass flow [Pa].

    Choked, flow goes with the upstream pressure. Below, with y = r^((k-1)/k) and m* the flow that just chokes,

        (1 - y)/y^2 = (m/m*)^2 (k^2 - 1)/4,   p0 = p y^(-k/(k-1))

    Raises InputError for a value outside the limits of jet_flow_kg_s.
    """
    k = heat_capacity_ratio
    require(0 <= flow_kg_s < float("inf"), "flow_kg_s", flow_kg_s, "must be 0 or more")
    require(0 < diameter_m, "diameter_m", diameter_m, "must be above 0")
    require(downstream_Pa > 0, "downstream_Pa", downstream_Pa, "must be above 0 Pa")
    choking_Pa = downstream_Pa / critical_pressure_ratio(k)
    at_choking = jet_flow_kg_s(
        diameter_m, discharge_coefficient, choking_Pa, downstream_Pa, temp_K, molar_mass_kg_mol, k
    )
    share = flow_kg_s / at_choking
    if share >= 1:
        return choking_Pa * share
    y = 2 / (1 + sqrt(1 + share**2 * (k**2 - 1)))
    return downstream_Pa * y ** (-k / (k - 1))
