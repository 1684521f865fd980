"""Random designs, solved whole: every number finite, and the laws that hold for any burner."""

import json
from functools import cache
from math import hypot, isclose, isfinite

from attack.hostile import good

from burnercalc import worker
from burnercalc.burner import needs
from burnercalc.checks.judge import VERDICTS
from burnercalc.design import Design, read
from burnercalc.link import from_link, to_link
from burnercalc.parts import PARTS
from burnercalc.result import solve
from burnercalc.settings import BY_KEY, SETTINGS


def design(rng):
    """A design of random settings; what is at odds with the others is left out."""
    texts = {}
    for setting in rng.sample(SETTINGS, rng.choice((2, 5, 20, 60, len(SETTINGS)))):
        text = good(rng, setting)
        if not read({**texts, setting.key: text})[2]:
            texts[setting.key] = text
    return Design.from_texts(texts)


LARGEST = {
    "body_kind": "plates",
    "body_length": "60 in",
    "body_width": "24 in",
    "setback": "9/16 in",
    "port_diameter": "1/8 in",
    "rows": "40",
    "ports_per_row": "100",
    "units": "mm",
}


def largest(rng):
    """A design of 3,980 ports in which nearly every setting is changed."""
    texts = dict(LARGEST)
    for setting in SETTINGS:
        for text in () if setting.key in (*LARGEST, "pattern") else (good(rng, setting) for _ in range(10)):
            values, _, errors = read({**texts, setting.key: text})
            if not errors and values[setting.key] != Design().value(setting.key):
                texts[setting.key] = text
                break
    return Design.from_texts(texts)


def trial(rng):
    judge(design(rng), rng)


def judge(d, rng):
    link = to_link(d)

    def must(holds, what):
        assert holds, f"{what}: {link}"

    result = solve(d)
    answers = {key: answer.value for key, answer in result.answers.items()}
    for key, answer in result.answers.items():
        value = answer.value
        must(value is None or isinstance(value, str) or isfinite(value), f"{key} is {value}")
        if answer.band and isinstance(value, float):
            low, high = answer.band
            must(low <= value <= high, f"{key} outside its band")
    for key, check in result.checks.items():
        must(check.verdict in VERDICTS, f"verdict of {key}")
        must(check.text and "nan" not in check.text and "None" not in check.text, f"text of {key}: {check.text}")
        must(all(change.setting in BY_KEY for change in check.changes), f"changes of {key}")
    for key, table in result.tables.items():
        for row in table.rows:
            must(all(cell is None or isinstance(cell, str) or isfinite(cell) for cell in row), f"table {key}")
    _laws(d, answers, result, must)
    must(from_link(link) == (d, []), "its link")
    other = d.read_in("mm" if d.units == "in" else "in")
    must(all(other.value(s.key) == d.value(s.key) for s in SETTINGS if s.key != "units"), "settings move with the unit")
    if rng.random() < 0.1:
        again, before = numbers(solve(other)), numbers(result)
        must(again == before, "the unit moves a number")
        page = worker.handle(json.dumps({"kind": "solve", "settings": d.texts, "figures": ["face"]}))
        must(json.loads(page)["ok"], "the page's answer")
        for drawn in (*result.charts.values(), *result.drawings.values()):
            must(drawn is not None, "a picture")
    if rng.random() < 0.2:
        near = neighbour(rng, d)
        must(numbers(solve(near, result)) == numbers(solve(near)), f"taken over from before: {to_link(near)}")


@cache
def rests_on(name, other):
    """Whether a part is worked out, by whatever way, from a setting or another part."""
    return name == other or any(rests_on(each, other) for each in needs(PARTS.get(name, lambda: None)))


def numbers(result):
    return {key: answer.value for key, answer in result.answers.items() if isinstance(answer.value, (int, float))}


def neighbour(rng, d):
    """The design with one to three settings changed."""
    texts = dict(d.texts)
    for setting in rng.sample(SETTINGS, rng.randint(1, 3)):
        text = good(rng, setting)
        if not read({**texts, setting.key: text})[2]:
            texts[setting.key] = text
    return Design.from_texts(texts)


def _laws(d, answers, result, must):
    """Conservation, and geometry worked out here from the settings alone."""
    ports = result.part("face").ports
    gas, air, mixture = (answers[key] for key in ("gas_flow", "air_flow", "mixture_flow"))
    must(isclose(gas + air, mixture, rel_tol=1e-9), "mixture is gas and air")
    must(isclose(gas * answers["gross_heating_value"], answers["firing_rate_gross"], rel_tol=1e-9), "heat of the gas")
    must(answers["firing_rate_net"] <= answers["firing_rate_gross"], "net above gross")
    must(isclose(air / gas, answers["air_fuel_ratio_volume"], rel_tol=1e-6), "air to gas")
    must(answers["port_count"] == len(ports), "number of ports")
    must(
        isclose(
            answers["port_area"],
            len(ports) * 3.141592653589793 / 4 * d.port_diameter**2,
            rel_tol=1e-9,
        ),
        "port area",
    )
    shares = result.part("shares").ports
    must(isclose(sum(shares) / len(shares), 1, rel_tol=1e-6) and min(shares) >= 0, "shares of the flow")
    must(inside(d, ports) or result.checks["ports_inside"].verdict == "stop", "ports outside the window")
    thickness = answers["wall_loss"]
    must(thickness is None or thickness >= 0, "heat that comes in through the wall")


def inside(d, ports):
    """Whether every port lies in the window."""
    half = d.body_length / 2 - d.setback + 1e-9, d.body_width / 2 - d.setback + 1e-9
    r = d.port_diameter / 2
    if d.body_kind == "pipe":
        return all(hypot(x, y) + r <= half[0] for x, y in ports)
    return all(abs(x) + r <= half[0] and abs(y) + r <= half[1] for x, y in ports)
