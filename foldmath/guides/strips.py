"""Strip rulers: the marks of an edge on strips of paper to cut out, join, and lay along it."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import count, pairwise
from string import ascii_uppercase

from foldmath.drawing.layout import as_float
from foldmath.drawing.scenes import Meaning, Spot, Stroke
from foldmath.guides.cover import short
from foldmath.guides.distances import EdgeList, edge_lists, tenths
from foldmath.guides.guide_sheet import Guides
from foldmath.guides.lettering import Note, fraction_width_mm, stacked_fraction, width_mm
from foldmath.guides.marks import GuidePage, Place
from foldmath.guides.text_pages import TEXT_PT, TITLE_PT, TextPages
from foldmath.guides.ticks import EdgeMark
from foldmath.guides.wording import wording
from foldmath.lesson.lesson import Lesson
from foldmath.pages.pdf.exact import Anchor, Disc, ExactMark, Words
from foldmath.pages.pdf.styles import page_mm
from foldmath.paper.steps import Axis
from foldmath.plane.numbers import ZERO, Exact, denominator, exact, numerator

STRIP_MM, GAP_MM = 30.0, 3.0
"""How high a strip is, and the paper between two."""

FLAP_MM = exact(10)
"""What a piece has beyond its end, to paste the next piece on."""

SIDE_MM = 8.0
"""From the edge of the page to the end of a strip."""

TICK_MM, RING_MM = 8.0, 1.1
FRACTION_PT, LABEL_PT, JOIN_PT = 10.0, 7.0, 11.0
LABEL_GAP_MM = 1.5
FRACTION_DROP_MM, LABEL_DROPS_MM, NAME_RISE_MM = 14.4, (20.8, 23.6), 1.6
FLAP_LINES = 4


@dataclass(frozen=True)
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


def strip_pieces(shown: Guides, longest: Exact) -> tuple[StripPiece, ...]:
    """Give the pieces of all strips, none longer than ``longest`` mm."""
    pieces: list[StripPiece] = []
    letters = (letter * times for times in count(1) for letter in ascii_uppercase)
    for listed in edge_lists(shown):
        upright = listed.edges[0].axis is Axis.WIDTH
        length = (shown.sheet.height if upright else shown.sheet.width) * shown.sheet.unit_mm
        starts = [ZERO]
        while starts[-1] + longest < length:
            starts.append(starts[-1] + longest)
        joins = ["", *(next(letters) for _ in starts[1:]), ""]
        for number, (start, end) in enumerate(pairwise([*starts, length]), start=1):
            marks = tuple(mark for mark in listed.marks if start <= mark.distance <= end)
            at_ends = joins[number - 1], joins[number]
            pieces.append(StripPiece(listed, number, len(starts), start, end, marks, at_ends))
    return tuple(pieces)


def longest_piece(page_paper: str) -> Exact:
    """Give how long a piece can be on a page laid on its side: a whole number of centimetres."""
    long = page_mm(page_paper)[1]
    return exact(int((long - 2 * SIDE_MM - as_float(FLAP_MM)) // 10) * 10)


def strip_pages(lesson: Lesson, shown: Guides, page_paper: str) -> list[GuidePage]:
    """Lay the pieces of all strips on pages, one below the other."""
    words = wording()["strips"]
    pages = TextPages(*reversed(page_mm(page_paper)))
    pages.write(Note(words["title"].format(title=short(lesson.title)), TITLE_PT, bold=True))
    pages.write(Note(words["how"], TEXT_PT), after_mm=GAP_MM)
    for piece in strip_pieces(shown, longest_piece(page_paper)):
        pages.hold(STRIP_MM)
        pages.add(piece_marks(piece, Spot(SIDE_MM, pages.top)))
        pages.depth += STRIP_MM + GAP_MM
    return pages.finished()


def piece_marks(piece: StripPiece, top_left: Spot) -> Iterator[ExactMark]:
    """Give the marks of one piece, its top left corner at a place on the page."""
    left, top = top_left
    long = as_float(piece.end - piece.start)
    last = piece.number == piece.of
    right = left + long + (0.0 if last else as_float(FLAP_MM))
    yield from _outline(Place(left, top - STRIP_MM, right, top))
    yield from _joins(piece, left, left + long, top)
    yield from _name(piece, left, top)
    taken = left
    for mark in piece.marks:
        x = left + as_float(mark.distance - piece.start)
        yield Stroke((Spot(x, top), Spot(x, top - TICK_MM)), Meaning.TICK)
        if mark.at_middle:
            yield Disc(Spot(x, top - TICK_MM - RING_MM), RING_MM)
        half = _label_width(mark) / 2
        middle = min(max(x, left + half + LABEL_GAP_MM), left + long - half - LABEL_GAP_MM)
        if middle - half >= taken:
            taken = middle + half + LABEL_GAP_MM
            yield from _label(mark, Spot(middle, top))


def _outline(place: Place) -> Iterator[Stroke]:
    corners = [
        Spot(place.left, place.top),
        Spot(place.right, place.top),
        Spot(place.right, place.bottom),
        Spot(place.left, place.bottom),
    ]
    for start, end in zip(corners, [*corners[1:], corners[0]], strict=True):
        yield Stroke((start, end), Meaning.SHEET_EDGE)


def _joins(piece: StripPiece, left: float, end: float, top: float) -> Iterator[ExactMark]:
    """Give the letters at the joins, and the lined flap."""
    baseline = top - STRIP_MM / 2
    before, after = piece.joins
    if before:
        yield Words(Spot(left + LABEL_GAP_MM, baseline), before, JOIN_PT, bold=True)
    if not after:
        return
    flap = as_float(FLAP_MM)
    yield Stroke((Spot(end, top), Spot(end, top - STRIP_MM)), Meaning.SHEET_EDGE)
    for line in range(1, FLAP_LINES + 1):
        y = top - STRIP_MM * line / (FLAP_LINES + 1)
        yield Stroke((Spot(end, y), Spot(end + flap, y)), Meaning.HATCH)
    yield Disc(Spot(end + flap / 2, baseline + 1.4), 3.0)
    yield Words(Spot(end + flap / 2, baseline), after, JOIN_PT, bold=True, anchor=Anchor.MIDDLE)


def _name(piece: StripPiece, left: float, top: float) -> Iterator[Words]:
    words = wording()
    named = words["strips"]["piece"].format(
        edge=words["edges"][piece.listed.name], piece=piece.number, pieces=piece.of
    )
    if piece.number == 1:
        upright = piece.listed.edges[0].axis is Axis.WIDTH
        named += ": ← " + words["strips"]["first_bottom" if upright else "first_left"]
    room = as_float(piece.end - piece.start) - 2 * LABEL_GAP_MM
    if width_mm(named, LABEL_PT) > room:
        named = words["strips"]["short"].format(piece=piece.number, pieces=piece.of)
    if width_mm(named, LABEL_PT) <= room:
        yield Words(Spot(left + LABEL_GAP_MM, top - STRIP_MM + NAME_RISE_MM), named, LABEL_PT)


def _folds_said(mark: EdgeMark) -> str:
    words = wording()
    if not mark.folds:
        return str(words["strips"]["middle"])
    return f"{words['distances']['fold']} {', '.join(map(str, mark.folds))}"


def _label_width(mark: EdgeMark) -> float:
    above, below = _share(mark)
    return max(
        fraction_width_mm(above, below, FRACTION_PT),
        width_mm(f"{tenths(mark.tenths_mm)} mm", LABEL_PT),
        width_mm(_folds_said(mark), LABEL_PT),
    )


def _share(mark: EdgeMark) -> tuple[int, int]:
    return numerator(mark.at), denominator(mark.at)


def _label(mark: EdgeMark, at: Spot) -> Iterator[ExactMark]:
    yield from stacked_fraction(Spot(at.x, at.y - FRACTION_DROP_MM), *_share(mark), FRACTION_PT)
    told = (_folds_said(mark), f"{tenths(mark.tenths_mm)} mm")
    for text, drop in zip(told, LABEL_DROPS_MM, strict=True):
        yield Words(Spot(at.x, at.y - drop), text, LABEL_PT, anchor=Anchor.MIDDLE)
