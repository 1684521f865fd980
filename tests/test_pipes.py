import pytest
from fluids.piping import nearest_pipe

from burnercalc.errors import InputError
from burnercalc.physics.pipes import pipe, pipe_names

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
