"""Write the whole site into a folder:  assemble.py OUT  (run by build.py, with the project's own Python).

Everything the browser loads is in that folder, every address in it is relative, and two runs write the same bytes.
"""

import base64
import hashlib
import json
import os
import re
import shutil
import subprocess
import sys
import tempfile
import zlib
from pathlib import Path

import bokehjs
import hosting
import runtime
import shipped
from pyodide_lock import PyodideLockSpec
from pyodide_lock.utils import add_wheels_to_spec

MAKE = Path(__file__).resolve().parent
BROWSER = MAKE.parent / "browser"
ROOT = MAKE.parent.parent
# Of site/browser: what page.py puts into the page itself, and what is filled in here. All else is copied.
NOT_COPIED = ("style.css", "widget.css", "early.js", "sw.mjs")
# What the page never asks for: not kept for use without a network.
NOT_KEPT = ("sw.mjs", "example.html", *hosting.FILES, shipped.FOLDER + "/")
PACKED = ("page", "search", "sources")
# One date for all that is packed (1980-01-01, the first one a ZIP can hold): equal sources give equal bytes.
EPOCH = "315532800"
ENVIRONMENT = {**os.environ, "SOURCE_DATE_EPOCH": EPOCH, "PYTHONHASHSEED": "0", "PYTHONDONTWRITEBYTECODE": "1"}


def sha256(path):
    return hashlib.sha256(path.read_bytes()).digest()


def own_wheel(folder):
    """Build burnercalc's wheel from a copy, so that nothing of an earlier build gets in."""
    with tempfile.TemporaryDirectory() as name:
        copy = Path(name)
        for file in ("pyproject.toml", "LICENSE"):
            shutil.copy(ROOT / file, copy)
        shutil.copytree(ROOT / "burnercalc", copy / "burnercalc", ignore=shutil.ignore_patterns("__pycache__"))
        subprocess.run(
            [
                sys.executable,
                "-m",
                "pip",
                "wheel",
                "--quiet",
                "--disable-pip-version-check",
                "--no-deps",
                "--no-build-isolation",
                "--wheel-dir",
                folder,
                copy,
            ],
            check=True,
            env=ENVIRONMENT,
        )


def write_python(folder):
    """Pyodide, the wheels, and a lock that names those wheels and no others."""
    folder.mkdir()
    runtime.unpack_pyodide(folder)
    cache = runtime.fetch()
    for wheel in runtime.locked()[1]:
        shutil.copyfile(cache / wheel["file"], folder / wheel["file"])
    own_wheel(folder)
    lock_file = folder / "pyodide-lock.json"
    info = json.loads(lock_file.read_text())["info"]
    empty = PyodideLockSpec(info={"version": runtime.PYODIDE, **info}, packages={})
    wheels = sorted(folder.glob("*.whl"))
    spec = add_wheels_to_spec(empty, wheels, base_path=folder)  # stops if a wheel needs one that is not here
    runtime.node(MAKE / "precompile.mjs", folder)
    for package in spec.packages.values():
        package.sha256 = sha256(folder / package.file_name).hex()
    lock = {"info": info, "packages": spec.model_dump()["packages"]}
    lock_file.write_text(json.dumps(lock, indent=1, sort_keys=True) + "\n")


def write_vendor(out):
    """Each `vendor/PACKAGE/FILE` that the page's own files name: the needed part of BokehJS, and files from npm."""
    bokeh = bokehjs.bokehjs(bokehjs.model_names(json.loads((out / "page.json").read_text(encoding="utf-8"))))
    named = set()
    for file in sorted(out.glob("*.mjs")):
        named.update(re.findall(r"\bvendor/([\w-]+)/([\w@./-]+)", file.read_text()))
    for package, name in sorted(named):
        target = out / "vendor" / package / name
        target.parent.mkdir(parents=True, exist_ok=True)
        if package == "bokeh":
            target.write_text(bokeh[int(target.stem) - 1], encoding="utf-8")
        else:
            target.write_bytes(runtime.npm_file(package, f"dist/{name}"))


def put(file, old, new):
    """Replace what must stand in a file once."""
    text = file.read_text(encoding="utf-8")
    if text.count(old) != 1:
        sys.exit(f"{file.name} must hold {old!r} once")
    file.write_text(text.replace(old, new), encoding="utf-8")


def stamp(out):
    """Name the build in all that must not be mixed with another one: page, modules, worker and data."""
    build = hashlib.sha256()
    for path in sorted(out.rglob("*")):
        if path.is_file():
            build.update(path.relative_to(out).as_posix().encode() + sha256(path))
    name = build.hexdigest()[:16]
    size = sum(path.stat().st_size for path in (out / "pyodide").iterdir())
    put(out / "index.html", 'data-build=""', f'data-build="{name}"')
    put(out / "index.html", 'data-megabytes=""', f'data-megabytes="{size / 1e6:.1f}"')
    put(out / "worker.mjs", 'const BUILD = "";', f'const BUILD = "{name}";')
    for file in ("page.json", "selfcheck.json"):
        text = (out / file).read_text(encoding="utf-8")
        (out / file).write_text(f'{{"build":"{name}",{text.removeprefix("{")}', encoding="utf-8")
    for file in out.glob("*.mjs"):
        if file.name != "worker.mjs":
            text, ask = file.read_text(encoding="utf-8"), f'ofBuild("{name}");\n'
            own = file.name == "page.mjs"
            file.write_text(
                text + ask if own else f'import {{ ofBuild }} from "./page.mjs";\n{ask}{text}', encoding="utf-8"
            )
    (out / "build.txt").write_text(f"{name}\n")


def pack(out):
    """Pack what the page fetches as JSON: many hosts send files as they are."""
    for name in PACKED:
        file = out / f"{name}.json"
        file.with_suffix(".bin").write_bytes(zlib.compress(file.read_bytes(), 9))
        file.unlink()


def write_service_worker(out):
    """Put the list of all files that the page may ask for, each with its hash, into the service worker."""
    files = {
        path.relative_to(out).as_posix(): "sha256-" + base64.b64encode(sha256(path)).decode()
        for path in sorted(out.rglob("*"))
        if path.is_file() and not path.relative_to(out).as_posix().startswith(NOT_KEPT)
    }
    listing = json.dumps(files, indent=1, sort_keys=True)
    text = (BROWSER / "sw.mjs").read_text()
    for old, new in (
        ("const FILES = {};", f"const FILES = {listing};"),
        ('const VERSION = "";', f'const VERSION = "{hashlib.sha256(listing.encode()).hexdigest()[:16]}";'),
    ):
        if text.count(old) != 1:
            sys.exit(f"sw.mjs must hold the line {old!r} once")
        text = text.replace(old, new)
    (out / "sw.mjs").write_text(text)


def own_version(out):
    """The version of burnercalc that is shipped, as its wheel is named."""
    (wheel,) = (out / "pyodide").glob("burnercalc-*.whl")
    return wheel.name.split("-")[1]


def main(out):
    out.mkdir(parents=True)
    for source in sorted(BROWSER.iterdir()):
        if source.name not in NOT_COPIED:
            (shutil.copytree if source.is_dir() else shutil.copyfile)(source, out / source.name)
    write_python(out / "pyodide")
    subprocess.run([sys.executable, MAKE / "page.py", out], check=True, env=ENVIRONMENT)
    write_vendor(out)
    stamp(out)
    pack(out)
    hosting.write_headers(out)
    shipped.write_licences(out)
    write_service_worker(out)
    shipped.write_bill(out, own_version(out))


if __name__ == "__main__":
    main(Path(sys.argv[1]).resolve())
