"""The gas of a pilot: in what is used, in what line or cylinders give, in the fresh air, and in the meter's seconds."""

import pytest
from designs import solved

from burnercalc import build_sheet, traveller, units
from burnercalc.design import Design
from burnercalc.jobs import JOBS
from burnercalc.result import solve

KBTU_H = 293.0710701722222
FOOT3 = 0.0283168466
HOUSE = {"fuel": "natural_gas"}


def oven(tape="in", fuel="natural_gas", **texts):
    job = next(job for job in JOBS if job.key == "heat_treat")
    return solve(Design.from_texts({**job.texts(tape, fuel), **texts}))


def row(result, when):
    return next(row[1] for row in result.tables["lighting_card"].rows if row[0] == when)


def test_behind_a_torch_there_is_none():
    torch = solved(**HOUSE, pilot_rate="5 kBtu/h")
    assert torch["pilots_rate"] is None and torch.part("lighting_meter").pilot_s is None
    assert not torch.design.counts("pilot_rate") and solved(**HOUSE, lit_by="guard").design.counts("pilot_rate")


@pytest.mark.parametrize("burners", ["1", "2"])
def test_line_and_cylinders_give_it_besides(burners):
    """Of 37.7 MJ/m3 at 15 degC 1 kBtu/h is 7.77 cm3/s; of the oven's cylinder it takes a share of the hours."""
    one, more = (oven(pilot_rate=rate, burner_count=burners) for rate in ("1 kBtu/h", "3 kBtu/h"))
    assert one["pilots_rate"] == pytest.approx(int(burners) * KBTU_H)
    metered = 7.77e-6 * 101325 / (101325 + 7 * 249.089) * 288.706 / 288.15
    assert more["house_gas_flow"] - one["house_gas_flow"] == pytest.approx(2 * int(burners) * metered, rel=5e-3)
    at_fire = one.part("firing").installed_W
    dearer = more["fuel_cost_per_hour"] / one["fuel_cost_per_hour"]
    all_W = int(burners) * KBTU_H
    assert dearer == pytest.approx((at_fire + 3 * all_W) / (at_fire + all_W), rel=1e-6)
    assert more["firing_rate_gross"] == one["firing_rate_gross"]  # the burner does without its heat


def test_the_room_needs_air_for_it_too():
    """As so much more of the same burnt gas, lighting it and at high fire."""
    one, more = (oven(pilot_rate=rate) for rate in ("1 kBtu/h", "3 kBtu/h"))
    lit_W, fire_W = one.part("lighting").waits_W, one.part("firing").installed_W
    for answer, main_W in (("lighting_fresh_air", lit_W), ("fresh_air", fire_W)):
        assert more[answer] / one[answer] == pytest.approx((main_W + 3 * KBTU_H) / (main_W + KBTU_H), rel=1e-6)


def test_cylinders_last_less_long_with_a_pilot():
    """What is in them over all that burns, where nothing but empty ends it."""
    one, more = (oven(fuel="propane", pilot_rate=rate) for rate in ("1 kBtu/h", "3 kBtu/h"))
    assert one["run_ended_by"] == more["run_ended_by"] == "empty"
    fire_W = one.part("firing").installed_W
    assert more["run_time"] / one["run_time"] == pytest.approx((fire_W + KBTU_H) / (fire_W + 3 * KBTU_H), rel=1e-3)


@pytest.mark.parametrize("tape, turn_m3, pilot_W", [("in", FOOT3 / 2, KBTU_H), ("mm", 0.01, 300.0)])
def test_the_meters_seconds_hold_its_gas(tape, turn_m3, pilot_W):
    """A turn of the finest dial by it alone, and those of the whole, both from the heating value by hand."""
    r = oven(tape)
    meter, gross_J_m3 = r.part("lighting_meter"), r.part("gas").gross_J_m3
    line_Pa = 7 * 249.089 if tape == "in" else 2000.0
    swell = r.design.ambient_temperature / 288.15 * 101325 / (101325 + line_Pa)
    assert meter.pilot_s == pytest.approx(turn_m3 * gross_J_m3 / pilot_W / swell, rel=2e-3)
    for seconds, main_W in zip(meter.passes_s, reversed(r.part("lighting_slide").rate_W)):
        assert seconds == pytest.approx(meter.volume_m3 * gross_J_m3 / (main_W + pilot_W) / swell, rel=2e-3)


def test_a_reading_with_the_pilot_on_tells_the_pressure_that_is_right():
    """A jet that passes 4 % less: the pressure moved by the seconds told passes what was meant, the pilot as it is."""
    r = oven("mm")
    slide, meter, pilot_W = r.part("lighting_slide"), r.part("lighting_meter"), r.part("pilot").rate_W
    lit_W, drop_Pa = slide.rate_W.value, slide.gas_Pa.value - slide.pipe_Pa
    reads_s = meter.passes_s.value * (lit_W + pilot_W) / (0.96 * lit_W + pilot_W)
    moved_Pa = (reads_s - meter.passes_s.value) * meter.each_Pa
    assert 0.96 * (1 + moved_Pa / drop_Pa) ** 0.5 == pytest.approx(1, abs=2e-3)


def test_it_is_counted_before_any_main_flame_and_told_where_the_jet_is_proved():
    r = oven("mm")
    assert "The first time count its gas now, blower on" in row(r, "Pilot first")
    assert row(r, "Pilot first").index("count its gas now") < row(r, "Pilot first").index("Now RESET")
    weld = next(job for job in JOBS if job.key == "weld")
    by_meter = solve(Design.from_texts(weld.texts("mm", "natural_gas")))
    pilot_told = units.show(by_meter.part("pilot").rate_W, "power", "mm", 2)
    assert f"nothing else on it but the pilot, whose {pilot_told} is counted in, a second person reads it" in row(
        by_meter, "Alight"
    )
    # 2 % of the gas to light with: 0.02 x 3.68 / 0.3
    counted = ("Pilot alone, no main flame yet: 0.01 m³ (24 % off: papers anew)", "21 min = 0.3 kW")
    assert build_sheet.pilot_counted(r) == [counted]
    jet, _ = build_sheet.proofs(r)
    assert jet[0].endswith("nothing else on it, less pilot's") and jet[1] == "0.0770 m³, pilot 0.0047 m³"
    paper = str(traveller.blocks(r))
    assert paper.index("Pilot alone, no main flame yet") < paper.index("Lights 5 of 5")
    assert counted[0] in str(build_sheet.blocks(r, "", 216.0, 279.0))
    weighed = build_sheet.proofs(oven(fuel="propane"))[0][1]
    # 1 kBtu/h of 50.3 MJ/kg for 55 min: 19.2 g
    assert weighed.endswith(", pilot 0.68 oz")
    torch = solved()
    assert "ilot" not in str(
        (*build_sheet.proofs(torch), *build_sheet.pilot_counted(torch))
    ) and "count its gas" not in row(torch, "Torch first")


def test_what_it_adds_to_an_empty_oven_at_low_fire_is_told_and_no_good():
    """No valve of the burner turns it down: of 3.4 kW it is a tenth, some 40 degF of the empty chamber, past the 150
    that are good. Against a low fire higher by as much at the same mixture."""
    r = oven()
    check = r.checks["low_fire_drift"]
    firing = r.part("firing")
    share = (firing.low_W + KBTU_H) / firing.rate_W
    more = oven(low_fire=f"{100 * share:.4f} %", firing_rate=f"{firing.rate_W / 1000} kW")
    hotter_K = more.part("reached").low_empty_K.high
    assert check.verdict == "note" and check.value == r.part("reached").low_empty_K.high < hotter_K - 20
    assert f"with it the chamber may end at {units.show(hotter_K, 'temperature', 'in', 3)}." in check.text
    small = oven(pilot_rate="0.1 kBtu/h").checks["low_fire_drift"]
    assert small.verdict == "good" and "Its pilot's 0.1 kBtu/h is not in that" in small.text
    assert "pilot" not in solved().checks["low_fire_drift"].text
