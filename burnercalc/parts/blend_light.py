"""Whether mark and pressure to light with hold for all of a blend's gases, or from which filling on."""

from dataclasses import dataclass, fields, replace

from .back_pressure import BackPressure
from .blend import Blend, blend_down_to
from .blower import Blower
from .burnt_gas import burnt_gas
from .chamber import Chamber
from .fired_heat_up import fired_heat_up
from .firing import Firing
from .gas import Gas
from .gas_line import GasLine
from .gauges import gauges
from .holding import Holding
from .jet import Jet
from .lighting import Lighting, lighting
from .lighting_slide import LightingSlide, lighting_slide
from .lighting_try import LightingTry, lighting_try
from .lighting_width import lacks_to_light
from .pilot import Pilot
from .resistance import Resistance
from .shop import Shop
from .tries import Tries
from .turning import turning
from .zone import Zone

TRIED = tuple(tenth / 10 for tenth in range(1, 10))  # of a full charge, left when they are changed
# How well it is lit: not at all, though it may run back into a lip that glows, not as set, or not where a hand misses.
NONE, LIT, AS_SET, MISSED = range(4)


@dataclass(frozen=True)
class BlendLight:
    """All None of a gas that stays what it is. `first`, `last`: mixtures that the mark to light comes to with the first
    gas of a full charge and the last that is burned, None where it is not lit. `holds`: one of the above; `alone`: the
    same were the gas the mean of the charge throughout. `enough`: the least share left of TRIED, more than as set, at
    which it holds as well as that alone, a hand sets it and nothing forbids to light; None where none does or need."""

    first: float | None
    last: float | None
    holds: int | None
    alone: int | None
    enough: float | None


def blend_light(
    equivalence_ratio: float,
    chamber_temperature: float,
    low_fire: float,
    lining: tuple[tuple[str, float], ...],
    opening_area: float,
    opening_depth: float,
    chamber_back_pressure: float,
    burner_count: int,
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
    holding: Holding,
    pilot: Pilot,
    zone: Zone,
    back_pressure: BackPressure,
) -> BlendLight:
    """By the flame alone, lit and turned on from there: what else forbids it is judged elsewhere, but with the share
    that is told."""
    if blend.first is None or blend.last is None:
        return BlendLight(None, None, None, None, None)

    def lit(by: Blend) -> tuple[int, LightingSlide, bool]:
        """How well, with what, and whether a hand sets that."""
        there = replace(tries, blend=by)
        found = lighting_try(equivalence_ratio, chamber_temperature, firing, jet, there)
        as_lit = Lighting(**{field.name: getattr(found, field.name) for field in fields(LightingTry)})
        read = gauges(low_fire, sizes, small_gauge, gas_line, jet, as_lit)
        slide = lighting_slide(sizes, lit_by, slide_hole, gas_line, read, blower, resistance, as_lit, there)
        sets = not lacks_to_light(slide, read, None, slide_hole, gas.blended and not gas_line.there)
        if slide.rate_W is None or slide.room_Pa < read.mark_Pa or slide.fails[0] == "lost":
            return NONE, slide, sets
        kept = burnt_gas(chamber, shop, found, there).keeps
        if not kept or not turning(equivalence_ratio, firing, found, there).goes_on:
            return NONE, slide, sets
        return MISSED if slide.stays else AS_SET if slide.fails[0] == "back" else LIT, slide, sets

    def does(share: float) -> bool:
        by = blend_down_to(share, gas, shop)
        held, _, sets = lit(by)
        if not sets or held < max(alone, LIT if lit_by == "guard" else AS_SET):
            return False
        there = replace(tries, blend=by)
        found = lighting_try(equivalence_ratio, chamber_temperature, firing, jet, there)
        kept, turned = burnt_gas(chamber, shop, found, there), turning(equivalence_ratio, firing, found, there)
        opening = opening_area, opening_depth
        heats_up = fired_heat_up(
            zone, chamber, gas, shop, firing, found, turned, back_pressure, lining, *opening, burner_count,
            chamber_temperature,
        )  # fmt: skip
        ways = burner_count, lit_by, slide_hole, equivalence_ratio, chamber_back_pressure
        supply = gas, by, gas_line, shop, firing, pilot, holding, jet
        flows = found, back_pressure, blower, resistance, kept, turned, heats_up
        return lighting(*ways, *supply, *flows).rate_W is not None

    (holds, slide, sets), (alone, *_) = lit(blend), lit(Blend(blend.left_share))
    first = last = enough = None
    if slide.ratio is not None:
        first, last = (slide.ratio.value * one.ratio_times for one in blend.ends)
    if (holds < alone or not sets) and not gas_line.there:
        enough = next((share for share in TRIED if share > blend.left_share and does(share)), None)
    return BlendLight(first, last, holds, alone, enough)
