"""The printed template, read back with pdfium: sizes in mm, bars, page boxes, the printer's correction."""

import pypdfium2
import pytest
from drawings import drawings
from hypothesis import given, settings
from hypothesis import strategies as st
from pdf_reader import pages, picture

from burnercalc.drawing.paper import cut_up, template_sheets
from burnercalc.drawing.pdf import write_template_pdf
from burnercalc.drawing.shapes import Circle, Drawing, Text, centre_mark, rectangle
from burnercalc.drawing.text_pages import Heading, Table

# The promise to the bench is 0.02 mm; pdfium hands its numbers out as 32-bit floats.
PROMISED_MM = 0.02
EXACT_MM = 0.001


def on_sheets(drawing, read, sheets):
    """Circles of all pages, moved back to their place in the drawing."""
    window = sheets[0].window
    cut = cut_up(drawing, window[2] - window[0], window[3] - window[1])
    return [
        (x - window[0] + tile.x, y - window[1] + tile.y, d)
        for page, tile in zip(read, cut, strict=True)
        for x, y, d in page.circles
    ]


@settings(max_examples=200, deadline=None)
@given(drawings, st.sampled_from(["letter", "a4"]))
def test_every_circle_comes_back_in_place_and_size(drawing, paper):
    read = pages(write_template_pdf([drawing], paper))
    found = on_sheets(drawing, read, template_sheets([drawing], paper))
    wanted = [(s.x, s.y, 2 * s.r) for s in drawing.shapes if isinstance(s, Circle)]
    for circle in wanted:
        assert any(circle == pytest.approx(other, abs=PROMISED_MM) for other in found), circle
    for circle in found:
        assert any(circle == pytest.approx(other, abs=PROMISED_MM) for other in wanted), circle


def field():
    """A face of 24 x 6 in with 60 ports, and its hole table."""
    length, width, d = 609.6, 152.4, 7.9375
    shapes, rows = [rectangle(0, 0, length, width, "body")], []
    for i in range(60):
        x, y = 40 + (i % 20) * (length - 80) / 19, width / 2 + (i // 20 - 1) * 32
        shapes += [
            Circle(x, y, d / 2, "port"),
            *centre_mark(x, y, d),
            Text(x + 5, y + 4, str(i + 1), 2.2, layer="number"),
        ]
        rows.append((str(i + 1), f"{x:.1f}", f"{y:.1f}"))
    return (
        Drawing("face", "Mould base \u2013 ports", tuple(shapes)),
        [(Heading("Hole table"), Table(("No.", "x mm", "y mm"), tuple(rows), "rrr", fold=2))],
    )


@pytest.mark.parametrize("paper,size_pt", [("letter", (612, 792)), ("a4", (595.276, 841.890))])
def test_bars_and_page_boxes(paper, size_pt):
    drawing, table = field()
    data = write_template_pdf([drawing], paper, code="v=1", tables=table)
    read = pages(data)
    document = pypdfium2.PdfDocument(data)
    # 610 mm in three windows of 259 or 277 mm on paper that lies, then the table.
    assert len(read) == 4
    for i, page in enumerate(read):
        assert sorted(document[i].get_mediabox()[2:]) == pytest.approx(sorted(size_pt), abs=0.001)
        assert len(page.level_line(100.0, EXACT_MM)) == 1 and len(page.level_line(101.6, EXACT_MM)) == 1
        for text in (
            "Print at 100 %, then measure this bar",
            "100 mm",
            "4 in",
            f"Sheet {i + 1} of 4",
            "this way up",
            "Design: v=1",
            "Mould base \u2013 ports",
        ):
            assert text in page.text
    assert "Hole table" in read[-1].text and "60" in read[-1].text.split()


def test_a_second_writing_gives_the_same_bytes():
    drawing, table = field()
    assert write_template_pdf([drawing], tables=table) == write_template_pdf([drawing], tables=table)


def test_readers_are_told_not_to_scale_and_the_title():
    data = write_template_pdf([field()[0]])
    assert b"/PrintScaling /None" in data
    assert pypdfium2.PdfDocument(data).get_metadata_dict()["Title"] == "Mould base \u2013 ports"
    assert pypdfium2.raw.FPDF_VIEWERREF_GetPrintScaling(pypdfium2.PdfDocument(data)) == 0


@settings(max_examples=30, deadline=None)
@given(st.floats(0.94, 1.06), st.floats(0.94, 1.06))
def test_the_correction_undoes_what_the_printer_does(scale_x, scale_y):
    drawing = Drawing("c", "Cap", (Circle(10, 20, 30, "body"), Circle(0, 0, 4, "port")))
    (page,) = pages(write_template_pdf([drawing], "a4", scale_x, scale_y))
    # What this printer makes of the page: every length across times scale_x, up times scale_y.
    printed = [(across * scale_x, up * scale_y) for _, _, across, up in page.ovals]
    assert sorted(printed) == [pytest.approx((8, 8), abs=EXACT_MM), pytest.approx((60, 60), abs=EXACT_MM)]
    (x1, y1, *_), (x2, y2, *_) = sorted(page.ovals, key=lambda oval: -oval[2])
    assert ((x1 - x2) * scale_x, (y1 - y2) * scale_y) == pytest.approx((10, 20), abs=EXACT_MM)
    bars = sorted((line[2] - line[0]) * scale_x for line in page.lines if line[1] == line[3] and line[2] - line[0] > 90)
    assert any(b == pytest.approx(100, abs=EXACT_MM) for b in bars)
    assert any(b == pytest.approx(101.6, abs=EXACT_MM) for b in bars)
    assert "Corrected" in page.text or (scale_x, scale_y) == (1.0, 1.0)


def test_ink_is_where_the_numbers_say():
    # A square of 100 mm around the page's middle column, seen as pixels: 8 pixels a millimetre.
    scale = 8 * 25.4 / 72
    image = picture(write_template_pdf([Drawing("s", "S", (rectangle(0, 0, 100, 100, "body"),))], "a4"), 0, scale)
    dark = [x for x in range(image.width) if image.getpixel((x, image.height // 3)) < 128]
    assert (dark[-1] - dark[0]) / 8 == pytest.approx(100.5, abs=0.3)
    assert image.size == pytest.approx((1680, 2376), abs=1)


def test_nothing_is_drawn_outside_the_window():
    image = picture(write_template_pdf([field()[0]], "letter"), 1, 2)
    edge = int(6.4 / 25.4 * 72 * 2)
    assert min(image.crop((0, 0, edge, image.height)).tobytes()) == 255
    assert min(image.crop((image.width - edge, 0, image.width, image.height)).tobytes()) == 255
