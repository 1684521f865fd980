"""Every port's share of the flow, from a march along the plenum."""

from collections import Counter
from dataclasses import dataclass
from functools import lru_cache

from ..physics import losses
from ..physics import plenum as physics
from .face import Face
from .mixture import Mixture
from .passage import MOST_ROUGHNESS, Passage
from .plenum import Plenum
from .stream import Stream

# Ports of a straight row stand at one place; a hair apart counts as the same (of a port diameter).
SAME_PLACE = 0.05


@dataclass(frozen=True)
class Shares:
    """Flow of each port, and of each column of ports across the plenum, over the mean.

    `columns_m`: place of each column from the left end. `plenum_Pa`: pressure at the inlet end of the march, over what
    ports and baffle take on average, `mean_drop_Pa`. Ratios over that mean, as in physics/plenum.py.
    """

    ports: tuple[float, ...]
    columns: tuple[float, ...]
    columns_m: tuple[float, ...]
    least: float
    largest: float
    spread: float
    kinetic_ratio: float
    friction_ratio: float
    starved_columns: int
    plenum_Pa: float
    mean_drop_Pa: float


@lru_cache(maxsize=64)
def _march(areas_m2, positions_m, inlets_m, length_m, area_m2, hydraulic_m, flow_m3_s, coefficient, density, viscosity):
    return physics.plenum_distribution(
        areas_m2,
        positions_m,
        inlets_m,
        length_m,
        area_m2,
        hydraulic_m,
        flow_m3_s,
        coefficient,
        density,
        viscosity,
        roughness_m=min(losses.ROUGHNESS_STEEL_M, MOST_ROUGHNESS * hydraulic_m),
    )


def shares(face: Face, plenum: Plenum, stream: Stream, mixture: Mixture, passage: Passage) -> Shares:
    """A baffle in series with the ports counts into their coefficient of discharge."""
    at = tuple(_column_m(face, plenum, x) for x, _ in face.ports)
    count = Counter(at)
    positions = tuple(sorted(count))
    one = face.port_area_m2 / face.port_count
    drop_Pa = passage.port_Pa.value + passage.baffle_Pa
    head_Pa = losses.velocity_head_Pa(stream.velocity_m_s, mixture.cold.density_kg_m3)
    found = _march(
        tuple(count[x] * one for x in positions),
        positions,
        plenum.inlets_m,
        plenum.length_m,
        plenum.area_m2,
        2 * plenum.area_m2 / (plenum.width_m + plenum.height_m),
        stream.mixture_m3_s,
        (head_Pa / drop_Pa) ** 0.5,
        mixture.cold.density_kg_m3,
        mixture.cold.viscosity_Pas,
    )
    by_column = dict(zip(positions, found.shares))
    return Shares(
        ports=tuple(by_column[column] for column in at),
        columns=tuple(found.shares),
        columns_m=positions,
        least=min(found.shares),
        largest=max(found.shares),
        spread=found.spread,
        kinetic_ratio=found.kinetic_ratio,
        friction_ratio=found.friction_ratio,
        starved_columns=found.starved_columns,
        plenum_Pa=found.plenum_pressure_Pa,
        mean_drop_Pa=found.mean_drop_Pa,
    )


def _column_m(face, plenum, x):
    """Place along the plenum of the column that a port at x belongs to. A round face has few ports at the same x, so
    those within a port diameter count as a column there; the square that stands for it is shorter than its face."""
    step = face.port_diameter_m * (1.0 if face.round else SAME_PLACE)
    return min(max(round(x / step) * step + plenum.length_m / 2, 0.0), plenum.length_m)
