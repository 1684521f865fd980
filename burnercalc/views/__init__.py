"""What is shown besides numbers: one function for each declared table, chart and drawing, from settings and parts."""

from .. import catalogue
from . import face, feed, fire, heat, make

MODULES = {"heat": heat, "face": face, "feed": feed, "make": make, "fire": fire}
TABLES = {key: getattr(MODULES[table.room], f"{key}_table") for key, table in catalogue.TABLES.items()}
CHARTS = {key: getattr(MODULES[chart.room], f"{key}_chart") for key, chart in catalogue.CHARTS.items()}
DRAWINGS = {key: getattr(MODULES[drawing.room], f"{key}_drawing") for key, drawing in catalogue.DRAWINGS.items()}
