import pytest
from rows import rows

from burnercalc.errors import InputError
from burnercalc.physics import ventilation as v

FOOT3_M3 = 0.3048**3


@pytest.mark.parametrize("row", rows("ventilation.csv"), ids=lambda row: "-".join(map(str, row.values())))
def test_agrees_with_the_worked_figures(row):
    got = v.co_dilution_flow_m3_s(39.76 * 21.866 * FOOT3_M3 / 3600, row["co_ppm"] * 1e-6, row["limit_ppm"] * 1e-6)
    # Three digits are printed.
    assert got * 60 / FOOT3_M3 == pytest.approx(row["expected_cfm"], rel=2e-3)


def test_limits_are_the_published_ones():
    assert [row["limit_ppm"] for row in v.co_limits()][:4] == [50, 35, 25, 200]


@pytest.mark.parametrize("name, mg_m3", [("EU IOELV", 23), ("EU short term", 117)])
def test_limits_of_the_union_are_those_by_weight(name, mg_m3):
    """Directive (EU) 2017/164 prints both, at 20 degC: a mole of 28.01 g is 24.06 L."""
    ppm = next(row["limit_ppm"] for row in v.co_limits() if row["name"] == name)
    assert ppm == pytest.approx(mg_m3 * 24.06 / 28.01, rel=0.02)


def test_refuses_and_names_the_field():
    with pytest.raises(InputError):
        v.co_dilution_flow_m3_s(1, 0.001, 0)
    with pytest.raises(InputError):
        v.co_dilution_flow_m3_s(float("nan"), 0.001, 35e-6)


@pytest.mark.parametrize("minutes, ppm", [(0, 100), (10, 100), (10.1, 50), (60, 50), (61, 30), (120, 30), (480, 30)])
def test_an_alarm_is_silent_for_a_while(minutes, ppm):
    """EN 50291-1: at 100 ppm not before 10 min, at 50 ppm not before an hour, at 30 ppm not before two."""
    assert v.co_silent_fraction(60 * minutes) == pytest.approx(ppm * 1e-6)


@pytest.mark.parametrize("hours, ppm", [(0, 200), (1.4, 200), (2, 140), (8, 35)])
def test_what_may_be_breathed_for_a_while_is_no_more_than_the_mean_of_a_shift(hours, ppm):
    """35 ppm over 8 h are 280 ppm h: 140 ppm for 2 h; 200 ppm, the ceiling, for 1.4 h or less."""
    assert v.co_limit_for(3600 * hours, 35e-6, 200e-6) == pytest.approx(ppm * 1e-6)
    for wrong in ((-1, 35e-6, 200e-6), (60, 0, 200e-6), (60, 35e-6, 2)):
        with pytest.raises(InputError):
            v.co_limit_for(*wrong)
