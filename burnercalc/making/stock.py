"""What stands on the rack: boards, plywood, tube, hole saws and the mass of steel.

Sizes are tables in burnercalc/data as printed; every function returns SI.
"""

import math
from dataclasses import dataclass
from functools import cache

from ..constants import INCH_M
from ..errors import InputError, require
from ..tables import read_table

THIN_WALLS = {"in": (1 / 16, 0.065, 5 / 64, 0.083, 0.120), "mm": (1.5, 2, 2.5, 6.3)}
METRES = {"in": INCH_M, "mm": 0.001}  # in one of the unit that a shop sells by
# What one cut of a circular saw for wood turns to dust, by the unit of the shop. Common practice.
WOOD_KERF_M = {"in": INCH_M / 8, "mm": 3e-3}
STEEL_DENSITY_KG_M3 = 7850.0  # EN 1993-1-1:2005, 3.2.6, same in EN 1993-1-2; published

PIPE_OVER = 0.01  # of its outside diameter a pipe may be over: ASTM A53 (memory)

# Neither the rack nor the saw knows less than this; differences below it are float noise [m].
NOISE_M = 1e-9


def mm(length_m):
    """Text of a length for messages, millimetres."""
    return f"{length_m * 1000:.4g} mm"


@dataclass(frozen=True)
class Board:
    """One sold board or panel: real sizes, width_m 0 for sheet goods."""

    name: str
    kind: str
    thickness_m: float
    width_m: float


@cache
def boards(kind=""):
    """Every board of lumber.csv in file order; `kind` board or plywood keeps only those.

    Source: PS 20 dressed sizes (memory; partly published), plywood common practice
    Checked by: tests/reference/stock_sizes.csv
    """
    return tuple(
        Board(row["name"], row["kind"], row["thickness_in"] * INCH_M, row["width_in"] * INCH_M)
        for row in read_table("lumber")
        if kind in ("", row["kind"])
    )


def board(name):
    """The Board sold as `name` ("2x4", "ply 3/4"); InputError lists what is known."""
    for one in boards():
        if one.name == name:
            return one
    raise InputError(
        "mould_board", name, "is not in the lumber table; known: " + ", ".join(b.name for b in boards()), "2x4"
    )


@dataclass(frozen=True)
class Tube:
    """One stocked tube section; `off_m` is how far it is from the size asked for (the larger of two sides)."""

    name: str
    width_m: float
    depth_m: float
    off_m: float


def nearest_tube(*, width_m, depth_m, unit=""):
    """The stocked rectangular or square tube nearest to width x depth, either way round.

    Arguments:
        width_m, depth_m   outside sizes [m] > 0
        unit               in or mm: only what is sold by it; "" looks on both racks
    Returns: Tube, turned so that width goes with width_m; off_m 0 when it is on the rack
    Source: inch sizes common practice, millimetre sizes EN 10219-2 (memory): steel_tubes.csv
    Checked by: tests/test_making_stock.py
    """
    require(width_m > 0, "body_width", mm(width_m), "must be above 0")
    require(depth_m > 0, "body_depth", mm(depth_m), "must be above 0")
    found = []
    for row in read_table("steel_tubes"):
        if unit not in ("", row["unit"]):
            continue
        a, b = row["width"] * METRES[row["unit"]], row["depth"] * METRES[row["unit"]]
        for w, d in ((a, b), (b, a)):
            off = max(abs(w - width_m), abs(d - depth_m))
            found.append((0.0 if off < NOISE_M else off, row["name"], w, d))
    off_m, *tube = min(found, key=lambda one: one[0])
    return Tube(*tube, off_m)


# Sides of sheet steel as sold: common practice.
SHEETS_M = {
    "in": tuple((a * INCH_M, b * INCH_M) for a, b in ((12, 12), (24, 12), (24, 24), (48, 24), (96, 48))),
    "mm": ((0.5, 0.25), (0.5, 0.5), (1.0, 0.5), (1.0, 1.0), (2.0, 1.0)),
}


def sheets_for(count, length_m, width_m, kerf_m, unit):
    """(sheets, their length and width) that so many equal blanks are cut from in straight rows, all one way round: of
    the smallest sheet that holds them all, else of the largest; None where it holds none.

    Source: geometry; SHEETS_M
    Checked by: tests/test_making_stock.py
    """

    def fits(sheet):
        def rows(a, b):
            return math.floor((sheet[0] + kerf_m) / (a + kerf_m) + 1e-9) * math.floor(
                (sheet[1] + kerf_m) / (b + kerf_m) + 1e-9
            )

        return max(rows(length_m, width_m), rows(width_m, length_m))

    sheet = next((one for one in SHEETS_M[unit] if fits(one) >= count), SHEETS_M[unit][-1])
    return (math.ceil(count / fits(sheet)), *sheet) if fits(sheet) else None


def tube_sides_m(unit):
    """Sides of the tube sold by `unit`, in or mm [m], ascending. Source: steel_tubes.csv"""
    rows = [row for row in read_table("steel_tubes") if row["unit"] == unit]
    return tuple(sorted({row[side] * METRES[unit] for row in rows for side in ("width", "depth")}))


@dataclass(frozen=True)
class StockPipe:
    """One stocked pipe: its outside diameter and its two walls."""

    name: str
    outside_m: float
    walls_m: tuple[float, float]


def nearest_pipe(*, outside_m, unit=""):
    """The stocked pipe nearest to an outside diameter, or that of this nominal size where one is taken for the other.

    Arguments: outside_m [m] > 0; unit in or mm: only what is sold by it; "" looks on both racks
    Returns: StockPipe
    Source: ASME B36.10M, EN 10220 (memory): steel_pipes.csv
    Checked by: tests/test_making_stock.py
    """
    require(outside_m > 0, "body_width", mm(outside_m), "must be above 0", "168.3 mm")
    rows = [row for row in read_table("steel_pipes") if unit in ("", row["unit"])]

    def off(row):
        out, nominal = (abs(row[size] * METRES[row["unit"]] - outside_m) for size in ("outside", "nominal"))
        return min(out, nominal), out

    row = min(rows, key=off)
    size = METRES[row["unit"]]
    return StockPipe(row["name"], row["outside"] * size, (row["wall"] * size, row["heavy_wall"] * size))


@cache
def tube_walls_m(unit):
    """Walls of tube sold by `unit`, in or mm [m]: those of flat bar, thin ones, and sheet by its gauge.

    Source: common practice; 0.065, 0.083 and 0.120 in are gauges 16, 14 and 11; 6.3 mm EN 10219-2 (memory)
    """
    return (*flat_sizes_m("thickness", unit), *(size * METRES[unit] for size in THIN_WALLS[unit]))


@cache
def pins_m(unit):
    """Diameters of dowel and rod sold by `unit`, in or mm [m], ascending. Source: common practice (pins.csv)"""
    return tuple(row["diameter"] * METRES[unit] for row in read_table("pins") if row["unit"] == unit)


@cache
def flat_sizes_m(kind, unit):
    """Sizes of flat bar sold by `unit`, in or mm [m], ascending; kind: width or thickness. Source: flats.csv"""
    return tuple(
        row["size"] * METRES[unit] for row in read_table("flats") if row["kind"] == kind and row["unit"] == unit
    )


def nearest_flat_thickness(*, thickness_m, unit=""):
    """(sold_m, off_m): the thickness of flat bar sold nearest to one asked for, and how far off that is.

    Arguments: thickness_m [m] > 0; unit in or mm: only what is sold by it; "" looks on both racks
    Source: flats.csv
    Checked by: tests/test_making_stock.py
    """
    require(thickness_m > 0, "cap_thickness", mm(thickness_m), "must be above 0", "5 mm")
    sold = [size for one in ([unit] if unit else METRES) for size in flat_sizes_m("thickness", one)]
    best = min(sold, key=lambda size: abs(size - thickness_m))
    return best, 0.0 if abs(best - thickness_m) < NOISE_M else abs(best - thickness_m)


def cap_thickness_m(*, wall_m, unit, chosen="auto"):
    """Thickness of caps or discs [m]: as chosen; "wall" is the body's; "auto" too where flat of that is sold, else
    the next thicker that is sold by `unit`, in or mm.

    Source: flats.csv
    Checked by: tests/test_making_stock.py
    """
    if chosen not in ("auto", "wall"):
        return chosen
    if chosen == "wall" or not nearest_flat_thickness(thickness_m=wall_m)[1]:
        return wall_m
    return next((size for size in flat_sizes_m("thickness", unit) if size > wall_m), wall_m)


def flat_width_m(*, width_m, unit):
    """Width of the narrowest flat bar sold by `unit` that gives a piece so wide [m]; None: cut it from plate.

    Source: flats.csv
    Checked by: tests/test_making_stock.py
    """
    require(width_m > 0, "body_width", mm(width_m), "must be above 0", "100 mm")
    return next((size for size in flat_sizes_m("width", unit) if size >= width_m - NOISE_M), None)


@cache
def hole_saws_m(unit="in"):
    """Diameters of the hole saws commonly sold by `unit`, in or mm [m], ascending. Source: common practice."""
    return tuple(row["diameter"] * METRES[unit] for row in read_table("hole_saws") if row["unit"] == unit)


def next_hole_saw(*, diameter_m, clearance_m=0.0, unit="in"):
    """(saw_m, clearance_m): the smallest hole saw over a pipe's outside diameter, and saw minus pipe.

    Arguments:
        diameter_m    what must pass, outside diameter [m] > 0
        clearance_m   least clearance on the diameter [m] >= 0
        unit          in or mm: the rack of that shop
    Raises: InputError for `inlet` when no saw is large enough
    Source: common practice (hole_saws.csv)
    Checked by: tests/reference/hole_saw.csv
    """
    require(diameter_m > 0, "inlet", mm(diameter_m), "must be above 0")
    require(clearance_m >= 0, "inlet_clearance", mm(clearance_m), "must be 0 or more", "0")
    for saw in hole_saws_m(unit):
        if saw >= diameter_m + clearance_m - NOISE_M:
            return saw, max(0.0, saw - diameter_m)
    largest = hole_saws_m(unit)[-1]
    raise InputError(
        "inlet",
        mm(diameter_m),
        f"needs a hole larger than the largest saw of {mm(largest)}; cut it with a torch and a circle guide",
        mm(largest - clearance_m),
    )


def inlet_hole(*, outside_m, unit="in"):
    """(saw_m, clearance_m): hole saw for an inlet pipe at its largest, and hole less nominal pipe.

        saw >= OD + max(1 % of OD, 1/64 in)

    Arguments: outside_m OD, nominal outside diameter of the pipe [m]; unit in or mm, the rack of that shop
    Source: ASTM A53: a pipe may be 1 % over its outside diameter, 1/64 in at NPS 1-1/2 and less (memory)
    Checked by: tests/test_making_stock.py
    """
    return next_hole_saw(diameter_m=outside_m, clearance_m=max(PIPE_OVER * outside_m, INCH_M / 64), unit=unit)


def plate_mass_kg(*, area_m2, thickness_m, density_kg_m3=STEEL_DENSITY_KG_M3):
    """Mass of a flat piece [kg] = area * thickness * density.

    Source: steel density EN 1993-1-1 (published)
    Checked by: tests/reference/steel_mass.csv
    """
    return area_m2 * thickness_m * density_kg_m3


def tube_inside_radius_m(wall_m):
    """Inside corner radius of welded rectangular tube [m], taken as one wall (outside two walls).

    Source: common practice; ASTM A500 allows outside radii up to three walls (memory)
    Checked by: tests/reference/steel_mass.csv (the handbook masses hold only with these radii)
    """
    return wall_m


def tube_section_m2(*, width_m, depth_m, wall_m, inside_radius_m):
    """Steel area of a rectangular tube [m2], rounded corners counted.

        A = W*D - (4-pi)*(r+t)**2 - [(W-2t)*(D-2t) - (4-pi)*r**2]

    Checked by: tests/reference/steel_mass.csv
    """
    t, r = wall_m, inside_radius_m
    require(
        0 < 2 * t < min(width_m, depth_m),
        "wall",
        mm(t),
        "must be above 0 and under half the narrow side",
        mm(min(width_m, depth_m) / 4),
    )
    require(0 <= 2 * r <= min(width_m, depth_m) - 2 * t, "tube_radius", mm(r), "must fit the bore", mm(t))
    return (
        width_m * depth_m
        - (4 - math.pi) * (r + t) ** 2
        - ((width_m - 2 * t) * (depth_m - 2 * t) - (4 - math.pi) * r**2)
    )


def pipe_section_m2(*, outside_m, wall_m):
    """Steel area of a round pipe [m2] = pi * (D - t) * t.

    Source: ASME B36.10M weight formula without its density (memory)
    Checked by: tests/reference/steel_mass.csv
    """
    require(
        0 < 2 * wall_m < outside_m, "wall", mm(wall_m), "must be above 0 and under half the diameter", mm(outside_m / 8)
    )
    return math.pi * (outside_m - wall_m) * wall_m
