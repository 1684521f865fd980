"""What is set to light, at low and at high fire, as gauge and slide show it, and to which of them nobody may turn."""

from dataclasses import dataclass

from ..catalogue.sentences import Said, said
from .damper_marks import DamperMarks
from .firing import Firing
from .holding import Holding
from .lighting import Lighting
from .lighting_air import LightingAir
from .lighting_slide import LightingSlide
from .lighting_steps import LightingSteps
from .tries import Tries
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
    `straight`: from there to high fire, past low fire. `low_mark`: of its slide, or that there is none.
    `gas_alone`: from lighting to low fire the slide stays as it is. `lip_back`: lit so, it may run back into a lip that
    glows; `hot_back`: low, high or low_high, those of them that may run back hot, below `back_W`, the careful rate."""

    light: Fire | None
    low: Fire | None
    high: Fire | None
    dim: bool
    straight: bool
    low_mark: Said
    gas_alone: bool = False
    lip_back: bool = False
    hot_back: str = ""
    back_W: float | None = None


def fires(
    lighting: Lighting,
    lighting_slide: LightingSlide,
    lighting_air: LightingAir,
    lighting_steps: LightingSteps,
    damper_marks: DamperMarks,
    turning: Turning,
    firing: Firing,
    holding: Holding,
    tries: Tries,
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
    leads_up = leads_up and not dim
    back_W = holding.hot_W.high if holding.hot_W else 0.0
    rates = (("low", leads_down, firing.low_W), ("high", leads_up, firing.rate_W))
    return Fires(
        light,
        low if leads_down else None,
        high if leads_up else None,
        dim,
        straight,
        low.damper if leads_down else said("no_low"),
        gas_alone=leads_down and _gas_alone(slide, damper_marks, turning.to_low),
        lip_back=_lip_back(lighting, slide, tries),
        hot_back="_".join(name for name, led_to, rate_W in rates if led_to and rate_W < back_W),
        back_W=back_W or None,
    )


def _gas_alone(slide, damper_marks, turn):
    shut = slide.kind == "hole" and damper_marks.low_m == 0.0
    return bool(turn) and bool(turn.first) and turn.steps == 1 and (shut or slide.mark == damper_marks.low)


def _lip_back(lighting, slide, tries):
    if slide.rate_W is not None:
        return not slide.stays
    return tries.at(lighting.waits_ratio).glowing_W > lighting.waits_W


def to_low(lighting: Lighting, lighting_air: LightingAir, turning: Turning) -> bool:
    """Whether it is lit and may be turned to low fire."""
    return lighting.waits_W is not None and not _dim(lighting, lighting_air) and turning.straight is None


def _dim(lighting, lighting_air):
    return lighting.glows and lighting_air.wait_s is None
