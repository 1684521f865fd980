"""A result as the page shows it: values for its tests and styles, texts for people, columns for its figures."""

from dataclasses import replace
from math import cos, radians, sin, sqrt
from zlib import crc32

from . import sheet, steps, units
from .design import as_shown, limit_text, limits
from .drawing.flat import flat_columns
from .drawing.helvetica import CAP_HEIGHT_RATIO
from .drawing.shapes import DESCENT_RATIO, Drawing, Text, box_round, shape_box
from .drawing.svg import write_svg
from .errors import InputError
from .link import to_link
from .settings import SETTINGS


def whole(result, figures, mine=""):
    """What the page shows of a result: values for its tests and styles, texts for people, columns for its figures."""
    d = result.design
    return {
        "link": to_link(d, "", {"mine": mine}),
        "units": d.units,
        "texts": {**d.texts, "mine": mine} if mine else d.texts,
        "fields": {s.key: _field(s, d) | ({} if d.counts(s.key) else {"idle": True}) for s in SETTINGS},
        "answers": answers(result, result.answers, whole=True),
        "worst": result.worst,
        "checks": [
            {
                "key": c.key,
                "room": c.room,
                "verdict": c.verdict,
                "label": c.label,
                "text": c.text,
                "source": units.in_measures(str(c.declared.source), d.reader),
                "changes": [{"setting": x.setting, "move": x.move, "alone": x.alone} for x in c.changes],
            }
            for c in result.ranked()
        ],
        "tables": {table.key: _table(table, d.reader) for table in result.tables.values()},
        **drawings(result, figures),
        "charts": {name: _chart(result.charts[name], d.reader) for name in figures if name in result.charts},
    }


def answers(result, keys, whole=False):
    unit_system = result.design.reader
    return {
        key: {
            "value": a.value,
            "shown": sheet.shown(a, unit_system).replace(" (", "\n(") if a.band else sheet.shown(a, unit_system),
            **({"brief": f"up to {a.shown(a.band[1])}" if a.declared.at_most else a.brief} if a.band else {}),
            **({"weakest": a.weakest.key} if a.weakest.key != key else {}),
            **({"aim": result.aim(a)} if whole and a.declared.aim else {}),
            **({"idle": True} if result.idle(a) else {}),
        }
        for key, a in ((key, result.answers[key]) for key in keys)
    }


def high_fire(result):
    """What the rate on the first screen is of."""
    d, whole_W = result.design, result.part("firing").installed_W
    if d.burner_count == 1:
        return "High fire."
    return f"High fire of each of {d.burner_count} burners, {units.show(whole_W, 'power', d.reader)} together."


FILLED = ("body", "window")  # what a screen shows as steel and refractory


TEXT_PX = (11.0, 15.0)  # size of a drawing's letters on the screen: at least, at most
TEXTS_ACROSS = 42  # by the width of the drawing in between
FEW_PX = 170.0  # a face less high than this has its outside sizes only
DIAGONAL = sqrt(0.5)  # a port's number stands beside its hole, to the upper right
NUMBER_PX, DIGIT_RATIO = 10.0, 0.65  # of its letters, and how wide a digit is for its height
AIR = 0.02  # round a drawing, of its longer side
DRAWN_TIMES = 6  # each draws it a little wider, so the texts grow, and ever less


def drawings(result, figures):
    places = figures if isinstance(figures, dict) else dict.fromkeys(figures)
    return {
        "drawings": {name: _drawing(result, name, place) for name, place in places.items() if name in result.drawings}
    }


def fitted(result, name, width_px, height_px=0.0, turn=False):
    """(a drawing for a place on the screen, whether it lies down): its texts as high as can be read there, all
    else laid out round them."""
    few = name == "face" and 0 < height_px < FEW_PX
    font_px = min(max(TEXT_PX[0], width_px / TEXTS_ACROSS), TEXT_PX[1])
    drawing, lies = result.drawings[name], False
    for _ in range(DRAWN_TIMES):
        wide, high = _sides(drawing)
        if turn and height_px > width_px and wide > high:
            wide, high, lies = high, wide, True
        mm_per_px = max(wide / width_px, high / height_px if height_px else 0.0)
        drawing = result.drawing(name, text_mm=CAP_HEIGHT_RATIO * font_px * mm_per_px, few=few)
    return (drawing.turned() if lies else drawing), lies


WIDER = 1.2  # letters of the widest of the common screen fonts, by those of the one that bounds are reckoned with


def _bounds(drawing):
    """Of a drawing whose letters may be of another font."""
    texts = [shape for shape in drawing.shapes if isinstance(shape, Text)]
    return box_round([drawing.bounds(), *(shape_box(replace(text, height=WIDER * text.height)) for text in texts)])


def _sides(drawing):
    x1, y1, x2, y2 = _bounds(drawing)
    air = 2 * AIR * max(x2 - x1, y2 - y1)
    return x2 - x1 + air, y2 - y1 + air


def _drawing(result, name, place=None):
    try:
        drawing, lies = fitted(result, name, *place) if place else (result.drawings[name], False)
    except InputError as refused:  # a shape beyond all paper
        raise InputError("figures", f"{name} {place}", "must be of a place that its words have room in") from refused
    x1, y1, x2, y2 = _bounds(drawing)
    air = AIR * max(x2 - x1, y2 - y1)
    columns = flat_columns(drawing, FILLED if name == "face" else ())
    _lower(columns["texts"])
    ports, circles = iter(_ports(result) if name == "face" else ()), columns["circles"]
    said = [next(ports, ("", "none")) if layer == "port" else ("", "none") for layer in circles["layer"]]
    circles.update(
        words=[words for words, _ in said],
        flow=[flow for _, flow in said],
        number=[str(number) if words else "" for number, (words, _) in zip(circles["number"], said)],
        number_x=[x + DIAGONAL * r for x, r in zip(circles["x"], circles["r"])],
        number_y=[y + DIAGONAL * r for y, r in zip(circles["y"], circles["r"])],
    )
    if name == "face" and place:
        wide, high = _sides(drawing)
        _thin_out(circles, max(wide / place[0], high / place[1] if place[1] else 0.0))
    beside = {"grips": _grips(result, lies), "holes": _holes(result)} if name == "face" else {}
    return {
        **columns,
        **beside,
        "bounds": (x1 - air, y1 - air, x2 + air, y2 + air),
        "description": drawing.description,
    }


def _thin_out(circles, mm_per_px):
    """Leave out each port's number that would stand in one before it; a tap tells it."""
    high, taken = NUMBER_PX * mm_per_px, []
    for at, (text, x, y) in enumerate(zip(circles["number"], circles["number_x"], circles["number_y"])):
        wide = DIGIT_RATIO * len(text) * high
        if any(abs(y - y2) < high and x < x2 + wide2 and x2 < x + wide for x2, y2, wide2 in taken):
            circles["number"][at] = ""
        elif text:
            taken.append((x, y, wide))


def _lower(texts):
    """From the base line of texts to the lowest that a letter reaches, on which the page's drawings stand them."""
    lower = [(radians(angle), DESCENT_RATIO * height) for angle, height in zip(texts["angle"], texts["height"])]
    texts["x"] = [x + down * sin(angle) for x, (angle, down) in zip(texts["x"], lower)]
    texts["y"] = [y - down * cos(angle) for y, (angle, down) in zip(texts["y"], lower)]


def _grips(result, lies):
    """What of the face can be dragged: setting, axis of the face, axis on the screen, and where its handle stands [mm].

    The outside of a round body is one size and not dragged; the handle of the outer row stands beside it, on the lip.
    """
    d, face = result.design, result.part("face")
    length = face.window_length_m / 2
    row = max(y for _, y in face.ports)
    beside = (d.body_length / 2 + length) / 2
    found = [("setback", "x", length, 0.0)]
    if face.round:
        beside = sqrt(max(beside**2 - row**2, 0.0))
    else:
        low = -max(row, d.body_width / 3)  # clear of the row's own, were the rows close together
        found += [("body_length", "x", -d.body_length / 2, low), ("body_width", "y", 0.0, d.body_width / 2)]
    if row > 0:
        found.append(("edge_margin", "y", -beside, row))
    return [
        {
            "key": key,
            "axis": axis,
            "screen": {"x": "y", "y": "x"}[axis] if lies else axis,
            "x": 1000 * (-y if lies else x),
            "y": 1000 * (x if lies else y),
        }
        for key, axis, x, y in found
    ]


def _holes(result):
    """A name of all places of ports [0.1 mm]: marks that somebody made on a face are kept under it."""
    places = ";".join(f"{round(1e4 * x)},{round(1e4 * y)}" for x, y in result.part("face").ports)
    return f"{crc32(places.encode()):08x}"


# Shares of the mean flow at which a port's colour changes; even is within what nobody sees in the fire.
FLOW_STEPS = ((0.9, "starved"), (0.97, "less"), (1.03, "even"), (1.1, "more"))


def _ports(result):
    """What a tap on each port says, and which colour its flow has: [(words, flow)]."""
    d, found = result.design, []
    for number, ((x, y), share) in enumerate(zip(result.part("face").ports, result.part("shares").ports), 1):
        place = ", ".join(
            f"{axis} {units.show(offset, 'length', d.reader)}"
            for axis, offset in (("x", x + d.body_length / 2), ("y", y + d.body_width / 2))
        )
        flow = next((name for limit, name in FLOW_STEPS if share < limit), "flooded")
        found.append(
            (f"Port {number}: {place} from the corner with the triangle; flow {100 * share:.0f} % of the mean", flow)
        )
    return found


def thumb_svg(result):
    shapes = [shape for shape in result.drawings["face"].shapes if shape.layer in ("body", "window", "port")]
    return write_svg(Drawing("thumb", "Face", shapes))


def _table(table, unit_system):
    priced = any(column.dimension in ("money", "price") for column in table.columns)
    return {
        "title": table.title,
        **({"caption": f"{table.title}, prices in your money"} if priced and not units.sign_of(unit_system) else {}),
        "columns": [column.label for column in table.columns],
        "rows": [
            [units.show(cell, column.dimension, unit_system) for cell, column in zip(row, table.columns)]
            for row in table.rows
        ],
    }


def _field(setting, d):
    """What stands in a setting's field: text without its unit, and the unit."""
    value, setting = d.value(setting.key), as_shown(setting, d.values())
    if setting.dimension == "lining":
        unit = units.readable(units.shown_unit("length", d.reader))
        return {
            "text": d.text(setting.key),
            "unit": "",
            "shown": d.show(setting.key),
            "layers": layers_shown(value, d.reader),
            "layer_unit": unit,
        }
    if setting.dimension not in units.DIMENSIONS:
        text, shown = d.as_typed(setting.key) if setting.dimension != "choice" else value, d.show(setting.key)
        return {"text": text, "unit": "", **({"shown": shown} if shown not in (text, "none") else {})}
    unit = units.shown_unit(setting.dimension, d.reader)
    if setting.dimension == "money":
        unit = d.money_sign or ""
    field = {"text": _number_text(setting, value, d), "unit": units.readable(unit)}
    low, high = limits(setting)
    if low is not None and high is not None:
        field["range"] = _range(setting, low, high, d.reader)
    marks = steps.marks(setting, d.reader) if isinstance(value, (int, float)) else None
    if marks:
        step, origin = steps.grid(setting, d.reader)
        if setting.room == "face" and setting.dimension == "length":
            free, marks = marks, steps.marks_left(d, setting)
            if marks != free:
                field["range"] = _range_left(marks, free, setting, d.reader)
        field["marks"] = [*marks, round((value - origin) / step)]
    return field


def _range_left(marks, free, setting, unit_system):
    """A setting's range where the rest of the design leaves less of it, by the marks of its slider."""
    unit, (step, origin) = units.shown_unit(setting.dimension, unit_system), steps.grid(setting, unit_system)
    ends = [
        limit_text(setting, limit, unit_system)
        if mark == end
        else f"{units.field_text(mark * step + origin, setting.dimension, unit_system)} {unit}"
        for limit, mark, end in zip(("low", "high"), marks, free)
    ]
    return f"{ends[0].removesuffix(f' {unit}')} to {ends[1]}, the rest as it is"


def _number_text(setting, value, d):
    """As typed where it was typed in the unit shown, else rounded: what is not edited is never read back."""
    if value is None or isinstance(value, str):
        return value or ""
    unit, typed = units.shown_unit(setting.dimension, d.reader), units.plain(d.texts.get(setting.key, ""), setting.key)
    shown = units.field_text(value, setting.dimension, d.reader)
    found = units.split_number(typed)
    if unit and found and units.known_unit(found[1]) == unit and "/" not in shown:
        return typed.removesuffix(found[1]).strip()
    return shown


def _range(setting, low, high, unit_system):
    """A setting's range: as declared where it is declared in the units shown, so that it reads in round figures."""
    if unit_system != "in" and setting.dimension not in ("time", "money", "fraction"):
        least, most = (limit_text(setting, limit, unit_system) for limit in ("low", "high"))
        unit = units.readable(units.shown_unit(setting.dimension, unit_system))
        return f"{_split(least)[0]} to {_split(most)[0]} {unit}".strip()
    if setting.dimension == "drill_length":
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


def layers_shown(layers, unit_system):
    """[material, thickness as it stands in its row's field] of each layer."""
    return [[material, units.field_text(thickness_m, "length", unit_system)] for material, thickness_m in layers]


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
            "x": axis(xs, chart.x),
            "y": axis(ys, chart.y),
            **({"y2": axis(ys2, chart.y)} if ys2 else {}),
            "kind": s.kind,
            "label": s.label,
            "verdict": s.verdict,
        }

    declared, plot = chart.declared, chart.plot
    return {
        "title": chart.title,
        "sentence": chart.sentence,
        "x_label": label(chart.x),
        "y_label": label(chart.y),
        "x_range": axis(plot.x, chart.x),
        "y_range": axis(plot.y, chart.y),
        "x_ticks": [list(tick) for tick in declared.x.ticks],
        "mark": {"x": axis(plot.mark[:1], chart.x), "y": axis(plot.mark[1:], chart.y)},
        "series": {s.key: series(s, *plot.series[s.key]) for s in declared.series},
    }
