"""Text pages: nothing is lost, nothing overlaps or runs off the page, codes and tables read back."""

import itertools

import pytest
import zxingcpp
from drawings import drawings
from hypothesis import given, settings
from hypothesis import strategies as st
from pdf_reader import pages, picture

from burnercalc.drawing import text_pages
from burnercalc.drawing.pdf import write_document_pdf
from burnercalc.drawing.shapes import Circle, Drawing, Text, rectangle, shape_box
from burnercalc.drawing.text_pages import (
    QR,
    Caution,
    Columns,
    Figure,
    Heading,
    Items,
    PageBreak,
    Paragraph,
    Table,
    document_pages,
    figure_ratio,
    flow,
)
from burnercalc.errors import InputError

LINK = "https://example.org/#v=1&rows=3&port_diameter=5/16in"
words = st.text("abcdefgh \u00e9\u03bb", min_size=1, max_size=300)
blocks = st.lists(
    st.one_of(
        st.builds(Heading, words.map(lambda t: t[:60]), st.sampled_from([1, 2])),
        st.builds(Paragraph, words),
        st.builds(Items, st.lists(words, min_size=1, max_size=5).map(tuple), st.sampled_from(["1", "box", "\u2022"])),
        st.builds(Caution, words),
        st.just(PageBreak()),
        st.builds(
            lambda rows: Table(("one", "two", "three"), tuple(rows), "lrc"),
            st.lists(st.tuples(words, words, words), min_size=1, max_size=12),
        ),
    ),
    min_size=1,
    max_size=8,
)


@settings(max_examples=40, deadline=None)
@given(blocks)
def test_no_page_runs_over_and_no_two_texts_overlap(given_blocks):
    for page in flow(given_blocks, 180.0, 245.0):
        for shape in page:
            x1, y1, x2, y2 = shape_box(shape)
            assert x1 >= -0.01 and x2 <= 180.01 and y1 >= -245.3 and y2 <= 0.01
        texts = [shape_box(s) for s in page if isinstance(s, Text) and s.text.strip()]
        for i, a in enumerate(texts):
            for b in texts[:i]:
                apart = a[2] <= b[0] + 0.01 or b[2] <= a[0] + 0.01 or a[3] <= b[1] + 0.01 or b[3] <= a[1] + 0.01
                assert apart, (a, b)


def test_every_row_is_there_once_and_the_head_on_each_page():
    rows = tuple((f"row{i}", f"{i * 1.5:.1f}") for i in range(120))
    read = pages(write_document_pdf("Long table", [Table(("Name", "Value"), rows, "lr")], "letter"))
    text = "\n".join(page.text for page in read).split()
    assert len(read) >= 3 and all(page.text.split().count("Name") == 1 for page in read)
    assert [word for word in text if word.startswith("row")] == [row[0] for row in rows]


def test_a_folded_table_holds_every_row_in_fewer_pages():
    rows = tuple((str(i), f"x{i}") for i in range(133))
    folded = write_document_pdf("T", [Table(("No.", "x"), rows, "rr", fold=3)])
    page_text = [page.text.split() for page in pages(folded)]
    assert sorted(int(w[1:]) for text in page_text for w in text if w[0] == "x" and w[1:]) == list(range(133))
    assert len(page_text) < len(pages(write_document_pdf("T", [Table(("No.", "x"), rows, "rr")])))


def test_a_folded_table_goes_on_where_its_page_ends():
    """Of 179 holes four abreast, 149 stood under 37 on one sheet, and two lines on the next."""
    rows = tuple((str(i + 1), "9 53/64", "2 47/64") for i in range(400))
    table = Table(("No.", "x, in", "y, in"), rows, "rrr", fold=4)
    (first, *_) = read = flow([Heading("Holes", 2), table], 191.0, 242.0)
    lines = [sum(shape.text == "9 53/64" for shape in page if isinstance(shape, Text)) for page in read]
    assert len(read) == 3 and lines[0] == lines[1] > lines[2]
    numbers = sorted(int(shape.text) for shape in first if isinstance(shape, Text) and shape.text.isdigit())
    assert numbers == [*range(1, lines[0] + 1)]


def test_qr_code_opens_the_link():
    data = write_document_pdf("Sheet", [QR(LINK, "opens this design")], "a4")
    found = zxingcpp.read_barcodes(picture(data, 0, 4))
    assert [code.text for code in found] == [LINK]


def test_figure_states_its_scale_and_keeps_its_shape():
    drawing = Drawing(
        "f",
        "Face",
        (
            rectangle(0, 0, 600, 150, "body"),
            Circle(300, 75, 60, "port"),
            Text(10, 10, "17", 2.2, layer="number"),
            Text(10, 60, "24 in", 2.5),
        ),
    )
    (page,) = pages(write_document_pdf("Sheet", [Figure(drawing, 60, "Face")], "letter"))
    # 600 mm into 183.9 mm of column is 1:3.26, the next plain ratio 1:4.
    assert "drawn at 1:4" in page.text and "NOT TO SCALE" in page.text
    assert [c[2] for c in page.circles] == [pytest.approx(30, abs=0.001)]
    assert any(r[2] - r[0] == pytest.approx(150, abs=0.001) for r in page.rectangles)
    assert "24 in" in page.text and "17" not in page.text


@settings(max_examples=60, deadline=None)
@given(drawings, st.floats(50, 180), st.floats(40, 200))
def test_a_figure_stays_inside_its_box_with_all_its_texts(drawing, width, height):
    (page,) = flow([Figure(drawing, height)], width, 260)
    boxes = [shape_box(shape) for shape in page]
    assert min(b[0] for b in boxes) >= -0.01 and max(b[2] for b in boxes) <= width + 0.01
    # The caption adds lines of 4.6 mm under the figure.
    assert min(b[1] for b in boxes) >= -height - 1.5 - 4.6 * 3


def test_figure_ratio_is_the_first_plain_one_that_fits():
    drawing = Drawing("f", "F", (rectangle(0, 0, 600, 150, "body"),))
    assert [figure_ratio(drawing, w, 100) for w in (600, 300, 299, 200, 10)] == [1.5, 2, 2.5, 3, 75]
    with pytest.raises(InputError, match="1:100"):
        figure_ratio(drawing, 5, 100)


def test_heading_moves_on_with_what_it_heads():
    filler = [Paragraph("filler") for _ in range(200)]
    for n in range(30, 60):
        pages_ = flow([*filler[:n], Heading("Moves"), Paragraph("with this")], 180, 245)
        holding = [i for i, page in enumerate(pages_) for s in page if getattr(s, "text", "") in ("Moves", "with this")]
        assert holding[0] == holding[1]


@pytest.mark.parametrize("words", [(), (Paragraph("about it"),)])
def test_a_heading_and_the_words_over_a_table_stay_with_its_first_rows(words):
    """Both lie on one page with the head and two rows, wherever the page ends; the rest of a long table runs on."""
    rows = tuple((f"row{i}", "x") for i in range(60))
    apart = 0
    for n, high in itertools.product(range(20, 50), (241, 243, 245)):
        above = [Paragraph("filler") for _ in range(n)]
        pages_ = flow([*above, Heading("Moves"), *words, Table(("Name", "Value"), rows, "ll")], 180, high)
        texts = [{getattr(shape, "text", "") for shape in page} for page in pages_]
        first = next(page for page in texts if "Moves" in page)
        assert {"Moves", "Name", "row0", "row1", *(word.text for word in words)} <= first
        apart += "row2" not in first
    assert apart  # somewhere the page ends right below the second row


def test_columns_stand_side_by_side():
    (page,) = flow([Columns(((Paragraph("left"),), (Paragraph("right"),)))], 180, 245)
    (left, right) = [s for s in page if isinstance(s, Text)]
    assert left.y == right.y and right.x == pytest.approx((180 - 8) / 2 + 8)


def test_pages_carry_footer_number_and_type_large_enough_to_read():
    blocks_ = [Paragraph("a"), PageBreak(), Caution("b"), Items(("c",), "box")]
    sheets = document_pages("Build sheet", blocks_, 210, 297, "foot")
    assert len(sheets) == 2
    for i, page in enumerate(sheets):
        texts = [s for s in page if isinstance(s, Text)]
        assert {"foot", f"Page {i + 1} of 2"} <= {t.text for t in texts}
        # 9.5 pt or more, 72 pt to 25.4 mm.
        assert all(t.font_size * 72 / 25.4 >= 9.5 for t in texts)


def test_the_same_bytes_twice_and_refusals():
    blocks_ = [Heading("A"), Caution("b"), QR(LINK)]
    assert write_document_pdf("T", blocks_) == write_document_pdf("T", blocks_)
    with pytest.raises(InputError, match="needs 2 cells"):
        write_document_pdf("T", [Table(("a", "b"), (("1",),))])
    with pytest.raises(InputError, match="one page"):
        write_document_pdf("T", [Columns((tuple(Paragraph("x") for _ in range(100)),))])


@settings(max_examples=25)
@given(drawings, st.floats(20, 300), st.floats(20, 300))
def test_the_ratio_is_the_first_at_which_the_reduced_drawing_fits(drawing, width, height):
    def fits(ratio):
        x1, y1, x2, y2 = text_pages._reduced(drawing, ratio).bounds()
        return x2 - x1 <= width and y2 - y1 <= height

    expected = next((ratio for ratio in text_pages.RATIOS if fits(ratio)), None)
    if expected is None:
        with pytest.raises(InputError):
            text_pages.figure_ratio(drawing, width, height)
    else:
        assert text_pages.figure_ratio(drawing, width, height) == expected


def test_a_column_of_long_texts_gets_the_width_that_short_ones_do_not_need():
    """Four columns, one of 20 words: on even shares (45 mm) it would take 6 lines or more."""
    long = " ".join(["refractory"] * 20)
    (page,) = flow(
        (Table(("Step", "Do", "Watch", "Then"), (("cast", long, "level", "12 9/16 in"),), "lllr"),), 180, 250
    )
    texts = [s for s in page if isinstance(s, Text)]
    assert len({s.y for s in texts if "refractory" in s.text}) <= 4
    assert [s.text for s in texts if "9/16" in s.text] == ["12 9/16 in"]  # a number stays on its line


def test_a_small_table_is_not_broken_over_two_pages():
    rows = tuple((f"row {i}", "") for i in range(12))
    tall = [Paragraph("word " * 60) for _ in range(12)]
    first, second = flow((*tall, Table(("What", "Found"), rows, "ll")), 180, 250)
    assert not [s for s in first if isinstance(s, Text) and s.text.startswith("row")]
    assert sum(s.text.startswith("row") for s in second if isinstance(s, Text)) == 12
    many = tuple((f"row {i}", "") for i in range(40))  # a long one is, with its head on each page
    pages_of = flow((*tall, Table(("What", "Found"), many, "ll")), 180, 250)
    assert len(pages_of) == 2 and all("Found" in [s.text for s in page if isinstance(s, Text)] for page in pages_of)
