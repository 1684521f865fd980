"""The worked examples: whole, honest, and the same scenario in both systems of units."""

import pytest
import zxingcpp
from pdf_reader import pages, picture

from burnercalc.build_sheet import pdf
from burnercalc.design import Design
from burnercalc.examples import EXAMPLES
from burnercalc.link import from_link, to_link
from burnercalc.result import solve
from burnercalc.settings import BY_KEY
from burnercalc.units import show

# What each example sets for itself rather than leaves at the default.
WHOLE = {
    "lining",
    "opening_area",
    "opening_depth",
    "chamber_temperature",
    "work_rate",
    "work_temperature",
    "heat_up_time",
    "firing_rate",
    "body_length",
    "port_diameter",
    "ports_per_row",
    "baffle_holes",
}
BOTH = [(example, units) for example in EXAMPLES for units in ("inches", "metric")]
# The smallest step of a size that a shop has: a tape's 32nd, half a millimetre.
STEP_M = {"inches": 0.0254 / 32, "metric": 0.0005}
SAME_WITHIN = 0.05


def name(example, units):
    return f"{example.key}-{units}"


@pytest.fixture(scope="module")
def solved():
    return {name(example, units): solve(Design.from_texts(getattr(example, units))) for example, units in BOTH}


@pytest.mark.parametrize("example, units", BOTH, ids=lambda part: getattr(part, "key", part))
def test_an_example_has_no_fault(example, units, solved):
    assert [check.text for check in solved[name(example, units)].checks.values() if check.fault] == []


def test_the_default_is_good():
    """A newcomer copies it: no fault, a mixture that is safe, a low fire above the careful end of flashback."""
    result = solve(Design.from_texts({}))
    assert result.worst == "good" and not [check.text for check in result.checks.values() if check.fault]
    # A slip of 0.03 and the drift of hot ports leave it lean.
    assert result.design.equivalence_ratio * (1 + result["hot_drift"]) + 0.03 < 1.0
    assert result.part("firing").low_W > result.answers["flashback_firing_rate"].band[1]


@pytest.mark.parametrize("example, units", BOTH, ids=lambda part: getattr(part, "key", part))
def test_the_scenario_is_its_own(example, units):
    texts = getattr(example, units)
    assert WHOLE <= texts.keys()
    assert texts.get("units", "in") == ("mm" if units == "metric" else "in")


@pytest.mark.parametrize("example, units", BOTH, ids=lambda part: getattr(part, "key", part))
def test_sizes_are_those_of_a_shop(example, units, solved):
    design = solved[name(example, units)].design
    sizes = [(key, design.value(key)) for key in getattr(example, units) if BY_KEY[key].dimension == "length"]
    sizes += [("lining", thickness) for _, thickness in design.lining]
    for key, size in sizes:
        steps = size / STEP_M[units]
        assert steps == pytest.approx(round(steps), abs=1e-6), (key, size)


@pytest.mark.parametrize("example, units", BOTH, ids=lambda part: getattr(part, "key", part))
def test_links_bring_the_example_back(example, units, solved):
    design = solved[name(example, units)].design
    opened, ignored = from_link(to_link(design))
    assert opened == design and not ignored


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda example: example.key)
@pytest.mark.parametrize("key", ["firing_rate_gross", "mixture_velocity_in_port", "plenum_to_port_ratio"])
def test_both_tapes_tell_of_one_burner(example, key, solved):
    inches, metric = (solved[name(example, units)][key] for units in ("inches", "metric"))
    assert metric == pytest.approx(inches, rel=SAME_WITHIN)


def test_the_tool_is_shown_off():
    rates = [example.inches["firing_rate"] for example in EXAMPLES]
    assert "auto" in rates and any(rate != "auto" for rate in rates)
    assert {example.inches.get("fuel", "propane") for example in EXAMPLES} == {"propane", "natural_gas"}
    assert {example.inches.get("chamber_shape", "box") for example in EXAMPLES} == {"box", "cylinder"}
    for example in EXAMPLES:
        for key in ("fuel", "firing_rate", "chamber_shape"):
            assert (example.inches.get(key) == example.metric.get(key)) or key == "firing_rate"
        assert (example.inches["firing_rate"] == "auto") == (example.metric["firing_rate"] == "auto")


@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize("example, units", BOTH, ids=lambda part: getattr(part, "key", part))
def test_the_sheet_has_few_pages_with_the_jet_the_heats_and_how_to_light(example, units, paper):
    design = Design.from_texts({**getattr(example, units), "start_date": "2026-12-01"})
    result = solve(design)
    data = pdf(result, to_link(design), paper)
    found = pages(data)
    assert [code.text for code in zxingcpp.read_barcodes(picture(data, 0, 4))] == [to_link(design)]
    text = " ".join(" ".join(page.text.split()) for page in found)
    # Eleven before what to buy and the tools stood on it, one less before what carbon monoxide rests on was told.
    # And one less before it told what each part of the train does, which stood on no paper.
    assert len(found) <= 15
    assert (
        f"Jet drill to use {result['jet']}" in text and "Damper to LIGHT" in text and "too long for a code" not in text
    )
    for stage in result.part("schedule").stages:
        assert stage.name in ("cure", "air") or show(stage.temp_K, "rough_temperature", design.units) in text
