"""Whether the flame stays on the ports, cold and hot: its limits as velocity and firing rate."""

from dataclasses import dataclass
from functools import lru_cache

from ..errors import InputError
from ..physics import flame_holding, flame_limits
from ..physics.band import Band
from ..physics.block_fin import HotPort
from ..physics.burning_velocity import PHI_RANGE, burning_velocity_m_s, burning_velocity_over_temp
from .blend import Blend
from .face import Face
from .firing import Firing
from .gas import Gas
from .hand import MIXTURE_SLIP
from .hot_block import HotBlock
from .mixture import Mixture
from .shares import Shares
from .shop import Shop
from .stream import Stream, properties


@dataclass(frozen=True)
class Holding:
    """Limits of a port as cold mixture's velocity, and of the burner as its firing rate; None where there is none.

    `cold`, `hot`: flashback, ports at the shop's temperature, and at their working temperature with a lip too hot to
    quench. `flashback_W`: the worse of the two; `turndown` is what its careful end leaves. Of a blend the worst of its
    gases, as rates of its mean.
    """

    port_gradient_1_s: float
    flashback_gradient_1_s: Band
    lift_gradient_1_s: Band
    cold_W: Band | None
    hot_W: Band | None
    flashback_W: Band | None
    lift_W: Band | None
    turndown: Band | None
    lean: float
    rich: float


def port_flame(
    gas: Gas,
    shop: Shop,
    equivalence_ratio: float,
    diameter_m: float,
    length_m: float,
    hot: HotPort | float | None = None,
    lip_glows: bool = True,
    off: float = 0.0,
    burnt: bool = False,
) -> flame_holding.PortFlame:
    """The flame on one port at any mixture. `hot`: as HotBlock.port; None: cold. `off`: mixture leaner or richer.
    `burnt`: burnt gas round a cold one, not open air."""
    worked_out = isinstance(hot, HotPort)
    # As far as burning velocities are known.
    off = min(off, equivalence_ratio - PHI_RANGE[0], PHI_RANGE[1] - equivalence_ratio)

    def cold_speed(ratio):
        return burning_velocity_m_s(gas.composition, ratio, shop.temp_K, shop.pressure_Pa)

    return flame_holding.PortFlame(
        diameter_m,
        length_m,
        properties(gas.composition, equivalence_ratio, shop.pressure_Pa),
        burning_velocity_over_temp(gas.composition, equivalence_ratio, shop.pressure_Pa),
        equivalence_ratio,
        shop.temp_K,
        wall_temp_K=None if worked_out else hot,
        hot_port=hot if worked_out else None,
        lip_glows=lip_glows,
        off=flame_holding.mixture_off(cold_speed, equivalence_ratio, off) if off > 0 else None,
        burnt=burnt,
    )


@lru_cache(maxsize=512)
def limits_m_s(
    gas: Gas,
    shop: Shop,
    equivalence_ratio: float,
    diameter_m: float,
    length_m: float,
    hot: HotPort | float | None = None,
    left: HotPort | float | None = None,
) -> tuple[Band | None, Band | None]:
    """(flashback, lift) velocity of one port at a mixture no nearer than a hand holds it; None where no limit is found.

    `hot`: as HotBlock.port, and `left` as its left_port, which the careful end of flashback is of; None: cold.
    """
    port = (gas, shop, equivalence_ratio, diameter_m, length_m)
    flame = port_flame(*port, hot, off=MIXTURE_SLIP)

    def found(limit):
        try:
            return limit()
        except InputError:
            return None

    back, lift = found(flame.flashback_velocity_m_s), found(flame.lift_velocity_m_s)
    if back is not None and left is not hot:
        careful = found(port_flame(*port, left, off=MIXTURE_SLIP).careful_flashback_velocity_m_s)
        back = None if careful is None else Band(back.low, back.value, max(back.high, careful))
    return back, lift


def holding(
    block_thickness: float,
    gas: Gas,
    blend: Blend,
    shop: Shop,
    mixture: Mixture,
    face: Face,
    firing: Firing,
    stream: Stream,
    shares: Shares,
    hot_block: HotBlock,
) -> Holding:
    phi, burning = mixture.equivalence_ratio, mixture.burning_velocity_m_s
    alpha = mixture.cold.thermal_diffusivity_m2_s
    port = (face.port_diameter_m, block_thickness)
    flame = flame_holding.PortFlame(
        *port, properties(gas.composition, phi, shop.pressure_Pa), lambda _: burning, phi, shop.temp_K
    )

    def limits_W(gas: Gas, ratio: float, speed: float) -> tuple[Band | None, ...]:
        """Cold and hot flashback, and lift, of a gas whose mixture runs at so many times the speed of the mean's."""
        cold, lift = limits_m_s(gas, shop, ratio, *port)
        hot, _ = limits_m_s(gas, shop, ratio, *port, hot_block.port, hot_block.left_port)
        passing = ((cold, shares.least), (hot, shares.least), (lift, shares.largest))
        return tuple(_rate_W(limit, speed * share, stream, firing) for limit, share in passing)

    gas_part = firing.gas_m3_s / firing.mixture_m3_s
    each = [limits_W(gas, phi, 1.0)] if blend.passes_mean else []
    each += [limits_W(one.gas, phi * one.ratio_times, 1 + gas_part * (one.gas_times - 1)) for one in blend.ends]
    cold_W, hot_W, lift_W = (_worst(end, found) for end, found in zip((max, max, min), zip(*each)))
    flashback_W = None if cold_W is None or hot_W is None else Band(*map(max, cold_W, hot_W))
    lean, rich = flame_limits.flammable_equivalence_ratios(gas.composition)
    return Holding(
        port_gradient_1_s=flame.wall_gradient_1_s(stream.velocity_m_s),
        flashback_gradient_1_s=flame_holding.flashback_gradient_1_s(burning, alpha),
        lift_gradient_1_s=flame_holding.blow_off_gradient_1_s(burning, alpha, phi, True),
        cold_W=cold_W,
        hot_W=hot_W,
        flashback_W=flashback_W,
        lift_W=lift_W,
        turndown=None if flashback_W is None else _sure(*(firing.rate_W / rate for rate in flashback_W)),
        lean=lean,
        rich=rich,
    )


def _worst(worst, bands):
    return None if None in bands else bands[0] if len(bands) == 1 else Band(*map(worst, *bands))


def _sure(most, _, sure):
    """A turndown is promised by the careful end of the flashback rate."""
    return Band(sure, sure, most)


def _rate_W(limit_m_s, share, stream, firing):
    """Firing rate at which a port that gets `share` of the mean runs at a limit of velocity."""
    if limit_m_s is None or not share > 0:
        return None
    return flame_holding.firing_rate_limit_W(limit_m_s, stream.velocity_m_s * share, firing.rate_W)
