"""Emissivity of burned gas against charts, Leckner's formula and limits."""

import pytest
from gray_gas import gas_emissivity
from hypothesis import given
from hypothesis import strategies as st
from leckner import leckner, leckner_exchange, overlap
from rows import rows

from burnercalc.errors import InputError
from burnercalc.physics.gas_emissivity import exchange_cubic, mean_beam_length_m


@pytest.mark.parametrize("temp_K", [1000.0, 1500.0, 1800.0, 2000.0])
@pytest.mark.parametrize("path_atm_m", [0.01, 0.03, 0.1, 0.3, 1.0])
@pytest.mark.parametrize("ratio", [1.0, 1.33, 2.0])
def test_near_leckner(temp_K, path_atm_m, ratio):
    both = 0.27
    water, path_m = both * ratio / (1 + ratio), path_atm_m / both
    got = gas_emissivity(water_fraction=water, carbon_dioxide_fraction=both - water, temp_K=temp_K, path_m=path_m)
    assert got == pytest.approx(leckner(water, both - water, temp_K, path_m), rel=0.15)


@pytest.mark.parametrize(
    "ratio, temp_K, path_atm_m, expected",
    # Independent calculation from the same table.
    [(1, 1000, 0.01, 0.0662), (1, 1600, 0.03, 0.0615), (1, 2000, 0.3, 0.1719), (2, 1600, 0.1, 0.1410)],
)
def test_independent_calculation(ratio, temp_K, path_atm_m, expected):
    got = gas_emissivity(
        water_fraction=0.1 * ratio, carbon_dioxide_fraction=0.1, temp_K=temp_K, path_m=path_atm_m / (0.1 + 0.1 * ratio)
    )
    assert got == pytest.approx(expected, abs=1e-4)


def exchange_W_m2(water, carbon_dioxide, path_m, gas_K, wall_K, wall_emissivity):
    c = exchange_cubic(
        water_fraction=water,
        carbon_dioxide_fraction=carbon_dioxide,
        path_m=path_m,
        wall_emissivity=wall_emissivity,
    )

    def sent(temp_K):
        return 5.670374419e-8 * temp_K**4 * sum(part * temp_K**n for n, part in enumerate(c))

    return sent(gas_K) - sent(wall_K)


@pytest.mark.parametrize("water, carbon_dioxide", [(0.155, 0.116), (0.19, 0.095), (0.13, 0.11)])
@pytest.mark.parametrize("path_m", [0.1, 0.3])
@pytest.mark.parametrize("gas_K, wall_K", [(1700, 1500), (1850, 1500), (1700, 1150), (1950, 1700)])
def test_exchange_near_leckner(water, carbon_dioxide, path_m, gas_K, wall_K):
    """His emissivity and absorptivity, every reflection summed; walls as gray as hot refractory."""
    mixture = (water, carbon_dioxide, path_m, gas_K, wall_K, 0.6)
    assert exchange_W_m2(*mixture) == pytest.approx(leckner_exchange(*mixture), rel=0.16)


@pytest.mark.parametrize("wall_emissivity", [0.3, 0.6, 1.0])
def test_exchange_is_the_sum_of_its_reflections(wall_emissivity):
    """What the gas sends out is taken by the walls or thrown back, and then thinned by the gas again, and so on."""
    mixture = {"water_fraction": 0.15, "carbon_dioxide_fraction": 0.1}

    def emitted(crossings):
        return gas_emissivity(**mixture, temp_K=1700.0, path_m=0.1 * crossings) if crossings else 0.0

    taken = sum(
        wall_emissivity * (1 - wall_emissivity) ** n * (emitted(n + 1) - emitted(n))  # what n + 1 crossings add
        for n in range(60)
    )
    c = exchange_cubic(**mixture, path_m=0.1, wall_emissivity=wall_emissivity)
    assert sum(part * 1700.0**n for n, part in enumerate(c)) == pytest.approx(taken, rel=1e-8)


def test_chart_reading():
    # A furnace of a heat-transfer text, 1200 K, 0.48 atm m of H2O and 0.30 of CO2: read from the charts for 1 atm
    # 0.23 and 0.16, less an overlap of 0.048; the correction for the water's own pressure adds up to a tenth of 0.23.
    got = gas_emissivity(water_fraction=0.16, carbon_dioxide_fraction=0.10, temp_K=1200.0, path_m=3.0)
    assert got == pytest.approx(0.23 * 1.05 + 0.16 - 0.048, rel=0.15)


CHART = {(row["temp_K"], row["path_atm_m"]): row for row in rows("gas_emissivity_chart.csv")}


@pytest.mark.parametrize("temp_K", [1000.0, 2000.0])
@pytest.mark.parametrize("water_atm_m, carbon_dioxide_atm_m", [(0.01, 0.01), (0.02, 0.01), (0.1, 0.1), (0.2, 0.1),
                                                               (0.2, 0.2), (0.4, 0.2), (0.4, 0.4)])  # fmt: skip
def test_within_a_fifth_of_the_charts(temp_K, water_atm_m, carbon_dioxide_atm_m):
    """Water's own pressure, a tenth and more here, adds up to a tenth to what the charts give for none of it."""
    paths = water_atm_m, carbon_dioxide_atm_m
    water, carbon_dioxide = (0.27 * path / sum(paths) for path in paths)
    got = gas_emissivity(
        water_fraction=water, carbon_dioxide_fraction=carbon_dioxide, temp_K=temp_K, path_m=sum(paths) / 0.27
    )
    chart = CHART[temp_K, water_atm_m]["water"] + CHART[temp_K, carbon_dioxide_atm_m]["carbon_dioxide"]
    assert got == pytest.approx(chart - overlap(*(path * 101.325 for path in paths)), rel=0.20)


@pytest.mark.parametrize("row", CHART.values(), ids=lambda row: f"{row['temp_K']:g}-{row['path_atm_m']:g}")
def test_leckner_keeps_to_the_charts(row):
    """So the formula that ours is held against was recalled right; each gas alone and as thin as can be."""
    path_m = row["path_atm_m"] / 1e-4
    assert leckner(1e-4, 1e-9, row["temp_K"], path_m) == pytest.approx(row["water"], rel=0.15)
    assert leckner(1e-9, 1e-4, row["temp_K"], path_m) == pytest.approx(row["carbon_dioxide"], rel=0.19)


def test_beam_lengths_of_texts():
    assert mean_beam_length_m(1.0, 6.0) == pytest.approx(0.6)  # cube, of its side
    assert mean_beam_length_m(0.25, 1.0) == pytest.approx(0.9)  # long cylinder, of its diameter: 0.95 in texts, - 5 %


@given(
    water=st.floats(0.001, 0.3),
    carbon_dioxide=st.floats(0.001, 0.2),
    temp_K=st.floats(600, 2400),
    path_m=st.floats(0.0, 10.0),
)
def test_properties(water, carbon_dioxide, temp_K, path_m):
    def e(path_m, temp_K=temp_K, pressure_Pa=101325.0):
        return gas_emissivity(
            water_fraction=water,
            carbon_dioxide_fraction=carbon_dioxide,
            temp_K=temp_K,
            path_m=path_m,
            pressure_Pa=pressure_Pa,
        )

    assert 0 <= e(path_m) < 1
    assert e(path_m + 0.1) > e(path_m)
    # Half the pressure is half the path.
    assert e(path_m, pressure_Pa=50662.5) == pytest.approx(e(path_m / 2), rel=1e-12)
    # What the gas radiates rises with its temperature all the same.
    if 0.01 < path_m and temp_K < 2300:
        assert e(path_m, temp_K + 50) * (temp_K + 50) ** 4 > e(path_m) * temp_K**4


def test_limits():
    assert exchange_cubic(water_fraction=0.2, carbon_dioxide_fraction=0.1, path_m=0.0) == (0.0,) * 4
    assert gas_emissivity(water_fraction=0.0, carbon_dioxide_fraction=0.0, temp_K=1500.0, path_m=1.0) == 0
    alone = gas_emissivity(water_fraction=0.2, carbon_dioxide_fraction=0.0, temp_K=1500.0, path_m=1.0)
    at_two = gas_emissivity(water_fraction=0.2 * 2 / 3, carbon_dioxide_fraction=0.2 / 3, temp_K=1500.0, path_m=1.0)
    assert alone == pytest.approx(at_two, rel=1e-12)
    both = [
        gas_emissivity(
            water_fraction=0.15 * 2 * r / (1 + r), carbon_dioxide_fraction=0.3 / (1 + r), temp_K=1500.0, path_m=1.0
        )
        for r in (1.0, 1.5, 2.0)
    ]
    assert both[1] == pytest.approx((both[0] + both[2]) / 2, rel=1e-12)


GOOD = {"water_fraction": 0.15, "carbon_dioxide_fraction": 0.1, "temp_K": 1500.0, "path_m": 0.1}


@pytest.mark.parametrize(
    "field, value",
    [
        ("water_fraction", -0.1),
        ("carbon_dioxide_fraction", 1.1),
        ("path_m", 50.0),
        ("path_m", -1.0),
    ],
)
def test_names_the_field(field, value):
    with pytest.raises(InputError) as caught:
        gas_emissivity(**{**GOOD, field: value})
    assert caught.value.field == field


@pytest.mark.parametrize("value", [0.0, 1.1, float("nan")])
def test_refuses_walls_that_are_none(value):
    with pytest.raises(InputError) as caught:
        exchange_cubic(water_fraction=0.15, carbon_dioxide_fraction=0.1, path_m=0.1, wall_emissivity=value)
    assert caught.value.field == "wall_emissivity"


@pytest.mark.parametrize("field", ["volume_m3", "area_m2"])
def test_refuses_no_body_of_gas(field):
    with pytest.raises(InputError) as caught:
        mean_beam_length_m(**{"volume_m3": 1.0, "area_m2": 6.0, field: 0.0})
    assert caught.value.field == field
