"""Worked examples: three scenarios of our own, each in inches and in the millimetre sizes that a metric shop has."""
from dataclasses import dataclass


@dataclass(frozen=True)
class Example:
    """A scenario: what it is for, and its settings as typed in each system of units."""
    key: str
    name: str
    sentence: str
    inches: dict
    metric: dict


# What a metric shop has on its bench and its racks; prices stay examples of no country.
METRIC_BENCH = {
    "stock_lengths": "500 mm, 1000 mm, 3000 mm, 6000 mm", "kerf": "1.5 mm", "corner_drill": "10 mm",
    "inlet_length": "75 mm", "nipple_stock": "80 mm 8.00, 100 mm 9.00, 150 mm 11.00, 300 mm 18.00, 1000 mm 40.00",
    "mould_clearance": "3 mm", "mould_board": "ply 18 mm", "mould_base": "ply 18 mm", "pin_depth": "13 mm", "pin_stock_length": "1000 mm",
    "bag_mass": "25 kg", "regulator_inlet_pressure": "0.7 bar", "port_position_tolerance": "1 mm",
    "fuel_price": "2.00/kg", "price_steel": "4.50/kg",
}

EXAMPLES = (
    Example(
        "knife", "Knife maker's heat-treating forge",
        "A long, narrow chamber of insulating brick that holds 20 in (500 mm) blades at 1500 °F (815 °C); the rate is left to the chamber.",
        {"chamber_length": "24 in", "chamber_width": "5 in", "chamber_height": "5 in",
         "lining": "ifb_23 2 1/2 in, blanket_8lb 1 in", "opening_area": "10 in2", "opening_depth": "2 1/2 in",
         "chamber_temperature": "1550 degF", "work_rate": "6 lb/h", "work_temperature": "1500 degF", "heat_up_time": "30 min",
         "firing_rate": "auto", "low_fire": "50 %",
         "body_length": "12 in", "body_width": "3 in", "body_depth": "3 in", "wall": "1/8 in", "setback": "1/2 in",
         "port_diameter": "5/32 in", "ports_per_row": "10", "rows": "3", "block_thickness": "2 in", "grip": "1/2 in",
         "inlet": "1", "port_wall_temperature": "900 degF",
         "blower_shutoff_pressure": "1.5 inH2O", "blower_free_flow": "15 cfm", "mix_pipe": "3/4", "mix_pipe_length": "12 in",
         "baffle_holes": "40", "baffle_hole_diameter": "1/4 in", "gas_pressure": "3 psi", "jet_drill": "#70",
         "cylinder": "30", "pin_stock_length": "12 in"},
        {"units": "mm", "chamber_length": "600 mm", "chamber_width": "125 mm", "chamber_height": "125 mm",
         "lining": "ifb_23 64 mm, blanket_8lb 25 mm", "opening_area": "65 cm2", "opening_depth": "64 mm",
         "chamber_temperature": "845 degC", "work_rate": "2.5 kg/h", "work_temperature": "815 degC", "heat_up_time": "30 min",
         "firing_rate": "auto", "low_fire": "50 %", "ambient_temperature": "15 degC",
         "body_length": "300 mm", "body_width": "80 mm", "body_depth": "80 mm", "wall": "4 mm", "setback": "14 mm",
         "corner_radius": "5 mm", "port_diameter": "4 mm", "ports_per_row": "10", "rows": "3", "edge_margin": "6 mm",
         "block_thickness": "50 mm", "grip": "15 mm", "inlet": "1", "port_wall_temperature": "480 degC",
         "blower_shutoff_pressure": "4 mbar", "blower_free_flow": "25 m3/h", "mix_pipe": "3/4", "mix_pipe_length": "300 mm",
         "baffle_holes": "40", "baffle_hole_diameter": "6.5 mm", "baffle_thickness": "1.5 mm", "baffle_bend_angle": "60 deg",
         "gas_pressure": "0.2 bar", "jet_drill": "0.7 mm",
         "cylinder": "30", **METRIC_BENCH, "pin_stock_length": "300 mm"}),
    Example(
        "smith", "General smith's forge",
        "A box forge that brings 1 in (25 mm) bar to welding heat; two burners are made, one to use and one to sell.",
        {"chamber_length": "14 in", "chamber_width": "7 in", "chamber_height": "6 in",
         "lining": "dense_castable 1 in, ifb_26 2 1/2 in, blanket_8lb 1 in", "opening_area": "18 in2", "opening_depth": "4 1/2 in",
         "chamber_temperature": "2350 degF", "work_rate": "15 lb/h", "work_temperature": "2300 degF", "heat_up_time": "45 min",
         "firing_rate": "150 kBtu/h",
         "body_length": "12 in", "port_diameter": "5/16 in", "rows": "5", "ports_per_row": "10",
         "blower_shutoff_pressure": "3 inH2O", "blower_free_flow": "70 cfm", "mix_pipe_length": "24 in",
         "baffle_holes": "60", "gas_pressure": "5 psi", "jet_drill": "#48", "cylinder_count": "2", "batch_size": "2"},
        {"units": "mm", "chamber_length": "355 mm", "chamber_width": "180 mm", "chamber_height": "150 mm",
         "lining": "dense_castable 25 mm, ifb_26 64 mm, blanket_8lb 25 mm", "opening_area": "115 cm2", "opening_depth": "115 mm",
         "chamber_temperature": "1290 degC", "work_rate": "7 kg/h", "work_temperature": "1260 degC", "heat_up_time": "45 min",
         "firing_rate": "44 kW", "ambient_temperature": "15 degC",
         "body_length": "300 mm", "body_width": "100 mm", "body_depth": "100 mm", "wall": "4 mm", "setback": "15 mm",
         "corner_radius": "5 mm", "port_diameter": "8 mm", "rows": "5", "ports_per_row": "10", "edge_margin": "6 mm",
         "block_thickness": "65 mm", "grip": "18 mm", "port_wall_temperature": "650 degC",
         "blower_shutoff_pressure": "7.5 mbar", "blower_free_flow": "120 m3/h", "mix_pipe_length": "600 mm",
         "baffle_holes": "60", "baffle_hole_diameter": "9.5 mm", "baffle_thickness": "1.5 mm",
         "gas_pressure": "0.35 bar", "jet_drill": "2 mm",
         "cylinder_count": "2", **METRIC_BENCH, "batch_size": "2"}),
    Example(
        "crucible", "Small crucible furnace",
        "A round furnace on house gas that melts 10 lb (4.5 kg) of bronze an hour; a short burner, its rate left to the chamber.",
        {"chamber_shape": "cylinder", "chamber_length": "10 in", "chamber_diameter": "8 in",
         "lining": "dense_castable 1 in, ifb_26 2 1/2 in, blanket_8lb 1 in", "opening_area": "7 in2", "opening_depth": "3 in",
         "chamber_temperature": "2250 degF", "work_metal": "bronze", "work_rate": "10 lb/h", "work_temperature": "2100 degF",
         "heat_up_time": "40 min", "fuel": "natural_gas", "firing_rate": "auto", "equivalence_ratio": "0.98",
         "body_length": "5 in", "port_diameter": "5/16 in", "rows": "4", "ports_per_row": "5",
         "baffle_holes": "24", "gas_pressure": "7 inH2O", "jet_drill": "#19"},
        {"units": "mm", "chamber_shape": "cylinder", "chamber_length": "255 mm", "chamber_diameter": "205 mm",
         "lining": "dense_castable 25 mm, ifb_26 64 mm, blanket_8lb 25 mm", "opening_area": "45 cm2", "opening_depth": "75 mm",
         "chamber_temperature": "1230 degC", "work_metal": "bronze", "work_rate": "4.5 kg/h", "work_temperature": "1150 degC",
         "heat_up_time": "40 min", "fuel": "natural_gas", "firing_rate": "auto", "equivalence_ratio": "0.98", "ambient_temperature": "15 degC",
         "body_length": "125 mm", "body_width": "100 mm", "body_depth": "100 mm", "wall": "4 mm", "setback": "15 mm",
         "corner_radius": "5 mm", "port_diameter": "8 mm", "rows": "4", "ports_per_row": "5", "edge_margin": "6 mm",
         "block_thickness": "65 mm", "grip": "18 mm", "port_wall_temperature": "650 degC",
         "blower_shutoff_pressure": "10 mbar", "blower_free_flow": "100 m3/h", "mix_pipe_length": "450 mm",
         "baffle_holes": "24", "baffle_hole_diameter": "9.5 mm", "baffle_thickness": "1.5 mm",
         "gas_pressure": "20 mbar", "jet_drill": "4 mm", **METRIC_BENCH}),
)
