"""The face: the window in the steel and the ports in it."""

from dataclasses import dataclass

from ..physics import port_field


@dataclass(frozen=True)
class Face:
    """Seen from the fire; ports as (x, y) from the centre, x along the body, row by row from the lower left.

    `round`: a disc of a pipe. Pitches and web are None where there is but one row or port.
    """

    round: bool
    window_length_m: float
    window_width_m: float
    window_radius_m: float  # of its corners; of a round window its own
    window_area_m2: float
    ports: tuple[tuple[float, float], ...]
    row_counts: tuple[int, ...]
    port_diameter_m: float
    port_count: int
    port_area_m2: float
    open_fraction: float
    row_pitch_m: float | None
    port_pitch_m: float | None
    min_web_m: float | None
    min_edge_m: float


def face(
    body_kind: str,
    body_length: float,
    body_width: float,
    setback: float,
    corner_radius: float,
    port_diameter: float,
    rows: int,
    ports_per_row: int,
    pattern: str,
    edge_margin: float,
) -> Face:
    is_round = body_kind == "pipe"
    length, width = body_length - 2 * setback, body_width - 2 * setback
    # A circle is the rounded rectangle whose corners meet.
    radius = width / 2 if is_round else corner_radius
    window_m2 = port_field.rounded_rectangle_area_m2(length, width, radius)
    field = (pattern, length, width, edge_margin, port_diameter, rows, ports_per_row)
    found = port_field.port_rows(*field, round_window=is_round)
    ports = tuple(port for row in found for port in row)
    along, across = port_field.pitches_m(*field)
    ports_m2 = port_field.port_area_m2(len(ports), port_diameter)
    return Face(
        round=is_round,
        window_length_m=length,
        window_width_m=width,
        window_radius_m=radius,
        window_area_m2=window_m2,
        ports=ports,
        row_counts=tuple(len(row) for row in found),
        port_diameter_m=port_diameter,
        port_count=len(ports),
        port_area_m2=ports_m2,
        open_fraction=ports_m2 / window_m2,
        row_pitch_m=across,
        port_pitch_m=along,
        min_web_m=port_field.least_web_m(ports, port_diameter),
        min_edge_m=port_field.least_edge_m(ports, port_diameter, length, width, radius),
    )
