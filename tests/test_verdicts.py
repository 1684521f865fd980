"""Verdicts mean something: for many plausible designs, builds known to be good, and designs that must not pass."""

from collections import Counter

import plausible
import pytest

from burnercalc import catalogue
from burnercalc.checks.judge import FAULTS
from burnercalc.result import solve

# A check that finds fault with more than this share of plausible designs says what is so on every forge: a note.
MOST_SPEAKING = 0.6


@pytest.fixture(scope="module")
def results():
    return [solve(design) for design in plausible.designs()]


def test_plausible_designs_are_told_apart(results):
    """Some are good, most want a word, some must not be built; and no check cries at nearly all of them."""
    print("\n".join(plausible.report(results)))
    worst = Counter(result.worst for result in results)
    assert len(results) == plausible.COUNT and all(worst[word] > 0 for word in ("good", *FAULTS))
    said = plausible.spoken(results)
    loud = {key: share for key in catalogue.CHECKS
            if (share := sum(said[key, word] for word in FAULTS) / len(results)) > MOST_SPEAKING}  # fmt: skip
    assert not loud


def test_the_same_seed_makes_the_same_designs():
    assert plausible.designs(3) == plausible.designs(3) != plausible.designs(3, seed=1)
