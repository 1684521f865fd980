"""What the mix pipe's tap shows: with air alone, the damper at HIGH, which proves the air, and at high fire."""

from dataclasses import dataclass, replace

from ..constants import AIR_OXYGEN_FRACTION, INH2O_PA
from ..physics import blower as physics
from ..physics import losses
from ..physics.band import Band
from ..physics.mixture import mixture_properties
from ..physics.plates import thin_plate_K
from .blower import Blower
from .passage import PORT_BAND
from .resistance import Resistance
from .shop import Shop

AIR = (("O2", AIR_OXYGEN_FRACTION), ("N2", 1 - AIR_OXYGEN_FRACTION))
LEAST_PA = 0.05 * INH2O_PA  # on a gauge that shows hundredths of an inch, read to a tenth; common practice
AIR_OFF = 0.05  # of the air of a mark: its gap, and a pressure read; common practice


@dataclass(frozen=True)
class AirProof:
    """The tap stands behind the mix pipe's own losses and shows the pressure at rest, less what the stream's speed is
    worth. `alone_Pa`: gas shut, chamber cold, all burners of one blower at the same mark; from ports that take the
    least for their air to those that take the most, the air off by AIR_OFF either way. None where it is too little to
    read or the blower too weak. `fire_Pa`: at high fire, ports cold."""

    alone_Pa: Band | None
    fire_Pa: float


def air_proof(blower: Blower, resistance: Resistance, shop: Shop) -> AirProof:
    air = mixture_properties(AIR, shop.temp_K, shop.pressure_Pa)
    # No flame, so hardly anything goes out of the opening.
    alone = replace(resistance, opening_Pa=0.0, passage=replace(resistance.passage, mixture=air))
    fire_Pa = resistance.tap_Pa(resistance.high_m3_s)
    share = blower.open_high if blower.open_high is not None else 1.0 if blower.carries else None
    if share is None:
        return AirProof(None, fire_Pa)
    plate_K, pipe_m2 = thin_plate_K(share), resistance.mix_pipe.area_m2
    flow_m3_s = physics.operating_point(
        blower.curve,
        lambda at: alone.pressure_Pa(at) + plate_K * losses.velocity_head_Pa(at / pipe_m2, air.density_kg_m3),
        blower.air_density_kg_m3,
    ).flow_m3_s
    band = Band(
        alone.tap_Pa((1 - AIR_OFF) * flow_m3_s, PORT_BAND[0]),
        alone.tap_Pa(flow_m3_s),
        alone.tap_Pa((1 + AIR_OFF) * flow_m3_s, PORT_BAND[1]),
    )
    return AirProof(band if band.low >= LEAST_PA else None, fire_Pa)
