"""From the regulator to the jet: hose and valves, what they take at high fire, and what the regulator must hold."""

from dataclasses import dataclass

from ..constants import INH2O_PA
from ..making import train as making
from ..physics.band import Band
from .firing import Firing
from .gas import Gas
from .gas_line import GasLine
from .jet import Jet
from .shop import Shop

LOSS_OFF = 0.3  # of what hose and valves take, either way: parts of one size differ so. Common practice
LITTLE = 0.02  # of the pressure before the jet, 1 % of the rate: wider parts give no more. Common practice
REGULATOR_TAKES_PA = 1.0 * INH2O_PA  # that a regulator of an appliance needs at its inlet over what it gives; memory


@dataclass(frozen=True)
class Supply:
    """`pipe`: nominal size of the parts; `valves`: spring-shut ones in a row; `outlet_Pa`: gauge, behind the regulator,
    gas flowing at high fire, every valve wide open, with what the losses are off by; `regulated`: whether the burner
    has a regulator of its own: not on a line that holds hardly more than such a one would give, for it needs more;
    `pilot_regulated`: whether a pilot would have one, as there is more before the main valve than it takes.
    """

    hose_m: float
    pipe: str
    valves: int
    hose_drop_Pa: float
    valves_drop_Pa: float
    outlet_Pa: Band
    regulated: bool
    pilot_regulated: bool

    def left_Pa(self, line_Pa: float, jet_Pa: float, mixture_Pa: float) -> float:
        """Gauge, before a jet that wants more at high fire than a line leaves it: what is lost goes with the square of
        the gas, as what drops over the jet does."""
        share = (line_Pa - mixture_Pa) / (self.outlet_Pa.value - mixture_Pa)
        return mixture_Pa + max(min(share, 1.0), 0.0) * (jet_Pa - mixture_Pa)

    def behind_Pa(self, jet_Pa: float, share: float) -> Band:
        """Gauge, behind the regulator, with so much before the jet at a share of high fire's gas, every valve wide
        open, with what the losses are off by."""
        lost_Pa = (self.hose_drop_Pa + self.valves_drop_Pa - making.CHECK_OPENS_PA) * share**2
        return Band(*(jet_Pa + making.CHECK_OPENS_PA + of * lost_Pa for of in (1 - LOSS_OFF, 1.0, 1 + LOSS_OFF)))


def supply(
    gas: Gas, gas_line: GasLine, firing: Firing, jet: Jet, shop: Shop, lit_by: str, sizes: str, line_pressure: float
) -> Supply:
    """From a cylinder the narrowest hose that will do, for its regulator can be set higher; from a line the narrowest
    parts with which what it holds is enough for sure, or that take next to nothing."""
    flow = {"gas_kg_s": firing.gas_kg_s, "composition": gas.composition, "temp_K": shop.temp_K}
    narrowest_m, _ = making.hose(gauge_Pa=jet.supply_Pa, ambient_Pa=shop.pressure_Pa, unit=sizes, **flow)
    valves = 2 if firing.rate_W > making.SECOND_VALVE_W else 1
    before = "trap" if gas_line.there else "filter"
    cocks = 2 if gas_line.isolated(lit_by) else 1
    counts = {**dict.fromkeys((before, "needle", "check_valve"), 1), "solenoid": valves, "cock": cocks}
    at_Pa = shop.pressure_Pa + jet.supply_Pa

    def through(hose_m):
        pipe = making.pipe_for_bore(hose_m)
        hose_Pa = making.hose_drop_Pa(bore_m=hose_m, pressure_Pa=at_Pa, **flow)
        valves_Pa = making.valves_drop_Pa(pipe=pipe, counts=counts, pressure_Pa=at_Pa, **flow)
        off_Pa = LOSS_OFF * (hose_Pa + valves_Pa - making.CHECK_OPENS_PA)
        outlet_Pa = jet.supply_Pa + hose_Pa + valves_Pa
        outlet = Band(outlet_Pa - off_Pa, outlet_Pa, outlet_Pa + off_Pa)
        regulated = not gas_line.there or line_pressure >= outlet.high + REGULATOR_TAKES_PA
        return Supply(hose_m, pipe, valves, hose_Pa, valves_Pa, outlet, regulated, outlet_Pa > making.PILOT_MOST_PA)

    found = through(narrowest_m)
    if gas_line.there:
        for hose_m in making.wider_hoses_m(narrowest_m, unit=sizes):
            lost_Pa = found.outlet_Pa.value - jet.supply_Pa - making.CHECK_OPENS_PA
            if found.outlet_Pa.high <= line_pressure or lost_Pa <= LITTLE * jet.supply_Pa:
                break
            found = through(hose_m)
    return found
