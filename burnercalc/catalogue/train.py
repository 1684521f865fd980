"""The words of the gas and air train: what each part is called, its size, and what it is there for."""

DAMPER = "{pipe:pipe}, metal; its slide made as drawn, or new: sheet, {width:length} x {length:length}THICK"
# {part: (name, size or rating for this design, what it does)}
PARTS = {
    "connector": (
        "cylinder connector",
        "the cylinder's own thread; {rate:power} in all",
        "Joins the cylinder, which stands upright and outdoors, away from fire. A quick-closing one may choke "
        "above [100 kBtu/h|30 kW]: then the screwed one.",
    ),
    "manifold": (
        "gas manifold, this burner's piece",
        "cylinders: {cylinders}, burners: {burners}; a check valve for each cylinder",
        "Lets cylinders be drawn from together, and burners share them. Each burner has its own regulator after it.",
    ),
    "regulator": (
        "adjustable regulator",
        "{outlet:gas_pressure} out, at least {capacity:power}, from {inlet:gas_pressure} up",
        "Holds the gas pressure. Its vent ends outdoors.",
    ),
    "house_pipe": (
        "pipe from the meter, by a fitter",
        "for {flow:gas_flow 3}: {runs}, an elbow as [2 ft|0.6 m]; takes up to {drop:gas_pressure}",
        "Laid by a licensed gas fitter, and at his price: no part of the sum. All that burns in the house counts.",
    ),
    "line_regulator": (
        "line regulator",
        "{outlet:gas_pressure} out, at least {capacity:power}; the burner's own",
        "Holds the gas pressure steady while others draw. Put in by the gas fitter: the house's is never turned, or "
        "the other appliances starve. Its vent ends outdoors.",
    ),
    "gauge": (
        "gauge after the regulator",
        "0 to {scale:gas_pressure}",
        "The regulator is set by it. One that creeps shows: with the cock shut the needle climbs.",
    ),
    "jet_gauge": (
        "gauge at the jet",
        "0 to {scale:gas_pressure}, reads {low:gas_pressure} at low fire, {high:gas_pressure} at high fire",
        "Behind the needle valve, so it shows what is before the jet: the one for each step from low to high fire.",
    ),
    "low_gauge": (
        "small gauge at the jet",
        "0 to {scale:gas_pressure}, reads {low:gas_pressure} at low fire",
        "The one to set low fire and lighting by.",
    ),
    "gauge_cock": (
        "cock of the small gauge",
        "{pipe:pipe}",
        "Open to light and as far as its scale goes, shut before: run past it a gauge is ruined, a "
        "tube spills and leaks gas.",
    ),
    "hose": (
        "gas hose",
        "bore {bore:sold_length}, up to {length:long_length 2}; takes {drop:gas_pressure} at high fire",
        "Marked for LP gas, as short as it goes, away from heat, not through a wall.",
    ),
    "hose_adapter": (
        "adapter of the hose",
        "{pipe:pipe}",
        "From the hose's left-hand nut to pipe thread, at each end.",
    ),
    "line_connector": (
        "listed connector",
        "bore {bore:sold_length}, up to {length:long_length 2}; takes {drop:gas_pressure} at high fire",
        "Joins the burner to the fixed pipe.",
    ),
    "rigid_pipe": (
        "rigid pipe to the burner",
        "bore {bore:sold_length}; takes {drop:gas_pressure} at high fire. Listed connectors end at [14 in H₂O|35 mbar]",
        "Joins the burner to the fixed pipe.",
    ),
    "isolating_cock": (
        "isolating cock",
        "{pipe:pipe} quarter-turn, for {rated:gas_pressure} or more",
        "Shuts off all gas of this burner. Open to try the guard, shut last.",
    ),
    "cock": (
        "firing cock",
        "{pipe:pipe} quarter-turn, for {rated:gas_pressure} or more",
        "By hand, in reach of the smith and not past the flame. It is shut first.",
    ),
    "filter": ("drip leg and strainer", "{pipe:pipe}, [[3 in|75 mm]] leg", "Keeps dirt and oil from valve and jet."),
    "trap": ("union and sediment trap", "{pipe:pipe}", "Keeps scale of the line from valve and jet."),
    "low_gas_switch": (
        "low-gas switch",
        "opens under {outlet:gas_pressure}, on the line side of the needle",
        "Shuts the gas when the line is weak, while a hot fire still burns. A cold one goes out sooner: the hand "
        "shuts it.",
    ),
    "solenoid": (
        "spring-shut valve",
        "{pipe:pipe}, for {rated:gas_pressure} or more, shut without current",
        "Shuts the gas when power, air or flame fails; its relay opens it again by hand only.",
    ),
    "reset": (
        "lock-out relay with reset button",
        "for the valve's current; timer of {trial:.0f} s; fuse, main switch, case, cable",
        "Switches and guard in one row before its coil, which holds itself in: what opens drops it, and the valve "
        "stays shut till a hand presses the button. The button bridges the guard alone, for its timer's "
        "seconds, however long it is held. Wired by an electrician.",
    ),
    "flame_guard": (
        "flame guard",
        "electronic, by a rod or by light (UV); acts on the spring-shut valve",
        "Shuts the gas within 1 s of the main flame's going out, valve and all: one of 4 s or a thermocouple is too "
        "slow. It must see neither torch nor neighbour: the lighting card has it tried. It watches as long as "
        "gas flows, and so does a person.",
    ),
    "pilot_cock": (
        "cock of the pilot",
        "{pipe:pipe}, on a tee before the main valve",
        "By hand: shut after the firing cock. The pilot's gas does not pass the main valve.",
    ),
    "pilot_regulator": (
        "low-pressure regulator",
        "{pipe:pipe}, {inlet:gas_pressure} in; [11 in H₂O|37 mbar] out, or as the pilot is marked",
        "Holds the gas pressure. Its vent ends outdoors.",
    ),
    "pilot_valve": (
        "spring-shut valve of the pilot",
        "{pipe:pipe}, for {rated:gas_pressure} or more, shut without current",
        "Shuts the gas when power, air or flame fails; its relay opens it again by hand only.",
    ),
    "pilot": (
        "pilot burner",
        "{pipe:pipe} tube, for this gas",
        "Burns at the face to the last. Only its tube's end is in the fire: jet and air holes stay outside, beside the "
        "door, for burnt gas in them puts it out.",
    ),
    "needle": (
        "needle valve",
        "{pipe:pipe}",
        "Sets low fire and lighting, which are less than a regulator holds steady.",
    ),
    "check_valve": (
        "check valve, gas",
        "{pipe:pipe}, soft seat, {gas:gas_pressure} of gas against {air:pressure} of air",
        "No air back into the gas, however the pressures stand.",
    ),
    "jet_holder": (
        "jet holder and jet",
        "{pipe:pipe} thread, drill {drill}",
        "In the end of the mixing tee, aimed down the mix pipe; the jet ends past the branch that the air comes by.",
    ),
    "bushing": ("hex bushing", "{path}", "Holds the jet holder in the end of the mixing tee."),
    "jet_reducer": (
        "bell reducer of the jet",
        "{path}, malleable, concentric",
        "From jet holder to mixing tee, one size a step. The jet is lengthened through it: it still ends past the "
        "branch that the air comes by.",
    ),
    "mixer": (
        "mixing tee",
        "{pipe:pipe}, malleable; gas in at one end, air by the branch, mix pipe at the other end",
        "Gas and air meet in it. Nothing but pipe stands between it and the burner.",
    ),
    "mix_tap": (
        "pressure tap of the mix pipe",
        "{pipe:pipe}, in the last third of the mix pipe",
        "Weld it on and drill through before the pipes are joined, no burr inside. For the manometer that "
        "shows the mixture's pressure; cap it.",
    ),
    "filter_guard": (
        "guard and filter",
        "on the blower's mouth",
        "Keeps fingers out of the fan, and dust out of the ports.",
    ),
    "flexible_joint": (
        "flexible joint",
        "{pipe:pipe}; left out, a coupling in its place: {instead:price}",
        "In the air only, before the jet: takes up the blower's shake.",
    ),
    "blower_plate": (
        "plate on the blower's outlet",
        "{pipe:pipe} nipple in it, holes as the blower's",
        "From the blower's flange to pipe.",
    ),
    "gauge_tee": (
        "tee of a gauge, switch or pilot",
        "{pipe:pipe}, branch [[1/4 in|DN 8]]",
        "Lets it stand beside the line.",
    ),
    "gas_nipples": (
        "close nipple, gas",
        "{pipe:pipe}, black steel, [[NPT|R]] thread",
        "One between any two parts whose threads are both inside.",
    ),
    "pipe_nipples": (
        "close nipple, air and mixture",
        "{pipe:pipe}, black steel, [[NPT|R]] thread",
        "One between any two parts whose threads are both inside.",
    ),
    "header": (
        "air header, this burner's piece",
        "bore {bore:sold_length} or more, feeds {burners} burners",
        "Gives each burner the same air: as wide as all its branches together. Each has its own damper after it.",
    ),
    "damper": (
        "damper gate",
        DAMPER.replace("THICK", ""),
        "The damper: its guide is bought, its slide made: an hour or two of sawing and filing that the days "
        "leave out. In the air only. No valve stands between mixture and burner.",
    ),
    "air_switch": (
        "air switch",
        "opens under {pressure:pressure 2}",
        "Shuts the spring-shut valve when the air fails. Prove that it is open while the blower stands.",
    ),
    "air_flap": (
        "check flap, air",
        "{pipe:pipe}, opens under [0.1 in H₂O|0.25 mbar]",
        "Keeps mixture out of the blower. Clean it every year; it stops no flame.",
    ),
    "tap": (
        "pressure tap of the air",
        "{pipe:pipe}, on the nipple before the damper",
        "Weld it on and drill through before the pipes are joined, no burr inside. Shows what the blower "
        "gives, its outlet shut or not; cap it.",
    ),
    "tap_nipple": (
        "nipple of the air tap",
        "{pipe:pipe}, [[4 in|100 mm]] long, black steel, [[NPT|R]] thread",
        "Between flexible joint and damper; the tap is welded to its middle.",
    ),
    "barbs": (
        "hose barb and tube",
        "[[1/4 in|6 mm]] bore, [[3 ft|1 m]] each, one with a tee",
        "One in each tap: the tee lets switch and gauge hang on one tube. Soft tube, away from heat.",
    ),
    "mix_pipe": (
        "mix pipe",
        "{pipe:pipe}, {length:length} from {sold:sold_long}, schedule 40",
        "Gas and air mix in it; black steel, no zinc near the fire.",
    ),
    "elbow": ("elbow", "{pipe:pipe}, 90°, malleable", "Turns to the burner, and mixes."),
    "union": (
        "union",
        "{pipe:pipe}, ground joint",
        "Lets the burner off without turning the train. Left out: build from the burner outwards, blower last.",
    ),
    "reducer": (
        "bell reducer",
        "{path}, malleable, concentric",
        "From mix pipe to inlet, one size a step.",
    ),
    "tee": (
        "tee",
        "{pipe:pipe}, fed through its branch, malleable",
        "Splits the mixture to both inlets, after mixer and elbows, so that both get the same mixture.",
    ),
    "leg": (
        "leg",
        "{pipe:pipe}, {length:length} from the middle of the tee to the middle of the elbow: no nipple goes between",
        "Both as long as each other, with the same fittings: only legs alike share alike.",
    ),
    "leg_union": ("union of a leg", "{pipe:pipe}, ground joint", "Lets two fixed inlets be screwed together."),
    "leg_elbow": ("elbow of a leg", "{pipe:pipe}, 90°, malleable", "From leg down into the inlet."),
}
# An air switch where the mix pipe's pressure at low fire is less than a switch senses.
WEAK_SWITCH = (
    "opens under {pressure:pressure 2} before the damper; {weak:pressure 2} in the mix pipe is less than switches sense"
)
LEG = (
    "{pipe:pipe}, {length:length} from the middle of the tee to the middle of the elbow, {over:length} over the back; "
    "its last nipple {nipple:length}, close ones between the other fittings, schedule 40"
)
LP_PIPE, BY_FITTER = "pipe from the line's regulator, by a fitter", "for {flow:gas_flow 3}; sized by the gas fitter"
TRAIN_WORDS = {
    **{f"{key}.{what}": text for key, texts in PARTS.items() for what, text in zip(("name", "size", "why"), texts)},
    "air_switch.size.weak": WEAK_SWITCH,
    "mix_pipe.size.joined": "{pipe:pipe}, {length:length} from {pieces} of {sold:sold_long} joined by couplings, "
    "schedule 40",
    "leg.size.nipple": LEG,
    "leg.size.threaded": LEG.replace("{nipple:length}", "{threaded:length}, threaded to that length"),
    "leg_union.size.upright": "{pipe:pipe}, ground joint, upright on the inlet pipe: the leg is too short for it",
    "house_pipe.name.lp": LP_PIPE,
    "house_pipe.name.lp_fitter": LP_PIPE,
    "house_pipe.size.lp": PARTS["house_pipe"][1],
    "house_pipe.size.lp_fitter": BY_FITTER,
    "house_pipe.size.fitter": BY_FITTER,
    "run": "{pipe:pipe} to {most:long_length 2}",
    "damper.size.hole": DAMPER.replace("THICK", ", at most {thick:drill_length} thick"),
    "connector.size.pigtail": "with a flexible pigtail of [[20 in|0.5 m]] for cylinder pressure; the cylinder's own "
    "thread; {rate:power} in all",
    "flexible_joint.size.shared": "bore {bore:sold_length} or more, one for all burners",
    # What is tried with it shut, and what a guard that sees a pilot does: tests/test_train_steps.py has it as a table.
    "cock.size.behind": PARTS["cock"][1],
    "cock.why.behind": "By hand, in reach of the smith and not past the flame. Shut first, and to try the guard.",
    "pilot_regulator.size.metered": PARTS["pilot_regulator"][1].replace("[11 in H₂O|37 mbar]", "[7 in H₂O|20 mbar]"),
    "reset.name.two": "lock-out relay, RESET and PILOT",
    "reset.size.two": "for the valves' current; timers of {trial:.0f} s and {pilot:.0f} s (PILOT); "
    "fuse, main switch, case, cable",
    "reset.why.two": "Switches and main sensor in one row before its coil, which holds itself in: what opens drops it "
    "till RESET. RESET bridges the main sensor, for its timer's seconds, and only while the other sees the "
    "pilot. The pilot's valve has such a row with that sensor, which PILOT bridges for 10 s at most. Wired by an "
    "electrician.",
    "flame_guard.why.two": "Shuts the gas within 1 s of a flame's going out, valve and all: one of 4 s or a "
    "thermocouple is too slow. One sensor sees the pilot and holds its valve. The other, at the port farthest off, "
    "holds the main valve: it may see neither pilot nor neighbour. They watch as long as gas flows.",
    "flame_guard.size.two": "electronic, with two sensors, each a rod or by light (UV): one for the pilot, one for the "
    "main flame; acts on the spring-shut valve",
    "jet_gauge.size.no_low": "0 to {scale:gas_pressure}, reads {high:gas_pressure} at high fire",
    "gauge.size.tube": "sloping, 0 to {scale:gas_pressure}",
    "low_gauge.size.light": "0 to {scale:gas_pressure}, reads {light:gas_pressure} to light, {low:gas_pressure} at "
    "low fire",
    "low_gauge.size.alone": "0 to {scale:gas_pressure}, reads {alone:gas_pressure} to light",
    "low_gauge.size.tube": "sloping, 0 to {scale:gas_pressure}, reads {low:gas_pressure} at low fire",
    "low_gauge.size.tube_light": "sloping, 0 to {scale:gas_pressure}, reads {light:gas_pressure} to light, "
    "{low:gas_pressure} at low fire",
    "low_gauge.size.tube_alone": "sloping, 0 to {scale:gas_pressure}, reads {alone:gas_pressure} to light",
    "ends.male": "male [[{size} in NPT|R\u00a0{size}]]",
    "ends.female": "female [[{size} in NPT|Rp\u00a0{size}]]",
    "ends.left": "left-hand nut",
    "ends.alike": "{first}, both ends",
    "ends.two": "in: {first}; out: {last}",
    "ends.of.connector": "in: as the cylinder's valve, left-hand on propane [[(CGA 510)|(W 21.8 x 1/14 in "
    "much of Europe)]]; out: {last}",
    "ends.of.hose": "[[{first} both ends, one of them on a swivel|left-hand nuts G 3/8, grooved, both ends]]",
    "ends.of.hose_adapter": "male G 3/8 left-hand, {first}",
    "ends.of.gauge": "[[{first}|male G 1/4 B, flat seal]], below",
    "ends.of.jet_gauge": "[[{first}|male G 1/4 B, flat seal]], below",
    "ends.of.low_gauge": "[[{first}|male G 1/4 B, flat seal]], below",
    "ends.of.gauge_tee": "{first}, both ends; branch female [[1/4 in NPT|Rp\u00a01/4]]",
    "ends.of.blower_plate": "the blower's holes; nipple out",
    "ends.of.flexible_joint": "slips over nipples, a clamp at each end",
    "ends.of.mixer": "{first}, all three",
    "ends.of.tee": "{first}, all three",
    "ends.of.tap": "female [[1/8 in NPT|Rp\u00a01/8]], half coupling on that nipple",
    "ends.of.mix_tap": "female [[1/8 in NPT|Rp\u00a01/8]], half coupling on the pipe",
    "ends.of.air_switch": "tube from the tap",
    "ends.of.barbs": "male [[1/8 in NPT|R\u00a01/8]]; barb",
    "ends.of.low_gauge.tube": "tube on its barb, male [[1/4 in NPT|R\u00a01/4]]",
    "ends.of.pilot": "tube with compression nuts",
    "ends.of.pilot_valve": "in: {first}; out: tube with a compression nut",
    "ends.of.header": "{last} for each burner",
    "to": " to ",
    "gas": "gas",
    "air": "air",
    "mixture": "mixture",
    "safety": "safety",
    "needed": "to run it",
    "comfort": "comfort",
    "blower": "blower",
    "burner": "burner",
    "cylinder": "cylinder",
    "line": "line",
    "pieces": "{count} x {name}",
}
