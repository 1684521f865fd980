"""The words of the room Fire: the days from the welder to the first fire, and drying."""

from ..sources import Source
from . import lighting, trouble
from .forms import Answer, Axis, Chart, Check, Column, Series, Table

DRYING_RULE = Source(
    "refractory dry-out practice: at most [100 °F|56 °C] an hour and 1 h for [1 in|25 mm]", "published"
)
TESTED = Source("five lightings, ten minutes low and hot: common practice", "common practice")
DRYING = DRYING_RULE & Source("waits common practice", "common practice")

WAITS = ("refractory", "block_thickness", "ambient_temperature", "damp_air")

ANSWERS = (
    *lighting.ANSWERS,
    Answer(
        "days_in_all",
        "schedule.days_in_all",
        "count",
        "Days, first cut to test fire",
        meaning="Calendar days of one burner by itself, from the first cut to the end of the test fire, waits "
        "included.",
        formula="steps one after the other, work in the hours of the shop, waits night and day",
        inputs=(
            "hours_weld",
            "hours_mould",
            "hours_cast",
            "hours_finish",
            "hands",
            "day_hours",
            "work_week",
            "days_off",
            "start_date",
            "strip_after",
            "air_dry",
            "warm",
            "oven_hold",
            "oven_temperature",
            "first_fire_heats",
        ),
        source=DRYING,
        near="first",
    ),
    Answer(
        "test_fire_time",
        "fire_test.booked_s",
        "time",
        "Test fire takes",
        meaning="From the first purge till the blower may stop, by the lighting card, in whole five minutes. The wait "
        "till walls that glow do so counts at most. The calendar books it on the morning after the last heat.",
        formula="5 x (purge + seconds to try + 1 min to look) + wait at LIGHT at most + 1 min for each step to low and "
        "high fire + 10 min at low fire, or where the card leads + high fire until a scale "
        "shows its gas to 2 %, 10 min at least; that at low fire and 5 min at high where the empty lining does not "
        "stand high fire + blower runs on + 5 min to prove switch and valve; of several burners "
        "each is lit alone so, then all: a purge more, a try and a look for each, what a line's meter takes; up to "
        "whole five minutes",
        inputs=(
            "lighting_rate",
            "heat_up_waits",
            "mixture_standing",
            "blower_run_on",
            "low_fire",
            "burner_count",
            "gas_flow",
            "gas_from",
            "cylinder",
        ),
        source=TESTED,
        near="bench",
    ),
    Answer(
        "strip_after",
        "schedule.strip_after_s",
        "time",
        "Strip after",
        meaning="Time from casting until the mould may come off.",
        formula="hold of the class, half as long again below 10 °C",
        inputs=("refractory", "ambient_temperature"),
        source=DRYING,
        near="bench",
    ),
    Answer(
        "air_dry",
        "schedule.air_dry_s",
        "time",
        "Air-dry",
        meaning="Standing open at shop temperature.",
        formula="the larger of the least hold and hours for [1 in|25 mm]",
        inputs=WAITS,
        source=DRYING,
        near="bench",
    ),
    Answer(
        "warm",
        "schedule.warm_s",
        "time",
        "Gentle warmth",
        meaning="Kept at about [120 °F|50 °C], before any oven.",
        formula="the larger of the least hold and hours for [1 in|25 mm]",
        inputs=WAITS,
        source=DRYING,
        near="bench",
    ),
    Answer(
        "oven_hold",
        "schedule.oven_hold_s",
        "time",
        "Oven, hold",
        meaning="Hold at the oven's temperature.",
        formula="the larger of the least hold and 1 h for [1 in|25 mm]",
        inputs=("refractory", "block_thickness"),
        source=DRYING,
        near="bench",
    ),
    Answer(
        "oven_temperature",
        "schedule.oven_temp_K",
        "rough_temperature",
        "Oven, temperature",
        meaning="Temperature of the oven stage.",
        formula="rule of the class",
        inputs=("refractory",),
        source=DRYING_RULE,
        near="bench",
    ),
    Answer(
        "first_fire_heats",
        "schedule.first_fire_heats",
        "count",
        "First fire, heats",
        meaning="Into how many heats, a day each, it is split; none is longer than somebody watches, each begins cold "
        "and goes on where the last ended.",
        formula="a heat ends at a hold, before the watch does; up again at [300 °F|167 °C] an hour as far as it is dry",
        inputs=("first_fire_time", "watched_hours"),
        source=DRYING,
        near="first",
    ),
    Answer(
        "first_fire_watched",
        "schedule.watched_s",
        "time",
        "First fire, hours watched",
        meaning="Hours in which somebody stands by it, all heats together: up again at each further one too.",
        formula="sum of the heats",
        inputs=("first_fire_heats", "first_fire_time", "watched_hours"),
        source=DRYING,
        near="first",
    ),
    Answer(
        "first_fire_time",
        "schedule.first_fire_s",
        "time",
        "First fire, if in one go",
        meaning="From lighting to working heat without a break, holds included; to the end of drying in a kiln, and "
        "where the lighting card does not lead to low fire.",
        formula="rise / ramp + holds of each stage",
        inputs=(
            "refractory",
            "block_thickness",
            "ambient_temperature",
            "chamber_temperature",
            "kiln",
            "lighting_rate",
            "chamber_pressure",
            "low_fire",
            "lit_by",
            "heat_up_waits",
        ),
        source=DRYING,
        near="bench",
    ),
    Answer(
        "first_fire_fuel",
        "first_fire.fuel_kg",
        "mass",
        "First fire, gas",
        meaning="Gas of all heats at low fire, if the burner makes them all; a small torch takes far less, a kiln "
        "none of it. None where the lighting card does not lead to low fire: then the burner makes none of them.",
        formula="(gas at high fire x low fire + gas of its pilot) x hours of all heats",
        inputs=(
            "kiln",
            "first_fire_heats",
            "first_fire_time",
            "watched_hours",
            "firing_rate_gross",
            "pilot_rate",
            "fuel",
            "fuel_blend",
            "lighting_rate",
            *lighting.FORBIDS,
        ),
        source=DRYING,
        near="bench",
    ),
    Answer(
        "first_fire_cost",
        "first_fire.fuel_cost",
        "money",
        "First fire, cost of gas",
        meaning="What the gas of the first fire costs at most, if the burner makes all of it; counted in the cost of a "
        "burner. Where torch or charcoal dries it, as the steps tell, it is less.",
        formula="gas of the first fire x price of the gas",
        inputs=("first_fire_fuel", "fuel_price"),
        source=DRYING,
        near="bench",
    ),
)

CHECKS = (
    *lighting.CHECKS,
    Check(
        "first_fire_gas",
        "mass",
        "Gas for the first fire",
        harm="comfort",
        source=DRYING,
        cases={
            "good": "The first fire takes {takes:mass} of gas if the burner makes all of it; the cylinders hold "
            "{holds:mass}.",
            "note": "The first fire takes {takes:mass} of gas if the burner makes all of it, and the cylinders hold "
            "{holds:mass}: have full ones at hand, and change them between its heats, gas shut, nothing burning.",
        },
    ),
    Check(
        "holidays",
        "count",
        "Days off known",
        harm="comfort",
        source=Source("common practice", "common practice"),
        cases={
            "good": "The calendar leaves out your days off: {days:count}.",
            "caution": "Your days off ({days:count}) count for nothing: the calendar has no first day. Set the first "
            "day, or clear them.",
        },
    ),
    Check(
        "curing_air",
        "temperature",
        "Air for curing",
        harm="damage",
        lit=True,
        source=DRYING,
        cases={
            "good": "{air:temperature} is warm enough to cure in.",
            "damp": "Damp air dries slowly: air-drying and gentle warmth are stretched; curing is not, it wants damp.",
            "cold": "At {air:temperature} it hardens slowly; the waits are stretched.",
            "frost": "At {air:temperature} do not cast: below {frost:temperature} it does not set well, and frost "
            "ruins it while it is green. Bring block and mix indoors.",
        },
    ),
)

# What to do, what to watch and when to go on at each step, with the limits of 29 CFR 1926.1153 and 1910.1000, AWS fact
# sheet 25 and the practice of castables.
STEPS = {
    "weld.title": "Weld the body",
    "weld.do": "Cut the pieces, drill the relief holes, cut window and inlet hole, weld in the inlet. Tack the "
    "baffle in from the open ends, then weld the caps on; grind flush what enters the mould.",
    "weld.watch": "Seams closed all round: mixture that leaks at a seam burns outside.",
    "weld.go_on": "Blank the window with a plate and a gasket, and put [20 in|50 cm] of water of air inside, no"
    " gas and no oxygen. It shows no bubble in soap water and holds 10 minutes.",
    "weld.caution": (
        "No zinc: galvanised steel gives off zinc oxide fume when welded or hot (metal fume fever hours later). Use "
        "black steel. Eyes, skin and air as for any welding; nothing that burns near by."
    ),
    "weld.source": "29 CFR 1910.1000 zinc oxide; AWS fact sheet 25",
    "mould.title": "Make the mould and set the pins",
    "mould.do": (
        "Screw frame and base. Drill the pin holes to depth, then through with the knock-out drill. Seal and "
        "wax the wood, set the pins, mark the fill line. Mark the grip on the body and clamp a cross-bar to "
        "each side of it."
    ),
    "mould.watch": "Pins stand square to the base and clear of wall and window; none wobbles.",
    "mould.go_on": "The body, once there, slides to its mark over the pins and touches none.",
    "mould.caution": "Clamp the board to drill it; keep wood dust out of the lungs.",
    "mould.source": "common practice",
    "cast.title": "Mix and cast",
    "cast.do": (
        "Weigh dry mix and water, mix to the least water that packs, and fill to the line. Rod and tap out the "
        "air. Push the body in until its cross-bars lie on the frame."
    ),
    "cast.do.joint": "First brush or tape {wax:drill_length 2} of wax on the inside of both ends and on the lip's edge "
    "there: the hot block grows into it.",
    "cast.watch": "Part of a bag: all of it turned over dry first, or its fines stay below. A ball of mix tossed up "
    "and caught holds together and does not slump. No water standing on top.",
    "cast.go_on": "The cross-bars lie on the frame, mix shows all round the body, the pins stand square and proud. "
    "Cover with plastic, keep damp.",
    "cast.caution": (
        "Dry mix holds crystalline silica: respirator [[P100|P3]], mix outdoors or with extraction, wet-clean, never "
        "sweep (29 CFR 1926.1153: 50 micrograms a cubic metre over 8 h). Wet cement is alkaline and burns skin and "
        "eyes: gloves, goggles, rinse at once."
    ),
    "cast.source": "29 CFR 1926.1153; castable practice",
    "free.title": "Free the pins at first set",
    "free.do": "Turn the work over as the list of the pins says: blocks under the steel back, never under the frame. "
    "Take the base off and free each pin. Damp plastic over it again. A quarter of an hour.",
    "free.watch": "The hour is a guide: try the rim with a thumb from an hour before. Too early and the mix "
    "slumps, too late and the pins hold.",
    "free.go_on": "The base is off and each pin has moved once; wax is cut flush instead.",
    "free.caution": "On blocks under the frame the steel and its block of hours drop out. Wet cement is "
    "alkaline and burns skin and eyes: gloves and goggles.",
    "free.source": "castable practice: about 3 h after casting, half as long again in the cold",
    "strip.title": "Strip the mould",
    "strip.do": "Unscrew the frame and lift it off; the base came off at first set, the pins stay.",
    "strip.do.round": "Take the strap off. The halves part along their line, each in one piece with its layers: draw "
    "them off sideways. The base came off at first set, the pins stay.",
    "strip.watch": "The edge does not crumble under a thumbnail; it rings dull but whole.",
    "strip.go_on": "No crack wider than a hair, no corner left in the mould. If soft, cover it damp for another day.",
    "strip.caution": "Do not lever on the block or on the pins: it is still weak.",
    "strip.source": "common practice: after two to three days",
    "trim.title": "Trim the block",
    "trim.do": "Rasp off flash and the rim round the body while the block is still green, round the edges.",
    "trim.watch": "No refractory left outside that would carry the load of a knock.",
    "trim.go_on": "Face flat, edges round, no flash over pins or wax at the face.",
    "trim.caution": "Rasping frees silica dust: rasp wet, [[P100|P3]] respirator, no blowing off (29 CFR 1926.1153).",
    "trim.source": "29 CFR 1926.1153",
    "air.title": "Air-dry, then gentle warmth",
    "air.do": "Stand it open on all sides for the hours of the stages, then at most [120 °F|50 °C]: lamp, "
    "warm room, by the stove. It is carried there while the shop is open: the calendar has the warmth begin "
    "then, books no hands for it, and lets it go on over night. Longer in the open or in the warmth does no harm.",
    "air.watch": "Weigh it morning and evening of days of work. It turns from dark to light, last at the thick middle.",
    "air.go_on": "Two weighings half a day apart differ by less than 0.5 % of its mass.",
    "air.caution": "No flame and no hot air gun: a wet block heated fast bursts from steam inside.",
    "air.source": "common practice: about 16 h of warmth",
    "clear.title": "Clear the ports",
    "clear.do": "Turn each pin and draw it out toward the fire, never toward the plenum. Then turn the cleaning"
    " drill through by hand from the fire side.",
    "clear.do.wax": "Turn the cleaning drill by hand through the wax of each port from the fire side, no power; draw "
    "it back often and wipe it. A film stays: it melts in the oven.",
    "clear.do.plastic": "The pins are out since the air-drying. Turn the cleaning drill through by hand from the fire "
    "side.",
    "clear.watch": "Light through every port, no pin stub, no flash at the plenum end. Vacuum ports and plenum, "
    "through the inlet too; never blow them out.",
    "clear.go_on": "Every port passes the drill its full length; count them.",
    "clear.caution": (
        "Drilled refractory is silica dust: wet it or vacuum at the drill, [[P100|P3]] respirator (29 CFR 1926.1153). "
        "Burning wax smokes and flares: melt it out, do not light it."
    ),
    "clear.source": "29 CFR 1926.1153; common practice",
    "oven.title": "Oven-dry",
    "oven.do": "Best is a kiln that takes the block whole, up to {dry:rough_temperature}; else an old oven. Up by the "
    "stages and hold; let it cool in it, closed, {cool:time}. Two thermocouples from the fire side, in two ports near "
    "the middle, against the wall: one [1/2 in|13 mm] under the hot face, one at mid-depth. A wisp of fibre plugs each "
    "port. Steer by the slower.",
    "oven.do.wax": "Wax left in the ports melts at [140 to 185 °F|60 to 85 °C]: an electric oven that takes "
    "air, a tray under the ports, face down, no flame.",
    "oven.watch": "A cold mirror held at a port fogs while water still leaves. Do not climb while face and mid-depth "
    "are more than [250 °F|140 °C] apart.",
    "oven.go_on": "The mirror stays clear, and the weight an hour before the hold ends and at its end differ by less "
    "than 0.1 %. Weigh it hot, in dry leather gloves. If not, hold another hour and weigh again.",
    "oven.caution": (
        "Steam bursts a block that is heated too fast: stand aside, guard the oven's window. No oven that cooks food, "
        "now or later. Hot steel burns."
    ),
    "oven.source": "dry-out practice, [1 h an inch|1 h for 25 mm]",
    "fire.title": "First fire",
    "fire.do": "By the stages to {dry:rough_temperature}: in a kiln, no hotter there, for its steel; or under the "
    "chamber, with a small torch or charcoal in its door and the burner's air at a trickle. Its own burner only "
    "after that, never lower than the card has it: it may run back. It may climb faster than the stage to work: hair "
    "cracks may come. Thermocouples as in the oven; draw them and the fibre before it is lit. Where there is "
    "neither, short pulses of it, only after the oven, each a whole lighting by the card. Cool slowly too.",
    "fire.do.no_low": "By the stages to {dry:rough_temperature}: in a kiln, no hotter there, for its steel; or under "
    "the chamber, with a small torch or charcoal in its door and the burner's air at a trickle. Not with its own "
    "burner: the lighting card does not lead to low fire, so no stage goes on to work. The first time hotter is the "
    "test fire: hair cracks may come. Thermocouples as in the oven; draw them and the fibre before it is lit. Cool "
    "slowly too.",
    "fire.do.kiln": "In the kiln, on from the oven's hold, all blocks of the charge together, by the stages. To "
    "{dry:rough_temperature} and no hotter: the steel box scales and softens. None of this burner's gas so far. The "
    "first "
    "time hotter is the test fire: hair cracks may come. Thermocouples as in the oven. Cool slowly, closed, till it "
    "takes the next charge cold.",
    "fire.do.unlit": "DO NOT LIGHT this burner: checks of the design stop it. A block that is cast already is dried in "
    "the oven and waits; its first fire is one of the mended design.",
    "fire.watch": (
        "Hold, do not climb, at white wisps, sweat at ports or back, a mirror that fogs, a hiss or a tick. Hold"
        " at [250 °F|140 °C] between face and mid-depth. Stop, gas off and blower on, at thuds, flakes or "
        "chips, a new crack wider than [1/32 in|1 mm], or [400 °F|220 °C] between them. Never speed up to "
        "finish. Mesh before the door."
    ),
    "fire.go_on": (
        "No steam, no new crack wider than a hair, steel of the body below [400 °F|200 °C]. May be split: let it cool "
        "slowly. On another day go up at most [300 °F|170 °C] an hour to where it ended, then by the stages."
    ),
    "fire.go_on.kiln": "No steam, no new crack wider than a hair; cold before it is moved. May be split: let it cool "
    "slowly. On another day go up at most [300 °F|170 °C] an hour to where it ended, then by the stages.",
    "fire.caution": (
        "Before gas: leak-test every joint with soap water, regulator and hose for the gas and pressure used. "
        "Required, or do not fire: an air-proving switch; a flame guard; a valve in the gas line that closes when "
        "air or power fails and is opened again by hand only; a check valve before the jet. Blower on an earthed "
        "socket behind an RCD (GFCI). Propane sinks and lies in pits and cellars, "
        "natural gas rises under roofs. Carbon monoxide kills: outdoors or where the lighting card says, "
        "and a loud CO alarm with a display ([35 ppm over a shift, 200 ppm never|20 ppm over a shift, 100 ppm for "
        "15 min at most]). Ceramic fibre in the chamber:"
        " coat it, [[P100|P3]] respirator when handling. Keep out of the line of the face. A licensed gas fitter and "
        "the local code decide."
    ),
    "fire.source": "29 CFR 1910.1000; NIOSH 1972 (CO); NFPA 86, from memory; signs common practice",
    "test.title": "Test fire",
    "test.do.low": "Cold, in the chamber of the test stand, by the lighting card. {lights}Then stay at "
    "LIGHT till the walls glow, and burn {burns:.0f} min at low fire{cold}. Read every gauge and fill in the record.",
    "test.do.low_high": "Cold, in a chamber, by the lighting card. {lights}Stay "
    "at LIGHT till the walls glow; then {low:.0f} min at low fire and {burns:.0f} min at high{cold}. Read every gauge "
    "there, fill in the record.",
    "test.do.high": "Cold, in the chamber of the test stand, by the lighting card. {lights}Then stay at "
    "LIGHT till the walls glow, go up as the card tells and burn {burns:.0f} min at high "
    "fire{cold}: never down to low fire. Read every gauge and fill in the record.",
    **{
        f"test.do.{stays}_cool": "Cold, in the chamber of the test stand, by the lighting card. "
        f"{{lights}}This chamber is worked too cool to glow: pilot and guard stay on. Once it burns "
        f"steadily, {burns}. "
        "Read every gauge and fill in the record."
        for stays, burns in (
            ("low", "burn {burns:.0f} min at low fire{cold}"),
            ("low_high", "burn {low:.0f} min at low fire, then {burns:.0f} min at high{cold}"),
            ("high", "go up as the card tells and burn {burns:.0f} min at high fire{cold}, never down to low fire"),
        )
    },
    "cold.high": " with cold steel in it (empty, too hot for its lining)",
    "cold.both": ", all with cold steel in it, changed as it heats (empty, too hot for its lining)",
    "lights": "Light it five times, the whole purge between. ",
    "lights.several": "Light it alone five times, the whole purge between; at last all. ",
    "lights.scale": "Once for each burner, its regulator on a cylinder of its own, on the scale, no hose pulling; the "
    "manifold plugged, soap on both. Light it alone five times, the whole purge between; at last all. ",
    "lights.lent": "Once for each burner, behind a meter of its own that a fitter puts in. Light it alone five times, "
    "the whole purge between; at last all. ",
    "test.do.unlit": "DO NOT LIGHT this burner: checks of the design stop it. Prove switch and valve with air "
    "alone, no gas.",
    "unlit": "do not light",
    "watch.unlit": "No flame, no gas.",
    "go_on.unlit": "The design is mended and its papers are printed anew.",
    "test.watch": "Every port alight within the seconds of the card; no pop, no roar in the box, no port dark. Else "
    "gas off at once.",
    "test.go_on": "Five of five lit, ten minutes without a pop at the fire that the record names; air switch and valve "
    "shut the gas. It is shut down gas first.",
    "test.caution": "Outdoors or where the card says, carbon monoxide alarm on, soap on every joint before. Somebody "
    "stands by it all the time.",
    "test.source": "common practice; its time by the lighting card: the purges, the wait at LIGHT at most, ten "
    "minutes at low fire, the steps, and the blower till it is cold",
    "cast.do.rammed": "Stop: a plastic comes ready from the bag, takes no water and is rammed in layers. No closed "
    "body can be pushed into it, and nobody reaches inside to ram it. Take a castable.",
    "go_on.frost": "Below [41 °F|5 °C] do not cast: bring block and mix indoors, frost ruins green refractory.",
    "go_on.cold": "Below [50 °F|10 °C] it hardens slowly: the wait is stretched by half.",
    "day": "day {number}, {time}",
    "heats": "{title}, cold again between its heats: {heats}",
    "heat": "{start}, {lasts:time}",
}

TABLES = (
    *lighting.TABLES,
    *trouble.TABLES,
    Table(
        "days",
        {"one": "The days of one burner", "first": "The days of burner 1 of {count}"},
        (
            Column("number", "No.", "count"),
            Column("step", "Step", "word"),
            Column("start", "Starts", "word"),
            Column("takes", "Takes", "time"),
            Column("work", "Work in it", "time"),
            Column("watch", "Watch", "word"),
            Column("go_on", "Go on when", "word"),
        ),
        source=DRYING,
        words=STEPS,
    ),
    Table(
        "care",
        "What to do at each step, and what to beware of",
        (
            Column("step", "Step", "word"),
            Column("do", "Do", "word"),
            Column("caution", "Caution", "word"),
            Column("source", "Source", "word"),
        ),
        source=DRYING,
        words=STEPS,
    ),
    Table(
        "drying",
        "Drying and first heat, stage by stage",
        (
            Column("stage", "Stage", "word"),
            Column("ramp", "Up at most", "word"),
            Column("temperature", "To", "rough_temperature"),
            Column("hold", "Hold", "time"),
            Column("heat", "Heat", "word"),
            Column("source", "Source", "word"),
        ),
        source=DRYING,
        words={
            "ramp_F": "{rate:ratio 2} °F an hour",
            "ramp_K": "{rate:ratio 2} °C an hour",
            "heat": "{number} of {heats}",
            "cure": "Cure",
            "air": "Air-dry",
            "warm": "Warmth",
            "oven": "Oven",
            "fire": "First fire",
            "again": "Up again",
            "service": "To work",
        },
    ),
)

CHARTS = (
    Chart(
        "drying",
        "Drying and first fire, temperature over time",
        Axis("time since the start of gentle warmth", "time"),
        Axis("temperature", "temperature"),
        (Series("temperature", "temperature of the block"),),
        cases={
            "shows": "Gentle warmth, then {hold:time} in the oven at {oven:rough_temperature}, then the first fire: "
            "{first_fire:time} in one go.",
            "split": "Gentle warmth, then {hold:time} in the oven at {oven:rough_temperature}, then the first fire. "
            "It is drawn as one fire of {first_fire:time}. You make {heats} heats, one a day, {watched:time} in all: "
            "each starts cold and first comes up to where the last one ended.",
        },
    ),
)
