"""The words of the room Heat: fuel, mixture and flame, the chamber and what it needs, and three kinds of burner."""

from ..sources import CO_LIMIT, DEFINITION, EQUILIBRIUM, FREEZING, LIMITS, PRACTICE, ZONE, ZONE_HEAT_UP, Source
from .forms import Answer, Axis, Chart, Check, Column, Series, Table
from .lighting import RESTS_ON

STOICHIOMETRY = Source("atom balance; dry air with 20.95 % oxygen (US Standard Atmosphere 1976)", "published")
HEATING_VALUE = Source(
    "enthalpies of formation, NASA polynomials (NASA TM-4513); metering state 15 °C, 101 325 Pa (ISO 13443)",
    "published",
)
WOBBE = Source("ISO 6976:2016, for ideal gases", "memory")
SLIP = Source("a mixture slips by 0.03 of mixture", "common practice")
BY_EYE = Source("mixture by the look of the flame, of burners of a model of our own, not measured", "common practice")
CO_OF_APPLIANCES = Source("ANSI Z21, 400 ppm in the flue gas of a vented appliance", "memory")
STEAM = Source("IAPWS R7-97(2012)", "memory")
ENERGY_BALANCE = Source("energy balance", "calculated")
GEOMETRY = Source("geometry of the chamber", "calculated")
WALL = Source(
    "conductivity of each lining over temperature (handbook and class data); outside by "
    "natural convection (Churchill and Chu; McAdams) and radiation, emissivity 0.9; edges by shape factors (Langmuir)",
    "memory",
)
LIT = GEOMETRY & Source(
    "flames spread on the far wall by half the chamber's height, a quarter to all of it: a zone model of our own, not "
    "measured",
    "common practice",
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
ORIFICE = Source("flow through an orifice, discharge 0.6 sharp to 0.8 thick (Lichtarowicz 1965)", "memory")
BARS = Source(
    "lumped round bars, side by side one diameter apart on the floor; the share of the walls that they see 0.55 to 1 "
    "(Hottel)",
    "memory",
) & Source("gas to wall 20, 40 or 80 W/m²K", "common practice")
SERVICE_LIMITS = Source("service limits of lining classes", "memory")
TOUCH = Source("EN ISO 13732-1:2008, bare metal touched for one second", "memory")
MOMENTUM = Source("momentum of jet and mixture (Lawn 2003; Prigg)", "published")

BLOWER_FIRST = (
    "The blower is too weak to hold this mixture: the fire gets richer than set, with more carbon monoxide. How rich "
    "waits for a blower that brings the air of high fire."
)
FUEL = ("fuel", "fuel_blend")
MIXED = (*FUEL, "equivalence_ratio")
BURNED = (*MIXED, "ambient_temperature", "altitude")
LEAVING = (*BURNED, "chamber_temperature")
CHAMBER = ("chamber_shape", "chamber_length", "chamber_width", "chamber_height", "chamber_diameter")
SHELL = (*CHAMBER, "lining", "opening_area", "chamber_temperature", "ambient_temperature", "altitude")
WORK = ("work_metal", "work_rate", "work_temperature")
# What the gas gives the walls at one temperature of theirs, and what they lose then.
IN_ZONE = ("available_heat", "chamber_volume", "wall_loss", "opening_loss")
# The same at any temperature of the walls, which the chamber's own does not decide.
AT_RATE = (
    *BURNED,
    *CHAMBER,
    "lining",
    "opening_area",
    "opening_depth",
    "burner_count",
    "firing_rate_gross",
)
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
        formula="air that just burns the gas / mixture",
        inputs=MIXED,
        source=STOICHIOMETRY,
        near="bench",
        digits=3,
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
        digits=3,
    ),
    Answer(
        "excess_air",
        "mixture.excess_air",
        "fraction",
        "Excess air",
        meaning="Air beyond what just burns the gas; below zero when rich.",
        formula="1 / mixture - 1",
        inputs=("equivalence_ratio",),
        source=DEFINITION,
    ),
    Answer(
        "atmosphere",
        "mixture.atmosphere",
        "word",
        "Atmosphere as set",
        meaning="Oxidising: oxygen is left over. Reducing: half-burned gas is left over, much of it carbon monoxide, "
        "which poisons. Neutral: within 0.02 of mixture 1. Hot steel scales a little even in a reducing flame.",
        formula="mixture against 1 ± 0.02",
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
        "Firing rate of this burner",
        meaning="Heat of the gas that this burner burns in an hour at high fire, counted as gas is sold: as set, or "
        "its share of what the chamber needs.",
        formula="firing rate, or firing rate needed / burners when it is auto",
        inputs=("firing_rate", "firing_rate_needed", "burner_count"),
        if_auto={"firing_rate_needed": "firing_rate", "burner_count": "firing_rate"},
        source=DEFINITION,
        near="first",
    ),
    Answer(
        "firing_rate_net",
        "firing.net_W",
        "power",
        "Firing rate, net",
        meaning="The same fire counted by the net heating value, as some countries do.",
        formula="firing rate x net heating value / gross heating value",
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
        formula="gas flow x air to burn one volume of gas / mixture",
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
        meaning="The hottest that the flame can be: no heat lost, gas and air as warm as the shop.",
        formula="temperature at which the burned gas at equilibrium holds all the heat of gas and air",
        inputs=BURNED,
        source=EQUILIBRIUM,
        near="first",
    ),
    Answer(
        "flue_co_dry",
        "carbon_monoxide.dry",
        "gas_share",
        "Carbon monoxide, dry",
        meaning="Share of the dry gas that leaves the chamber, before air at the door burns any of it. It burns"
        " out while the gas cools slowly. The low end is a leaner mixture, cooled slowly. The high end "
        "is high fire, its gas chilled at once as it leaves: the mixture has got richer as the burner "
        "got hot, and 0.03 more, as near as a hand holds it. A flame that is cold, lifted or touches "
        "the work makes more.",
        formula="equilibrium at the chamber temperature, not below 1700 K, at mixture ± 0.03; high end at the "
        "richest of the hot mixture and the temperature that the gas leaves at",
        inputs=(*LEAVING, "gas_leaves", "mixture_hot_high", "mixture_hot_low"),
        source=FREEZING & SLIP,
        near="bench",
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
        "Available heat, at most",
        meaning="Share of the gross heat that would stay in the chamber if the gas left as cool as the walls; what "
        "leaves unburned is counted as lost. Gas leaves hotter, so less is kept.",
        formula="(enthalpy of gas and air - enthalpy of the flue gas at chamber temperature) / gross heating value",
        inputs=LEAVING,
        source=ENERGY_BALANCE & FREEZING,
    ),
    Answer(
        "fresh_air",
        "carbon_monoxide.fresh_air_m3_s",
        "air_flow",
        "Fresh air once it is hot, for 35 ppm",
        meaning="What would keep a well-mixed room at 35 ppm of carbon monoxide if all flue gas of all burners stayed "
        "in it. High up the air is thin, and it takes more. Lighting it may take far more: a fan is bought "
        "for that, not for this. "
        "A hood that draws it outdoors needs far less, and no figure stands in for an alarm. The 20 ppm of the EU take "
        "1.75 times as much.",
        formula="dry flue gas x its share of carbon monoxide / 35 ppm, over the band of the latter",
        inputs=("firing_rate_gross", "burner_count", "pilots_rate", "flue_co_dry"),
        source=CO_LIMIT & FREEZING & SLIP,
        near="engineer",
    ),
)

LOSS_ANSWERS = (
    Answer(
        "chamber_volume",
        "chamber.volume_m3",
        "volume",
        "Chamber volume",
        meaning="Room inside the lining.",
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
        meaning="Heat that goes through the lining and is lost, once it is hot all through.",
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
        meaning="Temperature outside the last layer once the lining is hot all through; one value for all sides.",
        formula="temperature at which the shell gives off what the lining lets through",
        inputs=SHELL,
        source=WALL,
        near="bench",
    ),
    Answer(
        "opening_loss",
        "chamber.opening_loss_W",
        "power",
        "Heat out of the opening",
        meaning="Heat that radiates out of the opening; the heat of the gas that leaves is not in it.",
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
        meaning="Heat that the metal takes up, melting included.",
        formula="work rate x heat content of the metal between shop and work temperature",
        inputs=("work_metal", "work_rate", "work_temperature", "ambient_temperature"),
        source=METAL,
    ),
    Answer(
        "work_state",
        "chamber.work_state",
        "word",
        "Work when it comes out",
        meaning="Whether the metal is solid, melting or liquid at the work temperature.",
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
        meaning="What the lining holds at the end of the heat-up, its hot face taken as at the set temperature all "
        "that time; under a real fire the face lags, and it holds less. It goes to waste when the fire goes out.",
        formula="heat content of every layer at its temperature after the heat-up time",
        inputs=(*SHELL, "heat_up_time"),
        source=HEAT_UP,
    ),
)

NEED_ANSWERS = (
    Answer(
        "hold_rate",
        "need.hold_told_W",
        "power",
        "Firing rate to hold",
        meaning="Fire of all burners that keeps the empty chamber hot. The gas leaves hotter than the walls, as it "
        "must heat them; the band is for how well it does.",
        formula="(heat through the walls + heat out of the opening) / share of heat that gas leaves when it is just "
        "hot enough to give the walls that much",
        inputs=IN_ZONE,
        source=ZONE,
        near="bench",
    ),
    Answer(
        "working_rate",
        "need.working_told_W",
        "power",
        "Firing rate to work",
        meaning="Firing rate of all burners that keeps the chamber hot while work goes through.",
        formula="(heat through the walls + heat out of the opening + heat into the work) / share of heat that gas "
        "leaves when it is just hot enough to give that much",
        inputs=(*IN_ZONE, "work_heat"),
        source=ZONE,
        near="bench",
    ),
    Answer(
        "heat_up_rate",
        "need.heat_up_told_W",
        "power",
        "Firing rate to heat up",
        meaning="Firing rate of all burners that brings the empty chamber from cold to its temperature in the "
        "heat-up time, burning so from the start. A cold burner waits at the lighting rate first, which"
        " comes on top.",
        formula="firing rate at which the walls, heated by the gas step by step, are hot when the time is over",
        inputs=(*IN_ZONE, "heat_up_time"),
        source=ZONE_HEAT_UP,
        near="bench",
    ),
    Answer(
        "firing_rate_needed",
        "need.needed_told_W",
        "power",
        "Firing rate needed",
        meaning="Fire of all burners together, to work or to heat up in time, whichever takes more; the gas may give "
        "off its heat badly. With auto the burner gets this rate. It ends where only a tenth of the heat stays in the "
        "chamber, or at what does the work where that is more. To heat up it ends at what burns well in so large a "
        "chamber: then that takes longer. It is never less than what holds the chamber empty.",
        formula="largest of firing rates to hold and to heat up, and (wall loss + opening loss + work) / share kept "
        "with the poorest film, not below a tenth",
        inputs=("hold_rate", "working_rate", "heat_up_rate"),
        source=ZONE_HEAT_UP,
        near="first",
        lacking="no rate is enough",
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
        "Heat that reaches the work",
        meaning="Share of the gross heat that ends in the work while the chamber works; the rest leaves with the gas, "
        "or keeps the walls hot.",
        formula="heat into the work / firing rate to work",
        inputs=("work_heat", "working_rate"),
        source=ZONE,
    ),
    Answer(
        "fuel_per_hour",
        "need.gas_kg_s",
        "mass_flow",
        "Gas while working",
        meaning="How much gas all burners use in an hour of work, by weight.",
        formula="firing rate to work / gross heating value by weight",
        inputs=("working_rate", "gross_heating_value_mass"),
        source=ZONE,
        near="first",
        instead="metered_per_hour",
    ),
    Answer(
        "metered_per_hour",
        "need.metered_m3_s",
        "gas_flow",
        "Gas while working, by the meter",
        meaning="How much gas of a house line all burners use in an hour of work. A meter counts it so at 15 °C and "
        "sea level. None for propane and butane, which go by weight.",
        formula="firing rate to work / gross heating value",
        inputs=("working_rate", "gross_heating_value", "fuel", "fuel_blend"),
        source=ZONE,
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

REACHED_ANSWERS = (
    Answer(
        "gas_leaves",
        "reached.gas_K",
        "temperature",
        "Gas leaves at",
        meaning="Temperature of the gas in the chamber and out of its opening, all burners at high fire, walls "
        "at the chamber temperature.",
        formula="temperature at which the gas gives the walls the heat that it leaves in the chamber",
        inputs=(*IN_ZONE, "firing_rate_gross", "burner_count"),
        source=ZONE,
        near="bench",
    ),
    Answer(
        "heat_kept",
        "reached.kept",
        "fraction",
        "Heat kept at high fire",
        meaning="Share of the gross heat that stays in the chamber, walls at the chamber temperature: for walls, "
        "opening and work. The rest leaves with the gas.",
        formula="(enthalpy of gas and air - enthalpy of the flue gas as it leaves) / gross heating value",
        inputs=("gas_leaves", "available_heat"),
        source=ZONE,
    ),
    Answer(
        "reached_high_empty",
        "reached.high_empty_K",
        "temperature",
        "Temperature reached at high fire, empty",
        meaning="Temperature of the walls when all burners stay at high fire with nothing inside. The lining "
        "must stand it when the smith looks away.",
        at_most=True,
        formula="temperature at which walls and opening lose what the gas leaves in the chamber",
        inputs=AT_RATE,
        source=ZONE,
        near="first",
    ),
    Answer(
        "reached_high_work",
        "reached.high_work_K",
        "temperature",
        "Temperature reached at high fire, with work",
        meaning="Temperature of the walls when all burners stay at high fire while work goes through.",
        formula="temperature at which walls, opening and work take what the gas leaves in the chamber",
        inputs=(*AT_RATE, *WORK),
        source=ZONE,
    ),
    Answer(
        "reached_low_empty",
        "reached.low_empty_K",
        "temperature",
        "Temperature reached at low fire, empty",
        meaning="Temperature of the walls when all burners stay turned down to low fire with nothing inside.",
        formula="temperature at which walls and opening lose what the gas leaves in the chamber",
        inputs=(*AT_RATE, "low_fire"),
        source=ZONE,
        near="bench",
    ),
    Answer(
        "reached_low_work",
        "reached.low_work_K",
        "temperature",
        "Temperature reached at low fire, with work",
        meaning="Temperature of the walls when all burners stay turned down to low fire while work goes through.",
        formula="temperature at which walls, opening and work take what the gas leaves in the chamber",
        inputs=(*AT_RATE, *WORK, "low_fire"),
        source=ZONE,
    ),
    Answer(
        "heat_up_takes",
        "fired_heat_up.time_s",
        "time",
        "Heating up takes",
        meaning="From cold to the chamber temperature, empty: at the lighting rate until the walls glow, as the"
        " lighting card has it, then all burners at high fire; in a chamber worked too cool to glow at what the card "
        "leads to, from the first. None when they never get it there or the"
        " chamber is closed. No range when they may not, because the gas gives off its heat badly.",
        formula="time after which the walls, heated by the gas step by step, are hot",
        inputs=(*AT_RATE, "chamber_temperature", "heat_up_waits"),
        source=ZONE_HEAT_UP,
        near="bench",
    ),
    Answer(
        "heat_up_waits",
        "fired_heat_up.waits_s",
        "time",
        "Heating up at the lighting rate",
        meaning="The first part of heating up: at the lighting rate, until the walls glow, [1400 °F|760 °C], "
        "and the fire may be turned up. None in a chamber worked cooler, which is turned up once it burns steadily. "
        "Where no lighting rate is safe it is at low fire.",
        formula="time after which the walls, heated by the gas of the lighting mixture step by step, glow",
        inputs=tuple(dict.fromkeys((*AT_RATE, "chamber_temperature", "low_fire", *RESTS_ON))),
        source=ZONE_HEAT_UP,
        near="bench",
        digits=2,
    ),
    Answer(
        "chamber_pressure",
        "back_pressure.opening_Pa",
        "pressure",
        "Pressure in the chamber",
        meaning="Pressure in the chamber over that of the shop, at high fire. It pushes the flue gas of all "
        "burners out of the opening. None for a chamber as good as closed.",
        formula="(flow of flue gas / (discharge x opening))² / (2 x density as it leaves)",
        inputs=("gas_leaves", "opening_area", "opening_depth", "gas_flow", "air_fuel_ratio_mass", *FUEL, "altitude"),
        source=ORIFICE & ZONE,
        near="bench",
    ),
    Answer(
        "chamber_lit",
        "lit_length.share",
        "fraction",
        "Chamber lit",
        meaning="Share of the chamber's longer side that fire falls on, all burners evenly spaced in the roof. Gas and "
        "glowing walls alone heat the rest. In a model of a chamber [12 in|305 mm] long the hottest place was "
        "[280 °F|157 K] over the coldest with ports along 40 % of it; along 90 % it was [200 °F|112 K].",
        formula="burners x (length of the ports' field + half of the height) / longer side",
        inputs=(
            *CHAMBER,
            "burner_count",
            "body_kind",
            "body_length",
            "body_width",
            "setback",
            "edge_margin",
            "port_diameter",
            "pattern",
            "rows",
            "ports_per_row",
        ),
        source=LIT,
        near="bench",
    ),
    Answer(
        "throughput",
        "throughput.metal_kg_s",
        "mass_flow",
        "Throughput",
        meaning="Metal that the chamber, at its own temperature, can bring to the work temperature each hour. "
        "It is what bars take up, side by side on the floor; or what the spare heat of high fire is "
        "enough for, if that is less.",
        formula="smaller of mass of the bars on the floor / time to heat them, and heat to spare / heat of the metal",
        inputs=(
            "gas_leaves",
            "wall_loss",
            "opening_loss",
            "work_metal",
            "work_temperature",
            "bar_diameter",
            "chamber_temperature",
            "ambient_temperature",
            *CHAMBER,
        ),
        source=BARS & ZONE,
        near="bench",
    ),
)

ASPIRATED_ANSWERS = (
    Answer(
        "aspirated_equivalence_ratio",
        "aspirated.equivalence_ratio",
        "mixture",
        "Aspirated: mixture",
        meaning="Mixture that the gas jet makes with the air it pulls into its throat; above 1 it pulls too little.",
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
    *REACHED_ANSWERS,
    *ASPIRATED_ANSWERS,
)

CANNOT = (
    "No firing rate brings the chamber to {chamber:temperature}: the flame is not hot enough to give it what it loses."
)
CANNOT_SURE = (
    "Most likely no fire brings the chamber to {chamber:temperature}: one of {best:power} does, but only when the gas "
    "gives off its heat well. Lower the chamber temperature, or bring the mixture nearer to 1."
)

CHECKS = (
    Check(
        "flame_holds",
        "fraction",
        "Heat left by the flame",
        harm="rework",
        source=ZONE & LIMITS,
        cases={
            "no_flame": "No flame was found for this mixture of gas and air: move the mixture towards 1.",
            "stop": "The flame cannot hold {chamber:temperature}: at {flame:temperature} it would leave nothing in the "
            "chamber. Lower the chamber temperature, or bring the mixture nearer to 1.",
            "perhaps": "The flame may not hold {chamber:temperature}: when the gas gives off its heat badly, it is "
            "not hot enough. Lower the chamber temperature, or bring the mixture nearer to 1.",
            "too_little": "The flame cannot hold {chamber:temperature}: at {flame:temperature} it is not hot enough "
            "to give the walls what they lose. Lower the chamber temperature, or bring the mixture nearer to 1.",
            "caution": "At {chamber:temperature} only {available:fraction} of the heat in the gas stays in the "
            "chamber, and a small slip of the mixture loses that. Lower the chamber temperature, or bring the mixture "
            "nearer to 1.",
            "good": "At {chamber:temperature} {available:fraction} of the heat in the gas stays in the chamber.",
            "by_opening": "Most of what it must give goes out of the opening: make that smaller.",
            "by_walls": "Most of what it must give goes through the walls: line them better.",
        },
    ),
    Check(
        "mixture",
        "mixture",
        "Mixture",
        harm="danger",
        source=PRACTICE,
        cases={
            "very_rich": "Far too rich: beyond {richest:g} much of the gas burns only where it meets air, at the door "
            "and in your face, and what leaves is poison. Make the mixture leaner. Only who wants so rich a fire for "
            "the work sets reducing on purpose.",
            "very_rich_wanted": "Very rich, as wished: beyond {richest:g} much of the gas burns only where it meets "
            "air, at the door. Keep face and hands out of that flame, and do not fire without a hood that draws it "
            "outdoors.",
            "may_be_very_rich": "Rich, and a slip of the hand as the burner gets hot brings it to {most:.2f}: beyond "
            "{richest:g} much of the gas burns only where it meets air, at the door and in your face. Make the mixture "
            "leaner. Only who wants so rich a fire for the work sets reducing on purpose.",
            "lean": "Lean: {excess:fraction} more air than needed. It scales the work and carries heat out of the "
            "door: raise the mixture to {leanest:g} or more.",
            "oxidising": "A little lean, {excess:fraction} more air than needed: the work scales somewhat.",
            "neutral": "Neutral mixture, next to nothing left over; a small slip makes it rich.",
            "reducing": "Rich: the air is too little for all of the gas, and the rest burns at the door or not at all.",
            "waits": BLOWER_FIRST,
        },
    ),
    Check(
        "carbon_monoxide",
        "gas_share",
        "Carbon monoxide",
        harm="danger",
        source=FREEZING & SLIP & CO_OF_APPLIANCES & BY_EYE,
        cases={
            "good": "As set, the gas that leaves holds {co:gas_share} carbon monoxide; {most:gas_share} at most, when "
            "the mixture slips to {richest:mixture} and the gas is chilled at once. A cold or lifted flame makes more: "
            "draw it outdoors, and hang a carbon monoxide alarm all the same.",
            "note": "The gas leaves as hot as {leaves:temperature}, and holds carbon monoxide, a deadly poison "
            "without smell. As set it is {co:gas_share}; a little richer and cooled slowly, {slipped:gas_share}. With "
            "the burner hot, the mixture at {richest:mixture} and the gas chilled at once, it is {most:gas_share}. A "
            "gas appliance in a house may make {usual:gas_share}. Draw it outdoors under a hood, and hang a carbon "
            "monoxide alarm: if all of it stayed in the room, {fresh:air_flow} of fresh air, the burner hot, would "
            "hold the "
            "{day:gas_share 2}[| (in the EU {eu_day:gas_share 2})] that a working day allows.",
            "chilled": "The mixture is {set:mixture 3} as set; the burner hot, a hand may have it at "
            "{richest:mixture}. The gas that then leaves, chilled at once, holds {most:gas_share} carbon monoxide, a "
            "deadly poison without smell. That is more than ten times the {usual:gas_share} that a gas appliance in a "
            "house may make; cooled slowly it would be {slipped:gas_share}. If all of it stayed in the room, "
            "{fresh:air_flow} of fresh air, the burner hot, would hold the "
            "{day:gas_share 2}[| (in the EU {eu_day:gas_share 2})] that a working day allows. Make the mixture "
            "leaner or burn less; draw it outdoors under a hood, and hang a carbon monoxide alarm.",
            "caution": "The mixture need only slip {slip:g} richer, and the gas that leaves holds carbon monoxide, a "
            "deadly poison without smell: {slipped:gas_share} however slowly it cools, where it is {co:gas_share} as "
            "set. With the burner hot, the mixture at {richest:mixture} and the gas chilled at once, it is "
            "{most:gas_share}. A gas appliance in a house may make {usual:gas_share}. If all of it stayed in the "
            "room, {fresh:air_flow} of fresh air, the burner hot, would hold the "
            "{day:gas_share 2}[| (in the EU {eu_day:gas_share 2})] that a working day allows. Make the "
            "mixture leaner; draw it outdoors under a hood, and hang a carbon monoxide alarm.",
            "rich": "Rich: the gas that leaves holds {co:gas_share} carbon monoxide, a deadly poison without smell, "
            "and {most:gas_share} when the mixture slips to {richest:mixture}, the burner hot; if all of it stayed in "
            "the room, {fresh:air_flow} of fresh air, the burner hot, would hold the "
            "{day:gas_share 2}[| (in the EU {eu_day:gas_share 2})] that a working day allows. Draw "
            "it outdoors under a hood, hang a carbon monoxide alarm, never run this in a closed room. A leaner "
            "mixture makes far less.",
            "blend": "As set for the mean of the blend, its gases come to {first:.2f} and {last:.2f}; the richest is "
            "in the most.",
            "meter": "A flue-gas meter, not an alarm, lets you hold the mixture to {slip:g}. Set by the look of the "
            "flame it may be anything from {eye_lean:.2f} to {eye_rich:.2f}: up to {eye:gas_share 2}.",
            "goes_out": "This mixture does not burn cold: gas leaves unburnt, with carbon monoxide, a deadly poison "
            "without smell. How much is not known. Bring the mixture nearer to 1.",
            "unknown": "No flame was found, so nothing is known of the carbon monoxide, a deadly poison without smell. "
            "Draw what leaves outdoors under a hood, hang a carbon monoxide alarm, never run this in a closed room.",
            "waits": BLOWER_FIRST,
        },
    ),
    Check(
        "lining_limit",
        "temperature",
        "Lining against its limit",
        harm="damage",
        source=SERVICE_LIMITS & ZONE,
        cases={
            "good": "Every layer stays below its service limit; nearest is layer {layer} ({material}): "
            "{hot:rough_temperature} of {most:rough_temperature}.",
            "caution": "Layer {layer} ({material}) gets {hot:rough_temperature} on its hot side, hardly below its "
            "limit of {most:rough_temperature}: a hot spot shrinks or cracks it. Put more or a better insulating "
            "layer before it, or choose a material with a higher limit.",
            "class": "Layer {layer} ({material}) gets {hot:rough_temperature} on its hot side, above the "
            "{most:rough_temperature} that it stands day after day, below its class, {named:rough_temperature}. It "
            "shrinks slowly and gaps open: look at it after each week of work. Better put more before it, or choose "
            "a material with a higher limit.",
            "cooler": "Or run it cooler.",
            "left_low": "Left empty at low fire, layer {layer} ({material}) may reach {hot:rough_temperature}, above "
            "its limit of {most:rough_temperature}. Line it better, or turn down further.",
            "left_low_far": "Left empty at low fire, layer {layer} ({material}) may reach {hot:rough_temperature}, "
            "above its limit of {most:rough_temperature}, and at high fire far above it within minutes. Line it "
            "better, or use a smaller burner.",
            "left_high": "Left empty at high fire, layer {layer} ({material}) may reach {hot:rough_temperature}, "
            "above its limit of {most:rough_temperature}, as in nearly every forge: turn down once hot, if the "
            "lighting card allows it.",
            "left_high_far": "Left empty at high fire, layer {layer} ({material}) may reach {hot:rough_temperature}, "
            "far above its limit of {most:rough_temperature}: it shrinks, cracks or melts. Never leave high fire on an "
            "empty chamber. Use a smaller burner, or a lining with a higher limit.",
            "left_high_cool": "High fire is to heat up with: left on with the chamber empty, it brings layer {layer} "
            "({material}) to {hot:rough_temperature}, above its limit of {most:rough_temperature}. Turn down when the "
            "chamber has its {chamber:temperature}, and do not leave it before.",
            "after": "From {chamber:temperature}, hot all through, it can be past that limit in {after:time 1}.",
            "stop": "Layer {layer} ({material}) gets {hot:rough_temperature} on its hot side, above its limit of "
            "{most:rough_temperature}: it shrinks, cracks or melts. Put more or a better insulating layer before it, "
            "or choose a material with a higher limit.",
        },
    ),
    Check(
        "low_fire_drift",
        "temperature",
        "Chamber left at low fire",
        harm="damage",
        source=PRACTICE & ZONE,
        cases={
            "good": "Left empty at low fire, {low:power} in all, the chamber ends at {reached:temperature}; it may be "
            "{most:temperature}. {hold:power} would hold {chamber:temperature}.",
            "note": "Left empty at low fire, the chamber goes on from {chamber:temperature} to {reached:temperature}, "
            "maybe {most:temperature}, as nearly every forge does: {share:fraction} of high fire would hold it. Stay "
            "with it, or shut it off.",
            "caution_auto": "Left empty at low fire, the chamber goes on from {chamber:temperature} to "
            "{reached:temperature}, maybe {most:temperature}. {share:fraction} of high fire would hold it: turn down "
            "further where flashback allows it, or allow more time to heat up, which makes the burner smaller.",
            "caution": "Left empty at low fire, the chamber goes on from {chamber:temperature} to "
            "{reached:temperature}, maybe {most:temperature}. {share:fraction} of high fire would hold it: turn down "
            "further where flashback allows it, or use a smaller burner.",
            "pilot": "Its pilot's {pilot:power 2} is not in that and burns on: with it the chamber may end at "
            "{with_pilot:temperature}.",
        },
    ),
    Check(
        "chamber_fit",
        "ratio",
        "Burner in the chamber's wall",
        harm="rework",
        source=GEOMETRY
        & Source("a flat face on a quarter of a round wall at most; lining left round a hole", "common practice"),
        cases={
            "roof": "It stands in the roof, {wall_long:size} by {wall_wide:length}.",
            "side": "It stands in a side wall, {wall_long:size} by {wall_wide:length}.",
            "end": "It stands in an end wall, {wall_long:size} by {wall_wide:length}.",
            "round": "It stands in the round wall, {wall_long:length} long.",
            "lid": "It stands in an end of the chamber, {wall_long:length} across.",
            "one": "Its ports look into the chamber; its hole, {long:size} by {wide:length}, leaves {keep:length} of "
            "lining or more round it.",
            "several": "The ports of all {burners} look into the chamber; their holes, each {long:size} by "
            "{wide:length}, leave {keep:length} of lining or more round each, twice that between two.",
            "over": "The hole runs {behind:length} behind the lining of the walls beside it: this wall lies over "
            "them, out to the shell.",
            "body": "No wall of the chamber takes the body: its ports must look in, and {keep:length} of lining "
            "stays round its hole, {long:size} by {wide:length}. The best wall is {wall_long:size} by "
            "{wall_wide:length}, with the linings beside it {out_long:size} by {out_wide:length}. Make the chamber "
            "larger or the burner smaller.",
            "crowded": "No wall of the chamber takes {burners} bodies: their ports must look in, and {keep:length} of "
            "lining stays round each hole, {long:size} by {wide:length}. The best wall is {wall_long:size} by "
            "{wall_wide:length}, with the linings beside it {out_long:size} by {out_wide:length}. Put them in several "
            "walls, use fewer, or make the chamber longer.",
            "stop": "The face, {window_long:size} by {window_wide:length}, is larger than every wall of the chamber, "
            "the best {wall_long:size} by {wall_wide:length}: it does not fire into it. Make the chamber larger or "
            "the burner smaller.",
        },
    ),
    Check(
        "chamber_pressure",
        "pressure",
        "Way out for the burnt gas",
        harm="danger",
        source=ORIFICE & PRACTICE,
        cases={
            "closed": "A closed chamber has nowhere to let the burnt gas out. Give it an opening.",
            "closed_enough": "A closed chamber has nowhere to let the burnt gas out. Give it an opening of "
            "{enough:area} or more.",
            "choked": "An opening of {opening:area} is as good as none: more than {most:pressure} would have to push "
            "the burnt gas out. Open it wider.",
            "choked_enough": "An opening of {opening:area} is as good as none: more than {most:pressure} would have to "
            "push the burnt gas out. Open {enough:area} or more.",
            "good": "The chamber stands {pressure:pressure} above the shop; from [0.1 in H₂O|0.25 mbar] flame blows "
            "out of every joint.",
            "caution": "The chamber stands {pressure:pressure} above the shop, {as_set:pressure} of it by the back "
            "pressure you set: from [0.1 in H₂O|0.25 mbar] flame and carbon monoxide blow out of every joint. Take "
            "away what holds the burnt gas back.",
            "stop": "The chamber stands {pressure:pressure} above the shop, {as_set:pressure} of it by the back "
            "pressure you set: from {torches:pressure} no joint is tight, and flame and carbon monoxide shoot out of "
            "door and joints. Take away what holds the burnt gas back.",
            "caution_alone": "The chamber stands {pressure:pressure} above the shop: from [0.1 in H₂O|0.25 mbar] "
            "flame and carbon monoxide blow out of every joint. No opening in its walls is enough for so much fire. "
            "Burn less, or make the chamber larger.",
            "stop_alone": "The chamber stands {pressure:pressure} above the shop: from {torches:pressure} no joint is "
            "tight, and flame and carbon monoxide shoot out of door and joints. No opening in its walls is enough for "
            "so much fire. Burn less, or make the chamber larger.",
            "stop_enough": "The chamber stands {pressure:pressure} above the shop: from {torches:pressure} no joint is "
            "tight, and flame and carbon monoxide shoot out of door and joints. Open {enough:area} or more, or burn "
            "less.",
            "caution_enough": "The chamber stands {pressure:pressure} above the shop: from [0.1 in H₂O|0.25 mbar] "
            "flame and carbon monoxide blow out of every joint. Open {enough:area} or more, or burn less.",
        },
    ),
    Check(
        "throughput",
        "mass_flow",
        "Work rate against what the chamber can heat",
        harm="rework",
        lit=True,
        source=BARS & ZONE,
        # Bars on the floor, one or several, take up no more; or the fire has no more to spare.
        cases={
            "good.one": "{asked:mass_flow} can be heated: one bar of {bar:length} on the floor takes up heat for "
            "{low:mass_flow} to {high:mass_flow}.",
            "good.several": "{asked:mass_flow} can be heated: {bars} bars of {bar:length} on the floor take up heat "
            "for {low:mass_flow} to {high:mass_flow}.",
            "good.fire": "{asked:mass_flow} can be heated: at high fire there is heat to spare for {low:mass_flow} to "
            "{high:mass_flow}.",
            "caution.one": "{asked:mass_flow} may be out of reach: one bar of {bar:length} on the floor takes up heat "
            "for {low:mass_flow} to {high:mass_flow}, however much gas burns. Put less work through, make the chamber "
            "larger, or run it hotter.",
            "caution.several": "{asked:mass_flow} may be out of reach: {bars} bars of {bar:length} on the floor take "
            "up heat for {low:mass_flow} to {high:mass_flow}, however much gas burns. Put less work through, make "
            "the chamber larger, or run it hotter.",
            "caution.fire": "{asked:mass_flow} may be out of reach: at high fire there is heat to spare for "
            "{low:mass_flow} to {high:mass_flow}.",
            "stop.short": "{asked:mass_flow} is out of reach of this fire: at its best it has heat to spare for "
            "{high:mass_flow}.",
            "takes": "It takes {takes:power} at the least.",
            "more": "Raise the firing rate, use more burners, or put less work through.",
            "more_auto": "Set a larger firing rate than auto takes, or put less work through.",
            "takes_none": "No firing rate heats so much here: put less work through, or make the chamber larger.",
            "stop.fire": "{asked:mass_flow} is out of reach: high fire has no heat to spare for work. Raise the firing "
            "rate, use more burners, or make the chamber smaller.",
            "stop.one": "{asked:mass_flow} is out of reach: one bar of {bar:length} on the floor takes up heat for "
            "{low:mass_flow} to {high:mass_flow}, however much gas burns. Put less work through, make the chamber "
            "larger, or run it hotter.",
            "stop.several": "{asked:mass_flow} is out of reach: {bars} bars of {bar:length} on the floor take up heat "
            "for {low:mass_flow} to {high:mass_flow}, however much gas burns. Put less work through, make the chamber "
            "larger, or run it hotter.",
            "fire_sooner": "This fire ends it sooner: it has heat to spare for {other_low:mass_flow} to "
            "{other_high:mass_flow}.",
            "fire_too": "This fire is not enough either: it has heat to spare for {other_low:mass_flow} to "
            "{other_high:mass_flow}.",
            "bars_too": "With more fire the bars on the floor bind: they take up heat for {other_low:mass_flow} to "
            "{other_high:mass_flow}.",
            "never": "Work never gets to {work:temperature} in a chamber at {chamber:temperature}: it must be hotter "
            "than the work. Raise the chamber temperature or lower that of the work.",
            "no_bar": "A bar of {bar:length} does not fit on the floor. Choose a thinner bar or make the chamber "
            "wider.",
        },
    ),
    Check(
        "bar_goes_in",
        "length",
        "Bar through the opening",
        harm="rework",
        lit=True,
        source=GEOMETRY,
        cases={
            "good": "A bar of {bar:length} goes in: an opening of {opening:area} lets {square:length} through when "
            "square, {most:length} when round.",
            "caution": "A bar of {bar:length} goes in only by a round opening: one of {opening:area} lets "
            "{square:length} through when square. Open it wider, or choose a thinner bar.",
            "stop": "A bar of {bar:length} does not go in: an opening of {opening:area} in this chamber lets "
            "{most:length} through at most. Choose a thinner bar, or open it wider.",
            "low": "A bar of {bar:length} does not go in: the chamber is {high:length} high. Choose a thinner bar, or "
            "make the chamber higher.",
        },
    ),
    Check(
        "melting",
        "temperature",
        "Work that melts",
        harm="danger",
        source=MELTING & PRACTICE,
        cases={
            "good": "The work stays solid: it begins to melt at {solidus:temperature}.",
            "left": "Work left in the chamber melts: it begins to at {solidus:temperature}, and the chamber has "
            "{chamber:temperature}. Take it out in time, or run the chamber cooler.",
            "mush": "At {work:temperature} the work is half molten, neither forged nor poured: it begins to melt at "
            "{solidus:temperature} and is liquid at {liquidus:temperature}. Heat it less, or melt it in a crucible.",
            "far": "It melts at {liquidus:temperature}, far below {work:temperature}: it runs over the floor unless it "
            "stands in a crucible, and so hot it burns and takes up gas. Heat it less.",
            "pot": "It melts: heat it in a crucible, with dry tools and dry moulds, for a drop of water under molten "
            "metal throws it about.",
            "zinc": "Zinc boils out of brass, and of bronze with zinc in it: its white fume makes ill, so melt under a "
            "hood that draws.",
        },
        cures=(("work_temperature", "lower"), ("chamber_temperature", "lower"), ("work_metal", "choose")),
    ),
    Check(
        "shell_touch",
        "temperature",
        "Shell to the touch",
        harm="danger",
        source=TOUCH,
        cases={
            "good": "The shell gets {shell:temperature}, below the {touch:rough_temperature} that burn skin at "
            "a touch.",
            "note": "The shell gets {shell:temperature}, as that of any hot forge; above "
            "{touch:rough_temperature} bare metal burns skin at a touch. Guard it, and keep hose, cable and anything "
            "that burns away from it.",
            "caution": "The shell gets {shell:temperature}, and above {scorch:rough_temperature} it chars what "
            "touches it. Line it thicker; guard it, and keep hose, cable and anything that burns well away.",
        },
        cures=(("lining", "choose"),),
    ),
    Check(
        "rate_for_need",
        "power",
        "Firing rate against the need",
        harm="rework",
        source=BALANCE,
        # Of one burner or of several; heating up or working decides.
        cases={
            "cannot": CANNOT,
            "cannot_sure": CANNOT_SURE,
            "auto.heat-up.one": "The firing rate is taken from the chamber: heating up in {time:time}, the time at "
            "the rate to light at not counted, takes {needed:power}. Working takes {working:power}.",
            "auto.heat-up.several": "The firing rate is taken from the chamber: heating up in {time:time}, the time "
            "at the rate to light at not counted, takes {needed:power}, {each:power} for each of {burners} burners. "
            "Working takes {working:power}.",
            "auto.working.one": "The firing rate is taken from the chamber: working takes {working:power}, or "
            "{needed:power} when the gas gives off its heat badly.",
            "auto.working.several": "The firing rate is taken from the chamber: working takes {working:power}, or "
            "{needed:power} when the gas gives off its heat badly, {each:power} for each of {burners} burners.",
            "good.heat-up.one": "{installed:power} is enough: heating up in {time:time}, the time at the rate to "
            "light at not counted, takes {needed:power}.",
            "good.heat-up.several": "{installed:power} is enough: heating up in {time:time}, the time at the rate to "
            "light at not counted, takes {needed:power}, {each:power} for each of {burners} burners.",
            "later.one": "{installed:power} heats up later than in {time:time}, which takes {needed:power}; the time "
            "at the rate to light at is not counted. Working takes {working:power}.",
            "later.several": "{installed:power} heats up later than in {time:time}, which takes {needed:power}, "
            "{each:power} for each of {burners} burners; the time at the rate to light at is not counted. Working "
            "takes {working:power}.",
            "good.working.one": "{installed:power} is enough: working takes {working:power}, or {needed:power} when "
            "the gas gives off its heat badly.",
            "good.working.several": "{installed:power} is enough: working takes {working:power}, or {needed:power} "
            "when the gas gives off its heat badly, {each:power} for each of {burners} burners.",
            "never.auto.one": "The firing rate is taken from the chamber. Working takes {working:power}; heating up "
            "in {time:time} takes more than burns well in it, as the heat-up says.",
            "never.auto.several": "The firing rate is taken from the chamber. Working takes {working:power}, "
            "{each:power} for each of {burners} burners; heating up in {time:time} takes more than burns well in it, "
            "as the heat-up says.",
            "never.set.one": "{installed:power} is enough to work, which takes {working:power}; heating up in "
            "{time:time} takes more than burns well in it, as the heat-up says.",
            "never.set.several": "{installed:power} is enough to work, which takes {working:power}, {each:power} for "
            "each of {burners} burners; heating up in {time:time} takes more than burns well in it, as the heat-up "
            "says.",
            "never.too_little": "{installed:power} may be too little to work, which takes up to {working:power}.",
            "never": "Heating up in {time:time} takes more than burns well in it, as the heat-up says.",
            "more": "Raise the firing rate or use more burners, or put less work through.",
            "more_auto": "Set a larger firing rate than auto takes, or put less work through.",
            "far_more": "It is far more than that; auto would take the rate from the chamber.",
            "caution.heat-up.one": "{installed:power} is too little: heating up in {time:time} takes {needed:power}. "
            "Raise the firing rate or use more burners, or allow more time.",
            "caution.heat-up.several": "{installed:power} is too little: heating up in {time:time} takes "
            "{needed:power}, {each:power} for each of {burners} burners. Raise the firing rate or use more burners, or "
            "allow more time.",
            "caution.working.one": "{installed:power} is too little: working takes {working:power}. Raise the firing "
            "rate or use more burners, or put less work through.",
            "caution.working.several": "{installed:power} is too little: working takes {working:power}, and each of "
            "{burners} burners must give {each:power} to be sure of it. Raise the firing rate or use more burners, or "
            "put less work through.",
            "perhaps": "{installed:power} may be too little: working takes {working:power}, or {needed:power} when the "
            "gas gives off its heat badly.",
            "at_limit": "This work is near the most that the chamber can ever heat: {installed:power} does it when the "
            "gas gives off its heat well, and {sure:power} when it does not, for more fire mostly leaves by the "
            "opening. Put less work through, or make the chamber larger.",
            "perhaps_never": "{installed:power} may be too little: working takes {working:power}, but when the gas "
            "gives off its heat badly no rate is enough. Put less work through or lower the chamber temperature.",
            "no_fire": "Working would take {working:power}, but no fire brings {asked:mass_flow} through this chamber: "
            "the bars on its floor take up heat for about {heats:mass_flow}. Put less work through.",
            "works_well": "Most likely no firing rate is enough for so much work at {chamber:temperature}: one of "
            "{best:power} is, but only when the gas gives off its heat well. Put less work through or lower the "
            "chamber temperature.",
            "no_work": "No firing rate keeps the chamber at {chamber:temperature} with so much work in it: the gas "
            "cannot give off so much heat. Put less work through or lower the chamber temperature.",
            "stop": "{installed:power} cannot even hold the empty chamber at {chamber:temperature}, which takes "
            "{hold:power}: raise the firing rate or use more burners, lower the chamber temperature, close the opening "
            "or line it thicker.",
        },
    ),
    Check(
        "heat_up_reach",
        "power_per_volume",
        "Heat-up",
        harm="damage",
        lit=True,
        source=PRACTICE,
        cases={
            "cannot": CANNOT,
            "cannot_sure": CANNOT_SURE,
            "never": "No fire heats the chamber to {chamber:temperature} in {time:time}: the walls cannot take up "
            "heat so fast. Allow more time, or use a lighter lining.",
            "good": "Heating up in {time:time}, the time at the rate to light at not counted, is within what so large "
            "a chamber can burn.",
            "note": "Heating up may take longer than {time:time}: when the gas gives off its heat badly, it asks for "
            "more than the {most:power_per_volume} of chamber that burn well in one.",
            "caution": "Heating up in {time:time} cracks dense lining; {shortest:time} or more is usual.",
            "stop": "Heating up in {time:time} is out of reach: it asks for {asked:power_per_volume} of chamber, and "
            "no more than {most:power_per_volume} burns well in one. Allow more time, or use a lighter lining.",
            "by_opening": "Much of it goes out of the opening: make that smaller.",
        },
    ),
    Check(
        "lit_length",
        "fraction",
        "Length of the chamber under fire",
        harm="rework",
        source=LIT,
        cases={
            "good": "Fire falls on {share:percent 0} of the chamber's {run:length}; gas and walls carry it to the "
            "rest.",
            "note": "Fire falls on {share:percent 0} of the chamber's {run:length}, {low:percent 0} to "
            "{high:percent 0}: the ends stay colder than the middle. Work goes under the ports.",
            "caution": "Fire falls on {share:percent 0} of the chamber's {run:length}, {low:percent 0} to "
            "{high:percent 0}. What is told of the whole chamber holds under the ports; the rest stays far colder. Use "
            "more burners or a longer face, or make the chamber shorter.",
            "good_across": "Fire falls on {share:percent 0} of the chamber's {run:length} across; gas and walls carry "
            "it to the rest.",
            "note_across": "Fire falls on {share:percent 0} of the chamber's {run:length} across, {low:percent 0} to "
            "{high:percent 0}: both sides stay colder than the middle. Work goes under the ports.",
            "caution_across": "Fire falls on {share:percent 0} of the chamber's {run:length} across, {low:percent 0} "
            "to {high:percent 0}. What is told of the whole chamber holds under the ports; the rest stays far colder. "
            "Use burners in two lines or a wider face, or make the chamber narrower.",
        },
    ),
    Check(
        "heat_up_wait",
        "ratio",
        "Heat-up as it is lit",
        harm="comfort",
        source=ZONE_HEAT_UP,
        cases={
            "good": "From cold it takes {takes:time}, {waits:time 2} of it at the rate to light at: {asked:time} were "
            "asked for.",
            "note": "From cold it takes {takes:time}, {times:times 2} times the {asked:time} asked for: until the "
            "walls glow, {waits:time 2}, it stays at the rate to light at.",
            "caution": "From cold it takes {takes:time}, {times:times 2} times the {asked:time} asked for: until the "
            "walls glow, {waits:time 2}, it stays at the rate to light at. Plan for it, line it lighter, or burn more.",
            "good_cool": "From cold it takes {takes:time}, turned up as the lighting card has it: {asked:time} were "
            "asked for.",
            "note_cool": "From cold it takes {takes:time}, turned up as the lighting card has it, {times:times 2} "
            "times the {asked:time} asked for.",
            "caution_cool": "From cold it takes {takes:time}, turned up as the lighting card has it, {times:times 2} "
            "times the {asked:time} asked for. Plan for it, line it lighter, or burn more.",
        },
    ),
    Check(
        "firing_per_volume",
        "power_per_volume",
        "Fire for the chamber's size",
        harm="rework",
        source=PRACTICE,
        # The first stands before each of the others.
        cases={
            "usual": "{found:power_per_volume} of chamber; {low:power_per_volume 2} to {high:power_per_volume 2} is "
            "usual in small forges and furnaces.",
            "cool": "Less is right below a forging heat of {forging:temperature}.",
            "other": "Yours is another: worked out from its walls, its opening and its work this chamber asks for "
            "{asked:power_per_volume}, and that counts.",
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
            "in all the air; at {pressure:gas_pressure} this jet and throat make a mixture of {ratio:.2f}",
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

RATIO = Axis("mixture: lean below 1, rich above", "mixture")

CHARTS = (
    Chart(
        "flame_by_ratio",
        "Flame temperature, by mixture",
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
        "reached_by_rate",
        "Temperature reached, by firing rate",
        Axis("firing rate of all burners", "power"),
        Axis("temperature of the walls", "temperature"),
        (
            Series("empty_band", "empty, from badly to well stirred gas", "band"),
            Series("empty", "empty"),
            Series("work", "with work"),
        ),
        cases={
            "shows": "Left at {installed:power}, the empty chamber ends at {empty:temperature} ({low:temperature} to "
            "{high:temperature}); with work going through, at {work:temperature}.",
            "empty": "Left at {installed:power}, the empty chamber ends at {empty:temperature} ({low:temperature} to "
            "{high:temperature}).",
            "no_flame": "No flame was found, so nothing gets hot.",
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
            "shows": "After {time:time} the shell has {warm:temperature}, the hot face taken as at the set temperature "
            "from the start: a real fire is behind that. Hot all through it has {shell:temperature}."
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
