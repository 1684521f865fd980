"""Gas pipe of a house: how long a run of one size carries a flow at low pressure."""

from math import inf

from ..constants import AIR_MOLAR_MASS_KG_MOL, FOOT_M, INCH_M, INH2O_PA, STANDARD_PRESSURE_PA, STANDARD_TEMP_K
from ..errors import require
from .mixture import mixture_properties

CFH_M3_S = FOOT_M**3 / 3600
FLOW_TEMP_R = 520.0  # 60 degF, at which the codes count their flows


def longest_run_m(*, gas_m3_s, bore_m, drop_Pa, composition):
    """Longest run of pipe, fittings counted as pipe, that takes no more than a pressure.

        D = Q^0.381 / (19.17 (dH / (C L))^0.206),  C = 0.00354 S T (mu / S)^0.152

    Arguments:
        gas_m3_s      Q, at 15 degC and 101 325 Pa   [m3/s]   above 0
        bore_m        D                              [m]      above 0
        drop_Pa       dH                             [Pa]     above 0
        composition   (species, amount) pairs        [mol]
    Returns:
        float         L                              [m]
    Raises:
        InputError    a flow, bore or drop that is not above 0
    Assumes:
        gauge pressure below 1.5 psi; the formula's own units: ft3/h, in, in of water, ft, cP, degrees Rankine
    Source:
        low-pressure gas formula of the fuel gas codes (NFPA 54 and IFGC; memory)
    Checked by:
        tests/test_house_pipe.py against the capacities printed in the codes' table for 0.5 in of water
    """
    for name, value in (("gas_m3_s", gas_m3_s), ("bore_m", bore_m), ("drop_Pa", drop_Pa)):
        require(0 < value < inf, name, value, "must be above 0")
    gas = mixture_properties(composition, STANDARD_TEMP_K, STANDARD_PRESSURE_PA)
    dense, thick_cP = gas.molar_mass_kg_mol / AIR_MOLAR_MASS_KG_MOL, 1000 * gas.viscosity_Pas
    factor = 0.00354 * dense * FLOW_TEMP_R * (thick_cP / dense) ** 0.152
    steep = ((gas_m3_s / CFH_M3_S) ** 0.381 / (19.17 * bore_m / INCH_M)) ** (1 / 0.206)
    return drop_Pa / INH2O_PA / factor / steep * FOOT_M
