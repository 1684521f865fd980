"""The batch through solve(): days, what holds it up, what one more saves, wood for all moulds."""

import pytest
from designs import solved

from burnercalc.errors import InputErrors


def test_a_batch_of_one_takes_the_days_of_one():
    for texts in ({}, {"work_week": "5", "day_hours": "6 h", "refractory": "insulating_castable"}, {"hands": "2"}):
        r = solved(**texts)
        assert r["batch_days"] == r["batch_first_days"] == r["days_in_all"]
    assert solved()["batch_days"] == 9


def test_a_dozen_is_held_up_by_its_test_stand():
    """Twelve first fires of three days on one stand are 36 days; on two 18. The rest of one burner takes six."""
    r = solved(batch_size="12", moulds="4", oven_places="4", hands="2")
    two = solved(batch_size="12", moulds="4", oven_places="4", hands="2", test_stands="2")
    assert 36 <= r["batch_days"] <= 36 + 9 and r["test_stand_saves"] == r["batch_days"] - two["batch_days"] >= 15
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
    fires = [row[0] for row in rows if row[3]]
    assert len(fires) == 6
    everything = " ".join(row[1] for row in rows)
    assert all(f"{step} {n}" in everything for step in ("weld", "cast", "strip", "trim") for n in (1, 2))
    assert solved().tables["batch_days"].rows[0][0] == "day 1, Mon"


def test_a_very_long_batch_is_cut_short_and_says_so():
    r = solved(batch_size="100")
    rows = r.tables["batch_days"].rows
    assert len(rows) == 201 and rows[-1][0] == f"and so on to day {r['batch_days']}"


def test_wood_for_all_moulds_and_no_more_moulds_than_burners():
    one, three = solved(), solved(batch_size="12", moulds="3")
    assert [row[0] for row in one.tables["boards"].rows] == ["ply 3/4"]
    assert "3 base board" in three.tables["boards"].rows[0][3] and "6 mould side" in three.tables["boards"].rows[0][3]
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
