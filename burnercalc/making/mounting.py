"""How the block sits in a chamber's wall: the hole for it, what it grows, its bracket and bolts. Common practice."""

from dataclasses import dataclass
from math import ceil

from ..constants import INCH_M
from .body import Piece
from .stock import NOISE_M, flat_sizes_m, plate_mass_kg
from .welding import BLOCK_PER_K

GAP_M = {"in": 0.1875 * INCH_M, "mm": 0.005}  # block to lining at each side, 1/8 to 1/4 in, packed with fibre
BACK_M = {"in": 0.5 * INCH_M, "mm": 0.012}  # that the face may stand back of the lining, never proud
GASKET_M = {"in": 0.1875 * INCH_M, "mm": 0.005}  # fibre paper under the bracket, 1/8 to 1/4 in

BAR_CLEAR_M = {"in": 0.125 * INCH_M, "mm": 0.003}  # over the bars that the body is cast with: to lay and clamp them
SHELL_M = {"in": 0.125 * INCH_M, "mm": 0.003}  # of the chamber, that the bolts go through
BOLTS = 4
NOT_RIPPED_M = 0.0016  # of a flat that stands out over the end of an angle's leg


@dataclass(frozen=True)
class Sizes:
    """Of the angle that carries the body, as sold: leg, thickness, and length of a piece of it on a round body; slot
    and bolt; `out_m` that its middle stands off the body; bolts come in steps of `bolt_step_m`."""

    leg_m: float
    thick_m: float
    clip_m: float
    slot_m: float
    slot_length_m: float
    out_m: float
    bolt_m: float
    bolt: str
    bolt_step_m: float


SIZES = {
    "in": Sizes(*(n * INCH_M for n in (1.25, 0.125, 1.25, 0.375, 0.75, 0.75, 0.3125)), "5/16 in", 0.25 * INCH_M),
    "mm": Sizes(0.03, 0.003, 0.03, 0.009, 0.02, 0.018, 0.008, "M8", 0.005),
}


def angle_m2(unit):
    """Steel area of the angle [m2] = t (2 a - t), its corners not counted.

    Source: geometry
    Checked by: tests/test_mounting.py
    """
    angle = SIZES[unit]
    return angle.thick_m * (2 * angle.leg_m - angle.thick_m)


def angle_piece(length_m, is_round, unit):
    """The pieces of angle that carry a body: one along each long side, as long as its tube; four short ones round a
    pipe.

    Source: common practice
    Checked by: tests/test_mounting.py
    """
    angle = SIZES[unit]
    each_m, count = (angle.clip_m, BOLTS) if is_round else (length_m, 2)
    mass_kg = plate_mass_kg(area_m2=angle_m2(unit), thickness_m=each_m)
    return Piece("bracket", "angle", each_m, angle.leg_m, angle.thick_m, count, mass_kg)


def flat_pieces(from_m, bracket_m, angles, unit):
    """The flats that carry the angles of a body too short for them: one for each, as long and as thick, from behind
    the cross-bars to the end of the angle's leg behind the bracket; half that leg at least, which must lie on them. As
    wide as sold where that is hardly more: nobody rips 1 mm off.

    Arguments: from_m from the face to where they begin; bracket_m to the bracket; angles their Piece
    Source: common practice
    Checked by: tests/test_mounting.py
    """
    leg_m = SIZES[unit].leg_m
    width_m = max(bracket_m + leg_m - from_m, leg_m / 2)
    sold_m = next((one for one in flat_sizes_m("width", unit) if one >= width_m - NOISE_M), width_m)
    width_m = sold_m if sold_m - width_m <= NOT_RIPPED_M else width_m
    mass_kg = plate_mass_kg(area_m2=width_m * angles.length_m, thickness_m=angles.thickness_m)
    return (Piece("bracket flat", "flat", angles.length_m, width_m, angles.thickness_m, angles.count, mass_kg),)


def bolt_m(spacer_m, unit):
    """Length of a bolt through shell, gasket, spacer and angle, with a washer and two nuts, as sold [m].

    Source: nuts as high as 0.85 of their thread, washers a quarter: common practice
    Checked by: tests/test_mounting.py
    """
    angle = SIZES[unit]
    through_m = SHELL_M[unit] + GASKET_M[unit] + spacer_m + angle.thick_m + (2 * 0.85 + 0.25) * angle.bolt_m
    return angle.bolt_step_m * ceil((through_m - NOISE_M) / angle.bolt_step_m)


def hole_m(block_m, unit):
    """Length, width or diameter of the hole in lining and shell for a block of that size [m].

    Source: common practice
    Checked by: tests/test_mounting.py
    """
    return block_m + 2 * GAP_M[unit]


def hot_growth_m(block_m, rise_K):
    """What a block grows at its hot face [m].

    Source: growth by heat, 6e-6 an K of high-alumina refractory: common practice
    Checked by: tests/test_mounting.py
    """
    return block_m * BLOCK_PER_K * rise_K


def bracket_m(deep_m, clear_m, most_m, unit):
    """(from the body's face to the bracket, what it stands off the shell) [m]: over gasket and shell, and clear of what
    holds the body in the mould, as far as the body reaches.

    Arguments: deep_m that the body stands in the wall, below 0 where it ends before it; clear_m from the face; most_m
    where an angle just ends with the body
    Source: common practice
    Checked by: tests/test_mounting.py
    """
    shell_m = deep_m + GASKET_M[unit]
    at_m = max(shell_m, min(clear_m, most_m))
    return at_m, max(at_m - shell_m, 0.0)
