"""Propane from a line: a tank of the house outdoors, and a regulator at the wall that nobody turns."""

import json
import re

import plausible
import pytest
from designs import solved
from pdf_reader import pages

from burnercalc import build_sheet, worker
from burnercalc.cli import main
from burnercalc.design import Design, supplied
from burnercalc.drawing.shapes import Text
from burnercalc.errors import InputErrors
from burnercalc.find import report
from burnercalc.find.answer import find
from burnercalc.find.good import make_good
from burnercalc.find.have import read_have
from burnercalc.jobs import JOBS, begun, job_of, refitted
from burnercalc.link import from_link, to_link
from burnercalc.result import solve

LINE = {"gas_from": "line"}
INH2O_PA, FOOT_M, BTU_W = 249.089, 0.3048, 0.293071
# In inches and mm, with each way to light it, faults and stops; what was set of cylinders before does not count.
DESIGNS = {
    "inches": {},
    "millimetres": {"units": "mm", "sizes": "mm"},
    "butane": {"fuel": "butane"},
    "a blend": {"fuel_blend": "C3H8 0.6, C4H10 0.4"},
    "two, with a guard": {"burner_count": "2", "batch_size": "2", "lit_by": "guard"},
    "a tank before": {"cylinder": "tank", "cylinder_count": "3", "cylinder_fill": "10 %"},
    "a frosty day": {"ambient_temperature": "10 degF"},
    "a jet too small": {"jet_drill": "#70"},
    "too weak": {"gas_pressure": "1 inH2O", "firing_rate": "134 kBtu/h"},
    "too much": {"gas_pressure": "10 psi"},
    "no gas flows": {"gas_pressure": "1 inH2O", "port_diameter": "1/8 in"},
}


def texts_of(result):
    """Each text that anybody gets of a design, by where it stands."""
    for key, check in result.checks.items():
        yield f"check {key}", check.text
    for key, answer in result.answers.items():
        yield f"answer {key}", answer.brief
    for key, table in result.tables.items():
        for cell in (cell for row in table.rows for cell in row if isinstance(cell, str)):
            yield f"table {key}", cell
    for key, chart in result.charts.items():
        yield f"chart {key}", chart.sentence
    for key, drawing in result.drawings.items():
        yield f"drawing {key}", " ".join(shape.text for shape in drawing.shapes if isinstance(shape, Text))
    for name in ("pdf", "card_pdf"):
        made = getattr(build_sheet, name)(result, "#v=2", "letter")
        yield name, " ".join(" ".join(page.text for page in pages(made)).split())


OF_A_CYLINDER = re.compile(r"(?i)\bcylinders?\b|turn the regulator|adjustable regulator|LP regulator|by the meter")


@pytest.mark.parametrize("name", DESIGNS)
def test_no_text_of_it_tells_of_a_cylinder(name):
    result = solve(Design.from_texts({**LINE, **DESIGNS[name]}))
    assert {where: found[0] for where, text in texts_of(result) if (found := OF_A_CYLINDER.search(text or ""))} == {}
    told = " ".join(text for _, text in texts_of(result))
    assert "Gas off at the line" in told and "house meter passes" not in told


def test_nor_does_any_check_of_plausible_designs():
    """Faults and stops of lighting, jets and supply, which the designs above do not all show."""
    for design in plausible.designs(30):
        result = solve(design.changed({**LINE, "fuel": "propane", "fuel_blend": ""}))
        told = {key: found[0] for key, one in result.checks.items() if (found := OF_A_CYLINDER.search(one.text))}
        assert told == {}, design.texts


def test_the_same_words_are_found_of_a_cylinder():
    """Or the test above would find nothing anywhere."""
    told = {where for where, text in texts_of(solved()) if OF_A_CYLINDER.search(text or "")}
    assert {"table lighting_card", "table gas_train", "table tools", "drawing operating_card", "pdf"} <= told


def test_propane_of_a_line_is_propane_still():
    """It sinks, weighs, costs and burns as before: only its pressure is given."""
    line, cylinder = solved(**LINE), solved(gas_pressure="11 inH2O")
    same = (
        "gross_heating_value",
        "gas_flow",
        "air_flow",
        "flame_temperature",
        "firing_rate_needed",
        "reached_high_work",
    )
    assert {key for key in same if line[key] != cylinder[key]} == set()
    card = " ".join(do for _, do, _ in line.tables["lighting_card"].rows)
    assert "this gas lies low" in card and "under the roof" not in card
    assert line["metered_per_hour"] is None  # no meter counts it
    of_cylinders = ("run_time", "cylinder_draw_limit", "cylinder_coldest", "run_ended_by")
    assert all(line[key] is None is not cylinder[key] for key in (*of_cylinders, "cylinder_draw_last"))
    assert line["frost_time"] is None
    assert {"cylinder", "first_fire_gas"}.isdisjoint(line.checks) and "cylinder" in cylinder.checks


def test_a_gallon_of_propane_holds_91500_btu():
    """NFPA 58, from memory: 91 502 Btu in a gallon at 60 degF. So 100 kBtu/h at 2.50 a gallon are 2.73 an hour."""
    assert solved(**LINE, fuel_price="2.50/gal")["fuel_cost_per_hour"] == pytest.approx(2.50 * 100 / 91.502, rel=0.01)
    assert solved(**LINE)["fuel_cost_per_hour"] == pytest.approx(solved()["fuel_cost_per_hour"])


def test_its_pipe_is_that_of_the_codes_table_for_propane():
    """NFPA 54, undiluted propane at 11 in of water, 0.5 in lost, schedule 40, from memory: 1/2 in carries 200 kBtu/h
    for 20 ft and 3/4 in 418; twice the size of fire that both tell is what burner and appliances take."""
    runs = dict(solved(**LINE, firing_rate="100 kBtu/h", other_appliances="100 kBtu/h").part("house").pipes)
    assert runs["1/2"] / FOOT_M == pytest.approx(20, rel=0.1)
    runs = dict(solved(**LINE, firing_rate="209 kBtu/h", other_appliances="209 kBtu/h").part("house").pipes)
    assert runs["3/4"] / FOOT_M == pytest.approx(20, rel=0.1)


def test_the_regulator_stands_in_for_the_meter():
    """In heat, as its plate has it: 100 + 100 kBtu/h. A meter's size is nothing to it, and no meter times its gas."""
    result = solved(**LINE, meter_capacity="20 ft3/h")
    check = result.checks["house_meter"]
    assert check.verdict == "note" and "100 kBtu/h of gas, 200 kBtu/h with the other appliances" in check.text
    assert "plate of the line's regulator" in check.text
    assert solved(fuel="natural_gas", meter_capacity="20 ft3/h").checks["house_meter"].verdict == "stop"
    assert result.part("lighting_meter").watched_s is None
    assert solved(fuel="natural_gas").part("lighting_meter").watched_s is not None
    proof = next(name for name, _ in build_sheet.proofs(result) if name.startswith("Gas at"))
    assert proof.endswith("by a meter lent for it, nothing else on it")


def test_train_and_tools_have_nothing_of_a_cylinder():
    line, house = solved(**LINE), solved(fuel="natural_gas", line_pressure="14 inH2O")
    keys = [part.key for part in line.part("train").parts]
    assert keys == [part.key for part in house.part("train").parts]
    assert {"line_regulator", "line_connector", "trap", "low_gas_switch"} <= {*keys}
    assert {"connector", "regulator", "hose", "manifold"}.isdisjoint(keys)
    assert {"cylinder", "tank", "gas_scale"}.isdisjoint(tool.key for tool in line.part("tools").tools)
    names = [row[2] for row in line.tables["gas_train"].rows]
    assert "pipe from the line's regulator, by a fitter" in names and "pipe from the meter, by a fitter" not in names


def test_a_line_gives_its_own_pressure_and_no_more():
    """11 inH2O or 37 mbar until it is set. What the jet asks for beyond it is a fault, cured by a larger jet: a
    cylinder's regulator is turned."""
    for system, pascals in (("in", 11 * INH2O_PA), ("mm", 3700.0)):
        design = Design.from_texts({**LINE, "units": system, "sizes": system})
        assert design.gas_pressure == design.line_pressure == pytest.approx(pascals, rel=1e-4)
    small = solved(**LINE, jet_drill="#60")
    assert small.checks["supply"].verdict == "stop" == small.checks["jet"].verdict
    assert "Use a larger drill" in small.checks["jet"].text
    assert "supply" not in solved(jet_drill="#60").checks
    assert solved(**LINE, line_pressure="7 inH2O").checks["supply"].verdict in ("caution", "stop")
    more = {cure.setting for cure in small.checks["supply"].changes}
    assert "line_pressure" in more and "cylinder_count" not in more


@pytest.mark.parametrize("fuel", [{"fuel": "natural_gas"}, {"fuel_blend": "CH4 0.9, N2 0.1"}])
def test_house_gas_comes_by_a_line_whatever_is_told(fuel):
    told, untold = solve(Design.from_texts({**fuel, **LINE})), solve(Design.from_texts(fuel))
    assert {key: (one.value, one.band) for key, one in told.answers.items()} == {
        key: (one.value, one.band) for key, one in untold.answers.items()
    }
    assert {key: check.text for key, check in told.checks.items()} == {
        key: check.text for key, check in untold.checks.items()
    }
    assert not told.design.counts("gas_from") and told.design.counts("meter_capacity")


def test_what_counts_is_what_the_page_shows():
    """Cylinders or the line, never both; a meter of house gas alone."""
    for texts, shown in (
        ({}, {"gas_from", "cylinder", "cylinder_count", "cylinder_fill", "regulator_inlet_pressure"}),
        (LINE, {"gas_from", "line_pressure", "other_appliances"}),
        ({"fuel": "natural_gas"}, {"line_pressure", "other_appliances", "meter_capacity"}),
        ({**LINE, "cylinder": "tank"}, {"gas_from", "line_pressure", "other_appliances"}),
        ({"fuel_blend": "CH4 0.9, N2 0.1"}, {"line_pressure", "other_appliances", "meter_capacity"}),
    ):
        design = Design.from_texts(texts)
        asked = ("gas_from", "cylinder", "cylinder_count", "cylinder_fill", "tank_diameter", "regulator_inlet_pressure")
        asked += ("line_pressure", "other_appliances", "meter_capacity")
        assert {key for key in asked if design.counts(key)} == shown, texts


def test_a_change_of_supply_brings_its_pressure():
    """As one of the fuel does, on the page and in Python; what was set with it stays."""
    before = {"gas_pressure": "8 psi"}
    assert Design.from_texts(before).changed(LINE).text("gas_pressure") == "11 inH2O"
    own = Design.from_texts(before).changed({**LINE, "gas_pressure": "9 inH2O"})
    assert own.text("gas_pressure") == "9 inH2O"
    assert own.changed({"gas_from": "cylinder"}).text("gas_pressure") == "5 psi"
    assert "gas_pressure" in supplied(before, {**before, **LINE}, "gas_pressure")
    asked = {"kind": "solve", "settings": {**before, **LINE}, "before": before}
    reply = json.loads(worker.handle(json.dumps(asked)))
    assert "For a line at the wall" in reply["brought"] and "11 in" in " ".join(reply["moved"])


def test_a_link_holds_it_and_links_before_it_have_cylinders():
    design = Design.from_texts({**LINE, "gas_pressure": "9 inH2O"})
    assert from_link(to_link(design))[0] == design and "gas_from=line" in to_link(design)
    assert from_link("#v=2&gas_pressure=9 psi")[0].gas_from == "cylinder"
    assert "gas_from" not in to_link(Design())


@pytest.mark.parametrize("blend, word", [("C3H8 0.6, C4H10 0.4", "caution"), ("C3H8 0.98, C4H10 0.02", "good")])
def test_a_blend_changes_as_its_tank_empties(blend, word):
    """As it does in a cylinder from full to as empty: the tank of a house is no other still."""
    line = solved(**LINE, fuel_blend=blend, equivalence_ratio="0.97")
    check = line.checks["blend_drift"]
    assert check.verdict == word and "In the tank" in check.text
    full = solved(fuel_blend=blend, equivalence_ratio="0.97", cylinder_fill="100 %", cylinder_count="20")
    assert line["blend_mixture_first"] == pytest.approx(full["blend_mixture_first"])
    assert full["blend_mixture_last"] <= line["blend_mixture_last"] + 1e-9  # there the cold ends it before 5 % are left
    assert line["blend_mixture_last"] == pytest.approx(full["blend_mixture_last"], rel=0.02)
    assert "blend_drift" not in solved(**LINE).checks


FORGE = next(job for job in JOBS if job.key == "forge")
SHOPS = (
    (Design(), "tube: 3 x 3 x 3/16 in\npins: 1/4 in\npipe: 1\nblower: 1 inH2O 120 cfm\nline: 11 inH2O"),
    (Design(), "tube: 4 x 4 x 3/16 in\npins: 9/32 in\npipe: 1-1/2\nblower: 4 inH2O 60 cfm\nline: 11 inH2O\nbuy: drill"),
    (
        Design.from_texts({"units": "mm", "sizes": "mm"}),
        "tube: 100 x 100 x 5 mm\npins: 8 mm\nblower: 10 mbar 100 m3/h\nline: 37 mbar",
    ),
)


@pytest.mark.parametrize("start, shop", SHOPS)
def test_a_found_design_opened_alone_is_what_was_found(start, shop):
    """It was opened as one with cylinders and a regulator to be turned, for nothing in it said that it has a line."""
    for offer in find(start, read_have(shop), budget=300).offers:
        again = solve(from_link(to_link(offer.design))[0])
        assert {key: check.text for key, check in again.checks.items()} == {
            key: check.text for key, check in offer.result.checks.items()
        }
        if again.design.gas_from == "line":
            assert "supply" in again.checks and "cylinder" not in again.checks
            assert not [thing.words for thing in offer.bill.things if "cylinder" in thing.words]
        else:
            assert "cylinder" in again.checks


@pytest.mark.parametrize("start, shop", SHOPS)
def test_with_a_line_alone_each_found_design_is_on_it(start, shop):
    found = find(start, read_have(shop if "buy" in shop else f"{shop}\nbuy: drill, pipe"), budget=300)
    assert found.offers and {offer.design.gas_from for offer in found.offers} == {"line"}
    assert all(offer.design.gas_pressure <= offer.design.line_pressure * (1 + 1e-9) for offer in found.offers)


def test_a_question_on_a_line_is_answered_on_it():
    """Nothing is told of a line or a cylinder in the shop: what the design has stays, as its fuel does."""
    start = Design.from_texts({**LINE, "line_pressure": "9 inH2O"})
    shop = "tube: 3 x 3 x 3/16 in\npins: 1/4 in\nblower: 1 inH2O 120 cfm\n"
    found = find(start, read_have(shop), budget=300)
    assert {(one.design.gas_from, one.design.text("line_pressure")) for one in found.offers} == {("line", "9 inH2O")}
    other = find(start, read_have(f"{shop}cylinder: 100 lb\n"), budget=300)
    assert {one.design.gas_from for one in other.offers} == {"cylinder"}
    mine = find(Design(), read_have(f"{shop}line: 11 inH2O\ncylinder: 100 lb\nmine: gas_from=line"), budget=300)
    assert {one.design.gas_from for one in mine.offers} == {"line"}


def test_make_it_good_takes_the_line_as_it_is():
    design = Design.from_texts({**LINE, "jet_drill": "#60"})
    mended = make_good(design)
    made = mended.after.design
    assert made.gas_from == "line" and made.line_pressure == design.line_pressure
    assert {"cylinder", "cylinder_count", "line_pressure", "gas_from"}.isdisjoint(one.key for one in mended.changes)
    assert solve(made).checks["supply"].verdict == "good" == solve(made).checks["jet"].verdict


def test_a_job_stays_on_the_line():
    """As it stays with the blower that lies there: its gas pressure is the line's, whatever the job has."""
    forge = begun(FORGE, LINE)
    design = Design.from_texts(forge)
    assert design.gas_from == "line" and design.text("gas_pressure") == "11 inH2O"
    assert job_of(design)[0].key == "forge"
    butane = Design.from_texts(refitted(forge, {**forge, "fuel": "butane"}))
    assert butane.gas_from == "line" and butane.text("gas_pressure") == "11 inH2O"


@pytest.mark.parametrize(
    "gas, air, word, tells",
    [
        ({"fuel": "butane"}, "20 degF", "stop", "propane"),
        ({"fuel": "butane"}, "40 degF", "caution", "propane"),
        ({"fuel": "butane"}, "60 degF", "good", ""),
        ({"fuel_blend": "C3H8 0.3, C4H10 0.7"}, "30 degF", "caution", "propane"),
        ({}, "20 degF", "good", ""),
        ({}, "-4 degF", "good", ""),
    ],
)
def test_the_tank_of_a_line_stands_in_the_cold(gas, air, word, tells):
    """Butane boils at 31.1 degF under 14.7 psi, propane at -43.7 (published): with 0.6 psi more, that a regulator of 11
    in of water needs, some 2 degF above. Of a blend butane is left, which a cylinder is told by the same law."""
    check = solved(**LINE, **gas, ambient_temperature=air).checks["line_cold"]
    assert check.verdict == word and tells in check.text
    assert word == "good" or "Never heat a tank" in check.text


def test_how_cold_it_may_be_is_what_a_cylinder_is_told():
    """For the same pressure at the regulator's inlet; pure butane boils by its table 2 degF above 31.1."""
    house = solved(**LINE, fuel="butane").part("house")
    assert house.coldest_K == house.last_coldest_K == pytest.approx((31.1 + 2.2 + 459.67) / 1.8, abs=0.6)
    for gas in ({"fuel": "butane"}, {}, {"fuel_blend": "C3H8 0.6, C4H10 0.4"}):
        inlet = {"regulator_inlet_pressure": f"{1.5 * 11 * INH2O_PA} Pa", "gas_pressure": "11 inH2O"}
        full = solved(**gas, **inlet, cylinder_fill="100 %", cylinder_count="20")
        assert solved(**LINE, **gas).part("house").coldest_K == pytest.approx(full["cylinder_coldest"], abs=0.01)
    for other in ({}, {"fuel": "natural_gas"}):
        assert "line_cold" not in solved(**other).checks


def test_the_command_line_names_no_cylinder_of_a_line(capsys):
    main(["sheet", "--set", "fuel=butane", "gas_from=line"])
    told = capsys.readouterr().err
    assert "cylinder" not in told and "regulator_inlet" not in told
    main(["sheet", "--set", "fuel=butane"])
    assert "cylinder_count=" in capsys.readouterr().err
    main(["sheet", "--link", "#v=2&gas_pressure=8psi", "--set", "gas_from=line"])
    told = capsys.readouterr().err
    assert "For a line at the wall" in told and "11 in H" in told and "was 8 psi" in told
    main(["sheet", "--set", "gas_from=line", "gas_pressure=9inH2O"])
    assert "Gas pressure" not in capsys.readouterr().err
    main(["sheet", "--link", "#v=2&gas_from=line"])
    assert capsys.readouterr().err == ""


HALF = "tube: 3 x 3 x 3/16 in\npins: 1/4 in\npipe: 1\nblower: 1 inH2O 120 cfm\n"


def test_a_found_design_has_settings_of_its_own_supply_alone():
    """One with cylinders carried line_pressure=7inH2O in its link and on its sheet."""
    both = find(Design(), read_have(f"{HALF}line: 7 inH2O\ncylinder: 100 lb x 2\nbuy: drill, regulator"), budget=300)
    alone = find(Design(), read_have(f"{HALF}cylinder: 100 lb x 2\nbuy: drill, regulator"), budget=300)
    assert "cylinder" in {offer.design.gas_from for offer in alone.offers}
    for offer in (*both.offers, *alone.offers):
        of = {"cylinder", "cylinder_count"} if offer.design.gas_from == "line" else {"line_pressure"}
        assert of.isdisjoint(offer.design.texts) and not any(f"&{key}=" in to_link(offer.design) for key in of)
    kept = find(
        Design.from_texts({"line_pressure": "9 inH2O"}),
        read_have(f"{HALF}cylinder: 100 lb\nmine: line_pressure"),
        budget=300,
    )
    assert {offer.design.text("line_pressure") for offer in kept.offers} == {"9 inH2O"}


def test_which_gas_a_line_at_hand_must_hold_is_told():
    """A line of 7 in of water is mostly one of natural gas, which a jet for propane lets out unlit."""
    shop = read_have(f"{HALF}line: 7 inH2O\nbuy: drill")
    told = {
        name: (report.asked(Design.from_texts(texts), read_have(have)))
        for name, texts, have in (
            ("untold", {}, shop.text()),
            ("told", {"fuel": "natural_gas"}, shop.text()),
            ("mine", {}, shop.text() + "mine: fuel=propane"),
            ("no line", {}, HALF),
        )
    }
    assert {name: any("No fuel is set" in one for one in said) for name, said in told.items()} == {
        "untold": True, "told": False, "mine": False, "no line": False,
    }  # fmt: skip
    for texts, gas in (({}, "propane"), ({"fuel": "natural_gas"}, "natural gas")):
        text = report.as_text(find(Design.from_texts(texts), shop, budget=300))
        assert f"from a line of {gas} that holds 7 in H" in text


def test_that_a_set_cylinder_is_void_for_gas_that_comes_by_a_line_is_told(tmp_path, capsys):
    """A line and a cylinder were listed, the cylinder set, and the line taken without a word."""
    told = {
        (fuel, mine): any(
            "always comes by a line" in one
            for one in report.asked(
                Design.from_texts({"fuel": fuel, **({"gas_from": "line"} if mine == "gas_from=line" else {})}),
                read_have(f"{HALF}line: 7 inH2O\ncylinder: 20 lb\nbuy: drill\nmine: {mine}"),
            )
        )
        for fuel in ("propane", "natural_gas")
        for mine in ("", "gas_from=cylinder", "gas_from=line")
    }
    assert told == {key: key == ("natural_gas", "gas_from=cylinder") for key in told}
    shop = tmp_path / "shop.txt"
    shop.write_text(f"{HALF}line: 7 inH2O\ncylinder: 20 lb\nbuy: drill")
    asked = ["--set", "fuel=natural_gas", "gas_from=cylinder", "--have", str(shop), "--budget", "200"]
    assert main(["find", *asked]) == 0
    assert "but natural gas always comes by a line" in capsys.readouterr().out


@pytest.mark.parametrize("typed", ["propane 11 inH2O", "11 inH2O propane", "11 inH2O, natural gas", "LP gas 11 inH2O"])
def test_a_line_named_by_its_gas_is_told_where_that_is_set(typed):
    with pytest.raises(InputErrors) as refused:
        read_have(f"line: {typed}")
    assert "set by fuel" in str(refused.value) and refused.value.errors[0].nearest == "11 inH2O"
    assert read_have("line: 11 inH2O").of("line")[0].texts["line_pressure"] == "11 inH2O"


def test_the_card_names_a_blend_that_no_line_analysed():
    for texts, name in (
        ({"fuel_blend": "C3H8 0.6, C4H10 0.4"}, "own gas blend from a line"),
        ({}, "propane from a line"),
    ):
        made = build_sheet.card_pdf(solved(**LINE, **texts), "#v=2", "letter")
        assert f"Lighting card, {name}" in " ".join(" ".join(page.text for page in pages(made)).split())
