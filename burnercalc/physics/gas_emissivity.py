"""How well a body of burned gas radiates, and takes up what walls radiate: by water vapour and carbon dioxide alone."""

from math import exp

from ..constants import ATM_PA
from ..errors import require
from ..tables import read_table

TEMP_RANGE_K = 600.0, 2400.0
LONGEST_PATH_ATM_M = 10.0

_GASES = {
    ratio: tuple(
        (row["k_1_atmm"], row["b1"], row["b2_1_K"], row["b3_1_K2"], row["b4_1_K3"])
        for row in read_table("gray_gases")
        if row["ratio_h2o_co2"] == ratio
    )
    for ratio in (1.0, 2.0)
}


def mean_beam_length_m(volume_m3, area_m2):
    """Path of radiation through a body of gas, seen from all of its surface.

        L = 3.6 V / A

    Arguments:
        volume_m3   of the gas                [m3]   above 0
        area_m2     of the walls around it    [m2]   above 0
    Returns: float [m]
    Raises: InputError for volume_m3 or area_m2
    Source: Hottel and Sarofim, Radiative Transfer, 1967: 0.9 of the optically thin limit 4 V / A. Published, recalled.
    Checked by: tests/test_gas_emissivity.py (cube 0.6 of its side, long cylinder 0.9 of its diameter)
    """
    require(0 < volume_m3 < float("inf"), "volume_m3", volume_m3, "must be above 0")
    require(0 < area_m2 < float("inf"), "area_m2", area_m2, "must be above 0")
    return 3.6 * volume_m3 / area_m2


def exchange_cubic(*, water_fraction, carbon_dioxide_fraction, path_m, wall_emissivity=1.0, pressure_Pa=ATM_PA):
    """How much of a black body's radiation burned gas and the gray walls around it exchange, as a cubic's coefficients.

        f(T) = c0 + c1 T + c2 T**2 + c3 T**3 = sum over gray gases of a_i(T) / (1 / e_i + 1 / e_wall - 1),
        e_i = 1 - exp(-k_i p L),   p = p_H2O + p_CO2,   gas to walls: sigma (f(Tg) Tg**4 - f(Tw) Tw**4);
        a straight line in the ratio p_H2O / p_CO2 between its values at 1 and 2

    Each gray gas is opaque to its own share of the spectrum and sees walls that reflect some of it back; the share of
    what the walls radiate is that at their own temperature, so colder walls are absorbed better than the gas emits.

    Arguments:
        water_fraction            mole fraction of H2O    [-]    0 to 1
        carbon_dioxide_fraction   mole fraction of CO2    [-]    0 to 1
        path_m                    mean beam length        [m]    0 or more; p L at most 10 atm m
        wall_emissivity           of gray walls; 1: f is the emissivity of the gas    [-]    above 0, at most 1
        pressure_Pa               of all the gas          [Pa]
    Returns: tuple of four floats [-, 1/K, 1/K2, 1/K3]
    Raises: InputError for an argument outside its limits
    Assumes: one temperature of the gas, one of the walls; the bands of the gas do not change with its temperature; a
        ratio below 1 or above 2 counts as 1 or 2 (propane 1.33, natural gas 1.9); no soot, and the CO of a rich flame
        does not radiate; 1 atm in all: partial pressures change with altitude, the broadening of lines does not
    Source: Smith, Shen and Friedman, J. Heat Transfer 104 (1982) 602, memory; gray walls around gray gases: Hottel and
        Sarofim, Radiative Transfer, 1967, published, recalled
    Checked by: tests/test_gas_emissivity.py (exchange_cubic by reflections summed one by one, with Leckner's emissivity
        and absorptivity within 16 %)
    """
    for field, value in (
        ("water_fraction", water_fraction),
        ("carbon_dioxide_fraction", carbon_dioxide_fraction),
    ):
        require(0 <= value <= 1, field, value, "must be within 0 to 1")
    require(0 < wall_emissivity <= 1, "wall_emissivity", wall_emissivity, "must be above 0 and at most 1")
    path_atm_m = (water_fraction + carbon_dioxide_fraction) * pressure_Pa / ATM_PA * path_m
    require(0 <= path_atm_m <= LONGEST_PATH_ATM_M, "path_m", path_m, "must give 0 to 10 atm m of H2O and CO2")
    # Of water vapour alone the ratio is infinite and counts as 2.
    below_two = water_fraction < 2 * carbon_dioxide_fraction
    ratio = max(water_fraction / carbon_dioxide_fraction, 1.0) if below_two else 2.0
    cubic = [0.0] * 4
    for at_ratio, share in ((1.0, 2 - ratio), (2.0, ratio - 1)):
        for k, *weights in _GASES[at_ratio]:
            absorbed = 1 - exp(-k * path_atm_m)
            # As 1 / (1 / absorbed + 1 / wall_emissivity - 1), for no gas at all too.
            taken = share * absorbed * wall_emissivity / (wall_emissivity + absorbed - absorbed * wall_emissivity)
            cubic = [c + taken * b for c, b in zip(cubic, weights)]
    return tuple(cubic)
