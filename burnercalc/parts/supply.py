"""From the regulator to the jet: hose and valves, what they take at high fire, and what the regulator must hold."""

from dataclasses import dataclass

from ..making import train as making
from .firing import Firing
from .gas import Gas
from .jet import Jet
from .shop import Shop


@dataclass(frozen=True)
class Supply:
    """`pipe`: nominal size of the parts; `valves`: spring-shut ones in a row; `outlet_Pa`: gauge, behind the regulator,
    gas flowing at high fire, every valve wide open."""

    hose_m: float
    pipe: str
    valves: int
    hose_drop_Pa: float
    valves_drop_Pa: float
    outlet_Pa: float


def supply(gas: Gas, firing: Firing, jet: Jet, shop: Shop, sizes: str) -> Supply:
    flow = {"gas_kg_s": firing.gas_kg_s, "composition": gas.composition, "temp_K": shop.temp_K}
    hose_m, hose_Pa = making.hose(gauge_Pa=jet.supply_Pa, ambient_Pa=shop.pressure_Pa, unit=sizes, **flow)
    pipe, valves = making.pipe_for_bore(hose_m), 2 if firing.rate_W > making.SECOND_VALVE_W else 1
    before = ("cock", "filter") if gas.liquid is not None else ("trap",)
    counts = {**dict.fromkeys((*before, "needle", "check_valve"), 1), "solenoid": valves}
    valves_Pa = making.valves_drop_Pa(pipe=pipe, counts=counts, pressure_Pa=shop.pressure_Pa + jet.supply_Pa, **flow)
    return Supply(hose_m, pipe, valves, hose_Pa, valves_Pa, jet.supply_Pa + hose_Pa + valves_Pa)
