"""The blower on this burner, its own or its share of one for all: where they meet, what it has to spare, and how far a
damper must close."""

from dataclasses import dataclass

from ..physics import blower as physics
from ..physics import losses, pipes
from ..physics.blower import CURVE_DENSITY_KG_M3, OperatingPoint, Parabola, Points
from .firing import Firing
from .hand import MIXTURE_SLIP
from .resistance import Resistance
from .shop import Shop

AIR_VISCOSITY_PAS = 1.82e-5  # 20 degC; a branch's loss hardly knows it


@dataclass(frozen=True)
class Blower:
    """Air as it is in the shop. `margin`: pressure at high fire over what is needed, less 1.

    `curve`: as this burner finds it; `whole`: of the blower, which feeds `burners` of them, each with its own damper.
    `open_high`, `open_low`: open share of a damper in a pipe of the mix pipe's bore; None where the blower is too weak.
    """

    curve: Parabola | Points
    whole: Parabola | Points
    burners: int
    air_density_kg_m3: float
    point: OperatingPoint
    high_m3_s: float
    low_m3_s: float
    high_Pa: float
    margin: float
    open_high: float | None
    open_low: float | None
    mixture_over_air: float
    resistance: Resistance

    @property
    def flow_m3_s(self) -> float:
        """Air with the damper open."""
        return self.point.flow_m3_s

    @property
    def pressure_Pa(self) -> float:
        """Pressure of the blower there."""
        return self.point.pressure_Pa

    @property
    def times(self) -> float:
        """Pressure of the blower at the air of high fire over what the burner needs."""
        return 1 + self.margin

    @property
    def short(self) -> float:
        """Share of the air of high fire that is missing with the damper open."""
        return max(1 - self.flow_m3_s / self.high_m3_s, 0.0)

    @property
    def carries(self) -> bool:
        """Whether the air of high fire comes, as near as a hand sets it: the checks of the mixture count that slip."""
        near = self.short <= MIXTURE_SLIP and self.high_m3_s <= self.curve.last_m3_s
        return self.margin >= 0 or near

    def needed_Pa(self, air_m3_s: float) -> float:
        """What the burner takes at this flow of air, gas in proportion."""
        return self.resistance.pressure_Pa(air_m3_s * self.mixture_over_air)


def curve(blower_shutoff_pressure: float, blower_free_flow: float, blower_curve: tuple | None) -> Parabola | Points:
    """The blower's curve: the points when they are given, else the parabola of the two numbers."""
    if blower_curve:
        return physics.Points(*zip(*blower_curve))
    return physics.Parabola(blower_shutoff_pressure, blower_free_flow)


def _of_one(whole, burners, pipe, air_m3_s, shop):
    """What one of several burners finds past the branch of the air header, at its loss of high fire."""
    if burners == 1:
        return whole
    velocity = air_m3_s / pipe.area_m2
    reynolds = losses.reynolds(velocity, pipe.bore_m, shop.air_density_kg_m3, AIR_VISCOSITY_PAS)
    branch_K = losses.fitting_K("tee_branch", reynolds, losses.ROUGHNESS_STEEL_M / pipe.bore_m)
    return physics.share_of_one(whole, burners, branch_K * CURVE_DENSITY_KG_M3 / (2 * pipe.area_m2**2))


def blower(
    blower_shutoff_pressure: float,
    blower_free_flow: float,
    blower_curve: tuple | None,
    blowers: str,
    burner_count: int,
    mix_pipe: str,
    low_fire: float,
    firing: Firing,
    resistance: Resistance,
    shop: Shop,
) -> Blower:
    whole, density = curve(blower_shutoff_pressure, blower_free_flow, blower_curve), shop.air_density_kg_m3
    burners = burner_count if blowers == "one" else 1
    high = firing.air_m3_s * shop.swell
    low = high * low_fire
    mixture_over_air = firing.mixture_m3_s / firing.air_m3_s

    def needed_Pa(air_m3_s):
        return resistance.pressure_Pa(air_m3_s * mixture_over_air)

    pipe = pipes.pipe(mix_pipe)
    given, area = _of_one(whole, burners, pipe, high, shop), pipe.area_m2
    dampers = [physics.damper(given, flow, needed_Pa(flow), area, density) for flow in (high, low)]
    open_high, open_low = (None if damper is None else damper.open_fraction for damper in dampers)
    return Blower(
        curve=given,
        whole=whole,
        burners=burners,
        air_density_kg_m3=density,
        point=physics.operating_point(given, needed_Pa, density),
        high_m3_s=high,
        low_m3_s=low,
        high_Pa=needed_Pa(high),
        margin=physics.blower_margin(given, high, needed_Pa(high), density),
        open_high=open_high,
        open_low=open_low,
        mixture_over_air=mixture_over_air,
        resistance=resistance,
    )
