"""What settings owe each other: a design that breaks one of these cannot be drawn or computed, so it is refused.

Each rule reads the values it weighs and returns an InputError that names the setting to change and the nearest value
that works, or None. What can be built but should not be is not refused here; it gets a verdict in its chapter.
"""

from datetime import timedelta
from math import pi

from .constants import INCH_M
from .errors import InputError
from .making import train
from .making.mould import MOULD_GUIDE_M
from .making.stock import board, cap_thickness_m, inlet_hole
from .parts.gas import gas
from .parts.gas_line import gas_line
from .physics import plates
from .physics.drills import drill_named
from .physics.pipes import pipe, pipe_names
from .rules_heat import HEAT_RULES
from .settings import BY_KEY
from .units import parse_quantity, show, significant

LEAST_WINDOW_M = 0.125 * INCH_M  # room for the smallest port and corner drill
MOST_BATCH_DAYS = 1000  # of work by hand; a calendar of more is no plan
BATCH_HOURS = ("hours_weld", "hours_mould", "hours_cast", "hours_finish", "moulds", "hands", "day_hours")
MOST_SAID_DIGITS = 4  # of a length in a refusal
SOLD_SCALES = ("jet_gauge", "small_gauge")
MOST_OPEN_BAFFLE = 0.75  # of the plate; closer holes run into each other


RULES = []  # (rule, the settings that it weighs), in the order they are asked


def _weighs(*settings):
    """One of RULES; it is skipped while one of these settings is itself refused, and a refusal names them all."""

    def kept(rule):
        RULES.append((rule, settings))
        return rule

    return kept


@_weighs("batch_size", *BATCH_HOURS)
def _batch_comes_to_an_end(v):
    def days(burners):
        each_s = v["hours_weld"] + v["hours_cast"] + v["hours_finish"]
        work_s = burners * each_s + min(burners, v["moulds"]) * v["hours_mould"]
        return work_s / (v["hands"] * v["day_hours"])

    if days(v["batch_size"]) > MOST_BATCH_DAYS:
        most = next((burners for burners in range(v["batch_size"], 0, -1) if days(burners) <= MOST_BATCH_DAYS), None)
        return InputError(
            "batch_size",
            v["batch_size"],
            f"must be done by hand in {MOST_BATCH_DAYS} working days, not in {days(v['batch_size']):.0f}",
            "" if most is None else str(most),
        )


@_weighs("start_date", "work_week")
def _begins_on_a_day_of_work(v):
    first, week, off = v["start_date"], int(v["work_week"]), v["days_off"]
    if first and first.weekday() >= week:
        rule = f"is a {first:%A}, no day of work in a week of {week}"
        return InputError("start_date", first, rule, str(_day_of_work(first, week, off)))


@_weighs("start_date", "work_week", "days_off")
def _begins_on_no_day_off(v):
    first, week, off = v["start_date"], int(v["work_week"]), v["days_off"]
    if first and first != (works := _day_of_work(first, week, off)):
        return InputError("start_date", first, "is one of your days off", str(works))


def _day_of_work(day, week, off):
    """That day, or the first day of work after it."""
    while day.weekday() >= week or any(first <= day <= last for first, last in off or ()):
        day += timedelta(days=1)
    return day


def _window_fits(v, side):
    span = v[side] - 2 * v["setback"]
    if not span > LEAST_WINDOW_M:
        return InputError(
            "setback",
            _text(v, "setback"),
            f"must leave a window: less than half of the {BY_KEY[side].label.lower()} "
            f"({_said(v, v[side])}), by {_said(v, LEAST_WINDOW_M / 2)} at least",
            _show(v, 0.25 * v[side]),
        )


@_weighs("setback", "body_length")
def _window_length(v):
    return _window_fits(v, "body_length")


@_weighs("setback", "body_width")
def _window_width(v):
    return _window_fits(v, "body_width")


@_weighs("wall", "body_width", "body_length", "body_depth")
def _wall_leaves_plenum(v):
    room = min(v["body_width"], v["body_length"], v["body_depth"])
    if not 4 * v["wall"] < room - 1e-9:
        return InputError(
            "wall",
            _text(v, "wall"),
            f"must be less than a quarter of the box ({_said(v, room)}), so that its rounded corners leave flats",
            _show(v, room / 8),
        )


def _cap(v):
    return cap_thickness_m(wall_m=v["wall"], unit=v["sizes"], chosen=v["cap_thickness"])


@_weighs("cap_thickness", "wall", "sizes", "body_length", "body_depth", "body_kind")
def _caps_leave_plenum(v):
    cap, side = _cap(v), "body_depth" if v["body_kind"] == "pipe" else "body_length"
    if v["cap_thickness"] != "wall" and not 4 * cap < v[side] - 1e-9:
        return InputError(
            "cap_thickness",
            _said(v, cap),
            f"must be less than a quarter of the {side.replace('_', ' ')} ({_text(v, side)})",
            _show(v, v[side] / 8),
        )


def _face(v):
    """(thickness, name) of face and back: the wall, or discs of their own of a round body."""
    if v["body_kind"] == "pipe" and v["cap_thickness"] != "wall":
        return _cap(v), "face disc"
    return v["wall"], "wall"


@_weighs("setback", "wall")
def _setback_covers_wall(v):
    if not v["setback"] >= v["wall"] - 1e-9:
        return InputError(
            "setback",
            _text(v, "setback"),
            f"must be at least the wall, or the window would cut into the sides of the box ({_said(v, v['wall'])})",
            _show(v, v["wall"]),
        )


@_weighs("setback", "cap_thickness", "wall", "sizes", "body_kind")
def _setback_covers_caps(v):
    cap = _cap(v)
    if v["body_kind"] == "pipe" or cap == v["wall"]:
        return
    if not v["setback"] >= cap - 1e-9:
        return InputError(
            "setback",
            _text(v, "setback"),
            f"must be at least the caps, or the window would cut into them ({_said(v, cap)})",
            _show(v, cap),
        )


@_weighs("corner_radius", "body_width", "body_length", "setback", "body_kind")
def _corner_fits(v):
    most = min(v["body_length"], v["body_width"]) / 2 - v["setback"]
    if v["body_kind"] != "pipe" and most > 0 and not v["corner_radius"] <= most + 1e-9:
        return InputError(
            "corner_radius",
            _text(v, "corner_radius"),
            f"must be at most half of the window's shorter side ({_said(v, most)})",
            _show(v, most),
        )


@_weighs("grip", "wall", "cap_thickness", "sizes", "body_kind")
def _grip_reaches_inside(v):
    thick, name = _face(v)
    if not v["grip"] >= thick - 1e-9:
        return InputError(
            "grip",
            _text(v, "grip"),
            f"must be at least the {name}, so that refractory comes inside and holds on to the lip ({_said(v, thick)})",
            _show(v, thick),
        )


@_weighs("grip", "body_depth", "wall", "cap_thickness", "sizes", "body_kind")
def _plenum_is_left(v):
    thick, name = _face(v)
    most = v["body_depth"] - thick
    if not v["grip"] < most - 1e-9:
        return InputError(
            "grip",
            _text(v, "grip"),
            f"must leave a plenum: less than the body depth without one {name} ({_said(v, most)})",
            _show(v, most / 4),
        )


@_weighs("block_thickness", "grip")
def _block_stands_outside(v):
    if not v["block_thickness"] > v["grip"] + 1e-9:
        return InputError(
            "block_thickness",
            _text(v, "block_thickness"),
            f"must be more than grip, so that refractory covers the steel on the fire side ({_said(v, v['grip'])})",
            _show(v, v["grip"] + INCH_M),
        )


def _outer_ports_fit(v, side, count, counted):
    room = v[side] - 2 * v["setback"] - v["port_diameter"]
    # In a round face the margin holds for a lone port, too.
    if (
        (count > 1 or v["body_kind"] == "pipe")
        and 2 * v["setback"] < v[side]
        and not room - 2 * v["edge_margin"] > 1e-9
    ):
        if room > 0:
            return InputError(
                "edge_margin",
                _text(v, "edge_margin"),
                f"must leave room for {counted} between the margins, less than {_said(v, room / 2)}",
                _show(v, room / 4),
            )
        return InputError(
            "port_diameter",
            _text(v, "port_diameter"),
            f"must be less than the window ({_said(v, room + v['port_diameter'])})",
            _show(v, (room + v["port_diameter"]) / 2),
        )


@_weighs("edge_margin", "body_length", "setback", "port_diameter", "body_kind", "ports_per_row")
def _long_row_fits(v):
    return _outer_ports_fit(v, "body_length", v["ports_per_row"], "a row of ports")


@_weighs("edge_margin", "body_width", "setback", "port_diameter", "body_kind", "rows")
def _rows_fit(v):
    return _outer_ports_fit(v, "body_width", v["rows"], "more than one row")


@_weighs("ports_per_row", "pattern", "rows")
def _short_rows_have_ports(v):
    if v["pattern"] in ("staggered", "hexagonal") and v["rows"] > 1 and v["ports_per_row"] < 2:
        return InputError(
            "ports_per_row",
            v["ports_per_row"],
            f"must be 2 or more when {v['pattern']}, since short rows have one fewer",
            "2",
        )


@_weighs("ports_per_row", "pattern", "rows")
def _rings_have_ports(v):
    least = 3 * v["rows"]
    if v["pattern"] == "rings" and v["ports_per_row"] < least:
        if least > 100:
            return InputError("rows", v["rows"], "must be 33 or fewer when in rings", "4")
        return InputError(
            "ports_per_row",
            v["ports_per_row"],
            f"must be {least} or more in {v['rows']} rings, so that the inner ring has three",
            str(least),
        )


@_weighs("body_kind", "body_length", "body_width")
def _pipe_is_round(v):
    if v["body_kind"] != "pipe" or abs(v["body_length"] - v["body_width"]) < 1e-9:
        return None
    # The side whose range takes the other's size gives way.
    low_m, high_m = (
        parse_quantity(text, "length", "body_length") for text in (BY_KEY["body_length"].low, BY_KEY["body_width"].high)
    )
    side, other = ("body_length", "body_width") if v["body_width"] >= low_m else ("body_width", "body_length")
    return InputError(
        side,
        _text(v, side),
        "must be the pipe's outside diameter, the same as the "
        f"{BY_KEY[other].label.lower()} ({_text(v, other)}), when the body is a round pipe",
        _show(v, min(v[other], high_m)),
    )


@_weighs("pattern", "body_kind")
def _pattern_suits_body(v):
    if v["body_kind"] == "pipe" and v["pattern"] in ("straight", "staggered"):
        return InputError(
            "pattern",
            v["pattern"],
            "must be hexagonal or rings in the round face of a pipe",
            "hexagonal",
        )
    if v["body_kind"] != "pipe" and v["pattern"] == "rings":
        return InputError(
            "pattern",
            v["pattern"],
            "must be straight, staggered or hexagonal in a rectangular face",
            "hexagonal",
        )


@_weighs("inlet_position", "body_kind")
def _pipe_is_fed_from_the_back(v):
    if v["body_kind"] == "pipe" and v["inlet_position"] != "centre":
        return InputError(
            "inlet_position",
            v["inlet_position"],
            "must be centre for a round pipe, which is fed through its back disc",
            "centre",
        )


@_weighs("inlets", "inlet_position", "body_kind")
def _two_inlets_are_in_the_back(v):
    if v["inlets"] > 1 and (v["inlet_position"] != "centre" or v["body_kind"] == "pipe"):
        return InputError(
            "inlets",
            f"{v['inlets']:g}",
            "must be 1 for a round pipe or with the inlet at an end; two go through the back of a box",
            "1",
        )


@_weighs("inlets", "body_length", "inlet", "wall", "cap_thickness", "sizes", "body_kind")
def _two_inlets_stand_apart(v):
    """Their holes keep a wall of steel between them and to the caps' inside, by the larger of the two racks' saws."""
    if v["inlets"] == 1 or v["body_kind"] == "pipe":
        return None
    hole_m = max(inlet_hole(outside_m=pipe(v["inlet"], "inlet").od_m, unit=unit)[0] for unit in ("in", "mm"))
    cap_m = _cap(v)
    inside_m = v["body_length"] - 2 * cap_m
    if not inside_m >= 2 * (hole_m + v["wall"]) - 1e-9:
        return InputError(
            "inlets",
            f"{v['inlets']:g}",
            "must be 1 where two holes do not go side by side: they need a body of "
            f"{_said(v, 2 * (hole_m + v['wall'] + cap_m))} or longer",
            "1",
        )


@_weighs("setback", "wall", "cap_gap", "body_kind")
def _disc_keeps_a_rim(v):
    least = v["wall"] + v["cap_gap"]
    if v["body_kind"] == "pipe" and not v["setback"] > least + 1e-6:
        return InputError(
            "setback",
            _text(v, "setback"),
            "must be more than wall and gap round a cap together, or the face disc of a round "
            f"pipe is all window ({_said(v, least)})",
            _show(v, least + 0.00635),
        )


@_weighs("inlet", "body_width", "wall", "cap_gap", "body_kind")
def _inlet_fits_disc(v):
    room = v["body_width"] - 2 * v["wall"] - 2 * v["cap_gap"]

    def hole(nps):  # the larger of the two racks', so that the tape refuses no design
        return max(inlet_hole(outside_m=pipe(nps, "inlet").od_m, unit=unit)[0] for unit in ("in", "mm"))

    if v["body_kind"] == "pipe" and not hole(v["inlet"]) < room:
        fitting = [nps for nps in pipe_names() if hole(nps) < room]
        return InputError(
            "inlet",
            v["inlet"],
            f"must leave a rim on the back disc of a round pipe ({_said(v, room)} across)",
            fitting[-1] if fitting else pipe_names()[0],
        )


@_weighs("corner_drill", "body_width", "body_length", "setback", "body_kind")
def _corner_drill_fits(v):
    most = min(v["body_length"], v["body_width"]) - 2 * v["setback"]
    if v["body_kind"] != "pipe" and most > 0 and not v["corner_drill"] <= most + 1e-9:
        return InputError(
            "corner_drill",
            _text(v, "corner_drill"),
            f"must be at most the window's shorter side ({_said(v, most)})",
            _show(v, most),
        )


@_weighs("stock_lengths", "body_length", "body_width", "body_depth")
def _rack_is_long_enough(v):
    need = max(v["body_length"], v["body_width"], v["body_depth"])
    if not v["stock_lengths"][-1] >= need - 1e-9:
        return InputError(
            "stock_lengths",
            ", ".join(_show(v, n) for n in v["stock_lengths"]),
            f"must hold a length of at least the body ({_said(v, need)})",
            "20 ft" if v["sizes"] == "in" else "6 m",
        )


@_weighs("cap_gap", "wall")
def _cap_gap_is_a_gap(v):
    if not v["cap_gap"] < v["wall"]:
        return InputError(
            "cap_gap",
            _text(v, "cap_gap"),
            f"must be less than the wall ({_said(v, v['wall'])})",
            _show(v, v["wall"] / 8),
        )


@_weighs("nipple_stock", "inlet_length", "wall", "cap_thickness", "sizes", "body_kind")
def _nipple_is_long_enough(v):
    longest = v["nipple_stock"][-1][0]
    thick, name = _face(v)
    if not v["inlet_length"] + thick <= longest + 1e-9:
        return InputError(
            "nipple_stock",
            f"up to {_said(v, longest)}",
            "must hold a nipple of at least the inlet pipe's length and the "
            f"{name} it goes through ({_said(v, v['inlet_length'] + thick)})",
            "36 in 40, 120 in 120" if v["sizes"] == "in" else "900 mm 40, 3000 mm 120",
        )


@_weighs("mould_board", "body_kind", "block_thickness")
def _frame_is_high_enough(v):
    frame = board(v["mould_board"])
    if v["body_kind"] == "pipe" and frame.kind != "plywood":
        return InputError("mould_board", frame.name, "must be plywood for a round body", "ply 3/4")
    guide_m = MOULD_GUIDE_M["mm" if v["sizes"] == "mm" else "in"]
    need = v["block_thickness"] + guide_m
    if frame.kind == "board" and not frame.width_m >= need - 1e-9:
        return InputError(
            "mould_board",
            frame.name,
            f"must be as wide as the block is thick and {_said(v, guide_m)} more ({_said(v, need)})",
            "ply 3/4",
        )


@_weighs("pin_depth", "mould_base")
def _pins_stop_in_the_base(v):
    base = board(v["mould_base"])
    if not v["pin_depth"] <= base.thickness_m + 1e-9:
        return InputError(
            "pin_depth",
            _text(v, "pin_depth"),
            f"must be at most the thickness of the base board {base.name} ({_said(v, base.thickness_m)})",
            _show(v, base.thickness_m),
        )


@_weighs("castable_water_low", "castable_water_high")
def _water_band(v):
    if not v["castable_water_low"] <= v["castable_water_high"] + 1e-9:
        return InputError(
            "castable_water_low",
            f"{100 * v['castable_water_low']:g} %",
            f"must be at most the most water ({100 * v['castable_water_high']:g} %)",
            f"{100 * v['castable_water_high']!r} %",
        )


@_weighs("port_position_tolerance", "port_diameter")
def _pins_are_near_their_marks(v):
    if not v["port_position_tolerance"] <= v["port_diameter"] * (1 + 1e-9):
        return InputError(
            "port_position_tolerance",
            _text(v, "port_position_tolerance"),
            f"must be at most one port diameter ({_text(v, 'port_diameter')})",
            _show(v, v["port_diameter"]),
        )


@_weighs(
    "baffle_holes",
    "baffle_hole_diameter",
    "body_length",
    "body_width",
    "wall",
    "baffle_bend_angle",
    "cap_thickness",
    "sizes",
    "body_kind",
)
def _baffle_is_left(v):
    length = v["body_length"] - 2 * (v["wall"] if v["body_kind"] == "pipe" else _cap(v))
    width = v["body_width"] - 2 * v["wall"]
    if v["baffle_holes"] == 0 or not min(length, width) > 0:
        return None
    plate = length * width * (pi / 4 if v["body_kind"] == "pipe" else plates.bent_plate_ratio(v["baffle_bend_angle"]))
    most = int(MOST_OPEN_BAFFLE * plate / (pi / 4 * v["baffle_hole_diameter"] ** 2))
    if not v["baffle_holes"] <= most:
        return InputError(
            "baffle_holes",
            v["baffle_holes"],
            f"must leave some plate between them: at most {most} holes of "
            f"{_text(v, 'baffle_hole_diameter')}, or 0 for no baffle",
            str(most),
        )


@_weighs("slide_hole", "mix_pipe")
def _hole_lies_in_the_pipe(v):
    if not v["slide_hole"]:
        return None
    most_m = pipe(v["mix_pipe"]).bore_m
    if not drill_named(v["slide_hole"]).diameter_m < most_m:
        return InputError(
            "slide_hole",
            _text(v, "slide_hole"),
            f"must be smaller than the mix pipe's bore ({_said(v, most_m)})",
            "",
        )


@_weighs("cylinder_left", "cylinder_fill")
def _some_gas_is_drawn(v):
    if not v["cylinder_left"] < v["cylinder_fill"]:
        return InputError(
            "cylinder_left",
            show(v["cylinder_left"], "fraction", "in", exact=True),
            f"must be less than what is in the cylinder ({show(v['cylinder_fill'], 'fraction', 'in', exact=True)})",
            BY_KEY["cylinder_left"].default,
        )


def _gauge_is_sold(v, key, sloping):
    """A scale that nobody sells is a slip of the pen, and no card can tell by which marks it is read."""
    found, line = v[key], gas_line(v["gas_from"], gas(v["fuel"], v["fuel_blend"])).there
    sloping = sloping and line
    if found == "none" and line:
        return InputError(key, found, "must be a sloping gauge: of a line no other shows what it is lit by", "auto")
    sold = {"from_cylinder": not line, "sloping": sloping}
    if isinstance(found, str) or train.scale_unit(found, unit=v["sizes"], **sold):
        return None
    said = "line_pressure" if line else "gas_pressure"
    texts = {one: show(one, said, v["sizes"], exact=True) for one in train.scales_Pa(unit=v["sizes"], **sold)}
    nearest = min(texts, key=lambda one: max(one / found, found / one))
    what = "a sloping gauge" if sloping else "a gauge"
    rule = f"must be the full scale of {what} as sold: {', '.join(texts.values())}"
    return InputError(key, show(found, said, v["units"]), rule, texts[nearest])


@_weighs("jet_gauge", "gas_from", "fuel", "sizes")
def _jet_gauge_is_sold(v):
    return _gauge_is_sold(v, "jet_gauge", sloping=False)


@_weighs("small_gauge", "gas_from", "fuel", "sizes")
def _small_gauge_is_sold(v):
    return _gauge_is_sold(v, "small_gauge", sloping=True)


@_weighs("tank_length", "tank_diameter", "cylinder")
def _tank_is_long_enough(v):
    if v["cylinder"] == "tank" and not v["tank_length"] >= v["tank_diameter"] - 1e-9:
        return InputError(
            "tank_length",
            _text(v, "tank_length"),
            f"must be at least the tank's diameter ({_text(v, 'tank_diameter')})",
            _show(v, v["tank_diameter"]),
        )


RULES += HEAT_RULES


def broken(values, key=None):
    """Each (rule, its InputError) that `values` ({key: SI value, or None where refused}) break, the slow rules last.

    With a key only the rules that weigh that setting are asked.
    """
    for rule, needs in RULES:
        if (key is None or key in needs) and all(values.get(need) is not None for need in needs):
            error = rule(values)
            if error is not None:
                error.others = tuple(dict.fromkeys((*error.others, *(need for need in needs if need != error.field))))
                yield rule, error


def _show(v, length_m):
    return show(length_m, "length", v.get("units") or "in", exact=True)


def _said(v, length_m):
    """For people to read: on a tape's mark, else three figures."""
    text, unit = _show(v, length_m), v.get("units") or "in"
    digits = sum(letter.isdigit() for letter in text)
    return (
        text if digits <= MOST_SAID_DIGITS or "/" in text else f"{significant(float(text.removesuffix(unit)))} {unit}"
    )


def _text(v, key):
    return _said(v, v[key])
