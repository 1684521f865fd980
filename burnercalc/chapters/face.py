"""The face: window, ports, plenum and inlet, and whether they can be cast and feed each other."""

from math import pi, sqrt

from ..constants import STANDARD_PRESSURE_PA, STANDARD_TEMP_K
from ..physics import combustion, pipes, port_field
from ..physics.mixture import mixture_properties
from ..result import Axis, Chart, Column, Series, Table
from ..units import show
from .flow import SPREAD, wanted_ratio

GROUP = "face"
GEOMETRY = "geometry of the face"
PRACTICE = "common practice, no published source"

# Limits of the judged bands. All lengths in metres.
LEAST_WEB_M = 0.25 * 0.0254  # clear web between ports: one port diameter and 1/4 in; common practice
GRAIN_M = 0.003  # top grain of a fine castable; below it a web cannot be filled; common practice
LEAST_EDGE_M = 0.005  # a coarse grain (3 to 6 mm) between port and steel; common practice
PORT_LENGTH_RATIO = (4, 14)  # length over diameter of a cast port: 4 at least, 6 to 12 usual; common practice
PORT_LENGTH_RATIO_STOP = 2.5
INLET_RATIO = (0.5, 1.0)  # stop below, good from, without a baffle; half of both with one; common practice
LEAST_SAID_M = 0.0254 / 64  # less than a tape shows counts as its finest mark
PORT_VELOCITY_M_S = (1.0, 2.0, 12.0, 20.0)  # stop, good from, good to, stop; common practice


def solve(d, r):
    _window(d, r)
    _ports(d, r)
    _plenum(d, r)
    _velocity(d, r)
    _checks(d, r)
    r.add_table(_hole_table(d, r))
    r.charts["ratio_by_ports"] = lambda: _ratio_chart(d, r)


def _window(d, r):
    r.round = d.body_kind == "pipe"
    r.answer(
        "window_length",
        d.body_length - 2 * d.setback,
        "length",
        "Window length",
        "Length of the opening cut in the face.",
        "body length - 2 x setback",
        ("body_length", "setback"),
        GEOMETRY,
    )
    r.answer(
        "window_width",
        d.body_width - 2 * d.setback,
        "length",
        "Window width",
        "Width of the opening cut in the face.",
        "face width - 2 x setback",
        ("body_width", "setback"),
        GEOMETRY,
    )
    # A circle is the rounded rectangle whose corners meet.
    r.window_radius_m = r["window_width"] / 2 if r.round else d.corner_radius
    r.answer(
        "window_area",
        port_field.rounded_rectangle_area_m2(r["window_length"], r["window_width"], r.window_radius_m),
        "area",
        "Window area",
        "Area of the opening, its rounded corners taken off.",
        "length x width - (4 - pi) x corner radius squared; a round window is all corner",
        ("window_length", "window_width", "corner_radius"),
        GEOMETRY,
    )


def _ports(d, r):
    field = (d.pattern, r["window_length"], r["window_width"], d.edge_margin, d.port_diameter, d.rows, d.ports_per_row)
    rows = port_field.port_rows(*field, round_window=r.round)
    r.ports = tuple(port for row in rows for port in row)
    r.row_counts = [len(row) for row in rows]
    along, across = port_field.pitches_m(*field)
    r.answer(
        "port_count",
        len(r.ports),
        "count",
        "Ports",
        "How many ports the face has.",
        "sum of the rows",
        ("rows", "ports_per_row", "pattern"),
        GEOMETRY,
    )
    r.answer(
        "port_area",
        port_field.port_area_m2(len(r.ports), d.port_diameter),
        "area",
        "Port area",
        "Open area of all ports together.",
        "ports x pi x diameter squared / 4",
        ("port_count", "port_diameter"),
        GEOMETRY,
    )
    r.answer(
        "open_fraction",
        r["port_area"] / r["window_area"],
        "fraction",
        "Open share of the window",
        "Port area over window area.",
        "port area / window area",
        ("port_area", "window_area"),
        GEOMETRY,
    )
    r.answer(
        "row_pitch",
        across,
        "length",
        "Row pitch",
        "Distance between the centre lines of neighbouring rows, or from ring to ring.",
        "(window width - 2 x edge margin - port diameter) / (rows - 1); hexagonal: sqrt(3)/2 of the port pitch; "
        "rings: radius of the outer ring / rings",
        ("window_width", "edge_margin", "port_diameter", "rows", "pattern"),
        GEOMETRY,
    )
    r.answer(
        "port_pitch",
        along,
        "length",
        "Port pitch",
        "Distance between the centres of neighbours in a row, or in the outer ring.",
        "(window length - 2 x edge margin - port diameter) / (ports in a long row - 1); hexagonal: the most that both "
        "sides allow; rings: chord of the outer ring",
        ("window_length", "edge_margin", "port_diameter", "ports_per_row", "pattern"),
        GEOMETRY,
    )
    r.answer(
        "min_web",
        port_field.least_web_m(r.ports, d.port_diameter),
        "length",
        "Least web",
        "Least refractory between the edges of two ports.",
        "least centre distance - port diameter",
        ("row_pitch", "port_pitch", "port_diameter"),
        GEOMETRY,
    )
    r.answer(
        "min_edge",
        port_field.least_edge_m(r.ports, d.port_diameter, r["window_length"], r["window_width"], r.window_radius_m),
        "length",
        "Least edge",
        "Least distance from a port's edge to the edge of the window, corners included.",
        "distance from the centre to the rounded outline - half a port diameter",
        ("edge_margin", "corner_radius", "port_diameter"),
        GEOMETRY,
    )


def _plenum(d, r):
    # The round plenum counts as the square of the same area: the same room, the mixture spreading from the middle.
    share = sqrt(pi) / 2 if r.round else 1.0
    r.plenum_width_m = share * (d.body_width - 2 * d.wall)
    r.plenum_height_m = d.body_depth - d.wall - d.grip
    r.plenum_length_m = share * (d.body_length - 2 * d.wall)
    r.answer(
        "plenum_area",
        r.plenum_width_m * r.plenum_height_m,
        "area",
        "Plenum area",
        "Clear cross-section that the mixture flows through along the box, behind the refractory.",
        "(face width - 2 x wall) x (body depth - wall - grip); a round body: width of the square of the same area",
        ("body_width", "body_depth", "wall", "grip"),
        GEOMETRY,
    )
    r.answer(
        "plenum_to_port_ratio",
        r["plenum_area"] / r["port_area"],
        "ratio",
        "Plenum to ports",
        "Plenum cross-section over port area; the larger, the more evenly the ports are fed.",
        "plenum area / port area",
        ("plenum_area", "port_area"),
        GEOMETRY,
    )
    r.answer(
        "inlet_area",
        pipes.pipe(d.inlet, "inlet").area_m2,
        "area",
        "Inlet area",
        "Bore area of the inlet pipe.",
        "pi x bore squared / 4",
        ("inlet",),
        "ASME B36.10M, schedule 40",
        "published",
    )
    r.answer(
        "inlet_to_port_ratio",
        r["inlet_area"] / r["port_area"],
        "ratio",
        "Inlet to ports",
        "Inlet bore area over port area; a small inlet jets at the ports in front of it.",
        "inlet area / port area",
        ("inlet_area", "port_area"),
        GEOMETRY,
    )


def _velocity(d, r):
    density_ratio = STANDARD_PRESSURE_PA / r.ambient_pressure_Pa * d.ambient_temperature / STANDARD_TEMP_K
    velocity = r.answer(
        "mixture_velocity_in_port",
        r["mixture_flow"] * density_ratio / r["port_area"],
        "speed",
        "Velocity in the ports",
        "Mean speed of the cold mixture in the ports at high fire.",
        "mixture flow at shop temperature and altitude / port area",
        ("mixture_flow", "port_area", "ambient_temperature", "altitude"),
        "continuity, ideal gas",
    )
    r.mixture = mixture_properties(
        combustion.reactants_mol(r.fuel, d.equivalence_ratio), d.ambient_temperature, r.ambient_pressure_Pa
    )
    r.answer(
        "port_reynolds",
        velocity * d.port_diameter / r.mixture.kinematic_viscosity_m2_s,
        "ratio",
        "Reynolds number",
        "Tells smooth flow in a port (below about 2300) from turbulent.",
        "velocity x diameter / kinematic viscosity of the mixture",
        ("mixture_velocity_in_port", "port_diameter"),
        "viscosity of the mixture: Wilke (1950) on pure-gas fits",
        "published",
    )
    r.answer(
        "port_loading",
        r.rate_W / r["port_area"],
        "power_per_area",
        "Port loading",
        "Gross heat that passes each area of port.",
        "firing rate / port area",
        ("firing_rate", "port_area"),
        GEOMETRY,
    )


def _checks(d, r):
    def length(value):
        return show(value, "length", d.units)

    edge, web = r["min_edge"], r["min_web"]
    inside = edge >= -1e-12
    r.check(
        "ports_inside",
        "good" if inside else "stop",
        edge,
        0.0,
        "length",
        "Ports inside the window",
        f"Every port lies inside the window, {length(edge)} or more from its edge."
        if inside
        else f"Ports reach {length(max(-edge, LEAST_SAID_M))} past the window's edge, into the steel: raise the edge margin or take away ports.",
        GEOMETRY,
        "calculated",
        (("edge_margin", "raise"), ("corner_radius", "lower")),
    )

    if web is not None:
        wanted = max(LEAST_WEB_M, d.port_diameter)
        verdict = "good" if web >= wanted - 1e-9 else "caution" if web >= GRAIN_M else "stop"
        r.check(
            "web",
            verdict,
            web,
            wanted,
            "length",
            "Web between ports",
            {
                "good": f"{length(web)} of refractory between ports is wide enough to fill and to hold.",
                "caution": f"Only {length(web)} of refractory between ports; {length(wanted)} is usual (one port diameter, "
                "1/4 in at least). Use fewer ports, or tamp and vibrate with great care.",
                "stop": f"Ports overlap by {length(-web)}: use fewer ports."
                if web < 0
                else f"{length(web)} between ports is less than a grain of castable: it cannot be filled. Use fewer ports.",
            }[verdict],
            PRACTICE,
            "common practice",
            (("ports_per_row", "lower"), ("rows", "lower"), ("port_diameter", "lower")),
        )

    verdict = "good" if edge >= LEAST_EDGE_M - 1e-9 else "caution" if edge >= 0 else "stop"
    r.check(
        "edge",
        verdict,
        edge,
        LEAST_EDGE_M,
        "length",
        "Edge of the field",
        {
            "good": f"{length(edge)} between the outer ports and the steel can be filled.",
            "caution": f"Only {length(edge)} between the outer ports and the steel; {length(LEAST_EDGE_M)} lets a coarse grain pass.",
            "stop": "The outer ports cut the steel: raise the edge margin.",
        }[verdict],
        PRACTICE,
        "common practice",
        (("edge_margin", "raise"), ("setback", "lower")),
    )

    slender = d.block_thickness / d.port_diameter
    low, high = PORT_LENGTH_RATIO
    verdict = "good" if low <= slender <= high else "stop" if slender < PORT_LENGTH_RATIO_STOP else "caution"
    r.check(
        "port_length",
        verdict,
        slender,
        low if slender < low else high,
        "ratio",
        "Port length to diameter",
        f"Ports are {slender:.1f} diameters long; "
        + (
            f"{low} to {high} is usual."
            if verdict == "good"
            else f"below {low} they neither straighten the flow nor keep the cold side cool: use a thicker block."
            if slender < low
            else f"above {high} pins bend and clearing is slow: use a thinner block or larger ports."
        ),
        PRACTICE,
        "common practice",
        (("block_thickness", "raise" if slender < low else "lower"),),
    )

    _ratio_check(
        r,
        "inlet_ratio",
        "Inlet ratio",
        r["inlet_to_port_ratio"],
        tuple(limit * (0.5 if d.baffle_holes else 1.0) for limit in INLET_RATIO),
        PRACTICE,
        "common practice",
        "the inlet is {value} times the port area",
        (("inlet", "raise"), ("ports_per_row", "lower")),
    )

    velocity = r["mixture_velocity_in_port"]
    stop_low, low, high, stop_high = PORT_VELOCITY_M_S
    verdict = "good" if low <= velocity <= high else "caution" if stop_low <= velocity <= stop_high else "stop"
    slow = velocity < low
    speed = show(velocity, "speed", d.units)
    band = f"{show(low, 'speed', d.units, 2)} to {show(high, 'speed', d.units, 2)}"
    r.check(
        "port_velocity",
        verdict,
        velocity,
        low if slow else high,
        "speed",
        "Mixture velocity",
        f"The mixture leaves the ports at {speed}; {band} is usual at high fire."
        + (
            ""
            if verdict == "good"
            else " Slow flow lets the flame into the ports: use fewer or smaller ports, or more fire."
            if slow
            else " Fast flow lifts the flame while the face is cold and asks much of the blower: use more or larger ports."
        ),
        PRACTICE,
        "common practice",
        (("ports_per_row", "lower"), ("firing_rate", "raise"))
        if slow
        else (("ports_per_row", "raise"), ("port_diameter", "raise"), ("firing_rate", "lower")),
    )


def _ratio_check(r, key, label, value, limits, source, trust, saying, changes):
    stop, good = limits
    verdict = "good" if value >= good else "caution" if value >= stop else "stop"
    said = saying.format(value=show(value, "ratio", "in"))
    text = (
        said[0].upper()
        + said[1:]
        + {
            "good": f"; {good:g} or more feeds the ports evenly.",
            "caution": f"; {good:g} or more is wanted, so some ports get less than their share.",
            "stop": f"; below {stop:g} the ports are fed far too unevenly.",
        }[verdict]
    )
    r.check(key, verdict, value, good, "ratio", label, text, source, trust, changes)


def _hole_table(d, r):
    """Ports numbered row by row from the corner at the lower left; x and y from that corner of the body."""
    rows = tuple(
        (number, x + d.body_length / 2, y + d.body_width / 2, d.port_diameter)
        for number, (x, y) in enumerate(r.ports, 1)
    )
    where = "the square round the body" if r.round else "the body"
    return Table(
        "holes",
        f"Hole table, from the lower left corner of {where}",
        (
            Column("number", "No.", "count"),
            Column("x", "x", "length"),
            Column("y", "y", "length"),
            Column("diameter", "Diameter", "length"),
        ),
        rows,
        GEOMETRY,
    )


def _ratio_chart(d, r):
    most = max(2 * r["port_count"], 12)
    counts = tuple(range(1, most + 1))
    ratios = tuple(r["plenum_area"] / port_field.port_area_m2(n, d.port_diameter) for n in counts)
    good, stop = (wanted_ratio(spread, d.inlet_position) for spread in SPREAD)
    top = max(2 * good, 1.5 * r["plenum_to_port_ratio"])
    bands = tuple(
        Series(f"band_{verdict}", verdict, (1, most), (low, low), "band", (high, high), verdict)
        for verdict, low, high in (("stop", 0, stop), ("caution", stop, good), ("good", good, top))
    )
    enough = int(r["plenum_area"] / good / port_field.port_area_m2(1, d.port_diameter))
    return Chart(
        "ratio_by_ports",
        "Plenum to ports, by number of ports",
        Axis("ports", "count", 1, most),
        Axis("plenum area / port area", "ratio", 0, top),
        bands + (Series("ratio", "this plenum and port size", counts, ratios),),
        (r["port_count"], r["plenum_to_port_ratio"]),
        f"With the inlet at the {d.inlet_position} this plenum feeds up to {enough} ports of this size within {100 * SPREAD[0]:.0f} %; "
        f"the design has {r['port_count']}.",
    )
