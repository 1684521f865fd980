"""What can be chosen, axis by axis, each from what was chosen before: sizes at hand, or as sold where they may be.

An axis decides a few settings. Its options are few and discrete; what an option needs to know of the burner so far it
asks of the parts, such as the need of the chamber or the pressure that a jet takes.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from functools import partial
from math import ceil, floor, inf, pi, sqrt
from types import SimpleNamespace
from typing import Any

from ..burner import Burner
from ..catalogue.sentences import pipe_size
from ..checks.make import FLOOR_M, PIN_STANDS
from ..constants import INCH_M
from ..design import Design, limits, parsed
from ..making.mould import BASE_MARGIN_M
from ..making.stock import NOISE_M, Board, board, boards, tube_inside_radius_m
from ..parts import PARTS
from ..parts.blower import curve
from ..parts.gas import gas
from ..parts.jet import TURN
from ..parts.lit_length import SPREAD, run_m
from ..parts.tries import EASY_LINE_PA, LEAST_NEEDLE_PA
from ..physics import pipes
from ..physics.mixing import DIAMETERS_NEEDED
from ..settings import BY_KEY
from ..units import parse_quantity, show
from . import sold
from .have import Have, Piece, choice_name

# How wide the net is cast; common practice.
MOST_BURNERS = 4
SPARE_FIRE = (1.05, 1.1, 1.3)  # firing rate over what the chamber needs
LEAST_LOW = 10  # percent; less is hard to set
LOW_SPARE = 1.05  # low fire over the least that the gas can be set to
LEAST_BODY_M = 0.076
SHORTEST_BODY_M: float = limits(BY_KEY["body_length"])[0] or 0.0  # of any
PORT_SPEED_M_S = 8.0  # fast enough to be turned down, slow enough for a small blower
PORT_SPEEDS_M_S = (1.5, 16.0)
PORTS_K = 1.5  # velocity heads that ports take at the least: half of one at a sharp entry, and all that leaves
PORTS_PART = 0.7  # of the speed at which a blower would spend all on the ports: half of its pressure is theirs then
MOST_GRIDS, MOST_LENGTHS = 12, 8
PORTS_OF_FACE = 0.2  # share of the window that ports at a usual pitch take
LIT_ENOUGH = 0.4  # of the chamber's length, well over what its check calls cold
LONG_SPEED_M_S, LONG_OF_FACE, LONG_LOW = 5.0, 0.12, 0.6  # a face that reaches far: slow, thinly set, little turned down
PITCHES = (1.8, 3.0)  # of the port's diameter
LEAST_WEB_M, LONGEST_GAP_M = 0.006, 0.011
SLENDER = (4.0, 14.0)
INLET_RATIO = 0.3  # of the ports' area
LEAST_HOLES = 10  # of a baffle
BAFFLE_OPEN = 1.8  # area of the baffle's holes over that of the ports
MIX_SPEED_M_S = (1.0, 15.0)
LINE_LEAVES = 6 / 7  # of what a line holds, before the jet, where connector and valves take the rest; common practice
# How a figure is told, by the reader's sizes: in steps of so many of a unit.
RATES = {"in": (1.0, "kBtu/h"), "mm": (0.5, "kW")}
REGULATED, OF_LINE = {"in": (0.1, "psi"), "mm": (0.01, "bar")}, {"in": (0.1, "inH2O"), "mm": (0.5, "mbar")}
# Moves between the sizes of the menus: of rate and low fire in percent, holes of a baffle, half inches or centimetres.
RATE_STEPS, LOW_STEPS, HOLE_STEPS, LENGTH_STEPS = (-8, 8, -4, 4, -1, 1), (-5, 5), (-5, 5, -10, 10), (-2, 2, -1, 1)
REGULATOR_PA = (249.0, 413_000.0)  # what the setting takes
# Of a burner of which only the fire is chosen: nothing holds the gas back behind its jet.
NOT_BUILT: dict[str, Any] = {
    "low_fire": 1.0,
    "firing": SimpleNamespace(rate_W=1.0),
    "stream": SimpleNamespace(mixture_m3_s=0.0),
    "resistance": SimpleNamespace(total_Pa=0.0, pressure_Pa=lambda flow_m3_s: 0.0),
}
ADJUSTABLE = "an adjustable regulator"
LIPS_TAKE = 0.5  # of the width at most, both together, where they are wider than they must be
LIP_M, COVER_M, ROUND_RIM_M = INCH_M * 3 / 16, INCH_M * 3 / 8, INCH_M / 4


@dataclass(frozen=True)
class Option:
    """Texts for the settings of an axis. `buy`: what must be bought for it, in words; "" when it is at hand.

    `price`: of what no setting of the design has a price for. `spare`: seldom better, so it is looked at beside what a
    design chose, or when all else is.
    """

    texts: tuple[tuple[str, str], ...]
    buy: str = ""
    price: float = 0.0
    figures: tuple[tuple[str, float], ...] = ()
    spare: bool = False

    def over(self, texts: Mapping[str, str]) -> "Option":
        """The option with these texts for what it leaves open."""
        return Option(tuple({**texts, **dict(self.texts)}.items()), self.buy, self.price, self.figures, self.spare)


@dataclass(frozen=True)
class Asked:
    """What the options of an axis may ask: the shop, values decided so far, and parts that rest on those alone."""

    have: Have
    start: Design
    values: Mapping[str, Any]
    burner: Burner
    figures: Mapping[str, float]

    @property
    def system(self) -> str:
        return str(self.start.sizes)

    def length(self, length_m: float, up: bool = True) -> str:
        """A length on the shop's tape: to 1/16 in or 1 mm, up or down."""
        step = INCH_M / 16 if self.system == "in" else 0.001
        marks = (ceil if up else floor)(length_m / step + (-1e-6 if up else 1e-6))
        return show(marks * step, "length", self.system, exact=True)


Options = Callable[[Asked], Iterable[Option]]
Likely = Callable[[Asked, list[Option]], float]
Fine = Callable[[Asked, Mapping[str, str]], Iterable[Mapping[str, str]]]


def option(texts: Mapping[str, str], buy: str = "", price: float = 0.0, **figures: float) -> Option:
    return Option(tuple(texts.items()), buy, price, tuple(figures.items()))


# The axes, in the order of choosing


def fire_options(a: Asked) -> Iterable[Option]:
    """How many burners, and what each gives at least and with something to spare."""
    need = a.burner.part("need")
    if need.needed_W is None:
        yield option({"firing_rate": a.start.text("firing_rate"), "burner_count": a.start.text("burner_count")})
        return
    asked, batch = a.start.burner_count, a.start.batch_size
    held = not a.have.mine.keys().isdisjoint(("burner_count", "batch_size"))
    for count in (asked,) if held else range(1, MOST_BURNERS + 1):
        made = batch_for(count, asked, batch)
        for rate_W in _of_jets(a, [spare * need.needed_W / count for spare in SPARE_FIRE]):
            texts = {"burner_count": str(count), "firing_rate": _rate(rate_W, a.system)}
            yield option({**texts, "batch_size": str(made)})


def batch_for(burners: int, asked: int, batch: int) -> int:
    """Burners to make at once where a chamber gets so many in place of those asked for: for as many chambers."""
    return max(burners, batch) if burners == asked else burners * ceil(batch / asked)


def _of_jets(a: Asked, rates_W: list[float]) -> list[float]:
    """Fires of which a jet at hand gives some at a pressure at hand; else the least above them that one gives: beside
    them, where regulators cannot be turned and what is off by a little still burns."""
    drills, regulators, liquid = a.have.of("drill"), a.have.of("regulator"), a.burner.part("gas").liquid
    of_line = sources(a.have, a.start) == ("line",) if liquid else bool(a.have.of("line"))
    if of_line and liquid and drills and not a.have.may_buy("drill"):
        return _of_line(a, rates_W)
    another = a.have.may_buy("drill") or (regulators and a.have.may_buy("regulator"))
    if not drills or another or of_line or not (liquid or regulators):
        return rates_W
    step, unit = REGULATED[a.system]
    step_Pa = step * parse_quantity(f"1 {unit}", "gas_pressure", "gas_pressure")
    bands_Pa = [_band_Pa(piece, step_Pa) for piece in regulators] or [(REGULATOR_PA[0] + step_Pa, REGULATOR_PA[1])]
    given_W: list[float] = []
    for piece in drills:
        jet = a.burner.call(PARTS["jet"], **NOT_BUILT, gas_pressure=70e3, jet_drill=piece.texts["jet_drill"])
        for low_Pa, high_Pa in bands_Pa:
            low_W, high_W = (jet.rate_through_W(jet.drill.diameter_m, each_Pa) for each_Pa in (low_Pa, high_Pa))
            if any(low_W <= rate_W <= high_W for rate_W in rates_W):
                return rates_W
            given_W.append(low_W)
    more_W = sorted(rate_W for rate_W in given_W if rate_W > max(rates_W))[:1]
    return rates_W + more_W if a.have.fixed_pressure else more_W or rates_W


def _of_line(a: Asked, rates_W: list[float]) -> list[float]:
    """Fires that a jet at hand passes from a line, which no regulator makes more of."""
    most_Pa = max(parse_quantity(text, "pressure", "line_pressure") for text in lines(a))
    most_W = 0.0
    for piece in a.have.of("drill"):
        jet = a.burner.call(PARTS["jet"], **NOT_BUILT, gas_pressure=70e3, jet_drill=piece.texts["jet_drill"])
        most_W = max(most_W, jet.rate_through_W(jet.drill.diameter_m, most_Pa))
    return [rate_W for rate_W in rates_W if rate_W <= most_W]


def _band_Pa(piece: Piece, step_Pa: float) -> tuple[float, float]:
    """Between which pressures a jet is at home on a regulator; one that cannot be turned is told as its jet asks for,
    near enough."""
    if piece.texts:
        set_Pa = parse_quantity(piece.texts["gas_pressure"], "gas_pressure", "gas_pressure")
        return set_Pa, TURN * set_Pa
    return piece.figures["low_Pa"] + step_Pa, piece.figures["high_Pa"]


def _rate_unit_W(system: str) -> float:
    step, unit = RATES[system]
    return step * parse_quantity(f"1 {unit}", "power", "firing_rate")


def _rate(rate_W: float, system: str) -> str:
    step, unit = RATES[system]
    return f"{max(1, ceil(rate_W / _rate_unit_W(system) - 1e-6)) * step:g} {unit}"


def enough_fire(a: Asked) -> bool:
    """Whether the fire of the question, as it is set, is all that the chamber needs."""
    needed_W = a.burner.part("need").needed_W
    if needed_W is None or a.start.firing_rate == "auto":
        return True
    return bool(a.start.firing_rate * a.start.burner_count >= needed_W * (1 - 1e-6))


def low_options(a: Asked) -> Iterable[Option]:
    """As set, what just holds the chamber, and round shares."""
    need = a.burner.part("need")
    installed_W = a.values["burner_count"] * _fire_W(a, need.needed_W)
    holds = floor(100 * need.hold_W / installed_W) if need.hold_W and installed_W else 0
    least = _least_low(a)
    own = [f"{percent} %" for percent in (holds, least) if LEAST_LOW <= percent <= 100]
    for text in dict.fromkeys((a.start.text("low_fire"), *own, *sold.LOW_FIRES)):
        yield option({"low_fire": text})


def _least_low(a: Asked) -> int:
    """Of high fire, the least that such gas is turned down to, in percent, where that is more than a usual low fire; 0
    where it is not."""
    least = ceil(100 * LOW_SPARE * least_share(a) / LOW_STEPS[1]) * LOW_STEPS[1]
    return least if least > 100 * parse_quantity(sold.LOW_FIRES[0], "fraction", "low_fire") else 0


def likely_low(a: Asked, menu: list[Option]) -> float:
    """As set, or what such gas can be turned down to."""
    text = f"{_least_low(a)} %"
    return next((at for at, one in enumerate(menu) if dict(one.texts)["low_fire"] == text), 0)


def least_share(a: Asked) -> float:
    """The least of high fire that can be set by the pressure that a line, or what regulators lie there, give the jet at
    most; 0 where another may be had."""
    from_ = sources(a.have, a.start)
    if from_ == ("line",):
        line_Pa = max(parse_quantity(text, "pressure", "line_pressure") for text in lines(a))
        return sqrt(EASY_LINE_PA / (LINE_LEAVES * line_Pa))
    regulators = a.have.of("regulator")
    if from_ != ("cylinder",) or not regulators or a.have.may_buy("regulator"):
        return 0.0
    most_Pa = max(
        parse_quantity(one.texts["gas_pressure"], "gas_pressure", "gas_pressure")
        if one.texts
        else one.figures["high_Pa"]
        for one in regulators
    )
    return sqrt(LEAST_NEEDLE_PA / (LINE_LEAVES * most_Pa)) if most_Pa else 0.0


def fine_fire(a: Asked, texts: Mapping[str, str]) -> Iterable[Mapping[str, str]]:
    """More and less, but never less than the chamber needs."""
    needed_W = a.burner.part("need").needed_W
    if needed_W is None or texts["firing_rate"] == "auto":  # a mended one may be
        return
    rate_W = parse_quantity(texts["firing_rate"], "power", "firing_rate")
    unit_W = _rate_unit_W(a.system)
    for percent in RATE_STEPS:
        steps = round(abs(percent) / 100 * rate_W / unit_W) or 1
        moved_W = rate_W + (steps if percent > 0 else -steps) * unit_W
        if percent > 0 or moved_W >= needed_W / int(texts["burner_count"]) - 1e-6 * unit_W:
            yield {"firing_rate": _rate(moved_W, a.system)}


def fine_low(a: Asked, texts: Mapping[str, str]) -> Iterable[Mapping[str, str]]:
    low = round(100 * parse_quantity(texts["low_fire"], "fraction", "low_fire"))
    for step in LOW_STEPS:
        if LEAST_LOW <= low + step <= 100:
            yield {"low_fire": f"{low + step} %"}


def _fire_W(a: Asked, needed_W: float | None) -> float:
    rate = a.values["firing_rate"]
    return (needed_W or 0.0) / a.values["burner_count"] if rate == "auto" else float(rate)


def body_options(a: Asked) -> Iterable[Option]:
    largest: dict[tuple[tuple[str, str], ...], Piece] = {}  # of each section: all are cut from one piece
    for piece in a.have.of("tube", "plate", "round"):
        other = largest.setdefault(tuple(piece.texts.items()), piece)
        if _size_of(piece) > _size_of(other):
            largest[tuple(piece.texts.items())] = piece
    for piece in largest.values():
        if "body_length" in a.have.mine and not long_enough(piece, a.start):
            continue
        yield from _BODIES[piece.kind](a, piece, "")
    if a.have.may_buy("tube"):
        for width, depth, wall in sold.TUBES[a.system]:
            texts = {"body_kind": "tube", "body_width": width, "body_depth": depth, "wall": wall}
            words = f"tube {width.removesuffix(' ' + a.system)} x {depth.removesuffix(' ' + a.system)} x {wall}"
            stick_m = parse_quantity(sold.STICK[a.system], "long_length", "tube")
            if not _ample(a, largest.get(tuple(texts.items())), width):
                yield from _tube(a, Piece("tube", words, texts, {"length_m": stick_m}), words)
    if a.have.may_buy("plate"):
        wall = "3/16 in" if a.system == "in" else "5 mm"
        piece = Piece(
            "plate", f"plate {wall}", {"body_kind": "plates", "wall": wall}, {"length_m": 1.2, "width_m": 1.2}
        )
        if not _ample(a, largest.get(tuple(piece.texts.items())), sold.PLATE_BOXES[a.system][-1]):
            yield from _plates(a, piece, piece.typed)


def _ample(a: Asked, own: Piece | None, width: str) -> bool:
    """Whether as long a body comes out of the same at hand as the chamber has room for, so that none need be bought."""
    if own is None:
        return False
    width_m = parse_quantity(width, "length", "body_width")
    values = {**a.values, "body_kind": own.texts["body_kind"], "body_width": width_m, "body_depth": width_m}
    of_it = replace(a, values=values, figures={"width_m": 0.0, **own.figures})
    return from_stick_m(of_it) >= chamber_m(a) / a.values["burner_count"] - 1e-9


def _size_of(piece: Piece) -> float:
    return piece.figures["length_m"] * piece.figures.get("width_m", 1.0)


def long_enough(piece: Piece, design: Design) -> bool:
    """Whether a body of the design's length comes out of the piece; any of a round, which is cut across."""
    longest_m = max(piece.figures["length_m"], piece.figures.get("width_m", 0.0))
    return piece.kind == "round" or design.body_length <= longest_m + 1e-9


def _box(a: Asked, piece: Piece, texts: Mapping[str, str], buy: str) -> Option:
    wall_m = parse_quantity(texts["wall"], "length", "wall")
    return option(
        {
            **texts,
            "grip": a.length(wall_m + COVER_M),
            "edge_margin": sold.EDGE_MARGIN[a.system],
        },
        buy,
        length_m=piece.figures["length_m"],
        width_m=piece.figures.get("width_m", 0.0),
    )


def _tube(a: Asked, piece: Piece, buy: str) -> Iterable[Option]:
    yield _box(a, piece, piece.texts, buy)
    if piece.texts["body_width"] != piece.texts["body_depth"]:
        turned = {"body_width": piece.texts["body_depth"], "body_depth": piece.texts["body_width"]}
        yield _box(a, piece, {**piece.texts, **turned}, buy)


def _plates(a: Asked, piece: Piece, buy: str) -> Iterable[Option]:
    for side in sold.PLATE_BOXES[a.system]:
        if parse_quantity(side, "length", "plate") <= max(piece.figures["width_m"], piece.figures["length_m"]):
            yield _box(a, piece, {**piece.texts, "body_width": side, "body_depth": side}, buy)


def _rounds(a: Asked, piece: Piece, buy: str) -> Iterable[Option]:
    made = _box(a, piece, piece.texts, buy)
    texts = {**dict(made.texts), "inlet_position": "centre"}
    texts.pop("body_length")  # that of the disc, given with the length
    for depth in ("4 in", "6 in") if a.system == "in" else ("100 mm", "150 mm"):
        yield Option(tuple({**texts, "body_depth": depth}.items()), buy, 0.0, made.figures)


_BODIES = {"tube": _tube, "plate": _plates, "round": _rounds}


def lip_options(a: Asked) -> Iterable[Option]:
    """The narrowest that is flat where the block bears on it, and wider ones, which shade more of the box, as long as
    they leave most of the width to the face."""
    v = a.values
    if v["body_kind"] == "pipe":
        least_m = v["wall"] + a.start.cap_gap + ROUND_RIM_M
    else:
        least_m = v["wall"] + (tube_inside_radius_m(v["wall"]) if v["body_kind"] == "tube" else 0.0) + LIP_M
    for wider in sold.WIDER_LIPS[a.system]:
        lip = a.length(least_m + parse_quantity(wider, "length", "setback"))
        if wider == sold.WIDER_LIPS[a.system][0] or (
            2 * parse_quantity(lip, "length", "setback") <= LIPS_TAKE * v["body_width"]
        ):
            yield replace(option({"setback": lip}), spare=wider != sold.WIDER_LIPS[a.system][0])


def length_options(a: Asked) -> Iterable[Option]:
    """Lengths along the chamber, as many as the stick gives for the whole batch."""
    if a.values["body_kind"] == "pipe":
        need_m = a.values["batch_size"] * (a.values["body_depth"] + a.start.kerf) - a.start.kerf
        if need_m <= a.figures["length_m"] + 1e-9:
            yield option({"body_length": show(a.values["body_width"], "length", a.system, exact=True)})
        return
    (least_m, longest_m), step_m = _lengths(a), INCH_M if a.system == "in" else 0.025
    ratio = max(longest_m / least_m, 1.0) ** (1 / (MOST_LENGTHS - 1))  # an inch is much of a short body
    lengths = {round(least_m * ratio**n / step_m) * step_m for n in range(MOST_LENGTHS)}
    lengths = {length for length in lengths if least_m - 1e-9 <= length <= longest_m + 1e-9}
    if longest_m >= shortest_body_m(a.values["setback"]) - 1e-9:
        lengths.add(_on_tape(longest_m, a.system))  # the whole piece
    for length_m in sorted(lengths):
        yield option({"body_length": show(length_m, "length", a.system, exact=True)})


def _lengths(a: Asked) -> tuple[float, float]:
    """The shortest and the longest body."""
    longest_m = min(chamber_m(a) / a.values["burner_count"], from_stick_m(a))
    return max(LEAST_BODY_M, 2 * a.values["setback"] + 0.025), longest_m


def shortest_body_m(setback_m: float) -> float:
    """Of a piece that is used whole."""
    return max(SHORTEST_BODY_M, 2 * setback_m + INCH_M / 2)


def fine_length(a: Asked, texts: Mapping[str, str]) -> Iterable[Mapping[str, str]]:
    if a.values["body_kind"] == "pipe":
        return
    (least_m, longest_m), step_m = _lengths(a), INCH_M / 2 if a.system == "in" else 0.01
    length_m = parse_quantity(texts["body_length"], "length", "body_length")
    for steps in LENGTH_STEPS:
        if least_m <= (moved_m := length_m + steps * step_m) <= longest_m:
            yield {"body_length": show(moved_m, "length", a.system, exact=True)}


def middle(a: Asked, menu: list[Option]) -> float:
    """Of what lies there, if anything does."""
    there = _there(menu)
    return (there[0] + there[-1]) / 2


def upper_middle(a: Asked, menu: list[Option]) -> float:
    """The larger of the two in the middle: through thin ports few flames are lit."""
    there = _there(menu)
    return there[len(there) // 2]


def _there(menu: list[Option]) -> list[int]:
    """Places on a menu of what need not be bought; all, where all or nothing must."""
    return [at for at, one in enumerate(menu) if not one.buy] or list(range(len(menu)))


def likely_length(a: Asked, menu: list[Option]) -> float:
    """Of a face that its ports fill at a middling speed, or that lights enough of the chamber."""
    return _length_at(a, menu, _port_speed_m_s(a) * PORTS_OF_FACE)


def long_length(a: Asked, menu: list[Option]) -> float:
    """Of a face that reaches as far as its fire keeps out of thinly set ports, or lights enough of the chamber."""
    return _length_at(a, menu, LONG_SPEED_M_S * LONG_OF_FACE)


def long_body(a: Asked, menu: list[Option]) -> float:
    """The narrowest: of as many ports it has the longest face."""
    return min(_there(menu), key=lambda at: _value(menu[at], "body_width"))


def long_low(a: Asked, menu: list[Option]) -> float:
    wanted = max(LONG_LOW, _least_low(a) / 100)
    off = [abs(_value(one, "low_fire") - wanted) for one in menu]
    return off.index(min(off))


def long_ports(a: Asked, menu: list[Option]) -> float:
    """The smaller of the two in the middle."""
    there = _there(menu)
    return there[(len(there) - 1) // 2]


def _length_at(a: Asked, menu: list[Option], window_m_s: float) -> float:
    """Of a window through which the mixture of high fire runs so fast, and that lights enough of the chamber."""
    height_m = a.start.chamber_height if a.start.chamber_shape == "box" else a.start.chamber_diameter
    field_m = LIT_ENOUGH * chamber_m(a) / a.values["burner_count"] - SPREAD.value * height_m
    window_m2 = a.burner.part("firing").mixture_m3_s / window_m_s
    rim_m = 2 * (a.values["setback"] + a.values["edge_margin"])
    wanted_m = max(window_m2 / max(a.values["body_width"] - rim_m, LEAST_WEB_M), field_m) + rim_m
    off_m = [abs(_value(one, "body_length") - wanted_m) for one in menu]
    return off_m.index(min(off_m))


def _value(one: Option, key: str) -> float:
    value: float = parsed(key, dict(one.texts)[key])
    return value


def _pushed_m_s(a: Asked) -> float:
    """Speed at which the strongest blower at hand spends all that it has on the ports; inf where one may be bought."""
    own: list[Mapping[str, str]] = [piece.texts for piece in a.have.of("blower")]
    if a.have.mine.keys() & set(BLOWER):
        own = [{}]
    elif not own or a.have.may_buy("blower"):
        return inf
    firing, shop = a.burner.part("firing"), a.burner.part("shop")
    air_m3_s = firing.air_m3_s * shop.swell * (a.values["burner_count"] if a.start.blowers == "one" else 1)
    has_Pa = 0.0
    for texts in own:
        whole = curve(*(parsed(key, texts[key]) if key in texts else a.start.value(key) for key in BLOWER))
        if air_m3_s < whole.last_m3_s:
            has_Pa = max(has_Pa, whole.pressure_Pa(air_m3_s, shop.air_density_kg_m3))
    return sqrt(2 * has_Pa / (PORTS_K * shop.air_density_kg_m3))


def _port_speed_m_s(a: Asked) -> float:
    """A middling speed of the mixture in the ports, slower where the blower is weak."""
    return max(PORT_SPEEDS_M_S[0], min(PORT_SPEED_M_S, PORTS_PART * _pushed_m_s(a)))


def _on_tape(length_m: float, system: str) -> float:
    step = INCH_M / 8 if system == "in" else 0.001
    return floor(length_m / step + 1e-6) * step


def chamber_m(a: Asked) -> float:
    return run_m(*(a.values[key] for key in ("chamber_shape", "chamber_length", "chamber_width")))


def from_stick_m(a: Asked) -> float:
    """The longest body of which the batch comes out of the piece."""
    batch, kerf = a.values["batch_size"], a.start.kerf
    length_m, width_m = a.figures["length_m"], a.figures["width_m"]
    if a.values["body_kind"] == "tube":
        return float((length_m + kerf) / batch - kerf)
    best: float = 0.0  # four strips a burner, all as wide as the wider
    strip_m = max(a.values["body_width"], a.values["body_depth"]) + kerf
    for along, across in ((length_m, width_m), (width_m, length_m)):
        strips = floor((across + kerf) / strip_m + 1e-9)
        if strips:
            rows = ceil(4 * batch / strips)
            best = max(best, float((along + kerf) / rows - kerf))
    return best


def port_options(a: Asked) -> Iterable[Option]:
    for piece in a.have.of("pins"):
        yield option({**piece.texts, **_stood(a, piece.texts["port_diameter"])})
    if a.have.may_buy("pins"):
        for text in sold.PINS[a.system]:
            yield option({"port_diameter": text, **_stood(a, text)}, f"{text} pins")


def _stood(a: Asked, diameter: str) -> dict[str, str]:
    """Pin depth and base: as set; pins that would lean stand deeper, as far as the base leaves wood under them, and in
    a thicker base where that is not enough."""
    set_depth, set_base = (a.start.text(key) for key in ("pin_depth", "mould_base"))
    wanted_m = PIN_STANDS * parsed("port_diameter", diameter)
    if wanted_m <= a.start.pin_depth:
        return {"pin_depth": set_depth, "mould_base": set_base}
    base = set_base
    if not {"mould_base", "pin_depth"} & a.have.mine.keys():
        least_m = parsed("pin_depth", a.length(wanted_m)) + FLOOR_M
        enough = [one for one in _bases(a) if one.thickness_m >= least_m - 1e-9]
        if board(set_base).thickness_m < least_m - 1e-9 and enough:
            base = min(enough, key=lambda one: one.thickness_m).name
    deepest_m = board(base).thickness_m - FLOOR_M
    if min(wanted_m, deepest_m) <= a.start.pin_depth:
        return {"pin_depth": set_depth, "mould_base": base}
    depths = a.length(wanted_m), a.length(deepest_m, up=False)
    return {"pin_depth": min(depths, key=partial(parsed, "pin_depth")), "mould_base": base}


def _bases(a: Asked) -> list[Board]:
    """Boards that hold a base of this width in one piece: those at hand where none are bought, else those that are sold
    by the reader's measures."""
    own = {piece.texts["mould_board"] for piece in a.have.of("board")}
    frame_m = 2 * (board(a.start.mould_board).thickness_m + BASE_MARGIN_M[a.system])
    wide_m = a.values["body_width"] + a.start.mould_clearance + frame_m
    wide = [one for one in boards() if not one.width_m or one.width_m >= wide_m - 1e-9]
    if own and not a.have.may_buy("board"):
        return [one for one in wide if one.name in own]
    return [one for one in wide if one.name.endswith(" mm") == (a.system == "mm")]


def grid_options(a: Asked) -> Iterable[Option]:
    """Rows and ports whose webs can be filled and lit across, the nearest to a middling speed first, but last those for
    which there are too few pins; no ports that the blower is too weak for by themselves, where there are others."""
    v, diameter = a.values, a.values["port_diameter"]
    is_round = v["body_kind"] == "pipe"
    room = [v[side] - 2 * v["setback"] - 2 * v["edge_margin"] - diameter for side in ("body_length", "body_width")]
    if min(room) < -1e-9:
        return
    flow, middling, pushed = a.burner.part("firing").mixture_m3_s, _port_speed_m_s(a), _pushed_m_s(a)
    pins = ports_of_pins(a.burner, a.have)
    found = []
    for pattern in ("hexagonal", "rings") if is_round else ("staggered", "straight"):
        for rows in _counts(room[1] / (2 if pattern == "rings" else 1), diameter, pattern):
            for across in _ring_counts(rows) if pattern == "rings" else _counts(room[0], diameter, "straight"):
                short = pattern in ("staggered", "hexagonal")
                if short and rows > 1 and across < 2:
                    continue
                if pattern == "straight" and rows == 1:  # the same face as one row staggered
                    continue
                count = rows * across - (rows // 2 if short else 0)
                if pattern == "rings":
                    count = round(across * (rows + 1) / 2) + 1
                elif is_round:
                    count = max(1, round(count * pi / 4))
                speed = flow / (count * pi / 4 * diameter**2)
                if PORT_SPEEDS_M_S[0] <= speed <= PORT_SPEEDS_M_S[1]:
                    off = max(speed / middling, middling / speed)
                    found.append((speed > pushed, count > pins, round(off, 6), pattern, rows, across))
    found = [one for one in found if not one[0]] or found
    for *_, pattern, rows, across in sorted(found)[:MOST_GRIDS]:
        yield option({"pattern": pattern, "rows": str(rows), "ports_per_row": str(across)})


def ports_of_pins(burner: Burner, have: Have) -> float:
    """How many ports a face may have for the pins of their size at hand; inf where more may be bought, or of one piece
    nobody has told how many pins cut to length it is."""
    diameter_m = burner.part("port_diameter")
    there = [piece for piece in have.of("pins") if is_of(piece, diameter_m)]
    if have.may_buy("pins") or not there or any("count" not in piece.figures for piece in there):
        return inf
    if any("pin_stock_length" in piece.texts for piece in there):  # what a stick gives hangs on block and base
        return inf
    return sum(piece.figures["count"] for piece in there) // blocks_at_once(burner)


def is_of(piece: Piece, diameter_m: float) -> bool:
    """Whether pins are of a port's size."""
    return abs(parsed("port_diameter", piece.texts["port_diameter"]) - diameter_m) <= NOISE_M


def blocks_at_once(burner: Burner) -> int:
    """How many blocks hold their pins at a time: one in each mould; pins of wax go with every block."""
    batch: int = burner.part("batch_size")
    return batch if burner.part("pin_kind") == "wax" else min(batch, burner.part("moulds"))


def _counts(room_m: float, diameter_m: float, pattern: str) -> Iterable[int]:
    """Counts along a length whose pitch is neither too close to fill nor too far to light."""
    near = max(LEAST_WEB_M, PITCHES[0] * diameter_m - diameter_m) + diameter_m
    far = max(PITCHES[1] * diameter_m, LONGEST_GAP_M + diameter_m)
    if pattern != "straight":  # neighbours of the next row stand aslant
        near *= sqrt(3) / 2
    most, least = floor(room_m / near + 1e-6) + 1, ceil(room_m / far - 1e-6) + 1
    return range(max(1, min(least, most)), most + 1)


def _ring_counts(rows: int) -> Iterable[int]:
    return (3 * rows, 6 * rows)


def block_options(a: Asked) -> Iterable[Option]:
    texts = sold.BLOCKS[a.system]
    thick = {text: parse_quantity(text, "length", "block_thickness") for text in texts}
    usable = [text for text in texts if thick[text] > a.values["grip"] + INCH_M / 2]
    diameter = a.values["port_diameter"]
    fits = [text for text in usable if SLENDER[0] - 0.01 <= thick[text] / diameter <= SLENDER[1] + 0.01]
    for text in fits or usable[-1:]:
        yield option({"block_thickness": text})


def inlet_options(a: Asked) -> Iterable[Option]:
    """The inlet, bare and behind a baffle whose holes are open enough for these ports."""
    ports_m2 = a.burner.part("face").port_area_m2
    hole = sold.BAFFLE_HOLE[a.system]
    hole_m2 = pi / 4 * parse_quantity(hole, "length", "baffle_hole_diameter") ** 2
    holes = max(LEAST_HOLES, 5 * ceil(BAFFLE_OPEN * ports_m2 / hole_m2 / 5 - 1e-6))
    for size, buy in _pipe_sizes(a):
        if pipes.pipe(size).area_m2 >= INLET_RATIO * ports_m2:
            for count in (holes, 0):
                yield option({"inlet": size, "baffle_holes": str(count), "baffle_hole_diameter": hole}, buy)


def fine_inlet(a: Asked, texts: Mapping[str, str]) -> Iterable[Mapping[str, str]]:
    holes = int(texts["baffle_holes"])
    for step in HOLE_STEPS:
        if holes and holes + step >= LEAST_HOLES:
            yield {"baffle_holes": str(holes + step)}


def _pipe_sizes(a: Asked) -> Iterable[tuple[str, str]]:
    own = dict.fromkeys(piece.texts["mix_pipe"] for piece in a.have.of("pipe"))
    yield from ((size, "") for size in own)
    if a.have.may_buy("pipe"):
        yield from ((size, f"{pipe_size(size, a.system)} pipe") for size in sold.PIPES if size not in own)


def mix_options(a: Asked) -> Iterable[Option]:
    flow = a.burner.part("firing").mixture_m3_s
    for size, buy in _pipe_sizes(a):
        pipe = pipes.pipe(size)
        if MIX_SPEED_M_S[0] <= flow / pipe.area_m2 <= MIX_SPEED_M_S[1]:
            step = INCH_M if a.system == "in" else 0.025
            length = show(ceil((DIAMETERS_NEEDED * pipe.bore_m) / step) * step, "length", a.system, exact=True)
            yield option({"mix_pipe": size, "mix_pipe_length": length}, buy)


def blower_options(a: Asked) -> Iterable[Option]:
    for piece in a.have.of("blower"):
        yield option(piece.texts)
    if a.have.may_buy("blower"):
        for shut, free in sold.BLOWERS[a.system]:
            texts = {"blower_shutoff_pressure": shut, "blower_free_flow": free, "blower_curve": ""}
            yield option(texts, f"a blower of {shut} shut and {free} free")


def sources(have: Have, start: Design) -> tuple[str, ...]:
    """What the gas may come from: what lies there; where nothing is told of it, what the question has."""
    if gas(start.fuel, start.fuel_blend).metered:
        return ("line",)
    cylinder = have.of("cylinder") or have.may_buy("cylinder")
    if "gas_from" in have.mine or not (have.of("line") or have.of("cylinder")):
        return (start.gas_from,)
    return (*(("line",) if have.of("line") else ()), *(("cylinder",) if cylinder else ()))


def lines(a: Asked) -> list[str]:
    """What the lines at hand hold; where none is told, that of the question."""
    return [piece.texts["line_pressure"] for piece in a.have.of("line")] or [a.start.text("line_pressure")]


def jet_options(a: Asked) -> Iterable[Option]:
    """Of the line at its pressure; of a cylinder, where the fuel comes in one and one is there, beside it."""
    regulators = [piece.texts["gas_pressure"] for piece in a.have.of("regulator") if piece.texts]
    own = a.start.text("line_pressure")
    if a.burner.part("gas").metered:
        # One that is set to more than the line holds only lets it through.
        held_Pa = parse_quantity(own, "pressure", "line_pressure")
        set_to = [one for one in regulators if parse_quantity(one, "gas_pressure", "gas_pressure") <= held_Pa]
        if a.have.of("line") or not set_to:
            yield from _of_lines(a)
        else:
            yield from _at_pressures(a, set_to, own)
        return
    there = sources(a.have, a.start)
    if "line" in there:
        yield from (_from("line", one) for one in _of_lines(a))
    if "cylinder" in there:
        yield from (_from("cylinder", one) for one in _of_cylinders(a, regulators, own))


def jet_as_set(a: Asked) -> Option | None:
    """Jet, pressure and source of the question, where drills, regulators and lines at hand give them."""
    start, drilled = a.start, a.have.of("drill")
    keys = ("jet_drill", "gas_pressure", "line_pressure", "gas_from")
    there = start.gas_from in sources(a.have, start)
    there &= start.gas_from == "cylinder" or any(_is(text, start.line_pressure) for text in lines(a))
    fixed = [piece.texts["gas_pressure"] for piece in a.have.of("regulator") if piece.texts]
    if start.gas_from == "line" and (a.have.of("line") or not fixed):
        there &= start.gas_pressure <= start.line_pressure * (1 + 1e-6)
    else:
        given = [text for one in fixed for text in of_fixed(one, a.system)]
        ranges = _ranges(a.have)
        reached = bool(ranges or not fixed) and _reached(start.gas_pressure, ranges)
        there &= reached or any(_is(text, start.gas_pressure) for text in given)
    lies = start.text("jet_drill") in {one.texts["jet_drill"] for one in drilled}
    buy, price = ("", 0.0) if lies else _drill_of(drilled)
    if not there or (buy and not a.have.may_buy("drill")):
        return None
    return option({key: start.text(key) for key in keys}, buy, price)


def _is(pressure: str, pressure_Pa: float) -> bool:
    return abs(parse_quantity(pressure, "gas_pressure", "gas_pressure") - pressure_Pa) <= 1e-6 * pressure_Pa


def _from(source: str, one: Option) -> Option:
    return replace(one, texts=(*one.texts, ("gas_from", source)))


def _of_cylinders(a: Asked, regulators: list[str], line: str) -> Iterable[Option]:
    for set_to in regulators:
        yield from _at_pressures(a, _given(a, set_to, of_fixed(set_to, a.system)), line)
    ranges = _ranges(a.have)
    if ranges or not regulators:
        yield from _any_pressure(a, line, ranges)
    if a.have.may_buy("regulator") and another_helps(a.have, a.system):
        for one in _any_pressure(a, line, []):
            yield replace(one, buy=f"{ADJUSTABLE} and {one.buy}" if one.buy else ADJUSTABLE, spare=True)


def _ranges(have: Have) -> list[tuple[float, float]]:
    """Of the regulators that can be turned, the lowest and the highest pressure."""
    return [(one.figures["low_Pa"], one.figures["high_Pa"]) for one in have.of("regulator") if one.figures]


def another_helps(have: Have, system: str) -> bool:
    """Whether no regulator that lies there can be turned to a usual pressure."""
    ranges = _ranges(have)
    return bool(have.of("regulator")) and not (ranges and _within(sold.PRESSURES[system], ranges))


def _of_lines(a: Asked) -> Iterable[Option]:
    """What a line holds before the jet, for which the nearest larger drill asks for less; and a seventh less, where
    connector and valves leave no more."""
    for line in dict.fromkeys(lines(a)):
        yield from _at_pressures(a, before_jet(line, a.system), line)


def before_jet(line: str, system: str) -> list[str]:
    """What a line holds, and what it leaves before the jet, as texts."""
    return [line, _leaves(line, OF_LINE[system])]


def of_fixed(set_to: str, system: str) -> list[str]:
    """What a regulator that nobody can turn gives, and what hose and valves leave of it before the jet, as texts; and
    less, for the nearest drill may ask for more than that."""
    left = _leaves(set_to, REGULATED[system])
    return [set_to, left, _leaves(left, REGULATED[system])]


def _given(a: Asked, most: str, left: list[str]) -> list[str]:
    """Of what may be left of the most that a regulator gives that which it does give through the drill sold for it; all
    but the least where a drill lies there or no pressure does."""
    asked = {one: a.burner.call(PARTS["jet"], gas_pressure=_Pa(one), jet_drill=None) for one in left}
    supply = partial(a.burner.call, PARTS["supply"], line_pressure=inf)
    given = [one for one, jet in asked.items() if supply(jet=jet).outlet_Pa.low <= _Pa(most) + 1]
    return left[:-1] if a.have.of("drill") else given or left


def _Pa(pressure: str) -> float:
    return parse_quantity(pressure, "gas_pressure", "gas_pressure")


def _leaves(pressure: str, told: tuple[float, str]) -> str:
    return _pressure(LINE_LEAVES * parse_quantity(pressure, "gas_pressure", "gas_pressure"), told)


def _at_pressures(a: Asked, pressures: Iterable[str], line: str) -> Iterable[Option]:
    """The pressure as it is, with each drill at hand or the nearest one."""
    drilled = a.have.of("drill")
    for pressure in dict.fromkeys(pressures):
        supply = {"gas_pressure": pressure, "line_pressure": line}
        for piece in drilled:
            yield option({**supply, **piece.texts})
        if not drilled or a.have.may_buy("drill"):
            yield option({**supply, "jet_drill": ""}, *_drill_of(drilled))


def _any_pressure(a: Asked, line: str, ranges: list[tuple[float, float]]) -> Iterable[Option]:
    """The pressures that a regulator reaches, with the nearest drill; with jets at hand the one that each takes."""
    drilled = a.have.of("drill")
    for piece in drilled:
        jet = a.burner.call(PARTS["jet"], gas_pressure=70e3, jet_drill=piece.texts["jet_drill"])
        pressure = _pressure(jet.high_Pa, REGULATED[a.system])
        if _reached(parse_quantity(pressure, "gas_pressure", "gas_pressure"), ranges):
            yield option({"gas_pressure": pressure, "line_pressure": line, **piece.texts})
    if not drilled or a.have.may_buy("drill"):
        usual = _within((a.start.text("gas_pressure"), *sold.PRESSURES[a.system]), ranges)
        for pressure in usual or _within(_ends(a, ranges), ranges):
            supply = {"gas_pressure": pressure, "line_pressure": line, "jet_drill": ""}
            yield option(supply, *_drill_of(drilled))


def _drill_of(drilled: tuple[Piece, ...]) -> tuple[str, float]:
    """What is bought beside the drills that lie there, and its price; where none is told of, any does."""
    return ("a jet drill", sold.DRILL_PRICE) if drilled else ("", 0.0)


def _within(pressures: Iterable[str], ranges: list[tuple[float, float]]) -> list[str]:
    """Those that a regulator reaches, each once."""
    reached = (one for one in pressures if _reached(parse_quantity(one, "gas_pressure", "gas_pressure"), ranges))
    return list(dict.fromkeys(reached))


def _ends(a: Asked, ranges: list[tuple[float, float]]) -> Iterable[str]:
    """The highest of regulators that reach none of the usual pressures, as of one that is set to it, and their lowest,
    to a tenth of their step."""
    step, unit = REGULATED[a.system]
    told = step / 10, unit
    fine_Pa = _Pa(f"{step / 10:g} {unit}")
    for low_Pa, high_Pa in ranges:
        highest, lowest = floor(high_Pa / fine_Pa + 1e-6), ceil(low_Pa / fine_Pa - 1e-6)
        if highest * fine_Pa >= REGULATOR_PA[0]:
            most = _pressure(highest * fine_Pa, told)
            yield from _given(a, most, of_fixed(most, a.system))
        if lowest * fine_Pa >= REGULATOR_PA[0]:
            yield _pressure(lowest * fine_Pa, told)


def _reached(pressure_Pa: float, ranges: list[tuple[float, float]]) -> bool:
    if not ranges:
        return REGULATOR_PA[0] <= pressure_Pa <= REGULATOR_PA[1]
    return any(low - 1 <= pressure_Pa <= high + 1 for low, high in ranges)


def _pressure(pressure_Pa: float, told: tuple[float, str]) -> str:
    step, unit = told
    steps = pressure_Pa / _Pa(f"1 {unit}") / step
    tenths = 10 if steps < 10 else 1  # of a step, where it is much of the pressure
    return f"{round(steps * tenths) * step / tenths:.6g} {unit}"


def cylinder_options(a: Asked) -> Iterable[Option]:
    """Nothing to choose where gas comes from a line."""
    if a.burner.part("gas_line").there:
        yield option({})
        return
    own: dict[str, int] = {}
    for piece in a.have.of("cylinder"):
        size = piece.texts["cylinder"]
        own[size] = own.get(size, 0) + int(piece.figures["count"])
    for size, most in own.items():
        for count in range(1, most + 1):
            yield option({"cylinder": size, "cylinder_count": str(count)})
    if a.have.may_buy("cylinder"):
        more = [(size, count) for size, most in own.items() for count in range(most + 1, sold.MOST_CYLINDERS + 1)]
        for size, count in dict.fromkeys((*more, *sold.CYLINDERS)):
            lacking = count - own.get(size, 0)
            if lacking > 0:
                again = "more " if size in own else ""
                words = "a " if lacking == 1 and not again else f"{lacking} {again}"
                what = f"cylinder{'s' if lacking > 1 else ''} of {choice_name('cylinder', size, a.system)}"
                name = words + ("lying tank" if size == "tank" else what)
                price = lacking * sold.CYLINDER_PRICES[size]
                yield option({"cylinder": size, "cylinder_count": str(count)}, name, price)


def bag_options(a: Asked) -> Iterable[Option]:
    own: dict[str, float] = {}
    for piece in a.have.of("bag"):
        own[piece.texts["refractory"]] = own.get(piece.texts["refractory"], 0) + piece.figures["count"]
    for name, count in own.items():
        yield option({"refractory": name}, bags=count)
    if not own or (a.have.may_buy("bag") and a.start.refractory not in own):
        yield option({"refractory": a.start.refractory})


def board_options(a: Asked) -> Iterable[Option]:
    boards = [piece.texts["mould_board"] for piece in a.have.of("board")]
    for name in dict.fromkeys(boards or [a.start.mould_board]):
        yield option({"mould_board": name})


@dataclass(frozen=True)
class Axis:
    """`stock`: settings that are sizes of things, so one that is mine must be among them; others that are mine replace.

    `likely`: of options that run from small to large, the place on the menu that is likeliest; None: the first.
    `long`: the same for a face that reaches far along the chamber, where that is another.
    `fine`: texts beside the menu's, a little off those that were chosen, of what takes nothing else from the shop.
    """

    name: str
    kinds: tuple[str, ...]
    keys: tuple[str, ...]
    options: Options
    stock: tuple[str, ...] = ()
    likely: Likely | None = None
    fine: Fine | None = None
    long: Likely | None = None


BLOWER = ("blower_shutoff_pressure", "blower_free_flow", "blower_curve")
AXES = (
    Axis("fire", (), ("burner_count", "firing_rate", "batch_size"), fire_options, fine=fine_fire),
    Axis("low fire", (), ("low_fire",), low_options, likely=likely_low, fine=fine_low, long=long_low),
    Axis(
        "body",
        ("tube", "plate", "round"),
        (
            *("body_kind", "body_width", "body_depth", "wall", "grip", "edge_margin"),
            "inlet_position",
        ),
        body_options,
        ("body_kind", "body_width", "body_depth", "wall"),
        middle,
        long=long_body,
    ),
    Axis("lip", (), ("setback",), lip_options),
    Axis(
        "length",
        ("tube", "plate", "round"),
        ("body_length",),
        length_options,
        (),
        likely_length,
        fine_length,
        long_length,
    ),
    Axis(
        "ports",
        ("pins",),
        ("port_diameter", "pin_stock_length", "pin_depth", "mould_base"),
        port_options,
        ("port_diameter",),
        upper_middle,
        long=long_ports,
    ),
    Axis("face", (), ("pattern", "rows", "ports_per_row"), grid_options),
    Axis("refractory", ("bag",), ("refractory",), bag_options, ("refractory",)),
    Axis("block", (), ("block_thickness",), block_options, (), middle),
    Axis("mould", ("board",), ("mould_board",), board_options, ("mould_board",)),
    Axis("inlet", ("pipe",), ("inlet", "baffle_holes", "baffle_hole_diameter"), inlet_options, fine=fine_inlet),
    Axis("mix pipe", ("pipe",), ("mix_pipe", "mix_pipe_length"), mix_options),
    Axis("blower", ("blower",), BLOWER, blower_options, BLOWER),
    Axis(
        "jet",
        ("drill", "regulator", "line"),
        ("jet_drill", "gas_pressure", "line_pressure", "gas_from"),
        jet_options,
    ),
    Axis("cylinder", ("cylinder",), ("cylinder", "cylinder_count"), cylinder_options, ("cylinder", "cylinder_count")),
)
