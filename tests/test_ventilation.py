import pytest
from rows import rows

from burnercalc.errors import InputError
from burnercalc.physics import ventilation as v


@pytest.mark.parametrize("row", rows("ventilation.csv"), ids=lambda row: "-".join(map(str, row.values())))
def test_agrees_with_the_worked_figures(row):
    if row["case"] == "dilution_cfm":
        got = v.co_dilution_flow_m3_s(39.76 * 21.866 / 3600 * v.FOOT3_M3, row["first"] * 1e-6, row["second"] * 1e-6)
        got = got * 60 / v.FOOT3_M3
    elif row["case"] == "opening_in2":
        got = v.combustion_air_opening_m2(row["second"] * v.BTU_H_W, row["first"]) / v.INCH2_M2
    else:
        got = v.unconfined_room_m3(row["second"] * v.BTU_H_W) / v.FOOT3_M3
    # Three digits are printed.
    assert got == pytest.approx(row["expected"], rel=2e-3)


def test_limits_are_the_published_ones():
    assert [row["limit_ppm"] for row in v.co_limits()][:4] == [50, 35, 25, 200]


def test_refuses_and_names_the_field():
    with pytest.raises(InputError, match="outdoors-direct"):
        v.combustion_air_opening_m2(1e4, "window")
    with pytest.raises(InputError):
        v.co_dilution_flow_m3_s(1, 0.001, 0)
    with pytest.raises(InputError):
        v.co_dilution_flow_m3_s(float("nan"), 0.001, 35e-6)
