"""Write the page into a folder:  page.py OUT.  Build time only: Panel widgets, Bokeh figures, and the default design's answers.

index.html is complete before any script runs; page.json holds the Bokeh documents that make it live, one a chapter;
selfcheck.json the request and reply that Python in the browser must repeat.
"""
import json
import sys
from pathlib import Path

import jinja2
import panel as pn
from bokeh.document import Document
from bokeh.embed.util import standalone_docs_json_and_render_items
from bokeh.models import ImportedStyleSheet

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT))

import figures  # noqa: E402
from burnercalc import __version__, worker  # noqa: E402
from burnercalc.design import Design  # noqa: E402
from burnercalc.drawing.svg import write_svg  # noqa: E402
from burnercalc.settings import GROUPS, SETTINGS  # noqa: E402
from burnercalc.solve import solve  # noqa: E402

SITE = Path(__file__).resolve().parent
# In sight whatever chapter is open: key, short label.
FIGURES = ("section",)  # drawings shown besides the face
TILES = (("port_loading", "port loading"), ("port_count", "ports"), ("plenum_to_port_ratio", "plenum to ports"),
         ("mixture_velocity_in_port", "port speed"))


def widget(setting, field, doc):
    """The Panel widget of one setting, as a Bokeh model named after it."""
    if setting.choices:
        made = pn.widgets.Select(name=setting.label, options={label: value for value, label in setting.choices},
                                 value=field["text"])
    else:
        made = pn.widgets.TextInput(name=label_with_unit(setting, field), value=field["text"])
    model = made.get_root(doc)
    model.name = setting.key
    return model


def label_with_unit(setting, field):
    return f"{setting.label}, {field['unit']}" if field["unit"] else setting.label


def plain(model):
    """The Bokeh model that a Panel widget's model extends, with the page's own style sheet.

    What Panel adds to it serves a running server, takes 1.1 MB of script more, and styles from a foreign host.
    """
    kind = next(cls for cls in type(model).__mro__ if cls.__module__.startswith("bokeh.models."))
    values = {key: value for key, value in model.properties_with_values(include_defaults=False).items() if key in kind.properties()}
    return kind(**{**values, "stylesheets": [ImportedStyleSheet(url="./widget.css")], "sizing_mode": "stretch_width",
                   "width": None, "min_width": None, "margin": 0, "tags": []})


def document(models):
    """Bokeh's JSON for models that are shown in the elements `root-NAME`."""
    doc = Document()
    made = []
    for make in models:
        model = make(doc)
        doc.add_root(model)
        made.append(model)
    docs, _ = standalone_docs_json_and_render_items(made, suppress_callback_warning=True)
    content, = docs.values()
    content.pop("defs", None)  # of Panel's parts that are not used here
    return {"doc": content, "roots": {model.id: f"root-{model.name}" for model in made}}


def documents(data):
    """One document a chapter, and one for what is always in sight."""
    made = {"sight": [lambda doc: figures.drawing_figure("face", data["drawings"]["face"])]}
    for group in GROUPS:
        settings = [s for s in SETTINGS if s.group == group]
        if settings:
            made[group] = [lambda doc, s=s: plain(widget(s, data["fields"][s.key], doc)) for s in settings]
    for name in data["drawings"]:
        if name != "face":
            made[f"drawing-{name}"] = [lambda doc, name=name: figures.drawing_figure(name, data["drawings"][name])]
    for name in data["charts"]:
        made[f"chart-{name}"] = [lambda doc, name=name: figures.chart_figure(name, data["charts"][name])]
    return {name: document(models) for name, models in made.items()}


def main(out):
    result = solve(Design.from_texts({}))
    request = {"kind": "solve", "settings": {}, "figures": ["face", *FIGURES, *result.charts]}
    reply = json.loads(worker.handle(json.dumps(request)))
    environment = jinja2.Environment(loader=jinja2.FileSystemLoader(SITE), autoescape=True, trim_blocks=True, lstrip_blocks=True,
                                     undefined=jinja2.StrictUndefined)
    html = environment.get_template("page.html").render(
        version=__version__, csp=(SITE / "csp.txt").read_text().strip(), groups=GROUPS, settings=SETTINGS, data=reply,
        answers=result.answers, checks=reply["checks"], tiles=TILES, tile_keys=[key for key, _ in TILES],
        svg={name: jinja2.utils.markupsafe.Markup(write_svg(result.drawings[name])) for name in reply["drawings"]},
        label_with_unit=label_with_unit)
    (out / "index.html").write_text(html, encoding="utf-8")
    write_json(out / "page.json", documents(reply))
    write_json(out / "selfcheck.json", {"request": request, "reply": reply})


def write_json(path, data):
    path.write_text(json.dumps(data, sort_keys=True, ensure_ascii=False, separators=(",", ":")), encoding="utf-8")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
