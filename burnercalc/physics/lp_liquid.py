"""Boiling liquid of the LP gases: pressure, density, heat of vaporisation and heat capacity over temperature.

Of the pure fluids; bottled propane with its ethane and propylene stands up to 15 % higher in pressure.
"""

from functools import cache
from math import exp, log

from ..errors import InputError
from ..tables import interpolate, read_table


@cache
def _columns(species):
    rows = [row for row in read_table("lp_saturation") if row["species"] == species]
    if not rows:
        raise InputError(
            "fuel",
            species,
            "is not sold as liquid in cylinders; known: "
            + ", ".join(dict.fromkeys(row["species"] for row in read_table("lp_saturation"))),
        )
    return {key: [row[key] for row in rows] for key in rows[0] if key != "species"} | {
        "inverse": [-1 / row["temp_K"] for row in rows],
        "log_pressure": [log(row["pressure_Pa"]) for row in rows],
    }


def saturation_pressure_Pa(species, temp_K):
    """Absolute pressure of the boiling liquid, ln p a straight line in 1/T between rows 5 K apart.

    Arguments:
        species   C3H8, C4H10, iC4H10 or C3H6
        temp_K    liquid                        [K]    200 to 340
    Returns:
        float     absolute                      [Pa]
    Raises:
        InputError   outside the table
    Source:
        data/lp_saturation.csv, CoolProp (published)
    Checked by:
        tests/reference/lp_saturation.csv
    """
    columns = _columns(species)
    if not columns["temp_K"][0] <= temp_K <= columns["temp_K"][-1]:
        interpolate(temp_K, columns["temp_K"], columns["temp_K"], "temp_K")  # refuses it, in kelvins
    return exp(interpolate(-1 / temp_K, columns["inverse"], columns["log_pressure"], "temp_K"))


def saturation_temp_K(species, pressure_Pa):
    """Temperature at which the liquid boils at an absolute pressure, the inverse of saturation_pressure_Pa [K]."""
    columns = _columns(species)
    interpolate(pressure_Pa, columns["pressure_Pa"], columns["pressure_Pa"], "pressure_Pa")
    return -1 / interpolate(log(pressure_Pa), columns["log_pressure"], columns["inverse"], "pressure_Pa")


def liquid_density_kg_m3(species, temp_K):
    """Density of the boiling liquid [kg/m3], from data/lp_saturation.csv."""
    columns = _columns(species)
    return interpolate(temp_K, columns["temp_K"], columns["liquid_density_kg_m3"], "temp_K")


def latent_heat_J_kg(species, temp_K):
    """Heat of vaporisation [J/kg], from data/lp_saturation.csv."""
    columns = _columns(species)
    return interpolate(temp_K, columns["temp_K"], columns["latent_J_kg"], "temp_K")


def liquid_heat_capacity_J_kgK(species, temp_K):
    """Heat capacity of the boiling liquid [J/kg/K], from data/lp_saturation.csv."""
    columns = _columns(species)
    return interpolate(temp_K, columns["temp_K"], columns["liquid_heat_capacity_J_kgK"], "temp_K")
