"""What is set to light, at low and at high fire, as gauge and slide show it, and to which of them nobody may turn."""

from dataclasses import dataclass

from ..catalogue.sentences import Said, said
from .damper_marks import DamperMarks
from .lighting import Lighting
from .lighting_air import LightingAir
from .lighting_slide import LightingSlide
from .lighting_steps import LightingSteps
from .turning import Turning


@dataclass(frozen=True)
class Fire:
    """`damper`: how its slide stands, by its hole or `size_m`, None where that is no size."""

    rate_W: float
    gas_Pa: float | None
    damper: Said
    size_m: float | None


@dataclass(frozen=True)
class Fires:
    """None where it is not lit, or where nobody may turn to it. `dim`: it stays as it is lit, for the walls never glow;
    `straight`: from there to high fire, past low fire. `low_mark`: of its slide, or that there is none."""

    light: Fire | None
    low: Fire | None
    high: Fire | None
    dim: bool
    straight: bool
    low_mark: Said


def fires(
    lighting: Lighting,
    lighting_slide: LightingSlide,
    lighting_air: LightingAir,
    lighting_steps: LightingSteps,
    damper_marks: DamperMarks,
    turning: Turning,
) -> Fires:
    slide = lighting_slide
    low, high = (
        Fire(step.rate_W, step.gas_Pa, step.damper, size_m)
        for step, size_m in ((lighting_steps.low, damper_marks.low_m), (lighting_steps.high, damper_marks.high_m))
    )
    dim, straight = _dim(lighting, lighting_air), turning.straight is not None
    if lighting.waits_W is None:
        return Fires(None, None, None, dim, straight, said("never"))
    light = low if lighting.way == "torch" else None
    if slide.rate_W is not None and slide.gas_Pa is not None:
        light = Fire(slide.rate_W.value, slide.gas_Pa.value, slide.mark, slide.size_m)
    up = turning.straight or turning.to_high
    leads_up = turning.held_W is None and up is not None and up.first
    leads_down = to_low(lighting, lighting_air, turning)
    return Fires(
        light,
        low if leads_down else None,
        high if leads_up and not dim else None,
        dim,
        straight,
        low.damper if leads_down else said("no_low"),
    )


def to_low(lighting: Lighting, lighting_air: LightingAir, turning: Turning) -> bool:
    """Whether it is lit and may be turned to low fire."""
    return lighting.waits_W is not None and not _dim(lighting, lighting_air) and turning.straight is None


def _dim(lighting, lighting_air):
    return lighting.glows and lighting_air.wait_s is None
