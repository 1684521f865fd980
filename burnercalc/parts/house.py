"""What the gas line of the house has to pass at once: all burners at high fire, and the other appliances; its pipe."""

from dataclasses import dataclass

from ..making.train import HOUSE_PIPE_PA, house_pipes
from .firing import Firing
from .gas import Gas


@dataclass(frozen=True)
class House:
    """Gas at 15 degC and 101 325 Pa; None for gas of a cylinder.

    `pipes`: nominal sizes from the meter to the train and the longest run of each that takes no more than `pipe_Pa`.
    """

    burner_m3_s: float | None
    all_m3_s: float | None
    pipe_Pa: float = 0.0
    pipes: tuple[tuple[str, float], ...] = ()


def house(burner_count: int, other_appliances: float, sizes: str, gas: Gas, firing: Firing) -> House:
    if gas.liquid is not None:
        return House(None, None)
    burner_m3_s = firing.gas_m3_s * burner_count
    all_m3_s = burner_m3_s + other_appliances / gas.gross_J_m3
    pipe_Pa = HOUSE_PIPE_PA[sizes]
    return House(
        burner_m3_s,
        all_m3_s,
        pipe_Pa,
        house_pipes(gas_m3_s=all_m3_s, drop_Pa=pipe_Pa, composition=gas.composition),
    )
