"""Boards for all moulds of a batch: dressed boards cut by length, sheets of plywood cut in strips."""

from dataclasses import dataclass

from ..errors import require
from .body import cut_plan
from .stock import INCH_M, NOISE_M, board, mm

FOOT_M = 12 * INCH_M
BOARD_LENGTHS_M = (4 * FOOT_M, 8 * FOOT_M, 12 * FOOT_M)  # as sold: common practice
SHEETS_M = ((4 * FOOT_M, 2 * FOOT_M), (8 * FOOT_M, 4 * FOOT_M))  # as sold, length and width: common practice


@dataclass(frozen=True)
class Cut:
    """A piece on its board, its lower left corner at x, y; a dressed board is used at its width, y = 0."""

    name: str
    length_m: float
    width_m: float
    x_m: float
    y_m: float


@dataclass(frozen=True)
class Bought:
    """A board or sheet to buy and what is cut from it."""

    stock: str
    length_m: float
    width_m: float
    cuts: tuple[Cut, ...]

    @property
    def left_over(self):
        """Share of it that is not in a piece, saw cuts with it."""
        return 1 - sum(cut.length_m * cut.width_m for cut in self.cuts) / (self.length_m * self.width_m)


def boards_to_buy(*, pieces, moulds, kerf_m):
    """Boards and sheets for so many moulds, and where each piece is cut from.

    A dressed board gives pieces as wide as it is, by length. A sheet is ripped into strips, each as wide as its first
    piece, the widest first, pieces one behind the other in it; of the two sizes of sheets that one of which less area
    is bought.

    Arguments:
        pieces    body.Piece records of one mould; their stock is a name in lumber.csv
        moulds    how many >= 1
        kerf_m    width of a saw cut [m] >= 0
    Returns: tuple of Bought, or None where a piece is longer or wider than what is sold
    Raises: InputError for moulds, kerf
    Source: first-fit decreasing; sizes as sold, common practice
    Checked by: tests/test_making_boards.py (by hand; no piece on another)
    """
    require(moulds >= 1, "moulds", moulds, "must be 1 or more", "1")
    require(0 <= kerf_m < 1, "kerf", mm(kerf_m), "must be 0 or more", "3 mm")
    found = []
    for stock in dict.fromkeys(piece.stock for piece in pieces):
        mine = [piece for piece in pieces if piece.stock == stock]
        cut = _by_length if board(stock).kind == "board" else _by_area
        bought = cut(stock, mine, moulds, kerf_m)
        if bought is None:
            return None
        found += bought
    return tuple(found)


def _by_length(stock, pieces, moulds, kerf_m):
    if max(piece.length_m for piece in pieces) > BOARD_LENGTHS_M[-1]:
        return None
    plan = cut_plan(
        pieces=[(piece.name, piece.length_m, piece.count * moulds) for piece in pieces],
        stock_lengths_m=BOARD_LENGTHS_M,
        kerf_m=kerf_m,
    )
    found = []
    for bar in plan.bars:
        x, cuts = 0.0, []
        for name, length in bar.cuts:
            width = next(piece.width_m for piece in pieces if piece.name == name)
            cuts.append(Cut(name, length, width, x, 0.0))
            x += length + kerf_m
        found.append(Bought(stock, bar.stock_m, board(stock).width_m, tuple(cuts)))
    return found


def _by_area(stock, pieces, moulds, kerf_m):
    every = [
        (piece.name, max(piece.length_m, piece.width_m), min(piece.length_m, piece.width_m))
        for piece in pieces
        for _ in range(piece.count * moulds)
    ]
    every.sort(key=lambda one: (-one[2], -one[1]))
    tries = [_on_sheets(stock, every, length, width, kerf_m) for length, width in SHEETS_M]
    fit = [sheets for sheets in tries if sheets is not None]
    return min(fit, key=lambda sheets: sum(sheet.length_m * sheet.width_m for sheet in sheets), default=None)


def _on_sheets(stock, every, length_m, width_m, kerf_m):
    """[Bought] of one size of sheet; None where a piece does not go on it."""
    sheets: list[list[Cut]] = []
    tops: list[float] = []  # how far each sheet is used across
    strips: list[list] = []  # [sheet, y, width, x reached]
    for name, long, wide in every:
        if long > length_m + NOISE_M or wide > width_m + NOISE_M:
            return None
        strip = next((one for one in strips if one[3] + long <= length_m + NOISE_M), None)  # sorted: it is wide enough
        if strip is None:
            sheet = next((i for i, top in enumerate(tops) if top + wide <= width_m + NOISE_M), len(sheets))
            if sheet == len(sheets):
                sheets.append([])
                tops.append(0.0)
            strip = [sheet, tops[sheet], wide, 0.0]
            tops[sheet] += wide + kerf_m
            strips.append(strip)
        sheets[strip[0]].append(Cut(name, long, wide, strip[3], strip[1]))
        strip[3] += long + kerf_m
    return [Bought(stock, length_m, width_m, tuple(cuts)) for cuts in sheets]
