"""Millimetres are no dead end: nothing that a reader of millimetres meets is told in inches, pounds, psi or °F."""

import io
import re
import sys
from pathlib import Path

import pypdfium2
import pytest

from burnercalc import catalogue, files, on_page, sheet, units
from burnercalc.catalogue.glossary import GLOSSARY
from burnercalc.design import Design
from burnercalc.errors import InputErrors
from burnercalc.find.have import KINDS, METRIC, read_have
from burnercalc.jobs import JOBS
from burnercalc.link import to_link
from burnercalc.result import solve
from burnercalc.settings import BY_KEY, SETTINGS

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "site" / "make"))
import words

INCHES = re.compile(
    r"(?<![\w/.])(psig?|inH2O|in H₂O|°F|degF|ft|lbs?|k?Btu|cfm|cfh|inch(es)?|gal(lons?)?|oz|pounds?|therms?)(?!\w)"
    r"|\d\"|\d'|(?<!weigh)(?<![\d.])( ?[\d/.-]*\d) in(?=[ .,;:)²³]|$)(?! the oven)"
)
# Names of what is sold, where the metric one stands beside; plates and cards that fitters of any tape read say both.
NAMES = re.compile(r"[\d/-]+ in, DN \d+|\d+ lb, \d+ kg|\bfeet [\d.]+ mm above|\bDN \d+ is [\d/-]+ in pipe")
BOTH = ("plate", "operating_card")
PAPERS = ("sheet-a4", "traveller-a4")
METRIC_JOBS = [job for job in JOBS if job.metric]


def inches_in(text):
    return [found.group() for found in INCHES.finditer(NAMES.sub("", text))]


def strings(thing, where=""):
    if isinstance(thing, str):
        yield where, thing
    elif isinstance(thing, dict):
        for key, inside in thing.items():
            yield from strings(inside, f"{where}.{key}")
    elif isinstance(thing, (list, tuple)):
        for inside in thing:
            yield from strings(inside, where)


def found_in(thing):
    return {where: (hit, text[:120]) for where, text in strings(thing) for hit in inches_in(text)}


@pytest.mark.parametrize(
    "text", ["5 psi", '3"', "1/16 in", "14 in long", "70 degF", "250 °F (120 °C)", "8 lb", "7 inH2O", "a cfm", "1 in."]
)
def test_inches_are_found(text):
    assert inches_in(text)
    assert not inches_in("2 burners in the oven, 1 mm in 3 days, DN 40; 13:47 weigh 1 in the oven")


@pytest.mark.parametrize("fuel", [value for value, _ in BY_KEY["fuel"].choices])
@pytest.mark.parametrize("job", METRIC_JOBS, ids=lambda job: job.key)
def test_no_answer_check_table_chart_or_drawing_is_told_in_inches(job, fuel):
    result = solve(Design.from_texts({**job.texts("mm", fuel), "fuel": fuel}))
    shown = on_page.whole(result, (*(key for key in catalogue.DRAWINGS if key not in BOTH), *catalogue.CHARTS))
    assert found_in({"page": shown, "data": sheet.as_data(result), "text": sheet.as_text(result, whole=True)}) == {}


def test_no_paper_is_written_in_inches():
    result = solve(Design.from_texts(METRIC_JOBS[0].metric))
    for key in PAPERS:
        _, _, write = files.FILES[key]
        document = pypdfium2.PdfDocument(io.BytesIO(write(result, to_link(result.design))))
        text = " ".join(page.get_textpage().get_text_range() for page in document)
        assert len(text) > 1000 and inches_in(text) == [], key


def test_no_help_or_word_of_the_page_is_told_in_inches():
    helps = {s.key: (s.label, s.help) for s in SETTINGS}
    page = (words.DANGERS, words.WALK, words.UNKNOWNS, words.TRUST)
    said = {where: units.in_measures(text, "mm") for where, text in strings((helps, page))}
    said |= {word: meaning for word, (_, meaning) in GLOSSARY.items()}
    assert found_in(said) == {}


HOSTILE = (
    *(
        "",
        "x",
        "-1",
        "0",
        "7",
        "3.5",
        "1,5",
        "nan",
        "1/0",
        "a, b",
        "99 bar",
        "1e9 m",
        "1e-9 m",
        "1 mm",
        "200 mm",
        "9 m",
    ),
    *("5000 degC", "-300 degC", "1 Pa", "9999 mbar", "1e6 kW", "1 W", "500 %", "-5 %", "0.2", "1e7", "999 h", "10 kg"),
    *("1 m2", "1e6 m3/h", "9 m3/h", "1/kg", "0.5 in", "80 psi", "ply 7", "DN 41", "none", "2026-13-40", "5 mm 6 mm"),
    *("dense_castable", "dense_castable 9999 mm", "1e6 kg/m3", "maybe"),
)


@pytest.mark.parametrize("setting", [s for s in SETTINGS if s.key != "units"], ids=lambda s: s.key)
def test_no_refusal_is_told_in_inches_and_each_offer_works(setting):
    for text in HOSTILE:
        try:
            Design.from_texts({"units": "mm", setting.key: text})
        except InputErrors as refused:
            for error in refused.errors:
                assert inches_in(f"{error.rule}; {error.nearest}") == [], (text, error)
                offers = filter(None, error.nearest.split(" or ")) if error.field == setting.key else ()
                for offer in offers:
                    Design.from_texts({"units": "mm", setting.key: offer})


@pytest.mark.parametrize("kind", KINDS)
def test_no_refusal_of_what_i_have_is_told_in_inches_or_by_a_key(kind):
    for text in (
        *(text for text in HOSTILE if "in" not in text),
        "0 mm, 1 m",
        "1 to 99 bar",
        "3 to 1 bar",
        "2 x 2 x 9 mm, 3 m",
        "9 kg x x",
        "x 0",
    ):
        try:
            read_have(f"{kind}: {text}\nbuy: all", "mm")
        except InputErrors as refused:
            for error in refused.errors:
                assert inches_in(f"{error.rule}; {error.nearest}") == [], (text, error)
                assert not any(key in error.rule.split() or f"({key})" in error.rule for key in BY_KEY if "_" in key)
    assert all(inches_in(example) == [] for example in METRIC.values())
