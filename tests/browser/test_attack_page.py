"""A short slice of the attack on the page; at length it runs as `build.py attack`."""

import pytest
from attack import site as attacked
from attack.judge import attack
from attack.run import TARGETS


@pytest.fixture(autouse=True)
def place(chromium, site):
    attacked.use(chromium, site)


@pytest.mark.parametrize(
    "target, trials",
    [("opened", 10), ("kills", 10), ("storage", 5), ("tabs", 8), ("assets", 3), ("worker", 4)],
)
def test_finds_nothing(target, trials):
    tally = attack(target, TARGETS[target][0], seed="slice", trials=trials)
    assert tally.clean and tally.tried >= trials, "\n".join(tally.found)


# Faults put in on purpose, each with the target that must find it.
FAULTS = [
    ("kills", "designs.mjs", "await answered(change());", "setTimeout(change, 300);"),
    ("storage", "designs.mjs", "return false;", "return true;"),
    ("tabs", "designs.mjs", "...(now ?? record), name", "...record, name"),
]


@pytest.mark.parametrize("target, name, right, wrong", FAULTS)
def test_finds_a_fault_put_in_on_purpose(target, name, right, wrong, monkeypatch):
    monkeypatch.setitem(attacked.faults, name, (right, wrong))
    for number in range(8):
        tally = attack(target, TARGETS[target][0], seed=number, trials=1)
        if tally.wrong:
            return
    pytest.fail(f"{target} did not see {name} broken: {tally.found}")
