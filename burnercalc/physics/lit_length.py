"""How much of a chamber's length the fire falls on: under each field of ports, and beside it as flames spread."""

from ..errors import require


def lit_share(field_m, burners, run_m, height_m, spread):
    """Share of a chamber's length on which the fire falls at least half as thick as straight below the ports.

        s = min(1, n (a + w H)/L)

    Flames leave a field of ports, meet the far wall and run out on it: the heat falls as a box as long as the field
    with slopes beside it, each as long as w H. Half way down the slopes that is as long as field and one slope.

    Arguments:
        field_m    a, of one burner's ports along the chamber              [m]   0 or more
        burners    n, evenly spaced                                        [-]   1 or more
        run_m      L, of the chamber                                       [m]   above 0
        height_m   H, from the ports to the far wall                       [m]   above 0
        spread     w, length of a slope over H                             [-]   0 or more
    Returns:
        float                                                              [-]
    Assumes:
        each burner in the middle of its own part of the length; no draught along the chamber, no work in the way
    Source:
        geometry; a spread of a half, a quarter to one whole: a zone model of our own, not measured (common practice)
    Checked by:
        tests/test_lit_length.py
    """
    for name, value, least in (("field_m", field_m, 0), ("burners", burners, 1), ("spread", spread, 0)):
        require(least <= value < float("inf"), name, value, f"must be {least} or more")
    for name, value in (("run_m", run_m), ("height_m", height_m)):
        require(0 < value < float("inf"), name, value, "must be above 0")
    return min(1.0, burners * (field_m + spread * height_m) / run_m)
