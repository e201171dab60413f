"""Drawings at exact scale: takes marks with places in mm on the page, paints them on it, nothing scaled."""

# ruff: noqa: ARG002, N802, N803 (Platypus's own names)

from collections.abc import Iterable
from contextlib import AbstractContextManager, nullcontext
from dataclasses import KW_ONLY
from enum import Enum
from itertools import groupby
from typing import Any, NamedTuple, TypeAlias, assert_never

from reportlab.pdfgen.canvas import Canvas

from foldmath.drawing.look import INK, PENS, POINT_MM, TONES
from foldmath.drawing.scenes import Area, Spot, Star, Stroke, Tone
from foldmath.drawing.stars import star_outline
from foldmath.pages.pdf import fonts, writing
from foldmath.pages.pdf.flowables import Painted
from foldmath.pages.pdf.pens import take_pen
from foldmath.pages.pdf.press import Page, Press
from foldmath.pages.pdf.styles import points
from foldmath.pages.tags.kinds import figure
from foldmath.pages.tags.marking import Place, Tags
from foldmath.values import frozen


class Rectangle(NamedTuple):
    """An upright rectangle on a page, in mm from its bottom left corner."""

    left: float
    bottom: float
    right: float
    top: float

    def grown(self, by: float) -> "Rectangle":
        """Give the same place with a rim round it; a negative rim takes one off."""
        return Rectangle(self.left - by, self.bottom - by, self.right + by, self.top + by)

    def meets(self, other: "Rectangle") -> bool:
        """Tell whether two places share area."""
        return (
            self.left < other.right
            and other.left < self.right
            and self.bottom < other.top
            and other.bottom < self.top
        )

    def holds(self, other: "Rectangle") -> bool:
        """Tell whether another place lies inside."""
        return (
            self.left <= other.left
            and other.right <= self.right
            and self.bottom <= other.bottom
            and other.top <= self.top
        )


class Anchor(Enum):
    """Which part of the words stands at their place."""

    START = "start"
    MIDDLE = "middle"
    END = "end"


@frozen(kw_only=True)
class Words:
    """One line of words on a baseline; ``turned`` ones read upwards."""

    at: Spot
    text: str
    size_pt: float
    bold: bool = False
    anchor: Anchor = Anchor.START
    turned: bool = False

    @property
    def width_mm(self) -> float:
        """How wide they are."""
        return fonts.width_of(self.text, fonts.font_name(self.bold), self.size_pt) * POINT_MM


@frozen
class Disc:
    """A circle on white ground."""

    middle: Spot
    radius_mm: float


@frozen
class Placed:
    """Words or rows in the styles of all pages, already wrapped, with their bottom left corner at a spot."""

    flowable: Painted
    at: Spot


ExactMark: TypeAlias = Stroke | Area | Star | Words | Disc | Placed


class ExactDrawing(Painted):
    """A drawing at exact scale among the flowables of a page, at the left.

    Args:
        width_mm, height_mm: its size.
        marks: with places in mm from its bottom left corner.
        after_mm: space kept free below.
        words: tell what it shows; a drawing without any is for the eye alone, apart from the words in it.
    """

    def __init__(
        self,
        width_mm: float,
        height_mm: float,
        marks: Iterable[ExactMark],
        after_mm: float = 0.0,
        *,
        words: str = "",
    ) -> None:
        super().__init__()
        self.words = words
        self.size = points(width_mm), points(height_mm)
        self.marks = tuple(marks)
        self.after = points(after_mm)

    def getSpaceAfter(self) -> float:
        """Give the space below, in points."""
        return self.after

    def wrap(self, aW: float, aH: float) -> tuple[float, float]:
        """Keep its own size."""
        self.width, self.height = self.size
        return self.size

    def paint(self, canvas: Canvas, x: float, y: float) -> None:
        """Paint the marks."""
        canvas.saveState()
        canvas.translate(x, y)
        with picture(canvas, self.words, *self.size):
            paint_marks(canvas, self.marks)
        canvas.restoreState()


@frozen
class ExactPage(Page):
    """A page at exact scale.

    Args:
        width_mm, height_mm: its size.
        sheet: what is cut out of it or folded: the page's trim box (ISO 32000-1:2008, 14.11.2).
        marks: from the back to the front; words in paragraphs stand clear of the others.
        words: tell what the marks show.
    """

    width_mm: float
    height_mm: float
    sheet: Rectangle
    marks: tuple[ExactMark, ...]
    _: KW_ONLY
    words: str = ""

    def put(self, press: Press, number: int, pages: int) -> None:
        """Paint the marks; nothing is said of its number, so that the sheet keeps its edge clear."""
        size = points(self.width_mm), points(self.height_mm)
        press.canvas.setPageSize(size)
        left, bottom, right, top = self.sheet
        press.canvas.trim_box = points(left), points(bottom), points(right), points(top)
        with picture(press.canvas, self.words, *size):
            paint_marks(press.canvas, [mark for mark in self.marks if not isinstance(mark, Placed)])
        paint_marks(press.canvas, [mark for mark in self.marks if isinstance(mark, Placed)])


def picture(canvas: Any, words: str, width: float, height: float) -> AbstractContextManager[None]:
    """Mark what is painted at the origin as a picture that shows what the words tell; as none without any."""
    if not words:
        return nullcontext()
    tags: Tags = canvas.tags
    return tags.leaf(figure(words), Place(0.0, 0.0, width, height))


def paint_marks(canvas: Any, marks: Iterable[ExactMark]) -> None:
    """Paint marks from the back to the front, their places in mm from the canvas's own origin.

    Only words in paragraphs are read aloud, unless all of them are one picture.

    Raises:
        ValueError: a stroke bends.
    """
    canvas.saveState()
    for heard, some in groupby(marks, key=lambda mark: isinstance(mark, Placed)):
        with nullcontext() if heard else canvas.tags.artifact():
            for mark in some:
                _paint(canvas, mark)
    canvas.restoreState()


def _paint(canvas: Canvas, mark: ExactMark) -> None:
    match mark:
        case Stroke():
            if mark.bends:
                raise ValueError("lines at exact scale are straight")
            take_pen(canvas, PENS[mark.meaning])
            _path(canvas, mark.spots, closed=mark.closed)
        case Area(spots, tone):
            _fill(canvas, spots, TONES[tone])
        case Words():
            _write(canvas, mark)
        case Placed(flowable, at):
            take_pen(canvas, INK)
            canvas.setFillGray(TONES[Tone.INK])
            flowable.paint(canvas, points(at.x), points(at.y))
        case Disc(middle, radius):
            take_pen(canvas, INK)
            canvas.setFillGray(TONES[Tone.PRINTED_SIDE])
            canvas.circle(points(middle.x), points(middle.y), points(radius), stroke=1, fill=1)
        case Star(middle, radius, hollow):
            tone = Tone.PRINTED_SIDE if hollow else Tone.INK
            _fill(canvas, star_outline(middle, radius), TONES[tone])
        case _:
            assert_never(mark)


def _path(canvas: Canvas, spots: tuple[Spot, ...], *, closed: bool = False, fill: bool = False) -> None:
    path = canvas.beginPath()
    path.moveTo(points(spots[0].x), points(spots[0].y))
    for corner in spots[1:]:
        path.lineTo(points(corner.x), points(corner.y))
    if closed:
        path.close()
    canvas.drawPath(path, stroke=1, fill=int(fill))


def _fill(canvas: Canvas, spots: tuple[Spot, ...], tone: float) -> None:
    """Fill a polygon, with a thin outline in ink."""
    take_pen(canvas, INK)
    canvas.setFillGray(tone)
    _path(canvas, spots, closed=True, fill=True)


def _write(canvas: Canvas, words: Words) -> None:
    canvas.setFillGray(0)
    canvas.saveState()
    canvas.translate(points(words.at.x), points(words.at.y))
    if words.turned:
        canvas.rotate(90)
    write = {
        Anchor.START: writing.write,
        Anchor.MIDDLE: writing.write_middle,
        Anchor.END: writing.write_right,
    }
    write[words.anchor](canvas, 0, 0, words.text, fonts.font_name(words.bold), words.size_pt)
    canvas.restoreState()
