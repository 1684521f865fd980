"""The jobs of the first screen: each starts from a design that can be built, the same in both systems of units."""

import json

import pytest

from burnercalc import worker
from burnercalc.design import Design
from burnercalc.find.shops import sample
from burnercalc.jobs import ASKED, JOBS, begun, job_of, refuelled
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
    assert result["blower_times"] > 1


def test_the_default_stays_good_where_benches_blowers_and_days_are_off():
    """A newcomer copies it."""
    for system in ("in", "mm"):
        assert sample(Design.from_texts({"units": system}), 40).good >= 36


@pytest.mark.parametrize("job, units", STARTS, ids=ids)
def test_a_job_stays_good_in_most_shops(job, units, solved):
    """Where it does not, nothing stops it. Iron needs a mixture and a throughput that leave no room."""
    shops = sample(solved[job.key, units].design, 20)
    assert shops.good >= (5 if job.key == "melt_iron" else 12)
    assert not [worse.text for worse in shops.worse if worse.verdict == "stop"]


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


FUELS = [value for value, _ in BY_KEY["fuel"].choices]


@pytest.mark.parametrize("units", ["in", "mm"])
@pytest.mark.parametrize("job", [job for job in JOBS if job.inches], ids=ids)
def test_no_job_starts_with_a_stop_whatever_is_burned(job, units):
    before = None
    for fuel in FUELS:
        design = Design.from_texts(job.texts(units, fuel))
        before = solve(design, before)
        assert design.fuel == fuel and job_of(design) == (job, units)
        assert before.worst != "stop", [check.text for check in before.checks.values() if check.verdict == "stop"]
        assert fuel != "propane" or not [check.text for check in before.checks.values() if check.fault]


CHAMBERS = {
    "in": ("10 5 5", "12 6 5.5", "14 7 6", "16 7 7", "18 8 7", "20 8 8"),
    "mm": ("250 125 125", "300 150 140", "350 180 150", "400 180 180", "450 200 180", "500 200 200"),
}


@pytest.mark.parametrize("units", CHAMBERS)
def test_a_first_forge_on_house_gas_ends_good_in_the_chamber_that_is_typed(units):
    """Small to large box forges of the trade; of the large ones, what does not fit is their opening."""
    before = None
    for sizes in CHAMBERS[units]:
        chamber = {
            f"chamber_{side}": f"{size} {units}" for side, size in zip(("length", "width", "height"), sizes.split())
        }
        before = solve(
            Design.from_texts({**JOBS[0].texts(units, "natural_gas"), "fuel": "natural_gas", **chamber}), before
        )
        faults = {check.key: check.verdict for check in before.checks.values() if check.fault}
        large = before["chamber_volume"] > 0.015  # m3: 15 litres
        assert "stop" not in faults.values() and (large or not faults), (sizes, faults)


@pytest.mark.parametrize("before", [{}, JOBS[0].inches])
def test_the_chamber_that_was_typed_stays_with_another_job_of_its_shape(before):
    typed = {**before, "chamber_length": "20 in", "chamber_width": "7 in"}
    weld, bronze = (next(job for job in JOBS if job.key == key) for key in ("weld", "melt_bronze"))
    link = ask(kind="job", settings=typed, job="weld")["link"]
    design = from_link(link)[0]
    assert (design.chamber_length, design.chamber_width) == pytest.approx((20 * 0.0254, 7 * 0.0254))
    assert {**weld.inches, "chamber_length": "20 in", "chamber_width": "7 in"} == begun(weld, typed)
    assert begun(bronze, typed) == bronze.texts("in", "propane")  # a round one
    assert begun(weld, before) == weld.inches  # nothing was typed
    opened = from_link(to_link(Design.from_texts(weld.inches)))[0].texts  # as a link writes it
    assert begun(JOBS[0], opened) == JOBS[0].inches
    assert begun(weld, {**typed, "rows": "3"}) == weld.inches  # another burner's


def start(units="in", fuel="propane", **changed):
    return {**JOBS[0].texts(units, fuel), **changed}


def test_a_job_is_told_in_another_chamber_and_not_with_another_burner():
    assert job_of(Design.from_texts(start(chamber_length="14 in")))[0] is JOBS[0]
    for texts in (start(rows="4"), start(gas_pressure="6 psi"), {}):
        assert job_of(Design.from_texts(texts)) is None


def test_another_fuel_brings_what_the_job_sets_for_it_and_back():
    chamber = {"chamber_length": "14 in", "chamber_width": "7 in", "chamber_height": "6 in"}
    before = start(**chamber)
    for fuel in ("natural_gas", "butane", "propane"):
        after = refuelled(before, {**before, "fuel": fuel})
        assert after == {**start(fuel=fuel, **chamber), "fuel": fuel}
        before = after


def test_what_is_mine_or_changed_too_is_not_brought_and_another_burner_stays():
    before = start()
    brought = JOBS[0].texts("in", "natural_gas")
    own = {**brought, "fuel": "natural_gas"}
    del own["port_diameter"]
    assert refuelled(before, {**before, "fuel": "natural_gas"}, "port_diameter") == own
    both = {**before, "fuel": "natural_gas", "port_diameter": "5/16 in"}
    assert refuelled(before, both) == {**both, **brought, "port_diameter": "5/16 in"}
    own = {**before, "rows": "4"}
    assert refuelled(own, {**own, "fuel": "butane"}) == {**own, "fuel": "butane"}


def ask(**request):
    return json.loads(worker.handle(json.dumps(request)))


def test_the_page_is_told_the_job_and_what_was_brought():
    link = ask(kind="job", settings={"fuel": "butane", "units": "mm"}, job="forge")["link"]
    assert from_link(link)[0] == Design.from_texts(start("mm", "butane"))
    before = start()
    reply = ask(kind="solve", settings={**before, "fuel": "natural_gas"}, before=before)
    assert reply["job"] == "forge" and reply["brought"].startswith(
        "Changed too, for natural gas: port diameter 9/32 in"
    )
    again = ask(kind="solve", settings=reply["texts"], before=reply["texts"])
    assert again["job"] == "forge" and again["brought"] == "" and again["link"] == reply["link"]


def test_what_the_first_screen_asks_is_no_setting_of_a_fuel():
    assert not [key for job in JOBS for both in job.fuels.values() for texts in both for key in texts if key in ASKED]


@pytest.mark.parametrize("job", [job for job in JOBS if job.inches], ids=lambda job: job.key)
@pytest.mark.parametrize(("written", "read"), [("in", "mm"), ("mm", "in")])
def test_a_job_is_known_again_when_it_is_read_in_the_other_system(job, written, read):
    own = Design.from_texts(job.texts(written, job.inches.get("fuel", "propane")))
    found, _ = job_of(Design.from_texts({**own.texts, "units": read}))
    assert found.key == job.key
    assert job_of(Design.from_texts({**own.texts, "units": read, "rows": "7"})) is None
