#!/usr/bin/env python3
"""Set up, build, serve, test and time burnercalc; needs Python 3.11 or newer and nothing else.

python3 build.py serve [--lan] [--port N]   build the site if it is stale, and serve it
python3 build.py check                      format, lint, types and layers: the fast look before a commit
python3 build.py test [pytest arguments]    check, build, then run every test, the browser ones too
python3 build.py build                      write dist/
python3 build.py bench                      print sizes and times
python3 build.py tasks                      print how many taps ten jobs take on a phone
python3 build.py attack [--minutes N]       attack package and page with seeded random input
python3 build.py mutate N                   put N small faults in, one at a time: do the tests mind?
python3 build.py lock                       rewrite the lock files after a change of pyproject.toml
python3 build.py docs                       rewrite the tables of README.md after a change of settings or answers
"""

import argparse
import contextlib
import hashlib
import http.server
import os
import re
import shutil
import socket
import subprocess
import sys
import tempfile
import time
import venv
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import ClassVar

ROOT = Path(__file__).resolve().parent
VENV = ROOT / ".venv"
CACHE = ROOT / ".cache"
DIST = ROOT / "dist"
PYTHON = VENV / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
SITE_LOCK = ROOT / "requirements.lock"
TEST_LOCK = ROOT / "requirements-test.lock"  # holds all of requirements.lock, at the same versions
TAKES_MORE = ("test", "attack", "mutate")  # commands that hand further arguments on
UV = "uv==0.13.9"  # writes the lock files; used by nothing else
SOURCES = ("build.py", "pyproject.toml", "requirements.lock", "burnercalc", "site")


def sha256(data):
    return hashlib.sha256(data).hexdigest()


def say(text):
    print(text, flush=True)


def stop(text):
    sys.exit(f"build.py: {text}")


def run(*command, **options):
    """Run a command in the project's folder with the package importable; a failure ends the build."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT), **options.pop("env", {})}
    done = subprocess.run([str(part) for part in command], cwd=ROOT, env=environment, **options)
    if done.returncode:
        stop(f"{Path(command[0]).name} {command[1]} failed with code {done.returncode}, see above")


# The virtual environment


def make_venv():
    if PYTHON.exists() and subprocess.run([PYTHON, "-c", ""]).returncode == 0:
        return
    say("Making .venv ...")
    try:
        venv.create(VENV, with_pip=True, clear=True)
    except (subprocess.CalledProcessError, ImportError):
        stop("this Python cannot make a virtual environment; on Debian and Ubuntu: apt-get install python3-venv")


def set_up(lock):
    """Install the lock file into .venv, unless that very file was installed before."""
    make_venv()
    stamp = VENV / "installed"
    installed = stamp.read_text().split() if stamp.exists() else []
    if sha256(lock.read_bytes()) in installed:
        return
    say(f"Installing {lock.name} into .venv (once; this downloads some hundred megabytes) ...")
    stamp.unlink(missing_ok=True)
    run(
        PYTHON,
        "-m",
        "pip",
        "install",
        "--disable-pip-version-check",
        "--no-deps",
        "--no-compile",  # Python does so by itself with what is imported, a small part
        "--require-hashes",
        "--only-binary",
        ":all:",
        "-r",
        lock,
    )
    locks = {SITE_LOCK, lock}
    stamp.write_text("\n".join(sorted(sha256(each.read_bytes()) for each in locks)) + "\n")


def lock():
    """Resolve pyproject.toml for every platform, and pin what the browser loads."""
    make_venv()
    target = CACHE / "uv"
    run(PYTHON, "-m", "pip", "install", "--quiet", "--upgrade", "--target", target, UV)
    compile_ = [
        target / "bin" / "uv",
        "pip",
        "compile",
        "pyproject.toml",
        "--quiet",
        "--no-header",
        "--universal",
        "--python-version",
        "3.11",
        "--generate-hashes",
    ]
    run(*compile_, "--extra", "site", "-o", SITE_LOCK)
    run(*compile_, "--all-extras", "-c", SITE_LOCK, "-o", TEST_LOCK)
    set_up(SITE_LOCK)
    run(PYTHON, "site/make/runtime.py", "lock", target / "bin" / "uv")


# The site


def content_hash(folder=ROOT, parts=SOURCES):
    """Hash of the files in parts of a folder, their names with them; of every file that dist/ is made from."""
    total = hashlib.sha256()
    for part in parts:
        path = folder / part
        for file in sorted(path.rglob("*")) if path.is_dir() else [path]:
            if file.is_file() and "__pycache__" not in file.parts:
                total.update(f"{file.relative_to(folder).as_posix()}\0{sha256(file.read_bytes())}\n".encode())
    return total.hexdigest()


def stamp_of(out):
    """What was built from what: a file that changed on either side makes another stamp."""
    return f"{content_hash()} {content_hash(out, ['.'])}"


def build(out=DIST):
    """Write the site into a fresh folder and put it in place of the old one."""
    set_up(SITE_LOCK)
    CACHE.mkdir(exist_ok=True)
    stamp = CACHE / "dist.sha256"
    if out == DIST and DIST.exists() and stamp.exists() and stamp.read_text() == stamp_of(DIST):
        return
    say("Building the site ...")
    with tempfile.TemporaryDirectory(dir=CACHE) as folder:
        fresh = Path(folder) / "dist"
        run(PYTHON, "site/make/assemble.py", fresh)
        shutil.rmtree(out, ignore_errors=True)
        fresh.rename(out)
    if out == DIST:
        stamp.write_text(stamp_of(DIST))


class Handler(http.server.SimpleHTTPRequestHandler):
    """Serves dist/ the way a static host does, with the headers that dist/_headers asks for on every file."""

    protocol_version = "HTTP/1.1"
    extensions_map: ClassVar = {
        **http.server.SimpleHTTPRequestHandler.extensions_map,
        ".js": "text/javascript",
        ".mjs": "text/javascript",
        ".json": "application/json",
        ".wasm": "application/wasm",
        ".webmanifest": "application/manifest+json",
        ".svg": "image/svg+xml",
        ".whl": "application/zip",
    }

    def handle(self):
        try:
            super().handle()
        except ConnectionError:
            pass  # the browser went away, as it does when a page is closed

    def end_headers(self):
        for line in (Path(self.directory) / "_headers").read_text(encoding="utf-8").splitlines()[1:]:
            name, _, value = line.strip().partition(": ")
            self.send_header(name, value)
        super().end_headers()

    def log_message(self, *arguments):
        pass


def server(port=0, host="127.0.0.1", folder=DIST):
    """A server that is bound but does not run yet; port 0 takes any free one."""
    return http.server.ThreadingHTTPServer((host, port), lambda *arguments: Handler(*arguments, directory=str(folder)))


def lan_address():
    """This machine's address on the local network; connecting a datagram socket sends nothing."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(("192.0.2.1", 9))
        except OSError:
            return None
        return probe.getsockname()[0]


def port_number(text):
    """A port as typed; argparse names any other text."""
    if not (text.isascii() and text.isdecimal() and 1 <= int(text) <= 65535):
        raise argparse.ArgumentTypeError(f"{text!r} is not a port; it must be 1 to 65535")
    return int(text)


def serve(port, lan):
    build()
    try:
        http_server = server(port, "0.0.0.0" if lan else "127.0.0.1")
    except OSError as error:
        stop(f"port {port} cannot be used ({error.strerror}); try --port {port + 1}")
    say(f"burnercalc is at http://localhost:{port}/   (Ctrl-C ends it)")
    if lan:
        address = lan_address()
        say(
            f"On the same network:  http://{address}:{port}/   (offline use and installing need https or localhost)"
            if address
            else "No local network found; only localhost works."
        )
    try:
        http_server.serve_forever()
    except KeyboardInterrupt:
        say("")


# What is looked at before any test: name, then a module of .venv and its arguments
CHECKS = {
    "format": ("ruff", "format", "--check", "--quiet", "."),
    "lint": ("ruff", "check", "--quiet", "."),
    "types": ("mypy", "--no-error-summary"),
    "layers": ("pytest", "-q", "--no-header", "-p", "no:cacheprovider", "tests/test_layers.py"),
}


def passes(name, folder=ROOT):
    """Whether the sources in a folder pass one of the checks; what does not pass is printed."""
    environment = {**os.environ, "PYTHONPATH": str(folder)}
    return subprocess.run([PYTHON, "-m", *CHECKS[name]], cwd=folder, env=environment).returncode == 0


def check():
    set_up(TEST_LOCK)
    if failed := [name for name in CHECKS if not passes(name)]:
        stop(f"{', '.join(failed)} must be mended, see above")


# Runs side by side on two cores: most tests use one, and those of the browser often wait. A file that several runs name
# falls to the one that comes to it first (tests/conftest.py); the longest are begun first, so that all end together.
LONG = tuple(f"tests/test_{name}.py" for name in ("inputs", "find", "files", "docs", "find_good"))
LONG_PAGE = tuple(f"tests/browser/test_{name}.py" for name in ("job", "engines"))
OF_PACKAGE, OF_PAGE = (
    sorted(path.relative_to(ROOT).as_posix() for path in ROOT.glob(f"tests/{place}test_*.py"))
    for place in ("", "browser/")
)
PAGE = tuple(dict.fromkeys((*LONG_PAGE, *OF_PAGE)))
RUNS = (
    (*OF_PACKAGE, *reversed(PAGE)),
    (*PAGE, "-o", "cache_dir=.cache/pytest"),
    (*LONG, *reversed(PAGE), "-o", "cache_dir=.cache/pytest-page"),
)


def test(arguments):
    set_up(TEST_LOCK)
    with ThreadPoolExecutor(1) as beside:
        looked = beside.submit(check), beside.submit(run, PYTHON, "tests/browser/engines.py", "shell", "chromium")
        build()
    for each in looked:
        each.result()
    if arguments:
        run(PYTHON, "-m", "pytest", *arguments)
    elif not side_by_side():
        stop("tests failed, see above")


def side_by_side():
    """Run all tests: the first run's words as they come, the others' after them, one summary. Whether all passed."""
    started = time.monotonic()
    compiled = {"PYTHONDONTWRITEBYTECODE": "", "PYTHONPYCACHEPREFIX": str(CACHE / "pyc")}  # a hundred starts of Python
    environment = {**os.environ, "PYTHONPATH": str(ROOT), **compiled}
    common = {"cwd": ROOT, "env": environment, "stderr": subprocess.STDOUT}
    with contextlib.ExitStack() as stack:
        later = [stack.enter_context(tempfile.TemporaryFile()) for _ in RUNS[1:]]
        begun = f"--begun={stack.enter_context(tempfile.TemporaryDirectory())}"
        outs = [subprocess.PIPE, *later]
        runs = [
            stack.enter_context(subprocess.Popen([PYTHON, "-m", "pytest", begun, *given], stdout=out, **common))
            for given, out in zip(RUNS, outs)
        ]
        said = [b""]
        while piece := runs[0].stdout.read1():
            said[0] += piece
            sys.stdout.buffer.write(piece)
            sys.stdout.buffer.flush()
        passed = [each.wait() == 0 for each in runs]
        for out in later:
            out.seek(0)
            said.append(out.read())
    texts = [words.decode("utf-8", "replace") for words in said]
    for text in texts[1:]:
        say(text)
    seconds = time.monotonic() - started
    say(f"==== {summary(texts)} in {seconds:.0f} s ({seconds / 60:.1f} min) ====")
    return all(passed)


def summary(said):
    """The counts of several runs of pytest as one: `5400 passed, 2 skipped`."""
    counts = {}
    for text in said:
        last = text.strip().rpartition("\n")[2]
        found = re.findall(r"(\d+) ([a-z]+)(?=,| in )", last)
        for number, word in found or ([] if "no tests ran" in last else [(1, "broken run")]):
            counts[word] = counts.get(word, 0) + int(number)
    return ", ".join(f"{number} {word}" for word, number in counts.items())


def bench():
    set_up(TEST_LOCK)
    build()
    run(PYTHON, "tests/browser/engines.py", "chromium")
    run(PYTHON, "tests/browser/bench.py")


def tasks():
    """Jobs by touch; see the module for what is counted."""
    set_up(TEST_LOCK)
    run(PYTHON, "tests/browser/tasks.py")


def attack(arguments):
    """The standing attack, at length; a slice of it is in the tests."""
    set_up(TEST_LOCK)
    build()
    run(PYTHON, "tests/browser/engines.py", "chromium")
    run(PYTHON, "tests/attack/run.py", *arguments)


def mutate(arguments):
    """The mutation runner: how many small faults do the tests find?"""
    set_up(TEST_LOCK)
    run(PYTHON, "tests/mutation/run.py", *arguments)


def docs():
    set_up(SITE_LOCK)
    run(PYTHON, "site/make/readme.py")


def main():
    if sys.version_info < (3, 11):  # noqa: UP036  whatever Python is there runs this file
        stop(f"needs Python 3.11 or newer; this is {sys.version.split()[0]}")
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")
    for name, text in (
        ("build", "write dist/"),
        ("check", "look at format, lint, types and layers"),
        ("bench", "print sizes and times"),
        ("tasks", "print how many taps ten jobs take on a phone"),
        ("lock", "rewrite the lock files"),
        ("docs", "rewrite the tables of README.md"),
        ("test", "run every test; further arguments go to pytest"),
        ("attack", "attack package and page with seeded random input; --help tells its arguments"),
        ("mutate", "put small faults in and see whether the tests mind; --help tells its arguments"),
    ):
        commands.add_parser(name, help=text, add_help=name not in TAKES_MORE)
    serving = commands.add_parser("serve", help="build the site if it is stale, and serve it")
    serving.add_argument("--port", type=port_number, default=8000)
    serving.add_argument("--lan", action="store_true", help="also answer other machines on the local network")
    options, rest = parser.parse_known_args()
    if rest and options.command not in TAKES_MORE:
        parser.error(f"unknown arguments: {' '.join(rest)}")
    match options.command:
        case "serve":
            serve(options.port, options.lan)
        case "check":
            check()
        case "test":
            test(rest)
        case "attack":
            attack(rest)
        case "mutate":
            mutate(rest)
        case "build":
            build()
            say(f"The site is in {DIST.name}/")
        case "bench":
            bench()
        case "tasks":
            tasks()
        case "lock":
            lock()
        case "docs":
            docs()


if __name__ == "__main__":
    try:
        main()
    except OSError as trouble:  # a folder that cannot be written, a full disk
        stop(f"{trouble.filename or 'a file'}: {trouble.strerror}")
    except KeyboardInterrupt:
        stop("ended by Ctrl-C")
