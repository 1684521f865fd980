"""How a dividing plenum shares the mixture among its columns of ports, and the rules of thumb about it.

The march starts at each dead end, where the stream along the plenum is zero, and walks to the inlet: each column
passes C_d A sqrt(2 p/rho), the stream grows by that, and the static pressure falls by what the stream will recover as
it slows down again, less what it loses to the wall.
"""

from dataclasses import dataclass
from itertools import pairwise
from math import acos, inf, sqrt

from ..errors import require
from .losses import ROUGHNESS_STEEL_M, friction_darcy, reynolds, velocity_head_Pa
from .root import rising_root

RECOVERY = 1.0  # of rho V^2/2: Bernoulli without loss; measured 0.8 to 1.8 (memory of manifold literature)
SPREAD = (0.05, 0.15)  # flow of the best-fed port less the worst-fed: good up to (Perry's tenth), stop above
USUAL_DISCHARGE = 0.75  # C_d of a cast port of usual length; common practice


@dataclass(frozen=True)
class Distribution:
    """Flow through each column of ports, in the order the columns were given.

    Attributes:
        flows_m3_s            through each column
        shares                flow per port area of each column over the mean of all ports; 1 = its fair share
        drops_Pa              static pressure that drives each column; 0 where it starves
        spread                largest share less smallest share, over the mean
        first_over_last       share nearest the inlet over share at the dead end, in the branch where that is smallest;
                              None where a dead end gets nothing
        mean_drop_Pa          pressure at which the ports would pass the flow if they all got the same
        plenum_pressure_Pa    of the mixture at rest under the inlet, over the chamber
        inlet_head_Pa         rho V^2/2 of the fastest stream along the plenum
        kinetic_ratio         inlet_head_Pa over mean_drop_Pa: Perry's tenth
        friction_ratio        wall friction along the longest branch over mean_drop_Pa: Perry's other tenth
        starved_columns       columns that get no mixture: static pressure not above that of the chamber (they may
                              draw chamber gas in), or friction leaves them nothing; a stop for any design
    """

    flows_m3_s: tuple
    shares: tuple
    drops_Pa: tuple
    spread: float
    first_over_last: float
    mean_drop_Pa: float
    plenum_pressure_Pa: float
    inlet_head_Pa: float
    kinetic_ratio: float
    friction_ratio: float
    starved_columns: int


@dataclass(frozen=True)
class _Plenum:
    """What every march needs to know."""

    area_m2: float
    hydraulic_diameter_m: float
    discharge_coefficient: float
    density_kg_m3: float
    viscosity_Pas: float
    recovery: float
    roughness_m: float

    def port_flow_m3_s(self, area_m2, drop_Pa):
        return self.discharge_coefficient * area_m2 * sqrt(2 * max(drop_Pa, 0.0) / self.density_kg_m3)

    def friction_Pa(self, flow_m3_s, length_m):
        if flow_m3_s == 0 or length_m == 0:
            return 0.0
        velocity = flow_m3_s / self.area_m2
        re = reynolds(velocity, self.hydraulic_diameter_m, self.density_kg_m3, self.viscosity_Pas)
        return (
            friction_darcy(re, self.roughness_m / self.hydraulic_diameter_m)
            * length_m
            / self.hydraulic_diameter_m
            * velocity_head_Pa(velocity, self.density_kg_m3)
        )

    def march(self, columns, end_Pa):
        """(flows, drops, friction) of one branch, from its dead end; columns are (area, distance to the next one)."""
        flow, friction, flows, drops = 0.0, 0.0, [], []
        for area_m2, step_m in columns:
            head = self.recovery * velocity_head_Pa(flow / self.area_m2, self.density_kg_m3)
            drop = end_Pa + friction - head
            flows.append(self.port_flow_m3_s(area_m2, drop))
            drops.append(max(drop, 0.0))
            flow += flows[-1]
            friction += self.friction_Pa(flow, step_m)
        return flows, drops, friction

    def branch(self, columns, inlet_Pa):
        """The march whose end pressure and friction add up to the pressure at rest under the inlet.

        Friction can leave so little for the dead end that no float is small enough; those columns then get nothing.
        """

        def end_Pa_of(shut):
            fed = columns[shut:]
            return rising_root(lambda end: end + self.march(fed, end)[2], inlet_Pa, inlet_Pa) if fed else None

        if not columns:
            return [], [], 0.0
        shut, end_Pa = 0, end_Pa_of(0)
        if end_Pa is None:  # the fewer columns are fed, the more is left for them: halve
            low, shut = 0, len(columns)
            while shut - low > 1:
                middle = (low + shut) // 2
                found = end_Pa_of(middle)
                low, shut, end_Pa = (middle, shut, end_Pa) if found is None else (low, middle, found)
            if end_Pa is None:
                return [0.0] * len(columns), [0.0] * len(columns), 0.0
        flows, drops, friction = self.march(columns[shut:], end_Pa)
        return [0.0] * shut + flows, [0.0] * shut + drops, friction


def plenum_distribution(
    port_areas_m2,
    positions_m,
    inlets_m,
    length_m,
    plenum_area_m2,
    hydraulic_diameter_m,
    flow_m3_s,
    discharge_coefficient,
    density_kg_m3,
    viscosity_Pas,
    recovery=RECOVERY,
    roughness_m=ROUGHNESS_STEEL_M,
):
    """Flow through each column of ports along a closed plenum, fed at one place or at several alike.

        q_j = C_d A_j sqrt(2 p_j / rho)
        p_j = p_end - k rho V_j^2/2 + friction from the dead end to j,   V_j the stream on beyond column j

    Arguments:
        port_areas_m2           open area of each column                      [m2]   above 0
        positions_m             of each column along the plenum, ascending    [m]    0 to length
        inlets_m                where each inlet enters along the plenum      [m]    ascending, 0 to length
        length_m                inside of the plenum                          [m]    above 0
        plenum_area_m2          cross-section that the stream runs through    [m2]   above 0
        hydraulic_diameter_m    4 area / perimeter of that                    [m]    above 0
        flow_m3_s               of the mixture as it is in the plenum         [m3/s] above 0
        discharge_coefficient   of the ports, plenum to chamber               [-]    above 0, up to 1
        density_kg_m3           rho                                           [kg/m3]
        viscosity_Pas           mu                                            [Pa s]
        recovery                k, share of rho V^2/2 won back by slowing     [-]    0 to 2
        roughness_m             of the plenum wall                            [m]
    Returns:
        Distribution
    Raises:
        InputError   a value outside its limit
    Assumes:
        one-dimensional stream; both branches start from rest under the inlet; a column right at the inlet sees the
        pressure at rest; several inlets have the same pressure, and halfway between two of them the stream stands, as
        it does where ports and legs are alike on both sides: a column there is fed half from each; C_d the same for
        all ports. Where p_j is not positive the column is counted as starved with zero flow; the model ends there,
        what really happens is worse
    Source:
        Perry's Chemical Engineers' Handbook, perforated-pipe distributors (memory); derived here
    Checked by:
        tests/reference/plenum.csv, its closed form cos(C_d a) in tests/test_plenum.py; n inlets against n short
        plenums side by side
    """
    _check(port_areas_m2, positions_m, inlets_m, length_m)
    for name, value in (
        ("plenum_area_m2", plenum_area_m2),
        ("hydraulic_diameter_m", hydraulic_diameter_m),
        ("flow_m3_s", flow_m3_s),
        ("density_kg_m3", density_kg_m3),
        ("viscosity_Pas", viscosity_Pas),
    ):
        require(0 < value < float("inf"), name, value, "must be above 0")
    require(
        0 < discharge_coefficient <= 1,
        "discharge_coefficient",
        discharge_coefficient,
        "must be above 0, up to 1",
        "0.8",
    )
    require(0 <= recovery <= 2, "recovery", recovery, "must be within 0 to 2", "1")

    plenum = _Plenum(
        plenum_area_m2, hydraulic_diameter_m, discharge_coefficient, density_kg_m3, viscosity_Pas, recovery, roughness_m
    )
    branches, centre = _branches(port_areas_m2, positions_m, inlets_m, length_m)

    def all_flows(inlet_Pa):
        parts = [plenum.branch([column[1:] for column in branch], inlet_Pa) for branch in branches]
        return parts, [plenum.port_flow_m3_s(port_areas_m2[i], inlet_Pa) for i in centre]

    def total_m3_s(inlet_Pa):
        parts, middle = all_flows(inlet_Pa)
        return sum(sum(flows) for flows, _, _ in parts) + sum(middle)

    even_Pa = density_kg_m3 / 2 * (flow_m3_s / (discharge_coefficient * sum(port_areas_m2))) ** 2
    inlet_Pa = rising_root(total_m3_s, flow_m3_s, even_Pa)
    parts, middle = all_flows(inlet_Pa)

    flows, drops = [0.0] * len(port_areas_m2), [0.0] * len(port_areas_m2)
    for branch, (branch_flows, branch_drops, _) in zip(branches, parts):
        for (i, _, _), flow, drop in zip(branch, branch_flows, branch_drops):
            flows[i], drops[i] = flows[i] + flow, drop
    for i, flow in zip(centre, middle):
        flows[i], drops[i] = flow, inlet_Pa

    # With columns shut by friction the total jumps where one more opens; what the jump leaves over is shared alike.
    whole = flow_m3_s / sum(flows)
    flows = [flow * whole for flow in flows]
    mean = flow_m3_s / sum(port_areas_m2)
    shares = [flow / area / mean for flow, area in zip(flows, port_areas_m2)]
    streams = [sum(branch_flows) / plenum_area_m2 for branch_flows, _, _ in parts]
    inlet_head = velocity_head_Pa(max(streams), density_kg_m3)
    return Distribution(
        flows_m3_s=tuple(flows),
        shares=tuple(shares),
        drops_Pa=tuple(drops),
        spread=max(shares) - min(shares),
        first_over_last=_first_over_last(shares, branches),
        mean_drop_Pa=even_Pa,
        plenum_pressure_Pa=inlet_Pa,
        inlet_head_Pa=inlet_head,
        kinetic_ratio=inlet_head / even_Pa,
        friction_ratio=max(friction for _, _, friction in parts) / even_Pa,
        starved_columns=sum(drop <= 0 for drop in drops),
    )


def _check(port_areas_m2, positions_m, inlets_m, length_m):
    require(len(port_areas_m2) >= 1, "port_areas_m2", "none", "must hold at least one column")
    require(len(port_areas_m2) == len(positions_m), "positions_m", len(positions_m), "must be one for each column")
    require(0 < length_m < float("inf"), "length_m", length_m, "must be above 0")
    require(len(inlets_m) >= 1, "inlets_m", "none", "must hold at least one inlet")
    for before, after in zip((0.0, *inlets_m), inlets_m):
        require(
            before <= after <= length_m,
            "inlets_m",
            after,
            "must rise and be within the plenum",
            f"{length_m / 2:g}",
        )
    for area in port_areas_m2:
        require(0 < area < float("inf"), "port_areas_m2", area, "must be above 0")
    for before, after in zip((0.0, *positions_m), positions_m):
        require(before <= after <= length_m, "positions_m", after, "must rise and lie within the plenum")


def _first_over_last(shares, branches):
    ends = [(shares[branch[-1][0]], shares[branch[0][0]]) for branch in branches if branch]
    if any(last == 0 for _, last in ends):
        return None
    return min((first / last for first, last in ends), default=1.0)


def _branches(areas, positions, inlets_m, length_m):
    """(branches, centre): left and right of each inlet the columns as (index, area, distance on towards the inlet),
    dead end first; columns at an inlet are indices. A column halfway between two inlets is in two branches by half."""
    near = 1e-9 * length_m
    halfway = [-inf, *((one + other) / 2 for one, other in pairwise(inlets_m)), inf]
    branches, centre = [], []
    for inlet_m, low, high in zip(inlets_m, halfway, halfway[1:]):
        centre += [i for i, x in enumerate(positions) if abs(x - inlet_m) <= near]
        left = [i for i, x in enumerate(positions) if low - near <= x < inlet_m - near]
        right = [i for i, x in enumerate(positions) if inlet_m + near < x <= high + near][::-1]
        for order in (left, right):
            onward = [positions[i] for i in order[1:]] + [inlet_m]
            shared = [0.5 if min(abs(positions[i] - low), abs(positions[i] - high)) <= near else 1.0 for i in order]
            branches.append(
                [(i, share * areas[i], abs(x - positions[i])) for i, share, x in zip(order, shared, onward)]
            )
    return branches, centre


def wanted_ratio(spread, streams):
    """Plenum over port area that keeps the unevenness of the ports to a share.

        A / sum(A_j) = C_d / arccos(1 - s) / n;   C_d 0.75

    Arguments:
        spread    s, 1 - flow at the inlet over flow at the dead end                [-]   above 0, up to 1
        streams   n, along the plenum: 1 with the inlet at an end, 2 for each inlet in the back   [-]   1 or more
    Returns:
        float            [-]
    Raises:
        InputError       a value outside its limit
    Assumes:
        many equal ports, no friction, full recovery
    Source:
        first/last = cos(C_d a), from q = C_d A sqrt(2p/rho), p = p_end - rho V^2/2, turned round (calculated)
    Checked by:
        tests/test_plenum.py: wanted_ratio against the closed form's table and the march
    """
    require(0 < spread <= 1, "spread", spread, "must be above 0, up to 1")
    require(streams >= 1, "streams", streams, "must be 1 or more", "1")
    return USUAL_DISCHARGE / acos(1 - spread) / streams


def impingement_flow_ratio(inlet_velocity_m_s, density_kg_m3, port_drop_Pa):
    """How much more a port passes if the inlet jet, not broken by a baffle, blows right on it.

        q/q_mean = sqrt(1 + rho V^2/2 / dp)

    Arguments:
        inlet_velocity_m_s   V, in the inlet pipe   [m/s]
        density_kg_m3        rho                    [kg/m3]
        port_drop_Pa         dp, of the mean port   [Pa]      above 0
    Returns:
        q/q_mean   [-]; the most it can be: whole velocity head, block within about six pipe diameters
    Source:
        stagnation pressure (published)
    Checked by:
        tests/test_plenum.py
    """
    require(port_drop_Pa > 0, "port_drop_Pa", port_drop_Pa, "must be above 0")
    return sqrt(1 + velocity_head_Pa(inlet_velocity_m_s, density_kg_m3) / port_drop_Pa)
