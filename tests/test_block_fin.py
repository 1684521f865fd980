from math import cosh, pi

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from rows import rows
from scipy.integrate import quad, solve_bvp
from scipy.optimize import brentq

from burnercalc.errors import InputError
from burnercalc.physics import block_fin as bf
from burnercalc.physics.combustion import reactants_mol
from burnercalc.physics.mixture import mixture_properties
from burnercalc.physics.port_stream import StreamProperties

INCH = 0.0254
SIGMA = 5.670374419e-8
# Flow of 100 kBtu/h of propane (29.307 kW, 50.3 MJ/kg gross) with 15.68 kg of air a kg.
FULL_KG_S = 29307.1 / 50.33e6 * 16.68


def kelvin(fahrenheit):
    return (fahrenheit + 459.67) / 1.8


def slab(length=2.5 * INCH, ports=43, diameter=0.25 * INCH, conductivity=1.6):
    """The default burner's: window 7.75 x 2.75 in with corners of 3/16 in."""
    window = 7.75 * 2.75 * INCH**2 - (4 - pi) * (3 / 16 * INCH) ** 2
    return bf.Fin(length, window - ports * pi / 4 * diameter**2, ports * pi * diameter, conductivity)


def box(**changes):
    given = {
        "round_m": 26 * INCH,
        "depth_m": 3.25 * INCH,
        "wall_m": 3 / 16 * INCH,
        "grip_m": 0.75 * INCH,
        "setback_m": 5 / 8 * INCH,
        "back_m2": 36 * INCH**2,
    }
    return bf.Box(**{**given, **changes})


@pytest.fixture(scope="module")
def propane():
    reactants = reactants_mol((("C3H8", 1.0),), 1.0)
    return StreamProperties(lambda temp_K: mixture_properties(reactants, temp_K, 101325.0))


CHAMBER_K = kelvin(2250)


def hot(propane, share=1.0, chamber_K=CHAMBER_K, **changes):
    return bf.hot_state(
        slab(),
        box(**changes),
        FULL_KG_S * share,
        0.25 * INCH,
        43 * pi / 4 * (0.25 * INCH) ** 2,
        propane,
        288.7,
        chamber_K,
    )


def balanced(fin, film_W_m2K, capacity_W_K, inlet_K, chamber_K, back_W_K, back_to_K):
    """The slab by itself under the chamber's glow, its face where what it takes is what it passes on."""
    rises, cooled, heated = bf._parts(fin, film_W_m2K, capacity_W_K, back_W_K)

    def state(heat_W):
        parts = tuple((inlet_K - back_to_K) * one + heat_W * two for one, two in zip(cooled, heated))
        return bf.FinState(fin, heat_W, inlet_K, rises, parts)

    glow = bf.FACE_EMISSIVITY * SIGMA * fin.solid_area_m2

    def too_much_W(heat_W):
        return heat_W - glow * (chamber_K**4 - max(state(heat_W).wall_K(fin.length_m), 0.0) ** 4)

    reach_W = glow * max(chamber_K, inlet_K, back_to_K) ** 4
    return state(brentq(too_much_W, -reach_W, reach_W, xtol=1e-9, rtol=1e-14))


def test_without_warming_it_is_the_fin_of_the_textbook():
    """Insulated back, mixture that keeps its temperature: cosh(m s)/cosh(m L), m = sqrt(h P / (k A))."""
    fin = slab()
    m = (35 * fin.wetted_m2_m / (1.6 * fin.solid_area_m2)) ** 0.5
    state = balanced(fin, 35.0, 1e9, 300.0, 1500.0, 0.0, 300.0)
    face = state.wall_K(fin.length_m) - 300
    for depth in (0.0, 0.01, 0.03, 0.06):
        assert state.wall_K(depth) - 300 == pytest.approx(face * cosh(m * depth) / cosh(m * fin.length_m), rel=1e-6)
        assert state.mixture_K(depth) == pytest.approx(300, abs=1e-3)
    # What the textbook's fin takes at its root: sqrt(h P k A) tanh(m L) x excess.
    taken = 1.6 * fin.solid_area_m2 * m * np.tanh(m * fin.length_m) * face
    assert state.through_W == pytest.approx(taken, rel=1e-6)


@settings(max_examples=30, deadline=None)
@given(
    st.floats(0.01, 0.3),
    st.floats(0.1, 5),
    st.floats(5, 200),
    st.floats(0.05, 50),
    st.floats(500, 1900),
    st.floats(0, 1),
)
def test_heat_that_goes_in_comes_out_again(length, conductivity, film, capacity, chamber, back):
    fin = slab(length=length, conductivity=conductivity)
    state = balanced(fin, film, capacity, 320.0, chamber, back, 350.0)
    face, exit_K = state.wall_K(length), state.mixture_K(length)
    glow = bf.FACE_EMISSIVITY * SIGMA * fin.solid_area_m2 * (chamber**4 - face**4)
    out = capacity * (exit_K - 320.0) + back * (state.wall_K(0.0) - 350.0)
    assert state.through_W == pytest.approx(glow, rel=1e-6, abs=1e-6)
    assert state.through_W == pytest.approx(out, rel=1e-6, abs=1e-6)
    assert state.mean_wall_K == pytest.approx(quad(state.wall_K, 0, length)[0] / length, rel=1e-6)
    assert state.mixture_K(0.0) == pytest.approx(320.0)


@pytest.mark.parametrize("film, capacity, back", [(38.0, 11.0, 0.1), (30.0, 4.5, 0.3), (29.0, 0.6, 0.02)])
def test_agrees_with_the_boundary_value_problem_solved_by_numbers(film, capacity, back):
    fin = slab()
    state = balanced(fin, film, capacity, 320.0, 1505.0, back, 350.0)
    through, given = 1.6 * fin.solid_area_m2, film * fin.wetted_m2_m

    def slopes(_, y):
        wall, slope, mixture = y
        return np.array([slope, given / through * (wall - mixture), given / capacity * (wall - mixture)])

    def ends(at_back, at_face):
        glow = 0.7 * SIGMA * fin.solid_area_m2 * (1505.0**4 - at_face[0] ** 4)
        return np.array(
            [at_back[2] - 320.0, through * at_back[1] - back * (at_back[0] - 350.0), through * at_face[1] - glow]
        )

    depths = np.linspace(0, fin.length_m, 60)
    guess = np.array([np.linspace(450, 1350, 60), np.full(60, 1.4e4), np.linspace(320, 420, 60)])
    found = solve_bvp(slopes, ends, depths, guess, tol=1e-8, max_nodes=20000)
    assert found.success
    for i in (0, 17, 41, 59):
        wall, _, mixture = found.sol(depths[i])
        assert state.wall_K(depths[i]) == pytest.approx(wall, rel=1e-5)
        assert state.mixture_K(depths[i]) == pytest.approx(mixture, rel=1e-5)


@pytest.mark.parametrize("row", rows("block_fin.csv"), ids=lambda row: f"{row['rate_kBtu_h']:g}")
def test_default_block_is_as_others_found_it(propane, row):
    """Conductivity alone is known to 15 %: a twentieth of what is above the shop, on the whole, is near."""
    state = hot(propane, row["rate_kBtu_h"] / 100)
    assert state.wall_K - 288.7 == pytest.approx(kelvin(row["wall_F"]) - 288.7, rel=0.06)
    assert kelvin(row["lip_low_F"]) <= state.face_K <= kelvin(row["lip_high_F"])
    assert state.rim_K - 288.7 == pytest.approx(kelvin(row["rim_F"]) - 288.7, rel=0.09)


@pytest.mark.parametrize("share", [1.0, 0.4, 0.1])
def test_box_and_mixture_are_in_balance(propane, share):
    state, steel, fin = hot(propane, share), box(), slab()
    # The rim feeds the sides of the box, which hand it to mixture and shop; the back's glow comes on top.
    fed = 1.6 * steel.round_m * steel.grip_m / steel.setback_m * (state.rim_K - state.lip_K)
    sides = steel.round_m * steel.depth_m
    glow = bf.BACK_EMISSIVITY * SIGMA * fin.solid_area_m2 * (state.back_K**4 - state.box_K**4)
    given = 10 * sides * (2 * state.box_K - state.mixture_K - 288.7)
    assert given == pytest.approx(fed + glow * sides / steel.inside_m2, rel=1e-3)
    cold_cp = propane.at(288.7)[3]
    taken = 10 * steel.inside_m2 * (state.box_K - state.mixture_K) + 10 * fin.solid_area_m2 * (
        state.back_K - state.mixture_K
    )
    assert FULL_KG_S * share * cold_cp * (state.mixture_K - 288.7) == pytest.approx(taken, rel=1e-3)
    assert 288.7 < state.mixture_K < state.box_K < state.lip_K < state.rim_K < state.face_K < kelvin(2250)
    assert state.box_K < state.back_K < state.rim_K


def test_the_sides_of_the_box_are_the_fin_of_the_textbook(propane):
    """What the rim gives at the lip: sqrt(h P k A) tanh(m L) x excess, films of 10 W/m2K in and out, steel's k 48."""
    state, steel, fin = hot(propane), box(), slab()
    glow = bf.BACK_EMISSIVITY * SIGMA * fin.solid_area_m2 * (state.back_K**4 - state.box_K**4)
    around = (state.mixture_K + 288.7) / 2 + glow / steel.inside_m2 / 20
    m = (20 / (48 * steel.wall_m)) ** 0.5
    taken = steel.round_m * (20 * 48 * steel.wall_m) ** 0.5 * np.tanh(m * steel.depth_m) * (state.lip_K - around)
    fed = 1.6 * steel.round_m * steel.grip_m / steel.setback_m * (state.rim_K - state.lip_K)
    assert taken == pytest.approx(fed, rel=1e-3)


def test_less_fire_and_a_hotter_chamber_make_all_of_it_hotter(propane):
    slow, base, hotter = hot(propane, 0.4), hot(propane), hot(propane, chamber_K=kelvin(2400))
    for name in ("face_K", "wall_K", "exit_K", "back_K", "rim_K", "lip_K", "box_K", "mixture_K"):
        assert getattr(base, name) < min(getattr(slow, name), getattr(hotter, name)), name
    assert slow.through_W < base.through_W < hotter.through_W


def test_a_wider_setback_and_a_smaller_grip_spare_the_steel(propane):
    base = hot(propane)
    assert hot(propane, setback_m=0.02).lip_K < base.lip_K
    assert hot(propane, grip_m=0.01).lip_K < base.lip_K


def test_no_flow_is_refused(propane):
    with pytest.raises(InputError) as caught:
        hot(propane, 0.0)
    assert caught.value.field == "flow_kg_s"


def test_where_the_search_begins_decides_nothing(propane):
    """From the shop's temperature, from a far hotter block, and from row to row down a table of velocities."""
    far, bare = hot(propane, 0.05, 1900.0), hot(propane, 0.4)
    fields = ("face_K", "wall_K", "exit_K", "back_K", "rim_K", "lip_K", "box_K", "mixture_K", "through_W")

    def begun(near, share=0.4):
        area = 43 * pi / 4 * (0.25 * INCH) ** 2
        return bf.hot_state(slab(), box(), FULL_KG_S * share, 0.25 * INCH, area, propane, 288.7, CHAMBER_K, 1.0, near)

    for field in fields:
        assert getattr(begun(far), field) == pytest.approx(getattr(bare, field), rel=2e-6), field
    port = bf.HotPort((0.1, 0.2, 0.4, 0.8), lambda share, near: begun(near, share), far)
    assert port.face_K(0.4) == pytest.approx(bare.face_K, rel=2e-6)
    for share in (0.05, 0.1):  # held below the first row
        assert port.exit_K(share) == pytest.approx(hot(propane, 0.1).exit_K, rel=2e-6)
    middle = (port.row(1).mixture_K + port.row(2).mixture_K) / 2
    assert port.enter_K((0.2 * 0.4) ** 0.5) == pytest.approx(middle)
