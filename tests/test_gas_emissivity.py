"""Emissivity of burned gas against Leckner's formula, a chart reading and limits."""

from math import exp, log10

import pytest
from hypothesis import given
from hypothesis import strategies as st

from burnercalc.errors import InputError
from burnercalc.physics.gas_emissivity import emissivity_cubic, gas_emissivity, mean_beam_length_m


def leckner(water, carbon_dioxide, temp_K, path_m):
    """B. Leckner, Combust. Flame 19 (1972) 33, at 1 atm, as heat-transfer texts give it (recalled)."""
    t, pressure = temp_K / 1000, 1.01325

    def thin(rows, path):
        return exp(sum(log10(path) ** i * sum(c * t**j for j, c in enumerate(row)) for i, row in enumerate(rows)))

    def broadened(a, b, c, effective, peak, path):
        return 1 - (a - 1) * (1 - effective) / (a + b - 1 + effective) * exp(-c * log10(peak / path) ** 2)

    p_w, p_c = water * pressure, carbon_dioxide * pressure
    w, c = p_w * path_m * 100, p_c * path_m * 100  # bar cm
    of_water = thin(
        ((-2.2118, -1.1987, 0.035596), (0.85667, 0.93048, -0.14391), (-0.10838, -0.17156, 0.045915)), w
    ) * broadened(1.888 - 2.053 * log10(t), 1.10 / t**1.4, 0.5, pressure + 2.56 * p_w / t**0.5, 13.2 * t**2, w)
    of_carbon_dioxide = thin(
        (
            (-3.9893, 2.7669, -2.1081, 0.39163),
            (1.2710, -1.1090, 1.0195, -0.21897),
            (-0.23678, 0.19731, -0.19544, 0.044644),
        ),
        c,
    ) * broadened(1 + 0.1 / t**1.45, 0.23, 1.47, pressure + 0.28 * p_c, 0.225 * t**2, c)
    share = w / (w + c)
    overlap = (share / (10.7 + 101 * share) - 0.0089 * share**10.4) * max(log10(w + c), 0) ** 2.76
    return of_water + of_carbon_dioxide - overlap


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


def test_chart_reading():
    # A furnace of a heat-transfer text, 1200 K, 0.48 atm m of H2O and 0.30 of CO2: read from the charts for 1 atm
    # 0.23 and 0.16, less an overlap of 0.048; the correction for the water's own pressure adds up to a tenth of 0.23.
    got = gas_emissivity(water_fraction=0.16, carbon_dioxide_fraction=0.10, temp_K=1200.0, path_m=3.0)
    assert got == pytest.approx(0.23 * 1.05 + 0.16 - 0.048, rel=0.15)


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
    assert emissivity_cubic(water_fraction=0.2, carbon_dioxide_fraction=0.1, path_m=0.0) == (0.0,) * 4
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
        ("temp_K", 500.0),
        ("temp_K", float("nan")),
        ("path_m", 50.0),
        ("path_m", -1.0),
    ],
)
def test_names_the_field(field, value):
    with pytest.raises(InputError) as caught:
        gas_emissivity(**{**GOOD, field: value})
    assert caught.value.field == field


@pytest.mark.parametrize("field", ["volume_m3", "area_m2"])
def test_refuses_no_body_of_gas(field):
    with pytest.raises(InputError) as caught:
        mean_beam_length_m(**{"volume_m3": 1.0, "area_m2": 6.0, field: 0.0})
    assert caught.value.field == field
