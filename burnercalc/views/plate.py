"""The data plate and the operating card of a finished burner, to print, engrave or cut; true size, in millimetres."""

from dataclasses import replace

from ..catalogue import gases
from ..drawing.helvetica import CAP_HEIGHT_RATIO, wrapped
from ..drawing.shapes import Circle, Text, rectangle
from ..parts.blend import Blend
from ..parts.block import Block
from ..parts.blower import Blower
from ..parts.damper_marks import DamperMarks
from ..parts.fires import Fires
from ..parts.firing import Firing
from ..parts.gas_line import GasLine
from ..parts.gauges import Gauges
from ..parts.jet import Jet
from ..parts.lighting import STEADY_S, Lighting
from ..parts.lighting_air import LightingAir
from ..parts.lighting_card import PILOT_S, LightingCard
from ..parts.lighting_day import LightingDay
from ..parts.lighting_try import LIP_GLOWS_S
from ..parts.regulated import Regulated
from ..parts.resistance import Resistance
from ..parts.shop import Shop
from ..parts.turning import Turning
from .view import Say, Shapes

PLATE_MM, CARD_MM = (140.0, 112.0), (186.0, 168.0)  # A4 and Letter take either whole
PLATE_COLUMNS_MM = (8.0, 66.0, 100.0)
MARGIN_MM, LINE_MM, TITLE_MM, BOLD_MM, WORDS_MM = 8.0, 5.4, 4.0, 2.8, 2.4
UNSET = (None, None, None, None)  # rate, gas, the damper's mark and its size
HOLE_MM, CORNER_MM = 3.2, 4.0  # for a rivet or a screw, and how far in


def both(say: Say, key: str, **slots: object) -> tuple[str, str]:
    """Words in inches and in millimetres, whichever the reader has set."""
    return replace(say, unit_system="in")(key, **slots), replace(say, unit_system="mm")(key, **slots)


def plate_drawing(
    firing: Firing,
    fires: Fires,
    jet: Jet,
    block: Block,
    resistance: Resistance,
    blower: Blower,
    shop: Shop,
    altitude: float,
    lighting: Lighting,
    fuel: str,
    fuel_blend: tuple[tuple[str, float], ...] | None,
    stopped: bool,
    say: Say,
) -> Shapes:
    """Who made it and when, what gas and how much; that it is certified by nobody unless a mark says so."""
    unlit = stopped or lighting.waits_W is None
    low, high = (None if unlit else fire for fire in (fires.low, fires.high))

    full = firing.low_W >= firing.rate_W

    def rated(fire, rate_W, never):
        """As gauge and card have them, neither where nobody may turn to it or light it."""
        return both(say, "power", power=rate_W) if fire else (say("not_lit" if unlit else never), "")

    width, height = PLATE_MM
    air = {"flow": blower.high_m3_s, "temp": shop.temp_K}
    gas, *more_gas = _wrapped(_gas(fuel, fuel_blend, say), width - PLATE_COLUMNS_MM[1])
    rows = [
        (say("gas_words"), gas, ""),
        *(("", line, "") for line in more_gas),
        (say("high_words"), *rated(high, high.rate_W if high else firing.rate_W, "not_high")),
        (say("low_words"), *rated(low, low.rate_W if low and not full else firing.low_W, "not_low")),
        *(((say("jet_words"), *both(say, "gas", pressure=high.gas_Pa)),) if high else ()),
        (say("drill_words"), *_drill(jet, say)),
        *(((say("air_words"), *both(say, "air", **air)),) if high else ()),
        *(((say("height_words"), *both(say, "height", height=altitude)),) if high else ()),
        *(((say("mixture_words"), *both(say, "pressure", pressure=resistance.total_Pa)),) if high else ()),
        (say("limit_words"), *both(say, "heat", temp=block.material.service_temp_K)),
    ]
    shapes = [*_blank(width, height), *_lines([say("title")], width, height - 10.0, TITLE_MM)]
    y = height - 17.0
    for words in (say("made"), say("number")):
        shapes.append(_text(MARGIN_MM, y, words))
        y -= LINE_MM
    shapes += _table(rows, PLATE_COLUMNS_MM, y)
    y -= 1.0 + LINE_MM * len(rows)
    shapes += _lines([say("certified")], width, y, BOLD_MM)
    shapes += _lines([say("unlit" if unlit else "use")], width, shapes[-1].y - LINE_MM, WORDS_MM)
    return Shapes(tuple(shapes))


def _gas(fuel: str, fuel_blend: tuple[tuple[str, float], ...] | None, say: Say) -> str:
    """What it burns; of a blend what it was worked out for, as an analysis has it."""
    return say("blend", shares=gases.shares(fuel_blend)) if fuel_blend else say(fuel)


def _wrapped(words: str, width: float) -> list[str]:
    return wrapped(words, WORDS_MM / CAP_HEIGHT_RATIO, width - MARGIN_MM)


def _drill(jet: Jet, say: Say) -> tuple[str, str]:
    """Its size in both measures, by its name where that is none."""
    if jet.drill is None:
        return "-", ""
    inches, mm = both(say, "mm", size=jet.drill.diameter_m)
    named = jet.drill_name not in (inches, mm)
    return (f"{jet.drill_name} = {inches}" if named else inches), mm


def operating_card_drawing(
    burner_count: int,
    lit_by: str,
    firing: Firing,
    jet: Jet,
    damper_marks: DamperMarks,
    fires: Fires,
    lighting: Lighting,
    lighting_air: LightingAir,
    lighting_card: LightingCard,
    lighting_day: LightingDay,
    shop: Shop,
    gauges: Gauges,
    turning: Turning,
    regulated: Regulated,
    blower: Blower,
    fuel: str,
    fuel_blend: tuple[tuple[str, float], ...] | None,
    blend: Blend,
    gas_line: GasLine,
    cylinder: str,
    cylinder_count: int,
    stopped: bool,
    say: Say,
) -> Shapes:
    """What to set to light, at low and at high fire, and the few rules that nobody may forget."""
    card, straight = lighting_card, fires.straight

    def mark(damper, size_m):
        """Hole or gap, by its drill, or a word where there is no size to it."""
        if damper is None:
            return "-"
        if not size_m:
            return say(damper.case)
        inches, mm = both(say, "mm", size=size_m)
        told = dict.fromkeys((damper.slots.get("drill") or inches, mm))
        return say("hole" if damper.case.startswith("hole") else "gap", size=" = ".join(told))

    unlit = stopped or fires.light is None  # what must not be built is not lit either

    def set_to(fire):
        return UNSET if unlit or fire is None else (fire.rate_W, fire.gas_Pa, fire.damper, fire.size_m)

    purged = UNSET if unlit else (None, None, damper_marks.high, damper_marks.high_m)
    settings = (
        ("light", *set_to(fires.light)),
        ("low", *set_to(fires.low)),
        # Its mark is told where nobody turns it up too: it is purged there.
        ("high", *(set_to(fires.high) if fires.high else purged)),
    )
    rows = [
        (
            say(name),
            say("never" if unlit else f"not_{name}") if rate is None else " = ".join(both(say, "power", power=rate)),
            "-" if gas is None else " = ".join(both(say, "gas", pressure=gas)),
            mark(damper, size_m),
        )
        for name, rate, gas, damper, size_m in settings
    ]
    width, height = CARD_MM
    columns = (MARGIN_MM, 28.0, 82.0, 136.0)
    shapes = [*_blank(width, height), *_lines([say("title")], width, height - 10.0, TITLE_MM)]
    y = height - 17.0
    for line in _wrapped(say("burner", gas=_gas(fuel, fuel_blend, say)), width - MARGIN_MM):
        shapes.append(_text(MARGIN_MM, y, line))
        y -= LINE_MM
    head = (say("at"), say("rate_words"), say("gas_words"), say("open_words"))
    shapes += _table([head, *rows], columns, y)
    y -= LINE_MM * (len(rows) + 1) + 1.0
    guarded, source = lit_by == "guard", gas_line.source(cylinder, cylinder_count)
    of_it = f"{source}.guard" if guarded else source
    holed = not unlit and fires.light.damper is not None and fires.light.damper.case.startswith("hole")
    lit = {"opened": say(f"opened.{of_it}"), "hiss": card.hiss_s, "pilot": PILOT_S}
    slots = {
        **lit,
        "where": say(f"where.{lighting_air.where}"),
        "purge": card.purge_s,
        "cleared": say("cleared.wide" if card.wide else "cleared.high"),
        "snap": say("snap.guard" if guarded else "snap", **lit),
        "run_on": card.run_on_min,
        "steady": STEADY_S,
        "blower": say("blower.several" if burner_count > 1 and blower.burners == 1 else "blower"),
        "damper": say("damper.several" if burner_count > 1 else "damper"),
        "hot": say("hot" if lighting.glows else "hot.cool"),
        "keeper_name": "pilot" if guarded else "torch",
        "cocks": say("cocks" if burner_count > 1 else "cock_alone"),
        "source": say(f"source.{source}"),
        "behind": say(f"behind.{of_it}"),
        "scale": gauges.lit_by_Pa,
        "switches": say("switches.line" if gas_line.there else "switches"),
        "keeper": "" if guarded else say(f"keeper.{lit_by}"),
        "others": say(f"others.{lit_by}" + (".several" if burner_count > 1 else "")),
        "air": _air(lighting_day, shop, say),
        "drawn": say("drawn", left=blend.left_share) if blend.ends else "",
        "jet": jet.drill_name or "-",
        "gauge": say(f"gauge.{gauges.kind}", scale=gauges.lit_by_Pa),
        "hole": fires.light.damper.slots["drill"] if holed else "",
        "put_out": say("put_out.pilot" if guarded else "put_out.torch"),
        "outlet": " = ".join(both(say, "gas", pressure=regulated.outlet_Pa)),
        "at": say("and").join(_listens(fires, say)),
        "to_low": say("way.gas_alone") if fires.gas_alone else _way(turning.to_low, say),
        "to_high": say("way.same")
        if firing.low_W >= firing.rate_W and fires.low
        else _way(turning.straight or turning.to_high, say),
    }
    up = turning.to_high
    slots["down"] = say(f"down.{up.first}") if up and up.first and firing.low_W < firing.rate_W else ""
    turns = "turns" if lighting.glows else "turns_cool" if fires.high else "turns_low"
    turns = ("turns_straight" if lighting.glows else "turns_straight_cool") if straight else turns
    lighting_step = "flame_guard" if guarded else "flame"
    steps = ["before", "purge", lighting_step, "out", turns, "stop", "fails", "smell", "check"]
    if burner_count > 1:
        steps[3:4] = ["out_several", "several"]
    if unlit:
        steps[1 : steps.index("stop")] = ["unlit"]
    else:
        steps[:0] = ["air.hole" if holed else "air", "slide"]
        if gauges.small and (gauges.by_line or jet.supply_Pa > gauges.read_to_Pa):
            words = "cock_straight" if straight else "cock" if gauges.reads_low else "cock_low"
            words += ".tube" if gauges.by_line else ""
            steps.insert(steps.index("stop"), words)
        if _listens(fires, say):
            steps.insert(steps.index("stop"), "listen")
        if regulated.low and not gas_line.there:
            steps.insert(steps.index(lighting_step), "regulator")
        if regulated.to_light and not gas_line.there:
            steps.insert(steps.index(lighting_step), "regulator_light")
    shapes += _lines([say(step, **slots) for step in steps], width, y, WORDS_MM)
    return Shapes(tuple(shapes))


def _listens(fires, say):
    """Where it may run back."""
    light = [say("listen.light", glows=LIP_GLOWS_S)] if fires.lip_back else []
    return [*light, *([say(f"listen.{fires.hot_back}")] if fires.hot_back else [])]


def _air(day, shop, say):
    """In which air LIGHT holds, or for which it is worked out."""
    if day.air_K is None:
        return " = ".join(both(say, "air_own", own=shop.temp_K))
    return " = ".join(both(say, "air_span", least=day.air_K.low, most=day.air_K.high))


def _way(turn, say):
    """Which valve goes first, in how many steps; as the lighting card says it."""
    if turn is None or not turn.first:
        return say("way.none")
    return say(f"way.{turn.first}", count=turn.steps, steps=say("steps", steps=turn.steps) if turn.steps > 1 else "")


def _blank(width, height):
    """The outline, and a hole in each corner."""
    holes = [(x, y) for x in (CORNER_MM, width - CORNER_MM) for y in (CORNER_MM, height - CORNER_MM)]
    return [rectangle(0.0, 0.0, width, height, "cut"), *(Circle(x, y, HOLE_MM / 2, "cut") for x, y in holes)]


def _text(x, y, words, height=WORDS_MM):
    return Text(x, y, words, height, "start", 0.0, "engrave")


def _table(rows, columns, y):
    return [_text(x, y - LINE_MM * i, cell) for i, row in enumerate(rows) for x, cell in zip(columns, row) if cell]


def _lines(texts, width, y, height):
    """Texts one under the other, each wrapped to the width."""
    shapes = []
    for words in texts:
        for line in wrapped(words, height / CAP_HEIGHT_RATIO, width - 2 * MARGIN_MM):
            shapes.append(_text(MARGIN_MM, y, line, height))
            y -= height * 1.75
        y -= height * 0.2
    return shapes
