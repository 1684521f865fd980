"""What is shown besides numbers: one function for each declared table, chart and drawing, from settings and parts."""

from .. import catalogue
from . import (
    exploded,
    face,
    feed,
    fire,
    heat,
    in_chamber,
    lighting_card,
    make,
    nest,
    plans,
    plate,
    slide,
    templates,
    train,
)

MODULES = {"heat": heat, "face": face, "feed": feed, "make": make, "fire": fire}
TABLES = {
    key: next(
        getattr(module, f"{key}_table")
        for module in (train, lighting_card, MODULES[table.room])
        if hasattr(module, f"{key}_table")
    )
    for key, table in catalogue.TABLES.items()
}
CHARTS = {key: getattr(MODULES[chart.room], f"{key}_chart") for key, chart in catalogue.CHARTS.items()}
DRAWINGS = {
    key: next(
        getattr(module, f"{key}_drawing")
        for module in (plans, exploded, in_chamber, nest, templates, train, slide, plate)
        if hasattr(module, f"{key}_drawing")
    )
    for key in catalogue.DRAWINGS
}
