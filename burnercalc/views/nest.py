"""Boards and sheets of the moulds as they are cut: each once, with how many like it, its pieces by their numbers."""

from collections import Counter
from math import sqrt

from ..drawing.shapes import Text, placed, rectangle
from ..making.boards import IN_TWO
from ..parts.boards import Boards
from ..parts.mould import Mould
from .plans import MM
from .view import Say

TEXT_SHARE = 1 / 45  # of the longest board, where no height of texts is given
LINE, GAP = 1.5, 2.5  # in text heights: from line to line, between boards
INSIDE, HIGH = 0.9, 0.65  # of a piece's sides that words in it may take: along, and their height, with what hangs below


def nest_drawing(boards: Boards, mould: Mould, say: Say, text_mm: float | None, wide: float | None) -> tuple:
    """Boards beside one another as far as `wide`, width over height of the place, allows, then in rows below."""
    alike = Counter(boards.bought)
    if not alike:
        return (Text(0.0, 0.0, say("none"), text_mm or 5.0),)
    longest = max(one.length_m for one in alike) * MM
    text = text_mm or TEXT_SHARE * longest
    numbers = {piece.name: number for number, piece in enumerate(mould.wood.pieces, 1)}
    numbers |= {half: numbers[whole] for whole, half in IN_TWO.items() if whole in numbers}
    gap = GAP * text
    taken = sum((one.length_m * MM + gap) * (one.width_m * MM + LINE * text + gap) for one in alike)
    reach = max(longest, sqrt((wide or 1.0) * taken))
    shapes: list = []
    x = y = row = 0.0
    for one, count in alike.items():
        length, width = one.length_m * MM, one.width_m * MM
        if x and x + length > reach + 1e-6:
            x, y, row = 0.0, y - row - gap, 0.0
        named = Text(0.0, 0.0, say("board", count=count, stock=one.stock, length=one.length_m, width=one.width_m), text)
        top = y - LINE * text
        drawn = [Text(0.0, 0.6 * text, named.text, text), rectangle(0.0, -width, length, width, "body")]
        for cut in one.cuts:
            drawn += _piece(cut, numbers[cut.name], -width, text, say)
        shapes += [placed(shape, x, top) for shape in drawn]
        row = max(row, width + LINE * text)
        x += max(length, named.width) + gap
    return tuple(shapes)


def _piece(cut, number, bottom, text, say):
    """A piece on its board, and in it its number, with its sizes where they can be read, along its longer side."""
    long, wide = cut.length_m * MM, cut.width_m * MM
    x, y = cut.x_m * MM, bottom + cut.y_m * MM
    turned = wide > long
    along, across = max(long, wide), min(long, wide)
    sizes = say("piece", number=number, length=max(cut.length_m, cut.width_m), width=min(cut.length_m, cut.width_m))
    height = min(text, HIGH * across)
    fits = Text(0.0, 0.0, sizes, height).width <= INSIDE * along
    return [
        rectangle(x, y, long, wide, "wood"),
        Text(
            x + long / 2 + (height / 2 if turned else 0.0),
            y + wide / 2 - (0.0 if turned else height / 2),
            sizes if fits else str(number),
            height,
            "middle",
            90.0 if turned else 0.0,
        ),
    ]
