"""How the block sits in a chamber's wall: the hole for it, what it grows, where its bracket stands. Common practice."""

from ..constants import INCH_M
from .welding import BLOCK_PER_K

GAP_M = {"in": 0.1875 * INCH_M, "mm": 0.005}  # block to lining at each side, 1/8 to 1/4 in, packed with fibre
BACK_M = {"in": 0.5 * INCH_M, "mm": 0.012}  # that the face may stand back of the lining, never proud
GASKET_M = {"in": 0.1875 * INCH_M, "mm": 0.005}  # fibre paper under the bracket, 1/8 to 1/4 in


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


def bracket_m(deep_m, clear_m, unit):
    """(from the body's face to the bracket, what it stands off the shell) [m]: over gasket and shell, and clear of what
    holds the body in the mould.

    Arguments: deep_m that the body stands in the wall, below 0 where it ends before it; clear_m from the face
    Source: common practice
    Checked by: tests/test_mounting.py
    """
    shell_m = deep_m + GASKET_M[unit]
    return max(shell_m, clear_m), max(clear_m - shell_m, 0.0)
