"""The sketches beside settings: of settings that exist, small, and silent to a screen reader."""

import sys
from pathlib import Path

import pytest

from burnercalc.settings import BY_KEY

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "site" / "make"))
from sketches import SKETCHES, sketches


@pytest.mark.parametrize("key", SKETCHES)
def test_sketch_is_small_and_marks_one_thing(key):
    text = sketches()[key]
    assert key in BY_KEY and BY_KEY[key].help
    assert len(text.encode()) < 700 and text.startswith("<svg ") and text.endswith("</g></svg>")
    assert 'aria-hidden="true"' in text and text.count('class="mark"') == 1
    assert "<text" not in text and "<title" not in text


@pytest.mark.parametrize("key", SKETCHES)
def test_sketch_stays_on_its_sheet(key):
    for shape in SKETCHES[key]:
        points = getattr(shape, "points", None) or (
            [(shape.x1, shape.y1), (shape.x2, shape.y2)] if hasattr(shape, "x1") else []
        )
        assert all(0 <= x <= 120 and 0 <= y <= 70 for x, y in points)
