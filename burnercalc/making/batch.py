"""A batch of burners on one calendar: hands, moulds, oven and test stands, with nights and days off."""

import heapq
from bisect import bisect_right
from dataclasses import dataclass, field, replace
from functools import lru_cache
from itertools import product
from math import ceil, inf

from ..errors import require

DAY_MIN = 1440
OPENS_MIN = 9 * 60  # work begins at 9: an example
FREE_MIN = 15  # to free the pins of a block: an example
WEIGH_MIN = 10  # to weigh what is in the oven: an example
WEIGHED_APART_MIN = 60  # between its two weighings, at the least
BY_HAND = ("weld", "mould", "cast", "free", "strip", "trim", "clear", "weigh")
ATTENDED = ("fire", "test")  # a pair of hands stands by
WATCH = 1  # the pair that stands by the fires
# In the order they are told.
STEPS = ("weld", "mould", "cast", "free", "strip", "trim", "air", "clear", "oven", "weigh", "fire", "test")


@dataclass(frozen=True)
class Work:
    """What one burner takes, in whole minutes: six steps by hand, three waits, and the heats of its first fire.

    `cure` runs from casting to stripping, `air` from trimming to clearing; an oven charge takes `oven` however many
    blocks are in it. `mould` is for each mould. `free` runs from the end of casting till the pins are freed, 0 where
    nothing is. `weigh` runs from the start of a charge to the end of its hold, when it is weighed the second time; 0
    where nothing is. Both take hands besides, FREE_MIN and twice WEIGH_MIN. `test` is the test fire on the morning
    after the last heat, 0 where there is none. `warm` is the last part of `air`, in gentle warmth: it begins while the
    shop is open, for somebody carries the block there, in no time that is booked; it goes on over night. `damp`: air
    and warm as they were in damp air, both 0 where it is damp.
    """

    weld: int
    mould: int
    cast: int
    strip: int
    trim: int
    clear: int
    cure: int
    air: int
    oven: int
    heats: tuple[int, ...]
    free: int = 0
    weigh: int = 0
    test: int = 0
    warm: int = 0
    damp: tuple[int, int] = (0, 0)


@dataclass(frozen=True)
class Means:
    """What the shop has: moulds, places in the oven, test stands, pairs of hands, and its working hours.

    `day_min` minutes of work from OPENS_MIN on, on the first `week` days of the week; the first day of the plan is day
    `weekday` of it, 0 for Monday. `off`: numbers of further days off, 0 for the first of the plan. `kiln`: the oven is
    a kiln in which the blocks of a charge make their first fires too, all together; it takes the next charge on the
    morning after, and a stand is for test fires alone.
    """

    moulds: int = 1
    oven_places: int = 1
    test_stands: int = 1
    hands: int = 1
    day_min: int = 9 * 60
    week: int = 7
    weekday: int = 0
    kiln: bool = False
    off: frozenset[int] = frozenset()


@dataclass(frozen=True)
class Job:
    """Something done to some burners (numbers from 1; of a mould its own number), from and to in minutes; by which pair
    of hands, from 1, 0 for none."""

    step: str
    burners: tuple[int, ...]
    start: int
    end: int
    pair: int = field(default=0, compare=False)


@dataclass(frozen=True)
class Plan:
    """`jobs` in order of their start, then of STEPS; `days` till the last burner is fired and tested, and the first."""

    jobs: tuple[Job, ...]
    days: int
    first_days: int
    rule: tuple = field(default=(), compare=False)  # of RULES, that it was made by

    @property
    def moulds(self):
        """How many are made: fewer than there may be where one more saves no day."""
        return len({job.burners for job in self.jobs if job.step == "mould"})


# What may be done in more than one way, each tried. An oven charge that is not full starts at the last moment of the
# "day", or waits until it is "full". Burners are fired as soon as they are "ready", when the stands are "full", or
# "last", when no work by hand can be done. Then the order of the steps by hand, most urgent first; "mould" makes one
# when a welded burner waits for it, "spare" before that. The first is the order for one burner, the rest
# for more: two further rules were shorter in none of 90 random shops.
RULES = (
    ("day", "ready", ("trim", "strip", "clear", "cast", "mould", "weld", "spare")),
    ("day", "ready", ("trim", "spare", "strip", "clear", "cast", "weld")),
    ("day", "last", ("trim", "strip", "clear", "cast", "spare", "weld")),
    ("day", "full", ("trim", "strip", "cast", "mould", "clear", "weld", "spare")),
    ("full", "ready", ("trim", "spare", "strip", "clear", "cast", "weld")),
    ("day", "last", ("trim", "strip", "clear", "cast", "mould", "weld", "spare")),
    ("full", "full", ("trim", "strip", "cast", "mould", "clear", "weld", "spare")),
)
# For time: above DOZEN burners, or LONG_MIN of work by hand in all, no more rules and smaller shops are tried after so
# many days gone through, and no more shorter days after so many more, each day as many times as there are hands, and
# two. A shop looked at counts LOOK.
DOZEN, LONG_MIN, MOST_DAYS, MOST_DAYS_MORE = 12, 200 * 60, 4000, 300
LOOK = 0.05
PAIRS = (20, 12, 8, 7, 6, 5, 4, 3, 2, 1)  # of hands: of 9 to 11 eight have work, for time
LACKS = ("moulds", "oven_places", "test_stands", "hands")


@lru_cache(maxsize=64)
def plan(burners: int, work: Work, means: Means) -> Plan:
    """The shortest calendar that simple rules find for a batch of like burners, with what the shop has or part of it.

    Steps by hand take one pair of hands, are not broken over a night, and begin on a morning when they are longer than
    a day; welding, and what is longer than a day, goes on the next day. The pair that casts a block is there again when
    its pins are freed, welding broken off for it; where the day is too short for both, a block is cast on a morning and
    freed after hours. A mould is taken from casting to stripping; it is made when a welded burner waits for one. Waits
    run day and night. Blocks that go into the oven together start cold together; the oven is held on until somebody has
    weighed them twice, on the next day of work where hold or hands end before. While burners are fired one pair of
    hands stands by all of them; a heat begins when work does. From the morning after its last heat a burner waits on
    its stand for its test fire: whoever stands by a fire that morning makes it first, one after the other; else it is
    work by hand of the day. One that is longer than a day begins on a morning and is stood by to its end. A test fire
    leaves the chamber hot, where the next block's bound water would turn to steam at once: no heat begins on that stand
    before the next morning. In a kiln the blocks stay from the oven on, and are fired as soon as someone can.

    Fewer days off, but for none at all, hardly ever take longer: one more is tried, and another.

    Drier air never takes longer: a calendar for damp air serves in dry air too, the blocks waiting meanwhile.

    Up to DOZEN burners that take no more than LONG_MIN by hand, owning more never takes longer: the best is taken over
    all of _fewer, which grow with what is owned. Above, only less of one kind is tried, as long as MOST_DAYS last, so
    that it may.

    Arguments:
        burners   how many >= 1
        work      of one burner; Work
        means     of the shop; Means
    Returns: Plan; of equals one that makes the fewest moulds
    Raises: InputError for batch_size, moulds, oven_places, test_stands, hands, day_hours, work_week
    Source: list scheduling, the best of a few rules: common practice; no proof that nothing is shorter
    Checked by: tests/test_making_batch.py (all orders of small batches, one or two days shorter at most; by hand)
    """
    require(burners >= 1, "batch_size", burners, "must be 1 or more", "1")
    for which in LACKS:
        require(getattr(means, which) >= 1, which, getattr(means, which), "must be 1 or more", "1")
    require(0 < means.day_min <= DAY_MIN - OPENS_MIN, "day_hours", f"{means.day_min} min", "must be up to 15 h", "9 h")
    require(1 <= means.week <= 7, "work_week", means.week, "must be 1 to 7 days", "5")
    whole, spare = _whole(burners, work, means), _Spare(burners, work, means, MOST_DAYS)
    best = _made(burners, work, whole, inf, spare)
    if _many(burners, work):
        best = _shortest(burners, work, best, _one_kind_less(burners, means), whole, spare, [best.rule])
        best = _shortest(burners, work, best, _one_kind_less(burners, means), whole, spare)
    else:
        best = _shortest(burners, work, best, _fewer(burners, means), whole, spare)
    if burners == 1:
        return best
    best = _with_one_more_off(burners, work, _in_shorter_days(burners, work, best, whole), whole)
    return _as_if_damp(burners, work, best, whole)


def _as_if_damp(burners, work, best, means):
    """The best plan, or that of damp air where it ends sooner, which lays the order of the work otherwise."""
    air, warm = work.damp
    slower = replace(work, air=air, warm=warm, damp=(0, 0))
    if not air or _least_days(burners, slower, means) >= best.days:
        return best
    other = plan(burners, slower, means)
    if other.days >= best.days:
        return best
    jobs = (replace(job, end=_aired(job.start, work, means)) if job.step == "air" else job for job in other.jobs)
    return replace(other, jobs=tuple(jobs))


def _in_shorter_days(burners, work, best, whole):
    """The best plan, or one by which hands leave some hours earlier, every day, where that ends sooner.

    A longer day moves what is begun first, and by that, rarely, all that follows. A block that can be cast on one day
    is never cast on two. Where all is tried, less of what the shop has is tried in those hours too.
    """
    rules = (best.rule,) if _many(burners, work) else RULES[1:]
    for hours in range(ceil(whole.day_min / 60) - 1, 0, -1):
        some = replace(whole, day_min=60 * hours)
        if some.day_min < work.cast <= whole.day_min:
            break
        if _least_days(burners, work, some) < best.days:
            spare = _Spare(burners, work, some, MOST_DAYS_MORE)
            best = _made(burners, work, some, best.days, spare, rules) or best
            if not _many(burners, work):
                best = _shortest(burners, work, best, _fewer(burners, some), whole, spare)
    return best


def _with_one_more_off(burners, work, best, whole):
    """The best plan, or one that leaves another day off too, where days are off and that ends sooner: a day more of
    work moves what is begun first, and by that, rarely, all that follows."""
    off, left = whole.off, float(MOST_DAYS)
    for day in range(best.days if off and not _many(burners, work) else 0):
        some = replace(whole, off=off | {day})
        if left > 0 and day not in off and day < best.days and _least_days(burners, work, some) < best.days:
            spare = _Spare(burners, work, some, MOST_DAYS)
            spare.days = left
            if found := _made(burners, work, some, best.days, spare, RULES[1:]):
                best, off = found, off | {day}
            left = spare.days
    return best


class _Spare:
    """Days that may still be gone through, and what has been, by rule.

    A shop in which nothing of what it has more of was ever wanted has the calendar of the smaller one. Up to DOZEN
    burners, where all is tried, what was gone through for one plan serves all others with these hours.
    """

    def __init__(self, burners, work, means, most_days):
        many = _many(burners, work)
        self.days = most_days / (means.hands + 2) if many else inf
        self.gone_through = {} if many else _gone_through(burners, work, _hours(means))

    def known(self, rule, means, under):
        """(whether it is known, the Plan in fewer days or None)."""
        for least, most, days, made in self.gone_through.get(rule, ()):
            if (made or days >= under) and all(map(_within, least, _all_four(means), most)):
                return True, made if made and made.days < under else None
        return False, None

    def keep(self, rule, means, under, calendar, made):
        """What a calendar needed at the least, and whether more of it would have changed anything."""
        has = _all_four(means)
        least = tuple(min(need, own) for need, own in zip(calendar.needed, has))
        most = tuple(own if need >= own else inf for need, own in zip(calendar.needed, has))
        self.gone_through.setdefault(rule, []).append((least, most, under, made))


@lru_cache(maxsize=16)
def _gone_through(burners, work, hours):
    return {}


def _all_four(means):
    return means.moulds, means.oven_places, means.test_stands, means.hands


def _within(least, number, most):
    return least <= number <= most


def _shortest(burners, work, best, shops, whole, spare, rules=()):
    """The best plan of these shops, or `best` where none is shorter, nor as short with fewer moulds and all else."""
    for some in shops:
        if spare.days <= 0:
            break
        spare.days -= LOOK
        fewer_moulds = some.moulds < best.moulds and replace(some, moulds=whole.moulds) == whole
        under = best.days + fewer_moulds
        if _least_days(burners, work, some) < under:
            best = _made(burners, work, some, under, spare, rules) or best
    return best


def _fewer(burners, means):
    """What the shop has, then less of it: of each kind only numbers that spare a round, of hands PAIRS.

    With 7 moulds twelve burners are cast in two rounds, as with 6. So these are few, and those of a larger shop hold
    all those of a smaller one.
    """
    for some in product(*_numbers(burners, means)):
        yield replace(means, **dict(zip(LACKS, some)))


def _many(burners, work):
    """Is it too much for all to be tried, whatever the shop has?"""
    by_hand = work.weld + work.cast + work.strip + work.trim + work.clear
    return burners > DOZEN or (burners > 1 and burners * by_hand > LONG_MIN)


def _whole(burners, work, means):
    """All that the shop has; where all is tried the largest of _fewer, which does as much."""
    return means if _many(burners, work) else next(_fewer(burners, means))


def _numbers(burners, means):
    """Of each of LACKS the numbers that are tried, from the most."""
    useful = sorted({ceil(burners / some) for some in range(1, burners + 1)}, reverse=True)
    numbers = [[n for n in useful if n <= getattr(means, which)] for which in LACKS[:3]]
    return [*numbers, [n for n in PAIRS if n <= min(means.hands, 2 * burners)]]


def _one_kind_less(burners, means):
    """Shops with less of one kind and all else."""
    for which, numbers in zip(LACKS, _numbers(burners, means)):
        yield from (replace(means, **{which: n}) for n in reversed(numbers) if n < getattr(means, which))


def _least_days(burners, work, means):
    """Days that no calendar with these means can be shorter than, by what is short: hands, moulds, oven or stands."""
    moulds, charges, stands = (ceil(burners / getattr(means, which)) for which in LACKS[:3])
    least = _least_of(work, means)
    return 1 + max(
        least.by_stands(stands),
        least.by_moulds(moulds),
        least.by_oven(charges),
        least.by_hands(burners, charges if means.kiln else stands, means.hands),
    )


class _Least:
    """The least days of a calendar by one thing at a time, each worked out once; the hours are those of `means`."""

    def __init__(self, work, alone, means):
        self.work, self.means = work, means
        self.fires = max(1, sum(max(1, ceil(heat / DAY_MIN)) for heat in work.heats))
        welded, moulded = _ends(0, work.weld, means, split=True), _ends(0, work.mould, means)
        if alone:
            one_by_one = _ends(welded, work.mould, means), _ends(moulded, work.weld, means, split=True)
            welded = moulded = min(one_by_one)
        self.free = max(welded, moulded)
        self.cleared = self.dried(self._cast(self.free) + work.cure)
        self.by_stands = lru_cache(lambda count: self.burnt(self.baked(self.cleared), count))
        self.by_moulds, self.by_oven, self.by_hands = map(lru_cache, (self._moulds, self._oven, self._hands))

    def burnt(self, ready, count):
        """Day on which so many fires one after the other are over and tested that may begin at a moment; in a kiln they
        are one, and the tests one after the other."""
        day, test = self.morning(ready) // DAY_MIN, bool(self.work.test)
        fires, tests = (1, count * test) if self.means.kiln else (count, count * test)
        last = day + fires * self.fires + tests - 1
        worked = self.later(day, fires * len(self.work.heats) + tests - 1)
        return max(worked, _working(last, self.means) if test else last)

    def charged(self, ready, charges):
        """Day on which so many charges of a kiln are fired and the last is tested, the first fired at a moment."""
        day = self.later(self.morning(ready) // DAY_MIN, (charges - 1) * (len(self.work.heats) + 1))
        day = max(day, self.morning(ready) // DAY_MIN + (charges - 1) * (self.fires + 1))
        return self.burnt(day * DAY_MIN, 1)

    def later(self, day, number):
        """So many days of work after one."""
        weeks, rest = (0, number) if self.means.off else divmod(number, self.means.week)
        day += 7 * weeks
        for _ in range(rest):
            day = _working(day + 1, self.means)
        return day

    def by_hand(self, day, minutes, hands):
        """When so much work by hand can be done at the soonest that begins on a day of work."""
        full = max(ceil(minutes / (hands * self.means.day_min)) - 1, 0)
        rest = minutes - full * hands * self.means.day_min
        return self.later(day, full) * DAY_MIN + OPENS_MIN + ceil(rest / hands)

    def after_casting(self, ready):
        """Day on which the burner is tested whose block has been cast at a moment, the last of all."""
        return self.burnt(self.baked(self.dried(ready + self.work.cure)), 1)

    def morning(self, ready):
        """When work begins next."""
        return _working(ceil((ready - OPENS_MIN) / DAY_MIN), self.means) * DAY_MIN + OPENS_MIN

    def _cast(self, ready):
        work, means = self.work, self.means
        after = work.free + FREE_MIN if work.free else 0
        if work.cast + after > means.day_min and after:
            return _ends(self.morning(ready), work.cast, means)
        return _ends(ready, work.cast + after, means) - after

    def baked(self, ready):
        """When it comes out of the oven at the soonest that is cleared at a moment."""
        takes = self.work.oven
        return _ends(ready, takes, self.means) if takes <= self.means.day_min else self.morning(ready) + takes

    def dried(self, ready):
        """When a burner is dry and its ports are clear whose block may be stripped at that moment."""
        trimmed = _ends(_ends(ready, self.work.strip, self.means), self.work.trim, self.means)
        return _ends(_aired(trimmed, self.work, self.means), self.work.clear, self.means)

    def _moulds(self, rounds):
        free = self.free
        for _ in range(rounds - 1):
            free = _ends(self._cast(free) + self.work.cure, self.work.strip, self.means)
        return self.after_casting(self._cast(free))

    def _oven(self, charges):
        if self.means.kiln:
            return self.charged(self.baked(self.cleared), charges)
        in_a_day = max(1, self.means.day_min // self.work.oven) if self.work.oven else charges
        begun = self.later(_working(self.cleared // DAY_MIN, self.means), ceil(charges / in_a_day) - 1)
        return self.burnt(begun * DAY_MIN + OPENS_MIN + self.work.oven, 1)

    def _hands(self, burners, fires, hands):
        work, means = self.work, self.means
        by_hand = burners * (work.weld + work.cast + work.strip + work.trim + work.clear) + work.mould
        by_hand += fires * sum(min(heat, means.day_min) for heat in work.heats)
        cast = self.by_hand(_working(0, means), burners * (work.weld + work.cast) + work.mould, hands)
        return max(self.by_hand(_working(0, means), by_hand, hands) // DAY_MIN, self.after_casting(cast))


def _least_of(work, means):
    return _least(work, means.hands == 1, _hours(means))


@lru_cache(maxsize=32)
def _least(work, alone, hours):
    return _Least(work, alone, hours)


def _hours(means):
    """A shop of these hours, with one of all else."""
    return replace(means, **dict.fromkeys(LACKS, 1))


def _working(day, means):
    """That day, or the first day of work after it."""
    while (means.weekday + day) % 7 >= means.week or day in means.off:
        day += 1
    return day


def _aired(trimmed, work, means):
    """When a block is dry that is trimmed at a moment: into the warmth when the shop is open."""
    at = trimmed + work.air - work.warm
    if work.warm:
        day = at // DAY_MIN
        late = at % DAY_MIN > OPENS_MIN + means.day_min
        at = max(at, _working(day + late, means) * DAY_MIN + OPENS_MIN)
    return at + work.warm


def _ends(ready, takes, means, split=False):
    """When something by hand can end at the soonest that could begin at a moment."""
    while True:
        day = _working(ready // DAY_MIN, means)
        opens = day * DAY_MIN + OPENS_MIN
        start, closes = max(ready, opens), opens + means.day_min
        if start + takes <= closes:
            return start + takes
        if (split and start < closes) or (takes > means.day_min and start == opens):
            takes, split = takes - (closes - start), True
        ready = (day + 1) * DAY_MIN


def _made(burners, work, means, under, spare, rules=()):
    """By the best of the rules, else of all; the rest is left where one comes to the least days that there can be.

    None where no rule takes less than so many days, or no days are left to try it.
    """
    least, best = _least_days(burners, work, means), None
    for rule in rules or (RULES[:1] if burners == 1 else RULES[1:]):
        if under < inf and spare.days <= 0:
            break
        known, made = spare.known(rule, means, under)
        if not known:
            calendar = _Calendar(burners, work, means, *rule)
            made = calendar.made(under)
            made = made and replace(made, rule=rule)
            spare.days -= calendar.gone
            spare.keep(rule, means, under, calendar, made)
        if made:
            best = made if best is None else min(best, made, key=_length)
            under = best.days + 1
            if best.days == least:
                break
    return best


def _length(made):
    return made.days, made.moulds, max(job.end for job in made.jobs), sum(job.end for job in made.jobs)


def _days(minutes):
    return minutes // DAY_MIN + 1


def _cold(end):
    """The morning on which a stand is cold after a fire that ends at a moment."""
    return ceil((end - OPENS_MIN) / DAY_MIN) * DAY_MIN + OPENS_MIN


def _first_after(waiting, now):
    """The next moment after now at which one of those that wait, in order, is ready; none or one."""
    at = bisect_right(waiting, (now, inf))
    return [waiting[at][0]] if at < len(waiting) else []


class _Calendar:
    """One run through the days by one rule; `made` gives its Plan."""

    def __init__(self, burners, work, means, oven_rule, fire_rule, order):
        self.burners, self.work, self.means = burners, work, means
        self.oven_rule, self.fire_rule, self.order = oven_rule, fire_rule, order
        at = order.index("weld")
        self.steps = *order[:at], "test", *order[at:]
        self.takes = {step: getattr(work, "mould" if step == "spare" else step) for step in self.steps}
        self.jobs = []
        # (ready, burner) of each step
        self.waiting = {step: [] for step in ("cast", "strip", "trim", "clear", "oven", "fire", "test")}
        self.paused = []  # (step, number, minutes left, when it was left), over a night
        self.begun = {"weld": 0, "mould": 0}
        self.moulds = []  # when each that is not in use is free
        self.stands = [0] * means.test_stands  # when each is free
        self.oven_free = self.dried = self.fired = self.cast = 0
        self.heats = []  # (start, end) of the fires that have begun or are to come, till the morning after
        self.pins = []  # for each pair of hands (when, whose) it has to free today
        self.busy = []  # for each pair of hands until when
        self.charge = None  # (burners, start, when weighed first) of what is in the oven
        self.weigh_at = inf  # when it is to be weighed next
        self.nothing = None, inf  # when hands last found nothing to do, and till when: another pair need not look again
        self.gone = 0  # days of work
        # Of each of LACKS what it takes that this calendar comes out; more of what it has than that changes nothing.
        self.needed = [1, 1, 1, 1]
        self.stand_of = {}  # of each burner that is fired or waits for its test
        self.least = _least_of(work, means)

    def made(self, under=inf):
        """The plan; None as soon as it is sure to take so many days."""
        day = 0
        while self.fired < self.burners or self.waiting["test"]:
            if self._works(day):
                if self._least_days(day) >= under:
                    return None
                self._day(day)
                self.gone += 1
            day += 1
        last = {job.burners[0]: job.end for job in self.jobs if job.step == ("test" if self.work.test else "fire")}
        jobs = tuple(sorted(self.jobs, key=lambda job: (job.start, STEPS.index(job.step), job.burners)))
        return Plan(jobs, _days(max(last.values())), _days(min(last.values())))

    def _least_days(self, day):
        """What it takes at the least from here: by what burners the furthest behind need, and by the stands."""
        opens, work, left = day * DAY_MIN + OPENS_MIN, self.work, self.burners - self.fired
        if not left:
            return day + 1
        lit = opens if self.waiting["fire"] else opens + DAY_MIN
        if self.means.kiln:
            last = self.least.charged(lit, ceil(left / self.means.oven_places))
        else:
            last = self.least.burnt(max(lit, min(self.stands)), ceil(left / self.means.test_stands))
        least, waiting, ready = self.least, self.waiting, lit
        uncast = self.burners - self.cast
        if uncast:
            held = work.cast + work.cure + work.strip
            ready = opens + (ceil(uncast / self.means.moulds) - 1) * held + work.cast + work.cure
            by_hand = (self.burners - self.begun["weld"]) * work.weld + uncast * work.cast
            ready = max(ready, least.by_hand(day, by_hand, self.means.hands) + work.cure)
            ready = least.baked(least.dried(ready))
        elif waiting["strip"]:
            ready = least.baked(least.dried(max(opens, waiting["strip"][-1][0])))
        elif waiting["clear"]:
            ready = least.baked(_ends(max(opens, waiting["clear"][-1][0]), work.clear, self.means))
        return 1 + max(last, self.least.burnt(ready, 1))

    def _works(self, day):
        return _working(day, self.means) == day

    def _day(self, day):
        opens = day * DAY_MIN + OPENS_MIN
        closes = opens + self.means.day_min
        self.heats = [heat for heat in self.heats if heat[1] > opens]
        self.pins = [[] for _ in range(self.means.hands)]
        begin = self._light(day, opens, closes)
        watch = max((end for start, end in self.heats if start <= begin and opens < end), default=opens)
        # Whose turn it is: (minute, pair of hands, or one more for the oven), so that hands come first.
        oven, self.busy = self.means.hands, [watch] + [opens] * (self.means.hands - 1)
        turns = [*zip(self.busy, range(oven)), (max(opens, self.oven_free), oven)]
        heapq.heapify(turns)
        while turns:
            now, which = heapq.heappop(turns)
            if now > closes:
                break
            if which == oven:
                after = self._oven(now, opens, closes, turns)
            elif now < self.busy[which]:  # asked twice
                continue
            else:
                after = self._hand(now, opens, closes, turns, which)
            if after <= closes:
                heapq.heappush(turns, (after, which))
        self.jobs += [
            Job("free", (burner,), at, at + FREE_MIN, pair)
            for pair, pins in enumerate(self.pins, 1)
            for at, burner in pins
        ]

    def _light(self, day, opens, closes):
        """Begin first fires this morning: beside one that goes on for nothing, else as the rule has it.

        Whoever stands by a fire tests first what has cooled down, as long as the day is; returns when that is done.
        """
        cold = [burner for at, burner in self.waiting["test"] if at <= opens]
        cold = cold[: max(1, self.means.day_min // self.work.test)] if cold else []
        if self.means.kiln:
            cold = cold[: self._cold_stands(opens, len(cold))]
        late = len(cold) * self.work.test > self.means.day_min  # one that is longer than a day
        taken = {self.stand_of[burner] for _, burner in self.waiting["test"]} if not self.means.kiln else {}
        free = [i for i, at in enumerate(self.stands) if at <= opens and i not in taken]
        waits = [each for each in self.waiting["fire"] if each[0] <= opens]
        ready = waits if self.means.kiln else waits[: len(free)]
        if waits and not self.means.kiln:
            left = self.burners - self.fired
            enough = len(free) >= left if self.fire_rule == "full" else len(free) >= len(waits)
            wants = (left if self.fire_rule == "full" else len(waits)) if enough else len(free)
            self._needs(2, len(self.stands) - len(free) + wants)
        lit = any(start <= opens < end for start, end in self.heats)
        cold = [] if cold and lit and not self._later(opens, len(cold) * self.work.test) else cold
        begin = opens + len(cold) * self.work.test
        heats = self._heats_from(day, begin)
        if late or (self.charge and self._nobody(heats, max(self.weigh_at, opens))):
            ready = []  # who stands by the fire cannot weigh
        if self.means.kiln:
            go = True
        elif self.fire_rule == "full":
            go = len(ready) == min(len(free), self.burners - self.fired)
        else:
            go = self.fire_rule == "ready" or self._choose(opens, opens, closes, closes, 0, tests=False) is None
        if not lit and not (ready and go):
            return opens
        for n, burner in enumerate(cold):
            start = opens + n * self.work.test
            self.jobs.append(Job("test", (burner,), start, start + self.work.test, WATCH))
            self._tested(burner, start + self.work.test)
        self.waiting["test"] = [each for each in self.waiting["test"] if each[1] not in cold]
        if late:
            self.heats.append((opens, begin))
        for stand, (at, burner) in zip(ready if self.means.kiln else free, ready):
            self.waiting["fire"].remove((at, burner))
            self.heats += heats
            self.jobs += [Job("fire", (burner,), start, end, WATCH) for start, end in heats]
            if self.means.kiln:
                self.oven_free = _cold(heats[-1][1])
            else:
                self.stands[stand], self.stand_of[burner] = heats[-1][1], stand
            self.fired += 1
            if self.work.test:
                self.waiting["test"].append((_cold(heats[-1][1]), burner))
                self.waiting["test"].sort()
        return begin

    def _later(self, opens, by):
        """Have the further heats of this morning begin later by so much, for a test fire takes both hands; whether they
        can: none burns from the day before, and each is cold by the same morning."""
        going = [heat for heat in self.heats if heat[0] <= opens < heat[1]]
        if by > self.means.day_min or any(start < opens or _cold(end + by) > _cold(end) for start, end in going):
            return False
        self.heats = [(start + by, end + by) if (start, end) in going else (start, end) for start, end in self.heats]
        self.jobs = [
            replace(job, start=job.start + by, end=job.end + by) if job.step == "fire" and job.start == opens else job
            for job in self.jobs
        ]
        ends = {end for _, end in going}
        self.stands = [at + by if at in ends else at for at in self.stands]
        return True

    def _tested(self, burner, end):
        """The stand of a burner is free when its chamber, hot from the test fire, is cold; after a kiln any that is."""
        stand = self.stands.index(min(self.stands)) if self.means.kiln else self.stand_of[burner]
        self.stands[stand] = _cold(end)

    def _cold_stands(self, now, wanted):
        """How many stands a burner from the kiln can be tested on."""
        cold = sum(at <= now for at in self.stands)
        self._needs(2, len(self.stands) - cold + wanted)
        return cold

    def _heats_from(self, day, begin):
        """(start, end) of the heats of a fire that is lit on a day, the first at that moment."""
        heats = []
        for number, lasts in enumerate(self.work.heats):
            day = _working(day, self.means)
            start = day * DAY_MIN + OPENS_MIN if number else begin
            heats.append((start, start + lasts))
            day += max(1, ceil(lasts / DAY_MIN))
        return heats

    def _nobody(self, heats, at):
        """Do these heats leave nobody to weigh what is to be weighed at that moment, or on the next morning of work?"""
        if not self.work.weigh:
            return False
        if self.means.hands > 1:
            self._needs(3, 2)
            return False
        day = at // DAY_MIN
        if not self._works(day) or at % DAY_MIN + WEIGHED_APART_MIN + WEIGH_MIN > OPENS_MIN + self.means.day_min:
            day = _working(day + 1, self.means)
        at = max(at, day * DAY_MIN + OPENS_MIN)
        return any(start < at + WEIGHED_APART_MIN + WEIGH_MIN and at < end for start, end in heats)

    def _hand(self, now, opens, closes, turns, pair):
        """Give a free pair of hands something to do; when it is free again, or asks again."""
        pins = self.pins[pair]
        if pins and pins[0][0] <= now:
            _, burner = pins.pop(0)
            self.jobs.append(Job("free", (burner,), now, now + FREE_MIN, pair + 1))
            return self._takes(pair, now + FREE_MIN)
        until = min(pins[0][0], closes) if pins else closes
        # All that changes begins or ends with a job.
        state = now, len(self.jobs), until, pins[-1] if pins else None
        if state == self.nothing[0]:
            return self.nothing[1]
        chosen = self._choose(now, opens, closes, until, pair)
        if chosen is None:
            later = [at for step in ("cast", "strip", "trim", "clear") for at in _first_after(self.waiting[step], now)]
            later += [at for at, which in turns if which < self.means.hands and at > now]
            later += [at for at in (*self.moulds, self.weigh_at, *(at for at, _ in pins[:1])) if at > now]
            self.nothing = state, min(later, default=inf)
            return self.nothing[1]
        step, number, left, _ = chosen
        if step == "weigh":
            return self._takes(pair, self._weigh(now, turns, pair))
        if left is None:
            left = getattr(self.work, step)
            if step in self.begun:
                self.begun[step] += 1
                if step == "mould":
                    self._needs(0, self.begun[step])
            else:
                del self.waiting[step][0]
            if step == "cast":
                self.cast += 1
                self.moulds.remove(min(self.moulds))
        else:
            self.paused.remove(chosen)
        end = now + left if step == "test" else min(now + left, until)
        self.jobs.append(Job(step, (number,), now, end, pair + 1))
        if end < now + left:
            self.paused.append((step, number, now + left - end, end))
        else:
            if end > closes:
                self.heats.append((now, end))  # a test fire is stood by to its end
            self._done(step, number, end, pair)
        return self._takes(pair, end)

    def _takes(self, pair, until):
        self.busy[pair] = until
        self._needs(3, pair + 1)
        return until

    def _needs(self, which, number):
        self.needed[which] = max(self.needed[which], number)

    def _choose(self, now, opens, closes, until, pair, tests=True):
        """(step, number, minutes left, when left) of what goes first now, both None at its beginning; None: nothing.

        Test fires go before welding and what is behind it.
        """
        short = self.means.day_min < WEIGHED_APART_MIN + WEIGH_MIN
        if self.weigh_at <= now and now + WEIGH_MIN <= until and (self._weighed_by(now) <= closes or short):
            return "weigh", 0, None, None
        welding = None
        for one in self.paused:
            if one[3] <= now < until:
                if one[0] != "weld":
                    return one
                welding = welding or one
        waiting, takes, day_min = self.waiting, self.takes, self.means.day_min
        for step in self.steps if tests else self.order:
            queue = waiting.get(step)
            if queue is not None and (not queue or queue[0][0] > now):
                continue
            if step == "weld" and welding:
                return welding
            if (
                now + takes[step] <= until
                or (step == "weld" and now < until)
                or (takes[step] > day_min and now == opens)
            ):
                number = self._next(step, now)
                if number and (step != "cast" or not self.work.free or self._freed(now, opens, closes, pair)):
                    return "mould" if step == "spare" else step, number, None, None
        return None

    def _freed(self, now, opens, closes, pair):
        """Can this pair of hands be there when the pins of a block that it begins to cast now are freed?"""
        ends = self.work.cast + self.work.free + FREE_MIN
        if ends > self.means.day_min:
            return now == opens  # after hours, and not late
        pins = self.pins[pair]
        return now + ends <= closes and not (pins and now + ends - FREE_MIN < pins[-1][0] + FREE_MIN)

    def _weigh(self, now, turns, pair):
        """Weigh what is in the oven; after the second time it cools."""
        burners, start, first = self.charge
        end = now + WEIGH_MIN
        self.jobs.append(Job("weigh", burners, now, end, pair + 1))
        if first is None:
            self._weighed_next(self._weighed_by(now) - WEIGH_MIN, (burners, start, now), turns)
            return end
        self.charge, self.weigh_at = None, inf
        self._dried(burners, start, now + self.work.oven - self.work.weigh)
        heapq.heappush(turns, (self.oven_free, self.means.hands))
        return end

    def _weighed_by(self, now):
        """When the second weighing ends; both are on one day where it is long enough."""
        _, start, first = self.charge
        return (now if first else max(now + WEIGHED_APART_MIN, start + self.work.weigh)) + WEIGH_MIN

    def _weighed_next(self, at, charge, turns):
        """Have every pair of hands asked then."""
        self.weigh_at, self.charge, self.oven_free = at, charge, inf
        for pair in range(self.means.hands):
            heapq.heappush(turns, (at, pair))

    def _next(self, step, now):
        """Number of the burner or mould that a step could begin on; 0 for none."""
        if step == "weld":
            return self.begun["weld"] + 1 if self.begun["weld"] < self.burners else 0
        if step in ("mould", "spare"):
            if self.begun["mould"] >= min(self.means.moulds, self.burners):
                return 0
            wanted = step == "spare" or (self._ready("cast", now) and not self._mould(now))
            return self.begun["mould"] + 1 if wanted else 0
        if step == "cast" and not self._mould(now):
            return 0
        if step == "test" and self.means.kiln and not (self._ready(step, now) and self._cold_stands(now, 1)):
            return 0
        return self._ready(step, now)

    def _mould(self, now):
        return any(at <= now for at in self.moulds)

    def _ready(self, step, now):
        """Number of the burner that has waited longest for a step by hand; 0 for none. Those that wait are in order."""
        waiting = self.waiting[step]
        return waiting[0][1] if waiting and waiting[0][0] <= now else 0

    def _done(self, step, number, end, pair):
        if step == "mould":
            self.moulds.append(end)
        if step == "test":
            self._tested(number, end)
        if step in ("mould", "test"):
            return
        if step == "strip":
            self.moulds.append(end)
        if step == "cast" and self.work.free:
            pins = self.pins[pair]
            pins.append((max([end + self.work.free, *(at + FREE_MIN for at, _ in pins)]), number))
        if step == "trim":
            self.jobs.append(Job("air", (number,), end, _aired(end, self.work, self.means)))
        ready = {"cast": end + self.work.cure, "trim": _aired(end, self.work, self.means)}.get(step, end)
        then = {"weld": "cast", "cast": "strip", "strip": "trim", "trim": "clear", "clear": "oven"}[step]
        self.waiting[then].append((ready, number))
        self.waiting[then].sort()

    def _oven(self, now, opens, closes, turns):
        """Start a charge, or say when to look again."""
        if self.oven_free > now:
            return inf
        takes, left = self.work.oven, self.burners - self.dried
        ready = [each for each in self.waiting["oven"][: self.means.oven_places] if each[0] <= now]
        last = opens if takes > self.means.day_min else closes - takes  # moment of the day to start it at
        full = len(ready) == min(self.means.oven_places, left)
        self._needs(1, len(ready) + (len(ready) < min(self.means.oven_places, left)))
        weighed = now + max(self.work.weigh - WEIGHED_APART_MIN, 0)
        starts = ready and now <= last and (full or (self.oven_rule == "day" and now == last))
        if starts and not self._nobody(self.heats, weighed):
            self.waiting["oven"] = [each for each in self.waiting["oven"] if each not in ready]
            burners = tuple(burner for _, burner in ready)
            if self.work.weigh:
                self._weighed_next(weighed, (burners, now, None), turns)
                return inf
            self._dried(burners, now, now + takes)
            return now + takes
        later = [at for at, which in turns if which < self.means.hands]
        later += [last, *_first_after(self.waiting["oven"], now)]
        return min((at for at in later if at > now), default=inf)

    def _dried(self, burners, start, end):
        self.jobs.append(Job("oven", burners, start, end))
        self.oven_free = inf if self.means.kiln else end  # a kiln is free when its fires are over
        self.dried += len(burners)
        self.waiting["fire"] += [(end, burner) for burner in burners]


def moulds_for(burners, work, means):
    """The fewest moulds with which casting by itself takes no longer than oven, stands or hands do: for a batch that
    nobody asked the calendar of, and without one.

    Checked by: tests/test_making_batch.py
    """
    most = min(means.moulds, burners)
    least = _least_of(work, means)
    charges, stands = ceil(burners / means.oven_places), ceil(burners / means.test_stands)
    fires = charges if means.kiln else stands
    other = max(least.by_stands(stands), least.by_oven(charges), least.by_hands(burners, fires, means.hands))
    return next((n for n in range(1, most) if least.by_moulds(ceil(burners / n)) <= other), most)


@lru_cache(maxsize=256)
def one_more(burners: int, work: Work, means: Means, which: str, count: int) -> Plan:
    """The plan with so many more of one of LACKS, or without where that is shorter.

    Checked by: tests/test_making_batch.py
    """
    less = plan(burners, work, means) if count == 1 else one_more(burners, work, means, which, count - 1)
    has = getattr(means, which) + count
    more = replace(means, **{which: has})
    if _many(burners, work):  # as it will be told to whoever has it
        return min(less, plan(burners, work, more), key=_length)
    whole, spare = _whole(burners, work, more), _Spare(burners, work, means, MOST_DAYS_MORE)
    # Those of the smaller shop are tried already.
    tried = getattr(_whole(burners, work, replace(means, **{which: has - 1})), which)
    return _shortest(
        burners, work, less, (one for one in _fewer(burners, more) if getattr(one, which) > tried), whole, spare
    )
