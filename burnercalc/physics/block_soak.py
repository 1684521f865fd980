"""The block after the gas is shut: its heat soaks back into the box, with the blower stopped or running on."""

from dataclasses import dataclass

from ..constants import STEFAN_BOLTZMANN_W_M2K4
from ..errors import require
from .block_fin import BACK_EMISSIVITY, FACE_EMISSIVITY, FILM_W_M2K, Box, Fin

CELLS = 8
STEEL_J_M3K = 7850 * 500.0  # carbon steel, 7850 kg/m3 and about 500 J/kg/K at 150 degC (EN 1993-1-2)
FIRST_STEP_S, STEP_GROWTH, LONGEST_STEP_S = 20.0, 1.3, 240.0
LONGEST_S = 4 * 3600.0
PASSED = 0.25  # of L^2/alpha: by then the heat of the face has come through


@dataclass(frozen=True)
class Cooling:
    """What cools with what.

    `capacity_J_m3K`: of the block's stuff; `rim_W_K`: from the block in the plane of the steel's face to the mean of
    the box; `chamber_J_K`, `chamber_W`: stored in the chamber for each kelvin, and lost by it at `chamber_K`.
    """

    fin: Fin
    box: Box
    capacity_J_m3K: float
    rim_W_K: float
    chamber_K: float
    chamber_J_K: float
    chamber_W: float
    shop_K: float


@dataclass(frozen=True)
class Soak:
    """A moment after the gas is shut: cells from back to face, mean of the box, mixture or air in it, chamber."""

    time_s: float
    walls_K: tuple[float, ...]
    steel_K: float
    mixture_K: float
    chamber_K: float

    @property
    def back_K(self) -> float:
        """Of the block, towards the box."""
        return 1.5 * self.walls_K[0] - 0.5 * self.walls_K[1]


def soaked(cooling, start, until_s, flow_W_K=0.0, film_W_m2K=0.0):
    """Moments from `start` until `until_s`, or until standing box and back cool for good.

        each cell:  C dT/dt = G (T_before - T) + G (T_after - T) + h P dx (T_m - T);   ends: chamber, box
        chamber:    C dT/dt = -Q (T^4 - T_shop^4)/(T_0^4 - T_shop^4) - m cp (T - T_exit)

    Arguments:
        cooling        Cooling
        start          Soak
        until_s        time since the gas was shut                [s]
        flow_W_K       m cp of the air that runs on               [W/K]     0: blower stopped
        film_W_m2K     between it and the ports                   [W/m2/K]  above 0 with a flow
    Returns:
        tuple          of Soak, `start` first
    Raises:
        InputError     a flow below 0, or one without a film
    Assumes:
        implicit steps of up to 4 min in CELLS cells; standing mixture has no heat of its own and takes its temperature
        between back and box; the chamber cools as one lump, so its inside stays hotter than it truly would
    Source:
        conduction and radiation (published), finite volumes (calculated); films: common practice
    Checked by:
        tests/test_block_soak.py: the steady slab, heat kept, cooling of one lump
    """
    require(0 <= flow_W_K < float("inf"), "flow_W_K", flow_W_K, "must be 0 or more", "0")
    require(flow_W_K == 0 or film_W_m2K > 0, "film_W_m2K", film_W_m2K, "must be above 0")
    diffusivity = cooling.fin.conductivity_W_mK / cooling.capacity_J_m3K
    through_s = PASSED * cooling.fin.length_m**2 / diffusivity
    moments, step, now = [start], FIRST_STEP_S, start
    while now.time_s < until_s - 1e-9:
        before = now
        step = min(step, until_s - now.time_s)
        now = _after(cooling, now, step, flow_W_K, film_W_m2K)
        moments.append(now)
        cools = now.back_K < before.back_K and now.steel_K < before.steel_K
        if flow_W_K == 0 and cools and now.time_s - start.time_s > through_s:
            break
        step = min(step * STEP_GROWTH, LONGEST_STEP_S)
    return tuple(moments)


def _after(cooling, now, step_s, flow_W_K, film_W_m2K):
    fin, box, shop = cooling.fin, cooling.box, cooling.shop_K
    cell_m, through = fin.length_m / CELLS, fin.conductivity_W_mK * fin.solid_area_m2
    between, half = through / cell_m, 2 * through / cell_m
    held = cooling.capacity_J_m3K * fin.solid_area_m2 * cell_m / step_s
    walls, steel, chamber = now.walls_K, now.steel_K, now.chamber_K
    # Mixture through the ports, warmed from cell to cell as the walls stand.
    given = film_W_m2K * fin.wetted_m2_m * cell_m
    mixture, taken, passing = now.mixture_K, [], now.mixture_K
    for wall in walls:
        if flow_W_K:
            taken.append((passing, given / (1 + given / (2 * flow_W_K))))
            passing += taken[-1][1] / flow_W_K * (wall - passing)
        else:
            taken.append((wall, 0.0))
    glow = BACK_EMISSIVITY * STEFAN_BOLTZMANN_W_M2K4 * fin.solid_area_m2
    back_K = now.back_K
    to_steel = glow * (back_K**2 + steel**2) * (back_K + steel)
    back_film, box_film = FILM_W_M2K * fin.solid_area_m2, FILM_W_M2K * box.inside_m2
    if flow_W_K == 0:  # standing: what the back gives to the mixture goes on to the box
        to_steel += 1 / (1 / back_film + 1 / box_film)
    face_K = 1.5 * walls[-1] - 0.5 * walls[-2]
    shone = FACE_EMISSIVITY * STEFAN_BOLTZMANN_W_M2K4 * fin.solid_area_m2
    from_chamber = shone * (chamber**2 + face_K**2) * (chamber + face_K)
    out_back, out_mixture = _series(half, to_steel), _series(half, back_film if flow_W_K else 0.0)
    rim_at = min(int(box.grip_m / cell_m), CELLS - 1)
    into = _series(half, from_chamber)
    # Tridiagonal, from the back to the face.
    diagonal = [held + between * ((i > 0) + (i < CELLS - 1)) + taken[i][1] for i in range(CELLS)]
    right = [held * walls[i] + taken[i][1] * taken[i][0] for i in range(CELLS)]
    diagonal[0] += out_back + out_mixture
    right[0] += out_back * steel + out_mixture * mixture
    diagonal[-1] += into
    right[-1] += into * chamber
    diagonal[rim_at] += cooling.rim_W_K
    right[rim_at] += cooling.rim_W_K * steel
    for i in range(1, CELLS):
        share = between / diagonal[i - 1]
        diagonal[i] -= share * between
        right[i] += share * right[i - 1]
    found = [right[-1] / diagonal[-1]]
    for i in range(CELLS - 2, -1, -1):
        found.append((right[i] + between * found[-1]) / diagonal[i])
    found.reverse()
    steel_held = STEEL_J_M3K * box.wall_m * box.inside_m2 / step_s
    inside = box_film if flow_W_K else 0.0
    steel = (
        steel_held * steel + out_back * found[0] + cooling.rim_W_K * found[rim_at] + box_film * shop + inside * mixture
    ) / (steel_held + out_back + cooling.rim_W_K + box_film + inside)
    back_K = 1.5 * found[0] - 0.5 * found[1]
    if flow_W_K:
        mixture = (flow_W_K * shop + box_film * steel + back_film * back_K) / (flow_W_K + box_film + back_film)
    else:
        mixture = (box_film * steel + back_film * back_K) / (box_film + back_film)
    lost = cooling.chamber_W * (chamber**4 - shop**4) / (cooling.chamber_K**4 - shop**4)
    chamber -= (lost + flow_W_K * (chamber - passing)) * step_s / cooling.chamber_J_K
    return Soak(now.time_s + step_s, tuple(found), steel, mixture, max(chamber, shop))


def _series(one, other):
    return one * other / (one + other) if other else 0.0


def run_on_s(cooling, start, limit_K, flow_W_K, film_W_m2K, times_s):
    """How long air must run on after the gas is shut so that no part of the standing box passes `limit_K` later.

    Arguments:
        cooling, start        see soaked
        limit_K               of back and box                                       [K]
        flow_W_K, film_W_m2K  of the air                                            [W/K], [W/m2/K]
        times_s               to try, rising; the first that will do is returned    [s]
    Returns:
        float or None         None where the last will not do                       [s]
    Checked by:
        tests/test_block_soak.py
    """
    now = start
    for time in times_s:
        if time > now.time_s:
            now = soaked(cooling, now, time, flow_W_K, film_W_m2K)[-1]
        if max(hottest(soaked(cooling, now, now.time_s + LONGEST_S))[:2]) <= limit_K:
            return time
    return None


def hottest(moments):
    """(back, steel, mixture) at the hottest that each gets [K]."""
    return tuple(max(getattr(one, name) for one in moments) for name in ("back_K", "steel_K", "mixture_K"))
