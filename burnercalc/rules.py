"""What settings owe each other: a design that breaks one of these cannot be drawn or computed, so it is refused.

Each rule reads the values it weighs and returns an InputError that names the setting to change and the nearest value
that works, or None. What can be built but should not be is not refused here; it gets a verdict in its chapter.
"""
from .errors import InputError
from .rules_heat import HEAT_RULES
from .units import show


def _window_fits(v, side):
    span = v[side] - 2 * v["setback"]
    if not span > 1e-9:
        return InputError("setback", _text(v, "setback"), f"must leave a window: less than half of {side.replace('_', ' ')} "
                          f"({_show(v, v[side])})", _show(v, 0.25 * v[side]), (side,))


def _window_length(v):
    return _window_fits(v, "body_length")


def _window_width(v):
    return _window_fits(v, "body_width")


def _wall_leaves_plenum(v):
    room = min(v["body_width"], v["body_length"])
    if not 2 * v["wall"] < room - 1e-9:
        return InputError("wall", _text(v, "wall"), f"must be less than half of the box ({_show(v, room)})",
                          _show(v, room / 8), ("body_width", "body_length"))


def _setback_covers_wall(v):
    if not v["setback"] >= v["wall"] - 1e-12:
        return InputError("setback", _text(v, "setback"), "must be at least the wall, or the window would cut into the sides "
                          f"of the box ({_show(v, v['wall'])})", _show(v, v["wall"]), ("wall",))


def _corner_fits(v):
    most = min(v["body_length"], v["body_width"]) / 2 - v["setback"]
    if most > 0 and not v["corner_radius"] <= most + 1e-12:
        return InputError("corner_radius", _text(v, "corner_radius"), f"must be at most half of the window's shorter side "
                          f"({_show(v, most)})", _show(v, most), ("body_width", "body_length", "setback"))


def _grip_reaches_inside(v):
    if not v["grip"] >= v["wall"] - 1e-12:
        return InputError("grip", _text(v, "grip"), "must be at least the wall, so that refractory comes inside and holds "
                          f"on to the lip ({_show(v, v['wall'])})", _show(v, v["wall"]), ("wall",))


def _plenum_is_left(v):
    most = v["body_depth"] - v["wall"]
    if not v["grip"] < most - 1e-9:
        return InputError("grip", _text(v, "grip"), "must leave a plenum: less than the body depth without one wall "
                          f"({_show(v, most)})", _show(v, most / 4), ("body_depth", "wall"))


def _block_stands_outside(v):
    if not v["block_thickness"] > v["grip"] + 1e-9:
        return InputError("block_thickness", _text(v, "block_thickness"), "must be more than grip, so that refractory "
                          f"covers the steel on the fire side ({_show(v, v['grip'])})",
                          _show(v, v["grip"] + 0.0254), ("grip",))


def _outer_ports_fit(v, side, count, counted):
    room = v[side] - 2 * v["setback"] - v["port_diameter"]
    if count > 1 and 2 * v["setback"] < v[side] and not room - 2 * v["edge_margin"] > 1e-9:
        if room > 0:
            return InputError("edge_margin", _text(v, "edge_margin"), f"must leave room for {counted} between the margins, "
                              f"less than {_show(v, room / 2)}", _show(v, room / 4), (side, "setback", "port_diameter"))
        return InputError("port_diameter", _text(v, "port_diameter"), f"must be less than the window "
                          f"({_show(v, room + v['port_diameter'])})", _show(v, (room + v["port_diameter"]) / 2),
                          (side, "setback"))


def _long_row_fits(v):
    return _outer_ports_fit(v, "body_length", v["ports_per_row"], "a row of ports")


def _rows_fit(v):
    return _outer_ports_fit(v, "body_width", v["rows"], "more than one row")


def _short_rows_have_ports(v):
    if v["pattern"] == "staggered" and v["rows"] > 1 and v["ports_per_row"] < 2:
        return InputError("ports_per_row", v["ports_per_row"], "must be 2 or more when staggered, since short rows have "
                          "one fewer", "2", ("pattern", "rows"))


# Each rule with the settings it needs; it is skipped while one of them is itself refused.
RULES = (
    (_window_length, ("body_length", "setback")),
    (_window_width, ("body_width", "setback")),
    (_wall_leaves_plenum, ("wall", "body_width", "body_length")),
    (_setback_covers_wall, ("setback", "wall")),
    (_corner_fits, ("corner_radius", "body_width", "body_length", "setback")),
    (_grip_reaches_inside, ("grip", "wall")),
    (_plenum_is_left, ("grip", "body_depth", "wall")),
    (_block_stands_outside, ("block_thickness", "grip")),
    (_long_row_fits, ("body_length", "setback", "port_diameter", "edge_margin", "ports_per_row")),
    (_rows_fit, ("body_width", "setback", "port_diameter", "edge_margin", "rows")),
    (_short_rows_have_ports, ("pattern", "rows", "ports_per_row")),
    *HEAT_RULES,
)


def broken(values):
    """The InputErrors of every rule that `values` ({key: SI value, or None where refused}) breaks, one a setting."""
    errors = {}
    for rule, needs in RULES:
        if all(values.get(key) is not None for key in needs):
            error = rule(values)
            if error is not None:
                errors.setdefault(error.field, error)
    return list(errors.values())


def _show(v, length_m):
    return show(length_m, "length", v.get("units") or "in", exact=True)


def _text(v, key):
    return _show(v, v[key])
