"""The mutation runner: what it changes, what it leaves alone, and that it tells tested code from untested."""

import ast

import pytest
from mutation import run
from mutation.mutants import mutants

import build

SOURCE = '''"""Words: 1 < 2."""
LIMIT_m: float = 0.5  # 1 + 1


@cache(size=64)
def area_m2(width_m: float, count=3):
    """3 * 4."""
    assert count > 0
    small = width_m / 2 < LIMIT_m and count <= 4 or not count
    return min(width_m, -1) * 1e-9 if small else f"{count + 1}"
'''


def changes(source):
    return {(mutant.line, mutant.old, mutant.new) for mutant in mutants("a.py", source)}


def test_operators_comparisons_and_numbers_are_changed():
    assert changes(SOURCE) == {
        (2, "0.5", "1.0"),
        (2, "0.5", "0.25"),
        (6, "3", "4"),
        (9, "/", "*"),
        (9, "2", "3"),
        (9, "<", ">="),
        (9, "and", "or"),
        (9, "<=", ">"),
        (9, "<=", "<"),
        (9, "4", "5"),
        (9, "or", "and"),
        (9, "not", ""),
        (10, "min", "max"),
        (10, "-", ""),
        (10, "1", "2"),
        (10, "*", "/"),
    }


def test_a_mutant_differs_by_its_change_alone_and_is_still_python():
    for path in ("burnercalc/parts/face.py", "burnercalc/views/plans.py", "burnercalc/drawing/text_pages.py"):
        source = (build.ROOT / path).read_text(encoding="utf-8")
        found = mutants(path, source)
        assert len(found) >= 10
        for mutant in found[::25]:
            changed = mutant.applied(source)
            assert changed[: mutant.start] == source[: mutant.start]
            assert changed[mutant.start + len(mutant.new) :] == source[mutant.end :]
            ast.parse(changed)


def test_a_mutant_knows_its_function_and_what_it_defines():
    (limit, *_), *_, last = (mutants("a.py", SOURCE),) * 2
    assert (limit.where, limit.names) == ("", ("LIMIT_m",))
    assert (last[-1].where, last[-1].names) == ("area_m2", ())


@pytest.fixture
def project(tmp_path):
    """A package with one function that is tested and one that is only called."""
    for path, text in {
        "burnercalc/__init__.py": "",
        "burnercalc/parts/__init__.py": "",
        "burnercalc/parts/ring.py": "FACTOR = 3.0\n\n\ndef tested(a, b):\n    return FACTOR * a - b\n\n\n"
        "def called(a, b):\n    return a + b\n\n\ndef idle(a, b):\n    return a / b\n",
        "tests/test_ring.py": "from burnercalc.parts import ring\n\n\n"
        "def test_ring():\n    assert ring.tested(2, 1) == 5\n    ring.called(1, 1)\n",
        "tests/mutation/__init__.py": "",
        "tests/mutation/reached.py": (build.ROOT / "tests/mutation/reached.py").read_text(),
    }.items():
        (tmp_path / path).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / path).write_text(text)
    return tmp_path


def test_what_is_tested_kills_and_what_is_only_called_lets_live(project, capsys):
    before = {path: path.read_bytes() for path in project.rglob("*.py")}
    assert run.mutate(project, 100, "1", ("parts",)) == (4, 6)  # two of FACTOR, two of tested
    said = capsys.readouterr().out
    assert "ring.py:9  + -> -   in   return a + b   (1 of 1 test files)" in said
    assert "ring.py:13  / -> *   in   return a / b   (1 of 1 test files, none known to reach the function)" in said
    assert {path: path.read_bytes() for path in project.rglob("*.py")} == before


def test_slow_files_come_last_and_only_as_far_as_the_time_goes():
    known = {name: {"seconds": seconds} for name, seconds in (("a", 1), ("b", 2), ("c", 50), ("d", 60), ("e", 90))}
    assert run.within(list("abcde"), known, 120) == ["a", "b", "c", "d"]
    assert run.within(list("edcba"), known, 120) == ["e", "d", "c"]  # never fewer than are started together


def test_the_seed_chooses_the_faults(project):
    def drawn(seed):
        return run.sample(project, ("parts",), 3, seed)

    assert drawn("1") == drawn("1") and any(drawn("1") != drawn(seed) for seed in "2345")
