"""The jobs of the first screen: each starts from a design that can be built, the same in both systems of units."""

import pytest

from burnercalc.design import Design
from burnercalc.jobs import JOBS
from burnercalc.link import from_link, to_link
from burnercalc.result import solve
from burnercalc.rooms import ROOMS
from burnercalc.settings import BY_KEY

STARTS = [(job, units) for job in JOBS if job.inches for units in ("inches", "metric")]


@pytest.fixture(scope="module")
def solved():
    return {(job.key, units): solve(Design.from_texts(getattr(job, units))) for job, units in STARTS}


def ids(part):
    return getattr(part, "key", part)


def test_each_job_is_whole():
    assert len({job.key for job in JOBS}) == len({job.name for job in JOBS}) == len(JOBS)
    for job in JOBS:
        assert job.sentence.endswith(".") and (job.opens in ROOMS) == (not job.inches) == (not job.metric), job.key


@pytest.mark.parametrize("job, units", STARTS, ids=ids)
def test_a_job_starts_without_a_fault(job, units, solved):
    result = solved[job.key, units]
    assert [check.text for check in result.checks.values() if check.fault] == []
    assert result.design.units == ("mm" if units == "metric" else "in")
    assert result["firing_rate_gross"] >= 0.98 * result["firing_rate_needed"]  # the answer on top is enough
    assert result["blower_margin"] > 0


@pytest.mark.parametrize("job, units", STARTS, ids=ids)
def test_its_link_opens_the_same_design(job, units, solved):
    design, ignored = from_link(to_link(solved[job.key, units].design))
    assert not ignored and design == solved[job.key, units].design
    assert getattr(job, units).keys() <= BY_KEY.keys()


@pytest.mark.parametrize("key", [job.key for job in JOBS if job.inches])
def test_both_systems_of_units_mean_the_same(key, solved):
    inches, metric = solved[key, "inches"], solved[key, "metric"]
    for answer in ("firing_rate_needed", "chamber_volume", "port_area", "window_area"):
        assert metric[answer] == pytest.approx(inches[answer], rel=0.12), answer
