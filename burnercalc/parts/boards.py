"""The wood to buy for all moulds of the batch."""

from dataclasses import dataclass

from ..making.boards import Bought, boards_to_buy
from .mould import Mould


@dataclass(frozen=True)
class Boards:
    """`bought`: empty where a piece is longer or wider than what is sold, and `moulds` are those that are made."""

    moulds: int
    bought: tuple[Bought, ...]


def boards(mould: Mould, moulds: int, batch_size: int, kerf: float) -> Boards:
    made = min(moulds, batch_size)
    return Boards(made, boards_to_buy(pieces=mould.wood.pieces, moulds=made, kerf_m=kerf) or ())
