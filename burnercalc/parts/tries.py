"""A mixture as this burner would be lit with it: the limits of its flame as firing rates, and what can be set of it."""

from dataclasses import dataclass, replace
from functools import cache, cached_property, lru_cache
from math import inf

from ..constants import INH2O_PA, PSI_PA
from ..errors import InputError
from ..making import slide
from ..physics import blower as blowers
from ..physics import combustion, fuels, gas_jet, pipes
from ..physics.band import Band
from .blend import Blend
from .blower import Blower
from .face import Face
from .firing import Firing
from .gas import Gas
from .gas_line import GasLine
from .hand import MIXTURE_SLIP
from .holding import port_flame
from .hot_block import HotBlock
from .jet import Jet
from .resistance import Resistance
from .shares import Shares
from .shop import Shop
from .stream import Stream

# All common practice.
KEEP_OFF = 1.1  # of either limit, careful ends both
WELL_OFF = 1.05  # the same while it waits at a lip that glows, where KEEP_OFF leaves nothing: enough to go no richer,
CLOSE = 1.02  # and the least that is taken at all,
WAIT_WIDE = 1.04  # and the room that the valve needs there, most over least
WIDE = 1.1  # most over least of the rates between, that leaves room to set a valve in
LEAST_OPEN = 0.05  # open share below which a damper is hard to set,
LEAST_HOLE = 0.04  # and a hole in its slide leaks by more than a fifth past it
LEAST_REGULATOR_PA = 0.5 * PSI_PA  # below it an LP regulator, which stands at high fire's, is hard to hold
LEAST_NEEDLE_PA = 0.2 * PSI_PA  # below it gas of a cylinder is hard to set by the needle valve behind it and a gauge
EASY_LINE_PA = 0.3 * INH2O_PA  # the same of gas from a line, by a sloping gauge,
LEAST_LINE_PA = 0.2 * INH2O_PA  # with more care: ten marks of it, and 5 % of the gas for one,
LINE_OVER_MIXTURE = 2.0  # and of it over the pressure in the mix pipe
TORCH = 0.6  # lift over flashback from which a torch held to the face keeps low fire lit,
TORCH_LIFT = 1.5  # unless low fire is more than so many times the lift, or below flashback
# Flames side by side hold so many times what one alone does, set-back ports and a warm face more. Nobody has measured
# it, so less than the first is taken as sure, more than the second as out of reach.
SIDE_BY_SIDE = 2.0, 10.0
HALVINGS = 12  # of the search for the rates that can be set: to 1/4096 of the band


@dataclass(frozen=True)
class Tries:
    """What any mixture is tried with. Limits of a blend are those of its mean, first and last gas that are nearest, as
    rates and mixtures of the mean, jet and valves left where they are."""

    block_thickness: float
    mix_pipe: str
    gas: Gas
    blend: Blend
    gas_line: GasLine
    shop: Shop
    face: Face
    firing: Firing
    stream: Stream
    shares: Shares
    hot_block: HotBlock
    jet: Jet
    blower: Blower
    resistance: Resistance

    def at(self, ratio, off=MIXTURE_SLIP, fine=False):
        """`off`: how near the ratio is set; `fine`: a line's gas set with more care than most take."""
        return self._at(ratio, off, fine)

    @cached_property
    def _at(self):
        """A mixture is asked for several times, and knows what it has worked out."""
        return cache(self._tried)

    @cached_property
    def of_blend(self):
        """(gas, the same burner with it) of a blend's first and last gas; the block's own heat hardly hangs on it."""
        return tuple((one, self._with(one.gas)) for one in self.blend.ends)

    def _with(self, gas):
        jet = replace(
            self.jet,
            molar_mass_kg_mol=fuels.molar_mass_kg_mol(gas.composition),
            heat_capacity_ratio=gas_jet.heat_capacity_ratio(gas.composition),
            gross_J_kg=gas.gross_J_kg,
        )
        return replace(self, gas=gas, jet=jet, blend=Blend(self.blend.left_share))

    def _tried(self, ratio, off, fine):
        port = (self.gas, self.shop, ratio, self.face.port_diameter_m, self.block_thickness)
        ends = tuple((there.at(ratio * one.ratio_times, off), one.rate_times) for one, there in self.of_blend)
        return Tried(
            ratio,
            port,
            ends,
            self.blend.passes_mean,
            self.hot_block.waiting_port,
            self.face.port_count,
            self.firing,
            self.stream,
            self.shares,
            self.jet,
            self.blower,
            self.resistance,
            self.gas,
            self.gas_line,
            self.shop,
            self.mix_pipe,
            off,
            fine,
        )


def tries(
    block_thickness: float,
    mix_pipe: str,
    gas: Gas,
    blend: Blend,
    gas_line: GasLine,
    shop: Shop,
    face: Face,
    firing: Firing,
    stream: Stream,
    shares: Shares,
    hot_block: HotBlock,
    jet: Jet,
    blower: Blower,
    resistance: Resistance,
) -> Tries:
    return Tries(
        block_thickness,
        mix_pipe,
        gas,
        blend,
        gas_line,
        shop,
        face,
        firing,
        stream,
        shares,
        hot_block,
        jet,
        blower,
        resistance,
    )


def least_gas_Pa(gas_line: GasLine, pipe_Pa: float, line_Pa: float = EASY_LINE_PA) -> float:
    """Gauge, before the jet and behind the needle valve, below which gas is hard to set, lighting or at low fire."""
    return max(LINE_OVER_MIXTURE * pipe_Pa, line_Pa) if gas_line.there else LEAST_NEEDLE_PA


def drilled(blower: Blower, open_share: float | None) -> bool:
    """Whether it is lit through a hole in the slide, which is open always: low fire must need no less air."""
    return open_share is not None and blower.open_low is not None and open_share <= blower.open_low


# The limits of a port do not hang on what feeds it, so that burners alike in it share them.
@lru_cache(maxsize=2048)
def careful_lift_m_s(gas, shop, ratio, diameter_m, length_m, off):
    """Careful end of the lift of a cold port; None where no limit is found."""
    try:
        return port_flame(gas, shop, ratio, diameter_m, length_m, off=off).careful_lift_velocity_m_s()
    except InputError:
        return None


@lru_cache(maxsize=2048)
def burnt_lift_m_s(gas, shop, ratio, diameter_m, length_m, off):
    """Lift of a cold port in burnt gas, a Band; None where no limit is found."""
    try:
        return port_flame(gas, shop, ratio, diameter_m, length_m, off=off, burnt=True).lift_velocity_m_s()
    except InputError:
        return None


@lru_cache(maxsize=2048)
def careful_flashback_m_s(gas, shop, ratio, diameter_m, length_m, hot, lip_glows, off):
    """Careful end of flashback; `hot` as in port_flame; None where no limit is found."""
    try:
        return port_flame(gas, shop, ratio, diameter_m, length_m, hot, lip_glows, off).careful_flashback_velocity_m_s()
    except InputError:
        return None


def _least_band(bands):
    return Band(*map(min, *bands))


class Tried:
    """One mixture: its limits as firing rates, each worked out when asked for, and what can be set of it."""

    def __init__(
        self,
        ratio,
        port,
        ends,
        mean_too,
        hot,
        ports,
        firing,
        stream,
        shares,
        jet,
        blower,
        resistance,
        gas,
        gas_line,
        shop,
        mix_pipe,
        off,
        fine,
    ):
        # First and last gas of a blend, each with its heat over that of the mean; whether that is drawn too.
        self.ends, self.mean_too = ends, mean_too
        self.ratio, self.port, self.hot, self.ports, self.off, self.fine = ratio, port, hot, ports, off, fine
        self.firing, self.shares, self.jet, self.blower = firing, shares, jet, blower
        self.resistance, self.gas, self.gas_line, self.shop = resistance, gas, gas_line, shop
        self.pipe_m2 = pipes.pipe(mix_pipe).area_m2
        self._pipe_Pa = {}
        mixture_m3_s = combustion.mixture_flow_m3_s(gas.composition, ratio, firing.rate_W)
        self.velocity_m_s = stream.velocity_m_s * mixture_m3_s / firing.mixture_m3_s  # at high fire, at this mixture

    def _rate_W(self, velocity_m_s, share):
        return velocity_m_s / (self.velocity_m_s * share) * self.firing.rate_W

    @cached_property
    def lift_W(self):
        """Careful end, of the best-fed port; None where no limit is found."""
        limit_m_s = careful_lift_m_s(*self.port, self.off)
        own = None if limit_m_s is None else self._rate_W(limit_m_s, self.shares.largest)
        return self._of_blend(min, "lift_W", own)

    def _of_blend(self, worst, limit, own):
        """A limit with each gas of a blend, as a rate of its mean: the worst; None where one of them has none."""
        if not self.ends:
            return own
        found = [own] if self.mean_too else []
        for one, times in self.ends:
            there = getattr(one, limit)
            found.append(Band(*(end / times for end in there)) if isinstance(there, Band) else there and there / times)
        return None if None in found else worst(found)

    @cached_property
    def burnt_lift_W(self):
        """As lift_W, in a chamber full of burnt gas, with its band."""
        limit_m_s = burnt_lift_m_s(*self.port, self.off)
        own = limit_m_s and Band(*(self._rate_W(one, self.shares.largest) for one in limit_m_s))
        return self._of_blend(_least_band, "burnt_lift_W", own)

    @cached_property
    def together_W(self):
        """Careful end of the lift of ports side by side in burnt gas; None where no limit is found."""
        return self.burnt_lift_W and self.burnt_lift_W.low * (SIDE_BY_SIDE[0] if self.ports > 1 else 1.0)

    @property
    def torch_W(self):
        """The same with a torch or pilot in front."""
        return self.together_W and TORCH_LIFT * self.together_W

    @property
    def torch_most_W(self):
        """The most that anybody gives ports side by side credit for, with a torch in front."""
        most = SIDE_BY_SIDE[1] if self.ports > 1 else 1.0
        return self.burnt_lift_W and TORCH_LIFT * most * self.burnt_lift_W.high

    @cached_property
    def flashback_W(self):
        """Careful end, of the worst-fed port, cold or warm; inf above high fire, None where no limit is found."""
        if not self.shares.least > 0:
            return None
        cold, warm = (careful_flashback_m_s(*self.port, hot, False, self.off) for hot in (None, self.hot))
        if cold is None or warm is None:
            return None
        return self._of_blend(max, "flashback_W", self._back_W(max(cold, warm)))

    @cached_property
    def glowing_W(self):
        """As flashback_W, of a lip that glows while the walls come to it; inf where none is found."""
        limit_m_s = careful_flashback_m_s(*self.port, self.hot, True, self.off)
        return self._of_blend(max, "glowing_W", inf if limit_m_s is None else self._back_W(limit_m_s))

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

    def pipe_Pa(self, rate_W):
        """In the mix pipe; a rate is asked for several times."""
        if rate_W not in self._pipe_Pa:
            self._pipe_Pa[rate_W] = self.resistance.pressure_Pa(self.mixture_m3_s(rate_W))
        return self._pipe_Pa[rate_W]

    def tap_Pa(self, rate_W):
        """What the mix pipe's tap shows."""
        return self.resistance.tap_Pa(self.mixture_m3_s(rate_W))

    def open_share(self, rate_W):
        """Of the damper; None where the blower is too weak."""
        air_m3_s = combustion.air_flow_m3_s(self.gas.composition, self.ratio, rate_W) * self.shop.swell
        blower = self.blower
        damper = blowers.damper(blower.curve, air_m3_s, self.pipe_Pa(rate_W), self.pipe_m2, blower.air_density_kg_m3)
        return None if damper is None else damper.open_fraction

    def gap_m(self, rate_W, hole_m):
        """Of the damper's slide, beside the hole in it; None where the blower is too weak."""
        share = self.open_share(rate_W)
        return None if share is None else slide.gap_m(self.resistance.mix_pipe.bore_m, share, hole_m)

    def gas_Pa(self, rate_W):
        """Gauge, before the jet; None without a jet."""
        if self.jet.drill is None:
            return None
        return self.jet.needed_Pa(rate_W, self.jet.drill.diameter_m, self.shop.pressure_Pa + self.pipe_Pa(rate_W))

    def least_gas_Pa(self, rate_W):
        return least_gas_Pa(self.gas_line, self.pipe_Pa(rate_W), LEAST_LINE_PA if self.fine else EASY_LINE_PA)

    def can_set(self, rate_W):
        """(gas, damper): whether each is far enough from shut."""
        pipe_Pa, open_share, least_Pa = self.pipe_Pa(rate_W), self.open_share(rate_W), self.least_gas_Pa(rate_W)
        drill, down_Pa = self.jet.drill, self.shop.pressure_Pa + pipe_Pa
        gas = drill is not None and self.jet.rate_through_W(drill.diameter_m, least_Pa, down_Pa) <= rate_W
        return gas, open_share is not None and open_share >= self.least_open(open_share)

    def least_open(self, open_share):
        """Of the damper: less where its slide has a hole drilled, as it has where low fire needs no less air."""
        return LEAST_HOLE if drilled(self.blower, open_share) else LEAST_OPEN

    @property
    def top_W(self):
        return min(self.lift_W / KEEP_OFF, self.firing.rate_W)

    @property
    def waiting_W(self):
        """Of the rates that can be set, those at which it may wait while the lip glows; None where there are none."""
        return self._waiting[0]

    @property
    def waiting_off(self):
        """How far off both limits it waits: KEEP_OFF, WELL_OFF, CLOSE; 0 where it may not."""
        return self._waiting[1]

    @cached_property
    def _waiting(self):
        for off in (KEEP_OFF, WELL_OFF, CLOSE):
            if not self.limits or self.lift_W / off < WAIT_WIDE * off * self.glowing_W or self.settable_W is None:
                continue
            low = max(off * self.glowing_W, self.settable_W.low)
            high = min(self.lift_W / off, self.firing.rate_W)
            if high >= WAIT_WIDE * low and all(self.can_set(high)):
                return Band(low, (low + high) / 2, high), off
        return None, 0.0

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
