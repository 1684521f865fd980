"""Pressure in the chamber that pushes the flue gas out of its opening."""

from math import pi, sqrt

from ..errors import require
from .root import rising_root

# Discharge of a sharp hole, whose jet stays off its sides, and of a thick one, whose jet fills it again. Published,
# recalled (Lichtarowicz, Duggins and Markland 1965 and any text on flow); the change lies between half a bore and one.
SHARP_DISCHARGE, THICK_DISCHARGE = 0.6, 0.8
_SHARP_TO, _THICK_FROM = 0.5, 1.0
# Either way, of edges rounded or chipped and of work in the way; never below that of a sharp hole. Common practice.
DISCHARGE_OFF = 0.1


def opening_discharge(depth_to_diameter):
    """Discharge coefficient of an opening by the depth of its hole.

        0.6 to depth = half the diameter, 0.8 from depth = diameter, a straight line between

    Arguments:
        depth_to_diameter   depth over diameter of the round hole of the same area   [-]   0 or more
    Returns: float [-]
    Raises: InputError for depth_to_diameter
    Source: Lichtarowicz, Duggins and Markland, J. Mech. Eng. Sci. 7 (1965) 210: 0.61 sharp, 0.78 to 0.81 from one to
        three diameters. Memory.
    Checked by: tests/test_back_pressure.py (opening_discharge at both ends; fluids for the sharp one)
    """
    require(0 <= depth_to_diameter < 1e9, "depth_to_diameter", depth_to_diameter, "must be 0 or more")
    share = min(max((depth_to_diameter - _SHARP_TO) / (_THICK_FROM - _SHARP_TO), 0.0), 1.0)
    return SHARP_DISCHARGE + (THICK_DISCHARGE - SHARP_DISCHARGE) * share


def orifice_Pa(*, flow_kg_s, area_m2, depth_m, density_kg_m3, discharge_off=0.0):
    """Pressure that drives a gas through an opening.

        dp = (m / (C_d A))**2 / (2 rho)

    Arguments:
        flow_kg_s       m                                                         [kg/s]    0 or more
        area_m2         A                                                         [m2]      above 0
        depth_m         thickness of the wall there                               [m]       0 or more
        density_kg_m3   rho                                                       [kg/m3]   above 0
        discharge_off   added to the C_d of the depth, 0.6 at least: its band     [-]
    Returns: float [Pa]
    Raises: InputError for opening_area, opening_depth or another argument outside its limits
    Assumes: the space before it wide against the opening; small against the atmosphere
    Source: Bernoulli, with the discharge of opening_discharge. Published.
    Checked by: tests/test_back_pressure.py (orifice_Pa against fluids)
    """
    require(0 <= flow_kg_s < 100, "flow_kg_s", flow_kg_s, "must be 0 or more and below 100 kg/s")
    require(0 < area_m2 < 100, "opening_area", f"{area_m2:g} m2", "needs an opening: the flue gas must get out")
    require(0 <= depth_m < 10, "opening_depth", depth_m, "must be 0 or more and below 10 m", "0")
    require(0 < density_kg_m3 < float("inf"), "density_kg_m3", density_kg_m3, "must be above 0")
    discharge = max(SHARP_DISCHARGE, opening_discharge(depth_m / sqrt(4 * area_m2 / pi)) + discharge_off)
    return (flow_kg_s / (discharge * area_m2)) ** 2 / (2 * density_kg_m3)


def opening_for_pressure_m2(*, pressure_Pa, flow_kg_s, depth_m, density_kg_m3, discharge_off=0.0):
    """Opening through which a flow leaves at a pressure: orifice_Pa the other way round.

        orifice_Pa(A) = dp

    Arguments:
        pressure_Pa     dp, gauge; draught is added by the caller   [Pa]      above 0
        flow_kg_s       m                                           [kg/s]    above 0
        depth_m         thickness of the wall there                 [m]       0 or more
        density_kg_m3   rho                                         [kg/m3]   above 0
        discharge_off   as orifice_Pa                               [-]
    Returns: float [m2]
    Raises: InputError
    Checked by: tests/test_back_pressure.py (opening_for_pressure_m2 there and back)
    """
    require(0 < pressure_Pa < 1e5, "pressure_Pa", pressure_Pa, "must be above 0 and below 1e5 Pa")
    require(0 < flow_kg_s < 100, "flow_kg_s", flow_kg_s, "must be above 0 and below 100 kg/s")
    narrow_1_m2 = rising_root(
        lambda narrow: orifice_Pa(
            flow_kg_s=flow_kg_s,
            area_m2=1 / narrow,
            depth_m=depth_m,
            density_kg_m3=density_kg_m3,
            discharge_off=discharge_off,
        ),
        pressure_Pa,
        100.0,
    )
    require(narrow_1_m2, "pressure_Pa", pressure_Pa, "needs an opening of less than 100 m2")
    return 1 / narrow_1_m2
