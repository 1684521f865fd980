"""The build sheet: a few pages to pin up over the bench, from the face to the first fire, in black and white."""

from collections import Counter
from dataclasses import replace
from math import floor

from . import foot, shopping, units
from .constants import STANDARD_PRESSURE_PA
from .drawing.paper import paper_size
from .drawing.pdf import write_document_pdf
from .drawing.text_pages import (
    FOOT_MM,
    GAP_MM,
    QR,
    RATIOS,
    SIDE_MM,
    SMALLEST_TEXT_MM,
    TOP_MM,
    Caution,
    Columns,
    Figure,
    Heading,
    Items,
    PageBreak,
    Paragraph,
    Table,
    fits_at,
    is_numbered,
    used_mm,
)
from .errors import InputError
from .foot import LAW, NO_FIRE
from .result import VERDICTS
from .settings import BY_KEY

TITLE = "Build sheet: blown multi-port burner"
CARD_TITLE = "Lighting card"
CARD_TYPE_MM = (3.4, 3.3, 3.2, 3.1, 3.0)  # the largest that keeps the card on one page; 3.0 mm is 8.5 pt
LEAST_VIEW_MM, MOST_VIEW_MM = (40.0, 56.0, 72.0), 100.0  # height of the face on the first page, as there is room
TEXT_MM = 2.5
WHEN_MM = 16.0  # of the lighting card's first column, of few words
ACROSS = ("Across", "Across, through one inlet")
ALONG = 1.35  # width of the section along over that of the section across
MOULD_MM, APART_MM = 52.0, 57.0  # height of the mould's view and of the burner's taken apart
NEST_MM, MOST_NESTS = 28.0, 5  # height of one board as it is cut; of no more than so many above one another
TRAIN_RATIO, SLIDE_MM = 4.0, 62.0
LEAST_BESIDE_MM = 45.0  # a column that words can be read in, beside the train
SLENDER = 2.5  # a body longer than this many widths has its section along over the whole page
MARKS = {"good": "good", "note": "note", "caution": "CAUTION", "stop": "STOP"}
# A field of more ports than this has its hole table on sheets of its own.
MOST_HOLES = 90
PRACTICE = "common practice"
PILOT_OFF = 0.5  # that a pilot's gas may be off by at the most, though the burner takes far more; common practice
MOST_BESIDE = 16  # rows of days and of stages beside each other; longer first fires go on over the page
ON_CARD = ("lighting_air", "lighting_trial")  # told on the lighting card with the same figures
MOST_CARD = 5  # rows of the regulator's card
# A code for more text than this has squares too small for a phone.
LONGEST_CODE = 1200
CODE_MM = 50.0
CASTING = ("mould", "cast", "free", "strip", "trim", "air", "clear", "oven", "fire", "test")
# What is proved before any flame, and what a test fire shows.
PROVED = (
    "Soap on every gas joint under pressure: no bubble",
    "RCD (GFCI), its test button: the blower stops",
)
# With the firing cock shut a valve that sticks open is not seen: it is proved at a flame.
POWER_OFF = "Lights 5 of 5, all ports; power off, on: valves shut"
FIRST_OF_ALL = "Leak to valve: before any flame"
FIRED = (
    POWER_OFF,
    "Ten minutes at {0}, no pop; valve shuts in {1:.0f} s",
)
STAYS = {"low": "low fire, hot", "high": "high fire, hot"}
NOT_OF_BLEND = "not: a blend is another gas as it boils off; by drill and pressure alone"
NOT_BY_SCALE = "not: too little in 90 min to be read; by drill and pressure alone"
BLANK = "." * 24
FOUND = "Found" + " " * 30  # wide enough to write under
SHOWN, YES = "What it shows", "Yes"
RIPPED = "rip the flat"  # in the note of a piece narrower than the flat it is cut from
LEAK = {"in": "20 in", "mm": "50 cm"}  # pressure of water
_SEAL = (
    "threads do not seal in them. Paste or tape for gas on taper threads, none on a joint that seals by its seat. "
    "A groove round a nut marks a left-hand thread: it opens clockwise."
)
THREADS = {
    "in": f"Threads of pipe and fittings: NPT, outside on pipe and nipples. R and Rp {_SEAL}",
    "mm": f"Threads of pipe and fittings: R outside on pipe and nipples, Rp inside. American pipe {_SEAL}",
}
FINER = {"in": 1, "mm": 0}  # holes are marked to 1/64 in, to 0.1 mm


def pdf(result, link, paper):
    """The sheet as PDF bytes; `link` opens the design; on every page it, or the design's number, is printed."""
    width, height = paper_size(paper)
    width, height = width - 2 * SIDE_MM, height - TOP_MM - FOOT_MM
    made = blocks(result, link, width, height, paper)
    return write_document_pdf(TITLE, made, paper, foot.line(result, link, paper), foot.stamp(result))


def card_pdf(result, link, paper):
    """The lighting card by itself as PDF bytes, to hang up beside the burner."""
    title = f"{CARD_TITLE}, {_gas_words(result)}, burner no. {BLANK[:12]}"
    line, stamp = foot.line(result, link, paper, NO_FIRE), foot.stamp(result, foot.LIGHT)
    width, height = paper_size(paper)
    _, *made = _on_one_page([Heading(title, 0), *card_blocks(result)], width - 2 * SIDE_MM, height - TOP_MM - FOOT_MM)
    return write_document_pdf(title, made, paper, line, stamp)


def _on_one_page(blocks, width, height):
    """The blocks with the type of their table as large as leaves them on one page."""
    for size in CARD_TYPE_MM:
        found = [replace(block, size=size) if isinstance(block, Table) else block for block in blocks]
        if used_mm(found, width, height) <= height:
            break
    return found


def card_blocks(result):
    """The card's blocks; of a design that must not be lit, why not stands instead of how to."""
    return [
        *_lighting(result)[1:],
        Paragraph(f"Attended all the time. {LAW} A licensed gas fitter decides.", bold=True),
    ]


def _gas_words(result):
    """What it burns; a blend is one that was analysed for it. That propane comes by a line is told, for the jet hangs
    on it."""
    line = result.part("gas_line")
    name = "own gas blend" if result.design.fuel_blend else result.design.show("fuel")
    return f"{name} from a line" if line.there and not line.metered else name


def blocks(result, link, width, height, paper="letter"):
    """The sheet as blocks for pages of that size [mm]; the first page and the lighting card stand by themselves."""
    return [
        *_first_page(result, link, width, height, paper),
        *_steel(result, width),
        *_block(result, width),
        *_casting(result),
        *_days(result),
        *_gas(result, width),
        *_train(result),
        *_train_drawn(result, width),
        *shopping.beside_train(result),
        PageBreak(),
        *_on_one_page(_lighting(result), width, height),
        *_notes(result),
        *_record(result),
    ]


def _first_page(result, link, width, height, paper):
    """The design at a glance, what asks for a change, and the link where no foot holds it; the face is as large as
    these leave room for."""
    faults = _faults(result)
    if not foot.line(result, link, paper).endswith(link):
        faults.append(Paragraph(f"Design {foot.number(link)}: {link}"))
    for view_mm in LEAST_VIEW_MM:
        try:
            small = [*_overview(result, link, width, view_mm), *faults]
        except InputError:  # its dimensions do not fit beside so small a face
            continue
        spare = height - used_mm((Heading(TITLE, 0), *small), width, height)
        if spare < 0:
            break
        for share in (1.0, 0.9, 0.75, 0.5):  # a larger face may bring a line more with it
            larger = [*_overview(result, link, width, min(MOST_VIEW_MM, view_mm + share * spare)), *faults]
            if used_mm((Heading(TITLE, 0), *larger), width, height) <= height:
                return [*larger, PageBreak()]
        return [*small, PageBreak()]
    return [*_overview(result, link, width, LEAST_VIEW_MM[-1]), *faults]  # they run on to the second page


def _view(result, name, width, height, caption, numbered=""):
    """A view of the burner as large as its place allows, its texts drawn for that scale; `numbered` is said too where
    its numbers can be read."""
    for ratio in RATIOS:
        drawing = result.drawing(name, text_mm=TEXT_MM * ratio, numbers=True, wide=width / height)
        if fits_at(drawing, ratio, width, height):
            return Figure(drawing, height, caption + (numbered if is_numbered(drawing, ratio) else ""))
    raise InputError("figure", f"{name} in {width:.0f} x {height:.0f} mm", "needs a larger place")


def _lasts(seconds):
    """A time as a person says it: 30 min, 85 min, 2.5 h, 42 h."""
    if seconds < 3600 or (seconds < 2 * 3600 and seconds % 1800):
        return f"{seconds / 60:.0f} min"
    return f"{seconds / 3600:.1f}".removesuffix(".0") + " h"


def _show(result, key):
    return result.answers[key].brief


def _numbers(result, keys):
    """Rows of (label, value) for answers that apply."""
    return [
        (result.answers[key].label, _show(result, key))
        for key in keys
        if key in result.answers and result[key] is not None
    ]


def _set(result, keys):
    """Rows of (label, value) for settings."""
    return [(BY_KEY[key].label, result.design.show(key)) for key in keys]


def plain(table, unit_system, keys, align="", fold=1):
    """Some columns of a table of the result as a block."""
    columns = {column.key: (i, column) for i, column in enumerate(table.columns)}
    rows = [
        tuple(units.show(row[columns[key][0]], columns[key][1].dimension, unit_system) for key in keys)
        for row in table.rows
    ]
    return Table(tuple(columns[key][1].label for key in keys), tuple(rows), align, fold)


def _overview(result, link, width, view_mm):
    d = result.design
    body = _set(
        result, ("body_kind", "body_length", "body_width", "body_depth", "wall", "setback", "grip", "block_thickness")
    )
    ports = _set(result, ("port_diameter", "pattern", "edge_margin")) + _numbers(
        result, ("port_count", "port_pitch", "row_pitch", "min_web", "port_area", "plenum_to_port_ratio")
    )
    if result.part("face").round:
        body = [row for row in body if row[0] != BY_KEY["body_length"].label]
    else:
        ports.append(("Outer holes, from end and side", " and ".join(_outermost(result))))
    code = (
        [
            QR(
                link,
                "Opens this design."
                if not link.startswith("#")
                else "This design; put it after the address of the page.",
                CODE_MM,
            )
        ]
        if len(link) <= LONGEST_CODE
        else [Paragraph("The link of this design is too long for a code; it is in the file of the design.")]
    )
    worst = result.worst
    found = Counter(check.verdict for check in result.told)
    tally = ", ".join(f"{found[verdict]} {MARKS[verdict]}" for verdict in VERDICTS if found[verdict])
    word = {
        "good": "All checks are good or notes.",
        "caution": "Read the cautions below before you cut.",
        "stop": "DO NOT BUILD THIS: see the stops below.",
    }[worst]
    return [
        Table(
            ("Made by", "Date", "Serial no." if d.batch_size == 1 else "Serial nos.", "Revision"), (("",) * 4,), "llll"
        ),
        Paragraph(
            f"{_gas_words(result)}, {units.show(result['firing_rate_gross'], 'power', d.reader)} gross, "
            f"{result['port_count']} "
            "ports of "
            f"{d.show('port_diameter')}. Checks: {tally}. {word}",
            bold=True,
        ),
        _view(
            result,
            "face",
            width,
            view_mm,
            "Face, seen from the fire",
            f"; ports are numbered {'ring by ring' if d.pattern == 'rings' else 'row by row'}",
        ),
        Columns(
            ((Table(("Body", ""), tuple(body), "lr"),), (Table(("Ports", ""), tuple(ports), "lr"),), tuple(code)),
            (1.15, 1.15, 0.9),
        ),
    ]


def _outermost(result):
    """Middles of the first holes from the body's end and from its side."""
    d, rows = result.design, result.tables["holes"].rows
    return [units.show(min(row[axis] for row in rows), "length", d.reader, finer=FINER[d.reader]) for axis in (1, 2)]


def _steel(result, width):
    """Sections, cut list and stock, the order of the work and the seams; of a slender body the section has a page's
    width and the order stands beside the section across."""
    d = result.design
    slender = d.body_length > SLENDER * max(d.body_width, d.body_depth)
    order = [Heading("In this order", 2), Items(_steel_order(result), "1")]
    half = (width - GAP_MM) / (ALONG + 1)
    across = _view(result, "section_across", half, 64.0 if slender else 74.0, ACROSS[d.inlets > 1])
    if slender:
        along = _view(result, "section", width, 60.0, "Along")
        drawn, below = [along, Columns(((across,), tuple(order)), (1.0, ALONG))], []
    else:
        along = _view(result, "section", half * ALONG, 74.0, "Along")
        drawn, below = [Columns(((along,), (across,)), (ALONG, 1.0))], order
    return [Heading("Steel"), *drawn, *_steel_tables(result), *below, *_welding(result)]


def _steel_order(result):
    """What is done to the steel, one after the other."""
    return (
        *_ripped(result),
        _window(result),
        f"Inlet: hole saw {_show(result, 'inlet_hole')} in {_inlet_place(result)}; "
        f"{_show(result, 'inlet_hole_clearance')} of clearance on the pipe. Nipples: {_show(result, 'inlet_nipple')}.",
        {
            "tube": f"Caps: ease the corners to {_show(result, 'cap_corner')} so that they follow the tube.",
            "plates": "Caps: square corners, no need to ease them.",
            "pipe": "Discs: one with the window, one with the inlet hole.",
        }[result.design.body_kind],
        *([_baffle(result)] if result.part("baffle_sheet").sheet else []),
        f"Weld {_show(result, 'weld_length')} of seam, gas-tight, in the order below.",
        f"Scribe the push-in mark {_show(result, 'push_in')} from the face, all round.",
    )


def _ripped(result):
    """What the flat is too wide for: a list of lengths does not show that it is sawn along as well."""
    d, table = result.design, result.tables["cut_list"]
    at = {column.key: number for number, column in enumerate(table.columns)}
    told = [
        f"{row[at['piece']]} {units.show(row[at['width']], 'length', d.reader)} ({d.batch_size * row[at['count']]})"
        for row in table.rows
        if RIPPED in row[at["note"]]
    ]
    return [f"Rip the flat to width, along the piece: {', '.join(told)}."] if told else []


def _window(result):
    d, steel = result.design, result.part("steel")
    if not steel.window_cut.drills:
        return f"Window: one round hole of {_show(result, 'window_width')} in the middle of the face disc."
    turned = "Turn the tube so that its own weld lies in a side, not in face or back. "
    return (
        (turned if d.body_kind == "tube" else "")
        + f"Window {_show(result, 'window_length')} by {_show(result, 'window_width')}: drill four holes of "
        f"{d.show('corner_drill')} first, centres {_show(result, 'corner_drill_inset')} in from its edges, then cut "
        f"straight from hole to hole, but for a bridge of {units.show(steel.bridge_m, 'length', d.reader)} in the "
        "middle of both cuts along the body: it stays until both caps are on."
    )


def _inlet_place(result):
    d = result.design
    if d.inlet_position == "end":
        axis = units.show(result.part("end_inlet").axis_m, "length", d.reader)
        return f"one end cap, its middle {axis} from the outside of the face"
    if result.part("face").round:
        return "the back disc"
    if d.inlets == 1:
        return "the middle of the back"
    return (
        f"the back, two of them, {_show(result, 'inlet_spacing')} from middle to middle, half of that each way from "
        "the middle of the back"
    )


def _baffle(result):
    d, length = result.design, _show(result, "baffle_length")
    bend = (
        f", bend it {d.baffle_bend_angle:g}° from flat along the middle ({180 - d.baffle_bend_angle:g}° is left "
        f"between its legs), ridge to the inlet, {_show(result, 'baffle_height')} high"
    )
    if result.part("face").round:
        blank, bend, tacked = f"disc of {length}", "", "goes in from the open end and is tacked before that is closed."
    else:
        blank = f"blank {length} by {_show(result, 'baffle_width')}"
        bend, tacked = bend if d.baffle_bend_angle else "", "is tacked in from both open ends, before the caps."
    holes = f"{d.baffle_holes} holes of {d.show('baffle_hole_diameter')} as on its template"
    return f"Baffle: {blank}, {holes}{bend}. It {tacked}"


def _steel_tables(result):
    """What must be known first, the cut list and the bars; what else is bought is named."""
    d = result.design
    also = [f"pipe nipples, {_show(result, 'inlet_nipple')}"]
    if result.part("baffle_sheet").sheet:
        also.append(f"sheet of {d.show('baffle_thickness')} for the baffle")
    also.append("the mould's boards, pins and mix, on their page")
    before = tuple((check.label, check.text) for check in _noted(result)[1])
    both = ("millimetres",) if d.reader == "in" else ()
    cut_list = ("number", "piece", "count", "length", "width", "thickness", *both, "mass")
    return [
        *([Heading("To know before you cut", 2), Table(("What", "How it is here"), before, "ll")] if before else []),
        Heading(result.tables["cut_list"].title, 2),
        plain(result.tables["cut_list"], d.reader, cut_list, "rlrrrrrr"[: len(cut_list)]),
        *(batch_cuts(result) if d.batch_size > 1 else []),
        Heading(result.tables["stock"].title, 2),
        plain(result.tables["stock"], d.reader, ("stock", "length", "cuts", "offcut"), "lrlr"),
        Paragraph(f"Saw cuts of {d.show('kerf')} are counted. Also: {'; '.join(also)}."),
    ]


def _welding(result):
    """The seams, and how the body sits in the chamber's wall: what holds it there is welded on before it is cast."""
    mounting = result.tables["mounting"]
    return [
        Heading("Welding", 2),
        Caution(_care(result, "weld")),  # before the work, on its page
        plain(result.tables["welding"], result.design.reader, ("number", "when", "do"), "rll"),
        Heading(mounting.title, 2),
        plain(mounting, result.design.reader, ("what", "how"), "ll"),
    ]


def _care(result, *keys):
    told = zip(result.part("batch").steps, result.tables["care"].rows)
    return " ".join(caution for step, (_, _, caution, _) in told if step.key in keys)


def _block(result, width):
    d, half = result.design, (width - GAP_MM) / 2
    mould = _numbers(
        result,
        (
            "mould_inside_length",
            "mould_inside_width",
            "mould_height",
            "mould_screws",
            "screw_length",
            "fill_line",
            "push_in",
            "cross_bar",
            "back_over_frame",
        ),
    )
    pins = _numbers(
        result,
        (
            "pin_length",
            "pin_proud",
            "pin_count",
            "pins_per_stock",
            "pin_stock_count",
            "knock_out_drill",
            "cleaning_drill",
        ),
    )
    pins = _set(result, ("pin_kind", "pin_stock_length", "pin_depth")) + pins
    wood = result.part("mould").wood
    at = "in layers" if result.part("face").round else "at corners"
    mould.append((f"Screws {at}, in the base", f"{wood.screws_corner}, {wood.screws_base}"))
    if wood.base_screw_m != wood.screw_m:
        most, base = (
            units.show(one, "length", d.reader) for one in (2 * wood.pieces[0].thickness_m, wood.base_screw_m)
        )
        mould.append(("Those in layers under", most))
        mould.append(("Those in the base, at least", base))
    material = result.part("block").material
    plastic = not material.mixes_with_water
    batch = [("Class", material.label)] + _numbers(result, ("dry_mass",))
    if not plastic:
        low, high = result.answers["water"].band
        batch.append(("Water, from", units.show(low, "mass", d.reader)))
        batch.append(("to at most", units.show(high, "mass", d.reader)))
    if d.inlet_position == "end":  # no wire gets past its baffle: weighed, or the pins are buried
        for name, key in (("dry", "dry_mass"), *(() if plastic else (("water", "water_per_mix"),))):
            told = result[key] * (result.part("block").mixes if key == "water_per_mix" else 1) / (1 + d.waste_allowance)
            batch.append((f"Of it into the mould, {name}", units.show(told, "mass", d.reader)))
    batch += _numbers(result, ("burner_mass",))
    batch.append(("Grain, at most", units.show(result.part("block").grain_m, "length", d.reader)))
    batch.append(("Placed within", _lasts(material.working_time_s)))
    bags = _set(result, ("bag_mass",)) + _numbers(result, ("bags",))
    batch += _numbers(result, ("mixes", "dry_per_mix")) + ([] if plastic else _numbers(result, ("water_per_mix",)))
    count = result.part("block").mixes * d.batch_size
    mixing = (
        Table((f"All {d.batch_size} blocks", ""), (*bags, ("Mixes, whole batch", str(count))), "lr")
        if d.batch_size > 1
        else Table(("To buy", ""), tuple(bags), "lr")
    )
    holes = result.tables["holes"]
    unit = units.shown_unit("length", d.reader)
    places = [
        (
            str(number),
            *(units.show(at, "length", d.reader, finer=FINER[d.reader]).removesuffix(f" {unit}") for at in place),
        )
        for number, *place in (row[:3] for row in holes.rows)
    ]
    return [
        Heading("Mould and block"),
        *([Paragraph("Boards of one mould:")] if result.part("boards").moulds > 1 else []),
        plain(
            result.tables["mould"],
            d.reader,
            ("number", "piece", "stock", "count", "length", "width", "thickness"),
            "rllrrrr",
        ),
        *notes_of(result.tables["mould"]),
        *wood_to_buy(result),
        Columns(
            (
                (_view(result, "mould", half, MOULD_MM, "Mould from above: base, frame, body (thick line), pins"),),
                (Table(("Mould", ""), tuple(mould), "lr"),),
            )
        ),
        Columns(
            (
                (Table(("Pins", ""), tuple(pins), "lr"), *_nest(result, half)),
                (Table(("One block", ""), tuple(batch), "lr"), mixing),
            )
        ),
        _view(result, "exploded", width, APART_MM, "Taken apart; the face looks down"),
        *([PageBreak()] if len(places) > MOST_HOLES else []),
        Heading(f"Holes of {d.show('port_diameter')}, from the corner with the triangle on the drawing of the face", 2),
        Table(("No.", f"x, {unit}", f"y, {unit}"), tuple(places), "rrr", 4),
    ]


def _nest(result, width):
    """How boards and sheets are cut; of so many that their numbers cannot be read there is the list alone."""
    boards = len(set(result.part("boards").bought))
    kerf = units.show(result.part("boards").kerf_m, "length", result.design.reader)
    told = f"Pieces by their numbers in the list, saw cut {kerf}"
    try:
        return [_view(result, "nest", width, NEST_MM * min(boards, MOST_NESTS), told)] if boards else []
    except InputError:
        return []


def batch_cuts(result):
    """Every piece of the batch, counted in the bars it is cut from."""
    table = result.tables["batch_cut_list"]
    keys = ("number", "piece", "count", "length", "width", "thickness", "from")
    return [Heading(table.title, 2), plain(table, result.design.reader, keys, "rlrrrrl")]


def notes_of(table, only=()):
    """What is done with pieces besides sawing them to size; of those alone, where some are named."""
    columns = [column.key for column in table.columns]
    told = [(row[columns.index("piece")], row[columns.index("note")]) for row in table.rows]
    told = [(piece, note) for piece, note in told if not only or piece in only]
    return [Paragraph(". ".join(f"{piece[:1].upper()}{piece[1:]}: {note}" for piece, note in told if note) + ".")]


def wood_to_buy(result):
    """Boards and sheets to buy, and what is cut from each."""
    table = result.tables["boards"]
    if not table.rows:
        return []
    keys = ("stock", "length", "width", "cuts")
    return [Heading(table.title, 2), plain(table, result.design.reader, keys, "lrrl")]


def _casting(result):
    """What to do and what to watch from the mould to the oven, each step with its caution below."""
    told = zip(result.part("batch").steps, result.tables["care"].rows, result.tables["days"].rows)
    rows = [(title, do, days[-2], days[-1]) for step, (title, do, *_), days in told if step.key in CASTING]
    return [
        Heading("Pins, casting, stripping, drying, first fire and test"),
        plain(result.tables["pins"], result.design.reader, ("when", "do"), "ll"),
        Table(("Step", "Do", "Watch", "Go on when"), tuple(rows), "llll"),
        Paragraph(f"Level inside, once the body is at its mark: {result['level_inside']}."),
        Caution(_care(result, "cast", "trim")),
    ]


def _train(result):
    """The train as a list."""
    d, train = result.design, result.part("train")
    listed = plain(
        result.tables["gas_train"], d.reader, ("number", "part", "size", "ends", "purpose", "price"), "rllllr"
    )
    return [
        Heading("Gas and air train, in the order of flow"),
        listed,
        Paragraph(
            f"Safety {train.safety_cost:.2f}, to run it {train.needed_cost:.2f}, comfort {train.comfort_cost:.2f}: "
            f"example prices, to be replaced by your shop's. Leak-test every joint with soap water before gas. {LAW}"
        ),
        Paragraph(THREADS[d.sizes]),
    ]


def _train_drawn(result, width):
    """At a plain ratio, as small as its names can be read one under the other: none is made larger in the figure."""
    drawing = result.drawing("train", text_mm=SMALLEST_TEXT_MM * TRAIN_RATIO)
    left, low, right, high = drawing.bounds()
    caption = "Thick: safety; dashed: comfort; beside the line: on a branch, or between the others"
    figure = Figure(drawing, 1.01 * (high - low) / TRAIN_RATIO, caption, scheme=True)
    drawn, told = 1.02 * (right - left) / TRAIN_RATIO, _does(result.tables["gas_train"])
    room, tall = width - GAP_MM - drawn, used_mm((figure,), drawn, 250.0)

    def does(rows, fold=1):
        return Table(("No.", "What it does, how it is fitted"), rows, "rl", fold)

    if room < LEAST_BESIDE_MM:
        return [Heading("Gas and air train, drawn"), figure, does(told, 2)]
    beside = sum(used_mm((does(told[:n]),), room, 250.0) <= tall for n in range(1, len(told)))
    return [
        Heading("Gas and air train, drawn"),
        Columns(((figure,), (does(told[:beside]),)), (drawn, room)),
        does(told[beside:], 2),
    ]


def _does(table):
    """What each part of the train is there for, by the numbers of list and drawing; what several do is told once."""
    why, told = [column.key for column in table.columns].index("why"), {}
    for row in table.rows:
        told.setdefault(row[why], []).append(str(row[0]))
    return tuple((", ".join(numbers), text) for text, numbers in told.items())


def never_lit(result):
    """Whether it must not be lit: by the lighting itself, or for what else stops it."""
    return result.forbids_light or result.part("lighting").waits_W is None


def fires(result):
    """A row for each fire: at what rate, the gas before the jet and the damper's mark; none of what is not lit."""
    if never_lit(result):
        return [(name, "do not light" if name == "Light" else "-", "-", "-") for name in ("Light", "Low", "High")]
    fires, reader = result.part("fires"), result.design.reader
    gas = "line_pressure" if result.part("gas_line").there else "gas_pressure"
    told = (
        ("Light", fires.light, "lighting_mark" if result["lighting_rate"] else "damper_mark_low", ""),
        ("Low", fires.low, "damper_mark_low", "do not turn down"),
        ("High", fires.high, "damper_mark_high", "do not turn up"),
    )
    return [
        (name, not_so, "-", "-")
        if fire is None
        else (
            name,
            units.show(fire.rate_W, "power", reader),
            "-" if fire.gas_Pa is None else units.show(fire.gas_Pa, gas, reader),
            result[mark],
        )
        for name, fire, mark, not_so in told
    ]


def shown_by_fire(result):
    """What the test fire shows, if there is one."""
    if never_lit(result):
        return ()
    stays = STAYS[result.part("fire_test").stays]
    return (*_guard_shown(result), *(one.format(stays, result.part("lighting_card").hand_s) for one in FIRED))


def proved(result):
    """What is proved of seats and switches before any flame: that each switch drops the valve, by the button that opens
    one without a flame."""
    guard, line = result.design.lit_by == "guard", result.part("gas_line").there
    button = "PILOT" if guard else "RESET"
    return (
        *PROVED,
        "Cocks open, no button: no bubble at jet and pilot" if guard else "Cocks open, no RESET: no bubble at the jet",
        f"Firing cock shut, blower alone off, {button}: no valve",
        *((f"Isolating cock shut, no pressure, {button}: no valve",) if line else ()),
    )


def _guard_shown(result):
    """What proves that the guard sees its own flame alone, by RESET with the firing cock shut."""
    several, trial_s = result.design.burner_count > 1, result.part("lighting_card").trial_s
    if result.design.lit_by == "guard":
        alone = "pilot, others" if several else "pilot alone"
        return (f"Firing cock shut, RESET: no pilot, nothing; {alone}: off after {trial_s:.0f} s",)
    return (f"Firing cock shut, {'torch, others' if several else 'torch'} lit: RESET held, off after {trial_s:.0f} s",)


def proofs(result):
    """What proves the jet in the test fire, and with it the pressure to light at, beside what the design says of them;
    nothing of what is not lit so."""
    firing = result.part("firing")
    if never_lit(result) or result["lighting_gas_pressure"] is None:
        return []
    design, proof = result.design, result.part("proof")
    if not proof.by:
        return [("Jet, by what it passes", NOT_OF_BLEND)]
    if proof.time_s is None:
        return [("Jet, by scale", NOT_BY_SCALE)]
    if proof.alone:
        return _proved_alone(result)
    less = ", less pilot's" if design.lit_by == "guard" else ""
    of_it = proof.time_s * proof.share
    burnt = units.show(firing.gas_kg_s * of_it, "mass", design.reader)
    if proof.by != "scale":
        burnt = _metered(result, of_it)
    by_scale = proof.by == "scale"
    how = f"scale to {_division(result)}" if by_scale else "meter" if proof.by == "meter" else "a meter lent for it"
    if proof.each:
        how += f", all lit, this one's own {'cylinder' if by_scale else 'pipe'}{less}"
    elif not by_scale:
        how += f", nothing else on it{less}"
    else:
        how += (", one cylinder" + (less or " alone")) if design.cylinder_count > 1 else less
    how += ", cold steel in the fire" if proof.too_hot == "both" else ""
    return [
        (f"Gas at {proof.counted.upper()} in {_lasts(proof.time_s)}, by {how}", burnt + _pilots(result, proof.time_s)),
        (
            f"{_percent(proof.shows)} off: no {'more ' * (proof.counted == 'high')}HIGH; {_anew(result)}",
            _to_type(result, "found / design"),
        ),
    ]


def _proved_alone(result):
    """By the line's own meter while one of several burns alone, at LIGHT: the needle is set by it, so its gauge tells
    of the jet as well as the watch does."""
    design, proof, meter = result.design, result.part("proof"), result.part("lighting_meter")
    gas = units.show(result["lighting_gas_pressure"], "line_pressure", design.reader)
    took = [f"{meter.passes_s.value * times:.3g} s" for times in meter.shows_times]
    volume = units.show(meter.volume_m3, "gas_volume", design.reader)
    own = f"; on a meter that corrects for heat by itself {took[-1]}" if len(took) > 1 else ""
    with_it = ", pilot on" if design.lit_by == "guard" else ""
    return [
        (f"Gas at LIGHT, alone, {gas}, by meter{with_it}: {volume} in", took[0] + own),
        (
            f"Time / found x root of gauge / found, {_percent(proof.shows)} off: LIGHT only; {_anew(result)}",
            _to_type(result, "that product"),
        ),
    ]


def _anew(result):
    its = "its " if result.design.burner_count > 1 else ""
    most = _percent(result.part("proof").most)
    return f"{its}papers anew: jet proven, its coefficient ({most}: mend jet)"


def _pilots(result, time_s):
    """What the pilot burns beside it meanwhile, as meter or scale shows it."""
    pilot, reader = result.part("pilot"), result.design.reader
    if not pilot.rate_W:
        return ""
    alone = result.part("lighting_meter")
    if alone.pilot_s:
        told = units.show(alone.pilot_m3 * time_s / alone.pilot_s, "gas_volume", reader, 2)
    else:
        told = units.show(pilot.gas_kg_s * time_s, "mass", reader, 2)
    return f", pilot {told}"


def pilot_counted(result):
    """The pilot's gas by a meter, before any main flame: in a small oven it is more than there is room for."""
    alone, pilot, reader = result.part("lighting_meter"), result.part("pilot"), result.design.reader
    light = result.part("lighting_slide").rate_W
    if never_lit(result) or not alone.pilot_s or light is None:
        return []
    time, volume = (
        units.show(one, kind, reader, 2) for one, kind in ((alone.pilot_s, "time"), (alone.pilot_m3, "gas_volume"))
    )
    if alone.corrected_times:
        time += f" ({units.show(alone.pilot_s * alone.corrected_times, 'time', reader, 2)} if it corrects for heat)"
    off = floor(100 * min(result.part("proof").shows * light.value / pilot.rate_W, PILOT_OFF))
    how = f"Pilot alone, no main flame yet: {volume} ({off} % off: papers anew)"
    return [(how, f"{time} = {result.design.show('pilot_rate')}")]


def _division(result):
    return units.show(result.part("proof").scale_kg[1], "division", result.design.reader, 2)


def _percent(share):
    return f"{share:.0%}".replace("%", " %")


def _to_type(result, factor):
    """What makes papers of this burner as it was found: a factor at LIGHT alone would leave LOW and HIGH rich or
    lean."""
    light = result.part("lighting_slide")
    typed = [f"{result.design.jet_discharge_coefficient:g} x {factor}", f"jet {result['jet']}"]
    typed += [light.drill.name] if light.kind == "hole" else []
    measure = "line_pressure" if result.part("gas_line").there else "gas_pressure"
    scale = units.show(result.part("gauges").lit_by_Pa, measure, result.design.reader)
    return ", ".join([*typed, scale])


def _metered(result, of_it):
    """The gas of a time at high fire as a meter counts it, warm as the shop; and as one does that corrects for that by
    itself. What hangs behind a tank's regulators nobody knows, so that is told at the shop's pressure."""
    shop, fed = result.part("shop"), result.part("gas_line")
    line_Pa = shop.pressure_Pa + (result.design.line_pressure if fed.there else 0.0)
    corrected_m3 = result.part("firing").gas_m3_s * of_it * STANDARD_PRESSURE_PA / line_Pa
    told = [units.show(one, "gas_volume", result.design.reader) for one in (corrected_m3 * shop.warmer, corrected_m3)]
    if not shop.corrects:
        return told[0]
    return f"{told[0]}; on a meter that corrects for heat by itself {told[1]}"


def flow_test(result):
    """What proves the air before any gas: how the damper at HIGH and the ports stand, and what the mix pipe's tap shows
    then; where that is too little to read, with part of the ports taped over."""
    proof, ports = result.part("air_proof"), result["port_count"]
    how = f"air alone{f', {proof.shut} of {ports} ports shut with tape' if proof.shut else ''}"
    if proof.flow_Pa is None:
        return how, "too little to read" if result.part("blower").carries else "none: the blower is too weak"
    return how, " to ".join(_pressure(result, one) for one in (proof.flow_Pa.low, proof.flow_Pa.high))


def regulated(result):
    """How high the regulator may stand, where that is what keeps away a fire to which nobody may go."""
    found = result.part("regulated")
    if never_lit(result) or not found.low or result.part("gas_line").there:
        return []
    most = units.show(found.outlet_Pa, "gas_pressure", result.design.reader)
    return [("Regulator, its own gauge, firing cock shut", f"{most} at most")]


def leads_high(result):
    """Whether its card leads to high fire; nobody is asked to read there what he may not go to."""
    return not never_lit(result) and result.part("fires").high is not None


def tap_at_fire(result):
    """The same at high fire, to which nobody goes before the ports are hot."""
    hotter_Pa = result["mixture_pressure_hot"] - result["mixture_pressure"]
    return f"{_pressure(result, result.part('air_proof').fire_Pa + hotter_Pa)} hot"


def _pressure(result, found_Pa):
    return units.tapped(found_Pa, result.design.reader, 2)


def drilled(result):
    """The holes that make the mixture, each told by a drill whose shank just enters it."""
    light = result.part("lighting_slide")
    holes = {"jet": result["jet"]} if result["jet"] else {}
    if light.kind == "hole" and not never_lit(result):
        holes["slide's hole to light"] = light.drill.name
    words = " and ".join(holes)
    return [(f"{words[:1].upper()}{words[1:]}: shank that just enters", ", ".join(holes.values()))] if holes else []


def _record(result):
    """Blank lines to be filled in when it is first fired, beside what the design says; of a batch each burner has its
    own, in the papers that go with it."""
    if result.design.batch_size > 1:
        return []
    how, shows = flow_test(result)
    asked = [
        *drilled(result),
        ("Mass before the oven, and after it about", _show(result, "burner_mass")),
        (
            "Blower, outlet shut: pressure",
            units.show(result.part("blower").curve.pressure_Pa(0.0), "pressure", result.design.reader),
        ),
        *([(f"Mix pipe's tap, HIGH, {how}", shows)] if result.part("air_proof").flow_Pa else []),
        *([("Mix pipe's tap, high fire", tap_at_fire(result))] if leads_high(result) else []),
        *pilot_counted(result),
        *regulated(result),
        *proofs(result),
    ]
    set_to = tuple((*row, "") for row in fires(result))
    shown = (
        f"Leak test: {LEAK[result.design.reader]} of water, 10 min, no drop",
        f"The drill passed all {_show(result, 'port_count')} ports",
        *proved(result),
        *shown_by_fire(result),
    )
    whole = (
        Heading("Test-fire record. Fired by, date:", 2),
        Table(("Fire", "Rate", "Gas before the jet", "Damper", FOUND), set_to, "lrrll"),
        Table((FIRST_OF_ALL, YES), tuple((what, "") for what in shown), "ll", 2),
        Table(("What", "By the design", FOUND), tuple((what, told, "") for what, told in asked), "lll"),
    )
    return [Columns((whole,))]  # on one page


def _days(result):
    schedule, steps, days = result.part("schedule"), result.part("batch").steps, result.tables["days"]

    def starts(moment):
        return (
            f"{moment:%a %d %b, %H:%M}"
            if schedule.dated
            else f"day {(moment.date() - schedule.first).days + 1}, {moment:%H:%M}"
        )

    rows = []
    for row, step in zip(days.rows, steps):
        if never_lit(result) and step.key in ("fire", "test"):
            rows.append((row[0], row[1], row[2], "-"))
            continue
        heats = step.spells if step.key == "fire" else ()
        if len(heats) < 2:
            rows.append((row[0], row[1], starts(step.start), _lasts(row[3])))
        for n, (start, end) in enumerate(heats if len(heats) > 1 else (), 1):
            told = f"First fire, heat {n} of {len(heats)}"
            rows.append((row[0] if n == 1 else "", told, starts(start), _lasts((end - start).total_seconds())))
    drying = result.tables["drying"]
    stages = plain(drying, result.design.reader, ("stage", "ramp", "temperature", "hold", "heat"), "lrrrl")
    table = Table(("", "Step", "Starts", "Takes"), tuple(rows), "rllr")
    steam = Caution(_care(result, "oven"), "Steam")
    if max(len(rows), len(drying.rows)) > MOST_BESIDE:
        return [Heading(days.title), table, stages, steam]
    return [Heading(days.title), Columns(((table,), (stages, steam)), (1.1, 1.0))]


def _gas(result, width):
    d = result.design
    numbers = _numbers(result, ("gas_flow", "air_flow", "jet", "jet_gas_pressure", "mixture_pressure"))
    card = result.tables.get("regulator_card")
    left = (Table(("Gas and air", ""), tuple(numbers), "lr"),)
    right = (
        (
            Table(
                tuple(column.label for column in card.columns),
                tuple(
                    tuple(units.show(cell, column.dimension, d.reader) for cell, column in zip(row, card.columns))
                    for row in card.rows[:MOST_CARD]
                ),
                "rrrl",
            ),
        )
        if card and card.rows
        else (Paragraph("Set gas and air by the flame: clear blue roots, no long soft tail."),)
    )
    first, care = "Before gas: ", _care(result, "fire")
    care = care.removeprefix(first)[:1].upper() + care.removeprefix(first)[1:]  # the box's title says it
    return [
        Heading("Gas and air"),
        Columns((left, right), (1.0, 1.3)),
        Columns(
            (
                (
                    _view(
                        result, "slide", (width - GAP_MM) / 2, SLIDE_MM, "Slide of the damper, shut; bore: broken line"
                    ),
                ),
                (
                    Paragraph(
                        "The damper is a flat plate that slides across the air pipe, behind the blower, of the mix "
                        "pipe's size, in the guide of a gate that is bought. Shut, its straight edge at the top "
                        "touches the bore. Drawn back to a mark, it leaves the gap that is told: "
                        "scratch each on it before it is built in."
                    ),
                    Table(("Mark", "Damper"), tuple((row[0], row[-1]) for row in fires(result)), "ll"),
                ),
            ),
            (1.0, 1.0),
        ),
        Caution(f"{care} {LAW}", first.rstrip(": ")),
    ]


def _lighting(result):
    """Of one that is lit its rows tell all; why another is not stands over them."""
    card, stops = result.tables["lighting_card"], _not_lit_for(result)
    *names, source = (column.label for column in card.columns)
    return [
        Heading(card.title),
        *(Paragraph(why, bold=True) for why in stops[:1]),
        Table(tuple(names), tuple((when, do) for when, do, _ in card.rows), "ll", least=WHEN_MM),
        Paragraph(f"{source}. " + _tags(card.rows)),
    ]


def _not_lit_for(result):
    """What forbids to light it, the rate to light at first; nothing where it is lit."""
    stops = [check for check in result.ranked() if check.verdict == "stop" and not check.declared.lit]
    if result.checks["lighting"].verdict == "stop":
        return [f"{MARKS['stop']}: {result['light_up_advice']}"]
    return [NO_FIRE + check.text for check in stops]


def _tags(rows):
    """What the steps rest on, each once, practice last; the page tells it step by step."""
    parts = list(dict.fromkeys(part for _, _, source in rows for part in source.split("; ")))
    whole = [part for part in parts if not part.endswith(PRACTICE)]
    whole = [part for part in whole if not any(part in other for other in whole if other != part)]
    return "; ".join((*whole, *([PRACTICE] if any(part.endswith(PRACTICE) for part in parts) else []))) + "."


def _faults(result):
    """What asks for a change, in full; what must be known by name; what is good is counted."""
    ordered = result.ranked()
    bad = tuple((MARKS[check.verdict], check.label, check.text) for check in ordered if check.fault)
    notes, before = ([check.label for check in some] for some in _noted(result))
    carded = sum(check.verdict == "note" and check.key in ON_CARD for check in ordered)
    good, rest = sum(check.verdict == "good" for check in ordered), bad or notes or before or carded
    on_card = f" On the lighting card: {carded} note{'s' if carded > 1 else ''} more." if carded else ""
    return [
        Heading("Checks"),
        *([Table(("Verdict", "What", "Why"), bad, "lll")] if bad else []),
        *([Paragraph(f"To know before you cut, under Steel: {'; '.join(before)}.")] if before else []),
        *(
            [Paragraph(f"To know before the first fire, behind the lighting card: {'; '.join(notes)}.")]
            if notes
            else []
        ),
        Paragraph(f"Good: {'the' if rest else 'all'} {good}{' others' if rest else ''}.{on_card}"),
    ]


def _noted(result):
    """Notes to know before the first fire, and those of the bench, which are wanted before anything is cut."""
    notes = [check for check in result.ranked() if check.verdict == "note" and check.key not in ON_CARD]
    return [check for check in notes if check.room != "make"], [check for check in notes if check.room == "make"]


def _notes(result):
    """What is so on many hot forges and must be known, in full."""
    notes = tuple((check.label, check.text) for check in _noted(result)[0])
    return (
        [Heading("To know before the first fire", 2), Table(("What", "How it is here"), notes, "ll")] if notes else []
    )
