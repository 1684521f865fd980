"""Designs far apart from each other, for tests that should hold for any."""

from burnercalc.examples import EXAMPLES

# The mixture for which the figures by hand and from outside were worked out, whatever the default is.
WORKED = {"equivalence_ratio": "1"}

FAR_APART = {
    "default": {},
    **{f"{example.key}, {units}": texts for example in EXAMPLES
       for units, texts in (("inches", example.inches), ("metric", example.metric))},
    "round": {"body_kind": "pipe", "body_length": "6 in", "body_width": "6 in", "pattern": "rings", "rows": "4",
              "ports_per_row": "12", "body_depth": "4 in", "baffle_holes": "30"},
    "fed at the end, starved": {"body_depth": "1 1/2 in", "grip": "1 1/8 in", "inlet_position": "end",
                                "port_diameter": "3/8 in"},
    "no flame": {"fuel": "butane", "equivalence_ratio": "0.5"},
    "house gas, metric": {"units": "mm", "fuel": "natural_gas", "gas_pressure": "20 mbar", "jet_drill": "4 mm"},
    "plates, a batch": {"body_kind": "plates", "caps": "on", "units": "mm", "batch_size": "7", "refractory": "own",
                        "damp_air": "yes", "start_date": "2026-03-02"},
    "frost": {"fuel": "butane", "ambient_temperature": "25 degF", "cylinder": "20", "refractory": "phosphate_plastic"},
    "a tank in the hills": {"cylinder": "tank", "firing_rate": "300 kBtu/h", "burner_count": "4",
                            "altitude": "6000 ft",
                            "blower_curve": "0 cfm 8 inH2O, 100 cfm 5 inH2O, 150 cfm 0 inH2O"},
    "ports that overlap": {"port_diameter": "1/2 in", "rows": "8", "ports_per_row": "20"},
    "one port": {"rows": "1", "ports_per_row": "1", "baffle_holes": "0"},
    "no baffle, a blend": {"baffle_holes": "0", "fuel_blend": "CH4 0.6, CO2 0.4", "firing_rate": "auto"},
}  # fmt: skip
