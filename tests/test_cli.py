"""The command line: files appear, wrong input leaves with 2 and names what is wrong."""

import json
import os
import subprocess
import sys

import pytest
from pdf_reader import pages

from burnercalc.cli import main
from burnercalc.design import Design
from burnercalc.link import from_link
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
        ("dxf", {"face.dxf", "drilling-template.dxf", "baffle-template.dxf"}),
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
    assert main(["export", "--format", "json", "-o", str(tmp_path), "--link", "#v=1&rows=4"]) == 0
    assert json.loads((tmp_path / "design.json").read_text())["settings"]["rows"]["value"] == 4


def test_calendar_needs_a_date(tmp_path, capsys):
    target = tmp_path / "days.ics"
    assert main(["calendar", "-o", str(target)]) == 2
    assert "start_date" in capsys.readouterr().err and not target.exists()
    assert main(["calendar", "-o", str(target), "--set", "start_date=2026-03-02"]) == 0
    assert target.read_bytes().startswith(b"BEGIN:VCALENDAR")


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
