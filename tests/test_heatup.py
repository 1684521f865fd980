"""Transient conduction against closed forms and the steady wall."""

from math import cos, erfc, exp, pi, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from walls_for_tests import cylinder_wall, flat_wall, plain_material

from burnercalc.errors import InputError
from burnercalc.physics.chamber_walls import box_chamber, cylinder_chamber
from burnercalc.physics.heatup import heat_up
from burnercalc.physics.linings import material, material_keys
from burnercalc.physics.walls import steady_wall, still_air

HOT_K, AIR_K = 1573.15, 294.15
AIR = still_air(ambient_temp_K=AIR_K, emissivity=0.9)
FLAT = flat_wall(area_m2=1.0, height_m=0.3)
FORGE = ((material("dense_castable"), 0.0254), (material("blanket_8lb"), 0.0508))


def run(*, wall=FLAT, layers=FORGE, time_s=3600.0, film=AIR, **more):
    return heat_up(
        wall=wall, layers=layers, hot_face_temp_K=HOT_K, ambient_temp_K=AIR_K, film_loss_W=film, time_s=time_s, **more
    )


@pytest.mark.parametrize("time_s", [60.0, 600.0, 3600.0])
def test_semi_infinite_solid(time_s):
    # T = Ta + (Th - Ta) erfc(x / sqrt(4 a t)); heat taken in = 2 k dT sqrt(t / (pi a)). Carslaw and Jaeger, 2.5.
    k, diffusivity, rise = 1.0, 1.0 / 2e6, HOT_K - AIR_K
    got = run(layers=((plain_material(k_W_mK=k), 0.5),), time_s=time_s)
    # 50 growing steps are good for 2 %, a fifth of what conductivity data are good for; finer ones close in below.
    assert got.stored_J == pytest.approx(2 * k * rise * sqrt(time_s / (pi * diffusivity)), rel=0.02)
    for x, temp_K in zip(got.depths_m, got.temps_K):
        assert temp_K == pytest.approx(AIR_K + rise * erfc(x / sqrt(4 * diffusivity * time_s)), abs=0.015 * rise)


def test_error_falls_with_finer_steps_and_cells():
    exact = 2 * 1.0 * (HOT_K - AIR_K) * sqrt(600 * 2e6 / pi)
    errors = [
        abs(
            run(layers=((plain_material(k_W_mK=1.0), 0.5),), time_s=600.0, cells_per_layer=cells, steps=steps).stored_J
            / exact
            - 1
        )
        for cells, steps in ((10, 25), (20, 50), (40, 400))
    ]
    assert errors[0] > errors[1] > errors[2] and errors[2] < 0.003


def test_slab_with_insulated_back():
    # Fourier series, half slab of thickness L: mean = 1 - sum 8/((2n+1)^2 pi^2) exp(-((2n+1) pi/2)^2 a t/L^2).
    thickness, time_s, diffusivity = 0.05, 1500.0, 1.0 / 2e6
    got = run(
        layers=((plain_material(k_W_mK=1.0), thickness),),
        time_s=time_s,
        film=lambda faces, surface_temp_K: 1e-9 * (surface_temp_K - AIR_K),
    )
    share = 1 - sum(
        8 / ((2 * n + 1) ** 2 * pi**2) * exp(-(((2 * n + 1) * pi / 2) ** 2) * diffusivity * time_s / thickness**2)
        for n in range(20)
    )
    assert got.stored_J == pytest.approx(share * 2e6 * thickness * (HOT_K - AIR_K), rel=0.02)
    assert got.lost_J < 1.0
    back = AIR_K + (HOT_K - AIR_K) * (
        1
        - 4
        / pi
        * sum(
            (-1) ** n
            / (2 * n + 1)
            * cos(0.0)
            * exp(-(((2 * n + 1) * pi / 2) ** 2) * diffusivity * time_s / thickness**2)
            for n in range(20)
        )
    )
    assert got.temps_K[-1] == pytest.approx(back, abs=0.02 * (HOT_K - AIR_K))


@pytest.mark.parametrize(
    "wall",
    [
        FLAT,
        cylinder_wall(radius_m=0.1, length_m=0.3),
        box_chamber(length_m=0.3, width_m=0.15, height_m=0.15, opening_area_m2=0.005),
        cylinder_chamber(diameter_m=0.2, length_m=0.3),
    ],
)
def test_ends_in_the_steady_state(wall):
    got = run(wall=wall, time_s=1e6)
    steady = steady_wall(wall=wall, layers=FORGE, hot_face_temp_K=HOT_K, ambient_temp_K=AIR_K, film_loss_W=AIR)
    assert got.temps_K[-1] == pytest.approx(steady.shell_temp_K, abs=0.5)
    longer = run(wall=wall, time_s=1e6 / 2)
    assert (got.lost_J - longer.lost_J) / 5e5 == pytest.approx(steady.loss_W, rel=0.01)


def test_cylinder_fills_its_volume():
    # Insulated outside and long enough: every kilogram stands at the hot-face temperature.
    layers = ((plain_material(k_W_mK=1.0), 0.04),)
    got = run(
        wall=cylinder_wall(radius_m=0.05, length_m=0.5),
        layers=layers,
        time_s=1e5,
        film=lambda faces, surface_temp_K: 1e-9 * (surface_temp_K - AIR_K),
    )
    volume = pi * (0.09**2 - 0.05**2) * 0.5
    assert got.stored_J == pytest.approx(2e6 * volume * (HOT_K - AIR_K), rel=1e-4)


@settings(max_examples=25, deadline=None)
@given(
    layers=st.lists(st.tuples(st.sampled_from(material_keys()), st.floats(0.003, 0.15)), min_size=1, max_size=3),
    time_s=st.floats(30, 1e5),
)
def test_properties_of_any_heat_up(layers, time_s):
    got = run(layers=tuple((material(key), thickness) for key, thickness in layers), time_s=time_s)
    assert got.absorbed_J == pytest.approx(got.stored_J + got.lost_J, rel=1e-9)
    assert got.stored_J > 0 and got.lost_J >= -1e-6
    assert all(AIR_K - 1e-9 <= temp <= HOT_K + 1e-9 for temp in got.temps_K)
    # The heat capacity is that at the start of a step: a cell may pass its hotter neighbour by some hundredths.
    assert all(a >= b - 0.05 for a, b in zip(got.temps_K, got.temps_K[1:]))
    assert (
        run(layers=tuple((material(key), thickness) for key, thickness in layers), time_s=1.5 * time_s).absorbed_J
        > got.absorbed_J
    )


@pytest.mark.parametrize("time_s", [0.0, -5.0, float("nan"), 2e6])
def test_names_the_field(time_s):
    with pytest.raises(InputError) as caught:
        run(time_s=time_s)
    assert caught.value.field == "heat_up_time"
