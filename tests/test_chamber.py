"""Heat need of a whole chamber: parts, balance, refusals."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from burnercalc.errors import InputErrors
from burnercalc.physics.chamber import chamber_heat, heat_balance
from burnercalc.physics.linings import material_keys

FORGE = {
    "shape": "box",
    "length_m": 0.3048,
    "width_m": 0.1524,
    "height_m": 0.1524,
    "lining": (("dense_castable", 0.0254), ("blanket_8lb", 0.0508)),
    "opening_area_m2": 0.006,
    "opening_depth_m": 0.0762,
    "chamber_temp_K": 1573.15,
    "work_metal": "steel",
    "work_rate_kg_s": 5 / 3600,
    "work_temp_K": 1473.15,
    "heat_up_time_s": 1800.0,
    "ambient_temp_K": 294.15,
}


def test_work_heat_by_hand():
    # 5 kg/h of steel to 1200 degC: EN 1993-1-2 gives 827.1 kJ/kg above 20 degC; 1149 W less 1 K of 0.44 kJ/kgK.
    assert chamber_heat(**FORGE).work_heat_W == pytest.approx(827.1e3 * 5 / 3600, rel=0.001)


def test_wall_loss_lies_between_flat_walls_of_inside_and_outside_area():
    # Reference wall of 25 mm castable and 50 mm blanket loses about 3.9 kW/m2 flat; inside 0.233, outside 0.72 m2.
    got = chamber_heat(**FORGE)
    assert 0.23 * 3000 < got.wall_loss_W < 0.72 * 3900
    assert got.inside_area_m2 == pytest.approx(2 * (2 * 0.3048 * 0.1524 + 0.1524**2))
    assert got.volume_m3 == pytest.approx(0.3048 * 0.1524**2)


def test_heat_up_takes_more_than_holding_and_less_with_more_time():
    fast, slow = chamber_heat(**FORGE), chamber_heat(**{**FORGE, "heat_up_time_s": 7200.0})
    assert fast.heat_up_W > slow.heat_up_W > slow.hold_W
    # Castable alone, all of it at 1300 degC: 2320 kg/m3 x 25.4 mm x 1.33 MJ/kg x 0.24 to 0.31 m2 = 19 to 25 MJ.
    assert 15e6 < slow.stored_heat_J < 25e6


def test_rates_and_balance():
    heat = chamber_heat(**FORGE)
    working_W = (heat.wall_loss_W + heat.opening_loss_W + heat.work_heat_W) / 0.35
    # Small forges bring 5 to 15 % of the gross heat into the stock (common practice); this one is worked gently.
    assert 0.03 < heat.work_heat_W / working_W < 0.2
    for rate in (0.0, working_W, 30e3):
        assert sum(watt for _, watt in heat_balance(heat, rate, 0.35)) == pytest.approx(rate, rel=1e-6, abs=1e-6)
    assert dict(heat_balance(heat, working_W, 0.35))["spare"] == pytest.approx(0, abs=1e-6)


def test_cylinder_of_the_same_size_loses_a_little_less_than_the_box():
    tube = chamber_heat(**{**FORGE, "shape": "cylinder", "diameter_m": 0.1524, "width_m": None, "height_m": None})
    box = chamber_heat(**FORGE)
    assert 0.7 * box.wall_loss_W < tube.wall_loss_W < 0.95 * box.wall_loss_W


def test_melting_counts():
    pot = {**FORGE, "work_metal": "aluminium", "work_rate_kg_s": 0.001}
    below = chamber_heat(**{**pot, "work_temp_K": 930.0}).work_heat_W
    above = chamber_heat(**{**pot, "work_temp_K": 937.0}).work_heat_W
    assert above - below == pytest.approx(397 + 8, abs=6)  # latent 397 J/g and 7 K of 1.2 J/gK


@settings(max_examples=25, deadline=None)
@given(
    inner=st.sampled_from(material_keys()),
    thickness=st.floats(0.01, 0.08),
    hot=st.floats(700, 1900),
    opening=st.floats(0, 0.02),
    air=st.floats(250, 320),
    time_s=st.floats(300, 30000),
    share=st.floats(0.02, 0.9),
    rate_W=st.floats(0, 1e5),
)
def test_any_chamber_balances(inner, thickness, hot, opening, air, time_s, share, rate_W):
    heat = chamber_heat(
        **{
            **FORGE,
            "lining": ((inner, thickness), ("blanket_8lb", 0.05)),
            "chamber_temp_K": hot,
            "work_temp_K": 600.0,
            "opening_area_m2": opening,
            "ambient_temp_K": air,
            "heat_up_time_s": time_s,
        }
    )
    assert sum(watt for _, watt in heat_balance(heat, rate_W, share)) == pytest.approx(rate_W, rel=1e-6, abs=1e-6)
    assert 0 < heat.hold_W <= heat.working_W


def test_reports_all_faults_together():
    with pytest.raises(InputErrors) as caught:
        chamber_heat(
            **{
                **FORGE,
                "length_m": -1,
                "lining": (("gold", 0.02),),
                "opening_depth_m": -1,
                "work_metal": "mercury",
                "work_temp_K": 1600.0,
                "shell_emissivity": 2.0,
                "work_rate_kg_s": -1,
            }
        )
    assert [e.field for e in caught.value.errors] == [
        "chamber_length",
        "lining",
        "shell_emissivity",
        "work_rate",
        "work_temperature",
        "work_metal",
        "opening_depth",
    ]


def test_a_time_is_refused_beside_a_lining_that_is_refused_too():
    with pytest.raises(InputErrors) as caught:
        chamber_heat(**{**FORGE, "lining": (("ifb_23", -0.1),), "heat_up_time_s": 0.0})
    assert [e.field for e in caught.value.errors] == ["lining", "heat_up_time"]
    with pytest.raises(InputErrors) as caught:
        chamber_heat(**{**FORGE, "lining": (("ifb_23", -0.1),)})
    assert [e.field for e in caught.value.errors] == ["lining"]


@pytest.mark.parametrize(
    "field, change",
    [
        ("chamber_shape", {"shape": "ball"}),
        ("chamber_height", {"height_m": 0.0}),
        ("opening_area", {"opening_area_m2": 0.05}),
        ("chamber_temperature", {"chamber_temp_K": 2200.0}),
        ("heat_up_time", {"heat_up_time_s": 0.0}),
        ("lining", {"lining": (("ifb_23", -0.1),)}),
        ("work_temperature", {"work_temp_K": 1600.0}),
    ],
)
def test_names_the_field(field, change):
    with pytest.raises(InputErrors) as caught:
        chamber_heat(**{**FORGE, **change})
    assert field in [e.field for e in caught.value.errors]
