"""The first page of the guides: which pages to print and how, and what the lines and marks mean."""

from collections.abc import Iterator
from dataclasses import dataclass

from foldmath.drawing.scenes import Meaning, Spot, Star, Stroke
from foldmath.guides.guide_sheet import Guides
from foldmath.guides.lettering import (
    SMALL_NUMBER_PT,
    SMALL_NUMBER_RADIUS_MM,
    Note,
    block,
    number_in_circle,
)
from foldmath.guides.marks import GuidePage
from foldmath.guides.text_pages import LEFT_MM, TEXT_PT, TITLE_PT, TextPages
from foldmath.guides.wording import wording
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import ProvedLesson
from foldmath.pages.page_fit import PageFit, fit
from foldmath.pages.pdf.exact import Disc, ExactMark
from foldmath.pages.pdf.styles import page_mm
from foldmath.paper.state import Kind
from foldmath.paper.steps import FoldStep
from foldmath.plane.numbers import Exact, denominator, numerator

SAMPLE_MM, SAMPLE_ROOM_MM = 14.0, 22.0
PAGES_ROOM_MM = 33.0
FOLD_ROW_MM = 5.6
TICK_HALF_MM, RING_MM, STAR_MM = 2.6, 1.0, 2.2
SAMPLE_MIDDLE_MM = 2.0
"""How far the middle of a sample lies under the top of its line of words."""

PAGE_SPANS = ("page", "page_range", "page_span")
"""How one, two and more pages are named in the word list."""

LONGEST_TITLE = 60
"""Letters; longer titles are shortened."""


@dataclass(frozen=True)
class Listed:
    """What a page or a span of pages is: a key of the word list, and the pages, from 1."""

    name: str
    first: int
    last: int


def cover(proved: ProvedLesson, shown: Guides, page_paper: str, listed: list[Listed]) -> GuidePage:
    """Write the first page.

    Args:
        proved: the lesson.
        shown: its guides.
        page_paper: what the printer prints on.
        listed: the pages that follow.
    """
    words, lesson = wording()["cover"], proved.lesson
    pages = TextPages(*page_mm(page_paper))
    pages.write(Note(words["title"].format(title=short(lesson.title)), TITLE_PT, bold=True))
    pages.write(Note(sheet_said(lesson, words["sheet"], page_paper), TEXT_PT))
    lies = fit(lesson.sheet, page_paper)
    if not shown.folds:
        pages.write(Note(words["nothing"], TEXT_PT))
    elif lies is None:
        pages.write(Note(words["too_large"].format(page_paper=page_paper), TEXT_PT))
    elif lies.trimmed:
        pages.write(Note(words["trim"], TEXT_PT))
    if listed:
        _write_pages(pages, listed)
    pages.head(words["check"])
    pages.write(Note(words["scale"], TEXT_PT))
    if listed:
        for name in _said_of(lies):
            pages.write(Note(words[name], TEXT_PT))
    if listed and lies:
        _write_legend(pages, shown)
    if shown.slit:
        pages.depth += 1.5
        pages.write(Note(words["scissors"], TEXT_PT, bold=True))
    if shown.folds:
        _write_order(pages, proved, {line.fold for line in shown.folds})
    return pages.finished()[0]


def _said_of(lies: PageFit | None) -> list[str]:
    """Give what is said of the sheets' edges and marks, by the keys of the word list."""
    if lies is None:
        return ["ticks"]
    return ["rim", "light", "ticks"] if lies.reaches_edge else ["light", "ticks"]


def short(title: str) -> str:
    """Shorten a long title."""
    return title if len(title) <= LONGEST_TITLE else title[: LONGEST_TITLE - 1].rstrip() + "…"


def sheet_said(lesson: Lesson, told: str, page_paper: str = "") -> str:
    """Say what sheet a lesson folds; one that is named by its measures has them said once."""
    sheet, unit = lesson.sheet, wording()["cover"]["unit"]
    sides = {"width": mixed(sheet.width), "height": mixed(sheet.height), "unit": sheet.unit}
    names = dict.fromkeys((lesson.paper, lesson.orientation, unit.format(**sides)))
    return told.format(sheet=", ".join(names), page_paper=page_paper)


def mixed(number: Exact) -> str:
    """Write a number as people measure: ``8 1/2``."""
    whole, above = divmod(numerator(number), denominator(number))
    if not above:
        return str(whole)
    return f"{whole} {above}/{denominator(number)}".removeprefix("0 ")


def _write_pages(pages: TextPages, listed: list[Listed]) -> None:
    words = wording()["cover"]
    pages.head(words["which"])
    for part in listed:
        span = PAGE_SPANS[min(part.last - part.first, 2)]
        top = pages.depth
        pages.write(Note(words[part.name], TEXT_PT), inset_mm=PAGES_ROOM_MM)
        after, pages.depth = pages.depth, top
        pages.write(Note(words[span].format(first=part.first, second=part.last), TEXT_PT, bold=True))
        pages.depth = max(after, pages.depth)


def _write_legend(pages: TextPages, shown: Guides) -> None:
    words = wording()["cover"]
    pages.head(words["lines"])
    kinds = {piece.kind for line in shown.folds for piece in line.pieces}
    names = [kind.value for kind in (Kind.VALLEY, Kind.MOUNTAIN, Kind.CUT) if kind in kinds]
    for name in [*names, "number", "tick", "middle", "star"]:
        middle = Spot(LEFT_MM + SAMPLE_MM / 2, pages.top - SAMPLE_MIDDLE_MM)
        pages.add(_sample(name, middle))
        pages.write(Note(words[name], TEXT_PT), inset_mm=SAMPLE_ROOM_MM)


def _sample(name: str, middle: Spot) -> Iterator[ExactMark]:
    x, y = middle
    if name in {"valley", "mountain", "cut"}:
        yield Stroke((Spot(x - SAMPLE_MM / 2, y), Spot(x + SAMPLE_MM / 2, y)), Meaning(name))
    elif name == "number":
        yield from number_in_circle(middle, 1, SMALL_NUMBER_PT, SMALL_NUMBER_RADIUS_MM)
    elif name == "star":
        yield Star(middle, STAR_MM)
    else:
        yield Stroke((Spot(x - TICK_HALF_MM, y), Spot(x + TICK_HALF_MM, y)), Meaning.TICK)
        if name == "middle":
            yield Stroke((Spot(x, y - TICK_HALF_MM), Spot(x, y + TICK_HALF_MM)), Meaning.TICK)
        else:
            yield Disc(Spot(x + TICK_HALF_MM + RING_MM, y), RING_MM)


def _write_order(pages: TextPages, proved: ProvedLesson, drawn: set[int]) -> None:
    """Write the folds by their numbers, as many as the page has room for."""
    words = wording()["cover"]
    told = [written.text for written in proved.lesson.steps if isinstance(written.step, FoldStep)]
    pages.head(words["order"])
    for number, text in enumerate(told, start=1):
        added = "" if number in drawn else words["no_line"]
        note = Note(f"{number}. {text}{added}", TEXT_PT)
        if pages.room < block((note,), pages.column).height_mm + 2 * FOLD_ROW_MM:
            pages.write(Note(words["more"].format(count=len(told) - number + 1), TEXT_PT))
            break
        pages.write(note, after_mm=0.4)
    pages.write(Note(words["same"], TEXT_PT))
