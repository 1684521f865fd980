"""What the chamber needs of the fire: firing rates to hold, to work and to heat up, of all burners together."""

from dataclasses import dataclass

from ..physics import chamber as physics
from ..physics import combustion
from .chamber import Chamber
from .flame import Flame
from .gas import Gas


@dataclass(frozen=True)
class Need:
    """Gross rates; all None where the flame leaves (nearly) nothing at the chamber temperature."""

    hold_W: float | None
    working_W: float | None
    heat_up_W: float | None
    needed_W: float | None
    decided_by: str | None  # "working" or "heat-up"
    efficiency: float | None
    gas_kg_s: float | None  # while working


def needed(chamber: Chamber, flame: Flame, gas: Gas) -> Need:
    """The Need of a chamber under any flame."""
    if flame.available is None or not flame.available > physics.LEAST_AVAILABLE:
        return Need(None, None, None, None, None, None, None)
    found = physics.firing(chamber.heat, flame.available)
    return Need(
        hold_W=found.hold_rate_W,
        working_W=found.working_rate_W,
        heat_up_W=found.heat_up_rate_W,
        needed_W=found.firing_rate_needed_W,
        decided_by=found.decided_by,
        efficiency=found.thermal_efficiency,
        gas_kg_s=combustion.gas_flow_kg_s(gas.composition, found.working_rate_W),
    )


def need(chamber: Chamber, flame: Flame, gas: Gas) -> Need:
    return needed(chamber, flame, gas)
