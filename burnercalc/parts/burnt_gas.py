"""What keeps the cold flame alight once its own burnt gas fills the chamber, in which a rich one lifts sooner."""

from dataclasses import dataclass

from ..physics import purge
from ..physics.band import Band
from .chamber import Chamber
from .lighting_try import LightingTry
from .shop import Shop
from .tries import Tries

AIR_LEFT = 0.05  # of what it held, when it counts as full of burnt gas; common practice

BURNT_K = 1200.0  # of what leaves a flame among cold walls, colder than any does: common practice


@dataclass(frozen=True)
class BurntGas:
    """All None where it is not lit, or no limit is found. `full_s`: from lighting, at most; before it there is air.

    `alone_W`: above it the flame of one cold port alone lifts; `torch_W`: the flames of ports side by side with a
    torch or pilot in front, careful end. `keeps`: what keeps it alight at the rate that it waits at: itself, torch,
    maybe (a torch, by what nobody has measured), or "" where no torch does.
    """

    full_s: float | None
    alone_W: Band | None
    torch_W: float | None
    keeps: str


def burnt_gas(chamber: Chamber, shop: Shop, lighting_try: LightingTry, tries: Tries) -> BurntGas:
    if lighting_try.waits_W is None:
        return BurntGas(None, None, None, "")
    one, rate_W = tries.at(lighting_try.waits_ratio), lighting_try.waits_W
    burnt_m3_s, alone_W = one.mixture_m3_s(rate_W) * BURNT_K / shop.temp_K, one.burnt_lift_W
    full_s = purge.stirred_time_s(chamber.volume_m3, burnt_m3_s, AIR_LEFT)
    if alone_W is None:
        return BurntGas(full_s, None, None, "")
    holds = (("itself", one.together_W), ("torch", one.torch_W), ("maybe", one.torch_most_W))
    keeps = next((what for what, most_W in holds if rate_W <= most_W), "")
    return BurntGas(full_s, alone_W, one.torch_W, keeps)
