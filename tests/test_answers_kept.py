"""Answers of 24 far-apart designs stay what they were, to the last digit, until somebody means to move them."""

import json

import pytest
from reference.make_answers import FILE, answers

DESIGNS = json.loads(FILE.read_text(encoding="utf-8"))


@pytest.mark.parametrize("name", DESIGNS)
def test_answers_are_kept(name):
    """A moved answer is either a fault, or goes through make_answers.py and CHANGELOG.md."""
    found = json.loads(json.dumps(answers(DESIGNS[name]["settings"])))
    kept = DESIGNS[name]["answers"]
    assert found.keys() == kept.keys()
    assert {key: (kept[key], found[key]) for key in kept if kept[key] != found[key]} == {}


def test_the_designs_are_far_apart():
    """No two give the same firing rate, port count and cost."""
    seen = {tuple(d["answers"][key] for key in ("firing_rate_gross", "port_count", "cost_batch", "strip_after"))
            for d in DESIGNS.values()}  # fmt: skip
    assert len(DESIGNS) == 24 and len(seen) >= 20
