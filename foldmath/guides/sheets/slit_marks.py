"""Where to cut, as marks: a ring and arrows where scissors start, a bar where they stop."""

from collections.abc import Iterator
from dataclasses import replace
from math import hypot

from foldmath.drawing.layout import spot
from foldmath.drawing.look import POINT_MM
from foldmath.drawing.scenes import Area, Meaning, Spot, Stroke, Tone
from foldmath.guides.marks.guide_sheet import GuideSheet
from foldmath.guides.sheets.free_places import Room
from foldmath.pages.page_fit import Carry
from foldmath.pages.pdf.exact import Anchor, Disc, ExactMark, Rectangle, Words
from foldmath.phrases import phrase
from foldmath.words.saying import say

START_RADIUS_MM = 2.2
BAR_ARM_MM = 5.0
ARROW_LONG_MM, ARROW_HALF_MM = 5.0, 2.4
ARROW_FROM_START_MM = 13.0
WORD_GAP_MM = 1.0
WORD_SHIFTS_MM = (0.0, 8.0, -8.0, 16.0, -16.0, 24.0, -24.0)
WORD_RISES_MM = (7.0, 12.0, 18.0)
"""How far the middle of a word may stand from its mark, along the cut and across it."""


def slit_marks(
    guide: GuideSheet, carry: Carry, room: Room, language: str, word_pt: float
) -> Iterator[ExactMark]:
    """Give the marks of every cut of a guide, words so large; takes their places in the room."""
    start, stop_word = (say(word, language) for word in (phrase("start"), phrase("stop")))
    start_word = f"{start} ✂"
    for cut in guide.cuts:
        ends = spot(carry(cut.start)), spot(carry(cut.end))
        upright = ends[0].x == ends[1].x
        begins = [spot(carry(point)) for point in cut.begins]
        stops = [spot(carry(point)) for point in cut.stops]
        for begin in begins:
            for end in ends:
                yield from _arrow(begin, end)
        for stop in stops:
            yield _bar(stop, upright, room)
        for begin in begins:
            yield Disc(begin, START_RADIUS_MM)
            room.take(Rectangle(*begin, *begin).grown(max(START_RADIUS_MM, ARROW_HALF_MM) + WORD_GAP_MM))
        told = [(begin, start_word) for begin in begins] + [(stop, stop_word) for stop in stops]
        for at, text in told:
            yield _word(at, text, upright, room, word_pt)


def _arrow(begin: Spot, end: Spot) -> Iterator[Area]:
    """Give the head of an arrow on the cut, on the way from the start."""
    length = hypot(end.x - begin.x, end.y - begin.y)
    if length <= START_RADIUS_MM:
        return
    along_x, along_y = (end.x - begin.x) / length, (end.y - begin.y) / length
    tip = min(ARROW_FROM_START_MM, length / 2)
    back = tip - ARROW_LONG_MM
    yield Area(
        tuple(
            Spot(begin.x + way * along_x - side * along_y, begin.y + way * along_y + side * along_x)
            for way, side in ((tip, 0.0), (back, ARROW_HALF_MM), (back, -ARROW_HALF_MM))
        ),
        Tone.INK,
    )


def _bar(stop: Spot, upright: bool, room: Room) -> Stroke:
    x, y = stop
    across, up = (BAR_ARM_MM, 0.0) if upright else (0.0, BAR_ARM_MM)
    start, end = Spot(x - across, y - up), Spot(x + across, y + up)
    room.take(Rectangle(start.x, start.y, end.x, end.y).grown(WORD_GAP_MM))
    return Stroke((start, end), Meaning.CUT)


def _word(at: Spot, text: str, upright: bool, room: Room, size_pt: float) -> Words:
    """Set a word near its mark, where no line runs through it if that can be."""
    word = Words(at=at, text=text, size_pt=size_pt, bold=True, anchor=Anchor.MIDDLE)
    half, high = word.width_mm / 2, size_pt * POINT_MM
    places = []
    for rise in WORD_RISES_MM:
        for shift in WORD_SHIFTS_MM:
            for hand in (rise, -rise):
                across, up = (hand + (half if hand > 0 else -half), shift) if upright else (shift, hand)
                middle = Spot(at.x + across, at.y + up)
                places.append(
                    Rectangle(middle.x - half, middle.y - high / 2, middle.x + half, middle.y + high / 2)
                )
    place = next((tried for tried in places if room.free(tried.grown(WORD_GAP_MM))), places[0])
    room.take(place.grown(WORD_GAP_MM))
    baseline = place.bottom + high * 0.22
    return replace(word, at=Spot((place.left + place.right) / 2, baseline))
