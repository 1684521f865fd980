"""What the page's fields ask of Python: the lining as rows."""

import json
import re

import pytest

from burnercalc import units
from burnercalc.design import Design, parse_setting
from burnercalc.link import from_link
from burnercalc.physics.linings import material_keys, material_name
from burnercalc.result import solve
from burnercalc.settings import SETTINGS
from burnercalc.tables import read_table
from burnercalc.worker import handle


def ask(kind, settings=(), **request):
    return json.loads(handle(json.dumps({"kind": kind, "settings": dict(settings), **request})))


LINING = {"lining": "dense_castable 25.4mm, ifb_26 2 1/2 in, blanket_8lb 1 in"}


def layers(rows, settings=()):
    return ask("layers", settings, key="lining", rows=rows)


def test_rows_say_what_the_text_says():
    field = ask("solve", LINING)["fields"]["lining"]
    assert field["layers"] == [["dense_castable", "1"], ["ifb_26", "2 1/2"], ["blanket_8lb", "1"]]
    assert field["layer_unit"] == "in"
    metric = ask("solve", {**LINING, "units": "mm"})["fields"]["lining"]
    assert metric["layers"][1] == ["ifb_26", "63.5"] and metric["layer_unit"] == "mm"


def test_a_thickness_that_nobody_touched_stays_as_it_was_typed():
    rows = [["ifb_26", "2 1/2", 1], ["ifb_23", "1", 0], ["blanket_8lb", "2", 2]]
    assert layers(rows, LINING)["text"] == "ifb_26 2 1/2 in, ifb_23 25.4mm, blanket_8lb 2 in"
    exact = {"lining": "ifb_26 64.1234567 mm", "units": "in"}
    (shown,) = ask("solve", exact)["fields"]["lining"]["layers"]
    assert layers([[*shown, 0]], exact)["text"] == exact["lining"]


@pytest.mark.parametrize(("units", "added"), [("in", "blanket_8lb 1 in"), ("mm", "blanket_8lb 25 mm")])
def test_an_added_layer_is_blanket_in_the_readers_units(units, added):
    reply = layers([["ifb_26", "2 1/2" if units == "in" else "63.5", 0], ["", "", None]], {"units": units, **LINING})
    assert reply["text"].split(", ")[1] == added
    assert ask("solve", {"units": units, "lining": reply["text"]})["ok"]


@pytest.mark.parametrize("typed", ["", "thick", "-1", "2 lb"])
def test_a_thickness_that_is_none_is_refused_with_one_that_works(typed):
    reply = layers([["ifb_26", typed, 0]])
    (error,) = reply["errors"]
    assert error["setting"] == "lining"
    assert ask("solve", {"lining": error["nearest"]})["ok"]


def test_every_material_has_a_name_short_enough_for_a_phones_list_and_metric_ones_hold_no_pounds():
    for key in material_keys():
        for system in ("in", "mm"):
            assert 4 < len(material_name(key, system)) <= 20
            assert system == "in" or "lb" not in material_name(key, system) + material_name(key, system, full=True)


@pytest.mark.parametrize("units", ["in", "mm"])
@pytest.mark.parametrize("kind", read_table("blower_kinds"), ids=lambda kind: kind["key"])
def test_each_kind_of_blower_is_one_that_can_be_set(kind, units):
    reply = ask("blower", {"units": units}, of=kind["key"])
    design = Design.from_texts(reply["texts"])
    assert design.blower_shutoff_pressure == pytest.approx(kind["shut_inH2O"] * 249.08891, rel=0.08)  # round in each
    assert design.blower_free_flow == pytest.approx(kind["free_cfm"] * 0.3048**3 / 60, rel=0.08)  # round in each
    assert "look at your plate" in reply["words"]


def test_the_paddle_wheel_gives_what_its_tip_speed_allows():
    """A paddle wheel 7 in across at 3,450 rpm gives rho u2 at most (Euler), and about half."""
    tip_m_s = 3.14159 * 7 * 0.0254 * 3450 / 60
    (wheel,) = (kind for kind in read_table("blower_kinds") if kind["key"] == "paddle_wheel")
    assert 0.5 < wheel["shut_inH2O"] * 249.09 / (1.2 * tip_m_s**2) < 1


def test_a_flow_from_the_plate_stays_and_a_curve_gives_way():
    reply = ask(
        "blower", {"blower_free_flow": "110 cfm", "blower_curve": "0 cfm 8 inH2O, 100 cfm 5 inH2O"}, of="duct_fan"
    )
    assert reply["texts"]["blower_free_flow"] == "110 cfm" and reply["texts"]["blower_curve"] == ""
    assert "your 110 cfm free stays" in reply["words"]
    again = ask("blower", ask("blower", {}, of="duct_fan")["texts"], of="paddle_wheel")  # that one was lent, not read
    assert again["texts"]["blower_free_flow"] == "130 cfm"


@pytest.mark.parametrize(
    ("settings", "hidden"),
    [
        ({}, {"tank_diameter"}),
        ({"cylinder": "tank"}, set()),
        ({"cylinder": "tank", "fuel": "natural_gas"}, {"cylinder", "cylinder_fill", "tank_diameter"}),
        ({"fuel": "natural_gas", "fuel_blend": "C3H8 1"}, {"tank_diameter"}),
    ],
)
def test_cylinders_are_asked_for_only_where_the_gas_comes_in_them(settings, hidden):
    fields = ask("solve", settings)["fields"]
    asked = {"cylinder", "cylinder_fill", "tank_diameter"}
    assert {key for key in asked if fields[key].get("idle")} == hidden


STEPS = [  # from, steps, to: as the trade has the sizes, in the reader's units
    ("in", "wall", "3/16 in", 1, "1/4 in"),
    ("in", "wall", "1/8 in", -1, "1/16 in"),
    ("mm", "wall", "5 mm", 1, "6 mm"),
    ("mm", "wall", "6 mm", 1, "8 mm"),
    ("in", "cap_thickness", "wall", 1, "1/4 in"),
    ("in", "cap_thickness", "wall", -1, "1/8 in"),
    ("in", "body_width", "4 in", 1, "5 in"),
    ("mm", "body_width", "100 mm", 1, "120 mm"),
    ("in", "port_diameter", "1/4 in", 1, "5/16 in"),
    ("mm", "port_diameter", "6.35 mm", 1, "8 mm"),
    ("mm", "port_diameter", "10 mm", 1, "12 mm"),
    ("in", "corner_drill", "3/8 in", 1, "25/64 in"),
    ("mm", "corner_drill", "9.5 mm", 1, "9.6 mm"),
    ("mm", "corner_drill", "13 mm", 1, "13.5 mm"),
    ("in", "jet_drill", "#54", 1, "#53"),
    ("in", "jet_drill", "#53", 1, "1/16 in"),
    ("in", "jet_drill", "#1", 1, "A"),
    ("mm", "jet_drill", "1.5 mm", 1, "1.55 mm"),
    ("mm", "jet_drill", "4 mm", -1, "3.9 mm"),
]


@pytest.mark.parametrize(("units", "key", "at", "by", "to"), STEPS)
def test_a_step_goes_to_what_is_sold(units, key, at, by, to):
    settings = {"units": units, key: at} if at != "wall" else {"units": units}
    assert ask("step", settings, key=key, by=by)["text"] == to


def test_a_box_of_plates_is_no_tube():
    assert ask("step", {"body_kind": "plates"}, key="body_width", by=1)["text"] == "4 1/4 in"
    assert ask("step", {}, key="heat_up_time", by=1)["text"] == "35 min"  # of half an hour, no 0.583333333333 h


def test_a_step_from_the_nearest_drill_names_the_next():
    first = ask("step", {}, key="jet_drill", by=1)["text"]
    assert ask("step", {"jet_drill": first}, key="jet_drill", by=-1)["text"] != first
    metric = ask("step", {"units": "mm"}, key="jet_drill", by=1)["text"]
    assert metric.endswith(" mm")


def test_the_last_size_stays():
    last = ask("step", {"cap_thickness": "1 in", "body_length": "9 in"}, key="cap_thickness", by=1)
    assert not last["ok"] or last["text"] == "1 in"  # refused when it does not go in


@pytest.mark.parametrize("system, tube", [("in", "4 x 4 x 3/16"), ("mm", "100 x 50 x 3")])
def test_find_names_all_that_is_wrong_in_the_units_of_the_design(system, tube):
    named = {}
    for more in ("\nbuy: none", "\nbuy: anvil"):  # unknown, so is what is missing
        reply = ask("find", {"units": system, "rows": "x", "mine": "rowz"}, have=f"tube: {tube}{more}")
        named[more] = [error["setting"] for error in reply["errors"]]
    assert list(named.values()) == [["rows", "mine", "pins", "pipe", "blower", "cylinder"], ["rows", "mine", "buy"]]


@pytest.mark.parametrize("kind", ["face", "solve", "draw", "thumb", "good", "shops", "link", "file"])
def test_a_name_under_mine_that_is_no_setting_is_refused_by_each_question(kind):
    reply = ask(kind, {"mine": "rowz"}, figures=[], file="templates-letter", have="")
    assert [(error["setting"], error["value"]) for error in reply["errors"]] == [("mine", "rowz")]


def test_a_length_typed_in_inches_comes_back_from_the_metric_page_as_it_was():
    """260.35 mm is shown as 260.3; the page keeps what was typed, so that nothing is read back from what is shown."""
    typed = dict.fromkeys(("body_length", "chamber_length", "mix_pipe_length"), "10 1/4 in")
    typed |= {"setback": "37/64 in", "corner_radius": "7/32 in"}
    before = Design.from_texts(typed)
    there = ask("solve", {**typed, "units": "mm"})
    assert there["fields"]["body_length"]["text"] == "260.3"  # what is shown is rounded
    assert {key: there["texts"][key] for key in typed} == typed
    back = ask("solve", {**there["texts"], "units": "in"})
    assert back["fields"]["body_length"]["text"] == "10 1/4"
    assert Design.from_texts(back["texts"]) == before
    assert from_link(there["link"])[0].body_length == before.body_length == 10.25 * 0.0254


def test_a_fraction_is_taken_of_what_a_worked_out_length_came_to():
    """The caps' thickness stands at the wall's, 3/16 in, until it is set."""
    assert ask("part", key="cap_thickness", part="1/2")["text"] == "1/2 in"


@pytest.mark.parametrize(("key", "bare", "unit"), [("chamber_temperature", "50", "degF"), ("wall", "5", "in")])
def test_a_bare_number_out_of_range_is_offered_the_same_as_with_its_unit(key, bare, unit):
    bare, named = (ask("solve", {key: text})["errors"][0]["nearest"] for text in (bare, f"{bare} {unit}"))
    assert bare == named


@pytest.mark.parametrize("system", ["in", "mm"])
def test_a_refusal_names_units_as_its_field_does_and_its_offer_is_read_back(system):
    """`Chamber temperature: 5000 must be 60 degF to 2800 degF` stood beside a field that tells °F."""
    fields = ask("solve", {"units": system})["fields"]
    told = set()
    for setting in (each for each in SETTINGS if each.dimension in units.DIMENSIONS and each.high):
        unit = fields[setting.key]["unit"]
        typed = f"1e9 {unit}" if setting.dimension == "gas_pressure" else "1e9"  # as the page sends it
        said = ask("solve", {"units": system, setting.key: typed})["errors"]
        (error,) = (each for each in said if each["setting"] == setting.key)
        assert not re.search(r"deg[CF]|H2O|\b(?:in|ft|m|cm|mm)[23]\b", error["text"]), error["text"]
        assert error["text"].endswith(f" {error['offer']}.")
        if unit and setting.dimension not in ("time", "money") and error["nearest"] not in setting.words:
            both = fields[setting.key].get("range", unit)  # 2 in H₂O to 5 psi are told beside the field too
            assert error["offer"].endswith((unit, both.rpartition(" ")[2])), (both, error)
            told.add(unit)
        assert parse_setting(setting, error["offer"]) == parse_setting(setting, error["nearest"])
    assert {"in": {"in", "°F", "in²", "in H₂O", "°"}, "mm": {"mm", "°C", "cm²", "mbar", "°"}}[system] <= told
    assert units.printed("6 deg, 70 degF, C3H8 2 m3/h, N2 8 in2") == "6°, 70 °F, C3H8 2 m³/h, N2 8 in²"


@pytest.mark.parametrize("typed, span", [("9000 mbar", "2.5 mbar to 4100 mbar"), ("9000 bar", "to 4.1 bar")])
def test_a_pressure_of_gas_is_refused_in_the_unit_that_stood_beside_it(typed, span):
    """Beside mbar it was told to be at most 4.13 bar."""
    (error,) = ask("solve", {"units": "mm", "gas_pressure": typed})["errors"]
    assert span in error["text"] and error["nearest"] == span.split(" to ")[-1].removeprefix("to ")


def test_an_emptied_field_is_said_to_be_empty():
    (error,) = ask("solve", {"body_length": " "})["errors"]
    assert error["text"].startswith("Body length is empty: it must be a number, such as 3 in. Nearest")


@pytest.mark.parametrize("request_, field", [
    ("[1]", "request"), ("{", "request"), ({}, "kind"), ({"kind": ["solve"]}, "kind"), ({"kind": "solve"}, "settings"),
    ({"kind": "solve", "settings": []}, "settings"), ({"kind": "open", "link": 3}, "link"),
    ({"kind": "step", "settings": {}, "key": "rows", "by": "1"}, "by"),
    ({"kind": "step", "settings": {}, "key": "rowz", "by": 1}, "key"),
    ({"kind": "file", "settings": {}, "file": "x"}, "file"), ({"kind": "job", "settings": {}, "job": "face"}, "job"),
])  # fmt: skip
def test_a_request_of_odd_types_is_refused_by_name(request_, field):
    reply = json.loads(handle(request_ if isinstance(request_, str) else json.dumps(request_)))
    assert not reply["ok"] and [error["setting"] for error in reply["errors"]] == [field]


@pytest.mark.parametrize(
    ("kind", "asked", "named"),
    [
        ("solve", {"figures": {"face": [0, 0, 0]}}, "figures"),
        ("face", {"figures": {"face": "a"}}, "figures"),
        ("drag", {"key": "rows", "axis": "x", "at": 5}, "key"),
        ("layers", {"key": "lining", "rows": [[1, 2, 3]]}, "rows"),
        ("layers", {"key": "lining", "rows": [["ifb_26", "1", 99]]}, "rows"),
        ("layers", {"key": "rows", "rows": [["ifb_26", "1", 0]]}, "key"),
        ("code", {"text": "x" * 2332}, "text"),
        ("good", {"settings": {"mine": 5}}, "mine"),
        ("solve", {"settings": {"mine": 5}}, "mine"),
    ],
)
def test_odd_requests_are_refused_by_name(kind, asked, named):
    """Each ended in a traceback."""
    reply = json.loads(handle(json.dumps({"kind": kind, "settings": {}, **asked})))
    assert not reply["ok"] and [error["setting"] for error in reply["errors"]] == [named]


def test_the_largest_code_holds_what_is_said():
    assert ask("code", text="x" * 2331)["svg"].startswith("<svg")


@pytest.mark.parametrize(
    "request_of",
    [
        {"kind": "code", "text": "\ud800"},
        {"kind": "file", "file": "sheet-a4", "site": "\ud800"},
        {"kind": "drag", "key": "setback", "axis": "x", "at": float("inf")},
        {"kind": "drag", "key": "setback", "axis": "x", "at": float("nan")},
        {"kind": "step", "key": "setback", "by": 10**400},
        {"kind": "slide", "key": "setback", "mark": 10**400},
        {"kind": "try", "key": "setback", "by": -(10**400), "check": "web"},
        {"kind": "layers", "key": "lining", "rows": [["blanket_8lb", "1 in", 1.0]]},
        {"kind": "layers", "key": "lining", "rows": [["blanket_8lb", "1 in", True]]},
        {"kind": "have", "text": "tube: 4 x 4 x 3/16", "units": {}},
        {"kind": "draw", "figures": [["face"]]},
        {"kind": "draw", "figures": {"face": [10**400, 10]}},
        {"kind": "draw", "figures": {"face": [1e-300, 0]}},
        {"kind": "draw", "figures": {"face": [1, 1]}},
        *({"kind": "part", "key": "setback", "part": part} for part in ("1/0", "99/2", "3/7", "all", "")),
    ],
    ids=str,
)
def test_what_no_page_of_ours_sends_is_refused_by_name(request_of):
    reply = ask(request_of.pop("kind"), **request_of)
    (error,) = reply["errors"]
    assert error["setting"] in (*request_of, "figures", "rows") and error["rule"].startswith("must be")


@pytest.mark.parametrize(
    "named, request_of",
    [
        ("units", {"kind": "have", "text": "", "units": "cubits"}),
        ("axis", {"kind": "drag", "key": "setback", "axis": "z", "at": 3}),
        ("check", {"kind": "try", "key": "setback", "by": 1, "check": "no check"}),
    ],
)
def test_a_word_that_no_page_knows_is_refused_by_name(named, request_of):
    """A check that there is not was good."""
    (error,) = ask(request_of["kind"], **{key: value for key, value in request_of.items() if key != "kind"})["errors"]
    assert error["setting"] == named and error["rule"] == "is not known"


def test_a_part_of_an_inch_keeps_the_whole_inches():
    assert ask("part", {"body_length": "9 1/4 in"}, key="body_length", part="7/8")["text"] == "9 7/8 in"
    assert ask("part", {"body_length": "9 1/4 in"}, key="body_length", part="0")["text"] == "9 in"


SMOKE = {
    "chamber_length": "18 in",
    "chamber_width": "8 in",
    "chamber_height": "7 in",
    "opening_depth": "4 1/2 in",
    "heat_up_time": "55 min",
    "lining": "dense_castable 1 in, ifb_26 2 1/2 in, blanket_8lb 1 in",
    "firing_rate": "auto",
}


@pytest.mark.parametrize("by, late", [(1, False), (-1, True)])
def test_a_cure_that_leaves_less_fire_than_heats_up_in_time_says_so(by, late):
    """155 kBtu/h was offered without a word, and then told to be less than the 162 that it takes."""
    told = ask("try", SMOKE, key="firing_rate", check="chamber_pressure", by=by, whole=True)
    after = solve(Design.from_texts({**SMOKE, "firing_rate": told["text"]})).checks["rate_for_need"]
    assert after.verdict == ("note" if late else "good") and ("heats up later than" in after.text) == late
    assert bool(told["later"]) == late and told["later"] in after.text


def test_a_cure_names_the_faults_that_it_leaves_and_no_other():
    """The button alone left a caution, without a word."""
    weak = {"blower_shutoff_pressure": "0.5 inH2O", "low_fire": "80 %"}
    told = ask("try", weak, key="blower_shutoff_pressure", check="blower", by=12, whole=True)
    after = solve(Design.from_texts({**weak, "blower_shutoff_pressure": told["text"]})).checks
    assert told["verdict"] == "good" and [key for key in after if after[key].fault] == [
        "lining_limit",
        "low_fire_drift",
    ]
    assert told["stays"] == [after[key].label.lower() for key in ("lining_limit", "low_fire_drift")]


def test_no_work_is_no_cure():
    """'Make work rate 0 lb/h' was the first cure of a burner too small: it gives up the work."""
    small = {"chamber_length": "60 in", "chamber_width": "40 in", "chamber_height": "40 in"}
    near, all_of_it = (ask("try", small, key="work_rate", check="throughput", by=by) for by in (-1, -256))
    assert near["text"] == "9 lb/h" and not near["end"]
    assert all_of_it["end"] and all_of_it["verdict"] == "stop"


def test_a_day_that_cannot_be_read_is_offered_today_where_the_asker_knows_it():
    """The package has no clock; without one it offers a day to show how one is written."""

    def offered(**request):
        reply = json.loads(handle(json.dumps({"kind": "solve", "figures": [], **request})))
        return [(error["nearest"], error["text"].endswith(f"{error['nearest']}.")) for error in reply["errors"]]

    for key in ("start_date", "days_off"):
        assert offered(settings={key: "Monday"}, today="2026-11-28") == [("2026-11-28", True)]
        assert offered(settings={key: "Monday"}) == [("2026-03-02", True)]
    assert offered(settings={"start_date": "1900-01-01"}, today="2026-11-28") == [("1970-01-01", True)]
    assert offered(settings={}, today="Monday") == [("2026-03-02", True)]
    asked = {"kind": "file", "settings": {}, "file": "calendar-ics", "today": "2026-11-28"}
    assert "2026-11-28" in json.loads(handle(json.dumps(asked)))["errors"][0]["text"]
