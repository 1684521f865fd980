"""Heating of bars and charges against closed forms, EN 1993-1-2 by scipy, and hand figures."""

from math import atan, log, pi

import pytest
from ht.radiation import q_rad
from hypothesis import given
from hypothesis import strategies as st
from rows import rows

from burnercalc.errors import InputError
from burnercalc.physics.metals import metal_heat_J_kg, metal_keys
from burnercalc.physics.throughput import (
    VIEW,
    bar_flux_W_m2,
    bar_heat_time_s,
    bar_throughput_kg_s,
    bars_on_floor,
    charge_rate_kg_s,
    surface_emissivity,
)

SHOP_K, WORK_K, CHAMBER_K, LB_H_KG_S = 294.15, 1422.04, 1505.37, 0.45359237 / 3600
BAR = {
    "metal_key": "steel",
    "diameter_m": 0.0254,
    "start_temp_K": SHOP_K,
    "end_temp_K": WORK_K,
    "chamber_temp_K": CHAMBER_K,
}


@pytest.mark.parametrize("row", rows("bar_times.csv"), ids=lambda row: f"{row['diameter_m']}-{row['end_C']:g}")
def test_steel_against_its_differential_equation(row):
    assert surface_emissivity("steel") == row["emissivity"]
    got = bar_heat_time_s(
        metal_key="steel",
        diameter_m=row["diameter_m"],
        start_temp_K=row["start_C"] + 273.15,
        end_temp_K=row["end_C"] + 273.15,
        chamber_temp_K=row["chamber_C"] + 273.15,
        view=row["view"],
        film_W_m2K=row["film_W_m2K"],
    )
    assert got == pytest.approx(row["time_s"], rel=0.002)


def test_closed_form_for_radiation_alone():
    # Incropera, 5.18, a lump of constant c from Ti to T in surroundings at Tc:
    # t = rho c D / 4 / (4 e sigma Tc**3) [f(T) - f(Ti)],   f = ln((Tc + T)/(Tc - T)) + 2 atan(T/Tc)
    # Steel holds 650 J/kgK from 900 degC up (EN 1993-1-2).
    start, end, hot, e = 1200.0, 1400.0, 1500.0, 0.8

    def part(temp):
        return log((hot + temp) / (hot - temp)) + 2 * atan(temp / hot)

    exact = 7850 * 650 * 0.03 / 4 / (4 * e * 5.670374419e-8 * hot**3) * (part(end) - part(start))
    # start_temp_K is a shop temperature, so the time is the difference of two from cold.
    times = [
        bar_heat_time_s(
            metal_key="steel",
            diameter_m=0.03,
            start_temp_K=SHOP_K,
            end_temp_K=temp,
            chamber_temp_K=hot,
            view=1.0,
            film_W_m2K=0.0,
        )
        for temp in (start, end)
    ]
    assert times[1] - times[0] == pytest.approx(exact, rel=0.002)


def test_flux_against_ht():
    got = bar_flux_W_m2(temp_K=700.0, chamber_temp_K=1500.0, emissivity=0.8, view=0.75, film_W_m2K=40.0)
    # ht carries the constant of CODATA 2014.
    assert got == pytest.approx(q_rad(0.6, 1500.0, 700.0) + 40 * 800, rel=3e-6)


def test_an_inch_of_steel_is_about_as_thick_as_a_lump_may_be():
    """Biot number h D/(4 k) of 0.1, steel's k at 27.3 W/m/K hot (EN 1993-1-2)."""
    flux = bar_flux_W_m2(temp_K=1400.0, chamber_temp_K=1500.0, emissivity=0.8, view=0.75, film_W_m2K=40.0)
    assert 0.08 < flux / (1500.0 - 1400.0) * 0.0254 / (4 * 27.3) < 0.13


def test_bars_on_floor_by_counting():
    # 6 in holds two bars of 1 in (gaps 1 1 1 of 4 left), 5 in just two, 3 in one, and 1 in one that touches both walls.
    assert [bars_on_floor(width_m=w, diameter_m=1.0) for w in (0.9, 1.0, 3.0, 5.0, 6.0, 7.0)] == [0, 1, 1, 2, 2, 3]


def test_small_forge_cannot_heat_a_hundred_pounds_an_hour():
    got = bar_throughput_kg_s(
        metal_key="steel",
        diameter_m=0.0254,
        length_m=0.3048,
        width_m=0.1524,
        start_temp_K=SHOP_K,
        end_temp_K=WORK_K,
        chamber_temp_K=CHAMBER_K,
    )
    assert got.low < got.value < got.high < 100 * LB_H_KG_S
    # Two bars of 1 in and 1 ft, 1.21 kg each, in the time of one on the floor.
    time = bar_heat_time_s(**BAR)
    assert got.value == pytest.approx(2 * 7850 * pi / 4 * 0.0254**2 * 0.3048 / time, rel=1e-12)


def test_throughput_of_a_wide_floor_hardly_depends_on_the_bar():
    # Twice as thick takes twice as long and weighs twice as much per floor.
    rates = [
        bar_throughput_kg_s(
            metal_key="steel",
            diameter_m=d,
            length_m=1.0,
            width_m=2.0,
            start_temp_K=SHOP_K,
            end_temp_K=WORK_K,
            chamber_temp_K=CHAMBER_K,
        ).value
        for d in (0.01, 0.02, 0.04)
    ]
    assert rates == pytest.approx([rates[0]] * 3, rel=0.05)


def test_what_cannot_be():
    assert bar_heat_time_s(**{**BAR, "chamber_temp_K": WORK_K}) is None
    floor = {"length_m": 0.3, "width_m": 0.02}
    assert bar_throughput_kg_s(**BAR, **floor) is None
    assert bar_throughput_kg_s(**{**BAR, "chamber_temp_K": 1000.0}, length_m=0.3, width_m=0.2) is None


def test_pot_of_aluminium_by_hand():
    # 660 kJ/kg to the melting point, 397 to melt, 1.18 kJ/kgK to 740 degC (chemistry tables): 1150 kJ/kg from 25 degC.
    per_kg = metal_heat_J_kg("aluminium", 298.15, 1013.15)
    assert charge_rate_kg_s(spare_heat_W=2300.0, heat_J_kg=per_kg) == pytest.approx(0.002, rel=0.02)
    assert charge_rate_kg_s(spare_heat_W=-5.0, heat_J_kg=per_kg) == 0


@given(
    key=st.sampled_from(metal_keys()),
    diameter_m=st.floats(0.003, 0.2),
    end_K=st.floats(400, 930),
    hotter_K=st.floats(5, 600),
    view=st.floats(0.3, 1.0),
)
def test_properties(key, diameter_m, end_K, hotter_K, view):
    bar = {
        "metal_key": key,
        "diameter_m": diameter_m,
        "start_temp_K": SHOP_K,
        "end_temp_K": end_K,
        "chamber_temp_K": end_K + hotter_K,
        "view": view,
    }
    time = bar_heat_time_s(**bar)
    assert time > 0
    assert bar_heat_time_s(**{**bar, "diameter_m": 2 * diameter_m}) == pytest.approx(2 * time, rel=1e-9)
    assert bar_heat_time_s(**{**bar, "chamber_temp_K": end_K + hotter_K + 50}) < time
    assert bar_heat_time_s(**{**bar, "view": 0.9 * view}) > time
    # Not quicker than at the flux of the cold bar all the way.
    flux = bar_flux_W_m2(
        temp_K=SHOP_K,
        chamber_temp_K=end_K + hotter_K,
        emissivity=surface_emissivity(key),
        view=view,
        film_W_m2K=40.0,
    )
    least = metal_heat_J_kg(key, SHOP_K, end_K) / flux
    assert time > 2600 * diameter_m / 4 * least


def test_band_of_views_is_in_order():
    times = [bar_heat_time_s(**BAR, view=view) for view in VIEW]
    assert times[0] > times[1] > times[2]


@pytest.mark.parametrize(
    "field, change",
    [
        ("bar_diameter", {"diameter_m": 0.0}),
        ("bar_diameter", {"diameter_m": float("nan")}),
        ("work_metal", {"metal_key": "unobtainium"}),
        ("work_temperature", {"end_temp_K": 1800.0}),
        ("work_temperature", {"end_temp_K": 200.0}),
        ("view", {"view": 0.0}),
        ("film_W_m2K", {"film_W_m2K": -1.0}),
    ],
)
def test_names_the_field(field, change):
    with pytest.raises(InputError) as caught:
        bar_heat_time_s(**{**BAR, **change})
    assert caught.value.field == field


@pytest.mark.parametrize(
    "field, call",
    [
        ("width_m", lambda: bars_on_floor(width_m=0.0, diameter_m=0.1)),
        ("bar_diameter", lambda: bars_on_floor(width_m=1.0, diameter_m=0.0)),
        ("length_m", lambda: bar_throughput_kg_s(**BAR, length_m=0.0, width_m=0.2)),
        ("heat_J_kg", lambda: charge_rate_kg_s(spare_heat_W=1.0, heat_J_kg=0.0)),
    ],
)
def test_names_the_other_fields(field, call):
    with pytest.raises(InputError) as caught:
        call()
    assert caught.value.field == field
