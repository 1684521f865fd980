"""A design: every setting with a checked value. Text in, SI out; all wrong settings are reported together."""

from difflib import get_close_matches

from . import rules, units
from .errors import InputError, InputErrors
from .grammars import GRAMMARS
from .settings import BY_KEY, SETTINGS

# Kinds of setting that are words with a grammar of their own: kind -> function(text, field) that returns the value.
PARSERS = {**GRAMMARS}


def parse_setting(setting, text, bare_units=None):
    """The value of one setting from its text: SI float, int for counts, text for choices and words.

    Raises InputError, or InputErrors when a parser of PARSERS finds several faults.

    bare_units: see units.parse_quantity; the page passes the unit that stands beside the field.
    """
    text = str(text).strip()
    try:
        return _parse(setting, text, bare_units)
    except InputError as refused:
        raise InputError(
            refused.field, refused.value, refused.rule, _working(setting, refused.nearest), refused.others
        ) from None


def _working(setting, nearest):
    """What is offered instead, such as `5 in or 5 mm`, as far as it works; the default when none of it does."""

    def works(text):
        try:
            _parse(setting, text)
        except ValueError:
            return False
        return text != ""

    return " or ".join(text for text in nearest.split(" or ") if works(text)) or setting.default


def _parse(setting, text, bare_units=None):
    if setting.optional and text == "":
        return None
    if setting.dimension == "choice":
        return _parse_choice(setting, text)
    if setting.dimension in PARSERS:
        return PARSERS[setting.dimension](text, setting.key)
    if text.lower() in setting.words:
        return text.lower()
    value = units.parse_quantity(text, setting.dimension, setting.key, bare_units)
    _check_range(setting, text, value)
    if setting.whole:
        if value != int(value):
            raise InputError(setting.key, text, "must be a whole number", str(round(value)))
        return int(value)
    return value


def _parse_choice(setting, text):
    known = [value for value, _ in setting.choices]
    for value, label in setting.choices:
        if text in (value, label):
            return value
    near = get_close_matches(text, known, 1)
    raise InputError(
        setting.key, text, "is not a choice; known: " + ", ".join(known), near[0] if near else setting.default
    )


def limits(setting):
    """(low, high) of a setting in SI, None where there is no limit."""
    return tuple(
        units.parse_quantity(text, setting.dimension, setting.key) if text else None
        for text in (setting.low, setting.high)
    )


def _check_range(setting, text, value):
    low, high = limits(setting)
    inside = (low is None or value >= low - 1e-12 * abs(low)) and (high is None or value <= high + 1e-12 * abs(high))
    if not inside:
        span = (
            f"{setting.low} to {setting.high}"
            if setting.low and setting.high
            else (f"{setting.low} or more" if setting.low else f"{setting.high} or less")
        )
        raise InputError(
            setting.key, text, f"must be {span}", setting.low if low is not None and not value >= low else setting.high
        )


class Design:
    """The settings of one burner. Values are read as attributes, in SI: `design.body_length`.

    Build one with `Design.from_texts`; `texts` holds what was typed, for the settings that differ from the defaults.
    """

    def __init__(self, values, texts):
        self._values = dict(values)
        self.texts = dict(texts)

    def __getattr__(self, key):
        try:
            return self.__dict__["_values"][key]
        except KeyError:
            raise AttributeError(key) from None

    def __eq__(self, other):
        return isinstance(other, Design) and self._values == other._values

    __hash__ = None

    @classmethod
    def from_texts(cls, texts=None, bare_units=None):
        """A design from {key: text}; what is not given keeps its default.

        Raises:
            InputErrors   every setting that is unknown, unreadable, out of range or at odds with another
        """
        values, kept, errors = {}, {}, []
        texts = dict(texts or {})
        for key, text in texts.items():
            if key not in BY_KEY:
                near = get_close_matches(key, BY_KEY, 1)
                errors.append(InputError(key, text, "is not a setting", near[0] if near else ""))
        for setting in SETTINGS:
            try:
                default = default_values()[setting.key]
                if setting.key in texts:
                    value = parse_setting(setting, texts[setting.key], bare_units)
                    if value != default:
                        kept[setting.key] = with_unit(setting, texts[setting.key], bare_units)
                    values[setting.key] = value
                else:
                    values[setting.key] = default
            except (InputError, InputErrors) as refused:
                errors += getattr(refused, "errors", [refused])
                values[setting.key] = None
        errors += rules.broken(values)
        if errors:
            raise InputErrors(errors)
        return cls(values, kept)

    def changed(self, texts, bare_units=None):
        """This design with other texts for some settings."""
        return Design.from_texts({**self.texts, **texts}, bare_units)

    def value(self, key):
        return self._values[key]

    def text(self, key):
        """What was typed for a setting, or its default."""
        return self.texts.get(key, BY_KEY[key].default)

    def show(self, key):
        """A setting as a person reads it, in the design's own units."""
        setting = BY_KEY[key]
        if setting.dimension == "choice":
            return dict(setting.choices)[self._values[key]]
        if setting.dimension in PARSERS or self._values[key] is None:
            return self.text(key)
        return units.show(self._values[key], setting.dimension, self.units)


def with_unit(setting, text, bare_units=None):
    """The text with the unit that a bare number was given by the field it stands in, so that it reads the same later."""
    text = " ".join(str(text).split())
    if bare_units and setting.dimension in units.DIMENSIONS:
        found = units.split_number(text)
        if found and found[1] == "":
            unit = units.shown_unit(setting.dimension, bare_units)
            return f"{text} {unit}".strip()
    return text


_DEFAULTS = {}


def default_values():
    """{key: SI value} of all defaults."""
    if not _DEFAULTS:
        _DEFAULTS.update({setting.key: parse_setting(setting, setting.default) for setting in SETTINGS})
    return _DEFAULTS
