"""The traveller: pages that go with each burner through the shop, filled in on the way, a set a serial number."""

import re

from . import foot, units
from .build_sheet import (
    LEAK,
    SHOWN,
    YES,
    drilled,
    fires,
    flow_test,
    leads_high,
    never_lit,
    notes_of,
    pilot_counted,
    plain,
    proofs,
    proved,
    regulated,
    shown_by_fire,
    tap_at_fire,
)
from .drawing.pdf import write_document_pdf
from .drawing.text_pages import Caution, Heading, PageBreak, Paragraph, Table
from .settings import BY_KEY

# Headings of what is filled in, wide enough to write under.
FOUND, FOUND_WHEN, DATE_WHO = (
    name + " " * room for name, room in (("Found", 40), ("Found, date, time", 30), ("Date, who", 8))
)
EVEN = {"in": "1/32 in", "mm": "0.8 mm"}  # a window in the middle and at its ends
UNBROKEN = 44  # letters that a column of the calendar is wide at the least
TITLE = "Traveller: blown multi-port burner"
# Sizes to measure on each burner: settings, then answers.
SET = ("body_length", "body_width", "body_depth", "wall", "setback", "block_thickness")
WORKED_OUT = (
    "window_length",
    "window_width",
    "inlet_hole",
    "baffle_stand",
    "push_in",
    "back_over_frame",
    "pin_length",
    "pin_proud",
)
FLAT = {"baffle_stand": "Baffle, above the face"}  # as told of a baffle without a bend
ROUND = {"window_width": "Window, across", **FLAT}  # as told of a round body
SPLIT, NOTCHED = ("mould layer",), ("mould end",)  # pieces of a mould that take more than sawing to size
# What is signed for, and the step of the plan whose end it is.
STEPS = {
    "Steel cut and welded": "weld",
    "Leak test passed": "",
    "Mould and pins checked": "",
    "Block cast": "cast",
    "Pins freed at first set": "free",
    "Stripped and trimmed": "trim",
    "Air-dry: weighed twice": "clear",  # its wait may end on a day off, on which nobody weighs
    "Ports cleared and counted": "clear",
    "Oven-dry: weighed twice": "oven",
    "Air and safety passed": "",
    "First fire, all heats": "fire",
    "Test fire passed": "test",
    "Plate and card fixed": "",
    "Handed over, to whom": "",
}
TAPED = "As many ports of each row, every burner alike; pull all tape off before the first fire."
CERTIFIED = (
    "In many places gas equipment must be certified before it is sold, given away or put to use. What is needed where "
    "it "
    "will stand the local authority decides: ask it, the gas supplier and the insurer first. A filled-in traveller is "
    "a "
    f"record, not an approval. {foot.LAW}"
)


def pdf(result, link, paper):
    """A set of pages for each burner of the batch as PDF bytes."""
    return write_document_pdf(TITLE, blocks(result), paper, foot.line(result, link, paper), foot.stamp(result))


def blocks(result):
    count = result.design.batch_size
    found = [] if count == 1 else _batch(result)
    for number in range(1, count + 1):
        found += [PageBreak()] * (count > 1) + _one(result, number)
    return found


def _batch(result):
    """The batch as a whole, once: its calendar, what holds it up, what is cast when. Its steel and wood are on the
    build sheet."""
    days, castings = result.tables["batch_days"], result.tables["castings"]
    return [
        Heading(days.title),
        Paragraph(
            "Print this part once, for the wall, with one build sheet for all. Behind it each burner has two pages of "
            "its own that go with it."
        ),
        Paragraph(
            f"{_show(result, 'batch_days')} days to the last burner, {_show(result, 'batch_first_days')} to the first. "
            f"{result['batch_bottleneck']} {_test_fire(result)} Hours, hands and places are examples until you set "
            "yours." + _unmade(result)
        ),
        Table(
            tuple(column.label for column in days.columns), [tuple(map(_unbroken, row)) for row in days.rows], "llll"
        ),
        Heading(castings.title, 2),
        plain(castings, result.design.reader, [column.key for column in castings.columns], "llrrr"),
    ]


def _unbroken(text):
    """A day's cell whose lines break between two things that are done, not within one."""
    each = re.split(r"(?<=[,;]) (?=\d\d:\d\d |pair \d)", text)
    return " ".join(one.replace(" ", "\u00a0") if len(one) <= UNBROKEN else one for one in each)


def _test_fire(result):
    """What is told of it beside the calendar."""
    if never_lit(result):
        return "DO NOT LIGHT: neither first fire nor test fire is planned."
    time = _show(result, "test_fire_time")
    return f"A test fire, {time} by its lighting card, is made on the morning after the last heat."


def _unmade(result):
    """Moulds that there may be and the calendar does not make."""
    made, may = result["moulds_made"], result.design.moulds
    if made >= min(may, result.design.batch_size):
        return ""
    return f" Of {may} moulds {made} {'is' if made == 1 else 'are'} made: one more would save no day."


def _one(result, number):
    batch = result.design.batch_size > 1
    name = f"Burner {number} of {result.design.batch_size}"
    return [
        *([Heading(name)] if batch else []),  # one burner: the title says it
        Table(("Serial no.", "Revision", "Begun", "By"), (("", "", "", ""),), "llll"),
        *_as_built(result),
        *_ports(result),
        *_weights(result),
        PageBreak(),
        Heading(f"{name}: air, safety, fire, sign-off" if batch else "Air, safety, fire, sign-off"),
        *_before_any_flame(result),
        *_fire(result),
        *_sign_off(result, number),
        Caution(CERTIFIED, "Certification"),
    ]


def _show(result, key):
    return result.answers[key].brief


def _as_built(result):
    d, round_body = result.design, result.part("face").round
    rows = [(BY_KEY[key].label, d.show(key), "") for key in (SET[1:] if round_body else SET)]
    told = [key for key in WORKED_OUT if result[key] is not None and not (round_body and key == "window_length")]
    own = ROUND if round_body else {} if d.baffle_bend_angle else FLAT
    rows += [(own.get(key) or result.answers[key].label, _show(result, key), "") for key in told]
    if result.part("welding").wax_m:
        wax = units.show(result.part("welding").wax_m, "drill_length", d.reader, 2)
        rows.append(("Wax, both ends and lip's edge, before casting", wax, ""))
    leak = f"Leak, before casting: air at {LEAK[d.reader]} of water, 10 min"
    rows.append((leak, "no bubble, no drop", ""))  # the window is open no more once there is a block in it
    even = (
        f"Discs square to the pipe: level across two diameters to {EVEN[d.reader]}."
        if round_body
        else f"Window as wide in the middle as at its ends to {EVEN[d.reader]}."
    )
    notched = (result.part("end_inlet").over_mould_m or 0.0) < 0
    return [
        Heading("As built", 2),
        Table(("What", "By the design", FOUND), tuple(rows), "lrl"),
        Paragraph(
            f"{even} Pins off by at most {d.show('port_position_tolerance')}, out of square by at most "
            f"{d.show('port_tilt_tolerance')}."
        ),
        *(notes_of(result.tables["mould"], SPLIT if round_body else NOTCHED) if round_body or notched else []),
    ]


def _ports(result):
    pins = result.part("pins")
    return [
        Heading("Pin gauge", 2),
        Table(
            ("What", "By the design", FOUND),
            (
                ("Ports", _show(result, "port_count"), ""),
                (f"GO: {pins.cleaning_drill} drill shank through, whole length", "all", ""),
                (f"NO GO: {pins.no_go_drill} drill shank enters", "none", ""),
            ),
            "lrl",
        ),
        Paragraph("A port that takes the NO GO drill lets more mixture through and lets the flame back in sooner."),
    ]


def _weighed(result):
    """What goes into one block, for the scale; a mix that is not the sheet's shows here first."""
    rows = [("Bag: lot, date on it", "")]
    rows.append(("Dry mix weighed, all of one block", _show(result, "dry_mass")))
    if result.part("block").material.mixes_with_water:
        low, high = (units.show(kg, "mass", result.design.reader) for kg in result.answers["water"].band)
        rows.append(("Water weighed, all of one block", f"{low} to {high}"))
    return rows


def _weights(result):
    return [
        Heading("Weights to dry", 2),
        Table(
            ("What", "By the design", FOUND_WHEN),
            (
                ("Before casting, with inlet, baffle, bracket", _show(result, "burner_steel_mass"), ""),
                *((*row, "") for row in _weighed(result)),
                ("As stripped, wet, pins in, at most", _show(result, "burner_wet_mass"), ""),
                ("Warm, the last evening", "", ""),
                ("Warm, the morning after", "0.5 % from the evening", ""),
                ("In the oven, hot, an hour before the hold ends", "", ""),
                ("In the oven, hot, at the end of the hold", "0.1 % from the hour before", ""),
                ("Dry, about", _show(result, "burner_mass"), ""),
            ),
            "lrl",
        ),
        Paragraph(
            "Some water stays bound until the first fire. No flame on a burner that still loses weight: steam bursts "
            "the "
            "block."
        ),
    ]


def _before_any_flame(result):
    """Also that of the first fire, which may be the burner's own: air, and what shuts the gas."""
    shut_Pa = result.part("blower").curve.pressure_Pa(0.0)
    how, shows = flow_test(result)
    read = result.part("air_proof").flow_Pa is not None
    taped = f"{TAPED} " if result.part("air_proof").shut else ""
    return [
        Heading("Air and safety, before any flame, the first fire's too", 2),
        Table(
            ("What", "By the design", FOUND),
            (
                *((*row, "") for row in drilled(result)),
                ("Blower, outlet shut: pressure", units.show(shut_Pa, "pressure", result.design.reader), ""),
                (
                    f"Damper at HIGH ({result['damper_mark_high']}), {how}: the mix pipe's tap",
                    shows + (", as the others to 5 %" if result.design.batch_size > 1 and read else ""),
                    "",
                ),
                ("A hand before the ports, row by row", "air from all", ""),
            ),
            "lrl",
        ),
        Paragraph(
            f"{taped}Below that the air is short: blower, slide or a leak; above it, too much, or ports are shut. 10 % "
            "above the others, or above when it was new, is one port in twenty shut, 20 % one in eleven. Clear the "
            "ports and measure again before any gas."
        ),
        Table((SHOWN, YES), tuple((what, "") for what in proved(result)), "ll", 2),
    ]


def _fire(result):
    rows = tuple((*row, "") for row in fires(result))
    jet, alone = proofs(result), result.part("proof").alone
    shown = (
        *((*row, "") for row in (*pilot_counted(result), *(jet if alone else ()))),
        *((what, "yes", "") for what in shown_by_fire(result)),
        *((*row, "") for row in (*regulated(result), *(() if alone else jet))),
    )
    return [
        Heading("Test fire: readings expected", 2),
        Table(("Fire", "Rate", "Gas before the jet", "Damper", FOUND), rows, "lrrll"),
        Paragraph(
            (f"The mix pipe's tap at high fire: {tap_at_fire(result)}. " if leads_high(result) else "")
            + (
                "DO NOT LIGHT: the sheet says what stops it."
                if never_lit(result)
                else "Light it by the lighting card only."
            )
        ),
        *([Table(("What", "By the design", FOUND), shown, "lll")] if shown else []),
    ]


def _sign_off(result, number):
    """Each step with the day on which the plan ends it."""
    dated, ends = result.part("schedule").dated, result.part("batch").ends(number)

    def planned(step):
        if step in ("fire", "test") and never_lit(result):
            return "do not light"
        if step not in ends:
            return ""
        day, on = ends[step]
        return f"{on:%a %d %b}" if dated else f"day {day}, {on:%a}"

    rows = tuple((told, planned(step), "") for told, step in STEPS.items())
    return [Heading("Sign-off", 2), Table(("Step", "By the plan", DATE_WHO), rows, "lll", 2)]
