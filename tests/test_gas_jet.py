import fluids
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from rows import rows

from burnercalc.errors import InputError
from burnercalc.physics import gas_jet

PSI_PA, INCH_M, FOOT3_M3, POUND_KG = 6894.757293, 0.0254, 0.3048**3, 0.45359237
PROPANE = {"temp_K": 288.706, "molar_mass_kg_mol": 0.04409562, "heat_capacity_ratio": 1.13}


def name(row):
    return "-".join(str(value) for value in row.values())


@pytest.mark.parametrize("row", rows("orifice_table.csv"), ids=name)
def test_compressible_jet_agrees_with_the_tables_but_for_their_constant(row):
    molar_mass = row["specific_gravity"] * 0.0289647
    flow = gas_jet.jet_flow_kg_s(
        row["diameter_in"] * INCH_M,
        0.90,
        101325 + row["pressure_inH2O"] * 248.84,
        101325,
        288.706,
        molar_mass,
        1.30 if row["specific_gravity"] == 0.6 else 1.13,
    )
    got = flow / (101325 * molar_mass / (8.314462618 * 288.706)) * 3600 / FOOT3_M3
    # The tables carry 1658.5 where first principles give 1654.5 (0.24 %); expansion and density move 1 % at 11 in. The
    # code's table is not smooth.
    off = 0.011 if row["table"] == "open-textbook" else 0.05
    assert got == pytest.approx(row["expected_ft3_h"] * 1654.5 / 1658.5, rel=off)


@pytest.mark.parametrize("row", rows("choked_flow.csv"), ids=name)
def test_agrees_with_the_isentropic_nozzle_table(row):
    upstream = (row["pressure_psig"] + 14.696) * PSI_PA
    got = gas_jet.jet_flow_kg_s(0.0625 * INCH_M, 1.0, upstream, 101325.0, **PROPANE)
    assert got * 3600 / POUND_KG == pytest.approx(row["expected_lb_h"], rel=5e-4)
    assert gas_jet.is_choked(upstream, 101325.0, 1.13) == (row["choked"] == "yes")


@pytest.mark.parametrize("k", [1.1, 1.13, 1.31, 1.4])
def test_critical_ratio_agrees_with_fluids(k):
    assert gas_jet.critical_pressure_ratio(k) * 1e6 == pytest.approx(fluids.P_critical_flow(1e6, k), rel=1e-12)


def test_critical_ratio_of_propane_is_the_published_one():
    assert gas_jet.critical_pressure_ratio(1.13) == pytest.approx(0.57845, abs=1e-5)


def test_is_linear_above_choking():
    flows = [gas_jet.jet_flow_kg_s(1e-3, 0.8, (p + 14.696) * PSI_PA, 101325.0, **PROPANE) for p in (20, 30)]
    assert flows[1] / flows[0] == pytest.approx(44.696 / 34.696, rel=1e-9)


@pytest.mark.parametrize(
    "composition, expected, near",
    [
        ((("C3H8", 1.0),), 1.13, 0.005),
        ((("CH4", 1.0),), 1.31, 0.005),
        ((("C4H10", 1.0),), 1.095, 0.005),
        ((("CH4", 0.949), ("C2H6", 0.025), ("C3H8", 0.002), ("N2", 0.016), ("CO2", 0.008)), 1.30, 0.01),
    ],
)
def test_heat_capacity_ratio_is_near_the_handbook(composition, expected, near):
    # propane 1.13, methane 1.31: reference section 5.3; n-butane 1.094: Perry's (memory)
    assert gas_jet.heat_capacity_ratio(composition) == pytest.approx(expected, abs=near)


drill = st.floats(2e-4, 2e-2)
pressure = st.floats(500, 6e5)


@settings(max_examples=60, deadline=None)
@given(drill, pressure, st.floats(0.5, 1.0), st.floats(1.08, 1.4))
def test_hole_and_pressure_undo_the_flow(diameter, gauge, coefficient, k):
    gas = {"temp_K": 290.0, "molar_mass_kg_mol": 0.044, "heat_capacity_ratio": k}
    flow = gas_jet.jet_flow_kg_s(diameter, coefficient, 95000 + gauge, 95000, **gas)
    assert gas_jet.jet_diameter_m(flow, coefficient, 95000 + gauge, 95000, **gas) == pytest.approx(diameter, rel=1e-9)
    assert gas_jet.jet_pressure_Pa(flow, diameter, coefficient, 95000, **gas) == pytest.approx(95000 + gauge, rel=1e-12)


@settings(max_examples=60, deadline=None)
@given(drill, st.floats(1.0, 2.0), pressure, st.floats(1.0, 3.0))
def test_larger_hole_or_more_pressure_never_lowers_the_flow(diameter, wider, gauge, more):
    flow = gas_jet.jet_flow_kg_s(diameter, 0.8, 101325 + gauge, 101325, **PROPANE)
    assert gas_jet.jet_flow_kg_s(diameter * wider, 0.8, 101325 + gauge, 101325, **PROPANE) >= flow
    assert gas_jet.jet_flow_kg_s(diameter, 0.8, 101325 + gauge * more, 101325, **PROPANE) >= flow > 0


@pytest.mark.parametrize(
    "change, field",
    [
        ({"discharge_coefficient": 1.2}, "discharge_coefficient"),
        ({"discharge_coefficient": float("nan")}, "discharge_coefficient"),
        ({"upstream_Pa": float("nan")}, "upstream_Pa"),
        ({"downstream_Pa": 2e5}, "downstream_Pa"),
        ({"heat_capacity_ratio": 1.0}, "heat_capacity_ratio"),
        ({"diameter_m": -1}, "diameter_m"),
        ({"temp_K": 0}, "temp_K"),
        ({"molar_mass_kg_mol": 0}, "molar_mass_kg_mol"),
    ],
)
def test_refuses_and_names_the_field(change, field):
    good = {"diameter_m": 1e-3, "discharge_coefficient": 0.8, "upstream_Pa": 1.5e5, "downstream_Pa": 1e5, **PROPANE}
    with pytest.raises(InputError) as caught:
        gas_jet.jet_flow_kg_s(**{**good, **change})
    assert caught.value.field == field


def test_refuses_a_jet_without_pressure():
    with pytest.raises(InputError):
        gas_jet.jet_diameter_m(1e-4, 0.8, 1e5, 1e5, **PROPANE)
