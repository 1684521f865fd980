"""What the burner takes: pressure from the start of the mix pipe to the chamber, at any flow."""

from dataclasses import dataclass
from functools import cached_property

from ..physics import losses, pipes
from ..physics.pipes import Pipe
from .back_pressure import BackPressure
from .passage import Passage
from .plenum import Plenum
from .shares import Shares
from .stream import Stream


@dataclass(frozen=True)
class Resistance:
    """`inlet_Pa`, `split_Pa` (over tee and legs before two inlets), `mix_pipe_Pa`, `total_Pa`: at high fire, cold.

    `uneven`: the plenum's pressure over the mean of ports and baffle.

    `back_Pa`: as set, at any flow; `opening_Pa`: what the flue gas of all burners takes to get out at `high_m3_s`
    of this one, and goes with the square of the flow.
    """

    back_Pa: float
    opening_Pa: float
    high_m3_s: float
    uneven: float
    passage: Passage
    inlet: Pipe
    inlets: int
    leg_m: float  # of a leg along the back, from the tee to its elbow; 0 with one inlet
    mix_pipe: Pipe
    mix_pipe_length_m: float
    mix_pipe_elbows: int

    @cached_property
    def inlet_Pa(self) -> float:
        return self.inlet_at_Pa(self.high_m3_s)

    @cached_property
    def split_Pa(self) -> float | None:
        return self.split_at_Pa(self.high_m3_s) if self.inlets > 1 else None

    @cached_property
    def mix_pipe_Pa(self) -> float:
        return self.mix_pipe_at_Pa(self.high_m3_s)

    @cached_property
    def total_Pa(self) -> float:
        return self.pressure_Pa(self.high_m3_s)

    def pressure_Pa(self, mixture_m3_s: float) -> float:
        """Over the shop's, that pushes a flow of mixture (as it is in the shop) into the chamber."""
        return (
            self.back_Pa
            + self.opening_Pa * (mixture_m3_s / self.high_m3_s) ** 2
            + self.uneven * self.passage.at_Pa(mixture_m3_s)
            + self.inlet_at_Pa(mixture_m3_s)
            + self.split_at_Pa(mixture_m3_s)
            + self.mix_pipe_at_Pa(mixture_m3_s)
        )

    def tap_Pa(self, mixture_m3_s: float, ports: float = 1.0) -> float:
        """At the mix pipe's tap, over the shop's: behind the pipe's own losses, at rest, so less what the stream's
        speed is worth. `ports`: pressure of the ports over what is reckoned."""
        behind_Pa = self.pressure_Pa(mixture_m3_s) - self.mix_pipe_at_Pa(mixture_m3_s)
        more_Pa = (ports - 1) * self.uneven * self.passage.ports_at_Pa(mixture_m3_s)
        speed_m_s = mixture_m3_s / self.mix_pipe.area_m2
        return behind_Pa + more_Pa - losses.velocity_head_Pa(speed_m_s, self.passage.mixture.density_kg_m3)

    def inlet_at_Pa(self, mixture_m3_s: float) -> float:
        """From the mix pipe through a step of size, if any, and an inlet with its part of the flow to rest in the
        plenum; the inlet is short."""
        density = self.passage.mixture.density_kg_m3
        inlet_Pa, pipe_Pa = (
            losses.velocity_head_Pa(mixture_m3_s / self.inlets / pipe.area_m2, density)
            for pipe in (self.inlet, self.mix_pipe)
        )
        if self.inlet.area_m2 >= self.mix_pipe.area_m2:
            step = losses.expansion_K(self.mix_pipe.area_m2 / self.inlet.area_m2) * pipe_Pa
        else:
            step = losses.contraction_K(self.inlet.area_m2 / self.mix_pipe.area_m2) * inlet_Pa
        return step + losses.EXIT_K * inlet_Pa

    def split_at_Pa(self, mixture_m3_s: float) -> float:
        """Through the tee as into its branch, then along a leg of the inlet's size and its elbow with half the flow."""
        if self.inlets == 1:
            return 0.0
        mixture = self.passage.mixture
        density, viscosity = mixture.density_kg_m3, mixture.viscosity_Pas
        tee_Pa = losses.pipe_drop_Pa(mixture_m3_s, self.mix_pipe.bore_m, 0.0, density, viscosity, ("tee_branch",))
        each_m3_s = mixture_m3_s / self.inlets
        return tee_Pa + losses.pipe_drop_Pa(each_m3_s, self.inlet.bore_m, self.leg_m, density, viscosity, ("elbow_90",))

    def mix_pipe_at_Pa(self, mixture_m3_s: float) -> float:
        """In the mix pipe with its elbows, counted full of mixture."""
        return losses.pipe_drop_Pa(
            mixture_m3_s,
            self.mix_pipe.bore_m,
            self.mix_pipe_length_m,
            self.passage.mixture.density_kg_m3,
            self.passage.mixture.viscosity_Pas,
            ("elbow_90",) * self.mix_pipe_elbows,
            losses.SHARP_ENTRY_K,
        )


def resistance(
    plenum: Plenum,
    stream: Stream,
    passage: Passage,
    shares: Shares,
    back_pressure: BackPressure,
    mix_pipe: str,
    mix_pipe_length: float,
    mix_pipe_elbows: int,
    chamber_back_pressure: float,
) -> Resistance:
    return Resistance(
        back_Pa=chamber_back_pressure,
        opening_Pa=back_pressure.opening_Pa.value if back_pressure.opening_Pa else 0.0,
        high_m3_s=stream.mixture_m3_s,
        uneven=shares.plenum_Pa / shares.mean_drop_Pa,
        passage=passage,
        inlet=plenum.inlet,
        inlets=len(plenum.inlets_m),
        leg_m=(plenum.inlets_m[-1] - plenum.inlets_m[0]) / 2,
        mix_pipe=pipes.pipe(mix_pipe),
        mix_pipe_length_m=mix_pipe_length,
        mix_pipe_elbows=mix_pipe_elbows,
    )
