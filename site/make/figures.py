"""Bokeh figures of the page: drawings to scale, and charts. Data columns and colours are replaced by app.mjs."""

from bokeh.core.properties import value
from bokeh.models import (
    CategoricalColorMapper,
    ColumnDataSource,
    HoverTool,
    ImportedStyleSheet,
    PanTool,
    Range1d,
    ResetTool,
    WheelZoomTool,
)
from bokeh.plotting import figure

from burnercalc.drawing.shapes import LAYERS

LAYER_NAMES = list(LAYERS)
VERDICTS = ["good", "caution", "stop", ""]
FLOWS = ["none", "starved", "less", "even", "more", "flooded"]
DASHES = ["solid", "dashed", "dotdash", "dotted"]
GREY = "#555555"


def colours(name, factors):
    """A mapper from layer or verdict to colour; the page gives it the palette of its theme."""
    return CategoricalColorMapper(name=f"colours-{name}", factors=factors, palette=[GREY] * len(factors))


def base(name, **options):
    made = figure(
        name=f"figure-{name}",
        sizing_mode="stretch_width",
        toolbar_location=None,
        tools=[],
        min_border=0,
        outline_line_color=None,
        background_fill_alpha=0,
        border_fill_alpha=0,
        **options,
    )
    made.stylesheets = [ImportedStyleSheet(url="./figure.css")]
    made.output_backend = "canvas"
    return made


def drawing_figure(name, data):
    """A drawing in mm, equal scales on both axes."""
    x1, y1, x2, y2 = data["bounds"]
    made = base(
        name,
        aspect_ratio=round((x2 - x1) / (y2 - y1), 4),
        x_range=Range1d(x1, x2, name=f"{name}-x"),
        y_range=Range1d(y1, y2, name=f"{name}-y"),
        x_axis_location=None,
        y_axis_location=None,
    )
    made.grid.visible = False
    layer = {"field": "layer", "transform": colours(name, LAYER_NAMES)}
    fill = {"field": "layer", "transform": colours(f"{name}-fill", LAYER_NAMES)}
    made.patches("xs", "ys", source=source(f"{name}-areas", data["areas"]), fill_color=fill, line_color=None)
    made.multi_line(
        "xs", "ys", source=source(f"{name}-lines", data["lines"]), line_color=layer, line_width=1.1, line_dash="dash"
    )
    ports = made.circle(
        "x",
        "y",
        radius="r",
        source=source(f"{name}-circles", data["circles"]),
        line_color=layer,
        line_width=1.2,
        fill_color={"field": "flow", "transform": colours(f"{name}-flow", FLOWS)},
        nonselection_fill_alpha=1,
        nonselection_line_alpha=1,
        selection_line_width=4,
    )
    texts = made.text(
        "x",
        "y",
        text="text",
        angle="angle",
        angle_units="deg",
        text_align="align",
        text_baseline="bottom",
        text_line_height=1.0,
        text_font_size="11px",
        text_font=value("system-ui, sans-serif"),
        text_color=layer,
        source=source(f"{name}-texts", text_columns(data["texts"])),
    )
    texts.glyph.name = f"glyph-{name}"
    if name == "face":
        numbers = made.text(
            "number_x",
            "number_y",
            text="number",
            x_offset=1,
            y_offset=2,
            text_baseline="bottom",
            text_font_size="10px",
            text_color=layer,
            nonselection_text_alpha=1,
            source=ports.data_source,
        )
        numbers.update(name=f"numbers-{name}", visible=False)  # until the figure is enlarged
        drilled = made.scatter(
            "x", "y", source=source(f"{name}-drilled", {"x": [], "y": []}), marker="x", size=9, line_width=2
        )
        drilled.glyph.name = f"done-{name}"
        made.add_tools(HoverTool(renderers=[ports], tooltips="@words"))
    zoom(made, name)
    return made


def text_columns(texts):
    """Columns of texts as the text glyph wants them: its alignments are called left, center and right."""
    align = {"start": "left", "middle": "center", "end": "right"}
    return {
        **{key: column for key, column in texts.items() if key != "anchor"},
        "align": [align[anchor] for anchor in texts["anchor"]],
    }


def chart_figure(name, data):
    """A chart: bands by verdict behind, lines, the design marked."""
    made = base(
        name,
        height=230,
        x_range=Range1d(*data["x_range"], name=f"{name}-x"),
        y_range=Range1d(*data["y_range"], name=f"{name}-y"),
        x_axis_label=data["x_label"],
        y_axis_label=data["y_label"],
    )
    made.xaxis.name, made.yaxis.name = f"{name}-xaxis", f"{name}-yaxis"
    made.xgrid.visible, made.ygrid.name = False, f"{name}-ygrid"
    if data["x_ticks"]:
        made.xaxis.ticker = [place for place, _ in data["x_ticks"]]
        made.xaxis.major_label_overrides = dict(data["x_ticks"])
    plain = [key for key, series in data["series"].items() if series["kind"] == "line" and not series["verdict"]]
    for key, series in data["series"].items():
        told = series["label"] and len(data["series"]) > 1 and not key.endswith("_band")  # its line's name is enough
        label = {"legend_label": series["label"]} if told else {}
        drawn_series(made, f"{name}-{key}", series, plain.index(key) if key in plain else 0, label)
    if data["mark"]["x"]:
        mark = made.scatter(
            "x",
            "y",
            source=source(f"{name}-mark", data["mark"]),
            size=17,
            marker="circle",
            line_width=3,
            fill_color=GREY,
            line_color="#ffffff",
            legend_label="this design",
        )
        mark.glyph.name = f"mark-{name}"
    for legend in made.legend:
        put_below(made, legend, name)
    zoom(made, name)
    return made


def drawn_series(made, name, series, number, label):
    """A band, bars, points or a line; `number`: of the lines that are told apart by their dashes."""
    if series["kind"] == "band":
        columns = {"x": series["x"], "y": series["y"], "y2": series["y2"]}
        band = made.varea("x", "y", "y2", source=source(name, columns), fill_color=GREY, fill_alpha=0.16, **label)
        band.glyph.name = f"fill-{series['verdict'] or 'plain'}-{name}"
    elif series["kind"] in ("bars", "points"):
        colour = {"field": "verdict", "transform": colours(name, VERDICTS)}
        filled = {"source": source(name, columns_of(series)), "fill_color": colour, "line_color": None, **label}
        if series["kind"] == "bars":
            made.vbar("x", top="y", width=0.8, **filled)
        else:
            made.scatter("x", "y", size=8, **filled)
    else:
        columns = {"x": series["x"], "y": series["y"]}
        dash = DASHES[number % 4]
        line = made.line(
            "x", "y", source=source(name, columns), line_width=2.5, line_color=GREY, line_dash=dash, **label
        )
        line.glyph.name = f"line-{series['verdict'] or f'plain{number % 4}'}-{name}"


def put_below(made, legend, name):
    """The legend below the chart, where it hides nothing."""
    legend.update(
        name=f"legend-{name}",
        orientation="vertical",
        ncols=2,
        border_line_color=None,
        background_fill_alpha=0,
        padding=2,
        margin=2,
        label_text_font_size="12px",
        label_standoff=3,
        glyph_height=16,
        glyph_width=22,
        spacing=4,
    )
    made.center.remove(legend)
    made.add_layout(legend, "below")


def columns_of(series):
    return {"x": series["x"], "y": series["y"], "verdict": [series["verdict"]] * len(series["x"])}


def source(name, columns):
    return ColumnDataSource(columns, name=name)


def zoom(made, name):
    """Pan, wheel and pinch are there but idle, so that a finger scrolls the page until the figure is enlarged."""
    made.add_tools(PanTool(name=f"pan-{name}"), WheelZoomTool(name=f"wheel-{name}"), ResetTool())
    made.toolbar.active_drag = None
    made.toolbar.active_scroll = None
