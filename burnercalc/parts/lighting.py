"""How to light the cold burner: rate, gas, damper and mixture at which a flame neither runs back nor lifts."""

from dataclasses import dataclass
from functools import cache, cached_property, lru_cache
from math import inf

from ..catalogue.sentences import Said, said
from ..constants import INH2O_PA, PSI_PA
from ..errors import InputError
from ..physics import blower as blowers
from ..physics import combustion, pipes
from ..physics.band import Band
from .blower import Blower
from .face import Face
from .firing import Firing
from .gas import Gas
from .holding import port_flame
from .hot_block import HotBlock
from .jet import Jet
from .resistance import Resistance
from .shares import Shares
from .shop import Shop
from .stream import Stream

# All common practice.
RATIOS = (1.0, 1.1, 1.2, 1.3)  # tried after the mixture as set, leanest first; the law of lift ends at 1.36
KEEP_OFF = 1.1  # of either limit, careful ends both
CLOSE = 1.02  # the same while it waits at a lip that glows, where KEEP_OFF leaves nothing,
WAIT_WIDE = 1.04  # and the room that the valve needs there, most over least
WIDE = 1.1  # most over least of the rates between, that leaves room to set a valve in
LEAST_OPEN = 0.05  # open share below which a damper is hard to set
LEAST_REGULATOR_PA = 0.5 * PSI_PA  # below it an LP regulator is hard to hold
LEAST_LINE_PA = 0.5 * INH2O_PA  # the same of gas from a line,
LINE_OVER_MIXTURE = 2.0  # and of it over the pressure in the mix pipe
OFF = 0.03  # of the ratio: how near gas and damper are set
TORCH_RATIOS = (1.2, 1.3)
TORCH = 0.6  # lift over flashback from which a torch held to the face keeps low fire lit,
TORCH_LIFT = 1.5  # unless low fire is more than so many times the lift, or below flashback
HALVINGS = 12  # of the search for the rates that can be set: to 1/4096 of the band


@dataclass(frozen=True)
class Lighting:
    """The setting, all None where there is none. Limits are the careful ends, ports cold or warm, lip not yet glowing.

    `rate_W`: from, the one to light at, and to. `gas_Pa`: gauge, before the jet; `pipe_Pa`: in the mix pipe. `stays`:
    the flame neither runs back into a lip that glows nor lifts, so it may wait there for the walls; `close`: with less
    than a tenth off those two. `way`: how, or why not; a case of the check.
    """

    way: str
    equivalence_ratio: float | None
    rate_W: Band | None
    gas_Pa: float | None
    open_share: float | None
    mixture_m3_s: float | None
    pipe_Pa: float | None
    flashback_W: float | None
    lift_W: float | None
    stays: bool
    close: bool
    advice: Said


def lighting(
    equivalence_ratio: float,
    block_thickness: float,
    mix_pipe: str,
    gas: Gas,
    shop: Shop,
    face: Face,
    firing: Firing,
    stream: Stream,
    shares: Shares,
    hot_block: HotBlock,
    jet: Jet,
    blower: Blower,
    resistance: Resistance,
) -> Lighting:
    def tried(ratio):
        port = (gas, shop, ratio, face.port_diameter_m, block_thickness)
        return Tried(
            ratio, port, hot_block.waiting_port, firing, stream, shares, jet, blower, resistance, gas, shop, mix_pipe
        )

    set_so = tried(equivalence_ratio)
    rest = [tried(ratio) for ratio in RATIOS if ratio != equivalence_ratio]
    lit = _lit([set_so, *rest] if equivalence_ratio <= RATIOS[-1] else rest)
    if lit:
        way = "as_set" if lit is set_so else "rich" if lit.ratio > max(1.0, equivalence_ratio) else "other"
        return _at(lit, way)
    return _no_way(set_so, rest, firing, jet)


def _lit(tries):
    """The first that can be set and may wait, else the first that can be set; None where there is none."""
    first = None
    for one in tries:
        if one.settable_W is not None:
            first = first or one
            if one.waiting_W is not None:
                return one
    return first


def _at(one, way):
    stays = one.waiting_W is not None
    band = one.waiting_W or one.settable_W._replace(value=one.settable_W.high)
    rate = band.value
    close = stays and not KEEP_OFF * one.glowing_W <= band.low <= band.high <= one.lift_W / KEEP_OFF * (1 + 1e-9)
    slots = {
        "rate": rate,
        "least": band.low,
        "most": band.high,
        "gas": one.gas_Pa(rate),
        "open": one.open_share(rate),
        "ratio": one.ratio,
        "pipe": one.pipe_Pa(rate),
    }
    return Lighting(
        way=way,
        equivalence_ratio=one.ratio,
        rate_W=band,
        gas_Pa=slots["gas"],
        open_share=slots["open"],
        mixture_m3_s=one.mixture_m3_s(rate),
        pipe_Pa=slots["pipe"],
        flashback_W=one.flashback_W,
        lift_W=one.lift_W,
        stays=stays,
        close=close,
        advice=said(way + ("_stays" if stays else ""), **slots),
    )


def _no_way(set_so, rest, firing, jet):
    """Why there is no setting, of the richer mixtures, which have the most room; or a torch that makes do."""
    torch = [one for one in rest if one.ratio in TORCH_RATIOS]
    room = next((one for one in (*torch, set_so, *rest) if one.has_room), None)
    if room is not None:
        one, carried = room, jet.drill is not None and room.open_share(room.top_W) is not None
        gas, damper = room.can_set(room.top_W / WIDE)
        way = "not_carried" if not carried else "gas" if damper else "damper" if gas else "gas_and_damper"
    else:
        near = next((one for one in torch if one.held_by_torch(firing.low_W)), None)
        one = near or next((one for one in torch if one.limits), None)
        way = "no_limit" if one is None else "torch" if near else "no_room"
        if way == "no_room" and one.flashback_W == inf:
            way = "too_slow"
    found = one is not None
    at_W = firing.low_W if way == "torch" else one.top_W if found else None
    slots = {
        "low": firing.low_W,
        "flash": one.flashback_W if found else None,
        "lift": one.lift_W if found else None,
        "ratio": one.ratio if found else None,
        "most": one.top_W if found else None,
        "gas": one.gas_Pa(at_W) if found else None,
        "open": one.open_share(at_W) if found else None,
        "pipe": one.pipe_Pa(at_W) if found else None,
    }
    return Lighting(
        way=way,
        equivalence_ratio=None,
        rate_W=None,
        gas_Pa=None,
        open_share=None,
        mixture_m3_s=None,
        pipe_Pa=None,
        flashback_W=slots["flash"],
        lift_W=slots["lift"],
        stays=False,
        close=False,
        advice=said(way, **slots),
    )


# The limits of a port do not hang on what feeds it, so that burners alike in it share them.
@lru_cache(maxsize=2048)
def careful_lift_m_s(gas, shop, ratio, diameter_m, length_m, off):
    """Careful end of the lift of a cold port; None where no limit is found."""
    try:
        return port_flame(gas, shop, ratio, diameter_m, length_m, off=off).careful_lift_velocity_m_s()
    except InputError:
        return None


@lru_cache(maxsize=2048)
def careful_flashback_m_s(gas, shop, ratio, diameter_m, length_m, hot, lip_glows, off):
    """Careful end of flashback; `hot` as in port_flame; None where no limit is found."""
    try:
        return port_flame(gas, shop, ratio, diameter_m, length_m, hot, lip_glows, off).careful_flashback_velocity_m_s()
    except InputError:
        return None


class Tried:
    """One mixture: its limits as firing rates, each worked out when asked for, and what can be set of it."""

    def __init__(self, ratio, port, hot, firing, stream, shares, jet, blower, resistance, gas, shop, mix_pipe, off=OFF):
        self.ratio, self.port, self.hot, self.off = ratio, port, hot, off
        self.firing, self.shares, self.jet, self.blower = firing, shares, jet, blower
        self.resistance, self.gas, self.shop = resistance, gas, shop
        self.pipe_m2 = pipes.pipe(mix_pipe).area_m2
        mixture_m3_s = combustion.mixture_flow_m3_s(gas.composition, ratio, firing.rate_W)
        self.velocity_m_s = stream.velocity_m_s * mixture_m3_s / firing.mixture_m3_s  # at high fire, at this mixture

    def _rate_W(self, velocity_m_s, share):
        return velocity_m_s / (self.velocity_m_s * share) * self.firing.rate_W

    @cached_property
    def lift_W(self):
        """Careful end, of the best-fed port; None where no limit is found."""
        limit_m_s = careful_lift_m_s(*self.port, self.off)
        return None if limit_m_s is None else self._rate_W(limit_m_s, self.shares.largest)

    @cached_property
    def flashback_W(self):
        """Careful end, of the worst-fed port, cold or warm; inf above high fire, None where no limit is found."""
        if not self.shares.least > 0:
            return None
        cold, warm = (careful_flashback_m_s(*self.port, hot, False, self.off) for hot in (None, self.hot))
        if cold is None or warm is None:
            return None
        return self._back_W(max(cold, warm))

    @cached_property
    def glowing_W(self):
        """As flashback_W, of a lip that glows while the walls come to it; inf where none is found."""
        limit_m_s = careful_flashback_m_s(*self.port, self.hot, True, self.off)
        return inf if limit_m_s is None else self._back_W(limit_m_s)

    def _back_W(self, limit_m_s):
        rate_W = self._rate_W(limit_m_s, self.shares.least)
        return rate_W if rate_W < self.firing.rate_W else inf

    @property
    def limits(self):
        return self.lift_W is not None and self.flashback_W is not None

    @property
    def has_room(self):
        return self.limits and self.top_W >= WIDE * KEEP_OFF * self.flashback_W

    def held_by_torch(self, rate_W):
        """Does a torch at the face keep a flame of this rate there, that can be set?"""
        if not self.limits or self.lift_W < TORCH * self.flashback_W:
            return False
        return self.flashback_W <= rate_W <= TORCH_LIFT * self.lift_W and all(self.can_set(rate_W))

    def mixture_m3_s(self, rate_W):
        """As it is in the shop."""
        return combustion.mixture_flow_m3_s(self.gas.composition, self.ratio, rate_W) * self.shop.swell

    @cached_property
    def pipe_Pa(self):
        """In the mix pipe over the rate; a rate is asked for several times."""
        return cache(lambda rate_W: self.resistance.pressure_Pa(self.mixture_m3_s(rate_W)))

    def open_share(self, rate_W):
        """Of the damper; None where the blower is too weak."""
        air_m3_s = combustion.air_flow_m3_s(self.gas.composition, self.ratio, rate_W) * self.shop.swell
        blower = self.blower
        damper = blowers.damper(blower.curve, air_m3_s, self.pipe_Pa(rate_W), self.pipe_m2, blower.air_density_kg_m3)
        return None if damper is None else damper.open_fraction

    def gas_Pa(self, rate_W):
        """Gauge, before the jet; None without a jet."""
        if self.jet.drill is None:
            return None
        return self.jet.needed_Pa(rate_W, self.jet.drill.diameter_m, self.shop.pressure_Pa + self.pipe_Pa(rate_W))

    def can_set(self, rate_W):
        """(gas, damper): whether each is far enough from shut."""
        pipe_Pa, open_share = self.pipe_Pa(rate_W), self.open_share(rate_W)
        least_Pa = LEAST_REGULATOR_PA if self.gas.liquid else max(LINE_OVER_MIXTURE * pipe_Pa, LEAST_LINE_PA)
        drill, down_Pa = self.jet.drill, self.shop.pressure_Pa + pipe_Pa
        gas = drill is not None and self.jet.rate_through_W(drill.diameter_m, least_Pa, down_Pa) <= rate_W
        return gas, open_share is not None and open_share >= LEAST_OPEN

    @property
    def top_W(self):
        return min(self.lift_W / KEEP_OFF, self.firing.rate_W)

    @cached_property
    def waiting_W(self):
        """Of the rates that can be set, those at which it may wait while the lip glows; None where there are none."""
        for off in (KEEP_OFF, CLOSE):
            low = max(off * self.glowing_W, self.settable_W.low)
            high = min(self.lift_W / off, self.firing.rate_W)
            if high >= WAIT_WIDE * low and all(self.can_set(high)):
                return Band(low, (low + high) / 2, high)
        return None

    @cached_property
    def settable_W(self):
        """Rates that keep off both limits and can be set, with their middle; None where there are none."""
        if self.lift_W is None or not all(self.can_set(self.top_W / WIDE)) or not self.has_room:
            return None
        low, high = (self._settable_to(end_W) for end_W in (KEEP_OFF * self.flashback_W, self.top_W))
        return Band(low, (low + high) / 2, high)

    def _settable_to(self, end_W):
        """The rate nearest to an end of the band that can be set: too little to set below, the blower's most above."""
        sets, fails = self.top_W / WIDE, end_W
        if all(self.can_set(fails)):
            return fails
        for _ in range(HALVINGS):
            middle = (sets + fails) / 2
            sets, fails = (middle, fails) if all(self.can_set(middle)) else (sets, middle)
        return sets
