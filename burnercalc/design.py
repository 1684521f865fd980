"""A design: every setting with a checked value. Text in, SI out; all wrong settings are reported together."""

import re
from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import replace
from difflib import get_close_matches
from functools import cache, cached_property, lru_cache
from html import escape
from math import ceil, floor, log10
from typing import Any, Self

from . import rules, units
from .errors import InputError, InputErrors, few
from .grammars import (
    EXAMPLES,
    GRAMMARS,
    LISTS,
    LONGEST_LIST,
    blend_text,
    example,
    in_millimetres,
    layers_in_words,
    money_sign,
    parted,
    pipe_size,
)
from .parts.gas import gas
from .parts.gas_line import GasLine, gas_line
from .settings import BY_KEY, PIPES, SETTINGS, Setting

LINE_STEPS = ("0.5 inH2O", "1 mbar")  # of the step buttons, for the gas pressure of a house line
LINE_MOST = "14 inH2O"  # up to where its slider goes

Texts = Mapping[str, Any]  # {key: text}; what is no text is read as str() gives it

# How often an offer is followed by a better one; how many values are tried, and chambers; how often it is halved.
MOST_STEPS, MOST_MARKS, MOST_CHAMBERS, MOST_HALVINGS = 6, 200, 24, 14
MOST_DIGITS, TAPE_PARTS = 4, (16, 64)  # of an offer, before it is brought to marks of a tape or three figures
READABLE = (0.1, 1e4)  # figures of an offer in the measure that the refused one was written in; else in the reader's
SPOKEN = {  # what somebody may have typed for a choice: an earlier label, other names
    "units": {"millimetres": "mm", "metric": "mm", "inch": "in"},
    "fuel": {**dict.fromkeys(("house gas", "mains gas", "ng"), "natural_gas"), "lp": "propane"},
}
AS_READ = {"units", "sizes", "mine"}  # what makes no burner
DRILLED = ("port_diameter", "baffle_hole_diameter", "corner_drill")  # said as the drill they are
LIMIT_DIGITS = 2  # of a limit that is declared in other measures


def parse_setting(setting: Setting, text: object, bare_units: str | None = None, system: str = "in") -> Any:
    """The value of one setting from its text: SI float, int for counts, text for choices and words.

    Raises InputError, or InputErrors when a reader of GRAMMARS finds several faults.

    bare_units: see units.parse_quantity; the page passes the unit that stands beside the field. system: in or mm, the
    measures of what a refusal says.
    """
    text = str(text).strip()
    if setting.optional and text.lower() in ("", "none"):  # as it is shown
        return None
    if setting.dimension == "choice":
        return _parse_choice(setting, text[: units.LONGEST_TEXT])
    if setting.dimension == "money_sign":  # the only one that is more than what a keyboard of ASCII has
        return money_sign(text, setting.key)
    if setting.dimension in GRAMMARS:
        text = parted(text) if setting.dimension in LISTS else text
        return GRAMMARS[setting.dimension](units.plain(text, setting.key, LONGEST_LIST), setting.key, system)
    if text.lower() in setting.words:
        return text.lower()
    value = units.parse_quantity(text, setting.dimension, setting.key, bare_units, system)
    _check_range(setting, text, value, system)
    if setting.whole:
        if value != int(value):
            raise InputError(setting.key, text, "must be a whole number", str(round(value)))
        return int(value)
    return value


def _parse_choice(setting: Setting, text: str) -> str:
    known = [value for value, _ in setting.choices]
    for value, label in setting.choices:
        if text in (value, label):
            return value
    if meant := SPOKEN.get(setting.key, {}).get(text.lower()):
        return meant
    near = get_close_matches(text, known, 1)
    if setting.choices is PIPES:
        named, nearest = pipe_size(text)
        if named:
            return named
        near = [nearest] if nearest else near
    raise InputError(
        setting.key, text, "is not a choice; known: " + ", ".join(known), near[0] if near else setting.default
    )


@cache
def limits(setting: Setting) -> tuple[float | None, float | None]:
    """(low, high) of a setting in SI, None where there is no limit."""
    low, high = (
        units.parse_quantity(text, setting.dimension, setting.key) if text else None
        for text in (setting.low, setting.high)
    )
    return low, high


class OutOfRange(InputError):
    """A value that no design may have; the rest of this one may leave it less still."""


def _check_range(setting: Setting, text: str, value: float, system: str) -> None:
    low, high = limits(setting)
    inside = (low is None or value >= low - 1e-12 * abs(low)) and (high is None or value <= high + 1e-12 * abs(high))
    if not inside:
        found = units.split_number(text)
        if setting.dimension == "gas_pressure" and found and found[1] == units.shown_unit("line_pressure", system):
            setting = replace(setting, dimension="line_pressure")  # as its field stood when it was typed
        least, most = (limit_text(setting, limit, system) for limit in ("low", "high"))
        span = f"{least} to {most}" if least and most else f"{least} or more" if least else f"{most} or less"
        raise OutOfRange(setting.key, text, f"must be {span}", least if low is not None and not value >= low else most)


def limit_text(setting: Setting, limit: str, system: str) -> str:
    """A limit as declared, or in the measure of its field, a round figure inside it."""
    declared: str = getattr(setting, limit)
    unit = units.shown_unit(setting.dimension, system)
    in_inches = system == "in" and setting.dimension != "drill_length"  # a jet's hole, declared as its drills are sold
    if not declared or in_inches or unit in ("", units.shown_unit(setting.dimension, "in" if system == "mm" else "mm")):
        return declared
    if declared.endswith(f" {unit}"):
        return declared
    number = units.from_si(units.parse_quantity(declared, setting.dimension, setting.key), unit,
                           units.si_unit_of(setting.dimension))  # fmt: skip
    rounded = float(units.significant(number, LIMIT_DIGITS))
    if (rounded < number - 1e-9 * abs(number)) if limit == "low" else (rounded > number + 1e-9 * abs(number)):
        step = 10.0 ** (floor(log10(abs(number))) - LIMIT_DIGITS + 1)
        rounded += step if limit == "low" else -step
    return f"{float(units.significant(rounded, LIMIT_DIGITS)):.12g} {unit}"


class Design:
    """The settings of one burner. Values are read as attributes, in SI: `design.body_length`.

    Build one with `Design.from_texts`; `Design()` has every setting at its default. `texts` holds what was typed, for
    the settings that differ from the defaults.
    """

    def __init__(self, values: Mapping[str, Any] | None = None, texts: Mapping[str, str] | None = None) -> None:
        self._values = dict(default_values() if values is None else values)
        self.texts = dict(texts or {})

    def __getattr__(self, key: str) -> Any:
        try:
            return self.__dict__["_values"][key]
        except KeyError:
            raise AttributeError(key) from None

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Design) and self._values == other._values

    __hash__ = None  # type: ignore[assignment]  # its texts may be written to

    @classmethod
    def from_texts(cls, texts: Texts | None = None, bare_units: str | None = None, stood: Texts | None = None) -> Self:
        """A design from {key: text}; what is not given keeps its default.

        `stood`: the texts before somebody typed; a text in which nothing can be read is offered what stood there.
        Raises:
            InputErrors   every setting that is unknown, unreadable, out of range or at odds with another
        """
        values, kept, errors = read(texts or {}, bare_units)
        if errors:
            raise InputErrors(with_offer(error, values, typed=texts, stood=stood) for error in errors)
        return cls(values, kept)

    def _repr_html_(self) -> str:
        """What a notebook shows: the settings that differ from the defaults."""
        rows = "".join(f"<tr><td>{BY_KEY[k].label}</td><td>{escape(text)}</td></tr>" for k, text in self.texts.items())
        return f"<table>{rows}</table>" if rows else "<p>Every setting at its default.</p>"

    def changed(self, texts: Texts, bare_units: str | None = None) -> "Design":
        """This design with other texts for some settings."""
        return Design.from_texts(following(self.texts, texts), bare_units)

    def read_in(self, system: str) -> "Design":
        """This design in other measures, nothing of it moved."""
        return Design.from_texts({**self.texts, "units": system, "sizes": self.sizes})

    @cached_property
    def reader(self) -> units.Reader:
        """What numbers are shown in: the measures, the sign of the reader's money, and the measures of the shop."""
        return units.Reader(self.units, self.money_sign or "", self.sizes)

    def values(self) -> dict[str, Any]:
        """{key: SI value} of all settings."""
        return dict(self._values)

    def value(self, key: str) -> Any:
        return self._values[key]

    def text(self, key: str) -> str:
        """What was typed for a setting, or its default."""
        return self.texts.get(key, default_text(BY_KEY[key], self._values))

    def takes(self, key: str, value: float) -> bool:
        """Whether the rest of this design takes another value of a setting."""
        return next(rules.broken({**self._values, key: value}, key), None) is None

    def as_typed(self, key: str) -> str:
        """What was typed for a setting of words; an inch shop's default in the reader's measures."""
        text = self.text(key)
        written = (BY_KEY[key].default, *BY_KEY[key].line[:1], *BY_KEY[key].lp_line[:1])
        if self.units == "in" or text not in written or self._values[key] is None:
            return text
        return in_millimetres(BY_KEY[key].dimension, self._values[key]) or text

    def counts(self, key: str) -> bool:
        """Whether a setting counts under the choices made; an analysis of the gas stands over the fuel's name."""
        when = BY_KEY[key].when
        if not when:
            return True
        if when[0] in ("fuel", "gas_from"):
            return supplied_so(when, self._values)
        return self.value(when[0]) in when[1:] and self.counts(when[0])

    def moved_from(self, before: "Design", typed: Collection[str] = ()) -> list[str]:
        """A line for each setting that counts and differs, but for those that somebody typed."""
        return [
            f"{one.label}: {self.show(one.key)}, was {before.show(one.key)}"
            for one in SETTINGS
            if one.key not in typed and self.counts(one.key) and before.value(one.key) != self.value(one.key)
        ]

    def show(self, key: str) -> str:
        """A setting as a person reads it, in the design's own units."""
        setting = BY_KEY[key]
        if setting.dimension == "choice":
            return dict(setting.choices)[self._values[key]]
        if setting.dimension == "lining":
            return layers_in_words(self._values[key], self.units)
        if setting.dimension in ("price_by_mass", "fuel_price"):
            figure, slash, unit = self.as_typed(key).partition("/")
            return units.priced(figure.strip(), self.reader) + slash + unit
        if setting.dimension in (*GRAMMARS, "money_sign") or self._values[key] is None:
            return self.as_typed(key) or "none"
        dimension = as_shown(setting, self._values).dimension
        by_minutes = dimension == "time" and any(step.endswith("min") for step in setting.step)
        if by_minutes and self._values[key] < 7200:  # 65 min, not 1.08 h
            return f"{self._values[key] / 60:.3g} min"
        if dimension in ("temperature", "money"):  # what was set is said as it was set
            return units.show(self._values[key], "price" if dimension == "money" else dimension, self.reader, 4)
        return units.show(self._values[key], "bore" if key in DRILLED else dimension, self.reader, units.FIGURES)


def as_shown(setting: Setting, values: Mapping[str, Any]) -> Setting:
    """The setting in the measure it is shown in: gas of a house line in the blower's measure, steps and range; other
    gas to the reader of millimetres below 1 bar in mbar, as units.show says what it is answered with."""
    if setting.dimension != "gas_pressure":
        return setting
    if setting.key == "gas_pressure" and by_line(values):
        return replace(setting, dimension="pressure", step=LINE_STEPS, high=LINE_MOST)
    value = values[setting.key]
    low = values["units"] == "mm" and not isinstance(value, str) and 0 < value < units.LEAST_BAR_PA
    return replace(setting, dimension="line_pressure") if low else setting


NO_LINE = GasLine(False, False)


def supply(values: Mapping[str, Any]) -> GasLine:
    """Whether the gas comes by a line, and a meter; not known where the fuel is refused, nor where that is."""
    if values["fuel"] is None:
        return NO_LINE
    return _supply(values.get("gas_from") or "cylinder", values["fuel"], values["fuel_blend"])


# Asked of each default that follows it.
@lru_cache(maxsize=16)
def _supply(gas_from: str, fuel: str, fuel_blend: tuple[tuple[str, float], ...] | None) -> GasLine:
    return gas_line(gas_from, gas(fuel, fuel_blend))


def supplied_so(when: tuple[str, ...], values: Mapping[str, Any]) -> bool:
    """Whether the gas is, or comes from, what a setting counts under."""
    line = supply(values)
    told = {
        "fuel": "natural_gas" if line.metered else "propane",
        "gas_from": "line" if line.there else "cylinder",
    }
    return told[when[0]] in when[1:]


def by_line(values: Mapping[str, Any]) -> bool:
    return supply(values).there


def default_text(setting: Setting, values: Mapping[str, Any]) -> str:
    """What a setting stands at when it is not told: the default of the shop's sizes and of the supply of gas.

    A shop not told has the sizes of the reader's measures.
    """
    shop = values.get("sizes") if setting.key != "sizes" else None
    line = supply(values) if setting.line or setting.lp_line else NO_LINE
    return setting.default_in(shop or values.get("units") or "in", line.there, line.metered)


def following(before: Texts, texts: Texts, mine: str = "") -> dict[str, Any]:
    """The texts before, changed, with what follows from the change; what is told with it stays as it is told."""
    return {**supplied(before, {**before, **texts}, mine), **texts}


def supplied(before: Texts, after: Texts, mine: str = "") -> dict[str, Any]:
    """The texts after a change. Another kind of supply, cylinder or line, brings its own gas pressure.

    Not where that was changed too. Other measures only read what was begun: the shop keeps its sizes. Of another shop,
    or where nothing was begun, come its own defaults. What is `mine`, with commas between, and stood at a default stays
    at that, though another shop or another supply has another. So does all of a room whose other sizes do not go with
    what is set.
    """
    was, now = _circumstances(before), _circumstances(after)
    only_read = was["units"] != now["units"] and before.get("sizes") == after.get("sizes")
    if only_read and now["units"] and was["sizes"] and before.keys() - AS_READ:
        others = {key: text for key, text in after.items() if key != "sizes"}
        after = others if was["sizes"] == now["units"] else {**others, "sizes": was["sizes"]}
        now = _circumstances(after)
    stays = {}
    for key in mine.split(","):
        if key in BY_KEY and default_text(BY_KEY[key], was) != default_text(BY_KEY[key], now):
            stays[key] = str(before.get(key, default_text(BY_KEY[key], was)))
    key = "gas_pressure"
    moved = by_line(was) is not by_line(now) and key not in stays and after.get(key) == before.get(key)
    after = {**stays, **{other: text for other, text in after.items() if not (moved and other == key)}}
    if was["sizes"] and now["sizes"] and was["sizes"] != now["sizes"]:
        return {**_at_odds(before, after, was, now), **after}
    return after


def _at_odds(before: Texts, after: Texts, was: Mapping[str, Any], now: Mapping[str, Any]) -> dict[str, str]:
    """The former defaults of the rooms whose new ones are refused beside what is set, which was not refused before."""
    refused = {error.field for error in read(after)[2]} - {error.field for error in read(before)[2]}
    rooms = {BY_KEY[field].room for field in refused if field in BY_KEY}
    told = {key: default_text(BY_KEY[key], was) for key in BY_KEY if key not in after and BY_KEY[key].metric}
    for chosen in (rooms, {setting.room for setting in SETTINGS} if rooms else ()):
        stays = {key: text for key, text in told.items() if BY_KEY[key].room in chosen}
        if not {error.field for error in read({**after, **stays})[2]} & refused:
            break
    return stays


def _circumstances(texts: Texts) -> Mapping[str, Any]:
    """The values that defaults follow."""
    return _read_alone(
        tuple((key, str(texts[key])) for key in ("units", "sizes", "fuel", "fuel_blend", "gas_from") if key in texts)
    )


@lru_cache(maxsize=64)
def _read_alone(texts: tuple[tuple[str, str], ...]) -> Mapping[str, Any]:
    return read(dict(texts))[0]


def _elsewhere(setting: Setting, value: Any) -> bool:
    """Whether what is told is the default here only: told, it stays when shop or supply change."""
    if setting.key == "sizes":  # stay anyhow
        return False
    others = (setting.default, setting.metric, *setting.line, *setting.lp_line)
    return any(text and parsed(setting.key, text) != value for text in others)


def units_of(texts: Texts) -> str:
    """The unit system that the texts are in, `in` where they say none that is known."""
    return read({"units": texts["units"]})[0]["units"] or "in" if "units" in texts else "in"


def sizes_of(texts: Texts) -> str:
    """The system of the sizes that the texts buy by; that of their units where they say none that is known."""
    said = {key: texts[key] for key in ("units", "sizes") if key in texts}
    return read(said)[0]["sizes"] or units_of(texts)


def read(texts: Texts, bare_units: str | None = None) -> tuple[dict[str, Any], dict[str, str], list[InputError]]:
    """(values, texts worth keeping, refusals) of {key: text}: {key: SI value, None where refused}, and [InputError].

    The offers of the refusals are not tried yet; see with_offer.
    """
    values, kept, errors = read_each(texts, bare_units)
    named: dict[str, InputError] = {}  # one refusal a setting
    for _, error in rules.broken(values):
        named.setdefault(error.field, error)
    return values, kept, [*errors, *named.values()]


def read_each(texts: Texts, bare_units: str | None = None) -> tuple[dict[str, Any], dict[str, str], list[InputError]]:
    """What `read` gives before the rules weigh one setting against another."""
    values: dict[str, Any] = {}
    kept: dict[str, str] = {}
    errors: list[InputError] = []
    for key in (str(key) for key in texts if key not in BY_KEY):
        near = get_close_matches(key[:60], BY_KEY, 1)
        errors.append(InputError(key, texts.get(key, ""), "is not a setting", near[0] if near else ""))
    errors = few(errors, "settings")
    system = "mm" if texts.get("units") in dict(BY_KEY["units"].choices[1:]) else "in"
    for setting in SETTINGS:
        values[setting.key] = default = parsed(setting.key, default_text(setting, values))
        if setting.key not in texts:
            continue
        try:
            value = parsed(setting.key, str(texts[setting.key]), bare_units, system)
        except (InputError, InputErrors) as refused:
            errors += refused.errors
            values[setting.key] = None
            continue
        values[setting.key] = value
        if value != default or _elsewhere(setting, value):
            kept[setting.key] = value if setting.choices else with_unit(setting, texts[setting.key], bare_units)
    return values, kept, errors


def with_offer(
    refused: InputError,
    values: Mapping[str, Any],
    search: bool = True,
    typed: Texts | None = None,
    stood: Texts | None = None,
) -> InputError:
    """A refusal that offers only what is accepted for its setting with the rest of the design as it is.

    What it offers is tried; when that does not do, what the next rule offers then; then, to `search`, other values.
    `typed`: the texts of the design, in whose measures it is told; `stood`: those before it.
    """
    setting = BY_KEY.get(refused.field)
    if setting is None:
        return refused
    others = {error.field for _, error in rules.broken(values)} - {setting.key}  # refused already, whatever is offered
    sold = setting.key in rules.SOLD_SCALES  # between two of them there is none, and each is told as its dial has it

    def broken(text: str) -> InputError | None:
        """The first refusal of a text that the rest of the design does not have already; None when it is accepted."""
        try:
            value = parse_setting(setting, text, None, values.get("units") or "in")
        except (InputError, InputErrors) as unreadable:
            return unreadable.errors[0]
        if value is None:
            return refused  # empty is no offer
        errors = (error for _, error in rules.broken({**values, setting.key: value}, setting.key))
        return next((error for error in errors if error.field not in others), None)

    found: list[str] = []
    told = refused
    waiting, tried = refused.nearest.split(" or "), set[str]()
    while waiting and not found and len(tried) < MOST_STEPS:
        tried.update(waiting)
        errors = {text: broken(text) for text in waiting if text}
        found = [_neat(setting, text, values, broken) for text, error in errors.items() if error is None]
        own = [error for error in errors.values() if error and error.field == setting.key and error is not refused]
        if isinstance(refused, OutOfRange) and own and not found:  # an end of the range is none of this design's
            told = own[-1]
        elif isinstance(refused, OutOfRange) and told is refused and not found and (at := _at_end(errors)):
            told = InputError(refused.field, refused.value, f"{refused.rule}; {at}", "", refused.others)
        waiting = [text for text in dict.fromkeys(error.nearest for error in own) if text not in tried]
    at_limit = isinstance(refused, OutOfRange) and told is refused  # nothing is nearer than the end of the range
    if search and found and not others and not at_limit:  # of several each keeps room for the others' offers
        found = [text if sold else _nearest(setting, refused, text, values, broken) for text in found]
    if search and not found:
        texts = list(_others(setting, values, stood or {}))
        if values.get("firing_rate") == "auto":  # then each may mean heating up a chamber
            texts = texts[:: ceil(len(texts) / MOST_CHAMBERS)]
        found = [next((text for text in texts if text and broken(text) is None), "")]
        found = [text if others or not text else _nearest(setting, refused, text, values, broken) for text in found]
    if not sold and (unit := _measure_of(setting, (typed or {}).get(setting.key, refused.value), values)):
        found = [_neat(setting, text, values, broken, unit) for text in found]
    return InputError(refused.field, refused.value, told.rule, " or ".join(found), told.others)


def _at_end(errors: Mapping[str, InputError | None]) -> str:
    """What another setting has against an end of the range."""
    text, error = next(((text, error) for text, error in errors.items() if error), ("", None))
    return f"at {text} the {BY_KEY[error.field].label.lower()} {error.rule}" if error and error.field in BY_KEY else ""


def _measure_of(setting: Setting, text: object, values: Mapping[str, Any]) -> str:
    """The unit that a refused text was written in, "" where it is none of this setting; of a reader of millimetres,
    whom all is told in, too."""
    text = str(text)
    if setting.dimension not in units.DIMENSIONS or units.si_unit_of(setting.dimension) == "1":
        return ""
    if values.get("units") == "mm":
        return ""
    try:
        units.parse_quantity(text, setting.dimension, setting.key)
    except InputError:
        return ""
    number = units.split_number(units.plain(text, setting.key))
    return units.as_on_a_plate(number[1]).strip() if number else ""


def _nearest(
    setting: Setting,
    refused: InputError,
    text: str,
    values: Mapping[str, Any],
    broken: Callable[[str], InputError | None],
) -> str:
    """What works and lies nearest to what was typed, found by halving between it and an offer that works."""
    system = values.get("units") or "in"
    if setting.dimension not in units.DIMENSIONS:
        return text
    if refused.rule == units.NEEDS_UNIT:  # which is not known
        return text
    works, typed = parse_setting(setting, text, None, system), values[setting.key]
    if typed is None:  # out of its range
        try:
            bare = None if setting.dimension == "fraction" else system  # 0.2 is 20 % or 0.2 %
            typed = units.parse_quantity(str(refused.value), setting.dimension, setting.key, bare)
        except InputError:
            return text
    if not all(isinstance(number, (int, float)) for number in (typed, works)):
        return text
    offered = works
    for _ in range(MOST_HALVINGS):
        middle = (typed + works) / 2
        if setting.whole:
            middle = ceil(middle) if works > typed else floor(middle)
        if middle == works:
            break
        shown = units.show(middle, setting.dimension, system, exact=True)
        if broken(shown) is None:
            works = middle
        else:
            typed = middle
    if works == offered:
        return text
    return _neat(setting, units.show(works, setting.dimension, system, exact=True), values, broken)


def _neat(
    setting: Setting,
    text: str,
    values: Mapping[str, Any],
    broken: Callable[[str], InputError | None],
    unit: str = "",
) -> str:
    """An offer of many digits as a tape or a scale reads it, where that is accepted too; else as it is. `unit`: what it
    is brought to; else it keeps its own."""
    read = units.split_number(text)
    if not read or setting.dimension not in units.DIMENSIONS or unit == read[1]:
        return text
    figure = text.removesuffix(read[1])
    if not unit and ("/" in figure or _digits(figure) <= MOST_DIGITS):
        return text
    unit, si_unit = unit or read[1], units.si_unit_of(setting.dimension)
    number = units.from_si(parse_setting(setting, text, None, values.get("units") or "in"), unit, si_unit)
    figure = units.tape(number) if unit == "in" and units.is_on_tape(number) else f"{number:.12g}"
    exact = f"{figure} {unit}".strip()
    if not number or (("/" in figure or _digits(figure) <= MOST_DIGITS) and broken(exact) is None):
        return exact
    if unit != read[1] and not READABLE[0] <= abs(number) < READABLE[1]:
        return text
    digits = 2 - floor(log10(abs(number)))
    parts = TAPE_PARTS if unit == "in" else (10.0**digits, 10.0 ** (digits - 1))
    marks = (mark(number * part) / part for part in parts for mark in (floor, ceil))
    near = abs(number) / 50  # a sixteenth where one is near enough, else the nearest mark
    for at in sorted(marks, key=lambda at: max(abs(at - number), near)):
        shown = f"{units.tape(at) if unit == 'in' else f'{round(at, digits):.12g}'} {unit}".strip()
        if broken(shown) is None:
            return shown
    return text


def _digits(figure: str) -> int:
    return len(re.findall(r"\d", figure))


def _others(setting: Setting, values: Mapping[str, Any], stood: Texts) -> Iterator[str]:
    """Texts that a setting may hold: what stood there, its default, then from its present value outwards, in its steps
    and finer. What may be left empty is offered no example: it is nobody's blower and nobody's drill."""
    system = values.get("units") or "in"
    default = parsed(setting.key, default_text(setting, values))
    yield _in_measures(setting, str(stood.get(setting.key, "")), system)
    yield default_text(setting, values)
    if setting.choices:
        yield from (value for value, _ in setting.choices)
    if setting.dimension == "fuel_blend" and values.get("fuel"):
        yield blend_text(gas(values["fuel"], None).composition)
    if setting.dimension in EXAMPLES and not setting.optional:
        yield example(setting.dimension, system)
    low, high = limits(setting) if setting.dimension in units.DIMENSIONS else (None, None)
    if low is None or high is None or not setting.step:
        return
    at = values[setting.key]
    at = at if isinstance(at, (int, float)) else default
    at = at if isinstance(at, (int, float)) else low
    unit = units.shown_unit(setting.dimension, system)
    step = units.parse_quantity(setting.step[system == "mm"], setting.dimension, setting.key)
    step -= units.to_si(0, unit, units.si_unit_of(setting.dimension))
    step *= ceil((high - low) / step / MOST_MARKS)
    marks = [low + n * step for n in range(MOST_MARKS)] + [high]
    for mark in sorted(marks, key=lambda mark: abs(mark - at)):
        yield units.show(mark, setting.dimension, system, exact=True)
    for n in range(0 if setting.whole else MOST_MARKS):
        fine = low + (high - low) * 0.9**n
        yield f"{units.significant(units.from_si(fine, unit, units.si_unit_of(setting.dimension)))} {unit}"


def _in_measures(setting: Setting, text: str, system: str) -> str:
    """A text that was accepted, in millimetres to who reads them."""
    if not text or system != "mm" or setting.choices:
        return text
    value = parse_setting(setting, text, system, system)
    if setting.dimension in units.DIMENSIONS and isinstance(value, (int, float)):
        return units.show(value, setting.dimension, system, exact=True)
    return in_millimetres(setting.dimension, value) or text


def with_unit(setting: Setting, text: object, bare_units: str | None = None) -> str:
    """The text with the unit that stood beside the field of a bare number, so that it reads the same later."""
    text = " ".join(str(text).split())
    if setting.dimension in LISTS:
        return parted(text)
    if bare_units and setting.dimension in units.DIMENSIONS:
        found = units.split_number(text)
        if found and found[1] == "":
            unit = units.shown_unit(setting.dimension, bare_units)
            return f"{text} {unit}".strip()
    return text


# Defaults, sizes on the menus of a search and what was typed before are read over and over.
@lru_cache(maxsize=4096)
def parsed(key: str, text: str, bare_units: str | None = None, system: str = "in") -> Any:
    """parse_setting of a setting by its key."""
    return parse_setting(BY_KEY[key], text, bare_units, system)


_DEFAULTS: dict[str, Any] = {}


def default_values() -> dict[str, Any]:
    """{key: SI value} of all defaults."""
    if not _DEFAULTS:
        _DEFAULTS.update({setting.key: parse_setting(setting, setting.default) for setting in SETTINGS})
    return _DEFAULTS
