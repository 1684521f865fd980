"""What is shown in the room Face: one function a table, chart or drawing, named <key>_table, _chart or _drawing."""

from ..parts.body import Body
from ..parts.face import Face
from ..parts.gas import Gas
from ..parts.holding import limits_m_s
from ..parts.hot_block import HotBlock
from ..parts.plenum import Plenum
from ..parts.shop import Shop
from ..parts.soaking import Soaking
from ..parts.stream import Stream
from ..physics import port_field
from ..physics.burning_velocity import PHI_RANGE
from ..physics.plenum import SPREAD, wanted_ratio
from .view import Plot, Rows, Say

LEAST_COUNT = 12  # ports that the chart of the ratio shows at least
PHI_STEPS = 16


def holes_table(face: Face, body: Body, say: Say) -> Rows:
    """Ports numbered row by row from the corner at the lower left, which has the face's triangle; x and y from it."""
    rows = tuple(
        (number, x + body.length_m / 2, y + body.width_m / 2, face.port_diameter_m)
        for number, (x, y) in enumerate(face.ports, 1)
    )
    return Rows(rows, "round" if face.round else "box")


def block_heat_table(hot_block: HotBlock, soaking: Soaking, say: Say) -> tuple:
    after = {
        "back": soaking.back_K,
        "box": soaking.steel_K,
        "mixture": soaking.mixture_K,
    }  # of the rest nothing is known
    places = ("face", "wall", "exit", "rim", "back", "lip", "box", "mixture")
    return tuple(
        (
            say(place),
            *(getattr(state, f"{place}_K") for state in (hot_block.high, hot_block.low)),
            after.get(place, say("unknown")),
        )
        for place in places
    )


def ratio_by_ports_chart(face: Face, plenum: Plenum, inlet_position: str) -> Plot:
    most = max(2 * face.port_count, LEAST_COUNT)
    counts = tuple(range(1, most + 1))
    good, stop = (wanted_ratio(spread, plenum.streams) for spread in SPREAD)
    top = max(2 * good, 1.5 * plenum.to_port_ratio)
    limits = {"band_stop": (0, stop), "band_caution": (stop, good), "band_good": (good, top)}
    return Plot(
        x=(1, most),
        y=(0, top),
        series={
            **{key: ((1, most), (low, low), (high, high)) for key, (low, high) in limits.items()},
            "ratio": (
                counts,
                tuple(plenum.area_m2 / port_field.port_area_m2(count, face.port_diameter_m) for count in counts),
            ),
        },
        mark=(face.port_count, plenum.to_port_ratio),
        case=inlet_position if len(plenum.inlets_m) == 1 else "two",
        slots={
            "enough": int(plenum.area_m2 / good / port_field.port_area_m2(1, face.port_diameter_m)),
            "spread": SPREAD[0],
            "ports": face.port_count,
        },
    )


def stability_map_chart(
    gas: Gas,
    shop: Shop,
    face: Face,
    stream: Stream,
    block_thickness: float,
    hot_block: HotBlock,
    equivalence_ratio: float,
    low_fire: float,
) -> Plot:
    """Port velocity against equivalence ratio: flashback cold and hot, lift cold, with bands; the operating line."""
    low, high = PHI_RANGE
    port = (face.port_diameter_m, block_thickness)
    found = {}  # equivalence ratio -> Band of each limit, where all are known
    for i in range(PHI_STEPS + 1):
        phi = low + (high - low) * i / PHI_STEPS
        cold, lift = limits_m_s(gas, shop, phi, *port)
        hot, _ = limits_m_s(gas, shop, phi, *port, hot_block.port, hot_block.left_port)
        if None not in (cold, hot, lift):
            found[phi] = {"flashback_cold": cold, "flashback_hot": hot, "lift": lift}
    ratios = tuple(found)
    series = {}
    for key in ("flashback_cold", "flashback_hot", "lift"):
        bands = [limits[key] for limits in found.values()]
        series[f"{key}_band"] = (ratios, tuple(band.low for band in bands), tuple(band.high for band in bands))
        series[key] = (ratios, tuple(band.value for band in bands))
    velocity, slow = stream.velocity_m_s, stream.velocity_m_s * low_fire
    return Plot(
        x=(low, high),
        y=(0, max(1.3 * velocity, 1.5 * max((limits["flashback_hot"].high for limits in found.values()), default=1.0))),
        series={**series, "operating": ((equivalence_ratio,) * 2, (slow, velocity))},
        mark=(equivalence_ratio, velocity),
        slots={"slow": slow, "velocity": velocity},
    )
