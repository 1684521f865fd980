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
    "set-lining": "insulation insulating wool fibre fiber blanket brick firebrick castable refractory wall",
    "set-opening_area": "door mouth hole gap vent exhaust flue",
    "set-opening_depth": "door mouth wall",
    "set-chamber_temperature": "heat hot how hot forging welding heat degrees",
    "set-work_metal": "steel iron brass bronze copper aluminium aluminum material melt",
    "set-work_rate": "throughput how much metal pounds an hour output",
    "set-work_temperature": "pouring forging heat metal temperature melt",
    "set-heat_up_time": "warm up preheat time start",
    "set-burner_count": "number of burners two burners",
    "set-fuel": "gas propane lpg lp natural gas methane house gas mains butane",
    "set-fuel_blend": "gas mixture composition analysis butane propane blend",
    "set-firing_rate": "power btu kilowatt kw output heat input size of burner",
    "set-low_fire": "idle turn down turndown minimum",
    "set-equivalence_ratio": "rich lean mixture air fuel ratio lambda phi excess air oxidising reducing neutral",
    "set-ambient_temperature": "shop room air temperature outside weather",
    "set-altitude": "height above sea mountain thin air elevation",
    "set-body_kind": "tube pipe plates box square round",
    "set-body_length": "box length tube plenum",
    "set-body_width": "box width tube size",
    "set-body_depth": "box depth tube size plenum height",
    "set-wall": "steel thickness gauge gage",
    "set-setback": "lip ledge flange return edge",
    "set-corner_radius": "window corner fillet round",
    "set-port_diameter": "hole nozzle flame hole pin size drill straw crayon dowel",
    "set-rows": "holes pattern rows of ports",
    "set-ports_per_row": "holes number of ports columns",
    "set-pattern": "layout holes hex staggered straight rings",
    "set-edge_margin": "edge distance border",
    "set-block_thickness": "refractory thickness port length nozzle length casting head",
    "set-grip": "key anchor depth push in hold block",
    "set-inlet": "pipe nipple size feed pipe",
    "set-port_wall_temperature": "hot face flashback",
    "set-blower_shutoff_pressure": "fan static pressure blower closed inches water column wc",
    "set-blower_free_flow": "fan cfm air volume blower size",
    "set-blower_curve": "fan curve data sheet",
    "set-mix_pipe": "mixer mixing tube pipe air pipe",
    "set-mix_pipe_length": "mixer mixing tube",
    "set-mix_pipe_elbows": "bend elbow ell",
    "set-inlet_position": "side feed end feed back feed",
    "set-baffle_holes": "diffuser plate spreader",
    "set-baffle_bend_angle": "diffuser fold",
    "set-chamber_back_pressure": "hood chimney flue back pressure",
    "set-gas_pressure": "regulator psi bar line pressure gauge",
    "set-jet_discharge_coefficient": "orifice coefficient cd",
    "set-jet_drill": "orifice mig tip nozzle number drill hole jet size",
    "set-cylinder": "bottle tank propane bottle grill tank",
    "set-cylinder_count": "bottles manifold",
    "set-regulator_inlet_pressure": "regulator",
    "set-fuel_price": "cost gas price money gallon therm",
    "set-caps": "end plates ends weld",
    "set-kerf": "saw blade cut loss",
    "set-stock_lengths": "steel stock sticks bar rack shop",
    "set-refractory": "castable cement mix bag plastic ram block material",
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
    "set-print_scale_x": "printer scale ruler paper 100 mm",
    "set-start_date": "calendar day when",
    "set-damp_air": "humid wet weather",
    "answer-firing_rate_needed": "how big burner btu kw size power needed",
    "answer-firing_rate_gross": "btu kw power burner size output",
    "answer-flame_temperature": "adiabatic how hot",
    "answer-fuel_per_hour": "consumption gas use burn an hour",
    "answer-fresh_air": "ventilation carbon monoxide co window fan",
    "answer-shell_temperature": "outside skin touch hot",
    "answer-plenum_to_port_ratio": "box area distribution even",
    "answer-mixture_velocity_in_port": "port speed flow",
    "answer-flashback_firing_rate": "backfire burn back pop low limit",
    "answer-turndown": "idle range low fire",
    "answer-min_web": "wall between holes ligament spacing",
    "answer-port_pitch": "hole spacing distance centre center",
    "answer-row_pitch": "hole spacing rows distance centre center",
    "answer-mixture_pressure": "back pressure water column static",
    "answer-blower_margin": "fan enough blower big enough",
    "answer-jet": "orifice mig tip drill size number",
    "answer-orifice_diameter": "jet orifice hole",
    "answer-run_time": "bottle lasts how long freeze cylinder",
    "answer-frost_time": "ice freeze bottle cold",
    "answer-cost_per_burner": "money price total",
    "answer-days_in_all": "how long cure dry days",
    "answer-dry_mass": "how much castable refractory bags weight",
    "answer-water": "mix water wet",
    "answer-pin_length": "dowel rod pins length",
    "answer-bags": "how many bags",
    "check-web": "holes too close crack",
    "check-flashback_hot": "backfire burn back pop",
    "check-lift": "blow off blows out flame leaves",
    "check-cross_light": "lighting all ports spread",
    "check-blower": "fan too weak",
    "check-cylinder": "bottle freezes too small",
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
