"""Pressure lost in one port: a short tube with an entry, friction over its length and a free jet at the end."""

from math import sqrt

from ..errors import require
from .losses import EXIT_K, ROUGHNESS_CAST_M, SHARP_ENTRY_K, reynolds, turbulent_friction_darcy, velocity_head_Pa
from .port_stream import turbulent_weight


def developing_friction(x_plus):
    """Apparent Fanning friction times Re of laminar flow from the entry to x, flat profile at the entry.

        f Re = 3.44/sqrt(x+) + (16 + 1.25/(4 x+) - 3.44/sqrt(x+)) / (1 + 0.00021/x+^2)

    Arguments:
        x_plus   x / (d Re)   [-]   above 0
    Returns:
        f Re   [-]; tends to 16 far from the entry
    Assumes:
        counts the wall friction and the growing momentum of the profile together
    Source:
        Shah and London, Laminar Flow Forced Convection in Ducts (1978), eq. 192; constants from memory
    Checked by:
        tests/test_port_drop.py against the developed 16 + 1.25/(4 x+) and the boundary-layer 3.44/sqrt(x+)
    """
    require(x_plus > 0, "x_plus", x_plus, "must be above 0")
    young = 3.44 / sqrt(x_plus)
    return young + (16 + 1.25 / (4 * x_plus) - young) / (1 + 0.00021 / x_plus**2)


def port_K(reynolds, length_ratio, entry_K=SHARP_ENTRY_K, relative_roughness=0.0):
    """Loss of a port on the velocity head in it.

        K = K_entry + 4 f_apparent L/d + 1     Re up to 2300: laminar, developing
        K = K_entry + f_turbulent L/d + 1      Re from 4000
        straight line in Re between, each side at its own end

    Arguments:
        reynolds             Re of the port              [-]   above 0
        length_ratio         L/d, depth over diameter    [-]   0.75 or more: below it the jet does not fill the port
        entry_K              0.5 sharp, 0.04 rounded     [-]   0 to 1
        relative_roughness   of the bore                 [-]   0 to 0.1
    Returns:
        K   [-]
    Assumes:
        a port of L/d 2 to 10 is mostly entry: developed laminar friction 64/Re would miss 5 to 20 % of the drop.
        Against the measured form of Lichtarowicz, Duggins and Markland (1965) this K is 4 % low to 26 % high, for
        Re 100 to 15000 and L/d 2 to 10: most at Re 500, least from Re 4000; mostly on the safe side for the blower
    Source:
        Darcy-Weisbach; Shah and London 1978 (memory); Haaland 1983 (published)
    Checked by:
        tests/reference/port_drop.csv
    """
    require(length_ratio >= 0.75, "length_ratio", length_ratio, "must be 0.75 or more", "0.75")
    require(0 <= entry_K <= 1, "entry_K", entry_K, "must be within 0 to 1", "0.5")
    require(0 < reynolds < float("inf"), "reynolds", reynolds, "must be above 0")
    weight = turbulent_weight(reynolds)
    friction = 0.0
    if weight < 1:
        laminar_re = min(reynolds, 2300.0)
        friction += (1 - weight) * 4 * developing_friction(length_ratio / laminar_re) / laminar_re * length_ratio
    if weight > 0:
        friction += weight * turbulent_friction_darcy(max(reynolds, 4000.0), relative_roughness) * length_ratio
    return entry_K + friction + EXIT_K


def port_drop_Pa(
    velocity_m_s,
    diameter_m,
    length_m,
    density_kg_m3,
    viscosity_Pas,
    entry_K=SHARP_ENTRY_K,
    roughness_m=ROUGHNESS_CAST_M,
):
    """Pressure from the plenum to the chamber that drives a port.

        dp = K rho V^2 / 2

    Arguments:
        velocity_m_s    V, mean over the port    [m/s]     0 or more
        diameter_m      d                        [m]       above 0
        length_m        L, depth of the port     [m]       0.75 d or more
        density_kg_m3   of the cold mixture      [kg/m3]
        viscosity_Pas   of the cold mixture      [Pa s]
        entry_K         0.5 sharp, 0.04 rounded  [-]
        roughness_m     of the bore              [m]
    Returns:
        dp   [Pa]
    Assumes:
        the mixture keeps its density through the port (a hot port warms it and takes more pressure)
    Source:
        see port_K
    Checked by:
        tests/reference/port_drop.csv
    """
    require(0 <= velocity_m_s < float("inf"), "velocity_m_s", velocity_m_s, "must be 0 or more", "0")
    require(diameter_m > 0, "diameter_m", diameter_m, "must be above 0")
    if velocity_m_s == 0:
        return 0.0
    re = reynolds(velocity_m_s, diameter_m, density_kg_m3, viscosity_Pas)
    k = port_K(re, length_m / diameter_m, entry_K, roughness_m / diameter_m)
    return k * velocity_head_Pa(velocity_m_s, density_kg_m3)


def hot_port_drop_Pa(
    velocity_m_s,
    diameter_m,
    length_m,
    properties,
    cold_K,
    enters_K,
    leaves_K,
    entry_K=SHARP_ENTRY_K,
    roughness_m=ROUGHNESS_CAST_M,
):
    """Pressure from the plenum to the chamber that drives a port whose wall warms the mixture on its way.

        dp = [ (K_entry + 1) T1/T0 + K_friction(Re at Tm) Tm/T0 + 2 (T2 - T1)/T0 ] rho0 V0^2/2,   Tm = (T1 + T2)/2

    Arguments:
        velocity_m_s    V0, mean over the port, of the cold mixture   [m/s]   0 or more
        diameter_m      d                                             [m]     above 0
        length_m        L, depth of the port                          [m]     0.75 d or more
        properties      StreamProperties of the mixture
        cold_K          T0                                            [K]
        enters_K        T1, of the mixture in the plenum              [K]
        leaves_K        T2, where it leaves the port                  [K]
        entry_K         0.5 sharp, 0.04 rounded                       [-]
        roughness_m     of the bore                                   [m]
    Returns:
        dp   [Pa]
    Assumes:
        a stream of one temperature across the port, ideal gas; friction as of one that is as warm as the mean all along
    Source:
        momentum of a heated stream in a duct of one size (published); friction: see port_K
    Checked by:
        tests/test_port_drop.py
    """
    require(0 <= velocity_m_s < float("inf"), "velocity_m_s", velocity_m_s, "must be 0 or more", "0")
    if velocity_m_s == 0:
        return 0.0
    mean_K = (enters_K + leaves_K) / 2
    density, _, _, _ = properties.at(cold_K)
    _, viscosity, _, _ = properties.at(mean_K)
    re = density * velocity_m_s * diameter_m / viscosity
    friction = port_K(re, length_m / diameter_m, entry_K, roughness_m / diameter_m) - entry_K - EXIT_K
    heads = (entry_K + EXIT_K) * enters_K + friction * mean_K + 2 * (leaves_K - enters_K)
    return heads / cold_K * velocity_head_Pa(velocity_m_s, density)
