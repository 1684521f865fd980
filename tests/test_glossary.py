"""The words of the trade that people meet on the page are explained, in short plain sentences."""

import re

import pytest

from burnercalc import catalogue
from burnercalc.catalogue.glossary import FORMS, GLOSSARY, PATTERN
from burnercalc.settings import SETTINGS

MOST_WORDS = 25
# Words that a stranger does not know, written here by hand: each that is used must be explained.
TRADE = """
air switch, alumina, aspirated, baffle, bevel, burning velocity, castable, check valve, concentric, cross-bar, curing,
damper, dew point, DN, drip leg, excess air, firing cock, flashback, flue, gas train, gross, isolating cock, kerf,
lean, lift, lip, malleable, manometer, mix pipe, mould, needle valve, net, neutral, nipple, nominal, overhead,
oxidising, pilot, pitch, plenum, port loading, ppm, premixed, proud, purge, quenching, reducing, refractory,
relief holes, Reynolds number, rich, schedule 40, sloping gauge, service limit, setback, silica, tack, throat,
throughput, turndown, union, velocity head, velocity heads, wall gradient, web, Wobbe index
"""


def labels_and_helps():
    """Every label, help and meaning of the catalogue, as it is declared."""
    for s in SETTINGS:
        yield from (s.label, s.help, *(label for _, label in s.choices))
    for a in catalogue.ANSWERS.values():
        yield from (a.label, a.meaning, *a.cases.values())
    for c in catalogue.CHECKS.values():
        yield from (c.label, *c.cases.values())


def explained_in(text):
    """The words of the glossary that a text holds, each once, in the order they stand."""
    return dict.fromkeys(FORMS[found.lower()] for found in re.findall(PATTERN, text, re.IGNORECASE))


@pytest.mark.parametrize("word", [word.strip() for word in TRADE.split(",")])
def test_a_word_of_the_trade_is_explained_wherever_it_stands(word):
    told = next(iter(explained_in(word)), None)
    assert told, f"{word} is in no entry"
    for text in labels_and_helps():
        if re.search(rf"\b{word}\b", text, re.IGNORECASE):
            assert told in explained_in(text), text


def test_the_longer_word_wins_and_each_is_told_once():
    assert list(explained_in("Port loading of ports; each port, and Port Loading")) == ["port loading", "port"]
    assert list(explained_in("airport, slipway")) == []  # whole words only


def test_a_meaning_is_short_and_does_not_lean_on_itself():
    for word, (_, meaning) in GLOSSARY.items():
        assert meaning[0].isupper() and meaning.endswith("."), word
        assert all(len(part.split()) <= MOST_WORDS for part in re.split(r"[.:;] ", meaning)), word
        assert len(meaning) <= 130, word


def test_no_form_stands_twice():
    forms = [form.lower() for word, (others, _) in GLOSSARY.items() for form in (word, *others)]
    assert len(set(forms)) == len(forms)
    assert all(re.fullmatch(r"[a-z0-9 -]+", form) for form in forms)  # the page makes a pattern of them
