"""Millimetres are no dead end: no refusal, help or word of the page is told in inches, pounds, psi or °F.

What a result says is read in test_measures.py.
"""

import re
import sys
from pathlib import Path

import pytest

from burnercalc import units
from burnercalc.catalogue.glossary import GLOSSARY
from burnercalc.design import Design
from burnercalc.errors import InputErrors
from burnercalc.find.have import KINDS, METRIC, read_have
from burnercalc.settings import BY_KEY, SETTINGS

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "site" / "make"))
import words

INCHES = re.compile(
    r"(?<![\w/.])(psig?|inH2O|in H₂O|°F|degF|ft|lbs?|k?Btu|cfm|cfh|inch(es)?|gal(lons?)?|oz|pounds?|therms?)(?!\w)"
    r"|\d\"|\d'|(?<!weigh)(?<![\d.])( ?[\d/.-]*\d) in(?=[ .,;:)²³]|$)(?! the oven)"
)
# Names of what is sold, where the metric one stands beside.
NAMES = re.compile(r"[\d/-]+ in, DN \d+|\d+ lb, \d+ kg|\bfeet [\d.]+ mm above|\bDN \d+ is [\d/-]+ in pipe")


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


def test_no_help_or_word_of_the_page_is_told_in_inches():
    helps = {s.key: (s.label, s.help) for s in SETTINGS if s.key != "sizes"}  # which tells both apart
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
