"""Air through a cold chamber before and after lighting: how long it takes to clear it, how soon gas fills it again."""

from math import log

from ..errors import require


def volumes_time_s(volume_m3, flow_m3_s, volumes=1.0):
    """Time in which a flow brings so many volumes of a chamber.

        t = n V/Q

    Arguments:
        volume_m3   V, of the chamber                           [m3]     above 0
        flow_m3_s   Q, air to clear it, or mixture that fills   [m3/s]   above 0
        volumes     n                                           [-]      above 0
    Returns:
        float                                                   [s]
    Assumes:
        the flow as it is in the shop, the chamber cold
    Source:
        continuity
    Checked by:
        tests/test_purge.py
    """
    for name, value in (("volume_m3", volume_m3), ("flow_m3_s", flow_m3_s), ("volumes", volumes)):
        require(0 < value < float("inf"), name, value, "must be above 0")
    return volumes * volume_m3 / flow_m3_s


def purge_time_s(volume_m3, air_m3_s, volumes, least_s):
    """How long to blow air through before any gas: so many volumes of the chamber, a least time at least.

        t = max(n V/Q, t_least)

    Arguments:
        volume_m3   V, of the chamber              [m3]     above 0
        air_m3_s    Q, air while it is purged      [m3/s]   above 0
        volumes     n                              [-]      above 0
        least_s     t_least                        [s]      0 or more
    Returns:
        float                                      [s]
    Source:
        5 volumes at a quarter of full air or more, 30 s at full air, longer in proportion: BS 5990:2006, 15.5; 4
        volumes: NFPA 86 (memory)
    Checked by:
        tests/test_purge.py
    """
    require(0 <= least_s < float("inf"), "least_s", least_s, "must be 0 or more")
    return max(volumes_time_s(volume_m3, air_m3_s, volumes), least_s)


def stirred_time_s(volume_m3, flow_m3_s, left):
    """Time after which no more than a share of what a chamber held is left in it, well stirred by what flows in.

        t = V/Q ln(1/left)

    Arguments:
        volume_m3   V, of the chamber            [m3]     above 0
        flow_m3_s   Q, what flows in             [m3/s]   above 0
        left        share of what it held        [-]      above 0, below 1
    Returns:
        float                                    [s]
    Assumes:
        perfect mixing; of a flame the flow before it burns, so that hot gas, which swells, takes less
    Source:
        decay of what is stirred, dc/dt = -c Q/V: continuity
    Checked by:
        tests/test_purge.py
    """
    require(0 < left < 1, "left", f"{left:g}", "must be above 0 and below 1")
    return volumes_time_s(volume_m3, flow_m3_s, log(1 / left))
