"""The block in the fire: a porous fin that the chamber's glow heats at its face and the mixture in its ports cools.

The steel box behind it takes heat from its rim and its back, and hands it to the mixture and to the shop.
"""

from bisect import bisect_right
from collections.abc import Callable
from dataclasses import dataclass
from math import exp, expm1, inf, log, sqrt, tanh
from operator import sub

from ..constants import STEFAN_BOLTZMANN_W_M2K4
from ..errors import require
from .port_stream import StreamProperties, mean_nusselt

FACE_EMISSIVITY = 0.7  # of castable at a red heat, ports counted in
BACK_EMISSIVITY = 0.7  # from the block's back to sooted or scaled steel, both ways
FILM_W_M2K = 10.0  # slow air or mixture on the box, inside and outside; 5 to 20
STEEL_CONDUCTIVITY_W_MK = 48.0  # carbon steel at 200 degC, EN 1993-1-2
RIM_BAND = (0.5, 1.0, 2.0)  # how far the shape of the rim is off, times
ENOUGH_K, MOST_ROUNDS = 1e-3, 200


@dataclass(frozen=True)
class Fin:
    """The field of ports as one slab, from its back (0) to its face.

    `solid_area_m2`: of the slab without ports; `wetted_m2_m`: wall of all ports for each metre of depth.
    """

    length_m: float
    solid_area_m2: float
    wetted_m2_m: float
    conductivity_W_mK: float


@dataclass(frozen=True)
class FinState:
    """Temperatures of wall and mixture along the ports; `through_W` goes in at the face."""

    fin: Fin
    through_W: float
    inlet_K: float
    rises_1_m: tuple[float, float, float]  # b, r1, r2
    parts_K: tuple[float, float]  # of the first at the face, of the second at the back

    def mixture_K(self, depth_m: float) -> float:
        """Of the mixture, `depth_m` from the back."""
        b, r1, r2 = self.rises_1_m
        from_face, from_back = self.parts_K
        grown = exp(r1 * (depth_m - self.fin.length_m)) - exp(-r1 * self.fin.length_m)
        return self.inlet_K + b * (from_face * grown / r1 + from_back * expm1(r2 * depth_m) / r2)

    def wall_K(self, depth_m: float) -> float:
        """Of the port's wall, `depth_m` from the back."""
        _, r1, r2 = self.rises_1_m
        from_face, from_back = self.parts_K
        return (
            self.mixture_K(depth_m)
            + from_face * exp(r1 * (depth_m - self.fin.length_m))
            + from_back * exp(r2 * depth_m)
        )

    @property
    def mean_wall_K(self) -> float:
        """Mean of the port's wall over its length."""
        b, r1, r2 = self.rises_1_m
        length, (from_face, from_back) = self.fin.length_m, self.parts_K
        one, two = -from_face * expm1(-r1 * length) / r1, from_back * expm1(r2 * length) / r2
        warmed = b * ((one - length * from_face * exp(-r1 * length)) / r1 + (two - length * from_back) / r2)
        return self.inlet_K + (warmed + one + two) / length


def _parts(fin, film_W_m2K, capacity_W_K, back_W_K):
    """(b, r1, r2), and C1 exp(r1 L) with C2 for each kelvin of inlet over what the back faces, and for each watt.

    Of hot_state: T wall and Tm mixture, G from the back to what it faces.
    """
    length, through = fin.length_m, fin.conductivity_W_mK * fin.solid_area_m2
    given = film_W_m2K * fin.wetted_m2_m
    a, b = given / through, given / capacity_W_K
    spread = sqrt(b * b + 4 * a)
    r1, r2 = 2 * a / (b + spread), -(b + spread) / 2
    # From the two ends; b + r1 = -r2 and b + r2 = -r1.
    back_1, back_2 = (-through * r2 - back_W_K) * exp(-r1 * length), -through * r1 - back_W_K
    face_1, face_2 = -through * r2, -through * r1 * exp(r2 * length)
    under = back_1 * face_2 - back_2 * face_1
    cooled = back_W_K * face_2 / under, -face_1 * back_W_K / under
    return (b, r1, r2), cooled, (-back_2 / under, back_1 / under)


def _shone_on_K(start_K, shines_K_K4, chamber_K, nought_K):
    """The face that takes in what walls shine on it, T + a (T^4 - T_ch^4) = T_0, by Newton's steps from a start.

    Convex and rising, so from the first step on it comes from above.
    """
    face_K = start_K
    for _ in range(60):
        over_K = face_K + shines_K_K4 * (face_K**4 - chamber_K**4) - nought_K
        step_K = over_K / (1 + 4 * shines_K_K4 * face_K**3)
        face_K -= step_K
        if abs(step_K) < 1e-9 * face_K:
            break
    return face_K


def _rise(fin, rises_1_m, depth_m):
    """What C1 exp(r1 L) and C2 make of the mixture and of the wall over the inlet's, `depth_m` from the back."""
    b, r1, r2 = rises_1_m
    one, two = exp(r1 * (depth_m - fin.length_m)), exp(r2 * depth_m)
    mixture = b * (one - exp(-r1 * fin.length_m)) / r1, b * (two - 1) / r2
    return mixture, (mixture[0] + one, mixture[1] + two)


@dataclass(frozen=True)
class Box:
    """The steel behind the block. `round_m`: round the body; `depth_m`: of steel past the grip; `back_m2`: its back."""

    round_m: float
    depth_m: float
    wall_m: float
    grip_m: float
    setback_m: float
    back_m2: float

    @property
    def inside_m2(self) -> float:
        """Steel that the mixture in the box wets."""
        return self.round_m * self.depth_m + self.back_m2


@dataclass(frozen=True)
class HotState:
    """Block, box and mixture in balance [K].

    `face_K`: with the lips of the ports; `wall_K`: mean of a port's wall; `exit_K`: mixture that leaves; `rim_K`: block
    in the plane of the steel's face; `lip_K`: the steel there; `box_K`: mean of the box; `mixture_K`: mixture in it.
    Heat through the face and through the rim into the box [W]; `rim_W_K`: from
    the rim for each kelvin that it is hotter than the mean box; m cp of the mixture and its film in the ports.
    """

    face_K: float
    wall_K: float
    exit_K: float
    back_K: float
    rim_K: float
    lip_K: float
    box_K: float
    mixture_K: float
    through_W: float
    rim_W: float
    rim_W_K: float
    flow_W_K: float
    film_W_m2K: float
    ports: FinState


class HotPort:
    """Mixture before and behind a port of a hot block, and the block's face there, over the cold mixture's velocity.

    Straight lines in the logarithm of the velocity, which rises from row to row; beyond the ends as at them. A row is
    worked out when it is first asked for, and so are those of quicker mixture, each from the one before.

    Arguments:
        velocities_m_s   of the rows
        at               function of a velocity and of a HotState near it -> HotState
        near             HotState to begin the last row from
    """

    def __init__(
        self, velocities_m_s: tuple[float, ...], at: Callable[[float, HotState], HotState], near: HotState
    ) -> None:
        self.velocities_m_s, self._at, self._near = velocities_m_s, at, near
        self._logs = [log(velocity) for velocity in velocities_m_s]
        self._from_quickest: list[HotState] = []

    def enter_K(self, velocity_m_s: float) -> float:
        """Of the mixture in the box."""
        below, above, share = self._between(velocity_m_s)
        return below.mixture_K + (above.mixture_K - below.mixture_K) * share

    def exit_K(self, velocity_m_s: float) -> float:
        """Of the mixture that leaves."""
        return self.exit_and_face_K(velocity_m_s)[0]

    def face_K(self, velocity_m_s: float) -> float:
        """Of the lip of the port."""
        return self.exit_and_face_K(velocity_m_s)[1]

    def exit_and_face_K(self, velocity_m_s: float) -> tuple[float, float]:
        """Both, looked up once."""
        below, above, share = self._between(velocity_m_s)
        exit_K = below.exit_K + (above.exit_K - below.exit_K) * share
        return exit_K, below.face_K + (above.face_K - below.face_K) * share

    def row(self, n: int) -> HotState:
        """Of the n-th velocity."""
        known, last = self._from_quickest, len(self.velocities_m_s) - 1
        while len(known) <= last - n:
            known.append(self._at(self.velocities_m_s[last - len(known)], known[-1] if known else self._near))
        return known[last - n]

    def _between(self, velocity):
        """The rows below and above a velocity, and how far it is from one to the other; beyond the ends that twice."""
        logs, i = self._logs, bisect_right(self.velocities_m_s, velocity)
        if i == 0 or i == len(logs):
            end = self.row(min(i, len(logs) - 1))
            return end, end, 0.0
        return self.row(i - 1), self.row(i), (log(velocity) - logs[i - 1]) / (logs[i] - logs[i - 1])


def hot_state(
    fin: Fin,
    box: Box,
    flow_kg_s: float,
    port_diameter_m: float,
    port_area_m2: float,
    properties: StreamProperties,
    shop_K: float,
    chamber_K: float,
    rim_times: float = 1.0,
    near: HotState | None = None,
) -> HotState:
    """Block, steel box and mixture at one flow, in balance with each other.

        block:    k A T'' = h P (T - Tm),   m cp Tm' = h P (T - Tm);   with D = T - Tm:  D'' + b D' - a D = 0
                  a = h P/(k A),  b = h P/(m cp),  D = C1 exp(r1 s) + C2 exp(r2 s),  r = (-b +- sqrt(b^2 + 4 a))/2
                  back:  k A T' = G (T - T_e);   face:  k A T' = e sigma A (T_ch^4 - T^4)
        rim:      k U g/s, from the block to the steel;  box: a fin of steel, h on both sides
        mixture:  m cp (Tm - T_shop) = h A_box (T_box - Tm) + h A (T_back - Tm)

    Arguments:
        fin, box          Fin, Box
        flow_kg_s         mixture through all ports                      [kg/s]  above 0
        port_diameter_m   d                                              [m]
        port_area_m2      of all ports                                   [m2]
        properties        StreamProperties of the mixture
        shop_K            mixture before the box, and air round it       [K]
        chamber_K         walls that the face sees                       [K]
        rim_times         of the rim's conductance                       [-]     0.5 to 2
        near              HotState to begin from; None: all at the shop's temperature
    Returns:
        HotState
    Raises:
        InputError        a flow that is not above 0
    Assumes:
        one temperature across the slab at each depth; constant h, k and cp; the face sees walls of one temperature,
        and what hot gas gives it and what its own flames shade leave each other out; no heat goes out at the sides;
        films of FILM_W_M2K in the box and round it; the rim takes heat through a ring of refractory as wide as the
        setback and as high as the grip, and the slab does not miss it; mean Nusselt number of the ports
    Source:
        fin and heat-exchanger equations (published), solved in closed form (calculated); Incropera and DeWitt for the
        box as a fin (published); films and rim: common practice
    Checked by:
        tests/test_block_fin.py: cosh fin, scipy's solve_bvp, balance of heat, tests/reference/block_fin.csv
    """
    require(0 < flow_kg_s < inf, "flow_kg_s", flow_kg_s, "must be above 0")
    _, viscosity, _, cp_cold = properties.at(shop_K)
    flux = flow_kg_s / port_area_m2
    reynolds = flux * port_diameter_m / viscosity
    solid, both, grip = fin.solid_area_m2, 2 * FILM_W_M2K, min(box.grip_m, fin.length_m)
    rim_W_K = rim_times * fin.conductivity_W_mK * box.round_m * box.grip_m / box.setback_m
    m = sqrt(both / (STEEL_CONDUCTIVITY_W_MK * box.wall_m)) * box.depth_m
    mean_over_lip = tanh(m) / m
    fin_W_K = both * box.round_m * box.depth_m * mean_over_lip
    flows, box_W_K, back_W_K = flow_kg_s * cp_cold, FILM_W_M2K * box.inside_m2, FILM_W_M2K * solid
    # The mean box is its surroundings, and so much of the rim in their stead.
    by_rim = rim_W_K / (rim_W_K + fin_W_K) * mean_over_lip
    shines = FACE_EMISSIVITY * STEFAN_BOLTZMANN_W_M2K4 * solid
    mixture, steel, back, exit_K, face = shop_K, shop_K, shop_K, shop_K, chamber_K
    if near is not None:
        mixture, steel, back, exit_K, face = near.mixture_K, near.box_K, near.back_K, near.exit_K, near.face_K
    for _ in range(MOST_ROUNDS):
        # As film, heat capacity and the glow between back and box stand, all is in proportion to the heat at the face.
        _, mu, k, cp = properties.at((mixture + exit_K) / 2)
        graetz = flux * port_diameter_m**2 * cp / (k * fin.length_m)
        film = mean_nusselt(graetz, reynolds, mu * cp / k) * k / port_diameter_m
        glow = BACK_EMISSIVITY * STEFAN_BOLTZMANN_W_M2K4 * (back**2 + steel**2) * (back + steel)
        rises, cooled, heated = _parts(fin, film, flow_kg_s * cp, (FILM_W_M2K + glow) * solid)
        # The back faces mixture and box; inlet over that for each kelvin of mixture over box.
        faced = glow / (FILM_W_M2K + glow)
        cooled = (faced * cooled[0], faced * cooled[1])
        (_, at_back), (_, at_rim) = _rise(fin, rises, 0.0), _rise(fin, rises, grip)
        leaving, at_face = _rise(fin, rises, fin.length_m)
        # Over the mixture in the box: for each kelvin of mixture over box, and for each watt.
        (back_K, back_W), (rim_K, rim_W), (exit_1, exit_W), (face_1, face_W) = (
            (one * cooled[0] + two * cooled[1], one * heated[0] + two * heated[1])
            for one, two in (at_back, at_rim, leaving, at_face)
        )
        shone = (1 - by_rim) * glow * solid / box.inside_m2 / both
        # Two balances of mixture over shop and mixture over box, both for one watt:
        #   (1 - by_rim)/2 over_shop - kept over_box = warmed,   flows over_shop + cools over_box = gives
        half, kept = (1 - by_rim) / 2, 1 + shone * (1 + back_K) + by_rim * rim_K
        warmed = shone * back_W + by_rim * rim_W
        cools, gives = box_W_K - back_W_K * back_K, back_W_K * back_W
        under = half * cools + kept * flows
        over_shop, over_box = (warmed * cools + kept * gives) / under, (half * gives - warmed * flows) / under
        face_W += over_shop + face_1 * over_box
        face = _shone_on_K(face, face_W * shines, chamber_K, shop_K)
        heat_W = shines * (chamber_K**4 - face**4)
        before = mixture, steel, back, exit_K
        mixture = shop_K + heat_W * over_shop
        steel = mixture - heat_W * over_box
        back = mixture + heat_W * (back_K * over_box + back_W)
        exit_K = mixture + heat_W * (exit_1 * over_box + exit_W)
        if max(map(abs, map(sub, before, (mixture, steel, back, exit_K)))) < ENOUGH_K:
            break
    rim = mixture + heat_W * (rim_K * over_box + rim_W)
    around = (FILM_W_M2K * (mixture + shop_K) + glow * solid * (back - steel) / box.inside_m2) / both
    lip = around + (rim - around) * rim_W_K / (rim_W_K + fin_W_K)
    state = FinState(
        fin, heat_W, mixture, rises, tuple(heat_W * (over_box * one + two) for one, two in zip(cooled, heated))
    )
    return HotState(
        face_K=face,
        wall_K=state.mean_wall_K,
        exit_K=exit_K,
        back_K=back,
        rim_K=rim,
        lip_K=lip,
        box_K=steel,
        mixture_K=mixture,
        through_W=heat_W,
        rim_W=rim_W_K * (rim - lip),
        rim_W_K=rim_W_K * fin_W_K / (rim_W_K + fin_W_K - rim_W_K * mean_over_lip),
        flow_W_K=flow_kg_s * cp,
        film_W_m2K=film,
        ports=state,
    )
