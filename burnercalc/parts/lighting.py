"""How the cold burner is lit: what flame and valves leave, unless it must not be lit for another reason."""

from dataclasses import dataclass, fields, replace
from math import sqrt

from ..catalogue.sentences import said
from ..constants import FOOT_M, MILE_HOUR_M_S
from ..physics import combustion, drills, ventilation
from ..physics.band import Band
from .back_pressure import BackPressure
from .blend import Blend
from .blower import Blower
from .burnt_gas import BurntGas
from .fired_heat_up import FiredHeatUp
from .firing import Firing
from .flame import hottest_flue
from .gas import Gas
from .gas_line import GasLine
from .hand import MIXTURE_SLIP
from .holding import Holding
from .jet import LINE_SHORT, REGULATOR_MOST_PA, TURN, Jet
from .lighting_try import LightingTry
from .pilot import Pilot
from .resistance import Resistance
from .shop import Shop
from .turning import Turning

HAND_HOLDS_S = 300.0  # a torch in the hand; common practice
STEADY_S = 600.0  # at LIGHT at most where no walls come to a glow: every port seen, then on; common practice
STAND_HOLDS_S = 2 * 3600.0  # somebody beside one on a stand, at a rich flame; common practice
# Through a wide door and another across: 0.3 x area x wind, aslant (memory); 50 ft2 and 2 mph, common practice.
DOORS_M3_S = 0.3 * 50 * FOOT_M**2 * 2 * MILE_HOUR_M_S
HOOD_M3_S, MOST_AIR_M3_S = 4 * DOORS_M3_S, 10 * DOORS_M3_S  # what large hoods draw, and what none does; common practice
HOLE_TIMES = 0.75, 1.33  # of the area that lighting asks for, that a hole which is there may have; common practice
SHIFT_FRACTION, CEILING_FRACTION = (
    1e-6 * next(row["limit_ppm"] for row in ventilation.co_limits() if row["name"] == name)
    for name in ("NIOSH REL", "NIOSH ceiling")
)
WAITS = ("dim", "long", "long_stand", "cool")  # ways that the wait for the walls closes


@dataclass(frozen=True)
class Lighting(LightingTry):
    """As LightingTry, None where it must not be lit. `way` is then, if none of LightingTry: closed (no way out for
    the burnt gas), no_flame (the mixture of low and high fire, or one that a hand slips to, does not burn), hole
    (the slide's is too small or too large to light through, or passes more than low fire takes), pressure (one asks
    for more of it than regulator or line gives), torch_weak (burnt gas lifts it off even behind a torch), no_way
    (no order of the valves leads to low or high fire), air (no shop and no hood bring what its carbon monoxide
    needs, the mixture slipped), or one of WAITS: the walls never glow at this rate and no guard shuts the gas, or
    hand or stand holds the torch and they glow too late, or the chamber is worked too cool to glow.
    `holes_m`: of a slide's hole that is there, from and to which it may be. `through_another`: where it is not, how it
    is lit through one that is."""

    holes_m: tuple[float, float] | None = None
    through_another: "Lighting | None" = None


def lighting(
    burner_count: int,
    lit_by: str,
    slide_hole: str | None,
    equivalence_ratio: float,
    chamber_back_pressure: float,
    gas: Gas,
    blend: Blend,
    gas_line: GasLine,
    shop: Shop,
    firing: Firing,
    pilot: Pilot,
    holding: Holding,
    jet: Jet,
    lighting_try: LightingTry,
    back_pressure: BackPressure,
    blower: Blower,
    resistance: Resistance,
    burnt_gas: BurntGas,
    turning: Turning,
    fired_heat_up: FiredHeatUp,
) -> Lighting:
    found = Lighting(**{field.name: getattr(lighting_try, field.name) for field in fields(lighting_try)})
    if back_pressure.no_way_out(chamber_back_pressure):
        return _not_lit(found, said("closed"))
    if found.waits_W is None:
        return found
    leanest, richest = blend.span(equivalence_ratio)
    if not (holding.lean + MIXTURE_SLIP <= leanest and richest <= holding.rich - MIXTURE_SLIP):
        return _not_lit(found, said("no_flame", ratio=equivalence_ratio, lean=holding.lean, rich=holding.rich))
    needed_Pa, most_Pa = _pressures_Pa(found, gas_line, firing, jet)
    if needed_Pa > most_Pa:
        return _not_lit(found, said("pressure", gas=needed_Pa, gas_given=most_Pa))
    if burnt_gas.keeps == "":
        return _not_lit(found, said("torch_weak", rate=found.waits_W, torch=burnt_gas.torch_W))
    if not found.glows and lit_by != "guard":
        return _not_lit(found, said("cool"))
    if not turning.goes_on:
        return _not_lit(found, said("no_way"))
    flue = hottest_flue(gas, shop, found.waits_ratio + MIXTURE_SLIP)
    # The wait takes long to work out: only where it would be too much over a whole shift.
    if flue and fresh_m3_s(gas, shop, burner_count, found, pilot, flue, SHIFT_FRACTION) > MOST_AIR_M3_S:
        limit = waits(found, fired_heat_up)[1]
        fresh = fresh_m3_s(gas, shop, burner_count, found, pilot, flue, limit)
        if fresh > MOST_AIR_M3_S:
            return _not_lit(found, said("air", fresh=fresh, co=flue.co_dry, ppm=limit))
    if found.glows and lit_by != "guard" and not fired_heat_up.turns_up:
        return _not_lit(found, said("dim", rate=found.waits_W))
    if found.glows and lit_by != "guard":
        wait = fired_heat_up.waits_s
        wait_s = wait.high if isinstance(wait, tuple) else wait
        if wait_s > (HAND_HOLDS_S if lit_by == "hand" else STAND_HOLDS_S):
            return _not_lit(found, said("long" if lit_by == "hand" else "long_stand", wait=wait_s, arm=HAND_HOLDS_S))
    if slide_hole and found.open_share is not None:
        least, most = (times * found.open_share for times in HOLE_TIMES)
        most = max(least, min(most, blower.open_low or most))
        least_m, most_m = (resistance.mix_pipe.bore_m * sqrt(one) for one in (least, most))
        found = replace(found, holes_m=(least_m, most_m))
        if not least_m <= drills.drill_named(slide_hole).diameter_m <= most_m:
            not_lit = _not_lit(found, said("hole", hole_least=least_m, hole_most=most_m))
            return replace(not_lit, through_another=found)
    return found


def waits(found: LightingTry, fired_heat_up: FiredHeatUp) -> tuple[Band | None, float]:
    """Until the walls glow, None where they never do; and the share of carbon monoxide that nobody may breathe for so
    long."""
    wait = fired_heat_up.waits_s if found.glows else None
    wait_s = wait if isinstance(wait, tuple) or wait is None else Band(wait, wait, wait)
    breathed_s = wait_s.high if wait_s else ventilation.SHIFT_S if found.glows else STEADY_S
    return wait_s, ventilation.co_limit_for(breathed_s, SHIFT_FRACTION, CEILING_FRACTION)


def fresh_m3_s(
    gas: Gas,
    shop: Shop,
    burner_count: int,
    found: LightingTry,
    pilot: Pilot,
    flue: combustion.FlueGas,
    limit: float,
) -> float:
    """Air of the shop, as a fan there moves it, that the room needs if all this flue gas stays there. A pilot in it
    finds no more oxygen than the rest, so its gas counts as that."""
    burns_W = found.waits_W * burner_count + pilot.all_W
    gas_m3_s = combustion.gas_flow_m3_s(gas.composition, burns_W) * shop.swell
    return ventilation.co_dilution_flow_m3_s(gas_m3_s * flue.dry_mol, flue.co_dry, limit)


def _pressures_Pa(found, gas_line, firing, jet):
    """The most that lighting, low or high fire asks for before the jet, and the most that there is: what a regulator
    is made for, or the line. High fire of a line is asked for only where it comes out too short."""
    asked = [jet.low_Pa]
    if found.gas_Pa is not None:
        asked.append(found.gas_Pa.value)
    if not gas_line.there or jet.rate_W < LINE_SHORT * firing.rate_W:
        asked.append(jet.high_Pa)
    return max(asked), jet.gauge_Pa if gas_line.there else max(REGULATOR_MOST_PA, TURN * jet.gauge_Pa)


def _not_lit(found, why):
    none = dict.fromkeys(
        ("equivalence_ratio", "rate_W", "gas_Pa", "open_share", "mixture_m3_s", "waits_W", "waits_ratio")
    )
    return replace(found, way=why.case, stays=False, close=False, advice=why, **none)
