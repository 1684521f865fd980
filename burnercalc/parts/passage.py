"""The way through the baffle and the ports, in series: the pressure that pushes the mixture from plenum to chamber."""

from dataclasses import dataclass
from functools import cached_property

from ..physics import losses, port_drop
from ..physics.band import Band
from ..physics.mixture import Mixture as Properties
from .baffle_plate import BafflePlate
from .face import Face
from .mixture import Mixture
from .stream import Stream

# A port shorter than this has no reattached jet; it is then a sharp orifice of C_d 0.61 (memory).
SHORTEST_TUBE, ORIFICE_K = 0.75, 0.61**-2
MOST_ROUGHNESS = 0.0999  # roughness over bore; the friction formula ends at a tenth
PORT_BAND = (0.8, 1.05)  # true over reckoned pressure of a port, from measured long orifices (memory)


@dataclass(frozen=True)
class Passage:
    """`port_Pa`, `baffle_Pa`: at high fire, cold; the methods give them at any flow of mixture as it is in the shop."""

    high_m3_s: float
    port_area_m2: float
    port_diameter_m: float
    port_length_m: float
    baffle: BafflePlate
    mixture: Properties

    @cached_property
    def port_Pa(self) -> Band:
        at_high = self.ports_at_Pa(self.high_m3_s)
        return Band(PORT_BAND[0] * at_high, at_high, PORT_BAND[1] * at_high)

    @cached_property
    def baffle_Pa(self) -> float:
        return self.baffle_at_Pa(self.high_m3_s)

    def ports_at_Pa(self, mixture_m3_s: float) -> float:
        """Over the ports."""
        velocity = mixture_m3_s / self.port_area_m2
        if self.port_length_m / self.port_diameter_m < SHORTEST_TUBE:
            return ORIFICE_K * losses.velocity_head_Pa(velocity, self.mixture.density_kg_m3)
        return port_drop.port_drop_Pa(
            velocity,
            self.port_diameter_m,
            self.port_length_m,
            self.mixture.density_kg_m3,
            self.mixture.viscosity_Pas,
            roughness_m=min(losses.ROUGHNESS_CAST_M, MOST_ROUGHNESS * self.port_diameter_m),
        )

    def baffle_at_Pa(self, mixture_m3_s: float) -> float:
        """Over the baffle; 0 without one."""
        if self.baffle.loss_K is None:
            return 0.0
        return self.baffle.loss_K * losses.velocity_head_Pa(
            mixture_m3_s / self.baffle.area_m2, self.mixture.density_kg_m3
        )

    def at_Pa(self, mixture_m3_s: float) -> float:
        """Over ports and baffle."""
        return self.ports_at_Pa(mixture_m3_s) + self.baffle_at_Pa(mixture_m3_s)


def passage(face: Face, stream: Stream, baffle_plate: BafflePlate, mixture: Mixture, block_thickness: float) -> Passage:
    return Passage(
        high_m3_s=stream.mixture_m3_s,
        port_area_m2=face.port_area_m2,
        port_diameter_m=face.port_diameter_m,
        port_length_m=block_thickness,
        baffle=baffle_plate,
        mixture=mixture.cold,
    )
