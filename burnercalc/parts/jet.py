"""The gas jet: its size, its drill, and the gas pressures at which it gives high and low fire."""

from dataclasses import dataclass, replace
from math import sqrt

from ..constants import PSI_PA
from ..making import train
from ..physics import drills, fuels, gas_jet
from ..physics.band import Band
from ..physics.drills import Drill
from .firing import Firing
from .gas import Gas
from .gas_line import GasLine
from .hand import NEEDLE_PRESSURE_OFF
from .resistance import Resistance
from .shop import Shop
from .stream import Stream

JET_FAMILIES = {"in": ("number", "letter"), "mm": ("metric",)}  # of a jet when none is named; common practice
OFFERED = {"in": drills.FAMILIES, "mm": ("metric",)}
NEAR_DRILL = 1.25  # drills further off than this in diameter are not offered; common practice
REGULATOR_MOST_PA = 30 * PSI_PA  # of an adjustable high-pressure LP regulator; common practice
TURN = 1.25  # pressure for the wanted rate over the set one, either way: a turn of the dial; common practice
LINE_SHORT = 0.85  # least rate over the wanted one that a line is taken with; common practice
# How far a discharge coefficient is off, either way: as drilled, and as a share of one that is proven. Common practice.
COEFFICIENT_OFF, PROVEN_OFF = 0.05, 0.01


@dataclass(frozen=True)
class Jet:
    """Gauge pressures over the shop's. None where no gas flows, or no drill comes near.

    `drill`: the one set, or else the nearest; `near`: those next below and above, of the families that a shop
    of these sizes has.
    `rate_W`: through the drill at the pressure as set.
    """

    coefficient: float
    coefficient_off: float
    gas_temp_K: float
    molar_mass_kg_mol: float
    heat_capacity_ratio: float
    gross_J_kg: float
    ambient_Pa: float
    gauge_Pa: float
    down_Pa: float  # in the mix pipe at high fire, absolute
    flows: bool
    choked: bool
    regime: str
    diameter_m: Band | None
    drill: Drill | None
    drill_name: str | None
    near: tuple[Drill, ...]
    rate_W: float | None
    high_Pa: float | None
    low_Pa: float | None
    sizes: str
    from_cylinder: bool
    given_scale_Pa: float | None

    @property
    def scale_Pa(self) -> float:
        """Full scale of its gauge: of the one set, or else of the smallest sold that reads high fire."""
        sold = {"unit": self.sizes, "from_cylinder": self.from_cylinder}
        return self.given_scale_Pa or train.gauge_Pa(pressure_Pa=self.supply_Pa, **sold)

    @property
    def mark_Pa(self) -> float:
        """From mark to mark of that gauge."""
        sold = {"unit": self.sizes, "from_cylinder": self.from_cylinder}
        return train.gauge_mark_Pa(scale_Pa=self.scale_Pa, **sold)

    @property
    def read_Pa(self) -> float | None:
        """What high fire needs, as its gauge shows it: it is told by this."""
        return None if self.high_Pa is None else at_mark_Pa(self.high_Pa, self.mark_Pa)

    @property
    def coefficients(self) -> tuple[float, float, float]:
        """The most, as set, the least."""
        return (
            min(self.coefficient + self.coefficient_off, 1.0),
            self.coefficient,
            self.coefficient - self.coefficient_off,
        )

    @property
    def supply_Pa(self) -> float:
        """What high fire needs before the drill that is sold; as set where no drill is told."""
        return self.gauge_Pa if self.high_Pa is None else self.high_Pa

    def rate_through_W(self, diameter_m: float, gauge_Pa: float, down_Pa: float | None = None) -> float:
        """Firing rate that a hole gives at a gauge pressure, against high fire unless `down_Pa` is given."""
        up, down = self.ambient_Pa + gauge_Pa, self.down_Pa if down_Pa is None else down_Pa
        if up <= down:
            return 0.0
        return self.gross_J_kg * gas_jet.jet_flow_kg_s(
            diameter_m,
            self.coefficient,
            up,
            down,
            self.gas_temp_K,
            self.molar_mass_kg_mol,
            self.heat_capacity_ratio,
        )

    def needed_Pa(self, rate_W: float, diameter_m: float, down_Pa: float | None = None) -> float:
        """Gauge pressure at which a hole gives a rate."""
        absolute = gas_jet.jet_pressure_Pa(
            rate_W / self.gross_J_kg,
            diameter_m,
            self.coefficient,
            self.down_Pa if down_Pa is None else down_Pa,
            self.gas_temp_K,
            self.molar_mass_kg_mol,
            self.heat_capacity_ratio,
        )
        return absolute - self.ambient_Pa

    def hole_m(self, rate_W: float) -> float:
        """Hole that gives a rate at the pressure as set."""
        return gas_jet.jet_diameter_m(
            rate_W / self.gross_J_kg,
            self.coefficient,
            self.ambient_Pa + self.gauge_Pa,
            self.down_Pa,
            self.gas_temp_K,
            self.molar_mass_kg_mol,
            self.heat_capacity_ratio,
        )


def jet(
    gas_pressure: float,
    jet_discharge_coefficient: float,
    jet_proven: str,
    jet_drill: str | None,
    jet_gauge: float | str,
    low_fire: float,
    sizes: str,
    gas: Gas,
    gas_line: GasLine,
    shop: Shop,
    firing: Firing,
    stream: Stream,
    resistance: Resistance,
) -> Jet:
    ratio = gas_jet.heat_capacity_ratio(gas.composition)
    down_Pa = shop.pressure_Pa + resistance.total_Pa
    flows = gas_pressure + shop.pressure_Pa > down_Pa
    choked = flows and gas_jet.is_choked(shop.pressure_Pa + gas_pressure, down_Pa, ratio)
    bare = Jet(
        coefficient=jet_discharge_coefficient,
        coefficient_off=PROVEN_OFF * jet_discharge_coefficient if jet_proven == "yes" else COEFFICIENT_OFF,
        gas_temp_K=shop.temp_K,
        molar_mass_kg_mol=fuels.molar_mass_kg_mol(gas.composition),
        heat_capacity_ratio=ratio,
        gross_J_kg=gas.gross_J_kg,
        ambient_Pa=shop.pressure_Pa,
        gauge_Pa=gas_pressure,
        down_Pa=down_Pa,
        flows=flows,
        choked=choked,
        regime="choked" if choked else "not choked",
        diameter_m=None,
        drill=None,
        drill_name=None,
        near=(),
        rate_W=None,
        high_Pa=None,
        low_Pa=None,
        sizes=sizes,
        from_cylinder=not gas_line.there,
        given_scale_Pa=None if isinstance(jet_gauge, str) else jet_gauge,
    )
    diameter = _band(bare.hole_m(firing.rate_W), bare.coefficients) if flows else None
    # To prove a jet moves no drill.
    as_drilled = diameter and _band(diameter.value, replace(bare, coefficient_off=COEFFICIENT_OFF).coefficients)
    near = _neighbours(diameter.value, OFFERED[sizes]) if diameter else ()
    drill = drills.drill_named(jet_drill) if jet_drill else _chosen(as_drilled, sizes, not gas_line.there)
    low_down_Pa = shop.pressure_Pa + resistance.pressure_Pa(stream.mixture_m3_s * low_fire)
    return replace(
        bare,
        diameter_m=diameter,
        drill=drill,
        drill_name=drill.name if drill else None,
        near=near,
        rate_W=bare.rate_through_W(drill.diameter_m, gas_pressure) if drill else None,
        high_Pa=bare.needed_Pa(firing.rate_W, drill.diameter_m) if drill else None,
        low_Pa=bare.needed_Pa(firing.rate_W * low_fire, drill.diameter_m, low_down_Pa) if drill else None,
    )


def at_mark_Pa(gas_Pa: float, mark_Pa: float) -> float:
    """As a gauge shows it: at its nearest mark, half way between two where that is too far off."""
    at_Pa = max(round(gas_Pa / mark_Pa), 1) * mark_Pa
    if abs(at_Pa - gas_Pa) <= NEEDLE_PRESSURE_OFF * gas_Pa:
        return at_Pa
    return max(round(2 * gas_Pa / mark_Pa), 1) * mark_Pa / 2


def _chosen(diameter, sizes, regulated):
    """The drill nearest to a hole; of a line, whose pressure cannot be raised, one that passes the rate in any case.

    None where no gas flows, or no drill comes near.
    """
    if diameter is None:
        return None
    hole_m = diameter.value if regulated else diameter.high
    near = _neighbours(hole_m, OFFERED[sizes])
    jets = [one for one in near if one.family in JET_FAMILIES[sizes]] or near
    passing = [] if regulated else [one for one in jets if one.diameter_m >= hole_m]
    return min(passing or jets, key=lambda one: (abs(one.diameter_m / hole_m - 1), one.name), default=None)


def _band(diameter, coefficients):
    low, _, high = (diameter * sqrt(coefficients[1] / one) for one in coefficients)
    return Band(low, diameter, high)


def _neighbours(diameter_m, families):
    """Drills next below and above a hole, of the families that have one near, each once, smallest first."""
    found = {
        drill
        for family in families
        for drill in (
            _by_tenths(diameter_m) if families == OFFERED["mm"] else drills.nearest_drills(diameter_m, family)
        )
        if drill is not None and 1 / NEAR_DRILL <= drill.diameter_m / diameter_m <= NEAR_DRILL
    }
    return tuple(sorted(found, key=lambda drill: (drill.diameter_m, drill.name)))


def _by_tenths(diameter_m):
    """The metric drills below and above a hole; from 1 mm on by tenths, the sizes that sets of drills hold."""
    held = [one for one in drills.drills("metric") if one.diameter_m < 1e-3 or round(one.diameter_m * 1e5) % 10 == 0]
    below = [one for one in held if one.diameter_m <= diameter_m + 1e-9]
    above = [one for one in held if one.diameter_m >= diameter_m - 1e-9]
    return (below[-1] if below else None), (above[0] if above else None)
