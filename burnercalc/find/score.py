"""How designs are ranked: fewest stops, then fewest cautions, then fewest points; and in what kinds they differ.

Points are a sum of terms, each a number of the design over a plain measure, times a weight (1 unless moved). So a point
is: 100 of money to spend, 5 % of the chamber's length that no fire falls on, 5 % between the most and the least
that a port passes, 10 % of high fire below which it is not turned down, 4 hours of work, 7 days, or half a
check that is good by less than a tenth of its limit; twice that where a shop a little off spoils it (hardy.py); or a
tenth by which a stop or caution misses its limit, of which one that has no number misses all.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from math import isnan, nan
from typing import Any

from ..errors import InputError, InputErrors
from ..parts.bench_hours import BenchHours
from ..parts.calendar import Calendar
from ..parts.face import Face
from ..parts.holding import Holding
from ..parts.lit_length import LitLength
from ..parts.schedule import Schedule
from ..parts.shares import Shares

THIN = 0.1  # of its limit, by which a check that is good still counts as thin
SPOILT = 2.0  # what a check that a shop a little off spoils counts at least, where one at its limit counts 1
# Checks whose number is a measure of safety against its limit; the rest say what fits exactly or not at all.
MARGINS = {
    *("flashback_cold", "flashback_hot", "blower", "mix_pipe_velocity", "flow_spread", "web", "edge", "inlet_ratio"),
    *("port_velocity", "port_length", "jet_impingement", "perry", "cylinder", "rate_for_need", "chamber_pressure"),
    *("gas_low_fire", "turndown", "damper", "lining_limit"),
}
# What a number is measured from, where that is not 0: a share of 1 is none too many; nothing to spare is just enough.
NOUGHT = {"jet_impingement": 1.0, "blower": -1.0}
PORT_S, BAFFLE_HOLE_S = 180.0, 60.0  # work on one port (pin, clearing) and on one hole of a baffle; common practice


def spread_term(shares: Shares) -> float:
    return shares.spread


def dark_term(lit_length: LitLength, chamber_shape: str) -> float:
    """None in a round chamber: there the flame goes round, and along it as it does."""
    return 1.0 - lit_length.share.value if chamber_shape == "box" else 0.0


def turndown_term(holding: Holding, low_fire: float) -> float:
    """The least fire for sure, of high fire: as it is set, or where the flame runs back if that comes first."""
    return max(low_fire, min(1.0, 1 / holding.turndown.value) if holding.turndown else 1.0)


def hours_term(bench_hours: BenchHours, face: Face, baffle_holes: int, batch_size: int) -> float:
    """Of all that are made, as the money is."""
    each_s = 3600 * bench_hours.of(batch_size)[1]
    return batch_size * (each_s + PORT_S * face.port_count + BAFFLE_HOLE_S * baffle_holes)


def least_hours_term(
    hours_weld: float, hours_mould: float, hours_cast: float, hours_finish: float, batch_size: int
) -> float:
    """The work with one mould and without that on ports and baffle, known before any of them."""
    return batch_size * (hours_weld + hours_cast + hours_finish) + hours_mould


def hours_without_baffle_term(
    hours_weld: float, hours_mould: float, hours_cast: float, hours_finish: float, batch_size: int, face: Face
) -> float:
    """The same, and the work on the ports."""
    least_s = least_hours_term(hours_weld, hours_mould, hours_cast, hours_finish, batch_size)
    return least_s + batch_size * PORT_S * face.port_count


def days_term(calendar: Calendar) -> float:
    """Of all that are made, as money and work are."""
    return float(calendar.plan.days)


def days_of_one_term(schedule: Schedule) -> float:
    """Of one burner by itself, known before it is known how long its test fire takes."""
    return float(schedule.days_in_all)


LEAST_HOURS = (least_hours_term, hours_without_baffle_term)


@dataclass(frozen=True)
class Term:
    """One number that is ranked by, less is better.

    `point`: how much is a point; `grain`: less is no difference; `clear`: the least that anybody would notice.
    """

    key: str
    kind: str  # what the design is called that has least of it
    dimension: str
    point: float
    grain: float
    clear: float
    measure: str
    function: Callable[..., float] | None = None  # None: not from parts alone
    least: tuple[Callable[..., float], ...] = ()  # what it is at least, known from less


TERMS = (
    Term("money", "cheapest", "money", 100.0, 1.0, 5.0, "100 of money to spend"),
    Term(
        "spread",
        "most even ports",
        "fraction",
        0.05,
        0.002,
        0.01,
        "5 % between the best and the worst port",
        spread_term,
    ),
    Term(
        "dark",
        "most even heat",
        "fraction",
        0.05,
        0.005,
        0.02,
        "5 % of a box chamber's length that no fire falls on",
        dark_term,
    ),
    Term(
        "low",
        "deepest turndown",
        "fraction",
        0.1,
        0.005,
        0.01,
        "10 % of high fire that it is not turned below",
        turndown_term,
    ),
    Term("work", "least work", "time", 4 * 3600.0, 900.0, 1800.0, "4 hours of work", hours_term, LEAST_HOURS),
    Term(
        "days",
        "shortest days",
        "count",
        7.0,
        0.5,
        1.0,
        "7 days from the first cut to the last burner",
        days_of_one_term,  # till a whole design is settled
    ),
    Term(
        "thin",
        "widest margins",
        "count",
        0.5,
        0.05,
        0.05,
        "half a check that is good by less than a tenth, or a quarter of one that pins, blower, jet, mixture or "
        "day a little off would spoil",
    ),
    Term(
        "missed",
        "least past its limits",
        "fraction",
        0.1,
        0.005,
        0.01,
        "a tenth by which a stop or caution misses its limit; ten for one that has no number",
    ),
)
BY_TERM = {term.key: term for term in TERMS}
EVEN = {term.key: 1.0 for term in TERMS}
KINDS = ("money", "dark", "low", "work", "days")  # of which a design each is shown
TOLD = ("money", "dark", "spread", "low", "work", "days")  # on each card
MOST_WEIGHT = 100.0


def that_count(keys: tuple[str, ...], chamber_shape: str) -> tuple[str, ...]:
    """Of some terms those that tell designs for such a chamber apart."""
    return tuple(key for key in keys if key != "dark" or chamber_shape == "box")


def weights_of(typed: Mapping[str, Any]) -> dict[str, float]:
    """All weights, those given in place of 1. Raises InputErrors for unknown terms and for weights out of range."""
    errors = []
    weights = dict(EVEN)
    for key, text in typed.items():
        try:
            value = float(str(text).replace(",", "."))
        except ValueError:
            value = nan
        if key not in BY_TERM:
            errors.append(InputError("weight", key, "is not a term; known: " + ", ".join(BY_TERM)))
        elif not 0 <= value <= MOST_WEIGHT or "," in str(text):
            nearest = "1" if isnan(value) else f"{min(max(value, 0.0), MOST_WEIGHT):g}"
            errors.append(InputError(f"weight {key}", text, f"must be a number from 0 to {MOST_WEIGHT:g}", nearest))
        else:
            weights[key] = value
    if errors:
        raise InputErrors(errors)
    return weights


def points(terms: Mapping[str, float], weights: Mapping[str, float]) -> float:
    """Sum of the terms as points."""
    sum_ = 0.0  # asked so often that calls count
    for key, value in terms.items():
        sum_ += weights[key] * value / BY_TERM[key].point
    return sum_


def margin(key: str, value: float | None, limit: float | None) -> float | None:
    """How far a check's number is off its limit, as a share of the limit; None where its number is no margin."""
    if key not in MARGINS or value is None or not limit:
        return None
    return abs(value - limit) / abs(limit - NOUGHT.get(key, 0.0))


def thinness(key: str, verdict: str, value: float | None, limit: float | None) -> float:
    """How thin a margin is: 0 from a tenth of the limit on, 1 at the limit; 0 for what is no margin or not good.

    What is past its limit and only noted has no margin: it would be wider the farther past.
    """
    if verdict != "good":
        return 0.0
    off = margin(key, value, limit)
    return 0.0 if off is None else max(0.0, 1 - off / THIN)


def ample(key: str, verdict: str, value: float | None, limit: float | None) -> bool:
    """Whether a check is good by a tenth of its limit or more; False where its number is no margin."""
    off = margin(key, value, limit)
    return verdict == "good" and off is not None and off >= THIN


def how_wrong(key: str, value: float | None, limit: float | None) -> float:
    """How far a fault is over its limit, from 0 to 1; 1 where it has no number."""
    if value is None or limit is None:
        return 1.0
    value, limit = (number - NOUGHT.get(key, 0.0) for number in (value, limit))
    return min(1.0, abs(value - limit) / max(abs(limit), abs(value), 1e-12))


# The case of a caution by which a burner never does its work; one that does, whatever else is told of it, comes before.
IDLE = frozenset(("no_work",))
