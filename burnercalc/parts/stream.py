"""The stream of mixture through the ports at high fire."""

from dataclasses import dataclass
from functools import lru_cache

from ..physics import combustion
from ..physics.mixture import mixture_properties
from ..physics.port_stream import StreamProperties
from .face import Face
from .firing import Firing
from .mixture import Mixture
from .shop import Shop


@dataclass(frozen=True)
class Stream:
    """Mean of all ports, cold, at the shop's temperature and pressure; `mixture_m3_s` is the flow as it is there."""

    velocity_m_s: float
    mixture_m3_s: float
    reynolds: float
    loading_W_m2: float


@lru_cache(maxsize=128)
def properties(
    composition: tuple[tuple[str, float], ...], equivalence_ratio: float, pressure_Pa: float
) -> StreamProperties:
    """Of a mixture, at any temperature."""
    reactants = combustion.reactants_mol(composition, equivalence_ratio)
    return StreamProperties(lambda temp_K: mixture_properties(reactants, temp_K, pressure_Pa))


def stream(face: Face, firing: Firing, mixture: Mixture, shop: Shop) -> Stream:
    mixture_m3_s = firing.mixture_m3_s * shop.swell
    velocity = mixture_m3_s / face.port_area_m2
    return Stream(
        velocity_m_s=velocity,
        mixture_m3_s=mixture_m3_s,
        reynolds=velocity * face.port_diameter_m / mixture.cold.kinematic_viscosity_m2_s,
        loading_W_m2=firing.rate_W / face.port_area_m2,
    )
