"""The gauges of the gas: which stand behind the needle valve, where they read what is before the jet, and how far."""

from dataclasses import dataclass
from math import ceil, floor
from typing import Any

from ..making import train as making
from ..physics.band import Band
from .gas_line import GasLine
from .jet import Jet, at_mark_Pa
from .lighting import Lighting

# Common practice.
GAUGE_OFF = 0.02  # of a gauge's scale
LOW_SHOWN = 0.25  # of a gauge's scale, from which it shows well enough: the larger low fire, the small one lighting
LOW_ROOM = 10 / 9  # the small one is read to nine tenths of its scale, short of its stop
TUBE_OFF_PA = 5.0  # of water in a sloping gauge, 0.5 mm, by which low pressures of a line are read


@dataclass(frozen=True)
class Gauges:
    """Full scales. `jet_Pa`: of the one that reads up to high fire; `low_Pa`: of the small one beside it, behind a cock
    that is shut before it is run past its scale, None where the other is no coarser; to light by alone where the other
    shows low fire; on a line one of its own, sloping, where any reads so much. `low_fire_Pa`: what it reads at low
    fire. `off_Pa`, `mark_Pa`: what is missed by the one that it is lit by, and from mark to mark of it; `jet_mark_Pa`:
    of the other.
    """

    jet_Pa: float
    low_Pa: float | None
    low_fire_Pa: float
    off_Pa: float
    mark_Pa: float
    jet_mark_Pa: float
    by_line: bool

    def shown_Pa(self, gas_Pa: float) -> float:
        """As the gauge that reads it shows it."""
        mark_Pa = self.mark_Pa if gas_Pa <= self.read_to_Pa else self.jet_mark_Pa
        return at_mark_Pa(gas_Pa, mark_Pa)

    @property
    def kind(self) -> str:
        """What it is lit by: small, tube (sloping) or jet, the one that reads high fire too."""
        return "jet" if self.low_Pa is None else "tube" if self.by_line else "small"

    @property
    def small(self) -> bool:
        """Is there a small one, whose cock is shut before high fire?"""
        return self.low_Pa is not None

    @property
    def read_to_Pa(self) -> float:
        """As far as the one that it is lit by is read; of a small one the cock is shut beyond."""
        return self.lit_by_Pa / LOW_ROOM + 1e-6 if self.small else self.lit_by_Pa

    @property
    def reads_low(self) -> bool:
        """Is low fire set by the one that it is lit by?"""
        return self.low_fire_Pa <= self.read_to_Pa

    def marks(self, gas_Pa: float, low_Pa: float, high_Pa: float) -> list[float]:
        """Of the pressures to light with between two others those that it shows, the nearest to one first: its marks,
        then halves of them."""
        found: dict[float, None] = {}
        for mark_Pa in (self.mark_Pa, self.mark_Pa / 2):
            first, last = ceil(low_Pa / mark_Pa - 1e-6), floor(high_Pa / mark_Pa + 1e-6)
            shown = [n * mark_Pa for n in range(first, last + 1)]
            found |= dict.fromkeys(sorted(shown, key=lambda one: abs(one - gas_Pa)))
        return list(found)

    def inward(self, low_Pa: float, gas_Pa: float, high_Pa: float) -> Band:
        """Both ends as it shows them, to half a mark, no further in than what lies between."""
        half_Pa = self.mark_Pa / 2
        first, last = ceil(low_Pa / half_Pa - 1e-6), floor(high_Pa / half_Pa + 1e-6)
        return Band(min(first * half_Pa, gas_Pa), gas_Pa, max(last * half_Pa, gas_Pa))

    @property
    def lit_by_Pa(self) -> float:
        """Full scale of the one that low fire and lighting are set by."""
        return self.jet_Pa if self.low_Pa is None else self.low_Pa


def gauges(
    low_fire: float, sizes: str, small_gauge: float | str, gas_line: GasLine, jet: Jet, lighting: Lighting
) -> Gauges:
    """Those that are set, of the rest the smallest sold that show what is read by them."""

    def scale_Pa(pressure_Pa: float, **finer: Any) -> float:
        return making.gauge_Pa(pressure_Pa=pressure_Pa, unit=sizes, from_cylinder=by_gauge, **finer)

    def tube_Pa(pressure_Pa: float) -> float:
        scales = making.TUBES_PA[sizes]
        return next((scale for scale in scales if scale >= making.GAUGE_ROOM * pressure_Pa - 1e-6), scales[-1])

    by_gauge, jet_Pa = not gas_line.there, jet.scale_Pa
    low_fire_Pa = jet.low_Pa if jet.low_Pa and jet.low_Pa > 0 else jet.supply_Pa * low_fire**2
    if small_gauge == "none":
        small_Pa = None
    elif not isinstance(small_gauge, str):
        small_Pa = small_gauge
    else:
        light_Pa = lighting.gas_Pa.value if lighting.gas_Pa else 0.0
        shown = low_fire_Pa >= LOW_SHOWN * jet_Pa and light_Pa > 0
        small_Pa = (scale_Pa if by_gauge else tube_Pa)(light_Pa if shown else max(low_fire_Pa, light_Pa))
        if by_gauge and 0 < light_Pa < LOW_SHOWN * small_Pa:
            reads_low_Pa = 0.0 if shown else scale_Pa(low_fire_Pa, room=LOW_ROOM, seldom=True)
            small_Pa = max(scale_Pa(light_Pa, seldom=True), reads_low_Pa)
        if small_Pa >= jet_Pa if by_gauge else small_Pa < light_Pa:  # no sloping one reads so much
            small_Pa = None
    lit_by_Pa = small_Pa or jet_Pa
    if by_gauge or small_Pa is None:
        off_Pa, mark_Pa = (
            GAUGE_OFF * lit_by_Pa,
            making.gauge_mark_Pa(scale_Pa=lit_by_Pa, unit=sizes, from_cylinder=by_gauge),
        )
    else:
        tape = making.scale_unit(lit_by_Pa, unit=sizes, from_cylinder=False, sloping=True) or sizes
        off_Pa, mark_Pa = TUBE_OFF_PA, making.TUBE_MARK_PA[tape]
    return Gauges(jet_Pa, small_Pa, low_fire_Pa, off_Pa, mark_Pa, jet.mark_Pa, not by_gauge)
