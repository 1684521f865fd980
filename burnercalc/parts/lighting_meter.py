"""The gas of a house line to light with, by the meter and a watch: it shows what flows before the lip can glow."""

from dataclasses import dataclass, replace
from math import ceil, floor, hypot

from ..constants import FOOT_M
from ..physics import combustion
from ..physics.band import Band
from .gas import Gas
from .gas_line import GasLine
from .lighting_slide import LightingSlide
from .lighting_try import LIP_GLOWS_S
from .pilot import Pilot
from .shop import Shop

DIALS_M3 = {"in": 0.5 * FOOT_M**3, "mm": 0.01}  # a turn of its finest dial, as houses have them; common practice
BEGUN_S = 30.0  # from its first flame, ports, needle and gauge, till who is at the meter begins; common practice
# What a reading misses: a house meter of its gas, either way (memory), and who stops a watch by its hand at both ends.
METER_OFF, WATCH_OFF_S = 0.02, 0.5
LEAST_S = 40.0  # of whole turns, timed by a watch to a hundredth; common practice


@dataclass(frozen=True)
class LightingMeter:
    """`volume_m3`: so much on the meter, where it hangs at the line's pressure; `passes_s`: in which it passes, from
    the most gas of the window, as it is lit, to the least. All None for gas without a meter and what is not lit.
    `corrected_times`: of that by a meter that corrects for heat by itself, None where it shows the same. `each_Pa`:
    before the jet, for each second that it takes longer or shorter than as it is lit. A pilot's gas is in all of them.
    `any_jet`: it holds whatever its jet is, so the meter may take its time. `pilot_m3`, `pilot_s`: a turn of the finest
    dial, and in which a pilot alone makes it, of all gas by a line; None behind a torch."""

    volume_m3: float | None
    passes_s: Band | None
    corrected_times: float | None = None
    each_Pa: float | None = None
    any_jet: bool = False
    pilot_m3: float | None = None
    pilot_s: float | None = None

    @property
    def watched_s(self) -> tuple[float, float] | None:
        """From and to, inwards."""
        return None if self.passes_s is None else _inwards(self.passes_s.low, self.passes_s.high)

    @property
    def corrected_s(self) -> tuple[float, float] | None:
        """The same by a meter that corrects for heat by itself, where that differs."""
        if self.passes_s is None or self.corrected_times is None:
            return None
        return _inwards(*(self.corrected_times * one for one in (self.passes_s.low, self.passes_s.high)))

    @property
    def shows_times(self) -> tuple[float, ...]:
        """Of the time in which it passes: 1, and that of a meter that corrects for heat where it shows another."""
        return (1.0, self.corrected_times) if self.corrected_times else (1.0,)

    @property
    def in_time(self) -> bool:
        """Whether it is read before the lip may glow."""
        return self.passes_s is not None and self.reads_s <= LIP_GLOWS_S

    @property
    def off(self) -> float:
        """What a reading misses, as a share; 0 where there is none."""
        return hypot(METER_OFF, WATCH_OFF_S / self.passes_s.value) if self.passes_s else 0.0

    @property
    def proves(self) -> bool:
        """Whether it is read in time, and misses less both ways than there is from the most gas to the least."""
        if self.passes_s is None or not self.in_time:
            return False
        return self.passes_s.high - self.passes_s.low >= 2 * self.off * self.passes_s.value

    @property
    def told(self) -> bool:
        """Whether the lighting card has it read."""
        return self.passes_s is not None and (self.any_jet or self.in_time)

    @property
    def reads_s(self) -> float:
        """From its first flame until it is read, at most; 0 where it is not."""
        return BEGUN_S + self.passes_s.high if self.passes_s else 0.0


def _inwards(least_s: float, most_s: float) -> tuple[float, float]:
    """In whole seconds; in halves or tenths where those leave less than three quarters of it."""
    for parts in (1, 2, 10):
        found = ceil(least_s * parts) / parts, floor(most_s * parts) / parts
        if found[1] - found[0] >= 0.75 * (most_s - least_s):
            break
    low, high = (int(one) if one == int(one) else one for one in found)
    return low, high


def lighting_meter(
    sizes: str,
    line_pressure: float,
    gas: Gas,
    gas_line: GasLine,
    shop: Shop,
    lighting_slide: LightingSlide,
    pilot: Pilot,
) -> LightingMeter:
    rate_W = lighting_slide.rate_W
    # As it is in the meter: warm as the shop, under the line's pressure.
    swell = shop.swell * shop.pressure_Pa / (shop.pressure_Pa + line_pressure)
    turn_m3, pilots_m3_s = DIALS_M3[sizes], swell * pilot.gas_m3_s
    alone = (turn_m3, turn_m3 / pilots_m3_s) if gas_line.there and pilots_m3_s else (None, None)
    found = LightingMeter(None, None, shop.warmer if shop.corrects else None, None, False, *alone)
    if not gas_line.metered or rate_W is None:
        return found
    most, lit, least = (
        swell * combustion.gas_flow_m3_s(gas.composition, one) + pilots_m3_s for one in reversed(rate_W)
    )
    volume_m3 = turn_m3 * ceil(LEAST_S * lit / turn_m3)
    passes_s = Band(*(volume_m3 / flow for flow in (most, lit, least)))
    each_Pa = _each_Pa(lighting_slide, passes_s.value * (1 - pilots_m3_s / lit))
    any_jet = lighting_slide.any_jet
    return replace(found, volume_m3=volume_m3, passes_s=passes_s, each_Pa=each_Pa, any_jet=any_jet)


def _each_Pa(slide: LightingSlide, main_s: float) -> float | None:
    """Gas goes with the root of what drops over the jet: a share of the time is twice that of the drop, and more where
    part of the gas does not pass the jet. `main_s`: the time, times the share that does."""
    if slide.gas_Pa is None or slide.pipe_Pa is None:
        return None
    return 2 * (slide.gas_Pa.value - slide.pipe_Pa) / main_s
