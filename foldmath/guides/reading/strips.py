"""Strip rulers: the marks of an edge on strips of paper to cut out, join, and lay along it."""

from collections.abc import Iterator
from functools import partial
from itertools import count, pairwise
from string import ascii_uppercase

from foldmath.drawing.scenes import Meaning, Spot, Stroke
from foldmath.guides.marks.guide_sheet import Guides
from foldmath.guides.marks.ticks import EdgeMark
from foldmath.guides.pieces.circled_numbers import in_circle
from foldmath.guides.pieces.letters import Letters
from foldmath.guides.pieces.setting import blocks, set_blocks, wrapped
from foldmath.guides.reading.cover import short
from foldmath.guides.reading.distances import EdgeList, edge_lists, row_of
from foldmath.guides.reading.text_pages import text_pages
from foldmath.lesson.lesson import Lesson
from foldmath.measured import as_float
from foldmath.pages.markup.blocks import Block, Together
from foldmath.pages.page_shapes import on_its_side
from foldmath.pages.pdf.exact import Disc, ExactDrawing, ExactMark, Placed, Words
from foldmath.pages.pdf.paginating import FilledPage
from foldmath.plane.numbers import ZERO, Exact, exact
from foldmath.values import frozen

GAP_MM = 3.0
"""The paper between two strips."""

FLAP_MM = exact(10)
"""What a piece has beyond its end, to paste the next piece on."""

SIDE_MM = 8.0
"""From the edge of the page to the end of a strip."""

TICK_MM, RING_MM = 8.0, 1.1
LABEL_GAP_MM, LABEL_DROP_MM, NAME_RISE_MM = 1.5, 11.4, 0.8
"""Beside labels and joins; from the top of the strip to its labels; from its foot to its name."""

WIDEST_LABEL_MM, WIDEST_NAME_MM = 60.0, 900.0
FLAP_LINES = 4


@frozen(kw_only=True)
class StripPiece:
    """A piece of a strip, in exact mm along its edge.

    Args:
        listed: the edge and its marks.
        number, of: which piece, from 1, of how many.
        start, end: what part of the edge it covers.
        marks: those on it; one on a join is on both pieces.
        joins: the letters at its start and its end; empty where the strip ends.
    """

    listed: EdgeList
    number: int
    of: int
    start: Exact
    end: Exact
    marks: tuple[EdgeMark, ...]
    joins: tuple[str, str]

    @property
    def upright(self) -> bool:
        """Whether its edge stands."""
        return self.listed.upright


def strip_pieces(shown: Guides, longest: Exact) -> tuple[StripPiece, ...]:
    """Give the pieces of all strips, none longer than ``longest`` mm."""
    pieces: list[StripPiece] = []
    letters = (letter * times for times in count(1) for letter in ascii_uppercase)
    for listed in edge_lists(shown):
        length = (shown.sheet.height if listed.upright else shown.sheet.width) * shown.sheet.unit_mm
        starts = [ZERO]
        while starts[-1] + longest < length:
            starts.append(starts[-1] + longest)
        joins = ["", *(next(letters) for _ in starts[1:]), ""]
        for number, (start, end) in enumerate(pairwise([*starts, length]), start=1):
            marks = tuple(mark for mark in listed.marks if start <= mark.distance <= end)
            at_ends = joins[number - 1], joins[number]
            pieces.append(
                StripPiece(
                    listed=listed,
                    number=number,
                    of=len(starts),
                    start=start,
                    end=end,
                    marks=marks,
                    joins=at_ends,
                )
            )
    return tuple(pieces)


def longest_piece(page_paper: str) -> Exact:
    """Give how long a piece can be on a page laid on its side: a whole number of centimetres."""
    room = on_its_side(page_paper, SIDE_MM).usable_width_mm
    return exact(int((room - as_float(FLAP_MM)) // 10) * 10)


def strip_pages(lesson: Lesson, shown: Guides, page_paper: str, letters: Letters) -> list[FilledPage]:
    """Lay the pieces of all strips on pages, one below the other."""
    pieces = strip_pieces(shown, longest_piece(page_paper))
    drawings = {
        f"piece-{number}": partial(piece_drawing, piece, shown.sheet.unit_mm, lesson.language, letters)
        for number, piece in enumerate(pieces)
    }
    shape = on_its_side(page_paper, SIDE_MM)
    title = short(lesson.title)
    pages = tuple(drawings)
    return text_pages("strips", lesson.language, shape, letters, drawings, title=title, pieces=pages)


def piece_drawing(
    piece: StripPiece, unit_mm: Exact, language: str, letters: Letters, *, words: str
) -> ExactDrawing:
    """Draw one piece at exact scale."""
    long, high = as_float(piece.end - piece.start), letters.strip_mm
    flap = as_float(FLAP_MM) if piece.joins[1] else 0.0
    corners = (Spot(0, 0), Spot(long + flap, 0), Spot(long + flap, high), Spot(0, high))
    rows = tuple(row_of(mark, unit_mm) for mark in piece.marks)
    full, brief, *labels = blocks("strip_words", language, title="", piece=piece, rows=rows)
    marks: list[ExactMark] = [
        Stroke(ends, Meaning.SHEET_EDGE) for ends in zip(corners, (*corners[1:], corners[0]), strict=True)
    ]
    marks += _joins(piece.joins, long, letters)
    marks += _name((full, brief), long, letters)
    taken = 0.0
    for mark, label in zip(piece.marks, labels, strict=True):
        x = as_float(mark.distance - piece.start)
        marks += _tick(mark, x, high)
        placed, end = _label(label, x, (taken, long), letters)
        marks += placed
        taken = end
    return ExactDrawing(long + flap, high, marks, GAP_MM, words=words)


def _tick(mark: EdgeMark, x: float, top: float) -> Iterator[ExactMark]:
    yield Stroke((Spot(x, top), Spot(x, top - TICK_MM)), Meaning.TICK)
    if mark.at_middle:
        yield Disc(Spot(x, top - TICK_MM - RING_MM), RING_MM)


def _joins(joins: tuple[str, str], end: float, letters: Letters) -> Iterator[ExactMark]:
    """Give the letters at the joins, and the lined flap."""
    high = letters.strip_mm
    size, radius = letters.join
    before, after = joins
    if before:
        yield Words(at=Spot(LABEL_GAP_MM, high / 2), text=before, size_pt=size, bold=True)
    if not after:
        return
    flap = as_float(FLAP_MM)
    yield Stroke((Spot(end, high), Spot(end, 0.0)), Meaning.SHEET_EDGE)
    for line in range(1, FLAP_LINES + 1):
        y = high * line / (FLAP_LINES + 1)
        yield Stroke((Spot(end, y), Spot(end + flap, y)), Meaning.HATCH)
    yield from in_circle(Spot(end + flap / 2, high / 2), after, size, radius)


def _name(names: tuple[Block, Block], long: float, letters: Letters) -> Iterator[Placed]:
    """Write at the foot of a piece what it is, as fully as its lines have room for, or not at all."""
    room = long - 2 * LABEL_GAP_MM
    for name in names:
        line = wrapped(set_blocks((name,), letters.sheet), WIDEST_NAME_MM)
        column, wide, high = wrapped(set_blocks((name,), letters.sheet), room)
        if wide <= room and high <= letters.name_lines * line[2]:
            yield Placed(column, Spot(LABEL_GAP_MM, NAME_RISE_MM))
            return


def _label(
    label: Block, x: float, free: tuple[float, float], letters: Letters
) -> tuple[list[ExactMark], float]:
    """Write what a mark is below its tick, and give how far the strip is taken then.

    Where the label before reaches so far that there is no room, nothing is written.
    """
    taken, long = free
    if not isinstance(label, Together):
        raise TypeError(f"not a label: {label!r}")
    flowables = set_blocks(label.blocks, letters.sheet)
    _, wide, _ = wrapped(flowables, WIDEST_LABEL_MM)
    column, _, high = wrapped(flowables, wide)
    half = wide / 2
    middle = min(max(x, half + LABEL_GAP_MM), long - half - LABEL_GAP_MM)
    if middle - half < taken:
        return [], taken
    at = Spot(middle - half, letters.strip_mm - LABEL_DROP_MM - high)
    return [Placed(column, at)], middle + half + LABEL_GAP_MM
