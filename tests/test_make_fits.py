"""The fits of the steel of the room Make: each limit from both sides, and what is said of it."""

import math
from dataclasses import replace

import pytest
from designs import ROUND_DEEP, solved

from burnercalc.checks import make as checks

IN = 0.0254
ROUND_BODY = {key: ROUND_DEEP[key] for key in ROUND_DEEP if key != "wall"}
PLATES = {"body_kind": "plates", "wall": "4 mm"}
END = {"inlet_position": "end", "inlet": "1-1/2"}


@pytest.fixture(scope="module")
def default():
    return solved()


@pytest.mark.parametrize(
    "key, texts, verdict, value_in",
    [
        # gap round the caps: 0.2 to 1.6 mm
        ("cap_fit", {"cap_gap": "0.199 mm"}, "caution", 0.199 / 25.4),
        ("cap_fit", {"cap_gap": "0.201 mm"}, "good", 0.201 / 25.4),
        ("cap_fit", {"cap_gap": "1.599 mm"}, "good", 1.599 / 25.4),
        ("cap_fit", {"cap_gap": "1.601 mm"}, "caution", 1.601 / 25.4),
        # lip of plates: setback less wall; 1.5 and 4.5 mm
        ("lip_width", {**PLATES, "setback": "5.499 mm"}, "stop", 1.499 / 25.4),
        ("lip_width", {**PLATES, "setback": "5.5 mm"}, "caution", 1.5 / 25.4),
        ("lip_width", {**PLATES, "setback": "8.499 mm"}, "caution", 4.499 / 25.4),
        ("lip_width", {**PLATES, "setback": "8.5 mm"}, "good", 4.5 / 25.4),
        ("lip_width", {**PLATES, "setback": "10.4 mm", "cap_thickness": "6 mm"}, "caution", 4.4 / 25.4),
        # of a tube: less its inside corner, one wall more; the window's edge never on the rounded corner
        ("lip_width", {"wall": "4 mm", "setback": "7.999 mm"}, "stop", -0.001 / 25.4),
        ("lip_width", {"wall": "4 mm", "setback": "8 mm"}, "stop", 0.0),
        ("lip_width", {"wall": "3/16 in", "setback": "3/8 in"}, "stop", 0.0),
        ("lip_width", {"wall": "4 mm", "setback": "9.499 mm"}, "stop", 1.499 / 25.4),
        ("lip_width", {"wall": "4 mm", "setback": "9.5 mm"}, "caution", 1.5 / 25.4),
        ("lip_width", {"wall": "4 mm", "setback": "12.499 mm"}, "caution", 4.499 / 25.4),
        ("lip_width", {"wall": "4 mm", "setback": "12.5 mm"}, "good", 4.5 / 25.4),
        # hole less pipe: 2 7/16 less 2 3/8 in; 4 3/4 less 4 1/2 in is more than 4 mm
        ("inlet_hole", {}, "good", 1 / 16),
        ("inlet_hole", {"inlet": "4", "body_width": "6 in", "body_depth": "6 in"}, "caution", 0.25),
        ("inlet_hole", {"inlet": "1", "units": "mm"}, "good", (35 - 33.7) / 25.4),
        # caps of flat that is sold; a round body's discs, as thick as its wall or not
        ("cap_flat", {"cap_thickness": "1/4 in"}, "good", 0.0),
        ("cap_thickness", {}, "good", 3 / 16),
        ("cap_thickness", {"cap_thickness": "9/64 in"}, "good", 9 / 64),  # three quarters of 3/16
        ("cap_thickness", {"cap_thickness": "1/8 in"}, "caution", 1 / 8),
        ("cap_thickness", {"cap_thickness": "3/8 in"}, "good", 3 / 8),  # twice 3/16
        ("cap_thickness", {"cap_thickness": "7/16 in"}, "caution", 7 / 16),
        ("cap_flat", {"cap_thickness": "7/32 in"}, "caution", 1 / 32),
        ("cap_flat", {"wall": "0.237 in", **ROUND_BODY, "cap_thickness": "wall"}, "caution", 0.25 - 0.237),
        ("cap_flat", {"wall": "0.237 in", **ROUND_BODY}, "good", 0.0),
        ("cap_flat", {"wall": "0.237 in", "cap_thickness": "1/4 in"}, "good", 0.0),
        # cover: grip less wall; 4.5 and 9.5 mm
        ("lip_cover", {"wall": "4 mm", "grip": "8.499 mm"}, "stop", 4.499 / 25.4),
        ("lip_cover", {"wall": "4 mm", "grip": "8.5 mm"}, "caution", 4.5 / 25.4),
        ("lip_cover", {"wall": "4 mm", "grip": "13.499 mm"}, "caution", 9.499 / 25.4),
        ("lip_cover", {"wall": "4 mm", "grip": "13.5 mm"}, "good", 9.5 / 25.4),
        # inlet: holes of 3, 3 5/8 and 4 3/4 in for pipes of 2-1/2, 3 and 4
        # a side of 4 in with two corners of 3/8 in leaves 3 1/4 in flat, 3 5/8 in are clear inside
        ("inlet_fits", {"inlet": "2-1/2"}, "good", (3.25 - 3) / 2),
        ("inlet_fits", {"inlet": "3"}, "caution", (3.25 - 3.625) / 2),
        ("inlet_fits", {"inlet": "3", "body_width": "4 3/8 in"}, "good", 0.0),
        ("inlet_fits", {"inlet": "3", "body_width": "3 15/16 in"}, "stop", (3.1875 - 3.625) / 2),
        ("inlet_fits", {"inlet": "3", "body_kind": "plates"}, "good", (4 - 3.625) / 2),
        ("inlet_fits", {"inlet": "3", "body_kind": "plates", "body_length": "3 3/4 in"}, "stop", (3.375 - 3.625) / 2),
        ("inlet_fits", {"inlet": "3", "body_length": "4 1/4 in", "cap_thickness": "1/4 in"}, "caution", -0.1875),
        ("inlet_fits", {"inlet": "3", "body_length": "4 1/4 in", "cap_thickness": "3/8 in"}, "stop", -0.1875),
        # at the end: 3 5/8 in wide inside, 4 - 3/16 - 3/4 in = 3 1/16 in between block and back
        ("inlet_fits", {"inlet": "2-1/2", "inlet_position": "end", "caps": "on"}, "good", (3.0625 - 3) / 2),
        # the hole ends at the back's inside; a cap in the tube 1/64 in before it, one on the tube 3/16 in beyond
        ("inlet_fits", {"inlet": "2-1/2", "inlet_position": "end"}, "stop", -1 / 64),
        # no baffle: the hole stands in the middle of the plenum, 1/32 in before the back
        ("inlet_fits", {"inlet": "2-1/2", "inlet_position": "end", "baffle_holes": "0"}, "caution", 1 / 64),
        ("inlet_fits", {"inlet": "3", "inlet_position": "end"}, "stop", (3.0625 - 3.625) / 2),
        ("inlet_fits", {"inlet": "3", "inlet_position": "end", "grip": "3/16 in", "caps": "on"}, "good", 0.0),
        ("inlet_fits", {"inlet": "3", "inlet_position": "end", "body_width": "3 5/8 in"}, "stop", (3.0625 - 3.625) / 2),
        # round: a disc of 5 1/2 - 1/32 in, 5 1/2 in clear
        ("inlet_fits", {**ROUND_DEEP, "inlet": "4"}, "good", (5.46875 - 4.75) / 2),
        # baffle, flat: (4 - 3/8 - (grip - 3/16) - 1/16) / 2
        ("baffle_clear", {"baffle_bend_angle": "0 deg", "grip": "3 1/4 in", "block_thickness": "5 in"}, "good", 0.25),
        (
            "baffle_clear",
            {"baffle_bend_angle": "0 deg", "grip": "3 17/64 in", "block_thickness": "5 in"},
            "caution",
            0.25 - 1 / 128,
        ),
        # at the end baffle and hole stand side by side: 3 5/8 - 9/16 - 1/16 - 1 15/16 in, in three gaps
        (
            "baffle_clear",
            {"baffle_bend_angle": "0 deg", "inlet_position": "end", "inlet": "1-1/2"},
            "good",
            (3.625 - 0.5625 - 0.0625 - 1.9375) / 3,
        ),
        ("baffle_clear", {"inlet_position": "end"}, "stop", (3.625 - 0.5625 - 1.045152 - 2.4375) / 3),
        # on its way in: 1/16 in at flat sides; near the face or the back the corner is in the way
        ("baffle_goes_in", {}, "good", 1 / 16),
        (
            "baffle_goes_in",
            {"baffle_bend_angle": "0 deg", "wall": "1/4 in", "grip": "3 5/8 in", "block_thickness": "5 in"},
            "stop",
            # (3 1/2 - 3 3/8 - 1/16) / 2 = 1/32 in to block and back, in a corner of 1/4 in
            1 / 16 - 1 / 4 + math.sqrt((1 / 4) ** 2 - (1 / 4 - 1 / 32) ** 2),
        ),
        # pipe over the mould: face 1 3/4 in up, axis 3/4 + 3 1/16 / 2 in more, half of 1.9 in less, frame 3 in
        ("inlet_over_mould", {**END, "baffle_holes": "0"}, "good", 1.75 + 0.75 + 3.0625 / 2 - 0.95 - 3),
        # with the frame a 2x4, 3 1/2 in high, it does not pass
        (
            "inlet_over_mould",
            {**END, "baffle_holes": "0", "mould_board": "2x4"},
            "caution",
            1.75 + 0.75 + 3.0625 / 2 - 0.95 - 3.5,
        ),
        # base: 4 1/8 in + 2 x 23/32 + 2 in wide
        ("base_board", {"mould_base": "2x8"}, "stop", 4.125 + 2 * 0.71875 + 2),
        ("base_board", {"mould_base": "2x10"}, "good", 4.125 + 2 * 0.71875 + 2),
        # wider than long: turned on its board
        (
            "base_board",
            {"mould_base": "2x10", "body_length": "5 in", "body_width": "10 in"},
            "good",
            5.125 + 2 * 0.71875 + 2,
        ),
        # 7 9/16 and 11 9/16 in: 7 1/4 and 11 1/4 in, the widest board, are too narrow
        ("base_board", {"mould_base": "1x8", "body_length": "14 in"}, "stop", 4.125 + 2 * 0.71875 + 2),
        ("base_board", {"mould_base": "2x12", "body_width": "8 in"}, "stop", 8.125 + 2 * 0.71875 + 2),
        # corner drill: half of it against the radius of 3/16 in (4.7625 mm), to 0.1 mm
        ("corner_drill", {"corner_drill": "9.72 mm"}, "good", 4.86 / 25.4),
        ("corner_drill", {"corner_drill": "9.73 mm"}, "caution", 4.865 / 25.4),
        ("corner_drill", {"corner_drill": "9.33 mm"}, "good", 4.665 / 25.4),
        ("corner_drill", {"corner_drill": "9.32 mm"}, "caution", 4.66 / 25.4),
        # the rack: 4 x 4 in is there, 4 1/4 is not
        ("tube_on_rack", {}, "good", 0.0),
        ("tube_on_rack", {"body_width": "4 1/4 in"}, "note", 0.25),
        ("tube_on_rack", {"body_width": "100 mm", "body_depth": "100 mm"}, "good", 0.0),
    ],
)
def test_fits(key, texts, verdict, value_in):
    check = solved(**texts).checks[key]
    assert check.verdict == verdict, check.text
    assert check.value == pytest.approx(value_in * IN, abs=1e-8)
    assert verdict == "good" or check.changes


def test_no_piece_is_listed_wider_than_its_board():
    """A base of 7 9/16 in on a board of 7 1/4: under its stop it was sold, and cut, all the same."""
    for texts, works in (
        ({"mould_base": "1x8", "body_length": "14 in"}, "take 1x10 or plywood"),
        ({"mould_base": "2x12", "body_width": "8 in"}, "take plywood"),
    ):
        result = solved(**texts)
        assert works in result.checks["base_board"].text
        assert not result.tables["boards"].rows
        (base,) = (row for row in result.tables["mould"].rows if row[1] == "base board")
        assert "DO NOT CUT" in base[-1]
        assert any("what is sold is too small" in row[1] for row in result.tables["shopping"].rows)


@pytest.mark.parametrize(
    "judge, good, stop",
    [
        (lambda gap, part: checks.baffle_clear_check(replace(part, gap_m=gap), "centre", "in"), 0.25 * IN, 0.0),
        (
            lambda web, part: checks.baffle_holes_fit_check(replace(part, sheet=replace(part.sheet, web_m=web)), 0.002),
            0.002,
            0.0,
        ),
    ],
)
def test_room_for_the_baffle_and_its_holes(default, judge, good, stop):
    part = default.part("baffle_sheet")
    words = {
        place: judge(at + off, part)
        for place, at, off in (
            ("good", good, 1e-7),
            ("noise", good, -0.9e-9),
            ("caution", good, -1e-7),
            ("least", stop, 1e-7),
            ("none", stop, -0.9e-9),
            ("stop", stop, -1e-7),
        )
    }
    assert [judged.verdict for judged in words.values()] == ["good", "good", "caution", "caution", "caution", "stop"]
    assert all(judged.limit == good for judged in words.values())
    assert [*(judged.cases for judged in words.values())][-3:] == [("caution",), ("caution",), ("lacking",)]
    assert words["stop"].slots["lack"] == pytest.approx(1e-7) and words["stop"].slots["wanted"] == good


@pytest.mark.parametrize(
    "key, texts, limit_in, text",
    [
        (
            "cap_fit",
            {},
            1.6 / 25.4,
            "Caps go in with 1/64 in all round. Corners stay round at 3/16 in: square ones would jam by 1/16 in.",
        ),
        (
            "cap_fit",
            {"cap_gap": "0 in", "body_kind": "plates"},
            0.2 / 25.4,
            "A gap of 0 in round the caps is tight: allow 1/64 in or they have to be driven in.",
        ),
        (
            "cap_fit",
            {"cap_gap": "1/8 in"},  # wider than the square corner of a radius of 3/16 in needs: 0.41 / 1.41 of it
            1.6 / 25.4,
            "A gap of 1/8 in round the caps is wide: more than 1/16 in is bridged with weld.",
        ),
        (
            "lip_width",
            {"setback": "3/16 in"},
            4.5 / 25.4,
            "The window's edge lies 3/16 in on the tube's rounded corner, 3/8 in outside and 3/16 in inside: no flat "
            "ledge is left, and the cut does not run true. 11/64 in of ledge holds the block.",
        ),
        (
            "lip_cover",
            {"grip": "1/2 in"},
            9.5 / 25.4,
            "5/16 in of refractory stands over the lip; 3/8 in or more holds the block with ease.",
        ),
        (
            "inlet_fits",
            {"inlet": "3"},
            0.0,
            "The inlet hole runs 3/16 in into the rounded corners on each side: it can be welded, with more filler and "
            "a careful leak test.",
        ),
        (
            "inlet_fits",
            {"inlet": "4"},
            0.0,
            "The inlet hole is 1 1/8 in wider than the room inside the body. Take a smaller pipe or a wider body.",
        ),
        (
            "baffle_clear",
            {},
            0.25,
            "The baffle stands 1 in clear of block and inlet; 1/4 in or more lets the mixture round it.",
        ),
        (
            "corner_drill",
            {"corner_drill": "1/2 in"},
            3 / 16,
            "A 1/2 in drill leaves corners of 1/4 in, the face is drawn with 3/16 in: make the drill twice the radius.",
        ),
        (
            "tube_on_rack",
            {"body_width": "4 1/4 in"},
            0.0,
            "No common tube measures 4 1/4 in by 4 in; the nearest is 4x4 in, 1/4 in off. If yours is at hand and "
            "measured, keep it; else choose a common size, or weld four plates.",
        ),
        (
            "tube_on_rack",
            {"units": "mm", "body_width": "103 mm", "body_depth": "103 mm"},
            0.0,
            "No common tube measures 103 mm by 103 mm; the nearest is 100x100 mm, 3 mm off. If yours is at hand and "
            "measured, keep it; else choose a common size, or weld four plates.",
        ),
    ],
)
def test_what_the_checks_say(key, texts, limit_in, text):
    check = solved(**texts).checks[key]
    assert check.text == text and check.limit == pytest.approx(limit_in * IN, abs=1e-12)


def test_which_way_to_move_the_gap():
    def cures(gap):
        return [(change.setting, change.move) for change in solved(cap_gap=gap).checks["cap_fit"].changes]

    assert cures("0 in") == [("cap_gap", "raise")] and cures("1/8 in") == [("cap_gap", "lower")]


def test_corners_jam_up_to_their_gap(default):
    # A square corner in an inside radius r clears when the gap is r (1 - 1/sqrt 2); here r = 3/16 in.
    just = 3 / 16 * (1 - 1 / math.sqrt(2))
    cases = [solved(cap_gap=f"{just + off:.6f} in").checks["cap_fit"].text.count("jam") for off in (-1e-4, 1e-4)]
    assert cases == [1, 0]


def test_what_a_round_body_has_no_use_for_is_hidden_and_told_where_set(default):
    boxes = {"baffle_bend_angle", "corner_radius", "corner_drill"}
    plain, told = solved(**ROUND_BODY), solved(**ROUND_BODY, baffle_bend_angle="30 deg")
    for key in boxes:
        assert default.design.counts(key) and not plain.design.counts(key)
    assert "round_body" not in plain.checks and "round_body" not in default.checks
    assert "bend of 30° that is set does nothing" in told.checks["round_body"].text
    assert told.checks["round_body"].verdict == "note"
    assert solved().design.baffle_bend_angle == 60.0  # as checks take it to be unset


def test_a_round_body_has_discs_of_their_own():
    """6 5/8 in of 0.280 in wall and 5 in deep, discs of 1/4 in: the plenum is 5 - 1/4 - 3/4 in high and 6.065 in wide;
    the lip is covered 3/4 - 1/4 in; the back disc adds 1/4 in to the inlet pipe; bore less two gaps is the disc."""
    pipe = {**ROUND_BODY, "body_length": "6.625 in", "body_width": "6.625 in", "wall": "0.280 in"}
    thick, own = solved(**pipe, cap_thickness="wall"), solved(**pipe, cap_thickness="1/4 in")
    assert thick.checks["cap_flat"].verdict == "caution" and own.checks["cap_flat"].verdict == "good"
    assert "cap_thickness" in {change.setting for change in thick.checks["cap_flat"].changes}
    plenum, steel, inch = own.part("plenum"), own.part("steel"), 0.0254
    assert plenum.height_m == pytest.approx((5 - 0.25 - 0.75) * inch)
    assert plenum.width_m == pytest.approx(6.065 * inch * math.sqrt(math.pi) / 2)
    assert own.checks["lip_cover"].value == pytest.approx(0.5 * inch)
    assert thick.part("steel").inlet_piece.length_m - steel.inlet_piece.length_m == pytest.approx(0.030 * inch)
    disc = next(piece for piece in steel.body.pieces if piece.name == "face disc")
    gap = own.design.cap_gap
    assert (disc.thickness_m, disc.width_m) == (pytest.approx(0.25 * inch), pytest.approx(6.065 * inch - 2 * gap))


@pytest.mark.parametrize(
    "across, wall, verdict, words",
    [
        ("6 in", "1/4 in", "note", "6 in pipe is 6 5/8 in, its wall 9/32 in or 7/16 in"),
        ("6.625 in", "1/4 in", "note", "not 1/4 in"),
        ("6.625 in", "0.280 in", "good", "commonly stocked"),
        ("6 5/8 in", "7/16 in", "good", "commonly stocked"),
        ("168.3 mm", "4.5 mm", "good", "DN 150 pipe"),
    ],
)
def test_a_pipe_that_no_rack_holds_is_said(across, wall, verdict, words):
    check = solved(**{**ROUND_BODY, "body_length": across, "body_width": across, "wall": wall}).checks["tube_on_rack"]
    assert check.verdict == verdict and words in check.text


@pytest.mark.parametrize(
    "wall, verdict", [("3/16 in", "good"), ("0.12 in", "good"), ("6.3 mm", "good"), ("5/32 in", "note")]
)
def test_a_tube_wall_that_no_rack_holds_is_said(wall, verdict):
    check = solved(wall=wall).checks["tube_on_rack"]
    assert check.verdict == verdict and (verdict == "good" or "the nearest is 3/16 in" in check.text)
