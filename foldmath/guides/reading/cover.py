"""What comes first in the guides: which pages to print and how, and what the lines and marks mean."""

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from functools import partial

from foldmath.drawing.legends import SAMPLE_MM, SAMPLES, sample_line
from foldmath.drawing.scenes import Meaning, Spot, Star, Stroke
from foldmath.drawing.stars import SAMPLE_STAR_MM
from foldmath.guides.marks.guide_sheet import Guides
from foldmath.guides.pieces.circled_numbers import in_circle
from foldmath.guides.pieces.letters import Letters
from foldmath.guides.pieces.setting import Drawn
from foldmath.guides.reading.text_pages import text_pages
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import ProvedLesson
from foldmath.pages.page_fit import PageFit, fit
from foldmath.pages.page_shapes import upright
from foldmath.pages.pdf.exact import Disc, ExactDrawing, ExactMark
from foldmath.pages.pdf.paginating import FilledPage
from foldmath.paper.measures import measures_said, orientation_said, paper_said
from foldmath.paper.state import Kind
from foldmath.paper.steps import FoldStep
from foldmath.phrases import Phrase, joined
from foldmath.values import frozen
from foldmath.words.steps import WrittenStep

TICK_HALF_MM, RING_MM = 2.6, 1.0
MARKS_HIGH_MM = 5.4
RIM_MM = 0.3
"""Over and under a sample."""

LONGEST_TITLE = 60
"""Letters; longer titles are shortened."""


@frozen
class Listed:
    """What a page or a span of pages is: a name that the template knows, and the pages, from 1."""

    name: str
    first: int
    last: int


@frozen
class ListedFold:
    """A fold, whether a line on the guides is its own, and whether it goes through a crossing of creases."""

    step: WrittenStep
    drawn: bool
    crossing: bool


@frozen(kw_only=True)
class Cover:
    """What it says.

    Args:
        lies: how the sheet lies on the page; None if it is larger.
        listed: the pages that follow.
        lines: the styles of the fold lines, by the names of the legend.
        folds: in order; none where nothing is folded.
        cuts: whether something is cut.
        rings: whether a mark is at the middle of an edge.
    """

    lies: PageFit | None
    listed: tuple[Listed, ...]
    lines: tuple[str, ...]
    folds: tuple[ListedFold, ...]
    cuts: bool
    rings: bool


def cover_pages(
    proved: ProvedLesson, shown: Guides, page_paper: str, listed: Sequence[Listed], letters: Letters
) -> list[FilledPage]:
    """Write what comes before the sheets; where not all folds have room there, as many of them as do.

    Args:
        proved: the lesson.
        shown: its guides.
        page_paper: what the printer prints on.
        listed: the pages that follow.
        letters: how large its words are.
    """
    lesson, cover = proved.lesson, _cover(proved, shown, page_paper, listed)

    def pages(left_out: int) -> list[FilledPage]:
        return text_pages(
            "cover",
            lesson.language,
            upright(page_paper),
            letters,
            _samples(letters, rings=cover.rings),
            title=short(lesson.title),
            sheet=sheet_said(lesson),
            page_paper=page_paper,
            cover=cover,
            told=len(cover.folds) - left_out,
            parted=letters.cover_pages > 1,
        )

    def few_enough(left_out: int) -> bool:
        return len(pages(left_out)) <= letters.cover_pages

    if few_enough(0):
        return pages(0)
    return pages(bisect_left(range(len(cover.folds)), True, lo=1, key=few_enough))


def _cover(proved: ProvedLesson, shown: Guides, page_paper: str, listed: Sequence[Listed]) -> Cover:
    return Cover(
        lies=fit(proved.lesson.sheet, page_paper),
        listed=tuple(listed),
        lines=_lines(shown),
        folds=_folds(proved, shown),
        cuts=shown.slit is not None,
        rings=any(tick.at_middle for tick in shown.marks.ticks),
    )


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
    steps = zip(proved.lesson.steps, proved.moments, strict=True)
    folds = [(written, moment) for written, moment in steps if isinstance(written.step, FoldStep)]
    return tuple(
        ListedFold(written, number in drawn, moment.at_crossing)
        for number, (written, moment) in enumerate(folds, start=1)
    )


def _samples(letters: Letters, *, rings: bool) -> dict[str, Drawn]:
    """Draw what the legend shows, at the scale of the sheets."""
    wide, high = SAMPLE_MM
    drawn: dict[str, Drawn] = {}
    for name in SAMPLES:
        drawn[name] = partial(ExactDrawing, wide, high, [sample_line(name)])
    size, radius = letters.numbers[-1]
    high = max(MARKS_HIGH_MM, 2 * (radius + RIM_MM))
    middle = Spot(wide / 2, high / 2)
    marks = {
        "number": in_circle(middle, 1, size, radius),
        "tick": _ringed_tick(middle) if rings else _tick(middle),
        "middle": _cross(middle),
        "star": iter([Star(middle, SAMPLE_STAR_MM)]),
    }
    for name, shown in marks.items():
        drawn[name] = partial(ExactDrawing, wide, high, tuple(shown))
    return drawn


def _tick(middle: Spot) -> Iterator[ExactMark]:
    x, y = middle
    yield Stroke((Spot(x - TICK_HALF_MM, y), Spot(x + TICK_HALF_MM, y)), Meaning.TICK)


def _ringed_tick(middle: Spot) -> Iterator[ExactMark]:
    x, y = middle
    yield from _tick(middle)
    yield Disc(Spot(x + TICK_HALF_MM + RING_MM, y), RING_MM)


def _cross(middle: Spot) -> Iterator[ExactMark]:
    x, y = middle
    yield Stroke((Spot(x - TICK_HALF_MM, y), Spot(x + TICK_HALF_MM, y)), Meaning.TICK)
    yield Stroke((Spot(x, y - TICK_HALF_MM), Spot(x, y + TICK_HALF_MM)), Meaning.TICK)
