"""The verdicts of the room Air and gas: one function a check, named <key>_check; None where it does not apply."""

from math import inf, sqrt

from ..constants import FOOT_M, INH2O_PA, PSI_PA
from ..parts.baffle_plate import BafflePlate
from ..parts.blend import Blend
from ..parts.blower import Blower
from ..parts.cylinders import Cylinders
from ..parts.firing import Firing
from ..parts.gas import Gas
from ..parts.gas_line import GasLine
from ..parts.hand import MIXTURE_SLIP
from ..parts.hot_run import HotRun
from ..parts.house import House
from ..parts.inlet_jet import InletJet
from ..parts.jet import LINE_SHORT, REGULATOR_MOST_PA, TURN, Jet
from ..parts.mixing import Mixing
from ..parts.passage import Passage
from ..parts.pilot import Pilot
from ..parts.plenum import Plenum
from ..parts.resistance import Resistance
from ..parts.shares import Shares
from ..parts.shop import Shop
from ..parts.stream import Stream
from ..parts.supply import REGULATOR_TAKES_PA, Supply
from ..parts.tries import LEAST_OPEN, LEAST_REGULATOR_PA, least_gas_Pa
from ..physics import drills
from ..physics.mixing import DIAMETERS_NEEDED
from ..physics.plenum import SPREAD, wanted_ratio
from .blowing import MARGIN, MOST_BLOWER_PA, beyond, blower_cures
from .judge import WAITS, Judged, judge, ladder, verdict

# All limits are common practice unless said otherwise; (good, stop) pairs.
FINE_SPREAD = 5e-4  # less is said as less than 0.1 %
KINETIC = (0.10, 0.30)  # the same as kinetic ratios: cos(sqrt(0.3)) = 0.85
IMPINGEMENT = (1.10, 1.40)  # the most that a port under the inlet's jet passes
FINE_JET = 1.01
BAFFLE_SHARE = (0.5, 2.0)  # baffle's pressure over the ports': beyond the second its holes jet
MIXING = (DIAMETERS_NEEDED, 5.0)
HOUSE_PA, LP_LINE_PA = 7 * INH2O_PA, 11 * INH2O_PA  # usual in a house line, and in one of propane
METERS_M3_S = (175 * FOOT_M**3 / 3600, 425 * FOOT_M**3 / 3600)  # of houses, 175 to 425 ft3/h; common practice
HOUSE_MOST_PA = 2 * PSI_PA  # the most in a house line
STEADY = 4.0  # gas pressure over that in the mix pipe, from which air does not move the gas
JET_OF_PIPE = 0.25  # largest jet, of the mix pipe's bore
RATE_SHORT = (0.97, LINE_SHORT)  # rate over the wanted one from a house line
SLIP = 0.02  # richer than as set, of a mixture that is rich already; common practice
LONG = 4.0  # a plenum's length over its width from which a second inlet is worth its pipe; common practice
HALF_DAY_S = 4 * 3600.0  # that a full charge carries at high fire, and
WORKS_S = 3600.0  # after the heat-up at least; less is no firing. Common practice
# What liquid gas of a cylinder has of lighter gas at most. Ethane: by Raoult no more than 208 psig at 100 degF (ASTM
# D1835, memory); still lighter gas leaves with the first that is drawn, common practice.
MOST_ETHANE, MOST_LIGHTER = 0.06, 0.01
COUNT = (("cylinder_count", "raise"), ("cylinder", "choose"))
CHILLED_K = 10.0  # that the liquid of a tank may get colder than the air while it is drawn from; common practice


def _evener(plenum, inlet_position):
    """A second inlet before anything else where one has a long way to feed."""
    first: tuple[tuple[str, str], ...] = ()
    if inlet_position == "end":
        first = (("inlet_position", "choose"),)
    elif len(plenum.inlets_m) == 1 and plenum.length_m > LONG * plenum.width_m:
        first = (("inlets", "raise"),)
    return (
        *first,
        ("body_depth", "raise"),
        ("grip", "lower"),
        ("ports_per_row", "lower"),
        ("port_diameter", "lower"),
    )


def _evenness(shares):
    return "stop" if shares.starved_columns else ladder(shares.spread, good=SPREAD[0], stop=SPREAD[1])


def flow_spread_check(plenum: Plenum, shares: Shares, inlet_position: str) -> Judged:
    word = _evenness(shares)
    if shares.starved_columns:
        case = "starved_one" if shares.starved_columns == 1 else "starved"
    else:
        case = "good_fine" if word == "good" and shares.spread < FINE_SPREAD else word
    return verdict(
        word,
        shares.spread,
        SPREAD[0],
        case=case,
        cures=_evener(plenum, inlet_position),
        spread=shares.spread,
        columns=shares.starved_columns,
        good=SPREAD[0],
        stop=SPREAD[1],
    )


def plenum_ratio_check(plenum: Plenum, shares: Shares, inlet_position: str) -> Judged:
    word, wanted = _evenness(shares), wanted_ratio(SPREAD[0], plenum.streams)
    place = inlet_position if len(plenum.inlets_m) == 1 else "two"
    case = place + ("_fine" if shares.spread < FINE_SPREAD else "")
    return verdict(
        word,
        plenum.to_port_ratio,
        wanted,
        case=(case,) if word == "good" else (case, "wanted"),
        cures=_evener(plenum, inlet_position),
        ratio=plenum.to_port_ratio,
        spread=shares.spread,
        wanted=wanted,
    )


def perry_check(plenum: Plenum, shares: Shares, inlet_position: str) -> Judged:
    most = max(shares.kinetic_ratio, shares.friction_ratio)
    word = ladder(most, good=KINETIC[0], stop=KINETIC[1])
    return verdict(
        word,
        most,
        KINETIC[0],
        case="good" if word == "good" else "bad",
        cures=_evener(plenum, inlet_position),
        kinetic=shares.kinetic_ratio,
        friction=shares.friction_ratio,
    )


def jet_impingement_check(inlet_jet: InletJet, baffle_plate: BafflePlate) -> Judged:
    ratio = inlet_jet.flow_ratio
    word = ladder(ratio, good=IMPINGEMENT[0], stop=IMPINGEMENT[1])
    if word == "good":
        case = "good_fine" if ratio < FINE_JET else "good"
    else:
        case = "bare" if baffle_plate.loss_K is None else "baffled"
    return verdict(word, ratio, IMPINGEMENT[0], case=case, more=ratio - 1, little=IMPINGEMENT[0] - 1)


def baffle_pressure_check(passage: Passage, baffle_plate: BafflePlate) -> Judged | None:
    if baffle_plate.loss_K is None:
        return None
    good, stop = BAFFLE_SHARE
    share = passage.baffle_Pa / passage.port_Pa.low
    word = ladder(share, good=good, stop=stop)
    case = "good" if word == "good" else "bad"
    return verdict(word, share, good, case=case, drop=passage.baffle_Pa, share=share, good=good)


def mixing_length_check(mixing: Mixing) -> Judged:
    good, stop = MIXING
    word = ladder(mixing.diameters, good=good, stop=stop)
    return verdict(
        word,
        mixing.diameters,
        good,
        case="good" if word == "good" else "bad",
        diameters=mixing.diameters,
        good=good,
        missing=(good - mixing.diameters) * mixing.bore_m,
    )


def mix_pipe_velocity_check(mixing: Mixing, low_fire: float) -> Judged:
    """The ports come first, and are judged by the careful end: so a flame along the pipe's wall is a note, and a stop
    only one as quick as the mixture."""
    low, flame, own = mixing.velocity_m_s * low_fire, mixing.flame_m_s, mixing.own_m_s
    return judge(low, good=flame.high, note=own, stop=own, low=low, likely=flame.value, most=flame.high)


def blower_check(blower: Blower, blower_curve: tuple | None) -> Judged:
    """Of one burner and what it finds of the blower, alone or for all."""
    word = ladder(blower.margin, good=MARGIN, stop=-inf if blower.carries else 0.0)
    if blower.high_m3_s > blower.curve.last_m3_s:
        cases, has_Pa = ["ends"], None
    else:
        has_Pa = blower.curve.pressure_Pa(blower.high_m3_s, blower.air_density_kg_m3)
        cases: list[str] = [word]
        cases = ["short"] if word == "caution" and blower.margin < 0 else cases
    if blower.burners > 1:
        cases = ["shared", *cases]
    if blower.point.crossings > 1 and word == "good":
        word, cases = "caution", [*cases, "hunts"]
    if word == "stop" and beyond(blower):
        cases = [*cases[:-1], "beyond"]
    cures = blower_cures(blower, blower_curve, word)
    if cases[-1] == "stop" and not {"mix_pipe", "port_diameter"} & {key for key, _ in cures}:
        cases = [*cases[:-1], "stop_stronger"]
    return verdict(
        word,
        blower.margin,
        MARGIN,
        case=cases,
        cures=cures,
        burners=blower.burners,
        altogether=blower.burners * blower.high_m3_s,
        air=blower.high_m3_s,
        needed=blower.high_Pa,
        has=has_Pa,
        last=blower.curve.last_m3_s,
        times=1 + blower.margin,
        usual=1 + MARGIN,
        brings=blower.flow_m3_s,
        short=blower.short,
    )


def blower_hot_check(hot_run: HotRun, blower: Blower) -> Judged | None:
    """Only where the blower carries high fire cold."""
    if hot_run.richest is None or blower.margin < 0:
        return None
    has_Pa = hot_run.total_Pa * (1 + hot_run.margin)
    return judge(hot_run.margin, good=0.0, stop=-inf, needed=hot_run.total_Pa, has=has_Pa, ports=hot_run.more_high)


def hot_drift_check(hot_run: HotRun, blower: Blower, blower_curve: tuple | None, equivalence_ratio: float) -> Judged:
    """A slip of the hand comes on top, whatever the drift is; it waits for a blower that carries the burner cold. Gas
    of so little pressure that it falls off more than the air makes it leaner."""
    drift, leanest = hot_run.drift, hot_run.leanest
    if drift is None or leanest is None:
        cures = blower_cures(blower, blower_curve)
        return verdict("caution", blower.short, MIXTURE_SLIP, case=WAITS, cures=cures)
    leaner = 1 - leanest / equivalence_ratio
    if leaner > max(drift, 0.0):
        word = ladder(leaner, good=MIXTURE_SLIP, stop=inf)
        slots = {"less": leaner, "cold": equivalence_ratio, "hot": leanest, "leanest": leanest - MIXTURE_SLIP}
        return verdict(word, leaner, MIXTURE_SLIP, case=f"leaner_{word}", cures=(("gas_pressure", "raise"),), **slots)
    return judge(
        drift,
        good=MIXTURE_SLIP,
        stop=inf,
        more=drift,
        cold=equivalence_ratio,
        hot=equivalence_ratio * (1 + drift),
        richest=equivalence_ratio * (1 + drift) + MIXTURE_SLIP,
    )


def damper_check(blower: Blower) -> Judged | None:
    """Only where the blower carries low fire; too weak a blower is stopped above."""
    if blower.open_low is None:
        return None
    return judge(blower.open_low, good=LEAST_OPEN, stop=-inf, open=blower.open_low, least=LEAST_OPEN)


def gas_pressure_check(jet: Jet, resistance: Resistance, mixing: Mixing, gas_line: GasLine) -> Judged:
    """Enough to flow and for a jet that is no mere pipe; then steady; then no more than a supply carries."""
    lower, raise_ = (("gas_pressure", "lower"),), (("gas_pressure", "raise"),)
    cures, mixture_Pa = raise_, resistance.total_Pa
    hole_m = jet.diameter_m.high if jet.flows else inf
    widest_m = JET_OF_PIPE * mixing.bore_m
    most_Pa, over = (HOUSE_MOST_PA, "line") if gas_line.there else (REGULATOR_MOST_PA, "regulator")
    of = "_lp" if gas_line.there and not gas_line.metered else ""
    fits = ladder(-hole_m, good=-widest_m, stop=-widest_m)
    steady = ladder(jet.gauge_Pa, good=STEADY * mixture_Pa, stop=-inf)
    carried = ladder(jet.gauge_Pa, good=most_Pa * (1 + 1e-6), stop=inf)
    if fits != "good":
        word, case = fits, f"weak_line{of}" if gas_line.there else "weak"
        cures = (*raise_, ("mix_pipe", "raise"), ("firing_rate", "lower"))
        if not jet.flows:
            case, cures = "none", (*raise_, ("port_diameter", "raise"), ("mix_pipe", "raise"))
            if mixture_Pa > MOST_BLOWER_PA:
                case, cures = "none_beyond", cures[1:]
    elif steady != "good":
        word, case = steady, "near"
    elif carried != "good":
        word, case, cures = carried, over + of, lower
    else:
        word, case = "good", "choked" if jet.choked else "good"
    return verdict(
        word,
        jet.gauge_Pa,
        mixture_Pa,
        case=case,
        cures=cures,
        gas=jet.gauge_Pa,
        mixture=mixture_Pa,
        hole=hole_m if jet.flows else None,
        usual=LP_LINE_PA if of else HOUSE_PA,
        most=most_Pa,
    )


def supply_check(
    supply: Supply,
    house: House,
    jet: Jet,
    gas_line: GasLine,
    resistance: Resistance,
    line_pressure: float,
    jet_drill: str | None,
) -> Judged | None:
    """What the regulator of a line must hold, by the most that connector and valves take; a stop where even with the
    least of it high fire comes out as short as no jet may. A cylinder's regulator is set as the gauge at the jet
    asks. None where no gas flows at all: the gas pressure has said so."""
    if not gas_line.there or not jet.flows:
        return None
    outlet, holds, mixture_Pa = supply.outlet_Pa, line_pressure, resistance.total_Pa

    def reached(outlet_Pa):
        """Share of high fire: all that is lost goes with the square of it."""
        return sqrt(max(holds - mixture_Pa, 0.0) / (outlet_Pa - mixture_Pa)) if outlet_Pa > holds else 1.0

    most, least = reached(outlet.low), reached(outlet.high)
    word = "good" if least == 1.0 else "caution" if most >= RATE_SHORT[1] else "stop"
    if word == "good":
        case = "good" if gas_line.metered else "good_lp", "regulated" if supply.regulated else "held"
    else:
        case = ("jet" if jet.supply_Pa >= holds else "caution",)
    larger = (("jet_drill", "choose"),) if jet_drill else (("gas_pressure", "lower"),)
    return verdict(
        word,
        outlet.high,
        holds,
        case=case,
        cures=() if word == "good" else (*larger, ("firing_rate", "lower"), ("line_pressure", "raise")),
        outlet=outlet.value,
        least=outlet.low,
        most=outlet.high,
        share=most,
        short=least,
        jet=jet.supply_Pa,
        lost=outlet.value - jet.supply_Pa,
        holds=holds,
        run=house.pipe_Pa,
        pipe=supply.pipe,
        over=REGULATOR_TAKES_PA,
    )


def house_meter_check(
    house: House, meter_capacity: float | str, other_appliances: float, gas_line: GasLine, firing: Firing, pilot: Pilot
) -> Judged | None:
    """By the meter's plate; where nobody has read it, what to look for there. A line of propane has no meter, and its
    regulator's plate tells heat."""
    own, burning = house.burner_m3_s, house.all_m3_s
    if own is None or burning is None:
        return None
    if not gas_line.metered:
        own_W = firing.installed_W + pilot.all_W
        return verdict("note", None, None, case="no_meter", cures=(), fire=own_W, heat=own_W + other_appliances)
    if meter_capacity == "unknown":
        small, large = METERS_M3_S
        return verdict("note", None, None, case="unknown", cures=(), own=own, all=burning, small=small, large=large)
    passes = float(meter_capacity)
    word = "stop" if own > passes else ladder(burning / passes, good=1.0, stop=inf)
    cures = (("firing_rate", "lower"), ("meter_capacity", "raise"))
    if word == "caution":
        cures = (("other_appliances", "lower"), *cures)
    return verdict(word, burning / passes, 1.0, case=word, cures=cures, own=own, all=burning, meter=passes)


def line_cold_check(house: House, gas_line: GasLine, shop: Shop, fuel_blend: tuple | None) -> Judged | None:
    """Of the tank of a line, which stands outdoors: by what is left near empty while gas is drawn, and a stop where not
    even a full one boils as its regulator needs. None for gas of cylinders, and of the gas company."""
    coldest_K, last_K = house.coldest_K, house.last_coldest_K
    if not gas_line.there or coldest_K is None or last_K is None:
        return None
    good_K = last_K + CHILLED_K
    word = ladder(shop.temp_K, good=good_K, stop=coldest_K)
    # Propane is good in any air that can be set.
    case = word if word == "good" else (word, "lighter")
    cures = () if word == "good" or fuel_blend else (("fuel", "choose"),)
    return verdict(
        word, shop.temp_K, good_K, case=case, cures=cures, air=shop.temp_K, coldest=coldest_K, last=last_K, good=good_K
    )


def jet_check(jet: Jet, firing: Firing, gas_line: GasLine) -> Judged | None:
    """None where no gas flows at all: the gas pressure has said so."""
    if jet.drill is None:
        return _no_drill(jet)
    share, turn = jet.rate_W / firing.rate_W, jet.high_Pa / jet.gauge_Pa
    if gas_line.there:
        good, stop = RATE_SHORT
        word = ladder(share, good=good, stop=stop)
        case = "line_short" if word != "good" else "line_throttled" if share > 1 / good else "line_good"
    else:
        reached = LEAST_REGULATOR_PA <= jet.high_Pa <= REGULATOR_MOST_PA
        word = "good" if 1 / TURN <= turn <= TURN else "caution" if reached else "stop"
        case = ("larger" if turn > 1 else "smaller") if word == "stop" else word
    return verdict(
        word,
        share,
        1.0,
        case=case,
        drill=jet.drill.name,
        rate=jet.rate_W,
        wanted=firing.rate_W,
        at=jet.high_Pa if word == "stop" else jet.read_Pa,
        now=jet.gauge_Pa,
    )


def _no_drill(jet):
    if jet.diameter_m is None:
        return None
    hole_m = jet.diameter_m.value
    small = hole_m < min(drill.diameter_m for drill in drills.drills("number"))
    return verdict(
        "stop",
        None,
        1.0,
        case="too_small" if small else "too_large",
        cures=(("gas_pressure", "lower" if small else "raise"),),
        hole=hole_m,
    )


def gas_low_fire_check(
    jet: Jet, gas_line: GasLine, resistance: Resistance, stream: Stream, low_fire: float
) -> Judged | None:
    if jet.drill is None:
        return None
    pipe_Pa = resistance.pressure_Pa(stream.mixture_m3_s * low_fire)
    least = least_gas_Pa(gas_line, pipe_Pa)
    return judge(jet.low_Pa, good=least, stop=-inf, low=jet.low_Pa, least=least)


def cylinder_check(
    cylinders: Cylinders,
    firing: Firing,
    pilot: Pilot,
    shop: Shop,
    cylinder_fill: float,
    regulator_inlet_pressure: float,
    fuel: str,
    fuel_blend: tuple | None,
    gas: Gas,
    heat_up_time: float,
) -> Judged | None:
    """By how long a run from full lasts, all at high fire, so that more gas is never worse; what is in them today says
    only how long that lasts. What is over so soon is ended by the cold: warm ones of any size last longer."""
    if cylinders.run_s is None:
        return None
    if gas.ethane > MOST_ETHANE + 1e-9 or gas.lighter > MOST_LIGHTER + 1e-9:
        light = gas.ethane + gas.lighter
        most = {"ethane": MOST_ETHANE, "lighter": MOST_LIGHTER}
        return verdict("stop", light, MOST_ETHANE, case="light", cures=(("fuel_blend", "choose"),), light=light, **most)
    least_s, burns_W = heat_up_time + WORKS_S, firing.installed_W + pilot.all_W
    good_s = max(HALF_DAY_S, least_s)
    jet_needs_more = cylinders.least_Pa > regulator_inlet_pressure
    more = () if cylinders.run_s == 0 else COUNT
    regulator, jet = (("regulator_inlet_pressure", "lower"),), (("gas_pressure", "lower"),)
    less = jet if jet_needs_more else regulator
    propane = () if fuel_blend or fuel == "propane" else (("fuel", "choose"),)
    boils = shop.temp_K > cylinders.boils_K
    both, too_few = _too_cold(cylinders, regulator_inlet_pressure, least_s)
    if cylinders.run_s == 0:  # less pressure is no help where nothing boils
        less = (*propane, *((regulator + jet if both else less) + (COUNT if too_few else ()) if boils else ()))
    word = ladder(cylinders.full_run_s, good=good_s, stop=least_s, slack=1e-6)
    if cylinders.run_s == 0:
        word, cases = "stop", ("no_gas",)
        if boils:
            cases = ("too_cold_both" if both else "too_cold_jet" if jet_needs_more else "too_cold",)
            cases = (*cases, *(("more_too",) if too_few else ()), *(("or_propane",) if propane else ()))
    else:
        cases = ("empty",)
        if cylinders.ended_by == "changed":
            cases = ("changed",)
        elif cylinders.ended_by != "empty":
            cases = ("cold_at_once" if cylinders.draw_W.value < burns_W else "cold",)
        if word != "good":
            full = ("full",) if cylinder_fill < 1 else ()
            more_or = "more_or_jet" if jet_needs_more else "more_or_regulator"
            cases = (*cases, *full, "short" if word == "caution" else "hardly", more_or)
    return verdict(
        word,
        cylinders.full_run_s,
        good_s,
        case=cases,
        cures=(*more, *((("cylinder_left", "lower"),) if cylinders.ended_by == "changed" else less)),
        good=good_s,
        least=least_s,
        rate=burns_W,
        run=cylinders.run_s,
        full_run=cylinders.full_run_s,
        draw=cylinders.draw_W.value,
        last=cylinders.last_draw_W.value,
        left=cylinders.left_share,
        full_left=cylinders.full_left_share,
        air=shop.temp_K,
        needed=cylinders.least_Pa,
        holds=cylinders.has_Pa,
        jet=cylinders.jet_Pa,
        boils=cylinders.boils_K,
    )


def _too_cold(cylinders: Cylinders, regulator_inlet_pressure: float, least_s: float) -> tuple[bool, bool]:
    """Of cylinders that give no gas: whether both regulator and jet need more than they hold; and whether more of them
    are wanted besides."""
    if cylinders.has_Pa is None or cylinders.eased_run_s is None:
        return False, False
    both = min(regulator_inlet_pressure, cylinders.jet_Pa) >= cylinders.has_Pa
    return both, both or cylinders.eased_run_s < least_s


def cylinder_spoils(cylinders: Cylinders, regulator_inlet_pressure: float, heat_up_time: float) -> set[str]:
    """What mends it only together: less for the regulator, less for the jet and more cylinders."""
    together = {"regulator_inlet_pressure", "gas_pressure", *(key for key, _ in COUNT)}
    return together if any(_too_cold(cylinders, regulator_inlet_pressure, heat_up_time + WORKS_S)) else set()


def blend_drift_check(blend: Blend, gas_line: GasLine, equivalence_ratio: float) -> Judged | None:
    """By what the mixture gets to before cylinders or tank are changed; None for a gas that stays what it is."""
    if blend.first is None or blend.last is None:
        return None
    good = max(1.0, equivalence_ratio + SLIP)
    first, last = (equivalence_ratio * one.ratio_times for one in (blend.first, blend.last))
    return judge(
        last,
        good=good,
        stop=inf,
        slack=1e-9,
        case=("good" if last <= good else "caution") + ("_line" if gas_line.there else ""),
        first=first,
        last=last,
        left=blend.left_share,
    )
