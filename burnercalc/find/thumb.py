"""By thumb, long before it is known: whether a cold flame of this body is strong enough to be lit on gas at a pressure
that nobody can raise.

Such gas is set down from there alone, so the weakest fire that can be set is a share of high fire, and the ports must
hold that cold. What lights a burner is known only of a whole design; this leads a dive to bodies with room enough.
"""

from collections.abc import Iterable
from math import pi

from ..design import parsed
from ..parts.hand import MIXTURE_SLIP
from ..parts.tries import KEEP_OFF, WIDE, careful_lift_m_s
from ..physics.combustion import mixture_flow_m3_s
from . import sold
from .choices import LEAST_WEB_M, PITCHES, Asked, least_share, sources

# For what gauge, mark and jet are off by: with these most good burners were found, on a line from 1 to 2.2 and of a
# cylinder's regulator of 1.1, 1.4 and 1.8.
ROOM, REGULATED_ROOM = 1.8, 1.1
RICH = (1.1, 1.2)  # what a burner is lit at where the mixture as set leaves no room


def too_weak_to_light(a: Asked) -> float:
    """By what share the most that the ports hold cold falls short of the least that the gas can be set to; 0 where it
    does not, or where nobody can tell yet."""
    gas, v = a.burner.part("gas"), a.values
    share = least_share(a) if v["body_length"] is not None else 0.0
    if not share:
        return 0.0
    firing, shop = a.burner.part("firing"), a.burner.part("shop")
    room = ROOM if sources(a.have, a.start) == ("line",) else REGULATED_ROOM
    least_W = room * KEEP_OFF * WIDE * firing.rate_W * share
    holds_W = 0.0
    for diameter_m in _diameters_m(a):
        area_m2 = _ports(a, diameter_m) * pi / 4 * diameter_m**2
        for ratio in RICH:
            lift_m_s = careful_lift_m_s(gas, shop, ratio, diameter_m, a.start.block_thickness, MIXTURE_SLIP)
            energy_J_m3 = firing.rate_W / mixture_flow_m3_s(gas.composition, ratio, firing.rate_W)
            holds_W = max(holds_W, (lift_m_s or 0.0) * area_m2 * energy_J_m3)
    return max(0.0, 1 - holds_W / least_W)


def _diameters_m(a: Asked) -> Iterable[float]:
    if a.values["port_diameter"] is not None:
        return [a.values["port_diameter"]]
    there = [piece.texts["port_diameter"] for piece in a.have.of("pins")]
    texts = {*there, *(sold.PINS[a.system] if a.have.may_buy("pins") else ())}
    return [float(parsed("port_diameter", text)) for text in sorted(texts)]


def _ports(a: Asked, diameter_m: float) -> float:
    """Of the face, or as many as there is room for."""
    v = a.values
    if v["rows"] is not None:
        return float(a.burner.part("face").port_count)
    pitch_m = max(PITCHES[0] * diameter_m, diameter_m + LEAST_WEB_M)
    across, along = (
        max(0.0, (v[side] - 2 * v["setback"] - 2 * v["edge_margin"] - diameter_m) // pitch_m + 1)
        for side in ("body_width", "body_length")
    )
    return float(across * along) * (pi / 4 if v["body_kind"] == "pipe" else 1.0)
