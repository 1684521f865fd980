"""Inputs are true: what moves an answer is declared, and what is declared moves it. Every setting is moved in turn."""

from functools import cache

import pytest
from designs import FAR_APART

from burnercalc import Design, InputErrors, catalogue, solve, units
from burnercalc.settings import BY_KEY, SETTINGS

MOVED = ("default", "smith, metric", "crucible, inches", "round", "plates, a batch", "frost", "a tank in the hills",
         "no baffle, a blend", "knife, inches")  # fmt: skip
# Settings with words of their own: other texts to try.
TEXTS = {
    "lining": ("ifb_26 3 in", "dense_castable 1/2 in, blanket_8lb 2 in"),
    "fuel_blend": ("CH4 0.9, N2 0.1", "C3H8 0.93, C2H6 0.05, C4H10 0.02"),
    "blower_curve": ("0 cfm 8 inH2O, 100 cfm 5 inH2O, 150 cfm 0 inH2O", ""),
    "jet_drill": ("#54", "2 mm", "#40", ""),
    "start_date": ("2026-03-02", "2026-03-06"),
    "stock_lengths": ("3 ft", "17 ft, 21 ft"),
    "nipple_stock": ("36 in 41", "3 in 5, 6 in 7.50, 72 in 60"),
    "fuel_price": ("1.7/lb",),
    "price_steel": ("3.1/lb",),
    "firing_rate": ("auto", "130 kBtu/h", "60 kBtu/h"),
}
# Direct inputs that move their answer in none of these designs, each with its reason.
IDLE: dict[tuple[str, str], str] = {}


def other_texts(design, setting):
    """Texts that move a setting off where it stands: near it, and far from it."""
    if setting.key in TEXTS:
        return TEXTS[setting.key]
    if setting.choices:
        return tuple(value for value, _ in setting.choices if value != design.value(setting.key))
    value = design.value(setting.key)
    if setting.whole:
        numbers = (value + 1, value + 5, max(value - 2, 0), 2 * value)
    elif setting.dimension == "temperature":
        numbers = (value + 7, value - 60, value + 90)
    else:
        numbers = (1.07 * value, 0.9 * value, 1.6 * value) if value else (0.1, 0.01, 1.0)
    return tuple(units.show(number, setting.dimension, "mm", exact=True) for number in numbers)


def closure(key):
    """Every setting and answer that an answer is declared to rest on, directly or through others."""
    found, ahead = set(), [key]
    while ahead:
        for one in catalogue.ANSWERS[ahead.pop()].inputs:
            if one not in found:
                found.add(one)
                if one in catalogue.ANSWERS:
                    ahead.append(one)
    return found


def told(design):
    result = solve(design)
    return {key: (result.answers[key].value, result.answers[key].band) for key in catalogue.ANSWERS}


@cache
def movers():
    """{answer: settings that moved it in any of the designs}."""
    found = {key: set() for key in catalogue.ANSWERS}
    for name in MOVED:
        design = Design.from_texts(FAR_APART[name])
        before = told(design)
        for setting in SETTINGS:
            if setting.key == "units":
                continue
            for text in other_texts(design, setting):
                try:
                    after = told(design.changed({setting.key: text}))
                except InputErrors:
                    continue
                for key in after:
                    if after[key] != before[key]:
                        found[key].add(setting.key)
    return found


def test_nothing_moves_an_answer_that_is_not_declared():
    lies = {key: sorted(moved - closure(key)) for key, moved in movers().items() if moved - closure(key)}
    assert lies == {}


def test_what_is_declared_moves_its_answer():
    idle = {(key, one) for key, answer in catalogue.ANSWERS.items()
            for one in answer.inputs if one in BY_KEY and one not in movers()[key]}  # fmt: skip
    assert idle == set(IDLE)


def test_every_setting_moves_something():
    """Those that only change what is shown or printed, or what is compared in a table, apart."""
    moving = set().union(*movers().values())
    assert {s.key for s in SETTINGS} - moving == {
        "units", "print_scale_x", "print_scale_y", "multi_port_excess_air", "blown_excess_air", "aspirated_excess_air",
        "start_date",
    } & {s.key for s in SETTINGS}  # fmt: skip


@pytest.mark.parametrize("key, wrong", [("port_area", "fuel"), ("gas_flow", "rows")])
def test_the_closure_is_no_catch_all(key, wrong):
    assert wrong not in closure(key)
