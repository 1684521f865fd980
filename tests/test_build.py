"""What build.py writes: whole, checked, the same every time, and asking no other host."""

import ast
import base64
import filecmp
import hashlib
import html
import io
import json
import os
import re
import shutil
import subprocess
import sys
import threading
import tomllib
import urllib.request
import zipfile
import zlib
from pathlib import Path
from xml.etree import ElementTree

import pytest
from browser import engines
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

import build

sys.path.insert(0, str(build.ROOT / "site" / "make"))
import bokehjs
import runtime

PYPROJECT = tomllib.loads((build.ROOT / "pyproject.toml").read_text())
RUNTIME_LOCK = json.loads(runtime.LOCK.read_text())


@pytest.fixture(scope="module")
def dist():
    build.build()
    return build.DIST


def files(folder):
    return sorted(path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file())


def precached(dist):
    return json.loads(re.search(r"const FILES = (\{.*?\});", (dist / "sw.mjs").read_text(), re.S)[1])


# Locks


def pins(lock):
    return {
        canonicalize_name(name): version
        for name, version in re.findall(r"^([\w.-]+)==([\w.]+)", lock.read_text(), re.M)
    }


@pytest.mark.parametrize(
    "lock, extras",
    [(build.SITE_LOCK, ["site"]), (build.TEST_LOCK, ["site", "test"])],
    ids=lambda value: getattr(value, "name", None),
)
def test_a_lock_pins_what_pyproject_names(lock, extras):
    project = PYPROJECT["project"]
    wanted = project["dependencies"] + [line for extra in extras for line in project["optional-dependencies"][extra]]
    pinned = pins(lock)
    for requirement in map(Requirement, wanted):
        assert pinned.get(canonicalize_name(requirement.name), "") in requirement.specifier, requirement


def test_the_test_lock_holds_the_site_lock():
    assert set(pins(build.SITE_LOCK).items()) <= set(pins(build.TEST_LOCK).items())


def test_the_browser_gets_the_versions_that_the_tests_ran_with():
    pinned = pins(build.SITE_LOCK)
    wheels = {entry["name"]: entry["version"] for entry in RUNTIME_LOCK if entry["file"].endswith(".whl")}
    assert wheels == {name: pinned[name] for name in wheels}


def test_runtime_lock_is_sorted_and_names_the_pinned_packages():
    names = [entry["name"] for entry in RUNTIME_LOCK]
    assert names == sorted(names)
    assert {name: entry["version"] for name, entry in runtime.locked()[0].items()} == runtime.NPM


def test_every_file_that_is_not_as_locked_is_named(tmp_path, monkeypatch):
    for entry in RUNTIME_LOCK:
        (tmp_path / entry["file"]).write_bytes(b"not what was locked")
    monkeypatch.setattr(runtime, "CACHE", tmp_path)
    with pytest.raises(SystemExit) as stopped:
        runtime.fetch()
    for entry in RUNTIME_LOCK:
        assert f"{entry['file']}: expected sha256 {entry['sha256']}, got " in str(stopped.value)
    assert files(tmp_path) == []  # so that the next build fetches them again


def test_the_package_imports_nothing_that_the_browser_is_not_given(dist):
    """Also not inside a function, where a test that imports every module would not see it."""
    with zipfile.ZipFile(dist / "pyodide" / "python_stdlib.zip") as archive:
        given = {name.split("/")[0].removesuffix(".pyc") for name in archive.namelist()}
    own = {"burnercalc", "flexcache", "flexparser", "pint", "pydyf", "segno"}
    everything = zipfile.ZipFile(io.BytesIO(runtime.npm_file("pyodide", "python_stdlib.zip"))).namelist()
    left_out = {name.split("/")[0].removesuffix(".py") for name in everything} - given
    for path in sorted((build.ROOT / "burnercalc").rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text())):
            names = (
                [alias.name for alias in node.names]
                if isinstance(node, ast.Import)
                else [node.module]
                if isinstance(node, ast.ImportFrom) and not node.level
                else []
            )
            for name in names:
                assert name.split(".")[0] in own | sys.stdlib_module_names, f"{path.name} imports {name}"
                assert name.split(".")[0] not in left_out, f"{path.name} imports {name}, which the browser lacks"


# The fast check


@pytest.mark.parametrize(
    "name, fault",
    [
        ("format", "ODD=  1\n"),
        ("lint", "import json\n"),
        ("types", 'ODD: int = "one"\n'),
        ("layers", "from .units import show as show\n"),
    ],
)
def test_each_of_the_fast_checks_finds_its_fault(name, fault, tmp_path, capfd):
    shutil.copytree(build.ROOT / "burnercalc", tmp_path / "burnercalc", ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copy(build.ROOT / "pyproject.toml", tmp_path)
    (tmp_path / "tests").mkdir()
    shutil.copy(build.ROOT / "tests" / "test_layers.py", tmp_path / "tests")
    with (tmp_path / "burnercalc" / "constants.py").open("a") as spoilt:
        spoilt.write(fault)
    assert not build.passes(name, tmp_path)
    said = capfd.readouterr().out
    assert "constants" in said and said.count("error:") + said.count("FAILED") <= 1


# The test command


def test_the_runs_are_all_tests():
    """Whatever is added under tests/ falls to a run."""
    named = {build.ROOT / part for given in build.RUNS for part in given if part.startswith("tests")}
    assert named == set((build.ROOT / "tests").rglob("test_*.py"))


@pytest.mark.parametrize("faulty", [None, 2])
def test_runs_side_by_side_do_every_file_once_and_end_with_one_summary(faulty, tmp_path, monkeypatch, capfd):
    shutil.copy(build.ROOT / "tests" / "conftest.py", tmp_path)
    for number in range(4):
        (tmp_path / f"test_{number}.py").write_text(f"def test_it():\n    assert {number != faulty}\n")
    monkeypatch.setattr(build, "RUNS", [[str(tmp_path)]] * 2)
    assert build.side_by_side() == (faulty is None)
    last = capfd.readouterr().out.strip().rpartition("\n")[2]
    assert re.match(r"==== (4 passed|1 failed, 3 passed|3 passed, 1 failed) in \d+ s", last), last
    assert ("failed" in last) == (faulty is not None)


def test_a_run_that_ends_without_a_summary_is_not_hidden():
    assert (
        build.summary(["= 3 passed, 1 skipped in 2.00s (0:00:02) =\n", "= no tests ran in 1.00s =", "Killed"])
        == "3 passed, 1 skipped, 1 broken run"
    )


# dist/


def test_two_builds_are_equal(dist, tmp_path):
    again = tmp_path / "dist"
    build.run(build.PYTHON, "site/make/assemble.py", again)
    assert files(again) == files(dist)
    _, different, unreadable = filecmp.cmpfiles(dist, again, files(dist), shallow=False)
    assert (different, unreadable) == ([], [])


def test_a_changed_source_makes_the_site_stale(tmp_path):
    shutil.copytree(build.ROOT / "site", tmp_path / "site")
    before = build.content_hash(tmp_path, ["site"])
    assert build.content_hash(tmp_path, ["site"]) == before
    (tmp_path / "site" / "browser" / "icons" / "new.txt").write_text("new")
    assert build.content_hash(tmp_path, ["site"]) != before


def test_a_file_of_the_site_that_is_gone_or_changed_is_built_again(dist, monkeypatch, tmp_path):
    def no_building(*command, **options):
        raise AssertionError("built again")

    copy, stamp = tmp_path / "dist", tmp_path / "dist.sha256"
    shutil.copytree(dist, copy)
    shutil.copy(build.CACHE / stamp.name, stamp)
    monkeypatch.setattr(build, "run", no_building)
    monkeypatch.setattr(build, "DIST", copy)
    monkeypatch.setattr(build, "CACHE", tmp_path)
    build.build(copy)  # nothing to do
    for spoil in (lambda path: path.unlink(), lambda path: path.write_text("")):
        path = copy / "app.mjs"
        kept = path.read_bytes()
        spoil(path)
        with pytest.raises(AssertionError, match="built again"):
            build.build(copy)
        path.write_bytes(kept)
    build.build(copy)


def test_service_worker_lists_every_file_that_a_page_asks_for_with_its_hash(dist):
    expected = {
        name: "sha256-" + base64.b64encode(hashlib.sha256((dist / name).read_bytes()).digest()).decode()
        for name in files(dist)
        if not name.startswith(("licences/", "_headers", ".htaccess", "headers.nginx.conf", "web.config", "sw.mjs"))
        and name != "example.html"  # for browsers without scripts, which keep nothing
    }
    assert precached(dist) == expected
    assert re.search(r'const VERSION = "[0-9a-f]{16}";', (dist / "sw.mjs").read_text())


def test_pyodide_lock_names_the_sites_own_wheels_and_no_other_place(dist):
    folder = dist / "pyodide"
    packages = json.loads((folder / "pyodide-lock.json").read_text())["packages"]
    assert set(packages) == {entry["name"] for entry in RUNTIME_LOCK} - set(runtime.NPM) | {"burnercalc"}
    for package in packages.values():
        assert "/" not in package["file_name"]
        assert package["sha256"] == hashlib.sha256((folder / package["file_name"]).read_bytes()).hexdigest()
        assert set(package["depends"]) <= set(packages)
    assert {path.name for path in folder.glob("*.whl")} == {package["file_name"] for package in packages.values()}


def test_own_files_name_no_other_host(dist):
    namespace = re.compile(r"http://www\.w3\.org/\d{4}/\w+")  # a name, never fetched
    link = re.compile(r"<a\b[^>]*\bhref=\"https?://[^\"]*\"")  # a plain link, followed only by a person
    for name in files(dist):
        if name.startswith(("pyodide/", "vendor/", "licences/")) or name.endswith(".png"):
            continue  # libraries, whose doings tests/browser watches, and texts that nobody runs
        data = (dist / name).read_bytes()
        text = (zlib.decompress(data) if name.endswith(".bin") else data).decode()
        text = link.sub("", namespace.sub("", text))
        assert re.findall(r"(?:https?:)?//[\w.-]+\.\w{2,}[^\s\"']*", re.sub(r"(?m)(^|\s)//.*$", "", text)) == [], name


def test_bokehjs_modules_come_after_those_that_they_need():
    modules = {
        1: "function _(a,b){}",
        2: "function _(get,b){get(1);get(9)}",
        3: "function _(g,b){b.g(4);g(2)}",
        4: "function _(){}",
    }
    assert bokehjs.in_order(modules, [3, 1]) == [1, 2, 3]  # 9 is a plug-in that is not there, b.g(4) no call of get
    with pytest.raises(AssertionError, match="need each other"):
        bokehjs.in_order({1: "function _(a){a(2)}", 2: "function _(a){a(1)}"}, [1])


def test_bokehjs_has_every_model_of_the_page(dist):
    scripts = "".join((dist / "vendor" / "bokeh" / f"{part}.js").read_text() for part in range(1, bokehjs.PARTS + 1))
    registered = set(re.findall(r"(\w+): get\(\d+\)", re.search(r"register_models\(\{(.*?)\}, true\)", scripts)[1]))
    assert registered == bokehjs.model_names(json.loads(zlib.decompress((dist / "page.bin").read_bytes())))
    modules = {int(each) for each in re.findall(r"^(\d+): function", scripts, re.MULTILINE)}
    assert modules == set(json.loads(re.search(r"for \(const id of (\[.*?\])\)", scripts)[1]))


def test_style_sheets_fetch_nothing_from_elsewhere(dist):
    for name in files(dist):
        if name.endswith(".css"):
            text = (dist / name).read_text()
            assert re.findall(r"(?:url\(|@import)\s*['\"]?(?:https?:)?//[^)]*", text) == [], name


def test_page_carries_the_policy(dist):
    policy = (dist / "csp.txt").read_text()
    assert "unsafe-eval" not in policy.replace("wasm-unsafe-eval", "")
    page = (dist / "index.html").read_text()
    inside = re.search(r'http-equiv="Content-Security-Policy"\s+content="([^"]*)"', html.unescape(page))[1]
    assert policy == f"{inside}; frame-ancestors 'none'"  # which browsers take from a header only
    assert policy.startswith("default-src 'none';")
    scripts = re.findall(r"<script>(.*?)</script>", page, re.DOTALL)
    allowed = [base64.b64encode(hashlib.sha256(script.encode()).digest()).decode() for script in scripts]
    assert re.findall(r"'sha256-([^']*)'", policy) == allowed


def test_the_page_is_no_heavier_than_before_it_had_chapters(dist):
    """Then 226 kB before the first paint, 43 kB of them packed, and 451 kB with what made the page live."""
    page, data = (dist / "index.html").read_bytes(), (dist / "page.bin").read_bytes()
    assert len(page) < 226e3 and len(zlib.compress(page, 9)) < 43e3
    assert len(page) + len(data) < 451e3


def test_manifest_icons_exist(dist):
    manifest = json.loads((dist / "manifest.webmanifest").read_text())
    for icon in manifest["icons"]:
        assert (dist / icon["src"]).is_file()
    assert manifest["start_url"] == manifest["scope"] == "./"


# Licences and the bill of what is shipped


def bill(dist):
    return json.loads((dist / "licences" / "sbom.cdx.json").read_text())


def shipped_files(found):
    """{file: [(component, sha256)]} of a bill."""
    owned = {}
    for component in [found["metadata"]["component"], *found["components"]]:
        for part in component["components"]:
            if part["type"] == "file":
                (digest,) = part["hashes"]
                assert digest["alg"] == "SHA-256"
                owned.setdefault(part["name"], []).append((component["name"], digest["content"]))
    return owned


def test_the_bill_holds_every_file_once_with_its_hash(dist):
    owned = shipped_files(bill(dist))
    assert sorted(owned) == [name for name in files(dist) if name != "licences/sbom.cdx.json"]
    for name, found in owned.items():
        assert [digest for _, digest in found] == [hashlib.sha256((dist / name).read_bytes()).hexdigest()], name


def test_the_bill_gives_each_library_its_own_files(dist):
    owner = {name: found[0][0] for name, found in shipped_files(bill(dist)).items()}
    for entry in RUNTIME_LOCK:
        if entry["file"].endswith(".whl"):
            assert owner[f"pyodide/{entry['file']}"] == entry["name"]
    assert owner["pyodide/pyodide.asm.wasm"] == "pyodide"
    assert owner["pyodide/python_stdlib.zip"] == "cpython-standard-library"
    assert owner["vendor/idb-keyval/index.js"] == "idb-keyval" and owner["vendor/bokeh/1.js"] == "bokehjs"
    strangers = {name for name in owner if name.startswith(("vendor/", "pyodide/")) and owner[name] == "burnercalc"}
    own_wheel = next(name for name in owner if name.startswith("pyodide/burnercalc-"))
    assert strangers == {"pyodide/pyodide-lock.json", own_wheel}


def test_the_bill_is_cyclonedx_with_versions_and_licences(dist):
    found = bill(dist)
    assert (found["bomFormat"], found["specVersion"], found["version"]) == ("CycloneDX", "1.6", 1)
    versions = {entry["name"]: entry["version"] for entry in RUNTIME_LOCK}
    for component in [found["metadata"]["component"], *found["components"]]:
        assert component["version"] == versions.get(component["name"], component["version"])
        for each in (component, *(part for part in component["components"] if part["type"] == "library")):
            (licence,) = each["licenses"]
            assert re.fullmatch(r"[\w.-]+(( AND| OR| WITH) [\w.-]+)*", licence["expression"]), each["name"]
    assert {entry["name"] for entry in RUNTIME_LOCK} <= {component["name"] for component in found["components"]}


def test_licences_are_what_the_wheels_say(dist):
    """Where a wheel names an SPDX identifier itself."""
    named = {component["name"]: component["licenses"][0]["expression"] for component in bill(dist)["components"]}
    for entry in RUNTIME_LOCK:
        if entry["file"].endswith(".whl"):
            with zipfile.ZipFile(runtime.fetch() / entry["file"]) as archive:
                path = next(name for name in archive.namelist() if name.endswith(".dist-info/METADATA"))
                said = re.search(r"^License-Expression: (.*)$", archive.read(path).decode(), re.M)
            if said:
                assert named[entry["name"]] == said[1].strip()


@pytest.mark.parametrize(
    "name, says",
    [
        ("MPL-2.0.txt", "Mozilla Public License Version 2.0"),  # Pyodide
        ("Python.txt", "PYTHON SOFTWARE FOUNDATION LICENSE VERSION 2"),
        ("Apache-2.0.txt", "Apache License"),  # which the next refers to
        ("idb-keyval.txt", 'Licensed under the Apache License, Version 2.0 (the "License")'),
        ("bokeh.txt", "Bokeh Contributors"),
        ("pint.txt", "Redistribution and use"),
        ("pydyf.txt", "Redistribution and use"),
        ("segno.txt", "Redistribution and use"),
        ("flexcache.txt", "Redistribution and use"),
        ("flexparser.txt", "Redistribution and use"),
        ("platformdirs.txt", "Permission is hereby granted"),
        ("typing-extensions.txt", "PYTHON SOFTWARE FOUNDATION LICENSE VERSION 2"),
        ("burnercalc.txt", "Redistribution and use"),
    ],
)
def test_each_licence_text_is_shipped(dist, name, says):
    assert says in (dist / "licences" / name).read_text()
    assert name in (dist / "licences" / "README.txt").read_text()


def test_the_source_of_what_asks_for_it_is_named(dist):
    (line,) = re.findall(r"^pyodide .*$", (dist / "licences" / "README.txt").read_text(), re.M)
    assert "MPL-2.0" in line and re.search(r"https://\S+/pyodide$", line)


# Headers


def headers_of(name, text):
    """{name: value} as each kind of host reads its file."""
    if name == "_headers":
        where, *lines = text.splitlines()
        assert where == "/*"
        return dict(line.strip().split(": ", 1) for line in lines)
    if name == "web.config":
        return {add.get("name"): add.get("value") for add in ElementTree.fromstring(text).iter("add")}
    pattern = {
        ".htaccess": r'^Header always set (\S+) "([^"]*)"$',
        "headers.nginx.conf": r'^add_header (\S+) "([^"]*)" always;$',
    }
    return dict(re.findall(pattern[name], text, re.M))


def served_headers(dist, path):
    server = build.server(folder=dist)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        with urllib.request.urlopen(f"http://127.0.0.1:{server.server_port}/{path}") as response:
            return dict(response.headers)
    finally:
        server.shutdown()
        server.server_close()


@pytest.mark.parametrize("name", [".htaccess", "headers.nginx.conf", "web.config"])
def test_every_kind_of_host_is_told_the_same_headers(dist, name):
    assert headers_of(name, (dist / name).read_text()) == headers_of("_headers", (dist / "_headers").read_text())


def test_the_headers_are_strict_and_our_own_server_sends_them(dist):
    wanted = headers_of("_headers", (dist / "_headers").read_text())
    assert wanted["Content-Security-Policy"] == (dist / "csp.txt").read_text()
    assert "frame-ancestors 'none'" in wanted["Content-Security-Policy"] and wanted["X-Frame-Options"] == "DENY"
    assert wanted["X-Content-Type-Options"] == "nosniff" and wanted["Referrer-Policy"] == "no-referrer"
    assert wanted["Cross-Origin-Opener-Policy"] == wanted["Cross-Origin-Resource-Policy"] == "same-origin"
    assert {"camera=()", "geolocation=()", "microphone=()"} <= set(wanted["Permissions-Policy"].split(", "))
    for path in ("", "app.mjs", "pyodide/pyodide.asm.wasm"):
        assert wanted.items() <= served_headers(dist, path).items()


@pytest.mark.parametrize("name", [".htaccess", "headers.nginx.conf", "web.config"])
def test_hosts_are_told_the_types_that_browsers_insist_on(dist, name):
    text = (dist / name).read_text()
    for ending, kind in ((".mjs", "text/javascript"), (".wasm", "application/wasm")):
        assert any(ending.strip(".") in line and kind in line for line in text.splitlines())


# Serving


@pytest.mark.parametrize(
    "name, kind",
    [
        ("worker.mjs", "text/javascript"),
        ("pyodide/pyodide.asm.wasm", "application/wasm"),
        ("pyodide/pyodide-lock.json", "application/json"),
        ("manifest.webmanifest", "application/manifest+json"),
        ("icons/icon.svg", "image/svg+xml"),
    ],
)
def test_server_names_the_type_that_browsers_insist_on(dist, name, kind):
    server = build.server()
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        with urllib.request.urlopen(f"http://127.0.0.1:{server.server_port}/{name}") as response:
            assert response.headers.get_content_type() == kind
            assert response.read() == (dist / name).read_bytes()
    finally:
        server.shutdown()
        server.server_close()


def test_build_script_needs_the_standard_library_only():
    script = "import sys; sys.path.insert(0, '.'); import build; print(*{m.partition('.')[0] for m in sys.modules})"
    done = subprocess.run(
        [sys.executable, "-I", "-S", "-c", script], cwd=build.ROOT, check=True, capture_output=True, text=True
    )
    assert set(done.stdout.split()) - set(sys.stdlib_module_names) == {"__main__", "build"}


def run_build(*arguments, script=build.__file__):
    return subprocess.run([sys.executable, script, *arguments], cwd=build.ROOT, capture_output=True, text=True)


@pytest.mark.parametrize("port", ["99999", "0", "-1", "eighty", "8e3", "\u0663"])
def test_what_is_no_port_is_named(port):
    done = run_build("serve", f"--port={port}")
    assert done.returncode == 2 and "must be 1 to 65535" in done.stderr and "Traceback" not in done.stderr


def test_a_cache_that_cannot_be_written_is_named(tmp_path):
    """A file in the place of the folder, because a test may run as somebody who may write everywhere."""
    shutil.copy(build.__file__, tmp_path)
    (tmp_path / ".venv").symlink_to(build.VENV)
    for lock in (build.SITE_LOCK, build.TEST_LOCK):
        shutil.copy(lock, tmp_path)
    (tmp_path / ".cache").write_text("")
    done = run_build("build", script=tmp_path / "build.py")
    assert done.returncode == 1
    assert done.stderr.startswith("build.py: ") and ".cache" in done.stderr and done.stderr.count("\n") == 1


APT_GET = """#!/bin/sh
echo "$*" >> "$0.asked"
[ $(wc -l < "$0.asked") -gt 2 ] && exit 0
echo "E: Could not get lock /var/lib/apt/lists/lock. It is held by process 7 (apt-get)" >&2
exit 100
"""


@pytest.mark.skipif(os.name == "nt", reason="apt-get is Debian's")
def test_a_package_lock_that_another_holds_is_waited_for(tmp_path, monkeypatch):
    program = tmp_path / "apt-get"
    program.write_text(APT_GET)
    program.chmod(0o755)
    monkeypatch.setenv("PATH", str(tmp_path), prepend=os.pathsep)
    monkeypatch.setattr(engines, "LOCK_LOOK_S", 0)
    monkeypatch.setattr(os, "geteuid", lambda: 0)
    assert engines.install("chromium")
    asked = (tmp_path / "apt-get.asked").read_text().splitlines()
    waits = f"-o DPkg::Lock::Timeout={engines.LOCK_PATIENCE_S}"
    assert asked == [f"{waits} update -qq"] * 3 + [f"{waits} install -qq -y --no-install-recommends chromium"]


@pytest.mark.skipif(os.name == "nt", reason="apt-get is Debian's")
def test_any_other_failure_of_apt_get_is_said_at_once(tmp_path, monkeypatch, capsys):
    program = tmp_path / "apt-get"
    program.write_text("#!/bin/sh\necho 'E: Unable to locate package chromium' >&2\nexit 100\n")
    program.chmod(0o755)
    monkeypatch.setenv("PATH", str(tmp_path), prepend=os.pathsep)
    monkeypatch.setattr(os, "geteuid", lambda: 0)
    assert not engines.install("chromium")
    assert capsys.readouterr().err.count("Unable to locate package") == 1


def test_help_names_every_command():
    done = subprocess.run(
        [sys.executable, Path(build.__file__).name, "--help"],
        cwd=build.ROOT,
        check=True,
        capture_output=True,
        text=True,
    )
    for command in ("serve", "check", "test", "build", "bench", "attack", "mutate", "lock", "docs"):
        assert command in done.stdout
