"""The steel body: pieces to cut, stock to buy, window, inlet hole, baffle blank, welds, numbers of the fit checks.

The body is a closed box: rectangular tube or four plates with two end caps, or round pipe with two discs.
"""

import math
from dataclasses import dataclass
from functools import lru_cache
from itertools import product

from ..errors import InputError, require
from .stock import NOISE_M, mm, pipe_section_m2, plate_mass_kg, tube_inside_radius_m, tube_section_m2

KINDS = ("tube", "plates", "pipe")
CAP_WAYS = ("in", "on")
BAFFLE_BEND_DEG = 60  # that a design begins with


@dataclass(frozen=True)
class Piece:
    """One line of a cut list; mass_kg is that of one piece, `count` pieces are cut. Width of a disc is its diameter.

    `name` is what the catalogue has words for.
    """

    name: str
    stock: str
    length_m: float
    width_m: float
    thickness_m: float
    count: int
    mass_kg: float


@dataclass(frozen=True)
class Body:
    """The steel body taken apart.

    tube_length_m is the tube, plate or pipe along its axis; cap_*_m the end caps; inside_*_m the clear inside, along
    the face's length, its width, and the depth from face to back. A round body has inside_length_m = inside_width_m =
    bore.
    """

    pieces: tuple
    tube_length_m: float
    cap_length_m: float
    cap_width_m: float
    cap_corner_m: float
    inside_length_m: float
    inside_width_m: float
    inside_depth_m: float
    weld_m: float
    mass_kg: float


def body(
    *,
    kind,
    length_m,
    width_m,
    depth_m,
    wall_m,
    caps="in",
    cap_thickness_m=None,
    cap_gap_m=0.0004,
    inside_radius_m=None,
    window_area_m2=0.0,
    inlet_outside_m=0.0,
    inlet_hole_m=0.0,
    at_end=False,
    inlets=1,
):
    """Pieces, inside dimensions, weld length and mass of the steel body (inlet pipe and baffle apart).

        tube length = L (caps in the bore) or L - 2*cap (caps on the ends); cap in the bore = bore - 2*gap

    Arguments:
        kind                  tube | plates | pipe
        length_m, width_m     outside of the face side [m]; a pipe body takes width_m as its outside diameter
        depth_m               outside depth, face to back [m]
        wall_m                wall thickness [m], under half the narrow side
        caps                  in | on: end caps (pipe: face and back discs) set in the bore or on the ends
        cap_thickness_m       cap, or disc of a pipe body [m]; None = wall
        cap_gap_m             gap left round a cap set in the bore [m] >= 0
        inside_radius_m       inside corner radius of the tube [m]; None = one wall; plates have none
        window_area_m2        opening cut in the face [m2], taken off the mass
        inlet_outside_m       outside diameter of an inlet pipe [m], for its weld
        inlet_hole_m          hole for an inlet [m], taken off the mass
        at_end                whether that is in one of the end caps
        inlets                pipes and holes, all alike
    Returns: Body
    Raises: InputError for body_kind, body_length, body_width, body_depth, wall, caps, cap_gap
    Assumes: butt and corner seams welded once round from outside; masses from nominal sizes
    Source: geometry; tube radius common practice
    Checked by: tests/test_making_body.py (hand take-off, common practice body 6.5 x 3 x 3 in)
    """
    cap = wall_m if cap_thickness_m is None else cap_thickness_m
    require(kind in KINDS, "body_kind", kind, "must be one of " + ", ".join(KINDS), "tube")
    require(caps in CAP_WAYS, "caps", caps, "must be in or on", "in")
    require(wall_m > 0, "wall", mm(wall_m), "must be above 0", "6.35 mm")
    for field, size in (("body_width", width_m), ("body_depth", depth_m), ("body_length", length_m)):
        require(4 * wall_m < size < math.inf, field, mm(size), "must be over four walls", mm(5 * wall_m))
    require(cap > 0, "cap_thickness", mm(cap), "must be above 0", mm(wall_m))
    require(0 <= cap_gap_m < wall_m, "cap_gap", mm(cap_gap_m), "must be 0 or more and under one wall", "0.4 mm")
    maker = {"tube": _tube_body, "plates": _plate_body, "pipe": _pipe_body}[kind]
    return maker(
        length_m,
        width_m,
        depth_m,
        wall_m,
        caps,
        cap,
        cap_gap_m,
        inside_radius_m,
        window_area_m2,
        inlets * inlet_outside_m,
        inlets * math.pi / 4 * inlet_hole_m**2,
        at_end,
    )


def _cap_size(width, depth, wall, caps, gap, radius):
    """(width, depth, corner radius) of an end cap; a cap set in with wide gaps may be round at its ends."""
    if caps == "on":
        return width, depth, radius + wall if radius else 0.0
    a, b = width - 2 * wall - 2 * gap, depth - 2 * wall - 2 * gap
    return a, b, min(radius, a / 2, b / 2)


def _rounded_area(a, b, r):
    return a * b - (4 - math.pi) * r * r


def _rounded_perimeter(a, b, r):
    return 2 * (a + b) - (8 - 2 * math.pi) * r


def _tube_body(length, width, depth, wall, caps, cap, gap, radius, window, inlet, inlet_hole, at_end):
    radius = tube_inside_radius_m(wall) if radius is None else radius
    tube_length = length if caps == "in" else length - 2 * cap
    section = tube_section_m2(width_m=width, depth_m=depth, wall_m=wall, inside_radius_m=radius)
    a, b, corner = _cap_size(width, depth, wall, caps, gap, radius)
    tube = plate_mass_kg(area_m2=section, thickness_m=tube_length) - plate_mass_kg(
        area_m2=window + (0.0 if at_end else inlet_hole), thickness_m=wall
    )
    cap_mass = _cap_mass(_rounded_area(a, b, corner), cap, inlet_hole if at_end else 0.0)
    pieces = (
        Piece(
            "body tube",
            "tube",
            tube_length,
            width,
            wall,
            1,
            tube,
        ),
        Piece(
            "end cap",
            "plate",
            b,
            a,
            cap,
            2,
            cap_mass,
        ),
    )
    weld = 2 * _rounded_perimeter(a, b, corner) + math.pi * inlet
    return Body(
        pieces,
        tube_length,
        b,
        a,
        corner,
        length - 2 * cap,
        width - 2 * wall,
        depth - 2 * wall,
        weld,
        tube + 2 * cap_mass,
    )


def _cap_mass(area, cap, hole):
    """Of each of two, the hole of one shared between them."""
    return plate_mass_kg(area_m2=area - hole / 2, thickness_m=cap)


def _plate_body(length, width, depth, wall, caps, cap, gap, radius, window, inlet, inlet_hole, at_end):
    del radius  # plates meet in square corners
    side_length = length if caps == "in" else length - 2 * cap
    a, b, corner = _cap_size(width, depth, wall, caps, gap, 0.0)

    def plate(name, width_m, count, hole):
        mass = plate_mass_kg(area_m2=side_length * width_m - hole, thickness_m=wall)
        return Piece(name, "plate", side_length, width_m, wall, count, mass)

    pieces = (
        plate("face plate", width, 1, window),
        plate("back plate", width, 1, 0.0 if at_end else inlet_hole),
        plate("side plate", depth - 2 * wall, 2, 0.0),
        Piece(
            "end cap",
            "plate",
            b,
            a,
            cap,
            2,
            _cap_mass(a * b, cap, inlet_hole if at_end else 0.0),
        ),
    )
    weld = 4 * side_length + 4 * (a + b) + math.pi * inlet
    return Body(
        pieces,
        side_length,
        b,
        a,
        corner,
        length - 2 * cap,
        width - 2 * wall,
        depth - 2 * wall,
        weld,
        sum(piece.mass_kg * piece.count for piece in pieces),
    )


def _pipe_body(length, width, depth, wall, caps, cap, gap, radius, window, inlet, inlet_hole, at_end):
    del radius, at_end
    require(
        abs(length - width) < NOISE_M,
        "body_length",
        mm(length),
        "must equal body_width when the body is a pipe",
        mm(width),
    )
    pipe_length = depth if caps == "in" else depth - 2 * cap
    disc = width - 2 * wall - 2 * gap if caps == "in" else width
    full = math.pi / 4 * disc**2
    require(
        max(window, inlet_hole) < full,
        "body_width",
        mm(width),
        "must be wider than its window and its inlet hole",
        mm(2 * math.sqrt(max(window, inlet_hole) / math.pi) + 4 * wall),
    )
    pipe = plate_mass_kg(area_m2=pipe_section_m2(outside_m=width, wall_m=wall), thickness_m=pipe_length)
    face = plate_mass_kg(area_m2=full - window, thickness_m=cap)
    back = plate_mass_kg(area_m2=full - inlet_hole, thickness_m=cap)
    pieces = (
        Piece("body pipe", "pipe", pipe_length, width, wall, 1, pipe),
        Piece("face disc", "plate", disc, disc, cap, 1, face),
        Piece("back disc", "plate", disc, disc, cap, 1, back),
    )
    return Body(
        pieces,
        pipe_length,
        disc,
        disc,
        disc / 2,
        width - 2 * wall,
        width - 2 * wall,
        depth - 2 * cap,
        math.pi * (2 * disc + inlet),
        pipe + face + back,
    )


def inlet_piece(*, outside_m, wall_m, length_m, count=1):
    """The inlet pipe as a Piece, plain at one end for welding; `count` of them.

    Arguments:
        outside_m, wall_m    outside diameter and wall of the pipe [m]
        length_m             length as welded in [m] > 0
    Source: pipe mass pi*(D-t)*t*density (ASME B36.10M form)
    Checked by: tests/reference/steel_mass.csv
    """
    require(length_m > 0, "inlet_length", mm(length_m), "must be above 0", "75 mm")
    mass = plate_mass_kg(area_m2=pipe_section_m2(outside_m=outside_m, wall_m=wall_m), thickness_m=length_m)
    return Piece("inlet pipe", "inlet pipe", length_m, outside_m, wall_m, count, mass)


@dataclass(frozen=True)
class Bar:
    """One bought length and what is cut from it, in cutting order; the rest after the last saw cut is offcut_m."""

    stock_m: float
    cuts: tuple
    offcut_m: float


@dataclass(frozen=True)
class CutPlan:
    """Bars to buy whole; bought_m = used_m + kerf_m + offcut_m."""

    bars: tuple
    bought_m: float
    used_m: float
    kerf_m: float
    offcut_m: float


STATES = 250  # counts of pieces that the search for the least goes through, for time


def cut_plan(*, pieces, stock_lengths_m, kerf_m):
    """Which bars to buy and what to cut from each: the least length in all, and of equal ones the fewest bars.

    n pieces need n - 1 saw cuts when they use the bar up, else n.

        least(pieces) = min over ways to fill a bar of (length of the bar + least(pieces left));  least(none) = 0

    Exact while the counts of pieces are within `STATES`. Beyond, the pieces are parted into equal shares, as burners
    are, and shares that can be solved are put together as they buy least; or all bars are filled to one
    length, longest piece first, where that buys less.

    Arguments:
        pieces            (name, length_m, count) triples
        stock_lengths_m   lengths the shop sells [m], any order
        kerf_m            width of a saw cut [m] >= 0
    Returns: CutPlan, cuts as (name, length_m)
    Raises: InputError for stock_lengths, kerf
    Source: dynamic programming; first-fit decreasing: common practice
    Checked by: tests/test_making_body.py (hand examples, all ways to cut a few pieces, properties)
    """
    require(kerf_m >= 0 and kerf_m < math.inf, "kerf", mm(kerf_m), "must be 0 or more", "3 mm")
    lengths = sorted(stock_lengths_m)
    require(
        bool(lengths) and all(0 < n < math.inf for n in lengths),
        "stock_lengths",
        "",
        "needs at least one length above 0",
        "6096 mm",
    )
    for name, length, _ in pieces:
        require(
            0 < length <= lengths[-1] + NOISE_M,
            "stock_lengths",
            mm(lengths[-1]),
            f"must be at least as long as {name}, {mm(length)}",
            mm(length),
        )
    cuts: dict[int, list] = {}  # by length in whole NOISE_M, longest first
    for name, length, count in sorted(pieces, key=lambda piece: -piece[1]):
        cuts.setdefault(_whole(length), []).extend([(name, length)] * count)
    sold = {_whole(length): length for length in lengths}
    wanted = tuple((length, len(named)) for length, named in cuts.items())
    bars = []
    for stock, counts in _least_bars(wanted, tuple(sold), _whole(kerf_m)):
        mine = [cuts[length].pop(0) for length, count in zip(cuts, counts) for _ in range(count)]
        used = sum(length for _, length in mine)
        bars.append(Bar(sold[stock], tuple(mine), max(0.0, sold[stock] - used - len(mine) * kerf_m)))
    return _plan(bars)


def _whole(length_m):
    return round(length_m / NOISE_M)


@lru_cache(maxsize=256)
def _least_bars(wanted, lengths, kerf):
    """[(length of a bar, how many of each piece are cut from it)], longest bar first; wanted: (length, count)."""
    shares = math.gcd(*(count for _, count in wanted))
    share = [(length, count // shares) for length, count in wanted]
    most = 0  # shares that are solved together
    while most < shares and math.prod((most + 1) * count + 1 for _, count in share) <= STATES:
        most += 1
    found = []
    if most:
        least = _least([(length, most * count) for length, count in share], lengths, kerf)
        firsts = [tuple(part * count for _, count in share) for part in range(most + 1)]
        chain = [(0, 0, 0)]  # length, bars, shares that are bought first
        for n in range(1, shares + 1):
            chain.append(
                min(
                    (least[firsts[part]][0] + chain[n - part][0], least[firsts[part]][1] + chain[n - part][1], part)
                    for part in range(1, min(n, most) + 1)
                )
            )
        bars, left = [], shares
        while left:
            part = chain[left][2]
            bars += _read(least, firsts[part])
            left -= part
        found.append(bars)
    if most < shares:
        found += [_to_one_length(wanted, lengths, fill, kerf) for fill in lengths if fill >= wanted[0][0] - 1]
    best = min(found, key=lambda bars: (sum(length for length, _ in bars), len(bars)))
    return sorted(best, key=lambda bar: -bar[0])


def _least(wanted, lengths, kerf):
    """{counts: (least length, bars, first bar, counts left)} for all counts up to those wanted."""
    fillings = _fillings(wanted, lengths, kerf)
    every = product(*(range(count + 1) for _, count in wanted))
    least = {next(every): (0, 0, 0, ())}
    for counts in every:
        best = None
        for length, filling in fillings:
            left = tuple([a - b if a > b else 0 for a, b in zip(counts, filling)])
            if left != counts:
                others, bars, _, _ = least[left]
                if best is None or (others + length, bars + 1) < best[:2]:
                    best = others + length, bars + 1, length, left
        least[counts] = best
    return least


def _read(least, counts):
    bars = []
    while any(counts):
        _, _, length, left = least[counts]
        bars.append((length, tuple(a - b for a, b in zip(counts, left))))
        counts = left
    return bars


def _fillings(wanted, lengths, kerf):
    """[(length, counts)] of the ways to fill a bar that none as short beats; longest bar and most long pieces first."""
    found: dict[tuple, int] = {}
    for stock in lengths:
        ways = [((), stock + kerf + 1)]
        for number, (length, count) in enumerate(wanted, 1):
            ways = [
                ((*counts, n), room - n * (length + kerf))
                for counts, room in ways
                for full in [min(count, room // (length + kerf))]
                for n in range(full if number == len(wanted) else 0, full + 1)
            ]
        for counts, _ in ways:
            found.setdefault(counts, stock)
    kept: list = []
    for counts, stock in sorted(found.items(), key=lambda one: (one[1], [-n for n in one[0]])):
        if any(counts) and not any(all(a <= b for a, b in zip(counts, more)) for _, more in kept):
            kept.append((stock, counts))
    return kept[::-1]


def _to_one_length(wanted, lengths, fill, kerf):
    """Bars filled to one length, longest piece first, into the first with room; each then as short as is sold."""
    rooms, bars = [], []
    for at, (length, count) in enumerate(wanted):
        for _ in range(count):
            bar = next((n for n, room in enumerate(rooms) if room >= length + kerf - 1), len(rooms))
            if bar == len(rooms):
                rooms.append(fill + kerf)
                bars.append([0] * len(wanted))
            rooms[bar] -= length + kerf
            bars[bar][at] += 1
    return [(next(n for n in lengths if n >= fill - room - 1), tuple(cuts)) for room, cuts in zip(rooms, bars)]


def _plan(bars):
    bought = sum(bar.stock_m for bar in bars)
    used = sum(length for bar in bars for _, length in bar.cuts)
    offcut = sum(bar.offcut_m for bar in bars)
    return CutPlan(tuple(bars), bought, used, bought - used - offcut, offcut)


@dataclass(frozen=True)
class NippleChoice:
    """How to come by the inlet nipples: buy `count` of stock_m, each gives pieces_each; cost_each is one inlet's share.

    `way`: halves, cut (one end off) or whole, its second thread on it.
    """

    stock_m: float
    pieces_each: int
    count: int
    cost: float
    cost_each: float
    way: str


def nipple_choice(*, needed_m, offers, kerf_m, inlets=1, thread_m=0.0):
    """The cheapest way to have a plain-ended nipple for each inlet: a whole one cut to length, or half of a longer one.

    A bought nipple is threaded at both ends, so it gives at most two pieces with one threaded and one plain end. One
    too short to lose its second thread is taken only where no other is on sale.

    Arguments:
        needed_m   length of the inlet pipe [m] > 0
        offers     (length_m, price) of the nipples on sale
        kerf_m     width of a saw cut [m]
        inlets     how many are wanted at once >= 1
        thread_m   that is cut off a plain end [m]
    Raises: InputError for inlet_length when every nipple is too short
    Source: common practice
    Checked by: tests/test_making_body.py
    """
    require(needed_m > 0, "inlet_length", mm(needed_m), "must be above 0", "75 mm")
    require(inlets >= 1, "batch_size", inlets, "must be 1 or more", "1")
    ways = []
    for length, price in offers:
        pieces = 2 if length >= 2 * needed_m + kerf_m - NOISE_M else 1 if length >= needed_m - NOISE_M else 0
        if pieces:
            count, threaded = math.ceil(inlets / pieces), length < needed_m + thread_m - NOISE_M
            ways.append((threaded, count * price, price / pieces, length, pieces, count))
    if not ways:
        longest = max((length for length, _ in offers), default=0.0)
        raise InputError(
            "inlet_length", mm(needed_m), "must not be longer than the longest nipple on sale", mm(longest)
        )
    threaded, cost, _, length, pieces, count = min(ways)
    way = "halves" if pieces == 2 else "whole" if threaded else "cut"
    return NippleChoice(length, pieces, count, cost, cost / inlets, way)


@dataclass(frozen=True)
class WindowCut:
    """How the window is cut, centre of the face as origin, x along the body.

    drills are the hole centres, drill_m their diameter; cuts are straight (x1, y1, x2, y2) lines from hole to hole on
    the outline, cut_length_m all of them; corner_m is the radius that the hole leaves; area_m2 the opening.
    """

    drills: tuple
    drill_m: float
    cuts: tuple
    cut_length_m: float
    corner_m: float
    area_m2: float


def window_cut(*, length_m, width_m, corner_drill_m):
    """The rectangular window: four corner relief holes drilled first, straight cuts between them.

    Each hole touches the two edges of its corner, so the corner has the radius of the drill.

        centres (+-(L - d)/2, +-(W - d)/2);   cut length = 2*(L - d) + 2*(W - d)

    Arguments:
        length_m, width_m   window [m]
        corner_drill_m      drill [m], above 0 and not over the narrow side
    Raises: InputError for corner_drill
    Source: geometry; 3/8 in relief common practice
    Checked by: tests/test_making_body.py
    """
    narrow = min(length_m, width_m)
    require(
        0 < corner_drill_m <= narrow + NOISE_M,
        "corner_drill",
        mm(corner_drill_m),
        "must be above 0 and not over the window's narrow side",
        mm(min(narrow, 0.0095250)),
    )
    d = min(corner_drill_m, narrow)
    x, y = (length_m - d) / 2, (width_m - d) / 2
    half_l, half_w = length_m / 2, width_m / 2
    drills = ((-x, -y), (x, -y), (x, y), (-x, y))
    cuts = ((-x, -half_w, x, -half_w), (half_l, -y, half_l, y), (x, half_w, -x, half_w), (-half_l, y, -half_l, -y))
    return WindowCut(drills, d, cuts, 4 * (x + y), d / 2, length_m * width_m - (4 - math.pi) * d * d / 4)


def round_window_cut(*, diameter_m):
    """The round window of a pipe body: one circular cut, no relief holes."""
    require(diameter_m > 0, "setback", mm(diameter_m), "must leave a window in the face")
    return WindowCut((), 0.0, (), math.pi * diameter_m, diameter_m / 2, math.pi / 4 * diameter_m**2)


def bend_allowance_m(*, angle_deg, inside_radius_m, thickness_m, k_factor):
    """Length of the neutral line through one bend.

        BA = pi * A/180 * (R + K*T)

    Arguments:
        angle_deg          A, angle bent through [deg] 0 .. 180
        inside_radius_m    R [m] >= 0
        thickness_m        T [m] > 0
        k_factor           K, neutral line from the inside face over T; 0.33 tight air bend .. 0.5; common practice 0.33
                           to 0.44
    Source: sheet-metal handbooks, definition of the K-factor (published); K values common practice
    Checked by: tests/test_making_body.py
    """
    require(0 <= angle_deg <= 180, "baffle_bend_angle", f"{angle_deg:g} deg", "must be 0 to 180 deg", "60 deg")
    require(inside_radius_m >= 0, "baffle_radius", mm(inside_radius_m), "must be 0 or more", mm(thickness_m))
    require(thickness_m > 0, "baffle_thickness", mm(thickness_m), "must be above 0", "1.5 mm")
    require(0 <= k_factor <= 0.5, "k_factor", k_factor, "must be 0 to 0.5", "0.4")
    return math.radians(angle_deg) * (inside_radius_m + k_factor * thickness_m)


@dataclass(frozen=True)
class Baffle:
    """The perforated baffle, flat. Blank centre is the origin, x along the body, y across; a bend runs along y = 0.

    blank_length_m (x) by blank_width_m (y, the developed length across the bend), both the diameter of a round one;
    leg_m is one flat beside the bend, height_m the overall height when bent; holes are (x, y) on the blank; bend_lines
    are (y, angle_deg, allowance_m); web_m is what is left at least between holes, and from a hole to an edge or bend.
    """

    blank_length_m: float
    blank_width_m: float
    leg_m: float
    height_m: float
    bend_lines: tuple
    holes: tuple
    hole_m: float
    web_m: float
    mass_kg: float


def baffle(*, length_m, span_m, thickness_m, angle_deg, inside_radius_m, k_factor, hole_m, holes):
    """A plate bent once along its middle into a roof, its ridge toward the inlet, its holes spread over both legs.

        rho = R + T/2, a = A/2;  leg = ((S - T*sin a)/2 - rho*sin a) / cos a
        height = leg*sin a + rho*(1 - cos a) + T/2*(1 + cos a);  blank width = 2*leg + BA

    Arguments:
        length_m          along the body [m]
        span_m            S, width between the outer edges when bent: inside width less its gaps [m]
        thickness_m       T [m]; inside_radius_m R [m]; angle_deg A bent through [deg], 0 = flat plate, under 150
        k_factor          neutral line, see bend_allowance_m
        hole_m, holes     diameter [m] and count of the holes
    Returns: Baffle
    Raises: InputError naming baffle_*
    Source: geometry; bend allowance by K-factor
    Checked by: tests/test_making_body.py (hand triangle, refolded outline)
    """
    require(length_m > 0, "baffle_length", mm(length_m), "must be above 0")
    require(0 <= angle_deg < 150, "baffle_bend_angle", f"{angle_deg:g} deg", "must be 0 to under 150 deg", "60 deg")
    _holes_are_holes(hole_m, holes)
    allowance = bend_allowance_m(
        angle_deg=angle_deg, inside_radius_m=inside_radius_m, thickness_m=thickness_m, k_factor=k_factor
    )
    a, rho = math.radians(angle_deg / 2), inside_radius_m + thickness_m / 2
    leg = ((span_m - thickness_m * math.sin(a)) / 2 - rho * math.sin(a)) / math.cos(a)
    require(leg > 0, "baffle_thickness", mm(thickness_m), "must leave legs beside the bend", mm(span_m / 20))
    height = leg * math.sin(a) + rho * (1 - math.cos(a)) + thickness_m / 2 * (1 + math.cos(a))
    width = 2 * leg + allowance
    if angle_deg:
        fields = [(sign * (allowance + leg) / 2, leg, n) for sign, n in ((-1, holes // 2), (1, holes - holes // 2))]
    else:
        fields = [(0.0, width, holes)]
    placed, web = [], math.inf
    for y, across, n in fields:
        spots, least = _spread(length_m, across, n, hole_m)
        placed += [(x, y + up) for x, up in spots]
        web = min(web, least)
    area = length_m * width - holes * math.pi / 4 * hole_m**2
    return Baffle(
        length_m,
        width,
        leg,
        height,
        ((0.0, angle_deg, allowance),) if angle_deg else (),
        tuple(placed),
        hole_m,
        web,
        plate_mass_kg(area_m2=area, thickness_m=thickness_m),
    )


def round_baffle(*, diameter_m, thickness_m, hole_m, holes):
    """A flat disc for a round body, its holes on rings of equal width, each ring's share in proportion to its area.

    Arguments: diameter_m of the disc [m]; thickness_m [m]; hole_m diameter [m] and count of the holes
    Returns: Baffle without a bend
    Raises: InputError naming baffle_*
    Source: geometry
    Checked by: tests/test_making_body.py
    """
    require(
        0 < thickness_m < diameter_m < math.inf,
        "baffle_thickness",
        mm(thickness_m),
        "must be above 0 and under the bore",
    )
    _holes_are_holes(hole_m, holes)
    rings = max(1, round(math.sqrt(holes / math.pi)))
    wanted = [holes * (2 * ring + 1) / rings**2 for ring in range(rings)]
    counts = [int(share) for share in wanted]
    for ring in sorted(range(rings), key=lambda i: counts[i] - wanted[i])[: holes - sum(counts)]:
        counts[ring] += 1
    step = diameter_m / 2 / rings
    spots = [
        ((ring + 0.5) * step * math.sin(2 * math.pi * i / n), (ring + 0.5) * step * math.cos(2 * math.pi * i / n))
        for ring, n in enumerate(counts)
        for i in range(n)
    ]
    # From ring to ring, round each ring, and from the outer ring to the rim.
    gaps = [step] * (rings > 1) + [
        2 * (ring + 0.5) * step * math.sin(math.pi / n) for ring, n in enumerate(counts) if n > 1
    ]
    web = min([gap - hole_m for gap in gaps] + [step / 2 - hole_m / 2])
    if holes == 1:
        spots, web = [(0.0, 0.0)], (diameter_m - hole_m) / 2
    area = math.pi / 4 * (diameter_m**2 - holes * hole_m**2)
    return Baffle(
        diameter_m,
        diameter_m,
        diameter_m / 2,
        thickness_m,
        (),
        tuple(spots),
        hole_m,
        web,
        plate_mass_kg(area_m2=area, thickness_m=thickness_m),
    )


def _holes_are_holes(hole_m, holes):
    require(0 < hole_m < math.inf, "baffle_hole_diameter", mm(hole_m), "must be above 0", "6 mm")
    require(holes >= 1, "baffle_holes", holes, "must be 1 or more", "1")


def _spread(length, width, count, hole):
    """([(x, y)], least web) of holes in rows over a rectangle, cells as nearly square as the count allows."""
    if count == 0:
        return [], math.inf
    rows = round(math.sqrt(count * width / length)) or 1
    rows = min(count, rows)
    counts = [count // rows + (1 if row < count % rows else 0) for row in range(rows)]
    spots = [
        ((i + 0.5) * length / n - length / 2, (row + 0.5) * width / rows - width / 2)
        for row, n in enumerate(counts)
        for i in range(n)
    ]
    pitches = [length / counts[0]] * (counts[0] > 1) + [width / rows] * (rows > 1)
    edge = min(length / counts[0], width / rows) / 2
    return spots, min([pitch - hole for pitch in pitches] + [edge - hole / 2])


def cap_corner_clearance_m(*, gap_m, cap_corner_m, tube_inside_radius_m):
    """Gap along the diagonal between a cap's eased corner and the tube's inside radius [m]; negative = it jams.

        g*sqrt(2) + (sqrt(2) - 1)*(rc - rt)

    Arguments: gap_m g on each side [m]; cap_corner_m rc; tube_inside_radius_m rt [m]
    Source: geometry: an arc of radius r leaves r*(sqrt(2) - 1) to the square corner
    Checked by: tests/test_making_body.py
    """
    return gap_m * math.sqrt(2) + (math.sqrt(2) - 1) * (cap_corner_m - tube_inside_radius_m)


def lip_ledge_m(*, setback_m, wall_m, inside_radius_m=0.0):
    """Flat width of the steel lip inside the bore, from where the corner's inside radius ends to the window [m].

        ledge = setback - wall - r;  negative: the window's edge lies on the rounded corner

    Arguments: setback_m, wall_m [m]; inside_radius_m r of the tube, 0 beside a cap, in plates and in a pipe [m]
    Source: geometry
    Checked by: tests/test_making_body.py
    """
    return setback_m - wall_m - inside_radius_m


def lip_cover_m(*, grip_m, wall_m):
    """Height of refractory over the steel lip inside the body [m] = grip - wall."""
    return grip_m - wall_m


def inlet_flat_clearance_m(*, side_m, corner_outside_radius_m, hole_m):
    """Flat steel left beside the inlet hole, on each side [m] = (side - 2*R - hole) / 2; negative = it runs into the
    corner.

    Arguments: side_m outside width of the back [m]; corner_outside_radius_m R of the tube, 0 for plates [m]; hole_m [m]
    """
    return (side_m - 2 * corner_outside_radius_m - hole_m) / 2


def baffle_side_gap_m(*, side_gap_m, corner_radius_m, from_flat_m):
    """Room beside a baffle's edge where it slides along the inside of a tube with rounded corners [m].

        gap = g - r + sqrt(r**2 - (r - y)**2)  while y < r, else g;  negative: the edge meets the corner

    Arguments:
        side_gap_m         g, left to the flat side [m]
        corner_radius_m    r, inside corner of the tube [m], 0 for plates
        from_flat_m        y, from the inside of face or back to the edge, the nearer [m]
    Source: geometry: a circle of radius r that touches both flats
    Checked by: tests/test_making_body.py
    """
    r, y = corner_radius_m, max(from_flat_m, 0.0)
    return side_gap_m if y >= r else side_gap_m - r + math.sqrt(r * r - (r - y) ** 2)


def pipe_over_mould_m(*, block_thickness_m, grip_m, axis_m, pipe_outside_m, mould_height_m):
    """From the mould's top edge up to an inlet pipe at the end of a body that stands at its mark [m].

        T - g + a - D/2 - H;  negative: the pipe sits on the edge before the body is at its mark

    Arguments:
        block_thickness_m T, grip_m g [m]; axis_m a, outside of the face to the pipe's axis [m]
        pipe_outside_m D, mould_height_m H over the base [m]
    Source: geometry
    Checked by: tests/test_making_body.py
    """
    return block_thickness_m - grip_m + axis_m - pipe_outside_m / 2 - mould_height_m
