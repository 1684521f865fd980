"""Welding and the hot block: bevels, tacks and growth by hand, what is said, and designs that break each limit."""

import math

import pytest
from designs import solved

from burnercalc.errors import InputError
from burnercalc.making import welding as w

IN = 0.0254


def told(result):
    return {when: do for _, when, do in result.tables["welding"].rows}


def test_bevels_and_tacks_by_hand():
    assert w.bevel_m(1 / 8 * IN) == 0 and w.bevel_m(3 / 16 * IN) == pytest.approx(1 / 8 * IN, abs=0.02e-3)
    # Round a cap of 3 5/8 in: 13 in or so; every 20 x 3/16 in = 3 3/4 in makes four, of 1/8 in wall six
    assert (w.tacks(13 * IN, 3 / 16 * IN), w.tacks(13 * IN, 1 / 8 * IN), w.tacks(IN, 3 / 16 * IN)) == (4, 6, 4)
    for call in (lambda: w.bevel_m(0.0), lambda: w.tacks(1.0, math.nan)):
        with pytest.raises(InputError):
            call()


def test_growth_by_hand():
    """1 m, 1200 K: 6e-6 x 600 = 3.6 mm less 12e-6 x 100 = 1.2 mm; a warm block grows less than its steel."""
    assert w.block_growth_m(length_m=1.0, rise_K=1200.0) == pytest.approx(2.4e-3)
    assert w.block_growth_m(length_m=1.0, rise_K=300.0) == 0


@pytest.mark.parametrize(
    "texts, verdict",
    [
        # inside 8 5/8 in; (2250 - 60 °F) = 1216.7 K: 219.1 mm x (6e-6 x 608.3 - 0.0012) = 0.54 mm
        ({}, "good"),
        ({"body_length": "24 in", "ports_per_row": "24"}, "note"),  # 600 mm x 2.45e-3 = 1.47 mm
    ],
)
def test_long_blocks_get_a_joint(texts, verdict):
    r = solved(**texts)
    d = r.design
    rise = d.chamber_temperature - d.ambient_temperature
    inside = d.body_length - 2 * d.wall
    assert r["block_growth"] == pytest.approx(inside * (6e-6 * rise / 2 - 12e-6 * 100))
    check = r.checks["block_growth"]
    assert check.verdict == verdict and ("wax" in check.text) == (verdict == "note")


@pytest.mark.parametrize(
    "clearance, verdict",
    [("2 mm", "good"), ("1.99 mm", "caution"), ("0 in", "caution"), ("12 mm", "good"), ("12.1 mm", "caution")],
)
def test_a_tight_or_a_wide_mould_is_said(clearance, verdict):
    check = solved(mould_clearance=clearance).checks["mould_fit"]
    assert check.verdict == verdict and (verdict == "good" or check.changes[0].setting == "mould_clearance")


def test_the_order_of_the_welding():
    """The baffle is tacked from both open ends of a box; into a round body it goes after the back disc."""
    assert list(told(solved())) == ["inlet pipe", "baffle", "first cap", "second cap", "straightness", "bracket",
                                    "grind flush", "leak test"]  # fmt: skip
    assert next(iter(told(solved(body_kind="plates")))) == "long seams"
    round_body = dict(
        body_kind="pipe", body_length="6 in", body_width="6 in", pattern="rings", rows="2", ports_per_row="8"
    )
    assert list(told(solved(**round_body)))[:5] == ["inlet pipe", "straightness", "back disc", "baffle", "face disc"]
    assert "baffle" not in told(solved(baffle_holes="0"))


def test_flat_that_is_sold_wider_is_ripped():
    """Caps of 91.2 mm square for a tube of 100 by 4 mm, from flat of 100; those laid on are 100: no ripping."""
    for caps, ripped in (("in", True), ("on", False)):
        r = solved(units="mm", caps=caps, wall="4 mm", body_width="100 mm", body_depth="100 mm")
        note = next(row[-1] for row in r.tables["cut_list"].rows if row[1] == "end cap")
        assert note.endswith("; rip the flat to this width") == ripped


def test_the_window_of_a_tube_with_caps_laid_on_is_told_from_its_ends():
    """9 in less two walls of 3/16 in, window of 7 3/4 in: (8 5/8 - 7 3/4) / 2 = 7/16 in, from the edges 5/8 in."""
    for caps, told_so in (("on", '7/16" from the ends of the tube as cut, 5/8" from the edges'), ("in", "the lip is")):
        shapes = solved(caps=caps, wall="3/16 in").drawings["window"].shapes
        written = " ".join(shape.text for shape in shapes if hasattr(shape, "text"))
        assert " ".join(told_so.split()) in written and ("as cut" in written) == (caps == "on")


def test_what_is_said_of_the_default():
    said = told(solved())
    # cap of 3 5/8 less 2 x 1/64 in, corners of 3/16 in: 4 x 3.59375 - (8 - 2 pi) x 0.1875 = 14.053 in
    assert "Bevel its edges at 30° to a depth of 1/8 in; tack it 4 times" in said["first cap"]
    assert "14 1/16 in round" in said["second cap"]
    assert "feet 1 9/16 in above" in said["baffle"]  # 9/16 in of block and a gap of 1.009 in
    assert "up to 1 1/4 in" in said["grind flush"] and "1/16 in at each side" in said["grind flush"]
    assert "at least 9 in by 4 in" in said["leak test"] and "5/8 in of steel" in said["leak test"]
    assert "Square edges" in told(solved(wall="1/8 in"))["first cap"]


@pytest.mark.parametrize(
    "texts, high",
    [
        # Frame less what of the block stands outside it: 5 1/2 in - (2 1/2 - 3/4) in; a frame over the body: all of it
        ({"mould_board": "1x6"}, "3 3/4 in"),
        ({"mould_board": "1x8"}, "4 in"),
        ({"mould_board": "2x4"}, "1 3/4 in"),
    ],
)
def test_seams_are_flush_as_far_as_the_frame_is_high(texts, high):
    r = solved(**texts)
    assert f"up to {high}:" in told(r)["grind flush"] and f"flush {high} up" in r.checks["mould_fit"].text


def test_the_sides_of_plates_are_bevelled_as_caps_are():
    """4 mm less a land of 1.6 mm; 3 mm is welded square."""
    assert (
        "of each seam at 30° to a depth of 2.4 mm"
        in told(solved(units="mm", body_kind="plates", wall="4 mm"))["long seams"]
    )
    assert told(solved(units="mm", body_kind="plates", wall="3 mm"))["long seams"].startswith("Square the four")


@pytest.mark.parametrize("kind", ["tube", "plates"])
def test_the_bridges_stay_until_the_caps_are_on(kind):
    r = solved(body_kind=kind)
    assert "bridges are still there" in told(r)["straightness"]
    written = " ".join(shape.text for shape in r.drawings["window"].shapes if hasattr(shape, "text"))
    assert "Leave a bridge of 1/2 in" in written.replace('"', " in")
