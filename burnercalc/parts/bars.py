"""How much solid work takes up heat on the floor, however much gas burns: round bars side by side."""

from dataclasses import dataclass
from math import sqrt

from ..physics import throughput as physics
from ..physics.band import Band
from .chamber import Chamber
from .shop import Shop


@dataclass(frozen=True)
class Bars:
    """Both None for a melt, a charge in a pot. `count`: how many lie side by side, 0 if none fits; `taken_kg_s`: what
    their surface takes up at the set temperature, None where nothing gets as hot."""

    count: int | None
    taken_kg_s: Band | None


def bars(
    chamber: Chamber,
    shop: Shop,
    chamber_shape: str,
    chamber_length: float,
    chamber_width: float,
    chamber_diameter: float,
    chamber_temperature: float,
    work_metal: str,
    work_temperature: float,
    bar_diameter: float,
) -> Bars:
    if chamber.work_state.case != "solid":
        return Bars(None, None)
    # The floor of a round chamber: the square in its circle.
    width_m = chamber_width if chamber_shape == "box" else chamber_diameter / sqrt(2)
    kg_s = physics.bar_throughput_kg_s(
        metal_key=work_metal,
        diameter_m=bar_diameter,
        length_m=chamber_length,
        width_m=width_m,
        start_temp_K=shop.temp_K,
        end_temp_K=work_temperature,
        chamber_temp_K=chamber_temperature,
    )
    return Bars(physics.bars_on_floor(width_m=width_m, diameter_m=bar_diameter), kg_s)
