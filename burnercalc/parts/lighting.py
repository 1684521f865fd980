"""How the cold burner is lit: what flame and valves leave, unless it must not be lit for another reason."""

from dataclasses import dataclass, fields, replace

from ..catalogue.sentences import said
from .back_pressure import BackPressure
from .burnt_gas import BurntGas
from .fired_heat_up import FiredHeatUp
from .lighting_try import LightingTry
from .turning import Turning

LONGEST_WAIT_S = 3600.0  # that anybody listens to a rich flame; common practice
WAITS = ("dim", "long", "cool")  # ways that the wait for the walls closes


@dataclass(frozen=True)
class Lighting(LightingTry):
    """As LightingTry, None where it must not be lit. `way` is then, if none of LightingTry: closed (no way out for the
    smoke), torch_weak (burnt gas lifts it off even behind a torch), no_way (no order of the valves leads to low or high
    fire), or one of WAITS: the walls never glow at this rate and no guard shuts the gas, or a hand holds the torch and
    they glow too late, or the chamber is worked too cool to glow."""


def lighting(
    lit_by: str,
    chamber_back_pressure: float,
    lighting_try: LightingTry,
    back_pressure: BackPressure,
    burnt_gas: BurntGas,
    turning: Turning,
    fired_heat_up: FiredHeatUp,
) -> Lighting:
    found = Lighting(**{field.name: getattr(lighting_try, field.name) for field in fields(lighting_try)})
    if back_pressure.no_way_out(chamber_back_pressure):
        return _not_lit(found, said("closed"))
    if found.waits_W is None:
        return found
    if burnt_gas.keeps == "":
        return _not_lit(found, said("torch_weak", rate=found.waits_W, torch=burnt_gas.torch_W))
    if not turning.goes_on:
        return _not_lit(found, said("no_way"))
    if not found.glows:
        return _not_lit(found, said("cool")) if lit_by == "hand" else found
    if lit_by != "guard" and not fired_heat_up.turns_up:
        return _not_lit(found, said("dim", rate=found.waits_W))
    if lit_by == "hand":
        wait = fired_heat_up.waits_s
        wait_s = wait.high if isinstance(wait, tuple) else wait
        if wait_s > LONGEST_WAIT_S:
            return _not_lit(found, said("long", wait=wait_s))
    return found


def _not_lit(found, why):
    none = dict.fromkeys(
        ("equivalence_ratio", "rate_W", "gas_Pa", "open_share", "mixture_m3_s", "pipe_Pa", "waits_W", "waits_ratio")
    )
    return replace(found, way=why.case, stays=False, close=False, advice=why, **none)
