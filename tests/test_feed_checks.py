"""Verdicts on flow and mixing: each just inside and just outside its limit, its sentence word by word, its cures."""

from math import acos, inf, nextafter

import pytest
from feed_designs import INCH, judged, part, solved

from burnercalc.parts.baffle_plate import BafflePlate
from burnercalc.physics.band import Band

BARE = BafflePlate(None, None, None, None)
EVENER = (("body_depth", "raise"), ("grip", "lower"), ("ports_per_row", "lower"), ("port_diameter", "lower"))


def under(value):
    return nextafter(value, -inf)


def over(value):
    return nextafter(value, inf)


@pytest.mark.parametrize(
    "spread, starved, verdict, text",
    [
        (0.000499, 0, "good", "Ports get their share within 0.1 %; up to 5 % is even."),
        (0.0005, 0, "good", "Ports get their share within 0.1 %; up to 5 % is even."),
        (0.0016, 0, "good", "Ports get their share within 0.2 %; up to 5 % is even."),
        (0.05, 0, "good", "Ports get their share within 5.0 %; up to 5 % is even."),
        (
            over(0.05),
            0,
            "caution",
            "Ports differ by 5.0 %; 5 % or less is even. Those far from the inlet burn hotter.",
        ),
        (0.15, 0, "caution", "Ports differ by 15.0 %; 5 % or less is even. Those far from the inlet burn hotter."),
        (
            over(0.15),
            0,
            "stop",
            "Ports differ by 15.0 %, far more than 15 %: those near the inlet go short and can flash back.",
        ),
        (
            0.01,
            1,
            "stop",
            "One column of ports near the inlet gets no mixture: the stream along the plenum is too fast. The fire "
            "could draw back through them.",
        ),
        (
            0.4,
            3,
            "stop",
            "3 columns of ports near the inlet get no mixture: the stream along the plenum is too fast. The fire could "
            "draw back through them.",
        ),
    ],
)
def test_evenness(spread, starved, verdict, text):
    found = part("shares", spread=spread, starved_columns=starved)
    assert judged("flow_spread", shares=found) == (verdict, spread, 0.05, text, EVENER)
    fed_at_end = judged("flow_spread", shares=found, inlet_position="end")
    assert fed_at_end[-1] == (("inlet_position", "choose"), *EVENER)


@pytest.mark.parametrize(
    "spread, starved, verdict, leaves, wanted",
    [
        (0.000499, 0, "good", "less than 0.1 % uneven.", False),
        (0.0005, 0, "good", "0.1 % uneven.", False),
        (0.05, 0, "good", "5.0 % uneven.", False),
        (over(0.05), 0, "caution", "5.0 % uneven.", True),
        (0.2, 0, "stop", "20.0 % uneven.", True),
        (0.02, 1, "stop", "2.0 % uneven.", True),
    ],
)
@pytest.mark.parametrize("place, most", [("centre", "1.2"), ("end", "2.4")])
def test_plenum_ratio(place, most, spread, starved, verdict, leaves, wanted):
    """Wanted for a twentieth, C_d 0.75: 0.75 / arccos(0.95) = 2.362, half of it from the middle."""
    found = judged(
        "plenum_ratio",
        plenum=part("plenum", to_port_ratio=3.5, streams=1 if place == "end" else 2),
        shares=part("shares", spread=spread, starved_columns=starved),
        inlet_position=place,
    )
    text = f"The plenum is 3.5 times the port area; with the inlet at the {place} that leaves the ports {leaves}"
    if wanted:
        text += f" About {most} or more is wanted: take a deeper body, less grip, or less port area."
    limit = 0.75 / acos(0.95) / (1 if place == "end" else 2)
    assert found[:4] == (verdict, 3.5, pytest.approx(limit, rel=1e-9), text)
    assert found[4][-4:] == EVENER and (found[4][0][0] == "inlet_position") == (place == "end")


def test_two_inlets_want_half_the_plenum_of_one_and_are_offered_to_long_bodies_only():
    bad, two = part("shares", spread=0.2, starved_columns=0), (0.1, 0.3)
    found = judged("plenum_ratio", plenum=part("plenum", to_port_ratio=0.5, inlets_m=two, streams=4), shares=bad)
    assert found[1:3] == (0.5, pytest.approx(0.75 / acos(0.95) / 4, rel=1e-9))
    assert found[3].startswith("The plenum is 0.5 times the port area; with two inlets that leaves the ports 20.0 %")
    sizes = {"width_m": 0.05, "inlets_m": (0.1,)}
    for length_m, offered in ((0.2, ()), (over(0.2), (("inlets", "raise"),))):
        long = part("plenum", length_m=length_m, **sizes)
        assert judged("flow_spread", plenum=long, shares=bad)[-1] == (*offered, *EVENER)
    assert (
        judged("flow_spread", plenum=part("plenum", length_m=0.4, width_m=0.05, inlets_m=two), shares=bad)[-1] == EVENER
    )


@pytest.mark.parametrize(
    "kinetic, friction, verdict",
    [
        (0.1, 0.02, "good"),
        (0.02, 0.1, "good"),
        (over(0.1), 0.02, "caution"),
        (0.02, over(0.1), "caution"),
        (0.3, 0.02, "caution"),
        (0.02, over(0.3), "stop"),
    ],
)
def test_stream_along_the_plenum(kinetic, friction, verdict):
    found = judged("perry", shares=part("shares", kinetic_ratio=kinetic, friction_ratio=friction))
    end = (
        "both are below 10 %, so the ports are fed evenly."
        if verdict == "good"
        else "10 % is the rule: widen the plenum or take away port area."
    )
    text = (
        f"Along the plenum the stream's speed counts for {100 * kinetic:.1f} % of the pressure over the ports, "
        f"its friction for {100 * friction:.1f} %; "
    )
    assert found == (verdict, max(kinetic, friction), 0.1, text + end, EVENER)


@pytest.mark.parametrize(
    "ratio, baffled, verdict, text",
    [
        (
            under(1.01),
            True,
            "good",
            "The inlet's jet can push less than 1 % more than its share through the ports in front of it.",
        ),
        (
            1.01,
            True,
            "good",
            "The inlet's jet can push up to 1 % more than its share through the ports in front of it; 10 % is little.",
        ),
        (
            1.10,
            False,
            "good",
            "The inlet's jet can push up to 10 % more than its share through the ports in front of it; 10 % is little.",
        ),
        (
            1.20,
            False,
            "caution",
            "The inlet's jet can push up to 20 % more than its share through the ports in front of it; 10 % is little. "
            "Put a baffle in, or use a larger inlet.",
        ),
        (
            1.40,
            True,
            "caution",
            "The inlet's jet can push up to 40 % more than its share through the ports in front of it; 10 % is little. "
            "Use a larger inlet, or a baffle that takes more.",
        ),
        (
            over(1.40),
            True,
            "stop",
            "The inlet's jet can push up to 40 % more than its share through the ports in front of it; 10 % is little. "
            "Use a larger inlet, or a baffle that takes more.",
        ),
    ],
)
def test_jet_of_the_inlet(ratio, baffled, verdict, text):
    plate = solved().part("baffle_plate") if baffled else BARE
    found = judged("jet_impingement", inlet_jet=part("inlet_jet", flow_ratio=ratio), baffle_plate=plate)
    assert found == (verdict, ratio, pytest.approx(1.1), text, (("baffle_holes", "choose"), ("inlet", "raise")))


@pytest.mark.parametrize(
    "share, said, verdict",
    [
        (0.5, "0.20 in H₂O, 0.5", "good"),
        (0.51, "0.20 in H₂O, 0.51", "caution"),
        (2.0, "0.80 in H₂O, 2", "caution"),
        (2.01, "0.81 in H₂O, 2.0", "stop"),
    ],
)
def test_jets_of_the_baffle(share, said, verdict):
    found = judged("baffle_pressure", passage=part("passage", port_Pa=Band(100, 120, 130), baffle_Pa=100 * share))
    end = (
        "its holes blow gently."
        if verdict == "good"
        else "0.5 times is plenty. Its holes are so few or so small that each blows a jet of its own at the block: "
        "drill more or larger holes."
    )
    said = said.replace("O, ", "O, at most " if verdict == "good" else "O, up to ")
    text = f"The baffle takes {said} times the pressure over the ports; {end}"
    assert found[:3] == (verdict, pytest.approx(share), 0.5) and found[3] == text
    assert found[4] == (("baffle_holes", "raise"), ("baffle_hole_diameter", "raise"))


@pytest.mark.parametrize(
    "diameters, verdict, text",
    [
        (10.0, "good", "The mix pipe is 10.0 diameters long with its elbows; 10 or more mix gas and air well."),
        (
            under(10.0),
            "caution",
            "The mix pipe is 10.0 diameters long with its elbows; 10 are wanted, or some ports burn rich and others "
            "lean: add 0 in of pipe, or an elbow.",
        ),
        (
            5.0,
            "caution",
            "The mix pipe is 5.0 diameters long with its elbows; 10 are wanted, or some ports burn rich and others "
            "lean: add 10 in of pipe, or an elbow.",
        ),
        (
            4.5,
            "stop",
            "The mix pipe is 4.5 diameters long with its elbows; 10 are wanted, or some ports burn rich and others "
            "lean: add 11 in of pipe, or an elbow.",
        ),
    ],
)
def test_mixing_length(diameters, verdict, text):
    found = judged("mixing_length", mixing=part("mixing", diameters=diameters, bore_m=2 * INCH))
    assert found == (verdict, diameters, 10.0, text, (("mix_pipe_length", "raise"), ("mix_pipe_elbows", "raise")))


@pytest.mark.parametrize(
    "low, verdict, text",
    [
        (4.0, "good", "4 m/s; a flame walks back against 4 m/s at most, so it cannot walk back up."),
        (
            3.99,
            "note",
            "3.99 m/s; a flame walks back against about 2 m/s, 4 m/s at most. The ports keep it out; one that gets "
            "past them may walk back up. A smaller mix pipe or a higher low fire would stop it.",
        ),
        (1.5, "note", None),
        (
            1.49,
            "stop",
            "1.49 m/s; a flame walks back against about 2 m/s: one that gets in walks back to the blower. Use a "
            "smaller mix pipe or a higher low fire.",
        ),
    ],
)
def test_walking_back_up_the_pipe(low, verdict, text):
    """Good from the quickest flame on, a stop below a flame's own speed."""
    pipe = part("mixing", velocity_m_s=4 * low, own_m_s=1.5, flame_m_s=Band(1.0, 2.0, 4.0))
    found = judged("mix_pipe_velocity", solved(units="mm"), mixing=pipe, low_fire=0.25)
    assert found[:3] == (verdict, low, 4.0) and found[4] == (("mix_pipe", "lower"), ("low_fire", "raise"))
    assert text is None or found[3] == f"At low fire the mixture runs through the mix pipe at {text}"
