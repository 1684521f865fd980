"""Every file, read back by an independent reader, against the answers: within 0.02 mm."""

import csv
import datetime
import io
import json
from math import dist, hypot
from xml.etree import ElementTree

import ezdxf
import icalendar
import pytest
from hypothesis import given, settings
from making_designs import small
from pdf_reader import pages

from burnercalc.design import Design
from burnercalc.drawing.paper import PAPERS
from burnercalc.errors import InputError
from burnercalc.examples import EXAMPLES
from burnercalc.files import CUTS, FILES, PLANS, VIEWS
from burnercalc.link import from_link, to_link
from burnercalc.result import solve
from burnercalc.settings import BY_KEY

NEAR_MM = 0.02
SVG = "{http://www.w3.org/2000/svg}"


def made(key, result, link="https://example.org/#v=1"):
    return FILES[key][2](result, link)


def svg_circles(data, layer):
    tree = ElementTree.fromstring(data)
    return [
        (float(c.get("cx")), -float(c.get("cy")), 2 * float(c.get("r")))
        for group in tree.iter(SVG + "g")
        if group.get("class") == layer
        for c in group.iter(SVG + "circle")
    ]


def dxf_of(data):
    return ezdxf.read(io.StringIO(data.decode("ascii")))


def same_circles(found, wanted, near=NEAR_MM):
    assert len(found) == len(wanted)
    left = sorted(wanted)
    for circle in sorted(found):
        nearest = min(left, key=lambda w: dist(w, circle))
        assert dist(nearest, circle) <= near, (circle, nearest)
        left.remove(nearest)


def wanted_ports(result):
    """Of the template, which is seen from above: left and right change places against the face."""
    return [(-x * 1000, y * 1000, result.design.port_diameter * 1000) for x, y in result.part("face").ports]


@settings(max_examples=40, deadline=None)
@given(small)
def test_files_of_any_design_hold_its_answers(design):
    result = solve(design)
    dxf_and_svg_hold_answers(result)
    printed_ports_stand_where_answers_say(result)


def dxf_and_svg_hold_answers(result):
    same_circles(svg_circles(made("template-svg", result), "port"), wanted_ports(result))
    document = dxf_of(made("template-dxf", result))
    assert document.dxfversion == "AC1009" and not document.audit().errors
    same_circles(
        [
            (c.dxf.center.x, c.dxf.center.y, 2 * c.dxf.radius)
            for c in document.modelspace().query("CIRCLE[layer=='PORT']")
        ],
        wanted_ports(result),
    )
    window = dxf_of(made("window-dxf", result)).modelspace()
    if result.part("face").round:
        (circle,) = window.query("CIRCLE[layer=='WINDOW']")
        assert 2 * circle.dxf.radius == pytest.approx(result["window_width"] * 1000, abs=NEAR_MM)
    else:
        (outline,) = window.query("POLYLINE[layer=='WINDOW']")
        reach = [max(abs(v.dxf.location[axis]) for v in outline.vertices) for axis in (0, 1)]
        assert reach == pytest.approx([result["window_length"] * 500, result["window_width"] * 500], abs=NEAR_MM)
        assert len(window.query("CIRCLE[layer=='PORT']")) == 4
    (inlet,) = svg_circles(made("inlet-svg", result), "window")
    assert inlet[2] == pytest.approx(result["inlet_hole"] * 1000, abs=NEAR_MM)


def printed_ports_stand_where_answers_say(result):
    """Each sheet's ports lie on the drawn ones, shifted as one; the sheets show every port; the bar is 100 mm."""
    read = [page for page in pages(made("template-letter", result)) if "true size" in page.text]
    size, ports, seen = result.design.port_diameter * 1000, [(x, y) for x, y, _ in wanted_ports(result)], 0
    for page in read:
        found = [(x, y) for x, y, across in page.circles if abs(across - size) <= NEAR_MM]
        seen += len(found)
        assert page.level_line(100.0)
        assert not found or any(
            all(min(abs(x - dx - u) + abs(y - dy - v) for u, v in ports) <= NEAR_MM for x, y in found)
            for dx, dy in ((found[0][0] - u, found[0][1] - v) for u, v in ports)
        )
    assert seen == len(ports) if len(read) == 1 else seen >= len(ports)


@pytest.fixture(scope="module")
def result():
    return solve(Design.from_texts({"start_date": "2026-03-02"}))


@pytest.mark.parametrize("key", FILES)
def test_every_file_is_made_and_made_alike_twice(key, result):
    name, media_type, _ = FILES[key]
    data = made(key, result)
    assert data and data == made(key, result) and "/" in media_type
    assert name.rsplit(".", 1)[1] in ("pdf", "svg", "dxf", "csv", "json", "ics")


def test_names_are_plain_and_unlike_each_other():
    names = [name for name, _, _ in FILES.values()]
    assert len(set(names)) == len(names) and all(name.replace("-", "").replace(".", "").isalnum() for name in names)


@pytest.mark.parametrize("paper", PAPERS)
def test_one_file_holds_every_plan(result, paper):
    text = "\n".join(page.text for page in pages(made(f"templates-{paper}", result)))
    for plan in PLANS:
        assert (result.drawings[plan].title in text) == (plan != "mould")  # its pins and lines are on the template
    assert (
        text.count("this way up") == len(pages(made(f"templates-{paper}", result)))
        and "https://example.org/#v=1" in text
    )


def test_the_slide_is_a_template_where_there_is_one(result):
    """True to size: plate 1.610 in bore and 6 mm at each side. Never lit and open at both fires it has no mark."""
    (page,) = pages(made("slide-letter", result))
    assert "true size" in page.text and "hole for LIGHT: drill 15/32 in" in " ".join(page.text.split())
    width = 1.610 * 25.4 + 12
    level = [abs(x2 - x1) for x1, y1, x2, y2 in page.lines if abs(y1 - y2) < NEAR_MM]
    assert any(abs(length - width) < NEAR_MM for length in level)
    unlit = {"port_diameter": "3/16 in", "rows": "3", "ports_per_row": "6", "blower_shutoff_pressure": "0.2 inH2O"}
    without = pages(made("templates-a4", solve(Design.from_texts(unlit))))
    assert not any("Slide of the damper" in page.text for page in without)


@pytest.mark.parametrize("name", [*VIEWS, *PLANS, *CUTS])
def test_every_drawing_opens_in_cad(result, name):
    document = dxf_of(made(f"{name}-dxf", result))
    audit = document.audit()
    assert not audit.errors and len(document.modelspace()) == len(result.drawings[name].shapes)


def test_printer_correction_stretches_the_sheet_back():
    small = {"body_length": "6 in", "ports_per_row": "6"}  # on one upright sheet: what is corrected never lies
    plain = solve(Design.from_texts(small))
    corrected = solve(Design.from_texts({**small, "print_scale_x": "98 mm"}))
    ports = [[c for c in pages(made("template-a4", r))[0].ovals if abs(c[3] - 6.35) < 0.01] for r in (plain, corrected)]
    assert len(ports[0]) == len(ports[1]) == plain["port_count"]
    spans = [max(c[0] for c in one) - min(c[0] for c in one) for one in ports]
    assert spans[1] == pytest.approx(spans[0] / 0.98, abs=NEAR_MM)


@pytest.mark.parametrize("bar", [BY_KEY["print_scale_x"].low, BY_KEY["print_scale_x"].high])
def test_every_printer_correction_that_is_allowed_prints(bar):
    result = solve(Design.from_texts({"print_scale_x": bar, "print_scale_y": bar}))
    assert pages(made("template-letter", result))


def test_a_stop_design_says_so_across_every_sheet():
    stop = pages(made("templates-letter", solve(Design.from_texts({"inlet": "4"}))))
    assert stop and all("DO NOT BUILD" in page.text for page in stop)
    assert not any(
        "DO NOT BUILD" in page.text for page in pages(made("templates-letter", solve(Design.from_texts({}))))
    )


def test_the_template_has_the_holes_from_the_base_s_own_corner():
    text = " ".join(
        " ".join(page.text for page in pages(made("template-letter", solve(Design.from_texts({}))))).split()
    )
    assert "Mould base, 12 9/16 in by 7 9/16 in: holes from its lower left corner" in text
    assert "1 9 25/32 2 25/32" in text and "43 2 25/32 4 25/32" in text


@pytest.mark.parametrize("system, words", [("in", "Sizes in inches"), ("mm", "Sizes in millimetres")])
def test_every_drawn_sheet_says_its_unit(system, words):
    read = pages(made("templates-letter", solve(Design.from_texts({"units": system}))))
    assert all((words in page.text) == ("true size" in page.text) for page in read)


def test_the_hole_table_stands_under_a_template_that_leaves_room():
    small = {"body_length": "6 in", "body_width": "3 in", "ports_per_row": "6", "rows": "3", "setback": "1/2 in"}
    (page,) = pages(made("template-letter", solve(Design.from_texts(small))))
    assert "true size" in page.text and "holes from its lower left corner" in page.text
    assert len(pages(made("template-letter", solve(Design.from_texts({}))))) == 2
    # Six holes to a line of it fit where four do not; of 179 five to a line fit a sheet, four left two lines over.
    knife = next(one for one in EXAMPLES if one.key == "knife").inches
    (page,) = pages(made("template-letter", solve(Design.from_texts(knife))))
    assert "holes from its lower left corner" in page.text
    many = {"body_width": "5 in", "rows": "7", "ports_per_row": "26", "port_diameter": "5/32 in"}
    *_, last = pages(made("template-a4", solve(Design.from_texts(many))))
    assert "holes from its lower left corner" in last.text and "179" in last.text.split()
    # Of a longer one it stands on the last sheet, beside the seam; it had a third to itself.
    first, last = pages(made("template-a4", solve(Design.from_texts({"units": "mm", "body_length": "300 mm"}))))
    assert "holes from its lower left corner" in last.text and "holes from" not in first.text
    seam = [x for x, y, to_x, to_y in last.lines if x == to_x and to_y - y > 150]
    table = [line for line in last.lines if line[1] == line[3] and 60 < line[1] < 115 and line[2] - line[0] > 5]
    assert seam and table and min(line[0] for line in table) > min(seam)


def dxf_circles(space, layer):
    return [(c.dxf.center.x, c.dxf.center.y, 2 * c.dxf.radius) for c in space.query(f"CIRCLE[layer=='{layer}']")]


def base_holes(result, size_m):
    return [(x * 1000, y * 1000, size_m * 1000) for _, x, y, *_ in result.tables["base_drilling"].rows]


@settings(max_examples=20, deadline=None)
@given(small)
def test_base_and_guide_for_a_router_hold_the_base_s_own_table(design):
    """Pins' holes are pockets where the table says, from the same corner; right through go only knock-out holes and
    outlines. The guide's holes lie so to each other, 0.3 mm wider."""
    result = solve(design)
    base, guide = (dxf_of(made(f"{name}-dxf", result)).modelspace() for name in CUTS[::-1])
    through = result.part("pins").knock_out_m
    assert 0 < through <= design.port_diameter / 2 + 1e-9
    wood = result.part("mould").wood
    same_circles(dxf_circles(base, "POCKET"), base_holes(result, design.port_diameter))
    same_circles(dxf_circles(base, "CUT"), base_holes(result, through))
    (outline,) = base.query("POLYLINE[layer=='CUT']")
    corners = [tuple(v.dxf.location)[:2] for v in outline.vertices]
    assert min(corners) == pytest.approx((0, 0)) and max(corners) == pytest.approx(
        (wood.base_length_m * 1000, wood.base_width_m * 1000)
    )
    for name, layer, size in (
        ("drilled_base", "pocket", design.port_diameter),
        ("pin_guide", "cut", design.port_diameter + 0.3e-3),
    ):
        found = svg_circles(made(f"{name}-svg", result), layer)
        shift = [
            0.5 * (wood.base_length_m - wood.inside_length_m + 1e-3),
            0.5 * (wood.base_width_m - wood.inside_width_m + 1e-3),
        ]
        shift = [1000 * s for s in shift] if name == "pin_guide" else [0, 0]
        holes = [(x - shift[0], y - shift[1], d) for x, y, d in base_holes(result, size)]
        if name == "pin_guide" and result.part("body").round:  # its outline is a circle too
            holes.append(((wood.inside_length_m - 1e-3) * 500,) * 2 + ((wood.inside_length_m - 1e-3) * 1000,))
        same_circles(found, holes)
    assert len(dxf_circles(guide, "CUT")) == result["port_count"] + result.part("body").round
    assert {e.dxf.layer for e in guide} == {"CUT", "ENGRAVE", "TEXT"}
    assert {e.dxf.layer for e in base} == {"CUT", "POCKET", "ENGRAVE", "TEXT"}


@pytest.mark.parametrize("name", [*VIEWS, *PLANS, *CUTS])
def test_a_stop_stands_over_every_drawing_for_a_machine(name, result):
    stop = solve(Design.from_texts({"inlet": "4"}))
    for end in ("svg", "dxf"):
        assert b"DO NOT BUILD" in made(f"{name}-{end}", stop)
        assert b"DO NOT BUILD" not in made(f"{name}-{end}", result)


@pytest.mark.parametrize("name", CUTS)
def test_a_cutting_file_says_its_unit(name, result):
    """A machine that takes units for inches would cut it 25 times too large."""
    texts = [text.dxf.text for text in dxf_of(made(f"{name}-dxf", result)).modelspace().query("TEXT")]
    assert "One unit of this file is one millimetre." in texts


def test_hole_table_in_both_units(result):
    rows = list(csv.DictReader(io.StringIO(made("holes-csv", result).decode())))
    assert len(rows) == result["port_count"] and list(rows[0]) == [
        "number",
        "x_mm",
        "x_in",
        "y_mm",
        "y_in",
        "diameter_mm",
        "diameter_in",
    ]
    d = result.design
    for row, (x, y) in zip(rows, result.part("face").ports):
        assert (
            hypot(
                float(row["x_mm"]) - (x + d.body_length / 2) * 1000, float(row["y_mm"]) - (y + d.body_width / 2) * 1000
            )
            < NEAR_MM
        )
        assert float(row["x_in"]) * 25.4 == pytest.approx(float(row["x_mm"]), abs=1e-3)


def test_cut_list_weighs_what_the_answers_say(result):
    rows = list(csv.DictReader(io.StringIO(made("cut-list-csv", result).decode())))
    steel = sum(
        float(row["mass_kg"])
        for row in rows
        if row["piece"] not in ("baffle", "bracket angle") and not row["piece"].startswith("inlet")
    )
    assert steel == pytest.approx(result["body_mass"], rel=1e-4)


def test_design_file_opens_the_design(result):
    link = to_link(result.design, "https://example.org/")
    data = json.loads(made("design-json", result, link))
    assert data["link"] == link and from_link(data["link"])[0] == result.design
    assert data["answers"]["port_count"]["value"] == result["port_count"]


def test_design_file_holds_days_off_and_whatever_else_may_be_set():
    d = Design.from_texts(
        {
            "start_date": "2026-09-21",
            "days_off": "2026-09-22, 2026-12-24 to 2026-12-26",
            "fuel_blend": "C3H8 0.95, C4H10 0.05",
            "blower_curve": "0 cfm 8 inH2O, 100 cfm 5 inH2O, 150 cfm 0 inH2O",
            "jet_drill": "#54",
            "money_sign": "kr",
        }
    )
    settings = json.loads(made("design-json", solve(d)))["settings"]
    assert settings["days_off"]["value"] == [["2026-09-22", "2026-09-22"], ["2026-12-24", "2026-12-26"]]
    assert settings["start_date"]["value"] == "2026-09-21" and all(settings[key]["value"] for key in d.texts)


def test_calendar_holds_the_steps(result):
    events = icalendar.Calendar.from_ical(made("calendar-ics", result)).walk("VEVENT")
    steps, titles = result.part("schedule").steps, [row[1] for row in result.tables["days"].rows[:-2]]
    heats = [f"First fire ({number})" for number in (1, 2, 3)]  # each on a day of its own, nobody is called at night
    assert [str(event["SUMMARY"]) for event in events] == [*titles, *heats, "Test fire"]
    *before, fire, test = steps
    spells = [(step.start, step.end) for step in before] + [*fire.spells, (test.start, test.end)]
    assert [(event["DTSTART"].dt, event["DTEND"].dt) for event in events] == spells
    assert all(end - start <= datetime.timedelta(hours=12) for start, end in fire.spells)
    assert len({str(event["UID"]) for event in events}) == len(events)
    assert "silica" in str(events[2]["DESCRIPTION"])


def test_calendar_of_a_batch_says_which_burner():
    two = solve(Design.from_texts({"batch_size": "2", "start_date": "2026-03-02"}))
    events = icalendar.Calendar.from_ical(made("calendar-ics", two)).walk("VEVENT")
    jobs = two.part("batch").plan.jobs
    assert len(events) == len(jobs) == len({str(event["UID"]) for event in events})
    titles = [str(event["SUMMARY"]) for event in events]
    assert titles.count("Mix and cast: 1") == titles.count("Mix and cast: 2") == 1
    assert titles.count("First fire: 2") == 3 and "Make the mould and set the pins: mould 1" in titles
    cast = events[titles.index("Mix and cast: 2")]  # the mould is free on the 4th at 15:30, too late to free the pins
    assert "silica" in str(cast["DESCRIPTION"]) and f"{cast['DTSTART'].dt:%Y-%m-%d %H:%M}" == "2026-03-05 09:00"


def test_nothing_in_the_calendar_begins_on_a_day_off():
    """First day a Monday; Thursday and the week after are off, waits begun before them run through."""
    off = "2026-03-05, 2026-03-09 to 2026-03-15"
    days = icalendar.Calendar.from_ical(
        made("calendar-ics", solve(Design.from_texts({"start_date": "2026-03-02", "days_off": off})))
    )
    began = {(str(event["SUMMARY"]), event["DTSTART"].dt.day) for event in days.walk("VEVENT")}
    assert not {day for title, day in began if "dry" not in title.lower()} & {5, *range(9, 16)}, began
    assert max(day for _, day in began) >= 16


@pytest.mark.parametrize("batch", ["1", "2"])
def test_a_stop_is_said_on_every_sheet_and_plan_that_leaves(batch):
    """A blower too weak by far: across each sheet, at each page's foot, over each drawing, at each day's head."""
    texts = {"blower_shutoff_pressure": "0.2 inH2O", "start_date": "2026-03-02", "batch_size": batch}
    stopped = solve(Design.from_texts(texts))
    assert stopped.worst == "stop"
    for key, (name, _, make) in FILES.items():
        data = make(stopped, to_link(stopped.design))
        said = "DO NOT LIGHT" if key.startswith("lighting-card") else "DO NOT BUILD"
        if name.endswith(".pdf"):
            assert all(page.aslant == [said] for page in pages(data)), key
        elif name.endswith(".ics"):
            days = icalendar.Calendar.from_ical(data).walk("VEVENT")
            assert days and all(str(day["SUMMARY"]).startswith(said) for day in days)
        elif not name.endswith(".csv"):  # tables for other programs have no line to say it on
            assert said.encode() in data or b'"verdict": "stop"' in data, key


def test_calendar_needs_a_date():
    with pytest.raises(InputError) as caught:
        made("calendar-ics", solve(Design.from_texts({})))
    assert caught.value.field == "start_date" and caught.value.nearest
