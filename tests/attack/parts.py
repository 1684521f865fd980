"""Random walks through designs: each part that no fire rests on, as the fire takes most of the time of a solve."""

from dataclasses import fields, is_dataclass
from math import isfinite

from attack.designs import design, inside, neighbour, rests_on

from burnercalc.design import Design
from burnercalc.link import from_link, to_link
from burnercalc.parts import PARTS
from burnercalc.result import solve

STEPS = 50  # designs of a walk, each a few settings from the one before
RATE = "60 kBtu/h"  # given, or a rule has to work out the fire


COLD = [name for name in PARTS if not rests_on(name, "zone")]


def trial(rng):
    d, before = Design.from_texts({**design(rng).texts, "firing_rate": RATE}), None
    for _ in range(STEPS):
        before = judge(d, before)
        if rng.random() < 0.1:
            link = to_link(d)
            assert from_link(link) == (d, []), f"its link: {link}"
        d = neighbour(rng, d)
    return STEPS


def judge(d, before=None):
    """The result of a design, with its cold parts made, what is as before taken over."""
    link = to_link(d)
    result = solve(d, before)
    for name in COLD:
        for place, value in numbers(result.part(name), name):
            assert isfinite(value), f"{place} is {value}: {link}"
    face = result.part("face")
    assert inside(d, face.ports) or result.checks["ports_inside"].verdict == "stop", f"ports outside the window: {link}"
    assert result["port_count"] == len(face.ports) > 0, f"number of ports: {link}"
    return result


def numbers(value, place):
    """(where, number) of all numbers in a record."""
    if isinstance(value, (int, float)):
        yield place, value
    elif is_dataclass(value):
        for field in fields(value):
            yield from numbers(getattr(value, field.name), f"{place}.{field.name}")
    elif isinstance(value, (tuple, list)):
        for each in value:
            yield from numbers(each, place)
    elif isinstance(value, dict):
        for key, each in value.items():
            yield from numbers(each, f"{place}.{key}")
