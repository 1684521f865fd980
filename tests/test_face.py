"""The face: its answers, checks, hole table and chart, against sums worked out by hand and closed forms."""

import re
from dataclasses import replace
from math import hypot, inf

import pytest
from designs import KNOWN
from designs import worked as solved
from hypothesis import assume, given
from hypothesis import strategies as st

from burnercalc.catalogue import ANSWERS
from burnercalc.catalogue import CHECKS as DECLARED
from burnercalc.catalogue.glossary import GLOSSARY
from burnercalc.catalogue.sentences import written
from burnercalc.checks import CHECKS
from burnercalc.checks import face as face_checks
from burnercalc.errors import InputErrors

INCH, MM = 0.0254, 0.001
# Common practice, no source: a small box with three staggered rows of six.


@pytest.fixture(scope="module")
def known():
    return solved(**KNOWN)


@pytest.fixture(scope="module")
def default():
    return solved()


# --- answers ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "key, expected",
    [
        ("port_count", 17),
        ("window_length", 5.5 * INCH),
        ("window_width", 2 * INCH),
        # by hand: 5.5 x 2 - 0.858407 x (3/16)^2
        ("window_area", 10.969822 * INCH**2),
        # 17 x pi/4 x (5/16)^2 = 1.30388 in2; plenum (3 - 1/2) x (3 - 1/4 - 3/4) = 5 in2; 2 in pipe bore 2.067 in
        ("port_area", 1.30388 * INCH**2),
        ("open_fraction", 1.30388 / 10.969822),
        ("plenum_area", 5 * INCH**2),
        ("plenum_to_port_ratio", 3.8347),
        ("inlet_area", 3.3556 * INCH**2),
        ("inlet_to_port_ratio", 3.3556 / 1.30388),
        ("port_pitch", 0.9375 * INCH),
        ("row_pitch", 0.59375 * INCH),
        ("min_web", (hypot(0.46875, 0.59375) - 0.3125) * INCH),
        ("min_edge", 0.25 * INCH),
    ],
)
def test_known_face(known, key, expected):
    assert known[key] == pytest.approx(expected, rel=2e-5)


def test_known_rows_and_plenum(known):
    assert known.part("face").row_counts == (6, 5, 6)
    plenum = known.part("plenum")
    # By hand: 6.5 - 1/2 long, 3 - 1/2 wide, 3 - 1/4 - 3/4 high, fed in the middle.
    sizes = (plenum.length_m, plenum.width_m, plenum.height_m, *plenum.inlets_m)
    assert sizes == pytest.approx((6 * INCH, 2.5 * INCH, 2 * INCH, 3 * INCH))
    assert solved(inlet_position="end").part("plenum").inlets_m == (0,)


def test_velocity_at_altitude_and_cold(default):
    high = solved(altitude="5000 ft")
    # US Standard Atmosphere 1976: 0.8321 of sea-level pressure at 5000 ft.
    ratio = default["mixture_velocity_in_port"] / high["mixture_velocity_in_port"]
    assert ratio == pytest.approx(0.8321, abs=5e-5)


@pytest.fixture(scope="module")
def worked():
    """Propane, phi 1, 60 degF, 100 kBtu/h through 37 ports of 1/4 in."""
    return solved(
        body_length="11 in", body_width="4 in", rows="1", ports_per_row="37", pattern="straight", edge_margin="1/8 in"
    )


@pytest.mark.parametrize(
    "key, expected, tolerance",
    [
        ("port_count", 37, 0),
        ("mixture_velocity_in_port", 6.637, 2e-3),
        ("port_reynolds", 3038, 0.01),
        ("port_loading", 25.01e6, 1e-3),
    ],
)
def test_worked_port_of_the_reference_figures(worked, key, expected, tolerance):
    """6.637 m/s, Re 3038, 25.01 W/mm2: calculated from cantera."""
    assert worked[key] == pytest.approx(expected, rel=tolerance)


def test_stream_passes_the_flow_of_the_worked_mixture(worked):
    # 988.7 ft3/h of mixture at 60 degF, by hand (tests/reference/flows.csv).
    assert worked.part("stream").mixture_m3_s == pytest.approx(988.7 * 0.3048**3 / 3600, rel=1e-3)


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


def same_places(ports, others):
    return len(ports) == len(others) and all(min(hypot(x - x2, y - y2) for x2, y2 in others) < 1e-9 for x, y in ports)


@given(sizes)
def test_ports_of_any_face(texts):
    try:
        r = solved(**texts)
    except InputErrors:
        assume(False)
    d, face = r.design, r.part("face")
    ports = face.ports
    assert len(ports) == sum(face.row_counts) == r["port_count"]
    if d.pattern != "rings" and (d.rows % 2 or d.pattern == "straight"):
        assert same_places(ports, [(-x, -y) for x, y in ports])
    assert same_places(ports, [(-x, y) for x, y in ports])
    gaps = [hypot(x - x2, y - y2) - d.port_diameter for i, (x, y) in enumerate(ports) for x2, y2 in ports[:i]]
    assert r["min_web"] == (pytest.approx(min(gaps), abs=1e-12) if gaps else None)
    # What the checks call good is so: no overlap, all inside the rounded window.
    if r.checks["ports_inside"].verdict == "good":
        reach_x, reach_y = r["window_length"] / 2, r["window_width"] / 2
        radius = reach_x if d.body_kind == "pipe" else d.corner_radius
        for x, y in ports:
            assert abs(x) + d.port_diameter / 2 <= reach_x + 1e-9 and abs(y) + d.port_diameter / 2 <= reach_y + 1e-9
            corner = (abs(x) - reach_x + radius, abs(y) - reach_y + radius)
            if min(corner) > 0:
                assert hypot(*corner) + d.port_diameter / 2 <= radius + 1e-9
    if gaps and min(gaps) < 0:
        assert r.checks["web"].verdict == "stop"


def round_face(**texts):
    return solved(body_kind="pipe", body_length="6 in", body_width="6 in", **texts)


def test_round_window_is_a_circle():
    # By hand: 6 in less twice 5/8 in is 4.75 in across, 17.7205 in2; plenum as a square of the bore's area, 5.625 in x
    # 0.886227.
    r = round_face(pattern="hexagonal", rows="5", ports_per_row="5")
    assert r["window_area"] == pytest.approx(17.7205 * INCH**2, rel=1e-5)
    assert r["plenum_area"] == pytest.approx(5.625 * 0.886227 * (4 - 0.1875 - 0.75) * INCH**2, rel=1e-5)
    plenum = r.part("plenum")
    assert (plenum.length_m, *plenum.inlets_m) == pytest.approx((4.985027 * INCH, 4.985027 / 2 * INCH), rel=1e-6)
    # A hexagon of five across holds 19 ports, every neighbour equally far: 1 + 6 + 12.
    assert r.part("face").row_counts == (3, 4, 5, 4, 3) and r["port_count"] == 19
    assert r["row_pitch"] / r["port_pitch"] == pytest.approx(3**0.5 / 2)
    assert r["min_edge"] == pytest.approx(0.25 * INCH)  # the edge margin


def test_rings_stand_in_the_setback_circle():
    r = round_face(pattern="rings", rows="3", ports_per_row="18")
    face = r.part("face")
    assert face.row_counts == (1, 6, 12, 18)  # the counts of a hexagon's shells
    outer = (4.75 / 2 - 0.25 - 0.125) * INCH
    assert [hypot(*face.ports[i]) for i in (1, 7, 19)] == pytest.approx([outer / 3, 2 * outer / 3, outer])
    # Chord of the outer ring: 2 r sin(10 deg), and the ports mirror left to right.
    assert r["port_pitch"] == pytest.approx(2 * outer * 0.17364818)
    assert same_places(face.ports, [(-x, y) for x, y in face.ports])
    assert r["min_edge"] == pytest.approx(0.25 * INCH)


def test_hexagonal_ports_keep_the_margin_in_a_rectangle():
    r = solved(pattern="hexagonal", rows="3", ports_per_row="9")
    ports = r.part("face").ports
    gaps = sorted(hypot(x - x2, y - y2) for i, (x, y) in enumerate(ports) for x2, y2 in ports[:i])
    # Three rows of 9, 8, 9: 23 pairs in the rows and 32 across them, all equally far apart.
    assert gaps[0] == pytest.approx(gaps[54]) and gaps[55] > 1.5 * gaps[0]
    assert r.checks["ports_inside"].verdict == "good" and r["min_edge"] >= 0.25 * INCH - 1e-12


def test_one_port_has_no_pitch_and_no_web():
    r = solved(rows="1", ports_per_row="1")
    assert r["port_pitch"] is None and r["row_pitch"] is None and r["min_web"] is None
    assert "web" not in r.checks and "cross_light" not in r.checks


# --- checks: just inside and just outside each limit, and every sentence ----------------------------------------------


def judged(r, key, part, **figures):
    """(verdict, limit, text, changes) of a check, with figures of one part set by hand."""
    found = r.parts.call(CHECKS[key], **{part: replace(r.part(part), **figures)})
    text = " ".join(written(DECLARED[key].cases[case], found.slots, "mm") for case in found.cases)
    return found.verdict, found.limit, text, DECLARED[key].cures if found.cures is None else found.cures


@pytest.mark.parametrize(
    "edge_mm, verdict, text",
    [
        (3.0, "good", "Every port lies inside the window, 3 mm or more from its edge."),
        (0.0, "good", "Every port lies inside the window, 0 mm or more from its edge."),
        (-1e-10, "good", None),  # rounding of the sizes
        # less than a 1/64 in of a tape counts as that
        (
            -1e-8,
            "stop",
            "Ports reach 0.4 mm past the window's edge, into the steel: raise the edge margin or take away ",
        ),
        (-2.0, "stop", "Ports reach 2 mm past the window's edge, into the steel: raise the edge margin or take away "),
    ],
)
def test_ports_inside(default, edge_mm, verdict, text):
    found = judged(default, "ports_inside", "face", min_edge_m=edge_mm * MM)
    assert found[:2] == (verdict, 0.0)
    assert text is None or found[2].removesuffix("ports.") == text
    assert found[3] == (("edge_margin", "raise"), ("corner_radius", "lower"))


WEB_STOP = "3 mm between ports is less than a grain of castable: it cannot be filled. Use fewer ports."


@pytest.mark.parametrize(
    "diameter_mm, web_mm, verdict, wanted_mm, text",
    [
        # a quarter of an inch at least
        (5, 6.35, "good", 6.35, "6.35 mm of refractory between ports; from 6.35 mm on it fills and holds."),
        (5, 6.35 - 1e-7, "good", 6.35, None),  # rounding of the sizes
        (5, 6.349, "caution", 6.35, None),
        (
            5,
            3.0,
            "caution",
            6.35,
            "Only 3 mm of refractory between ports; 6.35 mm is usual (one port diameter, 6.35 mm at ",
        ),
        (5, 2.999, "stop", 6.35, WEB_STOP),
        (5, 0.0, "stop", 6.35, WEB_STOP.replace("3 mm", "0 mm")),
        (5, -1e-9, "stop", 6.35, WEB_STOP.replace("3 mm", "0 mm")),  # "overlap by 0 mm"
        (5, -0.5, "stop", 6.35, "Ports overlap by 0.5 mm: use fewer ports."),
        # a port diameter, where that is more
        (10, 10.0, "good", 10, None),
        (10, 9.99, "caution", 10, None),
    ],
)
def test_web(default, diameter_mm, web_mm, verdict, wanted_mm, text):
    found = judged(default, "web", "face", min_web_m=web_mm * MM, port_diameter_m=diameter_mm * MM)
    assert found[:2] == (verdict, pytest.approx(wanted_mm * MM))
    assert text is None or found[2].startswith(text)
    assert found[3] == (("ports_per_row", "lower"), ("rows", "lower"), ("port_diameter", "lower"))


def test_a_web_that_no_mark_of_a_tape_tells_from_what_is_usual_is_told_by_that_mark(default):
    """0.306 in stood beside 5/16 in; a 32nd less has a mark of its own."""
    for web, told in ((0.306, "Only just under 5/16 in of"), (0.28125, "Only 9/32 in of")):
        face = replace(default.part("face"), min_web_m=web * INCH, port_diameter_m=5 / 16 * INCH)
        found = face_checks.web_check(face, "in")
        text = written(DECLARED["web"].cases[found.verdict], found.slots, "in", apart=True)
        assert text.startswith(f"{told} refractory between ports; 5/16 in is usual")


def test_one_limit_tells_smooth_flow_and_its_label_is_no_name():
    answer = ANSWERS["port_reynolds"]
    told = f"{answer.meaning} {GLOSSARY['Reynolds number'][1]}"
    assert re.findall(r"[\d,]*\d", told) == ["2300", "2300"] and "Reynolds" not in answer.label


def test_a_metric_shop_is_told_metric_lengths(default):
    """6.35 mm stood on the face, at baffle and pins, of a shop that sells millimetres."""
    face = replace(default.part("face"), min_web_m=6 * MM, port_diameter_m=5 * MM)
    near = replace(face, min_web_m=5.99 * MM)
    assert [face_checks.web_check(face, sizes).verdict for sizes in ("in", "mm")] == ["caution", "good"]
    told = face_checks.web_check(near, "mm")
    assert told.verdict == "caution" and told.slots["wanted"] == told.slots["least"] == 6 * MM


@pytest.mark.parametrize(
    "edge_mm, verdict, text",
    [
        (6.0, "good", "6 mm between the outer ports and the steel can be filled; 5 mm lets a coarse grain pass."),
        (5.0 - 1e-7, "good", None),
        (4.99, "caution", "Only 4.99 mm between the outer ports and the steel; 5 mm lets a coarse grain pass."),
        (2.0, "caution", "Only 2 mm between the outer ports and the steel; 5 mm lets a coarse grain pass."),
        (0.0, "caution", None),
        (
            -0.01,
            "stop",
            "The outer ports cut the steel where the window's corners are round: less of a corner radius, or a larger "
            "edge margin.",
        ),
    ],
)
def test_edge(default, edge_mm, verdict, text):
    found = judged(default, "edge", "face", min_edge_m=edge_mm * MM)
    assert found[:2] == (verdict, 0.005) and text in (None, found[2])
    corner = (("corner_radius", "lower"),) if edge_mm < 6 else ()  # the margin of the default is 6.35 mm
    assert found[3][0] == ("edge_margin", "raise") and found[3][1:] in ((("corner_radius", "lower"),), corner)


def test_what_opens_an_edge():
    """A smaller setback was offered, which moves window and ports alike; the round corner was not."""
    thin = solved(edge_margin="3/16 in").checks["edge"]
    assert [change.setting for change in thin.changes] == ["edge_margin"]
    corner = solved(corner_radius="1 in").checks["edge"]
    assert corner.verdict == "stop" and "less of a corner radius" in corner.text
    assert [change.setting for change in corner.changes] == ["edge_margin", "corner_radius"]


SHORT = " diameters long; below 4 they neither straighten the flow nor keep the cold side cool: use a thicker block."
LONG = " diameters long; above 14 pins bend and break, and clearing is slow: use a thinner block or larger ports."


@pytest.mark.parametrize(
    "slender, verdict, limit, text, move",
    [
        (2.49, "stop", 4, "Ports are 2.5" + SHORT, "raise"),
        (2.51, "caution", 4, "Ports are 2.5" + SHORT, "raise"),
        (3.99, "caution", 4, "Ports are 4.0" + SHORT, "raise"),
        (4.01, "good", 14, "Ports are 4.0 diameters long; 4 to 14 is usual.", "lower"),
        (13.99, "good", 14, "Ports are 14.0 diameters long; 4 to 14 is usual.", "lower"),
        (14.01, "caution", 14, "Ports are 14.0" + LONG, "lower"),
        (24.9, "caution", 14, "Ports are 24.9" + LONG, "lower"),
        (25.1, "stop", 14, "Ports are 25.1" + LONG, "lower"),
    ],
)
def test_port_length(default, slender, verdict, limit, text, move):
    diameter_m = 2.5 * INCH / slender  # the block is 2 1/2 in thick
    found = judged(default, "port_length", "face", port_diameter_m=diameter_m)
    wider = (("port_diameter", "raise"),) if move == "lower" else ()
    assert found == (verdict, limit, text, (("block_thickness", move), *wider))


@pytest.mark.parametrize(
    "slender, verdict, limit", [(2.5, "caution", 4), (4.0, "good", 14), (14.0, "good", 14), (25.0, "caution", 14)]
)
def test_port_length_at_its_limits(default, slender, verdict, limit):
    found = default.parts.call(CHECKS["port_length"], block_thickness=slender * default.part("face").port_diameter_m)
    assert (found.verdict, found.limit) == (verdict, limit)


@pytest.mark.parametrize(
    "holes, ratio, verdict, limit, text",
    [
        (0, 1.0, "good", 1.0, "The inlet is 1 times the port area; 1 or more feeds the ports evenly."),
        (
            0,
            0.99,
            "caution",
            1.0,
            "The inlet is 0.99 times the port area; 1 or more is wanted, so some ports get less than their share.",
        ),
        (0, 0.5, "caution", 1.0, None),
        (0, 0.49, "stop", 1.0, "The inlet is 0.49 times the port area; below 0.5 the ports are fed far too unevenly."),
        # a baffle evens it out: half is enough
        (40, 0.5, "good", 0.5, None),
        (40, 0.49, "caution", 0.5, None),
        (40, 0.25, "caution", 0.5, None),
        (1, 0.24, "stop", 0.5, "The inlet is 0.24 times the port area; below 0.25 the ports are fed far too unevenly."),
    ],
)
def test_inlet_ratio(holes, ratio, verdict, limit, text):
    found = judged(solved(baffle_holes=str(holes)), "inlet_ratio", "plenum", inlet_to_port_ratio=ratio)
    assert found[:2] == (verdict, limit) and text in (None, found[2])
    assert found[3] == (("inlet", "raise"), ("ports_per_row", "lower"))


USUAL = "The mixture leaves the ports at {} m/s; 2 m/s to 12 m/s is usual at high fire."
SLOW = USUAL + " Slow flow lets the flame into the ports: use fewer or smaller ports, or more fire."
FAST = (
    USUAL + " Fast flow lifts the flame while the face is cold and asks much of the blower: use more or larger ports."
)
SLOWER = (("ports_per_row", "raise"), ("port_diameter", "raise"), ("firing_rate", "lower"))
FASTER = (("ports_per_row", "lower"), ("firing_rate", "raise"))


@pytest.mark.parametrize(
    "velocity, verdict, limit, text, changes",
    [
        (0.99, "stop", 2, SLOW.format("0.99"), FASTER),
        (1.0, "caution", 2, SLOW.format("1"), FASTER),
        (1.99, "caution", 2, SLOW.format("1.99"), FASTER),
        (2.0, "good", 12, USUAL.format("2"), SLOWER),
        (12.0, "good", 12, USUAL.format("12"), SLOWER),
        (12.1, "caution", 12, FAST.format("12.1"), SLOWER),
        (20.0, "caution", 12, FAST.format("20"), SLOWER),
        (20.1, "stop", 12, FAST.format("20.1"), SLOWER),
    ],
)
def test_port_velocity(default, velocity, verdict, limit, text, changes):
    assert judged(default, "port_velocity", "stream", velocity_m_s=velocity) == (verdict, limit, text, changes)


@pytest.mark.parametrize(
    "loading_W_mm2, verdict, limit, move",
    [
        (6.99, "caution", 7e6, "lower"),
        (7.0, "good", 45e6, "raise"),
        (45.0, "good", 45e6, "raise"),
        (45.1, "caution", 45e6, "raise"),
    ],
)
def test_port_loading(default, loading_W_mm2, verdict, limit, move):
    found = judged(default, "port_loading", "stream", loading_W_m2=loading_W_mm2 * 1e6)
    assert found[:2] == (verdict, limit)
    assert found[2].endswith("; 7 W/mm² to 45 W/mm² is usual for blown ports in a furnace face.")
    assert found[2].startswith(f"The ports carry {loading_W_mm2:g} W/mm² of fire for their area")
    assert found[3] == (("ports_per_row", move), ("port_diameter", move))


def test_a_limit_worked_out_is_told_before_what_is_merely_usual():
    """Slow ports are named by the flame that can enter them; the speed that is usual comes behind."""
    stops = [
        check.key for check in solved(burner_count="24", firing_rate="5 kBtu/h").ranked() if check.verdict == "stop"
    ]
    assert stops.index("flashback_cold") < stops.index("box_mixture") < stops.index("port_velocity")


@pytest.mark.parametrize(
    "key", ["ports_inside", "web", "edge", "port_length", "inlet_ratio", "port_velocity", "port_loading"]
)
def test_checks_judge_the_figures_of_the_answers(default, key):
    seen = {
        "ports_inside": default["min_edge"],
        "web": default["min_web"],
        "edge": default["min_edge"],
        "port_length": 10.0,  # 2 1/2 in by 1/4 in
        "inlet_ratio": default["inlet_to_port_ratio"],
        "port_velocity": default["mixture_velocity_in_port"],
        "port_loading": default["port_loading"],
    }
    assert default.checks[key].value == pytest.approx(seen[key], rel=1e-12)
    assert default.checks[key].verdict == "good"


@pytest.mark.parametrize(
    "key, texts",
    [
        ("web", {"ports_per_row": "30"}),
        ("port_length", {"block_thickness": "1 in", "port_diameter": "1/2 in"}),
        ("inlet_ratio", {"inlet": "1/2"}),
        ("port_velocity", {"firing_rate": "5 kBtu/h"}),
        ("port_velocity", {"firing_rate": "500 kBtu/h"}),
        ("ports_inside", {"edge_margin": "0 in", "corner_radius": "1 in"}),
    ],
)
def test_bad_faces_are_stopped(key, texts):
    check = solved(**texts).checks[key]
    assert check.verdict == "stop" and check.changes


# --- hole table and chart ---------------------------------------------------------------------------------------------


def test_holes_are_numbered_row_by_row_from_the_lower_left_corner(known):
    table = known.tables["holes"]
    assert table.title == "Hole table, from the corner with the triangle on the face, seen from the fire"
    assert [column.key for column in table.columns] == ["number", "x", "y", "diameter"]
    assert [row[0] for row in table.rows] == list(range(1, 18))
    # By hand: setback 1/2 + margin 1/4 + half a port 5/32 = 29/32 in from both sides; short row half a pitch on.
    inches = {row[0]: tuple(size / INCH for size in row[1:]) for row in table.rows}
    assert inches[1] == pytest.approx((0.90625, 0.90625, 0.3125))
    assert inches[2] == pytest.approx((1.84375, 0.90625, 0.3125))
    assert inches[7] == pytest.approx((1.375, 1.5, 0.3125))
    assert inches[17] == pytest.approx((6.5 - 0.90625, 3 - 0.90625, 0.3125))


def test_holes_of_a_round_face_count_from_the_square_round_it():
    table = round_face(pattern="rings", rows="1", ports_per_row="4").tables["holes"]
    assert table.title == "Hole table, from the corner with the triangle beside the face, seen from the fire"
    # The middle port 3 in from both sides; the ring of four 2 in round it, clockwise from the top.
    places = [(row[1] / INCH, row[2] / INCH) for row in table.rows]
    flat = [size for place in places for size in place]
    assert flat == pytest.approx([3, 3, 3, 5, 5, 3, 3, 1, 1, 3])


def test_the_triangle_is_where_the_hole_table_counts_from(known):
    for result in (known, round_face(pattern="rings", rows="1", ports_per_row="4")):
        for drawing in (result.drawings["face"], result.drawings["face"].turned()):
            (corner,) = [shape.points for shape in drawing.shapes if shape.layer == "solid"]
            (x, y), first = corner[0], result.tables["holes"].rows[0]
            port = next(shape for shape in drawing.shapes if shape.layer == "port")
            assert hypot(port.x - x, port.y - y) == pytest.approx(1000 * hypot(first[1], first[2]))


def test_chart_of_the_ratio(default):
    chart = default.charts["ratio_by_ports"]
    plot = chart.plot
    # By hand: plenum 3.625 in x 3.0625 in, 43 ports of 1/4 in: 5.25952. With the inlet at the centre 5 % takes
    # 0.75/2/arccos 0.95 = 1.18088 and 15 % 0.75/2/arccos 0.85 = 0.675906.
    assert plot.mark == (43, pytest.approx(5.25952, rel=1e-5)) and plot.x == (1, 86)
    assert plot.y == (0, pytest.approx(1.5 * 5.25952, rel=1e-5))
    assert plot.series["band_stop"] == ((1, 86), (0, 0), pytest.approx((0.675906,) * 2, rel=1e-5))
    assert plot.series["band_caution"][1:] == (
        pytest.approx((0.675906,) * 2, rel=1e-5),
        pytest.approx((1.18088,) * 2, rel=1e-5),
    )
    assert plot.series["band_good"][1:] == (pytest.approx((1.18088,) * 2, rel=1e-5), (plot.y[1],) * 2)
    counts, ratios = plot.series["ratio"]
    assert counts == tuple(range(1, 87))
    assert (ratios[0], ratios[42], ratios[85]) == pytest.approx((226.1592, 5.25952, 2.629758), rel=1e-5)
    assert chart.sentence == (
        "With the inlet at the centre this plenum feeds up to 191 ports of this size within 5 %; the design has 43."
    )
    assert (chart.declared.x.dimension, chart.declared.y.dimension) == ("count", "ratio")
    assert set(plot.series) == {series.key for series in chart.declared.series}


def test_chart_of_the_ratio_with_few_ports_and_a_shallow_plenum():
    few = solved(rows="1", ports_per_row="5", inlet_position="end").charts["ratio_by_ports"]
    assert few.plot.x == (1, 12) and few.plot.mark[0] == 5
    shallow = solved(body_depth="1 1/2 in", grip="1 in", inlet_position="end").charts["ratio_by_ports"]
    # With the inlet at an end 5 % takes 0.75/arccos 0.95 = 2.361755, and the chart shows twice that. The plenum, 3.625
    # by 5/16 in, passes 1.1328 in2, enough for 9 ports of 1/4 in (0.0490874 in2): 9.77.
    assert shallow.plot.y == (0, pytest.approx(2 * 2.361755, rel=1e-6))
    assert shallow.sentence == (
        "With the inlet at the end this plenum feeds up to 9 ports of this size within 5 %; the design has 43."
    )


def test_every_answer_says_what_it_is(default):
    for answer in default.answers.values():
        if answer.room == "face":
            assert answer.label and answer.meaning.endswith(".") and answer.formula and answer.source, answer.key
            assert answer.value is not None and answer.value < inf if answer.dimension != "word" else answer.value
