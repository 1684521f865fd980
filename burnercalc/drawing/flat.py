"""A drawing as flat columns, one dict a kind of mark, ready for a chart that draws lines, areas, circles and texts."""

from .shapes import LAYERS, Circle, Text, outline_points

# By how many lengths a layer's dash has: none, dash and gap, dash gap dot gap.
DASHES = {0: "solid", 2: "dashed", 4: "dashdot"}


def flat_columns(drawing, filled=()):
    """{"areas", "lines", "circles", "texts"}: dicts of equally long lists, mm, in the order they are painted.

    areas hold xs, ys (lists of points) and layer; lines also dash; circles x, y, r, layer, number (1 for the first on
    its layer); texts x, y, text, height, anchor, angle, layer. `filled` names layers whose outlines are areas too.
    """
    areas = {"xs": [], "ys": [], "layer": []}
    lines = {"xs": [], "ys": [], "layer": [], "dash": []}
    circles = {"x": [], "y": [], "r": [], "layer": [], "number": []}
    texts = {"x": [], "y": [], "text": [], "height": [], "anchor": [], "angle": [], "layer": []}
    counted = {}
    for shape in drawing.painted():
        if shape.layer in filled:
            points = outline_points(shape)
            _append(areas, [round(x, 4) for x, _ in points], [round(y, 4) for _, y in points], shape.layer)
        if isinstance(shape, Text):
            _append(texts, shape.x, shape.y, shape.text, shape.height, shape.anchor, shape.angle, shape.layer)
        elif isinstance(shape, Circle):
            counted[shape.layer] = counted.get(shape.layer, 0) + 1
            _append(circles, shape.x, shape.y, shape.r, shape.layer, counted[shape.layer])
        else:
            points = outline_points(shape)
            xs, ys = [round(x, 4) for x, _ in points], [round(y, 4) for _, y in points]
            if LAYERS[shape.layer].fill is not None:
                _append(areas, xs, ys, shape.layer)
            if LAYERS[shape.layer].stroke_mm:
                _append(lines, xs, ys, shape.layer, DASHES[len(LAYERS[shape.layer].dash_mm)])
    return {"areas": areas, "lines": lines, "circles": circles, "texts": texts}


def _append(columns, *values):
    for column, value in zip(columns.values(), values, strict=True):
        column.append(value)
