"""The design in question as one of the search, so that nothing is found which is worse than what somebody has.

Its things must lie there or be sold, as the menus have them; what takes nothing from the shop is as it is set. A fire
that is less than the chamber needs becomes the least that is enough, but where only the less is without a fault.
"""

from dataclasses import replace

from ..design import parsed
from .choices import Asked, Axis, Option, enough_fire, from_stick_m, jet_as_set
from .space import Node, Space

# Settings of an axis that are sizes of things, where these are not its stock; what is cut or welded to size is none.
THINGS = {"inlet": ("inlet",), "mix pipe": ("mix_pipe",)}
CUT = {"plates": ("body_kind", "wall"), "pipe": ("body_kind", "body_width", "wall")}


def in_question(space: Space) -> Node | None:
    """The whole node of the design in question; None where something of it neither lies there nor is sold."""
    raised = _made(space, True)
    if space.mine.keys() & {"firing_rate"} or enough_fire(space.asking(space.root)):
        return raised
    with space.counts.at_most(len(space.axes)):
        as_set = _made(space, False)
        if raised is None or as_set is None:
            return raised or as_set
        for node in (raised, as_set):
            space.settle(node)
        return min(raised, as_set, key=lambda node: (node.stops, node.cautions))
    return raised


def _made(space: Space, raised: bool) -> Node | None:
    node: Node | None = space.root
    for axis in space.axes:
        one = _as_set(space, node, axis, raised) if node else None
        node = space.child(node, one) if node and one else None
    return node


def _as_set(space: Space, node: Node, axis: Axis, raised: bool) -> Option | None:
    start, menu, asked = space.start, space.menu(node), space.asking(node)
    own = {key: start.text(key) for key in axis.keys}
    if not menu:
        return None
    if same := [one for one in menu if space.keeps(one, axis.keys)]:
        if axis.name == "body":  # of a piece of which it comes out, if there is one
            same.sort(key=lambda one: not _long_enough(asked, one))
        return replace(same[0], spare=False)
    match axis.name:
        case "fire":
            if raised and not space.mine.keys() & {"firing_rate"} and not enough_fire(asked):
                return next((one for one in menu if space.keeps(one, ("burner_count",))), None)
        case "length":
            if start.body_kind != "pipe" and start.body_length > from_stick_m(asked) + 1e-9:
                return None
        case "jet":
            return jet_as_set(asked)
        case "cylinder":
            return None
    if things := THINGS.get(axis.name, axis.stock):
        things = CUT.get(start.body_kind, things) if axis.name == "body" else things
        there = [one for one in menu if space.keeps(one, things)]
        # At hand before bought, and the largest piece; but before all one of which the body comes out.
        there.sort(key=lambda one: (bool(one.buy), *(-size for _, size in one.figures)))
        there.sort(key=lambda one: axis.name == "body" and not _long_enough(asked, one))
        return replace(there[0], texts=tuple({**dict(there[0].texts), **own}.items()), spare=False) if there else None
    return Option(tuple(own.items()))


def _long_enough(asked: Asked, one: Option) -> bool:
    """Whether a body as long as in question comes out of the piece of an option."""
    start, values = asked.start, {**asked.values, **{key: parsed(key, text) for key, text in one.texts}}
    if values["body_kind"] == "pipe":
        return True
    return start.body_length <= from_stick_m(replace(asked, values=values, figures=dict(one.figures))) + 1e-9
