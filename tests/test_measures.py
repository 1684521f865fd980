"""One measure for a reader: no inch where millimetres are set, no millimetre where inches are, save what is named."""

import json
import re
from urllib.parse import parse_qsl

import pypdfium2
import pytest
from designs import FAR_APART, solved

from burnercalc import Design, InputErrors, on_page, sheet, solve, units
from burnercalc.design import as_shown, parse_setting
from burnercalc.drawing.shapes import Text
from burnercalc.examples import EXAMPLES
from burnercalc.files import FILES
from burnercalc.jobs import JOBS
from burnercalc.link import EARLIER_DEFAULTS, EARLIER_METRIC, from_link, to_link
from burnercalc.settings import BY_KEY, SETTINGS
from burnercalc.sold import sold_sizes_m
from burnercalc.worker import handle

INCH = re.compile(
    r"(?<![\w.])[0-9][0-9./ -]*(?:in|ft|lbs?|oz|gal|psig?|kBtu|Btu|cfm|cfh|therms?|°F|degF|inH2O)(?!\w)"
    r"(?! (?:the|general) )"  # from 9 in the morning, NFPA 86 in general words
    r"|in H₂O|/(?:lb|ft|gal|therm|in²)\b|°F|degF|\b(?:psig?|kBtu|Btu|cfm|cfh|NPS|NPT|in²|ft²|ft³|in³)(?!\w)"
    r"|\binch(?:es)?\b|[0-9] (?:feet|pounds?)\b|\b[0-9]+/(?:2|4|8|16|32|64)\b|[0-9][\"”]|#[0-9]+"
)
METRIC = re.compile(
    r"(?<![\w.])[0-9][0-9.,/ -]*(?:mm|cm|m|m[²³23]|kg|g|kW|W|m?bar|k?Pa|°C|degC|K|L|[Mk]J|kWh|m/s|m³/h)(?![\w²³])"
    r"|\b(?:mm|cm|DN|mbar|kW|MJ|millimetres?|metres?|litres?)\b|°C"
)
# What may hold the other measure, and why.
BOTH = {
    "plate and card of the burner, read by whoever has it": r"drawing (plate|operating_card)\b|file plates",
    "boards and plywood are named as sold": r"(field|shown|choice) mould_(board|base)|table (mould|boards)\.stock",
    "pipe is sold by both names": r"(field|shown|choice) (inlet|mix_pipe|aspirated_throat)\b",
    "cylinders are sold by pounds": r"(shown|choice) cylinder\b",
    "the layers' own fields show it": r"field lining",
    "the choice of units": r"(choice|help|shown) (units|sizes)\b",
    "how it may be typed": r"help (blower_curve|jet_drill|fuel_price)\b",
}
IN_INCHES = {
    "drills of every family are offered": r"table jet_drills\.drill",
    "a column for saws with a metric fence": r"table (cut_list|mould)\.millimetres",
    "the bar that checks a printer": r"(field|shown|help) print_scale",
    "a file for a machine says its own unit": r"drawing (pin_guide|drilled_base)\b",
    "a limit of the law in its own measure": r"table care\.caution",
    "power of a plug is in watts": r"table burner_kinds\.mains_power",
}
# Names of what is sold and of threads, the column for saws, and the law's limit, wherever they are printed.
NAMES = re.compile(
    r"\bply 3/4\b|[0-9-/]+ in, DN [0-9]+|100 lb, 45 kg|Thickness mm Mass|50 micrograms a cubic metre"
    r"|\b(?:Rp|R|G)[ \u00a0][0-9]+(?:-[0-9]+)?(?:/[0-9]+)?|(?:W 21\.8 x )?\b1/14\b"  # threads, by their standards
    r"|\bin: (?=male|female|as)"  # where gas comes in
)


def said(result):
    """(where, text) of everything that is said of a design."""
    system = result.design.units
    for answer in result.answers.values():
        yield f"answer {answer.key}", f"{answer.label}: {sheet.shown(answer, system)}"
    for check in result.checks.values():
        yield f"check {check.key}", f"{check.label}: {check.text}"
    for table in result.tables.values():
        yield f"table {table.key}", table.title
        for column in table.columns:
            yield f"table {table.key}.{column.key}", column.label
        for row in table.rows:
            for cell, column in zip(row, table.columns):
                yield f"table {table.key}.{column.key}", units.show(cell, column.dimension, system)
    for chart in result.charts.values():
        yield f"chart {chart.key}", f"{chart.title} {chart.sentence}"
        yield from ((f"chart {chart.key}", one.text) for one in chart.drawing().shapes if isinstance(one, Text))
    for key, drawing in result.drawings.items():
        yield f"drawing {key}", f"{drawing.title} {drawing.description}"
        yield from ((f"drawing {key}", one.text) for one in drawing.shapes if isinstance(one, Text))
    yield from ((f"shown {s.key}", result.design.show(s.key)) for s in SETTINGS)
    reply = json.loads(handle(json.dumps({"kind": "solve", "settings": result.design.texts, "figures": []})))
    for key, field in reply["fields"].items():
        yield f"field {key}", f"{field['text']} {field['unit']} {field.get('range', '')}"


def printed(result):
    """The lines of what is printed."""
    link = to_link(result.design, "https://burner.example/")
    for name in ("sheet-a4", "traveller-a4", "lighting-card-a4", "templates-a4"):
        for page in pypdfium2.PdfDocument(FILES[name][2](result, link)):
            for line in page.get_textpage().get_text_range().splitlines():
                # A template's bar is 100 mm and 4 in, and a link is no text.
                if "#v=" not in line and line not in ("100 mm", "4 in", "100 mm up"):
                    yield f"file {name}", line.replace("H2O", "H₂O")


def found(texts, pattern, allowed):
    allowed = re.compile("|".join(allowed.values()) or "(?!)")
    texts = ((where, NAMES.sub("", text)) for where, text in texts if not allowed.match(where))
    return [f"{where} | {text}" for where, text in texts if pattern.search(text)]


STRESSED = {
    name: {**FAR_APART[name], "units": "mm"}
    for name in ("a tank in the hills", "no baffle, a blend", "plates, a batch", "fed at the end, starved")
}
METRES = {
    **{f"{one.key} {kind}": one.metric for kind, all in (("example", EXAMPLES), ("job", JOBS)) for one in all},
    "default": {},
    **{name: {k: t for k, t in texts.items() if not INCH.search(t)} for name, texts in STRESSED.items()},
}


@pytest.mark.parametrize("name", METRES)
def test_no_inch_is_said_in_millimetres(name):
    result = solved(**{**METRES[name], "units": "mm"})
    assert found(said(result), INCH, BOTH) == []


@pytest.mark.parametrize("name", ["default", "smith, inches", "house gas, metric"])
def test_no_millimetre_is_said_in_inches(name):
    texts = {key: text for key, text in FAR_APART[name].items() if not METRIC.search(text)}
    result = solved(**{**texts, "units": "in"})
    assert found(said(result), METRIC, {**BOTH, **IN_INCHES}) == []


@pytest.mark.parametrize("system, pattern", [("mm", INCH), ("in", METRIC)])
def test_paper_has_the_reader_s_measure(system, pattern):
    lines = printed(solved(units=system, start_date="2026-03-02"))
    assert found(lines, pattern, {}) == []


def test_what_explains_settings_and_numbers_is_said_in_the_reader_s_measure():
    """Each text holds both, `[1 in|25 mm]`, and shows one."""
    answers = solved(units="mm").answers.values()
    texts = [*((f"answer {a.key}", text) for a in answers for text in (a.label, a.meaning, a.formula, a.source)),
             *((f"help {s.key}", units.in_measures(s.help, "mm")) for s in SETTINGS),
             *((f"choice {s.key}", label) for s in SETTINGS for _, label in s.choices)]  # fmt: skip
    assert found(texts, INCH, BOTH) == []
    both = units.in_both_measures(BY_KEY["gas_pressure"].help)
    assert "7 inH2O (20 mbar)" in both and "|" not in units.in_measures(BY_KEY["gas_pressure"].help, "in")


def test_the_default_of_an_inch_shop_reads_in_kilograms_and_metres():
    """0.90 a pound is 1.98 a kilogram; what was typed stays as it was typed."""
    metric = Design().read_in("mm")
    assert (metric.show("fuel_price"), metric.show("price_steel")) == ("1.98/kg", "4.41/kg")
    assert metric.show("stock_lengths").startswith("0.305 m, 0.61 m")
    assert metric.show("nipple_stock").startswith("76.2 mm 8.00, 102 mm 9.00")
    assert metric.changed({"fuel": "natural_gas"}).show("fuel_price") == "0.0512/kWh"  # no therm; 1.50 / 29.307 kWh
    assert metric.as_typed("lining") == "ifb_26 63.5 mm, blanket_8lb 25.4 mm"
    assert Design.from_texts({"units": "mm", "fuel_price": "1.00/lb"}).show("fuel_price") == "1.00/lb"
    for key in ("fuel_price", "price_steel", "stock_lengths", "nipple_stock", "lining"):
        Design.from_texts({"units": "mm", key: metric.as_typed(key)})  # can be read again


UNITS_DIFFER = [s for s in SETTINGS if len(set(units.DIMENSIONS.get(s.dimension, ("", ""))[1:])) == 2]
LISTS = ("lengths", "offers", "price_by_mass", "fuel_price", "lining")


def test_every_default_with_a_measure_has_one_in_each():
    """Of the same size, nearly: what a shop of the other tape has for it; and it reads as it is declared. Pins are no
    nearer than 6 mm, whose flame could run back by its card, or 8: the metric face is of fewer and larger ports in a
    deeper block, in all as large."""
    metric = Design.from_texts({"units": "mm"})
    fields = on_page.whole(solve(metric), ())["fields"]
    assert solve(metric)["port_area"] == pytest.approx(solved()["port_area"], rel=0.05)
    for setting in UNITS_DIFFER:
        if setting.default in setting.words:
            continue
        text = setting.default_in("mm")
        assert text.endswith(f" {units.shown_unit(as_shown(setting, metric.values()).dimension, 'mm')}"), setting.key
        # A whole millimetre for 1/32 in; 7 in of water are 17.4 mbar, where houses have 20.
        near = {"port_position_tolerance": 0.3, "line_pressure": 0.15}.get(setting.key, 0.1)
        if setting.key in ("port_diameter", "edge_margin", "block_thickness", "setback"):
            near = 0.27
        assert parse_setting(setting, text) == pytest.approx(parse_setting(setting, setting.default), rel=near)
        assert text.startswith(f"{fields[setting.key]['text']} "), setting.key
    assert all(s.metric for s in SETTINGS if s.dimension in LISTS)
    assert metric.texts == {"units": "mm"} and solve(metric).worst == "good"


def test_a_metric_bench_has_what_is_sold_by_the_millimetre():
    metric = Design.from_texts({"units": "mm"})
    for key in ("wall", "body_width", "body_depth", "port_diameter", "pin_stock_length", "corner_drill",
                "baffle_thickness", "baffle_hole_diameter"):  # fmt: skip
        assert metric.value(key) in [pytest.approx(size) for size in sold_sizes_m(metric, key)], key
    assert "mm" in metric.mould_board and "mm" in metric.mould_base
    assert metric.show("nipple_stock").startswith("80 mm 8.00, 100 mm 9.00, 150 mm")


STOCK = {"nipple_stock": "100 mm 9, 300 mm 18", "body_width": "3 1/2 in", "rows": "4"}


def test_what_is_begun_stays_in_other_measures_and_what_is_not_told_becomes_that_of_another_shop():
    inches = Design.from_texts(STOCK)
    assert inches.changed({"units": "mm"}) == inches.read_in("mm")
    metric = inches.changed({"sizes": "mm", "units": "mm"})
    assert all(metric.value(key) == inches.value(key) and metric.text(key) == text for key, text in STOCK.items())
    assert (inches.text("kerf"), metric.text("kerf")) == ("1/16 in", "1.5 mm")
    assert metric.changed({"units": "in", "sizes": "in"}) == inches
    assert from_link(to_link(metric)) == (metric, [])


def test_what_is_mine_stays_at_what_was_seen():
    mine = {"mine": "kerf,fuel_price,body_depth,rows,gas_pressure"}
    page = json.loads(handle(json.dumps({"kind": "solve", "settings": {**STOCK, **mine, "units": "mm", "sizes": "mm"},
                                         "before": {**STOCK, **mine}})))  # fmt: skip
    metric = Design.from_texts({key: text for key, text in page["texts"].items() if key != "mine"})
    before = Design.from_texts(STOCK)
    assert all(metric.value(key) == before.value(key) for key in mine["mine"].split(","))
    assert metric.text("corner_drill") == "10 mm"
    assert page["brought"] == "What was not set has metric sizes now, so the numbers differ a little."
    assert (
        page["texts"]["kerf"] == "1/16 in" and page["texts"]["mine"] == "body_depth,rows,gas_pressure,fuel_price,kerf"
    )


def test_two_designs_are_compared_as_they_are():
    """Shown in the reader's measures, the other one is not moved by them."""
    near = {"kind": "compare", "settings": {"port_diameter": "6 mm"}, "other": {"port_diameter": "6.001 mm"}}
    rows = json.loads(handle(json.dumps(near)))["settings"]
    assert [row["label"] for row in rows] == ["Port diameter"] and rows[0]["mine"] != rows[0]["other"]  # both 15/64 in
    asked = {"kind": "compare", "settings": {}, "other": {"firing_rate": "auto"}}
    reply = json.loads(handle(json.dumps(asked)))
    rate = next(row for row in reply["answers"] if row["label"] == "Firing rate of this burner")
    auto = {"label": "Firing rate", "mine": rate["mine"], "other": f"auto, {rate['other']}"}  # it said "auto" alone
    assert reply["settings"] == [auto] and rate["mine"] == "100 kBtu/h"
    asked = {"kind": "compare", "settings": {"units": "mm", "rows": "4"}, "other": {}}
    reply = json.loads(handle(json.dumps(asked)))
    shown = {row["label"]: row["other"] for row in reply["settings"]}
    assert shown["Saw cut"] == "1.59 mm" and shown["Body length"] == "228.6 mm"
    assert shown.pop("Shop sizes") == "inch"
    assert [text for text in shown.values() if INCH.search(NAMES.sub("", text))] == []


@pytest.mark.parametrize("more", ["", "&rows=4&kerf=2mm", "&fuel=natural_gas"])
def test_a_metric_link_of_version_1_means_the_inch_stock_it_was_made_with(more):
    old, ignored = from_link("#v=1&units=mm" + more)
    told = {key for key, _ in parse_qsl(more)}
    assert not ignored and from_link(to_link(old)) == (old, [])
    for setting in SETTINGS:
        if setting.metric and setting.key not in {*told, "sizes"}:
            text = EARLIER_DEFAULTS["1"].get(setting.key, EARLIER_METRIC["1"].get(setting.key, setting.default))
            assert old.value(setting.key) == parse_setting(setting, text), setting.key
    assert from_link("#v=1" + more)[0].texts.keys() <= {*told, *EARLIER_DEFAULTS["1"]}


@pytest.mark.parametrize("system, lining, pipe", [
    ("in", "2 1/2 in soft brick 26, 1 in blanket 8 lb", "1-1/2 in, DN 40"),
    ("mm", "64 mm soft brick 26, 25 mm blanket 128", "1-1/2 in, DN 40")])  # fmt: skip
def test_what_a_number_is_worked_out_from_is_said_in_words(system, lining, pipe):
    fields = on_page.whole(solved(units=system), ())["fields"]
    assert (fields["lining"]["shown"], fields["mix_pipe"]["shown"]) == (lining, pipe)
    for key, field in fields.items():
        said = field.get("shown", field["text"])
        assert "_" not in said and (system == "in" or not INCH.search(NAMES.sub("", said)) or "drill" in key), key


def test_a_low_pressure_of_gas_is_read_in_mbar():
    """Up to 1 bar: with 0.1 bar as the limit one card told 99.6 mbar, 0.1 bar and 0.188 bar in a sentence."""
    told = {9.9e3: "99 mbar", 1.88e4: "188 mbar", 9.9e4: "990 mbar", 1e5: "1 bar", 2.5e5: "2.5 bar"}
    assert {value: units.show(value, "gas_pressure", "mm") for value in told} == told
    high = " ".join(do for _, do, _ in solve(Design.from_texts({"units": "mm"})).tables["lighting_card"].rows)
    assert "360 mbar before the jet" in high and not re.search(r"[0-9] bar\b", high)
    assert units.show(9900.0, "gas_pressure", "mm", exact=True) == "0.099 bar"
    metric = solved(units="mm")
    field = on_page.whole(metric, ())["fields"]["gas_pressure"]  # what is set stands in the measure of its answer
    assert (field["text"], field["unit"]) == ("360", "mbar") and "360 mbar" in metric.checks["jet"].text
    asked = {"kind": "solve", "settings": {"units": "mm", "gas_pressure": "400 mbar"}, "figures": {}}
    assert json.loads(handle(json.dumps(asked)))["fields"]["gas_pressure"]["text"] == "400"
    assert sheet.shown(metric.answers["lighting_gas_pressure"], "mm").rstrip(")").endswith(" mbar")


@pytest.mark.parametrize("psi, drill", [("5", "1.6 mm"), ("3", "1.8 mm"), ("60", "0.8 mm")])
def test_a_jet_in_millimetres_is_drilled_by_tenths_and_below_one_by_half_of_them(psi, drill):
    """1.60 mm at 5 psi; at 3 psi wider by the fourth root, 1.82; at 60 psi, choked, 0.79."""
    r = solved(units="mm", gas_pressure=f"{psi} psi")
    assert r["jet"] == drill
    assert all(row[0] == "metric" for row in r.tables["jet_drills"].rows)


REFUSED = (
    {"setback": "80 mm"},
    {"edge_margin": "90 mm"},
    {"body_length": "5 mm"},
    {"inlet_length": "3 m"},
    {"port_diameter": "60 mm"},
    {"chamber_temperature": "3000 degC"},
    {"nipple_stock": "30 mm 5"},
    {"stock_lengths": "100 mm"},
    {"opening_area": "4000 cm2"},
)


@pytest.mark.parametrize("texts", REFUSED, ids=lambda texts: next(iter(texts)))
def test_a_refusal_of_a_millimetre_design_offers_no_inch(texts):
    with pytest.raises(InputErrors) as refused:
        Design.from_texts({**EXAMPLES[0].metric, **texts})
    told = [f"{BY_KEY[error.field].label}: {error.rule} {error.nearest}" for error in refused.value.errors]
    assert [text for text in told if INCH.search(text)] == []
