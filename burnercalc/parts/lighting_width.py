"""Whether a hand sets what lights it by the gauge that is there, and what that is sold would let it where not."""

from dataclasses import dataclass, replace
from math import hypot, sqrt

from ..making import train as making
from ..physics import drills
from ..physics.drills import Drill
from . import gauges as gauging
from . import lighting_meter as metering
from . import lighting_slide as sliding
from .blower import Blower
from .gas import Gas
from .gas_line import GasLine
from .gauges import Gauges
from .hand import NEEDLE_PRESSURE_OFF
from .jet import PROVEN_OFF, Jet
from .lighting import Lighting
from .lighting_meter import LightingMeter
from .lighting_slide import FAMILIES, LightingSlide
from .pilot import Pilot
from .resistance import Resistance
from .shop import Shop
from .tries import Tries


@dataclass(frozen=True)
class LightingWidth:
    """`band_Pa`: the one band that is told: of the first day, as far in as a jet needs that passes little; None where
    none is, as beside a meter, which tells more than any pressure. `off_Pa`: what gauge, weighed gas and hand miss.
    `lacks`: why no hand sets it: scale (its gauge ends before), room (less than they miss both ways), band (of the
    first day less than they miss one way), blend (of one whose jet no card proves less than both ways), or "".

    Where it lacks one, or only its hole is wrong: of the gauges that are sold the smallest that reads it with room, and
    the drill nearest to what lighting aims at, with which it lacks nothing, each tried; None where none does. `proven`:
    a blend's jet that is proven in another burner would let it."""

    band_Pa: tuple[float, float] | None
    off_Pa: float
    lacks: str
    gauge_Pa: float | None
    hole: Drill | None
    proven: bool


def lighting_width(
    sizes: str,
    lit_by: str,
    low_fire: float,
    line_pressure: float,
    slide_hole: str | None,
    small_gauge: float | str,
    gas: Gas,
    gas_line: GasLine,
    shop: Shop,
    jet: Jet,
    blower: Blower,
    resistance: Resistance,
    tries: Tries,
    lighting: Lighting,
    gauges: Gauges,
    lighting_slide: LightingSlide,
    lighting_meter: LightingMeter,
    pilot: Pilot,
) -> LightingWidth:
    """Room is asked of every design: of 886 plausible ones that may be lit one in 80 lacks it. A band of the first day
    is asked of a burner that stands alone, for its jet can be proven by its own card: of the others one in 30 lacks it,
    builds known to be good among them, which are lit by their flame. And of a blend from cylinders, for no card of it
    proves a jet: that day is every day."""
    blended = gas.blended and not gas_line.there
    lit = lighting.through_another or lighting
    lacks = lacks_to_light(lighting_slide, gauges, lighting_meter, slide_hole, blended)

    def does(scale: float | str, hole: str | None, with_jet: Jet = jet) -> bool:
        by = replace(tries, jet=with_jet)
        read_by = gauging.gauges(low_fire, sizes, scale, gas_line, with_jet, lit)
        slide = sliding.lighting_slide(sizes, lit_by, hole, gas_line, read_by, blower, resistance, lit, by)
        meter = metering.lighting_meter(sizes, line_pressure, gas, gas_line, shop, slide, pilot)
        waits = lit_by == "guard" or slide.stays or slide.fails[0] == "back"
        return slide.rate_W is not None and waits and not lacks_to_light(slide, read_by, meter, hole, blended)

    scale_Pa, hole = None, None
    if lacks:
        scales = making.scales_Pa(unit=sizes, from_cylinder=not gas_line.there, sloping=gas_line.there)
        others = [one for one in scales if gas_line.there or one < gauges.jet_Pa]
        roomy_Pa = making.GAUGE_ROOM * lighting_slide.asks_Pa
        by_room = sorted(others, key=lambda one: (one < roomy_Pa, abs(one - roomy_Pa)))
        scale_Pa = next((one for one in by_room if does(one, slide_hole)), None)
    if slide_hole and lit.holes_m and (lacks or lit is not lighting):
        least_m, most_m = lit.holes_m
        aimed_m = resistance.mix_pipe.bore_m * sqrt(lit.open_share)
        known = (one for family in FAMILIES[sizes] for one in drills.drills(family))
        fit = (one for one in known if least_m <= one.diameter_m <= most_m)
        nearest = sorted(fit, key=lambda one: (abs(one.diameter_m - aimed_m), one.name))
        hole = next((one for one in nearest if does(small_gauge, one.name)), None)
    return LightingWidth(
        _band_Pa(lighting_slide, lighting_meter),
        _off_Pa(lighting_slide, gauges),
        lacks,
        scale_Pa,
        hole,
        lacks == "blend" and does(small_gauge, slide_hole, replace(jet, coefficient_off=PROVEN_OFF * jet.coefficient)),
    )


def _off_Pa(slide: LightingSlide, gauges: Gauges) -> float:
    """By the gauge, by a jet proven by weight and by the hand at the needle: of pressure twice as much as of gas."""
    drop_Pa = slide.gas_Pa.value - slide.pipe_Pa if slide.gas_Pa and slide.pipe_Pa is not None else 0.0
    return hypot(gauges.off_Pa, 2 * PROVEN_OFF * drop_Pa, NEEDLE_PRESSURE_OFF * drop_Pa)


def _band_Pa(slide: LightingSlide, meter: LightingMeter) -> tuple[float, float] | None:
    if slide.gas_Pa is None or slide.sure_Pa is None or (not slide.any_jet and meter.in_time):
        return None
    return (slide.gas_Pa.low if slide.any_jet else max(slide.gas_Pa.low, slide.sure_Pa)), slide.gas_Pa.high


def lacks_to_light(
    slide: LightingSlide, gauges: Gauges, meter: LightingMeter | None, stands: str | None, blended: bool
) -> str:
    """Before marks of the gauge narrow anything, so that nothing goes by where one happens to lie."""
    if slide.gas_Pa is None:
        return ""
    off_Pa = _off_Pa(slide, gauges)
    if slide.room_Pa < max(2 * off_Pa, gauges.mark_Pa):
        return "scale" if slide.asks_Pa > gauges.lit_by_Pa else "room"
    # A blend's jet is never proven by its card, so its band is all there ever is: as much as they miss both ways.
    if slide.any_jet or (meter and meter.in_time) or slide.sure_room_Pa >= off_Pa * (2 if blended else 1):
        return ""
    return "blend" if blended else "band" if stands else ""
