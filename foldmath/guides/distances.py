"""The distances to measure along each edge of a sheet that the printer cannot hold, as rows and as pages."""

from collections.abc import Iterator
from dataclasses import dataclass

from foldmath.drawing.layout import POINT_MM
from foldmath.drawing.scenes import Meaning, Spot, Stroke
from foldmath.guides.cover import sheet_said, short
from foldmath.guides.guide_sheet import Guides
from foldmath.guides.lettering import Note, fraction_width_mm, stacked_fraction, width_mm
from foldmath.guides.marks import GuidePage
from foldmath.guides.text_pages import HEADING_PT, LEFT_MM, TEXT_PT, TITLE_PT, TextPages
from foldmath.guides.ticks import SIXTEENTHS, EdgeMark, edge_marks
from foldmath.guides.wording import wording
from foldmath.lesson.lesson import Lesson
from foldmath.pages.pdf.exact import Anchor, ExactMark, Words
from foldmath.pages.pdf.styles import page_mm
from foldmath.paper.lengths import MILLIMETRES
from foldmath.paper.state import Sheet
from foldmath.paper.steps import Edge
from foldmath.plane.lines import Point
from foldmath.plane.numbers import Exact, denominator, exact, nearest_whole, numerator

ROW_MM, HEAD_ROW_MM, RULE_RISE_MM = 10.0, 6.0, 0.4
COLUMNS_MM = (10.0, 38.0, 72.0, 114.0, 134.0, 154.0)
"""The middles of fraction, millimetres, inches and exact length; where folds and the name begin."""

MOST_ROWS = 120
"""Past so many marks nobody measures them singly."""

TEXT_RISE = 0.36
"""Of the em: from the baseline to the middle of figures."""


@dataclass(frozen=True)
class EdgeList:
    """The marks of one edge, or of two opposite edges that have the same ones.

    Args:
        name: a key of the word list.
        edges: one or two.
        marks: of the first of them, from the left or from the bottom.
    """

    name: str
    edges: tuple[Edge, ...]
    marks: tuple[EdgeMark, ...]


def edge_lists(shown: Guides) -> tuple[EdgeList, ...]:
    """Give the marks of the edges, opposite edges together where they agree."""
    marks = edge_marks(shown.sheet, shown.folds)
    lists: list[EdgeList] = []
    for pair in ((Edge.BOTTOM, Edge.TOP), (Edge.LEFT, Edge.RIGHT)):
        one, other = (tuple(mark for mark in marks if mark.edge is edge) for edge in pair)
        if [(mark.at, mark.folds) for mark in one] == [(mark.at, mark.folds) for mark in other]:
            lists.append(EdgeList("_".join(edge.value for edge in pair), pair, one))
        else:
            lists += [EdgeList(pair[0].value, pair[:1], one), EdgeList(pair[1].value, pair[1:], other)]
    return tuple(lists)


def distance_pages(lesson: Lesson, shown: Guides, page_paper: str) -> list[GuidePage]:
    """Write the list of distances."""
    words = wording()["distances"]
    pages = TextPages(*page_mm(page_paper))
    pages.write(Note(words["title"].format(title=short(lesson.title)), TITLE_PT, bold=True))
    pages.write(Note(sheet_said(lesson, words["sheet"]), TEXT_PT))
    pages.write(Note(words["how"], TEXT_PT))
    written = 0
    for listed in edge_lists(shown):
        rows = listed.marks[: max(MOST_ROWS - written, 0)]
        written += len(rows)
        _write_edge(pages, listed.name, rows, shown.sheet)
        if len(rows) < len(listed.marks):
            pages.write(Note(words["more"].format(count=len(listed.marks) - len(rows)), TEXT_PT))
    if shown.slit:
        _write_cuts(pages, shown)
    return pages.finished()


def _write_edge(pages: TextPages, name: str, marks: tuple[EdgeMark, ...], sheet: Sheet) -> None:
    pages.hold(2 * ROW_MM + HEAD_ROW_MM + HEADING_PT)
    pages.head(wording()["edges"][name])
    _write_column_heads(pages, sheet.unit)
    for mark in marks:
        if pages.hold(ROW_MM):
            _write_column_heads(pages, sheet.unit)
        pages.add(_row(mark, sheet.unit_mm, pages.top - ROW_MM / 2))
        _rule(pages)


def _rule(pages: TextPages) -> None:
    pages.depth += ROW_MM
    y = pages.top + RULE_RISE_MM
    pages.add([Stroke((Spot(LEFT_MM, y), Spot(pages.width - LEFT_MM, y)), Meaning.CREASE)])


def _write_column_heads(pages: TextPages, unit: str) -> None:
    words = wording()["distances"]
    exactly = words["exactly"].format(unit=unit)
    names = (words["of_edge"], words["millimetres"], words["inches"], exactly, words["fold"])
    baseline = pages.top - HEAD_ROW_MM + 2.0
    anchors = (*[Anchor.MIDDLE] * 4, Anchor.START)
    for name, column, anchor in zip(names, COLUMNS_MM, anchors, strict=False):
        pages.add([Words(Spot(LEFT_MM + column, baseline), name, 9.0, anchor=anchor)])
    pages.depth += HEAD_ROW_MM


def _row(mark: EdgeMark, unit: Exact, middle: float) -> Iterator[ExactMark]:
    """Give one row: share of the edge, millimetres, inches, exact length, folds, whether it is the middle."""
    words = wording()["distances"]
    share, distance, inches, exactly, fold, name = (LEFT_MM + column for column in COLUMNS_MM)
    yield from stacked_fraction(Spot(share, middle), numerator(mark.at), denominator(mark.at), TEXT_PT)
    baseline = middle - TEXT_RISE * TEXT_PT * POINT_MM
    yield Words(Spot(distance, baseline), tenths(mark.tenths_mm), TEXT_PT, anchor=Anchor.MIDDLE)
    yield from mixed_number(Spot(inches, middle), exact(mark.sixteenths_in, SIXTEENTHS), TEXT_PT)
    yield from mixed_number(Spot(exactly, middle), mark.distance / unit, TEXT_PT)
    yield Words(Spot(fold, baseline), ", ".join(map(str, mark.folds)) or "–", TEXT_PT)
    if mark.at_middle:
        yield Words(Spot(name, baseline), words["middle"], TEXT_PT)


def tenths(number: int) -> str:
    """Write a number of tenths: ``93.1``."""
    return f"{number // 10}.{number % 10}"


def mixed_number(middle: Spot, number: Exact, size_pt: float) -> Iterator[ExactMark]:
    """Give a number that is not negative as a mixed number with a stacked fraction in lowest terms."""
    below = denominator(number)
    whole, above = divmod(numerator(number), below)
    baseline = middle.y - TEXT_RISE * size_pt * POINT_MM
    if not above:
        yield Words(Spot(middle.x, baseline), str(whole), size_pt, anchor=Anchor.MIDDLE)
        return
    wide = fraction_width_mm(above, below, size_pt)
    before = width_mm(f"{whole} ", size_pt) if whole else 0.0
    left = middle.x - (before + wide) / 2
    if whole:
        yield Words(Spot(left, baseline), str(whole), size_pt)
    yield from stacked_fraction(Spot(left + before + wide / 2, middle.y), above, below, size_pt)


def _write_cuts(pages: TextPages, shown: Guides) -> None:
    """Write where each cut starts and stops, from the left and from the bottom."""
    words = wording()["distances"]
    ends = [
        (words[name], point)
        for cut in (shown.slit.cuts if shown.slit else ())
        for name, points in (("slit_start", cut.begins), ("slit_stop", cut.stops))
        for point in points
    ]
    pages.hold(ROW_MM + 2 * HEADING_PT)
    pages.head(f"{words['slit']}, {words['slit_from']}")
    for name, point in ends:
        pages.hold(ROW_MM)
        pages.add(_cut_row(name, point, shown.sheet.unit_mm, pages.top - ROW_MM / 2))
        _rule(pages)


def _cut_row(name: str, point: Point, unit: Exact, middle: float) -> Iterator[ExactMark]:
    baseline = middle - TEXT_RISE * TEXT_PT * POINT_MM
    yield Words(Spot(LEFT_MM, baseline), name, TEXT_PT, bold=True)
    for column, along in zip(((38.0, 62.0), (112.0, 136.0)), point, strict=True):
        distance = along * unit
        said = f"{tenths(nearest_whole(distance * 10))} mm"
        yield Words(Spot(LEFT_MM + column[0], baseline), said, TEXT_PT, anchor=Anchor.MIDDLE)
        sixteenths = nearest_whole(distance / MILLIMETRES["in"] * SIXTEENTHS)
        inches = exact(sixteenths, SIXTEENTHS)
        yield from mixed_number(Spot(LEFT_MM + column[1], middle), inches, TEXT_PT)
        yield Words(Spot(LEFT_MM + column[1] + 8.0, baseline), "in", TEXT_PT)
