"""The lining as hot as the fire makes it when nobody watches: the empty chamber left at high or at low fire."""

from dataclasses import dataclass

from ..physics.linings import TEMP_MAX_K
from ..physics.walls import steady_wall
from .reached import Reached
from .zone import Zone


@dataclass(frozen=True)
class HotLining:
    """Hot side of each layer, hot all through, at the hot end of the band; empty without a flame.

    Beyond the tables (1800 degC) the hot face is as reached and what lies behind it as at their end.
    """

    high_K: tuple[float, ...]
    low_K: tuple[float, ...]


def hot_lining(zone: Zone, reached: Reached) -> HotLining:
    if reached.high_empty_K is None or reached.low_empty_K is None:
        return HotLining((), ())
    losses = zone.zones[0].losses

    def hot_sides_K(face_K):
        behind = steady_wall(
            wall=losses.wall,
            layers=losses.layers,
            hot_face_temp_K=min(face_K, TEMP_MAX_K),
            ambient_temp_K=losses.ambient_temp_K,
            film_loss_W=losses.film_loss_W,
        ).temps_K[1:-1]
        return (face_K, *behind)

    return HotLining(hot_sides_K(reached.high_empty_K.high), hot_sides_K(reached.low_empty_K.high))
