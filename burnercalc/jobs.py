"""The jobs that somebody comes with: a name, a sentence and a design to start from, in each system of units."""

from dataclasses import dataclass, field

from .examples import EXAMPLES


@dataclass(frozen=True)
class Job:
    """What somebody wants to do.

    Attributes:
        opens      room that is gone to; "" stays where the answer is
        inches, metric   settings to start from; empty leaves the design as it is
    """

    key: str
    name: str
    sentence: str
    inches: dict = field(default_factory=dict)
    metric: dict = field(default_factory=dict)
    opens: str = ""


# An example is a burner as it was built; a job's fire and jet follow the chamber that somebody sets.
_FOLLOWS = {"firing_rate": "auto", "jet_drill": ""}


def _follows(texts: dict) -> dict:
    return {key: _FOLLOWS.get(key, text) for key, text in texts.items() if _FOLLOWS.get(key, text)}


_SCENARIO = {e.key: {"inches": _follows(e.inches), "metric": _follows(e.metric)} for e in EXAMPLES}

JOBS = (
    Job(
        "forge",
        "Forge",
        "A box forge for bar and small work at 2250 °F (1230 °C); the fire is what the chamber needs.",
        {
            "lining": "dense_castable 1 in, ifb_26 2 1/2 in, blanket_8lb 1 in",
            "opening_depth": "4 1/2 in",
            "heat_up_time": "55 min",
            "firing_rate": "auto",
            "cylinder_count": "2",
        },
        {
            "units": "mm",
            "lining": "dense_castable 25 mm, ifb_26 64 mm, blanket_8lb 25 mm",
            "opening_depth": "115 mm",
            "heat_up_time": "55 min",
            "firing_rate": "auto",
            "cylinder_count": "2",
        },
    ),
    Job("weld", "Weld", "A forge that brings bar to welding heat, at 2350 °F (1290 °C).", **_SCENARIO["smith"]),
    Job(
        "heat_treat",
        "Heat-treat",
        "A long, narrow chamber that holds blades at 1500 °F (815 °C).",
        **_SCENARIO["knife"],
    ),
    Job("melt_bronze", "Melt bronze", "A round furnace for a small crucible.", **_SCENARIO["crucible"]),
    Job(
        "melt_iron",
        "Melt iron",
        "A round furnace, well insulated, that is brought to 2650 °F (1455 °C) in three hours.",
        {
            "chamber_shape": "cylinder",
            "chamber_length": "12 in",
            "chamber_diameter": "9 in",
            "lining": "dense_castable 1 in, ifb_28 4 1/2 in, blanket_8lb 1 in",
            "opening_area": "12 in2",
            "chamber_temperature": "2650 degF",
            "equivalence_ratio": "0.95",
            "work_metal": "iron",
            "work_rate": "6 lb/h",
            "work_temperature": "2500 degF",
            "heat_up_time": "180 min",
            "low_fire": "55 %",
            "firing_rate": "auto",
            "cylinder_count": "2",
            "rows": "4",
            "port_diameter": "9/32 in",
            "block_thickness": "3 in",
            "gas_pressure": "10 psi",
            "lit_by": "guard",
        },
        {
            "units": "mm",
            "chamber_shape": "cylinder",
            "chamber_diameter": "230 mm",
            "lining": "dense_castable 25 mm, ifb_28 115 mm, blanket_8lb 25 mm",
            "chamber_temperature": "1455 degC",
            "equivalence_ratio": "0.95",
            "work_metal": "iron",
            "work_rate": "2.7 kg/h",
            "work_temperature": "1370 degC",
            "heat_up_time": "180 min",
            "low_fire": "55 %",
            "firing_rate": "auto",
            "cylinder_count": "2",
            "port_diameter": "7 mm",
            "rows": "4",
            "block_thickness": "75 mm",
            "gas_pressure": "0.7 bar",
            "lit_by": "guard",
        },
    ),
    Job(
        "burner",
        "I have a burner",
        "Measure it and enter it: box, ports, blower and jet. Then read what it gives.",
        opens="feed",
    ),
    Job("face", "Only the face", "Lay out the ports for a piece of tube and pins at hand.", opens="face"),
)
