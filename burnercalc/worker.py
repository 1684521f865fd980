"""The page's only way in: a request as JSON text, the reply as JSON text. Knows no browser; a function of its input.

Requests: {"kind": "face", "settings": {key: text}}   as typed; bare numbers take the unit shown beside the field
          {"kind": "solve", "settings": {...}, "figures": []} all answers and checks, and the drawings and charts named
          {"kind": "open", "link": "..."}                     a shared link
          {"kind": "step", "settings": {...}, "key", "by"}    one press of a step button, by +1 or -1
          {"kind": "slide", "settings": {...}, "key", "mark"} a slider moved to a mark (a whole number of steps)
          {"kind": "part", "settings": {...}, "key", "part"}  a tape fraction chosen for a length: its whole inches stay
          {"kind": "try", "settings": {...}, "key", "by", "check"}  a check, a setting so many steps away; with
                                                              "whole" also the other checks that are worse there
          {"kind": "compare", "settings": {...}, "other": {...}}    what differs between two designs
          {"kind": "code", "text"}                            a QR code, as SVG
          {"kind": "thumb", "settings": {...}}                a small picture of the face, as SVG
          {"kind": "file", "settings": {...}, "file", "site"} a file of FILES
Replies:  {"ok": true, ...} or {"ok": false, "errors": [{"setting", "value", "rule", "nearest", "text"}]}
"""

import base64
import json
from math import ceil, floor

from . import sheet, units
from .design import Design, limits, read
from .drawing.flat import flat_columns
from .drawing.qr import qr_shapes
from .drawing.shapes import Drawing
from .drawing.svg import write_svg
from .errors import InputError, InputErrors
from .files import FILES
from .link import from_link, to_link
from .result import solve, worsened
from .settings import BY_KEY, SETTINGS


def handle(request):
    """Answer one request."""
    request = json.loads(request)
    try:
        reply = KINDS[request["kind"]](request)
        reply["ok"] = True
    except InputErrors as refused:
        reply = {"ok": False, "errors": [_error(error) for error in refused.errors]}
    except InputError as refused:
        reply = {"ok": False, "errors": [_error(refused)]}
    return json.dumps(reply, ensure_ascii=False, allow_nan=False, separators=(",", ":"))


def _error(error):
    label = BY_KEY[error.field].label if error.field in BY_KEY else error.field
    return {
        "setting": error.field,
        "value": error.said,
        "rule": error.rule,
        "nearest": error.nearest,
        "text": f"{label}: {error.said} {error.rule}."
        + (f" Nearest that works: {error.nearest}." if error.nearest else ""),
    }


def _design(request):
    texts = request["settings"]
    return Design.from_texts(texts, read({"units": texts.get("units", "in")})[0]["units"] or "in")


_LAST = []  # the result before: what has not changed since is not worked out again


def _solved(design):
    """The Result of a design, with what it has in common with the one before."""
    result = solve(design, _LAST[0] if _LAST else None)
    _LAST[:] = [result]
    return result


# What is shown while the face is redrawn; the others follow with the whole.
FACE_ANSWERS = ("firing_rate_gross", "port_count", "plenum_to_port_ratio")


def _face(request):
    """The face alone, quickly: what is redrawn while a setting moves."""
    result = _solved(_design(request))
    return {"answers": _answers(result, FACE_ANSWERS), "drawings": {"face": _drawing(result, "face")}}


def _solve(request):
    return page_data(_solved(_design(request)), request.get("figures", ()))


def _open(request):
    design, ignored = from_link(request["link"])
    return {"settings": design.texts, "ignored": [_error(error) for error in ignored]}


def _grid(setting, unit_system):
    """(step, origin) of a setting's step buttons and slider, SI; marks are origin + n step."""
    step = units.parse_quantity(setting.step[0 if unit_system == "in" else 1], setting.dimension, setting.key)
    if setting.dimension != "temperature":
        return step, 0.0
    origin = units.to_si(0, units.shown_unit("temperature", unit_system), "K")
    return step - origin, origin


def _marks(setting, unit_system):
    """(lowest, highest) mark within a setting's range, or None where it has no step or no end."""
    low, high = limits(setting)
    if not setting.step or low is None or high is None:
        return None
    step, origin = _grid(setting, unit_system)
    return ceil((low - origin) / step - 1e-9), floor((high - origin) / step + 1e-9)


def _stepped(design, setting, by):
    """The value so many marks from a setting's value: the first one lands on a mark; the ends of its range stop it."""
    step, origin = _grid(setting, design.units)
    marks = (_number(design, setting) - origin) / step
    near = round(marks)
    on = near if abs(marks - near) < 1e-6 else floor(marks) + (1 if by < 0 else 0)
    value = (on + by) * step + origin
    low, high = limits(setting)
    return max(low, min(value, high)) if low is not None and high is not None else value


WORKED_OUT = {"firing_rate": "firing_rate_gross", "port_wall_temperature": "port_wall_low"}  # what auto comes to


def _number(design, setting):
    """The number a setting stands at; for one left to be worked out, what it came to."""
    value = design.value(setting.key)
    return solve(design)[WORKED_OUT[setting.key]] if value == "auto" else value


def _movable(request):
    design, setting = _design(request), BY_KEY[request["key"]]
    if not setting.step or not isinstance(_number(design, setting), (int, float)):
        raise InputError(setting.key, design.text(setting.key), "needs a number before it can be stepped")
    return design, setting


def _step(request):
    design, setting = _movable(request)
    return {"key": setting.key, "text": _field_text(setting, _stepped(design, setting, request["by"]), design.units)}


def _slide(request):
    design, setting = _movable(request)
    step, origin = _grid(setting, design.units)
    return {"key": setting.key, "text": _field_text(setting, request["mark"] * step + origin, design.units)}


def _part(request):
    design, setting = _movable(request)
    if setting.dimension != "length":
        raise InputError(setting.key, design.text(setting.key), "is not a length, so it has no part of an inch")
    inches = units.from_si(design.value(setting.key), "in", "m")
    text = f"{floor(inches + 1e-9)} {request['part']}".removesuffix(" 0").removeprefix("0 ")
    return {"key": setting.key, "text": f"{text or 0} in"}


def _try(request):
    design, setting = _design(request), BY_KEY[request["key"]]
    if setting.choices:
        values = [value for value, _ in setting.choices]
        at = values.index(design.value(setting.key)) + request["by"]
        if not 0 <= at < len(values):
            return {"verdict": "stop", "text": "", "end": True}
        text = values[at]
    else:
        design, setting = _movable(request)
        value = _stepped(design, setting, request["by"])
        text = _field_text(setting, value, design.units)
    changed = design.changed({setting.key: text})
    result = solve(changed, _LAST[0] if _LAST else None)
    check = result.checks.get(request["check"])
    worse = worsened(_solved(design), result) if request.get("whole") else []
    return {
        "verdict": check.verdict if check else "good",
        "text": text,
        "end": changed == design,
        "label": setting.label,
        "shown": changed.show(setting.key),
        "worsens": [{"key": each.key, "label": each.label, "verdict": each.verdict} for each in worse],
    }


def _compare(request):
    mine, other = _design(request), _design({"settings": request["other"]})
    other = other.changed({"units": mine.units})
    first, second = solve(mine), solve(other)
    settings = [
        {"label": s.label, "mine": mine.show(s.key), "other": other.show(s.key)}
        for s in SETTINGS
        if mine.value(s.key) != other.value(s.key)
    ]
    answers = []
    for answer in first.answers.values():
        texts = [sheet.shown(result.answers[answer.key], mine.units) for result in (first, second)]
        if texts[0] != texts[1]:
            answers.append({"label": answer.label, "mine": texts[0], "other": texts[1]})
    return {"settings": settings, "answers": answers, "worst": [first.worst, second.worst]}


def _code(request):
    drawing = Drawing("code", "QR code of the link", qr_shapes(request["text"], 0.0, 0.0, 100.0))
    return {"svg": write_svg(drawing, margin=0.0)}


def _thumb(request):
    result = solve(_design(request))
    shapes = [shape for shape in result.drawings["template"].shapes if shape.layer in ("body", "window", "port")]
    return {"svg": write_svg(Drawing("thumb", "Face", shapes))}


def _field_text(setting, value, unit_system):
    """A setting's value with its unit, exact, in the unit shown."""
    return units.show(value, setting.dimension, unit_system, exact=True)


def _file(request):
    design = _design(request)
    name, media_type, make = FILES[request["file"]]
    data = make(solve(design), to_link(design, request.get("site", "")))
    return {"name": name, "type": media_type, "file_base64": base64.b64encode(data).decode("ascii")}


def page_data(result, figures):
    """What the page shows of a result: values for its tests and styles, texts for people, columns for its figures."""
    d = result.design
    return {
        "link": to_link(d),
        "units": d.units,
        "texts": d.texts,
        "fields": {s.key: _field(s, d) for s in SETTINGS},
        "answers": _answers(result, result.answers),
        "worst": result.worst,
        "checks": [
            {
                "key": c.key,
                "room": c.room,
                "verdict": c.verdict,
                "label": c.label,
                "text": c.text,
                "source": str(c.declared.source),
                "changes": [{"setting": x.setting, "move": x.move} for x in c.changes],
            }
            for c in result.ranked()
        ],
        "tables": {table.key: _table(table, d.units) for table in result.tables.values()},
        "drawings": {name: _drawing(result, name) for name in figures if name in result.drawings},
        "charts": {name: _chart(result.charts[name], d.units) for name in figures if name in result.charts},
    }


def _answers(result, keys):
    unit_system = result.design.units
    return {
        key: {
            "value": a.value,
            "shown": sheet.shown(a, unit_system).replace(" (", "\n(") if a.band else sheet.shown(a, unit_system),
            **({"brief": units.show(a.value, a.dimension, unit_system)} if a.band else {}),
            **({"weakest": a.weakest.key} if a.weakest.key != key else {}),
        }
        for key, a in ((key, result.answers[key]) for key in keys)
    }


FILLED = ("body", "window")  # what a screen shows as steel and refractory


def _drawing(result, name):
    drawing = result.drawings[name]
    x1, y1, x2, y2 = drawing.bounds()
    air = 0.02 * max(x2 - x1, y2 - y1)
    columns = flat_columns(drawing, FILLED if name == "face" else ())
    ports, circles = iter(_ports(result) if name == "face" else ()), columns["circles"]
    said = [next(ports, ("", "none")) if layer == "port" else ("", "none") for layer in circles["layer"]]
    circles.update(
        words=[words for words, _ in said],
        flow=[flow for _, flow in said],
        number=[str(number) if words else "" for number, (words, _) in zip(circles["number"], said)],
    )
    return {**columns, "bounds": (x1 - air, y1 - air, x2 + air, y2 + air), "description": drawing.description}


# Shares of the mean flow at which a port's colour changes; even is within what nobody sees in the fire.
FLOW_STEPS = ((0.9, "starved"), (0.97, "less"), (1.03, "even"), (1.1, "more"))


def _ports(result):
    """What a tap on each port says, and which colour its flow has: [(words, flow)]."""
    d, found = result.design, []
    for number, ((x, y), share) in enumerate(zip(result.part("face").ports, result.part("shares").ports), 1):
        place = ", ".join(
            f"{axis} {units.show(offset, 'length', d.units)}"
            for axis, offset in (("x", x + d.body_length / 2), ("y", y + d.body_width / 2))
        )
        flow = next((name for limit, name in FLOW_STEPS if share < limit), "flooded")
        found.append((f"Port {number}: {place} from the lower left corner; flow {100 * share:.0f} % of the mean", flow))
    return found


def _table(table, unit_system):
    return {
        "title": table.title,
        "columns": [column.label for column in table.columns],
        "rows": [
            [units.show(cell, column.dimension, unit_system) for cell, column in zip(row, table.columns)]
            for row in table.rows
        ],
    }


def _field(setting, d):
    """What stands in a setting's field: text without its unit, and the unit."""
    value = d.value(setting.key)
    if setting.dimension not in units.DIMENSIONS:
        return {"text": d.text(setting.key) if setting.dimension != "choice" else value, "unit": ""}
    unit = units.shown_unit(setting.dimension, d.units)
    field = {"text": _number_text(setting, value, d), "unit": units.readable(unit)}
    low, high = limits(setting)
    if low is not None and high is not None:
        field["range"] = _range(setting, low, high, d.units)
    marks = _marks(setting, d.units) if isinstance(value, (int, float)) else None
    if marks:
        step, origin = _grid(setting, d.units)
        field["marks"] = [*marks, round((value - origin) / step)]
    return field


def _number_text(setting, value, d):
    """As typed where it was typed in the unit shown, else rounded: what is not edited is never read back."""
    if value is None or isinstance(value, str):
        return value or ""
    unit, typed = units.shown_unit(setting.dimension, d.units), d.texts.get(setting.key, "")
    shown = units.field_text(value, setting.dimension, d.units)
    if unit and typed.endswith(unit) and "/" not in shown:
        return typed.removesuffix(unit).strip()
    return shown


def _range(setting, low, high, unit_system):
    """A setting's range: as declared where it is declared in the units shown, so that it reads in round figures."""
    if unit_system != "in" and setting.dimension not in ("time", "money", "fraction"):
        return f"{_bare(low, setting, unit_system)} to {units.show(high, setting.dimension, unit_system)}"
    (first, first_unit), (last, last_unit) = (_split(text) for text in (setting.low, setting.high))
    between = "" if first_unit == last_unit else f" {units.readable(first_unit)}"
    return f"{first}{between} to {last} {units.readable(last_unit)}".strip()


def _split(text):
    """(number, unit) of a declared quantity, as texts: `1 1/2 in` -> ("1 1/2", "in")."""
    number, _, unit = text.rpartition(" ")
    return (number, unit) if number and not unit[0].isdigit() else (text, "")


def _bare(value, setting, unit_system):
    """A value as shown, without its unit."""
    return (
        units.show(value, setting.dimension, unit_system)
        .removesuffix(units.readable(units.shown_unit(setting.dimension, unit_system)))
        .strip()
    )


def _chart(chart, unit_system):
    """A chart in the units shown."""

    def axis(values, side):
        unit = units.shown_unit(side.dimension, unit_system)
        return [v if v is None else units.from_si(v, unit, units.si_unit_of(side.dimension)) for v in values]

    def label(side):
        unit = units.readable(units.shown_unit(side.dimension, unit_system))
        return f"{side.label} [{unit}]" if unit else side.label

    def series(s, xs, ys, ys2=()):
        return {
            "x": axis(xs, chart.declared.x),
            "y": axis(ys, chart.declared.y),
            **({"y2": axis(ys2, chart.declared.y)} if ys2 else {}),
            "kind": s.kind,
            "label": s.label,
            "verdict": s.verdict,
        }

    declared, plot = chart.declared, chart.plot
    return {
        "title": chart.title,
        "sentence": chart.sentence,
        "x_label": label(declared.x),
        "y_label": label(declared.y),
        "x_range": axis(plot.x, declared.x),
        "y_range": axis(plot.y, declared.y),
        "x_ticks": [list(tick) for tick in declared.x.ticks],
        "mark": {"x": axis(plot.mark[:1], declared.x), "y": axis(plot.mark[1:], declared.y)},
        "series": {s.key: series(s, *plot.series[s.key]) for s in declared.series},
    }


KINDS = {
    "face": _face,
    "solve": _solve,
    "open": _open,
    "step": _step,
    "slide": _slide,
    "part": _part,
    "try": _try,
    "compare": _compare,
    "code": _code,
    "thumb": _thumb,
    "file": _file,
}
