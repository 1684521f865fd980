"""The face: a case known from common practice, closed forms, and properties of every port field."""

from math import hypot, pi

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from burnercalc.design import Design
from burnercalc.errors import InputErrors
from burnercalc.physics import port_field
from burnercalc.solve import solve

INCH = 0.0254
# Common practice, no source: a small box with three staggered rows of six.
KNOWN = {
    "body_length": "6.5 in",
    "body_width": "3 in",
    "body_depth": "3 in",
    "wall": "1/4 in",
    "setback": "1/2 in",
    "grip": "3/4 in",
    "inlet": "2",
    "port_diameter": "5/16 in",
    "rows": "3",
    "ports_per_row": "6",
    "pattern": "staggered",
}


@pytest.fixture(scope="module")
def known():
    return solve(Design.from_texts(KNOWN))


@pytest.mark.parametrize(
    "key, expected",
    [
        ("port_count", 17),
        ("window_length", 5.5 * INCH),
        ("window_width", 2 * INCH),
        # by hand: 17 x pi/4 x (5/16)^2 = 1.30388 in2; plenum (3 - 1/2) x (3 - 1/4 - 3/4) = 5 in2; 2 in pipe bore 2.067 in
        ("port_area", 1.30388 * INCH**2),
        ("plenum_area", 5 * INCH**2),
        ("plenum_to_port_ratio", 3.8347),
        ("inlet_area", 3.3556 * INCH**2),
        ("port_pitch", 0.9375 * INCH),
        ("row_pitch", 0.59375 * INCH),
    ],
)
def test_known_face(known, key, expected):
    assert known[key] == pytest.approx(expected, rel=2e-5)


def test_known_rows(known):
    assert known.row_counts == [6, 5, 6]


def test_least_web_of_the_known_face(known):
    # by hand: hypot(0.9375/2, 0.59375) - 0.3125 in
    assert known["min_web"] == pytest.approx((hypot(0.46875, 0.59375) - 0.3125) * INCH, rel=1e-9)


def test_rounded_corner_can_be_nearer_than_the_sides():
    # A port that touches both sides of a square corner with margin m: to a corner of radius R its edge is
    # R - hypot(R - m - d/2, R - m - d/2) - d/2; by hand for m = 0, d = 10 mm, R = 20 mm: 20 - 15 sqrt(2) - 5.
    edge = port_field.least_edge_m([(0.045, 0.045)], 0.010, 0.1, 0.1, 0.020)
    assert edge == pytest.approx((20 - 15 * 2**0.5 - 5) / 1000, abs=1e-12)


def test_window_area_is_that_of_a_circle_when_the_corners_meet():
    assert port_field.rounded_rectangle_area_m2(0.1, 0.1, 0.05) == pytest.approx(pi * 0.05**2)


def test_velocity_at_altitude_and_cold():
    sea, high = solve(Design.from_texts({})), solve(Design.from_texts({"altitude": "5000 ft"}))
    # US Standard Atmosphere 1976: 0.8321 of sea-level pressure at 5000 ft.
    assert sea["mixture_velocity_in_port"] / high["mixture_velocity_in_port"] == pytest.approx(0.8321, abs=5e-5)


def test_worked_port_of_the_reference_figures():
    """Propane, phi 1, 60 degF, 100 kBtu/h through 37 ports of 1/4 in: 6.637 m/s, Re 3038, 25.01 W/mm2 (calc from cantera)."""
    result = solve(
        Design.from_texts(
            {
                "body_length": "11 in",
                "body_width": "4 in",
                "rows": "1",
                "ports_per_row": "37",
                "pattern": "straight",
                "edge_margin": "1/8 in",
            }
        )
    )
    assert result["port_count"] == 37
    assert result["mixture_velocity_in_port"] == pytest.approx(6.637, rel=2e-3)
    assert result["port_reynolds"] == pytest.approx(3038, rel=0.01)
    assert result["port_loading"] == pytest.approx(25.01e6, rel=1e-3)


sizes = st.fixed_dictionaries(
    {
        "body_length": st.integers(8, 96).map(lambda n: f"{n / 4} in"),
        "body_width": st.integers(8, 48).map(lambda n: f"{n / 4} in"),
        "setback": st.integers(3, 16).map(lambda n: f"{n}/16 in"),
        "corner_radius": st.integers(0, 12).map(lambda n: f"{n}/16 in"),
        "port_diameter": st.integers(4, 16).map(lambda n: f"{n}/32 in"),
        "edge_margin": st.integers(0, 16).map(lambda n: f"{n}/16 in"),
        "rows": st.integers(1, 9).map(str),
        "ports_per_row": st.integers(1, 24).map(str),
        "pattern": st.sampled_from(["straight", "staggered", "hexagonal", "rings"]),
        "body_kind": st.sampled_from(["tube", "tube", "plates", "pipe"]),
    }
).map(lambda texts: {**texts, "body_length": texts["body_width"]} if texts["body_kind"] == "pipe" else texts)


def solved(texts):
    try:
        return solve(Design.from_texts(texts))
    except InputErrors:
        assume(False)


def same_places(ports, others):
    return len(ports) == len(others) and all(min(hypot(x - x2, y - y2) for x2, y2 in others) < 1e-9 for x, y in ports)


@given(sizes)
def test_ports_of_any_face(texts):
    result = solved(texts)
    d, ports = result.design, result.ports
    assert len(ports) == sum(result.row_counts) == result["port_count"]
    if d.pattern != "rings" and (d.rows % 2 or d.pattern == "straight"):
        assert same_places(ports, [(-x, -y) for x, y in ports])
    assert same_places(ports, [(-x, y) for x, y in ports])
    gaps = [hypot(x - x2, y - y2) - d.port_diameter for i, (x, y) in enumerate(ports) for x2, y2 in ports[:i]]
    assert result["min_web"] == (pytest.approx(min(gaps), abs=1e-12) if gaps else None)
    # What the checks call good is so: no overlap, all inside the rounded window.
    if result.checks["ports_inside"].verdict == "good":
        reach_x, reach_y = result["window_length"] / 2, result["window_width"] / 2
        radius = reach_x if d.body_kind == "pipe" else d.corner_radius
        for x, y in ports:
            assert abs(x) + d.port_diameter / 2 <= reach_x + 1e-9 and abs(y) + d.port_diameter / 2 <= reach_y + 1e-9
            corner = (abs(x) - reach_x + radius, abs(y) - reach_y + radius)
            if min(corner) > 0:
                assert hypot(*corner) + d.port_diameter / 2 <= radius + 1e-9
    if gaps and min(gaps) < 0:
        assert result.checks["web"].verdict == "stop"


def round_face(**texts):
    return solve(Design.from_texts({"body_kind": "pipe", "body_length": "6 in", "body_width": "6 in", **texts}))


def test_round_window_is_a_circle():
    # By hand: 6 in less twice 5/8 in is 4.75 in across, 17.7205 in2; plenum as a square of the bore's area, 5.625 in x 0.886227.
    result = round_face(pattern="hexagonal", rows="5", ports_per_row="5")
    assert result["window_area"] == pytest.approx(17.7205 * INCH**2, rel=1e-5)
    assert result["plenum_area"] == pytest.approx(5.625 * 0.886227 * (4 - 0.1875 - 0.75) * INCH**2, rel=1e-5)
    # A hexagon of five across holds 19 ports, every neighbour equally far: 1 + 6 + 12.
    assert result.row_counts == [3, 4, 5, 4, 3] and result["port_count"] == 19
    assert result["row_pitch"] / result["port_pitch"] == pytest.approx(3**0.5 / 2)
    assert result["min_edge"] == pytest.approx(0.25 * INCH)  # the edge margin


def test_rings_stand_in_the_setback_circle():
    result = round_face(pattern="rings", rows="3", ports_per_row="18")
    assert result.row_counts == [1, 6, 12, 18]  # the counts of a hexagon's shells
    outer = (4.75 / 2 - 0.25 - 0.125) * INCH
    assert [hypot(*result.ports[i]) for i in (1, 7, 19)] == pytest.approx([outer / 3, 2 * outer / 3, outer])
    # Chord of the outer ring: 2 r sin(10 deg), and the ports mirror left to right.
    assert result["port_pitch"] == pytest.approx(2 * outer * 0.17364818)
    assert same_places(result.ports, [(-x, y) for x, y in result.ports])
    assert result["min_edge"] == pytest.approx(0.25 * INCH)


def test_hexagonal_ports_keep_the_margin_in_a_rectangle():
    result = solve(Design.from_texts({"pattern": "hexagonal", "rows": "3", "ports_per_row": "9"}))
    gaps = sorted(hypot(x - x2, y - y2) for i, (x, y) in enumerate(result.ports) for x2, y2 in result.ports[:i])
    # Three rows of 9, 8, 9: 23 pairs in the rows and 32 across them, all equally far apart.
    assert gaps[0] == pytest.approx(gaps[54]) and gaps[55] > 1.5 * gaps[0]
    assert result.checks["ports_inside"].verdict == "good" and result["min_edge"] >= 0.25 * INCH - 1e-12


def test_one_port_has_no_pitch_and_no_web():
    result = solve(Design.from_texts({"rows": "1", "ports_per_row": "1"}))
    assert result["port_pitch"] is None and result["row_pitch"] is None and result["min_web"] is None
    assert "web" not in result.checks


@pytest.mark.parametrize(
    "key, texts",
    [
        ("web", {"ports_per_row": "30"}),
        ("port_length", {"block_thickness": "1 in", "port_diameter": "1/2 in"}),
        ("plenum_ratio", {"body_depth": "1 1/2 in", "grip": "1 in", "inlet_position": "end"}),
        ("inlet_ratio", {"inlet": "1/2"}),
        ("port_velocity", {"firing_rate": "5 kBtu/h"}),
        ("port_velocity", {"firing_rate": "500 kBtu/h"}),
        ("ports_inside", {"edge_margin": "0 in", "corner_radius": "1 in"}),
    ],
)
def test_bad_faces_are_stopped(key, texts):
    check = solve(Design.from_texts(texts)).checks[key]
    assert check.verdict == "stop" and check.changes


def test_every_answer_says_what_it_is():
    for answer in solve(Design.from_texts({})).answers.values():
        assert answer.label and answer.meaning.endswith(".") and answer.formula and answer.source, answer.key
