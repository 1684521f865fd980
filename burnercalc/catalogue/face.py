"""The words of the room Face: its answers, checks, tables, charts and drawings."""

from ..sources import CONTINUITY, FLASHBACK, LIFT, PRACTICE, Source
from .forms import Answer, Axis, Chart, Check, Column, Series, Table
from .inputs import HOT_HIGH, HOT_LOW

GEOMETRY = Source("geometry of the face", "calculated")
PIPES = Source("ASME B36.10M, schedule 40", "published")
VISCOSITY = Source("viscosity of the mixture: Wilke (1950) on pure-gas fits", "published")
BURNING = Source(
    "shapes of Guelder 1984 and Lieuwen 2003, scaled to later measurements of the peak, from memory", "memory"
)
GRADIENT = Source("Shah and London 1978, Blasius; blend between is common practice", "common practice")
HOT_LIP = Source(
    "a hot lip quenches no flame: Dugger 1955 (direction); 2 to 4 times the gradient is common practice",
    "common practice",
)
FIN = Source(
    "fin equations (published) with a conductivity from memory; emissivity and films are common practice",
    "common practice",
)
RIM = Source("shape of the rim, to a factor of two, is common practice", "common practice")
SOAKING = Source("finite volumes; chamber as one lump, films are common practice", "common practice")
IGNITION = Source("NFPA 497 and IEC 60079-20-1, the lower; 80 % of it as EN 1127-1 has it, from memory", "memory")
STEEL_HEAT = Source(
    "EN 1993-1-2: carbon steel keeps its strength to 400 degC; other limits common practice", "common practice"
)
QUENCHING = Source("Williams, Combustion Theory, 8.1; tube over plates from memory", "memory")
CROSS_LIGHTING = Source("domestic burner-design texts (from memory, weak)", "memory")
FLAMMABILITY = Source("NFPA 497 limits, Le Chatelier's rule; with inert gas NFPA 69 limits of oxygen", "memory")

# What goes into the soaking of the hot block.
HOT_LEFT = (*HOT_LOW, "reached_low_empty")
SOAK = (*HOT_LOW, "stored_heat", "wall_loss", "opening_loss")

OF_BLEND = ("cylinder_left", "gas_from")  # first and last gas that is drawn
BURNS = (
    "The mixture burns from {lean:.2f} (lean) to {rich:.2f} (rich); set is {phi:.2f}, and a hand slips by {slip:.2f}"
)

ANSWERS = (
    Answer(
        "window_length",
        "face.window_length_m",
        "length",
        "Window length",
        meaning="Length of the opening cut in the face.",
        formula="body length - 2 x lip",
        inputs=("body_length", "setback"),
        source=GEOMETRY,
        near="bench",
    ),
    Answer(
        "window_width",
        "face.window_width_m",
        "length",
        "Window width",
        meaning="Width of the opening cut in the face.",
        formula="face width - 2 x lip",
        inputs=("body_width", "setback"),
        source=GEOMETRY,
        near="bench",
    ),
    Answer(
        "window_area",
        "face.window_area_m2",
        "area",
        "Window area",
        meaning="Area of the opening, its rounded corners taken off.",
        formula="length x width - (4 - pi) x corner radius squared; a round window is all corner",
        inputs=("window_length", "window_width", "corner_radius", "body_kind"),
        source=GEOMETRY,
    ),
    Answer(
        "port_count",
        "face.port_count",
        "count",
        "Ports",
        meaning="How many ports the face has.",
        formula="sum of the rows",
        inputs=("rows", "ports_per_row", "pattern", "body_kind"),
        source=GEOMETRY,
        near="first",
    ),
    Answer(
        "port_area",
        "face.port_area_m2",
        "area",
        "Port area",
        meaning="Open area of all ports together.",
        formula="ports x pi x diameter squared / 4",
        inputs=("port_count", "port_diameter"),
        source=GEOMETRY,
        near="first",
    ),
    Answer(
        "open_fraction",
        "face.open_fraction",
        "fraction",
        "Open share of the window",
        meaning="Port area over window area.",
        formula="port area / window area",
        inputs=("port_area", "window_area"),
        source=GEOMETRY,
    ),
    Answer(
        "row_pitch",
        "face.row_pitch_m",
        "length",
        "Row pitch",
        meaning="Distance between the centre lines of neighbouring rows, or from ring to ring.",
        formula="(window width - 2 x edge margin - port diameter) / (rows - 1); hexagonal: sqrt(3)/2 of the port "
        "pitch; rings: radius of the outer ring / rings",
        inputs=("window_width", "edge_margin", "port_diameter", "rows", "pattern", "port_pitch"),
        source=GEOMETRY,
        near="bench",
    ),
    Answer(
        "port_pitch",
        "face.port_pitch_m",
        "length",
        "Port pitch",
        meaning="Distance between the centres of neighbours in a row, or in the outer ring.",
        formula="(window length - 2 x edge margin - port diameter) / (ports in a long row - 1); hexagonal: the most "
        "that both sides allow; rings: chord of the outer ring",
        inputs=("window_length", "window_width", "edge_margin", "port_diameter", "ports_per_row", "rows", "pattern"),
        source=GEOMETRY,
        near="bench",
    ),
    Answer(
        "min_web",
        "face.min_web_m",
        "length",
        "Least between ports",
        meaning="Least refractory between the edges of two ports.",
        formula="least centre distance - port diameter",
        inputs=("row_pitch", "port_pitch", "port_diameter", "port_count", "pattern"),
        source=GEOMETRY,
        near="bench",
    ),
    Answer(
        "min_edge",
        "face.min_edge_m",
        "length",
        "Least edge",
        meaning="Least distance from a port's edge to the edge of the window, corners included.",
        formula="distance from the centre to the rounded outline - half a port diameter",
        inputs=(
            "window_length",
            "window_width",
            "corner_radius",
            "body_kind",
            "edge_margin",
            "port_diameter",
            "row_pitch",
            "port_pitch",
            "port_count",
        ),
        source=GEOMETRY,
        near="bench",
    ),
    Answer(
        "plenum_area",
        "plenum.area_m2",
        "area",
        "Plenum area",
        meaning="Clear cross-section that the mixture flows through along the box, behind the refractory.",
        formula="(face width - 2 x wall) x (body depth - wall - grip); a round body: width of the square of the same "
        "area",
        inputs=("body_width", "body_depth", "wall", "cap_thickness", "grip", "body_kind"),
        source=GEOMETRY,
    ),
    Answer(
        "plenum_to_port_ratio",
        "plenum.to_port_ratio",
        "times",
        "Room behind the ports, times their area",
        meaning="The box behind the ports (the plenum), cut across, is so many times as large as all ports together. "
        "The larger, the more evenly the ports are fed.",
        formula="plenum area / port area",
        inputs=("plenum_area", "port_area"),
        source=GEOMETRY,
        near="first",
        aim=("plenum_ratio", "{limit:.1f} or more is even"),
    ),
    Answer(
        "inlet_area",
        "plenum.inlet_area_m2",
        "area",
        "Inlet area",
        meaning="Bore area of the inlet pipe, of two inlets together.",
        formula="pi x bore squared / 4",
        inputs=("inlet", "inlets"),
        source=PIPES,
    ),
    Answer(
        "inlet_to_port_ratio",
        "plenum.inlet_to_port_ratio",
        "times",
        "Inlet bore, times the port area",
        meaning="Inlet bore area over port area; a small inlet jets at the ports in front of it.",
        formula="inlet area / port area",
        inputs=("inlet_area", "port_area"),
        source=GEOMETRY,
    ),
    Answer(
        "mixture_velocity_in_port",
        "stream.velocity_m_s",
        "speed",
        "Velocity in the ports",
        meaning="How fast the cold mixture goes through the ports at high fire, on average.",
        formula="mixture flow at shop temperature and altitude / port area",
        inputs=("mixture_flow", "port_area", "ambient_temperature", "altitude"),
        source=CONTINUITY,
        near="first",
        aim=("port_velocity", "up to {limit:speed 2} is usual"),
    ),
    Answer(
        "port_reynolds",
        "stream.reynolds",
        "ratio",
        "Flow in the ports, smooth up to 2300",
        meaning="Reynolds number in a port: up to about 2300 the flow is smooth, above it churns.",
        formula="velocity x diameter / kinematic viscosity of the mixture",
        inputs=(
            "mixture_velocity_in_port",
            "port_diameter",
            "fuel",
            "fuel_blend",
            "equivalence_ratio",
            "ambient_temperature",
            "altitude",
        ),
        source=VISCOSITY,
    ),
    Answer(
        "port_loading",
        "stream.loading_W_m2",
        "power_per_area",
        "Port loading",
        meaning="Gross heat that passes each area of port.",
        formula="firing rate / port area",
        inputs=("firing_rate_gross", "port_area"),
        source=GEOMETRY,
    ),
    Answer(
        "burning_velocity",
        "mixture.burning_velocity_m_s",
        "speed",
        "Burning velocity",
        meaning="How fast a smooth flame eats into the cold mixture.",
        formula="shape over the mixture x temperature and pressure powers",
        inputs=("fuel", "fuel_blend", "equivalence_ratio", "ambient_temperature", "altitude"),
        source=BURNING,
    ),
    Answer(
        "port_wall_gradient",
        "holding.port_gradient_1_s",
        "rate",
        "Wall gradient in the ports",
        meaning="How steeply the speed rises from the wall of a cold port, at its end, at high fire.",
        formula="friction of the young laminar or turbulent stream x velocity squared / (2 x kinematic viscosity)",
        inputs=("mixture_velocity_in_port", "port_diameter", "block_thickness", "port_reynolds"),
        source=GRADIENT,
    ),
    Answer(
        "flashback_gradient",
        "holding.flashback_gradient_1_s",
        "rate",
        "Wall gradient at flashback",
        meaning="Wall gradient of a smooth cold stream below which the flame slips back along the wall.",
        formula="0.063 x burning velocity squared / thermal diffusivity",
        inputs=("burning_velocity",),
        source=FLASHBACK,
    ),
    Answer(
        "lift_gradient",
        "holding.lift_gradient_1_s",
        "rate",
        "Wall gradient at lift",
        meaning="Wall gradient above which the flame of one cold port in open air is washed off its rim.",
        formula="0.23 x burning velocity squared / thermal diffusivity x (mixture to the power 6.4)",
        inputs=("burning_velocity", "equivalence_ratio"),
        source=LIFT,
    ),
    Answer(
        "block_face",
        "hot_block.face_low_K",
        "rough_temperature",
        "Block's face, low fire",
        meaning="Temperature of the hot block's face with the lips of its ports, at low fire; they may glow.",
        formula="fin of refractory between the glow on its face and the mixture that cools its ports",
        inputs=HOT_LOW,
        source=FIN,
    ),
    Answer(
        "port_wall_high",
        "hot_block.wall_high_K",
        "rough_temperature",
        "Port wall, high fire",
        meaning="Mean temperature of a port's wall in the hot block, at high fire.",
        formula="fin of refractory between the glow on its face and the mixture that cools its ports",
        inputs=HOT_HIGH,
        source=FIN,
    ),
    Answer(
        "port_wall_low",
        "hot_block.wall_low_K",
        "rough_temperature",
        "Port wall, low fire",
        meaning="Mean temperature of a port's wall in the hot block, at low fire.",
        formula="fin of refractory between the glow on its face and the mixture that cools its ports",
        inputs=HOT_LOW,
        source=FIN,
        near="bench",
    ),
    Answer(
        "port_exit_high",
        "hot_block.exit_high_K",
        "rough_temperature",
        "Mixture leaving the ports, high fire",
        meaning="Temperature of the mixture where it leaves the ports of the hot block, at high fire.",
        formula="mixture in the box + what the wall of the port gives it",
        inputs=HOT_HIGH,
        source=FIN,
    ),
    Answer(
        "port_exit_low",
        "hot_block.exit_low_K",
        "rough_temperature",
        "Mixture leaving the ports, low fire",
        meaning="Temperature of the mixture where it leaves the ports of the hot block, at low fire: the "
        "hotter, the sooner it flashes back.",
        formula="mixture in the box + what the wall of the port gives it",
        inputs=HOT_LOW,
        source=FIN,
    ),
    Answer(
        "block_rim",
        "hot_block.rim_low_K",
        "rough_temperature",
        "Block at the steel's face, low fire",
        meaning="Temperature of the hot block level with the steel's face, at low fire; the steel that it grips"
        " is cooler.",
        formula="fin of refractory between the glow on its face and the mixture that cools its ports",
        inputs=HOT_LOW,
        source=FIN,
    ),
    Answer(
        "block_back",
        "hot_block.back_low_K",
        "rough_temperature",
        "Back of the block, low fire",
        meaning="Temperature of the hot block on its side towards the box, at low fire.",
        formula="fin of refractory between the glow on its face and the mixture that cools its ports",
        inputs=HOT_LOW,
        source=FIN,
    ),
    Answer(
        "lip_steel",
        "hot_block.lip_K",
        "rough_temperature",
        "Steel lip",
        meaning="Temperature of the steel that grips the block, hot all through, at low fire; the high end is "
        "with the chamber left empty.",
        formula="fin of steel, fed through rim and back of the block, cooled by mixture and shop",
        inputs=HOT_LEFT,
        source=FIN & RIM,
        near="bench",
    ),
    Answer(
        "box_steel",
        "hot_block.box_K",
        "rough_temperature",
        "Steel box",
        meaning="Mean temperature of the steel box behind the block, hot all through, at low fire; the high end"
        " is with the chamber left empty.",
        formula="fin of steel, fed through rim and back of the block, cooled by mixture and shop",
        inputs=HOT_LEFT,
        source=FIN & RIM,
        near="bench",
    ),
    Answer(
        "box_mixture",
        "hot_block.mixture_K",
        "rough_temperature",
        "Mixture in the box",
        meaning="Temperature of the mixture as it enters the ports of the hot block, at low fire; the high end "
        "is with the chamber left empty.",
        formula="shop + what box and back of the block give it",
        inputs=HOT_LEFT,
        source=FIN & RIM,
        near="bench",
    ),
    Answer(
        "wetted_limit",
        "hot_block.wetted_K",
        "rough_temperature",
        "Hottest that still mixture may touch",
        meaning="Temperature that parts touched by mixture at rest must stay below, or it may light by itself.",
        formula="80 % of the auto-ignition temperature in degC",
        inputs=("fuel", "fuel_blend"),
        source=IGNITION,
    ),
    Answer(
        "soak_back",
        "soaking.back_K",
        "rough_temperature",
        "Back of the block after shut-down",
        meaning="Hottest that it gets when the blower stops with the gas, after low fire.",
        formula="block, box and chamber cooling together, no air through the ports",
        inputs=SOAK,
        source=SOAKING,
    ),
    Answer(
        "soak_steel",
        "soaking.steel_K",
        "rough_temperature",
        "Steel box after shut-down",
        meaning="Hottest that it gets when the blower stops with the gas, after low fire.",
        formula="block, box and chamber cooling together, no air through the ports",
        inputs=SOAK,
        source=SOAKING,
    ),
    Answer(
        "soak_mixture",
        "soaking.mixture_K",
        "rough_temperature",
        "What stands in the box after shut-down",
        meaning="Hottest that air or mixture in it gets when the blower stops with the gas. Before, low fire heats the "
        "empty chamber as far as it goes.",
        formula="block, box and chamber cooling together, no air through the ports",
        inputs=SOAK,
        source=SOAKING,
    ),
    Answer(
        "blower_run_on",
        "soaking.run_on_s",
        "time",
        "Blower runs on",
        meaning="How long the blower should run on after the gas is shut, the damper as at low fire.",
        formula="5 minutes for [1 in|25 mm] of block, 5 to 15; longer where back or box would pass what still mixture "
        "may touch",
        inputs=("soak_back", "wetted_limit"),
        source=SOAKING,
        near="bench",
        digits=2,
    ),
    Answer(
        "flashback_firing_rate_cold",
        "holding.cold_W",
        "power",
        "Flashback rate, cold",
        meaning="Firing rate below which the flame can enter cold ports.",
        formula="firing rate x flashback velocity / velocity in the worst-fed port",
        inputs=(
            "burning_velocity",
            "port_diameter",
            "block_thickness",
            "mixture_velocity_in_port",
            "flow_spread",
            *OF_BLEND,
        ),
        source=FLASHBACK,
    ),
    Answer(
        "flashback_firing_rate_hot",
        "holding.hot_W",
        "power",
        "Flashback rate, hot",
        meaning="Firing rate below which the flame can enter ports in a hot block: there slow mixture arrives "
        "preheated, at a lip too hot to quench it. Keep above the upper end of its range, which is for a"
        " mixture 0.03 off and a chamber left empty at low fire.",
        formula="as cold, at the mixture's temperature at the exit, wall gradient at flashback x 2 to 4 for the hot "
        "lip",
        inputs=(
            "burning_velocity",
            "port_diameter",
            "block_thickness",
            "mixture_velocity_in_port",
            "flow_spread",
            "port_wall_temperature",
            "port_exit_low",
            "reached_low_empty",
            *OF_BLEND,
        ),
        source=FLASHBACK & HOT_LIP,
    ),
    Answer(
        "flashback_firing_rate",
        "holding.flashback_W",
        "power",
        "Flashback rate",
        meaning="Below this fire the flame most likely runs back into the ports, cold or hot, whichever comes first as "
        "you turn down. Below the upper end of its range it may: keep low fire above that.",
        at_most=True,
        formula="the larger of the cold and the hot rate",
        inputs=("flashback_firing_rate_cold", "flashback_firing_rate_hot"),
        source=FLASHBACK & HOT_LIP,
        near="first",
    ),
    Answer(
        "lift_firing_rate",
        "holding.lift_W",
        "power",
        "Lift rate, cold",
        meaning="Firing rate above which the flame of a cold port alone in open air lifts off; a hot chamber holds far "
        "more.",
        formula="firing rate x lift velocity / velocity in the best-fed port",
        inputs=("burning_velocity", "port_diameter", "block_thickness", "mixture_velocity_in_port", "flow_spread"),
        source=LIFT,
    ),
    Answer(
        "turndown",
        "holding.turndown",
        "times",
        "Turndown, high over low",
        meaning="How far the burner can be turned down for sure: high fire over the upper end of the flashback rate.",
        formula="firing rate / upper end of the flashback rate",
        inputs=("firing_rate_gross", "flashback_firing_rate"),
        source=FLASHBACK & HOT_LIP,
        near="bench",
    ),
    Answer(
        "quenching_diameter",
        "crossing.quenching_m",
        "length",
        "Quenching diameter",
        meaning="Diameter of a cold port that just stops a flame; larger or hot ports do not, only the speed of the "
        "mixture does.",
        formula="1.5 to 1.65 x 40 x thermal diffusivity / burning velocity",
        inputs=("burning_velocity",),
        source=QUENCHING,
    ),
    Answer(
        "cross_light_gap",
        "crossing.cross_light_m",
        "length",
        "Cross-lighting gap",
        meaning="Gap between the edges of ports over which one lights the next for sure.",
        formula="figure for the fuel; a pitch of 2.5 diameters serves too",
        inputs=("fuel", "fuel_blend"),
        source=CROSS_LIGHTING,
    ),
)

CHECKS = (
    Check(
        "ports_inside",
        "length",
        "Ports inside the window",
        harm="rework",
        unmade=True,
        source=GEOMETRY,
        cases={
            "good": "Every port lies inside the window, {edge:length} or more from its edge.",
            "stop": "Ports reach {past:length} past the window's edge, into the steel: raise the edge margin or take "
            "away ports.",
        },
        cures=(("edge_margin", "raise"), ("corner_radius", "lower")),
    ),
    Check(
        "web",
        "length",
        "Refractory between ports",
        harm="damage",
        unmade=True,
        source=PRACTICE,
        cases={
            "good": "{web:length} of refractory between ports; from {wanted:length} on it fills and holds.",
            "caution": "Only {web:length} of refractory between ports; {wanted:length} is usual (one port diameter, "
            "{least:length} at least). Use fewer ports, or tamp and vibrate with great care.",
            "stop": "{web:length} between ports is less than a grain of castable: it cannot be filled. Use fewer "
            "ports.",
            "overlap": "Ports overlap by {overlap:length}: use fewer ports.",
        },
        cures=(("ports_per_row", "lower"), ("rows", "lower"), ("port_diameter", "lower")),
    ),
    Check(
        "edge",
        "length",
        "Edge of the field",
        harm="rework",
        unmade=True,
        source=PRACTICE,
        cases={
            "good": "{edge:length} between the outer ports and the steel can be filled; {wanted:length} lets a "
            "coarse grain pass.",
            "caution": "Only {edge:length} between the outer ports and the steel; {wanted:length} lets a coarse grain "
            "pass.",
            "stop": "The outer ports cut the steel where the window's corners are round: less of a corner radius, or "
            "a larger edge margin.",
        },
    ),
    Check(
        "port_length",
        "ratio",
        "Port length to diameter",
        harm="rework",
        source=PRACTICE,
        cases={
            "good": "Ports are {slender:.1f} diameters long; {low:g} to {high:g} is usual.",
            "short": "Ports are {slender:.1f} diameters long; below {low:g} they neither straighten the flow nor keep "
            "the cold side cool: use a thicker block.",
            "long": "Ports are {slender:.1f} diameters long; above {high:g} pins bend and break, and clearing is "
            "slow: use a thinner block or larger ports.",
        },
    ),
    Check(
        "inlet_ratio",
        "ratio",
        "Inlet ratio",
        harm="rework",
        source=PRACTICE,
        cases={
            "good": "The inlet is {ratio:times} times the port area; {wanted:g} or more feeds the ports evenly.",
            "caution": "The inlet is {ratio:times} times the port area; {wanted:g} or more is wanted, so some ports "
            "get less than their share.",
            "stop": "The inlet is {ratio:times} times the port area; below {least:g} the ports are fed far too "
            "unevenly.",
        },
        cures=(("inlet", "raise"), ("ports_per_row", "lower")),
    ),
    Check(
        "flashback_cold",
        "ratio",
        "Flashback while cold",
        harm="danger",
        source=FLASHBACK,
        cases={
            "starved": "Some ports get no mixture: the flame can enter them at any firing rate. Make the way along the "
            "plenum wider.",
            "unknown": "For this mixture no flashback limit of cold ports is known. Choose another mixture.",
            "good": "The flame stays out of cold ports: low fire is {low:power}, {margin:times 3} times the "
            "{least:power} below which it may run back.",
            "good_near": "The flame stays out of cold ports: low fire is {low:power}, {above:percent 0} above the "
            "{least:power} below which it may run back.",
            "caution": "At low fire the flame may enter cold ports: low fire is {low:power}; most likely it runs back "
            "below {likely:power}, at worst below {least:power}. Keep low fire higher, or use smaller or fewer ports.",
            "stop": "At low fire the flame can enter cold ports: low fire is {low:power}; most likely it runs back "
            "below {likely:power}, at worst below {least:power}. Keep low fire higher, or use smaller or fewer ports.",
            "no_rate": "Even at high fire, {high:power}, the flame may enter cold ports: most likely it runs back "
            "below {likely:power}, at worst below {least:power}. Use smaller or fewer ports, or more fire.",
        },
        cures=(("low_fire", "raise"), ("port_diameter", "lower"), ("ports_per_row", "lower"), ("firing_rate", "raise")),
    ),
    Check(
        "flashback_hot",
        "ratio",
        "Flashback when hot",
        harm="danger",
        source=FLASHBACK & HOT_LIP,
        cases={
            "starved": "Some ports get no mixture: the flame can enter them at any firing rate. Make the way along the "
            "plenum wider.",
            "unknown": "For this mixture no flashback limit of hot ports is known. Choose another mixture.",
            "good": "The flame stays out of hot ports: low fire is {low:power}, {margin:times 3} times the "
            "{least:power} below which it may run back.",
            "good_near": "The flame stays out of hot ports: low fire is {low:power}, {above:percent 0} above the "
            "{least:power} below which it may run back. That is at the mixture set: nearer to 1.15 a flame runs back "
            "sooner.",
            "caution": "At low fire the flame may enter hot ports: low fire is {low:power}; most likely it runs back "
            "below {likely:power}, at worst below {least:power}. Keep low fire higher, or use smaller or fewer ports.",
            "stop": "At low fire the flame can enter hot ports: low fire is {low:power}; most likely it runs back "
            "below {likely:power}, at worst below {least:power}. Keep low fire higher, or use smaller or fewer ports.",
            "no_rate": "Even at high fire, {high:power}, the flame may enter hot ports: most likely it runs back "
            "below {likely:power}, at worst below {least:power}. Use smaller or fewer ports, or more fire.",
        },
        cures=(("low_fire", "raise"), ("port_diameter", "lower"), ("ports_per_row", "lower"), ("firing_rate", "raise")),
    ),
    Check(
        "port_wall_set",
        "temperature",
        "Port wall as set",
        harm="danger",
        source=FIN & RIM,
        cases={
            "good": "The port wall is set to {set:temperature}. By its block it gets {wall:rough_temperature} at low "
            "fire.",
            "caution": "The port wall is set to {set:temperature}, but by its block it gets {wall:rough_temperature} "
            "at low fire. Flashback when hot is judged by what is set: leave it on auto unless you measured it there.",
            "stop": "The port wall is set to {set:temperature}, but by its block it gets {wall:rough_temperature} at "
            "low fire. Flashback when hot is judged by what is set, so it may run back where that is called good: "
            "leave it on auto.",
        },
        cures=(("port_wall_temperature", "raise"),),
    ),
    Check(
        "box_steel",
        "temperature",
        "Steel box",
        harm="damage",
        source=FIN & RIM & IGNITION,
        cases={
            "good": "At low fire the steel box gets {box:rough_temperature}, {most:rough_temperature} at most with "
            "the chamber left empty; up to {good:rough_temperature} is usual.",
            "note": "At low fire the steel box gets {box:rough_temperature}. Left empty at low fire, the chamber "
            "drifts to {left:rough_temperature} and the box to {most:rough_temperature}; above "
            "{good:rough_temperature} paint and gaskets go and the mixture in it warms. Do not leave it so.",
            "caution": "At low fire the steel box gets {box:rough_temperature}, maybe {most:rough_temperature} left "
            "empty; above {good:rough_temperature} paint and gaskets go and the mixture in it warms. Make the block "
            "thicker or of a lighter refractory, the lip wider, or keep low fire higher.",
            "caution_left": "At low fire the steel box gets {box:rough_temperature}, maybe {most:rough_temperature} "
            "left empty; above {good:rough_temperature} paint and gaskets go and the mixture in it warms. Make the "
            "block thicker or of a lighter refractory, or the lip wider.",
            "may_light": "The steel that grips the block may get {lip_most:rough_temperature}, above "
            "{wetted:rough_temperature}: mixture that stands there may light by itself.",
            "stop": "At low fire the steel that grips the block gets {lip:rough_temperature}, above "
            "{wetted:rough_temperature}: mixture that stands there may light by itself. Make the block thicker or of a "
            "lighter refractory, the lip wider, or keep low fire higher.",
        },
        cures=(
            ("block_thickness", "raise"),
            ("setback", "raise"),
            ("low_fire", "raise"),
            ("refractory", "choose"),
        ),
    ),
    Check(
        "box_mixture",
        "temperature",
        "Mixture in the box",
        harm="danger",
        source=FIN & RIM & IGNITION,
        cases={
            "good": "At low fire the mixture in the box gets {mixture:rough_temperature}, {most:rough_temperature} at "
            "most with the chamber left empty; up to {good:rough_temperature} is usual.",
            "caution": "At low fire the mixture in the box gets {mixture:rough_temperature}, maybe "
            "{most:rough_temperature} left empty; above {good:rough_temperature} it flashes back much sooner. Make "
            "the block thicker or of a lighter refractory, or keep low fire higher.",
            "stop": "At low fire the mixture in the box gets {mixture:rough_temperature}, above "
            "{wetted:rough_temperature}: it may light by itself. Make the block thicker or of a lighter refractory, "
            "or keep low fire higher.",
        },
        cures=(
            ("block_thickness", "raise"),
            ("low_fire", "raise"),
            ("refractory", "choose"),
            ("setback", "raise"),
        ),
    ),
    Check(
        "shut_down",
        "temperature",
        "Box after shut-down",
        harm="danger",
        source=SOAKING & IGNITION,
        cases={
            "good": "If the blower stops with the gas, what stands in the box gets {mixture:rough_temperature} at "
            "most, below the {wetted:rough_temperature} that still mixture may touch.",
            "mixture": "If the blower stops with the gas, what stands in the box gets {mixture:rough_temperature}, "
            "above the {wetted:rough_temperature} that still mixture may touch.",
            "back": "If the blower stops with the gas, the back of the block gets {back:rough_temperature}, and from "
            "{ignition:rough_temperature} mixture lights by itself.",
            "stop": "If the blower stops with the gas, what stands in the box gets {mixture:rough_temperature}, and "
            "from {ignition:rough_temperature} mixture lights by itself. Make the block thicker or of a lighter "
            "refractory.",
            "left": "Left empty at low fire, the chamber drifts to {left:temperature}; shut down then, this holds.",
            "worse": "Shut down after the chamber stood empty at low fire, {empty:rough_temperature}.",
            "after": "Let the blower run on for {run_on:time} after the gas is shut. If the power fails, shut the gas "
            "at the cock, stand aside and let it cool. Nobody blows into it: the blower purges it before relighting.",
        },
        cures=(
            ("block_thickness", "raise"),
            ("refractory", "choose"),
        ),
    ),
    Check(
        "grip_heat",
        "temperature",
        "Steel in the grip",
        harm="damage",
        source=FIN & RIM & STEEL_HEAT,
        cases={
            "good": "The steel that grips the block gets {lip:rough_temperature}, {most:rough_temperature} at most; it "
            "keeps its strength to {good:rough_temperature}.",
            "caution": "The steel that grips the block gets {lip:rough_temperature}, maybe {most:rough_temperature}; "
            "above {good:rough_temperature} it weakens and grows away from the block. Make the block thicker or of a "
            "lighter refractory, or the lip wider.",
            "stop": "The steel that grips the block gets {lip:rough_temperature}; above {scales:rough_temperature} it "
            "scales away and lets go of the block. Make the block thicker or of a lighter refractory, or the "
            "lip wider.",
        },
        cures=(
            ("block_thickness", "raise"),
            ("setback", "raise"),
            ("refractory", "choose"),
            ("low_fire", "raise"),
        ),
    ),
    Check(
        "lift",
        "power",
        "Lift while cold",
        harm="danger",
        source=LIFT,
        cases={
            "good": "A cold flame holds up to {lift:power} at least, low fire is {low:power}; more lifts it until the "
            "face glows.",
            "hardly": "Next to no cold flame holds on these ports at this mixture.",
            "lifts": "A cold flame may lift above {lift:power}, less than low fire ({low:power}): light "
            "it by the lighting card.",
            "hot": "Once the chamber walls are above {hot:temperature} they light it again, and lifting is no fault. "
            "While they are cooler a flame that lifts is going out: gas off.",
            "hot_alone": "So walls above {hot:temperature} alone keep low fire ({low:power}) alight. Cold work put "
            "in, a door opened, a slip to leaner, and it goes out with the gas on. Bring the mixture nearer to 1, or "
            "give it more port area.",
            "hardly_hot": "This chamber works at {chamber:temperature 4}, hardly above the {hot:temperature} from "
            "which walls light it again: its colder corners may not. Run it some [50 °F|30 °C] hotter, or with less "
            "fire.",
            "pilot": "This chamber works at {chamber:temperature 4}, below the {hot:temperature} at which its walls "
            "would light it again: pilot and flame guard stay on as long as gas flows.",
            "never_hot": "This chamber works at {chamber:temperature 4}, below the {hot:temperature} at which its "
            "walls would light it again: a flame that lifts here is going out. Turn the fire down, or shut the gas.",
        },
        cures=(("low_fire", "lower"), ("port_diameter", "raise")),
    ),
    Check(
        "flammable",
        "mixture",
        "Mixture that burns",
        harm="danger",
        source=FLAMMABILITY,
        cases={
            "good": BURNS + ".",
            "caution": BURNS + ", close to where it goes out: make it richer.",
            "stop": BURNS + ": it does not burn cold.",
        },
    ),
    Check(
        "port_velocity",
        "speed",
        "Mixture velocity",
        harm="danger",
        source=PRACTICE,
        cases={
            "says": "The mixture leaves the ports at {velocity:speed}; {low:speed 2} to {high:speed 2} is usual at "
            "high fire.",
            "slow": "Slow flow lets the flame into the ports: use fewer or smaller ports, or more fire.",
            "fast": "Fast flow lifts the flame while the face is cold and asks much of the blower: use more or larger "
            "ports.",
        },
    ),
    Check(
        "port_loading",
        "power_per_area",
        "Port loading",
        harm="comfort",
        source=PRACTICE,
        cases={
            "says": "The ports carry {loading:power_per_area} of fire for their area; {low:power_per_area 2} to "
            "{high:power_per_area 2} is usual for blown ports in a furnace face.",
        },
    ),
    Check(
        "cross_light",
        "length",
        "Ports lighting each other",
        harm="danger",
        source=CROSS_LIGHTING,
        cases={
            "good": "The flame must jump {gap:length} from port to port; it does.",
            "note": "The flame must jump {gap:length} from port to port, as in many good faces; up to {sure:length} or "
            "a pitch of 2.5 diameters is sure. Light slowly and see that every port burns.",
            "caution": "The flame must jump {gap:length} from port to port; up to {sure:length} or a pitch of 2.5 "
            "diameters is sure. Set them closer, light slowly and see that every port burns.",
            "stop": "The flame must jump {gap:length} from port to port; {most:length} is about the most. Ports that "
            "do not light let gas into the chamber: set them closer.",
        },
        cures=(("ports_per_row", "raise"), ("rows", "raise")),
    ),
    Check(
        "quenching",
        "length",
        "Ports and quenching",
        harm="danger",
        source=QUENCHING,
        cases={
            "wide": "Ports of {diameter:length} do not stop a flame (cold ones of {quenching:length} would): only the "
            "speed of the mixture keeps it out.",
            "narrow": "Ports this small stop a flame while they are cold, not once they are hot: then only the speed "
            "of the mixture keeps it out.",
        },
    ),
)

TABLES = (
    Table(
        "block_heat",
        "How hot block and box get, hot all through",
        (
            Column("place", "Place", "word"),
            Column("high", "High fire", "rough_temperature"),
            Column("low", "Low fire", "rough_temperature"),
            Column("after", "Blower stopped with the gas", "rough_temperature"),
        ),
        source=FIN & RIM & SOAKING,
        words={
            "face": "face, lips of the ports",
            "wall": "port wall, mean",
            "exit": "mixture leaving the ports",
            "rim": "block at the steel's face",
            "back": "back of the block",
            "lip": "steel that grips it",
            "box": "steel box, mean",
            "mixture": "mixture in the box",
            "unknown": "not worked out",
        },
    ),
    Table(
        "holes",
        {
            "box": "Hole table, from the corner with the triangle on the face, seen from the fire",
            "round": "Hole table, from the corner with the triangle beside the face, seen from the fire",
        },
        (
            Column("number", "No.", "count"),
            Column("x", "x", "length"),
            Column("y", "y", "length"),
            Column("diameter", "Diameter", "bore"),
        ),
        source=GEOMETRY,
    ),
)

CHARTS = (
    Chart(
        "ratio_by_ports",
        "Room behind the ports, by number of ports",
        Axis("ports", "count"),
        Axis("plenum area / port area", "ratio"),
        (
            Series("band_stop", "stop", "band", "stop"),
            Series("band_caution", "caution", "band", "caution"),
            Series("band_good", "good", "band", "good"),
            Series("ratio", "this plenum and port size"),
        ),
        cases={
            "centre": "With the inlet at the centre this plenum feeds up to {enough} ports of this size within "
            "{spread:percent}; the design has {ports}.",
            "two": "With two inlets this plenum feeds up to {enough} ports of this size within {spread:percent}; the "
            "design has {ports}.",
            "end": "With the inlet at the end this plenum feeds up to {enough} ports of this size within "
            "{spread:percent}; the design has {ports}.",
        },
    ),
    Chart(
        "stability_map",
        "Where the flame stays",
        Axis("mixture: lean below 1, rich above", "mixture"),
        Axis("speed in cold ports", "speed"),
        (
            Series("flashback_cold_band", "flashback, cold: band", "band", "caution"),
            Series("flashback_hot_band", "flashback, hot: band", "band", "stop"),
            Series("lift_band", "lift, cold: band", "band"),
            Series("flashback_cold", "flashback, cold"),
            Series("flashback_hot", "flashback, hot"),
            Series("lift", "lift, cold"),
            Series("operating", "low to high fire"),
        ),
        cases={
            "shows": "Below the flashback bands the flame can enter the ports; above the lift band a cold flame lifts, "
            "a hot face holds it. The line is low to high fire, {slow:speed} to {velocity:speed}.",
        },
    ),
)
