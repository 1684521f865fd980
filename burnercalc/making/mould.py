"""The mould: frame, base board with pin holes, screws, fill line, and the form pins that leave the ports."""

import math
from dataclasses import dataclass

from ..constants import INCH_M
from ..errors import InputError, require
from ..physics.drills import nearest_drills
from .body import Piece
from .stock import NOISE_M, STEEL_DENSITY_KG_M3, board, boards, mm

# Softwood and plywood near 500 kg/m3 dry: common practice, only for the mass of the pieces.
WOOD_DENSITY_KG_M3 = 500.0
# The heaviest of what pins are made of: beech or hard maple, acetal, beeswax (from memory).
PIN_DENSITY_KG_M3 = {"wood": 750.0, "steel": STEEL_DENSITY_KG_M3, "plastic": 1420.0, "wax": 970.0}
# One screw at least every 6 in along each piece of the frame, up through the base, and at least two up a corner joint:
# common practice.
SCREW_SPACING_M = 6 * INCH_M
# Board that stands above the mix and guides the body in, by the reader's tape: common practice.
MOULD_GUIDE_M = {"in": 0.5 * INCH_M, "mm": 0.012}
# Base beyond the frame on every side: common practice.
BASE_MARGIN_M = {"in": INCH_M, "mm": 0.025}
# A pin stands out of the mix so that none closes over it, and keeps clear of the baffle: common practice.
PROUD_M, PROUD_CLEAR_M = {"in": 0.375 * INCH_M, "mm": 0.010}, 0.125 * INCH_M
# A plate that guides the pins: room round a pin, less than the inside of the mould, on the diameter: common practice.
GUIDE_HOLE_M, GUIDE_EDGE_M = 0.3e-3, 1.0e-3
# A bar each way that holds the body at its mark, square and straight: common practice.
CROSS_BARS = 2  # one clamped to each side of the body
CROSS_BAR_M = {"in": 0.75 * INCH_M, "mm": 0.020}
LIFT_KG = 23.0  # at most, of one who lifts with both hands: NIOSH 94-110, load constant (memory)
# The screw enters the second piece by 1 in, in a stack of layers by three fifths of the next: common practice.
SCREW_BITE_M, LAYER_BITE = {"in": INCH_M, "mm": 0.025}, 0.6
# Sold across, from how thick an edge on: #10 is 0.190 in, #8 0.164, #6 0.138; common practice.
SCREWS = {
    "in": ((1.25 * INCH_M, "#10"), (0.6 * INCH_M, "#8"), (0.0, "#6")),
    "mm": ((0.030, "5 mm"), (0.016, "4 mm"), (0.0, "3.5 mm")),
}
SCREW_STEP_M = {"in": INCH_M / 4, "mm": 0.005}  # between the lengths that are sold: common practice


@dataclass(frozen=True)
class Mould:
    """The mould's pieces and sizes; inside_*_m between the boards, base_*_m the board under them.

    floor_m is the wood left under the pin holes; screws_* are counts, screws_side and screws_end of those that come up
    through the base into each; screw_m the length, base_screw_m of those in the base, `screw` what is sold across.
    """

    pieces: tuple
    inside_length_m: float
    inside_width_m: float
    frame_height_m: float
    base_length_m: float
    base_width_m: float
    floor_m: float
    screws_corner: int
    screws_side: int
    screws_end: int
    screw_m: float
    base_screw_m: float
    screw: str

    @property
    def screws_base(self):
        return 2 * (self.screws_side + self.screws_end)


def mould(
    *,
    body_length_m,
    body_width_m,
    mould_clearance_m,
    block_thickness_m,
    pin_depth_m,
    frame="2x4",
    base="ply 3/4",
    unit="in",
):
    """A box of four boards on a base board, inside dimensions = body outside + mould_clearance (half on each side).

        long boards = inside length + 2*t, end boards = inside width;  height >= block thickness + guide

    Arguments:
        body_length_m, body_width_m   outside of the body's face [m]
        mould_clearance_m             added to both [m] >= 0
        block_thickness_m             depth of refractory [m]
        pin_depth_m                   how deep the pins stand in the base [m]
        frame, base                   names in lumber.csv; a plywood frame is ripped to height, a board is used at its
                                      width
        unit                          in or mm, by which board above the mix, base beyond the frame and bite of a screw
                                      are round figures
    Returns: Mould
    Raises: InputError for mould_clearance, block_thickness, pin_depth, mould_board, mould_base
    Source: PS 20 sizes; screws and guide common practice
    Checked by: tests/test_making_mould.py
    """
    require(0 <= mould_clearance_m < math.inf, "mould_clearance", mm(mould_clearance_m), "must be 0 or more", "3 mm")
    require(block_thickness_m > 0, "block_thickness", mm(block_thickness_m), "must be above 0", "75 mm")
    sides, bottom = board(frame), board(base)
    floor = _floor(bottom, base, pin_depth_m)
    height, base_margin_m = block_thickness_m + MOULD_GUIDE_M[unit], BASE_MARGIN_M[unit]
    if sides.kind == "board":
        if not sides.width_m >= height - NOISE_M:
            fits = [
                b for b in boards("board") if abs(b.thickness_m - sides.thickness_m) < NOISE_M and b.width_m >= height
            ]
            raise InputError(
                "mould_board",
                frame,
                f"needs a dressed width of at least {mm(height)}, it has {mm(sides.width_m)}",
                fits[0].name if fits else "ply 3/4",
            )
        height = sides.width_m
    t = sides.thickness_m
    inside_l, inside_w = body_length_m + mould_clearance_m, body_width_m + mould_clearance_m
    base_l, base_w = inside_l + 2 * t + 2 * base_margin_m, inside_w + 2 * t + 2 * base_margin_m

    def wood(name, length, width, thickness, count):
        stock = frame if name.startswith("mould") else base
        return Piece(name, stock, length, width, thickness, count, length * width * thickness * WOOD_DENSITY_KG_M3)

    # Turned on a dressed board that is wide enough for its length alone.
    on_board = (base_w, base_l) if base_l <= (bottom.width_m or 0) + NOISE_M < base_w else (base_l, base_w)
    pieces = (
        wood("mould side", inside_l + 2 * t, height, t, 2),
        wood("mould end", inside_w, height, t, 2),
        wood("base board", *on_board, bottom.thickness_m, 1),
    )
    per_corner = max(2, math.ceil(height / SCREW_SPACING_M) + 1)
    return Mould(
        pieces,
        inside_l,
        inside_w,
        height,
        base_l,
        base_w,
        floor,
        4 * per_corner,
        math.ceil((inside_l + 2 * t) / SCREW_SPACING_M - 1e-9),
        math.ceil(inside_w / SCREW_SPACING_M - 1e-9),
        screw := _sold_screw_m(max(t, bottom.thickness_m) + SCREW_BITE_M[unit], unit),
        screw,
        screw_across(t, unit),
    )


def screw_across(edge_m, unit):
    """What wood screws are sold as across, into the edge of a board so thick: no more than a quarter of it.

    Source: common practice
    Checked by: tests/test_making_mould.py
    """
    return next(name for least_m, name in SCREWS[unit] if edge_m >= least_m - NOISE_M)


def round_mould(
    *,
    body_diameter_m,
    mould_clearance_m,
    block_thickness_m,
    pin_depth_m,
    frame="ply 3/4",
    base="ply 3/4",
    rim_m=0.038,
    kerf_m=0.0,
    unit="in",
):
    """For a round body: plywood squares with a round hole, stacked to the height, on a base board.

    The stack comes apart in two halves. A cut through a finished hole would take the kerf off it, so each square is
    sawn in two first, its halves are clamped together, and then the hole is cut; it is wider by the kerf for that.
    Each half has two screws into the half below it, shorter than two layers: one that went on into the base would hold
    it when it is to come off at first set. The base has two into each half of the lowest layer.

    Arguments as mould(); rim_m is the least wood beside the hole [m], kerf_m the saw cut [m].
    inside_length_m = inside_width_m = the hole.
    Source: common practice
    Checked by: tests/test_making_mould.py
    """
    require(0 <= mould_clearance_m < math.inf, "mould_clearance", mm(mould_clearance_m), "must be 0 or more", "3 mm")
    require(block_thickness_m > 0, "block_thickness", mm(block_thickness_m), "must be above 0", "75 mm")
    layer, bottom = board(frame), board(base)
    require(layer.kind == "plywood", "mould_board", frame, "must be plywood for a round body", "ply 3/4")
    floor = _floor(bottom, base, pin_depth_m)
    hole = body_diameter_m + mould_clearance_m
    side = hole + 2 * rim_m
    layers = math.ceil((block_thickness_m + MOULD_GUIDE_M[unit]) / layer.thickness_m - 1e-9)
    base_side = side + 2 * BASE_MARGIN_M[unit]
    ring = (side * (side + kerf_m) - math.pi / 4 * hole**2) * layer.thickness_m * WOOD_DENSITY_KG_M3
    pieces = (
        Piece(
            "mould layer",
            frame,
            side,
            side + kerf_m,
            layer.thickness_m,
            layers,
            ring,
        ),
        Piece(
            "base board",
            base,
            base_side,
            base_side,
            bottom.thickness_m,
            1,
            base_side**2 * bottom.thickness_m * WOOD_DENSITY_KG_M3,
        ),
    )
    return Mould(
        pieces,
        hole,
        hole,
        layers * layer.thickness_m,
        base_side,
        base_side,
        floor,
        4 * (layers - 1),
        2,  # into each half of the lowest layer
        0,
        (1 + LAYER_BITE) * layer.thickness_m,
        bottom.thickness_m + LAYER_BITE * layer.thickness_m,
        screw_across(layer.thickness_m, unit),
    )


def cross_bars_kg(length_m, unit):
    """Mass of both cross-bars of square steel bar [kg]; of hard wood they are lighter."""
    return CROSS_BARS * CROSS_BAR_M[unit] ** 2 * length_m * STEEL_DENSITY_KG_M3


def _sold_screw_m(length_m, unit):
    return math.ceil(length_m / SCREW_STEP_M[unit] - NOISE_M) * SCREW_STEP_M[unit]


def _floor(bottom, base, pin_depth):
    require(pin_depth > 0, "pin_depth", mm(pin_depth), "must be above 0", "12.7 mm")
    require(
        pin_depth <= bottom.thickness_m + NOISE_M,
        "pin_depth",
        mm(pin_depth),
        f"must not be over the base board {base}, {mm(bottom.thickness_m)}",
        mm(bottom.thickness_m),
    )
    return bottom.thickness_m - pin_depth


def fill_line_m(*, mix_volume_m3, mould_area_m2, port_count, port_diameter_m):
    """Depth of the wet mix in the mould before the body is pushed in [m] = V / (A_mould - n*pi/4*d**2).

    The pins already stand, and are taken to be higher than the fill line. Mark it on the mould's inside.

    Arguments:
        mix_volume_m3     V, block as cast, ports off [m3]
        mould_area_m2     inside of the mould [m2]
        port_count, port_diameter_m   pins [-], [m]
    Source: the mix keeps its volume
    Checked by: tests/test_making_mould.py
    """
    area = mould_area_m2 - port_count * math.pi / 4 * port_diameter_m**2
    require(area > 0, "mould_clearance", f"{mould_area_m2:.4g} m2", "must leave room between the pins")
    return mix_volume_m3 / area


@dataclass(frozen=True)
class Drilling:
    """One hole of the base: number, from the left and from the near edge of the base board, diameter and depth [m]."""

    number: int
    x_m: float
    y_m: float
    diameter_m: float
    depth_m: float


def drilling_plan(*, ports, port_diameter_m, pin_depth_m, base_length_m, base_width_m):
    """Holes of the base board measured from its lower left corner.

    The base is seen from above, so the fire side lies against it: the pattern is that of the face as seen from inside
    the body. It is mirrored left to right against the view from the fire; the patterns here are the same both ways.

    Arguments:
        ports    (x, y) of the port centres from the centre of the face [m]
        the rest [m], as in mould()
    Returns: tuple of Drilling, in the order of `ports`
    Checked by: tests/test_making_mould.py
    """
    return tuple(
        Drilling(i, base_length_m / 2 - x, base_width_m / 2 + y, port_diameter_m, pin_depth_m)
        for i, (x, y) in enumerate(ports, 1)
    )


def pin_wall_clearance_m(*, ports, port_diameter_m, inside_length_m, inside_width_m, round_mould=False):
    """Least distance from a pin to the mould's wall [m]; negative = a pin stands in the wall.

    Arguments: ports (x, y) from the centre [m]; the mould's inside [m]; round_mould uses inside_width_m as its diameter
    Checked by: tests/test_making_mould.py
    """
    require(len(ports) > 0, "ports_per_row", len(ports), "must leave at least one port", "1")
    if round_mould:
        return inside_width_m / 2 - max(math.hypot(x, y) for x, y in ports) - port_diameter_m / 2
    return min(min(inside_length_m / 2 - abs(x), inside_width_m / 2 - abs(y)) for x, y in ports) - port_diameter_m / 2


@dataclass(frozen=True)
class Pins:
    """Form pins: length of each, count with spares, how many a stock length gives, how many of those to buy."""

    length_m: float
    count: int
    pieces_per_stock: int
    stock_count: int


def pin_proud_m(*, room_m, unit="in"):
    """How far a pin stands out of the mix [m]: 3/8 in (10 mm) where there is room for it behind the block, 1/8 in left.

        proud = min(3/8 in, room - 1/8 in), never below 0

    Arguments: room_m from the block to the baffle, without one to the back [m]; unit in or mm
    Source: common practice
    Checked by: tests/test_making_mould.py
    """
    return max(0.0, min(PROUD_M[unit], room_m - PROUD_CLEAR_M))


def knock_out_drill(pin_diameter_m, family):
    """The Drill of the hole through the base under a pin: the largest of its family that is not over half the pin, so
    that the pin stands on a shoulder and can be knocked back from below.

    Source: common practice
    Checked by: tests/test_making_mould.py
    """
    found = nearest_drills(pin_diameter_m / 2, family)[0] or nearest_drills(pin_diameter_m / 2, "fraction")[0]
    require(found is not None, "port_diameter", mm(pin_diameter_m), "must be at least 1/32 in", mm(INCH_M / 32))
    return found


def pins(*, port_count, block_thickness_m, pin_depth_m, stock_length_m, proud_m=0.0, kerf_m=0.0, spares=0):
    """How many pins of which length, and how much round stock.

        length = block thickness + pin depth + proud

    Arguments:
        port_count          ports [-] >= 1; spares added to it [-] >= 0
        block_thickness_m   length of a port [m]; pin_depth_m in the base [m]; proud_m out of the mix [m]
        stock_length_m      one stick, dowel or rod as bought [m]
        kerf_m              lost at a cut [m]
    Returns: Pins; a stock shorter than a pin gives pieces_per_stock 0, never a shorter pin
    Source: common practice: pins of the port's diameter, about half an inch into the base
    Checked by: tests/test_making_mould.py (common practice 5/16 in sticks)
    """
    require(port_count >= 1, "ports_per_row", port_count, "must leave at least one port", "1")
    require(spares >= 0, "pin_spares", spares, "must be 0 or more", "2")
    require(stock_length_m > 0, "pin_stock", mm(stock_length_m), "must be above 0", "92 mm")
    require(kerf_m >= 0, "kerf", mm(kerf_m), "must be 0 or more", "0")
    length, count = block_thickness_m + pin_depth_m + proud_m, port_count + spares
    each = int((stock_length_m + kerf_m + NOISE_M) / (length + kerf_m))
    if each < 1:
        return Pins(length, count, 0, 0)
    return Pins(length, count, each, math.ceil(count / each))


def cleaning_drill(port_diameter_m, family):
    """The Drill that cleans the ports: the largest of its family, fraction or metric, that is not over the port.

    Turn it by hand or slowly, from the fire side, without hammering. Where the family has none so small, a fractional
    one is named.
    Raises: InputError for port_diameter under the smallest drill
    Source: drills as sold (physics/drills); cleaning with a drill of the port's size common practice
    Checked by: tests/test_making_mould.py
    """
    found = nearest_drills(port_diameter_m, family)[0] or nearest_drills(port_diameter_m, "fraction")[0]
    require(found is not None, "port_diameter", mm(port_diameter_m), "must be at least 1/64 in", mm(INCH_M / 64))
    return found
