"""The burner in the chamber's wall, by hand."""

import pytest
from designs import solved

from burnercalc.making import mounting

IN = 0.0254


def words(result):
    return " ".join(" ".join(row) for row in result.tables["mounting"].rows)


def test_the_hole_and_the_depth_by_hand():
    """Block 9 1/8 x 4 1/8 in, 3/16 in of fibre at each side: 9 1/2 x 4 1/2 in. Lining of 3 1/2 in, block 1 3/4 in out
    of the body: that stands 1 3/4 in deep. The cross-bar, 1 1/4 in from the face and 3/4 in high, and 1/8 in to
    clamp it, puts the bracket at 2 1/8 in, 3/16 in off a gasket as thick. 9 1/8 in x 6e-6 x (2250 - 60) / 1.8 K =
    0.0666 in."""
    r = solved()
    m = r.part("mounting")
    assert (m.hole_length_m, m.hole_width_m) == pytest.approx((9.5 * IN, 4.5 * IN))
    assert (m.deep_m, m.bracket_m, m.spacer_m) == pytest.approx((1.75 * IN, 2.125 * IN, 3 * IN / 16))
    assert m.growth_m == pytest.approx(9.125 * IN * 6e-6 * 2190 / 1.8, rel=1e-3)
    told = words(r)
    for said in ("9 1/2 in by 4 1/2 in", "stands 1 3/4 in deep", "2 1/8 in from the face", "spacer of 3/16 in"):
        assert said in told, said


def test_a_block_longer_than_its_wall_and_a_round_one():
    thin = solved(lining="blanket_8lb 1 in")
    assert thin.part("mounting").deep_m == pytest.approx(-0.75 * IN)
    assert "ends 3/4 in outside it" in words(thin)
    thick = solved(lining="ifb_26 4 1/2 in, blanket_8lb 1 in")  # 3 3/4 in deep: beyond any cross-bar
    assert thick.part("mounting").spacer_m == 0 and "spacer" not in words(thick)
    assert thick.part("mounting").bracket_m == pytest.approx((3.75 + 0.1875) * IN)
    metric = solved(units="mm", body_kind="pipe", body_length="168 mm", body_width="168 mm", pattern="rings",
                    ports_per_row="15", mould_clearance="4 mm")  # fmt: skip
    assert "182 mm across: 5 mm at each side" in words(metric)  # 168 + 4 + 2 x 5


def test_what_the_wall_takes_is_on_every_list():
    """Angle of 1 1/4 x 1 1/4 x 1/8 in: 0.2969 in2, at 7,850 kg/m3 1.503 kg/m; two of 9 in weigh 0.687 kg, from one of
    24 in, which costs 0.9164 kg at 2 a pound. Bolts of 5/16 in through 1/8 in of shell, 3/16 in of gasket, 3/16 in of
    spacer, 1/8 in of angle, 0.609 in of nuts and washer: 1.234, sold as 1 1/4 in. Paper 9 x 4 in and an
    angle all round."""
    r, bare = solved(), solved(lining="ifb_26 4 1/2 in, blanket_8lb 1 in")
    angle, m = r.part("steel").angle, r.part("mounting")
    assert (angle.count, angle.length_m) == (2, pytest.approx(9 * IN))
    assert angle.mass_kg == pytest.approx(0.2969 * IN**2 * 7850 * 9 * IN, rel=1e-3)
    assert m.bolt_m == pytest.approx(1.25 * IN) == bare.part("mounting").bolt_m  # without the spacer 1.047
    flat = r.part("steel")
    beside = flat.body_kg + flat.inlet_piece.mass_kg + r.part("baffle_sheet").sheet.mass_kg
    assert r["burner_steel_mass"] - beside == pytest.approx(2 * angle.mass_kg)  # it is on the body when that is weighed
    assert mounting.angle_m2("in") == pytest.approx(0.2969 * IN**2, rel=1e-3)
    assert mounting.angle_piece(0.2, True, "mm").count == 4 == 2 * mounting.angle_piece(0.2, False, "mm").count
    (cut,) = [row for row in r.tables["cut_list"].rows if row[1] == "bracket angle"]
    assert cut[2:4] == (2, pytest.approx(9 * IN)) and "slots of 3/8 x 3/4 in" in cut[-1] and "2 1/4 in from" in cut[-1]
    bought = {row[0]: row[1:] for row in r.tables["shopping"].rows}
    assert bought["angle 1 1/4 x 1 1/4 x 1/8 in"][:2] == ("1 of 24 in", 1)
    assert bought["angle 1 1/4 x 1 1/4 x 1/8 in"][2] == pytest.approx(2 * 0.9164 / 0.45359237, rel=2e-3)
    fixing = bought["sundries"][0]
    assert "4 bolts of 5/16 in x 1 1/4 in, 8 nuts" in fixing and "3/16 in, 11 1/2 in x 6 1/2 in" in fixing
    assert ("cross-bar", "square 3/4 in, 10 9/16 in long or more, straight: steel or hard wood", 2) in [
        row[:3] for row in r.tables["tools"].rows
    ]
    seams = [row[1] for row in r.tables["welding"].rows]
    assert seams.index("second cap") < seams.index("bracket") < seams.index("leak test")
    dozen = {row[1]: row[2] for row in solved(batch_size="12").tables["batch_cut_list"].rows}
    assert dozen["bracket angle"] == 24


def test_the_bracket_never_passes_the_body():
    """In a mould of a 2x10 it stood 8 1/4 in from the face of a body 4 in deep: its leg of 1 1/4 in ends with it. In a
    wall of 5 1/2 in, 3 15/16 in deep with its gasket, that leg turns round; in 10 in flats carry it out to 8 7/16. On a
    body 3 in deep it lay where the cross-bars lie, 1 1/4 to 2 in from the face, and the frame round the body: a leg
    that clears them stands 3/8 in out behind; one turned round in a wall of 4 1/4 in would lie there too."""
    for texts, at, way in (
        ({"mould_board": "2x10"}, 2.75, "behind"),
        ({"mould_board": "2x6"}, 2.75, "behind"),
        ({"lining": "ifb_26 4 1/2 in, blanket_8lb 1 in"}, 3.9375, "before"),
        ({"lining": "ifb_26 9 in, blanket_8lb 1 in"}, 8.4375, "flats"),
        ({"body_width": "3 in", "body_depth": "3 in"}, 2.125, "behind"),
        ({"body_width": "3 in", "body_depth": "3 in", "lining": "ifb_26 3 in, blanket_8lb 1 1/4 in"}, 2.6875, "flats"),
    ):
        r = solved(**texts)
        assert (r.part("mounting").bracket_m, r.part("mounting").way) == (pytest.approx(at * IN), way), texts
        (do,) = [row[2] for row in r.tables["welding"].rows if row[1] == "bracket"]
        assert {"behind": "the other behind", "before": "the other before", "flats": "behind it on the flat"}[way] in do


def test_flats_that_bars_leave_no_room_for_are_as_wide_as_half_the_leg():
    """Bars that stand far behind the bracket left a flat of less than nothing, and no stock, list or cost."""
    angles = mounting.angle_piece(0.3, False, "mm")
    widths = [mounting.flat_pieces(from_m, 0.042, angles, "mm")[0].width_m for from_m in (0.05, 0.0571, 0.155)]
    assert widths == pytest.approx([0.022, 0.016, 0.016])  # 15 mm are not ripped out of 16


def test_flats_of_a_short_body_are_cut_bought_and_weighed():
    """10 in of lining. The frame ends 1 1/4 in from the face, then 3/4 in of cross-bar and 1/8 in of room; from there
    to the end of the leg behind 8 7/16 in are 7 9/16 in (mounting.flat_pieces). Two as long as the tube, of 1/8 in,
    from flat of 8 in. A body that reaches its bracket has none."""
    deep = {"lining": "ifb_26 9 in, blanket_8lb 1 in"}
    short, usual = solved(**deep), solved()
    wide = 7.5625 * IN
    assert short["bracket_flat"] == pytest.approx(wide) and usual["bracket_flat"] is None
    (row,) = [row for row in short.tables["cut_list"].rows if row[1] == "bracket flat"]
    kg = 2 * wide * short["tube_length"] * 0.125 * IN * 7850
    assert row[2] == 2 and row[3:6] == pytest.approx((short["tube_length"], wide, 0.125 * IN))
    assert row[7] == pytest.approx(kg) == short["burner_steel_mass"] - usual["burner_steel_mass"]
    assert any(line[0] == "flat 8 x 1/8 in" and "bracket flat" in line[2] for line in short.tables["stock"].rows)
    assert any(line[0] == "flat 8 x 1/8 in" for line in short.tables["shopping"].rows)
    assert not [row for row in usual.tables["cut_list"].rows if row[1] == "bracket flat"]


def test_a_pipe_is_carried_by_short_pieces_at_its_quarters():
    r = solved(sizes="mm", units="mm", body_kind="pipe", body_length="168.3 mm", body_width="168.3 mm", pattern="rings",
               ports_per_row="15")  # fmt: skip
    angle = r.part("steel").angle
    assert (angle.count, angle.length_m, angle.width_m) == (4, pytest.approx(0.03), pytest.approx(0.03))
    assert angle.mass_kg == pytest.approx(0.003 * 0.057 * 0.03 * 7850)  # t (2 a - t)
    assert "4 pieces of angle of 30 x 30 x 3 mm, 30 mm long" in words(r) and "M8" in words(r)


@pytest.mark.parametrize("deep_in, clear_in, at, off", [(3, 2, 3.1875, 0), (1, 2, 2, 0.8125), (-1, 2, 2, 2.8125)])
def test_the_bracket_stands_clear_of_mould_and_shell(deep_in, clear_in, at, off):
    found = mounting.bracket_m(deep_in * IN, clear_in * IN, 4 * IN, "in")
    assert found == pytest.approx((at * IN, off * IN))
    assert mounting.hole_m(0.1, "mm") == pytest.approx(0.11) and mounting.hot_growth_m(0.25, 1000) == pytest.approx(
        0.0015
    )


def test_flats_of_a_body_whose_back_lies_below_the_frames_top_begin_at_its_back():
    """A body 2 in deep in a frame of 5 1/2 in; its flats were asked to be narrower than nothing, which is no design."""
    found = solved(body_depth="2 in", mould_board="1x6").part("mounting")
    least_m = found.bracket_m + found.angle.leg_m - 2 * 0.0254  # 1 3/16 in, which flat of 1 1/4 in gives as it is
    assert found.way == "flats" and 0 < least_m < found.flat_m == pytest.approx(1.25 * 0.0254)


def test_a_flat_that_is_sold_a_hair_wider_is_not_ripped():
    """Two flats of 59 mm for each of a dozen were to be ripped out of flat of 60; one of 7 9/16 in is out of 8."""
    twelve = {"units": "mm", "sizes": "mm", "body_depth": "50 mm", "block_thickness": "65 mm", "grip": "25 mm",
              "lining": "dense_castable 25 mm, ifb_26 64 mm, blanket_8lb 25 mm", "wall": "3 mm"}  # fmt: skip
    short = solved(**twelve, rows="5", inlet="1-1/4", baffle_bend_angle="0 deg")
    assert short["bracket_flat"] == pytest.approx(0.060)
    (row,) = [row for row in short.tables["cut_list"].rows if row[1] == "bracket flat"]
    assert "rip" not in row[-1]
    baffle = next(row[-1] for row in short.tables["welding"].rows if row[1] == "baffle")
    assert "feet" not in baffle and "its side to the fire" in baffle
