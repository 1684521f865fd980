"""What people read is said in short parts, and no name stands for two things."""

import dataclasses
import re
import sys
from collections.abc import Mapping
from pathlib import Path

import pytest

from burnercalc import catalogue
from burnercalc.catalogue.train import PARTS
from burnercalc.examples import EXAMPLES
from burnercalc.jobs import JOBS
from burnercalc.settings import SETTINGS

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "site" / "make"))
import words

MOST_WORDS = 25  # between two of . : ; ! ?
KEYS = ("key", "at", "room", "dimension", "near", "harm", "formula", "inputs", "source")  # not read as a sentence


def texts_in(thing, name=""):
    """(where, text) of every text that somebody reads in a declaration, whatever it stands in."""
    if isinstance(thing, str):
        yield name, thing
    elif isinstance(thing, Mapping):
        for key, inside in thing.items():
            yield from texts_in(inside, f"{name} {key}")
    elif isinstance(thing, (tuple, list)):
        for inside in thing:
            yield from texts_in(inside, name)
    elif dataclasses.is_dataclass(thing):
        for part in dataclasses.fields(thing):
            if part.name not in KEYS:
                yield from texts_in(getattr(thing, part.name), f"{name} {getattr(thing, 'key', '')} {part.name}")


SAID = {
    **{kind: getattr(catalogue, kind) for kind in ("ANSWERS", "CHECKS", "TABLES", "CHARTS", "DRAWINGS")},
    "settings": [(s.label, s.help, [label for _, label in s.choices]) for s in SETTINGS],
    "page": (words.DANGERS, words.WALK, words.UNKNOWNS, words.TRUST, words.SUBHEADS),
    "starts": [(one.name, one.sentence) for one in (*EXAMPLES, *JOBS)],
    "train": PARTS,
}


def parts(text):
    """A text between its stops, each slot as one word, measures of the reader of inches."""
    text = re.sub(r"\[([^|\]]*)\|[^\]]*\]", r"\1", re.sub(r"\{[^}]*\}", "7", text))
    return re.split(r"(?<=[.!?:;])\s+", text)


@pytest.mark.parametrize("kind", SAID)
def test_no_part_of_a_sentence_is_longer_than_a_breath(kind):
    found = list(texts_in(SAID[kind], kind))
    assert len(found) > 10
    long = [(name, part) for name, text in found for part in parts(text) if len(part.split()) > MOST_WORDS]
    assert long == []


def test_a_long_part_is_found():
    assert [len(part.split()) for part in parts("One {two:power 2} three. " + "word " * 26)] == [3, 26]
    read = list(texts_in(catalogue.CHECKS["web"], "checks"))
    assert ("checks web label", catalogue.CHECKS["web"].label) in read and len(read) > 2


def test_no_setting_has_the_name_of_an_answer():
    labels = [s.label.lower() for s in SETTINGS] + [a.label.lower() for a in catalogue.ANSWERS.values()]
    assert sorted({label for label in labels if labels.count(label) > 1}) == []
