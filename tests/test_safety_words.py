"""The words of safety: what must stand where, and what must not come back. Every text that is shipped is read."""

import ast
import html
import re
from functools import cache
from pathlib import Path

import pytest
from designs import FAR_APART, solved

from burnercalc import build_sheet, catalogue
from burnercalc.examples import EXAMPLES
from burnercalc.settings import BY_KEY

ROOT = Path(__file__).parent.parent
SHIPPED = [
    *(ROOT / "burnercalc").rglob("*.py"),
    *(ROOT / "burnercalc" / "data").iterdir(),
    *(ROOT / "site" / "make").glob("*.py"),
    *(ROOT / "site" / "make").glob("*.html"),
    *(ROOT / "site" / "browser").glob("*.mjs"),
    ROOT / "README.md",
]


@cache
def texts(path):
    """The texts of a file: of a module its strings, pieces of one sentence put together; of others all of it."""
    source = path.read_text(encoding="utf-8")
    if path.suffix != ".py":
        return [" ".join(html.unescape(source).split())]
    nodes = ast.walk(ast.parse(source))
    return [" ".join(n.value.split()) for n in nodes if isinstance(n, ast.Constant) and isinstance(n.value, str)]


# What has stood there and misled: a pattern, and why.
GONE = {
    r"\bto sell\b": "a home-made gas burner is not for sale without approval",
    r"\bno luxury\b": "the interlock is required",
    r"(?<!never )(?<!Never )\b(warm|heat)(ing|ed|er)? (up )?(the |a |your )?(cylinders?|bottles?|tanks?)\b":
        "a cylinder is never warmed",
    r"needs[^.]*\. Warmer, or": "a cylinder is never warmed",
    r"(?<!never )(?<!Never )\bblow (them |it |the dust |the plenum |the ports )?out (the|ports|plenum|dust|with)":
        "silica dust is vacuumed",
    r"\bbreath of air\b": "nobody breathes into a gas train; the body is tested behind a plate",
    r"\bcool enough to stay dull\b": "steel that does not glow may be far too hot",
    r"\bkitchen oven with wax\b": "no oven that cooks food, wax or not",
    r"\bsounding (CO )?alarm\b": "loud, with a display",
    r"lifting there is no fault": "only above 1,400 degF",
    r"(?i)\bnobody (stands )?in it\b": "in the burnt gas: a reader whose English is second took it for the shop",
    r"\beach try from\b": "where to go back to after a try that did not light is said as an order",
    r"\bblow the box out by hand\b": "nobody blows into a box of mixture: the blower purges it",
}  # fmt: skip


@pytest.mark.parametrize("pattern", GONE)
def test_what_misled_does_not_come_back(pattern):
    found = [(path.name, text) for path in SHIPPED for text in texts(path) if re.search(pattern, text)]
    assert not found, GONE[pattern]


def test_the_patterns_find_what_stood_there():
    """Each pattern on a sentence as it was once printed."""
    once = (
        "two burners are made, one to use and one to sell.",
        "a valve that closes when the power fails is no luxury.",
        "Warm the cylinder in a bucket.",
        "less than the regulator needs (10 psi). Warmer, or a regulator that needs less.",
        "Blow out the plenum through the inlet.".replace("Blow", "blow"),
        "no bubble with the inlet plugged and a breath of air inside.",
        "steel of the body cool enough to stay dull.",
        "Not a kitchen oven with wax in the ports.",
        "doors open and a sounding CO alarm at head height",
        "hold it; lifting there is no fault.",
        "wide doors bring 2600 cfm in the least wind. Nobody in it.",
        "First time, each try from Purge on: needle a little open.",
        "shut the gas at the cock and blow the box out by hand before relighting.",
    )
    for pattern, sentence in zip(GONE, once, strict=True):
        assert re.search(pattern, sentence) or re.search(pattern, sentence.lower()), pattern


def care(design=None):
    return {row[0]: row[2] for row in solved(**design or {}).tables["care"].rows}


def dangers(room):
    """What the page says on top of a chapter."""
    tree = ast.parse((ROOT / "site" / "make" / "words.py").read_text(encoding="utf-8"))
    value = next(n.value for n in tree.body if isinstance(n, ast.Assign) and n.targets[0].id == "DANGERS")
    return " ".join(ast.literal_eval(value)[room])


def in_readme():
    return " ".join((ROOT / "README.md").read_text(encoding="utf-8").partition("## Two commands")[0].split())


def sheet():
    """Every text of the build sheet that tells how to weld and to light."""
    result = solved()
    return repr(build_sheet.blocks(result, "#v=1", 190, 250))


STAND = [
    ("page, heat", lambda: dangers("heat"), ("loud CO alarm with a display", "damp", "zinc fume", "Ceramic fibre")),
    (
        "page, air and gas",
        lambda: dangers("feed"),
        ("Required", "air or power fails", "by hand", "check valve", "RCD (GFCI)", "earthed", "Propane sinks", "rises",
         "never heated", "Black pipe only", "licensed gas fitter decides"),
    ),
    ("page, make", lambda: dangers("make"), ("vacuum", "never blow", "galvanised", "P100 or P3")),
    ("page, fire", lambda: dangers("fire"), ("No oven that cooks food", "stand aside")),
    (
        "README",
        in_readme,
        ("air or power fails", "required", "Propane sinks", "natural gas rises", "Never heat a cylinder", "display",
         "zinc fume", "Damp moulds", "ceramic fibre", "licensed gas fitter decides",
         "earthed socket behind an RCD (GFCI)"),
    ),
    ("lining", lambda: BY_KEY["lining"].help, ("ceramic fibre", "P100 or P3")),
    ("metal", lambda: BY_KEY["work_metal"].help, ("Brass", "zinc fume")),
    ("mix pipe", lambda: BY_KEY["mix_pipe"].help, ("black steel, never galvanised",)),
    ("inlet", lambda: BY_KEY["inlet"].help, ("black steel, never galvanised",)),
    ("oven", lambda: care()["Oven-dry"], ("No oven that cooks food",)),
    (
        "first fire",
        lambda: care()["First fire"],
        ("Required", "air or power fails", "by hand only", "check valve", "Propane sinks", "natural gas rises",
         "loud CO alarm with a display", "licensed gas fitter", "earthed socket behind an RCD (GFCI)"),
    ),
    ("build sheet", sheet,
     ("plate of at least", "never oxygen", "Required, or do not fire", "check valve", "Propane sinks")),
]  # fmt: skip


@pytest.mark.parametrize("where, told, wanted", STAND, ids=[one[0] for one in STAND])
def test_the_caution_stands_where_the_danger_is(where, told, wanted):
    text = told()
    assert [words for words in wanted if words not in text] == []


def test_the_body_is_tested_behind_a_plate_with_air_only():
    go_on = solved().tables["days"].rows[0][6]
    assert "plate and a gasket" in go_on and "no gas and no oxygen" in go_on and "20 in of water" in go_on


def test_ports_and_plenum_are_vacuumed():
    watch = solved().tables["days"].rows[7][5]
    assert "Vacuum ports and plenum" in watch and "never blow them out" in watch


def test_no_cure_raises_the_shop_temperature_for_a_cold_cylinder():
    """Nobody is to be led to warm a cylinder, by words or by an offer, however cold the day."""
    checked = 0
    for number, texts in FAR_APART.items():
        for cold in ("-4 degF", "20 degF"):
            try:
                result = solved(**{**texts, "ambient_temperature": cold, "cylinder": "20"})
            except ValueError:
                continue
            check = result.checks.get("cylinder")
            if check is None:
                continue
            checked += 1
            assert "ambient_temperature" not in {change.setting for change in check.changes}, number
            if check.verdict != "good":
                assert check.text.endswith("Never heat a cylinder.")
    assert checked > 20


def test_lifting_is_called_no_fault_above_a_named_temperature_only():
    for kind in (catalogue.ANSWERS, catalogue.CHECKS):
        for declared in kind.values():
            for sentence in declared.cases.values():
                assert "no fault" not in sentence or "{hot:temperature}" in sentence, declared.key


def test_no_example_is_for_sale():
    assert not any(re.search(r"\b(sell|sale|sold|customer|buyer)\b", one.sentence) for one in EXAMPLES)
