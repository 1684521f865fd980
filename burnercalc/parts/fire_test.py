"""The test fire: how long it takes by the lighting card, stage by stage, and the gas that it burns."""

from dataclasses import dataclass
from math import ceil

from .fires import Fires
from .firing import Firing
from .lighting import Lighting
from .lighting_air import LightingAir
from .lighting_card import LightingCard
from .pilot import Pilot
from .proof import READ_S, Proof
from .turning import Turning

# All common practice.
LIGHTINGS = 5  # each from cold valves, the whole purge before it
LOOK_S = 60.0  # each: torch to the face, both valves to their marks, every port seen
BOOKED_S = 300.0  # whole steps in which it is booked
STEP_S = 60.0  # at each step of the valves, as the card has it
LOW_S = 600.0  # at low fire, hot, or at what the card leads to
GAUGES_S = 300.0  # at high fire where no gas is counted, cold steel in the chamber: every gauge is read
PROVE_S = 300.0  # air switch and shut-off valve, twice each


@dataclass(frozen=True)
class FireTest:
    """Times in s. `lights_s`: the lightings with their purges; `waits_s`: at LIGHT till the walls glow, at most;
    `steps_s`: on the way to low fire and to high fire. What must not be lit counts without wait and steps.
    `stays`: low or high, the lowest fire that the lighting card leads to once hot, where it burns ten minutes;
    `read`: the highest, where gauges are read. `low_s`, `high_s`: at each, what the gas is counted for included;
    `cold`: with cold steel in the chamber at high fire, or at both.

    One of several is lit alone so often, then with all the others: once for each whose gas is counted then, else once
    for all, of which it bears its share of the gas.
    """

    lights_s: float
    waits_s: float
    steps_s: float
    run_on_s: float
    gas_kg: float
    low_s: float
    high_s: float
    stays: str
    read: str
    cold: str

    @property
    def booked_s(self) -> float:
        """All of it, in whole steps: what every paper and calendar tells."""
        all_s = PROVE_S + self.lights_s + self.waits_s + self.steps_s + self.low_s + self.high_s + self.run_on_s
        return ceil(all_s / BOOKED_S - 1e-6) * BOOKED_S

    @property
    def minutes(self) -> int:
        return round(self.booked_s / 60)


def fire_test(
    low_fire: float,
    burner_count: int,
    firing: Firing,
    pilot: Pilot,
    lighting: Lighting,
    lighting_air: LightingAir,
    lighting_card: LightingCard,
    turning: Turning,
    fires: Fires,
    proof: Proof,
) -> FireTest:
    card, lit_W = lighting_card, lighting.waits_W
    waits_s = lighting_air.wait_s.high if lit_W and lighting_air.wait_s else 0.0
    to_low, to_high = (turn.steps * STEP_S if lit_W and turn else 0.0 for turn in _turns(turning))
    stays = "high" if fires.straight else "low"
    low_s, high_s = _burns_s(proof, stays)
    light_share = (lit_W or firing.low_W) / firing.rate_W
    look_s = card.hiss_s + LOOK_S
    lights_s, alone_s, one_by_one_s = LIGHTINGS * (card.purge_s + look_s), LIGHTINGS * look_s, 0.0
    if burner_count > 1:
        metered_s = proof.time_s or 0.0 if proof.alone else 0.0
        lights_s += card.purge_s + burner_count * look_s + metered_s
        alone_s += metered_s
        one_by_one_s = (burner_count + 1) / 2 * look_s  # till the last is lit, the first as long as all take
    counts = burner_count if proof.each else 1  # of all, for this one
    burns_s = light_share * (alone_s + counts * (one_by_one_s + waits_s))
    burns_s += counts * (low_fire * (to_low + low_s) + to_high + high_s)
    pilot_s = alone_s + counts * (one_by_one_s + waits_s + to_low + to_high + low_s + high_s)
    return FireTest(
        lights_s=lights_s,
        waits_s=waits_s,
        steps_s=to_low + to_high,
        run_on_s=card.run_on_s,
        gas_kg=firing.gas_kg_s * burns_s + pilot.gas_kg_s * pilot_s,
        low_s=low_s,
        high_s=high_s,
        stays=stays,
        read=proof.read,
        cold=proof.too_hot if "both" == proof.too_hot or proof.read == "high" else "",
    )


def _burns_s(proof, stays):
    """(at low fire, at high fire). Where the gas is counted at low fire that is part of the ten minutes there; left at
    high fire a chamber that gets too hot empty is not."""
    counts_s = READ_S if proof.alone else proof.time_s or READ_S
    if proof.read == "low":
        return LOW_S + counts_s, 0.0
    if stays == "high":
        return 0.0, LOW_S + counts_s
    if proof.counted == "low" and proof.time_s:
        return max(LOW_S, counts_s), GAUGES_S
    return LOW_S, GAUGES_S if proof.too_hot else counts_s


def _turns(turning):
    return (None, turning.straight) if turning.straight else (turning.to_low, turning.to_high)
