"""What the gas costs by weight, however it is sold."""

from dataclasses import dataclass

from ..physics import fuels
from ..physics.lp_blend import blend_density_kg_m3
from .gas import Gas

METERED_K = 288.15  # at which gallons, litres and cubic metres of gas are counted


@dataclass(frozen=True)
class GasPrice:
    """Price of a kilogram, in the money of the setting."""

    per_kg: float


def gas_price(fuel_price: tuple[float, str], gas: Gas) -> GasPrice:
    """Heat is gross; a liquid is the full charge at 15 degC. A rule refuses a price by liquid for gas of a line."""
    price, per = fuel_price
    if per == "J":
        return GasPrice(price * gas.gross_J_kg)
    if per == "m3 gas":
        return GasPrice(price / fuels.density_kg_m3(gas.composition))
    if per == "m3 liquid" and gas.liquid:
        return GasPrice(price / blend_density_kg_m3(gas.liquid, METERED_K))
    return GasPrice(price)
