"""The jobs of the first screen: each starts from a design that can be built, the same in both systems of units."""

import json
from itertools import product

import pytest

from burnercalc import worker
from burnercalc.design import Design, supplied
from burnercalc.errors import InputErrors
from burnercalc.examples import EXAMPLES
from burnercalc.find.good import texts_of
from burnercalc.find.shops import built, sample
from burnercalc.jobs import ASKED, JOBS, NONE_CHOSEN, begun, job_of, refitted
from burnercalc.link import from_link, to_link
from burnercalc.making.stock import pins_m
from burnercalc.result import solve
from burnercalc.rooms import ROOMS
from burnercalc.settings import BY_KEY

FUELS = [value for value, _ in BY_KEY["fuel"].choices]
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


def test_pins_of_every_job_are_sold():
    """The metric forge on house gas asked for dowels of 7.2 mm, the one on propane 6.5, those in inches 9/32."""
    for job in (*JOBS, NONE_CHOSEN):
        for sizes, fuel in product(("in", "mm"), FUELS):
            design = Design.from_texts({"units": sizes, **job.texts(sizes, fuel)})
            assert any(abs(design.port_diameter - one) < 1e-6 for one in pins_m(sizes)), (job.key, sizes, fuel)


@pytest.mark.parametrize("system", ["in", "mm"])
def test_the_default_stays_good_where_benches_blowers_and_days_are_off(system):
    """A newcomer copies it, and lights it by the one card; in millimetres its flame could run back in 14 of them."""
    shops = sample(Design.from_texts({"units": system}))
    assert shops.good >= 90 and shops.cards == (("holds", shops.shops),)


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


@pytest.mark.parametrize("units", ["in", "mm"])
@pytest.mark.parametrize("job", [job for job in JOBS if job.inches], ids=ids)
def test_no_job_starts_with_a_fault_whatever_is_burned(job, units):
    """A newcomer copies it. Butane lights so easily that a very hot forge is never shut down without its blower."""
    before = None
    for fuel in FUELS:
        design = Design.from_texts(job.texts(units, fuel))
        before = solve(design, before)
        assert design.fuel == fuel and job_of(design) == (job, units)
        faults = {check.key: check.verdict for check in before.checks.values() if check.fault}
        hot = fuel == "butane" and job.key in ("weld", "melt_iron")
        assert faults == ({"shut_down": "caution"} if hot else {}), faults


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


@pytest.mark.parametrize("job", [JOBS[0], NONE_CHOSEN], ids=ids)
@pytest.mark.parametrize("fuel", ["propane", "natural_gas"])
def test_a_small_forge_in_millimetres_has_no_fault(job, fuel):
    """On house gas a hot flame could run back at low fire in the three smaller ones; the burner of the larger lets in
    more than twice the smallest that it is for before a flame is seen."""
    first, before = {"units": "mm", **job.metric}, None
    for sizes in ("180 100 90", "200 100 100", "225 110 110", "250 125 125"):
        typed = {f"chamber_{side}": f"{size} mm" for side, size in zip(("length", "width", "height"), sizes.split())}
        small = refitted(first, {**first, **typed})
        gas = supplied(small, refitted(small, {**small, "fuel": fuel}))
        before = solve(Design.from_texts(gas), before)
        assert [check.text for check in before.checks.values() if check.fault] == [], sizes


@pytest.mark.parametrize("units", ["in", "mm"])
@pytest.mark.parametrize("fuel", ["natural_gas", "butane"])
def test_before_a_job_is_chosen_another_gas_ends_good(units, fuel):
    """As the page opens, on either tape, with nothing set but the gas."""
    first = {"units": units} if units == "mm" else {}
    texts = refitted(first, {**first, "fuel": fuel})
    assert solve(Design.from_texts(supplied(first, texts))).worst == "good"
    back = {key: text for key, text in texts.items() if key != "fuel"}
    assert refitted(texts, back) == first


HIGH = ("5000 ft", "6000 ft", "7000 ft")


@pytest.mark.parametrize("units", ["in", "mm"])
@pytest.mark.parametrize("altitude", HIGH)
def test_before_a_job_is_chosen_house_gas_is_lit_high_up_too(units, altitude):
    """Whichever is typed first; in inches it could run back at a lip that glows from 6,000 ft on."""
    first = {"units": units} if units == "mm" else {}
    gas = {**refitted(first, {**first, "fuel": "natural_gas"}), "altitude": altitude}
    high = {**first, "altitude": altitude}
    assert refitted(high, {**high, "fuel": "natural_gas"}) == gas
    assert solve(Design.from_texts(supplied(first, gas))).worst == "good"


@pytest.mark.parametrize("units", ["in", "mm"])
@pytest.mark.parametrize("fuel", ["propane", "natural_gas"])
def test_what_stops_a_job_high_up_is_mended_by_each_that_it_offers(units, fuel):
    """So it is with the bare sizes of the command line on house gas, which are lit with a guard or larger ports; a
    thicker block and, where no jet was chosen, another jet were offered there and mended nothing."""
    before, stops = None, 0
    starts = [job.texts(units, fuel) for job in JOBS if job.inches] + [{"units": units, "fuel": fuel}]
    for texts, altitude in product(starts, HIGH[1:]):
        before = solve(Design.from_texts({**texts, "altitude": altitude}), before)
        for check in before.checks.values():
            if check.verdict == "stop":
                stops += 1
                assert check.offered, (texts, altitude, check.text)
                for change in check.offered:
                    moved = texts_of(built(before), BY_KEY[change.setting], change.move, (1, 2, 4, 8, 16, 32))
                    assert any(mends(before, check.key, {change.setting: text}) for text in moved), (texts, change)
    assert stops or fuel == "propane"


def mends(before, key, moved):
    try:
        after = solve(before.design.changed(moved), before)
    except InputErrors:
        return False
    return key in after.checks and after.checks[key].verdict != "stop"


@pytest.mark.parametrize("units", ["in", "mm"])
@pytest.mark.parametrize("job", [job for job in JOBS if job.opens], ids=ids)
def test_a_burner_that_is_measured_starts_from_one_that_can_be_lit_but_stays_as_it_is(job, units):
    """These jobs set nothing: what the page shows stays. House gas brings ports that hold it, or a guard; not where
    ports of one's own are marked as mine, and of those it is told that they must not be lit so."""
    first = {"units": units} if units == "mm" else {}
    assert not job.texts(units, "propane").keys() - {"units"} and not job.inches
    shown = ask(kind="solve", settings={**first, "fuel": "natural_gas"}, before=first)
    assert not [check for check in shown["checks"] if check["verdict"] in ("stop", "caution")]
    own = {"port_diameter": "1/4 in", "lit_by": "stand", "mine": "port_diameter,lit_by"}
    mine = ask(kind="solve", settings={**first, **own, "fuel": "natural_gas"}, before={**first, **own})
    assert mine["texts"]["port_diameter"] == "1/4 in" and mine["texts"].get("lit_by", "stand") == "stand"
    assert [check["key"] for check in mine["checks"] if check["verdict"] == "stop"]


@pytest.mark.parametrize("fuel", ["propane", "natural_gas"])
def test_before_a_job_is_chosen_a_small_chamber_brings_the_small_forge(fuel):
    first = supplied({}, refitted({}, {"fuel": fuel}))
    small = refitted(first, {**first, "chamber_length": "8 in", "chamber_width": "4 in", "chamber_height": "4 in"})
    result = solve(Design.from_texts(small))
    assert result.worst in ("good", "note", "caution") and job_of(result.design)[0].key == "forge"


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


def test_what_somebody_has_stays_and_what_is_left_out_is_said():
    """A blower, the shop's sizes, what is marked as mine; a burner is not built for a blower that nobody has."""
    bronze, has = JOBS[3], {"blower_free_flow": "45 cfm"}
    reply = ask(kind="job", settings={**has, "rows": "3", "mine": "wall", "wall": "3/16 in"}, job="melt_bronze")
    design = from_link(reply["link"])[0]
    kept = {**bronze.texts("in", "propane"), **has, "wall": "3/16 in"}
    assert design == Design.from_texts(kept) and job_of(Design.from_texts({**kept, "wall": "1/4 in"})) is None
    assert reply["brought"].endswith(" What you had set is left out: rows.") and "mine=wall" in reply["link"]
    assert reply["kept"] == 0  # its own wall is no other
    again = Design.from_texts(begun(JOBS[1], begun(JOBS[0], has)))  # and over the next job
    assert again == Design.from_texts({**JOBS[1].inches, **has, "blower_shutoff_pressure": "4 inH2O"})
    gas = Design.from_texts(refitted(again.texts, {**again.texts, "fuel": "natural_gas"}))
    assert job_of(gas)[0] is JOBS[1] and gas.blower_free_flow == again.blower_free_flow
    inch_shop = from_link(ask(kind="job", settings={"units": "mm", "sizes": "in"}, job="melt_bronze")["link"])[0]
    assert inch_shop == Design.from_texts(bronze.texts("in", "propane")).read_in("mm")
    for scenario in EXAMPLES:  # nobody's own blower
        assert begun(bronze, scenario.inches) == bronze.texts("in", scenario.inches.get("fuel", "propane"))


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
        after = refitted(before, {**before, "fuel": fuel})
        assert after == {**start(fuel=fuel, **chamber), "fuel": fuel}
        before = after


def test_a_job_begun_with_nothing_mine_any_more_is_the_job_again():
    """A burner that was found marks what it is made of: its blower goes too, which somebody has otherwise."""
    found = {"port_diameter": "1/4 in", "blower_shutoff_pressure": "6 inH2O", "blower_free_flow": "200 cfm"}
    texts = {**found, "mine": ",".join([*found, "units"])}
    kept = ask(kind="job", settings=texts, job="heat_treat")
    assert kept["kept"] == len(found) and all(BY_KEY[key].label.lower() in kept["brought"] for key in found)
    free = ask(kind="job", settings=texts, job="heat_treat", release=True)
    assert from_link(free["link"])[0] == from_link(ask(kind="job", settings={}, job="heat_treat")["link"])[0]


def test_what_is_mine_or_changed_too_is_not_brought_and_another_burner_stays():
    before = start()
    brought = JOBS[0].texts("in", "natural_gas")
    own = {**brought, "fuel": "natural_gas"}
    del own["port_diameter"]
    assert refitted(before, {**before, "fuel": "natural_gas"}, "port_diameter") == own
    both = {**before, "fuel": "natural_gas", "port_diameter": "5/16 in"}
    assert refitted(before, both) == {**both, **brought, "port_diameter": "5/16 in"}
    own = {**before, "rows": "4"}
    assert refitted(own, {**own, "fuel": "butane"}) == {**own, "fuel": "butane"}


def ask(**request):
    return json.loads(worker.handle(json.dumps(request)))


def test_the_page_is_told_the_job_and_what_was_brought():
    link = ask(kind="job", settings={"fuel": "butane", "units": "mm"}, job="forge")["link"]
    assert from_link(link)[0] == Design.from_texts(start("mm", "butane"))
    before = start()
    reply = ask(kind="solve", settings={**before, "fuel": "natural_gas"}, before=before)
    assert reply["job"] == "forge"
    assert reply["brought"] == f"For natural gas {len(reply['moved'])} settings changed too."
    assert "Port diameter: 5/16 in, was 1/4 in" in reply["moved"]
    again = ask(kind="solve", settings=reply["texts"], before=reply["texts"])
    assert again["job"] == "forge" and again["brought"] == "" and again["link"] == reply["link"]


def test_what_the_first_screen_asks_is_no_setting_of_a_fuel():
    assert not [key for job in JOBS for both in job.fuels.values() for texts in both for key in texts if key in ASKED]


@pytest.mark.parametrize("job", [job for job in JOBS if job.inches], ids=lambda job: job.key)
@pytest.mark.parametrize(("written", "read"), [("in", "mm"), ("mm", "in")])
def test_a_job_is_known_again_when_it_is_read_in_the_other_system(job, written, read):
    own = Design.from_texts(job.texts(written, job.inches.get("fuel", "propane")))
    there = own.changed({"units": read})
    assert job_of(there) == (job, written)
    assert job_of(there.changed({"rows": "7"})) is None


@pytest.mark.parametrize("job, units", STARTS, ids=ids)
def test_a_burner_begun_on_one_tape_is_the_same_on_the_other(job, units, solved):
    """To the last digit: every number and every verdict; and back it is written as it was."""
    here = solved[job.key, units]
    there = solve(here.design.changed({"units": "in" if units == "metric" else "mm"}), here)
    assert there.design.units != here.design.units
    for key, answer in here.answers.items():
        assert there.answers[key].value == answer.value or isinstance(answer.value, str), key
    assert {key: check.verdict for key, check in there.checks.items()} == {
        key: check.verdict for key, check in here.checks.items()
    }
    assert there.design.changed({"units": str(here.design.units)}).texts == here.design.texts


def test_the_page_says_what_another_tape_did_and_offers_its_sizes():
    before = start(chamber_length="14 in")
    there = ask(kind="solve", settings={**before, "units": "mm"}, before=before)
    assert there["brought"] == "The same burner on the other tape: what was not set keeps its inch sizes."
    assert there["offer"] == ["Take metric sizes", "sizes", "mm"] and there["job"] == "forge"
    _, key, text = there["offer"]
    metric = ask(kind="solve", settings={**there["texts"], key: text}, before=there["texts"])
    assert Design.from_texts(metric["texts"]) == Design.from_texts({**JOBS[0].metric, "chamber_length": "14 in"})
    assert metric["job"] == "forge"
    assert "metric sizes" in metric["brought"] and "offer" not in metric
    later = ask(kind="solve", settings=there["texts"], before=there["texts"])
    assert later["offer"] == there["offer"]  # till it is taken, not only at once
    bare = ask(kind="solve", settings={"units": "mm"}, before={})
    assert bare["texts"] == {"units": "mm"} and "metric sizes" in bare["brought"]


def test_another_fuel_brings_a_read_over_job_what_it_brings_where_it_was_written():
    inches = Design.from_texts(start())
    read = inches.changed({"units": "mm"})
    gas = Design.from_texts(refitted(read.texts, {**read.texts, "fuel": "natural_gas"}))
    assert gas == Design.from_texts({**start(fuel="natural_gas"), "fuel": "natural_gas"}).read_in("mm")
    back = refitted(gas.texts, {**gas.texts, "fuel": "propane"})
    assert Design.from_texts(back) == read


ODD = [  # chambers far from a job's own: inside sizes in inches, or in 25 mm
    ("forge", "8 4 4", "propane", "in"),
    ("forge", "8 4 4", "butane", "mm"),
    ("forge", "24 10 8", "propane", "in"),
    ("weld", "10 5 5", "propane", "in"),
    ("weld", "8 4 4", "natural_gas", "mm"),
    ("melt_bronze", "14 12", "natural_gas", "mm"),
    ("melt_iron", "10 6", "natural_gas", "in"),
]


def typed_in(sizes, units):
    sides = ("length", "width", "height") if sizes.count(" ") == 2 else ("length", "diameter")
    scale = 1 if units == "in" else 25
    return {f"chamber_{side}": f"{scale * int(size)} {units}" for side, size in zip(sides, sizes.split())}


def test_a_job_suits_the_chamber_that_is_typed():
    """Typed after the job or before it, in whatever order; and back in its own chamber it is as it was."""
    before = None
    for key, sizes, fuel, units in ODD:
        job = next(job for job in JOBS if job.key == key)
        own = Design.from_texts({**job.texts(units, fuel), "fuel": fuel}).texts
        texts, shown = own, {key: own[key] for key in ("units", "fuel", "chamber_shape") if key in own}
        for side, size in typed_in(sizes, units).items():
            texts = refitted(texts, {**texts, side: size})
        design = Design.from_texts(texts)
        assert job_of(design) == (job, units)
        before = solve(design, before)
        assert before.worst != "stop", (
            key,
            sizes,
            fuel,
            [c.text for c in before.checks.values() if c.verdict == "stop"],
        )
        assert Design.from_texts(begun(job, {**shown, **typed_in(sizes, units)})) == design
        back = {side: Design.from_texts(own).text(side) for side in typed_in(sizes, units)}
        for side, size in back.items():
            texts = refitted(texts, {**texts, side: size})
        assert Design.from_texts(texts) == Design.from_texts(own)


def test_the_page_says_what_a_chamber_and_a_job_bring():
    before = start(chamber_length="8 in")
    reply = ask(kind="solve", settings={**before, "chamber_width": "4 in"}, before=before)
    assert reply["brought"] == f"For a chamber of this size {len(reply['moved'])} settings changed too."
    assert any(line.startswith("Body length: 7 in, was ") for line in reply["moved"]) and reply["job"] == "forge"
    begins = ask(kind="job", settings={}, job="forge")
    assert begins["brought"] == "Forge: 4 settings changed."  # all of them, not only what the fire needed follows from
    assert [line.split(":")[0] for line in begins["moved"]] == [
        "Lining",
        "Opening depth",
        "Heat-up time",
        "Firing rate",
    ]
    weld = ask(kind="job", settings=begun(JOBS[0], {}), job="weld")["moved"]
    assert "Port diameter: 5/16 in, was 1/4 in" in weld and any(line.startswith("Cylinders") for line in weld)


@pytest.mark.parametrize(
    "chamber, less",
    [
        ({"chamber_length": "24 in", "chamber_width": "10 in", "chamber_height": "10 in"}, True),
        ({"rows": "4"}, False),  # what is needed stands beside it
        ({}, False),  # typed as it stands, it is as untouched
    ],
)
def test_a_set_fire_beside_the_need_is_told_and_fitted_to_the_chamber(chamber, less):
    reply = ask(kind="solve", settings=chamber)
    needed = reply["answers"]["firing_rate_needed"]["value"]
    said = next(c["text"] for c in reply["checks"] if c["key"] == "rate_for_need")
    assert reply["fit"]["words"] == (said if less else "") and (" later " in said) == less
    fitted = ask(kind="solve", settings={**chamber, **reply["fit"]["settings"]})
    assert fitted["answers"]["firing_rate_gross"]["value"] == pytest.approx(needed) and not fitted["fit"]
    assert not ask(kind="solve", settings={**chamber, "mine": "firing_rate"})["fit"]  # it stays


def test_a_fire_near_the_need_is_not_asked_about():
    assert not ask(kind="solve", settings={"firing_rate": "51 kBtu/h"})["fit"]  # the chamber needs 50.6
    assert ask(kind="solve", settings={"firing_rate": "50 kBtu/h"})["fit"]


def test_a_bare_number_brings_what_it_brings_with_its_unit():
    """5.5 left the burner as it was and was a stop; 5.5 in changed twelve settings with it."""
    for units, bare, told in (("in", "5.5", "5.5 in"), ("mm", "140", "140 mm")):
        before = {"units": units} if units == "mm" else {}
        found = [refitted(before, {**before, "chamber_length": text}) for text in (bare, told)]
        assert len(found[0]) > 8
        assert {**found[0], "chamber_length": told} == found[1]


def test_a_burner_that_stands_is_not_too_cold_to_cast():
    """Its card for a day of 10 degF was called a stop of casting, whose cure was the day."""
    cold = {"ambient_temperature": "10 degF"}
    assert solve(Design.from_texts(cold)).checks["curing_air"].verdict == "stop"
    stands = solve(Design.from_texts({**cold, "jet_drill": "#52", "slide_hole": "15/32 in"}))
    assert "curing_air" not in stands.checks
