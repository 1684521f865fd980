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
    """`share`: of the chamber's length on which the fire falls. `side_m`, `side`: the longer side or the one across,
    of whichever less is lit with the burners in as many lines as suit best, and how much of it; of a cylinder, in
    which the flame goes round, always its length."""

    share: Band
    side_m: float
    side: Band
    across: bool


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
    field_m, rows_m = (max(where) - min(where) + face.port_diameter_m for where in zip(*face.ports))
    along_m = run_m(chamber_shape, chamber_length, chamber_width)
    box = chamber_shape == "box"
    height_m = chamber_height if box else chamber_diameter

    def band(of_m: float, burners: int, side_m: float) -> Band:
        return Band(*(lit_share(of_m, burners, side_m, height_m, spread) for spread in SPREAD))

    share = band(field_m, burner_count, along_m)
    if not box:
        return LitLength(share, along_m, share, False)
    across_m = min(chamber_length, chamber_width)
    ways = []
    for lines in range(1, burner_count + 1):
        length, width = band(field_m, burner_count // lines, along_m), band(rows_m, lines, across_m)
        across = width.value < length.value
        ways.append(LitLength(share, across_m if across else along_m, width if across else length, across))
    return max(ways, key=lambda way: way.side.value)  # fewest lines of those alike
