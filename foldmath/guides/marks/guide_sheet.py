"""What a guide sheet shows, as exact values on the sheet: lines, ticks, the middle, cuts."""

from functools import cached_property

from foldmath.drawing.scenes import Meaning
from foldmath.drawing.sheets.crease_patterns import KINDS
from foldmath.guides.marks.cuts import Cut, cuts
from foldmath.guides.marks.fold_lines import FoldLine, fold_lines, line_of
from foldmath.guides.marks.ticks import Tick, ticks
from foldmath.lesson.proving import ProvedLesson
from foldmath.paper.state import Kind, Sheet
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF
from foldmath.values import frozen


@frozen
class SheetLine:
    """A line on the opened sheet, in sheet units."""

    start: Point
    end: Point
    meaning: Meaning


@frozen(kw_only=True)
class GuideSheet:
    """One guide, in sheet units from the sheet's bottom left corner.

    Args:
        sheet: the sheet.
        lines: what is drawn on it.
        numbered: the fold lines that carry the number of their fold.
        ticks: near the edges; those at the middle of an edge are ringed.
        middle: of the sheet; None where it is not marked.
        cuts: slits, with the places where scissors start and stop.
    """

    sheet: Sheet
    lines: tuple[SheetLine, ...] = ()
    numbered: tuple[FoldLine, ...] = ()
    ticks: tuple[Tick, ...] = ()
    middle: Point | None = None
    cuts: tuple[Cut, ...] = ()

    @cached_property
    def straight(self) -> tuple[tuple[Point, Point], ...]:
        """From where to where its lines run, those that go straight on joined whatever they mean."""
        runs: list[tuple[Point, Point]] = []
        for line in self.lines:
            if runs and runs[-1][1] == line.start and line_of(*runs[-1]) == line_of(line.start, line.end):
                runs[-1] = (runs[-1][0], line.end)
            else:
                runs.append((line.start, line.end))
        return tuple(runs)


@frozen(kw_only=True)
class Guides:
    """The guides of one lesson.

    Args:
        sheet: the sheet.
        folds: its fold lines.
        plain: every fold line in its style, numbered.
        marks: only ticks and the middle.
        slit: the cut, with the folds as thin lines; None if nothing is cut.
    """

    sheet: Sheet
    folds: tuple[FoldLine, ...]
    plain: GuideSheet
    marks: GuideSheet
    slit: GuideSheet | None


def guides(proved: ProvedLesson) -> Guides:
    """Give the guides of a lesson."""
    sheet, folds = proved.lesson.sheet, fold_lines(proved)
    slits = cuts(proved)
    pieces = [piece for line in folds for piece in line.pieces]
    lines = tuple(SheetLine(piece.start, piece.end, KINDS[piece.kind]) for piece in pieces)
    thin = tuple(
        SheetLine(piece.start, piece.end, Meaning.CREASE) for piece in pieces if piece.kind is not Kind.CUT
    )
    heavy = tuple(SheetLine(cut.start, cut.end, Meaning.CUT) for cut in slits)
    return Guides(
        sheet=sheet,
        folds=folds,
        plain=GuideSheet(sheet=sheet, lines=lines, numbered=folds),
        marks=GuideSheet(
            sheet=sheet,
            ticks=ticks(sheet, folds),
            middle=Point(sheet.width * HALF, sheet.height * HALF),
        ),
        slit=GuideSheet(sheet=sheet, lines=thin + heavy, cuts=slits) if slits else None,
    )
