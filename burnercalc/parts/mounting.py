"""The finished burner in the chamber's wall: the hole, how deep its body stands in it, its bracket and its bolts."""

from dataclasses import dataclass

from ..making import mounting as making
from ..making.body import Piece
from ..making.mould import CROSS_BAR_M
from ..making.stock import NOISE_M
from .body import Body
from .mould import Mould
from .shop import Shop
from .steel import Steel


@dataclass(frozen=True)
class Mounting:
    """`deep_m`: that the body stands in a wall as thick as the lining, the block's face flush; below 0 where it ends
    outside; `bracket_m`: from the body's face; `way`: its other leg behind that on the body, before it where the body
    ends, or on flats where it does not reach the shell; `spacer_m`: between it and the gasket on the shell, whose paper
    goes round the body, as wide as the angles; `flats`: none but where those carry it, of one kind."""

    hole_length_m: float
    hole_width_m: float
    gap_m: float
    growth_m: float
    back_m: float
    lining_m: float
    deep_m: float
    gasket_m: float
    bracket_m: float
    spacer_m: float
    way: str
    paper_length_m: float
    paper_width_m: float
    bolt_m: float
    angle: making.Sizes
    flats: tuple[Piece, ...]

    @property
    def flat_m(self) -> float | None:
        return self.flats[0].width_m if self.flats else None


def mounting(
    body: Body,
    steel: Steel,
    mould: Mould,
    shop: Shop,
    lining: tuple[tuple[str, float], ...],
    chamber_temperature: float,
    sizes: str,
) -> Mounting:
    lining_m = sum(thickness_m for _, thickness_m in lining)
    deep_m = lining_m - (body.block_thickness_m - body.grip_m)
    longest_m = max(mould.inside_length_m, mould.inside_width_m)
    clear_m = mould.cross_bar_m + CROSS_BAR_M[sizes] + making.BAR_CLEAR_M[sizes]
    angle = making.SIZES[sizes]
    most_m, overhung_m = body.depth_m - angle.leg_m, body.depth_m - angle.leg_m / 2  # half a leg may stand out behind
    most_m = clear_m if most_m < clear_m <= overhung_m else most_m
    bracket_m, spacer_m = making.bracket_m(deep_m, clear_m, most_m, sizes)
    way = _way(bracket_m, angle.leg_m, body.depth_m, clear_m)
    return Mounting(
        hole_length_m=making.hole_m(mould.inside_length_m, sizes),
        hole_width_m=making.hole_m(mould.inside_width_m, sizes),
        gap_m=making.GAP_M[sizes],
        growth_m=making.hot_growth_m(longest_m, max(chamber_temperature - shop.temp_K, 0.0)),
        back_m=making.BACK_M[sizes],
        lining_m=lining_m,
        deep_m=deep_m,
        gasket_m=making.GASKET_M[sizes],
        bracket_m=bracket_m,
        spacer_m=spacer_m,
        way=way,
        paper_length_m=body.length_m + 2 * angle.leg_m,
        paper_width_m=body.width_m + 2 * angle.leg_m,
        bolt_m=making.bolt_m(spacer_m, sizes),
        angle=angle,
        # A body whose back lies below the frame's top is held by no cross-bar.
        flats=making.flat_pieces(min(clear_m, body.depth_m), bracket_m, steel.angle, sizes) if way == "flats" else (),
    )


def _way(bracket_m: float, leg_m: float, depth_m: float, clear_m: float) -> str:
    """Behind where half of that leg lies on the body; before only clear of the bars, for so far the body enters the
    mould."""
    if bracket_m + leg_m / 2 <= depth_m + NOISE_M:
        return "behind"
    return "before" if clear_m - NOISE_M <= bracket_m - leg_m and bracket_m <= depth_m + NOISE_M else "flats"
