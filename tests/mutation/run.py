"""Do the tests mind? `build.py mutate N [--seed S] [--paths ...]` puts N small faults into the package, one at a time.

Each fault (mutants.py) is written into a copy of the project, and the test files that reach its function are run there,
nearest and quickest first, until one fails: killed. What no test minds survives and is printed. Which file reaches what
is found by running each once (reached.py), and kept in .cache/mutation until the file changes.
"""

import argparse
import ast
import hashlib
import json
import os
import random
import shutil
import subprocess
import sys
import tempfile
import time
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from queue import SimpleQueue

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "tests")]

from mutation.mutants import mutants  # noqa: E402

PATHS = ("parts", "checks", "views", "making", "drawing")
LEFT_OUT = shutil.ignore_patterns(
    ".*", "__pycache__", "dist", "build", "node_modules", "*.egg-info", "browser", "pictures", "icons"
)
# Test files that look at the project and not at what it computes, and the attack, which is about texts and takes long.
NO_JUDGES = ("test_build", "test_docs", "test_layers", "test_attack", "test_mutation", "test_sketches")
FIRST = 3  # test files that are run before the rest: starting them all takes longer than the first needs
WORKERS = os.cpu_count() or 1
PATIENCE = (20, 5)  # seconds and times the usual time, after which a fault is held to have made the tests endless


def environment(folder, **more):
    """CI has hypothesis draw the same examples each time. pytest's plug-ins take a second to load.

    No bytecode is kept: Python tells a changed file by second and size, and a fault put in may change neither.
    """
    path, plain = f"{folder}{os.pathsep}{folder / 'tests'}", {"PYTEST_DISABLE_PLUGIN_AUTOLOAD": "1"}
    return {**os.environ, "CI": "1", "PYTHONPATH": path, "PYTHONDONTWRITEBYTECODE": "1", **plain, **more}


def pytest(folder, arguments, timeout=None, **more):
    """Exit code of pytest in a copy, None when it took too long."""
    command = [sys.executable, "-m", "pytest", "-x", "-q", "-p", "no:cacheprovider", *arguments]
    try:
        return subprocess.run(
            command,
            cwd=folder,
            env=environment(folder, **more),
            timeout=timeout,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        ).returncode
    except subprocess.TimeoutExpired:
        return None


# Which test file reaches what


def judges(root):
    """Names of the test files that judge what the package computes."""
    return sorted(path.name for path in (root / "tests").glob("test_*.py") if path.stem not in NO_JUDGES)


def reach(folder, name):
    """{seconds, reached} of one test file, None when it does not pass."""
    with tempfile.TemporaryDirectory() as made:
        out, start = Path(made) / "reached.json", time.monotonic()
        code = pytest(folder, ["-p", "mutation.reached", f"tests/{name}"], REACHED=str(out))
        if code or not out.exists():
            return None
        return {"seconds": round(time.monotonic() - start, 1), "reached": json.loads(out.read_text())}


def reached(root, copies, cache, fresh=False):
    """{test file: {seconds, reached, of}}, from the cache where the file is the same."""
    known = json.loads(cache.read_text()) if cache.exists() and not fresh else {}
    hashes = {name: hashlib.sha256((root / "tests" / name).read_bytes()).hexdigest() for name in judges(root)}
    stale = [name for name, of in hashes.items() if known.get(name, {}).get("of") != of]
    if stale:
        print(f"Finding what {len(stale)} test files reach ...", flush=True)
    failing = []

    def look(name):
        copy = copies.get()
        try:
            return name, reach(copy, name)
        finally:
            copies.put(copy)

    with ThreadPoolExecutor(WORKERS) as pool:
        for name, found in pool.map(look, stale):
            known.pop(name, None)
            if found:
                known[name] = {**found, "of": hashes[name]}
                _keep(cache, known)
            else:
                failing.append(name)
    if failing:
        print("Left out, as they do not pass by themselves:", ", ".join(failing), flush=True)
    known = {name: known[name] for name in hashes if name in known}
    _keep(cache, known)
    return known


def _keep(cache, known):
    cache.parent.mkdir(parents=True, exist_ok=True)
    cache.write_text(json.dumps(known))


def users(root):
    """{name: {(path, function)}}: which functions of the package mention a name."""
    found = {}
    for path in sorted((root / "burnercalc").rglob("*.py")):
        _mentions(path.relative_to(root).as_posix(), ast.parse(path.read_text(encoding="utf-8")), "", False, found)
    return found


def _mentions(path, node, where, inside, found):
    """`where` is the outermost function, dotted with its class; what is within it belongs to it."""
    for child in ast.iter_child_nodes(node):
        here, within = where, inside
        if isinstance(child, ast.FunctionDef | ast.ClassDef) and not inside:
            here, within = f"{where}.{child.name}".strip("."), isinstance(child, ast.FunctionDef)
        name = child.id if isinstance(child, ast.Name) else child.attr if isinstance(child, ast.Attribute) else None
        if name:
            found.setdefault(name, set()).add((path, where or "<module>"))
        _mentions(path, child, here, within, found)


def files_for(mutant, known, mentions):
    """(test files to run, whether one reaches the very function): those named like the module first, then the quickest.

    Where none is known to reach the function, which may be younger than what is known, all that reach the module.
    """
    if mutant.where:
        wanted = {(mutant.path, mutant.where)}
    else:
        wanted = set().union(*(mentions.get(name, set()) for name in mutant.names)) - {(mutant.path, "<module>")}
    files = [name for name, found in known.items() if wanted & {tuple(each) for each in found["reached"]}]
    near = [name for name, found in known.items() if any(path == mutant.path for path, _ in found["reached"])]
    stem = Path(mutant.path).stem
    return sorted(files or near, key=lambda name: (stem not in name, known[name]["seconds"], name)), bool(files)


def within(files, known, seconds):
    """As many of the test files, from the first on, as usually take so many seconds; always the first ones."""
    total, chosen = 0.0, []
    for name in files:
        total += known[name]["seconds"]
        if len(chosen) >= FIRST and total > seconds:
            break
        chosen.append(name)
    return chosen


# Killing


def kill(copy, mutant, source, files, known):
    """The test files that failed or never ended; "" when the mutant survives them all."""
    target = copy / mutant.path
    _write(target, mutant.applied(source))
    try:
        for batch in (files[:FIRST], files[FIRST:]):
            if batch:
                usual = sum(known[name]["seconds"] for name in batch)
                code = pytest(copy, [f"tests/{name}" for name in batch], PATIENCE[0] + PATIENCE[1] * usual)
                if code != 0:
                    return "too long" if code is None else "failed"
    finally:
        _write(target, source)
    return ""


def _write(target, text):
    """Write a module and forget what was compiled of it: two versions may share a second and a size."""
    for compiled in (target.parent / "__pycache__").glob(target.stem + ".*.pyc"):
        compiled.unlink()
    target.write_text(text, encoding="utf-8")


def sample(root, paths, number, seed):
    """So many mutants of the modules at these paths, drawn by the seed; (mutant, source) pairs in order."""
    modules = []
    for path in paths:
        place = root / "burnercalc" / path if (root / "burnercalc" / path).exists() else root / path
        modules += sorted(place.rglob("*.py")) if place.is_dir() else [place]
    drawn = []
    for module in modules:
        source = module.read_text(encoding="utf-8")
        drawn += [(mutant, source) for mutant in mutants(module.relative_to(root).as_posix(), source)]
    chosen = random.Random(seed).sample(range(len(drawn)), min(number, len(drawn)))
    return [drawn[place] for place in sorted(chosen)]


def mutate(root, number, seed, paths=PATHS, fresh=False, seconds=120.0):
    """Print what became of each mutant; (killed, all)."""
    start = time.monotonic()
    faults = sample(root, paths, number, seed)
    with tempfile.TemporaryDirectory() as folder:
        copies = SimpleQueue()
        for worker in range(WORKERS):
            copies.put(shutil.copytree(root, Path(folder).resolve() / str(worker), ignore=LEFT_OUT))
        known = reached(root, copies, root / ".cache" / "mutation" / "reached.json", fresh)
        mentions = users(root)
        print(f"{len(faults)} faults, seed {seed} ...", flush=True)

        def judge(fault):
            copy = copies.get()
            try:
                files, reached_it = files_for(fault[0], known, mentions)
                chosen = within(files, known, seconds)
                return fault, (f"{len(chosen)} of {len(files)}", reached_it), kill(copy, *fault, chosen, known)
            finally:
                copies.put(copy)

        survivors = 0
        with ThreadPoolExecutor(WORKERS) as pool:
            for (mutant, source), (files, reached_it), killed in pool.map(judge, faults):
                if not killed:
                    survivors += 1
                    tried = f"{files} test files" + ("" if reached_it else ", none known to reach the function")
                    print(f"survived  {mutant.shown(source)}   ({tried})", flush=True)
    killed = len(faults) - survivors
    seconds = time.monotonic() - start
    print(f"killed {killed} of {len(faults)}, {100 * killed / max(len(faults), 1):.0f} %, in {seconds:.0f} s")
    return killed, len(faults)


def main(argv=None):
    parser = argparse.ArgumentParser(prog="mutate", description="Put small faults into the package; do the tests mind?")
    parser.add_argument("number", type=int, metavar="N", help="how many faults")
    parser.add_argument("--seed", default="1", help="same seed and sources, same faults; default 1")
    parser.add_argument(
        "--paths", nargs="+", default=PATHS, help="folders or modules of burnercalc; default %(default)s"
    )
    parser.add_argument(
        "--seconds", type=float, default=120.0, help="of test files that one fault is tried on; default 120"
    )
    parser.add_argument("--fresh", action="store_true", help="find anew which test file reaches what")
    given = parser.parse_args(argv)
    if given.number < 1:
        parser.error("N must be 1 or more")
    mutate(ROOT, given.number, given.seed, given.paths, given.fresh, given.seconds)
    return 0


if __name__ == "__main__":
    sys.exit(main())
