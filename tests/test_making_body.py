"""The body taken apart: hand take-offs, properties of the cutting plan, the baffle refolded."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from rows import rows

from burnercalc.errors import InputError
from burnercalc.making import body as b

IN, LB = 0.0254, 0.45359237
COMMON = dict(length_m=6.5 * IN, width_m=3 * IN, depth_m=3 * IN, wall_m=0.25 * IN)


def test_common_practice_body_is_cut_as_by_hand():
    """Tube 6 1/2 in, caps set in the 2 1/2 in bore, lip 1/4 in wide, covered 1/2 in deep by a 3/4 in grip."""
    cut = b.body(kind="tube", cap_gap_m=0, **COMMON)
    tube, cap = cut.pieces
    assert tube.length_m == pytest.approx(6.5 * IN)
    assert (cap.length_m, cap.width_m, cap.count) == (pytest.approx(2.5 * IN), pytest.approx(2.5 * IN), 2)
    assert (cut.inside_length_m, cut.inside_width_m, cut.inside_depth_m) == pytest.approx((6 * IN, 2.5 * IN, 2.5 * IN))
    # Of that lip nothing is flat: the tube's corner is 1/4 in inside.
    assert b.lip_ledge_m(setback_m=0.5 * IN, wall_m=0.25 * IN) == pytest.approx(0.25 * IN)
    assert b.lip_ledge_m(setback_m=0.5 * IN, wall_m=0.25 * IN, inside_radius_m=0.25 * IN) == pytest.approx(0)
    assert b.lip_cover_m(grip_m=0.75 * IN, wall_m=0.25 * IN) == pytest.approx(0.5 * IN)
    # Twice round a 2 1/2 in square with 1/4 in corners: 4 sides of 2 in and one circle of 1/2 in.
    assert cut.weld_m == pytest.approx(2 * (8 + math.pi * 0.5) * IN)


def test_plates_weigh_what_the_hand_take_off_says():
    """reference.md 10: a 4 x 4 x 1/4 in box with square corners is 12.76 lb a foot."""
    cut = b.body(kind="plates", length_m=12 * IN, width_m=4 * IN, depth_m=4 * IN, wall_m=0.25 * IN, cap_gap_m=0)
    caps = 2 * 3.5 * 3.5 * 0.25 * 0.2836
    assert cut.mass_kg / LB == pytest.approx(12.76 + caps, abs=0.01)
    assert cut.weld_m == pytest.approx((4 * 12 + 2 * 14) * IN)


def test_caps_laid_on_shorten_the_tube_and_keep_the_outside():
    inside, on = (b.body(kind="tube", caps=way, cap_thickness_m=0.2 * IN, **COMMON) for way in ("in", "on"))
    assert inside.tube_length_m - on.tube_length_m == pytest.approx(0.4 * IN)
    assert (on.cap_length_m, on.cap_width_m) == pytest.approx((3 * IN, 3 * IN))
    assert inside.inside_length_m == pytest.approx(on.inside_length_m)


def test_round_body_has_discs():
    cut = b.body(
        kind="pipe",
        length_m=4.5 * IN,
        width_m=4.5 * IN,
        depth_m=4 * IN,
        wall_m=0.237 * IN,
        caps="on",
        window_area_m2=math.pi / 4 * (3.5 * IN) ** 2,
    )
    pipe, face, back = cut.pieces
    assert pipe.mass_kg / LB == pytest.approx((4 - 2 * 0.237) / 12 * 10.80, abs=0.01)  # ASME B36.10M, lb/ft
    assert back.mass_kg - face.mass_kg == pytest.approx(math.pi / 4 * (3.5 * IN) ** 2 * 0.237 * IN * 7850)
    assert cut.weld_m == pytest.approx(2 * math.pi * 4.5 * IN)


def test_openings_come_off_the_mass():
    whole = b.body(kind="tube", **COMMON)
    cut = b.body(kind="tube", window_area_m2=0.005, inlet_hole_m=0.05, **COMMON)
    assert whole.mass_kg - cut.mass_kg == pytest.approx((0.005 + math.pi / 4 * 0.05**2) * 0.25 * IN * 7850)
    for kind in (
        "tube",
        "plates",
    ):  # an end inlet's comes off one cap, half as thick here as the wall, off nothing else
        thin = {"kind": kind, "cap_thickness_m": 0.125 * IN, "at_end": True, **COMMON}
        holed = b.body(inlet_hole_m=0.05, **thin)
        taken = [
            one.mass_kg * one.count - two.mass_kg * two.count for one, two in zip(b.body(**thin).pieces, holed.pieces)
        ]
        assert taken[:-1] == [0.0] * (len(taken) - 1)
        assert taken[-1] == pytest.approx(math.pi / 4 * 0.05**2 * 0.125 * IN * 7850)


def test_cut_plan_by_hand():
    """Four 3 ft pieces and one 1 ft from 6 and 10 ft bars, no kerf: 3+3+3+1 in one 10, 3 in one 6."""
    plan = b.cut_plan(pieces=[("a", 3.0, 4), ("b", 1.0, 1)], stock_lengths_m=[6.0, 10.0], kerf_m=0)
    assert [bar.stock_m for bar in plan.bars] == [10.0, 6.0]
    assert [bar.offcut_m for bar in plan.bars] == pytest.approx([0, 3])


def test_the_kerf_takes_the_piece_that_would_just_fit():
    assert len(b.cut_plan(pieces=[("a", 1.0, 2)], stock_lengths_m=[2.003], kerf_m=0.003).bars) == 1
    assert len(b.cut_plan(pieces=[("a", 1.0, 2)], stock_lengths_m=[2.002], kerf_m=0.003).bars) == 2


@settings(max_examples=60, deadline=None)
@given(
    st.lists(st.tuples(st.floats(0.02, 3), st.integers(1, 5)), min_size=1, max_size=8),
    st.lists(st.floats(3, 7), min_size=1, max_size=3),
    st.floats(0, 0.005),
)
def test_every_piece_is_cut_once_and_no_bar_is_overfilled(pieces, stock, kerf):
    plan = b.cut_plan(pieces=[(str(i), n, c) for i, (n, c) in enumerate(pieces)], stock_lengths_m=stock, kerf_m=kerf)
    assert sorted(c[1] for bar in plan.bars for c in bar.cuts) == sorted(n for n, c in pieces for _ in range(c))
    for bar in plan.bars:
        used = sum(n for _, n in bar.cuts)
        assert used + (len(bar.cuts) - 1) * kerf <= bar.stock_m + 1e-8
        assert bar.stock_m in stock and bar.offcut_m >= 0
        assert not any(used + (len(bar.cuts) - 1) * kerf < length - 1e-7 < bar.stock_m - 2e-7 for length in stock)
    assert plan.bought_m == pytest.approx(plan.used_m + plan.kerf_m + plan.offcut_m)
    least = sum(n * c for n, c in pieces) / max(stock)
    assert len(plan.bars) >= least - 1e-9
    assert plan.bought_m <= sum(c * min(length for length in stock if length >= n) for n, c in pieces) + 1e-9


def _least_by_all_ways(cuts, stock, kerf):
    """Every way to part the pieces among bars, each bar as short as is sold."""

    def parted(left):
        if not left:
            yield []
            return
        for others in parted(left[1:]):
            yield [[left[0]], *others]
            for n in range(len(others)):
                yield [*others[:n], [left[0], *others[n]], *others[n + 1 :]]

    def metres(group):
        need = sum(group) + (len(group) - 1) * kerf
        return min((length for length in stock if length >= need - 1e-9), default=math.inf)

    return min(sum(map(metres, groups)) for groups in parted(cuts))


@settings(max_examples=40, deadline=None)
@given(
    st.lists(st.tuples(st.integers(5, 60), st.integers(1, 4)), min_size=1, max_size=3).filter(
        lambda pieces: sum(count for _, count in pieces) <= 7
    ),
    st.sets(st.integers(10, 180), max_size=4),
    st.sampled_from([0, 0.016, 0.05]),
)
def test_no_way_to_cut_a_few_pieces_buys_less(pieces, stock, kerf):
    pieces, stock = [(n / 10, count) for n, count in pieces], [n / 10 for n in stock] + [6.0]
    plan = b.cut_plan(pieces=[("a", n, count) for n, count in pieces], stock_lengths_m=stock, kerf_m=kerf)
    every = [n for n, count in pieces for _ in range(count)]
    assert plan.bought_m == pytest.approx(_least_by_all_ways(every, stock, kerf))


FT = 12 * IN
RACK = [n * FT for n in (1, 2, 4, 8, 20)]


@pytest.mark.parametrize(
    "pieces, bought",
    [
        # 9 in tubes, a cut of 1/16 in each: 12 are 108.7 in, so 8 ft takes ten and 2 ft the other two
        ([("tube", 9 * IN, 12)], [8, 2]),
        ([("tube", 9 * IN, 6)], [4, 1]),  # five and one
        ([("tube", 9 * IN, 3)], [2, 1]),
        ([("tube", 9 * IN, 1)], [1]),
        # two plates of 600 mm in 4 ft, 1219 mm; two caps in a foot of their own, not all in 8 ft
        ([("plate", 0.6, 2), ("cap", 0.0712, 2)], [4, 1]),
    ],
)
def test_the_least_steel_is_bought_not_the_longest_bar(pieces, bought):
    plan = b.cut_plan(pieces=pieces, stock_lengths_m=RACK, kerf_m=IN / 16)
    assert [round(bar.stock_m / FT) for bar in plan.bars] == bought


@pytest.mark.parametrize("pieces", [[(9 * IN, 1)], [(0.6, 2), (0.0712, 2)], [(0.6, 2), (0.3, 3), (0.0712, 2)]])
def test_burners_made_together_never_need_more_than_apart(pieces):
    """Past what is gone through as one too; and never more steel for fewer."""

    def feet(burners):
        cuts = [(str(n), n, count * burners) for n, count in pieces]
        return b.cut_plan(pieces=cuts, stock_lengths_m=RACK, kerf_m=IN / 16).bought_m / IN / 12

    sizes = [1, 2, 5, 7, 12]
    bought = {n: feet(n) for n in {*sizes, *(n + m for n in sizes for m in (1, 5))}}
    for n in sizes:
        for more in (1, 5):
            assert bought[n] - 1e-9 <= bought[n + more] <= bought[n] + bought[more] + 1e-9, (n, more)


def test_a_cap_with_wide_gaps_is_round_at_its_ends():
    """Tube 42 x 60 x 10.4 mm with 3 mm gaps: the cap is 15.2 mm wide, so its corners are 7.6 mm and not 10.4."""
    made = b.body(kind="tube", length_m=0.2, width_m=0.042, depth_m=0.060, wall_m=0.0104, caps="in", cap_gap_m=0.003)
    assert (made.cap_width_m, made.cap_corner_m) == pytest.approx((0.0152, 0.0076))


def test_half_of_a_longer_nipple_when_that_is_cheaper():
    offers = [(3 * IN, 4.0), (6.25 * IN, 6.0)]
    two = b.nipple_choice(needed_m=3 * IN, offers=offers, kerf_m=0.002, inlets=2)
    assert (two.stock_m, two.pieces_each, two.count, two.cost_each) == (6.25 * IN, 2, 1, 3.0)
    one = b.nipple_choice(needed_m=3 * IN, offers=offers, kerf_m=0.002, inlets=1)
    assert (one.stock_m, one.count, one.cost) == (3 * IN, 1, 4.0)
    three = b.nipple_choice(needed_m=3 * IN, offers=offers, kerf_m=0.002, inlets=3)
    assert (three.count, three.cost) == (2, 12.0)  # tie with three short ones: fewer price a piece wins


def test_common_practice_window_with_three_eighths_relief():
    """Window 5 1/2 x 2 in, 3/8 in holes: centres 3/16 in from both edges, cuts 5 1/8 and 1 5/8 in."""
    cut = b.window_cut(length_m=5.5 * IN, width_m=2 * IN, corner_drill_m=0.375 * IN)
    assert cut.drills[2] == pytest.approx(((2.75 - 0.1875) * IN, (1 - 0.1875) * IN))
    assert sorted(math.dist(c[:2], c[2:]) / IN for c in cut.cuts) == pytest.approx([1.625, 1.625, 5.125, 5.125])
    assert cut.cut_length_m == pytest.approx(13.5 * IN)
    # Every cut ends on the rim of its hole.
    ends = [end for c in cut.cuts for end in (c[:2], c[2:])]
    assert all(min(abs(math.dist(end, d) - 0.1875 * IN) for d in cut.drills) < 1e-12 for end in ends)


@pytest.mark.parametrize("row", rows("bend_allowance.csv"), ids=lambda row: row["case"])
def test_bend_allowance_agrees_with_the_handbook_rule(row):
    got = b.bend_allowance_m(
        angle_deg=90,
        inside_radius_m=row["radius_in"] * IN,
        thickness_m=row["thickness_in"] * IN,
        k_factor=row["k_factor"],
    )
    assert got == pytest.approx(row["expected_in"] * IN, rel=0.005)


def test_baffle_is_the_hand_triangle_when_thin():
    """Bent square over 100 mm: two legs of 50*sqrt(2) mm, 50 mm high."""
    roof = b.baffle(
        length_m=0.15,
        span_m=0.1,
        thickness_m=1e-7,
        angle_deg=90,
        inside_radius_m=0,
        k_factor=0.4,
        hole_m=0.005,
        holes=40,
    )
    assert roof.leg_m == pytest.approx(0.05 * math.sqrt(2), rel=1e-5)
    assert roof.height_m == pytest.approx(0.05, rel=1e-5)
    assert roof.blank_width_m == pytest.approx(0.1 * math.sqrt(2), rel=1e-5)


@settings(max_examples=60, deadline=None)
@given(st.floats(0.04, 0.2), st.floats(0.0005, 0.003), st.floats(1, 140), st.floats(0, 0.004))
def test_baffle_folds_back_to_its_span_and_height(span, t, angle, radius):
    """Fold the blank numerically: both faces of both legs and the bend's arcs, then measure the outline."""
    try:
        roof = b.baffle(
            length_m=0.1,
            span_m=span,
            thickness_m=t,
            angle_deg=angle,
            inside_radius_m=radius,
            k_factor=0.4,
            hole_m=0.004,
            holes=20,
        )
    except InputError:
        return
    a = math.radians(angle / 2)
    points = []
    for r in (radius, radius + t):  # bend centre is the origin, ridge up
        points += [(r * math.sin(q), r * math.cos(q)) for q in [a * i / 50 for i in range(-50, 51)]]
        for side in (-1, 1):
            points.append(
                (side * (r * math.sin(a) + roof.leg_m * math.cos(a)), r * math.cos(a) - roof.leg_m * math.sin(a))
            )
    xs, ys = zip(*points)
    assert max(xs) - min(xs) == pytest.approx(span, rel=1e-9)
    assert max(ys) - min(ys) == pytest.approx(roof.height_m, rel=1e-9)


@pytest.mark.parametrize("holes", [1, 2, 7, 24, 61])
def test_baffle_holes_are_all_there_and_clear_of_edges_and_bend(holes):
    roof = b.baffle(
        length_m=0.15,
        span_m=0.06,
        thickness_m=0.0015,
        angle_deg=60,
        inside_radius_m=0.0015,
        k_factor=0.4,
        hole_m=0.003,
        holes=holes,
    )
    ((_, _, allowance),) = roof.bend_lines
    assert len(roof.holes) == holes and roof.web_m > 0
    edges = [
        min(0.075 - abs(x), roof.blank_width_m / 2 - abs(y), abs(y) - allowance / 2) - 0.0015 for x, y in roof.holes
    ]
    gaps = [math.dist(p, q) - 0.003 for i, p in enumerate(roof.holes) for q in roof.holes[:i]]
    # Rows of unlike counts stand a little further apart than their pitch.
    assert roof.web_m <= min(edges + gaps) + 1e-12
    if holes == 24:
        assert roof.web_m == pytest.approx(min(edges + gaps))
    area = 0.15 * roof.blank_width_m - holes * math.pi * 0.0015**2
    assert roof.mass_kg == pytest.approx(area * 0.0015 * 7850)


@pytest.mark.parametrize("holes", [1, 2, 5, 19, 80])
def test_round_baffle_is_a_disc_with_all_its_holes(holes):
    disc = b.round_baffle(diameter_m=0.14, thickness_m=0.0015, hole_m=0.004, holes=holes)
    assert len(set(disc.holes)) == holes and disc.bend_lines == () and disc.height_m == 0.0015 and disc.web_m > 0
    assert max(math.hypot(x, y) for x, y in disc.holes) + 0.002 + disc.web_m <= 0.07 + 1e-12
    assert (
        min([math.dist(p, q) - 0.004 for i, p in enumerate(disc.holes) for q in disc.holes[:i]], default=1)
        >= disc.web_m - 1e-12
    )


def test_flat_baffle_has_no_bend_line():
    flat = b.baffle(
        length_m=0.1,
        span_m=0.06,
        thickness_m=0.0015,
        angle_deg=0,
        inside_radius_m=0.001,
        k_factor=0.4,
        hole_m=0.006,
        holes=12,
    )
    assert (
        flat.bend_lines == () and flat.blank_width_m == pytest.approx(0.06) and flat.height_m == pytest.approx(0.0015)
    )


def test_cap_corner_jams_only_when_its_radius_is_too_small():
    """Square cap in a 1/4 in corner: sticks out by 1/4 in * (sqrt 2 - 1) less the gap along the diagonal."""
    square = b.cap_corner_clearance_m(gap_m=0.5e-3, cap_corner_m=0, tube_inside_radius_m=0.25 * IN)
    assert square == pytest.approx(0.5e-3 * 1.41421356 - 0.25 * IN * 0.41421356, abs=1e-10)
    assert b.cap_corner_clearance_m(gap_m=0.5e-3, cap_corner_m=0.25 * IN, tube_inside_radius_m=0.25 * IN) > 0


def test_fit_numbers_of_the_inlet():
    """NPS 2 through a 3 in tube of 1/4 in wall: 2 in of flat between 1/2 in corners, so the saw runs 3/16 in into
    each."""
    got = b.inlet_flat_clearance_m(side_m=3 * IN, corner_outside_radius_m=0.5 * IN, hole_m=2.375 * IN)
    assert got == pytest.approx(-0.1875 * IN)


def test_a_baffle_meets_the_rounded_corner_near_the_flat():
    """Corner of 5 mm: 1 mm off the flat the circle is 5 - sqrt(25 - 16) = 2 mm out, so 1.5 mm of gap lacks 0.5 mm."""
    gap = {"side_gap_m": 1.5e-3, "corner_radius_m": 5e-3}
    assert b.baffle_side_gap_m(**gap, from_flat_m=1e-3) == pytest.approx(-0.5e-3)
    assert b.baffle_side_gap_m(**gap, from_flat_m=5e-3) == b.baffle_side_gap_m(**gap, from_flat_m=9e-3) == 1.5e-3
    assert b.baffle_side_gap_m(**gap, from_flat_m=-1e-3) == pytest.approx(-3.5e-3)
    assert b.baffle_side_gap_m(side_gap_m=1e-3, corner_radius_m=0, from_flat_m=0) == 1e-3


def test_a_pipe_at_the_end_over_the_mould_by_hand():
    """Block 2 1/2 in, grip 3/4 in: the face stands 1 3/4 in up, the axis 2 in more, half a pipe of 2 in less; the frame
    is 3 in."""
    over = b.pipe_over_mould_m(
        block_thickness_m=2.5 * IN, grip_m=0.75 * IN, axis_m=2 * IN, pipe_outside_m=2 * IN, mould_height_m=3 * IN
    )
    assert over == pytest.approx(-0.25 * IN)


@pytest.mark.parametrize(
    "change,field",
    [
        (dict(kind="ball"), "body_kind"),
        (dict(wall_m=float("nan")), "wall"),
        (dict(wall_m=0.9 * IN), "body_width"),
        (dict(caps="off"), "caps"),
        (dict(cap_gap_m=-1), "cap_gap"),
        (dict(length_m=float("inf")), "body_length"),
        (dict(kind="pipe"), "body_length"),
    ],
)
def test_body_names_the_field(change, field):
    with pytest.raises(InputError) as caught:
        b.body(**{**COMMON, "kind": "tube", **change})
    assert caught.value.field == field


def test_other_refusals_name_the_field():
    for call, field in (
        (lambda: b.cut_plan(pieces=[("a", 7.0, 1)], stock_lengths_m=[6.0], kerf_m=0), "stock_lengths"),
        (lambda: b.cut_plan(pieces=[], stock_lengths_m=[], kerf_m=0), "stock_lengths"),
        (lambda: b.nipple_choice(needed_m=1, offers=[(0.1, 3)], kerf_m=0), "inlet_length"),
        (lambda: b.window_cut(length_m=0.1, width_m=0.01, corner_drill_m=0.02), "corner_drill"),
        (lambda: b.bend_allowance_m(angle_deg=90, inside_radius_m=0, thickness_m=1, k_factor=0.9), "k_factor"),
        (lambda: b.bend_allowance_m(angle_deg=90, inside_radius_m=0, thickness_m=0, k_factor=0.4), "baffle_thickness"),
        (lambda: b.inlet_piece(outside_m=0.06, wall_m=0.004, length_m=0), "inlet_length"),
    ):
        with pytest.raises(InputError) as caught:
            call()
        assert caught.value.field == field


def test_a_round_window_is_cut_once_round():
    """2 in across: 6.2832 in to cut, 3.1416 in2 out (tables of circles in any handbook)."""
    cut = b.round_window_cut(diameter_m=2 * IN)
    assert cut.cut_length_m == pytest.approx(6.2832 * IN, rel=1e-5) and not cut.drills
    assert cut.area_m2 == pytest.approx(3.1416 * IN**2, rel=1e-5)
