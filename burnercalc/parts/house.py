"""What the gas line of the house has to pass at once: all burners at high fire, their pilots and the other appliances;
its pipe; and the coldest air for the tank of a line of propane."""

from dataclasses import dataclass

from ..constants import STANDARD_PRESSURE_PA
from ..making.train import HOUSE_PIPE_PA, house_pipes
from ..physics.lp_blend import boiled_down, bubble_temp_K
from .blend import NEAR_EMPTY
from .cylinders import FEEDS
from .firing import Firing
from .gas import Gas
from .gas_line import GasLine
from .pilot import Pilot
from .shop import Shop
from .tries import LEAST_REGULATOR_PA


@dataclass(frozen=True)
class House:
    """Gas as the meter counts it, warm as the shop and under the line's pressure; None for gas of a cylinder.

    `pipes`: nominal sizes from the meter to the train and the longest run of each that takes no more than `pipe_Pa`.
    `coldest_K`: air in which what is in a full tank of a line still holds what its regulator needs, `last_coldest_K`
    near empty, nothing drawn; None for gas that is not sold liquid.
    """

    burner_m3_s: float | None
    all_m3_s: float | None
    pipe_Pa: float = 0.0
    pipes: tuple[tuple[str, float], ...] = ()
    coldest_K: float | None = None
    last_coldest_K: float | None = None


def house(
    burner_count: int,
    other_appliances: float,
    sizes: str,
    line_pressure: float,
    gas: Gas,
    gas_line: GasLine,
    shop: Shop,
    firing: Firing,
    pilot: Pilot,
) -> House:
    if not gas_line.there:
        return House(None, None)
    burner_m3_s = (firing.gas_m3_s + pilot.gas_m3_s) * burner_count
    all_m3_s = burner_m3_s + other_appliances / gas.gross_J_m3
    pipe_Pa = HOUSE_PIPE_PA[sizes]
    line_Pa = shop.pressure_Pa + line_pressure
    counted = shop.swell * shop.pressure_Pa / line_Pa
    dense = min(line_Pa / STANDARD_PRESSURE_PA, 1.0)  # the codes' tables, at sea level, make nothing of the line's own
    return House(
        burner_m3_s * counted,
        all_m3_s * counted,
        pipe_Pa,
        # Thin gas runs faster: the same mass takes more pressure, as its density is less.
        house_pipes(gas_m3_s=all_m3_s, drop_Pa=pipe_Pa * dense, composition=gas.composition),
        *_coldest_K(gas, shop, line_pressure),
    )


def _coldest_K(gas, shop, line_Pa):
    """As of a cylinder, whose regulator gives what the line's does."""
    if gas.liquid is None:
        return None, None
    needed_Pa = shop.pressure_Pa + max(LEAST_REGULATOR_PA, FEEDS * line_Pa)
    last = boiled_down(gas.liquid, shop.temp_K, NEAR_EMPTY)
    return bubble_temp_K(gas.liquid, needed_Pa), bubble_temp_K(last, needed_Pa)
