"""From a guide on the sheet to a page: carries its lines, and finds places for its numbers and words."""

from dataclasses import dataclass, field
from math import hypot

from foldmath.drawing.layout import spot
from foldmath.drawing.scenes import Meaning, Spot, Star, Stroke
from foldmath.drawing.stars import GUIDE_STAR_MM
from foldmath.guides.marks.guide_sheet import GuideSheet
from foldmath.guides.marks.ticks import Tick
from foldmath.guides.pieces.letters import Letters
from foldmath.guides.sheets.fold_numbers import fold_number
from foldmath.guides.sheets.free_places import Room, round_place
from foldmath.guides.sheets.note_places import Group, ruler_and_notes
from foldmath.guides.sheets.slit_marks import slit_marks
from foldmath.measured import as_float
from foldmath.pages.page_fit import CLEAR_MM, Carry, PageFit
from foldmath.pages.pdf.exact import Disc, ExactMark, ExactPage, Rectangle
from foldmath.phrases import Phrase
from foldmath.plane.lines import Point
from foldmath.plane.numbers import Exact, exact
from foldmath.values import frozen
from foldmath.words.saying import say

STAR_CLEAR_MM = 4.4
"""Kept clear round the star's middle."""

STAR_INSETS_MM = ((10, 10), (10, 18), (18, 10), (10, 26), (26, 10), (18, 18))
"""Where the star may stand, from the bottom left corner; farther where a fold line runs through it."""

RING_RADIUS_MM = 1.3
MIDDLE_ARM_MM = 5.0


@frozen(kw_only=True)
class Face:
    """One printed side of a sheet.

    Args:
        carry: carries a point of the sheet onto the page, in exact mm.
        front: whether the sheet's printed side looks up.
        notes: what the page says, in groups that stand together.
        heard: what it shows, for those who hear it.
        language: of its words.
        letters: how large they are.
    """

    carry: Carry
    front: bool
    notes: tuple[Group, ...]
    heard: Phrase
    language: str
    letters: Letters


@dataclass
class _Laying:
    """A page while it is laid out: its marks so far, and the room left."""

    room: Room
    marks: list[ExactMark] = field(default_factory=list)

    def line(self, start: Spot, end: Spot, meaning: Meaning) -> None:
        """Draw a line, which other marks keep clear of."""
        self.marks.append(Stroke((start, end), meaning))
        self.room.draw(start, end)


def laid(guide: GuideSheet, fit: PageFit, face: Face) -> ExactPage:
    """Lay one side of a guide on its page."""
    width, height = as_float(fit.width), as_float(fit.height)
    corners = [spot(face.carry(corner)) for corner in guide.sheet.outline]
    sheet = Rectangle(*map(min, zip(*corners, strict=True)), *map(max, zip(*corners, strict=True)))
    page = Rectangle(0.0, 0.0, width, height).grown(-as_float(CLEAR_MM))
    laying = _Laying(Room(page, []))
    for line in guide.lines:
        laying.marks.append(Stroke((spot(face.carry(line.start)), spot(face.carry(line.end))), line.meaning))
    for start, end in guide.straight:
        laying.room.draw(spot(face.carry(start)), spot(face.carry(end)))
    _lay_ticks(laying, guide, face.carry)
    if face.front:
        for start, end in fit.frame:
            laying.line(spot(start), spot(end), Meaning.SHEET_EDGE)
    _lay_star(laying, guide, fit, face)
    on_sheet = Room(_common(page, sheet), laying.room.lines, laying.room.places)
    laying.marks += slit_marks(guide, face.carry, on_sheet, face.language, face.letters.word_pt)
    for fold in guide.numbered:
        laying.marks += fold_number(fold, face.carry, on_sheet, face.letters)
    whole = Room(page, on_sheet.lines, on_sheet.places)
    laying.marks += ruler_and_notes(whole, None if fit.fills_page else sheet, face.notes, face.letters)
    return ExactPage(width, height, sheet, tuple(laying.marks), words=say(face.heard, face.language))


def _common(one: Rectangle, other: Rectangle) -> Rectangle:
    return Rectangle(
        max(one.left, other.left),
        max(one.bottom, other.bottom),
        min(one.right, other.right),
        min(one.top, other.top),
    )


def _lay_ticks(laying: _Laying, guide: GuideSheet, carry: Carry) -> None:
    for tick in guide.ticks:
        laying.line(spot(carry(tick.start)), spot(carry(tick.end)), Meaning.TICK)
        if tick.at_middle:
            laying.marks.append(_ring(tick, guide, carry))
    if guide.middle:
        x, y = spot(carry(guide.middle))
        laying.line(Spot(x - MIDDLE_ARM_MM, y), Spot(x + MIDDLE_ARM_MM, y), Meaning.TICK)
        laying.line(Spot(x, y - MIDDLE_ARM_MM), Spot(x, y + MIDDLE_ARM_MM), Meaning.TICK)
    for mark in laying.marks:
        if isinstance(mark, Disc):
            laying.room.take(round_place(mark.middle, mark.radius_mm))


def _ring(tick: Tick, guide: GuideSheet, carry: Carry) -> Disc:
    """Put a ring on the inner end of a tick."""
    sheet = guide.sheet

    def depth(end: Point) -> Exact:
        return min(end.x, sheet.width - end.x, end.y, sheet.height - end.y)

    outer, inner = sorted((tick.start, tick.end), key=depth)
    (x, y), (from_x, from_y) = spot(carry(inner)), spot(carry(outer))
    share = RING_RADIUS_MM / hypot(x - from_x, y - from_y)
    return Disc(Spot(x + share * (x - from_x), y + share * (y - from_y)), RING_RADIUS_MM)


def _lay_star(laying: _Laying, guide: GuideSheet, fit: PageFit, face: Face) -> None:
    """Put the star at the sheet's bottom left corner, a hollow one right behind it."""
    lines = [(spot(fit.on_front(start)), spot(fit.on_front(end))) for start, end in guide.straight]
    lines += [(spot(fit.on_front(tick.start)), spot(fit.on_front(tick.end))) for tick in guide.ticks]
    room = Room(Rectangle(0.0, 0.0, as_float(fit.width), as_float(fit.height)), lines)
    places = [Point(_inset(fit.across, x, fit), _inset(fit.up, y, fit)) for x, y in STAR_INSETS_MM]
    free = [place for place in places if room.free_round(spot(fit.on_front(place)), STAR_CLEAR_MM)]
    middle = spot(face.carry((free or places)[0]))
    laying.marks.append(Star(middle, GUIDE_STAR_MM, hollow=not face.front))
    laying.room.take(round_place(middle, STAR_CLEAR_MM))


def _inset(side: Exact, millimetres: int, fit: PageFit) -> Exact:
    """Give an inset in sheet units; a quarter of a side that is short."""
    inset = exact(millimetres)
    return (inset if 4 * inset <= side else side / 4) / fit.unit
