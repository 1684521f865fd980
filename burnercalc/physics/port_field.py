"""Where the ports sit: positions in the face, the window around them, and the least distances left between them.

Origin at the centre of the face, x along the body, y across it, metres.
"""
from math import hypot, inf, pi, sqrt


def row_counts(rows, ports_per_row, staggered):
    """Ports in each row: all alike, or every second row one fewer when staggered. List of int, first row first."""
    return [ports_per_row - (1 if staggered and i % 2 else 0) for i in range(rows)]


def pitch_m(span_m, margin_m, diameter_m, count):
    """Centre distance of `count` ports spread over a span, outer ports `margin_m` from its ends; None for one port.

        p = (span - 2 margin - d) / (n - 1)
    """
    return (span_m - 2 * margin_m - diameter_m) / (count - 1) if count > 1 else None


def port_positions(window_length_m, window_width_m, edge_margin_m, port_diameter_m, rows, ports_per_row, staggered):
    """Centres of the ports, row by row from the bottom, left to right.

    Returns a list of (x_m, y_m), the numbering order of the ports. A short row sits in the gaps of its neighbours.
    """
    along = pitch_m(window_length_m, edge_margin_m, port_diameter_m, ports_per_row) or 0.0
    across = pitch_m(window_width_m, edge_margin_m, port_diameter_m, rows) or 0.0
    return [((column - (count - 1) / 2) * along, (row - (rows - 1) / 2) * across)
            for row, count in enumerate(row_counts(rows, ports_per_row, staggered)) for column in range(count)]


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
    return min(edge_distance_m(x, y, window_length_m, window_width_m, corner_radius_m)
               for x, y in positions) - port_diameter_m / 2


def least_web_m(positions, port_diameter_m):
    """Least refractory between the edges of two ports; negative when they overlap; None for one port."""
    least = inf
    ordered = sorted(positions)
    for i, (x, y) in enumerate(ordered):
        for x2, y2 in ordered[i + 1:]:
            if x2 - x >= least:
                break
            least = min(least, hypot(x2 - x, y2 - y))
    return least - port_diameter_m if least < inf else None


def ports_for_area(area_m2, diameter_m):
    """Number of ports (a float) whose open area is `area_m2`."""
    return area_m2 / port_area_m2(1, diameter_m)


def diameter_for_area_m(area_m2, count):
    """Diameter of each of `count` ports whose open area together is `area_m2`, sqrt(4 A / (n pi)) [m]."""
    return sqrt(4 * area_m2 / (count * pi))
