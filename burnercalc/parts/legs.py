"""The two legs from the tee to the inlets: their lengths, and where their unions have room. None with one inlet."""

from dataclasses import dataclass

from ..making import legs as making
from .body import Body
from .steel import Steel


@dataclass(frozen=True)
class Legs:
    """`leg_m`: from the middle of the tee to the middle of an elbow; `least_m`: what its fittings take; `nipple_m`: the
    last nipple before the elbow, None where none goes between; `over_m`: of the legs' middle over the back;
    `union_upright`: the unions stand over the inlets; `body_m`: the shortest body whose legs can be screwed together;
    `web_m`: steel between the holes.
    """

    leg_m: float | None
    least_m: float | None
    nipple_m: float | None
    over_m: float | None
    union_upright: bool
    body_m: float | None
    web_m: float | None


def legs(body: Body, steel: Steel, mix_pipe: str, inlet: str, inlet_length: float) -> Legs:
    if steel.inlet_spacing_m is None:
        return Legs(None, None, None, None, False, None, None)
    leg_m, least_m = steel.inlet_spacing_m / 2, making.least_leg_m(mix_pipe=mix_pipe, inlet=inlet)
    union_m, spare_m = making.union_m(inlet), leg_m - least_m
    upright = spare_m < union_m
    over_m = inlet_length - making.thread_m(inlet) + making.middle_to_end_m(inlet)
    left_m = spare_m - (0.0 if upright else union_m)
    return Legs(
        leg_m=leg_m,
        least_m=least_m,
        nipple_m=making.close_nipple_m(inlet) + left_m if left_m >= 0 else None,
        over_m=over_m + (union_m if upright else 0.0),
        union_upright=upright,
        body_m=4 * least_m + 2 * body.cap_m,
        web_m=steel.inlet_spacing_m - steel.inlet_saw_m,
    )
