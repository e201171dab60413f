"""The first page of the guides: which pages to print and how, and what the lines and marks mean."""

from bisect import bisect_left
from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial

from foldmath.drawing.legends import SAMPLE_MM, SAMPLES, sample_line
from foldmath.drawing.scenes import Meaning, Spot, Star, Stroke
from foldmath.drawing.stars import SAMPLE_STAR_MM
from foldmath.guides.marks.guide_sheet import Guides
from foldmath.guides.pieces.circled_numbers import number_in_circle
from foldmath.guides.pieces.setting import Drawn
from foldmath.guides.reading.text_pages import text_pages
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import ProvedLesson
from foldmath.pages.page_fit import PageFit
from foldmath.pages.pdf.exact import Disc, ExactDrawing, ExactMark
from foldmath.pages.pdf.paginating import FilledPage
from foldmath.pages.pdf.styles import upright
from foldmath.paper.measures import measures_said, orientation_said, paper_said
from foldmath.paper.state import Kind
from foldmath.paper.steps import FoldStep
from foldmath.phrases import Phrase, joined
from foldmath.words.steps import WrittenStep

TICK_HALF_MM, RING_MM = 2.6, 1.0
MARKS_HIGH_MM = 5.4
NUMBER = 8.0, 2.4
"""The sample of a number: its figures in points, and the radius of its circle in mm."""

LONGEST_TITLE = 60
"""Letters; longer titles are shortened."""


@dataclass(frozen=True)
class Listed:
    """What a page or a span of pages is: a name that the template knows, and the pages, from 1."""

    name: str
    first: int
    last: int


@dataclass(frozen=True)
class ListedFold:
    """A fold, and whether a line on the guides is its own."""

    step: WrittenStep
    drawn: bool


@dataclass(frozen=True, kw_only=True)
class Cover:
    """What the first page says.

    Args:
        lies: how the sheet lies on the page; None if it is larger.
        listed: the pages that follow.
        lines: the styles of the fold lines, by the names of the legend.
        folds: in order; none where nothing is folded.
        cuts: whether something is cut.
    """

    lies: PageFit | None
    listed: tuple[Listed, ...]
    lines: tuple[str, ...]
    folds: tuple[ListedFold, ...]
    cuts: bool


def cover_page(
    proved: ProvedLesson, shown: Guides, page_paper: str, lies: PageFit | None, listed: list[Listed]
) -> FilledPage:
    """Write the first page; where the folds do not fit on it, as many of them as do.

    Args:
        proved: the lesson.
        shown: its guides.
        page_paper: what the printer prints on.
        lies: how the sheet lies on it.
        listed: the pages that follow.
    """
    lesson = proved.lesson
    folds, cuts = _folds(proved, shown), shown.slit is not None
    cover = Cover(lies=lies, listed=tuple(listed), lines=_lines(shown), folds=folds, cuts=cuts)

    def pages(left_out: int) -> list[FilledPage]:
        return text_pages(
            "cover",
            lesson.language,
            upright(page_paper),
            _samples(),
            title=short(lesson.title),
            sheet=sheet_said(lesson),
            page_paper=page_paper,
            cover=cover,
            told=len(cover.folds) - left_out,
        )

    whole = pages(0)
    if len(whole) == 1:
        return whole[0]
    left_out = range(len(cover.folds))
    fewest = bisect_left(left_out, True, lo=1, key=lambda number: len(pages(number)) == 1)
    return pages(fewest)[0]


def short(title: str) -> str:
    """Shorten a long title."""
    return title if len(title) <= LONGEST_TITLE else title[: LONGEST_TITLE - 1].rstrip() + "…"


def sheet_said(lesson: Lesson) -> Phrase:
    """Say what sheet a lesson folds; one that is named by its measures has them said once."""
    measures, lies = measures_said(lesson.sheet), orientation_said(lesson.orientation)
    named = lesson.paper != str(measures)
    return joined(", ", (paper_said(lesson.paper), lies, measures) if named else (measures, lies))


def _lines(shown: Guides) -> tuple[str, ...]:
    kinds = {piece.kind for line in shown.folds for piece in line.pieces}
    return tuple(kind.value for kind in (Kind.VALLEY, Kind.MOUNTAIN, Kind.CUT) if kind in kinds)


def _folds(proved: ProvedLesson, shown: Guides) -> tuple[ListedFold, ...]:
    if not shown.folds:
        return ()
    drawn = {line.fold for line in shown.folds}
    folds = [written for written in proved.lesson.steps if isinstance(written.step, FoldStep)]
    return tuple(ListedFold(written, number in drawn) for number, written in enumerate(folds, start=1))


def _samples() -> dict[str, Drawn]:
    """Draw what the legend shows, at the scale of the sheets."""
    wide, high = SAMPLE_MM
    drawn: dict[str, Drawn] = {}
    for name in SAMPLES:
        drawn[name] = partial(ExactDrawing, wide, high, [sample_line(name)])
    middle = Spot(wide / 2, MARKS_HIGH_MM / 2)
    marks = {
        "number": number_in_circle(middle, 1, *NUMBER),
        "tick": _ringed_tick(middle),
        "middle": _cross(middle),
        "star": iter([Star(middle, SAMPLE_STAR_MM)]),
    }
    for name, shown in marks.items():
        drawn[name] = partial(ExactDrawing, wide, MARKS_HIGH_MM, tuple(shown))
    return drawn


def _ringed_tick(middle: Spot) -> Iterator[ExactMark]:
    x, y = middle
    yield Stroke((Spot(x - TICK_HALF_MM, y), Spot(x + TICK_HALF_MM, y)), Meaning.TICK)
    yield Disc(Spot(x + TICK_HALF_MM + RING_MM, y), RING_MM)


def _cross(middle: Spot) -> Iterator[ExactMark]:
    x, y = middle
    yield Stroke((Spot(x - TICK_HALF_MM, y), Spot(x + TICK_HALF_MM, y)), Meaning.TICK)
    yield Stroke((Spot(x, y - TICK_HALF_MM), Spot(x, y + TICK_HALF_MM)), Meaning.TICK)
