"""Every setting of a design, declared once. Widgets, link, command line and the tables of the README come from here.

Keys and the meaning of their values are the public promise of links (v=1): a default, once published, stays.
"""
from dataclasses import dataclass

from .making.refractory import castable_names, castable
from .making.stock import boards
from .physics.fuels import BLEND_SPECIES
from .physics.linings import material_keys
from .physics.metals import metal, metal_keys
from .physics.pipes import pipe_names


@dataclass(frozen=True)
class Setting:
    """One thing the smith decides.

    Attributes:
        key        name in link, command line and JSON
        group      chapter of the job it belongs to (a key of GROUPS)
        label      trade words, no unit
        dimension  a key of units.DIMENSIONS, or a kind: "choice", "words" (text read by its own parser in design.PARSERS)
        default    as a user would type it
        help       one plain sentence
        low, high  allowed range, as a user would type it; "" for no limit
        step       (inch mode, mm mode) what one press of a step button adds, as typed
        choices    for a choice: ((value, label), ...)
        whole      True when only whole numbers make sense
        optional   True when the text may be empty
        fine       True for what most leave alone; the page keeps it folded away
        when       (key, value) of the choice under which alone it counts; the page hides it otherwise
        words      words that may stand instead of a number; the value is then the word itself
    """
    key: str
    group: str
    label: str
    dimension: str
    default: str
    help: str
    low: str = ""
    high: str = ""
    step: tuple = ()
    choices: tuple = ()
    whole: bool = False
    optional: bool = False
    fine: bool = False
    words: tuple = ()
    when: tuple = ()


GROUPS = {
    "heat": "Heat",
    "face": "Face",
    "air": "Air",
    "gas": "Gas",
    "make": "Make",
    "fire": "Fire",
    "money": "Money",
}

_EIGHTH, _SIXTEENTH = ("1/8 in", "2 mm"), ("1/16 in", "1 mm")
PIPES = tuple((name, name) for name in pipe_names())
METALS = tuple((key, metal(key).name) for key in metal_keys())
BOARDS = tuple((board.name, board.name) for board in boards())
REFRACTORIES = (*((name, castable(name).label) for name in castable_names()), ("own", "own, from the bag's data sheet"))
NO_YES = (("no", "no"), ("yes", "yes"))

SETTINGS = (
    Setting("units", "heat", "Tape", "choice", "in",
            "Inches as a tape is read, or millimetres; changes what is shown, never the design.",
            choices=(("in", "inches"), ("mm", "millimetres"))),

    # Face: the steel body, the window in it and the ports
    Setting("body_kind", "face", "Body", "choice", "tube",
            "Square or rectangular tube, four plates, or round pipe with a disc for a face.",
            choices=(("tube", "tube"), ("plates", "four plates"), ("pipe", "round pipe"))),
    Setting("body_length", "face", "Body length", "length", "9 in",
            "Outside length of the steel box; the rows of ports run along it. A round pipe: its outside diameter.",
            "2 in", "60 in", ("1/4 in", "5 mm")),
    Setting("body_width", "face", "Face width", "length", "4 in",
            "Outside width of the side that carries the face. A round pipe: its outside diameter.", "1 1/2 in",
            "24 in", ("1/4 in", "5 mm")),
    Setting("body_depth", "face", "Body depth", "length", "4 in",
            "Outside depth of the box, from the face back to the side with the inlet.", "1 1/2 in", "24 in", ("1/4 in",
            "5 mm")),
    Setting("wall", "face", "Steel wall", "length", "3/16 in",
            "Thickness of the steel.", "1/32 in", "3/4 in", ("1/32 in", "0.5 mm")),
    Setting("setback", "face", "Setback", "length", "5/8 in",
            "From the outside of the box to the window: the lip of steel that the refractory grips.", "1/16 in",
            "4 in", _SIXTEENTH),
    Setting("corner_radius", "face", "Window corner radius", "length", "3/16 in",
            "Radius of the window's corners, as left by the drill that starts each corner. A round pipe has none.",
            "0 in", "3 in", _SIXTEENTH),
    Setting("port_diameter", "face", "Port diameter", "length", "1/4 in",
            "Diameter of every port, as cast.", "1/16 in", "1 in", ("1/32 in", "0.5 mm")),
    Setting("rows", "face", "Rows", "count", "5",
            "Rows of ports across the face. Rings: how many, round a port in the middle.", "1", "40", ("1", "1"),
            whole=True),
    Setting("ports_per_row", "face", "Ports in a long row", "count", "9",
            "Ports in a long row; short rows have one fewer. Rings: ports in the outer ring.", "1", "100", ("1", "1"),
            whole=True),
    Setting("pattern", "face", "Pattern", "choice", "staggered",
            "Staggered: every second row sits in the gaps of its neighbours and has one port fewer. Hexagonal: the same "
            "with six neighbours equally far. Hexagonal and rings suit a round pipe.",
            choices=(("straight", "straight"), ("staggered", "staggered"), ("hexagonal", "hexagonal"), ("rings", "rings"))),
    Setting("edge_margin", "face", "Edge margin", "length", "1/4 in",
            "From the edge of the outer ports to the edge of the window.", "0 in", "6 in", _SIXTEENTH),
    Setting("block_thickness", "face", "Block thickness", "length", "2 1/2 in",
            "Length of a port, from plenum to fire.", "1/2 in", "12 in", _EIGHTH),
    Setting("grip", "face", "Grip", "length", "3/4 in",
            "How deep the box is pushed into the wet refractory, from the outside of its face.", "1/16 in", "6 in",
            _SIXTEENTH),
    Setting("inlet", "face", "Inlet pipe", "choice", "2",
            "Nominal size of the pipe into the back of the box, schedule 40.",
            choices=PIPES),
    Setting("port_wall_temperature", "face", "Port wall when hot", "temperature", "1200 degF",
            "Mean over the port's length once the face glows, for flashback in hot ports; common practice, measure if you can.",
            "200 degF", "2400 degF", ("50 degF", "25 degC")),

    # Heat: the chamber, its lining, opening and work; then fuel, mixture and place
    Setting("chamber_shape", "heat", "Chamber", "choice", "box",
            "Shape of the inside of the chamber; a cylinder lies on its side.",
            choices=(("box", "box"), ("cylinder", "cylinder"))),
    Setting("chamber_length", "heat", "Chamber length", "length", "12 in", "Inside, from end to end.", "1 in", "240 in",
            ("1/2 in", "10 mm")),
    Setting("chamber_width", "heat", "Chamber width", "length", "6 in", "Inside, across; for a box.", "1 in", "120 in",
            ("1/2 in", "10 mm"), when=("chamber_shape", "box")),
    Setting("chamber_height", "heat", "Chamber height", "length", "5 1/2 in", "Inside, floor to roof; for a box.",
            "1 in", "120 in",
            ("1/2 in", "10 mm"), when=("chamber_shape", "box")),
    Setting("chamber_diameter", "heat", "Chamber diameter", "length", "6 1/2 in", "Inside, across; for a cylinder.",
            "1 in", "120 in",
            ("1/2 in", "10 mm"), when=("chamber_shape", "cylinder")),
    Setting("lining", "heat", "Lining", "lining", "dense_castable 1 in, blanket_8lb 2 in",
            "Layers from the hot face out: material and thickness, commas between. Materials: " + ", ".join(material_keys()) + "."),
    Setting("opening_area", "heat", "Opening", "area", "12 in2",
            "Area that stays open while the chamber works: door, gap under it, flue hole.", "0 in2", "10000 in2",
            ("1 in2", "10 cm2")),
    Setting("opening_depth", "heat", "Opening depth", "length", "3 in",
            "Thickness of the wall around the opening; a deep opening radiates less.", "0 in", "48 in", ("1/2 in",
            "10 mm")),
    Setting("chamber_temperature", "heat", "Chamber temperature", "temperature", "2250 degF",
            "Of the hot face and of the gas that leaves.", "400 degF", "3200 degF", ("25 degF", "10 degC")),
    Setting("work_metal", "heat", "Metal", "choice", "steel", "What is heated.", choices=METALS),
    Setting("work_rate", "heat", "Work rate", "mass_flow", "10 lb/h",
            "Metal brought from shop temperature to its own each hour.",
            "0 lb/h", "2000 lb/h", ("1 lb/h", "0.5 kg/h")),
    Setting("work_temperature", "heat", "Work temperature", "temperature", "2100 degF",
            "Of the metal when it comes out; above its melting point the heat of melting counts too.", "200 degF",
            "3200 degF",
            ("25 degF", "10 degC")),
    Setting("heat_up_time", "heat", "Heat-up time", "time", "30 min", "From cold to chamber temperature.", "1 min",
            "100 h",
            ("5 min", "5 min")),
    Setting("burner_count", "heat", "Burners", "count", "1", "Equal burners that share the chamber.", "1", "24", ("1",
            "1"), whole=True),
    Setting("fuel", "heat", "Fuel", "choice", "propane", "What is burned.",
            choices=(("propane", "propane"), ("natural_gas", "natural gas"), ("butane", "butane"))),
    Setting("fuel_blend", "heat", "Fuel analysis", "fuel_blend", "",
            "Mole fractions such as C3H8 0.93, C2H6 0.05, C4H10 0.02; stands over the fuel when it is given. Species: "
            + ", ".join(BLEND_SPECIES) + ".", optional=True),
    Setting("firing_rate", "heat", "Firing rate", "power", "100 kBtu/h",
            "Heat of the gas burned each hour by this burner at high fire, gross heating value; auto takes what the chamber needs.",
            "1 kBtu/h", "3000 kBtu/h", ("5 kBtu/h", "1 kW"), words=("auto",)),
    Setting("low_fire", "heat", "Low fire", "fraction", "40 %",
            "Least fire that you want to turn down to, of the firing rate, gas and air together.", "5 %", "100 %",
            ("5 %", "5 %")),
    Setting("equivalence_ratio", "heat", "Equivalence ratio", "ratio", "1.0",
            "Fuel over what the air can just burn: above 1 rich, below 1 lean.", "0.5", "1.6", ("0.02", "0.02")),
    Setting("ambient_temperature", "heat", "Shop temperature", "temperature", "60 degF",
            "Temperature of the air that the blower takes in.", "-4 degF", "130 degF", ("5 degF", "2 degC")),
    Setting("altitude", "heat", "Altitude", "long_length", "0 ft",
            "Height above sea level; thin air carries less fire.", "-1000 ft", "12000 ft", ("500 ft", "100 m")),

    # Heat: what the comparison of burner kinds assumes of each
    Setting("multi_port_excess_air", "heat", "Excess air, blown multi-port", "fraction", "5 %",
            "Excess air that this kind holds in daily use; common practice, for the comparison of kinds only.", "0 %",
            "100 %",
            ("5 %", "5 %"), fine=True),
    Setting("blown_excess_air", "heat", "Excess air, blown single flame", "fraction", "10 %",
            "Excess air that this kind holds in daily use; common practice, for the comparison of kinds only.", "0 %",
            "100 %",
            ("5 %", "5 %"), fine=True),
    Setting("aspirated_excess_air", "heat", "Excess air, aspirated", "fraction", "20 %",
            "Excess air that this kind holds in daily use; common practice, for the comparison of kinds only.", "0 %",
            "100 %",
            ("5 %", "5 %"), fine=True),
    Setting("aspirated_pressure", "heat", "Gas pressure, aspirated", "gas_pressure", "10 psi",
            "Gauge pressure at the jet of the aspirated burner that is compared; common practice.", "0.1 psi", "60 psi",
            ("1 psi", "0.1 bar"), fine=True),
    Setting("aspirated_jet", "heat", "Jet, aspirated", "paper_length", "0.9 mm",
            "Diameter of its gas jet; common practice.", "0.3 mm", "6 mm", ("0.05 mm", "0.05 mm"), fine=True),
    Setting("aspirated_throat", "heat", "Throat pipe, aspirated", "choice", "3/4",
            "Nominal size of the pipe, schedule 40, in which it mixes; common practice.", choices=PIPES, fine=True),
    Setting("aspirated_inlet_loss", "heat", "Air inlet loss, aspirated", "ratio", "1",
            "Velocity heads lost by the air on its way in: 1 sharp-edged, 0.1 well rounded; common practice.", "0", "5",
            ("0.1", "0.1"), fine=True),
    Setting("aspirated_outlet_loss", "heat", "Outlet loss, aspirated", "ratio", "1",
            "Velocity heads lost at the flame end: 1 plain tube, 0.5 a good flare; common practice.", "0", "5", ("0.1",
            "0.1"), fine=True),

    # Air: blower, mix pipe and the way into the plenum
    Setting("blower_shutoff_pressure", "air", "Blower pressure, shut", "pressure", "4 inH2O",
            "Pressure of the blower with its outlet shut, in standard air.", "0.1 inH2O", "100 inH2O", ("0.5 inH2O",
            "1 mbar")),
    Setting("blower_free_flow", "air", "Blower flow, free", "air_flow", "60 cfm",
            "Air of the blower blowing free, with nothing connected.",
            "1 cfm", "5000 cfm", ("5 cfm", "10 m3/h")),
    Setting("blower_curve", "air", "Blower curve", "blower_curve", "",
            "Points of the maker's curve from no flow on, such as 0 cfm 8 inH2O, 100 cfm 5 inH2O; stands over the two numbers when given.",
            optional=True),
    Setting("mix_pipe", "air", "Mix pipe", "choice", "1-1/2",
            "Nominal size of the pipe in which gas and air mix, schedule 40.", choices=PIPES),
    Setting("mix_pipe_length", "air", "Mix pipe length", "length", "18 in",
            "From the gas jet to the inlet of the body.", "0 in", "240 in",
            ("1 in", "25 mm")),
    Setting("mix_pipe_elbows", "air", "Elbows", "count", "1", "Elbows of 90 degrees between the gas jet and the body.",
            "0", "12", ("1", "1"),
            whole=True),
    Setting("inlet_position", "air", "Inlet at", "choice", "centre",
            "Centre: into the middle of the back, facing the ports. End: into one end of the body, along the plenum.",
            choices=(("centre", "centre"), ("end", "end"))),
    Setting("baffle_holes", "air", "Baffle holes", "count", "40",
            "Holes in a plate across the plenum that breaks the inlet's jet; 0 for no baffle.",
            "0", "5000", ("5", "5"), whole=True),
    Setting("baffle_hole_diameter", "air", "Baffle hole", "length", "3/8 in", "Diameter of each hole in the baffle.",
            "1/16 in", "2 in", _SIXTEENTH),
    Setting("baffle_thickness", "air", "Baffle thickness", "length", "1/16 in", "Thickness of the baffle's sheet.",
            "1/64 in", "1/2 in",
            ("1/64 in", "0.5 mm")),
    Setting("baffle_bend_angle", "air", "Baffle bend", "angle", "60 deg",
            "How far the baffle is bent from flat along its middle.", "0 deg", "120 deg",
            ("5 deg", "5 deg")),
    Setting("chamber_back_pressure", "air", "Back pressure of the chamber", "pressure", "0 inH2O",
            "Pressure in the hot chamber over that of the shop; none with an open door.", "0 inH2O", "20 inH2O",
            ("0.05 inH2O", "0.1 mbar")),

    # Gas: jet, regulator, cylinder, price
    Setting("gas_pressure", "gas", "Gas pressure", "gas_pressure", "5 psi",
            "Before the jet at high fire; a house line gives 7 inH2O.", "1 inH2O",
            "60 psi", ("0.5 psi", "0.05 bar")),
    Setting("jet_discharge_coefficient", "gas", "Jet coefficient", "ratio", "0.85",
            "Share of the ideal flow that the jet passes: 0.80 to 0.85 for a drilled jet, 0.60 to 0.65 for a sharp edge; common practice.",
            "0.5", "1", ("0.01", "0.01")),
    Setting("jet_drill", "gas", "Jet drill", "drill", "",
            "Drill of the jet, such as #54, F, 1/16 in or 1.5 mm; empty takes the nearest.",
            optional=True),
    Setting("cylinder", "gas", "Cylinder", "choice", "100",
            "What the gas is drawn from, upright, by its full charge; or a lying tank.",
            choices=(("20", "20 lb"), ("30", "30 lb"), ("40", "40 lb"), ("100", "100 lb"), ("tank", "lying tank"))),
    Setting("cylinder_count", "gas", "Cylinders", "count", "1", "Equal cylinders that are drawn from together.", "1",
            "20", ("1", "1"), whole=True),
    Setting("cylinder_fill", "gas", "Fill", "fraction", "80 %", "Gas in the cylinder, of its full charge.", "5 %",
            "100 %", ("5 %", "5 %")),
    Setting("tank_diameter", "gas", "Tank diameter", "length", "30 in", "Outside diameter of a lying tank.", "6 in",
            "120 in", ("1 in", "25 mm"), when=("cylinder", "tank")),
    Setting("tank_length", "gas", "Tank length", "length", "92 in",
            "Overall length of a lying tank with its round ends.", "6 in", "600 in",
            ("1 in", "25 mm"), when=("cylinder", "tank")),
    Setting("regulator_inlet_pressure", "gas", "Regulator needs", "gas_pressure", "10 psi",
            "Least pressure that the regulator needs from the cylinder; the gas pressure itself counts when it is more.", "0 psi", "60 psi",
            ("1 psi", "0.1 bar")),
    Setting("fuel_price", "gas", "Price of the gas", "price_by_mass", "0.90/lb",
            "Price by weight; an example. A gallon of propane weighs 4.2 lb."),

    # Make: stock, mould, pins, refractory
    Setting("caps", "make", "End caps", "choice", "in", "Set in flush with the ends of the tube, or laid on them.",
            choices=(("in", "set in"), ("on", "laid on"))),
    Setting("cap_gap", "make", "Gap round a cap", "length", "1/64 in",
            "Left on each side of a cap that is set in, so that it goes in.",
            "0 in", "1/8 in", ("1/64 in", "0.2 mm"), fine=True),
    Setting("stock_lengths", "make", "Lengths on the rack", "lengths", "1 ft, 2 ft, 4 ft, 8 ft, 20 ft",
            "Lengths in which the shop sells tube, flat bar and pipe, with commas between them."),
    Setting("kerf", "make", "Saw cut", "length", "1/16 in", "Width of steel that one cut of the saw turns to chips.",
            "0 in", "1/4 in",
            ("1/32 in", "0.5 mm"), fine=True),
    Setting("corner_drill", "make", "Corner drill", "length", "3/8 in",
            "Drill for the relief hole in each corner of the window; the cuts run from hole to hole.", "1/16 in",
            "2 in", _SIXTEENTH),
    Setting("inlet_length", "make", "Inlet pipe length", "length", "3 in",
            "Length of the inlet pipe outside the body.", "1 in", "36 in",
            ("1/2 in", "10 mm")),
    Setting("nipple_stock", "make", "Nipples on the rack", "offers",
            "3 in 8.00, 4 in 9.00, 6 in 11.00, 12 in 18.00, 36 in 40.00",
            "Length and price of the pipe nipples on sale, with commas between them; prices are examples.", fine=True),
    Setting("mould_clearance", "make", "Mould clearance", "length", "1/8 in",
            "How much longer and wider the mould is inside than the body is outside.", "0 in", "6 in", _SIXTEENTH),
    Setting("mould_board", "make", "Mould frame", "choice", "ply 3/4",
            "Boards of the mould's frame; plywood is ripped to height, a dressed board is used at its width.",
            choices=BOARDS),
    Setting("mould_base", "make", "Mould base", "choice", "ply 3/4", "Board under the mould that holds the pins.",
            choices=BOARDS, fine=True),
    Setting("pin_depth", "make", "Pin depth", "length", "1/2 in", "How deep the pins stand in the base board.",
            "1/8 in", "3 in", _SIXTEENTH),
    Setting("pin_stock_length", "make", "Pin stock length", "length", "36 in",
            "Length of one stick, dowel or rod that the pins are cut from.", "1 in", "120 in", ("1/2 in", "10 mm")),
    Setting("pin_spares", "make", "Spare pins", "count", "3", "Pins to cut besides one a port.", "0", "200", ("1",
            "1"), whole=True, fine=True),
    Setting("refractory", "make", "Refractory", "choice", "dense_castable", "Class of the refractory in the block.",
            choices=REFRACTORIES),
    Setting("castable_density", "make", "Own refractory: density", "density", "145 lb/ft3",
            "Dry density as placed, from the bag's data sheet.",
            "20 lb/ft3", "240 lb/ft3", ("5 lb/ft3", "100 kg/m3"), fine=True, when=("refractory", "own")),
    Setting("castable_water_low", "make", "Own refractory: least water", "fraction", "9 %",
            "Least water by mass of dry mix, from the bag's data sheet.", "0 %", "60 %", ("1 %", "1 %"), fine=True,
            when=("refractory", "own")),
    Setting("castable_water_high", "make", "Own refractory: most water", "fraction", "11 %",
            "Most water by mass of dry mix, from the bag's data sheet.", "0 %", "60 %", ("1 %", "1 %"), fine=True,
            when=("refractory", "own")),
    Setting("castable_service", "make", "Own refractory: service limit", "temperature", "3000 degF",
            "Highest temperature it stands, from the bag's data sheet.", "1000 degF", "3600 degF", ("50 degF",
            "25 degC"), fine=True, when=("refractory", "own")),
    Setting("working_time", "make", "Own refractory: working time", "time", "0.5 h",
            "How long the mix can be placed once it is wet.",
            "0.05 h", "24 h", ("0.1 h", "0.1 h"), fine=True, when=("refractory", "own")),
    Setting("bag_mass", "make", "Bag", "mass", "55 lb", "Dry mass of one bag as sold.", "1 lb", "4000 lb", ("5 lb",
            "5 kg"), fine=True),
    Setting("waste_allowance", "make", "Waste allowance", "fraction", "10 %",
            "Refractory mixed beyond the block: bucket, trowel, floor.",
            "0 %", "100 %", ("5 %", "5 %"), fine=True),
    Setting("placing_rate", "make", "Placing rate", "mass_flow", "80 lb/h",
            "Dry mix that you can wet, place and tamp in an hour; an example, time your own.", "5 lb/h", "5000 lb/h",
            ("10 lb/h", "5 kg/h"), fine=True),
    Setting("port_tilt_tolerance", "make", "Pins crooked by", "angle", "1 deg", "Most that a pin leans from square.",
            "0 deg", "15 deg",
            ("0.5 deg", "0.5 deg"), fine=True),
    Setting("port_position_tolerance", "make", "Pins off by", "length", "1/32 in",
            "Most that a pin stands off its mark on the base.", "0 in", "1/4 in",
            ("1/64 in", "0.5 mm"), fine=True),

    # Fire: the days from the welder to the first fire
    Setting("start_date", "fire", "First day", "date", "",
            "Date of the first day of work, year-month-day; empty counts the days from 1.",
            optional=True),
    Setting("damp_air", "fire", "Damp air", "choice", "no",
            "Yes where washing would not dry: curing and air-drying take half as long again.",
            choices=NO_YES),

    # Money: every figure is an example to be replaced by your own
    Setting("batch_size", "money", "Burners at once", "count", "1",
            "How many burners are made together from stock bought whole.", "1", "100",
            ("1", "1"), whole=True),
    Setting("price_steel", "money", "Steel", "price_by_mass", "2.00/lb",
            "Price of tube, plate and flat bar by weight; an example."),
    Setting("price_bag", "money", "Bag of refractory", "money", "95", "Price of one bag; an example.", "0", "10000",
            ("5", "5")),
    Setting("price_pins", "money", "Pin stock", "money", "1.50",
            "Price of one stick, dowel or rod for the pins; an example.", "0", "1000",
            ("0.5", "0.5")),
    Setting("price_mould", "money", "Mould", "money", "20",
            "Wood, screws and oil for the mould, which serves the whole batch; an example.",
            "0", "10000", ("5", "5")),
    Setting("price_train", "money", "Gas train", "money", "140",
            "Jet, valves, hose, regulator and safety parts for one burner; an example.", "0", "100000", ("10", "10")),
    Setting("price_blower", "money", "Blower", "money", "120",
            "Blower, damper and air pipe for one burner; an example.", "0", "100000",
            ("10", "10")),
    Setting("price_sundries", "money", "Sundries", "money", "25",
            "Wire, discs, drills, gloves and filters for one burner; an example.",
            "0", "10000", ("5", "5")),
    Setting("hours_weld", "money", "Hours: steel", "time", "3 h",
            "Cutting, drilling and welding one burner; an example.", "0 h", "500 h",
            ("0.5 h", "0.5 h")),
    Setting("hours_mould", "money", "Hours: mould", "time", "1.5 h",
            "Making the mould, once for the batch; an example.", "0 h", "500 h",
            ("0.5 h", "0.5 h")),
    Setting("hours_cast", "money", "Hours: casting", "time", "1 h",
            "Setting pins, mixing and casting one block; an example.", "0 h", "500 h",
            ("0.5 h", "0.5 h")),
    Setting("hours_finish", "money", "Hours: finishing", "time", "1.5 h",
            "Stripping, trimming and clearing the ports of one burner; an example.",
            "0 h", "500 h", ("0.5 h", "0.5 h")),
    Setting("bought_price", "money", "Price of a bought burner", "money", "700",
            "What a bought burner would cost that does the same; an example.",
            "0", "1000000", ("50", "50")),
    Setting("hour_value", "money", "Worth of an hour", "money", "25",
            "What an hour of your work is worth to you; an example.", "0", "10000",
            ("5", "5")),

    # Paper
    Setting("print_scale_x", "make", "Printed bar, across", "paper_length", "100 mm",
            "What the 100 mm bar across the sheet measures on paper; corrects the printer. Further off, it fits the page: "
            "print at 100 %.", "94 mm", "106 mm", ("0.1 mm", "0.1 mm")),
    Setting("print_scale_y", "make", "Printed bar, up", "paper_length", "100 mm",
            "What the 100 mm bar up the sheet measures on paper; corrects the printer. Further off, it fits the page: "
            "print at 100 %.", "94 mm", "106 mm", ("0.1 mm", "0.1 mm")),
)

BY_KEY = {setting.key: setting for setting in SETTINGS}
