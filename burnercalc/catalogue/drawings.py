"""The words of the drawings: titles, descriptions, what is written on them. Made in views/plans.py, templates.py."""

from .forms import Drawing
from .train import TRAIN_WORDS

_BAFFLE = "{holes} holes of {hole}, sheet {thickness}"
_BENT = "{holes} holes of {hole}, sheet {thickness}, bend {angle:g}° from flat along the middle"

DRAWINGS = (
    Drawing(
        "face",
        "Face, seen from the fire",
        {
            "box_rows": "The face: a box {length} by {width} with a window inside the lip and {ports} ports in "
            "{rows} rows.",
            "box_rings": "The face: a box {length} by {width} with a window inside the lip and {ports} ports in "
            "{rows} rings, the middle one counted.",
            "round_rows": "The face: a disc {width} across with a window inside the lip and {ports} ports in "
            "{rows} rows.",
            "round_rings": "The face: a disc {width} across with a window inside the lip and {ports} ports in "
            "{rows} rings, the middle one counted.",
        },
        room="face",
    ),
    Drawing(
        "section",
        "Section along the body",
        "Lengthwise section: inlet pipe, plenum, refractory block gripping the steel lip, ports down to the fire.",
        words={
            "baffle": "baffle",
            "plenum": "plenum",
            "fire": "fire",
            "inlet": "inlet {pipe:pipe} pipe, {length} long",
            "inlets": "two inlets {pipe:pipe} pipe, {length} long",
            "inlet_at_end": "inlet {pipe:pipe} pipe, {length} long, into this end",
        },
        room="face",
    ),
    Drawing(
        "section_across",
        {
            "middle": "Section across the body",
            "inlet": "Section across the body, through one inlet",
            "end": "Section across the body, inlet behind it",
        },
        {
            "middle": "Section across through the middle: the steel lip with refractory on both sides of it, plenum, "
            "baffle and inlet.",
            "inlet": "Section across through one of the two inlets, not the middle: the steel lip with refractory on "
            "both sides of it, plenum, baffle and inlet.",
            "end": "Section across through the middle: the steel lip with refractory on both sides of it, plenum and "
            "baffle; broken line, the inlet pipe in the end behind.",
        },
        room="face",
    ),
    Drawing(
        "in_chamber",
        "The burner in its chamber",
        {
            "works": "Cut along the chamber, {length} long: burner, work, opening. Flames only where they hold.",
            "empty": "Cut along the chamber, {length} long: burner, opening. Flames only where they hold.",
            "works_above": "Seen from above and cut along the chamber, {length} long: burner in a side wall, work, "
            "opening. Flames only where they hold.",
            "empty_above": "Seen from above and cut along the chamber, {length} long: burner in a side wall, opening. "
            "Flames only where they hold.",
        },
        words={
            "work": "work",
            "lining": "lining {thick}",
            "opening": "opening",
            "burner": "burner",
            "burners": "{count} burners",
            "in_end": "burner in an end, not drawn",
        },
        room="heat",
    ),
    Drawing(
        "exploded",
        "The burner taken apart",
        "Steel pieces in the order they go together, the block under them, and the mould with its pins; the face looks "
        "down. Of two alike in one place one may be shown.",
        words={
            "inlet": "inlet pipe, {pipe:pipe}",
            "inlets": "two inlet pipes, {pipe:pipe}",
            "inlet_end": "{pipe:pipe} pipe, at one end",
            "tube": "body tube and 2 end caps",
            "back_plate": "back plate",
            "side_plates": "2 side plates, 2 end caps",
            "face_plate": "face plate",
            "back_disc": "back disc",
            "pipe": "body pipe",
            "face_disc": "face disc",
            "baffle": "baffle",
            "block": "block, {ports} ports",
            "frame": "mould frame",
            "base": "mould base, {pins} pins",
        },
        room="make",
    ),
    Drawing(
        "template",
        "Drilling template for the mould base",
        "The base from above: mould inside, body outline, window and every port at true size, with the base's centre "
        "lines.",
        words={
            "up": "Pins stand up from here: glue this side up.",
            "side": "Centre lines on the base's centre lines.",
            "mould": "Outer line: mould inside, {mould} by {mould_across}",
            "body": "Thick line: body, {body} by {body_across}",
            "window": "Inner line: window, {window} by {window_across}",
            "holes": "Circles: {holes} holes of {hole}, {deep} deep, then {through} right through",
            "numbers": "Numbers as in the base's hole table; seen from the fire, left and right change places.",
        },
        room="make",
    ),
    Drawing(
        "window",
        {"box": "Window and relief holes", "round": "Window in the face disc"},
        {
            "box": "The side of the body that becomes the face: window, four corner relief holes and the cuts between "
            "them, at true size.",
            "round": "The face disc with its round window at true size.",
        },
        words={
            "window": "window",
            "cut_round": "cut round the line",
            "disc": "Outer line: the face disc, {length} across",
            "side": "Thick line: the side that becomes the face, {length} by {width}",
            "lip": "Thin line: window, {window} by {window_across}; the lip is {setback} all round",
            "lip.ends": "Thin line: window, {window} by {window_across}; {end} from the ends of the tube as cut, "
            "{setback} from the edges; the lip is {setback} all round when the caps are on",
            "corner": "Broken lines: the tube's corners end here, radius {outside} outside, {inside} inside",
            "drill": "1. drill four holes of {drill}",
            "cut": "2. cut from hole to hole",
            "bridge": "Leave a bridge of {bridge:length} in the middle of both cuts along the body, between the marks, "
            "until the caps are on: the body springs.",
        },
        room="make",
    ),
    Drawing(
        "inlet",
        {
            "back": "Inlet hole in the back",
            "two": "Two inlet holes in the back",
            "round": "Inlet hole in the back disc",
            "end": "Inlet hole in one end cap",
        },
        {
            "back": "The inlet hole with its centre and the outline of the back, at true size.",
            "two": "Both inlet holes with their centres and the outline of the back, at true size.",
            "round": "The inlet hole with its centre and the outline of the back disc, at true size.",
            "end": "The inlet hole with its centre and the outline of one end cap, at true size.",
        },
        words={
            "saw": "saw {saw}",
            "pipe": "for {pipe:pipe} pipe",
            "face_side": "face side",
            "face_below": "Lower edge: the face side",
            "back": "Thick line: the back of the body, {length} by {width}",
            "round": "Thick line: the back disc, {length} across",
            "end": "Thick line: one end cap, {length} by {width}",
            "middle": "Middle of the hole: {x} from the left end, {y} from the lower edge",
            "middle_disc": "The hole is in the middle of the disc.",
            "middles": "Middles of the holes: {x} from each end, {y} from the lower edge, {apart} apart",
        },
        room="make",
    ),
    Drawing(
        "cap",
        {"box": "End cap, cut two", "round": "Disc of the body, cut two"},
        {"box": "End cap, cut two, at true size.", "round": "Disc of the body, cut two, at true size."},
        words={"radius": "radius {radius}", "thick": "{wall} thick"},
        room="make",
    ),
    Drawing(
        "baffle",
        {"none": "No baffle", "flat": "Baffle, flat", "bent": "Baffle, flat"},
        {
            "none": "This design has no baffle.",
            "flat": f"The baffle's blank at true size: {_BAFFLE}.",
            "bent": f"The baffle's blank at true size: {_BENT}.",
        },
        words={"none": "This design has no baffle.", "flat": _BAFFLE, "bent": _BENT},
        room="make",
    ),
    Drawing(
        "mould",
        "Mould, from above",
        "The mould from above at true size: base board, frame, outline of the body and the pins.",
        words={
            "inside": "inside {length}",
            "base": "base {length}",
            "box": "From outside in: base board, {base} wide; frame; thick line, body, {body} by {body_across}; pins",
            "round": "From outside in: base board, {base} square; layers with their round hole; thick line, body, "
            "{body} across; pins",
        },
        room="make",
    ),
    Drawing(
        "nest",
        "Boards and sheets, and how to cut them",
        "Each board or sheet to buy, with the pieces of the moulds where they are cut. Numbers are those of the "
        "list of the mould's pieces.",
        words={
            "board": "{count} of {stock}, {length:length} x {width:length}",
            "piece": "{number}: {length:length} x {width:length}",
            "none": "wood of your own: what is sold is too small",
        },
        room="make",
    ),
    Drawing(
        "pin_guide",
        "Pin guide, for laser or router",
        "A plate that fits between the mould's boards, with a hole for every pin; its lower left corner is the origin.",
        words={
            "box": "CUT: outline {length} by {width}, {holes} holes {room:drill_length} wider than the pins of {pin}",
            "round": "CUT: disc {length} across, {holes} holes {room:drill_length} wider than the pins of {pin}",
            "engrave": "ENGRAVE: centre lines. The lines are the finished edges: let your program allow for the kerf.",
            "unit": "One unit of this file is one millimetre.",
            "use": "Lay it on the base between the boards and drill through it. Slid over the pins it shows that they "
            "stand square. It comes off before the mix goes in.",
        },
        room="make",
    ),
    Drawing(
        "drilled_base",
        "Drilled base of the mould, for a router",
        "The base board from above with a hole for every pin, a knock-out hole under each, and the lines of the mould; "
        "its lower left corner is the origin.",
        words={
            "cut": "CUT, right through: outline {length} by {width}, {holes} knock-out holes of {through}",
            "pocket": "POCKET, {deep} deep: {holes} holes of {hole} for the pins",
            "engrave": "ENGRAVE: centre lines, inside of the mould, body. The lines are the finished edges.",
            "up": "This side up: the pins stand up from it.",
            "unit": "One unit of this file is one millimetre.",
        },
        room="make",
    ),
    Drawing(
        "train",
        "Gas and air train, in the order of flow",
        "Gas from the left, air from the right, mixture down to the burner; beside the line what stands on a branch, "
        "with no line to it what goes between the others. "
        "Numbers are those of the list; thick is safety, thin what the burner needs, dashed comfort.",
        words=TRAIN_WORDS,
        room="feed",
    ),
    Drawing(
        "slide",
        "Slide of the damper",
        {
            "hole": "The damper's slide, shut over the bore of the mix pipe: the hole that it is lit at, and "
            "where its edge stands at low and at high fire.",
            "gap": "The damper's slide, shut over the bore of the mix pipe: where its edge stands to light, at low "
            "and at high fire.",
            "unlit": "The damper's slide, shut over the bore of the mix pipe. It has no hole and no mark: this design "
            "must not be lit.",
        },
        words={
            "bore": "bore {size:length}",
            "hole": "hole for LIGHT: drill {drill}",
            "light": "LIGHT: edge back {size:drill_length}",
            "low": "LOW: edge back {size:drill_length}",
            "high": "HIGH: edge back {size:drill_length}",
            "step.gap": "mark {n}: edge back by drill {drill}",
            "step.gap_named": "mark {n}: edge back by drill {drill}, {size:drill_length}",
            "step.rule": "mark {n}: edge back {size:length}",
            "step.view": "half line: mark 1",
            "steps.view": "half lines: marks 1 to {n}",
            "guide": "guide, bought with the gate",
            "pin": "stop pin, {size:drill_length}",
            "plate": "Thick line: the plate, {width} by {length}, of flat sheet; file its top edge straight. Face it: "
            "it slides tight in its guide, else air leaks past.",
            "sharp": "Sheet at most {thick:drill_length} thick, a quarter of the hole. The hole's edge sharp, no "
            "countersink: burr off with a flat file.",
            "broken": "Broken line: the bore of the pipe, the plate shut. Do not cut it.",
            "level": "Level lines: where the top edge stands, drawn back. Before it is built in, set each by its drill "
            "and scratch the plate at the guide's end.{steps}",
            "steps": " Half lines: the lighting card's marks, by their numbers.",
            "stop": "Stop pin: a screw through the plate, which the guide stops there. No air switch sees a slide that "
            "is shut too far.",
        },
        room="feed",
    ),
    Drawing(
        "plate",
        "Data plate",
        "A plate for the burner: who made it, its gas and rate in both measures, and that no body has certified it.",
        words={
            "title": "GAS BURNER, BLOWN, MANY PORTS",
            "made": "Made by ..............................................  at ....................................",
            "number": "Serial no. .....................  Date .....................  Design ..........................",
            "gas_words": "Gas, no other",
            "propane": "propane",
            "natural_gas": "natural gas",
            "butane": "butane",
            "blend": "mole %: {shares}",
            "high_words": "High fire, gross",
            "low_words": "Low fire, gross",
            "not_low": "none: do not turn down",
            "not_high": "none: do not turn up",
            "not_lit": "none: do not light",
            "jet_words": "Gas before the jet, high fire",
            "drill_words": "Jet drill",
            "air_words": "Air at high fire, as in the shop",
            "mixture_words": "Pressure before the burner, high fire",
            "limit_words": "Refractory, service limit",
            "power": "{power:power}",
            "gas": "{pressure:gas_pressure}",
            "pressure": "{pressure:pressure}",
            "air": "{flow:air_flow}, {temp:temperature}",
            "height_words": "Height above the sea, as set",
            "height": "{height:long_length}",
            "heat": "{temp:temperature 4}",
            "mm": "{size:drill_length}",
            "certified": "NOT CERTIFIED unless the mark of a certifying body stands here:",
            "unlit": "DO NOT LIGHT. Checks of the design stop it: mend it, and print this plate anew.",
            "use": "Attended use only. Outdoors, or as the operating card says, with a loud carbon monoxide alarm. Gas "
            "valve that shuts by itself when air or power fails. The local authority decides where it may be used.",
        },
        room="make",
    ),
    Drawing(
        "operating_card",
        "Operating card",
        "A card for the wall beside the burner: what to set, in both measures, and what nobody may forget.",
        words={
            "title": "OPERATING CARD",
            "burner": "For burner no. ............................   Gas, no other: {gas}",
            "propane": "propane",
            "natural_gas": "natural gas",
            "butane": "butane",
            "blend": "mole %: {shares}",
            "at": "Fire",
            "light": "LIGHT",
            "low": "LOW",
            "high": "HIGH",
            "rate_words": "Rate, gross",
            "gas_words": "Gas before the jet",
            "open_words": "Damper (a slide)",
            "never": "do not light",
            "not_low": "do not turn down",
            "not_high": "do not turn up",
            "power": "{power:power}",
            "gas": "{pressure:gas_pressure}",
            "shut": "shut, hole alone",
            "full": "fully open",
            "weak": "fully open",
            "before": "1. {where}, carbon monoxide alarm on. Ports clear, every gas cock shut. "
            "Nobody in the line of the door.",
            "where.doors": "Outdoors or doors wide open",
            "where.hood": "Outdoors or under a hood that draws it off",
            "where.open": "Outdoors, in the open only",
            "purge": "2. Gas shut, no flame in the chamber. {blower} on, {damper} {cleared}, {purge:time 2}.",
            "mm": "{size:drill_length}",
            "blower": "Blower",
            "blower.several": "Every blower",
            "damper": "damper",
            "damper.several": "every damper",
            "hole": "hole {size}",
            "gap": "gap {size}",
            "air": "LIGHT: jet {jet}, {gauge}, air of {air} only; other air: a card printed for it and these.{drawn}",
            "air.hole": "LIGHT: jet {jet}, hole {hole}, {gauge}, air of {air} only; other air: a card printed for it "
            "and these.{drawn}",
            "gauge.small": "small gauge to {scale:gas_pressure}",
            "gauge.tube": "sloping gauge to {scale:gas_pressure}",
            "gauge.jet": "gauge to {scale:gas_pressure}",
            "air_span": "{least:temperature} to {most:temperature}",
            "air_own": "{own:temperature}",
            "drawn": " A blend: all holds from a full charge until {left:percent 0} is left, by weight; then no fire.",
            "slide": "Damper: at a hole the slide is shut on it; at a gap it is open by the shank of that drill.",
            "cock": "The small gauge's cock: needle at its mark, then open to light and at LOW, shut before more "
            "than {scale:gas_pressure}.",
            "cock_low": "The small gauge's cock: needle at its mark, then open to light, shut before LOW (it ends at "
            "{scale:gas_pressure}).",
            "cock_straight": "The small gauge's cock: needle at its mark, then open to light, shut before more than "
            "{scale:gas_pressure}.",
            "cock.tube": "The small gauge's cock: open once alight, the other below {scale:gas_pressure}, and at LOW; "
            "else shut.",
            "cock_low.tube": "The small gauge's cock: open once alight, the other below {scale:gas_pressure}; shut "
            "before LOW.",
            "cock_straight.tube": "The small gauge's cock: open once alight, the other below {scale:gas_pressure}; "
            "else shut.",
            "flame": "3. Damper to LIGHT. {keeper} before any gas, and there until the walls glow. All "
            "stand aside. {snap}",
            "flame_guard": "3. Damper to LIGHT. Firing cock shut, {opened} and pilot's cock open. A lit torch at the "
            "pilot, then PILOT held, {pilot:.0f} s at most: let go, it must burn on, as long as gas flows. All stand "
            "aside. {snap}",
            "snap": "Needle at its mark, {opened} open, RESET, at once snap the firing cock open, hand on it. The "
            "moment it does not take, {hiss:.0f} s after the first hiss at most: gas off.",
            "snap.guard": "Needle at its mark, RESET, at once snap the firing cock open, hand on it. The moment it "
            "does not take, {hiss:.0f} s after the first hiss at most: gas off.",
            "opened.line": "isolating cock",
            "opened.cylinder": "cylinder",
            "opened.cylinders": "every cylinder",
            "opened.tank": "tank",
            "opened.line.guard": "isolating cock",
            "opened.cylinder.guard": "cylinder, isolating cock",
            "opened.cylinders.guard": "every cylinder, isolating cock",
            "opened.tank.guard": "tank, isolating cock",
            "keeper.hand": "Two people: one holds a lit torch on a long stem at the ports",
            "keeper.stand": "A lit torch on a stand at the ports",
            "turns": "4. Stay at LIGHT until the walls glow. Then to LOW {to_low}; to HIGH {to_high}. Down to LOW "
            "backwards{down}, never to LIGHT: hot, it may run back. Somebody always stands by.",
            "turns_cool": "4. To LOW {to_low}; to HIGH {to_high}. Down to LOW backwards{down}, never to "
            "LIGHT. Somebody always stands by.",
            "turns_low": "4. To LOW {to_low}, and no further: do not turn up. Never back to LIGHT: to stop, gas off. "
            "Somebody always stands by.",
            "turns_straight": "4. Stay at LIGHT until the walls glow. To LOW {to_low}; straight up to HIGH {to_high}. "
            "Never down: to stop or wait, gas off. Somebody always stands by.",
            "turns_straight_cool": "4. {steady:time 1} at LIGHT at most: these walls never glow. Not to LOW; straight "
            "up to HIGH {to_high}. Never down: to stop or wait, gas off. Somebody always stands by.",
            "way.gas": "gas first, then air{steps}",
            "way.air": "air first, then gas{steps}",
            "way.over": "by the lighting card's {count} steps",
            "down.gas": ", air first",
            "down.air": ", gas first",
            "down.over": ", other valve first",
            "way.same": "no turn, it is the same",
            "way.none": "not at all: no order of the valves holds",
            "steps": ", by the lighting card's {steps} steps, a minute at each",
            "unlit": "2. DO NOT LIGHT. The lighting card tells why.",
            "out": "Not lit, or it goes out: gas off at once, then {put_out}. Blower on, door open, purge again for "
            "{purge:time 2}. Hot: wait till the face is black.",
            "out_several": "{hot}: every gas off at once, then 2, faces black. Not lit, or out before that: its gas "
            "off at once, then {put_out}; its air at LIGHT; no new try for {purge:time 2}. Only if none burns: blower "
            "on, door open, purge again for {purge:time 2}. Hot: wait till the face is black.",
            "several": "{blower} on, all dampers at LIGHT before the first burner is lit. Farthest from the "
            "door first, each with its own torch or pilot. Each step at every burner, one by one, before the "
            "next.",
            "hot": "Walls glowing, one out",
            "hot.cool": "Past LIGHT, one out",
            "cleared.high": "at HIGH",
            "cleared.wide": "wide open",
            "put_out.torch": "the torch at its own valve where it stands, never drawn out lit",
            "put_out.pilot": "the pilot's cock",
            "regulator": "The regulator: no higher than {outlet} by its own gauge, firing cock shut.",
            "regulator_light": "The regulator at {outlet} by its own gauge, gas flowing: LIGHT may take more "
            "than HIGH.",
            "listen": "It may run back {at}: listen; pop, flutter or whistle, gas off.",
            "listen.light": "at LIGHT from {glows:time 1} on",
            "listen.low": "hot at LOW",
            "listen.high": "hot at HIGH",
            "listen.low_high": "hot at LOW and HIGH",
            "and": " and ",
            "way.gas_alone": "by gas alone, the damper stays",
            "stop": "Stop: snap the gas shut at {cocks}, then {behind}. {blower} on {run_on} min more, until "
            "all is cold.",
            "cock_alone": "the firing cock",
            "cocks": "every firing cock",
            "source.line": "the line",
            "source.cylinder": "the cylinder",
            "source.cylinders": "every cylinder",
            "source.tank": "the tank",
            "behind.line": "the isolating cock",
            "behind.cylinder": "the cylinder",
            "behind.cylinders": "every cylinder",
            "behind.tank": "the tank",
            "behind.line.guard": "the pilot's cock and the isolating cock",
            "behind.cylinder.guard": "the pilot's cock, isolating cock and cylinder",
            "behind.cylinders.guard": "the pilot's cock, isolating cock and every cylinder",
            "behind.tank.guard": "the pilot's cock, isolating cock and tank",
            "fails": "Pop, roar or whistle in the box, air or power fails, alarm sounds: gas off at once. Power "
            "fails: blower off at its switch, on again only for 2, face black. Alarm: {keeper_name} off too, all out.",
            "smell": "Smell of gas: no flame, no switch. Gas off at {source}. Leave, and call from outside.",
            "check": "Each lighting: the guard, firing cock shut, as the lighting card has it: with {others} alone the "
            "valve must not stay open. Each month: soap on every joint, {switches}, valve, alarm. Each year: hose, "
            "check valve, block.",
            "switches": "air switch",
            "switches.line": "air and low-gas switch",
            "others.hand": "the torch",
            "others.stand": "the torch",
            "others.guard": "the pilot",
            "others.hand.several": "torch and other burners",
            "others.stand.several": "torch and other burners",
            "others.guard.several": "pilot and other burners",
        },
        room="make",
    ),
)
