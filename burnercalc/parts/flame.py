"""The flame, and the flue gas that leaves the chamber."""

from dataclasses import dataclass, replace

from ..physics import combustion
from ..physics.band import Band
from ..physics.combustion import FlueGas
from ..physics.equilibrium import EquilibriumError
from .gas import Gas
from .hand import MIXTURE_SLIP
from .shop import Shop


@dataclass(frozen=True)
class Flame:
    """Burned gas without heat loss, and as it leaves the chamber; all None where the mixture has no flame.

    `available`: share of the gross heat that stays in the chamber. `slipped`: the flue gas when the mixture slips to
    the lean and to the rich side, where there is a flame; `co_dry_band`: carbon monoxide over that range, where the
    gas cools slowly.
    """

    flue: FlueGas | None
    temp_K: float | None
    co_dry: float | None
    o2_dry: float | None
    dew_point_K: float | None
    available: float | None
    slipped: tuple[FlueGas, ...] = ()
    co_dry_band: Band | None = None


def burn(gas: Gas, shop: Shop, equivalence_ratio: float, chamber_temp_K: float) -> Flame:
    """A Flame of any mixture and chamber temperature, gas and air from the shop."""
    inlet = (shop.temp_K, shop.temp_K, shop.pressure_Pa)
    try:
        burned = combustion.flame(gas.composition, equivalence_ratio, *inlet)
        flue = combustion.flue_gas(gas.composition, equivalence_ratio, chamber_temp_K, *inlet)
        split = combustion.heat_split(gas.composition, equivalence_ratio, chamber_temp_K, *inlet)
    except EquilibriumError:
        return Flame(None, None, None, None, None, None)
    return Flame(flue, burned.temp_K, flue.co_dry, flue.o2_dry, flue.dew_point_K, split.available)


def flue_gas(gas: Gas, shop: Shop, equivalence_ratio: float, leaves_K: float) -> FlueGas | None:
    """Of any mixture, left at any temperature; None without a flame."""
    inlet = (shop.temp_K, shop.temp_K, shop.pressure_Pa)
    try:
        return combustion.flue_gas(gas.composition, equivalence_ratio, leaves_K, *inlet)
    except EquilibriumError:
        return None


def hottest_flue(gas: Gas, shop: Shop, equivalence_ratio: float) -> FlueGas | None:
    """As flue_gas, left as hot as its flame."""
    try:
        return combustion.hottest_flue_gas(
            gas.composition, equivalence_ratio, shop.temp_K, shop.temp_K, shop.pressure_Pa
        )
    except EquilibriumError:
        return None


def flame(gas: Gas, shop: Shop, equivalence_ratio: float, chamber_temperature: float) -> Flame:
    as_set = burn(gas, shop, equivalence_ratio, chamber_temperature)
    if as_set.flue is None:
        return as_set
    ratios = (equivalence_ratio - MIXTURE_SLIP, equivalence_ratio + MIXTURE_SLIP)
    slipped = tuple(burn(gas, shop, ratio, chamber_temperature).flue for ratio in ratios)
    found = tuple(flue for flue in slipped if flue)
    co = [as_set.flue.co_dry, *(flue.co_dry for flue in found)]
    return replace(as_set, slipped=found, co_dry_band=Band(min(co), as_set.flue.co_dry, max(co)))
