"""What the mix pipe's tap shows: with air alone, the damper at HIGH, which proves the air, and at high fire."""

from dataclasses import dataclass, replace

from ..constants import AIR_OXYGEN_FRACTION, INH2O_PA
from ..physics import blower as physics
from ..physics import losses
from ..physics.band import Band
from ..physics.mixture import mixture_properties
from ..physics.plates import thin_plate_K
from .blower import Blower
from .face import Face
from .passage import PORT_BAND
from .resistance import Resistance
from .shop import Shop

AIR = (("O2", AIR_OXYGEN_FRACTION), ("N2", 1 - AIR_OXYGEN_FRACTION))
LEAST_PA = 0.05 * INH2O_PA  # on a gauge that shows hundredths of an inch, read to a tenth; common practice
AIR_OFF = 0.05  # of the air of a mark: its gap, and a pressure read; common practice
QUARTERS_SHUT = (0, 2, 3)  # of the ports, taped over till the tap shows enough


@dataclass(frozen=True)
class AirProof:
    """The tap stands behind the mix pipe's own losses and shows the pressure at rest, less what the stream's speed is
    worth. `alone_Pa`: gas shut, chamber cold, all burners of one blower at the same mark; from ports that take the
    least for their air to those that take the most, the air off by AIR_OFF either way. None where it is too little to
    read or the blower too weak. `flow_Pa`: the same with as few ports shut with tape as make it one to read, `shut`
    of them. `fire_Pa`: at high fire, ports cold."""

    alone_Pa: Band | None
    flow_Pa: Band | None
    shut: int
    fire_Pa: float


def air_proof(blower: Blower, resistance: Resistance, shop: Shop, face: Face) -> AirProof:
    air = mixture_properties(AIR, shop.temp_K, shop.pressure_Pa)
    # No flame, so hardly anything goes out of the opening.
    alone = replace(resistance, opening_Pa=0.0, passage=replace(resistance.passage, mixture=air))
    fire_Pa = resistance.tap_Pa(resistance.high_m3_s)
    share = blower.open_high if blower.open_high is not None else 1.0 if blower.carries else None
    if share is None:
        return AirProof(None, None, 0, fire_Pa)
    ports = len(face.ports)
    for shut in (quarters * ports // 4 for quarters in QUARTERS_SHUT):
        band = _tap_Pa(blower, alone, share, (ports / (ports - shut)) ** 2)
        if band.low >= LEAST_PA:
            return AirProof(None if shut else band, band, shut, fire_Pa)
    return AirProof(None, None, 0, fire_Pa)


def _tap_Pa(blower: Blower, alone: Resistance, share: float, more: float) -> Band:
    """At the tap with the damper open so far and ports that take so many times the pressure."""
    plate_K, pipe_m2, density = thin_plate_K(share), alone.mix_pipe.area_m2, blower.air_density_kg_m3

    def needed_Pa(flow_m3_s: float) -> float:
        ports_Pa = (more - 1) * alone.uneven * alone.passage.ports_at_Pa(flow_m3_s)
        head_Pa = losses.velocity_head_Pa(flow_m3_s / pipe_m2, alone.passage.mixture.density_kg_m3)
        return alone.pressure_Pa(flow_m3_s) + ports_Pa + plate_K * head_Pa

    flow_m3_s = physics.operating_point(blower.curve, needed_Pa, density).flow_m3_s
    return Band(
        alone.tap_Pa((1 - AIR_OFF) * flow_m3_s, PORT_BAND[0] * more),
        alone.tap_Pa(flow_m3_s, more),
        alone.tap_Pa((1 + AIR_OFF) * flow_m3_s, PORT_BAND[1] * more),
    )
