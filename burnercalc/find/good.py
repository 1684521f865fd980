"""Make it good: few and small changes that turn every check good, without moving what is mine.

Fault by fault, stops first: what cures it is moved the way that its check says, by the smallest step that mends it. A
move that spoils another check is only taken with one or two more that mend that again, so no fault is traded for
another. Settings of the burner come first; lining, opening and fuel are only moved for what is left then, or for a stop
that nothing of the burner cures (a closed chamber); what the smith asked for or found there (chamber, work, day, house
line) never. No lining is taken that loses more heat, but where one is asked for that heats up sooner, or for a stop;
nor one whose hot face does not stand the chamber. What no step betters takes several at once: it is
begun again with a whole other face, and where a few faults stay even so with one burner more or another opening. At the
end each change is tried without, and in smaller steps. What is good then only as long as nothing is off is moved on
where that makes it good in clearly more of a few shops a little off. Of a fault that stays it is said what was tried,
and why that is no way.
"""

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import chain, combinations, islice, product
from math import inf
from typing import Any

from .. import checks
from ..burner import Burner
from ..catalogue import CHECKS
from ..checks.fire import STRONGER
from ..checks.judge import FAULTS, Judged
from ..constants import INCH_M
from ..design import Design, limits, parse_setting
from ..errors import InputErrors
from ..link import to_link
from ..physics.linings import material, material_keys
from ..physics.pipes import pipe_names
from ..result import Change, Result, further
from ..rules import SOLD_SCALES
from ..settings import BY_KEY, Setting
from ..units import from_si, parse_quantity, show, shown_unit, si_unit_of, to_si
from . import sold
from .choices import Asked, batch_for, before_jet, grid_options
from .faults import Fault, faults_of
from .graph import parts_of
from .hardy import CARD
from .have import Have
from .score import how_wrong, margin
from .shops import BUILDING, HOLDS, built, card_of, drawn, moved
from .space import LATE

MOST_CHANGES, MOST_SOLVES = 8, 1200
MOST_TIDYING, MOST_TELLING = 150, 150  # to make the changes fewer and smaller, and to say what was tried
SOME = 3  # changes; one or two are looked for first of all
PAIRS_SPARING, AGAIN_SPARING, MOST_SAME_WAY = 120, 120, 24  # to do the same by fewer settings; moves of two
MEND_SOLVES = 300  # of one mending fault by fault
AGAIN_SOLVES, FEW = 100, 3  # of each new beginning; faults left from which it is begun again
PINS_TRIED, MOST_FACES = 4, 3  # sizes of pins, and whole faces that are mended further
NOTHING = Have({}, frozenset())
FIRST = ("rate_for_need",)  # how much fire decides what all the rest must do
SHOPS, HELD = 10, 8  # shops a little off; enough of them that are good
TOLD_EVERY = 5  # designs and shops
GAINS, MOST_HOLDING = 2, 100  # shops that a move only for them must bring; how many are made to find such moves
HOLD_STEPS, HOLD_SOLVES = (1, 2, 4), 60  # solves in which it is mended what such a move spoils
CHAIN = 2  # further moves that mend what a move spoils
FELT = 0.02  # of what all cost, from which it is told that a change is dearer
NEARER = 0.8  # of a fault that is left, from which a move that does not mend it is worth taking
STEPS = (1, 2, 4, 8, 16, 32)
CLOSE_STEPS = (1, 2, 3, 4, 5, 6, 7, 8, 10, 12, 14, 17, 20, 24, 28, 32, 36, 40)
MOST_PAIRS = 60
THICKER, THINNER, MOST_MATERIALS = (1.5, 2.0, 3.0), (0.75, 0.5), 4
BRICKS_IN = (2.5, 3.0, 4.5, 5.0, 6.0, 7.5, 9.0, 13.5)  # flat of 2 1/2 or 3, on edge, and two or three of them
FIBRE = "blanket_8lb"  # the lightest that is sold
# Faults for which a lining is asked for that heats up sooner, though it may lose more heat.
SOONER = frozenset({"heat_up_reach", "heat_up_wait", "lighting", "lighting_wait"})
BRICKS, SHEETS = (frozenset(k for k in material_keys() if material(k).sold == how) for how in ("brick", "sheet"))
BRICK_M = 0.0635  # 2 1/2 in flat
TOGETHER = (("rows", "ports_per_row"), ("blower_shutoff_pressure", "blower_free_flow"), ("body_length", "body_width"))
# Stands there, or is meant to: a check may say that it is too small or too large, and that is for the smith to settle.
CHAMBER = frozenset({"chamber_shape", "chamber_length", "chamber_width", "chamber_height", "chamber_diameter"})
WORK = frozenset({"work_metal", "work_rate", "work_temperature", "chamber_temperature", "bar_diameter"})
PLACE = frozenset(
    {
        *("ambient_temperature", "altitude", "damp_air"),
        *("chamber_back_pressure", "gas_from", "line_pressure", "meter_capacity", "other_appliances"),
    }
)
# Said by the smith alone: a check is no reason to want another mixture, or to cast straighter.
CLAIMS = frozenset({"port_tilt_tolerance", "port_position_tolerance"})
STAYS = CHAMBER | WORK | PLACE | CLAIMS | {"units", "sizes"}
# Moved only when all else fails.
QUESTION = STAYS | {"heat_up_time", "lining", "opening_area", "opening_depth", "fuel", "fuel_blend", "refractory"}
# What moves how near the lighting card is to its limits; ports alone may not.
CARD_CURES = tuple(Change(*one) for one in (*STRONGER, ("setback", "choose"), ("block_thickness", "choose")))
# Each is one thing to buy.
BLOWER, CYLINDERS = ("blower_shutoff_pressure", "blower_free_flow", "blower_curve"), ("cylinder", "cylinder_count")

CHEAP_FIRST = sorted(checks.CHECKS, key=lambda key: len(parts_of(checks.CHECKS[key])))
# What rests on no dear part.
SOON = [key for key in CHEAP_FIRST if not parts_of(checks.CHECKS[key]) & {*LATE}]
# All but those of the days of building, which a smith can choose.
IN_SHOP = [key for key in CHEAP_FIRST if CHECKS[key].room != BUILDING]
Changes = tuple[tuple[str, str], ...]  # (setting, text), in the order found
REFUSED = 10**6  # ranks behind all that can be built


@dataclass(frozen=True)
class Kept:
    """A check that would be at fault without a change: its verdict with it, and by what share of its limit it is good.

    `spare` is None where its number is no margin, or it is not good.
    """

    key: str
    label: str
    verdict: str
    spare: float | None


@dataclass(frozen=True)
class Moved:
    """One change: the setting, its text before and after, the checks it mends, and what it costs to buy, of all but
    blower and cylinders more than without it; None where that is hardly more, or another change is told with it.
    `less`: what would do as all is set, "" where that is no change, and how many of the shops a little off are good
    with that; None where it is this."""

    key: str
    label: str
    before: str
    after: str
    mends: tuple[Kept, ...]
    price: float | None = None
    less: tuple[str, int] | None = None


@dataclass(frozen=True)
class Tried:
    """A cure of a fault that stays. `why` it is no way: mine, asked, place, auto, end, short, loses or spoils, with the
    checks it spoils."""

    fault: str
    label: str
    move: str
    why: str
    spoils: tuple[str, ...] = ()


@dataclass(frozen=True)
class Held:
    """Of a few shops a little off, how many are good, and in how many each check is at fault, the most first."""

    shops: int
    good: int
    spoilt: tuple[tuple[str, int], ...]


@dataclass(frozen=True)
class Mended:
    """A design before and after. `changes` are as few and small as was found; `left`: faults that stay; `held`: None
    where faults stay, or nothing changes. `in_way`: settings of mine that keep what `could` be mended from it."""

    before: Result
    after: Result
    changes: tuple[Moved, ...]
    mended: tuple[Fault, ...]
    left: tuple[Fault, ...]
    tried: tuple[Tried, ...]
    solves: int
    held: "Held | None" = None
    in_way: tuple[str, ...] = ()
    could: tuple[Fault, ...] = ()

    def link(self, base: str = "") -> str:
        return to_link(self.after.design, base)


def make_good(
    design: Design,
    mine: Collection[str] = (),
    most: int = MOST_SOLVES,
    progress: Callable[[int, int, str], None] | None = None,
) -> Mended:
    """Few and small changes that turn every check of a design good, as far as some are found; what is `mine` stays.

    `most`: solves in which they are looked for; to make them fewer and smaller, and to say what else was tried, takes
    MOST_TIDYING and MOST_TELLING more at most. `progress` is told how many designs and shops were looked at, of how
    many at most, and at what it is.
    """
    bench = _Bench(design, frozenset(mine), most, progress)
    best = _looked_for(bench)
    bench.at = "changes found, made fewer and smaller"
    best = _of_fewer_settings(bench, best)
    bench.ends_at = bench.solves + MOST_TIDYING
    before: Changes | None = None
    while best != before:
        before, best = best, _cheaper(bench, _smaller(bench, _fewer(bench, best)))
    bench.ends_at = inf
    held, less = None, dict[str, tuple[str, int]]()
    bench.at = "built in shops a little off"
    if best and not bench.in_shop(best):
        best, shops, less = _holding(bench, best)
        held = Held(SHOPS, shops.good, tuple((key, len(shops.faults[key])) for key in shops.worst))
    after = bench.result(best)
    left = faults_of(after)
    kept = {fault.key for fault in left}
    told = bench.made_at_once(best)
    prices = _prices(design, after, [key for key, _ in told]) | _dearer(bench, best, told)
    changes = tuple(
        Moved(
            key,
            BY_KEY[key].label,
            bench.base.setting(key),
            after.setting(key),
            _kept_by(bench, best, key),
            prices.get(key),
            less.get(key),
        )
        for key, _ in told
    )
    mended = tuple(fault for fault in faults_of(bench.base) if fault.key not in kept)
    bench.ends_at, bench.at = bench.solves + MOST_TELLING, "what else was tried"
    tried = tuple(one for fault in left for one in _tried(bench, best, fault))
    in_way, could = _in_way(design, bench.mine, left, most) if left and bench.mine else ((), ())
    return Mended(bench.base, after, changes, mended, left, tried, bench.solves, held, in_way, could)


def _in_way(
    design: Design, mine: Collection[str], left: tuple[Fault, ...], most: int
) -> tuple[tuple[str, ...], tuple[Fault, ...]]:
    """The settings of mine that are moved where nothing is mine, and the faults that stay of which this mends."""
    bench = _Bench(design, frozenset(), most)
    best = _fewer(bench, _looked_for(bench))
    still = {fault.key for fault in faults_of(bench.result(best))}
    keys, could = tuple(key for key, _ in best if key in mine), tuple(each for each in left if each.key not in still)
    return (keys, could) if keys and could else ((), ())


def mending(design: Design, mine: Collection[str], most: int) -> tuple[dict[str, str], int]:
    """Changes of a design that mend it as far as is found in so many solves, as texts, and how many they took."""
    bench = _Bench(design, frozenset(mine), most)
    return dict(bench.made_at_once(_fewer(bench, _looked_for(bench)))), bench.solves


def _looked_for(bench: "_Bench") -> Changes:
    """The changes that mend most, as they are found."""
    best: Changes = ()
    for reach in (QUESTION, STAYS):
        if bench.rank(best) == (0, 0):
            break
        bench.allow(bench.in_all // 3)
        best = _one_or_two(bench, reach) or best
        bench.allow(MEND_SOLVES)
        best = _mend(bench, best, reach)
        if reach and bench.rank(best) != (0, 0):
            best = _another_face(bench, best)
    for begun in _beginnings(bench.base.design, bench.mine):
        if not 0 < len(bench.words(best)) <= FEW:
            break
        bench.allow(AGAIN_SOLVES)
        made = _mend(bench, begun, STAYS)
        if not bench.spoilt(made) and _worth(bench, made) < _worth(bench, best):
            best = made
    return best


def _one_or_two(bench: "_Bench", still: frozenset[str]) -> Changes:
    """One change that turns every check good, else two that do so together, what buys least first; none where there
    are none."""
    faults = list(bench.words(()))
    every = dict.fromkeys(move for fault in faults for move in _moves(bench, (), fault, still, CLOSE_STEPS))
    moves = sorted(every, key=lambda move: _bought((move,)))
    known_soon, tried, whole = sorted(faults, key=CHEAP_FIRST.index), list[tuple[str, str]](), list[tuple[str, str]]()
    for move in moves:
        if not bench.spent and not bench.refused((move,)):
            tried.append(move)
            if not any(bench.word((move,), fault) for fault in known_soon):
                whole.append(move)
                if not bench.worse((move,), (), 0):
                    return (move,)
    pairs = [(one, other) for one, other in combinations(tried, 2) if one[0] != other[0]]
    for fault in known_soon:  # asked only of moves that are left in a pair
        cure = {move for move in dict.fromkeys(chain(*pairs)) if not bench.word((move,), fault)}
        pairs = [(one, other) for one, other in pairs if one in cure or other in cure]
    pairs.sort(key=_bought)
    spoilt = (((move,), spoils[0]) for move in whole if len(spoils := bench.worse((move,), (), CHAIN)) <= CHAIN)
    mended = ((*made, other) for made, fault in spoilt for other in _moves(bench, made, fault, still | {made[0][0]}))
    for made in (*pairs[:MOST_PAIRS], *islice(mended, MOST_PAIRS), *_together(bench, faults, still)):
        if bench.spent:
            break
        if bench.good(made):
            return made
    return ()


def _bought(changes: Changes) -> int:
    """How many dear things are bought for it: a blower, cylinders."""
    return sum(any(key in thing for key, _ in changes) for thing in (BLOWER, CYLINDERS))


def _together(bench: "_Bench", faults: list[str], still: frozenset[str]) -> Iterator[Changes]:
    """Settings that go together, moved at once the way that a fault says of one of them, the smallest moves first."""
    design = bench.base.design
    named = {(one.setting, one.move) for fault in faults for one in bench.base.checks[fault].changes}
    for both in TOGETHER:
        if set(both) & (bench.mine | still):
            continue
        for move in sorted({move for key, move in named if key in both}):
            texts = [list(texts_of(design, BY_KEY[key], move, CLOSE_STEPS)) for key in both]
            places = sorted(product(*map(range, map(len, texts))), key=sum)
            yield from (tuple((key, each[at]) for key, each, at in zip(both, texts, place)) for place in places)


def _another_face(bench: "_Bench", best: Changes) -> Changes:
    """The best of what a few whole faces are mended to: rows and ports at once, of these pins and of sold ones."""
    for made in _least(bench, _faces(bench), MOST_FACES):
        bench.allow(AGAIN_SOLVES)
        made = _mend(bench, made, QUESTION)
        if not bench.spoilt(made) and (bench.rank(made), len(made)) < (bench.rank(best), len(best)):
            best = made
        if bench.rank(best) == (0, 0):
            break
    return best


def _least(bench: "_Bench", found: Iterable[Changes], most: int) -> list[Changes]:
    """So many of these that leave the fewest faults, of equals with the fewest changes; none that a rule refuses."""
    least: list[tuple[tuple[int, int], int, int, Changes]] = []
    for at, made in enumerate(found):
        worst = least[-1][0] if len(least) == most else (REFUSED - 1, 0)
        if (rank := bench.rank(made, worst)) <= worst:
            least = sorted([*least, (rank, len(made), at, made)])[:most]
    return [made for *_, made in least]


def _faces(bench: "_Bench") -> Iterator[Changes]:
    """Faces that fit the box and suit the fire, as find would choose them, of pins near those that are set."""
    design = bench.base.design
    sizes = sorted(
        sold.PINS[design.sizes],
        key=lambda text: abs(parse_setting(BY_KEY["port_diameter"], text) - design.port_diameter),
    )
    ports = [design.text("port_diameter"), *(() if "port_diameter" in bench.mine else sizes[:PINS_TRIED])]
    unknown = bench.base.part("need").needed_W is None  # no fire of the chamber's own: none holds it
    fires = [design.text("firing_rate"), *(() if unknown or "firing_rate" in bench.mine else ("auto",))]
    for fire, port in dict.fromkeys(product(fires, ports)):
        begun = {"firing_rate": fire, "port_diameter": port}
        values = {**design.values(), **{key: parse_setting(BY_KEY[key], text) for key, text in begun.items()}}
        asked = Asked(NOTHING, design, values, Burner(values.__getitem__), {})
        for one in grid_options(asked):
            texts = {**begun, **dict(one.texts)}
            changed = {
                key: text for key, text in texts.items() if parse_setting(BY_KEY[key], text) != design.value(key)
            }
            if changed and not changed.keys() & bench.mine:
                yield tuple(changed.items())


def _beginnings(design: Design, mine: frozenset[str]) -> Iterator[Changes]:
    """Other ways than by the cures of one fault: one burner more, and a smaller, deeper opening."""
    if "burner_count" not in mine:
        yield (("burner_count", str(design.burner_count + 1)),)
    openings: list[tuple[str, str]] = []
    for key, steps in (("opening_depth", 4), ("opening_area", -4)):
        text = _stepped(BY_KEY[key], design.value(key), steps, design.sizes)
        if key not in mine and text is not None:
            openings.append((key, text))
            yield tuple(openings)


def _prices(design: Design, after: Result, moved: list[str]) -> dict[str, float]:
    """What a blower and cylinders that are moved cost to buy, each beside the first change that it is."""
    found: dict[str, float] = {}
    things = {
        CYLINDERS: _cylinders(design, after.design.cylinder, after.design.cylinder_count),
        BLOWER: sum(line.batch_cost for line in after.part("cost").lines if line.key == "blower"),
    }
    for keys, price in things.items():
        first = next((key for key in moved if key in keys), None)
        if first and price > 0:
            found[first] = price
    return found


def _dearer(bench: "_Bench", best: Changes, told: Changes) -> dict[str, float]:
    """What all cost more with a change than without it, where that is felt: how it is lit, another burner."""
    cost, found = bench.result(best).part("cost").batch, dict[str, float]()
    for key, _ in told:
        less = tuple(change for change in best if change[0] != key)
        if key not in (*BLOWER, *CYLINDERS) and len(less) < len(best) and not bench.refused(less):
            more = cost - bench.result(less).part("cost").batch
            if more > FELT * cost:
                found[key] = more
    return found


def _cylinders(design: Design, size: str, count: int) -> float:
    """What so many cylinders cost beside those of a design."""
    own = design.cylinder_count if design.cylinder == size else 0
    return (count - own) * sold.CYLINDER_PRICES[size]


def _cheaper(bench: "_Bench", changes: Changes) -> Changes:
    """With the cheapest cylinders that do the same, no more than stand side by side where those do; only where any are
    bought, and none that are mine."""
    design, moved = bench.base.design, dict(changes)
    if not moved.keys() & set(CYLINDERS):
        return changes

    def dear(size: str, count: str) -> tuple[bool, float, int]:
        return int(count) > sold.MOST_CYLINDERS, _cylinders(design, size, int(count)), int(count)

    now = [moved.get(key, design.text(key)) for key in CYLINDERS]
    low, high = (int(limit or 1) for limit in limits(BY_KEY["cylinder_count"]))
    menu = product([name for name, _ in BY_KEY["cylinder"].choices], map(str, range(low, high + 1)))
    rest = tuple(change for change in changes if change[0] not in CYLINDERS)
    for one in sorted(
        (one for one in menu if dear(*one) < dear(*now) and dear(*one)[1] > 0), key=lambda one: dear(*one)
    ):
        made = (*rest, *(both for both in zip(CYLINDERS, one) if design.text(both[0]) != both[1]))
        if bench.ended or {key for key, _ in made} & bench.mine or bench.refused(made):
            continue
        if bench.word(made, "cylinder") == bench.word(changes, "cylinder") and (
            _worth(bench, made) <= _worth(bench, changes)
        ):
            return made
    return changes


def _holding(bench: "_Bench", changes: Changes) -> tuple[Changes, "_Shops", dict[str, tuple[str, int]]]:
    """Moved on, so that more of the shops a little off are good; these shops; and of each setting that is moved only
    for them, or further, what it would be without them and how many are good then."""
    best, now, given_up = changes, _shops(bench, changes), {"built"}
    while now.good < HELD and bench.shops_made < MOST_HOLDING:
        fault = next((key for key in now.worst if key not in given_up), "")
        if not fault:
            break
        found = next((made for chain in (0, CHAIN) for made in _held(bench, best, now, fault, chain)), None)
        if found is None:
            given_up.add(fault)
        else:
            best, now = found
    less = dict[str, tuple[str, int]]()
    held = [key for key, text in best if text != dict(changes).get(key)]
    while held:
        key = held.pop()
        as_set = dict(changes).get(key)
        made = tuple(change for change in best if change[0] != key) if as_set is None else _with(best, key, as_set)
        shops = _shops(bench, made)
        if shops.good > now.good - GAINS and not bench.worse(made, changes, 0):
            best, now = made, shops
            held, less = [*less, *held], {}  # what the others bring is another
        else:
            less[key] = bench.result(made).setting(key) if as_set else "", shops.good
    return best, now, less


def _shops(bench: "_Bench", changes: Changes) -> "_Shops":
    shops = bench.shops(changes)
    assert shops is not None
    return shops


def _held(
    bench: "_Bench", changes: Changes, now: "_Shops", fault: str, chain: int
) -> Iterator[tuple[Changes, "_Shops"]]:
    """Moves by which a check is at fault in half the shops at most, and all are in fewer; settings that are moved
    anyway come first, and of the question no others. No cylinder is bought for a colder day, which passes. `chain`:
    how many more a move may take with it, to mend what it spoils."""
    shops, moved_anyway = now.faults[fault], dict(changes)
    there = bench.one_off(changes, shops[0])
    assert there is not None
    held = bench.mine | STAYS | {*CYLINDERS} | QUESTION - moved_anyway.keys()
    as_built = Result(built(bench.result(changes)))  # where auto is a number, which can be more
    check = None if fault == CARD else there.result.checks[fault]
    cures, verdict = (check.changes, check.verdict) if check else (CARD_CURES, "caution")
    moves = _no_heat_lost(bench, changes, fault, verdict, _cures(as_built, cures, held, HOLD_STEPS))
    for key, text in sorted(moves, key=lambda move: move[0] not in moved_anyway):
        made = _with(changes, key, text)
        if bench.shops_made >= MOST_HOLDING or bench.refused(made):
            continue
        if bench.result(made).design.value(key) == bench.base.design.value(key):
            continue  # back to where it was
        spoilt = bench.worse(made, changes, chain)
        if len(spoilt) > chain or (chain and not spoilt):
            continue
        if spoilt:
            bench.most = bench.solves + HOLD_SOLVES
            mended = _cured(bench, made, spoilt[0], held | {key}, chain - 1)
            made = next((one for one in mended if not bench.worse(one, changes, 0)), ())
            if not made:
                continue
        if 2 * sum(bench.at_fault(made, shop, fault) for shop in shops) <= len(shops):
            if found := bench.shops(made, now):
                yield made, found


def _kept_by(bench: "_Bench", changes: Changes, key: str) -> tuple[Kept, ...]:
    """The checks that are worse without one of the changes."""
    less = tuple(change for change in changes if change[0] != key)
    now, without = bench.words(changes), bench.words(less)
    checked = bench.result(changes).checks
    found = []
    for check in without:
        if check in checked and without[check] not in (now.get(check), None) and now.get(check) != "stop":
            one = checked[check]
            spare = margin(check, one.value, one.limit) if one.verdict not in FAULTS else None
            found.append(Kept(check, one.label, one.verdict, spare))
    return tuple(found)


def _tried(bench: "_Bench", changes: Changes, fault: Fault) -> Iterator[Tried]:
    """Each cure of a fault that stays, and why it is no way, as far as there are solves for it."""
    for change in bench.result(changes).checks[fault.key].changes:
        if bench.ended:
            return
        if change.setting in CHAMBER | CLAIMS:
            continue
        follows = bench.result(changes).design.value(change.setting) == "auto"
        label, why, spoils = BY_KEY[change.setting].label, "auto" if follows else "end", tuple[str, ...]()
        texts = texts_of(bench.result(changes).design, BY_KEY[change.setting], change.move)
        stays = {"mine": bench.mine, "asked": WORK, "place": PLACE}  # {why: settings}
        held = next((word for word, keys in stays.items() if change.setting in keys), "")
        for text in () if held else texts:
            made = _with(changes, change.setting, text)
            if bench.refused(made):
                continue
            if bench.word(made, fault.key) in (bench.word(changes, fault.key), "stop"):
                why = "short" if why in ("auto", "end") else why
                continue
            if not [*_no_heat_lost(bench, changes, fault.key, fault.verdict, [made[-1]])]:
                why = "loses" if bench.stands(made, changes) else why
                continue
            if worse := bench.worse(made, changes):
                why, spoils = "spoils", tuple(CHECKS[key].label for key in worse)
                break
        yield Tried(fault.label, label, change.move, held or why, spoils)


class _Judged:
    """A set of changes; each check is asked when somebody wants to know, as most moves are dropped after one or two."""

    def __init__(self, result: Result) -> None:
        self.result = result
        self._seen: dict[str, tuple[str, float]] = {}
        self.stops: dict[str, Judged] = {}

    def fault(self, key: str) -> tuple[str, float]:
        """(caution or stop, how far over the limit); ("", 0) of a check that is good."""
        if key not in self._seen:
            judged = self.result.parts.call(checks.CHECKS[key])
            bad = judged is not None and judged.verdict in FAULTS
            self._seen[key] = (judged.verdict, how_wrong(key, judged.value, judged.limit)) if bad else ("", 0.0)
            if bad and judged.verdict == "stop":
                self.stops[key] = judged
        return self._seen[key]

    def words(self, of: Iterable[str] = CHEAP_FIRST) -> Iterator[tuple[str, str]]:
        """(check, caution or stop) of what is not good, what rests on least first."""
        for key in of:
            if word := self.fault(key)[0]:
                yield key, word


@dataclass
class _Shops:
    """Built in each of a few shops a little off: in how many nothing is at fault, and in which each check is; CARD,
    where the lighting card made once does not hold."""

    good: int
    faults: dict[str, list[int]]  # {check: places of the shops}

    @property
    def in_all(self) -> int:
        return sum(map(len, self.faults.values()))

    @property
    def worst(self) -> list[str]:
        return sorted(self.faults, key=lambda key: (-len(self.faults[key]), key))


class _Bench:
    """Sets of changes to one design, each judged once; parts that are made of the same things are shared."""

    def __init__(
        self,
        design: Design,
        mine: frozenset[str],
        most: int,
        progress: Callable[[int, int, str], None] | None = None,
    ) -> None:
        self.progress, self.at = progress, "looking for changes"
        self.mine, self.solves, self.most, self.in_all = mine, 0, most, most
        self.ends_at: float = most  # solves after which no other set is judged; it counts as refused
        self.offs, self.shops_made = drawn(SHOPS), 0
        self._cards: dict[frozenset[tuple[str, str]], Callable[[Result], str] | None] = {}
        self._one_off: dict[tuple[frozenset[tuple[str, str]], int], _Judged | None] = {}
        self._parts: dict[Any, Any] = {}
        self.base = Result(design, store=self._parts)
        self._known: dict[frozenset[tuple[str, str]], _Judged | None] = {frozenset(): _Judged(self.base)}

    def allow(self, more: int) -> None:
        """So many solves more, as far as there are any left of all."""
        self.most = min(self.solves + more, self.in_all)

    @property
    def spent(self) -> bool:
        return self.solves >= self.most

    @property
    def ended(self) -> bool:
        return self.solves >= self.ends_at

    def _judged(self, changes: Changes) -> "_Judged | None":
        key = frozenset(changes)
        if key not in self._known:
            if self.ended:
                return None
            try:
                design = self.base.design.changed(dict(self.made_at_once(changes)))
            except InputErrors:
                self._known[key] = None
            else:
                self.solves += 1
                self.tell()
                self._known[key] = _Judged(Result(design, store=self._parts))
        return self._known[key]

    def tell(self) -> None:
        done = self.solves + self.shops_made
        if self.progress and done % TOLD_EVERY == 0:
            self.progress(done, self.in_all + MOST_TIDYING + MOST_HOLDING, self.at)

    def made_at_once(self, changes: Changes) -> Changes:
        """With as many burners at once as the chamber gets, where their number is moved: their money is of all."""
        was, burners = self.base.design, dict(changes).get("burner_count")
        if burners is None or "batch_size" in self.mine:
            return changes
        batch = batch_for(int(burners), was.burner_count, was.batch_size)
        if batch == was.batch_size:
            return changes
        at = [key for key, _ in changes].index("burner_count") + 1
        return *changes[:at], ("batch_size", str(batch)), *changes[at:]

    def refused(self, changes: Changes) -> bool:
        """Whether a rule refuses it."""
        return self._judged(changes) is None

    def spoilt(self, changes: Changes) -> int:
        """How many checks are worse than without any change, or a stop still, and clearly further beyond its limit."""
        before, now = self._judged(()), self._judged(changes)
        stays = [key for key, word in self.words(changes).items() if word == self.word((), key) == "stop"]
        beyond = sum(further(before.stops[key], now.stops[key]) for key in stays) if before and now else 0
        return len(self.worse(changes, ())) + beyond

    def good(self, changes: Changes) -> bool:
        """Whether no check finds fault; what rests on least is asked first, and nothing after the first fault."""
        found = self._judged(changes)
        return found is not None and next(found.words(), None) is None

    def worse(self, changes: Changes, than: Changes, most: float = inf, of: Iterable[str] = CHEAP_FIRST) -> list[str]:
        """Checks that are worse than with other changes; one more than `most` at most."""
        found: list[str] = []
        judged = self._judged(changes)
        for key, word in judged.words(of) if judged else ():
            if self.word(than, key) not in (word, "stop"):
                found.append(key)
                if len(found) > most:
                    break
        return found

    def stands(self, changes: Changes, than: Changes) -> bool:
        """Whether the hot face of a lining stands the chamber, or is the one that is there."""
        was, design = self.result(than).design, self.result(changes).design
        face = design.lining[0][0]
        return face == was.lining[0][0] or material(face).limit_K >= design.chamber_temperature

    def loses(self, changes: Changes, than: Changes) -> bool:
        """Whether more heat goes through the walls than with other changes."""
        was_W, lost_W = (self.result(each).part("chamber").wall_loss_W for each in (than, changes))
        return lost_W > was_W * (1 + 1e-9)

    def rank(self, changes: Changes, most: tuple[int, int] = (REFUSED, 0)) -> tuple[int, int]:
        """(stops, cautions), no further than just beyond `most`; REFUSED where a rule refuses it."""
        found = self._judged(changes)
        if found is None:
            return REFUSED, 0
        stops = cautions = 0
        for _, word in found.words():
            stops, cautions = stops + (word == "stop"), cautions + (word != "stop")
            if (stops, cautions) > most:
                break
        return stops, cautions

    def words(self, changes: Changes) -> dict[str, str]:
        found = self._judged(changes)
        return dict(found.words()) if found else {}

    def word(self, changes: Changes, key: str) -> str:
        """Of one check: caution, stop, or "" where it is good."""
        found = self._judged(changes)
        return found.fault(key)[0] if found else "stop"

    def wrong(self, changes: Changes, fault: str) -> float:
        """How far a fault is over its limit, 0 where it is none."""
        found = self._judged(changes)
        return found.fault(fault)[1] if found else 1.0

    def in_shop(self, changes: Changes) -> list[str]:
        """Faults but those of the days of building, which a smith can choose."""
        return [key for key in self.words(changes) if key in IN_SHOP]

    def one_off(self, changes: Changes, shop: int) -> "_Judged | None":
        """Built in a shop a little off; None where a rule refuses that."""
        key = frozenset(changes), shop
        if key not in self._one_off:
            self.shops_made += 1
            design = moved(built(self.result(changes)), self.offs[shop])
            self._one_off[key] = _Judged(Result(design, store=self._parts)) if design else None
        return self._one_off[key]

    def _card_lost(self, changes: Changes, shop: "_Judged") -> bool:
        """Whether the lighting card of the design, made once, does not hold in a shop; not where there is none."""
        key = frozenset(changes)
        if key not in self._cards:
            self._cards[key] = card_of(Result(built(self.result(changes)), store=self._parts))
        card = self._cards[key]
        return card is not None and card(shop.result) != HOLDS

    def at_fault(self, changes: Changes, shop: int, key: str) -> bool:
        """Whether a check is at fault in one of the shops, or it cannot be built there."""
        judged = self.one_off(changes, shop)
        return judged is None or (self._card_lost(changes, judged) if key == CARD else bool(judged.fault(key)[0]))

    def shops(self, changes: Changes, than: "_Shops | None" = None) -> "_Shops | None":
        """Built in each of them; None where that has no fewer faults in all than another has."""
        found, order = _Shops(0, {}), dict.fromkeys([*(than.faults if than else ()), *IN_SHOP])
        for shop in range(SHOPS):
            judged = self.one_off(changes, shop)
            faults = [key for key, _ in judged.words(order)] if judged else ["built"]
            if judged and self._card_lost(changes, judged):
                faults.append(CARD)
            for key in faults:
                found.faults.setdefault(key, []).append(shop)
            found.good += not faults
            if than and found.in_all >= than.in_all:
                return None
        return found

    def result(self, changes: Changes) -> Result:
        found = self._judged(changes)
        assert found is not None
        return found.result


def _mend(bench: _Bench, changes: Changes, still: frozenset[str]) -> Changes:
    """Changes that mend one fault after the other; settings in `still` are left alone."""
    given_up, best = set[str](), bench.rank(changes)
    while len(changes) < MOST_CHANGES:
        words = bench.words(changes)
        order = {key: (words[key] != "stop", key not in FIRST) for key in words}
        faults = sorted((key for key in words if key not in given_up), key=order.__getitem__)
        if not faults:
            break
        found = list(_cured(bench, changes, faults[0], still, CHAIN))
        if not found:
            found = list(_nearer(bench, changes, faults[0], still))
        if not found:
            given_up.add(faults[0])
            continue
        changes = _least(bench, found, 1)[0]
        given_up = set() if bench.rank(changes) < best else given_up
        best = min(best, bench.rank(changes))
    return changes


def _cured(bench: _Bench, changes: Changes, fault: str, still: frozenset[str], chain: int) -> Iterator[Changes]:
    """Sets of changes in which a fault is gone, or a stop no more than a caution, and nothing else is worse."""
    was = bench.word(changes, fault)
    done: set[str] = set()
    for key, text in _moves(bench, changes, fault, still):
        made = _with(changes, key, text)
        if key in done or bench.spent or bench.refused(made):
            continue
        if fault not in SOON and len(bench.worse(made, changes, chain, SOON)) > chain:
            continue  # whatever the dear ones say
        now = bench.word(made, fault)
        if now in (was, "stop"):
            continue
        spoilt = bench.worse(made, changes, chain)
        if not spoilt:
            done.add(key)  # further steps do no more
            yield made
        elif len(spoilt) <= chain:
            for mended in _cured(bench, made, spoilt[0], still | {key}, chain - 1):
                if bench.word(mended, fault) == now and not bench.worse(mended, changes, 0):
                    done.add(key)
                    yield mended
                    break


def _nearer(bench: _Bench, changes: Changes, fault: str, still: frozenset[str]) -> Iterator[Changes]:
    """Moves that bring a fault well nearer to its limit and spoil nothing."""
    far = bench.wrong(changes, fault)
    for key, text in _moves(bench, changes, fault, still):
        made = _with(changes, key, text)
        if bench.spent or key in dict(changes) or bench.refused(made):
            continue
        if fault not in SOON and bench.worse(made, changes, 0, SOON):
            continue
        if bench.wrong(made, fault) < NEARER * far and not bench.worse(made, changes, 0):
            yield made


def _with(changes: Changes, key: str, text: str) -> Changes:
    return *((k, t) for k, t in changes if k != key), (key, text)


def _moves(
    bench: _Bench, changes: Changes, fault: str, still: frozenset[str], steps: Iterable[int] = STEPS
) -> Iterator[tuple[str, str]]:
    """Texts for the settings that cure a fault, the way that its check says, the first cure and near ones first."""
    check, held = bench.result(changes).checks[fault], bench.mine | still | STAYS
    if check.verdict == "stop" and {change.setting for change in check.changes} <= QUESTION:
        held -= QUESTION - STAYS - bench.mine  # nothing of the burner cures it: it need not wait till all else fails
    moves = _cures(bench.result(changes), check.changes, held, steps)
    yield from _no_heat_lost(bench, changes, fault, check.verdict, moves)


def _no_heat_lost(
    bench: _Bench, changes: Changes, fault: str, verdict: str, moves: Iterable[tuple[str, str]]
) -> Iterator[tuple[str, str]]:
    """Without linings whose hot face does not stand the chamber. One that loses more heat mends by wasting gas: a stop,
    or where what heats up sooner is asked for, but no other caution."""
    for key, text in moves:
        made = _with(changes, key, text)
        may_lose = verdict == "stop" or fault in SOONER
        if key != "lining" or (
            not bench.refused(made) and bench.stands(made, changes) and (may_lose or not bench.loses(made, changes))
        ):
            yield key, text


def _cures(
    result: Result, cures: Iterable[Change], held: Collection[str], steps: Iterable[int]
) -> Iterator[tuple[str, str]]:
    design = result.design
    for change in cures:
        if change.setting not in held:
            if change.setting == "gas_pressure" and result.part("gas_line").there:
                for text in before_jet(design.text("line_pressure"), design.sizes):
                    yield change.setting, text
            # A fire taken from the chamber is raised from what it came to; less of it heats up later than asked.
            auto = change.setting == "firing_rate" and design.firing_rate == "auto" and change.move == "raise"
            for text in texts_of(built(result) if auto else design, BY_KEY[change.setting], change.move, steps):
                if not (auto and text == "auto"):
                    yield change.setting, text


def texts_of(design: Design, setting: Setting, move: str, steps: Iterable[int] = STEPS) -> Iterator[str]:
    """What a setting may be moved to: raised, lowered or chosen anew, from its present value outwards."""
    value = design.value(setting.key)
    if setting.choices:
        yield from _others(setting, value, move)
    elif setting.dimension == "drill":
        yield ""
    elif setting.dimension == "lining":
        yield from _linings(value, design.sizes)
    elif setting.key in SOLD_SCALES:
        yield "auto"
    elif setting.step and not isinstance(value, str) and value is not None:
        yield from {"auto"} & set(setting.words)
        for sign in {"raise": (1,), "lower": (-1,)}.get(move, (1, -1)):
            for count in steps:
                text = _stepped(setting, value, sign * count, design.sizes)
                if text is not None and not (sign > 0 and _beyond_sold(setting, text, design.sizes)):
                    yield text


def _beyond_sold(setting: Setting, text: str, system: str) -> bool:
    """Whether it is a blower stronger than any that is sold for such burners."""
    if setting.key not in BLOWER[:2]:
        return False
    sizes = [each[BLOWER.index(setting.key)] for each in sold.BLOWERS[system]]
    return parse_setting(setting, text) > max(parse_setting(setting, size) for size in sizes) * (1 + 1e-9)


def _others(setting: Setting, value: str, move: str) -> Iterator[str]:
    names = [name for name, _ in setting.choices]
    at = names.index(value)
    ordered = setting.key in ("mix_pipe", "inlet") and tuple(names) == pipe_names()
    if ordered and move in ("raise", "lower"):
        yield from names[at + 1 : at + 4] if move == "raise" else reversed(names[max(0, at - 3) : at])
    else:
        yield from (name for name in names if name != value)


def _linings(layers: tuple[tuple[str, float], ...], system: str) -> Iterator[str]:
    """One layer thicker, the last first; then one of a material that stands more heat; then such a one put first; then
    lighter ones, which heat up sooner."""
    made = []
    for at, (name, thickness_m) in reversed([*enumerate(layers)]):
        sold_m = [_sold_m(name, thickness_m * times, system) for times in THICKER]
        made += [(*layers[:at], (name, thick_m), *layers[at + 1 :]) for thick_m in dict.fromkeys(sold_m)]
    for at, (name, thickness_m) in enumerate(layers):
        made += [
            (*layers[:at], (other, _thick_m(other, thickness_m, system)), *layers[at + 1 :])
            for other in _standing(name)
        ]
    made += [((other, _thick_m(other, 0.0, system)), *layers) for other in _standing(layers[0][0]) if other in BRICKS]
    for each in (*made, *_lighter(layers, system)):
        yield ", ".join(f"{name} {show(thick, 'length', system, exact=True)}" for name, thick in each)


def _lighter(layers: tuple[tuple[str, float], ...], system: str) -> Iterator[tuple[tuple[str, float], ...]]:
    """The hot face thinner; of what weighs less, what stands most heat first; left out; all of fibre."""
    (face, thick_m), *behind = layers
    yield from (((face, _sold_m(face, thick_m * times, system)), *behind) for times in THINNER if face not in BRICKS)
    less = [one for one in map(material, material_keys()) if one.density_kg_m3 < material(face).density_kg_m3]
    for other in sorted(less, key=lambda one: -one.limit_K)[:MOST_MATERIALS]:
        yield (other.key, _thick_m(other.key, thick_m, system)), *behind
    if behind:
        yield tuple(behind)
    if {name for name, _ in layers} != {FIBRE}:
        yield ((FIBRE, _sold_m(FIBRE, sum(thick_m for _, thick_m in layers), system)),)


def _standing(name: str) -> list[str]:
    """A few materials that stand more than one, what stands least first."""
    above = [one for one in map(material, material_keys()) if one.limit_K > material(name).limit_K]
    return [one.key for one in sorted(above, key=lambda one: one.limit_K)[:MOST_MATERIALS]]


def _sold_m(name: str, thickness_m: float, system: str) -> float:
    """The next thickness that is sold or cast: bricks flat, on edge and laid twice, fibre in half inches (12.5 mm)."""
    if name in BRICKS:
        sold_m = next((inches * INCH_M for inches in BRICKS_IN if inches * INCH_M >= thickness_m - 1e-4), thickness_m)
        return sold_m if system == "in" else round(sold_m + 1e-9, 3)
    sheet_m, cast_m = (INCH_M / 2, INCH_M / 8) if system == "in" else (0.0125, 0.001)
    step_m = sheet_m if name in SHEETS else cast_m
    sold_m = max(round(thickness_m / step_m), 1) * step_m
    return sold_m if system == "in" else round(sold_m + 1e-9, 3)


def _thick_m(name: str, thickness_m: float, system: str) -> float:
    """As thick as before, as near as it is sold or cast."""
    return _sold_m(name, max(thickness_m, BRICK_M) if name in BRICKS else thickness_m, system)


def _stepped(setting: Setting, value: float, steps: int, system: str) -> str | None:
    """The value so many steps on, on its marks; None beyond what may be set."""
    low, high = limits(setting)
    if setting.whole:
        found = value + steps * int(float((setting.step or ("1",))[0]))
        text = f"{found:.0f}"
    else:
        unit, si_unit = shown_unit(setting.dimension, system), si_unit_of(setting.dimension)
        inches, millimetres = setting.step or ("1", "1")
        typed = millimetres if system == "mm" else inches
        step = parse_quantity(typed, setting.dimension, setting.key) - to_si(0, unit, si_unit)
        step = abs(from_si(step + to_si(0, unit, si_unit), unit, si_unit)) or 1.0
        number = from_si(value, unit, si_unit)
        sign = 1 if steps > 0 else -1
        # To the next mark, then on by whole steps.
        mark = number / step
        first = int(mark + 1e-9) + 1 if sign > 0 else -int(-mark + 1e-9) if mark != int(mark) else int(mark) - 1
        found_at = (first + sign * (abs(steps) - 1)) * step
        found = to_si(found_at, unit, si_unit)
        text = show(found, setting.dimension, system, exact=True) if unit == "in" else f"{found_at:.10g} {unit}".strip()
    if (low is not None and found < low - 1e-12) or (high is not None and found > high + 1e-12):
        return None
    return text


def _fewer(bench: _Bench, changes: Changes) -> Changes:
    """Without each change that is not needed, those of the question first; none merely trades a fault for another."""
    for one in sorted(changes, key=lambda change: change[0] not in QUESTION):
        less = tuple(other for other in changes if other != one)
        if _worth(bench, less) <= _worth(bench, changes):
            changes = less
    return changes


def _worth(bench: _Bench, changes: Changes) -> tuple[int, int]:
    stops, cautions = bench.rank(changes)
    return stops, cautions + bench.spoilt(changes)


def _of_fewer_settings(bench: _Bench, changes: Changes) -> Changes:
    """The same by fewer settings: one or two of these moved otherwise, or what is mended once more where one is not
    moved. As they are where that is not found."""
    changes, before = _fewer(bench, changes), None
    while len(changes) >= SOME and changes != before:
        before, worth = changes, _worth(bench, changes)
        for look, most in ((_of_one_or_two, PAIRS_SPARING), (_without_one, AGAIN_SPARING)):
            bench.most = bench.solves + most
            for made in look(bench, changes):
                if len(made) < len(changes) and bench.rank(made, worth) <= worth and _worth(bench, made) <= worth:
                    changes = made
                    break
                if bench.spent:
                    break
            if changes != before:
                break
    return changes


def _of_one_or_two(bench: _Bench, changes: Changes) -> Iterator[Changes]:
    for count in (1, 2):
        if count < len(changes):
            for kept in combinations(changes, count):
                yield from _same_way(bench, kept)


def _without_one(bench: _Bench, changes: Changes) -> Iterator[Changes]:
    """What is mended once more where one of these is not moved, those of the question first."""
    for key, _ in sorted(changes, key=lambda change: change[0] not in QUESTION):
        rest = tuple(change for change in changes if change[0] != key)
        still = (QUESTION if not {one for one, _ in changes} & QUESTION else STAYS) | {key}
        yield _fewer(bench, _mend(bench, rest, still))


def _same_way(bench: _Bench, kept: Changes) -> Iterator[Changes]:
    """One or two settings moved the way that they are, the nearest to how far they are first."""
    texts = [_on_the_way(bench.base.design, key, text) for key, text in kept]
    here = [each.index(text) if text in each else len(each) - 1 for (_, text), each in zip(kept, texts)]

    def off(places: tuple[int, ...]) -> int:
        return sum(abs(at - now) for at, now in zip(places, here))

    for places in sorted(product(*map(range, map(len, texts))), key=off)[:MOST_SAME_WAY]:
        yield tuple((key, each[at]) for (key, _), each, at in zip(kept, texts, places))


def _on_the_way(design: Design, key: str, text: str) -> list[str]:
    """Texts the way that a setting is moved; the one that it is moved to, where it has no steps."""
    value, moved = design.value(key), parse_setting(BY_KEY[key], text)
    if not all(isinstance(one, (int, float)) for one in (value, moved)):
        return [text]
    return list(texts_of(design, BY_KEY[key], "raise" if moved > value else "lower", CLOSE_STEPS)) or [text]


def _smaller(bench: _Bench, changes: Changes) -> Changes:
    """Each change that has steps made as small as does the same."""
    for key, text in changes:
        setting = BY_KEY[key]
        value = bench.base.design.value(key)
        if setting.choices or not setting.step or isinstance(value, str) or value is None:
            continue
        moved = bench.result(changes).design.value(key)
        if isinstance(moved, str):
            continue
        sign = 1 if moved > value else -1
        for steps in range(1, STEPS[-1] + 1):
            nearer = _stepped(setting, value, sign * steps, bench.base.design.sizes)
            if nearer is None or nearer == text:
                break
            made = tuple((k, nearer if k == key else t) for k, t in changes)
            if not bench.refused(made) and _worth(bench, made) <= _worth(bench, changes):
                changes = made
                break
    return changes


def verdicts(result: Result) -> Mapping[str, str]:
    """{check: verdict} of what a result tells."""
    return {check.key: check.verdict for check in result.told}
