"""What the chamber needs of the fire: firing rates to hold, to work and to heat up, of all burners together."""

from dataclasses import dataclass

from ..physics import combustion
from ..physics.band import Band
from ..physics.gas_zone import ZoneState
from .chamber import Chamber
from .flame import Flame
from .gas import Gas
from .zone import NO_FIRE, Zone

LEAST_KEPT = 0.1  # of the fire's heat; the rest leaves by the opening. Common practice


@dataclass(frozen=True)
class Need:
    """Gross rates, from much film of the gas to little; None where no rate will do.

    A rate that only the poorest film cannot give has no band. `needed_W` is what auto takes: too slow a heat-up harms
    nobody, so its middle counts; work that stays cold does, so the careful end of its band counts, but no more than
    where LEAST_KEPT of the heat stays: beyond, fire grows without end for hardly more work, and `at_limit` says so.
    Never less than what holds the chamber empty; None where no fire of this chamber does.
    To heat up it takes no more than burns well in so large a chamber (`most_W` is NO_FIRE times that): where that is
    asked, or no fire is fast enough, it heats up later and is not `in_reach`. A fire that is none of this chamber does
    not work either.
    `holds_best_W`, `works_best_W`: with the most film; None where even so no fire of this chamber does.
    """

    hold_W: float | None
    working_W: float | None
    heat_up_W: float | None
    needed_W: float | None
    decided_by: str | None  # "working" or "heat-up"
    efficiency: float | None
    gas_kg_s: float | None  # while working
    metered_m3_s: float | None  # the same by the meter of a line; None for gas of a cylinder
    hold_band: Band | None = None
    working_band: Band | None = None
    heat_up_band: Band | None = None
    at_limit: bool = False
    holds_best_W: float | None = None
    works_best_W: float | None = None
    in_reach: bool = False  # to heat up in time by what burns well in this chamber

    @property
    def needed_told_W(self) -> float | None:
        """What is needed as it is told: none where no rate does the work, and never less than the one that does."""
        return None if self.needed_W is None or self.working_W is None else max(self.needed_W, self.working_W)

    @property
    def hold_told_W(self) -> Band | float | None:
        return self.hold_band or self.hold_W

    @property
    def working_told_W(self) -> Band | float | None:
        return self.working_band or self.working_W

    @property
    def heat_up_told_W(self) -> Band | float | None:
        return self.heat_up_band or self.heat_up_W


def need(zone: Zone, chamber: Chamber, flame: Flame, gas: Gas) -> Need:
    hold, working = (tuple(_of_chamber(state, zone) for state in states) for states in (zone.hold, zone.working))
    hold_W, working_W, heat_up_W = hold[1], working[1], zone.heat_up_W[1]
    holds_best_W, works_best_W = hold[2], working[2]
    held, poorest = zone.hold[1], zone.working[0]
    if held is None or hold_W is None or flame.available is None:
        return Need(None, None, None, None, None, None, None, None, holds_best_W=holds_best_W)
    kept = poorest.available_fraction if poorest else 0.0
    works_W = (held.wall_loss_W + held.opening_loss_W + chamber.work_heat_W) / max(kept, LEAST_KEPT)
    well_W = zone.most_W / NO_FIRE
    heats_W = min(heat_up_W or well_W, well_W)
    return Need(
        hold_W=hold_W,
        working_W=working_W,
        heat_up_W=heat_up_W,
        needed_W=max(works_W, heats_W, hold_W),
        decided_by="working" if works_W >= heats_W else "heat-up",
        efficiency=chamber.work_heat_W / working_W if working_W else None,
        gas_kg_s=combustion.gas_flow_kg_s(gas.composition, working_W) if working_W else None,
        metered_m3_s=working_W / gas.gross_J_m3 if working_W and gas.metered else None,
        hold_band=band(hold),
        working_band=band(working) if working_W is not None else None,
        heat_up_band=band(zone.heat_up_W),
        at_limit=kept < LEAST_KEPT,
        holds_best_W=holds_best_W,
        works_best_W=works_best_W,
        in_reach=heat_up_W is not None and heat_up_W <= well_W,
    )


def _of_chamber(state: ZoneState | None, zone: Zone) -> float | None:
    """Its rate; None of what burns in no chamber of this size."""
    return None if state is None or state.firing_rate_W > zone.most_W else state.firing_rate_W


def band(rates: tuple[float | None, ...]) -> Band | None:
    """Figures for the films from least to most as a Band; None when one is missing, or all."""
    known = [rate for rate in rates if rate is not None]
    return Band(min(known), known[1], max(known)) if known and len(known) == len(rates) else None
