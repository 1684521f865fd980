"""Lining materials: conductivity, heat capacity and limits over temperature, and the reading of a layer list."""

from bisect import bisect_right
from dataclasses import dataclass
from difflib import get_close_matches
from functools import cache, cached_property
from math import sqrt

from ..errors import InputError, InputErrors, require
from ..tables import find, read_table

TEMP_MIN_K, TEMP_MAX_K = 223.15, 2073.15  # first and last row of every material in data/lining_properties.csv


@dataclass(frozen=True)
class Material:
    """One lining material; the tuples belong together row by row, the integrals run from the first temperature.
    `limit_K`: in continuous use; `class_K`: by which its class is named. `sold`: brick, sheet or cast."""

    key: str
    name: str
    sold: str
    density_kg_m3: float
    limit_K: float
    class_K: float
    source: str
    trust: str
    temps_K: tuple
    conductivities_W_mK: tuple
    heat_capacities_J_kgK: tuple
    conductivity_integrals_W_m: tuple
    enthalpies_J_kg: tuple

    def _row(self, temp_K):
        if not self.temps_K[0] <= temp_K <= self.temps_K[-1]:
            raise InputError(
                "temp_K",
                temp_K,
                f"must be within {self.temps_K[0]:g} to {self.temps_K[-1]:g} K for {self.key}",
                f"{min(max(temp_K, self.temps_K[0]), self.temps_K[-1]):g}",
            )
        return bisect_right(self.temps_K, temp_K, 1, len(self.temps_K) - 1) - 1

    def _line(self, values, temp_K):
        i = self._row(temp_K)
        t0, t1 = self.temps_K[i], self.temps_K[i + 1]
        return values[i] + (values[i + 1] - values[i]) * (temp_K - t0) / (t1 - t0)

    def _area(self, values, sums, temp_K):
        i = self._row(temp_K)
        t0, t1, step = self.temps_K[i], self.temps_K[i + 1], temp_K - self.temps_K[i]
        return sums[i] + step * (values[i] + 0.5 * (values[i + 1] - values[i]) * step / (t1 - t0))

    def conductivity_W_mK(self, temp_K):
        """Conductivity at `temp_K` [K], straight line between the table rows."""
        return self._line(self.conductivities_W_mK, temp_K)

    def heat_capacity_J_kgK(self, temp_K):
        """Heat capacity at `temp_K` [K], straight line between the table rows."""
        return self._line(self.heat_capacities_J_kgK, temp_K)

    def conductivity_integral_W_m(self, temp_K):
        """Integral of conductivity over temperature up to `temp_K` [K]; differences of it drive the heat flow."""
        return self._area(self.conductivities_W_mK, self.conductivity_integrals_W_m, temp_K)

    def enthalpy_J_kg(self, temp_K):
        """Integral of heat capacity over temperature up to `temp_K` [K]; only differences mean something."""
        return self._area(self.heat_capacities_J_kgK, self.enthalpies_J_kg, temp_K)

    def temp_at_integral_K(self, integral_W_m):
        """Inverse of conductivity_integral_W_m, carried on with the last conductivity beyond the table for a solver."""
        temps, k, sums = self.temps_K, self.conductivities_W_mK, self.conductivity_integrals_W_m
        if integral_W_m >= sums[-1]:
            return temps[-1] + (integral_W_m - sums[-1]) / k[-1]
        i = bisect_right(sums, integral_W_m, 1) - 1
        slope = (k[i + 1] - k[i]) / (temps[i + 1] - temps[i])
        rest = integral_W_m - sums[i]
        # Root of k*s + slope*s**2/2 = rest, in the form that also holds for slope = 0.
        return temps[i] + 2 * rest / (k[i] + (k[i] ** 2 + 2 * slope * rest) ** 0.5)

    @cached_property
    def _by_enthalpy(self):
        """Where each row starts: enthalpy, temperature, conductivity and heat capacity, and how those two rise for each
        kelvin; past the last row they stay."""
        temps, k, c, sums = self.temps_K, self.conductivities_W_mK, self.heat_capacities_J_kgK, self.enthalpies_J_kg
        rises = [
            (0.0, 0.0) if i == len(temps) - 1 else tuple((v[i + 1] - v[i]) / (temps[i + 1] - temps[i]) for v in (k, c))
            for i in range(len(temps))
        ]
        return tuple((*row, *rise) for row, rise in zip(zip(sums, temps, k, c), rises))

    def states(self, enthalpies_J_kg):
        """Temperatures, conductivities and heat capacities at some enthalpies [K, W/m/K, J/kg/K], carried on with the
        last heat capacity beyond the table for a solver."""
        starts, rows, temps, conductivities, capacities = self.enthalpies_J_kg, self._by_enthalpy, [], [], []
        for enthalpy_J_kg in enthalpies_J_kg:
            h, temp, k, c, k_rises, c_rises = rows[bisect_right(starts, enthalpy_J_kg, 1) - 1]
            rest = enthalpy_J_kg - h
            rise = 2 * rest / (c + sqrt(c * c + 2 * c_rises * rest))
            temps.append(temp + rise)
            conductivities.append(k + k_rises * rise)
            capacities.append(c + c_rises * rise)
        return temps, conductivities, capacities


@cache
def material(key):
    """The Material `key` of data/linings.csv.

    Raises: InputError for `lining` with the known keys.
    Source: data/linings.csv and data/lining_properties.csv, trust per row.
    Checked by: tests/test_linings.py (VDI Heat Atlas rows against ht, class rows against neighbours)
    """
    row = find("linings", "key", key, "lining")
    points = [p for p in read_table("lining_properties") if p["key"] == key]
    temps = tuple(p["temp_C"] + 273.15 for p in points)
    k = tuple(p["conductivity_W_mK"] for p in points)
    cp = tuple(p["heat_capacity_J_kgK"] for p in points)
    limit_K = row["limit_C"] + 273.15 if row["limit_F"] is None else (row["limit_F"] + 459.67) / 1.8
    return Material(
        key,
        row["name"],
        row["sold"],
        row["density_kg_m3"],
        limit_K,
        limit_K if row["class_F"] is None else (row["class_F"] + 459.67) / 1.8,
        row["source"],
        row["trust"],
        temps,
        k,
        cp,
        _sums(temps, k),
        _sums(temps, cp),
    )


def _sums(xs, ys):
    sums = [0.0]
    for i in range(1, len(xs)):
        sums.append(sums[-1] + 0.5 * (ys[i] + ys[i - 1]) * (xs[i] - xs[i - 1]))
    return tuple(sums)


def material_name(key, units="in", full=False):
    """What a material is called by those who buy in inches or in millimetres; `full` as it is sold."""
    row, column = find("linings", "key", key, "lining"), "name" if full else "label"
    return (units == "mm" and row[f"{column}_mm"]) or row[column]


def material_keys():
    """Keys of all lining materials, in table order."""
    return tuple(row["key"] for row in read_table("linings"))


def parse_lining(text, length_m):
    """Layers of a lining from text such as `dense_castable 1in, blanket_8lb 2in`, from the hot face out.

    Arguments:
        text       material and thickness per layer, layers parted by commas
        length_m   function that turns a length as typed into metres; its ValueError text is passed on
    Returns: tuple of (material key, thickness_m)
    Raises: InputErrors with one InputError for `lining` per faulty layer
    Checked by: tests/test_linings.py
    """
    layers, errors = [], []
    for number, part in enumerate(text.split(","), 1):
        key, _, length = part.strip().partition(" ")
        try:
            require(key, "lining", f"layer {number} empty", "needs a material and a thickness", "dense_castable 1in")
            require(
                key in material_keys(),
                "lining",
                part.strip(),
                "must name a material that is known: " + ", ".join(material_keys()),
                f"{get_close_matches(key, material_keys(), 1, 0)[0]} {length.strip() or '1in'}",
            )
            require(length.strip(), "lining", part.strip(), "needs a thickness after the material", f"{key} 1in")
            try:
                thickness_m = length_m(length.strip())
            except ValueError as error:
                raise InputError(
                    "lining", part.strip(), f"needs a length after the material ({error})", f"{key} 1in"
                ) from error
            require(
                0 < thickness_m < 10, "lining", part.strip(), "needs a thickness above 0 and below 10 m", f"{key} 1in"
            )
            layers.append((key, thickness_m))
        except InputError as error:
            errors.append(error)
    if errors:
        raise InputErrors(errors)
    return tuple(layers)
