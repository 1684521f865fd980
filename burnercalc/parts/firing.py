"""The fire of one burner: its firing rate, and gas, air and mixture that make it."""

from dataclasses import dataclass

from ..catalogue.sentences import Said, said
from ..physics import combustion
from .chamber import Chamber
from .gas import Gas
from .need import Need


@dataclass(frozen=True)
class Firing:
    """High fire of one burner, `installed_W` of all; rates are gross, flows at 15 degC and 101 325 Pa."""

    taken_from: Said  # setting or chamber
    rate_W: float
    net_W: float
    low_W: float
    installed_W: float
    per_volume_W_m3: float
    gas_m3_s: float
    gas_kg_s: float
    air_m3_s: float
    mixture_m3_s: float


def rate_W(firing_rate: float | str, burner_count: int, needed_W: float | None) -> float | None:
    """Gross firing rate of one burner: as set, or its share of the need; None where the chamber cannot say."""
    if firing_rate != "auto":
        return firing_rate
    return None if needed_W is None else needed_W / burner_count


def firing(
    firing_rate: float | str,
    low_fire: float,
    burner_count: int,
    equivalence_ratio: float,
    gas: Gas,
    chamber: Chamber,
    need: Need,
) -> Firing:
    """A rule refuses auto where the chamber cannot say."""
    rate = rate_W(firing_rate, burner_count, need.needed_W)
    gas_m3_s = combustion.gas_flow_m3_s(gas.composition, rate)
    air_m3_s = combustion.air_flow_m3_s(gas.composition, equivalence_ratio, rate)
    return Firing(
        taken_from=said("chamber" if firing_rate == "auto" else "setting"),
        rate_W=rate,
        net_W=rate * gas.net_J_m3 / gas.gross_J_m3,
        low_W=rate * low_fire,
        installed_W=rate * burner_count,
        per_volume_W_m3=rate * burner_count / chamber.volume_m3,
        gas_m3_s=gas_m3_s,
        gas_kg_s=combustion.gas_flow_kg_s(gas.composition, rate),
        air_m3_s=air_m3_s,
        mixture_m3_s=gas_m3_s + air_m3_s,
    )
