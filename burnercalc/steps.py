"""The marks of a setting that its step buttons, its slider and a drag move to, and the size that is sold next to it."""

from math import ceil, floor

from . import units
from .design import limits
from .result import WORKED_OUT, solve
from .sold import next_sold, sold_sizes_m


def grid(setting, unit_system):
    """(step, origin) of a setting's step buttons and slider, SI; marks are origin + n step."""
    step = units.parse_quantity(setting.step[0 if unit_system == "in" else 1], setting.dimension, setting.key)
    if setting.dimension != "temperature":
        return step, 0.0
    origin = units.to_si(0, units.shown_unit("temperature", unit_system), "K")
    return step - origin, origin


def marks(setting, unit_system):
    """(lowest, highest) mark within a setting's range, or None where it has no step or no end."""
    low, high = limits(setting)
    if not setting.step or low is None or high is None:
        return None
    step, origin = grid(setting, unit_system)
    return ceil((low - origin) / step - 1e-9), floor((high - origin) / step + 1e-9)


def marks_left(design, setting):
    """(lowest, highest) mark, from where a setting stands outward, that the rest of the design takes."""
    step, origin = grid(setting, design.reader)
    at = (design.value(setting.key) - origin) / step

    def taken(mark):
        return design.takes(setting.key, mark * step + origin)

    def last(good, end):
        """The furthest mark taken between one that is taken, or the value itself, and an end of the range."""
        if taken(end):
            return end
        while abs(end - good) > 1:
            middle = (good + end) // 2
            good, end = (middle, end) if taken(middle) else (good, middle)
        return good

    low, high = marks(setting, design.reader)
    return last(min(ceil(at - 1e-9), high), low), last(max(floor(at + 1e-9), low), high)


def stepped(design, setting, by):
    """The value so many marks from a setting's value: the first one lands on a mark; the ends of its range stop it.

    What is bought by size goes to the next size that is sold.
    """
    sizes = sold_sizes_m(design, setting.key)
    if sizes:
        return next_sold(number(design, setting), by, sizes)
    step, origin = grid(setting, design.reader)
    at = (number(design, setting) - origin) / step
    near = round(at)
    on = near if abs(at - near) < 1e-6 else floor(at) + (1 if by < 0 else 0)
    value = (on + by) * step + origin
    low, high = limits(setting)
    if low is None or high is None:
        return value
    return max(low, min(value, max(high, number(design, setting))))  # one may stand above where its slider ends


THE_SAME = {"cap_thickness": "wall"}  # settings whose word stands for another setting


def number(design, setting):
    """The number a setting stands at; for one left to be worked out, what it came to."""
    value = design.value(setting.key)
    if value == THE_SAME.get(setting.key):
        return design.value(value)
    return solve(design)[WORKED_OUT[setting.key]] if value == "auto" else value


def field_text(setting, value, unit_system):
    """A setting's value with its unit, exact: in the unit shown, or in that of its step where it steps in another."""
    unit = units.split_number(setting.step[0 if unit_system == "in" else 1])[1] if setting.step else ""
    if unit in ("", units.shown_unit(setting.dimension, unit_system)):
        return units.show(value, setting.dimension, unit_system, exact=True)
    return f"{units.from_si(value, unit, units.si_unit_of(setting.dimension)):.10g} {unit}"
