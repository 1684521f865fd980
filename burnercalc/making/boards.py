"""Boards for all moulds of a batch: dressed boards cut by length, sheets of plywood cut in strips."""

from dataclasses import dataclass, replace
from itertools import permutations, product
from math import ceil

from ..constants import FOOT_M
from ..errors import require
from .body import cut_plan
from .stock import NOISE_M, board, mm

BOARD_LENGTHS_M = (4 * FOOT_M, 8 * FOOT_M, 12 * FOOT_M)  # as sold: common practice
SHEETS_M = {  # as sold by the inch and by the millimetre, length and width, the larger of four times the area: the same
    "in": ((4 * FOOT_M, 2 * FOOT_M), (8 * FOOT_M, 4 * FOOT_M)),
    "mm": ((1.22, 0.61), (2.44, 1.22)),
}
IN_TWO = {"mould layer": "half layer"}  # what is sawn in two before it is used
ORDERS = (  # of (name, long, wide), in which they are placed
    lambda one: (-one[2], -one[1]),
    lambda one: (-one[1], -one[2]),
    lambda one: (-one[1] * one[2], -one[1]),
)
FEW, MANY = 5, 90  # pieces that are placed in every order; pieces that are laid out together, for time


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

    A dressed board gives pieces as wide as it is, by length. Sheets are cut right through: in strips, pieces one behind
    the other, or each piece from the free corner that it fills best; whichever way, order and sizes of sheets
    buy least area. A layer of a round mould, which is sawn in two anyhow, lies in halves where that is less.

    Arguments:
        pieces    body.Piece records of one mould; their stock is a name in lumber.csv
        moulds    how many >= 1
        kerf_m    width of a saw cut [m] >= 0
    Returns: tuple of Bought, or None where a piece is longer or wider than what is sold
    Raises: InputError for moulds, kerf
    Source: first-fit decreasing; best short side fit; sizes as sold: common practice
    Checked by: tests/test_making_boards.py (by hand; no piece on another; all places of a few pieces; a bound)
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
    longest, widest = (max(getattr(piece, side) for piece in pieces) for side in ("length_m", "width_m"))
    if longest > BOARD_LENGTHS_M[-1] or widest > board(stock).width_m + NOISE_M:
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


def sheets_m(stock):
    """The small and the large sheet of a plywood; its name says by which tape it is sold."""
    return SHEETS_M["mm" if stock.endswith("mm") else "in"]


def _by_area(stock, pieces, moulds, kerf_m):
    """[Bought] of the least area that the rules find; for many pieces moulds in groups, or all of them in strips."""
    most = max(1, MANY // sum(piece.count for piece in pieces))
    if moulds <= most:
        return _least(stock, pieces, moulds, kerf_m)
    groups, rest = divmod(moulds, most)
    group = _least(stock, pieces, most, kerf_m)
    if group is None:
        return None
    apart = groups * group + (_least(stock, pieces, rest, kerf_m) if rest else [])
    together = _cheapest(stock, _every(pieces, moulds, ORDERS[0]), kerf_m, _in_strips)
    return min((together, apart), key=_area_m2)


def _least(stock, pieces, moulds, kerf_m):
    """[Bought] by every order and way of cutting, whole layers and halves; None where a piece is too large."""
    ways = [pieces] if all(piece.name not in IN_TWO for piece in pieces) else [pieces, _halved(pieces, kerf_m)]
    best, least = None, _least_area_m2(pieces, moulds, kerf_m)
    for way in ways:
        every = [_every(way, moulds, order) for order in ORDERS]
        if len(every[0]) <= FEW:
            every += dict.fromkeys(permutations(every[0]))
        for pieces_in_order, pack in product(every, (_in_strips, _in_corners, _slim)):
            found = _cheapest(stock, pieces_in_order, kerf_m, pack)
            if found and (best is None or _area_m2(found) < _area_m2(best) - NOISE_M):
                best = found
            if best and _area_m2(best) <= least + NOISE_M:
                return best
    return best


def _every(pieces, moulds, order):
    """(name, long side, short side) of every piece, in order."""
    every = [
        (piece.name, max(piece.length_m, piece.width_m), min(piece.length_m, piece.width_m))
        for piece in pieces
        for _ in range(piece.count * moulds)
    ]
    return sorted(every, key=order)


def _halved(pieces, kerf_m):
    """The pieces, those that are sawn in two anyhow as their halves."""
    return [
        replace(
            piece, name=IN_TWO[piece.name], width_m=(piece.width_m - kerf_m) / 2, count=2 * piece.count
        ) if piece.name in IN_TWO else piece
        for piece in pieces
    ]  # fmt: skip


def _area_m2(bought):
    return sum(one.length_m * one.width_m for one in bought)


def _least_area_m2(pieces, moulds, kerf_m):
    """Area below which no way of cutting can do: sheets as large as the pieces with their saw cuts."""
    needs = moulds * sum(piece.count * (piece.length_m + kerf_m) * (piece.width_m + kerf_m) for piece in pieces)
    needs -= moulds * sum(piece.count * kerf_m * (piece.length_m + kerf_m) for piece in pieces if piece.name in IN_TWO)
    (length_m, width_m), _ = sheets_m(pieces[0].stock)
    return ceil(needs / ((length_m + kerf_m) * (width_m + kerf_m)) - NOISE_M) * length_m * width_m


def _cheapest(stock, every, kerf_m, pack):
    """[Bought]: all on large sheets, then what is on each of them on small ones where that is less; None: too large."""
    small, large = sheets_m(stock)
    only = pack(every, *small, kerf_m)
    ways = [[(small, cuts) for cuts in only]] if only is not None else []
    on_large = pack(every, *large, kerf_m)
    if on_large is not None:
        ways.append([])
        for cuts in on_large:
            again = pack([(cut.name, cut.length_m, cut.width_m) for cut in _upright(cuts)], *small, kerf_m)
            few = again is not None and len(again) * small[0] * small[1] < large[0] * large[1] - NOISE_M
            ways[-1] += [(small, one) for one in again] if few else [(large, cuts)]
    found = [[Bought(stock, *size, tuple(cuts)) for size, cuts in way] for way in ways]
    return min(found, key=_area_m2, default=None)


def _upright(cuts):
    """The cuts as pieces, the long side first, in the order in which they were placed."""
    return [
        cut if cut.length_m >= cut.width_m else replace(cut, length_m=cut.width_m, width_m=cut.length_m) for cut in cuts
    ]


def _in_corners(every, length_m, width_m, kerf_m, slim=False):
    """[cuts of each sheet]: each piece in the free corner that it fills best, either way round, cut off right through.

    A rectangle that is left is parted so that the larger of the two rests is as large as can be; `slim`: as small.
    """
    sheets, free = [], []  # free: (sheet, x, y, length, width)
    for name, long, wide in every:
        if long > length_m + NOISE_M or wide > width_m + NOISE_M:
            return None
        fits = _corners(free, long, wide)
        if not fits:
            sheets.append([])
            free.append((len(sheets) - 1, 0.0, 0.0, length_m, width_m))
            fits = _corners(free, long, wide)
        _, at, a, b = min(fits)
        sheet, x, y, along, across = free.pop(at)
        sheets[sheet].append(Cut(name, a, b, x, y))
        beside, above = along - a - kerf_m, across - b - kerf_m
        if (beside * across >= above * along) != slim:
            rests = ((x + a + kerf_m, y, beside, across), (x, y + b + kerf_m, a, above))
        else:
            rests = ((x, y + b + kerf_m, along, above), (x + a + kerf_m, y, beside, b))
        free += [(sheet, *rest) for rest in rests if rest[2] > NOISE_M and rest[3] > NOISE_M]
    return sheets


def _corners(free, long, wide):
    """[(less of what is left beside and above, number of the free rectangle, length, width)] of where a piece goes."""
    return [
        (min(along - a, across - b), at, a, b)
        for at, (_, _, _, along, across) in enumerate(free)
        for a, b in ((long, wide), (wide, long))
        if a <= along + NOISE_M and b <= across + NOISE_M
    ]


def _slim(*sheet):
    return _in_corners(*sheet, slim=True)


def _in_strips(every, length_m, width_m, kerf_m):
    """[cuts of each sheet]: strips as wide as their first piece, pieces behind each other in the first with room."""
    sheets: list[list[Cut]] = []
    tops: list[float] = []  # how far each sheet is used across
    strips: list[list] = []  # [sheet, y, width, x reached]
    for name, long, wide in every:
        if long > length_m + NOISE_M or wide > width_m + NOISE_M:
            return None
        strip = next((one for one in strips if one[3] + long <= length_m + NOISE_M and wide <= one[2] + NOISE_M), None)
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
    return sheets
