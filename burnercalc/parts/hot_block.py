"""The block while it burns: how hot it, the steel behind it and the mixture in it get, at high and at low fire."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache, partial
from math import hypot, pi

from ..making import refractory as making
from ..physics import flame_limits
from ..physics.band import Band
from ..physics.block_fin import RIM_BAND, Box, Fin, HotPort, HotState, hot_state
from ..physics.linings import Material, material
from ..physics.port_stream import StreamProperties
from .body import Body
from .face import Face
from .gas import Gas
from .mixture import Mixture
from .reached import Reached
from .shop import Shop
from .stream import Stream, properties

# Velocities at which a port is worked out, 0.06 to 17 m/s; the limits of the flame lie between them.
VELOCITIES_M_S = tuple(0.06 * 1.6**step for step in range(13))
# Walls that just keep a flame alight, 1,400 degF (760 degC) by NFPA 86 (memory), and 120 degF more for an eye that is
# late to see them glow (common practice).
WALLS_GLOW_K = 1100.0
CONDUCTS_OFF = 0.2  # either way, of a data sheet and the bag that it came with; common practice


@dataclass(frozen=True)
class HotBlock:
    """Hot all through. `high`, `low`: at high and low fire, the chamber at its set temperature; `least_rim`,
    `most_rim`: as low, the ends of the band of the rim. `left`: as most_rim, the chamber at `left_K`, where low fire
    brings it empty, if that is hotter; `left_least`: so, as least_rim. The figures below are some of theirs, see
    HotState.

    `lip_K`, `box_K`, `mixture_K`: at low fire, over the bands of the rim and of how the block conducts, the high end
    with the chamber left empty. `port`: as it warms the mixture at any velocity; a number where the port wall is set;
    `left_port`: the same with the chamber left empty and a block that conducts more; `waiting_port`: while the walls
    come to a glow.
    `ignition_K`: of the mixture by itself; `wetted_K`: the most that it may touch.
    """

    material: Material
    conductivity_W_mK: float
    fin: Fin
    box: Box
    high: HotState
    low: HotState
    least_rim: HotState
    most_rim: HotState
    left: HotState
    left_least: HotState
    left_K: float
    face_low_K: float
    wall_high_K: float
    wall_low_K: float
    exit_high_K: float
    exit_low_K: float
    rim_low_K: float
    back_low_K: float
    lip_K: Band
    box_K: Band
    mixture_K: Band
    port: HotPort | float
    left_port: HotPort | float
    waiting_port: HotPort | float
    ignition_K: float
    wetted_K: float


def hot_block(
    face: Face,
    body: Body,
    stream: Stream,
    mixture: Mixture,
    gas: Gas,
    shop: Shop,
    reached: Reached,
    low_fire: float,
    chamber_temperature: float,
    refractory: str,
    castable_density: float,
    port_wall_temperature: float | str,
) -> HotBlock:
    stuff, diameter = block_material(refractory, castable_density), face.port_diameter_m
    fin_at = partial(_fin, face, body, stuff, shop.temp_K)
    left_K = max(chamber_temperature, reached.low_empty_K.high if reached.low_empty_K else 0.0)
    fin, left_fin, box = fin_at(chamber_temperature), fin_at(left_K), _box(body)
    high_kg_s = stream.mixture_m3_s * mixture.cold.density_kg_m3
    cold = properties(gas.composition, mixture.equivalence_ratio, shop.pressure_Pa)

    def slab(walls_K, conducts):
        if conducts != 1.0:
            return fin_at(max(walls_K, chamber_temperature), conducts)
        return left_fin if walls_K > chamber_temperature else fin

    def at(share, near=None, rim_times=1.0, walls_K=chamber_temperature, conducts=1.0):
        flow, ports_m2 = high_kg_s * share, face.port_area_m2
        return hot_state(
            slab(walls_K, conducts), box, flow, diameter, ports_m2, cold, shop.temp_K, walls_K, rim_times, near
        )

    def port(velocities_m_s, walls_K, conducts=1.0):
        ports, flow = (diameter, face.port_area_m2), (stream.velocity_m_s, high_kg_s)
        return _port(velocities_m_s, slab(walls_K, conducts), box, ports, flow, cold, shop.temp_K, walls_K, high)

    least, _, most = RIM_BAND
    high = at(1.0)
    low = at(low_fire, high)
    least_rim, most_rim = at(low_fire, low, least), at(low_fire, low, most)
    left = at(low_fire, most_rim, most, left_K)
    left_least = at(low_fire, least_rim, least, left_K)
    dull, keen = (at(low_fire, low, conducts=1 + off) for off in (-CONDUCTS_OFF, CONDUCTS_OFF))

    band = partial(_band, low, (least_rim, dull), (left, keen))
    ignition = flame_limits.auto_ignition_temp_K(gas.composition)
    hot = left_port = waiting = port_wall_temperature
    if port_wall_temperature == "auto":
        hot, left_port = (
            port(VELOCITIES_M_S, chamber_temperature),
            port(VELOCITIES_M_S, left_K, 1 + CONDUCTS_OFF),
        )
        waiting = port(VELOCITIES_M_S[::2], min(WALLS_GLOW_K, chamber_temperature))
    return HotBlock(
        material=stuff,
        conductivity_W_mK=fin.conductivity_W_mK,
        fin=fin,
        box=box,
        high=high,
        low=low,
        least_rim=least_rim,
        most_rim=most_rim,
        left=left,
        left_least=left_least,
        left_K=left_K,
        face_low_K=low.face_K,
        wall_high_K=high.wall_K,
        wall_low_K=low.wall_K,
        exit_high_K=high.exit_K,
        exit_low_K=low.exit_K,
        rim_low_K=low.rim_K,
        back_low_K=low.back_K,
        lip_K=band(lambda state: state.lip_K),
        box_K=band(lambda state: state.box_K),
        mixture_K=band(lambda state: state.mixture_K),
        port=hot,
        left_port=left_port,
        waiting_port=waiting,
        ignition_K=ignition,
        wetted_K=flame_limits.wetted_limit_K(ignition),
    )


def waiting_port(
    hot_block: HotBlock, face: Face, gas: Gas, mixture: Mixture, stream: Stream, shop: Shop, chamber_temperature: float
) -> HotPort | float:
    """As the block's own, on a day with other air in the shop."""
    if not isinstance(hot_block.waiting_port, HotPort):
        return hot_block.waiting_port
    ports, flow = (
        (face.port_diameter_m, face.port_area_m2),
        (stream.velocity_m_s, stream.mixture_m3_s * mixture.cold.density_kg_m3),
    )
    cold = properties(gas.composition, mixture.equivalence_ratio, shop.pressure_Pa)
    walls_K, slab = min(WALLS_GLOW_K, chamber_temperature), hot_block.fin
    return _port(VELOCITIES_M_S[::2], slab, hot_block.box, ports, flow, cold, shop.temp_K, walls_K, hot_block.high)


def _fin(face: Face, body: Body, stuff: Material, shop_K: float, walls_K: float, conducts: float = 1.0) -> Fin:
    """The block, as it conducts halfway from the shop to the walls that it sees."""
    diameter, ports = face.port_diameter_m, face.port_count
    kept_out = making.ports_kept_out(port_count=ports, port_diameter_m=diameter, window_area_m2=face.window_area_m2)
    return Fin(
        body.block_thickness_m,
        face.window_area_m2 - kept_out * (pi / 4 * diameter**2),
        ports * pi * diameter,
        conducts * stuff.conductivity_W_mK((shop_K + walls_K) / 2),
    )


def _box(body: Body) -> Box:
    return Box(
        round_m=pi * body.width_m if body.round else 2 * (body.length_m + body.width_m),
        depth_m=body.depth_m - body.grip_m,
        wall_m=body.wall_m,
        grip_m=body.grip_m,
        setback_m=body.setback_m,
        back_m2=pi / 4 * body.width_m**2 if body.round else body.length_m * body.width_m,
    )


def _band(
    at: HotState,
    below: tuple[HotState, HotState],
    above: tuple[HotState, HotState],
    figure: Callable[[HotState], float],
) -> Band:
    """Rim and conduction, one state of each a side, have nothing to do with each other: their ends add as squares."""
    value = figure(at)
    less = hypot(*(min(0.0, figure(state) - value) for state in below))
    more = hypot(*(max(0.0, figure(state) - value) for state in above))
    return Band(value - less, value, value + more)


# One and the same for burners alike in all that it rests on, so that they share the limits of the flame in it.
@lru_cache(maxsize=256)
def _port(
    velocities_m_s: tuple[float, ...],
    slab: Fin,
    box: Box,
    ports: tuple[float, float],
    flow: tuple[float, float],
    cold: StreamProperties,
    shop_K: float,
    walls_K: float,
    near: HotState,
) -> HotPort:
    """`ports`: diameter and area of all [m, m2]; `flow`: a velocity and the mixture at it [m/s, kg/s]."""
    (diameter_m, area_m2), (at_m_s, at_kg_s) = ports, flow

    def at(velocity_m_s: float, near: HotState) -> HotState:
        flow_kg_s = at_kg_s * (velocity_m_s / at_m_s)
        return hot_state(slab, box, flow_kg_s, diameter_m, area_m2, cold, shop_K, walls_K, near=near)

    return HotPort(velocities_m_s, at, near)


def block_material(refractory: str, castable_density: float) -> Material:
    """Of the class; of one's own refractory that of the class nearest in density, no bag says how it conducts."""
    if refractory != "own":
        return material(refractory)
    near = min(making.castable_names(), key=lambda name: abs(making.castable(name).density_kg_m3 - castable_density))
    return material(near)
