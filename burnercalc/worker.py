"""The page's only way in: a request as JSON text, the reply as JSON text. Knows no browser; a function of its input.

Requests: {"kind": "face", "settings": {key: text}}   as typed; bare numbers take the unit shown beside the field
          {"kind": "solve", "settings": {...}, "figures": []} all answers and checks, and the drawings and charts named
          {"kind": "draw", "settings": {...}, "figures": []}  the drawings named and nothing else
          {"kind": "open", "link": "..."}                     a shared link
          {"kind": "step", "settings": {...}, "key", "by"}    one press of a step button, by +1 or -1
          {"kind": "slide", "settings": {...}, "key", "mark"} a slider moved to a mark (a whole number of steps)
          {"kind": "drag", "settings": {...}, "key", "axis", "at"}  a line of the face dragged to x or y [mm]
          {"kind": "part", "settings": {...}, "key", "part"}  a tape fraction chosen for a length: its whole inches stay
          {"kind": "layers", "settings": {...}, "key", "rows"} the lining from rows: [material, thickness, old place]
          {"kind": "blower", "settings": {...}, "of"}         what is typical of a kind of blower, as texts of settings
          {"kind": "try", "settings": {...}, "key", "by", "check"}  a check, a setting so many steps away; with
                                                              "whole" also the other checks that are worse there
          {"kind": "compare", "settings": {...}, "other": {...}, "got", "other_got"} what differs between two designs
          {"kind": "code", "text"}                            a QR code, as SVG
          {"kind": "thumb", "settings": {...}}                a small picture of the face, as SVG
          {"kind": "file", "settings": {...}, "file", "site", "got"} a file of FILES, without what is got
          {"kind": "left", "settings": {...}, "got"}          what the shopping list still costs
          {"kind": "link", "settings": {...}, "have"}         the design's link, with a list of what is at hand
          {"kind": "have", "text"}                            what is at hand: its rows, and what is wrong with them
          {"kind": "find", "settings": {...}, "have", "weights"}    designs from what is at hand; tells on the way
          {"kind": "good", "settings": {...}}                 the fewest changes that mend a design
          {"kind": "shops", "settings": {...}}                a design over the tolerances of shops
`settings` may hold `mine` too: settings that stay as they are, with commas between; it goes with the design's link.
Figures:  names, or {name: [width, height, turn]}: the place on the screen in px, so that a drawing's words can be read
          in it and stand clear of its lines; height 0 is as high as it gets, and with turn what does not fit lies down.
Replies:  {"ok": true, ...} or {"ok": false, "errors": [{"setting", "value", "rule", "nearest", "text"}]}
"""

import base64
import json
from math import ceil, cos, floor, radians, sin, sqrt
from zlib import crc32

from . import sheet, shopping, units
from .checks.judge import VERDICTS
from .design import Design, as_shown, limit_text, limits, parse_setting, read, units_of, with_unit
from .drawing.flat import flat_columns
from .drawing.helvetica import CAP_HEIGHT_RATIO
from .drawing.qr import qr_shapes
from .drawing.shapes import DESCENT_RATIO, Drawing
from .drawing.svg import write_svg
from .errors import InputError, InputErrors, together
from .files import FILES
from .link import beside, from_link, read_beside, to_link
from .parts.cost import entries
from .result import solve, worsened
from .settings import BY_KEY, SETTINGS
from .sold import next_jet_drill, next_sold, sold_sizes_m
from .tables import find, read_table


def handle(request, tell=None):
    """Answer one request; `tell` is called with JSON text of how far a long one has come."""
    request = {**json.loads(request), "tell": tell}
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
    texts = {key: text for key, text in request["settings"].items() if key != "mine"}
    first = read({key: texts[key] for key in ("units", "fuel", "fuel_blend") if key in texts}, "in")[0]
    unit_system = first["units"] or "in"
    if "gas_pressure" in texts:  # a bare number stands beside the measure of its gas
        setting = as_shown(BY_KEY["gas_pressure"], first)
        texts = {**texts, "gas_pressure": with_unit(setting, texts["gas_pressure"], unit_system)}
    design, _ = together(lambda: Design.from_texts(texts, unit_system), lambda: _mine(request))
    return design


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
    return {"answers": _answers(result, FACE_ANSWERS), **_drawings(result, request.get("figures", ("face",)))}


def _solve(request):
    return page_data(_solved(_design(request)), request.get("figures", ()), _mine(request))


def _mine(request):
    mine, faults = read_beside("mine", request["settings"].get("mine", ""))
    if faults:
        raise InputErrors(faults)
    return mine


def _draw(request):
    return _drawings(_solved(_design(request)), request["figures"])


def _open(request):
    design, ignored = from_link(request["link"])
    texts = beside(request["link"])
    mine = {"mine": texts["mine"]} if "mine" in texts else {}
    return {
        "settings": {**design.texts, **mine},
        "ignored": [_error(error) for error in ignored],
        "have": texts.get("have", ""),
    }


def _link(request):
    return {"link": to_link(_design(request), "", {"mine": _mine(request), "have": request.get("have", "")})}


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
    """The value so many marks from a setting's value: the first one lands on a mark; the ends of its range stop it.

    What is bought by size goes to the next size that is sold.
    """
    sizes = sold_sizes_m(design, setting.key)
    if sizes:
        return next_sold(_number(design, setting), by, sizes)
    step, origin = _grid(setting, design.units)
    marks = (_number(design, setting) - origin) / step
    near = round(marks)
    on = near if abs(marks - near) < 1e-6 else floor(marks) + (1 if by < 0 else 0)
    value = (on + by) * step + origin
    low, high = limits(setting)
    if low is None or high is None:
        return value
    return max(low, min(value, max(high, _number(design, setting))))  # one may stand above where its slider ends


WORKED_OUT = {"firing_rate": "firing_rate_gross", "port_wall_temperature": "port_wall_low"}  # what auto comes to
THE_SAME = {"cap_thickness": "wall"}  # settings whose word stands for another setting


def _number(design, setting):
    """The number a setting stands at; for one left to be worked out, what it came to."""
    value = design.value(setting.key)
    if value == THE_SAME.get(setting.key):
        return design.value(value)
    return solve(design)[WORKED_OUT[setting.key]] if value == "auto" else value


def _movable(request):
    design = _design(request)
    setting = as_shown(BY_KEY[request["key"]], design.values())
    if not setting.step or not isinstance(_number(design, setting), (int, float)):
        raise InputError(setting.key, design.text(setting.key), "needs a number before it can be stepped")
    return design, setting


def _step(request):
    if BY_KEY[request["key"]].dimension == "drill":
        design = _design(request)
        jet = solve(design).part("jet").drill
        if jet is None:
            raise InputError(
                request["key"], design.text(request["key"]), "needs a drill before it can be stepped", "#54"
            )
        return {"key": request["key"], "text": next_jet_drill(jet.diameter_m, request["by"], design.units)}
    design, setting = _movable(request)
    return {"key": setting.key, "text": _field_text(setting, _stepped(design, setting, request["by"]), design.units)}


def _slide(request):
    design, setting = _movable(request)
    step, origin = _grid(setting, design.units)
    return {"key": setting.key, "text": _field_text(setting, request["mark"] * step + origin, design.units)}


def _drag(request):
    """The setting that a line of the face stands for, on the mark of its steps nearest to where the line was let go."""
    design, setting = _movable(request)
    at, half = abs(request["at"]) / 1000, (design.body_length if request["axis"] == "x" else design.body_width) / 2
    value = {
        "body_length": 2 * at,
        "body_width": 2 * at,
        "setback": half - at,
        "edge_margin": half - design.setback - at - design.port_diameter / 2,
    }[setting.key]
    step, origin = _grid(setting, design.units)
    low, high = _marks(setting, design.units)
    mark = min(max(round((value - origin) / step), low), high)
    text = _field_text(setting, mark * step + origin, design.units)
    return {"key": setting.key, "text": text, "words": f"{setting.label} {text}"}


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
        found += [("body_length", "x", -d.body_length / 2, -row), ("body_width", "y", 0.0, d.body_width / 2)]
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


def _part(request):
    design, setting = _movable(request)
    if setting.dimension != "length":
        raise InputError(setting.key, design.text(setting.key), "is not a length, so it has no part of an inch")
    inches = units.from_si(design.value(setting.key), "in", "m")
    text = f"{floor(inches + 1e-9)} {request['part']}".removesuffix(" 0").removeprefix("0 ")
    return {"key": setting.key, "text": f"{text or 0} in"}


def _blower(request):
    """Both figures of a kind of blower; a flow that was read off a plate stays, and the kind lends its pressure."""
    design, kinds = _design(request), read_table("blower_kinds")
    kind = find("blower_kinds", "key", request["of"], "blower")
    typical = [_blower_texts(each, design.units) for each in kinds]
    texts = _blower_texts(kind, design.units)
    own = design.texts.get("blower_free_flow")
    keeps = own is not None and own not in {each["blower_free_flow"] for each in typical}
    if keeps:
        texts["blower_free_flow"] = own
    if design.blower_curve:
        texts["blower_curve"] = ""  # it would stand over both
    shown = design.changed(texts)
    pressure, flow = shown.show("blower_shutoff_pressure"), shown.show("blower_free_flow")
    words = f"Typical of a {kind['name']}: {pressure} shut, " + (
        f"and your {flow} free stays." if keeps else f"{flow} free."
    )
    return {"texts": texts, "words": f"{words} One of its kind may give half or twice that: look at your plate."}


def _blower_texts(kind, unit_system):
    shut, free = ("inH2O", "cfm") if unit_system == "in" else ("mbar", "m3_h")
    return {
        "blower_shutoff_pressure": f"{kind[f'shut_{shut}']:g} {shut}",
        "blower_free_flow": f"{kind[f'free_{free}']:g} {free.replace('_', '/')}",
    }


ADDED_LAYER = ("blanket_8lb", {"in": "1 in", "mm": "25 mm"})


def _layers(request):
    """The lining's text from its rows. A thickness that still reads as it was shown stays as it was typed."""
    design, key = _design(request), request["key"]
    typed = [part.split(maxsplit=1)[1] for part in design.text(key).split(",")]
    shown = [text for _, text in _layers_shown(design.value(key), design.units)]
    rows = []
    for material, text, was in request["rows"]:
        if material == "":
            material, text = ADDED_LAYER[0], ADDED_LAYER[1][design.units]
        elif was is not None and text.strip() == shown[was]:
            text = typed[was]
        elif (found := units.split_number(text.strip())) and found[1] == "":
            text = f"{text.strip()} {units.shown_unit('length', design.units)}"
        rows.append(f"{material} {text.strip()}".strip())
    text = ", ".join(rows)
    parse_setting(BY_KEY[key], text)
    return {"key": key, "text": text}


def _layers_shown(layers, unit_system):
    """[material, thickness as it stands in its row's field] of each layer."""
    return [[material, units.field_text(thickness_m, "length", unit_system)] for material, thickness_m in layers]


def _try(request):
    from .find.score import ample

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
        "stepped": not setting.choices,
        "ample": bool(check and ample(check.key, check.verdict, check.value, check.limit)),
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
    judged, found = [], [dict(result.checks.items()) for result in (first, second)]
    for key in dict.fromkeys((*found[0], *found[1])):
        one = found[0].get(key) or found[1][key]
        verdicts = [checks[key].verdict if key in checks else None for checks in found]
        ranks = [VERDICTS.index(verdict or VERDICTS[0]) for verdict in verdicts]  # what does not apply is no fault
        if ranks[0] != ranks[1]:
            mine, other = (verdict or "does not apply" for verdict in verdicts)
            judged.append({"label": one.label, "mine": mine, "other": other, "better": ranks[1] - ranks[0]})
    # Of both the same rule: what is ticked as at hand is left out.
    left = [
        shopping.money(sum(row[-1] or 0.0 for row in shopping.left_to_buy(result, request.get(key, ()))))
        for result, key in ((first, "got"), (second, "other_got"))
    ]
    if left[0] != left[1]:
        answers.insert(0, {"label": "Left to buy, without what is ticked", "mine": left[0], "other": left[1]})
    return {
        "settings": settings,
        "answers": answers,
        "worst": [first.worst, second.worst],
        "checks": judged,  # better: below 0 where the other one is judged the better
        "faces": [_thumb_svg(first), _thumb_svg(second)],
    }


def _code(request):
    drawing = Drawing("code", "QR code of the link", qr_shapes(request["text"], 0.0, 0.0, 100.0))
    return {"svg": write_svg(drawing, margin=0.0)}


def _thumb(request):
    return {"svg": _thumb_svg(solve(_design(request)))}


def _thumb_svg(result):
    shapes = [shape for shape in result.drawings["face"].shapes if shape.layer in ("body", "window", "port")]
    return write_svg(Drawing("thumb", "Face", shapes))


# Of the second worker, which alone needs burnercalc.find


def _have(request):
    """The rows of a list, each as it was typed, however bad; and what is wrong with it."""
    from .find.have import read_have, rows_of

    errors = []
    try:
        read_have(request["text"], request.get("units", "in"))
    except InputErrors as refused:
        errors = refused.errors
    return {"rows": rows_of(request["text"]), "errors": [_error(error) for error in errors]}


def _find(request):
    """What is wrong with design and list, all of it; else the designs, each with its face."""
    from .find import find, read_have, report
    from .find.have import keeping
    from .find.score import weights_of

    tell, system = request["tell"], units_of(request["settings"])
    design, have, weights = together(
        lambda: _design(request),
        lambda: read_have(request["have"], system),
        lambda: weights_of(request.get("weights", {})),
    )
    have = keeping(have, design, [key for key in _mine(request).split(",") if key])

    def progress(done, most):
        tell(json.dumps({"done": done, "most": most}))

    def first(found):
        tell(json.dumps({"first": {"settings": found.texts}}))

    answer = find(design, have, weights, progress=tell and progress, first=tell and first)
    reply = report.as_data(answer, have)
    for shown, offer in zip(reply["designs"], answer.offers):
        shown["svg"] = _thumb_svg(offer.result)
        shown["got"] = _got(offer)
    return reply


def _got(offer):
    """Names of the rows of the offer's shopping list that are at hand, as the device keeps what is ticked."""
    result, own = offer.result, offer.bill.own
    listed = entries(result.part("cost"), result.part("train"), result.design.batch_size)
    names = []
    for entry, row in zip(listed, result.tables["shopping"].rows):
        there, name = own.get(entry.key, 0), shopping.name_of(row)
        if there >= entry.count:
            names.append(name)
        elif there:
            names.append(shopping.some_of(there, name))
    return names


def _good(request):
    from .find import make_good, report

    mended = make_good(_design(request), _mine(request).split(","))
    return report.mended_data(mended)


def _shops(request):
    from .find import report, sample, tornado

    design = _design(request)
    found = sample(design)
    return {"sample": report.shops_data(found), "tornado": report.tornado_data(tornado(design), design.units)}


def _field_text(setting, value, unit_system):
    """A setting's value with its unit, exact, in the unit shown."""
    return units.show(value, setting.dimension, unit_system, exact=True)


def _file(request):
    design = _design(request)
    name, media_type, make = FILES[request["file"]]
    given = {"got": request.get("got", ())} if request["file"].startswith("shopping-") else {}
    data = make(solve(design), to_link(design, request.get("site", "")), **given)
    return {"name": name, "type": media_type, "file_base64": base64.b64encode(data).decode("ascii")}


LISTS = ("shopping", "tools")  # what is ticked on them is at hand


def _left(request):
    result = _solved(_design(request))
    burner, tools = ((shopping.left_to_buy(result, request["got"], name), result.tables[name].rows) for name in LISTS)

    def told(lists):
        left, listed = lists
        spent, of = shopping.money(shopping.summed(left)), shopping.money(shopping.summed(listed))
        return f"{spent} of {of}, {len(left)} of {len(listed)} lines"

    return {"words": f"Left to buy: {told(burner)}. Tools and safety gear: {told(tools)}."}


def page_data(result, figures, mine=""):
    """What the page shows of a result: values for its tests and styles, texts for people, columns for its figures."""
    d = result.design
    return {
        "link": to_link(d, "", {"mine": mine}),
        "units": d.units,
        "texts": {**d.texts, "mine": mine} if mine else d.texts,
        "fields": {s.key: _field(s, d) | ({} if d.counts(s.key) else {"idle": True}) for s in SETTINGS},
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
        **_drawings(result, figures),
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


TEXT_PX = (11.0, 15.0)  # size of a drawing's letters on the screen: at least, at most
TEXTS_ACROSS = 42  # by the width of the drawing in between
FEW_PX = 170.0  # a face less high than this has its outside sizes only
DIAGONAL = sqrt(0.5)  # a port's number stands beside its hole, to the upper right
AIR = 0.02  # round a drawing, of its longer side
DRAWN_TIMES = 6  # each draws it a little wider, so the texts grow, and ever less


def _drawings(result, figures):
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


def _sides(drawing):
    x1, y1, x2, y2 = drawing.bounds()
    air = 2 * AIR * max(x2 - x1, y2 - y1)
    return x2 - x1 + air, y2 - y1 + air


def _drawing(result, name, place=None):
    drawing, lies = fitted(result, name, *place) if place else (result.drawings[name], False)
    x1, y1, x2, y2 = drawing.bounds()
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
    beside = {"grips": _grips(result, lies), "holes": _holes(result)} if name == "face" else {}
    return {
        **columns,
        **beside,
        "bounds": (x1 - air, y1 - air, x2 + air, y2 + air),
        "description": drawing.description,
    }


def _lower(texts):
    """From the base line of texts to the lowest that a letter reaches, on which the page's drawings stand them."""
    lower = [(radians(angle), DESCENT_RATIO * height) for angle, height in zip(texts["angle"], texts["height"])]
    texts["x"] = [x + down * sin(angle) for x, (angle, down) in zip(texts["x"], lower)]
    texts["y"] = [y - down * cos(angle) for y, (angle, down) in zip(texts["y"], lower)]


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
            f"{axis} {units.show(offset, 'length', d.units)}"
            for axis, offset in (("x", x + d.body_length / 2), ("y", y + d.body_width / 2))
        )
        flow = next((name for limit, name in FLOW_STEPS if share < limit), "flooded")
        found.append(
            (f"Port {number}: {place} from the corner with the triangle; flow {100 * share:.0f} % of the mean", flow)
        )
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
    value, setting = d.value(setting.key), as_shown(setting, d.values())
    if setting.dimension == "lining":
        unit = units.readable(units.shown_unit("length", d.units))
        return {
            "text": d.text(setting.key),
            "unit": "",
            "layers": _layers_shown(value, d.units),
            "layer_unit": unit,
        }
    if setting.dimension not in units.DIMENSIONS:
        return {"text": d.as_typed(setting.key) if setting.dimension != "choice" else value, "unit": ""}
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


KINDS = {
    "face": _face,
    "solve": _solve,
    "draw": _draw,
    "open": _open,
    "step": _step,
    "slide": _slide,
    "drag": _drag,
    "part": _part,
    "layers": _layers,
    "blower": _blower,
    "try": _try,
    "compare": _compare,
    "code": _code,
    "thumb": _thumb,
    "file": _file,
    "left": _left,
    "link": _link,
    "have": _have,
    "find": _find,
    "good": _good,
    "shops": _shops,
}
