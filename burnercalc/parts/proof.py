"""How each jet is proved in the test fire: by a scale that carries a full cylinder, or by a meter; and how long."""

from dataclasses import dataclass
from math import ceil, hypot
from operator import gt

from ..constants import POUND_KG
from .block import Block
from .chamber import Chamber
from .fires import Fires
from .firing import Firing
from .gas import Gas
from .gas_line import GasLine
from .gauges import Gauges
from .hot_lining import HotLining
from .lighting import Lighting
from .lighting_meter import LightingMeter
from .lighting_slide import LightingSlide

# All common practice.
SHOWS, MOST = 0.02, 0.15  # a jet is off by 6 %, its drill by 2, the gauge by 2: beyond the larger it is another hole
# What a scale carries and its division, as sold; memory.
SCALES_LB = ((66.0, 0.01), (132.0, 0.02), (220.0, 0.05), (330.0, 0.1))
SCALES_KG = {
    "in": tuple((most * POUND_KG, step * POUND_KG) for most, step in SCALES_LB),
    "mm": ((30.0, 0.005), (60.0, 0.01), (100.0, 0.02), (150.0, 0.05)),
}
FULL_OVER_CHARGE = 1.9  # of a full cylinder's mass, bottle and all
READ_S, LONGEST_S, STEP_S = 600.0, 5400.0, 300.0  # counted for the least; nobody stands by for more; whole steps
WATCH_OFF = 0.01  # of what a hand times on a meter


@dataclass(frozen=True)
class Proof:
    """`read`: low or high, the highest fire that the card leads to, where gauges are read; `too_hot`: high or both
    where, left empty at it, a layer or the block may pass what it stands, so that no gas is counted at high fire where
    the card leads to low fire.
    `by`: scale, meter (that of the line), lent (one of a fitter's), or "": a blend boils off as another gas and proves
    no jet.

    Several burners heat the chamber only together, and a scale or meter shows but one. So all burn, and one of them is
    fed by a cylinder or meter of its own: `each` has such a fire. The line's own meter counts all: it is read at LIGHT,
    before another is lit, `alone`.

    `counted`: light, low or high, where gas is counted, with `share` of the firing rate, at the gauge's mark;
    `time_s`: by a scale until the loss shows to `shows`, one division off; None where that is too long.
    `scale_kg`: what it carries and its division; None by a meter. `spare`: cylinders that it takes besides those that
    are drawn from together. `most`: so far off it is the jet that is wrong.
    """

    read: str
    too_hot: str
    by: str
    each: bool
    counted: str
    share: float
    time_s: float | None
    scale_kg: tuple[float, float] | None = None
    full_kg: float | None = None
    spare: int = 0
    shows: float = SHOWS
    most: float = MOST

    @property
    def alone(self) -> bool:
        return self.counted == "light"


def proof(
    low_fire: float,
    cylinder: str,
    cylinder_count: int,
    burner_count: int,
    sizes: str,
    gas: Gas,
    gas_line: GasLine,
    firing: Firing,
    lighting: Lighting,
    lighting_slide: LightingSlide,
    lighting_meter: LightingMeter,
    gauges: Gauges,
    fires: Fires,
    hot_lining: HotLining,
    chamber: Chamber,
    block: Block,
) -> Proof:
    read = "low" if lighting.waits_W and fires.high is None and not fires.straight else "high"
    stands_K = (min(chamber.layer_limits_K[0], block.material.service_temp_K), *chamber.layer_limits_K[1:])
    low, high = (any(map(gt, hot_K, stands_K)) for hot_K in (hot_lining.low_K, hot_lining.high_K))
    too_hot = "both" if low else "high" if high else ""
    counted = "low" if too_hot and fires.low else read
    fire = fires.low if counted == "low" else fires.high
    share = fire.rate_W / firing.rate_W if fire else {"low": low_fire, "high": 1.0}[counted]
    several, slide = burner_count > 1, lighting_slide
    if several and lighting_meter.told and slide.rate_W and slide.gas_Pa:
        off = hypot(WATCH_OFF, gauges.off_Pa / (2 * (slide.gas_Pa.value - (slide.pipe_Pa or 0.0))))
        shows = max(SHOWS, ceil(100 * off - 1e-6) / 100)
        at_light = slide.rate_W.value / firing.rate_W
        return Proof(read, too_hot, "meter", False, "light", at_light, lighting_meter.reads_s, shows=shows)
    if gas.blended and not gas_line.there:
        return Proof(read, too_hot, "", False, counted, share, None)
    if gas_line.there or cylinder == "tank":  # which stands on no scale
        by = "meter" if gas_line.metered and not several else "lent"
        return Proof(read, too_hot, by, several, counted, share, READ_S)
    full_kg = FULL_OVER_CHARGE * float(cylinder) * POUND_KG
    scale_kg = next(one for one in SCALES_KG[sizes] if one[0] >= full_kg)
    weighed_s = scale_kg[1] / SHOWS / (firing.gas_kg_s * share)
    time_s = max(ceil(weighed_s / STEP_S - 1e-6) * STEP_S, READ_S)
    if time_s > LONGEST_S:
        return Proof(read, too_hot, "scale", False, counted, share, None, scale_kg, full_kg)
    # The others draw from what is left: of fewer cylinders than burners that would be more from each than there is.
    spare = int(several and cylinder_count < burner_count)
    return Proof(read, too_hot, "scale", several, counted, share, time_s, scale_kg, full_kg, spare)
