"""What the gas line of the house has to pass at once: all burners at high fire, and the other appliances."""

from dataclasses import dataclass

from .firing import Firing
from .gas import Gas


@dataclass(frozen=True)
class House:
    """Gas at 15 degC and 101 325 Pa; None for gas of a cylinder."""

    burner_m3_s: float | None
    all_m3_s: float | None


def house(burner_count: int, other_appliances: float, gas: Gas, firing: Firing) -> House:
    if gas.liquid is not None:
        return House(None, None)
    burner_m3_s = firing.gas_m3_s * burner_count
    return House(burner_m3_s, burner_m3_s + other_appliances / gas.gross_J_m3)
