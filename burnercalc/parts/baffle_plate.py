"""The baffle as the mixture meets it: a perforated plate across the whole plenum."""

from dataclasses import dataclass

from ..physics import plates
from .face import Face
from .plenum import Plenum

LEAST_EVENING_LOSS = 0.7  # loss on the velocity head below which a screen evens nothing out; common practice


@dataclass(frozen=True)
class BafflePlate:
    """All None without a baffle. `loss_K`: on the velocity head of the mixture onto the plate."""

    area_m2: float | None
    open_fraction: float | None
    loss_K: float | None
    unevenness_left: float | None


def baffle_plate(
    face: Face,
    plenum: Plenum,
    baffle_holes: int,
    baffle_hole_diameter: float,
    baffle_thickness: float,
    baffle_bend_angle: float,
) -> BafflePlate:
    if not baffle_holes:
        return BafflePlate(None, None, None, None)
    bent = 1.0 if face.round else plates.bent_plate_ratio(baffle_bend_angle)
    area = plenum.width_m * plenum.length_m * bent
    open_fraction = plates.open_fraction(baffle_holes, baffle_hole_diameter, area)
    loss = plates.plate_K(open_fraction, baffle_thickness / baffle_hole_diameter)
    left = plates.unevenness_left(loss) if loss >= LEAST_EVENING_LOSS else 1.0
    return BafflePlate(area, open_fraction, loss, left)
