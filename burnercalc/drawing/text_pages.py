"""Text pages: headings, paragraphs, lists, tables, figures and cautions flow down pages of shapes, in mm.

Each block turns into pieces, strips as wide as the column that are never cut; pieces fill pages from the top.
"""

from dataclasses import dataclass, replace

from ..errors import InputError, require
from .helvetica import CAP_HEIGHT_RATIO, text_width, wrapped
from .qr import qr_shapes
from .shapes import Line, Text, box_round, placed, rectangle, shape_box

# Font sizes in mm; 3.4 mm is 9.6 pt, readable on a wall at arm's length.
BODY_MM, TABLE_MM = 3.6, 3.4
HEADINGS_MM = {0: 7.2, 1: 5.0, 2: 4.0}
LEADING = 1.27
SIDE_MM, TOP_MM, FOOT_MM = 16.0, 12.0, 18.0
GAP_MM = 8.0
# 1 : n that a ruler or a head can use.
RATIOS = (1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100)
# Numbers of ports smaller than this are left out of a figure; the hole table and the template have them.
SMALLEST_NUMBER_MM = 1.2
SMALLEST_TEXT_MM = 2.3
SHARES = 40  # steps in which the width of a page is shared out between the columns of a table
LEAST_MM = 24.0  # width of a column of texts, where they are not shorter and no table has another
ROW_AIR_MM = 0.5  # over and under a row
WHOLE = 0.3  # of a page: a table up to so high is not broken


@dataclass(frozen=True)
class Heading:
    text: str
    level: int = 1


@dataclass(frozen=True)
class Paragraph:
    text: str
    bold: bool = False


@dataclass(frozen=True)
class Items:
    """A list; mark is a bullet, "1" for numbers, or "box" for a box to tick."""

    items: tuple
    mark: str = "\u2022"


@dataclass(frozen=True)
class Table:
    """Rows of texts under a header; align is a letter l, r or c a column; fold sets the rows in that many columns; size
    is that of the type [mm], least the width of a column of longer texts."""

    header: tuple
    rows: tuple
    align: str = ""
    fold: int = 1
    size: float = TABLE_MM
    least: float = LEAST_MM


@dataclass(frozen=True)
class Figure:
    """A drawing made smaller to fit the column and `height`; says what it was drawn at, and that it is not to be
    measured. A `scheme` has no size at all."""

    drawing: object
    height: float = 120.0
    caption: str = ""
    scheme: bool = False


@dataclass(frozen=True)
class QR:
    text: str
    caption: str = ""
    size: float = 34.0


@dataclass(frozen=True)
class Caution:
    text: str
    title: str = "Caution"


@dataclass(frozen=True)
class Columns:
    """Lists of blocks side by side, kept together on one page; weights share out the width."""

    columns: tuple
    weights: tuple = ()


@dataclass(frozen=True)
class PageBreak:
    pass


@dataclass(frozen=True)
class Piece:
    """Shapes in a strip `height` high, y from 0 down; `before` is air above it unless it starts a page."""

    height: float
    shapes: tuple
    before: float = 0.0
    keep: bool = False
    head: object = None


def _line(x, y_top, text, size, layer="text", anchor="start"):
    """A line of text whose line box starts at y_top; its capitals stand in the middle of the box."""
    base = y_top - size * (LEADING + CAP_HEIGHT_RATIO) / 2
    return Text(x, base, text, size * CAP_HEIGHT_RATIO, anchor, 0.0, layer)


def _lines(text, size, x, width, layer="text", before=2.0):
    """Pieces of a wrapped text, a line each; the first two and the last two lines stay together."""
    lines = wrapped(text, size, width, bold=layer == "heading")
    last = len(lines) - 1
    return [
        Piece(
            size * LEADING,
            (_line(x, 0.0, line, size, layer),),
            before if i == 0 else 0.0,
            keep=i < last and i in (0, last - 1),
        )
        for i, line in enumerate(lines)
    ]


def _heading(block, width):
    size = HEADINGS_MM[block.level]
    lines = _lines(block.text, size, 0.0, width, "heading", before=size * (1.1 if block.level == 1 else 0.8))
    pieces = [replace(piece, keep=True) for piece in lines]
    if block.level == 1:
        last = pieces[-1]
        rule = Line(0.0, -last.height - 0.6, width, -last.height - 0.6, "body")
        pieces[-1] = replace(last, height=last.height + 1.2, shapes=(*last.shapes, rule))
    return pieces


def _paragraph(block, width):
    return _lines(block.text, BODY_MM, 0.0, width, "heading" if block.bold else "text")


def _items(block, width):
    pieces, indent = [], 7.0
    for i, item in enumerate(block.items):
        own = _lines(item, BODY_MM, indent, width - indent, before=1.4)
        if block.mark == "box":
            # A square as high as the capitals and a little more, on the base line.
            mark = rectangle(0.6, own[0].shapes[0].y - 0.4, 3.2, 3.2, "window")
        else:
            text = f"{i + 1}." if block.mark == "1" else block.mark
            mark = replace(own[0].shapes[0], x=indent - 2.0, text=text, anchor="end")
        own[0] = replace(own[0], shapes=(*own[0].shapes, mark))
        pieces += own
    return pieces


def _folded(table, height):
    """The table with its rows set side by side: down the first column, then the next, a page's worth at a time; and how
    many lines that is."""
    line = table.size * LEADING + 2 * ROW_AIR_MM
    # Over the lines stand a heading, the table's head and, on a page that begins with it, a title.
    n, capacity = table.fold, max(1, int((height - max(13.0, height / 10)) / line))
    columns, rows = len(table.header), []
    for start in range(0, len(table.rows), n * capacity):
        chunk = table.rows[start : start + n * capacity]
        each = -(-len(chunk) // n)
        for i in range(each):
            row = ()
            for j in range(n):
                part = chunk[j * each + i] if i < each and j * each + i < len(chunk) else ("",) * columns
                row += ((" ",) if j else ()) + tuple(part)
            rows.append(row)
    header = tuple(table.header) + (" ", *table.header) * (n - 1)
    align = table.align or "l" * columns
    return Table(header, tuple(rows), align + ("l" + align) * (n - 1), size=table.size), capacity


def _widths(table, width, pad):
    """Column widths: what the longest cell needs, spread to the full width; where that is too little, shared out so
    that the rows come out low."""
    texts = [[text_width(name, table.size, True) for name in table.header]]
    texts += [[text_width(cell, table.size) for cell in row] for row in table.rows]
    need = [2 * pad + max(column) for column in zip(*texts)]
    if sum(need) <= width:
        return [width * n / sum(need) for n in need]
    words = [
        max(text_width(word, table.size, True) for cell in column for word in cell.split(" "))
        for column in zip(table.header, *table.rows)
    ]
    # What stands at the right is a number, best not broken; a text has at least its longest word, and room for two.
    least = [0.35 * width if side == "r" else table.least for side in table.align]
    widths = [min(n, max(word + 2 * pad, some)) for n, word, some in zip(need, words, least)]
    if sum(widths) >= width:
        return [width * w / sum(widths) for w in widths]
    step = (width - sum(widths)) / SHARES
    for _ in range(SHARES):
        high = [[(t / w) ** 6 for t, w in zip(row, widths)] for row in texts]
        rows = [(sum(row), row) for row in high]
        widths[max(range(len(widths)), key=lambda i: _saved(rows, widths, i, step, need))] += step
    return widths


def _saved(rows, widths, column, step, need):
    """About how much lower all rows get together when a column is a step wider: its longest cell makes a row high.

    `rows`: of each how high its cells are, to the sixth, and their sum."""
    width = widths[column]
    if width >= need[column]:
        return -1.0
    less = (width / (width + step)) ** 6 - 1
    return sum(whole ** (1 / 6) - max(whole + cells[column] * less, 0.0) ** (1 / 6) for whole, cells in rows)


def _table(block, width, height):
    for row in block.rows:
        require(len(row) == len(block.header), "row", row, f"needs {len(block.header)} cells")
    table, lines = _folded(block, height) if block.fold > 1 else (block, 0)
    table = replace(
        table,
        header=tuple(map(str, table.header)),
        rows=tuple(tuple("" if cell is None else str(cell) for cell in row) for row in table.rows),
        align=table.align or "l" * len(table.header),
    )
    pad = 0.9 if block.fold > 1 else 1.4
    widths = _widths(table, width, pad)

    def row_piece(cells, layer, rule, air):
        shapes, left, most = [], 0.0, 1
        for cell, w, align in zip(cells, widths, table.align):
            lines = wrapped(cell, table.size, w - 2 * pad + 1e-6, bold=layer == "heading")
            while len(lines) > 1 and not lines[-1].strip():  # blanks that only make a column wide
                lines = lines[:-1]
            most = max(most, len(lines))
            x = {"l": left + pad, "r": left + w - pad, "c": left + w / 2}[align]
            anchor = {"l": "start", "r": "end", "c": "middle"}[align]
            shapes += [
                _line(x, -air - i * table.size * LEADING, line, table.size, layer, anchor)
                for i, line in enumerate(lines)
                if line.strip()
            ]
            left += w
        tall = most * table.size * LEADING + 2 * air
        left = 0.0
        # Rules stop at the blank columns between folded parts.
        for name, w in zip(table.header, widths):
            if name != " ":
                shapes.append(Line(left, -tall, left + w, -tall, rule))
            left += w
        return Piece(tall, tuple(shapes))

    head = replace(row_piece(table.header, "heading", "port", 0.4), before=2.5, keep=True)
    rows = [replace(row_piece(row, "text", "frame", ROW_AIR_MM), head=head) for row in table.rows]
    if head.height + sum(row.height for row in rows) <= WHOLE * height:
        rows = [replace(row, keep=True) for row in rows[:-1]] + rows[-1:]
    elif head.height + sum(row.height for row in rows[:2]) <= WHOLE * height:
        rows = [replace(rows[0], keep=True), *rows[1:]]
    parts = [rows[i : i + lines] for i in range(0, len(rows), lines)] if lines else [rows]
    return [head, *parts[0], *(piece for part in parts[1:] for piece in (None, *part))]


def _reduced(drawing, ratio):
    """Shapes of the drawing at 1:ratio, texts kept large enough to read, numbers too small to read left out."""
    shapes = []
    for shape in drawing.painted():
        small = placed(shape, 0.0, 0.0, 1 / ratio)
        if isinstance(small, Text) and small.layer == "number" and small.height < SMALLEST_NUMBER_MM:
            continue
        if isinstance(small, Text) and small.layer != "number":
            small = replace(small, height=max(small.height, SMALLEST_TEXT_MM))
        shapes.append(small)
    return replace(drawing, shapes=tuple(shapes))


def figure_ratio(drawing, width, height):
    """The n of the plain ratio 1:n, 1 or more, at which a drawing with its texts fits a figure of that size [mm].

    Who draws for a figure multiplies offsets and text heights by this, so that they come out as mm on paper.
    """
    box, texts = _parted(drawing)
    for ratio in RATIOS:
        if _fits(box, texts, ratio, width, height):
            return ratio
    raise InputError("figure", f"{drawing.name} in {width:.0f} x {height:.0f} mm", f"must fit at 1:{RATIOS[-1]}")


def fits_at(drawing, ratio, width, height):
    """Whether a drawing with its texts, at 1:ratio, fits a figure of that size [mm]."""
    return _fits(*_parted(drawing), ratio, width, height)


def is_numbered(drawing, ratio):
    """Whether any of its numbers is large enough at 1:ratio to be drawn."""
    return any(
        isinstance(shape, Text) and shape.layer == "number" and shape.height / ratio >= SMALLEST_NUMBER_MM
        for shape in drawing.shapes
    )


def _parted(drawing):
    """(bounds of all but the texts, which shrinks as a whole, None for nothing; drawing of the texts, which do not)."""
    plain = [shape for shape in drawing.shapes if not isinstance(shape, Text)]
    box = replace(drawing, shapes=tuple(plain)).bounds() if plain else None
    return box, replace(drawing, shapes=tuple(shape for shape in drawing.shapes if isinstance(shape, Text)))


def _fits(box, texts, ratio, width, height):
    if box and (box[2] - box[0] > ratio * width or box[3] - box[1] > ratio * height):
        return False  # too large without its texts
    boxes = [shape_box(shape) for shape in _reduced(texts, ratio).shapes]
    boxes += [tuple(side / ratio for side in box)] if box else []
    x1, y1, x2, y2 = box_round(boxes)
    return x2 - x1 <= width and y2 - y1 <= height


def _figure(block, width, height):
    ratio = figure_ratio(block.drawing, width, min(block.height, height - 24.0))
    small = _reduced(block.drawing, ratio)
    x1, y1, x2, y2 = small.bounds()
    shapes, up = small.moved((width - x1 - x2) / 2, -y2).shapes, y2 - y1
    shown = (
        "A scheme, without sizes"
        if block.scheme
        else f"NOT TO SCALE, do not measure here: drawn at 1:{ratio:g}"
        if ratio > 1
        else "Drawn about as large as it is; measure on the plans"
    )
    caption = f"{block.caption}. {shown}" if block.caption else shown
    lines = [replace(piece, keep=True) for piece in _lines(caption, TABLE_MM, 0.0, width, before=1.5)]
    return [Piece(up, shapes, before=3.0, keep=True), *lines[:-1], replace(lines[-1], keep=False)]


def _qr(block, width):
    shapes = list(qr_shapes(block.text, 0.0, -block.size, block.size))
    beside = width - block.size - 2.0
    tall, left, top, room = block.size, block.size + 2.0, -2.0, beside
    if beside < 40:
        left, top, room = 0.0, -block.size - 1.0, width
    for line in wrapped(block.caption, TABLE_MM, room) if block.caption else ():
        shapes.append(_line(left, top, line, TABLE_MM))
        top -= TABLE_MM * LEADING
    return [Piece(max(tall, -top), tuple(shapes), before=3.0)]


def _caution(block, width):
    inset, air = 6.0, 2.0
    shapes, y = [], -air
    for text, layer in ((block.title, "heading"), (block.text, "text")):
        for line in wrapped(text, BODY_MM, width - inset - air, bold=layer == "heading"):
            shapes.append(_line(inset, y, line, BODY_MM, layer))
            y -= BODY_MM * LEADING
    y -= air
    frame = (rectangle(0.0, y, 2.4, -y, "solid"), rectangle(0.0, y, width, -y, "window"))
    return [Piece(-y, (*frame, *shapes), before=3.0)]


def _columns(block, width, height):
    n = len(block.columns)
    weights = block.weights or (1.0,) * n
    room, left, shapes, tall = width - GAP_MM * (n - 1), 0.0, [], 0.0
    for blocks, weight in zip(block.columns, weights):
        own = room * weight / sum(weights)
        y = 0.0
        for piece in pieces_of(blocks, own, height):
            y -= piece.before if y else 0.0
            shapes += [placed(shape, left, y) for shape in piece.shapes]
            y -= piece.height
        tall, left = max(tall, -y), left + own + GAP_MM
    return [Piece(tall, tuple(shapes), before=3.0)]


def pieces_of(blocks, width, height):
    """Pieces of blocks for a column of that width on pages of that height; a page break is None."""
    makers = {
        Heading: _heading,
        Paragraph: _paragraph,
        Items: _items,
        QR: _qr,
        Caution: _caution,
        Table: lambda b, w: _table(b, w, height),
        Figure: lambda b, w: _figure(b, w, height),
        Columns: lambda b, w: _columns(b, w, height),
        PageBreak: lambda b, w: [None],
    }
    found, above = [], None
    for block in blocks:
        if isinstance(above, Paragraph) and isinstance(block, Table) and found[-1]:
            found[-1] = replace(found[-1], keep=True)  # the words over a table, and so their heading, stay with it
        found += makers[type(block)](block, width)
        above = block
    return found


def flow(blocks, width, height):
    """Pages of shapes, x from 0 to width, y from 0 down to -height; no page for no blocks.

    A piece marked keep stays with the next one. A table's head is repeated on each page that its rows run on to.
    Raises InputError for what does not fit on a page by itself.
    """
    pages, y, group = [], None, []

    def put(piece, before):
        nonlocal y
        y -= before
        pages[-1].extend(placed(shape, 0.0, y) for shape in piece.shapes)
        y -= piece.height

    for piece in pieces_of(blocks, width, height):
        if piece is None:
            y = None
            continue
        group.append(piece)
        if piece.keep:
            continue
        tall = sum(p.height + (p.before if i else 0.0) for i, p in enumerate(group))
        head = group[0].head
        need = tall + (head.height if head else 0.0)
        require(need <= height, "block", f"{need:.0f} mm high", "must fit on one page", f"{height:.0f} mm")
        if y is None or tall + (group[0].before if y < 0 else 0.0) > height + y:
            pages.append([])
            y = 0.0
            if head:
                put(head, 0.0)
        for p in group:
            put(p, p.before if y < 0 else 0.0)
        group = []
    if group:
        # The last block was a heading with nothing under it.
        if y is None or sum(p.height + p.before for p in group) > height + y:
            pages.append([])
            y = 0.0
        for p in group:
            put(p, p.before if y < 0 else 0.0)
    return [tuple(page) for page in pages]


def used_mm(blocks, width, height):
    """How much of one page of that height [mm] the blocks take, one below the other."""
    pieces = list(pieces_of(blocks, width, height))
    return sum(piece.height + piece.before for piece in pieces) - pieces[0].before


def document_pages(title, blocks, width, height, footer=""):
    """Pages of shapes on sheets of that size: title on the first, footer and page number on each."""
    across = width - 2 * SIDE_MM
    pages = flow((Heading(title, 0), *blocks), across, height - TOP_MM - FOOT_MM)
    out = []
    for i, page in enumerate(pages):
        foot = [
            Line(SIDE_MM, FOOT_MM - 3.0, width - SIDE_MM, FOOT_MM - 3.0, "frame"),
            Text(SIDE_MM, FOOT_MM - 7.5, footer or title, TABLE_MM * CAP_HEIGHT_RATIO),
            Text(width - SIDE_MM, FOOT_MM - 7.5, f"Page {i + 1} of {len(pages)}", TABLE_MM * CAP_HEIGHT_RATIO, "end"),
        ]
        out.append((*(placed(shape, SIDE_MM, height - TOP_MM) for shape in page), *foot))
    return out
