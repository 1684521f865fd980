"""Heat-up under a real fire against closed forms, an integral and an independent calculation."""

from dataclasses import replace
from math import erfc, exp, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from test_gas_zone import AIR_K, KBTU_H_W, WALL_K, forge, gray_forge
from walls_for_tests import flat_wall, plain_material

from burnercalc.design import Design
from burnercalc.errors import InputError
from burnercalc.parts.fired_heat_up import FINE
from burnercalc.physics import fired_heat_up as module
from burnercalc.physics.fired_heat_up import fired_heat_up, lit, rate_to_heat_up, rates_to_heat_up, time_left_on_s
from burnercalc.physics.gas_zone import ChamberLosses, at_rate_and_wall, rate_to_hold, reached
from burnercalc.physics.walls import steady_wall
from burnercalc.result import solve


def plain_zone(*, k_W_mK, thickness_m, film_W_m2K, radiates=True):
    """The gas of forge() in a flat wall of 0.22 m2 that nothing leaves."""
    losses = ChamberLosses(
        wall=flat_wall(area_m2=0.22, height_m=0.3),
        layers=((plain_material(k_W_mK=k_W_mK), thickness_m),),
        opening_area_m2=0.0,
        opening_depth_m=0.0,
        ambient_temp_K=AIR_K,
        film_loss_W=lambda faces, surface_K: 1e-9 * (surface_K - AIR_K),
    )
    zone = replace(forge(film_W_m2K), losses=losses, area_m2=0.22)
    return zone if radiates else replace(zone, cubic=(0.0,) * 4)


@pytest.mark.parametrize("film, minutes", [(20.0, 40), (80.0, 27)])
def test_forge_by_an_independent_calculation(film, minutes):
    got = fired_heat_up(gray_forge(film), firing_rate_W=96.5 * KBTU_H_W, wall_temp_K=WALL_K)
    # That calculation takes one gray gas; edges and corners hold 6 to 7 % less than in truth (walls_3d.csv).
    assert got.time_s / 60 == pytest.approx(1.065 * minutes, abs=1)


def test_half_space_warmed_by_gas_of_one_temperature():
    # So much fire that the gas stays at the flame; no radiation. Carslaw and Jaeger, 2.7: with H = h sqrt(a t) / k,
    # rise of the face over that of the gas = 1 - exp(H**2) erfc(H). Plain material: rho cp = 2e6.
    film, k = 60.0, 1.0
    zone = plain_zone(k_W_mK=k, thickness_m=0.5, film_W_m2K=film, radiates=False)
    for wanted_s in (60.0, 600.0, 3600.0):
        big = film * sqrt(wanted_s / 2e6 / k)
        face_K = AIR_K + (zone.gas.flame_temp_K - AIR_K) * (1 - exp(big**2) * erfc(big))
        # Implicit steps are late by half a step's share; finer ones close in.
        late = [
            fired_heat_up(zone, firing_rate_W=9e8, wall_temp_K=face_K, step_growth=g, cells_per_layer=n).time_s
            / wanted_s
            - 1
            for g, n in ((0.12, 14), (0.03, 40))
        ]
        assert abs(late[0]) < 0.05 and abs(late[1]) < 0.02


@pytest.mark.parametrize("wanted_s", [8.0, 30.0])
def test_a_face_of_fibre_glows_within_seconds_not_at_once(wanted_s):
    """The half space once more, with the little heat that fibre takes: k rho c of 0.1 W/mK, 128 kg/m3 and 1 kJ/kgK."""
    film, k = 60.0, 0.1 * 128e3 / 2e6
    zone = plain_zone(k_W_mK=k, thickness_m=0.05 * k / 0.1, film_W_m2K=film, radiates=False)
    big = film * sqrt(wanted_s / 2e6 / k)
    face_K = AIR_K + (zone.gas.flame_temp_K - AIR_K) * (1 - exp(big**2) * erfc(big))
    got = fired_heat_up(zone, firing_rate_W=9e8, wall_temp_K=face_K, **FINE)
    assert got.time_s == pytest.approx(wanted_s, rel=0.1)


@pytest.mark.parametrize(
    "texts, waits, takes",
    [
        (
            {"lining": "blanket_8lb 2 in", "chamber_temperature": "2100 degF", "work_temperature": "2000 degF"},
            (10.9, 14.1, 18.6),
            (23.4, 35.8, 55.5),
        ),
        ({}, (169.5, 221.0, 295.9), (372.3, 601.8, 1011.2)),
    ],
)
def test_heat_up_is_that_of_walls_in_three_dimensions(texts, waits, takes):
    """Cantera's gas (gri30, gray gases) lit with 43.494 kBtu/h at 1.2, then 100 at 0.93, in walls of finite volumes in
    three dimensions, an eighth of the box, by scipy; hot face of one temperature, the opening taken off the walls."""
    got = solve(Design.from_texts(texts)).part("fired_heat_up")
    for one, expected in ((got.waits_s, waits), (got.time_s, takes)):
        assert (one.low, one.value, one.high) == pytest.approx(expected, rel=0.05)


def test_a_lump_lit_with_less_fire_against_its_integrals():
    """Two fires one after the other, each t = integral of m c dT / (heat that the gas gives at T)."""
    zone = plain_zone(k_W_mK=1e4, thickness_m=0.01, film_W_m2K=40.0)
    mass_J_K, count, low_W, high_W, glow_K, top_K = 2e6 * 0.01 * 0.22, 100, 9e3, 20e3, 900.0, 1300.0

    def integral_s(rate, start_K, end_K):
        temps = [start_K + (end_K - start_K) * (n + 0.5) / count for n in range(count)]
        return sum(
            mass_J_K * (end_K - start_K) / count / (at_rate_and_wall(zone, rate, temp).available_fraction * rate)
            for temp in temps
        )

    waits_s, rest_s = integral_s(low_W, AIR_K + 1e-3, glow_K), integral_s(high_W, glow_K, top_K)
    waiting = lit(zone, firing_rate_W=low_W, until_K=glow_K, step_growth=0.02)
    assert waiting.times_s[-1] == pytest.approx(waits_s, rel=0.02)
    got = fired_heat_up(zone, firing_rate_W=high_W, wall_temp_K=top_K, after=waiting)
    assert got.time_s == fired_heat_up(zone, firing_rate_W=high_W, wall_temp_K=top_K, after=waiting).time_s
    assert got.time_s == pytest.approx(waits_s + rest_s, rel=0.015)


def test_lit_with_the_fire_that_it_is_turned_up_to_is_one_fire():
    zone, march = forge(), {"firing_rate_W": 96.5 * KBTU_H_W, "wall_temp_K": WALL_K}
    once = fired_heat_up(zone, **march, step_growth=0.03)
    waiting = lit(zone, firing_rate_W=96.5 * KBTU_H_W, until_K=1000.0, step_growth=0.03)
    twice = fired_heat_up(zone, **march, after=waiting)
    assert 0 < waiting.times_s[-1] < twice.time_s == pytest.approx(once.time_s, rel=0.01)


def test_a_fire_too_weak_to_be_turned_up():
    assert lit(forge(), firing_rate_W=5 * KBTU_H_W, until_K=1300.0) is None


def test_lump_against_its_integral():
    # One centimetre that conducts perfectly: t = integral of m c dT / (heat that the gas gives at T).
    zone = plain_zone(k_W_mK=1e4, thickness_m=0.01, film_W_m2K=40.0)
    rate, top, count = 20e3, 1500.0, 200
    mass_J_K = 2e6 * 0.01 * 0.22
    temps = [AIR_K + 1e-3 + (top - AIR_K) * n / count for n in range(count + 1)]
    given_W = [at_rate_and_wall(zone, rate, temp).available_fraction * rate for temp in temps]
    steps = [1 / watt for watt in given_W]
    simpson = (steps[0] + steps[-1] + 4 * sum(steps[1:-1:2]) + 2 * sum(steps[2:-1:2])) / 3 * (top - AIR_K) / count
    got = fired_heat_up(zone, firing_rate_W=rate, wall_temp_K=top, step_growth=0.02)
    assert got.time_s == pytest.approx(mass_J_K * simpson, rel=0.01)
    assert got.march.absorbed_J == pytest.approx(got.march.stored_J, rel=1e-6)
    assert got.march.stored_J == pytest.approx(mass_J_K * (got.walls_K[-1] - AIR_K), rel=1e-3)


def test_a_lump_left_at_a_fire_against_its_integral():
    """From 1300 to 1500 K; the first step of half a second is late by a share of it."""
    zone = plain_zone(k_W_mK=1e4, thickness_m=0.01, film_W_m2K=40.0)
    rate, count, start_K, end_K = 20e3, 100, 1300.0, 1500.0
    temps = [start_K + (end_K - start_K) * (n + 0.5) / count for n in range(count)]
    fires_W = [at_rate_and_wall(zone, rate, temp).available_fraction * rate for temp in temps]
    whole_s = sum(2e6 * 0.01 * 0.22 * (end_K - start_K) / count / fire_W for fire_W in fires_W)
    got_s = time_left_on_s(zone, firing_rate_W=rate, soaked_K=start_K, layer=0, limit_K=end_K, **FINE)
    assert got_s == pytest.approx(whole_s, rel=0.03)


def test_a_layer_behind_gets_as_hot_as_in_the_steady_wall():
    zone, rate = forge(), 60 * KBTU_H_W
    end_K = reached(zone, rate).wall_temp_K
    of = {"wall": zone.losses.wall, "layers": zone.losses.layers, "ambient_temp_K": AIR_K}
    start, end = (
        steady_wall(**of, hot_face_temp_K=face_K, film_loss_W=zone.losses.film_loss_W).temps_K[1]
        for face_K in (1300.0, end_K)
    )
    goes_on = {"firing_rate_W": rate, "soaked_K": 1300.0, "layer": 1, "longest_s": 4e5, **FINE}
    assert time_left_on_s(zone, limit_K=start + 3, **goes_on) < time_left_on_s(zone, limit_K=end - 3, **goes_on)
    assert time_left_on_s(zone, limit_K=start - 3, **goes_on) == 0.0
    assert time_left_on_s(zone, limit_K=end + 3, **goes_on) is None


def test_error_of_the_steps_as_used():
    as_used = fired_heat_up(forge(), firing_rate_W=96.5 * KBTU_H_W, wall_temp_K=WALL_K).time_s
    fine = fired_heat_up(
        forge(), firing_rate_W=96.5 * KBTU_H_W, wall_temp_K=WALL_K, step_growth=0.02, cells_per_layer=40
    ).time_s
    assert fine < as_used < 1.02 * fine


def test_never_and_nearly():
    zone, rate = forge(), 20 * KBTU_H_W
    end = reached(zone, rate).wall_temp_K
    assert end < WALL_K
    never = fired_heat_up(zone, firing_rate_W=rate, wall_temp_K=WALL_K)
    assert never.time_s is None
    assert never.walls_K[-1] == pytest.approx(end, abs=1.5)
    nearly = fired_heat_up(zone, firing_rate_W=rate, wall_temp_K=end - 5)
    assert nearly.time_s > 2 * 3600
    assert fired_heat_up(zone, firing_rate_W=rate, wall_temp_K=end - 5, longest_s=3600.0).time_s is None


@pytest.mark.parametrize("minutes", [20.0, 45.0, 120.0])
@pytest.mark.parametrize("film, wall_K", [(20.0, 1350.0), (40.0, 1000.0), (80.0, 1600.0)])
def test_rate_for_a_time_and_back(minutes, film, wall_K):
    zone = forge(film)
    rate = rate_to_heat_up(zone, wall_temp_K=wall_K, time_s=60 * minutes)
    got = fired_heat_up(zone, firing_rate_W=rate, wall_temp_K=wall_K).time_s
    assert 0.997 * 60 * minutes < got <= 60 * minutes


@pytest.mark.parametrize("wall_K, minutes", [(1000.0, 20), (1400.0, 45), (1500.0, 120)])
def test_rates_of_three_films_as_one_by_one(wall_K, minutes):
    zones, asked = [forge(film) for film in (20.0, 40.0, 80.0)], {"wall_temp_K": wall_K, "time_s": 60.0 * minutes}
    # However far off the heat that says where to look first.
    for held_W in (2e3, 8e3, 4e4):
        found = rates_to_heat_up(zones, held_face_W=held_W, **asked)
        for zone, rate in zip(zones, found):
            assert rate == pytest.approx(rate_to_heat_up(zone, **asked), rel=2e-3)
            got = fired_heat_up(zone, firing_rate_W=rate, wall_temp_K=wall_K).time_s
            assert 0.997 * asked["time_s"] < got <= asked["time_s"]


def test_rates_of_three_films_where_some_cannot():
    asked = {"wall_temp_K": 1500.0, "time_s": 60.0, "held_face_W": 5e4}
    low, middle, high = rates_to_heat_up([forge(film) for film in (20.0, 40.0, 2000.0)], **asked)
    assert low is None and middle is None
    assert fired_heat_up(forge(2000.0), firing_rate_W=high, wall_temp_K=1500.0).time_s == pytest.approx(60, rel=0.003)


def test_one_rate_takes_few_marches(monkeypatch):
    marches = []
    monkeypatch.setattr(module, "fired_heat_up", lambda *a, **k: marches.append(a) or fired_heat_up(*a, **k))
    for guess_W in (None, 15e3, 60e3):
        marches.clear()
        rate_to_heat_up(forge(), wall_temp_K=1400.0, time_s=2700.0, guess_W=guess_W, within=0.005)
        assert 1 < len(marches) <= 5
    marches.clear()
    assert rate_to_heat_up(forge(20.0), wall_temp_K=WALL_K, time_s=30.0) is None and len(marches) <= 6


def test_least_fire_for_any_longer_time():
    # Near the end of its rise the wall creeps: a fire that is not there by then never will be.
    zone = forge(15.0)
    rate = rate_to_heat_up(zone, wall_temp_K=1397.0, time_s=1e6)
    assert rate == pytest.approx(rate_to_hold(zone, 1397.0).firing_rate_W, rel=0.01)
    assert fired_heat_up(zone, firing_rate_W=rate, wall_temp_K=1397.0).time_s < 1e6


def test_no_rate_heats_what_cannot_be():
    assert rate_to_heat_up(forge(phi=0.4), wall_temp_K=WALL_K, time_s=3600.0) is None
    assert rate_to_heat_up(forge(20.0), wall_temp_K=WALL_K, time_s=30.0) is None


def test_a_fire_that_overshoots_at_once():
    """Past the goal in the first steps; so much fire heats as a march three times finer has it, to 2 %."""
    fire = {"firing_rate_W": 5e8, "wall_temp_K": 1400.0}
    fine = fired_heat_up(forge(), **fire, step_growth=0.03, cells_per_layer=30)
    assert fired_heat_up(forge(), **fire).time_s == pytest.approx(fine.time_s, rel=0.02)


@settings(max_examples=15, deadline=None)
@given(rate_W=st.floats(8e3, 2e5), film=st.floats(10, 120), wall_K=st.floats(700, 1600))
def test_properties(rate_W, film, wall_K):
    got = fired_heat_up(forge(film), firing_rate_W=rate_W, wall_temp_K=wall_K)
    assert all(a <= b + 1e-6 for a, b in zip(got.walls_K, got.walls_K[1:]))
    assert got.walls_K[-1] < forge(film).gas.flame_temp_K
    assert 0 < got.march.stored_J <= got.march.absorbed_J * (1 + 1e-12) < rate_W * got.times_s[-1]
    if got.time_s is not None:
        assert got.times_s[-2] <= got.time_s <= got.times_s[-1]
        more = fired_heat_up(forge(film), firing_rate_W=1.2 * rate_W, wall_temp_K=wall_K)
        assert more.time_s < got.time_s


@pytest.mark.parametrize(
    "field, change",
    [
        ("firing_rate", {"firing_rate_W": 0.0}),
        ("chamber_temperature", {"wall_temp_K": AIR_K}),
        ("heat_up_time", {"longest_s": 0.0}),
        ("step_growth", {"step_growth": 2.0}),
        ("early_step", {"early_step_s": 0.1}),
    ],
)
def test_names_the_field(field, change):
    if field == "heat_up_time":
        with pytest.raises(InputError) as caught:
            rate_to_heat_up(forge(), wall_temp_K=WALL_K, time_s=0.0)
        assert caught.value.field == field
    with pytest.raises(InputError) as caught:
        fired_heat_up(forge(), **{"firing_rate_W": 3e4, "wall_temp_K": WALL_K, **change})
    assert caught.value.field == field
