"""Perforated plate across a stream: how open it is, what pressure it takes, how much unevenness it lets through."""

from math import cos, pi, radians, sqrt

from ..errors import require
from ..tables import interpolate

# Share of the expansion loss inside the hole against thickness / hole diameter: Idelchik, Handbook of Hydraulic
# Resistance, diagram of thick-edged grids (memory).
_TAU_THICKNESS = (0.0, 0.2, 0.4, 0.6, 0.8, 1.0, 1.2, 1.6, 2.0, 2.4)
_TAU = (1.35, 1.22, 1.10, 0.84, 0.42, 0.24, 0.16, 0.07, 0.02, 0.0)
_THICK_FROM = 0.2


def open_fraction(hole_count, hole_diameter_m, plate_area_m2):
    """Area of the round holes over the area of the plate [-]; InputError if the holes fill the plate or are none."""
    require(plate_area_m2 > 0, "plate_area_m2", plate_area_m2, "must be above 0")
    require(hole_count >= 1, "baffle_holes", hole_count, "must be 1 or more", "1")
    fraction = hole_count * pi / 4 * hole_diameter_m**2 / plate_area_m2
    fits = max(int(0.75 * plate_area_m2 / (pi / 4 * hole_diameter_m**2)), 1) if hole_diameter_m > 0 else 1
    require(
        0 < fraction < 1,
        "baffle_holes",
        hole_count,
        "must be holes above 0 in size that leave some plate between them",
        f"{fits}",
    )
    return fraction


def bent_plate_ratio(bend_angle_deg):
    """Area of a plate folded once along its middle over the area of the duct it spans.

        r = 1 / cos(b/2)

    Arguments:
        bend_angle_deg   b, how far it is bent from flat   [deg]   0 (flat) to 150
    Returns:
        r   [-]; the velocity onto the plate is that in the duct over r
    Source:
        geometry: each leaf leans by half the bend
    Checked by:
        tests/test_plates.py
    """
    require(
        0 <= bend_angle_deg <= 150,
        "baffle_bend_angle",
        bend_angle_deg,
        "must be within 0 to 150 deg",
        f"{min(max(bend_angle_deg, 0), 150):g} deg",
    )
    return 1 / cos(radians(bend_angle_deg) / 2)


def thin_plate_K(open_fraction):
    """Loss of a thin sharp-edged perforated plate, on the velocity head of the approaching stream.

        K = (1 + 0.707 sqrt(1 - f) - f)^2 / f^2

    Arguments:
        open_fraction   f   [-]   above 0, up to 1
    Returns:
        K   [-]
    Assumes:
        hole Reynolds number above about 1e4; at 1e3 the loss is up to a tenth higher (common practice)
    Source:
        Idelchik, Handbook of Hydraulic Resistance, thin-walled grids (memory)
    Checked by:
        tests/test_plates.py against fluids.square_edge_screen (Blevins 1984)
    """
    f = open_fraction
    require(0 < f <= 1, "open_fraction", f, "must be above 0, up to 1")
    return ((1 + sqrt(0.5) * sqrt(1 - f) - f) / f) ** 2


def thick_plate_K(open_fraction, thickness_ratio, friction_darcy=0.03):
    """Loss of a thick perforated plate, in whose holes the stream spreads out again.

        K = (0.5 (1-f)^0.75 + tau(l/d) (1-f)^1.375 + (1-f)^2 + lambda l/d) / f^2

    Arguments:
        open_fraction     f        [-]   above 0, up to 1
        thickness_ratio   l/d, thickness over hole diameter   [-]   0 or more
        friction_darcy    lambda, in the holes                [-]
    Returns:
        K, on the velocity head of the approaching stream   [-]
    Source:
        Idelchik, Handbook of Hydraulic Resistance, thick-edged grids (memory)
    Checked by:
        tests/test_plates.py against the short tube, C_d = 0.8165, and entry plus sudden expansion
    """
    f = open_fraction
    require(0 < f <= 1, "open_fraction", f, "must be above 0, up to 1")
    require(0 <= thickness_ratio < float("inf"), "thickness_ratio", thickness_ratio, "must be 0 or more", "0")
    tau = interpolate(min(thickness_ratio, _TAU_THICKNESS[-1]), _TAU_THICKNESS, _TAU, "thickness_ratio")
    return (0.5 * (1 - f) ** 0.75 + tau * (1 - f) ** 1.375 + (1 - f) ** 2 + friction_darcy * thickness_ratio) / f**2


def plate_K(open_fraction, thickness_ratio):
    """Loss of a perforated plate of any thickness, on the velocity head of the approaching stream.

        K = (1 - w) K_thin + w K_thick,   w = (l/d) / 0.2 up to 1

    Arguments:
        open_fraction     f                                   [-]   above 0, up to 1
        thickness_ratio   l/d, thickness over hole diameter   [-]   0 or more
    Returns:
        K   [-]
    Source:
        thin_plate_K, thick_plate_K; straight line between (common practice), where the two part by up to 10 %
    Checked by:
        tests/test_plates.py
    """
    weight = min(thickness_ratio / _THICK_FROM, 1.0)
    return (1 - weight) * thin_plate_K(open_fraction) + weight * thick_plate_K(open_fraction, thickness_ratio)


def unevenness_left(K):
    """Share of a small unevenness of velocity that is left behind a plate across the whole stream.

        u2/u1 = (1 + a - a K) / (1 + a + K),   a = 1.1 / sqrt(1 + K)

    Arguments:
        K   loss of the plate on the approaching stream   [-]   0.7 or more
    Returns:
        u2/u1   [-]; negative: the plate turns fast spots into slow ones (K above about 2.8)
    Assumes:
        small unevenness, plate square to the stream, room behind it; the bare jet of an inlet is not small
    Source:
        Taylor and Batchelor, Q. J. Mech. Appl. Math. 2 (1949) 1 (memory)
    Checked by:
        tests/test_plates.py
    """
    require(0.7 <= K < float("inf"), "K", K, "must be 0.7 or more for this formula", "0.7")
    a = 1.1 / sqrt(1 + K)
    return (1 + a - a * K) / (1 + a + K)
