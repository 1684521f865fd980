"""Block volume counted two ways, the 8 x 6 x 3 in check block, classes and refusals."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from burnercalc.errors import InputError
from burnercalc.making import refractory as r

IN, LB = 0.0254, 0.45359237
OWN = dict(
    density_kg_m3=145 * LB / 0.3048**3, water_low=0.09, water_high=0.11, service_temp_K=1922, working_time_s=1800
)


def test_check_block_of_the_reference():
    """reference.md 7.2: 8 x 6 x 3 in at 145 lb/ft3 = 12.08 lb dry; 10 % water = 1.21 lb."""
    got = r.batch(volume_m3=8 * 6 * 3 * IN**3, material=r.own_castable(**OWN), waste=0)
    assert got.dry_kg / LB == pytest.approx(12.08, abs=0.005)
    assert got.water_kg / LB == pytest.approx(1.21, abs=0.005)
    assert (got.water_low_kg / got.dry_kg, got.water_high_kg / got.dry_kg) == pytest.approx((0.09, 0.11))


def test_ports_keep_out_their_sum_until_they_overlap():
    """Touching in sixes, each port of 8 mm has a cell of sqrt(3)/2 d**2 = 55.43 mm2: 100 fit into 55.43 cm2."""
    window = {"port_diameter_m": 0.008, "window_area_m2": 100 * math.sqrt(3) / 2 * 0.008**2}
    assert r.ports_kept_out(port_count=99, **window) == 99
    assert r.ports_kept_out(port_count=130, **window) == pytest.approx(100, rel=1e-12)


def test_bag_yield_of_the_reference():
    """reference.md 10: a 55 lb bag at 145 lb/ft3 fills 0.379 ft3, so a hair more needs a second bag."""
    own = r.own_castable(**OWN)
    bag = 55 * LB
    assert r.batch(volume_m3=0.379 * 0.3048**3, material=own, waste=0, bag_mass_kg=bag).bags == 1
    assert r.batch(volume_m3=0.380 * 0.3048**3, material=own, waste=0, bag_mass_kg=bag).bags == 2


def test_the_dense_class_holds_the_check_density():
    dense = r.castable("dense_castable")
    assert dense.density_kg_m3 == pytest.approx(OWN["density_kg_m3"])
    assert (dense.water_low, dense.water_high) == (0.09, 0.11) and dense.service_temp_K == pytest.approx(
        1922.04, abs=0.01
    )


@settings(max_examples=100, deadline=None)
@given(
    st.floats(0.08, 0.3),
    st.floats(0.05, 0.15),
    st.floats(0.002, 0.008),
    st.floats(1, 3),
    st.floats(1, 4),
    st.floats(0.009, 0.015),
    st.floats(0, 0.006),
    st.integers(0, 12),
)
def test_volume_is_the_mould_less_steel_and_pins(length, width, wall, grips, thicks, setback, clearance, n):
    """Counted the other way round: the full mould less the steel standing in it, less the pins."""
    grip, d = wall * grips, 0.006
    thick = grip * thicks
    window = (length - 2 * setback) * (width - 2 * setback)
    inside = (length - 2 * wall) * (width - 2 * wall)
    area = (length + clearance) * (width + clearance)
    got = r.block_volume_m3(
        mould_area_m2=area,
        body_area_m2=length * width,
        inside_area_m2=inside,
        window_area_m2=window,
        wall_m=wall,
        grip_m=grip,
        block_thickness_m=thick,
        port_count=n,
        port_diameter_m=d,
    )
    lip, sides = (length * width - window) * wall, (length * width - inside) * (grip - wall)
    assert got == pytest.approx(area * thick - lip - sides - n * math.pi / 4 * d * d * thick, rel=1e-9)


def test_common_practice_body_by_hand():
    """6.5 x 3 in face, 1/4 in wall, window 5.5 x 2, grip 3/4, block 2 3/4 in, 17 ports of 5/16, no clearance:
    19.5*2 + 11*0.25 + 6*2.5*0.5 - 17*0.0766990*2.75 = 45.6643 in3."""
    got = r.block_volume_m3(
        mould_area_m2=19.5 * IN**2,
        body_area_m2=19.5 * IN**2,
        inside_area_m2=15 * IN**2,
        window_area_m2=11 * IN**2,
        wall_m=0.25 * IN,
        grip_m=0.75 * IN,
        block_thickness_m=2.75 * IN,
        port_count=17,
        port_diameter_m=0.3125 * IN,
    )
    assert got / IN**3 == pytest.approx(45.6643, abs=0.0005)


def test_mixes_follow_the_working_time():
    own = r.own_castable(**{**OWN, "working_time_s": 600})
    got = r.batch(volume_m3=0.01, material=own, waste=0.1, placing_rate_kg_s=0.01)
    assert got.mixes == 5 and got.mixes * got.dry_per_mix_kg == pytest.approx(got.dry_kg)  # 25.5 kg at 6 kg a mix
    assert got.dry_per_mix_kg <= 0.01 * 600


def test_plastic_takes_no_water():
    got = r.batch(volume_m3=0.001, material=r.castable("phosphate_plastic"))
    assert got.water_kg == 0 and got.bags == 1


def test_every_class_is_a_mineral_and_its_bands_are_in_order():
    for name in r.castable_names():
        one = r.castable(name)
        assert 900 < one.density_low_kg_m3 <= one.density_high_kg_m3 < 3500
        assert 0 <= one.water_low <= one.water_high < 0.8 and one.mixes_with_water == (one.water_high > 0)
        assert 1600 < one.service_temp_K < 2100


def test_names_the_field():
    good = dict(
        mould_area_m2=0.0125,
        body_area_m2=0.0125,
        inside_area_m2=0.0096,
        window_area_m2=0.007,
        wall_m=0.006,
        grip_m=0.019,
        block_thickness_m=0.07,
        port_count=17,
        port_diameter_m=0.008,
    )
    for change, field in (
        (dict(grip_m=0.005), "grip"),
        (dict(grip_m=float("nan")), "grip"),
        (dict(block_thickness_m=0.01), "block_thickness"),
        (dict(mould_area_m2=0.01), "mould_clearance"),
        (dict(window_area_m2=0.02), "setback"),
        (dict(port_count=900), "port_diameter"),
    ):
        with pytest.raises(InputError) as caught:
            r.block_volume_m3(**{**good, **change})
        assert caught.value.field == field
    for change, field in (
        (dict(density_kg_m3=10), "castable_density"),
        (dict(water_low=0.2), "castable_water"),
        (dict(service_temp_K=0), "castable_service"),
        (dict(working_time_s=0), "working_time"),
    ):
        with pytest.raises(InputError) as caught:
            r.own_castable(**{**OWN, **change})
        assert caught.value.field == field
    with pytest.raises(InputError, match="insulating_castable"):
        r.castable("concrete")
    with pytest.raises(InputError, match="bag_mass"):
        r.batch(volume_m3=0.001, material=r.castable("dense_castable"), bag_mass_kg=0)


@pytest.mark.parametrize("narrowest_mm, grain_mm", [(1.5, 1), (5.9, 1), (6.35, 3), (9.9, 3), (10.3, 5), (40, 5)])
def test_two_grains_lie_in_the_narrowest_place(narrowest_mm, grain_mm):
    """1/4 in of edge takes a mix to 3 mm, a web under 6 mm only one to 1 mm."""
    assert r.grain_m(narrowest_mm / 1000) == pytest.approx(grain_mm / 1000)
