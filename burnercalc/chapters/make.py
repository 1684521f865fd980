"""The steel: what to cut, what to buy, window, inlet, baffle and welds, and whether the pieces fit each other."""

from functools import lru_cache

from ..errors import InputError
from ..making import body as steel
from ..making.stock import (
    INCH_M,
    STEEL_DENSITY_KG_M3,
    nearest_tube,
    next_hole_saw,
    pipe_section_m2,
    tube_inside_radius_m,
    tube_section_m2,
)
from ..physics import pipes
from ..result import Column, Table
from ..units import show

GROUP = "make"

TAKE_OFF = "take-off from the drawing"
PRACTICE = "common practice, no published source"

# Common practice, all of them; metres.
# Gap round a cap set in: below the first it has to be driven in, above the second it is bridged with weld.
CAP_GAP_M = (0.2e-3, 1.6e-3)
LIP_WIDTH_M = (1.5e-3, 4.5e-3)  # stop below, good from
LIP_COVER_M = (4.5e-3, 9.5e-3)  # stop below, good from
BAFFLE_GAP_M = INCH_M / 16  # beside a baffle, so that it goes in
BAFFLE_CLEAR_M = 0.25 * INCH_M  # between baffle and block, baffle and inlet
BEND_K_FACTOR = 0.4


def solve(d, r):
    r.inlet_pipe = pipes.pipe(d.inlet, "inlet")
    r.inlet_saw_m, clearance = next_hole_saw(diameter_m=r.inlet_pipe.od_m)
    _body(d, r)
    _openings(d, r, clearance)
    _baffle(d, r)
    _stock(d, r)
    _checks(d, r)


def _body(d, r):
    r.body = _cut_body(
        d.body_kind,
        d.body_length,
        d.body_width,
        d.body_depth,
        d.wall,
        d.caps,
        d.cap_gap,
        r["window_area"],
        r.inlet_pipe.od_m,
        r.inlet_saw_m,
    )
    r.inlet_piece = steel.inlet_piece(
        label=d.inlet, outside_m=r.inlet_pipe.od_m, wall_m=r.inlet_pipe.wall_m, length_m=d.inlet_length + d.wall
    )
    r.answer(
        "body_stock",
        _stock_name(d, r.body.pieces[0]),
        "word",
        "Body stock",
        "What the body is cut from.",
        "outside sizes x wall",
        ("body_kind", "body_width", "body_depth", "wall"),
        TAKE_OFF,
    )
    r.answer(
        "tube_length",
        r.body.tube_length_m,
        "length",
        "Cut length of the body",
        "Length to saw the tube, the plates or the pipe of the body to.",
        "body length (round: body depth), less two caps where they are laid on",
        ("body_length", "body_depth", "caps", "wall"),
        TAKE_OFF,
    )
    for key, value, label in (
        ("cap_length", r.body.cap_length_m, "Cap, long way"),
        ("cap_width", r.body.cap_width_m, "Cap, across"),
    ):
        r.answer(
            key,
            value,
            "length",
            label,
            "Size of an end cap, or of a disc of a round body.",
            "outside of the body, less two walls and two gaps where it is set in",
            ("body_width", "body_depth", "wall", "caps", "cap_gap"),
            TAKE_OFF,
        )
    r.answer(
        "cap_corner",
        r.body.cap_corner_m,
        "length",
        "Cap, corner radius",
        "Radius to which the corners of a cap are eased.",
        "inside radius of the tube, taken as one wall; with caps laid on its outside radius, two walls",
        ("wall", "caps", "body_kind"),
        "corner radii of welded tube, common practice",
        "common practice",
    )
    r.answer(
        "weld_length",
        r.body.weld_m,
        "length",
        "Weld",
        "All seams of the body and the inlet, welded once round.",
        "round both caps + along four plates + round the inlet pipe",
        ("body_kind", "caps", "inlet"),
        TAKE_OFF,
    )
    r.answer(
        "body_mass",
        r.body.mass_kg,
        "mass",
        "Steel body",
        "Mass of the body, window and inlet hole cut out, inlet pipe and baffle apart.",
        "area x thickness x 7850 kg/m³",
        ("body_kind", "wall"),
        "steel density: EN 1993-1-1",
        "published",
    )


@lru_cache(maxsize=64)
def _cut_body(kind, length, width, depth, wall, caps, gap, window, inlet, hole):
    return steel.body(
        kind=kind,
        length_m=length,
        width_m=width,
        depth_m=depth,
        wall_m=wall,
        caps=caps,
        cap_gap_m=gap,
        window_area_m2=window,
        inlet_outside_m=inlet,
        inlet_hole_m=hole,
    )


def _openings(d, r, clearance):
    if r.round:
        r.window_cut = steel.round_window_cut(diameter_m=r["window_width"])
    else:
        r.window_cut = steel.window_cut(
            length_m=r["window_length"], width_m=r["window_width"], corner_drill_m=d.corner_drill
        )
    r.answer(
        "window_cut_length",
        r.window_cut.cut_length_m,
        "length",
        "Window, straight cuts",
        "Length to cut between the four relief holes; a round window: once round.",
        "2 x (length - drill) + 2 x (width - drill)",
        ("window_length", "window_width", "corner_drill"),
        TAKE_OFF,
    )
    r.answer(
        "corner_drill_inset",
        None if r.round else d.corner_drill / 2,
        "length",
        "Relief holes, inset",
        "From the edges of the window to the centre of each corner's relief hole.",
        "corner drill / 2",
        ("corner_drill",),
        TAKE_OFF,
    )
    r.answer(
        "inlet_hole",
        r.inlet_saw_m,
        "length",
        "Inlet hole",
        "Hole saw that cuts the inlet hole.",
        "next standard hole saw over the pipe's outside diameter",
        ("inlet",),
        "sizes of hole saws as sold, common practice",
        "common practice",
    )
    r.answer(
        "inlet_hole_clearance",
        clearance,
        "length",
        "Inlet hole, clearance",
        "Hole less pipe, on the diameter.",
        "hole saw - outside diameter of the pipe",
        ("inlet_hole",),
        "ASME B36.10M pipe sizes",
        "published",
    )
    r.nipple = steel.nipple_choice(
        needed_m=r.inlet_piece.length_m, offers=d.nipple_stock, kerf_m=d.kerf, burners=d.batch_size
    )
    r.answer(
        "inlet_nipple",
        f"{r.nipple.count} of {show(r.nipple.stock_m, 'length', d.units)}, {r.nipple.text}",
        "word",
        "Inlet nipple",
        "Which nipples to buy for the inlet pipes of the batch, and how to cut them.",
        "cheapest of whole nipples and halves of longer ones; a half needs twice the length and one saw cut",
        ("nipple_stock", "inlet_length", "kerf", "batch_size"),
        PRACTICE,
        "common practice",
    )


def _baffle(d, r):
    r.baffle, gaps, trouble = None, None, ""
    if d.baffle_holes:
        try:
            r.baffle = _cut_baffle(
                r.round,
                r.body.inside_length_m - 2 * BAFFLE_GAP_M,
                r.body.inside_width_m - 2 * BAFFLE_GAP_M,
                d.baffle_thickness,
                0.0 if r.round else d.baffle_bend_angle,
                d.baffle_hole_diameter,
                d.baffle_holes,
            )
        except InputError as refused:
            trouble = refused.rule
    baffle = r.baffle
    for key, value, label, meaning in (
        (
            "baffle_length",
            baffle and baffle.blank_length_m,
            "Baffle blank, along",
            "Flat size of the baffle along the body.",
        ),
        (
            "baffle_width",
            baffle and baffle.blank_width_m,
            "Baffle blank, across",
            "Flat size across the body, before it is bent.",
        ),
        ("baffle_leg", baffle and baffle.leg_m, "Baffle leg", "Flat part on each side of the bend."),
        ("baffle_height", baffle and baffle.height_m, "Baffle height", "Overall height of the bent baffle."),
    ):
        r.answer(
            key,
            value,
            "length",
            label,
            meaning,
            "inside of the body less a gap; developed with the neutral line at 0.4 of the thickness, bend radius "
            "one thickness",
            ("body_length", "body_width", "wall", "baffle_thickness", "baffle_bend_angle"),
            "bend allowance with the K-factor, sheet-metal handbooks; K common practice",
            "common practice",
        )
    if baffle:
        room = r.body.inside_depth_m - (d.grip - d.wall)
        # In the middle of what is left between block and inlet.
        r.baffle_stand_m = d.grip - d.wall + (room - baffle.height_m) / 2
        gaps = steel.baffle_gaps_m(
            inside_depth_m=r.body.inside_depth_m,
            block_inside_m=d.grip - d.wall,
            baffle_stand_m=r.baffle_stand_m,
            baffle_height_m=baffle.height_m,
        )
    r.answer(
        "baffle_stand",
        r.baffle_stand_m if baffle else None,
        "length",
        "Baffle, feet above the face",
        "From the inside of the face to the baffle's lower edge, where its tacks go.",
        "midway between block and inlet",
        ("grip", "wall", "body_depth", "baffle_height"),
        TAKE_OFF,
    )
    r.answer(
        "baffle_gap",
        min(gaps) if gaps else None,
        "length",
        "Baffle gap",
        "Room left to the block and to the inlet, the smaller of the two.",
        "(inside depth - block inside - baffle height) / 2",
        ("baffle_height", "body_depth", "grip", "wall"),
        TAKE_OFF,
    )
    if trouble:
        r.check(
            "baffle_bends",
            "stop",
            d.baffle_thickness,
            None,
            "length",
            "Baffle",
            f"The baffle cannot be made: its sheet {trouble}.",
            TAKE_OFF,
            "calculated",
            (("baffle_thickness", "lower"), ("baffle_bend_angle", "lower")),
        )


@lru_cache(maxsize=64)
def _cut_baffle(is_round, length, span, thickness, bend, hole, holes):
    if is_round:
        return steel.round_baffle(diameter_m=span, thickness_m=thickness, hole_m=hole, holes=holes)
    return steel.baffle(
        length_m=length,
        span_m=span,
        thickness_m=thickness,
        angle_deg=bend,
        inside_radius_m=thickness,
        k_factor=BEND_K_FACTOR,
        hole_m=hole,
        holes=holes,
    )


def pieces(d, r):
    """Every piece of steel in the order it is cut: body, caps, inlet pipe, baffle."""
    found = [*r.body.pieces, r.inlet_piece]
    if r.baffle:
        found.append(
            steel.Piece(
                "baffle",
                "sheet",
                r.baffle.blank_length_m,
                r.baffle.blank_width_m,
                d.baffle_thickness,
                1,
                r.baffle.mass_kg,
                "between inlet and block",
                f"{d.baffle_holes} holes",
            )
        )
    return found


def millimetres(piece):
    """A piece's sizes in mm, whatever the design's units."""
    return " x ".join(f"{size * 1000:.1f}" for size in (piece.length_m, piece.width_m, piece.thickness_m))


def _stock_name(d, piece):
    def size(value):
        return show(value, "length", d.units).removesuffix(" in").removesuffix(" mm")

    unit = d.units
    if piece.stock == "tube":
        return f"tube {size(d.body_width)} x {size(d.body_depth)} x {size(d.wall)} {unit}"
    if piece.stock == "pipe":
        return f"pipe {size(d.body_width)} x {size(d.wall)} {unit}"
    return f"flat {size(piece.width_m)} x {size(piece.thickness_m)} {unit}"


def _section_m2(d, piece):
    if piece.stock == "tube":
        return tube_section_m2(
            width_m=d.body_width, depth_m=d.body_depth, wall_m=d.wall, inside_radius_m=tube_inside_radius_m(d.wall)
        )
    if piece.stock == "pipe":
        return pipe_section_m2(outside_m=d.body_width, wall_m=d.wall)
    return piece.width_m * piece.thickness_m


def bar_plans(d, r, batch_size):
    """[(stock name, kg a metre, CutPlan)] of all bars to buy for a batch; nipples and the baffle's sheet apart."""
    groups = {}
    for piece in r.body.pieces:
        groups.setdefault(_stock_name(d, piece), []).append(piece)
    return [
        (
            name,
            _section_m2(d, group[0]) * STEEL_DENSITY_KG_M3,
            steel.cut_plan(
                pieces=[(piece.name, piece.length_m, piece.count * batch_size) for piece in group],
                stock_lengths_m=d.stock_lengths,
                kerf_m=d.kerf,
            ),
        )
        for name, group in groups.items()
    ]


def _stock(d, r):
    r.bar_plans = bar_plans(d, r, d.batch_size)
    r.answer(
        "steel_bought",
        sum(plan.bought_m for _, _, plan in r.bar_plans),
        "long_length",
        "Steel to buy",
        "Tube, pipe and flat bar for the batch, in whole lengths from the rack.",
        "longest piece first, into the first length that takes it",
        ("stock_lengths", "kerf", "batch_size"),
        "first-fit decreasing",
        "calculated",
    )
    r.answer(
        "steel_offcut",
        sum(plan.offcut_m for _, _, plan in r.bar_plans),
        "long_length",
        "Steel left over",
        "Offcuts of those lengths, saw cuts apart.",
        "bought - pieces - saw cuts",
        ("steel_bought", "kerf"),
        "first-fit decreasing",
    )
    rows = tuple(
        (
            number,
            piece.name,
            piece.count,
            piece.length_m,
            piece.width_m,
            piece.thickness_m,
            millimetres(piece),
            piece.mass_kg * piece.count,
            piece.where,
            piece.note,
        )
        for number, piece in enumerate(pieces(d, r), 1)
    )
    r.add_table(
        Table(
            "cut_list",
            "Cut list for one burner",
            (
                Column("number", "No.", "count"),
                Column("piece", "Piece", "word"),
                Column("count", "Pieces", "count"),
                Column("length", "Length", "length"),
                Column("width", "Width", "length"),
                Column("thickness", "Thickness", "length"),
                Column("millimetres", "mm", "word"),
                Column("mass", "Mass", "mass"),
                Column("where", "Where", "word"),
                Column("note", "Note", "word"),
            ),
            rows,
            TAKE_OFF,
        )
    )
    bars = [
        (
            name,
            bar.stock_m,
            ", ".join(f"{show(length, 'length', d.units)} {piece}" for piece, length in bar.cuts),
            bar.offcut_m,
            kg_m * bar.stock_m,
        )
        for name, kg_m, plan in r.bar_plans
        for bar in plan.bars
    ]
    r.add_table(
        Table(
            "stock",
            "Stock to buy and how to cut it",
            (
                Column("stock", "Stock", "word"),
                Column("length", "Buy", "length"),
                Column("cuts", "Cut from it", "word"),
                Column("offcut", "Left over", "length"),
                Column("mass", "Mass", "mass"),
            ),
            tuple(bars),
            "first-fit decreasing",
        )
    )


def _checks(d, r):
    def length(value):
        return show(value, "length", d.units)

    if d.body_kind == "tube":
        tube = nearest_tube(width_m=d.body_width, depth_m=d.body_depth)
        stocked = tube.off_m == 0
        if not stocked:
            tube = nearest_tube(width_m=d.body_width, depth_m=d.body_depth, unit=d.units)
        r.check(
            "tube_on_rack",
            "good" if stocked else "caution",
            tube.off_m,
            0.0,
            "length",
            "Tube on the rack",
            f"{tube.name} tube is commonly stocked."
            if stocked
            else f"No common tube measures {length(d.body_width)} by {length(d.body_depth)}; the nearest is {tube.name}, "
            f"{length(tube.off_m)} off: choose its size, or weld four plates.",
            PRACTICE,
            "common practice",
            (("body_width", "choose"), ("body_depth", "choose"), ("body_kind", "choose")),
        )
    if d.caps == "in":
        tight, wide = CAP_GAP_M
        good = tight <= d.cap_gap <= wide
        jam = -steel.cap_corner_clearance_m(
            gap_m=d.cap_gap, cap_corner_m=0.0, tube_inside_radius_m=tube_inside_radius_m(d.wall)
        )
        eased = (
            f" Corners stay round at {length(r.body.cap_corner_m)}: square ones would jam by {length(jam)}."
            if d.body_kind == "tube" and jam > 0
            else ""
        )
        r.check(
            "cap_fit",
            "good" if good else "caution",
            d.cap_gap,
            tight if d.cap_gap < tight else wide,
            "length",
            "Caps in the bore",
            (
                f"Caps go in with {length(d.cap_gap)} all round."
                if good
                else f"A gap of {length(d.cap_gap)} round the caps is tight: allow {length(tight)} or they have to be "
                "driven in."
                if d.cap_gap < tight
                else f"A gap of {length(d.cap_gap)} round the caps is wide: more than {length(wide)} is bridged with "
                "weld."
            )
            + eased,
            PRACTICE,
            "common practice",
            (("cap_gap", "raise" if d.cap_gap < tight else "lower"),),
        )
    _banded(
        r,
        "lip_width",
        "Lip width",
        steel.lip_width_m(setback_m=d.setback, wall_m=d.wall),
        LIP_WIDTH_M,
        length,
        "The steel lip stands {value} inside the bore",
        "holds the block",
        (("setback", "raise"), ("wall", "lower")),
    )
    _banded(
        r,
        "lip_cover",
        "Grip over the lip",
        steel.lip_cover_m(grip_m=d.grip, wall_m=d.wall),
        LIP_COVER_M,
        length,
        "{value} of refractory stands over the lip",
        "holds the block",
        (("grip", "raise"), ("wall", "lower")),
    )
    _inlet_check(d, r, length)
    if r.baffle:
        _banded(
            r,
            "baffle_clear",
            "Baffle clear",
            r["baffle_gap"],
            (0.0, BAFFLE_CLEAR_M),
            length,
            "The baffle stands {value} clear of block and inlet",
            "lets the mixture round it",
            (("baffle_bend_angle", "lower"), ("body_depth", "raise"), ("grip", "lower")),
        )
        web = r.baffle.web_m
        _banded(
            r,
            "baffle_holes_fit",
            "Holes in the baffle",
            web,
            (0.0, d.baffle_thickness),
            length,
            "Baffle holes leave {value} between them and to the edges",
            "can be drilled",
            (("baffle_holes", "lower"), ("baffle_hole_diameter", "lower")),
        )
    if not r.round:
        left = d.corner_drill / 2
        same = abs(left - d.corner_radius) <= 1e-4
        r.check(
            "corner_drill",
            "good" if same else "caution",
            left,
            d.corner_radius,
            "length",
            "Corner drill",
            f"A {length(d.corner_drill)} drill leaves the corner radius of {length(left)} that the face is drawn with."
            if same
            else f"A {length(d.corner_drill)} drill leaves corners of {length(left)}, the face is drawn with "
            f"{length(d.corner_radius)}: "
            "make the drill twice the radius.",
            TAKE_OFF,
            "calculated",
            (("corner_drill", "choose"), ("corner_radius", "choose")),
        )


def _inlet_check(d, r, length):
    """Is there flat steel round the inlet hole, and does an inlet at the end open into the plenum?"""
    saw, corner = r.inlet_saw_m, 2 * d.wall if d.body_kind == "tube" else 0.0
    if r.round:
        sides = [(r.body.cap_width_m, 0.0, r.body.inside_width_m)]
    elif d.inlet_position == "end":
        sides = [(r.body.inside_width_m, 0.0, r.body.inside_width_m), (r.plenum_height_m, 0.0, r.plenum_height_m)]
    else:
        sides = [(d.body_width, corner, r.body.inside_width_m), (d.body_length, d.wall, r.body.inside_length_m)]
    flat = min(
        steel.inlet_flat_clearance_m(side_m=side, corner_outside_radius_m=radius, hole_m=saw)
        for side, radius, _ in sides
    )
    least = min((inside - saw) / 2 for _, _, inside in sides)
    verdict = "good" if flat >= -1e-9 else "caution" if least >= -1e-9 else "stop"
    r.check(
        "inlet_fits",
        verdict,
        flat,
        0.0,
        "length",
        "Inlet on the body",
        {
            "good": f"{length(flat)} of flat steel is left on each side of the inlet hole.",
            "caution": f"The inlet hole runs {length(-flat)} into the rounded corners on each side: it can be "
            "welded, with more filler "
            "and a careful leak test.",
            "stop": f"The inlet hole is {length(-2 * least)} wider than the room inside the body: take a smaller "
            "pipe or a wider body.",
        }[verdict],
        PRACTICE,
        "common practice",
        (("inlet", "lower"), ("body_width", "raise"), ("body_depth", "raise")),
    )


def _banded(r, key, label, value, limits, length, saying, what, changes):
    """A check that more is better: stop below the first limit, good from the second."""
    stop, good = limits
    verdict = "good" if value >= good - 1e-9 else "caution" if value >= stop - 1e-9 else "stop"
    text = (saying.format(value=length(value)) if value >= 0 else f"{label}: {length(-value)} too little room") + {
        "good": f"; {length(good)} or more {what}.",
        "caution": f"; {length(good)} or more {what} with ease.",
        "stop": f"; below {length(stop)} it does not work, {length(good)} or more {what}.",
    }[verdict]
    r.check(key, verdict, value, good, "length", label, text, PRACTICE, "common practice", changes)
