"""The words of the room Make: steel, mould and refractory, and what they cost."""

from ..sources import ARITHMETIC, PRACTICE, Source
from .forms import Answer, Axis, Chart, Check, Column, Series, Table
from .train import TRAIN_WORDS

TAKE_OFF = Source("take-off from the drawing", "calculated")
CORNERS = Source("corner radii of welded tube, common practice", "common practice")
STEEL_DENSITY = Source("steel density: EN 1993-1-1", "published")
HOLE_SAWS = Source("sizes of hole saws as sold, common practice", "common practice")
PIPE_OVERSIZE = Source("ASTM A53, outside diameter of pipe within 1 %", "memory")
FITTINGS = Source("ASME B16.3 and B16.39, lengths of threaded fittings", "memory")
PIPE_SIZES = Source("ASME B36.10M pipe sizes", "published")
GROWTH = Source("growth by heat, coefficients common practice; EN 1993-1-2 for steel", "common practice")
BEND = Source("bend allowance with the K-factor, sheet-metal handbooks; K common practice", "common practice")
CUTTING = Source("first-fit decreasing", "calculated")
BOARDS = Source("board sizes: PS 20, plywood as sold", "memory")
DRILLS = Source("drills by [1/64 in|0.1 mm]", "published")
SAME_VOLUME = Source("the mix keeps its volume", "calculated")
CLASSES = Source("generic classes of refractory; the bag's own data sheet stands over them", "memory")
WORKING_TIMES = Source("working times of the classes, common practice", "common practice")
LEAN = Source("geometry", "calculated")
SAMPLING = Source("geometry of leaning pins, sampled with a fixed seed", "calculated")
LEANING_ENTRY = Source("entry loss of a leaning pipe: Weisbach, from memory", "memory")
WOOD_AS_SOLD = Source(
    "boards of 4, 8 and 12 ft, sheets of 2 by 4 and 4 by 8 ft or 610 by 1220 and 1220 by 2440 mm, common practice",
    "common practice",
)
CALENDAR = Source(
    "the shortest calendar that a few simple rules find; none proves that it is the shortest", "calculated"
)
YOUR_PRICES = Source("arithmetic on your own prices; the defaults are examples", "calculated")

CAP = ("body_kind", "body_width", "body_depth", "wall", "caps", "cap_gap")
BLANK = ("baffle_holes", "baffle_thickness", "baffle_bend_angle", "body_kind", "body_width", "wall")
BARS = (
    "bracket_flat",
    "body_kind",
    "body_width",
    "body_depth",
    "wall",
    "cap_thickness",
    "tube_length",
    "cap_length",
    "cap_width",
    "stock_lengths",
    "kerf",
    "batch_size",
)
PORTS = ("pattern", "rows", "ports_per_row", "edge_margin", "port_diameter", "window_length", "window_width")
CROOKED = (
    "port_tilt_tolerance",
    "port_position_tolerance",
    "block_thickness",
    "grip",
    "wall",
    "body_kind",
    *PORTS,
)
PRICES = (
    "price_steel",
    "price_bag",
    "price_pins",
    "price_mould",
    "price_train",
    "price_blower",
    "blowers",
    "burner_count",
    "price_sundries",
)
TRAIN = (
    "gas_from",
    "fuel",
    "fuel_blend",
    "mix_pipe",
    "mix_pipe_length",
    "mix_pipe_elbows",
    "stock_lengths",
    "inlet",
    "firing_rate_gross",
    "hose_bore",
    "blowers",
    "burner_count",
)
BATCH = (
    "batch_size",
    "moulds",
    "oven_places",
    "kiln",
    "test_stands",
    "hands",
    "day_hours",
    "work_week",
    "days_off",
    "start_date",
    "hours_weld",
    "hours_mould",
    "hours_cast",
    "hours_finish",
    "test_fire_time",
    "strip_after",
    "air_dry",
    "warm",
    "oven_hold",
    "oven_temperature",
    "ambient_temperature",
    "first_fire_heats",
    "first_fire_time",
    "watched_hours",
)
SHOPPING = (
    "moulds_made",
    "train_safety_cost",
    "train_needed_cost",
    "train_comfort_cost",
    *PRICES,
    *BARS,
    "cap_corner",
    "nipple_stock",
    "inlet_length",
    "inlets",
    "dry_mass",
    "bag_mass",
    "pin_count",
    "pins_per_stock",
    "baffle_length",
    "baffle_width",
    "baffle_thickness",
    "first_fire_fuel",
    "first_fire_cost",
)

STEEL_ANSWERS = (
    Answer(
        "body_stock",
        "steel.bought_as",
        "word",
        "Body stock",
        meaning="What the body is cut from.",
        formula="outside sizes x wall",
        inputs=("body_kind", "body_width", "body_depth", "wall"),
        source=TAKE_OFF,
        near="first",
        cases={
            "tube": "tube {width:sold_size} x {depth:sold_size} x {wall:sold_length}",
            "pipe": "pipe {width:sold_size} x {wall:sold_length}",
            "flat": "flat {width:sold_size} x {thickness:sold_length}",
            "rare": "flat {width:sold_size} x {thickness:sold_length}, not common",
            "strip": "strip {width:length} wide of {thickness:sold_length} plate",
        },
    ),
    Answer(
        "tube_length",
        "steel.tube_length_m",
        "length",
        "Cut length of the body",
        meaning="Length to saw the tube, the plates or the pipe of the body to.",
        formula="body length (round: body depth), less two caps where they are laid on",
        inputs=("body_kind", "body_length", "body_depth", "caps", "wall", "cap_thickness"),
        source=TAKE_OFF,
        near="bench",
    ),
    Answer(
        "cap_length",
        "steel.cap_length_m",
        "length",
        "Cap, front to back",
        meaning="Size of an end cap, or of a disc of a round body.",
        formula="outside of the body, less two walls and two gaps where it is set in",
        inputs=CAP,
        source=TAKE_OFF,
        near="bench",
    ),
    Answer(
        "cap_width",
        "steel.cap_width_m",
        "length",
        "Cap, across",
        meaning="Size of an end cap, or of a disc of a round body.",
        formula="outside of the body, less two walls and two gaps where it is set in",
        inputs=("body_width", "wall", "caps", "cap_gap"),
        source=TAKE_OFF,
        near="bench",
    ),
    Answer(
        "cap_corner",
        "steel.cap_corner_m",
        "length",
        "Cap, corner radius",
        meaning="Radius to which the corners of a cap are eased.",
        formula="inside radius of the tube, taken as one wall; with caps laid on its outside radius, two walls",
        inputs=("wall", "caps", "body_kind", "cap_length", "cap_width"),
        source=CORNERS,
        near="bench",
    ),
    Answer(
        "weld_length",
        "steel.weld_m",
        "length",
        "Weld seams, length",
        meaning="All seams of the body and its inlets, welded once round.",
        formula="round both caps + along four plates + round each inlet pipe",
        inputs=("body_kind", "tube_length", "cap_length", "cap_width", "cap_corner", "inlet", "inlets"),
        source=TAKE_OFF,
        near="bench",
    ),
    Answer(
        "body_mass",
        "steel.body_kg",
        "mass",
        "Steel body",
        meaning="Mass of the body, window and inlet hole cut out, inlet pipe and baffle apart.",
        formula="area x thickness x 7850 kg/m³",
        inputs=(
            "body_kind",
            "inlet_position",
            "body_width",
            "body_depth",
            "wall",
            "cap_thickness",
            "tube_length",
            "cap_length",
            "cap_width",
            "cap_corner",
            "window_area",
            "inlet_hole",
            "inlets",
        ),
        source=STEEL_DENSITY,
        near="bench",
    ),
    Answer(
        "bracket_flat",
        "mounting.flat_m",
        "length",
        "Bracket flats, wide",
        meaning="Width of the flats that carry the bracket's angles where the body is too short for them.",
        formula="bracket and leg, less mould height over the face, cross-bar and room for clamps; half the leg or more",
        inputs=("lining", "block_thickness", "grip", "mould_board", "body_depth", "body_kind"),
        source=PRACTICE,
        near="bench",
        may_lack=True,
    ),
    Answer(
        "cap_made",
        "body.cap_m",
        "length",
        "Caps or discs, thick",
        meaning="Thickness of the flat that caps, or a round pipe's discs, are cut from.",
        formula="as set; auto: the wall where flat of that is sold, else the next thicker",
        inputs=("wall", "cap_thickness"),
        source=PRACTICE,
        near="bench",
    ),
    Answer(
        "bevel",
        "welding.bevel_m",
        "length",
        "Bevel",
        meaning="Depth to which the edges of the caps are bevelled for a weld from one side.",
        formula="none up to [1/8 in|3.2 mm] of cap, then all but [1/16 in|1.6 mm]",
        inputs=("wall", "cap_thickness"),
        source=PRACTICE,
        near="bench",
    ),
    Answer(
        "block_growth",
        "welding.growth_m",
        "length",
        "Hot block grows more than the body, by",
        meaning="How much longer the hot block grows than the steel round it.",
        formula="inside length x (6e-6 x half the chamber's rise - 12e-6 x 100 K)",
        inputs=("body_length", "cap_thickness", "wall", "body_kind", "chamber_temperature", "ambient_temperature"),
        source=GROWTH,
    ),
    Answer(
        "window_cut_length",
        "steel.window_cut_m",
        "length",
        "Window, straight cuts",
        meaning="Length to cut between the four relief holes; a round window: once round.",
        formula="2 x (length - drill) + 2 x (width - drill)",
        inputs=("body_kind", "window_length", "window_width", "corner_drill"),
        source=TAKE_OFF,
        near="bench",
    ),
    Answer(
        "corner_drill_inset",
        "steel.drill_inset_m",
        "length",
        "Relief holes, inset",
        meaning="From the edges of the window to the centre of each corner's relief hole.",
        formula="corner drill / 2",
        inputs=("body_kind", "corner_drill"),
        source=TAKE_OFF,
        near="bench",
    ),
    Answer(
        "inlet_hole",
        "steel.inlet_saw_m",
        "length",
        "Inlet hole",
        meaning="Hole saw that cuts the inlet hole.",
        formula="next hole saw sold by the reader's tape over the pipe's outside diameter and 1 %, [1/64 in|0.4 mm] "
        "at least",
        inputs=("inlet",),
        source=HOLE_SAWS & PIPE_OVERSIZE,
        near="bench",
    ),
    Answer(
        "inlet_hole_clearance",
        "steel.inlet_clearance_m",
        "length",
        "Inlet hole, clearance",
        meaning="Hole less pipe, on the diameter.",
        formula="hole saw - outside diameter of the pipe",
        inputs=("inlet_hole", "inlet"),
        source=PIPE_SIZES,
    ),
    Answer(
        "inlet_spacing",
        "steel.inlet_spacing_m",
        "length",
        "Between two inlets",
        meaning="From the middle of one inlet hole to the middle of the other, half of it each way from the middle of "
        "the back; nothing with one inlet.",
        formula="half the inside length, so that each inlet stands over the middle of its half",
        inputs=("inlets", "body_length", "cap_thickness", "wall"),
        source=TAKE_OFF,
        may_lack=True,
    ),
    Answer(
        "inlet_nipple",
        "stock.nipples",
        "word",
        "Inlet nipples, whole batch",
        meaning="Which nipples to buy for the inlet pipes of the batch, and how to cut them.",
        formula="cheapest of nipples with one thread cut off and halves of longer ones; a half needs twice the length "
        "and one saw cut",
        inputs=("nipple_stock", "inlet", "inlet_length", "wall", "kerf", "batch_size", "inlets"),
        source=PRACTICE,
        near="bench",
        cases={
            "halves": "{count} of {stock:sold_length}, saw it in two, one half for each inlet",
            "cut": "{count} of {stock:sold_length}, cut one end off",
            "whole": "{count} of {stock:sold_length}: no room to cut its second thread off, so weld over that; a "
            "longer one is better",
        },
    ),
    Answer(
        "baffle_length",
        "baffle_sheet.blank_length_m",
        "length",
        "Baffle blank, along",
        meaning="Flat size of the baffle along the body.",
        formula="inside of the body less a gap; developed with the neutral line at 0.4 of the thickness, bend radius "
        "one thickness",
        inputs=("body_length", "cap_thickness", *BLANK),
        source=BEND,
        near="bench",
    ),
    Answer(
        "baffle_width",
        "baffle_sheet.blank_width_m",
        "length",
        "Baffle blank, across",
        meaning="Flat size across the body, before it is bent.",
        formula="inside of the body less a gap; developed with the neutral line at 0.4 of the thickness, bend radius "
        "one thickness",
        inputs=BLANK,
        source=BEND,
        near="bench",
    ),
    Answer(
        "baffle_leg",
        "baffle_sheet.leg_m",
        "length",
        "Baffle leg",
        meaning="Flat part on each side of the bend.",
        formula="inside of the body less a gap; developed with the neutral line at 0.4 of the thickness, bend radius "
        "one thickness",
        inputs=BLANK,
        source=BEND,
        near="bench",
    ),
    Answer(
        "baffle_height",
        "baffle_sheet.height_m",
        "length",
        "Baffle height",
        meaning="Overall height of the bent baffle.",
        formula="inside of the body less a gap; developed with the neutral line at 0.4 of the thickness, bend radius "
        "one thickness",
        inputs=BLANK,
        source=BEND,
        near="bench",
    ),
    Answer(
        "baffle_stand",
        "baffle_sheet.stand_m",
        "length",
        "Baffle, feet above the face",
        meaning="From the inside of the face to the baffle's lower edge, where its tacks go.",
        formula="midway between block and inlet; a pipe at the end comes in beside it, as far from it as from the back",
        inputs=(
            "grip",
            "wall",
            "cap_thickness",
            "body_kind",
            "body_depth",
            "baffle_height",
            "inlet_position",
            "inlet_hole",
        ),
        source=TAKE_OFF,
        near="bench",
    ),
    Answer(
        "baffle_gap",
        "baffle_sheet.gap_m",
        "length",
        "Baffle gap",
        meaning="Room left to the block and to the inlet, the smaller of the two.",
        formula="(inside depth - block inside - baffle height) / 2; with the inlet at an end less its hole, / 3",
        inputs=(
            "baffle_height",
            "body_depth",
            "grip",
            "wall",
            "cap_thickness",
            "body_kind",
            "inlet_position",
            "inlet_hole",
        ),
        source=TAKE_OFF,
    ),
    Answer(
        "steel_bought",
        "stock.bought_m",
        "long_length",
        "Steel to buy, whole batch",
        meaning="Tube, pipe and flat bar for the batch, in whole lengths from the rack.",
        formula="longest piece first, into the first length that takes it",
        inputs=BARS,
        source=CUTTING,
        near="first",
    ),
    Answer(
        "steel_offcut",
        "stock.offcut_m",
        "long_length",
        "Steel left over, whole batch",
        meaning="Offcuts of those lengths, saw cuts apart.",
        formula="bought - pieces - saw cuts",
        inputs=BARS,
        source=CUTTING,
    ),
)

CAST_ANSWERS = (
    Answer(
        "mould_inside_length",
        "mould.inside_length_m",
        "length",
        "Mould inside, along the body",
        meaning="Inside length of the mould; a round one: the hole.",
        formula="outside of the body + mould clearance",
        inputs=("body_length", "mould_clearance"),
        source=TAKE_OFF,
        near="bench",
    ),
    Answer(
        "mould_inside_width",
        "mould.inside_width_m",
        "length",
        "Mould inside, across",
        meaning="Inside width of the mould; a round one: the hole.",
        formula="outside of the body + mould clearance",
        inputs=("body_width", "mould_clearance"),
        source=TAKE_OFF,
        near="bench",
    ),
    Answer(
        "mould_height",
        "mould.height_m",
        "length",
        "Mould height",
        meaning="Height of the frame over the base board.",
        formula="block thickness + [1/2 in|12 mm] that guides the body, or the width of the board",
        inputs=("block_thickness", "mould_board", "body_kind"),
        source=BOARDS,
        near="bench",
    ),
    Answer(
        "mould_screws",
        "mould.screws",
        "count",
        "Screws",
        meaning="Screws for the frame and to hold the base.",
        formula="at least two up a corner; up through the base one every [6 in|150 mm] of each side and end; of "
        "layers, four in each joint and four in the base",
        inputs=("mould_board", "mould_height", "mould_inside_length", "mould_inside_width", "body_kind"),
        source=PRACTICE,
    ),
    Answer(
        "screw_length",
        "mould.screw_m",
        "length",
        "Screw length, at least",
        meaning="Least length of those screws; take the next longer that is sold.",
        formula="thicker board + [1 in|25 mm], up to the next [1/4 in|5 mm]; of layers, 1.6 layers",
        inputs=("mould_board", "mould_base", "body_kind"),
        source=PRACTICE,
    ),
    Answer(
        "push_in",
        "body.grip_m",
        "length",
        "Push-in mark",
        meaning="Mark on the body, from its face: how deep it goes into the wet mix.",
        formula="grip",
        inputs=("grip",),
        source=TAKE_OFF,
        near="bench",
    ),
    Answer(
        "cross_bar",
        "mould.cross_bar_m",
        "length",
        "Cross-bar, from the face",
        meaning="How far from its face two bars as long as the frame are clamped to the body, one along each "
        "side. When they lie on the frame, the body is at its mark.",
        formula="mould height - (block thickness - grip)",
        inputs=("mould_height", "block_thickness", "grip"),
        source=TAKE_OFF,
        near="bench",
    ),
    Answer(
        "back_over_frame",
        "mould.back_over_frame_m",
        "length",
        "Back over the frame",
        meaning="From the top edge of the frame up to the back of the body, when it is at its mark: measure it at the "
        "four corners.",
        formula="body depth - cross-bar from the face",
        inputs=("body_depth", "cross_bar"),
        source=TAKE_OFF,
        near="bench",
    ),
    Answer(
        "level_inside",
        "dip.how",
        "word",
        "Level inside",
        meaning="How to find the level of the mix inside the closed body, which nobody sees, when it is at its mark.",
        formula="in the back: inlet pipe + body depth - grip; at the end: axis of the pipe - half its bore - grip",
        inputs=("inlet_length", "body_depth", "wall", "grip", "inlet_position", "baffle_holes", "inlet"),
        source=TAKE_OFF,
        near="bench",
        cases={
            "down": "a stiff wire down the inlet meets the mix {length:length} below the pipe's rim",
            "hole": "a thin stiff wire down the inlet, through a hole of the baffle, meets the mix {length:length} "
            "below the pipe's rim",
            "leg": "a wire bent square lies along the bottom of the inlet pipe, and its leg of {length:length} just "
            "meets the mix",
            "weight": "no wire gets past the baffle from this end; weigh the mix, and put in what the sheet has for "
            "the mould, no more",
        },
    ),
    Answer(
        "pin_length",
        "pins.length_m",
        "length",
        "Pin length",
        meaning="Length to cut the form pins to.",
        formula="block thickness + pin depth + how far it stands proud",
        inputs=("block_thickness", "pin_depth", "pin_proud"),
        source=TAKE_OFF,
        near="bench",
    ),
    Answer(
        "pin_proud",
        "pins.proud_m",
        "length",
        "Pins proud of the mix",
        meaning="How far a pin stands out of the mix into the plenum, so that no mix closes over it.",
        formula="[3/8 in|10 mm], or what is left behind the block to the baffle (without one: to the back) less "
        "[1/8 in|3.2 mm]",
        inputs=("baffle_gap", "body_depth", "wall", "grip"),
        source=PRACTICE,
        near="bench",
    ),
    Answer(
        "knock_out_drill",
        "pins.knock_out_drill",
        "word",
        "Knock-out drill",
        meaning="Drill of the hole right through the base under each pin, to knock it back from below.",
        formula="largest drill that is not above half the port",
        inputs=("port_diameter",),
        source=PRACTICE & DRILLS,
        near="bench",
    ),
    Answer(
        "pin_count",
        "pins.wanted",
        "count",
        "Pins",
        meaning="Form pins to cut for one block, spares with them.",
        formula="ports + spare pins",
        inputs=("port_count", "pin_spares"),
        source=TAKE_OFF,
        near="bench",
    ),
    Answer(
        "pins_per_stock",
        "pins.per_stick",
        "count",
        "Pins from one stick",
        meaning="Pins that one stock length gives.",
        formula="whole pins with a saw cut between them",
        inputs=("pin_length", "pin_stock_length", "kerf"),
        source=TAKE_OFF,
    ),
    Answer(
        "pin_stock_count",
        "pins.sticks",
        "count",
        "Sticks for one block",
        meaning="Stock lengths for the pins of one block.",
        formula="pins / pins from one stick",
        inputs=("pin_count", "pins_per_stock"),
        source=TAKE_OFF,
        near="bench",
    ),
    Answer(
        "cleaning_drill",
        "pins.cleaning_drill",
        "word",
        "Cleaning drill",
        meaning="Drill that is turned through the ports by hand, from the fire side.",
        formula="largest drill that is not above the port",
        inputs=("port_diameter",),
        source=DRILLS,
        near="bench",
    ),
    Answer(
        "block_volume",
        "block.volume_m3",
        "volume",
        "Refractory in the block",
        meaning="Volume of the block as cast.",
        formula="mould x (thickness - grip) + ring beside the body + window x wall + inside x (grip - wall) - ports",
        inputs=(
            "mould_inside_length",
            "mould_inside_width",
            "body_kind",
            "body_length",
            "body_width",
            "wall",
            "cap_thickness",
            "window_area",
            "grip",
            "block_thickness",
            "port_count",
            "port_diameter",
        ),
        source=TAKE_OFF,
    ),
    Answer(
        "fill_line",
        "block.fill_line_m",
        "length",
        "Fill line, over the base",
        meaning="Mark on the inside of the mould, from the base: wet mix before the body goes in.",
        formula="volume / (mould area - pins)",
        inputs=(
            "block_volume",
            "mould_inside_length",
            "mould_inside_width",
            "body_kind",
            "window_area",
            "port_count",
            "port_diameter",
        ),
        source=SAME_VOLUME,
        near="bench",
    ),
    Answer(
        "dry_mass",
        "block.dry_kg",
        "mass",
        "Dry mix",
        meaning="Dry refractory to weigh out for one block, waste with it.",
        formula="volume x dry density as placed x (1 + waste)",
        inputs=("block_volume", "refractory", "waste_allowance", "castable_density"),
        source=CLASSES,
        near="first",
    ),
    Answer(
        "water",
        "block.water_kg",
        "mass",
        "Water",
        meaning="Water to weigh in for one block: start at the low end, add only what it needs to pack.",
        formula="dry mix x water by mass, middle of its band",
        inputs=("dry_mass", "refractory", "castable_water_low", "castable_water_high"),
        source=CLASSES,
        near="first",
    ),
    Answer(
        "bags",
        "block.bags",
        "count",
        "Bags, whole batch",
        meaning="Bags to buy for the batch.",
        formula="dry mix of all burners / bag, rounded up",
        inputs=("dry_mass", "bag_mass", "batch_size"),
        source=ARITHMETIC,
        near="bench",
    ),
    Answer(
        "mixes",
        "block.mixes",
        "count",
        "Mixes, one block",
        meaning="How many mixes one block is placed in, so that each is placed in its working time. Blocks are cast "
        "one after the other, each from mixes of its own.",
        formula="dry mix / (placing rate x working time), rounded up",
        inputs=("dry_mass", "placing_rate", "refractory", "working_time"),
        source=WORKING_TIMES,
        near="bench",
    ),
    Answer(
        "dry_per_mix",
        "block.dry_per_mix_kg",
        "mass",
        "Dry mix, each",
        meaning="Dry refractory in one mix.",
        formula="dry mix / mixes",
        inputs=("dry_mass", "mixes"),
        source=ARITHMETIC,
        near="bench",
    ),
    Answer(
        "water_per_mix",
        "block.water_per_mix_kg",
        "mass",
        "Water, each",
        meaning="Water in one mix, middle of the band.",
        formula="dry mix, each x water by mass",
        inputs=("dry_per_mix", "refractory", "castable_water_low", "castable_water_high"),
        source=CLASSES,
        near="bench",
    ),
    Answer(
        "burner_mass",
        "block.burner_kg",
        "mass",
        "Finished burner",
        meaning="Mass of steel body, inlet pipe, baffle, bracket and dried block.",
        formula="steel + block volume x dry density",
        inputs=(
            "body_mass",
            "bracket_flat",
            "body_kind",
            "tube_length",
            "inlet",
            "inlet_length",
            "inlets",
            "wall",
            "baffle_length",
            "baffle_width",
            "baffle_thickness",
            "baffle_holes",
            "baffle_hole_diameter",
            "block_volume",
            "refractory",
            "castable_density",
        ),
        source=STEEL_DENSITY & CLASSES,
        near="bench",
    ),
    Answer(
        "burner_steel_mass",
        "block.steel_kg",
        "mass",
        "Burner before casting",
        meaning="Mass of steel body, inlet pipe, baffle and bracket: weigh each before it is cast.",
        formula="steel body + inlet pipe + baffle + bracket",
        inputs=(
            "body_mass",
            "bracket_flat",
            "body_kind",
            "tube_length",
            "inlet",
            "inlet_length",
            "inlets",
            "wall",
            "baffle_length",
            "baffle_width",
            "baffle_thickness",
            "baffle_holes",
            "baffle_hole_diameter",
        ),
        source=STEEL_DENSITY,
        near="bench",
    ),
    Answer(
        "burner_wet_mass",
        "block.wet_kg",
        "mass",
        "Burner as stripped, wet",
        meaning="Most that a burner weighs when the mould comes off, its pins still in it; what it loses from there "
        "till they are drawn is water.",
        formula="finished burner + dry block x most water by mass + a pin a port, of the heaviest of its kind",
        inputs=(
            "burner_mass",
            "block_volume",
            "refractory",
            "castable_density",
            "castable_water_high",
            "port_count",
            "port_diameter",
            "pin_length",
            "pin_kind",
        ),
        source=CLASSES,
        near="bench",
    ),
    Answer(
        "port_drift",
        "as_cast.drift_m",
        "length",
        "Lean of a pin",
        meaning="How far a crooked port is off at its far end.",
        formula="block thickness x tan(tilt)",
        inputs=("port_tilt_tolerance", "block_thickness"),
        source=LEAN,
    ),
    Answer(
        "web_as_cast",
        "as_cast.web_m",
        "length",
        "Least between ports, as cast",
        meaning="Least refractory between two ports of a block whose pins are off by up to the tolerances; none where "
        "ports overlap as drawn.",
        formula="least of all neighbours over the block, mean and band of the blocks drawn",
        inputs=("port_tilt_tolerance", "port_position_tolerance", "block_thickness", "body_kind", "min_web", *PORTS),
        source=SAMPLING,
    ),
    Answer(
        "port_area_as_cast",
        "as_cast.area_ratio",
        "fraction",
        "Port area as cast",
        meaning="Open area left of the drawn one; pins that lean into the lip lose some.",
        formula="area of each port less what lip and neighbour cover",
        inputs=CROOKED,
        source=SAMPLING,
    ),
    Answer(
        "port_flow_as_cast",
        "as_cast.flow_ratio",
        "fraction",
        "Flow as cast",
        meaning="Flow of all ports over the drawn one, at the same pressure.",
        formula="area x 1 / sqrt(losses), the entry loss raised by the lean",
        inputs=CROOKED,
        source=SAMPLING & LEANING_ENTRY,
    ),
)

MONEY_ANSWERS = (
    Answer(
        "train_safety_cost",
        "train.safety_cost",
        "money",
        "Gas and air train, safety",
        meaning="What shuts the gas off, and what keeps that working, at the example prices of its list. Nobody "
        "leaves it out.",
        formula="sum of the list's prices",
        inputs=("gas_from", "fuel", "fuel_blend", "mix_pipe", "firing_rate_gross", "hose_bore", "lit_by"),
        source=YOUR_PRICES,
        near="bench",
    ),
    Answer(
        "train_needed_cost",
        "train.needed_cost",
        "money",
        "Gas and air train, to run it",
        meaning="What the burner runs through, and what gas and air are set by, at the example prices of its list.",
        formula="sum of the list's prices",
        inputs=(
            *TRAIN,
            "inlets",
            "small_gauge",
            "lit_by",
            "jet_gas_pressure",
            "jet_gas_pressure_low",
            "lighting_gas_pressure",
            "cylinder_count",
        ),
        source=YOUR_PRICES,
        near="bench",
    ),
    Answer(
        "train_comfort_cost",
        "train.comfort_cost",
        "money",
        "Gas and air train, comfort",
        meaning="Parts that a burner runs without, at the example prices of its list.",
        formula="sum of the list's prices",
        inputs=("mix_pipe",),
        source=YOUR_PRICES,
        near="bench",
    ),
    Answer(
        "tools_cost",
        "tools.cost",
        "money",
        "Tools and safety gear",
        meaning="What is bought once for the shop beside the burner, cylinders with it, at the example prices of its "
        "list; not in the cost of the burner.",
        formula="sum of the list's prices",
        inputs=(
            *("gas_from", "fuel", "fuel_blend", "cylinder", "cylinder_count", "mould_screws", "moulds_made"),
            *("burner_count", "lit_by", "kiln", "pin_kind"),
        ),
        source=YOUR_PRICES,
        near="bench",
    ),
    Answer(
        "cost_batch",
        "cost.batch",
        "money",
        "Shopping for the batch",
        meaning="All on the shopping list, bars and packs bought whole, gas of the first fire too; in the money "
        "of your prices.",
        formula="sum of the cost lines",
        inputs=SHOPPING,
        source=YOUR_PRICES,
    ),
    Answer(
        "cost_per_burner",
        "cost.each",
        "money",
        "To buy for a burner",
        meaning="Shopping for the batch, shared by its burners; no pay for work. In the money of your prices.",
        formula="cost of the batch / burners",
        inputs=("cost_batch", "batch_size"),
        source=YOUR_PRICES,
        near="first",
    ),
    Answer(
        "used_cost_per_burner",
        "cost.used_each",
        "money",
        "Used up in a burner, leftovers kept",
        meaning="The cost of what is used up in a burner; offcuts and rests are left out.",
        formula="need / pack x price",
        inputs=SHOPPING,
        source=YOUR_PRICES,
    ),
    Answer(
        "hours_per_burner",
        "cost.work_each_s",
        "time",
        "Hours a burner, as you set",
        meaning="Work in one burner of the batch, by the hours you set for steel, mould, "
        "casting and finishing, the moulds shared. A search adds time for each "
        "port and baffle hole.",
        formula="hours of each burner + hours of the moulds / burners",
        inputs=("hours_weld", "hours_mould", "hours_cast", "hours_finish", "batch_size", "moulds_made"),
        source=YOUR_PRICES,
        near="bench",
    ),
    Answer(
        "earned_per_hour",
        "cost.earned_per_hour",
        "money",
        "An hour of your work saves",
        meaning="What an hour of the work saves against a bought burner.",
        formula="(bought price - cost a burner) / hours a burner",
        inputs=("bought_price", "cost_per_burner", "hours_per_burner"),
        source=YOUR_PRICES,
    ),
    Answer(
        "cost_with_work",
        "cost.with_work_each",
        "money",
        "A burner with your work paid",
        meaning="What is bought for a burner, and its hours at their worth.",
        formula="cost a burner + hours x worth of an hour",
        inputs=("cost_per_burner", "hours_per_burner", "hour_value"),
        source=YOUR_PRICES,
        near="bench",
    ),
    Answer(
        "make_or_buy",
        "cost.make_or_buy",
        "word",
        "Make or buy",
        meaning="Whether it is cheaper to make or to buy, with the work paid. Within a tenth of the bought one's price "
        "it is about even: prices for the same thing differ by as much.",
        formula="cost with the work paid against the price of a bought one",
        inputs=("cost_per_burner", "hours_per_burner", "bought_price", "hour_value"),
        source=YOUR_PRICES,
        near="first",
        cases={
            "even": "About even, by prices that are examples until you set yours: one you make comes to "
            "{with_work:money}, work paid, a bought one to {bought:money}.",
            "material": "Buy: the material alone costs {each:money} a burner, {more:money} more than a bought one.",
            "same": "Buy: the material alone costs as much as a bought one, and {hours:.1f} h of work come on top.",
            "no_work": "Make, for yourself: it saves {saved:money} a burner.",
            "make": "Make, for yourself: material {each:money} a burner against {bought:money} bought; each of "
            "the {hours:.1f} h of work saves {earned:money}, and with it paid at {worth:money} making "
            "is {gap:money} cheaper.",
            "buy": "Buy: one you make costs {saved:money} less and takes {hours:.1f} h of work. That saves "
            "{earned:money} an hour; you set an hour at {worth:money}. With the work paid, buying is "
            "{gap:money} cheaper.",
        },
    ),
)


def _saves(key: str, at: str, label: str, thing: str) -> Answer:
    return Answer(
        key,
        at,
        "count",
        label,
        meaning=f"Days that {thing} more would save to the last burner, all else as it is.",
        formula="days to the last burner, less those of the calendar with one more",
        inputs=("batch_days",),
        source=CALENDAR,
        near="bench",
    )


BATCH_ANSWERS = (
    Answer(
        "batch_days",
        "batch.days",
        "count",
        "Days to the last burner",
        meaning="Calendar days from the first cut to the last test fire of the batch, nights and days off with "
        "them. Hours, hands and places are examples until you set yours.",
        formula="one calendar for all: moulds from casting to stripping, hands, charges of the oven, test stands; "
        "waits night and day; who stands by a fire does nothing else; a stand is cold the day after a test fire",
        inputs=BATCH,
        source=CALENDAR,
        near="bench",
    ),
    Answer(
        "moulds_made",
        "calendar.moulds",
        "count",
        "Moulds that are made",
        meaning="As many as the calendar makes: fewer than you set where one more saves no day. Wood, cost and hours "
        "count these.",
        formula="from the calendar with the fewest days, of equals the one with the fewest moulds",
        inputs=("batch_days",),
        source=CALENDAR,
        near="bench",
    ),
    Answer(
        "batch_first_days",
        "batch.first_days",
        "count",
        "Days to the first of them",
        meaning="Calendar days to the test fire that is made first.",
        formula="from the same calendar",
        inputs=("batch_days",),
        source=CALENDAR,
        near="bench",
    ),
    Answer(
        "batch_bottleneck",
        "batch.bottleneck",
        "word",
        "What holds the batch up",
        meaning="What to add first: one more of it saves the most days. A kiln that makes the first fires may hold the "
        "batch up itself.",
        formula="the calendar made again with one more of each, and without a kiln",
        inputs=("mould_saves", "oven_place_saves", "test_stand_saves", "hands_save"),
        source=CALENDAR,
        near="bench",
        cases={
            "moulds": "Moulds: one more saves {days} d.",
            "oven_places": "The oven: one more place saves {days} d.",
            "test_stands": "The test stand: one more saves {days} d.",
            "hands": "Hands: one more pair saves {days} d.",
            "kiln": "The kiln: first fires made on the test stand instead save {days} d.",
            "waits": "The waits: one more mould, place, stand or pair of hands by itself saves no day.",
        },
    ),
    _saves("mould_saves", "batch.mould_saves", "One more mould saves, days", "one mould"),
    _saves("oven_place_saves", "batch.oven_saves", "One more place in the oven saves, days", "one place in the oven"),
    _saves("test_stand_saves", "batch.stand_saves", "One more test stand saves, days", "one test stand"),
    _saves("hands_save", "batch.hands_save", "One more pair of hands saves, days", "one pair of hands"),
)

SELLING_ANSWERS = (
    Answer(
        "test_gas_cost",
        "selling.test_gas",
        "money",
        "Test fire, cost of gas",
        meaning="What the gas of one test fire costs, after the first fire.",
        formula="gas of five lightings and of the wait at LIGHT, of the steps to low fire and the time there, of the "
        "steps to high fire and the time there, at one of which the gas is counted, x "
        "price of the gas; where several burn together for each whose gas is counted, after its own five lightings "
        "that of all",
        inputs=("gas_flow", "lighting_rate", "low_fire", "test_fire_time", "pilot_rate", "fuel_price", "burner_count"),
        source=YOUR_PRICES & PRACTICE,
        near="bench",
    ),
    Answer(
        "selling_cost",
        "selling.cost",
        "money",
        "Cost of one that is sold",
        meaning="Material, gas of first and test fire, paid work and overhead of a burner that passes, with its share "
        "of those that do not. Mould, train and blower of one that does not pass serve the next.",
        formula="(mould and its work, train, blower + (the rest of the cost a burner + test gas + the rest of its "
        "hours x worth of an hour) / (1 - scrap)) x (1 + overhead)",
        inputs=("cost_per_burner", "test_gas_cost", "hours_per_burner", "hour_value", "overhead", "scrap_rate"),
        source=YOUR_PRICES & PRACTICE,
        near="bench",
    ),
    Answer(
        "selling_price",
        "selling.price",
        "money",
        "Price to ask",
        meaning="Cost of one that is sold, and profit; before taxes.",
        formula="cost of one that is sold x (1 + profit)",
        inputs=("selling_cost", "profit"),
        source=YOUR_PRICES & PRACTICE,
        near="bench",
    ),
    Answer(
        "worth_selling",
        "selling.worth",
        "word",
        "Made, bought or sold",
        meaning="Whether one made for yourself pays, and whether one that is sold does, beside a bought one.",
        formula="material and work against the price of a bought one; the price to ask against it",
        inputs=("cost_with_work", "selling_price", "bought_price"),
        source=YOUR_PRICES & PRACTICE,
        near="bench",
        cases={
            "make_sell": "Making one for yourself saves {own:money}, work paid. Sold, the price to ask, "
            "{price:money}, is {gap:money} below a bought one, {bought:money}: where it may be "
            "sold at all, that can pay too.",
            "make_keep": "Making one for yourself saves {own:money}, work paid. Selling does not pay: the price"
            " to ask, {price:money}, is {gap:money} more than a bought one, {bought:money}.",
            "even_keep": "Making one for yourself costs about as much as buying, work paid. Selling does not pay: the "
            "price to ask, {price:money}, is {gap:money} more than a bought one, {bought:money}.",
            "buy_keep": "Neither pays, by prices that are examples until you set yours: for yourself buying is "
            "{own:money} cheaper, work paid, and the price to ask, {price:money}, is {gap:money} more than a bought "
            "one, {bought:money}.",
        },
    ),
    Answer(
        "before_selling",
        "selling.before",
        "word",
        "Before you sell or give one away",
        meaning="What counts before all figures of money.",
        formula="the price to ask, and a caution",
        inputs=("selling_price",),
        source=PRACTICE,
        near="bench",
        cases={
            "certified": "For {price:money} or for nothing: in many places gas equipment must be certified "
            "before it is sold or given away; the local authority decides. Ask it, the gas "
            "supplier and the insurer first. Prices, hours, days and stock are examples until you "
            "set yours.",
        },
    ),
)

ANSWERS = STEEL_ANSWERS + CAST_ANSWERS + BATCH_ANSWERS + MONEY_ANSWERS + SELLING_ANSWERS

CHECKS = (
    Check(
        "baffle_bends",
        "length",
        "Baffle",
        harm="rework",
        source=TAKE_OFF,
        cases={
            "stop": "The baffle cannot be made: its sheet must leave legs beside the bend.",
        },
        cures=(("baffle_thickness", "lower"), ("baffle_bend_angle", "lower")),
    ),
    Check(
        "tube_on_rack",
        "length",
        "Tube or pipe on the rack",
        harm="comfort",
        source=PRACTICE,
        cases={
            "good": "{name} tube is commonly stocked.",
            "note": "No common tube measures {width:length} by {depth:length}; the nearest is {name}, {off:length} "
            "off. If yours is at hand and measured, keep it; else choose a common size, or weld four plates.",
            "wall": "{name} tube is stocked, but not with a wall of {wall:length}: the nearest is {sold:length}. If "
            "yours is at hand and measured, keep it; else set what is sold.",
            "pipe": "No standard pipe is {across:length} across outside: {name} pipe is {sold:length}, its wall "
            "{one:length} or {other:length}. Measure what is bought and set it: mould, discs and template follow it.",
            "pipe_wall": "{name} pipe is {sold:length} across, its wall {one:length} or {other:length}, not "
            "{wall:length}. Measure what is bought and set it.",
            "pipe_good": "{name} pipe, {sold:length} across outside with this wall, is commonly stocked.",
        },
        cures=(("body_width", "choose"), ("body_depth", "choose"), ("body_kind", "choose")),
    ),
    Check(
        "cap_fit",
        "length",
        "Caps in the bore",
        harm="rework",
        source=PRACTICE,
        cases={
            "good": "Caps go in with {gap:length} all round.",
            "tight": "A gap of {gap:length} round the caps is tight: allow {tight:length} or they have to be driven "
            "in.",
            "wide": "A gap of {gap:length} round the caps is wide: more than {wide:length} is bridged with weld.",
            "eased": "Corners stay round at {corner:length}: square ones would jam by {jam:length}.",
        },
    ),
    Check(
        "lip_width",
        "length",
        "Lip width",
        harm="damage",
        source=PRACTICE,
        cases={
            "good": "The steel lip is a ledge of {room:length} inside the bore; {wanted:length} or more holds the "
            "block.",
            "caution": "The steel lip is a ledge of {room:length} inside the bore; {wanted:length} or more holds the "
            "block with ease.",
            "stop": "The steel lip is a ledge of {room:length} inside the bore; below {least:length} it does not work, "
            "{wanted:length} or more holds the block.",
            "good_rounded": "Beside the tube's inside corner of {inside:length} the lip is a flat ledge of "
            "{room:length}; {wanted:length} or more holds the block.",
            "caution_rounded": "Beside the tube's inside corner of {inside:length} the lip is a flat ledge of only "
            "{room:length}; {wanted:length} or more holds the block with ease.",
            "stop_rounded": "Beside the tube's inside corner of {inside:length} the lip is a flat ledge of only "
            "{room:length}; below {least:length} it does not work, {wanted:length} or more holds the block.",
            "lacking_rounded": "The window's edge lies {lack:length} on the tube's rounded corner, {outside:length} "
            "outside and {inside:length} inside: no flat ledge is left, and the cut does not run true. "
            "{wanted:length} of ledge holds the block.",
        },
        cures=(("setback", "raise"), ("wall", "lower"), ("cap_thickness", "lower")),
    ),
    Check(
        "round_body",
        "length",
        "Round body",
        harm="comfort",
        source=TAKE_OFF,
        cases={
            "note": "The baffle of a round body is a flat disc; the bend of {angle:angle} that is set does nothing.",
        },
        cures=(("baffle_bend_angle", "choose"), ("body_kind", "choose")),
    ),
    Check(
        "lip_cover",
        "length",
        "Grip over the lip",
        harm="damage",
        source=PRACTICE,
        cases={
            "good": "{room:length} of refractory stands over the lip; {wanted:length} or more holds the block.",
            "caution": "{room:length} of refractory stands over the lip; {wanted:length} or more holds the block with "
            "ease.",
            "stop": "{room:length} of refractory stands over the lip; below {least:length} it does not work, "
            "{wanted:length} or more holds the block.",
        },
        cures=(("grip", "raise"), ("wall", "lower")),
    ),
    Check(
        "inlet_fits",
        "length",
        "Inlet on the body",
        harm="rework",
        source=PRACTICE,
        cases={
            "good": "{flat:length} of flat steel is left on each side of the inlet hole.",
            "caution": "The inlet hole runs {into:length} into the rounded corners on each side: it can be welded, "
            "with more filler and a careful leak test.",
            "stop": "The inlet hole is {wider:length} wider than the room inside the body.",
            "stop.body_width": "Take a smaller pipe or a wider body.",
            "stop.body_depth": "Take a smaller pipe or a deeper body.",
            "stop.body_length": "Take a smaller pipe or a longer body.",
            "stop.body": "Take a smaller pipe or a body that is larger both ways.",
            "edge_caution": "Between the inlet hole and the cap's edge at the back {web:length} of steel are left; "
            "less than {wanted:length}, its thickness, burns away at the weld. Take a smaller pipe, or a deeper body.",
            "edge_stop": "The inlet hole breaks {out:length} through the cap's edge at the back. Take a smaller pipe, "
            "or a deeper body.",
        },
    ),
    Check(
        "two_inlets",
        "length",
        "Two inlets",
        harm="rework",
        source=FITTINGS & PRACTICE,
        cases={
            "good": "From tee to inlet there are {leg:length}, and fittings take {least:length} of it; {web:length} "
            "of steel stand between the two holes.",
            "stop": "From tee to inlet there are {leg:length}. Tee, reducers and elbow take {least:length}, so the "
            "legs cannot be screwed together. Take a body of {body:length} or longer, or one inlet.",
            "note": "The last nipple of each leg is {nipple:length}, which is not sold: have both threaded to that "
            "length. A body of {length:length} takes one of {sold:length}.",
            "near": "Only {web:length} of steel stand between the two holes; {wanted:length} or more stay true when "
            "both are welded.",
        },
        cures=(("inlets", "lower"), ("body_length", "raise"), ("inlet", "lower")),
    ),
    Check(
        "inlet_hole",
        "length",
        "Inlet hole and its pipe",
        harm="rework",
        source=HOLE_SAWS & PIPE_OVERSIZE,
        cases={
            "good": "The {saw:sold_length} hole leaves {clear:length} on the diameter, {largest:length} round the "
            "largest pipe that is sold as such.",
            "caution": "The {saw:sold_length} hole is {clear:length} wider than the pipe, more than the "
            "{wanted:length} that a fillet bridges: cut the hole to a scribed line instead, or close the gap with a "
            "ring.",
        },
        cures=(("inlet", "choose"),),
    ),
    Check(
        "cap_flat",
        "length",
        "Flat for the caps",
        harm="comfort",
        source=PRACTICE,
        cases={
            "good": "Flat {thickness:length} thick is commonly stocked.",
            "caution": "No common flat is {thickness:length} thick; the nearest is {sold:length}, {off:length} off: "
            "make the caps of what is sold.",
        },
        cures=(("cap_thickness", "choose"), ("wall", "choose")),
    ),
    Check(
        "cap_thickness",
        "length",
        "Caps and wall",
        harm="rework",
        source=PRACTICE,
        cases={
            "good": "Caps of {cap:length} and a wall of {wall:length} take the same weld.",
            "caution": "Caps of {cap:length} are thin beside a wall of {wall:length}: they burn through before the "
            "wall is hot, and spring when the seam cools. Take {wanted:length} or more.",
            "thick": "Caps of {cap:length} are thick beside a wall of {wall:length}: the wall burns through before "
            "they are hot. Take {most:length} or less.",
        },
        cures=(("cap_thickness", "raise"), ("wall", "lower")),
    ),
    Check(
        "baffle_clear",
        "length",
        "Baffle clear",
        harm="rework",
        source=PRACTICE,
        cases={
            "good": "The baffle stands {room:length} clear of block and inlet; {wanted:length} or more lets the "
            "mixture round it.",
            "caution": "The baffle stands {room:length} clear of block and inlet; {wanted:length} or more lets the "
            "mixture round it with ease.",
            "lacking": "The baffle has {lack:length} too little room; below {least:length} it does not work, "
            "{wanted:length} or more lets the mixture round it.",
            "across": "The baffle would stand across the bore of the inlet at the end: block, baffle and pipe lack "
            "{lack:length} beside each other; {wanted:length} between them lets the mixture round it.",
        },
        cures=(
            ("baffle_bend_angle", "lower"),
            ("body_depth", "raise"),
            ("grip", "lower"),
            ("inlet_position", "choose"),
            ("inlet", "lower"),
        ),
    ),
    Check(
        "baffle_goes_in",
        "length",
        "Baffle on its way in",
        harm="rework",
        source=TAKE_OFF,
        cases={
            "good": "The baffle slides in from an open end with {room:length} at each side; tack it before the last "
            "cap.",
            "caution": "The baffle slides in from an open end with only {room:length} at each side, beside the "
            "corners of the tube; {wanted:length} or more goes in with ease.",
            "lacking": "The baffle does not go in: it meets the rounded corners of the tube by {lack:length} at each "
            "side. {wanted:length} or more goes in with ease.",
        },
        cures=(("body_depth", "raise"), ("grip", "raise"), ("baffle_bend_angle", "lower"), ("baffle_holes", "lower")),
    ),
    Check(
        "inlet_over_mould",
        "length",
        "Inlet pipe over the mould",
        harm="rework",
        source=TAKE_OFF,
        cases={
            "good": "With the body at its mark the inlet pipe passes {over:length} over the end of the mould.",
            "caution": "The inlet pipe meets the end of the mould {notch:length} before the body is at its mark: saw a "
            "notch {pipe:length} wide and {notch:length} deep in that end board, and round its foot.",
        },
        cures=(("mould_board", "choose"), ("body_depth", "raise"), ("inlet", "lower")),
    ),
    Check(
        "baffle_holes_fit",
        "length",
        "Holes in the baffle",
        harm="rework",
        source=PRACTICE,
        cases={
            "good": "Baffle holes leave {room:length} between them and to the edges; {wanted:length} or more can be "
            "drilled.",
            "caution": "Baffle holes leave {room:length} between them and to the edges; {wanted:length} or more can be "
            "drilled with ease.",
            "lacking": "The holes in the baffle have {lack:length} too little room; below {least:length} it does not "
            "work, {wanted:length} or more can be drilled.",
        },
        cures=(("baffle_holes", "lower"), ("baffle_hole_diameter", "lower")),
    ),
    Check(
        "corner_drill",
        "length",
        "Corner drill",
        harm="comfort",
        source=TAKE_OFF,
        cases={
            "good": "A {drill:bore} drill leaves the corner radius of {left:length} that the face is drawn with.",
            "caution": "A {drill:bore} drill leaves corners of {left:length}, the face is drawn with "
            "{radius:length}: make the drill twice the radius.",
        },
        cures=(("corner_drill", "choose"), ("corner_radius", "choose")),
    ),
    Check(
        "pins_clear",
        "length",
        "Pins clear of the mould",
        harm="rework",
        source=PRACTICE,
        cases={
            "good": "Pins stand {clear:length} or more from the wall of the mould.",
            "caution": "Pins stand only {clear:length} from the wall of the mould; {wanted:length} lets the mix pass.",
        },
        cures=(("edge_margin", "raise"), ("mould_clearance", "raise")),
    ),
    Check(
        "pins_stand",
        "length",
        "Pins in the base",
        harm="rework",
        source=PRACTICE,
        cases={
            "good": "Pins {pin:bore} thick stand {depth:length} deep in the base.",
            "caution": "Pins {pin:bore} thick stand only {depth:length} deep in the base: with a little play they "
            "lean, and ports come out crooked. Drill {wanted:length} or deeper, or guide the pins with a drilled strip "
            "at the top.",
        },
        cures=(("pin_depth", "raise"), ("port_diameter", "lower")),
    ),
    Check(
        "pins_proud",
        "length",
        "Pins proud of the mix",
        harm="rework",
        source=PRACTICE,
        cases={
            "good": "Pins stand {proud:length} proud of the mix, clear of what is behind them.",
            "caution": "Pins stand only {proud:length} proud of the mix before they meet what is behind them; with "
            "less than {wanted:length} a little mix too much closes ports over.",
        },
        cures=(("baffle_bend_angle", "lower"), ("body_depth", "raise"), ("grip", "lower")),
    ),
    Check(
        "cross_bar",
        "length",
        "Cross-bar on the frame",
        harm="comfort",
        source=PRACTICE,
        cases={
            "good": "A cross-bar clamped {bar:length} from the face stops the body at its mark, its back {over:length} "
            "over the frame.",
            "caution": "At its mark the body stands only {over:length} over the frame, too little to clamp a cross-bar "
            "to ({wanted:length}): lay the bar on its back, with packing under the ends.",
            "under": "At its mark the back of the body lies {under:length} under the top edge of the frame: a "
            "cross-bar cannot stop it. Take a lower frame, or measure down at four corners.",
        },
        cures=(("mould_board", "choose"),),
    ),
    Check(
        "pin_stock",
        "length",
        "Pin stock",
        harm="rework",
        source=TAKE_OFF,
        cases={
            "one": "{stick:length} sticks give one pin each.",
            "good": "{stick:length} sticks give {each} pins each.",
            "caution": "A pin is {pin:length} long, the stick only {stick:length}: pins from it stand less proud of "
            "the mix, or less deep in the base, than set.",
            "stop": "A pin is {pin:length} long, the stick {stick:length}: the stock is shorter than the port, which "
            "would not go through: take longer stock or a thinner block.",
        },
        cures=(("pin_stock_length", "raise"), ("block_thickness", "lower"), ("pin_depth", "lower")),
    ),
    Check(
        "base_board",
        "length",
        "Base in one piece",
        harm="rework",
        source=BOARDS,
        cases={
            "good": "The base is {wide:length} wide, its board {board:length}.",
            "stop.board": "The base is {wide:length} wide, its board only {board:length}, and a joint would run "
            "through the pins: take {wider:word} or plywood.",
            "stop.sheet": "The base is {wide:length} wide, its board only {board:length}, no board is so wide, and a "
            "joint would run through the pins: take plywood.",
        },
        cures=(("mould_base", "choose"),),
    ),
    Check(
        "base_floor",
        "length",
        "Wood under the pins",
        harm="comfort",
        source=PRACTICE,
        cases={
            "good": "{floor:length} of wood is left under the pins.",
            "caution": "{floor:length} of wood is left under the pins: the point of the drill comes through; fill from "
            "below or take a thicker base.",
        },
        cures=(("pin_depth", "lower"), ("mould_base", "choose")),
    ),
    Check(
        "frame_screws",
        "length",
        "Screws in the frame",
        harm="rework",
        source=PRACTICE,
        cases={
            "good": "A frame {thick:length} thick takes screws in its edges.",
            "caution": "A frame {thick:length} thick splits where screws go into its edges, and wet mix runs out: take "
            "[[ply 1/2|ply 12 mm]] or thicker.",
        },
        cures=(("mould_board", "choose"),),
    ),
    Check(
        "mould_fit",
        "length",
        "Body in the mould",
        harm="rework",
        source=PRACTICE,
        cases={
            "good": "The mould leaves {side:length} at each side of the body; seams are ground flush {high:length} up "
            "from the face.",
            "caution": "The mould leaves only {side:length} at each side of the body; under {wanted:length} a tube a "
            "little wider than it should be, or a seam left proud, jams in it.",
            "wide": "The mould leaves {side:length} at each side of the body; over {most:length} the body stands "
            "crooked in it, and so much refractory stands proud of the steel, where it breaks off.",
        },
        cures=(("mould_clearance", "raise"),),
    ),
    Check(
        "block_growth",
        "length",
        "Room for the hot block",
        harm="damage",
        source=GROWTH,
        cases={
            "good": "Hot, the block grows {growth:length} more than the body; a block so short needs no joint.",
            "note": "Hot, the block grows {growth:length} more than the body, over the {wanted:length} that it takes "
            "by itself: before casting, brush or tape {wax:drill_length 2} of wax on the inside of both ends and on "
            "the lip's edge there; it melts out and leaves the joint.",
        },
        cures=(("body_length", "lower"),),
    ),
    Check(
        "placing",
        "word",
        "Body pushed into the mix",
        harm="rework",
        source=PRACTICE,
        cases={
            "good": "A wet mix takes the body that is pushed into it.",
            "stop": "A plastic is rammed in layers: a closed body cannot be pushed into it, and nobody reaches inside "
            "to ram it there. Take a castable.",
        },
        cures=(("refractory", "choose"),),
    ),
    Check(
        "mixes",
        "time",
        "Mixes and their working time",
        harm="rework",
        source=WORKING_TIMES,
        cases={
            "good": "One mix of {takes:time} to place, in a working time of {works:time}.",
            "note": "{blocks} blocks take {all:time} to place, a mix stays workable {works:time}: one bucket for all "
            "is too much. Mix each block by itself when it is cast: {takes:time} to place.",
            "joint": "One block takes {takes:time} to place, longer than the {works:time} that a mix stays workable: "
            "the second mix leaves a joint in the block. Work in twos, one mixing while the other places, or take a "
            "class that stays workable longer.",
        },
        cures=(("refractory", "choose"),),  # to place faster is no change of the design
    ),
    Check(
        "refractory_limit",
        "temperature",
        "Refractory and heat",
        harm="damage",
        source=CLASSES,
        cases={
            "good": "The face works at {heat:rough_temperature}; this class stands {stands:rough_temperature}: it "
            "holds.",
            "caution": "The face works at {heat:rough_temperature}; this class stands {stands:rough_temperature}. "
            "That is close, and it will not last long.",
            "stop": "The face works at {heat:rough_temperature}; this class stands {stands:rough_temperature}: it "
            "slumps or melts. Choose another class, or run the chamber cooler.",
            "left_low": "Left empty at low fire the chamber, and the face with it, may reach {heat:rough_temperature}; "
            "this class stands {stands:rough_temperature}. Choose another class, or turn down further.",
            "left_high": "Left empty at high fire the chamber, and the face with it, may reach "
            "{heat:rough_temperature}; this class stands {stands:rough_temperature}: turn down once hot, if the card "
            "lets it.",
        },
        cures=(("refractory", "choose"), ("chamber_temperature", "lower"), ("low_fire", "lower")),
    ),
    Check(
        "web_as_cast",
        "length",
        "Crooked pins",
        harm="damage",
        source=SAMPLING,
        cases={
            "good": "Pins off by the tolerances leave {web:length} between ports at worst.",
            "caution": "Pins off by the tolerances leave {web:length} between ports at worst, less than half of the "
            "drawn one: guide the pins with a drilled strip at the top.",
            "stop": "Pins off by the tolerances leave {web:length} between ports at worst: ports can run into each "
            "other. Guide the pins, or use fewer ports.",
        },
        cures=(("port_tilt_tolerance", "lower"), ("port_position_tolerance", "lower"), ("ports_per_row", "lower")),
    ),
)

# Pieces by the names that making/ gives them: what they are called, where they go, what to mind.
BAR_NAMES = {
    **STEEL_ANSWERS[0].cases,
    "angle": "angle {width:sold_size} x {width:sold_size} x {thickness:sold_length}",
}
_SLOTS = (
    "in one leg two slots of {wide:size} x {long:length} along it; their middles {in:length} from its ends and "
    "{out:length} from the outside of the other"
)
_HOLE = "in one leg a hole of {wide:length}, its middle {out:length} from the outside of the other"
STEEL_PIECES = {
    "body tube": "body tube",
    "body tube.where": "the body",
    "body tube.note": "window in one side as wide as the face",
    "body pipe": "body pipe",
    "body pipe.where": "the body",
    "body pipe.note": "ends square to the axis",
    "face plate": "face plate",
    "face plate.where": "the face",
    "face plate.note": "window cut in it",
    "back plate": "back plate",
    "back plate.where": "opposite the face",
    "back plate.note": "",
    "side plate": "side plate",
    "side plate.where": "between face and back",
    "side plate.note": "",
    "end cap": "end cap",
    "end cap.where.in": "both ends, set in flush",
    "end cap.where.on": "both ends, laid on",
    "end cap.note.tube": "round the corners so that they follow the tube",
    "end cap.note.plates": "square corners",
    "rip": "rip the flat to this width",
    "face disc": "face disc",
    "face disc.where.in": "fire side, set in flush",
    "face disc.where.on": "fire side, laid on",
    "face disc.note": "round window cut in it",
    "back disc": "back disc",
    "back disc.where.in": "inlet side, set in flush",
    "back disc.where.on": "inlet side, laid on",
    "back disc.note": "",
    "hole.body tube": "inlet hole opposite",
    "hole.body tube.two": "two inlet holes opposite",
    "hole.back plate": "inlet hole cut in it",
    "hole.back plate.two": "two inlet holes cut in it",
    "hole.back disc": "inlet hole cut in it",
    "hole.end cap": "inlet hole cut in one of them",
    "inlet pipe": "inlet pipe {pipe:pipe}",
    "inlet pipe.where.centre": "back of the body",
    "inlet pipe.where.end": "one end cap",
    "inlet pipe.note": "black steel, no zinc; one end threaded, the other cut square",
    "baffle": "baffle",
    "baffle.where": "between inlet and block",
    "baffle.note": "{holes} holes",
    "bracket flat": "bracket flat",
    "bracket flat.where": "under each bracket angle, from behind the cross-bars",
    "bracket flat.note": "carries the angle out: the body is too short",
    "bracket": "bracket angle",
    "bracket.where.box": "along each side",
    "bracket.where.round": "round the pipe, at the quarters",
    "bracket.note.box": _SLOTS,
    "bracket.note.round": _HOLE,
}
MOULD_PIECES = {
    "mould side": "mould side",
    "mould side.note.board": "full width of the board",
    "mould side.note.plywood": "rip to height",
    "mould end": "mould end",
    "mould end.note.board": "full width of the board",
    "mould end.note.plywood": "rip to height",
    "mould layer": "mould layer",
    "mould end.note.notch": "one with a notch {wide:length} wide and {deep:length} deep for the inlet pipe",
    "half layer": "half of a mould layer",
    "mould layer.note": "saw it in two first ({kerf:length} of cut is in its width), clamp the halves together and "
    "cut the round hole; then screw each half to the half below it, two screws each, all joints in one line. Screws "
    "shorter than two layers, or they hold the base; a strap round all of it, until it is stripped",
    "cross-bar": "cross-bar",
    "cross-bar.of": "square bar",
    "cross-bar.note": "straight, of steel or hard wood, one clamped to each side of the body",
    "base board": "base board",
    "base board.note": "pin holes to pin depth, then the knock-out drill; {side} screws up each side, {end} each end",
    "base board.note.round": "pin holes to pin depth, then the knock-out drill; two screws up each half",
    "base board.note.wide": "DO NOT CUT: wider than its board; choose another base first",
}
_CAP = (
    "tack it {tacks} times, opposite sides in turn, then weld short runs, opposite sides in turn, {seam:length} round"
)
_LONG = (
    "Square the four plates with clamps and a spacer in each end. Tack each seam {tacks} times from the middle out, "
    "then weld {seam:length} in back-steps, a piece of each seam in turn."
)
_RUNS = "Three short runs each, none on the side of the face, where the bars lie. Now: later heat cracks the block."
WELD_WORDS = {
    "long.when": "long seams",
    "long.do": _LONG,
    "long.bevelled.do": "Bevel the outer edge of one plate of each seam at 30° to a depth of {bevel:length}. " + _LONG,
    "inlet.when": "inlet pipe",
    "inlet.do": "Its end flush with the inside, the gap of {clear:length} on the diameter even all round. Four tacks, "
    "then {seam:length} in quarters, opposite ones in turn.",
    "inlets.do": "Both ends flush with the inside, the gap of {clear:length} on the diameter even all round. A "
    "straight bar laid over both pipes, square to the back: as high as each other and upright, or tee and legs do not "
    "go together. Four tacks each, then {seam:length} in quarters, opposite ones in turn.",
    "first.when": "first cap",
    "second.when": "second cap",
    "first_disc.when": "back disc",
    "second_disc.when": "face disc",
    "bevelled.do": f"Bevel its edges at 30° to a depth of {{bevel:length}}; {_CAP}.",
    "square.do": f"Square edges; {_CAP}.",
    "baffle.when": "baffle",
    "baffle.do": "Before the caps: slide it in, as far from both ends, feet {stand:length} above the inside of the "
    "face. Two tacks at each end.",
    "baffle.flat.do": "Before the caps: slide it in, as far from both ends, its side to the fire {stand:length} above "
    "the inside of the face. Two tacks at each end.",
    "baffle_disc.do": "Slide it in from the open end, {stand:length} from the inside of the face; four tacks round it.",
    "straight.when": "straightness",
    "straight.window.do": "A body with one side cut out springs at the window, so both bridges are still there. Now "
    "that both caps are on, cut through. The window's width is the same in the middle and at the ends "
    "to [1/32 in|0.8 mm].",
    "straight.round.do": "Before each disc is tacked, clamp it square to the pipe; across two diameters they stand "
    "level to [1/32 in|0.8 mm].",
    "bracket.when": "bracket",
    "bracket.do.behind": "Its angles level, the leg with the holes {bracket:length} from the face, the other behind "
    f"it. {_RUNS}",
    "bracket.do.over": "Its angles level, the leg with the holes {bracket:length} from the face, the other behind it; "
    f"that stands {{over:length}} out behind the body's back. {_RUNS}",
    "bracket.do.before": "Its angles level, the leg with the holes {bracket:length} from the face, the other before "
    f"it. {_RUNS}",
    "bracket.do.flats": "The body is too short for it: flats {flat:length} wide on its sides, behind the cross-bars, "
    "carry the angles out. Their leg with the holes stands {bracket:length} from the face, the other behind it on the "
    f"flat. {_RUNS}",
    "flush.when": "grind flush",
    "flush.do": "All seams on the outside from the face up to {high:length}: that far the body enters the mould, with "
    "{side:length} at each side.",
    "blank.when": "leak test",
    "blank.do": "A flat plate of at least {length:length} by {width:length} over the window, a rubber gasket on the "
    "{setback:length} of steel round it, clamped; a screwed cap on each inlet. One cap, bought tapped "
    "[[1/4 in NPT|Rp 1/4]], takes a tee: on its one end a cock that lets the air in, on the other the water tube. "
    "Air at [20 in|50 cm] of water, never oxygen: soap shows no bubble, and with the cock shut it holds 10 minutes.",
}
_PACKED = (
    "{gap:length} at each side of the block, packed with ceramic fibre to half its thickness. Never mortar: hot, the "
    "block is {growth:length} longer. The shell touches no block."
)
_FLUSH = (
    "Face flush with the lining or up to {back:length} back, never proud, where its edge spalls. The lining is "
    "{lining:length} thick: "
)
_CARRIED = (
    "That leg lies on the shell, {bracket:length} from the face: steel carries {mass:mass}, not block or fibre. Never "
    "weld it to the shell: it must come out."
)
MOUNTING_WORDS = {
    "hole": "Hole in lining and shell",
    "hole.box": f"{{length:length}} by {{width:length}}: {_PACKED}",
    "hole.round": f"{{width:length}} across: {_PACKED}",
    "hole.keep": "Leave {keep:length} of lining or more round it.",
    "hole.keep.several": "Leave {keep:length} of lining or more round each, twice that between two.",
    "hole.over": "It runs {behind:length} behind the lining of the walls beside it: this wall lies over them, out to "
    "the shell.",
    "depth": "Depth",
    "depth.in": f"{_FLUSH}the body stands {{deep:length}} deep in it.",
    "depth.out": f"{_FLUSH}the body ends {{deep:length}} outside it, the block between wrapped in fibre.",
    "bracket": "Bracket",
    "bracket.box": "{count} angles of {leg:sold_size} x {leg:sold_size} x {thick:sold_length}, one along each side "
    f"of the body: {_SLOTS}. {_CARRIED}",
    "bracket.round": "{count} pieces of angle of {leg:sold_size} x {leg:sold_size} x {thick:sold_length}, "
    "{length:length} long, at "
    f"the quarters of the pipe: {_HOLE}. {_CARRIED}",
    "bolts": "Bolts",
    "bolts.near": "{count} of {bolt} x {bolt_length:sold_length}, each with a washer and two nuts, loose and locked: "
    "the body grows.",
    "bolts.off": "{count} of {bolt} x {bolt_length:sold_length}, each with a washer and two nuts, loose and locked: "
    "the body grows. A spacer of {spacer:length} on each (washers), between angle and gasket.",
    "joint": "Gasket and joint",
    "joint.how": "Ceramic fibre paper of {gasket:length} under the angles, all round, no rubber, no silicone. No "
    "hot gas beside the block: the joint is tight at the hot face. Fibre dust: [[P100|P3]] respirator.",
}
_TURN = (
    "Turn the work over onto two blocks under the steel of its back, higher than the inlet pipe and clear of it; never "
    "under the frame. The cross-bars stay clamped and carry the frame."
)
_KNOCK = (
    f"{_TURN} Unscrew the base. As it comes off, knock each "
    "pin back a hair with a punch through its {drill} hole. Give every pin a quarter-turn with pliers, and leave it "
    "in. Damp sheet over it again."
)
_DRAW = (
    "grip the {depth:length} that stood in the base, turn and draw toward the fire. Never drive a pin through into "
    "the plenum."
)
PIN_WORDS = {
    "made.when": "Pins",
    "odd.when": "Stock",
    "odd.wood": "Dowel of {size:bore} is rarely sold. Buy {larger:sold_bore} and bring it down: drive it through "
    "sharp holes in a steel plate, a little smaller each, the last of {size:bore}.",
    "odd.steel": "Rod of {size:bore} is rarely sold. Buy {larger:sold_bore} and turn it down.",
    "odd.plastic": "Rod of {size:bore} is rarely sold. Buy {larger:sold_bore} and turn it down.",
    "made.do.wood": "Straight dowel, sanded, cut to {length:length}. Seal it with two coats of shellac, dry in an "
    "hour, or it swells in wet mix and cracks the web; then rub it with paraffin wax. Leave {depth:length} at the end "
    "in the base bare of both: it goes in no more with them.",
    "made.do.steel": "Bright rod, straight, cut to {length:length}, ends rounded, no burr. Wipe it with a thin film of "
    "paste wax or grease.",
    "made.do.plastic": "Rod of nylon, acetal or polyethylene, cut to {length:length}, scraped smooth, ends rounded. A "
    "wipe of paste wax.",
    "made.do.wax": "Hard wax, cast in a tube or rolled, straight, cut to {length:length}. It needs no release.",
    "base.when": "Base",
    "base.do": "Drill each hole {depth:length} deep at the pin's size, square to the board, then right through with "
    "the {drill} drill: the pin stands on the shoulder and can be knocked back from below. Seal and wax the wood of "
    "mould and base as well.",
    "set.when": "Set",
    "set.do": "Push in to the shoulder; they stand {proud:length} proud of the mix.",
    "lift.when": "Too heavy for one",
    "lift.do": "Wet, with mould and steel bars, it is {mass:mass}; one lifts {one:mass 2} at most. Turn it over with "
    "others, or by a hoist, and keep hands from under it.",
    "free.when": "First set: a thumb leaves no print",
    "free.do.wood": _KNOCK,
    "free.do.steel": _KNOCK,
    "free.do.plastic": _KNOCK,
    "free.do.wax": f"Wax shears: do not turn it. {_TURN} Unscrew the base, lift it off straight, cut the wax flush. "
    "Damp plastic over it again.",
    "out.when": "Out",
    "out.do.wood": f"Not before the ports are cleared, after air-drying and warmth: {_DRAW}",
    "out.do.steel": f"Not before the ports are cleared, after air-drying and warmth: {_DRAW}",
    "out.do.plastic": f"After the air-drying and before the warmth, in which they swell and crack the webs: {_DRAW}",
    "out.do.wax": "When the ports are cleared, from the fire side: turn the {drill} drill by hand through the wax, no "
    "power. What is left is too hard for the gentle warmth: it melts at [140 to 185 °F|60 to 85 °C], into a tray low "
    "in the electric oven, before any flame.",
}
COST_WORDS = {
    **BAR_NAMES,
    "nipple": "nipple {pipe:pipe}",
    "baffle": "baffle sheet",
    "bag": "refractory",
    "pins": "pin stock",
    "mould": "mould",
    "train": "gas train",
    "train_safety": "gas and air train, safety",
    "train_needed": "gas and air train, to run it",
    "train_comfort": "gas and air train, comfort",
    "blower": "blower",
    "sundries": "sundries",
    "first_fire": "gas of the first fire",
    "need.m": "{need:long_length}",
    "need.kg": "{need:mass}",
    "need.nipple": "{need:g} nipple",
    "need.blank": "{need:g} blank",
    "need.pins": "{need:g} pins",
    "need.set": "{need:g} set",
    "need.batch": "{need:g} for the batch",
}
SHOPPING_WORDS = {
    **{key: text for key, text in TRAIN_WORDS.items() if ".name" in key or ".size" in key or key in ("to", "pieces")},
    **COST_WORDS,
    "bars": "{count} of {length:sold_length}",
    "nipple.sold": "{length:sold_length} long, threaded at both ends",
    "baffle.sold": "{length:length} x {width:length} x {thickness:sold_length}, black steel",
    "baffle.sold.nest": "{length:length} x {width:length} x {thickness:sold_length}, black steel; cut in straight "
    "rows from sheets of {long:sold_size} x {wide:sold_length}: {sheets}",
    "bag.sold": "{name}, grain to {grain:length}, {mass:sold_mass} a bag",
    "pins.sold": "{diameter:sold_bore} across, {length:sold_length} long",
    "pins.odd": "{diameter:sold_bore} across, {length:sold_length} long, brought down to {size:bore}: few sell that",
    "board": "{count} of {stock}, {length:sold_length} x {width:sold_length}",
    "boards_in_all": "in all ",
    "no_boards": "wood of your own: what is sold is too small",
    "train.sold": "the parts with no price here, at your price for all",
    "blower.sold": "{pressure:pressure} shut, {flow:air_flow} free; its pipe and joint stand in the train",
    "sundries.sold": "welding wire, discs, filters, thread paste; {count} bolts of {bolt} x {bolt_length:sold_length}, "
    "{nuts} nuts, washers; fibre paper of {gasket:length}, {length:length} x {width:length}; loose fibre",
    "first_fire.sold": "{mass:mass} at most, all of it by the burner",
    "first_fire.sold.unlit": "of the mended design: this one must not be lit",
    "first_fire.sold.line": "{volume:gas_volume} at most, all of it by the burner",
}
_TEST_CAPS = "{caps} tapped [[1/4 in NPT|Rp 1/4]] with nipple, tee, cock and hose barb"
TOOL_WORDS = {
    "co_alarm": "carbon monoxide alarm",
    "co_alarm.sold": "loud, with a display that shows ppm, for head height",
    "flue_meter": "flue-gas meter",
    "flue_meter.sold": "oxygen, carbon monoxide to 1 %, steel probe: sets the mixture",
    "extinguisher": "fire extinguisher",
    "extinguisher.sold": "dry powder, [5 lb|2 kg] or more",
    "rcd": "[[GFCI plug|RCD plug]]",
    "rcd.sold": "[[5|30]] mA, on an earthed socket, before blower, relay and every tool with a plug",
    "torch": "lighting torch",
    "torch.sold": "stem so long that its air holes stay outside, gas of its own, striker",
    "torch_stand": "stand for the torch",
    "torch_stand.sold": "heavy foot, holds it without a hand",
    "mask": "dust mask",
    "mask.sold": "for silica dust, [[P100|P3]], that fits the face; goggles and gloves with it",
    "cylinder": "gas cylinder",
    "cylinder.sold": "full charge {size:sold_mass}, own or for a deposit",
    "tank": "gas tank",
    "tank.sold": "own or rented, set up by the gas supplier",
    "manometer": "sloping gauge",
    "manometer.sold": "[[0 to 1 in of water|0 to 2.5 mbar]], reads a hundredth of it",
    "water_tube": "clear tube for water",
    "water_tube.sold": "[5 ft|1.5 m], bent to a U, with a rule: leak test, blower, low gas pressure",
    "thermocouple": "thermocouple",
    "thermocouple.sold": "type K, sheath thinner than a port, with a reader: drying, first fire",
    "oven": "old oven",
    "oven.sold": "electric, to {temp:rough_temperature} and by a thermostat, inside for {places} of {length:length} x "
    "{width:length} x {height:length}; never for food again",
    "kiln": "kiln",
    "kiln.sold": "electric, to {temp:rough_temperature}, with a controller that climbs and holds, inside for "
    "{places} of "
    "{length:length} x {width:length} x {height:length}; never for food",
    "scale": "scale",
    "gas_scale": "scale for the gas",
    "gas_scale.sold": "{carries:mass} by {shows:division 2}, a full cylinder is {full:mass}: proves the jet; or hired",
    "charge_scale": "scale for the cylinders",
    "charge_scale.sold": "{carries:mass}, a full cylinder is {full:mass}: tells when to change them; or hired",
    "scale.sold": "for the whole burner, to a five-thousandth of it: mix and drying",
    "hole_saw": "hole saw",
    "hole_saw.sold": "{size:sold_length}, for steel, with its arbor: inlet hole",
    "cutter": "angle grinder",
    "cutter.sold": "[[0.04 in|1 mm]] discs for the window, grinding disc for seams; guard, face shield, earmuffs",
    "cutter.sold_round": "for seams, with guard, face shield, earmuffs; a jigsaw with blades for steel: the window",
    "punch": "pin punch, hammer",
    "punch.sold": "thinner than the {through} holes: knocks pins back; pliers to turn them",
    "vacuum": "vacuum cleaner",
    "vacuum.sold": "for fine dust (HEPA or class H): ports, box, floor; silica dust is never blown or swept",
    "mirror": "mirror and lamp",
    "mirror.sold": "small, on a stem: looks into box and ports; cold, it shows steam while it dries",
    "drills": "drills",
    "drills.sold": "{relief:sold_bore} for the window; {port} for ports; {through} for knock-out; {no_go} as "
    "gauge{more}",
    "drills.sold_round": "{port} for ports; {through} for knock-out; {no_go} as gauge{more}",
    "drills.baffle": "; {size:sold_bore} for the baffle",
    "drills.jet": "; {drill} for the jet",
    "drills.damper": "; {sizes} for the damper, its hole and its gaps",
    "test_plate": "plate for the leak test",
    "test_plate.sold": "flat, {length:length} x {width:length} or more; gasket, clamps; " + _TEST_CAPS,
    "test_plate.sold_round": f"flat, {{length:length}} across or more; gasket, clamps; {_TEST_CAPS}",
    "test_plate.caps": "a screwed cap of {pipe:pipe}, bought",
    "test_plate.caps.2": "two screwed caps of {pipe:pipe}, one of them bought",
    "screws": "wood screws",
    "screws.sold": "{across}, {length:sold_length} long or more, for the mould",
    "screws.sold_round": "{across}, {length:length} to under {most:length} long for the layers; {base:length} or "
    "more for the base, 4 of them a mould",
    "clamps": "clamps",
    "clamps.sold": "open to {open:length} or more: two to a mould, at each end one across both cross-bars, below the "
    "bracket, till it is stripped",
    "clamps.sold_round": "open to {open:length} or more: two to a mould, at each end one across both cross-bars, below "
    "the bracket, till it is stripped; a strap round each mould",
    "cross_bar": "cross-bar",
    "cross_bar.sold": "square {side:sold_length}, {length:length} long or more, straight: steel or hard wood",
    "sealer": "sealer and wax",
    "sealer.sold": "shellac and paraffin wax for wood, paste wax",
}

TABLES = (
    Table(
        "cut_list",
        "Cut list for one burner",
        (
            Column("number", "No.", "count"),
            Column("piece", "Piece", "word"),
            Column("count", "Pieces", "count"),
            Column("length", "Length", "length"),
            Column("width", "Width", "length"),
            Column("thickness", "Thickness", "length"),
            Column("millimetres", "mm", "word"),
            Column("mass", "Mass", "mass"),
            Column("where", "Where", "word"),
            Column("note", "Note", "word"),
        ),
        source=TAKE_OFF,
        words=STEEL_PIECES,
    ),
    Table(
        "welding",
        "Welding, in this order",
        (Column("number", "No.", "count"), Column("when", "What", "word"), Column("do", "How", "word")),
        source=PRACTICE,
        words=WELD_WORDS,
    ),
    Table(
        "mounting",
        "In the chamber's wall",
        (Column("what", "What", "word"), Column("how", "How", "word")),
        source=PRACTICE,
        words=MOUNTING_WORDS,
    ),
    Table(
        "batch_cut_list",
        {"one": "All pieces to cut, one burner", "all": "All pieces to cut, {count} burners"},
        (
            Column("number", "No.", "count"),
            Column("piece", "Piece", "word"),
            Column("count", "In all", "count"),
            Column("length", "Length", "length"),
            Column("width", "Width", "length"),
            Column("thickness", "Thickness", "length"),
            Column("mass", "Mass in all", "mass"),
            Column("from", "Cut from", "word"),
        ),
        source=CUTTING,
        words={
            **BAR_NAMES,
            **STEEL_PIECES,
            "from": "{count} from {stock}, {length:sold_length}",
            "nipples": "nipples of {stock:sold_length}",
            "sheet": "sheet",
        },
    ),
    Table(
        "stock",
        {
            "one": "Stock to buy for one burner, and how to cut it",
            "all": "Stock to buy for all {count} burners, and how to cut it",
        },
        (
            Column("stock", "Stock", "word"),
            Column("length", "Buy", "sold_length"),
            Column("cuts", "Cut from it", "word"),
            Column("offcut", "Left over", "length"),
            Column("mass", "Mass", "mass"),
        ),
        source=CUTTING,
        words={
            **BAR_NAMES,
            **STEEL_PIECES,
            "cut": "{length:length} {piece}",
            "cuts": "{count} of {length:length} {piece}",
        },
    ),
    Table(
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
        source=BOARDS,
        words=MOULD_PIECES,
    ),
    Table(
        "pins",
        "Pins, from the bench to the last pull",
        (Column("when", "When", "word"), Column("do", "Do", "word")),
        source=PRACTICE,
        words=PIN_WORDS,
    ),
    Table(
        "base_drilling",
        {
            "base": "Mould base, {length:length} by {width:length}: holes from its lower left corner, pins up, "
            "seen from above"
        },
        (
            Column("number", "No.", "count"),
            Column("x", "x", "length"),
            Column("y", "y", "length"),
            Column("diameter", "Diameter", "bore"),
            Column("depth", "Depth", "length"),
            Column("through", "Then through", "word"),
        ),
        source=TAKE_OFF,
    ),
    Table(
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
        source=CLASSES,
    ),
    Table(
        "boards",
        {
            "one": "Boards and sheets to buy for the mould, and how to cut them",
            "all": "Boards and sheets to buy for all {count} moulds, and how to cut them",
        },
        (
            Column("stock", "Stock", "word"),
            Column("length", "Length", "sold_length"),
            Column("width", "Width", "sold_length"),
            Column("cuts", "Cut from it", "word"),
            Column("left", "Left over", "fraction"),
        ),
        source=WOOD_AS_SOLD,
        words={**MOULD_PIECES, "cut": "{count} x {piece} {length:length} by {width:length}"},
    ),
    Table(
        "batch_days",
        "The batch, day by day",
        (
            Column("day", "Day", "word"),
            Column("hands", "By hand", "word"),
            Column("oven", "Into the oven", "word"),
            Column("fire", "First fire and test", "word"),
        ),
        source=CALENDAR,
        words={
            "day": "day {number}, {weekday}",
            "pair": "pair {pair}: {jobs}",
            "weld": "{time} weld {burner}",
            "mould": "{time} make mould {burner}",
            "cast": "{time} cast {burner}",
            "free": "{time} free the pins of {burner}",
            "strip": "{time} strip {burner}",
            "trim": "{time} trim {burner}",
            "clear": "{time} clear the ports of {burner}",
            "oven": "{time} {burner}",
            "weigh": "{time} weigh {burner} in the oven",
            "fire": "{time} {burner}, heat {heat} of {heats}",
            "test": "{time} test fire of {burner}",
            "stands": "{jobs}, pair {pair}",
            "more": "and so on to day {days}",
        },
    ),
    Table(
        "castings",
        {
            "one": "What is cast on each day: for each block one mix, {dry:mass} dry and {water:mass} of water",
            "more": "What is cast on each day: for each block {mixes} mixes, {dry:mass} dry and {water:mass} of water",
            "dry": "What is cast on each day",
        },
        (
            Column("day", "Day", "word"),
            Column("blocks", "Blocks", "word"),
            Column("mixes", "Mixes", "count"),
            Column("dry", "Dry mix", "mass"),
            Column("bags", "Bags opened so far", "count"),
        ),
        source=CALENDAR,
        words={
            "day": "day {number}, {weekday}",
            "blocks": "{burners} by pair {pair}",
            "more": "and so on, {castings} castings in all",
        },
    ),
    Table(
        "one_more",
        "What one more saves",
        (
            Column("what", "With", "word"),
            Column("count", "In all", "count"),
            Column("days", "Days to the last burner", "count"),
            Column("saves", "Saves, days", "count"),
        ),
        source=CALENDAR,
        words={
            "moulds": "moulds: {more} more",
            "oven_places": "places in the oven: {more} more",
            "test_stands": "test stands: {more} more",
            "hands": "pairs of hands: {more} more",
        },
    ),
    Table(
        "cost_lines",
        "Cost lines",
        (
            Column("item", "Item", "word"),
            Column("need", "For one burner", "word"),
            Column("packs", "Buy", "count"),
            Column("used", "Used up, each", "price"),
            Column("batch", "Batch, bought whole", "price"),
        ),
        source=YOUR_PRICES,
        words=COST_WORDS,
    ),
    Table(
        "shopping",
        {
            "all": "Shopping list for the batch",
            "fewer": "Shopping list for {count} of the {burners} burners of the chamber",
        },
        (
            Column("item", "Item", "word"),
            Column("sold", "As sold", "word"),
            Column("count", "Buy", "count"),
            Column("price", "Price in all", "price"),
        ),
        source=YOUR_PRICES,
        words=SHOPPING_WORDS,
    ),
    Table(
        "tools",
        "Tools and safety gear, bought once: not in the cost of the burner",
        (
            Column("item", "Item", "word"),
            Column("sold", "As sold", "word"),
            Column("count", "Buy", "count"),
            Column("price", "Price in all", "money"),
        ),
        source=YOUR_PRICES,
        words=TOOL_WORDS,
    ),
    Table(
        "quantity_breaks",
        "More at once, if sold: examples until you set yours",
        (
            Column("burners", "At once", "count"),
            Column("material", "Material and gas", "money"),
            Column("hours", "Hours", "time"),
            Column("cost", "Cost all in", "money"),
            Column("price", "Price to ask", "money"),
            Column("bought", "A bought one", "money"),
            Column("make", "For yourself", "word"),
        ),
        source=YOUR_PRICES,
        words={"make": "make", "even": "about even", "buy": "buy"},
    ),
    Table(
        "selling_lines",
        {
            "one": "If sold: what one costs, line by line",
            "all": "If sold: what one of {count} costs, line by line",
        },
        (Column("what", "What", "word"), Column("amount", "Each", "price")),
        source=YOUR_PRICES,
        words={
            "kept": "1. Mould, train and blower: serve the next if one fails",
            "mould": "2. Work in the mould, {hours:.2f} h at {worth:g}: serves the next too",
            "lost": "3. The rest that is bought, gas of first and test fire",
            "work": "4. The rest of the work, {hours:.2f} h at {worth:g}",
            "scrap": "5. Those that fail, {scrap:g} of 100: (3 + 4) x {scrap:g} / {passed:g}",
            "overhead": "6. Overhead, {share:g} of 100 on lines 1 to 5",
            "cost": "Cost all in, lines 1 to 6",
            "profit": "7. Profit, {share:g} of 100 on it",
            "price": "Price to ask, lines 1 to 7",
        },
    ),
    Table(
        "hours",
        "Hours for the batch",
        (Column("step", "Step", "word"), Column("hours", "Hours", "time")),
        source=YOUR_PRICES,
        words={"weld": "steel", "mould": "mould", "cast": "casting", "finish": "finishing"},
    ),
)

CHARTS = (
    Chart(
        "cost_by_batch",
        "Cost of a burner by batch size",
        Axis("burners at once", "count"),
        Axis("cost of one", "money"),
        (
            Series("cost", "stock and parts"),
            Series("paid", "with the work paid"),
            Series("bought", "a bought burner"),
        ),
        cases={
            "make": "With the work paid, making is cheaper from {cheaper} at once.",
            "buy": "With the work paid, buying is cheaper up to {most} at once.",
        },
    ),
)
