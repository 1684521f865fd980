"""What is shown in the room Make: one function a table or chart, named <key>_table or <key>_chart.

The drawings of the room are in templates.py.
"""

from collections import Counter
from itertools import groupby
from math import ceil

from ..catalogue.sentences import written
from ..making import batch as making_batch
from ..making import mould as making_mould
from ..making.body import Piece
from ..making.days import moment
from ..making.mounting import BOLTS, SIZES
from ..making.mounting import Sizes as Angle
from ..making.refractory import castable, castable_names
from ..making.stock import NOISE_M, WOOD_KERF_M, sheets_for
from ..parts.baffle_sheet import BaffleSheet
from ..parts.batch import Batch
from ..parts.bench_hours import BenchHours
from ..parts.block import Block
from ..parts.blower import Blower
from ..parts.boards import Boards
from ..parts.body import Body
from ..parts.cost import Cost
from ..parts.end_inlet import EndInlet
from ..parts.face import Face
from ..parts.fires import Fires
from ..parts.gas import Gas
from ..parts.gas_line import GasLine
from ..parts.lighting import Lighting
from ..parts.mould import Mould
from ..parts.mounting import Mounting
from ..parts.pins import Pins
from ..parts.purchases import Purchases
from ..parts.schedule import Schedule
from ..parts.selling import Selling
from ..parts.standing import Standing
from ..parts.steel import Steel, bought_as
from ..parts.stock import Stock
from ..parts.tools import Tools
from ..parts.train import Train
from ..parts.welding import Welding
from .train import called, sized
from .view import Plot, Rows, Say

CAPS = ("end cap", "face disc", "back disc")
LEAST_BATCHES = 10  # how far the chart goes at least
MOST_STEPS = 8  # of the chart above a dozen: for time, each asks a calendar
MOST_DAYS = 200  # rows of the calendar of the batch
MOST_MORE = {"moulds": 3, "oven_places": 3, "test_stands": 2, "hands": 1}  # of each, what is tried


def _millimetres(*sizes_m: float) -> str:
    """Sizes in mm, whatever the reader's units."""
    return " x ".join(f"{size * 1000:.1f}" for size in sizes_m)


def _sizes(piece: Piece) -> tuple:
    sizes = (piece.length_m, piece.width_m, piece.thickness_m)
    return (*sizes, _millimetres(*sizes))


def cut_list_table(
    body: Body,
    steel: Steel,
    mounting: Mounting,
    baffle_sheet: BaffleSheet,
    caps: str,
    inlet: str,
    inlet_position: str,
    inlets: int,
    baffle_holes: int,
    baffle_thickness: float,
    sizes: str,
    say: Say,
) -> tuple:
    """Every piece of steel in the order it is cut: body, caps, bracket, inlet pipe, baffle."""
    rows = []
    bored = ("end cap",) if inlet_position == "end" else ("body tube", "back plate", "back disc")
    ripped = [
        piece for piece in (*steel.body.pieces, *mounting.flats) if not body.round and _ripped(piece, body, sizes)
    ]
    for piece in (*steel.body.pieces, *mounting.flats, steel.angle, steel.inlet_piece):
        name = say(piece.name, pipe=inlet)
        if piece is steel.angle:
            rows.append(_angle_row(piece, body, sizes, say))
            continue
        way = caps if piece.name in CAPS else inlet_position if piece is steel.inlet_piece else ""
        where = say(f"{piece.name}.where" + (f".{way}" if way else ""))
        notes = [say(f"{piece.name}.note" + (f".{body.kind}" if piece.name == "end cap" else ""))]
        if piece.name in bored:
            notes.append(say(f"hole.{piece.name}" + (".two" if inlets == 2 else "")))
        if piece in ripped:
            notes.append(say("rip"))
        note = "; ".join(filter(None, notes))
        rows.append((name, piece.count, *_sizes(piece), piece.mass_kg * piece.count, where, note))
    sheet = baffle_sheet.sheet
    if sheet:
        sizes = (sheet.blank_length_m, sheet.blank_width_m, baffle_thickness)
        where, note = say("baffle.where"), say("baffle.note", holes=baffle_holes)
        rows.append((say("baffle"), 1, *sizes, _millimetres(*sizes), sheet.mass_kg, where, note))
    return tuple((number, *row) for number, row in enumerate(rows, 1))


def _angle_row(piece: Piece, body: Body, sizes: str, say: Say) -> tuple:
    """The angles that carry it, with their slots."""
    case = "round" if body.round else "box"
    return (
        say(piece.name),
        piece.count,
        *_sizes(piece),
        piece.mass_kg * piece.count,
        say(f"bracket.where.{case}"),
        say(f"bracket.note.{case}", **_slots(SIZES[sizes], piece)),
    )


def _slots(angle: Angle, piece: Piece) -> dict:
    return {
        "leg": angle.leg_m,
        "thick": angle.thick_m,
        "length": piece.length_m,
        "wide": angle.slot_m,
        "long": angle.slot_length_m,
        "in": piece.length_m / 4,
        "out": angle.out_m,
    }


def _ripped(piece: Piece, body: Body, sizes: str) -> bool:
    """Is it cut from flat that is sold wider than it?"""
    bought = bought_as(piece, body, sizes)
    return bought.case in ("flat", "rare") and bought.slots["width"] - piece.width_m > NOISE_M


def batch_cut_list_table(
    stock: Stock,
    steel: Steel,
    mounting: Mounting,
    baffle_sheet: BaffleSheet,
    inlet: str,
    baffle_thickness: float,
    batch_size: int,
    say: Say,
) -> Rows:
    """Every piece of steel of the batch, counted in the bars that it is cut from."""
    pieces = {piece.name: piece for piece in (*steel.body.pieces, *mounting.flats, steel.angle)}
    rows = []
    for bars in stock.bars:
        counted = Counter((cut, bar.stock_m) for bar in bars.plan.bars for cut, _ in bar.cuts)
        for name in dict.fromkeys(cut for cut, _ in counted):
            piece, bought = pieces[name], say(bars.bought_as.case, **bars.bought_as.slots)
            cut_from = {length: count for (cut, length), count in counted.items() if cut == name}
            count = sum(cut_from.values())
            where = ", ".join(say("from", count=n, stock=bought, length=length) for length, n in cut_from.items())
            rows.append((say(name), count, *_sizes(piece)[:3], piece.mass_kg * count, where))
    pipe = steel.inlet_piece
    count = pipe.count * batch_size
    nipples = say("nipples", stock=stock.nipples.slots["stock"])
    rows.append((say(pipe.name, pipe=inlet), count, *_sizes(pipe)[:3], pipe.mass_kg * count, nipples))
    sheet = baffle_sheet.sheet
    if sheet:
        sizes = (sheet.blank_length_m, sheet.blank_width_m, baffle_thickness)
        rows.append((say("baffle"), batch_size, *sizes, sheet.mass_kg * batch_size, say("sheet")))
    numbered = tuple((number, *row) for number, row in enumerate(rows, 1))
    return Rows(numbered, "one" if batch_size == 1 else "all", {"count": batch_size})


def stock_table(stock: Stock, batch_size: int, say: Say) -> Rows:
    rows = tuple(
        (
            say(bars.bought_as.case, **bars.bought_as.slots),
            bar.stock_m,
            ", ".join(
                say(
                    "cut" if len(list(alike)) == 1 else "cuts",
                    count=bar.cuts.count(cut),
                    length=cut[1],
                    piece=say(cut[0]),
                )
                for cut, alike in groupby(bar.cuts)
            ),
            bar.offcut_m,
            bars.kg_m * bar.stock_m,
        )
        for bars in stock.bars
        for bar in bars.plan.bars
    )
    return Rows(rows, "one" if batch_size == 1 else "all", {"count": batch_size})


def welding_table(
    body: Body,
    steel: Steel,
    welding: Welding,
    baffle_sheet: BaffleSheet,
    mounting: Mounting,
    baffle_bend_angle: float,
    say: Say,
) -> tuple:
    """The seams and what belongs to them, in the order of the work."""
    cap = {"bevel": welding.bevel_m, "seam": welding.cap_seam_m, "tacks": welding.cap_tacks}
    edge = "bevelled" if welding.bevel_m else "square"
    inlet = "inlet" if steel.inlet_spacing_m is None else "inlets"
    steps = [("inlet", inlet, {"seam": welding.inlet_seam_m, "clear": steel.inlet_clearance_m})]
    if welding.long_tacks:
        long = {"tacks": welding.long_tacks, "seam": steel.tube_length_m, "bevel": welding.long_bevel_m}
        steps.insert(0, ("long", "long.bevelled" if welding.long_bevel_m else "long", long))
    disc = "_disc" if body.round else ""
    steps.append((f"first{disc}", edge, cap))
    if baffle_sheet.sheet:  # into a round body after its back disc, into a box before both caps
        at = len(steps) if body.round else -1
        flat = "" if body.round or baffle_bend_angle else ".flat"
        steps.insert(at, ("baffle", f"baffle{disc}{flat}", {"stand": max(baffle_sheet.stand_m, 0.0)}))
    straight = ("straight", f"straight.{'round' if body.round else 'window'}", {})
    steps.append((f"second{disc}", edge, cap))
    over_m = mounting.bracket_m + mounting.angle.leg_m - body.depth_m
    over = mounting.way == "behind" and over_m > NOISE_M
    bracket = {"bracket": mounting.bracket_m, "flat": mounting.flat_m, "over": over_m}
    steps.insert(1 if body.round else len(steps), straight)
    steps += [
        ("bracket", f"bracket.do.{'over' if over else mounting.way}", bracket),
        ("flush", "flush", {"high": welding.flush_m, "side": welding.side_m}),
        ("blank", "blank", {"length": body.length_m, "width": body.width_m, "setback": body.setback_m}),
    ]
    return tuple(
        (number, say(f"{name}.when"), say(words if ".do" in words else f"{words}.do", **slots))
        for number, (name, words, slots) in enumerate(steps, 1)
    )


def mounting_table(
    mounting: Mounting, standing: Standing, steel: Steel, face: Face, block: Block, burner_count: int, say: Say
) -> tuple:
    """How block and box sit in the chamber's wall."""
    m = mounting
    case, angle = "round" if face.round else "box", steel.angle
    hole = {"length": m.hole_length_m, "width": m.hole_width_m, "gap": m.gap_m, "growth": m.growth_m}
    depth = {"back": m.back_m, "lining": m.lining_m, "deep": abs(m.deep_m)}
    bracket = {"bracket": m.bracket_m, "mass": block.burner_kg, "count": angle.count, **_slots(m.angle, angle)}
    bolts = {"count": BOLTS, "bolt": m.angle.bolt, "bolt_length": m.bolt_m, "spacer": m.spacer_m, "gasket": m.gasket_m}
    told = [
        say(f"hole.{case}", **hole),
        say("hole.keep" if burner_count == 1 else "hole.keep.several", keep=standing.keep_m),
    ]
    if standing.at.fits and standing.at.behind_m > NOISE_M:
        told.append(say("hole.over", behind=standing.at.behind_m))
    return (
        (say("hole"), " ".join(told)),
        (say("depth"), say("depth.in" if m.deep_m >= 0 else "depth.out", **depth)),
        (say("bracket"), say(f"bracket.{case}", **bracket)),
        (say("bolts"), say("bolts.off" if m.spacer_m > 0 else "bolts.near", **bolts)),
        (say("joint"), say("joint.how", gasket=m.gasket_m)),
    )


def mould_table(mould: Mould, steel: Steel, end_inlet: EndInlet, sizes: str, say: Say) -> tuple:
    def note(piece):
        if piece.name == "mould layer":
            return say("mould layer.note", kerf=WOOD_KERF_M[sizes])
        if piece.name == "mould end" and (end_inlet.over_mould_m or 0.0) < 0:
            return say("mould end.note.notch", wide=steel.inlet_pipe.od_m, deep=-end_inlet.over_mould_m)
        if piece.name == "base board":
            if 0 < mould.base_board_m < piece.width_m - NOISE_M:
                return say("base board.note.wide")
            if not mould.wood.screws_end:
                return say("base board.note.round")
            return say("base board.note", side=mould.wood.screws_side, end=mould.wood.screws_end)
        return say(f"{piece.name}.note" + (f".{mould.frame}" if piece.name in ("mould side", "mould end") else ""))

    side_m = making_mould.CROSS_BAR_M[sizes]
    frame_m = mould.wood.pieces[0].length_m
    bar = Piece("cross-bar", "", frame_m, side_m, side_m, making_mould.CROSS_BARS, 0.0)
    return tuple(
        (number, say(piece.name), piece.stock or say("cross-bar.of"), piece.count, *_sizes(piece), note(piece))
        for number, piece in enumerate((*mould.wood.pieces, bar), 1)
    )


def pins_table(face: Face, pins: Pins, block: Block, pin_kind: str, pin_depth: float, say: Say) -> tuple:
    """What to do with the pins from the bench to the last pull, by what they are made of; first where none is sold."""
    size, larger = face.port_diameter_m, pins.bought_m
    slots = {
        "made": {"depth": pin_depth, "length": pins.length_m},
        "base": {"depth": pin_depth, "drill": pins.knock_out_drill},
        "set": {"proud": pins.proud_m},
        "free": {"drill": pins.knock_out_drill},
        "out": {"depth": pin_depth, "drill": pins.cleaning_drill},
    }
    own = ("made", "free", "out")
    rows = tuple(
        (say(f"{step}.when"), say(f"{step}.do.{pin_kind}" if step in own else f"{step}.do", **values))
        for step, values in slots.items()
    )
    odd = [(say("odd.when"), say(f"odd.{pin_kind}", size=size, larger=larger))] if larger > size + NOISE_M else []
    heavy = block.turned_kg > making_mould.LIFT_KG
    lift = [(say("lift.when"), say("lift.do", mass=block.turned_kg, one=making_mould.LIFT_KG))] if heavy else []
    at = list(slots).index("free")
    return (*odd, *rows[:at], *lift, *rows[at:])


def base_drilling_table(face: Face, mould: Mould, pins: Pins, pin_depth: float) -> Rows:
    plan = making_mould.drilling_plan(
        ports=face.ports,
        port_diameter_m=face.port_diameter_m,
        pin_depth_m=pin_depth,
        base_length_m=mould.wood.base_length_m,
        base_width_m=mould.wood.base_width_m,
    )
    rows = tuple(
        (hole.number, hole.x_m, hole.y_m, hole.diameter_m, hole.depth_m, pins.knock_out_drill) for hole in plan
    )
    return Rows(rows, "base", {"length": mould.wood.base_length_m, "width": mould.wood.base_width_m})


def refractories_table(units: str) -> tuple:
    return tuple(
        (
            one.label,
            one.density_low_kg_m3,
            one.density_high_kg_m3,
            one.water_low,
            one.water_high,
            one.service_temp_K,
            one.working_time_s,
            written(one.source, {}, units),
        )
        for one in map(castable, castable_names())
    )


def boards_table(boards: Boards, say: Say) -> Rows:
    """Each board or sheet with its pieces, equal ones counted."""
    rows = []
    for bought in boards.bought:
        pieces = Counter(
            (cut.name, max(cut.length_m, cut.width_m), min(cut.length_m, cut.width_m)) for cut in bought.cuts
        )
        cuts = ", ".join(
            say("cut", count=count, piece=say(name), length=length, width=width)
            for (name, length, width), count in pieces.items()
        )
        rows.append((bought.stock, bought.length_m, bought.width_m, cuts, bought.left_over))
    return Rows(tuple(rows), "one" if boards.moulds == 1 else "all", {"count": boards.moulds})


def batch_days_table(batch: Batch, schedule: Schedule, lighting: Lighting, stopped: bool, say: Say) -> tuple:
    """A row for each day on which something begins: what hands do, what goes into the oven, what is fired; nothing is
    fired of what must not be lit.

    Where there are several pairs of hands it says which does what.
    """
    left_out = {"air", "fire", "test"} if stopped or lighting.waits_W is None else {"air"}
    heat: Counter = Counter()

    def clock(minutes):
        return f"{moment(schedule.first, minutes):%H:%M}"

    def told(job):
        slots = {"time": clock(job.start), "burner": numbers(job.burners)}
        if job.step == "fire":
            heat[job.burners] += 1
            slots |= {"heat": heat[job.burners], "heats": len(batch.work.heats)}
        return say(job.step, **slots)

    by_day: dict[int, list] = {}
    for job in batch.plan.jobs:
        if job.step not in left_out:
            by_day.setdefault(job.start // making_batch.DAY_MIN, []).append(job)

    def of_pairs(jobs, steps):
        listed: dict[int, list[str]] = {}
        for job in jobs:
            if job.step in steps:
                listed.setdefault(job.pair, []).append(told(job))
        return listed

    def by_hand(jobs):
        listed = of_pairs(jobs, making_batch.BY_HAND)
        if batch.means.hands == 1:
            return ", ".join(listed.get(1, ()))
        return "; ".join(say("pair", pair=pair, jobs=", ".join(words)) for pair, words in sorted(listed.items()))

    def begins(jobs, step):
        return "; ".join(told(job) for job in jobs if job.step == step)

    def fires(jobs):
        listed = of_pairs(jobs, making_batch.ATTENDED)
        if batch.means.hands == 1:
            return "; ".join(listed.get(1, ()))
        return "; ".join(say("stands", jobs="; ".join(words), pair=pair) for pair, words in listed.items())

    rows = [
        (_day(schedule, day, say), by_hand(jobs), begins(jobs, "oven"), fires(jobs))
        for day, jobs in list(by_day.items())[:MOST_DAYS]
    ]
    if len(by_day) > MOST_DAYS:
        rows.append((say("more", days=batch.days), "", "", ""))
    return tuple(rows)


def castings_table(batch: Batch, schedule: Schedule, block: Block, bag_mass: float, say: Say) -> Rows:
    """A row for each day on which blocks are cast: by whom, from how many mixes, and how many bags are open by then."""
    by_day: dict[int, list] = {}
    begun = set()
    for job in batch.plan.jobs:
        if job.step == "cast" and job.burners not in begun:  # not what goes on from the day before
            begun.add(job.burners)
            by_day.setdefault(job.start // making_batch.DAY_MIN, []).append(job)
    rows, cast = [], 0
    for day, jobs in by_day.items():
        by_pair: dict[int, list] = {}
        for job in jobs:
            by_pair.setdefault(job.pair, []).append(*job.burners)
        cast += len(jobs)
        blocks = "; ".join(
            numbers(mine) if batch.means.hands == 1 else say("blocks", burners=numbers(mine), pair=pair)
            for pair, mine in by_pair.items()
        )
        bags = ceil(cast * block.dry_kg.value / bag_mass - 1e-9)
        rows.append((_day(schedule, day, say), blocks, len(jobs) * block.mixes, len(jobs) * block.dry_kg.value, bags))
    if len(rows) > MOST_DAYS:
        rows = [
            *rows[:MOST_DAYS],
            (say("more", castings=cast), "", block.mixes * cast, block.dry_kg.value * cast, bags),
        ]
    slots = {"mixes": block.mixes, "dry": block.dry_per_mix_kg, "water": block.water_per_mix_kg}
    case = ("one" if block.mixes == 1 else "more") if block.material.mixes_with_water else "dry"
    return Rows(tuple(rows), case, slots)


def _day(schedule: Schedule, day: int, say: Say) -> str:
    date = moment(schedule.first, day * making_batch.DAY_MIN)
    return f"{date:%a %Y-%m-%d}" if schedule.dated else say("day", number=day + 1, weekday=f"{date:%a}")


def numbers(some: tuple[int, ...]) -> str:
    return ", ".join(map(str, some))


def one_more_table(batch: Batch, say: Say) -> tuple:
    """What more of each thing saves, one by one as long as it saves anything; above a dozen the first of each, for
    time."""
    rows = []
    for which, most in MOST_MORE.items():
        before = batch.days
        for more in range(1, (most if batch.burners <= making_batch.DOZEN else 1) + 1):
            days = making_batch.one_more(batch.burners, batch.work, batch.means, which, more).days
            rows.append((say(which, more=more), getattr(batch.means, which) + more, days, before - days))
            if days == before:
                break
            before = days
    return tuple(rows)


def cost_lines_table(cost: Cost, say: Say) -> tuple:
    return tuple(
        (
            say(line.name.case, **line.name.slots),
            say(f"need.{line.unit}", need=line.need),
            line.packs,
            line.used_cost,
            line.batch_cost,
        )
        for line in cost.lines
    )


def shopping_table(
    cost: Cost,
    stock: Stock,
    baffle_sheet: BaffleSheet,
    boards: Boards,
    mounting: Mounting,
    train: Train,
    face: Face,
    pins: Pins,
    block: Block,
    blower: Blower,
    gas: Gas,
    gas_line: GasLine,
    lighting: Lighting,
    fires: Fires,
    baffle_thickness: float,
    bag_mass: float,
    pin_stock_length: float,
    kerf: float,
    sizes: str,
    batch_size: int,
    burner_count: int,
    stopped: bool,
    say: Say,
) -> Rows:
    """Every cost line as it is sold; the train's part by part. The prices are those of the cost lines."""
    unlit = stopped or lighting.waits_W is None
    wood = Counter((one.stock, one.length_m, one.width_m) for one in boards.bought)
    sheet, entries = baffle_sheet.sheet, cost.entries(train, batch_size)
    nest = _nest(batch_size, sheet, kerf, sizes) if sheet and batch_size > 1 else {}
    fixing = {
        "count": BOLTS,
        "nuts": 2 * BOLTS,
        "bolt": mounting.angle.bolt,
        "bolt_length": mounting.bolt_m,
        "gasket": mounting.gasket_m,
        "length": mounting.paper_length_m,
        "width": mounting.paper_width_m,
    }
    sold = {
        "sundries": lambda: say("sundries.sold", **fixing),
        "nipple": lambda: say("nipple.sold", length=stock.nipples.slots["stock"]),
        "baffle": lambda: say(
            "baffle.sold.nest" if nest else "baffle.sold",
            length=sheet.blank_length_m,
            width=sheet.blank_width_m,
            thickness=baffle_thickness,
            **nest,
        ),
        "bag": lambda: say("bag.sold", name=block.material.label, grain=block.grain_m, mass=bag_mass),
        "pins": lambda: say(
            "pins.odd" if pins.bought_m > face.port_diameter_m + NOISE_M else "pins.sold",
            diameter=pins.bought_m,
            length=pin_stock_length,
            size=face.port_diameter_m,
        ),
        "mould": lambda: (
            (say("boards_in_all") if any(entry.key == "mould" and entry.count > 1 for entry in entries) else "")
            + ", ".join(say("board", count=n, stock=one, length=x, width=y) for (one, x, y), n in wood.items())
            if wood
            else say("no_boards")
        ),
        "blower": lambda: say("blower.sold", pressure=blower.whole.pressure_Pa(0.0), flow=blower.whole.last_m3_s),
        "first_fire": lambda: (
            say("first_fire.sold.unlit")
            if stopped
            else say("first_fire.sold", mass=batch_size * entry.line.need)
            if not gas_line.metered
            else say("first_fire.sold.line", volume=batch_size * entry.line.need * gas.gross_J_kg / gas.gross_J_m3)
        ),
    }
    for bars in stock.bars:
        lengths = Counter(bar.stock_m for bar in bars.plan.bars)
        words = ", ".join(say("bars", count=count, length=length) for length, count in lengths.items())
        sold[bars.key] = lambda words=words: words
    rows = []
    for entry in entries:
        if entry.part:
            rows.append(
                (
                    called(entry.part, say),
                    sized(entry.part, say, unlit, fires.low is not None),
                    entry.count,
                    entry.price,
                )
            )
        else:
            words = sold[entry.key]() if entry.key in sold else say(f"{entry.key}.sold")
            rows.append((say(entry.line.name.case, **entry.line.name.slots), words, entry.count, entry.price))
    case = "all" if batch_size >= burner_count else "fewer"
    return Rows(tuple(rows), case, {"count": batch_size, "burners": burner_count})


def _nest(count: int, sheet: BaffleSheet, kerf_m: float, sizes: str) -> dict:
    """The sheets that so many blanks are cut from; none where one is larger than every sheet."""
    nest = sheets_for(count, sheet.blank_length_m, sheet.blank_width_m, kerf_m, sizes)
    return {"sheets": nest[0], "long": nest[1], "wide": nest[2]} if nest else {}


def tools_table(tools: Tools, body: Body, say: Say) -> tuple:
    def sold(tool):
        own = "_round" if tool.key in ("test_plate", "cutter", "drills", "screws", "clamps") and body.round else ""
        slots = dict(tool.slots)
        if tool.key == "drills":
            baffle, jet, damper = slots.pop("baffle"), slots["jet"], ", ".join(slots["damper"])
            slots["more"] = (
                (say("drills.baffle", size=baffle) if baffle else "")
                + (say("drills.jet", drill=jet) if jet else "")
                + (say("drills.damper", sizes=damper) if damper else "")
            )
        if tool.key == "test_plate":
            slots["caps"] = say("test_plate.caps" + (".2" if slots["caps"] > 1 else ""), pipe=slots.pop("pipe"))
        return say(f"{tool.key}.sold{own}", **slots)

    return tuple((say(tool.key), sold(tool), tool.count, tool.price) for tool in tools.tools)


def selling_lines_table(
    selling: Selling, batch_size: int, hour_value: float, overhead: float, scrap_rate: float, profit: float, say: Say
) -> Rows:
    """How cost and price of one that is sold come about, so that they can be added up by hand."""
    mine, all_in = selling.mine, selling.mine.all_in
    rows = (
        (say("kept"), mine.kept),
        (say("mould", hours=mine.mould_hours, worth=hour_value), all_in.kept - mine.kept),
        (say("lost"), all_in.material),
        (say("work", hours=mine.hours - mine.mould_hours, worth=hour_value), all_in.work),
        (say("scrap", scrap=100 * scrap_rate, passed=100 - 100 * scrap_rate), all_in.failed),
        (say("overhead", share=100 * overhead), all_in.overhead),
        (say("cost"), mine.cost),
        (say("profit", share=100 * profit), mine.price - mine.cost),
        (say("price"), mine.price),
    )
    return Rows(rows, "one" if batch_size == 1 else "all", {"count": batch_size})


def quantity_breaks_table(selling: Selling, bought_price: float, say: Say) -> tuple:
    return tuple(
        (
            each.burners,
            each.material,
            each.hours * 3600,
            each.cost,
            each.price,
            bought_price,
            say(each.way),
        )
        for each in selling.breaks
    )


def hours_table(cost: Cost, say: Say) -> tuple:
    return tuple((say(step), hours * 3600) for step, hours in cost.hours.items())


def cost_by_batch_chart(
    cost: Cost,
    purchases: Purchases,
    bench_hours: BenchHours,
    batch_size: int,
    bought_price: float,
    hour_value: float,
) -> Plot:
    most, dozen = max(LEAST_BATCHES, batch_size), making_batch.DOZEN
    steps = range(most, dozen, -max(1, ceil((most - dozen) / MOST_STEPS)))  # all up to a dozen, then some, the last too
    sizes = (*range(1, min(most, dozen) + 1), *reversed(steps))

    def each_of(size):
        """(cost, and with the work paid) of one of so many."""
        lines, (_, hours) = purchases.of(size), bench_hours.of(size)
        cost_each = sum(line.batch_cost for line in lines) / size
        return cost_each, cost_each + hours * hour_value

    costs, paid = zip(*map(each_of, sizes))
    cheaper = next((size for size, each in zip(sizes, paid) if each <= bought_price), None)
    if cheaper:  # of those that were left out as well
        before = max((size for size in sizes if size < cheaper), default=0)
        cheaper = next(size for size in range(before + 1, cheaper + 1) if each_of(size)[1] <= bought_price)
    return Plot(
        x=(1, most),
        y=(0, 1.1 * max(*paid, bought_price, 1.0)),
        series={
            "cost": (sizes, costs),
            "paid": (sizes, paid),
            "bought": ((1, most), (bought_price, bought_price)),
        },
        mark=(batch_size, cost.with_work_each),
        case="make" if cheaper else "buy",
        slots={"cheaper": cheaper, "most": most},
    )
