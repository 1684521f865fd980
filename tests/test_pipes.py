import pytest
from fluids.piping import nearest_pipe

from burnercalc.design import Design
from burnercalc.errors import InputError, InputErrors
from burnercalc.link import from_link
from burnercalc.physics.pipes import pipe, pipe_as_sold, pipe_names
from burnercalc.tables import read_table

INCHES = {
    "1/8": 0.125,
    "1/4": 0.25,
    "3/8": 0.375,
    "1/2": 0.5,
    "3/4": 0.75,
    "1": 1,
    "1-1/4": 1.25,
    "1-1/2": 1.5,
    "2": 2,
    "2-1/2": 2.5,
    "3": 3,
    "3-1/2": 3.5,
    "4": 4,
}


def test_the_table_holds_the_thirteen_sizes_in_order():
    assert pipe_names() == tuple(INCHES)


@pytest.mark.parametrize("nps", INCHES)
def test_sizes_agree_with_fluids_piping(nps):
    _, bore, od, wall = nearest_pipe(NPS=INCHES[nps], schedule="40")
    got = pipe(nps)
    # fluids keeps od to 0.1 mm and wall to 0.01 mm: half of that, and twice the wall's for the bore.
    assert got.od_m == pytest.approx(od, abs=0.051e-3)
    assert got.wall_m == pytest.approx(wall, abs=0.0051e-3)
    assert got.bore_m == pytest.approx(bore, abs=0.061e-3)


@pytest.mark.parametrize(
    "nps,bore_in,area_in2",
    [
        ("1/8", 0.269, 0.0568),
        ("1", 1.049, 0.8643),
        ("1-1/2", 1.610, 2.0358),
        ("2", 2.067, 3.3556),
        ("4", 4.026, 12.7303),
    ],
)
def test_bore_and_area_of_the_pipe_tables(nps, bore_in, area_in2):
    assert pipe(nps).bore_m / 0.0254 == pytest.approx(bore_in, abs=0.0005)
    assert pipe(nps).area_m2 / 0.0254**2 == pytest.approx(area_in2, abs=0.00006)


def test_unknown_size_names_the_setting_and_the_known_sizes():
    with pytest.raises(InputError, match="1-1/2") as caught:
        pipe("1-3/8")
    assert caught.value.field == "mix_pipe"


def test_a_metric_shops_pipe_has_the_outside_of_its_own_standard():
    """Of what EN 10220 lists from DN 50 on, typed for bodies; DN 65 is 76.1 mm where 2-1/2 in pipe is 73.0."""
    dn = {f"DN {row['dn']:.0f}": row["nps"] for row in read_table("pipe_sizes")}
    rows = [row for row in read_table("steel_pipes") if row["unit"] == "mm" and row["name"] in dn]
    assert len(rows) >= 4
    for row in rows:
        assert pipe_as_sold(dn[row["name"]], "mm").od_m * 1000 == pytest.approx(row["outside"], abs=1e-9)
    assert all(pipe_as_sold(nps, "in") == pipe(nps) for nps in INCHES)
    # Elsewhere the two are the same to a third of a millimetre.
    apart = {nps: abs(pipe_as_sold(nps, "mm").od_m - pipe(nps).od_m) * 1000 for nps in INCHES}
    assert max(apart, key=apart.get) == "2-1/2" and sorted(apart.values())[-2] < 0.35


@pytest.mark.parametrize("key", ["mix_pipe", "inlet", "aspirated_throat"])
@pytest.mark.parametrize(
    "text, size",
    [
        *(("2", "2"), ("2 in", "2"), ('2"', "2"), ("2 inch", "2"), ("DN 50", "2"), ("dn50", "2"), ("50 mm", "2")),
        *(("50", "2"), ("DN50 mm", "2"), ("1 1/2", "1-1/2"), ("1-1/2 in", "1-1/2"), ("1½″", "1-1/2")),
        *(("1.5 in", "1-1/2"), ("1,5 in", "1-1/2"), ("40 mm", "1-1/2"), ("2 in, DN 50", "2"), ("0.75", "3/4")),
    ],
)
def test_a_size_is_read_as_the_trade_says_it(key, text, size):
    """`mix_pipe=2 in` was refused, with 1-1/2 as the nearest."""
    assert Design.from_texts({key: text}) == Design.from_texts({key: size})
    assert from_link(f"#{key}={text}")[1] == []


@pytest.mark.parametrize(
    "text, near",
    [("5 in", "4"), ("48.3 mm", "2"), ("DN 45", "1-1/2 or 2"), ("3 ft", "1-1/2"), ("", "1-1/2"), ("-2", "1/8")],
)
def test_a_size_that_no_shop_has_offers_the_nearest(text, near):
    with pytest.raises(InputErrors) as refused:
        Design.from_texts({"mix_pipe": text})
    assert refused.value.errors[0].nearest in near.split(" or ")
