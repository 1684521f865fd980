"""Sheets of shapes as a PDF: vectors, Helvetica, the same bytes every time. Millimetres become points here only.

Source: ISO 32000-1 (PDF 1.7): user space 1/72 in, 8.3.2; /PrintScaling, table 150; standard fonts, 9.6.2.2 (memory).
"""

import io
from math import ceil, cos, radians, sin, tan

import pydyf

from .helvetica import spelled
from .paper import Sheet, paper_size, template_sheets
from .shapes import ANCHORS, LAYERS, Arc, Circle, Line, Text, bulge_arc
from .text_pages import document_pages, flow

POINTS_PER_MM = 72 / 25.4
STAMP_MM = 20.0


def _style(stream, style):
    stream.set_line_width(float(style.stroke_mm))
    stream.set_dash([float(length) for length in style.dash_mm], 0)
    stream.set_color_rgb(*[float(style.grey)] * 3, stroke=True)


def _curve(stream, x, y, r, start_deg, sweep_deg):
    """Arc from the current point, in pieces of at most 45 deg, whose cubic strays less than 5e-6 of the radius.

    handle = 4/3 * tan(piece/4) * r
    """
    n = ceil(abs(sweep_deg) / 45 - 1e-9)
    piece = radians(sweep_deg / n)
    handle = 4 / 3 * tan(piece / 4) * r
    for i in range(n):
        a, b = radians(start_deg) + piece * i, radians(start_deg) + piece * (i + 1)
        x1, y1, x2, y2 = x + r * cos(a), y + r * sin(a), x + r * cos(b), y + r * sin(b)
        stream.curve_to(x1 - handle * sin(a), y1 + handle * cos(a), x2 + handle * sin(b), y2 - handle * cos(b), x2, y2)


def _path(stream, shape):
    """Put the shape's outline on the path; True if it is closed."""
    if isinstance(shape, Line):
        stream.move_to(float(shape.x1), float(shape.y1))
        stream.line_to(float(shape.x2), float(shape.y2))
        return False
    if isinstance(shape, (Circle, Arc)):
        start, sweep = (0.0, 360.0) if isinstance(shape, Circle) else (shape.start_deg, shape.sweep_deg)
        stream.move_to(shape.x + shape.r * cos(radians(start)), shape.y + shape.r * sin(radians(start)))
        _curve(stream, shape.x, shape.y, shape.r, start, sweep)
        return isinstance(shape, Circle)
    stream.move_to(*map(float, shape.points[0]))
    for stretch in shape.stretches():
        if stretch[4]:
            _curve(stream, *bulge_arc(*stretch))
        else:
            stream.line_to(*map(float, stretch[2:4]))
    return shape.closed


def _paint(stream, shapes):
    pen = None  # the style that the stream's lines have
    for shape in shapes:
        style = LAYERS[shape.layer]
        if isinstance(shape, Text):
            _write(stream, shape, style)
            continue
        if style is not pen:
            _style(stream, style)
            pen = style
        closed = _path(stream, shape)
        if closed and style.fill is not None:
            stream.set_color_rgb(*[float(style.fill)] * 3)
            (stream.fill_stroke_and_close if style.stroke_mm else stream.fill)()
        else:
            (stream.stroke_and_close if closed else stream.stroke)()


def _write(stream, text, style):
    c, s = cos(radians(text.angle)), sin(radians(text.angle))
    # PDF knows no anchors: the start of the line is worked out from Helvetica's widths.
    back = text.width * ANCHORS.index(text.anchor) / 2 if text.anchor != ANCHORS[0] else 0.0
    stream.set_color_rgb(*[float(style.grey)] * 3)
    stream.begin_text()
    stream.set_font_size("F2" if style.bold else "F1", float(text.font_size))
    stream.set_text_matrix(c, s, -s, c, text.x - back * c, text.y - back * s)
    stream.show_text_string(spelled(text.text).encode("cp1252"))
    stream.end_text()


def _content(sheet):
    """Content of one page; the printer's stretch is undone about the middle of the sheet."""
    stream = pydyf.Stream(compress=True)
    stream.push_state()
    kx, ky = POINTS_PER_MM / sheet.scale_x, POINTS_PER_MM / sheet.scale_y
    stream.set_matrix(kx, 0, 0, ky, sheet.width / 2 * (POINTS_PER_MM - kx), sheet.height / 2 * (POINTS_PER_MM - ky))
    stream.set_line_cap(0)
    stream.set_line_join(1)
    if sheet.seen:
        x1, y1, x2, y2 = sheet.window
        stream.push_state()
        stream.rectangle(float(x1), float(y1), float(x2 - x1), float(y2 - y1))
        stream.clip()
        stream.end()
        _paint(stream, sheet.seen)
        stream.pop_state()
    _paint(stream, sheet.shapes)
    stream.pop_state()
    return stream


def write_sheets(sheets, title):
    """PDF bytes of sheets (see paper.Sheet), one page each, that readers print at 100 % unless told otherwise."""
    pdf = pydyf.PDF()
    pdf.info["Title"] = pydyf.String(title)
    fonts = {}
    for key, base in (("F1", "Helvetica"), ("F2", "Helvetica-Bold")):
        font = pydyf.Dictionary(
            {"Type": "/Font", "Subtype": "/Type1", "BaseFont": "/" + base, "Encoding": "/WinAnsiEncoding"}
        )
        pdf.add_object(font)
        fonts[key] = font.reference
    resources = pydyf.Dictionary({"Font": pydyf.Dictionary(fonts)})
    for sheet in sheets:
        content = _content(sheet)
        pdf.add_object(content)
        pdf.add_page(
            pydyf.Dictionary(
                {
                    "Type": "/Page",
                    "Parent": pdf.pages.reference,
                    "Resources": resources,
                    "Contents": content.reference,
                    "MediaBox": pydyf.Array([0, 0, sheet.width * POINTS_PER_MM, sheet.height * POINTS_PER_MM]),
                }
            )
        )
    pdf.catalog["ViewerPreferences"] = pydyf.Dictionary({"PrintScaling": "/None", "DisplayDocTitle": "true"})
    pdf.catalog["Lang"] = pydyf.String("en")
    out = io.BytesIO()
    pdf.write(out)
    return out.getvalue()


def write_template_pdf(drawings, paper="letter", scale_x=1.0, scale_y=1.0, code="", tables=(), stamp="", sizes=""):
    """Drawings at true size, tiled; with the first of them that of `tables`, lists of blocks of text_pages.py, which
    takes the fewest sheets, the first of such; see paper.py."""
    title = drawings[0].title if len(drawings) == 1 else "Templates"

    def written(width, height):
        return min((flow(blocks, width, height) for blocks in tables), key=len)

    text = written if tables else None
    return write_sheets(template_sheets(drawings, paper, scale_x, scale_y, code, text, stamp, sizes), title)


def write_document_pdf(title, blocks, paper="letter", footer="", stamp=""):
    """Text pages with a title, page numbers and a footer; `blocks` are those of text_pages.py. `stamp` stands large and
    pale across every page, under what is written."""
    width, height = paper_size(paper)
    across = (Text(width / 2, height / 2, stamp, STAMP_MM, "middle", 45.0, "stamp"),) if stamp else ()
    pages = document_pages(title, blocks, width, height, footer)
    return write_sheets([Sheet(width, height, (*across, *page)) for page in pages], title)
