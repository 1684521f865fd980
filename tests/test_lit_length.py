"""How much of a chamber's length the fire falls on, by hand and beside a finer model."""

import pytest

from burnercalc import Design, solve
from burnercalc.errors import InputError
from burnercalc.physics.lit_length import lit_share

INCH = 0.0254


@pytest.mark.parametrize(
    "field, burners, run, height, spread, share",
    [(9, 1, 12, 5.5, 0.5, 0.979), (5, 1, 48, 5.5, 0.5, 0.161), (5, 4, 48, 5.5, 0.5, 0.646), (11, 1, 12, 5.5, 1, 1)],
)
def test_shares_by_hand(field, burners, run, height, spread, share):
    """9 + 2.75 of 12 in; 7.75 of 48; 31 of 48; more than all of it."""
    assert lit_share(field * INCH, burners, run * INCH, height * INCH, spread) == pytest.approx(share, abs=5e-4)


def test_it_is_as_wide_as_the_heat_is_half_as_thick():
    """Summed up by hand: a box of 5 with slopes of 2.75 beside it, of which 7.75 gets half of the most or more."""
    step, slope = 0.001, 2.75
    thick = [min(1, max(0, 1 - (abs(n * step) - 2.5) / slope)) for n in range(-12000, 12001)]
    wide = step * sum(heat >= 0.5 for heat in thick)
    assert lit_share(5, 1, 12, 5.5, 0.5) * 12 == pytest.approx(wide, abs=0.01)


# From the coldest to the hottest place [K] of a zone model of 38 temperatures, run apart from this project: 12 x 6 x
# 5 1/2 in, 100 kBtu/h, an opening of 6 x 3 in at one end: (length of a field [in], how many, K).
# Flames of one bore area in all.
FACES = [(5, 1, 153), (9, 1, 131), (11, 1, 112)]
FLAMES = [(1.38, 1, 232), (1.38 / 2**0.5, 2, 189), (1.38 / 3**0.5, 3, 116)]


@pytest.mark.parametrize("zones", [FACES, FLAMES, [FLAMES[0], *FACES]])
def test_the_more_is_lit_the_more_even_a_finer_model_is(zones):
    by_share = sorted(zones, key=lambda zone: lit_share(zone[0], zone[1], 12, 5.5, 0.5))
    assert [kelvin for *_, kelvin in by_share] == sorted((kelvin for *_, kelvin in zones), reverse=True)


@pytest.mark.parametrize(
    "wrong", [(-1, 1, 1, 1, 1), (1, 0, 1, 1, 1), (1, 1, 0, 1, 1), (1, 1, 1, 0, 1), (1, 1, 1, 1, float("nan"))]
)
def test_what_cannot_be_is_refused(wrong):
    with pytest.raises(InputError):
        lit_share(*wrong)


def test_the_design_at_first():
    """9 in less twice lip and edge is 7 1/4 in of ports: with 2 3/4 in 10 of 12 in; a quarter to all of the height."""
    result = solve(Design.from_texts({}))
    assert result["chamber_lit"] == pytest.approx(10 / 12)
    assert result.answers["chamber_lit"].band == pytest.approx(((7.25 + 5.5 / 4) / 12, 1.0))
    long = solve(Design.from_texts({"chamber_length": "48 in", "burner_count": "2"}))
    assert long["chamber_lit"] == pytest.approx(20 / 48)
    # Along the longer side, whichever it is; a cylinder lies on its side.
    across = solve(Design.from_texts({"chamber_length": "10 in", "chamber_width": "20 in"}))
    assert across["chamber_lit"] == pytest.approx(10 / 20)
    round_ = solve(Design.from_texts({"chamber_shape": "cylinder", "chamber_length": "20 in"}))
    assert round_["chamber_lit"] == pytest.approx((7.25 + 6.5 / 2) / 20)
