"""What a shop can buy: sizes as sold, and example prices of what no setting has a price for. Common practice all."""

BLOWERS = {  # pressure shut, flow free: classes of small blower, no maker's list
    "in": (
        ("1.5 inH2O", "15 cfm"),
        ("3 inH2O", "40 cfm"),
        ("4 inH2O", "60 cfm"),
        ("4 inH2O", "100 cfm"),
        ("8 inH2O", "150 cfm"),
        ("12 inH2O", "250 cfm"),
    ),
    "mm": (
        ("4 mbar", "25 m3/h"),
        ("7.5 mbar", "70 m3/h"),
        ("10 mbar", "100 m3/h"),
        ("10 mbar", "170 m3/h"),
        ("20 mbar", "250 m3/h"),
        ("30 mbar", "420 m3/h"),
    ),
}
PINS = {
    "in": ("1/8 in", "5/32 in", "3/16 in", "1/4 in", "5/16 in", "3/8 in"),
    "mm": ("3 mm", "4 mm", "5 mm", "6 mm", "8 mm", "10 mm"),
}
TUBES = {  # width, depth, wall
    "in": (
        ("3 in", "3 in", "3/16 in"),
        ("3 1/2 in", "3 1/2 in", "3/16 in"),
        ("4 in", "4 in", "3/16 in"),
        ("5 in", "5 in", "3/16 in"),
        ("4 in", "3 in", "3/16 in"),
    ),
    "mm": (
        ("80 mm", "80 mm", "4 mm"),
        ("90 mm", "90 mm", "4 mm"),
        ("100 mm", "100 mm", "4 mm"),
        ("120 mm", "120 mm", "5 mm"),
        ("120 mm", "80 mm", "4 mm"),
    ),
}
PLATE_BOXES = {"in": ("3 in", "4 in", "5 in"), "mm": ("80 mm", "100 mm", "125 mm")}  # sides of a welded box
PIPES = ("3/4", "1", "1-1/4", "1-1/2", "2", "2-1/2", "3")
CYLINDERS = (  # size and how many, the cheapest first
    *(("20", 1), ("30", 1), ("40", 1), ("20", 2), ("20", 3), ("30", 2), ("100", 1)),
    *(("40", 2), ("20", 4), ("30", 3), ("100", 2), ("100", 3), ("100", 4), ("100", 6), ("100", 8)),
)
MOST_CYLINDERS = 6  # of one size, when more are bought
CYLINDER_PRICES = {"20": 60.0, "30": 90.0, "40": 110.0, "100": 220.0, "tank": 1500.0}  # examples
DRILL_PRICE = 3.0  # of one for a jet; an example
BLOCKS = {"in": ("1 1/2 in", "2 in", "2 1/2 in", "3 in", "4 in"), "mm": ("40 mm", "50 mm", "65 mm", "75 mm", "100 mm")}
PRESSURES = {"in": ("5 psi", "10 psi", "15 psi", "20 psi"), "mm": ("0.35 bar", "0.7 bar", "1 bar", "1.4 bar")}
LOW_FIRES = ("60 %", "50 %", "40 %", "30 %", "25 %", "20 %", "15 %")
BAFFLE_HOLE = {"in": "3/8 in", "mm": "9.5 mm"}
WIDER_LIPS = {
    "in": ("0 in", "1/8 in", "1/4 in", "1/2 in"),
    "mm": ("0 mm", "3 mm", "6 mm", "12 mm"),
}  # than they must be
EDGE_MARGIN = {"in": "1/4 in", "mm": "6 mm"}
STICK = {"in": "20 ft", "mm": "6 m"}  # the longest that is sold of tube
