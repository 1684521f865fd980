"""Worked examples: three scenarios of our own, each in inches and in millimetres."""
from dataclasses import dataclass


@dataclass(frozen=True)
class Example:
    """A scenario: what it is for, and its settings as typed in each system of units."""
    key: str
    name: str
    sentence: str
    inches: dict
    metric: dict


EXAMPLES = (
    Example("knife", "Knife maker's heat-treating forge",
            "A long, narrow, well lined chamber that holds an even orange heat over a 15 in blade.",
            {"body_length": "12 in", "body_width": "3 in", "body_depth": "3 in", "wall": "1/8 in", "setback": "1/2 in", "corner_radius": "1/8 in",
             "port_diameter": "3/16 in", "rows": "3", "ports_per_row": "14", "edge_margin": "1/4 in", "block_thickness": "2 in",
             "grip": "1/2 in", "inlet": "1-1/2", "firing_rate": "50 kBtu/h", "equivalence_ratio": "1.05"},
            {"units": "mm", "body_length": "300 mm", "body_width": "75 mm", "body_depth": "75 mm", "wall": "3 mm", "setback": "12 mm",
             "corner_radius": "3 mm", "port_diameter": "5 mm", "rows": "3", "ports_per_row": "13", "edge_margin": "6 mm", "block_thickness": "50 mm",
             "grip": "13 mm", "inlet": "1-1/2", "firing_rate": "15 kW", "equivalence_ratio": "1.05", "ambient_temperature": "15 degC"}),
    Example("smith", "General smith's forge",
            "A box forge that brings 1 in bar to welding heat; two doors, a shelf, and work all day.",
            {"body_length": "10 in", "rows": "5", "ports_per_row": "10", "firing_rate": "130 kBtu/h", "equivalence_ratio": "1.05"},
            {"units": "mm", "body_length": "250 mm", "body_width": "100 mm", "body_depth": "100 mm", "wall": "5 mm", "setback": "16 mm",
             "corner_radius": "5 mm", "port_diameter": "6.5 mm", "rows": "5", "ports_per_row": "9", "edge_margin": "6 mm",
             "block_thickness": "65 mm", "grip": "20 mm", "inlet": "2", "firing_rate": "38 kW", "equivalence_ratio": "1.05",
             "ambient_temperature": "15 degC"}),
    Example("crucible", "Small crucible furnace",
            "A round furnace for a few pounds of bronze: short box, hot and slightly rich.",
            {"body_length": "5 in", "body_width": "4 in", "body_depth": "4 in", "rows": "4", "ports_per_row": "5", "port_diameter": "5/16 in",
             "inlet": "1-1/2", "firing_rate": "85 kBtu/h", "equivalence_ratio": "1.05"},
            {"units": "mm", "body_length": "125 mm", "body_width": "100 mm", "body_depth": "100 mm", "wall": "5 mm", "setback": "16 mm",
             "corner_radius": "5 mm", "port_diameter": "8 mm", "rows": "4", "ports_per_row": "5", "edge_margin": "6 mm",
             "block_thickness": "65 mm", "grip": "20 mm", "inlet": "1-1/2", "firing_rate": "25 kW", "equivalence_ratio": "1.05",
             "ambient_temperature": "15 degC"}),
)
