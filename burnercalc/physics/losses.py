"""Pressure lost by a flow in pipes, fittings, entries and sudden changes of area.

A loss coefficient K is the pressure lost over the velocity head rho V^2/2. Pressures are small against the
atmosphere here, so the density is taken as constant.
"""

from math import log10, pi

from ..errors import require
from ..tables import find
from .port_stream import turbulent_weight

ROUGHNESS_STEEL_M = 45e-6  # commercial steel pipe: Moody 1944 (memory)
ROUGHNESS_CAST_M = 0.3e-3  # bore of a port cast in refractory, 0.1 to 0.5 mm (common practice)
EXIT_K = 1.0  # a jet into an open space loses its whole velocity head
SHARP_ENTRY_K = 0.5

# Loss of an entry against the radius of its edge over the bore: Crane TP-410 (memory, read back against fluids).
_ENTRY_RADIUS, _ENTRY_K = (0.0, 0.02, 0.04, 0.06, 0.10, 0.15), (0.5, 0.28, 0.24, 0.15, 0.09, 0.04)


def velocity_head_Pa(velocity_m_s, density_kg_m3):
    """Pressure of a stream brought to rest, rho V^2 / 2 [Pa]."""
    return density_kg_m3 * velocity_m_s**2 / 2


def reynolds(velocity_m_s, diameter_m, density_kg_m3, viscosity_Pas):
    """Reynolds number rho V d / mu of a pipe [-]."""
    return density_kg_m3 * velocity_m_s * diameter_m / viscosity_Pas


def turbulent_friction_darcy(reynolds, relative_roughness):
    """Friction factor of turbulent pipe flow.

        1/sqrt(f) = -1.8 log10((e/3.7)^1.11 + 6.9/Re)

    Arguments:
        reynolds             Re                    [-]   4000 to 1e8 (used from 2300 for blending)
        relative_roughness   e, roughness / bore   [-]   0 to 0.1 (the source: up to 0.05)
    Returns:
        f, Darcy (four times Fanning)   [-]
    Source:
        Haaland, J. Fluids Eng. 105 (1983) 89 (published); within 2 % of Colebrook
    Checked by:
        tests/reference/friction.csv
    """
    require(0 < reynolds < float("inf"), "reynolds", reynolds, "must be above 0")
    _require_within("relative_roughness", relative_roughness, 0.1)
    return (-1.8 * log10((relative_roughness / 3.7) ** 1.11 + 6.9 / reynolds)) ** -2


def friction_darcy(reynolds, relative_roughness):
    """Friction factor of developed pipe flow in any regime.

        64/Re                                        Re up to 2300
        (1 - w) 64/2300 + w f_turbulent(4000)        between, w = (Re - 2300) / 1700
        f_turbulent(Re)                              Re from 4000

    Arguments:
        reynolds             Re                    [-]   above 0
        relative_roughness   roughness / bore      [-]   0 to 0.1
    Returns:
        f, Darcy   [-]; continuous, and f Re^2 rises with Re
    Source:
        Hagen-Poiseuille, Haaland 1983 (published); straight line between (common practice)
    Checked by:
        tests/reference/friction.csv
    """
    weight = turbulent_weight(reynolds)
    laminar = 64 / min(reynolds, 2300.0) if weight < 1 else 0.0
    turbulent = turbulent_friction_darcy(max(reynolds, 4000.0), relative_roughness) if weight > 0 else 0.0
    return (1 - weight) * laminar + weight * turbulent


def _require_within(field, value, most):
    if not 0 <= value <= most:  # asked so often that an offer is written only where it is needed
        require(False, field, value, f"must be within 0 to {most:g}", f"{min(max(value, 0), most):g}")


def expansion_K(area_ratio):
    """Loss of a sudden enlargement, on the velocity head of the small side.

        K = (1 - A1/A2)^2

    Arguments:
        area_ratio   A1/A2, small over large   [-]   0 to 1
    Returns:
        K   [-]
    Source:
        Borda-Carnot (published)
    Checked by:
        tests/test_losses.py against fluids.fittings.diffuser_sharp
    """
    _require_within("area_ratio", area_ratio, 1)
    return (1 - area_ratio) ** 2


def contraction_K(area_ratio):
    """Loss of a sudden narrowing, on the velocity head of the small side.

        K = 0.5 (1 - A1/A2)

    Arguments:
        area_ratio   A1/A2, small over large   [-]   0 to 1
    Returns:
        K   [-]; a sharp entry where the large side has no end
    Assumes:
        a fit to measurements (Rennels) lies from 0.02 below to 0.13 above, most where A1/A2 is about 0.3
    Source:
        Crane TP-410 (memory)
    Checked by:
        tests/test_losses.py against fluids.fittings.contraction_sharp
    """
    _require_within("area_ratio", area_ratio, 1)
    return SHARP_ENTRY_K * (1 - area_ratio)


def fitting_K(fitting, reynolds, relative_roughness):
    """Loss of a pipe fitting.

        K = n f(Re)

    Arguments:
        fitting              name in data/fittings.csv   [-]   elbow_90, elbow_45, bend_90, tee_run, ...
        reynolds             of the pipe                 [-]   above 0
        relative_roughness   of the pipe                 [-]   0 to 0.1
    Returns:
        K   [-]
    Assumes:
        n pipe diameters of the actual friction, not of the fully turbulent one as in the source: at the Reynolds
        numbers of a forge (1e4 to 5e4) that is 1.2 to 1.7 times as much, on the safe side
    Source:
        Crane TP-410 (memory)
    Checked by:
        tests/test_losses.py against fluids.fittings at high Reynolds numbers
    """
    return find("fittings", "fitting", fitting, "fitting")["diameters"] * friction_darcy(reynolds, relative_roughness)


def pipe_drop_Pa(
    flow_m3_s, bore_m, length_m, density_kg_m3, viscosity_Pas, fittings=(), other_K=0.0, roughness_m=ROUGHNESS_STEEL_M
):
    """Pressure lost in a pipe run with its fittings.

        dp = (f L/D + sum K) rho V^2 / 2

    Arguments:
        flow_m3_s       at the density given            [m3/s]   0 or more
        bore_m          D                               [m]      above 0
        length_m        L, straight length              [m]      0 or more
        density_kg_m3   rho                             [kg/m3]
        viscosity_Pas   mu                              [Pa s]
        fittings        names of data/fittings.csv, one for each piece
        other_K         entry, exit and the like        [-]      0 or more
        roughness_m     of the wall                     [m]
    Returns:
        dp   [Pa]
    Source:
        Darcy-Weisbach (published)
    Checked by:
        tests/test_losses.py against fluids
    """
    require(0 <= flow_m3_s < float("inf"), "flow_m3_s", flow_m3_s, "must be 0 or more", "0")
    require(0 < bore_m < float("inf"), "bore_m", bore_m, "must be above 0")
    require(length_m >= 0, "length_m", length_m, "must be 0 or more", "0")
    require(other_K >= 0, "other_K", other_K, "must be 0 or more", "0")
    if flow_m3_s == 0:
        return 0.0
    velocity = flow_m3_s / (pi / 4 * bore_m**2)
    re = reynolds(velocity, bore_m, density_kg_m3, viscosity_Pas)
    rough = roughness_m / bore_m
    k = friction_darcy(re, rough) * length_m / bore_m + sum(fitting_K(name, re, rough) for name in fittings) + other_K
    return k * velocity_head_Pa(velocity, density_kg_m3)
