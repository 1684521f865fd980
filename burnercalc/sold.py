"""Which settings are bought by size, and the sizes that the reader's shop sells: what a step button steps to."""

from .constants import INCH_M
from .design import Design, limits
from .making.stock import flat_sizes_m, pins_m, tube_sides_m
from .physics import drills
from .settings import BY_KEY

SHEET_M = {"in": (INCH_M / 16,), "mm": (1e-3, 1.5e-3, 2e-3)}  # below the thinnest flat bar; common practice

STICKS_M = {
    "in": tuple(inches * INCH_M for inches in (12, 24, 36, 48, 72)),
    "mm": (0.3, 0.5, 1.0, 2.0, 3.0),
}  # the same


def sold_sizes_m(design: Design, key: str) -> tuple[float, ...]:
    """Sizes in which a setting is sold, ascending and within its range [m]; empty for what no shop sells by size."""
    unit = design.sizes
    if key in ("wall", "cap_thickness", "baffle_thickness"):
        sizes = (*SHEET_M[unit], *flat_sizes_m("thickness", unit))
    elif key in ("body_width", "body_depth") and design.body_kind == "tube":
        sizes = tube_sides_m(unit)
    elif key == "port_diameter":
        sizes = pins_m(unit)
    elif key == "pin_stock_length":
        sizes = STICKS_M[unit]
    elif key in ("corner_drill", "baffle_hole_diameter"):
        sizes = tuple(drill.diameter_m for drill in drills.drills("fraction" if unit == "in" else "metric"))
    else:
        return ()
    low, high = limits(BY_KEY[key])
    return tuple(size for size in sizes if (low or 0) - 1e-9 <= size <= (high or size) + 1e-9)


def next_sold(value: float, by: int, sizes: tuple[float, ...]) -> float:
    """The size so many steps above a value, or below it; the last one where there are no more, itself at the end."""
    found = [size for size in sizes if (size > value + 1e-9 if by > 0 else size < value - 1e-9)]
    if not found or by == 0:
        return value
    return found[min(by, len(found)) - 1] if by > 0 else found[-min(-by, len(found))]


def next_jet_drill(diameter_m: float, by: int, unit: str) -> str:
    """The name of the drill so many sizes from a hole: number, letter and fraction together, or metric."""
    families = ("metric",) if unit == "mm" else ("number", "letter", "fraction")
    names = {drill.diameter_m: drill.name for family in families for drill in drills.drills(family)}
    size = next_sold(diameter_m, by, tuple(sorted(names)))
    return names.get(size, min(names.items(), key=lambda known: abs(known[0] - diameter_m))[1])
