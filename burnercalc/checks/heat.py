"""The verdicts of the room Heat: one function a check, named <key>_check; None where it does not apply."""

from dataclasses import replace
from math import inf, pi, sqrt

from ..making.wall import SLACK
from ..parts.back_pressure import BLOWS_PA, MOST_PA, NO_LESS_SPARED, TORCHES_PA, BackPressure
from ..parts.bars import Bars
from ..parts.blend import Blend
from ..parts.blower import Blower
from ..parts.body import Body
from ..parts.carbon_monoxide import CO_LIMIT_FRACTION, EU_DAY_FRACTION, CarbonMonoxide
from ..parts.chamber import Chamber
from ..parts.face import Face
from ..parts.fired_heat_up import FiredHeatUp
from ..parts.firing import Firing
from ..parts.flame import Flame
from ..parts.hand import MIXTURE_SLIP
from ..parts.holding import Holding
from ..parts.hot_lining import HotLining
from ..parts.hot_lining import hot_lining as lined
from ..parts.hot_run import HotRun
from ..parts.lighting_try import LightingTry
from ..parts.lit_length import LitLength
from ..parts.mixture import Mixture
from ..parts.need import Need
from ..parts.pilot import Pilot
from ..parts.reached import Reached, walls_K
from ..parts.standing import Standing
from ..parts.standing import standing as stood
from ..parts.throughput import Throughput
from ..parts.zone import Zone
from ..physics import linings
from ..physics.band import Band
from ..physics.chamber import (
    FIRING_PER_VOLUME_HIGH_W_M3,
    FIRING_PER_VOLUME_LOW_W_M3,
    LEAST_AVAILABLE,
    SHORTEST_HEAT_UP_S,
)
from ..physics.metals import metal
from ..physics.outside import BURN_THRESHOLD_BARE_METAL_K
from .blowing import blower_cures
from .judge import FAULTS, Cures, Judged, judge, ladder, verdict, waiting

LEANEST_GOOD = 0.9  # below it the air scales the work and carries heat away; common practice
RICHEST_GOOD = 1.2  # beyond it gas burns at the door, and what leaves holds more than 5 % of carbon monoxide
MOST_CO_GOOD = 400e-6  # dry; what a vented gas appliance may make (ANSI Z21; memory)
MOST_CO_CHILLED = 10 * MOST_CO_GOOD  # of gas chilled at once as it leaves: no clean flame; common practice
LEAST_AVAILABLE_GOOD = 0.1  # below it a small slip of the mixture loses the chamber; common practice
TOUCH_K = BURN_THRESHOLD_BARE_METAL_K[1.0]
SCORCH_K = 505.37  # 450 degF: paper and cotton char, paint burns off; common practice
LINING_MARGIN_K = 50 / 1.8  # 50 degF of a layer below its limit; common practice
# 150 and 400 degF above the set temperature, left at low fire: the first spoils work whose temperature counts, and is
# so on nearly every forge; the second burns steel that is left in a forging heat. Common practice.
DRIFT_K = (150 / 1.8, 400 / 1.8)
# Left at high fire, beyond a limit by 250 degF within a quarter of an hour: no brick stands that, and nobody is back so
# soon. Less is so on nearly every forge. Common practice.
FAR_K, SOON_S = 250 / 1.8, 900.0
LEAKS = 0.25  # of the heat to heat up, from which an opening is too large; common practice
LATER = 0.1  # of the fire to heat up in time may lack: it heats up later, and harms nobody; common practice
MUCH_LATER = 4.0  # times the time asked for, from which a day is planned wrong; common practice
LIT_WELL, LIT_POORLY = 0.5, 1 / 3  # of the chamber's length, from which ends count as cold; common practice
LARGE = 2.0  # times the need from which a burner counts as much larger than it must be; common practice
# 1900 degF: chambers that run cooler (heat treating) do with less fire for their size; common practice.
FORGING_K = 1311.0
POURED_K = 250.0  # above the liquidus no metal is poured so hot; common practice

COOLER = ("chamber_temperature", "lower")
LINING = ("lining", "choose")
SLOWER = ("heat_up_time", "raise")
MORE_FIRE = ("firing_rate", "raise")
LESS_FIRE = ("firing_rate", "lower")
LESS_WORK = ("work_rate", "lower")
WIDER = ("opening_area", "raise")
SMALLER = ("opening_area", "lower")
MORE_BURNERS = ("burner_count", "raise")


def flame_holds_check(
    flame: Flame, zone: Zone, chamber: Chamber, equivalence_ratio: float, chamber_temperature: float
) -> Judged:
    """By the least that stays of the fire that holds the chamber: of the poorest film; a film that cannot is worse."""
    poorest, middle, _ = zone.hold
    if middle is None:
        share, word = flame.available, "stop"
        leaves = flame.available is not None and flame.available > LEAST_AVAILABLE
        case = "no_flame" if flame.available is None else "too_little" if leaves else "stop"
    else:
        share = (poorest or middle).available_fraction
        word = ladder(share, good=LEAST_AVAILABLE_GOOD, stop=-inf) if poorest else "caution"
        case = word if poorest else "perhaps"
    # How much stays rests on the flame alone; how hot it must be for that, on what the chamber loses.
    lost, less_lost = _losing(chamber) if case in ("perhaps", "too_little", "caution") else ((), ())
    return verdict(
        word,
        share,
        LEAST_AVAILABLE_GOOD,
        case=(case, *lost),
        cures=(COOLER, _nearer_to_one(equivalence_ratio), *less_lost),
        chamber=chamber_temperature,
        flame=flame.temp_K,
        available=share,
    )


def _losing(chamber: Chamber) -> tuple[tuple[str, ...], Cures]:
    """Sentence and cure of what loses most of the heat that holds the chamber."""
    by_opening = chamber.opening_loss_W > chamber.wall_loss_W
    return (("by_opening",), (SMALLER,)) if by_opening else (("by_walls",), (LINING,))


def mixture_check(
    mixture: Mixture, blend: Blend, hot_run: HotRun, blower: Blower, blower_curve: tuple | None, reducing_wanted: str
) -> Judged:
    """Rich: a stop as set, a caution from where a slip of the hand, the burner hot, or the gas of a blend may bring
    it."""
    ratio, wanted = mixture.equivalence_ratio, reducing_wanted == "yes"
    richest = blend.span(max(ratio + MIXTURE_SLIP, hot_run.richest or 0.0))[1]
    word, case = ladder(ratio, good=LEANEST_GOOD, stop=-inf, slack=1e-9), "lean"
    if word == "good":
        word = ladder(-ratio, good=-RICHEST_GOOD, stop=-inf if wanted else -RICHEST_GOOD, slack=1e-9)
        case = mixture.atmosphere.case if word == "good" else "very_rich_wanted" if wanted else "very_rich"
    if word == "good" and richest > RICHEST_GOOD + 1e-9 and not wanted:
        word, case = "caution", "may_be_very_rich"
    leaner = ("equivalence_ratio", "lower") if case == "may_be_very_rich" else _nearer_to_one(ratio)
    drifts = case == "may_be_very_rich" and ratio + MIXTURE_SLIP <= RICHEST_GOOD  # else the hand alone brings it there
    judged = verdict(
        word,
        ratio,
        LEANEST_GOOD if ratio < 1 else RICHEST_GOOD,
        case=case,
        cures=(leaner, *(LESS_DRIFT if drifts else ())),
        most=richest,
        excess=mixture.excess_air,
        leanest=LEANEST_GOOD,
        richest=RICHEST_GOOD,
    )
    return waiting(judged, hot_run.richest, blower_cures(blower, blower_curve))


def carbon_monoxide_check(
    mixture: Mixture,
    blend: Blend,
    flame: Flame,
    carbon_monoxide: CarbonMonoxide,
    hot_run: HotRun,
    holding: Holding,
    blower: Blower,
    blower_curve: tuple | None,
) -> Judged:
    """By one figure, which its sentence is about. What the rich slip leaves however slowly the gas cools, where that is
    no clean flame; else the careful end, of gas chilled at once. No flame found is no clean flame, nor one that goes
    out."""
    found, settled, ratio = carbon_monoxide.dry, flame.co_dry_band, mixture.equivalence_ratio
    if found is None or settled is None:
        return verdict("caution", None, MOST_CO_GOOD, case="unknown", cures=(_nearer_to_one(ratio),))
    leanest, richest = blend.span(ratio)
    if leanest - MIXTURE_SLIP < holding.lean or richest + MIXTURE_SLIP > holding.rich:
        return verdict("caution", None, MOST_CO_GOOD, case="goes_out", cures=(_nearer_to_one(ratio),))
    word = ladder(found.high, good=MOST_CO_GOOD, note=MOST_CO_CHILLED, stop=inf)
    case, value, limit = "chilled" if word == "caution" else word, found.high, MOST_CO_GOOD
    if case == "chilled":
        limit = MOST_CO_CHILLED
    if slow := settled.high > MOST_CO_GOOD:
        word, case, value, limit = "caution", "caution", settled.high, MOST_CO_GOOD
    if mixture.atmosphere.case == "reducing":
        case, value, limit = "rich", found.high, MOST_CO_GOOD
    judged = verdict(
        word,
        value,
        limit,
        case=(case, *(("blend",) if blend.ends else ()), "meter"),
        cures=(("equivalence_ratio", "lower"), *(() if slow else (LESS_FIRE,))),
        co=found.value,
        slipped=settled.high,
        most=found.high,
        slip=MIXTURE_SLIP,
        eye_lean=carbon_monoxide.by_eye[0],
        eye_rich=carbon_monoxide.by_eye[1],
        eye=carbon_monoxide.by_eye_dry,
        set=mixture.equivalence_ratio,
        richest=carbon_monoxide.richest,
        usual=MOST_CO_GOOD,
        fresh=carbon_monoxide.fresh_air_m3_s.high,
        day=CO_LIMIT_FRACTION,
        eu_day=EU_DAY_FRACTION,
        leaves=carbon_monoxide.leaves_K,
        first=leanest,
        last=richest,
    )
    return waiting(judged, hot_run.richest, blower_cures(blower, blower_curve))


# What leaves the hot burner air to spare.
LESS_DRIFT = (
    ("blower_shutoff_pressure", "raise"),
    ("port_diameter", "raise"),
    ("ports_per_row", "raise"),
    ("firing_rate", "lower"),
)


def _nearer_to_one(equivalence_ratio):
    return "equivalence_ratio", "raise" if equivalence_ratio < 1 else "lower"


def lining_limit_check(
    chamber: Chamber,
    hot_lining: HotLining,
    firing: Firing,
    need: Need,
    lining: tuple[tuple[str, float], ...],
    units: str,
    chamber_temperature: float,
    work_temperature: float,
) -> Judged:
    """Of the layer that is most over its limit, or else nearest to it: at the set temperature, then left at a fire.
    Behind another layer no flame washes it: from its limit in continuous use to its class it shrinks slowly, and a
    reckoned temperature is no surer than that. The face, where the flame makes hot spots, has no such room."""
    limits = chamber.layer_limits_K
    stops = limits[:1] + chamber.layer_classes_K[1:]

    def worst(hot_sides, most=limits):
        return _worst(hot_sides, most)

    set_K = chamber.layer_temps_K[:-1]
    hot_sides, layer = set_K, worst(set_K, stops)
    if set_K[layer] <= stops[layer]:
        layer = worst(set_K)
    word = case = ladder(set_K[layer], good=limits[layer] - LINING_MARGIN_K, stop=stops[layer])
    if word == "caution" and set_K[layer] > limits[layer]:
        case = "class"
    # At low fire a smith looks away. High fire is several times what holds any chamber: nobody may leave it.
    after_s: float | None = None
    high_K = hot_lining.high_K
    far = _far_over(hot_lining, limits)
    # It is run no cooler than the work is hot. What a fire that is set makes of it, left on, stays.
    set_cool_K, low_cool_K = (_as_cool(temps_K, chamber, work_temperature) for temps_K in (set_K, hot_lining.low_K))
    if firing.taken_from.case != "chamber":
        low_cool_K = hot_lining.low_K
    if word == "stop":
        cooler = not _over(set_cool_K, stops)
    else:
        cooler = not (_over(set_cool_K, limits, LINING_MARGIN_K) or _over(low_cool_K, limits) or far)
    cures = (LINING, COOLER) if cooler else (LINING,)
    for fire, unless, temps_K in (("low", ("stop",), hot_lining.low_K), ("high", FAULTS, high_K)):
        if temps_K and word not in unless and case != "class" and temps_K[worst(temps_K)] > limits[worst(temps_K)]:
            word, case, hot_sides, layer = "caution", f"left_{fire}", temps_K, worst(temps_K)
            after_s = hot_lining.after_s(fire, layer, limits[layer])
            turned_down = fire == "low" and not far  # where it is far over at high fire too, that is no cure alone
            less_fire = (SLOWER,) if _fire_by_time(firing, need) else () if turned_down else (LESS_FIRE,)
            cures = (LINING, *((("low_fire", "lower"),) if turned_down else ()), *less_fire)
            if fire == "low" and far:
                case = "left_low_far"
            if fire == "high":
                forging = chamber_temperature >= FORGING_K
                word = "caution" if far else "note"
                case = "left_high_far" if far else "left_high" if forging else "left_high_cool"
    return verdict(
        word,
        hot_sides[layer],
        limits[layer],
        case=(case, *(("after",) if after_s is not None else ()), *(("cooler",) if cooler and case in AT_SET else ())),
        cures=cures,
        after=after_s,
        layer=layer + 1,
        material=linings.material_name(lining[layer][0], units),
        hot=hot_sides[layer],
        most=stops[layer] if word == "stop" else limits[layer],
        named=chamber.layer_classes_K[layer],
        chamber=chamber_temperature,
    )


def _worst(hot_sides_K, most_K):
    """Of layers, that most over its limit, or nearest to it."""
    return max(range(len(hot_sides_K)), key=lambda n: hot_sides_K[n] - most_K[n])


def _far_over(hot_lining, limits_K):
    """Whether a layer left at high fire is soon far over its limit."""
    if not hot_lining.high_K:
        return False
    at = _worst(hot_lining.high_K, limits_K)
    within_s = hot_lining.after_s("high", at, limits_K[at])
    return hot_lining.high_K[at] - limits_K[at] > FAR_K and within_s is not None and within_s <= SOON_S


def _least_share(firing: Firing, holding: Holding) -> float:
    """Of low fire, how far it can be turned down, or the burner's fire with it, until a flame may run back."""
    return 0.0 if holding.flashback_W is None else min(1.0, holding.flashback_W.high / firing.low_W)


def lining_limit_spoils(
    chamber: Chamber,
    hot_lining: HotLining,
    zone: Zone,
    reached: Reached,
    firing: Firing,
    holding: Holding,
    burner_count: int,
    chamber_temperature: float,
) -> set[str]:
    """Less fire, or less low fire, where even the least that does not run back is too hot for a layer."""
    if reached.low_empty_K is None:
        return set()
    share, limits = _least_share(firing, holding), chamber.layer_limits_K
    low_K, high_K = (walls_K(zone, share * rate_W) for rate_W in (firing.low_W * burner_count, firing.installed_W))
    less = lined(
        zone, replace(reached, low_empty_K=low_K, high_empty_K=high_K), firing, burner_count, chamber_temperature
    )
    if _over(less.low_K, limits):
        return {"low_fire", "firing_rate", "heat_up_time"}
    far = _far_over(hot_lining, limits) and _far_over(replace(less, high_W=share * less.high_W), limits)
    return {"firing_rate", "heat_up_time"} if far else set()


AT_SET = ("caution", "class", "stop")  # cases of a lining at the set temperature


def _over(hot_sides_K, most_K, margin_K=0.0):
    return any(hot_K > limit_K - margin_K for hot_K, limit_K in zip(hot_sides_K, most_K))


def _as_cool(hot_sides_K, chamber, face_K):
    """Of hot sides at the set temperature or above, what they are at least with its face at another, the shell as it
    is; what does not get hotter than the shell stays."""
    shell_K = chamber.layer_temps_K[-1]
    share = (face_K - shell_K) / max(chamber.layer_temps_K[0] - shell_K, face_K - shell_K)
    return [shell_K + share * (hot_K - shell_K) for hot_K in hot_sides_K]


def low_fire_drift_check(
    firing: Firing,
    pilot: Pilot,
    need: Need,
    zone: Zone,
    reached: Reached,
    burner_count: int,
    chamber_temperature: float,
) -> Judged | None:
    """The hot end of the band: too hot is what harms. Below a forging heat the temperature itself is the job. A pilot's
    heat, which no valve of the burner turns down, is told besides, and makes a note of what is good without it."""
    found = reached.low_empty_K
    if found is None or need.hold_W is None:
        return None
    little, note = _drifts_to(chamber_temperature)
    by_time = _fire_by_time(firing, need)
    word = ladder(found.high, good=little, note=note, stop=inf)
    case = "caution_auto" if by_time and word == "caution" else word
    low_W = firing.low_W * burner_count
    with_pilot = walls_K(zone, low_W + pilot.all_W) if pilot.all_W else None
    if word == "good" and with_pilot and with_pilot.high > little:
        word = "note"
    return verdict(
        word,
        found.high,
        little,
        case=(case, "pilot") if with_pilot else case,
        cures=(("low_fire", "lower"), SLOWER if by_time else LESS_FIRE),
        pilot=pilot.told_W,
        with_pilot=with_pilot and with_pilot.high,
        low=low_W,
        reached=found.value,
        most=found.high,
        chamber=chamber_temperature,
        hold=need.hold_W,
        share=need.hold_W / firing.installed_W,
    )


def _drifts_to(chamber_temperature: float) -> tuple[float, float | None]:
    """How hot it may get, good and a note."""
    little, much = (chamber_temperature + drift_K for drift_K in DRIFT_K)
    return little, much if chamber_temperature >= FORGING_K else None


def low_fire_drift_spoils(
    firing: Firing, zone: Zone, holding: Holding, burner_count: int, chamber_temperature: float
) -> set[str]:
    """Turned down, or with less fire, where even the least that does not run back is too hot: it takes a smaller
    burner, less fire through fewer ports."""
    little, note = _drifts_to(chamber_temperature)
    least_W = _least_share(firing, holding) * firing.low_W * burner_count
    too_hot = walls_K(zone, least_W).high > (little if note is None else note)
    return {"low_fire", "firing_rate", "heat_up_time"} if too_hot else set()


def _more_fire(firing: Firing) -> tuple[str, tuple[tuple[str, str], ...]]:
    """What to do where the fire is too little for the work: burners share what auto takes, so more of them are no more
    fire."""
    if firing.taken_from.case == "chamber":
        return "more_auto", (MORE_FIRE, LESS_WORK)
    return "more", (MORE_FIRE, MORE_BURNERS, LESS_WORK)


def _fire_by_time(firing: Firing, need: Need) -> bool:
    """Whether the time to heat up sets the fire: more of it makes the burner smaller, and low fire with it."""
    return firing.taken_from.case == "chamber" and need.decided_by == "heat-up"


def chamber_fit_check(
    standing: Standing,
    body: Body,
    face: Face,
    mould_clearance: float,
    sizes: str,
    chamber_shape: str,
    chamber_length: float,
    chamber_width: float,
    chamber_height: float,
    chamber_diameter: float,
    lining: tuple[tuple[str, float], ...],
    burner_count: int,
) -> Judged:
    """The ports of all must look into the chamber through one wall; the holes stay within its shell."""
    at, word = standing.at, "good" if standing.at.fits else "caution"
    if at.fits:
        over = ("over",) if at.behind_m > SLACK else ()
        case = (at.wall.name, "one" if burner_count == 1 else "several", *over)
    elif not standing.looks_in.fits:
        at, word, case = standing.looks_in, "stop", ("stop",)
    elif not standing.alone.fits:
        at, case = standing.alone, ("body",)
    else:
        case = ("crowded",)
    hole, window = standing.hole, (face.window_length_m, face.window_width_m)
    slots = {
        "long": hole[0],
        "wide": hole[1],
        "window_long": window[0],
        "window_wide": window[1],
        "wall_long": at.wall.inside[0],
        "wall_wide": at.wall.inside[1],
        "out_long": at.wall.outside[0],
        "out_wide": at.wall.outside[1],
        "keep": standing.keep_m,
        "behind": at.behind_m,
        "burners": burner_count,
    }
    if at.fits:
        return verdict(word, at.share, 1.0, case=case, cures=(), **slots)
    # What by itself, halved or doubled at most, lets all of them stand there; else what brings them nearer to it.
    chamber = {"chamber_length": chamber_length, "chamber_diameter": chamber_diameter}
    if chamber_shape == "box":
        chamber = {"chamber_length": chamber_length, "chamber_width": chamber_width, "chamber_height": chamber_height}
    all_sides = {"chamber_width": chamber_width, "chamber_height": chamber_height, "chamber_diameter": chamber_diameter}

    def share(length_m: float = 0.0, width_m: float = 0.0, burners: int = burner_count, **sides: float) -> float:
        """With so much off body and face."""
        moved = stood(
            replace(body, length_m=body.length_m - length_m, width_m=body.width_m - width_m),
            replace(face, window_length_m=max(window[0] - length_m, 0.0), window_width_m=max(window[1] - width_m, 0.0)),
            mould_clearance,
            sizes,
            chamber_shape,
            lining=lining,
            burner_count=burners,
            **{"chamber_length": chamber_length, **all_sides, **sides},
        )
        return moved.at.share

    length_m, width_m = body.length_m / 2, body.width_m / 2
    moves = {("burner_count", "lower"): share(burners=1)} if burner_count > 1 else {}
    moves |= {
        ("body_length", "lower"): share(length_m, width_m if face.round else 0.0),
        ("body_width", "lower"): share(length_m if face.round else 0.0, width_m),
    }
    moves |= {(key, "raise"): share(**{key: 2 * side}) for key, side in chamber.items()}
    alone = tuple(move for move, then in moves.items() if then <= 1 + SLACK)
    cures = alone or tuple(move for move, then in moves.items() if then < standing.at.share)
    return verdict(word, at.share, 1.0, case=case, cures=cures, **slots)


def chamber_pressure_check(
    flame: Flame, back_pressure: BackPressure, opening_area: float, chamber_back_pressure: float
) -> Judged | None:
    """The high end of the band and what is set besides."""
    slots = {"opening": opening_area, "as_set": chamber_back_pressure}
    enough = back_pressure.enough_m2
    wide = "_enough" if enough is not None else ""
    set_too_much = BLOWS_PA - chamber_back_pressure <= NO_LESS_SPARED * BLOWS_PA  # else no wall is wide enough
    if back_pressure.opening_Pa is None:
        case = ("closed" if opening_area == 0 else "choked") + wide
        return verdict("stop", None, BLOWS_PA, case=case, cures=(WIDER,), enough=enough, most=MOST_PA, **slots)
    if flame.flue is None:
        return None
    pressure = back_pressure.opening_Pa.high + chamber_back_pressure
    word = ladder(pressure, good=BLOWS_PA, stop=inf)
    if back_pressure.no_way_out(chamber_back_pressure):
        word = "stop"
    return verdict(
        word,
        pressure,
        BLOWS_PA,
        case=word if word == "good" else (word + (wide or ("" if set_too_much else "_alone")),),
        cures=(WIDER, LESS_FIRE) if wide else (("chamber_back_pressure", "lower"),) if set_too_much else (LESS_FIRE,),
        pressure=pressure,
        enough=enough,
        torches=TORCHES_PA,
        **slots,
    )


def throughput_check(
    throughput: Throughput,
    firing: Firing,
    bars: Bars,
    back_pressure: BackPressure,
    reached: Reached,
    need: Need,
    work_rate: float,
    bar_diameter: float,
    chamber_temperature: float,
    work_temperature: float,
) -> Judged | None:
    """The low end of the band is what can be promised; what even its high end does not reach is a stop, in any fire
    where bars take up no more, else in this one. Told is the limit that binds, and the other where it is passed too."""
    if work_rate == 0 or reached.spare_W is None or need.hold_W is None or back_pressure.opening_Pa is None:
        return None
    taken, found = bars.taken_kg_s, throughput.metal_kg_s
    more = (LESS_WORK, ("chamber_length", "raise"), ("chamber_width", "raise"), ("chamber_temperature", "raise"))
    slots = {"asked": work_rate, "bar": bar_diameter, "chamber": chamber_temperature, "work": work_temperature}
    if found is None:
        case, cures = "never", (("chamber_temperature", "raise"), ("work_temperature", "lower"))
        if bars.count == 0:
            case, cures = "no_bar", (("bar_diameter", "lower"), ("chamber_width", "raise"))
        return verdict("stop", work_rate, None, case=case, cures=cures, **slots)
    fire = throughput.fire_kg_s
    asked = work_rate * (1 - 1e-9)
    word = "stop" if asked > found.high else "caution" if asked > found.low else "good"
    by_bars = taken is not None and (asked > taken.high or (word != "stop" and taken.low <= fire.low))
    limit, other = (taken, fire) if by_bars else (fire, taken)
    cases, cures = [f"{word}.{('one' if bars.count == 1 else 'several') if by_bars else 'fire'}"], more
    beyond = word != "good" and other is not None and asked > other.low  # the other limit alone would find fault too
    if by_bars and beyond:
        cases.append("fire_sooner" if fire.value < taken.value else "fire_too")
    if not by_bars:
        more_case, cures = _more_fire(firing)
        cases += [more_case] if word == "caution" else []
        if word == "stop" and fire.high > 0:
            cases = ["stop.short", *(("takes", more_case) if need.works_best_W else ("takes_none",))]
            cures = cures if need.works_best_W else (LESS_WORK, ("chamber_length", "raise"), COOLER)
        if beyond:
            cases, cures = [*cases, "bars_too"], (LESS_WORK, *(cure for cure in cures if cure != LESS_WORK))
    return verdict(
        word,
        work_rate,
        found.low,
        case=cases,
        cures=cures,
        takes=need.works_best_W,
        low=limit.low,
        high=limit.high,
        bars=bars.count,
        other_low=other and other.low,
        other_high=other and other.high,
        **slots,
    )


def bar_goes_in_check(
    chamber: Chamber,
    chamber_shape: str,
    chamber_height: float,
    chamber_diameter: float,
    opening_area: float,
    work_rate: float,
    bar_diameter: float,
) -> Judged | None:
    """Of all shapes of one area a round one lets the thickest bar through; a square one is the rule."""
    if work_rate == 0 or opening_area == 0 or chamber.work_state.case != "solid":
        return None
    high = chamber_height if chamber_shape == "box" else chamber_diameter
    square, most = (min(across, high) for across in (sqrt(opening_area), sqrt(4 / pi * opening_area)))
    word = "stop" if bar_diameter > most else "caution" if bar_diameter > square else "good"
    cures = [("bar_diameter", "lower")]
    low = bar_diameter > high
    if low:  # and no opening helps
        cures.append(("chamber_height" if chamber_shape == "box" else "chamber_diameter", "raise"))
    if bar_diameter > sqrt(opening_area):
        cures.append(WIDER)
    slots = {"bar": bar_diameter, "opening": opening_area, "square": square, "most": most, "high": high}
    return verdict(word, bar_diameter, square, case="low" if low else word, cures=cures, **slots)


def melting_check(
    chamber: Chamber, work_metal: str, work_rate: float, work_temperature: float, chamber_temperature: float
) -> Judged | None:
    if work_rate == 0:
        return None
    stuff, state = metal(work_metal), chamber.work_state.case
    word, cases = "caution", ["mush"]
    if state == "liquid":
        far = work_temperature > stuff.liquidus_K + POURED_K
        word, cases = ("caution", ["far", "pot"]) if far else ("note", ["pot"])
    elif state == "solid":
        word, cases = ("caution", ["left"]) if chamber_temperature > stuff.solidus_K else ("good", ["good"])
    if state != "solid" and work_metal in ("brass", "bronze"):
        cases.append("zinc")
    return verdict(
        word,
        work_temperature,
        stuff.solidus_K,
        case=cases,
        solidus=stuff.solidus_K,
        liquidus=stuff.liquidus_K,
        work=work_temperature,
        chamber=chamber_temperature,
    )


def shell_touch_check(chamber: Chamber) -> Judged:
    shell_K = chamber.shell_temp_K
    return judge(shell_K, good=TOUCH_K, note=SCORCH_K, stop=inf, shell=shell_K, touch=TOUCH_K, scorch=SCORCH_K)


def rate_for_need_check(
    firing: Firing,
    need: Need,
    chamber: Chamber,
    bars: Bars,
    work_rate: float,
    burner_count: int,
    heat_up_time: float,
    chamber_temperature: float,
) -> Judged:
    """Of work that the bars on the floor do not take up in any fire, it is not the fire that is too little."""
    if need.needed_W is None:
        return _cannot(firing.installed_W, chamber_temperature, chamber, need)
    if need.working_W is None and firing.installed_W >= need.hold_W * (1 - 1e-9):
        word, case = ("stop", "no_work") if need.works_best_W is None else ("caution", "works_well")
        slots = {"chamber": chamber_temperature, "best": need.works_best_W}
        return verdict(word, firing.installed_W, need.works_best_W, case=case, cures=(LESS_WORK, COOLER), **slots)
    auto = firing.taken_from.case == "chamber"
    number = "one" if burner_count == 1 else "several"
    if not need.in_reach and need.working_band and firing.installed_W >= need.hold_W * (1 - 1e-9):
        return _never_heats_up(firing, need, burner_count, f"never.{'auto' if auto else 'set'}.{number}", heat_up_time)
    # With the poorest film of gas it takes far more for the work than auto asks for, or no rate may be enough.
    works_W = need.working_band.high if need.working_band else inf
    in_time_W = need.needed_W * (1 - LATER if need.decided_by == "heat-up" else 1)
    sure_W = max(in_time_W, works_W)
    word = ladder(firing.installed_W, good=sure_W, stop=need.hold_W, slack=1e-9 * need.needed_W)
    perhaps, (*more, _) = _more_fire(firing)
    told_W, cases = need.needed_W, ("stop",)
    by = need.decided_by if need.in_reach else "working"
    if word == "caution" and firing.installed_W >= in_time_W * (1 - 1e-9):
        by, told_W = "working", works_W
        unsure = "perhaps_never" if need.working_band is None else "at_limit" if need.at_limit else "perhaps"
        cases, more = ((unsure, perhaps), more) if unsure == "perhaps" else ((unsure,), [])
    elif word != "stop":
        later = need.in_reach and need.working_W <= firing.installed_W < need.heat_up_W
        if word == "caution" and by == "working" and later:
            told_W, by = need.heat_up_W, "heat-up"
        may = word == "caution" and by == "working" and firing.installed_W >= need.working_W
        cases = ("perhaps", perhaps) if may else (f"{'auto' if auto else word}.{by}.{number}",)
        if word == "good" and not auto:
            if firing.installed_W < need.needed_W * (1 - 1e-9):
                word, cases = "note", (f"later.{number}",)
            elif firing.installed_W > LARGE * need.needed_W:
                cases += ("far_more",)
    if word == "caution" and by == "working" and bars.taken_kg_s and work_rate > bars.taken_kg_s.high:
        cases, more = ("no_fire",), []
    if word == "stop":
        eased = (COOLER, SMALLER, LINING)
    else:
        eased = (SLOWER if by == "heat-up" else LESS_WORK, COOLER)
    return verdict(
        word,
        firing.installed_W,
        sure_W if sure_W < inf else need.needed_W,
        case=cases,
        cures=(*more, *eased),
        installed=firing.installed_W,
        needed=told_W,
        each=told_W / burner_count,
        burners=burner_count,
        working=need.working_W,
        sure=need.working_band.high if need.working_band else None,
        hold=need.hold_W,
        time=heat_up_time,
        chamber=chamber_temperature,
        asked=work_rate,
        heats=bars.taken_kg_s.low if bars.taken_kg_s else None,
    )


def _never_heats_up(firing, need, burner_count, case, time_s):
    """By the work alone; that to heat up so fast takes more than burns well, and what to do, says the heat-up."""
    works_W = need.working_band.high
    word = ladder(firing.installed_W, good=works_W, stop=-inf, slack=1e-9 * works_W)
    more, cures = _more_fire(firing)
    return verdict(
        word,
        firing.installed_W,
        works_W,
        case=case if word == "good" else ("never.too_little", more, "never"),
        cures=() if word == "good" else cures,
        installed=firing.installed_W,
        working=works_W,
        each=works_W / burner_count,
        burners=burner_count,
        time=time_s,
    )


def heat_up_reach_check(need: Need, chamber: Chamber, heat_up_time: float, chamber_temperature: float) -> Judged:
    """A stop where even the best film asks for too much; where the poorest does, it may take longer."""
    most = FIRING_PER_VOLUME_HIGH_W_M3
    if need.needed_W is None:
        return _cannot(most, chamber_temperature, chamber, need)
    if need.heat_up_W is None:
        cures = (SLOWER, LINING)
        return verdict("stop", None, most, case="never", cures=cures, time=heat_up_time, chamber=chamber_temperature)
    rates_W = need.heat_up_band or Band(need.heat_up_W, need.heat_up_W, inf)
    asked = rates_W.low / chamber.volume_m3
    word = case = ladder(asked, good=-inf, note=most, stop=most)
    if word == "note" and rates_W.high / chamber.volume_m3 <= most:
        word = case = "good"
    if word != "stop" and heat_up_time < SHORTEST_HEAT_UP_S:
        word = case = "caution"
    leaks = word == "stop" and chamber.opening_loss_W > LEAKS * chamber.heat.heat_up_W
    return verdict(
        word,
        asked,
        most,
        case=(case, "by_opening") if leaks else case,
        cures=((SMALLER,) if leaks else ()) + (SLOWER, LINING),
        time=heat_up_time,
        shortest=SHORTEST_HEAT_UP_S,
        asked=asked,
        most=most,
    )


def heat_up_wait_check(fired_heat_up: FiredHeatUp, lighting_try: LightingTry, heat_up_time: float) -> Judged | None:
    """As it is lit and turned up, against what was asked for, which the rate needed would do from the start. Later
    harms nobody, so the middle counts; None where it is not lit or never gets there, which others say."""
    if lighting_try.waits_W is None:
        return None
    takes, waits = fired_heat_up.middle_s, fired_heat_up.middle_waits_s
    if takes is None or (waits is None and fired_heat_up.glows):
        return None
    word = ladder(takes / heat_up_time, good=1 + LATER, note=MUCH_LATER, stop=inf)
    return verdict(
        word,
        takes / heat_up_time,
        1 + LATER,
        case=word if fired_heat_up.glows else f"{word}_cool",
        cures=() if takes <= MUCH_LATER * heat_up_time else (SLOWER, LINING, MORE_FIRE),
        takes=takes,
        asked=heat_up_time,
        waits=waits,
        times=takes / heat_up_time,
    )


def lit_length_check(lit_length: LitLength, chamber_shape: str, chamber_length: float, chamber_width: float) -> Judged:
    """The middle counts: too little harms the work, nobody."""
    share = lit_length.side
    word = ladder(share.value, good=LIT_WELL, note=LIT_POORLY, stop=-inf)
    sides = ("chamber_length", "chamber_width")  # the longer one first
    longer, shorter = sides if chamber_shape != "box" or chamber_width <= chamber_length else sides[::-1]
    face, side = ("body_width", shorter) if lit_length.across else ("body_length", longer)
    return verdict(
        word,
        share.value,
        LIT_WELL,
        case=word + "_across" if lit_length.across else word,
        cures=(("burner_count", "raise"), (face, "raise"), (side, "lower")),
        share=share.value,
        low=share.low,
        high=share.high,
        run=lit_length.side_m,
    )


def _cannot(limit, chamber_temp_K, chamber, need):
    """The flame leaves nothing in the chamber, so no rate does, or only where the gas gives off its heat well."""
    cures = (COOLER, ("equivalence_ratio", "choose"), *_losing(chamber)[1])
    case = "cannot" if need.holds_best_W is None else "cannot_sure"
    return verdict("stop", None, limit, case=case, cures=cures, chamber=chamber_temp_K, best=need.holds_best_W)


def firing_per_volume_check(firing: Firing, need: Need, chamber: Chamber, chamber_temperature: float) -> Judged:
    """A rule of thumb beside what this very chamber asks for, which counts; so no fault."""
    found, low, high = firing.per_volume_W_m3, FIRING_PER_VOLUME_LOW_W_M3, FIRING_PER_VOLUME_HIGH_W_M3
    little, much = found < low, found > high
    asked = None if need.needed_W is None else need.needed_W / chamber.volume_m3
    cool = little and chamber_temperature < FORGING_K
    case = "cool" if cool else "other" if little or much else None
    return verdict(
        "note" if case == "other" else "good",
        found,
        low if little else high,
        case=("usual", case) if case and (cool or asked is not None) else "usual",
        found=found,
        low=low,
        high=high,
        asked=asked,
        forging=FORGING_K,
    )
