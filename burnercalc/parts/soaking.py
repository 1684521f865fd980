"""The block after the gas is shut: how hot the standing box gets, and how long the blower should run on."""

from dataclasses import dataclass

from ..constants import INCH_M
from ..physics.block_soak import CELLS, LONGEST_S, Cooling, Soak, hottest, run_on_s, soaked
from .chamber import Chamber
from .hot_block import HotBlock
from .shop import Shop

# Five minutes an inch of block, 5 to 15 (common practice), longer where the box asks for it.
RUN_ON_S_M, RUN_ON_S = 300 / INCH_M, (300.0, 900.0)
LONGER_S = tuple(60.0 * minutes for minutes in (10, 15, 20, 30, 45, 60, 90, 120))


@dataclass(frozen=True)
class Soaking:
    """After low fire, hot all through, the chamber as hot as low fire makes it empty. The hottest that each gets when
    the blower stops with the gas, at the end of the rim's band that is worse for it; `run_on_s`: None where two hours
    will not do. `set_back_K`, `set_mixture_K`: no more than that with the chamber at its set temperature;
    found only where the others may harm.
    """

    back_K: float
    steel_K: float
    mixture_K: float
    run_on_s: float | None
    set_back_K: float
    set_mixture_K: float


def soaking(hot_block: HotBlock, chamber: Chamber, shop: Shop, chamber_temperature: float) -> Soaking:
    """Air runs on as at low fire: the damper stays where it is."""
    fin, stuff = hot_block.fin, hot_block.material
    loses_W_K = (chamber.wall_loss_W + chamber.opening_loss_W) / (chamber_temperature - shop.temp_K)

    def begun(low, hot_K):
        """(Cooling, Soak) as the gas is shut."""
        cooling = Cooling(
            fin=fin,
            box=hot_block.box,
            capacity_J_m3K=stuff.density_kg_m3 * stuff.heat_capacity_J_kgK(low.wall_K),
            rim_W_K=low.rim_W_K,
            chamber_K=hot_K,
            chamber_J_K=chamber.stored_heat_J / (chamber_temperature - shop.temp_K),
            chamber_W=loses_W_K * (hot_K - shop.temp_K),
            shop_K=shop.temp_K,
        )
        walls = tuple(low.ports.wall_K((i + 0.5) * fin.length_m / CELLS) for i in range(CELLS))
        return cooling, Soak(0.0, walls, low.box_K, low.mixture_K, hot_K)

    def worst(least_rim, most_rim, hot_K):
        """(back, steel, mixture) at their hottest."""
        _, steel_K, mixture_K = hottest(soaked(*begun(most_rim, hot_K), LONGEST_S))
        return hottest(soaked(*begun(least_rim, hot_K), LONGEST_S))[0], steel_K, mixture_K

    left_K, low = hot_block.left_K, hot_block.left_least
    usual_s = min(max(RUN_ON_S_M * fin.length_m, RUN_ON_S[0]), RUN_ON_S[1])
    times_s = (usual_s, *(time for time in LONGER_S if time > usual_s))
    back_K, steel_K, mixture_K = worst(low, hot_block.left, left_K)
    harmless = mixture_K <= hot_block.wetted_K and back_K <= hot_block.ignition_K
    at_set = (
        (back_K, steel_K, mixture_K)
        if harmless or left_K == chamber_temperature
        else worst(hot_block.least_rim, hot_block.most_rim, chamber_temperature)
    )
    return Soaking(
        back_K=back_K,
        steel_K=steel_K,
        mixture_K=mixture_K,
        run_on_s=run_on_s(*begun(low, left_K), hot_block.wetted_K, low.flow_W_K, low.film_W_m2K, times_s),
        set_back_K=at_set[0],
        set_mixture_K=at_set[2],
    )
