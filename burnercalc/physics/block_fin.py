"""The block in the fire: a porous fin that the chamber's glow heats at its face and the mixture in its ports cools.

The steel box behind it takes heat from its rim and its back, and hands it to the mixture and to the shop.
"""

from bisect import bisect_right
from dataclasses import dataclass
from math import exp, expm1, log, sqrt, tanh

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


def fin_state(fin, film_W_m2K, capacity_W_K, inlet_K, chamber_K, back_W_K, back_to_K, emissivity=FACE_EMISSIVITY):
    """The slab in balance, mixture flowing through it.

        k A T'' = h P (T - Tm),   m cp Tm' = h P (T - Tm);   with D = T - Tm:  D'' + b D' - a D = 0
        a = h P/(k A),  b = h P/(m cp),  D = C1 exp(r1 s) + C2 exp(r2 s),  r = (-b +- sqrt(b^2 + 4 a))/2
        back:  k A T' = G (T - T_e);   face:  k A T' = e sigma A (T_ch^4 - T^4)

    Arguments:
        fin            Fin
        film_W_m2K     h, mixture in the ports                     [W/m2/K]  above 0
        capacity_W_K   m cp of all ports                           [W/K]     above 0
        inlet_K        Tm where the mixture enters the ports       [K]
        chamber_K      T_ch that the face sees all round           [K]
        back_W_K       G, from the back to what it faces           [W/K]     0 or more
        back_to_K      T_e, what it faces                          [K]
        emissivity     e of the face                               [-]       0 for a face that takes nothing
    Returns:
        FinState
    Raises:
        InputError     a flow or film that is not above 0
    Assumes:
        one temperature across the slab at each depth; constant h, k and cp; the face sees walls of one temperature,
        and what hot gas gives it and what its own flames shade leave each other out; no heat goes out at the sides
    Source:
        fin and heat-exchanger equations (published), solved in closed form (calculated)
    Checked by:
        tests/test_block_fin.py: cosh fin, scipy's solve_bvp, balance of heat, tests/reference/block_fin.csv
    """
    for name, value in (("film_W_m2K", film_W_m2K), ("capacity_W_K", capacity_W_K)):
        require(0 < value < float("inf"), name, f"{value:g}", "must be above 0")
    length, through = fin.length_m, fin.conductivity_W_mK * fin.solid_area_m2
    given = film_W_m2K * fin.wetted_m2_m
    a, b = given / through, given / capacity_W_K
    spread = sqrt(b * b + 4 * a)
    r1, r2 = 2 * a / (b + spread), -(b + spread) / 2
    at_back, at_face = exp(-r1 * length), exp(r2 * length)
    # Of C1 exp(r1 L) and C2, from the two ends; b + r1 = -r2 and b + r2 = -r1.
    back_1, back_2 = (-through * r2 - back_W_K) * at_back, -through * r1 - back_W_K
    face_1, face_2 = -through * r2, -through * r1 * at_face
    under = back_1 * face_2 - back_2 * face_1

    def parts(back, face):
        return (back * face_2 - face * back_2) / under, (back_1 * face - face_1 * back) / under

    def face_K(c1, c2):
        """Over the inlet's."""
        return c1 * (1 - b * (at_back - 1) / r1) + c2 * (at_face + b * (at_face - 1) / r2)

    still, unit = parts(back_W_K * (inlet_K - back_to_K), 0.0), parts(0.0, 1.0)
    lowest, per_W = inlet_K + face_K(*still), face_K(*unit)
    glow = emissivity * STEFAN_BOLTZMANN_W_M2K4 * fin.solid_area_m2
    temp = max(chamber_K, lowest)
    for _ in range(60):  # T + per_W glow (T^4 - T_ch^4) = lowest: convex and rising, from above
        step = (temp + per_W * glow * (temp**4 - chamber_K**4) - lowest) / (1 + 4 * per_W * glow * temp**3)
        temp -= step
        if abs(step) < 1e-9 * temp:
            break
    heat_W = glow * (chamber_K**4 - temp**4)
    return FinState(
        fin, heat_W, inlet_K, (b, r1, r2), tuple(one + heat_W * two for one, two in zip(still, unit, strict=True))
    )


@dataclass(frozen=True)
class HotPort:
    """Mixture before and behind a port of a hot block, and the block's face there, over the cold mixture's velocity.

    Straight lines in the logarithm of the velocity, which rises from row to row; beyond the ends as at them.
    """

    velocities_m_s: tuple[float, ...]
    enters_K: tuple[float, ...]
    exits_K: tuple[float, ...]
    faces_K: tuple[float, ...]

    def enter_K(self, velocity_m_s: float) -> float:
        """Of the mixture in the box."""
        return self._at(self.enters_K, velocity_m_s)

    def exit_K(self, velocity_m_s: float) -> float:
        """Of the mixture that leaves."""
        return self._at(self.exits_K, velocity_m_s)

    def face_K(self, velocity_m_s: float) -> float:
        """Of the lip of the port."""
        return self._at(self.faces_K, velocity_m_s)

    def _at(self, temps, velocity):
        i = bisect_right(self.velocities_m_s, velocity)
        if i in (0, len(temps)):
            return temps[min(i, len(temps) - 1)]
        low, high = self.velocities_m_s[i - 1], self.velocities_m_s[i]
        return temps[i - 1] + (temps[i] - temps[i - 1]) * log(velocity / low) / log(high / low)


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
) -> HotState:
    """Block, steel box and mixture at one flow, in balance with each other.

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
    Returns:
        HotState
    Raises:
        InputError        see fin_state
    Assumes:
        films of FILM_W_M2K in the box and round it; the rim takes heat through a ring of refractory as wide as the
        setback and as high as the grip, and the slab does not miss it; mean Nusselt number of the ports
    Source:
        fin_state; Incropera and DeWitt for the box as a fin (published); films and rim: common practice
    Checked by:
        tests/test_block_fin.py: balance of heat, tests/reference/block_fin.csv
    """
    _, viscosity, _, _ = properties.at(shop_K)
    flux = flow_kg_s / port_area_m2
    reynolds = flux * port_diameter_m / viscosity
    solid, both = fin.solid_area_m2, 2 * FILM_W_M2K
    rim_W_K = rim_times * fin.conductivity_W_mK * box.round_m * box.grip_m / box.setback_m
    m = sqrt(both / (STEEL_CONDUCTIVITY_W_MK * box.wall_m)) * box.depth_m
    mean_over_lip = tanh(m) / m
    fin_W_K = both * box.round_m * box.depth_m * mean_over_lip
    mixture, steel, back, exit_K = shop_K, shop_K, shop_K, shop_K
    for _ in range(MOST_ROUNDS):
        _, mu, k, cp = properties.at((mixture + exit_K) / 2)
        graetz = flux * port_diameter_m**2 * cp / (k * fin.length_m)
        film = mean_nusselt(graetz, reynolds, mu * cp / k) * k / port_diameter_m
        glow = BACK_EMISSIVITY * STEFAN_BOLTZMANN_W_M2K4 * (back**2 + steel**2) * (back + steel)
        facing = (FILM_W_M2K * mixture + glow * steel) / (FILM_W_M2K + glow)
        state = fin_state(
            fin,
            film,
            flow_kg_s * cp,
            mixture,
            chamber_K,
            (FILM_W_M2K + glow) * solid,
            facing,
        )
        back, exit_K = state.wall_K(0.0), state.mixture_K(fin.length_m)
        rim = state.wall_K(min(box.grip_m, fin.length_m))
        shone = glow * solid * (back - steel) / box.inside_m2
        around = (FILM_W_M2K * (mixture + shop_K) + shone) / both
        lip = around + (rim - around) * rim_W_K / (rim_W_K + fin_W_K)
        before, steel = (mixture, steel), around + (lip - around) * mean_over_lip
        cp_cold = properties.at(shop_K)[3]
        flows, box_W_K, back_W_K = flow_kg_s * cp_cold, FILM_W_M2K * box.inside_m2, FILM_W_M2K * solid
        mixture = (flows * shop_K + box_W_K * steel + back_W_K * back) / (flows + box_W_K + back_W_K)
        if max(abs(mixture - before[0]), abs(steel - before[1])) < ENOUGH_K:
            break
    return HotState(
        face_K=state.wall_K(fin.length_m),
        wall_K=state.mean_wall_K,
        exit_K=exit_K,
        back_K=back,
        rim_K=rim,
        lip_K=lip,
        box_K=steel,
        mixture_K=mixture,
        through_W=state.through_W,
        rim_W=rim_W_K * (rim - lip),
        rim_W_K=rim_W_K * fin_W_K / (rim_W_K + fin_W_K - rim_W_K * mean_over_lip),
        flow_W_K=flow_kg_s * cp,
        film_W_m2K=film,
        ports=state,
    )
