"""Whether mark and pressure to light with hold for all of a blend's gases, or from which filling on."""

from dataclasses import dataclass, fields, replace

from .blend import Blend, blend_down_to
from .blower import Blower
from .burnt_gas import burnt_gas
from .chamber import Chamber
from .firing import Firing
from .gas import Gas
from .gas_line import GasLine
from .gauges import gauges
from .jet import Jet
from .lighting import Lighting
from .lighting_slide import LightingSlide, lighting_slide
from .lighting_try import LightingTry, lighting_try
from .resistance import Resistance
from .shop import Shop
from .tries import Tries
from .turning import turning

TRIED = tuple(tenth / 10 for tenth in range(1, 10))  # of a full charge, left when they are changed
# How well it is lit: not at all, though it may run back into a lip that glows, not as set, or not where a hand misses.
NONE, LIT, AS_SET, MISSED = range(4)


@dataclass(frozen=True)
class BlendLight:
    """All None of a gas that stays what it is. `first`, `last`: mixtures that the mark to light comes to with the first
    gas of a full charge and the last that is burned, None where it is not lit. `holds`: one of the above; `alone`: the
    same were the gas the mean of the charge throughout. `enough`: share left, more than as set, from which on it holds
    as well as that alone; None where none of TRIED does or none need."""

    first: float | None
    last: float | None
    holds: int | None
    alone: int | None
    enough: float | None


def blend_light(
    equivalence_ratio: float,
    chamber_temperature: float,
    low_fire: float,
    sizes: str,
    lit_by: str,
    slide_hole: str | None,
    small_gauge: float | str,
    chamber: Chamber,
    gas: Gas,
    blend: Blend,
    gas_line: GasLine,
    shop: Shop,
    firing: Firing,
    jet: Jet,
    blower: Blower,
    resistance: Resistance,
    tries: Tries,
) -> BlendLight:
    """By the flame alone, lit and turned on from there: what else forbids it is judged elsewhere."""
    if blend.first is None or blend.last is None:
        return BlendLight(None, None, None, None, None)

    def lit(by: Blend) -> tuple[int, LightingSlide]:
        there = replace(tries, blend=by)
        found = lighting_try(equivalence_ratio, chamber_temperature, firing, jet, there)
        as_lit = Lighting(**{field.name: getattr(found, field.name) for field in fields(LightingTry)})
        read = gauges(low_fire, sizes, small_gauge, gas_line, jet, as_lit)
        slide = lighting_slide(sizes, lit_by, slide_hole, gas_line, read, blower, resistance, as_lit, there)
        if slide.rate_W is None or slide.room_Pa < read.mark_Pa or slide.fails[0] == "lost":
            return NONE, slide
        kept = burnt_gas(chamber, shop, found, there).keeps
        if not kept or not turning(equivalence_ratio, firing, found, there).goes_on:
            return NONE, slide
        return MISSED if slide.stays else AS_SET if slide.fails[0] == "back" else LIT, slide

    (holds, slide), (alone, _) = lit(blend), lit(Blend(blend.left_share))
    first = last = enough = None
    if slide.ratio is not None:
        first, last = (slide.ratio.value * one.ratio_times for one in blend.ends)
    if holds < alone and not gas_line.there:
        more = (share for share in TRIED if share > blend.left_share)
        enough = next((share for share in more if lit(blend_down_to(share, gas, shop))[0] >= alone), None)
    return BlendLight(first, last, holds, alone, enough)
