"""A QR code as black squares; the code itself is made by segno (ISO/IEC 18004)."""

from functools import lru_cache

from .shapes import rectangle

# White modules that must stand around the code: ISO/IEC 18004, 4 on each side (published).
QUIET_MODULES = 4
MOST_CODED = 2331  # bytes that the largest code holds at error correction M: ISO/IEC 18004, table 7 (published)


@lru_cache(maxsize=4)  # a sheet is laid out several times before it fits, with the same code
def _matrix(text):
    """Rows of a code's modules, 1 where black."""
    import segno  # here, for it loads long and few ask for a code

    return segno.make(text, error="m", micro=False).matrix


def qr_shapes(text, x, y, size):
    """Shapes of a QR code with its quiet zone inside a square of `size` mm, lower left corner at x, y.

    Neighbouring black modules of a row are one rectangle, so that no hairline shows between them. Error correction M.
    """
    matrix = _matrix(text)
    module = size / (len(matrix) + 2 * QUIET_MODULES)
    shapes = []
    for i, row in enumerate(matrix):
        foot, start = y + size - (QUIET_MODULES + i + 1) * module, None
        for j, dark in enumerate([*row, 0]):
            if dark and start is None:
                start = j
            elif not dark and start is not None:
                left = x + (QUIET_MODULES + start) * module
                shapes.append(rectangle(left, foot, (j - start) * module, module, "solid"))
                start = None
    return tuple(shapes)
