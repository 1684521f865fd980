"""How much work the chamber can heat: what bars take up, and what the heat that the fire has to spare is worth."""

from dataclasses import dataclass

from ..physics import throughput as physics
from ..physics.band import Band
from .back_pressure import BackPressure
from .bars import Bars
from .chamber import Chamber
from .reached import Reached


@dataclass(frozen=True)
class Throughput:
    """Both None in a chamber as good as closed. `metal_kg_s`: the less of bars and fire, None where nothing gets as
    hot; `fire_kg_s`: what the heat to spare is enough for, which alone limits a melt.
    """

    metal_kg_s: Band | None
    fire_kg_s: Band | None


def throughput(chamber: Chamber, reached: Reached, bars: Bars, back_pressure: BackPressure) -> Throughput:
    if back_pressure.opening_Pa is None:
        return Throughput(None, None)
    heat_J_kg = chamber.heat_J_kg
    fire = (
        Band(*(physics.charge_rate_kg_s(spare_heat_W=spare, heat_J_kg=heat_J_kg) for spare in reached.spare_W))
        if reached.spare_W
        else None
    )
    if bars.count is None:
        return Throughput(fire, fire)
    both = Band(*(min(pair) for pair in zip(bars.taken_kg_s, fire))) if bars.taken_kg_s and fire else None
    return Throughput(both, fire)
