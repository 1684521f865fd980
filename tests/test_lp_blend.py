"""Blends of LP gases against CoolProp's mixtures, and against vapour taken off in small steps."""

import pytest
from CoolProp.CoolProp import PQ_INPUTS, QT_INPUTS, AbstractState
from hypothesis import given, settings
from hypothesis import strategies as st

from burnercalc.errors import InputError
from burnercalc.physics import lp_blend as lp
from burnercalc.physics.lp_liquid import saturation_pressure_Pa

NAMES = {"C3H8": "Propane", "C4H10": "n-Butane", "iC4H10": "IsoButane", "C3H6": "Propylene"}
HALF = (("C3H8", 0.55), ("C4H10", 0.45))
BLENDS = (HALF, (("C3H8", 0.3), ("C4H10", 0.7)), (("C3H8", 0.6), ("C4H10", 0.2), ("iC4H10", 0.2)))


def coolprop(liquid):
    state = AbstractState("HEOS", "&".join(NAMES[name] for name, _ in liquid))
    state.set_mole_fractions([x for _, x in liquid])
    return state


@pytest.mark.parametrize("liquid", BLENDS)
@pytest.mark.parametrize("temp_K", [255.0, 275.0, 295.0, 310.0])
def test_boiling_agrees_with_the_mixture_of_coolprop(liquid, temp_K):
    """Vapour that is no ideal gas: Raoult's law is up to 4 % high here, and the more the warmer; so are its shares."""
    state = coolprop(liquid)
    state.update(QT_INPUTS, 0, temp_K)
    off = lp.bubble_pressure_Pa(liquid, temp_K) / state.p()
    assert 1 < off < 1.045 and (off < 1.022 or temp_K > 260)
    found = [y for _, y in lp.vapour(liquid, temp_K)]
    assert found == pytest.approx(state.mole_fractions_vapor(), abs=0.05)
    assert lp.blend_density_kg_m3(liquid, temp_K) == pytest.approx(state.rhomass(), rel=0.01)


@pytest.mark.parametrize("ethane", [0.02, 0.05])
@pytest.mark.parametrize("temp_K", [255.0, 288.15, 310.0])
def test_the_first_gas_with_ethane_is_no_heavier_than_of_the_mixture_of_coolprop(ethane, temp_K):
    """Of that much in propane Raoult's law has up to half more of it in the vapour, never less: the careful side."""
    charge = (("C2H6", ethane), ("C3H8", 0.95 - ethane), ("C4H10", 0.05))
    state = AbstractState("HEOS", "Ethane&Propane&n-Butane")
    state.set_mole_fractions([x for _, x in charge])
    state.update(QT_INPUTS, 0, temp_K)
    found, real = [y for _, y in lp.vapour(charge, temp_K)], state.mole_fractions_vapor()
    assert real[0] < found[0] < 1.5 * real[0] and sum(found) == pytest.approx(1)
    assert found == pytest.approx(real, abs=0.06)


@pytest.mark.parametrize("pressure_Pa", [1.2e5, 2e5, 4e5])
def test_temperature_of_boiling_agrees_with_the_mixture_of_coolprop(pressure_Pa):
    state = coolprop(HALF)
    state.update(PQ_INPUTS, pressure_Pa, 0)
    assert lp.bubble_temp_K(HALF, pressure_Pa) == pytest.approx(state.T(), abs=0.9)


def test_boiled_down_is_what_many_small_steps_leave():
    moles = dict(HALF)
    masses = {name: 44.0956 if name == "C3H8" else 58.1222 for name in moles}
    start = sum(moles[name] * masses[name] for name in moles)
    while (left := sum(moles[name] * masses[name] for name in moles) / start) > 0.3:
        total = sum(moles.values())
        pressures = {name: moles[name] / total * saturation_pressure_Pa(name, 285.0) for name in moles}
        for name in moles:
            moles[name] -= 2e-5 * pressures[name] / sum(pressures.values())
    got = dict(lp.boiled_down(HALF, 285.0, left))
    assert got["C3H8"] == pytest.approx(moles["C3H8"] / sum(moles.values()), abs=2e-4)


@settings(max_examples=40, deadline=None)
@given(st.sampled_from(BLENDS), st.floats(230, 325), st.floats(0.01, 1), st.floats(0.05, 1))
def test_what_is_left_gets_heavier_and_no_gas_is_lost(liquid, temp_K, left, again):
    """Down in two goes is down in one, and propane only leaves."""
    once = lp.boiled_down(liquid, temp_K, left * again)
    twice = lp.boiled_down(lp.boiled_down(liquid, temp_K, left), temp_K, again)
    assert [x for _, x in once] == pytest.approx([x for _, x in twice], abs=1e-7)
    assert sum(x for _, x in once) == pytest.approx(1)
    assert once[0][1] <= liquid[0][1]
    assert lp.bubble_pressure_Pa(once, temp_K) <= lp.bubble_pressure_Pa(liquid, temp_K) * (1 + 1e-9)


def test_a_pure_gas_is_a_blend_of_one():
    pure = (("C3H8", 1.0),)
    assert lp.boiled_down(pure, 285.0, 0.1) == pure and lp.vapour(pure, 285.0) == pure
    assert lp.bubble_pressure_Pa(pure, 285.0) == saturation_pressure_Pa("C3H8", 285.0)
    assert lp.bubble_temp_K(pure, 3e5) == pytest.approx(lp.bubble_temp_K((*pure, ("C4H10", 1e-12)), 3e5), abs=1e-6)


def test_heat_of_boiling_and_of_warming_lie_between_those_of_the_parts():
    for figure in (lp.blend_latent_heat_J_kg, lp.blend_heat_capacity_J_kgK):
        ends = sorted(figure(((name, 1.0),), 285.0) for name, _ in HALF)
        assert ends[0] < figure(HALF, 285.0) < ends[1]
    assert sum(share for _, share in lp.mass_shares(HALF)) == pytest.approx(1)
    # By hand: 0.55 x 44.0956 / (0.55 x 44.0956 + 0.45 x 58.1222)
    assert dict(lp.mass_shares(HALF))["C3H8"] == pytest.approx(0.4811, abs=1e-4)


@pytest.mark.parametrize(
    "call",
    [
        lambda: lp.boiled_down(HALF, 285.0, 0.0),
        lambda: lp.boiled_down(HALF, 285.0, float("nan")),
        lambda: lp.bubble_temp_K(HALF, 1e7),
        lambda: lp.bubble_pressure_Pa(HALF, 400.0),
    ],
)
def test_refuses(call):
    with pytest.raises(InputError):
        call()
