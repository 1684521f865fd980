"""What a flame crosses from port to port, and what it does not enter: of the mixture and the face alone."""

from dataclasses import dataclass

from ..physics import flame_limits
from ..physics.band import Band
from ..physics.port_field import chain_pitch_m
from .face import Face
from .gas import Gas
from .mixture import Mixture

WITH_A_GAP = ("CH4", "C3H8", "C4H10")  # gases with a cross-lighting figure, and those that are lit like one of them
LIT_LIKE = {"C2H6": "C3H8", "C3H6": "C3H8", "iC4H10": "C4H10"}


@dataclass(frozen=True)
class Crossing:
    """`quenching_m`: diameter of a cold port that just stops a flame; `cross_light_m`: gap over which one port lights
    the next; `step_m`: the longest from port to port that a flame must take to reach them all, None for a single port.
    """

    quenching_m: Band
    cross_light_m: Band
    step_m: float | None


def crossing(pattern: str, gas: Gas, mixture: Mixture, face: Face) -> Crossing:
    main = max(gas.composition, key=lambda share: share[1] if share[0] in (*WITH_A_GAP, *LIT_LIKE) else 0.0)[0]
    sure_m, most_m = flame_limits.cross_light_gap_m(LIT_LIKE.get(main, main))
    return Crossing(
        quenching_m=flame_limits.quenching_port_diameter_m(
            mixture.burning_velocity_m_s, mixture.cold.thermal_diffusivity_m2_s
        ),
        cross_light_m=Band(sure_m, sure_m, most_m),
        step_m=chain_pitch_m(pattern, face.port_pitch_m, face.row_pitch_m),
    )
