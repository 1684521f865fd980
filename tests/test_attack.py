"""A short slice of the standing attack, the same each time; at length it runs as `build.py attack`."""

import re

import pytest
from attack import agree, requests
from attack.judge import attack
from attack.run import TARGETS, main

from burnercalc import Design, solve, units
from burnercalc.settings import SETTINGS


@pytest.mark.parametrize(
    "target, trials",
    [
        *(("texts", 5000), ("agree", 200), ("links", 40), ("beside", 60), ("offers", 400)),
        *(("parts", 200), ("designs", 3), ("requests", 15)),
    ],
)
def test_finds_nothing(target, trials):
    tally = attack(target, TARGETS[target][0], seed="slice", trials=trials)
    assert tally.clean and tally.tried >= trials, "\n".join(tally.found)


def test_tells_crash_hang_and_wrong_answer(monkeypatch):
    monkeypatch.setattr("attack.judge.HANG_S", 0.05)

    def trial(rng):
        kind = rng.randrange(4)
        if kind == 0:
            raise ZeroDivisionError
        if kind == 1:
            while True:
                pass
        assert kind != 2, "wrong"
        return 1

    tally = attack("all", trial, seed=1, trials=40)
    assert tally.crashes and tally.hangs and tally.wrong and not tally.clean
    assert tally.crashes + tally.hangs + tally.wrong == len(tally.found) < tally.tried == 40


def test_ends_with_1_when_something_is_found(monkeypatch, capsys):
    assert main(["--only", "texts", "--trials", "100"]) == 0
    monkeypatch.setitem(TARGETS, "texts", (lambda rng: 1 / 0, 1))
    assert main(["--only", "texts", "--trials", "3"]) == 1
    assert "ZeroDivisionError" in capsys.readouterr().out


@pytest.mark.parametrize("given", [["--minutes", "-1"], ["--minutes", "nan"], ["--trials", "0"], ["--first", "-1"]])
def test_an_attack_of_nothing_is_refused(given, capsys):
    with pytest.raises(SystemExit):
        main(["--only", "texts", *given])
    assert "must be above 0" in capsys.readouterr().err


def _without_odd_signs(text):
    return known_unit("".join(sign for sign in text if sign.isalnum() or sign in "/*%"))


known_unit = units.known_unit
# Faults put in on purpose, each with the target that must find it.
FAULTS = [
    ("offers", "burnercalc.design.with_offer", lambda error, values, typed, stood: error),
    ("texts", "burnercalc.units.known_unit", _without_odd_signs),
    ("links", "burnercalc.errors.MOST_SAID", 10**6),
    ("links", "burnercalc.link.LONGEST_LINK", 200),
    ("links", "burnercalc.link._defaults", lambda version, system: {}),
    ("beside", "burnercalc.link.LONGEST_LINK", 100_000),
    ("beside", "burnercalc.link.LONGEST_HAVE", 10**6),
    ("beside", "burnercalc.errors.MOST_SAID", 10**6),
    ("beside", "burnercalc.find.have._offer", lambda kind, offered, system: next(iter(offered), "")),
    ("agree", "burnercalc.link.short", lambda setting, text: text.replace("%", "").replace("-", "")),
    ("parts", "burnercalc.link.short", lambda setting, text: text.replace("%", "").replace("-", "")),
    ("designs", "burnercalc.link.short", lambda setting, text: text.replace("%", "").replace("-", "")),
]


@pytest.mark.parametrize("target, place, fault", FAULTS)
def test_finds_a_fault_put_in_on_purpose(target, place, fault, monkeypatch):
    monkeypatch.setattr(place, fault)
    for number in range(100):
        if attack(target, TARGETS[target][0], seed=number, trials=5).wrong:
            return
    pytest.fail(f"{target} did not see {place} broken")


def test_a_cure_says_which_other_checks_it_spoils(monkeypatch):
    """Of hot flashback, more fire costs the lining; smaller ports at seven rows cost carbon monoxide, at
    eight nothing."""
    smaller = ("flashback_hot", "port_diameter", -1)
    rich = {"equivalence_ratio": "0.96"}
    more_fire = ({**rich, "rows": "9"}, "flashback_hot", "firing_rate", 8)
    seven, eight = {**rich, "rows": "7"}, {**rich, "rows": "8"}
    cures = [(*asked, requests.verdicts(asked[0])) for asked in (more_fire, (seven, *smaller), (eight, *smaller))]
    for asked in cures:
        requests.cure(*asked)
    monkeypatch.setattr("burnercalc.worker.worsened", lambda before, after: [])
    requests.cure(*cures[2])
    with pytest.raises(AssertionError, match="lining_limit"):
        requests.cure(*cures[0])
    with pytest.raises(AssertionError, match="carbon_monoxide"):
        requests.cure(*cures[1])


def test_a_cure_that_makes_a_fault_clearly_worse_says_so():
    """Half as much fire again was offered to a blower that failed already, without a word on it."""
    texts = {"firing_rate": "90 kBtu/h", "blower_shutoff_pressure": "0.3 inH2O"}
    asked = {"kind": "try", "settings": texts, "key": "firing_rate", "check": "flashback_hot", "whole": True}
    near, far = (requests.ask({**asked, "by": by}) for by in (1, 8))
    before, *after = (
        solve(Design.from_texts({**texts, "firing_rate": rate})).checks["blower"]
        for rate in ("90 kBtu/h", near["text"], far["text"])
    )
    assert {check.verdict for check in (before, *after)} == {"stop"}
    assert 0 < before.value - after[0].value < 0.1 and before.value - after[1].value > 0.2
    named = [{each["key"]: (each["verdict"], each["still"]) for each in one["worsens"]} for one in (near, far)]
    assert "blower" not in named[0] and named[1]["blower"] == ("stop", True)


def spellings(setting):
    """The default and the ends of a setting in every form that a keyboard, a paste or a bare field makes of them."""
    bare = re.sub(r"[^0-9]+$", "", setting.default)
    known = {setting.default, setting.low, setting.high, *(value for pair in setting.choices for value in pair)}
    swaps = (("", ""), (" ", ""), (" ", "\u00a0"), (".", ","), ("in", "IN"), ("deg", "°"))
    forms = {text.replace(*swap) for text in known for swap in swaps}
    return forms | {bare, bare.replace(" ", "\u2009"), f"−{bare}"}


@pytest.mark.parametrize("setting", SETTINGS, ids=lambda setting: setting.key)
def test_every_spelling_means_the_same_at_every_entrance(setting):
    for text in sorted(spellings(setting)):
        agree.judge(setting.key, text)


NEVER = ["9in*9**9**9", "9 in/0", "(" * 150, "9 " + "i" * 40000, "1'000 m", "9 1 in", "9 in!", "9\x00in", "9 -1/2 in"]


@pytest.mark.parametrize("text", NEVER, ids=lambda text: ascii(text[:20]))
def test_what_broke_it_once_is_refused_at_every_entrance(text):
    agree.judge("body_length", text, slow=True)
    assert agree.python({"body_length": text}) is agree.page({"body_length": text}) is None
