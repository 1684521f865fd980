"""The fuel gas: what it is made of and what a volume and a weight of it are worth."""

from dataclasses import dataclass

from ..physics import fuels
from ..physics.thermo import fractions

LIQUIDS = ("C3H8", "C4H10", "iC4H10", "C3H6")


@dataclass(frozen=True)
class Gas:
    """Fuel gas, the mean of a charge; `liquid`: that charge when full, None for a gas that is not sold liquid.

    Of a charge only what boils with it counts: ethane and lighter gas leaves first, and would only help in the cold.
    """

    composition: tuple[tuple[str, float], ...]
    liquid: tuple[tuple[str, float], ...] | None
    gross_J_m3: float
    net_J_m3: float
    gross_J_kg: float
    net_J_kg: float
    wobbe_J_m3: float

    @property
    def metered(self) -> bool:
        """Gas that is not sold liquid comes by the gas company's line, through its meter."""
        return self.liquid is None

    @property
    def blended(self) -> bool:
        """Whether it boils off as another gas all the time."""
        return self.liquid is not None and len(self.liquid) > 1

    @property
    def ethane(self) -> float:
        """Share of it that stands over the liquid of a charge and leaves first."""
        return dict(self.composition).get("C2H6", 0.0)

    @property
    def lighter(self) -> float:
        """The same of gas that is none of a charge at all."""
        return sum(share for name, share in self.composition if name not in (*LIQUIDS, "C2H6"))


def gas(fuel: str, fuel_blend: tuple | None) -> Gas:
    """The blend when there is one, else what stands behind the fuel's name."""
    return gas_of(fuel_blend or fuels.fuel_composition(fuel))


def gas_of(composition: tuple[tuple[str, float], ...]) -> Gas:
    largest = max(composition, key=lambda share: share[1])[0]
    return Gas(
        composition=composition,
        liquid=fractions(tuple(part for part in composition if part[0] in LIQUIDS)) if largest in LIQUIDS else None,
        gross_J_m3=fuels.gross_heating_value_J_m3(composition),
        net_J_m3=fuels.net_heating_value_J_m3(composition),
        gross_J_kg=fuels.gross_heating_value_J_kg(composition),
        net_J_kg=fuels.net_heating_value_J_kg(composition),
        wobbe_J_m3=fuels.wobbe_index_J_m3(composition),
    )
