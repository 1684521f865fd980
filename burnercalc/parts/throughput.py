"""How much work the chamber can heat: what bars take up, and what the heat that the fire has to spare is worth."""

from dataclasses import dataclass
from math import sqrt

from ..physics import throughput as physics
from ..physics.band import Band
from .back_pressure import BackPressure
from .chamber import Chamber
from .reached import Reached
from .shop import Shop


@dataclass(frozen=True)
class Throughput:
    """All None in a chamber as good as closed. `metal_kg_s`: None where nothing gets as hot. `bars`: how many lie side
    by side, 0 if none fits, None for a melt. `bars_kg_s`: what their surface takes up at the set temperature;
    `fire_kg_s`: what the heat to spare is enough for.
    """

    metal_kg_s: Band | None
    bars: int | None
    bars_kg_s: Band | None
    fire_kg_s: Band | None


def throughput(
    chamber: Chamber,
    reached: Reached,
    shop: Shop,
    back_pressure: BackPressure,
    chamber_shape: str,
    chamber_length: float,
    chamber_width: float,
    chamber_diameter: float,
    chamber_temperature: float,
    work_metal: str,
    work_temperature: float,
    bar_diameter: float,
) -> Throughput:
    """Solid work lies on the floor as round bars; what melts is a charge in a pot, and the fire alone limits it."""
    if back_pressure.opening_Pa is None:
        return Throughput(None, None, None, None)
    heat_J_kg = chamber.heat_J_kg
    fire = (
        Band(*(physics.charge_rate_kg_s(spare_heat_W=spare, heat_J_kg=heat_J_kg) for spare in reached.spare_W))
        if reached.spare_W
        else None
    )
    if chamber.work_state.case != "solid":
        return Throughput(fire, None, None, fire)
    # The floor of a round chamber: the square in its circle.
    width_m = chamber_width if chamber_shape == "box" else chamber_diameter / sqrt(2)
    bars = physics.bar_throughput_kg_s(
        metal_key=work_metal,
        diameter_m=bar_diameter,
        length_m=chamber_length,
        width_m=width_m,
        start_temp_K=shop.temp_K,
        end_temp_K=work_temperature,
        chamber_temp_K=chamber_temperature,
    )
    count = physics.bars_on_floor(width_m=width_m, diameter_m=bar_diameter)
    both = Band(*(min(pair) for pair in zip(bars, fire))) if bars and fire else None
    return Throughput(both, count, bars, fire)
