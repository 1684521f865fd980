"""The verdicts of the room Fire: one function a check, named <key>_check."""

from math import inf

from ..making.days import COLD_TEMP_K, FREEZE_TEMP_K
from ..parts.gas import Gas
from ..parts.lighting import Lighting
from ..parts.lighting_card import LightingCard
from ..parts.lighting_slide import LightingSlide
from ..parts.shop import Shop
from .judge import Judged, judge, ladder, verdict

RUN_UP_BORES = 40.0  # of mix pipe, in which a flame gathers speed; common practice
LESS_AIR = (("blower_free_flow", "lower"), ("blower_shutoff_pressure", "lower"), ("mix_pipe", "lower"))
LESS_GAS = (("jet_drill", "choose"), ("gas_pressure", "raise"))
BETTER_PORTS = (("ports_per_row", "raise"), ("rows", "raise"), ("port_diameter", "lower"), ("body_depth", "raise"))
STRONGER = (("port_diameter", "raise"), ("ports_per_row", "raise"), ("rows", "raise"))
LIGHTING_CURES = {
    "caution": (*STRONGER, ("block_thickness", "raise")),
    "torch": BETTER_PORTS,
    "gas": LESS_GAS,
    "damper": LESS_AIR,
    "gas_and_damper": (("ports_per_row", "raise"), *LESS_GAS, *LESS_AIR),
    "gas_line": STRONGER,
    "gas_and_damper_line": (*STRONGER, *LESS_AIR),
    "no_room": BETTER_PORTS,
    "too_slow": (("ports_per_row", "lower"), ("port_diameter", "lower"), ("firing_rate", "raise")),
}


def lighting_check(lighting: Lighting, gas: Gas) -> Judged:
    slots = lighting.advice.slots
    if lighting.rate_W is not None:
        case = "caution" if not lighting.stays else "note" if lighting.close else "good"
        return verdict(case, lighting.rate_W.value, lighting.lift_W, cures=LIGHTING_CURES.get(case, ()), **slots)
    # A line's pressure is given, so a smaller jet that wants more of it is no way out.
    weak_line = gas.liquid is None and lighting.way in ("gas", "gas_and_damper")
    case = f"{lighting.way}_line" if weak_line else lighting.way
    return verdict(
        "caution" if lighting.way == "torch" else "stop",
        None,
        lighting.lift_W,
        case=case,
        cures=LIGHTING_CURES.get(case, ()),
        **slots,
    )


def lighting_by_hand_check(lighting_slide: LightingSlide, gas: Gas) -> Judged | None:
    """Whether a hand hits the mixture to light with; None where there is none."""
    slide = lighting_slide
    if slide.ratio is None:
        return None
    held = all(slide.held)
    return verdict(
        "good" if held else "caution",
        slide.ratio.value,
        None,
        cures=() if held else (*STRONGER, *(LESS_GAS if gas.liquid else ())),
        least=slide.ratio.low,
        most=slide.ratio.high,
        bad=slide.ratio.high if slide.held[0] else slide.ratio.low,
    )


def run_up_check(lighting_card: LightingCard) -> Judged:
    bores = lighting_card.pipe_bores
    return judge(bores, good=RUN_UP_BORES, stop=inf, bores=bores, most=RUN_UP_BORES, volume=lighting_card.standing_m3)


def curing_air_check(shop: Shop, damp_air: str) -> Judged:
    damp = damp_air == "yes"
    word = ladder(shop.temp_K, good=COLD_TEMP_K, stop=FREEZE_TEMP_K)
    case = {"good": "damp" if damp else "good", "caution": "cold", "stop": "frost"}[word]
    cures = () if word == "good" else (("ambient_temperature", "raise"),)
    return verdict(
        "caution" if case == "damp" else word,
        shop.temp_K,
        COLD_TEMP_K,
        case=case,
        cures=cures + ((("damp_air", "choose"),) if damp else ()),
        air=shop.temp_K,
        frost=FREEZE_TEMP_K,
    )
