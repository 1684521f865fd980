"""Takes out of BokehJS what the page's models need, as scripts that can be compiled and evaluated in short steps.

Bokeh ships its parts linked into scripts that evaluate some six hundred modules in one go, which holds a phone up for
a second. The page uses about a tenth of its models: the others are left out, and `load` evaluates the rest leaf first,
so that it can pause between any two.
"""

import json
import re
from importlib.util import find_spec
from pathlib import Path

SCRIPTS = ("bokeh.min.js", "bokeh-widgets.min.js")
ROOTS = {
    "base": "register_models",
    "core/view": "View",
    "document/document": "Document",
    "core/view_manager": "ViewManager",
}

PARTS = 4  # scripts of about equal size

PART = """{licence}
"use strict";
self.bokehModules = {{ ...self.bokehModules,
{modules}
}};
"""

LOADER = """
(function () {{
const modules = self.bokehModules;
const done = new Map();

function get(id) {{
  if (done.has(id)) return done.get(id).exports;
  if (!modules[id]) throw new Error(`BokehJS module ${{id}} was left out by the build`);
  const module = {{ exports: {{}} }};
  done.set(id, module);
  const named = (name, value) => Object.defineProperty(module.exports, name, {{ enumerable: true, get: () => value }});
  const marked = () => Object.defineProperty(module.exports, "__esModule", {{ value: true }});
  modules[id].call(module.exports, get, module, module.exports, marked, named);
  return module.exports;
}}

// Evaluate every module after those that it needs, and have views made, awaiting `rest()` in between.
self.loadBokeh = async function (rest) {{
  for (const id of {order}) {{
    get(id);
    await rest();
  }}
  const {{ {names} }} = {{ {roots} }};
  View.prototype.lazy_initialize = rest; // which every view awaits while it is made
  register_models({{ {models} }}, true);
  return {{ Document, ViewManager }};
}};
}})();
"""


def linked(text):
    """(modules by id, ids by name) of one linked script."""
    start = re.compile(r"return \(function\(modules.*?\n(?:\(\[|\(?\{)\n", re.DOTALL).search(text).end()
    end, aliases = next(
        (m.start(), m[1]) for m in re.finditer(r"\n[\]}], \d+, (\{.*?\}), \{\}\)", text[start:], re.DOTALL)
    )
    modules = {}
    for place, part in enumerate(re.split(r",\n(?=(?:\d+: )?function _\()", text[start : start + end])):
        number = re.match(r"(\d+): ", part)
        modules[int(number[1]) if number else place] = part[number.end() :] if number else part
    return modules, json.loads(aliases)


def in_order(modules, roots):
    """Ids of `roots` and of all they need, each after those that it needs; stops at a circle."""
    order, open_ = [], []

    def visit(module):
        if module in order:
            return
        assert module not in open_, f"BokehJS modules {open_} need each other"
        open_.append(module)
        get = re.match(r"function _\((\w*)", modules[module])[1]
        for needed in re.findall(rf"(?<![\w.$]){get}\((\d+)\)", modules[module]) if get else ():
            if (
                int(needed) in modules
            ):  # the others are plug-ins, such as formulas, that are asked for when they are used
                visit(int(needed))
        order.append(open_.pop())

    for root in roots:
        visit(root)
    return order


def module_of(model, modules, ids):
    """Id of the module that makes a model: it exports the name. core/ has namesakes that are no models."""
    paths = [
        path
        for path, module in ids.items()
        if path.startswith(("models/", "document/"))
        and f'.__name__="{model}"' in modules[module]
        and re.search(rf"\b\w+\.{model}=\w+[,;]", modules[module])
    ]
    if len(paths) > 1:  # the namesakes in models/dom/ are called dom.NAME in documents
        paths = [path for path in paths if not path.startswith("models/dom/")]
    assert len(paths) == 1, f"BokehJS makes {model} in {paths}"
    return ids[paths[0]]


def bokehjs(model_names):
    """Texts of scripts that together set `loadBokeh(rest)`, enough of BokehJS to embed these models."""
    folder = Path(find_spec("bokeh").origin).parent / "server/static/js"
    modules, ids = {}, {}
    for script in SCRIPTS:
        text = (folder / script).read_text(encoding="utf-8")
        more, names = linked(text)
        modules |= more
        ids |= names
    models = {name: module_of(name, modules, ids) for name in sorted(model_names)}
    order = in_order(modules, [*(ids[name] for name in ROOTS), *models.values()])
    licence = re.search(r"/\*!.*?\*/", text, re.DOTALL)[0]
    size = sum(len(modules[module]) for module in order) / PARTS
    parts, filled = [[] for _ in range(PARTS)], 0
    for module in order:
        parts[min(int(filled / size), PARTS - 1)].append(f"{module}: {modules[module]}")
        filled += len(modules[module])
    loader = LOADER.format(
        order=json.dumps(order, separators=(",", ":")),
        names=", ".join(ROOTS.values()),
        roots=", ".join(f"{name}: get({ids[path]}).{name}" for path, name in ROOTS.items()),
        models=", ".join(f"{name}: get({module}).{name}" for name, module in models.items()),
    )
    scripts = [PART.format(licence=licence, modules=",\n".join(part)) for part in parts]
    return [*scripts[:-1], scripts[-1] + loader]


def model_names(documents):
    """Names of the models in Bokeh's JSON."""
    if isinstance(documents, dict):
        own = {documents["name"]} if documents.get("type") == "object" else set()
        return own.union(*map(model_names, documents.values()))
    return set().union(*map(model_names, documents)) if isinstance(documents, list) else set()
