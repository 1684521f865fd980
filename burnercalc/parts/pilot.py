"""The gas of the pilots, which burn as long as the main gas flows. Their heat is not counted: the burner does alone."""

from dataclasses import dataclass

from ..physics import combustion
from .gas import Gas


@dataclass(frozen=True)
class Pilot:
    """Of one burner, none behind a torch; rates are gross, flows at 15 degC and 101 325 Pa. `all_W`: of all burners."""

    rate_W: float
    all_W: float
    gas_m3_s: float
    gas_kg_s: float

    @property
    def told_W(self) -> float | None:
        """None where there is none."""
        return self.all_W or None


def pilot(lit_by: str, pilot_rate: float, burner_count: int, gas: Gas) -> Pilot:
    rate_W = pilot_rate if lit_by == "guard" else 0.0
    return Pilot(
        rate_W=rate_W,
        all_W=rate_W * burner_count,
        gas_m3_s=combustion.gas_flow_m3_s(gas.composition, rate_W) if rate_W else 0.0,
        gas_kg_s=combustion.gas_flow_kg_s(gas.composition, rate_W) if rate_W else 0.0,
    )
