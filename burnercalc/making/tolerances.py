"""Ports never come out as drawn: what crooked and misplaced pins leave of the web, the port area and the flow."""

import math
import random
from dataclasses import dataclass

from ..errors import require
from ..physics.band import Band
from .circles import shared_m2
from .stock import mm

# Any fixed number does; it is fixed so that the same design always gives the same band.
SEED = 1
# Port placements drawn in all, shared over the ports: keeps the answer within some 10 ms.
DRAWS = 800
LEAST_BURNERS = 3
# Ports further apart than this many pitches are not weighed against each other: between them stand nearer neighbours.
FAR_PITCHES = 2.5


@dataclass(frozen=True)
class PortTolerance:
    """web_drawn_m as designed; web_m the least web of each burner drawn (negative: ports run into each other);
    area_ratio and flow_ratio to the design, all three with the mean of the burners as their value; burners how many
    were drawn."""

    web_drawn_m: float
    web_m: Band
    area_ratio: Band
    flow_ratio: Band
    burners: int


def inclined_entry_loss(tilt_rad):
    """Loss of a sharp entry whose axis leans from the wall's normal, in velocity heads.

        K = 0.5 + 0.3*sin(tilt) + 0.2*sin(tilt)**2

    Arguments: tilt_rad 0 .. pi/2
    Source: Weisbach's inlet formula as carried by Idelchik, Handbook of Hydraulic Resistance (memory)
    Checked by: tests/test_making_tolerances.py (square entry 0.5)
    """
    s = math.sin(tilt_rad)
    return 0.5 + 0.3 * s + 0.2 * s * s


def pin_drift_m(*, block_thickness_m, tilt_rad):
    """How far a pin that leans stands off at the other side of the block [m] = T*tan(tilt)."""
    return block_thickness_m * math.tan(tilt_rad)


def port_tolerance(
    *,
    ports,
    port_diameter_m,
    block_thickness_m,
    grip_m,
    wall_m,
    window_length_m,
    window_width_m,
    tilt_rad,
    position_m,
    diameter_m=0.0,
    round_window=False,
    friction_darcy=0.04,
    seed=SEED,
):
    """How web, open area and flow change when every pin is off by up to the tolerances, drawn evenly with a fixed seed.

    Each port is moved within a circle of position_m at the fire side (where its pin stands in the base), leans within a
    cone of tilt_rad, and its diameter is off by up to diameter_m. A pin that would lean into the steel lip is counted
    as a port covered by that lip; ports that run into each other lose the shared area.

        flow ~ A*sqrt(1/(K_entry + f*L/d + 1))

    Arguments:
        ports                        (x, y) of the centres [m], no two closer than d
        port_diameter_m              d [m]; block_thickness_m T [m]; grip_m, wall_m [m] place the steel lip
        window_length_m, _width_m    window in the steel [m]; round_window: a circle of window_width_m
        tilt_rad                     largest lean [rad] 0 .. 0.35
        position_m                   largest error of place [m] 0 .. d
        diameter_m                   largest error of the pin's diameter [m] 0 .. d/2
        friction_darcy               of the port [-]; 0.04 fits a cast port near Re 3000 (memory: Moody)
        seed                         of the drawing; fixed by default
    Returns: PortTolerance
    Raises: InputError for port_tilt_tolerance, port_position_tolerance, pin_diameter_tolerance, ports_per_row
    Assumes: equal plenum pressure at every port; a band of what was drawn, not a guarantee
    Source: geometry; sampling
    Checked by: tests/test_making_tolerances.py
    """
    d, n = port_diameter_m, len(ports)
    require(n > 0, "ports_per_row", n, "must leave at least one port", "1")
    require(
        0 <= tilt_rad <= 0.35, "port_tilt_tolerance", f"{math.degrees(tilt_rad):g} deg", "must be 0 to 20 deg", "1 deg"
    )
    require(0 <= position_m <= d, "port_position_tolerance", mm(position_m), "must be 0 to one port diameter", "0.5 mm")
    require(
        0 <= diameter_m <= d / 2, "pin_diameter_tolerance", mm(diameter_m), "must be 0 to half a port diameter", "0"
    )
    t = block_thickness_m
    drift = pin_drift_m(block_thickness_m=t, tilt_rad=tilt_rad)
    near, pitch = _neighbours(ports, 2 * (position_m + drift) + diameter_m)
    drawn = pitch - d if n > 1 else min(window_length_m, window_width_m) - d
    rng = random.Random(seed)
    burners = max(LEAST_BURNERS, DRAWS // n)
    design_loss = inclined_entry_loss(0) + friction_darcy * t / d + 1.0
    lip_low, lip_high = t - grip_m, t - grip_m + wall_m  # heights of the steel lip over the fire side
    half_l, half_w = window_length_m / 2, window_width_m / 2
    full = math.pi / 4 * d * d
    webs, areas, flows = [], [], []
    for _ in range(burners):
        burner = [_draw(rng, x, y, d, tilt_rad, position_m, diameter_m) for x, y in ports]
        shared = [0.0] * n
        least = drawn
        for i, j in near:
            gap, overlap = _web(burner[i], burner[j], t)
            if gap < least:
                least = gap
            if overlap:
                shared[i] += overlap / 2
                shared[j] += overlap / 2
        area = flow = 0.0
        for (x, y, ux, uy, bore), lost in zip(burner, shared):
            open_area = math.pi / 4 * bore * bore - lost
            lean = math.hypot(ux, uy)
            reach = bore / 2 + lean * lip_high  # farthest from where its axis stands on the fire side, up to the lip
            if round_window:
                inside = math.hypot(x, y) + reach <= half_w
            else:
                inside = abs(x) + reach <= half_l and abs(y) + reach <= half_w
            for z in () if inside else (lip_low, lip_high):
                px, py = x + ux * z, y + uy * z
                open_area = min(
                    open_area,
                    shared_m2(half_w, bore / 2, math.hypot(px, py))
                    if round_window
                    else _uncovered(px, py, bore, half_l, half_w),
                )
            open_area = max(0.0, open_area)
            loss = inclined_entry_loss(math.atan(lean)) + friction_darcy * t * math.sqrt(1 + lean * lean) / bore + 1.0
            area += open_area / full / n
            flow += open_area / full * math.sqrt(design_loss / loss) / n
        webs.append(least)
        areas.append(area)
        flows.append(flow)
    return PortTolerance(drawn, _band(webs), _band(areas), _band(flows), burners)


def _neighbours(ports, move):
    """(pairs that can come to hold the least web, least pitch); `move` is how much two ports can close in.

    Pairs beyond FAR_PITCHES are left out, or wild tolerances would weigh every port against every other.
    """
    order = sorted(range(len(ports)), key=lambda i: ports[i])
    pitch = math.inf
    pairs = []
    for keep in (False, True):  # first the pitch, then the pairs near it
        for a, i in enumerate(order):
            for b in range(a + 1, len(order)):
                j = order[b]
                limit = min(pitch + 2 * move, FAR_PITCHES * pitch) if keep else pitch
                if ports[j][0] - ports[i][0] > limit:
                    break
                gap = math.dist(ports[i], ports[j])
                if keep and gap <= limit:
                    pairs.append((i, j))
                elif not keep:
                    pitch = min(pitch, gap)
    return pairs, pitch


def _band(values):
    """Least, mean and most; rounding must not put the mean of equal values outside them."""
    low, high = min(values), max(values)
    return Band(low, min(max(sum(values) / len(values), low), high), high)


def _draw(rng, x, y, d, tilt, position, diameter):
    """(x, y, slope x, slope y, bore) of one port as cast, even over the circle, the cone and the diameter."""
    r, turn = position * math.sqrt(rng.random()), 2 * math.pi * rng.random()
    lean, way = math.tan(tilt * math.sqrt(rng.random())), 2 * math.pi * rng.random()
    return (
        x + r * math.cos(turn),
        y + r * math.sin(turn),
        lean * math.cos(way),
        lean * math.sin(way),
        d + diameter * (2 * rng.random() - 1),
    )


def _web(one, two, t):
    """(least web between two leaning ports over the block, area they share at the worse end)."""
    dx, dy, ex, ey = one[0] - two[0], one[1] - two[1], one[2] - two[2], one[3] - two[3]
    bend = ex * ex + ey * ey
    z = -(dx * ex + dy * ey) / bend if bend else 0.0
    z = 0.0 if z < 0.0 else t if z > t else z
    gap = math.hypot(dx + ex * z, dy + ey * z)
    radii = (one[4] + two[4]) / 2
    return gap - radii, shared_m2(one[4] / 2, two[4] / 2, gap) if gap < radii else 0.0


def _uncovered(x, y, bore, half_l, half_w):
    """Area of a round port that stands inside the rectangular window (each edge cuts its own segment off)."""
    r = bore / 2
    area = math.pi * r * r
    if abs(x) + r <= half_l and abs(y) + r <= half_w:
        return area
    for room in (half_l - x, half_l + x, half_w - y, half_w + y):
        if room < r:
            h = max(room, -r)
            area -= r * r * math.acos(h / r) - h * math.sqrt(r * r - h * h)
    return max(0.0, area)
