"""Mould and pins: hand examples, common practice, refusals."""

import math

import pytest

from burnercalc.errors import InputError
from burnercalc.making import mould as m
from burnercalc.making.stock import boards

IN = 0.0254
COMMON = dict(
    body_length_m=6.5 * IN,
    body_width_m=3 * IN,
    mould_clearance_m=0.125 * IN,
    block_thickness_m=2.75 * IN,
    pin_depth_m=0.5 * IN,
)


def test_box_of_two_by_fours_by_hand():
    box = m.mould(**COMMON)
    side, end, base = box.pieces
    assert (box.inside_length_m, box.inside_width_m) == pytest.approx((6.625 * IN, 3.125 * IN))
    assert (side.length_m, side.width_m, side.thickness_m) == pytest.approx((9.625 * IN, 3.5 * IN, 1.5 * IN))
    assert (end.length_m, end.count) == (pytest.approx(3.125 * IN), 2)
    assert (base.length_m, base.width_m) == pytest.approx((11.625 * IN, 8.125 * IN))
    assert box.floor_m == pytest.approx((0.71875 - 0.5) * IN)
    assert box.screws_corner == 8 and (box.screws_side, box.screws_end) == (2, 1) and box.screws_base == 6
    assert box.screw == m.screw_across(1.5 * IN, "in") == "#10"
    assert m.screw_across(23 / 32 * IN, "in") == "#8" and m.screw_across(0.012, "mm") == "3.5 mm"
    assert box.screw_m == pytest.approx(2.5 * IN)


def test_plywood_is_ripped_to_the_height():
    box = m.mould(frame="ply 3/4", **COMMON)
    assert box.frame_height_m == pytest.approx(3.25 * IN)


def test_board_too_narrow_names_one_that_works():
    with pytest.raises(InputError) as caught:
        m.mould(frame="2x3", **COMMON)
    assert caught.value.field == "mould_board" and caught.value.nearest == "2x4"


def test_round_mould_is_stacked_to_the_height():
    box = m.round_mould(
        body_diameter_m=4.5 * IN,
        mould_clearance_m=0.125 * IN,
        block_thickness_m=2.5 * IN,
        pin_depth_m=0.5 * IN,
    )
    assert box.inside_width_m == pytest.approx(4.625 * IN)
    assert box.pieces[0].count == 5  # 3 in over 23/32 in layers
    assert box.frame_height_m == pytest.approx(5 * 0.71875 * IN)
    assert (box.screws_corner, box.screws_base) == (4 * 4, 4)  # four joints between five layers


SCREWS_IN, SCREWS_MM = (0.375, 0.5, 0.625, 0.75, 0.875, 1, 1.25, 1.5, 2), (10, 12, 16, 20, 25, 30, 35, 40, 50)


@pytest.mark.parametrize("ply", [board.name for board in boards("plywood") if board.thickness_m < 0.03])
def test_no_screw_of_a_layer_goes_on_into_the_base(ply):
    """One through the second layer that is longer than two layers holds the base, which must come off at first set.
    A length that is sold fits between; in the base it does not pass the lowest layer either."""
    box = m.round_mould(
        body_diameter_m=0.15, mould_clearance_m=0.003, block_thickness_m=0.06, pin_depth_m=0.005, frame=ply, base=ply
    )
    layer = box.pieces[0].thickness_m
    sold = [x * IN for x in SCREWS_IN] if not ply.endswith("mm") else [x / 1000 for x in SCREWS_MM]
    assert any(box.screw_m <= one < 2 * layer for one in sold) and layer < box.base_screw_m < 2 * layer


def test_a_metric_mould_has_round_figures():
    """A block of 65 mm, 12 mm over it; base 25 mm round a frame of 18 mm ply; screws 25 mm into the second board."""
    box = m.mould(body_length_m=0.2, body_width_m=0.08, mould_clearance_m=0.003, block_thickness_m=0.065,
                  pin_depth_m=0.013, frame="ply 18 mm", base="ply 18 mm", unit="mm")  # fmt: skip
    sizes = (box.frame_height_m, box.base_length_m, box.base_width_m, box.screw_m)
    assert sizes == pytest.approx((0.077, 0.203 + 0.036 + 0.05, 0.083 + 0.036 + 0.05, 0.045))
    assert m.pin_proud_m(room_m=0.05, unit="mm") == 0.010


def test_common_practice_pin_of_five_sixteenths_half_an_inch_into_the_base():
    """A 3 5/8 in stick makes one pin for a block of up to 3 1/8 in; 17 ports and 3 spares take 20 sticks."""
    got = m.pins(port_count=17, block_thickness_m=3 * IN, pin_depth_m=0.5 * IN, stock_length_m=3.625 * IN, spares=3)
    assert (got.length_m, got.count, got.pieces_per_stock, got.stock_count) == (pytest.approx(3.5 * IN), 20, 1, 20)


def test_a_pin_stands_proud_as_far_as_there_is_room():
    for room, proud in ((1.0, 0.375), (0.5, 0.375), (0.375, 0.25), (0.125, 0.0), (0.0, 0.0), (-0.2, 0.0)):
        assert m.pin_proud_m(room_m=room * IN) == pytest.approx(proud * IN)
    got = m.pins(port_count=17, block_thickness_m=2.75 * IN, pin_depth_m=0.5 * IN, proud_m=0.375 * IN,
                 stock_length_m=3.625 * IN)  # fmt: skip
    assert got.length_m == pytest.approx(3.625 * IN) and got.pieces_per_stock == 1


def test_the_knock_out_hole_leaves_a_shoulder():
    assert m.knock_out_drill(0.3125 * IN, "fraction").name == "5/32 in"
    assert m.knock_out_drill(0.25 * IN, "metric").name == "3.1 mm"  # half of 6.35 is 3.175


def test_a_round_mould_is_wider_by_its_own_saw_cut():
    box = m.round_mould(
        body_diameter_m=0.1, mould_clearance_m=0, block_thickness_m=0.06, pin_depth_m=0.012, kerf_m=0.003
    )
    layer = box.pieces[0]
    assert (layer.length_m, layer.width_m) == pytest.approx((0.176, 0.179)) and box.inside_width_m == pytest.approx(0.1)


def test_dowel_gives_whole_pins_only():
    got = m.pins(port_count=17, block_thickness_m=0.07, pin_depth_m=0.013, stock_length_m=0.915, kerf_m=0.002)
    assert got.pieces_per_stock == 10 and got.stock_count == 2


def test_short_stock_makes_no_pin():
    shallow = m.pins(port_count=5, block_thickness_m=0.09, pin_depth_m=0.0127, stock_length_m=0.092)
    assert shallow.pieces_per_stock == 0
    short = m.pins(port_count=5, block_thickness_m=0.1, pin_depth_m=0.0127, stock_length_m=0.092)
    assert short.stock_count == 0


def test_fill_line_times_free_area_is_the_mix():
    full_m2 = math.pi / 4 * 0.01**2
    with pytest.raises(InputError):
        m.fill_line_m(mix_volume_m3=0.0009, mould_area_m2=full_m2, port_count=1, port_diameter_m=0.01)
    depth = m.fill_line_m(mix_volume_m3=0.0009, mould_area_m2=0.0134, port_count=17, port_diameter_m=0.3125 * IN)
    assert depth * (0.0134 - 17 * math.pi / 4 * (0.3125 * IN) ** 2) == pytest.approx(0.0009)


def test_drilling_plan_counts_from_the_corner_and_mirrors():
    first, second = m.drilling_plan(
        ports=[(-0.02, 0.01), (0.03, -0.01)],
        port_diameter_m=0.008,
        pin_depth_m=0.012,
        base_length_m=0.3,
        base_width_m=0.2,
    )
    assert (first.x_m, first.y_m) == pytest.approx((0.17, 0.11))
    assert (second.number, second.x_m, second.y_m) == (2, pytest.approx(0.12), pytest.approx(0.09))


def test_pins_clear_of_the_mould_wall():
    ports = [(0.05, 0.0), (0.0, -0.03)]
    assert m.pin_wall_clearance_m(
        ports=ports, port_diameter_m=0.008, inside_length_m=0.12, inside_width_m=0.08
    ) == pytest.approx(0.006)
    assert m.pin_wall_clearance_m(
        ports=ports, port_diameter_m=0.008, inside_length_m=0.12, inside_width_m=0.12, round_mould=True
    ) == pytest.approx(0.006)


# Fractional drills go by 1/64 in, metric ones by 0.1 mm from 3 mm on; under 0.3 mm there are none of these.
@pytest.mark.parametrize(
    "port, family, name",
    [
        (0.3125 * IN, "fraction", "5/16 in"),
        (0.008, "fraction", "5/16 in"),
        (0.25 * IN, "fraction", "1/4 in"),
        (0.25 * IN - 1e-6, "fraction", "15/64 in"),
        (0.0079375, "metric", "7.9 mm"),
        (0.2 * IN, "metric", "5 mm"),
    ],
)
def test_cleaning_drill_never_widens_the_port(port, family, name):
    assert m.cleaning_drill(port, family).name == name


def test_a_port_finer_than_any_drill_is_refused():
    with pytest.raises(InputError, match="1/64 in"):
        m.cleaning_drill(0.9 / 64 * IN / 2, "metric")


@pytest.mark.parametrize(
    "change,field",
    [
        (dict(mould_clearance_m=-1e-3), "mould_clearance"),
        (dict(pin_depth_m=0.03), "pin_depth"),
        (dict(pin_depth_m=0), "pin_depth"),
        (dict(block_thickness_m=float("nan")), "block_thickness"),
        (dict(frame="2x5"), "mould_board"),
    ],
)
def test_names_the_field(change, field):
    with pytest.raises(InputError) as caught:
        m.mould(**{**COMMON, **change})
    assert caught.value.field == field
