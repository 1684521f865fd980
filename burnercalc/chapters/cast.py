"""The block: mould, pins, refractory and water to weigh out, the mass of the burner, and what crooked pins cost."""

from functools import lru_cache
from math import pi, sqrt, tan

from ..making import mould as wood
from ..making import refractory as mix
from ..making import tolerances
from ..making.stock import INCH_M
from ..physics.drills import nearest_drills
from ..result import Column, Table
from ..units import show
from .make import PRACTICE, TAKE_OFF, millimetres

GROUP = "make"

CLASSES = "generic classes of refractory, data/castables.csv; the bag's own data sheet stands over them"
SAMPLING = "geometry of leaning pins, sampled with a fixed seed"

# Common practice; metres.
PIN_CLEAR_M = (0.0, 0.25 * INCH_M)  # pin to mould wall: stop below, good from
CLOSEST_PACKING = pi / sqrt(12)  # share of a plane that equal circles can cover: Thue 1890 (published)
FLOOR_M = 2e-3  # wood left under the pins, so that the drill does not come through


def solve(d, r):
    _mould(d, r)
    _pins(d, r)
    _refractory(d, r)
    _tolerances(d, r)
    r.add_table(_mould_table(r))
    r.add_table(_drilling_table(d, r))
    r.add_table(_class_table())


def _mould(d, r):
    common = dict(
        mould_clearance_m=d.mould_clearance,
        block_thickness_m=d.block_thickness,
        pin_depth_m=d.pin_depth,
        frame=d.mould_board,
        base=d.mould_base,
    )
    if r.round:
        r.mould = wood.round_mould(body_diameter_m=d.body_width, **common)
    else:
        r.mould = wood.mould(body_length_m=d.body_length, body_width_m=d.body_width, **common)
    for key, value, label, meaning in (
        (
            "mould_inside_length",
            r.mould.inside_length_m,
            "Mould inside, long way",
            "Inside length of the mould; a round one: the hole.",
        ),
        (
            "mould_inside_width",
            r.mould.inside_width_m,
            "Mould inside, across",
            "Inside width of the mould; a round one: the hole.",
        ),
    ):
        r.answer(
            key,
            value,
            "length",
            label,
            meaning,
            "outside of the body + mould clearance",
            ("body_length", "body_width", "mould_clearance"),
            TAKE_OFF,
        )
    r.answer(
        "mould_height",
        r.mould.frame_height_m,
        "length",
        "Mould height",
        "Height of the frame over the base board.",
        "block thickness + 1/2 in that guides the body, or the width of the board",
        ("block_thickness", "mould_board"),
        "board sizes: PS 20, plywood as sold",
        "memory",
    )
    r.answer(
        "mould_screws",
        r.mould.screws_corner + r.mould.screws_base,
        "count",
        "Screws",
        "Screws for the frame and to hold the base.",
        "at least two up a corner and one every 6 in round the base",
        ("mould_board", "mould_height"),
        PRACTICE,
        "common practice",
    )
    r.answer(
        "screw_length",
        r.mould.screw_m,
        "length",
        "Screws, at least",
        "Least length of those screws; take the next longer that is sold.",
        "thicker board + 1 in",
        ("mould_board", "mould_base"),
        PRACTICE,
        "common practice",
    )
    r.answer(
        "push_in",
        d.grip,
        "length",
        "Push-in mark",
        "Mark on the body, from its face: how deep it goes into the wet mix.",
        "grip",
        ("grip",),
        TAKE_OFF,
    )


def _pins(d, r):
    r.pins = wood.pins(
        port_count=r["port_count"],
        block_thickness_m=d.block_thickness,
        pin_depth_m=d.pin_depth,
        stock_length_m=d.pin_stock_length,
        kerf_m=d.kerf,
        spares=d.pin_spares,
    )
    r.answer(
        "pin_length",
        r.pins.length_m,
        "length",
        "Pin length",
        "Length to cut the form pins to.",
        "block thickness + pin depth",
        ("block_thickness", "pin_depth"),
        TAKE_OFF,
    )
    r.answer(
        "pin_count",
        r.pins.count,
        "count",
        "Pins",
        "Form pins to cut for one block, spares with them.",
        "ports + spare pins",
        ("port_count", "pin_spares"),
        TAKE_OFF,
    )
    r.answer(
        "pins_per_stock",
        r.pins.pieces_per_stock,
        "count",
        "Pins from one stick",
        "Pins that one stock length gives.",
        "whole pins with a saw cut between them",
        ("pin_length", "pin_stock_length", "kerf"),
        TAKE_OFF,
    )
    r.answer(
        "pin_stock_count",
        r.pins.stock_count or None,
        "count",
        "Sticks to buy",
        "Stock lengths for the pins of one block.",
        "pins / pins from one stick",
        ("pin_count", "pins_per_stock"),
        TAKE_OFF,
    )
    drill = _cleaning_drill(d.port_diameter, d.units)
    r.answer(
        "cleaning_drill",
        drill.name,
        "word",
        "Cleaning drill",
        "Drill that is turned through the ports by hand, from the fire side.",
        "largest drill that is not above the port",
        ("port_diameter",),
        "fractional drills by 1/64 in, metric by 0.1 mm",
        "published",
    )
    clear = wood.pin_wall_clearance_m(
        ports=r.ports,
        port_diameter_m=d.port_diameter,
        inside_length_m=r.mould.inside_length_m,
        inside_width_m=r.mould.inside_width_m,
        round_mould=r.round,
    )
    stop, good = PIN_CLEAR_M
    verdict = "good" if clear >= good else "caution" if clear >= stop else "stop"
    shown = show(clear, "length", d.units)
    r.check(
        "pins_clear",
        verdict,
        clear,
        good,
        "length",
        "Pins clear of the mould",
        f"Pins stand {shown} or more from the wall of the mould."
        if verdict == "good"
        else f"Pins stand only {shown} from the wall of the mould; {show(good, 'length', d.units)} lets the mix pass."
        if verdict == "caution"
        else f"Pins stand {show(-clear, 'length', d.units)} in the wall of the mould.",
        PRACTICE,
        "common practice",
        (("edge_margin", "raise"), ("mould_clearance", "raise")),
    )
    enough = not r.pins.warning
    r.check(
        "pin_stock",
        "good" if enough else "stop" if d.pin_stock_length < d.block_thickness else "caution",
        d.pin_stock_length,
        r.pins.length_m,
        "length",
        "Pin stock",
        f"{show(d.pin_stock_length, 'length', d.units)} sticks give {r.pins.pieces_per_stock} pins each."
        if enough
        else f"A pin is {show(r.pins.length_m, 'length', d.units)} long, the stick "
        f"{show(d.pin_stock_length, 'length', d.units)}: "
        f"{r.pins.warning}.",
        TAKE_OFF,
        "calculated",
        (("pin_stock_length", "raise"), ("block_thickness", "lower"), ("pin_depth", "lower")),
    )
    floor = r.mould.floor_m
    r.check(
        "base_floor",
        "good" if floor >= FLOOR_M else "caution",
        floor,
        FLOOR_M,
        "length",
        "Wood under the pins",
        f"{show(floor, 'length', d.units)} of wood is left under the pins"
        + (
            "."
            if floor >= FLOOR_M
            else ": the point of the drill comes through; fill from below or take a thicker base."
        ),
        PRACTICE,
        "common practice",
        (("pin_depth", "lower"), ("mould_base", "choose")),
    )


def _cleaning_drill(diameter_m, unit_system):
    """The largest drill by 1/64 in, or of the metric series, that is not above the port."""
    found = nearest_drills(diameter_m, "fraction" if unit_system == "in" else "metric")[0]
    return found or nearest_drills(diameter_m, "fraction")[0]


def material(d):
    if d.refractory == "own":
        return mix.own_castable(
            density_kg_m3=d.castable_density,
            water_low=d.castable_water_low,
            water_high=d.castable_water_high,
            service_temp_K=d.castable_service,
            working_time_s=d.working_time,
        )
    return mix.castable(d.refractory)


def _area_m2(length, width, is_round):
    return pi / 4 * width**2 if is_round else length * width


def _refractory(d, r):
    r.material = material(d)
    # Ports that overlap, a stop of the face, keep out less than their sum: at most the closest packing of circles.
    pins = min(r["port_count"], CLOSEST_PACKING * r["window_area"] / (pi / 4 * d.port_diameter**2))
    mould_area = _area_m2(r.mould.inside_length_m, r.mould.inside_width_m, r.round)
    r.block = mix.block_volume(
        mould_area_m2=mould_area,
        body_area_m2=_area_m2(d.body_length, d.body_width, r.round),
        inside_area_m2=_area_m2(r.body.inside_length_m, r.body.inside_width_m, r.round),
        window_area_m2=r["window_area"],
        wall_m=d.wall,
        grip_m=d.grip,
        block_thickness_m=d.block_thickness,
        port_count=pins,
        port_diameter_m=d.port_diameter,
    )
    volume = r.answer(
        "block_volume",
        r.block.total_m3,
        "volume",
        "Refractory in the block",
        "Volume of the block as cast.",
        "mould x (thickness - grip) + ring beside the body + window x wall + inside x (grip - wall) - ports",
        ("block_thickness", "grip", "mould_clearance", "port_count", "port_diameter", "wall"),
        TAKE_OFF,
    )
    r.answer(
        "fill_line",
        wood.fill_line_m(
            mix_volume_m3=volume, mould_area_m2=mould_area, port_count=pins, port_diameter_m=d.port_diameter
        ),
        "length",
        "Fill line",
        "Mark on the inside of the mould, from the base: wet mix before the body goes in.",
        "volume / (mould area - pins)",
        ("block_volume", "mould_clearance", "port_count", "port_diameter"),
        "the mix keeps its volume",
    )
    weigh = dict(
        volume_m3=volume,
        material=r.material,
        waste=d.waste_allowance,
        bag_mass_kg=d.bag_mass,
        placing_rate_kg_s=d.placing_rate,
    )
    r.batch = mix.batch(burners=d.batch_size, **weigh)
    one = mix.batch(**weigh)
    spread = tuple(
        one.dry_kg * density / r.material.density_kg_m3
        for density in (r.material.density_low_kg_m3, r.material.density_high_kg_m3)
    )
    dry = ("block_volume", "refractory", "waste_allowance", "castable_density")
    r.answer(
        "dry_mass",
        one.dry_kg,
        "mass",
        "Dry mix",
        "Dry refractory to weigh out for one block, waste with it.",
        "volume x dry density as placed x (1 + waste)",
        dry,
        CLASSES,
        "memory",
        spread,
    )
    r.answer(
        "water",
        one.water_kg,
        "mass",
        "Water",
        "Water to weigh in for one block: start at the low end, add only what it needs to pack.",
        "dry mix x water by mass, middle of its band",
        (*dry, "castable_water_low", "castable_water_high"),
        CLASSES,
        "memory",
        (one.water_low_kg, one.water_high_kg),
    )
    r.answer(
        "bags",
        r.batch.bags,
        "count",
        "Bags",
        "Bags to buy for the batch.",
        "dry mix of all burners / bag, rounded up",
        ("dry_mass", "bag_mass", "batch_size"),
        "arithmetic",
    )
    r.answer(
        "mixes",
        r.batch.mixes,
        "count",
        "Mixes",
        "How many mixes the batch is placed in, so that each is placed in its working time.",
        "dry mix of all burners / (placing rate x working time), rounded up",
        ("dry_mass", "placing_rate", "working_time", "batch_size"),
        "working times of the classes, common practice",
        "common practice",
    )
    r.answer(
        "dry_per_mix",
        r.batch.dry_per_mix_kg,
        "mass",
        "Dry mix, each",
        "Dry refractory in one mix.",
        "dry mix of all burners / mixes",
        ("dry_mass", "mixes"),
        "arithmetic",
    )
    r.answer(
        "water_per_mix",
        r.batch.water_per_mix_kg,
        "mass",
        "Water, each",
        "Water in one mix, middle of the band.",
        "dry mix, each x water by mass",
        ("dry_per_mix", "refractory"),
        CLASSES,
        "memory",
    )
    parts = dict(
        mix.burner_mass(
            steel_kg=r["body_mass"],
            block_volume_m3=volume,
            material=r.material,
            inlet_kg=r.inlet_piece.mass_kg,
            baffle_kg=r.baffle.mass_kg if r.baffle else 0.0,
        )
    )
    r.answer(
        "burner_mass",
        parts["total"],
        "mass",
        "Finished burner",
        "Mass of steel body, inlet pipe, baffle and dried block.",
        "steel + block volume x dry density",
        ("body_mass", "block_volume", "refractory"),
        "steel density: EN 1993-1-1; " + CLASSES,
        "memory",
    )
    limit = r.material.service_temp_K
    room = limit - d.chamber_temperature
    verdict = "good" if room >= 100 else "caution" if room >= 0 else "stop"
    shown, most = show(d.chamber_temperature, "temperature", d.units), show(limit, "temperature", d.units)
    r.check(
        "refractory_limit",
        verdict,
        d.chamber_temperature,
        limit,
        "temperature",
        "Refractory and heat",
        f"The chamber's {shown} against the {most} that this class stands"
        + {
            "good": ": it holds.",
            "caution": ": close; its life is short.",
            "stop": ": it slumps or melts. Choose another class, or a cooler chamber.",
        }[verdict],
        CLASSES,
        "memory",
        (("refractory", "choose"), ("chamber_temperature", "lower")),
    )


@lru_cache(maxsize=32)
def _sampled(ports, sizes):
    return tolerances.port_tolerance(ports=ports, **dict(sizes))


def _tolerances(d, r):
    many = len(r.ports) > 1
    # Ports that overlap as drawn are no block to be off from; their own check stops them.
    found = (
        None
        if many and not r["min_web"] > 0
        else _sampled(
            r.ports,
            tuple(
                dict(
                    port_diameter_m=d.port_diameter,
                    block_thickness_m=d.block_thickness,
                    grip_m=d.grip,
                    wall_m=d.wall,
                    window_length_m=r["window_length"],
                    window_width_m=r["window_width"],
                    tilt_rad=d.port_tilt_tolerance * pi / 180,
                    position_m=d.port_position_tolerance,
                    round_window=r.round,
                ).items()
            ),
        )
    )
    inputs = ("port_tilt_tolerance", "port_position_tolerance", "block_thickness", "port_diameter")

    def sampled(key, band, dimension, *words):
        r.answer(key, band and band.mean, dimension, *words, (band.low, band.high) if band else ())

    r.answer(
        "port_drift",
        d.block_thickness * tan(d.port_tilt_tolerance * pi / 180),
        "length",
        "Lean of a pin",
        "How far a crooked port is off at its far end.",
        "block thickness x tan(tilt)",
        inputs,
        "geometry",
    )
    sampled(
        "web_as_cast",
        found.web_m if found and many else None,
        "length",
        "Web as cast",
        "Least web of a block whose pins are off by up to the tolerances; none where ports overlap as drawn.",
        "least of all neighbours over the block, mean and band of the blocks drawn",
        (*inputs, "min_web"),
        SAMPLING,
        "calculated",
    )
    sampled(
        "port_area_as_cast",
        found and found.area_ratio,
        "fraction",
        "Port area as cast",
        "Open area left of the drawn one; pins that lean into the lip lose some.",
        "area of each port less what lip and neighbour cover",
        inputs,
        SAMPLING,
        "calculated",
    )
    sampled(
        "port_flow_as_cast",
        found and found.flow_ratio,
        "fraction",
        "Flow as cast",
        "Flow of all ports over the drawn one, at the same pressure.",
        "area x 1 / sqrt(losses), the entry loss raised by the lean",
        inputs,
        SAMPLING + "; entry loss of a leaning pipe: Weisbach (memory)",
        "memory",
    )
    if found and many:
        web = found.web_m.low
        verdict = "good" if web >= 0.5 * found.web_drawn_m else "caution" if web > 0 else "stop"
        shown = show(max(web, 0.0), "length", d.units)
        r.check(
            "web_as_cast",
            verdict,
            web,
            0.5 * found.web_drawn_m,
            "length",
            "Crooked pins",
            f"Pins off by the tolerances leave a web of {shown} at worst"
            + {
                "good": ".",
                "caution": ", less than half of the drawn one: guide the pins with a drilled strip at the top.",
                "stop": ": ports can run into each other. Guide the pins, or use fewer ports.",
            }[verdict],
            SAMPLING,
            "calculated",
            (("port_tilt_tolerance", "lower"), ("port_position_tolerance", "lower"), ("ports_per_row", "lower")),
        )


def _mould_table(r):
    rows = tuple(
        (
            number,
            piece.name,
            piece.stock,
            piece.count,
            piece.length_m,
            piece.width_m,
            piece.thickness_m,
            millimetres(piece),
            piece.note,
        )
        for number, piece in enumerate(r.mould.pieces, 1)
    )
    return Table(
        "mould",
        "Mould: boards to cut",
        (
            Column("number", "No.", "count"),
            Column("piece", "Piece", "word"),
            Column("stock", "Stock", "word"),
            Column("count", "Pieces", "count"),
            Column("length", "Length", "length"),
            Column("width", "Width", "length"),
            Column("thickness", "Thickness", "length"),
            Column("millimetres", "mm", "word"),
            Column("note", "Note", "word"),
        ),
        rows,
        "board sizes: PS 20, plywood as sold",
    )


def _drilling_table(d, r):
    plan = wood.drilling_plan(
        ports=r.ports,
        port_diameter_m=d.port_diameter,
        pin_depth_m=d.pin_depth,
        base_length_m=r.mould.base_length_m,
        base_width_m=r.mould.base_width_m,
    )
    return Table(
        "base_drilling",
        "Mould base: holes from its lower left corner, pins up",
        (
            Column("number", "No.", "count"),
            Column("x", "x", "length"),
            Column("y", "y", "length"),
            Column("diameter", "Diameter", "length"),
            Column("depth", "Depth", "length"),
        ),
        tuple((hole.number, hole.x_m, hole.y_m, hole.diameter_m, hole.depth_m) for hole in plan),
        TAKE_OFF,
    )


def _class_table():
    known = [mix.castable(name) for name in mix.castable_names()]
    return Table(
        "refractories",
        "Classes of refractory",
        (
            Column("class", "Class", "word"),
            Column("density_low", "Dry density from", "density"),
            Column("density_high", "to", "density"),
            Column("water_low", "Water from", "fraction"),
            Column("water_high", "to", "fraction"),
            Column("service", "Service limit", "temperature"),
            Column("working", "Working time", "time"),
            Column("source", "Source", "word"),
        ),
        tuple(
            (
                one.label,
                one.density_low_kg_m3,
                one.density_high_kg_m3,
                one.water_low,
                one.water_high,
                one.service_temp_K,
                one.working_time_s,
                one.source,
            )
            for one in known
        ),
        CLASSES,
    )
