"""What the page's fields ask of Python: the lining as rows."""

import json

import pytest

from burnercalc.physics.linings import material_keys, material_name
from burnercalc.worker import handle


def ask(kind, settings=(), **request):
    return json.loads(handle(json.dumps({"kind": kind, "settings": dict(settings), **request})))


LINING = {"lining": "dense_castable 25.4mm, ifb_26 2 1/2 in, blanket_8lb 1 in"}


def layers(rows, settings=()):
    return ask("layers", settings, key="lining", rows=rows)


def test_rows_say_what_the_text_says():
    field = ask("solve", LINING)["fields"]["lining"]
    assert field["layers"] == [["dense_castable", "1"], ["ifb_26", "2 1/2"], ["blanket_8lb", "1"]]
    assert field["layer_unit"] == "in"
    metric = ask("solve", {**LINING, "units": "mm"})["fields"]["lining"]
    assert metric["layers"][1] == ["ifb_26", "63.5"] and metric["layer_unit"] == "mm"


def test_a_thickness_that_nobody_touched_stays_as_it_was_typed():
    rows = [["ifb_26", "2 1/2", 1], ["ifb_23", "1", 0], ["blanket_8lb", "2", 2]]
    assert layers(rows, LINING)["text"] == "ifb_26 2 1/2 in, ifb_23 25.4mm, blanket_8lb 2 in"
    exact = {"lining": "ifb_26 64.1234567 mm", "units": "in"}
    (shown,) = ask("solve", exact)["fields"]["lining"]["layers"]
    assert layers([[*shown, 0]], exact)["text"] == exact["lining"]


@pytest.mark.parametrize(("units", "added"), [("in", "blanket_8lb 1 in"), ("mm", "blanket_8lb 25 mm")])
def test_an_added_layer_is_blanket_in_the_readers_units(units, added):
    reply = layers([["ifb_26", "2 1/2" if units == "in" else "63.5", 0], ["", "", None]], {"units": units, **LINING})
    assert reply["text"].split(", ")[1] == added
    assert ask("solve", {"units": units, "lining": reply["text"]})["ok"]


@pytest.mark.parametrize("typed", ["", "thick", "-1", "2 lb"])
def test_a_thickness_that_is_none_is_refused_with_one_that_works(typed):
    reply = layers([["ifb_26", typed, 0]])
    (error,) = reply["errors"]
    assert error["setting"] == "lining"
    assert ask("solve", {"lining": error["nearest"]})["ok"]


def test_every_material_has_a_name_short_enough_for_a_phones_list_and_metric_ones_hold_no_pounds():
    for key in material_keys():
        for units in ("in", "mm"):
            assert 4 < len(material_name(key, units, short=True)) <= 20
            assert units == "in" or "lb" not in material_name(key, units) + material_name(key, units, short=True)
