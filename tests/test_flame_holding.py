from functools import lru_cache
from math import exp, isfinite

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from rows import rows

from burnercalc.errors import InputError
from burnercalc.physics import flame_holding as fh
from burnercalc.physics.band import Band
from burnercalc.physics.burning_velocity import burning_velocity_m_s
from burnercalc.physics.mixture import mixture_properties
from burnercalc.physics.port_stream import StreamProperties

AIR_NEED = {"CH4": 9.547, "C3H8": 23.866, "C4H10": 31.026}
phis = st.floats(0.6, 1.4)
diameters = st.floats(0.0015, 0.0254)
ratios = st.floats(1.0, 20.0)


def mixture(species, phi, temp_K):
    return mixture_properties({species: phi / AIR_NEED[species], "O2": 0.2095, "N2": 0.7905}, temp_K, 101325.0)


@lru_cache(maxsize=200)
def properties(species, phi):
    return StreamProperties(lambda temp_K: mixture(species, phi, temp_K))


def flame(species="C3H8", phi=1.0, diameter=0.00635, length=0.0508, wall=None, inlet=288.7, burnt=False):
    return fh.PortFlame(
        diameter,
        length,
        properties(species, phi),
        lambda temp_K: burning_velocity_m_s(((species, 1.0),), phi, temp_K),
        phi,
        inlet,
        wall,
        burnt=burnt,
    )


@pytest.mark.parametrize("row", rows("critical_gradients.csv"), ids=lambda row: row["mix"])
def test_agrees_with_the_worked_critical_gradients(row):
    s, alpha = row["burning_velocity_m_s"], row["diffusivity_m2_s"]
    # S_L is printed to three digits, so its square promises half a percent.
    assert fh.flashback_gradient_1_s(Band(s, s, s), alpha).value == pytest.approx(row["flashback"], rel=6e-3)
    blow_off = fh.blow_off_gradient_1_s(Band(s, s, s), alpha, 1.3, open_air=False).value
    assert blow_off == pytest.approx(row["blow_off"], rel=6e-3)


# Peaks remembered from Lewis & von Elbe and RI 5225: methane 400, propane 600 1/s, good to 30 %.
@pytest.mark.parametrize("species, expected", [("CH4", 400), ("C3H8", 600), ("C4H10", 600)])
def test_peak_flashback_gradient_is_the_remembered_one(species, expected):
    peak = max(
        fh.flashback_gradient_1_s(
            burning_velocity_m_s(((species, 1.0),), phi), mixture(species, phi, 298.15).thermal_diffusivity_m2_s
        )
        for phi in (0.9, 1.0, 1.1, 1.2)
    )
    assert peak.value == pytest.approx(expected, rel=0.30)
    assert peak.low <= expected <= peak.high


@pytest.mark.parametrize("row", rows("flashback_preheat.csv"), ids=lambda row: "-".join(map(str, row.values())))
def test_preheat_raises_the_gradient_as_computed_flames_do(row):
    def gradient(temp_K):
        burning = burning_velocity_m_s(((row["species"], 1.0),), row["phi"], temp_K)
        alpha = mixture(row["species"], row["phi"], temp_K).thermal_diffusivity_m2_s
        return fh.flashback_gradient_1_s(burning, alpha).value

    assert gradient(row["temp_K"]) / gradient(298.15) == pytest.approx(row["expected"], rel=0.03)


@pytest.mark.parametrize("row", rows("flashback_velocity.csv"), ids=lambda r: f"{r['diameter_in']}-{r['gradient']:g}")
def test_long_port_flashes_back_at_the_developed_velocity(row):
    # A burning velocity that gives the wanted critical gradient, and a port so long that the flow has developed.
    gas = properties("C3H8", 1.0)
    density, _, k, cp = gas.at(298.15)
    speed = (row["gradient"] / fh.FLASHBACK_CONSTANT * k / (density * cp)) ** 0.5
    port = fh.PortFlame(row["diameter_in"] * 0.0254, 100.0, gas, lambda temp_K: Band(speed, speed, speed), 1.0, 298.15)
    # Three decimals are printed.
    assert port.flashback_velocity_m_s().value == pytest.approx(row["expected"], abs=6e-4)


def test_a_flame_that_hardly_burns_has_no_limit_between_those_that_are_sought():
    slow = fh.PortFlame(
        0.00635, 0.0508, properties("C3H8", 1.0), lambda temp_K: Band(1e-8, 1e-8, 1e-8), 1.0, 288.7, hot_port=None
    )
    for limit in (slow.flashback_velocity_m_s, slow.careful_lift_velocity_m_s):
        with pytest.raises(InputError, match="limit of the flame"):
            limit()


def test_hot_lip_multiplies_the_gradient_by_2_to_4():
    """By hand: a law known to 30 % and a lip known to sqrt(2) are together known to exp(hypot(0.2624, 0.3466))."""
    hot = fh.times(Band(400 / 1.3, 400.0, 400 * 1.3), fh.hot_lip())
    assert hot == pytest.approx((400 * 8**0.5 / 1.5444, 400 * 8**0.5, 400 * 8**0.5 * 1.5444), rel=1e-3)
    assert fh.hot_lip() == pytest.approx((2, 8**0.5, 4)) and fh.hot_lip(0.5) == pytest.approx((2**0.5, 8**0.25, 2))


def test_bands_that_have_nothing_to_do_with_each_other_add_as_squares():
    """Ends of a 3-4-5 triangle in the logarithm: e^0.3 and e^0.4 make e^0.5."""
    low, value, high = fh.times(Band(exp(-0.3), 1.0, exp(0.3)), Band(2 * exp(-0.4), 2.0, 2 * exp(0.4)))
    assert (low, value, high) == pytest.approx((2 * exp(-0.5), 2.0, 2 * exp(0.5)))


def test_a_mixture_that_is_not_sure():
    """S_L of 0.40, 0.42 and 0.41 m/s at 1.17, 1.2 and 1.23, and 6.4 as the exponent of Reed's law."""
    speeds = {1.17: 0.40, 1.2: 0.42, 1.23: 0.41}
    back, lift = fh.mixture_off(lambda phi: Band(0.0, speeds[round(phi, 2)], 9.0), 1.2, 0.03)
    assert back == pytest.approx(((0.40 / 0.42) ** 2, 1.0, 1.0))
    assert lift == pytest.approx(((0.40 / 0.42) ** 2 * 0.975**6.4, 1.0, (0.41 / 0.42) ** 2 * 1.025**6.4))


def test_a_mixture_that_is_not_sure_widens_both_limits_and_moves_neither():
    sure, not_sure = flame(phi=1.2), flame(phi=1.2)
    not_sure.off = fh.mixture_off(lambda phi: burning_velocity_m_s((("C3H8", 1.0),), phi), 1.2, 0.03)
    for limit in ("flashback_velocity_m_s", "lift_velocity_m_s"):
        one, other = getattr(sure, limit)(), getattr(not_sure, limit)()
        assert other.low < one.low and other.high >= one.high and other.value == pytest.approx(one.value)


def test_a_lip_counts_as_hot_by_its_temperature():
    """Quenches up to 600 K, not at all from 800 K, a straight line between."""
    assert [fh.lip_share(lip_K) for lip_K in (300, 600, 650, 700, 800, 1500)] == [0, 0, 0.25, 0.5, 1, 1]


def test_hot_lip_counts_in_a_port_that_is_not_preheated():
    """A wall as cold as the mixture and a lip that does not quench: the margin falls by the multiplier alone."""
    cold, hot = flame().flashback_margin(0.5), flame(wall=288.7).flashback_margin(0.5)
    assert cold.value / hot.value == pytest.approx(8**0.5)
    assert hot.low < cold.low / 8**0.5 and hot.high > cold.high / 8**0.5


def test_reeds_bracket_is_one_at_phi_one_and_in_burnt_gas():
    speed = Band(0.4, 0.4, 0.4)
    closed = fh.blow_off_gradient_1_s(speed, 2e-5, 0.8, open_air=False).value
    assert closed == pytest.approx(0.23 * 0.4**2 / 2e-5)
    assert fh.blow_off_gradient_1_s(speed, 2e-5, 1.0, open_air=True).value == pytest.approx(closed)
    # 0.8^6.4 = 0.2397
    assert fh.blow_off_gradient_1_s(speed, 2e-5, 0.8, open_air=True).value == pytest.approx(0.2397 * closed, rel=1e-3)


@pytest.mark.parametrize("phi, richer", [(0.8, 0.2397), (1.0, 1.0), (1.2, 3.212)])
def test_a_rich_flame_lifts_sooner_in_burnt_gas_a_lean_one_later(phi, richer):
    """By phi^6.4: worked on a pocket calculator. In a long port of 1/16 in the gradient is 8 V/d."""
    free, shut_in = (flame(phi=phi, diameter=0.0016, length=0.3, burnt=burnt) for burnt in (False, True))
    lifts = [port.lift_velocity_m_s() for port in (free, shut_in)]
    for one, other in zip(*lifts):
        assert one / other == pytest.approx(richer, rel=0.01)
    speed = burning_velocity_m_s((("C3H8", 1.0),), phi, 288.7).value
    alpha = mixture("C3H8", phi, 288.7).thermal_diffusivity_m2_s
    assert lifts[1].value == pytest.approx(0.23 * speed**2 / alpha * 0.0016 / 8, rel=0.05)


@settings(max_examples=25, deadline=None)
@given(st.sampled_from(sorted(AIR_NEED)), phis, diameters, ratios, st.one_of(st.none(), st.floats(300, 1500)))
def test_limits_are_where_the_margins_are_one(species, phi, d, ratio, wall):
    port = flame(species, round(phi, 2), d, d * ratio, wall)
    for limit, margin in (
        (port.flashback_velocity_m_s(), port.flashback_margin),
        (port.lift_velocity_m_s(), port.blow_off_margin),
    ):
        assert 0 < limit.low <= limit.value <= limit.high < 300
        for velocity, edge in zip(limit, (2, 1, 0)):
            assert margin(velocity)[edge] == pytest.approx(1, rel=1e-6)
            assert margin(velocity * 1.01)[edge] > 1


@pytest.mark.parametrize("species", sorted(AIR_NEED))
@pytest.mark.parametrize("phi", [0.5, 1.6])
@pytest.mark.parametrize("wall", [None, 300, 1900])
@pytest.mark.parametrize("inlet", [233, 328])
def test_limits_are_finite_at_the_ends_of_the_allowed_ranges(species, phi, wall, inlet):
    for d in (0.0015875, 0.0254):
        port = flame(species, phi, d, 0.3048, wall, inlet)
        for limit in (port.flashback_velocity_m_s(), port.lift_velocity_m_s()):
            assert all(isfinite(x) and 0 < x < 300 for x in limit)


@settings(max_examples=40, deadline=None)
@given(phis, diameters, ratios, st.floats(300, 1200), st.floats(1, 400), st.floats(0.05, 30))
def test_hotter_port_never_widens_the_flashback_margin(phi, d, ratio, wall, hotter, velocity):
    phi = round(phi, 2)
    cool, hot = (flame("C3H8", phi, d, d * ratio, w).flashback_margin(velocity) for w in (wall, wall + hotter))
    for a, b in zip(cool, hot):
        assert isfinite(b) and b <= a * (1 + 1e-9)


@settings(max_examples=40, deadline=None)
@given(phis, diameters, ratios, st.one_of(st.none(), st.floats(300, 1500)), st.floats(0.05, 40), st.floats(1.001, 2))
def test_more_firing_never_brings_flashback_nearer_in_laminar_flow(phi, d, ratio, wall, velocity, more):
    port = flame("CH4", round(phi, 2), d, d * ratio, wall)
    density, viscosity, _, _ = port.properties.at(port.inlet_temp_K)
    if velocity * more * d * density / viscosity < 2300:
        assert port.flashback_margin(velocity * more).value >= port.flashback_margin(velocity).value


def test_hot_port_flashes_back_sooner_and_turndown_shrinks():
    cold, hot = flame().flashback_velocity_m_s(), flame(wall=900).flashback_velocity_m_s()
    assert hot.value > 1.3 * cold.value


def test_firing_rate_follows_the_velocity():
    assert fh.firing_rate_limit_W(Band(1, 2, 3), 4.0, 20e3) == (5e3, 10e3, 15e3)
    with pytest.raises(InputError):
        fh.firing_rate_limit_W(Band(1, 2, 3), 0.0, 20e3)


def test_flashback_velocity_grows_with_the_port():
    small, large = (flame(diameter=d).flashback_velocity_m_s().value for d in (0.0032, 0.0095))
    assert large > 2 * small


def test_practical_loading_lifts_a_cold_flame():
    # Reference 2.5: 55 000 Btu/h per in2 (6.637 m/s) lies above free-flame blow-off at phi 1, far above flashback.
    port = flame(inlet=288.7)
    assert port.lift_velocity_m_s().high < 6.637
    assert port.flashback_margin(6.637).low > 5


@pytest.mark.parametrize(
    "change, field",
    [
        ({"diameter": 0}, "diameter_m"),
        ({"wall": float("nan")}, "wall_temp_K"),
        ({"inlet": float("nan")}, "inlet_temp_K"),
    ],
)
def test_refuses_and_names_the_field(change, field):
    with pytest.raises(InputError) as caught:
        flame(**change)
    assert caught.value.field == field


def measured(row):
    return f"{row['tube']}-{row['phi']}"


@pytest.mark.parametrize("row", rows("flashback_tube.csv"), ids=measured)
def test_measured_flashback_of_tubes(row):
    """They scatter over 0.95 to 2.9 times the middle of cold ports, and all lie within the band: its end is careful."""
    back = flame("CH4", row["phi"], row["diameter_m"], row["length_m"], None, row["temp_K"]).flashback_velocity_m_s()
    assert back.low < row["measured_m_s"] < back.high
    assert 0.95 * back.value < row["measured_m_s"] < 2.9 * back.value


@pytest.mark.parametrize("phi, copper_m_s", [(0.8002, 1.4974), (0.9010, 1.9094)])
def test_only_puffs_reach_the_two_that_went_back_farthest(phi, copper_m_s, monkeypatch):
    """Taken as laminar up to Re 2300 and half turbulent at 3150, a cold stream would look safe there."""
    monkeypatch.setattr(fh.PortFlame, "_puffs", lambda port, v: fh.turbulent_weight(port._reynolds(v)))
    assert flame("CH4", phi, 0.02567, 2.0, None, 293.15).flashback_velocity_m_s().high < copper_m_s


# The same laboratory, tube of 21 mm: leaner flames that stood at this flow [m/s].
@pytest.mark.parametrize("phi, stood_m_s", [(0.8, 1.1381), (1.0, 0.9282)])
def test_flames_that_stood_are_not_said_to_run_back(phi, stood_m_s):
    assert flame("CH4", phi, 0.021, 1.05, None, 300.0).flashback_margin(stood_m_s).high > 1


def test_measured_flashback_of_hydrogen_in_a_tube_of_4_mm():
    """At 1.55 and 5.122 m/s, the same laboratory, 8V/d = 10 245 1/s: a flame twenty times as keen to go back as that of
    methane, on a port as small as ours. S_L and alpha at 300 K of Cantera 3.2.0, h2o2.yaml, multicomponent."""
    back = fh.flashback_gradient_1_s(Band(2.8905, 2.8905, 2.8905), 5.2779e-5)
    assert back.low < 8 * 5.122 / 0.004 < back.high
    assert back.value == pytest.approx(8 * 5.122 / 0.004, rel=0.05)


@pytest.mark.parametrize("phi", [0.8, 0.9, 1.0, 1.2])
def test_no_flame_goes_back_above_the_careful_end(phi):
    """A cold wide port's careful margin falls where puffs begin: the limit is the highest velocity at which it is 1."""
    port = flame("CH4", phi, 0.0254, 0.3, None, 293.15)
    careful = port.flashback_velocity_m_s().high
    assert all(port.flashback_margin(careful * (1 + step / 100)).low > 1 for step in range(1, 300))


def test_a_cold_stream_counts_as_turbulent_at_re_2300_and_a_hot_one_not_yet():
    """At the careful end Blasius over 3 instead of 8V/d: 0.0791 x 2300^0.75/16/3 = 0.547 of it in a long tube."""
    cold, hot = (flame(diameter=0.0254, length=10.0, wall=wall) for wall in (None, 288.7))
    v = 2300 / cold._reynolds(1.0)

    def careful(port):
        return port.flashback_margin(v).low * port._flashback_gradient_1_s(*port._exit(v)[3:]).high

    assert careful(hot) == pytest.approx(8 * v / 0.0254)
    assert careful(cold) == pytest.approx(8 * v / 0.0254 * 0.547, rel=2e-3)
