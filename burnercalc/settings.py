"""Every setting of a design, declared once. Widgets, link, command line and the tables of the README come from here.

Keys and the meaning of their values are the public promise of links (v=1): a default, once published, stays.
"""
from dataclasses import dataclass

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

SETTINGS = (
    Setting("units", "face", "Tape", "choice", "in", "Inches as a tape is read, or millimetres; changes what is shown, never the design.",
            choices=(("in", "inches"), ("mm", "millimetres"))),

    # Face: the steel body, the window in it and the ports
    Setting("body_length", "face", "Body length", "length", "9 in",
            "Outside length of the steel box; the rows of ports run along it.", "2 in", "60 in", ("1/4 in", "5 mm")),
    Setting("body_width", "face", "Face width", "length", "4 in",
            "Outside width of the side that carries the face.", "1 1/2 in", "24 in", ("1/4 in", "5 mm")),
    Setting("body_depth", "face", "Body depth", "length", "4 in",
            "Outside depth of the box, from the face back to the side with the inlet.", "1 1/2 in", "24 in", ("1/4 in", "5 mm")),
    Setting("wall", "face", "Steel wall", "length", "3/16 in",
            "Thickness of the steel.", "1/32 in", "3/4 in", ("1/32 in", "0.5 mm")),
    Setting("setback", "face", "Setback", "length", "5/8 in",
            "From the outside of the box to the window: the lip of steel that the refractory grips.", "1/16 in", "4 in", _SIXTEENTH),
    Setting("corner_radius", "face", "Window corner radius", "length", "3/16 in",
            "Radius of the window's corners, as left by the drill that starts each corner.", "0 in", "3 in", _SIXTEENTH),
    Setting("port_diameter", "face", "Port diameter", "length", "1/4 in",
            "Diameter of every port, as cast.", "1/16 in", "1 in", ("1/32 in", "0.5 mm")),
    Setting("rows", "face", "Rows", "count", "5", "Rows of ports across the face.", "1", "40", ("1", "1"), whole=True),
    Setting("ports_per_row", "face", "Ports in a long row", "count", "9",
            "Ports in the first row; staggered short rows have one fewer.", "1", "100", ("1", "1"), whole=True),
    Setting("pattern", "face", "Pattern", "choice", "staggered",
            "Staggered: every second row sits in the gaps of its neighbours and has one port fewer.",
            choices=(("straight", "straight"), ("staggered", "staggered"))),
    Setting("edge_margin", "face", "Edge margin", "length", "1/4 in",
            "From the edge of the outer ports to the edge of the window.", "0 in", "6 in", _SIXTEENTH),
    Setting("block_thickness", "face", "Block thickness", "length", "2 1/2 in",
            "Length of a port, from plenum to fire.", "1/2 in", "12 in", _EIGHTH),
    Setting("grip", "face", "Grip", "length", "3/4 in",
            "How deep the box is pushed into the wet refractory, from the outside of its face.", "1/16 in", "6 in", _SIXTEENTH),
    Setting("inlet", "face", "Inlet pipe", "choice", "2", "Nominal size of the pipe into the back of the box, schedule 40.",
            choices=PIPES),

    # Heat: fuel, mixture and place
    Setting("fuel", "heat", "Fuel", "choice", "propane", "What is burned.",
            choices=(("propane", "propane"), ("natural_gas", "natural gas"), ("butane", "butane"))),
    Setting("firing_rate", "heat", "Firing rate", "power", "100 kBtu/h",
            "Heat of the gas burned each hour by this burner at high fire, gross heating value.", "1 kBtu/h", "3000 kBtu/h",
            ("5 kBtu/h", "1 kW")),
    Setting("equivalence_ratio", "heat", "Equivalence ratio", "ratio", "1.0",
            "Fuel over what the air can just burn: above 1 rich, below 1 lean.", "0.5", "1.6", ("0.02", "0.02")),
    Setting("ambient_temperature", "heat", "Shop temperature", "temperature", "60 degF",
            "Temperature of the air that the blower takes in.", "-4 degF", "130 degF", ("5 degF", "2 degC")),
    Setting("altitude", "heat", "Altitude", "long_length", "0 ft",
            "Height above sea level; thin air carries less fire.", "-1000 ft", "12000 ft", ("500 ft", "100 m")),

    # Paper
    Setting("print_scale_x", "make", "Printed bar, across", "paper_length", "100 mm",
            "What the 100 mm bar across the sheet measures on paper; corrects the printer.", "90 mm", "110 mm", ("0.1 mm", "0.1 mm")),
    Setting("print_scale_y", "make", "Printed bar, up", "paper_length", "100 mm",
            "What the 100 mm bar up the sheet measures on paper; corrects the printer.", "90 mm", "110 mm", ("0.1 mm", "0.1 mm")),
)

BY_KEY = {setting.key: setting for setting in SETTINGS}
