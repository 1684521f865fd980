"""True-size drawings on sheets of paper: tiles, registration marks and the strip with check bars on each sheet, in mm.

A drawing is never shrunk to fit; what does not fit goes on a further sheet. Nothing here knows a file format.
"""

from dataclasses import dataclass
from math import ceil

from ..errors import InputError, require
from .helvetica import CAP_HEIGHT_RATIO, wrapped
from .shapes import Circle, Line, Polyline, Text, meets, placed, shape_box, stretches

# Width and height, upright. Sources: ANSI/ASME Y14.1 size A (8.5 x 11 in), ISO 216 A4 (published).
PAPERS = {"letter": (8.5 * 25.4, 11 * 25.4), "a4": (210.0, 297.0)}

# Air that every printer leaves: 6.35 mm is safe, old inkjets need more at the foot (common practice).
MARGIN_MM, BESIDE_MM = 10.0, 7.0  # at head and foot; at the sides
# How far two neighbouring sheets show the same piece of the drawing; wider where a seam would else part what is short.
OVERLAP_MM, WIDER_MM = 10.0, (15.0, 20.0, 25.0, 30.0, 37.5, 45.0, 52.5, 60.0)
# Air around a drawing, so that half the line width is not clipped.
EDGE_MM = 1.0
STRIP_MM = 31.0
# Column at the left of each drawing for the bar up the sheet.
BAR_MM = 5.0
# Between a drawing and a table on the same sheet.
GAP_MM = 4.0
SMALL_MM = 2.3 / CAP_HEIGHT_RATIO

# The largest correction for which a sheet still stays on its paper: its margins hold 6 % of half an upright Letter.
SCALE_LIMITS = (0.94, 1.06)


@dataclass(frozen=True)
class Sheet:
    """One page [mm]: shapes drawn whole, shapes seen through the window, and the printer's stretch to undo."""

    width: float
    height: float
    shapes: tuple
    seen: tuple = ()
    window: tuple = (0.0, 0.0, 0.0, 0.0)
    scale_x: float = 1.0
    scale_y: float = 1.0


@dataclass(frozen=True)
class Tile:
    """Part of a drawing for one sheet: its lower left corner in the drawing, its column and row from the top left, how
    far it shows the same as its neighbours beside and above it [mm]."""

    x: float
    y: float
    column: int
    row: int
    columns: int
    rows: int
    overlap_x: float = OVERLAP_MM
    overlap_y: float = OVERLAP_MM


def paper_size(paper):
    """(width, height) of an upright sheet [mm]; InputError for an unknown name."""
    require(paper in PAPERS, "paper", paper, "is not a paper; known: " + ", ".join(PAPERS), "letter")
    return PAPERS[paper]


def _count(length, window, overlap):
    return 1 if length <= window else ceil((length - overlap) / (window - overlap) - 1e-9)


def tiles(bounds, window_width, window_height, whole=(), better=()):
    """Tiles that together cover `bounds`, row by row from the top, neighbours overlapping by OVERLAP_MM or more.

    Arguments: bounds (x_min, y_min, x_max, y_max) [mm]; window_width, window_height of one sheet [mm]
               whole   boxes that no seam may cut, at the cost of a sheet more
               better  boxes that are better not cut, where moving the drawing on its sheets is enough; where it is not,
                       the overlap is so wide that both sheets show them whole
    Returns:   list of Tile; the drawing is centred on them, or off the middle by what keeps a box whole
    """
    x1, y1, x2, y2 = bounds
    (lefts, beside), (feet, above) = (
        _starts(low, high, window, *([(box[axis], box[axis + 2]) for box in some] for some in (whole, better)))
        for axis, low, high, window in ((0, x1, x2, window_width), (1, y1, y2, window_height))
    )
    return [
        Tile(left, foot, column, row, len(lefts), len(feet), beside, above)
        for row, foot in enumerate(reversed(feet), 1)
        for column, left in enumerate(lefts, 1)
    ]


def _starts(low, high, window, whole, better):
    """Where the tiles begin along one way, and how far they overlap. A span of `whole` too long for a sheet is kept
    clear of seams at its middle; where no count of sheets does it, they are as few as reach."""
    if _count(high - low + 2 * EDGE_MM, window, OVERLAP_MM) == 1:
        return [(low + high - window) / 2], OVERLAP_MM
    step, half = window - OVERLAP_MM, OVERLAP_MM / 2
    whole = [(a, b) if b - a <= step else ((a + b) / 2 - half, (a + b) / 2 + half) for a, b in whole]
    better, found = sorted(set(better)), []
    for overlap in (OVERLAP_MM, *(wider for wider in WIDER_MM if wider <= window / 3)):
        best, starts = min(_places(low, high, window, overlap, whole, better))
        found.append((best[0], best[1], overlap, starts))
        if best[:2] == (0, 0):
            break
    *_, overlap, starts = min(found)
    return starts, overlap


def _places(low, high, window, overlap, whole, better):
    """((sawn, parted, sheets, cut, off the middle), starts) of every place tried: how many of `whole` a seam cuts, how
    many of `better` are not whole on both sheets, and how many seams cut at all."""
    step, half = window - overlap, overlap / 2
    least = _count(high - low + 2 * EDGE_MM, window, overlap)
    for count in (least, least + 1):
        reach = count * step + overlap
        slack = (reach - (high - low)) / 2 - EDGE_MM
        first = (low + high - reach) / 2
        for n in range(21):  # the middle first, then further and further off it
            for way in (1, -1):
                starts = [first + slack * way * n / 20 + step * i for i in range(count)]
                seams = [start + half for start in starts[1:]]
                sawn = sum(any(a < seam < b for seam in seams) for a, b in whole)
                cut = [(a, b, seam) for seam in seams for a, b in better if a < seam < b]
                parted = sum(a < seam - half or b > seam + half for a, b, seam in cut)
                yield (sawn, parted, count, len(cut), n), starts


def cut_up(drawing, window_width, window_height):
    """The drawing's tiles, those left out that nothing but straight lines would run across: no tile of empty board."""
    circles = [shape for shape in drawing.shapes if isinstance(shape, Circle)]
    sawn, drilled = ([shape_box(shape) for shape in circles if shape.layer == layer] for layer in ("window", "port"))
    texts = [shape_box(shape) for shape in drawing.shapes if isinstance(shape, Text)]
    cut = tiles(drawing.bounds(), window_width, window_height, sawn, [*texts, *drilled])
    parts = [(part, shape_box(part)) for shape in drawing.shapes for part in stretches(shape)]
    return [tile for tile in cut if not _runs_through(tile, window_width, window_height, parts)]


def _runs_through(tile, width, height, parts):
    """Does nothing end, bend or stand on this tile but the text of a dimension, and no line cross another?"""
    x1, y1, x2, y2 = tile.x, tile.y, tile.x + width, tile.y + height
    ways = set()
    for part, box in parts:
        if not _touches(box, (x1, y1, x2, y2)) or (isinstance(part, Text) and part.layer == "dimension"):
            continue
        level = isinstance(part, Line) and box[1] == box[3] and box[0] < x1 and box[2] > x2
        upright = isinstance(part, Line) and box[0] == box[2] and box[1] < y1 and box[3] > y2
        if not (level or upright):
            return False
        ways.add(level)
    return len(ways) < 2


def window_of(width, height, code):
    """(x1, y1, x2, y2) of the part of a sheet that is left for the drawing."""
    return BESIDE_MM + BAR_MM, MARGIN_MM + strip_height(width, code), width - BESIDE_MM, height - MARGIN_MM


def strip_height(width, code):
    """Height of the strip at the foot; a long link code takes further lines [mm]."""
    return STRIP_MM + 4.0 * len(_code_lines(width, code))


def _code_lines(width, code):
    return wrapped("Design: " + code, SMALL_MM, width - 2 * BESIDE_MM) if code else []


def _layout(drawing, paper, code, lies):
    """(tiles, width, height) with the fewest sheets; the paper stands upright where lying it saves none, or may not."""
    short, long = paper_size(paper)
    choices = []
    for width, height in ((short, long), (long, short))[: 2 if lies else 1]:
        x1, y1, x2, y2 = window_of(width, height, code)
        choices.append((cut_up(drawing, x2 - x1, y2 - y1), width, height))
    return min(choices, key=lambda choice: len(choice[0]))


def template_sheets(drawings, paper="letter", scale_x=1.0, scale_y=1.0, code="", written=None, stamp="", sizes=""):
    """Every drawing at its true size, tiled, each sheet with its strip and number; text goes under the first drawing
    where that leaves room, else on sheets right behind it.

    Arguments:
        drawings    Drawing objects, one part each
        paper       letter or a4
        scale_x     what the user's printer made of 100 mm across, over 100 [-]   0.94 to 1.06
        scale_y     the same up the sheet                                  [-]   0.94 to 1.06
        code        the design's link code, printed on each sheet; "" for none
        written     function of width and height [mm] -> pages of shapes, x from 0 to the right, y from 0 down; None:
                    no text
        stamp       words printed across every sheet; "" for none
        sizes       what unit the figures are in, said on each sheet; "" for none
    Returns:
        list of Sheet
    """
    for field, scale in (("print_scale_x", scale_x), ("print_scale_y", scale_y)):
        low, high = SCALE_LIMITS
        require(
            low - 1e-9 <= scale <= high + 1e-9,
            field,
            scale,
            f"must be {low:g} to {high:g}; further off, the printer fits the page: print again at 100 %",
            f"{min(max(scale, low), high):g}" if scale == scale else "1",
        )
    require(len(drawings) > 0, "drawings", len(drawings), "needs at least one drawing")
    # A printer's stretch was measured on upright paper: what is corrected never lies.
    lies = (scale_x, scale_y) == (1.0, 1.0)
    cuts = [_layout(drawing, paper, code, lies) for drawing in drawings]
    under = _under(drawings[0], cuts[0], code, written)
    behind = [] if under or not written else _pages(paper, code, written)
    total = sum(len(cut) for cut, _, _ in cuts) + len(behind)
    sheets = []
    for drawing, (cut, width, height) in zip(drawings, cuts):
        window = window_of(width, height, code)
        numbers = {(tile.column, tile.row): len(sheets) + i for i, tile in enumerate(cut, 1)}
        boxes = [(shape_box(shape), shape) for shape in drawing.painted()]
        size = window[2] - window[0], window[3] - window[1]
        holders = [
            [tile for tile in cut if _holds(tile, size, box)] if isinstance(shape, Text) else [] for box, shape in boxes
        ]
        for tile in cut:
            first = drawing is drawings[0]
            text = under if first and tile is cut[-1] else ()
            y = drawing.bounds()[3] + EDGE_MM - (window[3] - window[1]) if first and under else tile.y
            dx, dy = window[0] - tile.x, window[1] - y
            shown = (window[0] - dx, window[1] - dy, window[2] - dx, window[3] - dy)
            note = f"row {tile.row} of {tile.rows}, column {tile.column} of {tile.columns}" if len(cut) > 1 else ""
            number = f"Sheet {len(sheets) + 1} of {total}, true size"
            strip = _strip(width, drawing.title, (note, sizes), number, scale_x, scale_y, code)
            seen = tuple(
                placed(shape, dx, dy)
                for (box, shape), whole in zip(boxes, holders)
                if _touches(box, shown) and (not whole or tile in whole)  # no ends of words that stand on another sheet
            )
            over = (
                *text,
                *_seams(tile, window, numbers, seen),
                *strip,
                *_stamp(width, height, stamp),
                *bar_up(BESIDE_MM + 1.0, window[1] + 2.0, 100.0, 10.0, "100 mm up"),
            )
            sheets.append(Sheet(width, height, over, seen, window, scale_x, scale_y))
        width, height = paper_size(paper)
        for page in behind if drawing is drawings[0] else ():
            strip = _strip(width, drawing.title, (), f"Sheet {len(sheets) + 1} of {total}", scale_x, scale_y, code)
            over = (*page, *strip, *_stamp(width, height, stamp))
            sheets.append(Sheet(width, height, over, scale_x=scale_x, scale_y=scale_y))
    return sheets


def _under(drawing, layout, code, written):
    """The text placed below a drawing on one row of sheets, on the last of them and beside its seams, where there is
    room for all of it; else nothing."""
    cut, width, height = layout
    x1, y1, x2, y2 = window_of(width, height, code)
    _, low, _, high = drawing.bounds()
    left = y2 - y1 - (high - low) - 2 * EDGE_MM - GAP_MM
    last = cut[-1]
    if not written or last.rows > 1 or left <= 0:
        return ()
    x1 += last.overlap_x * (last.column > 1)
    x2 -= last.overlap_x * (last.column < last.columns)
    try:
        pages = written(x2 - x1, left)
    except InputError:  # a line of it is higher than what is left
        return ()
    return tuple(placed(shape, x1, y1 + left) for shape in pages[0]) if len(pages) == 1 else ()


def _pages(paper, code, written):
    """The text on sheets of its own."""
    x1, y1, x2, y2 = window_of(*paper_size(paper), code)
    return [tuple(placed(shape, x1, y2) for shape in page) for page in written(x2 - x1, y2 - y1)]


def _stamp(width, height, words):
    """Words across a sheet, in grey."""
    return [Text(width / 2, height / 2, words, 9.0, "middle", 30.0, "frame")] if words else []


def _holds(tile, size, box):
    x1, y1, x2, y2 = box
    return tile.x <= x1 and tile.y <= y1 and x2 <= tile.x + size[0] and y2 <= tile.y + size[1]


def _touches(box, window):
    return (
        box[0] <= window[2] + EDGE_MM
        and box[2] >= window[0] - EDGE_MM
        and box[1] <= window[3] + EDGE_MM
        and box[3] >= window[1] - EDGE_MM
    )


def _seams(tile, window, numbers, seen):
    """Lines down the middle of each overlap, marks to lay sheet over sheet by, and which sheet is next."""
    x1, y1, x2, y2 = window
    half_x, half_y = tile.overlap_x / 2, tile.overlap_y / 2
    step_x, step_y = x2 - x1 - tile.overlap_x, y2 - y1 - tile.overlap_y
    shapes = []
    for way, x, count in ((-1, x1 + half_x, tile.column - 1), (1, x2 - half_x, tile.columns - tile.column)):
        if count:
            shapes.append(Line(x, y1, x, y2, "frame"))
            for y in (y1 + half_y, y2 - half_y):
                shapes += _registration(x, y)
            words = _next([numbers.get((tile.column + way * n, tile.row)) for n in range(1, count + 1)], step_x)
            places = [Text(x - 1.0, y1 + OVERLAP_MM + 2.0 + 4.0 * n, words, 2.3, "start", 90.0) for n in range(25)]
            shapes.append(_clear(places, y2 - OVERLAP_MM, 3, seen))
    for way, y, count in ((-1, y2 - half_y, tile.row - 1), (1, y1 + half_y, tile.rows - tile.row)):
        if count:
            shapes.append(Line(x1, y, x2, y, "frame"))
            for x in (x1 + half_x, x2 - half_x):
                shapes += _registration(x, y)
            words = _next([numbers.get((tile.column, tile.row + way * n)) for n in range(1, count + 1)], step_y)
            places = [Text(x1 + OVERLAP_MM + 2.0 + 4.0 * n, y + 1.0, words, 2.3) for n in range(25)]
            shapes.append(_clear(places, x2 - OVERLAP_MM, 2, seen))
    return shapes


def _next(numbers, step):
    """What lies over a seam: the next sheet, or how far to the one after those that are left out."""
    apart = next((n for n, number in enumerate(numbers) if number), None)
    if apart is None:
        return "nothing more this way"
    gap = apart * step
    between = f", {gap:.1f} mm ({gap / 25.4:.2f} in) away" if apart else ""
    return f"joins sheet {numbers[apart]}{between}"


def _clear(places, end, side, seen):
    """The first of some places for a text that ends in time and where no drawn line crosses it; else the first."""
    for text in places:
        box = shape_box(text)
        if box[side] <= end and not any(meets(shape, box) for shape in seen):
            return text
    return places[0]


def _registration(x, y):
    """A cross in a diamond; a circle would look like a hole to drill."""
    arm, d = OVERLAP_MM / 2, 2.5
    return [
        Line(x - arm, y, x + arm, y, "mark"),
        Line(x, y - arm, x, y + arm, "mark"),
        Polyline(((x + d, y), (x, y + d), (x - d, y), (x, y - d)), True, "mark"),
    ]


def bar(x, y, length, step, label):
    """A bar to measure: a line `length` long, an upright at each end, short ones every `step`, its label behind it."""
    uprights = [Line(x + step * i, y, x + step * i, y + 1.8, "mark") for i in range(1, round(length / step))]
    ends = [Line(end, y - 1.5, end, y + 3.0, "mark") for end in (x, x + length)]
    return [
        Line(x, y, x + length, y, "mark"),
        *uprights,
        *ends,
        Text(x + length + 2.0, y - 0.2, label, 2.5, layer="heading"),
    ]


def bar_up(x, y, length, step, label):
    """The same upright."""
    ticks = [Line(x, y + step * i, x + 1.2, y + step * i, "mark") for i in range(1, round(length / step))]
    ends = [Line(x - 1.0, end, x + 2.0, end, "mark") for end in (y, y + length)]
    words = Text(x + 1.2, y + length + 2.0, label, 2.3, "start", 90.0, "heading")
    return [Line(x, y, x, y + length, "mark"), *ticks, *ends, words]


def _strip(width, name, notes, sheet, scale_x, scale_y, code):
    """Foot of a sheet: what to measure, which part and sheet this is, which way is up, the link code."""
    lines = _code_lines(width, code)
    left, right, foot = BESIDE_MM, width - BESIDE_MM, MARGIN_MM + 4.0 * len(lines)
    top, column = foot + STRIP_MM, left + 122.0
    shapes = [Line(left, top - 1.0, right, top - 1.0, "frame")]
    shapes.append(Text(left, top - 6.5, "Print at 100 %, then measure this bar", 2.6, layer="heading"))
    shapes += bar(left, foot + 14.5, 100.0, 10.0, "100 mm")
    shapes += bar(left, foot + 4.5, 101.6, 12.7, "4 in")
    arrow = right - 5.0
    fits = arrow - 9.0 - column
    texts = [(part, "heading", 3.0) for part in wrapped(name, 3.0 / CAP_HEIGHT_RATIO, fits, bold=True)[:2]]
    texts.append((sheet, "heading", 2.6))
    texts += [(part, "text", 2.3) for note in notes for part in wrapped(note, SMALL_MM, fits) if part]
    if (scale_x, scale_y) != (1.0, 1.0):
        corrected = f"Corrected: your printer made 100 mm {100 * scale_x:.2f} across, {100 * scale_y:.2f} up"
        texts += [(part, "text", 2.3) for part in wrapped(corrected, SMALL_MM, fits)]
    y = top - 2.5
    for text, layer, height in texts:
        y -= height + 1.9
        shapes.append(Text(column, y + 0.5, text, height, layer=layer))
    tip = top - 4.0
    shapes += [
        Line(arrow, foot + 7.5, arrow, tip, "window"),
        Line(arrow, tip, arrow - 2.5, tip - 5.0, "window"),
        Line(arrow, tip, arrow + 2.5, tip - 5.0, "window"),
        Text(right, foot + 1.5, "this way up", 2.3, "end"),
    ]
    shapes += [Text(left, foot - 4.0 * (i + 1) + 0.5, line, 2.3) for i, line in enumerate(lines)]
    return shapes
