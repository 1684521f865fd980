"""What is written about the code holds: docstrings of formulas, tables and commands of the README, links and paths."""

import ast
import doctest
import re
import shlex
import sys
from collections import Counter
from pathlib import Path

import pytest

import build
from burnercalc import cli

sys.path.insert(0, str(build.ROOT / "site" / "make"))
import readme

ROOT = Path(__file__).parent.parent
GUIDES = [ROOT / name for name in ("README.md", "DEVELOPERS.md", "CHANGELOG.md", "burnercalc/data/SOURCES.md")]

# --- docstrings of formulas -------------------------------------------------------------------------------------------

# Ends of names and the unit that stands in brackets beside them; K is also the letter of a loss coefficient.
UNITS = {
    "m": "m",
    "m2": "m2",
    "m3": "m3",
    "s": "s",
    "kg": "kg",
    "K": "K",
    "Pa": "Pa",
    "W": "W",
    "J": "J",
    "mol": "mol",
    "Pas": "Pa s",
    "m_s": "m/s",
    "m2_s": "m2/s",
    "m3_s": "m3/s",
    "kg_s": "kg/s",
    "kg_m3": "kg/m3",
    "kg_mol": "kg/mol",
    "J_kg": "J/kg",
    "J_kgK": "J/kg/K",
    "W_K": "W/K",
    "W_m2": "W/m2",
    "W_mK": "W/m/K",
    "1_s": "1/s",
}
HEADING = re.compile(r"([A-Z][a-z]+(?: [a-z]+)?)(?: \([^)]*\))?:(.*)")


def public_functions(folder):
    for path in sorted((ROOT / folder).rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
                yield path, node


def sections(function):
    """{heading: entries} of a docstring; an entry is a line with what is indented below it."""
    found, entries = {}, []
    for line in (ast.get_docstring(function) or "").splitlines():
        heading = HEADING.fullmatch(line)
        if heading:
            entries = found[heading[1]] = [heading[2].strip()] if heading[2].strip() else []
        elif line.strip() and found:
            depth = len(line) - len(line.lstrip())
            if depth > 4 and entries:
                entries[-1] += " " + line.strip()
            else:
                entries.append(line.strip())
    return found


def suffix(name):
    """The unit that a name ends in, or None."""
    parts = name.split("_")
    ends = ("_".join(parts[-count:]) for count in (2, 1) if count < len(parts))
    return next((UNITS[end] for end in ends if end in UNITS), None)


# Formulas are in physics; records and texts that have no unit need no bracket, short helpers no list of arguments.
FORMULAS = [
    pytest.param(function, id=f"{path.stem}.{function.name}")
    for path, function in public_functions("burnercalc/physics")
    if "Arguments" in sections(function)
]
CHECKED = [
    pytest.param(function, id=f"{path.stem}.{function.name}")
    for path, function in public_functions("burnercalc")
    if "Checked by" in sections(function)
]


def test_formulas_are_found():
    assert len(FORMULAS) > 90 and len(CHECKED) > 110


@pytest.mark.parametrize("function", FORMULAS)
def test_docstring_lists_the_arguments_with_their_units(function):
    entries = {}
    for entry in sections(function)["Arguments"]:
        names, words = re.fullmatch(r"(\w+(?:, \w+)*)(?:\s+(.*))?", entry).groups()
        entries.update(dict.fromkeys(names.split(", "), words or ""))
    arguments = function.args
    assert list(entries) == [each.arg for each in (*arguments.posonlyargs, *arguments.args, *arguments.kwonlyargs)]
    for name, words in entries.items():
        unit = suffix(name)
        if unit and not words.startswith("function"):
            brackets = re.findall(r"\[([^\]]+)\]", words)
            assert unit in brackets or (unit == "K" and name.endswith("_K") and "-" in brackets), (name, words)


@pytest.mark.parametrize("function", FORMULAS)
def test_formula_says_what_checks_it(function):
    assert sections(function).get("Checked by")


@pytest.mark.parametrize("function", CHECKED)
def test_what_checks_a_formula_is_there_and_knows_it(function):
    named = re.findall(r"tests/[\w/]+\.\w+", " ".join(sections(function)["Checked by"]))
    assert named
    for name in named:
        assert (ROOT / name).is_file(), name
        if name.endswith(".py"):
            assert function.name in (ROOT / name).read_text(encoding="utf-8"), name
        else:
            assert any(
                Path(name).name in text.read_text(encoding="utf-8") for text in (ROOT / "tests").glob("test_*.py")
            ), name


# --- the guides -------------------------------------------------------------------------------------------------------


def blocks(path, language):
    return re.findall(rf"^```{language}\n(.*?)^```", path.read_text(encoding="utf-8"), re.S | re.M)


SHELL = [line for path in GUIDES for block in blocks(path, "sh") for line in block.splitlines() if line]
BURNERCALC = ".venv/bin/python -m burnercalc "


def test_tables_of_the_readme_are_fresh():
    text = readme.README.read_text(encoding="utf-8")
    assert readme.renewed(text) == text, "run: python3 build.py docs"


def short(monkeypatch):
    """A command is as it is read and what it prints; what it finds is tested elsewhere, so it looks at little here."""
    find, sample, make_good = cli.find, cli.sample, cli.make_good
    monkeypatch.setattr(cli, "find", lambda design, have, weights, budget, told: find(design, have, weights, 100, told))
    monkeypatch.setattr(cli, "sample", lambda design: sample(design, shops=2))
    monkeypatch.setattr(cli, "make_good", lambda design, mine: make_good(design, mine, most=20))


@pytest.mark.parametrize("line", SHELL)
def test_commands_of_the_guides_run(line, tmp_path, monkeypatch, capsys):
    if line.startswith(BURNERCALC):
        monkeypatch.chdir(tmp_path)
        short(monkeypatch)
        shop = re.search(r"```text\n(# my shop.*?)```", (ROOT / "README.md").read_text(encoding="utf-8"), re.DOTALL)
        Path("shop.txt").write_text(shop[1], encoding="utf-8")
        assert cli.main(shlex.split(line.removeprefix(BURNERCALC), comments=True)) == 0
        assert capsys.readouterr().out or {path.name for path in tmp_path.iterdir()} - {"shop.txt"}
    else:
        (command,) = re.findall(r"^python3 build\.py (\w+)", line)
        assert f"python3 build.py {command} " in build.__doc__


@pytest.mark.parametrize("block", blocks(readme.README, "console"))
def test_refusals_of_the_readme_read_as_printed(block, capsys):
    command, _, printed = block.partition("\n")
    assert cli.main(shlex.split(command.removeprefix("$ " + BURNERCALC))) == 2
    assert capsys.readouterr().err == printed


def test_every_build_command_is_explained():
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    for command in re.findall(r"^    python3 build\.py (\w+)", build.__doc__, re.M):
        assert f"build.py {command}" in text, command


@pytest.mark.parametrize("path", GUIDES, ids=lambda path: path.name)
def test_files_that_a_guide_names_exist(path):
    text = path.read_text(encoding="utf-8")
    for target in re.findall(r"\]\(([^)#]+)\)", text):
        assert (path.parent / target).exists(), target
    places = [
        ROOT,
        ROOT / "burnercalc",
        ROOT / "burnercalc/data",
        ROOT / "site/make",
        ROOT / "site/browser",
        ROOT / "tests",
    ]
    for name in re.findall(r"`([\w./-]+\.(?:py|mjs|csv|md|toml|lock|html|css|txt))`", text):
        assert any((place / name).exists() for place in places), name


def test_each_source_stands_once_and_each_table_has_one():
    text = (ROOT / "burnercalc/data/SOURCES.md").read_text(encoding="utf-8")
    keys = Counter(re.findall(r"^- \*\*([^*]+)\*\*", text, re.M))
    assert keys and max(keys.values()) == 1, keys.most_common(3)
    tables = {path.name for path in (ROOT / "burnercalc/data").glob("*.csv")}
    assert tables == set(re.findall(r"`(\w+\.csv)`", text))


# --- all text --------------------------------------------------------------------------------------------------------

TEXT = {
    ".py",
    ".md",
    ".mjs",
    ".js",
    ".css",
    ".html",
    ".toml",
    ".csv",
    ".txt",
    ".lock",
    ".json",
    ".svg",
    ".webmanifest",
    "",
}
# Folders of a machine, hosts that packages come from, and talk about how the project is made instead of what it is.
FOREIGN = re.compile(
    r"/(?:home|root|work|Users)/(?!pyodide)\w|py[p]i\.org|python[h]osted|npm[j]s|conda[-]forge|\bissue #?\d"
    r"|\b(?:sub)?age[n]ts?\b|\bas an A[I]\b",
    re.I,
)


def own_texts():
    for path in sorted(ROOT.rglob("*")):
        inside = path.relative_to(ROOT).parts
        if any(
            part in ("dist", "build", "node_modules", "__pycache__")
            or (part.startswith(".") and part != ".ci")
            or part.endswith(".egg-info")
            for part in inside
        ):
            continue
        if path.is_file() and path.suffix in TEXT:
            yield path


def test_texts_name_no_machine_and_no_registry():
    home = f"{Path.home().as_posix()}/"
    for path in own_texts():
        text = path.read_text(encoding="utf-8")
        found = FOREIGN.search(text)
        assert not found, f"{path.relative_to(ROOT)}: {found[0]}"
        assert home == "/" or home not in text, path.relative_to(ROOT)


def test_the_examples_of_the_readme_run():
    """Every line after >>> in README.md, with what it prints."""
    found = doctest.testfile(str(ROOT / "README.md"), module_relative=False, encoding="utf-8")
    assert found.attempted >= 12 and found.failed == 0
