"""Sizes of the rack against PS 20, HSS and pipe masses."""

import pytest
from rows import rows

from burnercalc.errors import InputError
from burnercalc.making import stock
from burnercalc.tables import read_table

IN, LB, FT = 0.0254, 0.45359237, 0.3048


@pytest.mark.parametrize("row", rows("stock_sizes.csv"), ids=lambda row: row["name"])
def test_sizes_are_those_of_the_standard(row):
    board = stock.board(row["name"])
    assert (board.thickness_m, board.width_m) == pytest.approx(
        (row["thickness_in"] * IN, row["width_in"] * IN), rel=1e-12
    )


@pytest.mark.parametrize(
    "row", rows("steel_mass.csv"), ids=lambda row: f"{row['kind']}-{row['a_in']:g}-{row['wall_in']:g}"
)
def test_masses_are_those_of_the_handbooks(row):
    wall = row["wall_in"] * IN
    if row["kind"] == "tube":
        area = stock.tube_section_m2(
            width_m=row["a_in"] * IN,
            depth_m=row["b_in"] * IN,
            wall_m=wall,
            inside_radius_m=stock.tube_inside_radius_m(wall),
        )
        mass = stock.plate_mass_kg(area_m2=area, thickness_m=FT)
    elif row["kind"] == "pipe":
        mass = stock.plate_mass_kg(
            area_m2=stock.pipe_section_m2(outside_m=row["a_in"] * IN, wall_m=wall), thickness_m=FT
        )
    else:
        mass = stock.plate_mass_kg(area_m2=row["a_in"] * row["b_in"] * IN**2, thickness_m=wall)
    assert mass / LB == pytest.approx(row["expected_lb"], abs=row["half_digit"])


def test_tube_of_the_inch_rack_has_the_walls_of_its_gauges():
    """Birmingham wire gauge 16, 14 and 11: 0.065, 0.083 and 0.120 in."""
    walls = [wall / IN for wall in stock.tube_walls_m("in")]
    assert all(any(abs(wall - gauge) < 1e-9 for wall in walls) for gauge in (0.065, 0.083, 0.120))


@pytest.mark.parametrize("row", rows("hole_saw.csv"), ids=lambda row: str(row["nps"]))
def test_common_practice_hole_saw_is_the_next_over_the_pipe(row):
    saw, clearance = stock.next_hole_saw(diameter_m=row["pipe_in"] * IN)
    assert (saw, clearance) == pytest.approx((row["saw_in"] * IN, row["clearance_in"] * IN), abs=1e-9)


def test_asked_clearance_moves_to_the_next_saw():
    saw, clearance = stock.next_hole_saw(diameter_m=2.375 * IN, clearance_m=0.5e-3)
    assert saw == pytest.approx(2.4375 * IN) and clearance == pytest.approx(0.0625 * IN)


@pytest.mark.parametrize(
    "outside_in, unit, saw_m",
    [
        (2.375, "in", 2.4375 * IN),  # 2.375 x 1.01 = 2.399 in
        (2.375, "mm", 0.064),  # 60.325 x 1.01 = 60.93 mm; 64 is sold, 61 is not
        (1.05, "in", 1.125 * IN),  # 1.05 + 1/64 = 1.0656 in, a hair over 1 1/16
        (3.5, "in", 3.625 * IN),  # 3.535 in
        (4.5, "mm", 0.121),  # 115.4 mm
    ],
)
def test_the_inlet_hole_clears_the_pipe_at_its_largest(outside_in, unit, saw_m):
    saw, clearance = stock.inlet_hole(outside_m=outside_in * IN, unit=unit)
    assert (saw, clearance) == pytest.approx((saw_m, saw_m - outside_in * IN))


def test_metric_racks_hold_what_is_sold():
    saws = [round(saw * 1000) for saw in stock.hole_saws_m("mm")]
    assert saws == sorted(set(saws)) and (saws[0], saws[-1]) == (19, 152) and {22, 25, 51, 64, 76, 102} <= set(saws)


def test_caps_are_of_the_next_thicker_flat_that_is_sold():
    """Walls of real pipe: 0.280 in takes 5/16 in, or 8 mm; 4 mm is sold to both racks, 30 mm and more by none."""
    wanted = {(0.280 * IN, "in"): 5 / 16 * IN, (0.280 * IN, "mm"): 0.008, (0.004, "in"): 0.004, (0.075, "mm"): 0.075}
    for (wall_m, unit), cap_m in wanted.items():
        assert stock.cap_thickness_m(wall_m=wall_m, unit=unit) == pytest.approx(cap_m)
        assert stock.cap_thickness_m(wall_m=wall_m, unit=unit, chosen="wall") == wall_m
        assert stock.cap_thickness_m(wall_m=wall_m, unit=unit, chosen=0.006) == 0.006


def test_flat_bar_is_taken_in_sizes_that_are_sold():
    assert stock.nearest_flat_thickness(thickness_m=3 / 16 * IN) == (pytest.approx(3 / 16 * IN), 0.0)
    assert stock.nearest_flat_thickness(thickness_m=0.120 * IN)[0] == pytest.approx(0.003)  # 3.05 mm
    sold, off = stock.nearest_flat_thickness(thickness_m=0.120 * IN, unit="in")
    assert (sold, off) == pytest.approx((0.125 * IN, 0.005 * IN))
    assert stock.flat_width_m(width_m=3.59 * IN, unit="in") == pytest.approx(4 * IN)
    assert stock.flat_width_m(width_m=3.59 * IN, unit="mm") == pytest.approx(0.100)
    assert stock.flat_width_m(width_m=4 * IN, unit="in") == pytest.approx(4 * IN)
    assert stock.flat_width_m(width_m=13 * IN, unit="in") is None


def test_plywood_sold_in_millimetres_has_that_thickness():
    assert stock.board("ply 18 mm").thickness_m == pytest.approx(0.018, abs=1e-9)


def test_hole_saws_ascend_and_tables_hold_positive_sizes():
    saws = stock.hole_saws_m()
    assert list(saws) == sorted(set(saws)) and saws[0] > 0.01
    for one in stock.boards():
        assert 0.004 < one.thickness_m < 0.1 and 0 <= one.width_m < 0.3


def test_nearest_tube_says_how_far_off():
    assert stock.nearest_tube(width_m=6 * IN, depth_m=3 * IN).off_m == 0
    odd = stock.nearest_tube(width_m=3.2 * IN, depth_m=3 * IN)
    assert odd.name == "80x80 mm" and odd.off_m == pytest.approx(0.080 - 3 * IN)
    odd = stock.nearest_tube(width_m=3.2 * IN, depth_m=3 * IN, unit="in")
    assert odd.name == "3x3 in" and odd.off_m == pytest.approx(0.2 * IN)
    assert stock.nearest_tube(width_m=0.060, depth_m=0.120).name == "120x60 mm"


@pytest.mark.parametrize(
    "across, unit, name",
    [
        (6.625 * IN, "", "6 in"),
        (6 * IN, "in", "6 in"),  # its nominal size, which is no diameter
        (4 * IN, "in", "3-1/2 in"),  # an outside diameter before a nominal size
        (0.150, "mm", "DN 150"),
        (0.1397, "", "DN 125"),
    ],
)
def test_nearest_pipe_by_its_diameter_or_its_name(across, unit, name):
    assert stock.nearest_pipe(outside_m=across, unit=unit).name == name


def test_pipe_for_a_body_is_that_of_the_pipe_table():
    """Outside diameter and schedule 40 wall of the sizes that both tables hold."""
    small = {row["od_in"]: row["wall_in"] for row in read_table("pipe_sizes")}
    both = [row for row in read_table("steel_pipes") if row["unit"] == "in" and row["outside"] <= 4.5]
    assert len(both) == 5
    for row in both:
        assert row["wall"] == small[row["outside"]] and row["heavy_wall"] > row["wall"]


def test_sheets_that_equal_blanks_are_cut_from():
    """By hand: of 8 1/2 x 4 in two by five on 24 x 24 in, for six rows and their cuts are over it; twelve take
    48 x 24."""
    blank = (8.5 * IN, 4 * IN, IN / 16, "in")
    assert stock.sheets_for(10, *blank) == (1, 24 * IN, 24 * IN) and stock.sheets_for(12, *blank) == (
        1,
        48 * IN,
        24 * IN,
    )
    assert stock.sheets_for(2, 0.9, 0.45, 0.002, "mm") == (1, 1.0, 1.0)
    assert (
        stock.sheets_for(9, 0.9, 0.45, 0.002, "mm") == (3, 2.0, 1.0)
        and stock.sheets_for(1, 3.0, 0.1, 0.0, "mm") is None
    )


@pytest.mark.parametrize(
    "call,field",
    [
        (lambda: stock.board("3x7"), "mould_board"),
        (lambda: stock.next_hole_saw(diameter_m=0.3), "inlet"),
        (lambda: stock.next_hole_saw(diameter_m=float("nan")), "inlet"),
        (lambda: stock.nearest_flat_thickness(thickness_m=0.0), "cap_thickness"),
        (lambda: stock.flat_width_m(width_m=float("nan"), unit="in"), "body_width"),
        (lambda: stock.tube_section_m2(width_m=0.05, depth_m=0.05, wall_m=0.03, inside_radius_m=0), "wall"),
        (lambda: stock.nearest_tube(width_m=-1, depth_m=1), "body_width"),
        (lambda: stock.nearest_pipe(outside_m=0.0), "body_width"),
    ],
)
def test_names_the_field(call, field):
    with pytest.raises(InputError) as caught:
        call()
    assert caught.value.field == field
