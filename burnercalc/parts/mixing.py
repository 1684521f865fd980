"""The mix pipe: whether gas and air are mixed at its end, and whether a flame could walk back up it at low fire."""

from dataclasses import dataclass

from ..physics import losses, pipes
from ..physics import mixing as physics
from ..physics.band import Band
from ..physics.port_stream import turbulent_weight
from .gas import Gas
from .holding import limits_m_s
from .mixture import Mixture
from .shop import Shop
from .stream import Stream

UNSURE = 2.0  # the flame speed of a turbulent stream is good to a factor of two
LONG = 100.0  # bores: the stream of a pipe after blower, elbows and jet is no young one


@dataclass(frozen=True)
class Mixing:
    """`diameters`: mixing length over bore, elbows counted; `flame_m_s`: of mixture at low fire that a flame comes back
    against, by its own speed, `own_m_s` most likely, or along the wall of the pipe."""

    bore_m: float
    diameters: float
    velocity_m_s: float
    own_m_s: float
    flame_m_s: Band


def mixing(
    mix_pipe: str,
    mix_pipe_length: float,
    mix_pipe_elbows: int,
    low_fire: float,
    equivalence_ratio: float,
    gas: Gas,
    shop: Shop,
    stream: Stream,
    mixture: Mixture,
) -> Mixing:
    pipe = pipes.pipe(mix_pipe)
    velocity = stream.mixture_m3_s / pipe.area_m2
    own_m_s, flame_m_s = flame_in_pipe(gas, shop, equivalence_ratio, pipe, velocity * low_fire, mixture)
    return Mixing(
        bore_m=pipe.bore_m,
        diameters=physics.mixing_diameters(mix_pipe_length, pipe.bore_m, mix_pipe_elbows),
        velocity_m_s=velocity,
        own_m_s=own_m_s,
        flame_m_s=flame_m_s,
    )


def flame_in_pipe(
    gas: Gas, shop: Shop, equivalence_ratio: float, pipe: pipes.Pipe, velocity_m_s: float, mixture: Mixture
) -> tuple[float, Band]:
    """(own_m_s, flame_m_s) of Mixing where a mixture runs at a velocity."""
    reynolds = losses.reynolds(velocity_m_s, pipe.bore_m, mixture.cold.density_kg_m3, mixture.cold.viscosity_Pas)
    swings = physics.TURBULENCE_INTENSITY * turbulent_weight(reynolds)
    slow, middle, fast = (
        physics.turbulent_burning_velocity_m_s(laminar, velocity_m_s, swings)
        for laminar in mixture.burning_velocity_m_s
    )
    own = Band(slow / UNSURE, middle, fast * UNSURE)
    along, _ = limits_m_s(gas, shop, equivalence_ratio, pipe.bore_m, LONG * pipe.bore_m)
    return middle, own if along is None else Band(*map(max, own, along))
