"""Guide sheets of lessons made up for tests, and their lines as two other programs read them."""

import ctypes
from fractions import Fraction
from functools import cache
from io import BytesIO
from math import hypot
from typing import NamedTuple

import pdfplumber
import pypdfium2
from lessons_in_words import EIGHTHS, proved
from pypdfium2 import raw

from foldmath.drawing.look import PENS
from foldmath.drawing.scenes import Meaning
from foldmath.guides import guide_sheets
from foldmath.paper.sizes import paper_named, sheet
from foldmath.plane.numbers import denominator, numerator

MM = 72 / 25.4
"""Points in a millimetre."""

TIGHT = 0.01
"""Millimetres that a line may be off."""

BOOKLET = (
    *EIGHTHS,
    "open",
    "fold left edge to right edge",
    "slit at height 1/2 from left edge to 1/2",
    "open",
    "gather into booklet",
)
"""Eight panels, cut from the folded edge to the next crease, and gathered."""

SAIL = (
    "fold at 1/3 moving left",
    "fold at 1/4 moving bottom",
    "open",
    "fold along (0, 0) (1/3, 1/4) moving (0, 1)",
)
FIFTEENTHS = ("pleat width into 5", "open", "pleat height into 3", "open")
CROSSED = ("fold bottom left corner to top right corner", "open", "fold left edge to right edge")


class Case(NamedTuple):
    """A lesson on a paper, and what its guides are printed on."""

    steps: tuple[str, ...]
    paper: str
    orientation: str
    page_paper: str


FULL_SIZE = {
    "booklet on letter": Case(BOOKLET, "letter", "landscape", "letter"),
    "sail cloth on letter": Case(SAIL, "letter", "landscape", "letter"),
    "fifteenths on A4": Case(FIFTEENTHS, "A4", "landscape", "A4"),
    "eighths on upright A4": Case(EIGHTHS, "A4", "portrait", "A4"),
    "booklet on A5 from letter": Case(BOOKLET, "A5", "landscape", "letter"),
    "sail cloth on A5 from A4": Case(SAIL, "A5", "portrait", "A4"),
    "crossed square from letter": Case(CROSSED, "origami 6 in", "portrait", "letter"),
}
"""Lessons whose sheets lie on the page at full size."""

MEASURED = {
    "eighths on tabloid": Case(EIGHTHS, "tabloid", "landscape", "letter"),
    "booklet on 24 x 36": Case(BOOKLET, "Arch D", "landscape", "A4"),
    "fifteenths on 24 x 36": Case(FIFTEENTHS, "Arch D", "portrait", "letter"),
    "sail cloth on A2": Case(SAIL, "A2", "landscape", "A4"),
}
"""Lessons whose sheets are larger than the page."""


class Drawn(NamedTuple):
    """A straight line on a page: its ends in mm from the bottom left, its width and its dashes in mm."""

    start: tuple[float, float]
    end: tuple[float, float]
    width: float
    dashes: tuple[float, ...]

    @property
    def length(self) -> float:
        return hypot(self.end[0] - self.start[0], self.end[1] - self.start[1])

    def drawn_as(self, meaning: Meaning) -> bool:
        """Tell whether the line has the pen of a meaning."""
        pen = PENS[meaning]
        given = (self.width, *self.dashes)
        wanted = (pen.width_mm, *pen.dashes_mm)
        return len(given) == len(wanted) and all(
            abs(one - other) < TIGHT for one, other in zip(given, wanted, strict=True)
        )

    def holds(self, point: tuple[float, float]) -> bool:
        """Tell whether a point lies on the line, within 0.01 mm."""
        (x, y), (end_x, end_y) = self.start, self.end
        along_x, along_y = (end_x - x) / self.length, (end_y - y) / self.length
        way = (point[0] - x) * along_x + (point[1] - y) * along_y
        off = abs((point[1] - y) * along_x - (point[0] - x) * along_y)
        return off < TIGHT and -TIGHT < way < self.length + TIGHT


def fraction(number) -> Fraction:
    """Take a number of the model into the fractions of the standard library."""
    return Fraction(numerator(number), denominator(number))


def nearest_sixteenth(distance_mm: Fraction) -> Fraction:
    """Find the nearest sixteenth of an inch among those below and above; of two as near, the upper one."""
    inches = distance_mm / Fraction("25.4")
    below = Fraction(int(inches * 16), 16)
    above = below + Fraction(1, 16)
    return below if inches - below < above - inches else above


@cache
def proved_case(case: Case):
    """Fold the lesson of a case."""
    folded = sheet(paper_named(case.paper), case.orientation)
    return proved(*case.steps, paper=case.paper, sheet=folded, orientation=case.orientation)


@cache
def printed_case(case: Case) -> bytes:
    """Print the guides of a case."""
    return guide_sheets(proved_case(case), case.page_paper)


@cache
def document(pdf: bytes) -> list[dict]:
    """Give every page as pdfplumber reads it."""
    with pdfplumber.open(BytesIO(pdf)) as opened:
        return [
            {
                "width": float(page.width) / MM,
                "height": float(page.height) / MM,
                "trimbox": _in_mm(getattr(page, "trimbox", ())),
                "mediabox": _in_mm(page.mediabox),
                "text": text,
                "chars": page.chars,
                "curves": page.curves,
                "lines": page.lines,
                "words": page.extract_words(x_tolerance=1.5, y_tolerance=1.5),
            }
            for page, text in zip(opened.pages, _texts(pdf), strict=True)
        ]


def _texts(pdf: bytes) -> list[str]:
    """Give the words of every page as PDFium copies them, in the order in which they were set."""
    pages = pypdfium2.PdfDocument(pdf)
    return [" ".join(page.get_textpage().get_text_range().split()) for page in pages]


def _in_mm(box: tuple) -> tuple[float, ...]:
    """Give a box in mm; one that a page lacks is empty."""
    return tuple(float(side) / MM for side in box)


def lines_by_pdfplumber(pdf: bytes, number: int) -> list[Drawn]:
    """Read the lines of a page, counted from 1, with pdfplumber (github.com/jsvine/pdfplumber)."""
    page = document(pdf)[number - 1]
    return [
        Drawn(
            *((x / MM, page["height"] - y / MM) for x, y in line["pts"]),
            line["linewidth"] / MM,
            tuple(dash / MM for dash in (line["dash"] or ([],))[0]),
        )
        for line in page["lines"]
    ]


@cache
def lines_by_pdfium(pdf: bytes, number: int) -> list[Drawn]:
    """Read the lines of a page, counted from 1, with PDFium (pdfium.googlesource.com)."""
    page = pypdfium2.PdfDocument(pdf)[number - 1]
    lines = []
    for path in page.get_objects(filter=[raw.FPDF_PAGEOBJ_PATH]):
        points = _points_of(path)
        if len(points) == 2:
            width = ctypes.c_float()
            raw.FPDFPageObj_GetStrokeWidth(path.raw, width)
            lines.append(Drawn(*points, width.value / MM, _dashes_of(path)))
    return lines


def _points_of(path) -> list[tuple[float, float]]:
    x, y = ctypes.c_float(), ctypes.c_float()
    carry = raw.FS_MATRIX()
    raw.FPDFPageObj_GetMatrix(path.raw, carry)
    points = []
    for index in range(raw.FPDFPath_CountSegments(path.raw)):
        raw.FPDFPathSegment_GetPoint(raw.FPDFPath_GetPathSegment(path.raw, index), x, y)
        across = carry.a * x.value + carry.c * y.value + carry.e
        up = carry.b * x.value + carry.d * y.value + carry.f
        points.append((across / MM, up / MM))
    return points


def _dashes_of(path) -> tuple[float, ...]:
    count = raw.FPDFPageObj_GetDashCount(path.raw)
    dashes = (ctypes.c_float * count)()
    raw.FPDFPageObj_GetDashArray(path.raw, dashes, count)
    return tuple(dash / MM for dash in dashes)


READERS = {"pdfplumber": lines_by_pdfplumber, "PDFium": lines_by_pdfium}
