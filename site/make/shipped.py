"""What the site ships and under which licences: `licences/` with every text, and `licences/sbom.cdx.json`.

The bill is a CycloneDX document: each component with its version and licence, and under it each of its files with its
hash. Every file of the folder is under one component, but for the bill itself, which cannot hold its own hash.
"""

import hashlib
import importlib.metadata
import json
import zipfile
from dataclasses import dataclass, field
from pathlib import Path

import runtime

MAKE = Path(__file__).resolve().parent
ROOT = MAKE.parent.parent
TEXTS = MAKE / "licences"
FOLDER = "licences"
BILL = f"{FOLDER}/sbom.cdx.json"
# SPDX identifiers of the wheels, read from their licence texts; a new wheel must be entered here.
WHEELS = {
    "flexcache": "BSD-3-Clause",
    "flexparser": "BSD-3-Clause",
    "pint": "BSD-3-Clause",
    "platformdirs": "MIT",
    "pydyf": "BSD-3-Clause",
    "segno": "BSD-3-Clause",
    "typing-extensions": "PSF-2.0",
}
# Compiled into the runtime, each by its own makers' notice in linked.txt; versions are the runtime's choice.
LINKED = {
    "emscripten": "MIT",
    "musl": "MIT",
    "llvm-runtimes": "Apache-2.0 WITH LLVM-exception",
    "bzip2": "bzip2-1.0.6",
    "expat": "MIT",
    "hacl-star": "MIT",
    "libffi": "MIT",
    "libmpdec": "BSD-2-Clause",
    "sqlite": "blessing",
    "xz": "0BSD",
    "zlib": "Zlib",
    "zstd": "BSD-3-Clause",
}


@dataclass(frozen=True)
class Component:
    """One thing that is shipped: `files` are starts of the names of its files, `texts` its licences by file name."""

    name: str
    version: str
    licence: str
    files: tuple[str, ...]
    texts: dict[str, bytes]
    linked: dict[str, str] = field(default_factory=dict)  # what is compiled into it: name and licence
    purl: str = ""
    source: str = ""  # where the source is had, for licences that ask for it


def components():
    """All that is shipped besides the project itself, each file's first match first."""
    kept = {path.name: path.read_bytes() for path in sorted(TEXTS.iterdir())}
    packages, wheels = runtime.locked()
    yield Component(
        "cpython-standard-library",
        runtime.PYTHON,
        "PSF-2.0",
        ("pyodide/python_stdlib.zip",),
        {"Python.txt": kept["Python.txt"]},
        purl=f"pkg:generic/cpython@{runtime.PYTHON}",
    )
    yield Component(
        "pyodide",
        packages["pyodide"]["version"],
        "MPL-2.0 AND PSF-2.0",
        ("pyodide/pyodide.mjs", "pyodide/pyodide.asm."),
        {name: kept[name] for name in ("MPL-2.0.txt", "Python.txt", "Apache-2.0.txt", "linked.txt")},
        LINKED,
        f"pkg:npm/pyodide@{packages['pyodide']['version']}",
        json.loads(runtime.npm_file("pyodide", "package.json"))["homepage"],
    )
    yield Component(
        "idb-keyval",
        packages["idb-keyval"]["version"],
        "Apache-2.0",
        ("vendor/idb-keyval/",),
        {
            "idb-keyval.txt": runtime.npm_file("idb-keyval", "LICENCE"),
            "Apache-2.0.txt": kept["Apache-2.0.txt"],
        },
        purl=f"pkg:npm/idb-keyval@{packages['idb-keyval']['version']}",
    )
    bokeh = importlib.metadata.distribution("bokeh")
    yield Component(
        "bokehjs",
        bokeh.version,
        "BSD-3-Clause",
        ("vendor/bokeh/",),
        {"bokeh.txt": _installed_licence(bokeh), "linked.txt": kept["linked.txt"]},
        {"underscore": "MIT", "jquery": "MIT"},
        f"pkg:npm/%40bokeh/bokehjs@{bokeh.version}",
    )
    for wheel in wheels:
        yield Component(
            wheel["name"],
            wheel["version"],
            WHEELS[wheel["name"]],
            (f"pyodide/{wheel['file']}",),
            {f"{wheel['name']}.txt": _wheel_licences(runtime.CACHE / wheel["file"])},
            purl=f"pkg:pypi/{wheel['name']}@{wheel['version']}",
        )


def _installed_licence(distribution):
    return next(file for file in distribution.files if file.name.startswith("LICENSE")).read_binary()


def _wheel_licences(path):
    """The licence and the authors that a wheel brings, one after the other."""
    with zipfile.ZipFile(path) as archive:
        names = [name for name in archive.namelist() if ".dist-info/" in name]
        texts = [archive.read(name) for name in sorted(names) if name.rpartition("/")[2] in ("AUTHORS", "LICENSE")]
    assert texts, f"{path.name} brings no licence"
    return b"\n\n".join(texts)


def write_licences(out):
    """Write every licence text into the site's folder, and a list of what stands under which."""
    (out / FOLDER).mkdir()
    lines = ["What this site ships, its licence, where its text is, and where its source is had.", ""]
    lines.append("burnercalc   BSD-3-Clause   burnercalc.txt")
    for component in components():
        for name, text in component.texts.items():
            (out / FOLDER / name).write_bytes(text)
        line = [f"{component.name} {component.version}", component.licence, ", ".join(component.texts)]
        lines.append("   ".join([*line, component.source] if component.source else line))
    (out / FOLDER / "burnercalc.txt").write_bytes((ROOT / "LICENSE").read_bytes())
    (out / FOLDER / "README.txt").write_text("\n".join(lines) + "\n", encoding="utf-8")


def write_bill(out, version):
    """Write BILL: of everything else that is in the folder by now."""
    known = list(components())
    files = {component.name: [] for component in known}
    own = []
    for path in sorted(out.rglob("*")):
        name = path.relative_to(out).as_posix()
        if path.is_file() and name != BILL:
            entry = {
                "type": "file",
                "name": name,
                "hashes": [{"alg": "SHA-256", "content": hashlib.sha256(path.read_bytes()).hexdigest()}],
            }
            owner = next((component.name for component in known if name.startswith(component.files)), None)
            files.get(owner, own).append(entry)
    bill = {
        "bomFormat": "CycloneDX",
        "specVersion": "1.6",
        "version": 1,
        "metadata": {"component": _entry("application", "burnercalc", version, "BSD-3-Clause", own)},
        "components": [
            _entry(
                "library",
                component.name,
                component.version,
                component.licence,
                [
                    *({"type": "library", "name": name, **_licence(spdx)} for name, spdx in component.linked.items()),
                    *files[component.name],
                ],
                component.purl,
            )
            for component in known
        ],
    }
    (out / BILL).write_text(json.dumps(bill, indent=1) + "\n", encoding="utf-8")


def _entry(kind, name, version, licence, parts, purl=""):
    entry = {"type": kind, "bom-ref": name, "name": name, "version": version, **_licence(licence)}
    return {**entry, **({"purl": purl} if purl else {}), "components": parts}


def _licence(spdx):
    return {"licenses": [{"expression": spdx}]}
