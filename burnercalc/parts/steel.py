"""The steel: the body taken apart into pieces, its window, its inlet pipes and the holes for them."""

from dataclasses import dataclass
from functools import lru_cache

from ..catalogue.sentences import Said, said
from ..making import body as making
from ..making.body import Piece, WindowCut
from ..making.mounting import angle_piece
from ..making.stock import flat_width_m, inlet_hole, nearest_flat_thickness
from ..physics import pipes
from ..physics.pipes import Pipe
from .body import Body
from .face import Face

BRIDGE_M = {"in": 12.7e-3, "mm": 12e-3}  # common practice


@dataclass(frozen=True)
class Steel:
    """`body`: its pieces and inside sizes; the rest are its figures. A round body's caps are its two discs."""

    body: making.Body
    bought_as: Said  # tube, pipe or flat
    tube_length_m: float
    cap_length_m: float
    cap_width_m: float
    cap_corner_m: float
    weld_m: float
    body_kg: float
    window_cut: WindowCut
    window_cut_m: float
    drill_inset_m: float | None  # None where the window is round
    bridge_m: float  # left in the middle of each long cut until the caps are on
    inlet_pipe: Pipe
    inlet_piece: Piece  # its count is that of the inlets
    angle: Piece  # what carries it in the chamber's wall
    inlet_spacing_m: float | None  # between two; None with one
    inlet_saw_m: float
    inlet_clearance_m: float


def steel(
    body: Body,
    face: Face,
    caps: str,
    cap_gap: float,
    corner_drill: float,
    inlet: str,
    inlet_length: float,
    inlet_position: str,
    inlets: int,
    sizes: str,
) -> Steel:
    pipe = pipes.pipe_as_sold(inlet, sizes, "inlet")
    saw_m, clearance_m = inlet_hole(outside_m=pipe.od_m, unit=sizes)
    apart = _apart(
        body.kind,
        body.length_m,
        body.width_m,
        body.depth_m,
        body.wall_m,
        body.cap_m,
        caps,
        cap_gap,
        face.window_area_m2,
        pipe.od_m,
        saw_m,
        inlets,
        inlet_position == "end",
    )
    if body.round:
        cut = making.round_window_cut(diameter_m=face.window_width_m)
    else:
        cut = making.window_cut(length_m=face.window_length_m, width_m=face.window_width_m, corner_drill_m=corner_drill)
    return Steel(
        body=apart,
        bought_as=bought_as(apart.pieces[0], body, sizes),
        tube_length_m=apart.tube_length_m,
        cap_length_m=apart.cap_length_m,
        cap_width_m=apart.cap_width_m,
        cap_corner_m=apart.cap_corner_m,
        weld_m=apart.weld_m,
        body_kg=apart.mass_kg,
        window_cut=cut,
        window_cut_m=cut.cut_length_m,
        drill_inset_m=None if body.round else corner_drill / 2,
        bridge_m=BRIDGE_M[sizes],
        inlet_pipe=pipe,
        inlet_piece=making.inlet_piece(
            outside_m=pipe.od_m,
            wall_m=pipe.wall_m,
            length_m=inlet_length + (body.end_m if inlet_position == "end" else body.face_m),
            count=inlets,
        ),
        angle=angle_piece(apart.tube_length_m, body.round, sizes),
        inlet_spacing_m=apart.inside_length_m / 2 if inlets == 2 else None,
        inlet_saw_m=saw_m,
        inlet_clearance_m=clearance_m,
    )


@lru_cache(maxsize=64)
def _apart(kind, length, width, depth, wall, cap, caps, gap, window, inlet, hole, inlets, at_end):
    return making.body(
        kind=kind,
        length_m=length,
        width_m=width,
        depth_m=depth,
        wall_m=wall,
        caps=caps,
        cap_thickness_m=cap,
        cap_gap_m=gap,
        window_area_m2=window,
        inlet_outside_m=inlet,
        inlet_hole_m=hole,
        inlets=inlets,
        at_end=at_end,
    )


def bought_as(piece: Piece, body: Body, sizes: str) -> Said:
    """What a piece of the body is cut from, as it is asked for over the counter: flat in a width that is sold."""
    if piece.stock == "angle":
        return said("angle", width=piece.width_m, thickness=piece.thickness_m)
    if piece.stock == "tube":
        return said("tube", width=body.width_m, depth=body.depth_m, wall=body.wall_m)
    if piece.stock == "pipe":
        return said("pipe", width=body.width_m, wall=body.wall_m)
    sold_m = flat_width_m(width_m=piece.width_m, unit=sizes)
    if sold_m is None:
        return said("strip", width=piece.width_m, thickness=piece.thickness_m)
    _, off_m = nearest_flat_thickness(thickness_m=piece.thickness_m)
    return said("rare" if off_m else "flat", width=sold_m, thickness=piece.thickness_m)
