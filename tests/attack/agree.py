"""One meaning a text: Python, link, command line, file and page agree on every setting."""

import argparse
import json
from urllib.parse import quote, quote_plus

from attack.hostile import good, hostile

from burnercalc import cli, worker
from burnercalc.design import Design
from burnercalc.errors import InputErrors
from burnercalc.link import VERSION, from_link, to_link
from burnercalc.settings import SETTINGS
from burnercalc.units import dotted

MANY = 20  # texts a trial


def trial(rng):
    for _ in range(MANY):
        setting = rng.choice(SETTINGS)
        text = good(rng, setting) if rng.random() < 0.5 else hostile(rng, setting)
        judge(setting.key, text.encode("utf-8", "replace").decode("utf-8"), rng.random() < 0.05)
    return MANY


def python(texts, bare_units=None):
    try:
        return Design.from_texts(texts, bare_units)
    except InputErrors:
        return None


def command_line(texts):
    try:
        return cli._design(argparse.Namespace(link=None, site="", set=[f"{key}={text}" for key, text in texts.items()]))
    except InputErrors:
        return None


def link(text):
    design, ignored = from_link(text)
    return None if ignored else design


def page(texts):
    """What the page computes with, or None where it refuses."""
    try:
        return worker._design({"settings": texts})
    except InputErrors:
        return None


def opened(text):
    """The design that the page shows of a link, by its two questions; None where it leaves something out."""
    reply = json.loads(worker.handle(json.dumps({"kind": "open", "link": text})))
    assert reply["ok"], reply
    shown = page(reply["settings"])
    assert shown is not None, f"opened, then refused: {text!r}"
    return None if reply["ignored"] else shown


def judge(key, text, slow=False):
    said = f"{key} = {text!r}"
    plain = python({key: text})
    entrances = {
        "link": link(f"#v={VERSION}&{key}={quote_plus(text)}"),
        "link with %20": link(f"https://example.org/#v={VERSION}&{key}={quote(text)}"),
        "command line": command_line({key: text}),
    }
    if slow or plain is not None:
        entrances["page, by link"] = opened(f"#v={VERSION}&{key}={quote_plus(text)}")
    meant = python({key: dotted(text)}) if cli._number(key) else plain  # 1,05 typed by hand
    for name, design in entrances.items():
        assert design == meant, f"{name} reads otherwise: {said}"
    for units in ("in", "mm"):
        texts = {key: text, "units": units} if key != "units" else {key: text}
        typed, plain = page(texts), python(texts)
        if plain is not None:  # where a unit stands beside the field, a text with its own unit means the same
            assert typed is not None and typed.value(key) == plain.value(key), f"the {units} page: {said}"
        if typed is not None:  # what the page shows travels by link and file
            carried = link(to_link(typed))
            assert carried == typed, f"the {units} page's link reads otherwise: {said} -> {to_link(typed)}"
            assert opened(to_link(typed)) == typed, f"the {units} page opens its own link otherwise: {said}"
            assert python(typed.texts) == typed == command_line(typed.texts), f"kept texts read otherwise: {said}"
