"""The steel of the room Make: pieces, window, inlet, baffle, bars and nipples, against hand take-offs and handbooks."""

import math

import pytest
from designs import KNOWN_BLOCK, ROUND_DEEP, solved
from hypothesis import given, settings
from making_designs import bench

from burnercalc import catalogue
from burnercalc.result import solve

IN, LB, FT = 0.0254, 0.45359237, 0.3048
STEEL = 7850.0  # kg/m3, EN 1993-1-1


@pytest.fixture(scope="module")
def known():
    return solved(**KNOWN_BLOCK)


@pytest.fixture(scope="module")
def default():
    return solved()


def close(expected, rel=1e-9):
    return pytest.approx(expected, rel=rel, abs=1e-12)


# --- pieces -----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "key, expected",
    [
        # by hand: caps in a 2 1/2 in bore; weld twice round 2 1/2 in squares with 1/4 in corners, and a 2 3/8 in pipe
        ("tube_length", 6.5 * IN),
        ("cap_length", 2.5 * IN),
        ("cap_width", 2.5 * IN),
        ("cap_corner", 0.25 * IN),
        ("weld_length", (2 * (8 + math.pi * 0.5) + math.pi * 2.375) * IN),
        # window 5 1/2 x 2 in between 3/8 in relief holes: 2 x 5 1/8 + 2 x 1 5/8 in
        ("window_cut_length", 13.5 * IN),
        ("corner_drill_inset", 0.1875 * IN),
        # NPS 2 is 2.375 in outside, 2.399 in at its largest; the saw of 2 7/16 in is commonly sold
        ("inlet_hole", 2.4375 * IN),
        ("inlet_hole_clearance", 0.0625 * IN),
    ],
)
def test_common_practice_body(known, key, expected):
    assert known[key] == close(expected)


def test_a_tube_weighs_what_handbooks_say_less_its_holes(known):
    # AISC: 3 x 3 x 1/4 in tube weighs 8.81 lb a foot (at 490 lb/ft3, EN says 0.01 % more); plate 10.2 lb/ft2 at 1/4 in.
    # Off it window (10.969822 in2) and inlet hole, on it two caps of 2 1/2 in with 1/4 in corners.
    tube = 8.81 * 6.5 / 12
    plates = 10.2 / 144 * (2 * (6.25 - 0.858407 * 0.0625) - 10.969822 - math.pi / 4 * 2.4375**2)
    assert known["body_mass"] == pytest.approx((tube + plates) * LB, rel=2e-3)


def test_caps_laid_on_shorten_the_tube_and_take_its_outside(known):
    r = solved(**KNOWN_BLOCK, caps="on")
    assert r["tube_length"] == close(6 * IN)
    assert (r["cap_length"], r["cap_width"], r["cap_corner"]) == (close(3 * IN), close(3 * IN), close(0.5 * IN))
    assert [row[8] for row in r.tables["cut_list"].rows][1] == "both ends, laid on"
    assert "cap_fit" not in r.checks


def test_a_gap_round_the_cap_is_left_twice():
    r = solved(**KNOWN_BLOCK | {"cap_gap": "1/32 in", "body_depth": "3 1/2 in"})
    assert (r["cap_length"], r["cap_width"]) == (close((3 - 1 / 16) * IN), close((2.5 - 1 / 16) * IN))


def test_plates_are_welded_along_four_edges():
    r = solved(**KNOWN_BLOCK, body_kind="plates")
    # by hand: four seams of 6 1/2 in, two squares of 2 1/2 in, the inlet
    assert r["weld_length"] == close((4 * 6.5 + 2 * 10 + math.pi * 2.375) * IN)
    assert r["cap_corner"] == 0
    # two plates of 3 in, two of 2 1/2 in, two caps, less window and inlet hole
    area = 6.5 * (2 * 3 + 2 * 2.5) + 2 * 6.25 - 10.969822 - math.pi / 4 * 2.4375**2
    assert r["body_mass"] == close(area * 0.25 * IN**3 * STEEL, 1e-6)
    assert r["body_stock"] == "flat 3 x 1/4 in"


def test_a_round_body_is_a_pipe_with_two_discs():
    r = solved(**ROUND_DEEP, cap_gap="1/64 in")
    disc = 6 - 0.5 - 1 / 32
    assert r["body_stock"] == "pipe 6 x 1/4 in"
    assert r["tube_length"] == close(5 * IN)
    assert r["cap_length"] == r["cap_width"] == close(disc * IN)
    assert r["cap_corner"] == close(disc / 2 * IN)
    assert r["weld_length"] == close(math.pi * (2 * disc + 2.375) * IN)
    assert r["window_cut_length"] == close(math.pi * 4.5 * IN)
    assert r["corner_drill_inset"] is None and "corner_drill" not in r.checks
    assert r.checks["tube_on_rack"].verdict == "note"  # 6 in outside: a pipe of that name is larger
    holes = math.pi / 4 * (4.5**2 + 2.4375**2)
    volume = math.pi * 5.75 * 0.25 * 5 + (2 * math.pi / 4 * disc**2 - holes) * 0.25
    assert r["body_mass"] == close(volume * IN**3 * STEEL)


def test_the_next_saw_over_the_pipe_is_taken():
    r = solved(inlet="1-1/2")  # 1.900 in outside; saws go by 1/16 in there
    assert r["inlet_hole"] == close(1.9375 * IN) and r["inlet_hole_clearance"] == close(0.0375 * IN)


def test_cut_list_of_a_tube(default):
    # by hand: 9 in tube; caps of 4 - 2 x 3/16 - 2 x 1/64 in; pipe of 3 + 3/16 in; baffle 9 - 2 x 3/16 - 2 x 1/16 in
    rows = default.tables["cut_list"].rows
    cap = 4 - 3 / 8 - 1 / 32
    assert [row[:3] for row in rows] == [
        (1, "body tube", 1),
        (2, "end cap", 2),
        (3, "bracket angle", 2),
        (4, "inlet pipe 2 in", 1),
        (5, "baffle", 1),
    ]
    assert [row[3:6] for row in rows[:4]] == [
        (close(9 * IN), close(4 * IN), close(3 / 16 * IN)),
        (close(cap * IN), close(cap * IN), close(3 / 16 * IN)),
        (close(9 * IN), close(1.25 * IN), close(IN / 8)),
        (close(3.1875 * IN), close(2.375 * IN), close(0.154 * IN)),
    ]
    assert [row[6] for row in rows] == [
        "228.6 x 101.6 x 4.8",
        "91.3 x 91.3 x 4.8",
        "228.6 x 31.8 x 3.2",
        "81.0 x 60.3 x 3.9",
        "215.9 x 101.3 x 1.6",
    ]
    # ASME B36.10M: NPS 2 weighs 3.66 lb a foot
    assert rows[3][7] == pytest.approx(3.66 * 3.1875 / 12 * LB, rel=2e-3)
    assert rows[0][7] + rows[1][7] == close(default["body_mass"])
    assert [row[8] for row in rows] == [
        "the body",
        "both ends, set in flush",
        "along each side",
        "back of the body",
        "between inlet and block",
    ]
    assert [row[9] for row in rows] == [
        "window in one side as wide as the face; inlet hole opposite",
        "round the corners so that they follow the tube; rip the flat to this width",
        "in one leg two slots of 3/8 x 3/4 in along it; their middles 2 1/4 in from its ends and 3/4 in from the "
        "outside of the other",
        "black steel, no zinc; one end threaded, the other cut square",
        "40 holes",
    ]
    assert rows[4][7] == close((8.5 * 3.988744 - 40 * math.pi / 4 * 0.375**2) / 16 * IN**3 * STEEL, 1e-6)


def test_no_way_is_called_long_that_is_short():
    """A cap of a body 10 in wide and 3 in deep is longer across; `Cap, long way 2 19/32 in` stood beside 9 19/32 in."""
    r = solved(body_length="8 in", body_width="10 in", body_depth="3 in", ports_per_row="5")
    assert r["cap_length"] < r["cap_width"] and r["mould_inside_length"] < r["mould_inside_width"]
    labels = [r.answers[key].label for key in ("cap_length", "mould_inside_length")]
    assert labels == ["Cap, front to back", "Mould inside, along the body"]
    assert not any("long side" in row[8] for row in r.tables["cut_list"].rows)


def test_the_cut_list_names_the_piece_that_the_inlet_goes_through():
    """An inlet at an end goes through one cap: no hole in the back, where one cut by the list would be scrap."""

    def notes(**texts):
        return {row[1].removesuffix(" 1-1/4 in"): row[8:] for row in solved(**texts).tables["cut_list"].rows}

    end = {"inlet_position": "end", "inlet": "1-1/4", "body_depth": "5 in"}
    for kind, back in (("tube", "body tube"), ("plates", "back plate")):
        told, two = notes(**end, body_kind=kind), notes(body_kind=kind, inlets="2", body_length="18 in")
        assert "hole" not in told[back][1] and "inlet hole cut in one of them" in told["end cap"][1]
        assert told["inlet pipe"][0] == "one end cap"
        assert "two inlet holes" in two[back][1] and "hole" not in two["end cap"][1]


def test_cut_list_of_plates_and_of_a_pipe():
    plates = solved(body_kind="plates", baffle_holes="0").tables["cut_list"].rows
    assert [(row[1], row[2], row[8], row[9]) for row in plates if row[1] != "bracket angle"] == [
        ("face plate", 1, "the face", "window cut in it"),
        ("back plate", 1, "opposite the face", "inlet hole cut in it"),
        ("side plate", 2, "between face and back", "rip the flat to this width"),
        ("end cap", 2, "both ends, set in flush", "square corners; rip the flat to this width"),
        ("inlet pipe 2 in", 1, "back of the body", "black steel, no zinc; one end threaded, the other cut square"),
    ]
    # two plates of 9 x (4 - 3/8) x 3/16 in
    assert plates[2][7] == close(2 * 9 * 3.625 * 0.1875 * IN**3 * STEEL)
    for caps, way in (("in", "set in flush"), ("on", "laid on")):
        pipe = solved(**ROUND_DEEP, caps=caps, baffle_holes="0").tables["cut_list"].rows
        assert [(row[1], row[2], row[8], row[9]) for row in pipe[:3]] == [
            ("body pipe", 1, "the body", "ends square to the axis"),
            ("face disc", 1, f"fire side, {way}", "round window cut in it"),
            ("back disc", 1, f"inlet side, {way}", "inlet hole cut in it"),
        ]


# --- baffle -----------------------------------------------------------------------------------------------------------


def test_a_bent_baffle_by_hand(default):
    # Inside 8 5/8 x 3 5/8 in, 1/16 in off all round; sheet T = 1/16 in bent by 60° on a radius of T, neutral at 0.4 T.
    # leg = ((3.5 - T/2)/2 - 1.5 T/2) / cos 30; allowance = 60° x 1.4 T; height = leg/2 + 1.5 T (1 - cos 30) + T/2 (1 +
    # cos 30)
    assert default["baffle_length"] == close(8.5 * IN)
    assert default["baffle_leg"] == close(1.948557 * IN, 1e-6)
    assert default["baffle_width"] == close((2 * 1.948557 + 0.0916298) * IN, 1e-6)
    assert default["baffle_height"] == close(1.045152 * IN, 1e-6)
    # Between block and back the baffle takes its height, the rest is halved.
    gap = (4 - 2 * 3 / 16 - (3 / 4 - 3 / 16) - 1.045152) / 2
    assert default["baffle_gap"] == close(gap * IN, 1e-6)
    assert default["baffle_stand"] == close((3 / 4 - 3 / 16 + gap) * IN, 1e-6)


def test_a_round_baffle_is_a_flat_disc():
    r = solved(**ROUND_DEEP, baffle_holes="1", baffle_hole_diameter="1 in")
    disc = 5.5 - 1 / 8
    assert r["baffle_length"] == r["baffle_width"] == close(disc * IN)
    assert r["baffle_leg"] == close(disc / 2 * IN) and r["baffle_height"] == close(IN / 16)
    assert r.checks["baffle_holes_fit"].value == close((disc - 1) / 2 * IN)


def test_without_a_baffle_there_is_nothing_to_say_of_it():
    r = solved(baffle_holes="0")
    keys = ("baffle_length", "baffle_width", "baffle_leg", "baffle_height", "baffle_stand", "baffle_gap")
    assert {r[key] for key in keys} == {None}
    assert not {"baffle_clear", "baffle_holes_fit", "baffle_bends"} & set(r.checks)
    assert len(r.tables["cut_list"].rows) == 4 and not r.part("baffle_sheet").trouble


def test_a_sheet_too_thick_for_its_bend_is_a_stop():
    # 2 in wide: 1 1/2 in inside less gaps leaves no leg beside a bend of 120° in 1/2 in sheet
    r = solved(
        baffle_thickness="1/2 in", body_width="2 in", setback="1/4 in", baffle_bend_angle="120 deg", baffle_holes="1"
    )
    check = r.checks["baffle_bends"]
    assert check.verdict == "stop" and check.value == close(IN / 2) and check.limit is None
    assert check.text == "The baffle cannot be made: its sheet must leave legs beside the bend."
    assert r["baffle_width"] is None and "baffle_clear" not in r.checks and len(r.tables["cut_list"].rows) == 4


# --- stock ------------------------------------------------------------------------------------------------------------


def test_steel_is_bought_once_for_the_batch():
    # Four burners of 9 in tube and 1/16 in cuts: 36 in of pieces and 4 cuts come out of one 4 ft length; eight caps of
    # 3 19/32 in are 28 3/4 in: six with their cuts come out of 2 ft, 21.94 in, and two out of a foot.
    four = solved(batch_size="4")
    rows = four.tables["stock"].rows
    *rows, long, short, shorter = rows  # eight angles of 9 in: five from 4 ft, two from 2 ft, one from a foot
    assert [row[1:3] for row in (long, short, shorter)] == [
        (close(48 * IN), "5 of 9 in bracket angle"), (close(24 * IN), "2 of 9 in bracket angle"),
        (close(12 * IN), "9 in bracket angle")]  # fmt: skip
    assert [row[0] for row in rows] == [
        "tube 4 x 4 x 3/16 in",
        "flat 4 x 3/16 in",
        "flat 4 x 3/16 in",
    ]  # the narrowest sold that gives 3 19/32 in
    assert [row[1] for row in rows] == [close(48 * IN), close(24 * IN), close(12 * IN)]
    left = (48 - 36 - 0.25, 24 - 6 * 3.65625, 12 - 2 * 3.65625)
    assert [row[3] for row in rows] == [close(inches * IN) for inches in left]
    assert [row[2] for row in rows] == [
        "4 of 9 in body tube", "6 of 3 19/32 in end cap", "2 of 3 19/32 in end cap"]  # fmt: skip
    assert four["steel_bought"] == close((7 + 7) * FT)
    assert four["steel_offcut"] == close((sum(left) + 84 - 8 * 9.0625) * IN)
    # AISC: 4 x 4 x 3/16 in tube weighs 9.42 lb a foot; flat by EN density
    assert rows[0][4] == pytest.approx(4 * 9.42 * LB, rel=2e-3)
    assert rows[1][4] + rows[2][4] == close(36 * 4 * 0.1875 * IN**3 * STEEL)


def test_pieces_of_one_section_come_from_one_bar():
    # Face and back are 4 in wide; both sides are 3 5/8 in as are caps without a gap, and come from 4 in too.
    r = solved(body_kind="plates", cap_gap="0 in", kerf="0 in", stock_lengths="4 ft")
    assert [(row[0], row[2]) for row in r.tables["stock"].rows[:-1]] == [
        (
            "flat 4 x 3/16 in",
            "9 in face plate, 9 in back plate, 2 of 9 in side plate, 2 of 3 5/8 in end cap",
        ),
    ]
    assert r["steel_bought"] == close(2 * 4 * FT) and r["steel_offcut"] == close((48 - 43.25 + 48 - 18) * IN)
    # Caps of another thickness are another bar; 3 5/8 in is sold as 4 in.
    r = solved(body_kind="plates", cap_gap="0 in", kerf="0 in", stock_lengths="4 ft", cap_thickness="1/4 in")
    assert [row[0] for row in r.tables["stock"].rows[:-1]] == ["flat 4 x 3/16 in", "flat 4 x 1/4 in"]


def test_caps_have_their_own_thickness():
    r = solved(cap_thickness="1/4 in")
    assert r.tables["cut_list"].rows[1][5] == close(IN / 4)
    assert r.part("plenum").length_m == close(8.5 * IN) and r.part("plenum").width_m == close(3.625 * IN)
    on = solved(cap_thickness="1/4 in", caps="on")
    assert on["tube_length"] == close(8.5 * IN) and on.part("plenum").length_m == close(8.5 * IN)


def test_flat_is_bought_in_a_width_that_the_reader_s_shop_sells():
    texts = {"body_kind": "plates", "cap_gap": "0.25 mm", "body_depth": "92 mm", "body_width": "4 in"}
    inch, metric = solved(**texts), solved(**texts, units="mm")
    assert {row[0] for row in inch.tables["stock"].rows} == {
        "flat 4 x 3/16 in",
        "flat 3 1/2 x 3/16 in",
        "angle 1 1/4 x 1 1/4 x 1/8 in",
    }
    # 101.6 mm of face and back come from 120 mm; sides of 92 - 10 mm from 90, caps of 91.1 mm from 100 mm
    bought = [row[0] for row in metric.tables["stock"].rows]
    assert bought == ["flat 120 x 5 mm", "flat 90 x 5 mm", "flat 100 x 5 mm", "angle 30 x 30 x 3 mm"]


def test_what_no_flat_is_wide_enough_for_is_cut_from_plate():
    r = solved(body_kind="plates", body_width="13 in", stock_lengths="8 ft")
    assert [row[0] for row in r.tables["stock"].rows] == [
        "strip 13 in wide of 3/16 in plate",
        "flat 4 x 3/16 in",
        "strip 12 19/32 in wide of 3/16 in plate",
        "angle 1 1/4 x 1 1/4 x 1/8 in",
    ]


def test_a_pipe_is_weighed_by_its_section():
    r = solved(**ROUND_DEEP, stock_lengths="4 ft")
    # pi (D - t) t
    assert r.tables["stock"].rows[0][4] == close(math.pi * 5.75 * 0.25 * 48 * IN**3 * STEEL)


@pytest.mark.parametrize(
    "nipples, batch, text",
    [
        # An inlet of 3 in on a 3/16 in wall needs 3 3/16 in; two and a cut of 1/16 in need 6 7/16 in.
        ("3 in 1, 4 in 9, 6 in 11", "1", "1 of 4 in, cut one end off"),
        ("6 1/2 in 11, 4 in 9", "2", "1 of 6 1/2 in, saw it in two, one half for each inlet"),
        ("6 3/8 in 11, 4 in 9", "2", "2 of 4 in, cut one end off"),
        # The second thread of a 2 in nipple goes 3/4 in into a fitting: 3 3/16 and 3/4 in are 3 15/16.
        ("3 15/16 in 9, 3 7/8 in 8", "1", "1 of 3 15/16 in, cut one end off"),
        (
            "3 3/16 in 9",
            "3",
            "3 of 3 3/16 in: no room to cut its second thread off, so weld over that; a longer one is better",
        ),
    ],
)
def test_nipples_for_the_inlets(nipples, batch, text):
    assert solved(nipple_stock=nipples, batch_size=batch)["inlet_nipple"] == text


@settings(max_examples=25, deadline=None)
@given(bench)
def test_any_design_can_be_built_up_to_its_verdicts(design):
    result = solve(design)
    for key, declared in catalogue.ANSWERS.items():
        if declared.room == "make":
            values = (result[key], *result.answers[key].band)
            assert all(not isinstance(value, float) or math.isfinite(value) for value in values), key
    for key, declared in catalogue.CHECKS.items():
        if declared.room == "make" and key in result.checks:
            assert result.checks[key].text and "{" not in result.checks[key].text
    for key, declared in catalogue.TABLES.items():
        if declared.room == "make":
            for row in result.tables[key].rows:
                assert len(row) == len(declared.columns), key
                assert all(not isinstance(cell, float) or math.isfinite(cell) for cell in row), key
    assert sum(piece[2] for piece in result.tables["cut_list"].rows) >= 4
    assert result["burner_mass"] > result["body_mass"] > 0 and result["fill_line"] > 0
    assert result["steel_bought"] > result["steel_offcut"] >= 0
    assert result.charts["cost_by_batch"].sentence


def test_flat_that_is_not_common_is_not_ordered_as_if_it_were():
    """Pipe of 6 in has a wall of 9/32 in; flat is sold in 1/4 and 5/16 in. Discs are of the thicker by themselves, and
    window, feet and nipple are those of such discs; where the smith set it they stay."""
    pipe = {"body_kind": "pipe", "body_length": "6 5/8 in", "body_width": "6 5/8 in", "wall": "9/32 in",
            "pattern": "rings", "ports_per_row": "18", "rows": "3"}  # fmt: skip
    bars = {
        cap: [row[0] for row in solved(**pipe, cap_thickness=cap).tables["stock"].rows] for cap in ("wall", "1/4 in")
    }
    auto, own = solved(**pipe), solved(**pipe, cap_thickness="5/16 in")
    assert auto.tables["stock"].rows[-2][0] == "flat 8 x 5/16 in" and auto["cap_made"] == 5 / 16 * 0.0254
    assert [auto[key] for key in auto.answers] == [own[key] for key in own.answers]
    assert bars["wall"][-2] == "flat 8 x 9/32 in, not common" and bars["1/4 in"][-2] == "flat 8 x 1/4 in"
    assert (
        solved(units="mm", wall="5 mm").tables["stock"].rows[-2][0] == "flat 90 x 5 mm"
    )  # 100 less two walls and the gap
