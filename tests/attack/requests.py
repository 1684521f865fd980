"""The page's questions with hostile settings, every move of every setting, and the cures that checks name."""

import json

from attack.designs import design
from attack.hostile import hostile

from burnercalc import worker
from burnercalc.files import FILES
from burnercalc.result import solve
from burnercalc.settings import SETTINGS
from burnercalc.units import DIMENSIONS

LONGEST_REFUSAL = 60_000
QUICK = [name for name in FILES if name.endswith(("-csv", "-json", "-svg"))]


def ask(request):
    reply = worker.handle(json.dumps(request))
    found = json.loads(reply)
    if found["ok"]:
        return found
    assert found["errors"] and len(reply) <= LONGEST_REFUSAL, f"a refusal of {len(reply)} characters: {request}"
    assert all(error["text"].isprintable() and error["rule"] for error in found["errors"]), f"{reply}: {request}"
    return found


def trial(rng):
    d = design(rng)
    tried = 0
    for setting in rng.sample(SETTINGS, 2):
        wild = {
            **d.texts,
            setting.key: rng.choice((hostile(rng, setting), None, 9, 9.5, True, [], {}, [[1]], "x" * 9999)),
        }
        ask({"kind": "solve", "settings": wild})
        ask({"kind": "solve", "settings": {**d.texts, "x" * rng.choice((1, 50, 9999)): "1"}})
        for by in (1, -1):
            moved = ask({"kind": "step", "settings": d.texts, "key": setting.key, "by": by})
            if moved["ok"]:
                ask({"kind": "solve", "settings": {**d.texts, setting.key: moved["text"]}})
        part = rng.choice(("0", "1/2", "15/16"))
        parted = ask({"kind": "part", "settings": d.texts, "key": setting.key, "part": part})
        assert not parted["ok"] or setting.dimension == "length", parted
        if setting.dimension in DIMENSIONS and setting.step:
            ask({"kind": "slide", "settings": d.texts, "key": setting.key, "mark": rng.randint(-5, 500)})
        tried += 6
    cures = [(check.key, change) for check in solve(d).checks.values() if check.fault for change in check.changes]
    before = verdicts(d.texts)
    for key, change in rng.sample(cures, min(4, len(cures))):
        by = {"raise": 1, "lower": -1}.get(change.move) or rng.choice((1, -1))
        cure(d.texts, key, change.setting, by, before)
        tried += 1
    files = [name for name in FILES if name != "calendar-ics" or d.start_date] if rng.random() < 0.1 else QUICK
    cell = ask({"kind": "file", "settings": d.texts, "file": rng.choice(files)})
    assert cell["ok"], cell
    assert ask({"kind": "thumb", "settings": d.texts})["ok"]
    return tried + 2


def cure(settings, check, key, by, before):
    """What a cure says of its own check and of all others is what the page then shows; `before` it showed these."""
    asked = {"kind": "try", "settings": settings, "key": key, "by": by, "check": check, "whole": True}
    told = ask(asked)
    if not told["ok"] or told["end"]:
        return
    after = verdicts({**settings, key: told["text"]})
    assert told["verdict"] == after.get(check, "good"), f"{told}, but {after.get(check)}: {asked}"
    worse = {each: word for each, word in after.items() if word in SPOILT[before.get(each, "good")]}
    assert {each["key"]: each["verdict"] for each in told["worsens"] if not each["still"]} == worse, (
        f"{told['worsens']}, but {worse}: {asked}"
    )
    still = {each["key"]: each["verdict"] for each in told["worsens"] if each["still"]}
    assert all(before[each] == after[each] == word != "good" for each, word in still.items()), f"{still}: {asked}"


SPOILT = {"good": ("caution", "stop"), "note": ("caution", "stop"), "caution": ("stop",), "stop": ()}


def verdicts(settings):
    """{check: word} as the page shows them."""
    shown = ask({"kind": "solve", "settings": settings})
    assert shown["ok"], f"a cure is refused: {shown}"
    return {check["key"]: check["verdict"] for check in shown["checks"]}
