"""Helvetica as every PDF reader carries it: which characters it has, and how wide a text comes out.

Characters outside WinAnsi are spelled in characters inside it, by the one table SPELLINGS.
"""

import unicodedata
from functools import cache, lru_cache

from ..tables import read_table

# Capitals over font size. Source: Adobe core-14 font metrics, CapHeight 718 in both weights (published).
CAP_HEIGHT_RATIO = 0.718

# How characters that WinAnsi lacks are written: signs of the trade and Greek letters of the formulas.
SPELLINGS = {
    "\u2212": "-",
    "\xad": "-",
    "\u2010": "-",
    "\u2011": "-",
    "\u2012": "-",
    "\u2044": "/",
    "\u2215": "/",
    "\u2009": " ",
    "\u200a": " ",
    "\u202f": " ",
    "\u2007": " ",
    "\u2002": " ",
    "\u2003": " ",
    "\u2032": "'",
    "\u2033": '"',
    "\u2300": "dia. ",
    "\u2264": "<=",
    "\u2265": ">=",
    "\u2248": "~",
    "\u2260": "not equal ",
    "\u221a": "sqrt ",
    "\u221e": "inf",
    "\u2192": "->",
    "\u2190": "<-",
    "\u2191": "up",
    "\u2193": "down",
    "\u2206": "delta ",
    "\u215b": "1/8",
    "\u215c": "3/8",
    "\u215d": "5/8",
    "\u215e": "7/8",
    "\u2153": "1/3",
    "\u2154": "2/3",
    "\u2103": "\u00b0C",
    "\u2109": "\u00b0F",
    "\u03a9": "ohm",
    "\u2713": "ok",
    "\u2717": "x",
    "\u03b1": "alpha",
    "\u03b2": "beta",
    "\u03b3": "gamma",
    "\u03b4": "delta",
    "\u03b5": "epsilon",
    "\u03b7": "eta",
    "\u03b8": "theta",
    "\u03bb": "lambda",
    "\u03bc": "\u00b5",
    "\u03bd": "nu",
    "\u03c0": "pi",
    "\u03c1": "rho",
    "\u03c3": "sigma",
    "\u03c4": "tau",
    "\u03c6": "phi",
    "\u03d5": "phi",
    "\u0394": "delta ",
    "\u03a6": "phi",
    # Only for files in ASCII; WinAnsi has these.
    "\u00bc": "1/4",
    "\u00bd": "1/2",
    "\u00be": "3/4",
    "\u00b0": " deg",
    "\u00b1": "+/-",
    "\u00d7": "x",
    "\u00b2": "^2",
    "\u00b3": "^3",
    "\u00b9": "^1",
    "\u00b7": "*",
    "\u00b5": "u",
    "\u00a0": " ",
    "\u20ac": "EUR",
    "\u2013": "-",
    "\u2014": "-",
    "\u2018": "'",
    "\u2019": "'",
    "\u201c": '"',
    "\u201d": '"',
    "\u2026": "...",
    "\u2070": "^0",
    "\u2074": "^4",
    "\u2075": "^5",
    "\u207b": "^-",
    "\u2080": "0",
    "\u2081": "1",
    "\u2082": "2",
    "\u2083": "3",
    "\u2084": "4",
    "\u2085": "5",
    "\u2086": "6",
    "\u2087": "7",
    "\u2088": "8",
}


@lru_cache(maxsize=8192)
def spelled(text, encoding="cp1252"):
    """`text` in characters of `encoding`: by SPELLINGS, else without its accents, else "?"; breaks become spaces."""
    text = str(text).replace("\n", " ")
    if text.isascii() and text.isprintable():
        return text
    out = []
    for char in text:
        choice = _spelled(char, encoding)
        # A whole number and its fraction stay apart: 2 5/8, not 25/8.
        apart = choice != char and "/" in choice and out and out[-1][-1].isdigit()
        out.append(" " + choice if apart else choice)
    return "".join(out)


@lru_cache(maxsize=1024)
def _spelled(char, encoding):
    for choice in (char, SPELLINGS.get(char, ""), unicodedata.normalize("NFKD", char)):
        if choice and _fits(choice, encoding):
            return choice
    return "".join(c for c in unicodedata.normalize("NFKD", char) if _fits(c, encoding)) or "?"


def _fits(text, encoding):
    try:
        return all(char.isprintable() or char == "\xa0" for char in text) and bool(text.encode(encoding))
    except UnicodeEncodeError:
        return False


@cache
def _widths(bold):
    return {
        bytes([int(row["code"])]).decode("cp1252"): row["bold" if bold else "regular"] / 1000
        for row in read_table("helvetica")
    }


def text_width(text, size, bold=False):
    """Width of one line of text in the unit of `size`, the font size; no kerning, as PDF readers set it.

    Source: Adobe core-14 font metrics (data/helvetica.csv).
    Checked by: tests/test_drawing_helvetica.py (pdfium's own widths)
    """
    widths = _widths(bool(bold))
    return size * sum(widths[char] for char in spelled(text))


def wrapped(text, size, width, bold=False):
    """`text` as lines no wider than `width`, broken at spaces; a wider word is cut, after a / or & if it can be."""
    widths = _widths(bool(bold))
    lines, line, line_width = [], "", 0.0
    for word in spelled(text).split(" "):
        word_width = size * sum(widths[char] for char in word)
        with_space = line_width + size * widths[" "] + word_width
        if line and with_space <= width:
            line, line_width = f"{line} {word}", with_space
            continue
        if line:
            lines.append(line)
        while len(word) > 1 and word_width > width:
            cut = _fitting(word, widths, size, width)
            sign = max(word.rfind("/", 0, cut), word.rfind("&", 0, cut)) + 1
            cut = sign if sign > cut / 2 else cut
            lines.append(word[:cut])
            word_width -= size * sum(widths[char] for char in word[:cut])
            word = word[cut:]
        line, line_width = word, word_width
    return lines + [line]


def _fitting(word, widths, size, width):
    """How many of a word's characters are no wider than `width`: at least one, and not all."""
    room = width
    for count, char in enumerate(word[:-1]):
        room -= size * widths[char]
        if room < 0:
            return max(count, 1)
    return len(word) - 1
