"""The figures of the lighting card: how long to purge, to try, to wait, to let the blower run on, and what it risks."""

from dataclasses import dataclass
from math import ceil, floor

from ..constants import INH2O_PA
from ..making.train import TIMERS_S
from ..physics import purge
from .blower import Blower
from .chamber import Chamber
from .firing import Firing
from .lighting import Lighting
from .lighting_slide import LightingSlide
from .plenum import Plenum
from .resistance import Resistance
from .shop import Shop
from .soaking import LONGER_S, Soaking
from .stream import Stream

WIDE_FROM_S = 120.0  # that the air of high fire takes, from which it is purged with the damper wide open,
WIDER = 1.1  # air of the damper wide open over that of high fire, that is worth it; both common practice
WIDE_SURE = 0.9  # of that air that is counted on: no tap proves it, and curves are off so much; common practice
VOLUMES, LEAST_PURGE_S = 5.0, 60.0  # BS 5990:2006, 15.5; twice its 30 s at full air, as it is done by hand
HISS_S = 1.0  # from the first hiss until it is judged, at least
LONG_S = 5.0  # of a timer, that is long enough wherever the mixture is at the face by then
SEE_S = 0.5  # at the least to see whether it takes, once the mixture is at the face
HAND_S = 1.0  # that a hand, on it already, needs to shut a quarter-turn cock
PILOT_S = 10.0  # that a pilot may take to be seen: EN 746-2; NFPA 86 has 15 s (both memory)
LET_IN = 0.5  # of the chamber, that mixture may fill till it is shut; all four common practice
COOL_K = 333.15  # of the box, 140 degF, when the blower may stop; common practice
BY_HAND_S = 2.0 + HAND_S  # until somebody has seen that air or power fails, and the cock is shut; common practice
SWITCH = 0.5  # of the least pressure it stands at while it burns, at which the air switch lets go; common practice
LEAST_SWITCH_PA = 0.2 * INH2O_PA  # air switches are not set lower; common practice


@dataclass(frozen=True)
class LightingCard:
    """Times in s; purged with the air of high fire, at its mark; `wide`: where that takes long, and the blower gives
    more, with the damper wide open.

    `fills_s`: until one burner has filled the chamber with mixture that burns, at the rate to light at
    (low fire where none is safe), for burners are lit one by one; `arrives_s`: from the first hiss until it is at the
    face; `hiss_s`: until the hand moves if it is not alight, in whole seconds, as they are counted; `trial_s`: from
    RESET until its timer has shut the main valve again, as timers are sold: never before a hand has snapped the firing
    cock, and shut it again; `late`: none sold gives long enough; `let_in`: share of the chamber that what is let in
    fills till that timer has shut it, pipe and box emptied into it; `slips`: so many times high fire fills it while a
    hand shuts the gas. `switch_before`: the air switch stands before the damper, where
    that on the mix pipe, `pipe_switch_Pa`, is too low for one.
    """

    wide: bool
    five_volumes_s: float
    purge_s: float
    arrives_s: float
    hiss_s: float
    trial_s: float
    late: bool
    let_in: float
    fills_s: float
    by_hand_s: float
    slips: float
    run_on_s: float
    standing_m3: float  # in pipe and box of one burner
    pipe_bores: float  # length of the mix pipe over its bore
    switch_Pa: float
    pipe_switch_Pa: float
    switch_before: bool

    @property
    def run_on_min(self) -> int:
        """Whole minutes that the blower runs on, as both cards have it."""
        return ceil(self.run_on_s / 60)

    @property
    def hand_s(self) -> float:
        """That a hand shuts it in, and guard and valve together, for the trial counts on either."""
        return HAND_S


def lighting_card(
    burner_count: int,
    mix_pipe_length: float,
    low_fire: float,
    chamber: Chamber,
    shop: Shop,
    firing: Firing,
    stream: Stream,
    plenum: Plenum,
    resistance: Resistance,
    blower: Blower,
    lighting: Lighting,
    lighting_slide: LightingSlide,
    soaking: Soaking,
) -> LightingCard:
    air_m3_s = firing.air_m3_s * shop.swell * burner_count
    lit = lighting.rate_W is not None
    mixture_m3_s = lighting.mixture_m3_s if lit else stream.mixture_m3_s * low_fire
    fills_s = purge.volumes_time_s(chamber.volume_m3, mixture_m3_s)
    standing_m3 = plenum.length_m * plenum.width_m * plenum.height_m + resistance.mix_pipe.area_m2 * mix_pipe_length
    standing_m3 += resistance.inlets * resistance.inlet.area_m2 * resistance.leg_m
    arrives_s = purge.volumes_time_s(standing_m3, mixture_m3_s)
    trial_s = timer_s(arrives_s, fills_s)
    seen_s = float(max(ceil(arrives_s + SEE_S), HISS_S))
    # Whole seconds; never before it is at the face and can be seen, or it is never lit.
    hiss_s = max(min(trial_s - HAND_S, float(floor(LET_IN * fills_s - HAND_S))), seen_s)
    cleared_m3 = chamber.volume_m3 + standing_m3 * burner_count
    wide_m3_s = WIDE_SURE * blower.flow_m3_s * burner_count
    wide = purge.volumes_time_s(cleared_m3, air_m3_s, VOLUMES) > WIDE_FROM_S and wide_m3_s > WIDER * air_m3_s
    air_m3_s = wide_m3_s if wide else air_m3_s
    high_fills_s = purge.volumes_time_s(chamber.volume_m3, stream.mixture_m3_s * burner_count)
    low_Pa = resistance.tap_Pa(stream.mixture_m3_s * low_fire)
    pipe_switch_Pa = SWITCH * max(min(low_Pa, lighting_slide.tap_Pa or low_Pa) if lit else low_Pa, 0.0)
    before = pipe_switch_Pa < LEAST_SWITCH_PA
    return LightingCard(
        wide=wide,
        five_volumes_s=purge.volumes_time_s(cleared_m3, air_m3_s, VOLUMES),
        purge_s=_up_s(purge.purge_time_s(cleared_m3, air_m3_s, VOLUMES, LEAST_PURGE_S)),
        arrives_s=arrives_s,
        hiss_s=hiss_s,
        trial_s=trial_s,
        late=not in_time(trial_s, arrives_s),
        let_in=trial_s / fills_s,
        fills_s=fills_s,
        by_hand_s=BY_HAND_S,
        slips=BY_HAND_S / high_fills_s,
        run_on_s=soaking.run_on_s or LONGER_S[-1],
        standing_m3=standing_m3,
        pipe_bores=mix_pipe_length / resistance.mix_pipe.bore_m + resistance.leg_m / resistance.inlet.bore_m,
        switch_Pa=SWITCH * _before_damper_Pa(blower) if before else pipe_switch_Pa,
        pipe_switch_Pa=pipe_switch_Pa,
        switch_before=before,
    )


def in_time(trial_s: float, arrives_s: float) -> bool:
    """Whether a timer of that trial waits till the mixture is at the face and has been looked at."""
    return trial_s >= HAND_S + arrives_s + SEE_S


def timer_s(arrives_s: float, fills_s: float) -> float:
    """The timer to buy: the longest of the usual ones that lets in no more than may be, else the shortest that leaves a
    hand its second, the mixture its way to the face, and an eye its look; the longest sold where none does."""
    long_enough = [one for one in TIMERS_S if in_time(one, arrives_s)] or [TIMERS_S[-1]]
    roomy = [one for one in long_enough if one <= min(LET_IN * fills_s, LONG_S)]
    return roomy[-1] if roomy else long_enough[0]


def _up_s(time_s):
    """To the tenth of a minute, from ten minutes on to the minute, as the card tells it: never less than it takes."""
    step_s = 6.0 if time_s <= 600 else 60.0
    return ceil(time_s / step_s - 1e-9) * step_s


def _before_damper_Pa(blower):
    """The least that the blower gives at low and high fire; at its last point where its curve ends sooner."""
    flows_m3_s = (min(flow, blower.curve.last_m3_s) for flow in (blower.low_m3_s, blower.high_m3_s))
    return min(blower.curve.pressure_Pa(flow, blower.air_density_kg_m3) for flow in flows_m3_s)
