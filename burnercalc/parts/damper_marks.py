"""The damper's marks LOW and HIGH as a hand can set them: how far its slide is open, the hole to light at beside it."""

from dataclasses import dataclass

from ..catalogue.sentences import Said, said
from ..making import slide
from .blower import Blower
from .hand import DRAWER_M
from .lighting_slide import FAMILIES, LightingSlide, near
from .resistance import Resistance

NEARLY = 0.99  # of the pipe's area: as good as open; common practice


@dataclass(frozen=True)
class DamperMarks:
    """`low_m`, `high_m`: gaps of the slide, 0 where its hole is enough; None where it is fully open or too weak."""

    low_m: float | None
    high_m: float | None
    low: Said
    high: Said


def damper_marks(sizes: str, blower: Blower, resistance: Resistance, lighting_slide: LightingSlide) -> DamperMarks:
    (low_m, low), (high_m, high) = (
        gap(1.0 if share is None and blower.carries else share, sizes, resistance, lighting_slide)
        for share in (blower.open_low, blower.open_high)
    )
    return DamperMarks(low_m, high_m, low, high)


def gap(
    share: float | None, sizes: str, resistance: Resistance, lighting_slide: LightingSlide
) -> tuple[float | None, Said]:
    """How far the slide is open for an open share, beside its hole, and how that is said; as in DamperMarks."""
    bore_m = resistance.mix_pipe.bore_m
    hole_m = lighting_slide.size_m or 0.0 if lighting_slide.kind == "hole" else 0.0
    if share is None:
        return None, said("weak")
    if share >= NEARLY:
        return None, said("full")
    gap_m = slide.gap_m(bore_m, share, hole_m)
    if not gap_m:
        return 0.0, said("shut")
    if gap_m > DRAWER_M:
        return gap_m, said("rule", size=gap_m)
    drill = near(gap_m, FAMILIES[sizes])[0]
    named = drill.family in ("number", "letter")
    return drill.diameter_m, said("gap_named" if named else "gap", drill=drill.name, size=drill.diameter_m)
