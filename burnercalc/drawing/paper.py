"""True-size drawings on sheets of paper: tiles, registration marks and the strip with check bars on each sheet, in mm.

A drawing is never shrunk to fit; what does not fit goes on a further sheet. Nothing here knows a file format.
"""

from dataclasses import dataclass
from math import ceil

from ..errors import require
from .helvetica import CAP_HEIGHT_RATIO, wrapped
from .shapes import Line, Polyline, Text, placed, shape_box

# Width and height, upright. Sources: ANSI/ASME Y14.1 size A (8.5 x 11 in), ISO 216 A4 (published).
PAPERS = {"letter": (8.5 * 25.4, 11 * 25.4), "a4": (210.0, 297.0)}

# Air that every printer leaves: 6.35 mm is safe, old inkjets need more at the foot (common practice).
MARGIN_MM = 10.0
# How far two neighbouring sheets show the same piece of the drawing.
OVERLAP_MM = 10.0
# Air around a drawing, so that half the line width is not clipped.
EDGE_MM = 1.0
STRIP_MM = 31.0
SMALL_MM = 2.3 / CAP_HEIGHT_RATIO

# The largest correction for which a sheet still stays on its paper: margins of 10 mm hold 6 % of half a Letter length.
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
    """Part of a drawing for one sheet: its lower left corner in the drawing, its column and row from the top left."""

    x: float
    y: float
    column: int
    row: int
    columns: int
    rows: int


def paper_size(paper):
    """(width, height) of an upright sheet [mm]; InputError for an unknown name."""
    require(paper in PAPERS, "paper", paper, "is not a paper; known: " + ", ".join(PAPERS), "letter")
    return PAPERS[paper]


def _count(length, window):
    return 1 if length <= window else ceil((length - OVERLAP_MM) / (window - OVERLAP_MM) - 1e-9)


def tiles(bounds, window_width, window_height):
    """Tiles that together cover `bounds`, row by row from the top, neighbours overlapping by OVERLAP_MM.

    Arguments: bounds (x_min, y_min, x_max, y_max) [mm]; window_width, window_height of one sheet [mm]
    Returns:   list of Tile; the drawing is centred on them
    """
    x1, y1, x2, y2 = bounds
    columns = _count(x2 - x1 + 2 * EDGE_MM, window_width)
    rows = _count(y2 - y1 + 2 * EDGE_MM, window_height)
    step_x, step_y = window_width - OVERLAP_MM, window_height - OVERLAP_MM
    left = (x1 + x2) / 2 - (columns * step_x + OVERLAP_MM) / 2
    foot = (y1 + y2) / 2 - (rows * step_y + OVERLAP_MM) / 2
    return [
        Tile(left + step_x * column, foot + step_y * (rows - 1 - row), column + 1, row + 1, columns, rows)
        for row in range(rows)
        for column in range(columns)
    ]


def window_of(width, height, code):
    """(x1, y1, x2, y2) of the part of a sheet that is left for the drawing."""
    return MARGIN_MM, MARGIN_MM + strip_height(width, code), width - MARGIN_MM, height - MARGIN_MM


def strip_height(width, code):
    """Height of the strip at the foot; a long link code takes further lines [mm]."""
    return STRIP_MM + 4.0 * len(_code_lines(width, code))


def _code_lines(width, code):
    return wrapped("Design: " + code, SMALL_MM, width - 2 * MARGIN_MM) if code else []


def _layout(drawing, paper, code, lies):
    """(tiles, width, height) with the fewest sheets; the paper stands upright where lying it saves none, or may not."""
    short, long = paper_size(paper)
    choices = []
    for width, height in ((short, long), (long, short))[: 2 if lies else 1]:
        x1, y1, x2, y2 = window_of(width, height, code)
        choices.append((tiles(drawing.bounds(), x2 - x1, y2 - y1), width, height))
    return min(choices, key=lambda choice: len(choice[0]))


def template_sheets(drawings, paper="letter", scale_x=1.0, scale_y=1.0, code="", pages=(), stamp=""):
    """Every drawing at its true size, tiled, then text pages, each sheet with its strip and number.

    Arguments:
        drawings    Drawing objects, one part each
        paper       letter or a4
        scale_x     what the user's printer made of 100 mm across, over 100 [-]   0.94 to 1.06
        scale_y     the same up the sheet                                  [-]   0.94 to 1.06
        code        the design's link code, printed on each sheet; "" for none
        stamp       words printed across every sheet; "" for none
        pages       tuples of shapes for further upright sheets, in the place of window_of
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
    total = sum(len(cut) for cut, _, _ in cuts) + len(pages)
    sheets = []
    for drawing, (cut, width, height) in zip(drawings, cuts):
        window = window_of(width, height, code)
        first = len(sheets)
        boxes = [(shape_box(shape), shape) for shape in drawing.painted()]
        for tile in cut:
            dx, dy = window[0] - tile.x, window[1] - tile.y
            shown = (window[0] - dx, window[1] - dy, window[2] - dx, window[3] - dy)
            note = f"row {tile.row} of {tile.rows}, column {tile.column} of {tile.columns}" if len(cut) > 1 else ""
            number = f"Sheet {len(sheets) + 1} of {total}, true size"
            strip = _strip(width, drawing.title, note, number, scale_x, scale_y, code)
            seen = tuple(placed(shape, dx, dy) for box, shape in boxes if _touches(box, shown))
            over = (
                *_seams(tile, window, first),
                *strip,
                *_stamp(width, height, stamp),
                *_upright(tile, window, boxes, dx, dy),
            )
            sheets.append(Sheet(width, height, over, seen, window, scale_x, scale_y))
    width, height = paper_size(paper)
    for page in pages:
        strip = _strip(width, drawings[0].title, "", f"Sheet {len(sheets) + 1} of {total}", scale_x, scale_y, code)
        over = (*page, *strip, *_stamp(width, height, stamp))
        sheets.append(Sheet(width, height, over, scale_x=scale_x, scale_y=scale_y))
    return sheets


def _stamp(width, height, words):
    """Words across a sheet, in grey."""
    return [Text(width / 2, height / 2, words, 9.0, "middle", 30.0, "frame")] if words else []


def _touches(box, window):
    return (
        box[0] <= window[2] + EDGE_MM
        and box[2] >= window[0] - EDGE_MM
        and box[1] <= window[3] + EDGE_MM
        and box[3] >= window[1] - EDGE_MM
    )


def _seams(tile, window, first):
    """Lines down the middle of each overlap, marks to lay sheet over sheet by, and the number of the neighbour."""
    x1, y1, x2, y2 = window
    half, number, shares = OVERLAP_MM / 2, first + (tile.row - 1) * tile.columns + tile.column, (0.0, 1.0)
    shapes = []
    for there, x, other in (
        (tile.column > 1, x1 + half, number - 1),
        (tile.column < tile.columns, x2 - half, number + 1),
    ):
        if there:
            shapes.append(Line(x, y1, x, y2, "frame"))
            for share in shares:
                shapes += _registration(x, y1 + half + share * (y2 - y1 - OVERLAP_MM))
            shapes.append(Text(x - 1.0, y1 + OVERLAP_MM + 2.0, f"joins sheet {other}", 2.3, "start", 90.0))
    for there, y, other in (
        (tile.row > 1, y2 - half, number - tile.columns),
        (tile.row < tile.rows, y1 + half, number + tile.columns),
    ):
        if there:
            shapes.append(Line(x1, y, x2, y, "frame"))
            for share in shares:
                shapes += _registration(x1 + half + share * (x2 - x1 - OVERLAP_MM), y)
            shapes.append(Text(x1 + OVERLAP_MM + 2.0, y + 1.0, f"joins sheet {other}", 2.3))
    return shapes


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


def _upright(tile, window, boxes, dx, dy):
    """A bar to measure up the sheet, at the first side of the window that the drawing leaves free."""
    x1, y1, x2, _ = window
    for seam, x in ((tile.column > 1, x1 + 1.0), (tile.column < tile.columns, x2 - 5.0)):
        place = (x - 1.0 - dx, y1 - dy, x + 4.0 - dx, y1 + 122.0 - dy)
        if not seam and not any(_touches(box, place) for box, _ in boxes):
            return bar_up(x + 1.0, y1 + 2.0, 100.0, 10.0, "100 mm up")
    return []


def bar_up(x, y, length, step, label):
    """The same upright."""
    ticks = [Line(x, y + step * i, x + 1.2, y + step * i, "mark") for i in range(1, round(length / step))]
    ends = [Line(x - 1.0, end, x + 2.0, end, "mark") for end in (y, y + length)]
    words = Text(x + 1.2, y + length + 2.0, label, 2.3, "start", 90.0, "heading")
    return [Line(x, y, x, y + length, "mark"), *ticks, *ends, words]


def _strip(width, name, note, sheet, scale_x, scale_y, code):
    """Foot of a sheet: what to measure, which part and sheet this is, which way is up, the link code."""
    lines = _code_lines(width, code)
    left, right, foot = MARGIN_MM, width - MARGIN_MM, MARGIN_MM + 4.0 * len(lines)
    top, column = foot + STRIP_MM, left + 122.0
    shapes = [Line(left, top - 1.0, right, top - 1.0, "frame")]
    shapes.append(Text(left, top - 6.5, "Print at 100 %, then measure this bar", 2.6, layer="heading"))
    shapes += bar(left, foot + 14.5, 100.0, 10.0, "100 mm")
    shapes += bar(left, foot + 4.5, 101.6, 12.7, "4 in")
    arrow = right - 5.0
    fits = arrow - 9.0 - column
    texts = [(part, "heading", 3.0) for part in wrapped(name, 3.0 / CAP_HEIGHT_RATIO, fits, bold=True)[:2]]
    texts.append((sheet, "heading", 2.6))
    texts += [(part, "text", 2.3) for part in wrapped(note, SMALL_MM, fits) if part]
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
