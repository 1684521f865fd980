"""Gas pressures are said in one measure: of a cylinder in psi or bar, of a line in inches of water or mbar."""

import json
import re

import pytest
from designs import solved

from burnercalc import Design, catalogue, sheet, solve, units
from burnercalc.catalogue.sentences import slots_of
from burnercalc.cli import main
from burnercalc.link import from_link, to_link
from burnercalc.worker import handle

LINE = {"fuel": "natural_gas", "gas_pressure": "7 inH2O"}
SMALL = {"port_diameter": "9/32 in", "rows": "5", "ports_per_row": "9", "edge_margin": "1/4 in"}
OF_GAS = re.compile(r"([0-9.]+) (psi|bar|in H₂O|mbar)")


def shown(result):
    """Everything that is said of a design, line by line."""
    system = result.design.units
    yield from (f"{one.label}: {sheet.shown(one, system)}" for one in result.answers.values())
    yield from (check.text for check in result.checks.values())
    for table in result.tables.values():
        for row in table.rows:
            yield from (units.show(cell, column.dimension, system) for cell, column in zip(row, table.columns))
    for chart in result.charts.values():
        yield chart.sentence
        yield from (units.shown_unit(side.dimension, system) for side in (chart.x, chart.y))


@pytest.mark.parametrize("system", ["in", "mm"])
@pytest.mark.parametrize("ports", [{}, SMALL], ids=["not lit", "lit"])
def test_of_a_line_nothing_is_said_in_psi_or_bar(system, ports):
    r = solved(**{**LINE, **ports, "units": system})
    assert [line for line in shown(r) if re.search(r"([0-9] |^)(psi|bar)\b", line)] == []


@pytest.mark.parametrize("texts, unit", [({}, "psi"), ({"units": "mm"}, "bar"), ({**LINE, **SMALL}, "in H₂O"),
                                         ({**LINE, **SMALL, "units": "mm"}, "mbar")])  # fmt: skip
def test_what_stands_before_the_jet_has_the_measure_of_its_gas(texts, unit):
    r = solved(**texts)
    lines = [line for line in shown(r) if "before the jet" in line and OF_GAS.search(line)]
    assert len(lines) >= 3
    for line in lines:
        found = [unit for _, unit in OF_GAS.findall(line.split(" before the jet")[0])]
        assert found[-1].removeprefix("m" if unit == "bar" else "") == unit, line
    for key in ("jet_gas_pressure", "jet_gas_pressure_low", "lighting_gas_pressure"):
        if r[key] is not None:
            assert sheet.shown(r.answers[key], r.design.units).rstrip(")").endswith(unit)


def test_a_low_pressure_of_a_cylinder_stays_in_psi():
    r = solve(Design())
    assert r["lighting_gas_pressure"] < 6894.757 and "psi before the jet" in r.checks["lighting"].text
    assert sheet.shown(r.answers["lighting_gas_pressure"], "in").rstrip(")").endswith("psi")


def test_every_answer_that_is_a_pressure_of_gas_is_declared_as_one():
    wrong = [key for key, one in catalogue.ANSWERS.items()
             if "gas_pressure" in key and one.dimension != "gas_pressure"]  # fmt: skip
    assert wrong == []
    # In sentences the slots named gas, as all of lighting are, too.
    for declared in (*catalogue.ANSWERS.values(), *catalogue.CHECKS.values()):
        for sentence in declared.cases.values():
            kinds = {kind for name, kind in slots_of(sentence) if name == "gas" and "pressure" in kind}
            assert kinds <= {"gas_pressure"}, declared.key


def asked(kind, **more):
    return json.loads(handle(json.dumps({"kind": kind, **more})))


def test_the_page_has_field_and_chart_of_the_gas_pressure_in_the_measure_of_its_gas():
    """The page sends a bare number with the unit that stands beside it, and steps are half an inch of water."""
    settings = {"fuel": "natural_gas", "gas_pressure": "8 in H₂O", "units": "in"}
    told = asked("solve", settings=settings, figures=["jet_card"])
    field, chart = told["fields"]["gas_pressure"], told["charts"]["jet_card"]
    assert (field["text"], field["unit"]) == ("8", "in H₂O") and told[
        "link"
    ] == "#v=2&fuel=natural_gas&gas_pressure=8inH2O"
    assert asked("step", settings=settings, key="gas_pressure", by=1)["text"] == "8.5 inH2O"
    points = next(iter(chart["series"].values()))["x"]
    assert "in H₂O" in chart["x_label"] and 1 < max(points) <= 1.001 * chart["x_range"][1]
    assert asked("solve", settings={"gas_pressure": "6", "units": "in"})["texts"]["gas_pressure"] == "6 psi"
    finer = asked("solve", settings={**settings, "gas_pressure": "7.125 in H₂O"})
    assert finer["fields"]["gas_pressure"]["text"] == "7.125"


@pytest.mark.parametrize("key", ["gas_pressure", "regulator_inlet_pressure", "aspirated_pressure"])
@pytest.mark.parametrize(
    "typed, shown",
    [
        ("0.35 bar", "350 mbar"),
        ("1200 mbar", "1.2 bar"),
        ("1.25 bar", "1.25 bar"),
        ("1 bar", "1 bar"),
        ("15 psi", "1.03 bar"),
    ],
)
def test_a_pressure_of_gas_in_millimetres_stands_in_its_field_as_answers_tell_it(key, typed, shown):
    """Above 1 bar the field read 1200 mbar beside an answer of 1.25 bar."""
    found = Design.from_texts({"units": "mm", key: typed})
    field = asked("solve", settings=found.texts)["fields"][key]
    assert (
        f"{field['text']} {field['unit']}"
        == shown
        == units.show(found.value(key), "gas_pressure", "mm")
        == found.show(key)
    )
    assert field["range"].endswith(f" {field['unit']}")
    assert found.changed({key: shown}).value(key) == pytest.approx(found.value(key), rel=5e-3)


def test_the_setting_of_a_line_reads_in_mbar():
    line = {"fuel": "natural_gas", "gas_pressure": "17.4 mbar", "units": "mm"}
    assert Design.from_texts(line).show("gas_pressure") == "17.4 mbar"


# Another supply of gas brings its own pressure: {what stood there, what is changed}: the gas pressure then.
PROPANE, HOUSE = {"fuel": "propane"}, {"fuel": "natural_gas"}


@pytest.mark.parametrize(
    "before, change, told",
    [
        ({}, HOUSE, "7 inH2O"),
        ({"rows": "4"}, HOUSE, "7 inH2O"),
        ({"gas_pressure": "10 psi"}, HOUSE, "7 inH2O"),
        ({"gas_pressure": "10 psi"}, {"fuel": "butane"}, "10 psi"),
        ({"gas_pressure": "10 psi"}, {"fuel_blend": "CH4 0.9, N2 0.1"}, "7 inH2O"),
        ({**HOUSE, "gas_pressure": "9 inH2O"}, PROPANE, "5 psi"),
        ({**HOUSE, "gas_pressure": "9 inH2O"}, {"rows": "4"}, "9 inH2O"),
        ({"gas_pressure": "10 psi"}, {**HOUSE, "gas_pressure": "10 psi"}, "10 psi"),
    ],
)
def test_another_supply_of_gas_brings_its_own_pressure(before, change, told):
    """In Python, on the page and on the command line alike; not where it is told with the change."""
    changed = Design.from_texts(before).changed(change)
    assert changed.text("gas_pressure") == told
    if "gas_pressure" not in change:
        page = Design.from_texts(asked("solve", settings={**before, **change}, before=before)["texts"])
        assert page.text("gas_pressure") == told
        assert page == changed or not before  # what the page opens with brings ports for the gas besides, as a job does


@pytest.mark.parametrize(
    "texts, told, per_kg",
    [
        ({}, "0.90/lb", 0.90 / 0.45359237),
        (HOUSE, "1.50/therm", None),
        ({**HOUSE, "fuel_price": "0.90/lb"}, "0.90/lb", 0.90 / 0.45359237),
        ({"fuel_price": "2.00/lb"}, "2.00/lb", 2 / 0.45359237),
    ],
)
def test_gas_of_a_house_line_is_priced_by_heat_where_no_price_is_told(texts, told, per_kg):
    """Nobody sells it by the pound: 1.50 a therm, an example, of gross heat."""
    r = solved(**texts)
    if per_kg is None:  # a therm is 100,000 Btu
        per_kg = 1.50 / (1e5 * 1055.056) * r["gross_heating_value_mass"]
    assert r.design.text("fuel_price") == told
    assert r.part("gas_price").per_kg == pytest.approx(per_kg, rel=1e-4)
    assert asked("solve", settings=texts)["fields"]["fuel_price"]["text"] == told
    assert from_link(to_link(r.design)) == (r.design, [])


def test_the_price_follows_the_fuel_until_it_is_told_or_mine():
    assert Design().changed(HOUSE).text("fuel_price") == "1.50/therm"
    assert Design.from_texts(HOUSE).changed(PROPANE).text("fuel_price") == "0.90/lb"
    assert Design.from_texts({"fuel_price": "1.10/lb"}).changed(HOUSE).text("fuel_price") == "1.10/lb"
    mine = asked("solve", settings={**HOUSE, "mine": "fuel_price"}, before={"mine": "fuel_price"})
    assert mine["texts"]["fuel_price"] == "0.90/lb"
    assert Design.from_texts({**HOUSE, "units": "mm"}).as_typed("fuel_price") == "0.05/kWh"
    assert from_link("#v=1&fuel=natural_gas")[0].text("fuel_price") == "0.90/lb"


@pytest.mark.parametrize("before, told", [({"gas_pressure": "10 psi"}, "10 psi"), ({}, "5 psi")])
def test_a_gas_pressure_that_is_mine_stays(before, told, capsys):
    page = asked(
        "solve", settings={**before, **HOUSE, "mine": "gas_pressure"}, before={**before, "mine": "gas_pressure"}
    )
    assert page["texts"]["gas_pressure"] == told
    for mine, pressure in (("gas_pressure", told), ("rows", "7 inH2O")):
        link = to_link(Design.from_texts(before), "", {"mine": mine})
        assert main(["sheet", "--json", "--link", link, "--set", "fuel=natural_gas"]) == 0
        opened = from_link(json.loads(capsys.readouterr().out)["link"])[0]
        assert opened.gas_pressure == pytest.approx(units.parse_quantity(pressure, "gas_pressure", "gas_pressure"))


def test_what_no_change_of_the_supply_made_stays_as_it_is_told():
    """A link, a job or an example says what it says: 5 psi of a house line too, as links of version 1 mean it."""
    for link, told in (("#v=1&fuel=natural_gas", "5 psi"), ("#v=2&fuel=natural_gas&gas_pressure=5psi", "5psi"),
                       ("#v=2&fuel=natural_gas", "7 inH2O"), ("#v=1", "5 psi")):  # fmt: skip
        design = from_link(link)[0]
        assert design.text("gas_pressure") == told and from_link(to_link(design)) == (design, [])
        assert asked("open", link=link)["settings"].get("gas_pressure", told) == told
