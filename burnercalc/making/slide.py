"""The slide that sets the air: a hole drilled through its plate, or the gap that its straight edge leaves in a pipe."""

from math import acos, pi, sqrt

from ..errors import require

HALVINGS = 50  # of the search for a gap: to a millionth of a millionth of the bore


def hole_m(bore_m, open_share):
    """Diameter of a hole with a share of a pipe's area [m].

        d = D sqrt(f)

    Arguments: bore_m, D [m]; open_share, f [-] above 0, up to 1
    Source: geometry
    Checked by: tests/test_making_slide.py
    """
    require(bore_m > 0, "bore_m", f"{bore_m:g}", "must be above 0")
    require(0 < open_share <= 1, "open_share", f"{open_share:g}", "must be above 0, up to 1")
    return bore_m * sqrt(open_share)


def gap_share(bore_m, gap_m):
    """Share of a round pipe's area that a straight edge leaves open [-].

        f = (theta - sin theta) / 2 pi,   cos(theta/2) = 1 - 2 h/D

    Arguments: bore_m, D [m]; gap_m, h [m] 0 to D
    Source: segment of a circle
    Checked by: tests/test_making_slide.py
    """
    require(bore_m > 0, "bore_m", f"{bore_m:g}", "must be above 0")
    require(0 <= gap_m <= bore_m, "gap_m", f"{gap_m:g}", "must be from 0 to the bore")
    cosine = 1 - 2 * gap_m / bore_m
    half = acos(cosine)
    return (half - cosine * sqrt(1 - cosine * cosine)) / pi


def gap_m(bore_m, open_share):
    """Gap at which a straight edge leaves a share of a pipe open: the inverse of gap_share [m].

    Arguments: bore_m [m]; open_share [-] above 0, up to 1
    Source: segment of a circle
    Checked by: tests/test_making_slide.py
    """
    require(0 < open_share <= 1, "open_share", f"{open_share:g}", "must be above 0, up to 1")
    low, high = 0.0, bore_m
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if gap_share(bore_m, middle) < open_share else (low, middle)
    return (low + high) / 2
