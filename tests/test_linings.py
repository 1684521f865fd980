"""Lining materials against the VDI Heat Atlas table in ht, and the reading of a layer list."""

import pytest
from ht.insulation import refractories, refractory_VDI_Cp, refractory_VDI_k

from burnercalc.errors import InputError, InputErrors
from burnercalc.physics.linings import material, material_keys, parse_lining
from burnercalc.tables import read_table

VDI = {
    "fireclay_brick": "Fireclay",
    "high_alumina_brick": "Bauxite",
    "mullite_brick": "Mullite",
    "ifb_23": "L1260",
    "ifb_26": "L1400",
    "ifb_28": "L1540",
}


def length_m(text):
    """Enough of a length reader for these tests: `1in`, `25 mm`, `1 1/2 in`."""
    units = {"mm": 1e-3, "in": 0.0254}
    for unit, factor in units.items():
        if text.endswith(unit):
            total = 0.0
            for part in text[: -len(unit)].split():
                top, _, bottom = part.partition("/")
                total += float(top) / float(bottom or 1)
            return total * factor
    raise ValueError(f"no length: {text}")


@pytest.mark.parametrize("key", VDI)
@pytest.mark.parametrize("temp_C", [400, 500, 700, 1000, 1150])
def test_vdi_rows_agree_with_ht(key, temp_C):
    # ht 1.2.0 interpolates the same table with straight lines, so only rounding may differ.
    got = material(key)
    assert got.conductivity_W_mK(temp_C + 273.15) == pytest.approx(
        refractory_VDI_k(VDI[key], temp_C + 273.15), rel=1e-9
    )
    assert got.heat_capacity_J_kgK(temp_C + 273.15) == pytest.approx(
        refractory_VDI_Cp(VDI[key], temp_C + 273.15), rel=1e-9
    )
    assert got.density_kg_m3 == refractories[VDI[key]][0]


def test_fireclay_at_700_degC():
    # ht.insulation.refractory_VDI_k('Fireclay', 973.15), printed 1.125.
    assert material("fireclay_brick").conductivity_W_mK(973.15) == pytest.approx(1.125, abs=5e-4)


# Recalled class data (Btu in/h ft2 F at 500/1000/1500/2000 degF, ASTM C155 groups) against the VDI rows used. Two
# sources of one quantity; laboratories differ by about 8 % (one sigma), the group 23 brick is the widest.
@pytest.mark.parametrize(
    "key, temp_F, k_btu",
    [
        ("ifb_23", 1000, 1.2),
        ("ifb_23", 1500, 1.4),
        ("ifb_26", 1000, 1.9),
        ("ifb_26", 1500, 2.1),
        ("ifb_28", 1000, 2.3),
        ("ifb_28", 1500, 2.5),
    ],
)
def test_firebrick_sources_agree(key, temp_F, k_btu):
    got = material(key).conductivity_W_mK((temp_F - 32) / 1.8 + 273.15)
    assert got == pytest.approx(k_btu * 0.144228, rel=0.15)


# Class data in Btu in/h ft2 F, restated afresh; the table holds W/mK rounded to two or three digits.
@pytest.mark.parametrize(
    "key, temp_F, k_btu",
    [
        ("dense_castable", 500, 11),
        ("dense_castable", 1500, 10.5),
        ("phosphate_plastic", 2000, 13),
        ("blanket_8lb", 500, 0.44),
        ("blanket_8lb", 1000, 0.87),
        ("blanket_8lb", 1800, 1.83),
        ("blanket_6lb", 1000, 1.0),
        ("calcium_silicate_board", 800, 0.65),
    ],
)
def test_class_rows_hold_the_recalled_values(key, temp_F, k_btu):
    got = material(key).conductivity_W_mK((temp_F - 32) / 1.8 + 273.15)
    assert got == pytest.approx(k_btu * 0.144228, rel=0.02)


def test_dense_castable_lies_near_mullite_times_0_9():
    # Common practice: 60 % alumina castable = 0.9 x mullite or sillimanite brick (ht 1.2.0).
    for temp_C in (400, 800, 1200):
        low = 0.9 * refractory_VDI_k("Mullite", temp_C + 273.15)
        high = 0.9 * refractory_VDI_k("Sillimanite", temp_C + 273.15)
        assert 0.9 * low < material("dense_castable").conductivity_W_mK(temp_C + 273.15) < 1.1 * high


GROUP_BOUNDS = {
    "dense": (1, 2.5),
    "phosp": (1, 2.5),
    "firec": (0.9, 2.5),
    "high_": (1, 2.5),
    "mulli": (1, 2.5),
    "insul": (0.2, 0.6),
    "ifb_2": (0.09, 0.6),
    "blank": (0.03, 0.8),
    "calci": (0.04, 0.4),
}


@pytest.mark.parametrize("key", material_keys())
def test_rows_are_sane(key):
    low, high = GROUP_BOUNDS[key[:5]]
    got = material(key)
    assert list(got.temps_K) == sorted(set(got.temps_K))
    assert got.temps_K[0] == pytest.approx(223.15) and got.temps_K[-1] == pytest.approx(2073.15)
    assert all(low < k < high for k in got.conductivities_W_mK)
    assert all(700 <= cp <= 1250 for cp in got.heat_capacities_J_kgK)
    assert list(got.heat_capacities_J_kgK) == sorted(got.heat_capacities_J_kgK)
    assert 900 <= got.limit_K <= 2000 and got.trust in ("published", "memory")


def test_every_property_row_belongs_to_a_material():
    assert {row["key"] for row in read_table("lining_properties")} == set(material_keys())


@pytest.mark.parametrize("key", material_keys())
def test_integral_and_inverse_are_a_round_trip(key):
    got = material(key)
    for temp_K in (223.15, 300.0, 777.0, 1500.0, 2073.15):
        assert got.temp_at_integral_K(got.conductivity_integral_W_m(temp_K)) == pytest.approx(temp_K, abs=1e-9)
        assert got.states([got.enthalpy_J_kg(temp_K)])[0][0] == pytest.approx(temp_K, abs=1e-9)
    # Mean value theorem: the mean conductivity over one degree is the conductivity in its middle (straight lines).
    assert got.conductivity_integral_W_m(800.5) - got.conductivity_integral_W_m(799.5) == pytest.approx(
        got.conductivity_W_mK(800), rel=1e-9
    )


def test_reads_layers_from_the_hot_face_out():
    assert parse_lining("dense_castable 1in, blanket_8lb 1 1/2 in,ifb_23 25 mm", length_m) == (
        ("dense_castable", pytest.approx(0.0254)),
        ("blanket_8lb", pytest.approx(0.0381)),
        ("ifb_23", pytest.approx(0.025)),
    )


def test_reports_all_faulty_layers_together():
    with pytest.raises(InputErrors) as caught:
        parse_lining("gold 1in, blanket_8lb -2 in, ifb_23, ifb_26 wide, , dense_castable 0mm, ifb_28 1in", length_m)
    assert [error.field for error in caught.value.errors] == ["lining"] * 6
    assert "blanket_8lb" in str(caught.value.errors[0])  # the known keys are listed


def test_refuses_a_thickness_that_is_no_number():
    with pytest.raises(InputErrors):
        parse_lining("ifb_23 1in", lambda text: float("nan"))


def test_names_the_limits_of_the_table():
    with pytest.raises(InputError, match="2073"):
        material("ifb_23").conductivity_W_mK(2100)
    with pytest.raises(InputError):
        material("ifb_23").conductivity_W_mK(float("nan"))
