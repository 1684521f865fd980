"""The jet of the inlet: how much more it pushes through the ports in front of it."""

from dataclasses import dataclass

from ..physics import plenum as physics
from .baffle_plate import BafflePlate
from .mixture import Mixture
from .passage import Passage
from .plenum import Plenum
from .stream import Stream


@dataclass(frozen=True)
class InletJet:
    """`flow_ratio`: the most that a port right under the inlet passes, over its fair share."""

    flow_ratio: float


def inlet_jet(
    plenum: Plenum,
    stream: Stream,
    mixture: Mixture,
    passage: Passage,
    baffle_plate: BafflePlate,
    inlet_position: str,
) -> InletJet:
    """A baffle leaves its share of the jet's velocity; an inlet at an end blows on no port."""
    if inlet_position != "centre":
        return InletJet(1.0)
    left = 1.0 if baffle_plate.unevenness_left is None else baffle_plate.unevenness_left
    velocity = left * stream.mixture_m3_s / plenum.inlet_area_m2
    return InletJet(physics.impingement_flow_ratio(velocity, mixture.cold.density_kg_m3, passage.port_Pa.value))
