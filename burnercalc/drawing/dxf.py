"""A drawing as DXF R12 (AC1009) text in millimetres, layers by purpose, for CAD programs and cutting tables of any age.

Source: the DXF reference, group codes of R12 (memory); read back by ezdxf.
"""

from .helvetica import spelled
from .shapes import ANCHORS, LAYERS, Arc, Circle, Line, Polyline

# DXF colour numbers: 1 red, 3 green, 4 cyan, 5 blue, 8 grey. What is cut or drilled stands out from what only explains.
CUT = {"window": 1, "port": 1, "body": 5, "mould": 5, "bend": 3, "setback": 4, "cut": 1, "pocket": 5, "engrave": 3}

# R12's own signs for what ASCII lacks.
SIGNS = {"%": "%%%", "\u00b0": "%%d", "\u00b1": "%%p", "\u2300": "%%c", "\u00d8": "%%c"}


def _text(text):
    return spelled("".join(SIGNS.get(char, char) for char in text), "ascii")


def _pairs(*pairs):
    """Group code and value on a line each; floats to a millionth of a millimetre."""
    return "".join(
        f"{code}\n{value:.6f}\n" if isinstance(value, float) else f"{code}\n{value}\n" for code, value in pairs
    )


def _point(x, y, first=10):
    return (first, float(x)), (first + 10, float(y)), (first + 20, 0.0)


def _entity(shape):
    on = (8, shape.layer.upper())
    if isinstance(shape, Line):
        return _pairs((0, "LINE"), on, *_point(shape.x1, shape.y1), *_point(shape.x2, shape.y2, 11))
    if isinstance(shape, Circle):
        return _pairs((0, "CIRCLE"), on, *_point(shape.x, shape.y), (40, float(shape.r)))
    if isinstance(shape, Arc):
        return _pairs(
            (0, "ARC"),
            on,
            *_point(shape.x, shape.y),
            (40, float(shape.r)),
            (50, float(shape.start_deg)),
            (51, float(shape.end_deg)),
        )
    if isinstance(shape, Polyline):
        bulges = shape.bulges or (0.0,) * len(shape.points)
        corners = [
            _pairs((0, "VERTEX"), on, *_point(x, y), (42, float(bulge))) for (x, y), bulge in zip(shape.points, bulges)
        ]
        return (
            _pairs((0, "POLYLINE"), on, (66, 1), *_point(0, 0), (70, int(shape.closed)))
            + "".join(corners)
            + _pairs((0, "SEQEND"), on)
        )
    aligned = _point(shape.x, shape.y, 11) if shape.anchor != "start" else ()
    return _pairs(
        (0, "TEXT"),
        on,
        *_point(shape.x, shape.y),
        (40, float(shape.height)),
        (1, _text(shape.text)),
        (50, float(shape.angle)),
        (7, "STANDARD"),
        (72, ANCHORS.index(shape.anchor)),
        *aligned,
    )


def _line_type(name, dash_mm):
    """A table entry; drawn lengths positive, gaps negative."""
    steps = [length if i % 2 == 0 else -length for i, length in enumerate(dash_mm)]
    return _pairs(
        (0, "LTYPE"),
        (2, name),
        (70, 0),
        (3, ""),
        (72, 65),
        (73, len(steps)),
        (40, float(sum(dash_mm))),
        *((49, float(step)) for step in steps),
    )


def _table(name, entries):
    return _pairs((0, "TABLE"), (2, name), (70, len(entries))) + "".join(entries) + _pairs((0, "ENDTAB"))


def write_dxf(drawing):
    """The drawing as DXF text; one unit is 1 mm, the origin that of the drawing; the same text every time."""
    x1, y1, x2, y2 = drawing.bounds()
    used = [layer for layer in LAYERS if any(shape.layer == layer for shape in drawing.shapes)]
    dashed = [layer for layer in used if LAYERS[layer].dash_mm]
    line_types = [_line_type("CONTINUOUS", ())] + [_line_type(layer.upper(), LAYERS[layer].dash_mm) for layer in dashed]
    layers = [_pairs((0, "LAYER"), (2, "0"), (70, 0), (62, 7), (6, "CONTINUOUS"))]
    layers += [
        _pairs(
            (0, "LAYER"),
            (2, layer.upper()),
            (70, 0),
            (62, CUT.get(layer, 8)),
            (6, layer.upper() if layer in dashed else "CONTINUOUS"),
        )
        for layer in used
    ]
    style = _pairs(
        (0, "STYLE"), (2, "STANDARD"), (70, 0), (40, 0.0), (41, 1.0), (50, 0.0), (71, 0), (42, 2.5), (3, "txt"), (4, "")
    )
    return "".join(
        [
            _pairs((999, "units: millimetres, scale 1:1"), (999, spelled(drawing.title, "ascii"))),
            _pairs(
                (0, "SECTION"),
                (2, "HEADER"),
                (9, "$ACADVER"),
                (1, "AC1009"),
                (9, "$EXTMIN"),
                *_point(x1, y1),
                (9, "$EXTMAX"),
                *_point(x2, y2),
                (0, "ENDSEC"),
            ),
            _pairs((0, "SECTION"), (2, "TABLES")),
            _table("LTYPE", line_types),
            _table("LAYER", layers),
            _table("STYLE", [style]),
            _pairs((0, "ENDSEC")),
            _pairs((0, "SECTION"), (2, "ENTITIES")),
            *(_entity(shape) for shape in drawing.shapes),
            _pairs((0, "ENDSEC"), (0, "EOF")),
        ]
    )
