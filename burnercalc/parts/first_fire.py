"""The gas that the first fire takes, if the burner makes it."""

from dataclasses import dataclass

from .fires import to_low
from .firing import Firing
from .gas_price import GasPrice
from .lighting import Lighting
from .lighting_air import LightingAir
from .pilot import Pilot
from .schedule import Schedule
from .turning import Turning


@dataclass(frozen=True)
class FirstFire:
    """Of all heats, at low fire; none where a kiln makes them, or where nobody may turn to low fire."""

    fuel_kg: float
    fuel_cost: float


def first_fire(
    low_fire: float,
    firing: Firing,
    pilot: Pilot,
    schedule: Schedule,
    gas_price: GasPrice,
    lighting: Lighting,
    lighting_air: LightingAir,
    turning: Turning,
) -> FirstFire:
    makes_it = not schedule.means.kiln and to_low(lighting, lighting_air, turning)
    return of_low_fire(low_fire, firing, pilot, schedule, gas_price) if makes_it else FirstFire(0.0, 0.0)


def of_low_fire(low_fire: float, firing: Firing, pilot: Pilot, schedule: Schedule, gas_price: GasPrice) -> FirstFire:
    gas_kg_s = firing.gas_kg_s * low_fire + pilot.gas_kg_s
    fuel_kg = 0.0 if schedule.means.kiln else gas_kg_s * schedule.watched_s
    return FirstFire(fuel_kg, fuel_kg * gas_price.per_kg)
