"""Every file that a design can be taken away in: key -> (name, media type, function of result and link -> bytes)."""

import csv
import hashlib
import io
import json
from dataclasses import replace

from . import build_sheet, foot, shopping, traveller, units
from .constants import INCH_M
from .drawing import text_pages
from .drawing.dxf import write_dxf
from .drawing.pdf import write_template_pdf
from .drawing.shapes import Text
from .drawing.svg import write_svg
from .errors import A_DAY, require
from .making.days import Event, calendar_ics, moment
from .sheet import as_data

HOLES_ABREAST = (4, 5, 6)
NOMINAL_BAR_M = 0.100
PAPERS = ("letter", "a4")
SIZES = {"mm": "Sizes in millimetres", "in": "Sizes in inches"}
# Plans at true size; the first has the hole table.
PLANS = ("template", "window", "inlet", "cap", "baffle", "mould", "slide")
# Drawings that explain rather than guide a tool; SVG and DXF have them too.
VIEWS = ("face", "section", "section_across", "exploded", "in_chamber", "train", "nest")
# What a laser or router cuts: SVG and DXF only.
CUTS = ("pin_guide", "drilled_base")
# What is fixed to the finished burner and beside it: to print at true size, to engrave.
PLATES = ("plate", "operating_card")
NAMES = {
    "template": "drilling-template",
    "window": "window-template",
    "inlet": "inlet-template",
    "cap": "cap-template",
    "baffle": "baffle-template",
    "mould": "mould-template",
    "face": "face",
    "section": "section",
    "section_across": "section-across",
    "exploded": "taken-apart",
    "in_chamber": "in-the-chamber",
    "train": "gas-and-air-train",
    "nest": "boards",
    "slide": "damper-slide",
    "pin_guide": "pin-guide",
    "drilled_base": "drilled-base",
    "plate": "data-plate",
    "operating_card": "operating-card",
}


def printer_scale(d):
    """(x, y): what the 100 mm bar measured on paper over 100 mm."""
    return d.print_scale_x / NOMINAL_BAR_M, d.print_scale_y / NOMINAL_BAR_M


def hole_table(result):
    """The holes of the base from its own corner, as blocks of text pages in the design's units: with four holes to a
    line, or as many more as save a sheet."""
    system, table = result.design.reader, result.tables["base_drilling"]
    unit = units.shown_unit("length", system)
    rows = [
        (
            str(number),
            *(
                units.show(at, "length", system, finer=build_sheet.FINER[system]).removesuffix(f" {unit}")
                for at in (x, y)
            ),
        )
        for number, x, y, *_ in table.rows
    ]
    return [
        (
            text_pages.Heading(table.title, 2),
            text_pages.Table(("No.", f"x, {unit}", f"y, {unit}"), rows, "rrr", fold=fold),
        )
        for fold in HOLES_ABREAST
    ]


def _marked(result, name):
    """A drawing for SVG or DXF; over one that must not be built it is said."""
    drawing, words = result.drawings[name], foot.stamp(result)
    left, _, _, top = drawing.bounds()
    return replace(drawing, shapes=(*drawing.shapes, Text(left, top + 6.0, words, 9.0))) if words else drawing


def has_slide(result):
    """Is the air set by a slide with a hole or a mark: not where it is never lit, and open at both fires?"""
    low = result.part("fires").low
    return bool(result.part("lighting_slide").kind or (low and low.size_m) or result.part("damper_marks").high_m)


def template_pdf(result, link, paper, plan):
    """One plan at true size, corrected for the printer; the drilling template has its hole table with it."""
    scale_x, scale_y = printer_scale(result.design)
    return write_template_pdf(
        [result.drawings[plan]],
        paper,
        scale_x,
        scale_y,
        link,
        hole_table(result) if plan == "template" else (),
        foot.stamp(result),
        SIZES[result.design.units],
    )


def all_templates_pdf(result, link, paper):
    """Every plan that guides a tool, at true size in one file; the mould's boards stand on the build sheet."""
    scale_x, scale_y = printer_scale(result.design)
    left_out = {"mould"}  # the template has it
    left_out |= set() if result.part("baffle_sheet").sheet else {"baffle"}
    left_out |= set() if has_slide(result) else {"slide"}
    plans = [result.drawings[plan] for plan in PLANS if plan not in left_out]
    sizes = SIZES[result.design.units]
    return write_template_pdf(plans, paper, scale_x, scale_y, link, hole_table(result), foot.stamp(result), sizes)


def plates_pdf(result, link, paper):
    """Data plate and operating card at true size; printed anew for a burner that stands, no weather to cast in stops
    them."""
    scale_x, scale_y = printer_scale(result.design)
    stamp = foot.stamp(result, foot.LIGHT if result.design.slide_hole else foot.BUILD)
    return write_template_pdf([result.drawings[name] for name in PLATES], paper, scale_x, scale_y, link, stamp=stamp)


def table_csv(table):
    """A table as CSV: numbers in SI with their unit in the heading, lengths in mm and in inches."""
    out = io.StringIO()
    writer = csv.writer(out)
    heading, spread = [], dict.fromkeys(units.TAPED, (("mm", 1000.0), ("in", 1 / INCH_M)))
    for column in table.columns:
        si = units.si_unit_of(column.dimension)
        for unit, _ in spread.get(column.dimension, ((si if si not in ("", "1") else "", 1.0),)):
            heading.append(f"{column.key}_{unit}" if unit else column.key)
    writer.writerow(heading)
    for row in table.rows:
        cells = []
        for value, column in zip(row, table.columns):
            for _, factor in spread.get(column.dimension, (("", 1),)):
                cells.append(f"{value * factor:.6g}" if isinstance(value, float) else value)
        writer.writerow(cells)
    return out.getvalue().encode("utf-8")


def design_json(result, link):
    return (json.dumps(as_data(result, link.partition("#")[0]), indent=1, ensure_ascii=False) + "\n").encode("utf-8")


def calendar(result, link):
    """The days as an iCalendar file; the same design gives the same bytes."""
    start = result.design.start_date
    require(start is not None, "start_date", "", "needs a date before a calendar can be made", A_DAY)
    design = hashlib.sha256(link.partition("#")[2].encode()).hexdigest()[:16]
    told = zip(result.part("batch").steps, result.tables["days"].rows, result.tables["care"].rows)
    one = {
        step.key: Event(
            step.key,
            step.start,
            step.end,
            title,
            f"{do}\nWatch: {watch}\nGo on when: {go_on}\nCaution: {caution}",
        )
        for step, (*_, watch, go_on), (title, do, caution, _) in told
    }
    if build_sheet.never_lit(result):  # nothing of it is fired
        del one["fire"], one["test"]
    events = _events(result, one) if result.design.batch_size == 1 else _batch_events(result, one)
    if stamp := foot.stamp(result):
        events = [replace(event, title=f"{stamp}: {event.title}") for event in events]
    return calendar_ics(events=events, stamp_utc=f"{start:%Y%m%d}T000000Z", uid=design).encode("utf-8")


def _events(result, one):
    """The calendar of one burner: an event for each spell of a step, numbered where there are several."""
    events = []
    for step in result.part("schedule").steps:
        if step.key not in one:
            continue
        event, several = one[step.key], len(step.spells) > 1
        for number, (start, end) in enumerate(step.spells, 1):
            own = {"key": f"{step.key}-{number}", "title": f"{event.title} ({number})"} if several else {}
            events.append(replace(event, start=start, end=end, **own))
    return events


def _batch_events(result, one):
    """The calendar of the batch: what is done to each burner, with the words of that step."""
    batch, first = result.part("batch"), result.part("schedule").first
    events = []
    for number, job in enumerate(batch.plan.jobs):
        if job.step not in one and job.step != "weigh":
            continue
        whose = ("mould " if job.step == "mould" else "") + ", ".join(map(str, job.burners))
        event = replace(one["oven"], title="Weigh, hot") if job.step == "weigh" else one[job.step]
        events.append(
            replace(
                event,
                key=f"{job.step}-{number}",
                start=moment(first, job.start),
                end=moment(first, job.end),
                title=f"{event.title}: {whose}",
            )
        )
    return events


def _plan_files():
    """Templates as PDF on both papers, and every drawing as SVG and DXF."""
    made = {}
    for plan in PLANS:
        for paper in PAPERS:
            key = f"{plan}-{paper}"
            made[key] = (
                f"{NAMES[plan]}-{paper}.pdf",
                "application/pdf",
                lambda result, link, plan=plan, paper=paper: template_pdf(result, link, paper, plan),
            )
    for name in (*VIEWS, *PLANS, *CUTS, *PLATES):
        made[f"{name}-svg"] = (
            f"{NAMES[name]}.svg",
            "image/svg+xml",
            lambda result, link, name=name: write_svg(_marked(result, name)).encode(),
        )
        made[f"{name}-dxf"] = (
            f"{NAMES[name]}.dxf",
            "image/vnd.dxf",
            lambda result, link, name=name: write_dxf(_marked(result, name)).encode("ascii"),
        )
    return made


FILES = {
    "sheet-letter": (
        "build-sheet-letter.pdf",
        "application/pdf",
        lambda result, link: build_sheet.pdf(result, link, "letter"),
    ),
    "sheet-a4": ("build-sheet-a4.pdf", "application/pdf", lambda result, link: build_sheet.pdf(result, link, "a4")),
    "lighting-card-letter": (
        "lighting-card-letter.pdf",
        "application/pdf",
        lambda result, link: build_sheet.card_pdf(result, link, "letter"),
    ),
    "lighting-card-a4": (
        "lighting-card-a4.pdf",
        "application/pdf",
        lambda result, link: build_sheet.card_pdf(result, link, "a4"),
    ),
    **{
        f"shopping-{paper}": (
            f"shopping-list-{paper}.pdf",
            "application/pdf",
            lambda result, link, paper=paper, got=(): shopping.pdf(result, link, paper, got),
        )
        for paper in PAPERS
    },
    **{
        f"traveller-{paper}": (
            f"traveller-{paper}.pdf",
            "application/pdf",
            lambda result, link, paper=paper: traveller.pdf(result, link, paper),
        )
        for paper in PAPERS
    },
    **{
        f"plates-{paper}": (
            f"plate-and-card-{paper}.pdf",
            "application/pdf",
            lambda result, link, paper=paper: plates_pdf(result, link, paper),
        )
        for paper in PAPERS
    },
    "templates-letter": (
        "templates-letter.pdf",
        "application/pdf",
        lambda result, link: all_templates_pdf(result, link, "letter"),
    ),
    "templates-a4": ("templates-a4.pdf", "application/pdf", lambda result, link: all_templates_pdf(result, link, "a4")),
    **_plan_files(),
    "holes-csv": ("hole-table.csv", "text/csv", lambda result, link: table_csv(result.tables["holes"])),
    "shopping-csv": (
        "shopping-list.csv",
        "text/csv",
        lambda result, link, got=(): table_csv(result.tables["shopping"]),
    ),
    "tools-csv": ("tools.csv", "text/csv", lambda result, link: table_csv(result.tables["tools"])),
    "cut-list-csv": ("cut-list.csv", "text/csv", lambda result, link: table_csv(result.tables["cut_list"])),
    "design-json": ("design.json", "application/json", design_json),
    "calendar-ics": ("days.ics", "text/calendar", calendar),
}
