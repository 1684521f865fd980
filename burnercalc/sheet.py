"""A result as a text sheet for the terminal, and as plain data for JSON."""

import datetime
from textwrap import wrap

from . import units
from .link import to_link
from .rooms import ROOMS
from .settings import BY_KEY, SETTINGS

WIDE = 30  # columns of the labels
ACROSS = 110  # columns of the sentences
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
AFTER_MARK = 10  # columns before a sentence


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
                "change": [{"setting": change.setting, "move": change.move} for change in c.offered],
            }
            for c in result.told
        ],
        "tables": {
            t.key: {"title": t.title, "columns": [c.key for c in t.columns], "rows": [list(row) for row in t.rows]}
            for t in result.tables.values()
        },
        "link": to_link(d, base),
    }


def _plain(value):
    """A setting's value as JSON has it: dates as year-month-day, those of spells too."""
    if isinstance(value, tuple):
        return [_plain(one) for one in value]
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
    text = answer.brief
    if answer.band and answer.value is not None:
        low, high = map(answer.shown, answer.band)
        if low == text == high:  # closer than the digits shown
            return text
        unit = " " + units.readable(units.shown_unit(answer.dimension, unit_system))
        unit = " mbar" if low.endswith(" mbar") and high.endswith(" mbar") else unit
        text += f" ({low.removesuffix(unit)} to {high})"
    return text


def as_text(result, base="", whole=False):
    """The sheet, in the design's units: verdict, each room's first answers, what checks find or note, what is set.

    whole: also what can be looked up: every answer, every check, and the settings that are the example's.
    """
    d = result.design
    found = result.ranked()
    worst = next((check.text for check in found if check.fault), "no check asks for a change.")
    lines = wrap(f"{result.worst.upper()}: {worst}", ACROSS, break_on_hyphens=False)
    for room, title in ROOMS.items():
        lines += _part(title, [_line(a.label, shown(a, d.reader)) for a in _answers(result, room, whole)])
    lines += _part("Checks", [line for check in found if whole or check.verdict != "good" for line in _said(check)])
    for room, title in ROOMS.items():
        members = [s for s in SETTINGS if s.room == room and (whole or s.key in d.texts)]
        lines += _part(
            f"{title}, set",
            [_line(s.label, d.show(s.key) + _of_setting(d, s.key)) for s in members],
        )
    lines += _part("Link", ["  " + to_link(d, base)])
    return "\n".join([*lines, ""])


def _of_setting(design, key):
    """Beside a setting: whether it is the example's, and where nothing hangs on it, that too."""
    notes = ([] if key in design.texts else ["default"]) + ([] if design.counts(key) else ["nothing hangs on it here"])
    return f"  ({', '.join(notes)})" if notes else ""


def table_text(table, unit_system):
    """A table as text in columns, in those units; numbers stand on the right."""
    rows = [[column.label for column in table.columns]]
    rows += [
        [units.show(cell, column.dimension, unit_system) for cell, column in zip(row, table.columns)]
        for row in table.rows
    ]
    widths = [max(map(len, cells)) for cells in zip(*rows)]
    words = [column.dimension == "word" for column in table.columns]
    lines = [
        "  ".join(
            cell.ljust(wide) if word else cell.rjust(wide) for cell, wide, word in zip(row, widths, words)
        ).rstrip()
        for row in rows
    ]
    return "\n".join([table.title, *lines, ""])


def _part(title, lines):
    return ["", title.upper(), *lines] if lines else []


def _line(label, text):
    return "\n".join(
        wrap(
            text,
            ACROSS,
            initial_indent=f"  {label:<{WIDE}}  ",
            subsequent_indent=" " * (WIDE + 4),
            break_on_hyphens=False,
        )
    )


def _answers(result, room, whole):
    found = [a for a in result.answers.values() if a.room == room]
    return [a for a in found if (whole or a.near == "first") and not result.idle(a)]


def _said(check):
    """A check in lines of a terminal, and what to move against a fault."""
    after = {"subsequent_indent": " " * AFTER_MARK, "break_on_hyphens": False}
    lines = wrap(check.text, ACROSS, initial_indent=f"  {MARKS[check.verdict]} ", **after)
    if check.fault and check.offered:
        moves = ", ".join(f"{change.move} {BY_KEY[change.setting].label.lower()}" for change in check.offered)
        lines += wrap(f"change: {moves}", ACROSS, initial_indent=" " * AFTER_MARK, **after)
    return lines
