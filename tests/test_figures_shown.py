"""No number says more than it knows: three figures, unless somebody sets, cuts or counts by it."""

import json
import re

import pytest
from designs import solved

from burnercalc import catalogue, on_page, steps, worker
from burnercalc.design import Design, parse_setting
from burnercalc.errors import InputErrors
from burnercalc.examples import EXAMPLES
from burnercalc.settings import BY_KEY

DESIGNS = {"default": {}, "default in millimetres": {"units": "mm"}}
for _example in EXAMPLES:
    DESIGNS |= {f"{_example.key} in inches": _example.inches, f"{_example.key} in millimetres": _example.metric}

# What is left out, and why.
EXACT = {
    "length": "sawn, drilled and laid out by it, in tenths of a millimetre or on the tape",
    "count": "counted",
    "money": "whole money; what stands in one sentence or list has to add up",
}
NUMBER = re.compile(r"(?<![\w/#.-])\d+(?:\.\d+)?(?![\w/.]*\d)")
LENGTHS = re.compile(r"\d+(?:\.\d+)?(?: (?:by|x|and|to|or|high,) \d+(?:\.\d+)?)* mm\b")
SUMS = ("make_or_buy", "worth_selling", "before_selling")  # sentences of money
# A temperature beside the limit of its class: by three figures what passes the limit would read as if it did not.
BESIDE_A_LIMIT = ("lining_limit", "refractory_limit")
# In a field stands what was set, converted where it was set in other measures.
SET = {
    "length": "set in tenths of a millimetre",
    "temperature": "set by the degree",
    "count": "counted",
    "money": "a price",
}


def figures(text):
    """The numbers of a text that show more than three figures, lengths in millimetres left out."""
    return [each for each in NUMBER.findall(LENGTHS.sub("", text)) if _count(each) > 3]


def _count(number):
    digits = number.replace(".", "") if "." in number else number.rstrip("0")
    return len(digits.lstrip("0"))


@pytest.fixture(scope="module", params=DESIGNS)
def result(request):
    return solved(**DESIGNS[request.param])


def test_a_number_that_says_too_much_is_seen():
    assert figures("974.26 of 1219 and 6.35 %") == ["974.26", "1219"]
    assert not figures("2250 °F, 1219.2 mm, 196.8 by 69.8 mm, 12300 ppm, 0.0123")


def test_an_answer_has_three_figures_at_most(result):
    said = {}
    for key, answer in on_page.whole(result, ())["answers"].items():
        if catalogue.ANSWERS[key].dimension in EXACT or key in SUMS:
            continue
        if found := figures(" ".join([answer["shown"], answer.get("brief", "")])):
            said[key] = found
    assert not said


def test_a_sentence_has_three_figures_at_most(result):
    checks = (check for check in result.checks.values() if check.key not in BESIDE_A_LIMIT)
    said = {check.key: found for check in checks if (found := figures(check.text))}
    said |= {chart.key: found for chart in result.charts.values() if (found := figures(chart.sentence))}
    assert not said


def test_a_field_and_its_range_have_no_more_figures_than_were_set(result):
    d, said = result.design, {}
    for key, field in on_page.whole(result, ())["fields"].items():
        kind = BY_KEY[key].dimension
        if kind in SET or kind not in on_page.units.DIMENSIONS or key in d.texts:
            continue
        if found := figures(f"{field['text']} {field.get('range', '')}"):
            said[key] = found
    assert not said


def test_a_range_in_millimetres_is_of_round_figures_that_are_taken():
    fields = on_page.whole(solved(units="mm"), ())["fields"]
    for key in (each.key for each in BY_KEY.values() if each.dimension == "length"):
        numbers = NUMBER.findall(fields[key]["range"])
        assert len(numbers) == 2 and all(_count(each) <= 2 for each in numbers), (key, fields[key]["range"])
        for number in numbers:
            parse_setting(BY_KEY[key], f"{number} mm")


@pytest.mark.parametrize("texts", [{}, {"units": "mm"}])
def test_a_range_ends_where_the_rest_of_the_design_takes_no_more(texts):
    """Of what is laid out on the face: the slider's last mark can be built, the next one not; as the refusals say."""
    fields, design = on_page.whole(solved(**texts), ())["fields"], Design.from_texts(texts)
    less = [key for key in fields if "the rest as it is" in fields[key].get("range", "")]
    assert {"setback", "edge_margin"} <= set(less)
    for key in less:
        setting, (_, most, _) = BY_KEY[key], fields[key]["marks"]
        free = steps.marks(setting, design.reader)[1]
        for mark, built in ((most, True), (most + 1, most == free)):
            text = steps.field_text(setting, mark * steps.grid(setting, design.reader)[0], design.reader)
            try:
                Design.from_texts({**texts, key: text})
                done = True
            except InputErrors:
                done = False
            assert done is built or mark > free, (key, text)


def test_what_does_not_count_here_is_no_number_that_is_missing():
    """On a house line no cylinder runs empty; where no lighting rate was found the number says so."""
    line = on_page.whole(solved(fuel="natural_gas"), ())["answers"]
    assert line["run_time"]["shown"] == "none" and line["run_time"]["idle"]
    assert "idle" not in on_page.whole(solved(), ())["answers"]["run_time"]
    metered, weighed = line["metered_per_hour"], line["fuel_per_hour"]  # gas of a line is not weighed
    assert weighed["idle"] and "idle" not in metered and metered["shown"].endswith("cfh")
    assert on_page.whole(solved(), ())["answers"]["metered_per_hour"]["idle"]
    dark = {"rows": "40", "port_diameter": "1/16 in", "edge_margin": "0 in"}
    dark = on_page.whole(solved(**dark), ())["answers"]["lighting_rate"]
    assert dark["shown"] == "do not light" and dark["value"] is None and "idle" not in dark


def test_a_length_of_the_other_tape_stands_on_a_mark_and_comes_back_as_typed():
    typed = {"units": "in", "chamber_length": "455 mm"}
    assert on_page.whole(solved(**typed), ())["fields"]["chamber_length"]["text"] == "17 29/32"  # 17.913 in
    assert on_page.whole(solved(**{**typed, "units": "mm"}), ())["fields"]["chamber_length"]["text"] == "455"


def test_a_house_line_has_a_slider_for_its_own_pressures():
    gas = {"fuel": "natural_gas", "gas_pressure": "7 inH2O"}
    for more, span, most in ((gas, "1 to 14 in H₂O", 14), ({**gas, "units": "mm"}, "2.5 to 34 mbar", 34)):
        field = on_page.whole(solved(**more), ())["fields"]["gas_pressure"]
        assert field["range"] == span
        assert field["marks"][1] == most * (2 if "H₂O" in span else 1)
    high = {"kind": "step", "settings": {**gas, "gas_pressure": "1 psi"}, "key": "gas_pressure"}  # taken all the same
    for by in (1, -1):
        reply = json.loads(worker.handle(json.dumps({**high, "by": by})))
        assert reply["ok"] and 27 <= float(reply["text"].split()[0]) <= 28


def test_a_drawing_leaves_room_for_wide_letters():
    """`opening` is 4.04 of its font size long in a common screen font, by Pillow, and 3.56 as it is reckoned."""
    columns = on_page.whole(solved(), {"in_chamber": (190, 0)})["drawings"]["in_chamber"]
    texts = columns["texts"]
    at = texts["text"].index("opening")
    assert texts["x"][at] + 4.04 * texts["height"][at] / 0.718 <= columns["bounds"][2]


def test_a_chart_has_no_place_of_its_own():
    """So the page asks for it, and a chapter whose picture is a chart was refused for it."""
    asked = {"kind": "solve", "settings": {}, "figures": {"face": [380, 160], "drying": None}}
    reply = json.loads(worker.handle(json.dumps(asked)))
    assert reply["ok"] and "drying" in reply["charts"] and "face" in reply["drawings"]


def test_where_there_is_room_for_one_figure_the_worst_is_told_of_what_burns_somebody():
    """A low fire of 25 kBtu/h, above the likely 23.0, can run back up to 35.6; the lining is judged by the same end."""
    r = solved()
    told = on_page.answers(r, ["flashback_firing_rate", "reached_high_empty", "heat_kept"])
    assert [one["brief"] for one in told.values()] == ["up to 35.6 kBtu/h", "up to 2800 °F", "19 %"]
    assert "35.6 kBtu/h below which" in r.checks["flashback_hot"].text and "2800 °F" in r.checks["lining_limit"].text


def test_the_first_screen_tells_of_how_many_burners_its_rate_is():
    """It read 12.3 kW for two of them, beside the 24.5 that their chamber needs."""
    assert on_page.high_fire(solved()) == "High fire."
    two = solved(units="mm", firing_rate="12 kW", burner_count="2")
    assert on_page.high_fire(two) == "High fire of each of 2 burners, 24 kW together."
