"""DXF read back and audited by ezdxf, an independent reader."""

import io

import ezdxf
import pytest
from drawings import drawings
from ezdxf import bbox, recover
from hypothesis import given, settings

from burnercalc.drawing.dxf import write_dxf
from burnercalc.drawing.shapes import Arc, Circle, Drawing, Line, Polyline, Text, rounded_rectangle, shape_box

NEAR = 2e-4


def read(drawing):
    text = write_dxf(drawing)
    assert text.isascii() and text == write_dxf(drawing)
    document = ezdxf.read(io.StringIO(text))
    return document, document.modelspace()


def xy(point):
    return point.x, point.y


def numbers(items):
    return [value for item in items for value in item]


@settings(max_examples=200, deadline=None)
@given(drawings)
def test_everything_comes_back_and_the_audit_is_clean(drawing):
    document, space = read(drawing)
    audit = document.audit()
    assert not audit.errors and not audit.fixes and document.dxfversion == "AC1009"
    shapes = drawing.shapes
    assert numbers((*xy(e.dxf.center), e.dxf.radius) for e in space.query("CIRCLE")) == pytest.approx(
        numbers((s.x, s.y, s.r) for s in shapes if isinstance(s, Circle)), abs=NEAR
    )
    assert numbers((*xy(e.dxf.start), *xy(e.dxf.end)) for e in space.query("LINE")) == pytest.approx(
        numbers((s.x1, s.y1, s.x2, s.y2) for s in shapes if isinstance(s, Line)), abs=NEAR
    )
    assert numbers(
        (*xy(e.dxf.center), e.dxf.radius, e.dxf.start_angle, e.dxf.end_angle) for e in space.query("ARC")
    ) == pytest.approx(numbers((s.x, s.y, s.r, s.start_deg, s.end_deg) for s in shapes if isinstance(s, Arc)), abs=NEAR)
    assert len(space.query("POLYLINE")) == sum(isinstance(s, Polyline) for s in shapes)
    texts = [(*xy(e.dxf.align_point if e.dxf.halign else e.dxf.insert), e.dxf.height) for e in space.query("TEXT")]
    assert numbers(texts) == pytest.approx(
        numbers((s.x, s.y, s.height) for s in shapes if isinstance(s, Text)), abs=NEAR
    )


def test_rounded_window_is_one_closed_line_with_true_arcs():
    shape = rounded_rectangle(-50, -20, 100, 40, 8, "window")
    _, space = read(Drawing("a", "a", (shape,)))
    line = space.query("POLYLINE")[0]
    assert line.is_closed
    arcs = [e for e in line.virtual_entities() if e.dxftype() == "ARC"]
    assert [e.dxf.radius for e in arcs] == pytest.approx([8] * 4, abs=NEAR)
    assert sorted((round(x, 3), round(y, 3)) for x, y in (xy(e.dxf.center) for e in arcs)) == [
        (-42, -12),
        (-42, 12),
        (42, -12),
        (42, 12),
    ]
    box = bbox.extents([line], fast=False)
    assert (*xy(box.extmin), *xy(box.extmax)) == pytest.approx(shape_box(shape), abs=0.01)


def test_layers_by_purpose_and_their_line_types():
    document, space = read(Drawing("a", "a", (Line(0, 0, 9, 0, "setback"), Circle(0, 0, 2, "port"))))
    assert {e.dxf.layer for e in space} == {"SETBACK", "PORT"}
    assert document.layers.get("SETBACK").dxf.linetype == "SETBACK"
    assert document.layers.get("PORT").dxf.linetype == "CONTINUOUS"
    assert tuple(document.header["$EXTMAX"])[:2] == pytest.approx((9, 2))


def test_signs_of_the_trade_in_ascii():
    _, space = read(Drawing("a", "a", (Text(0, 0, "300 \u00b0F \u00b15 2\u00bd \u00d7 4 \u03bb", 3),)))
    assert space.query("TEXT")[0].dxf.text == "300 %%dF %%p5 2 1/2 x 4 lambda"
    assert space.query("TEXT")[0].plain_text() == "300 \u00b0F \u00b15 2 1/2 x 4 lambda"


def test_strict_reader_finds_nothing_to_recover(tmp_path):
    file = tmp_path / "a.dxf"
    file.write_text(write_dxf(Drawing("a", "a", (Circle(1, 2, 3, "port"), Text(0, 0, "8 %", 2)))), encoding="ascii")
    document, audit = recover.readfile(file)
    assert not audit.errors and document.modelspace().query("TEXT")[0].plain_text() == "8 %"
