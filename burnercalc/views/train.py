"""The gas and air train as a list and as a drawing in the order of flow."""

from ..catalogue.sentences import pipe_size
from ..drawing.shapes import Line, Text, rectangle
from ..parts.train import Train
from .view import Say, Shapes

TEXT_MM = 2.6
BOX_MM, STEP_MM, COLUMN_MM = 7.0, 11.0, 74.0


def named(part, say: Say) -> str:
    name = say(f"{part.key}.name")
    return say("pieces", count=part.count, name=name) if part.count > 1 else name


def sized(part, say):
    slots = dict(part.slots)
    if "sizes" in slots:
        *first, last = (pipe_size(size, say.unit_system) for size in slots["sizes"])
        slots["path"] = say("to").join((*(size.removesuffix(" in") for size in first), last))
    return say(f"{part.key}.size" + (f".{part.case}" if part.case else ""), **slots)


def gas_train_table(train: Train, say: Say) -> tuple:
    return tuple(
        (
            number,
            say(part.stretch),
            named(part, say),
            sized(part, say),
            say("safety" if part.safety else "comfort"),
            part.price,
            say(f"{part.key}.why"),
        )
        for number, part in enumerate(train.parts, 1)
    )


def train_drawing(train: Train, say: Say) -> Shapes:
    """Gas down the left, air down the right; they meet, and the mixture goes down to the burner."""
    numbers = {id(part): number for number, part in enumerate(train.parts, 1)}
    stretches = {name: [p for p in train.parts if p.stretch == name] for name in ("gas", "air", "mixture")}
    start = "cylinder" if train.from_cylinder else "line"
    rows = max(len(stretches["gas"]), len(stretches["air"])) + 1
    shapes = []
    for x, name, first in ((0.0, "gas", start), (COLUMN_MM, "air", "blower")):
        shapes += _chain(x, 0.0, [(say(first), "", True)] + _labels(stretches[name], numbers, say))
        last = -STEP_MM * len(stretches[name])
        shapes.append(Line(x, last - BOX_MM / 2, x, -STEP_MM * rows, "window"))
    meet = -STEP_MM * rows
    shapes.append(Line(0.0, meet, COLUMN_MM, meet, "window"))
    down = _labels(stretches["mixture"], numbers, say) + [(say("burner"), "", True)]
    shapes.append(Line(0.0, meet, 0.0, meet - STEP_MM + BOX_MM / 2, "window"))
    shapes += _chain(0.0, meet - STEP_MM, down)
    return Shapes(tuple(shapes))


def _labels(parts, numbers, say):
    return [(named(part, say), str(numbers[id(part)]), part.safety) for part in parts]


def _chain(x, top, labels):
    """Boxes one under the other on a line, safety drawn thick, comfort dashed; names at the right."""
    shapes = []
    for row, (name, number, safety) in enumerate(labels):
        y = top - STEP_MM * row
        layer = "body" if safety else "hidden"
        shapes.append(rectangle(x - BOX_MM / 2, y - BOX_MM / 2, BOX_MM, BOX_MM, layer))
        if number:
            shapes.append(Text(x, y - TEXT_MM / 2, number, TEXT_MM, "middle", 0.0, "number"))
        shapes.append(Text(x + BOX_MM, y - TEXT_MM / 2, name, TEXT_MM))
        if row + 1 < len(labels):
            shapes.append(Line(x, y - BOX_MM / 2, x, y - STEP_MM + BOX_MM / 2, "window"))
    return shapes
