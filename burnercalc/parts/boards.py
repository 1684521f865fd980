"""The wood to buy for the moulds of the batch."""

from dataclasses import dataclass

from ..making.boards import Bought, boards_to_buy
from ..making.stock import WOOD_KERF_M
from .calendar import Calendar
from .mould import Mould


@dataclass(frozen=True)
class Boards:
    """`bought`: empty where a piece is longer or wider than what is sold; `moulds`: those that the calendar makes."""

    moulds: int
    kerf_m: float  # of a saw for wood
    bought: tuple[Bought, ...]


def boards(mould: Mould, calendar: Calendar, sizes: str) -> Boards:
    made, kerf_m = calendar.moulds, WOOD_KERF_M[sizes]
    return Boards(made, kerf_m, boards_to_buy(pieces=mould.wood.pieces, moulds=made, kerf_m=kerf_m) or ())
