"""What of a design is looked at on the page, and what can be taken away from it on paper or as a file."""

from burnercalc.files import FILES

SHOWN_DRAWINGS = ("face", "section", "section_across", "exploded", "in_chamber", "mould")  # the others are paper

# Everything that can be taken away: heading, then (what, key before the dash, [(key after it, label)]).
PAPERS, DRAWN = (("letter", "Letter"), ("a4", "A4")), (("svg", "SVG"), ("dxf", "DXF"))
TAKEN = (
    (
        "To pin up",
        (
            ("Build sheet", "sheet", PAPERS),
            ("Shopping list", "shopping", PAPERS),
            ("Lighting card", "lighting-card", PAPERS),
            ("Papers that go with each burner", "traveller", PAPERS),
            ("Data plate and operating card", "plates", PAPERS),
        ),
    ),
    (
        "Templates, true to size",
        (
            ("All templates", "templates", PAPERS),
            ("Drilling template", "template", PAPERS),
            ("Window", "window", PAPERS),
            ("Inlet hole", "inlet", PAPERS),
            ("End cap", "cap", PAPERS),
            ("Baffle", "baffle", PAPERS),
            ("Mould", "mould", PAPERS),
            ("Slide of the damper", "slide", PAPERS),
        ),
    ),
    (
        "Drawings, in millimetres",
        (
            ("Drilling template", "template", DRAWN),
            ("Window", "window", DRAWN),
            ("Inlet hole", "inlet", DRAWN),
            ("End cap", "cap", DRAWN),
            ("Baffle", "baffle", DRAWN),
            ("Mould", "mould", DRAWN),
            ("Boards of the mould, cut", "nest", DRAWN),
            ("Face", "face", DRAWN),
            ("Section along", "section", DRAWN),
            ("Section across", "section_across", DRAWN),
            ("Taken apart", "exploded", DRAWN),
            ("In the chamber", "in_chamber", DRAWN),
            ("Gas train", "train", DRAWN),
            ("Slide of the damper", "slide", DRAWN),
            ("Data plate", "plate", DRAWN),
            ("Operating card", "operating_card", DRAWN),
            ("Pin guide, for a laser", "pin_guide", DRAWN),
            ("Drilled base, for a router", "drilled_base", DRAWN),
        ),
    ),
    (
        "Lists and data",
        (
            ("Hole table", "holes", (("csv", "CSV"),)),
            ("Cut list", "cut-list", (("csv", "CSV"),)),
            ("Shopping list", "shopping", (("csv", "CSV"),)),
            ("Tools and safety gear", "tools", (("csv", "CSV"),)),
            ("Design", "design", (("json", "JSON"),)),
            ("Calendar of the days", "calendar", (("ics", "ICS"),)),
        ),
    ),
)


def file_groups():
    """TAKEN with whole keys; stops when it and FILES part."""
    groups = [
        (heading, [(what, [(f"{key}-{end}", label) for end, label in ends]) for what, key, ends in rows])
        for heading, rows in TAKEN
    ]
    named = {key for _, rows in groups for _, ends in rows for key, _ in ends}
    assert named == set(FILES), named ^ set(FILES)
    return groups
