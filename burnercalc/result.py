"""What is shown of a design: the catalogue's answers, checks, tables, charts and drawings, filled from its parts.

Nothing else writes to a Result, and each thing is worked out when it is first looked at.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import KW_ONLY, dataclass, replace
from functools import cache
from html import escape
from math import isfinite
from typing import Any

from . import catalogue, checks, views
from .burner import Burner, needs
from .catalogue.lighting import UNLIT
from .catalogue.sentences import Said, measured, written
from .catalogue.weakest import AUTOS, weakest
from .checks.judge import FAULTS, VERDICTS, Judged
from .drawing import shapes
from .drawing.svg import write_svg
from .physics.band import Band
from .units import in_measures, show, si_unit_of
from .views.charted import chart_drawing
from .views.view import Plot, Rows, Say, Shapes

WORKED_OUT = {  # what auto comes to
    "firing_rate": "firing_rate_gross",
    "port_wall_temperature": "port_wall_low",
    "cap_thickness": "cap_made",
}

# What must not be at fault for a drawing to show flames.
FLAME_CHECKS = ("flammable", "flashback_cold", "flashback_hot", "lift", "quenching", "cross_light")


@dataclass(frozen=True)
class _Declared:
    """What a thing of a result has from its declaration, and whose measures it is shown in."""

    declared: Any
    _: KW_ONLY
    on_a_line: bool = False
    unit_system: str = "in"

    @property
    def key(self) -> str:
        return self.declared.key

    @property
    def room(self) -> str:
        return self.declared.room

    @property
    def label(self) -> str:
        return self.declared.label

    @property
    def dimension(self) -> str:
        """As declared, gas pressures in the measure of the gas."""
        return measured(self.declared.dimension, lambda: self.on_a_line)

    @property
    def source(self) -> str:
        return in_measures(self.declared.source.text, self.unit_system)

    @property
    def trust(self) -> str:
        return self.declared.source.trust


@dataclass(frozen=True)
class Answered(_Declared):
    """An answer: SI float, int, text, or None where it does not apply; `band` (low, high) where it has one; `unlit`:
    none as it tells how to light what must not be lit."""

    declared: catalogue.Answer
    weakest: catalogue.Answer  # the least sure of what goes into it, itself where nothing is less sure
    value: Any
    band: tuple[float, float] | tuple[()] = ()
    unlit: bool = False

    def shown(self, value: Any) -> str:
        """The answer's own value, or an end of its band, as a person reads it."""
        if value is None:
            return UNLIT if self.unlit else self.declared.lacking
        return show(value, self.dimension, self.unit_system, self.declared.digits)

    @property
    def brief(self) -> str:
        """Without its band."""
        return self.shown(self.value)

    @property
    def trust(self) -> str:
        """No surer than what goes into it."""
        return self.weakest.source.trust

    @property
    def meaning(self) -> str:
        return in_measures(self.declared.meaning, self.unit_system)

    @property
    def formula(self) -> str:
        return in_measures(self.declared.formula, self.unit_system)

    @property
    def inputs(self) -> tuple[str, ...]:
        return self.declared.inputs

    @property
    def near(self) -> str:
        return self.declared.near

    @property
    def unit(self) -> str:
        """SI unit of value and band."""
        return si_unit_of(self.dimension)


@dataclass(frozen=True)
class Change:
    """A setting that cures a check and which way to move it: "raise", "lower" or "choose". Not `alone` where moved so
    far it brings a stop, unless others follow."""

    setting: str
    move: str
    alone: bool = True


@dataclass(frozen=True)
class Checked(_Declared):
    """A verdict on one thing: one of VERDICTS, the value it saw, the limit, the words, and what to change."""

    declared: catalogue.Check
    verdict: str
    value: float | None
    limit: float | None
    text: str
    changes: tuple[Change, ...] = ()

    @property
    def offered(self) -> tuple[Change, ...]:
        """What cures it alone, and brings no stop."""
        return tuple(change for change in self.changes if change.alone)

    @property
    def fault(self) -> bool:
        """Is there something to change: more than a note?"""
        return self.verdict in FAULTS


@dataclass(frozen=True)
class Tabled(_Declared):
    """Rows of SI values under declared columns."""

    declared: catalogue.Table
    title: str
    rows: tuple[tuple, ...]

    @property
    def columns(self) -> tuple[catalogue.Column, ...]:
        return tuple(_measured(column, self.on_a_line) for column in self.declared.columns)


@dataclass(frozen=True)
class Charted(_Declared):
    """A chart: SI ranges of its axes, data of its declared series, the design's mark, and one sentence."""

    declared: catalogue.Chart
    plot: Plot
    sentence: str

    @property
    def title(self) -> str:
        return self.declared.title

    @property
    def x(self) -> catalogue.Axis:
        return _measured(self.declared.x, self.on_a_line)

    @property
    def y(self) -> catalogue.Axis:
        return _measured(self.declared.y, self.on_a_line)

    def drawing(self) -> shapes.Drawing:
        """The chart as a drawing in black and white."""
        chart = replace(self.declared, x=self.x, y=self.y)
        return chart_drawing(chart, self.plot, self.sentence, self.unit_system)

    def _repr_svg_(self) -> str:
        return write_svg(self.drawing())


class OnDemand(Mapping):
    """A read-only dict whose values are made when first asked for; a key whose value is None is not in it."""

    __slots__ = ("_keys", "_made", "_make")

    def __init__(self, keys: Mapping[str, Any], make: Callable[[str], Any]):
        self._keys = keys
        self._make = make
        self._made: dict[str, Any] = {}

    def __getitem__(self, key):
        if key not in self._keys or (made := self._value(key)) is None:
            raise KeyError(key)
        return made

    def __contains__(self, key):
        return key in self._keys and self._value(key) is not None

    def __iter__(self) -> Iterator[str]:
        return (key for key in self._keys if self._value(key) is not None)

    def __len__(self) -> int:
        return sum(1 for _ in self)

    def _value(self, key):
        if key not in self._made:
            try:
                self._made[key] = self._make(key)
            except KeyError as fault:  # a fault of ours must not read as "not there"
                raise RuntimeError(f"{key} cannot be worked out: {fault!r}") from fault
        return self._made[key]


INSTEAD = frozenset(answer.instead for answer in catalogue.ANSWERS.values() if answer.instead)


class Result:
    """Everything known about a design.

    Attributes:
        design     the Design
        parts      the Burner: `result.part("face").window_length_m`
        answers, checks, tables, charts, drawings   by key, in the order of the catalogue; worked out on demand
    """

    __slots__ = ("_autos", "_forbids", "answers", "charts", "checks", "design", "drawings", "parts", "tables")

    def __init__(self, design, before=None, store=None):
        self.design = design
        self._autos = frozenset(key for key in AUTOS if design.value(key) == "auto")
        self.parts = Burner(design.value, before and before.parts, store)
        self.answers: Mapping[str, Answered] = OnDemand(catalogue.ANSWERS, self._answer)
        self.checks: Mapping[str, Checked] = OnDemand(catalogue.CHECKS, self._check)
        self.tables: Mapping[str, Tabled] = OnDemand(catalogue.TABLES, self._table)
        self.charts: Mapping[str, Charted] = OnDemand(catalogue.CHARTS, self._chart)
        self.drawings: Mapping[str, Any] = OnDemand(catalogue.DRAWINGS, self.drawing)

    def __setattr__(self, name: str, value: Any) -> None:
        """Each attribute is given once, by __init__; nothing is hung on a result afterwards."""
        if hasattr(self, name):
            raise AttributeError(f"{name} of a result cannot be changed")
        super().__setattr__(name, value)

    def __getitem__(self, key: str) -> Any:
        """The SI value of an answer."""
        return self.answers[key].value

    def setting(self, key: str) -> str:
        """A setting as a person reads it, in a list of changes: with what auto comes to."""
        text = self.design.show(key)
        worked_out = WORKED_OUT.get(key) if self.design.value(key) == "auto" else None
        found = self.answers[worked_out] if worked_out else None
        if found is None or found.value is None:
            return text
        return f"{text}, {found.brief}"

    def part(self, name: str) -> Any:
        """The record of a part, such as `face`: everything that was worked out about it."""
        return self.parts.part(name)

    def aim(self, answer: Answered) -> str:
        """What is good of it, in the words of the check that judges it."""
        key, sentence = answer.declared.aim
        check = self.checks.get(key)
        return written(sentence, {"limit": check.limit}, self.design.reader) if check else ""

    @property
    def worst(self) -> str:
        """The worst verdict of all checks; good when there are but notes."""
        return next((check.verdict for check in self.ranked() if check.fault), "good")

    @property
    def forbids_light(self) -> bool:
        """Whether a check stops the design for more than what is wanted of it, or the weather to cast in."""
        if not hasattr(self, "_forbids"):
            self._forbids = any(one.verdict == "stop" and not one.declared.lit for one in self.checks.values())
        return self._forbids

    @property
    def told(self) -> list[Checked]:
        """All checks but those that tell how to light what must not be lit, and ask for nothing."""
        return [
            check
            for check in self.checks.values()
            if check.fault or not check.declared.to_light or not self.forbids_light
        ]

    def idle(self, answer: Answered) -> bool:
        """Whether an answer is none here as the design has no such thing, a setting that it rests on does not count, or
        another is in its place."""
        other = answer.declared.instead
        if other and self[other] is not None:
            return True
        if answer.value is not None:
            return False
        settings = (key for key in answer.inputs if key not in self.answers)
        return answer.declared.may_lack or answer.key in INSTEAD or not all(map(self.design.counts, settings))

    def ranked(self) -> list[Checked]:
        """The checks that are told, the worst first: what cannot be made before what hurts, that before what breaks."""

        def order(check):
            made = not (check.declared.unmade and check.verdict == "stop")
            return -VERDICTS.index(check.verdict), made, catalogue.HARMS.index(check.declared.harm)

        return sorted(self.told, key=order)

    def _repr_html_(self) -> str:
        """What a notebook shows: the first answers of each room, and every check that is not good."""
        shown = [(answer.label, answer.brief) for answer in self.answers.values() if answer.near == "first"]
        rows = "".join(f"<tr><td>{escape(label)}</td><td>{escape(text)}</td></tr>" for label, text in shown)
        said = "".join(
            f"<li><b>{check.verdict}</b> {escape(check.text)}</li>"
            for check in self.ranked()
            if check.verdict != "good"
        )
        return f"<p>Worst verdict: <b>{self.worst}</b></p><table>{rows}</table><ul>{said}</ul>"

    def _measures(self, *shown):
        """The reader's measures; whether a pressure among them is of gas from a house line, if there is one at all."""
        on_a_line = any(one.dimension == "gas_pressure" for one in shown) and self._of_a_line()
        return {"on_a_line": on_a_line, "unit_system": self.design.reader}

    def _of_a_line(self):
        return self.part("gas_line").there

    def _written(self, sentence, slots, apart=False):
        return written(sentence, slots, self.design.reader, self._of_a_line, apart)

    def _case(self, words, found):
        """A text of a declaration that may have cases, its slots filled."""
        return self._written(words if isinstance(words, str) else words[found.case], found.slots)

    def _answer(self, key):
        declared = catalogue.ANSWERS[key]
        part, attribute = declared.at.split(".")
        value = getattr(self.part(part), attribute)
        least = catalogue.ANSWERS[weakest(key, self._autos)]
        unlit = declared.to_light and self.forbids_light
        if isinstance(value, Said):
            words = self._written(declared.cases[self._unlit(declared, value) if unlit else value.case], value.slots)
            return Answered(declared, least, words, unit_system=self.design.reader)
        shown = self._measures(declared)
        if unlit:
            return Answered(declared, least, None, unlit=True, **shown)
        if isinstance(value, Band):
            band = (_finite(key, value.low), _finite(key, value.high))
            return Answered(declared, least, _finite(key, value.value), band, **shown)
        return Answered(declared, least, _finite(key, value), **shown)

    def _unlit(self, declared, value):
        """The case of a text that tells how to light: why it cannot be lit, else that a check stops it."""
        if "stopped" not in declared.cases:
            return "never"
        return value.case if self.part("lighting").waits_W is None else "stopped"

    def _asked(self, view):
        """Whether a check forbids lighting, for a view that asks so."""
        return {"stopped": self.forbids_light} if "stopped" in needs(view) else {}

    def _check(self, key):
        declared = catalogue.CHECKS[key]
        judged = self.parts.call(checks.CHECKS[key])
        if judged is None:
            return None
        text = " ".join(self._written(declared.cases[case], judged.slots, apart=True) for case in judged.cases)
        cures = declared.cures if judged.cures is None else judged.cures
        cures = tuple(cure for cure in cures if self.design.counts(cure[0]))  # the page hides what does not
        others = tuple(cure for cure in cures if cure[0] != "gas_pressure")
        # A line gives what it gives.
        if key not in ("gas_pressure", "supply") and others != cures and self._of_a_line():
            cures = others
        may_spoil = judged.verdict in FAULTS and key in checks.SPOILS
        spoils = frozenset(self.parts.call(checks.SPOILS[key])) if may_spoil else frozenset()
        changes = _changes(cures, spoils)
        return Checked(declared, judged.verdict, judged.value, judged.limit, text, changes, **self._measures(declared))

    def _say(self, declared):
        return Say(declared.words, self.design.reader, self._of_a_line)

    def _table(self, key):
        declared = catalogue.TABLES[key]
        found = self.parts.call(views.TABLES[key], say=self._say(declared), **self._asked(views.TABLES[key]))
        found = found if isinstance(found, Rows) else Rows(tuple(found))
        return Tabled(declared, self._case(declared.title, found), found.rows, **self._measures(*declared.columns))

    def _chart(self, key):
        declared = catalogue.CHARTS[key]
        plot = self.parts.call(views.CHARTS[key])
        sentence = self._written(declared.cases[plot.case], plot.slots)
        return Charted(declared, plot, sentence, **self._measures(declared.x, declared.y))

    def drawing(self, key: str, **given: Any) -> Any:
        """A drawing made anew, e.g. with another height of its texts: drawing("face", text_mm=2.5)."""
        declared = catalogue.DRAWINGS[key]
        given = {"text_mm": None, "numbers": False, "few": False, "wide": None, **given}
        if "burns" in needs(views.DRAWINGS[key]):
            given["burns"] = not any(self.checks[check].fault for check in FLAME_CHECKS if check in self.checks)
        given |= self._asked(views.DRAWINGS[key])
        found = self.parts.call(views.DRAWINGS[key], say=self._say(declared), **given)
        found = found if isinstance(found, Shapes) else Shapes(tuple(found))
        return shapes.Drawing(
            key, self._case(declared.title, found), found.shapes, self._case(declared.description, found)
        )


@cache
def _changes(cures, spoils):
    return tuple(Change(*cure, cure[0] not in spoils) for cure in cures)


def _measured(side, on_a_line):
    """A column or an axis in the measure of the gas."""
    return replace(side, dimension=measured(side.dimension, lambda: on_a_line))


def _finite(key, value):
    """The value itself; a float that is not finite is a fault of ours, never shown."""
    if isinstance(value, float) and not isfinite(value):
        raise ArithmeticError(f"{key} is {value}")
    return value


FURTHER, LEAST_FURTHER = 0.25, 0.05


def solve(design, before: "Result | None" = None) -> Result:
    """The Result of a Design. Raises nothing for a design that could be made: its checks say what is wrong.

    `before`: a result of a design like it; parts that rest on nothing that has changed are taken over.
    """
    return Result(design, before)


def worsened(before: Result, after: Result) -> list[Checked]:
    """The checks of a result that find fault where they did not before, a worse one, or the same one clearly further
    beyond its limit; the worst first."""
    found = []
    for check in after.ranked():
        was = before.checks.get(check.key)
        if check.fault and (was is None or VERDICTS.index(check.verdict) > VERDICTS.index(was.verdict)):
            found.append(check)
        elif check.fault and was is not None and check.verdict == was.verdict and further(was, check):
            found.append(check)
    return found


def further(was: Checked | Judged, check: Checked | Judged) -> bool:
    """Whether a fault is clearly further beyond its limit than it was: a quarter, and a twentieth of the limit."""
    if None in (was.value, was.limit, check.value, check.limit):
        return False
    off, now = abs(was.value - was.limit), abs(check.value - check.limit)
    return now - off > max(FURTHER * off, LEAST_FURTHER * abs(check.limit))
