"""How much of the chamber's length the fire falls on."""

from dataclasses import dataclass

from ..physics.band import Band
from ..physics.lit_length import lit_share
from .face import Face

# How far the heat of flames reaches beside their ports, over the height that they cross: of a zone model of our own,
# not measured; the low end is little more than a free jet's own width (published).
SPREAD = Band(0.25, 0.5, 1.0)


@dataclass(frozen=True)
class LitLength:
    """`share`: of the chamber's length on which the fire falls."""

    share: Band


def run_m(chamber_shape: str, chamber_length: float, chamber_width: float) -> float:
    """The chamber's longer side, along which burners stand; a cylinder lies on its side."""
    return max(chamber_length, chamber_width) if chamber_shape == "box" else chamber_length


def lit_length(
    face: Face,
    burner_count: int,
    chamber_shape: str,
    chamber_length: float,
    chamber_width: float,
    chamber_height: float,
    chamber_diameter: float,
) -> LitLength:
    """Burners in the roof and evenly spaced."""
    along = [x for x, _ in face.ports]
    field_m = max(along) - min(along) + face.port_diameter_m
    along_m = run_m(chamber_shape, chamber_length, chamber_width)
    height_m = chamber_height if chamber_shape == "box" else chamber_diameter
    return LitLength(Band(*(lit_share(field_m, burner_count, along_m, height_m, spread) for spread in SPREAD)))
