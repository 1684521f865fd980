"""What cannot be: what is mine at odds with the rest or with what lies there, and a shop that nothing comes out of."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from math import ceil, floor
from typing import Any

from ..burner import Burner
from ..constants import INCH_M
from ..design import Design, parse_setting
from ..errors import InputError, InputErrors
from ..making.stock import METRES
from ..parts.gas import gas
from ..rules import LEAST_WINDOW_M
from ..settings import BY_KEY
from ..tables import read_table
from ..units import show, tape
from . import sold
from .begun import begun
from .choices import AXES, Asked, Axis, chamber_m, grid_options, long_enough, of_fixed, shortest_body_m, sources
from .graph import GIVEN
from .have import BODIES, KINDS, NO_KIND, SOLD, Have, Piece, keeping, read_have
from .score import EVEN
from .search import dive, first_of
from .space import Node, Space

GAS_SET = ("fuel", "fuel_blend", "gas_from", "cylinder")  # what else decides which gas is at hand
LONGER = 9  # lengths that are tried of a chamber, a half inch or so more for each body
BUILDS = 100  # nodes in which a burner comes out of what would do


def question(
    start: Callable[[], Design],
    rest: Callable[[], tuple[Design, list[InputError]]],
    kept: Callable[[], Iterable[str]],
    shop: Callable[[], tuple[Have, list[InputError]]],
) -> tuple[Design, Have]:
    """The design and the list that find is asked with; settings `kept` are mine as the design has them.

    `rest`: where the design is refused, what of it can stand, and what of it cannot.
    Raises:
        InputErrors   all that is wrong with either and between them, of what can be read
    """
    have, errors = shop()
    unread = _unread(errors)
    refused: list[InputError] = []
    left_out: list[InputError] = []
    try:
        design = start()
    except (InputError, InputErrors) as found:
        refused = found.errors
        design, left_out = rest()
    unknown = {error.field for error in left_out}
    have = keeping(have, design, [key for key in kept() if key in BY_KEY and key not in unknown], errors)
    bad = {error.field for error in errors}
    # What is not read might be what is asked for: as if it may be bought.
    known = replace(
        have,
        buy=have.buy | unread,
        mine={key: value for key, value in have.mine.items() if key not in bad},
    )
    unknown -= {key for key, text in known.mine.items() if text is not None}
    between = [error for error in contradictions(design, known) if not unknown & {error.field, *error.others}]
    if told := {str(error): error for error in (*refused, *errors, *between)}:  # each once
        raise InputErrors(told.values())
    return design, have


def _unread(errors: Iterable[InputError]) -> set[str]:
    """Kinds of which more may be meant than was read: all, where nobody can tell which."""
    kinds: set[str] = set()
    for error in errors:
        if named := {error.field, error.nearest} & KINDS.keys():
            kinds |= named
        elif error.field in ("have", "buy") and not error.rule.startswith(NO_KIND):
            kinds |= KINDS.keys()
    return kinds


def can_be(start: Design, have: Have) -> None:
    """Raises InputErrors of all that is at odds between a design and a list."""
    if errors := contradictions(start, have):
        raise InputErrors(errors)


def contradictions(start: Design, have: Have) -> list[InputError]:
    """What is mine and at odds with the rest of the design, or with what lies there."""
    errors: list[InputError] = []
    texts = {key: start.text(key) if text is None else text for key, text in have.mine.items()}
    start = _with_what_fits(start, texts, errors)
    left_out = {key for key, text in texts.items() if start.value(key) != parse_setting(BY_KEY[key], text)}
    have = replace(have, mine={key: text for key, text in texts.items() if key not in left_out})
    for axis in AXES:
        pieces = have.of(*axis.kinds)
        if not axis.stock or not pieces or have.may_buy(*axis.kinds):
            continue
        for key in axis.stock:
            held = [piece.texts[key] for piece in pieces if key in piece.texts]
            if key not in have.mine or len(held) < len(pieces):
                continue
            sides = (
                ("body_width", "body_depth") if key in ("body_width", "body_depth") else (key,)
            )  # a tube can be turned
            values = [
                parse_setting(BY_KEY[side], piece.texts[side])
                for piece in pieces
                for side in sides
                if side in piece.texts
            ]
            if not any(_near(start.value(key), value) for value in values):
                errors.append(_not_at_hand(start, key, held))
    supplies = [one for one in _supplies(start, have) if one[0] in have.mine and one[1]]
    errors += [_not_at_hand(start, *one) for one in supplies]
    errors += [*_too_short(start, have)] or _no_body(start, have)
    return errors


def _with_what_fits(start: Design, texts: Mapping[str, str | None], errors: list[InputError]) -> Design:
    """The design with what is mine; what of it is at odds with the rest is named, and left out."""
    try:
        return begun(start, texts)
    except InputErrors as refused:
        errors += refused.errors
        at_odds = {key for error in refused.errors for key in (error.field, *error.others)}
        fitting = {key: text for key, text in texts.items() if key not in at_odds}
        if len(fitting) == len(texts):
            raise InputErrors(errors) from None
        return _with_what_fits(start, fitting, errors)


def _not_at_hand(start: Design, key: str, held: list[str], besides: tuple[str, ...] = ()) -> InputError:
    nearest = held[0].rpartition(" to ")[2]  # of a regulator its highest
    there = ", ".join(dict.fromkeys(text or "one without" for text in held))
    return InputError(key, start.text(key), f"is mine, but at hand is only {there}", nearest, (key, *besides))


def _supplies(start: Design, have: Have) -> Iterable[tuple[str, list[str], tuple[str, ...]]]:
    """Settings of pipe, jet and gas, what of them is at hand where the design's is not, and what else decides that."""
    for key, kind in (("mix_pipe", "pipe"), ("inlet", "pipe"), ("jet_drill", "drill")):
        held = [text for piece in have.of(kind) for text in piece.texts.values()]
        if start.value(key) and start.value(key) not in held and not have.may_buy(kind):
            yield key, held, ()
    liquid = gas(start.fuel, start.fuel_blend).liquid
    lines, regulators, cylinders = have.of("line"), have.of("regulator"), have.of("cylinder")
    held = [piece.texts["line_pressure"] for piece in lines]  # no line is ever bought
    if "line" in sources(have, start) and held:
        if not any(_near(parse_setting(BY_KEY["line_pressure"], text), start.line_pressure) for text in held):
            yield "line_pressure", held, GAS_SET
    if not liquid and lines:
        regulators = ()
    elif not regulators and (cylinders or have.may_buy("cylinder")):
        lines = ()  # a cylinder without a regulator named: any pressure
    pieces = (*lines, *regulators)
    another = have.may_buy("line") or (have.of("regulator") and have.may_buy("regulator"))
    if not another and not any(_gives(piece, start) for piece in pieces):
        yield "gas_pressure", [piece.typed for piece in pieces], GAS_SET
    count = sum(int(piece.figures["count"]) for piece in cylinders if piece.texts["cylinder"] == start.cylinder)
    if "cylinder" in sources(have, start) and not have.may_buy("cylinder") and count < start.cylinder_count:
        yield "cylinder_count", [str(count)] if count else [], GAS_SET


def _gives(piece: Piece, start: Design) -> bool:
    """Whether the gas pressure of a design comes of it, as the search would set it before the jet."""
    pressure_Pa = start.gas_pressure
    if piece.kind == "line":
        return pressure_Pa <= parse_setting(BY_KEY["line_pressure"], piece.texts["line_pressure"]) * (1 + 1e-6)
    if piece.texts:
        left = of_fixed(piece.texts["gas_pressure"], str(start.sizes))
        return any(_near(parse_setting(BY_KEY["gas_pressure"], text), pressure_Pa) for text in left)
    return piece.figures["low_Pa"] - 1 <= pressure_Pa <= piece.figures["high_Pa"] + 1


def _too_short(start: Design, have: Have) -> Iterable[InputError]:
    """The longest piece at hand, where no body as long as is mine comes out of any, or none with room between lips as
    wide as are mine."""
    pieces = have.of(*BODIES)
    if not pieces or have.may_buy(*BODIES):
        return
    longest = max(pieces, key=lambda piece: piece.figures["length_m"])
    if "body_length" in have.mine and not any(long_enough(piece, start) for piece in pieces):
        rule = f"is shorter than the body, whose length, {start.text('body_length')}, is mine"
        yield InputError(longest.kind, longest.typed, rule, "", ("body_length",))
    elif "setback" in have.mine and not any(_room_for_lips(piece, start.setback) for piece in pieces):
        rule = f"leaves no window between its two lips, which are mine at {start.text('setback')} each"
        yield InputError(longest.kind, longest.typed, rule, "", ("setback",))


def _room_for_lips(piece: Piece, setback_m: float) -> bool:
    sides = [parse_setting(BY_KEY[key], piece.texts[key]) for key in ("body_width", "body_depth") if key in piece.texts]
    wide = not sides or max(sides) > 2 * setback_m + LEAST_WINDOW_M
    lengths = (piece.figures["length_m"], piece.figures.get("width_m", 0.0))
    return wide and (piece.kind == "round" or max(lengths) >= shortest_body_m(setback_m) - 1e-9)


def _no_body(start: Design, have: Have) -> list[InputError]:
    """What is mine and at odds with each kind of body that is at hand or may be bought, as the last of them says it."""
    refused: list[InputError] = []
    for kind, text in {"tube": "tube", "plate": "plates", "round": "pipe"}.items():
        if "body_kind" in have.mine or not (have.of(kind) or (have.may_buy(kind) and kind in SOLD)):
            continue
        try:
            begun(start, {**have.mine, "body_kind": text})
        except InputErrors as found:
            refused = [error for error in found.errors if error.field in have.mine]
            continue
        return []
    return refused


def _near(one: Any, other: Any) -> bool:
    if isinstance(one, float) and isinstance(other, float):
        return abs(one - other) <= 1e-9 * max(abs(one), abs(other))
    return bool(one == other)


def nothing_fits(space: Space) -> list[InputError]:
    """Which axis leaves nothing to choose: the deepest that anything comes to."""
    deepest: list[Node] = [space.root]
    stack = [space.root]
    while stack:
        one = stack.pop()
        if one.level >= deepest[0].level:
            deepest = [one] if one.level > deepest[0].level else [*deepest, one]
        stack.extend(kid for each in one.menu or () if (kid := one.kids.get(each)) is not None)
    if deepest[0].level == space.last or any(one not in node.kids for node in deepest for one in space.menu(node)):
        # Nothing says that the shop is too poor.
        most = int(space.counts.most)
        return [InputError("budget", most, "is not enough steps to find any burner: give more of them")]
    axis = space.axes[deepest[0].level + 1]
    if axis.name in ("length", "face") and (crowded := _crowded(space, deepest)):
        return crowded
    liquid = space.root.burner.part("gas").liquid
    of_line = axis.name in ("fire", "jet") and liquid and sources(space.have, space.start) == ("line",)
    jet = ("drill", "line") if of_line else ()  # what it passes bounds the fire
    kinds = jet or axis.kinds or (*BODIES, "pins")  # a face is made of both
    pieces = space.have.of(*kinds)
    kind = (pieces[0] if jet or axis.kinds else pieces[-1]).kind if pieces else kinds[0] if axis.kinds else "have"
    said = "; ".join(piece.typed for piece in pieces)
    tell = {"face": _no_face, "length": _no_length}.get(axis.name)
    what = tell(space, deepest) if tell else _no_thing(space, axis)
    if of_line:
        what = "the line holds too little for the jet: it takes a larger one or more pressure"
    mine = "; ".join(f"{key}={text}" for key, text in space.have.mine.items() if text is not None)
    if mine and not said:
        return [InputError("mine", mine, f"leaves nothing to build from: {what}")]
    beside = f" (mine: {mine})" if mine else ""
    return [InputError(kind, said or "what is set", f"is not enough to build from: {what}{beside}")]


def _crowded(space: Space, nodes: list[Node]) -> list[InputError]:
    """How many burners and how long a chamber would do, where the chamber and no piece keeps each body short; empty
    where it does not, or where ports have no room on the longest either and neither helps."""
    node = min(nodes, key=lambda one: (one.values["burner_count"], one.values["setback"]))
    v, system, count = node.values, str(space.start.units), int(node.values["burner_count"])
    run_m = chamber_m(space.asking(node))
    if any(one.values["body_kind"] == "pipe" or space.longest_m(one) <= run_m / count for one in nodes):
        return []
    least_m = shortest_body_m(v["setback"])
    box_wide = v["chamber_shape"] == "box" and v["chamber_width"] > v["chamber_length"]
    side = "chamber_width" if box_wide else "chamber_length"
    held = "burner_count" in space.have.mine or "batch_size" in space.have.mine

    def works(key: str, text: str) -> bool:
        have = replace(space.have, mine={**space.have.mine, key: text})
        try:
            return _whole(Space(space.start, have, like=space)) is not None
        except InputErrors:
            return False

    fewer = range(min(count - 1, floor(run_m / least_m + 1e-9)), 0, -1) if held else ()
    fits = next((str(one) for one in fewer if works("burner_count", str(one))), "")
    each_m, step_m = least_m, INCH_M if system == "in" else 0.025
    longer = (show(ceil(count * (each_m + n * step_m / 2) / step_m) * step_m, "length", system) for n in range(LONGER))
    reaches = next((text for text in longer if parse_setting(BY_KEY[side], text) > run_m and works(side, text)), "")
    if run_m / count >= least_m and not (fits or reaches):
        return []
    long, each = (show(one_m, "length", system) for one_m in (run_m, run_m / count))
    burners = f"{count} burners" if count > 1 else "1 burner"
    rule = f"is not long enough for {burners}: each body has {each}, too short for two lips and a face with ports"
    errors = [InputError(side, long, rule, reaches, ("burner_count",))]
    if held and count > 1:
        rule = f"must be fewer for a chamber {long} long"
        errors.insert(0, InputError("burner_count", count, rule, fits, (side,)))
    return errors


def _no_thing(space: Space, axis: Axis) -> str:
    """For which axis nothing fits, and of each kind that lies there and is not to be bought what would do of it."""
    helps = []
    for kind in axis.kinds:
        if not space.have.of(kind) or space.have.may_buy(kind):
            continue
        other = Space(space.start, replace(space.have, buy=space.have.buy | {kind}), like=space)
        if (node := _whole(other)) is not None:
            bought = {one.buy: one.texts for of, one in zip(other.axes, node.chosen) if one.buy and kind in of.kinds}
            buys = list(bought)
            if kind == "pipe" and len(bought) > 1:  # one size may do for both
                sizes = {words: dict(texts).get("inlet") or dict(texts)["mix_pipe"] for words, texts in bought.items()}
                buys = next(([words] for words, size in sizes.items() if _builds(space, kind, size, beside=True)), buys)
            if kind == "drill":
                buys = [f"a jet drilled {node.burner.part('jet').drill_name}"]
            helps += [" and ".join(buys)] if buys else []
    would = f"; {' or '.join(helps)} would do" if helps else ""
    return f"nothing fits for {axis.name}{would}"


def _no_length(space: Space, nodes: list[Node]) -> str:
    """How long a piece would do for the shortest bodies of the batch."""
    system, kerf_m = str(space.start.sizes), space.start.kerf

    def least_m(node: Node) -> float:
        v = node.values
        if v["body_kind"] == "pipe":
            return float(v["body_depth"])
        return shortest_body_m(v["setback"])

    node = min(nodes, key=lambda one: one.values["batch_size"] * (least_m(one) + kerf_m))
    batch, each_m = int(node.values["batch_size"]), least_m(node)
    each = show(each_m, "length", system)
    if batch == 1:
        return f"the shortest body takes {each}"
    whole = show(batch * (each_m + kerf_m) - kerf_m, "length", system)
    return f"{batch} bodies of {each}, the shortest, and the saw cuts between them take {whole}"


def _no_face(space: Space, nodes: list[Node]) -> str:
    """Why no ports fit on any of these bodies, and what would, as far as it was tried on the one with the most room."""

    def room_m(node: Node) -> float:
        v = node.values
        return float(min(v["body_length"], v["body_width"]) - 2 * (v["setback"] + v["edge_margin"]))

    def fits(node: Node, **other: Any) -> bool:
        values = {**node.values, **other}
        burner = Burner(values.__getitem__, store=space.parts, given=GIVEN)
        return any(True for _ in grid_options(Asked(space.have, space.start, values, burner, node.figures)))

    node = max(nodes, key=lambda one: (room_m(one) - one.values["port_diameter"], one.values["body_length"]))
    v, ports, system = node.values, node.texts["port_diameter"], str(space.start.sizes)
    helps = []
    thinner = {text: parse_setting(BY_KEY["port_diameter"], text) for text in sold.PINS[system]}
    thinner = {text: at_m for text, at_m in thinner.items() if at_m < v["port_diameter"]}
    pins = (text for text in reversed(thinner) if fits(node, port_diameter=thinner[text]))
    if found := next((text for text in pins if _builds(space, "pins", text)), None):
        helps.append(f"pins of {found}")
    wall = show(v["wall"], "length", system, exact=True)
    wider = (f"{sides} x {wall}" for sides in _wider_tubes(v["body_width"], system))
    if found := next((text for text in wider if _builds(space, "tube", text)), None):
        helps.append(f"a tube of {found}")
    would = " or ".join(helps) or "less fire, for neither thinner pins nor a wider tube that is sold,"
    if room_m(node) < v["port_diameter"] - 1e-9:
        room = show(max(room_m(node), 0.0), "length", system)
        return f"lip and edge margin leave {room} across for ports of {ports}; {would} would do"
    return f"no rows of ports of {ports} fit on a face of that size and pass its fire; {would} would do"


def _wider_tubes(width_m: float, system: str) -> list[str]:
    """Sides of tube that is sold and wider either way, the smallest first: `2 x 3`."""
    rows = [one for one in read_table("steel_tubes") if one["unit"] == system]
    sides = sorted({(float(one["width"]), float(one["depth"])) for one in rows}, key=sum)
    return [f"{tape(wide)} x {tape(deep)}" for wide, deep in sides if min(wide, deep) * METRES[system] > width_m + 1e-9]


def _builds(space: Space, kind: str, entry: str, beside: bool = False) -> bool:
    """Whether a whole burner comes out of the shop with this in place of, or `beside`, what lies there of its kind."""
    group = BODIES if kind in BODIES else (kind,)
    rest = {name: pieces for name, pieces in space.have.pieces.items() if name not in group}
    lent = read_have(f"{kind}: {entry}\nbuy: all", str(space.start.sizes)).pieces[kind]
    there = space.have.of(kind) if beside else ()
    shop = replace(space.have, pieces={**rest, kind: (*there, *lent)}, buy=space.have.buy - set(group))
    return _whole(Space(space.start, shop, like=space)) is not None


def _whole(space: Space) -> Node | None:
    """A burner that comes out of a shop in a few steps."""
    with space.counts.at_most(BUILDS):
        return next(iter(dive(space, space.root, EVEN, 1)), None) or first_of(space)
    return None
