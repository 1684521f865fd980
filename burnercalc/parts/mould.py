"""The mould: boards round and under the block."""

from dataclasses import dataclass

from ..making import mould as making
from ..making.stock import WOOD_KERF_M, board
from .body import Body


@dataclass(frozen=True)
class Mould:
    """`wood`: its pieces and sizes; the rest are its figures. A round one's inside is its hole."""

    wood: making.Mould
    frame: str  # board or plywood
    inside_length_m: float
    inside_width_m: float
    height_m: float
    screws: int
    screw_m: float
    cross_bar_m: float  # from the face to the bar that stops the body on the frame
    back_over_frame_m: float
    floor_m: float  # wood left under the pins
    base_board_m: float  # width of the board that the base is cut from; 0 for sheets


def mould(body: Body, mould_clearance: float, mould_board: str, mould_base: str, pin_depth: float, sizes: str) -> Mould:
    common = {
        "mould_clearance_m": mould_clearance,
        "block_thickness_m": body.block_thickness_m,
        "pin_depth_m": pin_depth,
        "frame": mould_board,
        "base": mould_base,
        "unit": sizes,
    }
    if body.round:
        wood = making.round_mould(body_diameter_m=body.width_m, kerf_m=WOOD_KERF_M[sizes], **common)
    else:
        wood = making.mould(body_length_m=body.length_m, body_width_m=body.width_m, **common)
    bar_m = wood.frame_height_m - (body.block_thickness_m - body.grip_m)  # the face stands that high at the mark
    return Mould(
        wood=wood,
        frame=board(mould_board).kind,
        inside_length_m=wood.inside_length_m,
        inside_width_m=wood.inside_width_m,
        height_m=wood.frame_height_m,
        screws=wood.screws_corner + wood.screws_base,
        screw_m=wood.screw_m,
        cross_bar_m=bar_m,
        back_over_frame_m=body.depth_m - bar_m,
        floor_m=wood.floor_m,
        base_board_m=board(mould_base).width_m,
    )
