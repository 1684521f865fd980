"""The traveller, the data plate and the operating card: read back, whole, in both measures, for any design."""

import math
import re

import pytest
from designs import FAR_APART, KNOWN_GOOD, solved
from pdf_reader import pages
from test_files import dxf_of
from test_lighting import WAYS

from burnercalc import build_sheet, traveller, units
from burnercalc.build_sheet import PROVED, fires
from burnercalc.drawing.shapes import Text, shape_box
from burnercalc.examples import EXAMPLES
from burnercalc.files import FILES, PLATES
from burnercalc.link import to_link
from burnercalc.making.slide import open_share
from burnercalc.settings import SETTINGS

LB = 0.45359237


@pytest.fixture(scope="module")
def default():
    return solved()


def read(result, key):
    return pages(FILES[key][2](result, to_link(result.design, "https://example.org/")))


def words(page):
    return " ".join(page.text.split())


def test_a_traveller_has_all_that_is_measured_on_the_way(default):
    both = read(default, "traveller-letter")
    text = " ".join(map(words, both))
    assert len(both) == 2 and "of 1" not in text.replace("Page 1 of 2", "").replace("Page 2 of 2", "")
    for key in ("window_length", "inlet_hole", "push_in", "pin_length", "burner_mass", "burner_wet_mass",
                "burner_steel_mass", "damper_mark_high"):  # fmt: skip
        answer = default.answers[key]
        assert units.show(answer.value, answer.dimension, "in").replace("₂", "2") in text, key
    # test_feed_air has the pressures at the mix pipe's tap.
    alone, fire_Pa = default.part("air_proof").alone_Pa, default.part("air_proof").fire_Pa
    fire_Pa += (
        default["mixture_pressure_hot"] - default["mixture_pressure"]
    )  # nobody goes there before the ports are hot
    low, high, fire = (
        units.show(one, "pressure", "in", 2).replace("₂", "2") for one in (alone.low, alone.high, fire_Pa)
    )
    for said in (f"{low} to {high}", f"tap at high fire: {fire} hot", "Serial no.", "GO: 1/4 in drill",
                 "NO GO: 17/64 in drill", "Leak, before casting: air", "10 min", "Lights 5 of 5, all ports",
                 "Handed over", "must be certified", "local authority decides", *traveller.STEPS):  # fmt: skip
        assert said in text, said


def test_what_makes_the_mixture_is_written_down(default):
    """What was drilled and weighed, each beside the design's: without it no reading of the test fire says why."""
    band = " to ".join(units.show(kg, "mass", "in") for kg in default.answers["water"].band)
    hole = default["lighting_mark"].rpartition("drilled ")[2]
    lines = [
        f"Lip {default.design.show('setback')}",
        f"Dry mix weighed, all of one block {default['dry_mass'] / LB:.2f}",
        f"Water weighed, all of one block {band}",
        "Bag: lot, date on it",
        f"Jet and slide's hole to light: shank that just enters {default['jet']}, {hole}",
        f"0.85 x found / design, jet {default['jet']}, {hole}, 3 psi",
    ]
    text, sheet = (" ".join(map(words, read(default, key))) for key in ("traveller-letter", "sheet-letter"))
    assert [line for line in lines if line not in text] == []
    assert [line for line in lines[4:] if line not in sheet] == []  # the cast goes with its burner alone
    assert "hole to light" not in " ".join(map(words, read(solved(inlet="4"), "traveller-letter")))


@pytest.mark.parametrize("texts", [{}, {"batch_size": "3"}, {"opening_area": "1 in2"}])
def test_what_is_proved_comes_before_what_needs_it(texts):
    """The leak test stood behind the casting, which shuts the window for good; RCD, air switch and valve were proved in
    the test fire, days after heats of the first fire by the burner itself, and soap on the gas joints nowhere."""
    text = " ".join(map(words, read(solved(**texts), "traveller-letter")))
    order = ["Leak, before casting", "Weights to dry", "before any flame, the first fire's too", PROVED[0],
             "Test fire: read", "Sign-off"]  # fmt: skip
    at = [text.replace("’", "'").index(one) for one in order]
    assert at == sorted(at) and all(text.count(one) == int(texts.get("batch_size", 1)) for one in PROVED)
    signed = list(traveller.STEPS)
    for first, then in (
        ("Leak test passed", "Block cast"),
        ("Air and safety passed", "First fire, all heats"),
    ):
        assert signed.index(first) < signed.index(then)
    record = str(build_sheet.blocks(solved(), "", 190, 250))
    assert record.index("Leak to valve: before any flame") < record.index(PROVED[0]) < record.index("Lights 5 of 5")


def test_it_is_weighed_when_the_calendar_has_hands(default):
    """Morning and evening of one day are before the warmth, or hours into it: the night tells that it is dry."""
    text = words(read(default, "traveller-letter")[0])
    assert "Warm, the last evening Warm, the morning after 0.5 % from the evening" in text
    assert (
        f"with inlet, baffle, bracket {default['burner_steel_mass'] / LB:.1f} lb" in text
    )  # the bracket is welded on before it is cast


def test_wax_of_a_long_body_stands_where_it_is_cast(default):
    """Half of what the block grows more than its steel at each end, where that is over 1 mm; the default takes none."""
    long = solved(body_length="24 in")
    wax = units.show(long.part("welding").growth_m / 2, "drill_length", long.design.reader, 2)
    assert f" {wax} of wax" in long.checks["block_growth"].text  # one figure: 0.0216 in stood beside 1/64 in
    for result, told in ((long, True), (default, False)):
        cast = next(row for row in result.tables["care"].rows if row[0] == "Mix and cast")
        assert ("of wax on the inside of both ends" in cast[1]) is told
    assert wax in next(row[1] for row in long.tables["care"].rows if "of wax on" in row[1])
    assert f"Wax, both ends and lip's edge, before casting {wax}" in words(read(long, "traveller-letter")[0])
    assert "Wax, both ends" not in words(read(default, "traveller-letter")[0])


def test_a_line_of_the_wall_s_calendar_ends_between_two_things_that_are_done():
    """09:00 make mould stood at the end of one line, 2 at the head of the next."""
    result = solved(batch_size="5", moulds="2", hands="2", test_stands="2", start_date="2027-02-01")
    text = "\n".join(page.text for page in read(result, "traveller-a4")).replace("\u00a0", " ")
    done = [one for row in result.tables["batch_days"].rows for cell in row
            for one in re.split(r"(?<=[,;]) (?=\d\d:\d\d |pair \d)", cell)]  # fmt: skip
    assert len(done) > 40 and max(map(len, done)) < 40 and [one for one in done if one not in text] == []


def test_each_burner_of_a_batch_has_its_own_pages():
    """Behind the calendar of the batch and what is cast when. What is bought and cut for all stands on the build sheet,
    the record of the test fire on each burner's own pages: nothing is printed twice."""
    batch = solved(batch_size="3")
    text = [words(page) for page in read(batch, "traveller-a4")]
    assert len(text) == 7 and batch["batch_bottleneck"] in text[0]
    assert text[0].count("cast ") >= 3 and f"{batch['batch_days']} days to the last burner" in text[0]
    sheet = " ".join(words(page) for page in read(batch, "sheet-a4"))
    titles = {key: batch.tables[key].title for key in ("castings", "batch_cut_list", "stock", "boards")}
    assert {key for key, title in titles.items() if title in text[0]} == {"castings"}
    assert {key for key, title in titles.items() if title in sheet} == set(titles) - {"castings"}
    assert "Test-fire record" not in sheet and sum("Test fire: readings expected" in page for page in text) == 3
    assert [sum(f"Burner {n} of 3" in page for page in text) for n in (1, 2, 3)] == [2, 2, 2]


def test_moulds_that_the_calendar_leaves_unmade_are_not_counted():
    """A mould of 20 h is no quicker than to wait for the first: wood, cost and hours are those of one."""
    texts = {"batch_size": "2", "hours_mould": "20 h"}
    two, one = solved(moulds="2", **texts), solved(moulds="1", **texts)
    for key in ("moulds_made", "batch_days", "cost_batch", "hours_per_burner", "tools_cost", "selling_cost"):
        assert two[key] == one[key], key
    assert two["moulds_made"] == 1 and two.tables["boards"].rows == one.tables["boards"].rows
    said = "Of 2 moulds 1 is made: one more would save no day."
    assert said in words(read(two, "traveller-a4")[0]) and "moulds 1 is" not in words(read(one, "traveller-a4")[0])


def test_weights_by_hand(default):
    """Dry block: 145 lb/ft3; wet with 11 % of water and the pins more. Steel, inlet pipe and baffle are the rest."""
    dry = default["block_volume"] * 145 * 0.45359237 / 0.3048**3
    pins = 43 * math.pi / 4 * 0.00635**2 * 0.085725 * 750  # of 1/4 by 3 3/8 in, beech
    assert default["burner_wet_mass"] - default["burner_mass"] == pytest.approx(0.11 * dry + pins, rel=1e-6)
    steel = solved(pin_kind="steel")["burner_wet_mass"] - default["burner_wet_mass"]
    assert steel == pytest.approx(pins * (7850 / 750 - 1), rel=1e-6)  # 1.7 lb, more than twice the water
    assert default["burner_mass"] - default["burner_steel_mass"] == pytest.approx(dry, rel=1e-6)
    plastic = solved(refractory="phosphate_plastic")
    assert plastic["burner_wet_mass"] == pytest.approx(plastic["burner_mass"] + pins)


def test_the_no_go_gauge_is_a_twentieth_over_the_port():
    """1/4 in and 5 % are 0.2625, the next drill 17/64; 8 mm: 8.4 mm."""
    assert solved().part("pins").no_go_drill == "17/64 in"
    assert solved(units="mm", port_diameter="8 mm").part("pins").no_go_drill == "8.4 mm"


def test_what_must_not_be_built_or_lit_is_said():
    stop = read(solved(inlet="4"), "traveller-letter")
    assert all("DO NOT BUILD THIS" in page.text for page in stop)
    assert all("DO NOT BUILD" in page.text for page in read(solved(inlet="4"), "plates-letter"))
    cold = {"ambient_temperature": "20 degF", "jet_drill": "#52"}
    assert all("DO NOT BUILD" in page.text for page in read(solved(**cold), "plates-letter"))
    as_built = read(solved(**cold, slide_hole="15/32 in"), "plates-letter")  # it stands, and is cast no more
    assert not any("DO NOT" in page.text for page in as_built)
    never = next(result for result in (solved(**texts) for texts in WAYS.values())
                 if result.part("lighting").rate_W is None and result.part("lighting").way != "torch")  # fmt: skip
    card = " ".join(shape.text for shape in never.drawings["operating_card"].shapes if isinstance(shape, Text))
    assert "DO NOT LIGHT" in card and "do not light" in card and "lit torch" not in card
    assert "do not light" in " ".join(map(words, read(never, "traveller-a4")))


def test_the_flow_test_of_a_dozen_on_house_gas_has_a_figure():
    """So little pressure over its ports that the tap said "too little to read"; half of them taped over it is read."""
    house = next(one for one in EXAMPLES if one.key == "crucible").metric
    result = solved(**{**house, "batch_size": "12", "gas_pressure": "20 mbar", "firing_rate": "15 kW"})
    second = words(read(result, "traveller-a4")[-1])
    assert result.part("air_proof").alone_Pa is None
    told = (
        r"air alone, 13 of 26 ports shut with tape: the mix pipe's tap (0\.\d\d) mbar to (0\.\d\d) mbar, as the others"
    )
    assert re.search(told, second)
    assert "pull all tape off before the first fire" in second and "too little to read" not in second
    assert "tape" not in words(read(solved(), "traveller-a4")[-1])


def test_nobody_signs_on_a_day_off():
    """The wait of the air-dry ends on a Saturday for some of a dozen; it is weighed on a day of work."""
    shop = {"batch_size": "12", "moulds": "2", "oven_places": "3", "work_week": "5", "start_date": "2026-03-02"}
    result = solved(**shop)
    ends = [result.part("batch").ends(number)["air"][1] for number in range(1, 13)]
    assert any(end.weekday() >= 5 for end in ends)
    text = " ".join(map(words, read(result, "traveller-letter")))
    assert len(re.findall(r"Air-dry: weighed twice [MTWF]\w\w \d\d", text)) == 12


def test_no_test_fire_is_booked_of_what_must_not_be_lit():
    """48 min "by its lighting card" stood on the wall beside DO NOT LIGHT, and a day for it in the calendar file."""
    batch = {"batch_size": "3", "start_date": "2026-03-02"}
    for texts, lit in (({}, True), ({"inlet": "4"}, False)):
        result = solved(**batch, **texts)
        assert (result.worst != "stop") is lit
        wall, *others = map(words, read(result, "traveller-letter"))
        assert ("by its lighting card" in wall) is lit
        assert wall.count("test fire of") == (3 if lit else 0) and wall.count("neither first fire nor test fire") == (
            not lit
        )
        plate = [shape.text for shape in result.drawings["plate"].shapes if isinstance(shape, Text)]
        assert plate.count("none: do not light") == (0 if lit else 2)
        assert any("kBtu/h" in text or "psi" in text for text in plate) is lit
        signed = [page for page in others if "Sign-off" in page]
        assert len(signed) == 3 and all(("Test fire passed do not light" in page) is not lit for page in signed)
        assert all(("First fire, all heats do not light" in page) is not lit for page in signed)
        for size, events in (("1", 1), ("3", 3)):
            days = solved(**batch | texts | {"batch_size": size})
            booked = FILES["calendar-ics"][2](days, to_link(days.design)).decode()
            assert booked.count("UID:test") == (events if lit else 0) and (booked.count("UID:fire") >= events) is lit


@pytest.mark.parametrize("texts", [{}, {"units": "mm", "port_diameter": "8 mm", "rows": "3"}])
def test_the_customer_s_two_papers_and_the_train_tell_the_same_pressure(texts):
    """The plate had 4.83 psi and 100 kBtu/h at high fire, the card 4.8 and 99.7; the gauges "read" 0.715 psi at a low
    fire that the card sets by 0.725."""
    result = solved(**texts)
    high, low = result.part("fires").high, result.part("fires").low
    plate = [shape.text for shape in result.drawings["plate"].shapes if isinstance(shape, Text)]
    card = [shape.text for shape in result.drawings["operating_card"].shapes if isinstance(shape, Text)]
    for value, dimension in ((high.rate_W, "power"), (high.gas_Pa, "gas_pressure")):
        inches, metric = (units.show(value, dimension, system) for system in ("in", "mm"))
        assert inches.replace("₂", "2") in plate and any(metric in text for text in plate)
        assert any(inches.replace("₂", "2") in text and metric in text for text in card), (inches, metric)
    (jet,) = (part.slots for part in result.part("train").parts if part.key == "jet_gauge")
    assert (jet["low"], jet["high"]) == (pytest.approx(low.gas_Pa), pytest.approx(high.gas_Pa))


def test_the_plate_tells_air_as_the_blower_brings_it_and_in_what_state():
    """At 9000 ft it told 17.0 cfm of sea level, where the blower's check said 23.8."""
    high = solved(altitude="9000 ft", ambient_temperature="60 degF")
    plate = [shape.text for shape in high.drawings["plate"].shapes if isinstance(shape, Text)]
    flow = re.search(r"asks for (.* cfm) of air", high.checks["blower"].text)[1]
    assert f"{flow}, 60 °F" in plate and {"9000 ft", "2740 m"} <= {*plate} and flow != high.answers["air_flow"].brief


def test_plate_and_card_are_in_both_measures(default):
    plate, card = read(default, "plates-a4")
    for said in ("99.7 kBtu/h", "29.2 kW", "propane", "#52", "1.61 mm", "3000 °F", "1649 °C", "NOT CERTIFIED",
                 "local authority decides"):  # fmt: skip
        assert said in words(plate), said
    for said in ("LIGHT", "LOW", "HIGH", "kBtu/h = ", " kW", "psi = ", " bar", "Smell of gas", "Gas shut"):
        assert said in words(card), said
    same = {setting.key: setting.default for setting in SETTINGS if setting.metric}
    metric = solved(**{**same, "units": "mm", "jet_drill": "#52"}).drawings["plate"].shapes
    assert [shape.text for shape in metric if isinstance(shape, Text)] == [
        shape.text for shape in default.drawings["plate"].shapes if isinstance(shape, Text)
    ]


def written(result, name):
    return " ".join(shape.text for shape in result.drawings[name].shapes if isinstance(shape, Text))


def told(result):
    return {row[0]: row[1] for row in result.tables["lighting_card"].rows}


def test_plate_and_cards_tell_one_low_fire(default):
    """The plate said 40 kBtu/h where gauge and card make 40.3, and the card rounded 99.7 up to 100."""
    assert "Low fire, gross 40.3 kBtu/h 11.8 kW" in written(default, "plate")
    assert "LOW 40.3 kBtu/h" in written(default, "operating_card")
    assert ": 99.7 kBtu/h." in told(default)["High fire"] and "HIGH 99.7 kBtu/h" in written(default, "operating_card")
    assert "from LOW too" in told(default)["Shut down"]


def test_a_burner_that_is_not_turned_down_has_no_low_fire():
    r = solved(firing_rate="64 kBtu/h", altitude="2961 ft")
    assert "Not to low fire" in told(r)["The walls glow"] and "do not turn down" in written(r, "operating_card")
    assert "Low fire, gross none: do not turn down" in written(r, "plate") and "25.6" not in written(r, "plate")
    assert "LOW" not in told(r)["Shut down"] + told(r)["Air or power fails"]
    # No stage goes on to work, and no heat of the calendar is booked for one.
    stages = [[row[0] for row in one.tables["drying"].rows] for one in (solved(), r)]
    assert "To work" in stages[0] and stages[1] == stages[0][: len(stages[1])] and "To work" not in stages[1]
    assert len(r.part("calendar").work.heats) == r["first_fire_heats"] == solved()["first_fire_heats"] - 1


def test_low_fire_of_100_percent_is_not_turned_up():
    """Four steps lead to it; a fifth led to where it stood."""
    r = solved(low_fire="100 %", firing_rate="64 kBtu/h")
    assert told(r)["High fire"].startswith("Low fire is high fire here: stay.")
    assert "to HIGH no turn, it is the same" in written(r, "operating_card")


def test_a_reader_of_millimetres_is_told_the_limits_of_the_union(default):
    metric = solved(units="mm")
    for key, said in (("lighting_air", "100 ppm for 15 min and 20 ppm over 8 h"), ("carbon_monoxide", "EU 20 ppm")):
        assert said in metric.checks[key].text and " EU " not in default.checks[key].text


@pytest.mark.parametrize("name", PLATES)
def test_cad_finds_what_is_cut_and_what_is_engraved(default, name):
    document = dxf_of(FILES[f"{name}-dxf"][2](default, "#"))
    assert not document.audit().errors
    found = [(entity.dxftype(), entity.dxf.layer) for entity in document.modelspace()]
    assert {layer for _, layer in found} == {"CUT", "ENGRAVE"}
    assert all(layer == "ENGRAVE" for kind, layer in found if kind == "TEXT")
    assert sum(kind == "CIRCLE" for kind, _ in found) == 4


@pytest.mark.parametrize("texts", [*FAR_APART.values(), *KNOWN_GOOD.values(), *WAYS.values()])
def test_every_word_stands_on_its_plate_and_on_no_other(texts):
    result = solved(**texts)
    for name in PLATES:
        shapes = result.drawings[name].shapes
        outline = shape_box(shapes[0])
        boxes = [shape_box(shape) for shape in shapes if isinstance(shape, Text)]
        for box in boxes:
            assert outline[0] + 5 < box[0] and box[2] < outline[2] - 5 and outline[1] + 5 < box[1], name
        for i, a in enumerate(boxes):
            for b in boxes[i + 1 :]:
                assert a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] + 0.01 or b[3] <= a[1] + 0.01, name


def test_damper_and_gas_are_told_at_every_fire_on_every_paper(default):
    """At low and high fire as well: no share of an area, which no hand can set, and no blank by the design."""
    card = " ".join(do for _, do, _ in default.tables["lighting_card"].rows)
    record = " ".join(map(words, read(default, "sheet-letter")[-1:]))
    traveller_text = " ".join(map(words, read(default, "traveller-letter")))
    for mark, gas in (("lighting_mark", "0.85 psi"), ("damper_mark_low", "0.725 psi"), ("damper_mark_high", "4.8 psi")):
        for text in (card, record, traveller_text):
            assert default[mark] in text and gas in text, mark
    for _, _, gas, damper in fires(default):
        assert gas != "-" and "drill" in damper and "%" not in damper


def test_the_damper_s_marks_leave_as_much_open_as_is_asked(default):
    """Bore of 1-1/2 in pipe 1.610 in; a hole of 29/64 in to light at, and at low and high fire a gap beside it."""
    marks, bore = default.part("damper_marks"), 1.610 * 0.0254
    hole = default.part("lighting_slide").size_m
    for gap, share in ((marks.low_m, default["damper_open_low"]), (marks.high_m, default["damper_open_high"])):
        assert open_share(bore, gap, hole) == pytest.approx(share, rel=0.03)  # as near as drills are sold
    wide = solved(blower_shutoff_pressure="0.7 inH2O", blower_free_flow="80 cfm")
    assert wide["damper_mark_high"].startswith("slide open by") and "drill" not in wide["damper_mark_high"]
    assert solved(inlet="1", blower_shutoff_pressure="0.2 inH2O")["damper_mark_high"].endswith("too weak")


def test_the_gauge_s_cock_is_shut_on_the_card_before_high_fire(default):
    """3 psi of scale, 5 psi at high fire; where low fire is nearly high fire that gauge reads both, and the
    small one is to light by alone."""
    rows = {when: do for when, do, _ in default.tables["lighting_card"].rows}
    assert "the small gauge's cock shut (it ends at 3 psi), 4.8 psi" in rows["High fire"]
    assert "the small gauge's cock open" in rows["Set"]
    plate = " ".join(shape.text for shape in default.drawings["operating_card"].shapes if isinstance(shape, Text))
    assert "purge again for 1 min." in plate  # as long as the first time
    assert "The small gauge's cock" in plate and "shut before more than 3 psi" in plate
    assert "gap " in plate and "hole " in plate
    # the order of the valves is the one on the lighting card, and the torch stays as it says
    assert "AIR FIRST" in rows["The walls glow"] and "to LOW air first, then gas;" in plate
    assert "In 3 steps" in rows["High fire"] and "GAS FIRST" in rows["High fire"]
    assert "to HIGH gas first, then air, by the lighting card's 3 steps, a minute at each" in plate
    assert "A lit torch on a stand at the ports before any gas, and there until the walls glow." in plate
    near = {when: do for when, do, _ in solved(low_fire="95 %").tables["lighting_card"].rows}
    assert "gauge's cock open" in near["Set"] and "gauge's cock" not in near["High fire"]
    assert "the small gauge's cock shut (it ends at 3 psi)" in near["The walls glow"]
    assert near["High fire"].startswith("One valve at a time")


def test_the_operating_card_of_a_design_with_any_stop_tells_no_way_to_light_it():
    """It is fixed to the burner, where the margin with its DO NOT BUILD is cut away."""
    stopped = solved(baffle_holes="4")
    assert stopped.worst == "stop" and stopped.part("lighting_slide").rate_W
    words = " ".join(shape.text for shape in stopped.drawings["operating_card"].shapes if isinstance(shape, Text))
    assert "DO NOT LIGHT" in words and "Damper to LIGHT" not in words


def test_a_round_body_has_its_own_lines_and_the_notes_of_its_mould():
    """No window that springs and no feet of a baffle; how the layers of its mould are split and strapped."""
    round_body = {"body_kind": "pipe", "body_length": "6 in", "body_width": "6 in", "pattern": "hexagonal", "rows": "6"}
    result = solved(**{**round_body, "ports_per_row": "6", "port_diameter": "5/16 in"})
    both = pages(traveller.pdf(result, "#v=2", "letter"))
    words = " ".join(" ".join(page.text for page in both).split())
    assert len(both) == 2 and "Discs square to the pipe" in words and "Window as wide" not in words
    assert "Window, across 4 3/4 in" in words and "Window length" not in words and "feet" not in words
    assert "Mould layer: saw it in two first" in words and "a strap round all of it" in words
    box = " ".join(" ".join(page.text for page in pages(traveller.pdf(solved(), "#v=2", "a4"))).split())
    assert "Window as wide" in box and "Mould layer" not in box


@pytest.mark.parametrize("name", [*FAR_APART, *KNOWN_GOOD])
def test_each_burner_has_two_pages_on_any_paper(name):
    texts = {**FAR_APART, **KNOWN_GOOD}[name]
    one, two = (solved(**{**texts, "batch_size": count}) for count in ("1", "2"))
    for paper in ("letter", "a4"):
        assert len(read(one, f"traveller-{paper}")) == 2
    batch = [page for page in read(two, "traveller-letter") if "Burner" not in page.text.partition("\n")[0]]
    assert len(read(two, "traveller-letter")) == len(batch) + 4
