"""The longer words of the page: dangers where they stand, the walk through the job, what the tool does not know."""

DANGERS = {
    "heat": (
        "Burning gas takes the air you breathe and makes carbon monoxide, most of it when the mixture is rich. Work "
        "with doors open and a loud CO alarm with a display at head height; leave at once when it sounds.",
        "Molten metal throws itself out of anything damp: moulds, tools and charge are heated dry first. Brass gives "
        "off zinc fume: outdoors or under a hood. "
        "Ceramic fibre in the lining: P100 or P3 mask, cut it wet, coat what faces the fire.",
    ),
    "face": (
        "A flame that roars or whistles inside the box has run back into it: shut the gas at once, leave the blower "
        "on, and let the box cool before you light it again.",
    ),
    "feed": (
        "Leak-test every joint with soap water before fire. The blower must run before gas flows and after it "
        "stops. Required: an air switch; a flame guard; a valve that shuts the gas if air or power fails, opened "
        "by hand only; a check valve before the jet. Blower on an earthed socket behind an RCD (GFCI).",
        "Propane sinks and lies in pits and cellars; natural gas rises under roofs. Cylinders stand upright, outside "
        "or as your local code says, and are never heated. Black pipe only, no galvanised. A licensed gas fitter "
        "decides.",
    ),
    "make": (
        "Never weld or fire galvanised steel: its fume makes you ill. Mixing, drilling and rasping castable raises "
        "silica dust: work wet, wear a P100 or P3 mask, vacuum it, never blow it out. Wet castable is alkaline: gloves "
        "and eye protection.",
    ),
    "fire": (
        "Damp refractory heated fast bursts with steam. Dry it as the days below say, stand aside, and stop when it "
        "hisses or steams hard. No oven that cooks food.",
    ),
}

WALK = (
    (
        "Start",
        "Tap a job, or let Find one choose from what you have. Make it good mends a design that has faults.",
    ),
    (
        "1. Heat",
        "Say what must be heated: the chamber, its lining, the work. The page works out how much fire that takes, and "
        "from which fuel and mixture.",
    ),
    (
        "2. Face",
        "Set the steel box, the lip that grips the refractory, and the ports. The drawing is to scale. The "
        "line at the head of each chapter says what is wrong; tap it for what to change.",
    ),
    (
        "3. Air and gas",
        "Name your blower, gas pressure and cylinder. You learn whether they carry the fire, which drill makes the "
        "jet, and where the flame stays on the ports from low to high.",
    ),
    (
        "4. Make",
        "Cut list, mould, pins, refractory, cost. Under Paper are templates true to size: print at 100 % and measure "
        "the bar.",
    ),
    (
        "5. Fire",
        "The days of curing and drying, and the first fire. Do not hurry these. Print the lighting card and hang it by "
        "the forge.",
    ),
    (
        "Keep it",
        "Share gives a link and a code that open this very design. Designs keeps it on this phone. All of it works "
        "without a network once the page has been opened.",
    ),
)

UNKNOWNS = (
    "It knows published formulas, tables and the habits of the trade, and says for each number which of these it is. "
    "It has never seen your forge. A number marked common practice has no published source; one marked memory was "
    "typed from memory of its source.",
    "It does not know how straight your pins are, how well the castable was vibrated, or what your blower "
    "really gives. Nor how your gas varies, how damp the day is, or how ports, walls and work shape the flame. "
    "Bands say how far the known part may be off.",
    "Flashback, lift and distribution are estimates for choosing sizes and for knowing which way to turn a valve; the "
    "first fire, done carefully, is the test. Rules for gas trains, ventilation and cylinders differ by place: ask a "
    "licensed fitter and your local code.",
    "Nothing you type leaves this device. There is no account, no counting and no network after the first visit.",
)

TRUST = {
    "calculated": "calculated; exact to what went in.",
    "published": "published; read in its source.",
    "memory": "from memory of the source; check before relying on it.",
    "common practice": "common practice; a habit of the trade without a published source.",
}

# Headings between settings: key of the first setting under each.
SUBHEADS = {
    "chamber_shape": "Chamber",
    "opening_area": "Opening",
    "work_metal": "Work and time",
    "fuel": "Fuel and fire",
    "ambient_temperature": "Place",
    "body_kind": "Steel box",
    "setback": "Window",
    "port_diameter": "Ports",
    "block_thickness": "Block and inlet",
    "blower_shutoff_pressure": "Blower",
    "mix_pipe": "Mix pipe",
    "inlet_position": "Inlet and baffle",
    "gas_pressure": "Gas jet",
    "line_pressure": "House line",
    "cylinder": "Cylinder",
    "caps": "Steel",
    "mould_clearance": "Mould and pins",
    "refractory": "Refractory",
    "print_scale_x": "Printer",
    "batch_size": "Hands and days",
    "moulds": "Moulds, oven and stands",
    "overhead": "Selling",
    "money_sign": "Money, all in your own, and hours",
}
