"""Carbon monoxide in the gas that leaves: from what is left when it cools slowly to all that it holds while hot."""

from dataclasses import dataclass

from ..physics import combustion, ventilation
from ..physics.band import Band, about
from .blend import Blend
from .firing import Firing
from .flame import Flame, flue_gas
from .gas import Gas
from .hand import MIXTURE_SLIP
from .hot_run import HotRun
from .pilot import Pilot
from .reached import Reached
from .shop import Shop

# What the mixture is off by, set by the look of the flame alone, without a meter of the flue gas: 95 of 100 burners of
# a model of our own, nobody has measured it.
BY_EYE = (0.88, 1.14)
CO_LIMIT_FRACTION, EU_DAY_FRACTION, EU_SHORT_FRACTION = (
    1e-6 * next(row["limit_ppm"] for row in ventilation.co_limits() if row["name"] == name)
    for name in ("NIOSH REL", "EU IOELV", "EU short term")
)


@dataclass(frozen=True)
class CarbonMonoxide:
    """Both None without a flame. `dry`: share of the dry gas, from the lean slip of the mixture, cooled slowly, over
    the mixture as set, to `richest`, chilled at `leaves_K`, as hot as the gas may leave at high fire.

    `richest`: the rich slip, of the burner as it drifts when hot where that is richer, of a blend's richest gas, as far
    as flames are known (3).
    `by_eye`: mixtures that it may come to without a flue-gas meter; `by_eye_dry`: carbon monoxide of the richest,
    cooled slowly.
    `fresh_air_m3_s`: the same as air that the room needs if all of it stays there.
    """

    dry: Band | None
    fresh_air_m3_s: Band | None
    leaves_K: float
    richest: float
    by_eye: tuple[float, float]
    by_eye_dry: float | None


def carbon_monoxide(
    gas: Gas,
    blend: Blend,
    shop: Shop,
    flame: Flame,
    firing: Firing,
    pilot: Pilot,
    reached: Reached,
    hot_run: HotRun,
    equivalence_ratio: float,
    chamber_temperature: float,
) -> CarbonMonoxide:
    # A flame no hotter than the walls leaves at their temperature: it cannot heat them.
    leaves_K = reached.gas_K.high if reached.gas_K else chamber_temperature
    slipped = equivalence_ratio + MIXTURE_SLIP
    richest = min(blend.span(max(slipped, hot_run.richest or 0.0))[1], combustion.EQUIVALENCE_RATIO_RANGE[1])
    by_eye = (equivalence_ratio * BY_EYE[0], equivalence_ratio * BY_EYE[1])
    if flame.flue is None:
        return CarbonMonoxide(None, None, leaves_K, richest, by_eye, None)
    flues = [flame.flue, *flame.slipped]
    for ratio in (richest, slipped, equivalence_ratio):
        chilled = flue_gas(gas, shop, ratio, leaves_K)
        if chilled:
            flues.append(chilled)
            break
    gas_m3_s = (
        combustion.gas_flow_m3_s(gas.composition, firing.installed_W + pilot.all_W) * shop.swell
    )  # as a fan moves it
    fresh_m3_s = [
        ventilation.co_dilution_flow_m3_s(gas_m3_s * flue.dry_mol, flue.co_dry, CO_LIMIT_FRACTION) for flue in flues
    ]
    rich = flue_gas(gas, shop, min(by_eye[1], combustion.EQUIVALENCE_RATIO_RANGE[1]), chamber_temperature)
    return CarbonMonoxide(
        about([flue.co_dry for flue in flues]),
        about(fresh_m3_s),
        leaves_K,
        richest,
        by_eye,
        rich.co_dry if rich else flame.flue.co_dry,
    )
