"""What if: how a design moves over the tolerances of bench, blower and day, and in how many shops it stays good.

The sample is seeded: the same design gives the same shops.
"""

from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from random import Random
from typing import Any

from ..burner import Burner
from ..design import Design, limits
from ..parts.lighting_day import AS_SET, BACK, Margins, in_another
from ..result import Result, solve
from ..rules import broken
from ..settings import BY_KEY

SEED, SHOPS = 1, 100
BUILDING = "fire"  # the room whose checks are of the days of building, which a smith can choose
WORDS = ("stop", "caution")  # worse than good, the worst first


@dataclass(frozen=True)
class Tolerance:
    """How far a setting is off in a shop like yours: from `low` to `high`, added, or as a share of it.

    `steps`: how many values of it the sample uses; few where each makes the whole chamber anew.
    """

    label: str
    keys: tuple[str, ...]
    low: float
    high: float
    share: bool
    steps: int = 0


# Common practice all.
TOLERANCES = (
    Tolerance("pins thinner or thicker", ("port_diameter",), -0.2e-3, 0.2e-3, False),
    Tolerance("block thinner or thicker", ("block_thickness",), -2e-3, 2e-3, False),
    Tolerance("jet passes less or more gas", ("jet_discharge_coefficient",), -0.05, 0.05, False),
    Tolerance("gas pressure", ("gas_pressure",), -0.05, 0.05, True),
    Tolerance("blower weaker", ("blower_shutoff_pressure", "blower_free_flow", "blower_curve"), -0.10, 0.0, True),
    Tolerance("mixture", ("equivalence_ratio",), -0.02, 0.02, False, 3),
    Tolerance("altitude", ("altitude",), 0.0, 300.0, False, 2),
    Tolerance("colder or warmer day", ("ambient_temperature",), -15.0, 10.0, False, 3),
)
# The four numbers whose tornado is drawn: name, what it is read from.
NUMBERS = {
    "fire at its gas pressure": "jet.rate_W",
    "spread between ports": "shares.spread",
    "turndown": "holding.turndown",
    "blower against its need": "blower.times",
}


@dataclass(frozen=True)
class Swing:
    """A number at the low and the high end of a tolerance; None where it has none."""

    number: str
    tolerance: str
    at_low: float | None
    as_set: float | None
    at_high: float | None

    @property
    def reach(self) -> float:
        known = [value for value in (self.at_low, self.as_set, self.at_high) if value is not None]
        return max(known) - min(known) if known else 0.0


@dataclass(frozen=True)
class Worse:
    """A check that turns worse in some shops: in how many, the worst verdict, and what it says in one of them."""

    key: str
    label: str
    verdict: str
    shops: int
    text: str


@dataclass(frozen=True)
class Sample:
    """In how many of the shops every check is good, and what is worse in some than as designed, the worst first.

    `stops` and `cautions`: of the design itself. `cards`: what becomes of its lighting card, made once, in how many of
    those that can be built; none where there is none to judge. `unlit`: a check of lighting stops the design itself.
    """

    shops: int
    good: int
    worse: tuple[Worse, ...]
    stops: int = 0
    cautions: int = 0
    cards: tuple[tuple[str, int], ...] = ()
    unlit: bool = False

    @property
    def lights(self) -> str:
        """In how many the lighting card holds, and what happens in the others."""
        if self.unlit:
            return " But it must not be lit as it is: a check of lighting stops it."
        if not self.cards:
            return ""
        held = dict(self.cards).get(HOLDS, 0)
        rest = " or ".join(what for what, _ in self.cards if what != HOLDS)
        others = f"; in the others {rest}" if rest else ""
        return f" Its lighting card, made once, holds in {held} of {self.shops}{others}."

    @property
    def begins_good(self) -> bool:
        return not (self.stops or self.cautions)

    @property
    def head(self) -> str:
        if self.begins_good:
            return f"Stays good in {self.good} of {self.shops} shops like yours.{self.lights}"
        faults = [(self.stops, "stop"), (self.cautions, "caution")]
        said = ", ".join(f"{count} {word}{'s' if count > 1 else ''}" for count, word in faults if count)
        are = "is" if self.good == 1 else "are"
        of_all = f"Of {self.shops} shops like yours {self.good} {are} good."
        return f"Is not good to begin with: {said}. {of_all}{self.lights}"

    @property
    def worst(self) -> str:
        return "What happens in the rest" if self.begins_good else "What gets worse still"

    @property
    def sentence(self) -> str:
        if not self.worse:
            return self.head
        first = self.worse[0]
        the_worst = "The worst in the rest" if self.begins_good else "The worst that gets worse still"
        return f"{self.head} {the_worst} ({first.shops}; one of them): {first.text}"


def built(result: Result) -> Design:
    """The design with what the numbers chose fixed, as it is once it is built: its firing rate and its jet."""
    design = result.design
    chosen = {"firing_rate": result.part("firing").rate_W, "jet_drill": result.part("jet").drill_name}
    return Design({**design.values(), **chosen}, design.texts)


def moved(design: Design, offs: Mapping[Tolerance, float]) -> Design | None:
    """The design as a shop makes it; None where a rule refuses it. A setting stays within what may be set."""
    values = design.values()
    for tolerance, off in offs.items():
        for key in tolerance.keys:
            values[key] = off_by(key, values[key], off, tolerance.share)
    if next(iter(broken(values)), None) is not None:
        return None
    return Design(values, design.texts)


def off_by(key: str, value: Any, off: float, share: bool) -> Any:
    if key == "blower_curve":
        return value and tuple((flow * (1 + off), pressure * (1 + off)) for flow, pressure in value)
    found = value * (1 + off) if share else value + off
    low, high = limits(BY_KEY[key])
    return min(max(found, found if low is None else low), found if high is None else high)


def tornado(design: Design) -> tuple[Swing, ...]:
    """Each number over each tolerance alone, for each number the longest swing first."""
    design = built(solve(design))
    base = _at_its_pressure(solve(design))
    design, ends = base.design, {}
    for tolerance in TOLERANCES:
        shops = [moved(design, {tolerance: off}) for off in (tolerance.low, tolerance.high)]
        ends[tolerance] = [_numbers(solve(shop, base)) if shop else {} for shop in shops]
    as_set = _numbers(base)
    swings = [
        Swing(number, one.label, low.get(number), as_set[number], high.get(number))
        for number in NUMBERS
        for one, (low, high) in ends.items()
    ]
    order = list(NUMBERS)
    return tuple(sorted(swings, key=lambda swing: (order.index(swing.number), -swing.reach)))


def _at_its_pressure(result: Result) -> Result:
    """The design with its gas at the pressure told for high fire, as a smith sets it; a line gives its own at most."""
    jet, line = result.part("jet"), result.part("gas_line").there
    if jet.high_Pa is None:
        return result
    told_Pa = min(jet.high_Pa, jet.gauge_Pa) if line else jet.high_Pa
    return solve(Design({**result.design.values(), "gas_pressure": told_Pa}, result.design.texts), result)


def _numbers(result: Result) -> dict[str, float | None]:
    found = {}
    for number, at in NUMBERS.items():
        part, attribute = at.split(".")
        value = getattr(result.part(part), attribute)
        found[number] = getattr(value, "value", value)
    return found


def sample(
    design: Design, shops: int = SHOPS, seed: int = SEED, progress: Callable[[int, int], None] | None = None
) -> Sample:
    """So many shops, each off by chance within all tolerances; which are good, and which turn a check worse."""
    design = built(solve(design))
    base = solve(design)
    as_designed = {key: _badness(check.verdict) for key, check in base.checks.items() if check.room != BUILDING}
    good, count = 0, Counter[str]()
    worst: dict[str, tuple[int, str, str, str]] = {}
    before, card, cards = base, card_of(base), Counter[str]()
    for done, offs in enumerate(drawn(shops, seed)):
        if progress:
            progress(done, shops)
        shop = moved(design, offs)
        if shop is None:
            count["built"] += 1
            worst["built"] = (2, "Built at all", "stop", "It cannot be built so.")
            continue
        before = solve(shop, before)
        worse_than = {key: as_designed.get(key, 0) for key in before.checks if before.checks[key].room != BUILDING}
        bad = [
            (key, before.checks[key]) for key, word in worse_than.items() if _badness(before.checks[key].verdict) > word
        ]
        good += not any(_badness(before.checks[key].verdict) for key in worse_than)
        cards[card(before) if card else ""] += 1
        for key, check in bad:
            count[key] += 1
            if _badness(check.verdict) > worst.get(key, (0,))[0]:
                worst[key] = (_badness(check.verdict), check.label, check.verdict, check.text)
    worse = [Worse(key, label, word, count[key], text) for key, (_, label, word, text) in worst.items()]
    worse.sort(key=lambda one: (WORDS.index(one.verdict), -one.shops, one.key))
    words = Counter(as_designed.values())
    stops = [one for one in base.checks.values() if one.verdict == "stop" and one.room == BUILDING]
    unlit = any(not one.declared.lit for one in stops)
    return Sample(shops, good, tuple(worse), words[2], words[1], tuple(cards.most_common()) if card else (), unlit)


HOLDS, RUNS_BACK, GOES_OUT = "holds", "the flame may run back", "even a torch may not hold the flame"


def card_of(base: Result) -> Callable[[Result], str] | None:
    """What becomes of the lighting card of a design in a shop like yours. Another card would be for another burner: its
    mark and pressure stay. None where there is none, and behind a guard, which shuts the gas."""
    kept = card_margins(base.parts)
    if kept is None:
        return None
    slide, gauges, own = (base.part(name) for name in ("lighting_slide", "gauges", "tries"))

    def there(shop: Result) -> str:
        found = in_another(slide, gauges, own, shop.part("tries"))
        lost = [limit for limit in sorted(kept, key=lambda one: found[one]) if found[limit] < 0]
        return HOLDS if not lost else RUNS_BACK if AS_SET[lost[0]] == BACK else GOES_OUT

    return there


def card_margins(burner: Burner) -> Margins | None:
    """How far the lighting card, as set, is inside the limits that it keeps at home; None where card_of is."""
    slide, gauges, own = (burner.part(name) for name in ("lighting_slide", "gauges", "tries"))
    if slide.ratio is None or slide.rate_W is None or slide.gas_Pa is None or burner.part("lit_by") == "guard":
        return None
    at_home = in_another(slide, gauges, own, own)
    return {limit: at_home[limit] for limit in AS_SET if at_home.get(limit, -1.0) >= 0}


def drawn(shops: int, seed: int = SEED) -> list[dict[Tolerance, float]]:
    """How far each tolerance is off in so many shops; fewer are some of the same."""
    dice = Random(seed)
    found = [{tolerance: _draw(tolerance, dice) for tolerance in TOLERANCES} for _ in range(shops)]
    # Shops that share the day and the mixture share the chamber, so they come one after the other.
    return sorted(found, key=lambda offs: tuple(off for tolerance, off in offs.items() if tolerance.steps))


def _draw(tolerance: Tolerance, dice: Random) -> float:
    if tolerance.steps:
        at = dice.randrange(tolerance.steps) / (tolerance.steps - 1)
    else:
        at = dice.random()
    return tolerance.low + at * (tolerance.high - tolerance.low)


def _badness(word: str) -> int:
    return {"caution": 1, "stop": 2}.get(word, 0)
