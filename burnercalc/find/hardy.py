"""Checks that are good only as long as nothing is off: pins thinner or thicker, a weaker blower, another jet, a colder
or a warmer day.

Each is asked once more with the one tolerance off (shops.py) that harms it most, and nothing else: a sample of whole
shops tells more, but this is cheap enough for every step of a search.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any

from .. import checks
from ..burner import Burner
from ..checks.judge import FAULTS
from ..parts.lighting_day import AS_SET, BACK
from ..physics.band import Band
from ..result import Result, solve
from .score import how_wrong
from .shops import GOES_OUT, RUNS_BACK, TOLERANCES, Tolerance, built, card_margins, moved, off_by

_BY_KEY = {tolerance.keys[0]: tolerance for tolerance in TOLERANCES}
PINS, BLOWER, JET, MIXTURE, DAY = (
    _BY_KEY[key]
    for key in (
        *("port_diameter", "blower_shutoff_pressure", "jet_discharge_coefficient", "equivalence_ratio"),
        "ambient_temperature",
    )
)
# What the box gets hotter for each kelvin that the shop does, at least: of six designs the mixture 0.91 to 0.94, the
# steel 0.67 to 0.72, fin and film solved anew (calculated).
MIXTURE_RISES, STEEL_RISES = 0.91, 0.67


def _of_pins(burner: Burner, off_m: float) -> dict[str, Any]:
    return {"face": burner.part_with("face", port_diameter=burner.part("port_diameter") + off_m)}


def _thinner(burner: Burner, off_m: float) -> dict[str, Any]:
    made = _of_pins(burner, off_m)
    return {**made, "crossing": burner.part_with("crossing", **made)}


def _more_through(burner: Burner, off_m: float) -> dict[str, Any]:
    made = _of_pins(burner, off_m)
    made["stream"] = burner.part_with("stream", **made)
    return {"passage": burner.part_with("passage", **made)}


def _other_jet(burner: Burner, off: float) -> dict[str, Any]:
    """The drill stays."""
    coefficient = burner.part("jet_discharge_coefficient") + off
    drill = burner.part("jet").drill_name
    jet = burner.part_with("jet", jet_discharge_coefficient=coefficient, jet_drill=drill)
    return {"jet": jet, "jet_drill": drill, "supply": burner.part_with("supply", jet=jet)}


def _jet_is_large(burner: Burner) -> bool:
    jet = burner.part("jet")
    return jet.drill is not None and jet.rate_W > burner.part("firing").rate_W


def _warmer(burner: Burner, off_K: float) -> dict[str, Any]:
    """Block and box about as much hotter as they get, which is a hundredth of the work of solving them anew."""
    hot, mixture_K, steel_K = burner.part("hot_block"), MIXTURE_RISES * off_K, STEEL_RISES * off_K
    made = replace(
        hot,
        mixture_K=Band(*(at_K + mixture_K for at_K in hot.mixture_K)),
        box_K=Band(*(at_K + steel_K for at_K in hot.box_K)),
        most_rim=replace(hot.most_rim, box_K=hot.most_rim.box_K + steel_K),
    )
    return {"hot_block": made}


def _leaner(burner: Burner, off: float) -> dict[str, Any]:
    """The fire stays as large."""
    mixture = {"equivalence_ratio": burner.part("equivalence_ratio") + off}
    other = burner.off(mixture, {"firing": burner.part("firing")})
    return {name: other.part(name) for name in ("need", "reached", "throughput")}


def _weaker(burner: Burner, off: float) -> dict[str, Any]:
    given = {key: off_by(key, burner.part(key), off, True) for key in BLOWER.keys}
    return {"blower": burner.part_with("blower", **given)}


def _colder(burner: Burner, off_K: float) -> dict[str, Any]:
    shop = burner.part_with("shop", ambient_temperature=burner.part("ambient_temperature") + off_K)
    return {"shop": shop, "cylinders": burner.part_with("cylinders", shop=shop)}


@dataclass(frozen=True)
class Off:
    """What spoils a check: a tolerance at one end, in words, and the parts that the check then rests on. `other_end`:
    whether it is the other end that harms a burner."""

    words: str
    tolerance: Tolerance
    end: float
    parts: Callable[[Burner, float], dict[str, Any]]
    other_end: Callable[[Burner], bool] = lambda burner: False

    def by(self, burner: Burner) -> float:
        low, high = self.tolerance.low, self.tolerance.high
        return (low + high) - self.end if self.other_end(burner) else self.end


OFF = {
    "web": Off("Where pins come out thicker", PINS, PINS.high, _of_pins),
    "cross_light": Off("Where pins come out thinner", PINS, PINS.low, _thinner),
    "blower": Off("With a weaker blower than its plate says", BLOWER, BLOWER.low, _weaker),
    "cylinder": Off("On a colder day", DAY, DAY.low, _colder),
    "rate_for_need": Off("With a mixture a little leaner", MIXTURE, MIXTURE.low, _leaner),
    "throughput": Off("With a mixture a little leaner", MIXTURE, MIXTURE.low, _leaner),
    "supply": Off("With a jet that passes less than it should", JET, JET.low, _other_jet),
    "jet": Off("With a jet that passes more or less than it should", JET, JET.low, _other_jet, _jet_is_large),
    "baffle_pressure": Off("Where pins come out thicker", PINS, PINS.high, _more_through),
    "box_mixture": Off("On a warmer day", DAY, DAY.high, _warmer),
    "box_steel": Off("On a warmer day", DAY, DAY.high, _warmer),
}


CARD = "lighting_day"  # the check that tells where the lighting card holds


def card_words(result: Result) -> str:
    """What is told of a lighting card, made once, that does not hold where pins come out thicker or thinner; "" where
    it does. The same mixture flows through ports of another size: its gradient at the wall goes with the third power of
    that (shops.py solves it). The search does not rank by it: up to a fifth more would be looked at."""
    kept = card_margins(result.parts)
    if kept is None:
        return ""
    as_set_m = result.part("face").port_diameter_m
    thicker, thinner = OFF["web"], OFF["cross_light"]
    slower, faster = ((as_set_m / (as_set_m + off.end)) ** 3 for off in (thicker, thinner))
    back = [(1 + margin) * slower < 1 for limit, margin in kept.items() if AS_SET[limit] == BACK]
    lost = [(1 + margin) / faster < 1 for limit, margin in kept.items() if AS_SET[limit] != BACK]
    if any(back) or any(lost):
        off, then = (thicker, RUNS_BACK) if any(back) else (thinner, GOES_OUT)
        return f"{off.words} the lighting card, made once, does not hold: {then}."
    return ""


def spoilt(key: str, verdict: str, burner: Burner) -> float | None:
    """How far a check without a fault is over its limit, from 0 to 1, in a shop that is off in what harms it most; None
    where it has no fault there either."""
    if key not in OFF or verdict in FAULTS:
        return None
    off = OFF[key]
    judged = burner.call(checks.CHECKS[key], **off.parts(burner, off.by(burner)))
    return how_wrong(key, judged.value, judged.limit) if judged is not None and judged.verdict in FAULTS else None


def off_words(key: str, result: Result) -> str:
    """What a check says of the design in the shop that spoils it."""
    off = OFF[key]
    shop = moved(built(result), {off.tolerance: off.by(result.parts)})
    check = (solve(shop, result) if shop else result).checks[key]
    return f"{off.words}: {check.text[:1].lower()}{check.text[1:]}"
