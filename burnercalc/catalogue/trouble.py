"""Signs of trouble at the burner, in the room Fire: what to do at once, why, and which setting to move."""

from ..sources import PRACTICE
from .forms import Column, Table

# {sign: (as it is met, at once, causes in order, settings to move)}, the worst first. All common practice.
SIGNS = {
    "inside": (
        "Roars or whistles in the box, the face dark",
        "Gas off, blower on until the box is cool.",
        "The flame has run back into the box, or to the jet: too little gas and air, ports worn or too large.",
        "Low fire higher; port diameter smaller; mix pipe smaller.",
    ),
    "sick": (
        "Eyes sting, headache, or the alarm sounds",
        "All gas off, all out into fresh air. A headache: a doctor.",
        "Carbon monoxide: a rich or lifted flame, too little fresh air.",
        "None: light it outdoors. Then mixture nearer to 1.",
    ),
    "down": (
        "Pops when turned down",
        "Gas off, purge. After a second pop never that low again.",
        "Low fire runs back: too low, a port worn, ports unevenly fed, the mixture not as set.",
        "Low fire higher; port diameter smaller; ports per row fewer.",
    ),
    "hot": (
        "Pops after minutes, once it is hot",
        "Gas off, blower on until the face is black.",
        "A hot block heats the mixture; the opening is too small; the block is cracked.",
        "Low fire higher; block thickness more; opening area larger.",
    ),
    "shut": (
        "Bang or pop as it is shut off",
        "Stand aside, blower on.",
        "The gas faded out, through all that runs back.",
        "None: snap it shut at the firing cock, from no less than low fire.",
    ),
    "howl": (
        "Howls or hoots at one pitch",
        "Open the door. If it shakes the flame off: gas off.",
        "Chamber or pipe rings, with a fast and lean flame most of all.",
        "Mixture 3 to 5 % richer; mix pipe length another; more baffle holes.",
    ),
    "hum": (
        "Regulator hums, or its gauge climbs with the cock shut",
        "It climbs: supply shut, no gas.",
        "Dirt or ice on its seat, or one that is too large.",
        "None: replace it, never mend it.",
    ),
    "lifts": (
        "Flutters, lifts off the ports, goes out",
        "At LIGHT gas off, then as the card has it.",
        "Too fast or too lean for a cold face, or a draught.",
        "Port diameter larger or ports per row more; mixture richer.",
    ),
    "unlit": (
        "Does not light",
        "Gas off, purge. Three tries at most.",
        "Air in a new hose, too little gas, a plugged jet, a slide that is not at LIGHT.",
        "Gas pressure and jet as the card has them.",
    ),
    "some": (
        "Lights at some ports only, or ports go dark",
        "Gas off.",
        "Ports plugged, too far apart, or fed unevenly; too lean.",
        "None: clear them cold. Then ports per row more, or box deeper.",
    ),
    "yellow": (
        "Yellow tips, or a long tongue out of the door",
        "More fresh air: it makes carbon monoxide.",
        "Too rich, not mixed, or more fire than the chamber holds.",
        "Mixture leaner; mix pipe length more; firing rate less.",
    ),
    "slow": (
        "Slow to heat, or never hot enough",
        "No hurry: a new lining dries first.",
        "Too little gas, mixture off, lining damp, opening large.",
        "Firing rate more; opening area smaller; lining thicker.",
    ),
}

TABLES = (
    Table(
        "trouble",
        "Signs of trouble: pop, howl, flutter",
        (
            Column("sign", "Sign", "word"),
            Column("do", "At once", "word"),
            Column("cause", "Why", "word"),
            Column("move", "What to move", "word"),
        ),
        source=PRACTICE,
        words={
            f"{key}.{what}": text
            for key, texts in SIGNS.items()
            for what, text in zip(("sign", "do", "cause", "move"), texts)
        },
    ),
)
