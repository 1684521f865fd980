"""Imports point one way, third parties have one owner each, and nothing in the package reads a clock or rolls dice."""

import ast
import sys
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parent.parent / "burnercalc"
FILES = sorted(PACKAGE.rglob("*.py"))

# What each layer may import of the package. A layer is a folder or a module at the top.
FOUNDATION = {"errors", "constants", "tables", "units"}
MAY = {
    "errors": set(),
    "constants": set(),
    "rooms": set(),
    "sources": set(),
    "tables": {"errors"},
    "units": {"errors"},
    "physics": {"errors", "constants", "tables"},
    "making": {"errors", "constants", "tables", "physics"},
    "drawing": {"errors", "tables"},
    "settings": FOUNDATION | {"rooms", "physics", "making"},
    "grammars": FOUNDATION | {"physics", "making"},
    "catalogue": {"constants", "rooms", "sources", "tables", "units"},
    "parts": FOUNDATION | {"physics", "making", "catalogue"},
    "burner": {"parts"},
    "checks": FOUNDATION | {"physics", "making", "parts", "catalogue"},
    "views": FOUNDATION | {"physics", "making", "drawing", "parts", "catalogue"},
    "rules_heat": FOUNDATION | {"physics", "parts", "burner", "settings"},
    "rules": FOUNDATION | {"physics", "making", "parts", "settings", "rules_heat"},
    "design": FOUNDATION | {"grammars", "parts", "settings", "rules"},
    "result": FOUNDATION | {"physics", "drawing", "catalogue", "checks", "views", "burner"},
    "link": {"design", "errors", "settings", "units"},
    "sheet": FOUNDATION | {"link", "rooms", "settings"},
    "foot": {"drawing"},
    "shopping": FOUNDATION | {"drawing", "parts", "foot"},
    "build_sheet": FOUNDATION | {"drawing", "sheet", "settings", "link", "result", "foot", "shopping"},
    "traveller": FOUNDATION | {"drawing", "build_sheet", "settings", "foot"},
    "files": FOUNDATION
    | {"shopping", "traveller", "drawing", "sheet", "build_sheet", "foot", "link", "settings", "making"},
    "sold": FOUNDATION | {"physics", "making", "settings", "design"},
    "steps": {"units", "design", "result", "sold"},
    "on_page": FOUNDATION | {"drawing", "settings", "design", "link", "result", "sheet", "steps"},
    "find": FOUNDATION
    | {"physics", "making", "catalogue", "parts", "burner", "checks", "settings", "rules", "design", "link", "result"},
    "examples": set(),
    "jobs": {"examples", "settings", "design"},
}
TOP = {"cli", "worker", "__init__", "__main__"}
OWNERS = {"pint": {"units"}, "pydyf": {"drawing"}, "segno": {"drawing"}}
STANDARD = sys.stdlib_module_names - {"time", "uuid", "socket", "subprocess", "threading", "os"}


def layer(path):
    parts = path.relative_to(PACKAGE).with_suffix("").parts
    return parts[0]


def imports(path):
    """[(package layer or None, third-party or standard name)] of a module."""
    depth = len(path.relative_to(PACKAGE).parts) - 1
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            for alias in node.names:
                yield None, alias.name.split(".")[0]
        elif isinstance(node, ast.ImportFrom):
            if node.level == 0:
                yield None, node.module.split(".")[0]
            elif node.level <= depth:  # within its own folder
                yield layer(path), ""
            elif node.module:
                yield node.module.split(".")[0], ""
            else:
                for alias in node.names:
                    yield alias.name, ""


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_imports_point_one_way(path):
    mine = layer(path)
    for inside, outside in imports(path):
        if inside is not None and mine not in TOP:
            assert inside == mine or inside in MAY[mine], f"{mine} imports {inside}"
        if outside and outside not in STANDARD:
            assert mine in OWNERS.get(outside, ()), f"{mine} imports {outside}"


@pytest.mark.parametrize(
    "path", [path for path in FILES if layer(path) != "cli"], ids=lambda path: path.relative_to(PACKAGE).as_posix()
)
def test_no_clock_no_dice_no_print(path):
    tree = ast.parse(path.read_text(encoding="utf-8"))
    for node in ast.walk(tree):
        if isinstance(node, ast.Call):
            called = ast.unparse(node.func)
            assert (
                called != "print"
                and not called.endswith((".now", ".today", ".utcnow"))
                and called not in ("time.time", "uuid.uuid4")
            ), called
            assert not called.startswith("random.") or (called == "random.Random" and node.args), called


def test_every_layer_exists():
    known = {layer(path) for path in FILES}
    assert set(MAY) | TOP >= known, known - set(MAY) - TOP


@pytest.mark.parametrize("folder", ["catalogue", "checks", "views"])
def test_no_room_imports_another(folder):
    rooms = {"heat", "face", "feed", "make", "fire"}
    for room in rooms:
        tree = ast.parse((PACKAGE / folder / f"{room}.py").read_text(encoding="utf-8"))
        found = {node.module for node in ast.walk(tree) if isinstance(node, ast.ImportFrom) and node.level == 1}
        assert not found & rooms, (folder, room, found & rooms)
