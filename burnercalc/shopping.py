"""The shopping list on paper, and what of it is left to buy: a line is named by what it is and as what it is sold."""

from . import units
from .build_sheet import LAW, STOP
from .drawing.helvetica import shortened, text_width
from .drawing.paper import paper_size
from .drawing.pdf import write_document_pdf
from .drawing.text_pages import SIDE_MM, TABLE_MM, Heading, Paragraph, Table

TITLE = "Shopping list: blown multi-port burner"
BOX = "Got" + " " * 6  # wide enough for a tick


def name_of(row):
    """A row's name on the page, under which the device keeps that it is there."""
    item, sold, *_ = row
    return f"{item}, {sold}"


def some_of(count, name):
    """What the device keeps where so many of a row are there, not all."""
    return f"{count:.0f} of {name}"


def left_to_buy(result, got=()):
    """The rows of the list without what is got: those whose names are among it, and of others so many."""
    left = []
    for row in result.tables["shopping"].rows:
        *words, count, price = row
        name = name_of(row)
        some = next((n for n in range(count) if n and some_of(n, name) in got), 0)
        if name not in got:
            left.append((*words, count - some, price and price * (count - some) / count))
    return left


def money(amount):
    return units.show(amount, "money", "in")


def pdf(result, link, paper, got=()):
    """The list as PDF bytes, without what is got."""
    stop = STOP if result.worst == "stop" else ""  # on every page
    room = paper_size(paper)[0] - 2 * SIDE_MM - 30 - text_width(stop, TABLE_MM)
    return write_document_pdf(TITLE, blocks(result, got), paper, stop + shortened(link, TABLE_MM, room))


def blocks(result, got=()):
    system, table = result.design.units, result.tables["shopping"]
    left = left_to_buy(result, got)
    rows = [
        ("", *(units.show(cell, column.dimension, system) for cell, column in zip(row, table.columns))) for row in left
    ]
    total, whole = sum(row[-1] or 0.0 for row in left), result["cost_batch"]
    out = len(table.rows) - len(left)
    said = f" {out} lines are left out, ticked as at hand: {money(whole - total)}." if out else ""
    count = result.design.batch_size
    return [
        Heading(f"For {count} burner{'s' if count > 1 else ''}: {money(total)} to spend"),
        Paragraph(
            "Prices are examples until you set yours, in your own money. Bars, packs and bags are counted whole." + said
        ),
        Table((BOX, *(column.label for column in table.columns)), tuple(rows), "lllrr"),
        Paragraph(LAW),
    ]
