"""Area that two circles share."""

from math import acos, pi, sqrt


def shared_m2(one_m, other_m, apart_m):
    """Area that two circles have in common, by their radii and how far their middles are apart [m2].

    Source: geometry, the segments on either side of the chord
    Checked by: tests/test_making_tolerances.py
    """
    large, small = max(one_m, other_m), min(one_m, other_m)
    if not small or apart_m >= large + small:
        return 0.0
    if apart_m <= large - small:
        return pi * small * small
    x = (apart_m * apart_m + large * large - small * small) / (2 * apart_m)  # from the large one's middle to the chord
    height = sqrt(max(large * large - x * x, 0.0))
    sectors = large * large * acos(_cosine(x / large)) + small * small * acos(_cosine((apart_m - x) / small))
    return sectors - apart_m * height


def _cosine(value):
    return min(max(value, -1.0), 1.0)
