"""Hostile texts for every kind of setting: refused by name, or read as a second reader reads them."""

from attack.hostile import good, hostile
from attack.meaning import alike, value

from burnercalc.design import limits, parse_setting, with_unit
from burnercalc.errors import InputError, InputErrors
from burnercalc.link import short
from burnercalc.settings import SETTINGS
from burnercalc.units import DIMENSIONS

MANY = 100  # texts a trial
LONGEST_WORD = 3000  # characters of a refusal


def trial(rng):
    for _ in range(MANY):
        setting = rng.choice(SETTINGS)
        fine = rng.random() < 0.2
        text = good(rng, setting) if fine else hostile(rng, setting)
        judge(setting, text, fine)
    return MANY


def judge(setting, text, fine=False):
    said = f"{setting.key} = {text!r}"
    try:
        found = parse_setting(setting, text)
    except (InputError, InputErrors) as refused:
        errors = refused.errors
        at_the_end = all(error.rule.startswith("must be ") and " to " in error.rule for error in errors)  # rounded
        assert not fine or at_the_end or setting.dimension == "fuel_blend", f"refused: {said}: {refused}"
        assert errors and all(error.field == setting.key for error in errors), f"another setting is named: {said}"
        assert len(str(refused)) <= LONGEST_WORD and all(str(error).isprintable() for error in errors), f"long: {said}"
        return
    if found is None:
        assert setting.optional and not text.strip(), f"accepted as nothing: {said}"
        return
    meant = value(setting, text)
    assert meant is not None, f"accepted in silence: {said} -> {found}"
    assert alike(found, meant), f"read otherwise: {said} -> {found}, not {meant}"
    if setting.dimension in DIMENSIONS and isinstance(found, (int, float)):
        low, high = limits(setting)
        assert low - 1e-9 * abs(low) <= found <= high + 1e-9 * abs(high), f"out of range: {said} -> {found}"
    for again in (with_unit(setting, text), short(setting, with_unit(setting, text))):
        assert parse_setting(setting, again) == found, f"reads otherwise when kept: {said} as {again!r}"
