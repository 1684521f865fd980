from dataclasses import replace
from math import erf, exp

import pytest

from burnercalc.errors import InputError
from burnercalc.physics import block_soak as bs
from burnercalc.physics.block_fin import Box, Fin

SIGMA = 5.670374419e-8
FIN = Fin(length_m=0.06, solid_area_m2=0.012, wetted_m2_m=0.85, conductivity_W_mK=1.5)
BOX = Box(round_m=0.66, depth_m=0.083, wall_m=0.0048, grip_m=0.019, setback_m=0.016, back_m2=0.023)
# A chamber that never cools, a box that takes no heat at its rim.
HELD = bs.Cooling(
    fin=FIN,
    box=BOX,
    capacity_J_m3K=2.4e6,
    rim_W_K=0.0,
    chamber_K=1500.0,
    chamber_J_K=1e12,
    chamber_W=2500.0,
    shop_K=290.0,
)


def soak(temp_K, steel_K=400.0, chamber_K=1500.0):
    return bs.Soak(0.0, (temp_K,) * bs.CELLS, steel_K, steel_K, chamber_K)


def test_held_long_enough_it_is_the_steady_slab():
    """Glow in at the face = conducted through = back to box = box to shop, each written out here."""
    last = bs.soaked(HELD, soak(700.0), 40 * 3600.0)[-1]
    face = 1.5 * last.walls_K[-1] - 0.5 * last.walls_K[-2]
    conducted = 1.5 * 0.012 * (face - last.back_K) / 0.06
    shone = 0.7 * SIGMA * 0.012 * (1500.0**4 - face**4)
    standing = 1 / (1 / (10 * 0.012) + 1 / (10 * BOX.inside_m2))
    given = 0.7 * SIGMA * 0.012 * (last.back_K**4 - last.steel_K**4) + standing * (last.back_K - last.steel_K)
    lost = 10 * BOX.inside_m2 * (last.steel_K - 290.0)
    assert shone == pytest.approx(conducted, rel=0.01)
    assert given == pytest.approx(conducted, rel=0.01)
    assert lost == pytest.approx(conducted, rel=0.01)
    # Standing mixture stands between back and box, by their areas.
    assert last.mixture_K == pytest.approx(
        (0.012 * last.back_K + BOX.inside_m2 * last.steel_K) / (0.012 + BOX.inside_m2), rel=1e-6
    )


def test_it_warms_as_a_thick_wall_does():
    """A half-space whose face is soon as hot as the chamber (Carslaw and Jaeger): T = T_face - (T_face - T_0)
    erf(x / (2 sqrt(alpha t))), good while the back has not heard of it."""
    thick = replace(HELD, fin=replace(FIN, length_m=0.3), chamber_K=1500.0)
    alpha, time = 1.5 / 2.4e6, 3600.0
    moments = bs.soaked(thick, soak(400.0), time)
    last = moments[-1]
    face = 1.5 * last.walls_K[-1] - 0.5 * last.walls_K[-2]
    assert 1300 < face < 1500
    cell = 0.3 / bs.CELLS
    for i in (-1, -2, -3):
        depth = cell * (-i - 0.5)
        expected = 1480 - (1480 - 400) * erf(depth / (2 * (alpha * time) ** 0.5))
        assert last.walls_K[i] == pytest.approx(expected, rel=0.12)
    assert last.walls_K[2] == pytest.approx(400, abs=10)


def test_a_block_by_itself_cools_as_one_lump():
    """Air blows through a block that conducts without end and sees nothing: exp(-h A t / C), air hardly warmed."""
    cold = replace(HELD, fin=replace(FIN, conductivity_W_mK=1e4), chamber_K=290.001, chamber_J_K=1e12, chamber_W=0.0)
    start = soak(600.0, steel_K=290.0, chamber_K=290.001)
    film, flow = 5.0, 1e6
    last = bs.soaked(cold, start, 600.0, flow, film)[-1]
    held = 2.4e6 * 0.012 * 0.06
    ports = 5.0 * 0.85 * 0.06
    # Besides the ports the two ends shine: to face and box at the shop's temperature, and the back's film.
    mean = sum(last.walls_K) / bs.CELLS
    least = 290 + 310 * exp(-(ports + 0.12 + 2 * 0.012 * 0.7 * 4 * SIGMA * 600**3) * 600 / held)
    most = 290 + 310 * exp(-(ports + 0.12) * 600 / held)
    assert least < mean < most


def test_the_chamber_loses_what_it_is_said_to():
    """Q at its start: in a short while C dT = -Q dt; a stream takes m cp (T - T_exit) more."""
    own = replace(HELD, chamber_J_K=16e3)
    last = bs.soaked(own, soak(700.0), 20.0)[-1]
    assert 1500 - last.chamber_K == pytest.approx(2500 * 20 / 16e3, rel=1e-6)
    blown = bs.soaked(own, soak(700.0, steel_K=290.0), 20.0, 4.0, 30.0)[-1]
    assert 1500 - blown.chamber_K > (2500 + 4.0 * (1500 - 700)) * 20 / 16e3 * 0.99


def test_a_blower_that_runs_on_cools_back_and_box():
    still = bs.soaked(replace(HELD, chamber_J_K=16e3), soak(700.0), 1800.0)[-1]
    blown = bs.soaked(replace(HELD, chamber_J_K=16e3), soak(700.0), 1800.0, 4.0, 30.0)[-1]
    assert blown.back_K < still.back_K - 100 and blown.steel_K < still.steel_K - 20


def test_run_on_is_the_first_time_that_will_do():
    own = replace(HELD, chamber_J_K=16e3)
    start, times = soak(700.0), (0.0, 300.0, 900.0, 1800.0)
    peaks = []
    for time in times:
        now = bs.soaked(own, start, time, 4.0, 30.0)[-1]
        peaks.append(max(bs.hottest(bs.soaked(own, now, now.time_s + bs.LONGEST_S))[:2]))
    assert peaks == sorted(peaks, reverse=True) and peaks[0] > peaks[-1] + 20
    for limit, expected in ((peaks[0] + 0.1, 0.0), (peaks[1] + 0.1, 300.0), (peaks[2] - 0.1, 1800.0)):
        assert bs.run_on_s(own, start, limit, 4.0, 30.0, times) == expected
    assert bs.run_on_s(own, start, peaks[3] - 0.1, 4.0, 30.0, times) is None


@pytest.mark.parametrize("flow, film", [(0.0, 0.0), (4.0, 30.0)])
def test_what_is_as_warm_as_the_shop_stays_so(flow, film):
    own = replace(HELD, chamber_K=1500.0, chamber_J_K=16e3)
    last = bs.soaked(own, soak(290.0, steel_K=290.0, chamber_K=290.0), 600.0, flow, film)[-1]
    assert (*last.walls_K, last.steel_K, last.mixture_K, last.chamber_K) == pytest.approx((290.0,) * (bs.CELLS + 3))


def test_air_that_runs_on_is_warmed_by_steel_and_back():
    """m cp (T - T_shop) = h A_box (T_box - T) + h A_back (T_back - T), as they stand at the end of a step."""
    last = bs.soaked(replace(HELD, chamber_J_K=16e3), soak(700.0), 600.0, 4.0, 30.0)[-1]
    taken = 10 * BOX.inside_m2 * (last.steel_K - last.mixture_K) + 10 * 0.012 * (last.back_K - last.mixture_K)
    assert 4.0 * (last.mixture_K - 290.0) == pytest.approx(taken, rel=1e-9)


@pytest.mark.parametrize("flow, film, field", [(-1.0, 30.0, "flow_W_K"), (4.0, 0.0, "film_W_m2K")])
def test_a_flow_without_a_film_is_refused(flow, film, field):
    with pytest.raises(InputError) as caught:
        bs.soaked(HELD, soak(700.0), 60.0, flow, film)
    assert caught.value.field == field
