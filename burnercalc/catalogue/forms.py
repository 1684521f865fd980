"""What a declaration says: the forms in which answers, checks, tables, charts and drawings are declared, once each.

A sentence may hold slots, `{rate:power}`: see sentences.py. A text that has several cases is a dict {case: sentence};
the part or the check says which case it is, and what goes into the slots.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from ..sources import DEFINITION, Source
from ..units import DIMENSIONS

# How near a number stands to the reader: the few that a room opens with, sizes for the bench, numbers for engineers.
NEAR = ("first", "bench", "engineer")
MOVES = ("raise", "lower", "choose")
# What comes of a check that is not heeded, worst first: somebody is hurt (fire, explosion, carbon monoxide), something
# breaks, a piece is made again, the work is a nuisance. Of checks with one verdict the worse harm is told first.
HARMS = ("danger", "damage", "rework", "comfort")

Cures = tuple[tuple[str, str], ...]  # (setting, one of MOVES), most useful first
Words = str | Mapping[str, str]  # a sentence, or one for each case


@dataclass(frozen=True)
class Answer:
    """One number (or word) that the smith reads.

    Attributes:
        key        name in JSON and on the command line
        at         where it is worked out: "part.attribute". A Band there is a value with its band; a Said is a text
        dimension  key of units.DIMENSIONS
        label, meaning   trade words; one sentence
        formula    how it is worked out, in words
        inputs     keys of the settings and answers that go into it
        source     where the formula or figure comes from, and how sure that is
        near       one of NEAR
        cases      {case: sentence} for an answer that is a text
        if_auto    {answer: setting} of those inputs that go in only where that setting is auto
        may_lack   none says that the design has no such thing: it is not shown then
        lacking    what is told where it is none
        digits     significant ones that it is told with, wherever it is told
        at_most    whether its band's upper end, "up to", is what is told where there is room for one figure
        instead    the answer of the same thing in another measure that is shown in its place, where it has a value
        aim        what is good: the check that judges it, and a sentence with that check's {limit}
        to_light   it tells how to light: none of what must not be lit, of a text the case "stopped", else "never"
    """

    key: str
    at: str
    dimension: str
    label: str
    meaning: str
    formula: str
    inputs: tuple[str, ...]
    source: Source
    near: str = "engineer"
    cases: Mapping[str, str] = field(default_factory=dict)
    if_auto: Mapping[str, str] = field(default_factory=dict)
    instead: str = ""
    may_lack: bool = False
    lacking: str = "none"
    at_most: bool = False
    room: str = ""
    digits: int = 0
    aim: tuple[str, str] | tuple[()] = ()
    to_light: bool = False

    def __post_init__(self) -> None:
        assert self.dimension in DIMENSIONS and self.near in NEAR and self.at.count(".") == 1, self.key


@dataclass(frozen=True)
class Check:
    """A verdict on one thing; judged by the function of the same name in checks/.

    Attributes:
        dimension  of the value it judges and of its limit
        label      what is judged
        harm       one of HARMS
        lit        its stop is of what is wanted of the fire, or of the weather to cast in; what is made may be lit
        unmade     its stop is one of what cannot be made at all: told before all else
        cases      {case: whole sentence}; the judgement names one, or several that stand one after the other
        cures      settings that cure it, where they do not depend on the case
        to_light   it tells how to light: of what must not be lit it is told only where it finds fault
    """

    key: str
    dimension: str
    label: str
    harm: str
    source: Source
    cases: Mapping[str, str]
    cures: Cures = ()
    lit: bool = False
    unmade: bool = False
    to_light: bool = False
    room: str = ""

    def __post_init__(self) -> None:
        assert self.dimension in DIMENSIONS and self.harm in HARMS, self.key
        assert all(move in MOVES for _, move in self.cures), self.key


@dataclass(frozen=True)
class Column:
    """A column of a table."""

    key: str
    label: str
    dimension: str

    def __post_init__(self) -> None:
        assert self.dimension in DIMENSIONS, self.key


@dataclass(frozen=True)
class Table:
    """Rows of SI values under columns, e.g. the hole table; filled by the function of the same name in views/.

    Attributes:
        title      over it; a dict where it has cases
        words      {key: sentence} for the cells that are texts
    """

    key: str
    title: Words
    columns: tuple[Column, ...]
    source: Source
    words: Mapping[str, str] = field(default_factory=dict)
    room: str = ""


@dataclass(frozen=True)
class Axis:
    """One side of a chart; `ticks` are (SI value, text) pairs that stand instead of numbers, e.g. names under bars."""

    label: str
    dimension: str
    ticks: tuple[tuple[float, str], ...] = ()

    def __post_init__(self) -> None:
        assert self.dimension in DIMENSIONS, self.label


@dataclass(frozen=True)
class Series:
    """One line of a chart; `kind`: line, band, points, bars. `verdict` colours it as one."""

    key: str
    label: str
    kind: str = "line"
    verdict: str = ""

    def __post_init__(self) -> None:
        assert self.kind in ("line", "band", "points", "bars"), self.key


@dataclass(frozen=True)
class Chart:
    """A chart: axes, the same series for every design, and the sentence that says what it shows, by case."""

    key: str
    title: str
    x: Axis
    y: Axis
    series: tuple[Series, ...]
    cases: Mapping[str, str]
    room: str = ""


@dataclass(frozen=True)
class Drawing:
    """A drawing in millimetres, made by the function of the same name in views/.

    Attributes:
        title, description   a dict where they have cases
        words                {key: sentence} written on it
    """

    key: str
    title: Words
    description: Words
    words: Mapping[str, str] = field(default_factory=dict)
    room: str = ""
    source: Source = DEFINITION
