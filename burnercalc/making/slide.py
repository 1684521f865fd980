"""The slide that sets the air: a hole drilled through its plate, the gap that its straight edge leaves, or both."""

from math import acos, pi, sqrt

from ..errors import require
from ..physics.root import bracketed_root
from .circles import shared_m2

BESIDE_M, TAIL_M = 0.006, 0.016  # of the plate beside the bore, and behind it to pull at: common practice
HOLE_THICKEST = 0.25  # of its hole: thicker, the hole is a short pipe and lets less through (common practice)


def plate_m(bore_m):
    """Width and length of the slide's plate over a bore: what is left beside it, and behind it to pull at [m].

    Source: common practice
    Checked by: tests/test_making_slide.py
    """
    require(bore_m > 0, "bore_m", bore_m, "must be above 0")
    return bore_m + 2 * BESIDE_M, bore_m + TAIL_M


def hole_m(bore_m, open_share):
    """Diameter of a hole with a share of a pipe's area [m].

        d = D sqrt(f)

    Arguments: bore_m, D [m]; open_share, f [-] above 0, up to 1
    Source: geometry
    Checked by: tests/test_making_slide.py
    """
    require(bore_m > 0, "bore_m", bore_m, "must be above 0")
    require(0 < open_share <= 1, "open_share", open_share, "must be above 0, up to 1")
    return bore_m * sqrt(open_share)


def gap_share(bore_m, gap_m):
    """Share of a round pipe's area that a straight edge leaves open [-].

        f = (theta - sin theta) / 2 pi,   cos(theta/2) = 1 - 2 h/D

    Arguments: bore_m, D [m]; gap_m, h [m] 0 to D
    Source: segment of a circle
    Checked by: tests/test_making_slide.py
    """
    require(bore_m > 0, "bore_m", bore_m, "must be above 0")
    require(0 <= gap_m <= bore_m, "gap_m", gap_m, "must be from 0 to the bore")
    cosine = 1 - 2 * gap_m / bore_m
    half = acos(cosine)
    return (half - cosine * sqrt(1 - cosine * cosine)) / pi


def open_share(bore_m, gap_m, bore_of_hole_m=0.0):
    """Share of a pipe's area that a slide leaves open: its gap, and what of its hole still lies in the pipe [-].

        f = gap_share + area common to pipe and hole / pipe,  the hole gap_m off the pipe's middle

    Arguments: bore_m, gap_m [m]; bore_of_hole_m [m], 0 for none: in the middle of the pipe when the slide is shut
    Source: segments of two circles
    Checked by: tests/test_making_slide.py
    """
    require(0 <= bore_of_hole_m <= bore_m, "bore_of_hole_m", bore_of_hole_m, "must be from 0 to the bore")
    return gap_share(bore_m, gap_m) + shared_m2(bore_m / 2, bore_of_hole_m / 2, gap_m) / (pi * bore_m**2 / 4)


def gap_m(bore_m, open_to, bore_of_hole_m=0.0):
    """Gap at which a slide leaves a share of a pipe open: the inverse of open_share; 0 where its hole alone does [m].

    Arguments: bore_m, bore_of_hole_m [m]; open_to, the share [-] above 0, up to 1
    Source: segments of two circles
    Checked by: tests/test_making_slide.py
    """
    require(0 < open_to <= 1, "open_share", open_to, "must be above 0, up to 1")
    if open_share(bore_m, 0.0, bore_of_hole_m) >= open_to:
        return 0.0
    return bracketed_root(lambda gap: open_share(bore_m, gap, bore_of_hole_m) - open_to, 0.0, bore_m)
