"""Where the ports sit: positions in the face, the window around them, and the least distances left between them.

Origin at the centre of the face, x along the body, y across it, metres.
"""

from math import cos, hypot, inf, pi, sin, sqrt

ROW_PITCH_HEXAGONAL = sqrt(3) / 2  # row pitch over port pitch where every port has six neighbours equally far


def pitch_m(span_m, margin_m, diameter_m, count):
    """Centre distance of `count` ports spread over a span, outer ports `margin_m` from its ends; None for one port.

    p = (span - 2 margin - d) / (n - 1)
    """
    return (span_m - 2 * margin_m - diameter_m) / (count - 1) if count > 1 else None


def pitches_m(pattern, length_m, width_m, margin_m, diameter_m, rows, ports_per_row):
    """(centre distance in a row, centre distance of rows) of a pattern; None where there is only one.

    straight, staggered   each spread over its side of the window
    hexagonal             rows sqrt(3)/2 of the port pitch apart, as large as both sides allow
    rings                 the chord between neighbours of the outer ring; the step from ring to ring
    """
    if pattern == "rings":
        radius = (width_m - diameter_m) / 2 - margin_m
        return 2 * radius * sin(pi / ports_per_row) if ports_per_row > 1 else None, radius / rows
    along = pitch_m(length_m, margin_m, diameter_m, ports_per_row)
    across = pitch_m(width_m, margin_m, diameter_m, rows)
    if pattern == "hexagonal" and (along or across):
        pitch = min(along or inf, (across or inf) / ROW_PITCH_HEXAGONAL)
        return pitch if along else None, pitch * ROW_PITCH_HEXAGONAL if across else None
    return along, across


def port_rows(pattern, length_m, width_m, margin_m, diameter_m, rows, ports_per_row, round_window=False):
    """Centres of the ports as a list of rows of (x_m, y_m), the numbering order of the ports.

    Rows run from the bottom up, ports in them from left to right; a short row of a staggered or hexagonal pattern sits
    in the gaps of its neighbours. In a round window what lies outside the margin is left out, and the row nearest the
    middle is a long one. Rings run outward from the middle port, each clockwise from the top, its ports in proportion
    to its radius.
    """
    along, across = pitches_m(pattern, length_m, width_m, margin_m, diameter_m, rows, ports_per_row)
    if pattern == "rings":
        counts = [round(ports_per_row * ring / rows) for ring in range(1, rows + 1)]
        return [[(0.0, 0.0)]] + [
            [((ring + 1) * across * sin(2 * pi * i / n), (ring + 1) * across * cos(2 * pi * i / n)) for i in range(n)]
            for ring, n in enumerate(counts)
        ]
    middle = (rows - 1) // 2 if round_window else 0
    shorter = 0 if pattern == "straight" else 1
    counts = [ports_per_row - (shorter if (row - middle) % 2 else 0) for row in range(rows)]
    grid = [
        [
            ((column - (count - 1) / 2) * (along or 0.0), (row - (rows - 1) / 2) * (across or 0.0))
            for column in range(count)
        ]
        for row, count in enumerate(counts)
    ]
    if not round_window:
        return grid
    reach = (width_m - diameter_m) / 2 - margin_m
    inside = [[(x, y) for x, y in row if hypot(x, y) <= reach + 1e-9] for row in grid]
    return [row for row in inside if row]


def chain_pitch_m(pattern, along_m, across_m):
    """Longest step that a flame must take from port to port to reach them all; None for a single port.

    Rows in the gaps of their neighbours are reached over half a pitch: hypot(p/2, row pitch); else the longer pitch.
    """
    if across_m is None or along_m is None:
        return along_m if across_m is None else across_m
    return hypot(along_m / 2, across_m) if pattern in ("staggered", "hexagonal") else max(along_m, across_m)


def port_area_m2(count, diameter_m):
    """Open area of all ports, n pi d^2 / 4 [m2]."""
    return count * pi * diameter_m**2 / 4


def rounded_rectangle_area_m2(length_m, width_m, radius_m):
    """Area of a rectangle with rounded corners, L W - (4 - pi) r^2 [m2]."""
    return length_m * width_m - (4 - pi) * radius_m**2


def edge_distance_m(x_m, y_m, length_m, width_m, radius_m):
    """Distance from a point to the nearest edge of a centred rounded rectangle; negative outside.

    q = (|x| - (L/2 - r), |y| - (W/2 - r));  distance = r - |max(q, 0)| - min(max(qx, qy), 0)
    """
    qx, qy = abs(x_m) - (length_m / 2 - radius_m), abs(y_m) - (width_m / 2 - radius_m)
    return radius_m - hypot(max(qx, 0.0), max(qy, 0.0)) - min(max(qx, qy), 0.0)


def least_edge_m(positions, port_diameter_m, window_length_m, window_width_m, corner_radius_m):
    """Least distance from a port's edge to the window's edge, corners included; negative when a port leaves it."""
    return (
        min(edge_distance_m(x, y, window_length_m, window_width_m, corner_radius_m) for x, y in positions)
        - port_diameter_m / 2
    )


def least_web_m(positions, port_diameter_m):
    """Least refractory between the edges of two ports; negative when they overlap; None for one port."""
    least = inf
    ordered = sorted(positions)
    for i, (x, y) in enumerate(ordered):
        for j in range(i + 1, len(ordered)):
            x2, y2 = ordered[j]
            if x2 - x >= least:
                break
            least = min(least, hypot(x2 - x, y2 - y))
    return least - port_diameter_m if least < inf else None
