"""The distances to measure along each edge of a sheet that the printer cannot hold, as rows and as pages."""

from collections.abc import Iterator

from foldmath.guides.marks.guide_sheet import Guides
from foldmath.guides.marks.ticks import EdgeMark, edge_marks, tenths_mm
from foldmath.guides.pieces.letters import Letters
from foldmath.guides.reading.cover import sheet_said, short
from foldmath.guides.reading.text_pages import text_pages
from foldmath.lesson.lesson import Lesson
from foldmath.pages.page_shapes import upright
from foldmath.pages.pdf.paginating import FilledPage
from foldmath.paper.lengths import nearest_sixteenth
from foldmath.paper.steps import Axis, Edge
from foldmath.plane.numbers import Exact, written
from foldmath.statements.ratios import mixed_form
from foldmath.values import frozen

MOST_ROWS = 120
"""Past so many marks nobody measures them singly."""


@frozen
class EdgeList:
    """The marks of one edge, or of two opposite edges that have the same ones.

    Args:
        name: that the templates know.
        edges: one or two.
        marks: of the first of them, from the left or from the bottom.
    """

    name: str
    edges: tuple[Edge, ...]
    marks: tuple[EdgeMark, ...]

    @property
    def upright(self) -> bool:
        """Whether the edges stand."""
        return self.edges[0].axis is Axis.WIDTH


@frozen
class Measured:
    """A distance as it is measured: to a tenth of a millimetre, and to a sixteenth of an inch."""

    millimetres: str
    inches: str


@frozen(kw_only=True)
class DistanceRow:
    """One mark in a list.

    Args:
        share: of the edge.
        millimetres, inches: as they are measured.
        exactly: the length in the sheet's unit.
        folds: whose creases end there; none for a middle without a crease.
        at_middle: whether it is the middle of the edge.
    """

    share: str
    millimetres: str
    inches: str
    exactly: str
    folds: tuple[int, ...]
    at_middle: bool


@frozen
class EdgeRows:
    """The list of an edge, and how many of its marks are left out of it."""

    name: str
    rows: tuple[DistanceRow, ...]
    left_out: int


@frozen
class CutEnd:
    """Where a cut starts or stops, from the left and from the bottom."""

    name: str
    across: Measured
    up: Measured


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


def distance_pages(lesson: Lesson, shown: Guides, page_paper: str, letters: Letters) -> list[FilledPage]:
    """Write the list of distances."""
    return text_pages(
        "distances",
        lesson.language,
        upright(page_paper),
        letters,
        {},
        title=short(lesson.title),
        sheet=sheet_said(lesson),
        unit=lesson.sheet.unit,
        edges=tuple(_edges(shown)),
        cuts=tuple(_cut_ends(shown)),
    )


def row_of(mark: EdgeMark, unit_mm: Exact) -> DistanceRow:
    """Write a mark as it is told, where the sheet's unit has so many mm."""
    measured = _measured(mark.distance)
    return DistanceRow(
        share=written(mark.at),
        millimetres=measured.millimetres,
        inches=measured.inches,
        exactly=str(mixed_form(mark.distance / unit_mm)),
        folds=mark.folds,
        at_middle=mark.at_middle,
    )


def _edges(shown: Guides) -> Iterator[EdgeRows]:
    told = 0
    for listed in edge_lists(shown):
        rows = tuple(row_of(mark, shown.sheet.unit_mm) for mark in listed.marks[: max(MOST_ROWS - told, 0)])
        told += len(rows)
        yield EdgeRows(listed.name, rows, len(listed.marks) - len(rows))


def _cut_ends(shown: Guides) -> Iterator[CutEnd]:
    unit = shown.sheet.unit_mm
    for cut in shown.slit.cuts if shown.slit else ():
        for name, points in (("start", cut.begins), ("stop", cut.stops)):
            for x, y in points:
                yield CutEnd(name, _measured(x * unit), _measured(y * unit))


def _measured(distance_mm: Exact) -> Measured:
    tenths = tenths_mm(distance_mm)
    inches = mixed_form(nearest_sixteenth(distance_mm))
    return Measured(f"{tenths // 10}.{tenths % 10}", str(inches))
