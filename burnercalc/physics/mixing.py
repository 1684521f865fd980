"""Whether air and gas are mixed at the end of the mix pipe, and whether a flame could walk back up it."""

from ..errors import require

# Pipe diameters from gas jet to plenum for an even mixture, gas let in on the axis; trade figures run from 8 to 20.
DIAMETERS_NEEDED = 10.0  # common practice
DIAMETERS_FOR_AN_ELBOW = 5.0  # what the swirl of an elbow counts for (common practice)

# Velocity swings of a turbulent pipe stream, root mean square over mean: 0.04 on the axis to 0.1 near the wall (memory
# of Laufer, NACA Report 1174, 1954). The larger one is used: it makes the faster flame.
TURBULENCE_INTENSITY = 0.1
# C in S_T/S_L = 1 + C u'/S_L: 1 by Damkoehler 1940, 2 near measured flames of weak turbulence (memory).
WRINKLING = 2.0


def mixing_diameters(length_m, bore_m, elbows=0):
    """Mixing length of a pipe in its diameters, elbows counted for five each.

        n = L/D + 5 elbows

    Arguments:
        length_m   straight length from the gas jet to the plenum   [m]   0 or more
        bore_m     of the pipe                                      [m]   above 0
        elbows     90 degree elbows after the gas jet               [-]   0 or more
    Returns:
        n   [-]; DIAMETERS_NEEDED is the common need
    Source:
        common practice
    Checked by:
        tests/test_mixing.py
    """
    require(0 <= length_m < float("inf"), "mix_pipe_length", f"{length_m:g} m", "must be 0 or more", "0 m")
    require(0 < bore_m < float("inf"), "bore_m", bore_m, "must be above 0")
    require(elbows >= 0, "elbows", elbows, "must be 0 or more", "0")
    return length_m / bore_m + DIAMETERS_FOR_AN_ELBOW * elbows


def turbulent_burning_velocity_m_s(laminar_m_s, velocity_m_s, intensity=TURBULENCE_INTENSITY, wrinkling=WRINKLING):
    """How fast a flame eats its way up a turbulent pipe stream.

        S_T/S_L = 1 + C u'/S_L,   u' = i U

    Arguments:
        laminar_m_s    S_L, laminar burning velocity      [m/s]   above 0
        velocity_m_s   U, mean velocity in the pipe       [m/s]   0 or more
        intensity      i, swings over mean                [-]     0 to 1
        wrinkling      C                                  [-]     0 to 5
    Returns:
        S_T   [m/s]; good to a factor of two at best
    Assumes:
        turbulent pipe stream; in a laminar one (Re up to 2300) use intensity 0, between by port_stream.turbulent_weight
    Source:
        form: Damkoehler, Z. Elektrochem. 46 (1940) 601 (published); C and intensity from memory
    Checked by:
        tests/test_mixing.py, and within a factor of two of Klimov's form as in Turns, An Introduction to Combustion
    """
    require(0 < laminar_m_s < float("inf"), "laminar_m_s", laminar_m_s, "must be above 0")
    require(0 <= velocity_m_s < float("inf"), "velocity_m_s", velocity_m_s, "must be 0 or more", "0")
    require(0 <= intensity <= 1, "intensity", intensity, "must be within 0 to 1", "0.1")
    require(0 <= wrinkling <= 5, "wrinkling", wrinkling, "must be within 0 to 5", "2")
    return laminar_m_s + wrinkling * intensity * velocity_m_s
