"""The refractory block: its volume, what to weigh out for it, and the mass of the finished burner."""

from dataclasses import dataclass
from math import pi

from ..making import mould as making_mould
from ..making import refractory as making
from ..making.refractory import Castable
from ..physics.band import Band, in_order
from .baffle_sheet import BaffleSheet
from .body import Body
from .face import Face
from .mould import Mould
from .mounting import Mounting
from .pins import Pins
from .steel import Steel


@dataclass(frozen=True)
class Block:
    """All of one block, waste with it, but `bags`, which are for the batch. Each block has mixes of its own."""

    material: Castable
    volume_m3: float
    fill_line_m: float
    dry_kg: Band
    water_kg: Band
    bags: int
    grain_m: float  # the coarsest that fills webs and edge
    placing_s: float
    mixes: int
    dry_per_mix_kg: float
    water_per_mix_kg: float
    burner_kg: float
    wet_kg: float  # of the burner as stripped, with the most water and its pins
    turned_kg: float  # of the wet burner in its mould with the steel bars, as it is turned over at first set
    steel_kg: float  # of the burner before it is cast


def block(
    body: Body,
    face: Face,
    steel: Steel,
    baffle_sheet: BaffleSheet,
    mould: Mould,
    mounting: Mounting,
    pins: Pins,
    refractory: str,
    castable_density: float,
    castable_water_low: float,
    castable_water_high: float,
    castable_service: float,
    working_time: float,
    waste_allowance: float,
    bag_mass: float,
    placing_rate: float,
    batch_size: int,
    sizes: str,
) -> Block:
    if refractory == "own":
        material = making.own_castable(
            density_kg_m3=castable_density,
            water_low=castable_water_low,
            water_high=castable_water_high,
            service_temp_K=castable_service,
            working_time_s=working_time,
        )
    else:
        material = making.castable(refractory)
    # Ports that overlap are a stop of the face; the block still has a volume.
    open_ports = making.ports_kept_out(
        port_count=face.port_count, port_diameter_m=face.port_diameter_m, window_area_m2=face.window_area_m2
    )
    mould_m2 = _area_m2(mould.inside_length_m, mould.inside_width_m, face.round)
    volume = making.block_volume_m3(
        mould_area_m2=mould_m2,
        body_area_m2=_area_m2(body.length_m, body.width_m, face.round),
        inside_area_m2=_area_m2(steel.body.inside_length_m, steel.body.inside_width_m, face.round),
        window_area_m2=face.window_area_m2,
        wall_m=body.face_m,
        grip_m=body.grip_m,
        block_thickness_m=body.block_thickness_m,
        port_count=open_ports,
        port_diameter_m=face.port_diameter_m,
    )
    weigh = {
        "volume_m3": volume,
        "material": material,
        "waste": waste_allowance,
        "bag_mass_kg": bag_mass,
        "placing_rate_kg_s": placing_rate,
    }
    batch, one = (making.batch(burners=burners, **weigh) for burners in (batch_size, 1))
    baffle_kg = baffle_sheet.sheet.mass_kg if baffle_sheet.sheet else 0.0
    inlets_kg = steel.inlet_piece.mass_kg * steel.inlet_piece.count
    block_kg = volume * material.density_kg_m3
    angles_kg = sum(piece.mass_kg * piece.count for piece in (steel.angle, *mounting.flats))
    steel_kg = steel.body_kg + inlets_kg + baffle_kg + angles_kg
    burner_kg = steel_kg + block_kg
    wet_kg = burner_kg + block_kg * material.water_high + pins.mass_kg
    wood_kg = sum(piece.mass_kg * piece.count for piece in mould.wood.pieces)
    return Block(
        material=material,
        volume_m3=volume,
        fill_line_m=making_mould.fill_line_m(
            mix_volume_m3=volume, mould_area_m2=mould_m2, port_count=open_ports, port_diameter_m=face.port_diameter_m
        ),
        dry_kg=in_order(
            one.dry_kg * material.density_low_kg_m3 / material.density_kg_m3,
            one.dry_kg,
            one.dry_kg * material.density_high_kg_m3 / material.density_kg_m3,
        ),
        water_kg=in_order(one.water_low_kg, one.water_kg, one.water_high_kg),
        bags=batch.bags,
        grain_m=making.grain_m(min(face.min_edge_m, face.min_web_m or face.min_edge_m)),
        placing_s=one.dry_kg / placing_rate,
        mixes=one.mixes,
        dry_per_mix_kg=one.dry_per_mix_kg,
        water_per_mix_kg=one.water_per_mix_kg,
        burner_kg=burner_kg,
        wet_kg=wet_kg,
        turned_kg=wet_kg + wood_kg + making_mould.cross_bars_kg(mould.wood.pieces[0].length_m, sizes),
        steel_kg=steel_kg,
    )


def _area_m2(length, width, is_round):
    return pi / 4 * width**2 if is_round else length * width
