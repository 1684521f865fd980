"""The words of lighting, in the room Fire: the setting to light with, and the card for lighting and shutting down."""

from ..sources import (
    CO_LIMIT,
    DAMKOEHLER,
    FLASHBACK,
    FREEZING,
    LIFT,
    LIMITS,
    PRACTICE,
    RAOULT,
    ZONE_HEAT_UP,
    Source,
)
from .forms import Answer, Check, Column, Table

LIGHTING = FLASHBACK & LIFT & Source("distances kept from both limits are common practice", "common practice")
# What the card's figures rest on, as said on it.
CARD = PRACTICE & Source("BS 5990:2006, EN 746-2:2010 and NFPA 86, in general words, from memory", "memory")

# A flame in a pipe gathers speed over some tens of bores; codes want piping of mixture as short as practical.
RUN_UP = Source("run-up of a flame in a pipe, in general words, from memory", "memory") & Source(
    "40 bores are common practice", "common practice"
)

TRIAL = (
    Source("flow x time / volume", "calculated")
    & Source("flame relays are sold with 3, 5 or 10 s: common practice, from memory", "memory")
    & Source(
        "how much may be let in is common practice: stirred, half a chamber of the mixture is about what just burns; "
        "twice the chamber is what the shortest trial of EN 746-2, 3 s, from memory, and the hand let in at most for "
        "the default",
        "common practice",
    )
)
GUARD = Source("flame guards: 1 s, EN 298; the gas shut within 4 s, NFPA 86; both from memory", "memory") & Source(
    "1 s for guard and valve together, as long as a hand takes: common practice", "common practice"
)
WAIT = (
    ZONE_HEAT_UP
    & Source("how long a hand and a watch last is common practice", "common practice")
    & GUARD
    & Source(
        "EN 746-2:2010, 5.2.6.3, and NFPA 86, from memory: a flame guard below [1400 °F|760 °C], or somebody able to "
        "act at once",
        "memory",
    )
)
LIT_AIR = (
    CO_LIMIT
    & Source("how long an alarm is silent, EN 50291-1, from memory", "memory")
    & FREEZING
    & Source("air through doors aslant to the wind, 0.3 x area x wind, from memory", "memory")
    & Source("a door of [50 ft²|4.6 m²], wind of [2 mph|0.9 m/s]: common practice", "common practice")
)

FILLED = Source("decay of what is stirred", "calculated") & Source(
    "5 % of air left is common practice", "common practice"
)
# The volume of the chamber.
CHAMBER = ("chamber_shape", "chamber_length", "chamber_width", "chamber_height")
RESTS_ON = (
    "gas_from",
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
    "cylinder_left",
)
# What may forbid it: no way out for the burnt gas, no way to low fire, nothing that holds it there, walls that glow too
# late or never.
FORBIDS = ("chamber_pressure", "chamber_back_pressure", "low_fire", "lit_by", "chamber_temperature", "heat_up_waits")

SET = (
    "at {rate:power 2}: {gas:gas_pressure} before the jet, damper at LIGHT ({open:percent 1} open), "
    "{pipe:tap 2} at the mix pipe's tap. "
)
# How a hand sets the damper to light, as percent of a pipe's area it cannot.
MARKS = {
    "hole": "slide shut on its hole, drilled {drill}",
    "hole_named": "slide shut on its hole, drilled {drill}, {size:drill_length}",
    "gap": "slide open by the shank of drill {drill}",
    "gap_named": "slide open by the shank of drill {drill}, {size:drill_length}",
    "rule": "slide open by {size:length}",
}
# And at low and high fire, beside that hole.
FIRE_MARKS = {
    **{key: text for key, text in MARKS.items() if "hole" not in key},
    "shut": "slide shut on its hole",
    "full": "fully open",
    "weak": "fully open, though the blower is too weak",
}
UNLIT = "do not light"  # instead of a number to light with
NO_LOW = {"never": "none: it is not lit", "no_low": "none: the lighting card leads past low fire"}
# At a step between them, as short as there is room for; inside a closed pipe no drill is held to it. Of a slide built
# for another air its size.
STEP_MARKS = {
    "mark": "mark {n}",
    "gap": "mark {n}, gap {drill}",
    "gap_named": "mark {n}, gap {size:drill_length}",
    "rule": "mark {n}, gap {size:length}",
    "shut": "slide shut",
    "full": "slide fully open",
    "weak": "slide fully open",
}
BY_HAND = LIGHTING & Source("what a drill, a slide and a gauge miss by is common practice", "common practice")
# In a check: what to mind and the number it judges; how it is done the card tells.
WINDOW = "Lit at {rate:power 2} with {gas:gas_pressure} before the jet, "
ROOM = "it does not run back at a lip that glows from {gas_least:gas_pressure} to {gas_most:gas_pressure}"
GLOWS = "it can run back as soon as the lip glows; so it can at any rate that a cold face holds. "
HAND = (
    "The first day, before jet, blower and slide are proven, the mixture may be {first_least:.2f} to "
    "{first_most:.2f}: go by the flame, as the card has it. Once they are, with papers printed for what was found, it "
    "is {least:.2f} to {most:.2f}. "
)
BURNT = "In burnt gas, after {full:time 1}, it is sure only up to {alone_least:power 2}: "
CARD_TELLS = "The lighting card tells each step."
CARD_AIR = (
    "The lighting card is worked out for air of {air:temperature}. Its own mark and pressure hold from "
    "{least:temperature} to {most:temperature}"
)
OTHER_AIR = "For other air set the air temperature and print its own card."
DRAWN = "They go from a full charge to {left:percent 0} of it left."
TRY = (
    "Not alight {hiss:time 2} after the first hiss: gas off, {hand:time 1} more for the hand. What RESET lets in at "
    "most, in {trial:time 2}, fills {let_in:percent 0} of the chamber: "
)
CARBON_MONOXIDE = (
    "At LIGHT, up to {co:gas_share 2} of what leaves is carbon monoxide the first day, {least:gas_share 2} at least: "
)
POISON = CARBON_MONOXIDE + "a deadly poison without smell. If none of it burns, "
LEAVES = CARBON_MONOXIDE + "no smell, deadly. "
COOL = "Pilot in front as long as gas flows: this chamber is worked too cool to glow. Once it burns steadily, low fire."
LIT_WITH = {
    "as_set": "Light with the mixture as set ",
    "rich": "Light with the mixture rich ({ratio:.2f}) ",
    "other": "Light with a mixture of {ratio:.2f}, not as set, ",
}
LIT_THEN = {
    "": "The {} in front till the walls glow; a glowing lip can run back: pop or flutter, gas off.",
    "_stays": "Stay there, {} in front, until the walls glow; only then as the card has it.",
}
KEEPER = {"": "torch", "_guard": "pilot"}
NEVER = "No safe lighting rate: do not light. "
GLOWING = "Use larger or more ports, which hold a stronger flame; a lining that loses less heat may do too."
DIM = "Do not light it so: at {rate:power 2}, where the cold flame holds, the walls never come to a glow. "
LONG = (
    "Do not light it with the torch in the hand: the walls glow after {wait:time 2} at most, and an arm holds it for "
    "{arm:time 1} at most. "
)
LONG_STAND = (
    "Do not light it behind a torch on its stand: the walls glow after {wait:time 2} at most, and nobody watches a "
    "rich flame so long. "
)
BY_TORCH_COOL = (
    "Do not light it behind a torch: this chamber is worked too cool to glow, so a flame burns in front all day. "
)

ANSWERS = (
    Answer(
        "pilots_rate",
        "pilot.told_W",
        "power",
        "Gas of the pilots",
        meaning="What the pilots of all burners burn as long as gas flows: in the gas that is used, in what line or "
        "cylinders must give and in the fresh air, not in the chamber's heat. None behind a torch.",
        formula="gas of a pilot x burners",
        inputs=("pilot_rate", "lit_by", "burner_count"),
        source=Source("what a pilot burns is common practice", "common practice"),
        near="bench",
        digits=2,
    ),
    Answer(
        "lighting_rate",
        "lighting_slide.rate_W",
        "power",
        "Light at",
        meaning="Firing rate to light the cold burner at, with the rates from and to which flame and valves hold; "
        "none: do not light.",
        formula="between flashback, block cold or warm, and lift, the nearer end of either band and a tenth off; as "
        "far as gas and damper can be set, above flashback at a glowing lip if it can; at the mixture as set or the "
        "leanest of 1, 1.1, 1.2, 1.3; from and to, with the slide left at its mark",
        inputs=(*RESTS_ON, *FORBIDS, "damper_open_low", "jet_proven", "slide_hole", "small_gauge"),
        source=LIGHTING,
        near="first",
        digits=2,
        to_light=True,
    ),
    Answer(
        "lighting_gas_pressure",
        "lighting_slide.gas_Pa",
        "gas_pressure",
        "Gas to light",
        meaning="Gauge pressure before the jet at the rate to light at, with those from and to which flame and valves "
        "hold.",
        formula="pressure at which the jet passes the gas of the lighting rate",
        inputs=("lighting_rate", *RESTS_ON),
        source=LIGHTING,
        near="first",
        to_light=True,
    ),
    Answer(
        "lighting_damper",
        "lighting_slide.open_share",
        "fraction",
        "Damper to light",
        meaning="Open share of a damper in a pipe of the mix pipe's bore at the rate to light at, as the mark LIGHT "
        "leaves it.",
        formula="plate that takes what the blower has too much at the air of the lighting rate; as the nearest hole or "
        "gap has it",
        inputs=("lighting_rate", "lighting_ratio", *RESTS_ON),
        source=LIGHTING,
        near="bench",
        digits=2,
        to_light=True,
    ),
    Answer(
        "lighting_mark",
        "lighting_slide.mark",
        "word",
        "Air to light",
        meaning="How the damper's mark LIGHT is made so that a hand can hit it: a straight slide across a pipe of "
        "the mix pipe's bore, with a hole where low fire needs no less air, else a gap.",
        formula="drill nearest to bore x square root of the open share, or to the gap that leaves as much open",
        inputs=("lighting_damper", "damper_open_low", "mix_pipe", "slide_hole"),
        source=BY_HAND,
        near="first",
        cases={**MARKS, "never": "none: it is not lit"},
        to_light=True,
    ),
    *(
        Answer(
            f"damper_mark_{fire}",
            made,
            "word",
            f"Air at {fire} fire",
            meaning=f"How the damper's mark {fire.upper()} is set by hand: how far the slide is open, the hole that it "
            "is lit at beside it.",
            formula="drill nearest to the gap that leaves, with the hole, as much open; above [1/2 in|13 mm] by rule",
            inputs=(f"damper_open_{fire}", "lighting_mark", "mix_pipe", *goes),
            source=BY_HAND,
            near="bench",
            cases={**FIRE_MARKS, **none},
            to_light=fire == "low",
        )
        for fire, made, goes, none in (
            ("low", "fires.low_mark", FORBIDS, NO_LOW),
            ("high", "damper_marks.high", (), {}),
        )
    ),
    Answer(
        "lighting_ratio_by_hand",
        "lighting_slide.ratio",
        "mixture",
        "Mixture to light",
        meaning="Mixture that the mark LIGHT comes to with the gas as told, and how far hand and gauge may miss it. 1 "
        "is exact, above it rich; rich holds a cold flame better.",
        formula="mixture aimed at x open share wanted / made; 2 % of a hole's area or [0.005 in|0.13 mm] of a "
        "gap, four times that by rule, and 2 % of the gauge's scale, on a line [0.02 in|0.5 mm] of water, sloping; 1 % "
        "of the gas by the needle",
        inputs=("lighting_ratio", "lighting_damper", "lighting_gas_pressure", "lighting_mix_pressure", "mix_pipe"),
        source=BY_HAND,
        near="bench",
        to_light=True,
    ),
    Answer(
        "lighting_mix_pressure",
        "lighting_slide.tap_Pa",
        "pressure",
        "Pressure in the mix pipe to light",
        meaning="Pressure at the mix pipe's tap at the rate to light at, gas on: a check of the damper, by a "
        "sloping gauge. Below 0 it is suction: a narrow pipe's stream is fast.",
        formula="what the burner asks of the blower at the mixture of the lighting rate - mix pipe's own losses - head "
        "of the stream",
        inputs=("lighting_rate", "lighting_ratio", *RESTS_ON),
        source=LIGHTING,
        near="bench",
        digits=2,
        to_light=True,
    ),
    Answer(
        "lighting_filled",
        "burnt_gas.full_s",
        "time",
        "Full of burnt gas after",
        meaning="When the cold chamber holds its own burnt gas, not air, at most: from then on that stands round the "
        "flame.",
        formula="volume of the chamber / burnt gas of one burner at 1200 K x ln 20, for 5 % of air left, well stirred",
        inputs=("lighting_rate", "low_fire", *CHAMBER, *RESTS_ON),
        source=FILLED,
        near="engineer",
        digits=1,
        to_light=True,
    ),
    Answer(
        "lighting_lift_burnt",
        "burnt_gas.alone_W",
        "power",
        "Lift in burnt gas",
        meaning="Firing rate above which the flame of one cold port lifts off in a chamber full of burnt gas, in the "
        "mixture to light with. Many side by side hold more.",
        formula="as the lift in open air, without what a rich flame draws from that air",
        inputs=("lighting_ratio", "low_fire", *(one for one in RESTS_ON if one != "blowers")),
        source=LIFT,
        near="engineer",
        digits=2,
        to_light=True,
    ),
    Answer(
        "lighting_co",
        "lighting_air.co_dry",
        "gas_share",
        "Carbon monoxide, lighting it",
        meaning="Share of the dry gas that leaves the cold chamber, rich, while it waits for the walls to glow,"
        " if none burns at the door. The low end is the leaner mixture that hand and gauge come to, "
        "cooled slowly; the high end the richest of the first day, before jet and blower are proven, chilled as hot as "
        "the flame.",
        formula="equilibrium at 1700 K, high end at the flame's temperature",
        inputs=(
            "lighting_ratio",
            "lighting_ratio_by_hand",
            "light_up_advice",
            "fuel",
            "fuel_blend",
            "ambient_temperature",
            "altitude",
        ),
        source=LIT_AIR,
        near="bench",
        digits=2,
        to_light=True,
    ),
    Answer(
        "lighting_fresh_air",
        "lighting_air.fresh_air_m3_s",
        "air_flow",
        "Fresh air to light it, for 200 ppm at most",
        meaning="What keeps a well-mixed room below what may be breathed for so long, if all of it stays there, all "
        "burners waiting. The high end is of the most gas that the jet may pass the first day. That is 200 ppm at "
        "most, and no more than 35 ppm over a shift of 8 h. In the EU it is 100 ppm for 15 min and 20 ppm over 8 h. "
        "An alarm may sound before: the check tells what keeps it silent, and a fan is bought by that.",
        formula="dry flue gas x its share of carbon monoxide / the lesser of 200 ppm and 35 ppm x 8 h / wait",
        inputs=(
            "lighting_co",
            "lighting_rate",
            "low_fire",
            "firing_rate_gross",
            "burner_count",
            "pilots_rate",
            "heat_up_waits",
            "chamber_temperature",
        ),
        source=LIT_AIR,
        near="bench",
        digits=2,
        to_light=True,
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
        "mixture",
        "Mixture that the mark is worked out for",
        meaning="What the mark LIGHT aims at. The drills that are sold and the gauge come near it, not to it: the "
        "mixture to light is what they make.",
        formula="the mixture as set, else the leanest of 1, 1.1, 1.2, 1.3 at which a rate is safe and can be set",
        inputs=(*RESTS_ON, *FORBIDS, "slide_hole"),
        source=LIGHTING,
        near="engineer",
        to_light=True,
    ),
    Answer(
        "light_up_advice",
        "lighting_slide.advice",
        "word",
        "Lighting it",
        meaning="How to set the cold burner to light it, or why it must not be lit.",
        formula="lighting rate, gas, damper and mixture",
        inputs=("lighting_rate", "low_fire", "lit_by", *RESTS_ON),
        source=LIGHTING,
        near="bench",
        cases={
            **{
                f"{how}{then}{by}": f"{words}{SET}{does.format(flame)}"
                for how, words in LIT_WITH.items()
                for then, does in LIT_THEN.items()
                for by, flame in KEEPER.items()
            },
            **{f"{how}_cool": words + SET + COOL for how, words in LIT_WITH.items()},
            **{
                f"torch{by}": "Light at low fire, {low:power 2}, with the mixture rich ({ratio:g}): {gas:gas_pressure} "
                f"before the jet, damper {{open:percent 1}} open. A lit {flame} burns at the face until the "
                f"walls glow: alone a cold flame does not stay. Gas off the moment the {flame} goes out."
                for by, flame in KEEPER.items()
            },
            "gas": NEVER
            + "The flame would hold up to {most:power 2} rich. A tenth below, {gas:gas_pressure} before the jet is too "
            "little to set, under {least_gas:gas_pressure}.",
            "damper": NEVER
            + "The flame would hold up to {most:power 2} rich. A tenth below, the damper {open:percent 2} open is too "
            "little to set, under {least_open:percent 1}.",
            "gas_and_damper": NEVER
            + "The flame would hold up to {most:power 2} rich. A tenth below, {gas:gas_pressure} before the jet (least "
            "{least_gas:gas_pressure}) and damper {open:percent 2} open (least {least_open:percent 1}) are too little "
            "to set.",
            "not_carried": NEVER + "Blower or jet do not carry it.",
            "no_room": NEVER + "Even rich it runs back below {flash:power 2} and lifts above {lift:power 2}.",
            "too_slow": NEVER + "Even at high fire it can run back into the ports.",
            "no_limit": NEVER + "Some ports get no mixture, or the mixture has no limit.",
            "closed": NEVER + "There is no way out for the burnt gas, or too small a one.",
            "no_flame": NEVER
            + "The mixture of low and high fire, {ratio:.2f}, may not burn: from {lean:.2f} to {rich:.2f} it does.",
            "hole": NEVER + "The slide's hole is not between {hole_least:drill_length} and {hole_most:drill_length}.",
            "pressure": NEVER
            + "It takes {gas:gas_pressure} before the jet; regulator or line gives {gas_given:gas_pressure}.",
            "air": NEVER + "Its carbon monoxide needs {fresh:air_flow 2} of fresh air: no shop and no hood bring that.",
            "torch_weak": NEVER
            + "At {rate:power 2}, in burnt gas, no torch holds the flame ({torch:power 2} for sure).",
            "no_way": NEVER + "No order of the valves leads from the lighting rate to low or high fire.",
            "stopped": "Do not light it: a check stops this design. Mend the stops first.",
            "dim": DIM + "Only a pilot with a flame guard keeps it alight.",
            "long": LONG + "A torch on a stand, or a pilot with a flame guard.",
            "long_stand": LONG_STAND + "A pilot with a flame guard.",
            "cool": BY_TORCH_COOL + "A pilot with a flame guard.",
        },
        to_light=True,
    ),
)

CHECKS = (
    Check(
        "blend_light",
        "mixture",
        "Lighting with a blend",
        harm="danger",
        source=LIGHTING & RAOULT,
        cases={
            "good": "The light part boils off first: at LIGHT the mixture goes from {first:.2f}, full, to {last:.2f} "
            "with {left:percent 0} of a charge left. One mark and pressure do for all of that as well as for its mean.",
            "none": NEVER + "No one setting holds for all gases of this blend, lit and turned on from there. " + DRAWN,
            "lip_guard": "No one mark and pressure keep the flame of each gas of this blend out of a lip that glows; "
            "the guard shuts the gas. " + DRAWN,
            "lip": "Do not light it so: no one mark and pressure keep the flame of each gas of this blend out of a lip "
            "that glows. " + DRAWN,
            "missed": "For all gases of this blend mark and pressure hold as set, but not where a hand misses. "
            + DRAWN,
            "enough": "Changed with {enough:percent 0} left, by weight, one setting does.",
            "wider": "Larger or more ports may leave room, and so may a blend with less of one of its gases.",
        },
        to_light=True,
    ),
    Check(
        "lighting",
        "power",
        "Lighting rate",
        harm="danger",
        source=LIGHTING & GUARD,
        cases={
            "good": WINDOW + ROOM + ".",
            "note": WINDOW + ROOM + "; beyond that it may.",
            "caution": WINDOW + GLOWS + "Larger ports leave room.",
            "thicker": "So little is missing that a thicker block does as well.",
            "back": "Do not light it so: at {rate:power 2} it can run back as soon as the lip glows, and so it can at "
            "any rate that a cold face holds. A lip may glow after 2 min; the walls, at which it could be turned "
            "up, glow after {wait:time 2} at most.",
            "back_caution": "Larger ports leave room; or take a pilot with a flame guard, which shuts the gas when no "
            "flame is at the ports.",
            "back_caution_low": "Larger ports leave room, with low fire set higher too, or it runs back there; or "
            "take a pilot with a flame guard, which shuts the gas when no flame is at the ports.",
            "caution_low": WINDOW + GLOWS + "Larger ports leave room, with low fire set higher too, or it runs back "
            "there.",
            "back_caution_large": "Smaller ports, or fewer of them, leave room; or take a pilot with a flame guard, "
            "which shuts the gas when no flame is at the ports.",
            "caution_large": WINDOW + GLOWS + "Smaller ports, or fewer of them, leave room.",
            "low_line": "Under {easy:gas_pressure} one mark of a sloping gauge, [0.02 in|0.5 mm] of water, is much of "
            "it: a fine needle valve, no draught, nothing else on the line turned. More or larger ports take more gas.",
            "lifts": "In fresh air it may lift from {lifts:power 2}.",
            "itself": "In burnt gas, after {full:time 1}, it holds as well. " + CARD_TELLS,
            "torch_hand": BURNT + "only the torch keeps it alight, and no hand holds one still. " + CARD_TELLS,
            "torch_stand": BURNT + "only the torch keeps it alight. " + CARD_TELLS,
            "torch_guard": BURNT + "only the pilot keeps it alight; the guard shuts the gas. " + CARD_TELLS,
            "maybe": BURNT
            + "with a torch up to {torch:power 2}. Beyond that it may blow off, torch or not; nobody has "
            "measured it. A pilot with a flame guard shuts the gas; more ports hold more. " + CARD_TELLS,
            "maybe_guard": BURNT + "with a pilot up to {torch:power 2}. Beyond that it may blow off, and the guard "
            "shuts the gas; nobody has measured it. More ports hold more. " + CARD_TELLS,
            "guard_first": "First, whatever else is mended, this takes a pilot with a flame guard: the chamber is "
            "worked too cool to glow.",
            "closed": NEVER
            + "There is no way out for the burnt gas, or too small a one: it comes back through every joint and into "
            "the burner. Make the opening larger.",
            "no_flame": NEVER + "The mixture of low and high fire, {ratio:.2f} as a hand sets it, may not burn: from "
            "{lean:.2f} to {rich:.2f} it does. Turned down to it the fire goes out, and gas fills the chamber. Bring "
            "the mixture nearer to 1.",
            "hole": NEVER + "The slide's hole must be between {hole_least:drill_length} and {hole_most:drill_length} "
            "to light through it and to leave low fire its air.",
            "hole_does": "A slide drilled anew with {drill} does: tried.",
            "hole_none": "No drill that is sold does.",
            "pressure": NEVER + "It takes {gas:gas_pressure} before the jet, more than regulator or line gives "
            "({gas_given:gas_pressure}). Never try it: drill a larger jet.",
            "air": NEVER
            + "Up to {co:gas_share 2} of what leaves is carbon monoxide, a deadly poison without smell. It takes "
            "{fresh:air_flow 2} of fresh air to stay below {ppm:gas_share 2}: no shop and no hood bring that. Use "
            "smaller or fewer burners.",
            "torch_weak": NEVER + "It would be lit at {rate:power 2}, but once burnt gas fills the chamber no torch "
            "holds so strong a flame, {torch:power 2} for sure. More ports hold more.",
            "no_way": NEVER + "No order of the valves leads from the lighting rate to low or high fire: on the way or "
            "there it lifts or runs back. What to move is told with the turning.",
            "unset": NEVER + "No hand can set it by its gauge, as lighting by hand says.",
            "dim": DIM + "It takes a pilot with a flame guard, and ports or a lining by which they do.",
            "long": LONG + "It takes a torch on a stand of its own, or a pilot with a flame guard.",
            "long_stand": LONG_STAND
            + "A pilot with a flame guard shuts the gas by itself; or take a lining that heats up sooner.",
            "cool": BY_TORCH_COOL + "A pilot with a flame guard shuts the gas by itself.",
            **{
                keeper: "No rate is safe between flashback at {flash:power 2} and lift at {lift:power 2} of a cold "
                f"face. So it is lit at low fire with the {keeper} in front; more ports hold a flame without it."
                for keeper in KEEPER.values()
            },
            "gas": NEVER
            + "The flame holds up to {most:power 2}. A tenth below, for room, {gas:gas_pressure} before the jet is "
            "too little to set, under {least_gas:gas_pressure}. Larger or more ports hold a stronger flame; or it "
            "takes a second small cock and jet to light with, and before it a needle valve and a low gauge.",
            "damper": NEVER
            + "The flame holds up to {most:power 2}. A tenth below, for room, the damper {open:percent 2} open is too "
            "little to set, under {least_open:percent 1}. Use a smaller blower, or put the damper in a smaller pipe.",
            "gas_and_damper": NEVER
            + "The flame holds up to {most:power 2}. A tenth below, for room, {gas:gas_pressure} before the jet "
            "(least {least_gas:gas_pressure}) and damper {open:percent 2} open (least {least_open:percent 1}) are too "
            "little to set. It takes a second small cock and jet and a smaller blower, or more ports.",
            "gas_line": NEVER
            + "The flame holds up to {most:power 2}. A tenth below, for room, {gas:gas_pressure} before the jet is too "
            "little to set, under {least_gas:gas_pressure}. More or larger ports hold a stronger flame on the same "
            "line, or a second small cock and jet light it.",
            "gas_and_damper_line": NEVER
            + "The flame holds up to {most:power 2}. A tenth below, for room, {gas:gas_pressure} before the jet (least "
            "{least_gas:gas_pressure}) and damper {open:percent 2} open (least {least_open:percent 1}) are too little "
            "to set. More or larger ports hold a stronger flame; or a "
            "second small cock and jet to light with, and a smaller blower.",
            "not_carried": NEVER
            + "Blower or jet do not carry a rate at which the flame holds: mend their stops first.",
            "no_room": NEVER
            + "Even rich the flame runs back below {flash:power 2} and lifts above {lift:power 2}. More or "
            "larger ports lift less, smaller and evenly fed ones run back less.",
            "too_slow": NEVER
            + "Even at high fire the flame can run back into the ports: use fewer or smaller ones, or more fire.",
            "no_limit": NEVER + "Some ports get no mixture, or the mixture has no limit: mend the other stops first.",
        },
        to_light=True,
    ),
)

CHECKS += (
    Check(
        "lighting_by_hand",
        "mixture",
        "Lighting, set by hand",
        harm="danger",
        source=BY_HAND,
        cases={
            "good": HAND + "With the torch in front the flame holds in all of that.",
            "lost": HAND + "{bad:.2f} is one that even a torch does not hold.",
            "back": HAND
            + "At {bad:.2f} it may run back at a lip that glows, though not as set: listen all the time. Pop "
            "or flutter: gas off.",
            "back_guard": HAND + "At {bad:.2f} it may run back at a lip that glows, though not as set. Then no flame "
            "stands before the guard, and it shuts the gas: purge, and set a little more gas.",
            "hand": HAND + "At {bad:.2f} even the torch may lose it once burnt gas fills the chamber.",
            "guard": HAND + "At {bad:.2f} even the pilot may lose it once burnt gas fills the chamber: then the guard "
            "shuts the gas. Purge, and set it leaner: a little less gas.",
            "stand": HAND + "At {bad:.2f} even the torch may lose it once burnt gas fills the chamber. A port dark: "
            "gas off at once, purge, and set it leaner: a little less gas.",
            "unset": NEVER.strip(),
            "unset_scale": "Its gauge ends at {scale:gas_pressure}, and it takes {asked:gas_pressure}: no hand sets "
            "that.",
            "unset_room": "It would be from {gas_least:gas_pressure} to {gas_most:gas_pressure}. Gauge, measured gas "
            "and hand together are off by {off:gas_pressure} either way: no hand sets it.",
            "unset_band": "Before its jet is proven it would be from {sure:gas_pressure} to {gas_most:gas_pressure}. "
            "Gauge, measured gas and hand together are off by {off:gas_pressure} either way: no hand sets it. On a "
            "day that its own card is for, prove its jet first.",
            "unset_blend": "As long as nobody has proven its jet it would be from {sure:gas_pressure} to "
            "{gas_most:gas_pressure}. Gauge, measured gas and hand together are off by {off:gas_pressure} either way: "
            "no hand sets it, and no card of a blend proves a jet.",
            "gauge": "A small gauge to {gauge:gas_pressure} leaves room: tried.",
            "drill": "A slide drilled anew with {drill} leaves room: tried.",
            "sooner": "Changed with {enough:percent 0} left, by weight, it leaves room: tried.",
            "proven": "A jet proven on propane in another burner leaves room: tried. Type its coefficient, and that it "
            "is proven.",
            "finer": "Larger ports hold more; a smaller jet, which takes more pressure, is read finer.",
            "finer_line": "Larger ports hold more.",
            "any_jet": "At {gas:gas_pressure} it holds whatever its jet is, one that passes {jet_low:percent 0} of a "
            "perfect jet's gas or {jet_high:percent 0}.",
            "no_pressure": "Through jets that pass {jet_low:percent 0} to {jet_high:percent 0} of a perfect jet's "
            "gas, all common, it takes {jet_least:gas_pressure} to {jet_most:gas_pressure}: no one pressure holds with "
            "all of them.",
            "meter": "So it is set by the meter of the house at once, while the lip is dark: "
            "nothing else on it but a pilot, its gas counted in; a second person reads it. It is "
            "{volume:gas_volume} in {fast} to {slow} s. Each second longer takes {each:gas_pressure 2} more before the "
            "jet, each shorter as much less. Not so {glows:time 1} after it was lit: gas off, till the "
            "face is black; then again at that pressure. What is found so counts.",
            "meter_narrow": "Meter and watch miss {read_off:percent 1} either way, more than those seconds leave: it "
            "may still run back as the lip glows.",
            "proves_jet": "From {sure:gas_pressure} on none of them runs back: once all ports burn, on to that at "
            "least. One that passes much may lift off there in burnt gas, which shows at once: gas off, and measure "
            "what this jet passes in another burner first. The one proved counts: type its coefficient, and that it "
            "is proven. Larger ports leave room.",
            "poor_jet": "With one that passes little the flame may run back or lift off before anybody has measured "
            "its gas. Larger ports leave room. So does a jet proven in another burner: type its "
            "coefficient, and that it is proven; or a pilot with a flame guard, which shuts the gas.",
        },
        to_light=True,
    ),
    Check(
        "gauges",
        "fraction",
        "Gauges that are there",
        harm="danger",
        source=BY_HAND,
        cases={
            "good": "High fire, {high:gas_pressure}, is read on a gauge to {high_scale:gas_pressure}; low fire, "
            "{low:gas_pressure}, on one to {scale:gas_pressure}.",
            "caution": "Low fire, {low:gas_pressure}, is hardly read on a gauge to {scale:gas_pressure}, which is off "
            "by {off:percent 0} of that. Read it on a smaller one.",
            "stop": "High fire takes {high:gas_pressure} before the jet, and the gauge there ends at "
            "{high_scale:gas_pressure}: do not light it so. One to {does:gas_pressure} shows it.",
        },
        to_light=True,
    ),
    Check(
        "lighting_day",
        "temperature",
        "Air that it is lit in",
        harm="danger",
        source=BY_HAND & Source("10 K colder and warmer is common practice", "common practice"),
        cases={
            "good": CARD_AIR + ", as far as was asked. " + OTHER_AIR,
            "card": CARD_AIR + ".",
            "back": "Beyond that it may run back.",
            "lost": "Beyond that even a torch or pilot may not hold the flame.",
            "missed": "That is where a hand misses a little. " + OTHER_AIR,
            "as_set": "That is so even where no hand misses: do not light it in such air. Larger ports leave room. "
            + OTHER_AIR,
        },
        to_light=True,
    ),
    Check(
        "lighting_trial",
        "fraction",
        "Gas let in",
        harm="danger",
        source=TRIAL,
        cases={
            "good": TRY + "so little, stirred, hardly burns.",
            "note": TRY + "hold the torch at the ports first, all others aside.",
            "note_over": TRY
            + "what that does not hold stands in front of its opening. Hold the torch at the ports first, "
            "nobody in front of the opening, all others aside.",
            "caution": TRY
            + "what it does not hold stands in front of its opening and burns where people are. Use a pilot "
            "with a flame guard, which sees the pilot burn before it opens the gas, or fewer ports.",
            "stop": "Do not light it so. "
            + TRY
            + "most of it stands in front of the opening, and burns at once, where "
            "people are. Use a pilot with a flame guard, which sees the pilot burn before it opens the gas, or fewer "
            "ports.",
            "note_guard": TRY + "the guard sees the pilot first, everybody aside.",
            "note_over_guard": TRY + "what that does not hold stands in front of its opening. The guard sees the pilot "
            "first; nobody in front of the opening, everybody aside.",
            "caution_guard": TRY
            + "most of it stands in front of the opening, and burns where people are: guard or not, "
            "nobody within reach of it. Use fewer ports.",
            "late": "Do not light it so. The mixture is at the ports {arrives:time 2} after the first hiss. By then "
            "the guard has shut the gas: no relay is sold that waits longer than {trial:time 2}. Use a shorter or "
            "narrower mix pipe, or a shallower box.",
            "pipe": "With a mix pipe that is shorter by a third at most a relay of a shorter time does.",
            "box": "With a box half as deep, or deeper, a relay of a shorter time does.",
        },
        to_light=True,
    ),
    Check(
        "lighting_wait",
        "time",
        "What keeps it alight",
        harm="danger",
        source=WAIT,
        cases={
            "good": "The walls glow {likely:time 2} after it is lit, {wait:time 2} at most, and then keep the flame "
            "alight.",
            "stop_hand": "It takes {likely:time 2} till the walls glow, {wait:time 2} at most. An arm holds a "
            "torch for {hand:time 1} at most: do not light it so. Clamp the torch to a stand of its own, with gas for "
            "all of it, and stay beside it; or fit a pilot with a flame guard.",
            "long_stand": "It takes {likely:time 2} till the walls glow, {wait:time 2} at most. Nobody listens "
            "to a flame for longer than {most:time 1}: fit a pilot with a flame guard, which shuts the gas by itself, "
            "or a lining that heats up sooner.",
            "stop_stand": "It takes {likely:time 2} till the walls glow, {wait:time 2} at most. Nobody watches a rich "
            "flame beyond {stand:time 1}, and one that goes out fills the chamber: do not light it so. Use a pilot "
            "with a flame guard, which shuts the gas by itself, or a lining that heats up sooner.",
            "hardly": "This chamber is worked at {chamber:temperature}, hardly above the {glows:temperature} from "
            "which walls light gas again: its colder corners may not. A pilot with a flame guard shuts the gas by "
            "itself.",
            "long_guard": "It takes {likely:time 2} till the walls glow, {wait:time 2} at most. Pilot and flame "
            "guard watch it that long; somebody stays near all the same.",
            "rich_guard": "It takes {likely:time 2} till the walls glow, {wait:time 2} at most. Pilot and flame guard "
            "watch it, but so long up to {co:gas_share 2} of what leaves is carbon monoxide. A lining that heats up "
            "sooner makes it shorter, and so do larger or more ports, which are lit with more gas.",
            "never_attended": "At the rate that it is lit at the walls never come to a glow ({glows:temperature}), so "
            "it can never be turned to low fire: do not light it so. " + GLOWING,
            "never_guard": "At the rate that it is lit at the walls never come to a glow ({glows:temperature}). "
            "It never gets to the {chamber:temperature} it is worked at: turned up it may lift, and the guard shuts "
            "the gas. Do not light it so. " + GLOWING,
            "cool_attended": "This chamber is worked too cool to light gas again (below {glows:temperature}): do not "
            "light it so. If the flame goes out, it fills with gas until somebody shuts the cock, an hour later as "
            "well as at first. An oven needs a pilot that burns all the time, and a flame guard that shuts the gas by "
            "itself.",
            "cool_guard": "This chamber is worked too cool to light gas again (below {glows:temperature}); pilot and "
            "flame guard stay on as long as gas flows.",
        },
        to_light=True,
    ),
    Check(
        "turning",
        "ratio",
        "Turning it down and up",
        harm="danger",
        source=LIGHTING,
        cases={
            "good": "Turned one valve after the other, as the card has it, the mixture goes from {least:.2f} to "
            "{most:.2f} on the way. The rate stays at {margin:.2f} times that at which a flame runs "
            "back into a lip that glows, or more.",
            "as_lit": "Lit as it is, it can run back already: mend that first. Turned one valve after the other, "
            "it comes hardly nearer. The rate is {margin:.2f} times that at which a flame runs back into a lip that "
            "glows, or more.",
            "many": "One of the ways takes {steps} steps, each at a mark of its own. Learn them with the gas shut.",
            "low": "Low fire, {low:power 2}, is {margin:.2f} times the rate at which a flame runs back into a "
            "lip that glows; a hand needs {close:.2f} times, as when it is lit. Turned down to it hot, "
            "it may run back.",
            "down": "From the lighting rate to low fire, {low:power 2}, no order of the valves holds that a hand can "
            "set, in up to 12 steps. On the way the flame lifts or runs back, gas first or air first; or the slide "
            "moves less from stop to stop than a hand sets, some {apart:drill_length 1}. Set low fire nearer to the "
            "lighting rate, or use fewer ports.",
            "straight": "From the lighting rate it goes straight up to high fire, as the card has it.",
            "unreached": "So it never gets to high fire.",
            "cool": "This chamber is worked too cool to glow, so nothing lights again what lifts. The pilot in front "
            "holds {held:power 2} for sure, and high fire is {high:power 2}: the card leads to low fire and no "
            "further.",
            "cool_less": "Use less fire with a larger share of it for low fire, or more ports.",
            "cool_higher": "Set low fire higher, or use more ports.",
            "cool_more": "All that is held for sure is {held_all:power 2}, less than those {asked:power 2}: use more "
            "ports or more burners.",
            "no_work": "Low fire, {all:power 2} in all, does not do the work, which takes {works:power 2}.",
            "no_hold": "Low fire, {all:power 2} in all, does not even hold the empty chamber, which takes "
            "{holds:power 2}.",
            **{
                f"cool_low{by}": "This chamber is worked too cool to glow, so nothing lights again what lifts. The "
                f"{keeper} in front holds {{held:power 2}} for sure, and low fire is {{low:power 2}}: turned to it the "
                "flame may go out."
                for by, keeper in KEEPER.items()
            },
            "cool_lower": "Set low fire lower, or use less fire or more ports.",
            "cool_more_to_hold": "All that is held for sure is {held_all:power 2}, and to hold the empty chamber takes "
            "{holds:power 2}: use more ports, or more burners with less fire in each.",
            "up": "From low fire, {low:power 2}, to high fire no order of the valves holds that a hand can set, in up "
            "to 12 steps. On the way the flame lifts or runs back, gas first or air first; or the slide moves less "
            "from stop to stop than a hand sets, some {apart:drill_length 1}. Set low fire higher, or use fewer ports.",
        },
        to_light=True,
    ),
    Check(
        "lighting_air",
        "air_flow",
        "Carbon monoxide, lighting it",
        harm="danger",
        source=LIT_AIR,
        cases={
            "good": POISON + "{quiet:air_flow 2} of fresh air keep the room below {kept:gas_share 2}; a wide door and "
            "another across it bring {doors:air_flow 2} in the least wind. Both open, or outdoors; nobody stands in "
            "the burnt gas that leaves the chamber.",
            "note": POISON + "it takes {quiet:air_flow 2} of fresh air to stay below {kept:gas_share 2}; wide open "
            "doors bring {doors:air_flow 2} in the least wind. Light it outdoors, or under a hood that draws it off. A "
            "fan that only stirs in fresh air must bring that much.",
            "note_long": POISON + "it takes {quiet:air_flow 2} of fresh air to stay below {kept:gas_share 2}, for up "
            "to {wait:time 2}. Wide open doors bring {doors:air_flow 2} in the least wind, and no wind is sure for so "
            "long. Light it outdoors, or under a hood that draws it off.",
            "caution": POISON + "the room needs {fresh:air_flow 2} of fresh air to stay below {ppm:gas_share 2}: more "
            "than open doors ({doors:air_flow 2}) or a large hood bring. Light it in the open only, or make the burner "
            "smaller.",
            "ceiling": "{ppm:gas_share 2} is the most that may be breathed even for a moment; a working day allows "
            "{day:gas_share 2}[|; in the EU it is {eu_short:gas_share 2} for 15 min and {eu_day:gas_share 2} over "
            "8 h].",
            "mean": "A working day's {day:gas_share 2} allow {ppm:gas_share 2} for so long, and none after[|; in the "
            "EU the day's mean is {eu_day:gas_share 2}].",
            "quiet": "Up to {silent:gas_share 2} an alarm keeps silent so long, and above it may: silence proves "
            "nothing. If it sounds, all gas off, and out.",
            "alarm": "An alarm keeps silent that long up to {silent:gas_share 2}, and above it may: silence proves "
            "nothing. To stay below that takes {quiet:air_flow 2} of fresh air, which a fan must bring. With less it "
            "may sound before the walls glow: then all gas off, and out.",
        },
        cures=(("burner_count", "lower"), ("ports_per_row", "lower"), ("rows", "lower")),
        to_light=True,
    ),
    Check(
        "lighting_pipe",
        "speed",
        "Mix pipe, lighting it",
        harm="danger",
        source=DAMKOEHLER & FLASHBACK & LIMITS,
        cases={
            "good": "Lit at {rate:power 2} the mixture runs through the mix pipe at {runs:speed}; a flame walks back "
            "against {most:speed} at most, so it cannot walk back up.",
            "note": "Lit at {rate:power 2} the mixture runs through the mix pipe at {runs:speed}; a flame walks back "
            "against about {likely:speed}, {most:speed} at most. The ports keep it out. A pop, or a roar in the pipe: "
            "gas off at once. A smaller mix pipe would stop it.",
            "stop": "Lit at {rate:power 2} the mixture runs through the mix pipe at {runs:speed}; a flame walks back "
            "against about {likely:speed}: one that gets in walks back to the blower. Use a smaller mix pipe.",
        },
        cures=(("mix_pipe", "lower"),),
        to_light=True,
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
    "look.do": "{blend}{long}Outdoors, or doors wide open and a loud CO alarm with a display at head height. Ports "
    "clear, every gas cock shut, the jet's gauge at nothing, chamber door open, nobody in front of it, extinguisher at "
    "hand. {new}",
    "look.do.hood": "{blend}{long}Outdoors, or under a hood that draws it off; a loud CO alarm with a display at head "
    "height. Ports clear, every gas cock shut, the jet's gauge at nothing, chamber door open, nobody in front of it, "
    "extinguisher at hand. {new}",
    "look.do.open": "{blend}{long}Outdoors, in the open only; a loud CO alarm with a display at head height. Ports "
    "clear, every gas cock shut, the jet's gauge at nothing, chamber door open, nobody in front of it, extinguisher at "
    "hand. {new}",
    "new": "New block: by its build sheet.",
    "long": "LIGHT lasts up to {wait:time 2}, with up to {co:gas_share 2} of carbon monoxide{maybe}. ",
    "long.maybe": "; it may blow off, {flame} or not",
    "blend": "Gas, no other, mole %: {shares}. {drawn}",
    # Its light part boils off first, and over a rest a full one holds heavier gas.
    "drawn.line": "LIGHT, LOW and HIGH hold for a tank filled with it, not over a rest, until {left:percent 0} is "
    "left. ",
    "drawn.tank": "LIGHT, LOW and HIGH hold for a tank filled with it, not over a rest, until {left:percent 0} is "
    "left: then no fire. ",
    "drawn.cylinder": "Filled over no rest. Before lighting it weighs at least its stamped empty weight, {mass:mass 2} "
    "that stay in it, and {hourly:mass 2} for each hour at HIGH; else change it. ",
    "drawn.cylinders": "Filled over no rest. Before lighting each weighs at least its stamped empty weight, "
    "{mass:mass 2} that stay in it, and {hourly:mass 2} for each hour at HIGH; else change all. ",
    "look.source": "common practice",
    "purge.when": "Purge",
    "purge.do": "Gas shut, no flame in the chamber. {blower} on, {damper} at HIGH, {high_mark}, for {purge:time 2}. "
    "Five volumes take {five:.1f} s.{tap}",
    "purge.do.wide": "Gas shut, no flame in the chamber. {blower} on, {damper} wide open, for {purge:time 2}. Five "
    "volumes take {five:.1f} s. Then {damper} to HIGH, {high_mark}.{tap}",
    "blower": "Blower",
    "blower.several": "Every blower",
    "damper": "damper",
    "damper.several": "every damper",
    "cleared.high": "at HIGH",
    "cleared.wide": "wide open",
    "tap": " Mix pipe's tap, ports cold: {low:tap 2} to {high:tap 2}, hot up to 15 % more; else no gas.",
    "tap.none": " Mix pipe's tap shows too little to read. Cold, a hand feels air from every port; hot, a strip of "
    "foil on a rod lifts there: else no gas.",
    "purge.source": "BS 5990:2006; a minute at least: common practice",
    "torch.when": "Torch first",
    "torch.when.guard": "Pilot first",
    "torch.do": "{to_light}{ready}A lit torch on a stand, with gas for all of it: at the face before any "
    "gas, and it stays till the walls glow. Its air holes, bottle and hose, hand and face, stay "
    "outside, beside the door. {blind}",
    "torch.do.hand": "{to_light}{ready}It takes two: one holds a lit torch on a long stem, one RESET, cock and needle. "
    "At the face before any gas, it stays till the walls glow. Its air holes, bottle, hose, hand and face stay "
    "outside, beside the door. {blind}",
    "torch.do.guard": "{to_light}{ready}Then the pilot's cock open. RESET: no valve may open, as no "
    "pilot burns. A lit torch on a long stem at the pilot, then PILOT held: its own valve opens. Once alight, let go: "
    "it must burn on; torch off at its valve, and away. Not alight in {pilot:.0f} s, or out: pilot's cock shut, "
    "{again}. {counted_first}Now RESET: the main valve opens, and must snap shut {trial:.0f} s after: if it stays "
    "open, the sensor of the main flame sees "
    "the pilot: no gas. The pilot stays at the "
    "face to the last, its air holes outside, beside the door.",
    "counted_first": "The first time count its gas now, blower on, as the record has it: before any main flame. ",
    # A guard that sees a flame which is none, or another's, holds the gas open over a fire that is out.
    "blind": "Try the guard: RESET, held on, opens the valve, which must snap shut {trial:.0f} s after all "
    "the same. If it stays open, the guard sees the torch: no gas.",
    "opened.line": "Isolating cock open",
    "opened.cylinder": "Cylinder open",
    "opened.cylinders": "Every cylinder open",
    "opened.tank": "Tank open",
    "opened.line.guard": "Isolating cock open",
    "opened.cylinder.guard": "Cylinder and isolating cock open",
    "opened.cylinders.guard": "Every cylinder and isolating cock open",
    "opened.tank.guard": "Tank and isolating cock open",
    "torch.source": "NFPA 86, from memory; by hand: common practice",
    "set.when": "Set",
    **{f"mark.{kind}": words for kind, words in (FIRE_MARKS | MARKS).items()},
    "read.gauge": "",
    "read.tube": " (sloping gauge)",
    # With another jet or hole the same air and pressure are another mixture.
    "built.hole": "Only with jet {jet}, slide's hole {hole}, {gauge},",
    "built": "Only with jet {jet}, {gauge},",
    # Its scratches are those of the air that it was built for.
    "built.anew": "Printed anew: each mark by its gap, as wide as the drill named, from the scratch LIGHT with a "
    "calliper, not by the old scratches; the needle as the first time. Only with jet {jet}, slide's hole "
    "{hole}, {gauge},",
    "gauge.small": "small gauge to {scale:gas_pressure}",
    "gauge.tube": "sloping gauge to {scale:gas_pressure}",
    "gauge.jet": "gauge to {scale:gas_pressure}",
    "air_span": "{built} in air of {least:temperature} to {most:temperature} at the blower (worked out for "
    "{own:temperature}): beyond, gas off. ",
    "air_own": "{built} for air of {own:temperature}. ",
    "set.do": "{air}Before any gas: damper at LIGHT, {mark}, needle back at LIGHT (at first a little "
    "open){cock_first}.",
    "gas.when": "Alight",
    "gas.do": "See every port alight, then {cock_open}{on_to} {gas:gas_pressure} before the jet{read}{band}: "
    "{rate:power}, mixture {ratio:.2f}{drifts}{tap_lit}{jets}. {meter}"
    "Mark the needle: LIGHT.",
    "gas.do.torch": "See every port alight, then {cock_open}gas slowly to {gas:gas_pressure} before the jet: low fire, "
    "{rate:power 2}, mixture {ratio:g}{tap_lit}. Gas off the moment the {flame} goes out.",
    "tap_lit": ", {pipe:tap 2} at the mix pipe's tap",
    "gas.source": "flame limits; common practice",
    "on_to": "to",
    "on_to.meter": "on at once to",
    "band": ", {least:gas_pressure} to {most:gas_pressure}",
    "drifts": " ({first:.2f} full, {last:.2f} at the last)",
    "band.one": ", as near as gauge and hand come",
    "again": "go back to Purge",
    "again.several": "go back to Purge (or, if others burn, wait {purge:time 2})",
    # With the cock shut no regulator shows less than gas flowing.
    "to_light": "Damper to LIGHT. ",
    "to_light.several": "Every damper to LIGHT, till all burn. ",
    "ready": "{opened}, firing cock shut{holds}. ",
    "holds": ", the regulator the first time to {outlet:gas_pressure 2} by its own gauge",
    "holds.light": ", the regulator the first time to {outlet:gas_pressure} by its own gauge, as "
    "lighting may take more than HIGH",
    "holds_again": "The first time the regulator again to {outlet:gas_pressure 2}, gas flowing; LIGHT is marked anew "
    "at the next lighting. ",
    "holds.low": ", the regulator to {outlet:gas_pressure 2} at most by its own gauge, so the needle wide open gives "
    "no more fire than this burner may have",
    "holds.least": ", the regulator at its least, {outlet:gas_pressure 2} by its own gauge: the needle alone keeps "
    "away more fire than this burner may have",
    "meter": "By the meter, {alone}, a second person reads it: {volume:gas_volume} in {fast} to {slow} s{own}. Each "
    "second longer: {each:gas_pressure 2} more before the jet, shorter: as much less. ",
    "alone.several": "this burner alone (then gas off and the next, from Purge on; together only once each "
    "is proven), ",
    "alone.torch": "nothing else on it",
    "alone.pilot": "nothing else on it but the pilot, whose {pilot_rate:power 2} is counted in",
    "meter.own": " (one that corrects for heat: {fast} to {slow} s)",
    "meter.late": "One reading only: off it, or none {glows:time 1} after it was lit, gas off till the face is black; "
    "from Purge again, straight to the pressure found. Off a third time: mend the jet. ",
    "jets.least": "; less than {sure:gas_pressure} may not hold though it burns now",
    "jets.poor": "; a jet that passes little may run back even so",
    "set.do.torch": "{air}Before any gas: damper to {open:percent 1} open, needle back to a little open{cock_first}.",
    "set.do.never": "DO NOT LIGHT. There is no rate at which a cold flame on these ports neither runs back nor lifts "
    "and which can be set.",
    "set.do.stopped": "DO NOT LIGHT. A check stops this design: mend it first.",
    "set.do.closed": "DO NOT LIGHT. There is no way out for the burnt gas, or too small a one: it comes back "
    "through every joint and into the burner.",
    "set.do.no_flame": "DO NOT LIGHT. The mixture of low and high fire may not burn: turned down to it the fire goes "
    "out, and gas fills the chamber.",
    "set.do.pressure": "DO NOT LIGHT. Lighting, low or high fire takes more gas pressure before the jet than "
    "regulator or line gives. Never try it: drill a larger jet.",
    "set.do.hole": "DO NOT LIGHT. Through this hole of the slide it is not lit, or low fire has too much air: another "
    "slide.",
    "set.do.air": "DO NOT LIGHT. No shop and no hood bring the fresh air that its carbon monoxide needs: smaller or "
    "fewer burners.",
    "set.do.torch_weak": "DO NOT LIGHT. Burnt gas fills the chamber at once, and in it no torch holds the flame.",
    "set.do.no_way": "DO NOT LIGHT. No order of the valves leads from the lighting rate to low or high fire: on the "
    "way or there it lifts or runs back.",
    "set.do.dim": "DO NOT LIGHT. At the rate to light at the walls never come to a glow ({relights:temperature}).",
    "set.do.long": "DO NOT LIGHT with the torch in the hand: the walls glow only after {wait:time 2} at most, and an "
    "arm holds it for {arm:time 1} at most.",
    "set.do.long_stand": "DO NOT LIGHT behind a torch on its stand: the walls glow only after {wait:time 2} at most, "
    "and nobody watches a rich flame so long. A pilot with a flame guard does.",
    "set.do.cool": "DO NOT LIGHT with a torch: this chamber is worked too cool to glow, so a flame must burn in "
    "front as long as gas "
    "flows. A pilot with a flame guard does.",
    "set.source": "flame limits; common practice",
    "trial.when": "First {hiss:.0f} s",
    "trial.do": "Torch AT the ports before gas, all aside. {reset}Snap the firing cock open, hand on it. "
    "Gas takes {arrives:.1f} s: the moment it does not take, gas off. Never light it late: in "
    "{trial:.0f} s it fills {let_in:percent 0} of the chamber{over}.",
    "trial.do.guard": "Pilot AT the ports before gas, all aside. {reset}Snap the firing cock open, hand on it. "
    "Gas takes {arrives:.1f} s: the moment it does not take, gas off. Never light it late: in "
    "{trial:.0f} s it fills {let_in:percent 0} of the chamber{over}.",
    "over": ", and the rest stands in front of its opening: nobody may stand there",
    "reset": "RESET, which gives {trial:.0f} s, the other hand on the cock. ",
    "trial.source": "common practice",
    "out.when": "Not lit, or it goes out",
    "out.do": "Gas off at once, then {put_out}. Then damper {cleared}, door open, purge again for {purge:time 2}; hot, "
    "light only when the face is black. {sniff}{further}After three tries at one setting: find out why.",
    "out.do.several": "{hot}: every gas off at once; all from Purge on, faces black. Before that: its gas off at once, "
    "then {put_out}. Its air at LIGHT; if others burn, wait {purge:time 2}. Only if none burns: dampers {cleared}, "
    "door open, purge again for {purge:time 2}; hot, light only when the face is black. {sniff}{further}After three "
    "tries at one setting: "
    "find out why.",
    "further": "The first time, not all alight in {hiss:.0f} s: the same, then with the needle a little further, never "
    "beyond {beyond:gas_pressure}. ",
    "further.tube": "The first time, not all alight in {hiss:.0f} s: the same, then with the needle a little further, "
    "by the jet's gauge never beyond {beyond:gas_pressure}. ",
    "hot": "Walls glowing, one out",
    "hot.cool": "Past LIGHT, one out",
    "put_out.torch": "the torch at its own valve, where it stands: never draw it out lit",
    "put_out.pilot": "the pilot's cock",
    "sniff.low": "Sniff low: this gas sinks. ",
    "sniff.high": "Sniff high: this gas rises. ",
    "sniff.both": "Sniff low and high: this gas is as heavy as air. ",
    "out.source": "BS 5990:2006; the count: common practice",
    "lit.when": "It burns",
    "lit.do": "Stay at LIGHT, {flame} in front, till the walls glow "
    "({relights:temperature}): {counted}{likely:time 2}, {wait:time 2} at most; not by then, gas off. {lip}"
    "{burnt}Pop, flutter, a port dark, {flame} or flame out: gas off.",
    "lit.do.stays": "Stay at LIGHT, {flame} in front, till the walls glow "
    "({relights:temperature}): {counted}about {likely:time 2}, {wait:time 2} at most; not by then, gas off. "
    "{burnt}Pop, flutter, a port dark, {flame} or flame out: gas off.",
    "lit.do.torch": "{lip}The {flame} stays in front till the walls glow "
    "({relights:temperature}): {counted}about {likely:time 2}, {wait:time 2} at most; not by then, gas off. {burnt}"
    "Pop, flutter, a port dark, {flame} or flame out: gas off.",
    "counted": "from the last lit on ",
    "away": "Glowing: torch off at its valve, and away. ",
    "burnt.torch": "Within {full:time 1} burnt gas fills the chamber: only the {flame} keeps it alight. ",
    "burnt.maybe": "Within {full:time 1} burnt gas fills the chamber: then it may blow off, {flame} or not. ",
    "flame.torch": "torch",
    "flame.pilot": "pilot",
    "lip": "From {glows:time 1} on its lip may glow and it may run back: listen. ",
    "lit.do.cool_guard": "{steady:time 1} at LIGHT at most, then on. {lip}{burnt}This chamber "
    "is worked too cool to glow: pilot and flame guard stay on as "
    "long as gas flows. Try the guard each day: the firing cock shut, then the pilot's: each time its valve must "
    "snap shut.",
    "lit.source": "flame limits; NFPA 86, from memory",
    "air.when": "Poison",
    "air.do": LEAVES
    + "Outdoors, or {fresh:air_flow 2} of fresh air, to stay below {kept:gas_share 2}: wide doors open "
    "on two sides bring {doors:air_flow 2} in the least wind. Nobody stands in the burnt gas. {alarm}",
    "air.do.hood": LEAVES + "Outdoors, or under a hood that draws it off. To stay below {kept:gas_share 2} takes "
    "{fresh:air_flow 2} of fresh air; wide doors bring {doors:air_flow 2} in the least wind. Nobody stands in the "
    "burnt gas. {alarm}",
    "air.do.open": LEAVES + "In the open only: to stay below {kept:gas_share 2} takes {fresh:air_flow 2} of fresh air. "
    "Nobody stands in the burnt gas. {alarm}",
    "alarm": "Alarm: gas and {flame} off, all out.",
    "air.source": "NIOSH 1972",
    "then.when": "The walls glow",
    "then.when.cool": "It burns steadily",
    "then.do": "To low fire: {low_cock}damper to LOW, {low_mark}; gas {low_gas:gas_pressure}. Not before: on cold "
    "walls a leaner flame lifts and goes out.",
    "then.do.gas_alone": "To low fire, mixture as set: {low_cock}gas alone to {low_gas:gas_pressure}, the damper stays "
    "as it is. {near_back}{not_before}",
    "then.do.gas": "To low fire, mixture as set, {in_steps}, GAS FIRST, then air: {by_way}{low_cock}"
    "{low_gas:gas_pressure} and damper to LOW, {low_mark}. {why}{near_back}{not_before}",
    "then.do.air": "To low fire, mixture as set, {in_steps}, AIR FIRST, then gas: {by_way}{low_cock}damper to LOW, "
    "{low_mark}, and {low_gas:gas_pressure}. {why}{near_back}{not_before}",
    "then.do.over": "To low fire, mixture as set, {in_steps}. In the first{ups} GAS FIRST, then air; in the others "
    "AIR FIRST, then gas: {by_way}{low_cock}{low_gas:gas_pressure} and damper to LOW, {low_mark}. "
    "{why}{near_back}{not_before}",
    "then.do.straight": "Not to low fire: on the way, there or from there up it lifts or runs back. Straight up to "
    "high fire, and not before the walls glow.",
    "then.do.straight_cool": "Not to low fire: on the way, there or from there up it lifts or runs back. Straight up "
    "to high fire.",
    "step": "{cock}{gas:gas_pressure}, {damper}; ",
    **{f"step.{case}": words for case, words in STEP_MARKS.items()},
    "step.to_low": "damper to LOW",
    "step.to_high": "damper to HIGH",
    "then.source": "flame limits",
    "in_steps.one": "one valve at a time",
    "in_steps.more": "in {steps} steps",
    "high.when": "High fire",
    "high.do.gas": "{in_steps}, a minute at each, GAS FIRST, then air: {by_way}{cock}{high_gas:gas_pressure} before "
    "the jet and damper to HIGH: {high_rate:power}. {holds_again}{why}{near_back}{down}",
    "high.do.air": "{in_steps}, a minute at each, AIR FIRST, then gas: {by_way}{cock}damper to HIGH, and "
    "{high_gas:gas_pressure} before the jet: {high_rate:power}. {holds_again}{why}{near_back}{down}",
    "high.do.over": "{in_steps}, a minute at each. In the first{ups} GAS FIRST, then air; in the others "
    "AIR FIRST, then gas: {by_way}{cock}{high_gas:gas_pressure} before the jet and damper to HIGH: "
    "{high_rate:power}. {holds_again}{why}{near_back}{down}",
    "down.gas": "Down: backwards, AIR FIRST, then gas, never to LIGHT.{reopens}",
    "down.air": "Down: backwards, GAS FIRST, then air, never to LIGHT.{reopens}",
    "down.over": "Down: backwards, in each step the other valve first, never to LIGHT.{reopens}",
    "reopens": " The small gauge's cock open again below {scale:gas_pressure}.",
    "down.straight": "Never down: gas off.",
    # Why in this order, and what the mixture is between the two valves.
    "other.gas": "air first",
    "other.air": "gas first",
    "other.over": "the other way round",
    "why.back": "Not {other}: it runs back sooner{between}. ",
    "why.rich": "Not {other}: it is too rich and smokes{between}. ",
    "why.lifts": "Not {other}: it lifts off sooner{between}. ",
    "why.none": "Keep this order{between}. ",
    "between.smokes": "; between the valves it is richer for a moment, {ratio:.2f}, and may smoke",
    "between.rich": "; between the valves it is richer for a moment, {ratio:.2f}",
    "between.lean": "; between the valves it is leaner for a moment, {ratio:.2f}",
    "not_before": "Not before: cold, it lifts.",
    "near_back": "Hot, it may run back below {back:power 2} at worst: at {at} listen, and pop or flutter, gas off. ",
    "near_back.low": "LOW",
    "near_back.high": "HIGH",
    "near_back.low_high": "LOW and HIGH",
    "high.do.cool": "Not in this chamber: it is worked too cool to glow, and nothing lights again what lifts. "
    "Stay at low fire. "
    "{near_back}",
    "high.do.same": "Low fire is high fire here: stay. {holds_again}Never down to LIGHT: gas off.",
    "high.do.none": "No order of the valves leads from low fire to high fire: do not turn it up.",
    "high.in_steps.one": "One valve at a time",
    "high.in_steps.more": "In {steps} steps",
    "cock_shut": ", the small gauge's cock shut",
    "cock_first": ", then the small gauge's cock open",
    # It bursts or spills beyond its scale, and nobody knows what a needle gives before it has been set.
    "cock_open": "the small gauge's cock open once the jet's shows less than {scale:gas_pressure}, ",
    "cock": "the small gauge's cock shut (it ends at {scale:gas_pressure}), ",
    "high.source": "common practice",
    "several.when": "The next burner",
    "several.do": "As the first from '{first}' on, no purge: own cock, damper and {flame}. Farthest from the door "
    "first. {neighbours}{in_turn}",
    "several.do.one": "One blower feeds all. As the first from '{first}' on, no purge: own cock and {flame}. Farthest "
    "from the door first. {neighbours}{in_turn}",
    "neighbours": "When all burn, each guard again, one by one: its firing cock shut, RESET. If the valve stays open, "
    "it sees another flame: every gas off. Else light it again. ",
    "in_turn": "Walls glow before that: every gas off. Then each step at every burner, before the next.",
    "several.source": "common practice",
    "attend.when": "Attend",
    "attend.do": "The flame guard watches as long as gas flows. Somebody stands at the cock till the walls are above "
    "{relights:temperature}; nobody leaves it later either.",
    "attend.do.guard": "The flame guard watches as long as gas flows, and nobody leaves it all the same.",
    "attend.source": "EN 746-2; NFPA 86, from memory",
    "pop.when": "Pop, roar",
    "pop.do": "Or a whistle in the box: {whose} off at once, blower on until it is cool. After a second one at a "
    "setting: never again at that.",
    "whose": "gas",
    "whose.several": "every gas",
    "pop.source": "common practice",
    "stop.when": "Shut down",
    "from_low": ", from LOW too",
    "stop.do": "Never fade it out, never back to LIGHT: hot, it runs back. Snap the gas shut at {firing} "
    "first{from_low}; "
    "the valve must follow {hand:.0f} s after the flame, else no gas till it is mended. {pops}Then {behind}. "
    "{blower} on, {damper} open, {run_on:time 2}, till face is black, box below {cool:temperature}. {back}",
    "back.light": "Then needle and damper to LIGHT{cock_shut}.",
    "back.torch": "Then the needle nearly shut{cock_shut}.",
    "stop.do.unlit": "If it burns all the same: snap the gas shut at the firing cock, then {behind}, and stand "
    "aside. Blower on till face is black, box below {cool:temperature}.",
    "firing": "the firing cock",
    "firing.several": "every burner's firing cock",
    "source.line": "the line",
    "source.cylinder": "the cylinder",
    "source.cylinders": "every cylinder",
    "source.tank": "the tank",
    # What is shut behind the firing cock.
    "behind.line": "the isolating cock",
    "behind.cylinder": "the cylinder",
    "behind.cylinders": "every cylinder",
    "behind.tank": "the tank",
    "behind.line.guard": "the pilot's cock{follows}; then the isolating cock",
    "behind.cylinder.guard": "the pilot's cock{follows}; then isolating cock and cylinder",
    "behind.cylinders.guard": "the pilot's cock{follows}; then isolating cock and every cylinder",
    "behind.tank.guard": "the pilot's cock{follows}; then isolating cock and tank",
    "follows": ", and its valve must follow",
    "pops.light": "From LIGHT, rich, it may pop: stand aside. ",
    "pops.rich": "Rich as set, it may pop: stand aside. ",
    "stop.source": "NFPA 86, from memory; common practice",
    "fails.when": "Air or power fails",
    "fails.do": "{cut}The gas must close by itself too: air switch off below {switch:pressure 2}, valve sprung shut, "
    "opened by hand only. In {by_hand:.0f} s, {seen:.0f} to notice, {hand:.0f} for the hand, high fire fills "
    "{times:percent 0} of the cold chamber.{aside}",
    "fails.do.several": "{cut}The gas must close by itself too: air switch off below {switch:pressure 2}, valve sprung "
    "shut, opened by hand only.{aside}",
    "cut": "Firing cock shut, then {then_off}. {no_blower}",
    "cut.several": "Every firing cock shut, then {then_off}. {no_blower}",
    "no_blower": "{blower} off at its switch, or it starts when power is back; on again only for Purge, face black. ",
    "then_off.torch": "the torch, then {behind}",
    "then_off.pilot": "{behind}",
    "aside": " Then stand aside; nobody blows into it.",
    "fails.source": "BS 5990:2006; half: common practice",
    "smell.when": "Smell of gas",
    "smell.do": "No flame, no switch, no telephone there. Gas off at {source} if you can. Leave, let air in; "
    "{lies}. Outside, call gas supplier or fire brigade.",
    "lies.low": "this gas lies low, in pits and drains",
    "lies.high": "this gas gathers high, under the roof",
    "lies.both": "this gas, as heavy as air, lies low and high",
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
