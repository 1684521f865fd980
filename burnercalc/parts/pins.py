"""The pins that leave the ports in the block, and the drill that cleans them."""

from dataclasses import dataclass
from math import pi

from ..making import mould as making
from ..making.stock import NOISE_M, pins_m
from ..physics.drills import nearest_drills
from .baffle_sheet import BaffleSheet
from .body import Body
from .face import Face
from .mould import Mould
from .plenum import Plenum

NO_GO = 1.05  # of the port: a wider one lets the flame back sooner, by a tenth and more; common practice


@dataclass(frozen=True)
class Pins:
    """`wanted`: pins to cut for one block, spares with them. `sticks`: None where a stick is shorter than a pin."""

    length_m: float
    wanted: int
    per_stick: int
    sticks: int | None
    proud_m: float  # of the mix
    knock_out_drill: str
    knock_out_m: float
    cleaning_drill: str
    no_go_drill: str  # whose shank must not enter a port
    wall_clearance_m: float  # to the wall of the mould
    mass_kg: float  # of those that stand in a block, of the heaviest that there is
    bought_m: float  # across: as the ports, or the next that is sold where no shop has it


def pins(
    body: Body,
    face: Face,
    mould: Mould,
    plenum: Plenum,
    baffle_sheet: BaffleSheet,
    pin_depth: float,
    pin_stock_length: float,
    kerf: float,
    pin_spares: int,
    pin_kind: str,
    sizes: str,
) -> Pins:
    room_m = baffle_sheet.gap_m if baffle_sheet.sheet else plenum.height_m
    proud_m = making.pin_proud_m(room_m=room_m, unit=sizes)
    found = making.pins(
        port_count=face.port_count,
        block_thickness_m=body.block_thickness_m,
        pin_depth_m=pin_depth,
        proud_m=proud_m,
        stock_length_m=pin_stock_length,
        kerf_m=kerf,
        spares=pin_spares,
    )
    family = "fraction" if sizes == "in" else "metric"
    _, no_go = nearest_drills(NO_GO * face.port_diameter_m, family)
    knock_out = making.knock_out_drill(face.port_diameter_m, family)
    return Pins(
        length_m=found.length_m,
        wanted=found.count,
        per_stick=found.pieces_per_stock,
        sticks=found.stock_count or None,
        proud_m=proud_m,
        knock_out_drill=knock_out.name,
        knock_out_m=knock_out.diameter_m,
        cleaning_drill=making.cleaning_drill(face.port_diameter_m, family).name,
        no_go_drill=no_go.name if no_go else "-",
        wall_clearance_m=making.pin_wall_clearance_m(
            ports=face.ports,
            port_diameter_m=face.port_diameter_m,
            inside_length_m=mould.inside_length_m,
            inside_width_m=mould.inside_width_m,
            round_mould=face.round,
        ),
        mass_kg=face.port_count
        * pi
        / 4
        * face.port_diameter_m**2
        * found.length_m
        * making.PIN_DENSITY_KG_M3[pin_kind],
        bought_m=face.port_diameter_m if pin_kind == "wax" else _bought_m(face.port_diameter_m, sizes),
    )


def _bought_m(size_m: float, unit: str) -> float:
    """The smallest dowel or rod sold that gives the pin; as asked for where none does."""
    return next((one for one in pins_m(unit) if one >= size_m - NOISE_M), size_m)
