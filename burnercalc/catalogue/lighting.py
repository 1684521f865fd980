"""The words of lighting, in the room Fire: the setting to light with, and the card for lighting and shutting down."""

from ..sources import FLASHBACK, LIFT, PRACTICE, Source
from .forms import Answer, Check, Column, Table

LIGHTING = FLASHBACK & LIFT & Source("distances kept from both limits are common practice", "common practice")
# What the card's figures rest on, as said on it.
CARD = PRACTICE & Source("BS 5990:2006, EN 746-2:2010 and NFPA 86, in general words (memory)", "memory")

# A flame in a pipe gathers speed over some tens of bores; codes want piping of mixture as short as practical.
RUN_UP = Source("run-up of a flame in a pipe, in general words (memory)", "memory") & Source(
    "40 bores are common practice", "common practice"
)

RESTS_ON = (
    "fuel",
    "fuel_blend",
    "equivalence_ratio",
    "ambient_temperature",
    "altitude",
    "port_diameter",
    "block_thickness",
    "flashback_firing_rate_hot",
    "mixture_velocity_in_port",
    "flow_spread",
    "firing_rate_gross",
    "jet",
    "jet_discharge_coefficient",
    "mix_pipe",
    "mixture_pressure",
    "blower_shutoff_pressure",
    "blower_free_flow",
    "blower_curve",
    "blowers",
    "burner_count",
)

SET = (
    "at {rate:power 2} ({least:power 2} to {most:power 2}): {gas:gas_pressure} before the jet, damper at LIGHT "
    "({open:percent 1} open), {pipe:pressure 2} at the mix pipe. "
)
# How a hand sets the damper to light, as percent of a pipe's area it cannot.
MARKS = {
    "hole": "slide shut on its hole, drilled {drill}",
    "hole_named": "slide shut on its hole, drilled {drill}, {size:drill_length}",
    "gap": "slide open by the shank of a {drill} drill",
    "gap_named": "slide open by the shank of a {drill} drill, {size:drill_length}",
    "rule": "slide open by {size:length}",
}
# And at low and high fire, beside that hole.
FIRE_MARKS = {
    **{key: text for key, text in MARKS.items() if "hole" not in key},
    "shut": "slide shut on its hole",
    "full": "fully open",
    "weak": "fully open, though the blower is too weak",
}
BY_HAND = LIGHTING & Source("what a drill, a slide and a gauge miss by is common practice", "common practice")
NEVER = "No safe lighting rate: do not light. "

ANSWERS = (
    Answer(
        "lighting_rate",
        "lighting.rate_W",
        "power",
        "Light at",
        meaning="Firing rate to light the cold burner at, with the rates from and to which flame and valves hold; "
        "none: do not light.",
        formula="between the careful ends of flashback, block cold or warm, and of lift, a tenth off each; as far as "
        "gas and damper can be set, above flashback at a glowing lip if it can; at the mixture as set or the leanest "
        "of 1, 1.1, 1.2, 1.3",
        inputs=RESTS_ON,
        source=LIGHTING,
        near="first",
    ),
    Answer(
        "lighting_gas_pressure",
        "lighting.gas_Pa",
        "gas_pressure",
        "Gas to light",
        meaning="Gauge pressure before the jet at the rate to light at.",
        formula="pressure at which the jet passes the gas of the lighting rate",
        inputs=("lighting_rate", *RESTS_ON),
        source=LIGHTING,
        near="first",
    ),
    Answer(
        "lighting_damper",
        "lighting.open_share",
        "fraction",
        "Damper to light",
        meaning="Open share of a damper in a pipe of the mix pipe's bore at the rate to light at: the mark LIGHT.",
        formula="plate that takes what the blower has too much at the air of the lighting rate",
        inputs=("lighting_rate", "lighting_ratio", *RESTS_ON),
        source=LIGHTING,
        near="bench",
    ),
    Answer(
        "lighting_mark",
        "lighting_slide.mark",
        "word",
        "Air to light",
        meaning="How the damper's mark LIGHT is made so that a hand can hit it: a straight slide across a pipe of "
        "the mix pipe's bore, with a hole where low fire needs no less air, else a gap.",
        formula="drill nearest to bore x square root of the open share, or to the gap that leaves as much open",
        inputs=("lighting_damper", "damper_open_low", "mix_pipe"),
        source=BY_HAND,
        near="first",
        cases={**MARKS, "never": "none: it is not lit"},
    ),
    *(
        Answer(
            f"damper_mark_{fire}",
            f"damper_marks.{fire}",
            "word",
            f"Air at {fire} fire",
            meaning=f"How the damper's mark {fire.upper()} is set by hand: how far the slide is open, the hole that it "
            "is lit at beside it.",
            formula="drill nearest to the gap that leaves, with the hole, as much open; above 1/2 in (13 mm) by rule",
            inputs=(f"damper_open_{fire}", "lighting_mark", "mix_pipe"),
            source=BY_HAND,
            near="bench",
            cases=FIRE_MARKS,
        )
        for fire in ("low", "high")
    ),
    Answer(
        "lighting_ratio_by_hand",
        "lighting_slide.ratio",
        "ratio",
        "Mixture to light, by hand",
        meaning="Mixture that this hole or gap comes to with the gas as told, and how far hand and gauge may miss it.",
        formula="mixture to light x open share wanted / made; 2 % of a hole's area or 0.005 in (0.13 mm) of a "
        "gap, four times that by rule, and 2 % of the gauge's scale, on a line 1/16 in (1.5 mm) of water in a tube",
        inputs=("lighting_ratio", "lighting_damper", "lighting_gas_pressure", "lighting_mix_pressure", "mix_pipe"),
        source=BY_HAND,
        near="bench",
    ),
    Answer(
        "lighting_mix_pressure",
        "lighting.pipe_Pa",
        "pressure",
        "Mix pipe to light",
        meaning="Pressure at the mix pipe's tap at the rate to light at, gas on: a check of the damper, by a "
        "sloping gauge.",
        formula="what the burner asks of the blower at the mixture of the lighting rate",
        inputs=("lighting_rate", "lighting_ratio", *RESTS_ON),
        source=LIGHTING,
        near="bench",
    ),
    Answer(
        "mixture_standing",
        "lighting_card.standing_m3",
        "volume",
        "Mixture standing",
        meaning="Mixture that stands in one burner's mix pipe, legs and box, ready to burn at once.",
        formula="plenum area x clear length of the box + area of the mix pipe x its length + with two inlets area of "
        "the inlet pipe x the way between them",
        inputs=(
            "mix_pipe",
            "mix_pipe_length",
            "plenum_area",
            "body_length",
            "wall",
            "cap_thickness",
            "body_kind",
            "inlet",
            "inlet_spacing",
        ),
        source=Source("volume of box and pipe", "calculated"),
        near="engineer",
    ),
    Answer(
        "lighting_ratio",
        "lighting.equivalence_ratio",
        "ratio",
        "Mixture to light",
        meaning="Mixture at which the cold burner is lit, 1 exact, above it rich; rich holds a cold flame better.",
        formula="the mixture as set, else the leanest of 1, 1.1, 1.2, 1.3 at which a rate is safe and can be set",
        inputs=RESTS_ON,
        source=LIGHTING,
        near="bench",
    ),
    Answer(
        "light_up_advice",
        "lighting.advice",
        "word",
        "Lighting it",
        meaning="How to set the cold burner to light it, or why it must not be lit.",
        formula="lighting rate, gas, damper and mixture",
        inputs=("lighting_rate", "low_fire", *RESTS_ON),
        source=LIGHTING,
        near="bench",
        cases={
            "as_set": "Light with the mixture as set " + SET + "Torch in front till the walls glow, though a glowing "
            "lip can run back: pop or flutter, gas off. Only then low fire.",
            "as_set_stays": "Light with the mixture as set "
            + SET
            + "Stay there, torch in front, until the walls glow; only then low fire.",
            "rich": "Light with the mixture rich ({ratio:g}) "
            + SET
            + "Torch in front till the walls glow, though a glowing "
            "lip can run back: pop or flutter, gas off. Only then low fire, mixture as set.",
            "rich_stays": "Light with the mixture rich ({ratio:g}) "
            + SET
            + "Stay there, torch in front, until the walls glow; only then low fire, mixture as set.",
            "other": "Light with a mixture of {ratio:g}, not as set, "
            + SET
            + "Torch in front till the walls glow, though a glowing "
            "lip can run back: pop or flutter, gas off. Only then low fire, mixture as set.",
            "other_stays": "Light with a mixture of {ratio:g}, not as set, "
            + SET
            + "Stay there, torch in front, until the walls glow; only then low fire, mixture as set.",
            "torch": "Light at low fire, {low:power 2}, with the mixture rich ({ratio:g}): "
            "{gas:gas_pressure} before the jet, damper {open:percent 1} open. A lit torch is held to the face until "
            "the walls glow: alone a cold flame does not stay. Gas off the moment the torch goes out.",
            "gas": NEVER
            + "The flame would hold up to {most:power 2} rich, which asks for {gas:gas_pressure} before the jet: too "
            "little to set.",
            "damper": NEVER
            + "The flame would hold up to {most:power 2} rich, for which the damper is {open:percent 1} "
            "open: too little to set.",
            "gas_and_damper": NEVER
            + "The flame would hold up to {most:power 2} rich, which asks for {gas:gas_pressure} before "
            "the jet with the damper {open:percent 1} open: too little to set.",
            "not_carried": NEVER + "Blower or jet do not carry it.",
            "no_room": NEVER + "Even rich it runs back below {flash:power 2} and lifts above {lift:power 2}.",
            "too_slow": NEVER + "Even at high fire it can run back into the ports.",
            "no_limit": NEVER + "Some ports get no mixture, or the mixture has no limit.",
        },
    ),
)

CHECKS = (
    Check(
        "lighting",
        "power",
        "Lighting rate",
        harm="danger",
        source=LIGHTING,
        cases={
            "good": "It is lit at {rate:power 2} with {gas:gas_pressure} before the jet and may stay there until the "
            "walls glow; {least:power 2} to {most:power 2} is safe and can be set.",
            "note": "It is lit at {rate:power 2} with {gas:gas_pressure} before the jet and may stay there until the "
            "walls glow, but only {least:power 2} to {most:power 2} lies between flashback at a glowing lip and lift: "
            "set it exactly. Pop or flutter: gas off.",
            "caution": "It is lit at {rate:power 2} with {gas:gas_pressure} before the jet; {least:power 2} to "
            "{most:power 2} is safe until the lip glows. Then the flame can run back before the walls keep it alight, "
            "at any rate at which a cold flame holds: torch in front, listen all the time. Pop or flutter: gas off. "
            "Larger ports or a thicker block leave room.",
            "torch": "No rate is safe between flashback at {flash:power 2} and lift at {lift:power 2} of a cold face. "
            "A lit torch held to the face keeps low fire alight until the walls glow; more ports hold one without it.",
            "gas": NEVER
            + "Up to {most:power 2} the flame holds, but that asks for {gas:gas_pressure} before the jet, too little "
            "to set. A second small cock and jet to light with, a needle valve and a low gauge before it.",
            "damper": NEVER
            + "Up to {most:power 2} the flame holds, but for that the damper is {open:percent 1} open, too "
            "little to set. A smaller blower, or a damper in a smaller pipe.",
            "gas_and_damper": NEVER
            + "Up to {most:power 2} the flame holds, but that asks for {gas:gas_pressure} before the jet "
            "and the damper {open:percent 1} open, too little to set. A second small "
            "cock and jet and a smaller blower, or more ports.",
            "gas_line": NEVER
            + "Up to {most:power 2} the flame holds, but that asks for {gas:gas_pressure} before the jet, too little "
            "to set. More or larger ports hold a stronger flame on the same line, or a second small cock and jet light "
            "it.",
            "gas_and_damper_line": NEVER
            + "Up to {most:power 2} the flame holds, but that asks for {gas:gas_pressure} before the jet "
            "and the damper {open:percent 1} open, too little to set. More or larger ports hold a stronger flame; or a "
            "second small cock and jet to light with, and a smaller blower.",
            "not_carried": NEVER
            + "Blower or jet do not carry a rate at which the flame holds: mend their stops first.",
            "no_room": NEVER
            + "Even rich the flame runs back below {flash:power 2} and lifts above {lift:power 2}. More or "
            "larger ports lift less, smaller and evenly fed ones run back less.",
            "too_slow": NEVER
            + "Even at high fire the flame can run back into the ports: fewer or smaller ones, or more fire.",
            "no_limit": NEVER + "Some ports get no mixture, or the mixture has no limit: mend the other stops first.",
        },
    ),
)

CHECKS += (
    Check(
        "lighting_by_hand",
        "ratio",
        "Lighting, set by hand",
        harm="danger",
        source=BY_HAND,
        cases={
            "good": "By damper mark and gauge a hand comes to a mixture of {least:.2f} to {most:.2f} to light with; "
            "with the torch in front the flame holds over all of it.",
            "caution": "By damper mark and gauge a hand comes to a mixture of {least:.2f} to {most:.2f} to light "
            "with, and {bad:.2f} is one that even a torch does not hold. Read the gas by a finer gauge, or by water "
            "in a tube; larger ports hold more.",
        },
    ),
    Check(
        "run_up",
        "ratio",
        "Length of the mix pipe",
        harm="danger",
        source=RUN_UP,
        cases={
            "good": "The mix pipe is {bores:.0f} of its bores long, with the box full of {volume:volume} of mixture.",
            "caution": "The mix pipe is {bores:.0f} of its bores long. Beyond {most:.0f} a flame that runs back can "
            "gather speed in it, and pipe and box hold {volume:volume} of mixture that burns at once. Set the jet "
            "nearer to the burner.",
        },
        cures=(("mix_pipe_length", "lower"), ("mix_pipe", "raise")),
    ),
)

# What to do, in order. Hand-lit; a burner with automatic lighting follows the rules of its maker and of its code.
WORDS = {
    "look.when": "Before",
    "look.do": "Outdoors, or doors wide open and a loud CO alarm with a display at head height. Ports clear, gas cock "
    "shut, gauge at nothing, chamber door open, nobody in its line, extinguisher at hand.",
    "look.source": "common practice",
    "purge.when": "Purge",
    "purge.do": "Gas shut. Blower on, damper open by a quarter at least, for {purge:time 2}. Five volumes of "
    "pipe, box and chamber at a quarter of the air take {five:.0f} s.",
    "purge.source": "BS 5990:2006; a minute at least: common practice",
    "torch.when": "Torch first",
    "torch.do": "A lit torch on a long stem is held to the face before any gas, and stays there until the walls glow. "
    "Hand and face stand beside the door.",
    "torch.source": "NFPA 86 (memory); by hand: common practice",
    "set.when": "Set",
    **{f"mark.{kind}": words for kind, words in (FIRE_MARKS | MARKS).items()},
    "read.gauge": "",
    "read.tube": " (water in a tube)",
    "set.do": "Damper to LIGHT: {mark} ({open:percent 1} open). Gas with the needle valve, the gauge's cock open, to "
    "{gas:gas_pressure} before the jet{read}: {rate:power 2}, mixture {ratio:g}, {pipe:pressure 2} at the mix "
    "pipe's tap (sloping gauge). Mark the valve, and next time set it first.",
    "set.do.torch": "Damper to {open:percent 1} open, gas slowly to {gas:gas_pressure} before the jet: low fire, "
    "{rate:power 2}, mixture {ratio:g}; {pipe:pressure 2} at the mix pipe's tap. Gas off the moment the "
    "torch goes out.",
    "set.do.never": "DO NOT LIGHT. There is no rate at which a cold flame on these ports neither runs back nor lifts "
    "and which can be set.",
    "set.source": "limits of the flame; common practice",
    "trial.when": "{hiss:.0f} s",
    "trial.do": "Hand on the cock: not alight {hiss:.0f} s after the first hiss, gas off. The mixture takes "
    "{arrives:.1f} s to the face and {fills:.1f} s more to fill the cold chamber.",
    "trial.do.full": "Hand on the cock: not alight {hiss:.0f} s after the first hiss, gas off. The mixture takes "
    "{arrives:.1f} s to the face and fills the cold chamber {fills:.1f} s later, sooner than any hand: door wide open, "
    "nobody before it.",
    "trial.source": "common practice; automatic: NFPA 86, EN 746-2 (memory)",
    "out.when": "Not lit, or it goes out",
    "out.do": "Gas off at the cock at once. Blower on, door open, wait {purge:time 2}: purge again. Sniff at the floor "
    "for propane, under the roof for natural gas. After three times find out why first.",
    "out.source": "BS 5990:2006; the count: common practice",
    "lit.when": "It burns",
    "lit.do": "See every port alight. Stay at LIGHT, mixture and all, torch in front, until the walls glow "
    "({relights:temperature}). Once the lip glows the flame can run back sooner: somebody listens. "
    "Pop, flutter, torch or flame out: gas off at once.",
    "lit.do.stays": "See every port alight. Stay at LIGHT, mixture and all, torch in front, until the walls glow "
    "({relights:temperature}). Pop, flutter, torch or flame out: gas off at once. A rich flame makes carbon "
    "monoxide: doors open.",
    "lit.do.torch": "See every port alight. The torch stays in front until the walls glow ({relights:temperature}). "
    "Pop, flutter, torch or flame out: gas off at once.",
    "lit.do.never": "Nothing to do here: it is not lit.",
    "lit.source": "limits of the flame; NFPA 86 (memory)",
    "then.when": "The walls glow",
    "then.do": "To low fire: damper to LOW, {low_mark}; gas {low_gas:gas_pressure}. Not before: on cold walls a "
    "leaner flame lifts and goes out.",
    "then.do.up": "Turn up to low fire, mixture as set: air first, damper to LOW, {low_mark}; then gas to "
    "{low_gas:gas_pressure}. Not before: on cold walls it lifts and goes out.",
    "then.do.down": "Turn down to low fire, mixture as set: gas first to {low_gas:gas_pressure}, then damper "
    "to LOW, {low_mark}. Not before: on cold walls a leaner flame lifts and goes out.",
    "then.do.never": "Nothing to do here: it is not lit.",
    "then.source": "limit of lift; common practice",
    "high.when": "High fire",
    "high.do": "In steps of a minute, air first: damper to HIGH, {high_mark}; then gas to "
    "{high_gas:gas_pressure} before the jet: {high_rate:power 2}.",
    "high.do.cock": "Shut the gauge's cock first: it ends at {scale:gas_pressure}. In steps of a minute, air first: "
    "damper to HIGH, {high_mark}; needle valve open, {high_gas:gas_pressure} by the regulator: {high_rate:power 2}.",
    "high.do.never": "Nothing to do here: it is not lit.",
    "high.source": "limit of lift; common practice",
    "several.when": "The next burner",
    "several.do": "As the first, each with its own cock, damper and torch: no neighbour, no hot chamber lights it for "
    "sure. Farthest from the door first. Not lit: gas shut, air at LIGHT. One goes out: its gas off; none burns: "
    "purge.",
    "several.do.one": "One blower feeds all: every damper at LIGHT, air on, before the first is lit and until all "
    "burn. Each with its own cock and torch: no neighbour, no hot chamber lights it for sure. Farthest from the door "
    "first. Not lit: gas shut, air at LIGHT. One goes out: its gas off; none burns: purge.",
    "several.source": "common practice",
    "attend.when": "While it burns",
    "attend.do": "Somebody stands by with a hand to the cock, or a flame guard does, until the walls are above "
    "{relights:temperature}: below that nothing lights escaping gas again. Nobody leaves it alone later either.",
    "attend.source": "EN 746-2:2010, 5.2.6.3; NFPA 86 (memory)",
    "pop.when": "Pop, roar",
    "pop.do": "Or a whistle in the box: gas off at once, blower on until it is cool. Twice at one setting: never "
    "again.",
    "pop.source": "common practice",
    "stop.when": "Shut down",
    "stop.do": "Snap the gas shut at the burner's cock first, never fade it down: that runs through flashback. Then "
    "cylinder or line. Blower on, damper open, for {run_on:time 2}, until the face is black and the box below "
    "{cool:temperature}.",
    "stop.source": "NFPA 86 (memory); common practice",
    "fails.when": "Air or power fails",
    "fails.do": "The gas must close by itself: an air switch on the mix pipe that lets go below {switch:pressure 2}, "
    "half of the least it shows while it burns, and a valve that springs shut and is opened by hand only. In the "
    "{by_hand:.0f} s of a hand high fire fills the cold chamber {times:.1f} times.",
    "fails.do.before": "The gas must close by itself: an air switch before the damper that lets go below "
    "{switch:pressure 2}, and a valve that springs shut, opened again by hand "
    "only. The switch proves the fan alone: a pin keeps the damper from closing below LIGHT and LOW. In a hand's "
    "{by_hand:.0f} s high fire fills the cold chamber {times:.1f} times.",
    "fails.source": "BS 5990:2006, 15.5; half: common practice",
    "smell.when": "Smell of gas",
    "smell.do": "No flame, no switch, no telephone there. Gas off at the cylinder or the line if you can. Leave, let "
    "air in; propane lies low, in pits and drains, natural gas under the roof. From outside call gas supplier or fire "
    "brigade.",
    "smell.source": "common practice",
}

TABLES = (
    Table(
        "lighting_card",
        "Lighting card",
        (Column("when", "When", "word"), Column("do", "Do", "word"), Column("source", "Source", "word")),
        source=CARD,
        words=WORDS,
    ),
)
