"""The command line: files appear, wrong input leaves with 2 and names what is wrong."""

import errno
import json
import os
import random
import shlex
import subprocess
import sys
from pathlib import Path

import pytest
from pdf_reader import pages

from burnercalc.cli import main
from burnercalc.design import Design
from burnercalc.link import from_link
from burnercalc.result import solve
from burnercalc.settings import BY_KEY, SETTINGS


def test_build_sheet_and_templates(tmp_path):
    assert main(["sheet", "--pdf", str(tmp_path / "sheet.pdf"), "--paper", "a4"]) == 0
    page = pages((tmp_path / "sheet.pdf").read_bytes())[0]
    assert (page.width, page.height) == pytest.approx((210, 297), abs=0.01)
    assert main(["template", "-o", str(tmp_path / "t.pdf")]) == 0
    assert "Drilling template" in pages((tmp_path / "t.pdf").read_bytes())[0].text
    assert main(["template", "--plan", "all", "-o", str(tmp_path / "all.pdf"), "--set", "baffle_holes=0"]) == 0
    text = " ".join(page.text for page in pages((tmp_path / "all.pdf").read_bytes()))
    assert "End cap" in text and "Inlet hole" in text and "Baffle" not in text


@pytest.mark.parametrize(
    "form, names",
    [
        ("svg", {"face.svg", "section.svg", "window-template.svg", "mould-template.svg"}),
        ("dxf", {"face.dxf", "drilling-template.dxf", "baffle-template.dxf", "pin-guide.dxf", "drilled-base.dxf"}),
        ("csv", {"hole-table.csv", "cut-list.csv"}),
        ("json", {"design.json"}),
    ],
)
def test_export_writes_a_folder(tmp_path, capsys, form, names):
    folder = tmp_path / "new"
    assert main(["export", "--format", form, "-o", str(folder), "--set", "rows=4"]) == 0
    written = {path.name for path in folder.iterdir()}
    assert names <= written and all(name.endswith("." + form) for name in written)
    assert set(capsys.readouterr().out.split()) == {str(folder / name) for name in written}


def test_export_of_a_link_is_its_design(tmp_path):
    assert main(["export", "--format", "json", "-o", str(tmp_path), "--link", "#v=2&rows=4"]) == 0
    assert json.loads((tmp_path / "design.json").read_text())["settings"]["rows"]["value"] == 4


def test_what_one_costs_that_is_sold_comes_without_the_page(tmp_path, capsys):
    """The same rows as text, CSV and JSON, and on the shopping list; the lines add up as the text prints them."""
    texts = {"batch_size": "3", "money_sign": "€"}
    given = ["--set", *(f"{key}={text}" for key, text in texts.items())]
    table = solve(Design.from_texts(texts)).tables["selling_lines"]
    assert main(["table", "--name", "selling_lines", *given]) == 0
    title, heading, *lines = capsys.readouterr().out.splitlines()
    assert title == table.title and heading.split() == ["What", "Each"]
    told = [float(line.rpartition("€")[2]) for line in lines]
    assert told == [round(amount, 2) for _, amount in table.rows]
    assert sum(told[:6]) == pytest.approx(told[6], abs=0.03)
    assert abs(round(100 * (told[6] + told[7] - told[8]))) <= 1  # hundredth: three sums, each rounded by itself
    assert main(["table", "--name", "selling_lines", "--json", *given]) == 0
    assert json.loads(capsys.readouterr().out)["rows"] == [list(row) for row in table.rows]
    assert main(["table", "--name", "quantity_breaks", "--csv", *given]) == 0
    assert [line.split(",")[0] for line in capsys.readouterr().out.splitlines()] == ["burners", "1", "3", "6", "12"]
    assert main(["shopping", "-o", str(tmp_path / "list.pdf"), *given]) == 0
    words = " ".join(page.text for page in pages(tmp_path / "list.pdf"))
    assert f"Price to ask, lines 1 to 7 €{told[8]:.2f}" in " ".join(words.split())


@pytest.mark.parametrize(
    "units, ports",
    [
        ("in", 'port_diameter="5/16 in" ports_per_row=7 block_thickness="3 1/4 in"'),
        ("mm", "--set rows=5 equivalence_ratio=0.94 baffle_holes=60 lit_by=guard"),
    ],
)
def test_another_fuel_tells_what_the_page_sets_with_it(units, ports, capsys):
    """Natural gas alone could not be lit, and nothing said that the page takes larger ports for it; in millimetres
    they are as large from the first."""
    asked = ["sheet", "--set", f"units={units}", "fuel=natural_gas"]
    main(asked)
    told = capsys.readouterr().err.strip()
    assert ports in told
    main([*asked, *shlex.split(told.split("--set ")[1])])
    again = capsys.readouterr()
    assert again.err == "" and not again.out.startswith("STOP")


def test_help_parts_every_setting_from_its_label(capsys):
    """Keys longer than 22 letters ran into it: blower_shutoff_pressureBlower pressure."""
    with pytest.raises(SystemExit):
        main(["sheet", "--help"])
    told = capsys.readouterr().out
    assert all(f"  {s.key} " in told for s in SETTINGS) and "  blower_shutoff_pressure    Blower pressure" in told


def test_calendar_needs_a_date(tmp_path, capsys):
    target = tmp_path / "days.ics"
    assert main(["calendar", "-o", str(target)]) == 2
    assert "start_date" in capsys.readouterr().err and not target.exists()
    assert main(["calendar", "-o", str(target), "--set", "start_date=2026-03-02"]) == 0
    assert target.read_bytes().startswith(b"BEGIN:VCALENDAR")


def test_the_sheet_answers_first_and_keeps_nothing_back_when_asked(capsys):
    """Short: verdict, first answers, what the checks find, what was set. With --all every label and every sentence."""
    assert main(["sheet", "--set", "rows=7", "low_fire=25 %"]) == 0
    short = capsys.readouterr().out
    assert main(["sheet", "--all", "--set", "rows=7", "low_fire=25 %"]) == 0
    every = capsys.readouterr().out
    result = solve(Design.from_texts({"rows": "7", "low_fire": "25 %"}))
    worst = result.ranked()[0]
    on_top = [" ".join(text.split("\n\n")[0].split()) for text in (short, every)]
    assert on_top == [f"{worst.verdict.upper()}: {worst.text}"] * 2  # the whole sentence, no mere label

    def labels(text):
        return {line[2:].split("  ")[0] for line in text.splitlines() if line.startswith("  ")}

    answers = [a for a in result.answers.values() if not result.idle(a)]
    first = {a.label for a in answers if a.near == "first"}
    assert first <= labels(short) and len(labels(short)) < len(first) + 60 < len(labels(every))
    kept = {a.label for a in answers}
    assert kept | {s.label for s in SETTINGS} <= labels(every)
    assert {"Gas of the house at once", "Between two inlets"}.isdisjoint(labels(every))  # it has none
    assert labels(short) >= {"Rows", "Low fire"} and "Saw cut" not in labels(short)
    flat = [" ".join(text.split()) for text in (short, every)]
    for check in result.told:
        found = [" ".join(check.text.split()) in text for text in flat]
        assert found == [check.verdict != "good", True]
    assert max(map(len, every.splitlines())) <= 120 or "#v=" in max(every.splitlines(), key=len)


def test_wrong_input_is_named_all_at_once(capsys):
    assert main(["sheet", "--set", "rows=0", "kerf=2 ft", "refractory=mud"]) == 2
    said = capsys.readouterr().err
    assert "rows" in said and "kerf" in said and "refractory" in said


def test_settings_of_the_json_read_back_as_the_same_design(capsys):
    assert (
        main(
            [
                "sheet",
                "--json",
                "--set",
                "units=mm",
                "body_length=11 1/4 in",
                "chamber_temperature=1200 degC",
                "low_fire=35 %",
            ]
        )
        == 0
    )
    data = json.loads(capsys.readouterr().out)
    texts = {
        key: f"{100 * found['value']!r} %"
        if BY_KEY[key].dimension == "fraction"
        else f"{found['value']!r} {'' if found['unit'] == '1' else found['unit']}"
        if isinstance(found["value"], (int, float))
        else found["value"]
        for key, found in data["settings"].items()
        if isinstance(found["value"], (int, float, str)) and found["unit"] != "1/kg"
    }
    again = Design.from_texts(texts)
    design, _ = from_link(data["link"])
    for setting in SETTINGS:
        value = design.value(setting.key)
        assert again.value(setting.key) == (pytest.approx(value, rel=1e-9) if isinstance(value, float) else value), (
            setting.key
        )


@pytest.mark.parametrize("arguments", [["rows"], ["=5"], ["rows=4", "rows=5"], ["body_length="]])
def test_what_is_no_setting_of_a_value_is_refused(arguments, capsys):
    assert main(["sheet", "--set", *arguments]) == 2
    assert len(capsys.readouterr().err.splitlines()) == 1


def test_a_link_that_is_none_is_refused_by_the_command_line(capsys):
    assert main(["sheet", "--link", "a horse shoe"]) == 2
    assert "a horse shoe" in capsys.readouterr().err


def test_a_folder_that_cannot_be_written_is_named(tmp_path, capsys):
    (tmp_path / "file").write_text("")
    assert main(["template", "-o", str(tmp_path / "file" / "t.pdf")]) == 2
    assert "file" in capsys.readouterr().err


def test_the_sheet_tells_of_what_was_set_for_nothing(capsys):
    """A line's pressure beside cylinders stood there as if it counted."""
    texts = ["--set", "line_pressure=9 inH2O", "--set", "gas_from=cylinder"]
    for fuel, idle in (("propane", True), ("natural_gas", False)):
        assert main(["sheet", "--set", f"fuel={fuel}", *texts]) == 0
        (line,) = [line for line in capsys.readouterr().out.splitlines() if "House line holds" in line]
        assert line.endswith("9 in H₂O  (nothing hangs on it here)" if idle else "9 in H₂O")
    assert main(["sheet", "--all"]) == 0
    (line,) = [line for line in capsys.readouterr().out.splitlines() if "House line holds" in line]
    assert line.endswith("(default, nothing hangs on it here)")


@pytest.mark.parametrize("options", [["--json"], []])
def test_a_terminal_without_our_signs_gets_the_sheet(options):
    """Latin-1 has the degree and the square but no lowered 2; ASCII has none of them."""
    for encoding in ("latin-1", "ascii"):
        done = subprocess.run(
            [sys.executable, "-m", "burnercalc", "sheet", *options],
            capture_output=True,
            env={**os.environ, "PYTHONIOENCODING": encoding},
        )
        assert done.returncode == 0 and not done.stderr
        if options:
            assert json.loads(done.stdout.decode(encoding))["answers"]["port_count"]["value"] == 43


# Writing: whole or not at all, and over nothing

WRITES = [
    (["sheet", "--pdf", "made"], "made"),
    (["template", "-o", "made"], "made"),
    (["calendar", "--set", "start_date=2026-03-02", "-o", "made"], "made"),
    (["export", "--format", "csv"], "cut-list.csv"),
]


@pytest.mark.parametrize("arguments, name", WRITES, ids=lambda value: value[0] if isinstance(value, list) else "")
def test_a_file_that_is_there_is_written_over_by_force_only(arguments, name, tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    Path(name).write_text("mine")
    assert main(arguments) == 2
    assert capsys.readouterr().err == f"file = {name}: is there already; --force writes over it\n"
    assert [path.name for path in tmp_path.iterdir()] == [name] and Path(name).read_text() == "mine"
    assert main([*arguments, "--force"]) == 0
    assert Path(name).read_bytes() != b"mine"


@pytest.mark.parametrize("arguments, name", WRITES, ids=lambda value: value[0] if isinstance(value, list) else "")
def test_a_full_disk_leaves_the_old_file_and_no_half_of_a_new_one(arguments, name, tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    Path(name).write_text("mine")
    whole = Path.write_bytes

    def half(path, data):
        whole(path, data[: len(data) // 2])
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC), str(path))

    monkeypatch.setattr(Path, "write_bytes", half)
    assert main([*arguments, "--force"]) == 2
    said = capsys.readouterr().err
    assert said.endswith(f": {os.strerror(errno.ENOSPC)}\n") and ".burnercalc-" not in said
    assert Path(name).read_text() == "mine" and len(list(tmp_path.iterdir())) == 1


def test_a_file_has_the_rights_that_any_new_file_has(tmp_path):
    assert main(["template", "-o", str(tmp_path / "made.pdf")]) == 0
    (tmp_path / "other").write_text("")
    assert (tmp_path / "made.pdf").stat().st_mode == (tmp_path / "other").stat().st_mode


# Wrong use: 2, one line a fault, and never a traceback


def said_by(arguments, capsys):
    """(exit code, what was said on stderr) of a command."""
    try:
        code = main(arguments)
    except SystemExit as left:
        code = left.code
    return code, capsys.readouterr().err


@pytest.mark.parametrize(
    "arguments, names",
    [
        ([], "command"),
        (["forge"], "forge"),
        (["sheet", "--json", "--pdf", "x.pdf"], "--json"),
        (["sheet", "--paper", "a3"], "a3"),
        (["sheet", "--pdf", ""], "."),
        (["sheet", "--link", "https://example.org/#v=2&rows=0"], "rows"),
        (["sheet", "--link", "#v=9"], "v = 9"),
        (["sheet", "--link", "#%ff=%ff"], "is not a setting"),
        (["sheet", "--link", "x" * 400_000], "at most"),
        (["sheet", "--link", "javascript:alert(1)"], "must end in # and the settings of a design"),
        (["sheet", "--site", "https://example.org/#there"], "--site"),
        (["sheet", "--site", "x" * 5000, "--pdf", "x.pdf"], "--site"),
        (["template", "-o", "here/there.pdf"], "here/there.pdf"),
        (["template", "-o", "folder"], "folder"),
        (["template", "-o", "file/there.pdf"], "file/there.pdf"),
        (["template", "-o", "x" * 300], "x" * 300),
        (["find", "--budget", "9" * 5000], "must be a whole number from 100 to 100000"),
        (["find", "--budget", "١٠٠"], "must be a whole number from 100 to 100000"),
        (["sheet", "--set", "start_date=9999-12-30"], "from 1970 to 2999; nearest that works: 2999-12-31"),
        (["export", "--format", "svg", "-o", "file"], "file"),
        (["export", "--format", "step"], "step"),
        (["calendar", "-o", "x.ics", "--set", "start_date=0000-00-00"], "start_date"),
    ],
    ids=str,
)
def test_wrong_use_is_named_in_one_line(arguments, names, tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "folder").mkdir()
    (tmp_path / "file").write_text("")
    code, said = said_by(arguments, capsys)
    assert code == 2 and names in said and said.count("\n") == 1
    assert sorted(path.name for path in tmp_path.iterdir()) == ["file", "folder"]


def test_any_words_leave_with_0_or_2_and_no_traceback(tmp_path, monkeypatch, capsys):
    """The words of the commands, of links and of files, thrown together; the same each time."""
    monkeypatch.chdir(tmp_path)
    words = ["", " ", "#", "#v=2&rows=4", "http://[::1", "%%%", "\udcff", "\n", "rows", "=", "rows=", "=4", "rows=4"]
    words += ["rows=\udcff", "\udc80=1", "units=mm", "-1", "--", "-", "x" * 3000, ".", "..", "/", "sheet", "template"]
    words += ["--json", "--pdf", "--paper", "a4", "--force", "--set", "--link", "--site", "-o", "--format", "csv"]
    dice = random.Random(1)
    for _ in range(150):
        command = dice.choice(["sheet", "export", "calendar"])
        arguments = [command, *dice.choices(words, k=dice.randint(0, 6))]
        code, said = said_by(arguments, capsys)
        assert code in (0, 2) and (code == 0) == (said == ""), arguments


def burnercalc(arguments, **options):
    return subprocess.run(
        [sys.executable, "-m", "burnercalc", *arguments],
        stderr=subprocess.PIPE,
        cwd=Path(__file__).parents[1],
        **options,
    )


@pytest.mark.skipif(os.name == "nt", reason="bytes as arguments are POSIX")
def test_arguments_that_are_no_text_are_named():
    for arguments in ([b"sheet", b"--set", b"rows=\xff"], [b"sheet", b"--link", b"#v=2&\xfe=\xff"], [b"\xff"]):
        done = burnercalc(arguments, stdout=subprocess.DEVNULL)
        assert done.returncode == 2 and done.stderr.count(b"\n") == 1, done.stderr


@pytest.mark.skipif(os.name == "nt", reason="pipes are closed otherwise there")
@pytest.mark.parametrize("options", [[], ["--json"]])
def test_a_reader_that_has_had_enough_is_no_fault(options):
    reader, writer = os.pipe()
    os.close(reader)
    try:
        done = burnercalc(["sheet", *options], stdout=writer)
    finally:
        os.close(writer)
    assert (done.returncode, done.stderr) == (0, b"")


@pytest.mark.skipif(not os.path.exists("/dev/full"), reason="needs a device that is always full")
def test_output_that_cannot_be_written_is_named_once():
    for arguments in (["sheet"], ["sheet", "--pdf", "/dev/full"]):
        with open("/dev/full", "wb") as full:
            done = burnercalc(arguments, stdout=full)
        assert done.returncode == 2 and done.stderr.count(b"\n") == 1, done.stderr


def test_find_names_all_that_is_wrong_with_settings_list_and_weights(tmp_path, capsys):
    have = tmp_path / "have.txt"
    have.write_text("tube: nonsense")
    assert main(["find", "--set", "rows=x", "--have", str(have), "--weight", "cost=1", "cost=2", "nono"]) == 2
    said = capsys.readouterr().err
    assert [line.partition(" ")[0] for line in said.splitlines()] == ["rows", "tube", "cost", "--weight"]


def test_a_list_without_an_end_is_refused(capsys):
    assert main(["find", "--have", "/dev/zero"]) == 2
    assert "at most 20000 characters" in capsys.readouterr().err


def test_a_bad_design_in_millimetres_keeps_its_list_in_millimetres(tmp_path, capsys):
    have = tmp_path / "have.txt"
    have.write_text("tube: 100 x 50 x 3, 2000 mm\npins: 8\nbuy: all")
    assert main(["find", "--set", "units=mm", "rows=x", "--have", str(have)]) == 2
    assert [line.partition(" ")[0] for line in capsys.readouterr().err.splitlines()] == ["rows"]


@pytest.mark.parametrize("command", [["good", "--mine", "rowz"], ["good", "--link", "#v=2&mine=rowz"]])
def test_mine_that_is_no_setting_is_refused_alike(command, capsys):
    assert main(command) == 2
    assert capsys.readouterr().err == "mine = rowz: is not a setting; nearest that works: rows\n"


@pytest.mark.parametrize("path", ["-", "have.txt"])
def test_a_list_that_is_no_text_is_refused_alike(path, tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    Path("have.txt").write_bytes(b"x 3\n\xff")
    with open("have.txt", encoding="utf-8") as given:
        monkeypatch.setattr("sys.stdin", given)
        assert main(["find", "--have", path]) == 2
    assert capsys.readouterr().err == f"have = {path}: must be a text file (UTF-8)\n"


HAVE = "tube: 4 x 4 x 3/16 in, 8 ft\npins: 1/4 in\nbuy: all\n"


@pytest.mark.parametrize(
    "more, said",
    [
        ("mine: rows=5\n", "rows = 4 and 5: is mine twice"),
        ("mine: ports_per_row; ports_per_row=5\n", "ports_per_row = as it is and 5: is mine twice"),
        ("pins: 6,36\n", "pins = 6,36: has a comma within a number"),
        ("pins: 7,50 mm\n", "nearest that works: 7.50 mm"),
    ],
)
def test_what_a_list_says_twice_or_with_a_comma_is_refused(more, said, tmp_path, capsys):
    (tmp_path / "have.txt").write_text(HAVE + more)
    assert main(["find", "--have", str(tmp_path / "have.txt"), "--set", "rows=4"]) == 2
    assert said in capsys.readouterr().err


def test_a_decimal_comma_is_read_where_it_can_mean_nothing_else(capsys):
    assert main(["sheet", "--set", "body_length=8,5 in", "low_fire=40,5 %"]) == 0
    assert "#v=2&body_length=8.5in&low_fire=40.5%25" in capsys.readouterr().out
    for text in ("firing_rate=1,200 kBtu/h", "body_length=1,2,3 in"):
        assert main(["sheet", "--set", text]) == 2
        assert "must have no sign between its thousands and no comma" in capsys.readouterr().err


@pytest.mark.parametrize("text", ["2026-W10", "2026W101", "20260302"])
def test_a_date_is_written_in_one_way(text, capsys):
    assert main(["sheet", "--set", f"start_date={text}"]) == 2
    assert "must be a date written year-month-day; nearest that works: 2026-03-02" in capsys.readouterr().err
