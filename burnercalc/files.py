"""Every file that a design can be taken away in: name -> (file name, media type, function of result and link -> bytes)."""
from . import units
from .drawing import flow
from .drawing.pdf import write_template_pdf

NOMINAL_BAR_M = 0.100


def printer_scale(d):
    """(x, y): what the 100 mm bar measured on paper over 100 mm."""
    return d.print_scale_x / NOMINAL_BAR_M, d.print_scale_y / NOMINAL_BAR_M


def hole_table(result):
    """The hole table as a block of text pages, in the design's units."""
    table, unit_system = result.tables["holes"], result.design.units
    rows = [[units.show(value, column.dimension, unit_system) for value, column in zip(row, table.columns)] for row in table.rows]
    return [flow.Heading(table.title), flow.Table([column.label for column in table.columns], rows)]


def template_pdf(result, link, paper):
    """The drilling template with its hole table, corrected for the printer."""
    scale_x, scale_y = printer_scale(result.design)
    return write_template_pdf([result.drawings["template"]], paper, scale_x, scale_y, link, hole_table(result))


FILES = {
    "template-letter": ("drilling-template-letter.pdf", "application/pdf", lambda result, link: template_pdf(result, link, "letter")),
    "template-a4": ("drilling-template-a4.pdf", "application/pdf", lambda result, link: template_pdf(result, link, "a4")),
}
