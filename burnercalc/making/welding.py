"""Seams and fits of the hot and the cold body: bevels, tacks, what the block grows against its steel."""

import math

from ..errors import require
from .stock import mm

SQUARE_M = 3.2e-3  # up to it an edge is welded square: common practice
LAND_M = 1.6e-3  # left under a bevel: common practice
TACK_WALLS = 20  # from tack to tack, in walls: common practice
BLOCK_PER_K, STEEL_PER_K = 6e-6, 12e-6  # growth by heat: high-alumina refractory common practice, EN 1993-1-2 for steel
BLOCK_SHARE = 0.5  # of the chamber's rise, mean of the block inside the body: common practice
STEEL_RISE_K = 100.0  # of the body round it: common practice
GROWTH_M = 1e-3  # of the block over its steel: a joint has to take more than this; common practice


def bevel_m(wall_m):
    """Depth of the bevel on an edge that is welded from one side [m]: none up to 1/8 in, then all but 1/16 in.

    Source: common practice
    Checked by: tests/test_welding.py
    """
    require(0 < wall_m < math.inf, "wall", mm(wall_m), "must be above 0", "5 mm")
    return 0.0 if wall_m <= SQUARE_M else wall_m - LAND_M


def tacks(seam_m, wall_m):
    """Tacks of a seam: one every twenty walls, four at least.

    Source: common practice
    Checked by: tests/test_welding.py
    """
    require(0 < wall_m < math.inf, "wall", mm(wall_m), "must be above 0", "5 mm")
    return max(4, math.ceil(seam_m / (TACK_WALLS * wall_m) - 1e-9))


def block_growth_m(*, length_m, rise_K):
    """How much longer the hot block inside the body grows than the body [m], never below 0.

        growth = L * (a_block * rise / 2 - a_steel * 100 K)

    Arguments: length_m L, clear inside of the body [m]; rise_K of the chamber over the shop [K]
    Source: growth by heat; coefficients and shares of the rise common practice
    Checked by: tests/test_welding.py
    """
    return max(0.0, length_m * (BLOCK_PER_K * BLOCK_SHARE * rise_K - STEEL_PER_K * STEEL_RISE_K))
