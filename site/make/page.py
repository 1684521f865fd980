"""Write the page into a folder:  page.py OUT.  Build time only: Panel widgets, Bokeh figures, the example's answers.

index.html is complete before any script runs, but for what stands in folds and for pictures of the other chapters:
page.json holds those, and the Bokeh documents that make the page live, one a widget or figure; example.html is the
whole page for a browser without scripts; sources.json where each number comes from; search.json what the search knows;
selfcheck.json the request and reply that Python in the browser must repeat.
"""

import base64
import hashlib
import json
import re
import sys
from pathlib import Path

import jinja2
import panel as pn
from bokeh.document import Document
from bokeh.embed.util import standalone_docs_json_and_render_items

MAKE = Path(__file__).resolve().parent
BROWSER = MAKE.parent / "browser"
sys.path.insert(0, str(MAKE.parent.parent))

import figures  # noqa: E402
import search  # noqa: E402
import sketches  # noqa: E402
import taken  # noqa: E402
import words  # noqa: E402

from burnercalc import __version__, catalogue, on_page, units, worker  # noqa: E402
from burnercalc.catalogue.glossary import GLOSSARY, PATTERN  # noqa: E402
from burnercalc.design import Design  # noqa: E402
from burnercalc.drawing.svg import write_svg  # noqa: E402
from burnercalc.examples import EXAMPLES  # noqa: E402
from burnercalc.find.have import KINDS, METRIC, NEEDED, SOLD, read_have  # noqa: E402
from burnercalc.find.score import TERMS  # noqa: E402
from burnercalc.jobs import ASKED, JOBS  # noqa: E402
from burnercalc.link import to_link  # noqa: E402
from burnercalc.physics.linings import material_keys, material_name  # noqa: E402
from burnercalc.result import FAULTS, solve  # noqa: E402
from burnercalc.rooms import ROOMS  # noqa: E402
from burnercalc.settings import BY_KEY, SETTINGS  # noqa: E402
from burnercalc.tables import read_table  # noqa: E402

# What a chapter opens with: its picture, and of its `first` numbers the one that stands before the others.
PICTURES = {"heat": "in_chamber", "face": "face", "feed": "section", "make": "exploded", "fire": "drying"}
LEADS = ("firing_rate_needed", "port_count", "blower_times", "cost_per_burner", "days_in_all")
LEADING = ("lighting_card", "trouble", "shopping")  # tables on top of their chapter
CARDS = (
    "days",
    "burner_kinds",
    "boards",
    "stock",
    "batch_days",
    "cut_list",
    "batch_cut_list",
    "mould",
    "lining_layers",
    "jet_drills",
    "refractories",
    "castings",
    "cost_lines",
    "quantity_breaks",
    "drying",
    "trouble",
)  # wider than a phone: there a line for each column
TWO = ("days", "cut_list", "batch_cut_list", "mould", "lining_layers", "jet_drills")  # whose first two are its heading
TICKED = "tools"  # stands under the shopping list, in its fold
# Places on the screen that pictures are laid out for until the live ones have measured theirs: width and height in px.
STILL_PX, ANY_PX, WIDE_PX = {"face": (340, 150)}, (340,), 540


def widget(setting, field):
    """The Panel widget of one setting, as a Bokeh model named after it."""
    if setting.choices:
        made = pn.widgets.Select(
            name=setting.label, options={label: value for value, label in setting.choices}, value=field["text"]
        )
    else:
        made = pn.widgets.TextInput(name=label_with_unit(setting, field), value=field["text"])
    model = plain(made.get_root(Document()))
    model.name = setting.key
    if setting.choices:  # Panel would keep the values for itself and give the browser the labels only
        model.update(options=list(setting.choices), value=field["text"])
    return model


def label_with_unit(setting, field):
    return f"{setting.label}, {field['unit']}" if field["unit"] else setting.label


def shown_text(setting, field, with_unit=False):
    """What stands in a setting's field, as answers.mjs and settings.mjs say it."""
    text = dict(setting.choices).get(field["text"], field["text"])
    return f"{text} {field['unit']}".strip() if with_unit else text


def measured(text):
    """A text of which each reader sees what stands in the measures chosen on the page: `[1 in|25 mm]`."""
    safe = jinja2.utils.markupsafe
    return safe.Markup(
        units.MEASURES.sub(r'<span class="inches">\1</span><span class="metric">\2</span>', safe.escape(text))
    )


def keypad(setting):
    """Which keys a phone offers: digits where nothing else is typed, letters for 5/16 and for 7 in w.c."""
    plain = setting.dimension in ("count", "ratio", "fraction", "temperature", "money", "angle", "power", "time")
    return "decimal" if setting.step and plain and not setting.words else "text"


def plain(model):
    """The Bokeh model that a Panel widget's model extends; the page gives it its style sheet.

    What Panel adds to it serves a running server, takes 1.1 MB of script more, and styles from a foreign host.
    """
    kind = next(cls for cls in type(model).__mro__ if cls.__module__.startswith("bokeh.models."))
    values = {
        key: value
        for key, value in model.properties_with_values(include_defaults=False).items()
        if key in kind.properties()
    }
    return kind(
        **{
            **values,
            "stylesheets": [],  # the page gives each widget.css
            "sizing_mode": "stretch_width",
            "width": None,
            "min_width": None,
            "margin": 0,
            "tags": [],
        }
    )


def document(model):
    """Bokeh's JSON of one model, and the id of the element it is shown in: its setting's, or its figure's."""
    doc = Document()
    doc.add_root(model)
    docs, _ = standalone_docs_json_and_render_items([model], suppress_callback_warning=True)
    (content,) = docs.values()
    content.pop("defs", None)  # of Panel's parts that are not used here
    name = model.name
    return {
        "doc": content,
        "place": name.replace("figure-", "live-", 1) if name.startswith("figure-") else f"root-{name}",
    }


def documents(data):
    """The widgets by setting, and the figures by name."""
    return {
        "widgets": {s.key: document(widget(s, data["fields"][s.key])) for s in SETTINGS},
        "figures": {name: document(figures.drawing_figure(name, drawing)) for name, drawing in data["drawings"].items()}
        | {name: document(figures.chart_figure(name, chart)) for name, chart in data["charts"].items()},
    }


def chapter(room, title, result, data):
    """What a chapter of the page shows."""
    checks = [c for c in data["checks"] if c["room"] == room]
    faults = [c for c in checks if c["verdict"] in FAULTS]
    mine = [s for s in SETTINGS if s.room == room]

    def shown(things, keys):
        return [key for key in keys if things[key].room == room]

    def place(a):  # what takes a row leaves no hole as the last of the first ones
        return a.key not in LEADS, a.near == "first" and takes_a_row(a, data)

    answers = sorted((a for a in result.answers.values() if a.room == room), key=place)
    shown_figures = shown(catalogue.DRAWINGS, data["drawings"]) + shown(catalogue.CHARTS, data["charts"])
    return {
        "name": room,
        "title": title,
        "first": [s for s in mine if s.near == "first"],
        "folds": [
            (title, headed(near_by, data["fields"]), sum("idle" not in data["fields"][s.key] for s in near_by))
            for near, title in (("dozen", "A dozen"), ("finer", "Finer settings"))
            for near_by in ([s for s in mine if s.near == near],)
        ],
        "checks": checks,
        "worst": faults[0]["verdict"] if faults else "good",
        "flag": f"{len(faults)} to look at" if faults else "good",
        "cautions": words.DANGERS.get(room, ()),
        "picture": PICTURES[room],
        "figures": [name for name in shown_figures if name not in PICTURES.values()],
        "lead": [key for key in LEADING if catalogue.TABLES[key].room == room],
        "tables": [key for key in shown(catalogue.TABLES, data["tables"]) if key not in (*LEADING, TICKED)],
        "answers": answers,
    }


def takes_a_row(answer, data):
    return answer.dimension == "word" and len(data["answers"][answer.key]["shown"]) > 24


def headed(settings, fields):
    """[(heading or "", whether it heads what is shown, setting)]: where the settings under another one begin."""
    heads, head = {}, ""
    for s in SETTINGS:
        head = heads[s.key] = words.SUBHEADS.get(s.key, head)
    before = [None, *(heads[s.key] for s in settings)]
    shown = {heads[s.key] for s in settings if "idle" not in fields[s.key]}
    return [(heads[s.key] if heads[s.key] != old else "", heads[s.key] in shown, s) for old, s in zip(before, settings)]


def have_rows():
    """What I have, a row a kind: its name, the form of an entry, examples, and whether sold sizes are known."""
    missing = read_have("").buy
    rows = []
    for kind, (said, example) in KINDS.items():
        label, _, form = said.partition(": ")
        rows.append(
            {
                "kind": kind,
                "label": label[0].upper() + label[1:],
                "form": form,
                "example": example,
                "metric": METRIC.get(kind, example),
                "sold": kind in SOLD,
                "buy": kind in missing,
                "group": " ".join(next((group for group in NEEDED if kind in group), (kind,))),
            }
        )
    return rows


def explained():
    """The glossary as the page reads it."""
    return {"pattern": PATTERN, "words": [[word, list(forms), meaning] for word, (forms, meaning) in GLOSSARY.items()]}


def aspect(drawing):
    x1, y1, x2, y2 = drawing["bounds"]
    return round((x2 - x1) / (y2 - y1), 3)


def worst_text(checks):
    """As answers.mjs says it."""
    worst = next((check for check in checks if check["verdict"] in FAULTS), None)
    return f"{worst['verdict'].capitalize()}: {worst['text']}" if worst else "Good: no check asks for a change."


def main(out):
    result = solve(Design.from_texts({}))
    request = {"kind": "solve", "settings": {}, "figures": [*taken.SHOWN_DRAWINGS, *result.charts]}
    data = json.loads(worker.handle(json.dumps(request)))
    assert data["ok"], data
    # In the page itself, because nothing can be painted before they are here.
    style, early = (BROWSER / "style.css").read_text(), (BROWSER / "early.js").read_text()
    style = re.sub(r" ?/\*.*?\*/", "", style, flags=re.DOTALL)  # comments are for who reads the source
    digest = base64.b64encode(hashlib.sha256(f"\n{early}".encode()).digest()).decode()
    csp = (MAKE / "csp.txt").read_text().strip().replace("EARLY", digest)
    environment = jinja2.Environment(
        loader=jinja2.FileSystemLoader(MAKE), autoescape=True, trim_blocks=True, lstrip_blocks=True
    )
    template, laters = environment.get_template("page.html"), {}
    filled = shown(result, data, style, early, csp)
    for name, whole in (("index", False), ("example", True)):
        laters[name] = Later(whole)
        html = template.render(**filled, whole=whole, later=laters[name])
        (out / f"{name}.html").write_text(html.lstrip(), encoding="utf-8")
    (out / "csp.txt").write_text(csp)
    # Not sorted: Bokeh reads a model before it is referred to.
    style = (BROWSER / "widget.css").read_text()
    page = {**documents(data), "later": laters["index"].parts, "style": style, "glossary": explained()}
    write_json(out / "page.json", page, sort_keys=False)
    write_json(out / "sources.json", came_from())
    write_json(out / "search.json", search.entries())
    check = {**request, "figures": ["face"]}
    write_json(out / "selfcheck.json", {"request": check, "reply": json.loads(worker.handle(json.dumps(check)))})


def shown(result, data, style, early, csp):
    """What the template is filled with."""
    markup = jinja2.utils.markupsafe.Markup
    return dict(
        version=__version__,
        csp=csp.partition("; frame-ancestors")[0],  # which browsers take from a header only
        style=markup(style),
        early=markup(early),
        data=data,
        worst_text=worst_text,
        takes_a_row=takes_a_row,
        CARDS=CARDS,
        TWO=TWO,
        shown_text=shown_text,
        by_key=BY_KEY,
        start=[s for s in SETTINGS if s.key in ASKED],
        keypad=keypad,
        measured=measured,
        blowers=read_table("blower_kinds"),
        materials=[(key, *(material_name(key, units) for units in ("in", "mm"))) for key in material_keys()],
        chapters=[chapter(*each, result, data) for each in ROOMS.items()],
        aspects={name: aspect(drawing) for name, drawing in data["drawings"].items()},
        svg={
            name: markup(write_svg(on_page.fitted(result, name, *STILL_PX.get(name, ANY_PX))[0]))
            for name in taken.SHOWN_DRAWINGS
        },
        wide_face=markup(write_svg(on_page.fitted(result, "face", WIDE_PX)[0])),
        sketches={key: markup(text) for key, text in sketches.sketches().items()},
        files=taken.file_groups(),
        walk=words.WALK,
        have=have_rows(),
        terms=TERMS,
        jobs=JOBS,
        unknowns=words.UNKNOWNS,
        examples=[
            {
                "name": e.name,
                "sentence": e.sentence,
                "links": [
                    (units, to_link(Design.from_texts(texts)))
                    for units, texts in (("inches", e.inches), ("millimetres", e.metric))
                ],
            }
            for e in EXAMPLES
        ],
    )


def came_from():
    """Where each number comes from."""
    return {
        a.key: {
            "label": a.label,
            "meaning": a.meaning,
            "formula": a.formula,
            "inputs": a.inputs,
            "source": a.source.text,
            "trust": words.TRUST[a.source.trust],
        }
        for a in catalogue.ANSWERS.values()
    }


class Later:
    """What the page does not show at first: kept for page.json, with a template where it belongs."""

    def __init__(self, whole):
        self.within, self.parts = whole, []  # what stands in such a part goes with it

    def __call__(self, caller):
        if self.within:
            return caller()
        self.within = True
        self.parts.append(str(caller()).strip())
        self.within = False
        return jinja2.utils.markupsafe.Markup(f'<template data-later="{len(self.parts) - 1}"></template>')


def write_json(path, data, sort_keys=True):
    path.write_text(json.dumps(data, sort_keys=sort_keys, ensure_ascii=False, separators=(",", ":")), encoding="utf-8")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
