"""Read a PDF back with pdfium: circles, straight lines and texts of a page in mm from its lower left corner."""

import ctypes
from math import hypot

import pypdfium2
import pypdfium2.raw as raw

MM = 25.4 / 72


def _segments(item):
    """(kind, x, y) of each path segment in mm."""
    matrix, found = item.get_matrix(), []
    for i in range(raw.FPDFPath_CountSegments(item)):
        segment = raw.FPDFPath_GetPathSegment(item, i)
        x, y = ctypes.c_float(), ctypes.c_float()
        raw.FPDFPathSegment_GetPoint(segment, x, y)
        u, v = matrix.on_point(x.value, y.value)
        found.append((raw.FPDFPathSegment_GetType(segment), u * MM, v * MM))
    return found


def _slants(item):
    matrix = item.get_matrix()
    return min(abs(matrix.a), abs(matrix.b)) > 0.1


def _words(item, read):
    """What a text object says."""
    count = raw.FPDFTextObj_GetText(item, read, None, 0)
    buffer = (ctypes.c_ushort * (count // 2))()
    raw.FPDFTextObj_GetText(item, read, buffer, count)
    return bytes(buffer).decode("utf-16-le").rstrip("\0")


class Page:
    def __init__(self, page):
        self.width, self.height = (side * MM for side in page.get_size())
        read = page.get_textpage()
        self.aslant = [_words(item, read) for item in page.get_objects(filter=[raw.FPDF_PAGEOBJ_TEXT]) if _slants(item)]
        self.text = read.get_text_range().replace("\r\n", "\n")
        for words in self.aslant:  # what lies under the lines is not the first of them
            self.text = self.text.removeprefix(words + "\n")
        self.circles, self.ovals, self.lines, self.rectangles = [], [], [], []
        for item in page.get_objects(filter=[raw.FPDF_PAGEOBJ_PATH]):
            segments = _segments(item)
            curves = [s for s in segments if s[0] == raw.FPDF_SEGMENT_BEZIERTO]
            xs, ys = [s[1] for s in segments], [s[2] for s in segments]
            across, up = max(xs) - min(xs), max(ys) - min(ys)
            if len(curves) == 24 and len(segments) == 25:
                x, y = (max(xs) + min(xs)) / 2, (max(ys) + min(ys)) / 2
                self.ovals.append((x, y, across, up))
                # Every third point after the first lies on the curve.
                radii = [hypot(s[1] - x, s[2] - y) for s in segments[::3]]
                gap = hypot(segments[0][1] - segments[-1][1], segments[0][2] - segments[-1][2])
                if max(radii) - min(radii) < 1e-3 and gap < 1e-3:  # a long open arc is no circle
                    self.circles.append((x, y, across))
            elif not curves and len(segments) == 2:
                self.lines.append((*segments[0][1:], *segments[1][1:]))
            elif not curves and len(segments) in (4, 5):
                self.rectangles.append((min(xs), min(ys), max(xs), max(ys)))

    def level_line(self, length, near=0.001):
        """Lines of that length that lie level; their count is the answer to "is the bar there"."""
        return [line for line in self.lines if abs(line[1] - line[3]) < 1e-6 and abs(line[2] - line[0] - length) < near]


def pages(data):
    document = pypdfium2.PdfDocument(data)
    return [Page(document[i]) for i in range(len(document))]


def picture(data, number, scale):
    """One page as a grey image, scale pixels a point."""
    return pypdfium2.PdfDocument(data)[number].render(scale=scale).to_pil().convert("L")
