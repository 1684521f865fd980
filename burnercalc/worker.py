"""The page's only way in: a request as JSON text, the reply as JSON text. Knows no browser; a pure function of its input.

Requests: {"kind": "face", "settings": {key: text}}           what was typed; bare numbers take the unit shown beside the field
          {"kind": "solve", "settings": {...}, "figures": []} all answers and checks, and the drawings and charts named
          {"kind": "open", "link": "..."}                     a shared link
          {"kind": "step", "settings": {...}, "key", "by"}    one press of a step button, by +1 or -1
          {"kind": "file", "settings": {...}, "file", "site"} a file of FILES
Replies:  {"ok": true, ...} or {"ok": false, "errors": [{"setting", "value", "rule", "nearest", "text"}]}
"""
import base64
import json

from . import sheet, units
from .design import Design, limits
from .drawing.flat import flat_columns
from .errors import InputError, InputErrors
from .files import FILES
from .link import from_link, to_link
from .settings import BY_KEY, SETTINGS
from .solve import FACE_FIRST, solve


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
    return {"setting": error.field, "value": str(error.value), "rule": error.rule, "nearest": error.nearest,
            "text": f"{label}: {error.value} {error.rule}." + (f" Nearest that works: {error.nearest}." if error.nearest else "")}


def _design(request):
    texts = request["settings"]
    return Design.from_texts(texts, texts.get("units") if texts.get("units") in ("in", "mm") else "in")


def _face(request):
    """The face alone, quickly: what is redrawn while a setting moves."""
    result = solve(_design(request), FACE_FIRST)
    return {"answers": _answers(result), "drawings": {"face": _drawing(result, "face")}}


def _solve(request):
    return page_data(solve(_design(request)), request.get("figures", ()))


def _open(request):
    design, ignored = from_link(request["link"])
    return {"settings": design.texts, "ignored": [_error(error) for error in ignored]}


def _step(request):
    design, setting = _design(request), BY_KEY[request["key"]]
    mode = 0 if design.units == "in" else 1
    step = units.parse_quantity(setting.step[mode], setting.dimension, setting.key)
    offset = units.parse_quantity("0 " + units.shown_unit(setting.dimension, design.units), setting.dimension, setting.key) \
        if setting.dimension == "temperature" else 0.0
    step -= offset
    marks = (design.value(setting.key) - offset) / step
    near = round(marks)
    nearest = near + request["by"] if abs(marks - near) < 1e-6 else (int(marks // 1) + (1 if request["by"] > 0 else 0))
    value = nearest * step + offset
    low, high = limits(setting)
    value = min(max(value, low if low is not None else value), high if high is not None else value)
    return {"key": setting.key, "text": _field_text(setting, value, design.units)}


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
        "answers": _answers(result),
        "worst": result.worst,
        "checks": [{"key": c.key, "verdict": c.verdict, "label": c.label, "text": c.text, "source": c.source,
                    "trust": c.trust, "changes": [{"setting": x.setting, "move": x.move} for x in c.changes]}
                   for c in result.checks.values()],
        "tables": {table.key: _table(table, d.units) for table in result.tables.values()},
        "drawings": {name: _drawing(result, name) for name in figures if name in result.drawings},
        "charts": {name: _chart(result.charts[name], d.units) for name in figures if name in result.charts},
    }


def _answers(result):
    return {a.key: {"value": a.value, "shown": sheet.shown(a, result.design.units)} for a in result.answers.values()}


def _drawing(result, name):
    drawing = result.drawings[name]
    return {**flat_columns(drawing), "bounds": drawing.bounds(), "description": drawing.description}


def _table(table, unit_system):
    return {"title": table.title, "columns": [column.label for column in table.columns],
            "rows": [[units.show(cell, column.dimension, unit_system) for cell, column in zip(row, table.columns)]
                     for row in table.rows]}


def _field(setting, d):
    """What stands in a setting's field: text without its unit, and the unit."""
    value = d.value(setting.key)
    if setting.dimension not in units.DIMENSIONS:
        return {"text": d.text(setting.key) if setting.dimension != "choice" else value, "unit": ""}
    unit = units.shown_unit(setting.dimension, d.units)
    text = "" if value is None else units.show(value, setting.dimension, d.units, exact=True)
    return {"text": text.removesuffix(unit).strip(), "unit": units.readable(unit)}


def _chart(chart, unit_system):
    """A chart in the units shown."""
    def axis(values, side):
        unit = units.shown_unit(side.dimension, unit_system)
        return [v if v is None else units.from_si(v, unit, units.si_unit_of(side.dimension)) for v in values]

    def label(side):
        unit = units.readable(units.shown_unit(side.dimension, unit_system))
        return f"{side.label} [{unit}]" if unit else side.label
    return {"title": chart.title, "sentence": chart.sentence, "x_label": label(chart.x), "y_label": label(chart.y),
            "x_range": axis((chart.x.low, chart.x.high), chart.x), "y_range": axis((chart.y.low, chart.y.high), chart.y),
            "mark": {"x": axis(chart.mark[:1], chart.x), "y": axis(chart.mark[1:], chart.y)},
            "series": {s.key: {"x": axis(s.xs, chart.x), "y": axis(s.ys, chart.y), **({"y2": axis(s.ys2, chart.y)} if s.ys2 else {}),
                               "kind": s.kind, "label": s.label, "verdict": s.verdict} for s in chart.series}}


KINDS = {"face": _face, "solve": _solve, "open": _open, "step": _step, "file": _file}
