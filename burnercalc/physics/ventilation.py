"""Air that the room needs: openings for combustion air, and fresh air that keeps carbon monoxide down.

The opening rules are for vented, adjusted appliances. A forge vents into the room, so the flow against carbon monoxide
rules; a detector stays necessary whatever the figures say.
"""

from ..errors import require
from ..tables import find, read_table

INCH2_M2 = 0.0254**2
FOOT3_M3 = 0.3048**3
BTU_H_W = 1055.05585262 / 3600


def co_limits():
    """Exposure limits of carbon monoxide: tuple of rows with name, limit_ppm, basis, source, trust (exact figures)."""
    return read_table("co_limits")


def co_dilution_flow_m3_s(dry_flue_m3_s, co_air_free_fraction, limit_fraction):
    """Fresh air that keeps a well-mixed room at a limit of carbon monoxide, all flue gas staying in the room.

        Q = V_dry x_CO / x_limit

    Arguments:
        dry_flue_m3_s          V_dry, air-free (stoichiometric) dry flue gas   [m3/s]
        co_air_free_fraction   x_CO in it                                      [-]      0 to 1
        limit_fraction         x_limit, e.g. 35e-6                             [-]      above 0
    Returns:
        float                  Q at the same reference state                   [m3/s]
    Assumes:
        fresh air free of CO; a steady state; perfect mixing, which no shop has
    Source:
        mass balance (calc)
    Checked by:
        tests/reference/ventilation.csv
    """
    require(0 <= dry_flue_m3_s < float("inf"), "dry_flue_m3_s", f"{dry_flue_m3_s:g}", "must be 0 or more")
    require(
        0 <= co_air_free_fraction <= 1, "co_air_free_fraction", f"{co_air_free_fraction:g}", "must be within 0 to 1"
    )
    require(0 < limit_fraction <= 1, "limit_fraction", f"{limit_fraction:g}", "must be above 0 and at most 1")
    return dry_flue_m3_s * co_air_free_fraction / limit_fraction


def combustion_air_opening_m2(firing_rate_W, rule):
    """Free area of each opening for combustion air.

        A = rate/(Btu/h per in2), and not below the rule's least area

    Arguments:
        firing_rate_W   all burners in the room, gross heating value      [W]    0 or more
        rule            a name in data/combustion_air.csv: outdoors-direct, outdoors-horizontal, indoors, one-opening
    Returns:
        float           free area of each opening                         [m2]
    Raises:
        InputError      unknown rule or negative rate
    Source:
        data/combustion_air.csv (published; one-opening: memory)
    Checked by:
        tests/reference/ventilation.csv
    """
    require(0 <= firing_rate_W < float("inf"), "firing_rate_W", f"{firing_rate_W:g}", "must be 0 or more")
    row = find("combustion_air", "rule", rule, "rule")
    return max(firing_rate_W / BTU_H_W / row["Btu_h_per_in2"], row["least_in2"]) * INCH2_M2


def unconfined_room_m3(firing_rate_W):
    """Room volume above which the fuel-gas rules call a space unconfined: 50 ft3 per 1000 Btu/h (published) [m3]."""
    require(0 <= firing_rate_W < float("inf"), "firing_rate_W", f"{firing_rate_W:g}", "must be 0 or more")
    return firing_rate_W / BTU_H_W / 1000 * 50 * FOOT3_M3
