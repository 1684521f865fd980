"""The burner hot, as it was set cold: its ports take more pressure, so less air comes and the mixture goes rich."""

from dataclasses import dataclass, replace

from ..physics import losses, port_drop
from ..physics.band import Band
from ..physics.block_fin import HotPort
from ..physics.blower import Parabola, Points
from ..physics.port_stream import StreamProperties, stream_exit_temp_K
from ..physics.root import rising_root
from .blower import Blower
from .gas import Gas
from .hand import MIXTURE_SLIP
from .hot_block import HotBlock
from .jet import Jet
from .mixture import Mixture
from .passage import MOST_ROUGHNESS, SHORTEST_TUBE, Passage
from .resistance import Resistance
from .shop import Shop
from .stream import Stream, properties


@dataclass(frozen=True)
class HotRun:
    """`more_high`, `more_low`: pressure over hot ports for the same mixture, over that of cold ones, less 1.

    `total_Pa`: at the start of the mix pipe for high fire; `margin`: what the blower has over it, less 1.
    `mixture_high`, `mixture_low`: equivalence ratio that one set cold comes to, gas and damper left alone, as near as a
    hand sets it. None where the blower does not carry high fire: then nothing is set that could drift.
    `drift`: the richer of the two over the one set, less 1.
    """

    port_Pa: float
    more_high: float
    more_low: float
    total_Pa: float
    margin: float
    mixture_high: Band | None
    mixture_low: Band | None
    drift: float | None

    @property
    def times(self) -> float:
        """Pressure of the blower over what the hot burner needs."""
        return 1 + self.margin

    @property
    def leanest(self) -> float | None:
        """Equivalence ratio that a hot burner comes to where gas of little pressure falls off more than the air."""
        return min((one.value for one in (self.mixture_high, self.mixture_low) if one), default=None)

    @property
    def richest(self) -> float | None:
        """Equivalence ratio that a hot burner may come to, a slip of the hand on top; None without one."""
        return max((one.high for one in (self.mixture_high, self.mixture_low) if one), default=None)


def hot_run(
    hot_block: HotBlock,
    passage: Passage,
    resistance: Resistance,
    blower: Blower,
    jet: Jet,
    gas: Gas,
    mixture: Mixture,
    shop: Shop,
    stream: Stream,
    low_fire: float,
) -> HotRun:
    warm = properties(gas.composition, mixture.equivalence_ratio, shop.pressure_Pa)
    ports = _Ports(passage, hot_block.port, warm, shop.temp_K)
    high = stream.mixture_m3_s

    def needed_Pa(mixture_m3_s):
        added = ports.hot_Pa(mixture_m3_s) - passage.ports_at_Pa(mixture_m3_s)
        return resistance.pressure_Pa(mixture_m3_s) + resistance.uneven * added

    def more(mixture_m3_s):
        return ports.hot_Pa(mixture_m3_s) / passage.ports_at_Pa(mixture_m3_s) - 1

    def mixture_at(air_m3_s, gas_gauge_Pa):
        """Equivalence ratio of a setting for this much air, hot."""
        if not blower.carries:
            return None
        hot_m3_s = _hot_air_m3_s(blower, air_m3_s, needed_Pa)
        if hot_m3_s is None:
            return None
        gas_ratio = _gas_ratio(
            jet,
            gas_gauge_Pa,
            *(
                shop.pressure_Pa + at
                for at in (blower.needed_Pa(air_m3_s), needed_Pa(hot_m3_s * blower.mixture_over_air))
            ),
        )
        return mixture.equivalence_ratio * gas_ratio * air_m3_s / hot_m3_s

    at_high, at_low = mixture_at(blower.high_m3_s, jet.high_Pa), mixture_at(blower.low_m3_s, jet.low_Pa)
    richest = max((one for one in (at_high, at_low) if one is not None), default=None)
    total = needed_Pa(high)
    return HotRun(
        port_Pa=ports.hot_Pa(high),
        more_high=more(high),
        more_low=more(high * low_fire),
        total_Pa=total,
        margin=(1 + blower.margin) * blower.high_Pa / total - 1,
        mixture_high=_as_hands_set(at_high),
        mixture_low=_as_hands_set(at_low),
        drift=None if richest is None else richest / mixture.equivalence_ratio - 1,
    )


def _as_hands_set(ratio):
    return None if ratio is None else Band(ratio - MIXTURE_SLIP, ratio, ratio + MIXTURE_SLIP)


@dataclass(frozen=True)
class _Ports:
    passage: Passage
    port: HotPort | float
    warm: StreamProperties
    cold_K: float

    def hot_Pa(self, mixture_m3_s):
        """Over the ports of the hot block, mixture as it is in the shop."""
        way = self.passage
        velocity = mixture_m3_s / way.port_area_m2
        if way.port_length_m / way.port_diameter_m < SHORTEST_TUBE:
            return way.ports_at_Pa(mixture_m3_s)
        if isinstance(self.port, HotPort):
            enters, leaves = self.port.enter_K(velocity), self.port.exit_K(velocity)
        else:
            enters = self.cold_K
            leaves = stream_exit_temp_K(
                velocity, way.port_diameter_m, way.port_length_m, self.warm, self.cold_K, self.port
            )
        return port_drop.hot_port_drop_Pa(
            velocity,
            way.port_diameter_m,
            way.port_length_m,
            self.warm,
            self.cold_K,
            enters,
            leaves,
            roughness_m=min(losses.ROUGHNESS_CAST_M, MOST_ROUGHNESS * way.port_diameter_m),
        )


def _hot_air_m3_s(blower, air_m3_s, needed_Pa):
    """Air through the damper as it was set cold for `air_m3_s`, wide open where the blower does not carry that."""
    curve: Parabola | Points = blower.curve
    density = blower.air_density_kg_m3
    damper = max((curve.pressure_Pa(air_m3_s, density) - blower.needed_Pa(air_m3_s)) / air_m3_s**2, 0.0)

    def over_blower(flow):
        has = curve.pressure_Pa(min(flow, air_m3_s), density)
        return (needed_Pa(flow * blower.mixture_over_air) + damper * flow**2) / max(has, 1e-9)

    return rising_root(over_blower, 1.0, 0.9 * air_m3_s)


def _gas_ratio(jet, gauge_Pa, cold_Pa, hot_Pa):
    """Gas through the jet against a hot burner over that against a cold one; 1 without a jet."""
    if jet.drill is None:
        return 1.0
    cold, hot = (
        replace(jet, down_Pa=down).rate_through_W(jet.drill.diameter_m, gauge_Pa) for down in (cold_Pa, hot_Pa)
    )
    return hot / cold if cold > 0 else 1.0
