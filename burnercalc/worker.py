"""The page's only way in: a request as JSON text, the reply as JSON text. Knows no browser; a function of its input.

Requests: {"kind": "face", "settings": {key: text}}   as typed; a bare number takes its reader's unit, but of a
                                                              gas pressure, which the page sends with what is beside it
          {"kind": "solve", "settings": {...}, "figures": []} all answers and checks, and the drawings and charts named
          {"kind": "draw", "settings": {...}, "figures": []}  the drawings named and nothing else
          {"kind": "open", "link": "..."}                     a shared link
          {"kind": "job", "settings": {...}, "job", "release"}  the link of a job, in the fuel and units of a design
          {"kind": "step", "settings": {...}, "key", "by"}    one press of a step button, by +1 or -1
          {"kind": "slide", "settings": {...}, "key", "mark"} a slider moved to a mark (a whole number of steps)
          {"kind": "drag", "settings": {...}, "key", "axis", "at"}  a line of the face dragged to x or y [mm]
          {"kind": "part", "settings": {...}, "key", "part"}  a tape fraction chosen for a length: its whole inches stay
          {"kind": "layers", "settings": {...}, "key", "rows"} the lining from rows: [material, thickness, old place]
          {"kind": "blower", "settings": {...}, "of"}         what is typical of a kind of blower, as texts of settings
          {"kind": "try", "settings": {...}, "key", "by", "check"}  a check, a setting so many steps away; with
                                                              "whole" also the other checks that are worse there
          {"kind": "fit", "settings": {...}}                  the fire that follows the chamber, and what that spoils
          {"kind": "compare", "settings": {...}, "other": {...}, "got", "other_got"} what differs between two designs
          {"kind": "code", "text"}                            a QR code, as SVG
          {"kind": "thumb", "settings": {...}}                a small picture of the face, as SVG
          {"kind": "file", "settings": {...}, "file", "site", "got"} a file of FILES, without what is got
          {"kind": "left", "settings": {...}, "got"}          what the shopping list still costs
          {"kind": "link", "settings": {...}, "have"}         the design's link, with a list of what is at hand
          {"kind": "have", "text", "units"}                   what is at hand: its rows, and what is wrong with them
          {"kind": "find", "settings": {...}, "have", "weights"}    designs from what is at hand; tells on the way
          {"kind": "asked", "settings": {...}}                what burners a search would look for, in sentences
          {"kind": "good", "settings": {...}}                 few changes that mend a design; tells on the way
          {"kind": "shops", "settings": {...}}                a design over the tolerances of shops; tells on the way
`solve` and `file` may say `today`, written year-month-day, which is then offered for a day that cannot be read.
`face` and `solve` may say `before`, the settings that stood there: what follows from a change, such as the pressure of
another supply of gas, is then brought, and `solve` says what in `brought`.
`settings` may hold `mine` too: settings that stay as they are, with commas between; it goes with the design's link.
Figures:  names, or {name: [width, height, turn]}: the place on the screen in px, so that a drawing's words can be read
          in it and stand clear of its lines; height 0 is as high as it gets, and with turn what does not fit lies down.
Replies:  {"ok": true, ...} or {"ok": false, "errors": [{"setting", "value", "rule", "nearest", "offer", "text"}]}.
          `nearest` is to be typed, `offer` is the same as printed: 120 degF and 120 °F.
"""

import base64
import json
import re
from fractions import Fraction
from math import floor, inf, log
from types import NoneType

from . import jobs, on_page, sheet, shopping, steps, units
from .checks import CHECKS
from .checks.judge import VERDICTS
from .design import Design, as_shown, parse_setting, read, supplied, units_of
from .drawing.qr import MOST_CODED, qr_shapes
from .drawing.shapes import Drawing
from .drawing.svg import write_svg
from .errors import A_DAY, InputError, InputErrors, require, together
from .files import FILES
from .grammars import date
from .link import accepted, beside, brings, from_link, read_beside, to_link, whole_signs
from .result import solve, worsened
from .settings import BY_KEY, SETTINGS
from .sold import next_jet_drill
from .tables import find, read_table


def handle(request, tell=None):
    """Answer one request; `tell` is called with JSON text of how far a long one has come."""
    today = ""
    try:
        request = _well_formed(request)
        today = request.get("today", "")
        request["tell"] = tell
        reply = KINDS[request["kind"]](request)
        reply["ok"] = True
    except (InputError, InputErrors) as refused:
        reply = {"ok": False, "errors": [_error(_from_today(error, today)) for error in refused.errors]}
    return json.dumps(reply, ensure_ascii=False, allow_nan=False, separators=(",", ":"))


def _from_today(error, today):
    """A refusal that offers a day for want of a better one offers today, where the asker knows it."""
    if error.nearest != A_DAY or not today:
        return error
    return InputError(error.field, error.value, error.rule, today, error.others)


class _Request(dict):
    """A request; what it lacks is refused by name."""

    def __missing__(self, name):
        raise InputError(name, "", f"must be given with {self['kind']}")


HOLDS = {
    **dict.fromkeys(("settings", "before", "other", "weights"), dict),
    **dict.fromkeys(("rows", "got", "other_got"), list),
    **dict.fromkeys(
        ("link", "have", "text", "key", "job", "file", "of", "part", "check", "axis", "site", "units", "today"), str
    ),
    **dict.fromkeys(("by", "mark"), int),
    "figures": (list, dict),
    "at": (int, float),
}
FURTHEST = 1e9  # steps, marks, mm and px
PART = re.compile(r"0|[1-9]\d?/(2|4|8|16|32|64)")  # of an inch, as on a tape


def _well_formed(text):
    """The request; what is none is refused."""
    try:
        request = json.loads(text)
    except (ValueError, RecursionError):
        request = None
    require(isinstance(request, dict), "request", text, "must be a JSON object")
    known = {"kind": KINDS, "key": BY_KEY, "file": FILES, "check": CHECKS, "axis": ("x", "y"), "units": ("in", "mm")}
    known["job"] = [job.key for job in jobs.JOBS if job.inches]
    request = _Request({"kind": "", **request})
    for name, value in request.items():
        holds = HOLDS.get(name, object)
        names = " or ".join(each.__name__ for each in (holds if isinstance(holds, tuple) else (holds,)))
        require(isinstance(value, holds) and not (holds is int and value is True), name, value, f"must be of {names}")
        require(name not in known or str(value) in known[name], name, value, "is not known")
        far = isinstance(value, (int, float)) and not abs(value) <= FURTHEST  # NaN is no smaller than anything
        require(not far, name, value, f"must be within {FURTHEST:g}")
    for name in ("settings", "before", "other"):
        mine = request.get(name, {}).get("mine", "")
        require(isinstance(mine, str), "mine", mine, "must be of str")
    if "today" in request:
        date(request["today"], "today")
    places = request.get("figures", [])
    require(all(isinstance(name, str) for name in places), "figures", places, "must be names")
    for name, place in places.items() if isinstance(places, dict) else ():
        fits = place is None or _is_place(place)  # a chart has none
        require(fits, "figures", f"{name} {place}", "must be a width of 1 or more and a height of 0 or more")
    return request


def _is_place(place):
    """Whether it is [width, height] in px, or these and turn."""
    sizes = place[:2] if isinstance(place, list) and len(place) in (2, 3) else ()
    numbers = len(sizes) == 2 and all(type(size) in (int, float) for size in sizes)
    return numbers and 1 <= sizes[0] <= FURTHEST and 0 <= sizes[1] <= FURTHEST


def _error(error):
    label = BY_KEY[error.field].label if error.field in BY_KEY else error.field or "A setting without a name"
    said = f"{label} is empty: it" if str(error.value).strip() == "" else f"{label}: {error.said}"
    rule, offer = units.printed(error.rule), units.printed(error.nearest)
    return {
        "setting": error.field,
        "value": error.said,
        "rule": rule,
        "nearest": error.nearest,
        "offer": offer,
        "text": f"{said} {rule}." + (f" Nearest that works: {offer}." if offer else ""),
    }


def _design(request):
    texts, stood = _texts(request), request.get("before")
    design, _ = together(lambda: Design.from_texts(texts, units_of(texts), stood), lambda: _mine(request))
    return design


def _texts(request):
    return {key: text for key, text in _followed(request).items() if key != "mine"}


def _followed(request):
    """The settings of a request, with what follows from the change that led to them."""
    settings = request["settings"]
    if "before" not in request:
        return settings
    before, mine = request["before"], settings.get("mine", "")
    return supplied(before, jobs.refitted(before, settings, mine), mine)


def _brought(request, design):
    """What followed from a change, in words, and all that moved; what is offered besides, as [words, setting, text]."""
    settings, tape = request["settings"], dict(BY_KEY["sizes"].choices)
    offer = (
        {"offer": [f"Take {tape[design.units]} sizes", "sizes", design.units]} if design.sizes != design.units else {}
    )
    asked, was = ("units", "sizes", "fuel", "gas_from", *jobs.CHAMBER), request.get("before", settings)
    if all(settings.get(key) == was.get(key) for key in asked):
        return {"brought": "", **offer}
    before = Design.from_texts({key: text for key, text in request["before"].items() if key != "mine"})
    if before.sizes != design.sizes:
        words = f"What was not set has {tape[design.sizes]} sizes now, so the numbers differ a little."
        return {"brought": words, **offer}
    if before.units != design.units:
        words = f"The same burner on the other tape: what was not set keeps its {tape[design.sizes]} sizes."
        return {"brought": words if offer else "", **offer}
    typed = {key for key in settings if settings[key] != request["before"].get(key)}
    moved = design.moved_from(before, typed)
    what = "a chamber of this size"
    for key in ("gas_from", "fuel"):
        what = design.show(key) if before.value(key) != design.value(key) else what
    return {"brought": f"For {what} {_counted(moved)} too." if moved else "", "moved": moved, **offer}


def _counted(lines):
    return "1 setting changed" if len(lines) == 1 else f"{len(lines)} settings changed"


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
    return {
        "answers": on_page.answers(result, FACE_ANSWERS),
        **on_page.drawings(result, request.get("figures", ("face",))),
    }


def _solve(request):
    result = _solved(_design(request))
    found, mine = jobs.job_of(result.design), _mine(request)
    fit, need = jobs.fit(result, mine.split(",")), result.checks["rate_for_need"]
    less = fit and need.value < result["firing_rate_needed"]  # of more the two numbers say enough
    return {
        **on_page.whole(result, request.get("figures", ()), mine),
        "high": on_page.high_fire(result),
        "fit": {"words": need.text if less else "", "settings": fit} if fit else {},
        "job": found[0].key if found else "",
        **_brought(request, result.design),
    }


def _mine(request):
    mine, faults = read_beside("mine", request["settings"].get("mine", ""))
    if faults:
        raise InputErrors(faults)
    return mine


def _draw(request):
    return on_page.drawings(_solved(_design(request)), request["figures"])


def _open(request):
    design, ignored = from_link(request["link"])
    texts = beside(request["link"])
    mine = {"mine": texts["mine"]} if "mine" in texts else {}
    return {
        "settings": {**design.texts, **mine},
        "ignored": [_error(error) for error in ignored],
        "usable": brings(request["link"], design, ignored),
        "have": texts.get("have", ""),
    }


def _job(request):
    job = next(each for each in jobs.JOBS if each.key == request["job"])
    texts, mine = request["settings"], _mine(request)
    before = Design.from_texts({key: text for key, text in texts.items() if key != "mine"})
    marked = [key for key in mine.split(",") if key]
    released = marked if request.get("release") else ()
    design, free = (Design.from_texts(jobs.begun(job, texts, keys)) for keys in (released, marked))
    moved = [s for s in SETTINGS if before.value(s.key) != design.value(s.key)]
    typed = jobs.set_by_hand(texts) - {"fuel"}
    left = ", ".join(s.label.lower() for s in moved if s.key in typed)
    lines = design.moved_from(before.read_in(design.units))
    words = [f"{job.name}: {_counted(lines)}."] if lines else []
    words += [f"What you had set is left out: {left}."] if left else []
    kept = [BY_KEY[key].label.lower() for key in marked if design.value(key) != free.value(key)]
    words += [f"Marked as mine, so left as it was: {', '.join(kept)}."] if kept else []
    link = to_link(design, "", {} if released else {"mine": mine})
    return {"link": link, "brought": " ".join(words), "moved": lines, "kept": len(kept)}


def _link(request):
    return {"link": to_link(_design(request), "", {"mine": _mine(request), "have": request.get("have", "")})}


def _movable(request):
    design = _design(request)
    setting = as_shown(BY_KEY[request["key"]], design.values())
    if not setting.step or not isinstance(steps.number(design, setting), (int, float)):
        raise InputError(setting.key, design.text(setting.key), "needs a number before it can be stepped")
    return design, setting


def _step(request):
    if BY_KEY[request["key"]].dimension == "drill":
        design = _design(request)
        result = solve(design)
        drill = result.part("jet").drill if request["key"] == "jet_drill" else result.part("lighting_slide").drill
        if drill is None:
            raise InputError(
                request["key"], design.text(request["key"]), "needs a drill before it can be stepped", "#54"
            )
        return {"key": request["key"], "text": next_jet_drill(drill.diameter_m, request["by"], design.sizes)}
    design, setting = _movable(request)
    return {
        "key": setting.key,
        "text": steps.field_text(setting, steps.stepped(design, setting, request["by"]), design.units),
    }


def _slide(request):
    design, setting = _movable(request)
    step, origin = steps.grid(setting, design.units)
    return {"key": setting.key, "text": steps.field_text(setting, request["mark"] * step + origin, design.units)}


def _drag(request):
    """The setting that a line of the face stands for, on the mark of its steps nearest to where the line is held.

    Beyond what goes with all else it stays at the last mark that does, and says so.
    """
    design, setting = _movable(request)
    at, half = abs(request["at"]) / 1000, (design.body_length if request["axis"] == "x" else design.body_width) / 2
    lines = {
        "body_length": 2 * at,
        "body_width": 2 * at,
        "setback": half - at,
        "edge_margin": half - design.setback - at - design.port_diameter / 2,
    }
    require(setting.key in lines, "key", setting.key, "is no line of the face")
    value = lines[setting.key]
    step, origin = steps.grid(setting, design.units)
    low, high = steps.marks(setting, design.units)
    here, wanted = (round((each - origin) / step) for each in (steps.number(design, setting), value))
    mark = end = min(max(wanted, low), high)

    def text_at(mark):
        return steps.field_text(setting, mark * step + origin, design.units)

    def goes(mark):
        return not read({**design.texts, setting.key: text_at(mark)}, design.units)[2]

    if not goes(mark):
        mark = here
        while abs(end - mark) > 1:
            middle = (mark + end) // 2
            mark, end = (middle, end) if goes(middle) else (mark, middle)
    text = text_at(mark) if mark != here or goes(mark) else design.text(setting.key)
    held = "" if mark == wanted else ": no further"
    return {"key": setting.key, "text": text, "words": f"{setting.label} {text}{held}"}


def _part(request):
    design, setting = _movable(request)
    if setting.dimension != "length":
        raise InputError(setting.key, design.text(setting.key), "is not a length, so it has no part of an inch")
    fits = PART.fullmatch(request["part"]) and Fraction(request["part"]) < 1
    require(fits, "part", request["part"], "must be a part of an inch on a tape", "1/2")
    inches = units.from_si(steps.number(design, setting), "in", "m")
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
    lent = design.changed(texts)
    pressure, flow = lent.show("blower_shutoff_pressure"), lent.show("blower_free_flow")
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
    require(key == "lining", "key", key, "has no layers")
    typed = [part.split(maxsplit=1)[1] for part in design.text(key).split(",")]
    shown = [text for _, text in on_page.layers_shown(design.value(key), design.units)]
    rows = []
    for row in request["rows"]:
        places = (None, *range(len(typed)))
        well = isinstance(row, list) and [type(each) for each in row] in ([str, str, int], [str, str, NoneType])
        require(well and row[2] in places, "rows", row, "must be material, thickness, and the place of an old layer")
        material, text, was = row
        if material == "":
            material, text = ADDED_LAYER[0], ADDED_LAYER[1][design.sizes]
        elif was is not None and text.strip() == shown[was]:
            text = typed[was]
        elif (found := units.split_number(text.strip())) and found[1] == "":
            text = f"{text.strip()} {units.shown_unit('length', design.units)}"
        rows.append(f"{material} {text.strip()}".strip())
    text = ", ".join(rows)
    parse_setting(BY_KEY[key], text)
    return {"key": key, "text": text}


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
        value = steps.stepped(design, setting, request["by"])
        if setting.key == "work_rate" and value == 0:  # no cure: it gives up the work
            return {"verdict": "stop", "text": "", "end": True}
        text = steps.field_text(setting, value, design.units)
    changed = design.changed({setting.key: text})
    result = solve(changed, _LAST[0] if _LAST else None)
    check = result.checks.get(request["check"])
    before = _solved(design) if request.get("whole") else None
    worse = worsened(before, result) if before else []
    return {
        "verdict": check.verdict if check else "good",
        "stepped": not setting.choices,
        "ample": bool(check and ample(check.key, check.verdict, check.value, check.limit)),
        "text": text,
        "end": changed == design,
        "label": setting.label,
        "shown": result.setting(setting.key),
        "worsens": _named(worse, before),
        "stays": _staying(before, result) if before else [],
        "faults": sum(each.fault for each in result.checks.values()) if before else 0,  # that are left
        "later": _later(before, result) if before else "",
    }


def _staying(before, after):
    """The faults that a change leaves, by name, the worst first: who takes it to cure one has these still."""
    had = [key for key, check in before.checks.items() if check.fault]
    return [each.label.lower() for each in after.ranked() if each.fault and each.key in had]


def _later(before, after):
    """The fire that heats up in time, where a change leaves less: no fault, and yet not what was asked for."""
    in_time = [r["firing_rate_needed"] for r in (before, after)]
    has = [r.checks["rate_for_need"] for r in (before, after)]
    if None in in_time or any(check.fault or check.value is None for check in has):
        return ""
    late = [check.value < needed * (1 - 1e-9) for check, needed in zip(has, in_time, strict=True)]
    return units.show(in_time[1], "power", after.design.reader) if late == [False, True] else ""


def _named(checks, before):
    """What a change harms; `still`: it had that verdict before, and is further beyond its limit."""
    had = {key: check.verdict for key, check in before.checks.items()} if checks else {}
    return [
        {"key": each.key, "label": each.label, "verdict": each.verdict, "still": had.get(each.key) == each.verdict}
        for each in checks
    ]


def _fit(request):
    result = _solved(_design(request))
    fit = jobs.fit(result, _mine(request).split(","))
    worse = worsened(result, solve(result.design.changed(fit), result)) if fit else []
    return {"settings": fit, "worsens": _named(worse, result)}


MOST_APART = 8  # numbers of a comparison that stand first


def _compare(request):
    """What differs, the verdicts and what differs most of the `first` numbers apart from all else."""
    mine, other = _design(request), _design({"settings": request["other"]})
    other = other.read_in(mine.units)
    both = solve(mine), solve(other)
    settings = []
    for s in SETTINGS:
        if mine.value(s.key) != other.value(s.key):
            texts = [result.setting(s.key) for result in both]
            if texts[0] == texts[1] and s.dimension in units.DIMENSIONS:  # they differ in digits that are not shown
                texts = [units.show(d.value(s.key), s.dimension, mine.reader, exact=True) for d in (mine, other)]
            label = s.label + units.whose(s.dimension, mine.reader)
            settings.append({"label": label, "mine": texts[0], "other": texts[1]})
    differ = {key: texts for key in both[0].answers if len(set(texts := _told(both, key))) > 1}
    first = [key for key in differ if both[0].answers[key].near == "first"]
    first = sorted(sorted(first, key=lambda key: -_apart(both, key))[:MOST_APART], key=first.index)
    rest = [key for key in differ if key not in first]
    judged, found = [], [{check.key: check for check in result.told} for result in both]
    for key in dict.fromkeys((*found[0], *found[1])):
        one = found[0].get(key) or found[1][key]
        verdicts = [checks[key].verdict if key in checks else None for checks in found]
        ranks = [VERDICTS.index(verdict or VERDICTS[0]) for verdict in verdicts]  # what does not apply is no fault
        if ranks[0] != ranks[1]:
            said = [verdict or "does not apply" for verdict in verdicts]
            judged.append({"label": one.label, "mine": said[0], "other": said[1], "better": ranks[1] - ranks[0]})
    judged.sort(key=lambda one: -max(VERDICTS.index(one[of]) for of in ("mine", "other") if one[of] in VERDICTS))
    # Of both the same rule: what is ticked as at hand is left out.
    left = [
        shopping.whole(shopping.summed(shopping.left_to_buy(result, request.get(key, ()))), result)
        for result, key in zip(both, ("got", "other_got"), strict=True)
    ]

    def rows(keys):
        labels = [one.label + units.whose(one.dimension, mine.reader) for one in map(both[0].answers.get, keys)]
        return [{"label": label, "mine": differ[key][0], "other": differ[key][1]} for key, label in zip(keys, labels)]

    money = units.whose("money", mine.reader)
    bought = [{"label": f"Left to buy, without what is ticked{money}", "mine": left[0], "other": left[1]}]
    return {
        "settings": settings,
        "answers": [*(bought if left[0] != left[1] else []), *rows(first)],
        "others": rows(rest),
        "worst": [result.worst for result in both],
        "checks": judged,  # better: below 0 where the other one is judged the better
        "faces": [on_page.thumb_svg(result) for result in both],
    }


def _told(results, key):
    return [sheet.shown(result.answers[key], results[0].design.reader) for result in results]


WORDS_APART = log(4 / 3)  # two words: as far as numbers that are a third apart
LONGEST_WORD = 40  # a text that is longer says its figures, which differ between any two designs


def _apart(results, key):
    """How far two results are apart in an answer, as the logarithm of their ratio; what one has not is furthest."""
    answers = [result.answers[key] for result in results]
    one, two = values = [answer.value for answer in answers]
    if any(isinstance(value, str) for value in values):
        return WORDS_APART if all(len(value or "") <= LONGEST_WORD for value in values) else 0.0
    if None in values:
        return inf
    if answers[0].dimension == "fraction":
        return abs(one - two)
    return abs(log(one / two)) if one * two > 0 else inf


def _code(request):
    require(whole_signs(request["text"]), "text", request["text"], "must be of whole signs")
    size = len(request["text"].encode())
    require(size <= MOST_CODED, "text", f"{size} bytes", f"must be at most {MOST_CODED} bytes for a code")
    drawing = Drawing("code", "QR code of the link", qr_shapes(request["text"], 0.0, 0.0, 100.0))
    return {"svg": write_svg(drawing, margin=0.0)}


def _thumb(request):
    return {"svg": on_page.thumb_svg(solve(_design(request)))}


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


def _progress(tell):
    return tell and (lambda done, most, so_far="": tell(json.dumps({"done": done, "most": most, "so_far": so_far})))


def _find(request):
    """What is wrong with design and list, all of it; else the designs, each with its face."""
    from .find import find, report
    from .find.begun import begun
    from .find.cannot import question
    from .find.have import gathered
    from .find.score import weights_of

    tell, system = request["tell"], units_of(request["settings"])
    (design, have), weights = together(
        lambda: question(
            lambda: _design(request),
            lambda: accepted(_texts(request), system),
            lambda: read_beside("mine", request["settings"].get("mine", ""))[0].split(","),
            lambda: gathered(request["have"], system),
        ),
        lambda: weights_of(request.get("weights", {})),
    )

    def first(found):
        tell(json.dumps({"first": {"settings": found.texts}}))

    answer = find(design, have, weights, progress=_progress(tell), first=tell and first)
    reply = report.as_data(answer, have) | {"asked": report.asked(begun(design, have.mine), have)}
    reply["on_screen"] = report.on_screen(design, answer)
    for shown, offer in zip(reply["designs"], answer.offers):
        shown["svg"] = on_page.thumb_svg(offer.result)
        shown["got"] = _got(offer)
    return reply


def _got(offer):
    """Names of the rows of the offer's shopping list that are at hand, as the device keeps what is ticked."""
    result, own = offer.result, offer.bill.own
    listed = result.part("cost").entries(result.part("train"), result.design.batch_size)
    names = []
    for entry, row in zip(listed, result.tables["shopping"].rows):
        there, name = own.get(entry.key, 0), shopping.name_of(row)
        if there >= entry.count:
            names.append(name)
        elif there:
            names.append(shopping.some_of(there, name))
    return names


def _asked(request):
    from .find import report

    return {"asked": report.asked(_design(request))}


def _good(request):
    from .find import make_good, report

    mended = make_good(_design(request), _mine(request).split(","), progress=_progress(request["tell"]))
    return report.mended_data(mended)


def _shops(request):
    from .find import report, sample, tornado

    design = _design(request)
    found = sample(design, progress=_progress(request["tell"]))
    return {"sample": report.shops_data(found), "tornado": report.tornado_data(tornado(design), design.reader)}


def _file(request):
    design = _design(request)
    name, media_type, make = FILES[request["file"]]
    site = request.get("site", "")
    require(whole_signs(site), "site", site, "must be of whole signs")
    given = {"got": request.get("got", ())} if request["file"].startswith("shopping-") else {}
    data = make(solve(design), to_link(design, site), **given)
    return {"name": name, "type": media_type, "file_base64": base64.b64encode(data).decode("ascii")}


LISTS = ("shopping", "tools")  # what is ticked on them is at hand


def _left(request):
    result = _solved(_design(request))
    burner, tools = ((shopping.left_to_buy(result, request["got"], name), result.tables[name].rows) for name in LISTS)

    def told(lists):
        left, listed = lists
        spent, of = (shopping.whole(shopping.summed(rows), result) for rows in (left, listed))
        return f"{spent} of {of}, {len(left)} of {len(listed)} lines"

    return {"words": f"Left to buy: {told(burner)}. Tools and safety gear: {told(tools)}."}


KINDS = {
    "face": _face,
    "solve": _solve,
    "draw": _draw,
    "open": _open,
    "job": _job,
    "step": _step,
    "slide": _slide,
    "drag": _drag,
    "part": _part,
    "layers": _layers,
    "blower": _blower,
    "try": _try,
    "fit": _fit,
    "compare": _compare,
    "code": _code,
    "thumb": _thumb,
    "file": _file,
    "left": _left,
    "link": _link,
    "have": _have,
    "find": _find,
    "asked": _asked,
    "good": _good,
    "shops": _shops,
}
