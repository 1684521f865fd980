"""How the jet is proved in the test fire: by a scale that carries a full cylinder, or by a meter; and how long."""

from dataclasses import dataclass
from math import ceil

from ..constants import POUND_KG
from .fires import Fires
from .firing import Firing
from .gas_line import GasLine
from .lighting import Lighting

# All common practice.
SHOWS, MOST = 0.02, 0.15  # a jet is off by 6 %, its drill by 2, the gauge by 2: beyond the larger it is another hole
# What a scale carries and its division, as sold [kg]; memory.
SCALES_KG = ((30.0, 0.005), (60.0, 0.01), (100.0, 0.02), (150.0, 0.05))
FULL_OVER_CHARGE = 1.9  # of a full cylinder's mass, bottle and all
READ_S, LONGEST_S, STEP_S = 600.0, 3600.0, 300.0  # gauges are read in the least; nobody stands by for more; whole steps


@dataclass(frozen=True)
class Proof:
    """`read`: low or high, the highest fire that the card leads to; `share`: of the firing rate, at the gauge's mark.

    `time_s`: by a scale until the loss shows to `shows`, one division off; None where that is too long.
    `scale_kg`: what it carries and its division; None by a meter. `most`: so far off it is the jet that is wrong.
    """

    read: str
    share: float
    time_s: float | None
    scale_kg: tuple[float, float] | None
    full_kg: float | None
    shows: float = SHOWS
    most: float = MOST


def proof(low_fire: float, cylinder: str, gas_line: GasLine, firing: Firing, lighting: Lighting, fires: Fires) -> Proof:
    read = "low" if lighting.waits_W and fires.high is None and not fires.straight else "high"
    fire = fires.low if read == "low" else fires.high
    share = fire.rate_W / firing.rate_W if fire else {"low": low_fire, "high": 1.0}[read]
    if gas_line.there or cylinder == "tank":  # which stands on no scale
        return Proof(read, share, READ_S, None, None)
    full_kg = FULL_OVER_CHARGE * float(cylinder) * POUND_KG
    scale_kg = next(one for one in SCALES_KG if one[0] >= full_kg)
    weighed_s = scale_kg[1] / SHOWS / (firing.gas_kg_s * share)
    time_s = max(ceil(weighed_s / STEP_S - 1e-6) * STEP_S, READ_S)
    return Proof(read, share, time_s if time_s <= LONGEST_S else None, scale_kg, full_kg)
