"""Flow through the burner: pressure from the mix pipe to the chamber, every port's share, baffle and mixing."""

from collections import Counter
from functools import lru_cache
from math import acos

from ..physics import losses, mixing, pipes, plates, plenum, port_drop
from ..physics.burning_velocity import burning_velocity_m_s
from ..physics.port_stream import REYNOLDS_LAMINAR
from ..result import Axis, Chart, Column, Series, Table
from ..units import show

GROUP = "air"
PRACTICE = "common practice, no published source"
PORT_SOURCE = "Darcy-Weisbach; Shah and London 1978 (from memory); Haaland 1983"
PLENUM_SOURCE = (
    "march of a dividing plenum with full recovery; Perry's Handbook, perforated-pipe distributors (from memory)"
)

# A port shorter than this has no reattached jet; it is then a sharp orifice of C_d 0.61 (memory).
SHORTEST_TUBE, ORIFICE_K = 0.75, 0.61**-2
MOST_ROUGHNESS = 0.0999  # roughness over bore; the friction formula ends at a tenth
SPREAD = (0.05, 0.15)  # good up to, stop above; the first is that of Perry's tenth
KINETIC = (0.10, 0.30)  # the same as kinetic ratios: cos(sqrt(0.3)) = 0.85
IMPINGEMENT = (1.10, 1.40)  # good up to, stop above: the most that a port under the inlet's jet passes
BAFFLE_SHARE = (0.5, 2.0)  # baffle's pressure over the ports': good up to, stop above, or its holes jet
MIXING = (5.0, mixing.DIAMETERS_NEEDED)  # stop below, good from
WALK_BACK = (1.0, 2.0)  # pipe velocity over turbulent burning velocity at low fire: stop below, good from


def solve(d, r):
    r.mixture_flow_m3_s = r["mixture_velocity_in_port"] * r["port_area"]
    r.inlet_m = r.plenum_length_m / 2 if d.inlet_position == "centre" else 0.0
    baffle = _baffle(d, r)
    flow = r.mixture_flow_m3_s
    port_Pa, baffle_Pa = _port_Pa(d, r, flow), _baffle_Pa(r, baffle, flow)
    shared = _distribution(d, r, port_Pa + baffle_Pa)

    def drop_Pa(mixture_m3_s):
        """Pressure over the shop's that pushes a flow of mixture (as it is at shop temperature) into the chamber."""
        through = _port_Pa(d, r, mixture_m3_s) + _baffle_Pa(r, baffle, mixture_m3_s)
        return (
            d.chamber_back_pressure
            + shared.plenum_pressure_Pa / shared.mean_drop_Pa * through
            + _inlet_Pa(d, r, mixture_m3_s)
            + _pipe_Pa(d, r, mixture_m3_s)
        )

    r.burner_drop_Pa = drop_Pa
    _pressures(d, r, port_Pa, baffle_Pa)
    _shares(d, r, shared)
    _jet(d, r, baffle, port_Pa)
    _mixing(d, r)
    r.add_table(_flow_table(d, r, shared))
    r.charts["flow_by_column"] = lambda: _column_chart(r, shared)


def _port_Pa(d, r, flow_m3_s):
    velocity, mixture = flow_m3_s / r["port_area"], r.mixture
    if d.block_thickness < SHORTEST_TUBE * d.port_diameter:
        return ORIFICE_K * losses.velocity_head_Pa(velocity, mixture.density_kg_m3)
    return port_drop.port_drop_Pa(
        velocity,
        d.port_diameter,
        d.block_thickness,
        mixture.density_kg_m3,
        mixture.viscosity_Pas,
        roughness_m=min(losses.ROUGHNESS_CAST_M, MOST_ROUGHNESS * d.port_diameter),
    )


def _baffle(d, r):
    """(plate area, loss on the velocity head onto it) of the baffle across the plenum, or None without one."""
    bent = 1.0 if r.round else plates.bent_plate_ratio(d.baffle_bend_angle)
    area = r.plenum_width_m * r.plenum_length_m * bent
    open_share = plates.open_fraction(d.baffle_holes, d.baffle_hole_diameter, area) if d.baffle_holes else None
    r.answer(
        "baffle_open_fraction",
        open_share,
        "fraction",
        "Open share of the baffle",
        "Area of the baffle's holes over the area of its plate, which spans the whole plenum.",
        "holes x pi x diameter squared / 4 / (inside width x inside length / cos(bend / 2)); flat in a round body",
        ("baffle_holes", "baffle_hole_diameter", "baffle_bend_angle", "body_width", "body_length", "wall"),
        "geometry of the baffle",
    )
    loss = plates.plate_K(open_share, d.baffle_thickness / d.baffle_hole_diameter) if open_share else None
    left = plates.unevenness_left(loss) if loss is not None and loss >= 0.7 else None if loss is None else 1.0
    r.answer(
        "baffle_unevenness_left",
        left,
        "fraction",
        "Unevenness left by the baffle",
        "Share of a small unevenness of velocity that passes the baffle; below zero, fast spots come out slow.",
        "(1 + a - a K) / (1 + a + K) with a = 1.1 / sqrt(1 + K); all of it when K is below 0.7",
        ("baffle_open_fraction", "baffle_thickness", "baffle_hole_diameter"),
        "Taylor and Batchelor 1949 (from memory)",
        "memory",
    )
    return None if loss is None else (area, loss)


def _baffle_Pa(r, baffle, flow_m3_s):
    if baffle is None:
        return 0.0
    area, loss = baffle
    return loss * losses.velocity_head_Pa(flow_m3_s / area, r.mixture.density_kg_m3)


def _inlet_Pa(d, r, flow_m3_s):
    """From the mix pipe through a step of size, if any, and the inlet pipe to rest in the plenum; the pipe is short."""
    inlet, pipe = pipes.pipe(d.inlet, "inlet"), pipes.pipe(d.mix_pipe)
    heads = {p.nps: losses.velocity_head_Pa(flow_m3_s / p.area_m2, r.mixture.density_kg_m3) for p in (inlet, pipe)}
    if inlet.area_m2 >= pipe.area_m2:
        step = losses.expansion_K(pipe.area_m2 / inlet.area_m2) * heads[pipe.nps]
    else:
        step = losses.SHARP_ENTRY_K * (1 - inlet.area_m2 / pipe.area_m2) * heads[inlet.nps]
    return step + losses.EXIT_K * heads[inlet.nps]


def _pipe_Pa(d, r, flow_m3_s):
    return losses.pipe_drop_Pa(
        flow_m3_s,
        pipes.pipe(d.mix_pipe).bore_m,
        d.mix_pipe_length,
        r.mixture.density_kg_m3,
        r.mixture.viscosity_Pas,
        ("elbow_90",) * d.mix_pipe_elbows,
        losses.SHARP_ENTRY_K,
    )


@lru_cache(maxsize=64)
def _march(
    areas_m2, positions_m, inlet_m, length_m, area_m2, hydraulic_m, flow_m3_s, coefficient, density_kg_m3, viscosity_Pas
):
    return plenum.plenum_distribution(
        areas_m2,
        positions_m,
        inlet_m,
        length_m,
        area_m2,
        hydraulic_m,
        flow_m3_s,
        coefficient,
        density_kg_m3,
        viscosity_Pas,
        roughness_m=min(losses.ROUGHNESS_STEEL_M, MOST_ROUGHNESS * hydraulic_m),
    )


def _distribution(d, r, drop_Pa):
    """The march along the plenum; a baffle in series with the ports counts into their coefficient."""
    r.port_columns = tuple(_column_m(d, r, x) for x, _ in r.ports)
    columns = Counter(r.port_columns)
    one = r["port_area"] / len(r.ports)
    positions = tuple(sorted(columns))
    coefficient = min(
        (losses.velocity_head_Pa(r["mixture_velocity_in_port"], r.mixture.density_kg_m3) / drop_Pa) ** 0.5, 1.0
    )
    hydraulic = 2 * r["plenum_area"] / (r.plenum_width_m + r.plenum_height_m)
    return _march(
        tuple(columns[x] * one for x in positions),
        positions,
        r.inlet_m,
        r.plenum_length_m,
        r["plenum_area"],
        hydraulic,
        r.mixture_flow_m3_s,
        coefficient,
        r.mixture.density_kg_m3,
        r.mixture.viscosity_Pas,
    )


def _column_m(d, r, x):
    """Place along the plenum of the column that a port at x belongs to. A round face has few ports at the same x, so
    those within a port diameter count as a column there; the square that stands for it is shorter than its face."""
    step = d.port_diameter * (1.0 if r.round else 0.05)
    return min(max(round(x / step) * step + r.plenum_length_m / 2, 0.0), r.plenum_length_m)


def _pressures(d, r, port_Pa, baffle_Pa):
    flow = r.mixture_flow_m3_s
    mixture = ("mixture_flow", "ambient_temperature", "altitude")
    r.answer(
        "port_pressure_drop",
        port_Pa,
        "pressure",
        "Pressure over the ports",
        "Pressure that pushes the cold mixture through the ports at high fire.",
        "(entry 0.5 + friction over the port's length + exit 1) x velocity head; bore as cast, 0.3 mm rough (a "
        "tenth of the bore at "
        "most)",
        ("mixture_velocity_in_port", "port_diameter", "block_thickness"),
        PORT_SOURCE,
        "memory",
        (0.8 * port_Pa, 1.05 * port_Pa),
    )
    r.answer(
        "baffle_pressure_drop",
        baffle_Pa,
        "pressure",
        "Pressure over the baffle",
        "Pressure that the baffle takes at high fire.",
        "loss of the perforated plate x velocity head onto it",
        ("baffle_open_fraction", "baffle_thickness", "baffle_hole_diameter", *mixture),
        "Idelchik, perforated plates thin and thick (from memory)",
        "memory",
    )
    r.answer(
        "inlet_pressure_drop",
        _inlet_Pa(d, r, flow),
        "pressure",
        "Pressure over the inlet",
        "Pressure lost where the mixture jets out of the inlet pipe, and at a step of pipe size before it.",
        "1 x velocity head in the inlet + step from the mix pipe",
        ("inlet", "mix_pipe", *mixture),
        "Borda-Carnot; entry 0.5 (Crane TP-410)",
        "published",
    )
    r.answer(
        "mix_pipe_pressure_drop",
        _pipe_Pa(d, r, flow),
        "pressure",
        "Pressure over the mix pipe",
        "Pressure lost in the mix pipe with its elbows, counted full of mixture.",
        "(friction x length / bore + 30 x friction for each elbow + 0.5 entry) x velocity head",
        ("mix_pipe", "mix_pipe_length", "mix_pipe_elbows", *mixture),
        "Darcy-Weisbach, Haaland 1983; Crane TP-410 (from memory)",
        "memory",
    )
    r.answer(
        "mixture_pressure",
        r.burner_drop_Pa(flow),
        "pressure",
        "Pressure the burner needs",
        "Pressure over that of the shop that the mixture needs at the start of the mix pipe at high fire.",
        "chamber back pressure + plenum + inlet + mix pipe; the plenum's is that of ports and baffle, unevenness "
        "included",
        (
            "chamber_back_pressure",
            "port_pressure_drop",
            "baffle_pressure_drop",
            "inlet_pressure_drop",
            "mix_pipe_pressure_drop",
        ),
        "sum of the parts",
        "memory",
    )


def _shares(d, r, shared):
    by_column = dict(zip(sorted(set(r.port_columns)), shared.shares))
    r.port_flow_shares = tuple(by_column[column] for column in r.port_columns)
    r.least_share, r.largest_share = min(shared.shares), max(shared.shares)
    r.answer(
        "flow_spread",
        shared.spread,
        "fraction",
        "Unevenness of the ports",
        "Flow of the best-fed port less that of the worst-fed, over the mean.",
        "largest - smallest share of flow, from a march along the plenum",
        ("plenum_area", "port_area", "inlet_position", "port_pressure_drop", "baffle_pressure_drop"),
        PLENUM_SOURCE,
        "memory",
    )
    r.answer(
        "kinetic_energy_ratio",
        shared.kinetic_ratio,
        "ratio",
        "Stream head to port pressure",
        "Velocity head of the stream along the plenum over the pressure of the ports (with baffle); a tenth or "
        "less is even.",
        "density x velocity squared / 2 / pressure over ports and baffle",
        ("plenum_area", "mixture_flow", "port_pressure_drop"),
        PLENUM_SOURCE,
        "memory",
    )
    spread = f"{100 * shared.spread:.1f} %" if shared.spread >= 5e-4 else "less than 0.1 %"
    good, stop = SPREAD
    verdict = "good" if shared.spread <= good else "caution" if shared.spread <= stop else "stop"
    if shared.starved_columns:
        verdict = "stop"
    cure = _evener(d)
    words = {
        "good": f"Ports get their share within {spread.removeprefix('less than ')}.",
        "caution": f"Ports differ by {spread}; {100 * good:.0f} % or less is even. Those far from the inlet burn "
        "hotter.",
        "stop": f"Ports differ by {spread}, far more than {100 * stop:.0f} %: those near the inlet go short and "
        "can flash back.",
    }[verdict]
    if shared.starved_columns:
        words = (
            f"{shared.starved_columns} column{'s' if shared.starved_columns > 1 else ''} of ports near the inlet "
            "get no mixture: the stream along the plenum is too fast. The fire could draw back through them."
        )
    r.check(
        "flow_spread",
        verdict,
        shared.spread,
        good,
        "fraction",
        "Evenness of the ports",
        words,
        PLENUM_SOURCE,
        "memory",
        cure,
    )

    ratio, wanted = r["plenum_to_port_ratio"], wanted_ratio(good, d.inlet_position)
    r.check(
        "plenum_ratio",
        verdict,
        ratio,
        wanted,
        "ratio",
        "Plenum ratio",
        f"The plenum is {show(ratio, 'ratio', d.units)} times the port area; with the inlet at the "
        f"{d.inlet_position} that leaves the ports {spread} uneven."
        + (
            ""
            if verdict == "good"
            else f" About {wanted:.2g} or more is wanted: a deeper body, less grip, or less port area."
        ),
        PLENUM_SOURCE,
        "memory",
        cure,
    )

    kinetic, friction = shared.kinetic_ratio, shared.friction_ratio
    most = max(kinetic, friction)
    good, stop = KINETIC
    verdict = "good" if most <= good else "caution" if most <= stop else "stop"
    r.check(
        "perry",
        verdict,
        most,
        good,
        "ratio",
        "Perry's tenth",
        f"Stream along the plenum: head {kinetic:.3f} and friction {friction:.3f} of the pressure over the ports; "
        + (
            "both within a tenth, so the ports are fed evenly."
            if verdict == "good"
            else "a tenth is the rule: widen the plenum or take away port area."
        ),
        "Perry's Handbook, perforated-pipe distributors (from memory)",
        "memory",
        cure,
    )


def _evener(d):
    return ((("inlet_position", "choose"),) if d.inlet_position == "end" else ()) + (
        ("body_depth", "raise"),
        ("grip", "lower"),
        ("ports_per_row", "lower"),
        ("port_diameter", "lower"),
    )


def wanted_ratio(spread, inlet_position):
    """Plenum over port area that keeps the unevenness to `spread`, by the closed form 1 - cos(C_d a) with C_d 0.75."""
    return 0.75 / acos(1 - spread) * (0.5 if inlet_position == "centre" else 1.0)


def _jet(d, r, baffle, port_Pa):
    ratio = 1.0
    if d.inlet_position == "centre":
        head = losses.velocity_head_Pa(r.mixture_flow_m3_s / r["inlet_area"], r.mixture.density_kg_m3)
        left = 1.0 if baffle is None else r["baffle_unevenness_left"]
        ratio = (1 + left**2 * head / port_Pa) ** 0.5
    r.answer(
        "jet_impingement",
        ratio,
        "ratio",
        "Port under the inlet's jet",
        "The most that a port right under the inlet passes, over its fair share, because the inlet's jet blows on it.",
        "sqrt(1 + head of the jet / pressure over the ports); a baffle leaves its share of the jet's velocity; 1 "
        "with the inlet at an "
        "end",
        ("inlet_area", "mixture_flow", "port_pressure_drop", "baffle_unevenness_left", "inlet_position"),
        "stagnation pressure; the baffle's part is an estimate",
        "common practice",
    )
    good, stop = IMPINGEMENT
    verdict = "good" if ratio <= good else "caution" if ratio <= stop else "stop"
    r.check(
        "jet_impingement",
        verdict,
        ratio,
        good,
        "ratio",
        "Jet of the inlet",
        f"The inlet's jet can push {_more(ratio)} than its share through the ports in front of it"
        + (
            "."
            if verdict == "good"
            else f"; {100 * (good - 1):.0f} % is little. Use a larger inlet, or a baffle that takes more."
            if baffle
            else f"; {100 * (good - 1):.0f} % is little. Put a baffle in, or use a larger inlet."
        ),
        "stagnation pressure; limits are common practice",
        "common practice",
        (("baffle_holes", "choose"), ("inlet", "raise")),
    )
    if baffle:
        _baffle_check(d, r, port_Pa)


def _more(ratio):
    return "less than 1 % more" if ratio < 1.01 else f"up to {100 * (ratio - 1):.0f} % more"


def _baffle_check(d, r, port_Pa):
    good, stop = BAFFLE_SHARE
    share = r["baffle_pressure_drop"] / port_Pa
    verdict = "good" if share <= good else "caution" if share <= stop else "stop"
    r.check(
        "baffle_pressure",
        verdict,
        share,
        good,
        "ratio",
        "Jets of the baffle",
        f"The baffle takes {show(r['baffle_pressure_drop'], 'pressure', d.units)}, "
        f"{show(share, 'ratio', d.units, 2)} times the pressure "
        "over the ports; "
        + (
            "its holes blow gently."
            if verdict == "good"
            else f"{good:g} times is plenty. Its holes are so few or so small that each blows a jet of its own at the "
            "block: more or larger holes."
        ),
        PRACTICE,
        "common practice",
        (("baffle_holes", "raise"), ("baffle_hole_diameter", "raise")),
    )


def _mixing(d, r):
    pipe = pipes.pipe(d.mix_pipe)
    diameters = mixing.mixing_diameters(d.mix_pipe_length, pipe.bore_m, d.mix_pipe_elbows)
    r.answer(
        "mixing_length_diameters",
        diameters,
        "ratio",
        "Mixing length in diameters",
        "Length of the mix pipe over its bore, each elbow counted as five.",
        "length / bore + 5 x elbows",
        ("mix_pipe", "mix_pipe_length", "mix_pipe_elbows"),
        PRACTICE,
        "common practice",
    )
    stop, good = MIXING
    verdict = "good" if diameters >= good else "caution" if diameters >= stop else "stop"
    missing = (good - diameters) * pipe.bore_m
    r.check(
        "mixing_length",
        verdict,
        diameters,
        good,
        "ratio",
        "Mixing length",
        f"The mix pipe is {diameters:.1f} diameters long with its elbows; "
        + (
            f"{good:g} mix gas and air well."
            if verdict == "good"
            else f"{good:g} are wanted, or some ports burn rich and others lean: {show(missing, 'length', d.units)} "
            "more pipe, or an elbow."
        ),
        PRACTICE,
        "common practice",
        (("mix_pipe_length", "raise"), ("mix_pipe_elbows", "raise")),
    )

    velocity = r.mixture_flow_m3_s / pipe.area_m2
    r.answer(
        "mix_pipe_velocity",
        velocity,
        "speed",
        "Velocity in the mix pipe",
        "Mean speed of the mixture in the mix pipe at high fire.",
        "mixture flow at shop temperature and altitude / bore area",
        ("mixture_flow", "mix_pipe"),
        "continuity, ideal gas",
    )
    low = velocity * d.low_fire
    burning = burning_velocity_m_s(r.fuel, d.equivalence_ratio, d.ambient_temperature, r.ambient_pressure_Pa)
    reynolds = losses.reynolds(low, pipe.bore_m, r.mixture.density_kg_m3, r.mixture.viscosity_Pas)
    swings = mixing.TURBULENCE_INTENSITY if reynolds > REYNOLDS_LAMINAR else 0.0
    turbulent = [mixing.turbulent_burning_velocity_m_s(s, low, swings) for s in burning]
    r.answer(
        "turbulent_burning_velocity",
        turbulent[1],
        "speed",
        "Flame speed in the mix pipe",
        "How fast a flame could eat its way up the mix pipe at low fire; good to a factor of two.",
        "burning velocity + 2 x velocity swings (a tenth of the pipe velocity at low fire; none in smooth flow)",
        ("burning_velocity", "mix_pipe_velocity", "low_fire"),
        "Damkoehler 1940, constants from memory",
        "memory",
        (0.5 * turbulent[0], 2 * turbulent[2]),
    )
    ratio = low / turbulent[1]
    stop, good = WALK_BACK
    verdict = "good" if ratio >= good else "caution" if ratio >= stop else "stop"
    r.check(
        "mix_pipe_velocity",
        verdict,
        ratio,
        good,
        "ratio",
        "Flame walking back up the pipe",
        f"At low fire the mixture runs {ratio:.1f} times as fast through the mix pipe as a flame could; "
        + (
            "a flame cannot walk back up it."
            if verdict == "good"
            else f"{good:g} times is wanted. Use a smaller mix pipe or a higher low fire."
            if verdict == "caution"
            else "a flame that gets in walks back to the blower. Use a smaller mix pipe or a higher low fire."
        ),
        "Damkoehler 1940, constants from memory; limit is common practice",
        "common practice",
        (("mix_pipe", "lower"), ("low_fire", "raise")),
    )


def _flow_table(d, r, shared):
    mean = r.mixture_flow_m3_s / len(r.ports)
    rows = tuple(
        (number, x + d.body_length / 2, y + d.body_width / 2, share, share * mean)
        for number, ((x, y), share) in enumerate(zip(r.ports, r.port_flow_shares), 1)
    )
    return Table(
        "port_flows",
        "Flow of every port at high fire",
        (
            Column("number", "No.", "count"),
            Column("x", "x", "length"),
            Column("y", "y", "length"),
            Column("share", "Share", "fraction"),
            Column("flow", "Mixture", "air_flow"),
        ),
        rows,
        PLENUM_SOURCE,
    )


def _column_chart(r, shared):
    count = len(shared.shares)
    numbers = tuple(range(1, count + 1))
    top = max(1.2, 1.1 * max(shared.shares))
    return Chart(
        "flow_by_column",
        "Flow of each column of ports",
        Axis("column, from the left" if r.inlet_m else "column, from the inlet", "count", 0, count + 1),
        Axis("share of the mean", "fraction", 0, top),
        (
            Series("shares", "share of the mean", numbers, tuple(shared.shares), "bars"),
            Series("fair", "fair share", (0, count + 1), (1, 1)),
        ),
        (),
        f"Each bar is a column of ports across the face; they differ by {100 * shared.spread:.1f} %.",
    )
