"""The shopping list on paper, and what of it is left to buy: a line is named by what it is and as what it is sold."""

from . import foot, units
from .drawing.pdf import write_document_pdf
from .drawing.text_pages import Heading, Paragraph, Table

TITLE = "Shopping list: blown multi-port burner"
BOX = "Got  "  # wide enough for a tick


def name_of(row):
    """A row's name on the page, under which the device keeps that it is there."""
    item, sold, *_ = row
    return f"{item}, {sold}"


def some_of(count, name):
    """What the device keeps where so many of a row are there, not all."""
    return f"{count:.0f} of {name}"


def left_to_buy(result, got=(), table="shopping"):
    """The rows of the list, or of the tools beside it, without what is got: all of a row, or so many."""
    left = []
    for row in result.tables[table].rows:
        *words, count, price = row
        name = name_of(row)
        some = next((n for n in range(count) if n and some_of(n, name) in got), 0)
        if name not in got:
            left.append((*words, count - some, price and price * (count - some) / count))
    return left


def summed(rows):
    return sum(row[-1] or 0.0 for row in rows)


def money(amount, result):
    return units.show(amount, "price", result.design.reader)


def whole(amount, result):
    """A sum as the answers have it; on paper it stands under lines that add up to it."""
    return units.show(amount, "money", result.design.reader)


def pdf(result, link, paper, got=()):
    """The list as PDF bytes, without what is got."""
    listed = [*blocks(result, got), *sold(result)]
    return write_document_pdf(TITLE, listed, paper, foot.line(result, link, paper), foot.stamp(result))


def beside_train(result):
    """The lists for a sheet that has the train part by part: here it is one line of its own."""
    whole = result.tables["shopping"].rows
    listed = result.part("cost").entries(result.part("train"), result.design.batch_size)
    parts = [row for row, entry in zip(whole, listed) if entry.part]
    rest = [row for row, entry in zip(whole, listed) if not entry.part]
    priced = summed(parts)  # at a price of one's own for all, that has a line of its own
    train = [("gas and air train", "part by part, in its own list", result.design.batch_size, priced)]
    return blocks(result, rows=[*rest, *(train if priced else [])])


def blocks(result, got=(), rows=None):
    """The list and the tools without what is got; `rows`: the list's own, with the same sum, on a sheet."""
    left, tools = left_to_buy(result, got) if rows is None else rows, left_to_buy(result, got, "tools")
    tools_apart = "No part of what the burner costs; what is in the shop is ticked."
    below = [Paragraph(tools_apart + _spared(result, "tools", tools)), Paragraph(foot.LAW)]
    return [
        Heading(f"For {_burners(result)}: {money(summed(left), result)} to spend"),
        _table(result, "shopping", left),
        Paragraph(
            "Prices are examples until you set yours. Bars, packs and bags are counted whole"
            + ("; the tools below are no part of it." if rows else f".{_spared(result, 'shopping', left)}")
        ),
        Heading(f"Once for the shop: tools and safety gear, {money(summed(tools), result)}", 2),
        _table(result, "tools", tools),
        *([] if rows else below),  # the sheet has said the last one beside gas and train
    ]


def _burners(result):
    """How many, and of how many of the chamber where that gets more."""
    count, all_of_it = result.design.batch_size, result.design.burner_count
    if count < all_of_it:
        return f"{count} of the {all_of_it} burners of the chamber"
    return f"{count} burner{'s' if count > 1 else ''}"


def sold(result):
    """What one costs that is sold, line by line, and more at once; that others decide whether it may be."""
    system = result.design.reader
    lines, breaks = result.tables["selling_lines"], result.tables["quantity_breaks"]
    return [
        Heading(lines.title),
        Table(
            tuple(column.label for column in lines.columns),
            tuple((what, money(amount, result)) for what, amount in lines.rows),
            "lr",
        ),
        Heading(breaks.title, 2),
        Table(
            tuple(column.label for column in breaks.columns),
            tuple(
                tuple(units.show(cell, column.dimension, system) for cell, column in zip(row, breaks.columns))
                for row in breaks.rows
            ),
            "rrrrrrl",
        ),
        Paragraph(f"{result['worth_selling']} {result['before_selling']}"),
        Paragraph(
            "Hours are those at the bench. Nobody is paid in them for putting the train together, nor for standing by "
            f"{(result.part('schedule').watched_s + result.part('fire_test').booked_s) / 3600:.0f} h of first and test "
            "fires."
        ),
    ]


def _spared(result, table, left):
    """What is left out of a list, and what that spares."""
    rows = result.tables[table].rows
    out = len(rows) - len(left)
    lines = "1 line is" if out == 1 else f"{out} lines are"
    return f" {lines} left out, ticked as at hand: {money(summed(rows) - summed(left), result)}." if out else ""


def _table(result, name, rows):
    columns = result.tables[name].columns
    shown = [
        ("", *(units.show(cell, column.dimension, result.design.reader) for cell, column in zip(row, columns)))
        for row in rows
    ]
    return Table((BOX, *(column.label for column in columns)), tuple(shown), "lllrr")
