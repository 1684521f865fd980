"""A result as a text sheet for the terminal, and as plain data for JSON."""

import datetime

from . import units
from .link import to_link
from .rooms import ROOMS
from .settings import BY_KEY, SETTINGS

WIDE = 30  # columns of the labels
LIST_UNITS = {
    "lengths": "m",
    "offers": "m",
    "lining": "m",
    "blower_curve": "m3/s, Pa",
    "price_by_mass": "1/kg",
    "fuel_price": "per kg, J, m3 of liquid or m3 of gas, as named",
    "fuel_blend": "1",
}
MARKS = {"good": "good   ", "note": "note   ", "caution": "CAUTION", "stop": "STOP   "}


def as_data(result, base=""):
    """The result as a JSON-ready dict, SI numbers, lengths in m from the centre of the face."""
    d = result.design
    return {
        "settings": {s.key: {"value": _plain(d.value(s.key)), "unit": setting_unit(s)} for s in SETTINGS},
        "answers": {
            a.key: {
                "room": a.room,
                "near": a.near,
                "value": a.value,
                "unit": a.unit,
                "label": a.label,
                "meaning": a.meaning,
                "formula": a.formula,
                "inputs": list(a.inputs),
                "source": a.source,
                "trust": a.trust,
                "weakest": a.weakest.key,
                **({"band": list(a.band)} if a.band else {}),
            }
            for a in result.answers.values()
        },
        "ports": [{"x": x, "y": y, "diameter": d.port_diameter} for x, y in result.part("face").ports],
        "checks": [
            {
                "key": c.key,
                "room": c.room,
                "verdict": c.verdict,
                "value": c.value,
                "limit": c.limit,
                "unit": units.si_unit_of(c.dimension),
                "text": c.text,
                "source": c.source,
                "trust": c.trust,
                "change": [{"setting": change.setting, "move": change.move} for change in c.changes],
            }
            for c in result.checks.values()
        ],
        "tables": {
            t.key: {"title": t.title, "columns": [c.key for c in t.columns], "rows": [list(row) for row in t.rows]}
            for t in result.tables.values()
        },
        "link": to_link(d, base),
    }


def _plain(value):
    """A setting's value as JSON has it: dates as year-month-day."""
    return value.isoformat() if isinstance(value, datetime.date) else value


def setting_unit(setting):
    """SI unit of a setting's value, of its numbers where it is a list; "" for choices and words."""
    return (
        units.si_unit_of(setting.dimension)
        if setting.dimension in units.DIMENSIONS
        else LIST_UNITS.get(setting.dimension, "")
    )


def shown(answer, unit_system):
    """An answer as a person reads it, with its band when it has one."""
    text = units.show(answer.value, answer.dimension, unit_system)
    if answer.band and answer.value is not None:
        low, high = (units.show(limit, answer.dimension, unit_system) for limit in answer.band)
        if low == text == high:  # closer than the digits shown
            return text
        unit = " " + units.readable(units.shown_unit(answer.dimension, unit_system))
        text += f" ({low.removesuffix(unit)} to {high})"
    return text


def as_text(result, base=""):
    """The sheet: settings, answers and checks, each on a line, in the design's units."""
    d = result.design
    lines = []
    for room, title in ROOMS.items():
        members = [s for s in SETTINGS if s.room == room]
        if members:
            lines += ["", title.upper()]
            lines += [
                f"  {s.label:<{WIDE}}  {d.show(s.key)}{'' if s.key in d.texts else '  (default)'}" for s in members
            ]
    lines += ["", "ANSWERS"]
    lines += [f"  {a.label:<{WIDE}}  {shown(a, d.units)}" for a in result.answers.values()]
    lines += ["", "CHECKS"]
    for check in result.ranked():
        lines.append(f"  {MARKS[check.verdict]} {check.text}")
        if check.fault and check.changes:
            lines.append(
                "          change: "
                + ", ".join(f"{change.move} {BY_KEY[change.setting].label.lower()}" for change in check.changes)
            )
    lines += ["", "LINK", "  " + to_link(d, base), ""]
    return "\n".join(lines[1:])
