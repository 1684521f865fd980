"""A short slice of the attack on the page; at length it runs as `build.py attack`."""

from random import Random

import pytest
from attack import site as attacked
from attack.designs import largest
from attack.judge import attack
from attack.run import TARGETS

from burnercalc.link import to_link


@pytest.fixture(autouse=True)
def place(chromium, site):
    attacked.use(chromium, site)


@pytest.mark.parametrize(
    "target, trials",
    [("opened", 5), ("kills", 5), ("storage", 3), ("tabs", 4), ("assets", 2), ("worker", 3), ("updates", 2)],
)
def test_finds_nothing(target, trials):
    tally = attack(target, TARGETS[target][0], seed="slice", trials=trials)
    assert tally.clean and tally.tried >= trials, "\n".join(tally.found)


# Faults put in on purpose, each with the target that must find it and a seed by which it does.
FAULTS = [
    ("kills", "0", "await answered(change());", "setTimeout(change, 60_000);"),
    ("storage", "3", "return false;", "return true;"),
    ("tabs", "0", "...(now ?? record), name", "...record, name"),
]


@pytest.mark.parametrize("target, seed, right, wrong", FAULTS)
def test_finds_a_fault_put_in_on_purpose(target, seed, right, wrong, monkeypatch):
    monkeypatch.setitem(attacked.faults, "designs.mjs", (right, wrong))
    for number in range(4):
        if attack(target, TARGETS[target][0], seed=f"{seed}{number or ''}", trials=1).wrong:
            return
    pytest.fail(f"{target} did not see {right} broken")


def test_the_largest_design_opens_and_still_takes_a_change():
    link = to_link(largest(Random(1)))
    assert link.count("&") > 100
    with attacked.visitor() as (context, address):
        page = context.new_page()
        page.goto(address + link)
        attacked.ready(page)
        assert attacked.ports(page) == 3980
        attacked.type_in(page, "rows", "39")
        page.wait_for_function("() => location.hash.includes('rows=39&')")
        attacked.ready(page)
        assert attacked.ports(page) == 3881
