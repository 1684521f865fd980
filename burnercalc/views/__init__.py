"""What is shown besides numbers: one function for each declared table, chart and drawing, from settings and parts."""

from .. import catalogue
from . import face, feed, fire, heat, make, plans, templates

MODULES = {"heat": heat, "face": face, "feed": feed, "make": make, "fire": fire}
TABLES = {key: getattr(MODULES[table.room], f"{key}_table") for key, table in catalogue.TABLES.items()}
CHARTS = {key: getattr(MODULES[chart.room], f"{key}_chart") for key, chart in catalogue.CHARTS.items()}
DRAWINGS = {
    key: getattr(plans, f"{key}_drawing", None) or getattr(templates, f"{key}_drawing") for key in catalogue.DRAWINGS
}
