"""The two legs from the tee to the inlets: their lengths, and where their unions have room. None with one inlet."""

from dataclasses import dataclass

from ..constants import INCH_M
from ..making import legs as making
from .body import Body
from .steel import Steel

NIPPLE_OFF_M = INCH_M / 16  # that all threads of a leg take up together; common practice


@dataclass(frozen=True)
class Legs:
    """`leg_m`: from the middle of the tee to the middle of an elbow; `least_m`: what its fittings take; `nipple_m`: the
    last nipple before the elbow, None where none goes between; `sold_m`: the nearest that is sold, `sold_body_m`: the
    body whose legs take it; `threaded`: it is too far off; `over_m`: of the legs' middle over the back;
    `union_upright`: the unions stand over the inlets; `body_m`: the shortest body whose legs can be screwed together;
    `web_m`: steel between the holes.
    """

    leg_m: float | None
    least_m: float | None
    nipple_m: float | None
    sold_m: float | None
    threaded: bool
    over_m: float | None
    union_upright: bool
    body_m: float | None
    sold_body_m: float | None
    web_m: float | None


def legs(body: Body, steel: Steel, mix_pipe: str, inlet: str, inlet_length: float, sizes: str) -> Legs:
    if steel.inlet_spacing_m is None:
        return Legs(None, None, None, None, False, None, False, None, None, None)
    leg_m, least_m = steel.inlet_spacing_m / 2, making.least_leg_m(mix_pipe=mix_pipe, inlet=inlet)
    union_m, spare_m = making.union_m(inlet), leg_m - least_m
    upright = spare_m < union_m
    over_m = inlet_length - making.thread_m(inlet) + making.middle_to_end_m(inlet)
    left_m = spare_m - (0.0 if upright else union_m)
    nipple_m = making.close_nipple_m(inlet) + left_m if left_m >= 0 else None
    sold_m = None if nipple_m is None else making.sold_nipple_m(inlet, nipple_m, sizes)
    return Legs(
        leg_m=leg_m,
        least_m=least_m,
        nipple_m=nipple_m,
        sold_m=sold_m,
        threaded=sold_m is not None and abs(sold_m - nipple_m) > NIPPLE_OFF_M,
        over_m=over_m + (union_m if upright else 0.0),
        union_upright=upright,
        body_m=4 * least_m + 2 * body.cap_m,
        sold_body_m=None if sold_m is None else body.length_m + 4 * (sold_m - nipple_m),  # a leg is a quarter of it
        web_m=steel.inlet_spacing_m - steel.inlet_saw_m,
    )
