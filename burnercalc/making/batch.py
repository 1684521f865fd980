"""A batch of burners on one calendar: hands, moulds, oven and test stands, with nights and days off."""

import heapq
from bisect import bisect_right
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import islice, zip_longest
from math import ceil, inf

from ..errors import require

DAY_MIN = 1440
OPENS_MIN = 9 * 60  # work begins at 9: an example
FREE_MIN = 15  # to free the pins of a block: an example
BY_HAND = ("weld", "mould", "cast", "strip", "trim", "clear")
STEPS = ("weld", "mould", "cast", "free", "strip", "trim", "air", "clear", "oven", "fire")  # in the order they are told


@dataclass(frozen=True)
class Work:
    """What one burner takes, in whole minutes: six steps by hand, three waits, and the heats of its first fire.

    `cure` runs from casting to stripping, `air` from trimming to clearing; an oven charge takes `oven` however many
    blocks are in it. `mould` is for each mould. `free` runs from the end of casting till the pins are freed, 0 where
    nothing is; the FREE_MIN for that are part of `cast`, and no hands are taken for them again.
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


@dataclass(frozen=True)
class Means:
    """What the shop has: moulds, places in the oven, test stands, pairs of hands, and its working hours.

    `day_min` minutes of work from OPENS_MIN on, on the first `week` days of the week; the first day of the plan is day
    `weekday` of it, 0 for Monday.
    """

    moulds: int = 1
    oven_places: int = 1
    test_stands: int = 1
    hands: int = 1
    day_min: int = 9 * 60
    week: int = 7
    weekday: int = 0


@dataclass(frozen=True)
class Job:
    """Something done to some burners (numbers from 1; of a mould its own number), from and to in minutes."""

    step: str
    burners: tuple[int, ...]
    start: int
    end: int


@dataclass(frozen=True)
class Plan:
    """`jobs` in order of their start, then of STEPS; `days` to the end of the last fire and to that of the first."""

    jobs: tuple[Job, ...]
    days: int
    first_days: int

    @property
    def moulds(self):
        """How many are made: fewer than there may be where one more saves no day."""
        return len({job.burners for job in self.jobs if job.step == "mould"})

    def pairs(self):
        """Which pair of hands does each job, 0 for none: the first that is free; one stands by all that burns."""
        free, given, watcher = [], [], 0
        for job in self.jobs:
            if job.step not in (*BY_HAND, "fire"):
                given.append(0)
                continue
            pair = watcher if job.step == "fire" and watcher < len(free) and free[watcher] > job.start else None
            if pair is None:
                pair = next((i for i, until in enumerate(free) if until <= job.start), len(free))
            if job.start == job.end:  # takes no time: nobody else is needed for it
                pair = min(pair, max(len(free) - 1, 0))
            free += [0] * (pair + 1 - len(free))
            free[pair] = max(free[pair], job.end)
            watcher = pair if job.step == "fire" else watcher
            given.append(pair + 1)
        return tuple(given)


# What may be done in more than one way, each tried. An oven charge that is not full starts at the last moment of the
# "day", or waits until it is "full". Burners are fired as soon as they are "ready", when the stands are "full", or
# "last", when no work by hand can be done. Then the order of the steps by hand, most urgent first; "mould" makes one
# when a welded burner waits for it, "spare" before that. The first is the order for one burner.
RULES = (
    ("day", "ready", ("trim", "strip", "clear", "cast", "mould", "weld", "spare")),
    ("day", "ready", ("trim", "spare", "strip", "clear", "cast", "weld")),
    ("day", "last", ("trim", "strip", "clear", "cast", "spare", "weld")),
    ("day", "full", ("trim", "strip", "cast", "mould", "clear", "weld", "spare")),
    ("full", "ready", ("trim", "spare", "strip", "clear", "cast", "weld")),
    ("day", "last", ("trim", "strip", "clear", "cast", "mould", "weld", "spare")),
    ("full", "full", ("trim", "strip", "cast", "mould", "clear", "weld", "spare")),
    ("day", "ready", ("trim", "spare", "clear", "cast", "weld", "strip")),
)
MANY, FOR_MANY = 30, 3  # burners above which only so many of the first rules are tried, for time
FEWER = (1, 2, 3, 4, 6, 8, 12, 16, 24)  # moulds
LESS = 120  # burners in all, of the batches that are planned with less than the shop has: few of many, for time


def plan(burners: int, work: Work, means: Means) -> Plan:
    """The shortest calendar that simple rules find for a batch of like burners, with what the shop has or part of it.

    Steps by hand take one pair of hands, are not broken over a night, and begin on a morning when they are longer than
    a day; welding, and what is longer than a day, goes on the next day. A block is cast so early that its pins can be
    freed on the same day, where the day is long enough for both. A mould is taken from casting to stripping; it
    is made when a welded burner waits for one. Waits run day and night. Blocks that go into the oven together start
    cold together. While burners are fired one pair of hands stands by all of them; a heat begins when work does.

    Arguments:
        burners   how many >= 1
        work      of one burner; Work
        means     of the shop; Means
    Returns: Plan
    Raises: InputError for batch_size, moulds, oven_places, test_stands, hands, day_hours, work_week
    Source: list scheduling, the best of a few rules: common practice; no proof that nothing is shorter
    Checked by: tests/test_making_batch.py (all orders of small batches, one or two days shorter at most; by hand)
    """
    require(burners >= 1, "batch_size", burners, "must be 1 or more", "1")
    for field in ("moulds", "oven_places", "test_stands", "hands"):
        require(getattr(means, field) >= 1, field, getattr(means, field), "must be 1 or more", "1")
    require(0 < means.day_min <= DAY_MIN - OPENS_MIN, "day_hours", f"{means.day_min} min", "must be up to 15 h", "9 h")
    require(1 <= means.week <= 7, "work_week", means.week, "must be 1 to 7 days", "5")
    some = [*_some_of(burners, means), *_fewer_moulds(burners, work, means)]
    return min((_made(burners, work, each) for each in some), key=lambda one: one.days)  # of equals with all there is


def _some_of(burners, means):
    """What the shop has, and less of one kind: a second mould takes time to make, and may cost more than it saves.

    One less of each first, then few of each: so a shop with one more tries mostly what the smaller one tries.
    """
    less = []
    for which in LACKS:
        own = min(getattr(means, which), burners)
        less.append([replace(means, **{which: number}) for number in (own - 1, *range(1, own - 1)) if number])
    in_turn = (some for each in zip_longest(*less) for some in each if some is not None)
    return [means, *islice(in_turn, LESS // burners)]


def _fewer_moulds(burners, work, means):
    """The best two of the same few numbers of moulds in every shop, by the first rule: many moulds are worth making
    seldom, and how many are is not told by one less."""
    own = min(means.moulds, burners)
    fewer = [replace(means, moulds=number) for number in FEWER if number < own - 1]
    return sorted(fewer, key=lambda one: _made(burners, work, one, 1).days)[:2]


@lru_cache(maxsize=256)
def _made(burners, work, means, most_rules=None):
    rules = 1 if burners == 1 else len(RULES) if burners <= MANY else FOR_MANY
    return min((_Calendar(burners, work, means, *rule).made() for rule in RULES[: most_rules or rules]), key=_length)


def _length(made):
    return made.days, max(job.end for job in made.jobs), sum(job.end for job in made.jobs)


def _days(minutes):
    return minutes // DAY_MIN + 1


def _first_after(waiting, now):
    """The next moment after now at which one of those that wait, in order, is ready; none or one."""
    at = bisect_right(waiting, (now, inf))
    return [waiting[at][0]] if at < len(waiting) else []


class _Calendar:
    """One run through the days by one rule; `made` gives its Plan."""

    def __init__(self, burners, work, means, oven_rule, fire_rule, order):
        self.burners, self.work, self.means = burners, work, means
        self.oven_rule, self.fire_rule, self.order = oven_rule, fire_rule, order
        self.jobs = []
        self.waiting = {step: [] for step in ("cast", "strip", "trim", "clear", "oven", "fire")}  # (ready, burner)
        self.paused = []  # (step, number, minutes left, when it was left), over a night
        self.begun = {"weld": 0, "mould": 0}
        self.moulds = []  # when each that is not in use is free
        self.stands = [0] * means.test_stands  # when each is free
        self.oven_free = self.dried = self.fired = 0
        self.heats = []  # (start, end) of the fires that have begun or are to come, till the morning after
        self.nothing = None  # when hands last found nothing to do: another pair need not look again

    def made(self):
        day = 0
        while self.fired < self.burners:
            if self._works(day):
                self._day(day)
            day += 1
        last = {job.burners[0]: job.end for job in self.jobs if job.step == "fire"}
        jobs = tuple(sorted(self.jobs, key=lambda job: (job.start, STEPS.index(job.step), job.burners)))
        return Plan(jobs, _days(max(last.values())), _days(min(last.values())))

    def _works(self, day):
        return (self.means.weekday + day) % 7 < self.means.week

    def _day(self, day):
        opens = day * DAY_MIN + OPENS_MIN
        closes = opens + self.means.day_min
        self.heats = [heat for heat in self.heats if heat[1] > opens]
        self._light(day, opens, closes)
        watch = max((end for start, end in self.heats if start <= opens < end), default=opens)
        # Whose turn it is: (minute, 0 for hands and 1 for the oven), so that hands come first.
        turns = [(opens, 0)] * (self.means.hands - 1) + [(watch, 0), (max(opens, self.oven_free), 1)]
        heapq.heapify(turns)
        while turns:
            now, which = heapq.heappop(turns)
            if now <= closes:
                after = (self._oven if which else self._hand)(now, opens, closes, turns)
                if after <= closes:
                    heapq.heappush(turns, (after, which))

    def _light(self, day, opens, closes):
        """Begin first fires this morning: beside one that goes on for nothing, else as the rule has it."""
        free = [i for i, at in enumerate(self.stands) if at <= opens]
        ready = [each for each in self.waiting["fire"] if each[0] <= opens][: len(free)]
        lit = any(start <= opens < end for start, end in self.heats)
        if self.fire_rule == "full":
            go = len(ready) == min(len(free), self.burners - self.fired)
        else:
            go = self.fire_rule == "ready" or self._choose(opens, opens, closes) is None
        if not ready or not (lit or go):
            return
        for stand, (at, burner) in zip(free, ready):
            self.waiting["fire"].remove((at, burner))
            on = day
            for lasts in self.work.heats:
                while not self._works(on):
                    on += 1
                start = on * DAY_MIN + OPENS_MIN
                self.heats.append((start, start + lasts))
                self.jobs.append(Job("fire", (burner,), start, start + lasts))
                on += max(1, ceil(lasts / DAY_MIN))
            self.stands[stand] = start + lasts
            self.fired += 1

    def _hand(self, now, opens, closes, turns):
        """Give a free pair of hands something to do; when it is free again, or asks again."""
        state = now, len(self.jobs)  # all that changes begins or ends with a job
        chosen = None if state == self.nothing else self._choose(now, opens, closes)
        if chosen is None:
            self.nothing = state
            later = [at for step in ("cast", "strip", "trim", "clear") for at in _first_after(self.waiting[step], now)]
            later += [at for at, which in turns if not which and at > now] + [at for at in self.moulds if at > now]
            return min(later, default=inf)
        step, number, left, _ = chosen
        if left is None:
            left = getattr(self.work, step)
            if step in self.begun:
                self.begun[step] += 1
            else:
                del self.waiting[step][0]
            if step == "cast":
                self.moulds.remove(min(self.moulds))
        else:
            self.paused.remove(chosen)
        end = min(now + left, closes)
        self.jobs.append(Job(step, (number,), now, end))
        if end < now + left:
            self.paused.append((step, number, now + left - end, end))
        else:
            self._done(step, number, end)
        return end

    def _choose(self, now, opens, closes):
        """(step, number, minutes left, when left) of what goes first now, both None at its beginning; None: nothing."""
        on = [each for each in self.paused if each[3] < opens and now < closes]
        for one in on:
            if one[0] != "weld":
                return one
        for step in self.order:
            if step == "weld" and on:
                return on[0]
            number = self._next(step, now)
            step = "mould" if step == "spare" else step
            takes = getattr(self.work, step)
            free = self.work.free + FREE_MIN if step == "cast" and self.work.free else 0
            if number and (
                now + takes + (free if takes + free <= self.means.day_min else 0) <= closes
                or (step == "weld" and now < closes)
                or (takes > self.means.day_min and now == opens)
            ):
                return step, number, None, None
        return None

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
        return self._ready(step, now)

    def _mould(self, now):
        return any(at <= now for at in self.moulds)

    def _ready(self, step, now):
        """Number of the burner that has waited longest for a step by hand; 0 for none. Those that wait are in order."""
        waiting = self.waiting[step]
        return waiting[0][1] if waiting and waiting[0][0] <= now else 0

    def _done(self, step, number, end):
        if step == "mould":
            self.moulds.append(end)
            return
        if step == "strip":
            self.moulds.append(end)
        if step == "cast" and self.work.free:
            self.jobs.append(Job("free", (number,), end + self.work.free, end + self.work.free + FREE_MIN))
        if step == "trim":
            self.jobs.append(Job("air", (number,), end, end + self.work.air))
        wait = {"cast": self.work.cure, "trim": self.work.air}.get(step, 0)
        then = {"weld": "cast", "cast": "strip", "strip": "trim", "trim": "clear", "clear": "oven"}[step]
        self.waiting[then].append((end + wait, number))
        self.waiting[then].sort()

    def _oven(self, now, opens, closes, turns):
        """Start a charge, or say when to look again."""
        takes, left = self.work.oven, self.burners - self.dried
        ready = [each for each in self.waiting["oven"][: self.means.oven_places] if each[0] <= now]
        last = opens if takes > self.means.day_min else closes - takes  # moment of the day to start it at
        full = len(ready) == min(self.means.oven_places, left)
        if ready and now <= last and (full or (self.oven_rule == "day" and now == last)):
            self.waiting["oven"] = [each for each in self.waiting["oven"] if each not in ready]
            burners = tuple(burner for _, burner in ready)
            self.jobs.append(Job("oven", burners, now, now + takes))
            self.oven_free = now + takes
            self.dried += len(ready)
            self.waiting["fire"] += [(now + takes, burner) for burner in burners]
            return now + takes
        later = [at for at, which in turns if not which] + [last, *_first_after(self.waiting["oven"], now)]
        return min((at for at in later if at > now), default=inf)


LACKS = ("moulds", "oven_places", "test_stands", "hands")


def one_more(burners: int, work: Work, means: Means, which: str, count: int = 1) -> Plan:
    """The plan with so many more of one of LACKS; never longer, for what is in the way need not be used.

    Checked by: tests/test_making_batch.py
    """
    found = plan(burners, work, means)
    for more in range(1, count + 1):
        found = min(found, plan(burners, work, replace(means, **{which: getattr(means, which) + more})), key=_length)
    return found
