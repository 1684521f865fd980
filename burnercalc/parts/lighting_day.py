"""In which air the lighting card's own mark and pressure still hold: the same two, on a colder or a warmer day."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cache
from typing import Any

from ..errors import InputError
from ..physics import combustion
from ..physics.band import Band
from ..physics.flame_holding import PortFlame
from ..physics.mixture import TEMP_MIN_K, mixture_properties
from .face import Face
from .gas import Gas
from .gauges import Gauges
from .holding import port_flame
from .hot_block import HotBlock, waiting_port
from .lighting_slide import GRID, Along, Flame, LightingSlide, where_missed
from .mixture import Mixture
from .shop import shop
from .stream import Stream
from .tries import SIDE_BY_SIDE, TORCH_LIFT, Tries

REACH_K = 10.0  # either way, that a card must hold for, and is looked for: what air moves in some days; common practice
# What ends it: it runs back, or no torch or pilot holds it.
BACK, LOST = "back", "lost"
# The same as set, and where a hand misses; in burnt gas a miss is judged milder.
AS_SET = {"glows": BACK, "dark": BACK, "torch": LOST, "burnt": LOST}
MISSED = {"glows_missed": BACK, "dark_missed": BACK, "torch_missed": LOST}
# How far a rate is inside each of these limits, by its gradient at the wall; below 0 it is beyond.
Margins = dict[str, float]


@dataclass(frozen=True)
class LightingDay:
    """`air_K`: from, as worked out for, and to; None where it is not lit by a mark and a pressure. `cold`, `warm`: what
    ends it, one of the above; "" where it holds as far as it was looked for. `as_set`: whether it holds so far where no
    hand misses."""

    air_K: Band | None
    cold: str
    warm: str
    as_set: bool


def lighting_day(
    altitude: float,
    chamber_temperature: float,
    gas: Gas,
    face: Face,
    mixture: Mixture,
    stream: Stream,
    hot_block: HotBlock,
    gauges: Gauges,
    tries: Tries,
    lighting_slide: LightingSlide,
) -> LightingDay:
    """Gas as the gauge shows it, the slide at its mark: the blower moves the same air by volume, so that cold air is
    more of it, and lean. What a hand misses counts as on the card's own day; what does not hold even then is judged
    elsewhere, and not here again."""
    slide, own_K = lighting_slide, tries.shop.temp_K
    if slide.ratio is None or slide.rate_W is None or slide.gas_Pa is None:
        return LightingDay(None, "", "", True)
    ratio, rate_W, gas_Pa = slide.ratio.value, slide.rate_W.value, slide.gas_Pa.value
    reactants = combustion.reactants_mol(gas.composition, mixture.equivalence_ratio)

    @cache
    def margins(air_K: float) -> Margins:
        swells = air_K / own_K
        air = shop(air_K, altitude)
        there = replace(stream, velocity_m_s=stream.velocity_m_s * swells, mixture_m3_s=stream.mixture_m3_s * swells)
        properties = mixture_properties(reactants, air_K, air.pressure_Pa)
        passes = replace(tries.resistance.passage, high_m3_s=there.mixture_m3_s, mixture=properties)
        waits = waiting_port(hot_block, face, gas, mixture, there, air, chamber_temperature)
        on_that_day = replace(
            tries,
            shop=air,
            stream=there,
            jet=replace(tries.jet, gas_temp_K=air_K),
            resistance=replace(tries.resistance, high_m3_s=there.mixture_m3_s, passage=passes),
            hot_block=replace(hot_block, waiting_port=waits),
        )
        along = Along(Flame(on_that_day), ratio, rate_W / swells)
        return _worst(on_that_day, along, along.ratio_at(gas_Pa, ratio), slide, gauges)

    coldest_K = max(own_K - REACH_K, TEMP_MIN_K)
    (cold_K, cold, cold_set), (warm_K, warm, warm_set) = (
        _end(margins, own_K, far_K - own_K) for far_K in (coldest_K, own_K + REACH_K)
    )
    return LightingDay(Band(cold_K, own_K, warm_K), cold, warm, cold_set and warm_set)


def in_another(slide: LightingSlide, gauges: Gauges, own: Tries, other: Tries) -> Margins:
    """How a card's mark and pressure hold in another burner than it was made for, in its air and at its height, the jet
    proved: pressure is then what passes the card's gas. The blower as it was reckoned, for it is lit by its flame till
    air is proved."""
    proved = replace(other, jet=replace(other.jet, coefficient=own.jet.coefficient, drill=own.jet.drill))
    thinner = other.shop.air_density_kg_m3 / own.shop.air_density_kg_m3
    along = Along(Flame(proved), slide.ratio.value, slide.rate_W.value * thinner)
    return _worst(proved, along, along.ratio_at(slide.gas_Pa.value, slide.ratio.value), slide, gauges)


def _end(margins: Callable[[float], Margins], own_K: float, off_K: float) -> tuple[float, str, bool]:
    """How far it holds, what ends it, and whether it holds all the way as set: straight to where the first limit is
    met, once more from there."""
    found = margins(own_K + off_K)
    if min(found.values()) >= 0:
        return own_K + off_K, "", True
    own = margins(own_K)
    kept = [limit for limit, margin in own.items() if margin >= 0]
    share, why = _first(own, found, kept)
    if why:
        there, at_share = _first(own, margins(own_K + share * off_K), kept)
        share, why = (share * there, at_share) if at_share else (share, why)
    return own_K + share * off_K, (AS_SET | MISSED).get(why, ""), all(found[one] >= 0 for one in kept if one in AS_SET)


def _first(own: Margins, found: Margins, kept: list[str]) -> tuple[float, str]:
    """Share of the way at which the first limit is met, on a straight line; all of it where none is."""
    met = [(own[limit] / (own[limit] - found[limit]), limit) for limit in kept if found[limit] < 0]
    return min(met, default=(1.0, ""))


def _worst(day: Tries, along: Along, ratio: float, slide: LightingSlide, gauges: Gauges) -> Margins:
    """Of all gases of a blend; its shares in that air hardly differ from those in its own."""
    each = [_margins(day, along, ratio, slide, gauges)] if day.blend.passes_mean else []
    for one, there in day.of_blend:
        its_ratio = ratio * one.ratio_times
        its_along = Along(Flame(there), its_ratio, along.rate_W(ratio) * one.rate_times)
        each.append(_margins(there, its_along, its_ratio, slide, gauges))
    return {limit: min(one[limit] for one in each) for limit in each[0]}


def _margins(day: Tries, along: Along, ratio: float, slide: LightingSlide, gauges: Gauges) -> Margins:
    """At the mixture of that day, and where a hand misses. A flame that stays out of a lip that glows does not run back
    into one that does not."""
    set_to = ratio, along.rate_W(ratio)
    lean, by_gas, rich = where_missed(along, ratio, slide.miss, along.gas_off(ratio, gauges.off_Pa))
    hot, together = day.hot_block.waiting_port, SIDE_BY_SIDE[0] if day.face.port_count > 1 else 1.0

    @cache
    def port(one: float, *how: Any) -> PortFlame:
        return port_flame(day.gas, day.shop, one, day.face.port_diameter_m, day.block_thickness, *how)

    def speed_m_s(one: float, rate_W: float, share: float) -> float:
        return day.at(one, 0.0).velocity_m_s * share * rate_W / day.firing.rate_W

    def out(one: float, rate_W: float, *how: Any) -> float:
        return port(one, *how).flashback_margin(speed_m_s(one, rate_W, day.shares.least)).low - 1

    def held(one: float, rate_W: float, times: float, *how: Any) -> float:
        return 1 / port(one, *how).blow_off_margin(speed_m_s(one, rate_W, day.shares.largest) / times).high - 1

    def each(margin: Callable[..., float], *points: tuple[float, float], how: tuple[Any, ...]) -> float:
        return min(_between(margin, *one, *how) for one in points)

    found = {
        "torch": each(held, set_to, how=(TORCH_LIFT,)),
        "torch_missed": each(held, lean, rich, how=(TORCH_LIFT,)),
        "burnt": each(held, set_to, how=(TORCH_LIFT * together, None, True, 0.0, True)),
    }
    if slide.stays:
        glows = (hot, True)
        return found | {"glows": each(out, set_to, how=glows), "glows_missed": each(out, lean, by_gas, how=glows)}
    dark = ((None, False), (hot, False))
    return found | {
        "dark": min(each(out, set_to, how=how) for how in dark),
        "dark_missed": min(each(out, lean, how=how) for how in dark),
    }


def _between(margin: Callable[..., float], ratio: float, *how: Any) -> float:
    """Straight between the mixtures at which limits are worked out; none beyond those that are known."""
    low, share = divmod(GRID * ratio, 1)
    try:
        below, above = (margin(one / GRID, *how) for one in (low, low + 1))
    except InputError:
        return -1.0
    return below + share * (above - below)
