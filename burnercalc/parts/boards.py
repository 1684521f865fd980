"""The wood to buy for the moulds of the batch."""

from dataclasses import dataclass

from ..making.boards import Bought, boards_to_buy
from .calendar import Calendar
from .mould import Mould


@dataclass(frozen=True)
class Boards:
    """`bought`: empty where a piece is longer or wider than what is sold; `moulds`: those that the calendar makes."""

    moulds: int
    bought: tuple[Bought, ...]


def boards(mould: Mould, calendar: Calendar, kerf: float) -> Boards:
    made = calendar.moulds
    return Boards(made, boards_to_buy(pieces=mould.wood.pieces, moulds=made, kerf_m=kerf) or ())
