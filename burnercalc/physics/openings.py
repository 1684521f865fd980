"""Heat that radiates out of the chamber through an opening in a thick wall."""

from math import log, pi, sqrt

from ..errors import require
from .outside import radiation_W_m2


def opening_factor(depth_to_radius):
    """Share of black-body radiation that leaves through a round hole whose sides re-radiate all they receive.

        W = 1 + L**2/4 - L s/4 - ((8 - L**2) s + L**3 - 16)**2 / (72 L s - 288 ln(L + s) + 288 ln 2)
        s = sqrt(L**2 + 4),   L = depth / radius

    Arguments: depth_to_radius [-], 0 to 50
    Returns: float [-], 1 for a thin wall
    Raises: InputError for depth_to_radius
    Assumes: sides insulated and diffuse, each ring at the temperature that balances it. Treating the whole side as one
        zone, (1 + F)/2 with F the view factor of two equal discs, is the usual hand form and never falls below 1/2; it
        reads 3 % high at depth = radius, 14 % at depth = diameter and twice the right figure at four diameters
    Source: A. S. Berman, J. Appl. Phys. 36 (1965) 3356, written for gas molecules in a tube, which scatter from its
        side by the same law. Published, recalled.
    Checked by: tests/reference/openings.csv (Clausing 1932), and a solution by rings in tests/test_openings.py (2e-5)
    """
    require(
        0 <= depth_to_radius <= 50,
        "depth_to_radius",
        depth_to_radius,
        "must be within 0 to 50 (deeper than 25 diameters)",
        "50" if depth_to_radius > 50 else "0",
    )
    deep = depth_to_radius
    if deep < 0.01:
        return 1 - deep / 2 + deep**2 / 4  # the closed form cancels here; the series is right to 1e-7
    s = sqrt(deep**2 + 4)
    return (
        1
        + deep**2 / 4
        - deep * s / 4
        - ((8 - deep**2) * s + deep**3 - 16) ** 2 / (72 * deep * s - 288 * log(deep + s) + 288 * log(2))
    )


def opening_loss_W(*, area_m2, depth_m, chamber_temp_K, ambient_temp_K):
    """Radiation out of a black chamber through one opening of thickness `depth_m`.

        Q = W sigma A (Tc**4 - Ta**4),   W of the round hole of the same area

    Arguments:
        area_m2          of the opening, 0 for none    [m2]
        depth_m          of the opening                [m]    0 or more
        chamber_temp_K   [K]
        ambient_temp_K   [K]
    Returns: float [W]
    Raises: InputError for opening_area or opening_depth
    Assumes: square and slot openings count as round ones of equal area; a slot of 1 to 4 loses up to about 10 % less.
        A hole deeper than 25 diameters counts as one of 25, which loses more.
        Gas that leaves through the opening is not here: it is the flue loss.
    Checked by: tests/test_openings.py
    """
    require(0 <= area_m2 < 100, "opening_area", area_m2, "must be 0 or more and below 100 m2", "0")
    require(0 <= depth_m < 10, "opening_depth", depth_m, "must be 0 or more and below 10 m", "0")
    if area_m2 == 0:
        return 0.0
    radius_m = sqrt(area_m2 / pi)
    deep = depth_m / radius_m if depth_m < 50 * radius_m else 50.0
    return (
        opening_factor(deep)
        * area_m2
        * radiation_W_m2(emissivity=1.0, hot_temp_K=chamber_temp_K, cold_temp_K=ambient_temp_K)
    )
