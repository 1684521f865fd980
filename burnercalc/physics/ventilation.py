"""Fresh air that keeps carbon monoxide in the room down; a detector stays necessary whatever the figures say."""

from ..errors import require
from ..tables import read_table


def co_limits():
    """Exposure limits of carbon monoxide: tuple of rows with name, limit_ppm, basis, source, trust (exact figures)."""
    return read_table("co_limits")


def co_alarms():
    """Levels at which an alarm is silent: tuple of rows with ppm and silent_min, the highest first."""
    return read_table("co_alarms")


def co_silent_fraction(time_s):
    """Share of carbon monoxide at which an alarm stays silent for a while: the highest level of its test that does [-].

    Arguments:
        time_s   at this share   [s]   0 or more
    Returns:
        float    the lowest level where the time is longer than an alarm is tested for   [-]
    Assumes:
        an alarm as sensitive as the standard lets it be
    Source:
        EN 50291-1 (co_alarms.csv, memory)
    Checked by:
        tests/test_ventilation.py
    """
    require(0 <= time_s < float("inf"), "time_s", time_s, "must be 0 or more")
    levels = [row["ppm"] for row in co_alarms() if 60 * row["silent_min"] >= time_s]
    return 1e-6 * max(levels, default=min(row["ppm"] for row in co_alarms()))


SHIFT_S = 8 * 3600.0


def co_limit_for(time_s, shift_fraction, ceiling_fraction):
    """Share of carbon monoxide that may be breathed for a while, the rest of the shift being clean.

        x = min(x_ceiling, x_shift 8 h/t)

    Arguments:
        time_s             t, at this share                       [s]   0 or more
        shift_fraction     x_shift, mean over a shift of 8 h      [-]   above 0
        ceiling_fraction   x_ceiling, never above                 [-]   above 0
    Returns:
        float              x                                      [-]
    Assumes:
        limits of healthy workers: not of children, of the pregnant, of weak hearts
    Source:
        mean and ceiling of the limits (co_limits.csv); no more than the mean over the shift (calculated)
    Checked by:
        tests/test_ventilation.py
    """
    require(0 <= time_s < float("inf"), "time_s", time_s, "must be 0 or more")
    require(0 < shift_fraction <= 1, "shift_fraction", shift_fraction, "must be above 0 and at most 1")
    require(0 < ceiling_fraction <= 1, "ceiling_fraction", ceiling_fraction, "must be above 0 and at most 1")
    return min(ceiling_fraction, shift_fraction * SHIFT_S / time_s) if time_s else ceiling_fraction


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
    require(0 <= dry_flue_m3_s < float("inf"), "dry_flue_m3_s", dry_flue_m3_s, "must be 0 or more")
    require(0 <= co_air_free_fraction <= 1, "co_air_free_fraction", co_air_free_fraction, "must be within 0 to 1")
    require(0 < limit_fraction <= 1, "limit_fraction", limit_fraction, "must be above 0 and at most 1")
    return dry_flue_m3_s * co_air_free_fraction / limit_fraction
