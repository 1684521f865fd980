"""Whether the flame stays on the ports, cold and hot, from low fire to high fire, and how to light it."""

from functools import lru_cache
from math import hypot, sqrt

from ..errors import InputError
from ..physics import combustion, flame_holding, flame_limits
from ..physics.burning_velocity import PHI_RANGE, burning_velocity_m_s
from ..physics.mixture import mixture_properties
from ..physics.port_stream import StreamProperties
from ..result import Axis, Chart, Series
from ..units import show

GROUP = "face"
PRACTICE = "common practice, no published source"
BURNING = "shapes of Guelder 1984 and Lieuwen 2003, scaled to later measurements of the peak (from memory)"
FLASHBACK = (
    "Putnam and Jensen 1949 group, fixed to the methane figure of Lewis and von Elbe (from memory); preheat: "
    "Hausen 1943"
)
LIFT = "Reed, Combust. Flame 11 (1967) 177"
MARGIN = 2.0  # velocity at low fire over the flashback limit, good from; common practice
LOADING_W_M2 = (7e6, 45e6)  # 15 to 100 kBtu/h/in2, forced draught in a furnace face; common practice
LEAST_LIFT = 0.02  # of low fire; less than that is no fire to light with
LIGHT_UP_RATIO = 1.1  # a little rich holds a cold flame best
NAMED_LIKE = {"C2H6": "C3H8", "C3H6": "C3H8", "iC4H10": "C4H10"}  # gases without a cross-lighting figure of their own


@lru_cache(maxsize=128)
def _stream(fuel, equivalence_ratio, pressure_Pa):
    reactants = combustion.reactants_mol(fuel, equivalence_ratio)
    return StreamProperties(lambda temp_K: mixture_properties(reactants, temp_K, pressure_Pa))


@lru_cache(maxsize=512)
def limits_m_s(fuel, equivalence_ratio, temp_K, pressure_Pa, diameter_m, length_m, wall_temp_K):
    """(flashback, lift) velocity of one port as Bands; None where no limit is found. wall_temp_K None: cold."""
    flame = flame_holding.PortFlame(
        diameter_m,
        length_m,
        _stream(fuel, equivalence_ratio, pressure_Pa),
        lambda mixture_K: burning_velocity_m_s(fuel, equivalence_ratio, mixture_K, pressure_Pa),
        equivalence_ratio,
        temp_K,
        wall_temp_K,
    )

    def found(limit):
        try:
            return limit()
        except InputError:
            return None

    return found(flame.flashback_velocity_m_s), found(flame.lift_velocity_m_s)


def _limits(d, r, wall_temp_K, equivalence_ratio=None):
    return limits_m_s(
        r.fuel,
        equivalence_ratio or d.equivalence_ratio,
        d.ambient_temperature,
        r.ambient_pressure_Pa,
        d.port_diameter,
        d.block_thickness,
        wall_temp_K,
    )


def solve(d, r):
    burning = burning_velocity_m_s(r.fuel, d.equivalence_ratio, d.ambient_temperature, r.ambient_pressure_Pa)
    r.answer(
        "burning_velocity",
        burning.value,
        "speed",
        "Burning velocity",
        "How fast a smooth flame eats into the cold mixture.",
        "shape over the equivalence ratio x temperature and pressure powers",
        ("fuel", "equivalence_ratio", "ambient_temperature", "altitude"),
        BURNING,
        "memory",
        (burning.low, burning.high),
    )
    cold, lift = _limits(d, r, None)
    hot, _ = _limits(d, r, d.port_wall_temperature)
    _gradients(d, r, burning)
    _rates(d, r, cold, hot, lift)
    _gaps(d, r, burning)
    r.answer(
        "light_up_advice",
        _advice(d, r),
        "word",
        "Lighting it",
        "How to light the cold burner, from the limits above.",
        "between the flashback and the lift limit of a cold port, a little rich where the set mixture has no room "
        "between them",
        ("flashback_firing_rate_cold", "lift_firing_rate", "low_fire"),
        FLASHBACK + "; " + LIFT,
        "memory",
    )
    _flashback_check(d, r, "flashback_cold", "Flashback while cold", r["flashback_firing_rate_cold"], "cold")
    _flashback_check(d, r, "flashback_hot", "Flashback when hot", r["flashback_firing_rate_hot"], "hot")
    _turndown_check(d, r)
    _lift_check(d, r)
    _other_checks(d, r)
    r.charts["stability_map"] = lambda: _map(d, r)


def _gradients(d, r, burning):
    flame = flame_holding.PortFlame(
        d.port_diameter,
        d.block_thickness,
        _stream(r.fuel, d.equivalence_ratio, r.ambient_pressure_Pa),
        None,
        d.equivalence_ratio,
        d.ambient_temperature,
    )
    flame.burning_velocity_at = lambda _: burning
    inputs = ("mixture_velocity_in_port", "port_diameter", "block_thickness")
    r.answer(
        "port_wall_gradient",
        flame.wall_gradient_1_s(r["mixture_velocity_in_port"]),
        "rate",
        "Wall gradient in the ports",
        "How steeply the speed rises from the wall of a cold port, at its end, at high fire.",
        "friction of the young laminar or turbulent stream x velocity squared / (2 x kinematic viscosity)",
        inputs,
        "Shah and London 1978, Blasius; blend between is common practice",
        "common practice",
    )
    alpha = r.mixture.thermal_diffusivity_m2_s
    band = flame_holding.flashback_gradient_1_s(burning, alpha)
    r.answer(
        "flashback_gradient",
        band.value,
        "rate",
        "Wall gradient at flashback",
        "Wall gradient of a smooth cold stream below which the flame slips back along the wall.",
        "0.063 x burning velocity squared / thermal diffusivity",
        ("burning_velocity",),
        FLASHBACK,
        "memory",
        (band.low, band.high),
    )
    band = flame_holding.blow_off_gradient_1_s(burning, alpha, d.equivalence_ratio, True)
    r.answer(
        "lift_gradient",
        band.value,
        "rate",
        "Wall gradient at lift",
        "Wall gradient above which the flame of one cold port in open air is washed off its rim.",
        "0.23 x burning velocity squared / thermal diffusivity x (equivalence ratio to the power 6.4)",
        ("burning_velocity", "equivalence_ratio"),
        LIFT,
        "memory",
        (band.low, band.high),
    )


def _rate(r, band, share):
    """(value, band) of the firing rate at which a port that gets `share` of the mean runs at a limit of velocity."""
    if band is None or not share > 0:
        return None, ()
    rates = flame_holding.firing_rate_limit_W(band, r["mixture_velocity_in_port"] * share, r.rate_W)
    return rates.value, (rates.low, rates.high)


def _rates(d, r, cold, hot, lift):
    inputs = ("burning_velocity", "port_diameter", "block_thickness", "mixture_velocity_in_port", "flow_spread")
    for key, band, label, meaning, more in (
        (
            "flashback_firing_rate_cold",
            cold,
            "Flashback rate, cold",
            "Firing rate below which the flame can enter cold ports.",
            (),
        ),
        (
            "flashback_firing_rate_hot",
            hot,
            "Flashback rate, hot",
            "Firing rate below which the flame can enter ports in a hot block, where slow mixture arrives preheated.",
            ("port_wall_temperature",),
        ),
    ):
        value, limits = _rate(r, band, r.least_share)
        r.answer(
            key,
            value,
            "power",
            label,
            meaning,
            "firing rate x flashback velocity / velocity in the worst-fed port",
            inputs + more,
            FLASHBACK,
            "memory",
            limits,
        )
    rates = [
        (r[key], r.answers[key].band)
        for key in ("flashback_firing_rate_cold", "flashback_firing_rate_hot")
        if r[key] is not None
    ]
    value, limits = max(rates) if len(rates) == 2 else (None, ())
    r.answer(
        "flashback_firing_rate",
        value,
        "power",
        "Flashback rate",
        "Firing rate below which the flame can enter the ports, cold or hot, whichever comes first.",
        "the larger of the cold and the hot rate",
        ("flashback_firing_rate_cold", "flashback_firing_rate_hot"),
        FLASHBACK,
        "memory",
        limits,
    )
    value, limits = _rate(r, lift, r.largest_share)
    r.answer(
        "lift_firing_rate",
        value,
        "power",
        "Lift rate, cold",
        "Firing rate above which the flame of a cold port alone in open air lifts off; a hot chamber holds far more.",
        "firing rate x lift velocity / velocity in the best-fed port",
        inputs,
        LIFT,
        "memory",
        limits,
    )
    least = r.answers["flashback_firing_rate"]
    r.answer(
        "turndown",
        None if least.value is None else r.rate_W / least.value,
        "ratio",
        "Turndown",
        "High fire over the flashback rate: how far the burner can be turned down at all.",
        "firing rate / flashback rate",
        ("firing_rate", "flashback_firing_rate"),
        FLASHBACK,
        "memory",
        () if least.value is None else (r.rate_W / least.band[1], r.rate_W / least.band[0]),
    )


def _main_species(fuel):
    return max(fuel, key=lambda part: part[1] if part[0] in NAMED_LIKE or part[0] in ("CH4", "C3H8", "C4H10") else 0.0)[
        0
    ]


def _gaps(d, r, burning):
    band = flame_limits.quenching_port_diameter_m(burning, r.mixture.thermal_diffusivity_m2_s)
    r.answer(
        "quenching_diameter",
        band.value,
        "length",
        "Quenching diameter",
        "Diameter of a cold port that just stops a flame; larger or hot ports do not, only the speed of the "
        "mixture does.",
        "1.5 to 1.65 x 40 x thermal diffusivity / burning velocity",
        ("burning_velocity",),
        "Williams, Combustion Theory, 8.1; tube over plates from memory",
        "memory",
        (band.low, band.high),
    )
    species = _main_species(r.fuel)
    sure, most = flame_limits.cross_light_gap_m(NAMED_LIKE.get(species, species))
    r.answer(
        "cross_light_gap",
        sure,
        "length",
        "Cross-lighting gap",
        "Gap between the edges of ports over which one lights the next for sure.",
        "figure for the fuel; a pitch of 2.5 diameters serves too",
        ("fuel",),
        "domestic burner-design texts (from memory, weak)",
        "memory",
        (sure, most),
    )


def _chain_pitch_m(d, r):
    """Longest step from port to port that a flame must jump to reach all ports; None for a single port."""
    along, across = r["port_pitch"], r["row_pitch"]
    if across is None:
        return along
    if along is None:
        return across
    return hypot(along / 2, across) if d.pattern in ("staggered", "hexagonal") else max(along, across)


def _advice(d, r):
    def power(value):
        return show(value, "power", d.units, 2)

    phi = d.equivalence_ratio
    flash, lift = r["flashback_firing_rate_cold"], r["lift_firing_rate"]
    mixture = "the mixture as set"
    if flash is None or lift is None or lift < 2 * flash:
        phi, mixture = LIGHT_UP_RATIO, f"the mixture a little rich (equivalence ratio about {LIGHT_UP_RATIO:g})"
        bands = _limits(d, r, None, phi)
        shares = (r.least_share, r.largest_share)
        if None in bands or not shares[0] > 0:
            return "No rate holds a cold flame evenly on these ports: mend the stops first."
        per_rate = combustion.mixture_flow_m3_s(r.fuel, phi, r.rate_W) / r["mixture_flow"]
        flash, lift = (_rate(r, band, share * per_rate)[0] for band, share in zip(bands, shares))
    if not lift > flash:
        return (
            f"Cold ports hold no steady flame even with {mixture}: below {power(flash)} it can run back, above "
            f"{power(lift)} it lifts. Make the ports more even or smaller."
        )
    rate = min(max(sqrt(flash * lift), min(2 * flash, lift)), r.rate_W)
    turned = r.rate_W * d.low_fire
    return (
        f"Light with {mixture} at about {power(rate)}, blower on first: below {power(flash)} a cold flame can run "
        f"back, above {power(lift)} it lifts. "
        + (f"That is less than low fire ({power(turned)}); turn" if rate < 0.95 * turned else "Turn")
        + " up slowly once the face glows and holds the flame."
    )


def _flashback_check(d, r, key, label, least, state):
    if least is None:
        r.check(
            key,
            "stop",
            None,
            None,
            "ratio",
            label,
            f"No firing rate is safe from flashback in {state} ports: "
            "some ports get no mixture, or the mixture has no limit.",
            FLASHBACK,
            "memory",
            (("body_depth", "raise"), ("equivalence_ratio", "choose")),
        )
        return
    low = r.rate_W * d.low_fire
    margin = low / least
    verdict = "good" if margin >= MARGIN else "caution" if margin >= 1 else "stop"
    rates = f"low fire is {show(low, 'power', d.units)}, the limit {show(least, 'power', d.units)}"
    text = {
        "good": f"At low fire the mixture runs {margin:.1f} times as fast as the flame can follow in {state} ports "
        f"({rates}).",
        "caution": f"At low fire only {margin:.1f} times the flashback limit of {state} ports ({rates}); "
        f"{MARGIN:g} times is usual. Keep low fire higher, or use smaller or fewer ports.",
        "stop": f"At low fire the flame can enter {state} ports: {rates}. Keep low fire higher, or use smaller or "
        "fewer ports.",
    }[verdict]
    r.check(
        key,
        verdict,
        margin,
        MARGIN,
        "ratio",
        label,
        text,
        FLASHBACK,
        "memory",
        (("low_fire", "raise"), ("port_diameter", "lower"), ("ports_per_row", "lower"), ("firing_rate", "raise")),
    )


def _turndown_check(d, r):
    wanted, least = 1 / d.low_fire, r.answers["flashback_firing_rate"]
    if least.value is None:
        r.check(
            "turndown",
            "stop",
            None,
            wanted,
            "ratio",
            "Turndown",
            "The burner cannot be turned down at all: some ports get no mixture, or the mixture has no limit.",
            FLASHBACK,
            "memory",
            (("body_depth", "raise"),),
        )
        return
    there, sure = r["turndown"], r.answers["turndown"].band[0]
    verdict = "good" if wanted <= sure else "caution" if wanted <= there else "stop"
    r.check(
        "turndown",
        verdict,
        there,
        wanted,
        "ratio",
        "Turndown",
        f"Turned down {wanted:.1f} to 1; the ports allow {there:.1f} to 1 before the flame can enter"
        + (
            f" ({sure:.1f} at the careful end of the band)."
            if verdict == "good"
            else f", perhaps only {sure:.1f}. Keep low fire higher, or use smaller or fewer ports."
            if verdict == "caution"
            else ". Keep low fire higher, or use smaller or fewer ports."
        ),
        FLASHBACK,
        "memory",
        (("low_fire", "raise"), ("port_diameter", "lower"), ("ports_per_row", "lower")),
    )


def _lift_check(d, r):
    lift, low = r["lift_firing_rate"], r.rate_W * d.low_fire
    holds = lift is not None and lift >= low
    r.check(
        "lift",
        "good" if holds else "caution",
        lift,
        low,
        "power",
        "Lift while cold",
        (
            f"A cold flame holds up to about {show(lift, 'power', d.units)}, low fire is "
            f"{show(low, 'power', d.units)}; more lifts it until the face glows. "
            if holds
            else "Next to no cold flame holds on these ports at this mixture. "
            if lift is None or lift < LEAST_LIFT * low
            else f"A cold flame lifts above about {show(lift, 'power', d.units)}, less than low fire "
            f"({show(low, 'power', d.units)}): light below that, or a little "
            "rich. "
        )
        + "In a hot chamber the glowing face and the hot gas between the flames hold it; lifting there "
        "is no fault.",
        LIFT,
        "memory",
        () if holds else (("low_fire", "lower"), ("equivalence_ratio", "raise")),
    )


def _other_checks(d, r):
    lean, rich = flame_limits.flammable_equivalence_ratios(r.fuel)
    phi = d.equivalence_ratio
    inside = lean <= phi <= rich
    near = inside and not 1.15 * lean <= phi
    r.check(
        "flammable",
        "stop" if not inside else "caution" if near else "good",
        phi,
        lean if phi < 1 else rich,
        "ratio",
        "Mixture that burns",
        f"The mixture burns between equivalence ratios of {lean:.2f} and {rich:.2f}; set is {phi:.2f}"
        + (
            "."
            if inside and not near
            else ", close to where it goes out: richer."
            if near
            else ": it does not burn cold."
        ),
        "NFPA 497 limits, Le Chatelier's rule (from memory)",
        "memory",
        (("equivalence_ratio", "raise" if phi < 1 else "lower"),),
    )

    low, high = LOADING_W_M2
    loading = r["port_loading"]
    verdict = "good" if low <= loading <= high else "caution"
    r.check(
        "port_loading",
        verdict,
        loading,
        low if loading < low else high,
        "power_per_area",
        "Port loading",
        f"Each area of port carries {show(loading, 'power_per_area', d.units)}; "
        f"{show(low, 'power_per_area', d.units, 2)} to {show(high, 'power_per_area', d.units, 2)} is usual for "
        "blown ports in a furnace face.",
        PRACTICE,
        "common practice",
        (
            ("ports_per_row", "lower" if loading < low else "raise"),
            ("port_diameter", "lower" if loading < low else "raise"),
        ),
    )

    step = _chain_pitch_m(d, r)
    if step is not None:
        sure, most = r.answers["cross_light_gap"].band
        gap = step - d.port_diameter
        by_pitch = step <= flame_limits.CROSS_LIGHT_PITCH_RATIO * d.port_diameter
        verdict = "good" if gap <= sure or by_pitch else "caution" if gap <= 2 * most else "stop"
        r.check(
            "cross_light",
            verdict,
            gap,
            sure,
            "length",
            "Ports lighting each other",
            f"The flame must jump {show(gap, 'length', d.units)} from port to port; "
            + (
                "it does."
                if verdict == "good"
                else f"up to {show(sure, 'length', d.units)} or a pitch of 2.5 diameters is sure. Light slowly and see "
                "that every port burns."
                if verdict == "caution"
                else f"{show(most, 'length', d.units)} is about the most. Ports that do "
                "not light let gas into the chamber: set them closer."
            ),
            "domestic burner-design texts (from memory, weak)",
            "memory",
            (("ports_per_row", "raise"), ("rows", "raise")),
        )

    quenching = r.answers["quenching_diameter"]
    wide = d.port_diameter > quenching.band[0]
    r.check(
        "quenching",
        "good",
        d.port_diameter,
        quenching.value,
        "length",
        "Ports and quenching",
        (
            f"Ports of {show(d.port_diameter, 'length', d.units)} do not stop a flame (cold ones of "
            f"{show(quenching.value, 'length', d.units)} would): "
            if wide
            else "Cold ports this small stop a flame, hot ones do not: "
        )
        + "only the speed of the mixture "
        "keeps it out.",
        "Williams, Combustion Theory, 8.1; tube over plates from memory",
        "memory",
    )


def _map(d, r):
    """Port velocity against equivalence ratio: flashback cold and hot, lift cold, with bands; the operating line."""
    low, high = PHI_RANGE
    ratios, found = [], []
    for i in range(17):
        phi = low + (high - low) * i / 16
        cold, lift = _limits(d, r, None, phi)
        hot, _ = _limits(d, r, d.port_wall_temperature, phi)
        if None not in (cold, lift, hot):
            ratios.append(phi)
            found.append((cold, hot, lift))
    ratios = tuple(ratios)
    velocity, slow = r["mixture_velocity_in_port"], r["mixture_velocity_in_port"] * d.low_fire
    top = max(1.3 * velocity, 1.5 * max((limits[1].high for limits in found), default=1.0))

    def line(key, label, which, kind):
        bands = [limits[which] for limits in found]
        if kind == "line":
            return Series(key, label, ratios, tuple(band.value for band in bands))
        return Series(
            key,
            label,
            ratios,
            tuple(band.low for band in bands),
            "band",
            tuple(band.high for band in bands),
            {"flashback_cold_band": "caution", "flashback_hot_band": "stop"}.get(key, ""),
        )

    return Chart(
        "stability_map",
        "Where the flame stays",
        Axis("equivalence ratio", "ratio", low, high),
        Axis("speed in cold ports", "speed", 0, top),
        (
            line("flashback_cold_band", "flashback, cold: band", 0, "band"),
            line("flashback_hot_band", "flashback, hot: band", 1, "band"),
            line("lift_band", "lift, cold: band", 2, "band"),
            line("flashback_cold", "flashback, cold", 0, "line"),
            line("flashback_hot", "flashback, hot", 1, "line"),
            line("lift", "lift, cold", 2, "line"),
            Series("operating", "low to high fire", (d.equivalence_ratio,) * 2, (slow, velocity)),
        ),
        (d.equivalence_ratio, velocity),
        "Below the flashback bands the flame can enter the ports; above the lift band a cold flame lifts, a hot face "
        f"holds it. The line is low to high fire, {show(slow, 'speed', d.units)} to "
        f"{show(velocity, 'speed', d.units)}.",
    )
