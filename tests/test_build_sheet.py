"""The build sheet: few pages, everything on them that the bench needs, verdicts and cautions with it."""

import re
from functools import cache
from unittest import mock

import pytest
import zxingcpp
from designs import KNOWN, ROUND, solved
from hypothesis import given, settings
from making_designs import bench
from pdf_reader import pages, picture
from test_measures import INCH, NAMES

from burnercalc import build_sheet, foot, shopping, traveller, units
from burnercalc.design import Design
from burnercalc.drawing.shapes import Circle, Line, Text, shape_box
from burnercalc.drawing.text_pages import Caution, Columns, flow
from burnercalc.link import to_link
from burnercalc.result import solve

BASE = "https://example.org/burner/"
MOST_PAGES = {"default": 13, "long": 16}  # a field of 118 ports and seven faults
FACE_RATIOS = {"long": 5}
DESIGNS = {
    "default": {},
    "small": KNOWN,
    "long": {"body_length": "24 in", "ports_per_row": "24", "start_date": "2026-03-02"},
    "round": Design.from_texts(ROUND).read_in("mm").texts,
    "end": {"inlet_position": "end", "inlet": "1-1/2"},
    "plastic": {"refractory": "phosphate_plastic"},
}


def sheet(texts, paper="letter"):
    return _sheet(tuple(texts.items()), paper)


@cache
def _sheet(texts, paper):
    result = solve(Design.from_texts(dict(texts)))
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
    assert 2 <= len(read) <= MOST_PAGES.get(name, 14)
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
    for check in result.told:
        if check.key in build_sheet.ON_CARD and check.verdict == "note":
            percent, air = f"{100 * check.value:.0f} %", units.show(check.value, "air_flow", result.design.units, 2)
            told = air if check.key == "lighting_air" else percent
            assert told in text or result.worst == "stop"
        elif check.verdict != "good":
            assert build_sheet.MARKS[check.verdict] in text and " ".join(check.text.split()).replace("₂", "2") in text
    holes = result.tables["holes"].rows  # more than fit beside the rest have sheets of their own
    at = [units.show(place, "length", result.design.units).split(" ")[0] for place in holes[-1][1:3]]
    assert re.search(rf"\b{len(holes)} {re.escape(at[0])}", text), name
    if len(holes) > build_sheet.MOST_HOLES:
        own = next(page for page in read if f"Holes of {result.design.show('port_diameter')}" in page.text)
        assert own.text.lstrip().startswith("Holes of")
    # The first page is the design at a glance: a face that one can read; what asks for a change, the rest behind.
    one = " ".join(read[0].text.split()).replace("₂", "2")
    assert float(re.search(r"drawn at 1:([\d.]+)", one)[1]) <= FACE_RATIOS.get(name, 2.5)
    for check in (each for each in result.told if each.key not in build_sheet.ON_CARD):
        words = " ".join(check.text.split()).replace("₂", "2")
        assert check.verdict != "note" or (words not in one and check.label in one + " ".join(read[1].text.split()))
    on_card = [each for each in result.told if each.key in build_sheet.ON_CARD and each.verdict == "note"]
    assert (f"On the lighting card: {len(on_card)} note" in one) == bool(on_card)  # or they and the good are not all
    card = next(" ".join(page.text.split()) for page in read if page.text.lstrip().startswith("Lighting card"))
    assert "Smell of gas" in card  # to hang up: a page of its own
    lit = result.worst != "stop" and result["lighting_rate"] is not None
    assert ("Torch first" in card) == lit == ("DO NOT LIGHT" not in card)
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
        assert "A licensed gas fitter" in text


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
    "two of a blend behind guards": {
        "fuel_blend": "C3H8 0.6, C4H10 0.15, iC4H10 0.15, C3H6 0.1",
        "cylinder_left": "30 %",
        "burner_count": "2",
        "lit_by": "guard",
    },
    "several burners": {**HOUSE, "ports_per_row": "10", "low_fire": "60 %", "burner_count": "2"},
}


@pytest.mark.parametrize("name", WORDY)
def test_the_lighting_card_is_one_page(name):
    for system in ("in", "mm"):
        result = solve(Design.from_texts({**WORDY[name], "units": system}))
        for paper in ("letter", "a4"):
            link = to_link(result.design, BASE)
            (page,) = pages(build_sheet.card_pdf(result, link, paper))
            text = " ".join(page.text.split())
            assert "A licensed gas fitter decides" in text and "Smell of gas" in text


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
    for words in ("Serial nos.", "Revision", "Gas and air train, in the order of flow"):
        assert words in text
    assert "Test-fire record" in words_of(sheet({})[2]) and "Test-fire record" not in text
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
        "its own weld lies in a side, not in face or back",
        "Screw length, at least",
        "Fill line, over the base",
        "sheet of 1/16 in for the baffle",
        "pipe nipples, 1 of 4 in",
        "Pin stock length 36 in",
        "Bag 55 lb",
        "Placed within 30 min",
        f"in the base {wood.screws_corner}, {wood.screws_base}",
        "2 of 3 19/32 in end cap",
        "Outer holes, from end and side 1 in and 1 in",  # lip 5/8, margin 1/4, half a port 1/8
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


def words_of(read):
    return " ".join(" ".join(page.text for page in read).split())


def test_what_is_bought_stands_on_the_sheet_with_room_for_ticks():
    result, _, read = sheet({})
    text = words_of(read)
    for table in ("shopping", "tools"):
        for item, *_ in result.tables[table].rows:
            assert item in text, item
    assert text.count("Got Item As sold") >= 2


@pytest.mark.parametrize(
    "units_of, bridge, bar", [("in", "1/2 in", "3/4 in"), ("mm", "12.7 mm", "19 mm")]
)  # an inch shop's, read
def test_bridge_and_cross_bars_have_sizes(units_of, bridge, bar):
    """A cross-bar is as long as the frame: 9 1/8 in inside and two boards of 23/32 in, 10 9/16 in (268 mm)."""
    _, _, read = sheet(Design().read_in(units_of).texts)
    text = words_of(read)
    span = 2 * 23 / 32 + 9.125
    assert f"bridge of {bridge} in the middle" in text
    assert f"cross-bar square bar 2 {units.show(span * 0.0254, 'length', units_of)} {bar} {bar}" in text
    assert "Cross-bar: straight, of steel or hard wood, one clamped to each side of the body" in text


@pytest.mark.parametrize(
    "texts, words",
    [
        # 3 in of pipe and 4 in of body less a grip of 3/4 in
        ({}, "through a hole of the baffle, meets the mix 6 1/4 in below"),
        ({"baffle_holes": "0"}, "a stiff wire down the inlet meets the mix 6 1/4 in below"),
        # half of 3 1/16 in between block and back, less half a bore of 1.610 in: 0.726 in
        ({"inlet_position": "end", "inlet": "1-1/2", "baffle_holes": "0"}, "its leg of 23/32 in just meets the mix"),
        ({"inlet_position": "end", "inlet": "1-1/2"}, "weigh the mix"),
    ],
)
def test_the_level_inside_can_be_found(texts, words):
    assert words in sheet(texts)[0]["level_inside"]


def test_where_no_wire_reaches_the_mix_its_weight_is_told_without_what_is_mixed_more():
    """Dry mix and water hold 10 % more than the mould takes: put in whole they bury the pins at such an end inlet."""
    result, _, read = sheet(DESIGNS["end"])
    dry, water = result["dry_mass"] / 1.1, result["water_per_mix"] * result.part("block").mixes / 1.1
    for name, told in (("dry", dry), ("water", water)):
        assert f"Of it into the mould, {name} {units.show(told, 'mass', 'in')}" in words_of(read)
    assert dry == pytest.approx(result["block_volume"] * 145 * 0.45359237 / 0.3048**3)  # 145 lb a cubic foot
    assert "Of it into the mould" not in words_of(sheet({})[2])


def test_a_round_mould_comes_off_in_halves():
    """Its screws lie inside the layers: there is nothing to unscrew when it is stripped."""
    (do,) = [row[1] for row in sheet(DESIGNS["round"])[0].tables["care"].rows if row[0] == "Strip the mould"]
    assert "strap off" in do and "nscrew" not in do


def test_the_level_inside_stands_with_the_casting():
    assert "Level inside, once the body is at its mark: a thin stiff wire" in words_of(sheet({})[2])


RINGS = {"body_kind": "pipe", "body_length": "6 5/8 in", "body_width": "6 5/8 in", "wall": "9/32 in", "rows": "3",
         "pattern": "rings", "ports_per_row": "18", "block_thickness": "3 1/2 in"}  # fmt: skip


@pytest.mark.parametrize(
    "texts, said",
    [({}, "row by row"), (RINGS | {"ports_per_row": "10", "rows": "2", "port_diameter": "1/2 in"}, "ring by ring"),
     (RINGS | {"port_diameter": "1/4 in"}, None)],
)  # fmt: skip
def test_the_face_says_that_ports_are_numbered_where_numbers_are_drawn(texts, said):
    caption = "Face, seen from the fire"
    page = " ".join(sheet(texts)[2][0].text.split())
    assert caption in page and (f"{caption}; ports are numbered {said}" in page if said else "numbered" not in page)


def test_the_slide_is_drawn_with_its_hole_and_marks():
    """The hole of 15/32 in in the middle of a bore of 1.610 in; edges 0.047 and 0.323 in back at low and high fire."""
    result, _, read = sheet({"equivalence_ratio": "0.96"})
    drawing = result.drawings["slide"]
    hole, bore = (
        [s for s in drawing.shapes if isinstance(s, Circle) and s.layer == layer] for layer in ("port", "hidden")
    )
    assert [(c.x, c.y) for c in (*hole, *bore)] == [(0.0, 0.0), (0.0, 0.0)]
    assert hole[0].r == pytest.approx(15 / 64 * 25.4) and bore[0].r == pytest.approx(1.610 / 2 * 25.4, rel=1e-3)
    assert any(s.text == "guide, bought with the gate" for s in drawing.shapes if isinstance(s, Text))
    wide = max(s.x1 for s in drawing.shapes if isinstance(s, Line) and s.layer == "dimension" and s.x1 == s.x2)
    assert wide == pytest.approx(bore[0].r + 6 + 3)  # 6 mm of plate beside the bore, 3 mm of guide beside that
    edges = {round((bore[0].r - s.y1) / 25.4, 3) for s in drawing.shapes if isinstance(s, Line) and s.y1 == s.y2}
    assert {0.047, 0.323} <= edges
    assert "hole for LIGHT: drill 15/32 in" in words_of(read) and "Slide of the damper, shut" in words_of(read)
    unlit = solve(Design.from_texts({"port_diameter": "3/16 in", "rows": "3", "ports_per_row": "6"})).drawings["slide"]
    stopped = solve(Design.from_texts({"inlet": "4", "equivalence_ratio": "0.96"})).drawings["slide"]
    for drawing in (unlit, stopped):  # as the table beside it, no mark of what must not be lit
        assert not any(isinstance(s, Circle) and s.layer == "port" for s in drawing.shapes)
        assert not any(isinstance(s, Text) and s.text[:3] in ("LIG", "LOW", "HIG", "hol") for s in drawing.shapes)


LONG_LINK = {"body_length": "10 in", "body_width": "5 in", "body_depth": "5 in", "rows": "6", "ports_per_row": "10",
             "wall": "1/4 in", "setback": "3/4 in", "grip": "7/8 in", "block_thickness": "2 3/4 in"}  # fmt: skip


def test_the_line_at_the_foot_is_never_cut():
    result, _, read = sheet(LONG_LINK)
    link = to_link(result.design, BASE)
    assert "..." not in link and not foot.fits(link, "letter")
    for page in read:
        assert f"Design {foot.number(link)}" in page.text
    assert sum(link in "".join(page.text.split()) for page in read) == 1
    (whole,) = [page.text for page in read if link in "".join(page.text.split())]
    assert whole is read[0].text  # where every foot says that it stands
    assert foot.number(link) != foot.number(to_link(solve(Design()).design, BASE))
    for make in (build_sheet.card_pdf, traveller.pdf, shopping.pdf):
        assert f"Design {foot.number(link)}" in words_of(pages(make(result, link, "a4")))
    short = to_link(solve(Design()).design, BASE)
    assert all(short in page.text for page in sheet({})[2])


def test_a_link_that_only_the_word_of_warning_pushes_off_the_foot_stands_on_the_first_page():
    """Every foot sent there for it, and it stood nowhere: what was asked was whether it fits without that word."""
    result, base = sheet({"inlet": "4"})[0], f"{BASE}#v=2&"
    link = next(base + "x" * n for n in range(200) if not foot.fits(base + "x" * n, "letter", foot.STOP))
    assert foot.fits(link, "letter") and result.worst == "stop"
    read = pages(build_sheet.pdf(result, link, "letter"))
    assert [link in "".join(page.text.split()) for page in read] == [True] + [False] * (len(read) - 1)


def test_nothing_is_told_twice():
    """The days told what to watch and when to go on that the steps before them tell; a reader of millimetres had them
    twice in the cut list; what holds the burner stood behind the first fire, and is welded on before it is cast."""
    for system in ("in", "mm"):
        result, _, read = sheet(Design().read_in(system).texts)
        text = words_of(read)
        for _, do, *_ in result.tables["care"].rows[1:]:
            assert text.count(do[:60]) <= 1
        for row in result.tables["days"].rows[1:]:
            for told in row[-2:]:
                assert text.count(" ".join(told.split()[:3])) == 1, told
        assert ("228.6 x 101.6 x 4.8" in text) == (system == "in")
        where = [text.index(words) for words in ("leak test", "In the chamber's wall", "Mould and block")]
        assert where == sorted(where)


def test_card_and_plate_name_burner_and_gas():
    for texts, gas in (({}, "propane"), ({"fuel_blend": "CH4 0.9, N2 0.1"}, "own gas blend")):
        result = solve(Design.from_texts(texts))
        card = words_of(pages(build_sheet.card_pdf(result, "#v=1", "letter")))
        assert f"Lighting card, {gas}, burner no. ...." in card
        for name in ("plate", "operating_card"):
            drawn = " ".join(s.text for s in result.drawings[name].shapes if isinstance(s, Text))
            named = "mole %: methane 90, nitrogen 10" if texts else gas
            assert named in drawn and ("Serial no. ..." in drawn or "For burner no. ..." in drawn)


@pytest.mark.parametrize("name", DESIGNS)
def test_no_drawing_is_both_true_and_not_to_scale(name):
    text = words_of(sheet(DESIGNS[name])[2])
    assert not re.search(r"NOT TO SCALE, do not measure here: drawn at 1:1(?![.\d])", text)
    assert "A scheme, without sizes" in text


@pytest.mark.parametrize(
    "texts",
    [{}, {"body_length": "36 in", "inlets": "2", "ports_per_row": "60"}, {"units": "mm", "lit_by": "guard"}],
)
def test_names_in_the_train_stand_clear_of_each_other_and_of_the_air_on_the_sheet(texts):
    columns = build_sheet._train_drawn(solve(Design.from_texts(texts)), 190.0)[1]
    (page,) = flow(columns.columns[0], columns.weights[0], 250.0)  # as it comes out on paper
    names = [s for s in page if isinstance(s, Text) and re.match(r"\d+\. |cylinder|blower|burner", s.text)]
    boxes = [shape_box(s) for s in names]
    over = [(a, b) for i, a in enumerate(boxes) for b in boxes[:i]
            if a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]]  # fmt: skip
    assert len(boxes) > 20 and not over
    air = next(s for s, box in zip(names, boxes) if s.text == "blower").x
    assert all(box[2] < air - 3.0 for s, box in zip(names, boxes) if s.x < air)


def test_a_drawing_at_its_own_size_says_so():
    small = {"body_length": "3 in", "body_width": "2 in", "rows": "2", "ports_per_row": "3", "setback": "3/8 in",
             "corner_radius": "1/8 in", "corner_drill": "1/4 in", "inlet": "3/4", "baffle_holes": "6",
             "firing_rate": "15 kBtu/h"}  # few faults beside it  # fmt: skip
    assert "about as large as it is; measure on the plans" in words_of(sheet(small)[2])


def test_metric_paper_reads_metric():
    """Sheet, card, traveller and shopping list; what is sold by a name in inches, boards and cylinders, is named so."""
    for name in ("default", "round", "end"):
        result = solve(Design.from_texts({**DESIGNS[name], "units": "mm", "sizes": "mm"}))
        for make in (build_sheet.pdf, build_sheet.card_pdf, traveller.pdf, shopping.pdf):
            text = NAMES.sub("", words_of(pages(make(result, "#v=1", "a4"))))
            found = [text[max(m.start() - 30, 0) : m.end() + 10] for m in INCH.finditer(text)]
            assert not found, found


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


@settings(max_examples=5, deadline=None)
@given(bench)
def test_any_design_makes_a_sheet_with_every_bad_check_and_caution(design):
    blocks, made = build_sheet.blocks, []
    with mock.patch.object(build_sheet, "blocks", lambda *given: made.extend(blocks(*given)) or made):
        assert build_sheet.pdf(solve(design), to_link(design, BASE), "a4").startswith(b"%PDF")
    assert cautions(made) == 4


def test_what_each_part_of_the_train_does_is_on_paper_once():
    """Where its jet ends, what is welded before it is joined, where its vent goes: by the numbers of the list."""
    result = solve(Design())
    table, numbers = result.tables["gas_train"], []
    _, drawn, below = build_sheet._train_drawn(result, 190.0)
    told = drawn.columns[1][0].rows + below.rows
    why = {row[0]: row[-1] for row in table.rows}
    for ones, text in told:
        numbers += ones.split(", ")
        assert {why[int(number)] for number in ones.split(", ")} == {text}
    assert sorted(map(int, numbers)) == sorted(why) and len({text for _, text in told}) == len(told)
    printed = " ".join(" ".join(page.text for page in pages(build_sheet.pdf(result, "#v=2", "letter"))).split())
    assert [text for text in set(why.values()) if text not in printed] == []


@pytest.mark.parametrize("price", ["listed", "140"])
def test_the_train_is_one_line_of_the_list_to_buy_at_its_price_or_ones_own(price):
    result = solve(Design.from_texts({"price_train": price}))
    _, table, *_ = shopping.beside_train(result)
    trains = [row for row in table.rows if "train" in row[1]]
    train = result.part("train")
    own = train.safety_cost + train.needed_cost + train.comfort_cost if price == "listed" else 140
    assert [float(row[-1]) for row in trains] == [pytest.approx(own, abs=0.005)]
    assert sum(float(row[-1]) for row in table.rows) == pytest.approx(result["cost_batch"], abs=0.02)


def test_what_must_be_known_before_the_saw_stands_with_the_steel():
    """That no pipe is 6 in across was told on the last page, behind the first fire."""
    _, _, read = sheet(dict(body_kind="pipe", body_length="6 in", body_width="6 in", pattern="hexagonal", rows="6",
                       ports_per_row="6", port_diameter="5/16 in"))  # fmt: skip
    (at,) = [i for i, page in enumerate(read) if "No standard pipe is 6 in across" in page.text.replace("\n", " ")]
    words = read[at].text
    assert words.index("Steel") < words.index("To know before you cut") < words.index("Cut list for one burner")
    assert "under Steel: " in read[0].text.replace("\n", " ")
    assert all("No standard pipe" not in page.text for page in read[at + 1 :])


def test_holes_are_marked_to_a_sixty_fourth():
    """Eight ports between 55/64 and 6 9/64 in: 0.7545 apart, the second at 1.6138, nearest 1 39/64, not 1 5/8."""
    _, _, read = sheet(dict(body_length="7 in", body_width="3 in", body_depth="3 in", wall="1/8 in", setback="1/2 in",
                       port_diameter="7/32 in", rows="3", ports_per_row="8", inlet="1-1/4"))  # fmt: skip
    (table,) = [page.text for page in read if "from the corner with the triangle" in page.text]
    assert "2 1 39/64 55/64" in " ".join(table.split()) and "1 5/8 55/64" not in " ".join(table.split())
    pins = " ".join(" ".join(page.text for page in read).split())
    assert "Dowel of 7/32 in is rarely sold. Buy 1/4 in and bring it down" in pins


def test_each_heat_of_the_first_fire_says_when_it_begins_and_how_fast():
    _, _, read = sheet({"start_date": "2026-03-02"})
    words = " ".join(" ".join(page.text for page in read).split())
    for n, day, lasts in ((1, "Sun 08 Mar", "9.7 h"), (2, "Mon 09 Mar", "9.6 h"), (3, "Tue 10 Mar", "11.5 h")):
        assert f"First fire, heat {n} of 3 {day}, 09:00 {lasts}" in words
    assert "Up again 300 °F an hour 1000 °F 0 min 3 of 3 To work 150 °F an hour" in words and "2026-03-08" not in words


def test_what_the_flat_is_too_wide_for_is_told_on_paper():
    """24 side plates of 72 mm and 24 caps "from flat 80 x 4 mm": the saw along them stood on the page alone."""
    dozen = {"units": "mm", "body_kind": "plates", "body_length": "200 mm", "body_width": "80 mm",
             "body_depth": "80 mm", "wall": "4 mm", "port_diameter": "8 mm", "rows": "3",
             "batch_size": "12", "moulds": "2"}  # fmt: skip
    result = solved(**dozen)
    said = "Rip the flat to width, along the piece: side plate 72 mm (24), end cap 71.2 mm (24)."
    assert said in str(build_sheet.blocks(result, "", 190, 250))
    assert "Rip the flat" not in str(build_sheet.blocks(solved(caps="on"), "", 190, 250))
    paper = str(build_sheet.blocks(result, "", 190, 250))  # the caution on zinc stood behind the work, over the page
    assert paper.index("No zinc") < paper.index("long seams")
    # One sheet is enough for both moulds, of whose wood "2 of 1 sheet" was told.
    (mould,) = (row for row in result.tables["shopping"].rows if row[0] == "mould")
    assert mould[1:3] == ("in all 1 of ply 18 mm, 1220 mm x 610 mm", 2) and len(result.tables["boards"].rows) == 1
    (alone,) = (row for row in solved(batch_size="1").tables["shopping"].rows if row[0] == "mould")
    assert alone[1].startswith("1 of ply")
    # The steps' own oven and wax; one figure for the last hold.
    tools = {row[0]: row[1] for row in result.tables["tools"].rows}
    assert "to 150 °C" in tools["old oven"] and "200 mm x 140 mm x 212 mm" in tools["old oven"]
    assert "never for food" in tools["old oven"] and "paraffin" in tools["sealer and wax"]
    care = {row[0]: row[1] for row in result.tables["care"].rows}
    holds = [units.show(row[2], "rough_temperature", "mm") for row in result.tables["drying"].rows]
    assert "540 °C" in holds and "540 °C" in care["First fire"] and "540 °C" in care["Oven-dry"]
    kiln = {row[0]: row[1] for row in solved(**dozen, kiln="yes", oven_places="2").tables["tools"].rows}
    assert "old oven" not in kiln and "to 540 °C" in kiln["kiln"] and "inside for 2 of" in kiln["kiln"]


def test_the_face_on_the_first_page_is_never_too_small_to_read_however_many_faults_stand_below_it():
    """With five faults it was 28 mm high; rather they run on to the second page."""
    result, heights = solved(), []
    for lines in range(0, 60, 3):
        faults = [build_sheet.Paragraph("Use larger ports.")] * lines
        with mock.patch.object(build_sheet, "_faults", return_value=faults):
            made = build_sheet._first_page(result, "https://x.example/#v=2", 185, 240, "letter")
        heights.append(next(block.height for block in made if isinstance(block, build_sheet.Figure)))
    assert min(heights) >= 40 and len(set(heights)) > 3
