"""Helvetica widths against pdfium, which carries its own font tables; spelling of characters WinAnsi lacks."""

import ctypes

import pypdfium2.raw as pdfium
import pytest
from hypothesis import given
from hypothesis import strategies as st

from burnercalc.drawing import helvetica
from burnercalc.drawing.helvetica import spelled, text_width, wrapped
from burnercalc.tables import read_table

# pdfium draws Helvetica with a font of its own, in which these marks are wider than in Adobe's metrics.
SUBSTITUTED = {"Euro", "at", "guilsinglright", "guillemotleft", "guillemotright"}


@pytest.mark.parametrize("font,bold", [("Helvetica", False), ("Helvetica-Bold", True)])
def test_widths_agree_with_pdfium(font, bold):
    pdfium.FPDF_InitLibrary()
    document = pdfium.FPDF_CreateNewDocument()
    loaded = pdfium.FPDFText_LoadStandardFont(document, font.encode())
    width, wrong = ctypes.c_float(), {}
    for row in read_table("helvetica"):
        char = bytes([int(row["code"])]).decode("cp1252")
        assert pdfium.FPDFFont_GetGlyphWidth(loaded, ord(char), 1000.0, width)
        if row["name"] not in SUBSTITUTED and abs(width.value - text_width(char, 1000, bold)) > 0.5:
            wrong[row["name"]] = (width.value, text_width(char, 1000, bold))
    pdfium.FPDF_CloseDocument(document)
    assert wrong == {}


def test_trade_characters_pass_and_others_are_spelled():
    trade = "1\u00bd \u00d7 3\u00bc in, 300 \u00b0F, \u00b15 %, m\u00b2"
    assert spelled(trade) == trade
    assert spelled("\u03bb \u2265 1 \u2192 \u22125 \u215d\u2033 m\u207b\u00b9") == 'lambda >= 1 -> -5 5/8" m^-\u00b9'
    assert spelled("a\nb\u6f22\u0107") == "a b?c"
    assert spelled("2\u00bd in, 300 \u00b0F", "ascii") == "2 1/2 in, 300  degF"
    assert spelled("2\u215d") == "2 5/8"


def test_wrapped_lines_keep_every_word_and_the_width():
    text = "Ram the mix into the corners first, then strike it off level and tap the sides until no bubbles come."
    lines = wrapped(text, 10, 120)
    assert " ".join(lines) == text and all(text_width(line, 10) <= 120 for line in lines)
    assert "".join(wrapped("W" * 50, 10, 100)) == "W" * 50


def wrapped_plainly(text, size, width):
    """What wrapped does, by measuring every beginning anew: right, and quadratic."""
    lines, line = [], ""
    for word in spelled(text).split(" "):
        trial = f"{line} {word}" if line else word
        if text_width(trial, size) <= width:
            line = trial
            continue
        if line:
            lines.append(line)
        while len(word) > 1 and text_width(word, size) > width:
            cut = max((n for n in range(1, len(word)) if text_width(word[:n], size) <= width), default=1)
            sign = max(word.rfind("/", 0, cut), word.rfind("&", 0, cut)) + 1
            cut = sign if sign > cut / 2 else cut
            lines.append(word[:cut])
            word = word[cut:]
        line = word
    return lines + [line]


@given(st.text("abcWi./& -=", max_size=120), st.integers(20, 900))
def test_wrapped_is_what_measuring_every_beginning_gives(text, tenths):
    assert wrapped(text, 3.37, tenths / 10 + 0.0123) == wrapped_plainly(text, 3.37, tenths / 10 + 0.0123)


def test_a_long_link_is_measured_once(monkeypatch):
    class Counted(dict):
        looked_up = 0

        def __getitem__(self, char):
            Counted.looked_up += 1
            return super().__getitem__(char)

    widths = Counted(helvetica._widths(False))
    monkeypatch.setattr(helvetica, "_widths", lambda bold: widths)
    link = "Design: https://example.org/#v=1&" + "&".join(f"setting_{n}={n}-1/2in" for n in range(400))
    lines = wrapped(link, 3.2, 196)
    assert lines[0] == "Design:" and "".join(lines[1:]) == link.removeprefix("Design: ")
    assert Counted.looked_up < 5 * len(link)
