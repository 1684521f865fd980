"""The verdicts of the room Face: one function a check, named <key>_check; None where it does not apply."""

from math import inf

from ..constants import INCH_M
from ..parts.blend import Blend
from ..parts.crossing import Crossing
from ..parts.face import Face
from ..parts.firing import Firing
from ..parts.hand import MIXTURE_SLIP
from ..parts.holding import Holding
from ..parts.hot_block import HotBlock
from ..parts.lighting_try import RELIGHTS_K, RELIGHTS_OFF_K
from ..parts.plenum import Plenum
from ..parts.shares import Shares
from ..parts.soaking import LONGER_S, Soaking
from ..parts.stream import Stream
from ..physics.flame_limits import CROSS_LIGHT_PITCH_RATIO
from .judge import FAULTS, Judged, judge, ladder, verdict

SLACK_M = 1e-9  # sizes that differ by less are the same

# Limits, common practice all.
LEAST_WEB_M = {"in": 0.25 * INCH_M, "mm": 0.006}  # clear web between ports: one port diameter, and this
GRAIN_M = 0.003  # top grain of a fine castable; below it a web cannot be filled
LEAST_EDGE_M = 0.005  # a coarse grain (3 to 6 mm) between port and steel
PORT_LENGTH_RATIO = (4, 14)  # length over diameter of a cast port: 4 at least, 6 to 12 usual
PORT_LENGTH_RATIO_STOP = (2.5, 25)
INLET_RATIO = (0.5, 1.0)  # stop below, good from, without a baffle; half of both with one
LEAST_SAID_M = INCH_M / 64  # less than a tape shows counts as its finest mark
PORT_VELOCITY_M_S = (1.0, 2.0, 12.0, 20.0)  # stop, good from, good to, stop
WORSE_K = 10.0  # hotter after the chamber stood empty is told
BOX_STEEL_K = (400 + 459.67) / 1.8  # steel of the plenum, good to
COOLER_BOX = (("block_thickness", "raise"), ("setback", "raise"), ("refractory", "choose"), ("low_fire", "raise"))
BOX_SCORCH_K = (450 + 459.67) / 1.8  # paint burns off it
BOX_MIXTURE_K = (150 + 459.67) / 1.8  # mixture in it, good to
SET_BELOW_K = 150 / 1.8  # that a port wall may be set below what its block comes to: about what that is off by
STOP_BELOW = 2  # times that: no error of ours any more; common practice
GRIP_STEEL_K = (673.15, 813.15)  # full strength to 400 degC (EN 1993-1-2); scales away from 540 degC
LOADING_W_M2 = (7e6, 45e6)  # 15 to 100 kBtu/h/in2, forced draught in a furnace face
LEAST_LIFT = 0.02  # of low fire; less than that is no fire to light with
LEAN_MARGIN = 1.15  # equivalence ratio over the lean limit, good from
# Of the longest gap that domestic burners, drawing freely, light over. Blown faces that are known to be good light over
# half as much again; a stop beyond the second.
JUMP = (1.5, 2.0)
# What keeps a flame out of ports that not even high fire keeps it out of.
SMALLER_FACE = (("port_diameter", "lower"), ("ports_per_row", "lower"), ("firing_rate", "raise"))


def ports_inside_check(face: Face) -> Judged:
    edge = face.min_edge_m
    return judge(edge, good=0.0, stop=0.0, slack=1e-12, edge=edge, past=max(-edge, LEAST_SAID_M))


def web_check(face: Face, sizes: str) -> Judged | None:
    web = face.min_web_m
    if web is None:
        return None
    wanted = max(LEAST_WEB_M[sizes], face.port_diameter_m)
    return judge(
        web,
        good=wanted,
        stop=GRAIN_M,
        slack=SLACK_M,
        case="overlap" if web < -SLACK_M else None,
        web=max(web, 0.0),
        wanted=wanted,
        least=LEAST_WEB_M[sizes],
        overlap=-web,
    )


def edge_check(face: Face, edge_margin: float) -> Judged:
    edge = face.min_edge_m
    round_corner = edge < edge_margin - SLACK_M  # else the margin alone makes it
    cures = (("edge_margin", "raise"), *((("corner_radius", "lower"),) if round_corner else ()))
    slots = {"edge": edge, "wanted": LEAST_EDGE_M}
    return judge(edge, good=LEAST_EDGE_M, stop=0.0, slack=SLACK_M, cures=cures, **slots)


def port_length_check(block_thickness: float, face: Face) -> Judged:
    slender = block_thickness / face.port_diameter_m
    low, high = PORT_LENGTH_RATIO
    slots = {"slender": slender, "low": low, "high": high}
    if slender < low:
        cures = (("block_thickness", "raise"),)
        return judge(slender, good=low, stop=PORT_LENGTH_RATIO_STOP[0], case="short", cures=cures, **slots)
    case = "long" if slender > high else "good"
    cures = (("block_thickness", "lower"), ("port_diameter", "raise"))
    return judge(slender, good=high, stop=PORT_LENGTH_RATIO_STOP[1], case=case, cures=cures, **slots)


def inlet_ratio_check(plenum: Plenum, baffle_holes: int) -> Judged:
    least, wanted = (limit * (0.5 if baffle_holes else 1.0) for limit in INLET_RATIO)
    ratio = plenum.inlet_to_port_ratio
    return judge(ratio, good=wanted, stop=least, ratio=ratio, wanted=wanted, least=least)


def port_velocity_check(stream: Stream) -> Judged:
    velocity = stream.velocity_m_s
    stop_low, low, high, stop_high = PORT_VELOCITY_M_S
    slots = {"velocity": velocity, "low": low, "high": high}
    if velocity < low:
        cures = (("ports_per_row", "lower"), ("firing_rate", "raise"))
        return judge(velocity, good=low, stop=stop_low, case=("says", "slow"), cures=cures, **slots)
    return judge(
        velocity,
        good=high,
        stop=stop_high,
        case=("says", "fast") if velocity > high else "says",
        cures=(("ports_per_row", "raise"), ("port_diameter", "raise"), ("firing_rate", "lower")),
        **slots,
    )


def _flashback(limit, firing, shares):
    """Low fire over the flashback rate of cold or hot ports: good from the careful end, stop below the middle."""
    if limit is None:
        starved = not shares.least > 0
        cures = (("body_depth", "raise"), ("grip", "lower")) if starved else (("equivalence_ratio", "choose"),)
        return verdict("stop", None, None, case="starved" if starved else "unknown", cures=cures)
    low = firing.low_W
    margin = low / limit.high
    word = ladder(low, good=limit.high, stop=limit.value)
    case = "good_near" if word == "good" and margin < 2 else word
    slots = {"margin": margin, "above": margin - 1, "low": low, "likely": limit.value, "least": limit.high}
    if word in FAULTS and firing.rate_W < limit.high:
        return verdict(word, margin, 1.0, case="no_rate", cures=SMALLER_FACE, high=firing.rate_W, **slots)
    return verdict(word, margin, 1.0, case=case, **slots)


def flashback_cold_check(holding: Holding, firing: Firing, shares: Shares) -> Judged:
    return _flashback(holding.cold_W, firing, shares)


def flashback_hot_check(holding: Holding, firing: Firing, shares: Shares) -> Judged:
    return _flashback(holding.hot_W, firing, shares)


def port_wall_set_check(hot_block: HotBlock, port_wall_temperature: float | str) -> Judged | None:
    """Only where it is entered: a cold one hides flashback, a hot one harms nobody."""
    if isinstance(port_wall_temperature, str):
        return None
    wall_K = hot_block.wall_low_K
    stop_K = wall_K - STOP_BELOW * SET_BELOW_K
    return judge(port_wall_temperature, good=wall_K - SET_BELOW_K, stop=stop_K, set=port_wall_temperature, wall=wall_K)


def box_steel_check(hot_block: HotBlock, chamber_temperature: float) -> Judged:
    """A note where only the chamber left empty at low fire makes it too hot, as long as paint stays on. Where that is
    what makes it too hot a higher low fire is no cure, by which the chamber drifts further."""
    box, lip, limit = hot_block.box_K, hot_block.lip_K.value, hot_block.wetted_K
    word = "stop" if lip > limit else ladder(box.high, good=BOX_STEEL_K, note=BOX_SCORCH_K, stop=inf)
    if word == "note" and hot_block.most_rim.box_K > BOX_STEEL_K:
        word = "caution"
    lip_most = hot_block.lip_K.high
    lights = word in ("note", "caution") and lip_most > limit
    slots = {"box": box.value, "most": box.high, "left": hot_block.left_K, "lip": lip, "lip_most": lip_most}
    drifts = hot_block.left_K > chamber_temperature and (lights or (word == "caution" and box.high > BOX_SCORCH_K))
    first = "caution_left" if drifts and word == "caution" else word
    return verdict(
        "caution" if lights else word,
        box.high,
        BOX_STEEL_K,
        case=(first, "may_light") if lights else first,
        cures=COOLER_BOX[:-1] if drifts else COOLER_BOX,
        good=BOX_STEEL_K,
        wetted=limit,
        **slots,
    )


def box_mixture_check(hot_block: HotBlock) -> Judged:
    mixture, limit = hot_block.mixture_K, hot_block.wetted_K
    word = "stop" if mixture.value > limit else ladder(mixture.high, good=BOX_MIXTURE_K, stop=inf)
    slots = {"mixture": mixture.value, "most": mixture.high, "good": BOX_MIXTURE_K, "wetted": limit}
    return verdict(word, mixture.high, BOX_MIXTURE_K, **slots)


def shut_down_check(soaking: Soaking, hot_block: HotBlock) -> Judged:
    """A stop where all that stands in the box is past ignition; a hot wall must be far hotter to light it. Only with
    the chamber left empty at low fire: a note, a caution where it lights."""
    ignition, wetted = hot_block.ignition_K, hot_block.wetted_K

    def case_of(mixture_K, back_K):
        return (
            "stop" if mixture_K > ignition else "mixture" if mixture_K > wetted else "back" if back_K > ignition else ""
        )

    mixture, back = soaking.set_mixture_K, soaking.set_back_K
    case, word = case_of(mixture, back), "caution"
    cases: tuple[str, ...] = (case, "after")
    if case == "stop":
        word = "stop"
    elif case == "mixture" and soaking.mixture_K > mixture + WORSE_K:
        cases = (case, "worse", "after")
    elif not case:
        mixture, back = soaking.mixture_K, soaking.back_K
        case = case_of(mixture, back)
        word, cases = (
            ("caution" if case == "stop" else "note", ("left", case, "after")) if case else ("good", ("good",))
        )
    by_back = case == "back"
    return verdict(
        word,
        back if by_back else mixture,
        ignition if by_back else wetted,
        case=cases,
        mixture=mixture,
        back=back,
        ignition=ignition,
        wetted=wetted,
        left=hot_block.left_K,
        empty=soaking.mixture_K,
        run_on=soaking.run_on_s or LONGER_S[-1],
    )


def grip_heat_check(hot_block: HotBlock) -> Judged:
    lip, (good, scales) = hot_block.lip_K, GRIP_STEEL_K
    word = "stop" if lip.value > scales else ladder(lip.high, good=good, stop=inf)
    return verdict(word, lip.high, good, lip=lip.value, most=lip.high, good=good, scales=scales)


def lift_check(holding: Holding, firing: Firing, chamber_temperature: float, lit_by: str) -> Judged:
    """By the low end of the band: from there on a cold flame may lift. What is no fault in a chamber whose walls light
    it again is a caution in one so near to that that its colder corners may not, and a stop well below. Where a pilot
    burns in front instead, how much it holds is judged with the turning alone."""
    lift, low = None if holding.lift_W is None else holding.lift_W.low, firing.low_W
    held = -inf if lift is None else lift
    above_K = chamber_temperature - RELIGHTS_K
    relights = above_K > RELIGHTS_OFF_K
    pilot = above_K <= 0 and lit_by == "guard"
    word = ladder(held, good=low, note=-inf if relights or pilot else None, stop=-inf)
    if above_K < -RELIGHTS_OFF_K and not pilot and holding.lift_W is not None and holding.lift_W.high < low:
        word = "stop"  # nothing lights it again
    first = "good" if word == "good" else "hardly" if held < LEAST_LIFT * low else "lifts"
    never = "pilot" if pilot else "never_hot" if above_K <= 0 else "hardly_hot"
    after = never if not relights else "hot_alone" if first == "hardly" else "hot"
    if after == "hot_alone":
        slots = {"low": low, "hot": RELIGHTS_K}
        cures = (("equivalence_ratio", "raise"), ("port_diameter", "raise"), ("ports_per_row", "raise"))
        return verdict("caution", lift, LEAST_LIFT * low, case=(first, after), cures=cures, **slots)
    slots = {"lift": lift, "low": low, "hot": RELIGHTS_K, "chamber": chamber_temperature}
    return verdict(word, lift, low, case=(first, after), **slots)


def flammable_check(holding: Holding, blend: Blend, equivalence_ratio: float) -> Judged:
    """Of a blend its leanest and its richest gas."""
    phi, lean, rich = equivalence_ratio, holding.lean, holding.rich
    nearer_rich = phi * phi > lean * rich  # of very diluted gas both limits may lie on one side of 1
    leanest, richest = blend.span(phi)
    slips_lean, slips_rich = leanest - MIXTURE_SLIP, richest + MIXTURE_SLIP
    word = ladder(slips_lean, good=LEAN_MARGIN * lean, stop=lean) if slips_rich <= rich else "stop"
    return verdict(
        word,
        phi,
        rich if nearer_rich else lean,
        cures=(("equivalence_ratio", "lower" if nearer_rich else "raise"),),
        phi=phi,
        lean=lean,
        rich=rich,
        slip=MIXTURE_SLIP,
    )


def port_loading_check(stream: Stream) -> Judged:
    loading = stream.loading_W_m2
    low, high = LOADING_W_M2
    below = loading < low
    move = "lower" if below else "raise"
    return judge(
        loading,
        good=low if below else high,
        stop=-inf if below else inf,
        case="says",
        cures=(("ports_per_row", move), ("port_diameter", move)),
        loading=loading,
        low=low,
        high=high,
    )


def cross_light_check(crossing: Crossing, face: Face, rows: int) -> Judged | None:
    if crossing.step_m is None:
        return None
    gap, sure, most = crossing.step_m - face.port_diameter_m, crossing.cross_light_m.value, crossing.cross_light_m.high
    close = crossing.step_m <= CROSS_LIGHT_PITCH_RATIO * face.port_diameter_m
    word = "good" if close else ladder(gap, good=sure, note=JUMP[0] * most, stop=JUMP[1] * most)
    # A second row stands further off than the ports of the first.
    cures = (("ports_per_row", "raise"), *((("rows", "raise"),) if rows > 1 else ()))
    return verdict(word, gap, sure, cures=cures, gap=gap, sure=sure, most=most)


def quenching_check(crossing: Crossing, face: Face) -> Judged:
    diameter, quenching = face.port_diameter_m, crossing.quenching_m
    case = "wide" if diameter > quenching.low else "narrow"
    return verdict("good", diameter, quenching.value, case=case, diameter=diameter, quenching=quenching.value)
