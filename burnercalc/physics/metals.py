"""Heat that the work takes up from room temperature to its working temperature, melting included."""

from dataclasses import dataclass
from functools import cache

from ..errors import require
from ..tables import find, interpolate, read_table


@dataclass(frozen=True)
class Metal:
    """One work metal; temps_K and heats_J_kg belong together, heat content above 25 degC."""

    key: str
    name: str
    density_kg_m3: float
    solidus_K: float
    liquidus_K: float
    source: str
    trust: str
    temps_K: tuple
    heats_J_kg: tuple


@cache
def metal(key):
    """The Metal `key` of data/metals.csv; InputError for `work_metal` with the known keys otherwise."""
    row = find("metals", "key", key, "work_metal")
    points = [p for p in read_table("metal_heat") if p["key"] == key]
    return Metal(
        key,
        row["name"],
        row["density_kg_m3"],
        row["solidus_C"] + 273.15,
        row["liquidus_C"] + 273.15,
        row["source"],
        row["trust"],
        tuple(p["temp_C"] + 273.15 for p in points),
        tuple(p["heat_kJ_kg"] * 1e3 for p in points),
    )


def metal_keys():
    """Keys of all work metals, in table order."""
    return tuple(row["key"] for row in read_table("metals"))


def metal_heat_J_kg(key, start_temp_K, end_temp_K):
    """Heat to bring 1 kg of a metal from start to end.

        q = h(end) - h(start), h from data/metal_heat.csv, straight lines between the rows

    Arguments:
        key            of data/metals.csv
        start_temp_K   [K]   from 223.15
        end_temp_K     [K]   from start to the last row of the metal; at a sharp melting point still solid
    Returns: float [J/kg]
    Raises: InputError for work_metal, ambient_temperature or work_temperature
    Assumes: melting counts as soon as the end is above the solidus; no scale, no slag
    Source: NASA TP-2002-211556 condensed species, EN 1993-1-2, Kopp's rule for alloys; trust in data/metal_heat.csv
    Checked by: tests/test_metals.py (cantera, EN 1993-1-2 integrals, latent heats of the library chemicals)
    """
    found = metal(key)
    first, last = found.temps_K[0], found.temps_K[-1]
    require(
        first <= start_temp_K <= 373.15,
        "ambient_temperature",
        f"{start_temp_K:g} K",
        f"must be within {first:g} to 373.15 K",
        "293.15 K",
    )
    require(
        start_temp_K <= end_temp_K <= last,
        "work_temperature",
        f"{end_temp_K:g} K",
        f"must be above the surroundings and at most {last:g} K for {found.name}",
        f"{start_temp_K if end_temp_K < start_temp_K else last:g} K",
    )
    return interpolate(end_temp_K, found.temps_K, found.heats_J_kg, "work_temperature") - interpolate(
        start_temp_K, found.temps_K, found.heats_J_kg, "ambient_temperature"
    )


def melt_state(key, temp_K):
    """solid, melting or liquid at `temp_K` [K]."""
    found = metal(key)
    if temp_K <= found.solidus_K:
        return "solid"
    return "liquid" if temp_K >= found.liquidus_K else "melting"
