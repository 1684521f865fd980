"""A blend of liquid gases as it boils off: first and last gas of a cylinder or tank, through the same jet."""

from dataclasses import dataclass
from math import sqrt

from ..physics import fuels
from ..physics.lp_blend import boiled_down, vapour
from ..physics.thermo import fractions
from .gas import LIQUIDS, Gas, gas_of
from .gas_line import GasLine
from .shop import Shop

NEAR_EMPTY = 0.05  # of a full charge; common practice


@dataclass(frozen=True)
class Drawn:
    """A gas in place of the mean of the charge, jet, gas pressure and air as they are: what mixture, heat and volume of
    gas come to, times what they are of the mean."""

    gas: Gas
    ratio_times: float
    rate_times: float
    gas_times: float


@dataclass(frozen=True)
class Blend:
    """`first`, of a full charge, and `last`, of `left_share` of it, the least that is burned; None of a gas that stays
    what it is."""

    left_share: float
    first: Drawn | None = None
    last: Drawn | None = None

    @property
    def ends(self) -> tuple[Drawn, ...]:
        return () if self.first is None or self.last is None else (self.first, self.last)

    @property
    def passes_mean(self) -> bool:
        """Whether the mean of the charge is drawn at all: not where it is changed early."""
        return not self.ends or self.first.ratio_times <= 1 <= self.last.ratio_times

    @property
    def heaviest_times(self) -> float:
        """Of the mass that the mean comes to through the jet, the most that one of its gases does."""
        return max((1 / one.gas_times for one in self.ends), default=1.0)

    def span(self, equivalence_ratio: float) -> tuple[float, float]:
        """The leanest and the richest that a mixture of the mean comes to; itself where the gas stays what it is."""
        found = [equivalence_ratio * one.ratio_times for one in self.ends] or [equivalence_ratio]
        return min(found), max(found)


def blend(cylinder_left: float, gas: Gas, gas_line: GasLine, shop: Shop) -> Blend:
    return blend_down_to(NEAR_EMPTY if gas_line.there else max(cylinder_left, NEAR_EMPTY), gas, shop)


def blend_down_to(left_share: float, gas: Gas, shop: Shop) -> Blend:
    """From full, boiled in the shop's air: what the cold leaves comes on a warmer day, or for less fire. Gas lighter
    than ethane is a trace, or no cylinder holds it."""
    if gas.liquid is None or (len(gas.liquid) == 1 and not gas.ethane):
        return Blend(left_share)
    charge = fractions(tuple(part for part in gas.composition if part[0] in (*LIQUIDS, "C2H6")))
    first = vapour(charge, shop.temp_K)
    last = vapour(boiled_down(gas.liquid, shop.temp_K, left_share), shop.temp_K)
    return Blend(left_share, *(drawn(one, gas.composition) for one in (first, last)))


def drawn(composition: tuple[tuple[str, float], ...], mean: tuple[tuple[str, float], ...]) -> Drawn:
    """As a jet at one pressure passes gas, by the root of its density."""
    volume = sqrt(fuels.molar_mass_kg_mol(mean) / fuels.molar_mass_kg_mol(composition))
    air = fuels.stoichiometric_air_mol_mol(composition) / fuels.stoichiometric_air_mol_mol(mean)
    heat = fuels.gross_heating_value_J_mol(composition) / fuels.gross_heating_value_J_mol(mean)
    return Drawn(gas_of(composition), volume * air, volume * heat, volume)
