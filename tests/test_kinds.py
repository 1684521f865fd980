"""Three kinds of burner side by side: available heat by table, the jet's air by the momentum relation, and what does not change."""

from math import pi, sqrt

import pytest
from hypothesis import given, settings
from rows import rows
from solving import any_heat, plain, solved, solved_or_dropped

KINDS = ["naturally aspirated single flame", "blown single flame", "blown multi-port"]


def by_kind(r):
    return {row[0]: row for row in r.tables["burner_kinds"].rows}


def test_three_kinds_at_the_excess_air_each_holds():
    r = solved(chamber_temperature="2000 degF", work_temperature="1900 degF", multi_port_excess_air="5 %")
    table = {
        row["excess_air_percent"]: row["available_percent"]
        for row in rows("available_heat.csv")
        if row["fuel"] == "propane" and row["flue_temp_F"] == 2000
    }
    found = by_kind(r)
    assert list(found) == KINDS
    for kind, percent in zip(KINDS, (20, 10, 5)):
        _, excess, available, working, gas, *_ = found[kind]
        assert excess == pytest.approx(percent / 100)
        # 1 point: reference figures, section 1.8; the table burns everything.
        assert 100 * available == pytest.approx(table[percent], abs=1.0)
        assert working == pytest.approx((r["wall_loss"] + r["opening_loss"] + r["work_heat"]) / available)
        assert gas == pytest.approx(working / 50.343e6, rel=1e-3)
    assert found[KINDS[0]][4] > found[KINDS[1]][4] > found[KINDS[2]][4]


def test_this_design_uses_what_the_chamber_chapter_says_when_the_mixture_is_the_same():
    r = solved(equivalence_ratio=str(1 / 1.05))
    assert by_kind(r)["blown multi-port"][4] == pytest.approx(r["fuel_per_hour"], rel=1e-9)


def test_weak_jet_pulls_in_what_momentum_says():
    """Closed form (1 + r)(s + r) = s A/Aj for a weak jet, plain inlet and outlet; propane needs 23.87 volumes of air."""
    r = solved(
        aspirated_pressure="0.1 psi",
        aspirated_jet="1 mm",
        aspirated_throat="3/4",
        jet_discharge_coefficient="1",
        ambient_temperature="59 degF",
    )
    s, area = 44.0956 / 28.9644, (0.824 * 25.4 / 1.0) ** 2
    ratio = (-(1 + s) + sqrt((1 + s) ** 2 - 4 * s * (1 - area))) / 2
    assert r["aspirated_equivalence_ratio"] == pytest.approx(23.87 / ratio, rel=0.01)
    # Bernoulli through the jet: 689.5 Pa, density of propane as ideal gas.
    density = 101325 * 44.0956e-3 / (8.314462618 * 288.15)
    assert r["aspirated_rate"] == pytest.approx(pi / 4 * 1e-6 * sqrt(2 * density * 689.476) * 50.343e6, rel=0.01)


def test_losses_and_a_narrow_throat_make_it_rich():
    plain_tube = solved()["aspirated_equivalence_ratio"]
    # Common practice: 0.9 mm in 3/4 in pipe at 10 psi runs near stoichiometric.
    assert 0.75 < plain_tube < 1.2
    assert solved(aspirated_outlet_loss="2")["aspirated_equivalence_ratio"] > plain_tube
    assert solved(aspirated_inlet_loss="2")["aspirated_equivalence_ratio"] > plain_tube
    assert solved(aspirated_throat="1/2")["aspirated_equivalence_ratio"] > plain_tube
    assert solved(aspirated_outlet_loss="0.5", aspirated_inlet_loss="0.1")["aspirated_equivalence_ratio"] < plain_tube


def test_the_comparison_changes_nothing_of_the_burner():
    one, other = (
        solved(),
        solved(
            aspirated_pressure="20 psi",
            aspirated_excess_air="60 %",
            blown_excess_air="50 %",
            multi_port_excess_air="40 %",
        ),
    )
    assert all(one[key] == other[key] for key in one.answers if not key.startswith("aspirated"))


def test_a_kind_that_cannot_hold_the_chamber_has_no_rate():
    r = solved(aspirated_excess_air="100 %", chamber_temperature="2350 degF")
    _, excess, *numbers = by_kind(r)[KINDS[0]][:5]
    assert excess == 1 and numbers == [None, None, None]
    assert by_kind(r)[KINDS[2]][4] > 0


def test_power_cut_and_wear_are_told_of_each_kind():
    for row in by_kind(solved()).values():
        assert all(isinstance(cell, str) and cell for cell in row[5:])
    assert "without power" in by_kind(solved())["blown multi-port"][-1]


@settings(max_examples=60, deadline=None)
@given(any_heat)
def test_any_comparison_is_told_in_numbers(texts):
    r = solved_or_dropped(texts)
    plain(r)
    assert list(by_kind(r)) == KINDS and r["aspirated_equivalence_ratio"] > 0 and r["aspirated_rate"] > 0
