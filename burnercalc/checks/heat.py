"""The verdicts of the room Heat: one function a check, named <key>_check; None where it does not apply."""

from math import inf

from ..parts.chamber import Chamber
from ..parts.firing import Firing
from ..parts.flame import Flame
from ..parts.mixture import Mixture
from ..parts.need import Need
from ..physics import linings
from ..physics.chamber import FIRING_PER_VOLUME_HIGH_W_M3, FIRING_PER_VOLUME_LOW_W_M3, SHORTEST_HEAT_UP_S
from ..physics.combustion import NEUTRAL_BAND
from ..physics.outside import BURN_THRESHOLD_BARE_METAL_K
from .judge import Judged, judge, ladder, verdict

LEANEST_GOOD = 0.9  # below it the air scales the work and carries heat away; common practice
LEAST_AVAILABLE_GOOD = 0.1  # below it a small slip of the mixture loses the chamber; common practice
TOUCH_K = BURN_THRESHOLD_BARE_METAL_K[1.0]
LARGE = 2.0  # times the need from which a burner counts as much larger than it must be; common practice
# 1900 degF: chambers that run cooler (heat treating) do with less fire for their size; common practice.
FORGING_K = 1311.0

COOLER = ("chamber_temperature", "lower")
LINING = ("lining", "choose")
SLOWER = ("heat_up_time", "raise")
MORE_FIRE = ("firing_rate", "raise")
MORE_BURNERS = ("burner_count", "raise")


def flame_holds_check(flame: Flame, need: Need, equivalence_ratio: float, chamber_temperature: float) -> Judged:
    if need.hold_W is None:
        word, case = "stop", "no_flame" if flame.available is None else "stop"
    else:
        word = case = ladder(flame.available, good=LEAST_AVAILABLE_GOOD, stop=-inf)
    return verdict(
        word,
        flame.available,
        LEAST_AVAILABLE_GOOD,
        case=case,
        cures=(COOLER, _nearer_to_one(equivalence_ratio)),
        chamber=chamber_temperature,
        flame=flame.temp_K,
        available=flame.available,
    )


def mixture_check(mixture: Mixture, flame: Flame, firing: Firing) -> Judged:
    ratio, atmosphere = mixture.equivalence_ratio, mixture.atmosphere.case
    if atmosphere == "reducing":
        word, case = "caution", "rich" if flame.flue else "rich_no_flame"
    elif ratio < LEANEST_GOOD:
        word, case = "caution", "lean"
    elif atmosphere == "neutral":
        word, case = "good", "neutral" if flame.flue else "neutral_no_flame"
    else:
        word, case = "good", "little_lean"
    return verdict(
        word,
        ratio,
        LEANEST_GOOD if ratio < 1 else 1 + NEUTRAL_BAND,
        case=case,
        cures=(_nearer_to_one(ratio),),
        co=flame.co_dry,
        fresh=firing.fresh_air_m3_s,
        excess=mixture.excess_air,
        leanest=LEANEST_GOOD,
    )


def _nearer_to_one(equivalence_ratio):
    return "equivalence_ratio", "raise" if equivalence_ratio < 1 else "lower"


def lining_limit_check(chamber: Chamber, lining: tuple[tuple[str, float], ...]) -> Judged:
    """Of the layer that is most over its limit, or else nearest to it."""
    hot_sides, limits = chamber.layer_temps_K[:-1], chamber.layer_limits_K
    worst = max(range(len(limits)), key=lambda n: hot_sides[n] - limits[n])
    return verdict(
        "good" if hot_sides[worst] <= limits[worst] else "stop",
        hot_sides[worst],
        limits[worst],
        layer=worst + 1,
        material=linings.material(lining[worst][0]).name,
        hot=hot_sides[worst],
        most=limits[worst],
    )


def shell_touch_check(chamber: Chamber) -> Judged:
    return judge(chamber.shell_temp_K, good=TOUCH_K, stop=inf, shell=chamber.shell_temp_K, touch=TOUCH_K)


def rate_for_need_check(
    firing: Firing, need: Need, burner_count: int, heat_up_time: float, chamber_temperature: float
) -> Judged:
    if need.needed_W is None:
        return _cannot(firing.installed_W, chamber_temperature)
    word = ladder(firing.installed_W, good=need.needed_W, stop=need.hold_W, slack=1e-9 * need.needed_W)
    heats_up = need.decided_by == "heat-up"
    cases = ("stop",)
    if word != "stop":
        told = "auto" if firing.taken_from.case == "chamber" else word
        cases = (f"{told}.{need.decided_by}.{'one' if burner_count == 1 else 'several'}",)
        if told == "good" and firing.installed_W > LARGE * need.needed_W:
            cases += ("far_more",)
    if word == "stop":
        eased = (COOLER, ("opening_area", "lower"), LINING)
    else:
        eased = (SLOWER if heats_up else ("work_rate", "lower"), COOLER)
    return verdict(
        word,
        firing.installed_W,
        need.needed_W,
        case=cases,
        cures=(MORE_FIRE, MORE_BURNERS, *eased),
        installed=firing.installed_W,
        needed=need.needed_W,
        each=need.needed_W / burner_count,
        burners=burner_count,
        working=need.working_W,
        hold=need.hold_W,
        time=heat_up_time,
        chamber=chamber_temperature,
    )


def heat_up_reach_check(need: Need, chamber: Chamber, heat_up_time: float, chamber_temperature: float) -> Judged:
    most = FIRING_PER_VOLUME_HIGH_W_M3
    if need.heat_up_W is None:
        return _cannot(most, chamber_temperature)
    asked = need.heat_up_W / chamber.volume_m3
    quick = heat_up_time < SHORTEST_HEAT_UP_S
    return verdict(
        "stop" if asked > most else "caution" if quick else "good",
        asked,
        most,
        time=heat_up_time,
        shortest=SHORTEST_HEAT_UP_S,
        asked=asked,
        most=most,
    )


def _cannot(limit, chamber_temp_K):
    """The flame leaves nothing in the chamber, so no rate does."""
    cures = (COOLER, ("equivalence_ratio", "choose"))
    return verdict("stop", None, limit, case="cannot", cures=cures, chamber=chamber_temp_K)


def firing_per_volume_check(firing: Firing, burner_count: int, chamber_temperature: float) -> Judged:
    found, low, high = firing.per_volume_W_m3, FIRING_PER_VOLUME_LOW_W_M3, FIRING_PER_VOLUME_HIGH_W_M3
    little, much, cool = found < low, found > high, chamber_temperature < FORGING_K
    auto = firing.taken_from.case == "chamber"
    kind = f"{'auto' if auto else 'set'}.{'one' if burner_count == 1 else 'several'}"
    word, case, cures = "good", (), ()
    if little and cool:
        case = ("cool",)
    elif little:
        word, case = "caution", (f"little.{kind}",)
        cures = (("heat_up_time", "lower"),) if auto else (MORE_FIRE, MORE_BURNERS)
    elif much:
        word, case = "caution", (f"much.{kind}",)
        cures = (*((SLOWER, LINING) if auto else (("firing_rate", "lower"),)), ("chamber_length", "raise"))
    return verdict(
        word,
        found,
        low if little else high,
        case=("usual", *case),
        cures=cures,
        found=found,
        low=low,
        high=high,
        forging=FORGING_K,
        burners=burner_count,
    )
