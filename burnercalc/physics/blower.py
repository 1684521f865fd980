"""What a blower can push: its curve, the point where it meets a burner, and what a damper must take away.

Flows are volumes of the air as it enters the blower; at another air density a blower moves the same volume against a
pressure in proportion to the density.
"""

import re
from dataclasses import dataclass
from itertools import pairwise
from math import isfinite, sqrt

from ..constants import FOOT_M, POUND_KG
from ..errors import InputError, require
from .losses import velocity_head_Pa
from .root import bracketed_root

# Air for which fan curves are given: 0.075 lb/ft3 (AMCA 210 standard air; published).
CURVE_DENSITY_KG_M3 = 0.075 * POUND_KG / FOOT_M**3
HUMP = 1.5  # times the pressure with the outlet shut, that the hump of a curve may stand at; common practice
_SCAN = 64  # looks along the curve for crossings; a hump narrower than 1/64 of it would be missed


@dataclass(frozen=True)
class Parabola:
    """The two-number blower curve p = p0 (1 - (Q/Q0)^2): a plain form of small radial blowers (common practice)."""

    shutoff_Pa: float
    free_m3_s: float

    def __post_init__(self):
        require(
            0 < self.shutoff_Pa < float("inf"), "blower_shutoff_pressure", f"{self.shutoff_Pa:g} Pa", "must be above 0"
        )
        require(0 < self.free_m3_s < float("inf"), "blower_free_flow", f"{self.free_m3_s:g} m3/s", "must be above 0")

    @property
    def last_m3_s(self):
        return self.free_m3_s

    @property
    def falls(self):
        """Whether the pressure falls all the way."""
        return True

    def pressure_Pa(self, flow_m3_s, density_kg_m3=CURVE_DENSITY_KG_M3):
        """Pressure at a flow from 0 to last_m3_s, in air of that density [Pa]."""
        _within(self, flow_m3_s, "blower_free_flow")
        return self.shutoff_Pa * (1 - (flow_m3_s / self.free_m3_s) ** 2) * density_kg_m3 / CURVE_DENSITY_KG_M3


@dataclass(frozen=True)
class Points:
    """A blower curve through measured points, smooth between them and never outside them.

    Between two points a cubic whose slopes keep it monotonic: Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984)
    300 (published), the weighted harmonic mean; a curve may still rise and fall (hump) where its points do.
    """

    flows_m3_s: tuple
    pressures_Pa: tuple

    def __post_init__(self):
        flows, pressures = self.flows_m3_s, self.pressures_Pa
        require(
            len(flows) >= 2 and len(flows) == len(pressures),
            "blower_curve",
            f"{len(flows)} points",
            "needs two points or more, each a flow and a pressure",
            "0 cfm 8 inH2O, 100 cfm 5 inH2O",
        )
        for flow, pressure in zip(flows, pressures):
            require(
                isfinite(flow) and isfinite(pressure) and flow >= 0 and pressure >= 0,
                "blower_curve",
                f"{flow:g} m3/s at {pressure:g} Pa",
                "must be flows and pressures of 0 or more",
            )
        require(
            flows[0] == 0,
            "blower_curve",
            f"first flow {flows[0]:g} m3/s",
            "must start with the pressure at no flow",
            "0 cfm 8 inH2O, ...",
        )
        require(pressures[0] > 0, "blower_curve", "0 Pa at no flow", "must have a pressure above 0 at no flow")
        for before, after in pairwise(flows):
            require(
                before < after,
                "blower_curve",
                f"{before:g} m3/s, then {after:g} m3/s",
                "must have its flows rising from point to point, each once",
            )

    @property
    def last_m3_s(self):
        return self.flows_m3_s[-1]

    @property
    def falls(self):
        """Whether the pressure falls, or stays, all the way; it never leaves the points."""
        return all(after <= before for before, after in pairwise(self.pressures_Pa))

    def pressure_Pa(self, flow_m3_s, density_kg_m3=CURVE_DENSITY_KG_M3):
        """Pressure at a flow from 0 to last_m3_s, in air of that density [Pa]."""
        _within(self, flow_m3_s, "blower_curve")
        xs, ys = self.flows_m3_s, self.pressures_Pa
        i = next(i for i in range(1, len(xs)) if flow_m3_s <= xs[i]) - 1
        width = xs[i + 1] - xs[i]
        t = (flow_m3_s - xs[i]) / width
        slopes = self._slopes()
        pressure = (
            (1 + 2 * t) * (1 - t) ** 2 * ys[i]
            + t * (1 - t) ** 2 * width * slopes[i]
            + t**2 * (3 - 2 * t) * ys[i + 1]
            - t**2 * (1 - t) * width * slopes[i + 1]
        )
        return pressure * density_kg_m3 / CURVE_DENSITY_KG_M3

    def _slopes(self):
        xs, ys = self.flows_m3_s, self.pressures_Pa
        widths = [b - a for a, b in pairwise(xs)]
        chords = [(b - a) / w for a, b, w in zip(ys, ys[1:], widths)]
        if len(chords) == 1:
            return [chords[0], chords[0]]
        inner = []
        for w0, w1, c0, c1 in zip(widths, widths[1:], chords, chords[1:]):
            heavy0, heavy1 = 2 * w1 + w0, w1 + 2 * w0
            inner.append((heavy0 + heavy1) / (heavy0 / c0 + heavy1 / c1) if c0 * c1 > 0 else 0.0)
        return [
            _end_slope(widths[0], widths[1], chords[0], chords[1]),
            *inner,
            _end_slope(widths[-1], widths[-2], chords[-1], chords[-2]),
        ]


def share_of_one(curve, burners, branch_Pa_s2_m6):
    """The curve of a blower that feeds several burners alike, as each of them finds it at the head of its pipe.

        p(Q) = p_blower(n Q) - c Q^2, in standard air

    Arguments:
        curve             Parabola or Points of the blower
        burners           n                                                     [-]         1 or more
        branch_Pa_s2_m6   c, of the branch that turns off to one burner, K rho / (2 A^2), in standard air
    Returns: Parabola or Points; points go to where the pressure is used up, in a straight line to the last
    Raises: InputError for burner_count
    Assumes: all burners take as much, from a header so wide (the branches' area together) that its pressure is even
    Source: continuity; both pressures go with the density. Published.
    Checked by: tests/test_blower.py (share_of_one by hand, and against two burners on one curve)
    """
    require(burners >= 1, "burner_count", f"{burners}", "must be 1 or more", "1")
    require(0 <= branch_Pa_s2_m6 < float("inf"), "branch", branch_Pa_s2_m6, "must be 0 or more", "0")
    if isinstance(curve, Parabola):
        falls = (burners / curve.free_m3_s) ** 2 + branch_Pa_s2_m6 / curve.shutoff_Pa
        return Parabola(curve.shutoff_Pa, 1 / sqrt(falls))
    flows = [flow / burners for flow in curve.flows_m3_s]
    left = [pressure - branch_Pa_s2_m6 * flow**2 for flow, pressure in zip(flows, curve.pressures_Pa)]
    for i, pressure in enumerate(left):
        if pressure < 0:
            share = left[i - 1] / (left[i - 1] - pressure)
            last = flows[i - 1] + share * (flows[i] - flows[i - 1])
            flows, left = (flows[:i], left[:i]) if share == 0 else ([*flows[:i], last], [*left[:i], 0.0])
            break
    return Points(tuple(flows), tuple(left))


def _end_slope(width, next_width, chord, next_chord):
    """One-sided three-point slope at an end, held to what keeps the end piece monotonic."""
    slope = ((2 * width + next_width) * chord - width * next_chord) / (width + next_width)
    if slope * chord <= 0:
        return 0.0
    if chord * next_chord <= 0 and abs(slope) > 3 * abs(chord):
        return 3 * chord
    return slope


def _within(curve, flow_m3_s, field):
    require(
        0 <= flow_m3_s <= curve.last_m3_s,
        field,
        f"{flow_m3_s:g} m3/s",
        f"must reach this flow; the curve ends at {curve.last_m3_s:g} m3/s",
    )


def parse_blower_curve(text, parse_quantity, field="blower_curve", example="0 cfm 8 inH2O, 100 cfm 5 inH2O"):
    """Points from text such as `0 cfm 8 inH2O, 100 cfm 5 inH2O, 140 cfm 0 inH2O`.

    Arguments:
        text             points with commas or semicolons between; each a flow and a pressure with their units
        parse_quantity   function (text, dimension, field) -> SI float; dimensions "air_flow" and "pressure"
        field            name of the setting, for the refusal
        example          a text that is read, for the refusal
    Returns:
        Points
    Raises:
        InputError   a point that is not two quantities, or points that make no curve
    Checked by:
        tests/test_blower.py
    """
    flows, pressures = [], []
    for point in re.split(r"[,;]", text):
        if not point.strip():
            continue
        parts = re.split(r"\s+(?=[-+.\d])", point.strip())
        if len(parts) != 2:
            raise InputError(
                field,
                point.strip(),
                f"must be points of one flow and one pressure, each with its unit, such as {example}",
            )
        flows.append(parse_quantity(parts[0], "air_flow", field))
        pressures.append(parse_quantity(parts[1], "pressure", field))
    try:
        points = Points(tuple(flows), tuple(pressures))
    except InputError as error:
        raise InputError(field, text.strip(), error.rule, error.nearest) from None
    rule = "must end at no more pressure than it begins with: the more a blower moves, the less it pushes"
    require(pressures[-1] <= pressures[0], field, text.strip(), rule)
    rule = f"must nowhere push more than {HUMP:g} times what it does with its outlet shut"
    require(max(pressures) <= HUMP * pressures[0], field, text.strip(), rule)
    return points


@dataclass(frozen=True)
class OperatingPoint:
    """Where a blower and a burner meet.

    Attributes:
        flow_m3_s      flow there
        pressure_Pa    pressure of the blower there
        beyond_curve   the burner takes more than the last point of the curve: flow_m3_s is that last point
        stalled        the burner needs more pressure at no flow than the blower has: no flow
        crossings      how often the two curves cross; above 1 (a humped curve) the flow may hunt
    """

    flow_m3_s: float
    pressure_Pa: float
    beyond_curve: bool
    stalled: bool
    crossings: int


def operating_point(curve, system_Pa, density_kg_m3=CURVE_DENSITY_KG_M3):
    """Flow at which the blower gives just the pressure that the burner takes.

        p_blower(Q) rho/rho_curve = p_system(Q)

    Arguments:
        curve           Parabola or Points
        system_Pa       rising function, flow in m3/s -> [Pa], e.g. a Q^2 + b Q
        density_kg_m3   of the air at the blower   [kg/m3]   above 0
    Returns:
        OperatingPoint: the first place, from no flow on, where the blower falls below the burner
    Source:
        fan laws (published)
    Checked by:
        tests/test_blower.py: 8 [1 - (Q/150)^2] against 4 (Q/100)^2 meets at 102.90 cfm, 4.235 inH2O
    """
    require(0 < density_kg_m3 < float("inf"), "density_kg_m3", density_kg_m3, "must be above 0")

    def gap(flow):
        return curve.pressure_Pa(flow, density_kg_m3) - system_Pa(flow)

    # Where the blower falls all the way it meets the burner once at most, so that the ends tell.
    scan = 1 if curve.falls else _SCAN
    flows = [curve.last_m3_s * i / scan for i in range(scan)] + [curve.last_m3_s]
    gaps = [gap(flow) for flow in flows]
    crossings = sum((a > 0) != (b > 0) for a, b in pairwise(gaps))
    if not gaps[0] > 0:
        return OperatingPoint(0.0, curve.pressure_Pa(0.0, density_kg_m3), False, True, crossings)
    falls = next((i for i, g in enumerate(gaps) if not g > 0), None)
    if falls is None:
        last = curve.last_m3_s
        return OperatingPoint(last, curve.pressure_Pa(last, density_kg_m3), True, False, crossings)
    low, high = falls - 1, falls
    flow = bracketed_root(lambda at: -gap(at), flows[low], flows[high], f_low=-gaps[low], f_high=-gaps[high])
    return OperatingPoint(flow, curve.pressure_Pa(flow, density_kg_m3), False, False, crossings)


def blower_margin(curve, flow_m3_s, needed_Pa, density_kg_m3=CURVE_DENSITY_KG_M3):
    """Pressure the blower has at a flow over what the burner needs, less 1 [-]: 0 just enough, below 0 too weak.

    A flow beyond the last point of the curve gives -1: the blower is not known to reach it at all.
    """
    require(0 < needed_Pa < float("inf"), "needed_Pa", needed_Pa, "must be above 0")
    require(0 <= flow_m3_s < float("inf"), "flow_m3_s", flow_m3_s, "must be 0 or more", "0")
    if flow_m3_s > curve.last_m3_s:
        return -1.0
    return curve.pressure_Pa(flow_m3_s, density_kg_m3) / needed_Pa - 1


@dataclass(frozen=True)
class Damper:
    """How far a damper must close to hold a flow.

    Attributes:
        drop_Pa         pressure it must take; what the blower has too much
        share           of the blower's pressure
        K               its loss on the velocity head in the pipe
        open_fraction   open area over the pipe's, taken as a thin sharp-edged plate; 1 = wide open
    """

    drop_Pa: float
    share: float
    K: float
    open_fraction: float


def damper(curve, flow_m3_s, needed_Pa, pipe_area_m2, density_kg_m3=CURVE_DENSITY_KG_M3):
    """The damper that holds the flow at which the burner needs `needed_Pa`, or None: the blower is too weak.

        drop = p_blower - p_needed,   K = drop / (rho V^2/2)

    Arguments:
        curve           Parabola or Points
        flow_m3_s       air wanted                       [m3/s]   above 0
        needed_Pa       burner without damper            [Pa]     0 or more
        pipe_area_m2    bore of the pipe it sits in      [m2]     above 0
        density_kg_m3   of the air                       [kg/m3]  above 0
    Returns:
        Damper or None
    Source:
        definition of K; open area by plates.thin_plate_K (Idelchik; memory)
    Checked by:
        tests/test_blower.py, there and back through thin_plate_K
    """
    require(0 < flow_m3_s < float("inf"), "flow_m3_s", flow_m3_s, "must be above 0")
    require(0 < pipe_area_m2 < float("inf"), "pipe_area_m2", pipe_area_m2, "must be above 0")
    require(0 <= needed_Pa < float("inf"), "needed_Pa", needed_Pa, "must be 0 or more", "0")
    if flow_m3_s > curve.last_m3_s:
        return None
    pressure = curve.pressure_Pa(flow_m3_s, density_kg_m3)
    drop = pressure - needed_Pa
    if drop < 0 or pressure <= 0:
        return None
    K = drop / velocity_head_Pa(flow_m3_s / pipe_area_m2, density_kg_m3)
    return Damper(drop, drop / pressure, K, plate_open_fraction(K))


def plate_open_fraction(K):
    """Open fraction f of a thin sharp-edged plate of loss K: the inverse of plates.thin_plate_K.

        s f = 1 + sqrt((1 - f)/2),   s = 1 + sqrt(K)

    Arguments:
        K   on the velocity head in the pipe   [-]   0 or more
    Returns:
        f   [-]
    Source:
        Idelchik thin-walled grid (memory), solved for f
    Checked by:
        tests/test_blower.py
    """
    require(0 <= K < float("inf"), "K", K, "must be 0 or more", "0")
    s = 1 + sqrt(K)
    b = 2 * s - 0.5
    return (b + sqrt(b * b - 2 * s * s)) / (2 * s * s)
