import pytest
from hypothesis import given
from hypothesis import strategies as st

from burnercalc.errors import InputError
from burnercalc.physics.drills import FAMILIES, drill_named, drills, nearest_drills

INCH_M = 0.0254


# From the number and letter drill table of the trade (ASME B94.11M, memory), written afresh.
@pytest.mark.parametrize(
    "name, inches",
    [
        ("#80", 0.0135),
        ("#60", 0.040),
        ("#54", 0.055),
        ("#30", 0.1285),
        ("#1", 0.228),
        ("A", 0.234),
        ("E", 0.250),
        ("F", 0.257),
        ("Z", 0.413),
        ("1/4 in", 0.25),
        ("37/64 in", 0.578125),
        ("6.5 mm", 6.5 / 25.4),
        ("1.05 mm", 1.05 / 25.4),
    ],
)
def test_named_drill_has_its_diameter(name, inches):
    assert drill_named(name).diameter_m == pytest.approx(inches * INCH_M, rel=1e-9)


@pytest.mark.parametrize("family, count", [("number", 80), ("letter", 26), ("fraction", 64)])
def test_families_are_whole(family, count):
    assert len(drills(family)) == count


@pytest.mark.parametrize("family", FAMILIES)
def test_drills_grow_and_have_names_of_their_own(family):
    sizes = [drill.diameter_m for drill in drills(family)]
    assert sizes == sorted(sizes) and len(set(sizes)) == len(sizes)
    assert len({drill.name for drill in drills(family)}) == len(sizes)


@given(st.floats(1e-4, 0.04), st.sampled_from(FAMILIES))
def test_nearest_drills_enclose_the_wanted_hole(diameter, family):
    below, above = nearest_drills(diameter, family)
    assert below or above
    assert below is None or below.diameter_m <= diameter + 1e-9
    assert above is None or above.diameter_m >= diameter - 1e-9
    between = [
        d
        for d in drills(family)
        if (below is None or d.diameter_m > below.diameter_m) and (above is None or d.diameter_m < above.diameter_m)
    ]
    assert not between


def test_exact_size_is_both_neighbours():
    below, above = nearest_drills(0.25 * INCH_M, "fraction")
    assert below.name == above.name == "1/4 in"


def test_refuses_unknown_names():
    for call in (lambda: drill_named("#81"), lambda: drills("gauge"), lambda: nearest_drills(float("nan"), "metric")):
        with pytest.raises(InputError):
            call()
