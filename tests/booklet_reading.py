"""Booklets made up for tests, and their printed sheets read back, folded, as a reader would see them."""

from dataclasses import dataclass, replace
from functools import cache
from io import BytesIO

import pdfplumber
import pytest
from lessons_in_words import EIGHTHS, proved

from foldmath.booklets.papers import BookletPapers, booklet_papers, printed_booklet
from foldmath.drawing.look import PENS
from foldmath.drawing.rendering.recording import Recording
from foldmath.drawing.scenes import Meaning
from foldmath.lesson.booklet.forms import all_forms, folded_booklet
from foldmath.lesson.booklet.plan import BookletPlan, PlannedPage
from foldmath.lesson.proving import ProvedLesson
from foldmath.pages.page_fit import usual_page
from foldmath.paper.booklet.booklet import Booklet, Face, Page
from foldmath.paper.lengths import MILLIMETRES, read_length
from foldmath.paper.sizes import paper_named, sheet
from foldmath.paper.state import Sheet
from foldmath.plane.motions import Motion
from foldmath.plane.numbers import Exact, denominator, numerator

MM = 72 / 25.4
"""Points in a millimetre."""

FORMS = tuple(all_forms())
PAPERS = ("letter", "A4", "tabloid", "construction 9 x 12")


def paper_sheet(paper: str, orientation: str = "landscape") -> Sheet:
    """Lay a paper down."""
    return sheet(paper_named(paper), orientation)


@cache
def booklet_from(form: str, paper: str, orientation: str) -> Booklet:
    """Fold a form from a paper."""
    lying = paper_sheet(paper, orientation)
    return folded_booklet(all_forms()[form].steps_on(lying), lying)


def planned(
    pages: tuple[PlannedPage, ...],
    form: str = "eight-page",
    paper: str = "letter",
    orientation: str = "landscape",
    ruling: str = "3/8 in",
    **told,
) -> ProvedLesson:
    """Give a lesson of three halvings with a booklet."""
    lying = paper_sheet(paper, orientation)
    steps = all_forms()[form].steps_on(lying)
    plan = BookletPlan(
        form=form,
        steps=steps,
        booklet=booklet_from(form, paper, orientation),
        pages=pages,
        ruling=read_length(ruling),
    )
    made = proved(*EIGHTHS, "open", sheet=lying, paper=paper, orientation=orientation, **told)
    return replace(made, lesson=replace(made.lesson, booklet=plan))


def papers_of(made: ProvedLesson, look: str = "regular") -> BookletPapers:
    """Lay a booklet out for the printer's paper that is nearest."""
    assert made.lesson.booklet is not None
    return booklet_papers(made, made.lesson.booklet, usual_page(made.lesson.sheet), look)


def undrawn(papers: BookletPapers) -> dict[str, Recording]:
    """Give recordings of the right sizes with nothing on them, each under the name of its picture."""
    return {
        name: Recording(
            name=name, width=scene.width_mm * MM, height=scene.height_mm * MM, ink=(), words=scene.words
        )
        for name, scene in papers.pictures.items()
    }


KEY_MARK = "key·"


@dataclass(frozen=True, kw_only=True)
class Mark:
    """Something printed: the page that it is on, and its corners on that page, in mm, as it is read.

    Args:
        page: the number of the page.
        text: of a letter; empty for lines and boxes.
        left, bottom, right, top: its place on the upright page.
        turned: how a letter stands on the upright page: (1, 0, 0, 1) is upright.
        on_sheet: a letter's own origin on the opened sheet, in mm.
        size: of a letter, in points; the width of a line.
    """

    page: int
    text: str
    left: float
    bottom: float
    right: float
    top: float
    turned: tuple[float, float, float, float]
    on_sheet: tuple[float, float]
    size: float


@dataclass(frozen=True, kw_only=True)
class Folded:
    """A printed booklet taken back through the model's motions: letters, boxes and ruled lines by page."""

    papers: BookletPapers
    letters: tuple[Mark, ...]
    boxes: tuple[Mark, ...]
    lines: tuple[Mark, ...]
    sides: tuple[tuple[float, float], ...]

    def text(self, number: int) -> str:
        """Read a page from its top to its foot, spaces and the word that marks a key left out."""
        whole, marked = self.whole_text(number), f"{KEY_MARK}{number}"
        return whole.removesuffix(marked) + str(number) if whole.endswith(marked) else whole

    def whole_text(self, number: int) -> str:
        """Read a page from its top to its foot, spaces left out."""
        rows: dict[float, list[Mark]] = {}
        for letter in self.letters:
            if letter.page == number:
                rows.setdefault(round(letter.bottom, 1), []).append(letter)
        return "".join(
            letter.text.strip()
            for row in sorted(rows, reverse=True)
            for letter in sorted(rows[row], key=lambda letter: letter.left)
        )


def read_back(papers: BookletPapers, *, answers: bool = False) -> Folded:
    """Print a booklet and take everything printed back to its page."""
    content = printed_booklet(papers, undrawn(papers), answers)
    letters, boxes, lines, sides = [], [], [], []
    with pdfplumber.open(BytesIO(content)) as document:
        for face, side in zip(Face, document.pages, strict=False):
            sides.append((float(side.width) / MM, float(side.height) / MM))
            unfolding = _Unfolding(papers, face)
            letters += [unfolding.letter(char) for char in side.chars if char["text"].strip()]
            boxes += [unfolding.mark(rect) for rect in side.rects if rect["stroke"]]
            lines += [unfolding.mark(line) for line in side.lines if not unfolding.of_the_sheet(line)]
    return Folded(
        papers=papers, letters=tuple(letters), boxes=tuple(boxes), lines=tuple(lines), sides=tuple(sides)
    )


class _Unfolding:
    """From the PDF's points, on one side of the sheet, back to upright pages."""

    def __init__(self, papers: BookletPapers, face: Face) -> None:
        self.papers, self.face = papers, face
        self.sheet = papers.layout.sheet
        self.made = papers.layout.plan.booklet
        self.unit = as_mm(MILLIMETRES[self.sheet.unit])
        self.width, self.height = as_mm(self.sheet.width) * self.unit, as_mm(self.sheet.height) * self.unit
        lies = papers.layout.lies
        self.page_width, self.page_height = as_mm(lies.width), as_mm(lies.height)
        self.left, self.bottom = as_mm(lies.left), as_mm(lies.bottom)

    def on_sheet(self, x: float, y: float) -> tuple[float, float]:
        """Take a point of the PDF, from its bottom left, to the opened sheet, printed side up, in mm.

        A printer that flips on the long edge turns a page that lies on its long side about the level
        middle line, and one that stands about the upright one.
        """
        x, y = x / MM, y / MM
        if self.face is Face.BACK and self.page_width > self.page_height:
            y = self.page_height - y
        elif self.face is Face.BACK:
            x = self.page_width - x
        return x - self.left, y - self.bottom

    def page_at(self, x: float, y: float) -> Page:
        """Find the page that a point of the sheet is on."""
        found = [page for page in self.made.pages if page.face is self.face and self._holds(page, x, y)]
        assert len(found) == 1, (x, y, [page.number for page in found])
        return found[0]

    def _holds(self, page: Page, x: float, y: float) -> bool:
        across, up = carried(page.motion, x, y, self.unit)
        return (
            0 < across < as_mm(self.made.width) * self.unit and 0 < up < as_mm(self.made.height) * self.unit
        )

    def of_the_sheet(self, line: dict) -> bool:
        """Tell whether a line is the sheet's own: a tick at its edge, a slit, its scissors, or its frame."""
        height = self.page_height * MM
        ends = [self.on_sheet(line["x0"], height - line["bottom"])]
        ends += [self.on_sheet(line["x1"], height - line["top"])]
        at_edge = any(min(x, self.width - x) < 0.01 or min(y, self.height - y) < 0.01 for x, y in ends)
        drawn = [PENS[meaning].width_mm for meaning in (Meaning.CUT, Meaning.OUTLINE)]
        return at_edge or any(line["linewidth"] / MM == pytest.approx(pen, abs=0.01) for pen in drawn)

    def letter(self, char: dict) -> Mark:
        """Take a letter back."""
        a, b, c, d, e, f = char["matrix"]
        x, y = self.on_sheet(e, f)
        turned = (*self._direction(a, b), *self._direction(c, d))
        mark = self.mark(char)
        page = self.made.page(mark.page)
        (right_x, right_y), (up_x, up_y) = turned[:2], turned[2:]
        turned = (*turned_by(page.motion, right_x, right_y), *turned_by(page.motion, up_x, up_y))
        return replace(mark, text=char["text"], turned=turned, on_sheet=(x, y), size=char["size"])

    def _direction(self, x: float, y: float) -> tuple[float, float]:
        if self.face is Face.PRINTED:
            return x, y
        return (x, -y) if self.page_width > self.page_height else (-x, y)

    def mark(self, mark: dict) -> Mark:
        """Take a box, a line or a letter's room back."""
        height = self.page_height * MM
        one = self.on_sheet(mark["x0"], height - mark["bottom"])
        other = self.on_sheet(mark["x1"], height - mark["top"])
        page = self.page_at((one[0] + other[0]) / 2, (one[1] + other[1]) / 2)
        (x, y), (end_x, end_y) = (carried(page.motion, *corner, self.unit) for corner in (one, other))
        return Mark(
            page=page.number,
            text="",
            left=min(x, end_x),
            bottom=min(y, end_y),
            right=max(x, end_x),
            top=max(y, end_y),
            turned=(0, 0, 0, 0),
            on_sheet=one,
            size=mark.get("linewidth") or 0.0,
        )


def as_mm(number: Exact) -> float:
    """Leave the exact numbers."""
    return numerator(number) / denominator(number)


def carried(motion: Motion, x: float, y: float, unit: float = 1.0) -> tuple[float, float]:
    """Carry a point in mm by a motion whose shift is in a sheet's unit of so many mm."""
    right, up = turned_by(motion, x, y)
    return right + as_mm(motion.x) * unit, up + as_mm(motion.y) * unit


def turned_by(motion: Motion, x: float, y: float) -> tuple[float, float]:
    """Turn a direction by a motion."""
    c, s = as_mm(motion.c), as_mm(motion.s)
    if motion.upright:
        return c * x - s * y, s * x + c * y
    return c * x + s * y, s * x - c * y
