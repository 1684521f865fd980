"""The verdicts of the room Make: one function a check, named <key>_check; None where it does not apply."""

from dataclasses import replace
from math import ceil, inf

from ..constants import INCH_M
from ..making import body as making
from ..making.stock import (
    PIPE_OVER,
    boards,
    nearest_flat_thickness,
    nearest_pipe,
    nearest_tube,
    tube_inside_radius_m,
    tube_walls_m,
)
from ..making.welding import GROWTH_M
from ..parts.as_cast import AsCast
from ..parts.baffle_sheet import BaffleSheet
from ..parts.block import Block
from ..parts.body import Body
from ..parts.end_inlet import EndInlet
from ..parts.legs import Legs
from ..parts.mould import Mould
from ..parts.pins import Pins
from ..parts.plenum import Plenum
from ..parts.reached import Reached
from ..parts.steel import Steel
from ..parts.welding import Welding
from .judge import Judged, judge, ladder, verdict

SLACK_M = 1e-9  # sizes that differ by less are the same

# Limits, common practice all.
CAP_GAP_M = (0.2e-3, 1.6e-3)  # below the first a cap is driven in, above the second its gap is bridged with weld
LIP_M, LEDGE_M = 1.5e-3, 4.5e-3  # flat ledge inside the bore: stop below, good from
PIPE_OFF_M = 0.4e-3  # of a pipe, off its standard by as much: nothing, a tape reads no closer
CAP_SHARES = (0.75, 2.0)  # of the wall, that a cap has: good from and to; common practice
LIP_COVER_M = (4.5e-3, 9.5e-3)  # stop below, good from
INLETS_WEB_M = 1.0 * INCH_M  # steel between two inlet holes: good from; both are welded
BODY_STEPS_M = {"in": 0.125 * INCH_M, "mm": 5e-3}  # to which a body's length is asked for
HOLE_CLEAR_M = 4.0e-3  # inlet hole over its pipe, on the diameter: up to here a fillet bridges it
BAFFLE_SIDE_M = 0.5e-3  # beside a baffle on its way in: good from
QUARTER_M = {"in": 0.25 * INCH_M, "mm": 0.006}  # a length that nobody measures finer
BAFFLE_CLEAR_M = QUARTER_M  # between baffle and block, baffle and inlet: good from
SAME_CORNER_M = 1e-4  # corners that differ by less look the same
PIN_STANDS = 0.8  # depth in the base over the pin: about one of its own thickness; common practice
PIN_CLEAR_M = QUARTER_M  # pin to mould wall: good from
PROUD_M = QUARTER_M  # pin over the mix: good from
BAR_M = 0.75 * INCH_M  # of the body over the frame, to clamp the cross-bar to: good from
MOULD_SIDE_M, MOST_SIDE_M = 1e-3, 6e-3  # between body and mould: good from and to
# Least frame that takes a screw in its edge, ply of 1/2 in or 12 mm: near three times a screw of 4 mm.
FRAME_M = 11.5e-3
FLOOR_M = 2e-3  # wood left under the pins, so that the drill does not come through
SERVICE_ROOM_K = 100.0  # service limit over chamber temperature: good from
WEB_LEFT = 0.5  # of the drawn web, at worst: good from


def baffle_bends_check(baffle_sheet: BaffleSheet, baffle_thickness: float) -> Judged | None:
    return verdict("stop", baffle_thickness, None) if baffle_sheet.trouble else None


def tube_on_rack_check(body: Body, sizes: str) -> Judged | None:
    """A note at worst: whoever has such a tube builds of it as well as of another."""
    if body.round:
        return _pipe_on_rack(body, sizes)
    if body.kind != "tube":
        return None
    wall_m = _nearest((*tube_walls_m("in"), *tube_walls_m("mm")), body.wall_m)
    tube = nearest_tube(width_m=body.width_m, depth_m=body.depth_m)
    if tube.off_m:  # then the nearest that is sold in the shop's sizes
        tube = nearest_tube(width_m=body.width_m, depth_m=body.depth_m, unit=sizes)
    slots = {"name": tube.name, "width": body.width_m, "depth": body.depth_m, "off": tube.off_m}
    if not tube.off_m and abs(wall_m - body.wall_m) > SLACK_M:
        wall_m = _nearest(tube_walls_m(sizes), body.wall_m)
        slots |= {"wall": body.wall_m, "sold": wall_m}
        return verdict("note", body.wall_m, wall_m, case="wall", cures=(("wall", "choose"),), **slots)
    return verdict("note" if tube.off_m else "good", tube.off_m, 0.0, **slots)


def _nearest(sizes_m, size_m):
    return min(sizes_m, key=lambda sold: abs(sold - size_m))


def _pipe_on_rack(body: Body, sizes: str) -> Judged:
    """Of a round body: other round tube than the standards' pipe is sold in some shops."""
    pipe = nearest_pipe(outside_m=body.width_m)
    if abs(pipe.outside_m - body.width_m) > PIPE_OFF_M:
        pipe = nearest_pipe(outside_m=body.width_m, unit=sizes)
    wall_m, heavy_m = pipe.walls_m
    slots = {"name": pipe.name, "across": body.width_m, "sold": pipe.outside_m, "wall": body.wall_m}
    slots |= {"one": wall_m, "other": heavy_m}
    if abs(pipe.outside_m - body.width_m) > PIPE_OFF_M:
        return verdict("note", body.width_m, pipe.outside_m, case="pipe", **slots)
    if min(abs(sold - body.wall_m) for sold in pipe.walls_m) > PIPE_OFF_M:
        return verdict("note", body.wall_m, wall_m, case="pipe_wall", cures=(("wall", "choose"),), **slots)
    return verdict("good", body.width_m, pipe.outside_m, case="pipe_good", **slots)


def cap_fit_check(body: Body, steel: Steel, caps: str, cap_gap: float) -> Judged | None:
    if caps != "in":
        return None
    tight, wide = CAP_GAP_M
    word, case = ladder(cap_gap, good=tight, stop=-inf), "tight"
    if word == "good":
        word = ladder(cap_gap, good=wide, stop=inf)
        case = "good" if word == "good" else "wide"
    jam = -making.cap_corner_clearance_m(
        gap_m=cap_gap, cap_corner_m=0.0, tube_inside_radius_m=tube_inside_radius_m(body.wall_m)
    )
    return verdict(
        word,
        cap_gap,
        tight if case == "tight" else wide,
        case=(case, "eased") if body.kind == "tube" and jam > 0 else case,
        cures=(("cap_gap", "raise" if case == "tight" else "lower"),),
        gap=cap_gap,
        tight=tight,
        wide=wide,
        corner=steel.cap_corner_m,
        jam=jam,
    )


def _room(value_m, stop_m, good_m):
    """A length of which more is better: its sentence is that of the verdict, or `lacking` where there is none of it."""
    return judge(
        value_m,
        good=good_m,
        stop=stop_m,
        slack=SLACK_M,
        case="lacking" if value_m < -SLACK_M else None,
        room=value_m,
        lack=-value_m,
        least=stop_m,
        wanted=good_m,
    )


def lip_width_check(body: Body) -> Judged:
    """The flat ledge alone: on a tube's rounded corner the block would hang by a wedge."""
    corner_m = tube_inside_radius_m(body.wall_m) if body.kind == "tube" else 0.0
    ledges = [(making.lip_ledge_m(setback_m=body.setback_m, wall_m=body.wall_m, inside_radius_m=corner_m), corner_m)]
    if not body.round:
        ledges.append((making.lip_ledge_m(setback_m=body.setback_m, wall_m=body.cap_m), 0.0))
    ledge_m, corner_m = min(ledges)
    word = ladder(ledge_m, good=LEDGE_M, stop=LIP_M, slack=SLACK_M)
    case = "lacking" if ledge_m < -SLACK_M else word
    return verdict(
        word,
        ledge_m,
        LEDGE_M,
        case=(f"{case}_rounded" if corner_m else case),
        room=ledge_m,
        lack=-ledge_m,
        least=LIP_M,
        wanted=LEDGE_M,
        inside=corner_m,
        outside=corner_m + body.wall_m,
    )


def inlet_hole_check(steel: Steel) -> Judged:
    clear = steel.inlet_clearance_m
    return judge(
        clear,
        good=HOLE_CLEAR_M,
        stop=inf,
        slack=SLACK_M,
        saw=steel.inlet_saw_m,
        clear=clear,
        largest=clear - PIPE_OVER * steel.inlet_pipe.od_m,
        wanted=HOLE_CLEAR_M,
    )


def cap_flat_check(body: Body, sizes: str) -> Judged:
    sold, off = nearest_flat_thickness(thickness_m=body.cap_m)
    if off:
        sold, off = nearest_flat_thickness(thickness_m=body.cap_m, unit=sizes)
    return judge(off, good=0.0, stop=inf, thickness=body.cap_m, sold=sold, off=off)


def cap_thickness_check(body: Body) -> Judged:
    """A cap, of a round body a disc, much thinner or thicker than the wall that it is welded to."""
    least_m, most_m = (share * body.wall_m for share in CAP_SHARES)
    slots = {"cap": body.cap_m, "wall": body.wall_m, "wanted": least_m, "most": most_m}
    if body.cap_m > most_m + SLACK_M:
        return verdict(
            "caution", body.cap_m, most_m, case="thick", cures=(("cap_thickness", "lower"), ("wall", "raise")), **slots
        )
    return judge(body.cap_m, good=least_m, stop=-inf, slack=SLACK_M, **slots)


def round_body_check(body: Body, baffle_bend_angle: float) -> Judged | None:
    """What was set for a box and does nothing on a round body, whose field for it is hidden."""
    if not body.round or baffle_bend_angle == making.BAFFLE_BEND_DEG:
        return None
    return verdict("note", None, None, angle=baffle_bend_angle)


def lip_cover_check(body: Body) -> Judged:
    least_m, wanted_m = LIP_COVER_M
    cover_m = making.lip_cover_m(grip_m=body.grip_m, wall_m=body.face_m)
    return judge(cover_m, good=wanted_m, stop=least_m, slack=SLACK_M, room=cover_m, least=least_m, wanted=wanted_m)


def baffle_clear_check(baffle_sheet: BaffleSheet, inlet_position: str, sizes: str) -> Judged | None:
    if baffle_sheet.gap_m is None:
        return None
    judged = _room(baffle_sheet.gap_m, 0.0, BAFFLE_CLEAR_M[sizes])
    if inlet_position == "end" and judged.cases == ("lacking",):  # three gaps share what is missing
        return replace(judged, cases=("across",), slots={**judged.slots, "lack": -3 * baffle_sheet.gap_m})
    return judged


def baffle_goes_in_check(baffle_sheet: BaffleSheet) -> Judged | None:
    return None if baffle_sheet.side_gap_m is None else _room(baffle_sheet.side_gap_m, 0.0, BAFFLE_SIDE_M)


def inlet_over_mould_check(steel: Steel, end_inlet: EndInlet) -> Judged | None:
    if end_inlet.over_mould_m is None:
        return None
    over = end_inlet.over_mould_m
    return judge(over, good=0.0, stop=-inf, slack=SLACK_M, over=over, notch=-over, pipe=steel.inlet_pipe.od_m)


def baffle_holes_fit_check(baffle_sheet: BaffleSheet, baffle_thickness: float) -> Judged | None:
    return None if baffle_sheet.sheet is None else _room(baffle_sheet.sheet.web_m, 0.0, baffle_thickness)


SMALLER_PIPE = ("inlet", "lower")


def inlet_fits_check(body: Body, steel: Steel, plenum: Plenum, end_inlet: EndInlet, inlet_position: str) -> Judged:
    """Is there flat steel round the inlet hole, and does an inlet at the end open into the plenum?"""
    saw, inside = steel.inlet_saw_m, steel.body
    # Outside, radius of its corners, and clear inside of each side that the hole lies in.
    if body.round:
        sides = [("body_width", inside.cap_width_m, 0.0, inside.inside_width_m)]
    elif inlet_position == "end":
        sides = [
            ("body_width", inside.inside_width_m, 0.0, inside.inside_width_m),
            ("body_depth", plenum.height_m, 0.0, plenum.height_m),
        ]
    else:
        corner = tube_inside_radius_m(body.wall_m) + body.wall_m if body.kind == "tube" else 0.0
        along = (body.length_m, body.cap_m, inside.inside_length_m)
        if steel.inlet_piece.count > 1:  # each hole has its part of the back
            share_m = inside.inside_length_m / steel.inlet_piece.count
            along = (share_m, 0.0, share_m)
        sides = [("body_width", body.width_m, corner, inside.inside_width_m), ("body_length", *along)]
    flats = {key: _beside_m(side, radius, saw) for key, side, radius, _ in sides}
    leasts = {key: _beside_m(clear, 0.0, saw) for key, _, _, clear in sides}
    flat, least = min(flats.values()), min(leasts.values())
    word = "good" if flat >= -SLACK_M else ladder(least, good=inf, stop=0.0, slack=SLACK_M)
    if word != "stop" and inlet_position == "end" and not body.round:
        edge_m = (body.depth_m + inside.cap_length_m) / 2 - end_inlet.axis_m - saw / 2  # of the cap, towards the back
        edge = ladder(edge_m, good=body.cap_m, stop=0.0, slack=SLACK_M)
        if edge != "good":
            cures = (SMALLER_PIPE, ("body_depth", "raise"))
            slots = {"web": edge_m, "out": -edge_m, "wanted": body.cap_m}
            return verdict(edge, edge_m, body.cap_m, case=f"edge_{edge}", cures=cures, **slots)
    short = [key for key, left in (leasts if word == "stop" else flats).items() if left < -SLACK_M]
    return verdict(
        word,
        flat,
        0.0,
        case=("stop", f"stop.{short[0] if len(short) == 1 else 'body'}") if word == "stop" else word,
        cures=(SMALLER_PIPE, *((key, "raise") for key in short)),
        flat=flat,
        into=-flat,
        wider=-2 * least,
    )


def _beside_m(side_m, radius_m, hole_m):
    return making.inlet_flat_clearance_m(side_m=side_m, corner_outside_radius_m=radius_m, hole_m=hole_m)


def two_inlets_check(legs: Legs, sizes: str) -> Judged | None:
    """Can the legs be screwed together, and is there steel between the holes?"""
    if legs.leg_m is None:
        return None
    step_m = BODY_STEPS_M[sizes]
    slots = {"leg": legs.leg_m, "least": legs.least_m, "web": legs.web_m, "wanted": INLETS_WEB_M}
    slots["body"] = ceil(legs.body_m / step_m - SLACK_M) * step_m
    near = ladder(legs.web_m, good=INLETS_WEB_M, stop=-inf, slack=SLACK_M) != "good"
    fits = ladder(legs.leg_m - legs.least_m, good=0.0, stop=0.0, slack=SLACK_M)
    if fits == "good" and not near and legs.threaded:
        slots |= {"nipple": legs.nipple_m, "sold": legs.sold_m, "length": legs.sold_body_m}
        return verdict("note", legs.leg_m, legs.least_m, **slots)
    case = ("stop", "near") if near and fits == "stop" else "near" if near else fits
    return verdict("caution" if case == "near" else fits, legs.leg_m, legs.least_m, case=case, **slots)


def corner_drill_check(body: Body, steel: Steel, corner_drill: float, corner_radius: float) -> Judged | None:
    left = steel.drill_inset_m
    if body.round:
        return None
    word = ladder(abs(left - corner_radius), good=SAME_CORNER_M, stop=inf)
    return verdict(word, left, corner_radius, drill=corner_drill, left=left, radius=corner_radius)


def pins_clear_check(pins: Pins, sizes: str) -> Judged:
    """No stop: the setback keeps every pin off the wall."""
    clear = pins.wall_clearance_m
    return judge(clear, good=PIN_CLEAR_M[sizes], stop=-inf, clear=clear, wanted=PIN_CLEAR_M[sizes])


def pins_stand_check(port_diameter: float, pin_depth: float) -> Judged:
    """A pin with a little play in its hole leans by play over depth, whatever its length."""
    wanted = PIN_STANDS * port_diameter
    return judge(pin_depth, good=wanted, stop=-inf, slack=SLACK_M, depth=pin_depth, pin=port_diameter, wanted=wanted)


def pins_proud_check(pins: Pins, baffle_sheet: BaffleSheet, sizes: str) -> Judged:
    cures = None if baffle_sheet.sheet else (("body_depth", "raise"), ("grip", "lower"))
    return judge(
        pins.proud_m,
        good=PROUD_M[sizes],
        stop=-inf,
        slack=SLACK_M,
        cures=cures,
        proud=pins.proud_m,
        wanted=PROUD_M[sizes],
    )


def cross_bar_check(mould: Mould) -> Judged:
    over = mould.back_over_frame_m
    case = "under" if over < -SLACK_M else None
    return judge(
        over,
        good=BAR_M,
        stop=-inf,
        slack=SLACK_M,
        case=case,
        over=over,
        under=-over,
        bar=mould.cross_bar_m,
        wanted=BAR_M,
    )


def pin_stock_check(body: Body, pins: Pins, pin_stock_length: float) -> Judged:
    word = ladder(pin_stock_length, good=pins.length_m, stop=body.block_thickness_m, slack=SLACK_M)
    return verdict(
        word,
        pin_stock_length,
        pins.length_m,
        case="one" if word == "good" and pins.per_stick == 1 else word,
        stick=pin_stock_length,
        each=pins.per_stick,
        pin=pins.length_m,
    )


def base_board_check(mould: Mould) -> Judged | None:
    """Is the base in one piece, where it is cut from a board and not from a sheet?"""
    if not mould.base_board_m:
        return None
    wide = mould.wood.pieces[-1].width_m
    word = ladder(mould.base_board_m - wide, good=0.0, stop=0.0, slack=SLACK_M)
    if word == "good":
        return verdict(word, wide, mould.base_board_m, wide=wide, board=mould.base_board_m)
    thick = mould.wood.pieces[-1].thickness_m
    wider = [one for one in boards("board") if one.thickness_m >= thick - SLACK_M and one.width_m >= wide]
    case, slots = ("stop.board", {"wider": wider[0].name}) if wider else ("stop.sheet", {})
    return verdict(word, wide, mould.base_board_m, case=case, wide=wide, board=mould.base_board_m, **slots)


def base_floor_check(mould: Mould) -> Judged:
    return judge(mould.floor_m, good=FLOOR_M, stop=-inf, slack=SLACK_M, floor=mould.floor_m)


def frame_screws_check(body: Body, mould: Mould) -> Judged | None:
    """Does a screw hold in the edge of the frame: of an end, through a side, and of all four, through the base?"""
    if body.round:
        return None
    thick = mould.wood.pieces[0].thickness_m
    return judge(thick, good=FRAME_M, stop=-inf, slack=SLACK_M, thick=thick)


def mould_fit_check(welding: Welding) -> Judged:
    slots = {"side": welding.side_m, "wanted": MOULD_SIDE_M, "most": MOST_SIDE_M, "high": welding.flush_m}
    if welding.side_m > MOST_SIDE_M + SLACK_M:
        return verdict(
            "caution", welding.side_m, MOST_SIDE_M, case="wide", cures=(("mould_clearance", "lower"),), **slots
        )
    return judge(welding.side_m, good=MOULD_SIDE_M, stop=-inf, slack=SLACK_M, **slots)


def block_growth_check(welding: Welding) -> Judged:
    return judge(
        welding.growth_m, good=GROWTH_M, note=inf, stop=inf, growth=welding.growth_m, wax=welding.wax_m, wanted=GROWTH_M
    )


def placing_check(block: Block) -> Judged:
    """Can the body be pushed into it?"""
    return verdict("good" if block.material.mixes_with_water else "stop", None, None)


def mixes_check(block: Block, batch_size: int) -> Judged:
    """A mix that has gone stiff is thrown away; a block of two mixes has a joint in it."""
    takes_s, works_s = block.placing_s, block.material.working_time_s
    slots = {"takes": takes_s, "works": works_s, "blocks": batch_size, "all": takes_s * batch_size}
    if takes_s > works_s * (1 + 1e-9):
        return verdict("caution", takes_s, works_s, case="joint", **slots)
    return verdict("note" if slots["all"] > works_s * (1 + 1e-9) else "good", takes_s, works_s, **slots)


def refractory_limit_check(block: Block, reached: Reached, chamber_temperature: float) -> Judged:
    """At the set temperature, then left empty, for its face is a wall of the chamber: a caution where low fire is
    likely to bring it past what its class stands, a note where high fire may."""
    limit, heat = block.material.service_temp_K, chamber_temperature
    word = case = ladder(limit - heat, good=SERVICE_ROOM_K, stop=0.0)
    low, high = reached.low_empty_K, reached.high_empty_K
    if word != "stop" and low and low.value > limit:
        word, case, heat = "caution", "left_low", low.value
    elif word == "good" and high and high.high > limit:
        word, case, heat = "note", "left_high", high.high
    cures = (("refractory", "choose"), ("low_fire" if case == "left_low" else "chamber_temperature", "lower"))
    return verdict(word, heat, limit, case=case, cures=cures, heat=heat, stands=limit)


def web_as_cast_check(as_cast: AsCast) -> Judged | None:
    if as_cast.web_m is None:
        return None
    web = as_cast.web_m.low
    return judge(web, good=WEB_LEFT * as_cast.web_drawn_m, stop=0.0, web=max(web, 0.0))
