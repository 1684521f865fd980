"""Checks that are good only as long as nothing is off: pins thinner or thicker, a weaker blower, a colder day.

Each is asked once more with the one tolerance off (shops.py) that harms it most, and nothing else: a sample of whole
shops tells more, but this is cheap enough for every step of a search.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from .. import checks
from ..burner import Burner
from ..checks.judge import FAULTS
from ..parts import PARTS
from ..result import Result, solve
from .score import how_wrong
from .shops import TOLERANCES, Tolerance, built, moved, off_by

_BY_KEY = {tolerance.keys[0]: tolerance for tolerance in TOLERANCES}
PINS, BLOWER, DAY = (_BY_KEY[key] for key in ("port_diameter", "blower_shutoff_pressure", "ambient_temperature"))


def _of_pins(burner: Burner, off_m: float) -> dict[str, Any]:
    return {"face": burner.call(PARTS["face"], port_diameter=burner.part("port_diameter") + off_m)}


def _thinner(burner: Burner, off_m: float) -> dict[str, Any]:
    made = _of_pins(burner, off_m)
    return {**made, "crossing": burner.call(PARTS["crossing"], **made)}


def _weaker(burner: Burner, off: float) -> dict[str, Any]:
    given = {key: off_by(key, burner.part(key), off, True) for key in BLOWER.keys}
    return {"blower": burner.call(PARTS["blower"], **given)}


def _colder(burner: Burner, off_K: float) -> dict[str, Any]:
    shop = burner.call(PARTS["shop"], ambient_temperature=burner.part("ambient_temperature") + off_K)
    return {"shop": shop, "cylinders": burner.call(PARTS["cylinders"], shop=shop)}


@dataclass(frozen=True)
class Off:
    """What spoils a check: a tolerance at one end, in words, and the parts that the check then rests on."""

    words: str
    tolerance: Tolerance
    by: float
    parts: Callable[[Burner, float], dict[str, Any]]


OFF = {
    "web": Off("Where pins come out thicker", PINS, PINS.high, _of_pins),
    "cross_light": Off("Where pins come out thinner", PINS, PINS.low, _thinner),
    "blower": Off("With a weaker blower than its plate says", BLOWER, BLOWER.low, _weaker),
    "cylinder": Off("On a colder day", DAY, DAY.low, _colder),
}


def spoilt(key: str, verdict: str, burner: Burner) -> float | None:
    """How far a check without a fault is over its limit, from 0 to 1, in a shop that is off in what harms it most; None
    where it has no fault there either."""
    if key not in OFF or verdict in FAULTS:
        return None
    off = OFF[key]
    judged = burner.call(checks.CHECKS[key], **off.parts(burner, off.by))
    return how_wrong(key, judged.value, judged.limit) if judged is not None and judged.verdict in FAULTS else None


def off_words(key: str, result: Result) -> str:
    """What a check says of the design in the shop that spoils it."""
    off = OFF[key]
    shop = moved(built(result), {off.tolerance: off.by})
    check = (solve(shop, result) if shop else result).checks[key]
    return f"{off.words}: {check.text[:1].lower()}{check.text[1:]}"
