"""The gas and air train as a list and as a drawing in the order of flow."""

from dataclasses import dataclass

from ..catalogue.sentences import pipe_size
from ..drawing.shapes import Line, Text, rectangle, shape_box
from ..making import train as making
from ..parts.fires import Fires
from ..parts.lighting import Lighting
from ..parts.train import BRANCHES, LOOSE, ON_BRANCH, Train
from ..units import shop_of
from .view import Say, Shapes

INTO_BRANCH = ("gauge", "jet_gauge", "low_gauge", "gauge_cock", "low_gas_switch")
TEXT_MM = 2.6
BOX_MM, STEP_MM, COLUMN_MM, BRANCH_MM = 7.0, 10.0, 74.0, 12.0  # step and the column of the air: at least
LINE = 1.45  # from row to row, times the height of capitals


def called(part, say: Say) -> str:
    own = f"{part.key}.name.{part.case}"
    return say(own if own in say.words else f"{part.key}.name")


def named(part, say: Say) -> str:
    name = called(part, say)
    return say("pieces", count=part.count, name=name) if part.count > 1 else name


def _does(part, say):
    own = f"{part.key}.why.{part.case}"
    return say(own if own in say.words else f"{part.key}.why")


def sized(part, say, stopped=False, to_low=True):
    """`to_low`: the lighting card leads to low fire; where it does not, no gauge tells what it reads there."""
    slots, case = dict(part.slots), part.case
    if stopped and part.key in ("jet_gauge", "low_gauge"):  # nothing tells what they read on what must not be lit
        return say("gauge.size.tube" if case.startswith("tube") else "gauge.size", scale=slots["scale"])
    if not to_low and part.key == "jet_gauge":
        case = "no_low"
    if not to_low and part.key == "low_gauge" and "low" in slots:
        tube = "tube" if case.startswith("tube") else ""
        if "light" not in slots:
            return say(f"gauge.size.{tube}".rstrip("."), scale=slots["scale"])
        slots, case = {"scale": slots["scale"], "alone": slots["light"]}, f"{tube}_alone".lstrip("_")
    if "sizes" in slots:
        *first, last = (pipe_size(size, say.unit_system) for size in slots["sizes"])
        slots["path"] = say("to").join((*(size.removesuffix(" in") for size in first), last))
    if "runs" in slots:
        slots["runs"] = ", ".join(say("run", pipe=pipe, most=most_m) for pipe, most_m in slots["runs"])
    return say(f"{part.key}.size" + (f".{case}" if case else ""), **slots)


def ended(part, say):
    """With what threads it is sold, where gas or air comes in and goes out; nothing where it has none."""
    sizes = part.slots.get("sizes", (part.slots["pipe"],))
    if part.key in INTO_BRANCH:
        sizes = (making.BRANCH,)
    found = making.HOSE_ENDS[shop_of(say.unit_system)] if part.key == "hose" else making.ENDS.get(part.key, ())
    sizes = sizes[::-1] if part.key == "bushing" else sizes  # the way the gas goes: in at the narrow end
    told = [say(f"ends.{end}", size=size) for end, size in zip(found, (sizes[0], sizes[-1]))]
    slots = {"first": told[0], "last": told[-1]} if told else {}
    if part.case.startswith("tube"):
        return say(f"ends.of.{part.key}.tube")
    if f"ends.of.{part.key}" in say.words:
        return say(f"ends.of.{part.key}", **slots)
    if not told:
        return ""
    return told[0] if len(told) == 1 else say("ends.alike" if told[0] == told[1] else "ends.two", **slots)


def gas_train_table(train: Train, lighting: Lighting, fires: Fires, stopped: bool, say: Say) -> tuple:
    unlit = stopped or lighting.waits_W is None
    return tuple(
        (
            number,
            say(part.stretch),
            named(part, say),
            sized(part, say, unlit, fires.low is not None),
            ended(part, say),
            say(part.purpose),
            part.price,
            _does(part, say),
        )
        for number, part in enumerate(train.parts, 1)
    )


def train_drawing(train: Train, say: Say, text_mm: float | None) -> Shapes:
    """Gas down the left, air down the right; they meet in the mixing tee, and the mixture goes down to the burner."""
    text = text_mm or TEXT_MM
    step = max(STEP_MM, LINE * text)
    numbers = {id(part): number for number, part in enumerate(train.parts, 1)}
    stretches = {name: [p for p in train.parts if p.stretch == name] for name in ("gas", "air", "mixture")}
    start = "cylinder" if train.from_cylinder else "line"
    meet = -step * (max(len(stretches["gas"]), len(stretches["air"])) + 1)
    meet -= max(0.0, 2 * text + 5.0 - step)  # the tee's name stands between the line and the row above
    gas = [_end(say(start)), *_boxes(stretches["gas"], numbers, say)]
    mouth, *air = _boxes(stretches["air"], numbers, say)  # the guard stands before the blower
    air = [mouth, _end(say("blower")), *air]
    # No name of the gas side reaches the line of the air.
    air_x = max(COLUMN_MM, *(shape_box(_name(BRANCH_MM * box.branch, 0.0, box, text))[2] + 2 * BOX_MM for box in gas))
    tee, *mixture = [*_boxes(stretches["mixture"], numbers, say), _end(say("burner"))]
    half, below = BOX_MM / 2, meet - step
    shapes = [
        *_chain(0.0, 0.0, gas, meet + half, text, step),
        *_chain(air_x, 0.0, air, meet, text, step),
        *_box(0.0, meet, tee),
        _name(0.0, meet + text / 2 + 2.4, tee, text),  # above the line that the air comes by
        Line(half, meet, air_x, meet, "window"),
        *_chain(0.0, below, mixture, below - step * (len(mixture) - 1), text, step, first=meet - half),
    ]
    return Shapes(tuple(shapes))


@dataclass(frozen=True)
class _Box:
    """`branch`: it stands beside the line; `on_box`: on the branch of the one above it; `loose`: between others."""

    name: str
    number: str
    layer: str
    branch: bool
    on_box: bool
    loose: bool = False


def _end(name):
    return _Box(name, "", "body", False, False)


def _boxes(parts, numbers, say):
    """Safety is drawn thick, what the burner needs thin, comfort dashed."""
    layers = {"safety": "body", "needed": "window", "comfort": "hidden"}
    return [
        _Box(
            named(part, say),
            str(numbers[id(part)]),
            layers[part.purpose],
            part.key in BRANCHES or part.key in LOOSE,
            part.key in ON_BRANCH,
            part.key in LOOSE,
        )
        for part in parts
    ]


def _name(x, y, box, text):
    """Number and name beside a box whose middle that is."""
    return Text(x + BOX_MM, y - text / 2, f"{box.number}. {box.name}" if box.number else box.name, text)


def _box(x, y, box):
    """The box, its middle at x and y."""
    half = BOX_MM / 2
    return [rectangle(x - half, y - half, BOX_MM, BOX_MM, box.layer)]


def _chain(x, top, boxes, bottom, text, step, first=None):
    """Boxes one under the other on a line from `first` or the first of them to `bottom`; names at the right."""
    shapes, from_y = [], first
    for row, box in enumerate(boxes):
        y, middle = top - step * row, x + BRANCH_MM * box.branch
        half = BOX_MM / 2
        shapes += [*_box(middle, y, box), _name(middle, y, box, text)]
        if box.on_box:
            shapes.append(Line(middle, y + step - half, middle, y + half, "window"))
        elif box.loose:
            continue
        elif box.branch:
            shapes.append(Line(x, y, middle - half, y, "window"))
        else:
            if from_y is not None:
                shapes.append(Line(x, from_y, x, y + half, "window"))
            from_y = y - half
    if from_y > bottom:
        shapes.append(Line(x, from_y, x, bottom, "window"))
    return shapes
