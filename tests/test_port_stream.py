from dataclasses import dataclass
from math import log, sqrt

import ht
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from rows import rows

from burnercalc.errors import InputError
from burnercalc.physics import port_stream as ps
from burnercalc.physics.band import Band
from burnercalc.physics.flame_holding import PortFlame
from burnercalc.tables import read_table

D_M = 0.00635


@dataclass
class Gas:
    density_kg_m3: float
    viscosity_Pas: float
    conductivity_W_mK: float
    heat_capacity_J_kgK: float


def power_law_gas(temp_K):
    """Propane phi 1 of Cantera's transport at 400 K carried as powers of T."""
    s = temp_K / 400
    return Gas(0.8977 / s, 22.08e-6 * s**0.7, 0.03291 * s**0.84, 1089 * s**0.17)


@pytest.mark.parametrize("row", rows("wall_gradient.csv"), ids=lambda row: f"{row['case']}-{row['velocity_m_s']}")
def test_agrees_with_the_worked_gradients(row):
    v, d, nu = row["velocity_m_s"], row["diameter_m"], row["viscosity_m2_s"]
    if row["case"] == "laminar":
        # A port so long that the flow has developed.
        got = ps.laminar_gradient_1_s(v, d, 1000.0, nu)
    else:
        got = ps.friction_gradient_1_s(v, nu, ps.blasius_friction_fanning(v * d / nu))
    assert got == pytest.approx(row["expected"], rel=1e-3)


def test_friction_form_is_the_laminar_one_at_sixteen_over_reynolds():
    nu = 1.5e-5
    assert ps.friction_gradient_1_s(2.0, nu, 16 / (2.0 * D_M / nu)) == pytest.approx(8 * 2.0 / D_M, rel=1e-9)


@pytest.mark.parametrize("row", read_table("developing_flow"), ids=lambda row: f"{row['x_plus']:g}")
def test_marched_flow_has_shahs_apparent_friction(row):
    # f_app Re of Shah (1978), stated to 2.4 % of the measurements and solutions (memory).
    x = row["x_plus"]
    shah = 3.44 / sqrt(x) + (16 + 1.25 / (4 * x) - 3.44 / sqrt(x)) / (1 + 0.00021 * x**-2)
    assert row["apparent_f_re"] == pytest.approx(shah, rel=0.02)


@pytest.mark.parametrize("row", read_table("developing_flow"), ids=lambda row: f"{row['x_plus']:g}")
def test_entry_ratio_is_the_table(row):
    assert ps.entry_gradient_ratio(row["x_plus"]) == pytest.approx(row["gradient_ratio"], rel=1e-9)


def test_entry_ratio_tends_to_the_flat_plate_and_to_one():
    # Blasius' plate: skin friction 0.664/sqrt(Re_x), so ratio 0.664/16/sqrt(x+); the core of a tube adds a little.
    assert ps.entry_gradient_ratio(1e-8) == pytest.approx(0.664 / 16 / 1e-4, rel=0.09)
    assert ps.entry_gradient_ratio(10) == 1


SHOP_K = 288.0


def cold_port(diameter_m, length_m):
    """A flame on a port as cold as its mixture, of which only the stream is asked."""
    gas, no_flame = ps.StreamProperties(power_law_gas), Band(0.4, 0.4, 0.4)
    return PortFlame(diameter_m, length_m, gas, lambda temp_K: no_flame, 1.0, SHOP_K)


@settings(max_examples=80, deadline=None)
@given(st.floats(0.01, 60), st.floats(0.001, 0.03), st.floats(0.5, 40), st.floats(1.001, 1.5))
def test_gradient_grows_steadily_with_velocity(v, d, ratio, more):
    slow, fast = (cold_port(d, d * ratio).wall_gradient_1_s(x) for x in (v, v * more))
    assert 8 * v / d * (1 - 1e-12) <= slow < fast


@pytest.mark.parametrize("edge", [2300, 4000])
def test_nothing_jumps_where_the_regime_changes(edge):
    nu = power_law_gas(SHOP_K).viscosity_Pas / power_law_gas(SHOP_K).density_kg_m3
    low, high = (cold_port(D_M, 0.05).wall_gradient_1_s(edge * f * nu / D_M) for f in (1 - 1e-9, 1 + 1e-9))
    assert high == pytest.approx(low, rel=1e-7)


@pytest.mark.parametrize("row", rows("port_preheat.csv"), ids=lambda row: f"{row['velocity_m_s']}")
def test_agrees_with_the_worked_preheat(row):
    graetz = 1.2438 * row["velocity_m_s"] * D_M**2 * 1109 / (0.0363 * 0.05)
    # Re 0: the worked table is laminar throughout. It is printed to 1 K.
    assert ps.port_exit_temp_K(graetz, 0, 0.71, 288.7, 900) == pytest.approx(row["expected_K"], abs=1.0)


@pytest.mark.parametrize("reynolds", [4000, 1e4, 1e5])
def test_gnielinski_agrees_with_ht(reynolds):
    friction = (0.79 * log(reynolds) - 1.64) ** -2
    assert ps.gnielinski_nusselt(reynolds, 0.71) == pytest.approx(
        ht.conv_internal.turbulent_Gnielinski(Re=reynolds, Pr=0.71, fd=friction), rel=1e-9
    )


@settings(max_examples=60, deadline=None)
@given(st.floats(0.05, 40), st.floats(300, 1600), st.floats(0, 200))
def test_exit_lies_between_inlet_and_wall_and_follows_the_wall(v, wall, hotter):
    gas = ps.StreamProperties(power_law_gas)
    cool, warm = (ps.stream_exit_temp_K(v, D_M, 0.05, gas, 288.0, w) for w in (wall, wall + hotter))
    assert 288 <= cool <= wall and cool <= warm


def test_property_table_gives_a_power_law_back():
    gas = ps.StreamProperties(power_law_gas)
    for temp_K in (230, 300, 512, 900, 1200):
        exact = power_law_gas(temp_K)
        assert gas.at(temp_K) == pytest.approx(
            (exact.density_kg_m3, exact.viscosity_Pas, exact.conductivity_W_mK, exact.heat_capacity_J_kgK), rel=1e-9
        )


def test_property_table_keeps_its_nodes():
    """Of a gas that follows no power of T, so that each row can be told from its neighbours."""
    straight = ps.StreamProperties(lambda t: Gas(300 / t, 1e-5 + 4e-8 * t, 0.01 + 7e-5 * t, 900 + 0.4 * t))
    for node_K in ps.StreamProperties.NODES_K:
        expected = 300 / node_K, 1e-5 + 4e-8 * node_K, 0.01 + 7e-5 * node_K, 900 + 0.4 * node_K
        assert straight.at(node_K) == pytest.approx(expected, rel=1e-12)


def test_refuses_and_names_the_field():
    with pytest.raises(InputError) as caught:
        ps.turbulent_weight(float("nan"))
    assert caught.value.field == "reynolds"
