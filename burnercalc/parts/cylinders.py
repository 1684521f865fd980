"""The cylinders, or the tank: what they can give, and how long; and what an hour of high fire costs."""

from dataclasses import dataclass
from functools import lru_cache

from ..physics import cylinder as physics
from ..physics.band import Band
from .firing import Firing
from .gas import Gas
from .shop import Shop

DRAW_BAND = (0.9, 1.1)  # of the coefficient fitted to the table


@dataclass(frozen=True)
class Cylinders:
    """All None for gas that comes by a line. `draw_W`: what they keep up at this fill without chilling further.

    `left_share`: of a full charge, at the end of the run; `least_Pa`: gauge pressure that they must hold.
    """

    draw_W: Band | None
    run_s: float | None
    ended_by: str | None
    frost_s: float | None
    left_share: float | None
    least_Pa: float
    fuel_cost_per_hour: float


@lru_cache(maxsize=64)
def _run(vessel, liquid_kg, species, air_temp_K, inlet_Pa, draw_W, heating_J_kg):
    return (
        physics.draw_limit_W(vessel, liquid_kg, species, air_temp_K, inlet_Pa, heating_J_kg),
        physics.run_down(vessel, liquid_kg, species, air_temp_K, inlet_Pa, draw_W, heating_J_kg, 100),
    )


def cylinders(
    cylinder: str,
    cylinder_count: int,
    cylinder_fill: float,
    tank_diameter: float,
    tank_length: float,
    regulator_inlet_pressure: float,
    gas_pressure: float,
    fuel_price: float,
    gas: Gas,
    shop: Shop,
    firing: Firing,
) -> Cylinders:
    cost, least_Pa = firing.gas_kg_s * 3600 * fuel_price, max(regulator_inlet_pressure, gas_pressure)
    if gas.liquid is None:
        return Cylinders(None, None, None, None, None, least_Pa, cost)
    vessel = (
        physics.lying_tank(tank_diameter, tank_length)
        if cylinder == "tank"
        else physics.upright_cylinder(f"{cylinder} lb")
    )
    each, run = _run(
        vessel,
        vessel.capacity_kg * cylinder_fill,
        gas.liquid,
        shop.temp_K,
        shop.pressure_Pa + least_Pa,
        firing.rate_W / cylinder_count,
        gas.gross_J_kg,
    )
    draw = each * cylinder_count
    return Cylinders(
        draw_W=Band(DRAW_BAND[0] * draw, draw, DRAW_BAND[1] * draw),
        run_s=run.run_time_s,
        ended_by=run.ended_by,
        frost_s=run.frost_time_s,
        left_share=run.left_kg / vessel.capacity_kg,
        least_Pa=least_Pa,
        fuel_cost_per_hour=cost,
    )
