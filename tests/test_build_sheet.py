"""The build sheet: few pages, everything on them that the bench needs, verdicts and cautions with it."""

import re
from unittest import mock

import pytest
import zxingcpp
from designs import KNOWN, ROUND
from hypothesis import given, settings
from making_designs import bench
from pdf_reader import pages, picture

from burnercalc import build_sheet, units
from burnercalc.design import Design
from burnercalc.drawing.text_pages import Caution, Columns
from burnercalc.link import to_link
from burnercalc.result import solve

BASE = "https://example.org/burner/"
MOST_PAGES = 11
FACE_RATIOS = {"long": 5}
DESIGNS = {
    "default": {},
    "small": KNOWN,
    "long": {"body_length": "24 in", "ports_per_row": "24", "start_date": "2026-03-02"},
    "round": {**ROUND, "units": "mm"},
    "end": {"inlet_position": "end", "inlet": "1-1/2"},
    "plastic": {"refractory": "phosphate_plastic"},
}


def sheet(texts, paper="letter"):
    result = solve(Design.from_texts(texts))
    data = build_sheet.pdf(result, to_link(result.design, BASE), paper)
    return result, data, pages(data)


@pytest.mark.parametrize("name", DESIGNS)
def test_a_few_pages_with_all_that_the_bench_needs(name):
    result, _, read = sheet(DESIGNS[name])
    text = " ".join(
        re.sub(
            r"(DO NOT BUILD THIS\.\s+)?https://\S+\s+Page \d+ of \d+", "", " ".join(page.text for page in read)
        ).split()
    )
    assert 2 <= len(read) <= MOST_PAGES
    for key in ("inlet_hole", "weld_length", "pin_length", "fill_line", "bags", "dry_mass"):
        answer = result.answers[key]
        assert units.show(answer.value, answer.dimension, result.design.units) in text, key
    for words in (
        "Cut list",
        "Stock to buy",
        "Mould and block",
        "The days",
        "Gas and air",
        "Checks",
        "DO NOT BUILD" if result.worst == "stop" else "Good:",
    ):
        assert words in text
    for check in result.checks.values():
        if check.verdict != "good":
            assert build_sheet.MARKS[check.verdict] in text and " ".join(check.text.split()).replace("₂", "2") in text
    # The first page is the design at a glance: a face that one can read; what asks for a change, the rest behind.
    one = " ".join(read[0].text.split()).replace("₂", "2")
    assert float(re.search(r"drawn at 1:([\d.]+)", one)[1]) <= FACE_RATIOS.get(name, 2.5)
    for check in result.checks.values():
        words = " ".join(check.text.split()).replace("₂", "2")
        assert check.verdict != "note" or (words not in one and check.label in one + " ".join(read[1].text.split()))
    card = next(page.text for page in read if "Torch first" in page.text)
    assert card.lstrip().startswith("Lighting card") and "Smell of gas" in card  # to hang up: a page of its own
    # Cautions stand at the step: zinc at the welding, silica at the mix, steam in the days, carbon monoxide at the gas.
    themes = ("Cut list", "Mould and block", "The days", "Gas and air", "")
    at = {words: next(number for number, page in enumerate(read) if words in page.text) for words in themes[:-1]}
    for words, after, danger in zip(themes, themes[1:], ("zinc", "silica", "Steam", "Carbon monoxide")):
        assert any(danger in page.text for page in read[at[words] : at.get(after, len(read)) + 1]), danger
    assert "Rasping frees silica dust" in text and "A licensed gas fitter and the local code decide" in text


def test_the_lighting_card_stands_on_the_sheet_and_on_one_of_its_own():
    result, _, read = sheet({})
    own = pages(build_sheet.card_pdf(result, to_link(result.design, BASE), "a4"))
    for some in (read, own):
        text = " ".join(" ".join(page.text for page in some).split()).replace("₂", "2")
        for when, do, source in result.tables["lighting_card"].rows:
            assert when in text and " ".join(do.split()[:4]) in text and source.split()[0] in text
        assert "Light with the mixture rich" in text and "A licensed gas fitter" in text


HOUSE = {"fuel": "natural_gas", "gas_pressure": "7 inH2O"}
WORDY = {
    "lit and waiting": {},
    "lit, but a glowing lip can run back": {**HOUSE, "ports_per_row": "10", "low_fire": "60 %"},
    "with a torch": {
        "fuel_blend": "CH4 0.6, CO2 0.4",
        "firing_rate": "20 kBtu/h",
        "low_fire": "60 %",
        "blower_free_flow": "15 cfm",
        "blower_shutoff_pressure": "1/4 inH2O",
        "baffle_holes": "0",
    },
    "not lit": HOUSE,
    "several burners": {**HOUSE, "ports_per_row": "10", "low_fire": "60 %", "burner_count": "2"},
}


@pytest.mark.parametrize("name", WORDY)
def test_the_lighting_card_is_one_page(name):
    for system in ("in", "mm"):
        result = solve(Design.from_texts({**WORDY[name], "units": system}))
        for paper in ("letter", "a4"):
            link = to_link(result.design, BASE)
            (page,) = pages(build_sheet.card_pdf(result, link, paper))
            assert "A licensed gas fitter decides" in page.text and "Smell of gas" in page.text


def test_a_card_for_what_must_not_be_lit_says_stop_on_top():
    result, _, _ = sheet({"port_diameter": "3/16 in", "rows": "3", "ports_per_row": "6"})
    text = " ".join(pages(build_sheet.card_pdf(result, "#v=1", "letter"))[0].text.split())
    assert "STOP: No safe lighting rate: do not light." in text and "DO NOT LIGHT." in text


def test_the_code_opens_the_design():
    for texts in ({}, DESIGNS["small"]):
        result, data, _ = sheet(texts)
        assert [code.text for code in zxingcpp.read_barcodes(picture(data, 0, 4))] == [to_link(result.design, BASE)]


def test_a_design_with_a_stop_says_so_on_top():
    _, _, read = sheet({"inlet": "4"})
    assert "DO NOT BUILD THIS" in " ".join(read[0].text.split())


def test_the_sheet_stands_by_itself():
    """Who made it, what to do and watch at each step, the heights, the train in order, and lines for the test fire."""
    result, _, read = sheet({"batch_size": "3"})
    text = " ".join(" ".join(page.text for page in read).split())
    for words in ("Serial no.", "Revision", "Test-fire record", "Gas and air train, in the order of flow"):
        assert words in text
    told = zip(result.tables["care"].rows, result.tables["days"].rows)
    for do, days in ((do, days) for (step, do, *_), days in told if step not in ("Weld the body", "First fire")):
        assert " ".join(do.split()[:4]) in text and " ".join(days[-2].split()[:4]) in text
    for key in ("cross_bar", "back_over_frame", "pin_proud", "knock_out_drill"):
        assert result.answers[key].label in text
    # what is for all three stands under its own head, apart from what one block takes
    assert "All 3 blocks" in text and text.index("One block") < text.index("All 3 blocks") < text.index("Bags")
    assert [str(n) in text for n in range(1, 23)] and "bell reducer" in text
    welding = [text.index(row[1]) for row in result.tables["welding"].rows if row[1] in ("grind flush", "leak test")]
    assert welding == sorted(welding)


def test_nothing_is_left_to_be_guessed():
    """What three builds taken off by hand from the paper had to guess: how a bend is counted, how long a stick and
    how large a bag is, how soon the mix is placed, which screws go where, what to buy besides bars."""
    result, _, read = sheet({})
    text = " ".join(" ".join(page.text for page in read).split())
    wood = result.part("mould").wood
    for words in (
        "bend it 60° from flat along the middle (120° is left between its legs)",
        "40 holes of 3/8 in as on its template",
        "Saw cuts of 1/16 in are counted.",
        "sheet of 1/16 in for the baffle",
        "pipe nipples, 1 of 4 in",
        "Pin stock length 36 in",
        "Bag 55 lb",
        "Placed within 30 min",
        f"in the base {wood.screws_corner}, {wood.screws_base}",
        "2 of 3 19/32 in end cap",
    ):
        assert words in text, words
    _, _, read = sheet(DESIGNS["round"])
    text = " ".join(" ".join(page.text for page in read).split())
    assert (
        "face disc" in text and "second cap" not in text and "four tacks round it" in text and "Baffle: disc of" in text
    )
    _, _, read = sheet({"inlet_position": "end", "inlet": "1-1/2", "baffle_holes": "0"})
    assert "one end cap, its middle 2 9/32 in from the outside of the face" in " ".join(
        " ".join(page.text for page in read).split()
    )


def test_lighting_card_and_record_stand_last_and_the_record_on_one_page():
    _, _, read = sheet({})
    at = {words: [i for i, page in enumerate(read) if words in page.text] for words in (
        "Gas and air train, in the order of flow", "Lighting card", "Test-fire record", "Fired by, date",
        "Mould from above")}  # fmt: skip
    train, card, record, signed, mould = at.values()
    assert train[0] < card[0] <= record[0] == signed[0] == len(read) - 1 and mould


def test_the_first_page_holds_what_is_told_first():
    """A small tube: its face, as large as it was drawn, pushed the last line on to a page of its own."""
    small = {"body_length": "5 in", "body_width": "3 in", "body_depth": "3 in", "setback": "9/16 in", "rows": "3",
             "ports_per_row": "6", "inlet": "1", "mix_pipe": "1", "firing_rate": "40 kBtu/h",
             "blower_free_flow": "30 cfm"}  # fmt: skip
    _, _, read = sheet(small)
    assert "Good: the" in read[0].text and "Cut list" in read[1].text


def test_a_stop_is_said_on_every_page():
    _, _, read = sheet({"inlet": "4"})
    assert all("DO NOT BUILD THIS" in page.text for page in read)
    assert not any("DO NOT BUILD" in page.text for page in sheet({})[2])


def test_plastic_is_not_mixed_with_water():
    _, _, read = sheet({"refractory": "phosphate_plastic"})
    assert "Water" not in read[2].text and "phosphate" in read[2].text


def test_a4_is_a4_and_holds_the_same_tables():
    (_, _, letter), (_, _, a4) = sheet({}), sheet({}, "a4")
    assert (a4[0].width, a4[0].height) == pytest.approx((210, 297), abs=0.01) and abs(len(a4) - len(letter)) <= 1
    for words in ("body tube", "12 9/16 in", "Stock to buy", "Clear the ports", "Gas pressure"):
        assert all(words in " ".join(page.text for page in read) for read in (letter, a4))


def cautions(made):
    """How many cautions stand among blocks and in their columns."""
    return sum(
        isinstance(block, Caution)
        + sum(cautions(column) for column in getattr(block, "columns", ()) if isinstance(block, Columns))
        for block in made
    )


@settings(max_examples=20, deadline=None)
@given(bench)
def test_any_design_makes_a_sheet_with_every_bad_check_and_caution(design):
    blocks, made = build_sheet.blocks, []
    with mock.patch.object(build_sheet, "blocks", lambda *given: made.extend(blocks(*given)) or made):
        assert build_sheet.pdf(solve(design), to_link(design, BASE), "a4").startswith(b"%PDF")
    assert cautions(made) == 4
