"""What a refusal offers is typed back in, in designs whose fire is left to the chamber: each offer is accepted."""

import random

from burnercalc import units
from burnercalc.design import Design
from burnercalc.errors import InputErrors
from burnercalc.examples import EXAMPLES
from burnercalc.jobs import JOBS
from burnercalc.settings import BY_KEY, SETTINGS

TRIALS = 260
FACTORS = (0.01, 0.1, 0.3, 0.5, 0.7, 1.5, 2, 3, 5, 10, 100)
SPOILT = [s for s in SETTINGS if s.dimension in units.DIMENSIONS and s.key != "firing_rate"]


def auto(texts):
    return {**texts, "firing_rate": "auto"}


BASES = [
    *(auto(texts) for each in EXAMPLES for texts in (each.inches, each.metric)),
    *(auto(job.texts(sizes, "propane")) for job in JOBS if job.inches for sizes in ("in", "mm")),
]


def spoilt(rng):
    """A design with one number changed, as somebody types it; {} where that cannot be."""
    texts = dict(rng.choice(BASES))
    setting = rng.choice(SPOILT)
    design = Design.from_texts(texts)
    value, unit = design.value(setting.key), units.shown_unit(setting.dimension, design.units)
    if not isinstance(value, (int, float)):
        return {}
    number = units.from_si(value * rng.choice(FACTORS), unit, units.si_unit_of(setting.dimension))
    return {**texts, setting.key: f"{number:.6g} {unit}".strip()}


def refusals(texts):
    try:
        Design.from_texts(texts)
    except InputErrors as refused:
        return refused.errors
    return []


def test_every_offer_of_an_auto_design_is_accepted_as_it_is_told():
    rng, offered, alone = random.Random(20261128), 0, 0
    for _ in range(TRIALS):
        texts = spoilt(rng)
        errors = refusals(texts) if texts else []
        for error in errors:
            for offer in filter(None, error.nearest.split(" or ")):
                offered += 1
                left = refusals({**texts, error.field: offer})
                assert not [each for each in left if each.field == error.field], (error, offer, left)
                if len(errors) == 1:
                    alone += 1
                    assert not left, (texts, error, offer, left)
    assert offered > 60 and alone > 40


def test_a_fire_that_auto_cannot_find_is_refused_with_what_can_be_had():
    """The chamber is asked for more than the flame reaches: the temperature told is typed in and accepted."""
    hot = {"firing_rate": "auto", "chamber_temperature": "3000 degF"}
    for units_ in ({}, {"units": "mm"}):
        errors = refusals({**hot, **units_})
        told = [error for error in errors if error.nearest and error.field in BY_KEY]
        assert told, errors
        for error in told:
            assert not refusals({**hot, **units_, error.field: error.nearest.split(" or ")[0]}), error
