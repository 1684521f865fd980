"""What the page's search knows: every setting, answer, check, table and chart, and other words people use for them."""

from burnercalc import catalogue
from burnercalc.settings import SETTINGS

# id on the page: what else it is called, or what somebody asks for who needs it.
ALSO = {
    "set-units": "inches millimetres metric imperial mm",
    "set-chamber_length": "forge size inside volume depth deep",
    "set-chamber_width": "forge size inside",
    "set-chamber_height": "forge size inside",
    "set-chamber_shape": "round square crucible pipe forge furnace",
    "set-chamber_diameter": "crucible round inside bore",
    "set-lining": "insulation insulating wool fibre fiber blanket brick firebrick castable refractory wall rigidizer "
    "coating wash arch mortar kiln door bricks",
    "set-opening_area": "door mouth hole gap vent exhaust flue doors",
    "set-opening_depth": "door mouth wall",
    "set-chamber_temperature": "heat hot how hot forging welding heat degrees thermocouple pyrometer "
    "cone flux billet damascus knife anneal treat temper normalise red yellow",
    "set-work_metal": "steel iron brass bronze copper aluminium aluminum material melt billet bar",
    "set-work_rate": "throughput how much metal pounds an hour output",
    "set-work_temperature": "pouring forging heat metal temperature melt",
    "set-heat_up_time": "warm up preheat time start",
    "set-burner_count": "number of burners two burners",
    "set-fuel": "gas propane lpg lp natural gas methane house gas mains butane",
    "set-fuel_blend": "gas mixture composition analysis butane propane blend",
    "set-firing_rate": "power btu kilowatt kw output heat input size of burner",
    "set-low_fire": "idle turn down turndown minimum",
    "set-equivalence_ratio": "rich lean mixture air fuel ratio lambda phi excess air oxidising reducing neutral",
    "set-ambient_temperature": "shop room air temperature outside weather winter summer cold",
    "set-altitude": "height above sea mountain thin air elevation",
    "set-body_kind": "tube pipe plates box square round",
    "set-body_length": "box length tube plenum",
    "set-body_width": "box width tube size",
    "set-body_depth": "box depth tube size plenum height",
    "set-wall": "steel thickness gauge gage sheet metal angle iron",
    "set-setback": "lip ledge flange return edge",
    "set-corner_radius": "window corner fillet round",
    "set-port_diameter": "hole nozzle flame hole pin size drill straw crayon dowel",
    "set-rows": "holes pattern rows of ports",
    "set-ports_per_row": "holes number of ports columns",
    "set-pattern": "layout holes hex staggered straight rings ribbon burner",
    "set-edge_margin": "edge distance border",
    "set-block_thickness": "refractory thickness port length nozzle length casting head",
    "set-grip": "key anchor depth push in hold block anchors rebar needles",
    "set-inlet": "pipe nipple size feed pipe reducer bell coupling thread",
    "set-port_wall_temperature": "hot face flashback",
    "set-blower_shutoff_pressure": "fan static pressure blower closed inches water column wc",
    "set-blower_free_flow": "fan cfm air volume blower size squirrel cage hair dryer shop vac leaf duct vacuum",
    "set-blower_curve": "fan curve data sheet",
    "set-mix_pipe": "mixer mixing tube pipe air pipe galvanized galvanised zinc fumes tee venturi",
    "set-mix_pipe_length": "mixer mixing tube",
    "set-mix_pipe_elbows": "bend elbow ell",
    "set-inlet_position": "side feed end feed back feed gasket flange",
    "set-baffle_holes": "diffuser plate spreader",
    "set-baffle_bend_angle": "diffuser fold",
    "set-chamber_back_pressure": "hood chimney flue back pressure",
    "set-gas_pressure": "regulator psi bar line pressure gauge meter utility natural gas",
    "set-jet_discharge_coefficient": "orifice coefficient cd",
    "set-jet_drill": "orifice mig tip nozzle number drill hole jet size bit bits",
    "set-cylinder": "bottle tank propane bottle grill tank bottles refill swap exchange",
    "set-cylinder_count": "bottles manifold",
    "set-regulator_inlet_pressure": "regulator",
    "set-fuel_price": "propane cost gas price money gallon therm kwh bill utility meter",
    "set-caps": "end plates ends weld",
    "set-kerf": "saw blade cut loss",
    "set-stock_lengths": "steel stock sticks bar rack shop",
    "set-refractory": "castable cement mix bag plastic ram block material vibrate voids mortar silica dust respirator "
    "mask",
    "set-pin_stock_length": "dowel rod crayon straw sticks",
    "set-pin_depth": "dowel pins base",
    "set-mould_board": "form mold wood frame plywood ply",
    "set-mould_base": "form mold wood base plywood ply",
    "set-mould_clearance": "form mold gap draft",
    "set-batch_size": "how many make several dozen",
    "set-moulds": "molds forms batch",
    "set-oven_places": "kiln slots batch",
    "set-hands": "people workers helpers crew",
    "set-work_week": "weekend days off saturday sunday",
    "set-bought_price": "buy commercial price ready made",
    "set-overhead": "rent insurance selling price",
    "set-scrap_rate": "reject failures waste selling",
    "set-profit": "margin markup selling price",
    "set-hour_value": "wage labour labor time money",
    "set-print_scale_x": "printer scale ruler paper 100 mm template printing print",
    "set-start_date": "calendar day when",
    "set-damp_air": "humid wet weather",
    "answer-firing_rate_needed": "how big burner btu kw size power needed",
    "answer-firing_rate_gross": "btu kw power burner size output",
    "answer-flame_temperature": "adiabatic how hot",
    "answer-fuel_per_hour": "consumption gas use burn an hour",
    "answer-fresh_air": "ventilation carbon monoxide co window fan fumes smoke detector",
    "answer-shell_temperature": "outside skin touch hot",
    "answer-plenum_to_port_ratio": "plenum to ports box area distribution even",
    "answer-mixture_velocity_in_port": "port speed flow",
    "answer-flashback_firing_rate": "backfire burn back pop low limit",
    "answer-turndown": "idle range low fire",
    "answer-min_web": "web wall between holes ligament spacing",
    "answer-port_pitch": "hole spacing distance centre center",
    "answer-row_pitch": "hole spacing rows distance centre center",
    "answer-mixture_pressure": "back pressure water column static",
    "answer-blower_times": "fan enough blower big enough",
    "answer-jet": "orifice mig tip drill size number",
    "answer-orifice_diameter": "jet orifice hole",
    "answer-run_time": "bottle lasts how long freeze cylinder",
    "answer-frost_time": "ice freeze bottle cold",
    "answer-cost_per_burner": "money price total",
    "answer-days_in_all": "how long cure dry days weekend weeks",
    "answer-dry_mass": "how much castable refractory bags weight",
    "answer-water": "mix water wet",
    "answer-pin_length": "dowel rod pins length",
    "answer-bags": "how many bags",
    "check-web": "web holes too close crack cracks spall",
    "check-flashback_hot": "backfire burn back pop popping huff roar whistle burns inside",
    "check-lift": "blow off blows out flame leaves",
    "check-cross_light": "lighting all ports spread",
    "check-blower": "fan too weak",
    "check-cylinder": "bottle freezes too small",
    "answer-train_safety_cost": "gas train solenoid valve check flame arrestor ball failure "
    "thermocouple air switch power cut",
    "answer-train_needed_cost": "gauge manometer dial gate valve needle reducer union coupling "
    "fittings teflon tape thread sealant",
    "answer-hose_bore": "leak soap soapy water test",
    "answer-damper_open_high": "gate valve dimmer speed control choke air",
    "answer-damper_open_low": "gate valve dimmer speed control choke air",
    "check-flashback_cold": "popping huff pops when lit",
    "check-mixture": "dragon breath yellow flame blue soot oxidation scale carburizing",
    "answer-atmosphere": "dragon breath yellow flame blue soot oxidation oxidizing scale carburizing carburising "
    "reducing",
    "check-carbon_monoxide": "co alarm detector soot poison",
    "answer-aspirated_rate": "venturi atmospheric naturally aspirated",
    "set-pin_kind": "crayons straws skewers wax dowels rods grease vaseline release",
    "answer-knock_out_drill": "punch pull pins",
    "answer-cleaning_drill": "clear ports blocked holes",
    "answer-weld_length": "weld mig stick tack grinder",
    "answer-lighting_rate": "igniter lighter spark pilot torch light",
    "check-lighting": "igniter lighter spark pilot torch light start",
    "answer-throughput": "billet hammer bars an hour",
    "answer-fuel_cost_per_hour": "propane bill money",
    "answer-make_or_buy": "profit worth it",
    "answer-warm": "candle bulb steam",
    "answer-first_fire_time": "steam spall cracks candling",
    "answer-corner_drill_inset": "centre punch scribe step bit countersink",
    "set-corner_drill": "centre punch scribe step bit drill",
    "answer-window_cut_length": "plasma grinder jigsaw cut",
    "answer-inlet_hole": "hole saw step bit",
    "check-port_velocity": "noise loud",
    "answer-air_switch_pressure": "electricity power cut fails",
}


TOOLS = (
    (
        *("find-box", "tool", "start", "Find a burner from what I have"),
        "shop stock tube pins blower scrap search suggest choose for me which burner optimise",
        "Designs from the tube, pins, blower and gas that lie there, ranked.",
    ),
    (
        *("good-box", "tool", "start", "Make it good"),
        "fix mend repair cure all checks faults improve",
        "The fewest changes that turn every check good.",
    ),
    (
        *("shops-box", "tool", "start", "What if pins, blower or day are a little off"),
        "tolerance sensitivity tornado robust what if margin sample shops like yours",
        "How the four numbers move, and in how many shops the design stays good.",
    ),
)


def entries():
    """[[id on the page, what it is, room, label, other names, sentence]]; of equal finds the first one comes first."""
    kinds = (
        [("set", "setting", s) for s in SETTINGS]
        + [("answer", "number", a) for a in catalogue.ANSWERS.values()]
        + [("check", "check", c) for c in catalogue.CHECKS.values()]
    )
    found = [list(tool) for tool in TOOLS]
    for part, kind, each in kinds:
        name = f"{part}-{each.key}"
        sentence = getattr(each, "help", "") or getattr(each, "meaning", "")
        found.append([name, kind, each.room, each.label, ALSO.get(name, ""), sentence])
    unknown = ALSO.keys() - {entry[0] for entry in found}
    assert not unknown, sorted(unknown)
    return found
