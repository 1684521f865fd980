"""The batch through solve(): days, what holds it up, what one more saves, wood for all moulds."""

from itertools import pairwise

import pytest
from designs import solved

from burnercalc.errors import InputErrors


def test_a_batch_of_one_takes_the_days_of_one():
    for texts in ({}, {"work_week": "5", "day_hours": "6 h", "refractory": "insulating_castable"}, {"hands": "2"}):
        r = solved(**texts)
        assert r["batch_days"] == r["batch_first_days"] == r["days_in_all"]
    assert solved()["batch_days"] == 10


def test_a_dozen_is_held_up_by_its_test_stand():
    """Twelve first fires of three days on one stand, each with a test fire that leaves it hot overnight, are 48
    days; on two 24. The rest of one burner takes six."""
    r = solved(batch_size="12", moulds="4", oven_places="4", hands="2")
    two = solved(batch_size="12", moulds="4", oven_places="4", hands="2", test_stands="2")
    assert 48 <= r["batch_days"] <= 48 + 9 and r["test_stand_saves"] == r["batch_days"] - two["batch_days"] >= 15
    assert r["batch_bottleneck"] == f"The test stand: one more saves {r['test_stand_saves']} d."
    rows = {row[0]: row for row in r.tables["one_more"].rows}
    assert rows["test stands: 1 more"][1:] == (2, two["batch_days"], r["test_stand_saves"])


def test_one_mould_holds_up_many_hands():
    """Twelve castings 48 h apart: 24 days on one mould, 12 on two."""
    r = solved(batch_size="12", oven_places="12", test_stands="12", hands="6")
    assert r["batch_bottleneck"].startswith("Moulds") and 24 <= r["batch_days"] <= 24 + 12
    assert r["mould_saves"] >= 9


def test_where_nothing_by_itself_helps_that_is_said():
    r = solved(hours_weld="1 h", hours_mould="0 h", hours_cast="0 h")
    assert r["batch_bottleneck"].startswith("The waits")
    assert r["mould_saves"] == r["oven_place_saves"] == r["test_stand_saves"] == r["hands_save"] == 0


def test_the_calendar_names_days_and_burners():
    rows = solved(batch_size="2", start_date="2026-03-02").tables["batch_days"].rows
    assert rows[0][0] == "Mon 2026-03-02" and "cast 1" in rows[0][1] and rows[0][2:] == ("", "")
    fires = [row[3] for row in rows if "heat" in row[3]]
    assert len(fires) == 6 and sum("test fire" in row[3] for row in rows) == 2
    everything = " ".join(row[1] for row in rows)
    assert all(f"{step} {n}" in everything for step in ("weld", "cast", "strip", "trim") for n in (1, 2))
    assert solved().tables["batch_days"].rows[0][0] == "day 1, Mon"


def test_a_very_long_batch_is_cut_short_and_says_so():
    r = solved(batch_size="100")
    rows = r.tables["batch_days"].rows
    assert len(rows) == 201 and rows[-1][0] == f"and so on to day {r['batch_days']}"


def test_wood_for_all_moulds_and_no_more_moulds_than_burners():
    one, three = solved(), solved(batch_size="12", moulds="3", oven_places="12", test_stands="12", hands="3")
    assert three["moulds_made"] == 3
    assert [row[0] for row in one.tables["boards"].rows] == ["ply 3/4"]
    assert (
        "3 x base board" in three.tables["boards"].rows[0][3] and "6 x mould side" in three.tables["boards"].rows[0][3]
    )
    few = solved(batch_size="2", moulds="9")
    assert few["hours_per_burner"] == solved(batch_size="2", moulds="2")["hours_per_burner"]
    mould = {row[0]: row for row in three.tables["cost_lines"].rows}["mould"]
    assert mould[2] == 3 and mould[4] == 60 and mould[3] == pytest.approx(60 / 12)


@pytest.mark.parametrize(
    "texts, field",
    [
        ({"moulds": "0"}, "moulds"),
        ({"batch_size": "0"}, "batch_size"),
        ({"batch_size": "200"}, "batch_size"),
        ({"oven_places": "0"}, "oven_places"),
        ({"test_stands": "0"}, "test_stands"),
        ({"hands": "0"}, "hands"),
        ({"day_hours": "10 min"}, "day_hours"),
        ({"batch_size": "100", "hours_weld": "80 h", "hours_finish": "70 h"}, "batch_size"),
    ],
)
def test_a_batch_that_is_none_is_refused_by_name(texts, field):
    with pytest.raises(InputErrors) as caught:
        solved(**texts)
    (error,) = caught.value.errors
    assert error.field == field and error.nearest
    solved(**{**texts, field: error.nearest})


def test_a_mix_that_is_stiff_before_it_is_placed_is_said():
    late = solved(batch_size="12", refractory="own", working_time="5 min").checks["mixes"]
    assert late.verdict == "caution" and "One block takes" in late.text
    enough = solved(batch_size="12", refractory="own", working_time="6 min", placing_rate="100 lb/h").checks["mixes"]
    assert enough.verdict != "caution"


@pytest.fixture(scope="module")
def dozen():
    return solved(batch_size="12", moulds="3", oven_places="4", hands="2", work_week="5")


def test_castings_are_those_of_the_calendar(dozen):
    """Days, blocks, mixes and bags of the plan: each block once, on the day on which the calendar has it."""
    days = {row[0]: row[1] for row in dozen.tables["batch_days"].rows}
    rows = dozen.tables["castings"].rows
    cast = []
    for day, blocks, mixes, dry, _ in rows:
        mine = [int(n) for part in blocks.split("; ") for n in part.partition(" by pair ")[0].split(", ")]
        assert mixes == len(mine) * dozen["mixes"] and dry == pytest.approx(len(mine) * dozen["dry_mass"])
        assert all(f"cast {n}" in days[day] for n in mine)
        cast += mine
    assert sorted(cast) == list(range(1, 13)) and sum("cast " in text for text in days.values()) == len(rows)
    assert rows[-1][4] == dozen["bags"] and [row[4] for row in rows] == sorted(row[4] for row in rows)
    assert sum(row[3] for row in rows) == pytest.approx(12 * dozen["dry_mass"])


def test_two_pairs_of_hands_never_do_two_things_at_once(dozen):
    jobs = dozen.part("batch").plan.jobs
    for pair in (1, 2):
        mine = [job for job in jobs if job.pair == pair and job.step != "fire"]
        assert mine and all(a.end <= b.start for a, b in pairwise(mine))
        for fire in (job for job in jobs if job.pair == pair and job.step == "fire"):
            assert all(job.end <= fire.start or job.start >= fire.end or job.step == "test" for job in mine)
    assert {job.pair for job in jobs} == {0, 1, 2}


def test_who_casts_a_block_frees_its_pins(dozen):
    """The pair that casts is there again at first set: the calendar names the same one for both, of two and of four."""
    six = solved(batch_size="6", moulds="4", oven_places="4", test_stands="4", hands="4")
    for r in (dozen, six):
        jobs = r.part("batch").plan.jobs
        casts = {job.burners: job.pair for job in jobs if job.step == "cast"}
        assert casts == {job.burners: job.pair for job in jobs if job.step == "free"} and set(casts.values()) - {1}
    assert len(set(casts.values())) > 1


def test_each_burner_of_a_dozen_has_its_test_fire_in_the_calendar(dozen):
    """On the morning after its last heat, one after the other, before another is lit on its stand; the traveller of
    each and the calendar file have it."""
    jobs = dozen.part("batch").plan.jobs
    tests = {job.burners: job for job in jobs if job.step == "test"}
    last = {job.burners: job for job in jobs if job.step == "fire"}  # in order of their start
    assert len(tests) == 12 and tests.keys() == last.keys()
    for burners, job in tests.items():
        assert job.end - job.start == dozen["test_fire_time"] / 60 and 540 <= job.start % 1440 < 720
        days_off = {4: 3, 5: 2}.get((last[burners].end // 1440) % 7, 1)  # day 1 is a Monday
        assert job.start // 1440 == last[burners].end // 1440 + days_off
    rows = dozen.tables["batch_days"].rows
    told = [part.split(" test fire of ")[1] for row in rows for part in row[3].split("; ") if "test fire" in part]
    assert sorted(int(words.split(",")[0]) for words in told) == list(range(1, 13))
    assert dozen["batch_days"] == max(job.end for job in tests.values()) // 1440 + 1


def test_the_batch_has_a_cut_list_of_its_own(dozen):
    """Each piece of the list of one burner twelve times, counted in the bars that are bought."""
    one, every = dozen.tables["cut_list"].rows, dozen.tables["batch_cut_list"].rows
    assert [(row[1], 12 * row[2], row[3], row[4]) for row in one] == [(r[1], r[2], r[3], r[4]) for r in every]
    assert dozen.tables["batch_cut_list"].title == "All pieces to cut, 12 burners"
    assert "for all 12 burners" in dozen.tables["stock"].title and "one burner" in dozen.tables["cut_list"].title


def test_the_pins_are_freed_on_the_day_of_casting(dozen):
    """Three hours after it, in the hours of work, where the day has room for that."""
    work, jobs = dozen.part("schedule").work, dozen.part("batch").plan.jobs
    cast = {job.burners: job for job in jobs if job.step == "cast"}
    freed = {job.burners: job for job in jobs if job.step == "free"}
    assert work.free == 180 and cast.keys() == freed.keys()
    for burners, job in freed.items():
        assert job.start == cast[burners].end + 180 and job.end % 1440 <= (9 + 9) * 60
    assert "free the pins of 1" in dozen.tables["batch_days"].rows[0][1]


def test_heats_and_weighings_stand_in_the_calendar(dozen):
    rows = dozen.tables["batch_days"].rows
    fires = [row[3] for row in rows if "heat" in row[3]]
    assert [fire.rpartition(", pair ")[0] for fire in fires[:3]] == [f"09:00 1, heat {n} of 3" for n in (1, 2, 3)]
    charges = [row[2].split(" ", 1)[1] for row in rows if row[2]]
    everything = " ".join(row[1] for row in rows)
    assert charges and all(everything.count(f"weigh {blocks} in the oven") == 2 for blocks in charges)
    rows = solved(refractory="insulating_castable").tables["batch_days"].rows  # held on to the next morning
    (at,) = [i for i, row in enumerate(rows) if row[2]]
    assert rows[at][2] == "09:00 1" and "weigh" not in rows[at][1]
    assert rows[at + 1][1] == "09:00 weigh 1 in the oven, 10:00 weigh 1 in the oven"


def test_the_days_of_burner_1_are_those_of_the_batch(dozen):
    """One order: what the build sheet tells of burner 1 stands at the same hour in the calendar of the batch."""
    told, days = dozen.tables["days"], {row[0].partition(",")[0]: row for row in dozen.tables["batch_days"].rows}
    assert told.title == "The days of burner 1 of 12"
    words = {
        "Weld the body": "weld 1",
        "Make the mould and set the pins": "make mould 1",
        "Mix and cast": "cast 1",
        "Free the pins at first set": "free the pins of 1",
        "Strip the mould": "strip 1",
        "Trim the block": "trim 1",
        "Clear the ports": "clear the ports of 1",
    }
    seen = 0
    for _, step, start, *_ in told.rows:
        if step in words:
            day, _, time = start.partition(", ")
            assert f"{time} {words[step]}" in days[day][1], step
            seen += 1
    assert seen == len(words)
    assert "09:00 weld 1" in days["day 1"][1] and "09:00 make mould 1" in days["day 1"][1]


def test_first_fires_in_a_kiln_are_booked_and_burn_no_gas_of_the_burner():
    """Four on one stand: their fires one after the other; in a kiln for four one charge, then four tests."""
    shop = {"batch_size": "4", "oven_places": "4", "moulds": "4"}
    stand, kiln = solved(**shop), solved(**shop, kiln="yes")
    fires = [(job.burners, job.start) for job in kiln.part("batch").plan.jobs if job.step == "fire"]
    assert len({start for _, start in fires}) == 2 and len(fires) == 8  # two heats, all four in each
    assert kiln["batch_days"] < stand["batch_days"] - 6
    assert stand["first_fire_cost"] > 0 == kiln["first_fire_cost"]
    spared = stand["cost_batch"] - kiln["cost_batch"]
    assert spared == pytest.approx(
        round(4 * stand["first_fire_cost"], 2) + 20 * (stand["moulds_made"] - kiln["moulds_made"])
    )
    (do,) = [row[1] for row in kiln.tables["care"].rows if row[0] == "First fire"]
    assert do.startswith("In the kiln") and "small torch" not in do


def test_a_kiln_that_holds_the_batch_up_is_named():
    """Six stands fire six burners side by side; in a kiln for one block they go in one after the other. On a small
    cylinder the gas is soon weighed, or test fires of 130 min hold it up as long as the kiln does."""
    shop = {"batch_size": "6", "test_stands": "6", "moulds": "6", "cylinder": "20"}
    stands, kiln = solved(**shop), solved(**shop, kiln="yes")
    days = kiln["batch_days"] - stands["batch_days"]
    assert days > 2
    assert kiln["batch_bottleneck"] == f"The kiln: first fires made on the test stand instead save {days} d."


def test_a_kiln_takes_no_steel_box_to_work():
    """A kiln was told to go to 2250 °F with the block in its welded box: it ends with the drying, at 1000 °F."""
    kiln, stand = solved(kiln="yes"), solved()
    hottest = [max(row[2] for row in each.tables["drying"].rows) for each in (kiln, stand)]
    assert hottest == pytest.approx([(1000 + 459.67) / 1.8, (2250 + 459.67) / 1.8])
    # The way up to work, 1250 °F at 150 an hour, is then none of the first fire's time.
    fired = [each.part("schedule").first_fire_s for each in (kiln, stand)]
    assert fired[1] - fired[0] == pytest.approx(1250 / 150 * 3600)
    do = next(row[1] for row in kiln.tables["care"].rows if row[0] == "First fire")
    assert "1000 °F and no hotter" in do
