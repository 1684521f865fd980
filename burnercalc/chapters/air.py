"""Air: where the blower meets the burner, what it has to spare, and how far a damper must close."""

from ..constants import STANDARD_PRESSURE_PA, STANDARD_TEMP_K
from ..physics import blower, pipes
from ..physics.atmosphere import air_density_kg_m3
from ..result import Axis, Chart, Series
from ..units import show

GROUP = "air"
FAN = "fan laws; blower curve as given"
MARGIN = 0.20  # pressure to spare at high fire, good from; common practice
DAMPER_LEAST = 0.05  # open share below which a damper is hard to set; common practice


def curve_of(d):
    """The blower's curve: the points when they are given, else the parabola of the two numbers."""
    if d.blower_curve:
        return blower.Points(*zip(*d.blower_curve))
    return blower.Parabola(d.blower_shutoff_pressure, d.blower_free_flow)


def solve(d, r):
    curve, density = curve_of(d), air_density_kg_m3(d.ambient_temperature, r.ambient_pressure_Pa)
    swell = STANDARD_PRESSURE_PA / r.ambient_pressure_Pa * d.ambient_temperature / STANDARD_TEMP_K
    high = r["air_flow"] * swell
    low = high * d.low_fire
    mixture_over_air = r["mixture_flow"] / r["air_flow"]

    def needed_Pa(air_m3_s):
        """What the burner takes at this flow of air, gas in proportion."""
        return r.burner_drop_Pa(air_m3_s * mixture_over_air)

    point = blower.operating_point(curve, needed_Pa, density)
    ends = (
        "blower_curve",
        "blower_shutoff_pressure",
        "blower_free_flow",
        "mixture_pressure",
        "ambient_temperature",
        "altitude",
    )
    r.answer(
        "blower_flow",
        point.flow_m3_s,
        "air_flow",
        "Air with the damper open",
        "Air at shop temperature that the blower pushes through this burner with no damper, gas in proportion.",
        "where the blower's curve crosses the pressure that the burner takes",
        ends,
        FAN,
        "published",
    )
    r.answer(
        "blower_pressure",
        point.pressure_Pa,
        "pressure",
        "Pressure with the damper open",
        "Pressure of the blower where it meets the burner with no damper.",
        "blower's curve at that flow x density of the air / density of standard air",
        ends,
        FAN,
        "published",
    )
    margin = blower.blower_margin(curve, high, needed_Pa(high), density)
    r.answer(
        "blower_margin",
        margin,
        "fraction",
        "Blower to spare",
        "Pressure that the blower has at high fire over what the burner needs; below zero it is too weak.",
        "blower's pressure at the air of high fire / pressure the burner needs - 1; -100 % when its curve ends before",
        (*ends, "air_flow"),
        FAN,
        "published",
    )
    area = pipes.pipe(d.mix_pipe).area_m2
    dampers = {}
    for key, flow, words in (("damper_open_high", high, "high fire"), ("damper_open_low", low, "low fire")):
        dampers[key] = found = blower.damper(curve, flow, needed_Pa(flow), area, density)
        r.answer(
            key,
            None if found is None else found.open_fraction,
            "fraction",
            f"Damper open at {words}",
            f"Open share of a damper in a pipe of the mix pipe's bore that holds the air of {words}; none when "
            "the blower is too weak.",
            "thin plate with the loss of the pressure to spare",
            ("blower_margin", "mix_pipe", "low_fire"),
            "Idelchik, thin plate (from memory)",
            "memory",
        )
    _blower_check(d, r, point, margin, high, needed_Pa(high), curve, density)
    _damper_check(d, r, dampers["damper_open_low"])
    r.charts["blower_and_burner"] = lambda: _chart(d, r, curve, density, needed_Pa, point, high, low)


def _blower_check(d, r, point, margin, high, needed_Pa, curve, density):
    def air(flow):
        return show(flow, "air_flow", d.units)

    def pressure(value):
        return show(value, "pressure", d.units)

    verdict = "good" if margin >= MARGIN else "caution" if margin >= 0 else "stop"
    asked = f"{air(high)} of air at {pressure(needed_Pa)}"
    if high > curve.last_m3_s:
        text = (
            f"The burner asks for {asked}; the blower's curve ends at {air(curve.last_m3_s)}: a larger blower, or "
            "less fire."
        )
    else:
        has = pressure(curve.pressure_Pa(high, density))
        text = (
            f"High fire asks for {asked}; the blower has {has} there"
            + {
                "good": f", {100 * margin:.0f} % to spare."
                if margin < 2
                else f", {show(margin + 1, 'ratio', d.units, 2)} times as much.",
                "caution": f", only {100 * margin:.0f} % to spare; {100 * MARGIN:.0f} % is usual. Larger ports or mix "
                "pipe, or a stronger blower.",
                "stop": f". It is too weak: with the damper open it brings {air(point.flow_m3_s)}. Larger ports or mix "
                "pipe, a stronger blower, or less fire.",
            }[verdict]
        )
    if point.crossings > 1 and verdict == "good":
        verdict, text = "caution", text + " Its curve crosses that of the burner more than once: the flow may hunt."
    own = (
        (("blower_curve", "choose"),)
        if d.blower_curve
        else (("blower_shutoff_pressure", "raise"), ("blower_free_flow", "raise"))
    )
    r.check(
        "blower",
        verdict,
        margin,
        MARGIN,
        "fraction",
        "Blower",
        text,
        FAN + "; margin is common practice",
        "common practice",
        (*own, ("mix_pipe", "raise"), ("port_diameter", "raise"), ("ports_per_row", "raise"), ("firing_rate", "lower")),
    )


def _damper_check(d, r, found):
    """Only where the blower carries low fire; too weak a blower is stopped above."""
    if found is None:
        return
    verdict = "good" if found.open_fraction >= DAMPER_LEAST else "caution"
    r.check(
        "damper",
        verdict,
        found.open_fraction,
        DAMPER_LEAST,
        "fraction",
        "Damper at low fire",
        f"At low fire the damper stands {100 * found.open_fraction:.0f} % open"
        + (
            "."
            if verdict == "good"
            else ", hard to set finely: a smaller or slower blower, or a damper in a smaller pipe."
        ),
        "Idelchik, thin plate (from memory); limit is common practice",
        "common practice",
        (("blower_shutoff_pressure", "lower"), ("low_fire", "raise")),
    )


def _chart(d, r, curve, density, needed_Pa, point, high, low):
    most = 1.05 * max(curve.last_m3_s, high)
    flows = (*(curve.last_m3_s * i / 40 for i in range(40)), curve.last_m3_s)
    pressures = tuple(curve.pressure_Pa(flow, density) for flow in flows)
    top = 1.2 * max(max(pressures), needed_Pa(high))
    asked = tuple(most * i / 40 for i in range(41))
    needs = tuple(needed_Pa(flow) for flow in asked)
    shown = [(flow, need) for flow, need in zip(asked, needs) if need <= top]
    return Chart(
        "blower_and_burner",
        "Blower and burner",
        Axis("air at shop temperature", "air_flow", 0, most),
        Axis("pressure", "pressure", 0, top),
        (
            Series("blower", "blower", flows, pressures),
            Series("burner", "burner, damper open", tuple(flow for flow, _ in shown), tuple(need for _, need in shown)),
            Series("fires", "low and high fire", (low, high), (needed_Pa(low), needed_Pa(high)), "points"),
        ),
        (point.flow_m3_s, point.pressure_Pa),
        f"Blower and burner meet at {show(point.flow_m3_s, 'air_flow', d.units)} and "
        f"{show(point.pressure_Pa, 'pressure', d.units)}; high fire needs {show(high, 'air_flow', d.units)}.",
    )
