"""What solving a design yields: answers, checks, tables, charts and drawings, all as plain data."""

from dataclasses import dataclass, field
from math import isfinite

from .units import DIMENSIONS, si_unit_of

# How sure a source is. "calculated": arithmetic or geometry from the settings, exact to them.
TRUST = ("calculated", "published", "memory", "common practice")
VERDICTS = ("good", "caution", "stop")


@dataclass(frozen=True)
class Answer:
    """One number (or word) that the smith reads.

    Attributes:
        value      SI float, int, text, or None where it does not apply
        dimension  key of units.DIMENSIONS
        label, meaning   trade words; one sentence
        formula    how it is worked out, in words
        inputs     keys of the settings and answers that go into it
        source     where the formula or figure comes from
        trust      one of TRUST
        band       (low, high) in SI where the source gives no better than a band
    """

    key: str
    value: object
    dimension: str
    label: str
    meaning: str
    formula: str
    inputs: tuple
    source: str
    trust: str
    band: tuple = ()
    group: str = ""

    @property
    def unit(self):
        return si_unit_of(self.dimension)


@dataclass(frozen=True)
class Change:
    """A setting that cures a check and which way to move it: "raise", "lower" or "choose"."""

    setting: str
    move: str


@dataclass(frozen=True)
class Check:
    """A verdict on one thing: good, caution or stop, the value it saw, the limit, and what to change."""

    key: str
    verdict: str
    value: object
    limit: object
    dimension: str
    label: str
    text: str
    source: str
    trust: str
    changes: tuple = ()
    group: str = ""


@dataclass(frozen=True)
class Column:
    key: str
    label: str
    dimension: str


@dataclass(frozen=True)
class Table:
    """Rows of SI values under columns, e.g. the hole table."""

    key: str
    title: str
    columns: tuple
    rows: tuple
    source: str = ""


@dataclass(frozen=True)
class Axis:
    """One side of a chart; `ticks` are (SI value, text) pairs that stand instead of numbers, e.g. names under bars."""

    label: str
    dimension: str
    low: float = None
    high: float = None
    ticks: tuple = ()


@dataclass(frozen=True)
class Series:
    """One line of a chart (SI values); `kind`: line, band (ys low, ys2 high), points, bars."""

    key: str
    label: str
    xs: tuple
    ys: tuple
    kind: str = "line"
    ys2: tuple = ()
    verdict: str = ""


@dataclass(frozen=True)
class Chart:
    """A chart as data: axes, series, the design marked, and one sentence that says what it shows."""

    key: str
    title: str
    x: Axis
    y: Axis
    series: tuple
    mark: tuple = ()
    sentence: str = ""


class Later(dict):
    """A dict whose values may be functions of no argument; one is called when its value is first asked for."""

    def __getitem__(self, key):
        value = super().__getitem__(key)
        if callable(value):
            value = self[key] = value()
        return value


@dataclass
class Result:
    """Everything known about a design; chapters add to it in the order of the job.

    Charts and drawings are made when they are first asked for, since most readers look at few of them.
    """

    design: object
    answers: dict = field(default_factory=dict)
    checks: dict = field(default_factory=dict)
    tables: dict = field(default_factory=dict)
    charts: dict = field(default_factory=Later)
    drawings: dict = field(default_factory=Later)
    ports: tuple = ()
    group: str = ""  # chapter that is being solved: a key of settings.GROUPS
    places: dict = field(default_factory=dict)  # key of each table, chart and drawing -> its chapter

    def answer(self, key, value, dimension, label, meaning, formula, inputs, source, trust="calculated", band=()):
        """Record an answer and return its value. A float that is not finite is a fault of ours, never shown."""
        assert key not in self.answers, key
        assert dimension in DIMENSIONS and trust in TRUST, (key, dimension, trust)
        if isinstance(value, float) and not isfinite(value):
            raise ArithmeticError(f"{key} is {value}")
        self.answers[key] = Answer(
            key, value, dimension, label, meaning, formula, tuple(inputs), source, trust, tuple(band), self.group
        )
        return value

    def __getitem__(self, key):
        """The SI value of an answer."""
        return self.answers[key].value

    def check(self, key, verdict, value, limit, dimension, label, text, source, trust, changes=()):
        """Record a check; `changes` are (setting, "raise" | "lower" | "choose") pairs, most useful first."""
        assert key not in self.checks and verdict in VERDICTS and trust in TRUST, (key, verdict, trust)
        self.checks[key] = Check(
            key,
            verdict,
            value,
            limit,
            dimension,
            label,
            text,
            source,
            trust,
            tuple(Change(*change) for change in changes),
            self.group,
        )

    def add_table(self, table):
        self.tables[table.key] = table

    @property
    def worst(self):
        """The worst verdict of all checks."""
        return max((check.verdict for check in self.checks.values()), key=VERDICTS.index, default="good")
