"""The words of the room Heat: fuel, mixture and flame, the chamber and what it needs, and three kinds of burner."""

from ..sources import DEFINITION, LIMITS, PRACTICE, Source
from .forms import Answer, Axis, Chart, Check, Column, Series, Table

STOICHIOMETRY = Source("atom balance; dry air with 20.95 % oxygen (US Standard Atmosphere 1976)", "published")
HEATING_VALUE = Source(
    "enthalpies of formation, NASA polynomials (NASA TM-4513); metering state 15 °C, 101 325 Pa (ISO 13443)",
    "published",
)
WOBBE = Source("ISO 6976:2016, for ideal gases", "memory")
EQUILIBRIUM = Source("chemical equilibrium, NASA polynomials (NASA TM-4513) by the method of NASA RP-1311", "published")
FREEZING = EQUILIBRIUM & Source("composition frozen below 1700 K (common practice)", "common practice")
STEAM = Source("IAPWS R7-97(2012)", "memory")
ENERGY_BALANCE = Source("energy balance", "calculated")
CO_LIMIT = Source("mass balance", "calculated") & Source("NIOSH REL (criteria document 1972)", "published")
GEOMETRY = Source("geometry of the chamber", "calculated")
WALL = Source(
    "conductivity of each lining over temperature (data/lining_properties.csv: handbook and class data); outside by "
    "natural convection (Churchill and Chu; McAdams) and radiation, emissivity 0.9; edges by shape factors (Langmuir)",
    "memory",
)
OPENING = Source("radiation through a hole with re-radiating sides (Berman 1965)", "published")
METAL = Source(
    "heat content of the metals: NASA TP-2002-211556, EN 1993-1-2 for steel, Kopp's rule for alloys", "published"
)
MELTING = Source("melting ranges of handbooks", "memory")
HEAT_UP = Source(
    "transient conduction by implicit finite volumes (Patankar 1980), hot face at chamber temperature from the start; "
    "dry lining",
    "memory",
)
BALANCE = Source("heat balance", "memory")  # no surer than the losses in it
SERVICE_LIMITS = Source("service limits of lining classes (data/linings.csv)", "memory")
TOUCH = Source("EN ISO 13732-1:2008, bare metal touched for one second", "memory")
MOMENTUM = Source("momentum of jet and mixture (Lawn 2003; Prigg)", "published")

FUEL = ("fuel", "fuel_blend")
MIXED = (*FUEL, "equivalence_ratio")
BURNED = (*MIXED, "ambient_temperature", "altitude")
LEAVING = (*BURNED, "chamber_temperature")
CHAMBER = ("chamber_shape", "chamber_length", "chamber_width", "chamber_height", "chamber_diameter")
SHELL = (*CHAMBER, "lining", "opening_area", "chamber_temperature", "ambient_temperature", "altitude")
JET = (
    "aspirated_pressure",
    "aspirated_jet",
    "jet_discharge_coefficient",
    *FUEL,
    "ambient_temperature",
    "altitude",
)

FUEL_ANSWERS = (
    Answer(
        "gross_heating_value",
        "gas.gross_J_m3",
        "energy_per_volume",
        "Gross heating value",
        meaning="Heat of one volume of gas as an ideal gas at 15 °C and sea level, its water condensed; firing rates "
        "count this one.",
        formula="net heating value + heat of the condensed water",
        inputs=FUEL,
        source=HEATING_VALUE,
    ),
    Answer(
        "net_heating_value",
        "gas.net_J_m3",
        "energy_per_volume",
        "Net heating value",
        meaning="Heat of one volume of gas at 15 °C and sea level with its water left as vapour.",
        formula="enthalpy of gas and oxygen - enthalpy of carbon dioxide and water vapour, at 25 °C",
        inputs=FUEL,
        source=HEATING_VALUE,
    ),
    Answer(
        "gross_heating_value_mass",
        "gas.gross_J_kg",
        "energy_per_mass",
        "Gross heating value, weight",
        meaning="Heat of one weight of gas, its water condensed.",
        formula="gross heating value / density of the gas",
        inputs=FUEL,
        source=HEATING_VALUE,
    ),
    Answer(
        "net_heating_value_mass",
        "gas.net_J_kg",
        "energy_per_mass",
        "Net heating value, weight",
        meaning="Heat of one weight of gas with its water left as vapour.",
        formula="net heating value / density of the gas",
        inputs=FUEL,
        source=HEATING_VALUE,
    ),
    Answer(
        "wobbe_index",
        "gas.wobbe_J_m3",
        "energy_per_volume",
        "Wobbe index",
        meaning="Gases of one Wobbe index give one heat through the same jet at the same pressure.",
        formula="gross heating value / square root of (density of the gas / density of air)",
        inputs=FUEL,
        source=WOBBE,
    ),
)

MIXTURE_ANSWERS = (
    Answer(
        "air_fuel_ratio_volume",
        "mixture.air_to_gas_volume",
        "ratio",
        "Air to gas by volume",
        meaning="Volumes of air for one volume of gas, as mixed.",
        formula="air that just burns the gas / equivalence ratio",
        inputs=MIXED,
        source=STOICHIOMETRY,
        near="bench",
    ),
    Answer(
        "air_fuel_ratio_mass",
        "mixture.air_to_gas_mass",
        "ratio",
        "Air to gas by weight",
        meaning="Weight of air for one weight of gas, as mixed.",
        formula="air to gas by volume x molar mass of air / molar mass of gas",
        inputs=MIXED,
        source=STOICHIOMETRY,
    ),
    Answer(
        "excess_air",
        "mixture.excess_air",
        "fraction",
        "Excess air",
        meaning="Air beyond what just burns the gas; below zero when rich.",
        formula="1 / equivalence ratio - 1",
        inputs=("equivalence_ratio",),
        source=DEFINITION,
    ),
    Answer(
        "atmosphere",
        "mixture.atmosphere",
        "word",
        "Atmosphere",
        meaning="Oxidising: oxygen is left over. Reducing: carbon monoxide and hydrogen are, and they poison. Neutral: "
        "within 0.02 of equivalence ratio 1. Hot steel scales a little even in a reducing flame.",
        formula="equivalence ratio against 1 ± 0.02",
        inputs=("equivalence_ratio",),
        source=PRACTICE,
        near="first",
        cases={"oxidising": "oxidising", "neutral": "neutral", "reducing": "reducing"},
    ),
)

FLOW_ANSWERS = (
    Answer(
        "firing_rate_gross",
        "firing.rate_W",
        "power",
        "Firing rate, gross",
        meaning="Heat of the gas that this burner is designed for at high fire, gross; as set, or its share of what "
        "the chamber needs.",
        formula="firing rate, or firing rate needed / burners when it is auto",
        inputs=("firing_rate", "firing_rate_needed", "burner_count"),
        source=DEFINITION,
        near="first",
    ),
    Answer(
        "firing_rate_net",
        "firing.net_W",
        "power",
        "Firing rate, net",
        meaning="The same fire counted by the net heating value, as some countries do.",
        formula="firing rate, gross x net heating value / gross heating value",
        inputs=("firing_rate_gross", "net_heating_value", "gross_heating_value"),
        source=HEATING_VALUE,
    ),
    Answer(
        "gas_flow",
        "firing.gas_m3_s",
        "gas_flow",
        "Gas flow",
        meaning="Fuel gas burned at high fire, as it would fill a meter at 15 °C and sea level.",
        formula="firing rate / gross heating value",
        inputs=("firing_rate_gross", "gross_heating_value"),
        source=HEATING_VALUE,
        near="bench",
    ),
    Answer(
        "air_flow",
        "firing.air_m3_s",
        "air_flow",
        "Air flow",
        meaning="Air that the blower brings at high fire, at 15 °C and sea level.",
        formula="gas flow x air to burn one volume of gas / equivalence ratio",
        inputs=("gas_flow", "air_fuel_ratio_volume"),
        source=STOICHIOMETRY,
        near="bench",
    ),
    Answer(
        "mixture_flow",
        "firing.mixture_m3_s",
        "air_flow",
        "Mixture flow",
        meaning="Gas and air together on their way to the ports, at 15 °C and sea level.",
        formula="gas flow + air flow",
        inputs=("gas_flow", "air_flow"),
        source=STOICHIOMETRY,
    ),
)

FLAME_ANSWERS = (
    Answer(
        "flame_temperature",
        "flame.temp_K",
        "temperature",
        "Flame temperature",
        meaning="Hottest that the flame can be, no heat lost, gas and air from the shop.",
        formula="temperature at which the burned gas at equilibrium holds all the heat of gas and air",
        inputs=BURNED,
        source=EQUILIBRIUM,
        near="first",
    ),
    Answer(
        "flue_co_dry",
        "flame.co_dry",
        "gas_share",
        "Carbon monoxide, dry",
        meaning="Share of the dry gas that leaves the chamber, before air at the door burns any of it.",
        formula="equilibrium at the chamber temperature, not below 1700 K",
        inputs=LEAVING,
        source=FREEZING,
    ),
    Answer(
        "flue_o2_dry",
        "flame.o2_dry",
        "gas_share",
        "Oxygen, dry",
        meaning="Share of the dry gas that leaves the chamber, before air at the door mixes in.",
        formula="equilibrium at the chamber temperature, not below 1700 K",
        inputs=LEAVING,
        source=FREEZING,
    ),
    Answer(
        "flue_dew_point",
        "flame.dew_point_K",
        "temperature",
        "Dew point of the flue gas",
        meaning="Below it water runs down whatever the flue gas meets.",
        formula="temperature whose steam pressure is that of the water in the flue gas",
        inputs=LEAVING,
        source=STEAM,
    ),
    Answer(
        "available_heat",
        "flame.available",
        "fraction",
        "Available heat",
        meaning="Share of the gross heat that stays in the chamber when the gas leaves as hot as the chamber; what "
        "leaves unburned is counted as lost.",
        formula="(enthalpy of gas and air - enthalpy of the flue gas at chamber temperature) / gross heating value",
        inputs=LEAVING,
        source=ENERGY_BALANCE & FREEZING,
    ),
    Answer(
        "fresh_air",
        "firing.fresh_air_m3_s",
        "air_flow",
        "Fresh air against CO",
        meaning="What would keep a well-mixed room at 35 ppm of carbon monoxide if all flue gas of all burners stayed "
        "in it; a hood that draws it outdoors needs far less, and no figure stands in for an alarm.",
        formula="dry flue gas x its share of carbon monoxide / 35 ppm",
        inputs=("firing_rate_gross", "burner_count", "flue_co_dry"),
        source=CO_LIMIT & FREEZING,
        near="bench",
    ),
)

LOSS_ANSWERS = (
    Answer(
        "chamber_volume",
        "chamber.volume_m3",
        "volume",
        "Chamber volume",
        meaning="Inside of the lining.",
        formula="length x width x height, or length x pi x diameter squared / 4",
        inputs=CHAMBER,
        source=GEOMETRY,
        near="bench",
    ),
    Answer(
        "wall_loss",
        "chamber.wall_loss_W",
        "power",
        "Heat through the walls",
        meaning="What the lining lets through once it is hot all through.",
        formula="conduction through the layers = convection and radiation of the shell, solved for the shell "
        "temperature",
        inputs=SHELL,
        source=WALL,
    ),
    Answer(
        "shell_temperature",
        "chamber.shell_temp_K",
        "temperature",
        "Shell temperature",
        meaning="Outside of the last layer once the lining is hot all through; one value for all sides.",
        formula="temperature at which the shell gives off what the lining lets through",
        inputs=SHELL,
        source=WALL,
        near="first",
    ),
    Answer(
        "opening_loss",
        "chamber.opening_loss_W",
        "power",
        "Heat out of the opening",
        meaning="Radiation only; the hot gas that leaves is the flue loss.",
        formula="share of a black opening that its deep sides let out x area x (chamber temperature^4 - shop "
        "temperature^4)",
        inputs=("opening_area", "opening_depth", "chamber_temperature", "ambient_temperature"),
        source=OPENING,
    ),
    Answer(
        "work_heat",
        "chamber.work_heat_W",
        "power",
        "Heat into the work",
        meaning="What the metal takes up, melting included.",
        formula="work rate x heat content of the metal between shop and work temperature",
        inputs=("work_metal", "work_rate", "work_temperature", "ambient_temperature"),
        source=METAL,
    ),
    Answer(
        "work_state",
        "chamber.work_state",
        "word",
        "Work when it comes out",
        meaning="Solid, melting or liquid at the work temperature.",
        formula="work temperature against the melting range of the metal",
        inputs=("work_metal", "work_temperature"),
        source=MELTING,
        near="bench",
        cases={"solid": "solid", "melting": "melting", "liquid": "liquid"},
    ),
    Answer(
        "stored_heat",
        "chamber.stored_heat_J",
        "energy",
        "Heat stored in the lining",
        meaning="What the lining holds at the end of the heat-up; it goes to waste when the fire goes out.",
        formula="heat content of every layer at its temperature after the heat-up time",
        inputs=(*SHELL, "heat_up_time"),
        source=HEAT_UP,
    ),
)

NEED_ANSWERS = (
    Answer(
        "hold_rate",
        "need.hold_W",
        "power",
        "Firing rate to hold",
        meaning="Gross, all burners: keeps the empty chamber hot.",
        formula="(heat through the walls + heat out of the opening) / available heat",
        inputs=("wall_loss", "opening_loss", "available_heat"),
        source=BALANCE,
        near="bench",
    ),
    Answer(
        "working_rate",
        "need.working_W",
        "power",
        "Firing rate to work",
        meaning="Gross, all burners: keeps it hot while work goes through.",
        formula="(heat through the walls + heat out of the opening + heat into the work) / available heat",
        inputs=("wall_loss", "opening_loss", "work_heat", "available_heat"),
        source=BALANCE,
        near="bench",
    ),
    Answer(
        "heat_up_rate",
        "need.heat_up_W",
        "power",
        "Firing rate to heat up",
        meaning="Gross, all burners: mean over the heat-up time, from cold, no work inside.",
        formula="(heat that enters the lining / heat-up time + heat out of the opening) / available heat at chamber "
        "temperature",
        inputs=("stored_heat", "heat_up_time", "opening_loss", "available_heat"),
        source=HEAT_UP,
        near="bench",
    ),
    Answer(
        "firing_rate_needed",
        "need.needed_W",
        "power",
        "Firing rate needed",
        meaning="Gross, all burners: the larger of working and heating up.",
        formula="larger of firing rate to work and firing rate to heat up",
        inputs=("working_rate", "heat_up_rate"),
        source=BALANCE,
        near="first",
    ),
    Answer(
        "firing_rate_from",
        "firing.taken_from",
        "word",
        "Firing rate taken from",
        meaning="Chamber: the burner is designed for its share of the firing rate needed. Setting: for the firing rate "
        "as set.",
        formula="firing rate auto, or a number",
        inputs=("firing_rate",),
        source=DEFINITION,
        near="bench",
        cases={"chamber": "chamber", "setting": "setting"},
    ),
    Answer(
        "thermal_efficiency",
        "need.efficiency",
        "fraction",
        "Thermal efficiency",
        meaning="Share of the gross heat that ends in the work while the chamber works.",
        formula="heat into the work / firing rate to work",
        inputs=("work_heat", "working_rate"),
        source=BALANCE,
    ),
    Answer(
        "fuel_per_hour",
        "need.gas_kg_s",
        "mass_flow",
        "Gas while working",
        meaning="Weight of gas that all burners use in an hour of work.",
        formula="firing rate to work / gross heating value by weight",
        inputs=("working_rate", "gross_heating_value_mass"),
        source=BALANCE,
        near="first",
    ),
    Answer(
        "firing_per_volume",
        "firing.per_volume_W_m3",
        "power_per_volume",
        "Fire per chamber volume",
        meaning="Gross heat of all burners for one volume of chamber.",
        formula="firing rate x burners / volume of the chamber",
        inputs=("firing_rate_gross", "burner_count", "chamber_volume"),
        source=GEOMETRY,
    ),
)

ASPIRATED_ANSWERS = (
    Answer(
        "aspirated_equivalence_ratio",
        "aspirated.equivalence_ratio",
        "ratio",
        "Aspirated: mixture",
        meaning="Equivalence ratio that the gas jet makes with the air it pulls into its throat; above 1 it pulls too "
        "little.",
        formula="air to just burn the gas / air pulled in, from the momentum that the jet hands to the mixture",
        inputs=(*JET, "aspirated_throat", "aspirated_inlet_loss", "aspirated_outlet_loss"),
        source=MOMENTUM,
    ),
    Answer(
        "aspirated_rate",
        "aspirated.rate_W",
        "power",
        "Aspirated: firing rate",
        meaning="Gross heat of one aspirated burner with this jet and gas pressure.",
        formula="gas flow of the jet x gross heating value by weight",
        inputs=JET,
        source=MOMENTUM,
    ),
)

ANSWERS = (
    *FUEL_ANSWERS,
    *MIXTURE_ANSWERS,
    *FLOW_ANSWERS,
    *FLAME_ANSWERS,
    *LOSS_ANSWERS,
    *NEED_ANSWERS,
    *ASPIRATED_ANSWERS,
)

CANNOT = "No firing rate brings the chamber to {chamber:temperature}: the flame leaves nothing in it."

CHECKS = (
    Check(
        "flame_holds",
        "fraction",
        "Heat left by the flame",
        source=ENERGY_BALANCE & LIMITS,
        cases={
            "no_flame": "No flame was found for this mixture of gas and air: move the equivalence ratio towards 1.",
            "stop": "The flame cannot hold {chamber:temperature}: at {flame:temperature} it would leave nothing in the "
            "chamber. Lower the chamber temperature, or bring the equivalence ratio nearer to 1.",
            "caution": "At {chamber:temperature} {available:fraction} of the gross heat stays in the chamber; with so "
            "little a small slip of the mixture loses it. Lower the chamber temperature, or bring the equivalence "
            "ratio nearer to 1.",
            "good": "At {chamber:temperature} {available:fraction} of the gross heat stays in the chamber.",
        },
    ),
    Check(
        "mixture",
        "ratio",
        "Mixture",
        source=PRACTICE,
        cases={
            "rich": "Rich: the gas that leaves holds {co:gas_share} carbon monoxide, a deadly poison without smell; if "
            "all of it stayed in the room, {fresh:air_flow} of fresh air would be needed. Draw it outdoors under a "
            "hood, hang a carbon monoxide alarm, never run this in a closed room. A lower equivalence ratio makes far "
            "less.",
            "rich_no_flame": "Rich: the gas that leaves holds carbon monoxide, a deadly poison without smell. Draw it "
            "outdoors under a hood, hang a carbon monoxide alarm, never run this in a closed room. A lower equivalence "
            "ratio makes far less.",
            "lean": "Lean: {excess:fraction} more air than burns. It scales the work and carries heat out of the door: "
            "raise the equivalence ratio to {leanest:g} or more.",
            "little_lean": "A little lean: it scales the work somewhat and makes little carbon monoxide. Ventilate all "
            "the same.",
            "neutral": "Neutral mixture, next to nothing left over. It still makes some carbon monoxide; if all of it "
            "stayed in the room, {fresh:air_flow} of fresh air would be needed: ventilate, and hang an alarm.",
            "neutral_no_flame": "Neutral mixture, next to nothing left over. It still makes some carbon monoxide: "
            "ventilate, and hang an alarm.",
        },
    ),
    Check(
        "lining_limit",
        "temperature",
        "Lining against its limit",
        source=SERVICE_LIMITS,
        cases={
            "good": "Every layer stays below its service limit; nearest is layer {layer} ({material}): "
            "{hot:temperature} of {most:temperature}.",
            "stop": "Layer {layer} ({material}) gets {hot:temperature} on its hot side, above its limit of "
            "{most:temperature}: it shrinks, cracks or melts. Put more or a better insulating layer before it, choose "
            "a material with a higher limit, or run cooler.",
        },
        cures=(("lining", "choose"), ("chamber_temperature", "lower")),
    ),
    Check(
        "shell_touch",
        "temperature",
        "Shell to the touch",
        source=TOUCH,
        cases={
            "good": "The shell gets {shell:temperature}, below the {touch:temperature} that burn skin at a touch.",
            "caution": "The shell gets {shell:temperature}; above {touch:temperature} bare metal burns skin at a "
            "touch. Guard it, keep hose, cable and anything that burns away from it, or line it thicker.",
        },
        cures=(("lining", "choose"),),
    ),
    Check(
        "rate_for_need",
        "power",
        "Firing rate against the need",
        source=BALANCE,
        # Of one burner or of several; heating up or working decides.
        cases={
            "cannot": CANNOT,
            "auto.heat-up.one": "The firing rate is taken from the chamber: heating up in {time:time} takes "
            "{needed:power}. Working takes {working:power}.",
            "auto.heat-up.several": "The firing rate is taken from the chamber: heating up in {time:time} takes "
            "{needed:power}, {each:power} for each of {burners} burners. Working takes {working:power}.",
            "auto.working.one": "The firing rate is taken from the chamber: working takes {needed:power}.",
            "auto.working.several": "The firing rate is taken from the chamber: working takes {needed:power}, "
            "{each:power} for each of {burners} burners.",
            "good.heat-up.one": "{installed:power} is enough: heating up in {time:time} takes {needed:power}.",
            "good.heat-up.several": "{installed:power} is enough: heating up in {time:time} takes {needed:power}, "
            "{each:power} for each of {burners} burners.",
            "good.working.one": "{installed:power} is enough: working takes {needed:power}.",
            "good.working.several": "{installed:power} is enough: working takes {needed:power}, {each:power} for each "
            "of {burners} burners.",
            "far_more": "It is far more than that; auto would take the rate from the chamber.",
            "caution.heat-up.one": "{installed:power} is too little: heating up in {time:time} takes {needed:power}. "
            "Raise the firing rate or use more burners, or allow more time.",
            "caution.heat-up.several": "{installed:power} is too little: heating up in {time:time} takes "
            "{needed:power}, {each:power} for each of {burners} burners. Raise the firing rate or use more burners, or "
            "allow more time.",
            "caution.working.one": "{installed:power} is too little: working takes {needed:power}. Raise the firing "
            "rate or use more burners, or put less work through.",
            "caution.working.several": "{installed:power} is too little: working takes {needed:power}, {each:power} "
            "for each of {burners} burners. Raise the firing rate or use more burners, or put less work through.",
            "stop": "{installed:power} cannot even hold the empty chamber at {chamber:temperature}, which takes "
            "{hold:power}: raise the firing rate or use more burners, lower the chamber temperature, close the opening "
            "or line it thicker.",
        },
    ),
    Check(
        "heat_up_reach",
        "power_per_volume",
        "Heat-up",
        source=PRACTICE,
        cases={
            "cannot": CANNOT,
            "good": "Heating up in {time:time} is within what so large a chamber can burn.",
            "caution": "Heating up in {time:time} cracks dense lining; {shortest:time} or more is usual.",
            "stop": "Heating up in {time:time} is out of reach: it asks for {asked:power_per_volume} of chamber, and "
            "no more than {most:power_per_volume 2} burns well in one. Allow more time, or use a lighter lining.",
        },
        cures=(("heat_up_time", "raise"), ("lining", "choose")),
    ),
    Check(
        "firing_per_volume",
        "power_per_volume",
        "Fire for the chamber's size",
        source=PRACTICE,
        # The first stands before each of the others; what cures it depends on whether the chamber sets the rate.
        cases={
            "usual": "{found:power_per_volume} of chamber; {low:power_per_volume 2} to {high:power_per_volume 2} is "
            "usual in small forges and furnaces.",
            "cool": "Less is right below a forging heat of {forging:temperature}.",
            "little.auto.one": "So little fire from the burner may not reach a forging heat: ask for a shorter heat-up "
            "or make the chamber smaller.",
            "little.auto.several": "So little fire from the {burners} burners may not reach a forging heat: ask for a "
            "shorter heat-up or make the chamber smaller.",
            "little.set.one": "So little fire from the burner may not reach a forging heat: raise the firing rate or "
            "make the chamber smaller.",
            "little.set.several": "So little fire from the {burners} burners may not reach a forging heat: raise the "
            "firing rate or make the chamber smaller.",
            "much.auto.one": "So much fire from the burner burns out of the door: allow more time to heat up, use a "
            "lighter lining or make the chamber larger.",
            "much.auto.several": "So much fire from the {burners} burners burns out of the door: allow more time to "
            "heat up, use a lighter lining or make the chamber larger.",
            "much.set.one": "So much fire from the burner burns out of the door: lower the firing rate or make the "
            "chamber larger.",
            "much.set.several": "So much fire from the {burners} burners burns out of the door: lower the firing rate "
            "or make the chamber larger.",
        },
    ),
)

# The bars and rows of the heat balance, in order.
PLACES = {"flue": "flue", "wall": "walls", "opening": "opening", "work": "work", "spare": "spare"}
SHUT_OFF = "air stops and gas goes on: a shut-off valve that closes without power is needed"

TABLES = (
    Table(
        "flue_gas",
        "Flue gas as it leaves the chamber, shares by volume",
        (
            Column("species", "Gas", "word"),
            Column("wet", "Wet", "gas_share"),
            Column("dry", "Dry", "gas_share"),
        ),
        source=FREEZING,
        words={
            "CO2": "carbon dioxide",
            "H2O": "water vapour",
            "N2": "nitrogen",
            "O2": "oxygen",
            "CO": "carbon monoxide",
            "H2": "hydrogen",
            "OH": "hydroxyl",
            "H": "atomic hydrogen",
            "O": "atomic oxygen",
            "NO": "nitric oxide",
            "CH4": "methane",
        },
    ),
    Table(
        "lining_layers",
        "Lining from the hot face out, hot all through",
        (
            Column("layer", "Layer", "count"),
            Column("material", "Material", "word"),
            Column("thickness", "Thickness", "length"),
            Column("hot_side", "Hot side", "temperature"),
            Column("cold_side", "Cold side", "temperature"),
            Column("limit", "Service limit", "temperature"),
        ),
        source=WALL,
    ),
    Table(
        "heat_balance",
        "Where the heat goes while the chamber works, at the firing rate of all burners",
        (
            Column("place", "Into", "word"),
            Column("heat", "Heat", "power"),
            Column("share", "Share", "fraction"),
        ),
        source=BALANCE,
        words=PLACES,
    ),
    Table(
        "burner_kinds",
        "Three kinds of burner for this chamber, while it works",
        (
            Column("kind", "Kind", "word"),
            Column("excess_air", "Excess air", "fraction"),
            Column("available_heat", "Available heat", "fraction"),
            Column("working_rate", "Firing rate to work", "power"),
            Column("fuel_per_hour", "Gas while working", "mass_flow"),
            Column("gas_supply", "Gas pressure", "word"),
            Column("mains_power", "Mains power", "word"),
            Column("wears", "What wears", "word"),
            Column("turndown", "Turndown", "word"),
            Column("power_cut", "In a power cut", "word"),
        ),
        source=PRACTICE,
        # Keys of data/burner_kinds.csv and what is said of each.
        words={
            "aspirated.kind": "naturally aspirated single flame",
            "aspirated.gas_supply": "high pressure, {low:gas_pressure 2} to {high:gas_pressure 2}: the jet must pull "
            "in all the air; at {pressure:gas_pressure} this jet and throat make equivalence ratio {ratio:.2f}",
            "aspirated.wears": "steel flare in the heat: scales away in months",
            "aspirated.power_cut": "keeps burning: gas and air both come from the jet",
            "blown_single.kind": "blown single flame",
            "blown_single.gas_supply": "low pressure is enough, {low:gas_pressure 2} to {high:gas_pressure 2}",
            "blown_single.wears": "tube end in the heat: scales away unless set back in the lining",
            "blown_single.power_cut": SHUT_OFF,
            "blown_multi_port.kind": "blown multi-port",
            "blown_multi_port.gas_supply": "low pressure is enough, {low:gas_pressure 2} to {high:gas_pressure 2}",
            "blown_multi_port.wears": "cast block: no flare; ports must stay clear and the block uncracked",
            "blown_multi_port.power_cut": SHUT_OFF,
            "mains": "{mains:g} W for the blower",
            "no_mains": "none",
            "turndown": "{turndown:g} to 1",
        },
    ),
)

RATIO = Axis("equivalence ratio", "ratio")

CHARTS = (
    Chart(
        "flame_by_ratio",
        "Flame temperature, by equivalence ratio",
        RATIO,
        Axis("flame temperature", "temperature"),
        (Series("flame", "flame, no heat lost"),),
        cases={
            "shows": "Hottest near {ratio:.2f}, at {hottest:temperature}; both air and gas in excess cool the flame."
        },
    ),
    Chart(
        "flue_by_ratio",
        "Carbon monoxide and oxygen in the dry flue gas",
        RATIO,
        Axis("share of the dry flue gas", "fraction"),
        (Series("co", "carbon monoxide", verdict="stop"), Series("o2", "oxygen")),
        cases={
            "shows": "Oxygen is left over when lean, carbon monoxide when rich; an oxygen reading of the flue tells "
            "the mixture."
        },
    ),
    Chart(
        "available_by_temperature",
        "Available heat, by chamber temperature",
        Axis("chamber temperature", "temperature"),
        Axis("share of the gross heat that stays", "fraction"),
        (Series("available", "this mixture"),),
        cases={
            "shows": "The hotter the chamber, the more heat leaves with the flue gas.",
            "reach": "The hotter the chamber, the more heat leaves with the flue gas; nothing is left at about "
            "{reach:temperature}.",
        },
    ),
    Chart(
        "wall_profile",
        "Temperature through the wall",
        Axis("depth below the hot face", "length"),
        Axis("temperature", "temperature"),
        (
            Series("heat_up", "after the heat-up time", verdict="caution"),
            Series("steady", "hot all through"),
        ),
        cases={
            "shows": "After {time:time} the shell has {warm:temperature}; hot all through it has {shell:temperature}."
        },
    ),
    Chart(
        "heat_balance",
        "Where the heat goes",
        Axis("", "count", tuple(enumerate(PLACES.values(), 1))),
        Axis("heat", "power"),
        (Series("heat", "while the chamber works", "bars"),),
        cases={
            "no_flame": "No flame was found, so nothing is known of where the {installed:power} go.",
            "spare": "Of {installed:power}, {flue:power} leaves with the flue gas; {spare:power} is to spare, for "
            "heating up or to be turned down.",
            "missing": "Of {installed:power}, {flue:power} leaves with the flue gas; {missing:power} is missing, so "
            "the chamber stays cooler than wanted.",
        },
    ),
)
