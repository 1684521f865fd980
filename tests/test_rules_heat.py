"""The rules of chamber, lining, work and fire: what they refuse, and that what they offer instead works."""

import pytest

from burnercalc import rules_heat
from burnercalc.design import Design, default_values, parse_setting
from burnercalc.errors import InputErrors
from burnercalc.settings import BY_KEY

# Each rule of chamber and work: the setting it names, and texts that break it.
BROKEN = [
    ("fuel_price", {"fuel": "natural_gas", "fuel_price": "3/gal"}),
    ("opening_area", {"opening_area": "70 in2"}),
    ("opening_area", {"opening_area": "34 in2", "chamber_shape": "cylinder"}),
    ("lining", {"lining": "dense_castable 8 in, ifb_23 8 in"}),
    ("work_temperature", {"work_temperature": "2300 degF"}),
    ("work_temperature", {"work_metal": "brass"}),
    ("aspirated_throat", {"aspirated_throat": "1/8", "aspirated_jet": "6 mm"}),
    ("firing_rate", {"firing_rate": "auto", "equivalence_ratio": "0.5", "chamber_temperature": "2350 degF"}),
    ("firing_rate", {"firing_rate": "auto", "work_rate": "1000 lb/h"}),
    (
        "burner_count",
        {"firing_rate": "auto", "chamber_length": "100 in", "chamber_width": "100 in", "chamber_height": "100 in"},
    ),
    (
        "burner_count",
        {
            "firing_rate": "auto",
            "burner_count": "24",
            "heat_up_time": "10 h",
            "work_rate": "0 lb/h",
            "opening_area": "0 in2",
        },
    ),
    (
        "firing_rate",
        {
            "firing_rate": "auto",
            "chamber_length": "240 in",
            "chamber_width": "120 in",
            "chamber_height": "120 in",
            "lining": "dense_castable 1 in, blanket_8lb 2 in",
            "heat_up_time": "1 min",
        },
    ),
]


@pytest.mark.parametrize("field, texts", BROKEN)
def test_rules_refuse_and_offer_what_works(field, texts):
    with pytest.raises(InputErrors) as caught:
        Design.from_texts(texts)
    assert [error.field for error in caught.value.errors] == [field]
    (error,) = caught.value.errors
    Design.from_texts({**texts, field: error.nearest})


def test_every_rule_can_break():
    seen = set()
    for _, texts in BROKEN:
        values = {**default_values(), **{key: parse_setting(BY_KEY[key], text) for key, text in texts.items()}}
        seen |= {rule for rule, _ in rules_heat.HEAT_RULES if rule(values) is not None}
    assert seen == {rule for rule, _ in rules_heat.HEAT_RULES}


def test_faults_are_named_together():
    with pytest.raises(InputErrors) as caught:
        Design.from_texts(
            {
                "lining": "gold 1 in, ifb_23 -1 in, ifb_26 3",
                "opening_area": "80 in2",
                "work_temperature": "2400 degF",
                "fuel_blend": "C3H8 1.3",
                "chamber_length": "-3 in",
                "heat_up_time": "0 h",
                "firing_rate": "otto",
                "work_metal": "lead",
            }
        )
    fields = [error.field for error in caught.value.errors]
    assert fields.count("lining") == 3
    assert set(fields) >= {
        "lining",
        "work_temperature",
        "fuel_blend",
        "chamber_length",
        "heat_up_time",
        "firing_rate",
        "work_metal",
    }


@pytest.mark.parametrize(
    "text",
    [
        "",
        "ifb_23",
        "ifb_23 0 in",
        "ifb_23 nan in",
        "ifb_23 2",
        "1 in",
        "ifb_23 1 in,,",
        "ifb_23 99 in",
        ", ".join(["ifb_23 1/2 in"] * 7),
    ],
)
def test_linings_are_refused_by_name(text):
    with pytest.raises(InputErrors) as caught:
        Design.from_texts({"lining": text})
    assert {error.field for error in caught.value.errors} == {"lining"}


def test_a_misspelt_lining_is_offered_its_neighbour():
    with pytest.raises(InputErrors) as caught:
        Design.from_texts({"lining": "blanket_8 2 in"})
    assert caught.value.errors[0].nearest == "blanket_8lb 2 in"
