"""The gauges of the gas: which stand behind the needle valve, where they read what is before the jet, and how far."""

from dataclasses import dataclass

from ..making import train as making
from .gas import Gas
from .jet import Jet
from .lighting import Lighting


@dataclass(frozen=True)
class Gauges:
    """Full scales. `jet_Pa`: of the one that reads up to high fire; `low_Pa`: of the small one beside it, behind a cock
    that is shut before it is run past its scale, None where the other is no coarser. `low_fire_Pa`: what it reads at
    low fire.
    """

    jet_Pa: float
    low_Pa: float | None
    low_fire_Pa: float

    @property
    def small(self) -> bool:
        """Is there a small one, whose cock is shut before high fire?"""
        return self.low_Pa is not None

    @property
    def lit_by_Pa(self) -> float:
        """Full scale of the one that low fire and lighting are set by."""
        return self.jet_Pa if self.low_Pa is None else self.low_Pa


def gauges(low_fire: float, units: str, gas: Gas, jet: Jet, lighting: Lighting) -> Gauges:
    def scale_Pa(pressure_Pa: float) -> float:
        return making.gauge_Pa(pressure_Pa=pressure_Pa, unit=units, from_cylinder=gas.liquid is not None)

    low_fire_Pa = jet.low_Pa if jet.low_Pa and jet.low_Pa > 0 else jet.supply_Pa * low_fire**2
    small_Pa, jet_Pa = (
        scale_Pa(max(low_fire_Pa, lighting.gas_Pa.value if lighting.gas_Pa else 0.0)),
        scale_Pa(jet.supply_Pa),
    )
    return Gauges(jet_Pa, small_Pa if small_Pa < jet_Pa else None, low_fire_Pa)
