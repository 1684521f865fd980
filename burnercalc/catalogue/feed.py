"""The words of the room Air and gas: flow through the burner, blower, jet and cylinder."""

from ..sources import CONTINUITY, DAMKOEHLER, FLASHBACK, LIMITS, PRACTICE, RAOULT, Source
from .forms import Answer, Axis, Chart, Check, Column, Series, Table
from .inputs import HOT_HIGH, HOT_LOW
from .train import TRAIN_WORDS

BAFFLE_GEOMETRY = Source("geometry of the baffle", "calculated")
SCREENS = Source("Taylor and Batchelor 1949, from memory", "memory")
PORTS = Source("Darcy-Weisbach; Shah and London 1978, from memory; Haaland 1983", "memory")
PLATES = Source("Idelchik, perforated plates thin and thick, from memory", "memory")
INLET = Source("Borda-Carnot; entry 0.5 (Crane TP-410)", "published")
SPLIT = Source("tee and elbow by Crane TP-410; halves equal where both legs are alike", "common practice")
PIPE = Source("Darcy-Weisbach, Haaland 1983; Crane TP-410, from memory", "memory")
VALVES = Source("loss coefficients of valves by Crane TP-410, from memory", "memory") & Source(
    "needle valve, strainer, spring of the check valve: common practice", "common practice"
)
SUM = Source("sum of the parts", "memory")
PERRY = Source("Perry's Handbook, perforated-pipe distributors, from memory", "memory")
PLENUM = Source("march of a dividing plenum with full recovery", "memory") & PERRY
STAGNATION = Source("stagnation pressure", "published")
BAFFLE_ESTIMATE = Source("the baffle's part is an estimate", "common practice")
GAS_AT_JET = ("gas_flow", "jet_gas_pressure", "gas_from", "fuel", "fuel_blend", "ambient_temperature", "altitude")
LIMIT = Source("limit is common practice", "common practice")
FAN = Source("fan laws; blower curve as given", "published")
THIN_PLATE = Source("Idelchik, thin plate, from memory", "memory")
JET = Source("compressible flow of an ideal gas; discharge coefficient as set", "common practice")
DRILLS = Source("drill sizes as sold", "published")
HOT_PORTS = Source(
    "momentum of a heated stream (published); how hot it gets is common practice, see the block", "common practice"
)
GAS_DYNAMICS = Source("gas dynamics", "published")
VESSEL = Source(
    "heat through the wetted wall; coefficient fitted to a published table of cylinders of [100 lb|45 kg] (an "
    "engine-generator manual of 2011); sizes of cylinders from memory",
    "memory",
)
FUEL_COST = Source("gas flow from the gross heating value", "calculated")

COLD_MIXTURE = ("mixture_flow", "equivalence_ratio", "fuel", "fuel_blend", "ambient_temperature", "altitude")
BLOWER = (
    "blower_curve",
    "blower_shutoff_pressure",
    "blower_free_flow",
    "blowers",
    "burner_count",
    "mix_pipe",
    "ambient_temperature",
    "altitude",
)
AIR_SYSTEM = ("air_flow", "mixture_flow", "mixture_pressure", *BLOWER)
JET_STATE = (
    "fuel",
    "fuel_blend",
    "gas_pressure",
    "jet_discharge_coefficient",
    "mixture_pressure",
    "ambient_temperature",
    "altitude",
)
# What a burner that was set cold goes on with when it is hot.
SET_COLD = tuple(dict.fromkeys((*AIR_SYSTEM, *JET_STATE, "jet", "equivalence_ratio")))
FUEL = ("fuel", "fuel_blend")
LIQUID = (
    "cylinder_fill",
    "ambient_temperature",
    "altitude",
    "regulator_inlet_pressure",
    "gas_pressure",
    "gas_from",
    *FUEL,
)
CYLINDER = ("cylinder", "tank_diameter", "tank_length", "cylinder_count", *LIQUID)
RUN = (*CYLINDER, "cylinder_left")
BLEND = tuple(key for key in RUN if key != "fuel")  # a fuel by its name is pure

ANSWERS = (
    Answer(
        "baffle_open_fraction",
        "baffle_plate.open_fraction",
        "fraction",
        "Open share of the baffle",
        meaning="Area of the baffle's holes over the area of its plate, which spans the whole plenum.",
        formula="holes x pi x diameter squared / 4 / (inside width x inside length / cos(bend / 2)); flat in a round "
        "body",
        inputs=(
            "baffle_holes",
            "baffle_hole_diameter",
            "baffle_bend_angle",
            "body_kind",
            "body_width",
            "body_length",
            "wall",
            "cap_thickness",
        ),
        source=BAFFLE_GEOMETRY,
    ),
    Answer(
        "baffle_unevenness_left",
        "baffle_plate.unevenness_left",
        "fraction",
        "Uneven speed that the baffle lets through",
        meaning="How much of a fast spot before the baffle is still one behind it: 100 % without a baffle, none the "
        "best. Below zero it comes out slower than the rest.",
        formula="(1 + a - a K) / (1 + a + K) with a = 1.1 / sqrt(1 + K); all of it when K is below 0.7",
        inputs=("baffle_open_fraction", "baffle_thickness", "baffle_hole_diameter"),
        source=SCREENS,
    ),
    Answer(
        "port_pressure_drop",
        "passage.port_Pa",
        "pressure",
        "Pressure over the ports",
        meaning="Pressure that pushes the cold mixture through the ports at high fire.",
        formula="(entry 0.5 + friction over the port's length + exit 1) x velocity head; bore as cast, 0.3 mm rough (a "
        "tenth of the bore at most)",
        inputs=("mixture_velocity_in_port", "port_diameter", "block_thickness", *COLD_MIXTURE),
        source=PORTS,
        near="bench",
    ),
    Answer(
        "baffle_pressure_drop",
        "passage.baffle_Pa",
        "pressure",
        "Pressure over the baffle",
        meaning="Pressure that the baffle takes at high fire.",
        formula="loss of the perforated plate x velocity head onto it",
        inputs=("baffle_open_fraction", "baffle_thickness", "baffle_hole_diameter", *COLD_MIXTURE),
        source=PLATES,
    ),
    Answer(
        "inlet_pressure_drop",
        "resistance.inlet_Pa",
        "pressure",
        "Pressure over the inlet",
        meaning="Pressure lost where the mixture jets out of an inlet pipe, and at a step of pipe size before it.",
        formula="1 x velocity head in the inlet + step from the mix pipe, both with an inlet's part of the flow",
        inputs=("inlet", "inlets", "mix_pipe", *COLD_MIXTURE),
        source=INLET,
    ),
    Answer(
        "split_pressure_drop",
        "resistance.split_Pa",
        "pressure",
        "Pressure over tee and legs",
        meaning="Pressure lost where the mixture splits to two inlets: in the tee, a leg along the back and its elbow. "
        "Nothing with one inlet.",
        formula="60 x friction x velocity head in the mix pipe for the tee + (friction x length / bore + 30 x friction "
        "for the elbow) x velocity head in a leg of the inlet's size with half the flow",
        inputs=("inlets", "inlet_spacing", "inlet", "mix_pipe", *COLD_MIXTURE),
        source=SPLIT,
        may_lack=True,
    ),
    Answer(
        "mix_pipe_pressure_drop",
        "resistance.mix_pipe_Pa",
        "pressure",
        "Pressure over the mix pipe",
        meaning="Pressure lost in the mix pipe with its elbows, counted full of mixture.",
        formula="(friction x length / bore + 30 x friction for each elbow + 0.5 entry) x velocity head",
        inputs=("mix_pipe", "mix_pipe_length", "mix_pipe_elbows", *COLD_MIXTURE),
        source=PIPE,
    ),
    Answer(
        "mixture_pressure",
        "resistance.total_Pa",
        "pressure",
        "Pressure the burner needs",
        meaning="What pushes gas and air of high fire through mix pipe, box and ports: pressure at the start of the "
        "mix pipe, over that of the shop.",
        formula="chamber back pressure, as set and from its opening, + plenum + inlet + tee and legs + mix pipe; the "
        "plenum's is that of ports and baffle, unevenness included",
        inputs=(
            "chamber_back_pressure",
            "chamber_pressure",
            "port_pressure_drop",
            "baffle_pressure_drop",
            "inlet_pressure_drop",
            "split_pressure_drop",
            "mix_pipe_pressure_drop",
            "flow_spread",
        ),
        source=SUM,
        near="first",
    ),
    Answer(
        "flow_spread",
        "shares.spread",
        "fraction",
        "Ports differ by",
        meaning="How much more flows out of the best-fed port than out of the worst-fed, as a share of the mean: the "
        "smaller, the more even the fire.",
        formula="largest - smallest share of flow, from a march along the plenum",
        inputs=(
            "plenum_area",
            "port_area",
            "inlet_position",
            "inlets",
            "port_pressure_drop",
            "baffle_pressure_drop",
            "body_kind",
            "body_length",
            "body_width",
            "wall",
            "port_pitch",
            "pattern",
            "ports_per_row",
            "rows",
            "edge_margin",
        ),
        source=PLENUM,
        near="first",
        aim=("flow_spread", "{limit:percent} or less is even"),
    ),
    Answer(
        "kinetic_energy_ratio",
        "shares.kinetic_ratio",
        "ratio",
        "Stream along the box, its share of the port pressure",
        meaning="Velocity head of the stream along the plenum over the pressure of the ports (with baffle); a tenth or "
        "less is even.",
        formula="density x velocity squared / 2 / pressure over ports and baffle",
        inputs=(
            "plenum_area",
            "port_pressure_drop",
            "baffle_pressure_drop",
            "inlet_position",
            "inlets",
            "flow_spread",
            *COLD_MIXTURE,
        ),
        source=PLENUM,
    ),
    Answer(
        "jet_impingement",
        "inlet_jet.flow_ratio",
        "ratio",
        "Port under the inlet, times its fair share",
        meaning="The most that a port right under the inlet passes, over its fair share, because the inlet's jet blows "
        "on it.",
        formula="sqrt(1 + head of the jet / pressure over the ports); a baffle leaves its share of the jet's velocity; "
        "1 with the inlet at an end",
        inputs=("inlet_area", "port_pressure_drop", "baffle_unevenness_left", "inlet_position", *COLD_MIXTURE),
        source=STAGNATION & BAFFLE_ESTIMATE,
    ),
    Answer(
        "mixing_length_diameters",
        "mixing.diameters",
        "ratio",
        "Mixing length in diameters",
        meaning="Length of the mix pipe over its bore, each elbow counted as five.",
        formula="length / bore + 5 x elbows",
        inputs=("mix_pipe", "mix_pipe_length", "mix_pipe_elbows"),
        source=PRACTICE,
    ),
    Answer(
        "mix_pipe_velocity",
        "mixing.velocity_m_s",
        "speed",
        "Velocity in the mix pipe",
        meaning="Mean speed of the mixture in the mix pipe at high fire.",
        formula="mixture flow at shop temperature and altitude / bore area",
        inputs=("mixture_flow", "mix_pipe", "ambient_temperature", "altitude"),
        source=CONTINUITY,
    ),
    Answer(
        "turbulent_burning_velocity",
        "mixing.flame_m_s",
        "speed",
        "Flame speed in the mix pipe",
        meaning="Mixture as slow as this, at low fire, a flame in the mix pipe comes back against; good to a factor of "
        "two.",
        formula="the larger of two: burning velocity + 2 x velocity swings (a tenth of the pipe velocity at low fire "
        "from Reynolds number 4000, none up to 2300, in proportion between); velocity below which a flame runs back "
        "along the wall of a long cold port as wide as the pipe",
        inputs=("burning_velocity", "mix_pipe_velocity", "mix_pipe", "low_fire"),
        source=DAMKOEHLER & FLASHBACK,
    ),
    Answer(
        "blower_flow",
        "blower.flow_m3_s",
        "air_flow",
        "Air with the damper open",
        meaning="Air at shop temperature that the blower pushes through this burner with no damper, gas in proportion.",
        formula="where the blower's curve crosses the pressure that the burner takes",
        inputs=AIR_SYSTEM,
        source=FAN,
    ),
    Answer(
        "blower_pressure",
        "blower.pressure_Pa",
        "pressure",
        "Pressure with the damper open",
        meaning="Pressure of the blower where it meets the burner with no damper.",
        formula="blower's curve at that flow x density of the air / density of standard air",
        inputs=AIR_SYSTEM,
        source=FAN,
    ),
    Answer(
        "blower_times",
        "blower.times",
        "times",
        "Blower, times the need",
        meaning="Pressure of the blower at high fire over what the burner needs there; below 1 it is too weak.",
        formula="blower's pressure at the air of high fire / pressure the burner needs; 0 when its curve ends before",
        inputs=AIR_SYSTEM,
        source=FAN,
        near="first",
        aim=("blower", "1.2 or more is enough"),
    ),
    Answer(
        "port_pressure_hot",
        "hot_run.port_Pa",
        "pressure",
        "Pressure over the ports, hot",
        meaning="Pressure from plenum to chamber that pushes the mixture of high fire through the ports of the hot "
        "block.",
        formula="heads of entry and exit, 2 x (T2/T1 - 1) for speeding up while it warms, friction of the hotter "
        "mixture",
        inputs=(*HOT_HIGH, "port_wall_temperature"),
        source=HOT_PORTS,
    ),
    Answer(
        "hot_ports_more_high",
        "hot_run.more_high",
        "fraction",
        "Hot ports take more, high fire",
        meaning="Pressure over hot ports beyond that over cold ones, for the same mixture at high fire.",
        formula="hot over cold - 1",
        inputs=(*HOT_HIGH, "port_wall_temperature"),
        source=HOT_PORTS,
        digits=2,
    ),
    Answer(
        "hot_ports_more_low",
        "hot_run.more_low",
        "fraction",
        "Hot ports take more, low fire",
        meaning="Pressure over hot ports beyond that over cold ones, for the same mixture at low fire.",
        formula="hot over cold - 1",
        inputs=(*HOT_LOW, "port_wall_temperature"),
        source=HOT_PORTS,
        digits=2,
    ),
    Answer(
        "mixture_pressure_hot",
        "hot_run.total_Pa",
        "pressure",
        "Pressure the burner needs, hot",
        meaning="Pressure over that of the shop that the mixture needs at the start of the mix pipe at high fire once "
        "the block is hot.",
        formula="as cold, with the pressure over hot ports",
        inputs=("port_pressure_hot", "mixture_pressure", "flow_spread"),
        source=HOT_PORTS,
        near="bench",
    ),
    Answer(
        "blower_times_hot",
        "hot_run.times",
        "times",
        "Blower, times the need, hot",
        meaning="Pressure of the blower at high fire over what the hot burner needs there; below 1 it is too weak.",
        formula="blower's pressure at the air of high fire / pressure the hot burner needs",
        inputs=("blower_times", "mixture_pressure", "mixture_pressure_hot"),
        source=HOT_PORTS & FAN,
        near="bench",
    ),
    Answer(
        "mixture_hot_high",
        "hot_run.mixture_high",
        "mixture",
        "Mixture when hot, high fire",
        meaning="What the mixture of a burner set cold comes to when its ports are hot, gas and damper left alone; "
        "a hand sets it to 0.03. None when the blower is too weak.",
        formula="set ratio x gas through the jet, hot over cold x air past the damper, cold over hot",
        inputs=(*SET_COLD, "mixture_pressure_hot", "damper_open_high", "jet_gas_pressure"),
        source=HOT_PORTS & FAN,
    ),
    Answer(
        "mixture_hot_low",
        "hot_run.mixture_low",
        "mixture",
        "Mixture when hot, low fire",
        meaning="What the mixture of a burner set cold comes to at low fire when its ports are hot, gas and damper "
        "left alone; a hand sets it to 0.03. None when the blower is too weak.",
        formula="set ratio x gas through the jet, hot over cold x air past the damper, cold over hot",
        inputs=(*SET_COLD, "hot_ports_more_low", "damper_open_low", "jet_gas_pressure_low"),
        source=HOT_PORTS & FAN,
    ),
    Answer(
        "hot_drift",
        "hot_run.drift",
        "fraction",
        "Mixture gets richer when hot, by",
        meaning="How much richer a burner set cold gets when its ports are hot, at high or low fire, whichever is "
        "more: set it hot.",
        formula="richer of the two / set ratio - 1",
        inputs=("equivalence_ratio", "mixture_hot_high", "mixture_hot_low"),
        source=HOT_PORTS & FAN,
        near="bench",
    ),
    Answer(
        "damper_open_high",
        "blower.open_high",
        "fraction",
        "Damper open at high fire",
        meaning="Open share of a damper in a pipe of the mix pipe's bore that holds the air of high fire; none when "
        "the blower is too weak.",
        formula="thin plate with the loss of the pressure to spare",
        inputs=AIR_SYSTEM,
        source=THIN_PLATE,
        near="bench",
    ),
    Answer(
        "damper_open_low",
        "blower.open_low",
        "fraction",
        "Damper open at low fire",
        meaning="Open share of a damper in a pipe of the mix pipe's bore that holds the air of low fire; none when the "
        "blower is too weak.",
        formula="thin plate with the loss of the pressure to spare",
        inputs=("low_fire", *AIR_SYSTEM),
        source=THIN_PLATE,
        near="bench",
        digits=2,
    ),
    Answer(
        "orifice_diameter",
        "jet.diameter_m",
        "drill_length",
        "Jet",
        meaning="Hole that passes the gas of high fire at the gas pressure; the band is the discharge coefficient give "
        "or take 0.05, or 1 % once it is proven.",
        formula="sqrt(4 x gas flow / (pi x coefficient x flow of an ideal nozzle per area))",
        inputs=("firing_rate_gross", "jet_proven", *JET_STATE),
        source=JET,
        near="bench",
    ),
    Answer(
        "jet",
        "jet.drill_name",
        "word",
        "Jet drill to use",
        meaning="Drill for the jet: the one set, or else the nearest number or letter drill, as jets are drilled; the "
        "table lists fractions and metric drills too. The pressure of a line cannot be raised: there it is the next "
        "drill that passes the rate even where the discharge coefficient is 0.05 lower.",
        formula="nearest in diameter of number and letter drills, for millimetres of metric ones; for a line the "
        "smallest of them that is not under the hole at its largest",
        inputs=("jet_drill", "orifice_diameter", "fuel", "gas_from"),
        source=DRILLS,
        near="first",
    ),
    Answer(
        "jet_firing_rate",
        "jet.rate_W",
        "power",
        "Rate through the jet drill",
        meaning="Firing rate that the jet drill gives at the gas pressure as set.",
        formula="flow of the jet x gross heating value",
        inputs=("jet", *JET_STATE),
        source=JET,
        near="bench",
    ),
    Answer(
        "jet_gas_pressure",
        "jet.read_Pa",
        "gas_pressure",
        "Gas pressure for high fire",
        meaning="Gas pressure at which the jet drill gives the firing rate, as gauge and lighting card have it.",
        formula="pressure at which the jet passes the gas flow, at the gauge's nearest mark or half mark",
        inputs=("jet", "jet_gauge", "firing_rate_gross", *JET_STATE),
        source=JET,
        near="first",
    ),
    Answer(
        "jet_gas_pressure_low",
        "lighting_steps.low_Pa",
        "gas_pressure",
        "Gas pressure for low fire",
        meaning="Gas pressure at which the jet drill gives low fire, air turned down too, as gauge and lighting card "
        "have it.",
        formula="pressure at which the jet passes the gas of low fire, at the gauge's nearest mark or half mark; the "
        "next above where that may run back",
        inputs=(
            "jet",
            "jet_gauge",
            "small_gauge",
            "low_fire",
            "firing_rate_gross",
            "lighting_gas_pressure",
            "flashback_firing_rate",
            *JET_STATE,
        ),
        source=JET,
        near="bench",
    ),
    Answer(
        "jet_regime",
        "jet.regime",
        "word",
        "Flow in the jet",
        meaning="Choked: the gas leaves at the speed of sound and its flow follows the absolute pressure before the "
        "jet alone.",
        formula="mixture pressure over gas pressure, absolute, below (2 / (k + 1)) to the power k / (k - 1)",
        inputs=("gas_pressure", "mixture_pressure", "fuel", "fuel_blend", "altitude"),
        source=GAS_DYNAMICS,
    ),
    Answer(
        "cylinder_draw_limit",
        "cylinders.draw_W",
        "power",
        "Steady draw of the cylinders",
        meaning="The most fire that the cylinders, filled so, can feed without getting ever colder; none for gas "
        "from a line.",
        formula="wall coefficient x wetted wall x (air - liquid temperature at the regulator's least inlet pressure) x "
        "heating value / heat of vaporisation",
        inputs=CYLINDER,
        source=VESSEL,
        near="bench",
    ),
    Answer(
        "cylinder_draw_last",
        "cylinders.last_draw_W",
        "power",
        "Steady draw near empty",
        meaning="The steady draw when 5 % of a full charge is left, or what the cold leaves or they are changed "
        "at: less wall is wetted, and what is left of a blend is heavy and hardly boils.",
        formula="as the steady draw, with the wetted wall and the liquid near empty",
        inputs=("firing_rate_gross", "burner_count", "pilots_rate", *RUN),
        source=VESSEL & RAOULT,
    ),
    Answer(
        "cylinder_coldest",
        "cylinders.coldest_K",
        "temperature",
        "Coldest air for the cylinders",
        meaning="Air temperature below which the cylinders' own pressure is less than the regulator needs, "
        "however little is drawn.",
        formula="temperature at which the liquid at this fill boils at the regulator's least inlet pressure",
        inputs=LIQUID,
        source=RAOULT,
        near="bench",
    ),
    Answer(
        "cylinder_coldest_last",
        "cylinders.last_coldest_K",
        "temperature",
        "Coldest air near empty",
        meaning="The coldest air when 5 % of a full charge is left, or what the cold leaves or they are changed "
        "at; higher for a blend, whose light part boils off first.",
        formula="temperature at which the liquid near empty boils at the regulator's least inlet pressure",
        inputs=("firing_rate_gross", "burner_count", "pilots_rate", *RUN),
        source=RAOULT,
    ),
    Answer(
        "blend_mixture_first",
        "cylinders.first_ratio",
        "mixture",
        "Mixture of a blend, first",
        meaning="Mixture at this fill with jet, gas pressure and air as set for the mean of the charge: "
        "propane boils off first. None for a pure gas.",
        formula="mixture x (air need / square root of molar mass) of what boils off / the same of the charge",
        inputs=("equivalence_ratio", "cylinder_fill", "ambient_temperature", "fuel_blend", "gas_from"),
        source=RAOULT,
        may_lack=True,
    ),
    Answer(
        "blend_mixture_last",
        "cylinders.last_ratio",
        "mixture",
        "Mixture of a blend, near empty",
        meaning="The mixture of a blend when 5 % of a full charge is left, or what the cold leaves or "
        "they are changed at.",
        formula="mixture x (air need / square root of molar mass) of what boils off / the same of the charge",
        inputs=("equivalence_ratio", "firing_rate_gross", *BLEND),
        source=RAOULT & VESSEL,
    ),
    Answer(
        "blend_rate_last",
        "cylinders.last_rate_W",
        "power",
        "Firing rate of a blend, near empty",
        meaning="When 5 % of a full charge is left, or what the cold leaves or they are changed at; jet and gas "
        "pressure stay as set for the mean of the charge. None for a pure gas.",
        formula="firing rate x (heating value / square root of molar mass) of what boils off / the same of the charge",
        inputs=("firing_rate_gross", *BLEND),
        source=RAOULT & VESSEL,
    ),
    Answer(
        "run_time",
        "cylinders.run_s",
        "time",
        "Run time",
        meaning="Hours at high fire, all burners and their pilots, until the cylinders are empty, too cold to feed the "
        "regulator, or changed.",
        formula="heat balance of the liquid and its steel, step by step",
        inputs=("firing_rate_gross", "burner_count", "pilots_rate", *RUN),
        source=VESSEL,
        near="first",
        digits=2,
    ),
    Answer(
        "run_ended_by",
        "cylinders.ended_by",
        "word",
        "What ends the run",
        meaning="Empty; cold: the pressure falls below what the regulator needs; or changed, as set.",
        formula="heat balance of the liquid and its steel, step by step",
        inputs=("firing_rate_gross", "burner_count", "pilots_rate", *RUN),
        source=VESSEL,
        near="bench",
    ),
    Answer(
        "frost_time",
        "cylinders.frost_s",
        "time",
        "Time to frost",
        meaning="Hours at high fire, all burners, until the wetted wall is at the freezing point; none if it never is.",
        formula="heat balance of the liquid and its steel, step by step",
        inputs=("firing_rate_gross", "burner_count", "pilots_rate", *RUN),
        source=VESSEL,
        near="bench",
    ),
    Answer(
        "fuel_cost_per_hour",
        "cylinders.fuel_cost_per_hour",
        "money",
        "Cost of the gas an hour",
        meaning="What an hour at high fire of all burners and their pilots costs, in the money of the price.",
        formula="(gas flow x burners + gas of the pilots) x price of the gas",
        inputs=(
            "gas_flow",
            "burner_count",
            "pilots_rate",
            "gross_heating_value",
            "gross_heating_value_mass",
            "fuel_price",
        ),
        source=FUEL_COST,
        near="bench",
    ),
    Answer(
        "house_gas_flow",
        "house.all_m3_s",
        "gas_flow",
        "Gas of the house at once",
        meaning="What the house's meter, or the regulator of a propane line, must pass with all burners at high fire, "
        "their pilots and the other appliances. "
        "High up the gas is thin, and it counts more.",
        formula="gas flow x burners + (pilots + other appliances) / heating value, as the meter counts it",
        inputs=(
            "gas_flow",
            "burner_count",
            "pilots_rate",
            "other_appliances",
            "gross_heating_value",
            "gas_from",
            "fuel",
            "fuel_blend",
            "line_pressure",
            "ambient_temperature",
            "altitude",
        ),
        source=CONTINUITY,
        near="bench",
    ),
    Answer(
        "hose_bore",
        "supply.hose_m",
        "length",
        "Gas hose, bore",
        meaning="Narrowest hose or connector that is sold and takes no more than a tenth of the gas pressure; on a "
        "house line wide enough, with valves of its size, for what the line holds.",
        formula="friction of the gas at high fire in [6 ft|1.83 m] of hose, as dense as at the jet",
        inputs=(*GAS_AT_JET, "line_pressure"),
        source=PIPE & PRACTICE,
        near="bench",
    ),
    Answer(
        "hose_pressure_drop",
        "supply.hose_drop_Pa",
        "gas_pressure",
        "Gas hose, drop",
        meaning="Pressure that the hose takes at high fire; the regulator is set so much higher.",
        formula="(f x length / bore + 1.5) x density x speed squared / 2",
        inputs=("hose_bore", "gas_flow", "jet_gas_pressure", "fuel", "fuel_blend", "ambient_temperature", "altitude"),
        source=PIPE,
    ),
    Answer(
        "valves_pressure_drop",
        "supply.valves_drop_Pa",
        "gas_pressure",
        "Gas valves, drop",
        meaning="Pressure that cocks, strainer, valves and check valve take at high fire, wide open; the regulator is "
        "set so much higher.",
        formula="sum of the loss coefficients x density x speed squared / 2 + [0.4 inH2O|1 mbar] of the check valve",
        inputs=("hose_bore", "lit_by", *GAS_AT_JET),
        source=VALVES,
    ),
    Answer(
        "regulator_pressure",
        "regulated.holds_Pa",
        "gas_pressure",
        "Regulator holds",
        meaning="Gauge pressure behind the regulator with gas flowing at high fire, or as it is lit where that takes "
        "more. Turn the burner's own, never the "
        "house's, so that the gauge at the jet shows what the jet needs: valves differ.",
        formula="before the jet at high fire, or at the most that it is lit with if more, + hose + valves",
        inputs=("jet_gas_pressure", "lighting_gas_pressure", "hose_pressure_drop", "valves_pressure_drop"),
        source=VALVES & PRACTICE,
        near="bench",
    ),
    Answer(
        "air_switch_pressure",
        "train.switch_Pa",
        "pressure",
        "Air switch, opens under",
        meaning="Pressure at which the switch shuts the gas, where the gas train has it: in the mix pipe, or before "
        "the damper where that in the mix pipe is too low for a switch. Prove it with the blower off.",
        formula="half of what the mix pipe's tap shows at low fire or at the lighting rate, the less; before the "
        "damper half of the least that the blower gives at low and high fire",
        inputs=("mixture_pressure", "low_fire", "lighting_mix_pressure", "air_flow", *BLOWER),
        source=PRACTICE,
        near="bench",
        digits=2,
    ),
)

CHECKS = (
    Check(
        "flow_spread",
        "fraction",
        "Evenness of the ports",
        harm="danger",
        source=PLENUM,
        cases={
            "good": "Ports get their share within {spread:percent 1}; up to {good:percent 0} is even.",
            "good_fine": "Ports get their share within 0.1 %; up to {good:percent 0} is even.",
            "caution": "Ports differ by {spread:percent 1}; {good:percent 0} or less is even. Those far from the inlet "
            "burn hotter.",
            "stop": "Ports differ by {spread:percent 1}, far more than {stop:percent 0}: those near the inlet go short "
            "and can flash back.",
            "starved_one": "One column of ports near the inlet gets no mixture: the stream along the plenum is too "
            "fast. The fire could draw back through them.",
            "starved": "{columns} columns of ports near the inlet get no mixture: the stream along the plenum is too "
            "fast. The fire could draw back through them.",
        },
    ),
    Check(
        "plenum_ratio",
        "ratio",
        "Plenum ratio",
        harm="rework",
        source=PLENUM,
        cases={
            "centre": "The plenum is {ratio:times} times the port area; with the inlet at the centre that leaves the "
            "ports {spread:percent 1} uneven.",
            "centre_fine": "The plenum is {ratio:times} times the port area; with the inlet at the centre that leaves "
            "the ports less than 0.1 % uneven.",
            "two": "The plenum is {ratio:times} times the port area; with two inlets that leaves the ports "
            "{spread:percent 1} uneven.",
            "two_fine": "The plenum is {ratio:times} times the port area; with two inlets that leaves the ports less "
            "than 0.1 % uneven.",
            "end": "The plenum is {ratio:times} times the port area; with the inlet at the end that leaves the ports "
            "{spread:percent 1} uneven.",
            "end_fine": "The plenum is {ratio:times} times the port area; with the inlet at the end that leaves the "
            "ports less than 0.1 % uneven.",
            "wanted": "About {wanted:.2g} or more is wanted: take a deeper body, less grip, or less port area.",
        },
    ),
    Check(
        "perry",
        "ratio",
        "Stream along the plenum",
        harm="rework",
        source=PERRY,
        cases={
            "good": "Along the plenum the stream's speed counts for {kinetic:percent 1} of the pressure over the "
            "ports, its friction for {friction:percent 1}; both are below 10 %, so the ports are fed evenly.",
            "bad": "Along the plenum the stream's speed counts for {kinetic:percent 1} of the pressure over the "
            "ports, its friction for {friction:percent 1}; 10 % is the rule: widen the plenum or take away port area.",
        },
    ),
    Check(
        "jet_impingement",
        "ratio",
        "Jet of the inlet",
        harm="rework",
        source=STAGNATION & LIMITS,
        cases={
            "good": "The inlet's jet can push up to {more:percent 0} more than its share through the ports in front of "
            "it; {little:percent 0} is little.",
            "good_fine": "The inlet's jet can push less than 1 % more than its share through the ports in front of it.",
            "bare": "The inlet's jet can push up to {more:percent 0} more than its share through the ports in front of "
            "it; {little:percent 0} is little. Put a baffle in, or use a larger inlet.",
            "baffled": "The inlet's jet can push up to {more:percent 0} more than its share through the ports in front "
            "of it; {little:percent 0} is little. Use a larger inlet, or a baffle that takes more.",
        },
        cures=(("baffle_holes", "choose"), ("inlet", "raise")),
    ),
    Check(
        "baffle_pressure",
        "ratio",
        "Jets of the baffle",
        harm="rework",
        source=PRACTICE,
        cases={
            "good": "The baffle takes {drop:pressure}, at most {share:times 2} times the pressure over the ports; its "
            "holes blow gently.",
            "bad": "The baffle takes {drop:pressure}, up to {share:times 2} times the pressure over the ports; "
            "{good:g} times is plenty. Its holes are so few or so small that each blows a jet of its own at the "
            "block: drill more or larger holes.",
        },
        cures=(("baffle_holes", "raise"), ("baffle_hole_diameter", "raise")),
    ),
    Check(
        "mixing_length",
        "ratio",
        "Mixing length",
        harm="rework",
        source=PRACTICE,
        cases={
            "good": "The mix pipe is {diameters:.1f} diameters long with its elbows; {good:g} or more mix gas "
            "and air well.",
            "bad": "The mix pipe is {diameters:.1f} diameters long with its elbows; {good:g} are wanted, or some "
            "ports burn rich and others lean: add {missing:length} of pipe, or an elbow.",
        },
        cures=(("mix_pipe_length", "raise"), ("mix_pipe_elbows", "raise")),
    ),
    Check(
        "mix_pipe_velocity",
        "speed",
        "Flame walking back up the pipe",
        harm="danger",
        source=DAMKOEHLER & FLASHBACK & LIMIT,
        cases={
            "good": "At low fire the mixture runs through the mix pipe at {low:speed}; a flame walks back "
            "against {most:speed} at most, so it cannot walk back up.",
            "note": "At low fire the mixture runs through the mix pipe at {low:speed}; a flame walks back against "
            "about {likely:speed}, {most:speed} at most. The ports keep it out; one that gets past them may walk back "
            "up. A smaller mix pipe or a higher low fire would stop it.",
            "stop": "At low fire the mixture runs through the mix pipe at {low:speed}; a flame walks back "
            "against about {likely:speed}: one that gets in walks back to the blower. Use a "
            "smaller mix pipe or a higher low fire.",
        },
        cures=(("mix_pipe", "lower"), ("low_fire", "raise")),
    ),
    Check(
        "blower",
        "fraction",
        "Blower",
        harm="danger",
        source=FAN & Source("margin is common practice", "common practice"),
        cases={
            "shared": "One blower feeds {burners} burners, {altogether:air_flow} of air in all; what follows is of "
            "each and its share, past its branch.",
            "ends": "The burner asks for {air:air_flow} of air at {needed:pressure}; the blower's curve ends at "
            "{last:air_flow}: take a larger blower, or less fire.",
            "good": "High fire asks for {air:air_flow} of air at {needed:pressure}; the blower has {has:pressure} "
            "there, {times:times} times its need; {usual:times} or more is enough.",
            "caution": "High fire asks for {air:air_flow} of air at {needed:pressure}; the blower has {has:pressure} "
            "there, only {times:times} times its need; {usual:times} or more is enough. Use larger ports, a larger mix "
            "pipe or a stronger blower.",
            "short": "High fire asks for {air:air_flow} of air; with the damper open the blower brings "
            "{brings:air_flow}, {short:fraction 2} less, and it burns so much richer. Use larger ports, a larger mix "
            "pipe, a stronger blower, or less fire.",
            "stop": "High fire asks for {air:air_flow} of air at {needed:pressure}; the blower has {has:pressure} "
            "there. It is too weak: with the damper open it brings {brings:air_flow}. Use larger ports, a larger mix "
            "pipe, a stronger blower, or less fire.",
            "stop_stronger": "High fire asks for {air:air_flow} of air at {needed:pressure}; the blower has "
            "{has:pressure} there. It is too weak: with the damper open it brings {brings:air_flow}. Use a stronger "
            "blower, or less fire.",
            "beyond": "High fire asks for {air:air_flow} of air, and to push it through this burner takes more "
            "pressure than any blower has. Use larger ports, a larger mix pipe, or less fire.",
            "hunts": "Its curve crosses that of the burner more than once: the flow may hunt.",
        },
    ),
    Check(
        "blower_hot",
        "fraction",
        "Blower, burner hot",
        harm="rework",
        source=HOT_PORTS & FAN & LIMITS,
        cases={
            "good": "Hot ports take {ports:fraction 2} more pressure: high fire needs {needed:pressure}, and the "
            "blower has {has:pressure} there.",
            "caution": "Hot ports take {ports:fraction 2} more pressure: high fire needs {needed:pressure}, and the "
            "blower has {has:pressure} there. Its air falls short with the damper wide open. Use a stronger blower, "
            "larger or more ports, or less high fire.",
        },
        cures=(
            ("blower_shutoff_pressure", "raise"),
            ("port_diameter", "raise"),
            ("ports_per_row", "raise"),
            ("firing_rate", "lower"),
        ),
    ),
    Check(
        "hot_drift",
        "fraction",
        "Mixture when hot",
        harm="danger",
        source=HOT_PORTS & FAN & LIMITS,
        cases={
            "good": "A mixture set cold gets {more:fraction} richer once the ports are hot, from {cold:.2f} to "
            "{hot:.2f}, or {richest:.2f} as near as a hand sets it: set it once the block is hot.",
            "caution": "A mixture set cold gets {more:fraction} richer once the ports are hot: from {cold:.2f} "
            "to {hot:.2f}, or {richest:.2f} as near as a hand sets it. It makes more carbon "
            "monoxide; the blower has little to spare. Set gas and air once the block is hot, or use"
            " a stronger blower, or larger or more ports.",
            "leaner_good": "A mixture set cold gets {less:fraction} leaner once the ports are hot, from {cold:.2f} to "
            "{hot:.2f}, or {leanest:.2f} as near as a hand sets it: set it once the block is hot.",
            "leaner_caution": "A mixture set cold gets {less:fraction} leaner once the ports are hot, from {cold:.2f} "
            "to {hot:.2f}, or {leanest:.2f} as near as a hand sets it. Gas of so little pressure falls off more than "
            "the air: raise the gas pressure, with a smaller jet, or set both once the block is hot.",
            "waits": "Waits for the blower: as long as it does not bring the air of high fire, no mixture is set that "
            "could drift.",
        },
        cures=(
            ("blower_shutoff_pressure", "raise"),
            ("port_diameter", "raise"),
            ("ports_per_row", "raise"),
            ("firing_rate", "lower"),
        ),
    ),
    Check(
        "damper",
        "fraction",
        "Damper at low fire",
        harm="comfort",
        source=THIN_PLATE & LIMIT,
        cases={
            "good": "At low fire the damper stands {open:fraction 2} open; from {least:percent 0} on it is set finely.",
            "caution": "At low fire the damper stands {open:fraction 2} open, hard to set finely: use a smaller or "
            "slower blower, or put the damper in a smaller pipe.",
        },
        cures=(("blower_shutoff_pressure", "lower"), ("low_fire", "raise")),
    ),
    Check(
        "gas_pressure",
        "gas_pressure",
        "Gas pressure",
        harm="danger",
        source=JET & LIMITS,
        cases={
            "none": "Gas at {gas:gas_pressure} cannot enter the mix pipe, where high fire takes {mixture:pressure}: "
            "no gas flows. Raise the gas pressure, or ease the way through the burner (larger ports or pipe).",
            "none_beyond": "Gas at {gas:gas_pressure} cannot enter the mix pipe, where high fire takes more pressure "
            "than any blower has: no gas flows. Ease the way through the burner (larger ports or pipe).",
            "good": "Gas at {gas:gas_pressure} stands well over the {mixture:pressure} in the mix pipe.",
            "choked": "Gas at {gas:gas_pressure} stands well over the {mixture:pressure} in the mix pipe, and chokes "
            "in the jet: its flow follows the regulator alone.",
            "weak": "Gas at {gas:gas_pressure} is too weak for this rate: the jet may need a hole of "
            "{hole:drill_length}, more than a quarter of the mix pipe's bore. Raise the gas pressure, or burn less.",
            "weak_line": "Gas at {gas:gas_pressure} is too weak for this rate: the jet may need a hole of "
            "{hole:drill_length}, more than a quarter of the mix pipe's bore. Raise the gas pressure (ask the gas "
            "company), or burn less.",
            "weak_line_lp": "Gas at {gas:gas_pressure} is too weak for this rate: the jet may need a hole of "
            "{hole:drill_length}, more than a quarter of the mix pipe's bore. Raise the gas pressure (ask your gas "
            "dealer), or burn less.",
            "near": "Gas at {gas:gas_pressure} is not far above the {mixture:pressure} in the mix pipe: every change "
            "of air moves the gas as well. More gas pressure is steadier.",
            "line": "{gas:gas_pressure} is more than a house line carries: {usual:pressure} is usual, "
            "{most:gas_pressure} "
            "the most. Set what your meter gives.",
            "line_lp": "{gas:gas_pressure} is more than a line of propane carries in a house: {usual:pressure} is "
            "usual, {most:gas_pressure} the most. Set what the regulator of your line gives.",
            "regulator": "{gas:gas_pressure} is more than an adjustable LP regulator gives ({most:gas_pressure}); use "
            "a larger jet.",
        },
        cures=(("gas_pressure", "raise"),),
    ),
    Check(
        "supply",
        "gas_pressure",
        "Pressure of the house line",
        harm="rework",
        source=VALVES,
        cases={
            "good": "With {outlet:gas_pressure} behind the isolating cock there are {jet:gas_pressure} before the jet: "
            "connector and valves of {pipe:pipe} take {lost:gas_pressure} at high fire. The line holds "
            "{holds:gas_pressure} at the isolating cock, up to {run:gas_pressure} less than at the meter.",
            "good_lp": "With {outlet:gas_pressure} behind the isolating cock there are {jet:gas_pressure} before the "
            "jet: connector and valves of {pipe:pipe} take {lost:gas_pressure} at high fire. The line holds "
            "{holds:gas_pressure} at the isolating cock, up to {run:gas_pressure} less than at its own regulator.",
            "regulated": "The gas fitter puts in a regulator of the burner's own and sets it to that. Nobody turns the "
            "house's: the other appliances would starve.",
            "held": "A regulator of the burner's own commonly needs {over:gas_pressure} more than it gives, so none "
            "goes in: the house's holds the gas, and nobody turns it, or the other appliances starve. What is too "
            "much for the jet is taken up by the needle valve, by the gauge at the jet.",
            "caution": "High fire takes {least:gas_pressure} to {most:gas_pressure} behind the isolating cock, by how "
            "the valves turn out, and the line holds {holds:gas_pressure}: at worst it comes to {short:percent} of its "
            "rate, and is as much too lean until the damper is closed by the flame. It takes a larger jet, less fire, "
            "or a line that holds more, which the gas fitter decides.",
            "jet": "This jet alone takes {jet:gas_pressure} at high fire, and the line holds {holds:gas_pressure}: it "
            "comes to {share:percent} of its rate at most, and is as much too lean until the damper is closed by the "
            "flame. It takes a larger jet, less fire, or a line that holds more, which the gas fitter decides.",
        },
        cures=(("gas_pressure", "lower"), ("firing_rate", "lower"), ("line_pressure", "raise")),
    ),
    Check(
        "house_meter",
        "fraction",
        "House meter or regulator",
        harm="danger",
        source=PRACTICE,
        cases={
            "unknown": "High fire takes {own:gas_flow 3} of gas, {all:gas_flow 3} with the other appliances. Read on "
            "the meter's plate what it passes: in houses {small:gas_flow 3} to {large:gas_flow 3} is common.",
            "no_meter": "High fire takes {fire:power} of gas, {heat:power} with the other appliances on the line. Read "
            "on the plate of the line's regulator that it passes as much: too small a one lets the pressure fall, and "
            "flames elsewhere in the house may go out. Tank and pipe must give as much too, also in the cold and with "
            "little gas left: ask your gas dealer.",
            "good": "The house meter passes {meter:gas_flow 3}; burner and other appliances take {all:gas_flow 3}.",
            "caution": "Burner and other appliances take {all:gas_flow 3} at once, more than the {meter:gas_flow 3} "
            "of the house meter: flames elsewhere in the house may go out. Shut those off first, burn less, or have "
            "the gas company fit a larger meter.",
            "stop": "The burner alone takes {own:gas_flow 3} at high fire, more than the {meter:gas_flow 3} of the "
            "house meter. Burn less, or have the gas company fit a larger meter.",
        },
        cures=(("firing_rate", "lower"), ("meter_capacity", "raise")),
    ),
    Check(
        "line_cold",
        "temperature",
        "Tank of the line in the cold",
        harm="comfort",
        source=RAOULT & PRACTICE,
        cases={
            "good": "The tank of the line stands outdoors, and what is in it boils well enough down to "
            "{good:temperature}.",
            "caution": "At {air:temperature} the tank of the line, which stands outdoors, may give too little gas: it "
            "gets colder as gas is drawn. It is sure only down to {good:temperature}, and near empty no gas comes "
            "under {last:temperature}.",
            "stop": "No gas comes from the line: at {air:temperature} what is in its tank outdoors hardly boils, under "
            "{coldest:temperature}.",
            "lighter": "Ask your gas dealer for propane or a blend with more of it, or wait for a warmer day. Never "
            "heat a tank.",
        },
        cures=(("fuel", "choose"),),
    ),
    Check(
        "jet",
        "ratio",
        "Jet",
        harm="rework",
        source=JET,
        cases={
            "too_small": "No drill comes near the {hole:drill_length} of this jet: less gas pressure makes it larger.",
            "too_large": "No drill comes near the {hole:drill_length} of this jet: more gas pressure makes it smaller.",
            "line_good": "Jet {drill} passes {rate:power} at {now:gas_pressure}, as wanted.",
            "line_throttled": "Jet {drill} passes {rate:power} at {now:gas_pressure}; throttle to {at:gas_pressure} "
            "for high fire.",
            "line_short": "Jet {drill} passes {rate:power} at {now:gas_pressure}, short of {wanted:power}: the line "
            "cannot carry the rate through it. Use a larger drill.",
            "good": "Jet {drill} gives the firing rate at {at:gas_pressure}.",
            "caution": "Jet {drill} gives the firing rate at {at:gas_pressure}, not at the {now:gas_pressure} as set: "
            "turn the regulator or change the drill.",
            "larger": "Jet {drill} gives the firing rate at {at:gas_pressure}, out of reach of a regulator: use a "
            "larger drill.",
            "smaller": "Jet {drill} gives the firing rate at {at:gas_pressure}, out of reach of a regulator: use a "
            "smaller drill.",
        },
        cures=(("jet_drill", "choose"), ("gas_pressure", "choose")),
    ),
    Check(
        "gas_low_fire",
        "gas_pressure",
        "Gas at low fire",
        harm="comfort",
        source=PRACTICE,
        cases={
            "good": "Low fire asks for {least:gas_pressure} or more before the jet, so it is held well.",
            "caution": "Low fire asks for {low:gas_pressure} before the jet; below {least:gas_pressure} it is hard to "
            "hold. A smaller jet at more pressure helps.",
        },
        cures=(("gas_pressure", "raise"), ("low_fire", "raise")),
    ),
    Check(
        "cylinder",
        "time",
        "Cylinder",
        harm="comfort",
        source=VESSEL & LIMITS & Source("half a day of 4 h at high fire is common practice", "common practice"),
        cases={
            "empty": "At {rate:power} the gas lasts {run:time 2}, until none is left.",
            "changed": "At {rate:power} the gas lasts {run:time 2}, until they are changed with {left:percent 0} of a "
            "full charge left.",
            "too_cold_jet": "It is too cold: at {air:temperature} the cylinder's own pressure is less than the "
            "regulator needs ({needed:gas_pressure}). Use less gas pressure with a larger jet, or wait for a warmer "
            "day. Never heat a cylinder.",
            "too_cold": "It is too cold: at {air:temperature} the cylinder's own pressure is less than the regulator "
            "needs ({needed:gas_pressure}). Use a regulator that needs less, or wait for a warmer day. Never heat a "
            "cylinder.",
            "too_cold_both": "It is too cold: at {air:temperature} the cylinder itself holds {holds:gas_pressure}. "
            "That is less than the regulator needs, and less than the {jet:gas_pressure} that the jet asks of it. It "
            "takes a regulator that needs less and less gas pressure with a larger jet, both, or a warmer day. Never "
            "heat a cylinder.",
            "more_too": "The gas may not last even so: then it takes more or larger cylinders too.",
            "or_propane": "Or use propane, which holds far more pressure.",
            "no_gas": "No gas comes: at {air:temperature} what is in the cylinder hardly boils, under "
            "{boils:temperature}. Use propane or a blend with more of it, or wait for a warmer day. Never heat a "
            "cylinder.",
            "light": "No cylinder holds this blend: {light:percent 0} of it is gas lighter than propane, which stands "
            "over the liquid and leaves first, so the first gas is another one. Up to {ethane:percent 0} of ethane and "
            "{lighter:percent 0} of the rest is usual. Give the blend that is in the cylinder.",
            "cold": "At {rate:power} the gas lasts {run:time 2}. Then it is too cold for enough gas to come, and "
            "{left:percent 0} of a full charge is left. The air can boil off only {last:power} near the end.",
            "cold_at_once": "At {rate:power} the gas lasts {run:time 2}. Then it is too cold for enough gas to come, "
            "and {left:percent 0} of a full charge is left. As full as it is at first, the air can boil off only "
            "{draw:power}.",
            "full": "Filled up it would last {full_run:time 2}, and {full_left:percent 0} would be left.",
            "short": "Half a day's work is {good:time 2}, all at high fire.",
            "hardly": "Heating up and an hour's work take {least:time 2}.",
            "more_or_jet": "Use more or larger cylinders, or less gas pressure with a larger jet. Never heat a "
            "cylinder.",
            "more_or_regulator": "Use more or larger cylinders, or a regulator that needs less. Never heat a cylinder.",
        },
    ),
    Check(
        "blend_drift",
        "ratio",
        "Blend as it boils off",
        harm="danger",
        source=RAOULT & LIMITS,
        cases={
            "good": "The light part boils off first: from full cylinders to {left:percent 0} left the mixture goes "
            "from {first:.2f} to {last:.2f}.",
            "caution": "The light part boils off first, and what is left is heavier gas: with nothing touched the "
            "mixture goes from {first:.2f} to {last:.2f} from full cylinders to {left:percent 0} left, and carbon "
            "monoxide with it. Set it leaner, or change them earlier.",
            "good_line": "In the tank the light part boils off first: the mixture goes from {first:.2f} to {last:.2f} "
            "while it empties to {left:percent 0}.",
            "caution_line": "In the tank the light part boils off first, and what is left is heavier gas: with nothing "
            "touched the mixture goes from {first:.2f} to {last:.2f} while it empties to {left:percent 0}, and carbon "
            "monoxide with it. Set it leaner.",
        },
        cures=(("equivalence_ratio", "lower"), ("cylinder_left", "raise"), ("fuel_blend", "choose")),
    ),
)

TABLES = (
    Table(
        "port_flows",
        "Flow of every port at high fire",
        (
            Column("number", "No.", "count"),
            Column("x", "x", "length"),
            Column("y", "y", "length"),
            Column("share", "Share", "fraction"),
            Column("flow", "Mixture", "air_flow"),
        ),
        source=PLENUM,
    ),
    Table(
        "jet_drills",
        "Drills next to the jet, each at the gas pressure as set",
        (
            Column("family", "Family", "word"),
            Column("drill", "Drill", "word"),
            Column("diameter", "Diameter", "drill_length"),
            Column("firing_rate", "Firing rate", "power"),
            Column("equivalence_ratio", "Mixture", "mixture"),
            Column("gas_pressure", "Pressure for the rate", "gas_pressure"),
        ),
        source=JET,
    ),
    Table(
        "regulator_card",
        "Regulator card: what the jet drill gives, air as set for high fire",
        (
            Column("gas_pressure", "Gas pressure", "gas_pressure"),
            Column("firing_rate", "Firing rate", "power"),
            Column("equivalence_ratio", "Mixture", "mixture"),
            Column("atmosphere", "Atmosphere", "word"),
        ),
        source=JET,
    ),
    Table(
        "gas_train",
        "Gas and air train in the order of flow; prices are examples",
        (
            Column("number", "No.", "count"),
            Column("stretch", "In the", "word"),
            Column("part", "Part", "word"),
            Column("size", "For this burner", "word"),
            Column("ends", "Ends, as sold", "word"),
            Column("purpose", "For", "word"),
            Column("price", "Price", "price"),
            Column("why", "What it does", "word"),
        ),
        source=PRACTICE,
        words=TRAIN_WORDS,
    ),
)

CHARTS = (
    Chart(
        "flow_by_column",
        "Flow of each column of ports",
        Axis("column, from the left", "count"),
        Axis("share of the mean", "fraction"),
        (Series("shares", "share of the mean", "bars"), Series("fair", "fair share")),
        cases={"shows": "Each bar is a column of ports across the face; they differ by {spread:percent 1}."},
    ),
    Chart(
        "blower_and_burner",
        "Blower and burner",
        Axis("air at shop temperature", "air_flow"),
        Axis("pressure", "pressure"),
        (
            Series("blower", "blower"),
            Series("burner", "burner, damper open"),
            Series("fires", "low and high fire", "points"),
        ),
        cases={
            "shows": "Blower and burner meet at {air:air_flow} and {pressure:pressure}; high fire needs "
            "{high:air_flow}.",
            "shared": "One burner's share of the blower, which feeds {burners}: they meet at {air:air_flow} and "
            "{pressure:pressure}; high fire of one needs {high:air_flow}.",
        },
    ),
    Chart(
        "jet_card",
        "Firing rate by gas pressure",
        Axis("gas pressure", "gas_pressure"),
        Axis("firing rate", "power"),
        (Series("rate", "this jet"),),
        cases={
            "shows": "The jet gives the firing rate at {at:gas_pressure}.",
            "none": "No jet passes gas at this pressure.",
        },
    ),
)
